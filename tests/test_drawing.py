"""Drawings read as records: dimensions say the design's values, nothing leaves the sheet, labels stand apart, stored figures are what the code makes."""

import re
from itertools import combinations
from pathlib import Path

import pytest
from letter_width import width_of

from brimwork import topics, units
from brimwork.drawing import figures, plotted, svg
from brimwork.drawing.layout import Area, Dot, Stroke, Words, layout, words
from brimwork.drawing.pictures import picture, pictured
from brimwork.drawing.records import Arrow, Level, Mark, Measure, Polygon, Sheet, Text, View
from brimwork.nomenclature import QUANTITIES, read_values

FOLDER = Path(__file__).parents[1] / "figures"


def values_at(formula, share):
    """The inputs at a share of their usual ranges, kept inside the formula's conditions where there are any."""
    return {name: low + share * (high - low) for name in formula.inputs for low, high, _ in [formula.range(name)]}


def shown(name, share):
    formula = topics.find(name)
    values = values_at(formula, share)
    if name in ("water in a cone-shaped bowl", "depth in a cone-shaped bowl"):
        values |= {"d_floor": 0.3, "d_rim": 0.4 + share * 0.4, "D": 0.5} | ({"h": 0.1 + share * 0.4} if "h" in values else {"V": 0.01 + share * 0.03})
    if name == "depth in a round bowl":
        values |= {"V": 0.02 + share * 0.02, "R_s": 0.5}
    return formula, values, picture(formula, values, formula.inputs[-1])


@pytest.mark.parametrize("name", pictured())
@pytest.mark.parametrize("share", (0.1, 0.5, 0.9))
def test_nothing_leaves_the_sheet_and_no_two_labels_overlap(name, share):
    _, _, drawn = shown(name, share)
    labels = words(drawn.sheet)
    for label in labels:
        left, top, right, bottom = label.box
        assert left >= 0 and top >= 0 and right <= drawn.sheet.width and bottom <= drawn.sheet.height, label.text
    for a, b in combinations(labels, 2):
        apart = a.box[2] <= b.box[0] or b.box[2] <= a.box[0] or a.box[3] <= b.box[1] or b.box[3] <= a.box[1]
        assert apart, f"'{a.text}' overlaps '{b.text}'"


@pytest.mark.parametrize("name", pictured())
@pytest.mark.parametrize("share", (0.1, 0.5, 0.9))
def test_no_label_is_cut_by_the_edge_of_its_view(name, share):
    """Widths as the face DejaVu Sans has them, not by a mean character."""
    for view, marks in layout(shown(name, share)[2].sheet):
        if view is None or not view.clip:
            continue
        left, top, width, height = view.frame
        for label in (mark for mark in marks if isinstance(mark, Words)):
            (x0, y0, x1, y1), true = label.box, width_of(label.text) * label.size
            if label.angle == 90:
                y0, y1 = label.at[1] - true / 2, label.at[1] + true / 2
            else:
                x0 = label.at[0] - true * {"start": 0, "middle": 0.5, "end": 1}[label.anchor]
                x1 = x0 + true
            assert left <= x0 and x1 <= left + width and top <= y0 and y1 <= top + height, label.text


def filled(sheet):
    """The share of its frame that the drawing of a sheet takes across and upward, words left out."""
    (view, marks), *_ = layout(sheet)
    left, top, wide, tall = view.frame
    seen = [mark for mark in marks if not isinstance(mark, Words) and getattr(mark, "style", "") != "none"]
    places = [place for mark in seen for place in ((mark.at,) if isinstance(mark, Dot) else mark.points)]
    across, upward = ([min(max(place[i], edge), edge + size) for place in places] for i, edge, size in ((0, left, wide), (1, top, tall)))
    return (max(across) - min(across)) / wide, (max(upward) - min(upward)) / tall


@pytest.mark.parametrize("name", pictured())
def test_a_drawing_does_not_waste_its_frame(name):
    """A true scale is seldom more than half of what would just fit; less than a third either way is a scale that was chosen for something else."""
    across, upward = filled(shown(name, 0.5)[2].sheet)
    assert max(across, upward) > 1 / 3, (
        f"it takes {across:.0%} of its frame across and {upward:.0%} upward: choose its scale by `scale_to_fit` of pictures/paper.py"
    )


