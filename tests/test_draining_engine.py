"""Emptying tanks against the EPA SWMM 5 engine, run through pyswmm."""

import math

import pytest
from pyswmm import Nodes, Simulation

from brimwork.topics import find

# MIN_SURFAREA 0 would silently mean 1.17 m2 at every node, more than these tanks have.
TANK = """\
[OPTIONS]
FLOW_UNITS LPS
FLOW_ROUTING DYNWAVE
START_DATE 01/01/2024
END_DATE 01/01/2024
END_TIME {minutes}
ROUTING_STEP 1
MIN_SURFAREA 0.0001
[STORAGE]
S 0 3 {depth} FUNCTIONAL 0 0 {area}
[OUTFALLS]
O -5 FREE
[ORIFICES]
R S O SIDE 0 {coefficient} NO
[XSECTIONS]
R CIRCULAR {bore} 0 0 0
"""
CASES = [  # surface m2, first depth m, bore m, coefficient, seconds
    (math.pi / 4, 1.2732395, 0.020, 0.60, 1200),
    (0.3, 0.9, 0.015, 0.65, 700),
    (1.4, 0.6, 0.030, 0.62, 600),
]


@pytest.mark.parametrize("area, depth, bore, coefficient, seconds", CASES)
def test_a_tank_empties_as_in_the_swmm_engine(tmp_path, area, depth, bore, coefficient, seconds):
    """Head is counted to the middle of the opening; the engine's depths at three moments come within 1 % of the time."""
    text = TANK.format(minutes=f"00:{math.ceil(seconds / 60) + 1:02d}:00", depth=depth, area=area, bore=bore, coefficient=coefficient)
    (tmp_path / "tank.inp").write_text(text)
    wanted, reached = [seconds / 4, seconds / 2, seconds], []
    with Simulation(str(tmp_path / "tank.inp")) as run:
        tank, start = Nodes(run)["S"], run.start_time
        for _ in run:
            passed = (run.current_time - start).total_seconds()
            if len(reached) < len(wanted) and passed >= wanted[len(reached)]:
                reached.append((passed, tank.depth))
    assert len(reached) == 3
    for passed, engine in reached:
        assert engine > 2 * bore, "the opening must stay under water for the comparison"
        time = find("time to drain through an opening")(A_tank=area, C_d=coefficient, A_o=math.pi / 4 * bore**2, H_1=depth - bore / 2, H_2=engine - bore / 2)
        assert time == pytest.approx(passed, rel=0.01)
