"""What topic workbooks teach and ask: every letter of a derivation is named, every derivation that is opened is drawn, nothing is asked before it is taught."""

import ast
import re

import pytest

from brimwork import topics, typeset
from brimwork.derivation import derived
from brimwork.drawing.layout import Words, layout
from brimwork.drawing.marks import width_of
from brimwork.drawing.pictures.steps_drawn import SKETCHED
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import contents, pages

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