def test_a_drawing_that_is_small_in_its_frame_is_seen():
    view = View((0.0, 0.0, 88.0, 60.0), (4.0, 10.0, 88.0, 60.0), (Polygon(((30.0, 20.0), (50.0, 20.0), (50.0, 38.0), (30.0, 38.0)), "stone"),))
    assert filled(Sheet(180, 76, (view,), "", "")) == pytest.approx((20 / 88, 18 / 60))


@pytest.mark.parametrize("name", pictured())
def test_every_dimension_says_the_distance_it_spans(name):
    _, _, drawn = shown(name, 0.5)
    found = [record for view in drawn.sheet.views for record in view.records if isinstance(record, Measure)]
    assert found, f"nothing is measured in the picture of '{name}': give it a Measure, such as height() of drawing/pictures/paper.py makes"
    for record in found:
        (x1, y1), (x2, y2) = record.start, record.end
        assert abs(((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5) == pytest.approx(record.value, rel=1e-6, abs=1e-9) or abs(y2 - y1) == pytest.approx(
            record.value, rel=1e-6
        )
        said = units.parse(record.text.rpartition("=")[2].strip())
        assert said.value == pytest.approx(record.value, rel=6e-3)


def test_a_given_head_stands_in_the_section_and_in_the_sentence():
    formula = topics.find("flow over a level lip")
    drawn = picture(formula, {"H": 0.012, "b": 0.6, "C_d": 0.62}, "H")
    section = drawn.sheet.views[0]
    level = next(record for record in section.records if isinstance(record, Level))
    head = next(record for record in section.records if isinstance(record, Measure))
    assert level.at[1] == 0.012 and head.value == 0.012 and head.text == "H = 12.0 mm"
    assert "86.6 L/min" in drawn.sentence and QUANTITIES["Q"].us_text(formula(H=0.012, b=0.6, C_d=0.62)) in drawn.sentence


def test_views_at_a_true_scale_have_one_scale_across_and_up():
    for name in ("flow over a level lip", "volume of a battered pit", "water in a round bowl"):
        across, up = shown(name, 0.5)[2].sheet.views[0].scale
        assert across == pytest.approx(up, rel=1e-9)


def test_layout_has_only_finite_places_inside_the_drawn_views():
    for _, marks in layout(shown("flow over a level lip", 0.5)[2].sheet):
        for mark in marks:
            points = mark.points if isinstance(mark, Stroke | Area) else (mark.at,)
            assert all(abs(x) < 1e4 and abs(y) < 1e4 for x, y in points), mark
            assert not isinstance(mark, Dot) or mark.radius > 0


def test_svg_is_the_same_bytes_every_time_and_describes_itself():
    drawn = shown("flow over a level lip", 0.5)[2]
    text = svg.write_svg(drawn.sheet, "k")
    assert text == svg.write_svg(shown("flow over a level lip", 0.5)[2].sheet, "k")
    assert f"<desc>{drawn.sheet.alt}</desc>" in text and drawn.sheet.alt != drawn.sentence and 'role="img"' in text
    assert set(re.findall(r"url\(#(\w+)\)", text)) == set(re.findall(r'id="(\w+)"', text)), "every hatching used is defined, and no other"


def test_stored_figures_are_what_the_code_makes():
    made = figures.figures()
    assert sorted(made) == sorted(path.name for path in FOLDER.iterdir())
    for name, text in made.items():
        assert (FOLDER / name).read_text(encoding="utf-8") == text, f"{name} is stale: python -m brimwork.drawing.figures figures"


def test_matplotlib_draws_every_mark_of_the_layout_where_the_svg_has_it(tmp_path):
    from matplotlib import image

    drawn = shown("volume of a battered pit", 0.5)[2]
    figure = plotted.figure(drawn.sheet)
    marks = [mark for _, marks in layout(drawn.sheet) for mark in marks]
    axes = figure.axes[0]
    assert len(axes.lines) == sum(isinstance(mark, Stroke) for mark in marks)
    assert [text.get_text() for text in axes.texts] == [mark.text for mark in marks if isinstance(mark, Words)]
    plotted.write_png(drawn.sheet, tmp_path / "pit.png", 100)
    picture_ = image.imread(tmp_path / "pit.png")
    assert picture_.shape[:2] == pytest.approx((drawn.sheet.height / 25.4 * 100, drawn.sheet.width / 25.4 * 100), abs=1)
    water = next(mark for mark in marks if isinstance(mark, Area) and mark.fill == "water")
    x, y = (sum(c) / len(water.points) / 25.4 * 100 for c in zip(*water.points))
    assert picture_[round(y), round(x), :3] == pytest.approx((0xDF / 255, 0xE8 / 255, 1.0), abs=0.02), "water where the drawing has water"


def drawn_at(name, given, over):
    return picture(topics.find(name), read_values(given), over).sheet.views[0].records


def test_an_offset_load_stands_at_its_eccentricity_over_the_length_in_contact():
    """geotech-references 1.4.1, effective_base_width_triangular(0.3) on a base of 1.2 m: 0.9 m in contact."""
    records = drawn_at("greatest pressure under partial contact", "F_w=8 kN, L_base=1 m, B_base=1.2 m, e_off=0.3 m", "e_off")
    load = next(record for record in records if isinstance(record, Arrow))
    pressed = next(record for record in records if isinstance(record, Polygon) and record.fill == "patch")
    assert load.tail[0] == load.tip[0] == 0.3 and load.tip[1] < load.tail[1]
    xs = [x for x, _ in pressed.points]
    assert max(xs) - min(xs) == pytest.approx(0.9) and max(xs) == pytest.approx(0.6)


def test_a_load_within_the_middle_third_is_not_drawn_as_partial_contact():
    with pytest.raises(units.InputError, match="B_base/6 < e_off"):
        drawn_at("greatest pressure under partial contact", "F_w=8 kN, L_base=1 m, B_base=1.2 m, e_off=0.1 m", "e_off")


def test_a_load_past_the_edge_presses_nowhere():
    records = drawn_at("tipping factor from the eccentricity", "B_base=400 mm, e_off=250 mm", "e_off")
    assert not any(isinstance(record, Polygon) and record.fill == "patch" for record in records)
    assert any(isinstance(record, Text) and "falls over" in record.text for record in records)


def test_the_water_areas_of_a_filled_pit_are_its_water():
    """Six blocks of 100 L, 95 % empty, in a pit of 1000 L with stone 40 % empty: 570 L and 160 L, by hand."""
    records = drawn_at("water in blocks and stone", "N_b=6, V_b=100 L, n_v=0.95, n_s=0.4, V_pit=1000 L", "N_b")
    areas = [(p.points[2][0] - p.points[0][0]) * (p.points[2][1] - p.points[0][1]) for p in records if isinstance(p, Polygon) and p.fill == "water"]
    assert areas == pytest.approx([0.570, 0.160])


def test_the_parts_of_the_head_line_stack_up_to_the_total():
    records = drawn_at("total dynamic head from its parts", "z_s=0.9 m, h_f=0.4 m, h_m=0.3 m", "z_s")
    total = next(record for record in records if isinstance(record, Measure))
    bars = [record.points for record in records if isinstance(record, Polygon) and record.points[0][0] == 59.5]
    assert [end for low, _, high, _ in bars for end in (low[1], high[1])] == pytest.approx([0, 0.9, 0.9, 1.2, 1.2, 1.6])
    assert total.value == pytest.approx(1.6)


def test_a_push_and_a_weight_meet_the_ground_where_their_moments_say():
    """300 N at 0.8 m against 2000 N: 300 x 0.8 / 2000 = 0.12 m from the middle, by hand."""
    records = drawn_at("tipping factor", "F_w=2000 N, B_base=400 mm, F_push=300 N, h_push=800 mm", "F_push")
    marks = [record.at for record in records if isinstance(record, Mark)]
    assert marks == [(0.2, 0), pytest.approx((0.12, 0))]


def test_a_curve_begins_where_it_has_a_value_and_is_cut_where_it_shoots_up():
    rows = picture(topics.find("pressure on a contact patch"), {"F_w": 2000.0, "A_c": 0.1}, "A_c").rows
    assert rows[0] == ("200 cm2", "100 kPa")
    plot = picture(topics.find("greatest pressure under partial contact"), {"F_w": 8000.0, "L_base": 1.0, "B_base": 1.2, "e_off": 0.3}, "e_off").sheet.views[1]
    steepest = 2 * 8000.0 / (3 * (0.6 - 0.49 * 1.2)) / 1e3  # kPa, near the edge
    assert 17.8 < plot.window[3] < steepest / 2
