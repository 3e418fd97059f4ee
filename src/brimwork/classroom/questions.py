"""A question as a class is asked it: points, a value on the way, and the question itself on a learner's numbers."""

from __future__ import annotations

from dataclasses import dataclass, replace

from brimwork import topics
from brimwork.exercise import bank
from brimwork.exercise.bank import Posed
from brimwork.exercise.blanks import answered
from brimwork.exercise.choices import Choice, Sequence
from brimwork.exercise.diagnosis import Diagnosis, diagnose
from brimwork.exercise.pieces import Worked, worked
from brimwork.exercise.question import TOLERANCE, Middle, Question
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError
from brimwork.units import read as read_quantity


@dataclass(frozen=True)
class SetQuestion:
    """`code` is a question code or the name of a formula; `way` the letter of a value on the way; `alike`: all may have the same numbers."""

    code: str
    points: float
    way: str = ""
    alike: bool = False

    def posed(self, seed: int, numbers: dict[str, str] | None = None) -> Posed:
        """The question on the numbers of that seed, or on numbers as they were handed out. Raises InputError."""
        question = bank.pose(self.code, seed) if numbers is None else bank.pose_on(self.code, seed, numbers)
        return replace(question, middle=self._middle(question)) if self.way and isinstance(question, Question) else question

    def _middle(self, question: Question) -> Middle:
        found, place = self._working(question)
        piece = found.pieces[place]
        return Middle(
            f"{piece.key}, the {QUANTITIES[piece.key].plain_name}" if piece.named else "value on the way", found.asked_in(piece), found.found[piece.key]
        )

    def _working(self, question: Question) -> tuple[Worked, int]:
        formula = topics.find(self.code)
        found = worked(formula, formula.only(question.letters))
        return found, [piece.key for piece in found.pieces].index(self.way)

    def diagnosed(self, question: Posed, text: str, middle: str = "") -> Diagnosis:
        """What an answer tells; one that follows rightly from a wrong value on the way is `carried`. Never raises."""
        found = diagnose(question, text, middle)
        if self.way and isinstance(question, Question) and not found.right and middle.strip() and (own := self._own_middle(question, middle)) is not None:
            working, place = self._working(question)
            follows = answered(working, len(working.pieces) - 1, question.seed, text, {place: own})
            if follows.kind == "carried":
                return Diagnosis("carried", "This follows rightly from your value on the way. Correct that one first.", follows.echo)
        return found

    def middle_right(self, question: Posed, middle: str) -> bool:
        """Whether the value on the way is right."""
        value, wanted = self._own_middle(question, middle), getattr(question, "middle", None)
        return value is not None and wanted is not None and abs(value - wanted.number) <= TOLERANCE * abs(wanted.number)

    @staticmethod
    def _own_middle(question: Posed, middle: str) -> float | None:
        wanted = getattr(question, "middle", None)
        if wanted is None or not middle.strip():
            return None
        try:
            return read_quantity(middle, wanted.unit, wanted.name)
        except InputError:
            return None


def key(question: Posed) -> str:
    """The right answer as a key prints it."""
    if isinstance(question, Question):
        return question.typed(question.answer, 4)
    if isinstance(question, Choice):
        return f"{'abcdefghij'[question.right]}) {question.options[question.right]}"
    if isinstance(question, Sequence):
        return " ".join(str(place + 1) for place in question.right)
    return question.model


def asked_text(question: Posed) -> list[str]:
    """The question as it is printed: its text, then what there is to choose from or to put in order."""
    lines = [question.text]
    lines += [f"{'abcdefghij'[place]}) {option}" for place, option in enumerate(getattr(question, "options", ()))]
    lines += [f"{place + 1}. {item}" for place, item in enumerate(getattr(question, "items", ()))]
    return lines


def worked_out(question: Posed) -> list[str]:
    """The full working, line by line."""
    if isinstance(question, Question):
        return [*question.lines()]
    if hasattr(question, "because"):
        return [question.because]
    return [*question.why] if hasattr(question, "why") else [f"It has these points: {'; '.join(question.points)}."]
