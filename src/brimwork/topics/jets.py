"""Jets: what an outlet throws up or out, water that wells up from an upright pipe, and what a throw tells about the flow."""

from brimwork import tables
from brimwork.by_hand import ByHand
from brimwork.conditions import TestedRange
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import area_of_an_outlet, continuity_at_an_outlet, fall_from_rest, level_throw, rise_of_a_stream
from brimwork.sources import BERNOULLI, CENGEL, LAWRENCE, NMSU_104, SCHASCHKE, USBR
from brimwork.steps import Eliminate, Law, Solve, Step, Take
from brimwork.units import InputError, write

_HEALTH = (
    "Thrown water makes droplets, which wind carries. Water at about 20 to 45 degC may make them carry Legionella to anybody who breathes them: "
    "keep it clean and cool, change it after weeks at a standstill, ask for a risk assessment in public places, and do not build near people at special risk."
)

# --- boil over an outlet under water ------------------------------------------------------------------------------------------------

_BOIL_PARTS = "the speed out of a bore and the height of a jet are each checked; no printed mound was found"

boil_of_a_flow = Formula(
    name="mound of a flow from a bore",
    result="h_boil",
    equals="8*Q**2/(pi**2*g*d_out**4)",
    steps=(
        area_of_an_outlet,
        continuity_at_an_outlet,
        rise_of_a_stream,
        Eliminate("put area and speed in", out=("A_o", "v")),
    ),
    unpublished=_BOIL_PARTS,
    slips=(
        Slip(
            "Q**2/(2*pi**2*g*d_out**4)",
            "You took the bore for the radius: the area came out four times too big, and the mound sixteen times too small. Use a quarter of pi times the bore squared.",
        ),
        Slip("16*Q**2/(pi**2*g*d_out**4)", "The 2 is missing: velocity head is speed squared over two g. Halve it."),
        Slip("4*Q/(pi*d_out**2)/(2*g)", "The speed is squared: half the speed gives a quarter of the mound. Square the speed."),
    ),
    ranges={"d_out": ("20 mm", "60 mm"), "Q": ("15 L/min", "40 L/min")},
    remark=f"Friction with the water around lowers it a little: the true mound is not higher than this. High domes spit. {_HEALTH}",
)

bore_for_a_boil = Formula(
    name="outlet bore for a mound",
    result="d_out",
    equals="sqrt(4*Q/(pi*sqrt(2*g*h_boil)))",
    inverse_of=boil_of_a_flow,
    unpublished=_BOIL_PARTS,
    slips=(
        Slip("sqrt(Q/(pi*sqrt(2*g*h_boil)))", "That is the radius. The bore is twice as wide."),
        Slip("sqrt(4*Q/(pi*sqrt(g*h_boil)))", "The 2 is missing: speed is the root of two g h."),
        Slip("4*Q/(pi*sqrt(2*g*h_boil))", "That is the bore squared. Take the root."),
        Slip("sqrt(4*Q/(pi*2*g*h_boil))", "You used the square of the speed. Take the root of two g h before you divide the flow by it."),
    ),
    ranges={"Q": ("15 L/min", "40 L/min"), "h_boil": ("5 mm", "60 mm")},
    remark="A wider mouth, or a flared end, calms a mound without a smaller flow.",
)


# --- out of an opening --------------------------------------------------------------------------------------------------------------

nozzle_speed = Formula(
    name="speed out of a nozzle",
    result="v",
    equals="sqrt(2*p_out/rho)",
    steps=(
        Law(
            "energy: pressure turns into speed", "p_out = rho*v**2/2", BERNOULLI.at("section on steady flow"), holds="no friction, slow water before the nozzle"
        ),
        Solve("solve for the speed", of="p_out"),
    ),
    unpublished="the height of a jet, which uses it, is checked",
    slips=(Slip("sqrt(p_out/rho)", "The 2 is missing: pressure is half of density times speed squared."), Slip("2*p_out/rho", "Take the root.")),
)

