"""Printed voltage drops: a training lesson by the tables of BS 7671 (5.18 V of 11.5 V allowed), and a worked example in American gauge (7.07 V).

The second, unattributed and second-hand, uses copper at 20 degrees; NEC chapter 9, Table 8 gives 3.07 ohm for each 1000 ft at 75 degrees.
"""

import pytest

from brimwork import cables
from brimwork.topics.supply import drop_by_resistance, drop_share, drop_share_by_table, voltage_drop, warm_conductor
from brimwork.units import read


def test_the_lesson_stays_within_its_limit_of_11_5_volts():
    drop = voltage_drop(u_c=cables.cable_drop("2.5 mm2").value, I_c=16, L_c=18)
    assert drop == pytest.approx(5.18, abs=0.005)
    assert drop_share(U_d=11.5, U_s=230) == pytest.approx(0.05)
    assert drop_share_by_table(u_c=cables.cable_drop("2.5 mm2").value, I_c=16, L_c=18, U_s=230) == pytest.approx(5.18 / 230, rel=1e-3)


def test_140_ft_of_14_gauge_drop_7_07_volts_cold():
    assert drop_by_resistance(r_warm=read("2.525 ohm/kft", "ohm/m"), I_c=10, L_c=read("140 ft", "m")) == pytest.approx(7.07, abs=0.005)


def test_the_cold_conductor_warms_to_the_printed_row_and_then_drops_a_fifth_more():
    """By hand: 2 x 140 ft x 3.07/1000 x 10 A is 8.596 V."""
    warm = warm_conductor(r_cold=read("2.525 ohm/kft", "ohm/m"), T_c=read("75 degC", "K"))
    assert warm == pytest.approx(cables.conductor("14 AWG").value, rel=1e-3)
    assert drop_by_resistance(r_warm=warm, I_c=10, L_c=read("140 ft", "m")) == pytest.approx(8.596, rel=1e-3)
