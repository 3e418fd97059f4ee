"""Values that can be typed and that also follow from others: what each follows from, how near they must be, and which of the two counts until they agree.

Of values given twice, or that must leave room for something, the worse counts in every check of safety or of water. What was measured on site counts
before both. Sizes that cannot be together stand in `together`.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from brimwork.cables import cable_drop, carried, conductor
from brimwork.design.typed.criteria import BLADE, CASCADE, STONES, VESSEL
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.patches import apart, area_of
from brimwork.units import InputError

OfChain = Callable[[Any], float]  # of a chain
THE_SAME, AT_LEAST, AT_MOST = "the same as", "at least", "at most"
SAME_LEVEL = 0.003  # m: two levels nearer than this count as one, for overflow and blocks are set within 3 mm on site: common practice, as the steps say


@dataclass(frozen=True)
class Agreeing:
    """The value under `key` must be the same as, at least or at most another one, `other`, which follows from what `words` say.

    `near` is the difference that does no harm, in SI, or with `share` as a share of the other. `worse` is min or max where the two are compared and
    the worse one counts; `own` where the number is not the typed one itself. `settle` says what else could be changed.
    """

    key: str
    must: str
    other: OfChain
    words: str
    settle: str
    near: float = 1e-3
    share: bool = False
    worse: Callable[..., float] | None = None
    own: OfChain | None = None
    kinds: tuple[str, ...] = tuple(KINDS)
    said: str = ""  # what the own number is, where it is not the typed one
    counts: bool = False  # whether the numbers are a count of things, and not in the unit of the field

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
        return given is not None and given.basis == "measured"

    def agrees(self, typed: float, found: float) -> bool:
        room = self.near * abs(found) if self.share else self.near
        over = typed - found
        return abs(over) <= room if self.must == THE_SAME else over >= -room if self.must == AT_LEAST else over <= room


def _known(number: OfChain, chain: Any) -> float | None:
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
    masses = [chain.design["vessel.mass"]] if kind in VESSEL else list(chain.masses) if kind in STONES else []
    return masses + ([chain.slab_mass] if chain.slab_count else [])


def _by_hand(chain: Any) -> float:
    """The heaviest thing that somebody must lift: a block, and any piece that is heavier than what the slings are meant for; all where none are used."""
    slung, block = chain.design.given("site.sling_mass"), chain.design.given("reservoir.block_mass")
    heavy = pieces(chain) if chain.unslung or slung else []
    over = [mass for mass in heavy if not slung or mass > slung.value * (1 + 1e-9)]
    return max([block.value if block else 0.0, *over])


def _slung(chain: Any) -> float:
    """The heaviest piece that is heavier than what one person is meant to lift."""
    lifted = chain.design.given("site.lift_mass")
    return max([mass for mass in pieces(chain) if not lifted or mass > lifted.value] or [0.0])


def _comes_in(chain: Any) -> float:
    """The narrower way through which every large piece can go."""
    d, kind = chain.design, chain.design.kind
    if kind in VESSEL:
        return min(d["vessel.rim_diameter"], d["vessel.height"])
    return max(min(wide, high) for wide, high, _ in chain.sizes) if kind in STONES else min(d["blade.trough_length"], d["blade.trough_width"])


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
    if kind in VESSEL:
        fill = sum(given.value for key in ("vessel.foam", "vessel.pebbles") if (given := d.given(key)))
        return max(d["vessel.water"] - fill, 0.0) / chain.vessel_surface
    if kind in BLADE:
        return d["blade.trough_depth"]
    return d["cascade.header_volume"] / d["cascade.header_area"] if kind in CASCADE else 0.0


AGREEING: tuple[Agreeing, ...] = (
    Agreeing("vessel.water", AT_LEAST, _least_held, "what rim and foot enclose, straight between them, less a wall of that mass if it were hardwood",
             "vessel.mass, vessel.height or the width of rim and foot", 0.05, share=True, worse=max, kinds=VESSEL),
    Agreeing("pump.covered", THE_SAME, lambda c: c.design["reservoir.lowest_level"] - c.design["pump.intake_level"],
             "the lowest level less the pump's intake", "reservoir.lowest_level or pump.intake_level", 0.005, worse=min),
    Agreeing("reservoir.running_level", THE_SAME, settled, "the static level less the start drop, or the level of the top-up valve",
             "reservoir.static_level, or what goes up in the feature", SAME_LEVEL, worse=max),
    Agreeing("overflow_pipe.head", THE_SAME, _spills, "the edge of the liner less the overflow and half the pipe's bore", "levels.liner_edge or reservoir.overflow_level",
             0.010, worse=min),
    Agreeing("overflow_pipe.catch_area", AT_LEAST, _catch, "box and apron, on which the rain falls", "catch.apron", 0.01, share=True, worse=max),
    Agreeing("blade.wall_height", AT_LEAST, lambda c: c.level("lip"), "the level of the lip over the paving", "blade.lip_level", 0.020, worse=max, kinds=BLADE),
    Agreeing("blade.trough_length", AT_LEAST, lambda c: c.design["blade.lip_width"], "the width of the lip", "blade.lip_width", worse=max, kinds=BLADE),
    Agreeing("cascade.pool_area", AT_MOST, lambda c: c.design["cascade.width"] * c.design["cascade.tread"], "the width of a step by its tread",
             "cascade.width or cascade.tread", 0.02, share=True, worse=max, kinds=CASCADE),
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
    Agreeing("site.widest_item", AT_LEAST, _comes_in, "the vessel, the widest stone or the trough", "its size", worse=max, kinds=VESSEL + STONES + BLADE),
    Agreeing("lining.panel_clearance", AT_MOST, _clear, "the way from the pump's bay to slab or foot on the plan", "vessel.offset, pump.bay or the slab", worse=min,
             kinds=VESSEL + STONES),
)  # fmt: skip

_ALONE = ("lining.panel_clearance", "buying.overflow_run")  # what follows counts where nothing was typed, though the typed one need not be the same
_BY_KEY = {row.key: row for row in AGREEING}


def counted(chain: Any, key: str) -> float:
    """The value that counts under a key: the worse of what was typed and what follows; of one that was measured, that. Raises Unknown with the key where neither is known."""
    row, given = _BY_KEY[key], chain.design.given(key)
    if row.measured(chain):
        return chain.design[key]
    found = chain.really.following(row) if chain.design.kind in row.kinds else None
    if given is None:
        if found is None or row.must != THE_SAME and row.key not in _ALONE:
            return chain.design[key]
        return found
    return given.value if found is None or row.worse is None else row.worse(given.value, found)
