"""Start and stop of a feature in steps of a second: no water made or lost, against SciPy's solver, and against exact answers where there are any."""

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from brimwork.design.follows.start_and_stop import Circuit, OpenHose, run_and_rest, stop
from brimwork.topics import find
from brimwork.units import InputError

MM, LITRE, G = 1e-3, 1e-3, 9.80665
HOSE = OpenHose(d_pipe=0.025, L_pipe=2.4, f=0.03, K=4.0, z_rim=0.95)
BOWL = Circuit(Q=5e-4, A_v=0.478, b=2.45, C_w=1.7, V_pc=1.18 * LITRE, V_siph=7.17 * LITRE, V_way=2.86 * LITRE, A_w=0.912, h_min=0.150, h_over=0.400, hose=HOSE)
VALVE = replace(BOWL, hose=None)


# --- water is kept ------------------------------------------------------------------------------------------------------------------


@settings(max_examples=25)
@given(
    Q=st.floats(1e-4, 2e-3),
    A_v=st.floats(0.1, 0.9),
    b=st.floats(0.2, 3.0),
    V_siph=st.floats(0, 0.05),
    V_way=st.floats(0, 0.01),
    A_w=st.floats(0.1, 2.0),
    h_static=st.floats(0.15, 0.4),
    open_hose=st.booleans(),
    empty=st.floats(0, 0.1),
    valve=st.one_of(st.none(), st.floats(0.15, 0.4)),
)
def test_at_every_step_all_the_water_is_there(Q, A_v, b, V_siph, V_way, A_w, h_static, open_hose, empty, valve):
    hose = HOSE if open_hose else None
    circuit = Circuit(Q, A_v, b, 1.7, 1e-3, V_siph, V_way, A_w, 0.15, 0.40, hose, Q_feed=2e-4, h_float=valve)
    course = run_and_rest(circuit, h_static, on=30, off=30, step=2.0, empty=empty)
    for moment in course.moments:
        assert moment.balance == pytest.approx(course.moments[0].balance, abs=1e-9)
        assert circuit.h_min - 1e-9 <= course.level(moment) or not moment.running
        assert course.level(moment) <= circuit.h_over + 1e-9
        assert min(moment.on_the_way, moment.spilled, moment.fed) >= -1e-12


@pytest.mark.parametrize("circuit", [BOWL, VALVE, replace(BOWL, V_way=0.0), replace(BOWL, A_v=0.05)])
def test_after_the_stop_all_of_it_comes_back_to_the_static_level(circuit):
    course = run_and_rest(circuit, 0.38, on=300, off=3000, step=10.0)
    left = course.circuit.A_v * course.head(course.moments[-1])
    assert left < 0.02 * circuit.in_transit
    assert course.level(course.moments[-1]) + left / circuit.A_w == pytest.approx(0.38, abs=1e-6)
    assert course.spilled == 0 and course.dry_at is None


def test_once_settled_the_level_has_dropped_by_the_water_in_transit():
    course = run_and_rest(BOWL, 0.38, on=300, off=1)
    parts = {"V_rim": 0.478 * BOWL.head, "V_siph": 7.17 * LITRE, "V_pc": 1.18 * LITRE, "V_hold": 2.86 * LITRE, "V_film": 0.0, "V_sheet": 0.0}
    drop = find("drop of the level on start")(V_tr=find("water in transit")(**parts), A_b=0.96, n_v=0.95)
    assert 0.38 - course.level(course.lowest) == pytest.approx(drop, rel=1e-6)


# --- against exact answers ----------------------------------------------------------------------------------------------------------


def test_water_runs_over_the_rim_when_hose_and_vessel_are_full():
    """(1.18 + 7.17) L at 0.5 L/s: 16.7 s."""
    expected = find("time until the vessel is full to its rim")(V_pc=1.18 * LITRE, V_siph=7.17 * LITRE, Q=5e-4)
    assert expected == pytest.approx(16.7)
    course = run_and_rest(BOWL, 0.38, on=30, off=1, step=0.1)
    assert course.over_the_rim_at == pytest.approx(expected, abs=0.11)
    assert run_and_rest(BOWL, 0.38, on=30, off=1, step=0.1, empty=5e-3).over_the_rim_at == pytest.approx(expected + 10, abs=0.11)


