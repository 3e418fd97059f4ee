"""Crane, Technical Paper 410, through a library's notebook of its worked problems.

Of example 7.15 only the step from head to power is worked here: the friction and fitting data seen do not give its total discharge head.
"""

import pytest

from brimwork.topics.pumps import power_taken_in

FOOT, POUND, HORSEPOWER = 0.3048, 0.45359237, 550 * 0.3048 * 0.45359237 * 9.80665
US_GALLON_PER_MINUTE = 3.785411784e-3 / 60
WATER = 62.364 * POUND / FOOT**3


def test_example_7_15_brake_power_of_the_pump():
    """100 gal/min against 421 ft at an efficiency of 70 %: 15.2 hp (three figures, 0.3 %)."""
    power = power_taken_in(rho=WATER, Q=100 * US_GALLON_PER_MINUTE, H_pump=421 * FOOT, eta_pump=0.70)
    assert power / HORSEPOWER == pytest.approx(15.2, rel=3e-3)


def test_example_7_34_cost_of_a_year():
    """700 gal/min against 428 ft, pump 0.707, drive 0.95, motor 0.96, 8000 h at 0.12 $/kWh: $83,970 (0.2 %); without drive and motor $76,640."""
    pump = {"rho": WATER, "Q": 700 * US_GALLON_PER_MINUTE, "H_pump": 428 * FOOT}
    cost = 8000 * 0.12 / 1000
    assert power_taken_in(**pump, eta_pump=0.707 * 0.95 * 0.96) * cost == pytest.approx(83970, rel=2e-3)
    assert power_taken_in(**pump, eta_pump=0.707) * cost == pytest.approx(76640, rel=2e-3)
