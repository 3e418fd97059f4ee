"""Rills and steps: how deep and how fast water runs down an open channel, what it wants of sides and bends, and steps that catch it."""

from __future__ import annotations

from typing import NamedTuple

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.sources import BENDS, BERNOULLI, CENGEL_MEMORY, FLUIDS, FLUIDS_PIPES, HENDERSON, LAGRANGE, NEWTON_LAWS, SWMM_CHANNEL
from brimwork.steps import Law, Ode, Step, Take

_WIDE = "You took the depth for the hydraulic radius. The sides rub as well: divide by the width and both depths."
_SLOPE = "Speed goes with the root of the slope, not with the slope itself."
_UPSIDE_DOWN = "The power is 2/3, not 3/2: between the root of the radius and the radius itself. Use 2/3."
_NO_N = "You left out the coefficient: a rough rill runs slower."
_MULTIPLIED = "The coefficient divides: the rougher the bed, the slower the water."
_SHALLOW = "A few millimetres over rough stone run slower than any table says: try the rill with a bucket before its sides are fixed."

# --- steady flow --------------------------------------------------------------------------------------------------------------------

hydraulic_radius = Formula(
    name="hydraulic radius of a rill",
    result="R_h",
    equals="w_rill*y_n/(w_rill + 2*y_n)",
    steps=(
        Take("across a rill with upright sides the water is a rectangle", "A_rill = w_rill*y_n"),
        Take("it touches the bed and both sides", "l_wet = w_rill + 2*y_n"),
        Take("the hydraulic radius is how much water there is for each metre that rubs", "R_h = A_rill/l_wet"),
        Step("put both in"),
    ),
    unpublished="an area over a length; the flow down a rill, which uses it, is checked",
    slips=(
        Slip("y_n", _WIDE),
        Slip("w_rill*y_n/(w_rill + y_n)", "The water touches two sides, not one."),
        Slip("w_rill*y_n/(2*w_rill + 2*y_n)", "The surface of the water touches only air, which hardly rubs: leave it out."),
    ),
    rises=("w_rill", "y_n"),
)

speed_by_manning = Formula(
    name="speed by Manning",
    result="v",
    equals="k_M/n_Manning*R_h**(2/3)*sqrt(S_rill)",
    fitted="R. Manning and many since, to measured channels, nearly all far larger than a rill",
    published=(
        Published(
            "R_h=0.2859 m, S_rill=0.5236 %, n_Manning=0.03", "1.0467782 m/s", 1e-7, FLUIDS.at("V_Manning(0.2859, 0.005236, 0.03), an example of Cengel's")
        ),
    ),
    slips=(
        Slip("k_M/n_Manning*R_h**(2/3)*S_rill", _SLOPE),
        Slip("k_M/n_Manning*R_h**(3/2)*sqrt(S_rill)", _UPSIDE_DOWN),
        Slip("k_M*n_Manning*R_h**(2/3)*sqrt(S_rill)", _MULTIPLIED),
        Slip(
            "1.486*k_M/n_Manning*R_h**(2/3)*sqrt(S_rill)",
            "The 1.486 belongs to feet. In metres the constant is 1, with the same coefficient. Leave the 1.486 out.",
        ),
    ),
    rises=("R_h", "S_rill"),
    falls=("n_Manning",),
    remark=f"Coefficients stand in a table. {_SHALLOW}",
)

flow_down_a_rill = Formula(
    name="flow down a rill",
    result="Q",
    equals="k_M/n_Manning*w_rill*y_n*(w_rill*y_n/(w_rill + 2*y_n))**(2/3)*sqrt(S_rill)",
    fitted=speed_by_manning.fitted,
    steps=(
        hydraulic_radius,
        speed_by_manning,
        Law("continuity: the flow is the area times the speed", "Q = w_rill*y_n*v", BERNOULLI.at("section on steady flow"), holds="steady flow"),
        Step("put speed and radius in"),
    ),
    published=(
        Published(
            "w_rill=4 ft, y_n=2.5 ft, S_rill=0.2 %, n_Manning=0.014", "51 ft3/s", 5e-3, CENGEL_MEMORY.at("example on the height of a rectangular channel")
        ),
        Published(
            "w_rill=320 mm, y_n=11.9957 mm, S_rill=1.6666667 %, n_Manning=0.015", "1.65 L/s", 5e-4, SWMM_CHANNEL.at("steady depth in a channel of 0.32 m")
        ),
    ),
    slips=(
        Slip("k_M/n_Manning*w_rill*y_n*y_n**(2/3)*sqrt(S_rill)", _WIDE),
        Slip("k_M/n_Manning*w_rill*y_n*(w_rill*y_n/(w_rill + 2*y_n))**(2/3)*S_rill", _SLOPE),
        Slip("k_M/n_Manning*w_rill*y_n*(w_rill*y_n/(w_rill + 2*y_n))**(3/2)*sqrt(S_rill)", _UPSIDE_DOWN),
        Slip("k_M*w_rill*y_n*(w_rill*y_n/(w_rill + 2*y_n))**(2/3)*sqrt(S_rill)", _NO_N),
        Slip("k_M/n_Manning*(w_rill*y_n/(w_rill + 2*y_n))**(2/3)*sqrt(S_rill)", "That is the speed. Times the area it is a flow. Multiply by the area."),
    ),
    ranges={"y_n": ("8 mm", "40 mm"), "S_rill": ("0.5 %", "3 %")},
    rises=("w_rill", "y_n", "S_rill"),
    falls=("n_Manning",),
    remark=f"For a rill with upright sides, long enough for the water to settle. {_SHALLOW}",
)

