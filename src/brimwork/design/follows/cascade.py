"""The stepped cascade with a rill: what it adds to the chain."""

from __future__ import annotations

from brimwork.design.follows.chain import Found, result
from brimwork.design.follows.sheet import SheetChain


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
        return self.design["cascade.header_area"] + self.design["cascade.steps"] * self.design["cascade.pool_area"]

    @property
    def delivery(self) -> float:
        return self.level("header lip")

    @result
    def flow_wanted(self):
        return self._work("flow for a wetted edge", q=self.design["flow.for_each_metre"], b=self.design["cascade.width"])

    @result
    def step_head(self):
        return self._head(self.design["cascade.width"])

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
        return self.design["cascade.edge"]

    @result
    def fall(self):
        return Found("h_fall", self.design["cascade.step_fall"], "from the lip of a step to the water of the next pool")

    @result
    def tread_share(self):
        return self._work("tread over throw", w_tread=self.design["cascade.tread"], x_throw=self.throw)

    # --- down the rill

    @result
    def normal_depth(self):
        d = self.design
        return self._work("normal depth in a rill", Q=self.flow_wanted, n_Manning=d["cascade.rill_roughness"], w_rill=d["cascade.rill_width"],
                          S_rill=d["cascade.rill_slope"])  # fmt: skip

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
        return Found("V_sheet", self.design["cascade.steps"] * each, "the falling sheets of all steps")

    @result
    def transit_siphon(self):
        if self.design["pipe.check_valve"] == "yes" or self.design["cascade.feed"] == "top":
            return Found("V_siph", 0.0, "the header keeps its water when the pump stops")
        return Found("V_siph", self.design["cascade.header_volume"], "the whole header, which empties through its bottom feed")

    def in_transit(self) -> dict[str, float]:
        return {"V_rim": self.transit_pools + self.transit_rill, "V_siph": self.transit_siphon, "V_sheet": self.transit_sheet}

    def wet_parts(self) -> tuple[float, str]:
        d = self.design
        sheets = 2 * d["cascade.steps"] * d["cascade.width"] * self.fall
        rill = d["cascade.rill_width"] * d["cascade.rill_length"]
        return self._pools + sheets + rill, "header, pools, both faces of the sheets, rill"
