"""One piece of a working as a question of its own: its value, the slips that such a line invites, and an earlier slip that is carried on.

What goes wrong with a line follows from its tree, as for a whole question (`ways`)."""

from __future__ import annotations

import ast
import math
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import replace
from fractions import Fraction

from brimwork import expression, typeset, units
from brimwork.exercise.causes import LONGEST_PART, WayOfWorking
from brimwork.exercise.diagnosis import Diagnosis, diagnose, read_answer
from brimwork.exercise.pieces import Piece, Worked, results
from brimwork.exercise.question import APART, TOLERANCE, GivenValue, KnownWay, Question
from brimwork.formula import Formula, Slip
from brimwork.nomenclature import QUANTITIES
from brimwork.quantity import days
from brimwork.units import InputError


def blank(worked: Worked, place: int, seed: int) -> Question:
    """The question for the piece at `place` (from 0)."""
    formula, piece = worked.formula, worked.pieces[place]
    values = {name: worked.values[name] for name in formula.inputs}

    def again(changed: dict[str, float]) -> float:
        return results(worked.pieces, {**worked.values, **formula.only(changed)})[piece.key]

    return Question(
        code=f"{formula.name}: step {place + 1}",
        seed=seed,
        text=f"{given_text(worked)} Find {worked.left(piece, typeset.PLAIN)}.",
        name=QUANTITIES[piece.key].short_name if piece.named else "value",
        unit=worked.unit(piece),
        given={name: GivenValue(value, QUANTITIES[name].here) for name, value in values.items()},
        answer=worked.found[piece.key],
        within=TOLERANCE,  # what stands in the lines before is rounded
        slips=tuple(_told_apart(worked.found[piece.key], _known(worked, piece))),
        working=_working(worked, piece),
        again=again,
        varies=False,
        close=0.1 if piece is worked.pieces[-1] and formula.name in _COUNTED else 0.0,
        lines=lambda: (worked.line(piece).rpartition(" = ")[0], worked.line(piece)),
    )


_COUNTED = {"bags before rounding up": "bags", "blocks needed in a pit": "blocks"}


def rounded_up(worked: Worked) -> str:
    """What a number comes to of things that are bought whole, or ""."""
    return in_whole_ones(worked.formula, worked.found[worked.formula.result])


def in_whole_ones(formula: Formula, result: float) -> str:
    """The same for a result of a formula."""
    counted = _COUNTED.get(formula.name)
    return f"Rounded up: {math.ceil(result - 1e-9)} {counted}." if counted else ""


def given_text(worked: Worked) -> str:
    """What is given, in words and letters."""
    given = "; ".join(f"{QUANTITIES[name].plain_name} {name} = {days(QUANTITIES[name].text_here(worked.values[name], None))}" for name in worked.formula.inputs)
    return f"Given: {given}."


def answered(worked: Worked, place: int, seed: int, text: str, earlier: dict[int, float]) -> Diagnosis:
    """What an answer to the piece at `place` tells; `earlier` holds the learner's own values (SI) for pieces before it, by place. Never raises."""
    question = blank(worked, place, seed)
    found = diagnose(question, text)
    carried = None if found.right or found.kind == "unread" else _carried(worked, place, question, text, earlier)
    if carried is None:
        other = _other_line(worked, place, question, text) if found.kind == "none" else ""
        return replace(found, message=f"That is the {other}, which is another line. This one asks for the {question.name}.") if other else found
    return Diagnosis("carried", f"This line is worked rightly from your value in step {carried + 1}. Correct that one, and this comes right.", found.echo)


_POWERS = {
    Fraction(3, 2): "The power 3/2 of a number is that number times its square root.",
    Fraction(2, 3): "For the power 2/3 multiply the number by itself, and take the cube root.",
    Fraction(1, 3): "The power 1/3 is the cube root.",
    Fraction(1, 2): "The power 1/2 is the square root.",
    Fraction(2): "A square is the number times itself.",
    Fraction(3): "The power 3 is the number times itself, and times itself again.",
}
_KEYS = {"sqrt": "Work out what stands under the root first, then take the root.", **dict.fromkeys(("sin", "cos", "tan"), "Set the calculator to degrees.")}


def hints(worked: Worked, place: int, found: Diagnosis | None) -> tuple[str, ...]:
    """Help with one line, which stands with its numbers above the box: how it is keyed, between which numbers it lies, and what it comes to."""
    piece = worked.pieces[place]
    first = f"{found.good} " if found and found.good else ""
    how = " ".join(dict.fromkeys((*_keyed(piece.tree), *_by_factor(worked, piece))))
    number, unit = float(worked.shown[piece.key]), f" {worked.unit(piece)}".rstrip()
    step = 10.0 ** math.floor(math.log10(abs(number))) if number else 1.0
    low = math.floor(number / step)
    size = f"It lies between {units.number(low * step)}{unit} and {units.number((low + 1) * step)}{unit}."
    return (f"{first}{how}", size, f"{worked.line(piece)}.")


