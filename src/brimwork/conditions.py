"""Where a formula holds: the ranges of the experiments behind it, and conditions such as "H < 0.2*d_bore"."""

from __future__ import annotations

import ast
import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cache, cached_property

from brimwork import expression, system, units
from brimwork.nomenclature import QUANTITIES
from brimwork.sources import Citation

_ABOUT = "1.0001*"  # begins a side of a condition that may also be equal, but for rounding


@dataclass(frozen=True)
class TestedRange:
    """Where experiments support the formula: a letter or an expression, from low to high ("" for no limit)."""

    __test__ = False
    of: str
    low: str
    high: str
    source: Citation

    @cached_property
    def _tree(self) -> ast.expr:
        return expression.parse_expression(self.of)

    @cached_property
    def _unit(self) -> str:
        return QUANTITIES[self.of].metric if self.of in QUANTITIES else ""

    def _written(self, value: float) -> str:
        return QUANTITIES[self.of].text_here(value) if self.of in QUANTITIES else units.write(value, "")

    @cached_property
    def _number(self) -> Callable[..., float]:
        return expression.numeric(self._tree, self._names)

    @cached_property
    def _names(self) -> tuple[str, ...]:
        return expression.letters(self._tree)

    @cached_property
    def _limits(self) -> tuple[float, float]:
        low, high = (units.read(limit, self._unit, self.of) if limit else edge for limit, edge in ((self.low, -math.inf), (self.high, math.inf)))
        return low, high

    def note(self, values: dict[str, float]) -> str:
        """What to say when `values` lie outside, or "" inside."""
        try:
            value = float(self._number(**{name: values[name] for name in self._names if name in values}))
        except ArithmeticError:
            return f"{self.of} has no value here, so the tested range ({self.span}) does not cover it"
        low, high = self._limits
        for side, beyond in (("below", value < low), ("above", value > high)):
            if beyond:
                return f"{self.of} = {self._written(value)} is {side} the tested range ({self.span}), so the result is an extrapolation"
        return ""

    @property
    def span(self) -> str:
        low, high = (system.in_chosen(end, way=way) if end else "" for end, way in ((self.low, 1), (self.high, -1)))
        if low and high:
            return f"{low} to {high}"
        return f"from {low}" if low else f"up to {high}"

    def __str__(self) -> str:
        return f"{self.of} {self.span} ({self.source})"


def holds(condition: str, values: dict[str, float]) -> bool:
    """Whether "a < b" is true of `values`, of every one of them where they are arrays; not where a side has no value."""
    return _compared(condition, values, lambda low, high: low < high)


def not_held(conditions: Iterable[str], values: dict[str, float]) -> list[str]:
    """Those of `conditions` that do not hold, of those whose letters all have a value; on the limit itself they hold, but for rounding."""
    return [
        condition
        for condition in conditions
        if {*_condition(condition)[0]} <= {*values} and not _compared(condition, values, lambda low, high: low <= high + 1e-9 * abs(high))
    ]


def _compared(condition: str, values: dict[str, float], compare: Callable) -> bool:
    names, low, high = _condition(condition, any(hasattr(value, "shape") for value in values.values()))
    given = {name: values[name] for name in names}
    try:
        kept = compare(low(**given), high(**given))
    except (ArithmeticError, ValueError):
        return False
    return kept if isinstance(kept, bool) else bool(kept.all())


def named_letters(condition: str) -> str:
    """The letters of a condition, each with its name."""
    return " and ".join(f"{letter} ({QUANTITIES[letter].plain_name})" for letter in _condition(condition)[0])


def divided(zeros: list[str]) -> str:
    """That a formula divides by what is zero, for those who know no letters."""
    return f"it divides by the {', and by the '.join(QUANTITIES[name].plain_name for name in zeros)}, which is nothing"


def without_letters(conditions: list[str], values: dict[str, float]) -> str:
    """Conditions that do not hold, for those who know no letters: "usable water 210 L must be more than water in transit 243 L"."""
    return "; ".join(_without_letters(condition, values) for condition in conditions) or "the numbers do not go together"


def _without_letters(condition: str, values: dict[str, float]) -> str:
    low, high = (side.strip() for side in condition.split("<"))
    said = {letter: f"{QUANTITIES[letter].plain_name} {QUANTITIES[letter].text_here(values[letter])}" for letter in _condition(condition)[0]}
    if low in said and high in said:
        return f"{said[high]} must be more than {said[low]}"
    for letter, other, less in ((low, high, True), (high.removeprefix(_ABOUT), low, False)):
        if letter in said and letter not in _condition(f"{other.removeprefix(_ABOUT)} < 1")[0] and (bound := _bound(condition, other, less, values)):
            ends = {(True, True): "at {} or less", (True, False): "below {}", (False, True): "at {} or more", (False, False): "above {}"}
            reach = ends[less, _ABOUT in condition].format(QUANTITIES[letter].text_here(bound))
            return f"it is for {QUANTITIES[letter].plain_name} {reach}, and not for {QUANTITIES[letter].text_here(values[letter])}"
    *most, last = said.values()
    return f"{', '.join(most)}{' and ' if most else ''}{last} cannot be {'together' if most else ''}".strip()


def _bound(condition: str, side: str, high: bool, values: dict[str, float]) -> float:
    """What the low or high side of a condition comes to, without what is there for rounding; 0 where it has no value."""
    names, *sides = _condition(condition)
    try:
        number = sides[high](**{name: values[name] for name in names}) / (1.0001 if side.startswith(_ABOUT) else 1)
        return number if math.isfinite(number) else 0.0
    except (ArithmeticError, ValueError, TypeError):  # TypeError: a root of what is below nothing
        return 0.0


@cache
def _condition(text: str, arrays: bool = False) -> tuple[tuple[str, ...], Callable, Callable]:
    sides = [expression.parse_expression(side) for side in text.split("<")]
    names = tuple(name for name in expression.letters(*sides) if not QUANTITIES[name].value)
    constants = tuple(name for name in expression.letters(*sides) if QUANTITIES[name].value)
    low, high = (expression.numeric(side, names + constants, arrays=arrays) for side in sides)
    return names, low, high
