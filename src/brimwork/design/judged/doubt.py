"""Checks of a design some of whose values can hardly be: such a value is laid aside, and never lets a check pass."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from brimwork.design.follows.chain import Chain
from brimwork.design.judged.findings import Finding
from brimwork.design.typed.asking import asked
from brimwork.design.typed.noting import Noting
from brimwork.design.typed.plausible import without

WORSE = ("fail", "not shown", "marginal", "pass", "does not apply")


def doubted(grade: Callable[[Chain], Finding], chain: Chain, keys: tuple[str, ...]) -> Finding:
    """The worse of two: what a check says with those values as they stand, and with them laid aside.

    What is usual counts in their place. A check that needs one with nothing in its place is not shown, even where it could go on without.
    """
    aside: Any = Noting(without(chain.design, keys))
    without_them = grade(type(chain)(aside))
    needed = [key for key in aside.missing if key in keys]
    if needed and without_them.grade != "fail":
        needs = tuple(dict.fromkeys((*without_them.needs, *needed)))
        without_them = replace(without_them, grade="not shown", value=f"needs {asked(*needs)}", limit="", remedy="", needs=needs)
    return min(without_them, grade(chain), key=lambda finding: WORSE.index(finding.grade))
