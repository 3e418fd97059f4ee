"""Falling water and jets: against numerical integration, against each other, and what must be true of every fall."""

import math

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.optimize import minimize_scalar

from brimwork import tables
from brimwork.topics import find
from brimwork.topics.falling_water import apron
from brimwork.topics.jets import crown_of_upright_pipe
from brimwork.units import InputError

G = 9.80665
boil = find("mound of a flow from a bore")
flows = st.floats(1e-4, 0.02)
falls = st.floats(0.02, 3.0)


@given(q=flows)
def test_at_critical_depth_a_flow_has_its_least_energy(q):
    least = minimize_scalar(lambda y: y + q**2 / (2 * G * y**2), bounds=(1e-5, 1.0), method="bounded", options={"xatol": 1e-12})
    assert find("critical depth")(q=q) == pytest.approx(least.x, rel=1e-5)


@given(q=flows)
def test_critical_depth_is_two_thirds_of_the_head_on_a_broad_crest(q):
    assert find("critical depth")(q=q) == pytest.approx(2 / 3 * find("head at a broad crest")(Q=q, b=1.0), rel=1e-12)


def _sheet(q: float, h_fall: float) -> dict[str, float]:
    """A free sheet from edge to landing, by letter."""
    values = {"q": q, "h_fall": h_fall}
    for name in ("critical depth", "depth at the brink", "speed at the brink", "time of fall", "throw of a free sheet or jet", "speed with which water lands",
                 "thickness of the sheet where it lands"):  # fmt: skip
        values[find(name).result] = find(name)(**find(name).only(values))
    return values


@given(q=flows, h_fall=falls)
def test_a_sheet_carries_its_flow_at_the_edge_and_where_it_lands(q, h_fall):
    sheet = _sheet(q, h_fall)
    assert sheet["v_b"] * sheet["y_b"] == pytest.approx(q, rel=1e-12) and sheet["v_land"] * sheet["y_land"] == pytest.approx(q, rel=1e-12)
    assert sheet["y_land"] < sheet["y_b"] < sheet["y_c"] and sheet["v_land"] > sheet["v_b"]


@pytest.mark.parametrize("v_b, h_fall", [(0.48, 0.75), (0.9, 0.2), (2.0, 2.5)])
def test_a_drop_followed_in_steps_lands_where_and_when_and_as_fast_as_the_formulas_say(v_b, h_fall):
    landed = lambda t, s: s[1] - h_fall  # noqa: E731
    landed.terminal = True
    path = solve_ivp(lambda t, s: [s[2], s[3], 0.0, G], (0, 5), [0.0, 0.0, v_b, 0.0], events=landed, rtol=1e-11, atol=1e-12)
    (x, _, along, down), time = path.y_events[0][0], path.t_events[0][0]
    assert find("time of fall")(h_fall=h_fall) == pytest.approx(time, rel=1e-8)
    assert find("throw of a free sheet or jet")(v_b=v_b, h_fall=h_fall) == pytest.approx(x, rel=1e-8)
    assert find("speed with which water lands")(v_b=v_b, h_fall=h_fall) == pytest.approx(math.hypot(along, down), rel=1e-8)


@pytest.mark.parametrize("radius, v_wind, h_fall", [(0.1e-3, 8.0, 1.0), (0.5e-3, 3.0, 0.4), (2e-3, 12.0, 1.5)])
def test_no_real_drop_heavy_enough_to_fall_freely_drifts_further_than_the_bound(radius, v_wind, h_fall):
    """Drop with drag (sphere, coefficient 0.5, air 1.2 kg/m3). Drag also slows the fall, so the bound is one for drops of a millimetre and more."""
    drag = 0.5 * 1.2 * 0.5 * math.pi * radius**2 / (1000 * 4 / 3 * math.pi * radius**3)

    def move(t, s):
        slip = math.hypot(v_wind - s[2], s[3])
        return [s[2], s[3], drag * slip * (v_wind - s[2]), G - drag * slip * s[3]]

    landed = lambda t, s: s[1] - h_fall  # noqa: E731
    landed.terminal = True
    carried = solve_ivp(move, (0, 60), [0.0] * 4, events=landed, rtol=1e-9).y_events[0][0][0]
    bound = find("drift of a drop in wind")(v_wind=v_wind, h_fall=h_fall)
    assert (carried < bound) == (radius >= 0.5e-3)


@given(Q=st.floats(5e-5, 2e-3), d_out=st.floats(0.012, 0.08))
def test_a_boil_is_the_height_of_the_jet_that_the_speed_would_throw(Q, d_out):
    v = find("speed in a pipe")(Q=Q, d_pipe=d_out)
    assert boil(Q=Q, d_out=d_out) == pytest.approx(find("height of a jet")(v=v), rel=1e-12)


