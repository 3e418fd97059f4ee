"""A question made from a formula: numbers drawn from the usual ranges and screened, so that every known slip shows in the answer."""

from __future__ import annotations

import random
from dataclasses import dataclass
from functools import cached_property

from brimwork.formula import Formula, Slip, holds
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError, read

TOLERANCE = 0.012  # an answer of three figures, with a little rounding on the way
APART = 3 * TOLERANCE
DRAWS = 400


@dataclass(frozen=True)
class Question:
    """A formula with numbers (SI, letters in `shown` order) and the answer wanted in the metric unit of the result."""

    formula: Formula
    values: dict[str, float]
    answer: float

    @cached_property
    def slips(self) -> tuple[tuple[float, Slip], ...]:
        """What each known slip gives on these numbers (SI)."""
        return tuple((slip.number(self.values | _constants(self.formula)), slip) for slip in self.formula.slips)

    @property
    def text(self) -> str:
        given = "; ".join(f"{QUANTITIES[name].name} {name} = {QUANTITIES[name].metric_text(value, None)}" for name, value in self.values.items())
        result = self.formula.quantity
        unit = f" in {result.metric}" if result.metric else ""
        return f"Given: {given}. Find the {result.name}, {self.formula.result}{unit}, to three figures."


def ask(formula: Formula, seed: int) -> Question:
    """A question on `formula`; the same seed gives the same numbers. Raises ValueError when no numbers keep its slips apart."""
    draw = random.Random(f"{formula.name} {seed}")
    for _ in range(DRAWS):
        question = _drawn(formula, draw)
        if question and _screened(question):
            return question
    raise ValueError(f"no numbers of the usual ranges keep the slips of '{formula.name}' apart: merge the slips that give one number")


def _drawn(formula: Formula, draw: random.Random) -> Question | None:
    extra = [name for slip in formula.slips for name in slip.also_given]
    values = {name: _value(formula, name, draw) for name in dict.fromkeys((*formula.inputs, *extra))}
    if not all(holds(condition, values) for condition in formula.where):
        return None
    try:
        return Question(formula, values, formula(**formula.only(values)))
    except InputError:
        return None


def _value(formula: Formula, name: str, draw: random.Random) -> float:
    """A number that stands on a step of its range, exactly as the question prints it."""
    low, high, step = formula.range(name)
    steps = max(round((high - low) / step), 1)
    text = QUANTITIES[name].metric_text(low + draw.randint(0, steps) * step, None)
    return read(text, QUANTITIES[name].metric, name)


def _screened(question: Question) -> bool:
    numbers = [question.answer, *(number for number, _ in question.slips)]
    return all(abs(a - b) > APART * max(abs(a), abs(b)) for i, a in enumerate(numbers) for b in numbers[:i])


def _constants(formula: Formula) -> dict[str, float]:
    return {name: QUANTITIES[name].constant for name in formula.constants}
