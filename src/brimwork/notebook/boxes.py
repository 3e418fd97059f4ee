"""What stands in the box of a value, and what somebody typed there: between the page and a design file."""

from __future__ import annotations

import re
from contextlib import suppress
from typing import Any

from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.limits import Bounds
from brimwork.design.typed.meaning import as_meant
from brimwork.design.typed.reading import Corners, Curve, Date, Dates, Field, OneOf, Several
from brimwork.shown import clipped
from brimwork.units import InputError

UNKNOWN = "don't know yet"


def empty_words(key: str, region: str) -> str:
    section_, _, name = key.partition(".")
    return SECTIONS[section_][name].hint(region) or UNKNOWN


_LARGER = {"mm": ("m", "cm"), "in": ("ft",)}  # tried where a number is no size in the unit of its box


def unit_offered(key: str, text: str, region: str) -> str:
    """For a bare number what was most likely meant, as far as the box takes it: in the unit of the example that the empty box shows, or in a larger one of
    length. To be offered, never to be taken by itself."""
    section_, _, name = key.partition(".")
    field = SECTIONS.get(section_, {}).get(name)
    if not isinstance(field, Field) or not re.fullmatch(r"\s*\d{1,9}([.,]\d{1,6})?\s*", text):
        return ""
    unit = re.match(r"(?:such as|usual:) [\d./ ]+ ([^\d,( ][^,(]*)", field.hint(region))
    if not unit:
        return ""
    for one in (unit[1].strip(), *_LARGER.get(unit[1].strip(), ())):
        with suppress(InputError):
            field.read(offer := f"{text.strip()} {one}", key)
            return offer
    return ""


def as_typed(key: str, text: Any) -> str:
    """What the file says as one would type it into the box."""
    section_, _, name = key.partition(".")
    field = SECTIONS[section_][name]
    if isinstance(field, Several | Dates):
        return ", ".join(map(str, text))
    if isinstance(field, Curve | Corners):
        return "; ".join(" at ".join(map(str, pair)) for pair in text)
    return str(text)


def typed_for(key: str, text: str, region: str) -> Any:
    """What a design file would say for what was typed into a box: text, number, list, or None for nothing known. Raises InputError."""
    section, _, name = key.partition(".")
    if section not in SECTIONS or name not in SECTIONS[section]:
        raise InputError(f"there is no value '{clipped(key)}' in a design")
    field: Any
    field, text = SECTIONS[section][name], text.strip()
    if text in ("", UNKNOWN, empty_words(key, region)):
        return None
    if not isinstance(field, OneOf | Date | Dates):
        text = as_meant(text, region)
    if isinstance(field, Several | Dates):
        return [part.strip() for part in text.split(",")]
    if isinstance(field, Curve | Corners):
        return [[side.strip() for side in pair.split(" at ")] for pair in text.split(";")]
    if isinstance(field, OneOf | Bounds | Date) or field.unit:
        return text
    value = field.read(text, key)  # a plain number stands in the file without quotes
    return int(value) if value == int(value) else value
