"""A question with numbers: what is asked, the right number, and the number that each known slip gives; drawn and screened so that slips show.

A question comes from a formula (`ask`) or from a hand-written declaration (`written`).
"""

from __future__ import annotations

import ast
import math
import random
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations

from brimwork import expression, system, typeset
from brimwork.drawing.records import Sheet
from brimwork.exercise import sensible
from brimwork.exercise.causes import Cause, WayOfWorking, written
from brimwork.exercise.roughly import passing_roughly
from brimwork.exercise.shortcuts import shortcuts
from brimwork.exercise.twice import mistaken
from brimwork.expression import DeclarationError
from brimwork.formula import Formula, Slip
from brimwork.nomenclature import QUANTITIES
from brimwork.quantity import days
from brimwork.roots import solve
from brimwork.units import InputError, convert, number, read, unit, write

RIGHT_WITHIN = 0.0055  # three figures; of answers with every step rounded to three figures, 97 in 100 lie within this
TOLERANCE = 0.012  # how near a number lies to the right one, or to that of a known slip, with more rounding on the way
APART = 3 * TOLERANCE
DRAWS = 400
ENOUGH, FURTHER = 8, 40  # so many numbers by which no single wrong way passes, or so many draws, and the one with the fewest pairs is taken
STILL = 100  # so many draws where rough work passes with all before


@dataclass(frozen=True)
class GivenValue:
    """A value that the question states: SI, and the unit it is shown in."""

    value: float
    unit: str

    def __str__(self) -> str:
        return write(self.value, self.unit, None)


@dataclass(frozen=True)
class KnownWay:
    """A known slip: the number it gives (SI), a full sentence for the learner, and its middle value where the question asks for one.

    `also` holds a number that the same slip gives to those who work in other units, where the slip changes the kind of quantity.
    """

    number: float
    feedback: str
    middle: float | None = None
    also: float | None = None

    @property
    def numbers(self) -> tuple[float, ...]:
        return (self.number,) if self.also is None else (self.number, self.also)


@dataclass(frozen=True)
class Middle:
    """A value on the way that tells apart slips which end in one number: its name, its unit, and the right number (SI)."""

    name: str
    unit: str
    number: float


@dataclass(frozen=True)
class Question:
    """One question with numbers. `close` is an absolute tolerance (SI), or 0 for the relative one of `within`.

    again     the answer worked again from other given values (SI)
    lines     the worked solution, line by line; the last gives the answer
    unit      the unit asked for; `label` a word that stands in for one, such as "bags"; `strict`: no other unit will do
    like      the formula that the question is about, with its letters (SI): what an answer would lead to can be told from it
    working   the answer as a tree over the given values, from which wrong ways follow; None where there is none
    """

    code: str
    seed: int
    text: str
    name: str
    unit: str
    given: dict[str, GivenValue]
    answer: float
    slips: tuple[KnownWay, ...]
    again: Callable[[dict[str, float]], float]
    lines: Callable[[], Iterable[str]]
    label: str = ""
    close: float = 0.0
    within: float = RIGHT_WITHIN
    varies: bool = True
    middle: Middle | None = None
    strict: bool = False
    sheet: Sheet | None = None
    like: tuple[str, dict[str, float]] | None = None
    working: WayOfWorking | None = None

    @property
    def causes(self) -> tuple[Cause, ...]:
        """Wrong ways that nobody declared, from the working's own tree, with the number (SI) that each gives."""
        return self.working.causes if self.working else ()

    @property
    def letters(self) -> dict[str, float]:
        """The letters (SI) of the formula that it is about; none where it is about none."""
        return self.like[1] if self.like else {}

    @property
    def said(self) -> Callable[[ast.expr], str]:
        """A part of the working in words."""
        return self.working.said if self.working else ast.unparse

    @property
    def band(self) -> Callable[[float], float]:
        """How far a number may lie from the right one and be right."""
        return lambda target: self.close or self.within * abs(target)

    @property
    def about(self) -> Callable[[float], float]:
        """How far a number may lie from that of a slip and still be taken for it."""
        return lambda target: self.close or TOLERANCE * abs(target)

    @property
    def numbers(self) -> dict[str, str]:
        return {name: str(given) for name, given in self.given.items()}

    def typed(self, value: float, digits: int | None = 3) -> str:
        """An SI value as a learner would type it: three figures, or all that count where the tolerance is absolute."""
        if self.close:
            value, digits = round(value / self.close * 10) * self.close / 10, None
        return f"{number(convert(value, self.unit), digits)} {self.label or self.unit}".strip()

    @property
    def told(self) -> str:
        """The right answer as it is told: whole where a whole number is asked for."""
        return f"{number(round(convert(self.answer, self.unit)))} {self.label}" if self.close and self.label else self.typed(self.answer)


