"""Values that safety rests on, and between which limits they can be: outside, a value is asked about, and no check of safety counts with it.

The spans are wide, and open on the side that makes a check harder: what is outside them is a slip of the finger, a wrong unit or wishful thinking. They are
judgement where no source is named.
"""

from __future__ import annotations

from functools import cache
from typing import Any

from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.reading import Field

PLAUSIBLE: dict[str, tuple[str, str]] = {
    # factors and coefficients
    "reservoir.safety_factor": ("1.2", "100"),
    "reservoir.creep_factor": ("0.1", "1"),
    "reservoir.void_fraction": ("0.2", "0.99"),
    "reservoir.short_term_strength": ("0 kPa", "1500 kPa"),
    "assumptions.wind_factor": ("1", "20"),
    "assumptions.exposure": ("0.5", "5"),
    "assumptions.air_density": ("1 kg/m3", "1.45 kg/m3"),  # 3000 m up in summer to sea level at -30 degC, by the gas law
    "assumptions.grip": ("0.9", "1"),  # the NIOSH coupling multiplier is 0.90 to 1.00
    "assumptions.person": ("0.4 kN", "10 kN"),
    "assumptions.foot": ("50 mm", "150 mm"),
    "assumptions.footing_slope": ("1", "100"),
    "assumptions.overflow_discharge": ("0.3", "0.85"),
    "assumptions.run_off": ("0.5", "1"),
    "assumptions.pebble_gaps": ("0.25", "0.55"),
    "assumptions.pebble_density": ("1500 kg/m3", "3300 kg/m3"),
    "site.force_coefficient": ("0.3", "2.5"),
    "site.wind_speed": ("10 m/s", "90 m/s"),
    "site.soil_bearing": ("0 kPa", "1000 kPa"),
    "site.wheel_side": ("30 mm", "400 mm"),
    "catch.splash_factor": ("0.2", "20"),
    "catch.stone_density": ("1000 kg/m3", "2200 kg/m3"),
    "stones.density": ("1500 kg/m3", "3500 kg/m3"),
    "stones.base_share": ("0.2", "1"),
    "assumptions.wall_density": ("1200 kg/m3", "2800 kg/m3"),
    "slab.density": ("1500 kg/m3", "3300 kg/m3"),
    "vessel.foam_density": ("8 kg/m3", "200 kg/m3"),
    "vessel.tensile_strength": ("0 MPa", "60 MPa"),
    "vessel.rim_error": ("0 mm", "50 mm"),
    "pipe.hazen_williams": ("60", "160"),
    "pipe.roughness": ("0 mm", "5 mm"),
    "cascade.rill_roughness": ("0.008", "0.06"),
    "flow.water_temperature": ("0.1 degC", "45 degC"),
    # electricity
    "supply.voltage": ("10 V", "480 V"),
    "supply.power_factor": ("0.2", "1"),
    "supply.resistance": ("0.1 ohm/km", "100 ohm/km"),
    "supply.drop": ("0.2 mV/A/m", "200 mV/A/m"),
    "supply.breaker": ("1 A", "100 A"),
    "supply.leakage": ("0 mA", "100 mA"),
    "pump.power": ("1 W", "3000 W"),
    # measured on site
    "measured.leak": ("-1 mm/day", "500 mm/day"),  # below nothing only as far as the bucket and the rule are read
    "measured.start_drop": ("0.5 mm", "1000 mm"),
    "measured.current": ("0.01 A", "30 A"),
}


@cache
def _span(key: str) -> tuple[float, float]:
    section, _, name = key.partition(".")
    field = SECTIONS[section][name]
    assert isinstance(field, Field), f"{key} is no quantity: only a quantity has a span"
    low, high = PLAUSIBLE[key]
    return field.read(low, key), field.read(high, key)


def implausible(design: Design) -> dict[str, str]:
    """The values of a design that can hardly be, each with what such a thing can be, in the units of the region."""
    found = {}
    for key in PLAUSIBLE.keys() & design.values.keys():
        low, high = _span(key)
        value = float(f"{design.values[key].value:.9g}")
        if not low <= value <= high:
            section, _, name = key.partition(".")
            field: Any = SECTIONS[section][name]
            found[key] = f"{design.values[key].text}, where {field.write(low, design.region)} to {field.write(high, design.region)} can be"
    return dict(sorted(found.items()))


def without(design: Design, keys: tuple[str, ...]) -> Design:
    """The same design as if nobody had given these values; what is usual counts where there is such a thing."""
    for key in keys:
        design = design.having(key, None)
    return design
