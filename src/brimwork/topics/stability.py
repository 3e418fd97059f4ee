"""Stability: tipping by a push and by wind, foam under water and the pebbles that hold it down, and tanks that float.

A piece that tips or a block that pops up can hurt people. Pushes and factors are judgement: where people gather, or a piece is tall, an
engineer decides.
"""

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import ballast_balance, buoyancy_of_foam, buoyancy_of_tank, moment_of_weight, wind_brought_to_rest
from brimwork.sources import ASCE_FORM, EN_1991_4, FEMA_259, NIST_811
from brimwork.steps import Solve, Step, Take

_JUDGED = "Check it full and empty: the water helps only while it is there. The push to allow for is our own choice; where people gather an engineer decides."
_OWN_MOMENTS = "own statics: two moments about one edge; no printed example in small sizes was found"
_NO_LIFT = "Stone under water is lifted as well. Take the density of water off that of the stone."

# --- tipping ------------------------------------------------------------------------------------------------------------------------

vessel_weight = Formula(
    name="weight of a vessel with its water",
    result="F_w",
    equals="g*(m_v + rho*V_v)",
    defined="weight is mass times gravity (Newton, law II): vessel and water together",
    by_hand=(ByHand("m_v=90 kg, V_v=60 L, rho=1000 kg/m3", "9.80665*(90 + 1000*0.06)", "1471 N"),),
    published=(Published("m_v=1 kg, V_v=0 L, rho=1000 kg/m3", "9.80665 N", 1e-9, NIST_811.at("kilogram-force")),),
    slips=(
        Slip("m_v + rho*V_v", "That is the mass. Weight is mass times gravity, in newtons."),
        Slip("g*m_v", "That is the empty vessel. Add the water it holds, if it is full at the time."),
        Slip("g*m_v + rho*V_v", "The water is still in kilograms. Multiply it by gravity too."),
    ),
)

tipping_factor = Formula(
    name="tipping factor",
    result="f_tip",
    equals="F_w*B_base/(2*F_push*h_push)",
    steps=(
        moment_of_weight,
        Take("the push turns it the other way, with its height as arm", "M_over = F_push*h_push"),
        Take("compare what holds with what tips", "f_tip = M_hold/M_over"),
        Step("put both in"),
    ),
    unpublished=_OWN_MOMENTS,
    slips=(
        Slip("F_w*B_base/(F_push*h_push)", "You gave the weight the whole base as its arm. It acts in the middle: half the base. Use half of the base."),
        Slip("F_push*h_push/(F_w*B_base/2)", "Upside down: a factor below 1 must mean that it tips."),
        Slip("F_w/F_push", "You compared forces. What counts is force times arm. Multiply each force by its arm."),
    ),
    ranges={"B_base": ("300 mm", "600 mm")},
    remark=_JUDGED,
)

tipping_factor_from_offset = Formula(
    name="tipping factor from the eccentricity",
    result="f_tip",
    equals="B_base/(2*e_off)",
    steps=(
        moment_of_weight,
        Take("the push turns it with its height as arm", "M_over = F_push*h_push"),
        Take("this moves the line of the load off the middle", "e_off = M_over/F_w"),
        Take("compare what holds with what tips", "f_tip = M_hold/M_over"),
        Step("both are weight times a distance: half the base, and the eccentricity"),
    ),
    unpublished=_OWN_MOMENTS,
    slips=(Slip("B_base/e_off", "From the middle to the edge is half the base."),),
    ranges={"e_off": ("50 mm", "300 mm")},
    remark="At the edge of the kern the factor is 3. At 1.5 the load stands a third of the width off the middle, and half of the base has lifted.",
)

base_on_feet = Formula(
    name="width of a base on feet",
    result="B_base",
    equals="d_feet*cos(pi/N_feet)",
    steps=(
        Take("it tips over the line between two neighbouring feet, some way from the middle", "x_b = d_feet/2*cos(pi/N_feet)"),
        Take("a base tips over its edge at half its width, so to the same effect", "B_base = 2*x_b"),
        Step("put it in"),
    ),
    unpublished="it follows from the shape alone: the distance from the middle of a regular figure to its side",
    slips=(
        Slip("d_feet", "On separate feet it does not tip over the circle, but over the line between two feet, nearer the middle."),
        Slip("d_feet*cos(2*pi/N_feet)", "Between two feet the half angle counts: pi over their number. Halve the angle."),
    ),
    remark="Three feet leave half of the circle, four about 70 %.",
)

