"""A workbook that is opened again: what was answered stands in its boxes, and is not kept twice; what is recalled changes from day to day; progress is told."""

import json
import re

import pytest

from brimwork.exercise import bank
from brimwork.exercise.diagnosis import diagnose
from brimwork.exercise.question import Question
from brimwork.notebook import contents, fading, lesson, live, own_numbers, progress, recalling
from brimwork.notebook.practising import exercise


@pytest.fixture
def book(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(progress, "_open", progress._Workbook())
    return tmp_path


def words(html):
    return re.sub("<[^>]*>", "", html.value)


def kept(book):
    return json.loads((book / "answers.json").read_text())["answers"]


@pytest.mark.parametrize("code, typed", [("T04.5", "73.5 mm"), ("T04.5", "36.7 mm"), ("T04.5", "banana"), ("flow over a round rim", "12 L/min")])
def test_an_answer_stands_in_its_box_again_with_what_was_told(book, code, typed):
    before = exercise(code, 3, "answers.json")
    before.again.click()
    before.box.value = typed
    again = exercise(code, 3, "answers.json")
    assert again.box.value == typed and again.question.text == before.question.text
    assert (again.feedback.value, again.standing) == (before.feedback.value, before.standing) and again.seed == 4
    assert [one["answer"] for one in kept(book) if one["answer"]] == [typed]


@pytest.mark.parametrize("code", ["T04.5", "flow over a round rim"])
def test_fresh_numbers_are_read_only_once_their_boxes_stand(book, code):
    """Else an answer is typed into a box that goes the next moment, and is lost."""
    asked = exercise(code, 3, None)
    was, stood = asked.place.children, []
    asked.text.observe(lambda change: stood.append((asked.place.children, asked.feedback.value)), "value")
    asked.renew()
    assert [(len(boxes), told) for boxes, told in stood] == [(len(was), "")] and not set(stood[0][0]) & set(was)


def test_a_choice_an_order_and_a_sentence_come_back(book):
    first = lesson.Mending("T04.10", "answers.json")
    first.exercise.radio.value = 3
    first.exercise.check()
    first.exercise.mended.value = "8.19 mm"
    again = lesson.Mending("T04.10", "answers.json").exercise
    assert again.radio.value == 3 and again.mended.value == "8.19 mm" and "Right" in words(again.feedback)
    order = exercise("T12.6", 1, "answers.json")
    for place, item in zip(order.places, order.question.right):
        place.value = item
    order.check()
    assert exercise("T12.6", 1, "answers.json").feedback.value == order.feedback.value
    told = exercise("T04.9", 1, "answers.json")
    told.box.value = "Deeper <b>and</b> faster."
    told.check()
    again = exercise("T04.9", 1, "answers.json")
    assert again.box.value == "Deeper <b>and</b> faster." and "A model sentence" in words(again.feedback) and "<b>" not in again.feedback.value
    assert len(kept(book)) == 4


def test_a_part_that_was_skipped_stays_skipped(book):
    lesson.Mending("T04.10", "answers.json").turn()
    again = lesson.Mending("T04.10", "answers.json")
    assert again.standing == "skipped" and again.skip.description == "Open this part again" and len(kept(book)) == 1


def test_a_part_that_was_skipped_opened_again_and_mended_comes_back_mended(book):
    first = lesson.Mending("T04.10", "answers.json")
    first.exercise.radio.value = 3
    first.exercise.check()
    first.turn()
    first.turn()
    first.exercise.mended.value = "8.19 mm"
    again = lesson.Mending("T04.10", "answers.json")
    assert not again.skipped and again.exercise.radio.value == 3 and again.exercise.mended.value == "8.19 mm"


def test_a_prediction_comes_back_and_what_is_so_is_told_with_its_reason(book):
    first = lesson.Prediction("T04.8", 1, "answers.json")
    first.radio.value, first.why.value = (first.question.right + 1) % 4, "it doubles"
    first.keep()
    again = lesson.Prediction("T04.8", 1, "answers.json")
    assert (again.radio.value, again.why.value, again.said.value) == (first.radio.value, "it doubles", first.said.value)
    back = lesson.LookBack("T04.8", "answers.json")
    assert "It is so: About 85 litres a minute." in words(back.said) and "2.83" in words(back.said) and len(kept(book)) == 1


def test_estimate_value_on_the_way_and_answer_come_back(book):
    def made():
        own = own_numbers.OwnNumbers("flow over a round rim", "b", 4, "answers.json")
        own.come_back()
        return own

    own = made()
    own.estimate.value = "50 L/min"
    assert made().guess_said.value == own.guess_said.value
    own.way_box.value = "760 mm"
    assert made().way_said.value == own.way_said.value
    own.box.value = "51.3 L/min"
    assert made().feedback.value == own.feedback.value and len(kept(book)) == 3


def test_faded_examples_come_back_as_far_as_they_were_worked(book):
    fade = fading.Fading("flow over a level lip", 2, "answers.json")
    for example in fade.examples[:]:
        for one in example.blanks.values():
            one.box.value = one.example.worked.formula.quantity.metric_text(example.worked.found["Q"], 5)
    again = fading.Fading("flow over a level lip", 2, "answers.json")
    again.come_back()
    assert len(again.examples) == 2 and not again.examples[0].open and again.examples[1].open and len(kept(book)) == 1


def test_an_answer_on_numbers_that_are_no_longer_drawn_is_not_put_beside_others(book):
    exercise("T04.5", 1, "answers.json").box.value = "36.7 mm"
    held = kept(book)
    held[0]["numbers"] = {name: "1 m" for name in held[0]["numbers"]}
    (book / "answers.json").write_text(json.dumps({"format": 1, "answers": held}))
    assert exercise("T04.5", 1, "answers.json").box.value == ""


# --- recall -------------------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("workbook", contents.ORDER[1:])
def test_rounds_of_recall_go_through_all_that_was_asked_before_with_other_numbers(workbook):
    pool = {name for earlier in contents.earlier(workbook) for name in recalling.fresh(earlier)}
    rounds = [recalling.recalled_in(workbook, turn) for turn in range(40)]
    assert all(len({*names}) == 3 and {*names} <= pool for names in rounds) and {name for names in rounds for name in names} == pool
    posed = [bank.pose(name, recalling.band(workbook) + turn * recalling.STRIDE) for turn, names in enumerate(rounds[:5]) for name in names]
    assert len({(one.code, str(one.numbers)) for one in posed}) >= 0.9 * len(posed)
    assert all(isinstance(bank.pose(name, 1), Question) for name in pool)


def test_the_same_three_stand_there_all_day_and_others_come_the_next(book):
    codes, seed = lesson._recalled((), "overflow", 0, "answers.json")
    together = lesson.Together(codes, seed, "answers.json")
    for one in together.exercises[:2]:
        one.box.value = "1 L"
    assert lesson._recalled((), "overflow", 0, "answers.json") == (codes, seed), "one is still open"
    together.exercises[2].box.value = "1 L"
    assert lesson._recalled((), "overflow", 0, "answers.json") == (codes, seed)
    held = kept(book)
    for entry in held:
        entry["at"] = "2020" + entry["at"][4:]
    (book / "answers.json").write_text(json.dumps({"format": 1, "answers": held}))
    later, other = lesson._recalled((), "overflow", 0, "answers.json")
    assert later != codes and other == seed + recalling.STRIDE


# --- progress, and pictures that wait -----------------------------------------------------------------------------------------------


def test_the_line_at_the_top_follows_what_is_answered(book):
    with progress.in_section(progress.RECALL):
        two = lesson.Together(("T04.5", "T04.1"), 1, "answers.json")
    with progress.in_section(progress.SLIP):
        part = lesson.Mending("T04.10", "answers.json")
    assert "Begin with <strong>1 Recall" in progress.how_far()
    two.exercises[0].box.value = "36.7 mm"
    assert "1 Recall&nbsp;<strong>1 of 2" in progress.how_far() and "Go on with <strong>1 Recall" in progress.how_far()
    two.exercises[1].box.value = two.exercises[1].question.typed(two.exercises[1].question.answer, 4)
    assert "1 Recall&nbsp;<strong>✓" in progress.how_far() and "Go on with <strong>7 Find the slip" in progress.how_far()
    part.turn()
    assert "Every question here is answered" in progress.how_far()


def test_a_picture_waits_for_its_prediction(book, monkeypatch):
    shown = []

    class Handle:
        def update(self, figure):
            shown.append(figure)

    def display(what, display_id=False):
        shown.append(what)
        return Handle()

    monkeypatch.setattr(live, "display", display)
    live.explore("flow over a level lip", "H", after="T04.8", H="12 mm", b="600 mm", C_d="0.62")
    assert "once you have kept your prediction" in shown[1].plain and not any(isinstance(one, live.Figure) for one in shown)
    predict = lesson.Prediction("T04.8", 1, "answers.json")
    predict.radio.value, predict.why.value = 0, "so"
    predict.keep()
    assert isinstance(shown[-1], live.Figure)
    live.explore("flow over a level lip", "H", after="T04.8", H="12 mm", b="600 mm", C_d="0.62")
    assert isinstance(shown[-1], live.Figure), "kept before, it is there at once"


@pytest.mark.parametrize(("code", "line", "right"), [("T06.22", "420 L", "1180 L"), ("T12.22", "330", "1650"), ("T02.22", "0.265 m3", "0.948 m3")])
def test_the_rightly_mended_line_is_told_as_that_and_asks_to_go_on(code, line, right):
    """By hand: 0.35 x (2000 - 800) = 420 L, with 760 L 1180; 1320/0.8 - 1320 = 330; 0.35 x (1.2 + 0.9) x 0.6 squared = 0.2646 m3."""
    mended = bank.pose(code).mended
    assert "rightly mended. Go on from there" in diagnose(mended, line).text and not diagnose(mended, line).right
    assert diagnose(mended, right).right
