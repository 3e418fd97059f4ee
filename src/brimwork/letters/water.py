"""Letters: constants, water itself, and water on surfaces."""

from brimwork.quantity import Quantity

OF_WATER = (
    # constants
    Quantity("g", "standard gravity", "m/s2", "m/s2", "ft/s2", value="9.80665 m/s2", note="exact by definition, SI Brochure"),
    Quantity("l_foot", "one foot", "m", "mm", "ft", value="1 ft", note="for formulas fitted in feet"),
    # water and surfaces
    Quantity("rho", "density of water", "kg/m3", "kg/m3", "lb/ft3", "992 kg/m3", "1000 kg/m3", "0.5 kg/m3"),
    Quantity("mu", "dynamic viscosity of water", "Pa s", "cP", "cP", "0.6 cP", "1.8 cP", "0.05 cP"),
    Quantity("nu", "kinematic viscosity of water", "m2/s", "cSt", "cSt", "0.6 cSt", "1.8 cSt", "0.05 cSt"),
    Quantity("sigma", "surface tension of water", "N/m", "mN/m", "mN/m", "60 mN/m", "76 mN/m", "0.5 mN/m"),
    Quantity("T_w", "temperature of the water", "K", "degC", "degF", "2 degC", "30 degC", "1 K"),
    Quantity("p_boil_w", "pressure at which the water boils", "Pa", "kPa", "psi", "0.7 kPa", "4.3 kPa", "0.1 kPa"),
    Quantity("rho_most", "greatest density of water", "kg/m3", "kg/m3", "lb/ft3", value="999.97495 kg/m3", note="M. Tanaka et al. (2001)"),
    Quantity("T_most", "temperature of the greatest density", "K", "K", "K", value="277.133035 K", note="3.983035 degC, M. Tanaka et al. (2001)"),
    Quantity("T_den_a", "first temperature of the fit of density", "K", "K", "K", value="28.647 K", note="301.797 degC less 273.15 K, M. Tanaka et al. (2001)"),
    Quantity("T_den_b", "second temperature of the fit of density", "K", "K", "K", value="203.80119 K", note="273.15 K less 69.34881, M. Tanaka et al. (2001)"),
    Quantity("k_den", "constant of the fit of density", "K2", "K2", "K2", value="522528.9 K2", note="M. Tanaka et al. (2001)"),
    Quantity("T_vis", "temperature of the fit of viscosity", "K", "K", "K", value="300 K", note="IAPWS, liquid water at 0.1 MPa (2011)"),
    Quantity("mu_vis", "viscosity of the fit of viscosity", "Pa s", "cP", "cP", value="0.001 cP", note="IAPWS, liquid water at 0.1 MPa (2011)"),
    Quantity("T_crit", "critical temperature of water", "K", "K", "K", value="647.096 K", note="IAPWS"),
    Quantity("p_crit", "critical pressure of water", "Pa", "kPa", "psi", value="22064 kPa", note="IAPWS"),
    Quantity("sigma_fit", "constant of the fit of surface tension", "N/m", "mN/m", "mN/m", value="235.8 mN/m", note="IAPWS R1-76"),
    Quantity("theta_c", "contact angle of water on the surface", "rad", "deg", "deg", "5 deg", "90 deg", "5 deg"),
    # edges and capillarity
    Quantity("l_c", "capillary length", "m", "mm", "in", "2.6 mm", "2.8 mm", "0.01 mm"),
    Quantity("H_pin", "height of still water that an edge holds back", "m", "mm", "in", "0.5 mm", "5.5 mm", "0.1 mm"),
    Quantity("r_t", "radius of a narrow tube", "m", "mm", "in", "0.2 mm", "3 mm", "0.1 mm"),
    Quantity("w_gap", "width of a narrow gap between two faces", "m", "mm", "in", "0.2 mm", "3 mm", "0.1 mm"),
    Quantity("a_edge", "angle by which the surface turns down at its edge", "rad", "deg", "deg", "0 deg", "90 deg", "5 deg"),
    Quantity("h_cap", "capillary rise", "m", "mm", "in", "2 mm", "70 mm", "1 mm"),
    # film on a face
    Quantity("delta", "thickness of the film", "m", "mm", "in", "0.1 mm", "0.6 mm", "0.02 mm"),
    Quantity("beta", "angle of the face from the horizontal", "rad", "deg", "deg", "45 deg", "90 deg", "5 deg"),
    Quantity("y", "distance from the face into the film", "m", "mm", "in", "0.05 mm", "0.6 mm", "0.05 mm"),
    Quantity("u", "speed in the film at a distance from the face", "m/s", "m/s", "ft/s", "0.01 m/s", "1 m/s", "0.01 m/s"),
    Quantity("tau", "shear stress in the film", "Pa", "Pa", "Pa", "0.1 Pa", "6 Pa", "0.1 Pa"),
    Quantity("u_mean", "mean speed of the film", "m/s", "m/s", "ft/s", "0.01 m/s", "0.8 m/s", "0.01 m/s"),
    Quantity("delta_min", "thinnest film that closes over a dry patch", "m", "mm", "in", "0.1 mm", "0.5 mm", "0.02 mm"),
    Quantity(
        "q_min",
        "least flow for each metre that keeps a face wet",
        "m2/s",
        "L/min per m",
        "US gal/min per ft",
        "0.5 L/min per m",
        "14 L/min per m",
        "0.5 L/min per m",
    ),
)
