"""Start and stop: a feature followed in steps of a second or so, from the start of its pump until the water has come back after the stop.

Water moves between hose and vessel, film and stone, reservoir and overflow; none is made or lost. While the pump runs, hose and vessel fill to
the rim and the head over it rises until as much leaves as comes; when it stops, the rim runs down, and an open hose siphons the vessel out to
the tube mouth. The pump's flow is taken as steady: the level moves by millimetres, the lift by a per cent or two.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from brimwork.topics.measures import round_rim_length
from brimwork.topics.overflow import flow_by_weir_coefficient, head_by_weir_coefficient
from brimwork.topics.reservoir import water_area
from brimwork.topics.siphons import siphon_flow
from brimwork.topics.starting import flow_that_comes_back
from brimwork.topics.transit import surface_of_a_round_vessel, water_in_the_pipe, water_over_the_rim, water_siphoned_back
from brimwork.units import InputError

FINE = 3  # steps within the time in which the fastest part settles
MOST_STEPS = 200_000
PROMPT = 0.01  # s: what takes less from the rim to the reservoir is taken to be there at once


@dataclass(frozen=True)
class OpenHose:
    """A delivery hose without a check valve, in SI: bore and length, friction factor, loss of its fittings, and the rim above the reservoir's floor."""

    d_pipe: float
    L_pipe: float
    f: float
    K: float
    z_rim: float

    def __post_init__(self) -> None:
        if not (all(0 <= value < math.inf for value in vars(self).values()) and self.d_pipe > 0):
            raise InputError("a hose needs a bore above zero, and length, friction factor, fittings and height of the rim that are not below zero")


@dataclass(frozen=True)
class Circuit:
    """A feature as start and stop see it, in SI: flow of the pump, surface and rim of the vessel, what goes up, reservoir and its levels above the floor.

    Q, A_v, b, C_w    flow of the pump; surface, length of the rim and weir coefficient of the vessel (or bore, or trough)
    V_pc, V_siph      water in the hose, and in the vessel between rim and tube mouth; both stay up where a check valve holds them (hose None)
    V_way             film, falling sheet and stone together, once the flow has settled
    A_w, h_min, h_over  water area, lowest level for the pump, overflow
    Q_feed, h_float   flow of a top-up valve, and the level at which it shuts (None: there is none)
    """

    Q: float
    A_v: float
    b: float
    C_w: float
    V_pc: float
    V_siph: float
    V_way: float
    A_w: float
    h_min: float
    h_over: float
    hose: OpenHose | None = None
    Q_feed: float = 0.0
    h_float: float | None = None

    def __post_init__(self) -> None:
        numbers = [value for value in vars(self).values() if isinstance(value, float | int)]
        if not all(0 <= value < math.inf for value in numbers):
            raise InputError("flows, areas, lengths, volumes and levels of a circuit cannot be below zero: change the one that is")
        if not min(self.Q, self.A_v, self.b, self.C_w, self.A_w) > 0:
            raise InputError("the flow, the vessel's surface and rim, the weir coefficient and the water area must be above zero: give all five")
        if not self.h_min < self.h_over or not self.h_min <= (self.h_over if self.h_float is None else self.h_float) <= self.h_over:
            raise InputError(f"the pump's limit is {self.h_min:g} m and the overflow {self.h_over:g} m: the limit comes first, a float valve between them")

    @cached_property
    def head(self) -> float:
        """Head over the rim (m) once the flow has settled."""
        return head_by_weir_coefficient(Q=self.Q, C_w=self.C_w, b=self.b)

    @cached_property
    def below_rim(self) -> float:
        """Water (m3) that hose and vessel take before any runs over the rim."""
        return self.V_pc + self.V_siph if self.hose else 0.0

    @cached_property
    def time_on_the_way(self) -> float:
        """Mean time (s) from the rim to the reservoir, or zero."""
        return self.V_way / self.Q if self.V_way > self.Q * PROMPT else 0.0

    @property
    def in_transit(self) -> float:
        """Water (m3) that is up once the flow has settled and comes back after the stop."""
        return self.below_rim + water_over_the_rim(A_v=self.A_v, H=self.head) + self.Q * self.time_on_the_way


@dataclass(frozen=True)
class Moment:
    """Time (s), whether the pump runs and whether it has just sucked air, and the water (m3): in hose and vessel, on its way, in the reservoir, lost, let in.

    `above` counts from an empty hose and a vessel drained to its tube mouth (with a check valve from the rim); a dry vessel starts below zero, and its
    hose is counted as the last to fill.
    """

    t: float
    running: bool
    above: float
    on_the_way: float
    reservoir: float
    spilled: float = 0.0
    fed: float = 0.0
    dry: bool = False

    @property
    def balance(self) -> float:
        """All water less what was let in (m3): the same at every moment."""
        return self.above + self.on_the_way + self.reservoir + self.spilled - self.fed


