"""No label of a picture runs into a line, an arrow, a dot or another label, wherever the sliders stand: read from the laid-out sheets.

Widths are those of the face DejaVu Sans, and crossings are matplotlib's, so that neither is taken from the code that places the labels.
"""

import ast
import json
from dataclasses import replace
from functools import cache
from itertools import combinations
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from matplotlib.font_manager import FontProperties, findfont
from matplotlib.ft2font import FT2Font
from matplotlib.path import Path as Outline
from matplotlib.transforms import Bbox

from brimwork import topics
from brimwork.design.follows.features import chain_of
from brimwork.design.typed.file import load_design
from brimwork.drawing import aside, marks
from brimwork.drawing.design import DRAWN
from brimwork.drawing.graph import Axis, graph
from brimwork.drawing.layout import layout
from brimwork.drawing.levels_in_time import levels_in_time
from brimwork.drawing.marks import Area, Dot, Stroke, Words
from brimwork.drawing.pictures import picture
from brimwork.drawing.records import STYLES, Line, Sheet, Text, View
from brimwork.notebook import explore, follow_days, start_and_stop
from brimwork.notebook.live import Explorer
from brimwork.units import InputError

ROOT = Path(__file__).parents[1]
SHARES = (0.0, 0.1, 0.25, 0.5, 0.75, 0.9, 1.0)  # of a slider's range
ARROWS = ("grey", "accent")
FACE = FT2Font(findfont(FontProperties(family="DejaVu Sans")))
FACE.set_size(1000, 72)


@cache
def advance(character):
    """Width of a character over the size of its face."""
    return FACE.load_char(ord(character)).linearHoriAdvance / 65536 / 1000


def box_of(label):
    """Left, top, right, bottom in mm."""
    (x, y), wide, size = label.at, sum(map(advance, label.text)) * label.size, label.size
    first = -wide * {"start": 0, "middle": 0.5, "end": 1}[label.anchor]
    if label.angle:
        return x - 0.75 * size, y - first - wide, x + 0.22 * size, y - first
    return x + first, y - 0.75 * size, x + first + wide, y + 0.22 * size


def meet(a, b):
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def shared(a, b):
    return max(a[0], b[0]), max(a[1], b[1]), min(a[2], b[2]), min(a[3], b[3])


def span(points):
    xs, ys = zip(*points)
    return min(xs) - 1e-9, min(ys) - 1e-9, max(xs) + 1e-9, max(ys) + 1e-9


def struck(box, points):
    """Whether a line through the points has one inside the box."""
    return meet(box, span(points)) and Outline(points).intersects_bbox(Bbox.from_extents(*box), filled=False)


def reach(mark):
    """The box round a mark."""
    if isinstance(mark, Dot):
        (x, y), r = mark.at, mark.radius
        return x - r, y - r, x + r, y + r
    return span(mark.points)


def fault_with(box, halo, mark, drawn_later):
    """What is wrong between a label's box, as far as the mark is seen in it, and a mark of the sheet; nothing where they may stand together."""
    if isinstance(mark, Dot):
        (x, y), r = mark.at, mark.radius
        return "a dot" if meet(box, (x - r, y - r, x + r, y + r)) else ""
    if isinstance(mark, Area):
        if mark.fill in ARROWS:
            return "an arrow" if meet(box, span(mark.points)) else ""
        if drawn_later and Outline(mark.points).intersects_bbox(Bbox.from_extents(*box)):
            return f"hidden by {mark.fill}"
        return f"the edge of {mark.fill}" if mark.style != "none" and struck(box, (*mark.points, mark.points[0])) else ""
    if mark.style == "none" or (mark.style == "grid" and halo and not drawn_later):
        return ""
    return f"a line, {mark.style}" if struck(box, mark.points) else ""


