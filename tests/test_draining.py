"""Draining: every time of draining against the differential equation solved in steps, leaks against the sum of their layers."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from brimwork import tables
from brimwork.topics import find
from brimwork.units import InputError

G = 9.80665
drain_time = find("time to drain through an opening")
head_left, greatest_crest = find("head left over a rim after a time"), find("greatest height of a siphon's crest")
ROOT = math.sqrt(2 * G)
heads = st.floats(0.02, 2.0)


def _time(rate, H_1: float, H_2: float) -> float:
    """Seconds in which a head falls from H_1 to H_2 (m) at -rate(head), in m/s, followed in steps."""
    reached = lambda t, s: s[0] - H_2  # noqa: E731
    reached.terminal = True
    return solve_ivp(lambda t, s: [-rate(max(s[0], 0.0))], (0, 1e9), [H_1], events=reached, rtol=1e-10, atol=1e-12, method="LSODA").t_events[0][0]


HOLE = {"C_d": 0.62, "A_o": 1.2e-3}
PIPE = {"f": 0.03, "L_pipe": 4.0, "d_pipe": 0.025, "K": 2.5}
PIPE_FLOW = math.pi / 4 * 0.025**2 * ROOT / math.sqrt(0.03 * 4 / 0.025 + 2.5 + 1)
CASES = {  # name: (values, fall of the head in m/s at a head, start, end)
    "time to drain through an opening": (HOLE | {"A_tank": 0.8}, lambda h: 0.62 * 1.2e-3 * ROOT * h**0.5 / 0.8, 0.9, 0.1),
    "time to drain against an inflow": (HOLE | {"A_tank": 0.8, "Q_feed": 4e-4}, lambda h: (0.62 * 1.2e-3 * ROOT * h**0.5 - 4e-4) / 0.8, 0.9, 0.1),
    "time for two tanks to level": (HOLE | {"A_tank": 0.8, "A_t2": 2.1}, lambda h: 0.62 * 1.2e-3 * ROOT * h**0.5 * (1 / 0.8 + 1 / 2.1), 0.9, 0.1),
    "time to draw down over a V-notch": ({"A_tank": 0.8, "k_n": 1.4}, lambda h: 1.4 * h**2.5 / 0.8, 0.1, 0.02),
    "time in which a rim runs down": ({"A_tank": 0.5, "C_w": 1.7, "b": 2.45}, lambda h: 1.7 * 2.45 * h**1.5 / 0.5, 0.006, 0.001),
    "time to drain through a pipe": (PIPE | {"A_tank": 0.8}, lambda h: PIPE_FLOW * h**0.5 / 0.8, 0.9, 0.1),
}


@pytest.mark.parametrize("name", CASES)
def test_a_time_of_draining_is_that_of_the_differential_equation(name):
    values, rate, H_1, H_2 = CASES[name]
    assert find(name)(**values, H_1=H_1, H_2=H_2) == pytest.approx(_time(rate, H_1, H_2), rel=1e-6)
    assert find(name)(**values, H_1=H_1, H_2=H_2) == pytest.approx(quad(lambda h: 1 / rate(h), H_2, H_1, epsabs=0)[0], rel=1e-9)


@pytest.mark.parametrize("name", CASES)
@given(data=st.data())
def test_draining_in_two_goes_takes_as_long_as_in_one(name, data):
    values, _, H_1, H_2 = CASES[name]
    between = data.draw(st.floats(H_2 * 1.001, H_1 * 0.999))
    whole = find(name)(**values, H_1=H_1, H_2=H_2)
    assert find(name)(**values, H_1=H_1, H_2=between) + find(name)(**values, H_1=between, H_2=H_2) == pytest.approx(whole, rel=1e-9)


@given(H_1=heads)
def test_the_last_of_a_tank_takes_exactly_twice_as_long_as_the_first_flow_would(H_1):
    """OpenStax and many others: an emptying tank takes twice the time of its first flow."""
    first = find("flow through an opening")(**HOLE, H_o=H_1)
    assert drain_time(**HOLE, A_tank=0.8, H_1=H_1, H_2=0.0) == pytest.approx(2 * 0.8 * H_1 / first, rel=1e-12)


def test_a_trickle_that_runs_in_hardly_delays_and_a_big_one_does():
    drain = drain_time(**HOLE, A_tank=0.8, H_1=0.9, H_2=0.1)
    delayed = [find("time to drain against an inflow")(**HOLE, A_tank=0.8, H_1=0.9, H_2=0.1, Q_feed=Q) for Q in (1e-9, 5e-4, 9e-4)]
    assert delayed[0] == pytest.approx(drain, rel=1e-5) and drain < delayed[1] < delayed[2]


@given(A_tank=st.floats(0.1, 5))
def test_a_second_tank_as_big_as_a_lake_changes_nothing(A_tank):
    alone = drain_time(**HOLE, A_tank=A_tank, H_1=0.5, H_2=0.1)
    assert find("time for two tanks to level")(**HOLE, A_tank=A_tank, A_t2=1e12, H_1=0.5, H_2=0.1) == pytest.approx(alone, rel=1e-9)


@given(H_s=heads, L_pipe=st.floats(0.5, 8))
def test_a_siphon_pays_its_head_out_in_speed_friction_and_fittings(H_s, L_pipe):
    given_ = PIPE | {"L_pipe": L_pipe}
    Q = find("flow of a siphon")(**given_, H_s=H_s)
    v = find("speed in a pipe")(Q=Q, d_pipe=0.025)
    spent = find("head lost to friction")(f=0.03, L_pipe=L_pipe, d_pipe=0.025, v=v) + find("head lost in fittings")(K=2.5, v=v) + v**2 / (2 * G)
    assert spent == pytest.approx(H_s, rel=1e-12)


@given(V=st.floats(0.001, 1), t=st.floats(1, 1e5))
def test_a_bucket_filled_at_the_flow_it_shows_takes_the_time_it_took(V, t):
    assert find("time to fill")(V=V, Q=find("flow by a bucket")(V=V, t_fill=t)) == pytest.approx(t, rel=1e-12)


@given(d_out=st.floats(0.02, 0.08), H_o=st.floats(0.01, 0.2))
def test_an_overflow_pipe_carries_what_an_opening_of_its_area_does(d_out, H_o):
    by_area = find("flow through an opening")(C_d=0.6, A_o=math.pi / 4 * d_out**2, H_o=H_o)
    assert find("flow that an overflow pipe can carry")(C_d=0.6, d_out=d_out, H_o=H_o) == pytest.approx(by_area, rel=1e-12)


def test_an_overflow_carries_a_cloudburst_on_a_small_catch_or_it_does_not():
    """100 mm/h on 6 m2 is 10 L/min; a 50 mm pipe with 25 mm over its middle carries 49.5 L/min at 0.6 (worked by hand)."""
    Q_over = find("flow that an overflow pipe can carry")(C_d=0.6, d_out=0.05, H_o=0.025)
    assert Q_over == pytest.approx(49.5e-3 / 60, rel=2e-3)
    assert find("overflow ratio")(Q_over=Q_over, k_run=1.0, A_catch=6.0, i_rain=0.1 / 3600, Q_feed=0.0) == pytest.approx(4.95, rel=2e-3)


# --- leaks --------------------------------------------------------------------------------------------------------------------------

GAP = {"d_hole": 0.03, "H_o": 0.35, "s_gap": 0.2e-3, "nu": 1.0e-6, "L_gap": 0.03}


def test_a_gap_leaks_the_sum_of_its_layers():
    half = GAP["s_gap"] / 2
    push = G * GAP["H_o"] / GAP["L_gap"] / GAP["nu"]
    speed = lambda y: quad(lambda x: push * x, y, half)[0]  # noqa: E731  from the wall, where it stands still
    layers = 2 * math.pi * GAP["d_hole"] * quad(speed, 0, half)[0]
    assert find("leak through a narrow gap round a pipe")(**GAP) == pytest.approx(layers, rel=1e-9)


@given(s_gap=st.floats(1e-5, 1e-3))
def test_twice_the_gap_leaks_eight_times_as_much(s_gap):
    assume(s_gap > 0)
    leak = find("leak through a narrow gap round a pipe")
    assert leak(**GAP | {"s_gap": 2 * s_gap}) == pytest.approx(8 * leak(**GAP | {"s_gap": s_gap}), rel=1e-12)


def test_a_wide_gap_is_noted_as_no_longer_laminar():
    worked = find("leak through a narrow gap round a pipe").work(**GAP | {"s_gap": 1e-3})
    assert any("above the tested range" in note for note in worked.notes)
    assert find("leak through a narrow gap round a pipe").notes(GAP) == []


# --- the last of a rim, and the crest of a siphon -----------------------------------------------------------------------------------


@given(H_1=st.floats(1e-3, 0.02), t=st.floats(1.0, 600.0))
def test_the_head_left_over_a_rim_is_that_of_the_differential_equation(H_1, t):
    left = head_left(H_1=H_1, C_w=1.7, b=2.45, A_tank=0.478, t_drain=t)
    followed = solve_ivp(lambda _, s: [-1.7 * 2.45 * max(s[0], 0.0) ** 1.5 / 0.478], (0, t), [H_1], rtol=1e-9, atol=1e-13, method="LSODA").y[0][-1]
    assert left == pytest.approx(followed, rel=1e-5)


STILL = {"f": 0.0, "L_up": 1.0, "d_pipe": 0.02, "K_up": 0.0, "v": 0.0}


def test_a_crest_over_still_water_is_as_high_as_the_air_holds_up_less_what_boils():
    """101 325 Pa less 2339 Pa (Maurer, chapter 2, water at 20 degC) over 998.2 kg/m3 x 9.80665: 10.112 m."""
    height = greatest_crest(p_air=101325.0, p_boil=tables.vapour_pressure(293.15), rho=998.2, **STILL)
    assert height == pytest.approx((101325 - 2339) / (998.2 * G), rel=1e-4)


@given(v=st.floats(0.1, 3.0), K_up=st.floats(0, 3), L_up=st.floats(0.5, 4))
def test_at_the_greatest_crest_the_pressure_by_the_energy_from_surface_to_crest_is_that_of_boiling(v, K_up, L_up):
    z = greatest_crest(p_air=9.5e4, p_boil=2.3e3, rho=998.0, f=0.03, L_up=L_up, d_pipe=0.02, K_up=K_up, v=v)
    lost = (0.03 * L_up / 0.02 + K_up) * v**2 / (2 * G)
    assert 9.5e4 - 998.0 * (G * z + v**2 / 2 + G * lost) == pytest.approx(2.3e3, rel=1e-6)


@pytest.mark.parametrize("celsius", [0, 1, 5, 13.7, 20, 25, 31, 39, 40])
def test_the_pressure_at_which_water_boils_is_that_of_the_iapws_formulation(celsius):
    iapws97 = pytest.importorskip("iapws").iapws97
    assert tables.vapour_pressure(273.15 + celsius) == pytest.approx(iapws97._PSat_T(273.15 + celsius) * 1e6, rel=5e-4)


def test_the_pressure_at_which_water_boils_is_the_one_a_textbook_prints():
    """2339 Pa at 20 degC: E. Maurer, Hydraulics and Water Resources: Examples Using R, chapter 2."""
    assert tables.vapour_pressure(293.15) == pytest.approx(2339, rel=1e-3)


def test_water_outside_the_table_of_boiling_is_refused():
    with pytest.raises(InputError, match="0 to 40 degC"):
        tables.vapour_pressure(320.0)
