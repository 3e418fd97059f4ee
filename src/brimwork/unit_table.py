"""The closed table of units: each name with its factor to SI and its dimension. Every row is tested against pint."""

from __future__ import annotations

import math

from brimwork.dimensions import (
    ENERGY,
    FORCE,
    LENGTH,
    MASS,
    MONEY,
    NUMBER,
    POWER,
    PRESSURE,
    TEMPERATURE,
    TIME,
    VOLT,
    VOLT_PER_AMPERE,
    VOLUME,
    Dimension,
    dimension_of,
)

_POUND = 0.45359237
_INCH = 0.0254
_US_GALLON, _IMPERIAL_GALLON = 231 * _INCH**3, 4.54609e-3
STANDARD_GRAVITY = 9.80665

# name: (factor to SI, dimension). Names with a space are written with it and read with or without.
UNITS: dict[str, tuple[float, Dimension]] = {
    "m": (1.0, LENGTH),
    "um": (1e-6, LENGTH),
    "mm": (1e-3, LENGTH),
    "cm": (1e-2, LENGTH),
    "km": (1e3, LENGTH),
    "in": (_INCH, LENGTH),
    "ft": (12 * _INCH, LENGTH),
    "kft": (12000 * _INCH, LENGTH),
    "yd": (36 * _INCH, LENGTH),
    "mile": (63360 * _INCH, LENGTH),
    "L": (1e-3, VOLUME),
    "mL": (1e-6, VOLUME),
    "US gal": (_US_GALLON, VOLUME),
    "US quart": (_US_GALLON / 4, VOLUME),
    "US pint": (_US_GALLON / 8, VOLUME),
    "US fl oz": (_US_GALLON / 128, VOLUME),
    "imp gal": (_IMPERIAL_GALLON, VOLUME),
    "imp quart": (_IMPERIAL_GALLON / 4, VOLUME),
    "imp pint": (_IMPERIAL_GALLON / 8, VOLUME),
    "imp fl oz": (_IMPERIAL_GALLON / 160, VOLUME),
    "s": (1.0, TIME),
    "min": (60.0, TIME),
    "h": (3600.0, TIME),
    "day": (86400.0, TIME),
    "kg": (1.0, MASS),
    "g": (1e-3, MASS),
    "t": (1e3, MASS),
    "lb": (_POUND, MASS),
    "oz": (_POUND / 16, MASS),
    "stone": (14 * _POUND, MASS),
    "short ton": (2000 * _POUND, MASS),
    "N": (1.0, FORCE),
    "mN": (1e-3, FORCE),
    "kN": (1e3, FORCE),
    "lbf": (_POUND * STANDARD_GRAVITY, FORCE),
    "Pa": (1.0, PRESSURE),
    "kPa": (1e3, PRESSURE),
    "MPa": (1e6, PRESSURE),
    "bar": (1e5, PRESSURE),
    "psi": (_POUND * STANDARD_GRAVITY / _INCH**2, PRESSURE),
    "psf": (_POUND * STANDARD_GRAVITY / (12 * _INCH) ** 2, PRESSURE),
    "J": (1.0, ENERGY),
    "Wh": (3600.0, ENERGY),
    "kWh": (3.6e6, ENERGY),
    "W": (1.0, POWER),
    "kW": (1e3, POWER),
    "hp": (550 * 12 * _INCH * _POUND * STANDARD_GRAVITY, POWER),
    "A": (1.0, dimension_of(A=1)),
    "mA": (1e-3, dimension_of(A=1)),
    "V": (1.0, VOLT),
    "mV": (1e-3, VOLT),
    "ohm": (1.0, VOLT_PER_AMPERE),
    "cP": (1e-3, PRESSURE * TIME),
    "cSt": (1e-6, LENGTH**2 / TIME),
    "K": (1.0, TEMPERATURE),
    "rad": (1.0, NUMBER),
    "deg": (math.pi / 180, NUMBER),
    "%": (0.01, NUMBER),
    "cur": (1.0, MONEY),  # money, in whatever currency the user counts
}
# Scales with an offset, alone in a text only: kelvin = factor * (number + shift).
OFFSET_UNITS: dict[str, tuple[float, float]] = {"degC": (1.0, 273.15), "degF": (5 / 9, 459.67)}
