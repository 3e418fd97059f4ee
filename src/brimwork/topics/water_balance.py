"""Water balance: what is lost and gained in a day, how long the water lasts, what a storm brings, and a run of days one by one."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.sources import RAIN_CATCHMENT
from brimwork.steps import Solve, Step, Take
from brimwork.units import InputError

_BALANCE = "a balance of volumes: what was there, what comes and what goes"
_PLAN_ONLY = "You used the whole plan area. The water stands in the empty share of the blocks only: multiply by their void fraction."
_DAYS_UPSIDE_DOWN = "The two have changed places: a bigger loss must leave fewer days."

# --- loss ---------------------------------------------------------------------------------------------------------------------------

evaporation_of_a_wet_surface = Formula(
    name="evaporation of a wet surface",
    result="E_w",
    equals="K_E*E_0",
    steps=(Take("the coefficient compares the wet surface with the reference", "K_E = E_w/E_0"), Solve("solve for the evaporation", of="K_E")),
    unpublished="the coefficient's own definition",
    slips=(
        Slip("E_0/K_E", "You divided. Multiply: a coefficient over 1 makes it more, and one under 1 less."),
        Slip("E_0", "That is for grass. Open water and wet stone have a coefficient of their own."),
    ),
)

daily_loss = Formula(
    name="loss of water",
    result="Q_loss",
    equals="K_E*E_0*A_wet + Q_splash",
    steps=(
        evaporation_of_a_wet_surface,
        Take("every wet surface that is open to the air dries by as much, and what is thrown out comes on top", "Q_loss = E_w*A_wet + Q_splash"),
        Step("put the evaporation in"),
    ),
    unpublished=_BALANCE,
    slips=(
        Slip(
            "K_E*E_0*A_b + Q_splash", "You used the size of the hidden tank. Water dries from wet faces open to the air, so use that area.", also_given=("A_b",)
        ),
        Slip("K_E*E_0*A_wet", "You left out the splash. On a windy day it can be as much as dries."),
        Slip("E_0*A_wet + Q_splash", "You left out the coefficient: the reference is for grass."),
    ),
    remark="A millimetre off a square metre is a litre.",
)

days_without_top_up = Formula(
    name="days without top-up",
    result="t_dry",
    equals="(V_use - V_tr)/(K_E*E_0*A_wet + Q_splash)",
    steps=(
        daily_loss,
        Take("of the usable water, what is in transit is not there to lose", "V_res = V_use - V_tr"),
        Take("it is gone when the loss has taken it", "t_dry = V_res/Q_loss"),
        Step("put both in"),
    ),
    where=("V_tr < V_use",),
    unpublished=_BALANCE,
    slips=(
        Slip(
            "V_use/(K_E*E_0*A_wet + Q_splash)", "You forgot the water in transit. When the pump starts, some water leaves the tank and stays up in the feature."
        ),
        Slip("(V_use - V_tr)/(K_E*E_0*A_wet)", "You left out the splash. On a windy day it can be as much as dries."),
        Slip(
            "(V_use - V_tr)/(K_E*E_0*A_b + Q_splash)",
            "You used the size of the hidden tank. Water dries from wet faces open to the air, so use that area.",
            ("A_b",),
        ),
        Slip(
            "(V_use + V_dead - V_tr)/(K_E*E_0*A_wet + Q_splash)",
            "You counted water below the pump inlet. The pump cannot reach it. Leave that water out.",
            ("V_dead",),
        ),
        Slip("(K_E*E_0*A_wet + Q_splash)/(V_use - V_tr)", _DAYS_UPSIDE_DOWN),
    ),
    ranges={"V_use": ("80 L", "400 L"), "V_tr": ("5 L", "30 L")},
)

time_a_reserve_lasts = Formula(
    name="time that a reserve lasts",
    result="t_dry",
    equals="V_res/Q_loss",
    defined="it is gone when the loss has taken it",
    by_hand=(ByHand("V_res=120 L, Q_loss=16 L/day", "120/16", "7.5 day"),),
    unpublished=_BALANCE,
    slips=(Slip("Q_loss/V_res", _DAYS_UPSIDE_DOWN),),
)

daily_share = Formula(
    name="share of the usable water lost in a day",
    result="r_day",
    equals="Q_loss/V_use",
    defined="loss over what the pump can draw on",
    by_hand=(ByHand("Q_loss=16 L/day, V_use=320 L", "100*16/320", "5 %/day"),),
    unpublished=_BALANCE,
    slips=(Slip("V_use/Q_loss", "Upside down: that is how long the water would last."),),
)

water_to_hold = Formula(
    name="water that the reservoir must hold",
    result="V_w",
    equals="V_dead + V_tr + V_res",
    defined="dead water below the pump's limit, what goes up into the feature, and the reserve for the days without top-up",
    by_hand=(ByHand("V_dead=90 L, V_tr=28 L, V_res=120 L", "90 + 28 + 120", "238 L"),),
    unpublished=_BALANCE,
    slips=(
        Slip("V_dead + V_res", "When the pump starts, some water leaves the tank and stays up in the feature. Leave room for it."),
        Slip("V_tr + V_res", "The pump cannot draw the lowest water. It must be there all the same."),
        Slip("V_dead + V_tr", "That would run low on the first dry day: add the reserve."),
        Slip("V_dead + V_res - V_tr", "What goes up must be in the reservoir first: add it."),
    ),
)

# --- rain and top-up ----------------------------------------------------------------------------------------------------------------

rain_on_a_catch = Formula(
    name="rain on a catch",
    result="V_rain",
    equals="k_run*A_catch*h_rain",
    steps=(
        Take("the rain falls on the plan of the catch", "V_w = A_catch*h_rain"),
        Take("a share of it runs to the reservoir, the rest dries or strays", "V_rain = k_run*V_w"),
        Step("multiply"),
    ),
    published=(Published("k_run=1, A_catch=1000 ft2, h_rain=1 in", "623 US gal", 1e-3, RAIN_CATCHMENT.at("1000 ft2 x 1 in")),),
    slips=(
        Slip("A_catch*h_rain", "You took all of the rain. A part of it wets the stone and dries, or runs elsewhere."),
        Slip("A_catch*h_rain/k_run", "You divided by the share. It makes the rain less."),
    ),
)

storm_over_the_brim = Formula(
    name="storm water for the overflow",
    result="V_spill",
    equals="k_run*A_catch*h_rain - V_free",
    steps=(rain_on_a_catch, Take("the free space takes its part, the rest must go out", "V_spill = V_rain - V_free"), Step("put the rain in")),
    where=("V_free < k_run*A_catch*h_rain",),
    unpublished=_BALANCE,
    slips=(
        Slip("k_run*A_catch*h_rain", "You forgot the free space below the overflow: it takes its part."),
        Slip("k_run*A_catch*h_rain + V_free", "Free space takes rain in. Take it off."),
    ),
    ranges={"h_rain": ("30 mm", "80 mm"), "A_catch": ("2 m2", "6 m2"), "V_free": ("10 L", "60 L")},
)

top_up = Formula(
    name="top-up for a time",
    result="V_top",
    equals="t_gap*(E_w*A_wet + Q_splash - k_run*A_catch*R_day)",
    steps=(
        Take("each day takes what dries and what is thrown out", "Q_loss = E_w*A_wet + Q_splash"),
        Take("and the mean rain gives some of it back", "V_top = t_gap*(Q_loss - k_run*A_catch*R_day)"),
        Step("put the loss in"),
    ),
    where=("k_run*A_catch*R_day < 0.9*(E_w*A_wet + Q_splash)",),
    unpublished=_BALANCE,
    slips=(
        Slip(
            "t_gap*(E_w*A_b + Q_splash - k_run*A_catch*R_day)",
            "You used the size of the hidden tank. Water dries from wet faces open to the air, so use that area.",
            ("A_b",),
        ),
        Slip("t_gap*(E_w*A_wet + Q_splash + k_run*A_catch*R_day)", "Rain refills the tank, so it makes the top-up smaller. Check the sign in front of it."),
        Slip("t_gap*(E_w*A_wet - k_run*A_catch*R_day)", "You left out the splash. On a windy day it can be as much as dries."),
        Slip("t_gap*(E_w*A_wet + Q_splash)", "You left out the rain, which gives some of it back."),
    ),
    ranges={"E_w": ("3 mm/day", "8 mm/day"), "A_catch": ("0.9 m2", "3 m2")},
    remark="Counts on mean rain. Where it rains more than is lost, nothing is to be added and the rest leaves by the overflow. "
    "Lift the hose out after filling, or fill through an air gap: a hose left under water can draw dirty water back into the mains.",
)

# --- what is treated ----------------------------------------------------------------------------------------------------------------

water_in_a_filled_vessel = Formula(
    name="water in a vessel with foam and pebbles",
    result="V_v",
    equals="V_in - V_f - (1 - n_por)*V_p",
    steps=(
        Take("the pebbles themselves, without their gaps, take up the solid share", "V_solid = (1 - n_por)*V_p"),
        Take("the water has what foam and pebbles leave", "V_v = V_in - V_f - V_solid"),
        Step("put the pebbles in"),
    ),
    where=("V_f + V_p < V_in",),
    unpublished="it follows from the shape alone: what is left",
    slips=(
        Slip("V_in - V_f - V_p", "The gaps between the pebbles are full of water. Take off their solid share only."),
        Slip("V_in", "Foam and pebbles take up room too. Take both off."),
        Slip("V_in - V_f - n_por*V_p", "You took off the gaps. They hold water: take off the stones."),
    ),
    ranges={"V_in": ("100 L", "250 L"), "V_f": ("10 L", "60 L"), "V_p": ("10 L", "40 L")},
    remark="Open water of any depth can drown a small child. Pebbles or a rigid grille up to the water leave none open; where children come, leave none.",
)

treatment_volume = Formula(
    name="treatment volume",
    result="V_treat",
    equals="A_b*n_v*h_static + V_v",
    steps=(
        Take("with the pump off the reservoir is full to its static level", "V_w = A_b*n_v*h_static"),
        Take("all that goes round is that and the water in the vessel", "V_treat = V_w + V_v"),
        Step("put it in"),
    ),
    unpublished=_BALANCE,
    slips=(
        Slip("A_b*h_static + V_v", _PLAN_ONLY),
        Slip("A_b*n_v*h_static", "You forgot the water in the vessel: it goes round as well."),
    ),
    remark="For dosing: the gross volume of pit and vessel would overdose. Follow the product's label, keep children and animals away while it mixes.",
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------

DAY = 86400.0


@dataclass(frozen=True)
class Basin:
    """A feature as its water balance sees it, in SI: water area, levels above the floor, water in transit, wet surfaces and catch.

    `h_top` is the static level to which a float valve fills at the end of a day; None where nobody tops up.
    """

    A_w: float
    h_min: float
    h_over: float
    V_tr: float
    A_wet: float
    Q_splash: float
    A_catch: float
    k_run: float
    h_top: float | None = None

    def __post_init__(self) -> None:
        numbers = [value for value in vars(self).values() if value is not None]
        if not all(0 <= value < math.inf for value in numbers) or self.A_w == 0 or self.k_run > 1:
            raise InputError("areas, levels, volumes and flows of a basin cannot be below zero, its water area must be above, and k_run at most 1")
        if not self.lowest < self.h_over or (self.h_top is not None and not self.lowest <= self.h_top <= self.h_over):
            raise InputError(
                f"the levels do not fit: with its water in transit the pump runs down to {self.lowest:g} m, the overflow is at {self.h_over:g} m"
                + (f", the top-up at {self.h_top:g} m" if self.h_top is not None else "")
                + ": give them in that order, lowest first"
            )

    @property
    def lowest(self) -> float:
        """Static level (m) at which the pump stops: its limit, and what was in transit come back."""
        return self.h_min + self.V_tr / self.A_w


@dataclass(frozen=True)
class Weather:
    """One day: depth of rain (m) and evaporation of the wet surface (m/s)."""

    h_rain: float
    E_w: float


@dataclass(frozen=True)
class DayOfWater:
    """One day's volumes (m3), the static level (m) at its end, and the share of it for which the pump had water."""

    rain: float
    lost: float
    spilled: float
    topped_up: float
    level: float
    running: float


