"""What must be true of current, voltage drop, cords, energy and running cost."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from brimwork import cables, system, topics, typeset
from brimwork.nomenclature import QUANTITIES
from brimwork.topics import supply
from brimwork.units import InputError, convert, read

amps = st.floats(0.05, 20)
metres = st.floats(1, 80)


@given(st.floats(5, 500), st.floats(12, 240), st.floats(0.3, 1.0))
def test_voltage_current_and_power_factor_give_the_power_back(power, volts, factor):
    assert volts * supply.pump_current(P_in=power, U_s=volts, k_pf=factor) * factor == pytest.approx(power, rel=1e-12)


def test_a_power_factor_above_one_is_refused():
    with pytest.raises(InputError, match="above 1"):
        supply.pump_current(P_in=45, U_s=230, k_pf=1.1)


@given(amps, metres, st.floats(0.5e-3, 15e-3))
def test_the_table_and_the_resistance_there_and_back_give_one_drop(current, metres, per_metre):
    by_resistance = supply.drop_by_resistance(r_warm=per_metre, I_c=current, L_c=metres)
    assert supply.voltage_drop(u_c=2 * per_metre, I_c=current, L_c=metres) == pytest.approx(by_resistance, rel=1e-12)
    share = supply.drop_share(U_d=by_resistance, U_s=230)
    assert supply.drop_share_by_table(u_c=2 * per_metre, I_c=current, L_c=metres, U_s=230) == pytest.approx(share, rel=1e-12)
    assert supply.drop_share_by_resistance(r_warm=per_metre, I_c=current, L_c=metres, U_s=230) == pytest.approx(share, rel=1e-12)


def test_a_conductor_at_the_tabled_temperature_has_its_tabled_resistance_and_rises_by_0_393_per_cent_a_degree():
    """The temperature coefficient of annealed copper at 20 degC, 0.00393, IEC 60028 (from memory)."""
    cold = supply.warm_conductor(r_cold=0.01, T_c=293.15)
    assert cold == pytest.approx(0.01, rel=1e-12)
    assert supply.warm_conductor(r_cold=0.01, T_c=294.15) / cold - 1 == pytest.approx(0.00393, rel=1e-3)


def test_copper_of_a_square_millimetre_resists_as_its_resistivity_says():
    """1.7241e-8 ohm m at 20 degC, the standard for annealed copper (IEC 60028): twice that over 2.5 mm2, warmed to 70, is near the tabled 18 mV/A/m."""
    warm = supply.warm_conductor(r_cold=1.7241e-8 / 2.5e-6, T_c=343.15)
    assert 2 * warm == pytest.approx(cables.cable_drop("2.5 mm2").value, rel=0.1)


def test_thicker_cables_lose_less():
    for table in (cables.CABLE_DROPS, {name: row for name, row in cables.CONDUCTORS.items() if "stranded" not in name}):
        values = [row.value for row in table.values()]
        assert values == sorted(values, reverse=True) and all(len(row.basis) > 8 for row in table.values())
    for gauge in ("14 AWG", "12 AWG", "10 AWG", "8 AWG"):  # strands lie askew and are a little longer
        assert 1.0 < cables.conductor(f"{gauge}, stranded").value / cables.conductor(gauge).value < 1.04


def test_a_size_outside_the_tables_is_refused_with_the_nearest():
    with pytest.raises(InputError, match="Nearest: 2.5 mm2"):
        cables.cable_drop("2,5 mm2")
    with pytest.raises(InputError, match="14 AWG"):
        cables.conductor("13 AWG")


def test_a_cord_is_its_route_loop_and_slack():
    """By hand: 0.55 + 1.3 + 0.6 + 6.5 + 0.9 is 9.85 m, with 0.3 m and 1 m 11.15 m."""
    assert supply.cord_length(L_route=9.85, l_drip=0.3, l_slack=1.0) == pytest.approx(11.15)


# --- energy and money ---------------------------------------------------------------------------------------------------------------


def test_a_kilowatt_for_an_hour_every_day_of_a_year_is_365_kilowatt_hours_and_costs_so_many_prices():
    assert convert(supply.energy_in_a_year(P_in=1000, t_day=3600, N_day=365), "kWh") == pytest.approx(365, rel=1e-12)
    assert supply.running_cost(P_in=1000, t_day=3600, N_day=365, c_el=read("0.20 cur/kWh", "cur/J")) == pytest.approx(73, rel=1e-12)


def test_money_mixes_with_nothing_else():
    with pytest.raises(InputError, match="cur"):
        QUANTITIES["C_run"].read("50 kWh")
    with pytest.raises(InputError, match="c_el"):
        QUANTITIES["c_el"].read("0.30 cur")
    assert QUANTITIES["c_el"].read("0.30 cur/kWh") == pytest.approx(0.30 / 3.6e6)
    assert math.isclose(QUANTITIES["C_run"].read("49.28 currency"), 49.28)


@pytest.mark.parametrize("wanted, line", [(system.METRES, "L_c = 25 m ÷ 1000 m/km = 0.025 km"), (system.FEET, "ft ÷ 1000 ft/kft")])
def test_a_cable_is_worked_in_kilometres_where_its_resistance_is_given_for_one(wanted, line):
    """By hand: 2 x 8 ohm/km x 0.025 km x 0.4 A = 0.16 V."""
    with system.working_in(wanted):
        lines = typeset.working(topics.find("voltage drop by resistance").work(I_c=0.4, L_c=25.0, r_warm=8e-3), typeset.PLAIN)
    assert line in lines[1] and lines[-1] == "U_d = 0.1600 V" and "kg" not in " ".join(lines)
