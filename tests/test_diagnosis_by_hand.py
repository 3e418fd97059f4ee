"""What a wrong answer is taken for, worked by hand: the wrong ways with small workings, their numbers and sentences; how sure, how near, how many figures."""

import ast
import math

import pytest

from brimwork.exercise.diagnosis import diagnose, read_answer, what_is_right
from brimwork.exercise.question import GivenValue, KnownWay, Middle, Question
from brimwork.exercise.reading import plainly, typed_reading
from brimwork.exercise.trees import factors, one_replaced, product, replaced, terms, total
from brimwork.exercise.ways import UNIT, Names, ways
from brimwork.exercise.written import Numeric, Wrong

# --- a tree apart and together ------------------------------------------------------------------------------------------------------


def tree(text: str) -> ast.expr:
    return ast.parse(text, mode="eval").body


def worth(node: ast.expr, **values: float) -> float:
    named = {part.id: 1.0 for part in ast.walk(node) if isinstance(part, ast.Name) and part.id.startswith(UNIT)}
    space = {"sqrt": math.sqrt, "sin": math.sin, "cos": math.cos, "tan": math.tan, "log": math.log, "log10": math.log10, "pi": math.pi, **named, **values}
    return eval(compile(ast.fix_missing_locations(ast.Expression(node)), "<test>", "eval"), {}, space)


def test_a_sum_is_its_terms_with_their_signs_and_a_product_its_factors_over_and_under():
    assert [(ast.unparse(term), added) for term, added in terms(tree("a - (b - c) + -d"))] == [("a", True), ("b", False), ("c", True), ("d", False)]
    assert [(ast.unparse(factor), over) for factor, over in factors(tree("a/(b/c)*d"))] == [("a", True), ("b", False), ("c", True), ("d", True)]
    assert (
        worth(total([(tree("b"), False), (tree("a"), True)]), a=7.0, b=3.0) == 4.0
        and worth(total([(tree("a"), False)]), a=7.0) == -7.0
        and worth(total([])) == 0
    )
    assert ast.unparse(total([(tree("b"), False), (tree("a"), True)])) == "a - b"  # and not -b + a: what is added stands first
    assert worth(product([(tree("a"), False), (tree("b"), True), (tree("c"), True)]), a=4.0, b=3.0, c=2.0) == 1.5
    assert worth(product([(tree("a"), False)]), a=4.0) == 0.25 and worth(product([])) == 1


def test_names_are_replaced_everywhere_and_a_place_only_there():
    whole = tree("a*sqrt(a + -b)**2")
    assert ast.unparse(replaced(whole, {"a": tree("c"), "b": tree("a")})) == "c * sqrt(c + -a) ** 2"
    inside = next(part for part in ast.walk(whole) if isinstance(part, ast.UnaryOp))
    assert ast.unparse(one_replaced(whole, inside, tree("d"))) == "a * sqrt(a + d) ** 2"
    assert ast.unparse(one_replaced(whole, inside.operand, tree("d"))) == "a * sqrt(a + -d) ** 2"


# --- wrong ways with a working ------------------------------------------------------------------------------------------------------

LONG, SHORT = "a length", "a time"
SELDOM = ("doubled", "point", "cut")


def found(text: str, kinds: dict[str, str], values: dict[str, float], **names) -> dict[str, float]:
    """Sentence and number of each way, but for those of a kind that every tree has many of."""
    given = Names(kinds, names.get("plain", frozenset()), frozenset(), frozenset(kinds), names.get("angles", frozenset()))
    every = [way for way in ways(tree(text), given) if way.kind not in SELDOM]
    return {way.sentence(ast.unparse): worth(way.tree, **values) for way in every}


