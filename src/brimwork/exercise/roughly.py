"""Rough work with a working: how many of the numbers that come of it would be taken for the right one.

One thing is done roughly: a number rounded, doubled or left out, pi put in as 3, a power or an angle taken for an easier one; for a sum its mean, one side
or the diagonal; half or twice of what is added; a mean of two given values for both, a power of one, one kind of gallon for the other. As in `twice.py` only
numbers go up the tree, and nobody is told which it was: numbers by which one of them would pass are not drawn where others can be.
"""

from __future__ import annotations

import ast
import math
import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import combinations

from brimwork import units
from brimwork.dimensions import NUMBER
from brimwork.exercise import arithmetic
from brimwork.exercise.causes import WayOfWorking, compiled_once
from brimwork.expression import exact

_SEEN = 0.02  # relative: a number rounded by less than this is rounded, and no mistake
_REMEMBERED, _POWER = 4, 6  # figures of a number, and a power, that people carry in their heads
_SAME = 1e-9  # relative: what rounding leaves between two workings that are one
_POWERS = (0.5, 2, 3)  # of a given value; one that is near 1 hides them all
_GALLONS = (0.8327, 1.2009)  # US over imperial, and the other way round
_NONE = math.nan  # in the place of what cannot be worked: so all lists of one tree are of one length

_Calc = Callable[..., float]
_JOIN: dict[type, _Calc] = {
    ast.Add: lambda a, b: a + b,
    ast.Sub: lambda a, b: a - b,
    ast.Mult: lambda a, b: a * b,
    ast.Div: lambda a, b: a / b,
    ast.Pow: math.pow,
}
_MEANS: tuple[_Calc, ...] = (
    lambda a, b: (a + b) / 2,
    lambda a, b: math.sqrt(a * b),
    lambda a, b: math.hypot(a, b) / math.sqrt(2),
    lambda a, b: 2 * a * b / (a + b),
)
_CALLS: dict[str, tuple[_Calc, ...]] = {
    "sqrt": (lambda x: x, lambda x: x / 2),
    "sin": (lambda x: x, math.cos, math.tan),
    "cos": (lambda x: 1.0, math.sin, lambda x: 1 - x),
    "tan": (lambda x: x, math.sin),
    "exp": (lambda x: 1 + x,),
    "log": (math.log10, lambda x: x - 1),
    "log10": (math.log,),
}


@dataclass(frozen=True)
class _Rough:
    """What a part comes to, rightly and with one thing rough in it."""

    right: float
    rough: list[float]


@dataclass(frozen=True)
class _Key:
    """A working as a key: equal to any other of the same text."""

    text: str
    working: WayOfWorking = field(compare=False)


def passing_roughly(working: WayOfWorking, near: float) -> int:
    """How many numbers of rough work lie within `near` (SI) of the right one. 0 where the result is found by trial."""
    if working.solved:
        return 0
    right, numbers = _numbers(working, working.values)
    close = [place for place, number in enumerate(numbers) if abs(number - right) <= near]
    return len({*close} - _no_mistake(_Key(ast.unparse(working.tree), working))) if close else 0


@lru_cache(maxsize=2048)
def _no_mistake(of: _Key) -> frozenset[int]:
    """The places of those that give the right number whatever the values are; and of every mean of two values that are only added up."""
    draw = random.Random(1)
    aside = {name: value * draw.uniform(0.9, 1.1) if name in of.working.shown else value for name, value in sorted(of.working.values.items())}
    right, numbers = _numbers(of.working, aside)
    same = {place for place, number in enumerate(numbers) if abs(number - right) <= _SAME * abs(right)}
    means = len(_MEANS) * len(_pairs(of.working))
    first = len(numbers) - means
    return frozenset(same | {place + other for place in range(first, len(numbers), len(_MEANS)) if place in same for other in range(len(_MEANS))})


def _numbers(working: WayOfWorking, values: dict[str, float]) -> tuple[float, list[float]]:
    whole = _part(working.tree, values)
    others = (working.number(compiled_once(working.tree), {**values, **other}) for other in _other_values(working, values))
    return whole.right, [*whole.rough, *(_NONE if number is None else number for number in others)]


def _pairs(working: WayOfWorking) -> list[tuple[str, str]]:
    """Given values of one kind that somebody may take a mean of: one letter with two indices (not k, for all kinds of factors), or letters without any."""
    alike = ((a, b) for a, b in combinations(sorted(working.used), 2) if working.kinds[a] == working.kinds[b])
    return [(a, b) for a, b in alike if (_letter(a) == _letter(b) != "k") or "_" not in a + b and working.kinds[a] != NUMBER]


