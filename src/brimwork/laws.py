"""Laws that the topics share, each named and sourced: the ground that derivations start from, not proved here; and shared tested ranges."""

from brimwork.formula import Law, TestedRange
from brimwork.sources import ARCHIMEDES, BERNOULLI, EUCLID, FLOATING, KINDSVATER, NEWTON, PLANES, TORRICELLI, VARIGNON, YOUNG

# geometry
area_of_a_circle = Law("area of a circle", "A_z = pi/4*d_z**2", ARCHIMEDES.at("Measurement of a Circle, prop. 1"))
length_of_a_circle = Law("length of a circle", "b = pi*d_rim", ARCHIMEDES.at("Measurement of a Circle, prop. 1"))
length_of_a_bore = Law("length of a circle", "b = pi*d_bore", ARCHIMEDES.at("Measurement of a Circle, prop. 1"))
chord_and_sagitta = Law("half chord squared is the product of the two parts of the diameter", "d_rim**2/4 = D*(2*R_s - D)", EUCLID.at("book III, prop. 35"))
section_of_a_sphere = Law(
    "a section of a sphere at a height above its lowest point is a circle", "A_z = pi*(R_s**2 - (R_s - z_f)**2)", EUCLID.at("book I, prop. 47")
)

# falling and flowing
free_fall = Law(
    "free fall: water that has come down by z moves at", "v = sqrt(2*g*z)", TORRICELLI.at("prop. on the outflow of a jet"), holds="no friction, steady flow"
)
velocity_head = Law("speed as a height: the head that makes it", "h_a = v**2/(2*g)", BERNOULLI.at("section on steady flow"), holds="no friction, steady flow")
continuity = Law("continuity: what comes must pass", "Q = A_a*v", BERNOULLI.at("section on steady flow"), holds="steady flow of water")
specific_energy = Law(
    "energy above the crest is depth and velocity head",
    "E_s = y_c + v**2/(2*g)",
    BERNOULLI.at("section on steady flow"),
    holds="no friction, level streamlines",
)
flow_on_a_crest = Law("continuity on the crest, for each metre of it", "q = v*y_c", BERNOULLI.at("section on steady flow"), holds="steady flow of water")

# thin films
viscosity = Law(
    "viscosity: shear stress goes with the slope of the speed",
    "tau = mu*Derivative(u, y)",
    NEWTON.at("hypothesis before prop. 51"),
    holds="laminar flow of water",
)
surface_balance = Law(
    "surface tension and contact angle balance at an edge",
    "sigma*(1 - cos(theta_c)) = rho*g*H_pin**2/2",
    YOUNG.at("section on the contact angle"),
    holds="water at rest, long edge",
)

# statics
_BALANCE = VARIGNON.at("balance of forces and of moments")
weight = Law("weight is mass times gravity", "F_w = g*(m_v + rho*V_v + m_slab)", NEWTON.at("law II"))
pressure_carries_weight = Law(
    "what the ground presses up, added over the base, is the weight", "F_w = L_base*Integral(p_x, (x_b, -B_base/2, B_base/2))", _BALANCE
)
pressure_balances_offset = Law(
    "about the middle, it turns as much one way as the weight turns the other",
    "F_w*e_off = L_base*Integral(p_x*x_b, (x_b, -B_base/2, B_base/2))",
    _BALANCE,
)
moment_of_weight = Law(
    "moment is force times arm: about the edge it tips over, the weight acts at half the base", "M_hold = F_w*B_base/2", PLANES.at("book I, prop. 6")
)
buoyancy_of_foam = Law("a body under water is lifted by the weight of the water it pushes aside", "F_buoy = rho*g*V_f", FLOATING.at("book I, prop. 5 and 7"))
buoyancy_of_tank = Law("a body under water is lifted by the weight of the water it pushes aside", "F_buoy = rho*g*V_disp", FLOATING.at("book I, prop. 5 and 7"))
wind_brought_to_rest = Law(
    "moving air brought to rest presses with", "p_dyn = rho_air*v_wind**2/2", BERNOULLI.at("section on steady flow"), holds="steady wind"
)

# ranges that experiments support
THIN_PLATE = (
    TestedRange("H", "30 mm", "", KINDSVATER.at("limits for a thin plate")),
    TestedRange("b", "150 mm", "", KINDSVATER.at("limits for a thin plate")),
)
THIN_PLATE_HEIGHT = (
    THIN_PLATE[0],
    TestedRange("P", "100 mm", "", KINDSVATER.at("limits for a thin plate")),
    TestedRange("H/P", "", "2", KINDSVATER.at("limits for a thin plate")),
)
