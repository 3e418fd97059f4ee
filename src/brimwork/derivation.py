"""Verifies the steps of a derivation, one by one, from what stands before; the only user of SymPy.

Laws and takes are the two kinds of step that are not proved. Every other step ends as "algebra" (SymPy shows that both sides agree) or as
"numbers" (they agree to 30 digits at many random points of the usual ranges). Anything else raises NotProved.
"""

from __future__ import annotations

import ast
import random
from collections.abc import Callable, Set
from dataclasses import dataclass
from functools import cache

import sympy

from brimwork import expression
from brimwork.conditions import holds
from brimwork.expression import DeclarationError
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES
from brimwork.steps import Approach, Eliminate, Law, Ode, Optimum, Rearrange, Solve, Step, Take

_POINTS, DIGITS, _CLOSE = 24, 40, sympy.Float("1e-30", 40)


class NotProved(ValueError):
    """A step does not follow from what stands before it; the message names formula and step."""


@dataclass(frozen=True)
class Proven:
    """A step as readers see it: kind ("law", "take", "formula" or "step"), text, both sides, and how it was verified ("", "algebra", "numbers")."""

    kind: str
    reason: str
    left: ast.expr
    right: ast.expr
    how: str


@cache
def derived(formula: Formula) -> tuple[Proven, ...]:
    """The verified derivation of `formula`; empty for a fitted formula without steps. Raises NotProved."""
    steps = formula.steps
    if not steps and formula.inverse_of:
        steps = (Solve("solve for the letter wanted", of=formula.inverse_of.result),)
    argument = _Argument(formula)
    if formula.inverse_of and not formula.steps:
        derived(formula.inverse_of)
        argument.define(*expression.parse_relation(formula.inverse_of.relation))
    shown = []
    for place, step in enumerate(steps, start=1):
        try:
            shown.append(argument.follow(step))
        except (DeclarationError, NotProved, NotImplementedError) as error:  # the last from SymPy, for an equation it cannot solve
            raise NotProved(f"formula '{formula.name}', step {place} ({_title(step)}): {error}") from None
    if steps and not _same(shown[-1], formula):
        raise NotProved(f"formula '{formula.name}': the last step, {_text(shown[-1].left, shown[-1].right)}, is not the formula")
    if steps and any(_text(one.left, one.right) == _text(formula.left, formula.right) for one in shown[:-1] if one.kind in ("law", "take")):
        raise NotProved(f"formula '{formula.name}': it stands among what is taken for granted, so its last step shows nothing; say defined= or fitted=")
    if steps and not shown[-1].how:
        raise NotProved(f"formula '{formula.name}': its last step is taken for granted, not shown: end with a step that follows from what stands before")
    return tuple(shown)


def status_of_step(formula: Formula) -> str:
    """How the formula stands: "algebra", "numbers", "fitted" or "defined"; one that rests on a fitted formula is no better than that."""
    ways = {proven.how for proven in derived(formula)}
    below = {status_of_step(earlier) for earlier in (formula.inverse_of, *formula.steps) if isinstance(earlier, Formula)}
    if formula.defined:
        return "defined"
    if formula.fitted or "fitted" in below:
        return "fitted"
    return "numbers" if "numbers" in ways | below else "algebra"


def _title(step) -> str:
    return step.name if isinstance(step, Law | Formula) else step.reason


def _same(last: Proven, formula: Formula) -> bool:
    return _text(last.left, last.right) == _text(formula.left, formula.right)


def _text(left: ast.expr, right: ast.expr) -> str:
    return f"{ast.unparse(left)} = {ast.unparse(right)}"


