"""The units in which a working is written, so that a calculator follows it: for every letter one of the system in use.

Numbers go in as they are given wherever the units of a line come out by themselves. Where they do not, either a given value is turned into another unit
first, or the line carries a factor with its own units: 12 in/ft, 1000 W h/kWh, and in US units 32.174 lb ft/s2/lbf, which makes a weight of a mass.
Of all ways the one with the fewest such changes is taken.
"""

from __future__ import annotations

import ast
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from brimwork import system, units
from brimwork.dimensions import BASE, LENGTH, NUMBER, TIME, Dimension
from brimwork.nomenclature import QUANTITIES
from brimwork.unit_sizes import ALIKE, NotCoherent, UnitSize, is_arc, joined, joined_text, keyed, outcome, unit_size

_LARGE = 4.5  # what a factor of a hundred thousand or more costs, against 1 for another
_MIXED = 8.0  # what a line costs in which inches stand beside feet
_WITH_A_NAME = {system.METRES: ("N", "Pa", "W"), system.FEET: ("lbf", "psf", "psi", "lbf ft")}
_FLOWS = {system.METRES: ("L", "L/day", "L/h", "L/min", "L/s"), system.FEET: ("US gal", "US gal/day", "US gal/h", "US gal/min")}
_BESIDES = {
    system.METRES: ("m", "m2", "m3", "L", "N", "Pa"),
    system.FEET: ("ft", "in", "ft2", "in2", "ft3", "lb", "lbf", "psi", "psf", "lb/ft3"),
}
_BY_THE_DAY = {system.METRES: (), system.FEET: ("ft/day", "ft3/day")}  # only where seconds take more changes
_FORCES = ("lbf", "W", "kW", "J", "kWh")
_MOST_WAYS = 20_000


@dataclass(frozen=True)
class Factor:
    """What a line is multiplied by, or divided by, to come out in the unit that is wanted: 12 in/ft."""

    number: str
    over: str
    under: str
    divides: bool

    @property
    def value(self) -> float:
        return 1 / float(self.number) if self.divides else float(self.number)


@dataclass(frozen=True)
class LineUnits:
    """For each letter and piece its unit, and for a piece the factors that its line carries."""

    unit: Mapping[str, str]
    factors: Mapping[str, tuple[Factor, ...]]


# --- which units ----------------------------------------------------------------------------------------------------------------------


def line_units(result: str, lines: tuple[tuple[str, ast.expr, Dimension], ...], letters: Iterable[str], stated: Mapping[str, str]) -> LineUnits:
    """The units of a working: `lines` are its pieces with what each is, `letters` what it takes, `stated` units in which some are given."""
    given_in = {name: stated.get(name) or QUANTITIES[name].here for name in letters}
    key = tuple((name, ast.unparse(tree), dimension) for name, tree, dimension in lines)
    kept = (system.current(), result, key, tuple(given_in.items()))
    if kept not in _FOUND:
        if len(_FOUND) > 2000:
            _FOUND.clear()
        _FOUND[kept] = _cheapest(result, lines, given_in)
    return _FOUND[kept]


_FOUND: dict[tuple, LineUnits] = {}


def _cheapest(result: str, lines: tuple[tuple[str, ast.expr, Dimension], ...], letters: Mapping[str, str], plainer: bool = False) -> LineUnits:
    named = tuple(key for key, *_ in lines if key in QUANTITIES and key != result)
    kinds = list(dict.fromkeys((True, *_kind(name)) for name in letters)) + list(dict.fromkeys((False, *_kind(name)) for name in named))
    here = [(_kind(name), unit) for name, unit in (*letters.items(), *((name, QUANTITIES[name].here) for name in (*letters, *named, result)))]
    here += [((units.unit(long).dimension, ""), long) for long in ("km", "kft") if any(f"/{long}" in unit for _, unit in here)]  # cables are told by it
    here += [(of, _plainer(unit)) for of, unit in here if plainer]
    choices = [_candidates(kind, si, [unit for of, unit in dict.fromkeys(here) if of == (kind, si)]) for _, kind, si in kinds]
    while math.prod(map(len, choices)) > _MOST_WAYS:
        longest = max(choices, key=len)
        longest.pop()
    best: tuple[float, LineUnits] | None = None
    for way in product(*choices):
        chosen = dict(zip(kinds, way))
        unit = {name: chosen[True, *_kind(name)] for name in letters}
        wanted = {name: chosen[False, *_kind(name)] for name in named} | {result: QUANTITIES[result].here}
        cost = sum(1.0 for name, given_in in letters.items() if unit[name] != given_in)
        cost += 0.01 * sum(choices[place].index(one) for place, one in enumerate(way))
        if best and cost >= best[0]:
            continue
        try:
            more, found = _through(lines, unit, wanted)
        except NotCoherent:
            continue
        if best is None or cost + more < best[0]:
            best = cost + more, found
    if best:
        return best[1]
    return _in_si(result, lines, letters) if plainer else _cheapest(result, lines, letters, plainer=True)


