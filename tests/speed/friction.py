"""How fast a million friction factors are, and how exact: python tests/speed/friction.py

Prints nanoseconds an element and the largest relative error against 40 digits for `friction_factors`, SciPy's wrightomega route, and fluids
(one at a time; vectorised; compiled by numba where that is installed).
"""

from __future__ import annotations

import math
import time
from collections.abc import Callable

import mpmath
import numpy
from fluids import friction
from scipy.special import wrightomega

from brimwork.topics.friction import friction_factors


def main(count: int = 10**6) -> None:
    draw = numpy.random.default_rng(1)
    Re, rough = 10 ** draw.uniform(3.61, 8, count), 10 ** draw.uniform(-6, -1.3, count)
    exact = [_exactly(*pair) for pair in zip(Re[:500].tolist(), rough[:500].tolist())]
    for name, route, size in _routes(count):
        seconds, found = _best_of(lambda route=route, size=size: route(Re[:size], rough[:size]))
        error = max(abs(float(mpmath.mpf(float(f)) / x - 1)) for f, x in zip(found, exact))
        print(f"{name:<42} {seconds / size * 1e9:9.1f} ns an element   error {error:.1e}")


def _routes(count: int) -> list[tuple[str, Callable, int]]:
    import fluids.vectorized

    def singly(law: Callable) -> Callable:
        return lambda Re, rough: [law(R, e) for R, e in zip(Re.tolist(), rough.tolist())]

    routes = [
        ("brimwork, friction_factors", friction_factors, count),
        ("SciPy, wrightomega", _by_wright_omega, count),
        ("fluids, Clamond, one at a time", singly(friction.Clamond), 20_000),
        ("fluids, Colebrook, one at a time", singly(friction.Colebrook), 20_000),
        ("fluids.vectorized, Clamond", fluids.vectorized.Clamond, 20_000),
    ]
    try:
        import fluids.numba
    except ImportError:
        return routes
    return [*routes, ("fluids.numba, Clamond", lambda Re, rough: fluids.numba_vectorized.Clamond(Re, rough, False), count)]


def _by_wright_omega(Re, rough):
    a, b, c = rough / 3.7, 2.51 / Re, 2 / math.log(10)
    return (c * numpy.log(c * b * wrightomega(a / (b * c) - numpy.log(c * b)))) ** -2.0


def _exactly(Re: float, rough: float) -> mpmath.mpf:
    with mpmath.workdps(45):
        a, b = mpmath.mpf(rough) / mpmath.mpf("3.7"), mpmath.mpf("2.51") / mpmath.mpf(Re)
        return 1 / mpmath.findroot(lambda x: x + 2 * mpmath.log10(a + b * x), mpmath.mpf(7), tol=mpmath.mpf(10) ** -80) ** 2


def _best_of(work: Callable, times: int = 7) -> tuple[float, list]:
    best, found = math.inf, []
    for _ in range(times):
        started = time.perf_counter()
        found = work()
        best = min(best, time.perf_counter() - started)
    return best, found


if __name__ == "__main__":
    main()
