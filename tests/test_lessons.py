"""What topic workbooks teach and ask: every letter of a derivation is named, every derivation that is opened is drawn, nothing is asked before it is taught."""

import ast
import json
import re
from pathlib import Path

import pytest

from brimwork import system, topics, typeset, units
from brimwork.conditions import holds
from brimwork.derivation import derived
from brimwork.drawing.layout import Words, layout
from brimwork.drawing.marks import width_of
from brimwork.drawing.pictures import picture
from brimwork.drawing.pictures.steps_drawn import SKETCHED
from brimwork.exercise import bank, sensible
from brimwork.exercise.question import ask
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import contents, fading, given_values, live, pages

WORKBOOKS = Path(__file__).parents[1] / "workbooks"
OPENED = sorted({call.words[0] for name in contents.ORDER for call in contents.calls(name) if call.name == "derive"})


def letters(*trees):
    return {node.id for tree in trees for node in ast.walk(tree) if isinstance(node, ast.Name) and node.id in QUANTITIES}


@pytest.mark.parametrize("name", OPENED)
def test_every_letter_of_every_step_is_named_where_it_first_stands(name):
    formula, named = topics.find(name), set()
    shown = pages.derive(name).markdown
    said = {key: f"${typeset.LATEX.letter(key)}$ {QUANTITIES[key].name}" for key in QUANTITIES}
    parts = re.split(r"\n\n(?=\*\*\d+\.\*\* )", shown)
    assert len(parts) == len(derived(formula)) + 1
    for part, step in zip(parts, (None, *derived(formula))):
        named |= {key for key, text in said.items() if text in part}
        missing = letters(formula.left, formula.right) - named if step is None else letters(step.left, step.right) - named
        assert not missing, part


@pytest.mark.parametrize("name", OPENED)
def test_every_line_of_a_derivation_has_a_row_and_a_reason_of_its_own_and_a_drawing_stands_beside(name):
    shown = pages.derive(name).markdown
    assert shown.count("\n$$\n") >= 2 * len(derived(topics.find(name)))
    assert all(step.reason for step in derived(topics.find(name)))
    assert re.search(r'<figure[^>]*><img src="data:image/svg\+xml;base64,[^"]+" alt="[^"]{60,}"', shown)
    assert "**1.**" not in shown.partition("<details>")[0]


def test_a_heavy_formula_is_folded_away_with_its_steps():
    shown = pages.derive("time in which the head over a rim rises").markdown
    assert "$$" not in shown.partition("<details>")[0] and "arctan" in shown
    assert "$$" in pages.derive("flow over a level lip").markdown.partition("<details>")[0]


def _box(words):
    wide = width_of(words.text, words.size)
    left = words.at[0] - wide * {"start": 0, "middle": 0.5, "end": 1}[words.anchor]
    return left, words.at[1] - words.size, left + wide, words.at[1]


@pytest.mark.parametrize("name", SKETCHED)
def test_a_sketch_keeps_its_words_on_the_sheet_and_apart(name):
    sheet = SKETCHED[name]()
    level = [mark for _, marks in layout(sheet) for mark in marks if isinstance(mark, Words) and not mark.angle]
    boxes = [_box(words) for words in level]
    for x0, y0, x1, y1 in boxes:
        assert x0 > -0.5 and y0 > -0.5 and x1 < sheet.width + 0.5 and y1 < sheet.height + 0.5
    for place, (a, b, c, d) in enumerate(boxes):
        for x0, y0, x1, y1 in boxes[place + 1 :]:
            assert not (a < x1 - 0.5 and x0 + 0.5 < c and b < y1 - 0.5 and y0 + 0.5 < d), level[place].text
    assert len(sheet.description) > 60 and sheet.description != sheet.title


# --- asked only what is taught ------------------------------------------------------------------------------------------------------

TEACHING = ("derive", "ledger", "fade", "work", "label")
LABEL = ("best hydraulic power of a label", "nameplate ratio")


