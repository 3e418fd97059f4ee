"""Sizes and levels of one design that cannot be together, or are not worth building: each row names both, and what could be changed."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

from brimwork.design.follows.agreeing import AT_LEAST, AT_MOST, Agreeing, OfChain
from brimwork.design.follows.geometry import room_inside
from brimwork.design.typed.criteria import BLADE, CASCADE, STONES, VESSEL
from brimwork.design.typed.patches import apart
from brimwork.units import InputError


def _level(name: str) -> OfChain:
    return lambda c: c.level(name)


def _up(chain: Any) -> float:
    """Least length of hose from the pump's intake to where it ends."""
    intake = chain.design.given("pump.intake_level")
    return chain.delivery - chain.level("reservoir floor") - (intake.value if intake else 0.0)


def _hose(chain: Any) -> float:
    return chain.design["pipe.length"] + (max(chain.design["stones.branch_lengths"]) if chain.design.kind in STONES else 0.0)


def _outside_volume(chain: Any) -> float:
    return chain.outside_volume


def _widest(chain: Any) -> float:
    d = chain.design
    return max(d["vessel.rim_diameter"], d["vessel.widest"]) if "vessel.widest" in d.values else d["vessel.rim_diameter"]


def _ring(number: OfChain) -> OfChain:
    """Only for a foot that is not given by its corners."""

    def found(chain: Any) -> float:
        if "vessel.foot_corners" in chain.design.values:
            raise InputError("its corners are given")
        return number(chain)

    return found


def _on_slab(number: OfChain) -> OfChain:
    def found(chain: Any) -> float:
        if not chain.slab_count:
            raise InputError("there is no slab")
        return number(chain)

    return found


def _closest(size: Callable[[Any, int], float]) -> OfChain:
    """Least gap between two neighbours among the stones, or their slabs."""

    def found(chain: Any) -> float:
        places = chain.places
        pairs = [(i, j) for i in range(len(places)) for j in range(i)]
        return min([math.dist(places[i], places[j]) - (size(chain, i) + size(chain, j)) / 2 for i, j in pairs] or [math.inf])

    return found


def _slab_gap(chain: Any) -> float:
    outlines = [chain.geometry.slab_under(piece) for piece in chain.geometry.standing]
    return min([max(_gap(a, b, 0), _gap(a, b, 1)) for i, a in enumerate(outlines) for b in outlines[:i]] or [math.inf])


def _gap(a: tuple, b: tuple, axis: int) -> float:
    """Gap between two rectangles along one axis; below zero where they overlap there."""
    (a0, a1), (b0, b1) = ((min(p[axis] for p in one), max(p[axis] for p in one)) for one in (a, b))
    return max(b0 - a1, a0 - b1)


def overlap(a: tuple, b: tuple) -> bool:
    """Whether two rectangles lie one over the other by more than 5 mm each way."""
    return max(_gap(a, b, 0), _gap(a, b, 1)) < -0.005


def _rim_room(chain: Any) -> float:
    """How far the rim, or the top of a stone, stays inside the lined catch."""
    return min(room_inside(piece.rim, chain.geometry.catch_half) for piece in chain.geometry.standing)


def _water_room(chain: Any) -> float:
    """How far the falling sheet, or the last fall of a cascade, stays inside the lined catch."""
    place = chain.geometry
    return room_inside(place.sheet if chain.design.kind in BLADE else place.pour, place.catch_half)


def _bay_room(chain: Any) -> float:
    place = chain.geometry
    return apart(place.bay, place.sheet if chain.design.kind in BLADE else place.pour)


def _outside(spot: Callable[[Any], tuple[float, float]]) -> OfChain:
    """How far (m) a spot lies outside the lined catch; below zero inside."""

    def found(chain: Any) -> float:
        (x, y), (along, across) = spot(chain.geometry), chain.geometry.catch_half
        return max(abs(x) - along, abs(y) - across)

    return found


def _apron_beyond(chain: Any) -> float:
    """How far (m) the apron reaches beyond the pit, on the side where it does so more."""
    pit, catch = chain.geometry.pit[2], chain.geometry.catch_half
    return max(catch[0] - pit[0], catch[1] - pit[1], 0.0)


def _none(chain: Any) -> float:
    return 0.0


SPILLS = 0.030  # m: stones of a dressing may stand that far over the edge of the liner, one layer of small ones: judgement


def _takes(axis: int) -> OfChain:
    """What the feature takes of its bed along (0) or across (1): pit, lined catch, and what stands there, wall, steps and rill."""

    def found(chain: Any) -> float:
        place, kind = chain.geometry, chain.design.kind
        half = place.catch_half[axis]
        above = [place.wall] if kind in BLADE else [chain.bodies["steps"].outline] if kind in CASCADE else [piece.rim for piece in place.standing]
        points = [point[axis] for outline in (place.pit, *above) for point in outline]
        return max(half, *points) - min(-half, *points)

    return found


