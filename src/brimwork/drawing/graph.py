"""Curves as records: axes with round numbers, curves, a marked point, a hatched band where nothing was tested."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

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
    curves: Sequence[tuple[Sequence[Point], str, str]],
    point: Point | None = None,
    untested_below: float | None = None,
    point_text: str = "",
) -> View:
    """A view with curves of (points, style, label) over two axes; `frame` holds the plot itself, 14 mm left and 11 mm below stay free for text.

    Labels stand at the last point of their curve that is still inside.
    """
    window = (across.low, up.low, across.high, up.high)
    records: list[Record] = []
    if untested_below is not None and untested_below > across.low:
        edge = min(untested_below, across.high)
        records.append(Polygon(((across.low, up.low), (edge, up.low), (edge, up.high), (across.low, up.high)), "untested", "none"))
        records.append(Text((across.low, up.high), "below the tested range", "start", 2.9, GREY, (2.0, -4.0)))
    for at in ticks(across):
        records += [Line(((at, up.low), (at, up.high)), "grid"), Text((at, up.low), tick_mark(at), "middle", 2.9, GREY, (0, -4.0))]
    for at in ticks(up):
        records += [Line(((across.low, at), (across.high, at)), "grid"), Text((across.low, at), tick_mark(at), "end", 2.9, GREY, (-1.2, -1.0))]
    records.append(Line(((across.low, up.high), (across.low, up.low), (across.high, up.low)), "axis"))
    records.append(Text((across.high, up.low), across.title, "end", 3.1, nudge=(0, -8.6)))
    records.append(Text((across.low, up.high), up.title, "start", 3.1, nudge=(0, 2.0)))
    for points, style, label in curves:
        inside = [p for p in points if up.low <= p[1] <= up.high and across.low <= p[0] <= across.high]
        records.append(Line(tuple(inside), style))
        if label and inside:
            records.append(Text(inside[-1], label, "end", 3.0, nudge=(-2.0, 1.2)))
    if point and across.low <= point[0] <= across.high and up.low <= point[1] <= up.high:
        records += [Line(((across.low, point[1]), point, (point[0], up.low)), "hidden"), Mark(point)]
        if point_text:
            right, low = point[0] > (across.low + across.high) / 2, point[1] < up.low + 0.15 * (up.high - up.low)
            records.append(Text(point, point_text, "end" if right else "start", 3.2, ACCENT, (-2.4 if right else 2.4, 2.2 if right or low else -4.2)))
    return View(window, frame, tuple(records), clip=False)


def nice_high(value: float) -> float:
    """The next round number above `value`, for the end of an axis."""
    if value <= 0:
        return 1.0
    step = 10 ** math.floor(math.log10(value))
    return next(step * m for m in (1, 1.5, 2, 3, 4, 5, 6, 8, 10) if step * m >= value * 0.999999)


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
