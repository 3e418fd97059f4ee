"""Unattributed worked examples, second-hand: 1,000 cubic yards of dense clay that swell by 30 %, and soil of 3400 and 2700 pounds a cubic yard."""

import pytest

from brimwork.topics.ground import loads, loose_spoil, swell_from_densities
from brimwork.units import convert, read

YARD = read("1 yd3", "m3")


def test_a_thousand_cubic_yards_of_clay_are_1300_loose_and_186_loads_of_7():
    loose = loose_spoil(V_dig=1000 * YARD, s_swell=0.30)
    assert convert(loose, "yd3") == pytest.approx(1300)
    assert loads(loose, 7 * YARD) == 186


def test_a_short_ton_takes_up_0_59_cubic_yards_in_the_ground_and_0_74_loose():
    swell = swell_from_densities(rho_bank=read("3400 lb/yd3", "kg/m3"), rho_loose=read("2700 lb/yd3", "kg/m3"))
    assert swell == pytest.approx(0.26, abs=0.005)
    bank = read("1 short ton", "kg") / read("3400 lb/yd3", "kg/m3")
    assert convert(bank, "yd3") == pytest.approx(0.59, abs=0.005)
    assert convert(loose_spoil(V_dig=bank, s_swell=swell), "yd3") == pytest.approx(0.74, abs=0.005)
