"""Metric or US, by one switch: every question, slider, ledger and picture is in the one that is in use, and says nothing in words of the other."""

import re

import pytest

from brimwork import system, topics, typeset, units
from brimwork.classroom import classfile, handout, numbers
from brimwork.drawing import svg
from brimwork.drawing.pictures import picture
from brimwork.drawing.pictures.steps_drawn import SKETCHED
from brimwork.exercise import answers, bank, claims, twins
from brimwork.exercise.build import faults
from brimwork.exercise.diagnosis import diagnose
from brimwork.exercise.pieces import worked
from brimwork.exercise.question import Question, ask
from brimwork.exercise.written import Numeric
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import given_values, live
from brimwork.notebook.opening import shipped
from brimwork.notebook.settings import Units, read_settings, take_settings
from brimwork.units import InputError

BY_BOTH = ("T02.1", "T02.2", "T02.6", "T14.1")  # about changing units of one system into the other


in_both = pytest.mark.parametrize("wanted", system.SYSTEMS)


def test_the_questions_that_belong_to_both_systems_are_those_about_converting():
    mixed = []
    for code, question in bank.questions().items():
        text = f"{question.pose(1).text} {' '.join(getattr(question, 'given', {}).values())} 1 {getattr(question, 'unit', '')}"
        if all(system.foreign(text, name) for name in system.SYSTEMS):
            mixed.append(code)
    assert mixed == list(BY_BOTH)


@in_both
@pytest.mark.parametrize("code", [code for code in bank.questions() if code not in BY_BOTH])
def test_a_question_speaks_one_system(code, wanted):
    question = bank.questions()[code]
    here = twins.in_each(question)[wanted]
    with system.working_in(wanted):
        assert not twins.foreign_words(here, wanted, slips=here is not question)


@pytest.mark.parametrize("code", [code for code, question in bank.questions().items() if twins.system_of(question)])
def test_a_question_in_the_other_system_is_held_to_the_same_rules(code):
    question = bank.questions()[code]
    wanted = system.other(twins.system_of(question))
    with system.working_in(wanted):
        twin = twins.in_each(question)[wanted]
        assert faults(twin) == []
        if isinstance(twin, Numeric) and twin.varies:
            assert not any(system.foreign(twin.pose(seed).text, wanted) for seed in (2, 3))


def test_a_class_meets_the_voltage_of_its_own_sockets():
    """230 or 240 V in Europe, and 24 V behind a transformer; 120 or 240 V in the US: in questions of the bank, of formulas, and in the two values of a cell."""
    for wanted, volts, others in ((system.METRES, {24.0, 240.0}, "120 V"), (system.FEET, {120.0, 240.0}, "230 V")):
        system.use(wanted)
        said = [bank.pose(code, seed).text for code in bank.questions() if code.startswith("T10") for seed in (1, 2, 3)]
        assert any("V" in text for text in said) and not any(others in text for text in said)
        for name in ("current", "voltage drop in per cent by resistance"):
            assert {ask(topics.find(name), seed).given["U_s"].value for seed in range(1, 12)} <= volts
        assert given_values.of_here("230 V or 120 V") == ("120 V" if wanted == system.FEET else "230 V")


