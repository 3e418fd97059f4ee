"""What must be true of pump curves, of the duty point, of power, and of the check of a nameplate."""

import math

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.interpolate import PchipInterpolator
from scipy.optimize import minimize_scalar

from brimwork import tables
from brimwork.design.follows.pipework import Stretch, head_needed
from brimwork.topics.hazen_williams import head_lost_by_hazen_williams
from brimwork.topics.pipes import fitting_head, speed_in_a_pipe, system_constant
from brimwork.topics.pumps import (
    LabelPump,
    TabulatedPump,
    best_power,
    best_power_of,
    duty_flow,
    duty_point,
    hydraulic_power,
    nameplate_check,
    nameplate_ratio,
    pump_curve,
)
from brimwork.units import InputError

NU = 1.0034e-6
HOSE = Stretch(d_pipe=0.025, L_pipe=4.0, K=4.0, k_s=1.5e-6)
CURVE = ((0.0, 3.0), (1.5e-4, 2.8), (3.5e-4, 2.1), (5e-4, 1.2), (6e-4, 0.0))  # invented


def needed(stretch: Stretch, z_s: float, law: str = "colebrook"):
    return lambda Q: head_needed(Q, z_s, (stretch,), NU, law)


# --- curves -------------------------------------------------------------------------------------------------------------------------


def test_a_tabulated_curve_is_scipys_monotone_cubic():
    pump, theirs = TabulatedPump(CURVE), PchipInterpolator(*zip(*CURVE))
    for Q in numpy.linspace(0, 6e-4, 241):
        assert pump.head(float(Q)) == pytest.approx(float(theirs(Q)), rel=1e-12, abs=1e-12)


falls = st.lists(st.tuples(st.floats(0.05, 3), st.floats(0.01, 2)), min_size=1, max_size=7)


@given(falls)
def test_a_tabulated_curve_falls_everywhere_and_passes_through_its_points(steps):
    flows = [1e-4 * sum(width for width, _ in steps[:n]) for n in range(len(steps) + 1)]
    heads = [sum(drop for _, drop in steps[n:]) for n in range(len(steps) + 1)]
    pump = TabulatedPump(tuple(zip(flows, heads)))
    assert [pump.head(Q) for Q in flows] == pytest.approx(heads, abs=1e-12)
    along = [pump.head(min(Q, flows[-1])) for Q in numpy.linspace(0, flows[-1], 200).tolist()]
    assert all(b <= a + 1e-12 for a, b in zip(along, along[1:]))


def test_two_points_make_a_straight_line():
    assert TabulatedPump(((0.0, 3.0), (6e-4, 0.0))).head(2e-4) == pytest.approx(2.0)


@pytest.mark.parametrize("points, says", [((), "two points"), (((0.0, 3.0),), "two points"), (((1e-4, 3.0), (2e-4, 1.0)), "first at no flow"),
                                          (((0.0, 3.0), (2e-4, 2.0), (1e-4, 1.0)), "must rise"), (((0.0, 2.9), (1e-4, 3.0), (2e-4, 3.1)), "only rise"), (((0.0, 2.9), (1e-4, 2.0), (2e-4, 2.1)), "must then fall"),
                                          (((0.0, 3.0), (1e-4, 3.0)), "must then fall"), (((0.0, 3.0), (1e-4, -0.1)), "zero or more"),
                                          (((0.0, math.nan), (1e-4, 1.0)), "two points")])  # fmt: skip
def test_a_curve_that_cannot_be_a_pump_is_refused(points, says):
    with pytest.raises(InputError, match=says):
        TabulatedPump(points)


RISING = ((0.0, 3.0), (1e-4, 3.2), (3e-4, 2.6), (5e-4, 0.4))


def test_a_curve_that_rises_at_first_is_read_as_scipy_reads_it_and_the_pump_settles_past_its_peak():
    pump, scipys = TabulatedPump(RISING), PchipInterpolator(*zip(*RISING))
    flows = numpy.linspace(0, 5e-4, 101)
    assert [pump.head(Q) for Q in flows.tolist()] == pytest.approx(scipys(flows).tolist(), rel=1e-12)
    assert pump.Q_peak == 1e-4 and pump.H_0 == 3.0
    duty = duty_point(pump, lambda Q: 2.0 + 3e6 * Q**2)
    assert 1e-4 < duty.Q < 5e-4 and duty.H == pytest.approx(2.0 + 3e6 * duty.Q**2)
    steep = duty_point(pump, lambda Q: 2.9 + 8e7 * Q**2)  # they meet before the peak
    assert steep.Q < 1e-4 and steep.H == pytest.approx(2.9 + 8e7 * steep.Q**2)
    with pytest.raises(InputError, match="no water comes"):  # over the head at no flow it never starts, though the peak is higher
        duty_point(pump, lambda Q: 3.1 + 1e5 * Q**2)


