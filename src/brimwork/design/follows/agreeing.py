"""Values that can be typed and that also follow from others: what each follows from, how near they must be, and which of the two counts until they agree.

The first table is of values given twice, or that must leave room for something: there the worse of the two counts in every check of safety or of
water. The second is of sizes that cannot be together, or are not worth building. What was measured on site counts before both.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from brimwork.cables import cable_drop, carried, conductor
from brimwork.design.follows.geometry import room_inside
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.patches import apart, area_of
from brimwork.units import InputError

_Number = Callable[[Any], float]  # of a chain
THE_SAME, AT_LEAST, AT_MOST = "the same as", "at least", "at most"
_VESSEL, _STONES, _BLADE, _CASCADE = ("overflowing vessel",), ("drilled stones",), ("blade",), ("cascade",)
SAME_LEVEL = 0.003  # m: two levels nearer than this count as one, for overflow and blocks are set within 3 mm on site: common practice, as the steps say


@dataclass(frozen=True)
class Agreeing:
    """The value under `key` must be the same as, at least or at most another one, `other`, which follows from what `words` say.

    `near` is the difference that does no harm, in SI, or with `share` as a share of the other. `worse` is min or max where the two are compared and
    the worse one counts; `own` where the number is not the typed one itself. `settle` says what else could be changed.
    """

    key: str
    must: str
    other: _Number
    words: str
    settle: str
    near: float = 1e-3
    share: bool = False
    worse: Callable[..., float] | None = None
    own: _Number | None = None
    kinds: tuple[str, ...] = tuple(KINDS)
    said: str = ""  # what the own number is, where it is not the typed one

    def typed(self, chain: Any) -> float | None:
        """The typed number, or None."""
        if self.own is None:
            given = chain.design.given(self.key)
            return given.value if given else None
        return _known(self.own, chain)

    def found(self, chain: Any) -> float | None:
        """The number that follows, or None where something is missing for it."""
        return _known(self.other, chain)

    def measured(self, chain: Any) -> bool:
        given = chain.design.given(self.key)
        return bool(given) and given.basis == "measured"

    def agrees(self, typed: float, found: float) -> bool:
        room = self.near * abs(found) if self.share else self.near
        over = typed - found
        return abs(over) <= room if self.must == THE_SAME else over >= -room if self.must == AT_LEAST else over <= room


def _known(number: _Number, chain: Any) -> float | None:
    try:
        return number(chain)
    except (Unknown, InputError, ArithmeticError):
        return None


# --- the other number of each ---------------------------------------------------------------------------------------------------------


def settled(chain: Any) -> float:
    """The level at which the water settles while running; a top-up valve holds it at its own."""
    settled = chain.design["reservoir.static_level"] - chain.start_drop
    topped = chain.design.given("reservoir.top_up_level")
    return max(settled, topped.value) if topped else settled


def _spills(chain: Any) -> float:
    return chain.level("liner edge") - chain.level("overflow") - chain.design["overflow_pipe.bore"] / 2


LIGHTEST = 600.0  # kg/m3: hardwood, the lightest that a vessel is made of in one thickness; one with a hollow wall is measured instead. From memory.


def _least_held(chain: Any) -> float:
    """What a vessel holds at least: as much as rim and foot enclose with a straight side between them, less all that a light wall of its mass can take."""
    d = chain.design
    top = chain.vessel_surface
    foot = area_of(chain.geometry.standing[0].foot)
    enclosed = d["vessel.height"] / 3 * (top + math.sqrt(top * foot) + foot)
    return max(enclosed - d["vessel.mass"] / LIGHTEST, 0.0)


def _catch(chain: Any) -> float:
    along, across = chain.geometry.catch_half
    return 4 * along * across


def _route(chain: Any) -> float:
    """From the pump's bay straight to the supply point, and up from the floor."""
    return math.dist(chain.geometry.bay_middle, chain.geometry.supply) - chain.level("reservoir floor")


def pieces(chain: Any) -> list[float]:
    """Masses (kg) of what is set in one piece: vessel or stones, and slabs."""
    kind = chain.design.kind
    masses = [chain.design["vessel.mass"]] if kind in _VESSEL else list(chain.masses) if kind in _STONES else []
    return masses + ([chain.slab_mass] if chain.slab_count else [])


def _by_hand(chain: Any) -> float:
    """The heaviest thing that somebody must lift: a block, and any piece that is heavier than what the slings are meant for."""
    slung = chain.design.given("site.sling_mass")
    block = chain.design.given("reservoir.block_mass")
    over = [mass for mass in (pieces(chain) if slung else []) if mass > slung.value * (1 + 1e-9)]
    return max([block.value if block else 0.0, *over])


