"""Units: text in, SI floats inside, text out.

The only place where text becomes a number with a unit, or the other way round: declarations, design files and learners' answers all
pass through `read`. The table is closed and the reader is bounded (length, digits, number of factors), so no input can hang it or reach
anything but these rows. Every row is tested against pint.
"""

from __future__ import annotations

import difflib
import math
import re
from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

from brimwork.dimensions import FORCE, KINDS_OF_QUANTITY, MASS, NUMBER, TEMPERATURE, Dimension, kind
from brimwork.spellings import AMBIGUOUS, ASK_MONEY, CALENDAR, INSTEAD, OF_TWO, SHORTHANDS, SPELLINGS, full_name, made_plain, spelt_out, tidied
from brimwork.unit_table import OFFSET_UNITS, STANDARD_GRAVITY, UNITS

LONGEST_TEXT = 60
MOST_FACTORS = 6


class InputError(ValueError):
    """Something a person typed cannot be used; the message says what was given, what was wanted and what to type."""


class NoValue(InputError):
    """A formula has no result for these values; `words` say so without letters, for those who see a design and no formula."""

    def __init__(self, said: str, words: str) -> None:
        super().__init__(said)
        self.words = words


class Unread(InputError):
    """A text that is no quantity: `fault` says why. Without `advice`, whoever knows what is wanted says what to type instead."""

    def __init__(self, fault: str, advice: str = "") -> None:
        super().__init__(f"{fault}: {advice or 'type a number and a unit, such as 25 mm, 40 L/min or 3 US gal'}")
        self.fault, self.advice = fault, advice


class TwoWays(Unread):
    """A unit that stands for two sizes of one kind of quantity, such as the gallon; `dimension` is that kind."""

    def __init__(self, fault: str, advice: str, dimension: Dimension) -> None:
        super().__init__(fault, advice)
        self.dimension = dimension


_DIGITS = r"(?:\d{1,12}(?:\.\d{0,20})?|\.\d{1,20})(?:[eE][+-]?\d{1,2})?"
_NUMBER = re.compile(rf"(?P<sign>[+-]?)\s*(?:(?:(?P<whole>\d{{1,4}})(?:\s+|-))?(?P<over>\d{{1,4}})\s?/\s?(?P<under>\d{{1,4}})(?![\d.])|(?P<number>{_DIGITS}))")
_FACTOR = re.compile(
    r"""\s*(?P<sep>/|\*|\bper\b|)\s*(?P<name>[A-Za-z]+|%)(?:\s*(?:\^|\*\*)\s*(?:\((?P<fraction>\d/[1-9])\)|\(?(?P<signed>-?\d(?:\.\d{1,3})?)\)?)|(?P<power>[1-9](?![\d.])))?"""
)
# A comma that no group of thousands has: after 0 or more than three digits, or before other than three.
_DECIMAL_COMMA = re.compile(r"^(\s{0,9}[+-]?\s{0,3}(?:0{1,12}|\d{4,12}|\d{1,12}(?=,(?!\d{3}(?!\d))))),(\d{1,20})(?![\d.,])")
_COMMA = re.compile(r"(?P<sign>[+-]?)\s{0,3}(?P<whole>[1-9]\d{0,2}),(?P<group>\d{3})(?P<rest>(?![\d.,]).*)")
_BARE_DEGREES = re.compile(r"(?<=[\d.])\s{0,3}([CF])$")
_TOO_LONG = re.compile(r"[+-]?\s{0,3}(?:\d{13}|\d{0,12}\.\d{21})")
_TOO_FAR = re.compile(r"[+-]?\s{0,3}[\d.]{1,34}[eE](?P<sign>[+-]?)\d{3}")
_SECOND = re.compile(r"""(?![A-Za-z]+\d$)(?:(?P<unit>[A-Za-z]+)\s*|'\s*-?\s*)(?P<more>\d[\d\s./-]*)(?P<small>[A-Za-z]+|"|)""")


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