def test_the_ways_with_a_fraction():
    assert found("a*b/c", {"a": LONG, "b": LONG, "c": SHORT}, {"a": 2.0, "b": 3.0, "c": 5.0}) == pytest.approx(
        {
            "You left out a: multiply by it.": 0.6,
            "You divided by a: multiply by it.": 0.3,
            "You left out b: multiply by it.": 0.4,
            "You divided by b: multiply by it.": 2 / 15,
            "You left out c: divide by it.": 6.0,
            "You multiplied by c: divide by it.": 30.0,
            "You turned the fraction upside down: divide a * b by c.": 5 / 6,
            "You turned the whole upside down: divide the other way round.": 5 / 6,
            "The sign is turned round: look at which way you count.": -1.2,
            "That is only a, as it was given: work on from it.": 2.0,
            "That is only b, as it was given: work on from it.": 3.0,
            "That is only c, as it was given: work on from it.": 5.0,
            "That is only a * b: it is one part of the way, so go on from there.": 6.0,
            "You put a and b each in the place of the other: swap them.": 1.2,
            "You used b in the place of a: put a there.": 1.8,
            "You used a in the place of b: put b there.": 0.8,
        }
    )


def test_the_ways_with_a_sum_of_three():
    kinds = dict.fromkeys("abc", LONG)
    told = found("a + b - c", kinds, {"a": 2.0, "b": 3.0, "c": 4.0})
    assert {text: number for text, number in told.items() if "place" not in text and "given" not in text} == {
        "You left out a: add it.": -1.0,
        "You left out b: add it.": -2.0,
        "You left out c: take it off.": 5.0,
        "You took off a: add it.": -3.0,
        "You took off b: add it.": -5.0,
        "You added c: take it off.": 9.0,
        "The sign is turned round: look at which way you count.": -1.0,
    }
    assert told["You put a and c each in the place of the other: swap them."] == 5.0 and told["You used c in the place of a: put a there."] == 3.0


def test_the_ways_with_two_that_are_taken_from_each_other_or_added():
    kinds, values = {"a": LONG, "b": LONG}, {"a": 5.0, "b": 2.0}
    taken, added = found("a - b", kinds, values), found("a + b", kinds, values)
    assert {text: number for text, number in taken.items() if "place" not in text and "given" not in text} == {
        "You left out a: add it.": -2.0,
        "You worked with b alone: take it from a.": 2.0,
        "You left out b: take it off.": 5.0,
        "You added b: take it off.": 7.0,
        "You took a from b: take b from a.": -3.0,
        "You multiplied a by b: this is a sum.": 10.0,
        "The sign is turned round: look at which way you count.": -3.0,
    } | {"You multiplied a by b: this is a sum.": 10.0}
    assert {text: number for text, number in added.items() if "place" not in text and "given" not in text} == {
        "You left out a: count it too.": 2.0,
        "You left out b: count it too.": 5.0,
        "You took off b: add it.": 3.0,
        "You multiplied a by b: this is a sum.": 10.0,
        "The sign is turned round: look at which way you count.": -7.0,
    }


@pytest.mark.parametrize(
    ("text", "value", "told"),
    [
        ("3*a/4", 8.0, {"You left out the 3/4: multiply by it.": 8.0, "You put the 3/4 in upside down: divide once.": 32 / 3,
                        "You left out the 4: divide by it.": 24.0, "You left out the 3: multiply by it.": 2.0}),
        ("a/2", 8.0, {"You left out the half: divide by 2.": 8.0, "You put the half in upside down: divide once.": 16.0}),
        ("a/5", 8.0, {"You left out the 1/5: divide by 5.": 8.0, "You put the 1/5 in upside down: divide once.": 40.0}),
        ("2*a", 8.0, {"You left out the 2: multiply by it.": 8.0, "You put the 2 in upside down: multiply once.": 4.0}),
        ("a*1.5*2/3", 8.0, {}),
        ("a*25/4", 8.0, {"You left out the 6.25: multiply by it.": 8.0, "You put the 6.25 in upside down: multiply once.": 1.28}),
    ],
)  # fmt: skip
def test_the_ways_with_a_plain_number(text, value, told):
    every = found(text, {"a": LONG}, {"a": value})
    assert {said: number for said, number in every.items() if " the " in said and "sign" not in said and "whole" not in said} == pytest.approx(told)


