"""What an answer to a question with a working is told: as a fact, as a question, as a unit, as two things at once. Numbers by hand for 6 m by 3 m, 18 m2."""

import ast
from types import SimpleNamespace

import pytest

from brimwork import system
from brimwork.dimensions import LENGTH, Dimension
from brimwork.exercise.causes import Cause
from brimwork.exercise.choices import Choice, Sequence, Telling
from brimwork.exercise.diagnosis import Diagnosis, diagnose
from brimwork.exercise.question import KnownWay, Middle, Question
from brimwork.exercise.reading import plainly, typed_reading
from brimwork.exercise.ways import Way
from brimwork.exercise.written import Numeric
from brimwork.units import LONGEST_TEXT, InputError

NONE = "I do not know which slip this is. Go through the working line by line, with the unit written beside each number."


def asked(answer: str = "a*b", unit: str = "m2", **given: str) -> Question:
    given = given or {"a": "6 m", "b": "3 m"}
    return Numeric("X", "How much is it for " + " and ".join(f"{{{name}}}" for name in given) + "?", answer, unit, (), ("Work.",), given).pose(1)


def plain(answer=18.0, unit="kg/m", slips=(), **more) -> Question:
    return Question("X", 1, more.pop("text", "How much is it?"), "load", unit, {}, answer, tuple(slips), lambda given: answer, lambda: ("one line",), **more)


@pytest.mark.parametrize(
    ("typed", "kind", "sure", "message"),
    [
        ("6.00 m2", "way", True, "You left out 3 m: multiply by it."),
        # two figures tell it to 0.05, more than three in a thousand of 6
        ("6.0 m2", "way", False, "Could it be this? You left out 3 m: multiply by it."),
        # off by 0.015: more than half of the last place and four in ten thousand, 0.0029, but not than three in a thousand more, 0.021
        ("6.015 m2", "way", False, "Could it be this? You left out 3 m: multiply by it."), ("6.020 m2", "way", False, "Could it be this? You left out 3 m: multiply by it."),
        ("6.022 m2", "none", False, NONE), ("5.978 m2", "none", False, NONE),
        ("9.00 m2", "way", False, "Your number is half of what it should be. More than one slip gives this number. Could it be one of these? (1) You used 3 m in the place of 6 m: put 6 m there."
         " (2) You put in half of 6 m: put in the whole of it. (3) You put in half of 3 m: put in the whole of it."),
        ("180 m2", "way", False, "The figures are right, but your number is 10 times too large. More than one slip gives this number. Could it be one of these?"
         " (1) You put in 6 m 10 times too large: check its unit and its point. (2) You put in 3 m 10 times too large: check its unit and its point."),
        ("18.00 cm2", "unit", True, "The working may be right: you typed cm2, where the number is in m2. Change the unit, or the number: 1 cm2 is 0.000100 m2."),
        ("18.0 cm2", "unit", False, "Could it be this? The working may be right: you typed cm2, where the number is in m2. Change the unit, or the number: 1 cm2 is 0.000100 m2."),
        ("18.01 cm2", "unit", True, "The working may be right: you typed cm2, where the number is in m2. Change the unit, or the number: 1 cm2 is 0.000100 m2."),
        ("18.1 cm2", "unit", False, "The working may be right: you typed cm2, where the number is in m2. Change the unit, or the number: 1 cm2 is 0.000100 m2."),
        ("17.6 cm2", "none", False, NONE), ("11.0 m2", "none", False, NONE), ("18.15 m2", "near", False, "You are close, but not yet right to three figures. Did you round on the way, or use a rough"
         " number? Then keep four figures until the end. If not, something small is missing."),
    ],
)  # fmt: skip
def test_a_number_is_told_by_how_near_it_is_to_what_a_way_gives(typed, kind, sure, message):
    found = diagnose(asked(), typed)
    assert (found.kind, found.sure, found.message, found.slip) == (kind, sure, message, None)
    assert (
        found.echo.startswith(f"I read this as {float(typed.split()[0]):g} ") and found.text == f"{found.echo} {found.good} {found.message}" and not found.right
    )


def test_a_likely_way_goes_before_a_point_out_of_its_place():
    """6 m by 10 m: 10 m left out is 6 m2, and so is a point out of its place; ten times too small is said as well."""
    found = diagnose(asked(a="6 m", b="10 m"), "6.00 m2")
    assert (
        found.message == "The figures are right, but your number is 10 times too small. Could it be this? You left out 10 m: multiply by it." and not found.sure
    )
    assert found.causes == ("You left out 10 m: multiply by it.",)


