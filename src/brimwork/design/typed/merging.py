"""A design that two have changed since both read it: what only one changed is taken from that one, what both changed is asked about."""

from __future__ import annotations

from dataclasses import replace
from typing import NamedTuple

from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import HEAD, sections
from brimwork.design.typed.known import Given
from brimwork.units import InputError

_HEADS = tuple(key for key in HEAD if key != "format")
NOTHING = "nothing"


class Both(NamedTuple):
    """A value that both have changed, each in another way: "section.key" or a key of the head, and what each says of it."""

    key: str
    mine: str
    theirs: str


class Conflict(InputError):
    """Nothing was written, because values were changed here and in the file: `both` of them, `file` as it is now."""

    def __init__(self, name: str, both: tuple[Both, ...], file: Design):
        told = "; ".join(f"{one.key} is {one.mine} here and {one.theirs} there" for one in both[:3])
        more = f"; and {len(both) - 3} more" if len(both) > 3 else ""
        super().__init__(f"{name} was changed by somebody else since it was read, in what was changed here too: {told}{more}. Say which to keep")
        self.both, self.file = both, file


def merged(base: Design, mine: Design, theirs: Design, keep: dict[str, bool] | None = None) -> tuple[Design, tuple[Both, ...]]:
    """What comes of two designs that began as `base`, and the values that both changed and nobody has decided about; for those, mine stands in it.

    `keep` is what was decided: for a key, whether mine counts.
    """
    both: list[Both] = []

    def one(key: str):
        was, here, there = (_of(design, key) for design in (base, mine, theirs))
        if here == there or there == was:
            return mine
        if here == was:
            return theirs
        if keep is None or key not in keep:
            both.append(Both(key, _told(here), _told(there)))
            return mine
        return mine if keep[key] else theirs

    head = {key: getattr(one(key), key) for key in _HEADS}
    values = {}
    for key in dict.fromkeys((*theirs.values, *mine.values)):
        side = one(key)
        if key in side.values:
            values[key] = side.values[key]
    places = sections(head["kind"])
    return replace(mine, **head, values={key: given for key, given in values.items() if _has(places, key)}), tuple(both)


def _of(design: Design, key: str):
    """What a design says under a key, as it is written there."""
    if key in _HEADS:
        return getattr(design, key)
    given = design.values.get(key)
    return None if given is None else (given.text, given.basis)


def _has(places: dict, key: str) -> bool:
    section, _, name = key.partition(".")
    return name in places.get(section, ())


def _told(what) -> str:
    """A value for a sentence."""
    if what is None or what == "":
        return NOTHING
    if isinstance(what, str):
        return what
    text, basis = what
    return f"{shown(Given(None, text))}{'' if basis == 'yours' else f' ({basis})'}"


def shown(given: Given) -> str:
    """The text of a value on one line."""
    if not isinstance(given.text, list):
        return str(given.text)
    return "; ".join(" at ".join(map(str, one)) for one in given.text) if given.text and isinstance(given.text[0], list) else ", ".join(map(str, given.text))