def test_the_ways_with_a_circle():
    told = found("pi*d**2/4", {"d": LONG}, {"d": 2.0})
    assert told["You left out pi and the 4: an area of a circle needs both."] == 4.0
    assert told["You left out pi: multiply by it."] == 1.0 and told["You divided by pi: multiply by it."] == pytest.approx(1 / math.pi)
    assert told["You left out the power of d: square it."] == pytest.approx(math.pi / 2)
    assert told["You turned the power of d upside down: it is 2, not 1/2."] == pytest.approx(math.pi * math.sqrt(2) / 4)
    assert told["You multiplied d by 2: that is a power, so square it."] == pytest.approx(math.pi)
    assert told["You took d to the power 3: square it."] == pytest.approx(2 * math.pi)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("a**3", {"You left out the power of a: take it three times.": 9.0, "You turned the power of a upside down: it is 3, not 1/3.": 9 ** (1 / 3),
                  "You multiplied a by 3: that is a power, so take it three times.": 27.0, "You took a to the power 2: take it three times.": 81.0}),
        ("a**(1/2)", {"You left out the power of a: take the root.": 9.0, "You turned the power of a upside down: it is 1/2, not 2.": 81.0,
                      "You multiplied a by 1/2: that is a power, so take the root.": 4.5}),
        ("a**(3/2)", {"You left out the power of a: take it to the power 3/2.": 9.0, "You turned the power of a upside down: it is 3/2, not 2/3.": 9 ** (2 / 3),
                      "You multiplied a by 3/2: that is a power, so take it to the power 3/2.": 13.5,
                      "You took a to the power 2: take it to the power 3/2.": 81.0, "You took a to the power 1/2: take it to the power 3/2.": 3.0}),
        ("sqrt(a)", {"You left out the root of a: take it.": 9.0, "You halved a: take its root.": 4.5, "You squared a: take its root.": 81.0}),
        ("sin(a)", {"You took the cosine of a: take the sine.": math.cos(9), "You took the tangent of a: take the sine.": math.tan(9),
                    "You left out sine: take the sine of a.": 9.0}),
        ("log(a)", {"You took the logarithm to base ten of a: take the natural logarithm.": math.log10(9),
                    "You left out natural logarithm: take the natural logarithm of a.": 9.0}),
    ],
)  # fmt: skip
def test_the_ways_with_a_power_or_a_function(text, told):
    every = found(text, {"a": LONG}, {"a": 9.0})
    every.pop("The sign is turned round: look at which way you count.")
    every.pop("That is only a, as it was given: work on from it.")
    assert every == pytest.approx(told)


def test_brackets_that_were_forgotten():
    kinds = {"a": SHORT, "b": LONG, "c": LONG}
    given = Names(kinds, frozenset(), frozenset(), frozenset(kinds))
    lost = [way for way in ways(tree("a*(b + c)"), given) if way.kind == "brackets"]
    assert [worth(way.tree, a=3.0, b=2.0, c=4.0) for way in lost] == [10.0, 14.0]
    assert {way.sentence(ast.unparse) for way in lost} == {"You forgot the brackets round b + c: work that out first."} and not any(way.likely for way in lost)
    assert not [way for way in ways(tree("a/(b + c)"), given) if way.kind == "brackets"]


def test_what_is_seldom_done_is_never_told_as_a_fact():
    """A value doubled, halved, with its point out of place, or one side of a working lost: numbers by hand for a/b with 6 and 3."""
    kinds = {"a": LONG, "b": SHORT}
    every = [way for way in ways(tree("a/b"), Names(kinds, frozenset(), frozenset(), frozenset(kinds))) if way.kind in SELDOM]
    numbers = {kind: sorted(worth(way.tree, a=6.0, b=3.0) for way in every if way.kind == kind) for kind in SELDOM}
    assert numbers["doubled"] == [0.5, 0.5, 1.0, 1.0, 4.0, 4.0, 8.0, 8.0]
    assert numbers["point"] == pytest.approx(sorted(2.0 * ten**power for ten in (10, 100, 1000) for power in (1, -1) for _ in "ab"))
    assert numbers["cut"] == [0.5, 3.0, 6.0, 18.0] and all(way.far == (way.kind == "cut") and not way.likely for way in every)


