"""What presses on blocks and soil, and what they may carry."""

from __future__ import annotations

import math

from brimwork import tables
from brimwork.design.chain import GRAVITY, Chain, Found, result
from brimwork.units import InputError


class Bearing(Chain):
    """Loads of a design."""

    @result
    def block_allowable(self):
        d = self.design
        return self._work("pressure that the blocks may carry", p_short=d["reservoir.short_term_strength"], k_creep=d["reservoir.creep_factor"],
                          f_s=d["reservoir.safety_factor"])  # fmt: skip

    @result
    def stone_on_blocks(self):
        if self.bare > self.block_plan:
            raise InputError("what stands on the blocks is larger than the blocks together: take more blocks, or a smaller slab")
        mass = (self.block_plan - self.bare) * self.design["catch.stone_thickness"] * self.design["catch.stone_density"]
        return Found("m_stone", mass, "stone over the blocks, beside what stands on them")

    @result
    def base_mass(self):
        d = self.design
        blocks = d["reservoir.blocks_along"] * d["reservoir.blocks_across"] * d["reservoir.block_mass"]
        total = self.standing_mass + self.stone_on_blocks + blocks + self.water["rho"] * self.static_volume
        return Found("m_t", total, "what stands on the blocks, stone over them, blocks, and the water in them")

    @result
    def eccentricity(self):
        share = self.standing_mass / self.base_mass
        return Found("e_off", share * self.standing_offset, "the offset of what stands there, by its share of all the mass on the base")

    @property
    def base_length(self) -> float:
        return self.design["reservoir.blocks_along"] * self.design["reservoir.block_length"]

    @property
    def base_width(self) -> float:
        return self.design["reservoir.blocks_across"] * self.design["reservoir.block_width"]

    @result
    def kern_share(self):
        return self._work("eccentricity over the edge of the kern", e_off=self.eccentricity, B_base=self.base_length)

    @result
    def base_pressure(self):
        formula = "greatest pressure under an offset load" if self.kern_share <= 1 else "greatest pressure under partial contact"
        return self._work(formula, F_w=GRAVITY * self.base_mass, B_base=self.base_length, L_base=self.base_width, e_off=self.eccentricity)

    @result
    def soil_utilisation(self):
        return self._work("utilisation of the soil", p_max=self.base_pressure, p_soil=self.design["site.soil_bearing"])

    @property
    def push(self) -> float:
        return tables.PUSHES["private" if self.design["site.use"] == "private" else "public"].value

    @result
    def flotation(self):
        """Blocks and stone against ground water under the emptied liner; no credit for the vessel, which may come later."""
        d = self.design
        dry = self.stone_on_blocks + d["reservoir.blocks_along"] * d["reservoir.blocks_across"] * d["reservoir.block_mass"]
        if d["site.ground_water"] == 0:
            return Found("f_float", math.inf, "no ground water above the floor")
        return self._work(
            "flotation factor of an emptied pit", m_t=dry, rho=self.water["rho"], A_pit=self.box_length * self.box_width, h_gw=d["site.ground_water"]
        )
