"""Help in four rungs: what is right; the slip as a question; the matching step; the whole solution. Nobody is told "wrong"."""

from __future__ import annotations

from brimwork.exercise.bank import Posed
from brimwork.exercise.choices import Choice, Sequence, Telling
from brimwork.exercise.diagnosis import Diagnosis
from brimwork.exercise.question import Question, in_words

TOLD = {
    "slip": 2,
    "unit": 2,
    "slip and unit": 2,
    "way": 2,
    "none": 1,
    "input": 2,
    "rounded": 2,
    "near": 2,
}  # rungs that the answer to an answer has given already


def ladder(question: Posed, found: Diagnosis | None = None) -> tuple[str, ...]:
    """The rungs for a question, and for what the last answer was found to be."""
    if isinstance(question, Choice):
        return ("Rule out those that cannot be, and say why.", f"It is this: {_sentence(question.options[question.right])} {question.because}")
    if isinstance(question, Sequence):
        steps = ". Then ".join(question.items[place] for place in question.right)
        return (
            "Early comes what takes one look, and what must be safe before the next step. Late comes what takes long, or makes another step impossible.",
            f"In order: {steps}.",
        )
    if isinstance(question, Telling):
        return ("Say what changes, and what makes it change.", f"It has these points: {'; '.join(question.points)}.")
    return (_kind(question, found), _asked(question, found), _step(question), _whole(question))


def _kind(question: Question, found: Diagnosis | None) -> str:
    if found and found.good:
        return found.good
    if not question.unit:
        return f"What is asked for is {'a count of ' + question.label if question.label else 'a plain number'}."
    return f"What is asked for, the {question.name}, is measured in {in_words(question.unit)}. Write the unit beside each number as you go."


def _asked(question: Question, found: Diagnosis | None) -> str:
    if found and found.slip is not None:
        return _happened(question.slips[found.slip].feedback)
    if found and found.kind == "way" and len(found.causes) == 1 and found.causes[0].startswith("You "):
        return _happened(found.causes[0].partition(":")[0])
    if found and found.kind == "near":
        return "Where did you round, and is a small part still missing?"
    if found and found.kind == "rounded":
        return "How many figures does the question ask for?"
    if found and found.kind == "unit":
        return "Is the unit you typed the unit of your number?"
    used = question.working.used if question.working else frozenset(question.given)
    if len(question.given) < 2:
        return "Which step comes first, and in which unit does it come out?"
    if len(used) < len(question.given):
        return "Not every value that is given belongs here. Which ones do, and did you put each in with its unit?"
    return "Which given value have you not used yet, and did you put each one in with its unit?"


def _happened(sentence: str) -> str:
    first = sentence.partition(". ")[0].rstrip(".")
    return f"Is this what happened: {first[0].lower()}{first[1:]}?"


def _step(question: Question) -> str:
    """The first half of the working: of a formula the formula alone, so that putting numbers in is left to do."""
    lines = list(question.lines())
    return " ".join(_sentence(line) for line in lines[: max(len(lines) // 2, 1)])


def _whole(question: Question) -> str:
    fresh = " Now take new numbers and do it once more." if question.varies else ""
    return " ".join(_sentence(line) for line in question.lines()) + f" So the answer is {question.told}.{fresh}"


def _sentence(line: str) -> str:
    return line if line.rstrip().endswith((".", ":", "?", "!")) else f"{line}."
