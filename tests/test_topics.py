"""What must be true of every formula of every topic, and of the letters they use; later topics are covered by themselves."""

import ast
import math
import random
import re

import pytest
import unused_formulas
from draws import usual_points
from plain_arithmetic import comes_to

from brimwork import expression, tables
from brimwork.conditions import holds
from brimwork.derivation import derived, status_of_step
from brimwork.exercise import sensible
from brimwork.formula import origin
from brimwork.nomenclature import QUANTITIES
from brimwork.prove import WORDS
from brimwork.topics import find, formulas, topics
from brimwork.topics.overflow import lip_coefficient
from brimwork.units import InputError

FORMULAS = list(formulas().values())
PUBLISHED = [(formula, published) for formula in FORMULAS for published in formula.published]
BY_HAND = [(formula, worked) for formula in FORMULAS for worked in formula.by_hand]
SLIPS = [(formula, slip) for formula in FORMULAS for slip in formula.slips]
INVERSES = [formula for formula in FORMULAS if formula.inverse_of]
every_formula = pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)


def _named(pairs):
    return [f"{formula.name}-{number}" for number, (formula, _) in enumerate(pairs)]


@every_formula
def test_a_formula_has_both_guards(formula):
    assert expression.dimension(formula.left) == expression.dimension(formula.right)
    assert formula.published or len(formula.unpublished) > 10
    assert origin(formula)


@every_formula
def test_a_derivation_is_proved(formula):
    assert status_of_step(formula) in WORDS.keys() - {"failed"}


@every_formula
def test_a_derivation_does_not_end_in_something_taken_for_granted(formula):
    shown = derived(formula)
    assert not shown or shown[-1].how in ("algebra", "numbers")


@pytest.mark.parametrize("formula, published", PUBLISHED, ids=_named(PUBLISHED))
def test_a_published_value_agrees_within_a_narrow_tolerance(formula, published):
    assert 0 < published.tolerance <= 0.15
    check = published.check(formula)
    assert check.agrees, f"printed {check.printed}, here {check.got}"


@every_formula
def test_a_formula_without_printed_value_and_derivation_carries_numbers_worked_by_hand(formula):
    assert formula.published or derived(formula) or formula.by_hand


@pytest.mark.parametrize("formula, worked", BY_HAND, ids=_named(BY_HAND))
def test_a_line_worked_by_hand_comes_to_its_value_and_so_does_the_formula(formula, worked):
    """The line is worked by plain arithmetic, which knows nothing of the kit, in the unit in which the value is written."""
    written = float(re.match(r"-?[\d.]+", worked.value)[0])
    assert comes_to(worked.line) == pytest.approx(written, rel=worked.tolerance)
    assert worked.check(formula).agrees, f"by hand {worked}, here {worked.check(formula).got_text}"


def test_a_line_worked_by_hand_holds_numbers_alone():
    assert comes_to("2*(10 + 20) - 9**0.5/sqrt(9)") == 59
    for line in ("2*H", "H(2)", "True + 1", "[1]", "min(1, 2)"):
        with pytest.raises(ValueError, match="no place in a line"):
            comes_to(line)


@every_formula
def test_conditions_ranges_and_tested_ranges_name_letters_of_the_formula(formula):
    known = {*formula.inputs, *formula.constants, formula.result}
    assert formula.ranges.keys() <= known
    for text in (*(tested.of for tested in formula.tested), *(side for condition in formula.where for side in condition.split("<"))):
        assert {*expression.letters(expression.parse_expression(text))} <= known
    for name in formula.inputs:
        low, high, step = formula.range(name)
        assert low < high and 0 < step <= high - low, f"the usual range of {name} is empty"


@every_formula
def test_a_working_with_usual_values_can_say_what_to_note(formula):
    worked = formula.work(**usual_points(formula, 1, seed=3)[0])
    assert all(isinstance(note, str) and note for note in worked.notes)


# --- slips --------------------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("formula, slip", SLIPS, ids=_named(SLIPS))
def test_a_slip_gives_a_number_that_differs_from_the_right_one(formula, slip):
    draw, told_apart, points = random.Random(4), 0, usual_points(formula, 60, seed=4)
    for point in points:
        also = {name: draw.uniform(*QUANTITIES[name].range[:2]) for name in slip.also_given}
        wrong, right = slip.number({**point, **also}), formula(**point)
        if isinstance(wrong, complex):  # only where no question stands
            assert not all(holds(one, {**point, formula.result: right}) for one in sensible.LIMITS.get(formula.name, ()))
            continue
        assert math.isfinite(wrong)
        told_apart += abs(wrong - right) > 0.02 * abs(right)
    assert told_apart >= len(points) / 10, "a learner who makes this slip would pass nearly every time"


