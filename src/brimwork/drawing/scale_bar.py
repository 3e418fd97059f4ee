"""The bar that keeps a drawing's scale true on any screen or copy."""

from __future__ import annotations

from brimwork.drawing.lettering import Lettering
from brimwork.drawing.pictures.paper import rectangle
from brimwork.drawing.records import GREY, INK, Point, Polygon, Record, Text, View
from brimwork.units import number

_LENGTHS = (20.0, 10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1, 0.05)
_LONGEST = 42.0  # mm of paper


def scale_bar(lettering: Lettering, scale: float, at: Point) -> View:
    """A bar of round length with a mark in its middle, its left upper corner `at` in mm of the sheet; `scale` in mm of paper for a metre."""
    unit, name = lettering.bar
    length = next((one for one in _LENGTHS if one * unit * scale <= _LONGEST), _LENGTHS[-1])
    long = length * unit
    tall = 1.2 / scale
    records: list[Record] = [
        Polygon(rectangle(0.0, 0.0, long / 2, tall), "ink", "thin"),
        Polygon(rectangle(long / 2, 0.0, long, tall), "paper", "thin"),
        *(Text((long * share, 0.0), number(length * share), "middle", 2.6, INK, (0.0, -3.0)) for share in (0.0, 0.5)),
        Text((long, 0.0), f"{number(length)} {name}", "middle", 2.6, INK, (0.0, -3.0)),
        Text((long, 0.0), "scale bar", "start", 2.6, GREY, (8.0, -0.2)),
    ]
    return View((0.0, 0.0, long, tall), (at[0], at[1], long * scale, 1.2), tuple(records), clip=False)
