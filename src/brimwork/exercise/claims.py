"""What an answers file says about its own answers, worked out again: only what was typed is believed."""

from __future__ import annotations

from brimwork import system
from brimwork.exercise import answers, bank
from brimwork.exercise.bank import Posed
from brimwork.exercise.choices import Choice
from brimwork.exercise.diagnosis import ONCE_SHOWN, diagnose
from brimwork.expression import DeclarationError
from brimwork.units import InputError

_MENDED = " mended"
_NOT_ANSWERS = ("estimate", "skipped", "sure", "carried over", "learner", "handed in", "kept", answers.FRESH, answers.POINTS, answers.REASON)
GUESSED = "after others"  # a choice that is right, that day after another one, and without a reason


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
        return ONCE_SHOWN if entry["kind"] == ONCE_SHOWN else GUESSED if wants_reason(question) and _guessed(entry, held) else "right"
    return "carried" if entry["kind"] == "carried" else kind


def wants_reason(question: Posed) -> bool:
    """Whether a right answer may have come by trying one after another: a choice with nothing to mend."""
    return isinstance(question, Choice) and question.mended is None


def chose_others(name: str, held: list[dict], day: str) -> bool:
    """Whether somebody chose something else for this question on that day."""
    return any(one["exercise"] == name and one["kind"] == "slip" and one["at"][:10] == day for one in held)


def _guessed(entry: dict, held: list[dict]) -> bool:
    place, name = _place(entry, held), entry["exercise"]
    reasoned = any(one["exercise"] == name and one["kind"] == answers.REASON for one in held[place:])
    return not reasoned and chose_others(name, held[:place], entry["at"][:10])


def _place(entry: dict, held: list[dict]) -> int:
    return next((place for place, one in enumerate(held) if one is entry), len(held))


def doubtful(entry: dict, held: list[dict]) -> bool:
    """Whether the file says "right" of an answer that is not."""
    return entry["kind"] == "right" and found(entry, held) not in ("right", GUESSED)


def counted_answers(held: list[dict]) -> str:
    """How many entries there are, and how many questions are right by their last answer, in words for page and paper."""
    right, entries = sum(found(entry, held) == "right" for entry in answers.last(held).values()), len(held)
    return f"{entries} {'entry' if entries == 1 else 'entries'}, and {right} {'question' if right == 1 else 'questions'} right at the last try"
