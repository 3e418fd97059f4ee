"""T. A. McMahon et al. (2013), supplement S19: Alice Springs, 20 July 1980, from hours of sunshine to the evaporation of open water."""

import math

import pytest
from weather import Climate, open_water_of_a_day

from brimwork.topics import find

MJ_DAY, MM_DAY = 1e6 / 86400, 1e-3 / 86400


def test_open_water_at_alice_springs():
    """21 and 2 degC, 71 and 25 %, 10.7 h of sunshine, wind 0.5903 m/s, 23.7951 degrees south, 546 m: 17.1940 MJ/m2 of sunlight, 2.9797 mm."""
    values = {"J_day": 202, "phi_lat": math.radians(-23.7951), "t_bright": 10.7 * 3600, "a_sky": 0.23, "b_sky": 0.50}
    chain = ("nearness of the sun", "declination of the sun", "hour angle at sunset", "longest possible sunshine", "sunlight above the air")
    for name in (*chain, "sunlight through the sky"):
        values[find(name).result] = find(name)(**find(name).only(values))
    assert values["R_sol"] / MJ_DAY == pytest.approx(17.1940, rel=1e-3)
    day = Climate(294.15, 275.15, 0.71, 0.25, values["R_sol"], 0.5903, 546.0, values["phi_lat"], 202)
    assert open_water_of_a_day(day) / MM_DAY == pytest.approx(2.9797, rel=1e-3)
