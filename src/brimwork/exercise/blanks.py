"""One piece of a working as a question of its own: its value, the slips that such a line invites, and an earlier slip that is carried on."""

from __future__ import annotations

import ast
import math
from collections.abc import Iterator

from brimwork import expression, typeset
from brimwork.exercise.diagnosis import Diagnosis, diagnose, read_answer
from brimwork.exercise.pieces import Piece, Worked, piece_number, results
from brimwork.exercise.question import APART, TOLERANCE, GivenValue, KnownWay, Question
from brimwork.formula import Formula, Slip
from brimwork.nomenclature import QUANTITIES
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
        unit=piece.asked_in,
        given={name: GivenValue(value, QUANTITIES[name].metric) for name, value in values.items()},
        answer=worked.found[piece.key],
        slips=tuple(_told_apart(worked.found[piece.key], _known(worked, piece))),
        again=again,
        lines=lambda: (worked.line(piece).rpartition(" = ")[0], worked.line(piece)),
    )


def given_text(worked: Worked) -> str:
    """What is given, in words and letters."""
    given = "; ".join(f"{QUANTITIES[name].plain_name} {name} = {QUANTITIES[name].metric_text(worked.values[name], None)}" for name in worked.formula.inputs)
    return f"Given: {given}."


def answered(worked: Worked, place: int, seed: int, text: str, earlier: dict[int, float]) -> Diagnosis:
    """What an answer to the piece at `place` tells; `earlier` holds the learner's own values (SI) for pieces before it, by place. Never raises."""
    question = blank(worked, place, seed)
    found = diagnose(question, text)
    carried = None if found.right or found.kind == "unread" else _carried(worked, place, question, text, earlier)
    if carried is None:
        return found
    return Diagnosis("carried", f"This line is worked rightly from your value in step {carried + 1}. Mend that one, and this comes right.", found.echo)


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
    """The slips of the formula that the line is; then those that the shape of the line invites."""
    values = {**worked.values, **worked.found}
    for slip in _declared(worked, piece):
        if not slip.also_given:
            yield KnownWay(slip.number(values), slip.feedback)
    for tree, sentence in _of_shape(piece.tree, worked):
        try:
            yield KnownWay(piece_number(tree, values), sentence)
        except (ArithmeticError, ValueError):
            continue


def _declared(worked: Worked, piece: Piece) -> tuple[Slip, ...]:
    """Of the formula itself for its last line, and of a formula that its derivation starts from for the line that gives its result."""
    if piece is worked.pieces[-1]:
        return worked.formula.slips
    return tuple(slip for step in worked.formula.steps if isinstance(step, Formula) and step.result == piece.key for slip in step.slips)


def _of_shape(node: ast.expr, worked: Worked) -> Iterator[tuple[ast.expr, str]]:
    """Wrong ways with a line: the tree of each, and what to say."""
    match node:
        case ast.BinOp(left=base, op=ast.Pow(), right=power):
            yield from _of_power(base, power, worked)
        case ast.Call(func=ast.Name(id="sqrt"), args=[inside]):
            yield inside, f"You left out the root. Take the root of {_said(inside, worked)}."
            yield ast.BinOp(inside, ast.Div(), ast.Constant(2)), "You halved it. The root is the number that gives this when it is multiplied by itself."
            yield from ((ast.Call(node.func, [tree], []), said) for tree, said in _of_shape(inside, worked))
        case ast.BinOp(op=ast.Add() | ast.Sub()):
            yield from _of_sum(node, worked)
        case ast.BinOp():
            yield from _of_product(node, worked)


def _of_power(base: ast.expr, power: ast.expr, worked: Worked) -> Iterator[tuple[ast.expr, str]]:
    said, shown = _said(base, worked), typeset.write_tree(power, typeset.PLAIN)
    yield base, f"You left out the power. Take {said} to the power {shown}."
    exact = expression.exact(power)
    if exact is not None and exact != 0:
        turned = ast.BinOp(ast.Constant(exact.denominator), ast.Div(), ast.Constant(exact.numerator))
        yield ast.BinOp(base, ast.Pow(), turned), f"You turned the power round. It is {exact}, and not {1 / exact}."
    yield ast.BinOp(base, ast.Mult(), power), f"You multiplied by {shown}. It is a power: take {said} to the power {shown}."


def _of_sum(node: ast.expr, worked: Worked) -> Iterator[tuple[ast.expr, str]]:
    terms = list(_terms(node, 1))
    for place, (sign, term) in enumerate(terms):
        rest = [other for at, other in enumerate(terms) if at != place]
        yield _sum(rest), f"You left out {_said(term, worked)}. {'Add it' if sign > 0 else 'Take it off'}."
    for place, (sign, term) in enumerate(terms[1:], start=1):
        turned = [(-s if at == place else s, t) for at, (s, t) in enumerate(terms)]
        yield _sum(turned), f"You {'took off' if sign > 0 else 'added'} {_said(term, worked)}. {'Add it' if sign > 0 else 'Take it off'}."


def _terms(node: ast.expr, sign: int) -> Iterator[tuple[int, ast.expr]]:
    match node:
        case ast.BinOp(left=left, op=ast.Add() | ast.Sub() as op, right=right):
            yield from _terms(left, sign)
            yield from _terms(right, sign if isinstance(op, ast.Add) else -sign)
        case _:
            yield sign, node


def _sum(terms: list[tuple[int, ast.expr]]) -> ast.expr:
    total: ast.expr = ast.Constant(0)
    for sign, term in terms:
        total = ast.BinOp(total, ast.Add() if sign > 0 else ast.Sub(), term)
    return total


def _of_product(node: ast.expr, worked: Worked) -> Iterator[tuple[ast.expr, str]]:
    for factor, over in _factors(node, True):
        said = _said(factor, worked)
        undone = ast.BinOp(node, ast.Div() if over else ast.Mult(), factor)
        yield undone, f"You left out {said}. {'Multiply by it' if over else 'Divide by it'}."
        match factor:
            case ast.BinOp(left=base, op=ast.Pow(), right=ast.Constant(value=2)):
                once = ast.BinOp(undone, ast.Mult() if over else ast.Div(), base)
                yield once, f"You did not square {_said(base, worked)}. It counts twice here."
        if not over and expression.letters(factor):
            yield ast.BinOp(undone, ast.Mult(), factor), f"You multiplied by {said}. Divide by it."


def _factors(node: ast.expr, over: bool) -> Iterator[tuple[ast.expr, bool]]:
    """What is multiplied (True) and divided by (False); a fraction of numbers is one factor."""
    match node:
        case ast.BinOp(left=left, op=ast.Mult() | ast.Div() as op, right=right) if expression.exact(node) is None:
            yield from _factors(left, over)
            yield from _factors(right, over if isinstance(op, ast.Mult) else not over)
        case _:
            yield node, over


def _said(node: ast.expr, worked: Worked) -> str:
    """A part in words: a letter by its name, a piece by what it is, else as it is written."""
    if isinstance(node, ast.Name) and node.id in QUANTITIES:
        return f"{node.id} ({QUANTITIES[node.id].plain_name})"
    pieces = {piece.key: piece.written for piece in worked.pieces}
    shown = typeset.write_tree(_written(node, pieces), typeset.PLAIN)
    return f"the {shown}" if shown[:1].isdigit() else shown


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
