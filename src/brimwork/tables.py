"""Values that come in tables, each with its source or basis."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import NamedTuple

from brimwork.sources import (
    CANADIAN_SOILS,
    CHOW,
    CITY_CODE,
    DIGGING_PITS,
    DIGGING_TRENCHES,
    EN_1991_1,
    EPANET_MANUAL,
    FAO_56,
    IAPWS,
    IBC_2012,
    KINDSVATER,
    SWMM_MANUAL,
    UFC_PAVEMENT,
    USBR,
)
from brimwork.spellings import nearest
from brimwork.units import InputError

# Lip width over channel width: C_0 and C_1 of C_d = C_0 + C_1*H/P.
LIP_CONSTANTS_SOURCE = SWMM_MANUAL.at("Table 6-2, divided by 2/3 sqrt(2 g) in feet"), KINDSVATER.at("the same set")
_LIP_CONSTANTS_FEET = {  # share: c1 (with H/P), c2, in ft^0.5/s as printed
    0.2: (-0.0087, 3.152),
    0.4: (0.0317, 3.164),
    0.5: (0.0612, 3.173),
    0.6: (0.0995, 3.178),
    0.7: (0.1602, 3.182),
    0.8: (0.2376, 3.189),
    0.9: (0.3447, 3.205),
    1.0: (0.4000, 3.220),
}
_FEET = 2 / 3 * (2 * 9.80665 / 0.3048) ** 0.5
LIP_CONSTANTS = {share: (c2 / _FEET, c1 / _FEET) for share, (c1, c2) in _LIP_CONSTANTS_FEET.items()}


def lip_constants(share: float) -> tuple[float, float]:
    """C_0 and C_1 for a lip that takes `share` of the channel's width, interpolated. Raises InputError outside 0.2 to 1."""
    c_0, c_1 = _between(share, LIP_CONSTANTS, "share of the channel's width", "")
    return c_0, c_1


# Temperature in degC: density kg/m3, dynamic viscosity mPa s, surface tension mN/m, at 101.325 kPa.
WATER_SOURCE = IAPWS.at("at 101.325 kPa")
_WATER: dict[float, tuple[float, float, float]] = {
    0: (999.845, 1.79113, 75.648),
    2: (999.944, 1.67351, 75.367),
    4: (999.975, 1.56729, 75.084),
    6: (999.943, 1.47148, 74.799),
    8: (999.851, 1.38473, 74.511),
    10: (999.702, 1.30590, 74.221),
    12: (999.499, 1.23405, 73.929),
    14: (999.246, 1.16834, 73.634),
    16: (998.945, 1.10808, 73.337),
    18: (998.597, 1.05268, 73.038),
    20: (998.206, 1.00160, 72.736),
    22: (997.773, 0.95440, 72.432),
    24: (997.299, 0.91068, 72.126),
    26: (996.787, 0.87011, 71.818),
    28: (996.238, 0.83238, 71.507),
    30: (995.652, 0.79722, 71.194),
    32: (995.032, 0.76441, 70.879),
    34: (994.378, 0.73373, 70.562),
    36: (993.691, 0.70499, 70.242),
    38: (992.973, 0.67804, 69.920),
    40: (992.224, 0.65273, 69.596),
}


_WATER_LOG = {celsius: (rho, math.log(mu), sigma) for celsius, (rho, mu, sigma) in _WATER.items()}


def water(kelvin: float) -> dict[str, float]:
    """Density rho, viscosities mu and nu, surface tension sigma of water in SI at a temperature in kelvin, 0 to 40 degC.

    Linear between rows of 2 degrees, the viscosity in its logarithm: within 0.05 % of the formulation. Raises InputError outside.
    """
    rho, log_mu, sigma = _between(kelvin - 273.15, _WATER_LOG, "water temperature", " degC")
    mu = math.exp(log_mu) * 1e-3
    return {"rho": rho, "mu": mu, "nu": mu / rho, "sigma": sigma * 1e-3}


# Temperature in degC: pressure in kPa at which water boils.
BOILING: dict[float, float] = {
    0: 0.6112, 2: 0.7060, 4: 0.8135, 6: 0.9354, 8: 1.0730, 10: 1.2282, 12: 1.4028, 14: 1.5989, 16: 1.8188, 18: 2.0647, 20: 2.3392,
    22: 2.6452, 24: 2.9856, 26: 3.3637, 28: 3.7828, 30: 4.2467, 32: 4.7592, 34: 5.3247, 36: 5.9475, 38: 6.6324, 40: 7.3844,
}  # fmt: skip
_BOILING_LOG = {celsius: (math.log(pressure),) for celsius, pressure in BOILING.items()}


