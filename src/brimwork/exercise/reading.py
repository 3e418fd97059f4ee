"""What a learner typed, as a number and a unit: fair spellings made plain, then the bounded reader of `units`, then the kind of unit that is wanted.

Everything here is replacement of short bounded patterns in a text of at most 60 characters. Whatever is understood is echoed.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

from brimwork import system, units
from brimwork.exercise.question import Question
from brimwork.spellings import SHARE, SHARES, SHORTHANDS, SPELLINGS, meant_in_the_us, share_in_figures
from brimwork.unit_table import STANDARD_GRAVITY, UNITS
from brimwork.units import InputError, Reading, parse, unit, with_point

_WORDS = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_MONEY = r"(?:USD|US\$|GBP|EUR|CAD|AUD|dollars?|pounds sterling|euros?|bucks|[$\u00a3\u20ac\u00a5])"
_SUPER = str.maketrans("\u2070\u00b9\u2074\u2075\u2076\u2077\u2078\u2079\u207b\u2044\u2113", "01456789-/L")
_RAISED = str.maketrans("\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079\u207b", "0123456789-")
_TEN_TO = re.compile("(?<=10)[\u2070\u00b9\u00b2\u00b3\u2074-\u2079\u207b]{1,3}")
# What people write in several ways and the reader of units knows in one.
_RULES: tuple[tuple[re.Pattern, str | Callable[[re.Match], str]], ...] = (
    (re.compile(r"^[(\[]\s{0,3}([^()\[\]]{1,56})[)\]]$"), r"\1"),
    (re.compile(r"[?!;]{1,3}$"), ""),
    (re.compile(r"(?<=[\d ])\(([A-Za-z%/ ]{1,12}\d?)\)$"), r"\1"),
    (re.compile(r"(?i)^(?:(?:the )?(?:answer|result|total)(?: is)?|it is|it's|is|makes)\s{0,2}[:=]?\s{0,3}(?=[-+\d.~=a-z])"), ""),
    (re.compile(r"^[A-Za-z][A-Za-z_0-9]{0,11}\s{0,3}(?:=|:)\s{0,3}"), ""),
    (re.compile(r"(?i)^(?:about|around|approx(?:imately)?\.?|roughly|nearly|almost|circa|ca\.?|c\.|some|say|~|=|\u2248|\u2243|\u2245|:)\s{0,3}"), ""),
    (re.compile(r"(?i)^(?:about|approx\.?|~|=|\u2248)\s{0,3}"), ""),
    (re.compile(r"(?i)\s{1,3}(?:or so|approx(?:imately)?\.?|about|roughly|deep|high|long|wide|thick|tall|across|in all|in total|altogether|of (?:water|head|liner|pebbles))$"), ""),
    (re.compile(r"(?i)^(?:minus|negative)\s{1,3}"), "-"),
    (re.compile(rf"(?i)^{_MONEY}\s{{0,2}}([\d.,]{{1,15}})(?![\d.,])"), r"\1 cur"),
    (re.compile(rf"(?i)(?<=[\d\s.]){_MONEY}(?![A-Za-z])"), " cur "),
    (re.compile(r"^(\d{1,3})((?: \d{3}){1,3})(?![\d/.,])(?=\s{0,3}[A-Za-z%]|$)"), lambda match: match[1] + match[2].replace(" ", "")),
    (re.compile(r"(?i)^([-+]?\d{1,12}(?:\.\d{1,12})?)\s{0,2}[x*\u00d7]\s{0,2}10\s{0,2}(?:\^|\*\*)\s{0,2}\(?([-+]?\d{1,2})\)?"), r"\1e\2"),
    (re.compile(r"^(\d{1,3}) and (\d{1,2}\s?/\s?\d{1,2})(?!\d)"), r"\1 \2"),
    (re.compile(r"(?i)^(\d{1,3})\s?(?:['\u2032\u2019]\s?|(?:foot|feet|ft\.?)\s)(\d{1,2}(?:\.\d{1,3})?)$"), r"\1 ft \2 in"),
    (re.compile(r"(?i)(?<=\d)\s?(ft|feet|foot)\.?,\s?(?=\d)"), r" \1 "),
    (re.compile(r"(?i)^([\d./ ]{1,14}?)\s?(gals?|gallons?|quarts?|pints?|fl\.? ?oz|gpm|gph)\b\.?\s?[(,]?\s?(u\.?s\.?|imp(?:erial)?|uk)\.?\)?(?=$|[/ ])"), r"\1 \3 \2"),
    (re.compile(r"(?i)^([\d.]{1,12})\s?(?:mbars?|millibars?)$"), lambda match: f"{_tens(match[1], -3)} bar"),
    (re.compile(r"^([\d.]{1,12})\s?MJ$"), lambda match: f"{_tens(match[1], 6)} J"),
    (re.compile(r"(?i)\bkilowatt[- ]?hours?\b"), "kWh"),
    (re.compile(r"(?i)(?<=[\d ])(?:watt[- ]?hours?|Wh)$"), "W*h"),
    (re.compile(r"(?i)\bp\.s\.([if])\.?"), r"ps\1"),
    (re.compile(r"(?<=[\d ])(k?N)\s?m\^?-2$"), r"\1/m2"),
    (re.compile(r"(?<=[\d ])(mm|cm|m|L|l)\s?(s|min|h)\^?-1$"), r"\1/\2"),
    (re.compile(rf"(?i)^(\d{{1,3}}|{'|'.join(_WORDS)}|an?) and (?:an? )?{SHARE}\b"), lambda match: f"{_counted(match[1])} {SHARES[match[2].lower()]}"),
    (re.compile(r"^.{1,60}$"), lambda match: share_in_figures(match[0])),
    (re.compile(rf"(?i)^({'|'.join(_WORDS)}|an?)(?=\s[a-z])"), lambda match: _counted(match[1])),
    (re.compile(r"(?<=\d)[-_](?=[A-Za-z]{1,12}$)"), " "),
    (re.compile(r"(?<=[\d ])dm(?:\^?3|\u00b3)(?!\d)"), "L"),
    (re.compile(r"(?<=[\d ])(k?N)m$"), r"\1*m"),
    (re.compile(r"(?i)\bper\s{1,2}cent\b|\bpct\b|\bpercent(?:age)?\b"), "%"),
    (re.compile(r"(?i)\bpounds? (?:force )?per square (inch|foot)\b|\blbs?f?\s{0,1}(?:/|per)\s{0,1}sq\.?\s{0,1}(in|ft)\b"),
     lambda match: "psi" if (match[1] or match[2]).lower() in ("inch", "in") else "psf"),
    (re.compile(r"(?i)\b(lit(?:er|re)s?|met(?:er|re)s?|gallons?|gal|feet|foot|m3|l|kg|ft3) (?:an?|each|every) (?=[a-z])"), r"\1 per "),
    (re.compile(r"(?i)\b((?:milli|centi)?met(?:er|re)s?|mm|cm|m|in|inch(?:es)?|ft|feet|foot|yards?|yd)\.? (squared|cubed)\b"), lambda match: match[1] + "23"[match[2].lower() == "cubed"]),
    (re.compile(r"(?i)\b(sq|cu)\.?\s{0,1}(mm|cm|m|in|ft|yd)s?\b\.?"), lambda match: match[2].lower() + "23"[match[1].lower() == "cu"]),
    (re.compile(r"(?<=[A-Za-z\d])[\u00b7*. ]?(?![eE]-)([A-Za-z]{1,3})\^?-([1-3])(?![\d.])(?!\s{0,2}(?:in|\"))"), r" \1^-\2"),
)  # fmt: skip
_SPELT = {
    **dict.fromkeys(("kilo", "kilos", "kgs", "kilogramme", "kilogrammes"), "kg"), **dict.fromkeys(("newton", "newtons"), "N"), "kilonewton": "kN", "kilonewtons": "kN",
    **dict.fromkeys(("pascal", "pascals"), "Pa"), **dict.fromkeys(("kilopascal", "kilopascals"), "kPa"), "bars": "bar", "mbar": "", "millibar": "",
    **dict.fromkeys(("ltr", "ltrs", "lt", "lts", "lit", "ls"), "L"), **dict.fromkeys(("mls", "cc", "millilitre", "millilitres", "milliliter", "milliliters"), "mL"),
    **dict.fromkeys(("mins", "minuets"), "min"), **dict.fromkeys(("hrs", "hs"), "h"), "secs": "s", **dict.fromkeys(("dys", "dag"), "day"),
    **dict.fromkeys(("mms", "millimeters"), "mm"), "cms": "cm", "mtr": "m", "mtrs": "m", "ms": "", "ins": "in", "fts": "ft", "yds": "yd", "lbm": "lb",
    **dict.fromkeys(("sqm", "sqmm", "sqcm", "sqft", "sqin", "sqyd"), ""), "cbm": "m3", "cum": "m3", "cuft": "ft3", "cuin": "in3", "cuyd": "yd3",
    **dict.fromkeys(("kilowatt", "kilowatts"), "kW"), "kwhs": "kWh", "kwhr": "kWh", "kwhrs": "kWh", "ampere": "A", "amperes": "A", "joule": "J", "joules": "J",
    **dict.fromkeys(("decibel", "decibels"), "dB"), "ohms": "ohm", "radian": "rad", "radians": "rad", "degs": "deg", "poundforce": "lbf", "lbsf": "lbf", "millivolts": "mV",
    "milliamps": "mA", "horsepower": "hp", "millivolt": "mV", "usgals": "USgal", "usg": "USgal", "fps": "ft/s",
}  # fmt: skip
_SPELT |= {f"sq{unit}": f"{unit}2" for unit in ("m", "mm", "cm", "ft", "in", "yd")}
_SPELT = {word: name for word, name in _SPELT.items() if name}
_TWO_SIZES = {"mpa", "mn", "mv", "ma", "mw"}  # a small and a large m make two units: never changed
_TOKEN = re.compile(r"[A-Za-z]{1,14}")
_TWO = re.compile(r"^([\d.]{1,12})\s{0,2}([A-Za-z]{1,9})\.?,?\s{0,2}(?:and\s{1,2})?([\d.]{1,12})\s{0,2}([A-Za-z]{1,9})\.?$")
_FORCE = re.compile(r"\blbs?\b")
_FIGURES = re.compile(r"[-+\s]{0,4}(\d{0,12})(?:\.(\d{0,20}))?(?:[eE]([-+]?\d{1,2}))?(?![\d\s]{0,12}/)")


@dataclass(frozen=True)
class Typed:
    """An answer as it was read. `half` is half of the last place that was typed (SI): as close as the number can be told; `figures` counts its digits."""

    reading: Reading
    half: float
    figures: int

    @property
    def value(self) -> float:
        return self.reading.value


def _counted(word: str) -> str:
    return "1" if word.lower() in ("a", "an") else str(_WORDS.index(word.lower())) if word.lower() in _WORDS else word


def _tens(digits: str, power: int) -> str:
    """A number so many tens larger, in figures; as it is where it is none."""
    try:
        return units.number(float(digits) * 10.0**power)
    except ValueError:
        return digits


def plainly(text: str) -> str:
    """A fair spelling as `units.parse` takes it: "about 12 Kg" is "12 kg", "half an inch" is "1/2 in", "2 min 20 s" is "140 s"."""
    if not isinstance(text, str) or len(text) > units.LONGEST_TEXT:
        return text
    powers = _TEN_TO.sub(lambda match: f"^{match[0].translate(_RAISED)}", text)
    plain = " ".join(powers.translate(_SUPER).split())
    for pattern, new in _RULES:
        plain = pattern.sub(new, plain).strip()
    return _both(_TOKEN.sub(lambda match: _spelt(match[0]), plain))


@cache
def _known() -> dict[str, str]:
    """Names of units by their small letters, and other spellings."""
    return {name.lower(): SPELLINGS.get(name, name) for name in (*UNITS, *SPELLINGS, *SHORTHANDS) if name.lower() not in _TWO_SIZES} | _SPELT


def _spelt(word: str) -> str:
    return word if word in SPELLINGS else _known().get(word.lower(), word)


def _both(text: str) -> str:
    """ "2 min 20 s" as one number of the smaller unit; feet and inches are the reader's own."""
    two = _TWO.match(text)
    if not two:
        return text
    first = "min" if two[2] == "m" and two[4] in ("s", "sec", "second", "seconds") else two[2]
    try:
        large, small = parse(f"{two[1]} {first}"), parse(f"{two[3]} {two[4]}")
    except InputError:
        return text
    if large.dimension != small.dimension or unit(large.unit).factor <= unit(small.unit).factor or small.value >= unit(large.unit).factor or large.unit == "ft":
        return text
    return f"{units.number(units.convert(large.value + small.value, small.unit))} {small.unit}"


