"""Values that go into a worked example: typed in its cell, in one system or in both, or carried on from a sum above it."""

from __future__ import annotations

from collections.abc import Iterable
from types import EllipsisType

from brimwork import system
from brimwork.coherent import Factor, given_number
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES, read_value
from brimwork.quantity import CELL, days
from brimwork.units import InputError, parse, read, with_point, write

InCell = str | EllipsisType
_BEFORE: dict[str, tuple[float, str]] = {}  # what the sums above came to, as it was shown: SI, and the unit


def typed(formula: Formula, values: dict[str, InCell]) -> dict[str, float]:
    """SI values of letters that somebody typed in a cell, all that the formula takes. Raises InputError, which says what to type in a cell.

    Of "800 mm or 30 in" the one in the system in use is taken; ... stands for what a sum above came to, and "V above" for what it gave as V.
    """
    read_values = {
        letter: _above(source)[0] if (source := from_above(letter, value)) else read_value(letter, of_here(str(value)), CELL)
        for letter, value in values.items()
    }
    for letter in read_values:
        if letter not in (*formula.inputs, *formula.constants):
            raise formula.unknown_letter(letter)
    if any(letter not in read_values for letter in formula.inputs):
        raise formula.still_needs(read_values, CELL)
    return read_values


def of_here(text: str) -> str:
    """Of "4 m or 13 ft" the one in the system in use; of two in units of both systems, "230 V or 120 V", the second is of the US."""
    ways = text.split(" or ")
    if len(ways) != 2:
        return text
    systems = [system.of_names(parse(way).unit) for way in ways]
    return ways[systems.index(system.current()) if system.current() in systems else int(systems == ["", ""] and system.current() == system.FEET)]


def from_above(letter: str, value: InCell) -> str:
    """The letter of the sum above from which a value comes, or ""."""
    return letter if value is ... else str(value).removesuffix(" above") if str(value).endswith(" above") else ""


def _above(letter: str) -> tuple[float, str]:
    if letter not in QUANTITIES:
        read_value(letter, "1", CELL)
    if letter not in _BEFORE:
        raise InputError(f'no sum above gives {letter}: run the cells above first, or type a value, such as {letter}="{QUANTITIES[letter].example}"')
    return _BEFORE[letter]


def stated(values: dict[str, InCell]) -> dict[str, str]:
    """The units in which values are given, of those that belong to the system in use."""
    found = {
        letter: _above(source)[1] if (source := from_above(letter, value)) else parse(of_here(with_point(str(value)))).unit for letter, value in values.items()
    }
    return {letter: unit for letter, unit in found.items() if unit and system.of_names(unit) in ("", system.current())}


def result_shown(formula: Formula, number: str, unit: str) -> str:
    """A result as its line has it, and beside it in the other system where nobody has chosen one."""
    row, here = formula.quantity, days(f"{number} {unit}".strip())
    other = row.us if unit == row.metric else row.metric
    return here if system.was_chosen() or not other or other == unit else f"{here} ({write(read(here, unit, row.key), other, 4)})"


def keep(letter: str, number: str, unit: str) -> None:
    """What a sum came to, as it is shown, for those that come after it."""
    _BEFORE[letter] = read(f"{number} {unit}".strip(), unit, letter), unit


_POUND = " A pound of force, lbf, is the weight of a pound of mass, lb: 1 lbf = 32.174 lb ft/s2."


def given_told(formula: Formula, values: dict[str, float], typed: dict[str, InCell], factors: Iterable[Factor] = ()) -> str:
    """What is given, in words with its units, and what of it comes from a sum above: "Given: flow Q = 50 L/min; ..."."""
    units_given, letters = stated(typed), (*formula.inputs, *(letter for letter in formula.constants if letter in typed))
    said = []
    for one in (
        given_number(letter, values[letter], units_given.get(letter, "") or QUANTITIES[letter].here, units_given.get(letter, "")) for letter in letters
    ):
        said.append(
            f"{QUANTITIES[one.key].plain_name} {one.key} = {days(f'{one.number} {one.unit}'.strip())}{' (from above)' if one.key in typed and from_above(one.key, typed[one.key]) else ''}"
        )
    return f"Given: {'; '.join(said)}.{_POUND if any('lbf' in (one.over, one.under) for one in factors) else ''}"
