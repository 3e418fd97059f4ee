"""A. K. Sarkar, Fluid Mechanics, chapter 5 (weirs and notches), as worked again in an open notebook that prints more figures than the book."""

import pytest
import scipy.optimize

from brimwork.topics.overflow import approach_head, flow_from_channel, flow_over_level_lip, flow_with_approach

G = 9.81  # as in the book
LIP = {"C_d": 0.623, "b": 0.77, "H": 0.39, "g": G}
AREA = 0.77 * (0.39 + 0.6)  # the channel is as wide as the lip and 0.6 m deep below it


def _one_round(Q: float) -> float:
    return flow_with_approach(**LIP, h_a=approach_head(Q=Q, A_a=AREA, g=G))


def test_example_5_7_one_correction_for_the_velocity_of_approach():
    """0.34501 m3/s without and 0.357447 m3/s with one correction; tolerances are half of the last figure printed."""
    without = flow_over_level_lip(**LIP)
    assert without == pytest.approx(0.34501, abs=5e-6)
    assert _one_round(without) == pytest.approx(0.357447, abs=1e-6)


def test_example_5_7_carried_on_until_it_stands_still():
    """The book stops after one correction. Going on gives 0.35837 m3/s, whether round by round, in one formula, or by SciPy."""
    by_rounds = flow_over_level_lip(**LIP)
    for _ in range(40):
        by_rounds = _one_round(by_rounds)
    by_formula = flow_from_channel(**LIP, A_a=AREA)
    by_scipy = scipy.optimize.root_scalar(lambda Q: _one_round(Q) - Q, bracket=(0.3, 0.5), xtol=1e-14).root
    assert by_formula == pytest.approx(0.35837, abs=5e-6)
    assert by_rounds == pytest.approx(by_formula, rel=1e-10) and by_scipy == pytest.approx(by_formula, rel=1e-10)