def _slung(chain: Any) -> float:
    """The heaviest piece that is heavier than what one person is meant to lift."""
    lifted = chain.design.given("site.lift_mass")
    return max([mass for mass in pieces(chain) if not lifted or mass > lifted.value] or [0.0])


def _comes_in(chain: Any) -> float:
    """The narrower way through which every large piece can go."""
    d, kind = chain.design, chain.design.kind
    if kind in _VESSEL:
        return min(d["vessel.rim_diameter"], d["vessel.height"])
    return max(min(wide, high) for wide, high, _ in chain.sizes) if kind in _STONES else min(d["blade.trough_length"], d["blade.trough_width"])


def _clear(chain: Any) -> float:
    """From the pump's bay, where the panel is cut, to the nearest slab or foot."""
    place = chain.geometry
    return min(apart(place.bay, place.slab_under(piece) or piece.foot) for piece in place.standing)


def free_depth(chain: Any) -> float:
    """Depth (m) of water that stands open for certain: what the feature's own numbers leave over any fill, and that in the pump's bay where nothing lies over it."""
    d = chain.design
    if d.given("site.water_covered") and d["site.water_covered"] == "yes":
        return 0.0
    bare = all(not (given.value if (given := d.given(key)) else key == "catch.stone_thickness") for key in ("catch.stone_thickness", "reservoir.cover"))
    bay = d["reservoir.static_level"] if bare else 0.0
    try:
        return max(_free_in_feature(chain), bay)
    except Unknown:
        if bay:
            return bay
        raise


def _free_in_feature(chain: Any) -> float:
    """Of what stands in vessel, trough or header."""
    d, kind = chain.design, chain.design.kind
    if kind in _VESSEL:
        fill = sum(given.value for key in ("vessel.foam", "vessel.pebbles") if (given := d.given(key)))
        return max(d["vessel.water"] - fill, 0.0) / chain.vessel_surface
    if kind in _BLADE:
        return d["blade.trough_depth"]
    return d["cascade.header_volume"] / d["cascade.header_area"] if kind in _CASCADE else 0.0


AGREEING: tuple[Agreeing, ...] = (
    Agreeing("vessel.water", AT_LEAST, _least_held, "what rim and foot enclose, straight between them, less a wall of that mass if it were hardwood",
             "vessel.mass, vessel.height or the width of rim and foot", 0.05, share=True, worse=max, kinds=_VESSEL),
    Agreeing("pump.covered", THE_SAME, lambda c: c.design["reservoir.lowest_level"] - c.design["pump.intake_level"],
             "the lowest level less the pump's intake", "reservoir.lowest_level or pump.intake_level", 0.005, worse=min),
    Agreeing("reservoir.running_level", THE_SAME, settled, "the static level less the start drop, or the level of the top-up valve",
             "reservoir.static_level, or what goes up in the feature", SAME_LEVEL, worse=max),
    Agreeing("overflow_pipe.head", THE_SAME, _spills, "the edge of the liner less the overflow and half the pipe's bore", "levels.liner_edge or reservoir.overflow_level",
             0.010, worse=min),
    Agreeing("overflow_pipe.catch_area", AT_LEAST, _catch, "box and apron, on which the rain falls", "catch.apron", 0.01, share=True, worse=max),
    Agreeing("blade.wall_height", AT_LEAST, lambda c: c.level("lip"), "the level of the lip over the paving", "blade.lip_level", 0.020, worse=max, kinds=_BLADE),
    Agreeing("blade.trough_length", AT_LEAST, lambda c: c.design["blade.lip_width"], "the width of the lip", "blade.lip_width", worse=max, kinds=_BLADE),
    Agreeing("cascade.pool_area", AT_MOST, lambda c: c.design["cascade.width"] * c.design["cascade.tread"], "the width of a step by its tread",
             "cascade.width or cascade.tread", 0.02, share=True, worse=max, kinds=_CASCADE),
    Agreeing("catch.stone_thickness", AT_LEAST, lambda c: c.design["lining.smallest_stone"], "the smallest stone of the layer", "lining.smallest_stone"),
    Agreeing("supply.circuit_load", AT_LEAST, lambda c: c.current, "the current of the pump alone", "pump.power or supply.voltage", 0.02, share=True, worse=max),
    Agreeing("supply.voltage_drop", THE_SAME, lambda c: cable_drop(c.design["supply.conductor"]).value, "the table of its conductors", "supply.conductor", 0.15, share=True, worse=max),
    Agreeing("supply.resistance", THE_SAME, lambda c: conductor(c.design["supply.conductor"]).value, "the table of its conductors", "supply.conductor", 0.15, share=True,
             worse=max),
    Agreeing("supply.cable_rating", AT_MOST, lambda c: carried(c.design["supply.conductor"]).value, "the table of its conductors", "supply.conductor", 0.01, share=True, worse=min),
    Agreeing("pump.starting_current", AT_LEAST, lambda c: c.current, "the current of the running pump", "pump.power", 0.02, share=True, worse=max),
    Agreeing("supply.cord_route", AT_LEAST, _route, "the straight way from the pump to the supply point", "supply.point_along or supply.point_across", 0.05, worse=max),
    Agreeing("site.footing_distance", THE_SAME, lambda c: c.geometry.from_pit(c.geometry.footing), "the edge of the pit and the place of the footing",
             "site.footing_along or site.footing_across", 0.05, worse=min),
    Agreeing("site.tree_distance", THE_SAME, lambda c: c.geometry.from_pit(c.geometry.tree), "the edge of the pit and the place of the stem",
             "site.tree_along or site.tree_across", 0.05, worse=min),
    Agreeing("buying.overflow_run", AT_LEAST, lambda c: math.dist(c.geometry.overflow_start, c.geometry.overflow_end), "the straight way from the box to where it ends",
             "overflow_pipe.end_along or overflow_pipe.end_across", 0.05, worse=max),
    Agreeing("site.open_water", AT_LEAST, free_depth, "the water in vessel, trough or header over what fills it, or in a pump's bay with nothing over it",
             "site.water_covered, where a grille or stone covers it, or the depth and the fill", worse=max),
    Agreeing("site.lift_mass", AT_LEAST, _by_hand, "the heaviest block or piece that no sling is meant for", "site.sling_mass", 0.01, share=True, worse=max),
    Agreeing("site.sling_mass", AT_LEAST, _slung, "the heaviest piece over what one person lifts", "site.lift_mass", 0.01, share=True, worse=max),
    Agreeing("site.widest_item", AT_LEAST, _comes_in, "the vessel, the widest stone or the trough", "its size", worse=max, kinds=_VESSEL + _STONES + _BLADE),
    Agreeing("lining.panel_clearance", AT_MOST, _clear, "the way from the pump's bay to slab or foot on the plan", "vessel.offset, pump.bay or the slab", worse=min,
             kinds=_VESSEL + _STONES),
)  # fmt: skip


