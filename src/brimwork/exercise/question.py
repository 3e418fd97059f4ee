"""A question with numbers: what is asked, the right number, and the number that each known slip gives; drawn and screened so that slips show.

A question comes from a formula (`ask`) or from a hand-written declaration (`written`).
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from itertools import combinations

from brimwork import typeset
from brimwork.conditions import holds
from brimwork.drawing.records import Sheet
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError, convert, number, read, write

TOLERANCE = 0.012  # an answer of three figures, with a little rounding on the way
APART = 3 * TOLERANCE
DRAWS = 400


@dataclass(frozen=True)
class Given:
    """A value that the question states: SI, and the unit it is shown in."""

    value: float
    unit: str

    def __str__(self) -> str:
        return write(self.value, self.unit, None)


@dataclass(frozen=True)
class Known:
    """A known slip: the number it gives (SI), a full sentence for the learner, and its middle value where the question asks for one."""

    number: float
    feedback: str
    middle: float | None = None


@dataclass(frozen=True)
class Middle:
    """A value on the way that tells apart slips which end in one number: its name, its unit, and the right number (SI)."""

    name: str
    unit: str
    number: float


@dataclass(frozen=True)
class Question:
    """One question with numbers. `close` is an absolute tolerance (SI), or 0 for the usual relative one.

    again     the answer worked again from other given values (SI)
    lines     the worked solution, line by line; the last gives the answer
    unit      the unit asked for; `label` a word that stands in for one, such as "bags"; `strict`: no other unit will do
    like      the formula that the question is about, with its letters (SI): what an answer would lead to can be told from it
    """

    code: str
    seed: int
    text: str
    name: str
    unit: str
    given: dict[str, Given]
    answer: float
    slips: tuple[Known, ...]
    again: Callable[[dict[str, float]], float]
    lines: Callable[[], Iterable[str]]
    label: str = ""
    close: float = 0.0
    varies: bool = True
    middle: Middle | None = None
    strict: bool = False
    sheet: Sheet | None = None
    like: tuple[str, dict[str, float]] | None = None

    @property
    def band(self) -> Callable[[float], float]:
        """How far a number may lie from a target and still be taken for it."""
        return lambda target: self.close or TOLERANCE * abs(target)

    @property
    def numbers(self) -> dict[str, str]:
        return {name: str(given) for name, given in self.given.items()}

    def typed(self, value: float, digits: int | None = 3) -> str:
        """An SI value as a learner would type it: three figures, or all that count where the tolerance is absolute."""
        if self.close:
            value, digits = round(value / self.close * 10) * self.close / 10, None
        return f"{number(convert(value, self.unit), digits)} {self.label or self.unit}".strip()


def in_words(unit: str) -> str:
    """A unit as one asks for an answer in it: "in days", "in money"; most are asked for by their sign."""
    return {"day": "days", "cur": "money"}.get(unit, unit)


def apart(question: Question) -> bool:
    """Whether the right number and those of all slips lie at least three tolerances apart, but for slips that a middle value tells apart."""
    return not any(True for _ in too_near(question))


def too_near(question: Question) -> Iterator[tuple[Known, Known]]:
    """Pairs of numbers, the right one among them, that one answer could mean."""
    right = Known(question.answer, "", None)
    for a, b in combinations((right, *question.slips), 2):
        if not _separate(a.number, b.number, question.close) and not _told_by_middle(question, a, b):
            yield a, b


def _separate(a: float, b: float, close: float) -> bool:
    return abs(a - b) > (3 * close if close else APART * max(abs(a), abs(b)))


def _told_by_middle(question: Question, a: Known, b: Known) -> bool:
    return question.middle is not None and None not in (a.middle, b.middle) and _separate(a.middle, b.middle, 0.0)


def first_apart(drawn: Iterable[Question | None]) -> Question | None:
    """The first question of a bounded series of draws whose numbers lie apart."""
    return next((question for question in drawn if question and apart(question)), None)


def ask(formula: Formula, seed: int) -> Question:
    """A question on `formula`; the same seed gives the same numbers. Raises ValueError when no numbers keep its slips apart."""
    draw = random.Random(f"{formula.name} {seed}")
    question = first_apart(_drawn(formula, seed, draw) for _ in range(DRAWS))
    if question is None:
        raise ValueError(f"no numbers of the usual ranges keep the slips of '{formula.name}' apart: merge the slips that give one number")
    return question


def ask_on(formula: Formula, seed: int, numbers: dict[str, str]) -> Question:
    """The question on values as they were written out. Raises InputError, ValueError, ArithmeticError."""
    return _posed(formula, seed, {name: read(text, QUANTITIES[name].metric, name) for name, text in numbers.items()})


def _drawn(formula: Formula, seed: int, draw: random.Random) -> Question | None:
    extra = [name for slip in formula.slips for name in slip.also_given]
    values = {name: _value(formula, name, draw) for name in dict.fromkeys((*formula.inputs, *extra))}
    if not all(holds(condition, values) for condition in formula.where):
        return None
    try:
        return _posed(formula, seed, values)
    except (InputError, ArithmeticError, ValueError):
        return None


def _posed(formula: Formula, seed: int, values: dict[str, float]) -> Question:
    row, constants = formula.quantity, {name: QUANTITIES[name].constant for name in formula.constants}
    return Question(
        code=formula.name,
        seed=seed,
        text=_text(formula, values),
        name=row.short_name,
        unit=row.metric,
        given={name: Given(value, QUANTITIES[name].metric) for name, value in values.items()},
        answer=formula(**formula.only(values)),
        slips=tuple(Known(slip.number(values | constants), slip.feedback) for slip in formula.slips),
        again=lambda changed: formula(**formula.only(changed)),
        lines=lambda: typeset.working(formula.work(**formula.only(values)), typeset.PLAIN),
        close=read(formula.close, row.metric, formula.result) if formula.close else 0.0,
        like=(formula.name, formula.only(values)),
    )


def _text(formula: Formula, values: dict[str, float]) -> str:
    given = "; ".join(f"{QUANTITIES[name].short_name} {name} = {QUANTITIES[name].metric_text(value, None)}" for name, value in values.items())
    result = formula.quantity
    unit = f" in {in_words(result.metric)}" if result.metric else ""
    near = f"to {formula.close}" if formula.close else "to three figures"
    return f"Given: {given}. Find the {result.name}, {formula.result}{unit}, {near}."


def _value(formula: Formula, name: str, draw: random.Random) -> float:
    """A number that stands on a step of its range, exactly as the question prints it."""
    low, high, step = formula.range(name)
    steps = max(round((high - low) / step), 1)
    text = QUANTITIES[name].metric_text(low + draw.randint(0, steps) * step, None)
    return read(text, QUANTITIES[name].metric, name)
