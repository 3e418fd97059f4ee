"""A formula's tree as LaTeX (notebooks), Typst (print) or plain text (terminals), in the order it was written, by one walk.

The walk asks a target for each construct, so another target (MathML) is one more class with the same methods.
"""

from __future__ import annotations

import ast
import math
import re
from collections.abc import Callable, Iterable

from brimwork import expression, system, units
from brimwork.formula import Working
from brimwork.nomenclature import QUANTITIES

SUM, PRODUCT, SIGN, ATOM = range(4)  # how tightly a piece of text holds together
_GREEK = ("alpha", "beta", "gamma", "delta", "theta", "lambda", "mu", "nu", "rho", "sigma", "tau", "phi", "eta", "omega", "psi", "pi")


class Latex:
    """LaTeX as notebooks typeset it."""

    times, plus, minus, equals = r" \times ", " + ", " - ", " = "

    def number(self, text: str) -> str:
        mantissa, power, exponent = text.partition("e")
        return rf"{mantissa} \times 10^{{{int(exponent)}}}" if power else text

    def letter(self, key: str) -> str:
        base, _, below = key.partition("_")
        shown = rf"\{base}" if base in _GREEK else base if len(base) == 1 else rf"\mathrm{{{base}}}"
        if not below:
            return shown
        return f"{shown}_{below}" if len(below) == 1 else rf"{shown}_{{\{below}}}" if below in _GREEK else rf"{shown}_{{\mathrm{{{below}}}}}"

    def unit(self, text: str) -> str:
        text = re.sub(r"([A-Za-z])(?:\^\((\d/\d)\)|\^?(-?\d[\d.]*))", r"\1^{\2\3}", text).replace("%", r"\%").replace(" ", r"\ ")
        return r"^\circ" if text == "deg" else rf"\,\mathrm{{{text}}}" if text else ""

    def brackets(self, text: str) -> str:
        return rf"\left({text}\right)"

    def product(self, left: str, right: str, numbers: bool) -> str:
        return f"{left}{self.times}{right}" if numbers or right[:1].isdigit() else rf"{left}\,{right}"

    def fraction(self, over: str, under: str) -> tuple[str, int]:
        return rf"\frac{{{over}}}{{{under}}}", SIGN

    def power(self, base: str, exponent: str) -> str:
        return f"{base}^{{{exponent}}}"

    def root(self, inside: str) -> str:
        return rf"\sqrt{{{inside}}}"

    def call(self, name: str, argument: str) -> str:
        name = {"asin": "arcsin", "acos": "arccos", "atan": "arctan", "log": "ln", "log10": "log_{10}"}.get(name, name)
        return rf"\{name}{self.brackets(argument)}"

    def integral(self, body: str, variable: str, low: str, high: str) -> str:
        return rf"\int_{{{low}}}^{{{high}}} {body}\,\mathrm{{d}}{variable}"

    def derivative(self, body: str, variable: str) -> str:
        return rf"\frac{{\mathrm{{d}}{body}}}{{\mathrm{{d}}{variable}}}"


class Typst(Latex):
    """Mathematics for print."""

    times, plus, minus, equals = " times ", " + ", " - ", " = "

    def number(self, text: str) -> str:
        mantissa, power, exponent = text.partition("e")
        return f"{mantissa} times 10^({int(exponent)})" if power else text

    def letter(self, key: str) -> str:
        base, _, below = key.partition("_")
        shown = base if base in _GREEK or len(base) == 1 else f'upright("{base}")'
        if not below:
            return shown
        return f"{shown}_({below})" if len(below) == 1 or below in _GREEK else f'{shown}_(upright("{below}"))'

    def unit(self, text: str) -> str:
        if text == "deg":
            return " degree"
        pieces = re.findall(r"\^\((\d/\d)\)|\^?(-?\d[\d.]*)|([^\d^-]+)", text)
        shown = "".join(f' "{word}"' if word else f"^({fraction or power})" for fraction, power, word in pieces)
        return f" thin upright({shown.strip()})" if text else ""

    def brackets(self, text: str) -> str:
        return f"({text})"

    def product(self, left: str, right: str, numbers: bool) -> str:
        return f"{left}{self.times}{right}" if numbers or right[:1].isdigit() else f"{left} thin {right}"

    def fraction(self, over: str, under: str) -> tuple[str, int]:
        return f"frac({over}, {under})", SIGN

    def power(self, base: str, exponent: str) -> str:
        return f"{base}^({exponent})"

    def root(self, inside: str) -> str:
        return f"sqrt({inside})"

    def call(self, name: str, argument: str) -> str:
        name = {"asin": "arcsin", "acos": "arccos", "atan": "arctan", "log": "ln", "log10": "log_10"}.get(name, name)
        return f"{name}({argument})"

    def integral(self, body: str, variable: str, low: str, high: str) -> str:
        return f"integral_({low})^({high}) {body} thin dif {variable}"

    def derivative(self, body: str, variable: str) -> str:
        return f"frac(dif {body}, dif {variable})"


