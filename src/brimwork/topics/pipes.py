"""Pipes: speed, the head that friction and fittings take, and all the head that a flow needs from the reservoir to the feature."""

from brimwork import tables
from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import area_of_a_pipe, balance_in_a_pipe, continuity_in_a_pipe, energy_of_a_lift, velocity_head_in_a_pipe
from brimwork.sources import CENGEL, CRANE, FLUIDS_PIPES, OPENSTAX, SUBRAMANYA
from brimwork.steps import Eliminate, Step, Take

_RADIUS = "The pipe area is too big by four, so the speed is too low. With the diameter, the area is pi d squared over 4. Use a quarter of pi."
_FANNING = "The answer is exactly four times too big. The friction factor here already has the 4 built in; do not multiply by 4 again."
_NOT_SQUARED = "The units do not come out as metres. Loss goes with speed squared, so twice the speed gives four times the loss. Square the speed."
_NO_2 = "The answer is twice too big. Velocity head is speed squared over two g: keep the 2."
_NO_FACTOR_G = "You left out gravity: a loss in metres is the energy over g."

# --- speed ---------------------------------------------------------------------------------------------------------------------------

speed_in_a_pipe = Formula(
    name="speed in a pipe",
    result="v",
    equals="4*Q/(pi*d_pipe**2)",
    steps=(area_of_a_pipe, continuity_in_a_pipe, Eliminate("divide the flow by the area", out=("A_pipe",))),
    published=(
        Published("Q=0.5 L/s, d_pipe=1.8 cm", "1.96 m/s", 3e-3, OPENSTAX.at("module m42205, hose of radius 0.900 cm")),
        Published("Q=0.5 L/s, d_pipe=0.5 cm", "25.5 m/s", 2e-3, OPENSTAX.at("module m42205, nozzle of radius 0.250 cm")),
    ),
    slips=(
        Slip("Q/(pi*d_pipe**2)", _RADIUS),
        Slip("Q*pi/4*d_pipe**2", "You multiplied by the area. A smaller pipe makes the same flow faster: divide."),
        Slip("4*Q/(pi*d_pipe)", "The bore is squared in the area of a circle, and you used it once."),
    ),
    rises=("Q",),
    falls=("d_pipe",),
)

bore_for_a_speed = Formula(
    name="bore for a speed",
    result="d_pipe",
    equals="sqrt(4*Q/(pi*v))",
    inverse_of=speed_in_a_pipe,
    published=(Published("Q=0.5 L/s, v=1.96 m/s", "1.8 cm", 2e-3, OPENSTAX.at("module m42205, hose of radius 0.900 cm, turned round")),),
    slips=(
        Slip("sqrt(Q/(pi*v))", "That is the radius. The bore is twice that."),
        Slip("4*Q/(pi*v)", "That is the bore squared: the root is missing. Take the root."),
    ),
    ranges={"v": ("0.6 m/s", "1.5 m/s")},
    rises=("Q",),
    falls=("v",),
)

# --- friction ------------------------------------------------------------------------------------------------------------------------

friction_head = Formula(
    name="head lost to friction",
    result="h_f",
    equals="f*L_pipe/d_pipe*v**2/(2*g)",
    steps=(
        balance_in_a_pipe,
        Take("call the shear at the wall, in eighths of density times speed squared, the friction factor", "f = 8*tau_w/(rho*v**2)"),
        Eliminate("put the shear in", out=("tau_w",)),
    ),
    published=(Published("f=0.0172, L_pipe=60 m, d_pipe=50 mm, Q=6 L/s, g=9.81 m/s2", "9.85 m", 5e-3, CENGEL.at("Ex 8-3"), after=(speed_in_a_pipe,)),),
    slips=(
        Slip("4*f*L_pipe/d_pipe*v**2/(2*g)", _FANNING),
        Slip("f*L_pipe/d_pipe*v**2/g", _NO_2),
        Slip("f*L_pipe/d_pipe*v/(2*g)", _NOT_SQUARED),
        Slip("f*L_pipe/d_pipe*v**2/2", _NO_FACTOR_G),
        Slip("f*L_pipe*v**2/(2*g)", "You left the bore out: friction counts by how many bores long the pipe is."),
    ),
    rises=("f", "L_pipe", "v"),
    falls=("d_pipe",),
)