@pytest.mark.parametrize("seconds", [1.0, 2.0, 4.0, 8.0])
def test_the_head_rises_over_the_rim_as_the_exact_answer_says(seconds):
    course = run_and_rest(VALVE, 0.38, on=seconds, off=1, step=seconds)
    share = course.head(course.moments[1]) / VALVE.head
    exact = find("time in which the head over a rim rises")(A_v=0.478, H_set=VALVE.head, Q=5e-4, k_H=share)
    assert exact == pytest.approx(seconds, rel=2e-3)


@pytest.mark.parametrize("seconds", [1.0, 5.0, 30.0, 200.0])
def test_the_rim_runs_down_as_the_exact_answer_says(seconds):
    course = stop(VALVE, 0.36, off=seconds, step=seconds)
    left = course.head(course.moments[-1])
    assert left == pytest.approx(find("head left over a rim after a time")(H_1=VALVE.head, C_w=1.7, b=2.45, A_tank=0.478, t_drain=seconds), rel=1e-4)
    assert find("time in which a rim runs down")(A_tank=0.478, C_w=1.7, b=2.45, H_1=VALVE.head, H_2=left) == pytest.approx(seconds, rel=1e-4)


def test_water_on_the_way_grows_as_the_exact_answer_says_when_the_rim_passes_all_at_once():
    """A vessel with hardly any surface: the flow over its rim is the pump's from the first moment."""
    course = run_and_rest(replace(VALVE, A_v=0.005), 0.38, on=5, off=1, step=5)
    way = find("water on its way back after a time")(Q=5e-4, t_way=2.86 * LITRE / 5e-4, t_on=5.0)
    assert course.moments[1].on_the_way == pytest.approx(way, rel=6e-3)


# --- against SciPy ------------------------------------------------------------------------------------------------------------------


def _scipy(running, above, way, reservoir, seconds):
    """The same feature, written down again from its physics and given to SciPy's Radau method."""

    def rates(_, s):
        above, way, reservoir = s
        rim = 1.7 * 2.45 * (max(above - 8.35 * LITRE, 0.0) / 0.478) ** 1.5
        back = way / (2.86 * LITRE / 5e-4)
        pumped, siphon = (5e-4, 0.0) if running else (0.0, 0.0)
        if not running and above > 0:
            surface = 0.95 + max(above - 8.35 * LITRE, -7.17 * LITRE) / 0.478
            speed = math.sqrt(2 * G * (surface - reservoir / 0.912) / (0.03 * 2.4 / 0.025 + 4.0 + 1))
            siphon = math.pi / 4 * 0.025**2 * speed
        return [pumped - rim - siphon, rim - back, back + siphon - pumped]

    return solve_ivp(rates, (0, seconds), [above, way, reservoir], method="Radau", rtol=1e-9, atol=1e-12, max_step=0.02, t_eval=range(1, seconds + 1)).y


def test_the_start_is_that_of_an_independent_solver():
    course = run_and_rest(BOWL, 0.38, on=60, off=1)
    theirs = _scipy(True, 0.0, 0.0, 0.912 * 0.38, 60)
    for number, moment in enumerate(course.moments[1:61]):
        assert course.level(moment) == pytest.approx(theirs[2][number] / 0.912, abs=2e-6)
        assert course.head(moment) == pytest.approx(max(theirs[0][number] - 8.35 * LITRE, 0.0) / 0.478, abs=1e-5)


def test_the_stop_with_an_open_hose_is_that_of_an_independent_solver():
    course = stop(BOWL, 0.3664, off=40)
    theirs = _scipy(False, 8.35 * LITRE + 0.478 * BOWL.head, 2.86 * LITRE, 0.912 * 0.3664, 40)
    for number, moment in enumerate(course.moments[1:]):
        assert course.level(moment) == pytest.approx(theirs[2][number] / 0.912, abs=1e-5)
        assert course.head(moment) == pytest.approx(max(theirs[0][number] - 8.35 * LITRE, 0.0) / 0.478, abs=1e-5)


def test_finer_steps_change_nothing_that_can_be_seen():
    coarse, fine = (run_and_rest(BOWL, 0.38, on=60, off=60, step=step) for step in (1.0, 0.05))
    for moment, other in zip(coarse.moments, fine.moments[::20], strict=True):
        assert moment.t == pytest.approx(other.t)
        assert coarse.level(moment) == pytest.approx(fine.level(other), abs=1e-5)


# --- what it is for: does it pass the overflow, does the pump run dry ----------------------------------------------------------------


