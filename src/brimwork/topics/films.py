"""Films: water that clings to a face, how thin it may be and still wet it, and what surface tension holds back or lifts."""

from brimwork.conditions import TestedRange
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import surface_balance, viscosity
from brimwork.sources import CENGEL, DE_GENNES, HARTLEY, NUSSELT, SCHASCHKE, UNATTRIBUTED, YOUNG
from brimwork.steps import Law, Ode, Solve, Step, Take

# --- film on the face ---------------------------------------------------------------------------------------------------------------

_LAMINAR = TestedRange("4*q/nu", "", "1600", NUSSELT.at("laminar films, waves included"))

film_flow = Formula(
    name="flow in a film on a face",
    result="q",
    equals="g*sin(beta)*delta**3/(3*nu)",
    steps=(
        Take("the shear on a layer carries the weight, along the face, of all the water outside it", "tau = rho*g*sin(beta)*(delta - y)"),
        viscosity,
        Ode("solve: the water stands still at the face", "u = rho*g*sin(beta)/mu*(delta*y - y**2/2)", at=(("y = 0", "u = 0"),)),
        Take("add the layers from the face to the surface", "q = Integral(u, (y, 0, delta))"),
        Step(
            "the heights add up to half the square of the thickness, their squares to a third of its cube",
            "q = rho*g*sin(beta)/mu*(delta*(delta**2/2) - delta**3/6)",
        ),
        Step("a half less a sixth is a third", "q = rho*g*sin(beta)*delta**3/(3*mu)"),
        Take("viscosity over density is the kinematic viscosity", "nu = mu/rho"),
        Step("put it in"),
    ),
    tested=(_LAMINAR,),
    published=(
        Published(
            "beta=1.065 rad, delta=0.1016 mm, nu=1e-6 m2/s, g=9.81 m/s2",
            "3e-6 m2/s",
            1e-3,
            SCHASCHKE.at("Worked example 3.12"),
            note="solved there for the angle",
        ),
    ),
    slips=(
        Slip("g*sin(beta)*delta**2/(3*nu)", "That is the mean speed. The flow is that speed times the thickness. Multiply once more by the thickness."),
        Slip("g*sin(beta)*delta**3/nu", "The 3 is missing: the speed falls to nothing at the face, so the mean is a third of it."),
        Slip(
            "g*sin(beta)*delta**3/(2*nu)", "You took the speed of the surface for all of the film. The mean is two thirds of it. Divide by three, not by two."
        ),
    ),
)

film_thickness = Formula(
    name="thickness of a film on a face",
    result="delta",
    equals="(3*nu*q/(g*sin(beta)))**(1/3)",
    inverse_of=film_flow,
    tested=(_LAMINAR,),
    published=(Published("q=3e-6 m2/s, beta=1.065 rad, nu=1e-6 m2/s, g=9.81 m/s2", "0.1016 mm", 5e-4, SCHASCHKE.at("Worked example 3.12, turned round")),),
    slips=(
        Slip("(nu*q/(g*sin(beta)))**(1/3)", "You left out the factor 3. It comes from the speed falling to nothing at the face."),
        Slip(
            "(3*nu*q*1000/(g*sin(beta)))**(1/3)",
            "You put litres per second in where cubic metres per second go: the film came out ten times too thick. Put in cubic metres per second.",
        ),
        Slip("sqrt(3*nu*q/(g*sin(beta)))", "Flow goes with the cube of the thickness, so take the cube root."),
    ),
    ranges={"q": ("6 L/min per m", "24 L/min per m")},
)

film_speed = Formula(
    name="mean speed of a film",
    result="u_mean",
    equals="g*sin(beta)*delta**2/(3*nu)",
    steps=(
        film_flow,
        Take("the mean speed is the flow over the thickness", "u_mean = q/delta"),
        Step("divide"),
    ),
    tested=(TestedRange("4*g*sin(beta)*delta**3/(3*nu**2)", "", "1600", NUSSELT.at("laminar films, waves included")),),
    unpublished="the flow of the same film is checked; this is that flow over its thickness",
    slips=(Slip("g*sin(beta)*delta**2/(2*nu)", "That is the speed of the surface. The mean is two thirds of it. Divide by three, not by two."),),
)

thinnest_film = Formula(
    name="thinnest film that wets",
    result="delta_min",
    equals="15**(1/5)*(mu**2*sigma*(1 - cos(theta_c))/(rho**3*g**2))**(1/5)",
    steps=(
        Take("on a vertical face the shear on a layer carries the weight of the water outside it", "tau = rho*g*(delta_min - y)"),
        viscosity,
        Ode("solve: the water stands still at the face", "u = rho*g/mu*(delta_min*y - y**2/2)", at=(("y = 0", "u = 0"),)),
        Law(
            "a dry patch is closed when the rush of the film balances the pull of the surface",
            "Integral(rho*u**2/2, (y, 0, delta_min)) = sigma*(1 - cos(theta_c))",
            HARTLEY.at("force balance at the head of a dry patch"),
            holds="laminar flow, vertical face",
        ),
        Solve("solve for the thickness"),
    ),
    unpublished="no printed numbers were found: take it as an order of magnitude",
)

