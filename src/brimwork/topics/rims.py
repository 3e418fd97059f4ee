"""Rims: flow and head round a vessel's rim and over the mouth of a bore, and a rim out of level."""

from brimwork.conditions import TestedRange
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import length_of_a_bore, length_of_a_circle
from brimwork.sources import KINDSVATER, SWMM_MANUAL, USBR
from brimwork.steps import Law, Solve, Step, Take

_LINEAR = "The units do not come out as a flow. Depth counts one and a half times over: once for area, half for speed."
_UPSIDE_DOWN = "To undo 'to the power 3/2' you need the power 2/3. Check: does a bigger flow give a sensible depth?"
_NO_POWER = "Flow goes with the head to the power 3/2, so head goes with the flow to the power 2/3. You left the power out. Take the power 2/3 of all of it."

_HEAD = (TestedRange("H", "30 mm", "", KINDSVATER.at("limits for a thin plate, the nearest experiments")),)

# --- round rim and round bore -------------------------------------------------------------------------------------------------------

_RIM_NOT_PRINTED = "no printed example of a whole round rim was found; the rim is the level lip with its own length, and the lip is checked"

round_rim = Formula(
    name="flow over a round rim",
    result="Q",
    equals="C_w*pi*d_rim*H**(3/2)",
    steps=(
        length_of_a_circle,
        Take("water leaves all the way round, each metre of rim like a metre of level lip", "Q = C_w*b*H**(3/2)"),
        Step("put the length of the rim in"),
    ),
    tested=_HEAD,
    unpublished=_RIM_NOT_PRINTED,
    slips=(
        Slip("C_w*d_rim*H**(3/2)", "You used the width across the bowl. Water leaves all the way round, so use the length of the rim."),
        Slip("C_w*pi*d_rim/2*H**(3/2)", "You used the radius. The length round the rim is pi times the full diameter. Put in the full diameter."),
        Slip("C_w*2*pi*d_rim*H**(3/2)", "Two pi goes with the radius. With the diameter it is pi once. Multiply by pi alone."),
        Slip("C_w*pi*d_rim*H", _LINEAR),
    ),
    ranges={"H": ("3 mm", "8 mm"), "C_w": ("1.7 m^0.5/s", "1.84 m^0.5/s")},
    rises=("C_w", "d_rim", "H"),
)

head_on_round_rim = Formula(
    name="head on a round rim",
    result="H",
    equals="(Q/(C_w*pi*d_rim))**(2/3)",
    inverse_of=round_rim,
    tested=round_rim.tested,
    unpublished=_RIM_NOT_PRINTED,
    slips=(
        Slip("(Q/(C_w*d_rim))**(2/3)", "You used the width across the bowl. Water leaves all the way round, so use the length of the rim."),
        Slip("Q/(C_w*pi*d_rim)", _NO_POWER),
        Slip("(Q/(C_w*pi*d_rim))**(3/2)", _UPSIDE_DOWN),
    ),
    ranges={"C_w": ("1.7 m^0.5/s", "1.84 m^0.5/s")},
    rises=("Q",),
    falls=("C_w", "d_rim"),
)

round_bore = Formula(
    name="flow out of a bore over its rim",
    result="Q",
    equals="C_w*pi*d_bore*H**(3/2)",
    steps=(
        length_of_a_bore,
        Take("a thin film leaves all round the mouth like water over a level lip", "Q = C_w*b*H**(3/2)"),
        Step("put the length of the mouth in"),
    ),
    tested=(TestedRange("H/d_bore", "", "0.37", USBR.at("ch. 14, s. 13: flow like a weir up to 0.37 of the bore")),),
    where=("H < 0.37*d_bore",),
    published=(
        Published(
            "C_w=1.71 m^0.5/s, d_bore=8 in, H=2.4 in",
            "271 US gal/min",
            0.15,
            USBR.at("ch. 14, s. 13: 6.17 d^1.25 h^1.35 in inches, said to be good to 15 %"),
            note="the equation worked for 8 in and 2.4 in",
        ),
    ),
    slips=(
        Slip("C_w*d_bore*H**(3/2)", "You used the width of the bore. Water leaves all the way round its mouth, so use the length of the circle."),
        Slip("C_w*pi*d_bore*H", _LINEAR),
    ),
    ranges={"H": ("3 mm", "9 mm")},
    rises=("C_w", "d_bore", "H"),
)