class _Factor(NamedTuple):
    below: bool  # the line
    loose: bool  # joined by a space or a star
    name: str
    power: Fraction
    shown: str


@lru_cache(maxsize=1024)
def unit(text: str) -> Unit:
    """The unit written in `text`, such as "mm", "m3/s", "L/s per m", "m^0.5/s" or "m^(1/3)/s".

    Raises InputError with the nearest known names for anything else, and where the text has two meanings.
    """
    shown, plain = text.strip(), tidied(text)
    if plain in OFFSET_UNITS:
        factor, shift = OFFSET_UNITS[plain]
        return Unit(factor, shift, TEMPERATURE)
    if plain in ("'", '"'):
        plain = SPELLINGS[plain]
    factors = _factors(plain, shown)
    rows = [_row(factor.name, shown) for factor in factors]
    _one_meaning(factors, shown)
    size, dimension = 1.0, NUMBER
    for one, (size_here, dimension_here) in zip(factors, rows):
        power = -one.power if one.below else one.power
        size *= size_here ** float(power)
        dimension *= dimension_here**power
    if not 0 < size < math.inf:
        raise Unread(f"'{shown}' is too large or too small a unit to use")
    for one in factors:
        if one.name.lower() in AMBIGUOUS:
            raise _doubt(one.name, shown, dimension)
    return Unit(size, 0.0, dimension)


def powers(text: str) -> list[tuple[str, Fraction]]:
    """The names in a unit, each with its power: "lb ft/s2" has lb, ft and s^-2. Raises InputError as `unit` does."""
    unit(text)
    return [(full_name(one.name), -one.power if one.below else one.power) for one in _factors(tidied(text), text.strip())]


def _factors(text: str, shown: str) -> list[_Factor]:
    found: list[_Factor] = []
    at = 0
    while at < len(text):
        match = _FACTOR.match(text, at)
        if not match or match.end() == at or len(found) == MOST_FACTORS:
            raise Unread(f"'{shown}' is not a unit this reader knows", _advice_for(text))
        power = Fraction(match["fraction"] or match["signed"] or match["power"] or 1)
        bare = match[0].strip().removeprefix(match["sep"]).strip()
        found.append(
            _Factor(match["sep"] in ("/", "per"), match["sep"] in ("", "*"), match["name"], power, bare.replace(match["name"], full_name(match["name"]), 1))
        )
        at = match.end()
    return found


def _advice_for(text: str) -> str:
    return "leave the brackets out and put a / before each unit below the line, as in kg/m/s2" if re.search(r"/\s*\(", text) else ""


def _one_meaning(factors: list[_Factor], shown: str) -> None:
    """Refuse "kg/m s2", which may mean kg/(m s2) or (kg/m) s2."""
    first = next((place for place, factor in enumerate(factors) if factor.below), len(factors))
    if not any(factor.loose for factor in factors[first:]):
        return
    above = [factor.shown for factor in factors[:first]]
    loose = [factor.shown for factor in factors[first:] if factor.loose]
    below = [factor.shown for factor in factors[first:] if not factor.loose]
    ways = "/".join([" ".join(above) or "1", *(factor.shown for factor in factors[first:])]), "/".join([" ".join(above + loose), *below])
    raise Unread(f"'{shown}' can be read two ways", f"type {ways[0]} or {ways[1]}")


def _doubt(name: str, shown: str, dimension: Dimension) -> TwoWays:
    asked, *meanings = AMBIGUOUS[name.lower()]
    alone = rf"(?<![A-Za-z]){re.escape(name)}(?![A-Za-z])"
    ways = " or ".join(f"'{spelt_out(re.sub(alone, meaning, tidied(shown), count=1))}'" for meaning in meanings)
    return TwoWays(f"'{shown}' can be read two ways, {asked.removesuffix('?')}", f"type {ways}", dimension)


