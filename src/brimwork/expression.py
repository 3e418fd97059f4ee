"""A formula's text as a tree: parsed once by Python's own parser, checked, and walked for dimensions and for compiling.

Only our own declarations come here; what a learner types goes to `units` alone. The tree is Python's `ast`, so a formula keeps the
order it was written in.
"""

from __future__ import annotations

import ast
import math
import traceback
from collections.abc import Callable, Iterator
from fractions import Fraction
from functools import lru_cache
from pathlib import Path

from brimwork.dimensions import NUMBER, Dimension
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError

FUNCTIONS = ("sqrt", "exp", "log", "log10", "sin", "cos", "tan", "asin", "acos", "atan")
CALCULUS = ("Integral", "Derivative")
_OPERATORS = (ast.Add, ast.Sub, ast.Mult, ast.Div, ast.Pow)


class DeclarationError(ValueError):
    """A declaration in the source is wrong: the message names it and says what does not hold."""

    @property
    def told(self) -> str:
        """The message, with file and line where the declaration stands at the head of a file."""
        at = [frame for frame in traceback.extract_tb(self.__traceback__) if frame.name == "<module>"]
        return f"{Path(at[-1].filename).name}, line {at[-1].lineno}: {self}" if at else str(self)


@lru_cache(maxsize=8192)
def parse_expression(text: str, calculus: bool = False) -> ast.expr:
    """The tree of one expression, shared by all who ask for it; with `calculus` also Integral(f, (x, a, b)) and Derivative(f, x)."""
    try:
        tree = ast.parse(text.strip(), mode="eval").body
    except SyntaxError as error:
        raise DeclarationError(f"'{text}' is not an expression: {error.msg}") from None
    _allow(tree, text, calculus)
    return tree


def parse_relation(text: str) -> tuple[ast.expr, ast.expr]:
    """Both sides of "left = right"."""
    left, equals, right = text.partition("=")
    if not equals or "=" in right:
        raise DeclarationError(f"'{text}' must have one '='")
    return parse_expression(left, calculus=True), parse_expression(right, calculus=True)


def _allow(node: ast.AST, text: str, calculus: bool) -> None:
    match node:
        case ast.BinOp(left=left, op=op, right=right) if isinstance(op, _OPERATORS):
            _allow(left, text, calculus)
            _allow(right, text, calculus)
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            _allow(operand, text, calculus)
        case ast.Constant(value=bool() as truth):
            raise DeclarationError(f"'{text}': {truth} is not a number")
        case ast.Constant(value=int() | float()):
            pass
        case ast.Name(id=name):
            if name != "pi" and name not in QUANTITIES:
                raise DeclarationError(f"'{text}': the letter '{name}' is not in the nomenclature: give it a row in a file of letters/")
        case ast.Call(func=ast.Name(id=name), args=[argument], keywords=[]) if name in FUNCTIONS:
            _allow(argument, text, calculus)
        case ast.Call(func=ast.Name(id="Integral"), args=[body, ast.Tuple(elts=[ast.Name(), _, _] as limits)], keywords=[]) if calculus:
            for part in (body, *limits):
                _allow(part, text, calculus)
        case ast.Call(func=ast.Name(id="Derivative"), args=[ast.Name(), ast.Name()], keywords=[]) if calculus:
            for part in node.args:
                _allow(part, text, calculus)
        case _:
            raise DeclarationError(f"'{text}': {type(node).__name__} has no place in a formula")


@lru_cache(maxsize=8192)
def letters(*trees: ast.expr) -> tuple[str, ...]:
    """Letters in order of first appearance, without pi and without variables bound by an integral."""
    return tuple(dict.fromkeys(name for tree in trees for name in _letters(tree)))


def _letters(node: ast.AST) -> Iterator[str]:
    match node:
        case ast.Name(id=name):
            if name != "pi":
                yield name
        case ast.Call(func=ast.Name(id="Integral"), args=[body, ast.Tuple(elts=[ast.Name(id=bound), low, high])]):
            yield from (name for name in _letters(body) if name != bound)
            yield from _letters(low)
            yield from _letters(high)
        case ast.Call(args=args):
            for argument in args:
                yield from _letters(argument)
        case _:
            for child in ast.iter_child_nodes(node):
                yield from _letters(child)


@lru_cache(maxsize=8192)
def exact(node: ast.expr) -> Fraction | None:
    """The exact value of a tree of numbers alone, or None where a letter or function stands in it."""
    match node:
        case ast.Constant(value=number):
            return Fraction(repr(number))
        case ast.UnaryOp(operand=operand):
            inside = exact(operand)
            return None if inside is None else -inside
        case ast.BinOp(left=left, op=op, right=right):
            a, b = exact(left), exact(right)
            if a is None or b is None or isinstance(op, ast.Pow):
                return None
            return {ast.Add: a.__add__, ast.Sub: a.__sub__, ast.Mult: a.__mul__, ast.Div: a.__truediv__}[type(op)](b)
    return None