def test_twins_that_were_worked_by_hand():
    """0.12 in is 3.048 mm, 30 in is 762 mm: 1.7 x pi x 0.762 x 0.003048^1.5 = 0.000685 m3/s; here on round numbers of the other system."""
    with system.working_in(system.FEET):
        slip = bank.pose("T04.10").mended
        feet3 = 10 * 231 / 1728 / 60  # a US gallon has 231 cubic inches
        assert slip.answer == pytest.approx(12 * (feet3 / (20 / 12) / 3.26) ** (2 / 3) * 0.0254, rel=0.005)
        wedge = bank.pose("T02.22").mended
        assert wedge.answer == pytest.approx((24 + 0.35 * 7 * 4 + 4 / 3 * 0.35**2 * 8) * 0.3048**3, rel=0.002)
        heap = bank.pose("T09.22").mended
        assert heap.answer == pytest.approx(5.25 * 3.75 * 2 * 1.25 * 0.3048**3, rel=0.002)
        throw = bank.pose("T14.22").mended
        q = 40 / 3 * 231 / 1728 / 60
        y = 0.715 * (q**2 / 32.174) ** (1 / 3)
        assert throw.answer == pytest.approx(q / y * (2 * 20 / 12 / 32.174) ** 0.5 * 0.3048, rel=0.005)
        pump = bank.pose("T05.9").mended
        v = 8 * 231 / 1728 / 60 / (3.14159 / 4 / 144)
        assert pump.answer == pytest.approx((3 + (0.025 * 12 * 12 + 4.7) * v**2 / 2 / 32.174) * 0.3048, rel=0.005)
        leak = bank.pose("T13.22").mended
        assert leak.answer == pytest.approx(10 * 0.2 / 12 * 1728 / 231 * 0.003785412, rel=0.005)
        lift = bank.pose("T11.1")
        assert lift.answer == pytest.approx(51 * (10 / 14) * (1 - 0.0075 * 19) * (0.82 + 1.8 / 20) * 0.95 * 0.45359237, rel=1e-6)


@in_both
@pytest.mark.parametrize("name", topics.formulas())
def test_every_formula_asks_slides_and_draws_in_the_system(name, wanted):
    """A question with its unit, a slider on round steps within its range, the axis of its curve."""
    formula = topics.find(name)
    with system.working_in(wanted):
        for letter in formula.inputs:
            row = QUANTITIES[letter]
            low, high, step = row.stepped(*formula.range(letter))
            assert system.of_unit(row.here) in ("", wanted) and low < high and 0 < step <= high - low
            ends = formula.range(letter)
            slack = 1e-6 * (ends[1] - ends[0])
            assert (
                ends[0] - slack <= units.read(f"{low:.12g} {row.here}", row.here, letter)
                and units.read(f"{high:.12g} {row.here}", row.here, letter) <= ends[1] + slack
            )
        try:
            question = ask(formula, 3)
        except ValueError:
            pytest.skip("asks no question by itself")
        assert not system.foreign(question.text, wanted)
        assert diagnose(question, question.typed(question.answer, 4)).right
        drawn = picture(formula, question.like[1], formula.inputs[0])
        assert not system.foreign(" | ".join(re.findall(r">([^<]+)<", svg.write_svg(drawn.sheet))), wanted)
        columns = drawn.columns
        assert not any(system.foreign(f"1 {title.rpartition(' in ')[2]}", wanted) for title in columns if " in " in title)


@pytest.mark.parametrize("name", SKETCHED)
def test_a_sketch_of_a_derivation_names_no_unit_of_a_system(name):
    words = " | ".join(re.findall(r">([^<]+)<", svg.write_svg(SKETCHED[name]())))
    assert not [found for wanted in system.SYSTEMS for found in system.foreign(words, wanted)]


def test_a_working_is_in_units_of_the_class_and_comes_to_the_same():
    formula = topics.find("flow over a level lip")
    with system.working_in(system.FEET):
        lines = typeset.working(formula.work(b="2 ft", H="0.5 ft", C_d="0.62"), typeset.PLAIN)
        pieces = worked(formula, formula.only({"b": 0.6096, "H": 0.1524, "C_d": 0.62}))
        shown = [pieces.line(piece) for piece in pieces.pieces]
    assert lines[1:3] == ["b = 24 in ÷ 12 in/ft = 2 ft", "H = 6 in ÷ 12 in/ft = 0.5 ft"] and "32.174 ft/s2" in lines[3]
    by_hand = 2 / 3 * 0.62 * 2 * (2 * 32.174) ** 0.5 * 0.5**1.5 * 1728 / 231 * 60  # US gal/min
    assert float(re.search(r"= ([\d.]+) US gal/min", lines[4])[1]) == pytest.approx(by_hand, rel=5e-4)
    assert shown[-1].endswith(lines[4].removeprefix("Q")) and not any(system.foreign(line, system.FEET) for line in shown)


