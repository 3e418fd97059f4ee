"""Notches: flow through a V or a trapezoid, its fitted coefficients, and what an error in the head does to the flow."""

from brimwork.by_hand import ByHand
from brimwork.conditions import TestedRange
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import THIN_PLATE, free_fall
from brimwork.sources import SARKAR, SCHASCHKE, SHEN, SWMM_ENGINE, USBR
from brimwork.steps import Approach, Step, Take

_NOTCH = (TestedRange("H", "61 mm", "", USBR.at("ch. 7, s. 7: lower, the water clings to the plate")),)
_NO_ROOT_2 = "The 2 under the root is missing: falling speed is the root of two g z. Put in the 2."

v_notch = Formula(
    name="flow through a V-notch",
    result="Q",
    equals="8/15*C_d*sqrt(2*g)*tan(theta/2)*H**(5/2)",
    steps=(
        free_fall,
        Take("at a depth z the notch is open as far as the rest of the depth lets it", "b_z = 2*(H - z)*tan(theta/2)"),
        Take("add the thin layers from the surface down to the point", "Q = C_d*Integral(b_z*v, (z, 0, H))"),
        Step("integrate"),
    ),
    tested=_NOTCH,
    published=(
        Published("H=0.36 m, C_d=0.62, theta=90 deg, g=9.81 m/s2", "113.89 L/s", 1e-4, SARKAR.at("Ex 5.3")),
        Published("H=0.03 m, C_d=0.62, theta=90 deg", "0.228 L/s", 2e-3, SCHASCHKE.at("Worked example 7.10")),
    ),
    slips=(
        Slip("8/15*C_d*sqrt(2*g)*tan(theta/2)*H**(3/2)", "You used the power of a straight lip. A notch also widens with depth: power 5/2. Use the power 5/2."),
        Slip("8/15*C_d*sqrt(2*g)*tan(theta)*H**(5/2)", "You used the full angle. The tangent takes half of it, from the middle line to one side."),
        Slip("8/15*C_d*sqrt(g)*tan(theta/2)*H**(5/2)", _NO_ROOT_2),
        Slip(
            "2/3*C_d*sqrt(2*g)*tan(theta/2)*H**(5/2)",
            "Two thirds belong to a straight lip. The narrowing notch turns them into eight fifteenths. Put in eight fifteenths.",
        ),
    ),
    ranges={"H": ("20 mm", "80 mm"), "theta": ("40 deg", "80 deg")},
)

head_at_v_notch = Formula(
    name="head at a V-notch",
    result="H",
    equals="(15/8*Q/(C_d*sqrt(2*g)*tan(theta/2)))**(2/5)",
    inverse_of=v_notch,
    tested=_NOTCH,
    published=(Published("Q=1 L/s, C_d=0.58416, theta=90 deg", "55.46875 mm", 1e-3, SWMM_ENGINE.at("steady head at a V-notch with coefficient 1.38")),),
    slips=(
        Slip(
            "(15/8*Q/(C_d*sqrt(2*g)*tan(theta/2)))**(5/2)",
            "To undo 'to the power 5/2' you need the power 2/5. Check: does a bigger flow give a sensible depth?",
        ),
        Slip("(15/8*Q/(C_d*sqrt(2*g)*tan(theta/2)))**(2/3)", "That is the power of a straight lip. A notch needs 2/5. Use the power 2/5."),
    ),
    ranges={"theta": ("40 deg", "80 deg")},
)

notch_coefficient = Formula(
    name="discharge coefficient of a V-notch",
    result="C_d",
    equals="0.607165052 - 0.000874466963*(180*theta/pi) + 6.10393334e-6*(180*theta/pi)**2",
    close="0.001",
    fitted="Kindsvater and Shen, to measured notches of 25 to 100 degrees",
    tested=(TestedRange("theta", "25 deg", "100 deg", SHEN.at("range of the notches measured")),),
    published=(Published("theta=90 deg", "0.5779", 1e-5, SHEN.at("90 degree notch")),),
)