def test_a_declared_slip_goes_before_a_way_of_the_same_number():
    declared = Question(
        "X",
        1,
        "How much?",
        "area",
        "m2",
        asked().given,
        18.0,
        (KnownWay(6.0, "You took one side. Multiply by the other."),),
        asked().again,
        lambda: (),
        working=asked().working,
    )
    found = diagnose(declared, "6.00 m2")
    assert (found.kind, found.sure, found.slip, found.message) == ("slip", True, 0, "You took one side. Multiply by the other.")
    both = diagnose(declared, "6.02 mm2")
    assert (both.kind, both.sure, both.slip) == ("slip and unit", False, 0) and both.causes == (
        "First, is your number in m2, and not in mm2?",
        "You took one side. Multiply by the other.",
    )
    assert (
        both.message
        == "Perhaps two things at once. First, is your number in m2, and not in mm2? And could it be this? You took one side. Multiply by the other."
    )
    assert diagnose(declared, "6.0362 mm2").kind == "none"  # two things at once only within half of the band, 0.036


def test_a_way_goes_before_two_things_at_once_where_the_unit_typed_is_in_use():
    """0.9 m and twice 350 mm: 900 mm left out leaves 0.7 m, and 0.7 mm is a slip; in feet, which nothing is measured in, it would be that slip."""
    pit = asked("a + 2*b", "m", a="0.9 m", b="350 mm")
    question = Question(
        "X", 1, "How long?", "length", "m", pit.given, 1.6, (KnownWay(0.0007, "You took it wrong. Take it right."),), pit.again, lambda: (), working=pit.working
    )
    found = diagnose(question, "0.700 m")
    assert (found.kind, found.message) == ("way", "You left out 0.9 m: count it too.")


def test_a_slip_gives_either_of_its_numbers():
    question = plain(150.0, slips=[KnownWay(1.0, "You left out g. Multiply by it.", also=60.0)])
    assert diagnose(question, "60.0 kg/m").slip == 0 == diagnose(question, "1.00 kg/m").slip


def test_one_figure_reaches_no_further_than_three():
    """6 for 6.4 m left as m2: five in a thousand of 6 for the figures, three more for rounding on the way and 0.4 for g or pi make 0.0504."""
    assert diagnose(asked(a="6.4 m", b="3 m"), "6 m2").message == NONE == diagnose(asked(a="6.0505 m", b="3 m"), "6 m2").message
    assert diagnose(asked(a="6.0503 m", b="3 m"), "6 m2").message == "Could it be this? You left out 3 m: multiply by it."


def test_the_right_number_in_another_unit_goes_before_two_things_at_once():
    """18.0 mm2 for 18 cm2; and as 18 m2 it would be a known slip, typed in a unit in which nothing is measured."""
    question = Question(
        "X", 1, "How large?", "area", "m2", asked().given, 18e-4, (KnownWay(18.0, "You changed no unit. Change it."),), asked().again, lambda: ()
    )
    found = diagnose(question, "18.0 mm2")
    assert found.kind == "unit" and "you typed mm2, where the number is in cm2" in found.message


def test_numbers_under_nought_have_multiples_too():
    assert diagnose(plain(-100.0), "-200.0 kg/m").message.startswith("Your number is twice what it should be.")
    assert diagnose(plain(0.0), "5.00 kg/m").message == NONE == diagnose(plain(100.0), "-1000 kg/m").message
    assert diagnose(plain(-100.0), "200.0 kg/m").message == NONE == diagnose(plain(100.0), "0 kg/m").message


def test_slips_of_one_number_are_asked_about_where_the_question_asks_for_no_value_on_the_way():
    slips = (KnownWay(60.0, "You halved it. Do not."), KnownWay(60.0, "You took the root. Do not."))
    assert diagnose(plain(120.0, slips=slips), "60.0 kg/m").causes == ("You halved it. Do not.", "You took the root. Do not.")


def test_a_slip_goes_before_a_number_that_was_rounded():
    assert diagnose(plain(17.6, slips=[KnownWay(18.0, "You took the longer one. Take the shorter.")]), "18 kg/m").kind == "slip"


def test_what_is_neither_a_slip_nor_a_way_is_never_sure():
    for typed in ("18.0 kg/m", "18.0", "18.0 L/min", "18.1 kg/m", "18.15 kg/m", "99.0 kg/m", "many"):
        assert not diagnose(plain(), typed).sure


