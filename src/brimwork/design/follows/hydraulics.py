"""Pipe and pump: speed, friction, lift, where the two curves meet, what the label says."""

from __future__ import annotations

from collections.abc import Callable
from typing import cast

from brimwork import tables
from brimwork.design.follows import pipework
from brimwork.design.follows.altered import Altered
from brimwork.design.follows.chain import Chain, Found, result
from brimwork.design.follows.kept import kept
from brimwork.design.typed.design import Design
from brimwork.design.typed.known import Unknown
from brimwork.nomenclature import QUANTITIES
from brimwork.topics import pumps
from brimwork.units import InputError, write


class Hydraulics(Chain):
    """Pipe and pump of a design."""

    @result
    def speed_wanted(self):
        return self._work("speed in a pipe", Q=self.flow_wanted, d_pipe=self.design["pipe.bore"])

    @result
    def reynolds(self):
        return self._work("Reynolds number in a pipe", v=self.speed_wanted, d_pipe=self.design["pipe.bore"], nu=self.water["nu"])

    @result
    def friction(self):
        found = self._losses(self.flow_wanted).friction
        law = self.design["pipe.friction_law"]
        how = (
            f"ribbed hose, {tables.RIBBED_HOSE.basis}"
            if law == "ribbed hose"
            else f"{found.regime} flow, by {law}"
            if law != found.regime
            else "the friction factor that Hazen-Williams stands for"
        )
        return Found("f", found.f, how)

    @property
    def friction_notes(self) -> tuple[str, ...]:
        """What must be said of the friction factor at the flow wanted."""
        return self._losses(self.flow_wanted).friction.notes

    @kept
    def stretch(self) -> pipework.Stretch:
        """The hose from the pump."""
        d = self.design
        return self._hose(d["pipe.bore"], d["pipe.length"], d["pipe.fittings"])

    def _hose(self, bore: float, length: float, fittings: float) -> pipework.Stretch:
        """A hose as the design's friction law takes it: Blasius is for a smooth one, a ribbed one has a friction factor of its own."""
        law = self.design["pipe.friction_law"]
        if law == "ribbed hose":
            return pipework.Stretch(bore, length, fittings, f=tables.RIBBED_HOSE.value)
        if law == "Hazen-Williams":
            return pipework.Stretch(bore, length, fittings, C_HW=self.design["pipe.hazen_williams"])
        return pipework.Stretch(bore, length, fittings, 0.0 if law == "Blasius" else self.design["pipe.roughness"])

    def _losses(self, flow: float) -> pipework.Losses:
        return pipework.losses(self.stretch, flow, self.water["nu"], self._law)

    @property
    def _law(self) -> str:
        law = self.design["pipe.friction_law"].lower()
        return "colebrook" if law in ("ribbed hose", "hazen-williams") else law

    @result
    def friction_head(self):
        return self._work("head lost to friction", f=self.friction, L_pipe=self.design["pipe.length"], d_pipe=self.design["pipe.bore"], v=self.speed_wanted)

    @result
    def fittings_head(self):
        return self._work("head lost in fittings", K=self.design["pipe.fittings"], v=self.speed_wanted)

    @result
    def static_lift(self):
        if self.delivery + self.edge_head < self.level("lowest water"):
            raise InputError(
                f"the water is lifted to {write(self.delivery, 'mm')}, below the lowest water at {write(self.level('lowest water'), 'mm')}, both to the paving: look at the levels"
            )
        return self._work("static lift to a rim", z_rim=self.delivery, H=self.edge_head, z_low=self.level("lowest water"))

    @result
    def head_wanted(self):
        return self._work("total dynamic head from its parts", z_s=self.static_lift, h_f=self.friction_head, h_m=self.fittings_head)

    @result
    def loss_share(self):
        return self._work("share of the head lost on the way", z_s=self.static_lift, h_f=self.friction_head, h_m=self.fittings_head)

    @kept
    def pump(self) -> pumps.Pump:
        """The maker's curve where it was given, else the parabola through the two label numbers."""
        if "pump.curve" in self.design.values:
            return pumps.TabulatedPump(self.design["pump.curve"])
        return pumps.LabelPump(self.design["pump.shut_off_head"], self.design["pump.maximum_flow"])

    def head_needed(self, flow: float) -> float:
        """System curve: head in m for a flow in m3/s, at the lowest water."""
        return pipework.head_needed(flow, self.static_lift, (self.stretch,), self.water["nu"], self._law)

    @result
    def pump_head_at_flow_wanted(self):
        pump, flow = self.pump, self.flow_wanted
        if isinstance(pump, pumps.TabulatedPump):
            return Found("H_pump", pump.head(flow), f"from the maker's curve: {pump.said(flow, self.design.region == 'US')}")
        head = pump.head(flow) if flow < pump.Q_max else 0.0
        return Found("H_pump", head, "from the parabola through the label's two numbers, an approximation")

    @kept
    def duty(self) -> pumps.Duty:
        return pumps.duty_point(self.pump, self.head_needed)

    @result
    def duty_flow(self):
        if "measured.flow" in self.design.values:
            return Found("Q_duty", self.design["measured.flow"], f"measured with a bucket; {self._predicted('Q_duty', lambda: self.duty.Q)}")
        return Found("Q_duty", self.duty.Q, "where the pump's curve meets the head that the pipe asks for, valve open, water at its lowest")

    def _predicted(self, letter: str, number: Callable[[], float]) -> str:
        """What the model says of a measured value, where it can."""
        try:
            return f"the model says {QUANTITIES[letter].metric_text(number())}"
        except (Unknown, InputError):
            return "the model cannot say, for want of values"

    @result
    def flow_sent(self):
        """The flow that really runs: what the pump sends, throttled to the flow wanted where a valve can."""
        valve = self.design.given("pipe.valve")
        if valve and valve.value == "yes" and self.duty_flow > self.flow_wanted:
            return Found("Q", self.flow_wanted, "throttled by the valve to the required flow")
        return Found("Q", self.duty_flow, "what the pump sends, with nothing that throttles it")

    @kept
    def coming(self) -> Chain:
        """The chain of the same design at the flow that really comes, in place of the flow wanted."""
        each = self.design["flow.for_each_metre"] * self.flow_sent / self.flow_wanted
        return type(self)(cast(Design, Altered(self.design, "flow.for_each_metre", each)))  # it answers as a design does

    @property
    def coming_said(self) -> str:
        """The flow at which a check is graded, and the one wanted."""
        sent, wanted = QUANTITIES["Q"], self.flow_wanted
        text = sent.us_text if self.design.region == "US" else sent.metric_text
        return f"at the flow that comes, {text(self.flow_sent)}; required {text(wanted)}"

    @property
    def least_film(self) -> float:
        """Flow for each metre of edge (m2/s) at the flow that comes."""
        return self.coming.design["flow.for_each_metre"]

    @result
    def duty_head(self):
        return Found("H_t", self.duty.H, "the head at the flow that the model finds")

    @result
    def flow_ratio(self):
        return self._work("duty flow over required flow", Q_duty=self.duty_flow, Q_req=self.flow_wanted)

    @result
    def duty_speed(self):
        return self._work("speed in a pipe", Q=self.duty_flow, d_pipe=self.design["pipe.bore"])

    @result
    def lift_share(self):
        return self._work("static lift over shut-off head", z_s=self.static_lift, H_0=self.pump.head(0.0))

    @result
    def nameplate(self):
        pump, power = self.pump, self.design["pump.power"]
        if not isinstance(pump, pumps.LabelPump):
            return Found("r_plate", pumps.best_power_of(pump, self.water["rho"]) / power, "the best point of the maker's curve over the power taken in")
        return self._work("nameplate ratio", rho=self.water["rho"], Q_max=pump.Q_max, H_0=pump.H_0, P_in=power)

    @property
    def label(self) -> str:
        """What the pump's label says of itself, in a sentence."""
        if "pump.curve" in self.design.values:
            return ""
        text = str(self.design.values["pump.maximum_flow"].text) if "pump.maximum_flow" in self.design.values else ""
        return pumps.nameplate_check(text, self.design["pump.shut_off_head"], self.design["pump.power"], self.water["rho"]).sentence
