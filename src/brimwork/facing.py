"""What a formula shows of itself to somebody who asks Python: its help and its signature."""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterable, Mapping
from typing import Any

from brimwork.nomenclature import QUANTITIES


class AsText:
    """An attribute that says one thing of the class and another of each of its objects, worked out when it is asked for."""

    def __init__(self, of_the_class: Any, of_one: Callable[[Any], Any]) -> None:
        self.of_the_class, self.of_one = of_the_class, of_one

    def __get__(self, one: object, owner: type) -> Any:
        return self.of_the_class if one is None else self.of_one(one)


def signature(formula: Any) -> inspect.Signature:
    """The letters of a formula as keywords, each with its SI unit in place of a type; constants with their value."""
    kind, empty = inspect.Parameter.KEYWORD_ONLY, inspect.Parameter.empty
    letters = [(letter, empty) for letter in formula.inputs] + [(letter, QUANTITIES[letter].fixed) for letter in formula.constants]
    parameters = [inspect.Parameter(letter, kind, default=default, annotation=_unit(letter)) for letter, default in letters]
    return inspect.Signature(parameters, return_annotation=_unit(formula.result))


def explained(name: str, relation: str, result: str, ranges: Mapping[str, tuple[float, float]], constants: Iterable[str], origin: str) -> str:
    """The help of one formula: what it gives and takes, in which units, what is usual, where it comes from."""
    lines = [name, "", f"    {relation}", "", "Gives", f"    {result:<8} {_unit(result):<8} {QUANTITIES[result].name}", "", "Takes, as keywords"]
    lines += [f"    {letter:<8} {_unit(letter):<8} {QUANTITIES[letter].name}; usually {QUANTITIES[letter].span(*ends)}" for letter, ends in ranges.items()]
    lines += [f"    {letter:<8} {_unit(letter):<8} {QUANTITIES[letter].name}; {QUANTITIES[letter].value} unless given" for letter in constants]
    return "\n".join([*lines, "", "Numbers are in these units. A text with a unit, a pint quantity or an array of numbers will do too.", "", origin])


def _unit(letter: str) -> str:
    return QUANTITIES[letter].si or "number"
