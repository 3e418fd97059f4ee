"""Where a label can stand on a chart: inside its frame, off every line, mark and label that is there already."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from brimwork.drawing.marks import Box, width_of
from brimwork.drawing.records import INK, Line, Point, Record, Text, View

_CLEAR = 0.5  # mm between a label and what it must not touch
_RADII = (1.8, 3.5, 6.0, 9.0, 13.0, 18.0, 24.0, 31.0, 40.0)
_WAYS = ((1.0, 0.7), (-1.0, 0.7), (1.0, -0.7), (-1.0, -0.7), (0.0, 1.0), (0.0, -1.0), (1.0, 0.0), (-1.0, 0.0))
_FAR = 4.0  # mm from its point at which a label gets a line to it


def gap_between(a: Box, b: Box) -> bool:
    return a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]


def crosses(box: Box, a: Point, b: Point) -> bool:
    """Whether the straight piece from a to b has a point inside the box (Liang and Barsky's way of clipping a line)."""
    first, last = 0.0, 1.0
    for start, way, low, high in ((a[0], b[0] - a[0], box[0], box[2]), (a[1], b[1] - a[1], box[1], box[3])):
        if not way:
            if not low <= start <= high:
                return False
            continue
        near, far = ((low - start) / way, (high - start) / way) if way > 0 else ((high - start) / way, (low - start) / way)
        first, last = near if near > first else first, far if far < last else last
    return first <= last


class Room:
    """What is taken of a view so far; everything in mm of the sheet."""

    def __init__(self, view: View):
        left, top, width, height = view.frame
        self.view, self.frame = view, (left, top, left + width, top + height)
        self.boxes: list[Box] = []  # of the marks
        self.labels: list[Box] = []
        self.pieces: list[tuple[Box, Point, Point]] = []  # each with the box that it fills

    def line(self, points: Iterable[Point]) -> None:
        """A line of the view (its own units) that no label may touch."""
        self._taken([self.view.place(point) for point in points])

    def _taken(self, placed: list[Point]) -> None:
        self.pieces += [((min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])), a, b) for a, b in zip(placed, placed[1:])]

    def mark(self, at: Point, radius: float) -> None:
        x, y = self.view.place(at)
        self.boxes.append((x - radius, y - radius, x + radius, y + radius))

    def label(self, points: Sequence[Point], text: str, size: float = 3.1, colour: str = INK) -> list[Record]:
        """The label at the nearest free place to one of the points (first come, first served), with a line to it where that is far; nothing where none is free."""
        for radius in _RADII:
            for point in points:
                for way in _WAYS:
                    box = self._box(point, text, size, way, radius)
                    leader = [self.view.place(point), _nearest(self.view.place(point), box)] if radius >= _FAR else []
                    if self._free(box) and not (leader and any(crosses(other, *leader) for other in self.labels)):
                        self.labels.append(box)
                        self._taken(leader)
                        return self._records(point, text, size, colour, way, box, leader)
        return []

    def _box(self, point: Point, text: str, size: float, way: Point, radius: float) -> Box:
        x, y = self.view.place(point)
        wide, height = width_of(text, size), 0.97 * size
        left = x + way[0] * radius - {1.0: 0.0, 0.0: wide / 2, -1.0: wide}[way[0]]
        top = y - way[1] * radius - (height if way[1] > 0 else 0.0 if way[1] < 0 else height / 2)
        return left, top, left + wide, top + height

    def _free(self, box: Box) -> bool:
        left, top, right, bottom = self.frame
        wide = (box[0] - _CLEAR, box[1] - _CLEAR, box[2] + _CLEAR, box[3] + _CLEAR)
        inside = wide[0] >= left and wide[1] >= top and wide[2] <= right and wide[3] <= bottom
        return inside and all(gap_between(wide, other) for other in (*self.boxes, *self.labels)) and not self._crossed(*wide)

    def _crossed(self, left: float, top: float, right: float, bottom: float) -> bool:
        for (x0, y0, x1, y1), a, b in self.pieces:
            if x0 <= right and x1 >= left and y0 <= bottom and y1 >= top and crosses((left, top, right, bottom), a, b):
                return True
        return False

    def _records(self, point: Point, text: str, size: float, colour: str, way: Point, box: Box, leader: list[Point]) -> list[Record]:
        x, y = self.view.place(point)
        anchor = {1.0: "start", 0.0: "middle", -1.0: "end"}[way[0]]
        across = {"start": box[0], "middle": (box[0] + box[2]) / 2, "end": box[2]}[anchor]
        words = Text(point, text, anchor, size, colour, (across - x, y - (box[3] - 0.22 * size)))
        wide, tall = self.view.scale
        lines = [Line((point, (point[0] + (u - x) / wide, point[1] - (v - y) / tall)), "dimension") for u, v in leader[1:]]
        return [*lines, words]


def _nearest(point: Point, box: Box) -> Point:
    """The place on the edge of a box that is nearest to a point outside it."""
    return min(max(point[0], box[0]), box[2]), min(max(point[1], box[1]), box[3])


def spread_apart(places: list[float], pitch: float) -> list[float]:
    """Places from the top down (y up, in mm) moved apart to `pitch`, as near to where they belong as a simple push allows."""
    out = list(places)
    for _ in range(200):
        moved = False
        for i in range(len(out) - 1):
            lack = pitch - (out[i] - out[i + 1])
            if lack > 1e-6:
                out[i], out[i + 1], moved = out[i] + lack / 2, out[i + 1] - lack / 2, True
        if not moved:
            break
    return out
