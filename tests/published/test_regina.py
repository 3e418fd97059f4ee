"""Math Central, University of Regina, question QQ.09.07: a pit with a floor of 52 ft by 22 ft, 12 ft deep, sides 2 to 1: 44,256 ft3."""

import pytest

from brimwork.topics.volume import battered_pit, depth_in_battered_pit, prismoidal_rule, tapered_pit, top_of_battered_pit
from brimwork.units import read

FOOT = read("1 ft", "m")
L, W, H, BATTER = 52 * FOOT, 22 * FOOT, 12 * FOOT, 2.0
PRINTED = pytest.approx(44256 * FOOT**3, rel=1e-12)  # a whole number, exact


def test_the_pit_holds_what_is_printed():
    assert battered_pit(L=L, W=W, h=H, m_b=BATTER) == PRINTED
    assert depth_in_battered_pit(V=44256 * FOOT**3, L=L, W=W, m_b=BATTER) == pytest.approx(H, rel=1e-12)


def test_the_top_is_100_by_70_feet_and_three_areas_give_the_same_volume():
    top = [top_of_battered_pit(L=side, m_b=BATTER, h=H) for side in (L, W)]
    middle = [top_of_battered_pit(L=side, m_b=BATTER, h=H / 2) for side in (L, W)]
    assert top == [pytest.approx(100 * FOOT), pytest.approx(70 * FOOT)]
    assert prismoidal_rule(A_1=L * W, A_m=middle[0] * middle[1], A_2=top[0] * top[1], h=H) == PRINTED


def test_the_tapered_pit_is_not_this_pit():
    """Floor and top are not of the same shape, so the rule with the root of both areas must miss it, by less than 2 %."""
    other = tapered_pit(A_1=L * W, A_2=100 * 70 * FOOT**2, h=H)
    assert other != PRINTED and other == pytest.approx(44256 * FOOT**3, rel=0.02)
