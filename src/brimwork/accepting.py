"""Values given to a formula in Python made plain numbers in SI: text with a unit, pint quantities, arrays.

Whatever carries a unit is converted or refused, never stripped of it. pint itself is not needed here: its quantities tell their dimension.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from typing import Any

from brimwork.dimensions import NUMBER, Dimension, kind
from brimwork.needing import needed
from brimwork.nomenclature import QUANTITIES
from brimwork.quantity import CELL
from brimwork.units import InputError

_PINT_BASE = ("[mass]", "[length]", "[time]", "[temperature]", "[current]", "")  # money has no unit that all registries know
_PINT_UNITS = ("kilogram", "meter", "second", "kelvin", "ampere", "")
_LONGEST = 40  # characters of a refused value that a message shows


def plain(values: Mapping[str, Any]) -> dict[str, Any]:
    """The values as floats and arrays in SI. Raises InputError for what is not of the letter's dimension, not a number, or masked."""
    return {name: _plain(name, value) if name in QUANTITIES else value for name, value in values.items()}


def is_array(value: object) -> bool:
    """Whether a value holds many: a list, a NumPy array, a column of a table."""
    return isinstance(value, list | tuple) or bool(getattr(value, "ndim", 0))


def with_unit(values: Mapping[str, Any], letter: str) -> Callable[[Any], Any]:
    """What makes the result like the values: a pint quantity of their registry, in SI, where one of them was one; else the number itself."""
    given = next((value for value in _each(values) if is_pint(value)), None)
    if given is None:
        return lambda result: result
    return lambda result: type(given)(result, _si(QUANTITIES[letter].dimension))


def _each(values: Mapping[str, Any]) -> Iterator[Any]:
    for value in values.values():
        if isinstance(value, list | tuple):
            yield from value
        else:
            yield value


def _plain(name: str, value: Any) -> Any:
    if type(value) is float:
        return value
    if isinstance(value, bool):
        raise InputError(f"{name} = {value} is yes or no, not a number: give it in {_wanted(name)}")
    if isinstance(value, str):
        return QUANTITIES[name].read(value, CELL)
    if is_pint(value):
        wanted = QUANTITIES[name]
        value = in_si(name, value, wanted.dimension, wanted.si, f"({wanted.name}): give one such as {wanted.such_as(CELL)}")
    elif hasattr(value, "unit") or hasattr(value, "units"):
        raise InputError(f"{name} = {_shown(value)} carries a unit of its own kind: give numbers in {_wanted(name)}, a pint quantity, or text with a unit")
    if hasattr(value, "mask") and _any(value.mask):
        raise InputError(f"{name} has places that are masked: give numbers only, in {_wanted(name)}")
    if is_array(value):
        return _numbers(name, value)
    try:
        return float(value)
    except OverflowError:
        return math.inf  # which no letter can be
    except (TypeError, ValueError):
        raise InputError(f"{name} = {_shown(value)} is not a number: give it in {_wanted(name)}") from None


def _numbers(name: str, value: Any) -> Any:
    with needed("numpy", "working an array"):
        import numpy

    if isinstance(value, list | tuple) and any(one is None or isinstance(one, str | bool) or is_pint(one) for one in value):
        return numpy.array([_plain(name, one) for one in value])
    try:
        array = numpy.asarray(value)
        if array.dtype.kind in "iufO":
            return array.astype(float, copy=False)
    except (TypeError, ValueError):
        pass
    raise InputError(f"{name} = {_shown(value)} is not all numbers: give them in {_wanted(name)}")


def _any(mask: Any) -> bool:
    return not callable(mask) and bool(mask.any() if hasattr(mask, "any") else mask)  # a table's column has a method of that name


def is_pint(value: object) -> bool:
    """Whether a value is a quantity of pint's, of whatever registry."""
    return all(hasattr(value, name) for name in ("magnitude", "units", "dimensionality"))


def in_si(name: str, value: Any, wanted: Dimension, si: str, ask: str) -> Any:
    """The magnitude in SI of a quantity of pint's. Raises InputError for another dimension, and for an angle where a plain number is wanted."""
    powers = {base: Fraction(power).limit_denominator(60) for base, power in value.dimensionality.items()}
    given = Dimension(powers.get(base, Fraction(0)) for base in _PINT_BASE)
    angle = given == NUMBER and "radian" in str(value.to_root_units().units)
    if {*powers} - {*_PINT_BASE} or given != wanted or angle and si != "rad":
        what = "an angle" if angle else "another kind of quantity" if {*powers} - {*_PINT_BASE} else kind(given)
        raise InputError(f"{name} = {_shown(value)} is {what}, but {'an angle' if si == 'rad' else kind(wanted)} is wanted {ask}")
    return value.to(_si(wanted)).magnitude


def _si(dimension: Dimension) -> str:
    """A dimension as pint writes its unit: "meter ** 3.0 * second ** -1.0"."""
    return " * ".join(f"{unit} ** {float(power)!r}" for unit, power in zip(_PINT_UNITS, dimension) if power) or "dimensionless"


def _wanted(name: str) -> str:
    return QUANTITIES[name].si or "plain numbers"


def _shown(value: object) -> str:
    text = " ".join(str(value).split())
    return text if len(text) <= _LONGEST else f"{text[: _LONGEST - 3]}..."
