"""Expressions of hand-written questions: given values by name, worked in SI, with words for units; and texts with values put in.

Unlike a formula, a question may round up, take the larger of two, or mix units as a learner would; so it has functions and unit words of its own.
Only our own declarations come here.
"""

from __future__ import annotations

import ast
import math
import re
from collections.abc import Mapping
from functools import lru_cache

from brimwork import units
from brimwork.dimensions import NUMBER, Dimension
from brimwork.expression import DeclarationError
from brimwork.nomenclature import QUANTITIES

# A unit as a number that multiplies: "3*inch", "Q/(US_gal/hour)".
UNIT_WORDS = {
    **{name: name for name in ("mm", "cm", "m", "ft", "yd", "kg", "lb", "N", "kN", "Pa", "kPa", "psi", "psf", "W", "kW", "kWh", "A", "V", "day", "ohm")},
    **{"inch": "in", "litre": "L", "mL": "mL", "US_gal": "US gal", "imp_gal": "imp gal", "second": "s", "minute": "min", "hour": "h", "tonne": "t"},
    **{"percent": "%", "deg": "deg", "money": "cur", "lbf": "lbf"},
}
_ALIKE = {"abs": abs, "min": min, "max": max}  # functions that keep the unit of what they are given
_PURE = {
    **{name: getattr(math, name) for name in ("exp", "log", "log10", "sin", "cos", "tan", "asin", "acos", "atan")},
    "ceil": lambda x: float(math.ceil(round(x, 9))),
    "floor": lambda x: float(math.floor(round(x, 9))),
}
_NAMESPACE = {"__builtins__": {}, "pi": math.pi, "sqrt": math.sqrt, "g": QUANTITIES["g"].constant, **_ALIKE, **_PURE}
_NAMESPACE |= {word: units.unit(text).factor for word, text in UNIT_WORDS.items()}
_DIMENSIONS = {"pi": NUMBER, "g": QUANTITIES["g"].dimension, **{word: units.unit(text).dimension for word, text in UNIT_WORDS.items()}}
_HOLE = re.compile(r"\{([^{}|]+)(?:\|([^{}|]*)(?:\|(\d))?)?\}")


def names(text: str) -> set[str]:
    """Given values that an expression uses. Raises DeclarationError for anything but arithmetic."""
    tree = _tree(text)
    called = {id(node.func) for node in ast.walk(tree) if isinstance(node, ast.Call)}
    return {node.id for node in ast.walk(tree) if isinstance(node, ast.Name) and id(node) not in called} - _DIMENSIONS.keys()


@lru_cache(maxsize=4096)
def _tree(text: str) -> ast.expr:
    try:
        tree = ast.parse(text.strip(), mode="eval").body
    except SyntaxError as error:
        raise DeclarationError(f"'{text}' is not an expression: {error.msg}") from None
    for node in ast.walk(tree):
        number = isinstance(node, ast.Constant) and type(node.value) in (int, float)
        call = isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in {*_ALIKE, *_PURE, "sqrt"} and not node.keywords
        plain = isinstance(node, ast.Name | ast.BinOp | ast.UnaryOp | ast.Add | ast.Sub | ast.Mult | ast.Div | ast.Pow | ast.USub | ast.Load)
        if not (number or call or plain):
            raise DeclarationError(f"'{text}': {type(node).__name__} has no place in an expression")
    return tree


@lru_cache(maxsize=4096)
def _code(text: str):
    return compile(ast.Expression(_tree(text)), f"<{text}>", "eval")


def value(text: str, given: Mapping[str, float]) -> float:
    """The number (SI) of an expression over `given` (SI). Raises DeclarationError for an unknown name or no finite value."""
    try:
        result = float(eval(_code(text), _NAMESPACE, dict(given)))  # our own declarations only
    except NameError as error:
        raise DeclarationError(f"'{text}': {error}; it is neither given nor a word for a unit") from None
    except (ArithmeticError, ValueError, TypeError) as error:
        raise DeclarationError(f"'{text}' has no value here: {error}") from None
    if not math.isfinite(result):
        raise DeclarationError(f"'{text}' has no finite value here")
    return result


def alone(text: str | float) -> float | None:
    """The number that stands alone, as a number or as text, or None for any other expression. Raises DeclarationError."""
    if not isinstance(text, str):
        return float(text)
    node = _tree(text)
    sign = -1.0 if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub) else 1.0
    inner = node.operand if isinstance(node, ast.UnaryOp) else node
    return sign * float(inner.value) if isinstance(inner, ast.Constant) else None


def dimension(text: str, given: Mapping[str, Dimension]) -> Dimension:
    """The dimension of an expression. Raises DeclarationError where unlike things are added or put into a function."""
    return _dimension(_tree(text), {**_DIMENSIONS, **given}, text)


def _dimension(node: ast.AST, known: dict[str, Dimension], text: str) -> Dimension:
    match node:
        case ast.Constant():
            return NUMBER
        case ast.Name(id=name) if name in known:
            return known[name]
        case ast.UnaryOp(operand=operand):
            return _dimension(operand, known, text)
        case ast.BinOp(left=left, op=ast.Pow(), right=right):
            power = eval(compile(ast.Expression(right), "<power>", "eval"), _NAMESPACE)
            return _dimension(left, known, text) ** power
        case ast.BinOp(left=left, op=op, right=right):
            a, b = _dimension(left, known, text), _dimension(right, known, text)
            if isinstance(op, ast.Mult | ast.Div):
                return a * b if isinstance(op, ast.Mult) else a / b
            return _alike(text, a, b)
        case ast.Call(func=ast.Name(id="sqrt"), args=[argument]):
            return _dimension(argument, known, text) ** 0.5
        case ast.Call(func=ast.Name(id=name), args=arguments):
            found = [_dimension(argument, known, text) for argument in arguments]
            return _alike(text, *found) if name in _ALIKE else _alike(text, NUMBER, *found)
    raise DeclarationError(f"'{text}': '{ast.unparse(node)}' is neither given nor a word for a unit")


def _alike(text: str, *dimensions: Dimension) -> Dimension:
    if any(not same(dimensions[0], other) for other in dimensions):
        raise DeclarationError(f"'{text}' puts together {' and '.join(map(str, dict.fromkeys(dimensions)))}")
    return dimensions[0]


def same(a: Dimension, b: Dimension) -> bool:
    """Whether two dimensions agree; powers such as 2/3 are not exact here."""
    return all(abs(x - y) < 1e-9 for x, y in zip(a, b))


def fill(text: str, given: Mapping[str, float], shown: Mapping[str, str]) -> str:
    """`text` with its holes filled: "{d}" is a given value as the question shows it, "{pi*d|mm}" an expression in a unit to three figures, "{...|mm|4}" to four."""

    def put(hole: re.Match) -> str:
        expression, unit, digits = hole.groups()
        if unit is None and expression in shown:
            return shown[expression]
        return units.write(value(expression, given), unit or "", int(digits or 3))

    return _HOLE.sub(put, text)


def holes(text: str) -> set[str]:
    """Names that stand in the holes of a text."""
    return {name for hole in _HOLE.finditer(text) for name in names(hole[1])}
