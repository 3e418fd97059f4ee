"""A formula's tree as LaTeX (notebooks), Typst (print) or plain text (terminals), in the order it was written, by one walk.

The walk asks a target for each construct, so another target (MathML) is one more class with the same methods.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from brimwork import coherent, expression, units
from brimwork.coherent import Factor, GivenNumber
from brimwork.formula import Working
from brimwork.nomenclature import QUANTITIES

SUM, PRODUCT, SIGN, ATOM = range(4)  # how tightly a piece of text holds together
_GREEK = ("alpha", "beta", "gamma", "delta", "theta", "lambda", "mu", "nu", "rho", "sigma", "tau", "phi", "eta", "omega", "psi", "pi")


class Latex:
    """LaTeX as notebooks typeset it."""

    times, divided, plus, minus, equals, gap = r" \times ", r" \div ", " + ", " - ", " = ", r"\,"

    def number(self, text: str) -> str:
        mantissa, power, exponent = text.partition("e")
        return rf"{mantissa} \times 10^{{{int(exponent)}}}" if power else self.grouped(text)

    def grouped(self, text: str) -> str:
        """The digits before the point in threes, where there are more than four of them."""
        whole, point, rest = text.partition(".")
        return (
            whole[: (len(whole) - 1) % 3 + 1] + re.sub(r"(\d{3})", lambda three: self.gap + three[1], whole[(len(whole) - 1) % 3 + 1 :]) + point + rest
            if whole.isdigit() and len(whole) > 4
            else text
        )

    def letter(self, key: str) -> str:
        base, _, below = key.partition("_")
        shown = rf"\{base}" if base in _GREEK else base if len(base) == 1 else rf"\mathrm{{{base}}}"
        if not below:
            return shown
        return f"{shown}_{below}" if len(below) == 1 else rf"{shown}_{{\{below}}}" if below in _GREEK else rf"{shown}_{{\mathrm{{{below}}}}}"

    def unit(self, text: str) -> str:
        text = re.sub(r"([A-Za-z])(?:\^\((\d/\d)\)|\^?(-?\d[\d.]*))", r"\1^{\2\3}", text).replace("%", r"\%").replace(" ", r"\ ")
        return r"^\circ" if text == "deg" else rf"\,\mathrm{{{text}}}" if text else ""

    def ratio(self, over: str, under: str) -> str:
        """One unit for each of another, as a factor has it."""
        above, below = (self.unit(text).removeprefix(r"\,") or "1" for text in (over, under))
        return rf"\,\tfrac{{{above}}}{{{below}}}" if under else self.unit(over)

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

    times, divided, plus, minus, equals, gap = " times ", " div ", " + ", " - ", " = ", " thin "

    def number(self, text: str) -> str:
        mantissa, power, exponent = text.partition("e")
        return f"{mantissa} times 10^({int(exponent)})" if power else self.grouped(text)

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

    def ratio(self, over: str, under: str) -> str:
        above, below = (self.unit(text).strip().removeprefix("thin ") or "1" for text in (over, under))
        return f" thin frac({above}, {below})" if under else self.unit(over)

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

    times, divided = " × ", " ÷ "

    def ratio(self, over: str, under: str) -> str:
        """ " 12 in/ft", in brackets where it would not read plainly without."""
        return f" {_apart(over)}/{_apart(under)}" if over and under else self.unit(over) or f" 1/{_apart(under)}"

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


def _apart(unit: str) -> str:
    return f"({unit})" if "/" in unit or " " in unit.replace("US gal", "") else unit or "1"


LATEX, TYPST, PLAIN = Latex(), Typst(), Plain()


def write_tree(tree: ast.expr, target: Latex = LATEX, values: Callable[[str], str | None] | None = None) -> str:
    """The tree as text for `target`; with `values`, letters for which it returns text stand as that text, with times signs between."""
    return _walk(tree, target, values)[0]


def relation(left: ast.expr, right: ast.expr, target: Latex = LATEX) -> str:
    return _equation(write_tree(left, target), right, target)


_FACTOR = 4.0  # ems that a factor takes
_WIDE = 31.0  # ems that fit across the page of a notebook in a window of 1000 pixels, beside the list of files


def _equation(said: str, right: ast.expr, target: Latex, values: Callable[[str], str | None] | None = None, factors: Sequence[Factor] = ()) -> str:
    """What the left side, as text, is equal to, times the factors. As LaTeX it stands in several rows, each begun with its sign, where it is too wide for a page."""
    whole, wide = (
        f"{said}{target.equals}{put_in(right, values or (lambda _: None), factors, target) if factors else write_tree(right, target, values)}",
        3.0 + _FACTOR * len(factors),
    )
    if target is not LATEX or wide + _width(right, values) <= _WIDE:
        return whole
    opening, terms, closing = _terms(right, values)
    if factors and (opening or isinstance(right, ast.BinOp) and isinstance(right.op, ast.Add | ast.Sub)):
        bracket = not opening
        opening, closing = (
            (r"\bigl(" if bracket else "") + opening,
            closing + (r"\bigr)" if bracket else "") + "".join(by(factor, target) for factor in factors),
        )
    elif factors:
        terms = [*terms, *((by(factor, target), _FACTOR) for factor in factors)]
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


def quantity(number: str, unit: str, target: Latex = LATEX) -> str:
    """A number with its unit as it stands in a line of working."""
    return f"{target.number(number)}{target.unit(unit)}"


def put_in(tree: ast.expr, values: Callable[[str], str | None], factors: Iterable[Factor] = (), target: Latex = LATEX) -> str:
    """A tree with its numbers put in, times the factors that turn its unit into another."""
    text, binding = _walk(tree, target, values)
    after = "".join(by(factor, target) for factor in factors)
    return f"{target.brackets(text) if after and binding < PRODUCT else text}{after}"


def by(factor: Factor, target: Latex = LATEX) -> str:
    """ " x 12 in/ft", or with a stroke between two lines where a factor divides."""
    number, unit = target.number(factor.number), target.ratio(factor.over, factor.under)
    return f"{target.divided if factor.divides else target.times}{number}{unit if number else unit.lstrip()}"


def turned_line(one: GivenNumber, target: Latex = LATEX) -> str:
    """The line in which a given value is turned into the unit of the sum: "Q = 50 L/min / 60000 (L/min)/(m3/s) = 0.000833333 m3/s"."""
    before, after = quantity(one.number, one.unit, target), quantity(one.put_in, one.put_in_unit, target)
    return f"{target.letter(one.key)}{target.equals}{before}{by(one.factor, target) if one.factor else ''}{target.equals}{after}"


@dataclass(frozen=True)
class Put:
    """A formula with its numbers: each given value as it goes in, the factors of the line, and the result as it is shown."""

    given: dict[str, GivenNumber]
    factors: tuple[Factor, ...]
    result: str
    unit: str


def put(worked: Working, stated: Mapping[str, str] | None = None) -> Put:
    """A working in the units of the system in use, with those in which some letters are stated. An equation with the result on both sides has its result alone."""
    formula, stated = worked.formula, stated or {}
    if formula.implicit:
        unit = formula.quantity.here
        return Put({}, (), units.number(units.convert(worked.result, unit), coherent.FIGURES), unit)
    lines = ((formula.result, formula.right, formula.dimension),)
    values = {name: worked.values[name] if name in worked.values else QUANTITIES[name].fixed for name in (*formula.inputs, *formula.constants)}
    chosen = coherent.line_units(formula.result, lines, values, stated)
    given = {name: coherent.given_number(name, value, chosen.unit[name], stated.get(name, "")) for name, value in values.items()}
    shown = coherent.shown_results(lines, chosen, {name: float(one.put_in) for name, one in given.items()}, worked.result)
    return Put(given, chosen.factors[formula.result], shown[formula.result], chosen.unit[formula.result])


def working(worked: Working, target: Latex = LATEX, turning: bool = True, stated: Mapping[str, str] | None = None) -> list[str]:
    """The formula; with `turning`, each value that goes in in another unit than it is given in; the numbers put in; and the result.

    An equation with the result on both sides has the first line and the last.
    """
    formula, found = worked.formula, put(worked, stated)
    lines = [relation(formula.left, formula.right, target)]
    if not formula.implicit:
        lines += [turned_line(one, target) for one in found.given.values() if one.turned and turning]

        def value(key: str) -> str | None:
            return quantity(found.given[key].put_in, found.given[key].put_in_unit, target) if key in found.given else None

        lines.append(_equation(target.letter(formula.result), formula.right, target, value, found.factors))
    lines.append(f"{target.letter(formula.result)}{target.equals}{quantity(found.result, found.unit, target)}")
    return lines
