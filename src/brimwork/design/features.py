"""The kinds of feature on one reservoir: what each adds to the chain."""

from __future__ import annotations

import math
from functools import cached_property

from brimwork import tables, topics
from brimwork.design import pipework
from brimwork.design.chain import GRAVITY, Chain, Found, result
from brimwork.design.inputs import Design
from brimwork.formula import Working
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError

GENTLE_BOIL = 0.015  # m: judgement, the limit of the check on the boil


def chain_of(design: Design) -> Chain:
    """The chain for a design's kind of feature."""
    return KINDS[design.kind](design)


class VesselChain(Chain):
    """An overflowing vessel: water leaves all round its rim and clings to its face."""

    @property
    def edge_head(self) -> float:
        return self.rim_head

    @property
    def delivery(self) -> float:
        return self.level("rim")

    # --- overflow

    @result
    def rim_length(self):
        return self._work("length of a round rim", d_rim=self.design["vessel.rim_diameter"])

    @result
    def flow_wanted(self):
        return self._work("flow for a wetted edge", q=self.design["flow.for_each_metre"], b=self.rim_length)

    @result
    def rim_head(self):
        return self._work("head on a round rim", Q=self.flow_wanted, d_rim=self.design["vessel.rim_diameter"], C_w=self.design["flow.weir_coefficient"])

    @property
    def rim_error(self) -> float:
        """Difference in level round the rim: from the levels measured round it, else as the design has it."""
        if "measured.rim_levels" in self.design.values:
            levels = self.design["measured.rim_levels"]
            return max(levels) - min(levels)
        return self.design["vessel.rim_error"]

    @result
    def rim_error_share(self):
        return self._work("rim error over head", e_rim=self.rim_error, H=self.rim_head)

    @result
    def rim_flow_ratio(self):
        if self.rim_error >= 2 * self.rim_head:
            return Found("r_rim", math.inf, "one side of the rim is dry")
        return self._work("flow ratio of a rim out of level", H=self.rim_head, e_rim=self.rim_error)

    @result
    def film(self):
        return self._work("thickness of a film on a face", q=self.design["flow.for_each_metre"], nu=self.water["nu"], beta=math.pi / 2)

    @result
    def boil(self):
        return self._work("boil over an outlet", v=self.speed_wanted)

    @result
    def outlet_bore(self):
        """The outlet that would keep the boil to a gentle ripple."""
        return self._work("outlet bore for a boil", Q=self.flow_wanted, h_boil=GENTLE_BOIL)

    # --- water in transit

    @result
    def vessel_surface(self):
        return self._work("water surface of a round vessel", d_rim=self.design["vessel.rim_diameter"])

    @result
    def transit_rim(self):
        return self._work("water that stands above the rim", A_v=self.vessel_surface, H=self.rim_head)

    @result
    def transit_siphon(self):
        if self.design["pipe.check_valve"] == "yes":
            return Found("V_siph", 0.0, "a check valve holds the vessel's water back")
        return self._work("water that siphons back", A_v=self.vessel_surface, z_mouth=self.design["pipe.mouth_below_rim"])

    @result
    def transit_film(self):
        return self._work("water in the film on the face", A_side=self.design["vessel.side_area"], delta=self.film)

    def in_transit(self) -> dict[str, float]:
        return {"V_rim": self.transit_rim, "V_siph": self.transit_siphon, "V_film": self.transit_film}

    def wet_parts(self) -> tuple[float, str]:
        return self.vessel_surface + self.design["vessel.side_area"], "water surface, wetted outside of the vessel"

    @result
    def fall(self):
        return Found("h_fall", self.level("rim"), "from the rim to the finished paving")

    @result
    def apron_share(self):
        d = self.design
        return self._work("apron over splash reach", w_apron=d["catch.apron"], k_splash=d["catch.splash_factor"], h_fall=self.fall)

    # --- loads

    @property
    def on_slab(self) -> bool:
        return self.design["vessel.stands_on"] == "slab"

    @result
    def slab_mass(self):
        if not self.on_slab:
            return Found("m_slab", 0.0, "the vessel stands on the blocks")
        d = self.design
        return self._work("mass of a slab", l_s=d["slab.length"], w_s=d["slab.width"], t_s=d["slab.thickness"], rho_slab=d["slab.density"])

    @result
    def patch(self):
        """What touches the blocks: the slab, or the foot alone."""
        if self.on_slab:
            return self._work("contact patch of a slab", l_s=self.design["slab.length"], w_s=self.design["slab.width"])
        return self.foot_patch

    @property
    def foot_patch(self) -> Working:
        return self._work("contact patch of a ring foot", d_fo=self.design["vessel.foot_outside"], d_fi=self.design["vessel.foot_inside"])

    @result
    def vessel_weight(self):
        return self._work("weight of vessel, water and slab", m_v=self.design["vessel.mass"], rho=self.water["rho"], V_v=self.design["vessel.water"],
                          m_slab=self.slab_mass)  # fmt: skip

    @result
    def block_pressure(self):
        return self._work("pressure on a contact patch", F_w=self.vessel_weight, A_c=self.patch)

    @result
    def block_utilisation(self):
        return self._work("utilisation of the blocks", p_c=self.block_pressure, p_all=self.block_allowable)

    def _tipping(self, water: float) -> Working:
        d = self.design
        weight = topics.formulas()["weight of a vessel with its water"](m_v=d["vessel.mass"], rho=self.water["rho"], V_v=water)
        return self._work("tipping factor", F_w=weight, B_base=d["vessel.foot_outside"], F_push=self.push, h_push=d["vessel.height"])

    @result
    def tipping_full(self):
        return self._tipping(self.design["vessel.water"])

    @result
    def tipping_empty(self):
        return self._tipping(0.0)

    @property
    def standing_mass(self) -> float:
        return self.design["vessel.mass"] + self.water["rho"] * self.design["vessel.water"] + self.slab_mass

    @property
    def standing_offset(self) -> float:
        return self.design["vessel.offset"]

    @property
    def held_above(self) -> float:
        return self.design["vessel.water"]

    @property
    def bare(self) -> float:
        return self.patch if self.on_slab else math.pi / 4 * self.design["vessel.foot_outside"] ** 2


