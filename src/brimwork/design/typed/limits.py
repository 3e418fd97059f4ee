"""Limits of a check: the limit, and what still counts as near it; as text, and as a design may type its own."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from brimwork import units
from brimwork.design.typed.telling import INFINITE, US_UNITS, short
from brimwork.quantity import days
from brimwork.units import InputError

PASSED, LEAST = "above 0", 1e-9  # a limit that must be passed, however little, and what stands for it in SI


@dataclass(frozen=True)
class Limits:
    """Pass inside `good`, marginal inside `fair`, else fail; both (low, high) in SI, ends included."""

    good: tuple[float, float]
    fair: tuple[float, float]

    def grade(self, value: float) -> str:
        """Grade of a value, rounded to nine figures first, so that noise of the last bit cannot fail a limit that is just met."""
        rounded = float(f"{value:.9g}")
        for grade, (low, high) in (("pass", self.good), ("marginal", self.fair)):
            if float(f"{low:.9g}") <= rounded <= float(f"{high:.9g}"):
                return grade
        return "fail"

    def within(self, other: Limits) -> Limits:
        """These limits, nowhere wider than the others. Where the two have nothing in common, none is kept."""
        good, fair = (_common(mine, theirs) for mine, theirs in ((self.good, other.good), (self.fair, other.fair)))
        return Limits(good, fair)

    def text(self, unit: str, region: str = "UK") -> str:
        return _text(self, unit, region)

    def typed(self, unit: str, region: str) -> str:
        """As a design would type its own: "1.1 to 1.6; 1 to 2.5"."""
        here = US_UNITS.get(unit, unit) if region == "US" else unit
        return "; ".join(_span(*span, here, 3) for span in (self.good, self.fair))


@lru_cache(maxsize=1024)
def _text(limits: Limits, unit: str, region: str) -> str:
    good, fair = (_told(*span, unit, region) for span in (limits.good, limits.fair))
    return good + (f"; near it {fair}" if fair != good else "")


def _told(low: float, high: float, unit: str, region: str) -> str:
    """A limit; for the US in two figures of their unit, since it was set in a round number of the other, which stands behind and is the one that counts."""
    set_in = days(_span(low, high, unit, 6))
    if region != "US" or unit not in US_UNITS or not any(letter.isdigit() for letter in set_in) or set_in == PASSED:
        return set_in
    return f"{_span(low, high, US_UNITS[unit], 2)} ({set_in.removeprefix('up to ').removeprefix('from ')})"


def _common(one: tuple[float, float], other: tuple[float, float]) -> tuple[float, float]:
    low, high = max(one[0], other[0]), min(one[1], other[1])
    return (low, high) if low <= high else NEVER.good


def _span(low: float, high: float, unit: str, digits: int) -> str:
    if high == -INFINITE:
        return "no number passes as it stands"
    if low == -INFINITE:
        return f"up to {short(high, unit, digits)}"
    if high == INFINITE and 0 < low <= LEAST:
        return PASSED
    if high == INFINITE:
        return f"from {short(low, unit, digits)}"
    return f"{short(low, unit, digits).removesuffix(unit).strip()} to {short(high, unit, digits)}"


def at_most(good: float, fair: float) -> Limits:
    return Limits((-INFINITE, good), (-INFINITE, fair))


def at_least(good: float, fair: float) -> Limits:
    return Limits((good, INFINITE), (fair, INFINITE))


def between(good: tuple[float, float], fair: tuple[float, float]) -> Limits:
    return Limits(good, fair)


NEVER = at_most(-INFINITE, -INFINITE)


@dataclass(frozen=True)
class Criterion:
    """What a check asks, before anything is worked out: its limits (None where they hang on the design), the unit in which it is told, on what basis.

    A design cannot set limits of its own where they are `firm`. `kinds` names the kinds of feature it is for (none: all).
    """

    id: str
    group: str
    title: str
    limits: Limits | None
    unit: str
    basis: str
    firm: bool = False
    kinds: tuple[str, ...] = ()


@dataclass(frozen=True)
class Bounds:
    """Limits of a check that a design sets for itself, in the check's unit: where it passes, and where it is marginal."""

    criterion: Criterion

    @property
    def name(self) -> str:
        title = self.criterion.title
        return f"limits of: {title[:1].lower()}{title[1:]}"

    def read(self, given, key: str, region: str = "UK") -> tuple[tuple[float, float], ...]:
        """The two spans in SI. Raises InputError."""
        spans = [self._read_span(part.strip(), key, region) for part in given.split(";")] if isinstance(given, str) else []
        if len(spans) != 2:
            raise InputError(f"{key} is two spans, the limit and what still counts as near it: write {self._like(key, region)}")
        good, fair = spans
        if not (good[0] <= good[1] and fair[0] <= good[0] and good[1] <= fair[1]):
            raise InputError(f"{key}: a span runs upwards, and the second one holds the first: write {self._like(key, region)}")
        return good, fair

    def usually(self, region: str = "UK") -> str:
        """The limits that count until the design says something else, as they are typed; empty where they hang on the design."""
        return self.criterion.limits.typed(self.criterion.unit, region) if self.criterion.limits else ""

    def hint(self, region: str = "UK") -> str:
        """The usual limits, first where the check passes, then where it is marginal; an example where they hang on the design."""
        counts = self.usually(region)
        return f"usual: {counts}" if counts else f"such as {self._typed(region)}"

    def _typed(self, region: str) -> str:
        unit = US_UNITS.get(self.criterion.unit, self.criterion.unit) if region == "US" else self.criterion.unit
        return f"from 2 {unit}; from 1 {unit}" if unit else "1.1 to 1.6; 1 to 2.5"

    def _like(self, key: str, region: str) -> str:
        return f'{key} = "{self.usually(region) or self._typed(region)}"'

    def _read_span(self, text: str, key: str, region: str) -> tuple[float, float]:
        word, _, rest = text.partition(" ")
        unit = self.criterion.unit
        if text == PASSED:
            return LEAST, INFINITE
        if word == "from":
            return units.read(rest, unit, key), INFINITE
        if word == "up" and rest.startswith("to "):
            return -INFINITE, units.read(rest[3:], unit, key)
        low, to, high = text.partition(" to ")
        if not to:
            raise InputError(f'{key}: "{text}" is not a span: write {self._like(key, region)}')
        own = units.parse(high).unit
        return units.read(low if units.parse(low).unit else f"{low} {own}", unit, key), units.read(high, unit, key)

    def write(self, value, region: str = "UK") -> str:
        return "; ".join(f"{low:g} to {high:g}" for low, high in value)