# --- what cannot be together ------------------------------------------------------------------------------------------------------------


def _level(name: str) -> _Number:
    return lambda c: c.level(name)


def _up(chain: Any) -> float:
    """Least length of hose from the pump's intake to where it ends."""
    intake = chain.design.given("pump.intake_level")
    return chain.delivery - chain.level("reservoir floor") - (intake.value if intake else 0.0)


def _hose(chain: Any) -> float:
    return chain.design["pipe.length"] + (max(chain.design["stones.branch_lengths"]) if chain.design.kind in _STONES else 0.0)


def _outside_volume(chain: Any) -> float:
    return chain.outside_volume


def _widest(chain: Any) -> float:
    d = chain.design
    return max(d["vessel.rim_diameter"], d["vessel.widest"]) if "vessel.widest" in d.values else d["vessel.rim_diameter"]


def _ring(number: _Number) -> _Number:
    """Only for a foot that is not given by its corners."""

    def found(chain: Any) -> float:
        if "vessel.foot_corners" in chain.design.values:
            raise InputError("its corners are given")
        return number(chain)

    return found


def _on_slab(number: _Number) -> _Number:
    def found(chain: Any) -> float:
        if not chain.slab_count:
            raise InputError("there is no slab")
        return number(chain)

    return found


def _closest(size: Callable[[Any, int], float]) -> _Number:
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
    return room_inside(place.sheet if chain.design.kind in _BLADE else place.pour, place.catch_half)


def _bay_room(chain: Any) -> float:
    place = chain.geometry
    return apart(place.bay, place.sheet if chain.design.kind in _BLADE else place.pour)


def _outside(spot: Callable[[Any], tuple[float, float]]) -> _Number:
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


def _takes(axis: int) -> _Number:
    """What the feature takes of its bed along (0) or across (1): pit, lined catch, and what stands there, wall, steps and rill."""

    def found(chain: Any) -> float:
        place, kind = chain.geometry, chain.design.kind
        half = place.catch_half[axis]
        above = [place.wall] if kind in _BLADE else [chain.bodies["steps"].outline] if kind in _CASCADE else [piece.rim for piece in place.standing]
        points = [point[axis] for outline in (place.pit, *above) for point in outline]
        return max(half, *points) - min(-half, *points)

    return found


