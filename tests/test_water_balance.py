"""Water in transit and the water balance: a whole feature worked by hand, and runs of days in which no water may be lost or made."""

import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from brimwork import tables
from brimwork.drawing.pictures import picture
from brimwork.drawing.records import Polygon
from brimwork.nomenclature import read_values
from brimwork.topics import find
from brimwork.topics.water_balance import DAY, Basin, Weather, run_of_days
from brimwork.units import InputError

MM, LITRE = 1e-3, 1e-3
days_without_top_up = find("days without top-up")
BASIN = Basin(A_w=0.912, h_min=0.150, h_over=0.400, V_tr=11.18 * LITRE, A_wet=2.1, Q_splash=2 * LITRE / DAY, A_catch=2.6, k_run=0.8)
DRY = Weather(0.0, 5.25 * MM / DAY)


# --- in transit ---------------------------------------------------------------------------------------------------------------------


def test_the_water_in_transit_of_a_bowl_worked_by_hand():
    """This project's own exercise: 1.15 + 7.17 + 0.33 + 1.18 + 1.35 = 11.18 L, and 12.3 mm of level over 0.912 m2."""
    parts = {
        "V_rim": find("water that stands above the rim")(A_v=0.478, H=2.4 * MM),
        "V_siph": find("water that siphons back")(A_v=0.478, z_mouth=15 * MM),
        "V_film": find("water in the film on the face")(A_side=0.85, delta=0.394 * MM),
        "V_sheet": find("water in the falling sheet")(Q=5e-4, t_fall=0.0),
        "V_pc": find("water in a pipe")(d_pipe=0.025, L_pipe=2.4),
        "V_hold": find("water on its way through the stone")(A_run=0.90, t_st=0.050, n_hold=0.03),
    }
    assert [round(part / LITRE, 2) for part in parts.values()] == [1.15, 7.17, 0.33, 0.0, 1.18, 1.35]
    V_tr = find("water in transit")(**parts)
    assert V_tr == pytest.approx(11.18 * LITRE, rel=1e-3)
    assert find("drop of the level on start")(V_tr=V_tr, A_b=0.96, n_v=0.95) == pytest.approx(12.26 * MM, rel=1e-3)


def test_the_surface_of_a_round_vessel_is_a_circle():
    assert find("water surface of a round vessel")(d_rim=0.780) == pytest.approx(0.4778, rel=1e-4)


def test_the_drain_back_of_the_exercise_is_marginal():
    """0.912 m2 x 28 mm = 25.5 L of room for 23.5 L: 1.09."""
    ratio = find("drain-back ratio")(A_b=0.96, n_v=0.95, h_over=0.400, h_run=0.372, V_tr=23.5 * LITRE)
    assert ratio == pytest.approx(1.0866, rel=1e-4)


@given(V_tr=st.floats(1e-3, 0.06), h_run=st.floats(0.2, 0.4))
def test_what_the_start_takes_out_fits_again_exactly_where_the_drain_back_ratio_is_one(V_tr, h_run):
    drop = find("drop of the level on start")(V_tr=V_tr, A_b=0.96, n_v=0.95)
    assert find("drain-back ratio")(A_b=0.96, n_v=0.95, h_over=h_run + drop, h_run=h_run, V_tr=V_tr) == pytest.approx(1, rel=1e-9)


@given(Q=st.floats(1e-4, 5e-3), h_fall=st.floats(0.05, 2))
def test_a_falling_sheet_holds_its_thickness_added_up_along_the_fall(Q, h_fall):
    """From rest: area Q/v at each height, added up from top to bottom, is Q times the time of fall."""
    along = quad(lambda root: 2 * root * Q / math.sqrt(2 * 9.80665 * root**2), 0, math.sqrt(h_fall))[0]  # height = root squared: no pole at the top
    assert find("water in the falling sheet")(Q=Q, t_fall=find("time of fall")(h_fall=h_fall)) == pytest.approx(along, rel=1e-9)


# --- loss, reserve, rain ------------------------------------------------------------------------------------------------------------