limit_of_round_bore = Formula(
    name="head at which a bore stops flowing like a rim",
    result="H_full",
    equals="C_d*d_bore*sqrt(2*g)/(4*C_w)",
    steps=(
        Law(
            "flow through an opening under a head",
            "C_w*pi*d_bore*H_full**(3/2) = C_d*A_o*sqrt(2*g*H_full)",
            SWMM_MANUAL.at("Eq. 6-11 and 6-12: both laws meet"),
        ),
        Law("area of a circle", "A_o = pi/4*d_bore**2", length_of_a_circle.source),
        Solve("solve for the head at which both pass the same"),
    ),
    published=(
        Published(
            "C_d=0.6, d_bore=1 m, C_w=1.84 m^0.5/s", "0.37 m", 0.03, USBR.at("ch. 14, s. 13: flow like a weir up to 0.37 of the bore"), note="0.361 of the bore"
        ),
    ),
    slips=(Slip("C_d*d_bore*sqrt(2*g)/C_w", "The area of the bore is a quarter of pi times its diameter squared. The 4 is missing."),),
    rises=("C_d", "d_bore"),
    falls=("C_w",),
)

# --- rim out of level ---------------------------------------------------------------------------------------------------------------

_DRY = "(3*pi/4)**(2/3)*H"

rim_flow_ratio = Formula(
    name="flow ratio of a rim out of level",
    result="r_rim",
    equals="((H + e_rim/2)/(H - e_rim/2))**(3/2)",
    steps=(
        Take("at the low side the head is more by half the difference in level", "q_low = C_w*(H + e_rim/2)**(3/2)"),
        Take("at the high side it is less by as much", "q_high = C_w*(H - e_rim/2)**(3/2)"),
        Take("compare the two", "r_rim = q_low/q_high"),
        Step("the coefficient cancels"),
    ),
    where=(f"e_rim < {_DRY}",),
    tested=_HEAD,
    remark="While water leaves all round: from about 1.8 times the head on, the high side runs dry.",
    unpublished="no printed example was found; the level-lip formula is used twice",
    slips=(
        Slip("(H + e_rim/2)/(H - e_rim/2)", "You compared the heads. Flow goes with head to the power 3/2."),
        Slip(
            "((H + e_rim)/(H - e_rim))**(3/2)",
            "You gave the whole difference to each side. From the middle each side is off by half of it. Use half of the difference on each side.",
        ),
        Slip(
            "(H + e_rim)/(H - e_rim)",
            "You gave the whole difference to each side, and compared heads instead of flows. Use half of it on each side, and the power 3/2.",
        ),
    ),
    ranges={"H": ("2.5 mm", "6 mm"), "e_rim": ("0.4 mm", "5 mm")},
    rises=("e_rim",),
    falls=("H",),
)

rim_runs_dry = Formula(
    name="rim out of level that leaves one side dry",
    result="e_dry",
    equals=_DRY,
    tested=_HEAD,
    steps=(
        Take("tilt the rim until its high side is just dry: the head grows from there to the low side", "H_phi = e_dry*cos(phi/2)**2"),
        Take("add the flow of every metre round the rim, and take the mean", "q = C_w*Integral(e_dry**(3/2)*cos(phi/2)**3, (phi, 0, pi))/pi"),
        Step("integrate", "q = 4/(3*pi)*C_w*e_dry**(3/2)"),
        Law("the pump sends as much as when the rim was level", "q = C_w*H**(3/2)", SWMM_MANUAL.at("ch. 6, weirs: flow goes with head to the power 3/2")),
        Solve("solve for the difference in level"),
    ),
    unpublished="no printed example was found; checked in the tests by adding up the flow round the rim numerically",
    slips=(
        Slip(
            "2*H",
            "That holds the water level where it was. With one side running dry the same flow crowds over the rest, so the level rises and the limit comes a little earlier. Use the limit with the level risen.",
        ),
        Slip("H", "The high side is above the middle by half the difference only."),
    ),
    ranges={"H": ("2 mm", "8 mm")},
    rises=("H",),
    remark="H is the head of the level rim at the same flow. In round numbers: dry at 1.8 times that head.",
)
