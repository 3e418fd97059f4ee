"""The working of a formula in pieces, each one line: what a worked example shows in full, and a faded one with its last lines blank.

Pieces come from the formula's declaration and nowhere else: from its derivation where that names quantities on the way (speed, then friction head), and
from its expression, in which a root, a power, a sum, a term of a sum or what stands below a line is a piece of its own.
"""

from __future__ import annotations

import ast
import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from brimwork import expression, typeset, units
from brimwork.dimensions import BASE, NUMBER, Dimension
from brimwork.expression import FUNCTIONS
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES

FIGURES = 4  # significant figures of a value on the way
_CALCULUS = ("Integral", "Derivative")
_WITH_A_NAME = ("N", "Pa", "W")
_IN_POUNDS = ("lb", "lbf", "psf", "lbf ft", "lb/ft3", "lb/ft2", "lbf/ft3", "lbf/ft")  # what a part of a working is written in, for the US


@dataclass(frozen=True)
class Piece:
    """One line. `key` is the letter it gives, or "part_1"; `tree` works with letters and earlier pieces; `written` holds letters only."""

    key: str
    tree: ast.expr
    written: ast.expr

    @property
    def named(self) -> bool:
        return self.key in QUANTITIES

    @cached_property
    def unit(self) -> str:
        """The SI unit of its value, as it stands in the working."""
        return QUANTITIES[self.key].si if self.named else unit_text(expression.dimension(self.written))


@dataclass(frozen=True)
class Worked:
    """A formula worked in pieces; `values` holds the letters given and the constants, `found` what each piece came to, all SI."""

    formula: Formula
    pieces: tuple[Piece, ...]
    values: dict[str, float]
    found: dict[str, float]

    @cached_property
    def _unit(self) -> Callable[[str], str]:
        """How the lines write a unit of SI."""
        return typeset.turning((self.formula.result, *self.values))

    def unit(self, piece: Piece) -> str:
        """The unit of a piece as it stands in the lines."""
        unit = self._unit(piece.unit)
        if piece.named or unit == piece.unit or self._unit("kg") == "kg":
            return unit
        return next((name for name in _IN_POUNDS if units.unit(name).dimension == units.unit(unit).dimension), unit)

    def asked_in(self, piece: Piece) -> str:
        """The unit in which a learner is asked for it."""
        return QUANTITIES[piece.key].here if piece.named else self.unit(piece)

    def left(self, piece: Piece, target: typeset.Latex = typeset.LATEX) -> str:
        """What the line is about: "v = 4 Q/(pi d^2)", or "H^(3/2)" where the piece has no letter."""
        written = typeset.write_tree(piece.written, target)
        return f"{target.letter(piece.key)}{target.equals}{written}" if piece.named else written

    def put_in(self, piece: Piece, target: typeset.Latex = typeset.LATEX, hidden: dict[str, str] | None = None) -> str:
        """The line with numbers in it; `hidden` gives what stands in place of values that are not shown yet."""
        return typeset.write_tree(piece.tree, target, lambda key: (hidden or {}).get(key) or self.value(key, target))

    def value(self, key: str, target: typeset.Latex = typeset.LATEX) -> str:
        """A number with its unit: as given, or to four figures where a piece gave it."""
        if key in self.values:
            return typeset.value(key, self.values[key], target, turn=self._unit)
        piece = next(piece for piece in self.pieces if piece.key == key)
        return f"{target.number(units.number(units.convert(self.found[key], self.unit(piece)), FIGURES))}{target.unit(self.unit(piece))}"

    def units_only(self, piece: Piece, target: typeset.Latex = typeset.LATEX) -> str:
        """The line with units in place of numbers; plain numbers are left out of products."""
        of = {one.key: self.unit(one) for one in self.pieces} | {key: self._unit(QUANTITIES[key].si) for key in self.values}
        bare = _bare(piece.tree, {key for key, unit in of.items() if not unit or units.unit(unit).dimension == NUMBER})
        return typeset.write_tree(bare, target, lambda key: target.unit(of[key]).strip().removeprefix(r"\,") or "1")

    def line(self, piece: Piece, target: typeset.Latex = typeset.PLAIN) -> str:
        """The whole line: letters, numbers, value."""
        return target.equals.join((self.left(piece, target), self.put_in(piece, target), self.value(piece.key, target)))


