"""Curves as records: axes with round numbers, curves, a marked point, a hatched band where nothing was tested."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from brimwork.drawing.marks import width_of
from brimwork.drawing.records import ACCENT, GREY, Line, Mark, Point, Polygon, Record, Text, View
from brimwork.units import number


@dataclass(frozen=True)
class Axis:
    """Name with unit as printed, and the span it shows."""

    title: str
    low: float
    high: float


def graph(
    frame: tuple[float, float, float, float],
    across: Axis,
    up: Axis,
    curves: Sequence[tuple[Sequence[Point], str]],
    point: Point | None = None,
    untested_below: float | None = None,
    point_text: str = "",
) -> View:
    """A view with curves of (points, style) over two axes; `frame` holds the plot itself, 14 mm left and 11 mm below stay free for text."""
    view = View((across.low, up.low, across.high, up.high), frame, (), clip=False, clear=True)
    (left, right), (low, high) = _ends(across), _ends(up)
    records: list[Record] = []
    if untested_below is not None and untested_below > across.low:
        edge = min(untested_below, across.high)
        if edge < across.high:
            records.append(Polygon(((across.low, up.low), (edge, up.low), (edge, up.high), (across.low, up.high)), "untested", "none"))
            records.append(Text((across.low, up.high), "below the tested range", "start", 2.9, GREY, (2.0, -4.0)))
        else:
            records.append(Text((across.high, up.high), "all of it below the tested range", "end", 2.9, GREY, (0, 2.0)))
    for at in ticks(across):
        records += [Line(((at, up.low), (at, up.high)), "grid"), Text((at, up.low), tick_mark(at), "middle", 2.9, GREY, (0, -4.0))]
    for at in ticks(up):
        records += [Line(((across.low, at), (across.high, at)), "grid"), Text((across.low, at), tick_mark(at), "end", 2.9, GREY, (-1.2, -1.0))]
    records.append(Line(((across.low, up.high), (across.low, up.low), (across.high, up.low)), "axis"))
    records.append(Text((across.high, up.low), across.title, "end", 3.1, nudge=(0, -8.6)))
    records.append(Text((across.low, up.high), up.title, "start", 3.1, nudge=(0, 2.0)))
    for points, style in curves:
        inside = tuple([p for p in points if low <= p[1] <= high and left <= p[0] <= right])
        records += [Line(inside, style)] if inside else []
    if point and left <= point[0] <= right and low <= point[1] <= high:
        records += [Line(((across.low, point[1]), point, (point[0], up.low)), "hidden"), Mark(point)]
        if point_text:
            records.append(_beside(point, point_text, curves[0][0], view))
    return replace(view, records=tuple(records))


def _ends(axis: Axis) -> Point:
    """Both ends, a hair farther apart, so that rounding loses no point that stands on one."""
    hair = 2e-6 * (axis.high - axis.low)
    return axis.low - hair, axis.high + hair


def _beside(point: Point, text: str, curve: Sequence[Point], view: View) -> Text:
    """The words of a marked point where its curve, and the lines from it to the axes, leave room for them."""
    (x, y), (left, top, wide, tall) = view.place(point), view.frame
    after = max(1, next((i for i, p in enumerate(curve) if p[0] > point[0]), len(curve) - 1))
    room, low = 3.0 + width_of(text, 3.2), y + 5.5 > top + tall
    right = x + room <= left + wide
    (x0, y0), (x1, y1) = view.places((curve[after - 1], curve[min(after, len(curve) - 1)]))
    slope = (y0 - y1) / (x1 - x0 or 1.0)  # upwards
    if slope < 0:
        above = right or low
    else:
        right = right and (not low or x - room < left)
        above = low or not right
    high = 2.2 + (min(abs(slope) * room, 12.0) if right == (slope > 0) else 0.0)  # on the side where the curve rises, over it
    return Text(point, text, "start" if right else "end", 3.2, ACCENT, (2.4 if right else -2.4, high if above else -4.2))


def nice_high(value: float) -> float:
    """The next round number above `value`, for the end of an axis."""
    if value <= 0:
        return 1.0
    step = 10 ** math.floor(math.log10(value))
    return next(step * m for m in (1, 1.5, 2, 3, 4, 5, 6, 8, 10) if step * m >= value * 0.999999)


@lru_cache(1024)
def tick_mark(value: float) -> str:
    """A number beside an axis; millions are written short, as 1.5e6."""
    return f"{value / 1e6:g}e6" if abs(value) >= 2e5 else number(value)


def ticks(axis: Axis) -> list[float]:
    """Round numbers along an axis, about six of them."""
    rough = (axis.high - axis.low) / 5
    power = 10 ** math.floor(math.log10(rough))
    step = next(power * m for m in (1, 2, 2.5, 5, 10) if power * m >= rough * 0.999)
    first = math.ceil(axis.low / step - 1e-9)
    return [round(i * step, 12) for i in range(first, math.floor(axis.high / step + 1e-9) + 1)]
