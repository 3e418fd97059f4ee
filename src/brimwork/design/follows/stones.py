"""Drilled stones, one or several with a branch each: what they add to the chain."""

from __future__ import annotations

import math
from functools import cached_property

from brimwork.design.follows import pipework
from brimwork.design.follows.chain import GRAVITY, Found, result
from brimwork.design.follows.manifold import Balance, Branch, balance
from brimwork.design.follows.whole import Whole
from brimwork.design.typed import patches
from brimwork.formula import Working
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError


class StonesChain(Whole):
    """One or several drilled stones, each fed by a branch of its own with a valve; the film clings to their sides."""

    edges = False

    @cached_property
    def sizes(self) -> list[tuple[float, float, float]]:
        """Diameter, height and length of branch of every stone, in m."""
        lists = [self.design[f"stones.{key}"] for key in ("diameters", "heights", "branch_lengths")]
        if len({len(one) for one in lists}) > 1:
            raise InputError("stones.diameters, heights and branch_lengths differ in length: give one of each for every stone")
        return list(zip(*lists, strict=True))

    @cached_property
    def flows(self) -> list[float]:
        """Flow wanted for every stone, m3/s."""
        return [self._work("flow for a wetted edge", q=self.design["flow.for_each_metre"], b=math.pi * d).result for d, _, _ in self.sizes]

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
        return self.level("stone base") + self.sizes[self.governing][1]

    @cached_property
    def lifts(self) -> list[float]:
        """Lift from the lowest water to the top of every stone, m."""
        return [self.level("stone base") + height - self.level("lowest water") for _, height, _ in self.sizes]

    @cached_property
    def branches(self) -> tuple[Branch, ...]:
        """The branch of every stone, its valve open."""
        bore, fittings = self.design["stones.branch_bore"], self.design["stones.branch_fittings"]
        stones = zip(self.sizes, self.lifts, strict=True)
        return tuple(Branch(f"stone {i}", lift, self._hose(bore, length, fittings)) for i, ((_, _, length), lift) in enumerate(stones, start=1))

    @cached_property
    def balance(self) -> Balance:
        """What every branch needs and every valve must lose at the flows wanted."""
        return balance(self.stretch, self.branches, tuple(self.flows), self.water["nu"], self._law)

    @property
    def governing(self) -> int:
        return self.balance.governing

    @property
    def branch_losses(self) -> list[float]:
        """Head lost in every branch at its flow, valve open, m."""
        return [need - lift for need, lift in zip(self.balance.needs, self.lifts, strict=True)]

    @result
    def throttle(self):
        each = "; ".join(QUANTITIES["h_m"].metric_text(one) for one in self.balance.throttles)
        return Found("h_m", max(self.balance.throttles), f"what the valves must take away, branch by branch: {each}")

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
        own = flow * self.flows[self.governing] / self.flow_wanted
        parting = self.branches[self.governing].head(own, self.water["nu"], self._law)
        return pipework.head_needed(flow, parting, (self.stretch,), self.water["nu"], self._law)

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
        return sum(math.pi * d * h for d, h, _ in self.sizes)

    @result
    def transit_pipe(self):
        d = self.design
        if d["pipe.check_valve"] == "yes":
            return Found("V_pc", 0.0, "a check valve keeps hoses and holes full")
        branches = math.pi / 4 * d["stones.branch_bore"] ** 2 * sum(length for _, _, length in self.sizes)
        holes = math.pi / 4 * d["stones.hole"] ** 2 * sum(height for _, height, _ in self.sizes)
        common = math.pi / 4 * d["pipe.bore"] ** 2 * d["pipe.length"]
        return Found("V_pc", common + branches + holes, "common hose, branches and the holes in the stones")

    def in_transit(self) -> dict[str, float]:
        return {"V_film": self.transit_film}

    def wet_parts(self) -> tuple[float, str]:
        return self._sides + sum(math.pi / 4 * d * d for d, _, _ in self.sizes), "sides and tops of the stones"

    @result
    def fall(self):
        return Found("h_fall", self.level("top of the highest stone"), "from the top of the highest stone to the finished paving")

    # --- loads

    @property
    def on_slabs(self) -> bool:
        return self.design["stones.stand_on"] == "slabs"

    @cached_property
    def masses(self) -> list[float]:
        """Mass of every stone, kg."""
        hole, density = self.design["stones.hole"], self.design["stones.density"]
        return [math.pi / 4 * (d * d - hole * hole) * h * density for d, h, _ in self.sizes]

    @property
    def slab_count(self) -> int:
        return len(self.sizes) * self.on_slabs

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

    def contact_shapes(self) -> tuple[patches.Shape, ...]:
        d = self.design
        middles = [(x, 0.0) for x in self.places]
        if self.on_slabs:
            return tuple((patches.rectangular_patch(d["slab.length"], d["slab.width"], middle),) for middle in middles)
        stones = zip(self.sizes, middles, strict=True)
        return tuple(point for (wide, _, _), middle in stones for point in patches.three_points(self.patch, d["stones.base_share"] * wide, middle))

    def resting(self) -> tuple[patches.Shape, ...]:
        """Of a rough base nobody knows where its points are: anywhere under the stone."""
        if self.on_slabs:
            return self.contact_shapes()
        return tuple((patches.round_patch(wide, (x, 0.0)),) for x, (wide, _, _) in zip(self.places, self.sizes, strict=True))

    @property
    def places(self) -> list[float]:
        """Where the stones stand along the blocks, evenly, in m from the middle."""
        count = len(self.sizes)
        return [self.base_length * ((i + 0.5) / count - 0.5) for i in range(count)]

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
        stones = zip(self.sizes, self.masses, strict=True)
        return [self._work("tipping factor", F_w=GRAVITY * mass, B_base=d * share, F_push=push, h_push=h) for (d, h, _), mass in stones]

    @result
    def tipping(self):
        """The stone that tips first."""
        return min(self.tippings, key=lambda worked: worked.result)

    @property
    def standing_mass(self) -> float:
        return sum(self.masses) + len(self.sizes) * self.slab_mass

    @result
    def tipping_in_wind(self):
        """The stone that the wind tips first."""
        d = self.design
        stones = zip(self.sizes, self.masses, strict=True)
        return min(
            (
                self._work("tipping factor in wind", F_w=GRAVITY * mass, B_base=wide * d["stones.base_share"], p_wind=self.wind_pressure,
                           c_f=d["site.force_coefficient"], b_face=wide, h_face=high)
                for (wide, high, _), mass in stones
            ),
            key=lambda worked: worked.result,
        )  # fmt: skip
