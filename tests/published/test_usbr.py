"""US Bureau of Reclamation, Water Measurement Manual: the 90 degree notch (ch. 7) and the upright pipe (ch. 14, s. 13)."""

import math

import pytest

from brimwork.topics.notches import corrected_v_notch, notch_coefficient, notch_head_correction
from brimwork.topics.rims import limit_of_round_bore, round_bore
from brimwork.units import read

FOOT = read("1 ft", "m")
INCH = FOOT / 12
GPM = read("1 US gal/min", "m3/s")


@pytest.mark.parametrize("feet", [0.6, 0.8, 1.0, 1.25])
def test_a_right_angled_notch_follows_the_manuals_own_fit(feet):
    """Q = 2.49 h^2.48 in feet. The two are separate fits to like measurements and agree within 0.7 % over heads of 0.6 to 1.25 ft."""
    angle = math.pi / 2
    ours = corrected_v_notch(H=feet * FOOT, theta=angle, C_d=notch_coefficient(theta=angle), k_h=notch_head_correction(theta=angle))
    assert ours == pytest.approx(2.49 * feet**2.48 * FOOT**3, rel=7e-3)


@pytest.mark.parametrize("inches", [1.6, 2.0, 2.4, 2.9])
def test_an_upright_pipe_flows_like_a_rim_up_to_0_37_of_its_bore(inches):
    """Q = 6.17 d^1.25 h^1.35 in US gallons a minute and inches, which the manual holds good to 15 %; 8 in pipe, upper half of the rim range."""
    ours = round_bore(C_w=1.71, d_bore=8 * INCH, H=inches * INCH)
    assert ours == pytest.approx(6.17 * 8**1.25 * inches**1.35 * GPM, rel=0.15)


def test_the_two_manuals_agree_on_where_the_rim_ends():
    """EPA's weir and orifice laws meet at 0.361 of the bore for C_d = 0.6 and C_w = 1.84; the Bureau prints 0.37, so 3 % apart."""
    assert limit_of_round_bore(C_d=0.6, d_bore=8 * INCH, C_w=1.84) / (8 * INCH) == pytest.approx(0.37, rel=0.03)
