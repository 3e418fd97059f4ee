"""What must be true of liners, rolls, fleece and stone, of boxes and of panels laid out on sheets."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from brimwork.topics import lining
from brimwork.topics.box import Panel, box_inside, box_outside, cut_sheets
from brimwork.units import InputError

length = st.floats(0.3, 3.0)
margin = st.floats(0.05, 0.6)


# --- liner --------------------------------------------------------------------------------------------------------------------------


@given(length, margin, margin, margin)
def test_upright_sides_are_sides_that_slope_by_nothing(L, D, apron, trim):
    straight = lining.liner_length(L_in=L, D=D, w_apron=apron, w_trim=trim)
    assert lining.battered_liner_length(L=L, D=D, s_back=0.0, w_apron=apron, w_trim=trim) == pytest.approx(straight, rel=1e-12)
    assert lining.round_liner_length(d_t=L, D=D, w_apron=apron, w_trim=trim) == pytest.approx(straight, rel=1e-12)


@given(length, margin, margin)
def test_a_slope_is_shorter_than_down_and_across_and_longer_than_down(L, D, back):
    slope = lining.slope_length(D=D, s_back=back)
    assert D < slope < D + back
    assert (
        lining.battered_liner_length(L=L, D=D, s_back=back, w_apron=0.0, w_trim=0.0) < L + 2 * back + 2 * D
    )  # the rule "top and twice the depth" buys too much


def test_the_pit_with_sides_of_one_in_three_takes_the_strip_worked_by_hand():
    """1.2 m floor, 0.6 m deep, set back 0.2 m: sqrt(0.36 + 0.04) = 0.632456, twice, and 1.2."""
    assert lining.battered_liner_length(L=1.2, D=0.6, s_back=0.2, w_apron=0.0, w_trim=0.0) == pytest.approx(1.2 + 2 * math.sqrt(0.4), rel=1e-12)


@given(length, length, margin, margin, margin)
def test_the_flat_liner_is_the_net_faces_and_the_folds_in_four_corners(L, W, D, apron, trim):
    reach = D + apron + trim
    area = lining.liner_area(L_in=L, W_in=W, D=D, w_apron=apron, w_trim=trim)
    assert area == pytest.approx(L * W + 2 * reach * (L + W) + 4 * reach**2, rel=1e-12)


def test_a_square_metre_of_sheet_a_millimetre_thick_weighs_its_density_in_litres():
    assert lining.liner_mass(rho_liner=1300, A_cut=1.0, t_sheet=0.001) == pytest.approx(1.3)


@given(length, length, margin)
def test_without_an_apron_both_layers_of_fleece_are_the_same(L, W, D):
    one = L * W + 2 * D * (L + W)
    assert lining.fleece_area(L_in=L, W_in=W, D=D, w_apron=0.0) == pytest.approx(2 * one, rel=1e-12)


# --- rolls --------------------------------------------------------------------------------------------------------------------------

ROLLS = (2.0, 3.0, 4.0, 6.0)


@given(st.floats(0.5, 6.0), st.floats(0.5, 6.0))
def test_the_roll_covers_the_narrower_side_and_no_narrower_roll_does(long, wide):
    roll = lining.choose_roll(long, wide, ROLLS)
    assert roll.spare == pytest.approx(roll.width - min(long, wide)) and roll.spare >= -1e-9
    assert all(width < min(long, wide) for width in ROLLS if width < roll.width)
    assert roll.length == max(long, wide) and roll.turned == (wide > long)


def test_a_roll_too_narrow_is_refused_and_gluing_in_the_garden_is_advised_against():
    with pytest.raises(InputError, match="do not glue"):
        lining.choose_roll(7.0, 6.5, ROLLS)
    for long, wide, widths in ((0.0, 1.0, ROLLS), (1.0, math.nan, ROLLS), (1.0, 1.0, ()), (1.0, 1.0, (0.0, 2.0))):
        with pytest.raises(InputError):
            lining.choose_roll(long, wide, widths)


# --- stone --------------------------------------------------------------------------------------------------------------------------


def test_stone_with_no_waste_is_its_volume_times_its_bulk_density():
    area = lining.stone_area(L_in=1.2, W_in=0.8, w_apron=0.6, A_bare=0.25)
    assert area == pytest.approx(2.4 * 2.0 - 0.25)
    assert lining.stone_mass(A_cov=area, t_st=0.05, rho_bulk=1600, s_waste=0.0) == pytest.approx(4.55 * 80)


# --- box and sheets -----------------------------------------------------------------------------------------------------------------


@given(length, st.floats(0.0, 0.02), st.floats(0.0, 0.03), st.floats(0.01, 0.03))
def test_a_box_has_room_for_blocks_lining_and_clearance_on_both_sides(blocks, lined, clear, board):
    inside = box_inside(L_bl=blocks, t_li=lined, c_side=clear)
    assert (inside - blocks) / 2 == pytest.approx(lined + clear, abs=1e-12)
    assert (box_outside(L_in=inside, t_pan=board) - inside) / 2 == pytest.approx(board, abs=1e-12)


SHEET, SAW = (2.44, 1.22), 0.004
panel_sizes = st.lists(st.tuples(st.floats(0.1, 2.4), st.floats(0.05, 1.2)), min_size=1, max_size=9)


def _sawn_apart(pieces, saw=SAW):
    """Whether a saw can part the pieces by cuts that each run from edge to edge of what is left."""
    if len(pieces) <= 1:
        return True
    for low, high in ((0, 2), (1, 3)):
        for at in sorted({piece[high] for piece in pieces}):
            before = [piece for piece in pieces if piece[high] <= at + 1e-9]
            after = [piece for piece in pieces if piece[low] >= at + saw - 1e-9]
            if after and len(before) + len(after) == len(pieces):
                return _sawn_apart(before, saw) and _sawn_apart(after, saw)
    return False


@settings(max_examples=60)
@given(panel_sizes)
def test_every_panel_lies_on_a_sheet_apart_from_the_others_and_can_be_sawn_out(sizes):
    panels = [Panel(f"panel {number}", *size) for number, size in enumerate(sizes)]
    cuts = cut_sheets(panels, *SHEET, SAW)
    assert [cut.panel for cut in cuts] == panels
    for cut in cuts:
        assert {cut.length, cut.width} == {cut.panel.length, cut.panel.height}
        assert -1e-9 <= cut.x <= SHEET[0] - cut.length + 1e-9 and -1e-9 <= cut.y <= SHEET[1] - cut.width + 1e-9
    for one, other in ((a, b) for i, a in enumerate(cuts) for b in cuts[:i] if a.sheet == b.sheet):
        beside = max(one.x - other.x - other.length, other.x - one.x - one.length, one.y - other.y - other.width, other.y - one.y - one.width)
        assert beside >= SAW - 1e-9
    for sheet in {cut.sheet for cut in cuts}:
        assert _sawn_apart([(cut.x, cut.y, cut.x + cut.length, cut.y + cut.width) for cut in cuts if cut.sheet == sheet])


def test_the_sawing_test_refuses_a_pinwheel_that_no_straight_cut_parts():
    assert not _sawn_apart([(0, 0, 2, 1), (2, 0, 3, 2), (1, 2, 3, 3), (0, 1, 1, 3), (1, 1, 2, 2)], saw=0)


def test_a_box_comes_out_of_one_sheet_in_two_strips():
    """By hand: two strips of 440 mm with one cut of 4 mm between, each 1266 + 4 + 830 mm long."""
    panels = [Panel("long panel", 1.266, 0.44), Panel("end panel", 0.83, 0.44)] * 2
    cuts = cut_sheets(panels, *SHEET, SAW)
    assert {cut.sheet for cut in cuts} == {0}
    assert max(cut.y + cut.width for cut in cuts) == pytest.approx(0.884)
    assert max(cut.x + cut.length for cut in cuts) == pytest.approx(2.1)


def test_three_strips_that_only_just_fit_without_saw_cuts_need_another_sheet():
    strips = [Panel("strip", 2.44, 0.4066)] * 3
    assert {cut.sheet for cut in cut_sheets(strips, *SHEET, 0.0)} == {0}
    assert {cut.sheet for cut in cut_sheets(strips, *SHEET, SAW)} == {0, 1}


@pytest.mark.parametrize("size", [(2.5, 0.4), (2.0, 1.3), (0.0, 0.4), (math.nan, 0.4)])
def test_a_panel_that_no_sheet_holds_is_refused_by_name(size):
    with pytest.raises(InputError, match="the long panel"):
        cut_sheets([Panel("long panel", *size)], *SHEET, SAW)


def test_a_sheet_that_cannot_be_sawn_is_refused():
    for sheet in ((0.0, 1.2, 0.004), (2.4, 1.2, -0.001), (2.4, 1.2, 1.3), (math.inf, 1.2, 0.0)):
        with pytest.raises(InputError, match="2.44 x 1.22 m"):
            cut_sheets([Panel("end panel", 0.4, 0.4)], *sheet)
