"""What a typed answer says: right, a known slip, a wrong unit, or plainly no diagnosis. Silence beats a wrong accusation."""

from __future__ import annotations

from dataclasses import dataclass

from brimwork.exercise.question import TOLERANCE, Question
from brimwork.units import InputError, parse


@dataclass(frozen=True)
class Diagnosis:
    """kind: "right", "slip", "unit", "none" or "unread"; `echo` is how the answer was read."""

    kind: str
    message: str
    echo: str = ""


def diagnose(question: Question, text: str) -> Diagnosis:
    """Read an answer with the bounded reader and compare it with the right number and with every known slip. Never raises."""
    try:
        reading = parse(text)
    except InputError as error:
        return Diagnosis("unread", f"I could not read that: {error}.")
    wanted, echo = question.formula.quantity, f"I read this as {reading}."
    if not reading.unit and wanted.metric:
        return Diagnosis("unit", f"The unit is missing. Type one, such as {wanted.metric}.", echo)
    if reading.dimension != wanted.dimension:
        return Diagnosis("unit", f"That is in {reading.dimension}; the {wanted.name} is measured in {wanted.metric or 'plain numbers'}.", echo)
    if _near(reading.value, question.answer):
        return Diagnosis("right", f"Right: {wanted.both(question.answer)}.", echo)
    found = [(abs(reading.value - number), slip) for number, slip in question.slips if _near(reading.value, number)]
    if found:
        return Diagnosis("slip", min(found, key=lambda pair: pair[0])[1].feedback, echo)
    size = "too large" if reading.value > question.answer else "too small"
    return Diagnosis(
        "none", f"The unit is of the right kind, the number is {size}. I do not know which slip this is: go through the working line by line.", echo
    )


def _near(value: float, target: float) -> bool:
    return abs(value - target) <= TOLERANCE * abs(target)
