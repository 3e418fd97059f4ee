"""The checks of loads: how the number of each is worked out, and what to change next."""

from __future__ import annotations

from brimwork.design.follows.chain import Chain
from brimwork.design.judged.grading import Check, Judged, engineered, is_public
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


def _cut_walls(chain: Chain) -> str:
    answer = chain.design.given("reservoir.cut_walls")
    return "every cut wall is held again as the blocks' maker or an engineer has designed it" if answer and answer.value != "no" else ""


def _stone_said(chain: Chain) -> str:
    """What of the base counts."""
    share = chain.design.given("stones.base_share")
    width = f"{told(share.value, '%', chain.design.region)} of a stone's width counts as its base ({share.basis})" if share else ""
    return "; ".join(filter(None, (chain.fallen, width)))


_BY_ENGINEER = ("site.engineered",)

LOAD_CHECKS: tuple[Check | Judged, ...] = (
    Check(criterion("C20"), lambda c: c.heavier.spread_utilisation,
          "a thicker slab or a wider foot, all of it over the blocks; the maker's long-term figure governs", ("spread_area", "spread_pressure", "block_allowable", "spread_utilisation"), note=_over_the_edge, limits=_on_blocks),
    Check(criterion("C22"), lambda c: max(c.kern_share, c.heavier.kern_share),
          "move the vessel towards the middle of the blocks", ("base_mass", "eccentricity", "eccentricity_across", "kern_share")),
    Check(criterion("C24"), lambda c: c.heavier.soil_share,
          "a larger base, or ask a geotechnical engineer for the soil", ("base_pressure", "local_pressure", "soil_share")),
    Check(criterion("C25"), lambda c: c.tipping_full,
          "widen the foot, or lower it; or fix it down as an engineer designs it, and say so: site.engineered", ("tipping_full",), note=_fallen, limits=_tipping_limits, word=engineered),
    Check(criterion("C25", "drilled stones"), lambda c: c.tipping,
          "widen its base, or lower it; or dowel it down as an engineer designs it, and say so: site.engineered", ("tipping",), note=_stone_said, limits=_tipping_limits, word=engineered),
    Check(criterion("C25e"), lambda c: c.tipping_empty,
          "ballast it before it stands empty where people pass; or fix it down as an engineer designs it, and say so: site.engineered", ("tipping_empty",), note=_fallen, limits=_tipping_limits, word=engineered),
    Check(criterion("C26", "drilled stones"), lambda c: c.tipping_in_wind,
          "lower it; or dowel it down as an engineer designs it, and say so: site.engineered", ("wind_pressure", "tipping_in_wind"), note=_stone_said, word=engineered, instead=_BY_ENGINEER),
    Check(criterion("C26", "overflowing vessel"), lambda c: c.tipping_in_wind,
          "lower it; a tall piece in wind is for a structural engineer, who may fix it down: say so, site.engineered", ("wind_pressure", "tipping_in_wind"), note=_fallen, word=engineered, instead=_BY_ENGINEER),
    Check(criterion("C25", "blade"), _tips,
          "a thicker or lower wall, or one that is tied to its footing: a structural engineer's work; when it is done, say so: site.engineered", ("wall_mass", "tipping"), limits=_tipping_limits, word=engineered, instead=_BY_ENGINEER),
    Check(criterion("C26", "blade"), lambda c: c.tipping_in_wind,
          "a thicker or lower wall, or one that is tied to its footing: a structural engineer's work; when it is done, say so: site.engineered", ("wall_mass", "wind_pressure", "tipping_in_wind"), word=engineered, instead=_BY_ENGINEER),
    Check(criterion("C25", "cascade"), lambda c: c.tipping,
          "a wider or lower header, or one that is tied to what carries it: a structural engineer's work; when it is done, say so: site.engineered", ("header_mass", "tipping"), limits=_tipping_limits, word=engineered),
    Check(criterion("C26", "cascade"), lambda c: c.tipping_in_wind,
          "a wider or lower header, or one that is tied to what carries it: a structural engineer's work; when it is done, say so: site.engineered", ("header_mass", "wind_pressure", "tipping_in_wind"), word=engineered, instead=_BY_ENGINEER),
    Check(criterion("C27"), lambda c: c.foam_held,
          "more pebbles on the foam: under water they weigh about six tenths of what they do on land", ("foam_held", "pebbles_wanted")),
    Check(criterion("C74"), lambda c: c.thin_slab,
          "a thicker slab or a wider foot; whether a slab bends or breaks a structural engineer says: this kit does not work that out"),
    Check(criterion("C21"), lambda c: c.counted("lining.panel_clearance"),
          "cut the panel further from the load; or support every cut wall as the blocks' maker or an engineer says, and say so: reservoir.cut_walls", word=_cut_walls),
    Check(criterion("C28"), lambda c: c.flotation,
          "keep it full, add a relief drain, or more mass; a liner is a sheet and lifts wherever less lies on it; while building, rain behind an empty liner lifts it too", ("flotation",)),
)  # fmt: skip