def taught(workbook):
    """The formulas that the teaching sections of a workbook derive or work, by name."""
    calls = [call for call in contents.calls(workbook) if call.section in (5, 6) and call.name in TEACHING]
    return {topics.find(call.words[0]).name for call in calls if call.name != "label"} | ({*LABEL} if any(call.name == "label" for call in calls) else set())


@pytest.mark.parametrize("workbook", contents.ORDER)
def test_every_question_names_formulas_that_this_or_an_earlier_workbook_teaches(workbook):
    known = set().union(*(taught(name) for name in (workbook, *contents.earlier(workbook))))
    for name in contents.asked_after_teaching(workbook):
        wanted = bank.formulas_asked_for(name)
        assert wanted or name not in bank.questions() or not isinstance(bank.questions()[name], bank.Numeric) or name in ONLY_ARITHMETIC, name
        assert {*wanted} <= known, f"{name} asks for {', '.join({*wanted} - known)}"


ONLY_ARITHMETIC = ("T13.2", "T13.4", "T12.3", "T11.5", "T09.5")


def test_every_question_of_the_bank_names_formulas_that_are_there():
    for code, question in bank.questions().items():
        assert all(topics.find(name).name == name for name in question.uses), code


TERMS = ("head", "weir coefficient", "discharge coefficient", "velocity head", "void fraction", "dead water", "water area", "back-sight", "fore-sight",
         "tipping factor", "drain-back ratio", "dB(A)", "bulks")  # fmt: skip


@pytest.mark.parametrize("term", TERMS)
def test_a_term_is_explained_where_it_first_stands(term):
    """Where a lesson says a word of the trade for the first time, it stands in italics beside what it means."""
    for workbook in contents.ORDER:
        for cell in json.loads((WORKBOOKS / f"{workbook}.ipynb").read_text(encoding="utf-8"))["cells"]:
            text = "".join(cell["source"])
            if cell["cell_type"] == "markdown" and re.search(rf"(?<![\w-]){re.escape(term)}", text):
                assert f"*{term}" in text, (workbook, text)
                return
    raise AssertionError(f"no lesson says {term}")


# --- nothing answers for the learner ------------------------------------------------------------------------------------------------


def shown_in(workbook):
    """All that a workbook shows before anybody has answered, cell by cell: the text and the stored outputs of what is no question."""
    for cell in json.loads((WORKBOOKS / f"{workbook}.ipynb").read_text(encoding="utf-8"))["cells"]:
        source = "".join(cell["source"])
        call = source.partition("(")[0]
        if cell["cell_type"] == "markdown" or call in (
            "explore",
            "ledger",
            "work",
            "said_here",
            "derive",
            "label",
            "start_and_stop",
            "follow_days",
            "level_sheet",
        ):
            outputs = [output.get("data", {}) for output in cell.get("outputs", ())]
            pages = "\n".join("".join(data.get(kind, "")) for data in outputs for kind in ("text/plain", "text/markdown", "text/html"))
            yield source, re.sub(r'base64,[^"]*', "", f"{source}\n{pages}")


def numbers(text):
    return {float(found) for found in re.findall(r"(?<![\w.])\d+(?:\.\d+)?(?![\w.]*\d)", text)}


def exercises(workbook):
    """The questions with a number that a workbook asks, on the numbers that everybody sees in it."""
    for call in contents.calls(workbook):
        if call.name in ("practise", "your_numbers", "find_slip", "puzzle"):
            posed = bank.pose(call.words[0], call.named.get("seed", 1))
            posed = getattr(posed, "mended", posed)
            if hasattr(posed, "answer"):
                yield call.words[0], posed
        elif call.name == "exit_check":
            yield from ((code, posed) for code in call.words[1:] if hasattr(posed := bank.pose(code, 1), "answer"))


