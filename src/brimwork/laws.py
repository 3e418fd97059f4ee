"""Laws that the topics share, each named and sourced: the ground that derivations start from, not proved here; and shared tested ranges."""

from brimwork.conditions import TestedRange
from brimwork.sources import (
    BERNOULLI,
    BORDA_CARNOT,
    CIRCLE,
    EUCLID,
    FLOATING,
    GALILEO,
    GIBBS,
    KINDSVATER,
    MOHR,
    NEWTON,
    NEWTON_LAWS,
    OPENSTAX,
    OPENSTAX_MEMORY,
    PLANES,
    SUN_GEOMETRY,
    TORRICELLI,
    VARIGNON,
)
from brimwork.steps import Law

# geometry
area_of_a_circle = Law("area of a circle", "A_z = pi/4*d_z**2", CIRCLE.at("prop. 1"))
length_of_a_circle = Law("length of a circle", "b = pi*d_rim", CIRCLE.at("prop. 1"))
length_of_a_bore = Law("length of a circle", "b = pi*d_bore", CIRCLE.at("prop. 1"))
chord_and_sagitta = Law("half chord squared is the product of the two parts of the diameter", "d_rim**2/4 = D*(2*R_s - D)", EUCLID.at("book III, prop. 35"))
section_of_a_sphere = Law(
    "a section of a sphere at a height above its lowest point is a circle", "A_z = pi*(R_s**2 - (R_s - z_f)**2)", EUCLID.at("book I, prop. 47")
)

# falling and flowing
free_fall = Law(
    "free fall: the speed grows with the root of the way down",
    "v = sqrt(2*g*z)",
    TORRICELLI.at("prop. on the outflow of a jet"),
    holds="no friction, steady flow",
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
    "surface tension balances the weight behind an edge, where the water may lean out by its contact angle and by the angle of the edge",
    "sigma*(1 - cos(theta_c + a_edge)) = rho*g*H_pin**2/2",
    GIBBS.at("contact at an edge"),
    holds="water at rest, long sharp edge",
)

