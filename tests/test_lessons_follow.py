"""What a lesson asks follows from what it shows: fresh numbers, a picture in which the prediction can be tried and the puzzle read, and nothing asked that is not told."""

import json
import re
import shutil
from pathlib import Path
from types import SimpleNamespace

import pytest

from brimwork import system, topics, units
from brimwork.design.follows.features import chain_of
from brimwork.design.judged import checks
from brimwork.design.judged.findings import COUNTS
from brimwork.design.typed.criteria import CRITERIA
from brimwork.design.typed.file import load_design
from brimwork.dimensions import NUMBER
from brimwork.exercise import bank, twins
from brimwork.exercise.diagnosis import diagnose
from brimwork.exercise.question import ask
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import carrying, contents, fading, given_values, live, pages

WORKBOOKS = Path(__file__).parents[1] / "workbooks"
DESIGNS = WORKBOOKS / "designs"
PICTURES = ("explore", "start_and_stop", "follow_days", "label")
lessons = pytest.mark.parametrize("workbook", contents.ORDER)
both = pytest.mark.parametrize("wanted", system.SYSTEMS)
WORKS = {"work": pages.work, "ledger": fading.ledger}


def shown(workbook):
    """Each picture and sum of a lesson that has all its values: section, call, formula, and values (SI) by letter."""
    for call in contents.calls(workbook):
        if call.name in ("ledger", "work", "explore"):
            formula = topics.find(call.words[0])
            given = {key: text for key, text in call.named.items() if key != "after"}
            if {*formula.inputs} <= {*given}:
                yield call, formula, formula.only(given_values.typed(formula, given))
            if call.name in WORKS:
                WORKS[call.name](*call.words, **given)  # later sums go on from here


def asked(workbook):
    """Each sum that a lesson asks for, on the numbers that everybody sees: where, and the values (SI)."""
    for call in contents.calls(workbook):
        if call.name == "fade":
            for seed in range(call.named["seed"], call.named["seed"] + fading.MOST_BLANKS):
                yield f"fade, seed {seed}", [value.value for value in ask(topics.find(call.words[0]), seed).given.values()]
        elif call.name in ("your_numbers", "practise"):
            posed = bank.pose(call.words[0], call.named.get("seed", 1))
            yield f"{call.name} {call.words[0]}", [value.value for value in getattr(posed, "given", {}).values()]


def repeats(some, others):
    """Whether all values of the shorter list stand in the longer one, where there are three or more."""
    short, long = sorted((some, others), key=len)
    left = list(long)
    for value in short:
        same = next((one for one in left if one == pytest.approx(value, rel=5e-3)), None)
        if same is None:
            return False
        left.remove(same)
    return len(short) >= 3


@both
@lessons
def test_no_question_repeats_the_numbers_of_a_sum_or_of_another_question(workbook, wanted):
    system.use(wanted)
    before = [(f"{call.name} {call.words[0]}", list(values.values())) for call, _, values in shown(workbook)]
    for where, values in asked(workbook):
        for there, others in before:
            assert not repeats(values, others), f"{where} has the numbers of {there}"
        before.append((where, values))


@both
@lessons
def test_a_picture_beside_the_sums_begins_at_their_numbers(workbook, wanted):
    """A formula that is worked in the sections that teach is drawn there on the numbers of its sum, or of its ledger."""
    system.use(wanted)
    found = [(call, formula, values) for call, formula, values in shown(workbook) if call.section in (4, 5)]
    for call, formula, values in found:
        sums = [others for other, same, others in found if other.name != "explore" and same is formula]
        if call.name == "explore" and sums:
            assert any(values == pytest.approx(others, rel=1e-6) for others in sums), (formula.name, values, sums)


QUANTITY = re.compile(r"\d[\d./]*(?: \d/\d)? ?(?:mm|m|L|litres|in|ft|US gal(?:lons)?(?: a minute)?|US gal|litres a minute)(?![\w/])")
SPELT = {"litres a minute": "L/min", "US gallons a minute": "US gal/min", "litres": "L"}


def quantities(text):
    """What a question names with a number and a unit, as (SI, dimension)."""
    for found in QUANTITY.findall(text):
        for words, unit in SPELT.items():
            found = found.replace(words, unit)
        read = units.parse(found)
        yield found, read.value, read.dimension


def sliders(call):
    """The controls of a picture, as a reader finds them."""
    formula = topics.find(call.words[0])
    values = given_values.typed(formula, {key: text for key, text in call.named.items() if key != "after"})
    one = live.FormulaExplorer(formula, call.words[1:], values)
    one._set_ends(first=True)
    return one.controls


def on_a_step(control, value):
    low, high, step = control.slider.min, control.slider.max, control.slider.step
    at = (units.convert(value, control.row.here) - low) / step
    return -1e-6 <= at <= (high - low) / step + 1e-6 and abs(at - round(at)) < 0.02


@both
@lessons
def test_a_prediction_can_be_tried_in_its_picture(workbook, wanted):
    """What goes from one value to another does so on one slider of the picture, on its steps; each further value of that kind lies on a step of some slider."""
    system.use(wanted)
    calls = contents.calls(workbook)
    [predict] = [call for call in calls if call.name == "predict"]
    [picture] = [call for call in calls if call.section == 3 and call.name in ("explore", "start_and_stop")]
    text = re.sub(r"lean out by \S+ \w+ for each", "", bank.pose(predict.words[0]).text)
    if picture.name != "explore":
        return
    controls, named = sliders(picture), list(quantities(text))
    for shown, value, kind in named:
        reached = [control for control in controls if control.row.dimension == kind]
        assert not reached or any(on_a_step(control, value) for control in reached) or "deeper" in text, shown
    for (first, value, kind), (then, changed, same) in zip(named, named[1:]):
        if f"from {first} to {then}" in text:
            assert kind == same and any(on_a_step(control, value) and on_a_step(control, changed) for control in controls if control.row.dimension == kind), (
                then
            )