def test_a_float_valve_that_fills_while_the_pump_runs_sends_water_over_the_overflow_at_the_stop():
    """It fills the drop of the start up again: 12.4 L of 0.912 m2, 13.6 mm; from 390 mm that is 403.6 mm, 3.26 L too much."""
    circuit = replace(BOWL, Q_feed=2e-4, h_float=0.390)
    course = run_and_rest(circuit, 0.390, on=600, off=3000, step=5)
    assert course.moments[-1].fed == pytest.approx(circuit.in_transit, rel=2e-3)
    assert course.spilled == pytest.approx(circuit.in_transit - 0.912 * 0.010, rel=0.02)
    assert course.level(course.highest) == pytest.approx(0.400)


def test_a_reservoir_with_too_little_above_the_pump_runs_dry_and_one_with_enough_does_not():
    """Hose and vessel take 8.35 L before anything comes back; 5 mm of 0.912 m2 are 4.56 L, gone in 9.1 s."""
    course = run_and_rest(BOWL, 0.155, on=60, off=60, step=0.1)
    assert course.dry_at == pytest.approx(9.12, abs=0.11)
    assert course.level(course.lowest) == pytest.approx(0.150)
    assert run_and_rest(BOWL, 0.165, on=60, off=60).dry_at is None
    assert run_and_rest(BOWL, 0.165, on=120, off=60, empty=0.02).dry_at is not None, "a dry vessel takes more the first time"


def test_a_pump_that_stops_before_a_dry_vessel_is_full_gets_back_the_water_of_the_hose_alone():
    """In 20 s it has sent 10 L into a vessel that lacks 20 L: the hose gives 1.18 L back, 8.82 L stay up, 9.67 mm of the tank."""
    course = run_and_rest(BOWL, 0.38, on=20, off=60, empty=20 * LITRE)
    assert course.level(course.moments[20]) == pytest.approx(0.38 - 10 * LITRE / 0.912)
    assert course.level(course.moments[-1]) == pytest.approx(0.38 - 8.82 * LITRE / 0.912)
    assert course.over_the_rim_at is None


def test_a_stop_takes_nothing_from_the_reservoir():
    for course in (
        run_and_rest(BOWL, 0.17, on=120, off=120, empty=0.02),
        run_and_rest(BOWL, 0.155, on=60, off=60),
        run_and_rest(VALVE, 0.2, on=60, off=60),
    ):
        levels = [course.level(moment) for moment in course.moments if not moment.running]
        assert all(before <= after + 1e-12 for before, after in zip(levels, levels[1:])) and levels[0] >= 0.15 - 1e-9


def test_a_check_valve_keeps_the_vessel_full():
    course = stop(VALVE, 0.36, off=600, step=5)
    assert course.moments[-1].above == pytest.approx(0.0, abs=2e-5)
    assert course.level(course.moments[-1]) < stop(BOWL, 0.36, off=600, step=5).moments[-1].reservoir / 0.912


def test_a_level_that_starts_at_the_limit_is_followed_with_a_very_small_bore():
    stone = Circuit(Q=2e-4, A_v=0.002, b=0.16, C_w=1.7, V_pc=0.5e-3, V_siph=0.0, V_way=2e-3, A_w=0.5, h_min=0.12, h_over=0.4, hose=HOSE)
    course = run_and_rest(stone, 0.3, on=60, off=60)
    assert course.moments[-1].balance == pytest.approx(0.15, abs=1e-9)


@pytest.mark.parametrize(
    "wrong, said",
    [
        (lambda: run_and_rest(BOWL, 0.45, 60, 60), "overflow is at 0.4 m"),
        (lambda: run_and_rest(BOWL, 0.1, 60, 60), "the pump needs 0.15 m"),
        (lambda: run_and_rest(BOWL, math.nan, 60, 60), "static level"),
        (lambda: run_and_rest(BOWL, 0.3, 60, 60, empty=-1), "static level"),
        (lambda: run_and_rest(BOWL, 0.3, 0, 60), "above zero"),
        (lambda: run_and_rest(BOWL, 0.3, 1e7, 60), "shorter time"),
        (lambda: stop(BOWL, 0.5, 60), "running level"),
        (lambda: replace(BOWL, Q=0.0), "above zero"),
        (lambda: replace(BOWL, A_w=-1.0), "below zero"),
        (lambda: replace(BOWL, V_way=math.inf), "below zero"),
        (lambda: replace(BOWL, h_min=0.5), "the limit comes first"),
        (lambda: replace(BOWL, h_float=0.1), "the limit comes first"),
        (lambda: replace(HOSE, d_pipe=0.0), "bore above zero"),
    ],
)
def test_what_cannot_be_is_refused_with_what_to_give(wrong, said):
    with pytest.raises(InputError, match=said):
        wrong()
