"""Units: text in, SI floats inside, text out.

The only place where text becomes a number with a unit, or the other way round: declarations, design files and learners' answers all
pass through `read`. The table is closed and the reader is bounded (length, digits, number of factors), so no input can hang it or reach
anything but these rows. Every row is tested against pint.
"""

from __future__ import annotations

import difflib
import math
import re
from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

BASE = ("kg", "m", "s", "K", "A", "cur")
LONGEST_TEXT = 60
MOST_FACTORS = 6


class InputError(ValueError):
    """Something a person typed cannot be used; the message says what was given, what was wanted and what to type."""


class Dimension(tuple):
    """Exponents of kg, m, s, K, A and money as exact fractions; multiply, divide and raise to a power like a unit."""

    __slots__ = ()

    def __mul__(self, other: Dimension) -> Dimension:
        return Dimension(a + b for a, b in zip(self, other))

    def __truediv__(self, other: Dimension) -> Dimension:
        return Dimension(a - b for a, b in zip(self, other))

    def __pow__(self, power: Fraction | int) -> Dimension:
        return Dimension(a * power for a in self)

    def __str__(self) -> str:
        over = [_power(name, p) for name, p in zip(BASE, self) if p > 0]
        under = [_power(name, -p) for name, p in zip(BASE, self) if p < 0]
        if not over and not under:
            return "a pure number"
        return "/".join([" ".join(over) or "1", *under])


def _power(name: str, power: Fraction) -> str:
    if power == 1:
        return name
    return f"{name}{power}" if power.denominator == 1 else f"{name}^{float(power):g}"


def _dimension(**powers: int) -> Dimension:
    return Dimension(Fraction(powers.get(name, 0)) for name in BASE)


NUMBER = _dimension()
_LENGTH = _dimension(m=1)
_VOLUME = _dimension(m=3)
_TIME = _dimension(s=1)
_MASS = _dimension(kg=1)
_FORCE = _dimension(kg=1, m=1, s=-2)
_PRESSURE = _dimension(kg=1, m=-1, s=-2)
_ENERGY = _dimension(kg=1, m=2, s=-2)
_POWER = _dimension(kg=1, m=2, s=-3)
_VOLT = _dimension(kg=1, m=2, s=-3, A=-1)

_POUND = 0.45359237
_INCH = 0.0254
_G = 9.80665

# name: (factor to SI, dimension). Names with a space are written with it and read with or without.
UNITS: dict[str, tuple[float, Dimension]] = {
    "m": (1.0, _LENGTH),
    "um": (1e-6, _LENGTH),
    "mm": (1e-3, _LENGTH),
    "cm": (1e-2, _LENGTH),
    "km": (1e3, _LENGTH),
    "in": (_INCH, _LENGTH),
    "ft": (12 * _INCH, _LENGTH),
    "kft": (12000 * _INCH, _LENGTH),
    "yd": (36 * _INCH, _LENGTH),
    "L": (1e-3, _VOLUME),
    "mL": (1e-6, _VOLUME),
    "US gal": (231 * _INCH**3, _VOLUME),
    "imp gal": (4.54609e-3, _VOLUME),
    "s": (1.0, _TIME),
    "min": (60.0, _TIME),
    "h": (3600.0, _TIME),
    "day": (86400.0, _TIME),
    "kg": (1.0, _MASS),
    "g": (1e-3, _MASS),
    "t": (1e3, _MASS),
    "lb": (_POUND, _MASS),
    "short ton": (2000 * _POUND, _MASS),
    "N": (1.0, _FORCE),
    "mN": (1e-3, _FORCE),
    "kN": (1e3, _FORCE),
    "lbf": (_POUND * _G, _FORCE),
    "Pa": (1.0, _PRESSURE),
    "kPa": (1e3, _PRESSURE),
    "MPa": (1e6, _PRESSURE),
    "bar": (1e5, _PRESSURE),
    "psi": (_POUND * _G / _INCH**2, _PRESSURE),
    "psf": (_POUND * _G / (12 * _INCH) ** 2, _PRESSURE),
    "J": (1.0, _ENERGY),
    "kWh": (3.6e6, _ENERGY),
    "W": (1.0, _POWER),
    "kW": (1e3, _POWER),
    "hp": (550 * 12 * _INCH * _POUND * _G, _POWER),
    "A": (1.0, _dimension(A=1)),
    "mA": (1e-3, _dimension(A=1)),
    "V": (1.0, _VOLT),
    "mV": (1e-3, _VOLT),
    "ohm": (1.0, _VOLT / _dimension(A=1)),
    "cP": (1e-3, _PRESSURE * _TIME),
    "cSt": (1e-6, _LENGTH**2 / _TIME),
    "K": (1.0, _dimension(K=1)),
    "rad": (1.0, NUMBER),
    "deg": (math.pi / 180, NUMBER),
    "%": (0.01, NUMBER),
    "cur": (1.0, _dimension(cur=1)),  # money, in whatever currency the user counts
}
# Scales with an offset, alone in a text only: kelvin = factor * (number + shift).
OFFSET_UNITS: dict[str, tuple[float, float]] = {"degC": (1.0, 273.15), "degF": (5 / 9, 459.67)}

