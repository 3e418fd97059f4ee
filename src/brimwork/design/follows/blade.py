"""The straight blade: what it adds to the chain."""

from __future__ import annotations

import math

from brimwork.design.follows.chain import GRAVITY, Found, result
from brimwork.design.follows.geometry import WALL
from brimwork.design.follows.sheet import SheetChain
from brimwork.design.typed import patches
from brimwork.design.typed.asking import Refused, tried
from brimwork.design.typed.telling import told
from brimwork.topics.overflow import head_over_level_lip, lip_coefficient
from brimwork.units import InputError, write


class BladeChain(SheetChain):
    """A straight blade: a free sheet falls from the lip of a trough in a low wall."""

    @property
    def edge_head(self) -> float:
        return self.lip_head

    def edge(self) -> tuple[float, float, float]:
        return self._trough_plan, self.design["blade.lip_width"], self.edge_coefficient

    @property
    def delivery(self) -> float:
        return self.level("lip")

    @property
    def splash_throw(self) -> float:
        return self.throw

    @result
    def flow_wanted(self):
        return self._work("flow for a wetted edge", q=self.design["flow.for_each_metre"], b=self.design["blade.lip_width"])

    @result
    def lip_head(self):
        return self._head(self.design["blade.lip_width"])

    @result
    def fall(self):
        fall = self.level("lip") - self.level("splash stone")
        if fall <= 0:
            raise InputError(
                f"the lip lies at {write(self.level('lip'), 'mm')} and the splash stone, on which the sheet lands, at {write(self.level('splash stone'), 'mm')}: nothing falls. "
                "Raise blade.lip_level or set blade.stone_level lower"
            )
        return Found("h_fall", fall, "from the lip to the splash stone")

    def stands_up_to(self) -> tuple[float, float]:
        return max(self.counted("blade.wall_height"), self.level("lip")), self.level("splash stone")

    @result
    def apron_share(self):
        """In front, and beside the lip, whichever is narrower."""
        d, beside = self.design, self.geometry.catch_half[1] - self.design["blade.lip_width"] / 2
        front = self.apron / self.apron_wanted
        wanted = d["assumptions.wind_factor"] * d["catch.splash_factor"] * self.fall
        sides = max(beside, 0.0) / wanted if wanted else math.inf
        where = "in front" if front <= sides else f"beside the lip, where {write(beside, 'mm')} is lined and {write(wanted, 'mm')} wanted"
        return Found("r_apron", min(front, sides), f"the apron over what water and wind want, {where}")

    @result
    def landing_speed(self):
        return self._work("speed with which water lands", v_b=self.brink_speed, h_fall=self.fall)

    @result
    def landing_thickness(self):
        return self._work("thickness of the sheet where it lands", q=self.design["flow.for_each_metre"], v_land=self.landing_speed)

    # --- the wall

    @result
    def wall_mass(self):
        """Of wall and trough as they are drawn, without the footing and without water."""
        wall, trough = self.bodies["wall"], self.bodies["trough"]
        plan, hollow = patches.area_of(trough.outline), patches.area_of(trough.hole)
        volume = plan * max(wall.high - wall.low, 0.0) + plan * WALL + (plan - hollow) * self.design["blade.trough_depth"]
        return Found("m_v", volume * self.design["assumptions.wall_density"], f"wall and trough, as they are drawn, of {write(volume, 'm3')}")

    @property
    def _wall_top(self) -> float:
        return self.stands_up_to()[0]

    @property
    def _wall_deep(self) -> float:
        left, right = self.bodies["wall"].reach(0)
        return right - left

    @result
    def tipping(self):
        """Somebody who leans on its top."""
        return self._work("tipping factor", F_w=GRAVITY * self.wall_mass, B_base=self._wall_deep, F_push=self.push, h_push=self._wall_top)

    @result
    def tipping_in_wind(self):
        """The wall alone, its trough empty and its footing not counted."""
        low, high = self.bodies["wall"].reach(1)
        return self._work("tipping factor in wind", F_w=GRAVITY * self.wall_mass, B_base=self._wall_deep, p_wind=self.wind_pressure,
                          c_f=self.design["site.force_coefficient"], b_face=high - low, h_face=self._wall_top)  # fmt: skip

    @result
    def local_pressure(self):
        """Under the footing of the wall with its trough full, or under the base where that presses harder."""
        water = self.water["rho"] * self._trough_plan * (self.design["blade.trough_depth"] + self.lip_head)
        under = GRAVITY * (self.wall_mass + self.footing_mass + water) / patches.area_of(self.geometry.wall)
        return Found("p_max", max(under, self.base_pressure), "under the wall with its trough full and its footing, as wide as the wall, or under the base")

    @property
    def footing_mass(self) -> float:
        """Kg: the footing as it is drawn, as wide as the wall, down to the bottom of the pit."""
        footing = self.bodies["footing of the wall"]
        return patches.area_of(footing.outline) * (footing.high - footing.low) * self.design["assumptions.wall_density"]

    @property
    def thin_lip_said(self) -> str:
        """The head over the lip, were it a thin edge, by the table for its share of the trough; or that the table does not reach so far."""
        d, region = self.design, self.design.region
        wide = d["blade.lip_width"]
        got = tried(lambda: lip_coefficient(self.lip_head, d["blade.trough_depth"], wide / max(wide, d["blade.trough_length"])))
        if isinstance(got, Refused):
            return got.why
        thin = head_over_level_lip(Q=self.flow_wanted, b=wide, C_d=got)
        return (
            f"over a thin edge the water would stand {told(thin, 'mm', region)} high, by Kindsvater and Carter; {told(self.lip_head, 'mm', region)} is counted"
        )

    # --- water in transit

    @property
    def trough_section(self) -> float:
        return self.design["blade.trough_width"] * (self.design["blade.trough_depth"] + self.lip_head)

    @property
    def _trough_plan(self) -> float:
        return self.counted("blade.trough_length") * self.design["blade.trough_width"]

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

    def in_transit(self) -> dict[str, float]:
        return {"V_rim": self.transit_head, "V_siph": self.transit_siphon, "V_sheet": self.transit_sheet}

    def wet_parts(self) -> tuple[float, str]:
        sheet = 2 * self.design["blade.lip_width"] * self.fall
        return sheet + self._trough_plan, "both faces of the sheet, the trough"
