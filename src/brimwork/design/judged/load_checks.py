"""The checks of loads: how the number of each is worked out, and what to change next."""

from __future__ import annotations

from brimwork.design.follows.chain import Chain
from brimwork.design.judged.grading import Check, Judged, is_public
from brimwork.design.typed import patches
from brimwork.design.typed.criteria import criterion
from brimwork.design.typed.limits import NEVER, Limits, at_least, at_most
from brimwork.design.typed.telling import told
from brimwork.units import InputError


def _tipping_limits(chain: Chain) -> Limits:
    return at_least(2.0, 1.5) if is_public(chain) else at_least(1.5, 1.2)


def _fallen(chain: Chain) -> str:
    return chain.fallen


def _on_blocks(chain: Chain) -> Limits:
    """A patch that hangs over the edge does not press evenly, whatever its area."""
    return at_most(0.80, 1.00) if chain.overhang <= patches.SET else NEVER


def _over_the_edge(chain: Chain) -> str:
    over = chain.overhang
    said = f"what stands on the blocks reaches {told(over, 'mm', chain.design.region)} over their edge: that part carries nothing"
    return said if over > patches.SET else ""


def _tips(chain: Chain) -> float:
    """The wall alone. What leans on it is not worked out here: it goes to an engineer, and no number of ours may pass for it."""
    held = chain.design["blade.wall_retains"]
    if held != "nothing":
        raise InputError(f"the push of the {held} behind the wall is not worked out here: a structural engineer designs a wall that holds back {held}")
    return chain.tipping


LOAD_CHECKS: tuple[Check | Judged, ...] = (
    Check(criterion("C20"), lambda c: c.heavier.spread_utilisation,
          "a thicker slab or a wider foot, all of it over the blocks; the maker's long-term figure governs", ("spread_area", "spread_pressure", "block_allowable", "spread_utilisation"), note=_over_the_edge, limits=_on_blocks),
    Check(criterion("C22"), lambda c: max(c.kern_share, c.heavier.kern_share),
          "move the vessel towards the middle of the blocks", ("base_mass", "eccentricity", "eccentricity_across", "kern_share")),
    Check(criterion("C24"), lambda c: c.heavier.soil_share,
          "a larger base, or ask a geotechnical engineer for the soil", ("base_pressure", "local_pressure", "soil_share")),
    Check(criterion("C25"), lambda c: c.tipping_full,
          "fix it down, widen the foot, or lower it", ("tipping_full",), note=_fallen, limits=_tipping_limits),
    Check(criterion("C25", "drilled stones"), lambda c: c.tipping,
          "dowel it down, widen its base, or lower it", ("tipping",), note=_fallen, limits=_tipping_limits),
    Check(criterion("C25e"), lambda c: c.tipping_empty,
          "fix it down or ballast it before it stands empty where people pass", ("tipping_empty",), note=_fallen, limits=_tipping_limits),
    Check(criterion("C26", "drilled stones"), lambda c: c.tipping_in_wind,
          "dowel it down, or lower it", ("wind_pressure", "tipping_in_wind"), note=_fallen),
    Check(criterion("C26", "overflowing vessel"), lambda c: c.tipping_in_wind,
          "fix it down, or lower it; a tall piece in wind is for a structural engineer", ("wind_pressure", "tipping_in_wind"), note=_fallen),
    Check(criterion("C25", "blade"), _tips,
          "a thicker or lower wall, or one that is tied to its footing: a structural engineer's work", ("wall_mass", "tipping"), limits=_tipping_limits),
    Check(criterion("C26", "blade"), lambda c: c.tipping_in_wind,
          "a thicker or lower wall, or one that is tied to its footing: a structural engineer's work", ("wall_mass", "wind_pressure", "tipping_in_wind")),
    Check(criterion("C25", "cascade"), lambda c: c.tipping,
          "a wider or lower header, or one that is tied to what carries it: a structural engineer's work", ("header_mass", "tipping"), limits=_tipping_limits),
    Check(criterion("C26", "cascade"), lambda c: c.tipping_in_wind,
          "a wider or lower header, or one that is tied to what carries it: a structural engineer's work", ("header_mass", "wind_pressure", "tipping_in_wind")),
    Check(criterion("C27"), lambda c: c.foam_held,
          "more pebbles on the foam: under water they weigh little more than half", ("foam_held", "pebbles_wanted")),
    Check(criterion("C74"), lambda c: c.thin_slab,
          "a thicker slab or a wider foot; whether a slab bends or breaks a structural engineer says: this kit does not work that out"),
    Check(criterion("C21"), lambda c: c.counted("lining.panel_clearance"),
          "cut the panel further from the load, and support every cut wall again"),
    Check(criterion("C28"), lambda c: c.flotation,
          "keep it full, add a relief drain, or more mass; while building, rain in an empty lined pit counts too", ("flotation",)),
)  # fmt: skip
