"""The unit in which a line of a working comes out, and the number: a tree walked with units for its letters, or with the numbers that stand beside them."""

from __future__ import annotations

import ast
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from brimwork import expression, units

ALIKE = 1e-9
_TRIG, _ARCS = ("sin", "cos", "tan"), ("asin", "acos", "atan")
_DEGREE = math.pi / 180
_EXPANDED = {
    "ohm": (("V", 1), ("A", -1)),
    "psi": (("lbf", 1), ("in", -2)),
    "psf": (("lbf", 1), ("ft", -2)),
    "kPa": (("kN", 1), ("m", -2)),
    "Pa": (("N", 1), ("m", -2)),
}


class NotCoherent(ValueError):
    """Two terms of a sum stand in different units, or a function is given a number with a unit."""


@dataclass(frozen=True)
class UnitSize:
    """A unit with its size in SI, and the powers of the names that it is made of."""

    text: str
    size: float
    names: tuple[tuple[str, Fraction], ...]


@cache
def unit_size(text: str) -> UnitSize:
    """A unit of the reader as a measure."""
    if not text:
        return UnitSize("", 1.0, ())
    found: dict[str, Fraction] = {}
    for name, power in units.powers(text):
        for one, times in _EXPANDED.get(name, ((name, 1),)):
            found[one] = found.get(one, Fraction(0)) + times * power
    return UnitSize(text, units.unit(text).factor, _tidy(found))


def _tidy(names: Mapping[str, Fraction]) -> tuple[tuple[str, Fraction], ...]:
    watts = names.get("W", Fraction(0))
    if watts and names.get("J") == -watts:  # a watt is a joule a second
        names = {**names, "W": Fraction(0), "J": Fraction(0), "s": names.get("s", Fraction(0)) - watts}
    return tuple((name, power) for name, power in names.items() if power)


def joined(one: UnitSize, other: UnitSize, sign: int = 1) -> UnitSize:
    names = dict(one.names)
    for name, power in other.names:
        names[name] = names.get(name, Fraction(0)) + sign * power
    return UnitSize("", one.size * other.size**sign, _tidy(names))


def _raised(one: UnitSize, power: Fraction) -> UnitSize:
    return UnitSize("", one.size ** float(power), _tidy({name: old * power for name, old in one.names}))


_PURE = UnitSize("", 1.0, ())


def of_tree(node: ast.expr, of: Mapping[str, UnitSize]) -> UnitSize:
    """The unit in which a line comes out, where its letters stand in `of`. Raises NotCoherent."""
    match node:
        case ast.Constant() | ast.Name(id="pi"):
            return _PURE
        case ast.Name(id=name):
            return of[name]
        case ast.UnaryOp(operand=operand):
            return of_tree(operand, of)
        case ast.BinOp(left=left, op=ast.Add() | ast.Sub(), right=right):
            a, b = of_tree(left, of), of_tree(right, of)
            if not math.isclose(a.size, b.size, rel_tol=ALIKE):
                raise NotCoherent
            return a if len(a.names) <= len(b.names) else b
        case ast.BinOp(left=left, op=ast.Mult(), right=right):
            return joined(of_tree(left, of), of_tree(right, of))
        case ast.BinOp(left=left, op=ast.Div(), right=right):
            return joined(of_tree(left, of), of_tree(right, of), -1)
        case ast.BinOp(left=left, op=ast.Pow(), right=right):
            base, power = of_tree(left, of), expression.exact(right)
            if power is not None:
                return _raised(base, power)
            return _pure(base, of_tree(right, of))
        case ast.Call(func=ast.Name(id="sqrt"), args=[argument]):
            return _raised(of_tree(argument, of), Fraction(1, 2))
        case ast.Call(func=ast.Name(id=name), args=[argument]):
            inside = of_tree(argument, of)
            if name in _TRIG and math.isclose(inside.size, _DEGREE, rel_tol=ALIKE):
                return _PURE
            return _pure(inside)
    raise NotCoherent


def _pure(*ones: UnitSize) -> UnitSize:
    if any(not math.isclose(one.size, 1.0, rel_tol=ALIKE) for one in ones):
        raise NotCoherent
    return _PURE


def outcome(node: ast.expr, of: Mapping[str, UnitSize], wanted: str) -> UnitSize:
    """The same for a whole line; an angle comes out of its sine in degrees where degrees are wanted."""
    inside = of_tree(node, of)
    return unit_size("deg") if wanted == "deg" and is_arc(node) else inside


def is_arc(node: ast.expr) -> bool:
    return isinstance(node, ast.Call) and getattr(node.func, "id", "") in _ARCS


def keyed(node: ast.expr, numbers: Mapping[str, float], of: Mapping[str, UnitSize]) -> float:
    """What a line comes to on a calculator, with the numbers as they stand in it. Raises ArithmeticError, ValueError."""
    match node:
        case ast.Constant(value=int() | float() as value):
            return float(value)
        case ast.Name(id=name):
            return math.pi if name == "pi" else numbers[name]
        case ast.UnaryOp(operand=operand):
            return -keyed(operand, numbers, of)
        case ast.BinOp(left=left, op=op, right=right):
            a, b = keyed(left, numbers, of), keyed(right, numbers, of)
            match op:
                case ast.Add():
                    return a + b
                case ast.Sub():
                    return a - b
                case ast.Mult():
                    return a * b
                case ast.Div():
                    return a / b
            return math.pow(a, b)
        case ast.Call(func=ast.Name(id=name), args=[argument]):
            inside = keyed(argument, numbers, of)
            if name in _TRIG and of_tree(argument, of).size != 1.0:
                inside = math.radians(inside)
            return getattr(math, name)(inside)
    raise ValueError(f"no number for {ast.dump(node)}")


def joined_text(names: Iterable[tuple[str, Fraction]]) -> str:
    """Names with powers as a unit that the reader takes: "lb ft/s2", "m^0.5/s", "s^-1"."""
    names = tuple(names)
    over = " ".join(_powered(name, power) for name, power in names if power > 0)
    if not over:
        return " ".join(f"{name}^{float(power):g}" for name, power in names)
    return "/".join([over, *(_powered(name, -power) for name, power in names if power < 0)])


def _powered(name: str, power: Fraction) -> str:
    if power == 1:
        return name
    if power.denominator == 1:
        return f"{name}{power}"
    return f"{name}^({power})" if power.denominator == 3 else f"{name}^{float(power):g}"
