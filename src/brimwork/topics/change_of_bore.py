"""Changes of bore: where speed and pressure change together, what widenings and narrowings lose, and whose speed a loss coefficient belongs to."""

from brimwork.formula import Formula, Published, Slip
from brimwork.laws import continuity_at_a_change, energy_at_a_change, momentum_at_a_widening
from brimwork.sources import CRANE, EPANET_MANUAL, FLUIDS_PIPES, SUBRAMANYA
from brimwork.steps import Eliminate, Solve, Step, Take

_WIDER = ("d_1 < d_2",)

change_of_basis = Formula(
    name="loss coefficient for another bore",
    result="K_2",
    equals="K_1*(d_2/d_1)**4",
    steps=(
        Take("the fitting loses so many velocity heads of the first bore", "h_m = K_1*v_1**2/(2*g)"),
        Take("the same loss in velocity heads of the second bore", "K_2 = h_m/(v_2**2/(2*g))"),
        continuity_at_a_change,
        Solve("the speed in the second bore", relation="v_2 = v_1*d_1**2/d_2**2"),
        Step("put it in: the speeds go with the square of the bores, velocity heads with the fourth power"),
    ),
    published=(
        Published("K_1=32.68875692997804, d_1=0.01 m, d_2=0.02 m", "523.0201108796487", 1e-9, FLUIDS_PIPES.at("change_K_basis(32.688..., 0.01, 0.02)")),
    ),
    slips=(
        Slip(
            "K_1*(d_2/d_1)**2",
            "Speed goes with the square of the bores, and the loss with the square of the speed: the fourth power. Take the ratio of the bores to the fourth power.",
        ),
        Slip("K_1*(d_1/d_2)**4", "Upside down: in the wider pipe a velocity head is smaller, so it takes more of them."),
        Slip("K_1", "A loss coefficient belongs to the speed in its own bore. In another bore the number changes."),
    ),
)

pressure_after_widening = Formula(
    name="pressure after a sudden widening",
    result="p_2",
    equals="p_1 + rho*v_2*(v_1 - v_2)",
    steps=(momentum_at_a_widening, Solve("solve for the pressure behind")),
    published=(
        Published(
            "p_1=20 kPa, rho=997.9613 kg/m3, v_1=2.652582 m/s, v_2=1.178925 m/s",
            "21.73 kPa",
            1e-3,
            SUBRAMANYA.at("Ex 11.1"),
            note="450 L/min from 60 mm to 90 mm, 9.79 kN/m3 over 9.81 m/s2",
        ),
    ),
    where=("v_2 < v_1",),
    slips=(
        Slip(
            "p_1 + rho/2*(v_1**2 - v_2**2)",
            "That keeps all the energy. Behind a sudden widening the water whirls and some is lost. Take off the loss: use rho times v_2 times the difference of the speeds.",
        ),
        Slip("p_1 - rho*v_2*(v_1 - v_2)", "The stream slows down, so the pressure rises."),
    ),
)

head_lost_at_widening = Formula(
    name="head lost at a sudden widening",
    result="h_m",
    equals="(v_1 - v_2)**2/(2*g)",
    steps=(momentum_at_a_widening, energy_at_a_change, Eliminate("take the pressures out of both balances", out=("p_1",))),
    published=(
        Published(
            "v_1=2.652582 m/s, v_2=1.178925 m/s, g=9.81 m/s2", "0.1112 m", 6e-3, SUBRAMANYA.at("Ex 11.1"), note="from its pressures, printed to 0.01 kPa"
        ),
    ),
    where=("v_2 < v_1",),
    slips=(
        Slip(
            "(v_1**2 - v_2**2)/(2*g)", "You took the difference of the velocity heads. Part of it comes back as pressure: square the difference of the speeds."
        ),
        Slip("v_1**2/(2*g)", "That is an outlet into standing water. Behind a widening the water still moves."),
    ),
)

