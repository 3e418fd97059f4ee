"""Which values a number still waits for: all of them, not just the first one that is met."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any, cast

from brimwork.design.follows.chain import Chain
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.noting import Noting
from brimwork.design.typed.reading import Curve, Field, Several
from brimwork.units import InputError

_STAND_INS = (1.0, 0.01, 100.0)


def _supposed(key: str, stand_in: float) -> Any:
    """A stand-in for a number that nobody has given. Words are not supposed: they decide what else is asked."""
    section, _, name = key.partition(".")
    match SECTIONS[section][name]:
        case Field(whole=whole):
            return 1 if whole else stand_in
        case Several():
            return (stand_in,)
        case Curve():
            return ((0.0, 1e3), (1.0, 0.0))
    raise Unknown(key)


def missing(chain: Chain, ask: Callable[[Chain], object]) -> tuple[str, ...]:
    """The keys that `ask` of a chain like this one still needs, in the order in which it needs them."""
    noted: dict[str, None] = {}
    for stand_in in _STAND_INS:
        if stand_in not in chain.supposed:
            supposing: Any = Noting(chain.design, partial(_supposed, stand_in=stand_in))
            chain.supposed[stand_in] = chain.supposing(supposing)
        supposed = chain.supposed[stand_in]
        log = cast(Noting, supposed.design).log
        start = len(log)
        try:
            ask(supposed)
        except (InputError, ArithmeticError):  # the stand-ins do not go together, as a wall thicker than its vessel: what was noted so far is needed
            noted |= dict.fromkeys(log[start:])
            continue
        except Unknown:  # a word is missing
            pass
        return tuple(noted | dict.fromkeys(log[start:]))
    return tuple(noted)