def _keyed(node: ast.expr) -> Iterator[str]:
    """How a line is worked on a calculator, part by part."""
    for part in ast.walk(node):
        match part:
            case ast.BinOp(op=ast.Pow(), right=right):
                power = expression.exact(right)
                yield _POWERS.get(power) or f"Take the power {power} with the key for powers." if power is not None else "Use the key for powers."
            case ast.Call(func=ast.Name(id=name)):
                yield _KEYS.get(name, f"Use the key {name.replace('log', 'ln') if name == 'log' else name}.")
    match node:
        case ast.BinOp(op=ast.Add() | ast.Sub()):
            yield "Add what has a plus before it, and take off what has a minus."
        case ast.BinOp(op=ast.Div()):
            yield "Multiply all that stands above the stroke. Then divide by each number below it."
        case ast.BinOp(op=ast.Mult()):
            yield "Multiply the numbers, one after the other."


def _by_factor(worked: Worked, piece: Piece) -> Iterator[str]:
    for factor in worked.chosen.factors[piece.key]:
        if factor.under:
            yield f"The last number turns the unit: {factor.number} {factor.over} make 1 {factor.under}."


def _other_line(worked: Worked, place: int, question: Question, text: str) -> str:
    """The name of another value of the working that this answer is, or nothing."""
    try:
        value = read_answer(question, text).value
    except InputError:
        return ""
    wanted = worked.pieces[place].key
    same = (
        key
        for key, number in {**worked.values, **worked.found}.items()
        if key != wanted
        and key in QUANTITIES
        and QUANTITIES[key].dimension == units.unit(question.unit).dimension
        and math.isclose(value, number, rel_tol=0.005)
    )
    return next((QUANTITIES[key].plain_name for key in same), "")


def _carried(worked: Worked, place: int, question: Question, text: str, earlier: dict[int, float]) -> int | None:
    """The earlier step whose own value explains this answer, if that value is not the right one."""
    instead = {worked.pieces[at].key: value for at, value in earlier.items() if at < place}
    off = [at for at in earlier if at < place and not math.isclose(earlier[at], worked.found[worked.pieces[at].key], rel_tol=TOLERANCE)]
    if not off:
        return None
    try:
        value = read_answer(question, text).value
        follows = results(worked.pieces[: place + 1], worked.values, instead)[worked.pieces[place].key]
    except (InputError, ArithmeticError, ValueError):
        return None
    return off[0] if math.isclose(value, follows, rel_tol=TOLERANCE) else None


def _told_apart(answer: float, slips: Iterator[KnownWay]) -> Iterator[KnownWay]:
    """Those slips whose numbers lie apart from the right one and from each other, the first of two that do not."""
    taken = [answer]
    for slip in slips:
        if (
            math.isfinite(slip.number)
            and slip.number * answer > 0
            and all(abs(slip.number - other) > APART * max(abs(slip.number), abs(other)) for other in taken)
        ):
            taken.append(slip.number)
            yield slip


def _known(worked: Worked, piece: Piece) -> Iterator[KnownWay]:
    """The slips of the formula that the line is."""
    values = {**worked.values, **worked.found}
    for slip in _declared(worked, piece):
        if not slip.also_given:
            with suppress(ArithmeticError, ValueError):  # on these numbers the wrong way comes to nothing: nobody can go it
                yield KnownWay(slip.number(values), slip.feedback)


def _declared(worked: Worked, piece: Piece) -> tuple[Slip, ...]:
    """Of the formula itself for its last line, and of a formula that its derivation starts from for the line that gives its result."""
    if piece is worked.pieces[-1]:
        return worked.formula.slips
    return tuple(slip for step in worked.formula.steps if isinstance(step, Formula) and step.result == piece.key for slip in step.slips)


def _working(worked: Worked, piece: Piece) -> WayOfWorking:
    """The line as a working of its own: what it takes is given to it, whether by the text or by a line before."""
    earlier = {one.key: one for one in worked.pieces}
    names = expression.letters(piece.tree)
    taken = [name for name in names if name not in worked.formula.constants] or names
    return WayOfWorking(
        tree=piece.tree,
        values={**worked.values, **worked.found},
        kinds={**{name: QUANTITIES[name].dimension for name in worked.values}, **{key: expression.dimension(one.written) for key, one in earlier.items()}},
        shown={name: worked.chosen.unit[name] for name in taken},
        unit=worked.unit(piece),
        said=lambda node: _said(node, worked),
    )


def _said(node: ast.expr, worked: Worked) -> str:
    """A part in words: a letter by its name, a piece by what it is, else as it is written."""
    if isinstance(node, ast.Name) and node.id in QUANTITIES:
        return f"{node.id} ({QUANTITIES[node.id].plain_name})"
    pieces = {piece.key: piece.written for piece in worked.pieces}
    shown = typeset.write_tree(_written(node, pieces), typeset.PLAIN)
    if len(shown) > LONGEST_PART:
        return "one part of it"
    return f"the {shown}" if shown[:1].isdigit() and not isinstance(node, ast.Constant) else shown


def _written(node: ast.expr, pieces: dict[str, ast.expr]) -> ast.expr:
    match node:
        case ast.Name(id=name) if name not in QUANTITIES and name in pieces:
            return _written(pieces[name], pieces)
        case ast.BinOp(left=left, op=op, right=right):
            return ast.BinOp(_written(left, pieces), op, _written(right, pieces))
        case ast.UnaryOp(op=op, operand=operand):
            return ast.UnaryOp(op, _written(operand, pieces))
        case ast.Call(func=func, args=[argument]):
            return ast.Call(func, [_written(argument, pieces)], [])
    return node