class _Argument:
    """What stands so far: definitions (letter -> tree) and further equations between letters."""

    def __init__(self, formula: Formula):
        self.formula = formula
        self.defined: dict[str, ast.expr] = {}
        self.equations: list[tuple[ast.expr, ast.expr]] = []

    def follow(self, step) -> Proven:
        text = getattr(step, "relation", "") or self.formula.relation
        left, right = expression.parse_relation(text)
        self._balance(left, right)
        if isinstance(step, Law):
            self.define(left, right)
            return Proven("law", step.name, left, right, "")
        if isinstance(step, Formula):
            derived(step)
            self.define(left, right)
            return Proven("formula", step.name, left, right, "")
        if isinstance(step, Take):
            name = self._new_letter(left, right)
            self.defined[name] = right
            return Proven("take", step.reason, left, right, "")
        how = _CHECKS[type(step)](self, step, left, right)
        return Proven("step", step.reason, left, right, how)

    @staticmethod
    def _balance(left: ast.expr, right: ast.expr) -> None:
        a, b = expression.dimension(left), expression.dimension(right)
        if a != b and expression.exact(right) != 0:
            raise NotProved(f"the two sides of {_text(left, right)} do not balance: {a} against {b}")

    def _new_letter(self, left: ast.expr, right: ast.expr) -> str:
        if not isinstance(left, ast.Name) or left.id in self.defined or left.id in expression.letters(right) or QUANTITIES[left.id].value:
            raise NotProved(f"a modelling choice names one new quantity on its left; '{ast.unparse(left)}' is not new")
        return left.id

    def define(self, left: ast.expr, right: ast.expr) -> None:
        if isinstance(left, ast.Name) and left.id not in self.defined and left.id not in expression.letters(right):
            self.defined[left.id] = right
        else:
            self.equations.append((left, right))

    # each returns how it was verified, or raises NotProved

    def _step(self, step: Step, left: ast.expr, right: ast.expr) -> str:
        if isinstance(left, ast.Name) and left.id in self.defined and left.id in expression.letters(right):  # the result on both sides
            return self._agree(self._expand(self.defined[left.id], keep={left.id}), self._expand(right, keep={left.id}), _text(left, right))
        return self._agree(self._expand(left), self._expand(right), _text(left, right))

    def _eliminate(self, step: Eliminate, left: ast.expr, right: ast.expr) -> str:
        out = {*step.out}
        pairs = [(ast.Name(name, ast.Load()), tree) for name, tree in self.defined.items()] + self.equations
        used = [pair for pair in pairs if out & set(expression.letters(*pair))]
        goal = left.id if isinstance(left, ast.Name) else None
        unknowns = [_symbol(name) for name in (*step.out, *([goal] if goal else []))]
        solutions = sympy.solve([_sympy(a) - _sympy(b) for a, b in used], unknowns, dict=True)
        solutions = [s for s in solutions if not any(value.is_negative for value in s.values())]
        if not used or not solutions:
            raise NotProved(f"{', '.join(step.out)} cannot be solved out of the equations before")
        ways = {self._agree(_sympy(left).subs(s), _sympy(right).subs(s), _text(left, right)) for s in solutions}
        self.defined = {name: tree for name, tree in self.defined.items() if not out & {name, *expression.letters(tree)}}
        self.equations = [pair for pair in self.equations if not out & set(expression.letters(*pair))]
        self.define(left, right)
        return "numbers" if "numbers" in ways else "algebra"

    def _solve(self, step: Solve, left: ast.expr, right: ast.expr) -> str:
        if not step.of and not self.equations or step.of and step.of not in self.defined:
            raise NotProved(f"there is no earlier equation{' for ' + step.of if step.of else ''}")
        equation = (ast.Name(step.of, ast.Load()), self.defined[step.of]) if step.of else self.equations[-1]
        if self.formula.implicit and not step.relation:  # the equation itself, with another letter as the unknown
            return self._agree(_sympy(left) - _sympy(right), _sympy(equation[0]) - _sympy(equation[1]), _text(left, right))
        keep = {ast.unparse(left), step.of}
        sides = [self._expand(side, keep=keep) for side in equation]
        if not isinstance(left, ast.Name) or not any(side.has(_symbol(left.id)) for side in sides):
            raise NotProved(f"'{ast.unparse(left)}' does not stand in {_text(*equation)}")
        if _zero(sides[0] - sides[1]):
            raise NotProved(f"{_text(*equation)} says nothing new, so nothing can be solved from it")
        first, second = (side.subs(_symbol(left.id), self._expand(right, keep=keep)) for side in sides)
        how = self._agree(first, second, _text(left, right))
        self.defined.pop(step.of, None)
        self.defined[left.id] = right
        return how

    def _rearrange(self, step: Rearrange, left: ast.expr, right: ast.expr) -> str:
        if not self.equations:
            raise NotProved("there is no earlier equation to say in another way")
        was, now = (sympy.expand(self._expand(a).doit() - self._expand(b).doit()) for a, b in (self.equations[-1], (left, right)))
        if was == 0 or now == 0:
            raise NotProved("one of the two equations says nothing")
        factor = sympy.radsimp(sympy.simplify(now / was))
        if not factor.is_nonzero:
            raise NotProved(f"{_text(left, right)} is not {_text(*self.equations[-1])} in another way: their differences are in the ratio {factor}")
        self.equations[-1] = (left, right)
        return "algebra"

    def _optimum(self, step: Optimum, left: ast.expr, right: ast.expr) -> str:
        if not isinstance(left, ast.Name) or step.of not in self.defined or step.kind not in ("max", "min"):
            raise NotProved(f"the best value must be given as 'letter = ...', with {step.of} defined before, kind max or min")
        over, at = _symbol(left.id), self._expand(right)
        curve = self._expand(self.defined[step.of])
        how = self._agree(sympy.diff(curve, over).subs(over, at), sympy.Integer(0), f"the slope of {step.of} at {_text(left, right)}")
        bend = sympy.simplify(sympy.diff(curve, over, 2).subs(over, at))
        wanted = -1 if step.kind == "max" else 1
        if not all(wanted * bend.subs(point).evalf(DIGITS) > 0 for point in self._points(bend.free_symbols)):
            raise NotProved(f"{step.of} has no {step.kind} at {_text(left, right)}: the curve bends the other way")
        self.defined[left.id] = right
        return how

    def _approach(self, step: Approach, left: ast.expr, right: ast.expr) -> str:
        near, to = _symbol(step.letter), _sympy(expression.parse_expression(step.to))
        leading = sympy.simplify(near * sympy.diff(sympy.log(_sympy(right)), near))
        if leading.has(near):
            raise NotProved(f"the right side of {_text(left, right)} keeps more than its leading power of {step.letter}: only that can be shown by a limit")
        ratio = self._expand(left) / _sympy(right)
        limit = sympy.limit(ratio, near, to, "+")
        if sympy.simplify(limit - 1) != 0:
            raise NotProved(f"as {step.letter} goes to {step.to} the two sides of {_text(left, right)} are in the ratio {limit}, not 1")
        if isinstance(left, ast.Name):
            self.defined[left.id] = right
        return "algebra"

    def _ode(self, step: Ode, left: ast.expr, right: ast.expr) -> str:
        if not isinstance(left, ast.Name):
            raise NotProved("a solution is given as 'letter = ...'")
        name, solution = left.id, self._expand(right)
        rates = [pair for pair in [*((ast.Name(n, ast.Load()), t) for n, t in self.defined.items()), *self.equations] if _rate_of(name, *pair)]
        if not rates:
            raise NotProved(f"no differential equation for {name} stands before")
        if len(step.at) != len(rates):
            raise NotProved(f"{len(rates)} boundary value(s) wanted, {len(step.at)} given")
        ways = {self._agree(self._expand(a, {name: solution}), self._expand(b, {name: solution}), f"{_text(left, right)} in {_text(a, b)}") for a, b in rates}
        for where, what in step.at:
            (place, at), (quantity, value) = (expression.parse_relation(text) for text in (where, what))
            if name not in expression.letters(quantity):
                raise NotProved(f"the boundary value '{what}' says nothing about {name}")
            there = self._expand(quantity, {name: solution}).subs(_sympy(place), self._expand(at))
            ways.add(self._agree(there, self._expand(value), f"{what} at {where}"))
        for pair in rates:
            if pair in self.equations:
                self.equations.remove(pair)
        self.defined[name] = right
        return "numbers" if "numbers" in ways else "algebra"

    # the means

    def _drawn(self, name: str, draw: random.Random) -> float:
        return QUANTITIES[name].fixed if QUANTITIES[name].value else draw.uniform(*self.formula.range(name)[:2])

    def _expand(self, tree: ast.expr, solution: dict | None = None, keep: Set[str] = frozenset()) -> sympy.Expr:
        result = _sympy(tree, {**(solution or {})})
        for name, found in (solution or {}).items():
            result = result.subs(_symbol(name), found)
        names = [name for name in self.defined if name not in keep and name not in (solution or {})]
        for _ in range(len(self.defined) + 1):
            present = [name for name in names if result.has(_symbol(name))]
            if not present:
                return result
            result = result.subs({_symbol(name): _sympy(self.defined[name]) for name in present}, simultaneous=True)
        raise NotProved(f"{', '.join(present)} is defined by itself")

    def _agree(self, left: sympy.Expr, right: sympy.Expr, text: str) -> str:
        if _zero(left - right):
            return "algebra"
        for point in self._points((left - right).free_symbols | left.free_symbols | right.free_symbols):
            a, b = (side.subs(point).evalf(DIGITS) for side in (left, right))
            if not (a.is_real and b.is_real and a.is_finite and b.is_finite):
                raise NotProved(f"{text} has no real value at {point}")
            if abs(a - b) > _CLOSE * max(abs(a), abs(b), _CLOSE):
                raise NotProved(f"{text} does not follow: at {_shown(point)} the sides are {sympy.N(a, 6)} and {sympy.N(b, 6)}")
        difference = sympy.simplify((left - right).doit())
        return "algebra" if difference == 0 else "numbers"

    def _points(self, symbols) -> list[dict]:
        """Random points of the usual ranges that keep the formula's conditions."""
        names = sorted(symbol.name for symbol in symbols if symbol.name in QUANTITIES)
        draw, points = random.Random(20260101), []
        for _ in range(50 * _POINTS):
            values = {name: self._drawn(name, draw) for name in names}
            if all(holds(c, values) for c in self.formula.where if set(expression.letters(*map(expression.parse_expression, c.split("<")))) <= {*names}):
                points.append({_symbol(name): sympy.Float(value, DIGITS) for name, value in values.items()})
            if len(points) == _POINTS:
                return points
        raise NotProved("no points of the usual ranges keep the conditions of the formula")


