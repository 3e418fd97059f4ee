"""Holds every question to its rules before a learner sees it: run `python -m brimwork.exercise.build` after adding one.

A question is refused when its key is not marked right, a slip gets no diagnosis of its own, two slips give one number, a slip or a wrong way with the working
would be accepted, or a sentence for the learner is missing; and where its file cannot be read, a unit is not known, or its code stands twice.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Iterator

from brimwork import expression, topics, units
from brimwork.exercise import arithmetic, bank
from brimwork.exercise.advice import advised, bids
from brimwork.exercise.bank import Written
from brimwork.exercise.choices import Choice, FindTheSlip, Order, Sequence, Tell
from brimwork.exercise.diagnosis import diagnose
from brimwork.exercise.question import Question, accepted, ask, too_near
from brimwork.exercise.written import FIRST, Numeric
from brimwork.expression import DeclarationError
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError

SEEDS = (FIRST, 2, 3, 4)
_SENTENCE = re.compile(r"[A-Z'0-9].*[.?!]", re.DOTALL)


def faults(declared: Written | Formula) -> list[str]:
    """Everything that is wrong with a question; nothing when it may be asked."""
    sentences = [slip.feedback for slip in declared.slips] if isinstance(declared, Formula) else declared.sentences
    found = [f"not a full sentence for the learner: '{text}'" for text in sentences if not _SENTENCE.fullmatch(text) or len(text.split()) < 3]
    try:
        found += _of_numbers(declared) if isinstance(declared, Formula | Numeric) else _of_choices(declared)
    except (DeclarationError, InputError, ValueError, ArithmeticError) as error:  # a unit that is not known, in whatever part of the question
        found.append(str(error))
    return found


def _of_numbers(declared: Numeric | Formula) -> Iterator[str]:
    if isinstance(declared, Numeric):
        yield from _of_declaration(declared)
    elif unknown := list(_letters_of_slips(declared)):
        yield from unknown
        return
    varies = isinstance(declared, Formula) or declared.varies
    for seed in SEEDS if varies else SEEDS[:1]:
        try:
            question = ask(declared, seed) if isinstance(declared, Formula) else declared.pose(seed)
            list(question.lines())
        except (DeclarationError, InputError, ValueError) as error:
            yield f"numbers {seed}: {error}"
            return
        yield from (f"numbers {seed}: {fault}" for fault in of_question(question))


def _letters_of_slips(formula: Formula) -> Iterator[str]:
    for slip in formula.slips:
        names, _ = expression.function_of(slip.equals)
        given = (*formula.inputs, *slip.also_given)
        if lost := [name for name in names if name not in given and not (name in QUANTITIES and QUANTITIES[name].value)]:
            yield f"the slip '{slip.equals}' uses {', '.join(lost)}, which has no value there: name it in also_given=, or use letters of the formula"


def of_question(question: Question) -> Iterator[str]:
    """What is wrong with a question on these numbers."""
    key = diagnose(question, question.typed(question.answer, 4))
    if not key.right:
        yield f"the key {question.typed(question.answer, 4)} is not marked right: {key.text}"
    for place, slip in enumerate(question.slips):
        typed = question.typed(slip.number, 4)
        middle = "" if slip.middle is None else units.write(slip.middle, question.middle.unit, 4) if question.middle else ""
        found = diagnose(question, typed, middle)
        if found.right:
            yield f"slip {place + 1} ({typed}) would be accepted"
        elif found.slip != place:
            yield f"slip {place + 1} ({typed}) gets no diagnosis of its own: {found.text}"
        if not bids(advised(question, slip)):
            yield f"slip {place + 1} says what was done, and not what to do instead: '{slip.feedback}'"
    for cause in accepted(question):
        yield f"a wrong way ({question.typed(cause.number, 4)}) would be accepted: {cause.way.sentence(question.said)}"
    for a, b in too_near(question):
        pair = " and ".join(f"{question.typed(one.number, 4)} ({one.feedback or 'the right one'})" for one in (a, b))
        yield f"two answers give nearly one number: {pair}. Ask for a value on the way with middle=, or choose other numbers"


def _of_declaration(declared: Numeric) -> Iterator[str]:
    """What is wrong with the text and the units of a hand-written question."""
    shown = arithmetic.holes(declared.text)
    if not declared.picture:
        yield from (
            f"the given value '{name}' does not stand in the text" for name in declared.given if name not in shown and name not in arithmetic.UNIT_WORDS
        )
    yield from (
        f"'{name}' is both a value of the question and a word for a unit" for name in {**declared.given, **declared.let} if name in arithmetic.UNIT_WORDS
    )
    if not declared.wrong or not declared.solution:
        yield "it needs known slips and a solution"
    if isinstance(declared.answer, str) and arithmetic.alone(declared.answer) is None:
        try:
            given = {name: units.parse(text).dimension for name, text in declared.given.items()}
            for name, text in declared.let.items():
                given[name] = arithmetic.dimension_typed(text, given)
            got, wanted = arithmetic.dimension_typed(declared.answer, given), units.unit(declared.unit).dimension
            if got != wanted:
                yield f"the answer comes out in {got}, but it is asked in {declared.unit or 'plain numbers'}"
        except (DeclarationError, InputError) as error:
            yield str(error)


def _of_choices(declared: Written) -> Iterator[str]:
    if isinstance(declared, Order) and len(declared.why) != len(declared.steps) - 1:
        yield f"{len(declared.steps)} steps need {len(declared.steps) - 1} sentences, not {len(declared.why)}"
        return
    if isinstance(declared, Tell):
        if len(declared.points) < 2:
            yield "a model sentence has at least two points to look for"
        return
    if isinstance(declared, FindTheSlip) and not 1 <= declared.slip <= len(declared.lines):
        yield f"there is no line {declared.slip}"
        return
    posed = declared.pose(FIRST)
    if isinstance(posed, Choice) and posed.mended:
        yield from (f"mended: {fault}" for fault in of_question(posed.mended))
    options = posed.items if isinstance(posed, Sequence) else posed.options if isinstance(posed, Choice) else ()
    if len({*options}) != len(options) or len(options) < 3:
        yield "it needs at least three choices, and no two the same"
    if isinstance(posed, Sequence):
        key = " ".join(str(place + 1) for place in posed.right)
        turned = " ".join(reversed(key.split()))
        right, wrong = diagnose(posed, key).right, diagnose(posed, turned).kind
        if not right or wrong != "slip":
            yield "the right order is not marked right, or its reverse is"
    elif isinstance(posed, Choice):
        kinds = [diagnose(posed, str(place + 1)).kind for place in range(len(options))]
        if [place for place, kind in enumerate(kinds) if kind == "right"] != [posed.right]:
            yield "the right choice is not the only one marked right"


def build() -> int:
    """Print every question that may not be asked; 1 when there is one."""
    refused = 0
    try:
        written = bank.questions()
    except DeclarationError as error:
        print(error)
        return 1
    for name, declared in {**written, **topics.formulas()}.items():
        for fault in faults(declared):
            refused += 1
            print(f"{name}: {fault}")
    print(f"{len(written)} written questions and {len(topics.formulas())} formulas: {refused or 'no'} fault{'' if refused == 1 else 's'}")
    return 1 if refused else 0


if __name__ == "__main__":
    sys.exit(build())
