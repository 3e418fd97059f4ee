"""What must be true of rills: against EPA SWMM's kinematic wave, against fluids, and of bends, steps and the procedure that joins them."""

import fluids
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pyswmm import Links, Simulation

from brimwork import tables
from brimwork.topics import find
from brimwork.topics.rill import (
    bend_rise,
    flow_down_a_rill,
    freeboard,
    froude_number,
    hydraulic_radius,
    normal_depth,
    rill_flow,
    speed_by_manning,
    tread_over_throw,
)
from brimwork.units import InputError

SWMM = """\
[OPTIONS]
FLOW_UNITS LPS
FLOW_ROUTING KINWAVE
START_DATE 01/01/2024
END_DATE 01/01/2024
END_TIME 02:00:00
ROUTING_STEP 1
MIN_SLOPE 0
[JUNCTIONS]
up {top} 2 0 0 0
[OUTFALLS]
down 0 FREE NO
[CONDUITS]
rill up down 30 {n} 0 0 0
[XSECTIONS]
rill RECT_OPEN 1 {w} 0 0 1
[INFLOWS]
up FLOW "" FLOW 1 1 {litres}
"""

CASES = [(0.32, 1 / 60, 0.015, 1.65), (0.2, 0.01, 0.02, 2.0), (0.15, 0.005, 0.013, 1.0), (0.4, 0.03, 0.033, 1.5)]


@pytest.mark.parametrize("w, S, n, litres", CASES)
def test_a_steady_rill_is_as_deep_as_in_the_swmm_engine(tmp_path, w, S, n, litres):
    """In the engine a fall of 30 m times the slope lies along 30 m of channel; the first three are the values in the declarations."""
    (tmp_path / "rill.inp").write_text(SWMM.format(top=30 * S, n=n, w=w, litres=litres))
    with Simulation(str(tmp_path / "rill.inp")) as run:
        rill = Links(run)["rill"]
        for _ in run:
            pass
        depth, flow = rill.depth, rill.flow
    assert flow == pytest.approx(litres, rel=1e-6)
    assert normal_depth(Q=litres / 1000, w_rill=w, S_rill=S, n_Manning=n) == pytest.approx(depth, rel=5e-4)
    assert flow_down_a_rill(w_rill=w, y_n=depth, S_rill=S, n_Manning=n) == pytest.approx(litres / 1000, rel=1e-3)


widths, depths, slopes, coefficients = st.floats(0.05, 1.0), st.floats(0.002, 0.3), st.floats(1e-3, 0.1), st.floats(0.009, 0.06)


@given(widths, depths, slopes, coefficients)
def test_speed_and_froude_number_are_those_of_fluids(w, y, S, n):
    R_h = w * y / (w + 2 * y)
    v = speed_by_manning(R_h=hydraulic_radius(w_rill=w, y_n=y), S_rill=S, n_Manning=n)
    assert v == pytest.approx(fluids.V_Manning(R_h, S, n), rel=1e-12)
    assert froude_number(v=v, y_n=y) == pytest.approx(fluids.Froude(v, L=y), rel=1e-9)


@given(widths, depths, slopes, coefficients)
def test_the_limits_between_which_the_depth_is_sought_always_hold_it(w, y, S, n):
    Q = flow_down_a_rill(w_rill=w, y_n=y, S_rill=S, n_Manning=n)
    assert normal_depth(Q=Q, w_rill=w, S_rill=S, n_Manning=n) == pytest.approx(y, rel=1e-9)


def test_a_narrow_slot_is_solved_as_well_as_a_wide_sheet():
    for w, y in [(0.005, 0.5), (50.0, 0.002)]:
        Q = flow_down_a_rill(w_rill=w, y_n=y, S_rill=0.01, n_Manning=0.013)
        assert normal_depth(Q=Q, w_rill=w, S_rill=0.01, n_Manning=0.013) == pytest.approx(y, rel=1e-9)


@given(st.floats(0.2, 1.5), st.floats(0.5, 4.0))
def test_in_a_narrow_bend_the_water_stands_as_in_a_turning_bucket(v, R):
    """Water that turns as one body stands at (speed at a radius)^2/2g above its middle: Newton's bucket."""
    w = R / 1000
    outside = v * (R + w / 2) / R
    assert bend_rise(v=v, w_rill=w, R_bend=R) == pytest.approx((outside**2 - v**2) / (2 * 9.80665), rel=1e-3)


@given(st.floats(1e-4, 5e-3), widths)
def test_at_critical_depth_the_froude_number_is_one(Q, w):
    y = find("critical depth")(q=Q / w)
    assert froude_number(v=Q / (w * y), y_n=y) == pytest.approx(1.0, rel=1e-9)


@given(st.floats(0.001, 0.02), widths)
def test_the_head_over_a_step_is_that_at_a_broad_crest(q, b):
    step = find("head over a step")(y_c=find("critical depth")(q=q))
    assert step == pytest.approx(find("head at a broad crest")(Q=q * b, b=b), rel=1e-9)


# --- the procedure ------------------------------------------------------------------------------------------------------------------


@settings(max_examples=60)
@given(st.floats(2e-4, 4e-3), st.floats(0.1, 0.5), slopes, st.sampled_from(sorted(tables.MANNING)))
def test_a_rill_carries_the_flow_that_it_is_given(Q, w, S, surface):
    found = rill_flow(Q, w, S, tables.manning(surface).usual)
    assert found.v * w * found.y_n == pytest.approx(Q, rel=1e-9)
    critical = find("critical depth")(q=Q / w)
    assert (found.Fr > 1) == (found.y_n < critical)


def test_calm_wavy_and_shooting_water_are_told_apart():
    assert rill_flow(2e-3, 0.2, 0.002, tables.manning("random stone in mortar").usual).notes == ()
    assert "breaks into waves" in rill_flow(2e-3, 0.2, 0.014, tables.manning("random stone in mortar").usual).notes[0]
    assert "shoots" in rill_flow(2e-3, 0.2, 0.04, tables.manning("random stone in mortar").usual).notes[0]


def test_a_thin_flow_over_a_smooth_bed_is_said_to_be_outside_the_law():
    assert any("outside what Manning's law holds for" in note for note in rill_flow(3e-4, 0.3, 0.01, tables.manning("smooth steel").usual).notes)


def test_a_surface_that_is_not_in_the_table_is_refused_with_the_nearest():
    with pytest.raises(InputError, match="Nearest: dressed stone"):
        rill_flow(1e-3, 0.2, 0.01, tables.manning("dresed stone").usual)


def test_every_surface_has_a_range_round_its_usual_value_and_a_basis():
    for span in tables.MANNING.values():
        assert 0.009 < span.low <= span.usual <= span.high < 0.1 and span.basis


def test_freeboard_and_tread_of_a_small_cascade():
    assert freeboard(h_side=0.1, y_n=0.03, h_bend=0.01) == pytest.approx(0.06)
    assert freeboard(h_side=0.03, y_n=0.03, h_bend=0.01) == pytest.approx(-0.01), "an overtopped side shows as a freeboard below zero"
    assert tread_over_throw(w_tread=0.4, x_throw=0.2) == pytest.approx(2.0)
