"""What must be true of every formula over the whole of its usual ranges, their ends and corners too.

`test_topics` holds the same formulas to their sources, derivations and slips.
"""

import math
import random
import re

import pytest
from draws import swept, usual_points

from brimwork.conditions import holds
from brimwork.topics import formulas
from brimwork.units import InputError

FORMULAS = list(formulas().values())
INVERSES = [formula for formula in FORMULAS if formula.inverse_of]
RISING = [formula for formula in FORMULAS if formula.rises or formula.falls]


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)
def test_a_result_is_a_finite_number_that_the_letter_can_have(formula):
    for point in swept(formula):
        result = formula(**point)
        assert math.isfinite(result) and (result >= 0 or formula.quantity.signed), point


@pytest.mark.parametrize("inverse", INVERSES, ids=lambda formula: formula.name)
def test_what_an_inverse_finds_puts_the_given_result_back(inverse):
    """The other way round than in `test_topics`: from the inverse's own ranges, found value back into the formula."""
    forward, tried = inverse.inverse_of, 0
    for point in swept(inverse, 20):
        try:
            found = inverse(**point)
        except InputError:  # no such value: more water than the bowl holds
            continue
        tried += 1
        assert forward(**forward.only({**point, inverse.result: found})) == pytest.approx(point[forward.result], rel=1e-9), point
    assert tried >= 20


def test_many_formulas_say_with_which_letters_they_rise_and_fall():
    assert len(RISING) >= 80 and sum(len(formula.rises + formula.falls) for formula in RISING) >= 200


@pytest.mark.parametrize("formula", RISING, ids=lambda formula: formula.name)
def test_a_result_rises_and_falls_with_the_letters_that_the_formula_names(formula):
    draw, tried = random.Random(formula.name), dict.fromkeys(formula.rises + formula.falls, 0)
    for point in swept(formula, 20):
        for letter in tried:
            low, high, _ = formula.range(letter)
            more = {**point, letter: draw.uniform(low, high)}
            if more[letter] - point[letter] > (high - low) / 1000 and all(holds(condition, more) for condition in formula.where):
                tried[letter] += 1
                change = formula(**more) - formula(**point)
                assert change > 0 if letter in formula.rises else change < 0, (point, more)
    assert min(tried.values()) >= 10, tried


# --- zeros, signs and the ends of the float range -----------------------------------------------------------------------------------

ODD = (0.0, -0.0, -1.0, 5e-324, 1e-200, 1e200, 1.7e308, -1.7e308, math.inf, -math.inf, math.nan)


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)
def test_a_zero_gives_a_number_or_is_refused_by_the_name_of_its_letter(formula):
    middle = next(iter(usual_points(formula, 1)), {})
    for letter in formula.inputs:
        try:
            worked = formula.work(**{**middle, letter: 0.0})
        except InputError as error:
            assert re.search(rf"\b{letter}\b", str(error)) and re.search("(has no value|does not hold) for", str(error))
            assert "divides by" not in str(error) or f"divides by {letter} (" in str(error)
        else:
            assert math.isfinite(worked.result) and all(isinstance(note, str) for note in worked.notes)


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)
def test_odd_values_give_a_number_or_a_refusal_and_never_a_traceback(formula):
    draw = random.Random(formula.name)
    for _ in range(40):
        values = {letter: draw.choice((*ODD, *formula.range(letter)[:2])) for letter in formula.inputs}
        _worked_or_refused(formula, values)


def _worked_or_refused(formula, values):
    try:
        worked = formula.work(**values)
    except InputError as error:
        assert str(error)
    else:
        assert math.isfinite(worked.result)
