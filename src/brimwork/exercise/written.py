"""A hand-written question with a number for an answer: a few lines that say what is given, what is right, and what each known slip gives.

Expressions name the given values and work in SI; unit words multiply ("3*inch"). A number alone, 0.5 or "0.5", is in the unit asked for. Once the answer
and every slip are expressions, the question offers fresh numbers: "0.5" counts as one that is the same whatever the numbers are, 0.5 does not.
"""

from __future__ import annotations

import ast
import math
import random
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cached_property, lru_cache

from brimwork import system, units
from brimwork.drawing.records import Sheet
from brimwork.exercise import arithmetic
from brimwork.exercise.causes import WayOfWorking, names_in, written
from brimwork.exercise.question import DRAWS, GivenValue, KnownWay, Middle, Question, first_apart, in_words
from brimwork.exercise.shortcuts import shortcuts
from brimwork.expression import DeclarationError
from brimwork.quantity import days

FIRST = 1  # the seed that shows the numbers as they were written


@dataclass(frozen=True)
class Wrong:
    """A known slip: an expression (or a number in the unit asked for), a full sentence for the learner, and what the slip makes of the middle value.

    A number alone for the middle value is in the unit of that.
    """

    equals: str | float
    feedback: str
    middle: str = ""


@dataclass(frozen=True, eq=False)
class Numeric:
    """A question to be answered by a number.

    text      what is asked; "{d}" shows a given value
    given     name: value with unit, such as d="25 mm"; names stand in expressions
    answer    expression, or a number in `unit`; unit is what is asked for, label a word for a count ("bags")
    wrong     the known slips
    solution  the working, line by line; "{pi*d|mm}" shows a number on the way
    let       named numbers on the way, in order: {"v": "Q/(pi/4*d**2)"}
    keep      given values that stay as they are in fresh numbers; vary={"n": ("90 %", "97 %", "1 %")} gives one a range of its own
    where     conditions for sensible numbers, "a < b"
    close     an absolute tolerance, for whole numbers and levels: "0.5 mm"
    middle    (name, expression, unit) of a value on the way, asked for when slips end in one number
    strict    only the unit asked for will do, because changing the unit is the question
    picture   a drawing made from the given values (SI)
    uses      the formulas that it asks for, which a lesson teaches first; none where arithmetic and units are enough
    like      the formula that it is about, and what its letters are: ("speed in a pipe", {"Q": "Q", "d_pipe": "d"})
    """

    code: str
    text: str
    answer: str | float
    unit: str
    wrong: tuple[Wrong, ...]
    solution: tuple[str, ...]
    given: dict[str, str] = field(default_factory=dict)
    name: str = "answer"
    label: str = ""
    let: dict[str, str] = field(default_factory=dict)
    keep: tuple[str, ...] = ()
    vary: dict[str, tuple[str, str, str]] = field(default_factory=dict)
    where: tuple[str, ...] = ()
    close: str = ""
    middle: tuple[str, str, str] | None = None
    strict: bool = False
    picture: Callable[[dict[str, float]], Sheet] | None = None
    like: tuple[str, dict[str, str]] | None = None
    uses: tuple[str, ...] = ()

    @property
    def varies(self) -> bool:
        """Whether the question can have other numbers."""
        fixed = isinstance(self.answer, float | int) or any(isinstance(wrong.equals, float | int) for wrong in self.wrong)
        return not fixed and bool(self.given.keys() - {*self.keep})

    @property
    def sentences(self) -> tuple[str, ...]:
        return tuple(wrong.feedback for wrong in self.wrong)

    def pose(self, seed: int) -> Question:
        """The question with numbers: as written for the first seed, else drawn. Raises DeclarationError."""
        if seed == FIRST or not self.varies:
            return self._with({name: self._given(name, text) for name, text in self.given.items()}, seed)
        return self._with(_found(self, seed, system.current()), seed)

    def pose_on(self, seed: int, numbers: dict[str, str]) -> Question:
        """The question on values as they were written out. Raises DeclarationError, InputError."""
        return self._with({name: self._given(name, numbers[name]) for name in self.given}, seed)

    def _given(self, name: str, text: str) -> GivenValue:
        reading = units.parse(text)
        return GivenValue(reading.value, reading.unit)

    def _drawn(self, seed: int, draw: random.Random) -> Question | None:
        given = {name: self._vary(name, text, draw) for name, text in self.given.items()}
        try:
            values = self.on_the_way({name: value.value for name, value in given.items()})
            if not all(arithmetic.value_typed(a, values) < arithmetic.value_typed(b, values) for a, b in (condition.split("<") for condition in self.where)):
                return None
            return self._with(given, seed)
        except DeclarationError:
            return None

    def _vary(self, name: str, text: str, draw: random.Random) -> GivenValue:
        """A value near the one that was written, or of its range, on a round step."""
        reading = units.parse(text)
        if name in self.keep:
            return GivenValue(reading.value, reading.unit)
        low, high, step = _range(reading.number) if name not in self.vary else (units.parse(part).number for part in self.vary[name])
        steps = max(round((high - low) / step), 1)
        shown = f"{units.number(low + draw.randint(0, steps) * step)} {reading.unit}".strip()
        return self._given(name, shown)

    def _with(self, given: dict[str, GivenValue], seed: int) -> Question:
        values = self.on_the_way({name: each.value for name, each in given.items()})
        shown = {name: str(each) for name, each in given.items()}
        return Question(
            code=self.code,
            seed=seed,
            text=arithmetic.fill(self.text, values, {name: days(text) for name, text in shown.items()}) + self._wanted,
            name=self.name,
            unit=self.unit,
            given=given,
            answer=self._number(self.answer, values),
            slips=tuple(self._known(wrong, values) for wrong in self.wrong),
            again=lambda changed: self._number(self.answer, self.on_the_way(changed)),
            lines=lambda: tuple(arithmetic.fill(line, values, shown) for line in self.solution),
            label=self.label,
            close=units.parse(self.close).value if self.close else 0.0,
            varies=self.varies,
            middle=Middle(self.middle[0], self.middle[2], _number(self.middle[1], self.middle[2], values)) if self.middle else None,
            strict=self.strict,
            sheet=self.picture(values) if self.picture else None,
            like=(self.like[0], {letter: arithmetic.value_typed(of, values) for letter, of in self.like[1].items()}) if self.like else None,
            working=self._working(given, shown),
        )

    @cached_property
    def _tree(self) -> tuple[ast.expr, tuple[ast.expr, ...], arithmetic.Constants] | None:
        """The answer as one tree over the given values, the named numbers on the way, and constants with units; None for a number alone."""
        if not isinstance(self.answer, str) or arithmetic.alone(self.answer) is not None:
            return None
        constants = arithmetic.Constants()
        return *arithmetic.whole(self.answer, self.let, {*self.given}, constants), constants

    def _working(self, given: dict[str, GivenValue], shown: dict[str, str]) -> WayOfWorking | None:
        if self._tree is None:
            return None
        tree, on_the_way, constants = self._tree
        texts = {**shown, **constants.texts}
        return WayOfWorking(
            tree=tree,
            values={**arithmetic.CONSTANTS, **constants.values, **{name: each.value for name, each in given.items()}},
            kinds={**arithmetic.DIMENSIONS, **constants.dimensions, **{name: units.unit(each.unit).dimension for name, each in given.items()}},
            shown={name: each.unit for name, each in given.items()},
            unit=self.unit,
            said=lambda part: written(part, lambda name: texts.get(name, arithmetic.UNIT_WORDS.get(name))),
            words=frozenset(arithmetic.UNIT_WORDS),
            on_the_way=on_the_way,
            shortcuts=tuple(
                (tree, said)
                for tree, said in shortcuts(self.code)
                if self._knows(tree) and not system.foreign(said, system.of_unit(self.unit) or system.current())
            ),
        )

    def _knows(self, tree: ast.expr) -> bool:
        """Whether the question gives all that a shortcut names; in the other system it may give something else."""
        return names_in(tree) <= self.given.keys() | arithmetic.DIMENSIONS.keys()

    def on_the_way(self, given: dict[str, float]) -> dict[str, float]:
        """Given values (SI) with the named numbers on the way."""
        values = dict(given)
        for name, text in self.let.items():
            values[name] = arithmetic.value_typed(text, values)
        return values

    def _known(self, wrong: Wrong, values: dict[str, float]) -> KnownWay:
        middle = _number(wrong.middle or self.middle[1], self.middle[2], values) if self.middle else None
        return KnownWay(self._number(wrong.equals, values), wrong.feedback, middle)

    def _number(self, of: str | float, values: dict[str, float]) -> float:
        return _number(of, self.unit, values)

    @property
    def _wanted(self) -> str:
        unit = self.label or in_words(self.unit).replace("cur", "money")
        near = f"to {self.close}" if self.close and not self.label else "as a whole number" if self.close else "to three figures"
        return f" Answer {f'in {unit}, ' if unit else ''}{near}."