_CHECKS: dict[type, Callable[..., str]] = {
    Step: _Argument._step,
    Rearrange: _Argument._rearrange,
    Eliminate: _Argument._eliminate,
    Solve: _Argument._solve,
    Optimum: _Argument._optimum,
    Approach: _Argument._approach,
    Ode: _Argument._ode,
}


def _zero(difference: sympy.Expr) -> bool:
    """Quick proofs only; the slow ones come after the points have shown that there is something to prove."""
    if difference == 0:
        return True
    worked = difference.doit()
    if not all(symbol.is_positive for symbol in worked.free_symbols):  # roots and powers of a letter that may be negative are not to be merged
        return sympy.expand(worked) == 0
    return sympy.expand(sympy.powsimp(sympy.expand(worked, force=True))) == 0 or sympy.expand(sympy.fraction(sympy.together(worked))[0]) == 0


def _shown(point: dict) -> str:
    return ", ".join(f"{symbol} = {sympy.N(value, 4)}" for symbol, value in point.items())


def _rate_of(name: str, *trees: ast.expr) -> bool:
    for node in (node for tree in trees for node in ast.walk(tree)):
        match node:
            case ast.Call(func=ast.Name(id="Derivative"), args=[ast.Name(id=of), _]) if of == name:
                return True
    return False


