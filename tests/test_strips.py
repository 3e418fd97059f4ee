"""Pieces laid in strips off a roll: what must be true of their number, length and direction."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from brimwork.design.done import strips
from brimwork.topics import lining
from brimwork.units import InputError

sides = st.floats(0.1, 12.0)


@given(sides, st.floats(0.5, 4.0), st.floats(0.0, 0.4))
def test_strips_beside_each_other_cover_the_width_and_one_less_does_not(width, roll, lap):
    count = strips.beside(width, roll, lap)
    assert count * roll - (count - 1) * lap >= width - 1e-6
    assert count == 1 or (count - 1) * roll - (count - 2) * lap < width + 1e-6


def test_strips_that_just_cover_are_not_one_more():
    """By hand: three strips of 2 m with two laps of 0.1 m are 5.8 m wide; a hair more takes four."""
    assert strips.beside(5.8, 2.0, 0.1) == 3 and strips.beside(5.801, 2.0, 0.1) == 4 and strips.beside(0.05, 2.0, 0.1) == 1


@given(sides, sides, st.floats(0.5, 4.0), st.floats(0.0, 0.4), st.floats(0.0, 0.2), st.sampled_from([0.1, 0.3048, 0.5, 1.0]))
def test_each_strip_is_as_long_as_its_side_and_turning_the_piece_buys_as_much(length, width, roll, lap, slack, step):
    found, turned = strips.laid(length, width, roll, lap, slack, step), strips.laid(width, length, roll, lap, slack, step)
    assert found.length in (length, width) and found.cut >= found.length * (1 + slack) - 1e-6 and found.cut - step < found.gross + 1e-6
    assert math.isclose(found.bought, turned.bought)
    assert found.bought * roll >= length * width * (1 - 1e-9), "never less than the area"


def test_the_way_that_takes_less_off_the_roll_is_taken():
    """By hand, off 2 m without laps: 3.9 x 2.1 m along the 3.9 takes two strips of 4 m, along the 2.1 two of 2.5 m: 5 m against 8 m."""
    found = strips.laid(3.9, 2.1, 2.0, 0.0, 0.0, 0.5)
    assert (found.count, found.length, found.cut, found.bought) == (2, 2.1, 2.5, 5.0)


@pytest.mark.parametrize("lap", [2.0, 2.5, -0.1, math.nan])
def test_a_lap_that_no_roll_can_have_is_refused(lap):
    with pytest.raises(InputError, match="wider than its lap"):
        strips.beside(3.0, 2.0, lap)


@given(st.floats(0.5, 6.0), st.floats(0.5, 6.0))
def test_a_liner_lies_so_that_the_least_length_comes_off_the_narrowest_roll_that_covers_it(long, wide):
    roll = lining.shortest_off_a_roll(long, wide, (2.0, 3.0, 4.0, 6.0))
    assert roll.width == lining.choose_roll(long, wide, (2.0, 3.0, 4.0, 6.0)).width
    assert roll.length == (min(long, wide) if max(long, wide) <= roll.width else max(long, wide))
    assert roll.spare == pytest.approx(roll.width - (long + wide - roll.length)) and roll.turned == (roll.length == wide != long)


def test_a_liner_is_turned_only_where_its_slack_fits_across_the_roll():
    """By hand: 3.95 m lie across a roll of 4 m; with 2 % slack they are 4.029 m and do not."""
    assert lining.shortest_off_a_roll(3.95, 3.1, (4.0,)).length == 3.1
    assert lining.shortest_off_a_roll(3.95, 3.1, (4.0,), 0.02).length == 3.95