@pytest.mark.parametrize("workbook", contents.ORDER)
def test_no_answer_of_an_exercise_stands_elsewhere_in_its_workbook(workbook):
    """A number with three or more figures that an exercise asks for is printed by no text, example or picture of the same workbook."""
    for name, posed in exercises(workbook):
        typed = posed.typed(posed.answer, 3)
        figures = typed.split(" ")[0]
        if len(figures.replace(".", "").strip("0")) < 3:
            continue  # a round or short number may stand anywhere by chance
        unit = typed.partition(" ")[2]
        for source, text in shown_in(workbook):
            assert not re.search(rf"(?<![\d.]){re.escape(typed)}(?!\w)", text), f"{name}: {typed} stands in {source}"
        assert unit or float(figures) not in set().union(*(numbers(text) for source, text in shown_in(workbook) if source.startswith("#"))), name


@pytest.mark.parametrize("workbook", contents.ORDER)
def test_a_picture_waits_for_the_prediction_and_begins_elsewhere_than_its_answer(workbook):
    calls = contents.calls(workbook)
    [predict] = [call for call in calls if call.name == "predict"]
    [picture] = [call for call in calls if call.section == 3 and call.name in ("explore", "start_and_stop")]
    assert picture.named["after"] == predict.words[0]
    text = bank.pose(predict.words[0]).text
    asked = {word.strip(".,;") for word in re.findall(r"\d[\d.]* ?(?:mm|m|L|dB|litres)\b", text)}
    begins = {given_values.of_here(value) for key, value in picture.named.items() if key != "after"}
    assert len(asked & begins) <= max(len(asked) - 2, 1), "it does not begin at the values of the question"
    assert [call.words[0] for call in calls if call.name == "puzzle"], "the puzzle has a box"


@pytest.mark.parametrize("workbook", contents.ORDER)
def test_the_answer_of_a_puzzle_lies_within_a_slider_of_its_picture(workbook):
    calls = contents.calls(workbook)
    [picture] = [call for call in calls if call.section == 3 and call.name in ("explore", "start_and_stop")]
    [puzzle] = [call for call in calls if call.name == "puzzle"]
    posed = bank.pose(puzzle.words[0])
    letters = picture.words[1:] if picture.name == "explore" else picture.words
    spans = [(topics.find(picture.words[0]) if picture.name == "explore" else QUANTITIES[letter]).range for letter in letters]
    spans = [span(letter) if callable(span) else span for span, letter in zip(spans, letters)]
    kinds = [units.unit(QUANTITIES[letter].metric).dimension for letter in letters]
    wanted = units.unit(posed.unit).dimension
    assert any(kind == wanted and span[0] <= posed.answer <= span[1] for kind, span in zip(kinds, spans))


# --- no impossible number in an example ---------------------------------------------------------------------------------------------


WORKS = {"work": pages.work, "ledger": fading.ledger}


def _worked(workbook):
    """Every set of values that a workbook works or shows in the system in use: (formula, values, limits of a drawn one), those of its faded examples too."""
    for call in contents.calls(workbook):
        if call.name in ("ledger", "work", "explore"):
            formula = topics.find(call.words[0])
            given = {key: text for key, text in call.named.items() if key != "after"}
            if {*formula.inputs} <= {*given}:
                yield formula, given_values.typed(formula, given), ()
            if call.name != "explore":
                WORKS[call.name](*call.words, **given)  # and later sums go on from here
        elif call.name == "fade":
            formula = topics.find(call.words[0])
            for seed in range(call.named["seed"], call.named["seed"] + fading.MOST_BLANKS):
                yield formula, formula.only({key: value.value for key, value in ask(formula, seed).given.items()}), sensible.LIMITS.get(formula.name, ())


@pytest.mark.parametrize("wanted", system.SYSTEMS)
@pytest.mark.parametrize("workbook", contents.ORDER)
def test_no_example_and_no_picture_has_a_number_that_cannot_be(workbook, wanted):
    """A result that cannot be negative is positive, all that the formula asks holds, and what belongs together goes together; so with "16 m or 52 ft" both."""
    system.use(wanted)
    for formula, values, limits in _worked(workbook):
        found = {**values, formula.result: formula(**values)}
        known = {**{key: QUANTITIES[key].fixed for key in formula.constants if QUANTITIES[key].value}, **found}
        assert formula.quantity.signed or found[formula.result] > 0, (formula.name, values)
        for condition in (*formula.where, *limits):
            assert holds(condition, known), (formula.name, condition, values)