@dataclass(frozen=True)
class Course:
    """What happened: the moments in order, and what they tell."""

    circuit: Circuit
    moments: tuple[Moment, ...]

    def level(self, moment: Moment) -> float:
        """Level (m) of the reservoir above its floor."""
        return moment.reservoir / self.circuit.A_w

    def head(self, moment: Moment) -> float:
        """Head (m) over the rim."""
        return _head(self.circuit, moment.above)

    def over_the_rim(self, moment: Moment) -> float:
        """Flow (m3/s) over the rim."""
        return flow_by_weir_coefficient(C_w=self.circuit.C_w, b=self.circuit.b, H=self.head(moment))

    @property
    def lowest(self) -> Moment:
        return min(self.moments, key=lambda moment: moment.reservoir)

    @property
    def highest(self) -> Moment:
        return max(self.moments, key=lambda moment: moment.reservoir)

    @property
    def spilled(self) -> float:
        """Water (m3) that left by the overflow."""
        return self.moments[-1].spilled

    @property
    def dry_at(self) -> float | None:
        """When the pump first sucked air (s), or None."""
        return next((moment.t for moment in self.moments if moment.dry), None)

    @property
    def over_the_rim_at(self) -> float | None:
        """When water first ran over the rim (s), or None."""
        return next((moment.t for moment in self.moments if self.head(moment) > 0), None)


def run_and_rest(circuit: Circuit, h_static: float, on: float, off: float, step: float = 1.0, empty: float = 0.0) -> Course:
    """The pump starts at a static level (m), runs for `on` seconds and rests for `off`; a moment is kept every `step` seconds.

    `empty` (m3) is what a dry vessel takes besides, the first time. Raises InputError for levels or times that cannot be.
    """
    if not (0 <= empty < math.inf and circuit.h_min <= h_static <= circuit.h_over):
        raise InputError(
            f"the static level is {h_static:g} m, but the pump needs {circuit.h_min:g} m and the overflow is at {circuit.h_over:g} m: give one between"
        )
    first = Moment(0.0, True, -empty, 0.0, circuit.A_w * h_static)
    moments = [first, *_followed(circuit, first, on, step)]
    moments += _followed(circuit, _stopped(circuit, moments[-1], empty), off, step)
    return Course(circuit, tuple(moments))


def _stopped(circuit: Circuit, moment: Moment, empty: float) -> Moment:
    """The same moment with the pump off; a vessel that is not yet filled to the tube mouth keeps its water, and the hose runs empty at once."""
    back = min(circuit.V_pc, moment.above + empty) if circuit.hose and moment.above < 0 else 0.0
    return replace(moment, running=False, above=moment.above - back, reservoir=moment.reservoir + back)


def stop(circuit: Circuit, h_run: float, off: float, step: float = 1.0) -> Course:
    """The pump stops when all has settled at a running level (m). Raises InputError for a level or time that cannot be."""
    if not 0 <= h_run <= circuit.h_over:
        raise InputError(f"the running level is {h_run:g} m, but the overflow is at {circuit.h_over:g} m: give a level from 0 up to it")
    way = circuit.Q * circuit.time_on_the_way
    first = Moment(0.0, False, circuit.in_transit - way, way, circuit.A_w * h_run)
    return Course(circuit, (first, *_followed(circuit, first, off, step)))


def _followed(circuit: Circuit, moment: Moment, seconds: float, step: float) -> Iterator[Moment]:
    if not (0 < seconds < math.inf and 0 < step < math.inf):
        raise InputError(f"{seconds:g} s in steps of {step:g} s cannot be followed: give times above zero")
    kept, begin = math.ceil(seconds / step - 1e-9), moment.t
    parts = math.ceil(seconds / kept / _finest(circuit))
    if kept * parts > MOST_STEPS:
        raise InputError(f"{seconds:g} s would take {kept * parts} steps, more than {MOST_STEPS}: follow a shorter time")
    for number in range(1, kept + 1):
        dry = False
        for part in range(1, parts + 1):
            moment = _step(circuit, moment, seconds / kept / parts, begin + (number - 1 + part / parts) * seconds / kept)
            dry |= moment.dry
        yield replace(moment, dry=True) if dry and not moment.dry else moment


def _finest(circuit: Circuit) -> float:
    times = [water_over_the_rim(A_v=circuit.A_v, H=circuit.head) / circuit.Q, circuit.time_on_the_way]
    return min(time for time in times if time > 0) / FINE