def _in_si(result: str, lines: tuple[tuple[str, ast.expr, Dimension], ...], letters: Iterable[str]) -> LineUnits:
    """All in SI, for fitted formulas whose terms come out in no other units."""
    rows = {name: QUANTITIES[name] for name in (*letters, result, *(key for key, *_ in lines if key in QUANTITIES))}
    si = {name: "K" if units.unit(row.si).shift else row.si for name, row in rows.items()}
    return _through(lines, {name: si[name] for name in letters}, {**si, result: rows[result].here})[1]


def _kind(name: str) -> tuple[Dimension, str]:
    """What has one unit in a working: letters of one dimension, but for angles, shares and plain numbers, and for heat beside pressure."""
    row = QUANTITIES[name]
    return row.dimension, row.si if row.dimension == NUMBER or row.si.startswith("J") else ""


def _candidates(kind: Dimension, si: str, here: list[str]) -> list[str]:
    if kind == NUMBER:
        return ["deg", "rad"] if si == "rad" else [""]
    beside, late = ([unit for unit in table[system.current()] if units.unit(unit).dimension == kind] for table in (_BESIDES, _BY_THE_DAY))
    usable = [unit for unit in (*here, *beside, coherent_text(kind), *late) if units.unit(unit).shift == 0]
    return list(dict.fromkeys(usable))


def _plainer(unit: str) -> str:
    """The same with its lengths in metres or feet and its times in seconds: "in/day/psi" as "ft/s/psi"."""
    plain = {LENGTH: system.counterpart("m", system.current()), TIME: "s"}
    return joined_text((plain.get(units.unit(name).dimension, name), power) for name, power in units.powers(unit)) if unit else ""


def _through(lines, unit: Mapping[str, str], wanted: Mapping[str, str]) -> tuple[float, LineUnits]:
    of = {name: unit_size(text) for name, text in unit.items()}
    cost, factors = 0.0, {}
    for key, tree, kind in lines:
        raw = outcome(tree, of, wanted.get(key, ""))
        if key in wanted:
            of[key] = unit_size(wanted[key])
            raw, carried = _weighed(raw, of[key], kind)
            carried += _factor(raw, of[key], kind)
            cost += sum(_LARGE if float(one.number) >= 1e5 else 1.0 for one in carried) + (
                _MIXED if carried and _is_mixed(raw) and not _known(raw.size, kind) else 0.0
            )
        else:
            raw, carried = _weighed(raw, None, kind)
            of[key] = UnitSize(_text(raw, kind), raw.size, raw.names)
            cost += len(carried) + (_MIXED if _is_mixed(raw) and not _known(raw.size, kind) else 0.0)
        factors[key] = tuple(carried)
    return cost, LineUnits({name: one.text for name, one in of.items()}, factors)


def _weighed(raw: UnitSize, wanted: UnitSize | None, kind: Dimension) -> tuple[UnitSize, list[Factor]]:
    """In US units, with 32.174 lb ft/s2 in the place of a pound of force, or the other way round, where the line wants it."""
    names = dict(raw.names)
    mass = names.get("lb", Fraction(0)) - (dict(wanted.names).get("lb", Fraction(0)) if wanted else 0)
    forces = any(name in _FORCES for name in names) or coherent_text(kind).startswith("lbf")
    if system.current() != system.FEET or mass not in (1, -1) or wanted is None and not forces or wanted and math.isclose(raw.size, wanted.size, rel_tol=ALIKE):
        return raw, []
    new = joined(raw, _POUND, -int(mass))
    return new, [Factor(_shown(_POUND.size), "lb ft/s2", "lbf", mass > 0)]


def _ratio_of_a_pound() -> UnitSize:
    names = {"lb": Fraction(1), "ft": Fraction(1), "s": Fraction(-2), "lbf": Fraction(-1)}
    return UnitSize("", units.unit("lb ft/s2").factor / units.unit("lbf").factor, tuple(names.items()))


_POUND = _ratio_of_a_pound()  # its size in SI is 1/32.174: the two are of one kind


def _factor(raw: UnitSize, wanted: UnitSize, kind: Dimension) -> list[Factor]:
    ratio = raw.size / wanted.size
    if math.isclose(ratio, 1.0, rel_tol=ALIKE):
        return []
    return [factor_between(_text(raw, kind), wanted.text, ratio)]


def factor_between(first: str, then: str, ratio: float) -> Factor:
    """The factor by which a number in one unit becomes one in another; always above one, and divided by where it must be."""
    if ratio >= 1:
        return Factor(_shown(ratio), then, first, False)
    return Factor(_shown(1 / ratio), first, then, True)


def _shown(value: float) -> str:
    value = 1 / value if value < 1 else value
    return units.number(float(f"{value:.6g}"))


def _is_mixed(one: UnitSize) -> bool:
    """Whether two names stand for one kind in it, such as in and ft, or L and m."""
    kinds = [_line_of(units.unit(name).dimension) for name, _ in one.names]
    return len(set(kinds)) < len(kinds)


