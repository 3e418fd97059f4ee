"""Water levels in time: how a level moves over seconds, hours or days, with the limits that it must not pass."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from brimwork.drawing.graph import Axis, graph, nice_high
from brimwork.drawing.placing import Room
from brimwork.drawing.records import GREY, Line, Point, Polygon, Record, Sheet, Text, View
from brimwork.units import convert, number

_SPANS = ((300.0, 1.0, "s"), (3 * 3600.0, 60.0, "min"), (3 * 86400.0, 3600.0, "h"), (float("inf"), 86400.0, "days"))  # up to, one unit in s, its name
_PLACES = {"in": 2}  # decimals of a level, but for one
_LEFT, _WIDE = 22.0, 150.0
_ALONG = (0.0, 0.25, 0.45, 0.65, 0.85)  # shares of a limit's line, from the right, at which its name is tried


def levels_in_time(
    times: Sequence[float],
    levels: Sequence[float],
    limits: Mapping[str, float] | None = None,
    heads: Sequence[float] = (),
    stopped: float | None = None,
    title: str = "Levels in time",
    description: str = "",
    unit: str = "mm",
    edge: str = "rim",
) -> Sheet:
    """A sheet 180 mm wide: levels (m) of a reservoir over times (s, rising), with `limits` (name: level in m) as lines, those far away in words.

    `heads` (m, as many as times) adds a second curve below, of the head over the `edge`; `stopped` (s) marks when the pump stops; `unit` is how
    lengths are shown.
    """
    one, name = next((one, name) for last, one, name in _SPANS if times[-1] - times[0] <= last)
    across = Axis(f"time, {name}", times[0] / one, times[-1] / one)
    points = [(time / one, convert(level, unit)) for time, level in zip(times, levels, strict=True)]
    views = [_levels(points, {text: convert(level, unit) for text, level in (limits or {}).items()}, across, unit, None if stopped is None else stopped / one)]
    if heads:
        over = [(time / one, convert(head, unit)) for time, head in zip(times, heads, strict=True)]
        views.append(
            graph(
                (_LEFT, 76.0, _WIDE, 24.0),
                across,
                Axis(f"head over the {edge}, {unit}", 0.0, nice_high(1.05 * convert(max(*heads, 1e-4), unit))),
                [(over, "second curve")],
            )
        )
    if stopped is not None:
        views = [_with_stop(view, stopped / one, first=not place) for place, view in enumerate(views)]
    return Sheet(180, 112 if heads else 76, tuple(views), title, description or _description(points, across, name, unit))


def _levels(points: list[Point], limits: dict[str, float], across: Axis, unit: str, stopped: float | None) -> View:
    """The curve, drawn as large as it can be with those limits that are near: within one and a half times its own movement."""
    low, high = min(y for _, y in points), max(y for _, y in points)
    reach = 1.5 * max(high - low, convert(0.004, unit))
    near = {text: level for text, level in limits.items() if low - reach <= level <= high + reach}
    low, high = min(low, high - convert(0.002, unit), *near.values()), max([high, *near.values()])
    room = 0.12 * (high - low)
    up = Axis(f"level above the floor, {unit}", low - room, high + room)
    view = graph((_LEFT, 14.0, _WIDE, 48.0), across, up, [(points, "curve")])
    lines = [points, *([((stopped, up.low), (stopped, up.high))] if stopped is not None else [])]
    return replace(view, records=(*_fill(points, up.low), *view.records, *_limits(near, view, unit, lines), *_far(limits, near, across, up, unit)))


def _fill(points: list[Point], low: float) -> tuple[Record, ...]:
    return (Polygon(((points[0][0], low), *points, (points[-1][0], low)), "water", "none"),)


def _limits(near: dict[str, float], view: View, unit: str, lines: Sequence[Sequence[Point]]) -> list[Record]:
    """Lines with their names beside them, as far to the right as `lines` leave room for them."""
    left, _, right, _ = view.window
    room, levels = Room(view), {text: ((left, level), (right, level)) for text, level in near.items()}
    for line in (*lines, *levels.values()):
        room.line(line)
    records: list[Record] = []
    for text, line in levels.items():
        places = [(right - (right - left) * share, line[0][1]) for share in _ALONG]
        said = f"{text} {number(round(line[0][1], _PLACES.get(unit, 1)))} {unit}"
        records += [Line(line, "hidden"), *(room.label(places, said, 3.0) or [Text(places[0], said, "end", 3.0, nudge=(-1.0, 1.0))])]
    return records


def _far(limits: dict[str, float], near: dict[str, float], across: Axis, up: Axis, unit: str) -> list[Record]:
    """The limits that lie outside the picture, in words over it."""
    said = [
        f"{text} {number(round(level, _PLACES.get(unit, 1)))} {unit} lies {'above' if level > up.high else 'below'}"
        for text, level in limits.items()
        if text not in near
    ]
    return [Text((across.high, up.high), "; ".join(said), "end", 3.0, GREY, (0.0, 2.0))] if said else []


def _with_stop(view: View, at: float, first: bool) -> View:
    """A line where the pump stops, named once, under the axis, left of the words for the time."""
    _, low, _, high = view.window
    place = view.place((at, low))[0]
    name = [Text((at, low), "the pump stops", "middle", 3.0, GREY, (min(0.0, _LEFT + _WIDE - 33.0 - place), -8.6))] if first else []
    return replace(view, records=(*view.records, Line(((at, low), (at, high)), "centre"), *name))


def _description(points: list[Point], across: Axis, time: str, unit: str) -> str:
    lowest, highest = min(points, key=lambda p: p[1]), max(points, key=lambda p: p[1])
    said = [f"{number(round(level, 1))} {unit} {when}" for level, when in (
        (points[0][1], "at first"), (lowest[1], f"at the lowest, after {number(round(lowest[0] - across.low, 1))} {time}"),
        (highest[1], f"at the highest, after {number(round(highest[0] - across.low, 1))} {time}"), (points[-1][1], "in the end"))]  # fmt: skip
    return f"The level stands at {', '.join(said)}."
