"""A tree taken apart and put together again: a sum as terms added and taken off, a product as factors over and under the line, one part in the place of another."""

from __future__ import annotations

import ast
from collections.abc import Iterator, Sequence

ONE = ast.Constant(1)


def terms(node: ast.expr, added: bool = True) -> Iterator[tuple[ast.expr, bool]]:
    """What is added (True) and taken off (False)."""
    match node:
        case ast.BinOp(left=left, op=ast.Add() | ast.Sub() as op, right=right):
            yield from terms(left, added)
            yield from terms(right, added if isinstance(op, ast.Add) else not added)
        case ast.UnaryOp(operand=operand):
            yield from terms(operand, not added)
        case _:
            yield node, added


def total(members: Sequence[tuple[ast.expr, bool]]) -> ast.expr:
    """The sum of terms, some of them taken off."""
    whole: ast.expr | None = None
    for term, added in sorted(members, key=lambda member: not member[1]):
        if whole is None:
            whole = term if added else ast.UnaryOp(ast.USub(), term)
        else:
            whole = ast.BinOp(whole, ast.Add() if added else ast.Sub(), term)
    return whole or ast.Constant(0)


def factors(node: ast.expr, over: bool = True) -> Iterator[tuple[ast.expr, bool]]:
    """What is multiplied (True) and divided by (False)."""
    match node:
        case ast.BinOp(left=left, op=ast.Mult() | ast.Div() as op, right=right):
            yield from factors(left, over)
            yield from factors(right, over if isinstance(op, ast.Mult) else not over)
        case _:
            yield node, over


def product(members: Sequence[tuple[ast.expr, bool]]) -> ast.expr:
    """The product of factors, some of them below the line."""
    over, under = ([factor for factor, up in members if up is side] for side in (True, False))
    whole: ast.expr = over[0] if over else ONE
    for factor in over[1:]:
        whole = ast.BinOp(whole, ast.Mult(), factor)
    for factor in under:
        whole = ast.BinOp(whole, ast.Div(), factor)
    return whole


def replaced(tree: ast.expr, new: dict[str, ast.expr]) -> ast.expr:
    """The tree with other parts in the place of names."""
    match tree:
        case ast.Name(id=name):
            return new.get(name, tree)
        case ast.BinOp(left=left, op=op, right=right):
            return ast.BinOp(replaced(left, new), op, replaced(right, new))
        case ast.UnaryOp(op=op, operand=operand):
            return ast.UnaryOp(op, replaced(operand, new))
        case ast.Call(func=func, args=arguments):
            return ast.Call(func, [replaced(argument, new) for argument in arguments], [])
    return tree


def one_replaced(tree: ast.expr, place: ast.expr, new: ast.expr) -> ast.expr:
    """The tree with one place of it changed."""
    if tree is place:
        return new
    match tree:
        case ast.BinOp(left=left, op=op, right=right):
            return ast.BinOp(one_replaced(left, place, new), op, one_replaced(right, place, new))
        case ast.UnaryOp(op=op, operand=operand):
            return ast.UnaryOp(op, one_replaced(operand, place, new))
        case ast.Call(func=func, args=arguments):
            return ast.Call(func, [one_replaced(argument, place, new) for argument in arguments], [])
    return tree