notch_head_correction = Formula(
    name="head correction of a V-notch",
    result="k_h",
    equals="l_foot*(0.0144902648 - 0.00033955535*(180*theta/pi) + 3.29819003e-6*(180*theta/pi)**2 - 1.06215442e-8*(180*theta/pi)**3)",
    fitted="Kindsvater and Shen, to measured notches of 25 to 100 degrees",
    tested=(TestedRange("theta", "25 deg", "100 deg", SHEN.at("range of the notches measured")),),
    published=(Published("theta=90 deg", "0.885 mm", 1e-3, SHEN.at("90 degree notch")),),
)

corrected_v_notch = Formula(
    name="flow through a V-notch with corrected head",
    result="Q",
    equals="8/15*C_d*sqrt(2*g)*tan(theta/2)*(H + k_h)**(5/2)",
    fitted="Kindsvater and Shen, with their coefficient and head correction",
    tested=_NOTCH,
    by_hand=(ByHand("theta=60 deg, C_d=0.58, H=100 mm, k_h=1 mm", "8/15*0.58*sqrt(2*9.80665)*tan(60/2*3.14159265/180)*0.101**2.5*1000", "2.56416 L/s"),),
    published=(
        Published(
            "theta=90 deg, H=0.2 m", "24.799 L/s", 6e-3, USBR.at("90 degree notch, 2.49 h^2.48 in feet"), after=(notch_coefficient, notch_head_correction)
        ),
        Published(
            "theta=90 deg, H=0.3 m", "67.787 L/s", 2e-3, USBR.at("90 degree notch, 2.49 h^2.48 in feet"), after=(notch_coefficient, notch_head_correction)
        ),
    ),
    ranges={"H": ("20 mm", "80 mm")},
)

trapezoid_notch = Formula(
    name="flow through a trapezoidal notch",
    result="Q",
    equals="2/3*C_d*b*sqrt(2*g)*H**(3/2) + 8/15*C_d*sqrt(2*g)*tan(theta/2)*H**(5/2)",
    steps=(
        free_fall,
        Take("the opening is the flat sill and, on both sides, what the slopes leave open at that depth", "b_z = b + 2*(H - z)*tan(theta/2)"),
        Take("add the thin layers from the surface down to the sill", "Q = C_d*Integral(b_z*v, (z, 0, H))"),
        Step("integrate: a straight lip and a V-notch side by side"),
    ),
    tested=THIN_PLATE,
    published=(Published("b=0.3 m, theta=90 deg, H=0.2 m, C_d=0.62", "0.075327 m3/s", 3e-4, SARKAR.at("Ex 5.4")),),
    slips=(
        Slip("2/3*C_d*b*sqrt(2*g)*H**(3/2)", "That is the flat sill alone. The sloping sides add a V-notch."),
        Slip("8/15*C_d*sqrt(2*g)*tan(theta/2)*H**(5/2)", "That is the V of the sloping sides alone. The flat sill adds a straight lip."),
        Slip(
            "2/3*C_d*(b + 2*H*tan(theta/2))*sqrt(2*g)*H**(3/2)",
            "You used the width at the water surface for every layer. Lower layers are narrower. Add up a straight lip and a V-notch.",
        ),
        Slip(
            "2/3*C_d*b*sqrt(2*g)*H**(3/2) + 8/15*C_d*sqrt(2*g)*tan(theta)*H**(5/2)",
            "You used the full angle. The tangent takes half of it, from the middle line to one side.",
        ),
    ),
    ranges={"H": ("20 mm", "80 mm"), "theta": ("40 deg", "80 deg"), "b": ("200 mm", "500 mm")},
)

head_error = Formula(
    name="flow error from a head error",
    result="r_Q",
    equals="n_w*e_H/H",
    steps=(
        Take("flow goes with a power of the head, so an error in the head is raised to that power", "r_Q = (1 + e_H/H)**n_w - 1"),
        Approach("for an error that is small against the head", letter="e_H", to="0*H"),
    ),
    published=(Published("Q=0.05 m3/s, C_d=0.6, theta=90 deg, n_w=2.5, e_H=0.25 mm", "0.00238", 2e-3, SARKAR.at("Ex 5.11"), after=(head_at_v_notch,)),),
    slips=(
        Slip("e_H/H", "That is the share of the head. Flow goes with a power of the head, and the share is multiplied by it."),
        Slip("(e_H/H)**n_w", "The power comes down as a factor when the change is small; it does not stay up. Multiply the share by the power."),
    ),
)