def worked(formula: Formula, values: dict[str, float]) -> Worked:
    """`formula` worked in pieces at `values` (SI). Raises InputError as the formula does, ValueError for one that is solved by trial."""
    if formula.implicit:
        raise ValueError(f"'{formula.name}' has its result on both sides and is solved by trial: it has no working in pieces")
    result = formula(**values)
    given = {**{name: QUANTITIES[name].fixed for name in formula.constants}, **formula.only(values)}
    whole = Piece(formula.result, formula.right, formula.right)
    for pieces in (tuple(_pieces(_chain(formula))), tuple(_pieces([(formula.result, formula.right)])), (whole,)):
        found = results(pieces, given) if pieces and all(map(_has_unit, pieces)) else {}
        if found and math.isclose(found[formula.result], result, rel_tol=1e-9):
            return Worked(formula, pieces, given, found)
    raise ValueError(f"the pieces of '{formula.name}' do not come to its value")


def _has_unit(piece: Piece) -> bool:
    """Whether its unit can be typed: fitted powers, such as 1.852, make units on the way that nobody would write."""
    return piece.named or all(power.denominator <= 4 for power in expression.dimension(piece.written))


def results(pieces: tuple[Piece, ...], values: dict[str, float], instead: dict[str, float] | None = None) -> dict[str, float]:
    """What each piece comes to (SI); `instead` puts a learner's own numbers in place of some. Raises ArithmeticError or ValueError where there is none."""
    found: dict[str, float] = {}
    for piece in pieces:
        found[piece.key] = piece_number(piece.tree, {**values, **found, **(instead or {})})
    return found


def piece_number(node: ast.expr, values: dict[str, float]) -> float:
    """The value (SI) of a tree whose letters stand in `values`."""
    match node:
        case ast.Constant(value=int() | float() as value):
            return float(value)
        case ast.Name(id=name):
            return math.pi if name == "pi" else values[name]
        case ast.UnaryOp(operand=operand):
            return -piece_number(operand, values)
        case ast.BinOp(left=left, op=op, right=right):
            a, b = piece_number(left, values), piece_number(right, values)
            return {ast.Add: lambda: a + b, ast.Sub: lambda: a - b, ast.Mult: lambda: a * b, ast.Div: lambda: a / b, ast.Pow: lambda: math.pow(a, b)}[
                type(op)
            ]()
        case ast.Call(func=ast.Name(id=name), args=[argument]):
            return getattr(math, name)(piece_number(argument, values))
    raise ValueError(f"no number for {ast.dump(node)}")


def unit_text(dimension: Dimension) -> str:
    """The SI unit of a dimension as the reader of units takes it: "Pa", "m^1.5", "m^0.5/s", "s^-1"; nothing for a plain number."""
    for name in _WITH_A_NAME:
        if units.unit(name).dimension == dimension:
            return name
    over = " ".join(_powered(name, power) for name, power in zip(BASE, dimension) if power > 0)
    if not over:
        return " ".join(f"{name}^{float(power):g}" for name, power in zip(BASE, dimension) if power)
    return "/".join([over, *(_powered(name, -power) for name, power in zip(BASE, dimension) if power < 0)])


def _powered(name: str, power: Fraction) -> str:
    if power == 1:
        return name
    if power.denominator == 1:
        return f"{name}{power}"
    return f"{name}^({power})" if power.denominator == 3 else f"{name}^{float(power):g}"


def _bare(node: ast.expr, plain: set[str]) -> ast.expr:
    """The tree without the plain numbers that only multiply or divide; a part that is nothing but numbers is 1."""
    if {name.id for name in ast.walk(node) if isinstance(name, ast.Name)} - {"pi", *FUNCTIONS} <= plain:
        return ast.Constant(1)
    match node:
        case ast.BinOp(left=left, op=ast.Mult() | ast.Div() as op, right=right):
            a, b = _bare(left, plain), _bare(right, plain)
            if isinstance(b, ast.Constant):
                return a
            return b if isinstance(a, ast.Constant) and isinstance(op, ast.Mult) else ast.BinOp(a, op, b)
        case ast.BinOp(left=left, op=ast.Pow() as op, right=right):
            return ast.BinOp(_bare(left, plain), op, right)
        case ast.BinOp(left=left, op=op, right=right):
            return ast.BinOp(_bare(left, plain), op, _bare(right, plain))
        case ast.UnaryOp(operand=operand):
            return _bare(operand, plain)
        case ast.Call(func=func, args=[argument]):
            return ast.Call(func, [_bare(argument, plain)], [])
    return node