# --- wind ---------------------------------------------------------------------------------------------------------------------------

wind_pressure = Formula(
    name="wind pressure",
    result="p_wind",
    equals="k_e*rho_air*v_wind**2/2",
    steps=(
        wind_brought_to_rest,
        Take("height, ground and direction make it more or less by a factor", "p_wind = k_e*p_dyn"),
        Step("put it in"),
    ),
    published=(
        Published(
            "k_e=0.66113, rho_air=1.226 kg/m3, v_wind=72.2222 m/s", "2113.92 Pa", 1e-4, ASCE_FORM.at("260 km/h"), note="0.613 x 0.7778 x 1 x 0.85 x 72.2222^2"
        ),
        Published("k_e=1, rho_air=1.25 kg/m3, v_wind=1 m/s", "0.625 Pa", 1e-9, EN_1991_4.at("air density 1.25 kg/m3")),
    ),
    slips=(
        Slip("k_e*rho_air*v_wind**2", "The half is missing: moving air brought to rest presses with half its density times the square of its speed."),
        Slip("k_e*rho_air*v_wind/2", "The speed is squared: twice the wind presses four times as hard."),
        Slip("k_e*rho_air*(3.6*v_wind)**2/2", "You put kilometres per hour in. The formula takes metres per second. Divide by 3.6 first."),
    ),
    remark="The wind speed to design for comes from the local code.",
)

wind_tipping_factor = Formula(
    name="tipping factor in wind",
    result="f_wind",
    equals="F_w*B_base/(p_wind*c_f*b_face*h_face**2)",
    steps=(
        moment_of_weight,
        Take("the wind pushes on the whole face", "F_wind = p_wind*c_f*b_face*h_face"),
        Take("at half its height", "M_over = F_wind*h_face/2"),
        Take("compare what holds with what tips", "f_wind = M_hold/M_over"),
        Step("put all in"),
    ),
    unpublished=_OWN_MOMENTS,
    slips=(
        Slip(
            "F_w*B_base/(2*p_wind*c_f*b_face*h_face**2)",
            "You let the wind act at the top. Spread over the face it acts half-way up. Use half of the height as the arm.",
        ),
        Slip(
            "2*F_w*B_base/(p_wind*c_f*b_face*h_face**2)",
            "You gave the weight the whole base as its arm. It acts in the middle: half the base. Use half of the base.",
        ),
        Slip("F_w*B_base/(p_wind*b_face*h_face**2)", "You left out the force coefficient of the shape."),
    ),
    remark=_JUDGED,
)

# --- foam under water ---------------------------------------------------------------------------------------------------------------

foam_uplift = Formula(
    name="uplift of foam",
    result="F_up",
    equals="g*V_f*(rho - rho_f)",
    steps=(
        buoyancy_of_foam,
        Take("the foam weighs a little itself", "F_w = g*rho_f*V_f"),
        Take("the rest lifts", "F_up = F_buoy - F_w"),
        Step("put both in"),
    ),
    unpublished="the same law as the net uplift of a tank under water, which is checked",
    slips=(
        Slip(
            "g*V_f*rho_f",
            "That is the weight of the foam. It is lifted by the weight of the water that it pushes aside. Use the density of water less that of foam.",
        ),
        Slip("V_f*(rho - rho_f)", "That is a mass. A force is mass times gravity, in newtons."),
        Slip("g*V_f*(rho + rho_f)", "The foam's own weight helps to hold it down: take it off."),
    ),
)

