"""Slips of units: which units people mix up, and what a number would be had one unit been taken for another.

One thing changes at a time: L/min is taken for L/h or for US gal/min, not for US gal/h. And nobody comes to gallons or feet by mistake where nothing
in the question, and nothing that was typed, is measured in a unit of that kind.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from math import isclose

from brimwork import units
from brimwork.units import InputError, convert, number, write

_ROWS = (
    ("mm", "cm", "m", "in", "ft"),
    ("mm2", "cm2", "m2", "in2", "ft2"),
    ("mL", "L", "m3", "US gal", "imp gal", "ft3"),
    ("s", "min", "h", "day"),
    ("g", "kg", "t", "lb"),
    ("N", "kN", "lbf"),
    ("Pa", "kPa", "bar", "psi", "psf"),
    ("W", "kW", "hp"),
    ("J", "kWh"),
    ("kg/m3", "t/m3", "lb/ft3"),
    ("mm/s", "m/s", "m/min", "ft/s"),
    ("V", "mV"),
    ("deg", "rad"),
    ("", "%"),
)
_CUSTOMARY = re.compile(r"gal\b|\b(?:in|ft|yd)\d?\b|\b(?:lbf?|psi|psf|hp|mile)\b|[\"']|inch|foot|feet|yard|pound")
_VOLUMES, _TIMES = ("L", "m3", "US gal", "imp gal"), ("s", "min", "h", "day")
_FLOWS = tuple(tuple(f"{volume}/{time}" for time in _TIMES) for volume in _VOLUMES)
_EDGE_FLOWS = tuple(tuple(f"{volume}/{time} per {edge}" for time in _TIMES) for volume, edge in (("L", "m"), ("m3", "m"), ("US gal", "ft")))


@lru_cache(maxsize=256)
def mixed_up(unit: str) -> tuple[str, ...]:
    """Units that `unit` is commonly taken for: those that differ from it in one thing."""
    for row in _ROWS:
        if unit in row or any(_equal(unit, other) for other in row if unit not in ("deg", "rad", "%", "")):
            return tuple(other for other in row if not _equal(unit, other))
    for grid in (_FLOWS, _EDGE_FLOWS):
        for i, flows in enumerate(grid):
            for j, here in enumerate(flows):
                if _equal(unit, here):
                    return tuple(other for other in flows if other != here) + tuple(line[j] for k, line in enumerate(grid) if k != i)
    return ()


@lru_cache(maxsize=4096)
def _equal(a: str, b: str) -> bool:
    one, two = units.unit(a), units.unit(b)
    return one.dimension == two.dimension and isclose(one.factor, two.factor) and one.shift == two.shift


@dataclass(frozen=True)
class Taken:
    """An answer typed in `typed` whose number would be right, or would be that of a known slip, in `meant`; `value` is SI."""

    typed: str
    meant: str
    value: float

    @property
    def sentence(self) -> str:
        one = write(units.unit(self.typed).factor, self.meant)
        say = f"1 {self.typed} is {one}" if self.typed else f"1 is {one}"
        return f"you typed {self.typed or 'no unit'}, where the number is in {self.meant or 'plain numbers'}. Change the unit, or the number: {say}"

    @property
    def question(self) -> str:
        return f"is your number in {self.meant or 'plain numbers'}, and not in {self.typed or 'plain numbers'}?"

    def of(self, used: Iterable[str]) -> bool:
        """Whether the unit meant is one of those in use."""
        return any(_equal(self.meant, unit) for unit in used)


def taken(value: float, typed: str, used: Iterable[str]) -> Iterator[Taken]:
    """What an answer (SI, typed in a unit) would be in each of the units that one is taken for, where the question uses the units `used`."""
    feet_and_gallons = any(_CUSTOMARY.search(unit) for unit in (typed, *used))
    for meant in mixed_up(typed):
        if feet_and_gallons or not _CUSTOMARY.search(meant):
            yield Taken(typed, meant, value * units.unit(meant).factor / units.unit(typed).factor)


def of_an_input(question, used: Iterable[str]) -> Iterator[tuple[float, str]]:
    """The answer (SI) had one given value been taken in another unit, and how to say so.

    Nobody takes a value in a unit that nothing in the question, or in the answer, is measured in (`used`), but for those on the way to SI. And where all
    values go in as they stand, no unit can have been missed.
    """
    values, used = {name: given.value for name, given in question.given.items()}, tuple(used)
    if as_they_stand(question, used[0]):
        return
    for name, given in question.given.items():
        for meant in mixed_up(given.unit):
            if not any(_equal(meant, unit) for unit in (*used, *_towards_si(given.unit))):
                continue
            shown = convert(given.value, given.unit)
            try:
                got = question.again({**values, name: shown * units.unit(meant).factor})
            except (InputError, ArithmeticError, ValueError):
                continue
            yield got, f"{given} was put in as {f'{number(shown)} {meant}' if meant else f'the plain number {number(shown)}'}"


def as_they_stand(question, typed: str) -> bool:
    """Whether the right number, in the unit typed, comes of the given numbers as they stand, without changing one unit."""
    shown = {name: convert(given.value, given.unit) for name, given in question.given.items()}
    kinds = {(units.unit(given.unit).dimension, given.unit) for given in question.given.values() if given.unit}
    if len({kind for kind, _ in kinds}) < len(kinds):
        return False
    try:
        return bool(shown) and isclose(question.again(shown), convert(question.answer, typed), rel_tol=1e-6)
    except (InputError, ArithmeticError, ValueError):
        return False


def _towards_si(unit: str) -> Iterator[str]:
    """Units that a value passes on its way to SI, such as m3/min and L/s for L/min."""
    for meant in mixed_up(unit):
        size = units.unit(meant).factor
        if not _CUSTOMARY.search(meant) and (size == 1.0 or re.search(r"^m3/|/s\b", meant)):
            yield meant
