"""Drawings read as records: dimensions say the design's values, nothing leaves the sheet, labels stand apart, stored figures are what the code makes."""

import re
from itertools import combinations
from pathlib import Path

import pytest

from brimwork import topics, units
from brimwork.drawing import figures, plotted, svg
from brimwork.drawing.layout import Area, Dot, Stroke, Words, layout, words
from brimwork.drawing.pictures import picture, pictured
from brimwork.drawing.records import Dimension, Level
from brimwork.nomenclature import QUANTITIES

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
def test_every_dimension_says_the_distance_it_spans(name):
    _, _, drawn = shown(name, 0.5)
    found = [record for view in drawn.sheet.views for record in view.records if isinstance(record, Dimension)]
    assert found
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
    head = next(record for record in section.records if isinstance(record, Dimension))
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
    text = svg.write(drawn.sheet, "k")
    assert text == svg.write(shown("flow over a level lip", 0.5)[2].sheet, "k")
    assert f"<desc>{drawn.sentence}</desc>" in text and 'role="img"' in text
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
