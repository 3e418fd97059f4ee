"""Dighe, Hydraulics Made Easy, example 5.9, as worked again in an open notebook: Francis' formula with a velocity of approach, in feet.

Lip 10 ft long with both ends contracted, head 2 ft, approach 30 ft2, k = 3.33 ft^0.5/s, g = 32.2 ft/s2. The book takes the contraction from
the head with the velocity head added: length L - 0.2 (H + h_a).
"""

import pytest
import scipy.optimize

from brimwork.topics.overflow import approach_head, contracted_lip, flow_with_approach, weir_coefficient
from brimwork.units import convert, read

FOOT = read("1 ft", "m")
G = read("32.2 ft/s2", "m/s2")
K = read("3.33 ft^0.5/s", "m^0.5/s")
C_D = K / weir_coefficient(C_d=1.0, g=G)
PRINTED = 6e-5  # 99.41 has four figures


def _next(Q: float) -> float:
    h_a = approach_head(Q=Q, A_a=read("30 ft2", "m2"), g=G)
    return flow_with_approach(C_d=C_D, b=10 * FOOT - 0.2 * (2 * FOOT + h_a), H=2 * FOOT, h_a=h_a, g=G)


def _feet(Q: float) -> float:
    return convert(Q, "ft3/s")


def test_example_5_9_first_and_second_correction():
    """90.42, 98.17 and 99.41 ft3/s."""
    without = contracted_lip(C_d=C_D, b=10 * FOOT, H=2 * FOOT, n_c=2, g=G)
    first = _next(without)
    assert _feet(without) == pytest.approx(90.42, rel=PRINTED)
    assert _feet(first) == pytest.approx(98.17, rel=PRINTED)
    assert _feet(_next(first)) == pytest.approx(99.41, rel=PRINTED)


def test_example_5_9_carried_on_until_it_stands_still():
    """The rounds tend to 99.66 ft3/s."""
    Q = scipy.optimize.root_scalar(lambda Q: _next(Q) - Q, bracket=(2.0, 4.0), xtol=1e-14).root
    assert _feet(Q) == pytest.approx(99.66, rel=PRINTED)
