"""A design's pump started and stopped: its circuit as start and stop see it, and what happens to the levels second by second."""

from __future__ import annotations

import math

from brimwork.design.follows.chain import Chain
from brimwork.design.follows.start_and_stop import Circuit, Course, OpenHose, run_and_rest
from brimwork.units import InputError

LONG, _LEAST, MOMENTS = 4.0, 60.0, 90  # times that the pump takes to send what goes up; s at least; moments kept of a run and of a rest


def circuit(chain: Chain) -> Circuit:
    """The circuit at the flow wanted. Raises Unknown; InputError for a kind of feature that holds no water over an edge."""
    if not chain.edges:
        raise InputError("drilled stones hold no water over an edge: what goes up comes back at once, less what hose and film keep")
    d, surface, length, coefficient = chain.design, *chain.edge()
    hose = OpenHose(d["pipe.bore"], d["pipe.length"], chain.friction, d["pipe.fittings"], chain.delivery - chain.level("reservoir floor"))
    return Circuit(
        Q=chain.flow_wanted, A_v=surface, b=length, C_w=coefficient, V_pc=chain.transit_pipe, V_siph=chain.in_transit()["V_siph"],
        V_way=chain.transit_by_model - surface * chain.edge_head - chain.transit_pipe - chain.in_transit()["V_siph"],
        A_w=chain.water_area, h_min=d["reservoir.lowest_level"], h_over=d["reservoir.overflow_level"],
        hose=None if d["pipe.check_valve"] == "yes" else hose,
    )  # fmt: skip


def course(chain: Chain) -> Course:
    """From the static level: the pump runs until all has settled, then rests as long for all to come back. Raises Unknown, InputError."""
    through = circuit(chain)
    span = max(_LEAST, 10 * math.ceil(LONG * through.in_transit / through.Q / 10))
    return run_and_rest(through, chain.design["reservoir.static_level"], span, span, span / MOMENTS)
