"""The paper of a sketch inside a derivation, not to scale: a millimetre is the unit, and the letters stand for lengths."""

from __future__ import annotations

import math

from brimwork.drawing.records import Line, Measure, Point, Record, Sheet, Text, View

_WIDE, _TALL = 124.0, 58.0


def sketch_of(title: str, said: str, *records: Record) -> Sheet:
    """A sheet of 124 by 58 mm, from the lower left corner, with a title and what it shows in words."""
    view = View((0.0, 0.0, _WIDE, _TALL), (0.0, 0.0, _WIDE, _TALL), records, clear=True)
    return Sheet(_WIDE, _TALL, (view,), title, said)


def letter_at(at: Point, text: str, anchor: str = "middle") -> Text:
    """Words or a letter at a point."""
    return Text(at, text, anchor, 3.2)


def letter_along(start: Point, end: Point, letter: str, offset: float = 5.0) -> Measure:
    """A length with its letter alone."""
    return Measure(start, end, letter, math.dist(start, end), offset)


def edge_of(*points: Point) -> Line:
    """A line of the outline."""
    return Line(points, "outline")