def faults(sheet):
    """Every label that stands where it must not, and why."""
    whole, placed = (0.0, 0.0, sheet.width, sheet.height), []
    for view, found in layout(sheet):
        left, top, wide, tall = view.frame if view is not None and view.clip else (*whole[:2], sheet.width, sheet.height)
        placed += [(mark, (left, top, left + wide, top + tall)) for mark in found]
    labels = [(order, mark, box_of(mark), seen) for order, (mark, seen) in enumerate(placed) if isinstance(mark, Words)]
    others = [(order, mark, window, reach(mark)) for order, (mark, window) in enumerate(placed) if not isinstance(mark, Words)]
    found = []
    for order, label, box, seen in labels:
        if shared(box, seen) != box:
            found.append(f"'{label.text}' is cut off")
        for other, mark, window, round_it in others:
            if meet(box, round_it) and (inside := shared(box, window))[0] < inside[2] and inside[1] < inside[3]:
                what = fault_with(inside, label.halo, mark, other > order)
                found += [f"'{label.text}' meets {what}"] if what else []
    return found + [f"'{a.text}' over '{b.text}'" for (_, a, one, _), (_, b, two, _) in combinations(labels, 2) if meet(one, two)]


# --- the check itself ---------------------------------------------------------------------------------------------------------------


def sheet_of(*records, clear=False):
    return Sheet(60.0, 40.0, (View((0.0, 0.0, 60.0, 40.0), (0.0, 0.0, 60.0, 40.0), records, clear=clear),), "", "")


def test_the_check_finds_a_label_on_a_line_but_not_one_on_the_grid():
    label, line = Text((30.0, 20.0), "label", "middle"), ((0.0, 20.5), (60.0, 21.5))
    for style in STYLES:
        assert bool(faults(sheet_of(Line(line, style), label))) == (style not in ("grid", "none")), style
    assert faults(sheet_of(label, Line(line, "grid"))), "a line that is drawn over it"
    assert faults(sheet_of(label, replace(label, at=(32.0, 19.0)))) == ["'label' over 'label'"]
    assert faults(sheet_of(replace(label, at=(58.0, 20.0)))) == ["'label' is cut off"]


def test_the_check_finds_what_the_pictures_would_show_if_no_label_moved(monkeypatch):
    blasius = topics.find("friction factor by Blasius")
    sheet = picture(blasius, {"Re": blasius.range("Re")[0]}, "Re").sheet
    assert faults(sheet) == []
    stiff = replace(sheet, views=tuple(replace(view, clear=False) for view in sheet.views))
    assert "'below the tested range' meets a line, hidden" in faults(stiff)


def test_widths_of_words_are_those_of_the_face():
    for character in map(chr, range(32, 127)):
        assert marks.width_of(character, 1000) == pytest.approx(1000 * advance(character), abs=0.51), character
    for character in "–×°²³’":
        assert marks.width_of(character, 1000) == pytest.approx(1000 * advance(character), abs=0.51), character


# --- words that move aside ----------------------------------------------------------------------------------------------------------


def test_a_label_on_a_line_moves_off_it_and_no_farther_than_it_must():
    (label,) = [mark for _, found in layout(sheet_of(Line(((0.0, 20.0), (60.0, 20.0))), Text((30.0, 20.5), "label", "middle"), clear=True)) for mark in found
                if isinstance(mark, Words)]  # fmt: skip
    assert label.at[0] == 30.0 and 0 < abs(label.at[1] - 19.5) < 3.0


def test_a_label_that_stands_free_does_not_move():
    at = [mark.at for _, found in layout(sheet_of(Line(((0.0, 20.0), (60.0, 20.0))), Text((30.0, 30.0), "label"), clear=True)) for mark in found
          if isinstance(mark, Words)]  # fmt: skip
    assert at == [(30.0, 10.0)]


def test_a_label_without_a_free_place_stays_where_it_was():
    lines = [Line(((0.0, float(y)), (60.0, float(y)))) for y in range(0, 41, 2)]
    found = [mark for _, all_ in layout(sheet_of(*lines, Text((30.0, 20.5), "label"), clear=True)) for mark in all_ if isinstance(mark, Words)]
    assert [label.at for label in found] == [(30.0, 19.5)]


def test_no_label_moves_out_of_its_frame():
    far = aside.aside([Stroke(((10.0, 5.0), (50.0, 5.0)), "curve"), Words((12.0, 5.5), "label", "start", 3.0, "#000000", halo=True)], (10.0, 2.0, 50.0, 12.0),
                      False, (0.0, 0.0, 60.0, 40.0))  # fmt: skip
    left, top, right, bottom = box_of(far[-1])
    assert left >= 10.0 and top >= 2.0 and right <= 50.0 and bottom <= 12.0 and top > 5.0