class BladeChain(Chain):
    """A straight blade: a free sheet falls from the lip of a trough in a low wall."""

    @property
    def edge_head(self) -> float:
        return self.lip_head

    @property
    def delivery(self) -> float:
        return self.level("lip")

    @result
    def flow_wanted(self):
        return self._work("flow for a wetted edge", q=self.design["flow.for_each_metre"], b=self.design["blade.lip_width"])

    @result
    def lip_head(self):
        return self._work("head at a broad crest", Q=self.flow_wanted, b=self.design["blade.lip_width"])

    @result
    def critical_depth(self):
        return self._work("critical depth", q=self.design["flow.for_each_metre"])

    @result
    def brink_depth(self):
        return self._work("depth at the brink", y_c=self.critical_depth)

    @result
    def brink_speed(self):
        return self._work("speed at the brink", q=self.design["flow.for_each_metre"], y_b=self.brink_depth)

    @result
    def fall(self):
        return Found("h_fall", self.level("lip") - self.level("landing stone"), "from the lip to the stone on which the sheet lands")

    @result
    def fall_time(self):
        return self._work("time of fall", h_fall=self.fall)

    @result
    def throw(self):
        return self._work("throw of a free sheet or jet", v_b=self.brink_speed, h_fall=self.fall)

    @result
    def landing_speed(self):
        return self._work("speed with which water lands", v_b=self.brink_speed, h_fall=self.fall)

    @result
    def landing_thickness(self):
        return self._work("thickness of the sheet where it lands", q=self.design["flow.for_each_metre"], v_land=self.landing_speed)

    @result
    def apron_wanted(self):
        return self._work("apron that the water wants", k_wind=1.0, x_throw=self.throw, k_splash=self.design["catch.splash_factor"], h_fall=self.fall)

    @result
    def apron_share(self):
        return Found(
            "r_apron",
            self.design["catch.apron"] / self.apron_wanted,
            f"the apron over the {QUANTITIES['w_apron'].metric_text(self.apron_wanted)} that throw and splash want",
        )

    @property
    def sheet_share(self) -> float:
        """Flow for each metre over the least that keeps a sheet whole for this fall."""
        return self.design["flow.for_each_metre"] / tables.least_sheet_flow(self.fall).value

    # --- water in transit

    @property
    def _trough_plan(self) -> float:
        return self.design["blade.trough_length"] * self.design["blade.trough_width"]

    @result
    def transit_head(self):
        return Found("V_rim", self._trough_plan * self.lip_head, "the trough's plan by the head over its lip")

    @result
    def transit_sheet(self):
        return self._work("water in the falling sheet", Q=self.flow_wanted, t_fall=self.fall_time)

    @result
    def transit_siphon(self):
        if self._holds_back:
            return Found("V_siph", 0.0, "the trough keeps its water when the pump stops")
        return Found("V_siph", self._trough_plan * self.design["blade.trough_depth"], "the whole trough, which empties through its bottom feed")

    @property
    def _holds_back(self) -> bool:
        return self.design["pipe.check_valve"] == "yes" or self.design["blade.feed"] == "top"

    @result
    def transit_pipe(self):
        if self.design["pipe.check_valve"] == "yes":
            return Found("V_pc", 0.0, "a check valve keeps the pipe full")
        return self._work("water in a pipe", d_pipe=self.design["pipe.bore"], L_pipe=self.design["pipe.length"])

    def in_transit(self) -> dict[str, float]:
        return {"V_rim": self.transit_head, "V_siph": self.transit_siphon, "V_sheet": self.transit_sheet}

    def wet_parts(self) -> tuple[float, str]:
        sheet = 2 * self.design["blade.lip_width"] * self.fall
        return sheet + self._trough_plan, "both faces of the sheet, the trough"


