"""Checks of a design some of whose values can hardly be: such a value is laid aside, and never lets a check pass."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cached_property
from typing import Any

from brimwork.design.follows.chain import Chain
from brimwork.design.judged.findings import Finding
from brimwork.design.typed.asking import asked
from brimwork.design.typed.noting import Noting
from brimwork.design.typed.plausible import without

WORSE = ("fail", "not shown", "marginal", "pass", "does not apply")


class Doubt:
    """Grades the checks of a design of which some values, under `keys`, can hardly be.

    Of a check that looks at one of them the worse of two counts: what it says with those values as they stand, and with them laid aside. What is usual
    counts in their place. A check that needs one with nothing in its place is not shown, even where it could go on without.
    """

    def __init__(self, chain: Chain, keys: tuple[str, ...]):
        self.keys, self.as_typed = keys, chain.watching(keys)
        (self.looks,) = self.as_typed.store.logs
        self.noting: Any = Noting(without(chain.design, keys))

    @cached_property
    def aside(self) -> Chain:
        """The chain of the design without those values; what none of them went into is kept."""
        return self.as_typed.supposing(self.noting)

    def graded(self, grade: Callable[[Chain], Finding]) -> Finding:
        self.looks.clear()
        as_typed = grade(self.as_typed)
        return min(self._without(grade), as_typed, key=lambda finding: WORSE.index(finding.grade)) if self.looks else as_typed

    def _without(self, grade: Callable[[Chain], Finding]) -> Finding:
        start = len(self.noting.log)
        found = grade(self.aside)
        needed = [key for key in dict.fromkeys(self.noting.log[start:]) if key in self.keys]
        if not needed or found.grade == "fail":
            return found
        needs = tuple(dict.fromkeys((*found.needs, *needed)))
        return replace(found, grade="not shown", value=f"needs {asked(*needs)}", limit="", remedy="", needs=needs)
