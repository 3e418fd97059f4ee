"""Numbers that belong together: what a formula question may draw, so that no set of values contradicts itself or is what no site has.

The limits are common practice, no source: they only keep exercises plausible, and nobody designs by them.
"""

from __future__ import annotations

import math
import random
from functools import cache

from brimwork import expression, system
from brimwork.conditions import holds
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES
from brimwork.units import read, unit

FEWEST = 60  # combinations of steps; where a range has fewer, its steps are made finer

# What holds between letters wherever they stand together in a question, the result among them (SI).
_TOGETHER = (
    *("v_b < 0.9*v_land", "P_hyd < 0.5*P_in", "H_pump < 0.95*H_0", "h_min < 0.8*h_static", "y_n < 0.8*h_side", "h_gw < 0.8*D", "eta_pump < 0.9*eta_wet"),
    *("V_tr < 0.5*V_use", "C_extra < 0.5*C_price", "z_low < z_rim - 0.1", "T_min < T_max - 4", "0.6*y_c < y_b", "y_b < 0.85*y_c", "h_over < h_side + 1"),
    *("L_out < L_dig", "W_out < W_dig", "C_serv < 0.2*C_price", "theta_c < 1.4", "h_m < 2*z_s"),
)
# A letter that follows from others of the question, rounded to its step.
FOLLOWS = {"t_fall": "sqrt(2*h_fall/g)", "y_c": "(q**2/g)**(1/3)", "omega_s": "acos(-tan(phi_lat)*tan(delta_sun))"}
# What the result must be for one formula (SI).
LIMITS: dict[str, tuple[str, ...]] = {
    "velocity coefficient from a throw": ("0.9 < C_v", "C_v < 1"),
    "velocity head of approach": ("0.0005 < h_a",),
    "volume of a battered pit": ("0.2*V < 4/3*m_b**2*h**3",),  # the corners count
    "water in a cone-shaped bowl": ("0.55*D < h", "d_floor < 0.5*d_rim"),
    "flotation factor of an emptied pit": ("0.4 < f_float", "f_float < 3"),
    "utilisation under a foot or a wheel": ("u_foot < 1.5",),
    "utilisation of the blocks": ("u_p < 1.5",),
    "utilisation of the soil": ("u_p < 1.5",),
    "years to pay back a dearer pump": ("N_pay < 15",),
    "tipping factor in wind": ("0.5 < f_wind", "f_wind < 12"),
    "tipping factor": ("0.6 < f_tip", "f_tip < 6"),
    "hold-down ratio of pebbles on foam": ("0.6 < f_hold", "f_hold < 4"),
    "freeboard of a rill": ("0.005 < h_free",),
    "height that a sill hides": ("0.05 < z_hid",),
    "depth still to dig": ("0.01 < h_cut",),
    "duty flow over required flow": ("0.6 < r_duty", "r_duty < 1.6"),
    "rim out of level over head": ("r_level < 1",),
    "flow ratio of a rim out of level": ("e_rim < 0.8*H",),
    "eccentricity over the edge of the kern": ("r_kern < 2",),
    "apron over splash reach": ("0.4 < r_apron", "r_apron < 3"),
    "tread over throw": ("0.5 < r_tread", "r_tread < 3"),
    "overflow ratio": ("0.5 < r_over", "r_over < 10"),
    "drain-back ratio": ("0.5 < r_back", "r_back < 10"),
    "Froude number": ("Fr < 4",),
    "void fraction of packed spheres": ("n_por < 0.6",),
    "compaction factor from densities": ("k_comp < 1.5",),
    "sound level at a distance": ("25 < L_far",),
    "total dynamic head": ("H_t < 6",),
    "head lost to friction": ("0.02 < h_f", "h_f < 3"),
    "head lost to friction by flow": ("0.02 < h_f", "h_f < 3"),
    "head lost by Hazen-Williams": ("0.02 < h_f", "h_f < 3"),
    "speed in a pipe": ("0.3 < v", "v < 3"),
    "greatest pressure under partial contact": ("p_max < 100000",),
    "loss coefficient for another bore": ("K_2 < 100",),
    "height of a jet": ("0.01 < h_jet",),
    "nameplate ratio": ("r_plate < 2",),
    "voltage drop in per cent by cable table": ("r_drop < 0.08",),
    "voltage drop in per cent by resistance": ("r_drop < 0.08",),
    "flow of a full level pipe from its throw": ("Q < 0.002",),
    "heat lost to the sky": ("10 < R_long",),
    "flow over a lip from a channel": ("A_a < 2.5*b*H",),
    "time for two tanks to level": ("6 < t_drain",),
    "time to drain a round bowl": ("6 < t_drain",),
    "time to drain a cone": ("6 < t_drain",),
    "time to drain through an opening": ("6 < t_drain",),
    "time to drain against an inflow": ("6 < t_drain",),
}
# Where a question draws a letter from another range than the usual one: low, high and step.
RANGES: dict[str, dict[str, tuple[str, str, str]]] = {
    "sound level at a distance": {"r_far": ("3 m", "30 m", "0.5 m")},
    "velocity head of approach": {"A_a": ("0.004 m2", "0.02 m2", "0.001 m2"), "Q": ("40 L/min", "120 L/min", "1 L/min")},
    "flow through an opening": {"A_o": ("2 cm2", "20 cm2", "0.5 cm2")},
    "friction factor of laminar flow": {"Re": ("200", "2200", "50")},
    "flotation factor of an emptied pit": {"m_t": ("60 kg", "400 kg", "5 kg"), "h_gw": ("100 mm", "300 mm", "10 mm"), "A_pit": ("0.6 m2", "2 m2", "0.05 m2")},
    "net uplift of an emptied pit": {"m_t": ("60 kg", "200 kg", "5 kg"), "h_gw": ("100 mm", "250 mm", "10 mm"), "A_pit": ("0.6 m2", "1.4 m2", "0.05 m2")},
    "time to drain against an inflow": {
        "A_o": ("5 cm2", "15 cm2", "0.5 cm2"),
        "Q_feed": ("10 L/min", "40 L/min", "1 L/min"),
        "H_2": ("80 mm", "250 mm", "10 mm"),
    },
    "time to drain a round bowl": {"A_o": ("2 cm2", "8 cm2", "0.5 cm2"), "H_2": ("75 mm", "110 mm", "1 mm")},
    "time to drain a cone": {"A_o": ("2 cm2", "8 cm2", "0.5 cm2")},
    "wind speed at two metres": {"z_wind": ("0.4 m", "1 m", "0.05 m")},
    "head at a lip with end contractions": {"Q": ("400 L/min", "700 L/min", "10 L/min"), "b": ("200 mm", "260 mm", "5 mm"), "n_c": ("2", "2", "1")},
    "viscosity of water by temperature": {"T_w": ("5 degC", "14 degC", "0.25 K")},
    "hour angle at sunset": {"phi_lat": ("38 deg", "60 deg", "1 deg"), "delta_sun": ("12 deg", "23 deg", "0.5 deg")},
    "sunlight above the air": {"phi_lat": ("45 deg", "55 deg", "1 deg"), "delta_sun": ("16 deg", "23 deg", "0.5 deg"), "d_rel": ("0.967", "0.977", "0.001")},
    "flow over a lip from a channel": {"A_a": ("0.009 m2", "0.02 m2", "0.0005 m2"), "H": ("30 mm", "40 mm", "1 mm"), "b": ("150 mm", "250 mm", "5 mm")},
    "flow over a lip with corrected head and length": {
        "b": ("50 mm", "110 mm", "2 mm"),
        "k_b": ("2.5 mm", "4.5 mm", "0.1 mm"),
        "H": ("20 mm", "40 mm", "1 mm"),
        "k_h": ("1.2 mm", "3 mm", "0.1 mm"),
    },
    "flow through a trapezoidal notch": {"b": ("100 mm", "200 mm", "5 mm"), "H": ("40 mm", "60 mm", "1 mm"), "theta": ("60 deg", "80 deg", "5 deg")},
    "water in transit": {
        "V_film": ("0.4 L", "1 L", "0.05 L"),
        "V_sheet": ("0.4 L", "2 L", "0.05 L"),
        "V_rim": ("1 L", "10 L", "0.2 L"),
        "V_hold": ("1 L", "10 L", "0.2 L"),
    },
    "recommended limit of a lift from below the knuckles": {
        "d_lift": ("25 cm", "60 cm", "1 cm"),
        "k_grip": ("0.9", "0.95", "0.05"),
        "k_twist": ("0.71", "0.95", "0.01"),
        "k_freq": ("0.75", "0.94", "0.01"),
    },
    "recommended limit of a lift from above the knuckles": {
        "d_lift": ("25 cm", "60 cm", "1 cm"),
        "k_grip": ("0.9", "0.95", "0.05"),
        "k_twist": ("0.71", "0.95", "0.01"),
        "k_freq": ("0.75", "0.94", "0.01"),
    },
    "volume of a battered pit": {
        "L": ("500 mm", "1200 mm", "50 mm"),
        "W": ("400 mm", "900 mm", "50 mm"),
        "h": ("600 mm", "900 mm", "10 mm"),
        "m_b": ("0.45", "0.75", "0.05"),
    },
    "depth in a battered pit": {
        "L": ("600 mm", "1000 mm", "50 mm"),
        "W": ("500 mm", "800 mm", "50 mm"),
        "V": ("300 L", "900 L", "10 L"),
        "m_b": ("0.4", "0.8", "0.05"),
    },
    "uplift of foam": {"rho_f": ("36 kg/m3", "40 kg/m3", "1 kg/m3")},
    "discharge coefficient of a full-width lip": {"H": ("15 mm", "40 mm", "1 mm"), "P": ("50 mm", "150 mm", "5 mm")},
    "depth in a cone-shaped bowl": {
        "V": ("30 L", "150 L", "5 L"),
        "d_rim": ("700 mm", "1000 mm", "10 mm"),
        "d_floor": ("200 mm", "400 mm", "10 mm"),
        "D": ("300 mm", "800 mm", "10 mm"),
    },
    "pressure of the air at a height": {"z_site": ("1000 m", "2700 m", "10 m")},
    "bore for a friction head": {"k_s": ("0.05 mm", "0.15 mm", "0.005 mm")},
}


