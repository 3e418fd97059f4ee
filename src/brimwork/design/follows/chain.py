"""The chain that computes a design: every number from the design's values, each by a formula of the topics, once.

A result that needs a value nobody has given raises Unknown with its key; all the others still stand.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache
from typing import TYPE_CHECKING, Any

from brimwork import tables, topics
from brimwork.design.follows import agreeing, levels
from brimwork.design.follows.bodies import Bodies
from brimwork.design.follows.geometry import Geometry, room_inside
from brimwork.design.follows.kept import Store, Watched, kept
from brimwork.design.typed import patches
from brimwork.design.typed.design import Design
from brimwork.formula import Working
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError

GRAVITY = QUANTITIES["g"].fixed
_ABOUT_A_CHAIN = ("geometry", "bodies", "coming", "heavier", "store", "supposed", "beside")  # what asks a chain for more belongs to that one alone


@dataclass(frozen=True)
class Found:
    """A result of a procedure rather than of one formula: letter, SI value, and in words how it was found."""

    letter: str
    result: float
    how: str


class result:  # noqa: N801 - reads as a decorator
    """A number of the chain: worked once and kept, with its working under the method's name."""

    def __init__(self, method: Callable[[Any], Working | Found]):
        self.method, self.__doc__ = method, method.__doc__

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name

    def __get__(self, chain: Chain | None, owner: type) -> Any:
        return self if chain is None else (chain._worked.get(self.name) or chain.working(self.name)).result


COMING = "coming."  # before the name of a result: the one at the flow that comes, in place of the flow wanted
AT_COMING = "at the flow that comes"


class Chain:
    """Numbers of one design, in SI. `working(name)` gives the working behind a number."""

    def __init__(self, design: Design):
        self.design = design
        self._worked: dict[str, Working | Found] = {}
        self._following: dict[tuple[str, str], float | None] = {}
        self.store = Store(design)
        self.beside: dict[str, Any] = {}  # what other rooms make of this chain once, by name
        self.supposed: dict[float, Chain] = {}  # this chain with a number in place of each that is missing

    def supposing(self, design: Design) -> Chain:
        """The same chain for a design that gives values which this one lacks; what is worked out here needs none of them, and is kept."""
        other = type(self)(design)
        same = {name: dict(value) if type(value) is dict else value for name, value in self.__dict__.items() if name not in _ABOUT_A_CHAIN}
        other.__dict__ |= {**same, "design": design}
        return other

    def watching(self, keys: tuple[str, ...]) -> Chain:
        """A new chain of the same design that logs each look at the values under these keys."""
        return type(self)(replace(self.design, values=Watched(self.design.values, keys)))

    if TYPE_CHECKING:  # a part of a chain reads numbers of the others, and those that only some kinds have

        def __getattr__(self, name: str) -> Any: ...

    def working(self, name: str) -> Working | Found:
        """The working behind the result `name`; behind "coming." and a name, at the flow that comes. Raises Unknown with the missing keys, InputError for values that cannot be."""
        if name.startswith(COMING):
            return self.coming.working(name.removeprefix(COMING))
        try:
            return self.store.once(self._worked, name, lambda: getattr(type(self), name).method(self))
        except ArithmeticError:
            raise InputError(
                f"'{name.replace('_', ' ')}' cannot be worked out: a value that must be more than nothing is zero, or one is far too large"
            ) from None

    @classmethod
    @cache
    def names(cls) -> tuple[str, ...]:
        """The names of all results of this kind of feature."""
        return tuple(name for name in dir(cls) if isinstance(getattr(cls, name), result))

    def _work(self, formula: str, **values: float) -> Working:
        return topics.formulas()[formula].work(**values)

    def level(self, name: str) -> float:
        return levels.height_of(self.design, name)

    @kept
    def geometry(self) -> Geometry:
        """Where every body is."""
        return Geometry(self)

    @kept
    def bodies(self) -> Bodies:
        """Every body by its name."""
        return Bodies(self)

    def counted(self, key: str) -> float:
        """The value that counts under a key that can be typed and that also follows from others: the worse of the two. Raises Unknown."""
        return agreeing.counted(self, key)

    def following(self, row: agreeing.Agreeing) -> float | None:
        """The number that the value of a row must agree with, worked once; None where something is missing for it."""
        return self.store.once(self._following, (row.key, row.words), lambda: row.found(self))

    @property
    def really(self) -> Chain:
        """The chain of what is really known, where this one supposes values that nobody gave."""
        known = getattr(self.design, "known", None)
        return self if known is None else type(self)(known)

    @kept
    def water(self) -> dict[str, float]:
        """Density and viscosities at the temperature of the water."""
        return tables.water(self.design["flow.water_temperature"])

    # --- what each kind of feature says for itself

    @property
    def edge_head(self) -> float:
        """M: water that stands over the edge."""
        return 0.0

    edges = True  # whether water stands over an edge

    def edge(self) -> tuple[float, float, float]:
        """Water surface (m2) behind the edge, its length (m) and its weir coefficient (m^0.5/s). Raises Unknown."""
        raise NotImplementedError

    @property
    def delivery(self) -> float:
        """Level in m to which the pump lifts."""
        raise NotImplementedError

    def in_transit(self) -> dict[str, float]:
        """Water in transit above the reservoir, by the letters of its formula, without pipe and stone."""
        raise NotImplementedError

    def wet_parts(self) -> tuple[float, str]:
        """Wetted area (m2) besides the stone, and in words what it is."""
        raise NotImplementedError

    @property
    def heavier(self) -> Chain:
        """This chain; where two values of its weight contradict each other, the one with the heavier. Checks of what presses are graded by it. Raises Unknown."""
        return self

    @property
    def standing_mass(self) -> float:
        """Kg: what stands on the blocks, without the stone."""
        return 0.0

    @property
    def resultant(self) -> tuple[float, float]:
        """M: where the weight of what stands there acts, along and across."""
        return 0.0, 0.0

    @property
    def held_above(self) -> float:
        """M3: water that stays up in the feature when the pump stops."""
        return 0.0

    @property
    def bare(self) -> float:
        """M2: area of the blocks that bears no stone."""
        return 0.0

    @property
    def slab_count(self) -> int:
        """Slabs under what stands on the blocks."""
        return 0

    @property
    def splash_throw(self) -> float:
        """M: how far out the water lands, before it splashes."""
        return 0.0

    def contact_shapes(self) -> tuple[patches.Shape, ...]:
        """What touches the blocks. Raises Unknown."""
        return ()

    # --- splash

    @property
    def apron(self) -> float:
        """Width in m of the stone that catches the splash: from the water that falls furthest out to the end of the lined catch, never more than the apron."""
        room = [room_inside(piece.rim, self.geometry.catch_half) for piece in self.geometry.standing]
        return max(min([self.design["catch.apron"], *room]), 0.0)

    @result
    def apron_wanted(self):
        d = self.design
        return self._work("apron that the water wants", k_wind=d["assumptions.wind_factor"], x_throw=self.splash_throw,
                          k_splash=d["catch.splash_factor"], h_fall=self.fall)  # fmt: skip

    @result
    def apron_share(self):
        return Found(
            "r_apron", self.apron / self.apron_wanted, f"the apron over the {QUANTITIES['w_apron'].metric_text(self.apron_wanted)} that water and wind want"
        )
