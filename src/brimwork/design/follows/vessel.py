"""The overflowing vessel: what it adds to the chain."""

from __future__ import annotations

import math

from brimwork import topics
from brimwork.design.follows.chain import Found, result
from brimwork.design.follows.whole import Whole
from brimwork.design.typed import patches
from brimwork.formula import Working

GENTLE_BOIL = 0.015  # m: judgement, the limit of the check on the boil


class VesselChain(Whole):
    """An overflowing vessel: water leaves all round its rim and clings to its face."""

    @property
    def edge_head(self) -> float:
        return self.rim_head

    def edge(self) -> tuple[float, float, float]:
        return self.vessel_surface, self.rim_length, self.design["flow.weir_coefficient"]

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
        return self._work("boil of a flow from a bore", Q=self.flow_wanted, d_out=self.design["pipe.bore"])

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

    # --- loads

    @property
    def on_slab(self) -> bool:
        return self.design["vessel.stands_on"] == "slab"

    @property
    def slab_count(self) -> int:
        return int(self.on_slab)

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
    def foot_patch(self) -> Working | Found:
        if "vessel.foot_corners" in self.design.values:
            return Found("A_c", patches.area(self.design["vessel.foot_corners"]), "the area within the corners of the foot, drawn full size")
        return self._work("contact patch of a ring foot", d_fo=self.design["vessel.foot_outside"], d_fi=self.design["vessel.foot_inside"])

    def contact_shapes(self) -> tuple[patches.Shape, ...]:
        d, middle = self.design, (self.design["vessel.offset"], 0.0)
        if self.on_slab:
            return ((patches.rectangular_patch(d["slab.length"], d["slab.width"], middle),),)
        if "vessel.foot_corners" in d.values:
            return ((patches.moved(d["vessel.foot_corners"], middle),),)
        foot, hole = d["vessel.foot_outside"], d["vessel.foot_inside"]
        return ((patches.round_patch(foot, middle), *((patches.round_patch(hole, middle),) if hole else ())),)

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

    # --- its wall

    @property
    def inside_radius(self) -> float:
        """Radius in m where the vessel is widest: of the rim, unless a wider place is given."""
        d = self.design
        return max(d["vessel.rim_diameter"], d["vessel.widest"] if "vessel.widest" in d.values else 0.0) / 2

    @result
    def hoop_stress(self):
        d = self.design
        return self._work("hoop stress in the wall of a full vessel", rho=self.water["rho"], h_full=d["vessel.height"], R_wall=self.inside_radius,
                          t_wall=d["vessel.wall"])  # fmt: skip

    @result
    def wall_share(self):
        return self._work("share of the strength of a vessel's wall", sigma_hoop=self.hoop_stress, f_tens=self.design["vessel.tensile_strength"])

    # --- tipping

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

    @result
    def foam_held(self):
        """Pebbles on the foam, both under water."""
        d = self.design
        return self._work("hold-down ratio of pebbles on foam", V_p=d["vessel.pebbles"], n_s=d["assumptions.pebble_gaps"],
                          rho_s=d["assumptions.pebble_density"], rho=self.water["rho"], V_f=d["vessel.foam"], rho_f=d["vessel.foam_density"])  # fmt: skip
