"""What really touches the blocks, as shapes: closed outlines in metres about the middle of the blocks, the first the outer one, the rest holes."""

from __future__ import annotations

import math
from functools import lru_cache

from brimwork.units import InputError

Spot = tuple[float, float]
Outline = tuple[Spot, ...]
Shape = tuple[Outline, ...]

CORNERS = 48  # of the polygon that stands for a circle in a drawing
SET = 1e-3  # m: nearer than this nobody sets a slab, and a size written in inches comes back in millimetres no nearer
NEAR = 1e-6  # m: what only touches a line does not cross it


def rectangular_patch(length: float, width: float, middle: Spot = (0.0, 0.0)) -> Outline:
    x, y = middle
    return ((x - length / 2, y - width / 2), (x + length / 2, y - width / 2), (x + length / 2, y + width / 2), (x - length / 2, y + width / 2))


_TURNS = tuple((math.cos(2 * math.pi * k / CORNERS), math.sin(2 * math.pi * k / CORNERS)) for k in range(CORNERS))


@lru_cache(maxsize=256)
def round_patch(diameter: float, middle: Spot = (0.0, 0.0)) -> Outline:
    (x, y), r = middle, diameter / 2
    return tuple((x + r * cos, y + r * sin) for cos, sin in _TURNS)


def disc(diameter: float, middle: Spot = (0.0, 0.0)) -> Outline:
    """A polygon that has the area of the circle; its sides lie within 0.1 % of it."""
    turn = 2 * math.pi / CORNERS
    return round_patch(diameter * math.sqrt(turn / math.sin(turn)), middle)


def three_points(area: float, diameter: float, middle: Spot) -> tuple[Shape, ...]:
    """A rough base: three round points, `area` (m2) together, on a circle of that diameter (m)."""
    point = 2 * math.sqrt(area / 3 / math.pi)
    turns = (math.pi / 2 + 2 * math.pi * k / 3 for k in range(3))
    return tuple((round_patch(point, (middle[0] + diameter / 2 * math.cos(turn), middle[1] + diameter / 2 * math.sin(turn))),) for turn in turns)


def area(outline: Outline) -> float:
    """Area (m2) within an outline that does not cross itself: half the sum of x y' - x' y round it."""
    pairs = zip(outline, (*outline[1:], outline[0]), strict=True)
    return abs(sum(x * v - u * y for (x, y), (u, v) in pairs)) / 2


def hull(points: tuple[Spot, ...]) -> Outline:
    """The smallest outline without dents round the points, against the clock; fewer than three points where they lie on one line."""
    ordered = sorted(set(points))

    def half(row: list[Spot]) -> list[Spot]:
        kept: list[Spot] = []
        for point in row:
            while len(kept) > 1 and _turn(kept[-2], kept[-1], point) <= 0:
                kept.pop()
            kept.append(point)
        return kept[:-1]

    return tuple(half(ordered) + half(ordered[::-1])) if len(ordered) > 2 else tuple(ordered)


def shared(outline: Outline, window: Outline) -> Outline:
    """What an outline shares with a window that has no dents and runs against the clock, side by side of it (Sutherland and Hodgman); nothing where they are apart."""
    if _upright(window):
        (x0, y0), _, (x1, y1), _ = window
        across, up = [x for x, _ in outline], [y for _, y in outline]
        if min(across) >= x0 and max(across) <= x1 and min(up) >= y0 and max(up) <= y1:
            return outline
    kept = outline
    for a, b in zip(window, (*window[1:], window[0]), strict=True):
        turns = [_turn(a, b, p) for p in kept]
        if min(turns) >= 0:
            continue
        found: list[Spot] = []
        for p, q, here, there in zip(kept, (*kept[1:], kept[0]), turns, (*turns[1:], turns[0]), strict=True):
            if here >= 0:
                found.append(p)
            if here * there < 0:
                share = here / (here - there)
                found.append((p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])))
        kept = tuple(found)
        if not kept:
            return ()
    return kept


def _upright(window: Outline) -> bool:
    """Whether it is a rectangle along the axes, from its lower left corner on."""
    return len(window) == 4 and window[0][1] == window[1][1] < window[2][1] == window[3][1] and window[0][0] == window[3][0] < window[1][0] == window[2][0]


def grown(outline: Outline, by: float, middle: Spot) -> Outline:
    """An outline whose corners stand so much (m) further from the middle; nothing where it shrinks to a point."""
    points = []
    for x, y in outline:
        far = math.hypot(x - middle[0], y - middle[1])
        if far + by <= 0:
            return ()
        points.append((middle[0] + (x - middle[0]) * (far + by) / far, middle[1] + (y - middle[1]) * (far + by) / far) if far else (x, y))
    return tuple(points)


def lever(support: Outline, load: Spot) -> float:
    """Distance (m) from a load to the nearest line over which it tips; below zero where it stands outside what supports it."""
    edge = hull(support)
    if len(edge) < 3:
        return 0.0
    return min(_turn(a, b, load) / math.dist(a, b) for a, b in zip(edge, (*edge[1:], edge[0]), strict=True))


def apart(one: Outline, other: Outline) -> float:
    """Clear distance (m) between two outlines; nothing where they share ground."""
    if area_of(shared(one, hull(other))) > NEAR**2:
        return 0.0
    clear = min(min(_to_side(point, *side) for point in a for side in zip(b, (*b[1:], b[0]), strict=True)) for a, b in ((one, other), (other, one)))
    return clear if clear > NEAR else 0.0


def _to_side(point: Spot, a: Spot, b: Spot) -> float:
    length = math.dist(a, b)
    share = min(max(((point[0] - a[0]) * (b[0] - a[0]) + (point[1] - a[1]) * (b[1] - a[1])) / length**2, 0.0), 1.0) if length else 0.0
    return math.dist(point, (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])))


def area_of(outline: Outline) -> float:
    """Area (m2) of an outline; nothing of one that is no more than a line."""
    return area(outline) if len(outline) > 2 else 0.0


def moved(outline: Outline, by: Spot) -> Outline:
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


def _cross(a: Spot, b: Spot, c: Spot, d: Spot) -> bool:
    return _turn(a, b, c) * _turn(a, b, d) < 0 and _turn(c, d, a) * _turn(c, d, b) < 0


def _turn(a: Spot, b: Spot, c: Spot) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