def draw_sensible(formula: Formula, names: tuple[str, ...], by: random.Random) -> dict[str, float] | None:
    """Values (SI) for the letters of a question, each on a step of its range exactly as it is printed; None where they do not belong together."""
    scales, fine = _scales(formula, names, system.current())
    values: dict[str, float] = {}
    for name, (low, high, step) in scales.items():
        steps = round((high - low) / step * fine[name])
        values[name] = _printed(name, low + by.randint(0, steps) * step / fine[name])
    constants = {name: QUANTITIES[name].fixed for name in ("g",)}
    for name, text in FOLLOWS.items():
        others, number = expression.function_of(text)
        if name in names and all(other in values or other in constants for other in others):
            exact = number(**{other: values.get(other, constants.get(other)) for other in others})
            step = scales[name][2] / fine[name]
            values[name] = _printed(name, round(exact / step) * step)
    met = all(holds(condition, values) for condition in (*formula.where, *_known(values)))
    return values if met else None


FREE = ("laminar flow in a pipe",)  # results that are far from the usual range of their letter, and right so


def plausible(formula: Formula, values: dict[str, float], result: float) -> bool:
    """Whether a result is one that a site could have: near its usual range, and within the limits of its formula."""
    low, high, _ = QUANTITIES[formula.result].range
    if formula.name not in FREE and not (low / 10 if low > 0 else 3 * low - 0.5 * high) <= result <= (3 * high if high > 0 else high):
        return False
    whole = {**values, formula.result: result}
    return all(holds(condition, whole) for condition in (*LIMITS.get(formula.name, ()), *_known(whole)))


