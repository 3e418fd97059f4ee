"""Pictures of box, pit and liner, measured: what is drawn adds up to what was worked by hand."""

import math

import pytest

from brimwork.drawing.layout import words
from brimwork.drawing.pictures import picture
from brimwork.drawing.records import Leader, Line, Measure, Polygon, Text
from brimwork.nomenclature import read_values
from brimwork.topics import find
from brimwork.units import InputError


def drawn(name, values):
    formula = find(name)
    return picture(formula, read_values(values), formula.inputs[0]).sheet.views[0]


def polygons(view, *fills):
    return [record.points for record in view.records if isinstance(record, Polygon) and record.fill in fills]


def area(points):
    """By the surveyor's cross-multiplication."""
    return abs(sum(x * v - u * y for (x, y), (u, v) in zip(points, points[1:] + points[:1]))) / 2


def width(points):
    return max(x for x, _ in points) - min(x for x, _ in points)


def height(points):
    return max(y for _, y in points) - min(y for _, y in points)


def length(points):
    return sum(math.dist(a, b) for a, b in zip(points, points[1:]))


# --- liner --------------------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "name, values, side",
    [
        ("length of the liner", "L_in=1.2 m, D=0.6 m, w_apron=0.5 m, w_trim=0.1 m", 0.6),
        ("length of the liner for sloping sides", "L=1.2 m, D=0.6 m, s_back=0.45 m, w_apron=0.5 m, w_trim=0.1 m", 0.75),  # 45, 60, 75
    ],
)
def test_the_liner_is_as_long_laid_flat_as_it_is_in_the_pit(name, values, side):
    view = drawn(name, values)
    floor, *flat = polygons(view, "solid", "patch", "pale", "paper")
    assert width(floor) == pytest.approx(1.2) and [width(piece) for piece in flat] == pytest.approx([side, side, 0.5, 0.5, 0.1, 0.1])
    in_the_pit = [record.points for record in view.records if isinstance(record, Line) and record.style in ("force", "second curve")]
    assert sum(map(length, in_the_pit)) == pytest.approx(1.2 + 2 * (side + 0.5 + 0.1)) == pytest.approx(sum(map(width, (floor, *flat))))


def test_the_flat_liner_has_a_square_to_fold_in_each_corner():
    """1.2 m and 0.8 m, each and twice 0.45 + 0.5 + 0.1: 3.3 m by 2.9 m; a square of 0.45 m in each corner."""
    view = drawn("area of the liner", "L_in=1.2 m, W_in=0.8 m, D=0.45 m, w_apron=0.5 m, w_trim=0.1 m")
    (sheet,) = polygons(view, "paper")
    assert (width(sheet), height(sheet)) == pytest.approx((3.3, 2.9))
    assert [area(square) for square in polygons(view, "load")] == pytest.approx([0.45**2] * 4)
    (floor,), (sides,) = polygons(view, "solid"), polygons(view, "patch")
    assert area(sides) - area(floor) == pytest.approx(2 * 0.45 * (1.2 + 0.8)), "four sides about the floor"


def test_the_sheet_for_a_round_pit_reaches_over_all_its_rings():
    """1.2 m across, 0.45 m deep, 0.4 m of apron, 0.1 m to trim: 3.1 m; rings of 1.2, 2.1 and 2.9 m."""
    view = drawn("side of the liner for a round pit", "d_t=1.2 m, D=0.45 m, w_apron=0.4 m, w_trim=0.1 m")
    assert [width(polygons(view, fill)[0]) for fill in ("paper", "solid", "patch", "pale")] == pytest.approx([3.1, 1.2, 2.1, 2.9])


def test_what_shows_of_a_corner_pleat_is_half_of_what_is_folded_away():
    """0.5 m deep, 0.6 m of apron and 0.1 m to trim: 0.5 x (0.5 + 2 x 0.7) = 0.95 m2."""
    (pleat,) = polygons(drawn("liner folded away in a corner", "D=0.5 m, w_apron=0.6 m, w_trim=0.1 m"), "patch")
    assert 2 * area(pleat) == pytest.approx(0.95)