def test_a_point_on_the_end_of_an_axis_is_shown():
    view = graph((20.0, 10.0, 60.0, 40.0), Axis("x", 0.0, 60.0), Axis("y", 0.0, 1.0), [([(0.0, 0.0), (60.00000000001, 1.0)], "curve")], (60.00000000001, 1.0))
    assert [len(record.points) for record in view.records if isinstance(record, Line) and record.style == "curve"] == [2]
    assert any(isinstance(record, Line) and record.style == "hidden" for record in view.records)


# --- every picture ------------------------------------------------------------------------------------------------------------------

BOWLS = {  # sizes that fit each other, where the middles of the usual ranges do not
    "water in a cone-shaped bowl": {"d_floor": 0.3, "d_rim": 0.6, "D": 0.5, "h": 0.3},
    "depth in a cone-shaped bowl": {"d_floor": 0.3, "d_rim": 0.6, "D": 0.5, "V": 0.03},
    "depth in a round bowl": {"V": 0.03, "R_s": 0.5},
}


def moved(name):
    """The pictures of a formula with its first three letters moved in turn over their sliders."""
    formula = topics.find(name)
    middle = {letter: sum(formula.range(letter)[:2]) / 2 for letter in formula.inputs} | BOWLS.get(name, {})
    for letter in formula.inputs[:3]:
        low, high, _ = formula.range(letter)
        for share in SHARES:
            try:
                yield f"{letter} at {share}", picture(formula, {**middle, letter: low + share * (high - low)}, formula.inputs[0]).sheet
            except InputError:
                continue  # values that do not go together are refused with a sentence


@pytest.mark.parametrize("name", topics.formulas())
def test_no_label_of_a_formulas_picture_runs_into_anything(name):
    seen = 0
    for where, sheet in moved(name):
        seen += 1
        assert faults(sheet) == [], where
    assert seen >= 5


LIVE = {"explore": explore, "start_and_stop": start_and_stop, "follow_days": follow_days}


def live_calls():
    """Every call of a workbook that shows a live picture."""
    cells = [cell for path in sorted((ROOT / "workbooks").glob("*.ipynb")) for cell in json.loads(path.read_text(encoding="utf-8"))["cells"]]
    trees = [ast.parse("".join(cell["source"])) for cell in cells if cell["cell_type"] == "code"]
    calls = [node for tree in trees for node in ast.walk(tree) if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)]
    return sorted({ast.unparse(call) for call in calls if call.func.id in LIVE})


@pytest.mark.parametrize("call", live_calls())
def test_no_label_of_a_workbooks_picture_runs_into_anything(call, monkeypatch):
    made = []
    monkeypatch.setattr(Explorer, "show", lambda explorer, after="": made.append(explorer))
    exec(call, dict(LIVE))  # the text of a workbook's own cell
    (explorer,) = made
    for control in explorer.controls:
        for share in SHARES:
            try:
                sheet = explorer.figure("k", **{control.letter: control.on(round(share * control.last))}).picture.sheet
            except InputError:
                continue
            assert faults(sheet) == [], f"{control.letter} at {share}"


TIMES = [10.0 * i for i in range(25)]


@settings(max_examples=150)
@given(
    st.lists(st.floats(0.05, 0.6), min_size=4, max_size=4),
    st.floats(0.1, 0.7),
    st.floats(0.02, 0.4),
    st.none() | st.floats(20.0, 200.0),
    st.floats(0.0, 0.04),
)
def test_no_label_of_a_picture_in_time_runs_into_anything(turns, overflow, lowest, stopped, head):
    """The level goes in straight pieces from one turn to the next."""
    levels = [turns[i // 8] + (turns[min(i // 8 + 1, 3)] - turns[i // 8]) * (i % 8) / 8 for i in range(25)]
    sheet = levels_in_time(TIMES, levels, {"overflow": overflow, "pump's limit": lowest}, [head * i / 24 for i in range(25)], stopped)
    assert faults(sheet) == []


@pytest.mark.parametrize("title", ("duty chart", "level over thirty dry days", "level from start to stop"))
@pytest.mark.parametrize("region", ("UK", "US"))
@pytest.mark.parametrize("path", sorted((ROOT / "workbooks" / "designs").glob("*.toml")), ids=lambda path: path.stem)
def test_no_label_of_a_designs_chart_runs_into_anything(title, region, path):
    chain = chain_of(load_design(path).headed("region", region))
    if title != "level from start to stop" or chain.edges:
        assert faults(DRAWN[title](chain)) == []