def test_twice_the_bore_boils_a_sixteenth_as_high():
    assert boil(Q=5e-4, d_out=0.025) == pytest.approx(16 * boil(Q=5e-4, d_out=0.05), rel=1e-12)


def test_the_exercise_of_the_bubbling_bowl():
    """1,500 L/h out of 25 mm: 0.849 m/s, 36.7 mm; 31 mm of bore for 15 mm (this project's own exercise, worked by hand)."""
    assert boil(Q=1.5 / 3600, d_out=0.025) == pytest.approx(0.0367, abs=5e-5)
    assert find("outlet bore for a mound")(Q=1.5 / 3600, h_boil=0.015) == pytest.approx(0.031, abs=5e-4)


# --- upright pipes ------------------------------------------------------------------------------------------------------------------


@given(Q=st.floats(1e-6, 0.05), d_bore=st.floats(0.01, 0.2))
def test_an_upright_pipe_is_a_rim_or_a_jet_or_refused_and_the_two_never_both(Q, d_bore):
    low = find("crown over an upright pipe as a rim")(Q=Q, d_bore=d_bore) < 0.37 * d_bore
    high = find("crown over an upright pipe as a jet")(Q=Q, d_bore=d_bore) > 1.4 * d_bore
    assert not (low and high)
    if not (low or high):
        with pytest.raises(InputError, match="bucket"):
            crown_of_upright_pipe(Q, d_bore)
        return
    regime, crown = crown_of_upright_pipe(Q, d_bore)
    assert regime == ("rim" if low else "jet")
    back = find("flow of an upright pipe over its rim" if low else "flow of an upright pipe as a jet")
    assert back(d_bore=d_bore, h_boil=crown) == pytest.approx(Q, rel=1e-9)


@pytest.mark.parametrize("d_bore", [0.02, 0.05, 0.1])
def test_a_measured_jet_needs_more_height_than_one_without_losses(d_bore):
    """The Bureau's jet carries at most what free rise at the same height would."""
    for crown in numpy.linspace(1.5 * d_bore, 10 * d_bore, 10):
        free = math.pi / 4 * d_bore**2 * math.sqrt(2 * G * crown)
        assert 0.85 * free < find("flow of an upright pipe as a jet")(d_bore=d_bore, h_boil=float(crown)) < free * 1.01


def test_a_crown_outside_the_measured_range_is_refused_and_a_pipe_outside_it_noted():
    rim = find("flow of an upright pipe over its rim")
    with pytest.raises(InputError, match="h_boil < 0.37"):
        rim.work(d_bore=0.1, h_boil=0.05)
    assert any("2 in to 12 in" in note for note in rim.work(d_bore=0.03, h_boil=0.005).notes)


# --- splash -------------------------------------------------------------------------------------------------------------------------


def test_the_apron_grows_with_fall_throw_and_wind():
    assert apron(0.44, "clinging film") == pytest.approx(0.22)
    assert apron(0.44, "dribble or broken film") == pytest.approx(0.44)
    assert apron(0.75, "free sheet", throw=0.186) == pytest.approx(0.561)
    assert apron(0.75, "free sheet", throw=0.186, windy=True) == pytest.approx(1.5 * 0.561)
    with pytest.raises(InputError, match="clinging film"):
        apron(0.4, "clinging")


@pytest.mark.parametrize("fall, least", [(0.0, 2e-3), (0.3, 2e-3), (0.31, 3e-3), (0.75, 4e-3), (1.0, 4e-3)])
def test_a_higher_fall_wants_more_flow_to_stay_a_sheet(fall, least):
    assert tables.least_sheet_flow(fall).value == least


@pytest.mark.parametrize("fall", [-0.1, 1.01, math.nan])
def test_a_fall_beyond_the_table_of_sheets_is_refused(fall):
    with pytest.raises(InputError, match="ends at 1 m"):
        tables.least_sheet_flow(fall)


def test_the_terrace_blade_worked_by_hand():
    """4 L/s for each metre, 0.75 m down, g = 9.81 (this project's own example): 11.77, 8.416 mm; 0.4753 m/s; 0.391 s; 186 mm; 3.865 m/s; 1.035 mm."""
    sheet = _sheet(4e-3, 0.75)
    wanted = (11.77e-3, 8.416e-3, 0.4753, 0.3910, 0.1858, 3.865, 1.035e-3)
    assert tuple(sheet[letter] for letter in ("y_c", "y_b", "v_b", "t_fall", "x_throw", "v_land", "y_land")) == pytest.approx(wanted, rel=1e-3)
