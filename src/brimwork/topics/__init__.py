"""The topics: one file each, its formulas first, then its procedures. Found by listing the folder; nothing to register."""

from __future__ import annotations

import importlib
import pkgutil
from functools import cache

from brimwork.expression import DeclarationError
from brimwork.formula import Formula
from brimwork.nomenclature import LETTERS, QUANTITIES, wrong_row
from brimwork.spellings import nearest
from brimwork.units import InputError

# names that formulas had once: files of answers and exercises carry them
FORMER = {
    "radius of the roots of a tree": "root protection radius",
    "boil of a flow from a bore": "mound of a flow from a bore",
    "outlet bore for a boil": "outlet bore for a mound",
    "duty flow over flow wanted": "duty flow over required flow",
    "rim error over head": "rim out of level over head",
    "rim error that leaves one side dry": "rim out of level that leaves one side dry",
}


@cache
def topics() -> dict[str, tuple[Formula, ...]]:
    """Formulas by topic, in the order of declaration. Raises DeclarationError where a letter stands twice."""
    if len(QUANTITIES) != len(LETTERS):
        raise DeclarationError(wrong_row())
    names = sorted(module.name for module in pkgutil.iter_modules(__path__))
    modules = {name: importlib.import_module(f"{__name__}.{name}") for name in names}
    return {name: tuple(value for value in vars(module).values() if isinstance(value, Formula)) for name, module in modules.items()}


@cache
def formulas() -> dict[str, Formula]:
    """Every formula by name. Raises ValueError when two carry the same name.

    >>> import brimwork
    >>> len(brimwork.formulas()) > 300
    True
    """
    table: dict[str, Formula] = {}
    for topic, found in topics().items():
        for formula in found:
            if formula.name in table:
                raise ValueError(f"two formulas are named '{formula.name}' (the second in {topic})")
            table[formula.name] = formula
    return table


def find(name: str) -> Formula:
    """The formula of that name, or that once had it, in capitals or not. Raises InputError with the nearest names.

    >>> import brimwork
    >>> brimwork.find("Flow over a level lip").inputs
    ('C_d', 'b', 'H')
    """
    table = {known.lower(): formula for known, formula in formulas().items()}
    wanted = " ".join(name.lower().replace("_", " ").split())
    wanted = FORMER.get(wanted, wanted)
    if wanted in table:
        return table[wanted]
    raise InputError(f"there is no formula '{name}'.{nearest(wanted, table)} 'brimwork work' alone (in Python: brimwork.formulas()) lists all of them")
