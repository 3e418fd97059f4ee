"""Box, pit, liner and stone: sizes to cut and volumes to dig."""

from __future__ import annotations

from brimwork.design.follows.chain import GRAVITY, Chain, Found, result
from brimwork.formula import Working
from brimwork.units import InputError, write


class Digging(Chain):
    """Box, pit, liner and stone of a design."""

    def _box(self, blocks: float) -> Working:
        return self._work("inside length of the box", L_bl=blocks, t_li=self.design["ground.lining_thickness"], c_side=self.design["ground.clearance"])

    @result
    def box_length(self):
        return self._box(self.base_length)

    @result
    def box_width(self):
        return self._box(self.base_width)

    @result
    def box_depth(self):
        d = self.design
        return Found("D", d["reservoir.block_height"] + d["ground.box_upstand"], "height of the blocks and what the box stands above them")

    @property
    def box_top(self) -> float:
        """Level of the edge of the box, in m."""
        return self.level("reservoir floor") + self.box_depth

    @result
    def panel_long(self):
        return self._work("outside length of the box", L_in=self.box_length, t_pan=self.design["ground.board"])

    @result
    def panel_across(self):
        return self._work("outside length of the box", L_in=self.box_width, t_pan=self.design["ground.board"])

    def _liner(self, inside: float) -> Working:
        d = self.design
        return self._work("length of the liner", L_in=inside, D=self.box_depth, w_apron=d["catch.apron"], w_trim=d["lining.beyond_apron"])

    @result
    def liner_length(self):
        return self._liner(self.box_length)

    @result
    def liner_width(self):
        return self._liner(self.box_width)

    @property
    def narrow_side(self) -> float:
        return min(self.liner_length, self.liner_width)

    @result
    def roll(self):
        """The narrowest roll that covers the narrower side, else the widest there is."""
        widths = sorted(self.design["lining.rolls"])
        width = next((w for w in widths if w >= self.narrow_side), widths[-1])
        return Found("l_cut", width, "the narrowest roll that covers the narrower side of the cut")

    @property
    def roll_spare(self) -> float:
        return self.roll - self.narrow_side

    def _pit(self, outside: float) -> Working:
        return self._work("length of the pit", L_out=outside, t_work=self.design["ground.working_space"])

    @result
    def pit_length(self):
        return self._pit(self.panel_long)

    @result
    def pit_width(self):
        return self._pit(self.panel_across)

    @result
    def pit_depth(self):
        if self.level("formation") >= 0:
            raise InputError(
                f"there is no pit: its bottom would lie {write(self.level('formation'), 'mm')} above the finished paving. "
                "Set levels.block_top lower, or take higher blocks or a thicker bed"
            )
        return Found("D_dig", -self.level("formation"), "from the finished paving to the formation")

    # --- what pushes on the side of the box

    @result
    def side_thrust(self):
        """On the longer side of the empty box: fill at rest behind it, the soil that stands over it, and ground water."""
        d, deep = self.design, self.box_depth
        behind = max(deep, self.soil_held - self.level("reservoir floor"))
        push = {"K_soil": d["assumptions.fill_push"], "rho_fill": d["assumptions.fill_density"], "L_out": max(self.panel_long, self.panel_across)}
        whole, over = (self._work("thrust of fill on a side of the box", D=depth, **push).result if depth else 0.0 for depth in (behind, behind - deep))
        water = d.given("site.ground_water")
        wet = self.water["rho"] * GRAVITY * min(water.value, deep) ** 2 / 2 * push["L_out"] if water else 0.0
        return Found("F_fill", whole - over + wet, "fill at rest behind the longer side, soil over it, and ground water")

    @result
    def side_pressure(self):
        return Found("p_side", self.side_thrust / (self.box_depth * max(self.panel_long, self.panel_across)), "the thrust, evenly over the side")

    @property
    def unheld(self) -> float:
        """Greatest length (m) of a side between two struts or corners: struts stand across, so that the end panels have none."""
        return max(min(self.design["buying.strut_spacing"], self.box_length), self.box_width)

    @result
    def bow(self):
        d = self.design
        return self._work(
            "bow of a panel between struts", p_side=self.side_pressure, s_strut=self.unheld, E_pan=d["assumptions.board_stiffness"], t_pan=d["ground.board"]
        )

    @property
    def ground_depth(self) -> float:
        """Depth (m) of the pit from the highest ground beside it: the paving, or soil that stands over it."""
        soil = self.design.given("levels.soil")
        return self.pit_depth + (max(soil.value, 0.0) if soil else 0.0)

    @property
    def held_back(self) -> float:
        """Height (m) of what stands or holds back: the highest of it less the lowest level beside it."""
        d = self.design
        tops = [
            0.0,
            self.level("block top"),
            *([self.box_top] if all(map(d.given, ("ground.box_upstand", "reservoir.block_height"))) else []),
            *(given.value for key in ("levels.soil", "levels.liner_edge") if (given := d.given(key))),
        ]
        highest, lowest = self.stands_up_to()
        soil = d.given("levels.soil")
        return max(*tops, highest) - min(0.0, lowest, soil.value if soil else 0.0)

    def stands_up_to(self) -> tuple[float, float]:
        """Highest and lowest level (m) of a wall of its own, to the paving."""
        return 0.0, 0.0

    @property
    def soil_held(self) -> float:
        """How far (m) soil stands over the paving beside it."""
        soil = self.design.given("levels.soil")
        return max(soil.value, 0.0) if soil else 0.0

    @result
    def diagonal(self):
        return self._work("diagonal for squaring", L_dig=self.pit_length, W_dig=self.pit_width)

    @result
    def pit_dug(self):
        return self._work("volume to dig", L_dig=self.pit_length, W_dig=self.pit_width, D_dig=self.pit_depth)

    @property
    def apron_depth(self) -> float:
        """How deep (m) the ground is dug for the apron: to the edge of the box, over which its liner runs; nothing where that stands over the paving."""
        return max(-self.box_top, 0.0)

    @property
    def apron_size(self) -> tuple[float, float]:
        """Length and width (m) of the ground that the apron covers, the box in it."""
        beyond = 2 * self.design["catch.apron"]
        return self.box_length + beyond, self.box_width + beyond

    @result
    def apron_dug(self):
        """The apron beyond the pit; where the pit is wider, nothing more is dug."""
        (length, width), pit = self.apron_size, self.pit_length * self.pit_width
        said = f"apron of {write(length, 'm')} x {write(width, 'm')} less the pit, {write(self.apron_depth, 'mm')} deep to the edge of the box"
        return Found("V_dig", max(length * width - pit, 0.0) * self.apron_depth, said)

    @result
    def dug(self):
        """All that is dug: the pit, and the apron beyond it."""
        pit, apron = (write(volume, "m3") for volume in (self.pit_dug, self.apron_dug))
        return Found("V_dig", self.pit_dug + self.apron_dug, f"pit {pit} and apron beyond it {apron}")

    @result
    def spoil(self):
        return self._work("loose volume of spoil", V_dig=self.dug, s_swell=self.design["ground.bulking"] - 1)

    @result
    def stone_area(self):
        over = self.box_length + 2 * self.design["catch.apron"], self.box_width + 2 * self.design["catch.apron"]
        if self.bare > over[0] * over[1]:
            raise InputError("what stands there is larger than box and apron together: no stone is left. Give more blocks or a wider catch.apron")
        return self._work("area of the stone", L_in=self.box_length, W_in=self.box_width, w_apron=self.design["catch.apron"], A_bare=self.bare)

    @property
    def stone_layer(self) -> float:
        """Mean thickness (m) of the stone: over the blocks as the design says, over the apron from the edge of the box up to the same level."""
        inside = self.box_length * self.box_width - self.bare
        beyond = max(self.level("stone top") - self.box_top, 0.0)
        return (inside * self.design["catch.stone_thickness"] + (self.stone_area - inside) * beyond) / self.stone_area

    @result
    def stone_mass(self):
        d = self.design
        return self._work("mass of stone to order", A_cov=self.stone_area, t_st=self.stone_layer, rho_bulk=d["catch.stone_density"],
                          s_waste=d["catch.stone_waste"])  # fmt: skip
