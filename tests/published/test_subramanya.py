"""K. Subramanya, 1000 Solved Problems in Fluid Mechanics, as worked again in open notebooks."""

import pytest

from brimwork.topics.change_of_bore import change_of_basis, head_lost_at_widening, pressure_after_widening, widening_coefficient
from brimwork.topics.pipes import fitting_head, speed_in_a_pipe


def test_example_11_1_pressure_after_a_sudden_enlargement():
    """450 L/min, 60 mm to 90 mm, 20 kPa before, 9.79 kN/m3: 21.73 kPa after (0.1 %); plain Bernoulli without the loss says 22.82."""
    v_1, v_2 = (speed_in_a_pipe(Q=0.450 / 60, d_pipe=d) for d in (0.06, 0.09))
    rho = 9790 / 9.81
    after = pressure_after_widening(p_1=20e3, rho=rho, v_1=v_1, v_2=v_2)
    assert after == pytest.approx(21.73e3, rel=1e-3)
    lost = fitting_head(K=widening_coefficient(d_1=0.06, d_2=0.09), v=v_1, g=9.81)
    assert lost == pytest.approx(head_lost_at_widening(v_1=v_1, v_2=v_2, g=9.81), rel=1e-12)
    assert after + 9790 * lost == pytest.approx(22.82e3, rel=1e-3)
    assert lost == pytest.approx(fitting_head(K=change_of_basis(K_1=widening_coefficient(d_1=0.06, d_2=0.09), d_1=0.06, d_2=0.09), v=v_2, g=9.81), rel=1e-12)


def test_example_11_5_flow_between_two_reservoirs():
    """In all 6.300 velocity heads of the 100 mm pipe make up the 10 m: 43.8 L/s (three figures and rounding on the way, 0.2 %)."""
    v = speed_in_a_pipe(Q=43.8e-3, d_pipe=0.1)
    assert fitting_head(K=6.300, v=v, g=9.81) == pytest.approx(10.0, rel=2 * 2e-3)
