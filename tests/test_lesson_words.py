"""What lessons say: every term is told where it is first met, steps end in whole sentences, notes stand once, a count never contradicts what is said beside it."""

import json
import re
from pathlib import Path

import pytest

from brimwork import system, topics
from brimwork.design.typed.wording import PAIRS
from brimwork.exercise import bank
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import contents, course_so_far, pages, progress, word_list
from brimwork.notebook.further import Further
from brimwork.notebook.practising import exercise
from brimwork.shown import escape, held_together, read_here

WORKBOOKS = Path(__file__).parents[1] / "workbooks"
lessons = pytest.mark.parametrize("workbook", contents.ORDER)


def plain(markup):
    return re.sub(r"<[^>]+>", " ", markup).replace("\N{NO-BREAK SPACE}", " ")


@pytest.fixture
def lesson(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    progress.so_far()


# --- terms --------------------------------------------------------------------------------------------------------------------------

# Terms at which somebody who is new to the trade stopped, each with a word that a meaning of it must have.
STOPPED = {"void block": "crate", "head": "height", "box": "pit", "apron": "splash", "lining": "fleece", "liner": "water", "rim": "bowl", "lip": "edge", "check valve": "one way",
           "float valve": "float", "fleece": "liner", "catch area": "rain", "running level": "pump", "static level": "pump", "bulk density": "heap"}  # fmt: skip


@pytest.mark.parametrize("term", STOPPED)
def test_a_term_is_explained_in_the_first_section_of_every_lesson_that_uses_it(term):
    used = 0
    for workbook in contents.ORDER:
        text = "\n".join([contents.prose(workbook), *(bank.pose(code).text for code in contents.asked_in(workbook))]).lower()
        if term == "box":  # others are to type in
            text = " ".join(re.findall(r"(?:size the|an empty) box|box from its|box is|box inside", text))
        if re.search(rf"(?<![\w-]){term}s?(?![\w-])", text.replace("velocity head", "")):
            told = plain(word_list.words_of_lesson(workbook).value).lower()
            assert re.search(rf"\b{term}\b.{{0,80}}{STOPPED[term]}", told), workbook
            used += 1
    assert used


@lessons
def test_a_lesson_begins_with_its_words(workbook):
    [recall] = [call for call in contents.calls(workbook) if call.name == "recall"]
    assert recall.section == 1 and (recall.named.get("before") or contents.recalling(recall.words)) == workbook


def test_a_question_tells_its_words_where_a_lesson_has_them_first_and_not_again(lesson):
    first, second = exercise("T04.2"), exercise("T04.3")
    assert "rim: the upper edge of a bowl" in " ".join(plain(first.text.value).split()).replace(" :", ":")
    assert "the upper edge of a bowl" not in plain(second.text.value)
    first.renew()
    assert "the upper edge of a bowl" in plain(first.text.value), "with new numbers its words are still there"


def test_outside_a_lesson_a_question_is_asked_as_it_is():
    assert "the upper edge" not in exercise("T04.2").text.value


def test_a_word_in_the_prose_of_a_lesson_that_differs_in_the_us_is_told_there_and_none_is_spelt_in_one_way_only():
    """Prose is one text for both: it may say a word of the UK that the glossary explains, with the one of the US."""
    spelt = re.compile(
        r"\b(practis\w+|judgement|\w*levell\w+|colour\w*|neighbour\w*|labour\w*|centre\w*|(?:milli)?metres?|litres?|vapour|grey|mould|whilst|\w+isation)\b",
        re.I,
    )
    system.use(system.FEET)
    for workbook in contents.ORDER:
        text = re.sub(r"\{[^|}]+ \| [^}]+\}", "", contents.prose(workbook))
        assert not spelt.search(text), (workbook, spelt.search(text)[0])
        for word in PAIRS:
            if word not in SAME_IN_PROSE and re.search(rf"(?<![\w-]){word}(?![\w-])", text, re.I):
                told = plain(word_list.words_of_lesson(workbook).value)
                assert re.search(rf"\(in the US: {re.escape(PAIRS[word]).removesuffix('s')}s?\)", told), (workbook, word)


SAME_IN_PROSE = {"skip"}  # a verb there


@pytest.mark.parametrize("workbook", contents.COURSE)
def test_a_lesson_says_that_its_code_need_not_be_read(workbook):
    first = "".join(json.loads((WORKBOOKS / f"{workbook}.ipynb").read_text(encoding="utf-8"))["cells"][0]["source"])
    assert re.search(r"code .*needs no reading and no change", first)


# --- whole sentences ----------------------------------------------------------------------------------------------------------------

# Words after which something must follow, and verbs after which a step that ends would want an object.
OPEN_END = {"a", "an", "the", "and", "or", "but", "at", "by", "of", "to", "for", "with", "than", "as", "is", "are", "was", "which"}
VERBS = {"from", "passes", "lies", "falls", "bring", "brings", "sends", "takes", "gives", "makes"}


def last_word(text):
    return re.sub(r"[^a-z-]", "", text.split()[-1].lower()) if text.split() else ""


def reasons():
    for formula in topics.formulas().values():
        for step in formula.steps:
            if not isinstance(step, Formula) and getattr(step, "reason", ""):
                yield step.reason


FINISHED = {"the shear that a core of this radius needs", "the blocks carry the weight over the patch, and the stone"}


def test_every_reason_of_a_step_every_meaning_and_every_name_comes_to_an_end():
    texts = {*reasons()} - FINISHED
    assert len(texts) > 300
    assert not {text for text in texts if last_word(text) in OPEN_END | VERBS}
    texts = {said for said, _ in word_list._WORDS.values()} | {row.name for row in QUANTITIES.values()}
    texts |= {formula.remark.rstrip(".") for formula in topics.formulas().values() if formula.remark}
    assert not {text for text in texts if last_word(text) in {"a", "an", "the", "and", "or", "but", "at", "than", "as"}}


def test_a_step_leads_into_its_line():
    shown = pages.derive("flow over a level lip").markdown
    assert "way down *(law)*:\n\n$$" in shown and not re.search(r"\. \*\(", shown)


# --- once -----------------------------------------------------------------------------------------------------------------------------


def test_a_note_stands_once_in_a_lesson_and_again_where_it_stood_when_that_is_run_again(lesson):
    first = lambda: pages.work("water in transit", V_rim="1 L", V_siph="8 L", V_film="0.3 L", V_sheet="0 L", V_pc="1 L", V_hold="5 L").markdown  # noqa: E731
    second = lambda: pages.work("drain-back ratio", h_run="360 mm", h_over="400 mm", V_tr="20 L", A_b="1 m2", n_v="0.9").markdown  # noqa: E731
    assert "Not checked" in first() and "Worked by hand" in first()
    assert "what was there" not in second() and first() == first()
    assert second() == second()


@lessons
def test_no_stored_note_stands_twice_in_a_lesson(workbook):
    cells = json.loads((WORKBOOKS / f"{workbook}.ipynb").read_text(encoding="utf-8"))["cells"]
    shown = ["".join(output.get("data", {}).get("text/markdown", "")) for cell in cells if cell["cell_type"] == "code" for output in cell["outputs"]]
    notes = [note for text in shown for note in re.findall(r"^\*(?:Checked|Not checked|Tested range)[^\n]*", text, re.M)]
    assert len(notes) == len({*notes})


def test_what_is_asked_for_in_whole_ones_is_told_in_whole_ones():
    """By hand: (600 - 0.4 x 1000)/((0.95 - 0.4) x 60) = 6.06, so 7 blocks."""
    assert "Rounded up: 7 blocks" in pages.work("blocks needed in a pit", V_w="600 L", V_pit="1000 L", V_b="60 L", n_v="0.95", n_s="0.4").markdown


# --- counts -----------------------------------------------------------------------------------------------------------------------------


class Answered:
    def __init__(self, standing):
        self.standing = standing


def test_the_line_at_the_top_never_says_done_beside_something_left(lesson):
    for section in (progress.FADED, progress.EXIT):
        with progress.in_section(section):
            progress.joins(section, Answered(""))
    assert "to read" in progress.how_far()
    with progress.in_section(progress.FADED):
        progress.joins(progress.FADED, Answered("right"))
    assert "to read" not in progress.how_far() and "Go on with" in progress.how_far()
    with progress.in_section(progress.EXIT):
        progress.joins(progress.EXIT, Answered("right"))
    said = progress.how_far()
    assert "Every question here is answered." in said and not re.search(r"\d of \d|to read", said)


@pytest.mark.parametrize(
    ("right", "tried", "asked", "said"),
    [
        (3, 3, 6, "3 questions right, 3 not tried yet"),
        (1, 3, 3, "1 question right, 2 not right yet"),
        (0, 0, 2, "2 not tried yet"),
        (4, 4, 4, "4 questions right"),
    ],
)
def test_what_nobody_has_tried_is_not_counted_as_wrong(right, tried, asked, said):
    assert course_so_far.standing_of(right, tried, asked) == said


# --- numbers of the system in use, which stay with their units -------------------------------------------------------------------------


@pytest.mark.parametrize("formula", [formula for formula in topics.formulas().values() if formula.close], ids=lambda formula: formula.name)
def test_a_tolerance_in_us_units_is_one_of_a_tape_or_round_and_never_wider(formula):
    told = system.round_there(formula.close, system.FEET)
    assert re.fullmatch(r"(?:\d+ )?\d+/(?:2|4|8|16|32|64) in|0?\.?0*[1-9]5?\d*(?:\.\d)? ?.*", told)
    from brimwork import units

    meant, there = units.parse(formula.close), units.parse(told)
    assert 0.5 * meant.value < there.value <= meant.value * (1 + 1e-6)


def test_a_limit_is_rounded_to_its_safe_side():
    """By hand: 30 mm are 1.181 in and 150 mm are 5.906 in; what must be reached goes up, what may not be passed goes down."""
    system.use(system.FEET)
    assert [system.in_chosen(text, way=1) for text in ("30 mm", "150 mm")] == ["1.2 in", "6 in"]
    assert [system.in_chosen(text, way=-1) for text in ("30 mm", "150 mm")] == ["1.1 in", "5.9 in"]


def test_ends_of_a_slider_are_numbers_that_one_would_choose_there():
    """By hand: 6 and 20 mm are 0.236 and 0.787 in; 1 to 60 litres 0.26 and 15.85 gallons."""
    system.use(system.FEET)
    low, high, step = QUANTITIES["H"].on_a_slider(0.006, 0.020, 0.0005)
    assert (round(low, 6), round(high, 6), round(step, 6)) == (0.24, 0.8, 0.02)
    low, high, _ = QUANTITIES["V_siph"].on_a_slider(0.001, 0.060, 0.0005)
    assert (round(low, 6), round(high, 6)) == (0.3, 16)


def test_a_number_keeps_its_unit_and_a_letter_its_number():
    text = "the lip b = 32 in long passes 8 US gal/min per ft, 95 % of 3 blocks in the pit"
    kept = held_together(text)
    assert "b\N{NO-BREAK SPACE}=\N{NO-BREAK SPACE}32\N{NO-BREAK SPACE}in long" in kept and "95\N{NO-BREAK SPACE}%" in kept and "3 blocks in the pit" in kept
    assert "8\N{NO-BREAK SPACE}US\N{NO-BREAK SPACE}gal/min\N{NO-BREAK SPACE}per\N{NO-BREAK SPACE}ft" in kept and kept.replace("\N{NO-BREAK SPACE}", " ") == text


def test_tags_formulas_and_what_somebody_is_quoted_with_stand_as_they_are():
    page = escape("a colour, ") + "<p style='margin:0 0 2 em'>$x = 3\\,m$ <q>my colour</q>"
    assert read_here(page, lambda text: text.replace("colour", "color")) == "a color, <p style='margin:0 0 2 em'>$x = 3\\,m$ <q>my colour</q>"


def test_the_list_of_further_questions_names_the_numbers_on_which_a_question_stands(lesson):
    asked = exercise("T06.12", 1, "answers.json")
    asked.renew()
    [label] = [text for text, code in Further(("T06.12",), "answers.json").chosen.options if code == "T06.12"]
    assert label.removeprefix("T06.12: ").rstrip(" …") in asked.question.text
    assert label.removeprefix("T06.12: ").rstrip(" …") not in bank.pose("T06.12", 1).text
