"""What an answers file says about its own answers, worked out again: only what was typed is believed."""

from __future__ import annotations

from brimwork import system
from brimwork.exercise import answers, bank
from brimwork.exercise.bank import Posed
from brimwork.exercise.diagnosis import ONCE_SHOWN, diagnose
from brimwork.expression import DeclarationError
from brimwork.units import InputError

_MENDED = " mended"
_NOT_ANSWERS = ("estimate", "skipped", "sure", "carried over", "learner", "handed in", "kept", answers.FRESH, answers.POINTS)


def _asked(entry: dict) -> Posed | None:
    """The question that an entry answers, on its numbers, in the units in which it was asked; None where the kit cannot ask it again."""
    first = None
    for units in (system.current(), system.other(system.current())):
        with system.working_in(units):
            posed = _posed(entry)
        if posed is not None and getattr(posed, "numbers", {}) == entry["numbers"]:
            return posed
        first = first or posed
    return first


def _posed(entry: dict) -> Posed | None:
    name = entry["exercise"]
    try:
        if name.endswith(_MENDED):
            return getattr(bank.pose(name.removesuffix(_MENDED), entry["seed"]), "mended", None)
        return bank.pose(name, entry["seed"])
    except (InputError, DeclarationError, ValueError, AttributeError):
        return None


def found(entry: dict, held: list[dict]) -> str:
    """What kind of answer an entry is: worked out again where the kit can ask the question again, else as the file says. `held` is the whole file."""
    if entry["kind"] in _NOT_ANSWERS or (question := _asked(entry)) is None:
        return entry["kind"]
    kind = diagnose(question, entry["answer"], entry["middle"]).kind
    if kind == "right" and answers.was_shown(held[: _place(entry, held)], entry["exercise"], entry["seed"]):
        return ONCE_SHOWN
    if kind == "right":
        return ONCE_SHOWN if entry["kind"] == ONCE_SHOWN else "right"
    return "carried" if entry["kind"] == "carried" else kind


def _place(entry: dict, held: list[dict]) -> int:
    return next((place for place, one in enumerate(held) if one is entry), len(held))


def doubtful(entry: dict, held: list[dict]) -> bool:
    """Whether the file says "right" of an answer that is not."""
    return entry["kind"] == "right" != found(entry, held)


def counted_answers(held: list[dict]) -> str:
    """How many entries there are, and how many questions are right by their last answer, in words for page and paper."""
    right, entries = sum(found(entry, held) == "right" for entry in answers.last(held).values()), len(held)
    return f"{entries} {'entry' if entries == 1 else 'entries'}, and {right} {'question' if right == 1 else 'questions'} right at the last try"
