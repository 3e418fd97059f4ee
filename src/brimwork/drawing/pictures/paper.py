"""What the pictures share: the half of the sheet where they stand, its true scales, and how a letter is written beside a length."""

from __future__ import annotations

import math
from collections.abc import Callable

from brimwork.drawing.layout import DIMENSION_SIZE
from brimwork.drawing.marks import width_of
from brimwork.drawing.records import Measure, Point, View
from brimwork.nomenclature import QUANTITIES

FRAME = (4.0, 10.0, 88.0, 60.0)
SCALES = ((1000.0, "full size"), (500.0, "1:2"), (200.0, "1:5"), (100.0, "1:10"), (50.0, "1:20"), (40.0, "1:25"), (20.0, "1:50"), (10.0, "1:100"),
          (5.0, "1:200"), (2.0, "1:500"), (1.0, "1:1000"))  # fmt: skip

Drawn = tuple[View, str]  # the view and its caption
Draw = Callable[[dict[str, float], float], Drawn]


def scale_to_fit(width: float, height: float, wide: float = 70.0, tall: float = 40.0) -> tuple[float, str]:
    """The largest true scale, in mm of paper for a metre, at which width by height (m) fits wide by tall (mm); and its name."""
    return next((scale for scale in SCALES if width * scale[0] <= wide and height * scale[0] <= tall), SCALES[-1])


def steps(low: float, high: float, count: int) -> list[float]:
    return [low + (high - low) * i / count for i in range(count + 1)]


def rectangle(x0: float, y0: float, x1: float, y1: float) -> tuple[Point, ...]:
    return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))


def circle(radius: float, centre: Point = (0.0, 0.0)) -> tuple[Point, ...]:
    return tuple((centre[0] + radius * math.cos(a), centre[1] + radius * math.sin(a)) for a in steps(0.0, 2 * math.pi, 48))


def said(letter: str, value: float) -> str:
    """ "h = 300 mm", as it stands beside a length."""
    return f"{letter} = {QUANTITIES[letter].text_here(value)}"


def height(letter: str, foot: Point, value: float, scale: float, offset: float) -> Measure:
    """A height with its letter, or, where that would stand across and reach too far, with its number alone; `scale` in mm of paper for a metre."""
    text = said(letter, value)
    upright = value * scale >= width_of(text, DIMENSION_SIZE) + 2.0
    return Measure(foot, (foot[0], foot[1] + value), text if upright else QUANTITIES[letter].text_here(value), value, offset)


def spread(places: list[float], apart: float) -> list[float]:
    """Places that rise, moved up as far as needed to stand `apart`."""
    out: list[float] = []
    for place in places:
        out.append(max(place, out[-1] + apart) if out else place)
    return out