def test_a_slider_in_us_units_takes_its_own_steps():
    with system.working_in(system.FEET):
        control = live.Control(topics.find("flow over a level lip"), "H", 0.0127, lambda *_: None)
        assert control.slider.unit == "in" and control.box.value == "0.5 in"
        assert control.read(control.slider.min + 3 * control.slider.step) == pytest.approx((control.slider.min + 3 * control.slider.step) * 0.0254)


# --- the switch ---------------------------------------------------------------------------------------------------------------------


def test_a_choice_of_units_is_kept_beside_the_workbooks(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert read_settings(tmp_path) == system.METRES
    own = Units(tmp_path)
    own.chosen.value = system.FEET
    assert system.current() == system.FEET and "Kept" in own.said.value
    system.use_none()
    take_settings(tmp_path)
    assert system.current() == system.FEET and "US gal" in bank.pose("T13.1").text


@pytest.mark.parametrize("content", [b"", b"units = 3", b'units = "imperial"', b"\xff\xfe", b"[" * 5000, b"x" * 20_000])
def test_settings_that_cannot_be_read_are_told_and_nothing_breaks(tmp_path, content):
    (tmp_path / "settings.toml").write_bytes(content)
    with pytest.raises(InputError, match="units"):
        read_settings(tmp_path)
    take_settings(tmp_path)
    assert system.current() == system.METRES
    assert "settings.toml" in Units(tmp_path).said.value


def a_class(folder, extra=""):
    (folder / "roster.csv").write_text("code,name\nA01,Ada Rowan\nA02,Ben Sorrel\n")
    (folder / "class.toml").write_text(f'format = 1\ntitle = "Flow"\n{extra}\n[questions]\n"T04.1" = 2\n"T13.1" = 1\n"flow over a round rim" = 2\n')
    return classfile.load_class(folder / "class.toml")


@pytest.mark.parametrize(
    ("extra", "wanted"), [("", "metric"), ('region = "UK"', "metric"), ('region = "US"', "US"), ('region = "US"\nunits = "metric"', "metric")]
)
def test_a_class_is_asked_in_its_units_by_sheet_and_workbook(tmp_path, extra, wanted):
    group = a_class(tmp_path, extra)
    assert group.units == wanted == system.current()
    out = handout.hand_out(group, shipped())
    for learner in ("A01", "A02"):
        folder = out.learners / learner
        assert f'units = "{wanted}"' in (folder / "settings.toml").read_text()
        assert ("units: US" in (folder / f"class-{learner}.ipynb").read_text()) is (wanted == "US")
        for issued in out.sets.of[learner].values():
            assert not system.foreign(issued.posed.text, wanted)
    from pypdf import PdfReader

    sheet = " ".join(page.extract_text() for page in PdfReader(out.learners / "A01" / "class-A01.pdf").pages)
    assert ("US gal" in sheet) is (wanted == "US") and ("L/h" in sheet) is (wanted == "metric")


def test_a_class_with_no_such_units_is_told(tmp_path):
    with pytest.raises(InputError, match="metric, US"):
        a_class(tmp_path, 'units = "imperial"')


def test_an_exercise_in_us_units_comes_back_from_its_lines_as_it_was(tmp_path):
    group = a_class(tmp_path, 'region = "US"')
    secret = numbers.secret_of(tmp_path, make=True)
    sets = numbers.draw(group, secret)
    issued = sets.of["A01"]["T04.1"]
    again = numbers.Issued(issued.asked, issued.seed, issued.numbers).posed
    assert isinstance(again, Question) and again.unit == "in" and again.answer == pytest.approx(issued.posed.answer)


def test_an_answer_given_in_the_other_units_is_judged_on_what_was_asked(tmp_path):
    path = str(tmp_path / "answers.json")
    with system.working_in(system.FEET):
        question = bank.pose("T13.1", 3)
        answers.record(path, question, question.typed(question.answer, 4), diagnose(question, question.typed(question.answer, 4)))
    held = answers.load_answers(path)
    assert claims.found(held[0], held) == "right"
