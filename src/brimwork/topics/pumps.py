"""Pumps: the head and the power that a pump gives, the flow at which pump and pipe agree, and whether a label can be true."""

from __future__ import annotations

import bisect
import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple, Protocol

from brimwork import units
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import power_of_flow, pressure_as_head
from brimwork.roots import solve
from brimwork.sources import BERNOULLI, CRANE, EPANET_MANUAL, MAURER, OPENSTAX
from brimwork.steps import Law, Optimum, Rearrange, Solve, Step, Take
from brimwork.units import InputError

# --- the pump's own curve -----------------------------------------------------------------------------------------------------------

pump_curve = Formula(
    name="pump curve from two label numbers",
    result="H_pump",
    equals="H_0*(1 - (Q/Q_max)**2)",
    fitted="an approximation, for want of the maker's curve: a parabola through the two numbers on the label",
    steps=(
        Take("as an approximation, let the head fall with the square of the flow", "H_pump = H_0 - c_pump*Q**2"),
        Take("it is used up at the greatest flow", "c_pump = H_0/Q_max**2"),
        Step("put it in"),
    ),
    published=(
        Published(
            "H_0=4 m, Q_max=80 L/min, Q=40 L/min",
            "3 m",
            1e-9,
            EPANET_MANUAL.at("s. 3.1, a curve from one point (from memory)"),
            note="there: 133 % of that head at no flow, twice that flow at no head",
        ),
    ),
    where=("Q < Q_max",),
    slips=(
        Slip("H_0*(1 - Q/Q_max)", "That is a straight line. Between the two label numbers real curves bulge above it."),
        Slip("H_0*(1 - Q/Q_max)**2", "Square the share of the flow first, then take it from one."),
        Slip("H_0", "That is the head at no flow. As soon as water moves the pump gives less."),
        Slip("H_0*(Q/Q_max)**2", "That is what the pump has lost. Take it from the shut-off head."),
    ),
    ranges={"Q": ("5 L/min", "28 L/min")},
    rises=("H_0", "Q_max"),
    falls=("Q",),
    remark="Use the maker's curve where there is one. 'Max' head and 'max' flow never occur together.",
)

duty_flow = Formula(
    name="duty flow",
    result="Q",
    equals="Q_max*sqrt((H_0 - z_s)/(H_0 + h_loss*(Q_max/Q_1)**2))",
    steps=(
        pump_curve,
        Take("losses grow with the square of the flow, so one flow at which they are known tells the rest", "h_lost = h_loss*(Q/Q_1)**2"),
        Law("the pump gives just what the flow needs", "H_pump = z_s + h_lost", BERNOULLI.at("section on steady flow"), holds="steady flow"),
        Rearrange("put in the curve of the pump, and the losses", "H_0*(1 - (Q/Q_max)**2) = z_s + h_loss*(Q/Q_1)**2"),
        Rearrange("what goes with the square of the flow comes to one side", "H_0 - z_s = (H_0 + h_loss*(Q_max/Q_1)**2)*(Q/Q_max)**2"),
        Solve("divide, and take the root"),
    ),
    fitted="both curves are parabolas: an approximation, for a first look",
    published=(
        Published(
            "H_0=82.467 ft, Q_max=20.2604 ft3/s, z_s=30 ft, h_loss=0.16034 ft, Q_1=1 ft3/s",
            "12.051 ft3/s",
            1e-3,
            MAURER.at("ch. 7, Ex 7.3"),
            note="the page's pump; its pipe by Darcy's law with the friction factor at 1 ft3/s, as there",
        ),
    ),
    where=("z_s < 0.95*H_0",),
    slips=(
        Slip("Q_max", "That is the flow with no lift and no pipe. Find where the pump line meets your own pipe line."),
        Slip("Q_max*sqrt((H_0 - z_s)/H_0)", "The lift is in, but pipe losses are not. Put both in: they share the pump's pressure."),
        Slip("Q_max*sqrt(H_0/(H_0 + h_loss*(Q_max/Q_1)**2))", "Pipe losses are in, but the lift is not. Take the height off the shut-off head first."),
        Slip("Q_max*(H_0 - z_s)/(H_0 + h_loss*(Q_max/Q_1)**2)", "The root is missing: both curves go with the square of the flow. Take the root."),
        Slip(
            "Q_max*sqrt((H_0 - z_s)/(H_0 + h_loss*Q_max/Q_1))",
            "You let the losses grow as the flow does. They grow with its square: square the ratio of flows.",
        ),
        Slip("Q_max*sqrt((H_0 + z_s)/(H_0 + h_loss*(Q_max/Q_1)**2))", "You added the lift. It takes head away from the pump: subtract it."),
        Slip("Q_1*sqrt((H_0 - z_s)/h_loss)", "You let the pump hold its shut-off head at every flow. Its own curve falls as well."),
    ),
    rises=("H_0", "Q_max", "Q_1"),
    falls=("z_s", "h_loss"),
)