# --- quantities on the way, from the derivation -------------------------------------------------------------------------------------


def _chain(formula: Formula) -> list[tuple[str, ast.expr]]:
    """Letters with what they are, in order, from the given values to the result; empty where the derivation is no such chain."""
    known, kept, same = {*formula.inputs, *formula.constants}, [], dict[str, ast.expr]()
    for letter, tree in _relations(formula):
        tree = _replaced(tree, same)
        if letter in known or letter in same or not {*expression.letters(tree)} <= known:
            continue
        if isinstance(tree, ast.Name):
            same[letter] = tree
            continue
        kept.append((letter, tree))
        known.add(letter)
        if letter == formula.result:
            return _needed(kept) if len(kept) > 1 else []
    return []


def _relations(formula: Formula) -> Iterator[tuple[str, ast.expr]]:
    for step in formula.steps:
        if isinstance(step, Formula):
            if not step.implicit:
                yield step.result, step.right
        elif getattr(step, "relation", ""):
            left, right = expression.parse_relation(step.relation)
            calculus = any(isinstance(node, ast.Call) and getattr(node.func, "id", "") in _CALCULUS for node in ast.walk(right))
            if isinstance(left, ast.Name) and not calculus:
                yield left.id, right


def _needed(kept: list[tuple[str, ast.expr]]) -> list[tuple[str, ast.expr]]:
    """Those that the last one rests on."""
    wanted, out = {kept[-1][0]}, list[tuple[str, ast.expr]]()
    for letter, tree in reversed(kept):
        if letter in wanted:
            out.insert(0, (letter, tree))
            wanted |= {*expression.letters(tree)}
    return out


def _replaced(tree: ast.expr, names: dict[str, ast.expr]) -> ast.expr:
    class Put(ast.NodeTransformer):
        def visit_Name(self, node: ast.Name) -> ast.expr:
            return names.get(node.id, node)

    return Put().visit(ast.parse(ast.unparse(tree), mode="eval").body)


# --- parts of an expression ---------------------------------------------------------------------------------------------------------


def _pieces(chain: list[tuple[str, ast.expr]]) -> Iterator[Piece]:
    count = 0
    for letter, tree in chain:
        parts: list[tuple[str, ast.expr, ast.expr]] = []
        top = _split(tree, None, parts, count)
        count += len(parts)
        for key, part, written in parts:
            yield Piece(key, part, written)
        yield Piece(letter, top, tree)


def _split(node: ast.expr, above: ast.expr | None, parts: list, count: int) -> ast.expr:
    """The tree with its parts that deserve a line of their own taken out, innermost first, into `parts`."""
    match node:
        case ast.BinOp(left=left, op=op, right=right):
            at_left = _split(left, node, parts, count)
            new: ast.expr = ast.BinOp(at_left, op, right if isinstance(op, ast.Pow) else _split(right, node, parts, count))
        case ast.UnaryOp(op=op, operand=operand):
            new = ast.UnaryOp(op, _split(operand, node, parts, count))
        case ast.Call(func=func, args=[argument]):
            new = ast.Call(func, [_split(argument, node, parts, count)], [])
        case _:
            return node
    if above is None or not _own_line(node, above):
        return new
    key = f"part_{count + len(parts) + 1}"
    parts.append((key, new, node))
    return ast.Name(key, ast.Load())


def _own_line(node: ast.expr, above: ast.expr) -> bool:
    held = {*expression.letters(node)}
    match node:
        case ast.Call():
            return True
        case ast.BinOp(op=ast.Pow(), right=right):
            power = expression.exact(right)
            return bool(held) and (power is None or power.denominator != 1)
        case ast.BinOp(op=ast.Add() | ast.Sub()):
            return bool(held) and not (isinstance(above, ast.BinOp) and isinstance(above.op, ast.Add | ast.Sub))
        case ast.BinOp(op=ast.Mult() | ast.Div()):
            below = isinstance(above, ast.BinOp) and isinstance(above.op, ast.Div) and above.right is node
            term_or_base = isinstance(above, ast.BinOp) and isinstance(above.op, ast.Pow | ast.Add | ast.Sub)
            return len(held) > 1 and (below or term_or_base)
    return False