def test_a_value_that_stands_twice_is_left_out_in_each_place_or_changed_in_one():
    kinds = {"a": LONG, "b": LONG}
    given = Names(kinds, frozenset({"b"}), frozenset(), frozenset(kinds))
    told = [(way.sentence(ast.unparse), worth(way.tree, a=4.0, b=2.0)) for way in ways(tree("a*a + b*b"), given)]
    assert ("You left out a: it counts in each place where it stands.", 4.0) in told  # nothing in both places
    assert {number for said, number in told if said == "You left out b: it counts in each place where it stands."} == {16.0, 17.0}  # nothing, or once
    assert [number for said, number in told if said == "You used b in the place of a: put a there."] == [8.0, 12.0, 12.0]


# --- how an answer is read ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("typed", "plain"),
    [
        ("about 12 Kg", "12 kg"), ("(12 kg)", "12 kg"), ("12 (kg)", "12 kg"), ("the answer is 12 kg", "12 kg"), ("It's 12 kg", "12 kg"), ("Q = 12 L/min", "12 L/min"),
        ("~12 mm", "12 mm"), ("= 12 mm", "12 mm"), ("12 mm or so", "12 mm"), ("12 mm deep", "12 mm"), ("12 L in all", "12 L"), ("minus 12 mm", "-12 mm"), ("12 mm?", "12 mm"),
        ("$40", "40 cur"), ("40 euros", "40 cur"), ("1 200 mm", "1200 mm"), ("12 345 678 mm", "12345678 mm"), ("1.2 x 10^3 mm", "1.2e3 mm"), ("1.2*10**-3 m", "1.2e-3 m"), ("1.2e-3 m", "1.2e-3 m"), ("5 kg m s-2", "5 kg m s^-2"),
        ("two and a half m", "2 1/2 m"), ("half an inch", "1/2 inch"), ("a quarter of an inch", "1/4 inch"), ("three quarters of a mile", "3/4 mile"), ("twelve mm", "12 mm"),
        ("12-mm", "12 mm"), ("12 dm3", "12 L"), ("12 kNm", "12 kN*m"), ("95 per cent", "95 %"), ("12 pounds per square inch", "12 psi"), ("12 lb/sq ft", "12 psf"),
        ("12 litres a minute", "12 litres per minute"), ("12 metres squared", "12 metres2"), ("12 feet cubed", "12 feet3"), ("12 sq m", "12 m2"), ("12 cu ft", "12 ft3"),
        ("12 m.s-1", "12 m s^-1"), ("12 mins", "12 min"), ("12 hrs", "12 h"), ("12 ltr", "12 L"), ("12 MM", "12 mm"), ("2 min 20 s", "140 s"), ("1 h 30 min", "90 min"),
        ("2 m 20 s", "140 s"), ("1 kg 200 g", "1200 g"), ("20 s 2 min", "20 s 2 min"), ("2 min 70 s", "2 min 70 s"), ("2 min 60 s", "2 min 60 s"), ("2 h 20 s", "7220 s"), ("2 min 20 g", "2 min 20 g"), ("20 mm 0.5 mm", "20 mm 0.5 mm"), ("20 s 0.01 min", "20 s 0.01 min"), ("2 ft 9 in", "2 ft 9 in"), ("12 Mpa", "12 Mpa"),
    ],
)  # fmt: skip
def test_fair_spellings_are_made_plain(typed, plain):
    assert plainly(typed).split() == plain.split()


def question(answer=18.0, unit="kg/m", slips=(), **more) -> Question:
    """A question without a working, in a unit that nobody mixes up with another."""
    return Question("X", 1, "How much is it?", "load", unit, more.pop("given", {}), answer, tuple(slips), lambda given: answer, lambda: ("one line",), **more)