def _line_of(kind: Dimension) -> Dimension:
    first = next((power for power in kind if power), Fraction(1))
    return Dimension(power / first for power in kind)


def _known(size: float, kind: Dimension) -> str:
    """A unit with a name of its own, of this size."""
    for name in (*_WITH_A_NAME[system.current()], *_FLOWS[system.current()]):
        if units.unit(name).dimension == kind and math.isclose(units.unit(name).factor, size, rel_tol=ALIKE):
            return name
    return ""


def _text(one: UnitSize, kind: Dimension) -> str:
    if one.text:
        return one.text
    if known := _known(one.size, kind):
        return known
    if system.current() == system.METRES and math.isclose(one.size, 1.0, rel_tol=ALIKE):
        return coherent_text(kind)
    return joined_text(one.names)


def unit_of_si(kind: Dimension) -> str:
    """The SI unit of a kind of quantity as the reader of units takes it: "Pa", "m^1.5", "m^0.5/s", "s^-1"; nothing for a plain number."""
    for name in _WITH_A_NAME[system.METRES]:
        if units.unit(name).dimension == kind:
            return name
    powers = dict(zip(BASE, kind))
    if powers["A"] == -2 * powers["kg"]:  # ohms go with it: a resistance of each metre
        powers = {"ohm": powers["kg"], **powers, "m": powers["m"] - 2 * powers["kg"], "s": powers["s"] + 3 * powers["kg"], "kg": 0, "A": 0}
    return joined_text((name, power) for name, power in powers.items() if power)


def coherent_text(kind: Dimension) -> str:
    """The unit without a factor: of SI, or of feet, pounds and seconds, where a pound of force goes with what is pressed or pulled."""
    powers = dict(zip(BASE, kind))
    if system.current() == system.METRES or powers["A"]:
        return unit_of_si(kind)
    mass, there = powers["kg"], {"kg": "lb", "m": "ft"}
    if mass and powers["s"] / mass <= -2:
        powers = {"lbf": mass, "m": powers["m"] - mass, "s": powers["s"] + 2 * mass} | {name: powers[name] for name in ("K", "A", "cur")}
    return joined_text((there.get(name, name), power) for name, power in powers.items() if power)


# --- the numbers ----------------------------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class GivenNumber:
    """A given value as the question says it, and as it stands in the lines."""

    key: str
    number: str
    unit: str
    put_in: str
    put_in_unit: str
    factor: Factor | None

    @property
    def turned(self) -> bool:
        return self.unit != self.put_in_unit


def given_number(key: str, si: float, unit: str, stated: str = "") -> GivenNumber:
    """`si` is the value, `unit` the one in which it goes into the lines, `stated` the one in which it is given if not that of pages."""
    row = QUANTITIES[key]
    here = stated or row.here
    shown = units.number(units.convert(si, here)) if stated or row.value else row.text_here(si, None).removesuffix(here).strip()
    if unit == here:
        return GivenNumber(key, shown, here, shown, unit, None)
    first, then = units.unit(here), units.unit(unit)
    inside = (float(shown) + first.shift) * first.factor / then.factor - then.shift
    factor = None if first.shift or then.shift else factor_between(here, unit, first.factor / then.factor)
    return GivenNumber(key, shown, here, units.number(float(f"{inside:.6g}")), unit, factor)


FIGURES = 4  # significant figures of a value on the way


def shown_results(
    lines: tuple[tuple[str, ast.expr, Dimension], ...], chosen: LineUnits, put_in: Mapping[str, float], exact: float, figures: int = FIGURES
) -> dict[str, str]:
    """What each line comes to, as it is shown: worked with the numbers that are shown before it.

    Lines on the way have four figures; or five, or as many more as it takes for the last line to come to `exact` (SI) in its four figures, or next to it.
    """
    last, tries = lines[-1][0], [_worked_through(lines, chosen, put_in, figures, digits) for digits in range(figures, figures + 5)]
    wanted = units.number(units.convert(exact, chosen.unit[last]), figures)
    near = (shown for shown in tries if abs(float(shown[last]) - float(wanted)) <= 0.5 * 10.0 ** (2 - figures) / 5 * abs(float(wanted)))
    return next((shown for shown in tries[:2] if shown[last] == wanted), next(near, tries[-1]))


def _worked_through(lines, chosen: LineUnits, put_in: Mapping[str, float], figures: int, digits: int) -> dict[str, str]:
    of, numbers, shown = {key: unit_size(unit) for key, unit in chosen.unit.items()}, dict(put_in), {}
    for key, tree, _ in lines:
        value = keyed(tree, numbers, of) * math.prod(factor.value for factor in chosen.factors[key])
        value = math.degrees(value) if is_arc(tree) and chosen.unit[key] == "deg" else value
        short, full = units.number(value, figures), units.number(value, digits)
        shown[key] = short if key == lines[-1][0] or float(short) == float(full) else full
        numbers[key] = float(shown[key])
    return shown
