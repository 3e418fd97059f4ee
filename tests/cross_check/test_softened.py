"""A sample of the search in `softened.py`, and a planted fault, so that we know that it finds one."""

import random

import pytest
from invented import KINDS
from product import fields
from softened import BELIEVED_OF_THEM, MAY, THERE, alone, believed, together
from verdicts import CHECKS


@pytest.mark.parametrize("kind", KINDS)
def test_no_word_limit_assumption_or_total_makes_a_check_of_safety_pass(kind):
    draw = random.Random(f"sample {kind}")
    found = {pair: text for pair, text in alone(kind, keys=draw.sample(believed(kind), 25)).items() if pair not in MAY}
    assert not found
    assert together(kind, 30, seed=5) == []


def test_a_word_that_beats_a_number_is_found(monkeypatch):
    monkeypatch.setattr("brimwork.design.judged.grading.OVERRULED", {})
    assert ("C45", "answers.duct") in alone("overflowing vessel", keys=["answers.duct"])


def test_every_value_that_the_search_sets_apart_is_one():
    known = {key for kind in KINDS for key in fields(kind)}
    assert known >= BELIEVED_OF_THEM | THERE | {key for _, key in MAY}
    assert {check for check, _ in MAY} <= set(CHECKS)
