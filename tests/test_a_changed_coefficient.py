"""A formula that is one per cent off turns the stored workbooks of its topic red: what they print is compared to the byte (test_stored_outputs)."""

import ast
import json
from dataclasses import replace
from pathlib import Path

import pytest

from brimwork import topics
from brimwork.classroom.course import TOPICS
from brimwork.notebook import fading, pages

WORKBOOKS = Path(__file__).parents[1] / "workbooks"
WORKS = {"work": pages.work, "ledger": fading.ledger}


def worked_in(workbook):
    """Each working of a workbook: the call, its formula, the words and values that it is given, and the plain text that is stored of it."""
    for cell in json.loads((WORKBOOKS / f"{workbook}.ipynb").read_text(encoding="utf-8"))["cells"]:
        source = "".join(cell["source"])
        if cell["cell_type"] == "code" and source.partition("(")[0] in WORKS:
            call = ast.parse(source, mode="eval").body
            name, given = ast.literal_eval(call.args[0]), {one.arg: ast.literal_eval(one.value) for one in call.keywords}
            stored = next("".join(output["data"]["text/plain"]) for output in cell["outputs"])
            yield call.func.id, topics.find(name), given, stored


def off(formula):
    """The formula with its right-hand side one per cent too large."""
    return replace(
        formula, equals=f"{ast.unparse(formula.left)} = 1.01*({ast.unparse(formula.right)})" if formula.implicit else f"1.01*({ast.unparse(formula.right)})"
    )


@pytest.mark.parametrize("topic", TOPICS)
def test_one_per_cent_in_any_formula_that_a_topic_works_changes_what_is_stored(topic, monkeypatch):
    red = 0
    for workbook in TOPICS[topic].workbooks:
        for way, formula, given, stored in worked_in(workbook):
            with monkeypatch.context() as patched:
                wrong = off(formula)
                patched.setattr(topics, "find", lambda name, wrong=wrong: wrong)
                assert repr_of(WORKS[way](formula.name, **given)) != stored, (workbook, formula.name)
            assert repr_of(WORKS[way](formula.name, **given)) == stored, "as it is stored"  # and later sums go on from here
            red += 1
    assert red, topic
    print(f"{topic}: {red} workings of {', '.join(TOPICS[topic].workbooks)} turn red")


def test_the_capstone_has_no_working_that_could_turn_red():
    """It works nothing of its own: its rows are values of the learner's own design, and its questions are those of the topics. Should it come to work a formula, it
    belongs among the workbooks of a topic."""
    assert [*worked_in("capstone")] == [] and not any("capstone" in topic.workbooks for topic in TOPICS.values())


def repr_of(page):
    return page._repr_mimebundle_()["text/plain"]