def test_a_slider_ends_where_values_are_refused():
    """By hand: with 1.2 m of shut-off head a lift of 0.95 x 1.2 m = 1.14 m is the most that the formula takes."""
    formula = topics.find("duty flow")
    values = {
        key: QUANTITIES[key].read(text) for key, text in {"z_s": "0.7 m", "h_loss": "0.5 m", "Q_1": "30 L/min", "H_0": "1.2 m", "Q_max": "50 L/min"}.items()
    }
    one = live.FormulaExplorer(formula, ("z_s", "H_0"), values)
    one._set_ends(first=True)
    lift, head = one.controls
    assert lift.slider.max < 1.14 <= lift.slider.max + lift.slider.step + 1e-9
    assert f"to {lift.slider.max:.6g} m" in lift.slider.name
    head.value = 2.0
    one._set_ends()
    assert lift.slider.max == lift.span[1], "with a stronger pump it goes all the way again"


def test_a_picture_is_described_by_its_shape_and_not_by_its_caption_again():
    shown = picture(topics.find("flow over a level lip"), {"C_d": 0.62, "b": 0.6, "H": 0.012}, "H")
    assert shown.sentence not in shown.sheet.alt and "rises, steeper and steeper" in shown.sheet.alt
    falling = picture(topics.find("head lost to friction by flow"), {"f": 0.027, "L_pipe": 6.0, "Q": 20 / 60e3, "d_pipe": 0.03}, "d_pipe")
    assert "falls, less and less steeply" in falling.sheet.alt


def test_a_pit_five_metres_deep_stays_on_its_sheet():
    shown = picture(topics.find("volume of a battered pit"), {"L": 6.0, "W": 3.0, "h": 5.0, "m_b": 0.35}, "h")
    texts = [mark for _, marks in layout(shown.sheet) for mark in marks if isinstance(mark, Words)]
    assert any("5" in words.text and "h" in words.text for words in texts)
    for words in texts:
        assert -1 < words.at[0] < shown.sheet.width + 1 and -1 < words.at[1] < shown.sheet.height + 1


def test_a_value_that_leaves_its_drawing_is_said_so():
    """Twenty times the thickest sheet does not fit between the layers that are drawn; the usual ones do."""
    formula = topics.find("thickness of a folded corner")
    assert "Not all of it fits" in picture(formula, {"t_sheet": 0.04, "N_fold": 2}, "t_sheet").sentence
    assert "Not all of it fits" not in picture(formula, {"t_sheet": 0.001, "N_fold": 2}, "t_sheet").sentence


DRAWN = [code for code, question in bank.questions().items() if getattr(question, "picture", None)]


@pytest.mark.parametrize("wanted", system.SYSTEMS)
@pytest.mark.parametrize("code", DRAWN)
def test_a_drawing_to_read_keeps_its_words_on_the_sheet_and_apart(code, wanted):
    system.use(wanted)
    for seed in range(1, 7):
        sheet = bank.pose(code, seed).sheet
        level = [mark for _, marks in layout(sheet) for mark in marks if isinstance(mark, Words) and not mark.angle]
        for place, (a, b, c, d) in enumerate(boxes := [_box(words) for words in level]):
            assert a > -0.5 and b > -0.5 and c < sheet.width + 0.5 and d < sheet.height + 0.5, (seed, level[place].text)
            for other, (x0, y0, x1, y1) in enumerate(boxes[place + 1 :], start=place + 1):
                assert not (a < x1 - 0.5 and x0 + 0.5 < c and b < y1 - 0.5 and y0 + 0.5 < d), (seed, level[place].text, level[other].text)