def test_the_days_without_top_up_of_the_exercise():
    """1.9 m2 x 5 mm x 1.05 + 2 L = 11.97 L a day; (210 - 18)/11.97 = 16.0 days."""
    loss = find("loss of water")(K_E=1.05, E_0=5 * MM / DAY, A_wet=1.9, Q_splash=2 * LITRE / DAY)
    assert loss * DAY == pytest.approx(11.975 * LITRE, rel=1e-9)
    days = days_without_top_up(V_use=0.210, V_tr=0.018, K_E=1.05, E_0=5 * MM / DAY, A_wet=1.9, Q_splash=2 * LITRE / DAY)
    assert days / DAY == pytest.approx(16.03, rel=1e-3)
    assert find("time that a reserve lasts")(V_res=0.192, Q_loss=loss) == pytest.approx(days, rel=1e-12)
    assert find("share of the usable water lost in a day")(Q_loss=loss, V_use=0.210) * DAY == pytest.approx(0.0570, rel=1e-3)


def test_the_storm_of_the_exercise_in_us_units():
    """1.5 in on 45 ft2 less 25 US gal of room: 17.1 US gal for the overflow."""
    gallon, foot = 3.785411784 * LITRE, 0.3048
    spill = find("storm water for the overflow")(k_run=1.0, A_catch=45 * foot**2, h_rain=1.5 * foot / 12, V_free=25 * gallon)
    assert spill / gallon == pytest.approx(17.078, rel=1e-4)


@given(V_dead=st.floats(0, 0.2), V_tr=st.floats(0, 0.06), loss=st.floats(1e-8, 1e-6), t=st.floats(DAY, 30 * DAY))
def test_a_reservoir_that_holds_what_is_asked_for_lasts_as_long_as_asked_for(V_dead, V_tr, loss, t):
    held = find("water that the reservoir must hold")(V_dead=V_dead, V_tr=V_tr, V_res=loss * t)
    assert days_without_top_up(V_use=held - V_dead, V_tr=V_tr, K_E=1.0, E_0=0.0, A_wet=1.0, Q_splash=loss) == pytest.approx(t, rel=1e-9)


def test_a_week_of_top_up_worked_by_hand():
    """2 m2 at 5 mm and 3 L of splash are 13 L a day; 2 m2 of catch at 1 mm and 0.9 give 1.8 L back: 7 x 11.2 = 78.4 L."""
    litres = find("top-up for a time")(t_gap=7 * DAY, E_w=5 * MM / DAY, A_wet=2.0, Q_splash=3 * LITRE / DAY, k_run=0.9, A_catch=2.0, R_day=MM / DAY) / LITRE
    assert litres == pytest.approx(78.4, rel=1e-9)


def test_a_dose_is_measured_against_water_and_not_against_the_pit():
    """Vessel of 120 L with 30 L of foam and 20 L of pebbles at 0.4: 78 L of water; 0.912 m2 x 0.38 m: 346.6 L more."""
    V_v = find("water in a vessel with foam and pebbles")(V_in=0.120, V_f=0.030, V_p=0.020, n_por=0.4)
    assert V_v == pytest.approx(0.078, rel=1e-9)
    assert find("treatment volume")(A_b=0.96, n_v=0.95, h_static=0.380, V_v=V_v) == pytest.approx(0.42456, rel=1e-9)


# --- a run of days ------------------------------------------------------------------------------------------------------------------


def _weather(seed: int, days: int) -> list[Weather]:
    draw = random.Random(seed)
    return [Weather(draw.choice([0, 0, 0, 2, 8, 60]) * MM * draw.random(), draw.uniform(0, 10) * MM / DAY) for _ in range(days)]


@pytest.mark.parametrize("seed", range(20))
@pytest.mark.parametrize("h_top", [None, 0.372])
def test_no_water_is_made_or_lost_in_a_run_of_days(seed, h_top):
    basin = Basin(**{**vars(BASIN), "h_top": h_top})
    days = run_of_days(basin, 0.38, _weather(seed, 365))
    gained = math.fsum(day.rain + day.topped_up - day.lost - day.spilled for day in days)
    assert basin.A_w * (days[-1].level - 0.38) == pytest.approx(gained, abs=1e-9)
    for day in days:
        assert 0 <= day.level <= basin.h_over * (1 + 1e-12) and 0 <= day.running <= 1
        assert min(day.rain, day.lost, day.spilled, day.topped_up) >= 0
        assert h_top is None or day.level >= h_top - 1e-12


