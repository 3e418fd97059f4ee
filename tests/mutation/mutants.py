"""Small faults for a syntax tree, each as (what was changed, the node, what to put in its place); `swapped` gives the tree with one of them in.

`in_formula` is for the text of a formula, `in_module` for Python source. Both leave names, text and annotations alone.
"""

from __future__ import annotations

import ast
import copy
from collections.abc import Iterator

Fault = tuple[str, ast.AST, ast.AST]
TURNED = {ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.Pow: ast.Mult, ast.FloorDiv: ast.Div, ast.Mod: ast.Mult}
COMPARED = {
    ast.Lt: (ast.LtE, ast.Gt),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.Lt),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
}
OTHER_FUNCTION = {"sin": "cos", "cos": "sin", "tan": "sin", "asin": "acos", "acos": "asin", "log": "log10", "log10": "log", "exp": "sin", "atan": "tan"}
OTHER_CALL = {"min": "max", "max": "min", "any": "all", "all": "any"}


def in_formula(tree: ast.expr) -> Iterator[Fault]:
    """Constants by 1 % up and down, operators turned, operands left out, powers turned over or made one more, functions dropped or exchanged."""
    for node in ast.walk(tree):
        for new in _arithmetic(node):
            yield _told(node, new), node, new
        match node:
            case ast.Constant(value=value):
                for share in (1.01, 0.99):
                    new = ast.Constant(value * share)
                    yield _told(node, new), node, new
            case ast.Call(func=ast.Name(id=name), args=[argument]):
                yield _told(node, argument), node, argument
                if name in OTHER_FUNCTION:
                    new = ast.Call(ast.Name(OTHER_FUNCTION[name], ast.Load()), [argument], [])
                    yield _told(node, new), node, new


def _arithmetic(node: ast.AST) -> Iterator[ast.expr]:
    match node:
        case ast.BinOp(left=left, op=op, right=right):
            if type(op) in TURNED:
                yield ast.BinOp(left, TURNED[type(op)](), right)
            yield left
            yield right
            if isinstance(op, ast.Pow):
                yield ast.BinOp(left, op, ast.BinOp(ast.Constant(1), ast.Div(), right))
                yield ast.BinOp(left, op, ast.BinOp(right, ast.Add(), ast.Constant(1)))
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            yield operand


def in_module(tree: ast.Module) -> Iterator[Fault]:
    """Comparisons and conditions turned, numbers changed, operators turned, operands left out, results and refusals dropped."""
    for node in _code(tree):
        for new in _changes(node):
            yield f"line {node.lineno}: {_told(node, new)}", node, new


def _code(tree: ast.AST) -> Iterator[ast.AST]:
    """Every node but annotations, which nothing reads when the program runs, and decorators, which say how a class or function is made and kept."""
    yield tree
    for name, value in ast.iter_fields(tree):
        if name not in ("annotation", "returns", "decorator_list"):
            for child in value if isinstance(value, list) else [value]:
                if isinstance(child, ast.AST):
                    yield from _code(child)


def _changes(node: ast.AST) -> Iterator[ast.AST]:
    yield from _arithmetic(node)
    match node:
        case ast.Constant(value=bool()):
            yield ast.Constant(not node.value)
        case ast.Constant(value=int()):
            yield ast.Constant(node.value + 1)
        case ast.Constant(value=float()):
            yield ast.Constant(node.value * 1.01 or 0.01)
        case ast.Compare(ops=[op, *others]):
            for other in COMPARED[type(op)]:
                yield ast.Compare(node.left, [other(), *others], node.comparators)
        case ast.BoolOp(op=op, values=values):
            yield ast.BoolOp(ast.Or() if isinstance(op, ast.And) else ast.And(), values)
            for place in range(len(values)):
                rest = values[:place] + values[place + 1 :]
                yield rest[0] if len(rest) == 1 else ast.BoolOp(op, rest)
        case ast.UnaryOp(op=ast.Not(), operand=operand):
            yield operand
        case ast.IfExp(test=test, body=body, orelse=orelse):
            yield ast.IfExp(test, orelse, body)
        case ast.If(test=test) | ast.While(test=test) if not isinstance(test, ast.Compare | ast.UnaryOp):
            other = copy.copy(node)
            other.test = ast.UnaryOp(ast.Not(), test)
            yield other
        case ast.Return(value=value) if value is not None and not (isinstance(value, ast.Constant) and value.value is None):
            yield ast.Return(ast.Constant(None))
        case ast.Raise() | ast.AugAssign():
            yield ast.Pass()
        case ast.Call(func=ast.Name(id=name)) if name in OTHER_CALL:
            yield ast.Call(ast.Name(OTHER_CALL[name], ast.Load()), node.args, node.keywords)
        case ast.Continue():
            yield ast.Break()


def swapped(tree: ast.AST, old: ast.AST, new: ast.AST) -> ast.AST:
    """The tree with the very node `old` replaced; the given tree stays as it is."""
    if tree is old:
        return ast.copy_location(copy.copy(new), old) if hasattr(old, "lineno") else new  # a part of the old one keeps its own place in it
    fields = {}
    for name, value in ast.iter_fields(tree):
        if isinstance(value, list):
            fields[name] = [swapped(part, old, new) if isinstance(part, ast.AST) else part for part in value]
        else:
            fields[name] = swapped(value, old, new) if isinstance(value, ast.AST) else value
    return ast.copy_location(type(tree)(**fields), tree) if hasattr(tree, "lineno") else type(tree)(**fields)


def _told(old: ast.AST, new: ast.AST) -> str:
    return f"{_short(old)} -> {_short(new)}"


def _short(node: ast.AST) -> str:
    text = " ".join(ast.unparse(ast.fix_missing_locations(copy.deepcopy(node))).split())
    return text if len(text) <= 70 else text[:67] + "..."