def vapour_pressure(kelvin: float) -> float:
    """Pressure (Pa) at which water boils at a temperature in kelvin, 0 to 40 degC; source: IAPWS-IF97, computed with the iapws package.

    Linear in its logarithm between rows of 2 degrees: within 0.05 % of the formulation. Raises InputError outside.
    """
    return 1e3 * math.exp(_between(kelvin - 273.15, _BOILING_LOG, "water temperature", " degC")[0])


def _between(at: float, table: Mapping[float, tuple[float, ...]], what: str, unit: str) -> tuple[float, ...]:
    rows = sorted(table)
    if not rows[0] <= at <= rows[-1]:
        raise InputError(f"the {what} is {at:g}{unit}, but the table runs from {rows[0]:g} to {rows[-1]:g}{unit}: choose one inside")
    above = next(row for row in rows if row >= at)
    below = max(row for row in rows if row <= at)
    share = 0.0 if above == below else (at - below) / (above - below)
    return tuple(low + share * (high - low) for low, high in zip(table[below], table[above]))


# --- pipes and fittings -------------------------------------------------------------------------------------------------------------


class Entry(NamedTuple):
    """A value from a table with its basis: a source, "common practice, no source", or "judgement"."""

    value: float
    basis: str


COMMON_PRACTICE, JUDGEMENT = "common practice, no source", "judgement"
_TABLE_3_3 = str(EPANET_MANUAL.at("Table 3.3"))

# Loss coefficients K, for the speed in the pipe that the fitting belongs to.
FITTINGS: dict[str, Entry] = {
    "globe valve, open": Entry(10.0, _TABLE_3_3),
    "angle valve, open": Entry(5.0, _TABLE_3_3),
    "swing check valve, open": Entry(2.5, _TABLE_3_3),
    "gate valve, open": Entry(0.2, _TABLE_3_3),
    "short elbow": Entry(0.9, _TABLE_3_3),
    "medium elbow": Entry(0.8, _TABLE_3_3),
    "long elbow": Entry(0.6, _TABLE_3_3),
    "45 degree elbow": Entry(0.4, _TABLE_3_3),
    "return bend": Entry(2.2, _TABLE_3_3),
    "tee, straight through": Entry(0.6, _TABLE_3_3),
    "tee, through the branch": Entry(1.8, _TABLE_3_3),
    "square entrance": Entry(0.5, _TABLE_3_3),
    "exit": Entry(1.0, _TABLE_3_3),
    "strainer": Entry(0.75, f"{COMMON_PRACTICE}: 0.5 to 1; leave it out where the pump's curve was taken with it"),
    "hose tail": Entry(0.5, f"{COMMON_PRACTICE}: 0.5 to 1 each; its own bore is smaller than the hose's"),
    "ball valve, open": Entry(0.1, COMMON_PRACTICE),
    "small check valve": Entry(2.5, f"{COMMON_PRACTICE}: 2 to 3; a spring can take much more, so use the maker's value"),
}

# Roughness k_s in metres.
ROUGHNESS: dict[str, Entry] = {
    "plastic": Entry(0.005e-3 * 0.3048, f"{EPANET_MANUAL.at('Table 3.2')}: 0.005e-3 ft; {SWMM_MANUAL.at('Table 7-4')}: 0.00006 in"),
    "galvanised iron": Entry(0.5e-3 * 0.3048, f"{EPANET_MANUAL.at('Table 3.2')}: 0.5e-3 ft; {SWMM_MANUAL.at('Table 7-4')}: 0.006 in"),
}

# Ribbed hose has no roughness that Colebrook's law could use: its ribs are too high. A friction factor of its own, the same at every flow.
RIBBED_HOSE = Entry(0.08, f"{JUDGEMENT}: 0.05 to 0.12; a bucket test on the finished feature tells more")

# Hazen-Williams coefficients. The two manuals disagree for PVC: 130 in place of 150 raises the loss by 30 %.
HAZEN_WILLIAMS_COEFFICIENTS: dict[str, Entry] = {
    "plastic, low": Entry(140.0, str(EPANET_MANUAL.at("Table 3.2: plastic 140 to 150"))),
    "plastic, high": Entry(150.0, str(EPANET_MANUAL.at("Table 3.2: plastic 140 to 150"))),
    "PVC": Entry(130.0, f"{SWMM_MANUAL.at('Table 7-3')}; EPANET's manual gives 140 to 150 for plastic"),
    "polyethylene": Entry(140.0, str(SWMM_MANUAL.at("Table 7-3"))),
}


