"""Overflow: flow and head at a lip, with the coefficients that experiments gave.

Small features run below the tested range of every weir formula, so each formula here carries the range of its experiments and every result
outside it says so.
"""

from brimwork import tables
from brimwork.by_hand import ByHand
from brimwork.conditions import TestedRange
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import (
    THIN_PLATE,
    THIN_PLATE_HEIGHT,
    continuity,
    free_fall,
    velocity_head,
)
from brimwork.sources import (
    DIGHE,
    FLUIDS,
    FRANCIS,
    REHBOCK,
    SARKAR,
    SWMM_ENGINE,
    SWMM_MANUAL,
)
from brimwork.steps import Eliminate, Step, Take

_DEEPEST_SPEED = "You treated all the water as moving at the speed of the deepest layer. Layers near the top move slower; that is where two-thirds comes from."
_LINEAR = "The units do not come out as a flow. Depth counts one and a half times over: once for area, half for speed."
_NO_CD = "You left out the discharge coefficient. The stream narrows and loses a little speed at the edge, so less comes than the plain theory says."
_NO_ROOT_2 = "The 2 under the root is missing: falling speed is the root of two g z. Put in the 2."
_UPSIDE_DOWN = "To undo 'to the power 3/2' you need the power 2/3. Check: does a bigger flow give a sensible depth?"
_NO_POWER = "Flow goes with the head to the power 3/2, so head goes with the flow to the power 2/3. You left the power out. Take the power 2/3 of all of it."

# --- level lip, thin edge -----------------------------------------------------------------------------------------------------------

flow_over_level_lip = Formula(
    name="flow over a level lip",
    result="Q",
    equals="2/3*C_d*b*sqrt(2*g)*H**(3/2)",
    steps=(
        free_fall,
        Take("add the thin layers from the surface down to the lip, narrowed by the discharge coefficient", "Q = C_d*b*Integral(v, (z, 0, H))"),
        Step("the root of 2g is the same in every layer: put it in front", "Q = C_d*b*sqrt(2*g)*Integral(sqrt(z), (z, 0, H))"),
        Step("the roots add up to two thirds of the deepest one times the head", "Q = C_d*b*sqrt(2*g)*(2/3*H*sqrt(H))"),
        Step("a head times its own root is its power 3/2"),
    ),
    tested=THIN_PLATE,
    published=(
        Published("b=4 m, H=0.2 m, C_d=0.62", "0.655 m3/s", 5e-4, SARKAR.at("Ex 5.9")),
        Published("b=0.77 m, H=0.39 m, C_d=0.623", "0.345 m3/s", 5e-4, SARKAR.at("Ex 5.7, before the correction for approach")),
    ),
    slips=(
        Slip("C_d*b*sqrt(2*g)*H**(3/2)", _DEEPEST_SPEED),
        Slip("2/3*C_d*b*sqrt(2*g)*H", _LINEAR),
        Slip(
            "2/3*C_d*b*sqrt(2*g)*sqrt(H)",
            "You kept the speed and lost the depth of the stream. Depth counts one and a half times over: once for area, half for speed. Take the head to the power 3/2.",
        ),
        Slip(
            "2/3*C_d*b*sqrt(2*g)*(P + H)**(3/2)",
            "You used the depth from the bowl floor. Only the water above the lip drives the flow. Put in the head alone.",
            also_given=("P",),
        ),
        Slip("2/3*b*sqrt(2*g)*H**(3/2)", _NO_CD),
        Slip("2/3*C_d*b*sqrt(g)*H**(3/2)", _NO_ROOT_2),
    ),
    ranges={"H": ("6 mm", "20 mm"), "b": ("300 mm", "1200 mm")},
    rises=("C_d", "b", "H"),
)

head_over_level_lip = Formula(
    name="head over a level lip",
    result="H",
    equals="(3/2*Q/(C_d*b*sqrt(2*g)))**(2/3)",
    inverse_of=flow_over_level_lip,
    tested=THIN_PLATE,
    published=(Published("Q=0.655 m3/s, b=4 m, C_d=0.62", "0.2 m", 5e-4, SARKAR.at("Ex 5.9, turned round")),),
    slips=(
        Slip("(3/2*Q/(C_d*b*sqrt(2*g)))**(3/2)", _UPSIDE_DOWN),
        Slip("3/2*Q/(C_d*b*sqrt(2*g))", _NO_POWER),
        Slip("(Q/(C_d*b*sqrt(2*g)))**(2/3)", _DEEPEST_SPEED),
        Slip(
            "sqrt(3/2*Q/(C_d*b*sqrt(2*g)))",
            "You took the square root. Head goes with the flow to the power 2/3, between the root and the flow itself. Take the power 2/3.",
        ),
    ),
    ranges={"Q": ("24 L/min", "120 L/min"), "b": ("300 mm", "1200 mm")},
    rises=("Q",),
    falls=("C_d", "b"),
)