def test_an_answer_is_rounded_too_far_up_to_half_of_its_last_place():
    """18 for 17.5; a thousandth of that half is left for the last bits of a unit."""
    assert [diagnose(plain(answer), "18 kg/m").kind for answer in (17.5, 17.4996, 17.4992)] == ["rounded", "rounded", "none"]


def test_two_things_at_once_are_the_last_guess_where_the_unit_typed_is_in_use():
    """900 mm and twice 350 mm are 1.6 m; 1250 mm is a slip, and 1250 typed as metres is in a unit that the question uses: other ways would go before it."""
    question = Question("X", 1, "How long?", "length", "m", {**asked("a", "mm", a="900 mm").given, **asked("b", "m", b="350 m").given}, 1.6, (KnownWay(1.25, "You took one side. Take both."),), lambda given: 1.6,
                        lambda: ())  # fmt: skip
    found = diagnose(question, "1250 m")
    assert found.kind == "slip and unit" and "is your number in mm, and not in m?" in found.message
    assert diagnose(question, "1600 m").kind == "unit"


# --- of several ways with one number ------------------------------------------------------------------------------------------------


def way(text: str, number: float = 1.8, kind: str = "left out", measures: Dimension | None = LENGTH**2, likely: bool = True, far: bool = False) -> Cause:
    """A wrong way that comes to that number, by that name."""
    return Cause(number, lambda: measures, Way(ast.Constant(1), kind, text, likely=likely), far)


def of_ways(*causes: Cause, typed: str = "1.800 m2", slips: tuple[KnownWay, ...] = ()) -> Diagnosis:
    """What is said of a number for 60 mm by 30 mm; 1.8 m2 is what comes of either side put in as metres."""
    sides = asked(a="60 mm", b="30 mm")
    working = SimpleNamespace(causes=causes, said=ast.unparse)
    return diagnose(Question("X", 1, "How large?", "area", "m2", sides.given, sides.answer, slips, sides.again, lambda: (), working=working), typed)


def test_a_way_goes_before_the_unit_of_a_value_but_one_that_is_seldom_gone():
    unit = ("60 mm was put in as 60 m", "30 mm was put in as 30 m")
    assert of_ways(way("a way.")).causes == ("A way.",) and of_ways().causes == unit == of_ways(way("a point.", kind="point", likely=False)).causes
    assert of_ways(way("a point.", kind="point", likely=False), way("a way.")).causes == ("A way.",)
    assert of_ways(way("a point.", kind="point", likely=False), way("a rare way.", likely=False)).causes == ("A point.", "A rare way.")


def test_brackets_lost_are_seldom_where_unlike_things_are_added():
    assert of_ways(way("a bracket.", kind="brackets", measures=None, likely=False)).kind == "input" and of_ways(
        way("a bracket.", kind="brackets", likely=False)
    ).causes == ("A bracket.",)
    assert of_ways(way("a way.", measures=None)).causes == ("A way.",)


def test_what_few_people_do_is_asked_and_what_is_far_fetched_is_not():
    likely, rare, far = (of_ways(one, typed="1.100 m2") for one in (way("a way.", 1.1), way("a way.", 1.1, likely=False), way("a way.", 1.1, far=True)))
    assert (likely.sure, likely.message, rare.sure, rare.message) == (True, "A way.", False, "Could it be this? A way.")
    assert far.kind == "none"


def test_a_given_value_alone_keeps_its_own_unit():
    assert of_ways(way("a part.", kind="part", measures=LENGTH)).kind == "input" and of_ways(way("a part.", kind="part")).causes == ("A part.",)


def test_of_what_is_typed_as_a_length_only_what_measures_one_and_is_not_far_fetched_is_told():
    far = Cause(1.8, lambda: LENGTH, Way(ast.Constant(1), "cut", "far.", far=True))
    assert of_ways(way("a part.", kind="part", measures=LENGTH), way("a way."), way("none.", measures=None), far, typed="1.800 m").causes == ("A part.",)
    assert of_ways(far, typed="1.800 m").causes == ()


def test_a_way_is_a_declared_slip_to_a_millionth():
    slip = KnownWay(100.0, "You did A. Do B.")
    for number, same in ((100.0000995, True), (100.0001005, False), (99.9999005, True)):
        assert of_ways(way("a way.", number), typed="100.0 m2", slips=(slip,)).causes == (("You did A. Do B.",) if same else ("You did A. Do B.", "A way."))