def fitting(name: str) -> Entry:
    """Loss coefficient and basis of a fitting. Raises InputError with the nearest names."""
    return named(name, FITTINGS, "fitting")


def roughness(material: str) -> Entry:
    """Roughness (m) and basis of a pipe material. Raises InputError with the nearest names."""
    return named(material, ROUGHNESS, "pipe material")


def named(name: str, table: dict, what: str):
    """The row of that name. Raises InputError with the nearest names."""
    if name in table:
        return table[name]
    raise InputError(f"there is no {what} '{name}' in the table.{nearest(name, table)} It has: {'; '.join(table)}")


# --- void fractions, densities, soils, blocks ---------------------------------------------------------------------------------------


class Span(NamedTuple):
    """A value from a table with the range it is met in, and its basis."""

    low: float
    usual: float
    high: float
    basis: str


_DRAINABLE = str(UFC_PAVEMENT.at("20-1.7: what drains, less than what is empty"))
VOID_FRACTIONS: dict[str, Span] = {
    "plastic block": Span(0.90, 0.95, 0.97, f"{COMMON_PRACTICE}; the block's sheet governs"),
    "pebbles, one size": Span(0.35, 0.40, 0.45, COMMON_PRACTICE),
    "clean crushed stone": Span(0.40, 0.40, 0.50, COMMON_PRACTICE),
    "uniform gravel": Span(0.30, 0.35, 0.40, COMMON_PRACTICE),
    "graded sand and gravel": Span(0.20, 0.25, 0.30, COMMON_PRACTICE),
    "open-graded drainage stone, drainable": Span(0.25, 0.30, 0.35, _DRAINABLE),
    "uniform sand, drainable": Span(0.0, 0.25, 0.25, f"{_DRAINABLE}: at most 0.25"),
    "well-graded base, drainable": Span(0.0, 0.15, 0.15, f"{_DRAINABLE}: at most 0.15"),
}

_KN = 1e3 / 9.80665  # kg/m3 for each kN/m3
_EUROCODE = str(EN_1991_1.at("tables of construction materials, in kN/m3"))
# kg/m3
DENSITIES: dict[str, Span] = {
    "concrete": Span(1200.0, 2300.0, 2400.0, f"{COMMON_PRACTICE}; the low end is light-weight concrete"),
    "concrete, normal weight": Span(24 * _KN, 24 * _KN, 25 * _KN, f"{_EUROCODE}: 24, reinforced or fresh 25"),
    "granite": Span(2600.0, 2650.0, 30 * _KN, f"{COMMON_PRACTICE}; {_EUROCODE}: 27 to 30"),
    "basalt": Span(27 * _KN, 2900.0, 31 * _KN, f"{COMMON_PRACTICE}; {_EUROCODE}: 27 to 31"),
    "sandstone": Span(21 * _KN, 24 * _KN, 27 * _KN, f"{_EUROCODE}: 21 to 27; middle taken"),
    "dense limestone": Span(20 * _KN, 24.5 * _KN, 29 * _KN, f"{_EUROCODE}: 20 to 29; middle taken"),
    "slate": Span(28 * _KN, 28 * _KN, 28 * _KN, f"{_EUROCODE}: 28"),
    "pebbles, loose": Span(1500.0, 1600.0, 1700.0, COMMON_PRACTICE),
    "gravel, loose": Span(15 * _KN, 15.5 * _KN, 16 * _KN, f"{_EUROCODE}: 15 to 16"),
    "sand, dry": Span(15 * _KN, 15.5 * _KN, 16 * _KN, f"{_EUROCODE}: 15 to 16"),
    "expanded polystyrene foam": Span(15.0, 20.0, 40.0, COMMON_PRACTICE),
    "extruded polystyrene foam": Span(15.0, 32.0, 40.0, COMMON_PRACTICE),
}

