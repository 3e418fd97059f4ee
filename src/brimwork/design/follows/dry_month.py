"""Thirty days of the driest month: the design's reservoir as its water balance sees it, with a top-up valve or without."""

from __future__ import annotations

from brimwork import topics
from brimwork.design.follows.chain import Chain
from brimwork.topics.water_balance import Basin, DayOfWater, Weather, run_of_days

DAYS = 30


def basin(chain: Chain, topped_up: bool) -> Basin:
    """The reservoir; a valve fills it to the top-up level, or to the static level where the design gives none. Raises Unknown, InputError."""
    d = chain.design
    filled_to = d["reservoir.top_up_level" if "reservoir.top_up_level" in d.values else "reservoir.static_level"]
    return Basin(
        A_w=chain.water_area, h_min=chain.pump_stops_at, h_over=d["reservoir.overflow_level"], V_tr=chain.transit, A_wet=chain.wet_area,
        Q_splash=chain.lost_otherwise, A_catch=0.0, k_run=0.0, h_top=filled_to if topped_up else None,
    )  # fmt: skip


def dry_day(chain: Chain) -> Weather:
    """A day of the driest month: no rain. Raises Unknown."""
    d = chain.design
    return Weather(0.0, topics.formulas()["evaporation of a wet surface"](K_E=d["climate.coefficient"], E_0=d["climate.evaporation"]))


def dry_month(chain: Chain, topped_up: bool) -> list[DayOfWater]:
    """Thirty days without rain from the static level, the pump running all day. Raises Unknown, InputError."""
    return run_of_days(basin(chain, topped_up), chain.design["reservoir.static_level"], [dry_day(chain)] * DAYS)
