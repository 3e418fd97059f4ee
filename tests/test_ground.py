"""What must be true of pits, spoil, fill that presses on a box, and distances to keep."""

import math

import pytest
from geotech_references.california_trenching import equations as caltrans
from geotech_references.dm7_2 import chapter3
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from brimwork import tables
from brimwork.topics import ground
from brimwork.units import InputError, convert, read

length = st.floats(0.3, 4.0)
share = st.floats(0.01, 0.6)
angle = st.floats(10, 45)


# --- pit and spoil ------------------------------------------------------------------------------------------------------------------


@given(length, length)
def test_a_diagonal_is_longer_than_both_sides_and_shorter_than_the_way_round_the_corner(one, other):
    diagonal = ground.pit_diagonal(L_dig=one, W_dig=other)
    assert max(one, other) < diagonal < one + other
    assert diagonal == pytest.approx(math.hypot(one, other), rel=1e-12)


@given(length, length, length, share)
def test_the_heap_weighs_what_the_hole_weighed(L, W, D, swell):
    dug = ground.excavation(L_dig=L, W_dig=W, D_dig=D)
    loose = ground.loose_spoil(V_dig=dug, s_swell=swell)
    assert loose > dug
    assert loose * 1800 / (1 + swell) == pytest.approx(ground.spoil_mass(V_dig=dug, rho_bank=1800), rel=1e-12)


@given(share, st.floats(1500, 2100))
def test_swell_from_densities_is_the_swell_that_made_them(swell, bank):
    assert ground.swell_from_densities(rho_bank=bank, rho_loose=bank / (1 + swell)) == pytest.approx(swell, rel=1e-9)


@given(st.integers(1, 500), st.floats(0.05, 6.0))
def test_so_many_full_loads_are_so_many_loads_and_a_little_more_is_one_more(count, load):
    assert ground.loads(count * load, load) == count
    assert ground.loads(count * load * 1.001 + 1e-6, load) > count


@pytest.mark.parametrize("volume, load", [(1.0, 0.0), (-1.0, 0.1), (math.nan, 0.1), (1.0, -0.1), (math.inf, 1.0)])
def test_loads_that_cannot_be_counted_are_refused(volume, load):
    with pytest.raises(InputError, match="barrow"):
        ground.loads(volume, load)


def test_the_depth_of_a_pit_is_all_its_layers():
    """By hand: 65 + 420 + 10 + 30 + 100 mm."""
    assert ground.pit_depth(t_st=0.065, h_bl=0.42, t_li=0.01, t_sand=0.03, t_sub=0.1) == pytest.approx(0.625, abs=1e-12)


# --- fill ---------------------------------------------------------------------------------------------------------------------------


@given(st.floats(15, 19), st.floats(1.01, 1.4), st.floats(0.0, 0.2))
def test_compaction_agrees_with_the_function_for_borrow(loose, ratio, lost):
    """geotech-references, dm7_2.chapter3.shrinkage_factor, to UFC 3-220-20."""
    theirs = 1 + chapter3.shrinkage_factor(loose * ratio, loose, lost)
    assert ground.compaction_factor(rho_fill=loose * ratio * 100, rho_loose=loose * 100, s_lost=lost) == pytest.approx(theirs, rel=1e-9)


def test_a_layer_that_shrinks_by_a_fifth_takes_a_quarter_more():
    """By hand: 1.6 x 1.2 x 0.1 m is 0.192 m3, 0.24 m3 loose, 408 kg of 1700 kg/m3."""
    assert ground.layer_mass(L_dig=1.6, W_dig=1.2, t_sub=0.1, k_comp=1.25, rho_loose=1700) == pytest.approx(408, rel=1e-9)


@given(angle)
def test_coefficients_agree_with_other_functions_and_the_active_is_the_smaller(degrees):
    """geotech-references, california_trenching, to the Caltrans manual, rounded to four places."""
    phi = math.radians(degrees)
    active, rest = ground.active_coefficient(phi_s=phi), ground.rest_coefficient(phi_s=phi)
    assert active == pytest.approx(caltrans.rankine_ka(degrees)["ka"], abs=5.1e-5)
    assert rest == pytest.approx(caltrans.at_rest_k0(degrees)["k0"], abs=5.1e-5)
    assert active == pytest.approx(math.tan(math.pi / 4 - phi / 2) ** 2, rel=1e-9)
    assert active < rest < 1


@given(st.floats(0.2, 1.0), st.floats(1500, 2200), st.floats(0.2, 1.2))
def test_the_thrust_is_the_pressure_added_up_and_acts_a_third_up(K, rho, depth):
    """Against scipy.integrate.quad."""

    def pressure(z):
        return K * rho * 9.80665 * z

    thrust = ground.fill_thrust(K_soil=K, rho_fill=rho, D=depth, L_out=1.3)
    assert thrust == pytest.approx(1.3 * quad(pressure, 0, depth)[0], rel=1e-9)
    assert 1.3 * quad(lambda z: pressure(z) * (depth - z), 0, depth)[0] == pytest.approx(thrust * depth / 3, rel=1e-9)


def test_flooded_sand_pushes_twice_as_hard_as_water():
    water = ground.fill_thrust(K_soil=1.0, rho_fill=1000, D=0.44, L_out=1.23)
    assert ground.fill_thrust(K_soil=1.0, rho_fill=2000, D=0.44, L_out=1.23) == pytest.approx(2 * water)


# --- distances and digging ----------------------------------------------------------------------------------------------------------


def test_a_pit_no_deeper_than_the_footing_keeps_the_least_distance():
    assert ground.clear_of_footing(D_dig=0.5, D_foot=0.6, k_foot=1.5) == 0.5
    assert ground.clear_of_footing(D_dig=0.7, D_foot=0.45, k_foot=1.0) == 0.5
    assert ground.clear_of_footing(D_dig=1.2, D_foot=0.4, k_foot=1.5) == pytest.approx(1.2)


def test_roots_reach_a_foot_for_each_inch_of_stem():
    """Twelve times: an inch of stem is a foot of radius, the same rule in the US."""
    assert convert(ground.root_radius(d_stem=read("7 in", "m")), "ft") == pytest.approx(7, rel=1e-12)
    assert ground.root_area(d_stem=0.4) == pytest.approx(math.pi * 4.8**2, rel=1e-12)


@pytest.mark.parametrize("soil", tables.HAND_DIGGING)
def test_digging_takes_from_the_least_to_the_most_hours_of_the_table(soil):
    least, most = ground.digging_hours(1.0, soil)
    row = tables.hand_digging(soil)
    assert 0 < least <= row.usual <= most and len(row.basis) > 8
    assert ground.digging_hours(2.0, soil) == (pytest.approx(2 * least), pytest.approx(2 * most))


def test_firm_soil_is_dug_in_what_two_printed_tables_say():
    """2.20 h/m3 in one, 0.43 m3/h in the other."""
    least, most = ground.digging_hours(1.0, "firm soil")
    assert least == pytest.approx(2.2 * 3600) and most == pytest.approx(3600 / 0.43)


def test_a_soil_outside_the_table_is_refused_with_the_nearest_names():
    with pytest.raises(InputError, match="Nearest: firm soil"):
        ground.digging_hours(1.0, "firm sol")
