"""Electrical supply: current, voltage drop along a cable, energy and running cost. Numbers to ask an electrician about, no wiring instructions.

Whether a circuit is allowed, protected and connected well is for a qualified electrician and the local code.
"""

from __future__ import annotations

from brimwork.formula import Formula, Published, Slip, Solve, Step, Take
from brimwork.laws import power_of_alternating_current, work_of_a_power
from brimwork.sources import CABLE_LESSON, FRIDGE, VOLT_DROP_LIMITS

_ELECTRICIAN = "A qualified electrician designs and connects the supply, with residual-current protection; this is a number to talk about."
_THERE_AND_BACK = "The tabled figure already counts the way there and back. Use the length of the cable once."

# --- current and voltage drop -------------------------------------------------------------------------------------------------------

pump_current = Formula(
    name="current",
    result="I_c",
    equals="P_in/(U_s*k_pf)",
    steps=(power_of_alternating_current, Solve("solve for the current", of="P_in")),
    unpublished="the definition of the power factor",
    slips=(
        Slip("P_in/U_s", "You left out the power factor. A motor draws more current than its watts suggest."),
        Slip("P_in*k_pf/U_s", "You multiplied by the power factor. A poor power factor means more current, so divide."),
        Slip("U_s*k_pf/P_in", "Upside down: more watts must mean more current."),
    ),
    remark=_ELECTRICIAN,
)

voltage_drop = Formula(
    name="voltage drop by cable table",
    result="U_d",
    equals="u_c*I_c*L_c",
    defined="the table gives the drop for each ampere and metre",
    published=(Published("u_c=18 mV/A/m, I_c=16 A, L_c=18 m", "5.18 V", 1e-3, CABLE_LESSON.at("2.5 mm2, 16 A, 18 m")),),
    slips=(
        Slip("2*u_c*I_c*L_c", _THERE_AND_BACK),
        Slip("u_c*L_c", "You left out the current. The table is for each ampere."),
        Slip("u_c*I_c", "You left out the length. The table is for each metre."),
        Slip("1000*u_c*I_c*L_c", "You left the table's millivolts as volts: a thousand times too much."),
    ),
    remark=_ELECTRICIAN,
)

drop_share = Formula(
    name="voltage drop in per cent",
    result="r_drop",
    equals="U_d/U_s",
    defined="what is lost on the way over what is supplied",
    published=(
        Published("U_d=6.9 V, U_s=230 V", "3 %", 1e-9, VOLT_DROP_LIMITS.at("limit for lighting")),
        Published("U_d=11.5 V, U_s=230 V", "5 %", 1e-9, VOLT_DROP_LIMITS.at("limit for other uses")),
    ),
    slips=(
        Slip("U_d/(U_s - U_d)", "You compared with what is left. The limits compare with the supply."),
        Slip("1 - U_d/U_s", "That is what is left. The drop is what is lost."),
        Slip("U_s/U_d", "Upside down: a longer cable must give a larger share."),
    ),
    ranges={"U_d": ("0.1 V", "1.2 V"), "U_s": ("12 V", "24 V")},
    remark="Usual limits are 3 % for lighting and 5 % for other uses; the local code governs.",
)

drop_share_by_table = Formula(
    name="voltage drop in per cent by cable table",
    result="r_drop",
    equals="u_c*I_c*L_c/U_s",
    steps=(voltage_drop, drop_share, Step("put the drop in")),
    unpublished="both steps are checked",
    slips=(
        Slip("2*u_c*I_c*L_c/U_s", _THERE_AND_BACK),
        Slip("u_c*L_c/U_s", "You left out the current. The table is for each ampere."),
        Slip("u_c*I_c*L_c/(U_s - u_c*I_c*L_c)", "You compared with what is left. The limits compare with the supply."),
        Slip("1 - u_c*I_c*L_c/U_s", "That is what is left. The drop is what is lost."),
    ),
    remark=_ELECTRICIAN,
)

# --- energy and cost ----------------------------------------------------------------------------------------------------------------

_NAMEPLATE = "Use the watts that the pump takes in, not the hydraulic power that the water receives."

energy_in_a_year = Formula(
    name="energy in a year",
    result="E_year",
    equals="P_in*t_day*N_day",
    steps=(
        work_of_a_power,
        Take("the pump runs so many hours on each of so many days", "t_run = N_day*t_day"),
        Step("put the time in"),
    ),
    published=(
        Published("P_in=1200 W, t_day=4.8 h, N_day=1", "5.76 kWh", 1e-9, FRIDGE.at("1200 W for 20 % of the day"), note="one day"),
        Published("P_in=1200 W, t_day=4.8 h, N_day=365", "2100 kWh", 2e-3, FRIDGE.at("1200 W for 20 % of the day"), note="printed as about 2100"),
    ),
    slips=(
        Slip("P_in*t_day", "That is one day. Multiply by the days in the year."),
        Slip("P_in*t_day*30", "That is a month. Multiply by the days in the year."),
        Slip("P_in*86400*N_day", "You ran it day and night. Use the hours in the question."),
        Slip("P_hyd*t_day*N_day", _NAMEPLATE, also_given=("P_hyd",)),
    ),
)

running_cost = Formula(
    name="running cost in a year",
    result="C_run",
    equals="P_in*t_day*N_day*c_el",
    steps=(
        energy_in_a_year,
        Take("energy is sold by the kilowatt-hour", "C_run = E_year*c_el"),
        Step("put the energy in"),
    ),
    unpublished="a price times an energy, which is checked",
    slips=(
        Slip("1000*P_in*t_day*N_day*c_el", "Electricity is sold by the kilowatt-hour. Divide the watts by 1000 first."),
        Slip("P_in*t_day*c_el", "That is one day. Multiply by the days in the year."),
        Slip("P_in*t_day*30*c_el", "That is a month. Multiply by the days in the year."),
        Slip("P_hyd*t_day*N_day*c_el", _NAMEPLATE, also_given=("P_hyd",)),
    ),
    remark="Water and the yearly service come on top.",
)
