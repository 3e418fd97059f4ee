"""What must be true of void fractions, of water in blocks and stone, of levels, and of blocks in a pit."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from brimwork import tables
from brimwork.nomenclature import QUANTITIES
from brimwork.topics.reservoir import (
    blocks_for_water,
    blocks_in_pit,
    dead_water,
    level_change,
    mean_void_fraction,
    pit_for_water,
    usable_water,
    water_in_pit,
    water_per_level,
    water_to_level,
)
from brimwork.topics.voids import bulk_density, packed_spheres, void_fraction, void_fraction_from_density, void_ratio
from brimwork.units import InputError

share = st.floats(0.01, 0.99)
length = st.floats(0.05, 3.0)


# --- void fraction ------------------------------------------------------------------------------------------------------------------


@given(share)
def test_void_fraction_and_void_ratio_turn_into_each_other_and_are_never_the_same(n):
    e = void_ratio(n_por=n)
    assert void_fraction(e_void=e) == pytest.approx(n, rel=1e-12)
    assert e > n


@given(share, st.floats(1000, 3000))
def test_a_bulk_density_gives_back_its_void_fraction(n, rho_s):
    assert void_fraction_from_density(rho_bulk=bulk_density(rho_s=rho_s, n_por=n), rho_s=rho_s) == pytest.approx(n, rel=1e-9, abs=1e-12)


@pytest.mark.parametrize("n", [1.0, 1.0000001, 1.5, 40.0])
def test_a_void_fraction_of_one_or_more_has_no_void_ratio(n):
    with pytest.raises(InputError):
        void_ratio(n_por=n)


def test_a_void_fraction_above_one_is_refused_as_text_and_in_arrays():
    with pytest.raises(InputError, match="above 1, the most"):
        QUANTITIES["n_v"].read("95")
    with pytest.raises(InputError, match="above 1, the most"):
        water_to_level(A_b=1.0, n_v=1.2, h=0.3)
    with pytest.raises(InputError, match="above 1, the most"):
        water_to_level.array(A_b=[1.0, 1.0], n_v=[0.9, 1.2], h=[0.3, 0.3])
    assert QUANTITIES["n_v"].read("95 %") == pytest.approx(0.95)


@pytest.mark.parametrize(
    "spheres, edge, exact",
    [(1, 1, 1 - math.pi / 6), (2, 2 / math.sqrt(3), 1 - math.sqrt(3) * math.pi / 8), (4, math.sqrt(2), 1 - math.pi / math.sqrt(18))],
    ids=["simple cubic", "body-centred", "face-centred"],
)
def test_packed_spheres_meet_the_exact_void_fractions_of_the_three_cubic_lattices(spheres, edge, exact):
    assert packed_spheres(N_cell=spheres, d_s=0.02, a_cell=0.02 * edge) == pytest.approx(exact, rel=1e-12)


def test_stone_in_the_tables_lies_within_the_bounds_of_packed_spheres():
    for name in ("pebbles, one size", "open-graded drainage stone, drainable"):
        row = tables.void_fraction_row(name)
        assert 0.25 <= row.low <= row.usual <= row.high <= 0.5


@pytest.mark.parametrize("table", [tables.VOID_FRACTIONS, tables.DENSITIES], ids=["void fractions", "densities"])
def test_every_row_has_its_usual_value_within_its_range_and_a_basis(table):
    for name, row in table.items():
        assert row.low <= row.usual <= row.high, name
        assert len(row.basis) > 8


# --- water in the pit ---------------------------------------------------------------------------------------------------------------


@given(st.integers(1, 20), st.floats(0.02, 0.1), st.floats(2.0, 5.0))
def test_with_nothing_but_empty_space_the_water_is_the_volume_of_the_pit(blocks, block, pit):
    assert water_in_pit(N_b=blocks, n_v=1.0, V_b=block, n_s=1.0, V_pit=pit) == pytest.approx(pit, rel=1e-12)


@given(st.integers(1, 20), share, st.floats(0.02, 0.1), share, st.floats(2.0, 5.0))
def test_the_water_lies_between_what_either_filling_alone_would_hold(blocks, n_v, block, n_s, pit):
    water = water_in_pit(N_b=blocks, n_v=n_v, V_b=block, n_s=n_s, V_pit=pit)
    assert min(n_v, n_s) * pit * (1 - 1e-12) <= water <= max(n_v, n_s) * pit * (1 + 1e-12)


def test_the_blocks_needed_hold_the_water_asked_for_with_the_stone_round_them():
    given_ = {"n_v": 0.95, "V_b": 0.06, "n_s": 0.4, "V_pit": 1.2}
    blocks = blocks_for_water(V_w=0.7, **given_)
    assert water_in_pit(N_b=blocks, **given_) == pytest.approx(0.7, rel=1e-12)


@given(st.floats(0.3, 0.97), st.floats(0.05, 1.0), st.floats(0.1, 0.9))
def test_a_layer_of_blocks_and_stone_holds_what_both_hold_side_by_side(n_v, area, blocks_share):
    n_s, A_b, h = 0.3, area * blocks_share, 0.4
    mixed = water_to_level(A_b=area, n_v=mean_void_fraction(n_s=n_s, n_v=n_v, A_b=A_b, A_pit=area), h=h)
    apart = water_to_level(A_b=A_b, n_v=n_v, h=h) + water_to_level(A_b=area - A_b, n_v=n_s, h=h)
    assert mixed == pytest.approx(apart, rel=1e-12)


def test_stone_alone_needs_more_than_twice_the_pit_of_blocks():
    assert pit_for_water(V_w=0.4, n_v=0.40) / pit_for_water(V_w=0.4, n_v=0.95) == pytest.approx(0.95 / 0.40)


# --- levels -------------------------------------------------------------------------------------------------------------------------


@given(st.floats(0.3, 3.0), st.floats(0.5, 1.0), st.floats(0.05, 0.2), st.floats(0.25, 0.9))
def test_dead_and_usable_water_together_are_all_of_it(area, n_v, h_min, h_static):
    dead, use = dead_water(A_b=area, n_v=n_v, h_min=h_min), usable_water(A_b=area, n_v=n_v, h_min=h_min, h_static=h_static)
    assert dead + use == pytest.approx(water_to_level(A_b=area, n_v=n_v, h=h_static), rel=1e-12)


@given(st.floats(0.3, 3.0), st.floats(0.5, 1.0), st.floats(0.001, 0.1))
def test_the_change_of_level_takes_in_the_water_for_each_millimetre(area, n_v, water):
    assert level_change(V_w=water, A_b=area, n_v=n_v) * water_per_level(A_b=area, n_v=n_v) == pytest.approx(water, rel=1e-12)


def test_a_square_metre_of_open_water_takes_a_litre_for_each_millimetre():
    assert QUANTITIES["w_l"].metric_text(water_per_level(A_b=1.0, n_v=1.0)) == "1.00 L/mm"


# --- blocks in a pit ----------------------------------------------------------------------------------------------------------------


def test_blocks_that_fill_a_pit_exactly_are_all_counted():
    best, other = blocks_in_pit(1.2, 0.8, 0.42, (0.6, 0.4, 0.42))
    assert (best.along, best.across, best.layers, best.turned, best.blocks) == (2, 2, 1, False, 4)
    assert best.spare_length == pytest.approx(0, abs=1e-9) and other.blocks == 3 and other.turned


def test_the_clearance_is_kept_free_on_all_sides():
    assert blocks_in_pit(1.236, 0.836, 0.44, (0.6, 0.4, 0.42), clearance=0.018)[0].blocks == 4
    assert blocks_in_pit(1.236, 0.836, 0.44, (0.6, 0.4, 0.42), clearance=0.02)[0].blocks < 4


def test_turning_the_blocks_can_fit_more():
    best, other = blocks_in_pit(0.85, 0.65, 0.5, (0.6, 0.4, 0.42))
    assert best.turned and best.blocks == 2 and other.blocks == 1


@given(length, length, length, length, length, length, st.floats(0, 0.1))
def test_blocks_that_are_counted_fit_and_one_more_row_would_not(L, W, D, a, b, c, clearance):
    try:
        fits = blocks_in_pit(L, W, D, (a, b, c), clearance)
    except InputError:
        return
    assert fits[0].blocks >= fits[1].blocks
    for fit in fits:
        sizes = (b, a, c) if fit.turned else (a, b, c)
        for count, size, room in zip((fit.along, fit.across, fit.layers), sizes, (L - 2 * clearance, W - 2 * clearance, D)):
            assert count * size <= max(room, 0) + 1e-8 and (count + 1) * size > room - 1e-8


def test_the_number_of_blocks_does_not_depend_on_which_side_is_called_length():
    best, swapped = blocks_in_pit(2.1, 1.3, 0.9, (0.6, 0.4, 0.42))[0], blocks_in_pit(1.3, 2.1, 0.9, (0.6, 0.4, 0.42))[0]
    assert best.blocks == swapped.blocks and best.turned != swapped.turned


@pytest.mark.parametrize("pit, block", [((0.5, 0.3, 0.4), (0.6, 0.4, 0.42)), ((1.2, 0.8, 0.4), (0.6, 0.4, 0.42))])
def test_a_pit_too_small_for_one_block_says_so(pit, block):
    with pytest.raises(InputError, match="widen or deepen"):
        blocks_in_pit(*pit, block)


@pytest.mark.parametrize("depth, clearance", [(0.0, 0.0), (-1.0, 0.0), (math.nan, 0.0), (math.inf, 0.0), (1.0, -0.1), (1.0, math.nan)])
def test_sizes_that_cannot_be_are_refused(depth, clearance):
    with pytest.raises(InputError, match="measure again"):
        blocks_in_pit(1.0, 1.0, depth, (0.6, 0.4, 0.42), clearance)
