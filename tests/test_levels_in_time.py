"""Levels in time, read as records: the curve stands where the levels are, limits are lines or words, and labels keep apart."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from brimwork.drawing.layout import words
from brimwork.drawing.levels_in_time import levels_in_time
from brimwork.drawing.records import Line

TIMES, LEVELS = [0.0, 10.0, 20.0, 60.0, 90.0], [0.380, 0.374, 0.366, 0.366, 0.380]
LIMITS = {"overflow": 0.400, "pump's limit": 0.150}


def lines(view, style):
    return [record.points for record in view.records if isinstance(record, Line) and record.style == style]


def test_the_curve_stands_at_its_levels_and_times():
    sheet = levels_in_time(TIMES, LEVELS)
    (curve,) = lines(sheet.views[0], "curve")
    assert [x for x, _ in curve] == TIMES
    assert [y for _, y in curve] == pytest.approx([380, 374, 366, 366, 380])
    assert sheet.views[0].place((0.0, 380.0))[1] < sheet.views[0].place((0.0, 366.0))[1], "higher is further up"


def test_a_near_limit_is_a_line_and_a_far_one_stands_in_words():
    sheet = levels_in_time(TIMES, LEVELS, LIMITS)
    assert lines(sheet.views[0], "hidden") == [((0.0, 400.0), (90.0, 400.0))]
    said = [word.text for word in words(sheet)]
    assert "overflow 400 mm" in said and "pump's limit 150 mm lies below" in said


def test_a_second_curve_shows_the_head_and_a_line_the_stop():
    sheet = levels_in_time(TIMES, LEVELS, LIMITS, heads=[0, 0.001, 0.0024, 0.0024, 0], stopped=60.0)
    assert len(sheet.views) == 2
    (head,) = lines(sheet.views[1], "second curve")
    assert [y for _, y in head] == pytest.approx([0, 1, 2.4, 2.4, 0])
    for view in sheet.views:
        ((foot, top),) = lines(view, "centre")
        assert foot[0] == top[0] == 60.0


@pytest.mark.parametrize("last, unit", [(120.0, "s"), (900.0, "min"), (86400.0, "h"), (20 * 86400.0, "days")])
def test_time_is_told_in_the_unit_that_suits(last, unit):
    sheet = levels_in_time([0.0, last / 2, last], [0.3, 0.29, 0.28])
    assert f"time, {unit}" in [word.text for word in words(sheet)]


def test_the_description_says_where_the_level_was():
    assert levels_in_time(TIMES, LEVELS).description == (
        "The level stands at 380 mm at first, 366 mm at the lowest, after 20 s, 380 mm at the highest, after 0 s, 380 mm in the end."
    )


@settings(max_examples=200)
@given(
    levels=st.lists(st.floats(0.0, 0.9), min_size=5, max_size=5),
    overflow=st.floats(0.05, 0.95),
    lowest=st.floats(0.0, 0.5),
    stopped=st.floats(0.0, 90.0),
    head=st.floats(0.0, 0.04),
)
def test_no_label_leaves_the_sheet_or_meets_another(levels, overflow, lowest, stopped, head):
    sheet = levels_in_time(TIMES, levels, {"overflow": overflow, "pump's limit": lowest}, [0, head, head, head, 0], stopped)
    labels = words(sheet)
    for label in labels:
        left, top, right, bottom = label.box
        assert left >= 0 and top >= 0 and right <= sheet.width and bottom <= sheet.height, label.text
    for a, b in combinations(labels, 2):
        apart = a.box[2] <= b.box[0] or b.box[2] <= a.box[0] or a.box[3] <= b.box[1] or b.box[3] <= a.box[1]
        assert apart or abs(overflow - lowest) < 0.02 * (max(*levels, overflow) - min(*levels, lowest)), f"'{a.text}' overlaps '{b.text}'"


def test_times_and_levels_must_be_as_many():
    with pytest.raises(ValueError):
        levels_in_time([0.0, 1.0], [0.3])