# --- a unit of another kind ---------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("typed", "sure", "message"),
    [
        ("6.00 m", True, "That is a length, in m; the answer is measured in m2. You left out 3 m: multiply by it."),
        ("6.03 m", False, "That is a length, in m; the answer is measured in m2. Look at what you multiplied by what."),
        ("18.0 m", False, "That is a length, in m; the answer is measured in m2. Look at what you multiplied by what."),
        ("18.0 kg", False, "That is a mass, in kg; the answer is measured in m2. Look at what you multiplied by what."),
        ("18.0 %", False, "That is a plain number; the answer is measured in m2. Look at what you multiplied by what."),
        ("18.0 kg/m", False, "That is a mass for each length, in kg/m; the answer is measured in m2. Look at what you multiplied by what."),
        ("18.0 m^1.5", False, "That is a quantity in m^1.5; the answer is measured in m2. Look at what you multiplied by what."),
    ],
)  # fmt: skip
def test_a_unit_of_another_kind_shows_what_was_left_out(typed, sure, message):
    found = diagnose(asked(), typed)
    assert (found.kind, found.sure, found.message, len(found.causes)) == ("other unit", sure, message, int(sure))


def test_slips_that_change_the_kind_of_quantity_are_listed_three_at_most():
    slips = [
        KnownWay(6.0, "You did one. Do two."),
        KnownWay(1.0, "You did two. Do one.", also=6.0),
        KnownWay(6.0, "You did three. Do one."),
        KnownWay(6.0, "You did four. Do one."),
    ]
    two = diagnose(plain(slips=slips[:2]), "6.00 kg")
    assert (
        two.message == "That is a mass, in kg; the load is measured in kg/m. Could it be one of these? (1) You did one. Do two. (2) You did two. Do one."
        and not two.sure
    )
    assert len(two.causes) == 2 and len(diagnose(plain(slips=slips), "6.00 kg").causes) == 3
    assert diagnose(plain(18.0, "", slips=slips[:1]), "6.00 kg").message == "That is a mass, in kg; the load is a plain number. You did one. Do two."


def test_an_angle_is_no_percentage():
    found = diagnose(plain(0.35, "%"), "1 rad")
    assert found.kind == "other unit" and found.message.startswith("I could not use that: that = 1 rad is an angle, but a percentage is wanted")


def test_a_number_under_nought_is_no_multiple_and_is_told_without_one():
    found = diagnose(asked("a - b", "m", a="5 m", b="2 m"), "-3.0 m")
    assert found.message.startswith("More than one slip gives this number.") or found.message.startswith("Could it be this?")


def test_what_nobody_does_is_not_named():
    """40 mm times 3 are 120 mm: whoever leaves out the 40 mm comes to 3 mm, and to 3 m only by working in metres."""
    question = asked("a*n", "mm", a="40 mm", n="3")
    assert diagnose(question, "3.00 mm").message == "You left out 40 mm: multiply by it." and diagnose(question, "3000 mm").message == NONE


def test_of_slips_the_nearest_of_either_number_comes_first():
    slips = [KnownWay(100.8, "You did B. Do A."), KnownWay(100.5, "You did A. Do B.", also=500.0)]
    assert diagnose(plain(150.0, slips=slips), "100.0 kg/m").causes == ("You did A. Do B.", "You did B. Do A.")
    near = diagnose(plain(100.0, slips=[KnownWay(101.0, "You did A. Do B.")]), "100.9 kg/m")
    assert near.kind == "slip" and near.message == "Could it be this? You did A. Do B."
    other = [KnownWay(6.0, "You took one side. Take both."), KnownWay(6e-4, "You took far less. Take more.")]
    question = Question("X", 1, "How much?", "area", "m2", asked().given, 18.0, tuple(other), asked().again, lambda: ())
    assert diagnose(question, "6.00 cm2").message == "You took far less. Take more."


def test_a_small_number_has_a_size_and_multiples_too():
    assert (
        diagnose(plain(0.5), "1.00 kg/m").message.startswith("Your number is twice what it should be.")
        and "a little high" in diagnose(plain(0.5), "0.6 kg/m").good
    )
    assert diagnose(plain(0.5), "1.00 kg/m").good == "The unit is of the right kind. The number is too large."


