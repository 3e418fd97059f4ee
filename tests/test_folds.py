"""Folds of a flat liner: areas against the whole sheet less the faces it covers, pleats by hand, and a folded corner drawn point by point."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from brimwork.drawing.pictures import picture
from brimwork.drawing.records import Line, Text
from brimwork.topics import find

in_a_corner = find("liner folded away in a corner")
round_a_circle = find("liner folded away round a circle")
spare_in_a_corner = find("liner to spare in a corner")
pleat_reach = find("reach of a corner pleat")
corner_thickness = find("thickness of a folded corner")
spare_round = find("liner to spare round a circle")
pleats_round = find("pleats round a circle")
thickness_round = find("mean thickness of the folds round a circle")
whole_liner = find("area of the liner")

length = st.floats(0.3, 3.0)
margin = st.floats(0.0, 0.6)
depth = st.floats(0.1, 0.9)


@given(length, length, depth, margin, margin)
def test_four_corners_hold_what_the_flat_liner_has_more_than_the_faces_it_covers(L, W, D, apron, trim):
    edge = apron + trim
    whole = whole_liner(L_in=L, W_in=W, D=D, w_apron=apron, w_trim=trim)
    faces = L * W + 2 * D * (L + W) + (L + 2 * edge) * (W + 2 * edge) - L * W
    assert 4 * in_a_corner(D=D, w_apron=apron, w_trim=trim) == pytest.approx(whole - faces, rel=1e-9)


@given(length, depth, margin, margin)
def test_a_round_liner_has_in_its_folds_what_it_has_more_than_the_faces_it_covers(d, D, apron, trim):
    edge = apron + trim
    whole = math.pi * (d / 2 + D + edge) ** 2
    faces = math.pi * (d / 2 + edge) ** 2 + math.pi * d * D  # floor and ring seen from above, and the side
    assert round_a_circle(D=D, w_apron=apron, w_trim=trim) == pytest.approx(whole - faces, rel=1e-9)


def test_a_corner_half_a_metre_deep_worked_by_hand():
    """0.5 m up the side: 1 m to spare, one fold reaching 0.5 m, two folds 0.25 m each; 0.5 x (0.5 + 2 x 0.7) = 0.95 m2 with 0.6 m of apron and 0.1 m to trim."""
    assert spare_in_a_corner(z_f=0.5) == 1.0
    assert pleat_reach(z_f=0.5, N_fold=1) == 0.5
    assert pleat_reach(z_f=0.5, N_fold=2) == 0.25
    assert in_a_corner(D=0.5, w_apron=0.6, w_trim=0.1) == pytest.approx(0.95)


def test_a_sheet_folded_once_is_three_thick_and_folded_twice_five():
    thickness = corner_thickness
    assert [thickness(N_fold=n, t_sheet=1.0) for n in (0, 1, 2, 3)] == [1.0, 3.0, 5.0, 7.0]


def test_pleats_round_a_circle_worked_by_hand():
    """0.45 m deep: 2.827 m to spare; pleats of 60 mm take up 120 mm each: 23.56, so 24 pleats. A pit 1.2 m wide: 1 + 0.9/1.2 = 1.75 layers of 1 mm."""
    assert spare_round(z_f=0.45) == pytest.approx(2.8274, rel=1e-4)
    assert pleats_round(z_f=0.45, w_fold=0.06) == pytest.approx(23.56, rel=1e-4)
    assert thickness_round(D=0.45, d_t=1.2, t_sheet=1e-3) == pytest.approx(1.75e-3)


@given(depth, length)
def test_all_pleats_and_the_pit_together_use_up_the_way_round_the_flat_liner(D, d):
    pleats, reach = pleats_round(z_f=D, w_fold=0.05), 0.05
    layers = thickness_round(D=D, d_t=d, t_sheet=1.0)
    assert math.pi * d + 2 * reach * pleats == pytest.approx(math.pi * (d + 2 * D), rel=1e-12)
    assert layers * math.pi * d == pytest.approx(math.pi * (d + 2 * D), rel=1e-12)


@pytest.mark.parametrize("height", [0.1, 0.37, 0.8])
def test_a_square_corner_creased_along_its_diagonal_reaches_as_far_as_it_is_high(height):
    """The corner square of the sheet, from (0, 0) outwards: fold it at its diagonal, and the line at that height lies double along the side."""
    corner = [(0.0, height), (height, height), (height, 0.0)]  # along the line at that height, past the diagonal and back
    walked = sum(math.dist(a, b) for a, b in zip(corner, corner[1:]))
    assert walked == pytest.approx(spare_in_a_corner(z_f=height))
    assert math.dist(corner[0], corner[1]) == pytest.approx(pleat_reach(z_f=height, N_fold=1))


def _drawn(name, **values):
    return picture(find(name), values, find(name).inputs[0]).sheet.views[0].records


@pytest.mark.parametrize("folds, layers", [(1, 3), (2, 5), (3, 7)])
def test_the_picture_of_a_pleat_shows_its_folds_as_far_as_they_reach(folds, layers):
    """0.6 m up, in one fold 0.6 m, in two 0.3 m, in three 0.2 m: each fold goes out and comes back."""
    records = _drawn("reach of a corner pleat", z_f=0.6, N_fold=folds)
    (pleat,) = [record.points for record in records if isinstance(record, Line) and record.style == "second curve"]
    assert len(pleat) == 1 + 2 * folds and max(x for x, _ in pleat) == pytest.approx(0.6 / folds)
    assert any(isinstance(record, Text) and f"{layers} layers" in record.text for record in records)


def test_the_picture_of_a_round_pit_shows_every_pleat():
    """pi x 0.45 m over 60 mm is 23.56: 24 are drawn."""
    records = _drawn("pleats round a circle", z_f=0.45, w_fold=0.06)
    assert sum(isinstance(record, Line) and record.style == "second curve" for record in records) == 24