@lru_cache(maxsize=8192)
def _found(question: Numeric, seed: int, units: str) -> dict[str, GivenValue]:
    """The given values of a seed in the `units` in use; looking for them takes longer than all the rest of a question."""
    draw = random.Random(f"{question.code} {seed}")
    first = first_apart(question._drawn(seed, draw) for _ in range(DRAWS))
    if first is None:
        raise DeclarationError(f"{question.code}: no numbers near those given keep its slips apart: give ranges with vary=, or ask for a middle value")
    return first.given


def _number(of: str | float, unit: str, values: dict[str, float]) -> float:
    """SI value of an expression over `values` (SI), or of a number alone in `unit`."""
    number, here = arithmetic.alone(of), units.unit(unit)
    return arithmetic.value_typed(str(of), values) if number is None else (number + here.shift) * here.factor


def _range(number: float) -> tuple[float, float, float]:
    """Round numbers round about a given one: low, high and step."""
    if number == int(number) and 0 < abs(number) < 10:
        return max(number - 1, 1), number + 2, 1
    size = abs(number) / 20
    power = 10 ** math.floor(math.log10(size))
    step = next(power * k for k in (1, 2, 5, 10) if power * k >= size * 0.999)
    return round(0.75 * number / step) * step, round(1.35 * number / step) * step, step
