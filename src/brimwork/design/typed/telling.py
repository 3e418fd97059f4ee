"""Numbers of a design in words: a few figures, the units of the region, days in the plural, missing values by what they mean."""

from __future__ import annotations

from brimwork import units
from brimwork.quantity import days

# The units in which the US is told what is told in these elsewhere.
US_UNITS = {"mm": "in", "m": "ft", "m/s": "ft/s", "L/s per m": "US gal/min per ft", "mm/day": "in/day"}
INFINITE = float("inf")


def short(value: float, unit_text: str, digits: int = 3) -> str:
    """Value in SI in a unit, to a few figures and without zeros that say nothing."""
    text, _, name = units.write(value, unit_text, digits).partition(" ")
    return f"{text.rstrip('0').rstrip('.') if '.' in text and 'e' not in text else text} {name}".strip()


def percent(share: float) -> str:
    return units.write(share, "%", None) if share else ""


_NOTHING = 1e-12  # in SI: what sums of lengths leave of nothing


def told(value: float, unit: str, region: str) -> str:
    """A value in its unit; for the US in theirs, with the other behind."""
    value = 0.0 if abs(value) < _NOTHING else value
    here = days(units.write(value, unit))
    return f"{units.write(value, US_UNITS[unit])} ({here})" if region == "US" and unit in US_UNITS else here