class Plain(Latex):
    """Text for a terminal."""

    times = " × "

    def number(self, text: str) -> str:
        return text

    def letter(self, key: str) -> str:
        return key

    def unit(self, text: str) -> str:
        return f" {text}" if text else ""

    def brackets(self, text: str) -> str:
        return f"({text})"

    def product(self, left: str, right: str, numbers: bool) -> str:
        return f"{left}{self.times}{right}" if numbers else f"{left}·{right}"

    def fraction(self, over: str, under: str) -> tuple[str, int]:
        return f"{over}/{under}", PRODUCT

    def power(self, base: str, exponent: str) -> str:
        return f"{base}^{exponent}" if re.fullmatch(r"[\w.]+", exponent) else f"{base}^({exponent})"

    def root(self, inside: str) -> str:
        return f"√({inside})" if re.search(r"\W", inside) else f"√{inside}"

    def call(self, name: str, argument: str) -> str:
        return f"{'ln' if name == 'log' else name}({argument})"

    def integral(self, body: str, variable: str, low: str, high: str) -> str:
        return f"∫[{low}..{high}] {body} d{variable}"

    def derivative(self, body: str, variable: str) -> str:
        return f"d{body}/d{variable}"


LATEX, TYPST, PLAIN = Latex(), Typst(), Plain()


def write_tree(tree: ast.expr, target: Latex = LATEX, values: Callable[[str], str | None] | None = None) -> str:
    """The tree as text for `target`; with `values`, letters for which it returns text stand as that text, with times signs between."""
    return _walk(tree, target, values)[0]


def relation(left: ast.expr, right: ast.expr, target: Latex = LATEX) -> str:
    return _equation(write_tree(left, target), right, target)


_WIDE = 31.0  # ems that fit across the page of a notebook in a window of 1000 pixels, beside the list of files


def _equation(said: str, right: ast.expr, target: Latex, values: Callable[[str], str | None] | None = None) -> str:
    """What the left side, as text, is equal to. As LaTeX it stands in several rows, each begun with a plus or minus, where it is too wide for a page."""
    whole, wide = f"{said}{target.equals}{write_tree(right, target, values)}", 3.0
    if target is not LATEX or wide + _width(right, values) <= _WIDE:
        return whole
    opening, terms, closing = _terms(right, values)
    rows, wide = [opening], wide + _width(right, values) - sum(width for _, width in terms)
    for text, width in terms:
        if wide + width > _WIDE and rows[-1] != opening:
            rows, wide = [*rows, r"\quad {}"], 2.0
        rows[-1], wide = rows[-1] + text, wide + width
    broken = r" \\ & ".join(rows)
    return whole if len(rows) == 1 else rf"\begin{{aligned}} {said} = {{}}& {broken}{closing} \end{{aligned}}"


def _terms(node: ast.expr, values) -> tuple[str, list[tuple[str, float]], str]:
    """The pieces that may stand in rows of their own, as LaTeX with their widths, and what stands before and after them.

    Of a sum those are its terms. Of a product that ends with a bracket they are what comes before it and the bracket, or, where one of these would leave
    a row too short or too long, the terms in the bracket.
    """
    match node:
        case ast.BinOp(left=left, op=ast.Mult(), right=ast.BinOp(op=ast.Add() | ast.Sub()) as bracket):
            inside, before, wide = write_tree(bracket, LATEX, values), _width(left, values), _width(bracket, values) + 3.0
            start = write_tree(node, LATEX, values).removesuffix(LATEX.brackets(inside))
            if before > _WIDE / 3 and wide + 2.0 <= _WIDE:
                return "", [(start.removesuffix(LATEX.times).removesuffix(r"\,"), before), (LATEX.times + LATEX.brackets(inside), wide)], ""
            size = "Biggl" if r"\frac" in inside else "bigl"
            return rf"{start}\{size}(", _summed(bracket, values), rf"\{size[:-1]}r)"
    return "", _summed(node, values), ""


