"""A day of weather worked to evaporation, formula by formula: by FAO-56, and open water by Penman."""

from dataclasses import dataclass

from brimwork.topics import find

CHAIN = (
    "mean vapour pressure of saturated air over a day", "vapour pressure of the air", "slope of the saturated vapour pressure", "pressure of the air at a height", "psychrometric constant", "nearness of the sun",
    "declination of the sun", "hour angle at sunset", "sunlight above the air", "sunlight under a clear sky", "heat lost to the sky", "sunlight kept less heat lost",
)  # fmt: skip


@dataclass(frozen=True)
class Climate:
    """A day's weather at a place, in SI: extremes of temperature (K) and humidity (shares), mean sunlight (W/m2), wind at two metres (m/s), place and date."""

    T_max: float
    T_min: float
    RH_hi: float
    RH_lo: float
    R_sol: float
    v_w2: float
    z_site: float
    phi_lat: float
    J_day: int


def _evaporated(climate: Climate, name: str, alpha_s: float) -> float:
    values = {**vars(climate), "T_a": (climate.T_max + climate.T_min) / 2, "alpha_s": alpha_s}
    for formula in map(find, (*CHAIN, name)):
        values[formula.result] = formula(**formula.only(values))
    return max(0.0, values[find(name).result])


def reference_of_a_day(climate: Climate) -> float:
    """Reference evapotranspiration, m/s."""
    return _evaporated(climate, "reference evapotranspiration", 0.23)


def open_water_of_a_day(climate: Climate) -> float:
    """Evaporation of open, shallow water, m/s."""
    return _evaporated(climate, "evaporation of open water by Penman", 0.08)