@both
@lessons
def test_a_puzzle_can_be_read_off_its_picture(workbook, wanted):
    """The step of a slider that is nearest to the answer is taken as right."""
    system.use(wanted)
    calls = contents.calls(workbook)
    [picture] = [call for call in calls if call.section == 3 and call.name in ("explore", "start_and_stop")]
    [puzzle] = [call for call in calls if call.name == "puzzle"]
    posed = bank.pose(puzzle.words[0])
    if picture.name == "explore":
        reached = [control for control in sliders(picture) if control.row.dimension == units.unit(posed.unit).dimension]
        steps = [
            control.on(min(max(round((units.convert(posed.answer, control.row.here) - control.slider.min) / control.slider.step), 0), control.last))
            for control in reached
        ]
        assert any(diagnose(posed, posed.typed(value, 6)).right for value in steps), (posed.typed(posed.answer, 4), [posed.typed(value, 4) for value in steps])


TOLD = ("T02.5", "T06.6", "T14.4")  # the text says what a litre weighs, or an area is multiplied by a height


@lessons
def test_what_a_question_asks_for_belongs_to_a_formula_that_it_names(workbook):
    for name in contents.asked_after_teaching(workbook):
        question = bank.questions().get(name)
        uses = getattr(question, "uses", ())
        wanted = question.unit if isinstance(question, bank.Numeric) else units.parse(question.mend[1]).unit if getattr(question, "mend", None) else None
        if uses and wanted is not None:
            kinds = {QUANTITIES[letter].dimension for one in map(topics.find, uses) for letter in (one.result, *one.inputs)}
            assert units.unit(wanted).dimension in kinds | {NUMBER} or name in TOLD, (name, uses)


TIED = {
    "T04.1": "the coefficient of a weir", "T04.2": "the coefficient of a weir", "T10.3": "a cable", "T10.6": "a cable", "T10.1": "a socket", "T10.2": "a socket",
    "T10.23": "a socket", "T06.24": "a picture", "T11.4": "a weight that follows from a volume",
}  # fmt: skip


def figures(text):
    return len(f"{units.parse(text).number:.6g}".replace(".", "").strip("0"))


def test_a_value_that_stays_is_as_round_in_the_other_system():
    for code, question in bank.questions().items():
        if isinstance(question, bank.Numeric) and code not in TIED:
            for twin in twins.in_each(question).values():
                for name in {*twin.keep} & {*twin.given} & {*question.given}:
                    assert figures(twin.given[name]) <= max(figures(question.given[name]), 2), (code, twin.given[name])


@lessons
def test_no_picture_or_label_stands_after_another_without_a_word(workbook):
    """Further pictures, for when there is time: each says in words what it is about, or follows the sum that it draws."""
    section, before = 0, ""
    for cell in json.loads((WORKBOOKS / f"{workbook}.ipynb").read_text(encoding="utf-8"))["cells"]:
        source = "".join(cell["source"])
        if heading := re.match(r"## (?:(\d+) )?", source):
            section = int(heading[1] or contents.MORE)
        call = source.partition("(")[0] if cell["cell_type"] == "code" else ""
        assert section != contents.MORE or call not in PICTURES or before not in PICTURES, source
        before = call


@lessons
def test_in_us_units_a_picture_begins_at_numbers_of_three_figures_at_most(workbook, monkeypatch):
    system.use(system.FEET)
    begun = []
    monkeypatch.setattr(live, "FormulaExplorer", lambda formula, letters, values: begun.append(values) or SimpleNamespace(show=lambda after: None))
    for call in contents.calls(workbook):
        if call.name == "explore":
            live.explore(*call.words, **call.named)
    assert begun
    shown = [QUANTITIES[letter].text_here(value, None) for values in begun for letter, value in values.items()]
    assert [text for text in shown if len(re.sub(r"\D", "", text.split(" ")[0].partition("e")[0]).strip("0")) > 3] == []


# --- what a check counts ------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("path", sorted(DESIGNS.glob("*.toml")), ids=lambda path: path.stem)
def test_a_check_without_a_unit_says_in_words_what_its_number_counts(path):
    told = [finding for finding in checks.findings(chain_of(load_design(path))) if finding.number is not None and not finding.unit]
    assert len(told) > 5
    assert {finding.id for finding in told} <= {*COUNTS}
    assert {row.id for row in CRITERIA if row.limits and not row.unit} <= {*COUNTS}


def test_a_lesson_tells_the_rule_of_a_check_and_how_a_level_under_the_paving_is_typed(tmp_path, monkeypatch):
    """By hand: 4 m from a stem of 200 mm, over twelve times 0.2 m, is 1.67."""
    shutil.copytree(DESIGNS, tmp_path / "designs")
    monkeypatch.chdir(tmp_path)
    own = carrying.Carrying(("site.tree_stem", "site.tree_distance", "levels.staple_line"), (), carrying.MINE, carrying.START, None)
    assert "under the paving carries a minus" in own.widget.children[0].value
    own.boxes["site.tree_stem"].value, own.boxes["site.tree_distance"].value = "200 mm", "4 m"
    own.carry()
    assert "distance to the stem over the radius to protect: 1.67; wanted: from 1" in own.said.value
