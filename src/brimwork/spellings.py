"""How people write units: other spellings, shorthands, words, signs; and names that must be asked about or cannot be taken."""

from __future__ import annotations

import difflib
import re
from collections.abc import Callable

SPELLINGS = {
    "l": "L",
    "litre": "L",
    "litres": "L",
    "liter": "L",
    "liters": "L",
    "ml": "mL",
    "millimetre": "mm",
    "millimetres": "mm",
    "millimeter": "mm",
    "millimeters": "mm",
    "centimetre": "cm",
    "centimetres": "cm",
    "centimeter": "cm",
    "centimeters": "cm",
    "kilogram": "kg",
    "kilograms": "kg",
    "gram": "g",
    "grams": "g",
    "watt": "W",
    "watts": "W",
    "volt": "V",
    "volts": "V",
    "amp": "A",
    "amps": "A",
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
    "miles": "mile",
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
    "pound": "lb",
    "pounds": "lb",
    "ounce": "oz",
    "ounces": "oz",
    "stones": "stone",
    "tonne": "t",
    "tonnes": "t",
    "degrees": "deg",
    "degree": "deg",
    "percent": "%",
    "currency": "cur",
    **{f"{system}{name}".replace(" ", ""): f"{system} {name}" for system in ("US", "imp") for name in ("gal", "quart", "pint", "fl oz")},
    "shortton": "short ton",
}
SHORTHANDS = {
    "lpm": "L/min",
    "lps": "L/s",
    "lph": "L/h",
    "cfs": "ft3/s",
    "mph": "mile/h",
    "USgpm": "US gal/min",
    "USgph": "US gal/h",
    "impgpm": "imp gal/min",
    "impgph": "imp gal/h",
}
_TONS = "tons of 1000 kg or of 2000 lb?"


def _of_two(named: str, unit: str) -> tuple[str, str, str]:
    return f"US or imperial {named}?", f"US {unit}", f"imp {unit}"


# name in small letters: what must be asked, and the two units that it may stand for
AMBIGUOUS = {
    **dict.fromkeys(("gal", "gals", "gallon", "gallons"), _of_two("gallons", "gal")),
    "gph": _of_two("gallons", "gal/h"),
    "gpm": _of_two("gallons", "gal/min"),
    **dict.fromkeys(("quart", "quarts", "qt", "qts"), _of_two("quarts", "quart")),
    **dict.fromkeys(("pint", "pints", "pt", "pts"), _of_two("pints", "pint")),
    "floz": _of_two("fluid ounces", "fl oz"),
    **dict.fromkeys(("ton", "tons"), (_TONS, "t", "short ton")),
}
# Quantities that people write in two units: the smaller one, how many of it make the larger, both in words, an example.
OF_TWO = {
    "ft": ("in", 12, "feet", "inches", "2 ft 9 in"),
    "lb": ("oz", 16, "pounds", "ounces", "5 lb 4 oz"),
    "stone": ("lb", 14, "stone", "pounds", "11 stone 4 lb"),
}
ASK_MONEY = "type cur for money, in the currency that you count in, as in 20 cur or 0.30 cur/kWh"
# names that this reader does not take, and what to type instead
INSTEAD = {
    "C": "type degC for a temperature, as in 20 degC, or deg for an angle",
    "F": "type degF for a temperature, as in 68 degF, or deg for an angle",
    **dict.fromkeys(("USD", "GBP", "EUR", "dollar", "dollars", "euro", "euros"), ASK_MONEY),
}
# times whose length in days people know, or agree on, better than this reader
CALENDAR = {**dict.fromkeys(("week", "weeks", "wk", "wks"), ("weeks", "14 days for two weeks")), **dict.fromkeys(("month", "months"), ("months", "30 days for a month")),
             **dict.fromkeys(("year", "years", "yr", "yrs"), ("years", "365 days for a year"))}  # fmt: skip
