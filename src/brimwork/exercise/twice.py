"""Two things done wrong at once with a working: how many of the numbers that come of it would be taken for the right one.

Thousands of pairs come of one working, too many to write each down as a tree. So only numbers go up the tree: every part hands on its right value, those
with one thing done wrong in it, and those with two. That takes a few milliseconds; which two things they were is not kept, and nobody is told of them.
"""

from __future__ import annotations

import ast
import math
import operator
import random
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import lru_cache, partial
from itertools import combinations

from brimwork.exercise import arithmetic
from brimwork.exercise.causes import WayOfWorking
from brimwork.exercise.ways import TURNED
from brimwork.expression import exact

_Work = Callable[[float, float], float]
_OPERATORS: dict[type, _Work] = {ast.Add: operator.add, ast.Sub: operator.sub, ast.Mult: operator.mul, ast.Div: operator.truediv, ast.Pow: math.pow}
_OTHER: dict[type, tuple[_Work, ...]] = {
    ast.Add: (operator.sub,),
    ast.Sub: (operator.add, lambda a, b: b - a),
    ast.Mult: (operator.truediv,),
    ast.Div: (operator.mul, lambda a, b: b / a),
}
_ROUGH = {"pi": (3.0,), "g": (10.0,)}  # what some put for them
_OTHER_CALLS = {name: others[:1] for name, others in TURNED.items()}
_OTHER_POWERS = (0.25, 1 / 3, 0.5, 2 / 3, 1.5, 2.0, 3.0)
_TIMES = (2, 1 / 2, 4, 1 / 4, 10, 1 / 10)  # of a given value: counted twice, halved, its point out of place
_SAME = 1e-9  # relative: what rounding leaves between two workings that are one


@dataclass(frozen=True)
class _Part:
    """What a part of a working can come to: rightly, with one thing done wrong in it, and with two."""

    right: float
    one: list[float] = field(default_factory=list)
    two: list[float] = field(default_factory=list)


def mistaken(working: WayOfWorking, near: float) -> int:
    """How many pairs of things done wrong end within `near` (SI) of the right number; those that undo each other do not count. 0 where it is found by trial."""
    if working.solved:
        return 0
    found = _within(working, working.values, near)
    return max(found - _undone(_Working(ast.unparse(working.tree), working)), 0) if found else 0


@dataclass(frozen=True)
class _Working:
    """A working as a key: equal to any other of the same text."""

    text: str
    working: WayOfWorking = field(compare=False)


@lru_cache(maxsize=2048)
def _undone(of: _Working) -> int:
    """How many pairs give the right number whatever the values are."""
    draw, working = random.Random(1), of.working
    aside = {name: value * draw.uniform(0.96, 1.04) if name in working.shown else value for name, value in sorted(working.values.items())}
    return _within(working, aside, None)


def _within(working: WayOfWorking, values: dict[str, float], near: float | None) -> int:
    """How many pairs end within `near` of the right number, or at that number itself."""
    alike = {name: [other for other in working.shown if other != name and working.kinds[other] == working.kinds[name]] for name in working.shown}
    whole = _part(working.tree, values, alike)
    off = _SAME * abs(whole.right) if near is None else near
    low, high = whole.right - off, whole.right + off
    found = len([number for number in whole.two if low <= number <= high])
    for a, b in combinations(working.used, 2):
        if working.kinds[a] == working.kinds[b]:
            try:
                swapped = _part(working.tree, {**values, a: values[b], b: values[a]}, alike, False)
            except (ArithmeticError, ValueError, TypeError):
                continue
            found += len([number for number in swapped.one if low <= number <= high])
    return found