# statics
_BALANCE = VARIGNON.at("balance of forces and of moments")
weight = Law("weight is mass times gravity", "F_w = g*(m_v + rho*V_v + m_slab)", NEWTON_LAWS.at("law II"))
weight_of_vessel = Law("weight is mass times gravity", "F_w = g*(m_v + rho*V_v)", NEWTON_LAWS.at("law II"))
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
ballast_balance = Law(
    "ballast pushes water aside as well: what it still weighs must be as much as the net uplift",
    "F_net = g*m_bal - g*rho*m_bal/rho_s",
    FLOATING.at("book I, prop. 5 and 7"),
)
pressure_on_a_wall = Law("pressure is the weight of a column of water over its area", "p_wall = rho*g*h_full", NEWTON_LAWS.at("law II"), holds="water at rest")
halves_of_a_ring = Law(
    "for each length of wall, what presses the two halves of a ring apart is held by the wall at its two cuts",
    "2*sigma_hoop*t_wall = Integral(p_wall*R_wall*sin(a_wall), (a_wall, 0, pi))",
    _BALANCE,
    holds="a round wall, free to give a little, that pulls evenly through its thickness",
)
wind_brought_to_rest = Law(
    "moving air brought to rest presses on what stops it", "p_dyn = rho_air*v_wind**2/2", BERNOULLI.at("section on steady flow"), holds="steady wind"
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

# flow in pipes
_STEADY = BERNOULLI.at("section on steady flow")
area_of_a_pipe = Law("area of a circle", "A_pipe = pi/4*d_pipe**2", CIRCLE.at("prop. 1"))
continuity_in_a_pipe = Law("continuity: the flow is the area times the mean speed", "Q = A_pipe*v", _STEADY, holds="a full pipe")
balance_on_a_core = Law(
    "in steady flow the pressure on the ends of a core of water balances the shear round it",
    "rho*g*h_f*pi*r_p**2 = tau_r*2*pi*r_p*L_pipe",
    NEWTON_LAWS.at("law II, at constant speed"),
    holds="steady flow along a straight pipe",
)
balance_in_a_pipe = Law(
    "in steady flow the pressure on the ends of the water balances the shear at the wall",
    "rho*g*h_f*pi/4*d_pipe**2 = tau_w*pi*d_pipe*L_pipe",
    NEWTON_LAWS.at("law II, at constant speed"),
    holds="steady flow along a straight pipe",
)
viscosity_in_a_pipe = Law(
    "viscosity: shear stress goes with the slope of the speed, which falls outwards",
    "tau_r = -mu*Derivative(u_r, r_p)",
    NEWTON.at("hypothesis before prop. 51"),
    holds="laminar flow of water",
)
velocity_head_in_a_pipe = Law("speed as a height", "h_v = v**2/(2*g)", _STEADY)
continuity_at_a_change = Law("continuity: both bores carry the same flow", "v_1*pi/4*d_1**2 = v_2*pi/4*d_2**2", _STEADY, holds="full pipes")
momentum_at_a_widening = Law(
    "momentum: the difference in pressure slows the stream down",
    "(p_2 - p_1)*pi/4*d_2**2 = rho*pi/4*d_2**2*v_2*(v_1 - v_2)",
    BORDA_CARNOT.at("momentum balance"),
    holds="the pressure of the jet acts on the whole face of the step, as measurements show",
)
energy_at_a_change = Law(
    "energy before is energy after and what is lost",
    "p_1/(rho*g) + v_1**2/(2*g) = p_2/(rho*g) + v_2**2/(2*g) + h_m",
    _STEADY,
    holds="a level pipe, even speed across it",
)
energy_of_a_lift = Law(
    "energy: the pump gives what lifts the water and what friction and fittings take",
    "H_t = z_s + h_f + h_m",
    _STEADY,
    holds="from one water surface to the other, or to an outlet whose leaving speed is counted as a fitting",
)
pressure_as_head = Law("pressure is the weight of a column of water over its area", "p_pump = rho*g*H_pump", NEWTON_LAWS.at("law II"))
power_of_flow = Law("power is pressure times flow", "P_hyd = p_pump*Q", OPENSTAX.at("module m42208, power in fluid flow"))

# falling water and outlets
area_of_an_outlet = Law("area of a circle", "A_o = pi/4*d_out**2", CIRCLE.at("prop. 1"))
continuity_at_an_outlet = Law("continuity: the flow is the area times the speed", "Q = A_o*v", _STEADY, holds="a full outlet")
rise_of_a_stream = Law("energy: water sent upwards rises until its speed is spent", "h_boil = v**2/(2*g)", _STEADY, holds="no friction with what is around")
fall_from_rest = Law("free fall: from rest, so far in a time", "h_fall = g*t_fall**2/2", GALILEO.at("third day, on falling bodies"), holds="no drag of the air")
height_of_the_sun = Law(
    "the sun's height in the sky goes with latitude, season and hour, and level ground gets its sine",
    "S_omega = S_0*d_rel*(sin(phi_lat)*sin(delta_sun) + cos(phi_lat)*cos(delta_sun)*cos(omega))",
    SUN_GEOMETRY.at("height of the sun"),
)
surface_in_a_bowl = Law(
    "a section of a sphere at a height above its lowest point is a circle", "A_tank = pi*(R_s**2 - (R_s - H_2)**2)", EUCLID.at("book I, prop. 47")
)
emptying = Law("continuity: in the time in which the head falls a little, that layer of the tank has run out", "Derivative(t_drain, H_2) = -A_tank/Q", _STEADY)
level_throw = Law(
    "nothing pushes falling water sideways: its level speed stays", "x_throw = v_b*t_fall", GALILEO.at("fourth day, on projectiles"), holds="no drag of the air"
)
energy_of_a_fall = Law("energy: what is lost in height is won in speed", "v_land**2/(2*g) = v_b**2/(2*g) + h_fall", _STEADY, holds="no drag of the air")

# ground, lining, electrical supply
_PYTHAGORAS = EUCLID.at("book I, prop. 47")
diagonal_squared = Law("Pythagoras: the squares of two sides at a right angle make the square across", "d_diag**2 = L_dig**2 + W_dig**2", _PYTHAGORAS)
slope_squared = Law("Pythagoras: the squares of two sides at a right angle make the square across", "l_side**2 = D**2 + s_back**2", _PYTHAGORAS)
soil_about_to_slip = Law(
    "in loose soil about to slip, the sine of the friction angle is half the difference of the two pressures over half their sum",
    "sin(phi_s) = (p_over - p_side)/(p_over + p_side)",
    MOHR.at("circle of stresses that touches the line of friction"),
    holds="drained soil without cohesion, level behind a smooth upright side that gives a little",
)
root_circle = Law("area of a circle", "A_root = pi*r_root**2", CIRCLE.at("prop. 1"))
sling_balance = Law(
    "at rest the upward parts of the pulls carry the weight", "N_leg*F_leg*sin(alpha_leg) = g*m_load", _BALANCE, holds="equal legs, the load hangs level"
)
power_of_alternating_current = Law("power is voltage times current times power factor", "P_in = U_s*I_c*k_pf", OPENSTAX_MEMORY.at("AC circuits"))
ohm_in_the_cable = Law("Ohm: the drop is current times resistance", "U_d = I_c*R_loop", OPENSTAX_MEMORY.at("Ohm's law"))
work_of_a_power = Law("energy is power times time", "E_year = P_in*t_run", OPENSTAX_MEMORY.at("power"), holds="steady power")

# sound
spreading_sound = Law(
    "the same power passes through ever larger spheres",
    "J_far = J_near*(r_near/r_far)**2",
    OPENSTAX_MEMORY.at("sound intensity"),
    holds="a small source in the open",
)
