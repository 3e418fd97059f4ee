"""A formula, declared once: text, derivation, tested range, published values and known slips; dimensions, numbers and solving follow.

`Formula` checks its dimensions when it is declared, so a formula that adds unlike things cannot be imported. The steps of its derivation are
only data here; `derivation` verifies them.
"""

from __future__ import annotations

import ast
import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from brimwork import accepting, expression, units
from brimwork.by_hand import ByHand
from brimwork.conditions import TestedRange, divided, named_letters, not_held, without_letters
from brimwork.expression import DeclarationError
from brimwork.facing import AsText, explained, signature
from brimwork.needing import needed
from brimwork.nomenclature import QUANTITIES, read_values
from brimwork.quantity import CELL, COMMAND, Quantity
from brimwork.roots import solve
from brimwork.sources import Citation
from brimwork.spellings import nearest
from brimwork.steps import Law
from brimwork.units import InputError, NoValue


@dataclass(frozen=True)
class Published:
    """A value printed by somebody else. `after` names formulas worked first, whose results join the given values.

    `tolerance` is relative. A constant may be given too ("g=9.81 m/s2"), where the source used another value.
    """

    given: str
    value: str
    tolerance: float
    source: Citation
    after: tuple[Formula, ...] = ()
    note: str = ""

    def check(self, formula: Formula) -> PublishedCheck:
        values = read_values(self.given)
        for earlier in self.after:
            values[earlier.result] = earlier(**earlier.only(values))
        got = formula(**formula.only(values))
        printed = units.read(self.value, formula.quantity.metric, formula.result)
        return PublishedCheck(self, printed, got, abs(got - printed) <= self.tolerance * abs(printed))


@dataclass(frozen=True)
class PublishedCheck:
    published: Published
    printed: float
    got: float
    agrees: bool

    @property
    def got_text(self) -> str:
        """Our value in the unit of the printed one, to four figures."""
        return units.write(self.got, units.parse(self.published.value).unit, 4)

    @property
    def difference(self) -> float:
        """Relative, with noise under a millionth taken out."""
        share = (self.got - self.printed) / self.printed
        return share if abs(share) > 1e-6 else 0.0

    @property
    def percent(self) -> str:
        """The difference with its sign; what rounds to nothing is +0.00%."""
        return f"{round(self.difference, 4) + 0.0:+.2%}"


@dataclass(frozen=True)
class Slip:
    """A known wrong way: its expression, and a sentence for the learner. `also_given`: values the question must show for it."""

    equals: str
    feedback: str
    also_given: tuple[str, ...] = ()

    def number(self, values: dict[str, float]) -> float:
        names, number = expression.function_of(self.equals)
        return number(**{name: values[name] for name in names if name in values})