def _part(node: ast.expr, values: dict[str, float], alike: dict[str, list[str]], twice: bool = True) -> _Part:
    """What a part can come to; not `twice` without the numbers that take two things done wrong, which are most of the work."""
    match node:
        case ast.Constant(value=int() | float() as number):
            return _Part(float(number))
        case ast.Name(id=name):
            value = values[name] if name in values else arithmetic.CONSTANTS[name]
            if name not in alike:
                return _Part(value, [*_ROUGH.get(name, ())])
            return _Part(value, [*(value * times for times in _TIMES), *(values[other] for other in alike[name])])
        case ast.UnaryOp(operand=operand):
            inner = _part(operand, values, alike, twice)
            return _Part(-inner.right, [inner.right, *(-x for x in inner.one)], [*inner.one, *(-x for x in inner.two)] if twice else [])
        case ast.BinOp(left=left, op=ast.Pow(), right=right) if (size := exact(right)) is not None:
            return _raised(_part(left, values, alike, twice), float(size), twice)
        case ast.BinOp(left=left, op=op, right=right):
            return _joined(_part(left, values, alike, twice), _part(right, values, alike, twice), _OPERATORS[type(op)], _OTHER.get(type(op), ()), twice)
        case ast.Call(func=ast.Name(id=name), args=arguments):
            return _called(name, [_part(argument, values, alike, twice) for argument in arguments], twice)
    raise TypeError(ast.dump(node))


def _joined(a: _Part, b: _Part, work: _Work, others: tuple[_Work, ...], twice: bool) -> _Part:
    """Two parts joined: a side never written down, or the sides joined in another way, is one thing wrong."""
    right = work(a.right, b.right)
    one = [*_each(work, a.one, (b.right,)), *_each(work, (a.right,), b.one), a.right, b.right]
    for other in others:
        one += _each(other, (a.right,), (b.right,))
    if not twice:
        return _Part(right, one)
    two = [*_each(work, a.two, (b.right,)), *_each(work, (a.right,), b.two), *_each(work, a.one, b.one), *a.one, *b.one]
    for other in others:
        two += [*_each(other, a.one, (b.right,)), *_each(other, (a.right,), b.one)]
    return _Part(right, one, two)


def _each(work: _Work, left: list[float] | tuple[float, ...], right: list[float] | tuple[float, ...]) -> list[float]:
    try:
        if work is operator.mul:  # these two are most of the work: without a call for each number
            return [x * y for x in left for y in right]
        if work is operator.truediv:
            return [x / y for x in left for y in right]
        return [work(x, y) for x in left for y in right]
    except (ArithmeticError, ValueError, TypeError):
        found = []
        for x in left:
            for y in right:
                try:
                    found.append(work(x, y))
                except (ArithmeticError, ValueError, TypeError):
                    continue
        return found


def _raised(base: _Part, power: float, twice: bool) -> _Part:
    """A power left out, upside down, multiplied by, or another one."""
    powers = {1.0, 1 / power if power else 1.0, -power, *_OTHER_POWERS} - {power}
    works: list[Callable[[float], float]] = [partial(_to_power, power=other) for other in powers]
    works.append(lambda x: x * power)
    return _through(base, partial(_to_power, power=power), works, twice)


def _to_power(x: float, power: float) -> float:
    return math.pow(x, power)


def _through(inner: _Part, right: Callable[[float], float], others: list[Callable[[float], float]], twice: bool) -> _Part:
    def each(work: Callable[[float], float], numbers: list[float]) -> list[float]:
        try:
            return [work(x) for x in numbers]
        except (ArithmeticError, ValueError, TypeError):
            return _each(lambda x, _: work(x), numbers, (0.0,))

    one, two = each(right, inner.one), each(right, inner.two)
    for other in others:
        one += each(other, [inner.right])
        two += each(other, inner.one) if twice else []
    return _Part(right(inner.right), one, two)


def _called(name: str, arguments: list[_Part], twice: bool) -> _Part:
    work: Callable[..., float] = arithmetic.NAMESPACE[name]
    if len(arguments) > 1:
        first, *rest = arguments
        for part in rest:
            first = _joined(first, part, work, (), twice)
        return first
    if name == "sqrt":
        return _through(arguments[0], work, [lambda x: x, lambda x: x / 2, lambda x: x**2], twice)
    return _through(arguments[0], work, [arithmetic.NAMESPACE[other] for other in _OTHER_CALLS.get(name, ())] + [lambda x: x], twice)
