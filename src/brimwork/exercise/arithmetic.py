"""Expressions of hand-written questions: given values by name, worked in SI, with words for units; and texts with values put in.

Unlike a formula, a question may round up, take the larger of two, or mix units as a learner would; so it has functions and unit words of its own.
Only our own declarations come here.
"""

from __future__ import annotations

import ast
import math
import re
from collections.abc import Mapping
from fractions import Fraction
from functools import lru_cache

from brimwork import units
from brimwork.dimensions import NUMBER, Dimension
from brimwork.exercise.trees import factors, product, replaced
from brimwork.expression import DeclarationError, exact
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
NAMESPACE = {"__builtins__": {}, "pi": math.pi, "sqrt": math.sqrt, "g": QUANTITIES["g"].fixed, **_ALIKE, **_PURE}
NAMESPACE |= {word: units.unit(text).factor for word, text in UNIT_WORDS.items()}
DIMENSIONS = {"pi": NUMBER, "g": QUANTITIES["g"].dimension, **{word: units.unit(text).dimension for word, text in UNIT_WORDS.items()}}
CONSTANTS = {name: number for name, number in NAMESPACE.items() if isinstance(number, float)}
_HOLE = re.compile(r"\{([^{}|]+)(?:\|([^{}|]*)(?:\|(\d))?)?\}")


def names(text: str) -> set[str]:
    """Given values that an expression uses. Raises DeclarationError for anything but arithmetic."""
    tree = _tree(text)
    called = {id(node.func) for node in ast.walk(tree) if isinstance(node, ast.Call)}
    return {node.id for node in ast.walk(tree) if isinstance(node, ast.Name) and id(node) not in called} - DIMENSIONS.keys()


@lru_cache(maxsize=4096)
def _tree(text: str) -> ast.expr:
    try:
        tree = ast.parse(text.strip(), mode="eval").body
    except SyntaxError as error:
        raise DeclarationError(f"'{text}' is not an expression: {error.msg}") from None
    for node in ast.walk(tree):
        number = isinstance(node, ast.Constant) and type(node.value) in (int, float)
        call = isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in {*_ALIKE, *_PURE, "sqrt"}
        plain = isinstance(node, ast.Name | ast.BinOp | ast.UnaryOp | ast.Add | ast.Sub | ast.Mult | ast.Div | ast.Pow | ast.USub | ast.Load)
        if not (number or call or plain):
            raise DeclarationError(f"'{text}': {type(node).__name__} has no place in an expression")
    return tree


@lru_cache(maxsize=4096)
def _code(text: str):
    return compile(ast.Expression(_tree(text)), f"<{text}>", "eval")


def value_typed(text: str, given: Mapping[str, float]) -> float:
    """The number (SI) of an expression over `given` (SI). Raises DeclarationError for an unknown name or no finite value."""
    try:
        result = float(eval(_code(text), NAMESPACE, dict(given)))  # our own declarations only
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
    number = node.operand if isinstance(node, ast.UnaryOp) else node
    return value_typed(text, {}) if isinstance(number, ast.Constant) else None


def dimension_typed(text: str, given: Mapping[str, Dimension]) -> Dimension:
    """The dimension of an expression. Raises DeclarationError where unlike things are added or put into a function."""
    return _dimension(_tree(text), {**DIMENSIONS, **given}, text)


def dimension_of_typed(tree: ast.expr, known: Mapping[str, Dimension]) -> Dimension:
    """The dimension of a tree whose names are all in `known`. Raises DeclarationError as `dimension` does."""
    return _dimension(tree, dict(known), "this")


def _dimension(node: ast.AST, known: dict[str, Dimension], text: str) -> Dimension:
    match node:
        case ast.Constant():
            return NUMBER
        case ast.Name(id=name) if name in known:
            return known[name]
        case ast.UnaryOp(operand=operand):
            return _dimension(operand, known, text)
        case ast.BinOp(left=left, op=ast.Pow(), right=right):
            try:
                power = eval(compile(ast.fix_missing_locations(ast.Expression(right)), "<power>", "eval"), NAMESPACE)
            except NameError:  # a power that is worked out is a plain number, and so is what stands under it
                return _alike(text, NUMBER, _dimension(left, known, text), _dimension(right, known, text))
            return _dimension(left, known, text) ** Fraction(power).limit_denominator()
        case ast.BinOp(left=left, op=op, right=right):
            a, b = _dimension(left, known, text), _dimension(right, known, text)
            if isinstance(op, ast.Mult | ast.Div):
                return a * b if isinstance(op, ast.Mult) else a / b
            return _alike(text, a, b)
        case ast.Call(func=ast.Name(id="sqrt"), args=[argument]):
            return _dimension(argument, known, text) ** Fraction(1, 2)
        case ast.Call(func=ast.Name(id=name), args=arguments):
            found = [_dimension(argument, known, text) for argument in arguments]
            return _alike(text, *found) if name in _ALIKE else _alike(text, NUMBER, *found)
    raise DeclarationError(f"'{text}': '{ast.unparse(node)}' is neither given nor a word for a unit")