weir_coefficient = Formula(
    name="weir coefficient",
    result="C_w",
    equals="2/3*C_d*sqrt(2*g)",
    steps=(
        flow_over_level_lip,
        Take("call all that does not change with length and head the weir coefficient", "C_w = Q/(b*H**(3/2))"),
        Step("divide"),
    ),
    published=(
        Published(
            "C_d=0.602", "3.22 ft^0.5/s", 1e-3, SWMM_MANUAL.at("Table 6-2, full width, head small against height"), note="ISO's 0.602 against EPA's 3.220"
        ),
        Published("C_d=0.6225", "3.33 ft^0.5/s", 1e-3, FRANCIS.at("3.33 in feet"), note="1.84 in metres"),
    ),
    slips=(Slip("C_d*sqrt(2*g)", _DEEPEST_SPEED), Slip("2/3*C_d*sqrt(g)", _NO_ROOT_2)),
    rises=("C_d",),
)

flow_by_weir_coefficient = Formula(
    name="flow by weir coefficient",
    result="Q",
    equals="C_w*b*H**(3/2)",
    fitted="J. B. Francis and many since, to measured flow over lips: the power 3/2 follows from free fall, the coefficient is measured",
    tested=THIN_PLATE,
    published=(
        Published("C_w=1.84 m^0.5/s, b=0.5 m, H=30.9116 mm", "5 L/s", 1e-4, SWMM_ENGINE.at("steady head at a 0.5 m weir")),
        Published("C_w=3.33 ft^0.5/s, b=9.6 ft, H=2 ft", "90.42 ft3/s", 1e-4, DIGHE.at("Ex 5.9, before the correction for approach")),
    ),
    slips=(
        Slip("C_w*b*H", "The power is missing: flow goes with head to the power 3/2."),
        Slip("C_w*b*H**2", "You squared the head. Flow goes with head to the power 3/2. Use the power 3/2."),
        Slip("C_w*b*H**(2/3)", "The power is upside down: 3/2, not 2/3. Turn the power round."),
    ),
    ranges={"H": ("6 mm", "20 mm")},
    rises=("C_w", "b", "H"),
)

head_by_weir_coefficient = Formula(
    name="head by weir coefficient",
    result="H",
    equals="(Q/(C_w*b))**(2/3)",
    inverse_of=flow_by_weir_coefficient,
    tested=THIN_PLATE,
    published=(Published("Q=5 L/s, C_w=1.84 m^0.5/s, b=0.5 m", "30.9116 mm", 1e-4, SWMM_ENGINE.at("steady head at a 0.5 m weir")),),
    slips=(Slip("(Q/(C_w*b))**(3/2)", _UPSIDE_DOWN), Slip("Q/(C_w*b)", _NO_POWER)),
    ranges={"Q": ("24 L/min", "120 L/min"), "b": ("300 mm", "1200 mm")},
    rises=("Q",),
    falls=("C_w", "b"),
)

contracted_lip = Formula(
    name="flow over a lip with end contractions",
    result="Q",
    equals="2/3*C_d*(b - n_c*H/10)*sqrt(2*g)*H**(3/2)",
    steps=(
        free_fall,
        Take("the stream draws in at each end by a tenth of the head", "b_z = b - n_c*H/10"),
        Take("add the thin layers of the narrower stream", "Q = C_d*b_z*Integral(v, (z, 0, H))"),
        Step("integrate"),
    ),
    fitted="J. B. Francis, to flow over long lips: the tenth of the head at each end",
    tested=(*THIN_PLATE, TestedRange("b/H", "3", "", FRANCIS.at("limits of the formula"))),
    published=(
        Published("b=4 m, H=0.2 m, C_d=0.62, n_c=2", "0.6485 m3/s", 5e-4, SARKAR.at("Ex 5.9, both ends contracted")),
        Published(
            "b=10 ft, H=2 ft, C_d=0.62243, n_c=2, g=32.2 ft/s2",
            "90.42 ft3/s",
            2e-4,
            DIGHE.at("Ex 5.9, before the correction for approach"),
            note="k = 3.33 as printed",
        ),
    ),
    slips=(
        Slip("2/3*C_d*b*sqrt(2*g)*H**(3/2)", "You used the full length of the lip. The stream draws in at each end that stands free."),
        Slip("2/3*C_d*(b - n_c*H)*sqrt(2*g)*H**(3/2)", "You took a whole head off at each end. It is a tenth of the head."),
        Slip("C_d*(b - n_c*H/10)*sqrt(2*g)*H**(3/2)", _DEEPEST_SPEED),
    ),
    ranges={"n_c": ("1", "2"), "H": ("20 mm", "60 mm"), "b": ("200 mm", "500 mm")},
    where=("n_c*H/10 < b",),
    rises=("C_d", "b", "H"),
    falls=("n_c",),
)