def test_how_a_curve_of_three_points_is_read_is_said_with_what_straight_lines_would_give():
    pump = TabulatedPump(((0.0, 3.0), (2e-4, 2.5), (6e-4, 0.5)))
    assert pump.straight(4e-4) == pytest.approx(1.5), "half way between 2.5 and 0.5"
    smooth = float(PchipInterpolator([0.0, 2e-4, 6e-4], [3.0, 2.5, 0.5])(4e-4))
    assert f"straight lines would give 1.50 m, {(1.5 - smooth) / smooth:+.1%}" in pump.said(4e-4) and "3 points" in pump.said(4e-4)
    assert "straight lines would give 4.92 ft" in pump.said(4e-4, us=True)  # 1.5 m over 0.3048
    assert "hunt" not in pump.said(4e-4) and "hunt" in TabulatedPump(RISING).said(2e-4)


def test_a_tabulated_curve_is_not_read_beyond_its_ends():
    for Q in (-1e-6, 6.1e-4):
        with pytest.raises(InputError, match="curve runs from 0"):
            TabulatedPump(CURVE).head(Q)


# --- duty point ---------------------------------------------------------------------------------------------------------------------


def test_the_duty_point_lies_on_both_curves():
    for pump in (LabelPump(H_0=3.0, Q_max=40e-3 / 60), TabulatedPump(CURVE)):
        duty = duty_point(pump, needed(HOSE, 0.9))
        assert duty.H == pump.head(duty.Q) == pytest.approx(head_needed(duty.Q, 0.9, (HOSE,), NU), rel=1e-12)


@given(st.floats(2, 4.5), st.floats(0.5, 1.4), st.floats(5e-4, 2e-3), st.floats(3, 12))
def test_with_a_friction_factor_that_stays_the_closed_form_gives_the_same_flow(H_0, z_s, Q_max, L_pipe):
    ribbed = Stretch(d_pipe=0.025, L_pipe=L_pipe, K=4.0, f=tables.RIBBED_HOSE.value)
    k_sys = system_constant(d_pipe=0.025, f=ribbed.f, L_pipe=L_pipe, K=4.0)
    assert duty_point(LabelPump(H_0, Q_max), needed(ribbed, z_s)).Q == pytest.approx(duty_flow(H_0=H_0, Q_max=Q_max, z_s=z_s, h_loss=k_sys, Q_1=1.0), rel=1e-12)


def test_a_lift_above_the_shut_off_head_is_refused_with_both_numbers():
    for lift in (3.0, 3.2):
        with pytest.raises(InputError, match=r"static lift is 3\.?2? m, but the pump stops at 3 m"):
            duty_point(LabelPump(3.0, 6e-4), needed(HOSE, lift))


def test_a_curve_that_ends_before_the_system_meets_it_is_refused():
    with pytest.raises(InputError, match="read more points"):
        duty_point(TabulatedPump(CURVE[:3]), needed(HOSE, 0.1))


def test_the_friction_law_hardly_matters_but_fittings_and_ribs_do():
    """Blasius, Swamee-Jain, Colebrook and Hazen-Williams agree within 0.5 %; without fittings, or with ribs, the flow moves by 5 % and more."""
    pump = LabelPump(3.0, 60e-3 / 60)
    flows = {law: duty_point(pump, needed(HOSE, 0.9, law)).Q for law in ("colebrook", "swamee-jain", "haaland", "blasius")}

    def by_hazen_williams(Q):
        return 0.9 + head_lost_by_hazen_williams(Q=Q, d_pipe=0.025, L_pipe=4.0, C_HW=150) + fitting_head(K=4.0, v=speed_in_a_pipe(Q=Q, d_pipe=0.025))

    right = flows.pop("colebrook")
    for Q in (*flows.values(), duty_point(pump, by_hazen_williams).Q):
        assert Q == pytest.approx(right, rel=5e-3)
    assert duty_point(pump, needed(HOSE._replace(K=0.0), 0.9)).Q > 1.05 * right
    assert duty_point(pump, needed(HOSE._replace(f=tables.RIBBED_HOSE.value), 0.9)).Q < 0.95 * right


def test_a_duty_point_on_the_step_from_laminar_to_turbulent_is_still_found():
    """The head needed steps up at a Reynolds number of 2000; a pump whose curve passes through the step stands on it."""
    thin = Stretch(d_pipe=0.004, L_pipe=1.0)
    at_step = 2000 * NU * math.pi * 0.004 / 4
    before, after = (head_needed(at_step * share, 0.1, (thin,), NU) for share in (0.999, 1.001))
    middle = (before + after) / 2
    duty = duty_point(LabelPump(H_0=middle / 0.75, Q_max=2 * at_step), needed(thin, 0.1))
    assert before < duty.H < after
    assert duty.Q == pytest.approx(at_step, rel=1e-9)


