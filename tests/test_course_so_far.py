"""The map of the course, what one can do by code, and a design held against a brief."""

import re
from pathlib import Path

import pytest

from brimwork.classroom import course
from brimwork.classroom.course import TOPICS
from brimwork.design.typed import file
from brimwork.exercise import answers, bank
from brimwork.exercise.diagnosis import diagnose
from brimwork.notebook import contents, course_so_far
from brimwork.notebook.briefed import Briefed
from brimwork.notebook.practising import exercise

WORKBOOKS = Path(__file__).parents[1] / "workbooks"


@pytest.fixture
def book(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    return tmp_path


def answered(code, right=True):
    question = bank.pose(code)
    text = question.typed(question.answer, 4) if right else "1 mm"
    answers.record("answers.json", question, text, diagnose(question, text))


def test_the_map_begins_at_the_first_workbook_and_goes_on_with_what_is_begun(book):
    assert course_so_far.course_map().plain.startswith("Begin with Volume")
    answered("T02.3")
    said = course_so_far.course_map()
    assert said.plain.startswith("Go on with Volume") and ": 1 question right, " in said.plain.splitlines()[1] and "(volume.ipynb)" in said.markdown


def test_a_workbook_is_done_once_its_exit_check_is_right_and_the_next_one_follows(book):
    answers.note("answers.json", "Volume: exit check", "sure. You were sure, and not all is right yet.", "sure")
    assert "exit check not yet all right" in course_so_far.course_map().plain
    answers.note("answers.json", "Volume: exit check", "sure. Both are right, and you were sure.", "sure")
    said = course_so_far.course_map().plain
    assert said.startswith("Next is Reservoir") and "✓ exit check right" in said.splitlines()[1]
    for lesson in course_so_far.lessons():
        answers.note("answers.json", lesson.exit, "sure. Both are right, and you were sure.", "sure")
    assert course_so_far.course_map().plain.startswith("You have been through the whole course")


def test_a_file_that_is_damaged_is_told(book):
    Path("answers.json").write_text("{")
    assert "damaged" in course_so_far.course_map().plain and "damaged" in course_so_far.outcomes("T10").plain


def test_what_a_file_claims_is_worked_out_again(book):
    answered("T02.3", right=False)
    text = Path("answers.json").read_text()
    Path("answers.json").write_text(re.sub(r'"kind": "[^"]*"', '"kind": "right"', text))
    assert "1 not right yet" in course_so_far.course_map().plain.splitlines()[1]


def test_outcomes_are_counted_by_code(book):
    answered("T10.1")
    said = course_so_far.outcomes("T10", "T11").plain.splitlines()
    first = sum(TOPICS["T10"].serves(code) == 0 for code in bank.questions() if code.startswith("T10."))
    assert said[0].startswith(f"T10: say what only an electrician may do ({first} not tried yet)") and "(1 question right" in said[1]
    assert said[2].startswith("T11: ") and "right" not in said[2]
    assert "there is no topic 'T99'" in course_so_far.outcomes("T99").plain


def test_every_question_serves_one_outcome_and_every_outcome_has_two_questions_or_more():
    for code, topic in TOPICS.items():
        served = [topic.serves(name) for name in bank.questions() if name.startswith(f"{code}.")]
        assert len(topic.outcomes) == 2 and all(served.count(number) >= 1 for number in range(2)), code
        assert {f"{code}.{number}" for number in course._SECOND[code].split()} <= {*bank.questions()}, code


def test_every_topic_of_the_course_has_a_workbook_that_asks_its_questions_and_names_its_outcomes():
    calls = {name: contents.calls(name) for name in contents.COURSE}
    for code, topic in TOPICS.items():
        assert {*topic.workbooks} <= {*contents.COURSE}, code
        asked = [word for name in topic.workbooks for call in calls[name] for word in call.words if str(word).startswith(f"{code}.")]
        assert asked, code
    shown = {word for found in calls.values() for call in found if call.name == "outcomes" for word in call.words}
    assert shown == {*TOPICS}


def test_a_design_is_held_against_the_brief_and_follows_the_file(book):
    (book / "designs").mkdir()
    own = Briefed(str(WORKBOOKS / "briefs" / "courtyard.toml"), "designs/my-design.toml")
    assert "There is no design" in own.shown.value
    start = file.load_design(WORKBOOKS / "designs" / "library-bowl.toml")
    file.save_design(start, Path("designs/my-design.toml"))
    own.compare()
    assert "✗" in own.shown.value and "780 mm" in own.shown.value and "a person judges this" in own.shown.value
    assert re.search(r"✗</th><td[^>]*>[^<]*diameter[^<]*</td>", own.shown.value)
    file.save_design(start.having("vessel.rim_diameter", "700 mm"), Path("designs/my-design.toml"), start)
    own.compare()
    assert re.search(r"✓</th><td[^>]*>[^<]*diameter[^<]*</td>", own.shown.value) and "700 mm" in own.shown.value
    Path("designs/my-design.toml").write_text("<script>")
    own.compare()
    assert "cannot be read" in own.shown.value and "<script>" not in own.shown.value


def test_a_choice_that_comes_right_after_others_counts_once_a_reason_is_given(tmp_path, monkeypatch):
    """T10.20 has four options: whoever tries them one after another is right in the end."""
    monkeypatch.chdir(tmp_path)
    own = exercise("T10.20", 1, "answers.json")
    right = own.question.right
    for place in ((right + 1) % 4, right):
        own.radio.value = place
        own.check()
    counted = lambda: [said for _, outcome, said in course_so_far._served(("T10",), "answers.json")]  # noqa: E731
    none = counted()
    assert own.why in own.place.children and not any("question right" in said for said in none)
    own.why.value = "twice"
    assert counted() == none and "a few words more" in own.outcome.value
    own.why.value = "length and current both count"
    assert sum("1 question right" in said for said in counted()) == 1
    again = exercise("T10.20", 1, "answers.json")
    assert again.why in again.place.children and again.why.value == "length and current both count"


def test_a_choice_that_is_right_at_once_asks_for_no_reason(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    own = exercise("T10.20", 1, "answers.json")
    own.radio.value = own.question.right
    own.check()
    assert own.why not in own.place.children
    assert sum("1 question right" in said for _, _, said in course_so_far._served(("T10",), "answers.json")) == 1