def _row(name: str, shown: str) -> tuple[float, Dimension]:
    name = full_name(name)
    if name in UNITS:
        return UNITS[name]
    if name in SHORTHANDS:
        short = unit(SHORTHANDS[name])
        return short.factor, short.dimension
    if name.lower() in AMBIGUOUS:
        meant = unit(AMBIGUOUS[name.lower()][1])
        return meant.factor, meant.dimension
    if name in OFFSET_UNITS:
        raise Unread(f"{name} stands alone, as in '20 {name}'", f"inside '{shown}' use K")
    if name in INSTEAD:
        raise Unread(f"'{name}' alone is not a unit this reader knows", INSTEAD[name])
    if name.lower() in CALENDAR:
        counted, example = CALENDAR[name.lower()]
        raise Unread(f"time in {counted} is not known here", f"type it in days, such as {example}")
    known = [*UNITS, *OFFSET_UNITS, *SPELLINGS, *SHORTHANDS]
    near = [k for k in known if k.lower() == name.lower()] or difflib.get_close_matches(name, known, n=3, cutoff=0.6)
    nearest = f" (nearest: {', '.join(dict.fromkeys(full_name(n) for n in near))})" if near else ""
    raise Unread(f"'{name}' is not a unit this reader knows{nearest}")


def parse(text: str) -> Reading:
    """Read one quantity: "25 mm", "1 1/2 in", "1-1/2 in", "2 ft 9 in", "5 lb 4 oz", "12.5 L/s per m", "20 degC", "95 %".

    Raises InputError for text that is too long, not plain characters, ambiguous (1,250; bare gal), not finite, or not a quantity.
    """
    if not isinstance(text, str):
        raise InputError(f"{text!r} is not text: type a number and a unit, such as '25 mm'")
    return _parsed(text)


@lru_cache(maxsize=4096)
def _parsed(text: str) -> Reading:
    plain = _checked(text)
    match = _NUMBER.match(plain)
    if not match:
        raise Unread(f"'{plain}' does not start with a number" if plain else "nothing was typed")
    amount = _amount(match)
    rest = plain[match.end() :].strip()
    if (second := _SECOND.fullmatch(rest)) and (two := OF_TWO.get(full_name(second["unit"] or "'"))) and full_name(second["small"]) in (two[0], ""):
        amount, rest = _together(amount, second, two, plain), full_name(second["unit"] or "'")
    _only_a_unit(rest, plain)
    unit_here = unit(rest)
    value = (amount + unit_here.shift) * unit_here.factor
    if not math.isfinite(value):
        raise Unread(f"'{plain}' is too large a number to use")
    if unit_here.dimension == TEMPERATURE and value < 0:
        raise Unread(f"'{plain}' is colder than anything can be (0 K, which is -273.15 degC or -459.67 degF)", "type a temperature such as 15 degC or 59 degF")
    return Reading(value, unit_here.dimension, amount, rest)


def _checked(text: str) -> str:
    """`text` with its signs made plain. Raises InputError where it cannot be one number with a unit."""
    if len(text) > LONGEST_TEXT:
        raise InputError(f"that is {len(text)} characters; a number and a unit take at most {LONGEST_TEXT}, such as '25 mm'")
    plain = made_plain(text)
    if sign := re.search("[$\u00a3\u20ac\u00a5]", plain):
        raise Unread(f"the sign {sign[0]} is not a unit this reader knows", ASK_MONEY)
    if not plain.isascii() or not plain.isprintable():
        raise InputError("that has characters outside the plain alphabet: type digits, a point and a unit, such as '25 mm'")
    if re.search(r"\d,\d", plain):
        raise _comma(plain)
    if plain.lower().lstrip("+-").startswith(("nan", "inf")):
        raise InputError(f"'{plain}' is not a number that can be used: type digits and a unit, such as '25 mm'")
    if far := _TOO_FAR.match(plain):
        raise Unread(f"'{plain}' is too {'small' if far['sign'] == '-' else 'large'} to be meant")
    if _TOO_LONG.match(plain):
        raise Unread(f"'{plain}' has more digits than can be meant")
    return plain