head_at_contracted_lip = Formula(
    name="head at a lip with end contractions",
    result="H",
    inverse_of=contracted_lip,
    between=("0", "2*b/n_c"),
    close="0.1 mm",
    tested=(*THIN_PLATE, TestedRange("b/H", "3", "", FRANCIS.at("limits of the formula"))),
    published=(Published("b=4 m, Q=0.6485 m3/s, C_d=0.62, n_c=2", "0.2 m", 5e-4, SARKAR.at("Ex 5.9, both ends contracted, turned round")),),
    ranges={"n_c": ("1", "2"), "Q": ("60 L/min", "200 L/min"), "b": ("200 mm", "500 mm")},
    where=("Q < C_d*sqrt(2*g*b)*b**2/3",),
    rises=("Q", "n_c"),
    falls=("C_d", "b"),
    remark="Found by trial between limits: the head stands in the length of the stream as well. It holds while the head is well under the length.",
)

# --- water that arrives with speed --------------------------------------------------------------------------------------------------

approach_head = Formula(
    name="velocity head of approach",
    result="h_a",
    equals="Q**2/(2*g*A_a**2)",
    steps=(velocity_head, continuity, Eliminate("put the speed of approach in", out=("v",))),
    unpublished="the printed examples give only the corrected flow: see flow with a velocity of approach",
    slips=(
        Slip("Q/(2*g*A_a)", "The speed is squared in the velocity head. Square both flow and area."),
        Slip("Q**2/(g*A_a**2)", "The 2 is missing: velocity head is speed squared over two g. Halve it."),
    ),
    rises=("Q",),
    falls=("A_a",),
)

flow_with_approach = Formula(
    name="flow with a velocity of approach",
    result="Q",
    equals="2/3*C_d*b*sqrt(2*g)*((H + h_a)**(3/2) - h_a**(3/2))",
    steps=(
        free_fall,
        Take("water that arrives with speed moves as if it had started higher by its velocity head", "Q = C_d*b*Integral(v, (z, h_a, H + h_a))"),
        Step("integrate"),
    ),
    tested=THIN_PLATE,
    published=(
        Published(
            "b=0.77 m, H=0.39 m, C_d=0.623, A_a=0.7623 m2, g=9.81 m/s2",
            "0.357447 m3/s",
            1e-4,
            SARKAR.at("Ex 5.7, one correction"),
            after=(flow_over_level_lip, approach_head),
            note="the area is 0.77 m x (0.39 + 0.6) m",
        ),
    ),
    slips=(
        Slip("2/3*C_d*b*sqrt(2*g)*(H + h_a)**(3/2)", "The velocity head is added at the top of the stream too, so its own 3/2 power is taken off again."),
        Slip(
            "2/3*C_d*b*sqrt(2*g)*H**(3/2)", "You left out the speed with which the water arrives. Add its velocity head, and take off what it alone would give."
        ),
    ),
    ranges={"h_a": ("1 mm", "10 mm"), "H": ("10 mm", "40 mm")},
    rises=("C_d", "b", "H", "h_a"),
)

flow_from_channel = Formula(
    name="flow over a lip from a channel",
    result="Q",
    equals="Q = 2/3*C_d*b*sqrt(2*g)*((H + Q**2/(2*g*A_a**2))**(3/2) - (Q**2/(2*g*A_a**2))**(3/2))",
    between=("2/3*C_d*b*sqrt(2*g)*H**(3/2)", "2*(2/3*C_d*b*sqrt(2*g)*H**(3/2))"),
    steps=(
        velocity_head,
        continuity,
        Eliminate("the velocity head of what arrives, from the flow itself", out=("v",), relation="h_a = Q**2/(2*g*A_a**2)"),
        free_fall,
        Take("add the thin layers as if the water had started higher by that head", "Q = C_d*b*Integral(v, (z, h_a, H + h_a))"),
        Step("integrate: the flow stands on both sides, and is found by trial between limits"),
    ),
    tested=THIN_PLATE,
    unpublished="printed examples stop after one or two rounds (Sarkar Ex 5.7: 0.3574 m3/s; Dighe Ex 5.9: 99.41 ft3/s); this is the value the rounds tend to",
    ranges={"A_a": ("0.05 m2", "0.4 m2")},
    close="0.2 L/min",
    where=("b*H < 0.9*A_a",),
    rises=("C_d", "b", "H"),
    falls=("A_a",),
    remark="The rounds of hand calculation tend to this value.",
)

