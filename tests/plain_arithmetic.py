"""Arithmetic on plain numbers, for lines worked by hand: no letters, no units, nothing of the kit."""

import ast
import math
import operator

_OPERATORS = {ast.Add: operator.add, ast.Sub: operator.sub, ast.Mult: operator.mul, ast.Div: operator.truediv, ast.Pow: operator.pow}
_FUNCTIONS = {name: getattr(math, name) for name in ("sqrt", "sin", "cos", "tan", "asin", "acos", "atan", "exp", "log", "log10")}


def comes_to(line: str) -> float:
    """What a line such as "2*(10 + 20)" comes to. Raises ValueError for anything but numbers, + - * / ** and the usual functions."""
    return _worked(ast.parse(line, mode="eval").body)


def _worked(node: ast.expr) -> float:
    match node:
        case ast.Constant(value=int() | float()) if not isinstance(node.value, bool):
            return float(node.value)
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return -_worked(operand)
        case ast.BinOp(left=left, op=op, right=right) if type(op) in _OPERATORS:
            return _OPERATORS[type(op)](_worked(left), _worked(right))
        case ast.Call(func=ast.Name(id=name), args=[argument], keywords=[]) if name in _FUNCTIONS:
            return _FUNCTIONS[name](_worked(argument))
    raise ValueError(f"'{ast.unparse(node)}' has no place in a line worked by hand")
