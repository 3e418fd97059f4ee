"""The working of a formula in pieces, each one line: what a worked example shows in full, and a faded one with its last lines blank.

Pieces come from the formula's declaration and nowhere else: from its derivation where that names quantities on the way (speed, then friction head), and
from its expression, in which a root, a power, a sum, a term of a sum or what stands below a line is a piece of its own.
"""

from __future__ import annotations

import ast
import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from brimwork import coherent, expression, typeset, units
from brimwork.dimensions import NUMBER, Dimension
from brimwork.expression import FUNCTIONS
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES

_CALCULUS = ("Integral", "Derivative")


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
        return QUANTITIES[self.key].si if self.named else coherent.unit_of_si(expression.dimension(self.written))


@dataclass(frozen=True)
class Worked:
    """A formula worked in pieces; `values` holds the letters given and the constants, `found` what each piece came to, all SI.

    `stated` has the units in which letters are given, for those that are not given in the unit of pages.
    """

    formula: Formula
    pieces: tuple[Piece, ...]
    values: dict[str, float]
    found: dict[str, float]
    stated: Mapping[str, str] = field(default_factory=dict)

    @cached_property
    def lines(self) -> tuple[tuple[str, ast.expr, Dimension], ...]:
        return tuple((piece.key, piece.tree, expression.dimension(piece.written)) for piece in self.pieces)

    @cached_property
    def chosen(self) -> coherent.LineUnits:
        """The units of the lines."""
        used = {name for piece in self.pieces for name in expression.letters(piece.written)}
        return coherent.line_units(self.formula.result, self.lines, [name for name in self.values if name in used], self.stated)

    @cached_property
    def given(self) -> dict[str, coherent.GivenNumber]:
        """Given values and constants, as they are given and as they go into the lines."""
        return {
            name: coherent.given_number(name, value, self.chosen.unit[name], self.stated.get(name, ""))
            for name, value in self.values.items()
            if name in self.chosen.unit
        }

    @cached_property
    def shown(self) -> dict[str, str]:
        """What each line comes to, worked with the numbers that are shown."""
        numbers = {name: float(one.put_in) for name, one in self.given.items()}
        return coherent.shown_results(self.lines, self.chosen, numbers, self.found[self.formula.result])

    def unit(self, piece: Piece) -> str:
        """The unit of a piece as it stands in the lines."""
        return self.chosen.unit[piece.key]

    def asked_in(self, piece: Piece) -> str:
        """The unit in which a learner is asked for it where the line does not stand there."""
        return QUANTITIES[piece.key].here if piece.named else self.unit(piece)

    def left(self, piece: Piece, target: typeset.Latex = typeset.LATEX) -> str:
        """What the line is about: "v = 4 Q/(pi d^2)", or "H^(3/2)" where the piece has no letter."""
        written = typeset.write_tree(piece.written, target)
        return f"{target.letter(piece.key)}{target.equals}{written}" if piece.named else written

    def put_in(self, piece: Piece, target: typeset.Latex = typeset.LATEX, hidden: dict[str, str] | None = None) -> str:
        """The line with numbers in it; `hidden` gives what stands in place of values that are not shown yet."""
        return typeset.put_in(piece.tree, lambda key: (hidden or {}).get(key) or self.value(key, target), self.chosen.factors[piece.key], target)

    def value(self, key: str, target: typeset.Latex = typeset.LATEX) -> str:
        """A number with its unit: as it goes in, or as a line gave it."""
        number = self.given[key].put_in if key in self.given else self.shown[key]
        return typeset.quantity(number, self.chosen.unit[key], target)

    def units_only(self, piece: Piece, target: typeset.Latex = typeset.LATEX) -> str:
        """The line with units in place of numbers; plain numbers are left out of products."""
        of = self.chosen.unit
        bare = _bare(piece.tree, {key for key, unit in of.items() if not unit or units.unit(unit).dimension == NUMBER})
        alone = isinstance(bare, ast.Constant)
        text = typeset.write_tree(bare, target, lambda key: target.unit(of[key]).strip().removeprefix(r"\,") or "1")
        by = [typeset.by(replace(factor, number=""), target) for factor in self.chosen.factors[piece.key]]
        return "".join(
            [target.brackets(text) if by and isinstance(bare, ast.BinOp) and isinstance(bare.op, ast.Add | ast.Sub) else "1" if alone else text, *by]
        )

    def line(self, piece: Piece, target: typeset.Latex = typeset.PLAIN) -> str:
        """The whole line: letters, numbers, value."""
        return target.equals.join((self.left(piece, target), self.put_in(piece, target), self.value(piece.key, target)))


def worked(formula: Formula, values: dict[str, float], stated: Mapping[str, str] | None = None) -> Worked:
    """`formula` worked in pieces at `values` (SI). Raises InputError as the formula does, ValueError for one that is solved by trial."""
    if formula.implicit:
        raise ValueError(f"'{formula.name}' has its result on both sides and is solved by trial: it has no working in pieces")
    result = formula(**values)
    given = {**{name: QUANTITIES[name].fixed for name in formula.constants}, **formula.only(values)}
    whole = Piece(formula.result, formula.right, formula.right)
    for pieces in (tuple(_pieces(_chain(formula))), tuple(_pieces([(formula.result, formula.right)])), (whole,)):
        found = results(pieces, given) if pieces and all(map(_has_unit, pieces)) else {}
        if found and math.isclose(found[formula.result], result, rel_tol=1e-9):
            return Worked(formula, pieces, given, found, stated or {})
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