# --- power --------------------------------------------------------------------------------------------------------------------------

hydraulic_power = Formula(
    name="hydraulic power",
    result="P_hyd",
    equals="rho*g*Q*H_pump",
    steps=(pressure_as_head, power_of_flow, Step("put the pressure in")),
    published=(
        Published(
            "rho=1000 kg/m3, g=9.8 m/s2, Q=40 L/s, H_pump=93.877551 m", "36.8 kW", 1e-3, OPENSTAX.at("module m42208, example"), note="0.92 MPa as a head"
        ),
    ),
    slips=(
        Slip("rho*Q*H_pump", "You left out gravity: power is weight lifted per second times height, and weight is mass times g."),
        Slip("g*Q*H_pump", "You left out the density: a cubic metre of water weighs a thousand kilograms."),
        Slip("rho*g*Q*H_0", "You took the shut-off head. At this flow the pump gives less. Put in the head at this flow.", also_given=("H_0",)),
    ),
    rises=("rho", "Q", "H_pump"),
)

power_taken_in = Formula(
    name="power that a pump takes in",
    result="P_in",
    equals="rho*g*Q*H_pump/eta_pump",
    steps=(
        hydraulic_power,
        Take("call the share of it that reaches the water the efficiency", "eta_pump = P_hyd/P_in"),
        Solve("solve for what goes in", of="eta_pump"),
    ),
    published=(Published("rho=62.364 lb/ft3, Q=100 US gal/min, H_pump=421 ft, eta_pump=0.7", "15.2 hp", 3e-3, CRANE.at("Ex 7.15"), note="brake power there"),),
    slips=(
        Slip("rho*g*Q*H_pump*eta_pump", "Real pumps take in more power than they give. Divide by the efficiency."),
        Slip("rho*g*Q*H_pump", "This is the power in the water. The meter reads the power going in; divide by the efficiency."),
        Slip("rho*Q*H_pump/eta_pump", "You left out gravity: power is weight lifted per second times height, and weight is mass times g."),
        Slip("g*Q*H_pump/eta_pump", "You left out the density: a cubic metre of water weighs a thousand kilograms."),
        Slip("rho*g*Q*H_pump*(1 - eta_pump)", "That is the share that is lost, of the power in the water. Divide the power in the water by the efficiency."),
    ),
    rises=("rho", "Q", "H_pump"),
    falls=("eta_pump",),
)

best_power = Formula(
    name="best hydraulic power of a label",
    result="P_best",
    equals="2/(3*sqrt(3))*rho*g*Q_max*H_0",
    fitted="an approximation, for want of the maker's curve: a parabola through the two numbers on the label",
    steps=(
        hydraulic_power,
        pump_curve,
        Optimum("the power is nothing at both ends; it is greatest between them", of="P_hyd", kind="max", relation="Q = Q_max/sqrt(3)"),
        Take("call that the best power", "P_best = P_hyd"),
        Step("put the flow in"),
    ),
    unpublished="the algebra of the parabola; both formulas that it starts from are checked",
    slips=(
        Slip("rho*g*Q_max*H_0", "You multiplied the greatest flow by the greatest head. They never occur together. Multiply by 0.385."),
        Slip("rho*g*Q_max*H_0/4", "That is the best of a straight line. For a parabola it is two over three roots of three, 0.385. Use 0.385."),
    ),
    rises=("rho", "Q_max", "H_0"),
)