@pytest.mark.parametrize("formula, slip", SLIPS, ids=_named(SLIPS))
def test_a_slip_speaks_to_the_learner_in_a_full_sentence(formula, slip):
    assert re.fullmatch(r"[A-Z'].*[.?!]", slip.feedback, re.DOTALL) and len(slip.feedback.split()) >= 3
    given = {*formula.inputs, *(key for key, row in QUANTITIES.items() if row.value)}
    assert not {*slip.also_given} & given
    assert {*expression.letters(expression.parse_expression(slip.equals))} <= given | {*slip.also_given}


@every_formula
def test_no_two_slips_of_a_formula_are_the_same(formula):
    texts = [ast.unparse(expression.parse_expression(slip.equals)) for slip in formula.slips]
    assert len({*texts}) == len(texts)


# --- inverse pairs ------------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("inverse", INVERSES, ids=lambda formula: formula.name)
def test_an_inverse_gives_back_what_went_in(inverse):
    forward, tried = inverse.inverse_of, 0
    for point in usual_points(forward, 100, seed=5):
        back = {**point, forward.result: forward(**point)}
        wanted = back.pop(inverse.result)
        if all(holds(condition, back) for condition in inverse.where):
            tried += 1
            assert inverse(**back) == pytest.approx(wanted, rel=1e-9)
    assert tried >= 20


# --- letters and names --------------------------------------------------------------------------------------------------------------


def _letters_of(formula):
    texts = [formula.relation, *formula.between, *formula.ranges, *formula.where]
    texts += [tested.of for tested in formula.tested] + [letter for slip in formula.slips for letter in (slip.equals, *slip.also_given)]
    for step in formula.steps:
        texts += [step.name if step in FORMULAS else "", getattr(step, "relation", ""), *(text for pair in getattr(step, "at", ()) for text in pair)]
    return {name for text in texts for name in re.findall(r"[A-Za-z]\w*", text)}


def test_every_letter_of_the_nomenclature_is_used():
    used = set().union(*map(_letters_of, FORMULAS))
    assert [key for key, row in QUANTITIES.items() if key not in used and not row.value] == []


@every_formula
def test_every_letter_of_a_formula_stands_in_the_nomenclature(formula):
    assert {formula.result, *formula.inputs, *formula.constants} <= QUANTITIES.keys()


def test_names_are_plain_and_stand_in_one_topic_only():
    assert sum(len(found) for found in topics().values()) == len(FORMULAS)
    for name in formulas():
        assert re.fullmatch(r"[A-Za-z][A-Za-z0-9 ,'-]+", name) and name == name.strip()


def test_a_formula_is_found_by_name_and_a_near_name_is_suggested():
    for name in formulas():
        assert find(name).name == find(name.upper().replace(" ", "_")).name == name
    with pytest.raises(InputError, match="Nearest: flow over a level lip"):
        find("flow over a levle lip")


# --- procedures ---------------------------------------------------------------------------------------------------------------------


def test_lip_constants_follow_the_printed_table_and_stop_at_its_ends():
    """EPA SWMM Reference Manual vol. II, Table 6-2: 3.220 + 0.4000 H/P in feet at full width; ISO's coefficient 0.602 + 0.075 H/P."""
    assert lip_coefficient(H=0.1, P=0.1) == pytest.approx((3.220 + 0.4000) / (2 / 3 * math.sqrt(2 * 32.174)), rel=1e-5)
    assert tables.lip_constants(1.0) == (pytest.approx(0.602, abs=5e-4), pytest.approx(0.075, abs=5e-4))
    low, high = tables.lip_constants(0.5), tables.lip_constants(0.6)
    assert tables.lip_constants(0.55) == tuple(pytest.approx((a + b) / 2) for a, b in zip(low, high))
    for share in (0.1, 1.1):
        with pytest.raises(InputError, match="0.2 to 1"):
            tables.lip_constants(share)


def test_a_formula_that_nothing_uses_has_a_reason_to_be_looked_up():
    found = {name for _, name in unused_formulas.unused()}
    assert not found - unused_formulas.WHY.keys(), "give it a place in a workbook or in a design, or say in tests/unused_formulas.py who looks it up"
    assert unused_formulas.WHY.keys() <= formulas().keys()