_SPELLINGS = {
    "l": "L",
    "litre": "L",
    "litres": "L",
    "liter": "L",
    "liters": "L",
    "ml": "mL",
    "metre": "m",
    "metres": "m",
    "meter": "m",
    "meters": "m",
    "micron": "um",
    "inch": "in",
    "inches": "in",
    '"': "in",
    "foot": "ft",
    "feet": "ft",
    "'": "ft",
    "yard": "yd",
    "yards": "yd",
    "sec": "s",
    "second": "s",
    "seconds": "s",
    "minute": "min",
    "minutes": "min",
    "hr": "h",
    "hour": "h",
    "hours": "h",
    "d": "day",
    "days": "day",
    "lbs": "lb",
    "tonne": "t",
    "tonnes": "t",
    "degrees": "deg",
    "degree": "deg",
    "percent": "%",
    "currency": "cur",
    "USgal": "US gal",
    "impgal": "imp gal",
    "shortton": "short ton",
}
_SHORTHANDS = {"lpm": "L/min", "lps": "L/s", "lph": "L/h", "cfs": "ft3/s"}
_AMBIGUOUS = {
    "gal": "US or imperial? Type 'US gal' or 'imp gal'",
    "gals": "US or imperial? Type 'US gal' or 'imp gal'",
    "gallon": "US or imperial? Type 'US gal' or 'imp gal'",
    "gallons": "US or imperial? Type 'US gal' or 'imp gal'",
    "gph": "US or imperial gallons? Type 'US gal/h' or 'imp gal/h'",
    "gpm": "US or imperial gallons? Type 'US gal/min' or 'imp gal/min'",
    "ton": "which ton? Type 't' (1000 kg) or 'short ton' (2000 lb)",
    "tons": "which ton? Type 't' (1000 kg) or 'short ton' (2000 lb)",
}
_PLAIN = str.maketrans(
    {
        "²": "^2",
        "³": "^3",
        "µ": "u",
        "μ": "u",
        "·": " ",
        "−": "-",
        "\u00a0": " ",
        "\u202f": " ",
        "°": "deg",
        "×": "*",
        "½": " 1/2",
        "¼": " 1/4",
        "¾": " 3/4",
    }
)
_DIGITS = r"(?:\d{1,12}(?:\.\d{0,20})?|\.\d{1,20})(?:[eE][+-]?\d{1,2})?"
_NUMBER = re.compile(rf"(?P<sign>[+-]?)\s*(?:(?:(?P<whole>\d{{1,4}})\s+)?(?P<over>\d{{1,4}})\s?/\s?(?P<under>\d{{1,4}})(?![\d.])|(?P<number>{_DIGITS}))")
_FACTOR = re.compile(
    r"""\s*(?P<sep>/|\*|\bper\b|)\s*(?P<name>[A-Za-z]+|%|"|')(?:\s*(?:\^|\*\*)\s*(?:\((?P<fraction>\d/[1-9])\)|\(?(?P<signed>-?\d(?:\.\d{1,3})?)\)?)|(?P<power>[1-9](?![\d.])))?"""
)
_TWO_WORDS = (
    (re.compile(r"(?i)\bu\.?s\.?\s*gal(?:lon)?s?\b"), "USgal"),
    (re.compile(r"(?i)\b(?:imp(?:erial)?|uk)\.?\s*gal(?:lon)?s?\b"), "impgal"),
    (re.compile(r"(?i)\bshort\s+tons?\b"), "shortton"),
)


