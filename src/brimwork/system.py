"""Which units pages ask, draw and write in: metric, or those customary in the US. One switch for the process; text may be typed in any unit all the same."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from contextlib import contextmanager

from brimwork import units
from brimwork.tape import on_a_tape

METRES, FEET = "metric", "US"
SYSTEMS = (METRES, FEET)
SETTINGS = "settings.toml"  # the file beside workbooks that says which
_now = [METRES]
_chosen = [False]

# Units of one system with that of the other in which the same thing is measured; what stands in neither column belongs to both.
_PAIRS = (
    ("mm", "in"), ("m", "ft"), ("cm", "in"), ("km", "kft"), ("L", "US gal"), ("mm2", "in2"), ("cm2", "in2"), ("m2", "ft2"), ("m3", "ft3"), ("m3", "yd3"),
    ("kg", "lb"), ("t", "short ton"), ("N", "lbf"), ("kN", "lbf"), ("kPa", "psi"), ("kPa", "psf"), ("MPa", "psi"), ("Pa", "psf"),
    ("kg/m3", "lb/ft3"), ("t/m3", "lb/ft3"), ("kN/m3", "lb/ft3"), ("kg/L", "lb/US gal"), ("L/s", "US gal/min"), ("L/min", "US gal/min"), ("L/h", "US gal/h"),
    ("m3/h", "US gal/min"), ("L/day", "US gal/day"), ("m/s", "ft/s"), ("mm/day", "in/day"), ("mm/h", "in/h"), ("L/s per m", "US gal/min per ft"),
    ("L/min per m", "US gal/min per ft"), ("mV/A/m", "mV/A/ft"), ("ohm/km", "ohm/kft"), ("m^0.5/s", "ft^0.5/s"), ("kg/m2", "lb/ft2"),
)  # fmt: skip
_TO_US: dict[str, str] = {}
_TO_METRIC: dict[str, str] = {}
for _metric, _us in _PAIRS:
    _TO_US.setdefault(_metric, _us)
    _TO_METRIC.setdefault(_us, _metric)

_METRIC_WORDS = (  # shaking is measured in m/s2 in the US too
    r"(?:milli|centi|kilo|square |cubic )?(?:metres?|litres?)|(?:kilo)?grams?|tonnes?|(?:kilo|mega)?(?:pascals?|newtons?)"
    r"|(?<=\d )(?:mm|cm|m(?!/s2)|km|mm2|cm2|m2|m3|L|kg|t|N|kN|Pa|kPa|MPa)|(?<=\bin )(?:mm|cm|m(?!/s2)|kPa)\b|L/(?:s|min|h|day)\b|m/s\b|kg/\w+|t/m3|kN/m3|ohm/km|mV/A/m|degC\b"
)
_US_WORDS = (
    r"inch(?:es)?|(?<!on )(?<!the )(?<!of )feet|(?:square|cubic) (?:foot|feet|yards?)|(?:US )?gal(?:lons?)?|pounds?|short tons?"
    r"|(?<=\d )(?<![A-Za-z_]\d )(?:in(?! (?:all|each|the|a|this|[\dX{]))|ft|yd|yd3|ft2|ft3|in2|lb|lbf|psi|psf)|ft/s|lb/\w+|ohm/kft|mV/A/ft|degF\b"
)
_WORDS = {METRES: re.compile(rf"\b(?:{_METRIC_WORDS})\b"), FEET: re.compile(rf"\b(?:{_US_WORDS})\b")}


def current() -> str:
    """The system in use."""
    return _now[0]


def use(system: str) -> None:
    """Ask, draw and write in this system from now on. Raises ValueError for none of SYSTEMS."""
    if system not in SYSTEMS:
        raise ValueError(f"'{system}' is none of {', '.join(SYSTEMS)}")
    _now[0], _chosen[0] = system, True


def use_none() -> None:
    """As it is where nobody has chosen: metric, and results in both."""
    _now[0], _chosen[0] = METRES, False


def was_chosen() -> bool:
    """Whether a class or a learner has chosen: pages then show nothing of the other system."""
    return _chosen[0]


@contextmanager
def working_in(system: str) -> Iterator[None]:
    """The same, for a while."""
    before = _now[0], _chosen[0]
    use(system)
    try:
        yield
    finally:
        _now[0], _chosen[0] = before


def settings(units: str) -> bytes:
    """The content of a settings file."""
    return f'# Units in which the workbooks of this folder ask, draw and work: "metric" or "US".\nformat = 1\nunits = "{units}"\n'.encode()


def other(system: str) -> str:
    return FEET if system == METRES else METRES


def of_unit(unit: str) -> str:
    """The system that a unit belongs to, or "" for one that both use."""
    return METRES if unit in _TO_US else FEET if unit in _TO_METRIC else ""


def of_names(unit: str) -> str:
    """The same for a unit made of several: s2/ft5 is of the US."""
    return of_unit(unit) or next((found for name, _ in units.powers(unit) if (found := of_unit(name))), "") if unit else ""


def counterpart(unit: str, system: str) -> str:
    """The unit in which that system measures the same: "mm" is "in" in the US; a unit of that system, or of both, stays."""
    return (_TO_US if system == FEET else _TO_METRIC).get(unit, unit)


def near_there(text: str, unit: str) -> str:
    """An absolute tolerance such as "1 mm" as it is told beside answers in that unit."""
    return round_there(text, of_unit(unit) or current())


def round_there(text: str, system: str) -> str:
    """A tolerance such as "1 mm" in the unit of a system, never wider: of a tape where that is inches, "1/32 in", else in round figures, "0.05 US gal/min"."""
    reading = units.parse(text)
    there = counterpart(reading.unit, system)
    if there == reading.unit:
        return text
    value = units.convert(reading.value, there) * (1 + 1e-9)
    power = 10 ** math.floor(math.log10(value))
    round_figure = units.number(power * max(figure for figure in (1, 1.5, 2, 2.5, 3, 4, 5, 6, 8) if figure * power <= value))
    if there == "in" and value >= FINEST:
        return f"{on_a_tape(value, 64 if value < 0.125 else 16 if value < 2 else 4, -1)} in"
    return f"{round_figure} {there}"


FINEST = 1 / 64  # in, the finest mark of a tape


def in_chosen(text: str, digits: int = 2, way: int = 0) -> str:
    """A value such as "30 mm" in the unit of the system that was chosen: "1.2 in"; as it is where it has that unit, or nobody has chosen.

    A limit is told to its safe side: `way` 1 rounds up, -1 down.
    """
    reading = units.parse(text)
    if not _chosen[0] or of_unit(reading.unit) in ("", current()):
        return text
    there = counterpart(reading.unit, current())
    value = units.convert(reading.value, there)
    told = float(f"{value:.{digits}g}")
    if value and way * (value - told) > 1e-9 * abs(value):  # rounded to the wrong side
        told += way * 10 ** (math.floor(math.log10(abs(value))) + 1 - digits)
    return f"{units.number(float(f'{told:.{digits}g}'))} {there}"


def length(metres: float) -> str:
    """A short length as a drawing shows it: "400 mm", or "15.7 in"."""
    if current() == METRES:
        return f"{metres * 1000:.0f} mm"
    inches = float(f"{units.convert(metres, 'in'):.3g}")
    return f"{units.number(inches)} in"


_NAMES = {
    "each metre": "each foot",
    "every metre": "every foot",
    "ampere and metre": "ampere and foot",
    "each millimetre": "each inch",
    "one metre": "one foot",
    " 1 m from": " 39 in from",
    "at 20 degC": "at 68 degF",
    "two metres": "6 1/2 ft",
    "1.5 m ": "5 ft ",
    "each cubic metre": "each cubic yard",
    "reading of the staff": "reading of the grade rod",
    "bench mark": "benchmark",
    "sub-base": "base course",
    "protection fleece": "protection underlayment",
    "fleece": "underlayment",
    "utilisation": "utilization",
    "vapour": "vapor",
    "labour": "labor",
    "hire": "rental",
    "programme": "schedule",
}


def named_here(name: str) -> str:
    """The name of a quantity in words of the system in use: "flow for each foot of edge"."""
    if current() == FEET:
        for metric, us in _NAMES.items():
            name = name.replace(metric, us)
    return name


def round_step(step: float) -> float:
    """The round number, 1, 2 or 5 times a power of ten, that is nearest to a step in proportion."""
    power = 10 ** math.floor(math.log10(step))
    return min((power * digit for digit in (1, 2, 5, 10)), key=lambda size: abs(math.log(size / step)))


def foreign(text: str, system: str) -> list[str]:
    """Words and signs for units of the other system that stand in a text."""
    return _WORDS[other(system)].findall(text)