def test_a_given_value_may_have_been_put_in_as_it_stands():
    """60 mm by 30 mm are 0.0018 m2: either side in metres makes 1.8."""
    found = diagnose(asked(a="60 mm", b="30 mm"), "1.80 m2")
    assert found.kind == "input" and found.causes == ("60 mm was put in as 60 m", "30 mm was put in as 30 m") and not found.sure
    assert found.message == "Either 60 mm was put in as 60 m, or 30 mm was put in as 30 m. Check the unit of each given value."
    sides = {"a": "60 mm", "b": "30 mm", "c": "20 mm", "d": "40 mm"}
    three = diagnose(asked("a*b*c*d/m**2", "m2", **sides), "0.00144 m2")
    assert three.message == "Either 60 mm was put in as 60 m, or 30 mm was put in as 30 m, or 20 mm was put in as 20 m. Check the unit of each given value."
    one = diagnose(asked("a + 2*b", "m", a="900 mm", b="0.35 m"), "900.7 m")
    assert one.message == "Either 900 mm was put in as 900 m, or it is a slip that I do not know. Check the unit of each given value."


def test_what_was_rounded_is_asked_for_closer_where_the_tolerance_is_absolute():
    found = diagnose(plain(7.45, "", label="bags", close=0.4), "7 bags")
    assert found.kind == "rounded" and found.message == "You rounded too far: that would be right to one figure. Give it closer." and found.sure
    assert (
        found.echo == "I read this as 7 bags."
        and diagnose(plain(7.0, "", label="bags", close=0.5), "7.5").right
        and not diagnose(plain(7.0, "", label="bags", close=0.5), "7.51").right
    )


def test_only_the_unit_asked_for_will_do_where_changing_it_is_the_question():
    strict = plain(strict=True)
    assert diagnose(strict, "18.0 kg/m").right
    other = diagnose(strict, "18.0 lb/ft")
    assert other.kind == "other unit" and other.message == "Changing the unit is the question: type the answer in kg/m."
    assert diagnose(plain(), "12.10 lb/ft").right  # 18 kg/m are 18 x 0.3048/0.45359237 = 12.10 lb/ft


def test_a_value_on_the_way_without_a_unit_is_asked_for_in_plain_numbers():
    slips = (KnownWay(60.0, "You halved it. Do not.", middle=5.0), KnownWay(60.0, "You took the root. Do not."))
    question = plain(120.0, slips=slips, middle=Middle("ratio", "", 10.0))
    assert (
        diagnose(question, "60.0 kg/m").message == "More than one slip gives this number. What did you get on the way for the ratio? Type it, in plain numbers."
    )
    assert not any(diagnose(question, "60.0 kg/m", middle).sure for middle in ("", "wide", "7"))
    apart = plain(120.0, slips=(KnownWay(60.0, "You halved it. Do not."), KnownWay(60.3, "You took the root. Do not.")), middle=Middle("ratio", "", 10.0))
    assert diagnose(apart, "60.00 kg/m").message == "You halved it. Do not."  # the figures tell them apart already
    on_the_line = plain(120.0, slips=slips, middle=Middle("ratio", "", 125.0))
    assert diagnose(on_the_line, "60.0 kg/m", "126.5").slip == 1  # 12 in a thousand
    told = diagnose(question, "60.0 kg/m", "5")
    assert (told.kind, told.sure, told.message, told.causes) == ("slip", False, "Could it be this? You halved it. Do not.", ("You halved it. Do not.",))
    assert diagnose(question, "60.0 kg/m", "7").message == NONE


# --- choosing, ordering, telling ----------------------------------------------------------------------------------------------------


def test_a_choice_is_told_by_what_was_chosen():
    choice = Choice("X", 1, "Which?", ("this", "that"), 1, "It holds water.", ("This leaks.", ""), (1, 0))
    right, other, none = (diagnose(choice, typed) for typed in ("b", "1", "c"))
    assert (right.kind, right.message, right.echo) == ("right", "Right. It holds water.", "You chose: that.")
    assert (other.kind, other.message, other.echo, other.slip) == ("slip", "This leaks.", "You chose: this.", 1)
    assert none.kind == "unread" and none.message == "I could not read that: there is no such choice: type one of a, b."