class Unit(NamedTuple):
    """factor and shift take a number in this unit to SI: (number + shift) * factor."""

    factor: float
    shift: float
    dimension: Dimension


class Reading(NamedTuple):
    """A text as it was understood: SI value, its dimension, and number and unit as typed (for the echo)."""

    value: float
    dimension: Dimension
    number: float
    unit: str

    def __str__(self) -> str:
        return f"{number(self.number)} {self.unit}".strip()


@lru_cache(maxsize=1024)
def unit(text: str) -> Unit:
    """The unit written in `text`, such as "mm", "m3/s", "L/s per m", "m^0.5/s" or "m^(1/3)/s".

    Raises InputError with the nearest known names for anything else.
    """
    shown, text = text, text.strip().translate(_PLAIN)
    if text in OFFSET_UNITS:
        factor, shift = OFFSET_UNITS[text]
        return Unit(factor, shift, _dimension(K=1))
    for pattern, name in _TWO_WORDS:
        text = pattern.sub(name, text)
    factor, dimension, at, count = 1.0, NUMBER, 0, 0
    while at < len(text):
        match = _FACTOR.match(text, at)
        count += 1
        if not match or match.end() == at or count > MOST_FACTORS:
            raise InputError(f"'{shown}' is not a unit this reader knows: type one such as mm, L/min, m3/s, US gal/h, kg/m3")
        factor_here, dimension_here = _row(match["name"], shown)
        power = Fraction(match["fraction"] or match["signed"] or match["power"] or 1)
        if match["sep"] in ("/", "per"):
            power = -power
        factor *= factor_here ** float(power)
        dimension *= dimension_here**power
        at = match.end()
    if not 0 < factor < math.inf:
        raise InputError(f"'{shown}' is too large or too small a unit to use: type one such as mm, L/min, m3/s")
    return Unit(factor, 0.0, dimension)


def _row(name: str, shown: str) -> tuple[float, Dimension]:
    name = _SPELLINGS.get(name, name)
    if name in UNITS:
        return UNITS[name]
    if name in _SHORTHANDS:
        short = unit(_SHORTHANDS[name])
        return short.factor, short.dimension
    if name in _AMBIGUOUS:
        raise InputError(f"'{shown}' can be read two ways: {_AMBIGUOUS[name]}")
    if name in OFFSET_UNITS:
        raise InputError(f"{name} stands alone, as in '20 {name}'; inside '{shown}' use K")
    known = [*UNITS, *OFFSET_UNITS, *_SPELLINGS, *_SHORTHANDS]
    near = [k for k in known if k.lower() == name.lower()] or difflib.get_close_matches(name, known, n=3, cutoff=0.5)
    nearest = f" Nearest: {', '.join(dict.fromkeys(_SPELLINGS.get(n, n) for n in near))}." if near else ""
    raise InputError(f"'{name}' is not a unit this reader knows.{nearest} Type one such as mm, L/min, m3/s, US gal/h, kg/m3")