jet_height = Formula(
    name="height of a jet",
    result="h_jet",
    equals="v**2/(2*g)",
    steps=(
        Law("energy: speed turns into height", "g*h_jet = v**2/2", BERNOULLI.at("section on steady flow"), holds="no drag of the air"),
        Solve("solve for the height"),
    ),
    published=(Published("p_out=400 kPa, rho=1000 kg/m3, g=9.81 m/s2", "40.8 m", 1e-3, CENGEL.at("Ex 5-5: water from a hose"), after=(nozzle_speed,)),),
    slips=(
        Slip("v**2/g", "The 2 is missing: velocity head is speed squared over two g. Halve it."),
        Slip("v/(2*g)", "The speed is squared: twice the speed rises four times as high."),
    ),
    remark=f"No jet rises higher than this; drag and breaking up keep it lower. {_HEALTH}",
)

velocity_coefficient = Formula(
    name="velocity coefficient from a throw",
    result="C_v",
    equals="x_throw/sqrt(4*h_fall*H_o)",
    steps=(
        fall_from_rest,
        level_throw,
        Eliminate("put the time of fall in", out=("t_fall",), relation="x_throw = v_b*sqrt(2*h_fall/g)"),
        Take("compare the real speed with that of free fall through the head", "C_v = v_b/sqrt(2*g*H_o)"),
        Step("put the speed that the throw shows in"),
    ),
    published=(Published("x_throw=0.86 m, h_fall=0.96 m, H_o=0.2 m", "0.981", 1e-3, SCHASCHKE.at("Worked example 6.2")),),
    slips=(
        Slip("x_throw/sqrt(2*h_fall*H_o)", "It is 4 under the root: one 2 comes from the fall, one from the speed. Put in 4."),
        Slip("x_throw**2/(4*h_fall*H_o)", "That is the square of it. Take the root."),
    ),
)

full_level_pipe = Formula(
    name="flow of a full level pipe from its throw",
    result="Q",
    equals="pi/4*d_out**2*x_throw*sqrt(g/(2*h_fall))",
    steps=(
        fall_from_rest,
        level_throw,
        area_of_an_outlet,
        Law("continuity at the mouth", "Q = A_o*v_b", BERNOULLI.at("section on steady flow"), holds="a full pipe"),
        Eliminate("put area, speed and time in", out=("A_o", "v_b", "t_fall")),
    ),
    published=tuple(
        Published(f"d_out=2.00 in, x_throw={inches} in, h_fall=13 in", f"{flow} US gal/min", 0.012, NMSU_104.at("Table 1, 2 in pipe, 13 in down"))
        for inches, flow in ((12, 38), (24, 75), (36, 113))
    ),
    slips=(
        Slip("pi/4*d_out**2*x_throw*sqrt(g/h_fall)", "The 2 is missing in the time of fall."),
        Slip("pi*d_out**2*x_throw*sqrt(g/(2*h_fall))", "You took the bore for the radius: four times too much came out."),
        Slip("pi/4*d_out**2*x_throw*sqrt(2*h_fall/g)", "That multiplies by the time of fall. Speed is way over time: divide by it."),
    ),
    remark="Measure from the top of the stream at the mouth to the top of the stream below. A rough flow meter that needs only a rule.",
)

# --- upright pipe -------------------------------------------------------------------------------------------------------------------

_MANUAL = tables.BORE_REGIMES_SOURCE
_AS_A_RIM = TestedRange("h_boil/d_bore", "", f"{tables.BORE_AS_A_RIM}", _MANUAL)
_AS_A_JET = TestedRange("h_boil/d_bore", f"{tables.BORE_AS_A_JET}", "", _MANUAL)
_PIPES = TestedRange("d_bore", "2 in", "12 in", LAWRENCE.at("pipes measured"))
_TABLE_14_1 = USBR.at("Table 14-1, 2 in standard pipe, read from an image")
_NO_TABLE = "the source prints the equation and a table for jets only, and an equation is no check of itself: its arithmetic is worked by hand"
_RIM_FIT = "US Bureau of Reclamation, to upright pipes that flow over their rim: good to 15 %"
_JET_FIT = "US Bureau of Reclamation, to upright pipes that flow as a jet: good to 10 %"

