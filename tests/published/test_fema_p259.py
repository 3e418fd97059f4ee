"""FEMA P-259, 3rd ed. (2012), example C7: a buried tank of 250 gallons of 0.134 ft3, 670 lb, factor 1.3, concrete of 150 lb/ft3: 2,048 lb and 23.4 ft3."""

import pytest

from brimwork.topics.stability import ballast_mass, net_uplift, pebbles_under_water
from brimwork.units import convert, read

WATER, CONCRETE = read("62.4 lb/ft3", "kg/m3"), read("150 lb/ft3", "kg/m3")
TANK = {"f_s": 1.3, "rho": WATER, "V_disp": 250 * read("0.134 ft3", "m3"), "m_t": read("670 lb", "kg")}


def test_the_tank_pulls_upwards_with_what_is_printed():
    assert convert(net_uplift(**TANK), "lbf") == pytest.approx(2048, abs=0.6)


def test_the_concrete_that_holds_it_takes_the_printed_volume_and_weighs_that_much_under_water():
    concrete = ballast_mass(**TANK, rho_s=CONCRETE) / CONCRETE
    assert convert(concrete, "ft3") == pytest.approx(23.4, abs=0.05)
    assert pebbles_under_water(V_p=concrete, n_s=0.0, rho_s=CONCRETE, rho=WATER) == pytest.approx(net_uplift(**TANK), rel=1e-9)


def test_dry_weight_would_take_the_wrong_volume():
    """2048/150 = 13.7 ft3: the classic error, little more than half of what is needed."""
    assert convert(net_uplift(**TANK) / 9.80665 / CONCRETE, "ft3") == pytest.approx(13.65, abs=0.05)
