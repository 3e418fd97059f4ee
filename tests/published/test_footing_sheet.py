"""An unattributed footing sheet, second-hand: 1.8 m square, 597.62 kN, moments 33.5188 and 3.5196 kN m: 222.556 and 146.345 kN/m2.

The chain: eccentricity is moment over weight (UFC 3-220-20, Eq. 5-4), then the kern, then the pressure in the corners.
"""

import pytest

from brimwork.topics.offset_loads import corner_pressure, kern

WEIGHT, SIDE = 597.62e3, 1.8
E_LONG, E_ACROSS = 33.5188e3 / WEIGHT, 3.5196e3 / WEIGHT


def test_both_offsets_lie_within_the_kern():
    assert E_LONG / kern(B_base=SIDE) + E_ACROSS / kern(B_base=SIDE) < 1


def test_the_greatest_and_the_least_corner_carry_what_is_printed():
    greatest = corner_pressure(F_w=WEIGHT, B_base=SIDE, L_base=SIDE, e_off=E_LONG, e_ac=E_ACROSS)
    assert greatest == pytest.approx(222.556e3, abs=1)
    assert 2 * WEIGHT / SIDE**2 - greatest == pytest.approx(146.345e3, abs=1)  # the opposite corner: as far below the mean as this is above


def test_the_pressure_is_that_of_an_independent_function():
    """geotech-references 1.4.1, dm7_2.chapter5.corner_bearing_pressure(184.4506, 0.056087, 0.005889, 1.8, 1.8): 222.55563."""
    other = corner_pressure(F_w=184.4506e3 * SIDE**2, B_base=SIDE, L_base=SIDE, e_off=0.056087, e_ac=0.005889)
    assert other == pytest.approx(222.5556346186667e3, rel=1e-9)