DENSEST_PLASTIC = 1400.0  # kg/m3: PVC, the densest that blocks are made of; from memory


def _solid(chain: Any) -> float:
    """The most that a block can weigh: what of it is not void, in the densest plastic."""
    d = chain.design
    return (1 - d["reservoir.void_fraction"]) * DENSEST_PLASTIC * d["reservoir.block_length"] * d["reservoir.block_width"] * d["reservoir.block_height"]


TOGETHER: tuple[Agreeing, ...] = (
    Agreeing("reservoir.block_mass", AT_MOST, _solid, "what of it is not void, in the densest plastic", "reservoir.void_fraction or the size of a block", 0.05, share=True),
    Agreeing("site.bed_length", AT_LEAST, _takes(0), "all that stands, lies or is dug there, along the blocks: the pit with its working space, stone, and what stands there",
             "catch.apron, ground.working_space, the blocks, or what stands beside them"),
    Agreeing("site.bed_width", AT_LEAST, _takes(1), "all that stands, lies or is dug there, across the blocks: the pit with its working space, stone, and what stands there",
             "catch.apron, ground.working_space, the blocks, or what stands beside them"),
    Agreeing("catch.stone_thickness", AT_MOST, _level("liner edge"), "the edge of the liner, over which water and stone would run off outside", "levels.block_top, reservoir.cover or levels.liner_edge",
             SPILLS, own=_level("stone top"), said="the top of the stone"),
    Agreeing("levels.block_top", AT_MOST, _none, "the finished paving", "reservoir.block_height", 0.020),
    Agreeing("ground.sub_base", AT_MOST, lambda c: -c.design["ground.sub_base"], "the finished paving, less the layers over it", "levels.block_top or reservoir.block_height", 0.0,
             own=lambda c: c.level("formation") - c.design["ground.sub_base"] + 1e-6, said="the bottom of the pit"),
    Agreeing("pump.intake_level", AT_MOST, lambda c: c.design["reservoir.lowest_level"], "the lowest level at which the pump may run", "reservoir.lowest_level", -0.001),
    Agreeing("reservoir.static_level", AT_MOST, lambda c: c.design["reservoir.overflow_level"], "the overflow", "reservoir.overflow_level"),
    Agreeing("reservoir.overflow_level", AT_MOST, lambda c: c.design["reservoir.block_height"], "the height of the blocks", "reservoir.block_height"),
    Agreeing("overflow_pipe.bore", AT_MOST, lambda c: c.level("liner edge") - c.level("overflow"), "the edge of the liner over the overflow", "levels.liner_edge"),
    Agreeing("levels.staple_line", AT_MOST, _level("liner edge"), "the edge of the liner", "levels.liner_edge"),
    Agreeing("levels.soil", AT_MOST, _level("liner edge"), "the edge of the liner", "levels.liner_edge"),
    Agreeing("site.ground_water", AT_MOST, lambda c: -c.level("reservoir floor"), "the depth of the reservoir floor under the paving", "levels.block_top"),
    Agreeing("catch.wet_area", AT_MOST, lambda c: c.stone_area, "the stone that there is", "catch.apron", 1e-3, share=True),
    Agreeing("pump.bay", AT_MOST, lambda c: min(c.base_length, c.base_width), "the narrower side of the blocks", "reservoir.blocks_across"),
    Agreeing("pipe.length", AT_LEAST, _up, "the way up from the pump to where the hose ends", "the levels", 0.05, own=_hose, said="hose"),
    Agreeing("supply.point_along", AT_LEAST, _none, "the edge of the lined catch", "supply.point_across", 0.0, own=_outside(lambda place: place.supply),
             said="how far the supply point stands outside the catch"),
    Agreeing("overflow_pipe.end_along", AT_LEAST, _none, "the edge of the lined catch", "overflow_pipe.end_across", 0.0, own=_outside(lambda place: place.overflow_end),
             said="how far the overflow pipe ends outside the catch"),
    Agreeing("site.footing_along", AT_LEAST, _none, "the edge of the lined catch", "site.footing_across or catch.apron", 0.0, own=_outside(lambda place: place.footing),
             said="how far the footing lies outside the catch"),
    Agreeing("site.tree_along", AT_LEAST, lambda c: c.design["site.tree_stem"] / 2, "half of its stem", "site.tree_across or catch.apron", 0.0,
             own=_outside(lambda place: place.tree), said="how far the middle of the stem stands outside the catch"),
    Agreeing("site.tree_distance", AT_LEAST, lambda c: c.design["site.tree_stem"] / 2 + _apron_beyond(c), "half of its stem, and what the apron covers beyond the pit",
             "catch.apron", 0.001),
    Agreeing("site.footing_distance", AT_LEAST, lambda c: _apron_beyond(c), "what the apron covers beyond the pit", "catch.apron", 0.001),
    Agreeing("vessel.foot_inside", AT_MOST, _ring(lambda c: c.design["vessel.foot_outside"]), "the outside of the foot", "vessel.foot_outside", -1e-4, kinds=VESSEL),
    Agreeing("vessel.foot_outside", AT_MOST, _ring(_widest), "the rim, or where the vessel is widest", "vessel.rim_diameter", kinds=VESSEL),
    Agreeing("vessel.foot_outside", AT_MOST, _ring(_on_slab(lambda c: min(c.design["slab.length"], c.design["slab.width"]))), "the slab under it",
             "slab.length or slab.width", kinds=VESSEL),
    Agreeing("vessel.water", AT_MOST, _outside_volume, "what the vessel's outside encloses", "vessel.rim_diameter or vessel.height", 1e-3, share=True, kinds=VESSEL),
    Agreeing("vessel.foam", AT_MOST, _outside_volume, "what the vessel's outside encloses", "vessel.pebbles", 1e-3, share=True, kinds=VESSEL,
             own=lambda c: c.design["vessel.foam"] + c.design["vessel.pebbles"], said="foam and pebbles"),
    Agreeing("pipe.mouth_below_rim", AT_MOST, lambda c: c.design["vessel.height"], "the height of the vessel", "vessel.height", -1e-3, kinds=VESSEL),
    Agreeing("vessel.wall_thickness", AT_MOST, lambda c: c.design["vessel.rim_diameter"] / 2, "half of the rim", "vessel.rim_diameter", -1e-3, kinds=VESSEL),
    Agreeing("vessel.widest", AT_LEAST, lambda c: c.design["vessel.rim_diameter"], "the rim", "vessel.rim_diameter", kinds=VESSEL),
    Agreeing("catch.apron", AT_LEAST, _none, "the rim", "vessel.rim_diameter or vessel.offset", own=_rim_room, said="lined catch beyond the rim", kinds=VESSEL),
    Agreeing("catch.apron", AT_LEAST, _none, "the stone that stands furthest out", "stones.diameters, stones.places_along or stones.places_across", own=_rim_room,
             said="lined catch beyond the stones", kinds=STONES),
    Agreeing("catch.apron", AT_LEAST, _none, "the water that falls", "blade.lip_width or blade.lip_level", own=_water_room, said="lined catch beyond the falling water",
             kinds=BLADE),
    Agreeing("catch.apron", AT_LEAST, _none, "the water that falls", "cascade.width, cascade.rill_width or cascade.top_level", own=_water_room,
             said="lined catch beyond the falling water", kinds=CASCADE),
    Agreeing("pump.bay", AT_LEAST, _none, "the water that falls on the stone", "reservoir.blocks_along or reservoir.blocks_across", -1e-3, own=_bay_room, said="way from the pump's bay to the falling water",
             kinds=BLADE + CASCADE),
    Agreeing("stones.hole", AT_MOST, lambda c: min(c.design["stones.diameters"]), "the narrowest stone", "stones.diameters", -1e-3, kinds=STONES),
    Agreeing("stones.rough_contact", AT_MOST, lambda c: math.pi / 4 * min(c.design["stones.diameters"]) ** 2, "the base of the narrowest stone", "stones.diameters",
             0.0, kinds=STONES),
    Agreeing("stones.diameters", AT_LEAST, _none, "their neighbours", "stones.places_along, or more blocks", own=_closest(lambda c, i: c.sizes[i][0]),
             said="gap between two stones", kinds=STONES),
    Agreeing("slab.length", AT_LEAST, _none, "the next slab", "stones.places_along, or more blocks", own=_on_slab(_slab_gap), said="gap between two slabs", kinds=STONES),
    Agreeing("slab.width", AT_LEAST, lambda c: max(c.design["stones.diameters"]), "the widest stone on it", "stones.diameters",
             own=_on_slab(lambda c: min(c.design["slab.length"], c.design["slab.width"])), said="narrower side of the slab", kinds=STONES),
    Agreeing("blade.trough_depth", AT_MOST, lambda c: max(c.design["blade.wall_height"], c.level("lip")), "the wall, or the lip over the paving", "blade.wall_height", kinds=BLADE),
    Agreeing("blade.stone_level", AT_MOST, _level("lip"), "the lip", "blade.lip_level", -1e-3, kinds=BLADE),
    Agreeing("cascade.step_fall", AT_LEAST, lambda c: c.geometry.last_fall, "the last fall, from its end down to the stone", "cascade.top_level or cascade.steps", 0.05,
             own=lambda c: max(c.design["cascade.step_fall"], 0.10), said="fall of a step, or 100 mm", kinds=CASCADE),
)  # fmt: skip