friction_head_by_flow = Formula(
    name="head lost to friction by flow",
    result="h_f",
    equals="8*f*L_pipe*Q**2/(pi**2*g*d_pipe**5)",
    steps=(speed_in_a_pipe, friction_head, Step("put the speed in")),
    published=(Published("f=0.0172, L_pipe=60 m, d_pipe=50 mm, Q=6 L/s, g=9.81 m/s2", "9.85 m", 5e-3, CENGEL.at("Ex 8-3")),),
    slips=(
        Slip("f*L_pipe*Q**2/(2*pi**2*g*d_pipe**5)", _RADIUS),
        Slip("16*f*L_pipe*Q**2/(pi**2*g*d_pipe**5)", _NO_2),
        Slip("4*f*L_pipe/d_pipe*Q/(pi*d_pipe**2)/(2*g)", _NOT_SQUARED),
        Slip("32*f*L_pipe*Q**2/(pi**2*g*d_pipe**5)", _FANNING),
        Slip("8*f*L_pipe*Q**2/(pi**2*d_pipe**5)", _NO_FACTOR_G),
    ),
    rises=("f", "L_pipe", "Q"),
    falls=("d_pipe",),
)

# --- fittings ------------------------------------------------------------------------------------------------------------------------

fitting_head = Formula(
    name="head lost in fittings",
    result="h_m",
    equals="K*v**2/(2*g)",
    steps=(
        velocity_head_in_a_pipe,
        Take("each fitting takes its own number of velocity heads; their sum is the loss coefficient", "h_m = K*h_v"),
        Step("put the velocity head in"),
    ),
    published=(
        Published("K=6.3, Q=43.8 L/s, d_pipe=100 mm, g=9.81 m/s2", "10 m", 3e-3, SUBRAMANYA.at("Ex 11.5"), after=(speed_in_a_pipe,)),
        Published("K=10, v=1.5 m/s", "1.1471807 m", 1e-6, FLUIDS_PIPES.at("head_from_K(10, 1.5)")),
    ),
    slips=(
        Slip("K*v**2/g", "The 2 is missing: velocity head is speed squared over two g. Halve it."),
        Slip("K*v/(2*g)", _NOT_SQUARED),
        Slip("(K + 1)*v**2/(2*g)", "You counted the leaving velocity head as well as the exit loss: they are the same metre, counted twice. Count it once."),
    ),
    rises=("K", "v"),
)

loss_coefficient = Formula(
    name="loss coefficient for a head to lose",
    result="K",
    equals="2*g*h_m/v**2",
    inverse_of=fitting_head,
    published=(Published("h_m=10 m, Q=43.8 L/s, d_pipe=100 mm, g=9.81 m/s2", "6.3", 3e-3, SUBRAMANYA.at("Ex 11.5, turned round"), after=(speed_in_a_pipe,)),),
    slips=(
        Slip("g*h_m/v**2", "The 2 is missing: velocity head is speed squared over two g. Halve it."),
        Slip("2*g*h_m/v", "The speed is squared: at twice the speed the same valve loses four times as much."),
        Slip("v**2/(2*g*h_m)", "Upside down: a valve that must lose more has the larger coefficient."),
    ),
    ranges={"v": ("0.4 m/s", "2 m/s")},
    rises=("h_m",),
    falls=("v",),
    remark="What a valve must be closed to, so that it takes just this head away.",
)

equivalent_length = Formula(
    name="equivalent length of fittings",
    result="L_eq",
    equals="K*d_pipe/f",
    steps=(
        fitting_head,
        Take("so many metres of the pipe itself would lose as much", "L_eq = h_m/(f/d_pipe*v**2/(2*g))"),
        Step("the velocity head cancels"),
    ),
    published=(
        Published("K=6, d_pipe=3 mm, f=0.018", "1 m", 1e-6, FLUIDS_PIPES.at("L_from_K(K=6, D=0.003, fd=0.018)")),
        Published(
            "K=0.57, f=0.019, d_pipe=2 in",
            "60 in",
            1e-6,
            CRANE.at("appendix A: a standard elbow is 30 bores, f is 0.019 for 2 in (from memory)"),
            note="30 bores",
        ),
    ),
    slips=(
        Slip("K*f*d_pipe", "The friction factor divides: the smoother the pipe, the more metres of it one fitting is worth."),
        Slip("K*d_pipe/(4*f)", "The 4 belongs to Fanning's friction factor, and this is Darcy's. Divide by the friction factor as it is."),
    ),
    rises=("K", "d_pipe"),
    falls=("f",),
)

# --- what the pump must overcome -----------------------------------------------------------------------------------------------------