@pytest.mark.parametrize(
    ("typed", "figures", "half"),
    [
        ("12.50", 4, 0.005), ("12", 2, 0.5), ("1200", 3, 5.0), ("12000", 3, 50.0), ("12345", 5, 0.5), ("0.050", 2, 0.0005), ("1.5e3", 2, 50.0), ("2e1", 1, 5.0),
        ("1/2", 0, 0.0), ("1 1/2", 0, 0.0), ("1234/5", 0, 0.0), (".5", 1, 0.05), ("-12.5", 3, 0.05), ("100", 3, 0.5),
    ],
)  # fmt: skip
def test_figures_count_as_they_are_typed_and_noughts_at_the_end_up_to_three(typed, figures, half):
    read = typed_reading(question(), f"{typed} kg/m")
    assert (read.figures, read.half) == (figures, pytest.approx(half))


def test_a_length_in_feet_and_inches_has_no_last_place():
    assert typed_reading(question(unit="m"), "2 ft 9 in").figures == 0 and typed_reading(question(unit="m"), "2.75 ft").figures == 3


def test_half_of_the_last_place_is_in_the_unit_typed():
    assert typed_reading(question(unit="m"), "12.5 mm").half == pytest.approx(0.00005)


# --- what is right about it ---------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("answer", "value", "said"),
    [
        (8.0, 10.0, "about right, but a little high"), (8.0, 10.05, "The number is too large"), (8.0, 6.4, "about right, but a little low"), (8.0, 6.35, "The number is too small"),
        (8.0, 80.0, "The number is too large"), (8.0, 81.0, "more than ten times too large"), (8.0, 0.8, "The number is too small"), (8.0, 0.79, "more than ten times too small"),
        (-8.0, -9.0, "a little low"), (-8.0, -7.0, "a little high"), (-8.0, -16.0, "too far from zero"), (-8.0, -4.0, "too near to zero"), (8.0, -8.0, "the sign or the zero"),
        (8.0, 0.0, "the sign or the zero"), (0.0, 5.0, "the sign or the zero"),
    ],
)  # fmt: skip
def test_the_size_is_said_without_the_answer(answer, value, said):
    told = what_is_right(question(answer), value)
    assert said in told and told.startswith("The unit is of the right kind") and told.endswith(".")
    assert what_is_right(question(answer, unit=""), value).startswith("It is a plain number, as it should be")


@pytest.mark.parametrize(
    ("typed", "kind"),
    [
        ("100.54", "right"),
        ("99.46", "right"),
        ("100.56", "near"),
        ("98.81", "near"),
        ("101.19", "near"),
        ("101.21", "none"),
        ("98.79", "none"),
        ("1.00e2", "right"),
        ("-100", "none"),
    ],
)
def test_an_answer_is_right_within_five_and_a_half_in_a_thousand_and_near_within_twelve(typed, kind):
    assert diagnose(question(100.0), f"{typed} kg/m").kind == kind


def test_an_absolute_tolerance_counts_in_its_own_unit():
    asked = question(7.0, unit="", label="bags", close=0.4)
    assert diagnose(asked, "7.39 bags").right and diagnose(asked, "7").right and not diagnose(asked, "7.41").right


# --- rounded, multiples, declared slips ---------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("answer", "typed", "figures"),
    [(18.0, "2e1", "one figure"), (17.6, "18", "2 figures"), (17.5, "18", "2 figures"), (17.4, "18", ""), (1.245, "1.2", "2 figures"), (1.26, "1.2", "")],
)
def test_what_was_rounded_too_far_is_told_by_its_figures(answer, typed, figures):
    told = diagnose(question(answer), f"{typed} kg/m")
    assert (told.kind == "rounded") == bool(figures)
    assert not figures or f"that would be right to {figures}. Give three figures." in told.message and told.sure


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("200.0", "Your number is twice what it should be."), ("50.00", "Your number is half of what it should be."), ("400.0", "Your number is four times what it should be."),
        ("25.00", "Your number is a quarter of what it should be."), ("1000.0", "The figures are right, but your number is 10 times too large."),
        ("1.000", "The figures are right, but your number is 100 times too small."), ("1.000e8", "your number is 1000000 times too large."),
        ("1.000e9", ""), ("-200.0", ""), ("201.0", ""), ("300.0", ""),
    ],
)  # fmt: skip
def test_a_plain_multiple_is_asked_about(typed, said):
    told = diagnose(question(100.0), f"{typed} kg/m")
    assert told.kind == ("way" if said else "none") and said in told.message and not told.sure
    if said:
        ask = (
            "Is a unit changed once too often, or not at all?" if "times too" in said else "Is a diameter in the place of a radius, or something counted twice?"
        )
        assert told.message.endswith(ask)
    else:
        assert told.message.startswith("I do not know which slip this is.")


