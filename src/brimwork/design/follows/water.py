"""The reservoir and its water: volumes, water in transit, losses, room for what comes back."""

from __future__ import annotations

import math
from collections.abc import Callable

from brimwork.design.follows.agreeing import SAME_LEVEL, settled
from brimwork.design.follows.chain import Chain, Found, result
from brimwork.design.follows.levels import KnownLevel, levels
from brimwork.design.typed.known import Unknown
from brimwork.nomenclature import QUANTITIES
from brimwork.topics.siphons import siphon_flow
from brimwork.units import InputError, write

AWAY = 25.0  # W/(m2 K) that a wet surface gives off for each degree that it is warmer, by air and by drying: judgement, 15 to 40
PEAK = 3.0  # times the day's mean that water is lost in the hours of strongest sun: judgement
ROUGH_PIPE, INTO_PIPE = 0.03, 0.5  # friction factor of a dirty drain pipe, loss of its inlet: common practice, no source


class Water(Chain):
    """Reservoir and water balance of a design."""

    @result
    def block_plan(self):
        d = self.design
        along, across = d["reservoir.blocks_along"] * d["reservoir.block_length"], d["reservoir.blocks_across"] * d["reservoir.block_width"]
        return Found("A_b", along * across, f"blocks of {QUANTITIES['L'].metric_text(along, None)} by {QUANTITIES['L'].metric_text(across, None)} together")

    @property
    def voids(self) -> float:
        """Share of the blocks' plan that is water: from the water that filled them up to the static level, where that was measured, else as the design has it."""
        filled = self.design.given("measured.filled")
        return filled.value / (self.block_plan * self.design["reservoir.static_level"]) if filled else self.design["reservoir.void_fraction"]

    @result
    def water_area(self):
        return self._work("water area", A_b=self.block_plan, n_v=self.voids)

    @result
    def static_volume(self):
        """All of it, whatever it can be used for."""
        return self._work("water up to a level", A_b=self.block_plan, n_v=self.voids, h=self.design["reservoir.static_level"])

    @result
    def usable(self):
        d, low = self.design, self.pump_stops_at
        full = min(d["reservoir.static_level"], d["reservoir.overflow_level"]) if d.given("reservoir.overflow_level") else d["reservoir.static_level"]
        if full < low:
            raise InputError(
                f"the water stands at {write(full, 'mm')} above the floor and the pump stops at {write(low, 'mm')}: none of it is usable. "
                "Raise reservoir.static_level, or set reservoir.lowest_level or reservoir.cut_out_level lower"
            )
        return self._work("usable water above the pump limit", A_b=self.block_plan, n_v=self.voids, h_static=full, h_min=low)

    @property
    def pump_stops_at(self) -> float:
        """The higher of the lowest level at which the pump may run and that of its cut-out, m above the floor."""
        d, cut_out = self.design, self.design.given("reservoir.cut_out_level")
        stops = cut_out.value if cut_out and not (d.given("pump.cut_out") and d["pump.cut_out"] == "no") else 0.0
        return max(d["reservoir.lowest_level"], stops)

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
        return self._work("drop of the level on start", V_tr=self.transit, A_b=self.block_plan, n_v=self.voids)

    @result
    def wet_area(self):
        area, words = self.wet_parts()
        return Found("A_wet", area + self.design["catch.wet_area"], f"{words} and wet stone together")

    def _climate(self) -> dict[str, float]:
        d = self.design
        return {"K_E": d["climate.coefficient"], "E_0": d["climate.evaporation"], "A_wet": self.wet_area, "Q_splash": self.lost_otherwise}

    @property
    def lost_otherwise(self) -> float:
        """Water (m3/s) lost by splash, and by a leak that was measured."""
        leak = self.design.given("measured.leak")
        return self.design["climate.splash"] + (max(leak.value, 0.0) * self.water_area if leak else 0.0)

    @result
    def daily_loss(self):
        return self._work("loss of water", **self._climate())

    @result
    def days(self):
        return self._work("days without top-up", V_use=self.usable, V_tr=self.transit, **self._climate())

    @result
    def drainback_room(self):
        d = self.design
        return self._work("room from the running level up to the overflow", A_b=self.block_plan, n_v=self.voids,
                          h_over=d["reservoir.overflow_level"], h_run=self.highest_running)  # fmt: skip

    @property
    def highest_running(self) -> float:
        """The higher of the running level that is given and the one at which the water settles, or is held by a top-up valve; of one that was measured, that."""
        highest, over = self.counted("reservoir.running_level"), self.design["reservoir.overflow_level"]
        if highest > over:
            raise InputError(
                f"the water runs at {write(highest, 'mm')} above the floor and the overflow stands at {write(over, 'mm')}: there is no room for what comes back. "
                "Set reservoir.running_level or reservoir.static_level lower"
            )
        return highest

    @result
    def drainback(self):
        d = self.design
        return self._work("drain-back ratio", A_b=self.block_plan, n_v=self.voids, h_over=d["reservoir.overflow_level"],
                          h_run=self.highest_running, V_tr=self.transit)  # fmt: skip

    @property
    def two_running_levels(self) -> tuple[float, float] | None:
        """The running level (m) that the design gives, and the one at which the static level and the start drop leave the water, where they differ."""
        try:
            given, found = self.design["reservoir.running_level"], settled(self)
        except (Unknown, InputError):
            return None
        return (given, found) if abs(found - given) > SAME_LEVEL else None

    @property
    def running_shown(self) -> float | None:
        """The one running level (m above the floor) that drawings and tables show: the one at which the water settles, else the given one; of one that was measured, that."""
        given, static = self.design.given("reservoir.running_level"), self.design.given("reservoir.static_level")
        if given and given.basis == "measured" or not static:
            return given.value if given else None
        try:
            return settled(self)
        except (Unknown, InputError):
            return given.value if given else None

    def levels_shown(self) -> list[KnownLevel]:
        """The levels that are known, from the lowest up, with one running level."""
        known, running = levels(self.design), self.running_shown
        if running is None or not any(level.name == "reservoir floor" for level in known):
            return known
        rest = [level for level in known if level.name != "running water"]
        return sorted([*rest, KnownLevel("running water", self.level("reservoir floor") + running, True)], key=lambda level: level.height)

    def levels_listed(self) -> list[KnownLevel]:
        """The levels of the datum table."""
        return self.levels_shown()

    def running_levels_said(self, said: Callable[[float], str]) -> str:
        """Both running levels in a sentence, each length as `said` writes it; nothing where they are one."""
        if not self.two_running_levels:
            return ""
        given, found = map(said, self.two_running_levels)
        typed = self.design.given("reservoir.running_level")
        measured = typed is not None and typed.basis == "measured"
        shown = "the measured one" if measured else "the second"
        return f"Running level above the floor: given {given}; from static level and start drop {found}. Drawings and tables show {shown}."

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
        given_said, found_said = map(self._both, self.two_running_levels)
        both = f"Running level above the floor: given {given_said}; from static level and start drop {found_said}"
        return f"{both}; the higher counts here, and the given one holds only where {why}"

    def _both(self, level: float) -> str:
        here, there = QUANTITIES["h"].metric_text(level), QUANTITIES["h"].us_text(level)
        return f"{there} ({here})" if self.design.region == "US" else f"{here} ({there})"

    @property
    def warming(self) -> float:
        """How much warmer (K) the water stays for the pump's power: all of it ends as heat, and leaves through the wet surface."""
        return self.design["pump.power"] / (AWAY * self.wet_area)

    @property
    def top_up_share(self) -> float:
        """Flow of the top-up valve, open, over the loss in the hours of strongest sun; infinite where there is none."""
        if self.design.given("reservoir.top_up_level") is None:
            return math.inf
        return self.design["overflow_pipe.stuck_flow"] / (PEAK * self.daily_loss)

    @result
    def day_share(self):
        return self._work("share of the usable water lost in a day", Q_loss=self.daily_loss, V_use=self.usable)

    @property
    def overflow_run(self) -> float | None:
        """Length (m) of the overflow pipe: as given, and never less than the way to where it ends; None where neither is known."""
        placed = all(self.design.given(f"overflow_pipe.end_{way}") for way in ("along", "across"))
        return self.counted("buying.overflow_run") if placed or self.design.given("buying.overflow_run") else None

    @result
    def overflow_flow(self):
        d = self.design
        head = self.counted("overflow_pipe.head")
        if head <= 0:
            raise InputError(
                f"the water stands {write(head, 'mm')} over the middle of the overflow pipe when it spills over the liner's edge: no head is left. "
                "Raise levels.liner_edge, or set reservoir.overflow_level lower"
            )
        inlet = self._work("flow that an overflow pipe can carry", C_d=d["assumptions.overflow_discharge"], d_out=d["overflow_pipe.bore"], H_o=head)
        run = self.overflow_run
        if run is None:
            return inlet
        fall = d.given("overflow_pipe.fall")
        along = siphon_flow(f=ROUGH_PIPE, L_pipe=run, d_pipe=d["overflow_pipe.bore"], K=INTO_PIPE, H_s=head + (fall.value if fall else 0.0))
        if along >= inlet.result:
            return inlet
        said = f"with a fall of {write(fall.value, 'mm')}" if fall else "level, since nobody gave its fall"
        return Found("Q_over", along, f"the pipe over its run of {write(run, 'm')}, {said}, carries less than its inlet ({write(inlet.result, 'L/min')})")

    @result
    def overflow_ratio(self):
        d = self.design
        return self._work("overflow ratio", Q_over=self.overflow_flow, k_run=d["assumptions.run_off"], A_catch=self.counted("overflow_pipe.catch_area"), i_rain=d["overflow_pipe.rain"],
                          Q_feed=d["overflow_pipe.stuck_flow"])  # fmt: skip
