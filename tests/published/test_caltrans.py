"""Caltrans, Trenching and Shoring Manual, Table 3-2 (through the tables of the package geotech-references): the weight of the fluid that pushes as gravel does.

The chain: friction angle to active coefficient, which the table rounds to two places, times the weight of the gravel, rounded to whole pounds.
"""

import math

import pytest

from brimwork.topics.ground import active_coefficient, fill_thrust
from brimwork.units import read


@pytest.mark.parametrize("degrees, pounds, fluid", [(41, 130, 27), (34, 120, 34), (29, 90, 32)], ids=["dense", "medium-dense", "loose"])
def test_gravel_pushes_like_the_printed_fluid(degrees, pounds, fluid):
    K = active_coefficient(phi_s=math.radians(degrees))
    gravel, other = (read(f"{number} lb/ft3", "kg/m3") for number in (pounds, fluid))
    assert round(K, 2) * pounds == pytest.approx(fluid, abs=0.51)
    thrust = fill_thrust(K_soil=K, rho_fill=gravel, D=0.6, L_out=1.2)
    assert thrust == pytest.approx(fill_thrust(K_soil=1.0, rho_fill=other, D=0.6, L_out=1.2), rel=0.025)
