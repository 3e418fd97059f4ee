"""Drilled stones, one or several with a branch each: what they add to the chain."""

from __future__ import annotations

import math

from brimwork import topics
from brimwork.design.follows import pipework
from brimwork.design.follows.chain import GRAVITY, Found, result
from brimwork.design.follows.geometry import Standing
from brimwork.design.follows.kept import kept
from brimwork.design.follows.manifold import Balance, Branch, Running, balance, running_branches
from brimwork.design.follows.standing import StandingLoads
from brimwork.design.follows.whole import Whole
from brimwork.design.typed import patches
from brimwork.design.typed.asking import Refused, tried
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.telling import told
from brimwork.design.typed.uneven import uneven
from brimwork.formula import Working
from brimwork.nomenclature import QUANTITIES
from brimwork.tables import BORE_AS_A_JET, BORE_AS_A_RIM, BORE_REGIMES_SOURCE
from brimwork.topics import pumps
from brimwork.topics.jets import crown_of_upright_pipe
from brimwork.units import InputError, write

NO_LAW = (
    f"how high it stands over the hole no law says: between {BORE_AS_A_RIM:g} and {BORE_AS_A_JET:g} bores neither that of a rim nor that of a jet holds "
    f"({BORE_REGIMES_SOURCE})"
)