SLIP = "You left out the half. Divide by two."


@pytest.mark.parametrize(
    ("slip", "typed", "kind", "sure"),
    [
        (100.08, "100.0", "slip", True),  # half of the last place is 0.05, and figures of g or pi lose 0.04: together 0.09
        (100.1, "100.0", "slip", False),  # further off than that, but within 1.2 %: asked
        (100.0, "100", "slip", False),  # three figures tell it to 0.5, which is more than 0.3 % of it: asked
        (101.1, "100.0", "slip", False),
        (101.3, "100.0", "none", False),
        (101.22, "100.0", "none", False),
        (100.09003, "100.0", "slip", True),  # a thousandth of the half is left for the last bits of a unit
        (100.0902, "100.0", "slip", False),
    ],
)
def test_a_declared_slip_is_told_as_a_fact_only_as_near_as_the_figures_typed(slip, typed, kind, sure):
    told = diagnose(question(150.0, slips=[KnownWay(slip, SLIP)]), f"{typed} kg/m")
    assert (told.kind, told.sure) == (kind, sure) and (kind == "none" or told.slip == 0 and told.causes == (SLIP,))
    assert ("Could it be this?" in told.message) == (kind == "slip" and not sure)


def test_of_several_slips_all_are_asked_three_at_most_and_the_nearest_first():
    near = [KnownWay(100.0 + off, f"You took {off}. Take another.") for off in (0.9, 0.6, 0.3, 0.0)]
    told = diagnose(question(150.0, slips=near), "100.0 kg/m")
    assert told.kind == "slip" and told.slip == 3 and told.sure and told.causes == ("You took 0.0. Take another.",)  # it alone is as near as the figures
    told = diagnose(question(150.0, slips=near[:3]), "100.0 kg/m")
    assert (
        told.causes == tuple(f"You took {off}. Take another." for off in (0.3, 0.6, 0.9))
        and "(1) You took 0.3. Take another. (2) You took 0.6." in told.message
    )
    assert "More than one slip gives this number." in told.message and told.slip == 2


def test_a_value_on_the_way_tells_apart_what_the_answer_cannot():
    slips = (KnownWay(60.0, "You halved it. Do not.", middle=5.0), KnownWay(60.0, "You took the root. Do not."))
    asked = question(120.0, slips=slips, middle=Middle("span", "m", 10.0))
    first = diagnose(asked, "60.0 kg/m")
    assert first.kind == "ask" and "What did you get on the way for the span? Type it, in m." in first.message and first.slip is None
    assert diagnose(asked, "60.0 kg/m", "5 m").slip == 0 and diagnose(asked, "60.0 kg/m", "10 m").slip == 1
    assert diagnose(asked, "60.0 kg/m", "10.11 m").slip == 1 and diagnose(asked, "60.0 kg/m", "10.13 m").kind == "none"
    assert "I could not read the span" in diagnose(asked, "60.0 kg/m", "wide").message and diagnose(asked, "60.0 kg/m", "wide").kind == "ask"


# --- units --------------------------------------------------------------------------------------------------------------------------

FLOW = question(18e-3 / 60, unit="L/min", given={"V": GivenValue(0.012, "L"), "t": GivenValue(40.0, "s")})


