"""The reservoir and its water: volumes, water in transit, losses, room for what comes back."""

from __future__ import annotations

from collections.abc import Callable

from brimwork.design.follows.chain import Chain, Found, result
from brimwork.design.typed.known import Unknown
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError

SAME_LEVEL = 0.003  # m: two levels nearer than this count as one, for overflow and blocks are set within 3 mm on site: common practice, as the steps say


class Water(Chain):
    """Reservoir and water balance of a design."""

    @result
    def block_plan(self):
        d = self.design
        along, across = d["reservoir.blocks_along"] * d["reservoir.block_length"], d["reservoir.blocks_across"] * d["reservoir.block_width"]
        return Found("A_b", along * across, f"blocks of {QUANTITIES['L'].metric_text(along, None)} by {QUANTITIES['L'].metric_text(across, None)} together")

    @result
    def water_area(self):
        return self._work("water area", A_b=self.block_plan, n_v=self.design["reservoir.void_fraction"])

    @result
    def static_volume(self):
        return self._work("water up to a level", A_b=self.block_plan, n_v=self.design["reservoir.void_fraction"], h=self.design["reservoir.static_level"])

    @result
    def usable(self):
        d = self.design
        return self._work("usable water above the pump limit", A_b=self.block_plan, n_v=d["reservoir.void_fraction"], h_static=d["reservoir.static_level"],
                          h_min=d["reservoir.lowest_level"])  # fmt: skip

    @result
    def turnover(self):
        return self._work("turnover time", V_use=self.usable, Q=self.flow_wanted)

    # --- water in transit and balance

    @result
    def transit_pipe(self):
        if self.design["pipe.check_valve"] == "yes":
            return Found("V_pc", 0.0, "a check valve keeps the pipe full")
        return self._work("water in a pipe", d_pipe=self.design["pipe.bore"], L_pipe=self.design["pipe.length"])

    @result
    def transit_stone(self):
        d = self.design
        return self._work("water on its way through the stone", A_run=d["catch.wet_area"], t_st=d["catch.stone_thickness"], n_hold=d["catch.hold_up"])

    @result
    def transit_by_model(self):
        terms = dict.fromkeys(("V_rim", "V_siph", "V_film", "V_sheet"), 0.0) | self.in_transit()
        return self._work("water in transit", **terms, V_pc=self.transit_pipe, V_hold=self.transit_stone)

    @result
    def transit(self):
        """Water in transit: from the drop that was seen when the pump started, else by the model."""
        if "measured.start_drop" in self.design.values:
            said = self._predicted("V_tr", lambda: self.transit_by_model)
            return Found("V_tr", self.design["measured.start_drop"] * self.water_area, f"from the measured drop of the level; {said}")
        return self.working("transit_by_model")

    @result
    def start_drop(self):
        return self._work("drop of the level on start", V_tr=self.transit, A_b=self.block_plan, n_v=self.design["reservoir.void_fraction"])

    @result
    def wet_area(self):
        area, words = self.wet_parts()
        return Found("A_wet", area + self.design["catch.wet_area"], f"{words} and wet stone together")

    def _climate(self) -> dict[str, float]:
        d = self.design
        return {"K_E": d["climate.coefficient"], "E_0": d["climate.evaporation"], "A_wet": self.wet_area, "Q_splash": d["climate.splash"]}

    @result
    def daily_loss(self):
        return self._work("loss of water", **self._climate())

    @result
    def days(self):
        return self._work("days without top-up", V_use=self.usable, V_tr=self.transit, **self._climate())

    @result
    def drainback_room(self):
        d = self.design
        return self._work("room from the running level up to the overflow", A_b=self.block_plan, n_v=d["reservoir.void_fraction"],
                          h_over=d["reservoir.overflow_level"], h_run=d["reservoir.running_level"])  # fmt: skip

    @result
    def drainback(self):
        d = self.design
        return self._work("drain-back ratio", A_b=self.block_plan, n_v=d["reservoir.void_fraction"], h_over=d["reservoir.overflow_level"],
                          h_run=d["reservoir.running_level"], V_tr=self.transit)  # fmt: skip

    @property
    def two_running_levels(self) -> tuple[float, float] | None:
        """The running level (m) that the design gives, and the one at which the static level and the start drop leave the water, where they differ."""
        try:
            given, found = self.design["reservoir.running_level"], self.design["reservoir.static_level"] - self.start_drop
        except (Unknown, InputError):
            return None
        return (given, found) if abs(found - given) > SAME_LEVEL else None

    def running_levels_said(self, said: Callable[[float], str]) -> str:
        """Both running levels in a sentence, each length as `said` writes it; nothing where they are one."""
        if not self.two_running_levels:
            return ""
        given, found = map(said, self.two_running_levels)
        return f"Running level above the floor: given {given}; from static level and start drop {found}."

    @property
    def settles(self) -> str:
        """That the design gives another running level than the one at which the water settles, and when that can be."""
        if not self.two_running_levels:
            return ""
        given, found = self.two_running_levels
        why = (
            "a top-up valve holds it there, and adds water that must have room when the pump stops"
            if given > found
            else "less water is in it than the static level says"
        )
        both = self.running_levels_said(self._both).removesuffix(".")
        return f"{both}; the given one counts here, and holds only where {why}"

    def _both(self, level: float) -> str:
        here, there = QUANTITIES["h"].metric_text(level), QUANTITIES["h"].us_text(level)
        return f"{there} ({here})" if self.design.region == "US" else f"{here} ({there})"

    @result
    def day_share(self):
        return self._work("share of the usable water lost in a day", Q_loss=self.daily_loss, V_use=self.usable)

    @result
    def overflow_flow(self):
        d = self.design
        return self._work(
            "flow that an overflow pipe can carry", C_d=d["assumptions.overflow_discharge"], d_out=d["overflow_pipe.bore"], H_o=d["overflow_pipe.head"]
        )

    @result
    def overflow_ratio(self):
        d = self.design
        return self._work("overflow ratio", Q_over=self.overflow_flow, k_run=d["assumptions.run_off"], A_catch=d["overflow_pipe.catch_area"], i_rain=d["overflow_pipe.rain"],
                          Q_feed=d["overflow_pipe.feed"])  # fmt: skip