def test_a_pleat_seen_from_the_side_rises_from_nothing_to_its_reach():
    """0.6 m up, in two folds: 0.3 m."""
    (pleat,) = polygons(drawn("reach of a corner pleat", "z_f=0.6 m, N_fold=2"), "patch")
    assert width(pleat) == pytest.approx(0.3) and height(pleat) == pytest.approx(0.6) and area(pleat) == pytest.approx(0.3 * 0.6 / 2)


@pytest.mark.parametrize("deep, across", [(0.45, 1.2), (0.6, 0.6), (0.9, 0.6)])
def test_the_layers_along_the_edge_have_the_mean_that_is_drawn_through_them(deep, across):
    """The last pit is deeper than it is wide, so that its pleats lie over each other."""
    view = drawn("mean thickness of the folds round a circle", f"D={deep} m, d_t={across} m, t_sheet=1 mm")
    (side,), pleats = polygons(view, "solid"), polygons(view, "patch")
    (line,) = [record.points for record in view.records if isinstance(record, Line)]
    assert line[0][1] == pytest.approx(sum(map(area, (side, *pleats))) / width(side)) == pytest.approx(1e-3 * (1 + 2 * deep / across))


# --- fleece and stone ---------------------------------------------------------------------------------------------------------------


def test_the_pieces_of_fleece_cover_both_faces():
    """1.2 by 0.8 by 0.4 m with 0.6 m of apron: 2.4 x 2.0 and 1.2 x 0.8, and twice 4.0 x 0.4 for the sides: 8.96 m2."""
    view = drawn("area of the protection fleece", "L_in=1.2 m, W_in=0.8 m, D=0.4 m, w_apron=0.6 m")
    pieces = [record.points for record in view.records if isinstance(record, Polygon) and record.style == "outline"]
    assert [area(piece) for piece in pieces] == pytest.approx([4.8, 0.96, 1.6, 1.6])


def test_stone_is_drawn_over_box_and_apron_less_the_bare_patch():
    """(1.2 + 1.2) x (0.8 + 1.2) - 0.25 = 4.55 m2."""
    view = drawn("area of the stone", "L_in=1.2 m, W_in=0.8 m, w_apron=0.6 m, A_bare=0.25 m2")
    assert area(polygons(view, "stone")[0]) - area(polygons(view, "concrete")[0]) == pytest.approx(4.55)


# --- box and pit --------------------------------------------------------------------------------------------------------------------


def test_both_ends_of_the_box_are_alike_and_say_the_whole():
    """1200 mm of blocks, 8 and 10 mm at both ends: 1236 mm inside; 18 mm panels: 1272 mm outside."""
    inside = drawn("inside length of the box", "L_bl=1200 mm, t_li=8 mm, c_side=10 mm")
    linings = polygons(inside, "patch")
    assert [width(lining) for lining in linings] == pytest.approx([0.008, 0.008])
    left, right = (sorted(x for x, _ in lining)[::2] for lining in linings)
    assert left == pytest.approx([-x for x in reversed(right)])
    assert {"L_bl = 1200 mm", "L_in = 1236 mm"} <= {record.text for record in inside.records if isinstance(record, Text)}
    assert "1236 mm" in picture(find("inside length of the box"), read_values("L_bl=1200 mm, t_li=8 mm, c_side=10 mm"), "L_bl").sentence
    outside = drawn("outside length of the box", "L_in=1236 mm, t_pan=18 mm")
    assert [width(panel) for panel in polygons(outside, "solid")] == pytest.approx([0.018, 0.018])
    assert "L_out = 1272 mm" in {record.text for record in outside.records if isinstance(record, Text)}


def test_the_pit_has_its_working_space_on_every_side_of_the_box():
    view = drawn("length of the pit", "L_out=1272 mm, t_work=150 mm")
    (pit,), (box,) = polygons(view, "pale"), polygons(view, "paper")
    assert width(box) == pytest.approx(1.272) and [width(pit) - width(box), height(pit) - height(box)] == pytest.approx([0.3, 0.3])


