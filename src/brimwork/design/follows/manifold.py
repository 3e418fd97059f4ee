"""A manifold: one pump and one common pipe that part into branches, each with its own lift and valve.

Lifts count from the water in the reservoir; heads where the branches part count from there as well.
"""

from __future__ import annotations

from typing import NamedTuple

from brimwork.design.follows.pipework import Stretch, head_needed, losses
from brimwork.roots import solve
from brimwork.topics.pipes import loss_coefficient, speed_in_a_pipe
from brimwork.topics.pumps import Pump
from brimwork.units import InputError, write


class Branch(NamedTuple):
    """A branch: name, static lift z_s (m) from the water in the reservoir to its outlet, its pipe, the loss coefficient of its valve (0 stands open), and what comes after its pipe."""

    name: str
    z_s: float
    stretch: Stretch
    K_valve: float = 0.0
    then: tuple[Stretch, ...] = ()

    def head(self, Q: float, nu: float, law: str = "colebrook") -> float:
        """Head (m) that it needs where the branches part, for a flow Q (m3/s) of water with kinematic viscosity nu (m2/s)."""
        valved = self.stretch._replace(K=self.stretch.K + self.K_valve)
        return head_needed(Q, self.z_s, (valved, *self.then), nu, law)


class Balance(NamedTuple):
    """A manifold at wanted flows, branch by branch: heads needed where the branches part, heads that the valves must lose, the valves' loss
    coefficients; the place in the list of the branch that governs; and the total head (m) that the pump must give."""

    needs: tuple[float, ...]
    throttles: tuple[float, ...]
    valves: tuple[float, ...]
    governing: int
    head: float


def balance(common: Stretch, branches: tuple[Branch, ...], flows: tuple[float, ...], nu: float, law: str = "colebrook") -> Balance:
    """What each valve must lose so that every branch gets its flow (m3/s); nu in m2/s. The branch that needs the most head stands open.

    Raises InputError unless there is one flow above zero for each branch.
    """
    if not branches or len(flows) != len(branches) or not all(flow > 0 for flow in flows):
        raise InputError(f"{len(branches)} branches and {len(flows)} flows were given: give one flow above zero for each branch, in the same order")
    needs = tuple(branch.head(flow, nu, law) for branch, flow in zip(branches, flows))
    most = max(needs)
    throttles = tuple(most - need for need in needs)
    speeds = [speed_in_a_pipe(Q=flow, d_pipe=branch.stretch.d_pipe) for branch, flow in zip(branches, flows)]
    valves = tuple(branch.K_valve + loss_coefficient(h_m=lost, v=v) for branch, lost, v in zip(branches, throttles, speeds))
    return Balance(needs, throttles, valves, needs.index(most), head_needed(sum(flows), most, (common,), nu, law))


class Running(NamedTuple):
    """A manifold as it runs: flow of each branch (m3/s), head where the branches part (m), head of the pump (m)."""

    flows: tuple[float, ...]
    parting_head: float
    pump_head: float


def running_branches(pump: Pump, common: Stretch, branches: tuple[Branch, ...], nu: float, law: str = "colebrook") -> Running:
    """How a pump shares its water among branches with their valves as they stand; nu in m2/s.

    At each head where the branches part, each branch takes what that head drives through it and the pump sends what it can against it; the head
    at which both agree is found between limits. Raises InputError where no water comes, where a branch would run backwards, or where a tabulated
    pump curve ends too soon.
    """
    lowest, shut_off = _lifts_within_reach(pump, branches)

    def surplus(head: float) -> float:
        return sum(_taken(branch, head, pump.Q_max, nu, law) for branch in branches) - _sent(pump, common, head, nu, law)

    head = solve(surplus, lowest, shut_off)
    flows = tuple(_taken(branch, head, pump.Q_max, nu, law) for branch in branches)
    if sum(flows) > pump.Q_max * (1 - 1e-9):
        raise InputError(
            f"at the last point of its curve, {write(pump.Q_max, 'L/min')}, the pump still has more head than the branches take: "
            "read more points off the maker's chart, or throttle"
        )
    _all_run_forwards(branches, head)
    return Running(flows, head, pump.head(sum(flows)))


def _lifts_within_reach(pump: Pump, branches: tuple[Branch, ...]) -> tuple[float, float]:
    if not branches:
        raise InputError("no branch was given: give one or more")
    lowest, shut_off = min(branch.z_s for branch in branches), pump.head(0.0)
    if not lowest < shut_off:
        raise InputError(
            f"the lowest outlet is {lowest:.3g} m up, but the pump stops at {shut_off:.3g} m: no water comes. Choose a pump with more head, or lift less"
        )
    return lowest, shut_off


def _taken(branch: Branch, head: float, most: float, nu: float, law: str) -> float:
    """Flow that a head drives through a branch; none where the head does not reach its outlet, never above `most`."""
    if head <= branch.z_s:
        return 0.0
    if branch.head(most, nu, law) <= head:
        return most
    return solve(lambda flow: branch.head(flow, nu, law) - head, 0.0, most)


def _sent(pump: Pump, common: Stretch, head: float, nu: float, law: str) -> float:
    """Flow that the pump sends through the common pipe against a head."""

    def left(flow: float) -> float:
        lost = losses(common, flow, nu, law)
        return pump.head(flow) - lost.h_f - lost.h_m - head

    if left(0.0) <= 0:
        return 0.0
    return pump.Q_max if left(pump.Q_max) >= 0 else solve(left, 0.0, pump.Q_max)


def _all_run_forwards(branches: tuple[Branch, ...], head: float) -> None:
    for branch in branches:
        if head <= branch.z_s:
            raise InputError(
                f"branch {branch.name} would run backwards: its outlet is {branch.z_s:.3g} m up, but the head where the branches part is {head:.3g} m. "
                "Throttle the others, lift it less, or choose a stronger pump"
            )
