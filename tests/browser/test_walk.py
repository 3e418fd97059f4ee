"""A weak student goes through whole lessons in the real browser, on a screen 1024 dots wide (`walk.py`, which goes through any of them, and through all by command);
and every box, list and choice of a page says to those who have it read to them what is asked.
"""

import pytest
from axe_playwright_python.sync_playwright import Axe
from walk import ALIVE, Walk, walk

from brimwork.exercise import bank

# By kind of what takes an answer: how many there are, and those that do not say what is asked.
_TIED = """() => { const told = one => (one.getAttribute('aria-describedby') ?? one.getAttribute('aria-labelledby') ?? '').split(' ').filter(Boolean)
    .map(id => document.getElementById(id)?.innerText ?? '').join(' ').trim();
  const asked = [...document.querySelectorAll('.brimwork-asked')].map(one => one.closest('.brimwork'));
  const mine = one => asked.includes(one.closest('.brimwork'));
  const all = kind => [...document.querySelectorAll(`main ${kind}`)].filter(mine);
  return Object.fromEntries(['input[type=text]', 'textarea', 'select', '.widget-radio-box'].map(kind =>
    [kind, [all(kind).length, all(kind).filter(one => told(one).length < 20).map(one => one.outerHTML.slice(0, 120))]])); }"""


@pytest.fixture
def plain(plain):
    plain.set_viewport_size({"width": 1024, "height": 900})
    return plain


@pytest.mark.parametrize("name", ["cost", "ground"])
def test_a_weak_student_comes_through_a_lesson_and_finds_all_of_it_again(plain, served, name):
    going = walk(plain, served[0], plain.start, name)
    assert going.met == [] and going.pressed > 30


def test_a_walk_notes_a_right_answer_that_is_refused_and_words_that_lie_over_others(plain, served, monkeypatch):
    going = Walk(plain, served[0], plain.start, "cost")
    going.open()
    cell, call = next((cell, call) for cell, call in going.cells() if call.name == "puzzle")
    posed = bank.pose(call.words[0], 1)
    monkeypatch.setattr("walk.SOON", 2_000)  # it never comes
    going.told_apart(cell, cell.get_by_role("textbox").first, type(posed)(**{**vars(posed), "answer": posed.answer * 0.9}), "a puzzle with a false key")
    assert any("is not taken" in one for one in going.met)
    over = "<p style=position:absolute>words over words that were there before</p>"
    cell.evaluate("(cell, over) => cell.insertAdjacentHTML('afterbegin', over)", over)
    going.met.clear()
    going.looked_at()
    assert any("lies over" in one for one in going.met)


def test_what_is_asked_is_read_out_with_every_box_list_and_choice(plain):
    plain.goto(f"{plain.start}page/cost")
    plain.wait_for_selector(ALIVE)
    plain.wait_for_function("() => document.querySelectorAll('.widget-radio-box[role=radiogroup]').length > 1")
    found = plain.evaluate(_TIED)
    assert all(count for count, _ in found.values()) and [bad for _, bad in found.values() if bad] == [], found
    rules = Axe().run(
        plain, options={"runOnly": ["aria-valid-attr-value", "aria-allowed-attr", "aria-required-children", "label", "select-name", "duplicate-id-aria"]}
    )
    assert rules.response["violations"] == []
