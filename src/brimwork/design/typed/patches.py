"""What really touches the blocks, as shapes: closed outlines in metres about the middle of the blocks, the first the outer one, the rest holes."""

from __future__ import annotations

import math

from brimwork.units import InputError

_Point = tuple[float, float]
Outline = tuple[_Point, ...]
Shape = tuple[Outline, ...]

CORNERS = 48  # of the polygon that stands for a circle in a drawing
NEAR = 1e-6  # m: what only touches a line does not cross it


def rectangular_patch(length: float, width: float, middle: _Point = (0.0, 0.0)) -> Outline:
    x, y = middle
    return ((x - length / 2, y - width / 2), (x + length / 2, y - width / 2), (x + length / 2, y + width / 2), (x - length / 2, y + width / 2))


def round_patch(diameter: float, middle: _Point = (0.0, 0.0)) -> Outline:
    turns = (2 * math.pi * k / CORNERS for k in range(CORNERS))
    return tuple((middle[0] + diameter / 2 * math.cos(turn), middle[1] + diameter / 2 * math.sin(turn)) for turn in turns)


def three_points(area: float, diameter: float, middle: _Point) -> tuple[Shape, ...]:
    """A rough base: three round points, `area` (m2) together, on a circle of that diameter (m)."""
    point = 2 * math.sqrt(area / 3 / math.pi)
    turns = (math.pi / 2 + 2 * math.pi * k / 3 for k in range(3))
    return tuple((round_patch(point, (middle[0] + diameter / 2 * math.cos(turn), middle[1] + diameter / 2 * math.sin(turn))),) for turn in turns)


def area(outline: Outline) -> float:
    """Area (m2) within an outline that does not cross itself: half the sum of x y' - x' y round it."""
    pairs = zip(outline, (*outline[1:], outline[0]), strict=True)
    return abs(sum(x * v - u * y for (x, y), (u, v) in pairs)) / 2


def moved(outline: Outline, by: _Point) -> Outline:
    return tuple((x + by[0], y + by[1]) for x, y in outline)


def beyond(shapes: tuple[Shape, ...], length: float, width: float) -> float:
    """How far (m) the shapes reach over the edge of blocks of that length and width; nothing or less where they stay inside."""
    return max(max(abs(x) - length / 2, abs(y) - width / 2) for outer, *_ in shapes for x, y in outer)


def joints(block: float, count: int) -> tuple[float, ...]:
    """Where the joints of a row of blocks lie (m), about its middle."""
    return tuple(block * (i - count / 2) for i in range(1, count))


def bridged(shapes: tuple[Shape, ...], along: tuple[float, ...], across: tuple[float, ...]) -> float:
    """How far (m) the shapes reach past the joints that they cross, on the side where they reach least; infinite where each stands inside one block."""
    reaches = [math.inf]
    for outer, *_ in shapes:
        for side, lines in enumerate((along, across)):
            low, high = (end(point[side] for point in outer) for end in (min, max))
            reaches += [min(line - low, high - line) for line in lines if low + NEAR < line < high - NEAR]
    return min(reaches)


def must_not_cross(outline: Outline, key: str) -> None:
    """Raises InputError where two sides of an outline cross: it is then not the edge of anything."""
    sides = list(zip(outline, (*outline[1:], outline[0]), strict=True))
    for i, one in enumerate(sides):
        for j in range(i + 2, len(sides) - (i == 0)):
            if _cross(*one, *sides[j]):
                raise InputError(
                    f"{key}: the side from corner {i + 1} crosses the side from corner {j + 1}: give the corners in the order in which you walk round"
                )


def _cross(a: _Point, b: _Point, c: _Point, d: _Point) -> bool:
    return _turn(a, b, c) * _turn(a, b, d) < 0 and _turn(c, d, a) * _turn(c, d, b) < 0


def _turn(a: _Point, b: _Point, c: _Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
