"""Flat shapes and what stands on them: polygons as tuples of corners, in metres; a disc is a polygon of many corners with the disc's own area."""

import math
from functools import lru_cache

from plain_design import Missing

CORNERS = 96
_ROUND = tuple((math.cos(2 * math.pi * k / CORNERS), math.sin(2 * math.pi * k / CORNERS)) for k in range(CORNERS))


def rect(length: float, width: float, x: float = 0.0, y: float = 0.0):
    return ((x - length / 2, y - width / 2), (x + length / 2, y - width / 2), (x + length / 2, y + width / 2), (x - length / 2, y + width / 2))


@lru_cache(512)
def disc(diameter: float, x: float = 0.0, y: float = 0.0):
    """With corners a little outside, so that its area is that of the circle."""
    turn = 2 * math.pi / CORNERS
    r = diameter / 2 * (turn / math.sin(turn)) ** 0.5
    return tuple((x + r * cos, y + r * sin) for cos, sin in _ROUND)


@lru_cache(2048)
def area(shape) -> float:
    return abs(sum(x * v - u * y for (x, y), (u, v) in zip(shape, shape[1:] + shape[:1]))) / 2 if len(shape) > 2 else 0.0


@lru_cache(512)
def hull(points):
    """Corners of the smallest outline without dents round the points, against the clock."""
    points = sorted(set(points))
    if len(points) < 3:
        return tuple(points)

    def half(row):
        kept = []
        for x, y in row:
            while len(kept) > 1 and (kept[-1][0] - kept[-2][0]) * (y - kept[-2][1]) <= (kept[-1][1] - kept[-2][1]) * (x - kept[-2][0]):
                kept.pop()
            kept.append((x, y))
        return kept[:-1]

    return tuple(half(points) + half(points[::-1]))


@lru_cache(2048)
def common(shape, window):
    """What two outlines share, `window` without dents and against the clock."""
    kept = list(shape)
    for (ax, ay), (bx, by) in zip(window, window[1:] + window[:1]):
        before, kept = kept, []
        for (px, py), (qx, qy) in zip(before, before[1:] + before[:1]):
            p, q = (bx - ax) * (py - ay) - (by - ay) * (px - ax), (bx - ax) * (qy - ay) - (by - ay) * (qx - ax)
            if p >= 0:
                kept.append((px, py))
            if (p > 0 > q) or (p < 0 < q):
                kept.append((px + (qx - px) * p / (p - q), py + (qy - py) * p / (p - q)))
        if not kept:
            return ()
    return tuple(kept)


def lever(support, x: float = 0.0, y: float = 0.0) -> float:
    """Distance from a load at x, y to the nearest edge of what supports it; below zero where it stands outside: it falls by itself."""
    support = hull(support)
    if len(support) < 3:
        return -math.inf if not support else 0.0
    distances = []
    for (ax, ay), (bx, by) in zip(support, support[1:] + support[:1]):
        distances.append(((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / math.hypot(bx - ax, by - ay))
    return min(distances)


def grown_disc_in(diameter: float, reach: float, windows, x: float, y: float) -> float:
    """Area of a disc grown by a reach all round, inside all the windows."""
    shape = disc(diameter + 2 * reach, x, y)
    for window in windows:
        shape = common(shape, window)
    return area(shape)


def greatest_pressure(weight: float, length: float, width: float, ex: float, ey: float) -> float:
    """Under a stiff rectangle that takes no pull, for a load off the middle both ways; by its formula inside the kern, else by balance, cell by cell."""
    mean, ex, ey = weight / (length * width), abs(ex), abs(ey)
    if ex >= length / 2 or ey >= width / 2:
        return math.inf
    if ex / length + ey / width <= 1 / 6:
        return mean * (1 + 6 * ex / length + 6 * ey / width)
    if ey == 0 or ex == 0:
        along, off, across = (length, ex, width) if ey == 0 else (width, ey, length)
        return 2 * weight / (3 * across * (along / 2 - off))
    return _no_pull(mean, length, width, ex, ey)


def _no_pull(mean: float, length: float, width: float, ex: float, ey: float) -> float:
    import numpy
    from scipy.optimize import fsolve

    u, v = numpy.meshgrid((numpy.arange(80) + 0.5) / 80 - 0.5, (numpy.arange(80) + 0.5) / 80 - 0.5)

    def unbalanced(planes):
        p = numpy.maximum(planes[0] + planes[1] * u + planes[2] * v, 0)
        return p.mean() - 1, (p * u).mean() - ex / length, (p * v).mean() - ey / width

    (a, b, c), _, found, _ = fsolve(unbalanced, (1.0, 12 * ex / length, 12 * ey / width), full_output=True)
    if found != 1:
        raise Missing("a balance of the pressures under the base")
    return mean * (a + abs(b) / 2 + abs(c) / 2)
