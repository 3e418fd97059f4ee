"""Draining: flow through an opening, the time in which tanks empty, overflow pipes and leaks."""

from brimwork.conditions import TestedRange
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import area_of_an_outlet, emptying
from brimwork.sources import (
    BERNOULLI,
    NEWTON,
    NUSSELT,
    OPENSTAX,
    SCHASCHKE,
    SUBRAMANYA,
    SWMM_ENGINE,
    TORRICELLI,
)
from brimwork.steps import Law, Ode, Solve, Step, Take

_NO_2 = "The 2 is missing: speed is the root of two g times the head."
_NO_CD = "You left out the discharge coefficient. The stream narrows behind the opening, so less comes than the plain theory says."
_FIRST_FLOW = (
    "You let the first flow run to the end. As the head falls the flow falls with it, so it takes longer. Use the law that lets the flow fall with the head."
)
_HEADS_FOR_ROOTS = "You took the root of the difference. Take the difference of the roots."
_START = ("H_2 = H_1", "t_drain = 0")
_HOLE = Law("speed out of an opening is that of free fall through the head", "v = sqrt(2*g*H_o)", TORRICELLI.at("prop. on the outflow of a jet"))

# --- openings -----------------------------------------------------------------------------------------------------------------------

velocity_coefficient_from_loss = Formula(
    name="velocity coefficient from the head lost",
    result="C_v",
    equals="sqrt(1 - h_lo/H_o)",
    steps=(
        Law("energy: what is not lost turns into speed", "v**2/(2*g) = H_o - h_lo", BERNOULLI.at("section on steady flow")),
        Solve("the speed", relation="v = sqrt(2*g*(H_o - h_lo))"),
        Take("compare it with that of free fall through the whole head", "C_v = v/sqrt(2*g*H_o)"),
        Step("divide"),
    ),
    where=("h_lo < 0.5*H_o",),
    published=(Published("h_lo=0.2 m, H_o=2 m", "0.949", 1e-3, SUBRAMANYA.at("Ex 13.1")),),
    slips=(
        Slip("1 - h_lo/H_o", "Speed goes with the root of the head: take the root."),
        Slip("h_lo/H_o", "That is the share lost. What is left makes the speed. Take that share from one, and then the root."),
    ),
)

discharge_coefficient = Formula(
    name="discharge coefficient of an opening",
    result="C_d",
    equals="C_c*C_v",
    steps=(
        Take("behind the opening the stream narrows to a share of it", "A_j = C_c*A_o"),
        Take("its speed is a little less than that of free fall", "v = C_v*sqrt(2*g*H_o)"),
        Take("what passes is speed times area", "Q = A_j*v"),
        Take("compare it with the whole opening at the speed of free fall", "C_d = Q/(A_o*sqrt(2*g*H_o))"),
        Step("opening and speed cancel"),
    ),
    unpublished="the flow that follows from it is checked under flow through an opening",
    slips=(Slip("C_c", "A little speed is lost as well."), Slip("C_v", "The narrowing of the stream takes far more than the lost speed.")),
)

flow_through_an_opening = Formula(
    name="flow through an opening",
    result="Q",
    equals="C_d*A_o*sqrt(2*g*H_o)",
    steps=(_HOLE, Take("the opening passes that speed over a part of its area", "Q = C_d*A_o*v"), Step("put the speed in")),
    published=(
        Published("C_d=1, A_o=10 cm2, H_o=5 m, g=9.8 m/s2", "0.0099 m3/s", 1e-3, OPENSTAX.at("module m42208, problem: a hole below the surface")),
        Published(
            "h_lo=0.2 m, C_c=0.63, A_o=12.566371 cm2, H_o=2 m, g=9.81 m/s2",
            "4.707 L/s",
            1e-3,
            SUBRAMANYA.at("Ex 13.1"),
            after=(velocity_coefficient_from_loss, discharge_coefficient),
            note="an opening of 40 mm; the book rounds the velocity coefficient",
        ),
        Published(
            "C_d=0.6, A_o=3.1415927 cm2, H_o=358.45 mm", "0.5 L/s", 1e-3, SWMM_ENGINE.at("a side opening of 20 mm: depth 368.45 mm above its lowest point")
        ),
    ),
    slips=(
        Slip("C_d*A_o*sqrt(g*H_o)", _NO_2),
        Slip("C_d*A_o*2*g*H_o", "The root is missing: speed is the root of two g times the head. Take the root of all of it."),
        Slip("A_o*sqrt(2*g*H_o)", _NO_CD),
    ),
    remark="Measure the head to the middle of the opening.",
)