# --- coefficients from experiments --------------------------------------------------------------------------------------------------

coefficient_by_height = Formula(
    name="discharge coefficient by height of the lip",
    result="C_d",
    equals="C_0 + C_1*H/P",
    fitted="Rehbock, Kindsvater and Carter and others, each with constants of their own (see the table of lip coefficients)",
    by_hand=(ByHand("C_0=0.598, C_1=0.0897, H=0.9 m, P=0.6 m", "0.598 + 0.0897*0.9/0.6", "0.73255"),),
    unpublished="books print their own constants and the flow that follows: that of Cengel's example 13-11 is checked in the tests, 9.23 m3/s",
    tested=THIN_PLATE_HEIGHT,
    slips=(
        Slip("C_0 + C_1*P/H", "Head and height have changed places: the coefficient grows as the head grows against the height."),
        Slip("C_0", "You left out the growth with H/P. A low lip lets water arrive with speed, and passes more."),
    ),
    ranges={"C_1": ("0.03", "0.09")},
    rises=("C_0", "C_1", "H"),
    falls=("P",),
)

full_width_coefficient = Formula(
    name="discharge coefficient of a full-width lip",
    result="C_d",
    equals="0.602 + 0.083*H/P",
    close="0.001",
    fitted="Rehbock, to lips as wide as their channel",
    by_hand=(ByHand("H=120 mm, P=100 mm", "0.602 + 0.083*120/100", "0.7016"),),
    published=(
        Published("H=1 m, P=1 m", "0.6769", 0.015, SWMM_MANUAL.at("Table 6-2, full width, H/P = 1"), note="3.620 ft^0.5/s printed, divided by 2/3 sqrt(2 g)"),
        Published("H=1 mm, P=1 m", "0.602", 1e-3, SWMM_MANUAL.at("Table 6-2, full width, H/P = 0"), note="3.220 ft^0.5/s printed, divided by 2/3 sqrt(2 g)"),
    ),
    tested=(*THIN_PLATE_HEIGHT, TestedRange("P", "", "1000 mm", REHBOCK.at("limits"))),
    slips=(Slip("0.602 + 0.083*P/H", "Head and height have changed places: the coefficient grows as the head grows against the height."),),
    rises=("H",),
    falls=("P",),
)

corrected_lip = Formula(
    name="flow over a lip with corrected head and length",
    result="Q",
    equals="2/3*C_d*(b + k_b)*sqrt(2*g)*(H + k_h)**(3/2)",
    fitted="Rehbock; Kindsvater and Carter: small lengths added to head and lip stand for viscosity and surface tension",
    tested=THIN_PLATE,
    published=(
        Published(
            "C_0=0.602, C_1=0.0832, H=50 mm, P=0.2 m, b=0.5 m, k_b=0 mm, k_h=1.25 mm",
            "0.01066703 m3/s",
            2e-4,
            FLUIDS.at("Q_weir_rectangular_full_Rehbock(0.05, 0.2, 0.5)"),
            after=(coefficient_by_height,),
        ),
        Published(
            "C_0=0.602, C_1=0.0749, H=50 mm, P=0.2 m, b=0.5 m, k_b=-1 mm, k_h=1 mm",
            "0.01053311 m3/s",
            2e-4,
            FLUIDS.at("Q_weir_rectangular_full_Kindsvater_Carter(0.05, 0.2, 0.5)"),
            after=(coefficient_by_height,),
        ),
    ),
    slips=(
        Slip(
            "2/3*C_d*b*sqrt(2*g)*H**(3/2)", "You left out the corrections. At a few millimetres of head one millimetre more is a lot. Add each to its own size."
        ),
    ),
    rises=("C_d", "b", "k_b", "H", "k_h"),
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------


def lip_coefficient(H: float, P: float, share: float = 1.0) -> float:
    """Discharge coefficient of a thin lip by Kindsvater and Carter, for a lip that takes `share` (0.2 to 1) of the channel's width.

    H, P in metres; between the rows of the table the constants are interpolated. Raises InputError outside the table.
    """
    c_0, c_1 = tables.lip_constants(share)
    return coefficient_by_height(C_0=c_0, C_1=c_1, H=H, P=P)
