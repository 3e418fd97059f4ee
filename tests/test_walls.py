"""What must be true of the pull in the wall of a full vessel."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from brimwork.topics.walls import hoop_stress, wall_share

RHO, G = 998.2, 9.80665
full = {"rho": RHO, "h_full": 0.42, "R_wall": 0.39, "t_wall": 0.012}


def lame(pressure, inner, outer, radius):
    """Hoop stress at a radius of a thick ring under pressure from inside: G. Lame (1833), from memory."""
    return pressure * inner**2 / (outer**2 - inner**2) * (1 + (outer / radius) ** 2)


def test_the_wall_holds_what_the_water_presses_across_it():
    """Added up angle by angle, the water presses the halves of a ring apart with its pressure times the width; two cuts of the wall hold them."""
    pressure = RHO * G * 0.42
    apart, _ = quad(lambda angle: pressure * 0.39 * math.sin(angle), 0, math.pi)
    assert apart == pytest.approx(pressure * 2 * 0.39) and 2 * hoop_stress(**full) * 0.012 == pytest.approx(apart, rel=1e-12)


@given(st.floats(0.1, 0.6), st.floats(0.01, 0.5))
def test_it_is_the_mean_of_what_the_theory_of_thick_rings_gives_through_the_wall(radius, share):
    wall = share * radius
    mean, _ = quad(lambda r: lame(RHO * G * 0.42, radius, radius + wall, r), radius, radius + wall)
    assert hoop_stress(rho=RHO, h_full=0.42, R_wall=radius, t_wall=wall) == pytest.approx(mean / wall, rel=1e-9)


@pytest.mark.parametrize("share, more", [(0.1, 0.05), (0.2, 0.11)])
def test_the_inner_face_is_pulled_as_much_more_as_the_remark_says(share, more):
    thick = full | {"t_wall": share * full["R_wall"]}
    inner = lame(RHO * G * 0.42, 0.39, 0.39 * (1 + share), 0.39)
    assert inner / hoop_stress(**thick) == pytest.approx(1 + more, abs=0.005)


def test_the_share_is_the_pull_over_the_strength():
    assert wall_share(sigma_hoop=0.25e6, f_tens=5e6) == pytest.approx(0.05)
