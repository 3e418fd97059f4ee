"""Lists of a design of which each has an entry for every stone, and that do not have as many: said once, at the boxes that are out of step."""

from __future__ import annotations

from brimwork.design.typed.known import Known

_FOR_EACH = ("stones.diameters", "stones.heights", "stones.branch_lengths", "stones.places_along", "stones.places_across")  # the first says how many there are
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")


def uneven(design: Known) -> dict[str, str]:
    """The lists that have more or fewer entries than there are stones, each with what to do; none where all go together."""
    given = {key: design.given(key) for key in _FOR_EACH}
    first = given[_FOR_EACH[0]]
    if design.kind != "drilled stones" or first is None:
        return {}
    there = len(first.value)
    return {
        key: f"{_number(there)} stone{'' if there == 1 else 's'} {'is' if there == 1 else 'are'} given by their diameters, and {_number(len(other.value))} here: give {_number(there)}"
        for key, other in given.items()
        if other is not None and len(other.value) != there
    }


def _number(count: int) -> str:
    return _NUMBERS[count] if count < len(_NUMBERS) else str(count)