widening_coefficient = Formula(
    name="loss coefficient of a sudden widening",
    result="K_1",
    equals="(1 - (d_1/d_2)**2)**2",
    steps=(
        head_lost_at_widening,
        continuity_at_a_change,
        Solve("the speed in the wider bore", relation="v_2 = v_1*d_1**2/d_2**2"),
        Take("in velocity heads of the narrow bore", "K_1 = h_m/(v_1**2/(2*g))"),
        Step("divide"),
    ),
    where=_WIDER,
    published=(
        Published("d_1=0.06 m, d_2=0.09 m", "0.308642", 1e-6, FLUIDS_PIPES.at("diffuser_sharp(0.06, 0.09)")),
        Published("d_1=25 mm, d_2=25 m", "1", 1e-5, EPANET_MANUAL.at("Table 3.3, exit"), note="a pool is a widening without end"),
    ),
    slips=(
        Slip("1 - (d_1/d_2)**2", "The difference of the speeds is squared."),
        Slip("(1 - d_1/d_2)**2", "Speed goes with the area: square the ratio of the bores first."),
        Slip(
            "1 - (d_1/d_2)**4",
            "You took the difference of the velocity heads. Part of it comes back as pressure. Take the difference of the speeds first, then square it.",
        ),
    ),
)

# --- narrowings ---------------------------------------------------------------------------------------------------------------------

_NARROWER = ("d_2 < d_1",)
_BORES = {"d_1": ("26 mm", "50 mm"), "d_2": ("13 mm", "25 mm")}
_NARROW_FIT = f"to measured narrowings ({CRANE.at('resistance of a change of bore, through fluids')}); for the speed in the narrower bore"

contraction_coefficient = Formula(
    name="loss coefficient of a sudden narrowing",
    result="K_2",
    equals="(1 - (d_2/d_1)**2)/2",
    fitted=_NARROW_FIT,
    where=_NARROWER,
    published=(
        Published("d_1=0.09 m, d_2=0.06 m", "0.2777778", 1e-6, FLUIDS_PIPES.at("contraction_sharp(0.09, 0.06, method='Crane')")),
        Published(
            "d_1=25 m, d_2=25 mm", "0.5", 1e-5, EPANET_MANUAL.at("Table 3.3, square entrance"), note="an entrance is a narrowing from a bore without end"
        ),
    ),
    slips=(
        Slip("(1 - (d_2/d_1)**2)**2", "That is a sudden widening. Where water draws together another law holds. Halve one less the ratio of the areas."),
        Slip("1 - (d_2/d_1)**2", "The half is missing."),
        Slip("(1 - d_2/d_1)/2", "Speed goes with the area: square the ratio of the bores."),
    ),
    ranges=_BORES,
    rises=("d_1",),
    falls=("d_2",),
    remark="Most of it is lost behind the step, where the drawn-in stream widens again. Rounding the step takes nearly all of it away.",
)

reducer_coefficient = Formula(
    name="loss coefficient of a reducer",
    result="K_2",
    equals="0.8*sin(a_red/2)*(1 - (d_2/d_1)**2)",
    fitted=_NARROW_FIT,
    where=(*_NARROWER, "a_red < 1.0001*pi/4"),
    published=(
        Published("d_1=50 mm, d_2=25 mm, a_red=30 deg", "0.155291427", 1e-8, FLUIDS_PIPES.at("contraction_conical(0.05, 0.025, angle=30, method='Crane')")),
        Published("d_1=40 mm, d_2=25 mm, a_red=20 deg", "0.084653487", 1e-8, FLUIDS_PIPES.at("contraction_conical(0.04, 0.025, angle=20, method='Crane')")),
    ),
    slips=(
        Slip("0.8*sin(a_red)*(1 - (d_2/d_1)**2)", "The sine takes half of the full angle."),
        Slip("(1 - (d_2/d_1)**2)/2", "That is a sudden step. A cone guides the water, and loses less. Multiply by 0.8 times the sine of half its angle."),
    ),
    ranges=_BORES,
    rises=("d_1", "a_red"),
    falls=("d_2",),
    remark="For cones up to 45 degrees; steeper ones lose nearly what a sudden step does.",
)