def _head(circuit: Circuit, above: float) -> float:
    return max(0.0, above - circuit.below_rim) / circuit.A_v


def _step(circuit: Circuit, moment: Moment, dt: float, end: float) -> Moment:
    """One step, which ends at a time (s), by Runge and Kutta, which keeps the sum of all water; then what the levels do not allow is put right, water for water."""
    now = (moment.above, moment.on_the_way, moment.reservoir)
    k1 = _rates(circuit, now, moment.running)
    k2 = _rates(circuit, _moved(now, k1, dt / 2), moment.running)
    k3 = _rates(circuit, _moved(now, k2, dt / 2), moment.running)
    k4 = _rates(circuit, _moved(now, k3, dt), moment.running)
    rise, flow, fall = ((a + 2 * b + 2 * c + d) / 6 for a, b, c, d in zip(k1, k2, k3, k4))
    above, way, reservoir = _moved(now, (rise, flow, fall), dt)
    short = max(0.0, circuit.A_w * circuit.h_min - reservoir) if moment.running else min(0.0, above) if moment.above > 0 else 0.0  # no water; hose empty
    above, reservoir = above - short, reservoir + short
    fed = _fed(circuit, reservoir, dt)
    spilled = max(0.0, reservoir + fed - circuit.A_w * circuit.h_over)
    return Moment(end, moment.running, above, way, reservoir + fed - spilled, moment.spilled + spilled, moment.fed + fed, moment.running and short > 0)


def _moved(now: tuple[float, float, float], rates: tuple[float, float, float], dt: float) -> tuple[float, float, float]:
    return now[0] + rates[0] * dt, now[1] + rates[1] * dt, now[2] + rates[2] * dt


def _rates(circuit: Circuit, now: tuple[float, ...], running: bool) -> tuple[float, float, float]:
    """Growth (m3/s) of the water above, on its way and in the reservoir; their sum is nothing."""
    above, way, reservoir = now
    pumped = circuit.Q if running else 0.0
    rim = flow_by_weir_coefficient(C_w=circuit.C_w, b=circuit.b, H=_head(circuit, above)) if above > circuit.below_rim else 0.0
    back = flow_that_comes_back(V_way=max(way, 0.0), t_way=circuit.time_on_the_way) if circuit.time_on_the_way else rim
    siphoned = 0.0 if running or not circuit.hose else _siphoned(circuit, circuit.hose, above, reservoir)
    return pumped - rim - siphoned, rim - back, back + siphoned - pumped


def _siphoned(circuit: Circuit, hose: OpenHose, above: float, reservoir: float) -> float:
    """Flow back through the open hose: the vessel down to its tube mouth, then what the hose itself holds, under the head from the mouth."""
    if above <= 0:
        return 0.0
    surface = hose.z_rim + max(above - circuit.below_rim, -circuit.V_siph) / circuit.A_v
    head = surface - reservoir / circuit.A_w
    return siphon_flow(f=hose.f, L_pipe=hose.L_pipe, d_pipe=hose.d_pipe, K=hose.K, H_s=head) if head > 0 else 0.0


def _fed(circuit: Circuit, reservoir: float, dt: float) -> float:
    """What a top-up valve lets in while the water stands below its float (m3)."""
    return 0.0 if circuit.h_float is None else min(circuit.Q_feed * dt, max(0.0, circuit.A_w * circuit.h_float - reservoir))


def bowl(values: Mapping[str, float], check_valve: bool = False) -> Circuit:
    """The circuit of a round bowl from values (SI) by their letters: Q, d_rim, C_w, z_mouth, d_pipe, L_pipe, f, K, z_s, V_way, A_b, n_v, levels.

    h_static, h_min and h_over are levels above the floor; h_run, where given, is the level at which a float valve of flow Q_feed shuts.
    """
    A_v = surface_of_a_round_vessel(d_rim=values["d_rim"])
    hose = OpenHose(**{letter: values[letter] for letter in ("d_pipe", "L_pipe", "f", "K")}, z_rim=values["h_static"] + values["z_s"])
    return Circuit(
        Q=values["Q"],
        A_v=A_v,
        b=round_rim_length(d_rim=values["d_rim"]),
        C_w=values["C_w"],
        V_pc=water_in_the_pipe(d_pipe=values["d_pipe"], L_pipe=values["L_pipe"]),
        V_siph=water_siphoned_back(A_v=A_v, z_mouth=values["z_mouth"]),
        V_way=values["V_way"],
        A_w=water_area(A_b=values["A_b"], n_v=values["n_v"]),
        h_min=values["h_min"],
        h_over=values["h_over"],
        hose=None if check_valve else hose,
        Q_feed=values.get("Q_feed", 0.0),
        h_float=values.get("h_run"),
    )