_IF_WIDE = "(n_Manning*Q/(k_M*w_rill*sqrt(S_rill)))**(3/5)"

normal_depth = Formula(
    name="normal depth in a rill",
    result="y_n",
    inverse_of=flow_down_a_rill,
    between=(_IF_WIDE, f"2*{_IF_WIDE} + (2*{_IF_WIDE})**(5/3)*(2/w_rill)**(2/3)"),
    published=(
        Published("w_rill=4 ft, Q=51 ft3/s, S_rill=0.2 %, n_Manning=0.014", "2.5 ft", 5e-3, CENGEL_MEMORY.at("example on the height of a rectangular channel")),
        Published(
            "w_rill=4 ft, Q=51 ft3/s, S_rill=0.1 %, n_Manning=0.014", "3.3 ft", 0.015, CENGEL_MEMORY.at("example on the height of a rectangular channel")
        ),
        Published("w_rill=200 mm, Q=2 L/s, S_rill=1 %, n_Manning=0.02", "26.379 mm", 2e-4, SWMM_CHANNEL.at("steady depth in a channel of 0.2 m")),
        Published("w_rill=150 mm, Q=1 L/s, S_rill=0.5 %, n_Manning=0.013", "19.653 mm", 2e-4, SWMM_CHANNEL.at("steady depth in a channel of 0.15 m")),
    ),
    slips=(Slip(_IF_WIDE, _WIDE),),
    ranges={"Q": ("30 L/min", "120 L/min"), "S_rill": ("0.5 %", "3 %")},
    rises=("Q", "n_Manning"),
    falls=("w_rill", "S_rill"),
    remark=f"The depth stands on both sides, and is found by trial between limits. {_SHALLOW}",
)

froude_number = Formula(
    name="Froude number",
    result="Fr",
    equals="v/sqrt(g*y_n)",
    steps=(
        Law("a long wave on shallow water runs at", "v_wave = sqrt(g*y_n)", LAGRANGE.at("waves in a shallow canal"), holds="waves far longer than the depth"),
        Take("compare the speed of the water with that of the wave", "Fr = v/v_wave"),
        Step("put it in"),
    ),
    published=(Published("v=1.83 m/s, y_n=2 m", "0.413215", 2e-6, FLUIDS_PIPES.at("Froude(1.83, L=2)")),),
    slips=(
        Slip("v**2/(g*y_n)", "That is its square. Take the root."),
        Slip("v/(g*y_n)", "The wave runs at the root of g times the depth. Take the root."),
        Slip("v/sqrt(2*g*y_n)", "There is no 2: that would be the speed of free fall, not of a wave. Leave the 2 out."),
        Slip("sqrt(g*y_n)/v", "Upside down: the speed of the water is on top."),
    ),
    rises=("v",),
    falls=("y_n",),
    remark="Below 1 the water is calm, above 1 it shoots, and jumps where it is slowed down.",
)

# --- sides and bends ----------------------------------------------------------------------------------------------------------------

bend_rise = Formula(
    name="rise of the water in a bend",
    result="h_bend",
    equals="v**2*w_rill/(2*g*R_bend)",
    steps=(
        Law(
            "water that goes round a bend piles up outwards, until the slope of its surface turns it",
            "Derivative(y_x, x_bend) = v**2/(g*R_bend)",
            NEWTON_LAWS.at("law II"),
            holds="even speed, a bend much wider than the rill",
        ),
        Ode("solve: in the middle it stands at its mean", "y_x = v**2*x_bend/(g*R_bend)", at=(("x_bend = 0", "y_x = 0"),)),
        Take("the outer side is half a width from the middle", "x_bend = w_rill/2"),
        Take("the rise there is what the side must hold", "h_bend = y_x"),
        Step("put it in"),
    ),
    unpublished=f"no worked example was found; {BENDS.at('curved channels')} gives half of speed squared times width over g and radius for calm flow",
    slips=(
        Slip("v**2*w_rill/(g*R_bend)", "That is the difference from side to side. The outer side rises by half of it."),
        Slip("v*w_rill/(2*g*R_bend)", "The speed is squared: twice as fast piles up four times as high."),
        Slip("v**2*R_bend/(2*g*w_rill)", "Upside down: a sharper bend, with a smaller radius, piles up higher."),
    ),
    ranges={"v": ("0.2 m/s", "1.2 m/s")},
    rises=("v", "w_rill"),
    falls=("R_bend",),
    remark=f"In fast flow (Froude number above 1) waves that cross the rill can double it ({BENDS.at('curved channels')}).",
)

