"""Numbers worked by hand: the guard of a formula that has neither a printed value nor a derivation."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar, Protocol

from brimwork import units
from brimwork.expression import DeclarationError
from brimwork.nomenclature import read_values
from brimwork.quantity import Quantity


class WorkedByHand(Protocol):
    """What is wanted of a formula here: its letter, the row of that letter, and a number for values in SI."""

    name: str
    result: str

    @property
    def quantity(self) -> Quantity: ...

    def __call__(self, **values: Any) -> Any: ...


@dataclass(frozen=True)
class ByHand:
    """Numbers worked by hand beside a formula: given values, the arithmetic as a line of plain numbers in the unit of the value, what it comes to.

    The line is worked again in the tests, by plain arithmetic, and must come to the value; so must the formula, both within a ten-thousandth.
    """

    given: str
    line: str
    value: str
    tolerance: ClassVar[float] = 1e-4

    def check(self, formula: WorkedByHand) -> ByHandCheck:
        try:
            got, value = formula(**read_values(self.given)), units.read(self.value, formula.quantity.metric, formula.result)
        except units.InputError as error:
            raise DeclarationError(f"by_hand of '{formula.name}': {error}") from None
        return ByHandCheck(self, got, abs(got - value) <= self.tolerance * abs(value))

    def __str__(self) -> str:
        return f"{self.line} = {self.value}"

    @property
    def told(self) -> str:
        """For a reader: "for d=2 m: 3.1416 × 2 ^ 2 / 4 = 3.1416 m2"."""
        line = self.line.replace("**", "^").replace("*", " × ")
        return f"for {self.given}: {line} = {self.value}"


@dataclass(frozen=True)
class ByHandCheck:
    by_hand: ByHand
    got: float
    agrees: bool

    @property
    def got_text(self) -> str:
        """Our value in the unit of the one worked by hand, to five figures."""
        return units.write(self.got, units.parse(self.by_hand.value).unit, 5)