def in_words(unit: str) -> str:
    """A unit as one asks for an answer in it: "in days", "in money"; most are asked for by their sign."""
    return _WORDS.get(unit, unit)


_WORDS = {
    "day": "days", "cur": "money", "in": "inches", "in2": "square inches", "in3": "cubic inches", "in/day": "inches a day", "in/h": "inches an hour",
}  # fmt: skip


def _apart(question: Question) -> bool:
    """Whether the right number and those of all slips lie at least three tolerances apart, but for slips that a middle value tells apart."""
    return not any(True for _ in too_near(question))


def too_near(question: Question) -> Iterator[tuple[KnownWay, KnownWay]]:
    """Pairs of numbers, the right one among them, that one answer could mean."""
    right = KnownWay(question.answer, "", None)
    for a, b in combinations((right, *question.slips), 2):
        if not all(_separate(one, other, question.close) for one in a.numbers for other in b.numbers) and not _told_by_middle(question, a, b):
            yield a, b


MARGIN = 1.5  # a wrong way that nobody declared lies at least this share of the tolerance away: three figures round off less than half of it


def accepted(question: Question) -> Iterator[Cause]:
    """Wrong ways whose number, typed in the unit asked for, would be taken for the right one, or nearly."""
    far, near, wanted = MARGIN * question.about(question.answer), _reach(question), unit(question.unit).dimension
    for cause in question.causes:
        if cause.way.kind != "rounded" and abs(cause.number - question.answer) <= (near if cause.way.kind == "shortcut" else far) and cause.typed_as(wanted):
            yield cause


def clean_draw(question: Question, likely: bool = False) -> bool:
    """Whether no wrong way would be accepted; with `likely`, of those alone that many people take."""
    return not any(cause.way.likely or not likely for cause in accepted(question))


def _separate(a: float, b: float, close: float) -> bool:
    return abs(a - b) > (3 * close if close else APART * max(abs(a), abs(b)))


def _told_by_middle(question: Question, a: KnownWay, b: KnownWay) -> bool:
    return question.middle is not None and a.middle is not None and b.middle is not None and _separate(a.middle, b.middle, 0.0)


def passing_pairs(question: Question) -> int:
    """How many pairs of things done wrong, typed in three figures, would be taken for right."""
    return mistaken(question.working, _reach(question)) if question.working else 0


def roughly(question: Question) -> int:
    """How many numbers of rough work, typed in three figures, would be taken for right."""
    return passing_roughly(question.working, _reach(question)) if question.working else 0


def _reach(question: Question) -> float:
    """How far from the right number another one may lie, and be taken for it once it is rounded to three figures (SI)."""
    if question.close or not question.answer:
        return question.band(question.answer)
    size = unit(question.unit).factor
    return question.band(question.answer) + 0.5 * 10.0 ** (math.floor(math.log10(abs(question.answer) / size)) - 2) * size


