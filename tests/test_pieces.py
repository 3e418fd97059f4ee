"""The working of a formula in pieces, and one piece as a question: values by hand, slips of the shape of a line, an earlier slip carried on."""

import math

import pytest

from brimwork import dimensions, expression, topics, typeset, units
from brimwork.coherent import unit_of_si
from brimwork.exercise.blanks import answered, blank
from brimwork.exercise.diagnosis import KINDS_OF_ANSWER
from brimwork.exercise.pieces import worked
from brimwork.exercise.question import ask
from brimwork.nomenclature import read_values

FORMULAS = [formula for formula in topics.formulas().values() if not formula.implicit]
LIP = "b=600 mm, H=12 mm, C_d=0.62"  # by hand: sqrt(2 g) = 4.4287, 0.012^1.5 = 0.0013145, and 2/3 x 0.62 x 0.6 x both = 0.0014437 m3/s
PIPE = "z_s=0.9 m, Q=30 L/min, d_pipe=25 mm, L_pipe=4 m, f=0.025, K=4.7"  # v = 1.01859 m/s, velocity head 0.052899 m; times 4, times 4.7, and 0.9


def of(name, given):
    return worked(topics.find(name), read_values(given))


def keys(found):
    return [piece.key for piece in found.pieces]


def test_a_root_and_a_power_are_lines_of_their_own():
    found = of("flow over a level lip", LIP)
    assert keys(found) == ["part_1", "part_2", "Q"]
    assert [found.found[key] for key in keys(found)] == pytest.approx([4.428690, 0.00131453, 0.00144377], rel=1e-5)
    assert [piece.unit for piece in found.pieces] == ["m^0.5/s", "m^1.5", "m3/s"]
    assert found.line(found.pieces[1]) == "H^(3/2) = (0.012 m)^(3/2) = 0.001315 m^1.5"
    assert found.units_only(found.pieces[2], typeset.PLAIN) == "m × m^0.5/s × m^1.5 × (L/min)/(m3/s)"
    assert found.units_only(found.pieces[0], typeset.PLAIN) == "√(m/s2)"


def test_quantities_that_the_derivation_names_are_lines_of_their_own():
    found = of("total dynamic head", PIPE)
    assert keys(found) == ["v", "h_f", "h_m", "H_t"]
    assert [found.found[key] for key in keys(found)] == pytest.approx([1.018592, 0.211596, 0.248625, 1.360221], rel=1e-5)
    assert found.line(found.pieces[3]) == "H_t = z_s + h_f + h_m = 0.9 m + 0.2116 m + 0.24863 m = 1.360 m"  # a fifth figure where four would stray


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)
def test_the_pieces_of_every_formula_come_to_its_value_and_every_line_can_be_asked(formula):
    found = worked(formula, formula.only({name: given.value for name, given in ask(formula, 1).given.items()}))
    assert found.found[formula.result] == pytest.approx(formula(**formula.only(found.values)), rel=1e-9)
    for place, piece in enumerate(found.pieces):
        question = blank(found, place, 1)
        assert units.unit(piece.unit).dimension == pytest.approx(expression.dimension(piece.written))
        assert answered(found, place, 1, question.typed(question.answer, 4), {}).right, found.line(piece)
        for at, slip in enumerate(question.slips):
            told = answered(found, place, 1, question.typed(slip.number, 4), {})
            assert told.slip == at and slip.feedback.endswith((".", "?")), (found.line(piece), slip)


def test_units_of_odd_powers_can_be_read_back():
    for text in ("m^1.5", "m^0.5/s", "m3/s", "Pa", "kg/m2/s2", "m^(1/3)", "s^-1"):
        assert unit_of_si(units.unit(text).dimension) == text
    assert unit_of_si(dimensions.NUMBER) == ""


@pytest.mark.parametrize(
    "place, typed, kind, told",
    [
        (1, "0.00131 m^1.5", "right", "Right"),
        (1, "0.012 m^1.5", "way", "left out the power of H (head over the lip): take it to the power 3/2"),
        (1, "0.0524 m^1.5", "way", "turned the power of H (head over the lip) upside down"),
        (1, "0.018 m^1.5", "way", "multiplied H (head over the lip) by 3/2"),
        (1, "0.00131", "no unit", "The unit is missing"),
        (1, "0.00131 m", "other unit", "measured in m^1.5"),
        (1, "0.0077 m^1.5", "none", "I do not know which slip"),
        (1, "", "unread", "could not read"),
        (1, "<script>alert(1)</script>", "unread", "could not read"),
        (1, "9**9**9 m", "unread", "could not read"),
        (2, "86.6 L/min", "right", "Right"),
        (2, "0.00144 m3/s", "right", "another unit"),
        (2, "130 L/min", "slip", "speed of the deepest layer"),
        (2, "86.6 L/h", "unit", "you typed L/h"),
        (0, "19.6 m^0.5/s", "way", "left out the root"),
    ],
)
def test_an_answer_to_a_line_is_told_what_it_is(place, typed, kind, told):
    found = answered(of("flow over a level lip", LIP), place, 1, typed, {})
    assert found.kind == kind and told in found.text and found.kind in KINDS_OF_ANSWER
    assert "wrong" not in found.text.lower()


def test_a_slip_carried_on_from_an_earlier_line_is_told_as_that():
    lip = of("flow over a level lip", LIP)
    rest = 2 / 3 * 0.62 * 0.6 * 4.42869 * 0.012  # the head without its power, worked on rightly
    found = answered(lip, 2, 1, f"{rest * 60e3:.1f} L/min", {1: 0.012})
    assert found.kind == "carried" and "your value in step 2" in found.text
    assert answered(lip, 2, 1, "86.6 L/min", {1: 0.012}).right
    assert answered(lip, 2, 1, f"{rest * 60e3:.1f} L/min", {1: lip.found["part_2"]}).kind != "carried"


def test_a_line_that_is_a_formula_of_its_own_knows_the_slips_of_that():
    """0.6 m down and 0.45 m out is 0.75 m along the slope: 45, 60, 75."""
    found = of("length of the liner for sloping sides", "L=1.2 m, D=600 mm, s_back=450 mm, w_apron=600 mm, w_trim=100 mm")
    place = keys(found).index("l_side")
    assert answered(found, place, 1, "750 mm", {}).right
    assert "the liner runs along the slope" in answered(found, place, 1, "600 mm", {}).text
    assert "went down and then across" in answered(found, place, 1, "1050 mm", {}).text


def test_a_formula_solved_by_trial_has_no_pieces():
    with pytest.raises(ValueError, match="solved by trial"):
        worked(topics.find("friction factor by Colebrook"), {"Re": 25500.0, "k_s": 1.5e-6, "d_pipe": 0.025})


def test_hostile_text_is_answered_with_a_finite_message():
    lip = of("flow over a level lip", LIP)
    for text in ("nan m", "1e99 m^1.5", "1" * 500, "\u202e0.1 m^1.5", "١٢ mm", None, 5):
        found = answered(lip, 1, 1, text, {0: math.nan})
        assert found.kind in KINDS_OF_ANSWER and 0 < len(found.text) < 900
