"""Questions and what an answer to them is told: kinds of diagnosis, help in rungs, the rules of the bank, and a build that refuses."""

import dataclasses
import importlib
import math
import re
import statistics
import sys

import pytest
from reading_grade import grade, syllables

from brimwork import topics, units
from brimwork.exercise import arithmetic, bank, build
from brimwork.exercise.choices import Choose, FindTheSlip, Order
from brimwork.exercise.diagnosis import KINDS_OF_ANSWER, diagnose
from brimwork.exercise.hints import ladder
from brimwork.exercise.question import ask, ask_on
from brimwork.exercise.unit_slips import mixed_up
from brimwork.exercise.written import Numeric, Wrong
from brimwork.expression import DeclarationError
from brimwork.formula import Slip
from brimwork.units import InputError

WRITTEN = list(bank.questions().values())
DECLARED = [*WRITTEN, *topics.formulas().values()]


def hose() -> Numeric:
    """Boil of a hose, by hand: 1500 L/h through 25 mm is 0.8488 m/s, and 0.8488^2/(2 x 9.80665) = 36.7 mm."""
    return bank.questions()["T04.5"]


# --- the build ----------------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("declared", DECLARED, ids=lambda declared: getattr(declared, "code", None) or declared.name)
def test_a_question_may_be_asked(declared):
    found = build.faults(declared)
    assert not found, "\n".join(found)


def _with(**changes):
    return dataclasses.replace(hose(), **changes)


@pytest.mark.parametrize(
    "broken, told",
    [
        (lambda: _with(wrong=(*hose().wrong, Wrong("v**2/g*1.005", "You left out the half. Put it in again."))), "nearly one number"),
        (lambda: _with(wrong=(Wrong("v**2/(2*g)*1.005", "You rounded too soon. Keep more figures."),)), "would be accepted"),
        (lambda: _with(wrong=(Wrong("v**2/g", ""),)), "not a full sentence"),
        (lambda: _with(wrong=(Wrong("v**2/g", "no capital and no stop"),)), "not a full sentence"),
        (lambda: _with(unit="kg"), "asked in kg"),
        (lambda: _with(answer="v**2/(2*g) + d**2"), "puts together"),
        (lambda: _with(answer="v**2/(2*G)"), "neither given nor"),
        (lambda: _with(text="How high does the water boil up from {d}?"), "'Q' does not stand in the text"),
        (lambda: _with(wrong=()), "needs known slips"),
        (lambda: _with(given={"d": "25 mm", "Q": "1500 litre furlongs"}), "not a unit"),
        (lambda: _with(wrong=(Wrong(36.8, "You rounded too soon. Keep more figures."),)), "would be accepted"),
        (lambda: Order("X", "Which first?", ("a", "b", "c"), ("Because a is first.",)), "need 2 sentences"),
        (lambda: Choose("X", "Which?", "this", "It is this one.", (("this", "It is not this one."), ("that", "It is not that one."))), "no two the same"),
        (lambda: FindTheSlip("X", "A.", (("one", "One holds here."), ("two", "Two holds here."), ("three", "")), 4, "It is here."), "no line 4"),
    ],
)
def test_an_unfair_question_is_refused(broken, told):
    assert any(told in fault for fault in build.faults(broken())), build.faults(broken())


def test_a_key_that_is_not_marked_right_is_refused():
    posed = dataclasses.replace(bank.pose("T04.5"), answer=0.0, slips=())
    wrong_key = dataclasses.replace(posed, answer=0.036, again=posed.again, label="mm")
    assert list(build.of_question(bank.pose("T04.5"))) == []
    assert any("not marked right" in fault for fault in build.of_question(wrong_key))


def test_slips_that_end_in_one_number_need_a_middle_value():
    cable = bank.questions()["T10.6"]
    assert build.faults(cable) == []
    found = [fault for fault in build.faults(dataclasses.replace(cable, middle=None)) if "nearly one number" in fault]
    assert found and all("middle=" in fault and sum(wrong.feedback in fault for wrong in cable.wrong) >= 1 for fault in found), "it names them"


def test_a_slip_with_a_letter_that_its_formula_does_not_have_is_one_line():
    formula = topics.find("flow over a level lip")
    wrong = dataclasses.replace(formula, slips=(Slip("C_d*b*H*v_2", "You took a speed. Take the root of the head."),))
    assert build.faults(wrong) == ["the slip 'C_d*b*H*v_2' uses v_2, which has no value there: name it in also_given=, or use letters of the formula"]


