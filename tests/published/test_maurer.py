"""E. Maurer, Hydraulics and Water Resources: Examples Using R (open book, rendered pages)."""

import math

import numpy
import pytest

from brimwork.design.follows.pipework import Stretch, head_needed, losses
from brimwork.topics.friction import bore_for_a_head_loss, colebrook, flow_for_a_head_loss, reynolds_number
from brimwork.topics.pipes import friction_head_by_flow, speed_in_a_pipe, system_constant
from brimwork.topics.pumps import LabelPump, duty_flow, duty_point

FOOT = 0.3048
STEEL = 0.046e-3


def test_example_4_1_head_lost_at_a_known_flow():
    """0.416 m3/s, 0.5 m, 100 m, 0.046 mm: Re 1035465, head 0.61 m (two figures, so 0.8 %; the page prints 'ft')."""
    Re = reynolds_number(v=speed_in_a_pipe(Q=0.416, d_pipe=0.5), d_pipe=0.5, nu=1.023053e-6)
    assert Re == pytest.approx(1035465, rel=1e-5)
    f = colebrook(Re=Re, k_s=STEEL, d_pipe=0.5)
    assert friction_head_by_flow(f=f, L_pipe=100, d_pipe=0.5, Q=0.416) == pytest.approx(0.61, rel=8e-3)


def test_chapter_4_flow_for_a_head():
    """Head 0.6 m: 0.413 m3/s, as the text gives it (its package prints 0.406)."""
    assert flow_for_a_head_loss(h_f=0.6, L_pipe=100, d_pipe=0.5, k_s=STEEL, nu=1.023e-6) == pytest.approx(0.413, rel=1e-3)


def test_chapter_4_bore_for_a_head():
    """Head 0.6 m at 0.416 m3/s: 0.501 m."""
    assert bore_for_a_head_loss(Q=0.416, h_f=0.6, L_pipe=100, k_s=STEEL, nu=1.023e-6) == pytest.approx(0.501, rel=2e-3)


# Example 7.3: 20 in, 3884 ft, 5e-4 ft, 1.23e-5 ft2/s, lift 30 ft, pump (0, 81 ft) (5000 gal/min, 60 ft) (7850 gal/min, 20 ft).
PIPE = Stretch(d_pipe=20 / 12 * FOOT, L_pipe=3884 * FOOT, k_s=5e-4 * FOOT)
NU, LIFT, CFS = 1.23e-5 * FOOT**2, 30 * FOOT, FOOT**3


def _pump() -> LabelPump:
    """The page's own fit, head = a + c Q^2 by least squares: a 82.467 ft, c -0.2009 ft per (ft3/s)^2."""
    flows = numpy.array([0, 5000, 7850]) * 231 / 1728 / 60
    (a, c), *_ = numpy.linalg.lstsq(numpy.column_stack([numpy.ones(3), flows**2]), numpy.array([81.0, 60.0, 20.0]), rcond=None)
    assert (a, c) == (pytest.approx(82.467, abs=1e-3), pytest.approx(-0.2009, abs=1e-4))
    return LabelPump(H_0=a * FOOT, Q_max=math.sqrt(-a / c) * CFS)


def test_example_7_3_operating_point_with_the_friction_factor_frozen():
    """As printed, the friction factor of 1 ft3/s serves at every flow: 12.051 ft3/s at 53.285 ft (0.1 %)."""
    pump, f = _pump(), losses(PIPE, CFS, NU).friction.f
    frozen = PIPE._replace(f=f)
    duty = duty_point(pump, lambda Q: head_needed(Q, LIFT, (frozen,), NU))
    assert (duty.Q / CFS, duty.H / FOOT) == (pytest.approx(12.051, rel=1e-3), pytest.approx(53.285, rel=1e-3))
    k_sys = system_constant(d_pipe=PIPE.d_pipe, f=f, L_pipe=PIPE.L_pipe, K=0.0)
    assert duty_flow(H_0=pump.H_0, Q_max=pump.Q_max, z_s=LIFT, h_loss=k_sys, Q_1=1.0) == pytest.approx(duty.Q, rel=1e-12)


def test_example_7_3_operating_point_with_the_friction_factor_of_its_own_flow():
    """At the Reynolds number that the flow really has, f is smaller: 12.78 ft3/s at 49.66 ft, 6 % more water than printed."""
    duty = duty_point(_pump(), lambda Q: head_needed(Q, LIFT, (PIPE,), NU))
    assert (duty.Q / CFS, duty.H / FOOT) == (pytest.approx(12.78, rel=5e-4), pytest.approx(49.66, rel=5e-4))
