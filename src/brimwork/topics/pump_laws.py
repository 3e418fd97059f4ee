"""Pump laws: another turning speed, two equal pumps, power from the wire to the water, and the suction head that keeps water from boiling."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Protocol

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import power_of_flow, pressure_as_head, work_of_a_power
from brimwork.sources import BERNOULLI, CRANE, EPANET_ENGINE, SIMILARITY
from brimwork.steps import Eliminate, Law, Solve, Step, Take

# --- another turning speed ----------------------------------------------------------------------------------------------------------

_ALIKE = SIMILARITY.at("at like places of its curve")
_SAME_IMPELLER = "the same impeller, at like places of its curve; friction in the pump is left out of account"
_flow_known = Law("a pump's flow goes with its turning speed and the cube of its impeller", "Q_n1 = c_phi*n_1*d_imp**3", _ALIKE, holds=_SAME_IMPELLER)
_flow_wanted = Law("and at the other speed with the same coefficient", "Q_n2 = c_phi*n_2*d_imp**3", _ALIKE, holds=_SAME_IMPELLER)
_head_known = Law("the energy it gives goes with the square of the speed of its tips", "g*H_n1 = c_psi*n_1**2*d_imp**2", _ALIKE, holds=_SAME_IMPELLER)
_head_wanted = Law("and at the other speed with the same coefficient", "g*H_n2 = c_psi*n_2**2*d_imp**2", _ALIKE, holds=_SAME_IMPELLER)
_EX_733 = CRANE.at("Ex 7.33: 400 US gal/min at 126 ft and 17.5 hp, slowed from 3500 to 1700 turns a minute")
_WHOLE_CURVE = (
    "This moves the pump's whole curve. Where the water is lifted as well, the duty point does not move so: find where the new curve meets the pipe's."
)
_UPSIDE = "Upside down: a slower pump gives less."

flow_at_another_speed = Formula(
    name="flow at another turning speed",
    result="Q_n2",
    equals="Q_n1*n_2/n_1",
    steps=(_flow_known, _flow_wanted, Eliminate("the coefficient and the impeller are the same", out=("c_phi",))),
    published=(Published("Q_n1=400 US gal/min, n_1=3500 min^-1, n_2=1700 min^-1", "194.29 US gal/min", 1e-4, _EX_733),),
    slips=(
        Slip("Q_n1*(n_2/n_1)**2", "It is the head that goes with the square. Flow goes with the turning speed itself. Multiply by the ratio of the speeds."),
        Slip("Q_n1*n_1/n_2", _UPSIDE),
        Slip("Q_n1", "You left the flow as it was. Slower turning moves less water. Multiply by the ratio of the speeds."),
    ),
    rises=("Q_n1", "n_2"),
    falls=("n_1",),
    remark=_WHOLE_CURVE,
)

head_at_another_speed = Formula(
    name="head at another turning speed",
    result="H_n2",
    equals="H_n1*(n_2/n_1)**2",
    steps=(_head_known, _head_wanted, Eliminate("the coefficient and the impeller are the same", out=("c_psi",))),
    published=(Published("H_n1=126 ft, n_1=3500 min^-1, n_2=1700 min^-1", "29.7257 ft", 1e-5, _EX_733),),
    slips=(
        Slip("H_n1*n_2/n_1", "It is the flow that goes with the turning speed itself. Head goes with its square."),
        Slip("H_n1*(n_2/n_1)**3", "It is the power that goes with the cube. Head goes with the square. Square the ratio."),
        Slip("H_n1*(n_1/n_2)**2", _UPSIDE),
    ),
    rises=("H_n1", "n_2"),
    falls=("n_1",),
    remark=_WHOLE_CURVE,
)

power_at_another_speed = Formula(
    name="power at another turning speed",
    result="P_n2",
    equals="P_n1*(n_2/n_1)**3",
    steps=(
        flow_at_another_speed,
        head_at_another_speed,
        Take("the power taken in at the known speed", "P_n1 = rho*g*Q_n1*H_n1/eta_pump"),
        Take("at the other, if the efficiency stays", "P_n2 = rho*g*Q_n2*H_n2/eta_pump"),
        Step("flow takes one power of the speed, head two"),
    ),
    published=(Published("P_n1=17.5 hp, n_1=3500 min^-1, n_2=1700 min^-1", "2.005 hp", 2e-4, _EX_733),),
    slips=(
        Slip("P_n1*(n_2/n_1)**2", "That is for the head. Power is flow times head, so it goes with the cube. Take the cube of the ratio."),
        Slip("P_n1*n_2/n_1", "That is for the flow. Power is flow times head, so it goes with the cube."),
        Slip("P_n1*(n_1/n_2)**3", _UPSIDE),
    ),
    rises=("P_n1", "n_2"),
    falls=("n_1",),
    remark="Small motors lose efficiency as they slow down: the true saving is less.",
)

# --- two equal pumps ----------------------------------------------------------------------------------------------------------------

_ENGINE = EPANET_ENGINE.at("two equal pumps into one short pipe, see the tests; its gravity is 32.2 ft/s2")
_ONE_PUMP = Take("let the head of each pump fall with the square of its flow", "H_pump = H_0 - c_pump*Q_each**2")
_PARABOLA = "an approximation, for want of the maker's curve: a parabola for each pump"
_MEET = Law("the pumps give just what the flow needs", "H_two = z_s + k_sys*Q**2", BERNOULLI.at("section on steady flow"), holds="steady flow")
_DOUBLED = "Two pumps do not double the flow when they share a pipe, because more flow means more loss. Add the pump lines, then find the new meeting point."
_TWO_RANGES = {"H_0": ("2 m", "4.5 m"), "z_s": ("0.5 m", "1.4 m")}

head_side_by_side = Formula(
    name="head of two equal pumps side by side",
    result="H_two",
    equals="H_0 - c_pump*Q**2/4",
    fitted=_PARABOLA,
    steps=(
        _ONE_PUMP,
        Take("side by side, each carries half of the flow", "Q_each = Q/2"),
        Take("and both push against the same head", "H_two = H_pump"),
        Step("put it in"),
    ),
    published=(Published("H_0=3 m, c_pump=3e6 s2/m5, Q=63.1228 L/min", "2.1699 m", 2e-5, _ENGINE),),
    where=("c_pump*Q**2/4 < 0.95*H_0",),
    slips=(
        Slip("H_0 - c_pump*Q**2", "That is one pump carrying all of the flow. Each carries half of it."),
        Slip("H_0 - c_pump*Q**2/2", "Half the flow, squared, is a quarter. Divide by four."),
        Slip("2*(H_0 - c_pump*Q**2/4)", "Side by side they add their flows, not their heads. Leave the head as that of one pump."),
    ),
    ranges={"Q": ("10 L/min", "90 L/min")},
    rises=("H_0",),
    falls=("c_pump", "Q"),
)

duty_side_by_side = Formula(
    name="duty flow of two equal pumps side by side",
    result="Q",
    equals="sqrt((H_0 - z_s)/(c_pump/4 + k_sys))",
    fitted="both curves are parabolas: an approximation, for a first look",
    steps=(head_side_by_side, _MEET, Solve("solve for the flow")),
    published=(Published("H_0=3 m, z_s=1 m, c_pump=3e6 s2/m5, k_sys=1057132.4 s2/m5", "63.1228 L/min", 1e-4, _ENGINE),),
    where=("z_s < 0.95*H_0",),
    slips=(
        Slip("2*sqrt((H_0 - z_s)/(c_pump + k_sys))", _DOUBLED),
        Slip("sqrt((H_0 - z_s)/(c_pump + k_sys))", "That is one pump alone. The second one carries half of the flow."),
        Slip(
            "sqrt((2*H_0 - z_s)/(2*c_pump + k_sys))",
            "That is one after the other, where heads add. Side by side the flows add. Use one pump's head and a quarter of its fall.",
        ),
        Slip("sqrt((H_0 - z_s)/(c_pump/2 + k_sys))", "Each carries half of the flow, and half, squared, is a quarter. Divide by four."),
    ),
    ranges=_TWO_RANGES,
    rises=("H_0",),
    falls=("z_s", "c_pump", "k_sys"),
    remark="A check valve in each branch keeps one pump from sending water back through the other.",
)

head_one_after_the_other = Formula(
    name="head of two equal pumps one after the other",
    result="H_two",
    equals="2*(H_0 - c_pump*Q**2)",
    fitted=_PARABOLA,
    steps=(
        _ONE_PUMP,
        Take("one after the other, each carries all of the flow", "Q_each = Q"),
        Take("and each adds its head", "H_two = 2*H_pump"),
        Step("put it in"),
    ),
    published=(Published("H_0=3 m, c_pump=3e6 s2/m5, Q=50.5040 L/min", "1.7489 m", 5e-5, _ENGINE),),
    where=("c_pump*Q**2 < 0.95*H_0",),
    slips=(
        Slip("H_0 - c_pump*Q**2", "That is one pump. The second adds as much again."),
        Slip("2*H_0 - c_pump*Q**2", "Both pumps lose head as the flow grows, not one of them. Double the fall as well."),
        Slip("H_0 - c_pump*Q**2/4", "That is side by side, where each carries half of the flow. Double the head of one pump."),
    ),
    ranges={"Q": ("10 L/min", "45 L/min")},
    rises=("H_0",),
    falls=("c_pump", "Q"),
)

duty_one_after_the_other = Formula(
    name="duty flow of two equal pumps one after the other",
    result="Q",
    equals="sqrt((2*H_0 - z_s)/(2*c_pump + k_sys))",
    fitted=duty_side_by_side.fitted,
    steps=(head_one_after_the_other, _MEET, Solve("solve for the flow")),
    published=(Published("H_0=3 m, z_s=1 m, c_pump=3e6 s2/m5, k_sys=1057132.4 s2/m5", "50.5040 L/min", 1e-4, _ENGINE),),
    where=("z_s < 0.95*2*H_0",),
    slips=(
        Slip("2*sqrt((H_0 - z_s)/(c_pump + k_sys))", "Twice the pumps do not give twice the flow. Add the heads of both, then find the new meeting point."),
        Slip("sqrt((H_0 - z_s)/(c_pump/4 + k_sys))", "That is side by side, where flows add. One after the other the heads add. Double the head and its fall."),
        Slip("sqrt((2*H_0 - z_s)/(c_pump + k_sys))", "Both pumps lose head as the flow grows, not one of them. Double the fall as well."),
    ),
    ranges=_TWO_RANGES,
    rises=("H_0",),
    falls=("z_s", "c_pump", "k_sys"),
    remark="The second pump and its hose stand under the pressure of both: ask the maker first.",
)

# --- from the wire to the water -----------------------------------------------------------------------------------------------------

_TO_THE_WATER = Take("call the share of what goes in that reaches the water the wire-to-water efficiency", "eta_pump = P_hyd/P_in")

efficiency_from_parts = Formula(
    name="wire-to-water efficiency from its parts",
    result="eta_pump",
    equals="eta_wet*eta_mot*eta_drive",
    defined="a share of a share of a share: of what the drive lets through, the motor turns a part, and of that the water receives a part",
    by_hand=(ByHand("eta_wet=0.6, eta_mot=0.75, eta_drive=0.95", "0.6*0.75*0.95", "0.4275"),),
    unpublished="a product; the yearly cost of pumping that uses it is checked",
    slips=(
        Slip("eta_wet", "You left out motor and drive. The meter sees their losses too. Multiply by both."),
        Slip("eta_wet*eta_mot", "You left out the drive."),
        Slip("(eta_wet + eta_mot + eta_drive)/3", "Shares of shares are multiplied; their mean is too kind. Multiply all three."),
    ),
    ranges={"eta_drive": ("0.9", "0.96")},
    rises=("eta_wet", "eta_mot", "eta_drive"),
    remark="Small submersible pumps reach 0.05 to 0.35 in all (common practice, no source).",
)

wire_to_water_efficiency = Formula(
    name="wire-to-water efficiency",
    result="eta_pump",
    equals="rho*g*Q*H_pump/P_in",
    steps=(pressure_as_head, power_of_flow, _TO_THE_WATER, Step("put the power of the water in")),
    published=(
        Published("rho=62.364 lb/ft3, Q=100 US gal/min, H_pump=421 ft, P_in=15.2 hp", "0.7", 3e-3, CRANE.at("Ex 7.15, turned round"), note="brake power there"),
    ),
    where=("rho*g*Q*H_pump < P_in",),
    slips=(
        Slip("P_in/(rho*g*Q*H_pump)", "Upside down: what the water receives, over what goes in."),
        Slip("rho*Q*H_pump/P_in", "You left out gravity: power is weight lifted per second times height, and weight is mass times g."),
        Slip("1 - rho*g*Q*H_pump/P_in", "That is the share that is lost. Take it from one."),
    ),
    ranges={"Q": ("10 L/min", "60 L/min"), "H_pump": ("0.8 m", "2.5 m"), "P_in": ("40 W", "150 W")},
    rises=("Q", "H_pump"),
    falls=("P_in",),
    remark="Read the power with a plug-in meter, and the flow with a bucket: together they tell more than any label.",
)

cost_of_pumping = Formula(
    name="cost of pumping for a year",
    result="C_run",
    equals="rho*g*Q*H_pump/eta_pump*t_run*c_el",
    steps=(
        pressure_as_head,
        power_of_flow,
        _TO_THE_WATER,
        Solve("more goes in than comes out, by the efficiency", of="eta_pump", relation="P_in = P_hyd/eta_pump"),
        work_of_a_power,
        Take("energy is sold by the kilowatt-hour", "C_run = E_year*c_el"),
        Step("put it all together"),
    ),
    published=(
        Published(
            "rho=62.364 lb/ft3, Q=700 US gal/min, H_pump=428 ft, eta_wet=0.707, eta_mot=0.95, eta_drive=0.96, t_run=8000 h, c_el=0.12 cur/kWh",
            "83970 cur",
            1e-3,
            CRANE.at("Ex 7.34"),
            after=(efficiency_from_parts,),
        ),
    ),
    slips=(
        Slip("rho*g*Q*H_pump*t_run*c_el", "That pays for the power in the water alone. The meter counts what goes in: divide by the efficiency."),
        Slip("rho*g*Q*H_pump*eta_pump*t_run*c_el", "Real pumps take in more power than they give. Divide by the efficiency."),
        Slip(
            "rho*g*Q*H_pump/eta_wet*t_run*c_el",
            "You left out motor and drive. The meter counts their losses too. Divide by the efficiency of the whole set.",
            also_given=("eta_wet",),
        ),
    ),
    rises=("Q", "H_pump", "t_run", "c_el"),
    falls=("eta_pump",),
)

# --- suction ------------------------------------------------------------------------------------------------------------------------

suction_head = Formula(
    name="net positive suction head available",
    result="H_npsh",
    equals="(p_air - p_boil)/(rho*g) - z_suct - h_suct",
    steps=(
        Law(
            "energy: the air pushes the water up to the pump, less what the lift and friction take",
            "H_inl = p_air/(rho*g) - z_suct - h_suct",
            BERNOULLI.at("section on steady flow"),
            holds="steady flow; the speed at the inlet counts as head",
        ),
        Take("what it has more than the head at which it boils keeps it from boiling", "H_npsh = H_inl - p_boil/(rho*g)"),
        Step("put it in"),
    ),
    published=(
        Published(
            "p_air=19.696 psi, p_boil=0.256 psi, rho=62.364 lb/ft3, z_suct=25 ft, h_suct=6 ft",
            "13.887 ft",
            1e-4,
            CRANE.at("Ex 7.32"),
            note="a tank at 5 psi above the air outside, 14.696 psi (from memory)",
        ),
    ),
    slips=(
        Slip("p_air/(rho*g) - z_suct - h_suct", "You left out the pressure at which the water boils. Warm water boils sooner."),
        Slip("(p_air - p_boil)/(rho*g) + z_suct - h_suct", "A pump that stands above the water loses that height: take it off."),
        Slip("(p_air - p_boil)/(rho*g) - z_suct", "You left out what strainer and hose take before the pump."),
    ),
    rises=("p_air",),
    falls=("p_boil", "z_suct", "h_suct"),
    remark="It must be more than the pump needs, by its sheet, or the pump rattles and wears out. A pump under water has the height below zero, and head to spare.",
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------


class KnownPump(Protocol):
    """The greatest flow (m3/s) that a pump's curve reaches, and its head (m) at a flow."""

    Q_max: float

    def head(self, Q: float) -> float: ...


@dataclass(frozen=True)
class SlowedPump:
    """A pump whose curve is known at n_1 turns a second, turning at n_2: the whole curve moves by the similarity rules.

    Where it meets the pipe's curve is the duty; scaling the old duty is wrong wherever water is lifted. Raises InputError for speeds that cannot be.
    """

    pump: KnownPump
    n_1: float
    n_2: float

    @property
    def Q_max(self) -> float:
        return flow_at_another_speed(Q_n1=self.pump.Q_max, n_1=self.n_1, n_2=self.n_2)

    def head(self, Q: float) -> float:
        """Head in m at a flow in m3/s."""
        same_place = flow_at_another_speed(Q_n1=Q, n_1=self.n_2, n_2=self.n_1)
        if math.isclose(same_place, self.pump.Q_max, rel_tol=1e-12):
            same_place = self.pump.Q_max  # not a last digit beyond the end of a table
        return head_at_another_speed(H_n1=self.pump.head(same_place), n_1=self.n_1, n_2=self.n_2)