least_film_flow = Formula(
    name="least flow that keeps a face wet",
    result="q_min",
    equals="15**(3/5)/3*(mu/(rho*g))**(1/5)*(sigma*(1 - cos(theta_c))/rho)**(3/5)",
    steps=(
        *thinnest_film.steps[:-1],
        Solve("solve for the thickness", relation="delta_min = 15**(1/5)*(mu**2*sigma*(1 - cos(theta_c))/(rho**3*g**2))**(1/5)"),
        Take("add the layers of the film that just closes", "q_min = Integral(u, (y, 0, delta_min))"),
        Step("integrate and put the thickness in"),
    ),
    unpublished="no printed numbers were found: take it as an order of magnitude",
)

# --- edges and capillarity ----------------------------------------------------------------------------------------------------------

capillary_length = Formula(
    name="capillary length",
    result="l_c",
    equals="sqrt(sigma/(rho*g))",
    steps=(
        Law(
            "a surface curved to a radius presses with tension over radius, standing water with density, gravity and depth: alike where",
            "sigma/l_c = rho*g*l_c",
            YOUNG.at("section on the curved surface"),
        ),
        Solve("solve for the length"),
    ),
    published=(Published("sigma=72.7 mN/m, rho=998 kg/m3", "2.7 mm", 0.02, DE_GENNES.at("ch. 2: water, 2.7 mm")),),
    slips=(Slip("sigma/(rho*g)", "The root is missing: what stands under it is an area. Take the root."),),
)

pinned_water = Formula(
    name="water that an edge holds back",
    result="H_pin",
    equals="2*l_c*sin((theta_c + a_edge)/2)",
    steps=(
        surface_balance,
        Solve("solve for the height", relation="H_pin = sqrt(2*sigma*(1 - cos(theta_c + a_edge))/(rho*g))"),
        Take("write it with the capillary length", "l_c = sqrt(sigma/(rho*g))"),
        Step("one less the cosine is twice the square of the sine of the half angle"),
    ),
    published=(
        Published(
            "sigma=72.736 mN/m, rho=998.206 kg/m3, theta_c=180 deg, a_edge=0 deg",
            "5.45 mm",
            2e-3,
            DE_GENNES.at("ch. 2: a puddle is at most two capillary lengths high"),
            after=(capillary_length,),
        ),
    ),
    slips=(
        Slip("2*l_c*sin(theta_c + a_edge)", "The sine takes half the angle."),
        Slip("l_c*sin((theta_c + a_edge)/2)", "Twice: water on a surface that it does not wet at all stands two capillary lengths high."),
        Slip("2*l_c*sin(theta_c/2)", "That is a flat surface without an end. At an edge the water may lean out by the angle of the edge as well."),
    ),
    where=("theta_c + a_edge < 1.0001*pi",),
    remark="A still rim holds back up to this much before the first drop runs over: more than the head of a running film. A surface that turns down "
    "squarely has an edge of 90 degrees, one that goes on level 0. Never more than two capillary lengths; a round or wet edge holds less.",
)

capillary_rise = Formula(
    name="capillary rise in a tube",
    result="h_cap",
    equals="2*sigma*cos(theta_c)/(rho*g*r_t)",
    steps=(
        Law(
            "the surface pulls up along the wall of the tube as much as the raised water weighs",
            "2*pi*r_t*sigma*cos(theta_c) = rho*g*pi*r_t**2*h_cap",
            YOUNG.at("section on capillary rise"),
        ),
        Solve("solve for the rise"),
    ),
    published=(Published("sigma=0.073 N/m, theta_c=0 deg, rho=1000 kg/m3, r_t=0.3 mm", "5 cm", 0.01, CENGEL.at("Ex 2-6")),),
    slips=(
        Slip("sigma*cos(theta_c)/(rho*g*r_t)", "You used the diameter where the radius goes: half the rise came out."),
        Slip("2*sigma/(rho*g*r_t)", "You left out the contact angle."),
    ),
    remark="For a round tube. Between two faces the rise is half of that in a tube of the same half width.",
)

capillary_rise_in_a_gap = Formula(
    name="capillary rise in a gap",
    result="h_cap",
    equals="2*sigma*cos(theta_c)/(rho*g*w_gap)",
    steps=(
        Law(
            "for each length of gap, the surface pulls up along both faces as much as the raised water weighs",
            "2*sigma*cos(theta_c) = rho*g*w_gap*h_cap",
            YOUNG.at("section on capillary rise"),
        ),
        Solve("solve for the rise"),
    ),
    published=(
        Published(
            "sigma=0.075 N/m, theta_c=0 deg, rho=1000 kg/m3, w_gap=1 mm, g=10 m/s2", "1.5 cm", 1e-9, UNATTRIBUTED.at("two upright glass plates 1 mm apart")
        ),
    ),
    slips=(
        Slip(
            "4*sigma*cos(theta_c)/(rho*g*w_gap)", "That is a round tube as wide as the gap. A gap has two faces only, and lifts half as high. Put in 2, not 4."
        ),
        Slip("sigma*cos(theta_c)/(rho*g*w_gap)", "The 2 is missing: the water hangs on both faces."),
        Slip("2*sigma/(rho*g*w_gap)", "You left out the contact angle."),
    ),
    rises=("sigma",),
    falls=("w_gap", "rho"),
    remark="Why fleece and liner edges wick: a narrow gap lifts water over an edge that stands above its level.",
)
