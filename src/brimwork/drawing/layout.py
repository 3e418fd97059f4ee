"""A sheet laid out: records become strokes, areas and words in millimetres of paper, the same for every writer and for tests."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from brimwork.drawing.aside import aside
from brimwork.drawing.marks import Area, Dot, Mark_, Stroke, Words, width_of
from brimwork.drawing.records import GREY, INK, Arc, Arrow, Leader, Level, Line, Mark, Measure, Point, Polygon, Record, Sheet, Text, View

DIMENSION_SIZE = 3.0
OVER = 1.3  # mm from a dimension line to the base line of its text: the text clears the arrow heads


def layout(sheet: Sheet) -> Iterator[tuple[View | None, list[Mark_]]]:
    """View by view, then the notes of the sheet (view None)."""
    for view in sheet.views:
        marks = [_keyed(mark, record) for record in view.records for mark in _marks(record, view)]
        if view.clear:
            left, top, wide, tall = view.frame
            marks = aside(marks, (left, top, left + wide, top + tall), view.clip, (0.0, 0.0, sheet.width, sheet.height))
        yield view, marks
    yield None, [Words(note.at, note.text, note.anchor, note.size, note.colour) for note in sheet.notes]


def _keyed(mark: Mark_, record: Record) -> Mark_:
    key = getattr(record, "key", "")
    return replace(mark, key=key) if key else mark


def words(sheet: Sheet) -> list[Words]:
    return [mark for _, marks in layout(sheet) for mark in marks if isinstance(mark, Words)]


def _marks(record: Record, view: View) -> Iterator[Mark_]:
    place = view.place
    match record:
        case Line(points, style):
            yield Stroke(view.places(points), style)
        case Polygon(points, fill, style):
            yield Area(view.places(points), fill, style)
        case Arc():
            yield Stroke(view.places(_arc(record)), record.style)
        case Mark(at, radius, colour):
            yield Dot(place(at), radius, colour)
        case Arrow(tail, tip):
            yield from _force(place(tail), place(tip))
        case Text():
            x, y = place(record.at)
            yield Words((x + record.nudge[0], y - record.nudge[1]), record.text, record.anchor, record.size, record.colour, record.angle, halo=True)
        case Measure():
            yield from _dimension(record, view)
        case Level(at, text, colour):
            x, y = place(at)
            yield Area(((x, y), (x - 1.6, y - 2.6), (x + 1.6, y - 2.6)), "paper", "thin")
            if text:
                yield Words((x + 2.6, y - 1.0), text, "start", DIMENSION_SIZE, colour, halo=True)
        case Leader(at, text, to):
            x, y = place(at)
            end = (x + to[0], y - to[1])
            tail = (end[0] + math.copysign(3.0, to[0]), end[1])
            yield Dot((x, y), 0.5, INK)
            yield Stroke(((x, y), end, tail), "dimension")
            yield Words((tail[0] + math.copysign(0.8, to[0]), tail[1] + 1.0), text, "start" if to[0] >= 0 else "end", DIMENSION_SIZE, INK, halo=True)


def _arc(arc: Arc) -> list[Point]:
    steps = max(12, round(abs(arc.end - arc.start) / 4))
    angles = (math.radians(arc.start + (arc.end - arc.start) * i / steps) for i in range(steps + 1))
    return [(arc.centre[0] + arc.radius * math.cos(a), arc.centre[1] + arc.radius * math.sin(a)) for a in angles]


def _dimension(record: Measure, view: View) -> Iterator[Mark_]:
    (x1, y1), (x2, y2) = view.place(record.start), view.place(record.end)
    length = math.hypot(x2 - x1, y2 - y1) or 1.0
    along = ((x2 - x1) / length, (y2 - y1) / length)
    across = (along[1], -along[0])  # to the left, seen along the line on a sheet whose y runs down
    off = record.offset
    a, b = ((x + across[0] * off, y + across[1] * off) for x, y in ((x1, y1), (x2, y2)))
    sign = math.copysign(1.0, off) if off else 0.0
    past = 0.5 if abs(along[0]) > abs(along[1]) and width_of(record.text, DIMENSION_SIZE) > length else 1.0
    for start, end in (((x1, y1), a), ((x2, y2), b)):
        tip = (end[0] + across[0] * sign * past, end[1] + across[1] * sign * past)
        yield Stroke(((start[0] + across[0] * sign, start[1] + across[1] * sign), tip), "dimension")
    outside = length < 6.0  # arrows point inwards from outside when the distance is short
    reach = 3.0 if outside else 0.0
    yield Stroke(((a[0] - along[0] * reach, a[1] - along[1] * reach), (b[0] + along[0] * reach, b[1] + along[1] * reach)), "dimension")
    for tip, way in ((a, -1.0 if outside else 1.0), (b, 1.0 if outside else -1.0)):
        yield _arrow(tip, (along[0] * way, along[1] * way))
    yield _beside(record, a, b, across[0] * sign, across[1] * sign)


def _beside(record: Measure, a: Point, b: Point, right: float, down: float) -> Words:
    """The text of a dimension line from a to b; `right` and `down` say on which side of what it measures the line stands."""
    text, size = record.text, DIMENSION_SIZE
    wide, tall, (x, y) = abs(b[0] - a[0]), abs(b[1] - a[1]), ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    if min(wide, tall) > 0.1 * max(wide, tall):  # aslant: over the end, where nothing crosses it
        return Words((b[0], min(a[1], b[1]) - OVER), text, "end", size, INK, halo=True)
    if wide > tall:
        under = width_of(text, size) > wide and down > 0  # between the lines that lead to it there is no room for the text
        return Words((x, y + (OVER + 1.9 if under else -OVER)), text, "middle", size, INK, halo=True)
    if record.along or tall >= width_of(text, size) + 2.0:
        return Words((x - OVER, y), text, "middle", size, INK, angle=90, halo=True)
    side = 1.0 if right > 0 else -1.0
    low = max(a[1], b[1]) + 3.0 if tall < 6.0 else y + 1.0  # beside the lower arrow where that points inwards
    return Words((x + 1.6 * side, low), text, "start" if side > 0 else "end", size, INK, halo=True)


def _force(tail: Point, tip: Point) -> Iterator[Mark_]:
    length = math.hypot(tail[0] - tip[0], tail[1] - tip[1]) or 1.0
    way = ((tail[0] - tip[0]) / length, (tail[1] - tip[1]) / length)
    size = min(3.0, 0.6 * length)
    yield Stroke((tail, (tip[0] + way[0] * size, tip[1] + way[1] * size)), "force")
    yield _arrow(tip, way, size, "accent")


def _arrow(tip: Point, way: Point, size: float = 2.0, fill: str = "grey") -> Area:
    """A filled arrow head whose body lies in the direction `way` from its tip."""
    side, back = (-way[1] * size / 4, way[0] * size / 4), (tip[0] + way[0] * size, tip[1] + way[1] * size)
    return Area((tip, (back[0] + side[0], back[1] + side[1]), (back[0] - side[0], back[1] - side[1])), fill, "none")


__all__ = ["Area", "Dot", "GREY", "Stroke", "Words", "layout", "words"]
