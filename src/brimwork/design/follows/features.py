"""The kinds of feature on one reservoir, and the numbers of a summary."""

from __future__ import annotations

from brimwork.design.follows.blade import BladeChain
from brimwork.design.follows.cascade import CascadeChain
from brimwork.design.follows.chain import Chain
from brimwork.design.follows.stones import StonesChain
from brimwork.design.follows.vessel import VesselChain
from brimwork.design.typed.design import Design


def chain_of(design: Design) -> Chain:
    """The chain for a design's kind of feature."""
    return CHAINS[design.kind](design)


CHAINS: dict[str, type[Chain]] = {"overflowing vessel": VesselChain, "drilled stones": StonesChain, "blade": BladeChain, "cascade": CascadeChain}
# The numbers of a summary, in order: result of the chain, and what it is.
NUMBERS = {
    "flow_wanted": "required flow", "rim_head": "head over the rim at that flow", "lip_head": "head over the lip at that flow",
    "throw": "throw of the sheet", "step_head": "head over each step at that flow", "normal_depth": "depth in the rill", "throttle": "most head to throttle off", "head_wanted": "head that the pump must give at that flow",
    "duty_flow": "flow that this pump really sends, valve open", "static_volume": "water in the reservoir, pump off", "usable": "of it usable above the pump's limit",
    "transit": "water in transit while running", "start_drop": "drop of the level when the pump starts", "days": "time without topping up, driest month",
    "spread_pressure": "greatest pressure on the blocks", "base_mass": "everything that stands on the base", "running_cost": "electricity in a year (cur is your currency)",
}  # fmt: skip