class StonesChain(Chain):
    """One or several drilled stones, each fed by a branch of its own with a valve; the film clings to their sides."""

    @cached_property
    def _stones(self) -> list[tuple[float, float, float]]:
        """Diameter, height and length of branch of every stone, in m."""
        lists = [self.design[f"stones.{key}"] for key in ("diameters", "heights", "branch_lengths")]
        if len({len(one) for one in lists}) > 1:
            raise InputError("stones.diameters, heights and branch_lengths differ in length: give one of each for every stone")
        return list(zip(*lists, strict=True))

    @cached_property
    def flows(self) -> list[float]:
        """Flow wanted for every stone, m3/s."""
        return [self._work("flow for a wetted edge", q=self.design["flow.for_each_metre"], b=math.pi * d).result for d, _, _ in self._stones]

    @result
    def flow_wanted(self):
        each = "; ".join(QUANTITIES["Q"].metric_text(flow) for flow in self.flows)
        return Found("Q", sum(self.flows), f"the flow for each metre round the top of every stone: {each}")

    @result
    def film(self):
        return self._work("thickness of a film on a face", q=self.design["flow.for_each_metre"], nu=self.water["nu"], beta=math.pi / 2)

    # --- branches

    @property
    def delivery(self) -> float:
        """The top of the stone that governs."""
        return self.level("stone base") + self._stones[self.governing][1]

    @cached_property
    def lifts(self) -> list[float]:
        """Lift from the lowest water to the top of every stone, m."""
        return [self.level("stone base") + height - self.level("lowest water") for _, height, _ in self._stones]

    @cached_property
    def branch_losses(self) -> list[float]:
        """Head lost in every branch at its flow, valve open, m."""
        bore, fittings = self.design["stones.branch_bore"], self.design["stones.branch_fittings"]
        hoses = [self._hose(bore, length, fittings) for _, _, length in self._stones]
        lost = [pipework.losses(hose, flow, self.water["nu"], self._law) for hose, flow in zip(hoses, self.flows, strict=True)]
        return [one.h_f + one.h_m for one in lost]

    @cached_property
    def needs(self) -> list[float]:
        """Head that every branch needs where the branches part, m."""
        return [lift + lost for lift, lost in zip(self.lifts, self.branch_losses, strict=True)]

    @property
    def governing(self) -> int:
        return self.needs.index(max(self.needs))

    @property
    def throttles(self) -> list[float]:
        """Head that the valve of every branch must lose, m."""
        return [max(self.needs) - need for need in self.needs]

    @result
    def throttle(self):
        each = "; ".join(QUANTITIES["h_m"].metric_text(one) for one in self.throttles)
        return Found("h_m", max(self.throttles), f"what the valves must take away, branch by branch: {each}")

    @result
    def branch_head(self):
        return Found("h_m", self.branch_losses[self.governing], f"lost in the branch of stone {self.governing + 1}, which governs")

    @result
    def head_wanted(self):
        return self._work("total dynamic head from its parts", z_s=self.static_lift, h_f=self.friction_head, h_m=self.fittings_head + self.branch_head)

    @result
    def loss_share(self):
        return self._work("share of the head lost on the way", z_s=self.static_lift, h_f=self.friction_head, h_m=self.fittings_head + self.branch_head)

    def head_needed(self, flow: float) -> float:
        """Head in m when the valves share a flow (m3/s) as the stones want it."""
        if flow <= 0:
            return self.static_lift
        common = pipework.losses(self.stretch, flow, self.water["nu"], self._law)
        hose = self._hose(self.design["stones.branch_bore"], self._stones[self.governing][2], self.design["stones.branch_fittings"])
        branch = pipework.losses(hose, flow * self.flows[self.governing] / self.flow_wanted, self.water["nu"], self._law)
        return self.static_lift + common.h_f + common.h_m + branch.h_f + branch.h_m

    @property
    def head_in_hand(self) -> float:
        """Pump head at the flow wanted over the head that the governing branch needs."""
        return self.pump_head_at_flow_wanted / self.head_wanted

    # --- water in transit

    @result
    def transit_film(self):
        return self._work("water in the film on the face", A_side=self._sides, delta=self.film)

    @property
    def _sides(self) -> float:
        return sum(math.pi * d * h for d, h, _ in self._stones)

    @result
    def transit_pipe(self):
        d = self.design
        branches = math.pi / 4 * d["stones.branch_bore"] ** 2 * sum(length for _, _, length in self._stones)
        holes = math.pi / 4 * d["stones.hole"] ** 2 * sum(height for _, height, _ in self._stones)
        common = math.pi / 4 * d["pipe.bore"] ** 2 * d["pipe.length"]
        return Found("V_pc", common + branches + holes, "common hose, branches and the holes in the stones")

    def in_transit(self) -> dict[str, float]:
        return {"V_film": self.transit_film}

    def wet_parts(self) -> tuple[float, str]:
        return self._sides + sum(math.pi / 4 * d * d for d, _, _ in self._stones), "sides and tops of the stones"

    @result
    def apron_share(self):
        fall = self.level("top of the highest stone")
        return self._work("apron over splash reach", w_apron=self.design["catch.apron"], k_splash=self.design["catch.splash_factor"], h_fall=fall)

    # --- loads

    @property
    def on_slabs(self) -> bool:
        return self.design["stones.stand_on"] == "slabs"

    @cached_property
    def masses(self) -> list[float]:
        """Mass of every stone, kg."""
        hole, density = self.design["stones.hole"], self.design["stones.density"]
        return [math.pi / 4 * (d * d - hole * hole) * h * density for d, h, _ in self._stones]

    @result
    def slab_mass(self):
        if not self.on_slabs:
            return Found("m_slab", 0.0, "the stones stand on the blocks")
        d = self.design
        return self._work("mass of a slab", l_s=d["slab.length"], w_s=d["slab.width"], t_s=d["slab.thickness"], rho_slab=d["slab.density"])

    @result
    def patch(self):
        """What touches the blocks under one stone: its slab, or the few points of a rough base."""
        if self.on_slabs:
            return self._work("contact patch of a slab", l_s=self.design["slab.length"], w_s=self.design["slab.width"])
        return Found("A_c", self.design["stones.rough_contact"], "a rough base stands on a few points")

    @result
    def heaviest(self):
        return Found("F_w", GRAVITY * (max(self.masses) + self.slab_mass), "the heaviest stone and its slab")

    @result
    def block_pressure(self):
        return self._work("pressure on a contact patch", F_w=self.heaviest, A_c=self.patch)

    @result
    def block_utilisation(self):
        return self._work("utilisation of the blocks", p_c=self.block_pressure, p_all=self.block_allowable)

    @cached_property
    def tippings(self) -> list[Working]:
        """The tipping factor of every stone."""
        share, push = self.design["stones.base_share"], self.push
        stones = zip(self._stones, self.masses, strict=True)
        return [self._work("tipping factor", F_w=GRAVITY * mass, B_base=d * share, F_push=push, h_push=h) for (d, h, _), mass in stones]

    @result
    def tipping(self):
        """The stone that tips first."""
        return min(self.tippings, key=lambda worked: worked.result)

    @property
    def standing_mass(self) -> float:
        return sum(self.masses) + len(self._stones) * self.slab_mass


KINDS: dict[str, type[Chain]] = {"overflowing vessel": VesselChain, "drilled stones": StonesChain, "blade": BladeChain}
# The numbers of a summary, in order: result of the chain, and what it is.
NUMBERS = {
    "flow_wanted": "flow wanted", "rim_head": "head over the rim at that flow", "lip_head": "head over the lip at that flow",
    "throw": "throw of the sheet", "throttle": "most that a valve must take away", "head_wanted": "head that the pump must give at that flow",
    "duty_flow": "flow that this pump really sends, valve open", "static_volume": "water in the reservoir, pump off", "usable": "of it usable above the pump's limit",
    "transit": "water in transit while running", "start_drop": "drop of the level when the pump starts", "days": "time without topping up, driest month",
    "block_pressure": "pressure on the blocks", "base_mass": "everything that stands on the base", "running_cost": "electricity in a year (cur is your currency)",
}  # fmt: skip