def dimension(node: ast.expr) -> Dimension:
    """The dimension of a tree; DeclarationError says which two parts cannot go together."""
    match node:
        case ast.Constant() | ast.Name(id="pi"):
            return NUMBER
        case ast.Name(id=name):
            try:
                return QUANTITIES[name].dimension
            except InputError as error:
                raise DeclarationError(f"the row of the letter '{name}': {error}") from None
        case ast.UnaryOp(operand=operand):
            return dimension(operand)
        case ast.BinOp(left=left, op=ast.Add() | ast.Sub(), right=right):
            a, b = dimension(left), dimension(right)
            if a != b:
                raise DeclarationError(f"'{ast.unparse(left)}' is in {a}, but '{ast.unparse(right)}' is in {b}: they cannot be added or subtracted")
            return a
        case ast.BinOp(left=left, op=ast.Mult(), right=right):
            return dimension(left) * dimension(right)
        case ast.BinOp(left=left, op=ast.Div(), right=right):
            return dimension(left) / dimension(right)
        case ast.BinOp(left=left, op=ast.Pow(), right=right):
            base, power = dimension(left), exact(right)
            if power is not None:
                return base**power
            if base != NUMBER or dimension(right) != NUMBER:
                raise DeclarationError(f"'{ast.unparse(node)}': a power that is not a plain number needs pure numbers on both sides")
            return NUMBER
        case ast.Call(func=ast.Name(id="sqrt"), args=[argument]):
            return dimension(argument) ** Fraction(1, 2)
        case ast.Call(func=ast.Name(id="Integral"), args=[body, ast.Tuple(elts=[variable, low, high])]):
            for limit in (low, high):
                if exact(limit) != 0 and dimension(limit) != dimension(variable):
                    raise DeclarationError(
                        f"'{ast.unparse(node)}': the limit '{ast.unparse(limit)}' is in {dimension(limit)}, the variable in {dimension(variable)}"
                    )
            return dimension(body) * dimension(variable)
        case ast.Call(func=ast.Name(id="Derivative"), args=[body, variable]):
            return dimension(body) / dimension(variable)
        case ast.Call(func=ast.Name(id=name), args=[argument]):
            if dimension(argument) != NUMBER:
                raise DeclarationError(f"'{ast.unparse(node)}': {name} takes a pure number, '{ast.unparse(argument)}' is in {dimension(argument)}")
            return NUMBER
    raise DeclarationError(f"'{ast.unparse(node)}' has no dimension")


@lru_cache(maxsize=4096)
def function_of(text: str) -> tuple[tuple[str, ...], Callable[..., float]]:
    """The letters of an expression, and a function of them."""
    tree = parse_expression(text)
    return letters(tree), numeric(tree, letters(tree))


def numeric(tree: ast.expr, names: tuple[str, ...], checked: tuple[str, ...] | None = None, arrays: bool = False, first: str = "") -> Callable:
    """Compile a tree, as written, to a function of keyword arguments (and of `first` by position).

    Constants of the nomenclature are arguments with a default. With `checked`, those letters must be at least zero, and all must be finite and
    within their row's limit: if not, the function raises ValueError before it computes. With `arrays` the functions are NumPy's.
    """
    arguments = [f"{name}={QUANTITIES[name].constant!r}" if QUANTITIES[name].value else name for name in names]
    arguments.sort(key=lambda argument: "=" in argument)
    head = ", ".join([*([first] if first else []), *(["*", *arguments] if arguments else [])])
    tests = [_finite(name, name in checked, arrays) for name in names] if checked is not None else []
    guard = f"    if not ({' and '.join(tests)}):\n        raise ValueError\n" if tests else ""
    source = f"def compiled({head}):\n{guard}    return {ast.unparse(tree)}\n"
    if arrays:
        import numpy

        namespace = {name: getattr(numpy, name) for name in (*FUNCTIONS, "min", "max")}
    else:
        namespace = {name: getattr(math, name) for name in FUNCTIONS}
    namespace |= {"pi": math.pi, "inf": math.inf}
    exec(compile(source, f"<{ast.unparse(tree)}>", "exec"), namespace)  # our own declarations only
    return namespace["compiled"]


def _finite(name: str, from_zero: bool, arrays: bool) -> str:
    low, most = "0 <=" if from_zero else "-inf <", QUANTITIES[name].limit
    high = "< inf" if most is None else f"<= {most!r}"
    if arrays:
        return f"{low} min({name}, initial=0.0) and max({name}, initial=0.0) {high}"
    bare = f"({name}.__class__ is float or not hasattr({name}, 'units')) and " if QUANTITIES[name].dimension == NUMBER else ""  # degrees are no plain number
    return f"{bare}{low} {name} {high}"