_QUESTION = """from brimwork.exercise.written import Numeric, Wrong
QUESTIONS = (
    Numeric("X9.1", "How wide is it, if half is {d}?", "2*d", "mm", (Wrong("d", "You forgot to double it. Double it."),), ("2 d",), {"d": "25 mm"}),
)
"""


@pytest.fixture
def added(monkeypatch, tmp_path, capsys):
    """Writes a file of questions beside those of the bank, builds, and gives what was printed."""
    monkeypatch.setattr(bank, "__path__", [*bank.__path__, str(tmp_path)])

    def build_with(text):
        (tmp_path / "added_for_a_test.py").write_text(text)
        sys.modules.pop("brimwork.exercise.bank.added_for_a_test", None)
        importlib.invalidate_caches()
        bank.questions.cache_clear()
        monkeypatch.setattr(build.topics, "formulas", dict)
        code = build.build()
        return code, capsys.readouterr().out

    yield build_with
    sys.modules.pop("brimwork.exercise.bank.added_for_a_test", None)
    bank.questions.cache_clear()


def test_a_file_that_is_in_order_is_built(added):
    code, said = added(_QUESTION)
    assert code == 0 and said.endswith("and 0 formulas: no faults\n")


@pytest.mark.parametrize(
    "changed, told",
    [
        (("X9.1", "T04.5"), "T04.5: this code stands in added_for_a_test.py and in overflow.py"),
        (("\n)", "\n"), "added_for_a_test.py, line 2: '(' was never closed"),
        (('"X9.1"', "codes.X9"), "added_for_a_test.py, line 3: name 'codes' is not defined"),
        (("QUESTIONS", "OTHERS"), "added_for_a_test.py: module"),
        (('"mm"', '"furlongs"'), "X9.1: 'furlongs' is not a unit"),
        (("25 mm", "25 furlongs"), "X9.1: 'furlongs' is not a unit"),
        (("You forgot to double it. Double it.", "Hm."), "formulas: 1 fault\n"),
    ],
)
def test_a_file_that_is_not_in_order_is_told_with_its_place_and_never_by_a_traceback(added, changed, told):
    code, said = added(_QUESTION.replace(*changed))
    assert code == 1 and told in said, said


def test_a_code_that_stands_twice_in_one_file_is_told_with_that_file(added):
    line = _QUESTION.splitlines()[2]
    code, said = added(_QUESTION.replace(line, f"{line}\n{line}"))
    assert code == 1 and "X9.1: this code stands twice in added_for_a_test.py" in said


def test_a_unit_that_is_not_known_is_told_wherever_it_stands():
    mended = FindTheSlip(
        "X", "A.", (("one", "One holds here."), ("two", "It is this line."), ("three", "Three holds.")), 2, "It is here.", ("head", "2 furlongs", "3 mm")
    )
    vague = dataclasses.replace(bank.questions()["T10.6"], middle=("current", "W/V_dc", "furlongs"))
    for declared in (mended, vague, _with(close="1 furlongs"), _with(keep=(), vary={"d": ("1 furlongs", "2 mm", "1 mm")})):
        assert any("furlongs" in fault for fault in build.faults(declared)), declared


@pytest.mark.parametrize("slip", ["75", 75, 75.0])
def test_a_number_alone_is_in_the_unit_asked_for_however_it_is_written(slip):
    asked = Numeric("X", "How wide is it, if half is {d}?", "2*d", "mm", (Wrong(slip, "You tripled it. Double it."),), ("2 d",), {"d": "25 mm"})
    assert asked.pose(1).slips[0].number == pytest.approx(0.075) and diagnose(asked.pose(1), "75 mm").slip == 0
    assert asked.varies == isinstance(slip, str) and build.faults(asked) == []


def test_a_number_alone_is_an_answer_and_a_middle_value_in_their_own_units():
    asked = Numeric(
        "X", "How cold is it beside {d}?", "-5", "degC", (Wrong("-4", "You rounded. Take the other one."),), ("-5",), {"d": "25 mm"}, middle=("gap", "30", "mm")
    )
    assert asked.pose(1).answer == pytest.approx(268.15) and asked.pose(1).middle.number == pytest.approx(0.03)
    assert asked.pose(1).slips[0].number == pytest.approx(269.15)


