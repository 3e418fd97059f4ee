"""C. Schaschke, Fluid Mechanics: Worked Examples for Engineers, as worked again in open notebooks."""

import math

import pytest

from brimwork.topics.films import film_flow, film_speed, film_thickness
from brimwork.topics.notches import head_at_v_notch, v_notch


def test_example_3_12_a_film_on_a_sloping_face():
    """q = 3e-6 m2/s, mu = 1e-3 Pa s, rho = 1000 kg/m3, film 0.1016 mm: the face stands at 1.065 rad (four figures)."""
    nu, q, delta = 1e-3 / 1000, 3e-6, 0.1016e-3
    beta = math.asin(q / film_flow(beta=math.pi / 2, delta=delta, nu=nu, g=9.81))  # flow goes with the sine of the slope
    assert beta == pytest.approx(1.065, abs=5e-4)
    assert film_thickness(q=q, beta=1.065, nu=nu, g=9.81) == pytest.approx(delta, rel=5e-4)
    assert film_speed(beta=1.065, delta=delta, nu=nu, g=9.81) == pytest.approx(q / delta, rel=5e-4)


def test_example_7_10_a_thin_head_in_a_right_angled_notch():
    """Head 30 mm, C_d = 0.62: 0.228 L/s (three figures, so 0.2 %); and the flow gives the head back."""
    Q = v_notch(H=0.03, C_d=0.62, theta=math.pi / 2)
    assert Q == pytest.approx(0.228e-3, rel=2.2e-3)
    assert head_at_v_notch(Q=Q, C_d=0.62, theta=math.pi / 2) == pytest.approx(0.03, rel=1e-12)