nameplate_ratio = Formula(
    name="nameplate ratio",
    result="r_plate",
    equals="2/(3*sqrt(3))*rho*g*Q_max*H_0/P_in",
    fitted=best_power.fitted,
    steps=(best_power, Take("compare the most that the water can receive with what goes in", "r_plate = P_best/P_in"), Step("divide")),
    unpublished="the algebra of the parabola; both formulas that it starts from are checked",
    slips=(
        Slip(
            "rho*g*Q_max*H_0/P_in",
            "You multiplied the greatest flow by the greatest head, which never occur together. The verdict may stand, the number does not. Multiply by 0.385.",
        ),
        Slip("P_in/(2/(3*sqrt(3))*rho*g*Q_max*H_0)", "Upside down: what the water receives, over what goes in."),
        Slip("2/(3*sqrt(3))*rho*Q_max*H_0/P_in", "You left out gravity: power is weight lifted per second times height, and weight is mass times g."),
    ),
    rises=("rho", "Q_max", "H_0"),
    falls=("P_in",),
    remark="Above about 0.7 a digit or a unit on the label is wrong; small pumps reach 0.05 to 0.35 (common practice, no source).",
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------

POSSIBLE, IMPOSSIBLE, FEEBLE = 0.50, 0.70, 0.02  # limits of the nameplate ratio: judgement


class Pump(Protocol):
    """What `duty_point` needs: the greatest flow (m3/s) the curve reaches, and the head (m) at a flow."""

    @property
    def Q_max(self) -> float: ...

    def head(self, Q: float) -> float: ...


@dataclass(frozen=True)
class LabelPump:
    """A pump of which only the label is known: shut-off head H_0 (m), flow at no head Q_max (m3/s). Its curve is a parabola, an approximation."""

    H_0: float
    Q_max: float

    def head(self, Q: float) -> float:
        """Head in m at a flow in m3/s. Raises InputError for values that cannot be."""
        return pump_curve(H_0=self.H_0, Q_max=self.Q_max, Q=Q)


@dataclass(frozen=True)
class TabulatedPump:
    """A pump by points of the maker's curve, (flow m3/s, head m), read from no flow upwards.

    Between the points: a monotone cubic (Fritsch and Butland 1984, from memory; the same as SciPy's PchipInterpolator), which never rises
    between falling points. Never beyond the last point. The head may rise at first, as some pumps' does. Raises InputError unless the flows
    rise from zero and the heads, once they fall, fall all the way.
    """

    points: tuple[tuple[float, float], ...]

    def __post_init__(self) -> None:
        flows, heads = zip(*self.points) if self.points else ((), ())
        if len(flows) < 2 or flows[0] != 0 or not all(map(math.isfinite, (*flows, *heads))):
            raise InputError("a pump curve needs two points or more, the first at no flow: read its shut-off head off the chart as well")
        for (Q_a, H_a), (Q_b, H_b) in zip(self.points, self.points[1:]):
            if not Q_b > Q_a:
                raise InputError(f"the flows of a pump curve must rise: {Q_b:g} m3/s comes after {Q_a:g} m3/s. Give the points in order of flow")
            if H_b == H_a or H_b > H_a and Q_a >= self.Q_peak:
                raise InputError(
                    f"the head of a pump may rise at first, but must then fall as flow grows: {H_b:g} m comes after {H_a:g} m. "
                    f"Read the chart again at {Q_b:g} m3/s"
                )
        if self.Q_peak == self.Q_max:
            raise InputError("the heads of this pump curve only rise: read it further, to where the head falls")
        if heads[-1] < 0:
            raise InputError(f"the last head is {heads[-1]:g} m: end the curve where the head is still zero or more")

    @property
    def H_0(self) -> float:
        return self.points[0][1]

    @property
    def Q_max(self) -> float:
        return self.points[-1][0]

    @property
    def Q_peak(self) -> float:
        """The flow (m3/s) at which the head is greatest: 0 unless it rises at first."""
        return next((a[0] for a, b in zip(self.points, self.points[1:]) if b[1] < a[1]), self.Q_max)

    def straight(self, Q: float) -> float:
        """Head in m at a flow in m3/s by straight lines between the points, to compare with. Raises InputError beyond the last point."""
        (Q_a, H_a), (Q_b, H_b) = self._between(Q)
        return H_a + (H_b - H_a) * (Q - Q_a) / (Q_b - Q_a)

    def said(self, Q: float, us: bool = False) -> str:
        """How the head at a flow (m3/s) was read between the points, what straight lines would give, and whether the head rises at first."""
        head_unit, flow_unit = ("ft", "US gal/min") if us else ("m", "L/min")
        smooth, straight = self.head(Q), self.straight(Q)
        text = f"between the {len(self.points)} points given, a smooth curve that falls where they fall; straight lines would give "
        text += f"{units.write(straight, head_unit, 3)}, {(straight - smooth) / smooth:+.1%}" if smooth > 0 else units.write(straight, head_unit, 3)
        if self.Q_peak > 0:
            text += f"; the head rises at first, up to {units.write(self.Q_peak, flow_unit, 3)}: below that flow such a pump may hunt between two flows"
        return text

    def head(self, Q: float) -> float:
        """Head in m at a flow in m3/s. Raises InputError beyond the last point."""
        (Q_a, H_a), (Q_b, H_b) = self._between(Q)
        at = self.points.index((Q_b, H_b))
        width, t = Q_b - Q_a, (Q - Q_a) / (Q_b - Q_a)
        rise = H_b - H_a
        slope_a, slope_b = self._slopes[at - 1] * width, self._slopes[at] * width
        return H_a + t * (slope_a + t * (3 * rise - 2 * slope_a - slope_b + t * (slope_a + slope_b - 2 * rise)))

    def _between(self, Q: float) -> tuple[tuple[float, float], tuple[float, float]]:
        """The two points round a flow."""
        if not 0 <= Q <= self.Q_max:
            raise InputError(f"the pump's curve runs from 0 to {self.Q_max:g} m3/s, not to {Q:g} m3/s: read more points off the maker's chart")
        flows = [flow for flow, _ in self.points]
        at = min(bisect.bisect_right(flows, Q), len(flows) - 1)
        return self.points[at - 1], self.points[at]

    @cached_property
    def _slopes(self) -> list[float]:
        widths = [b[0] - a[0] for a, b in zip(self.points, self.points[1:])]
        steep = [(b[1] - a[1]) / width for (a, b), width in zip(zip(self.points, self.points[1:]), widths)]
        if len(steep) == 1:
            return steep * 2
        inner = [_weighted_harmonic_mean(*pair) for pair in zip(steep, steep[1:], widths, widths[1:])]
        return [_end_slope(*steep[:2], *widths[:2]), *inner, _end_slope(*steep[:-3:-1], *widths[:-3:-1])]


def _weighted_harmonic_mean(before: float, after: float, width_before: float, width_after: float) -> float:
    if before * after <= 0:  # at the peak of a curve that rises at first
        return 0.0
    weight_before, weight_after = 2 * width_after + width_before, width_after + 2 * width_before
    return (weight_before + weight_after) / (weight_before / before + weight_after / after)


def _end_slope(near: float, far: float, width_near: float, width_far: float) -> float:
    """Slope of the parabola through the last three points, kept within what leaves the curve as it goes between the last two."""
    slope = ((2 * width_near + width_far) * near - width_near * far) / (width_near + width_far)
    if slope * near <= 0:
        return 0.0
    return 3 * near if near * far < 0 and abs(slope) > abs(3 * near) else slope


class Duty(NamedTuple):
    """Where pump and system agree: flow (m3/s) and head (m)."""

    Q: float
    H: float


def duty_point(pump: Pump, head_needed: Callable[[float], float]) -> Duty:
    """The flow at which the pump gives the head that `head_needed` (m, of a flow in m3/s) asks for.

    Of a curve that rises at first, the flow past its peak if they meet there, which is where the pump settles. Raises InputError where the static
    lift is not below the pump's shut-off head, or where a tabulated curve ends before the two meet.
    """
    shut_off, lift = pump.head(0.0), head_needed(0.0)
    if not lift < shut_off:
        raise InputError(f"the static lift is {lift:.3g} m, but the pump stops at {shut_off:.3g} m: no water comes. Choose a pump with more head, or lift less")
    if pump.head(pump.Q_max) > head_needed(pump.Q_max):
        raise InputError(
            f"at the last point of its curve, {units.write(pump.Q_max, 'L/min')}, the pump still has more head than the system takes: "
            "read more points off the maker's chart, or throttle"
        )
    peak = getattr(pump, "Q_peak", 0.0)
    low, high = (peak, pump.Q_max) if pump.head(peak) > head_needed(peak) else (0.0, peak)
    Q = solve(lambda flow: pump.head(flow) - head_needed(flow), low, high)
    return Duty(Q, pump.head(Q))


def best_power_of(pump: Pump, rho: float) -> float:
    """The most hydraulic power (W) along a pump's curve, from 50 equal steps of flow and 50 finer ones about the best of them; rho in kg/m3."""

    def power(Q: float) -> float:
        return hydraulic_power(rho=rho, Q=Q, H_pump=max(pump.head(Q), 0.0))

    step = pump.Q_max / 50
    best = max((min(step * i, pump.Q_max) for i in range(51)), key=power)  # the last product may round a hair beyond the curve
    return max(power(min(max(best + step * i / 25, 0.0), pump.Q_max)) for i in range(-25, 26))


class NameplateCheck(NamedTuple):
    """A label judged: ratio as printed, "possible", "doubtful", "impossible" or "feeble"; other readings that would be possible, by unit; a sentence."""

    ratio: float
    verdict: str
    readings: dict[str, float]
    sentence: str


_MISREAD = {
    "L/min": ("L/h",),
    "L/h": ("L/min",),
    "US gal/min": ("US gal/h", "imp gal/min", "imp gal/h", "L/min"),
    "US gal/h": ("US gal/min", "imp gal/h", "imp gal/min", "L/h"),
    "imp gal/min": ("imp gal/h", "US gal/min", "US gal/h", "L/min"),
    "imp gal/h": ("imp gal/min", "US gal/h", "US gal/min", "L/h"),
}


def nameplate_check(printed_flow: str, H_0: float, P_in: float, rho: float = 998.2) -> NameplateCheck:
    """Whether a label can be true: its greatest flow as printed ("550 US gal/min"), greatest head H_0 (m), power taken in P_in (W), rho in kg/m3.

    The best hydraulic power of the parabola through the label's numbers, over the power taken in: up to 0.50 possible, up to 0.70 doubtful,
    above impossible; below 0.02 feeble (limits: judgement). For anything but possible, other units that are often mistaken for the printed
    one are tried. Raises InputError for a flow that cannot be read.
    """
    Q_max = units.read(printed_flow, "L/min", "printed flow")
    reading = units.parse(printed_flow)
    ratio = nameplate_ratio(Q_max=Q_max, H_0=H_0, P_in=P_in, rho=rho)
    verdict = _verdict(ratio)
    others = {unit: ratio * units.unit(unit).factor / units.unit(reading.unit).factor for unit in _misread(reading.unit)} if verdict != "possible" else {}
    readings = {unit: other for unit, other in others.items() if _verdict(other) == "possible"}
    return NameplateCheck(ratio, verdict, readings, _sentence(reading, ratio, verdict, readings))


def _verdict(ratio: float) -> str:
    if ratio < FEEBLE:
        return "feeble"
    return "possible" if ratio <= POSSIBLE else "doubtful" if ratio <= IMPOSSIBLE else "impossible"


def _misread(unit: str) -> tuple[str, ...]:
    factor = units.unit(unit).factor
    return next((others for name, others in _MISREAD.items() if math.isclose(units.unit(name).factor, factor, rel_tol=1e-9)), ())


_SAYS = {
    "possible": "which is possible",
    "doubtful": "which is more than small pumps reach",
    "impossible": "which no pump can do",
    "feeble": "which is too little for any sound pump",
}


def _sentence(reading: units.Reading, ratio: float, verdict: str, readings: dict[str, float]) -> str:
    said = f"As printed, {reading} at best puts {ratio:.2g} {'times' if ratio > 1 else 'of'} the power taken in into the water, {_SAYS[verdict]}"
    if verdict == "possible":
        return said + "."
    if not readings:
        return said + "; no usual mix-up of units explains it, so a digit may be wrong."
    number = units.number(reading.number)
    return said + "; " + ", or ".join(f"read as {number} {unit} it is {other:.2g}" for unit, other in readings.items()) + ", which is possible."