head_at_an_opening = Formula(
    name="head at an opening",
    result="H_o",
    equals="(Q/(C_d*A_o))**2/(2*g)",
    inverse_of=flow_through_an_opening,
    published=(Published("C_d=0.6, A_o=3.1415927 cm2, Q=0.5 L/s", "358.45 mm", 1e-3, SWMM_ENGINE.at("a side opening of 20 mm, less half the opening")),),
    slips=(
        Slip("(Q/(C_d*A_o))**2/g", _NO_2),
        Slip("(Q/A_o)**2/(2*g)", _NO_CD),
        Slip("Q/(C_d*A_o)/(2*g)", "The speed is squared. Square it before you divide by two g."),
    ),
    ranges={"Q": ("5 L/min", "60 L/min"), "A_o": ("2 cm2", "20 cm2")},
)

overflow_capacity = Formula(
    name="flow that an overflow pipe can carry",
    result="Q_over",
    equals="C_d*pi/4*d_out**2*sqrt(2*g*H_o)",
    steps=(
        area_of_an_outlet,
        _HOLE,
        Take("a short drowned pipe passes like an opening", "Q_over = C_d*A_o*v"),
        Step("put area and speed in"),
    ),
    unpublished="flow through an opening, which is checked, with the area of a circle",
    slips=(
        Slip("C_d*pi*d_out**2*sqrt(2*g*H_o)", "You took the bore for the radius: four times too much came out."),
        Slip("C_d*pi/4*d_out**2*sqrt(g*H_o)", _NO_2),
        Slip("pi/4*d_out**2*sqrt(2*g*H_o)", _NO_CD),
    ),
    ranges={"H_o": ("20 mm", "100 mm"), "d_out": ("25 mm", "60 mm")},
    remark="Head is counted to the middle of the pipe, with its mouth under water. A grating with leaves on it passes far less: clean it.",
)

overflow_bore = Formula(
    name="bore of an overflow pipe",
    result="d_out",
    equals="sqrt(4*Q_over/(pi*C_d*sqrt(2*g*H_o)))",
    inverse_of=overflow_capacity,
    unpublished="flow through an opening, which is checked, turned round",
    slips=(
        Slip("sqrt(Q_over/(pi*C_d*sqrt(2*g*H_o)))", "That is the radius. The bore is twice as wide."),
        Slip("sqrt(4*Q_over/(pi*sqrt(2*g*H_o)))", _NO_CD),
    ),
    ranges={"H_o": ("20 mm", "100 mm")},
    remark="Take the next wider pipe, and twice the area where leaves fall.",
)

overflow_ratio = Formula(
    name="overflow ratio",
    result="r_over",
    equals="Q_over/(k_run*A_catch*i_rain + Q_feed)",
    steps=(
        Take("at worst the rain that runs in and a top-up valve that sticks open come together", "Q = k_run*A_catch*i_rain + Q_feed"),
        Take("compare what the overflow can carry", "r_over = Q_over/Q"),
        Step("put it in"),
    ),
    unpublished="a ratio of flows, by definition",
    slips=(
        Slip("Q_over/(k_run*A_catch*i_rain)", "You left out the top-up valve, which may stick open while it rains."),
        Slip("(k_run*A_catch*i_rain + Q_feed)/Q_over", "Upside down: over 1 must mean that the overflow carries it."),
    ),
)

# --- time to drain ------------------------------------------------------------------------------------------------------------------

drain_time = Formula(
    name="time to drain through an opening",
    result="t_drain",
    equals="2*A_tank*(sqrt(H_1) - sqrt(H_2))/(C_d*A_o*sqrt(2*g))",
    steps=(
        Take("at each head the opening passes its own flow", "Q = C_d*A_o*sqrt(2*g*H_2)"),
        emptying,
        Ode("solve: at the first head no time has gone", "", at=(_START,)),
    ),
    where=("H_2 < H_1",),
    published=(
        Published(
            "A_tank=0.78539816 m2, H_1=1.2732395 m, H_2=0 m, C_d=0.6, A_o=3.1415927 cm2, g=9.8 m/s2",
            "2124.5 s",
            5e-4,
            SCHASCHKE.at("Worked example 6.3"),
            note="1 m3 in a tank of 1 m, opening of 20 mm",
        ),
    ),
    slips=(
        Slip("A_tank*(H_1 - H_2)/(C_d*A_o*sqrt(2*g*H_1))", _FIRST_FLOW),
        Slip("2*A_tank*sqrt(H_1 - H_2)/(C_d*A_o*sqrt(2*g))", _HEADS_FOR_ROOTS),
        Slip("2*A_tank*(sqrt(H_1) - sqrt(H_2))/(A_o*sqrt(2*g))", _NO_CD),
    ),
    remark="For a tank with upright sides and nothing running in.",
)

