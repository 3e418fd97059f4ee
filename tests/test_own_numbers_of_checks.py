"""The exit check of a workbook: numbers differ by learner, the code is typed once, and no answer stands elsewhere in the same workbook."""

import json
import re
from pathlib import Path

import pytest

from brimwork.exercise import answers, bank
from brimwork.exercise.choices import Choice
from brimwork.exercise.personal import learner_code, own_seed
from brimwork.exercise.question import Question
from brimwork.notebook import lesson
from brimwork.units import InputError

WORKBOOKS = sorted(path for path in Path(__file__).parents[1].joinpath("workbooks").glob("*.ipynb") if "exit_check(" in path.read_text())
LEARNERS = ("A01", "A02", "B17", "XY-3", "K9", "LEARNER_30")


def cells(path):
    return json.loads(path.read_text())["cells"]


def checked(path):
    """The codes that the exit check of a workbook asks."""
    source = next(
        "".join(cell["source"])
        for cell in cells(path)
        if "exit_check(" in "".join(cell["source"]) and cell["cell_type"] == "code" and "import" not in "".join(cell["source"])
    )
    return re.findall(r'"([^"]+)"', source)[1:]


def printed(path):
    """What a reader finds in each other cell of a workbook: its text, its call, its stored results."""
    for cell in cells(path):
        if "exit_check(" in "".join(cell["source"]) and cell["cell_type"] == "code":
            continue
        found = ["".join(cell["source"])]
        for output in cell.get("outputs", []):
            found += ["".join(text) for kind, text in output.get("data", {}).items() if kind in ("text/plain", "text/html")]
        yield re.sub(r"<[^>]+>", " ", " ".join(found))


def has(text, value):
    number, _, unit = value.partition(" ")
    return bool(re.search(rf"(?<![\d.,]){re.escape(number)}0*\s*{re.escape(unit)}(?![\w/])", text))


def stands(question, text):
    """Whether the answer stands in a text, to three figures or to all, beside at least half of the values that the question gives."""
    if not isinstance(question, Question):
        return False
    given = [has(text, value) for value in question.numbers.values()]
    answer = has(text, question.typed(question.answer)) or has(text, question.typed(question.answer, 4))
    return answer and sum(given) * 2 >= len(given)


@pytest.mark.parametrize("path", WORKBOOKS, ids=lambda path: path.stem)
def test_no_answer_of_the_exit_check_stands_elsewhere_in_the_workbook(path):
    for code in checked(path):
        for learner in LEARNERS:
            question = bank.pose(code, own_seed(learner, code))
            found = next((text for text in printed(path) if stands(question, text)), "")
            assert not found, f"{learner}: the answer {question.typed(question.answer)} of {code} stands in {path.name}: {found[:200]}"


def test_the_finder_of_answers_finds_one():
    question = bank.pose("T04.1", 1)
    given = ", ".join(question.numbers.values())
    assert stands(question, f"with {given} the head is {question.typed(question.answer)}, then")
    assert not stands(question, f"with {given} it is 2.43 kg and 12.43 mm") and not stands(question, "the head is 2.43 mm")


@pytest.mark.parametrize("path", WORKBOOKS, ids=lambda path: path.stem)
def test_the_numbers_of_an_exit_check_differ_by_learner(path):
    for code in checked(path):
        drawn = [bank.pose(code, own_seed(learner, code)) for learner in LEARNERS]
        if isinstance(drawn[0], Choice) or not drawn[0].varies:
            continue
        assert len({tuple(question.numbers.values()) for question in drawn}) > len(LEARNERS) / 2, f"{code}: too few different numbers"
        assert [question.numbers for question in drawn] == [bank.pose(code, own_seed(learner, code)).numbers for learner in LEARNERS]


def test_the_code_is_typed_once(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    first = lesson.OwnCheck("Overflow", ("T04.1", "T04.3"), "answers.json")
    assert first.check is None
    first.code.value = "A 7"
    assert "no learner code" in first.said.value and first.check is None
    first.code.value = "a07"
    assert first.check is not None and answers.learner(answers.load_answers("answers.json")) == "A07"
    numbers = [one.question.numbers for one in first.check.asked.exercises]
    again = lesson.OwnCheck("Overflow", ("T04.1", "T04.3"), "answers.json")
    assert [one.question.numbers for one in again.check.asked.exercises] == numbers
    other = lesson.OwnCheck("Overflow", ("T04.1", "T04.3"), "others.json")
    other.code.value = "A08"
    assert [one.question.numbers for one in other.check.asked.exercises] != numbers


@pytest.mark.parametrize("text", ["", "A 7", "é", "../x", "-A", "A" * 17, "A\u202e7", "<b>"])
def test_a_learner_code_is_letters_and_digits(text):
    with pytest.raises(InputError, match="no learner code"):
        learner_code(text)