def test_days_without_rain_last_as_long_as_the_formula_says():
    lasting = days_without_top_up(V_use=BASIN.A_w * (0.38 - 0.15), V_tr=BASIN.V_tr, K_E=1.0, E_0=DRY.E_w, A_wet=BASIN.A_wet, Q_splash=BASIN.Q_splash)
    days = run_of_days(BASIN, 0.38, [DRY] * 40)
    running = math.fsum(day.running for day in days)
    assert running == pytest.approx(lasting / DAY, rel=1e-9)
    assert days[-1].level == pytest.approx(BASIN.lowest, rel=1e-12) and days[-1].running == 0


def test_a_cloudburst_fills_to_the_overflow_and_the_rest_leaves():
    day = run_of_days(BASIN, 0.38, [Weather(0.060, 0.0)])[0]
    spill = find("storm water for the overflow")(k_run=0.8, A_catch=2.6, h_rain=0.060, V_free=0.912 * 0.020)
    assert day.spilled == pytest.approx(spill, rel=1e-9)
    assert day.level == pytest.approx(0.400 - 2 * LITRE / 0.912, rel=1e-9)


def test_a_float_valve_adds_what_is_lost_and_no_more():
    basin = Basin(**{**vars(BASIN), "h_top": 0.372})
    first, *rest = run_of_days(basin, 0.372, [DRY] * 10)
    assert first.topped_up == pytest.approx(first.lost, rel=1e-9)
    assert all(day.level == pytest.approx(0.372, rel=1e-12) for day in [first, *rest])


def test_no_days_give_no_record():
    assert run_of_days(BASIN, 0.38, []) == []


@pytest.mark.parametrize(
    "change, message", [({"A_w": 0.0}, "above"), ({"k_run": 1.2}, "at most 1"), ({"h_over": 0.15}, "do not fit"), ({"h_top": 0.5}, "top-up")]
)
def test_a_basin_that_cannot_be_is_refused(change, message):
    with pytest.raises(InputError, match=message):
        Basin(**{**vars(BASIN), **change})


@pytest.mark.parametrize("value", [-0.01, math.nan, math.inf])
def test_weather_and_levels_that_cannot_be_are_refused(value):
    for weather, level in (([Weather(value, 0.0)], 0.3), ([Weather(0.0, value)], 0.3), ([DRY], value)):
        with pytest.raises(InputError):
            run_of_days(BASIN, level, weather)


# --- tables -------------------------------------------------------------------------------------------------------------------------


def test_each_row_of_the_tables_has_its_basis_and_lies_in_its_range():
    for row in (*tables.EVAPORATION_COEFFICIENTS.values(), *tables.PEAK_MONTHS.values(), tables.HOLD_UP):
        assert row.low <= row.usual <= row.high and row.basis
    assert tables.evaporation_coefficient("open shallow water").usual == 1.05
    assert tables.peak_month("warm").usual == pytest.approx(6 * MM / DAY)


def test_a_surface_or_climate_not_in_the_tables_is_refused_with_what_there_is():
    with pytest.raises(InputError, match="wet stone in wind"):
        tables.evaporation_coefficient("wet stone")
    with pytest.raises(InputError, match="hot and dry"):
        tables.peak_month("desert")


# --- pictures -----------------------------------------------------------------------------------------------------------------------


def _bars(name, given, fill):
    records = picture(find(name), read_values(given), find(name).inputs[-1]).sheet.views[0].records
    return [record.points[1][0] - record.points[0][0] for record in records if isinstance(record, Polygon) and record.fill == fill]


def test_the_bars_of_the_water_in_transit_are_its_parts():
    """1.15, 7.17, 0.33, 0.5, 1.18 and 1.35 L: 11.68 L together."""
    given = "V_rim=1.15 L, V_siph=7.17 L, V_film=0.33 L, V_sheet=0.5 L, V_pc=1.18 L, V_hold=1.35 L"
    assert [bar / LITRE for bar in _bars("water in transit", given, "water")] == pytest.approx([1.15, 7.17, 0.33, 0.5, 1.18, 1.35])
    assert [bar / LITRE for bar in _bars("water in transit", given, "patch")] == pytest.approx([11.68])


def test_the_bar_of_the_usable_water_is_what_is_in_transit_and_what_can_be_lost():
    given = "V_use=210 L, V_tr=18 L, K_E=1.05, E_0=5 mm/day, A_wet=1.9 m2, Q_splash=2 L/day"
    assert [bar / LITRE for name in ("patch", "water") for bar in _bars("days without top-up", given, name)] == pytest.approx([18, 192])