TOGETHER: tuple[Agreeing, ...] = (
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
    Agreeing("vessel.foot_inside", AT_MOST, _ring(lambda c: c.design["vessel.foot_outside"]), "the outside of the foot", "vessel.foot_outside", -1e-4, kinds=_VESSEL),
    Agreeing("vessel.foot_outside", AT_MOST, _ring(_widest), "the rim, or where the vessel is widest", "vessel.rim_diameter", kinds=_VESSEL),
    Agreeing("vessel.foot_outside", AT_MOST, _ring(_on_slab(lambda c: min(c.design["slab.length"], c.design["slab.width"]))), "the slab under it",
             "slab.length or slab.width", kinds=_VESSEL),
    Agreeing("vessel.water", AT_MOST, _outside_volume, "what the vessel's outside encloses", "vessel.rim_diameter or vessel.height", 1e-3, share=True, kinds=_VESSEL),
    Agreeing("vessel.foam", AT_MOST, _outside_volume, "what the vessel's outside encloses", "vessel.pebbles", 1e-3, share=True, kinds=_VESSEL,
             own=lambda c: c.design["vessel.foam"] + c.design["vessel.pebbles"], said="foam and pebbles"),
    Agreeing("pipe.mouth_below_rim", AT_MOST, lambda c: c.design["vessel.height"], "the height of the vessel", "vessel.height", -1e-3, kinds=_VESSEL),
    Agreeing("vessel.wall_thickness", AT_MOST, lambda c: c.design["vessel.rim_diameter"] / 2, "half of the rim", "vessel.rim_diameter", -1e-3, kinds=_VESSEL),
    Agreeing("vessel.widest", AT_LEAST, lambda c: c.design["vessel.rim_diameter"], "the rim", "vessel.rim_diameter", kinds=_VESSEL),
    Agreeing("catch.apron", AT_LEAST, _none, "the rim or the stone that stands furthest out", "vessel.offset, or the places of the stones", own=_rim_room,
             said="lined catch beyond the rim", kinds=_VESSEL + _STONES),
    Agreeing("catch.apron", AT_LEAST, _none, "the water that falls", "the width of the lip, or the fall", own=_water_room, said="lined catch beyond the falling water",
             kinds=_BLADE + _CASCADE),
    Agreeing("pump.bay", AT_LEAST, _none, "the water that falls on the stone", "the blocks", -1e-3, own=_bay_room, said="way from the pump's bay to the falling water",
             kinds=_BLADE + _CASCADE),
    Agreeing("stones.hole", AT_MOST, lambda c: min(c.design["stones.diameters"]), "the narrowest stone", "stones.diameters", -1e-3, kinds=_STONES),
    Agreeing("stones.rough_contact", AT_MOST, lambda c: math.pi / 4 * min(c.design["stones.diameters"]) ** 2, "the base of the narrowest stone", "stones.diameters",
             0.0, kinds=_STONES),
    Agreeing("stones.diameters", AT_LEAST, _none, "their neighbours", "stones.places_along, or more blocks", own=_closest(lambda c, i: c.sizes[i][0]),
             said="gap between two stones", kinds=_STONES),
    Agreeing("slab.length", AT_LEAST, _none, "the next slab", "stones.places_along, or more blocks", own=_on_slab(_slab_gap), said="gap between two slabs", kinds=_STONES),
    Agreeing("slab.width", AT_LEAST, lambda c: max(c.design["stones.diameters"]), "the widest stone on it", "stones.diameters",
             own=_on_slab(lambda c: min(c.design["slab.length"], c.design["slab.width"])), said="narrower side of the slab", kinds=_STONES),
    Agreeing("blade.trough_depth", AT_MOST, lambda c: max(c.design["blade.wall_height"], c.level("lip")), "the wall, or the lip over the paving", "blade.wall_height", kinds=_BLADE),
    Agreeing("blade.stone_level", AT_MOST, _level("lip"), "the lip", "blade.lip_level", -1e-3, kinds=_BLADE),
    Agreeing("cascade.step_fall", AT_LEAST, lambda c: c.geometry.last_fall, "the last fall, from its end down to the stone", "cascade.top_level or cascade.steps", 0.05,
             own=lambda c: max(c.design["cascade.step_fall"], 0.10), said="fall of a step, or 100 mm", kinds=_CASCADE),
)  # fmt: skip

_ALONE = ("lining.panel_clearance", "buying.overflow_run")  # what follows counts where nothing was typed, though the typed one need not be the same
_BY_KEY = {row.key: row for row in AGREEING}


def counted(chain: Any, key: str) -> float:
    """The value that counts under a key: the worse of what was typed and what follows; of one that was measured, that. Raises Unknown with the key where neither is known."""
    row, given = _BY_KEY[key], chain.design.given(key)
    if given and row.measured(chain):
        return given.value
    found = chain.really.following(row) if chain.design.kind in row.kinds else None
    if given is None:
        if found is None or row.must != THE_SAME and row.key not in _ALONE:
            return chain.design[key]
        return found
    return given.value if found is None or row.worse is None else row.worse(given.value, found)
