"""Evaporation from the weather against the open package pyet, against numerical integration, and what must be true of every day."""

import math
import random
from dataclasses import replace

import pandas
import pyet
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from weather import Climate, open_water_of_a_day, reference_of_a_day

from brimwork.topics import find
from brimwork.units import InputError

MM_DAY = 1e-3 / 86400
MJ_DAY = 1e6 / 86400
saturated_air = find("vapour pressure of saturated air")
SUMMER = Climate(294.65, 285.45, 0.84, 0.63, 22.07 * MJ_DAY, 2.078, 100.0, math.radians(50.8), 187)


def _sun(climate: Climate) -> dict[str, float]:
    """Nearness, declination, sunset and sunlight above the air."""
    values = {"phi_lat": climate.phi_lat, "J_day": climate.J_day, "z_site": climate.z_site}
    for name in ("nearness of the sun", "declination of the sun", "hour angle at sunset", "sunlight above the air", "sunlight under a clear sky"):
        values[find(name).result] = find(name)(**find(name).only(values))
    return values


def _climates(count: int) -> list[Climate]:
    draw, found = random.Random(11), []
    for _ in range(count):
        low = draw.uniform(2, 22)
        climate = Climate(
            T_max=273.15 + low + draw.uniform(4, 16),
            T_min=273.15 + low,
            RH_hi=draw.uniform(0.7, 0.98),
            RH_lo=draw.uniform(0.2, 0.65),
            R_sol=0.0,
            v_w2=draw.uniform(0.5, 5),
            z_site=draw.uniform(0, 2000),
            phi_lat=math.radians(draw.uniform(-50, 55)),
            J_day=draw.randint(1, 365),
        )
        found.append(replace(climate, R_sol=draw.uniform(0.4, 0.98) * _sun(climate)["R_clear"]))
    return found


def _pyet(function, climate: Climate, **more) -> float:
    """One day of pyet, in m/s."""
    day = pandas.DatetimeIndex([pandas.Timestamp(2021, 1, 1) + pandas.Timedelta(days=climate.J_day - 1)])
    columns = {
        "tmean": (climate.T_max + climate.T_min) / 2 - 273.15,
        "tmax": climate.T_max - 273.15,
        "tmin": climate.T_min - 273.15,
        "rhmax": 100 * climate.RH_hi,
        "rhmin": 100 * climate.RH_lo,
        "rs": climate.R_sol / MJ_DAY,
        "wind": climate.v_w2,
    }
    series = {name: pandas.Series([value], index=day) for name, value in columns.items()}
    return float(function(**series, elevation=climate.z_site, lat=climate.phi_lat, **more).iloc[0]) * MM_DAY


@pytest.mark.parametrize("climate", _climates(40))
def test_the_reference_is_that_of_pyet(climate):
    """FAO-56 takes T + 273 where kelvin are 273.15: hence a thousandth."""
    assert reference_of_a_day(climate) == pytest.approx(_pyet(pyet.pm_fao56, climate), rel=1e-3)


@pytest.mark.parametrize("climate", _climates(40))
def test_open_water_is_that_of_pyet(climate):
    """pyet lets the heat of evaporation fall with temperature, 2.48 to 2.43 MJ/kg where 2.45 is taken here: hence 1.5 %."""
    theirs = _pyet(pyet.penman, climate, aw=1.313, bw=1.381, albedo=0.08)
    assert open_water_of_a_day(climate) == pytest.approx(theirs, rel=0.015)


@pytest.mark.parametrize("celsius", [2, 10, 20, 30, 38])
def test_the_slope_of_saturation_is_that_of_the_curve(celsius):
    T_a, step = 273.15 + celsius, 1e-3
    by_differences = (saturated_air(T_a=T_a + step) - saturated_air(T_a=T_a - step)) / (2 * step)
    assert find("slope of the saturated vapour pressure")(T_a=T_a) == pytest.approx(by_differences, rel=1e-7)


@given(T_max=st.floats(285, 315), drop=st.floats(0, 20), RH=st.floats(0.05, 1))
def test_air_holds_at_most_what_saturated_air_does(T_max, drop, RH):
    held = find("vapour pressure of the air")(T_max=T_max, T_min=T_max - drop, RH_hi=RH, RH_lo=RH)
    full = find("mean vapour pressure of saturated air over a day")(T_max=T_max, T_min=T_max - drop)
    assert held == pytest.approx(RH * full, rel=1e-12)


@pytest.mark.parametrize("degrees, J_day", [(52, 172), (-34, 10), (5, 80), (40, 350)])
def test_the_sunlight_above_the_air_is_the_hours_of_a_day_added_up(degrees, J_day):
    sun = _sun(replace(SUMMER, phi_lat=math.radians(degrees), J_day=J_day))
    up = lambda omega: math.sin(sun["phi_lat"]) * math.sin(sun["delta_sun"]) + math.cos(sun["phi_lat"]) * math.cos(sun["delta_sun"]) * math.cos(omega)  # noqa: E731
    assert up(sun["omega_s"]) == pytest.approx(0, abs=1e-12)
    mean = 82000 / 60 * sun["d_rel"] * quad(lambda omega: max(up(omega), 0.0), -math.pi, math.pi, points=[-sun["omega_s"], sun["omega_s"]])[0] / (2 * math.pi)
    assert sun["R_ext"] == pytest.approx(mean, rel=1e-9)


def test_the_longest_day_in_the_north_is_the_shortest_in_the_south():
    hours = [find("longest possible sunshine")(omega_s=_sun(replace(SUMMER, phi_lat=math.radians(side * 50), J_day=172))["omega_s"]) / 3600 for side in (1, -1)]
    assert sum(hours) == pytest.approx(24, rel=1e-9) and hours[0] > 16


def test_a_day_without_a_sunset_is_refused():
    with pytest.raises(InputError, match="hour angle at sunset"):
        reference_of_a_day(replace(SUMMER, phi_lat=math.radians(75)))


@pytest.mark.parametrize("change", [{"v_w2": 4.0}, {"RH_lo": 0.3}, {"R_sol": 25 * MJ_DAY}])
def test_wind_dry_air_and_sun_each_dry_more(change):
    for work in (reference_of_a_day, open_water_of_a_day):
        assert work(replace(SUMMER, **change)) > work(SUMMER)


def test_humidity_above_saturation_is_refused():
    with pytest.raises(InputError, match="100 %"):
        reference_of_a_day(replace(SUMMER, RH_hi=1.2))
