"""What must be true of level sheets, sight lines and decibels."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from brimwork.drawing.layout import Words, layout
from brimwork.drawing.pictures import picture
from brimwork.drawing.records import Line, Polygon, Sheet, Text
from brimwork.notebook import level_sheet
from brimwork.topics.survey import (
    change_of_sound,
    height_in_sight,
    height_of_instrument,
    level_of_a_point,
    rise_and_fall,
    sound_at_a_distance,
    sound_of_two,
    still_to_dig,
)
from brimwork.units import InputError

reading = st.floats(0.0, 4.0)
level = st.floats(0.0, 100.0)


# --- levels -------------------------------------------------------------------------------------------------------------------------


@given(level, st.lists(reading, min_size=2, max_size=20))
def test_rise_and_fall_and_the_height_of_collimation_give_the_same_levels(bench, readings):
    booked = rise_and_fall(bench, readings, back_to_bench=False)
    for got, read in zip(booked.levels[1:], readings[1:]):
        assert got == pytest.approx(level_of_a_point(z_bench=bench, s_first=readings[0], s_next=read), abs=1e-9)
    assert booked.levels[-1] - booked.levels[0] == pytest.approx(booked.rises - booked.falls, abs=1e-9)
    assert booked.levels[-1] - booked.levels[0] == pytest.approx(readings[0] - readings[-1], abs=1e-9)
    assert booked.misclosure is None and booked.closes is None


@pytest.mark.parametrize("last, closes", [(1.245, True), (1.250, True), (1.240, True), (1.251, False), (1.239, False)])
def test_closing_back_on_the_bench_mark_within_5_mm_is_asked_for(last, closes):
    booked = rise_and_fall(10.0, (1.245, 1.870, 0.612, last), back_to_bench=True)
    assert booked.misclosure == pytest.approx(1.245 - last, abs=1e-9) and booked.closes is closes


def test_a_formation_is_reduced_by_hand():
    """By hand: 10.000 + 1.245 is 11.245; less 1.870 is 9.375; to 9.350 there are 25 mm."""
    assert height_of_instrument(z_bench=10.0, s_first=1.245) == pytest.approx(11.245)
    assert still_to_dig(z_bench=10.0, s_first=1.245, s_next=1.870, z_form=9.350) == pytest.approx(0.025)
    assert still_to_dig(z_bench=10.0, s_first=1.245, s_next=1.920, z_form=9.350) == pytest.approx(-0.025)


@pytest.mark.parametrize("readings", [(), (1.2,), (1.2, -0.1), (1.2, math.nan), (1.2, 12.0)])
def test_a_sheet_without_two_readings_or_with_an_impossible_one_is_refused(readings):
    with pytest.raises(InputError, match="bench mark"):
        rise_and_fall(10.0, readings, back_to_bench=False)


# --- sight line ---------------------------------------------------------------------------------------------------------------------


@given(st.floats(1.1, 1.9), st.floats(0.3, 1.0), st.floats(0.5, 5.0), st.floats(0.1, 10.0))
def test_eye_sill_and_what_is_just_seen_lie_on_one_line(eye, sill, near, beyond):
    seen = height_in_sight(z_eye=eye, z_sill=sill, x_sill=near, x_beyond=beyond)
    assert (eye - sill) / near == pytest.approx((sill - seen) / beyond, rel=1e-6)
    assert seen < sill


# --- sound --------------------------------------------------------------------------------------------------------------------------


@given(st.floats(30, 90), st.floats(0.5, 3), st.floats(1.01, 5), st.floats(1.01, 5))
def test_two_steps_away_are_as_quiet_as_one(level, near, first, second):
    half_way = sound_at_a_distance(L_near=level, r_near=near, r_far=near * first)
    twice = sound_at_a_distance(L_near=half_way, r_near=near * first, r_far=near * first * second)
    assert twice == pytest.approx(sound_at_a_distance(L_near=level, r_near=near, r_far=near * first * second), abs=1e-9)


@given(st.floats(10, 90), st.floats(10, 90), st.floats(10, 90))
def test_sources_add_in_any_order_to_more_than_the_loudest_and_at_most_3_01_more_for_two(one, two, three):
    both = sound_of_two(L_one=one, L_two=two)
    assert max(one, two) < both <= max(one, two) + 10 * math.log10(2) + 1e-9
    assert sound_of_two(L_one=both, L_two=three) == pytest.approx(sound_of_two(L_one=one, L_two=sound_of_two(L_one=two, L_two=three)), abs=1e-9)


@given(st.floats(0.01, 100), st.floats(0.01, 100))
def test_two_changes_of_sound_one_after_the_other_add(first, second):
    assert change_of_sound(r_J=first) + change_of_sound(r_J=second) == pytest.approx(change_of_sound(r_J=first * second), abs=1e-9)


def test_a_second_equal_source_changes_the_level_as_adding_it_does():
    assert 60 + change_of_sound(r_J=2) == pytest.approx(sound_of_two(L_one=60, L_two=60), rel=1e-12)
    assert change_of_sound(r_J=(1 / 4) ** 2) == pytest.approx(sound_at_a_distance(L_near=60, r_near=1, r_far=4) - 60, rel=1e-12)


def test_a_level_sheet_is_a_table_with_its_own_check():
    """By hand: 10.000 + 1.245 = 11.245; less 1.310, 1.870 and 1.247 these are 9.935, 9.375 and 9.998; it misses by 2 mm."""
    page = level_sheet("10.000 m", bench_mark="1.245 m", paving="1.310 m", pit="1.870 m", bench_mark_again="1.247 m")
    assert "pit  1.870    0.560  9.375" in page.plain and "<td style='text-align:left'>9.375</td>" in page.html
    assert "misses by 2 mm, within the 5 mm" in page.plain and "Rises 0.623, falls 0.625" in page.plain
    assert "more than the 5 mm" in level_sheet("10 m", bench_mark="1.245 m", bench_mark_again="1.252 m").plain
    assert "does not close back" in level_sheet("10 m", bench_mark="1.245 m", pit="1.9 m").plain
    assert "Please change something" in level_sheet("10 m", bench_mark="1.245 m").plain
    assert "Please change something" in level_sheet("high", bench_mark="1.245 m", pit="1.9 m").plain


def test_the_sight_line_is_drawn_through_eye_sill_and_what_it_hides():
    """By hand: from 1.6 m down to 1.0 m in 2 m is 0.3 m a metre; 1 m behind the sill the line is at 0.7 m."""
    values = {"z_eye": 1.6, "z_sill": 1.0, "x_sill": 2.0, "x_beyond": 1.0}
    records = picture(height_in_sight, values, "x_beyond").sheet.views[0].records
    (line,) = [record.points for record in records if isinstance(record, Line) and record.style == "force"]
    assert line == ((0, 1.6), (2.0, 1.0), (3.0, pytest.approx(0.7)))
    hidden = next(record for record in records if isinstance(record, Polygon) and record.fill == "patch")
    assert max(y for _, y in hidden.points) == pytest.approx(0.7)


@given(st.floats(1.0, 1.8), st.floats(0.3, 0.95), st.floats(1, 4), st.floats(0.3, 8))
def test_no_label_of_a_sight_line_leaves_its_view(eye, share, near, beyond):
    view, *_ = picture(height_in_sight, {"z_eye": eye, "z_sill": share * eye, "x_sill": near, "x_beyond": beyond}, "x_beyond").sheet.views
    left, top, width, height = view.frame
    for label in (word for drawn, marks in layout(Sheet(180, 76, (view,), "", "")) for word in marks if isinstance(word, Words)):
        x0, y0, x1, y1 = label.box
        assert left <= x0 and x1 <= left + width and top <= y0 and y1 <= top + height, label.text


def test_a_sight_line_that_meets_the_ground_first_hides_nothing():
    """From 1.6 m over 0.8 m at 2 m it reaches the ground at 4 m, and the feature stands at 7 m."""
    records = picture(height_in_sight, {"z_eye": 1.6, "z_sill": 0.8, "x_sill": 2.0, "x_beyond": 5.0}, "x_beyond").sheet.views[0].records
    (line,) = [record.points for record in records if isinstance(record, Line) and record.style == "force"]
    assert line[-1] == pytest.approx((4.0, 0.0))
    assert any(isinstance(record, Text) and record.text == "nothing hidden" for record in records)
