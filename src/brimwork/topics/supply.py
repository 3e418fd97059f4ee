"""Electrical supply: current, voltage drop along a cable, energy and running cost. Numbers to ask an electrician about, no wiring instructions.

Whether a circuit is allowed, protected and connected well is for a qualified electrician and the local code.
"""

from __future__ import annotations

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import ohm_in_the_cable, power_of_alternating_current, work_of_a_power
from brimwork.sources import CABLE_LESSON, FRIDGE, NEC_TABLE_8, UNATTRIBUTED, VOLT_DROP_LIMITS
from brimwork.steps import Solve, Step, Take

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
        Slip("1000*u_c*I_c*L_c", "You left the table's millivolts as volts: a thousand times too much. Divide by a thousand."),
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
        Slip("U_d/(U_s - U_d)", "You compared with what is left. The limits compare with the supply. Divide by the supply."),
        Slip("1 - U_d/U_s", "That is what is left. The drop is what is lost. Take it from one."),
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
        Slip("u_c*I_c*L_c/(U_s - u_c*I_c*L_c)", "You compared with what is left. The limits compare with the supply. Divide by the supply."),
        Slip("1 - u_c*I_c*L_c/U_s", "That is what is left. The drop is what is lost. Take it from one."),
    ),
    where=("u_c*I_c*L_c < 0.5*U_s",),
    remark=_ELECTRICIAN,
)

warm_conductor = Formula(
    name="resistance of a warm copper conductor",
    result="r_warm",
    equals="r_cold*(T_c - T_zero)/(T_cold - T_zero)",
    fitted="a straight line in the temperature, to copper (IEC 60028)",
    published=(Published("r_cold=2.525 ohm/kft, T_c=75 degC", "3.07 ohm/kft", 1e-3, NEC_TABLE_8.at("14 AWG, solid, from its value at 20 degrees")),),
    slips=(
        Slip("r_cold", "That is the value at 20 degrees. A loaded cable is warmer and resists more. Put in the warm value."),
        Slip("r_cold*(T_cold - T_zero)/(T_c - T_zero)", "Upside down: warm copper resists more."),
    ),
    ranges={"T_c": ("40 degC", "90 degC")},
)

drop_by_resistance = Formula(
    name="voltage drop by resistance",
    result="U_d",
    equals="2*r_warm*I_c*L_c",
    steps=(
        Take("the current goes out on one conductor and back on the other", "R_loop = r_warm*L_c + r_warm*L_c"),
        ohm_in_the_cable,
        Step("put the loop in"),
    ),
    published=(
        Published(
            "r_warm=2.525 ohm/kft, I_c=10 A, L_c=140 ft", "7.07 V", 1e-3, UNATTRIBUTED.at("10 A, 140 ft of 14 AWG"), note="cold copper, as that example has it"
        ),
    ),
    slips=(
        Slip("r_warm*I_c*L_c", "The current goes out and comes back. Count the cable length twice."),
        Slip("4*r_warm*I_c*L_c", "You doubled twice. There is one way out and one way back. Multiply by two once."),
        Slip("2*r_warm*L_c", "You left out the current. That is the resistance of the loop."),
        Slip("2*r_warm*I_c**2*L_c", "That is the power lost as heat. The drop goes with the current, not with its square. Leave the current as it is."),
    ),
    remark=_ELECTRICIAN,
)

drop_share_by_resistance = Formula(
    name="voltage drop in per cent by resistance",
    result="r_drop",
    equals="2*r_warm*I_c*L_c/U_s",
    steps=(drop_by_resistance, drop_share, Step("put the drop in")),
    unpublished="both steps are checked",
    slips=(
        Slip("r_warm*I_c*L_c/U_s", "The current goes out and comes back. Count the cable length twice."),
        Slip("1 - 2*r_warm*I_c*L_c/U_s", "That is what is left. The drop is what is lost. Take it from one."),
        Slip("2*r_warm*I_c*L_c/(U_s - 2*r_warm*I_c*L_c)", "You compared with what is left. The limits compare with the supply. Divide by the supply."),
    ),
    ranges={"U_s": ("12 V", "120 V")},
    where=("2*r_warm*I_c*L_c < 0.5*U_s",),
    remark=_ELECTRICIAN,
)

cord_length = Formula(
    name="length of the cord",
    result="L_cord",
    equals="L_route + l_drip + l_slack",
    defined="the route, a loop for drops to fall from, and slack to lift the pump out",
    by_hand=(ByHand("L_route=5.5 m, l_drip=0.3 m, l_slack=1.2 m", "5.5 + 0.3 + 1.2", "7 m"),),
    unpublished="it follows from the shape alone: lengths added up",
    slips=(
        Slip("L_route", "You left out the drip loop and the slack to lift the pump out. Add both."),
        Slip("L_route + l_drip", "You left out the slack. The pump has to come up into the light with its cord on."),
        Slip("L_route + l_slack", "You left out the drip loop. Without it water runs along the cord into the socket."),
    ),
    ranges={"L_route": ("3 m", "8 m")},
    remark="A cord that is too short is exchanged for a longer one, or the socket moves: no joint under ground, in the pit or in the water.",
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