def _summed(node: ast.expr, values) -> list[tuple[str, float]]:
    match node:
        case ast.BinOp(left=left, op=ast.Add() | ast.Sub()):
            after = write_tree(node, LATEX, values).removeprefix(write_tree(left, LATEX, values))
            return [*_summed(left, values), (after, _width(node, values) - _width(left, values))]
    return [(write_tree(node, LATEX, values), _width(node, values))]


def _width(node: ast.expr, values=None) -> float:
    """About how many ems of LaTeX a tree takes."""
    match node:
        case ast.Name(id=name):
            text = values(name) if values and name != "pi" else None
            return 0.5 * len(re.sub(r"\\\w+|\W", "", text)) + 0.5 if text else 0.6 + 0.4 * len(name.partition("_")[2])
        case ast.BinOp(left=left, op=ast.Div(), right=right):
            return 0.4 + max(_width(left, values), _width(right, values))
        case ast.BinOp(left=left, op=ast.Pow(), right=right):
            return _width(left, values) + 0.6 * _width(right, values)
        case ast.BinOp(left=left, op=op, right=right):
            bracketed = isinstance(op, ast.Mult) and isinstance(right, ast.BinOp) and isinstance(right.op, ast.Add | ast.Sub)
            between = 1.7 if isinstance(op, ast.Add | ast.Sub) or values else 0.2
            return _width(left, values) + between + _width(right, values) + 1.5 * bracketed
        case ast.Call(func=ast.Name(id=name), args=arguments):
            return (1.0 if name == "sqrt" else 1.7 + 0.45 * len(name)) + sum(_width(argument, values) for argument in arguments)
        case ast.Constant(value=value):
            return 0.5 * len(repr(value))
    return 0.5 + sum(_width(part, values) for part in ast.iter_child_nodes(node) if isinstance(part, ast.expr))


def _walk(node: ast.expr, target: Latex, values) -> tuple[str, int]:
    def piece(part: ast.expr, least: int) -> str:
        text, binding = _walk(part, target, values)
        return text if binding >= least else target.brackets(text)

    def whole(part: ast.expr) -> str:
        return _walk(part, target, values)[0]

    match node:
        case ast.Constant(value=value):
            return target.number(repr(value)), ATOM if "e" not in repr(value) else PRODUCT
        case ast.Name(id=name):
            shown = values(name) if values and name != "pi" else None
            if shown is not None:
                return shown, SUM if shown.startswith("-") else SIGN if re.search(r"[^\w.]", shown) else ATOM
            return target.letter(name) if name != "pi" or target is not PLAIN else "π", ATOM
        case ast.UnaryOp(operand=operand):
            return f"-{piece(operand, PRODUCT)}", SUM
        case ast.BinOp(left=left, op=ast.Add() | ast.Sub() as op, right=right):
            sign, least = (target.plus, SUM) if isinstance(op, ast.Add) else (target.minus, PRODUCT)
            after = piece(right, least)
            return f"{piece(left, SUM)}{sign}{target.brackets(after) if after.startswith('-') else after}", SUM
        case ast.BinOp(left=ast.UnaryOp() | ast.BinOp(op=ast.Mult()) as left, op=ast.Mult(), right=right) if whole(left).startswith("-"):
            return f"-{target.product(whole(left)[1:], piece(right, SIGN), values is not None)}", SUM  # -2 x stands for (-2) x
        case ast.BinOp(left=left, op=ast.Mult(), right=right):
            return target.product(piece(left, PRODUCT), piece(right, SIGN), values is not None), PRODUCT
        case ast.BinOp(left=left, op=ast.Div(), right=right):
            if target is PLAIN:
                left_least, right_least = (PRODUCT, SIGN) if values is None else (ATOM, ATOM)  # "m3/s" must not run on into the next stroke
                return target.fraction(piece(left, left_least), piece(right, right_least))
            return target.fraction(whole(left), whole(right))
        case ast.BinOp(left=left, op=ast.Pow(), right=right):
            exponent = expression.exact(right)
            shown = str(exponent) if exponent is not None and exponent.denominator < 10 else whole(right)
            return target.power(piece(left, ATOM), shown), SIGN
        case ast.Call(func=ast.Name(id="sqrt"), args=[argument]):
            return target.root(whole(argument)), ATOM
        case ast.Call(func=ast.Name(id="Integral"), args=[body, ast.Tuple(elts=[variable, low, high])]):
            return target.integral(piece(body, PRODUCT), *map(whole, (variable, low, high))), SIGN
        case ast.Call(func=ast.Name(id="Derivative"), args=[body, variable]):
            return target.derivative(*map(whole, (body, variable))), SIGN
        case ast.Call(func=ast.Name(id=name), args=[argument]):
            return target.call(name, whole(argument)), ATOM
    raise ValueError(f"no text for {ast.dump(node)}")