def test_a_code_stands_once_and_an_unknown_one_is_told_the_nearest():
    assert len(bank.questions()) >= 70 and all(code == question.code for code, question in bank.questions().items())
    with pytest.raises(InputError, match="t04.1"):
        bank.pose("T04.1x")
    assert bank.pose("t04.1").code == "T04.1" and bank.pose("flow over a level lip").code == "flow over a level lip"


# --- numbers ------------------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("question", [q for q in WRITTEN if isinstance(q, Numeric) and q.varies], ids=lambda q: q.code)
def test_fresh_numbers_differ_and_the_same_seed_gives_the_same(question):
    assert len({str(question.pose(seed).numbers) for seed in range(1, 7)}) >= 4
    assert question.pose(5).text == question.pose(5).text
    assert not question.pose(3).text.count("{")


def test_a_question_with_a_number_alone_in_it_stays_fixed():
    fixed = _with(wrong=(Wrong(18.0, "You halved it. Take the whole of it."),))
    assert not fixed.varies and fixed.pose(1).text == fixed.pose(9).text


def test_most_hand_written_numbers_can_be_drawn_afresh():
    numeric = [question for question in WRITTEN if isinstance(question, Numeric)]
    assert len(numeric) >= 70 and sum(question.varies for question in numeric) >= 0.9 * len(numeric)


@pytest.mark.parametrize(
    "code, by_hand",
    [
        ("T04.5", (1500 / 3.6e6 / (math.pi / 4 * 0.025**2)) ** 2 / (2 * 9.80665)),
        ("T02.3", 5 * 4 * 2.75 / 27 * 1.25 * 0.9144**3),
        ("T11.1", 23 * 25 / 36 * (1 - 0.003 * 47) * (0.82 + 4.5 / 52) * 0.95),
        ("T08.1", 680 * 9.80665 / 0.94 / 24000),
        ("T05.4", math.sqrt((3 - 1.3) / (3 / 2000**2 + 0.45 / 800**2)) / 3.6e6),
        ("T12.1", 21),
    ],
)
def test_an_answer_agrees_with_arithmetic_by_hand(code, by_hand):
    assert bank.questions()[code].pose(1).answer == pytest.approx(by_hand, rel=1e-6)


def test_only_arithmetic_passes_as_an_expression():
    for text in ("__import__('os')", "d.real", "[1][0]", "d if d else 1", "lambda: 1", "round(d)", "'a'", "True + 1", "d @ d", "max(d, key=d)"):
        with pytest.raises(DeclarationError):
            arithmetic.value_typed(text, {"d": 1.0})
    assert arithmetic.value_typed("ceil(0.3/0.1)", {}) == 3
    assert arithmetic.fill("{d} and {2*d|mm|4}", {"d": 0.5}, {"d": "0.5 m"}) == "0.5 m and 1000 mm"


# --- diagnosis ----------------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "typed, kind, told",
    [
        ("36.7 mm", "right", "Right: 36.7 mm."),
        ("3.67 cm", "right", "another unit"),
        ("1.446 in", "right", "another unit"),
        ("73.5 mm", "slip", "left out the 2"),
        ("36.7 cm", "unit", "you typed cm, where the number is in mm"),
        ("73.5 m", "slip and unit", "Perhaps two things at once. First, is your number in mm, and not in m? And could it be this?"),
        ("18.1 in", "none", "do not know which slip"),
        ("12.3 mm", "none", "The number is too small"),
        ("30.5 mm", "none", "about right, but a little low"),
        ("61 mm", "none", "The number is too large"),
        ("36.7", "no unit", "The unit is missing"),
        ("36.7 kg", "other unit", "That is a mass, in kg; the"),
        ("36.7 L", "other unit", "That is a volume, in L; the"),
        ("36.7 %", "other unit", "That is a plain number; the"),
        ("36.7 m^1.5", "other unit", "That is a quantity in m^1.5; the"),
        ("36.7 kg", "other unit", "is measured in mm. Look at what you multiplied by what."),
        ("9**9**9 mm", "unread", "could not read"),
        ("1,250 mm", "unread", "two ways"),
    ],
)
def test_an_answer_is_told_what_it_is(typed, kind, told):
    found = diagnose(hose().pose(1), typed)
    assert found.kind == kind and told in found.text and found.kind in KINDS_OF_ANSWER
    assert "wrong" not in found.text.lower()


