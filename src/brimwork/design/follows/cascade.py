"""The stepped cascade with a rill: what it adds to the chain."""

from __future__ import annotations

import math

from brimwork.design.follows.chain import GRAVITY, Found, result
from brimwork.design.follows.levels import KnownLevel
from brimwork.design.follows.sheet import SheetChain
from brimwork.design.typed.known import Unknown
from brimwork.topics.rill import rill_flow
from brimwork.units import write


class CascadeChain(SheetChain):
    """Water runs down a rill and over equal steps, each a level lip with a pool at its foot, into the reservoir."""

    @property
    def edge_head(self) -> float:
        return self.step_head

    def edge(self) -> tuple[float, float, float]:
        """Header and pools as one: they rise together, as high as the head over their lips."""
        return self._pools, self.design["cascade.width"], self.edge_coefficient

    @property
    def _pools(self) -> float:
        return self.design["cascade.header_area"] + self.design["cascade.steps"] * self.counted("cascade.pool_area")

    @property
    def delivery(self) -> float:
        return self.level("header lip")

    @result
    def flow_wanted(self):
        return self._work("flow for a wetted edge", q=self.design["flow.for_each_metre"], b=self.design["cascade.width"])

    @result
    def step_head(self):
        return self._head(self.design["cascade.width"])

    @property
    def trough_section(self) -> float:
        """Across the header, as deep as its water and as long, towards its lip, as its surface is over its width."""
        d = self.design
        return d["cascade.header_area"] / d["cascade.width"] * (d["cascade.header_volume"] / d["cascade.header_area"] + self.step_head)

    # --- over the steps

    @property
    def foot(self) -> float:
        """Level in m of the bed where steps and rill end."""
        d = self.design
        run = d["cascade.rill_length"]
        return self.level("header lip") - d["cascade.steps"] * d["cascade.step_fall"] - (run * d["cascade.rill_slope"] if run else 0.0)

    @property
    def foot_over_box(self) -> float:
        """How far (m) that end lies above the edge of the box."""
        return self.foot - self.box_top

    @property
    def apron(self) -> float:
        """The edge beside the steps."""
        return self.design["cascade.splash_edge"]

    @result
    def fall(self):
        return Found("h_fall", self.design["cascade.step_fall"], "from the lip of a step to the water of the next pool")

    def levels_listed(self) -> list[KnownLevel]:
        """With the top of every step and the lower end of the rill, for who builds them."""
        found = self.levels_shown()
        try:
            flight = self.bodies.flight
        except Unknown:
            return found
        more = [KnownLevel(f"top of step {i} from the header", lip, False) for i, (_, lip) in enumerate(flight.lips[1:], start=1)]
        end = [KnownLevel("lower end of the rill", self.foot, False)] if flight.rill else []
        return sorted([*found, *more, *end], key=lambda level: level.height)

    # --- the last fall, over the edge of the box

    @result
    def last_fall(self):
        return Found("h_fall", max(self.geometry.last_fall, 0.0), "from the end of steps and rill down to the stone, or to the water where that stands higher")

    @property
    def _end_speed(self) -> float:
        """Speed (m/s) of the water where it leaves steps or rill."""
        d = self.design
        return self.flow_wanted / (d["cascade.rill_width"] * self.normal_depth) if d["cascade.rill_length"] else self.brink_speed

    @result
    def last_throw(self):
        if not self.last_fall:
            return Found("x_throw", 0.0, "nothing falls there")
        return self._work("throw of a free sheet or jet", v_b=self._end_speed, h_fall=self.last_fall)

    @result
    def last_sheet(self):
        if not self.last_fall:
            return Found("V_sheet", 0.0, "nothing falls there")
        return self._work("water in the falling sheet", Q=self.flow_wanted, t_fall=self._work("time of fall", h_fall=self.last_fall).result)

    @result
    def apron_share(self):
        """Beside the steps, and where the last fall lands, whichever is narrower."""
        d, steps = self.design, self.apron / self.apron_wanted
        if not self.last_fall:
            return Found("r_apron", steps, "the edge beside the steps over what water and wind want")
        wide = d["cascade.rill_width"] if d["cascade.rill_length"] else d["cascade.width"]
        wanted = self._work(
            "apron that the water wants", k_wind=d["assumptions.wind_factor"], x_throw=self.last_throw, k_splash=d["catch.splash_factor"], h_fall=self.last_fall
        ).result
        last = max(min(d["catch.apron"], self.geometry.catch_half[1] - wide / 2), 0.0) / wanted
        where = "beside the steps" if steps <= last else "where the last fall lands"
        return Found("r_apron", min(steps, last), f"what catches the splash over what water and wind want, {where}")

    @result
    def local_pressure(self):
        """Under the header full of water, with all that carries it, or under the base where that presses harder."""
        d = self.design
        water = self.water["rho"] * d["cascade.header_volume"] / d["cascade.header_area"]
        under = GRAVITY * (max(self.level("header lip"), 0.0) * d["assumptions.wall_density"] + water)
        return Found("p_max", max(under, self.base_pressure), "under the header full of water, with what carries it, or under the base")

    def stands_up_to(self) -> tuple[float, float]:
        return self.level("header lip"), min(0.0, self.level("stone top"))

    # --- the header, as it stands by itself: its steps may be set dry against it

    @result
    def header_mass(self):
        """Of what carries the header, from the paving to its lip, without water."""
        d = self.design
        volume = d["cascade.header_area"] * max(self.level("header lip"), 0.0)
        return Found("m_v", volume * d["assumptions.wall_density"], f"the header's plan from the paving to its lip, {write(volume, 'm3')}")

    @property
    def _header_sides(self) -> tuple[float, float]:
        """The narrower and the wider side (m) of the header."""
        wide = self.design["cascade.width"]
        narrow, wider = sorted((wide, self.design["cascade.header_area"] / wide))
        return narrow, wider

    @result
    def tipping(self):
        """Somebody who leans on it, over its narrower side."""
        high = self.level("header lip")
        if high <= 0:
            return Found("f_tip", math.inf, "the header stands no higher than the paving")
        return self._work("tipping factor", F_w=GRAVITY * self.header_mass, B_base=self._header_sides[0], F_push=self.push, h_push=high)

    @result
    def tipping_in_wind(self):
        high, (narrow, wider) = self.level("header lip"), self._header_sides
        if high <= 0:
            return Found("f_wind", math.inf, "the header stands no higher than the paving")
        return self._work("tipping factor in wind", F_w=GRAVITY * self.header_mass, B_base=narrow, p_wind=self.wind_pressure,
                          c_f=self.design["site.force_coefficient"], b_face=wider, h_face=high)  # fmt: skip

    @result
    def tread_share(self):
        return self._work("tread over throw", w_tread=self.design["cascade.tread"], x_throw=self.throw)

    # --- down the rill

    @result
    def normal_depth(self):
        d = self.design
        return self._work("normal depth in a rill", Q=self.flow_wanted, n_Manning=d["cascade.rill_roughness"], w_rill=d["cascade.rill_width"],
                          S_rill=d["cascade.rill_slope"])  # fmt: skip

    @property
    def rill_notes(self) -> tuple[str, ...]:
        """What must be said of the water in the rill: near the Froude number of 1, shooting, or too thin for Manning's law."""
        d = self.design
        return (
            rill_flow(self.flow_wanted, d["cascade.rill_width"], d["cascade.rill_slope"], d["cascade.rill_roughness"]).notes if d["cascade.rill_length"] else ()
        )

    @result
    def freeboard(self):
        return self._work("freeboard of a rill", h_side=self.design["cascade.rill_wall"], y_n=self.normal_depth, h_bend=0.0)

    # --- water in transit

    @result
    def transit_pools(self):
        return Found("V_rim", self._pools * self.step_head, "header and pools by the head over their lips")

    @result
    def transit_rill(self):
        d = self.design
        return self._work("water in a rill", w_rill=d["cascade.rill_width"], y_n=self.normal_depth, L_rill=d["cascade.rill_length"])

    @result
    def transit_sheet(self):
        each = self._work("water in the falling sheet", Q=self.flow_wanted, t_fall=self.fall_time).result
        return Found("V_sheet", self.design["cascade.steps"] * each + self.last_sheet, "the falling sheets of all steps and of the last fall")

    @result
    def transit_siphon(self):
        if self.design["pipe.check_valve"] == "yes" or self.design["cascade.feed"] == "top":
            return Found("V_siph", 0.0, "the header keeps its water when the pump stops")
        return Found("V_siph", self.design["cascade.header_volume"], "the whole header, which empties through its bottom feed")

    def in_transit(self) -> dict[str, float]:
        return {"V_rim": self.transit_pools + self.transit_rill, "V_siph": self.transit_siphon, "V_sheet": self.transit_sheet}

    def wet_parts(self) -> tuple[float, str]:
        d = self.design
        last = d["cascade.rill_width"] if d["cascade.rill_length"] else d["cascade.width"]
        sheets = 2 * d["cascade.steps"] * d["cascade.width"] * self.fall + 2 * last * self.last_fall
        rill = d["cascade.rill_width"] * d["cascade.rill_length"]
        return self._pools + sheets + rill, "header, pools, both faces of the sheets, rill"