upright_pipe_as_a_rim = Formula(
    name="flow of an upright pipe over its rim",
    result="Q",
    equals="k_rim*d_bore**1.25*h_boil**1.35",
    fitted=_RIM_FIT,
    tested=(_AS_A_RIM, _PIPES),
    by_hand=(ByHand("d_bore=8 in, h_boil=0.15 in", "6.17*8**1.25*0.15**1.35", "6.41019 US gal/min"),),
    unpublished=_NO_TABLE,
    where=(f"h_boil < {tables.BORE_AS_A_RIM}*d_bore",),
    slips=(
        Slip(
            "k_jet*d_bore**1.99*h_boil**0.53",
            "You used the law of the jet. So low over the pipe, water runs off its rim like over a weir. Use the law of the rim.",
        ),
        Slip("k_rim*(d_bore/2)**1.25*h_boil**1.35", "You used the radius where the bore goes. Put in the full bore."),
    ),
    ranges={"h_boil": ("5 mm", "20 mm"), "d_bore": ("25 mm", "120 mm")},
)

crown_over_a_rim = Formula(
    name="crown over an upright pipe as a rim",
    result="h_boil",
    equals="(Q/(k_rim*d_bore**1.25))**(1/1.35)",
    inverse_of=upright_pipe_as_a_rim,
    tested=(_AS_A_RIM, _PIPES),
    unpublished=_NO_TABLE,
    slips=(Slip("Q/(k_rim*d_bore**1.25)", "Flow goes with the height to the power 1.35: undo the power."),),
    ranges={"Q": ("5 L/min", "20 L/min"), "d_bore": ("60 mm", "120 mm")},
)

upright_pipe_as_a_jet = Formula(
    name="flow of an upright pipe as a jet",
    result="Q",
    equals="k_jet*d_bore**1.99*h_boil**0.53",
    fitted=_JET_FIT,
    tested=(_AS_A_JET, _PIPES),
    published=(*(Published(f"d_bore=2.00 in, h_boil={inches} in", f"{flow} US gal/min", 0.1, _TABLE_14_1) for inches, flow in ((5, 45), (10, 66), (40, 137))),),
    by_hand=(ByHand("d_bore=8 in, h_boil=15 in", "5.01*8**1.99*15**0.53", "1319.21 US gal/min"),),
    where=(f"{tables.BORE_AS_A_JET}*d_bore < h_boil",),
    slips=(
        Slip("k_rim*d_bore**1.25*h_boil**1.35", "You used the law of the rim. So high over the pipe, water leaves as a jet. Use the law of the jet."),
        Slip(
            "pi/4*d_bore**2*sqrt(2*g*h_boil)",
            "That is free rise without losses. A measured jet of that height carries less. Use the law that was measured.",
        ),
    ),
    ranges={"h_boil": ("40 mm", "150 mm"), "d_bore": ("13 mm", "60 mm")},
    remark=f"Take the true bore: the outside of a 2 in pipe gives nearly half as much again. {_HEALTH}",
)

crown_of_a_jet = Formula(
    name="crown over an upright pipe as a jet",
    result="h_boil",
    equals="(Q/(k_jet*d_bore**1.99))**(1/0.53)",
    inverse_of=upright_pipe_as_a_jet,
    tested=(_AS_A_JET, _PIPES),
    published=(Published("Q=66 US gal/min, d_bore=2.00 in", "10 in", 0.05, _TABLE_14_1),),
    slips=(Slip("Q/(k_jet*d_bore**1.99)", "Flow goes with the height to the power 0.53: undo the power."),),
    ranges={"Q": ("20 L/min", "60 L/min"), "d_bore": ("13 mm", "22 mm")},
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------


def crown_of_upright_pipe(Q: float, d_bore: float) -> tuple[str, float]:
    """How an upright pipe of d_bore (m) carries a flow Q (m3/s), "rim" or "jet", and how high its water stands over the mouth (m).

    Raises InputError in the gap, where neither law holds.
    """
    for formula in (crown_over_a_rim, crown_of_a_jet):
        crown = formula(Q=Q, d_bore=d_bore)
        if (crown < tables.BORE_AS_A_RIM * d_bore) if formula is crown_over_a_rim else (crown > tables.BORE_AS_A_JET * d_bore):
            return ("rim" if formula is crown_over_a_rim else "jet"), crown
    raise InputError(
        f"{write(Q, 'L/min')} from a bore of {write(d_bore, 'mm')} stands between {tables.BORE_AS_A_RIM:g} and {tables.BORE_AS_A_JET:g} bores high, "
        f"where neither the rim law nor the jet law holds ({_MANUAL}): choose another bore or flow, or try it with a bucket and a hose"
    )