def first_apart(drawn: Iterable[Question | None]) -> Question | None:
    """The first question of a bounded series of draws whose numbers lie apart, by which no wrong way is taken for right, nor any two of them at once.

    Where there are none, those by which the fewest pass: of the likelier ways, then of all, then of rough work, then of pairs.
    """
    best, fewest, tried = None, (math.inf,) * 4, 0
    for count, question in enumerate(drawn):
        if fewest[1] == 0 and (tried >= ENOUGH or count > (STILL if fewest[2] else FURTHER)):
            break
        if question and _apart(question):
            passing = [cause.way for cause in accepted(question)]
            ways = (sum(way.likely and not way.far for way in passing), len(passing))
            if ways > fewest[:2]:
                continue
            rough = 0 if passing else roughly(question)
            tried += not passing and not rough
            score = (*ways, rough, 0 if passing or rough > fewest[2] else passing_pairs(question))
            if score < fewest:
                best, fewest = question, score
            if not any(score):
                break
    return best


def ask(formula: Formula, seed: int) -> Question:
    """A question on `formula`; the same seed gives the same numbers (see `sets`). Raises ValueError when no numbers keep its slips apart."""
    return posed(formula, seed, dict(_values(formula, seed, system.current())))


@lru_cache(maxsize=8192)
def _values(formula: Formula, seed: int, units: str) -> tuple[tuple[str, float], ...]:
    """The numbers (SI) of a seed in the `units` in use; looking for them takes longer than all the rest of a question."""
    draw = random.Random(f"{formula.name} {seed}")
    question = first_apart(_drawn(formula, seed, draw) for _ in range(DRAWS))
    if question is None:
        raise ValueError(f"no numbers of the usual ranges keep the slips of '{formula.name}' apart: merge the slips that give one number")
    return tuple((name, given.value) for name, given in question.given.items())


def ask_on(formula: Formula, seed: int, numbers: dict[str, str]) -> Question:
    """The question on values as they were written out. Raises InputError, ValueError, ArithmeticError."""
    return posed(formula, seed, {name: read(text, QUANTITIES[name].metric, name) for name, text in numbers.items()})


def sets(pose: Callable[[int], Question], most: int = 30) -> int:
    """How many different sets of numbers the seeds from 1 on give, counted up to `most`, over at most four times as many seeds.

    `pose` makes the question from a seed: `lambda seed: bank.pose("T04.1", seed)`. A class of thirty needs 30; 1 where the numbers are fixed.
    """
    seen: set[str] = set()
    for seed in range(1, 4 * most + 1):
        question = pose(seed)
        seen.add(str(question.numbers))
        if len(seen) >= most or not question.varies:
            break
    return len(seen)


def _drawn(formula: Formula, seed: int, draw: random.Random) -> Question | None:
    extra = [name for slip in formula.slips for name in slip.also_given]
    values = sensible.draw_sensible(formula, tuple(dict.fromkeys((*formula.inputs, *extra))), draw)
    try:
        return posed(formula, seed, values) if values and sensible.plausible(formula, values, formula(**formula.only(values))) else None
    except (InputError, ArithmeticError, ValueError):
        return None


def posed(formula: Formula, seed: int, values: dict[str, float]) -> Question:
    """The question on `formula` with these values (SI). Raises InputError, ArithmeticError or ValueError where it has none."""
    row, constants = formula.quantity, {name: QUANTITIES[name].fixed for name in formula.constants}
    return Question(
        code=formula.name,
        seed=seed,
        text=_text(formula, values),
        name=row.short_name,
        unit=row.here,
        given={name: GivenValue(value, QUANTITIES[name].here) for name, value in values.items()},
        answer=formula(**formula.only(values)),
        slips=tuple(_known(formula, slip, values, constants) for slip in formula.slips),
        again=lambda changed: formula(**formula.only(changed)),
        lines=lambda: typeset.working(formula.work(**formula.only(values)), typeset.PLAIN),
        close=read(formula.close, row.metric, formula.result) if formula.close else 0.0,
        like=(formula.name, formula.only(values)),
        working=_working(formula, {**values, **constants}, tuple(values)),
    )


def _known(formula: Formula, slip: Slip, values: dict[str, float], constants: dict[str, float]) -> KnownWay:
    """A slip with its number; one that changes the kind of quantity gives another number to those who work in the units that are shown."""
    in_si = slip.number(values | constants)
    if isinstance(in_si, complex):
        raise ArithmeticError(f"the slip '{slip.equals}' gives no real number on these values")
    as_shown = None if _keeps_its_kind(formula, slip) else _as_shown(formula, slip, values, constants)
    return KnownWay(in_si, slip.feedback) if as_shown is None else KnownWay(as_shown, slip.feedback, also=in_si)


