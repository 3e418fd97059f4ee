"""Brimwork: a design workbook and teaching kit for small recirculating water features.

    >>> import brimwork
    >>> lip = brimwork.find("flow over a level lip")
    >>> lip
    <Formula 'flow over a level lip': Q = 2/3*C_d*b*sqrt(2*g)*H**(3/2)>
    >>> round(lip(C_d=0.62, b="4 m", H="200 mm"), 3)  # m3/s; printed by Sarkar, Fluid Mechanics, Ex 5.9: 0.655
    0.655

find, formulas, matching    a formula by its name, all of them, those about some words
Formula                     what these are: call one with numbers in SI, texts with a unit, arrays or pint quantities
steps_of                    the derivation of a formula, every step verified
drawn                       its picture
Feature                     a design: load, results, findings, draw, change
as_table                    results, findings or steps as a list of dicts or a data frame
read, write                 text with a unit to SI, and back
InputError                  what is raised for whatever a person gives that cannot be used
"""

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from brimwork.door import Feature, as_table, drawn, matching
    from brimwork.edition import __version__ as __version__
    from brimwork.formula import Formula
    from brimwork.prove import steps_of
    from brimwork.topics import find, formulas
    from brimwork.units import InputError, read, write

__all__ = ["Feature", "Formula", "InputError", "as_table", "drawn", "find", "formulas", "matching", "read", "steps_of", "write"]

_HOMES = {"edition": ("__version__",), "door": ("Feature", "as_table", "drawn", "matching"), "formula": ("Formula",), "prove": ("steps_of",), "topics": ("find", "formulas"),
          "units": ("InputError", "read", "write")}  # fmt: skip


def __getattr__(name: str) -> object:
    """A public name, from the module where it lives; loaded when it is asked for, since all formulas take half a second."""
    for home, names in _HOMES.items():
        if name in names:
            return getattr(import_module(f"{__name__}.{home}"), name)
    raise AttributeError(f"brimwork has no name '{name}'; it has {', '.join(__all__)}")


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
