"""Terzaghi and Peck, table of typical soils in natural state (from memory): porosity, void ratio, dry and saturated unit weight in g/cm3, solid 2.65."""

import pytest

from brimwork.topics.reservoir import water_to_level
from brimwork.topics.voids import bulk_density, void_fraction, void_ratio

ROWS = [(0.46, 0.85, 1.43, 1.89), (0.34, 0.51, 1.75, 2.09), (0.40, 0.67, 1.59, 1.99), (0.30, 0.43, 1.86, 2.16)]
row = pytest.mark.parametrize("n, e, dry, soaked", ROWS, ids=["uniform, loose", "uniform, dense", "mixed, loose", "mixed, dense"])


@row
def test_porosity_and_void_ratio_belong_together(n, e, dry, soaked):
    assert void_fraction(e_void=e) == pytest.approx(n, abs=0.006)
    assert void_ratio(n_por=n) == pytest.approx(e, abs=0.006)


@row
def test_the_dry_weight_follows_from_the_porosity_and_the_soaked_weight_from_the_water_in_it(n, e, dry, soaked):
    solid = bulk_density(rho_s=2650.0, n_por=void_fraction(e_void=e))
    assert solid == pytest.approx(1000 * dry, abs=10)
    water = 1000.0 * water_to_level(A_b=1.0, n_v=void_fraction(e_void=e), h=1.0)
    assert solid + water == pytest.approx(1000 * soaked, abs=10)