def _letter(name: str) -> str:
    return name.partition("_")[0]


def _other_values(working: WayOfWorking, values: dict[str, float]) -> Iterator[dict[str, float]]:
    """Given values that were taken roughly: to another power, in SI and as they are shown; one kind of gallon for the other; a mean of two for both."""
    for name in sorted(working.used):
        size = units.unit(working.shown[name]).factor
        yield from ({name: _worked(math.pow, values[name] / one, power) * one} for one in {1.0, size} for power in _POWERS)
        if "gal" in working.shown[name]:
            yield from ({name: values[name] * times} for times in _GALLONS)
    for a, b in _pairs(working):
        yield from (dict.fromkeys((a, b), _worked(mean, values[a], values[b])) for mean in _MEANS)


def _worked(work: _Calc, *of: float) -> float:
    try:
        found = work(*of)
        return _NONE if isinstance(found, complex) else found
    except (ArithmeticError, ValueError, TypeError):
        return _NONE


def _part(node: ast.expr, values: dict[str, float]) -> _Rough:
    match node:
        case ast.Constant(value=int() | float() as number):
            return _Rough(float(number), [*_other_numbers(float(number))])
        case ast.Name(id=name):
            return _Rough(values[name] if name in values else arithmetic.CONSTANTS[name], [3.0, 1.0] if name == "pi" else [])
        case ast.UnaryOp(operand=operand):
            inner = _part(operand, values)
            return _Rough(-inner.right, [-x for x in inner.rough])
        case ast.BinOp(left=left, op=ast.Pow(), right=right) if (size := exact(right)) is not None:
            base, power = _part(left, values), float(size)
            others = [_worked(math.pow, base.right, other) for other in _other_powers(power)] + [base.right * power]
            return _Rough(_worked(math.pow, base.right, power), [*(_worked(math.pow, x, power) for x in base.rough), *others])
        case ast.BinOp(left=left, op=op, right=right):
            a, b, work = _part(left, values), _part(right, values), _JOIN[type(op)]
            rough = [*(_worked(work, x, b.right) for x in a.rough), *(_worked(work, a.right, x) for x in b.rough)]
            if isinstance(op, ast.Add | ast.Sub):
                rough += [_worked(work, a.right, b.right) / 2, a.right, b.right, math.hypot(a.right, b.right), _worked(_MEANS[1], a.right, b.right)]
                rough += [_worked(work, x, y) for times in (2, 0.5) for x, y in ((times * a.right, b.right), (a.right, times * b.right))]
            return _Rough(_worked(work, a.right, b.right), rough)
        case ast.Call(func=ast.Name(id=name), args=[only]):
            inner, work = _part(only, values), arithmetic.NAMESPACE[name]
            others = [_worked(other, inner.right) for other in _CALLS.get(name, ())]
            return _Rough(_worked(work, inner.right), [*(_worked(work, x) for x in inner.rough), *others])
        case ast.Call(func=ast.Name(id=name), args=arguments):
            parts, work = [_part(argument, values) for argument in arguments], arithmetic.NAMESPACE[name]
            whole = [part.right for part in parts]
            rough = [_worked(work, *whole[:place], x, *whole[place + 1 :]) for place, part in enumerate(parts) for x in part.rough]
            return _Rough(_worked(work, *whole), rough)
    raise TypeError(ast.dump(node))


@lru_cache(maxsize=1024)
def _other_numbers(number: float) -> tuple[float, ...]:
    """A plain number doubled, halved, or rounded so far that it is another one; one of many figures comes of a fit and is copied as it stands."""
    if number in (0, 1) or abs(float(f"{number:.{_REMEMBERED}g}") - number) > _SAME * abs(number):
        return ()
    rounded = {float(f"{number:.{figures}g}") for figures in (1, 2)}
    return (2 * number, number / 2, *sorted(other for other in rounded if abs(other / number - 1) > _SEEN))


@lru_cache(maxsize=1024)
def _other_powers(power: float) -> tuple[float, ...]:
    """The easier powers on both sides of it; one beyond `_POWER` comes of a fit and is copied as it stands."""
    if abs(power) > _POWER:
        return ()
    return tuple(sorted({math.floor(power), math.ceil(power), round(2 * power) / 2, power - 0.5, power + 0.5} - {power, 0}))