class StonesChain(StandingLoads, Whole):
    """One or several drilled stones, each fed by a branch of its own with a valve; the film clings to their sides."""

    edges = False

    @kept
    def sizes(self) -> list[tuple[float, float, float]]:
        """Diameter, height and length of branch of every stone, in m."""
        lists = [self.design[f"stones.{key}"] for key in ("diameters", "heights", "branch_lengths")]
        if out := uneven(self.design):
            raise Unknown(*out)
        if len({len(one) for one in lists}) > 1:  # of lists that are only supposed
            raise InputError("there is not one entry for every stone")
        return list(zip(*lists, strict=True))

    @kept
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
        """The top of the highest stone."""
        return self.level("stone base") + max(height for _, height, _ in self.sizes)

    @kept
    def lifts(self) -> list[float]:
        """Lift from the lowest water to the top of every stone, m."""
        return [self.level("stone base") + height - self.level("lowest water") for _, height, _ in self.sizes]

    @kept
    def branches(self) -> tuple[Branch, ...]:
        """The branch of every stone, its valve open."""
        bore, fittings = self.design["stones.branch_bore"], self.design["stones.branch_fittings"]
        stones = zip(self.sizes, self.lifts, strict=True)
        return tuple(
            Branch(f"stone {i}", lift, self._hose(bore, length, fittings), then=self._drilled(high))
            for i, ((_, high, length), lift) in enumerate(stones, start=1)
        )

    def _drilled(self, high: float) -> tuple[pipework.Stretch, ...]:
        """The hole through a stone. One narrower than the hose draws the water together, and throws it out with more than the speed that the hose's
        exit counts. In a wider one the water slows down; what that gives back is counted against its friction, and no further."""
        hole, hose = self.design["stones.hole"], self.design["stones.branch_bore"]
        if hole >= hose:
            slower = (hose / hole) ** 4
            back = (1 - topics.formulas()["loss coefficient of a sudden widening"](d_1=hose, d_2=hole) - slower) / slower
            return (self._hose(hole, high, 0.0)._replace(K_back=back),)
        return (self._hose(hole, high, topics.formulas()["loss coefficient of a sudden narrowing"](d_1=hose, d_2=hole) + 1 - (hole / hose) ** 4),)

    @result
    def boil(self):
        """The water that wells up highest."""
        return max(
            (self._work("mound of a flow from a bore", Q=flow, d_out=self.design["stones.hole"]) for flow in self.flows), key=lambda worked: worked.result
        )

    @property
    def mouth_said(self) -> str:
        """How the water stands over the hole of the stone that gets most: by the law of a rim or of a jet, or that neither holds."""
        hole, region = self.design["stones.hole"], self.design.region
        got = tried(lambda: crown_of_upright_pipe(max(self.flows), hole))
        if isinstance(got, Refused):
            return got.why if got.needs else f"{NO_LAW}; try it with a bucket and a hose"
        regime, crown = got
        return f"over the hole the water stands {told(crown, 'mm', region)} by the law of {'a rim: it runs off all round' if regime == 'rim' else 'a jet'}"

    @result
    def outlet_bore(self):
        """The hole that would keep the boil of every stone to a gentle ripple."""
        return max((self._work("outlet bore for a mound", Q=flow, h_boil=pipework.GENTLE_BOIL) for flow in self.flows), key=lambda worked: worked.result)

    @kept
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
        return Found("h_m", max(self.balance.throttles), f"what the valves must throttle off, branch by branch: {each}")

    @result
    def branch_head(self):
        over = self.balance.needs[self.governing] - max(self.lifts)
        return Found("h_m", over, f"that the branch of stone {self.governing + 1}, which governs, needs over the lift to the highest stone")

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
        shares = zip(self.branches, self.flows, strict=True)
        parting = max(branch.head(flow * wanted / self.flow_wanted, self.water["nu"], self._law) for branch, wanted in shares)
        return pipework.head_needed(flow, parting, (self.stretch,), self.water["nu"], self._law)

    @kept
    def network(self) -> Running:
        """How the pump shares its water among the branches, their valves open. Raises InputError where a stone gets none."""
        return running_branches(self.pump, self.stretch, self.branches, self.water["nu"], self._law)

    @kept
    def duty(self) -> pumps.Duty:
        if self.design["stones.valves"] == "yes":
            return super().duty
        return pumps.Duty(sum(self.network.flows), self.network.pump_head)

    @result
    def flow_sent(self):
        """The flow that really runs: throttled to the flow wanted by the valves of the branches, else as the network shares it."""
        if self.design["stones.valves"] == "yes" and self.duty_flow > self.flow_wanted:
            return Found("Q", self.flow_wanted, "throttled by the valves of the branches to the required flow")
        return Found("Q", self.duty_flow, "what the pump sends, with nothing that throttles it")

    @property
    def least_film(self) -> float:
        """Flow for each metre round the stone that gets least (m2/s), at the flow that comes."""
        if self.design["stones.valves"] == "yes":
            return super().least_film
        scale = self.flow_sent / sum(self.network.flows)
        return min(scale * flow / (math.pi * wide) for flow, (wide, _, _) in zip(self.network.flows, self.sizes, strict=True))

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
        return Found("h_fall", self.level("top of the highest stone") - min(0.0, self.level("stone top")),
                     "from the top of the highest stone to the finished paving, or to the stone round it where that lies lower")  # fmt: skip

    # --- loads

    @property
    def on_slabs(self) -> bool:
        return self.design["stones.stand_on"] == "slabs"

    @kept
    def masses(self) -> list[float]:
        """Mass of every stone, kg."""
        hole, density = self.design["stones.hole"], self.design["stones.density"]
        if hole >= min(d for d, _, _ in self.sizes):
            raise InputError(
                f"the hole is {write(hole, 'mm')} wide and the narrowest stone {write(min(d for d, _, _ in self.sizes), 'mm')}: give a smaller stones.hole"
            )
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
        middles = self.places
        if self.on_slabs:
            return tuple((patches.rectangular_patch(d["slab.length"], d["slab.width"], middle),) for middle in middles)
        stones = zip(self.sizes, middles, strict=True)
        return tuple(point for (wide, _, _), middle in stones for point in patches.three_points(self.patch, d["stones.base_share"] * wide, middle))

    def resting(self) -> tuple[patches.Shape, ...]:
        """Of a rough base nobody knows where its points are: anywhere under the stone."""
        if self.on_slabs:
            return self.contact_shapes()
        return tuple((patches.round_patch(wide, at),) for at, (wide, _, _) in zip(self.places, self.sizes, strict=True))

    @kept
    def places(self) -> list[patches.Spot]:
        """Where the stones stand, in m from the middle of the blocks, along and across: as the design says, else evenly on the middle line."""
        count, d = len(self.sizes), self.design
        along, across = ((given.value if (given := d.given(f"stones.places_{way}")) else None) for way in ("along", "across"))
        along = along or [self.base_length * ((i + 0.5) / count - 0.5) for i in range(count)]
        return list(zip(along, across or [0.0] * count, strict=True))

    @result
    def heaviest(self):
        return Found("F_w", GRAVITY * (max(self.masses) + self.slab_mass), "the heaviest stone and its slab")

    @result
    def block_pressure(self):
        return self._work("pressure on a contact patch", F_w=self.heaviest, A_c=self.patch)

    @result
    def block_utilisation(self):
        return self._work("utilisation of the blocks", p_c=self.block_pressure, p_all=self.block_allowable)

    def empties(self) -> list[float]:
        return self.masses

    @property
    def slab_each(self) -> float:
        return self.slab_mass

    def spread_patch(self, piece: Standing) -> float:
        return self.touching(piece) if self.on_slabs else min(self.patch, self.touching(piece))

    def lever(self, piece: Standing) -> float:
        """A rough base resists with a share of its width; on three points it tips over the line between two of them."""
        share = self.design["stones.base_share"]
        if self.on_slabs:
            return min(super().lever(piece), share * piece.face / 2)
        feet = self._work("width of a base on feet", d_feet=share * piece.face, N_feet=3).result
        return min(super().lever(piece), feet / 2)

    @kept
    def tippings(self) -> list[Working]:
        """The tipping factor of every stone."""
        return [self.pushed(GRAVITY * mass, piece) for mass, piece in zip(self.masses, self.geometry.standing, strict=True)]

    @result
    def tipping(self):
        """The stone that tips first."""
        return min(self.tippings, key=lambda worked: worked.result)