def typed_reading(question: Question, text: str) -> Typed:
    """The answer as number and unit; the question's word ("bags") counts as a unit, and money needs none. Raises InputError."""
    plain = with_point(plainly(text))
    if isinstance(plain, str):
        plain = _in_units(question, plain)
    reading = parse(plain)
    if question.unit == "cur" and not reading.unit:
        reading = Reading(reading.value, unit("cur").dimension, reading.number, "cur")
    reading = _as_meant(question, reading)
    half, figures = _last_place(plain)
    return Typed(reading, half * unit(reading.unit).factor, figures)


def _in_units(question: Question, plain: str) -> str:
    """Without the word of the question, with its gallons and its money as the reader of units has them."""
    word = next((word for word in _labels(question.label) if plain.casefold().endswith(word)), "") if question.label else ""
    plain = plain[: len(plain) - len(word)]
    if system.current() == system.FEET:
        plain = meant_in_the_us(plain)  # whoever has chosen US units means these, and the echo says so
    return re.sub(r"(?i)(?<=[\d ])money$", "cur", plain) if question.unit == "cur" else plain  # the word that the question itself has


def _as_meant(question: Question, reading: Reading) -> Reading:
    """Pounds where a force is asked for, or a pressure, and a force where it is asked what something weighs: one is meant for the other."""
    wanted = unit(question.unit).dimension
    pressure, area_mass = unit("Pa").dimension, unit("kg/m2").dimension
    if wanted == pressure and reading.dimension == area_mass and "lb" in reading.unit:
        return Reading(reading.value * STANDARD_GRAVITY, pressure, reading.number, _FORCE.sub("lbf", reading.unit))
    if wanted == unit("N").dimension and reading.dimension == unit("kg").dimension and "lb" in reading.unit:
        return Reading(reading.value * STANDARD_GRAVITY, wanted, reading.number, _FORCE.sub("lbf", reading.unit))
    if wanted == unit("kg").dimension and reading.dimension == unit("N").dimension and "weigh" in f"{question.text} {question.name}":
        return Reading(reading.value / STANDARD_GRAVITY, wanted, reading.number, reading.unit)
    return reading


def _labels(label: str) -> tuple[str, ...]:
    """The word of a question as people type it."""
    word = label.casefold()
    return word, word.removesuffix("s"), word.partition("(")[0]


def _last_place(plain: str) -> tuple[float, int]:
    """Half of the last place typed, and how many figures count; nothing and none for a fraction, which is exact."""
    found = _FIGURES.match(plain)
    if not found or re.match(r"[-+\s\d.]{0,14}(?:'|ft\b|feet\b|foot\b)\s{0,2}-?\s{0,2}\d", plain):
        return 0.0, 0
    whole, part, power = found[1].lstrip("0"), found[2], int(found[3] or 0)
    if part is None:
        kept = max(len(whole.rstrip("0")), min(len(whole), 3))  # noughts at the end count up to the three figures that are asked for
        return 0.5 * 10.0 ** (power + len(whole) - kept), kept
    return 0.5 * 10.0 ** (power - len(part)), len(whole + part if whole else part.lstrip("0"))
