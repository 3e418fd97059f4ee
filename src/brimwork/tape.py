"""Inches as a tape shows them, with the fractions between its marks."""

import math
from fractions import Fraction


def on_a_tape(inches: float, parts: int, way: int = 0) -> str:
    """A length of no less than nothing at a mark of a tape of which each inch has so many `parts`: 75 1/8. `way` 1 goes up, -1 down, 0 to the nearest."""
    marks = inches * parts
    whole, rest = divmod(math.ceil(marks) if way > 0 else math.floor(marks) if way < 0 else round(marks), parts)
    return " ".join(filter(None, (str(whole) if whole or not rest else "", str(Fraction(rest, parts)) if rest else "")))