def test_an_order_is_told_by_the_first_two_that_are_turned():
    """Dig, line, fill stand as line, fill, dig."""
    order = Sequence("X", 1, "In which order?", ("line", "fill", "dig"), (2, 0, 1), ("A liner needs a hole.", "Water needs a liner."))
    assert diagnose(order, "3 1 2").message == "Right: that order works." and diagnose(order, "3 1 2").echo == "You put them: dig, line, fill."
    first, last, none = (diagnose(order, typed) for typed in ("1 3 2", "3 2 1", "1 1 2"))
    assert (first.kind, first.message, first.good, first.slip) == (
        "slip",
        "Look at two of them again: A liner needs a hole.",
        "1 of 2 neighbours stand the right way round.",
        0,
    )
    assert (last.message, last.slip) == ("Look at two of them again: Water needs a liner.", 1) and diagnose(
        order, "2 1 3"
    ).good == "0 of 2 neighbours stand the right way round."
    assert none.kind == "unread" and none.message.startswith("I could not read that: each step is wanted once")


def test_own_words_are_set_beside_a_model_sentence():
    telling = Telling("X", 1, "Why?", "Water finds its level.", ("level",))
    assert (
        diagnose(telling, "because").message == "A model sentence: Water finds its level. Which of its points does yours have?"
        and diagnose(telling, "because").kind == "told"
    )
    assert diagnose(telling, " ").message == "Nothing is written yet: write one sentence first." and diagnose(telling, " ").kind == "unread"


def test_gallons_are_american_for_those_who_chose_their_units():
    """3.785411784 L to the gallon; the imperial one is 4.54609 L, and nobody guesses which."""
    with pytest.raises(InputError):
        typed_reading(plain(10.0, "L"), "5 gal")
    for chosen in (system.FEET, system.METRES):
        with system.working_in(chosen):
            if chosen == system.FEET:
                assert typed_reading(plain(10.0, "L"), "5 gal").value == pytest.approx(5 * 3.785411784e-3)
                assert typed_reading(plain(10.0, "L"), "5 imp gal").value == pytest.approx(5 * 4.54609e-3)
            else:
                with pytest.raises(InputError):
                    typed_reading(plain(10.0, "L"), "5 gal")


# --- what is meant by a unit --------------------------------------------------------------------------------------------------------

G, POUND, INCH = 9.80665, 0.45359237, 0.0254


@pytest.mark.parametrize(
    ("unit", "text", "typed", "value"),
    [
        ("kPa", "", "2 lb/in2", 2 * POUND * G / INCH**2), ("N", "", "10 lb", 10 * POUND * G), ("kg", "What does it weigh?", "98.0665 N", 10.0), ("kg", "How much sand?", "98.0665 N", 98.0665),
        ("kg/m2", "", "2 lb/in2", 2 * POUND / INCH**2), ("kPa", "", "2 kg/m2", 2.0), ("N", "", "10 kg", 10.0), ("N", "", "10 lbf", 10 * POUND * G), ("N", "What does it weigh?", "98.0665 N", 98.0665), ("kg", "What does it weigh?", "10 lb", 10 * POUND), ("cur", "", "49.3", 49.3),
        ("cur", "", "49.3 money", 49.3), ("kg/m", "", "5 kg/m", 5.0),
    ],
)  # fmt: skip
def test_pounds_are_a_force_where_one_is_asked_for(unit, text, typed, value):
    read = typed_reading(plain(10.0, unit, text=text), typed)
    assert read.value == pytest.approx(value)


def test_money_needs_no_unit_and_takes_no_other():
    assert typed_reading(plain(10.0, "cur"), "49.3").reading.unit == "cur" and typed_reading(plain(10.0, "cur"), "5 kg").reading.unit == "kg"


def test_the_word_of_a_question_counts_as_its_unit():
    for label, typed in (("bags", ("21", "21 bags", "21 bag", "21BAGS")), ("dB(A)", ("21", "21 dB(A)", "21 db"))):
        assert [typed_reading(plain(21.0, "", label=label), one).value for one in typed] == [21.0] * len(typed)
    with pytest.raises(InputError):
        typed_reading(plain(21.0, ""), "21 bags")
    with pytest.raises(InputError):
        typed_reading(plain(21.0, "", label="bags"), "2" * LONGEST_TEXT + " bags")


def test_what_is_too_long_or_no_text_is_left_to_the_reader():
    longest = f"~{'1' * (LONGEST_TEXT - 1)}"
    assert plainly("1..2 mbar") == "1..2 bar"  # which is no number, and stays one that the reader refuses
    for question in (plain(21.0, "", label="bags"), plain(21.0, "cur"), plain()):
        with pytest.raises(InputError):
            typed_reading(question, 7)
    assert plainly(longest) == longest[1:] and plainly(f"~{longest}") == f"~{longest}" and plainly(7) == 7
