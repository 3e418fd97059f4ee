"""What must be true of pumps at another speed, of two pumps, and of power and suction."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from brimwork import tables
from brimwork.topics import find
from brimwork.topics.pump_laws import (
    SlowedPump,
    cost_of_pumping,
    duty_one_after_the_other,
    duty_side_by_side,
    efficiency_from_parts,
    head_one_after_the_other,
    head_side_by_side,
    power_at_another_speed,
    suction_head,
    wire_to_water_efficiency,
)
from brimwork.topics.pumps import LabelPump, TabulatedPump, duty_flow, duty_point, power_taken_in
from brimwork.units import InputError

CURVE = TabulatedPump(((0.0, 3.0), (1.5e-4, 2.8), (3.5e-4, 2.1), (5e-4, 1.2), (6e-4, 0.0)))  # invented
speeds = st.floats(20.0, 60.0)


@given(speeds, speeds, st.floats(0, 1))
def test_a_pump_slowed_and_brought_back_is_the_pump_it_was(n_1, n_2, share):
    back = SlowedPump(SlowedPump(CURVE, n_1, n_2), n_2, n_1)
    Q = share * CURVE.Q_max
    assert back.Q_max == pytest.approx(CURVE.Q_max, rel=1e-12)
    assert back.head(Q) == pytest.approx(CURVE.head(Q), rel=1e-9, abs=1e-9)


@given(speeds, speeds)
def test_a_pump_of_which_the_label_is_known_keeps_a_parabola_at_every_speed(n_1, n_2):
    slowed = SlowedPump(LabelPump(3.0, 1e-3), n_1, n_2)
    same = LabelPump(3.0 * (n_2 / n_1) ** 2, 1e-3 * n_2 / n_1)
    for share in (0.0, 0.4, 1.0):
        assert slowed.head(share * same.Q_max) == pytest.approx(same.head(share * same.Q_max), rel=1e-9, abs=1e-12)


def test_only_without_a_lift_does_the_duty_go_with_the_speed():
    slowed = SlowedPump(CURVE, n_1=50.0, n_2=40.0)
    flat = [duty_point(pump, lambda Q: 8e6 * Q**2).Q for pump in (CURVE, slowed)]
    lifted = [duty_point(pump, lambda Q: 1.0 + 8e6 * Q**2).Q for pump in (CURVE, slowed)]
    assert flat[1] == pytest.approx(0.8 * flat[0], rel=1e-9)
    assert lifted[1] < 0.75 * lifted[0]


def test_a_slowed_pump_ends_where_its_curve_ends():
    slowed = SlowedPump(CURVE, n_1=50.0, n_2=35.0)
    assert slowed.head(slowed.Q_max) == pytest.approx(0.0, abs=1e-12)
    with pytest.raises(InputError, match="read more points"):
        slowed.head(1.01 * slowed.Q_max)


@given(st.floats(2.0, 4.5), st.floats(0.5, 1.4), st.floats(8e5, 3e6), st.floats(4e5, 2e6))
def test_two_pumps_give_more_than_one_and_less_than_twice_as_much(H_0, z_s, c_pump, k_sys):
    one = duty_flow(H_0=H_0, z_s=z_s, Q_max=math.sqrt(H_0 / c_pump), h_loss=k_sys, Q_1=1.0)
    side = duty_side_by_side(H_0=H_0, z_s=z_s, c_pump=c_pump, k_sys=k_sys)
    line = duty_one_after_the_other(H_0=H_0, z_s=z_s, c_pump=c_pump, k_sys=k_sys)
    assert one < side < 2 * one and one < line
    assert head_side_by_side(H_0=H_0, c_pump=c_pump, Q=side) == pytest.approx(z_s + k_sys * side**2, rel=1e-9)
    assert head_one_after_the_other(H_0=H_0, c_pump=c_pump, Q=line) == pytest.approx(z_s + k_sys * line**2, rel=1e-9)


def test_side_by_side_wins_in_a_wide_pipe_and_one_after_the_other_where_the_lift_is_too_much_for_one():
    wide, high = {"H_0": 3.0, "z_s": 0.5, "c_pump": 3e6, "k_sys": 1e5}, {"H_0": 3.0, "z_s": 2.8, "c_pump": 3e6, "k_sys": 1e6}
    assert duty_side_by_side(**wide) > duty_one_after_the_other(**wide)
    assert duty_side_by_side(**high) < duty_one_after_the_other(**high)
    with pytest.raises(InputError):
        duty_side_by_side(H_0=3.0, z_s=3.2, c_pump=3e6, k_sys=1e6)


def test_the_power_of_a_pump_slowed_by_half_is_an_eighth():
    assert power_at_another_speed(P_n1=80.0, n_1=50.0, n_2=25.0) == pytest.approx(10.0)


@given(st.floats(2e-4, 1e-3), st.floats(0.5, 3.0), st.floats(0.05, 0.7))
def test_efficiency_and_power_taken_in_undo_each_other_and_agree_with_the_meter(Q, H_pump, eta):
    P_in = power_taken_in(rho=998.0, Q=Q, H_pump=H_pump, eta_pump=eta)
    assert wire_to_water_efficiency(rho=998.0, Q=Q, H_pump=H_pump, P_in=P_in) == pytest.approx(eta, rel=1e-9)
    metered = find("running cost in a year")(P_in=P_in, t_day=36000.0, N_day=200, c_el=8e-8)
    assert cost_of_pumping(rho=998.0, Q=Q, H_pump=H_pump, eta_pump=eta, t_run=200 * 36000.0, c_el=8e-8) == pytest.approx(metered, rel=1e-9)


def test_no_share_is_better_than_the_whole():
    assert efficiency_from_parts(eta_wet=0.5, eta_mot=0.6, eta_drive=1.0) == pytest.approx(0.3)
    with pytest.raises(InputError, match="eta_mot"):
        efficiency_from_parts(eta_wet=0.5, eta_mot=1.2, eta_drive=1.0)


def test_cold_water_can_be_drawn_up_about_ten_metres_and_a_pump_under_water_has_head_to_spare():
    """At 20 degC water boils at 2339 Pa (IAPWS-IF97), and the air of a standard day presses with 101325 Pa."""
    rho = tables.water(293.15)["rho"]
    given = {"p_air": 101325.0, "p_boil": 2339.2, "rho": rho, "h_suct": 0.0}
    assert suction_head(**given, z_suct=10.1) > 0 > suction_head(**given, z_suct=10.2)
    assert suction_head(**given, z_suct=-0.4) - suction_head(**given, z_suct=0.6) == pytest.approx(1.0)
