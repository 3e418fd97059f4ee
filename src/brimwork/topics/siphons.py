"""Siphons and filling: what a pipe lets out of a vessel, the time to fill, and what a bucket tells."""

from brimwork.formula import Formula, Published, Slip
from brimwork.laws import area_of_a_pipe, continuity_in_a_pipe, emptying
from brimwork.sources import BERNOULLI, CENGEL, MUNSON, OPENSTAX, OPENSTAX_MEMORY, SCHASCHKE, SUBRAMANYA
from brimwork.steps import Law, Ode, Solve, Step, Take

_FIRST_FLOW = (
    "You let the first flow run to the end. As the head falls the flow falls with it, so it takes longer. Use the law that lets the flow fall with the head."
)
_START = ("H_2 = H_1", "t_drain = 0")

# --- through a pipe -----------------------------------------------------------------------------------------------------------------

_PIPE = "sqrt(f*L_pipe/d_pipe + K + 1)"

siphon_flow = Formula(
    name="flow of a siphon",
    result="Q",
    equals=f"pi/4*d_pipe**2*sqrt(2*g*H_s)/{_PIPE}",
    steps=(
        Law(
            "energy: the head makes the speed, and pays for friction and fittings",
            "H_s = (f*L_pipe/d_pipe + K + 1)*v**2/(2*g)",
            BERNOULLI.at("section on steady flow"),
        ),
        Solve("the speed", of="H_s", relation=f"v = sqrt(2*g*H_s)/{_PIPE}"),
        area_of_a_pipe,
        continuity_in_a_pipe,
        Step("put both in"),
    ),
    unpublished="the time in which it fills a vessel is checked under time to fill",
    slips=(
        Slip("pi/4*d_pipe**2*sqrt(2*g*H_s)", "You left out friction and fittings: a long thin tube lets far less through."),
        Slip(f"pi*d_pipe**2*sqrt(2*g*H_s)/{_PIPE}", "You took the bore for the radius: four times too much came out."),
        Slip(
            "pi/4*d_pipe**2*sqrt(2*g*H_s)/sqrt(f*L_pipe/d_pipe + K)",
            "The leaving speed costs its own velocity head: that is the 1 under the root. Add it there.",
        ),
    ),
    ranges={"L_pipe": ("1 m", "4 m"), "K": ("0.5", "3"), "d_pipe": ("10 mm", "25 mm")},
    remark="H_s counts down to the mouth in air, or to the water if the mouth is under it. A delivery hose whose mouth lies under water drains the vessel "
    "like this when the pump stops. Never start a siphon by mouth.",
)

crest_of_a_siphon = Formula(
    name="greatest height of a siphon's crest",
    result="z_crest",
    equals="(p_air - p_boil)/(rho*g) - (1 + f*L_up/d_pipe + K_up)*v**2/(2*g)",
    steps=(
        Law(
            "energy: the air pushes the water up to the crest, makes its speed, and pays for friction and fittings on the way",
            "p_air/(rho*g) = p_crest/(rho*g) + z_crest + (1 + f*L_up/d_pipe + K_up)*v**2/(2*g)",
            BERNOULLI.at("section on steady flow"),
            holds="steady flow of water without air",
        ),
        Take("the higher the crest, the less pressure is left there; the water comes apart where it boils", "p_crest = p_boil"),
        Solve("solve for the height"),
    ),
    published=(
        Published(
            "p_air=14.7 psi, p_boil=0.256 psi, rho=62.4 lb/ft3, v=35.9 ft/s, f=0, L_up=1 ft, d_pipe=1 in, K_up=0, g=32.2 ft/s2",
            "13.2 ft",
            0.01,
            MUNSON.at("Ex 3.10: a siphon over a hill, without losses"),
            note="28.2 ft above the bottom of a tank with 15 ft of water; the book rounds the difference of pressures to 14.4 psi",
        ),
        Published(
            "p_air=101.3 kPa, p_boil=0 Pa, rho=1000 kg/m3, v=0 m/s, f=0, L_up=1 m, d_pipe=20 mm, K_up=0, g=9.8 m/s2",
            "10.3 m",
            5e-3,
            OPENSTAX_MEMORY.at("height of water that the air holds up"),
        ),
    ),
    slips=(
        Slip("p_air/(rho*g) - (1 + f*L_up/d_pipe + K_up)*v**2/(2*g)", "You let the pressure fall to nothing. Water boils before that, the warmer the sooner."),
        Slip("(p_air - p_boil)/(rho*g)", "That is for water at rest. Speed and friction take their part of the push of the air."),
        Slip("(p_air - p_boil)/(rho*g) - v**2/(2*g)", "You left out friction and fittings on the way up to the crest."),
        Slip("(p_air - p_boil)/(rho*g) + (1 + f*L_up/d_pipe + K_up)*v**2/(2*g)", "Speed and friction cost height: take them off."),
    ),
    ranges={"d_pipe": ("10 mm", "25 mm"), "v": ("0.5 m/s", "2.5 m/s")},
    rises=("p_air", "d_pipe"),
    falls=("p_boil", "f", "L_up", "K_up", "v"),
    remark="Air comes out of the water well before that: common practice, no source, stays below 7 m. A bowl's siphon never comes near this limit. It breaks "
    "when air gets in: at a mouth that comes above the water, or at a small hole in the delivery pipe, just under the level of the rim. The table of water gives p_boil.",
)

