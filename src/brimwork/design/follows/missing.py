"""Which values a number still waits for: all of them, not just the first one that is met."""

from __future__ import annotations

from collections.abc import Callable

from brimwork.design.follows.chain import Chain
from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.reading import Curve, Field, Several
from brimwork.units import InputError


class _Supposing:
    """A design that gives a stand-in for every number nobody has given, and notes its key. Words are not supposed: they decide what else is asked."""

    def __init__(self, design: Design):
        self.design, self.noted = design, []

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
                return 1 if whole else 1.0
            case Several():
                return (1.0,)
            case Curve():
                return ((0.0, 1e3), (1.0, 0.0))
        raise Unknown(key)


def missing(chain: Chain, ask: Callable[[Chain], object]) -> tuple[str, ...]:
    """The keys that `ask` of a chain like this one still needs, in the order in which it needs them."""
    supposing = _Supposing(chain.design)
    try:
        ask(type(chain)(supposing))
    except (Unknown, InputError, ArithmeticError):  # a word is missing, or the stand-ins do not go together: what was noted so far is needed
        pass
    return tuple(supposing.noted)
