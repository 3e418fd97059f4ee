"""Every letter once, in one table, and values given for letters. A letter has one meaning in the whole kit; its row stands in the file of its subject in `letters/`."""

from __future__ import annotations

import re

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
from brimwork.units import InputError


def _table(*rows: Quantity) -> dict[str, Quantity]:
    table: dict[str, Quantity] = {}
    for row in rows:
        if row.key in table:
            raise ValueError(f"the letter {row.key} stands twice in the nomenclature")
        table[row.key] = row
    return table


QUANTITIES = _table(*OF_WATER, *OF_VESSELS, *OF_EDGES, *OF_LOADS, *OF_PIPES, *OF_GROUND, *OF_BALANCE, *OF_DESIGN)


def read_values(text: str) -> dict[str, float]:
    """ "b=4 m, H=0.2 m" as SI floats by letter. Raises InputError."""
    values = {}
    for part in filter(None, (part.strip() for part in re.split(r"(?<!\d),|,(?!\d)", text))):
        name, equals, amount = (piece.strip() for piece in part.partition("="))
        if not equals or not amount:
            raise InputError(f"'{part}' is not a letter with a value: type one such as H=25mm (a point, not a comma, before decimals)")
        if name in values:
            raise InputError(f"{name} is given twice: type it once")
        values[name] = read_value(name, amount, COMMAND)
    return values


def read_value(name: str, text: str, place: str) -> float:
    """SI value of a letter of the nomenclature. Raises InputError, which says what to type at that place."""
    if name not in QUANTITIES:
        raise InputError(f"there is no letter '{name}'.{nearest(name, QUANTITIES)}")
    return QUANTITIES[name].read(text, place)
