"""What presses on blocks and soil, and what they may carry."""

from __future__ import annotations

import math

from brimwork import tables
from brimwork.design.follows.chain import GRAVITY, Chain, Found, result
from brimwork.design.typed import patches
from brimwork.formula import Working
from brimwork.units import InputError


class Bearing(Chain):
    """Loads of a design."""

    @result
    def block_allowable(self):
        d = self.design
        return self._work("pressure that the blocks may carry", p_short=d["reservoir.short_term_strength"], k_creep=d["reservoir.creep_factor"],
                          f_s=d["reservoir.safety_factor"])  # fmt: skip

    # --- a foot or a wheel beside what stands there

    @result
    def brief_allowable(self):
        d = self.design
        return self._work("pressure that the blocks may carry for seconds", p_short=d["reservoir.short_term_strength"], f_s=d["reservoir.safety_factor"])

    @property
    def loads_of_seconds(self) -> dict[str, tuple[float, float]]:
        """Force (N) and side of its square (m): a person's foot, and a wheel where one may come."""
        d = self.design
        wheel = {"a wheel": (d["site.wheel_load"], d["site.wheel_side"])} if {"site.wheel_load", "site.wheel_side"} & set(d.values) else {}
        return {"a foot": (d["assumptions.person"], d["assumptions.foot"]), **wheel}

    def pressed_under(self, cover: float) -> tuple[str, Working]:
        """Which of those loads presses hardest under a cover so thick (m), and how hard."""
        loads = self.loads_of_seconds.items()
        worked = [(name, self._work("pressure under a foot or a wheel", F_foot=force, b_foot=side, t_cov=cover)) for name, (force, side) in loads]
        return max(worked, key=lambda one: one[1].result)

    @property
    def cover(self) -> float:
        """Thickness of the slab or grid over the blocks, in m. Nobody need give it where the blocks carry the load bare: any cover only eases it."""
        if "reservoir.cover" not in self.design.values and self.pressed_under(0.0)[1].result <= self.brief_allowable:
            return 0.0
        return self.design["reservoir.cover"]

    @result
    def foot_pressure(self):
        return self.pressed_under(self.cover)[1]

    @result
    def foot_utilisation(self):
        return self._work("utilisation under a foot or a wheel", p_foot=self.foot_pressure, p_brief=self.brief_allowable)

    # --- joints between the blocks

    def resting(self) -> tuple[patches.Shape, ...]:
        """Outlines within which it touches the blocks, wherever the touching points are. Raises Unknown."""
        return self.contact_shapes()

    @property
    def bridge(self) -> float:
        """How far (m) what stands on the blocks reaches past the joints under it, where it reaches least; infinite where it stands inside one block."""
        d = self.design
        along = patches.joints(d["reservoir.block_length"], round(d["reservoir.blocks_along"]))
        across = patches.joints(d["reservoir.block_width"], round(d["reservoir.blocks_across"]))
        return patches.bridged(self.resting(), along, across)

    @property
    def overhang(self) -> float:
        """How far (m) what stands on the blocks reaches over their edge; nothing or less where it does not."""
        return patches.beyond(self.contact_shapes(), self.base_length, self.base_width)

    # --- everything on the base

    @result
    def stone_on_blocks(self):
        if self.bare > self.block_plan:
            raise InputError("what stands on the blocks is larger than the blocks together: take more blocks, or a smaller slab")
        mass = (self.block_plan - self.bare) * self.design["catch.stone_thickness"] * self.design["catch.stone_density"]
        return Found("m_stone", mass, "stone over the blocks, beside what stands on them")

    @property
    def blocks_mass(self) -> float:
        d = self.design
        return d["reservoir.blocks_along"] * d["reservoir.blocks_across"] * d["reservoir.block_mass"]

    @property
    def thickness_of_cover(self) -> float:
        """Thickness (m) of the slab or grid all over the blocks; nothing where the design names none."""
        given = self.design.given("reservoir.cover")
        return given.value if given else 0.0

    @property
    def cover_mass(self) -> float:
        """Mass (kg) of the slab or grid all over the blocks."""
        thick = self.thickness_of_cover
        return thick * self.block_plan * self.design["assumptions.cover_density"] if thick else 0.0

    @result
    def base_mass(self):
        total = self.standing_mass + self.stone_on_blocks + self.blocks_mass + self.cover_mass + self.water["rho"] * self.static_volume
        cover = ", the cover" if self.cover_mass else ""
        return Found("m_t", total, f"what stands on the blocks, stone over them, blocks{cover}, and the water in them")

    def _off(self, axis: int) -> float:
        """How far (m) the weight of everything on the base acts off its middle, one way."""
        return abs(self.standing_mass / self.base_mass * self.resultant[axis])

    @result
    def eccentricity(self):
        return Found("e_off", self._off(0), "the offset along of what stands there, taken as one, by its share of all the mass on the base")

    @result
    def eccentricity_across(self):
        return Found("e_ac", self._off(1), "the offset across of what stands there, taken as one, by its share of all the mass on the base")

    @property
    def base_length(self) -> float:
        return self.design["reservoir.blocks_along"] * self.design["reservoir.block_length"]

    @property
    def base_width(self) -> float:
        return self.design["reservoir.blocks_across"] * self.design["reservoir.block_width"]

    @result
    def kern_share(self):
        if not self.block_plan:
            raise InputError("the blocks have no length or no width: look at reservoir.block_length and reservoir.block_width")
        along = self._work("eccentricity over the edge of the kern", e_off=self.eccentricity, B_base=self.base_length)
        if not self.eccentricity_across:
            return along
        across = self._work("eccentricity over the edge of the kern", e_off=self.eccentricity_across, B_base=self.base_width)
        return Found("r_kern", along.result + across.result, f"along {along.result:.3g} and across {across.result:.3g}: together they must stay within 1")

    @result
    def base_pressure(self):
        if self.eccentricity_across:
            return self._both_ways()
        formula = "greatest pressure under an offset load" if self.kern_share <= 1 else "greatest pressure under partial contact"
        return self._work(formula, F_w=GRAVITY * self.base_mass, B_base=self.base_length, L_base=self.base_width, e_off=self.eccentricity)

    def _both_ways(self) -> Working:
        if self.kern_share > 1:
            raise InputError(
                "the load stands so far off the middle, along and across, that a corner of the base lifts: move it towards the middle, or take more blocks"
            )
        return self._work("greatest pressure under a load offset both ways", F_w=GRAVITY * self.base_mass, B_base=self.base_length, L_base=self.base_width,
                          e_off=self.eccentricity, e_ac=self.eccentricity_across)  # fmt: skip

    @result
    def local_pressure(self):
        """Straight down under one piece; where none stands on the blocks, that of the base."""
        return Found("p_max", self.base_pressure, "nothing stands on the blocks: the pressure under the base as a whole")

    @result
    def soil_utilisation(self):
        return self._work("utilisation of the soil", p_max=self.base_pressure, p_soil=self.design["site.soil_bearing"])

    @result
    def soil_share(self):
        """The greater pressure on the soil over what it may carry: under the base as one stiff body, or under one piece alone."""
        return self._work("utilisation of the soil", p_max=max(self.base_pressure, self.local_pressure), p_soil=self.design["site.soil_bearing"])

    @property
    def push(self) -> float:
        return tables.PUSHES["private" if self.design["site.use"] == "private" else "public"].value

    @result
    def flotation(self):
        """Blocks and stone against ground water under the emptied liner; no credit for the vessel, which may come later, nor for a cover, which may be a light grid."""
        d = self.design
        dry = self.stone_on_blocks + self.blocks_mass
        if d["site.ground_water"] == 0:
            return Found("f_float", math.inf, "no ground water above the floor")
        return self._work(
            "flotation factor of an emptied pit", m_t=dry, rho=self.water["rho"], A_pit=self.box_length * self.box_width, h_gw=d["site.ground_water"]
        )