def run_of_days(basin: Basin, h_static: float, weather: Iterable[Weather]) -> list[DayOfWater]:
    """The water of a basin day by day, from a static level (m): rain runs in, what is above the overflow leaves, the wet surfaces lose, the float fills.

    The loss stops with the pump: low water leaves nothing wet. Rain minus loss, spill and top-up is the change of the water held, to rounding.
    Raises InputError for a level outside the basin or weather that cannot be.
    """
    if not 0 <= h_static <= basin.h_over:
        raise InputError(f"the static level is {h_static:g} m, but the overflow is at {basin.h_over:g} m: give a level from 0 up to it")
    days, water = [], basin.A_w * h_static
    for day in weather:
        days.append(_day(basin, water, day))
        water = basin.A_w * days[-1].level
    return days


def _day(basin: Basin, water: float, day: Weather) -> DayOfWater:
    rain = rain_on_a_catch(k_run=basin.k_run, A_catch=basin.A_catch, h_rain=day.h_rain)
    spilled = max(0.0, water + rain - basin.A_w * basin.h_over)
    water += rain - spilled
    wanted = DAY * daily_loss(K_E=1.0, E_0=day.E_w, A_wet=basin.A_wet, Q_splash=basin.Q_splash)
    lost = min(wanted, max(0.0, water - basin.A_w * basin.lowest))
    water -= lost
    topped_up = 0.0 if basin.h_top is None else max(0.0, basin.A_w * basin.h_top - water)
    return DayOfWater(rain, lost, spilled, topped_up, (water + topped_up) / basin.A_w, lost / wanted if wanted else float(water >= basin.A_w * basin.lowest))
