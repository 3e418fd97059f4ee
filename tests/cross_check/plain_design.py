"""A design file read without the product: its TOML text as plain SI numbers, words and lists, by a unit table of its own.

Nothing here knows what a value is good for. A value that nobody gave is missing, unless every model assumes it (`USUAL`, typed here by hand from
the printed form).
"""

import re
import tomllib
from functools import cache

INCH, FOOT, POUND, GALLON, GRAVITY = 0.0254, 0.3048, 0.45359237, 231 * 0.0254**3, 9.80665
POUND_FORCE = POUND * GRAVITY
UNITS = {
    "": 1.0, "%": 0.01, "mm": 1e-3, "cm": 1e-2, "m": 1.0, "km": 1e3, "in": INCH, "ft": FOOT, "yd": 3 * FOOT,
    "mm2": 1e-6, "cm2": 1e-4, "m2": 1.0, "in2": INCH**2, "ft2": FOOT**2, "m3": 1.0, "L": 1e-3, "ft3": FOOT**3, "yd3": 27 * FOOT**3, "US gal": GALLON,
    "g": 1e-3, "kg": 1.0, "t": 1e3, "lb": POUND, "N": 1.0, "kN": 1e3, "lbf": POUND_FORCE,
    "Pa": 1.0, "kPa": 1e3, "MPa": 1e6, "psi": POUND_FORCE / INCH**2, "psf": POUND_FORCE / FOOT**2,
    "s": 1.0, "min": 60.0, "h": 3600.0, "day": 86400.0, "m/s": 1.0, "ft/s": FOOT,
    "kg/m3": 1.0, "lb/ft3": POUND / FOOT**3, "m3/s": 1.0, "L/s": 1e-3, "L/min": 1e-3 / 60, "L/h": 1e-3 / 3600, "US gal/min": GALLON / 60, "US gal/h": GALLON / 3600,
    "L/s per m": 1e-3, "US gal/min per ft": GALLON / 60 / FOOT, "m^0.5/s": 1.0, "ft^0.5/s": FOOT**0.5,
    "mm/day": 1e-3 / 86400, "in/day": INCH / 86400, "L/day": 1e-3 / 86400, "US gal/day": GALLON / 86400, "mm/h": 1e-3 / 3600, "in/h": INCH / 3600,
    "V": 1.0, "A": 1.0, "mA": 1e-3, "W": 1.0, "kW": 1e3, "mV/A/m": 1e-3, "ohm/km": 1e-3, "ohm/kft": 1e-3 / FOOT,
    "cur": 1.0, "cur/kWh": 1 / 3.6e6, "cur/h": 1 / 3600, "cur/m": 1.0, "cur/ft": 1 / FOOT, "cur/m3": 1.0, "deg": 0.017453292519943295,
}  # fmt: skip
# What every model assumes until the design says something else, as it is printed in the form.
USUAL = {
    "flow.water_temperature": "20 degC", "assumptions.wind_factor": "1", "assumptions.overflow_discharge": "0.6", "assumptions.run_off": "1",
    "assumptions.air_density": "1.25 kg/m3", "assumptions.exposure": "1", "assumptions.grip": "0.95", "assumptions.drip_loop": "0.3 m", "assumptions.lift_out": "1 m",
    "assumptions.pebble_gaps": "0.4", "assumptions.pebble_density": "2650 kg/m3", "assumptions.person": "0.8 kN", "assumptions.foot": "100 mm",
    "assumptions.footing_slope": "1.5", "assumptions.starting": "6", "costing.contingency": "0.12", "assumptions.wall_density": "2000 kg/m3",
    "assumptions.fill_push": "0.45", "assumptions.fill_density": "1900 kg/m3", "assumptions.board_stiffness": "6000 MPa", "assumptions.cover_density": "2300 kg/m3",
    "vessel.shape": "round", "site.sling_equal": "no", "vessel.offset_across": "0 mm",
}  # fmt: skip
USUAL_HERE = {
    "pump.bay": {"UK": "200 mm", "US": "8 in"},
    "supply.frequency": {"UK": "50 Hz", "US": "60 Hz"},
    "buying.strut_spacing": {"UK": "600 mm", "US": "24 in"},
}
WORDS_WITH_NUMBERS = ("conductor",)  # names of sizes, which look like quantities
_QUANTITY = re.compile(r"\s*(?P<number>[-+]?\d+(?:\.\d*)?(?:[eE][-+]?\d+)?|[-+]?\.\d+)\s*(?P<unit>.*?)\s*")
_SLOPE = re.compile(r"\s*(?P<rise>[\d.]+)\s*(?::|\sin\s)\s*(?P<run>[\d.]+)\s*")


class Missing(Exception):
    """A number needs what nobody gave; its key is the argument."""


class Impossible(Exception):
    """There is no such number: no water comes, or the geometry cannot be. The reason is the argument."""


class Values(dict):
    """Values by "section.key"; one that nobody gave raises Missing with its key."""

    def __missing__(self, key: str):
        raise Missing(key)


class Plain:
    """A design: kind, region, and `d`, its values in SI. `said` holds only what the file itself says."""

    def __init__(self, text: str):
        table = tomllib.loads(text)
        self.kind, self.region = table["kind"], table.get("region", "UK")
        self.measured = {
            f"{section}.{key}"
            for section, entries in table.items()
            if isinstance(entries, dict)
            for key, entry in entries.items()
            if isinstance(entry, dict) and entry.get("basis") == "measured"
        }
        self.said = {
            f"{section}.{key}": entry if key in WORDS_WITH_NUMBERS else quantity(entry["value"] if isinstance(entry, dict) else entry)
            for section, entries in table.items()
            if isinstance(entries, dict) and section not in ("prices", "programme", "limits")
            for key, entry in entries.items()
        }
        usual = {**USUAL, **{key: here[self.region] for key, here in USUAL_HERE.items()}}
        self.d = Values({key: quantity(text) for key, text in usual.items()} | self.said)


def quantity(entry):
    """SI number of a text with its unit; lists item by item; a word stays a word, a bare number itself."""
    if isinstance(entry, list):
        return tuple(quantity(one) for one in entry)
    return _read(entry) if isinstance(entry, str) else entry


@cache
def _read(entry: str):
    slope, found = _SLOPE.fullmatch(entry), _QUANTITY.fullmatch(entry)
    if slope:
        return float(slope["rise"]) / float(slope["run"])
    if not found:
        return entry
    number, unit = float(found["number"]), found["unit"]
    if unit == "degC":
        return number + 273.15
    if unit == "degF":
        return (number + 459.67) / 1.8
    return number * UNITS[unit] if unit in UNITS else entry