total_head_from_parts = Formula(
    name="total dynamic head from its parts",
    result="H_t",
    equals="z_s + h_f + h_m",
    defined="the energy that a lift with losses takes, for each weight of water: lift, friction and fittings",
    by_hand=(ByHand("z_s=1.2 m, h_f=0.5 m, h_m=0.3 m", "1.2 + 0.5 + 0.3", "2 m"),),
    unpublished="a sum of three heads; the whole chain is checked under total dynamic head",
    slips=(
        Slip("z_s", "That is the lift alone. Water that moves also loses head in pipe and fittings. Add both losses."),
        Slip("h_f + h_m", "This is only the rubbing loss. The pump must also lift the water, so add the height from water surface to outlet."),
        Slip("z_s + h_f", "The pipe is in, but bends, valves and the outlet are not."),
    ),
    rises=("z_s", "h_f", "h_m"),
)

total_dynamic_head = Formula(
    name="total dynamic head",
    result="H_t",
    equals="z_s + 8*Q**2/(pi**2*g*d_pipe**4)*(f*L_pipe/d_pipe + K)",
    steps=(
        speed_in_a_pipe,
        friction_head,
        fitting_head,
        energy_of_a_lift,
        Step("both losses are so many velocity heads: take them together", "H_t = z_s + (f*L_pipe/d_pipe + K)*v**2/(2*g)"),
        Step("the velocity head, with the speed that the flow has in this bore", "v**2/(2*g) = 8*Q**2/(pi**2*g*d_pipe**4)"),
        Step("put it in"),
    ),
    published=(
        Published("z_s=4 m, Q=6 L/s, d_pipe=50 mm, L_pipe=89 m, f=0.0315, K=2.36, g=9.81 m/s2", "31.8 m", 1e-3, CENGEL.at("Ex 8-8, level of the reservoir")),
    ),
    slips=(
        Slip(
            "8*Q**2/(pi**2*g*d_pipe**4)*(f*L_pipe/d_pipe + K)",
            "This is only the rubbing loss. The pump must also lift the water, so add the height from water surface to outlet.",
        ),
        Slip(
            "z_s + 8*f*L_pipe*Q**2/(pi**2*g*d_pipe**5)",
            "The pipe is in, but bends, valves and the outlet are not. Add their loss numbers before you multiply by the speed term.",
        ),
        Slip("z_s", "That is the lift alone. Water that moves also loses head in pipe and fittings. Add both losses."),
        Slip(
            "z_s + h_sub + 8*Q**2/(pi**2*g*d_pipe**4)*(f*L_pipe/d_pipe + K)",
            "You measured the lift from the pump. Water already stands above it and helps, so measure from the water surface.",
            also_given=("h_sub",),
        ),
        Slip(
            "z_s - 8*Q**2/(pi**2*g*d_pipe**4)*(f*L_pipe/d_pipe + K)",
            "You took the losses off the lift. They come on top: the pump has to overcome both.",
        ),
        Slip(
            "L_pipe + 8*Q**2/(pi**2*g*d_pipe**4)*(f*L_pipe/d_pipe + K)",
            "You took the length of the hose for the lift. Only the height between water surface and outlet counts. Put in the static lift.",
        ),
    ),
    rises=("z_s", "Q", "f", "L_pipe", "K"),
    falls=("d_pipe",),
)

system_constant = Formula(
    name="losses for each square of the flow",
    result="k_sys",
    equals="8/(pi**2*g*d_pipe**4)*(f*L_pipe/d_pipe + K)",
    steps=(
        total_dynamic_head,
        Take("what comes on top of the lift, over the square of the flow", "k_sys = (H_t - z_s)/Q**2"),
        Step("the flow cancels, as far as the friction factor stays the same"),
    ),
    published=(
        Published(
            "Q=6 L/s, d_pipe=50 mm, L_pipe=89 m, f=0.0315, K=2.36, g=9.81 m/s2",
            "772222 s2/m5",
            1e-3,
            CENGEL.at("Ex 8-8"),
            note="printed: 31.8 m less 4 m, at 6 L/s",
        ),
    ),
    slips=(
        Slip("8/(pi**2*g*d_pipe**4)*f*L_pipe/d_pipe", "The pipe is in, but bends, valves and the outlet are not."),
        Slip("8/(pi**2*g*d_pipe**4)*(f*L_pipe + K)", "Friction counts by how many bores long the pipe is: divide its length by the bore."),
        Slip("16/(pi**2*g*d_pipe**4)*(f*L_pipe/d_pipe + K)", _NO_2),
    ),
    rises=("f", "L_pipe", "K"),
    falls=("d_pipe",),
)

# --- procedures ----------------------------------------------------------------------------------------------------------------------


def sum_of_fittings(counts: dict[str, float]) -> float:
    """Loss coefficient of {"short elbow": 2, "exit": 1} together, by the table of fittings. Raises InputError for a name that is not there."""
    return sum(count * tables.fitting(name).value for name, count in counts.items())
