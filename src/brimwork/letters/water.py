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
    Quantity("theta_c", "contact angle of water on the surface", "rad", "deg", "deg", "5 deg", "90 deg", "5 deg"),
    # edges and capillarity
    Quantity("l_c", "capillary length", "m", "mm", "in", "2.6 mm", "2.8 mm", "0.01 mm"),
    Quantity("H_pin", "height of still water that an edge holds back", "m", "mm", "in", "0.5 mm", "5.5 mm", "0.1 mm"),
    Quantity("r_t", "radius of a narrow gap or tube", "m", "mm", "in", "0.2 mm", "3 mm", "0.1 mm"),
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