def test_the_layers_fill_the_pit_from_the_formation_to_the_ground():
    """60 + 420 + 10 + 30 + 100 = 620 mm, and each layer is named with its thickness."""
    view = drawn("depth of the pit", "t_st=60 mm, h_bl=420 mm, t_li=10 mm, t_sand=30 mm, t_sub=100 mm")
    layers = [*polygons(view, "concrete"), *polygons(view, "pale"), *polygons(view, "patch"), *polygons(view, "blocks"), *polygons(view, "stone")]
    edges = [(min(y for _, y in layer), max(y for _, y in layer)) for layer in layers]
    assert [low for low, _ in edges] + [edges[-1][1]] == pytest.approx([-0.62, -0.52, -0.49, -0.48, -0.06, 0.0])
    assert [high for _, high in edges[:-1]] == pytest.approx([low for low, _ in edges[1:]])
    assert [record.text for record in view.records if isinstance(record, Leader)] == [
        "sub-base 100 mm",
        "sand 30 mm",
        "lining 10 mm",
        "blocks 420 mm",
        "stone 60 mm",
    ]


def test_the_heap_is_marked_off_in_barrows():
    """1 m3 that swells by a quarter: 1.25 m3, and 14.7 loads of 85 L, so 15: 14 marks between them."""
    view = drawn("loose volume of spoil", "V_dig=1 m3, s_swell=0.25")
    assert [width(bar) for bar in polygons(view, "earth", "pale", "patch")] == pytest.approx([1.0, 1.0, 0.25])
    assert sum(isinstance(record, Line) and record.style == "grid" for record in view.records) == 14
    assert any("15 barrows" in record.text for record in view.records if isinstance(record, Text))


@pytest.mark.parametrize(
    "name, values",
    [
        ("length of the liner", "L_in=40 m, D=0.01 m, w_apron=0 m, w_trim=0 m"),
        ("length of the liner for sloping sides", "L=0.01 m, D=9 m, s_back=0 m, w_apron=5 m, w_trim=1 m"),
        ("area of the liner", "L_in=60 m, W_in=0.01 m, D=4 m, w_apron=0 m, w_trim=0 m"),
        ("side of the liner for a round pit", "d_t=0.01 m, D=8 m, w_apron=0 m, w_trim=0 m"),
        ("area of the stone", "L_in=1 m, W_in=1 m, w_apron=0 m, A_bare=0.9 m2"),
        ("inside length of the box", "L_bl=10 m, t_li=200 mm, c_side=0.1 mm"),
        ("depth of the pit", "t_st=1 mm, h_bl=1 mm, t_li=1 mm, t_sand=1 mm, t_sub=4 m"),
        ("loose volume of spoil", "V_dig=5000 m3, s_swell=0.01"),
        ("loose volume of spoil", "V_dig=0 m3, s_swell=0.25"),
        ("mean thickness of the folds round a circle", "D=1 m, d_t=1 m, t_sheet=0 mm"),
        ("liner folded away in a corner", "D=6 m, w_apron=0 m, w_trim=0 m"),
        ("mean thickness of the folds round a circle", "D=6 m, d_t=0.5 m, t_sheet=1 mm"),
    ],
)
def test_sizes_that_nobody_builds_are_drawn_all_the_same(name, values):
    formula = find(name)
    sheet = picture(formula, read_values(values), formula.inputs[0]).sheet
    assert len(sheet.views[0].records) < 400 and any(isinstance(record, Measure) for record in sheet.views[0].records)
    assert all(math.isfinite(part) for word in words(sheet) for part in word.box)


@pytest.mark.parametrize(
    "name, values, told",
    [
        ("mean thickness of the folds round a circle", "D=0.6 m, d_t=0.01 mm, t_sheet=1 mm", "give a wider pit"),
        ("reach of a corner pleat", "z_f=0.6 m, N_fold=1000000", "give 1 to 12"),
        ("thickness of a folded corner", "t_sheet=1 mm, N_fold=1000000", "give 1 to 12"),
        ("pleats round a circle", "z_f=0.6 m, w_fold=0.001 mm", "reach farther"),
    ],
)
def test_more_folds_than_can_be_drawn_are_refused_with_what_to_give(name, values, told):
    formula = find(name)
    with pytest.raises(InputError, match=told):
        picture(formula, read_values(values), formula.inputs[0])
