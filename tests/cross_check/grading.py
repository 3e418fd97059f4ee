"""How the cross-check grades: limits, verdicts, and the register of its checks.

A verdict is a grade, the number behind it, and how it came about. The checks themselves stand in `verdicts_loads`, `verdicts_site` and `verdicts_water`.
"""

import math
from collections.abc import Callable
from typing import NamedTuple

from plain_design import Impossible, Missing
from truth import Worked

ORDER = ("fail", "marginal", "unknown", "pass")


class Verdict(NamedTuple):
    grade: str
    number: float
    how: str


def most(value: float, good: float, fair: float, how: str = "") -> Verdict:
    value = float(f"{value:.9g}")
    return Verdict("pass" if value <= good else "marginal" if value <= fair else "fail", value, how)


def least(value: float, good: float, fair: float, how: str = "") -> Verdict:
    value = float(f"{value:.9g}")
    return Verdict("pass" if value >= good else "marginal" if value >= fair else "fail", value, how)


def between(value: float, good, fair, how: str = "") -> Verdict:
    value = float(f"{value:.9g}")
    return Verdict("pass" if good[0] <= value <= good[1] else "marginal" if fair[0] <= value <= fair[1] else "fail", value, how)


def worst(*verdicts: Verdict) -> Verdict:
    return min(verdicts, key=lambda one: ORDER.index(one.grade))


CHECKS: dict[str, Callable[[Worked], Verdict | None]] = {}


def check(*ids: str):
    def named(work):
        for one in ids:
            CHECKS[one] = work
        return work

    return named


def judged(w: Worked) -> dict[str, Verdict]:
    """Verdict by the id of the check; those that cannot apply are left out."""
    found = {}
    for name, work in CHECKS.items():
        try:
            verdict = work(w)
        except Missing as missing:
            verdict = Verdict("unknown", math.nan, f"needs {missing}")
        except (Impossible, ArithmeticError, ValueError) as cannot:
            verdict = Verdict("fail", math.nan, f"cannot be: {cannot}")
        if verdict is not None:
            found[name] = verdict
    return found


def public(w: Worked) -> bool:
    return w.d["site.use"] != "private"