# --- power --------------------------------------------------------------------------------------------------------------------------


@given(st.floats(0.5, 6), st.floats(1e-4, 5e-3))
def test_the_best_power_of_a_label_is_the_top_of_its_curve(H_0, Q_max):
    """SciPy looks for the top; the formula must name it. So must the search along a curve, within its 400 steps."""
    pump = LabelPump(H_0, Q_max)
    top = minimize_scalar(lambda share: -hydraulic_power(rho=998.2, Q=share * Q_max, H_pump=pump.head(share * Q_max)), bounds=(0, 1), method="bounded")
    assert best_power(rho=998.2, Q_max=Q_max, H_0=H_0) == pytest.approx(-top.fun, rel=1e-9)
    assert best_power_of(pump, 998.2) == pytest.approx(-top.fun, rel=1e-5)


def test_the_power_of_a_tabulated_curve_is_at_least_that_of_its_points():
    pump = TabulatedPump(CURVE)
    assert best_power_of(pump, 998.2) >= max(hydraulic_power(rho=998.2, Q=Q, H_pump=H) for Q, H in CURVE) * (1 - 1e-4)


def test_a_label_pump_is_at_rest_at_either_end():
    assert pump_curve(H_0=3.0, Q_max=6e-4, Q=0.0) == 3.0
    assert pump_curve(H_0=3.0, Q_max=6e-4, Q=6e-4) == 0.0


# --- nameplate ----------------------------------------------------------------------------------------------------------------------


def test_gallons_a_minute_printed_for_gallons_an_hour_are_caught():
    """An invented label: max 550 GPM, max head 10 ft, 40 W. By hand 0.3849 x 9.81 x 34.7 x 3.048 is 399 W, ten times what goes in."""
    found = nameplate_check("550 US gal/min", H_0=10 * 0.3048, P_in=40.0)
    assert found.verdict == "impossible"
    assert found.ratio == pytest.approx(9.98, rel=3e-3)
    assert found.readings["US gal/h"] == pytest.approx(found.ratio / 60)
    assert "550 US gal/min" in found.sentence and "read as 550 US gal/h it is 0.17" in found.sentence


def test_litres_a_minute_and_an_hour_are_told_apart_both_ways():
    true = nameplate_check("2000 L/h", H_0=2.5, P_in=35.0)
    assert true.verdict == "possible" and not true.readings
    too_fast, too_slow = nameplate_check("2000 L/min", 2.5, 35.0), nameplate_check("33 L/h", 2.5, 35.0)
    assert too_fast.verdict == "impossible" and [*too_fast.readings] == ["L/h"]
    assert too_slow.verdict == "feeble" and [*too_slow.readings] == ["L/min"]


def test_us_and_imperial_gallons_are_tried_where_the_ratio_is_doubtful():
    found = nameplate_check("1200 imp gal/h", H_0=4.0, P_in=40.0)
    assert found.verdict == "doubtful"
    assert found.readings["US gal/h"] == pytest.approx(found.ratio * 231 * 0.0254**3 / 4.54609e-3)


def test_a_label_that_no_mix_up_explains_says_so():
    found = nameplate_check("30 m3/h", H_0=10.0, P_in=40.0)
    assert found.verdict == "impossible" and not found.readings
    assert "a digit may be wrong" in found.sentence


@pytest.mark.parametrize("printed", ["550 L/min", "550 lpm", "550 l/min"])
def test_units_spelled_in_other_ways_are_recognised(printed):
    assert [*nameplate_check(printed, 3.0, 40.0).readings] == ["L/h"]


def test_the_ratio_is_that_of_the_formula_and_every_check_is_one_sentence():
    for printed in ("550 US gal/min", "2000 L/h", "30 m3/h", "9 US gal/h", "1200 imp gal/h"):
        found = nameplate_check(printed, 3.0, 40.0, rho=998.2)
        assert found.sentence.endswith(".") and found.sentence.count(". ") == 0
    assert nameplate_check("2000 L/h", 3.0, 40.0).ratio == nameplate_ratio(rho=998.2, Q_max=2 / 3600, H_0=3.0, P_in=40.0)


def test_a_label_that_does_not_say_whose_gallons_is_asked_about():
    with pytest.raises(InputError, match="US gal/min"):
        nameplate_check("550 gpm", 3.0, 40.0)
    with pytest.raises(InputError, match="P_in"):
        nameplate_check("550 L/h", 3.0, 0.0)