freeboard = Formula(
    name="freeboard of a rill",
    result="h_free",
    equals="h_side - y_n - h_bend",
    defined="what stands of the side above the water, at the outside of its sharpest bend",
    by_hand=(ByHand("h_side=100 mm, y_n=35 mm, h_bend=12 mm", "100 - 35 - 12", "53 mm"),),
    unpublished="two heights taken off a third",
    slips=(
        Slip("h_side - y_n", "In a bend the water stands higher at the outside. Take that off as well."),
        Slip("h_side - y_n + h_bend", "The rise in the bend uses up the side. Take it off, do not add it."),
    ),
    rises=("h_side",),
    falls=("y_n", "h_bend"),
    remark="Common practice, no source: 40 mm or more. Leaves and frost fill a rill sooner than a pipe.",
)

water_in_a_rill = Formula(
    name="water in a rill",
    result="V_rill",
    equals="w_rill*y_n*L_rill",
    steps=(
        Take("across a rill with upright sides the water is a rectangle", "A_rill = w_rill*y_n"),
        Take("along its length the stream is a long block", "V_rill = A_rill*L_rill"),
        Step("put it in"),
    ),
    unpublished="a length times a width times a depth",
    slips=(
        Slip(
            "w_rill*h_side*L_rill",
            "That is the rill full to the edge. Only the depth of the running water counts. Put in the depth of the water.",
            also_given=("h_side",),
        ),
        Slip("w_rill*y_n*L_rill/2", "A rill has the same depth all along: there is nothing to halve. Leave it whole."),
    ),
    rises=("w_rill", "y_n", "L_rill"),
    remark="It runs back to the reservoir when the pump stops: count it as water in transit.",
)

# --- steps --------------------------------------------------------------------------------------------------------------------------

tread_over_throw = Formula(
    name="tread over throw",
    result="r_tread",
    equals="w_tread/x_throw",
    defined="how often the throw of the water goes into the tread that must catch it",
    by_hand=(ByHand("w_tread=300 mm, x_throw=240 mm", "300/240", "1.25"),),
    unpublished="a ratio; the throw is checked where it is worked out",
    slips=(
        Slip("x_throw/w_tread", "Upside down: the tread is on top, so that more is better."),
        Slip("(w_tread - x_throw)/x_throw", "That is what is left beyond the throw. Compare the whole tread with it. Divide the tread by the throw."),
    ),
    rises=("w_tread",),
    falls=("x_throw",),
    remark="Judgement: 2 or more; below 1.3 the water overshoots the step, in wind sooner.",
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------

UNSTEADY = (0.86, 1.13)  # Froude numbers between which the surface breaks into waves: BENDS, choice of a design Froude number
FULLY_ROUGH = 1.1e-13  # n^6 times the root of radius (m) times slope, from which Manning holds: HENDERSON


class RillFlow(NamedTuple):
    """Steady flow down a rill: normal depth (m), speed (m/s), Froude number, and what must be said about it."""

    y_n: float
    v: float
    Fr: float
    notes: tuple[str, ...]


def rill_flow(Q: float, w_rill: float, S_rill: float, n_Manning: float) -> RillFlow:
    """How a flow Q (m3/s) runs down a rill w_rill (m) wide with a fall S_rill (m for each m), over a bed of that Manning coefficient.

    Raises InputError for values that cannot be.
    """
    y_n = normal_depth(Q=Q, w_rill=w_rill, S_rill=S_rill, n_Manning=n_Manning)
    R_h = hydraulic_radius(w_rill=w_rill, y_n=y_n)
    v = speed_by_manning(R_h=R_h, S_rill=S_rill, n_Manning=n_Manning)
    Fr = froude_number(v=v, y_n=y_n)
    return RillFlow(y_n, v, Fr, tuple(_what_to_note(Fr, n_Manning**6 * (R_h * S_rill) ** 0.5)))


def _what_to_note(Fr: float, roughness: float) -> list[str]:
    low, high = UNSTEADY
    notes = []
    if low < Fr < high:
        notes.append(
            f"the Froude number is {Fr:.2f}: between {low} and {high} the surface breaks into waves, so change slope or width ({BENDS.at('choice of Froude number')})"
        )
    elif Fr >= high:
        notes.append(f"the Froude number is {Fr:.2f}: the water shoots, jumps where it is slowed down, and can double its rise in bends")
    if roughness < FULLY_ROUGH:
        notes.append(f"so thin a flow over so smooth a bed is outside what Manning's law holds for ({HENDERSON.at('range of the law')}): measure it")
    return notes