drain_through_a_pipe = Formula(
    name="time to drain through a pipe",
    result="t_drain",
    equals=f"2*A_tank*{_PIPE}*(sqrt(H_1) - sqrt(H_2))/(pi/4*d_pipe**2*sqrt(2*g))",
    steps=(
        Take("at each head passes, as through a siphon", f"Q = pi/4*d_pipe**2*sqrt(2*g*H_2)/{_PIPE}"),
        emptying,
        Ode("solve: at the first head no time has gone", "", at=(_START,)),
    ),
    where=("H_2 < H_1",),
    published=(
        Published(
            "A_tank=4 m2, d_pipe=25 mm, L_pipe=20 m, f=0.02, K=1.5, H_1=2.0 m, H_2=0.5 m, g=9.81 m/s2",
            "11190.29 s",
            1e-4,
            SCHASCHKE.at("Worked example 8.13"),
            note="Fanning's 0.005 is Darcy's 0.02; its 2.5 includes the leaving speed",
        ),
    ),
    slips=(
        Slip(
            "2*A_tank*sqrt(f/4*L_pipe/d_pipe + K + 1)*(sqrt(H_1) - sqrt(H_2))/(pi/4*d_pipe**2*sqrt(2*g))",
            "You used Fanning's friction factor, a quarter of Darcy's. Multiply the factor by four.",
        ),
        Slip(f"A_tank*{_PIPE}*(H_1 - H_2)/(pi/4*d_pipe**2*sqrt(2*g*H_1))", _FIRST_FLOW),
        Slip("2*A_tank*(sqrt(H_1) - sqrt(H_2))/(pi/4*d_pipe**2*sqrt(2*g))", "You left out friction and fittings: it takes much longer."),
    ),
    remark="Heads count down to the mouth of the pipe. One friction factor for all of it, though it grows a little as the flow falls.",
)

# --- filling and buckets ------------------------------------------------------------------------------------------------------------

filling_time = Formula(
    name="time to fill",
    result="t_fill",
    equals="V/Q",
    steps=(Take("a steady flow brings in that time", "V = Q*t_fill"), Solve("solve for the time", of="V")),
    published=(
        Published("V=80000 L, Q=60 L/min", "22 h", 0.012, OPENSTAX.at("chapter on flow rate, problem: filling a pool"), note="22.2 h, printed in two figures"),
        Published(
            "V=4 L, H_s=0.75 m, d_pipe=5 mm, L_pipe=1 m, f=0, K=0, g=9.81 m/s2",
            "53.1 s",
            1e-3,
            CENGEL.at("Ex 5-7: a siphon without losses"),
            after=(siphon_flow,),
        ),
    ),
    slips=(Slip("Q/V", "The two have changed places: a bigger flow fills in less time."),),
    remark="Fill through an air gap, or lift the hose out: a hose left under water can draw dirty water back into the mains.",
)

bucket_test = Formula(
    name="flow by a bucket",
    result="Q",
    equals="V/t_fill",
    inverse_of=filling_time,
    published=(Published("V=80000 L, t_fill=22 h", "60 L/min", 0.012, OPENSTAX.at("chapter on flow rate, problem: filling a pool, turned round")),),
    slips=(
        Slip("V*t_fill", "You multiplied. Flow is volume for each unit of time: divide."),
        Slip("t_fill/V", "Upside down: a bucket that fills sooner means more flow."),
    ),
    ranges={"V": ("5 L", "20 L"), "t_fill": ("0.15 min", "1 min")},
    remark="Do it three times and take the mean. It counts for more than any curve or formula.",
)

coefficient_by_a_bucket = Formula(
    name="discharge coefficient by a bucket",
    result="C_d",
    equals="V/(t_fill*A_o*sqrt(2*g*H_o))",
    steps=(
        bucket_test,
        Take("compare with what free fall through the head would send through the whole opening", "C_d = Q/(A_o*sqrt(2*g*H_o))"),
        Step("put the flow of the bucket in"),
    ),
    published=(
        Published(
            "V=4.707 L, t_fill=1 s, A_o=12.566371 cm2, H_o=2 m, g=9.81 m/s2",
            "0.598",
            1e-3,
            SUBRAMANYA.at("Ex 13.1, its flow in a second"),
            note="0.63 times 0.949 there",
        ),
    ),
    slips=(
        Slip("V/(t_fill*A_o*sqrt(g*H_o))", "The 2 is missing: speed is the root of two g times the head."),
        Slip("t_fill*A_o*sqrt(2*g*H_o)/V", "Upside down: the flow that came, over the flow of free fall."),
    ),
    ranges={"V": ("5 L", "20 L"), "t_fill": ("0.15 min", "1 min")},
    rises=("V",),
    falls=("t_fill", "A_o", "H_o"),
    remark="Keep the level over the opening steady while the bucket fills. More than 1 means that something was misread.",
)
