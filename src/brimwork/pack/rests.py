"""The list of everything a design rests on: each value as it was typed, converted beside it, with its basis; usual values that are assumed are named as such."""

from __future__ import annotations

from collections.abc import Sequence

from brimwork import units
from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import sections
from brimwork.design.typed.known import Given
from brimwork.design.typed.reading import Corners, Curve, Dates, Field, OneOf, Several
from brimwork.design.typed.steps import LEADS, STEPS, applies
from brimwork.design.typed.telling import short
from brimwork.design.typed.wording import spoken
from brimwork.pack.markup import typst_table, typst_words
from brimwork.quantity import days
from brimwork.units import InputError

ONLY_GIVEN = ("limits", "measured", "answers", "prices")  # sections of which what nobody gave says nothing


def rests(design: Design) -> str:
    """The page. A value that nobody gave is "not given", or the usual one with "assumed" at its basis."""
    rows = [
        (spoken(section.replace("_", " "), design.region), spoken(field.name, design.region), *_value(design, f"{section}.{key}", field))
        for section, fields in sections(design.kind).items()
        for key, field in fields.items()
        if _shown(design, section, key)
    ]
    return "\n\n".join([
        "#pagebreak()\n== What this design rests on",
        typst_words("Values as they were typed, with what they are in other units beside them. What nobody gave and a usual value stands for is assumed until the design says its own."),
        typst_table("auto, 1.5fr, 1fr, auto", ("part", "what", "value", "basis"), rows, size=8),
    ])  # fmt: skip


def _shown(design: Design, section: str, key: str) -> bool:
    if section in ONLY_GIVEN:
        return f"{section}.{key}" in design.values
    row = STEPS.get(key) or LEADS.get(key.removeprefix("order_")) if section == "programme" else None
    return not row or applies(row, design)


def _value(design: Design, key: str, field) -> tuple[str, str]:
    given = design.given(key)
    if given is None:
        return "not given", ""
    assumed = key not in design.values
    return inputs_printed(field, given, design.region, assumed), given.basis + (", assumed" if assumed else "")


def inputs_printed(field, given: Given, region: str, assumed: bool = False) -> str:
    """A value as it was typed, an answer in the words of the region; in brackets what it is in the unit of the region, or in the other one where it was typed in that.

    What nobody typed but is `assumed` begins with the unit of the region.
    """
    if isinstance(field, Corners):
        return "; ".join(f"{x} at {y}" for x, y in given.text)
    if isinstance(field, Curve):
        sides = ("L/min", "US gal/min"), ("m", "ft")
        return "; ".join(
            " at ".join(_both(text, value, *side, region) for text, value, side in zip(*pair, sides, strict=True))
            for pair in zip(given.text, given.value, strict=True)
        )
    if isinstance(field, Dates):
        return field.write(given.value)
    if isinstance(field, Several):
        return _several(given.text, given.value, field.unit, region)
    if isinstance(field, Field):
        return _both(str(given.text), given.value, field.unit, field.us, region, assumed)
    return spoken(str(given.text), region) if isinstance(field, OneOf) else str(given.text)


def _several(texts: Sequence[str], values: Sequence[float], unit: str, region: str) -> str:
    us = {"mm": "in", "m": "ft"}.get(unit, "")
    return ", ".join(_both(text, value, unit, us, region) for text, value in zip(texts, values, strict=True))


def _both(text: str, value: float, metric: str, us: str, region: str, assumed: bool = False) -> str:
    """A typed quantity with its conversion; nothing beside it where it was typed in the one unit that the region uses."""
    try:
        named = units.parse(text).unit
    except InputError:
        return text
    here = us if region == "US" and us else metric
    if own := bool(named) and _same(named, here):
        here = metric if region == "US" else ""
    if not named or not here or _same(named, here):
        return days(text)
    first, then = (short(value, here), text) if assumed and not own else (text, short(value, here))
    return f"{first} ({then})"


def _same(one: str, other: str) -> bool:
    return units.unit(one) == units.unit(other)