_PSF = 47.880258980336  # Pa
_IBC, _CANADIAN = str(IBC_2012.at("Table 1806.2")), str(CANADIAN_SOILS.at("table with picket and thumb tests"))
# Presumed bearing pressure in Pa. None of them is for mud, organic soil, peat or fill that was not compacted.
SOIL_BEARING: dict[str, Entry] = {
    "filled ground or loam": Entry(500 * _PSF, f"{CITY_CODE.at('500 psf')}; one city, others differ"),
    "clay or silt": Entry(1500 * _PSF, _IBC),
    "sand, silty or clayey sand or gravel": Entry(2000 * _PSF, _IBC),
    "sandy gravel or gravel": Entry(3000 * _PSF, _IBC),
    "sedimentary rock": Entry(4000 * _PSF, _IBC),
    "crystalline rock": Entry(12000 * _PSF, _IBC),
    "dense sand or gravel": Entry(150e3, _CANADIAN),
    "loose sand or gravel": Entry(50e3, _CANADIAN),
    "dense silt": Entry(100e3, _CANADIAN),
    "stiff clay": Entry(150e3, _CANADIAN),
    "firm clay": Entry(75e3, _CANADIAN),
    "soft clay": Entry(40e3, _CANADIAN),
}

# For a block whose sheet gives only a short-term crushing strength. A tested long-term strength takes their place.
BLOCK_SAFETY = Span(1.5, 1.5, 3.0, f"{JUDGEMENT}; the maker's long-term figure governs")
# Push at the rim, N.
PUSHES: dict[str, Entry] = {"private": Entry(250.0, JUDGEMENT), "public": Entry(500.0, JUDGEMENT)}


def void_fraction_row(material: str) -> Span:
    """Void fraction, range and basis of what fills a pit. Raises InputError with the nearest names."""
    return named(material, VOID_FRACTIONS, "filling")


def density(material: str) -> Span:
    """Density (kg/m3), range and basis of a material. Raises InputError with the nearest names."""
    return named(material, DENSITIES, "material")


def soil_bearing(soil: str) -> Entry:
    """Presumed bearing pressure (Pa) and basis of a soil. Raises InputError with the nearest names."""
    return named(soil, SOIL_BEARING, "soil")


# --- digging ------------------------------------------------------------------------------------------------------------------------

_PITS, _TRENCHES = str(DIGGING_PITS.at("sand 0.50, firm 0.43, gravel 0.34, clay 0.35, boulder clay 0.28 m3/h")), str(DIGGING_TRENCHES.at("1.2, 2.2, 3.3 h/m3"))
_HOUR = 3600.0
# Time to dig a cubic metre in the ground by hand, s/m3. Two tables, and where they differ, both ends.
HAND_DIGGING: dict[str, Span] = {
    "sand or loose soil": Span(1.2 * _HOUR, 1.6 * _HOUR, _HOUR / 0.50, f"{_PITS}; {_TRENCHES}; middle taken"),
    "firm soil": Span(2.2 * _HOUR, 2.26 * _HOUR, _HOUR / 0.43, f"{_PITS}; {_TRENCHES}; middle taken"),
    "gravel": Span(_HOUR / 0.34, _HOUR / 0.34, _HOUR / 0.34, _PITS),
    "clay or heavy soil": Span(_HOUR / 0.35, 3.08 * _HOUR, 3.3 * _HOUR, f"{_PITS}; {_TRENCHES}; middle taken"),
    "boulder clay": Span(_HOUR / 0.28, _HOUR / 0.28, _HOUR / 0.28, _PITS),
}
LEAST_FROM_FOOTING = Entry(0.5, COMMON_PRACTICE)  # m
# Fall of a level at rest over that of a control bucket, m/s, up to which a lining counts as tight.
TIGHT = Entry(2e-3 / 86400, COMMON_PRACTICE)


def hand_digging(soil: str) -> Span:
    """Time to dig a cubic metre in the ground by hand (s/m3), range and basis. Raises InputError with the nearest names."""
    return named(soil, HAND_DIGGING, "soil")


# --- bores, splash and sheets -------------------------------------------------------------------------------------------------------

# Height of the water over the mouth of an upright pipe, in bores: a rim below the first, a jet above the second, neither between.
BORE_AS_A_RIM, BORE_AS_A_JET = 0.37, 1.4
BORE_REGIMES_SOURCE = USBR.at("ch. 14, s. 13")

# Apron for each metre of fall, from where the water lands.
SPLASH_FACTORS: dict[str, Entry] = {
    "clinging film": Entry(0.5, COMMON_PRACTICE),
    "dribble or broken film": Entry(1.0, COMMON_PRACTICE),
    "free sheet": Entry(0.5, f"{COMMON_PRACTICE}; on top of the throw"),
}
WINDY_SITE = Entry(1.5, COMMON_PRACTICE)