def test_a_guess_at_a_given_unit_is_worded_either_or():
    """900 mm and twice 0.35 m are 1.6 m; left as 900, the sum is 900.7."""
    pit = Numeric("X", "A pit {a} deep has two sides of {b}. How long is the sheet?", "a + 2*b", "m", (Wrong("a + b", "You took one side. There are two."),),
                  ("a + 2 b",), {"a": "900 mm", "b": "0.35 m"})  # fmt: skip
    found = diagnose(pit.pose(1), "900.7 m")
    assert found.kind == "input" and "Either 900 mm was put in as 900 m, or" in found.text and not found.sure


def test_nobody_is_told_of_a_unit_in_which_nothing_is_measured():
    """The fall of 0.6 m taken as 0.6 ft gives 0.579 m; but there is no foot in that question."""
    assert "ft" not in diagnose(bank.pose("T01.5"), units.write(math.sqrt(2 * 0.6 * 0.3048 / 9.80665) * 3, "m", 4)).text


@pytest.mark.parametrize("times", [2 / 3.785, 1 / 3.785, 3.785])
def test_gallons_are_not_thought_of_where_nothing_is_measured_in_them(times):
    """The flow in litres, put in US gallons (3.785 L) or taken for them; and twice that many gallons."""
    question = bank.pose("flow over a round rim", 4)
    assert "gal" not in diagnose(question, f"{question.answer * 60000 * times:.3g} L/min").text


def test_gallons_are_thought_of_where_they_were_typed():
    question = bank.pose("flow over a round rim", 4)
    found = diagnose(question, f"{question.answer * 60000:.3g} US gal/min")
    assert found.kind == "unit" and "the number is in L/min" in found.text


def test_the_unit_of_a_given_value_may_have_been_kept():
    """900 mm and 2 x 350 mm are asked for as 1.6 m. The slip that takes 350 mm once, 1250 mm, may have been typed as metres, never as feet."""
    sum_of = Numeric("X", "A pit {a} deep has two sides of {b}. How long is the sheet?", "a + 2*b", "m", (Wrong("a + b", "You took one side. There are two."),),
                     ("a + 2 b",), {"a": "900 mm", "b": "350 mm"})  # fmt: skip
    found = diagnose(sum_of.pose(1), "1250 m")
    assert found.kind == "slip and unit" and found.slip == 0 and "is your number in mm, and not in m?" in found.text
    assert diagnose(sum_of.pose(1), "4.10 m").kind == "none", "1.25 m is 4.10 ft"


def test_a_decimal_comma_is_read_and_echoed_with_a_point():
    found = diagnose(hose().pose(1), "36,7 mm")
    assert found.right and found.echo == "I read this as 36.7 mm."


def test_changing_the_unit_is_the_question_where_that_is_asked():
    question = bank.pose("T02.1")
    assert diagnose(question, "1300 US gal/h").kind == "other unit"
    assert diagnose(question, "4920 L/h").right and diagnose(question, "5910 L/h").kind == "slip"


def test_an_answer_is_asked_for_in_days_and_in_money():
    assert "Answer in days, to three figures." in bank.pose("T06.2").text and "Answer in money" in bank.pose("T10.4").text
    assert "Find the" in bank.pose("days without top-up").text and "in days" in bank.pose("days without top-up").text
    assert "measured in days" in ladder(bank.pose("T06.2"))[0] and "in days" in diagnose(bank.pose("T06.2"), "3 kg").text


def test_the_word_of_a_question_counts_as_its_unit():
    bags, level = bank.pose("T12.1"), bank.pose("T01.4")
    assert all(diagnose(bags, typed).right for typed in ("21", "21 bags", "21 bag", "21bags", " 21 BAGS "))
    assert diagnose(bags, "20 bags").slip == 0 and diagnose(bags, "20.6").slip == 2
    assert all(diagnose(level, typed).right for typed in ("48.5", "48.5 dB", "48.5 dB(A)"))
    assert diagnose(bank.pose("T10.4"), "49.3").right, "money needs no unit"


def test_whole_numbers_and_levels_are_matched_absolutely():
    box = bank.pose("T09.1")
    assert diagnose(box, "1236 mm").right and not diagnose(box, "1240 mm").right
    assert diagnose(box, "1218 mm").slip == 1 and diagnose(box, "1216 mm").slip == 2


def test_a_middle_value_tells_apart_what_the_answer_cannot():
    cable = bank.questions()["T10.6"].pose(1)  # I = 300/120 = 2.5 A; the loop loses 2 x 150 ft x 3.14 ohm/kft x 2.5 A = 2.355 V
    half = "1.18 V"
    assert diagnose(cable, half).kind == "ask" and "current" in diagnose(cable, half).text
    assert diagnose(cable, half, "2.5 A").slip == 0 and diagnose(cable, half, "1.25 A").slip == 1
    assert diagnose(cable, half, "7 A").kind == "none" and diagnose(cable, half, "7 kg").kind == "ask"
    assert diagnose(cable, "2.36 V").right