@lru_cache(maxsize=4096)
def _keeps_its_kind(formula: Formula, slip: Slip) -> bool:
    try:
        return expression.dimension(expression.parse_expression(slip.equals)) == formula.dimension
    except DeclarationError:
        return False


@lru_cache(maxsize=1024)
def _unchecked(formula: Formula) -> Callable[..., float]:
    """The right-hand side, of any values."""
    return expression.numeric(formula.right, (*formula.inputs, *formula.constants))


def _as_shown(formula: Formula, slip: Slip, values: dict[str, float], constants: dict[str, float]) -> float | None:
    """What a slip comes to on the numbers as they are shown, made fit by the one factor that makes the right one fit; None where there is no such factor."""
    if formula.implicit:
        return None
    names, slipped = expression.function_of(slip.equals)
    right = _unchecked(formula)
    found = []
    for aside in (0.0, 0.1):  # a factor that holds for one set of values alone is none
        given = {name: value * (1 + aside * math.sin(place + 1.0)) for place, (name, value) in enumerate(values.items())}
        shown = {name: convert(value, QUANTITIES[name].here) for name, value in given.items()} | constants
        try:
            factor = formula(**formula.only(given)) / right(**{name: shown[name] for name in (*formula.inputs, *formula.constants)})
            found.append((factor, factor * slipped(**{name: shown[name] for name in names})))
        except (InputError, ArithmeticError, ValueError):
            return None
    (one, number), (other, _) = found
    return number if abs(one - other) <= 1e-9 * abs(one) else None


def _working(formula: Formula, values: dict[str, float], given: tuple[str, ...], tree: ast.expr | None = None) -> WayOfWorking:
    """The working of a formula, or of one line of it, over its letters: `values` holds given ones and constants (SI)."""
    return WayOfWorking(
        tree=tree or formula.right,
        values={"g": QUANTITIES["g"].fixed, **values},
        kinds={name: QUANTITIES[name].dimension for name in ("g", *values)} | ({formula.result: formula.dimension} if formula.implicit else {}),
        shown={name: QUANTITIES[name].here for name in given},
        shortcuts=() if formula.implicit or tree else shortcuts(formula.name),
        unit=formula.quantity.here,
        said=_in_words,
        solved=_by_trial(formula, values) if formula.implicit else None,
        result=formula.result,
    )


def _in_words(part: ast.expr) -> str:
    """A letter by its name, any other part as it is written."""
    if isinstance(part, ast.Name) and part.id in QUANTITIES:
        return f"{part.id} ({QUANTITIES[part.id].plain_name})"
    return written(part, None)


def _by_trial(formula: Formula, values: dict[str, float]) -> Callable[[Callable[[float], float]], float]:
    """Solves the equation of `formula` with another right-hand side. Raises InputError where nothing fits."""
    names = {name: value for name, value in values.items() if name in (*formula.inputs, *formula.constants)}
    ends = [expression.function_of(text) for text in formula.between]
    left = expression.numeric(formula.left, tuple(names), first=formula.result)
    low, high = (end(**{name: names[name] for name in letters}) for letters, end in ends)
    return lambda right: solve(lambda x: left(x, **names) - right(x), low, high)


def _text(formula: Formula, values: dict[str, float]) -> str:
    given = "; ".join(f"{QUANTITIES[name].short_name} {name} = {days(QUANTITIES[name].text_here(value, None))}" for name, value in values.items())
    result = formula.quantity
    asked = f" in {in_words(result.here)}" if result.here else ""
    near = f"to {system.near_there(formula.close, result.here)}" if formula.close else "to three figures"
    name = system.named_here(result.name)
    the = "" if name.startswith("the ") else "the "
    return f"Given: {given}. Find {the}{name}, {formula.result}{asked}, {near}."