def with_point(text: str) -> str:
    """`text` with its decimal comma made a point, where it can be nothing but a decimal comma: "5,85 mm", "0,125 m".

    The comma is a decimal sign of the SI too. It is no such sign for certain in "1,250 mm", which is left as it is, and `parse` refuses it. For
    those who show what they have read; others let `parse` refuse every comma.
    """
    return _DECIMAL_COMMA.sub(r"\1.\2", text) if isinstance(text, str) and len(text) <= LONGEST_TEXT else text


def _comma(plain: str) -> InputError:
    """What to say of a number with a comma in it."""
    one = with_point(plain)
    if one != plain:
        return InputError(f"'{plain}' has a comma in its number: type {one}, with a point")
    first = _COMMA.match(plain)
    if not first:
        return InputError(f"'{plain}' has commas in it that cannot be read: type one number with a point, such as 1250 or 1.25")
    ways = [f"{first['sign']}{first['whole']}{between}{first['group']}{first['rest']}" for between in ("", ".")]
    return InputError(f"'{plain}' can be read two ways, because of the comma: type {' or '.join(ways)}, with a point and no comma")


def _together(large: float, second: re.Match, two: tuple[str, int, str, str, str], plain: str) -> float:
    more, (_, count, ones, others, such) = _NUMBER.fullmatch(second["more"].strip()), two
    if not more or not second["small"]:
        raise Unread(f"'{plain}' has more than one number in it", f"type {ones} and {others} with both units, such as {such}, or one number with its unit")
    if abs(large) != int(abs(large)) or _amount(more) >= count:
        raise Unread(f"'{plain}' mixes {ones} and {others} in an odd way", f"type whole {ones} and fewer than {count} {others}, such as {such}")
    return math.copysign(abs(large) + _amount(more) / count, large)


def _only_a_unit(rest: str, plain: str) -> None:
    if rest.startswith("/"):
        raise Unread(f"'{plain}': a unit cannot start with '/'", "type a fraction of whole numbers, as in 3/4 in, or a unit such as L/min")
    if rest and not re.match(r"[A-Za-z%\"']", rest) or re.search(r"[A-Za-z%\"']\s{0,60}[-+ ][\d.]", rest):
        raise Unread(f"'{plain}' has more than one number in it")


def _amount(match: re.Match) -> float:
    if match["number"] is not None:
        amount = float(match["number"])
    else:
        if int(match["under"]) == 0:
            raise Unread(f"'{match[0]}' divides by zero", "type a number and a unit, such as 3/4 in")
        amount = int(match["whole"] or 0) + int(match["over"]) / int(match["under"])
    return -amount if match["sign"] == "-" else amount


def read(text: str, wanted: str, what: str = "the value", example: str = "", also: str = "", way: Callable[[str], str] | None = None) -> float:
    """SI value of `text`, which must be the same kind of quantity as the unit `wanted`.

    For messages: `what` names it, `example` is what one might type, `also` another unit of that kind, `way` puts a value as one types it ("H=12mm"). A bare number passes only where the wanted
    unit is a pure number without a name; an angle or a length must say its unit, but for 0, which is the same in all of them. Where a temperature
    is wanted, "20 C" and "68 F" are read too. Raises InputError, which says what to type.

    >>> import brimwork
    >>> round(brimwork.read("2 ft 9 in", "m"), 9)
    0.8382
    >>> brimwork.read("3 kg", "m", what="the length")
    Traceback (most recent call last):
    brimwork.units.InputError: the length = 3 kg is a mass, but a length is wanted: type one such as the length = 25 m
    """
    target = unit(wanted)
    if target.dimension == TEMPERATURE and isinstance(text, str):
        text = _BARE_DEGREES.sub(r" deg\1", text.strip())
    try:
        reading = parse(text)
    except InputError as error:
        raise _not_read(error, text, wanted, what, example) from None
    if (reading.unit or not wanted) and reading.dimension == target.dimension and _angle(reading.unit) == _angle(wanted):
        return reading.value
    if not reading.unit and reading.number == 0 and target.dimension != TEMPERATURE:
        return 0.0
    if reading.unit:
        raise _other_kind(reading, text, wanted, what, example)
    ways = " or ".join((way or f"{what} = {{}}".format)(f"{number(reading.number)} {name}") for name in dict.fromkeys((wanted, also)) if name)
    raise InputError(f"{what} = {text} has no unit, and {_kind(wanted, target.dimension)} is wanted: type it with one, such as {ways}")