# Fall in metres: least flow for each metre of edge, m2/s, at which a free sheet stays whole.
SHEET_FLOWS: dict[float, Entry] = {0.3: Entry(2.0e-3, COMMON_PRACTICE), 0.5: Entry(3.0e-3, COMMON_PRACTICE), 1.0: Entry(4.0e-3, COMMON_PRACTICE)}


def splash_factor(water: str) -> Entry:
    """Splash factor and basis of how water comes down. Raises InputError with the nearest names."""
    return named(water, SPLASH_FACTORS, "way for water to come down")


def least_sheet_flow(h_fall: float) -> Entry:
    """Least flow (m2/s for each metre) and basis for a free sheet that stays whole over a fall (m). Raises InputError beyond the table."""
    for most, entry in SHEET_FLOWS.items():
        if 0 <= h_fall <= most:
            return entry
    raise InputError(f"the fall is {h_fall:g} m, but the table of sheets ends at 1 m: keep the fall inside, or try it with a bucket and a hose")


# --- rills --------------------------------------------------------------------------------------------------------------------------

_CHOW = str(CHOW.at("lined or built-up channels"))
# Manning coefficients of a bed and its sides.
MANNING: dict[str, Span] = {
    "smooth steel": Span(0.011, 0.012, 0.014, _CHOW),
    "cement mortar": Span(0.011, 0.013, 0.015, _CHOW),
    "concrete, trowelled": Span(0.011, 0.013, 0.015, _CHOW),
    "concrete, float finish": Span(0.013, 0.015, 0.016, _CHOW),
    "glazed brick": Span(0.011, 0.013, 0.015, _CHOW),
    "brick in mortar": Span(0.012, 0.015, 0.018, _CHOW),
    "planed wood": Span(0.010, 0.012, 0.014, _CHOW),
    "dressed stone": Span(0.013, 0.015, 0.017, f"{_CHOW}: dressed ashlar"),
    "random stone in mortar": Span(0.017, 0.020, 0.024, f"{_CHOW}: on a floated concrete bed"),
    "gravel bed between concrete sides": Span(0.017, 0.020, 0.025, _CHOW),
    "gravel bed between dry stones": Span(0.023, 0.033, 0.036, _CHOW),
    "rubble in mortar": Span(0.017, 0.025, 0.030, _CHOW),
    "dry rubble": Span(0.023, 0.032, 0.035, _CHOW),
    "liner under pebbles": Span(0.025, 0.035, 0.060, f"{JUDGEMENT}: pebbles as high as the water is deep hold it back far more"),
}


def manning(surface: str) -> Span:
    """Manning coefficient, range and basis of a rill's surface. Raises InputError with the nearest names."""
    return named(surface, MANNING, "surface")


# --- water balance ------------------------------------------------------------------------------------------------------------------

# Evaporation of a wet surface over the reference of FAO-56.
EVAPORATION_COEFFICIENTS: dict[str, Span] = {
    "open shallow water": Span(1.05, 1.05, 1.05, f"{FAO_56.at('Table 12')}, from memory"),
    "wet stone in wind": Span(1.0, 1.2, 1.5, JUDGEMENT),
}
# Evaporation of open water over that of an evaporation pan.
PAN_COEFFICIENT = Entry(0.7, "from memory")
# Reference evapotranspiration of the peak month, m/s.
_MM_DAY = 1e-3 / 86400
PEAK_MONTHS: dict[str, Span] = {
    "humid and cool": Span(3 * _MM_DAY, 3.5 * _MM_DAY, 4 * _MM_DAY, COMMON_PRACTICE),
    "warm": Span(5 * _MM_DAY, 6 * _MM_DAY, 7 * _MM_DAY, COMMON_PRACTICE),
    "hot and dry": Span(8 * _MM_DAY, 9 * _MM_DAY, 10 * _MM_DAY, COMMON_PRACTICE),
}
# Share of the stone layer that running water fills.
HOLD_UP = Span(0.02, 0.03, 0.05, JUDGEMENT)


def evaporation_coefficient(surface: str) -> Span:
    """Evaporation coefficient, range and basis of a wet surface. Raises InputError with the nearest names."""
    return named(surface, EVAPORATION_COEFFICIENTS, "wet surface")


def peak_month(climate: str) -> Span:
    """Reference evapotranspiration of the peak month (m/s), range and basis. Raises InputError with the nearest names."""
    return named(climate, PEAK_MONTHS, "climate")