drain_against_inflow = Formula(
    name="time to drain against an inflow",
    result="t_drain",
    equals="2*A_tank*(C_d*A_o*sqrt(2*g)*(sqrt(H_1) - sqrt(H_2)) + Q_feed*log((C_d*A_o*sqrt(2*g*H_1) - Q_feed)/(C_d*A_o*sqrt(2*g*H_2) - Q_feed)))"
    "/(2*g*C_d**2*A_o**2)",
    steps=(
        Take("at each head more runs out than in: take the difference", "Q = C_d*A_o*sqrt(2*g*H_2) - Q_feed"),
        emptying,
        Ode("solve: at the first head no time has gone", "", at=(_START,)),
    ),
    where=("H_2 < H_1", "Q_feed < 0.9*(C_d*A_o*sqrt(2*g*H_2))"),
    published=(
        Published(
            "A_tank=150 m2, H_1=1.5 m, H_2=0.5 m, C_d=1, A_o=0.0737335 m2, Q_feed=0.2 m3/s, g=9.81 m/s2",
            "1536.35 s",
            8e-3,
            SCHASCHKE.at("Worked example 6.8"),
            note="the opening passes 0.4 m3/s at 1.5 m; the notebook takes 2.69 for the base of natural logarithms, exactly it is 1525.25 s",
        ),
    ),
    slips=(Slip("2*A_tank*(sqrt(H_1) - sqrt(H_2))/(C_d*A_o*sqrt(2*g))", "You left out what runs in meanwhile: it takes longer. Use the law with an inflow."),),
    ranges={"A_o": ("10 cm2", "120 cm2"), "H_2": ("50 mm", "250 mm")},
)

two_tanks = Formula(
    name="time for two tanks to level",
    result="t_drain",
    equals="2*A_tank*(sqrt(H_1) - sqrt(H_2))/(C_d*A_o*sqrt(2*g)*(1 + A_tank/A_t2))",
    steps=(
        Take("at each difference in level the pipe passes its own flow", "Q = C_d*A_o*sqrt(2*g*H_2)"),
        Law(
            "continuity: one surface falls while the other rises, and the difference closes by both",
            "Derivative(t_drain, H_2) = -1/(Q/A_tank + Q/A_t2)",
            BERNOULLI.at("section on steady flow"),
        ),
        Ode("solve: at the first difference no time has gone", "", at=(_START,)),
    ),
    where=("H_2 < H_1",),
    published=(
        Published("A_tank=8 m2, A_t2=4 m2, C_d=0.62, A_o=0.01 m2, H_1=300 mm, H_2=100 mm, g=9.81 m/s2", "44.957 s", 1e-4, SCHASCHKE.at("Worked example 6.6")),
    ),
    slips=(
        Slip("2*A_tank*(sqrt(H_1) - sqrt(H_2))/(C_d*A_o*sqrt(2*g))", "You drained one tank alone. The other rises meanwhile, so the difference closes sooner."),
        Slip("A_tank*(H_1 - H_2)/(C_d*A_o*sqrt(2*g*H_1)*(1 + A_tank/A_t2))", _FIRST_FLOW),
    ),
    remark="Heads are differences in level between the two.",
)

notch_draw_down = Formula(
    name="time to draw down over a V-notch",
    result="t_drain",
    equals="2*A_tank/(3*k_n)*(1/H_2**(3/2) - 1/H_1**(3/2))",
    steps=(
        Take("at each head the notch passes its own flow", "Q = k_n*H_2**(5/2)"),
        emptying,
        Ode("solve: at the first head no time has gone", "", at=(_START,)),
    ),
    where=("H_2 < H_1",),
    published=(Published("A_tank=8 m2, k_n=1.5 m^0.5/s, H_1=0.15 m, H_2=0.05 m", "257 s", 1e-3, SCHASCHKE.at("Worked example 7.11")),),
    slips=(
        Slip("A_tank*(H_1 - H_2)/(k_n*H_1**(5/2))", _FIRST_FLOW),
        Slip("2*A_tank/(3*k_n)*(1/H_2 - 1/H_1)**(3/2)", "Take each to the power first, then the difference."),
    ),
    ranges={"H_1": ("60 mm", "150 mm"), "H_2": ("10 mm", "50 mm")},
)

