"""Wrong ways with numbers: what each way with a working comes to on the given values, and how to say it.

A way may change the kind of quantity (a force without g is a mass). Its number may then be typed with the unit that it really has, or with the one asked for.
"""

from __future__ import annotations

import ast
import math
import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import cache, cached_property, lru_cache, partial
from types import CodeType
from typing import NamedTuple

from brimwork import typeset, units
from brimwork.dimensions import NUMBER, Dimension
from brimwork.exercise import arithmetic
from brimwork.exercise.ways import UNIT, Names, Way, ways
from brimwork.expression import DeclarationError

LONGEST_PART = 48  # characters of a part as it is written out in a sentence


class Cause(NamedTuple):
    """A wrong way and a number (SI) that it gives; `measures` tells what the number really measures, or None where unlike things were put together.

    `far` ones are thought of in drawing numbers alone, and no learner is asked about them.
    """

    number: float
    measures: Callable[[], Dimension | None]
    way: Way
    far: bool = False

    @property
    def dimension(self) -> Dimension | None:
        return self.measures()

    def typed_as(self, wanted: Dimension) -> bool:
        """Whether somebody might type it with a unit of the kind `wanted`: a given value keeps its own unit, all else takes the one that was asked for."""
        return self.way.kind != "part" or self.dimension == wanted


@dataclass(frozen=True)
class WayOfWorking:
    """The working of a question as a tree, with all that its names mean.

    values    number (SI) of every name: given values, constants, words for units;  unit: what is asked for
    kinds     dimension of each name;  shown: the unit that a given value is shown in, by name
    words     names that are words for units
    said      a name, or a part of the tree, in words for a learner
    shortcuts what people do instead of it: a tree over the same names, and what to say of it, or ""
    solved    for a result that stands on both sides: the result from the right-hand side, as a function of that
    """

    tree: ast.expr
    values: dict[str, float]
    kinds: dict[str, Dimension]
    shown: dict[str, str]
    unit: str
    said: Callable[[ast.expr], str]
    words: frozenset[str] = frozenset()
    on_the_way: tuple[ast.expr, ...] = ()
    shortcuts: tuple[tuple[ast.expr, str], ...] = ()
    solved: Callable[[Callable[[float], float]], float] | None = None
    result: str = ""

    @cached_property
    def used(self) -> frozenset[str]:
        """Given values that the working uses; the others are only shown."""
        return frozenset(self._names & self.shown.keys())

    @cached_property
    def causes(self) -> tuple[Cause, ...]:
        """Every wrong way and its numbers, the likelier ways first."""
        return tuple(self._numbers())

    def _numbers(self) -> Iterator[Cause]:
        plain = frozenset(name for name, unit in self.shown.items() if unit in ("", "%"))
        angles = frozenset(name for name, unit in self.shown.items() if unit in ("deg", "rad"))
        names = Names({name: self.kinds[name] for name in self.shown}, plain, self.words, self.used, angles)
        kinds = tuple((name, self.kinds[name]) for name in self.kinds)
        key = (_text(self.tree), tuple(_text(part) for part in (*self.on_the_way, *(tree for tree, _ in self.shortcuts))))
        sizes = {UNIT + name: units.unit(unit).factor for name, unit in self.shown.items()}
        in_si, as_shown = (
            {**self.values, **{name: size if self.shown[name.removeprefix(UNIT)] == "deg" else 1.0 for name, size in sizes.items()}},
            {**self.values, **sizes},
        )
        for way in _compiled(key, kinds, tuple(self.shown), self.words, _Tree(self, names)):
            number = self.number(way.code, in_si)
            other = self.number(way.code, as_shown) if way.has_units else number
            if number is not None:
                yield Cause(number, _unlike if self.solved else way.measures, way.way, way.way.far or number != other and self.as_they_stand)
            if other is not None and other != number:
                yield Cause(other, _unlike, way.way, way.way.far)

    @cached_property
    def as_they_stand(self) -> bool:
        """Whether the given numbers go in as they stand, with no unit changed: then nobody works in any other."""
        code, factor = compiled_once(self.tree), units.unit(self.unit).factor
        if self.solved or any(self.kinds.get(name, NUMBER) != NUMBER for name in self._names if name not in self.shown):
            return False
        number = self.number(code, {**self.values, **{name: units.convert(self.values[name], unit) for name, unit in self.shown.items()}})
        right = self.number(code, self.values)
        return number is not None and right is not None and math.isclose(number * factor, right)

    @property
    def _names(self) -> frozenset[str]:
        return names_in(self.tree)

    def number(self, code, values: dict[str, float]) -> float | None:
        """What compiled code comes to, or None where that is no finite number."""
        try:
            if self.solved:
                found = self.solved(lambda x: float(eval(code, arithmetic.NAMESPACE, {**values, self.result: x})))
            else:
                found = eval(code, arithmetic.NAMESPACE, values)  # trees of our own declarations only
            return float(found) if math.isfinite(found) else None
        except (ArithmeticError, ValueError, TypeError):
            return None


@dataclass(frozen=True)
class _Tree:
    """What makes the ways; equal to any other, so that the ways of one declaration are made once."""

    working: WayOfWorking = field(compare=False)
    names: Names = field(compare=False)