_POUNDS = ("kg", "N", "Pa", "kg/m3", "kg/m2", "N m", "Pa/m")  # units with mass in them that are turned into pounds
_ELECTRIC = ("V", "A", "ohm", "V/A/m", "ohm/m")  # alike in both systems, but for the length
_ONLY_SI = ("mN/m", "cP", "Pa")  # what is measured in these in the US too stays, with all that is worked beside it


def in_feet(letters: Iterable[str]) -> bool:
    """Whether a working with these letters is written in feet and pounds: in US units, where nothing in it is power, heat or electricity."""
    rows = [QUANTITIES[key] for key in letters]
    heavy = [row for row in rows if row.dimension[0] or row.dimension[4]]
    alike = all(row.si in _ELECTRIC for row in heavy) or all(row.si in _POUNDS and row.us not in _ONLY_SI for row in heavy)
    return system.current() == system.FEET and alike


def turning(letters: Iterable[str]) -> Callable[[str], str]:
    """How a working with these letters writes a unit of SI: in feet and pounds for the US, by the day where all that has to do with time is counted so, and in kilowatt hours where they are paid for."""
    letters = tuple(letters)
    timed = [QUANTITIES[key].metric for key in letters if QUANTITIES[key].dimension[2]]
    feet, days = in_feet(letters), bool(timed) and all("day" in unit for unit in timed)
    bought = any(QUANTITIES[key].si == "cur/J" for key in letters)

    def turned(unit: str) -> str:
        unit = system.feet(unit) if feet else unit
        return system.as_bought(unit) if bought else system.by_day(unit) if days else unit

    return turned


def as_it_is(unit: str) -> str:
    return unit


def value(key: str, si: float, target: Latex = LATEX, digits: int | None = None, turn: Callable[[str], str] = as_it_is) -> str:
    """A value of a letter with its unit, as it stands in a line of working: in SI, or in the units to which those are turned."""
    unit = QUANTITIES[key].si
    if turn(unit) != unit:
        unit = turn(unit)
        number = units.convert(si, unit)
        return f"{target.number(units.number(number, digits) if digits else units.number(float(f'{number:.5g}')))}{target.unit(unit)}"
    unit, si = ("deg", math.degrees(si)) if unit == "rad" else (unit, si)
    return f"{target.number(units.number(si, digits))}{target.unit(unit)}"


def working(worked: Working, target: Latex = LATEX) -> list[str]:
    """Three lines: the formula, the numbers put in (SI), and the result. An equation with the result on both sides has no second line."""
    formula = worked.formula
    turn = turning((formula.result, *formula.inputs, *formula.constants))
    lines = [relation(formula.left, formula.right, target)]
    if not formula.implicit:

        def put_in(key: str) -> str | None:
            return value(key, worked.values[key], target, turn=turn) if key in worked.values else None

        lines.append(_equation(target.letter(formula.result), formula.right, target, put_in))
    lines.append(f"{target.letter(formula.result)}{target.equals}{value(formula.result, worked.result, target, 4, turn)}")
    return lines
