"""Words that would run into a line, an arrow or other words move aside, to the nearest free place of their view."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from brimwork.drawing.marks import Area, Box, Dot, Mark_, Stroke, Words
from brimwork.drawing.placing import crosses, gap_between
from brimwork.drawing.records import STYLES, Point

_CLEAR = 0.45  # mm kept from a line by words that move
_WAYS = [(math.sin(math.radians(angle)), math.cos(math.radians(angle))) for angle in (0, 180, 90, 270, 45, 135, 225, 315)]
_FARTHER = (0.7, 1.5, 2.5, 3.7, 5.0, 6.5, 8.5, 11.0, 14.0, 17.0, 20.0, 24.0)
_MOVES = [(far * x, -far * y) for far in _FARTHER for x, y in _WAYS]
_ARROWS = ("grey", "accent")

_Taken = tuple[Box, tuple[Point, ...]]  # the box that a line fills, half its width added, and its points; without points the whole box is taken


def aside(marks: list[Mark_], frame: Box, inside: bool, sheet: Box) -> list[Mark_]:
    """The marks of a view with its words last and free of its lines, where there is a place for them within the frame.

    Words that stand outside the frame may do so still, unless `inside` keeps all within. Grid lines and hatching, which a halo interrupts, may be crossed.
    """
    taken: list[_Taken] = []
    others: list[Mark_] = []
    said: list[Words] = []
    for mark in marks:
        if isinstance(mark, Words):
            said.append(mark)
        else:
            others.append(mark)
            taken += _taken(mark)
    boxes = [words.box for words in said]
    kept: list[Box] = []
    moving = []
    for at, box in enumerate(boxes):
        if (inside and not _within(box, frame)) or _met(box, kept) or _struck(box, taken):
            moving.append(at)
        else:
            kept.append(box)
    for at in moving:
        bounds = frame if inside or _within(boxes[at], frame) else sheet
        said[at] = _moved(said[at], boxes[at], taken, kept, bounds)
        kept.append(said[at].box)
    return [*others, *said]


def _taken(mark: Stroke | Area | Dot) -> tuple[_Taken, ...]:
    if isinstance(mark, Dot):
        (x, y), radius = mark.at, mark.radius
        return (((x - radius, y - radius, x + radius, y + radius), ()),)
    points, style = mark.points, mark.style
    if isinstance(mark, Area):
        if mark.fill in _ARROWS:
            return ((_around(points, 0.0), ()),)
        points = (*points, points[0])
    return () if style in ("grid", "none") else ((_around(points, STYLES[style][0] / 2), points),)


def _around(points: tuple[Point, ...], more: float) -> Box:
    if len(points) == 2:
        (x, y), (u, v) = points
        return (x if x < u else u) - more, (y if y < v else v) - more, (x if x > u else u) + more, (y if y > v else v) + more
    xs, ys = zip(*points)
    return min(xs) - more, min(ys) - more, max(xs) + more, max(ys) + more


def _within(box: Box, frame: Box) -> bool:
    return frame[0] <= box[0] and frame[1] <= box[1] and box[2] <= frame[2] and box[3] <= frame[3]


def _met(box: Box, others: list[Box]) -> bool:
    left, top, right, bottom = box
    for x0, y0, x1, y1 in others:  # a loop, as this runs for every word of every picture of a moving slider
        if x0 < right and left < x1 and y0 < bottom and top < y1:
            return True
    return False


def _struck(box: Box, taken: list[_Taken]) -> bool:
    """Whether a line, an arrow or a dot has a point in the box."""
    left, top, right, bottom = box
    for (x0, y0, x1, y1), points in taken:
        if x0 < right and left < x1 and y0 < bottom and top < y1 and (not points or any(crosses(box, a, b) for a, b in _pieces(box, points))):
            return True
    return False


def _pieces(box: Box, points: tuple[Point, ...]) -> Iterator[tuple[Point, Point]]:
    """The straight pieces of a line that may reach into a box."""
    left, top, right, bottom = box
    for a, b in zip(points, points[1:]):
        if (a[0] >= left or b[0] >= left) and (a[0] <= right or b[0] <= right) and (a[1] >= top or b[1] >= top) and (a[1] <= bottom or b[1] <= bottom):
            yield a, b


def _moved(words: Words, box: Box, taken: list[_Taken], kept: list[Box], bounds: Box) -> Words:
    """The words at the nearest free place; where they are if there is none."""
    left, top, right, bottom = box
    for farthest in (_FARTHER[2], _FARTHER[5], _FARTHER[-1]):
        reach = (left - farthest - _CLEAR, top - farthest - _CLEAR, right + farthest + _CLEAR, bottom + farthest + _CLEAR)
        near = [(line, points) for line, points in taken if not gap_between(line, reach)]
        pieces = [(_around(piece, 0.2), *piece) for _, points in near for piece in _pieces(reach, points)]
        solid = [*(other for other in kept if not gap_between(other, reach)), *(line for line, points in near if not points)]
        for x, y in _MOVES:
            if abs(x) <= farthest >= abs(y):
                wide = (left + x - _CLEAR, top + y - _CLEAR, right + x + _CLEAR, bottom + y + _CLEAR)
                if _within(wide, bounds) and not _met(wide, solid) and not _crossed(wide, pieces):
                    return replace(words, at=(words.at[0] + x, words.at[1] + y))
    return words


def _crossed(box: Box, pieces: list[tuple[Box, Point, Point]]) -> bool:
    left, top, right, bottom = box
    for (x0, y0, x1, y1), a, b in pieces:
        if x0 < right and left < x1 and y0 < bottom and top < y1 and crosses(box, a, b):
            return True
    return False
