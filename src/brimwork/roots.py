"""The root of one equation with one unknown, bracketed."""

from __future__ import annotations

import math
from collections.abc import Callable

from brimwork.units import InputError


def solve(residual: Callable[[float], float], low: float, high: float, tolerance: float = 4e-16, most: int = 200) -> float:
    """The root of `residual` between `low` and `high`, bracketed throughout (Chandrupatla's method, 1997).

    Raises InputError when the two ends have the same sign.
    """
    a, b = high, low
    at_a, at_b = residual(a), residual(b)
    if at_a == 0 or at_b == 0:
        return a if at_a == 0 else b
    if not (at_a < 0 < at_b or at_b < 0 < at_a):
        raise InputError("no value between the limits fits: change one of the given values")
    c, at_c, t = a, at_a, 0.5
    for _ in range(most):
        x = a + t * (b - a)
        at_x = residual(x)
        if (at_x > 0) == (at_a > 0):
            c, at_c = a, at_a
        else:
            c, at_c, b, at_b = b, at_b, a, at_a
        a, at_a = x, at_x
        best = a if abs(at_a) < abs(at_b) else b
        closest = (2 * tolerance * abs(best) + 5e-324) / abs(b - c) if b != c else 1.0
        if closest > 0.5 or at_a == 0 or at_b == 0:
            return best
        xi, phi = (a - b) / (c - b), (at_a - at_b) / (at_c - at_b)
        if 1 - math.sqrt(1 - xi) < phi < math.sqrt(xi):
            t = at_a / (at_b - at_a) * at_c / (at_b - at_c) + (c - a) / (b - a) * at_a / (at_c - at_a) * at_b / (at_c - at_b)
        else:
            t = 0.5
        t = min(max(t, closest), 1 - closest)
    return best