def _not_read(error: InputError, text: str, wanted: str, what: str, example: str) -> InputError:
    """What `parse` says of a text, with what is wanted."""
    target = unit(wanted).dimension
    if isinstance(error, TwoWays) and error.dimension != target:
        sizes = error.fault.rpartition(", ")[2]
        return InputError(f"{what} = {text} is {kind(error.dimension)} ({sizes}), but {_wanted(wanted, what, example)}")
    if isinstance(error, TwoWays):
        return InputError(f"{what} = {text}: {error}")
    if isinstance(error, Unread):
        return InputError(f"{what}: {error.fault}: {error.advice or _wanted(wanted, what, example)}")
    return InputError(f"{what}: {error}")


def _other_kind(reading: Reading, text: str, wanted: str, what: str, example: str) -> InputError:
    given = _kind(reading.unit, reading.dimension)
    return InputError(f"{what} = {text} is {given}, but {_wanted(wanted, what, example)}{_meant(reading, unit(wanted))}")


def _wanted(wanted: str, what: str, example: str) -> str:
    example = example or f"{what} = {f'25 {wanted}' if wanted else '0.5'}"
    return f"{_kind(wanted, unit(wanted).dimension)} is wanted: type one such as {example}"


def _meant(given: Reading, target: Unit) -> str:
    """A hint where somebody typed L/m for litres a minute, or a mass for its weight, or the other way round."""
    if given.unit.endswith("/m") and unit(f"{given.unit}in").dimension == target.dimension:
        return f" (m is a metre; for a minute type {given.unit}in)"
    pounds = "lb" in given.unit or "pound" in given.unit
    if (given.dimension, target.dimension) == (MASS, FORCE):
        return f" ({given} weighs {write(given.value * STANDARD_GRAVITY, 'lbf' if pounds else 'N')})"
    if (given.dimension, target.dimension) == (FORCE, MASS):
        return f" ({given} is the weight of {write(given.value / STANDARD_GRAVITY, 'lb' if pounds else 'kg')})"
    return ""


def _kind(unit_text: str, dimension: Dimension) -> str:
    return (
        "an angle" if _angle(unit_text) else "a percentage" if full_name(unit_text) == "%" else KINDS_OF_QUANTITY.get(dimension) or f"a quantity in {unit_text}"
    )


def _angle(unit_text: str) -> bool:
    return full_name(unit_text) in ("deg", "rad")


def convert(value: float, to: str) -> float:
    """An SI value as a number in the unit `to`."""
    target = unit(to)
    return value / target.factor - target.shift


def write(value: float, to: str, digits: int | None = 3) -> str:
    """An SI value as text in the unit `to`: `digits` significant figures, or as few as show it to six with None.

    The text can be read back by `read`. Raises InputError for a unit that is not known.

    >>> import brimwork
    >>> brimwork.write(0.001, "US gal/min")
    '15.9 US gal/min'
    """
    return f"{number(convert(value, to), digits)} {to}".strip()


@lru_cache(4096)
def number(value: float, digits: int | None = None) -> str:
    """A number as plain digits where that is readable, else with a power of ten; never a thousands comma."""
    if value == 0 or not math.isfinite(value):
        return "0" if value == 0 else str(value)
    shown = f"{value:.{(digits or 6) - 1}e}"
    exponent = int(shown.partition("e")[2])
    if not -5 < exponent < 9:
        text = shown.partition("e")[0]
        return f"{text if digits else text.rstrip('0').rstrip('.')}e{exponent}"
    decimals = max((digits or 6) - 1 - exponent, 0)
    text = f"{float(shown):.{decimals}f}"
    if digits is None and "." in text:
        text = text.rstrip("0").rstrip(".")
    return text