pebbles_under_water = Formula(
    name="weight of pebbles under water",
    result="F_peb",
    equals="g*V_p*(1 - n_s)*(rho_s - rho)",
    steps=(
        Take("of the heap only the solid weighs", "V_solid = (1 - n_s)*V_p"),
        Take("it pushes its own volume of water aside, which lifts it", "F_buoy = rho*g*V_solid"),
        Take("what is left presses down", "F_peb = rho_s*g*V_solid - F_buoy"),
        Step("put both in"),
    ),
    published=(
        Published(
            "V_p=23.4 ft3, n_s=0, rho_s=150 lb/ft3, rho=62.4 lb/ft3", "2048 lbf", 2e-3, FEMA_259.at("example C7: ballast of concrete"), note="solid: no gaps"
        ),
    ),
    slips=(
        Slip("g*V_p*(1 - n_s)*rho_s", f"That is the dry weight. {_NO_LIFT}"),
        Slip("g*V_p*(rho_s - rho)", "You counted the gaps as stone. Only the solid share weighs."),
        Slip("g*V_p*n_s*(rho_s - rho)", "You used the empty share instead of the solid share. Put in one less the void fraction."),
        Slip("V_p*(1 - n_s)*(rho_s - rho)", "That is a mass. A force is mass times gravity, in newtons."),
    ),
    ranges={"n_s": ("0.35", "0.45")},
)

hold_down_ratio = Formula(
    name="hold-down ratio of pebbles on foam",
    result="f_hold",
    equals="V_p*(1 - n_s)*(rho_s - rho)/(V_f*(rho - rho_f))",
    steps=(
        foam_uplift,
        pebbles_under_water,
        Take("compare what holds with what lifts", "f_hold = F_peb/F_up"),
        Step("gravity cancels"),
    ),
    unpublished="both forces are checked; this is one over the other",
    slips=(
        Slip("V_p*(1 - n_s)*rho_s/(V_f*(rho - rho_f))", f"You used dry weight. {_NO_LIFT}"),
        Slip("V_p*(rho_s - rho)/(V_f*(rho - rho_f))", "You counted the gaps between the pebbles as stone. Only the solid share weighs."),
        Slip(
            "V_p*(1 - n_s)*(rho_s - rho)/(V_f*rho_f)",
            "You held down the foam's own weight. What lifts is the water it pushes aside, less that weight. Divide by the density of water less that of foam.",
        ),
        Slip("V_f*(rho - rho_f)/(V_p*(1 - n_s)*(rho_s - rho))", "Upside down: a ratio below 1 must mean that the foam comes up."),
    ),
    remark="The pebbles must lie on the foam, all of them under water. Foam that comes up lifts the upright and all that stands on it.",
)

pebbles_to_hold_foam = Formula(
    name="pebbles needed to hold foam down",
    result="V_p",
    equals="f_hold*V_f*(rho - rho_f)/((1 - n_s)*(rho_s - rho))",
    inverse_of=hold_down_ratio,
    unpublished="the hold-down ratio, turned round",
    slips=(
        Slip("f_hold*V_f*(rho - rho_f)/((1 - n_s)*rho_s)", f"You used dry weight. {_NO_LIFT}"),
        Slip("f_hold*V_f*(rho - rho_f)/(rho_s - rho)", "You forgot the gaps between the pebbles. Only the solid share weighs, so it takes more."),
        Slip("V_f*(rho - rho_f)/((1 - n_s)*(rho_s - rho))", "That just balances the foam. Multiply by the hold-down ratio wanted."),
        Slip(
            "f_hold*V_f*rho_f/((1 - n_s)*(rho_s - rho))",
            "You held down the foam's own weight. What lifts is the water it pushes aside, less that weight. Divide by the density of water less that of foam.",
        ),
    ),
    remark="In round numbers a litre of pebbles for each litre of foam, times the ratio wanted.",
)

# --- tanks that float ---------------------------------------------------------------------------------------------------------------

_KEEP_FULL = (
    "Ground water lifts an emptied pit, and so does rain behind its liner while it is being built. Its weight holds down as one piece only on a stiff base: "
    "a bare liner lifts wherever less lies on it. In wet ground a ground engineer decides."
)

net_uplift = Formula(
    name="net uplift of a tank under water",
    result="F_net",
    equals="g*(f_s*rho*V_disp - m_t)",
    steps=(
        buoyancy_of_tank,
        Take("its own weight holds it down", "F_w = g*m_t"),
        Take("take its weight off what lifts, with the safety factor on that", "F_net = f_s*F_buoy - F_w"),
        Step("put both in"),
    ),
    where=("m_t < f_s*rho*V_disp",),
    published=(
        Published(
            "V_disp=33.5 ft3, rho=62.4 lb/ft3, f_s=1.3, m_t=670 lb", "2048 lbf", 5e-4, FEMA_259.at("example C7: 250 gallons"), note="250 gal x 0.134 ft3/gal"
        ),
    ),
    slips=(
        Slip("f_s*rho*V_disp - m_t", "That is a mass. A force is mass times gravity, in newtons."),
        Slip("g*f_s*rho*V_disp", "The tank's own weight helps hold it down. Take it off, and as a force: its mass times gravity."),
        Slip("g*(f_s*rho*V_disp + m_t)", "The tank's weight holds it down: take it off, do not add it."),
    ),
)