@cache
def _symbol(name: str) -> sympy.Symbol:
    return sympy.Symbol(name, real=True) if name in QUANTITIES and QUANTITIES[name].signed else sympy.Symbol(name, positive=True)


def _sympy(node: ast.expr, solutions: dict | None = None) -> sympy.Expr:
    """A tree with every literal exact; `solutions` stand for the letters whose derivative is taken."""
    match node:
        case ast.Constant():
            return sympy.Rational(str(expression.exact(node)))
        case ast.Name(id="pi"):
            return sympy.pi
        case ast.Name(id=name):
            return _symbol(name)
        case ast.UnaryOp(operand=operand):
            return -_sympy(operand, solutions)
        case ast.BinOp(left=left, op=op, right=right):
            a, b = _sympy(left, solutions), _sympy(right, solutions)
            match op:
                case ast.Add():
                    return a + b
                case ast.Sub():
                    return a - b
                case ast.Mult():
                    return a * b
                case ast.Div():
                    return a / b
                case _:
                    return a**b
        case ast.Call(func=ast.Name(id="Integral"), args=[body, ast.Tuple(elts=[ast.Name(id=over), low, high])]):
            return sympy.Integral(_sympy(body, solutions), (_symbol(over), _sympy(low, solutions), _sympy(high, solutions)))
        case ast.Call(func=ast.Name(id="Derivative"), args=[ast.Name(id=name), ast.Name(id=over)]):
            if not solutions or name not in solutions:
                raise NotProved(f"the derivative of {name} can only be used by a step that solves for {name}")
            return sympy.diff(solutions[name], _symbol(over))
        case ast.Call(func=ast.Name(id="log10"), args=[argument]):
            return sympy.log(_sympy(argument, solutions), 10)
        case ast.Call(func=ast.Name(id=name), args=[argument]):
            return getattr(sympy, name)(_sympy(argument, solutions))
    raise NotProved(f"'{ast.unparse(node)}' cannot be put into algebra")
