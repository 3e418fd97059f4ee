"""Every body of a design by its name: outline in plan, the hole in it, and the levels between which it stands. Drawings and checks read them here."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from brimwork.design.follows.flight import Flight
from brimwork.design.follows.geometry import WALL
from brimwork.design.follows.kept import kept
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.patches import Outline, rectangular_patch
from brimwork.units import InputError

_HOSE_UNDER = 0.04  # m: how far under the top of the blocks the hose runs, as it is drawn
_MOUTH = 0.015  # m: how far under the rim its mouth lies, as it is drawn
_RIM_OVER = 0.05  # m: how far the back of a trough stands over its lip, as it is drawn
_SHALLOWEST = 0.1  # m: least depth of a wall's footing, as it is drawn

_Route = tuple[tuple[float, float, float], ...]  # m along, across, and to the paving
_Number = Callable[[], float]


@dataclass(frozen=True)
class Body:
    """One thing: its outline in plan, the hole in it, and the levels between which it stands (m)."""

    name: str
    outline: Outline
    low: float
    high: float
    hole: Outline = ()

    def reach(self, axis: int) -> tuple[float, float]:
        """From where to where it reaches, along (0) or across (1)."""
        values = [point[axis] for point in self.outline]
        return min(values), max(values)

    @property
    def upright(self) -> Outline:
        """Its outline in a section along the blocks."""
        left, right = self.reach(0)
        return ((left, self.low), (right, self.low), (right, self.high), (left, self.high))

    @property
    def cut(self) -> tuple[Outline, ...]:
        """What a section through its middle shows: one outline, or one on either side of its hole."""
        if not self.hole:
            return (self.upright,)
        (left, right), inner = self.reach(0), [x for x, _ in self.hole]
        return tuple(((a, self.low), (b, self.low), (b, self.high), (a, self.high)) for a, b in ((left, min(inner)), (max(inner), right)))


class Bodies:
    """The bodies of one design, each worked out when it is asked for."""

    def __init__(self, chain: Any):
        self.chain, self.geometry, self.store = chain, chain.geometry, chain.store
        self._makers: dict[str, Callable[[], Body]] = {}
        for made in (_below, _round_it, _ABOVE[chain.design.kind]):
            for name, *rest in made(self):
                self._makers[name] = self._maker(name, *rest)

    @staticmethod
    def _maker(name: str, outline: Callable[[], Outline], low: _Number, high: _Number, hole: Callable[[], Outline] = lambda: ()) -> Callable[[], Body]:
        return lambda: Body(name, outline(), low(), high(), hole())

    def __getitem__(self, name: str) -> Body:
        """Raises Unknown with the keys that are missing, InputError for what cannot be."""
        return self._makers[name]()

    def known(self) -> list[Body]:
        """Every body whose place is known."""
        found: list[Body] = []
        for maker in self._makers.values():
            try:
                found.append(maker())
            except (Unknown, InputError, ArithmeticError):
                continue
        return found

    @kept
    def flight(self) -> Flight:
        """Header, pools and rill of a cascade."""
        return Flight(self.chain)

    @property
    def sand_top(self) -> float:
        """Top of the bed, under the lining (m)."""
        d = self.chain.design
        return self.chain.level("formation") + d["ground.sub_base"] + d["ground.sand"]

    @property
    def hose(self) -> _Route:
        """The way of the hose from over the pump to where the feature is fed."""
        x, y = self.geometry.bay_middle
        return tuple((along, across, level) for along, across, level in _HOSE[self.chain.design.kind](self, x, y))


# --- in the ground ----------------------------------------------------------------------------------------------------------------------


def _below(b: Bodies):
    g, level, d = b.geometry, b.chain.level, b.chain.design
    yield "pit", lambda: g.pit, lambda: level("formation"), lambda: 0.0
    yield "sub-base", lambda: g.pit, lambda: level("formation"), lambda: level("formation") + d["ground.sub_base"]
    yield "sand bed", lambda: g.pit, lambda: level("formation") + d["ground.sub_base"], lambda: b.sand_top
    yield "working space", lambda: g.pit, lambda: b.sand_top, lambda: min(0.0, b.chain.box_top), lambda: g.panels
    yield "box", lambda: g.panels, lambda: level("reservoir floor"), lambda: b.chain.box_top, lambda: g.box
    yield "blocks", lambda: g.blocks, lambda: level("reservoir floor"), lambda: level("block top")
    yield "water at rest", lambda: g.blocks, lambda: level("reservoir floor"), lambda: level("static water")
    yield "pump bay", lambda: g.bay, lambda: level("reservoir floor"), lambda: level("block top")
    yield "pump", lambda: g.pump, lambda: level("reservoir floor") + 0.1 * g.bay_height, lambda: level("reservoir floor") + 0.6 * g.bay_height
    yield (
        "cover",
        lambda: _there(g.blocks if b.chain.thickness_of_cover else ()),
        lambda: level("block top"),
        lambda: level("block top") + b.chain.thickness_of_cover,
    )
    yield "stone in the box", lambda: g.box, lambda: level("block top"), lambda: level("stone top")
    yield "stone", lambda: g.stone, lambda: min(b.chain.box_top, level("stone top")), lambda: level("stone top")
    yield "hose", lambda: _strip(((x, y) for x, y, _ in b.hose), d["pipe.bore"]), lambda: min(z for *_, z in b.hose), lambda: max(z for *_, z in b.hose)


def _round_it(b: Bodies):
    g, level, d = b.geometry, b.chain.level, b.chain.design
    yield (
        "duct",
        lambda: _strip((g.bay_middle, g.supply), d["supply.duct_bore"]),
        lambda: -d["supply.duct_cover"] - d["supply.duct_bore"],
        lambda: -d["supply.duct_cover"],
    )
    yield (
        "overflow pipe",
        lambda: _strip((g.overflow_start, g.overflow_end), d["overflow_pipe.bore"]),
        lambda: level("overflow") - (d["overflow_pipe.fall"] if d.given("overflow_pipe.fall") else 0.0),
        lambda: level("overflow") + d["overflow_pipe.bore"],
    )
    # the ground up to footing and tree: on the way there where their places are given, else all round
    footing, stem = (lambda: d["site.footing_distance"]), (lambda: d["site.tree_distance"] - d["site.tree_stem"] / 2)
    for name, place, far, low in (
        ("ground up to the nearest footing", "footing", footing, lambda: -d["site.footing_depth"]),
        ("ground up to the nearest stem", "tree", stem, lambda: level("formation")),
    ):
        if d.given(f"site.{place}_along") and d.given(f"site.{place}_across"):
            yield name, lambda place=place: _strip((g.beside_pit(getattr(g, place)), getattr(g, place)), _WAY), low, lambda: 0.0
        else:
            yield name, lambda far=far: g.round_pit(far()), low, lambda: 0.0, lambda: g.pit


_WAY = 0.1  # m: how wide the way to a footing or stem is taken to be


def _strip(points, wide: float) -> Outline:
    """A strip of that width round a way in plan: the rectangle round its corners where it turns."""
    spots = list(points)
    if len(spots) == 2 and spots[0] != spots[1]:
        (x, y), (u, v) = spots
        long = math.dist(*spots)
        aside = (-(v - y) / long * wide / 2, (u - x) / long * wide / 2)
        return ((x - aside[0], y - aside[1]), (u - aside[0], v - aside[1]), (u + aside[0], v + aside[1]), (x + aside[0], y + aside[1]))
    left, right, low, high = min(x for x, _ in spots), max(x for x, _ in spots), min(y for _, y in spots), max(y for _, y in spots)
    return rectangular_patch(right - left + wide, high - low + wide, ((left + right) / 2, (low + high) / 2))


# --- what stands over it ------------------------------------------------------------------------------------------------------------------


def _standing(b: Bodies):
    """Slab, foot and piece, one after the other."""
    base = "vessel base" if b.chain.design.kind == "overflowing vessel" else "stone base"
    level, g = b.chain.level, b.geometry
    try:
        pieces = g.standing
    except (Unknown, InputError):
        return
    for i, piece in enumerate(pieces, start=1):
        name = "vessel" if base == "vessel base" else f"stone {i}"
        yield (
            f"slab under {name}",
            lambda piece=piece: _there(g.slab_under(piece)),
            lambda: level(base) - b.chain.design["slab.thickness"],
            lambda: level(base),
        )
        yield f"foot of {name}", lambda piece=piece: piece.foot, lambda: level(base), lambda: level(base), lambda piece=piece: piece.hole
        yield name, lambda piece=piece: piece.rim, lambda: level(base), lambda piece=piece: level(base) + piece.height


def _there(outline: Outline) -> Outline:
    if not outline:
        raise InputError("there is none")
    return outline


def _blade(b: Bodies):
    level, g, d = b.chain.level, b.geometry, b.chain.design
    floor = lambda: level("lip") - d["blade.trough_depth"]  # noqa: E731
    yield "wall", lambda: g.wall, lambda: 0.0, lambda: floor() - WALL
    yield "footing of the wall", lambda: g.wall, lambda: min(level("formation"), -_SHALLOWEST), lambda: 0.0
    yield "trough", lambda: g.wall, lambda: floor() - WALL, lambda: level("lip") + _RIM_OVER, lambda: g.trough
    yield "water in the trough", lambda: g.trough, floor, lambda: level("lip") + b.chain.lip_head
    yield "falling sheet", lambda: g.sheet, lambda: level("splash stone"), lambda: level("lip")


def _cascade(b: Bodies):
    level, g, chain = b.chain.level, b.geometry, b.chain
    across = lambda first, last, wide: rectangular_patch(last - first, wide, ((first + last) / 2, 0.0))  # noqa: E731
    yield "steps", lambda: across(b.flight.back, b.flight.end, b.flight.width), lambda: min(0.0, chain.foot), lambda: level("header lip")
    yield "last fall", lambda: g.pour, lambda: level("stone top"), lambda: chain.foot
    try:
        pools, rill = b.flight.pools, b.flight.rill
    except (Unknown, InputError):
        return
    for i, (first, last, high) in enumerate(pools):
        yield (
            f"pool {i}" if i else "header",
            lambda first=first, last=last: across(first, last, b.flight.width),
            lambda high=high: high,
            lambda high=high: high + chain.step_head,
        )
    if rill:
        yield "rill", lambda: across(b.flight.start, b.flight.end, rill[1]), lambda: chain.foot, lambda: b.flight.lips[-1][1] + chain.normal_depth


_ABOVE = {"overflowing vessel": _standing, "drilled stones": _standing, "blade": _blade, "cascade": _cascade}


# --- the hose -----------------------------------------------------------------------------------------------------------------------------


def _to_vessel(b: Bodies, x: float, y: float) -> _Route:
    under, (u, v) = b.chain.level("block top") - _HOSE_UNDER, b.geometry.standing[0].middle
    return (x, y, under), (u, v, under), (u, v, b.chain.level("rim") - _MOUTH)


def _to_stones(b: Bodies, x: float, y: float) -> _Route:
    under, (u, v) = b.chain.level("block top") - _HOSE_UNDER, max(b.chain.places)
    return (x, y, under), (u, v, under), (u, v, b.chain.level("stone base"))


def _over_the_box(b: Bodies) -> float:
    top = b.chain.box_top
    return (top + max(b.chain.level("stone top"), top)) / 2


def _to_trough(b: Bodies, x: float, y: float) -> _Route:
    over, trough = _over_the_box(b), b.geometry.trough
    middle = (trough[0][0] + trough[1][0]) / 2
    return (x, y, over), (middle, 0.0, over), (middle, 0.0, b.chain.level("lip") - b.chain.design["blade.trough_depth"])


def _to_header(b: Bodies, x: float, y: float) -> _Route:
    over = _over_the_box(b)
    return (x, y, over), (b.flight.back, 0.0, over)


_HOSE: dict[str, Callable[[Bodies, float, float], _Route]] = {
    "overflowing vessel": _to_vessel,
    "drilled stones": _to_stones,
    "blade": _to_trough,
    "cascade": _to_header,
}