@dataclass(eq=False, repr=False)
class Formula:
    """One formula. Calling it with SI floats gives an SI float; texts with a unit, arrays and pint quantities are taken too.

    name, result    plain name; letter of the result
    equals          the right-hand side; or "left = right" with the result on both sides, solved between the expressions `between`
    steps           the derivation, which may start from another formula; or fitted="who, to what"; or inverse_of=the formula that it turns round;
                    or defined="what it says", for a definition, which has nothing to prove
    published       values printed by others; or unpublished="why there is none", which readers see
    by_hand         numbers worked by hand: wanted where there is neither a printed value nor a derivation
    tested          ranges of the experiments behind it: beyond, the result carries a note
    where           conditions such as "H < 0.2*d_bore": where one does not hold there is no result, and the refusal names it
    slips           known wrong ways;  ranges: narrower usual ranges, {"H": ("2 mm", "10 mm")}
    rises, falls    letters with which the result grows, or shrinks, all through the usual ranges that keep the conditions; the tests hold it to that
    close           how near an answer must come where three figures are too coarse: "1 mm"

    Raises DeclarationError, with the name, when the dimensions do not balance or a guard is missing.
    """

    __doc__ = AsText(__doc__, lambda formula: formula._help)
    __signature__ = AsText(None, signature)

    name: str
    result: str
    equals: str = ""
    steps: tuple = ()
    fitted: str = ""
    defined: str = ""
    inverse_of: Formula | None = None
    between: tuple[str, ...] = ()
    published: tuple[Published, ...] = ()
    unpublished: str = ""
    by_hand: tuple[ByHand, ...] = ()
    tested: tuple[TestedRange, ...] = ()
    where: tuple[str, ...] = ()
    slips: tuple[Slip, ...] = ()
    ranges: dict[str, tuple[str, str]] = field(default_factory=dict)
    remark: str = ""
    rises: tuple[str, ...] = ()
    falls: tuple[str, ...] = ()
    close: str = ""

    def __post_init__(self) -> None:
        try:
            self._declare()
        except DeclarationError as error:
            raise DeclarationError(f"formula '{self.name}': {error}") from None

    def _declare(self) -> None:
        if self.result not in QUANTITIES:
            raise DeclarationError(f"the letter '{self.result}' is not in the nomenclature: give it a row in a file of letters/")
        if self.inverse_of and not self.equals:
            self.equals = f"{self.inverse_of.result} = {self.inverse_of.equals}"
        if not (self.steps or self.fitted or self.inverse_of or self.defined):
            raise DeclarationError("it needs steps, fitted=, inverse_of= or defined=")
        if not (self.published or self.unpublished):
            raise DeclarationError("it needs a published value, or unpublished= with the reason")
        if "=" in self.equals:
            self.left, self.right = expression.parse_relation(self.equals)
            self._bracket = tuple(expression.parse_expression(text) for text in self.between)
            if len(self._bracket) != 2:
                raise DeclarationError("an equation with the result on both sides needs between=(low, high)")
        else:
            self.left, self.right, self._bracket = ast.Name(self.result, ast.Load()), expression.parse_expression(self.equals), ()
        names = expression.letters(self.left, self.right, *self._bracket)
        self.inputs = tuple(name for name in names if name != self.result and not QUANTITIES[name].value)
        self.constants = tuple(name for name in names if QUANTITIES[name].value)
        for name in (*self.rises, *self.falls):
            if (*self.rises, *self.falls).count(name) > 1 or name not in self.inputs:
                raise DeclarationError(f"rises= and falls= name inputs, each once: '{name}' is not such a letter")
        left, right = expression.dimension(self.left), expression.dimension(self.right)
        if left != right:
            raise DeclarationError(f"the two sides do not balance: '{ast.unparse(self.left)}' is in {left}, '{ast.unparse(self.right)}' in {right}")
        if not (self.published or self.steps or self.inverse_of or self.by_hand):
            raise DeclarationError("without a printed value and without a derivation it needs by_hand=, numbers worked by hand")
        self.dimension = self.quantity.dimension

    def __repr__(self) -> str:
        return f"<Formula '{self.name}': {self.relation}>"

    @property
    def _help(self) -> str:
        ranges = {letter: self.range(letter)[:2] for letter in self.inputs}
        return explained(self.name, self.relation, self.result, ranges, self.constants, origin(self))

    @property
    def quantity(self) -> Quantity:
        """The row of the result."""
        return QUANTITIES[self.result]

    @property
    def implicit(self) -> bool:
        return bool(self._bracket)

    @property
    def checked(self) -> tuple[str, ...]:
        """Letters that must not be negative."""
        return tuple(name for name in (*self.inputs, *self.constants) if not QUANTITIES[name].signed)

    @property
    def relation(self) -> str:
        """ "left = right", as text for the derivation."""
        return self.equals if self.implicit else f"{self.result} = {self.equals}"

    @cached_property
    def number(self) -> Callable[..., float]:
        """The compiled formula: keyword SI floats in, SI float out; no friendly messages."""
        names = (*self.inputs, *self.constants)
        if not self.implicit:
            return expression.numeric(self.right, names, self.checked)
        residual = expression.numeric(ast.BinOp(self.left, ast.Sub(), self.right), names, self.checked, first=self.result)
        low, high = (expression.numeric(tree, names, self.checked) for tree in self._bracket)

        def solved(**values: float) -> float:
            return solve(lambda x: residual(x, **values), low(**values), high(**values))

        return solved

    def __call__(self, **values: Any) -> Any:
        """Result in SI, a float. Values are SI floats, texts with a unit ("25 mm"), pint quantities, or arrays of these that broadcast together.

        An array gives an array. Where a pint quantity is among the values the result is one too, of the same registry. Raises InputError for a
        value that is missing, unknown, negative, not finite or of another dimension, and where a condition of the formula does not hold.

        >>> import brimwork
        >>> pit = brimwork.find("volume of a straight pit")
        >>> round(pit(L=1.5, W="1 m", h="600 mm"), 9), pit(L=1.5, W=1.0, h=[0.2, 0.4]).round(9).tolist()
        (0.9, [0.3, 0.6])
        """
        try:
            result = self.number(**values)
            if isinstance(result, float) and math.isfinite(result) and not (self.where and not_held(self.where, values)):
                given = values.values()  # yes and no count as 1 and 0: only where one of these stands is it worth looking for them
                if not ((True in given or False in given) and bool in map(type, given)):
                    return result
        except (TypeError, ValueError, ArithmeticError):
            pass
        plain = accepting.plain(values)
        if any(map(accepting.is_array, plain.values())):
            return accepting.with_unit(values, self.result)(self.array(**plain))
        if any(type(value) is not float for value in values.values()):
            return accepting.with_unit(values, self.result)(self._one(plain))
        raise self._refusal(values)

    def _one(self, values: dict[str, float]) -> float:
        result = self._value(values)
        if result is None:
            raise self._refusal(values)
        return float(result)

    def _value(self, values: dict[str, float]) -> float | None:
        """The result, or None where there is none: a bad value, a division by nothing, a condition that does not hold."""
        result = self._number_or_none(values)
        return None if result is None or self.where and not_held(self.where, values) else result

    def array(self, **values: Any) -> Any:
        """The same over NumPy arrays that broadcast together, float64: SI in, SI out. Raises InputError like a call, for the first bad point."""
        with needed("numpy", "working an array"):
            import numpy

        columns = accepting.plain(values)
        try:
            columns = {name: numpy.asarray(value, dtype=float) for name, value in columns.items()}
            if self.implicit:
                result = numpy.vectorize(lambda *row: self._one(dict(zip(columns, row))), otypes=[float])(*columns.values())
            else:
                with numpy.errstate(all="ignore"):
                    result = self._array(**columns)
            if numpy.isfinite(result).all() and not not_held(self.where, columns):
                return accepting.with_unit(values, self.result)(result)
        except (TypeError, ValueError, ArithmeticError):
            pass
        raise self._first_refusal(columns)

    def _first_refusal(self, values: dict[str, Any]) -> InputError:
        import numpy

        try:
            columns = [column.ravel().tolist() for column in numpy.broadcast_arrays(*values.values())]
        except ValueError:
            return InputError(f"'{self.name}' was given arrays that do not fit together: give arrays of one length, or single numbers")
        for row in zip(*columns):
            try:
                self._one(dict(zip(values, row)))
            except InputError as error:
                return error
        return self._refusal({name: value for name, value in values.items() if not accepting.is_array(value)})

    @cached_property
    def _array(self) -> Callable:
        return expression.numeric(self.right, (*self.inputs, *self.constants), self.checked, arrays=True)

    def _refusal(self, values: dict[str, float]) -> InputError:
        allowed = (*self.inputs, *self.constants)
        for name in values:
            if name not in allowed:
                return self.unknown_letter(name)
        if any(name not in values for name in self.inputs):
            return self.still_needs(values, CELL)
        for name, value in values.items():
            try:
                QUANTITIES[name].check(value, place=CELL)
            except InputError as error:
                return error
            except (TypeError, ValueError):
                return InputError(f"{name} = {value!r} is not a number: give it in {QUANTITIES[name].si or 'plain numbers'}")
        given = ", ".join(f"{name} = {QUANTITIES[name].text_here(value, None)}" for name, value in values.items())
        if zeros := self._divided_by(values):
            named = " and ".join(f"{name} ({QUANTITIES[name].plain_name})" for name in zeros)
            return NoValue(f"'{self.name}' has no value for {given}: it divides by {named}, so give more than zero", f"{self.name}: {divided(zeros)}")
        broken = not_held(self.where, values)
        wants = "".join(f"it is for {condition}, so look again at {named_letters(condition)}; " for condition in broken)
        says = "does not hold" if broken and self._number_or_none(values) is not None else "has no value"
        return NoValue(f"'{self.name}' {says} for {given}: {wants}change one of them", f"{self.name}: {without_letters(broken, values)}")

    def _divided_by(self, values: dict[str, float]) -> list[str]:
        """Letters given as zero that stand where the formula divides: with a usual value in their place there is a result."""
        zeros = [name for name, value in values.items() if value == 0]
        ways = (*([name] for name in zeros), zeros)
        return next((few for few in ways if self._number_or_none({**values, **{name: self.range(name)[1] for name in few}}) is not None), [])

    def _number_or_none(self, values: dict[str, float]) -> float | None:
        """The number alone, whatever the conditions say; None where there is none."""
        try:
            result = self.number(**values)
            return result if math.isfinite(result) else None
        except (TypeError, ValueError, ArithmeticError):
            return None

    def still_needs(self, values: Iterable[str], place: str = COMMAND) -> InputError:
        """What to say of letters that have no value, and what to type there."""
        missing = [name for name in self.inputs if name not in values]
        wanted = ", ".join(f"{name} ({QUANTITIES[name].name})" for name in missing)
        example = (", " if place == CELL else " ").join(QUANTITIES[name].such_as(place) for name in missing)
        return InputError(f"'{self.name}' still needs {wanted}: type, for example, {example}")

    def unknown_letter(self, name: str) -> InputError:
        gives = f" {name} is what it gives." if name == self.result else nearest(name, self.inputs)
        takes = ", ".join(f"{letter} ({QUANTITIES[letter].plain_name})" for letter in self.inputs)
        return InputError(f"'{self.name}' takes no letter '{name}'.{gives} It takes {takes}")

    def only(self, values: dict[str, float]) -> dict[str, float]:
        """Those of `values` that this formula takes."""
        return {name: value for name, value in values.items() if name in self.inputs or name in self.constants}

    def notes(self, values: dict[str, float]) -> list[str]:
        """What a reader must know about these inputs: outside a tested range."""
        return [note for tested in self.tested if (note := tested.note(values))]

    def range(self, name: str) -> tuple[float, float, float]:
        """Low, high and step of a letter in SI, as narrowed by this formula."""
        low, high, step = QUANTITIES[name].range
        if name in self.ranges:
            low, high = (QUANTITIES[name].read(text) for text in self.ranges[name])
        return low, high, step

    def work(self, **values: Any) -> Working:
        """The formula worked with single numbers: result and notes. Takes and raises what a call does.

        >>> import brimwork
        >>> worked = brimwork.find("flow over a level lip").work(C_d=0.62, b="600 mm", H="2 mm")
        >>> worked.notes[0]
        'H = 2.00 mm is below the tested range (from 30 mm), so the result is an extrapolation'
        """
        numbers = values if all(type(value) is float for value in values.values()) else accepting.plain(values)
        if numbers is not values and (array := next((name for name, value in numbers.items() if accepting.is_array(value)), None)):
            raise InputError(f"{array} is an array: give single numbers to work with, or call the formula, which takes arrays")
        result = self(**numbers)
        notes = self.notes({**numbers, self.result: result}) if self.tested else []
        return Working(self, {**{name: QUANTITIES[name].fixed for name in self.constants}, **numbers}, result, notes)


@dataclass(frozen=True)
class Working:
    """One formula with numbers put in (SI), its result and what must be said about it."""

    formula: Formula
    values: dict[str, float]
    result: float
    notes: list[str]

    @property
    def letter(self) -> str:
        """The letter of the result."""
        return self.formula.result


def origin(formula: Formula) -> str:
    """One sentence on where a formula comes from, for readers."""
    laws = dict.fromkeys(_laws(formula))
    derived = f"derived from: {'; '.join(laws)}" if laws else "derived from its own geometry" if formula.steps else ""
    if formula.defined:
        return f"a definition: {formula.defined}"
    if formula.fitted:
        return f"fitted: {formula.fitted}" + (f"; the rest {derived}" if derived else "")
    if formula.inverse_of and not formula.steps:
        return f"turned round from: {formula.inverse_of.name}; {origin(formula.inverse_of)}"
    return derived


def _laws(formula: Formula) -> list[str]:
    """Laws that a derivation starts from, those of the formulas it starts from included."""
    found = []
    for step in formula.steps:
        if isinstance(step, Law):
            found.append(f"{step.name} ({step.source})")
        elif isinstance(step, Formula):
            found += _laws(step) or [step.name]
    return found