def _known(values: dict[str, float]) -> list[str]:
    return [condition for condition in _TOGETHER if _letters(condition) <= values.keys()]


@cache
def _letters(condition: str) -> frozenset[str]:
    return frozenset(name for side in condition.split("<") for name in expression.letters(expression.parse_expression(side)) if not QUANTITIES[name].value)


def _range(formula: Formula, name: str) -> tuple[float, float, float]:
    if name in RANGES.get(formula.name, {}):
        low, high, step = (read(text, QUANTITIES[name].metric, name) for text in RANGES[formula.name][name])
        return low, high, step
    return _mains() if name == "U_s" and formula.name in _ON_MAINS else formula.range(name)


_ON_MAINS = ("voltage drop in per cent by cable table", "voltage drop in per cent by resistance", "current")


def _mains() -> tuple[float, float, float]:
    """The voltages that a supply has: 120 or 240 V in the US; elsewhere 240 V, or the 24 V of a garden transformer. 230 V would hide a slip that takes it for granted."""
    return (120.0, 240.0, 120.0) if system.current() == system.FEET else (24.0, 240.0, 216.0)


@cache
def _scales(formula: Formula, names: tuple[str, ...], units: str) -> tuple[dict[str, tuple[float, float, float]], dict[str, int]]:
    """Low, high and step of each letter in the `units` in use, and by how much the steps are divided."""
    scales = {name: _stepped(name, _range(formula, name)) for name in names}
    return scales, _finer(scales)


def _stepped(name: str, ends: tuple[float, float, float]) -> tuple[float, float, float]:
    """The same range on round steps of the unit that pages show, in SI."""
    row = QUANTITIES[name]
    if row.here == row.metric:
        return ends
    low, high, step = row.stepped(*ends)
    return read(f"{low:.9g} {row.here}", row.here, name), read(f"{high:.9g} {row.here}", row.here, name), step * unit(row.here).factor


def _finer(scales: dict[str, tuple[float, float, float]]) -> dict[str, int]:
    """By how much the steps of each letter are divided, so that there are enough sets; whole numbers stay whole."""
    fine = dict.fromkeys(scales, 1)
    for finer in (2, 5, 10):
        if math.prod(max(round((high - low) / step * fine[name]), 1) + 1 for name, (low, high, step) in scales.items()) >= FEWEST:
            break
        fine = {name: 1 if step == 1 and not QUANTITIES[name].si or name == "U_s" else finer for name, (_, _, step) in scales.items()}
    return fine


def _printed(name: str, value: float) -> float:
    return read(QUANTITIES[name].text_here(value, None), QUANTITIES[name].here, name)
