"""Which values a number still waits for: all of them, not just the first one that is met."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from brimwork.design.follows.chain import Chain
from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.reading import Curve, Field, Several
from brimwork.units import InputError

_STAND_INS = (1.0, 0.01, 100.0)


class _Supposing:
    """A design that gives a stand-in for every number nobody has given, and notes its key. Words are not supposed: they decide what else is asked."""

    def __init__(self, design: Design, stand_in: float):
        self.design, self.known, self.stand_in = design, design, stand_in
        self.noted: list[str] = []

    def __getattr__(self, name: str):
        return getattr(self.design, name)

    def __getitem__(self, key: str):
        given = self.design.given(key)
        if given is not None:
            return given.value
        if key not in self.noted:
            self.noted.append(key)
        section, _, name = key.partition(".")
        match SECTIONS[section][name]:
            case Field(whole=whole):
                return 1 if whole else self.stand_in
            case Several():
                return (self.stand_in,)
            case Curve():
                return ((0.0, 1e3), (1.0, 0.0))
        raise Unknown(key)


def missing(chain: Chain, ask: Callable[[Chain], object]) -> tuple[str, ...]:
    """The keys that `ask` of a chain like this one still needs, in the order in which it needs them."""
    noted: dict[str, None] = {}
    for stand_in in _STAND_INS:
        supposing: Any = _Supposing(chain.design, stand_in)
        try:
            ask(chain.supposing(supposing))
        except (InputError, ArithmeticError):  # the stand-ins do not go together, as a wall thicker than its vessel: what was noted so far is needed
            noted.update(dict.fromkeys(supposing.noted))
        except Unknown:  # a word is missing
            return tuple(noted | dict.fromkeys(supposing.noted))
        else:
            return tuple(noted | dict.fromkeys(supposing.noted))
    return tuple(noted)