def _alike(text: str, *dimensions: Dimension) -> Dimension:
    if len({*dimensions}) > 1:
        raise DeclarationError(f"'{text}' puts together {' and '.join(map(str, dict.fromkeys(dimensions)))}")
    return dimensions[0]


def fill(text: str, given: Mapping[str, float], shown: Mapping[str, str]) -> str:
    """`text` with its holes filled: "{d}" is a given value as the question shows it, "{pi*d|mm}" an expression in a unit to three figures, "{...|mm|4}" to four."""

    def put(hole: re.Match) -> str:
        expression, unit, digits = hole.groups()
        if unit is None and expression in shown:
            return shown[expression]
        return units.write(value_typed(expression, given), unit or "", int(digits or 3))

    return _HOLE.sub(put, text)


def hole_texts(text: str) -> list[str]:
    """The expressions that stand in the holes of a text."""
    return [hole[1] for hole in _HOLE.finditer(text)]


def holes(text: str) -> set[str]:
    """Names that stand in the holes of a text."""
    return {name for expression in hole_texts(text) for name in names(expression)}


# --- the whole of a working as one tree ---------------------------------------------------------------------------------------------


class Constants:
    """Numbers with a unit that stand in a working ("1000*kg/m**3"), each under a name of its own: value (SI), dimension and text by name."""

    def __init__(self) -> None:
        self.values: dict[str, float] = {}
        self.dimensions: dict[str, Dimension] = {}
        self.texts: dict[str, str] = {}

    def folded(self, node: ast.expr, given: set[str]) -> ast.expr:
        """The tree with a name in the place of each number with a unit."""
        match node:
            case ast.BinOp(op=ast.Mult() | ast.Div()):
                members = [(self.folded(factor, given), over) for factor, over in factors(node)]
                bare = [(factor, over) for factor, over in members if exact(factor) is not None or _is_word(factor)]
                number, unit = any(exact(factor) is not None for factor, _ in bare), any(over and _is_word(factor) for factor, over in bare)
                if not (number and unit and given):
                    return product(members)
                return product([*((factor, over) for factor, over in members if (factor, over) not in bare), (self._named(bare), True)])
            case ast.BinOp(left=left, op=op, right=right):
                return ast.BinOp(self.folded(left, given), op, right if isinstance(op, ast.Pow) else self.folded(right, given))
            case ast.UnaryOp(op=op, operand=operand):
                return ast.UnaryOp(op, self.folded(operand, given))
            case ast.Call(func=func, args=arguments):
                return ast.Call(func, [self.folded(argument, given) for argument in arguments], [])
        return node

    def _named(self, members: list[tuple[ast.expr, bool]]) -> ast.expr:
        size = 1.0
        for factor, over in members:
            if (number := exact(factor)) is not None:
                size = size * float(number) if over else size / float(number)
        above, below = ([_unit_text(factor) for factor, up in members if up is side and exact(factor) is None] for side in (True, False))
        text, whole_text = f"{size:.4g} {'/'.join([' '.join(above), *below])}", ast.unparse(product(members))
        name = next((known for known, shown in self.texts.items() if shown == text), f"constant_{len(self.texts) + 1}")
        self.values[name], self.dimensions[name], self.texts[name] = value_typed(whole_text, {}), dimension_typed(whole_text, {}), text
        return ast.Name(name, ast.Load())


def _is_word(node: ast.expr) -> bool:
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Pow):
        return _is_word(node.left) and exact(node.right) is not None
    return isinstance(node, ast.Name) and node.id in UNIT_WORDS


def _unit_text(node: ast.expr) -> str:
    if isinstance(node, ast.BinOp):
        return f"{_unit_text(node.left)}{exact(node.right)}"
    assert isinstance(node, ast.Name), "only words for units come here"
    return UNIT_WORDS[node.id]


def whole(answer: str, let: Mapping[str, str], given: set[str], constants: Constants) -> tuple[ast.expr, tuple[ast.expr, ...]]:
    """An answer as one tree over the given values, and the named numbers on the way as trees of their own."""
    known: dict[str, ast.expr] = {}
    for name, text in let.items():
        known[name] = constants.folded(replaced(_tree(text), known), given)
    return constants.folded(replaced(_tree(answer), known), given), tuple(known.values())
