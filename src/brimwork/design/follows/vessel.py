"""The overflowing vessel: what it adds to the chain."""

from __future__ import annotations

import math
from typing import cast

from brimwork.design.follows.altered import Altered
from brimwork.design.follows.chain import Chain, Found, result
from brimwork.design.follows.kept import kept
from brimwork.design.follows.pipework import GENTLE_BOIL
from brimwork.design.follows.standing import StandingLoads
from brimwork.design.follows.whole import Whole
from brimwork.design.typed import patches
from brimwork.design.typed.asking import Refused, tried
from brimwork.design.typed.design import Design
from brimwork.formula import Working
from brimwork.units import InputError, write

HELD = 1.3  # hold-down ratio that passes: judgement, the limit of the check on foam
ENCLOSED = 1.001  # times what the outside encloses, over which the water typed cannot be


class VesselChain(StandingLoads, Whole):
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

    @property
    def shape(self) -> str:
        return self.design["vessel.shape"]

    @property
    def rim_sides(self) -> tuple[float, float]:
        """Length and width (m) of a square or rectangular rim."""
        d = self.design
        return d["vessel.rim_diameter"], d["vessel.rim_width" if self.shape == "rectangular" else "vessel.rim_diameter"]

    @result
    def rim_length(self):
        if self.shape == "round":
            return self._work("length of a round rim", d_rim=self.design["vessel.rim_diameter"])
        if self.shape == "another":
            return Found("b", self.design["vessel.rim_length"], "as the design gives it")
        return Found("b", 2 * sum(self.rim_sides), f"all round a {self.shape} rim")

    @result
    def flow_wanted(self):
        return self._work("flow for a wetted edge", q=self.design["flow.for_each_metre"], b=self.rim_length)

    @result
    def rim_head(self):
        if self.shape == "round":
            return self._work("head on a round rim", Q=self.flow_wanted, d_rim=self.design["vessel.rim_diameter"], C_w=self.design["flow.weir_coefficient"])
        return self._work("head by weir coefficient", Q=self.flow_wanted, C_w=self.design["flow.weir_coefficient"], b=self.rim_length)

    @property
    def rim_error(self) -> float:
        """Difference in level round the rim: from the levels measured round it, else as the design has it."""
        if "measured.rim_levels" in self.design.values:
            levels = self.design["measured.rim_levels"]
            return max(levels) - min(levels)
        return self.design["vessel.rim_out_of_level"]

    @result
    def rim_error_share(self):
        return self._work("rim out of level over head", e_rim=self.rim_error, H=self.rim_head)

    @result
    def rim_runs_dry(self):
        """How far out of level the rim may be before its high side is dry."""
        return self._work("rim out of level that leaves one side dry", H=self.rim_head)

    @result
    def rim_flow_ratio(self):
        if self.rim_error >= self.rim_runs_dry:
            return Found("r_rim", math.inf, "one side of the rim is dry")
        return self._work("flow ratio of a rim out of level", H=self.rim_head, e_rim=self.rim_error)

    @result
    def film(self):
        return self._work("thickness of a film on a face", q=self.design["flow.for_each_metre"], nu=self.water["nu"], beta=math.pi / 2)

    @result
    def boil(self):
        return self._work("mound of a flow from a bore", Q=self.flow_wanted, d_out=self.design["pipe.bore"])

    @result
    def outlet_bore(self):
        """The outlet that would keep the boil to a gentle ripple."""
        return self._work("outlet bore for a mound", Q=self.flow_wanted, h_boil=GENTLE_BOIL)

    # --- water in transit

    @result
    def vessel_surface(self):
        if self.shape == "round":
            return self._work("water surface of a round vessel", d_rim=self.design["vessel.rim_diameter"])
        if self.shape == "another":
            return Found("A_v", self.design["vessel.surface"], "as the design gives it")
        return Found("A_v", self.rim_sides[0] * self.rim_sides[1], f"inside a {self.shape} rim")

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
        if self.level("rim") <= self.lands:
            raise InputError(
                f"the rim stands {write(self.level('rim'), 'mm')} over the paving and the stone round it {write(self.lands, 'mm')}: nothing falls. Raise the rim or lower the stone"
            )
        return Found("h_fall", self.level("rim") - self.lands, "from the rim to the finished paving, or to the stone round it where that lies lower")

    @property
    def lands(self) -> float:
        """Level (m) on which the water lands."""
        return min(0.0, self.level("stone top"))

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

    @property
    def slab_each(self) -> float:
        return self.slab_mass

    @property
    def outside_volume(self) -> float:
        """What the outside of the vessel encloses (m3), taken as wide all the way up as where it is widest."""
        d = self.design
        if self.shape == "round":
            return math.pi * self.inside_radius**2 * d["vessel.height"]
        return self.vessel_surface * d["vessel.height"]

    # --- what it holds

    @property
    def fill(self) -> tuple[float, float]:
        """Foam and the pebbles on it (m3, with their gaps); nothing of what the design does not name. Raises InputError for more than the vessel holds."""
        d = self.design
        foam, pebbles = (given.value if (given := d.given(f"vessel.{key}")) else 0.0 for key in ("foam", "pebbles"))
        if foam + pebbles > d["vessel.water"] * (1 + 1e-9):
            raise InputError(
                f"foam and pebbles take {write(foam + pebbles, 'L')}, but the vessel holds {write(d['vessel.water'], 'L')}: "
                "give less vessel.foam or vessel.pebbles, or look at vessel.water"
            )
        return foam, pebbles

    @result
    def water_held(self):
        """Water in the vessel as it runs: what it holds empty of fill, less what foam and pebbles take."""
        foam, pebbles = self.fill
        if not (foam or pebbles):
            return Found("V_v", self.design["vessel.water"], "to the rim, with no foam and no pebbles in it")
        return self._work(
            "water in a vessel with foam and pebbles", V_in=self.design["vessel.water"], V_f=foam, n_por=self.design["assumptions.pebble_gaps"], V_p=pebbles
        )

    @property
    def fill_mass(self) -> float:
        """Mass (kg) of foam and pebbles."""
        (foam, pebbles), d = self.fill, self.design
        return (foam * d["vessel.foam_density"] if foam else 0.0) + pebbles * (1 - d["assumptions.pebble_gaps"]) * d["assumptions.pebble_density"]

    @result
    def pebbles_wanted(self):
        """Pebbles that would hold the foam down well."""
        d = self.design
        return self._work("pebbles needed to hold foam down", f_hold=HELD, V_f=d["vessel.foam"], rho=self.water["rho"], rho_f=d["vessel.foam_density"],
                          n_s=d["assumptions.pebble_gaps"], rho_s=d["assumptions.pebble_density"])  # fmt: skip

    def empties(self) -> list[float]:
        return [self.design["vessel.mass"]]

    def fulls(self) -> list[float]:
        return [self.design["vessel.mass"] + self.water["rho"] * self.water_held + self.fill_mass]

    @kept
    def heavier(self) -> Chain:
        more, _ = self.counted("vessel.water"), self.fill  # which is refused where it is more than the vessel is said to hold
        if more <= self.design["vessel.water"]:
            return self
        return type(self)(cast(Design, Altered(self.design, "vessel.water", more)))

    # --- what touches

    @result
    def patch(self):
        """What lies on the blocks: the slab, or the foot alone."""
        if self.on_slab:
            return self._work("contact patch of a slab", l_s=self.design["slab.length"], w_s=self.design["slab.width"])
        return self.foot_patch

    @property
    def foot_patch(self) -> Working | Found:
        if "vessel.foot_corners" in self.design.values:
            return Found("A_c", patches.area(self.design["vessel.foot_corners"]), "the area within the corners of the foot, drawn full size")
        piece = self.geometry.standing[0]
        if self.shape in ("round", "another"):
            return self._work("contact patch of a ring foot", d_fo=self.design["vessel.foot_outside"], d_fi=self.design["vessel.foot_inside"])
        return Found("A_c", patches.area_of(piece.foot) - patches.area_of(piece.hole), f"a {self.shape} foot, less the hole in it")

    def contact_shapes(self) -> tuple[patches.Shape, ...]:
        piece = self.geometry.standing[0]
        if slab := self.geometry.slab_under(piece):
            return ((slab,),)
        if self.shape in ("round", "another") and "vessel.foot_corners" not in self.design.values:
            foot, hole = self.design["vessel.foot_outside"], self.design["vessel.foot_inside"]
            return ((patches.round_patch(foot, piece.middle), *((patches.round_patch(hole, piece.middle),) if hole else ())),)
        return ((piece.foot, *((piece.hole,) if piece.hole else ())),)

    @result
    def vessel_weight(self):
        return self._work("weight of vessel, water and slab", m_v=self.design["vessel.mass"] + self.fill_mass, rho=self.water["rho"], V_v=self.water_held,
                          m_slab=self.slab_mass)  # fmt: skip

    @result
    def block_pressure(self):
        """As if the slab pressed evenly all over."""
        return self._work("pressure on a contact patch", F_w=self.vessel_weight, A_c=self.patch)

    @result
    def block_utilisation(self):
        return self._work("utilisation of the blocks", p_c=self.block_pressure, p_all=self.block_allowable)

    # --- its wall

    @property
    def inside_radius(self) -> float:
        """Radius in m where the vessel is widest: of the rim, unless a wider place is given."""
        d = self.design
        return (
            max(*(self.rim_sides if self.shape == "rectangular" else (d["vessel.rim_diameter"],)), d["vessel.widest"] if "vessel.widest" in d.values else 0.0)
            / 2
        )

    @result
    def hoop_stress(self):
        if self.shape != "round":
            raise InputError(
                f"the pull in the wall of a vessel that is not round is not worked out here (it is {self.shape}): ask its maker, or a structural engineer"
            )
        d = self.design
        return self._work("hoop stress in the wall of a full vessel", rho=self.water["rho"], h_full=d["vessel.height"], R_wall=self.inside_radius,
                          t_wall=d["vessel.wall_thickness"])  # fmt: skip

    @result
    def wall_share(self):
        return self._work("share of the strength of a vessel's wall", sigma_hoop=self.hoop_stress, f_tens=self.design["vessel.tensile_strength"])

    # --- tipping

    @property
    def steadied(self) -> list[float]:
        """Mass (kg) that holds it: with what it holds, unless that is more than its outside encloses; then nobody knows, and it counts as empty."""
        around = tried(lambda: self.really.outside_volume)
        too_much = not isinstance(around, Refused) and self.design["vessel.water"] > around * ENCLOSED
        return self.empties() if too_much else self.fulls()

    @result
    def tipping_full(self):
        return self.tips(self.steadied, self.pushed)

    @result
    def tipping_empty(self):
        return self.tips(self.empties(), self.pushed)

    @property
    def held_above(self) -> float:
        return self.water_held

    @property
    def bare(self) -> float:
        return self.patch if self.on_slab else patches.area_of(self.geometry.standing[0].foot)

    @result
    def foam_held(self):
        """Pebbles on the foam, both under water."""
        d = self.design
        if self.fill[0] == 0:
            return Found("f_hold", math.inf, "no foam")
        return self._work("hold-down ratio of pebbles on foam", V_p=d["vessel.pebbles"], n_s=d["assumptions.pebble_gaps"],
                          rho_s=d["assumptions.pebble_density"], rho=self.water["rho"], V_f=d["vessel.foam"], rho_f=d["vessel.foam_density"])  # fmt: skip
