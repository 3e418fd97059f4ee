"""Every letter once, in one table, and values given for letters. A letter has one meaning in the whole kit; its row stands in the file of its subject in `letters/`."""

from __future__ import annotations

import re
from collections.abc import Iterable

from brimwork.letters.balance import OF_BALANCE
from brimwork.letters.design import OF_DESIGN
from brimwork.letters.edges import OF_EDGES
from brimwork.letters.ground import OF_GROUND
from brimwork.letters.loads import OF_LOADS
from brimwork.letters.pipes import OF_PIPES
from brimwork.letters.vessels import OF_VESSELS
from brimwork.letters.water import OF_WATER
from brimwork.quantity import COMMAND, Quantity
from brimwork.spellings import nearest
from brimwork.units import InputError, parse, unit, with_point

LETTERS = (*OF_WATER, *OF_VESSELS, *OF_EDGES, *OF_LOADS, *OF_PIPES, *OF_GROUND, *OF_BALANCE, *OF_DESIGN)
QUANTITIES = {row.key: row for row in LETTERS}


def wrong_row(rows: Iterable[Quantity] = LETTERS) -> str:
    """What is wrong with the first row that is: a letter that stands twice, a unit that is not known or is one of another kind; "" where all are right."""
    known: dict[str, Quantity] = {}
    for row in rows:
        if (first := known.setdefault(row.key, row)) is not row:
            return f"the letter {row.key} stands twice in letters/, as '{first.name}' and as '{row.name}': use the first, or give the second a name of its own"
        try:
            odd = [one for one in (row.metric, row.us) if unit(one).dimension != row.dimension]
        except InputError as error:
            return f"the letter {row.key}, '{row.name}', in letters/: {error}"
        if odd:
            return f"the letter {row.key}, '{row.name}', in letters/: {odd[0]} is no unit for what is measured in {row.si or 'plain numbers'}"
    return ""


def typed_values(text: str) -> dict[str, str]:
    """ "b=4 m, H=0.2 m" as texts by letter. Raises InputError."""
    values: dict[str, str] = {}
    for part in filter(None, (part.strip() for part in re.split(r"(?<!\d),|,(?!\d)", text))):
        name, equals, amount = (piece.strip() for piece in part.partition("="))
        if not equals or not amount:
            raise InputError(f"'{part}' is not a letter with a value: type one such as H=25mm (a point, not a comma, before decimals)")
        if name in values:
            raise InputError(f"{name} is given twice: type it once")
        values[name] = amount
    return values


def read_values(text: str) -> dict[str, float]:
    """The same as SI floats."""
    return {name: read_value(name, amount, COMMAND) for name, amount in typed_values(text).items()}


def units_typed(text: str) -> dict[str, str]:
    """The units in which the values of such a text are given, by letter."""
    return {name: parse(with_point(amount)).unit for name, amount in typed_values(text).items()}


def read_value(name: str, text: str, place: str) -> float:
    """SI value of a letter of the nomenclature. Raises InputError, which says what to type at that place."""
    if name not in QUANTITIES:
        raise InputError(f"there is no letter '{name}'.{nearest(name, QUANTITIES)}")
    return QUANTITIES[name].read(text, place)