@pytest.mark.parametrize(
    ("typed", "kind", "said"),
    [
        ("18", "no unit", "The unit is missing. Type 18 L/min, if that is what you worked in."),
        ("18 L", "other unit", "That is a volume, in L; the load is measured in L/min."),
        ("18 L/m", "other unit", "A single m is a metre: for a minute type 18 L/min."),
        ("18 kg/m", "other unit", "That is a mass for each length, in kg/m; the load is measured in L/min. Look at what"),
        ("18.0 L/h", "unit", "you typed L/h, where the number is in L/min. Change the unit, or the number: 1 L/h is 0.0167 L/min"),
        ("18.0 m3/min", "unit", "where the number is in L/min"),
        ("0.300 L/s", "right", "You typed it in another unit, which is the same amount."),
        ("18.0 L/min", "right", "Right: 18.0 L/min."),
        ("18.0 US gal/min", "unit", "where the number is in L/min"),
        ("eighteen", "unread", "I could not read that"),
    ],
)
def test_a_unit_is_told_by_its_kind(typed, kind, said):
    told = diagnose(FLOW, typed)
    assert told.kind == kind and said in told.text


def test_a_metre_typed_for_a_minute_is_told():
    assert "A single m is a metre: for a minute type 18 min." in diagnose(question(1080.0, unit="min"), "18 m").message


def test_a_share_without_its_sign_is_asked_for_both_ways():
    told = diagnose(question(0.35, unit="%"), "0.35")
    assert told.kind == "no unit" and told.message == "The unit is missing. Type 0.35 %, or 35 % if it is a share of one."


def test_the_nearest_slip_is_asked_first_on_whichever_side_it_lies():
    told = diagnose(question(150.0, slips=[KnownWay(99.2, "You took less. Take more."), KnownWay(100.3, "You took more. Take less.")]), "100.0 kg/m")
    assert told.slip == 1 and told.causes == ("You took more. Take less.", "You took less. Take more.")


def test_a_declared_slip_that_is_a_multiple_is_told_as_the_slip_alone():
    told = diagnose(question(100.0, slips=[KnownWay(200.0, SLIP)]), "200.0 kg/m")
    assert told.sure and told.message == SLIP


def test_an_answer_just_outside_an_absolute_tolerance_is_no_multiple():
    told = diagnose(question(100.0, close=0.01), "100.05 kg/m")
    assert told.kind == "none" and told.message.startswith("I do not know")


def test_the_right_number_in_another_unit_is_told_or_asked_by_its_figures():
    assert diagnose(FLOW, "18.00 L/h").sure and not diagnose(FLOW, "18.0 L/h").sure  # 0.07 % and 0.32 %, of which 0.3 % is sure
    loose = diagnose(FLOW, "18.1 L/h")
    assert (loose.kind, loose.sure) == ("unit", False) and "where the number is in L/min" in loose.message and len(loose.causes) == 1


def test_an_answer_is_read_as_number_and_unit():
    read = read_answer(question(unit="m"), "12.5 mm")
    assert (read.value, read.number, read.unit) == (pytest.approx(0.0125), 12.5, "mm")


def test_a_number_of_another_kind_is_held_against_ways_that_have_a_kind():
    """2 m by (3 + 4) m is 14 m2; without the brackets lengths and areas are added, which is a quantity of no kind."""
    asked = Numeric("X", "A strip {a} wide lies {b} and {c} long. How large is it?", "a*(b + c)", "m2", (Wrong("a*b", "You left one out. Add it."),), ("a b c",),
                    {"a": "2 m", "b": "3 m", "c": "4 m"}).pose(1)  # fmt: skip
    assert diagnose(asked, "14.0 m2").right
    lost = diagnose(asked, "7.00 m")
    assert (
        lost.kind == "other unit"
        and lost.causes == ("You left out 2 m: multiply by it.", "That is only 3 m + 4 m: it is one part of the way, so go on from there.")[: len(lost.causes)]
    )
    assert diagnose(asked, "14.0 kg").message.endswith("Look at what you multiplied by what.")


def test_nothing_is_sure_of_what_could_not_be_read_or_has_no_unit():
    assert not diagnose(FLOW, "some").sure and not diagnose(FLOW, "18").sure and not diagnose(FLOW, "18 kg").sure