@pytest.mark.parametrize("unit, others", [("L/min", {"L/s", "L/h", "L/day", "m3/min", "US gal/min", "imp gal/min"}), ("deg", {"rad"}), ("mV/A/m", set())])
def test_units_are_mixed_up_one_thing_at_a_time(unit, others):
    assert {*mixed_up(unit)} == others


def test_choices_and_orders_are_told_what_is_right_and_why():
    order = bank.pose("T12.6")
    key = [place + 1 for place in order.right]
    assert diagnose(order, " ".join(map(str, key))).right
    key[0], key[1] = key[1], key[0]
    found = diagnose(order, ",".join(map(str, key)))
    assert found.kind == "slip" and found.slip == 0 and "cables and pipes can kill" in found.message
    assert diagnose(order, "1 1 2 3 4 5").kind == diagnose(order, "").kind == "unread"
    choice = bank.pose("T04.6", 5)
    assert diagnose(choice, "abcd"[choice.right]).right and diagnose(choice, choice.options[choice.right]).right
    assert diagnose(choice, "9").kind == diagnose(choice, "").kind == "unread"
    slip = bank.pose("T04.7")
    assert diagnose(slip, "2").right and "pi x 0.600" in diagnose(slip, "2").message and not diagnose(slip, "1").right


# --- help ---------------------------------------------------------------------------------------------------------------------------


def test_help_comes_in_four_rungs_and_gives_the_answer_only_in_the_last():
    question = hose().pose(1)
    found = diagnose(question, "73.5 mm")
    kind, asked, step, whole = ladder(question, found)
    assert "right kind" in kind and asked == "Is this what happened: you left out the 2?"
    assert "36.7" not in kind + asked + step and "0.849 m/s" in step
    assert "36.7 mm" in whole and "new numbers" in whole


@pytest.mark.parametrize("declared", DECLARED, ids=lambda declared: getattr(declared, "code", None) or declared.name)
def test_every_question_has_help_from_the_first_moment(declared):
    posed = declared.pose(1) if not hasattr(declared, "equals") else ask(declared, 1)
    rungs = ladder(posed)
    assert len(rungs) >= 2 and all(rung and ".." not in rung and "{" not in rung for rung in rungs)


# --- reading grade ------------------------------------------------------------------------------------------------------------------


def test_syllables_are_counted_as_spoken():
    """Counts by ear."""
    assert [syllables(word) for word in ("water", "depth", "measured", "little", "divide", "needed", "viscosity")] == [2, 1, 2, 2, 2, 2, 4]


def test_sentences_for_learners_read_easily():
    texts = {text for question in WRITTEN for text in question.sentences} | {slip.feedback for f in topics.formulas().values() for slip in f.slips}
    grades = {text: grade(text) for text in texts}
    hard = {text: round(found, 1) for text, found in grades.items() if found > 9}
    print(f"{len(texts)} sentences, mean {statistics.mean(grades.values()):.2f}, worst {max(grades.values()):.1f}")
    assert not hard and statistics.mean(grades.values()) <= 7


@pytest.mark.parametrize("seed", range(1, 9))
def test_where_a_whole_number_is_asked_for_a_whole_number_is_told(seed):
    """One bowl and ten times the logarithm of how many there are."""
    sound = bank.pose("T01.11", seed)
    one, bowls = (float(given.split()[0]) for given in re.findall(r"[0-9.]+ dB|[0-9]+ bowls", sound.text))
    exactly = one + 10 * math.log10(bowls)
    assert diagnose(sound, f"{exactly:.2f} dB").message == f"Right: {round(exactly)} dB."


def test_values_on_which_a_slip_is_no_real_number_make_no_question_and_no_traceback():
    """A whole difference of 5 mm on a head of 3 mm: below zero to the power 3/2."""
    formula = topics.find("flow ratio of a rim out of level")
    with pytest.raises(ArithmeticError, match="no real number"):
        ask_on(formula, 1, {"H": "3 mm", "e_rim": "5 mm"})
    assert ask_on(formula, 1, {"H": "4 mm", "e_rim": "2 mm"}).answer == pytest.approx((5 / 3) ** 1.5, rel=1e-9)
