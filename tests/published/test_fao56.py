"""FAO Irrigation and Drainage Paper 56: a whole day worked from weather to evaporation, values as two open packages test them."""

import math

import pytest
from weather import Climate, reference_of_a_day

from brimwork.topics import find

MJ_DAY, MM_DAY = 1e6 / 86400, 1e-3 / 86400


def test_example_18_uccle_on_the_sixth_of_july():
    """21.5 and 12.3 degC, 84 and 63 %, wind 2.78 m/s at 10 m, sunlight 22.07 MJ/m2, 100 m, 50.80 degrees north: 3.9 mm (3.880142 by a second package)."""
    wind = find("wind speed at two metres")(v_wz=2.78, z_wind=10.0)
    assert wind == pytest.approx(2.079304, rel=1e-6)
    day = Climate(273.15 + 21.5, 273.15 + 12.3, 0.84, 0.63, 22.07 * MJ_DAY, wind, 100.0, math.radians(50.80), 187)
    assert reference_of_a_day(day) / MM_DAY == pytest.approx(3.9, abs=0.05)
    assert reference_of_a_day(day) / MM_DAY == pytest.approx(3.880142, rel=1e-3)
