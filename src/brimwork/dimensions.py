"""Dimensions: what kind of quantity something is, and what a person calls it."""

from __future__ import annotations

from fractions import Fraction

BASE = ("kg", "m", "s", "K", "A", "cur")


class Dimension(tuple):
    """Exponents of kg, m, s, K, A and money, exact: whole numbers, or fractions; multiply, divide and raise to a power like a unit."""

    __slots__ = ()

    def __mul__(self, other: Dimension) -> Dimension:  # type: ignore[override]  # a product, not a tuple repeated
        return Dimension(a + b for a, b in zip(self, other))

    def __truediv__(self, other: Dimension) -> Dimension:
        return Dimension(a - b for a, b in zip(self, other))

    def __pow__(self, power: Fraction | int) -> Dimension:
        return Dimension(_whole(a * power) for a in self)

    def __str__(self) -> str:
        over = [_power(name, p) for name, p in zip(BASE, self) if p > 0]
        under = [_power(name, -p) for name, p in zip(BASE, self) if p < 0]
        if not over and not under:
            return "a pure number"
        return "/".join([" ".join(over) or "1", *under])


def _whole(power: Fraction | int) -> Fraction | int:
    """A whole number as one: it is compared and hashed ten times as fast as a fraction that is equal to it."""
    return power.numerator if power.denominator == 1 else power


def _power(name: str, power: Fraction | int) -> str:
    if power == 1:
        return name
    return f"{name}{power}" if power.denominator == 1 else f"{name}^{float(power):g}"


def dimension_of(**powers: int) -> Dimension:
    return Dimension(powers.get(name, 0) for name in BASE)


NUMBER = dimension_of()
LENGTH = dimension_of(m=1)
VOLUME = dimension_of(m=3)
TIME = dimension_of(s=1)
MASS = dimension_of(kg=1)
FORCE = dimension_of(kg=1, m=1, s=-2)
PRESSURE = dimension_of(kg=1, m=-1, s=-2)
ENERGY = dimension_of(kg=1, m=2, s=-2)
POWER = dimension_of(kg=1, m=2, s=-3)
VOLT = dimension_of(kg=1, m=2, s=-3, A=-1)

MONEY = dimension_of(cur=1)
TEMPERATURE = dimension_of(K=1)
VOLT_PER_AMPERE = VOLT / dimension_of(A=1)

# What a person calls a quantity of these dimensions, for messages.
KINDS_OF_QUANTITY = {
    NUMBER: "a plain number",
    LENGTH: "a length",
    LENGTH**2: "an area",
    VOLUME: "a volume",
    TIME: "a time",
    LENGTH / TIME: "a speed",
    LENGTH / TIME**2: "an acceleration",
    VOLUME / TIME: "a flow",
    LENGTH**2 / TIME: "a flow for each length of edge, or a kinematic viscosity",
    MASS: "a mass",
    MASS / LENGTH: "a mass for each length",
    MASS / LENGTH**2: "a mass for each area",
    MASS / VOLUME: "a density",
    FORCE: "a force",
    FORCE / LENGTH: "a force for each length, or a surface tension",
    PRESSURE: "a pressure",
    PRESSURE / LENGTH: "a pressure for each length",
    PRESSURE * TIME: "a dynamic viscosity",
    ENERGY: "an energy, or a turning moment",
    POWER: "a power",
    POWER / LENGTH**2: "a power for each area",
    dimension_of(A=1): "a current",
    VOLT: "a voltage",
    VOLT_PER_AMPERE: "a resistance",
    VOLT_PER_AMPERE / LENGTH: "a resistance for each length",
    TEMPERATURE: "a temperature",
    MONEY: "an amount of money",
}


def kind(dimension: Dimension) -> str:
    """What a person calls a quantity of this dimension: "a length", "a flow"."""
    return KINDS_OF_QUANTITY.get(dimension) or f"a quantity in {dimension}"
