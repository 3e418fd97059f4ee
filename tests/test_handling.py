"""What must be true of lifts by hand, of teams, and of legs of a sling."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from brimwork.topics.handling import lift_limit, lifting_index, pull_in_slings, sling_pull
from brimwork.units import InputError

reach, height, move = st.floats(0.0, 0.63), st.floats(0.0, 1.75), st.floats(0.0, 1.75)


def test_the_best_lift_of_all_may_weigh_23_kg():
    """The load constant of the equation: hands 25 cm out at 75 cm, moved 25 cm at most, rarely, with a good grip."""
    assert lift_limit(0.25, 0.75, 0.25) == pytest.approx(23, rel=1e-12)
    assert lift_limit(0.10, 0.75, 0.0) == pytest.approx(23, rel=1e-12)


@given(reach, height, move, st.floats(0.7, 1.0))
def test_no_lift_may_weigh_more_than_the_best_and_every_factor_takes_some_off(x, z, d, factor):
    limit = lift_limit(x, z, d)
    assert 0 < limit <= 23 * (1 + 1e-12)
    assert lift_limit(x, z, d, k_grip=factor) == pytest.approx(factor * limit)


@given(reach, move, st.floats(0.0, 0.75))
def test_a_lift_from_so_far_below_the_knuckles_is_as_hard_as_from_so_far_above(x, d, away):
    assert lift_limit(x, 0.75 - away, d) == pytest.approx(lift_limit(x, 0.75 + away, d), rel=1e-9)


@given(st.floats(0.25, 0.62), st.floats(0.001, 0.01))
def test_hands_farther_out_may_lift_less(x, step):
    assert lift_limit(x + step, 0.5, 0.5) < lift_limit(x, 0.5, 0.5) if x + step <= 0.63 else True


@pytest.mark.parametrize("lift", [(0.64, 0.5, 0.5), (0.3, 1.76, 0.3), (0.3, 0.5, 1.8), (-0.1, 0.5, 0.5), (math.nan, 0.5, 0.5)])
def test_a_lift_beyond_the_equation_is_refused(lift):
    with pytest.raises(InputError, match="nobody should lift so"):
        lift_limit(*lift)


def test_a_load_at_its_limit_has_an_index_of_one():
    assert lifting_index(m_load=17.0, m_rwl=17.0) == 1


# --- slings -------------------------------------------------------------------------------------------------------------------------


@given(st.floats(10, 1000), st.integers(1, 2), st.floats(30, 90))
def test_the_upward_parts_carry_the_load(mass, legs, degrees):
    angle = math.radians(degrees)
    pull = sling_pull(m_load=mass, N_leg=legs, alpha_leg=angle)
    assert legs * pull * math.sin(angle) == pytest.approx(mass * 9.80665, rel=1e-12)


def test_of_three_or_four_legs_two_carry():
    two = pull_in_slings(180, 2, math.radians(60))
    assert pull_in_slings(180, 3, math.radians(60)) == pull_in_slings(180, 4, math.radians(60)) == two
    assert (
        pull_in_slings(180, 4, math.radians(60), equalised=True) == pytest.approx(two / 2) and pull_in_slings(180, 2, math.radians(60), equalised=True) == two
    )
    assert pull_in_slings(180, 1, math.radians(90)) == pytest.approx(180 * 9.80665)


@pytest.mark.parametrize(
    "legs, degrees, word", [(2, 29.9, "longer slings"), (2, 91, "longer slings"), (5, 60, "legs"), (0, 60, "legs"), (2, math.nan, "longer slings")]
)
def test_flat_slings_and_other_numbers_of_legs_are_refused(legs, degrees, word):
    with pytest.raises(InputError, match=word):
        pull_in_slings(180, legs, math.radians(degrees))