def parse(text: str) -> Reading:
    """Read one quantity: "25 mm", "1 1/2 in", "2 ft 9 in", "12.5 L/s per m", "20 degC", "95 %".

    Raises InputError for text that is too long, not plain characters, ambiguous (1,250; bare gal), not finite, or not a quantity.
    """
    if not isinstance(text, str):
        raise InputError(f"{text!r} is not text: type a number and a unit, such as '25 mm'")
    if len(text) > LONGEST_TEXT:
        raise InputError(f"that is {len(text)} characters; a number and a unit take at most {LONGEST_TEXT}, such as '25 mm'")
    plain = text.strip().translate(_PLAIN).strip()
    if not plain.isascii() or not plain.isprintable():
        raise InputError("that has characters outside the plain alphabet: type digits, a point and a unit, such as '25 mm'")
    if re.search(r"\d,\d", plain):
        raise InputError(f"'{plain}' can be read two ways, because of the comma: type 1250 or 1.25, with a point and no comma")
    if plain.lower().lstrip("+-").startswith(("nan", "inf")):
        raise InputError(f"'{plain}' is not a number that can be used: type digits and a unit, such as '25 mm'")
    match = _NUMBER.match(plain)
    if not match:
        raise InputError(f"'{plain}' does not start with a number: type a number and a unit, such as '25 mm'")
    amount = _amount(match)
    rest = plain[match.end() :].strip()
    inches = re.fullmatch(r"(ft|feet|foot|')\s*(\d.*?)\s*(in|inch|inches|\")", rest)
    if inches and (more := _NUMBER.fullmatch(inches[2])) and not more["sign"]:
        if abs(amount) != int(abs(amount)) or _amount(more) >= 12:
            raise InputError(f"'{plain}' mixes feet and inches in an odd way: type whole feet and fewer than 12 inches, such as 2 ft 9 in")
        feet = abs(amount) + _amount(more) / 12
        amount, rest = math.copysign(feet, amount), "ft"
    if rest and not re.match(r"[A-Za-z%\"'/]", rest):
        raise InputError(f"'{plain}' has more than one number in it: type a number and a unit, such as '25 mm'")
    if rest.startswith("/"):
        raise InputError(f"'{plain}': a unit cannot start with '/': type one such as L/min")
    unit_here = unit(rest)
    value = (amount + unit_here.shift) * unit_here.factor
    if not math.isfinite(value):
        raise InputError(f"'{plain}' is too large a number to use: type a smaller one, such as '25 mm'")
    if rest in OFFSET_UNITS and value < 0:
        raise InputError(f"'{plain}' is colder than anything can be: type a temperature such as '15 degC'")
    return Reading(value, unit_here.dimension, amount, rest)


def _amount(match: re.Match) -> float:
    if match["number"] is not None:
        amount = float(match["number"])
    else:
        if int(match["under"]) == 0:
            raise InputError(f"'{match[0]}' divides by zero: type a number and a unit, such as '3/4 in'")
        amount = int(match["whole"] or 0) + int(match["over"]) / int(match["under"])
    return -amount if match["sign"] == "-" else amount


def read(text: str, wanted: str, what: str = "the value") -> float:
    """SI value of `text`, which must be the same kind of quantity as the unit `wanted`; `what` names it in messages.

    A bare number passes only where the wanted unit is a pure number without a name; an angle or a length must say its unit.
    """
    try:
        reading = parse(text)
    except InputError as error:
        raise InputError(f"{what}: {error}") from None
    target = unit(wanted)
    if not reading.unit and wanted:
        raise InputError(f"{what} = {text} has no unit: type it with one, such as {what} = {number(reading.number)} {wanted}")
    if reading.dimension != target.dimension:
        raise InputError(f"{what} = {text} is in {reading.dimension}, but {what} is measured in {target.dimension}: type it in {wanted or 'plain numbers'}")
    if _angle(reading.unit) != _angle(wanted):
        kinds = ("is not an angle", "an angle") if _angle(wanted) else ("is an angle", "a pure number")
        raise InputError(f"{what} = {text} {kinds[0]}, but {what} is {kinds[1]}: type it in {wanted or 'plain numbers'}")
    return reading.value


def _angle(unit_text: str) -> bool:
    return _SPELLINGS.get(unit_text, unit_text) in ("deg", "rad")


def convert(value: float, to: str) -> float:
    """An SI value as a number in the unit `to`."""
    target = unit(to)
    return value / target.factor - target.shift


def write(value: float, to: str, digits: int | None = 3) -> str:
    """An SI value as text in the unit `to`: `digits` significant figures, or as few as show it to six with None.

    The text can be read back by `read`.
    """
    return f"{number(convert(value, to), digits)} {to}".strip()


def number(value: float, digits: int | None = None) -> str:
    """A number as plain digits where that is readable, else with a power of ten; never a thousands comma."""
    if value == 0 or not math.isfinite(value):
        return "0" if value == 0 else str(value)
    shown = f"{value:.{(digits or 6) - 1}e}"
    exponent = int(shown.partition("e")[2])
    if not -5 < exponent < 9:
        text = shown.partition("e")[0]
        text = text if digits or "." not in text else text.rstrip("0").rstrip(".")
        return f"{text}e{exponent}"
    decimals = max((digits or 6) - 1 - exponent, 0)
    text = f"{float(shown):.{decimals}f}"
    if digits is None and "." in text:
        text = text.rstrip("0").rstrip(".")
    return text
