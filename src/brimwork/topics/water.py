"""Water itself: density, viscosity, surface tension and boiling pressure by its temperature, fitted by those who measured."""

from brimwork.by_hand import ByHand
from brimwork.conditions import TestedRange
from brimwork.formula import Formula, Published, Slip
from brimwork.sources import IAPWS, IAPWS_LIQUID, MAURER, OPENSTAX, TANAKA, WAGNER

_TABLE = MAURER.at("ch. 2, table of water")

density_of_water = Formula(
    name="density of water by temperature",
    result="rho",
    equals="rho_most*(1 - (T_w - T_most)**2*(T_w + T_den_a)/(k_den*(T_w - T_den_b)))",
    fitted="M. Tanaka et al. (2001), to measured densities at the pressure of the air",
    close="0.1 kg/m3",
    tested=(TestedRange("T_w", "0 degC", "40 degC", TANAKA.at("range of the fit")),),
    where=("T_den_b < 0.9*T_w",),
    published=(Published("T_w=20 degC", "998.2 kg/m3", 1e-4, _TABLE),),
    by_hand=(ByHand("T_w=35 degC", "999.97495*(1 - (308.15 - 277.133035)**2*(308.15 + 28.647)/(522528.9*(308.15 - 203.80119)))", "994.0326 kg/m3"),),
    remark="Heaviest at 4 degrees: colder water swims on top, and ice on that.",
)

viscosity_of_water = Formula(
    name="viscosity of water by temperature",
    result="mu",
    equals="mu_vis*(280.68*(T_w/T_vis)**(-1.9) + 511.45*(T_w/T_vis)**(-7.7) + 61.131*(T_w/T_vis)**(-19.6) + 0.45903*(T_w/T_vis)**(-40))",
    fitted="IAPWS (2011), to its own formulation of measured viscosities, liquid water at 0.1 MPa",
    close="0.001 cP",
    tested=(TestedRange("T_w", "-20 degC", "110 degC", IAPWS_LIQUID.at("range of Eq. 7")),),
    published=(
        Published("T_w=20 degC", "1.002 cP", 1e-3, OPENSTAX.at("module m42209, table of viscosities")),
        Published("T_w=0 degC", "1.792 cP", 1e-3, OPENSTAX.at("module m42209, table of viscosities")),
    ),
    by_hand=(
        ByHand(
            "T_w=-10 degC",
            "(280.68*(263.15/300)**-1.9 + 511.45*(263.15/300)**-7.7 + 61.131*(263.15/300)**-19.6 + 0.45903*(263.15/300)**-40)/1000",
            "2.647617 cP",
        ),
    ),
    slips=(
        Slip(
            "mu_vis*(280.68 + 511.45 + 61.131 + 0.45903)", "That is water of 27 degrees. Cold water is much more viscous. Put in the temperature that is given."
        ),
    ),
    falls=("T_w",),
    remark="From 25 to 5 degrees water grows nearly twice as viscous: films are thicker in winter, and thin tubes carry less.",
)

kinematic_viscosity_of_water = Formula(
    name="kinematic viscosity from viscosity and density",
    result="nu",
    equals="mu/rho",
    defined="dynamic viscosity over density",
    published=(Published("mu=1.0016 cP, rho=998.206 kg/m3", "1.0034 cSt", 1e-5, IAPWS.at("20 degC")),),
    slips=(
        Slip("mu*rho", "You multiplied. Divide by the density."),
        Slip("mu/1000000", "That shifts the point only: a cubic metre of water weighs about a thousand kilograms. Divide by the density."),
    ),
    rises=("mu",),
    falls=("rho",),
)

surface_tension_of_water = Formula(
    name="surface tension of water by temperature",
    result="sigma",
    equals="sigma_fit*(1 - T_w/T_crit)**1.256*(1 - 0.625*(1 - T_w/T_crit))",
    fitted="IAPWS R1-76 (2014), to measured surface tensions of clean water",
    tested=(TestedRange("T_w", "0.01 degC", "373.9 degC", IAPWS.at("range of the release on surface tension")),),
    where=("T_w < T_crit",),
    published=(
        Published("T_w=0 degC", "75.6 mN/m", 2e-3, OPENSTAX.at("chapter on surface tension, table")),
        Published("T_w=100 degC", "58.9 mN/m", 2e-3, OPENSTAX.at("chapter on surface tension, table")),
    ),
    by_hand=(ByHand("T_w=20 degC", "235.8*(1 - 293.15/647.096)**1.256*(1 - 0.625*(1 - 293.15/647.096))", "72.73614 mN/m"),),
    falls=("T_w",),
    remark="Of clean water. A trace of soap or grease takes a third of it and more.",
)

boiling_pressure_of_water = Formula(
    name="pressure at which water boils",
    result="p_boil_w",
    equals="p_crit*exp(T_crit/T_w*(-7.85951783*(1 - T_w/T_crit) + 1.84408259*(1 - T_w/T_crit)**1.5 - 11.7866497*(1 - T_w/T_crit)**3"
    " + 22.6807411*(1 - T_w/T_crit)**3.5 - 15.9618719*(1 - T_w/T_crit)**4 + 1.80122502*(1 - T_w/T_crit)**7.5))",
    fitted="W. Wagner and A. Pruss (1993), to measured pressures from the melting point up",
    tested=(TestedRange("T_w", "0.01 degC", "373.9 degC", WAGNER.at("range of the fit")),),
    where=("T_w < T_crit",),
    published=(
        Published("T_w=20 degC", "2.339 kPa", 1e-3, _TABLE),
        Published(
            "T_w=100 degC",
            "101.4 kPa",
            1e-3,
            OPENSTAX.at("chapter on vapour pressure (from memory): water boils at 100 degrees at the pressure of the air"),
            note="101.325 kPa belongs to 99.974 degrees",
        ),
    ),
    by_hand=(
        ByHand(
            "T_w=20 degC",
            "22064*exp(647.096/293.15*(-7.85951783*(1 - 293.15/647.096) + 1.84408259*(1 - 293.15/647.096)**1.5 - 11.7866497*(1 - 293.15/647.096)**3 + 22.6807411*(1 - 293.15/647.096)**3.5 - 15.9618719*(1 - 293.15/647.096)**4 + 1.80122502*(1 - 293.15/647.096)**7.5))",
            "2.339194 kPa",
        ),
    ),
    rises=("T_w",),
    remark="A pump or the crest of a siphon whose pressure falls this low draws vapour instead of water.",
)