ballast_mass = Formula(
    name="ballast needed for a tank under water",
    result="m_bal",
    equals="(f_s*rho*V_disp - m_t)/(1 - rho/rho_s)",
    steps=(
        net_uplift,
        ballast_balance,
        Solve("solve for the ballast"),
    ),
    where=("m_t < f_s*rho*V_disp",),
    published=(
        Published(
            "V_disp=33.5 ft3, rho=62.4 lb/ft3, f_s=1.3, m_t=670 lb, rho_s=150 lb/ft3",
            "3510 lb",
            2e-3,
            FEMA_259.at("example C7: 23.4 ft3 of concrete"),
            note="23.4 ft3 x 150 lb/ft3",
        ),
    ),
    slips=(
        Slip("f_s*rho*V_disp - m_t", "Ballast under water is lifted as well. Allow for the water it pushes aside."),
        Slip("f_s*rho*V_disp/(1 - rho/rho_s)", "The tank's own weight already helps hold it down. Take it off before sizing the ballast."),
        Slip(
            "f_s*rho*V_disp",
            "You left out the tank's own weight, which helps, and the water the ballast pushes aside, which does not. Take the tank's weight off first, then divide by one less the ratio of the densities.",
        ),
        Slip("(f_s*rho*V_disp - m_t)*(1 - rho/rho_s)", "You multiplied. Under water ballast holds less than it weighs, so it takes more of it: divide."),
        Slip("(f_s*rho*V_disp + m_t)/(1 - rho/rho_s)", "The tank's weight holds it down: take it off, do not add it."),
    ),
    remark=_KEEP_FULL,
)

pit_uplift = Formula(
    name="net uplift of an emptied pit",
    result="F_net",
    equals="g*(rho*A_pit*h_gw - m_t)",
    steps=(
        buoyancy_of_tank,
        Take("only what lies below the ground water pushes water aside", "V_disp = A_pit*h_gw"),
        Take("its own weight holds it down", "F_w = g*m_t"),
        Take("the rest lifts", "F_net = F_buoy - F_w"),
        Step("put all in"),
    ),
    where=("m_t < rho*A_pit*h_gw",),
    unpublished="the same law as the net uplift of a tank under water, which is checked",
    slips=(
        Slip(
            "g*(rho*A_pit*D - m_t)", "Only the part below ground-water level is pushed up. Use that depth, not the full depth of the tank.", also_given=("D",)
        ),
        Slip("rho*A_pit*h_gw - m_t", "That is a mass. A force is mass times gravity, in newtons."),
        Slip("g*rho*A_pit*h_gw - m_t", "The mass is still in kilograms. Multiply it by gravity too."),
        Slip("g*rho*A_pit*h_gw", "You left out the weight of the pit itself. It holds it down: take it off."),
        Slip("g*(rho*A_pit*h_gw + m_t)", "The weight holds it down: take it off, do not add it."),
    ),
    remark=_KEEP_FULL,
)

flotation_factor = Formula(
    name="flotation factor of an emptied pit",
    result="f_float",
    equals="m_t/(rho*A_pit*h_gw)",
    steps=(
        buoyancy_of_tank,
        Take("only what lies below the ground water pushes water aside", "V_disp = A_pit*h_gw"),
        Take("its own weight holds it down", "F_w = g*m_t"),
        Take("compare what holds with what lifts", "f_float = F_w/F_buoy"),
        Step("gravity cancels"),
    ),
    unpublished="the same law as the net uplift of a tank under water, which is checked",
    slips=(
        Slip("rho*A_pit*h_gw/m_t", "Upside down: a factor below 1 must mean that it floats."),
        Slip("m_t/(rho*A_pit*D)", "Only the part below ground-water level is pushed up. Use that depth, not the full depth of the tank.", also_given=("D",)),
    ),
    remark=_KEEP_FULL,
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------
