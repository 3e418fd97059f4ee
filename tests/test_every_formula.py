"""What must be true of every formula over the whole of its usual ranges, their ends too: Hypothesis looks for the point where it is not.

`test_topics` holds the same formulas to their sources, derivations and slips.
"""

import math
import re

import pytest
from draws import usual_points, usual_values
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from brimwork.conditions import holds
from brimwork.topics import formulas
from brimwork.units import InputError

FORMULAS = list(formulas().values())
INVERSES = [formula for formula in FORMULAS if formula.inverse_of]
RISING = [formula for formula in FORMULAS if formula.rises or formula.falls]
often = settings(max_examples=40, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow])


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)
@often
@given(data=st.data())
def test_a_result_is_a_finite_number_that_the_letter_can_have(formula, data):
    result = formula(**data.draw(usual_values(formula)))
    assert math.isfinite(result)
    assert result >= 0 or formula.quantity.signed


@pytest.mark.parametrize("inverse", INVERSES, ids=lambda formula: formula.name)
@often
@given(data=st.data())
def test_what_an_inverse_finds_puts_the_given_result_back(inverse, data):
    """The other way round than in `test_topics`: from the inverse's own ranges, found value back into the formula."""
    forward, point = inverse.inverse_of, data.draw(usual_values(inverse))
    try:
        found = inverse(**point)
    except InputError:
        assume(False)  # no such value: more water than the bowl holds
    back = forward.only({**point, inverse.result: found})
    assert forward(**back) == pytest.approx(point[forward.result], rel=1e-9)


def test_many_formulas_say_with_which_letters_they_rise_and_fall():
    assert len(RISING) >= 80 and sum(len(formula.rises + formula.falls) for formula in RISING) >= 200


@pytest.mark.parametrize("formula", RISING, ids=lambda formula: formula.name)
@often
@given(data=st.data())
def test_a_result_rises_and_falls_with_the_letters_that_the_formula_names(formula, data):
    point = data.draw(usual_values(formula))
    letter = data.draw(st.sampled_from(formula.rises + formula.falls))
    low, high, _ = formula.range(letter)
    more = {**point, letter: data.draw(st.floats(low, high), label=letter)}
    assume(more[letter] - point[letter] > (high - low) / 1000)
    assume(all(holds(condition, more) for condition in formula.where))
    change = formula(**more) - formula(**point)
    assert change > 0 if letter in formula.rises else change < 0


# --- zeros, signs and the ends of the float range -----------------------------------------------------------------------------------

ODD = (0.0, -0.0, -1.0, 5e-324, 1e-200, 1e200, 1.7e308, -1.7e308, math.inf, -math.inf, math.nan)


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)
def test_a_zero_gives_a_number_or_is_refused_by_the_name_of_its_letter(formula):
    middle = next(iter(usual_points(formula, 1)), {})
    for letter in formula.inputs:
        try:
            worked = formula.work(**{**middle, letter: 0.0})
        except InputError as error:
            assert re.search(rf"\b{letter}\b", str(error)) and "has no value for" in str(error)
            assert "divides by" not in str(error) or f"divides by {letter} (" in str(error)
        else:
            assert math.isfinite(worked.result) and all(isinstance(note, str) for note in worked.notes)


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)
@settings(max_examples=12, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow])
@given(data=st.data())
def test_odd_values_give_a_number_or_a_refusal_and_never_a_traceback(formula, data):
    values = {}
    for letter in formula.inputs:
        low, high, _ = formula.range(letter)
        values[letter] = data.draw(st.sampled_from((*ODD, low, high)), label=letter)
    try:
        worked = formula.work(**values)
    except InputError as error:
        assert str(error)
    else:
        assert math.isfinite(worked.result)
