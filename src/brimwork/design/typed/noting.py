"""A design that notes what is asked of it: what a number hangs on, and what it still waits for."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from brimwork.design.typed.design import Design
from brimwork.design.typed.known import Given, Unknown


def _nothing(key: str) -> Any:
    raise Unknown(key)


class Noting:
    """Answers as `design` does, and notes by their keys, in order, all values that are asked for and those of them that are missing.

    `instead` gives a stand-in for a missing one by its key, or raises Unknown.
    """

    def __init__(self, design: Design, instead: Callable[[str], Any] = _nothing):
        self._design, self._instead = design, instead
        self.known = None if instead is _nothing else design  # what is really known, where something is supposed
        self.asked: dict[str, None] = {}
        self.log: list[str] = []  # each time that one was missing

    def __getattr__(self, name: str) -> Any:
        return getattr(self._design, name)

    def __getitem__(self, key: str) -> Any:
        given = self.given(key)
        if given is not None:
            return given.value
        self.log.append(key)
        return self._instead(key)

    @property
    def missing(self) -> dict[str, None]:
        return dict.fromkeys(self.log)

    def given(self, key: str) -> Given | None:
        self.asked[key] = None
        return self._design.given(key)