@dataclass(frozen=True)
class _Compiled:
    way: Way
    code: CodeType
    measures: Callable[[], Dimension | None]
    has_units: bool


@lru_cache(maxsize=2048)
def _compiled(key: tuple, kinds: tuple, given: tuple[str, ...], words: frozenset[str], of: _Tree) -> tuple[_Compiled, ...]:
    """The ways of a tree, compiled; none that is the same as the right one, or as one before it that says the same."""
    working, found, seen = of.working, list[_Compiled](), set[tuple]()
    formulas: set[tuple[str, ...]] = set()
    text = cache(ast.unparse)  # the same parts stand in many ways
    numbered: set[tuple[str, ...]] = set()
    points = [{**_shifted(working, seed), **dict.fromkeys((UNIT + name for name in given), 1.0)} for seed in ("here", "there")]
    right = _formula(working.tree, _at_points(working, compile_tree(working.tree), points))
    every = [*(_shortcut(tree, said) for tree, said in working.shortcuts), *ways(working.tree, of.names, working.on_the_way)]
    later = {
        _formula(way.tree, _at_points(working, compile_tree(way.tree), points))
        for way in every
        if way.kind == "left out" and way.parts and isinstance(way.parts[0], ast.Name)
    }
    for way in every:
        code = compile_tree(way.tree)
        formula = _formula(way.tree, _at_points(working, code, points))
        whole = way.kind in ("part", "sign") or "whole upside" in way.text  # another word for what is left out or turned round, where it is the same formula
        whole = whole or way.kind == "left out" and isinstance(next(iter(way.parts), None), ast.BinOp)
        if formula == right or way.kind == "cut" and formula in numbered:
            continue
        numbered.add(formula)
        if (said := (formula, way.text, *(text(part) for part in way.parts))) in seen or whole and formula in formulas | later:
            continue
        seen.add(said)
        if way.kind in ("left out", "turned round", "power"):
            formulas.add(formula)
        has_units = any(name.startswith(UNIT) for name in code.co_names)
        found.append(_Compiled(way, code, cache(partial(_dimension, way.tree, dict(kinds), frozenset(given))), has_units))
    return tuple(found)


def _shortcut(tree: ast.expr, said: str) -> Way:
    """A shortcut as a way; nobody is asked about one without a sentence."""
    return Way(tree, "shortcut", said or "that is a shortcut which does not hold here: work it out in full.", far=not said)


def _formula(tree: ast.expr, numbers: list[float | None]) -> tuple[str, ...]:
    """What is one for two trees that are the same formula."""
    return tuple(f"{number:.9e}" if number is not None else ast.unparse(tree) for number in numbers)


def _shifted(working: WayOfWorking, seed: str) -> dict[str, float]:
    """The given values a little aside, each by another share: two workings that agree there too are one."""
    draw = random.Random(seed)
    return {name: value * draw.uniform(0.96, 1.04) if name in working.shown else value for name, value in sorted(working.values.items())}


def _at_points(working: WayOfWorking, code, points: list[dict[str, float]]) -> list[float | None]:
    return [working.number(code, point) for point in points]


def compile_tree(tree: ast.expr) -> CodeType:
    _place(tree)
    return compile(ast.Expression(tree), "<way>", "eval")


_SOMEWHERE = ast.parse("0", mode="eval").body


def _place(node: ast.AST) -> None:
    """Gives a place in a line, which compiling asks for, to each part that has none; a part that has one was parsed, or placed with all that it holds."""
    if not hasattr(node, "lineno"):
        ast.copy_location(node, _SOMEWHERE)
        for child in ast.iter_child_nodes(node):
            if isinstance(child, ast.expr):
                _place(child)


@lru_cache(maxsize=2048)
def compiled_once(tree: ast.expr) -> CodeType:
    """Of the working itself."""
    return compile_tree(tree)


@lru_cache(maxsize=2048)
def names_in(tree: ast.expr) -> frozenset[str]:
    """The names of values in a tree; not those of its functions."""
    parts = tuple(ast.walk(tree))
    called = {part.func for part in parts if isinstance(part, ast.Call)}
    return frozenset(part.id for part in parts if isinstance(part, ast.Name) and part not in called)


@lru_cache(maxsize=8192)
def _text(tree: ast.expr) -> str:
    return ast.unparse(tree)


def _unlike() -> None:
    """What a number measures where unlike things were put together."""


def _dimension(tree: ast.expr, kinds: dict[str, Dimension], given: frozenset[str]) -> Dimension | None:
    try:
        return arithmetic.dimension_of_typed(tree, {**kinds, "pi": NUMBER, **{UNIT + name: NUMBER for name in given}})
    except (DeclarationError, ArithmeticError, ValueError, TypeError):
        return None


# --- in words -----------------------------------------------------------------------------------------------------------------------


def written(node: ast.expr, shown: Callable[[str], str | None] | None) -> str:
    """A part of a tree as it is written, with what stands for each name; "one part of it" where that gets long or cannot be written."""
    try:
        text = typeset.write_tree(node, typeset.PLAIN, shown)
    except (ValueError, AttributeError):
        return "one part of it"
    if len(text) > LONGEST_PART:
        return "one part of it"
    return f"({text})" if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add | ast.Sub) else text