_PLAIN = str.maketrans(
    {
        "²": "^2",
        "³": "^3",
        "µ": "u",
        "μ": "u",
        "·": " ",
        "−": "-",
        **dict.fromkeys("\u00a0\u2007\u2009\u202f", " "),
        "°": "deg",
        "×": "*",
        "½": " 1/2",
        "¼": " 1/4",
        "¾": " 3/4",
        "⅛": " 1/8",
        "⅜": " 3/8",
        "⅝": " 5/8",
        "⅞": " 7/8",
        "⅓": " 1/3",
        "⅔": " 2/3",
        "′": "'",
        "’": "'",
        "″": '"',
        "”": '"',
        "‐": "-",
        "‑": "-",
        "–": "-",
    }
)
# Digits in groups of three, set apart by a thin space or one that does not break, as the SI writes and programs copy them: no other reading is possible.
# After a plain space somebody may have meant two numbers.
_GROUPS = re.compile(r"(?<![\d.,\s])\d{1,3}(?:[\u00a0\u2009\u202f]\d{3})+(?!\d)")
# Units that people write in several words; every pattern is short and bounded.
_MEASURES = (("gal", "gal(?:lon)?s?"), ("quart", "(?:quart|qt)s?"), ("pint", "(?:pint|pt)s?"), ("floz", r"fl(?:uid)?\.?\s*(?:oz|ounces?)"))
_WORDS: tuple[tuple[re.Pattern[str], str | Callable[[re.Match[str]], str]], ...] = (
    *((re.compile(rf"(?i)\bu\.?s\.?\s*{words}\b"), f"US{name}") for name, words in _MEASURES),
    *((re.compile(rf"(?i)\b(?:imp(?:erial)?|uk)\.?\s*{words}\b"), f"imp{name}") for name, words in _MEASURES),
    (re.compile(rf"(?i)\b{_MEASURES[-1][1]}\b"), "floz"),
    (re.compile(r"(?i)\bu\.?s\.?\s*gp([mh])\b"), lambda match: f"USgp{match[1].lower()}"),
    (re.compile(r"(?i)\b(?:imp(?:erial)?|uk)\.?\s*gp([mh])\b"), lambda match: f"impgp{match[1].lower()}"),
    (re.compile(r"(?i)\bshort\s+tons?\b"), "shortton"),
    (re.compile(r"(?i)\bsq(?:uare)?\.?\s*(mm|cm|km|m|met(?:er|re)s?|in|inch(?:es)?|ft|feet|foot|yd|yards?)\b(?![\^*\d])"), r"\1^2"),
    (re.compile(r"(?i)\bcu(?:bic)?\.?\s*(mm|cm|km|m|met(?:er|re)s?|in|inch(?:es)?|ft|feet|foot|yd|yards?)\b(?![\^*\d])"), r"\1^3"),
    (re.compile(r"(?i)^(?:deg(?:ree)?s?\s*c(?:elsius)?|celsius)$"), "degC"),
    (re.compile(r"(?i)^(?:deg(?:ree)?s?\s*f(?:ahrenheit)?|fahrenheit)$"), "degF"),
)
SHARES = {
    **{"half": "1/2", "quarter": "1/4", "third": "1/3", "two thirds": "2/3"},
    **dict.fromkeys(("three quarters", "three quarter", "three-quarter"), "3/4"),
}
SHARE = f"({'|'.join(sorted(SHARES, key=len, reverse=True))})"
# A number that begins as a share in words: "half inch", "half an inch", "three quarters of a mile".
_A_SHARE = re.compile(rf"(?i)^(?:an? |one )?{SHARE}(?:(?: of)? an?| of)?(?:-(?=[a-z])|\s+|$)")
_DOT_OF_AN_ABBREVIATION = re.compile(r"(?<=[A-Za-z])\.(?=[\s/]|$)")


def made_plain(text: str) -> str:
    """Signs that mean the same made one: spaces, groups of digits, primes, fractions, dashes, the dot after an abbreviation; a share in words at the start in figures."""
    text = _GROUPS.sub(lambda number: re.sub(r"\s", "", number[0]), text)
    text = share_in_figures(text.strip().translate(_PLAIN).strip().replace("''", '"'))
    return _DOT_OF_AN_ABBREVIATION.sub("", text)


def share_in_figures(text: str) -> str:
    """The same, with a share in words at its start in figures: "half an inch" is "1/2 inch"."""
    return _A_SHARE.sub(lambda match: f"{SHARES[match[1].lower()]} ", text).strip()


def tidied(text: str) -> str:
    """The same, with units of several words as one name: "cu ft" as "ft^3"."""
    text = made_plain(text)
    for pattern, name in _WORDS:
        text = pattern.sub(name, text)
    return text


def full_name(name: str) -> str:
    """The name of the table for another spelling: "litres" is "L"."""
    return SPELLINGS.get(name, name)


def spelt_out(tidy: str) -> str:
    """Names of several words as people write them: "USpint/h" is "US pint/h"."""
    return re.sub("[A-Za-z]+", lambda word: full_name(word[0]) if " " in full_name(word[0]) else word[0], tidy)


_US_ALONE = {name: meant[0] for name, (_, *meant) in AMBIGUOUS.items() if meant[0].startswith("US ")}


def meant_in_the_us(text: str) -> str:
    """Gallons, quarts, pints and fluid ounces of which nobody says which they are, as those of the US; any other text as it stands."""
    plain = tidied(text)
    words = {word.lower() for word in re.findall("[A-Za-z]+", plain)}
    if not words & _US_ALONE.keys() or words & {"us", "imp", "imperial", "uk"}:
        return text
    return spelt_out(re.sub("[A-Za-z]+", lambda word: _US_ALONE.get(word[0].lower(), word[0]), plain))


LONGEST_WORD = 200  # of which near ones are looked for


def nearest(word: str, words) -> str:
    """ " Nearest: ..." or ""."""
    if len(word) > LONGEST_WORD:
        return ""
    near = [known for known in words if known.lower() == word.lower()] or difflib.get_close_matches(word, list(words), n=3, cutoff=0.5)
    return f" Nearest: {', '.join(near)}." if near else ""
