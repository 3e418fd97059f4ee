"""The checks of water and reservoir: how the number of each is worked out, and what to change next."""

from __future__ import annotations

import math

from brimwork.design.follows import levels
from brimwork.design.follows.chain import Chain
from brimwork.design.judged.grading import Check, Judged
from brimwork.design.typed import patches
from brimwork.design.typed.criteria import SHEETS, criterion
from brimwork.design.typed.limits import NEVER, Limits, at_least, at_most
from brimwork.design.typed.telling import INFINITE, told
from brimwork.topics.reservoir import blocks_in_pit


def _unattended(chain: Chain) -> Limits:
    """A week, or the longest time that nobody looks after it, where that is known and longer."""
    given = chain.design.values.get("site.unattended")
    spells = [given.value] if given else []
    return at_least(max([7 * 86400, *spells]), max([3 * 86400, *spells]))


def _covered(chain: Chain) -> Limits:
    """No cover is enough for a pump that runs unattended with nothing to stop it."""
    if chain.design["pump.cut_out"] == "no" and chain.design["site.unattended"] > 0:
        return NEVER
    return at_least(0.050, 0.025)


def _cut_out(chain: Chain) -> str:
    return "no low-water cut-out, and nobody looks after it all the time" if _covered(chain).good[1] == -INFINITE else ""


def _strainer(chain: Chain) -> Limits:
    """No wider than the pump passes; finer than 2 mm it clogs in days, finer than 1 mm at once."""
    opening = chain.design["pump.strainer"]
    return at_most(1.0, 1.0) if opening >= 0.002 else at_most(-INFINITE, 1.0) if opening >= 0.001 else NEVER


def _coming(chain: Chain) -> str:
    return chain.coming_said


def _rim(chain: Chain) -> str:
    """Which head it is, since at the flow that is wanted another one stands on the rim; and whether the high side runs dry."""
    coming, region = chain.coming, chain.design.region
    dry = f"; the high side runs dry from {told(coming.rim_runs_dry, 'mm', region)} out of level on" if math.isinf(coming.rim_flow_ratio) else ""
    return f"head on the rim {told(coming.rim_head, 'mm', region)}, {chain.coming_said}{dry}"


def _trough(chain: Chain) -> str:
    return "; ".join(filter(None, (chain.coming.thin_lip_said, chain.coming_said)))


def _room_for_blocks(chain: Chain) -> str:
    """What the bed has room for, where its size is known."""
    d = chain.design
    beside = 2 * (d["catch.apron"] + d["ground.lining_thickness"])
    block = (d["reservoir.block_length"], d["reservoir.block_width"], d["reservoir.block_height"])
    bed = d["site.bed_length"] - beside, d["site.bed_width"] - beside
    fit, other = blocks_in_pit(*bed, d["reservoir.block_height"], block, d["ground.clearance"])
    room = "a bed of that size, apron taken off, has room for"
    if not fit.blocks:
        return f"{room} no block"
    one, two = (f"{way.along} x {way.across}" if way.blocks else "none" for way in (fit, other))
    return f"{room} {fit.blocks} {'block' if fit.blocks == 1 else 'blocks'}, {one}{' turned' if fit.turned else ''} ({two} the other way)"


def _rill(chain: Chain) -> str:
    return "; ".join(filter(None, (*chain.coming.rill_notes, chain.coming_said)))


def _regime(chain: Chain) -> str:
    """Where the flow is neither laminar nor turbulent for certain, and where a law is used outside its range."""
    return "; ".join(chain.friction_notes)


def _splash(chain: Chain) -> float:
    """Where water leaves a lip as a sheet it is thrown further by a greater flow."""
    return min(chain.apron_share, chain.coming.apron_share) if chain.design.kind in SHEETS else chain.apron_share


def _valves(chain: Chain) -> Limits:
    return at_most(1.0, 2.0) if chain.design["stones.valves"] == "yes" else NEVER


def _smallest(chain: Chain) -> tuple[str, str, float]:
    """The smallest gap of the datum table that must not close, with the names of its two levels; what may touch counts where it crosses."""
    counted = (pair for pair in levels.gaps(chain.design) if (pair[0], pair[1]) not in levels.MAY_TOUCH or pair[2] < -patches.NEAR)
    return min(counted, key=lambda pair: pair[2])


def _order(chain: Chain) -> float:
    return _smallest(chain)[2]


def _closest(chain: Chain) -> str:
    low, high, gap = _smallest(chain)
    return f"closest: {low} below {high}, {told(gap, 'mm', chain.design.region)}"


