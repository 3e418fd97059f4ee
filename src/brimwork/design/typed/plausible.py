"""Numbers that can hardly be: each is asked about, and none of them makes a check pass."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Any

from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.reading import Corners, Curve, Field, Several
from brimwork.design.typed.spans import SPANS

_FLOW, _HEAD, _SIDE = Field("flow", "L/min", "US gal/min"), Field("head", "m", "ft"), Field("distance", "mm", "in", signed=True)


@cache
def _parts(key: str) -> tuple[Field, ...]:
    """What one entry of a value is made of: one quantity, two for a point of a curve or a corner."""
    section, _, name = key.partition(".")
    field: Any = SECTIONS[section][name]
    if isinstance(field, Curve):
        return _FLOW, _HEAD
    if isinstance(field, Corners):
        return (_SIDE,)
    if isinstance(field, Several):
        return (Field(field.name, field.unit, field.us, signed=field.signed),)
    assert isinstance(field, Field), f"{key} is no quantity: only a quantity has a span"
    return (field,)


@cache
def span(key: str) -> tuple[tuple[float, float], ...]:
    """Least and most (SI, to nine figures) of each part of the value under a key."""
    row, parts = SPANS[key], _parts(key)
    lows, highs = (text.split(" at ") for text in (row.low, row.high))
    signed = (Field(part.name, part.unit, part.us, signed=True) for part in parts)
    return tuple((_nine(part.read(low, key)), _nine(part.read(high, key))) for part, low, high in zip(signed, lows, highs, strict=True))


def _nine(number: float) -> float:
    """To nine figures, so that a value on the limit is not beyond it by the last bit."""
    return float(f"{number:.9g}")


def _entries(key: str, value: Any) -> Iterator[tuple[float, int]]:
    """Every number of a value, with the part it is."""
    parts = len(_parts(key))
    for entry in value if isinstance(value, tuple) else (value,):
        for at, number in enumerate(entry if isinstance(entry, tuple) else (entry,)):
            yield _nine(number), at % parts


def implausible(design: Design) -> dict[str, str]:
    """The values of a design that can hardly be, each with what such a thing can be, in the units of the region."""
    found = {}
    for key in SPANS.keys() & design.values.keys():
        spans, given = span(key), design.values[key]
        for number, part in _entries(key, given.value):
            low, high = spans[part]
            if not low <= number <= high:
                field = _parts(key)[part]
                typed = field.write(number, design.region) if isinstance(given.value, tuple) else given.text
                found[key] = f"{typed}, where {field.write(low, design.region)} to {field.write(high, design.region)} can be"
                break
    return dict(sorted(found.items()))


def without(design: Design, keys: tuple[str, ...]) -> Design:
    """The same design as if nobody had given these values; what is usual counts where there is such a thing."""
    for key in keys:
        design = design.having(key, None)
    return design