rim_runs_down = Formula(
    name="time in which a rim runs down",
    result="t_drain",
    equals="2*A_tank/(C_w*b)*(1/sqrt(H_2) - 1/sqrt(H_1))",
    steps=(
        Take("at each head the rim passes its own flow", "Q = C_w*b*H_2**(3/2)"),
        emptying,
        Ode("solve: at the first head no time has gone", "", at=(_START,)),
    ),
    where=("H_2 < H_1",),
    unpublished="no printed example was found; the draw-down over a notch, which goes the same way, is checked",
    slips=(Slip("A_tank*(H_1 - H_2)/(C_w*b*H_1**(3/2))", _FIRST_FLOW),),
    ranges={"H_1": ("3 mm", "10 mm"), "H_2": ("0.5 mm", "2 mm"), "A_tank": ("0.1 m2", "0.9 m2"), "b": ("300 mm", "2500 mm")},
    remark="A bowl drips on for a while after the pump has stopped. It never ends in theory; surface tension ends it at a millimetre or so.",
)

head_left_over_a_rim = Formula(
    name="head left over a rim after a time",
    result="H_2",
    equals="H_1/(1 + C_w*b*sqrt(H_1)*t_drain/(2*A_tank))**2",
    inverse_of=rim_runs_down,
    unpublished="no printed example was found; the time in which a rim runs down, turned round",
    slips=(
        Slip("H_1/(1 + C_w*b*sqrt(H_1)*t_drain/(2*A_tank))", "The last step is missing: that is the root of the head. Square it."),
        Slip(
            "H_1*exp(-C_w*b*sqrt(H_1)*t_drain/A_tank)",
            "You let the flow go with the head itself. It goes with its power 3/2, so the last of it takes much longer. Use the power 3/2 all the way down.",
        ),
    ),
    ranges={"t_drain": ("0.05 min", "2 min"), "H_1": ("3 mm", "10 mm"), "A_tank": ("0.1 m2", "0.9 m2"), "b": ("300 mm", "2500 mm")},
    rises=("A_tank",),
    falls=("C_w", "b", "t_drain"),
)

# --- leaks -------------------------------------------------------------------------------------------------------------------------

leak_round_a_hole = Formula(
    name="leak through a narrow gap round a pipe",
    result="Q_leak",
    equals="pi*d_hole*g*H_o*s_gap**3/(12*nu*L_gap)",
    steps=(
        Take("the shear on a layer carries the push on the water between it and the middle", "tau_g = rho*g*H_o/L_gap*y_g"),
        Law(
            "viscosity: shear stress goes with the slope of the speed, which falls outwards",
            "tau_g = -mu*Derivative(u_g, y_g)",
            NEWTON.at("hypothesis before prop. 51"),
        ),
        Ode("solve: the water stands still at the wall", "u_g = rho*g*H_o/(2*mu*L_gap)*(s_gap**2/4 - y_g**2)", at=(("y_g = s_gap/2", "u_g = 0"),)),
        Take("add the layers, all round the hole", "Q_leak = pi*d_hole*Integral(u_g, (y_g, -s_gap/2, s_gap/2))"),
        Take("viscosity over density is the kinematic viscosity", "nu = mu/rho"),
        Step("integrate"),
    ),
    tested=(TestedRange("g*H_o*s_gap**3/(6*nu**2*L_gap)", "", "1400", NUSSELT.at("laminar flow; the limit for a gap from memory")),),
    unpublished="no printed numbers were found; the tests add up the layers numerically",
    slips=(
        Slip(
            "pi*d_hole*g*H_o*s_gap**2/(12*nu*L_gap)",
            "The gap counts three times over: once for its area, twice for the drag of its walls. Take it to the power three.",
        ),
        Slip(
            "pi*d_hole/2*g*H_o*s_gap**3/(12*nu*L_gap)", "You used the radius. The gap goes all round the hole: pi times its diameter. Put in the full diameter."
        ),
        Slip("pi*d_hole*s_gap*sqrt(2*g*H_o)", "That is free outflow. In so narrow a gap the walls hold the water back. Use the law of a narrow gap."),
    ),
    ranges={"s_gap": ("0.05 mm", "0.25 mm"), "H_o": ("100 mm", "500 mm")},
    remark="Twice the gap leaks eight times as much. A wide gap leaks like an opening; the smaller of the two is nearer to the truth. Seal the fitting on both sides.",
)