WATER_CHECKS: tuple[Check | Judged, ...] = (
    Check(criterion("C01"), lambda c: c.flow_ratio,
          "throttle on the delivery side when there is too much; a wider hose, fewer fittings or a stronger pump when there is too little", ("flow_wanted", "head_wanted", "duty_flow", "flow_ratio")),
    Check(criterion("C01m"), lambda c: c.head_in_hand,
          "a stronger pump below, a smaller one or more throttling above", ("flow_wanted", "branch_head", "head_wanted", "pump_head_at_flow_wanted")),
    Check(criterion("C63"), lambda c: c.throttle,
          "a valve on every branch, and drilled stones of more equal height", ("throttle",), limits=_valves),
    Check(criterion("C02"), lambda c: c.lift_share,
          "a pump with a higher shut-off head: near its limit a little fouling stops the flow", ("static_lift", "lift_share")),
    Check(criterion("C03"), lambda c: c.nameplate,
          "read the label again: per minute for per hour, US for imperial gallons, or a wrong digit", ("nameplate",), note=lambda c: c.label),
    Check(criterion("C04"), lambda c: c.coming.speed_wanted,
          "a wider hose above, a narrower hose below", ("flow_sent", "coming.speed_wanted"), note=_coming),
    Check(criterion("C05"), lambda c: c.loss_share,
          "one bore wider", ("reynolds", "friction", "friction_head", "fittings_head", "loss_share"), note=_regime),
    Check(criterion("C06"), lambda c: c.coming.boil,
          "a wider outlet or a diffuser over the hose end", ("flow_sent", "coming.speed_wanted", "coming.boil", "coming.outlet_bore"), note=_coming),
    Check(criterion("C06", "drilled stones"), lambda c: c.coming.boil,
          "a wider hole, or less flow", ("flow_sent", "coming.boil", "coming.outlet_bore"), note=lambda c: f"{c.coming.mouth_said}; {c.coming_said}"),
    Check(criterion("C07"), lambda c: c.coming.rim_error_share,
          "mark full how far it is out; switch off, drain, pack and level with hands clear, fill and look again; never lever it full; or send more water", ("flow_sent", "coming.rim_head", "coming.rim_error_share", "coming.rim_flow_ratio"), note=_rim),
    Check(criterion("C08"), lambda c: c.least_film,
          "less than this runs in streaks down one side; more leaves the face", ("flow_sent", "coming.film"), note=_coming),
    Check(criterion("C09"), lambda c: c.coming.sheet_share,
          "more flow for each metre of lip, or less fall", ("fall", "flow_sent"), note=_coming),
    Check(criterion("C10"), lambda c: c.flow_sent / c.design["pump.intake_area"],
          "a larger strainer: a fast intake clogs in days", ("flow_wanted", "flow_sent"), note=_coming),
    Check(criterion("C79"), lambda c: c.coming.trough_share,
          "feeds spread along it, or a baffle; or a wider or deeper trough, fed from the top, since it holds more water that would come back", note=_trough),
    Check(criterion("C81"), lambda c: c.warming,
          "a pump of less power: all that it takes in ends as heat in the water"),
    Check(criterion("C82"), lambda c: c.design["pump.strainer"] / c.design["pump.solids"],
          "a strainer with openings no wider than what the pump passes, and of 2 mm or more, which clogs less soon", limits=_strainer),
    Check(criterion("C80"), lambda c: c.top_up_share,
          "a larger valve, or less loss; a meter or a lockable valve before it, since a top-up hides a leak"),
    Check(criterion("C60"), lambda c: min(c.freeboard, c.coming.freeboard),
          "a wider or steeper rill, or higher sides", ("flow_sent", "freeboard", "coming.normal_depth", "coming.freeboard"), note=_rill),
    Check(criterion("C61"), lambda c: min(c.tread_share, c.coming.tread_share),
          "a longer tread, or lower steps", ("flow_sent", "tread_share", "coming.throw", "coming.tread_share"), note=_coming),
    Check(criterion("C12"), lambda c: c.days,
          "a deeper or wider reservoir, a thinner film, or, once a leak is ruled out, a float valve with an air gap and a meter or a lockable valve before it", ("usable", "transit", "daily_loss", "days"), note=_room_for_blocks, limits=_unattended),
    Check(criterion("C13"), lambda c: c.counted("pump.covered"),
          "raise the lowest level, with a low-water cut-out that stops the pump there; the maker's figure governs", note=_cut_out, limits=_covered),
    Check(criterion("C14"), lambda c: c.drainback,
          "a lower static level if the pump stays covered, a higher overflow, or less water that goes up; a check valve only with a drain for frost, and room for the return all the same: valves stick", ("transit", "drainback_room", "drainback"), note=lambda c: c.settles),
    Check(criterion("C16"), lambda c: c.turnover,
          "more usable water, or less flow", ("usable", "turnover")),
    Check(criterion("C17"), _splash,
          "a wider apron, a lower fall, or nearer the middle of it", ("fall", "apron_wanted", "apron_share")),
    Check(criterion("C18"), lambda c: c.level("liner edge") - c.level("overflow"),
          "bring the edge of the liner up, or the overflow down"),
    Check(criterion("C18g"), lambda c: c.level("liner edge") - c.design["levels.soil"],
          "bring the edge of the liner up, or the soil beside it down: muddy water runs in"),
    Check(criterion("C19"), lambda c: c.day_share,
          "more usable water, or less wet stone", ("daily_loss", "usable", "day_share")),
    Check(criterion("C66"), lambda c: c.overflow_ratio,
          "a wider overflow pipe, or more head over it", ("overflow_flow", "overflow_ratio")),
    Check(criterion("C72"), lambda c: c.design["measured.leak"],
          "pump and top-up off, let it fall: where it falls no more than the bucket is the height of the leak; look and patch at that mark and just above; if it never stops, look at the floor"),
    Check(criterion("C57"), _order,
          "move one of the two levels named", note=_closest),
    Check(criterion("C73"), lambda c: c.foot_over_box,
          "raise the header's lip, or take fewer or lower falls: below the edge of the box the water runs outside it"),
)  # fmt: skip
