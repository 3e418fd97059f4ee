"""Y. A. Cengel and J. M. Cimbala, Fluid Mechanics, example 13-11, as worked again in an open notebook."""

import pytest

from brimwork.topics.overflow import coefficient_by_height, flow_over_level_lip


def test_example_13_11_a_lip_with_a_coefficient_that_grows_with_the_head():
    """Water 1.5 m deep, lip 0.6 m high and 5 m long: 9.23 m3/s, three figures printed, so half a unit of the last is 0.06 %."""
    H, P = 1.5 - 0.6, 0.6
    C_d = coefficient_by_height(C_0=0.598, C_1=0.0897, H=H, P=P)
    assert flow_over_level_lip(C_d=C_d, b=5.0, H=H, g=9.81) == pytest.approx(9.23, rel=6e-4)
