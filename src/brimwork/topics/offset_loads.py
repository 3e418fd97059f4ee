"""Load off the middle: the pressure at both edges of a base, the kern, and what happens when part of the base lifts.

The straight-line pressure is that of a stiff base on even ground. Where a piece is tall, raised or near people, an engineer decides.
"""

from __future__ import annotations

from dataclasses import dataclass

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import pressure_balances_offset, pressure_carries_weight
from brimwork.sources import GEOTECH, TIMOSHENKO, UFC_DM7, UNATTRIBUTED, VARIGNON
from brimwork.steps import Law, Rearrange, Solve, Step, Take
from brimwork.units import InputError

_PAST_KERN = "This holds while the whole base presses. Past a sixth of its width use the formula for partial contact."

# --- base that presses all over ------------------------------------------------------------------------------------------------------------

_STRAIGHT = (
    Take("a stiff base on even ground: the pressure changes in a straight line along it", "p_x = p_mid + c_p*x_b"),
    pressure_carries_weight,
    Step("what grows on one side of the middle is missing on the other: only the pressure under the middle counts", "F_w = L_base*p_mid*B_base"),
    Solve("solve for the pressure under the middle", of="F_w", relation="p_mid = F_w/(B_base*L_base)"),
    pressure_balances_offset,
    Rearrange("now the even part cancels, and the squares add up to a twelfth of the cube of the width", "F_w*e_off = L_base*c_p*B_base**3/12"),
    Solve("solve for the growth", relation="c_p = 12*F_w*e_off/(B_base**3*L_base)"),
)

greatest_pressure = Formula(
    name="greatest pressure under an offset load",
    result="p_max",
    equals="F_w/(B_base*L_base)*(1 + 6*e_off/B_base)",
    steps=(*_STRAIGHT, Take("it is greatest at the edge on the side of the load", "p_max = p_mid + c_p*B_base/2"), Step("put both in")),
    where=("e_off < 1.0001*B_base/6",),
    published=(Published("F_w=9.6 kN, B_base=1.2 m, L_base=0.8 m, e_off=0.1 m", "15 kPa", 1e-9, GEOTECH.at("corner_bearing_pressure(10, 0.1, 0, 1.2, 0.8)")),),
    slips=(
        Slip("F_w/(B_base*L_base)", "That is the mean. Off the middle, the near edge carries more."),
        Slip("F_w/(B_base*L_base)*(1 - 6*e_off/B_base)", "That is the least pressure, at the far edge."),
        Slip("F_w/(B_base*L_base)*(1 + e_off/B_base)", "The 6 is missing: an offset of a sixth of the width already doubles the pressure."),
        Slip("F_w/(B_base*L_base)*(1 + 6*e_off/L_base)", "You compared the offset with the width across. Take the width in the direction of the offset."),
    ),
    ranges={"e_off": ("10 mm", "120 mm"), "B_base": ("800 mm", "1800 mm")},
    remark=_PAST_KERN,
)

least_pressure = Formula(
    name="least pressure under an offset load",
    result="p_min",
    equals="F_w/(B_base*L_base)*(1 - 6*e_off/B_base)",
    steps=(*_STRAIGHT, Take("it is least at the far edge", "p_min = p_mid - c_p*B_base/2"), Step("put both in")),
    where=("e_off < 1.0001*B_base/6",),
    published=(Published("F_w=9.6 kN, B_base=1.2 m, L_base=0.8 m, e_off=0.1 m", "5 kPa", 1e-9, GEOTECH.at("corner_bearing_pressure(10, 0.1, 0, 1.2, 0.8)")),),
    slips=(
        Slip("F_w/(B_base*L_base)*(1 + 6*e_off/B_base)", "That is the greatest pressure, at the near edge."),
        Slip("F_w/(B_base*L_base)", "That is the mean. Off the middle, the far edge carries less."),
    ),
    ranges={"e_off": ("10 mm", "120 mm"), "B_base": ("800 mm", "1800 mm")},
    remark=_PAST_KERN,
)

corner_pressure = Formula(
    name="greatest pressure under a load offset both ways",
    result="p_max",
    equals="F_w/(B_base*L_base)*(1 + 6*e_off/B_base + 6*e_ac/L_base)",
    steps=(
        Take("the pressure changes in a straight line both ways", "p_x = p_mid + c_p*x_b + c_a*x_a"),
        Law(
            "what the ground presses up, added over the base, is the weight",
            "F_w = Integral(Integral(p_x, (x_b, -B_base/2, B_base/2)), (x_a, -L_base/2, L_base/2))",
            VARIGNON.at("balance of forces and of moments"),
        ),
        Solve("solve for the pressure under the middle", of="F_w", relation="p_mid = F_w/(B_base*L_base)"),
        Law(
            "it turns about the middle as much as the weight does, one way",
            "F_w*e_off = Integral(Integral(p_x*x_b, (x_b, -B_base/2, B_base/2)), (x_a, -L_base/2, L_base/2))",
            VARIGNON.at("balance of forces and of moments"),
        ),
        Solve("solve for the growth along", relation="c_p = 12*F_w*e_off/(B_base**3*L_base)"),
        Law(
            "and the other",
            "F_w*e_ac = Integral(Integral(p_x*x_a, (x_b, -B_base/2, B_base/2)), (x_a, -L_base/2, L_base/2))",
            VARIGNON.at("balance of forces and of moments"),
        ),
        Solve("solve for the growth across", relation="c_a = 12*F_w*e_ac/(L_base**3*B_base)"),
        Take("it is greatest in the corner on the side of the load", "p_max = p_mid + c_p*B_base/2 + c_a*L_base/2"),
        Step("put all in"),
    ),
    where=("e_off/B_base + e_ac/L_base < 1.0001/6",),
    published=(
        Published(
            "F_w=597.62 kN, B_base=1.8 m, L_base=1.8 m, e_off=0.0560871 m, e_ac=0.0058894 m",
            "222.556 kPa",
            1e-5,
            UNATTRIBUTED.at("footing sheet, 1.8 m square, moments 33.5188 and 3.5196 kN m"),
        ),
        Published(
            "F_w=597.62 kN, B_base=1.8 m, L_base=1.8 m, e_off=0.056087 m, e_ac=0.005889 m",
            "222.55563 kPa",
            1e-5,
            GEOTECH.at("corner_bearing_pressure(184.4506, 0.056087, 0.005889, 1.8, 1.8)"),
        ),
    ),
    slips=(Slip("F_w/(B_base*L_base)*(1 + 6*e_off/B_base)", "You took the offset one way only. In the corner both add."),),
    ranges={"e_off": ("10 mm", "80 mm"), "e_ac": ("5 mm", "60 mm"), "B_base": ("800 mm", "1800 mm"), "L_base": ("800 mm", "1800 mm")},
    remark="While the offsets, each over its own width, add up to at most a sixth. Beyond that a corner lifts: bring the load nearer the middle.",
)

kern = Formula(
    name="edge of the kern",
    result="e_k",
    equals="B_base/6",
    steps=(
        Take("there the far edge carries nothing: the pressure grows in a straight line from it", "p_x = c_p*(x_b + B_base/2)"),
        pressure_carries_weight,
        Take("call that offset the edge of the kern", "e_off = e_k"),
        pressure_balances_offset,
        Solve("solve for it"),
    ),
    published=(
        Published(
            "B_base=6 ft", "1 ft", 1e-9, UFC_DM7.at("Eq. 5-5: the resultant within the middle third"), note="a third of 6 ft, from the middle to each side"
        ),
    ),
    slips=(
        Slip("B_base/3", "The middle third is a third wide altogether: from the middle it reaches a sixth to each side. Divide the width by six."),
        Slip("B_base/8", "That is the kern of a round base. Divide by six for a base with four sides."),
    ),
)

kern_of_ring = Formula(
    name="edge of the kern of a ring foot",
    result="e_k",
    equals="(d_fo**2 + d_fi**2)/(8*d_fo)",
    steps=(
        Take("there the far edge carries nothing: the pressure grows in a straight line from it", "p_x = c_p*(x_b + d_fo/2)"),
        Law(
            "what the ground presses up, over the outer circle less the inner, is the weight",
            "F_w = Integral(2*p_x*sqrt(d_fo**2/4 - x_b**2), (x_b, -d_fo/2, d_fo/2)) - Integral(2*p_x*sqrt(d_fi**2/4 - x_b**2), (x_b, -d_fi/2, d_fi/2))",
            VARIGNON.at("balance of forces and of moments"),
        ),
        Law(
            "about the middle, it turns as much one way as the weight turns the other",
            "F_w*e_k = Integral(2*p_x*x_b*sqrt(d_fo**2/4 - x_b**2), (x_b, -d_fo/2, d_fo/2))"
            " - Integral(2*p_x*x_b*sqrt(d_fi**2/4 - x_b**2), (x_b, -d_fi/2, d_fi/2))",
            VARIGNON.at("balance of forces and of moments"),
        ),
        Solve("solve for the offset"),
    ),
    where=("d_fi < d_fo",),
    published=(Published("d_fo=0.8 m, d_fi=0 m", "0.1 m", 1e-9, TIMOSHENKO.at("core of a circular section: an eighth of the diameter")),),
    slips=(
        Slip("d_fo/6", "That is the kern of a rectangle. A circle has less of itself at its edge. Use both diameters, and divide by eight."),
        Slip("d_fo/8", "That is the kern of a full circle. A ring has its area further out, and its kern is wider."),
    ),
)

# --- part of the base lifts -----------------------------------------------------------------------------------------------------------

_TRIANGLE = (
    Take("past the kern a part of the base lifts; over the contact the pressure grows in a straight line from nothing", "p_x = p_max*x_c/b_c"),
    Law("what the ground presses up, added over the contact, is the weight", "F_w = L_base*Integral(p_x, (x_c, 0, b_c))", VARIGNON.at("balance of forces")),
    Law(
        "about the loaded edge, it turns as much one way as the weight turns the other",
        "F_w*(B_base/2 - e_off) = L_base*Integral(p_x*(b_c - x_c), (x_c, 0, b_c))",
        VARIGNON.at("balance of moments"),
    ),
)
_PAST = ("B_base/6 < e_off", "e_off < B_base/2")
_LIFTS = "Part of the base lifts at every gust or push: bring the load nearer the middle. At half the width it falls over."

contact_length = Formula(
    name="length of base still in contact",
    result="b_c",
    equals="3*(B_base/2 - e_off)",
    steps=(*_TRIANGLE, Solve("solve for the length in contact")),
    where=_PAST,
    published=(Published("B_base=1.2 m, e_off=0.3 m", "0.9 m", 1e-9, GEOTECH.at("effective_base_width_triangular(0.3)")),),
    slips=(
        Slip("B_base/2 - e_off", "That is the distance from the load to the edge. The triangle is three times as long."),
        Slip("2*(B_base/2 - e_off)", "Twice is for an even pressure over part of the base. A triangle is three times as long. Multiply by three."),
    ),
    ranges={"e_off": ("160 mm", "450 mm"), "B_base": ("800 mm", "1200 mm")},
    remark=_LIFTS,
)

partial_contact_pressure = Formula(
    name="greatest pressure under partial contact",
    result="p_max",
    equals="2*F_w/(3*L_base*(B_base/2 - e_off))",
    steps=(
        *_TRIANGLE,
        Solve("solve for the length in contact", relation="b_c = 3*(B_base/2 - e_off)"),
        Solve("solve the first for the greatest pressure", of="F_w"),
    ),
    where=_PAST,
    published=(Published("F_w=8 kN, L_base=1 m, B_base=1.2 m, e_off=0.3 m", "17.777778 kPa", 1e-7, GEOTECH.at("base_pressure_max_triangular(8, 0.3)")),),
    slips=(
        Slip(
            "F_w/(B_base*L_base)*(1 + 6*e_off/B_base)",
            "That lets the ground pull the far edge down. It cannot: past the kern part of the base lifts, and the near edge carries more. Use the length that is still in contact.",
        ),
        Slip("F_w/(3*L_base*(B_base/2 - e_off))", "That is the mean over the contact. The edge of a triangle carries twice as much. Double it."),
        Slip(
            "F_w/(2*L_base*(B_base/2 - e_off))",
            "That spreads the weight evenly over part of the base. With a straight growth the edge carries a third more. Share it out as a triangle.",
        ),
    ),
    ranges={"e_off": ("160 mm", "450 mm"), "B_base": ("800 mm", "1200 mm")},
    remark=_LIFTS,
)

soil_utilisation = Formula(
    name="utilisation of the soil",
    result="u_p",
    equals="p_max/p_soil",
    defined="the greatest pressure, compared with what is presumed for the soil",
    by_hand=(ByHand("p_max=45 kPa, p_soil=60 kPa", "45/60", "0.75"),),
    unpublished="a ratio, by definition",
    slips=(Slip("p_soil/p_max", "Upside down: over 1 must mean too much."),),
    ranges={"p_max": ("5 kPa", "60 kPa")},
    remark="Presumed pressures are not for mud, peat or loose fill. In doubt a ground engineer decides.",
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class EdgePressure:
    """Pressures (Pa) at both edges, length in contact (m), and which case it is: "middle third" or "partial contact"."""

    case: str
    greatest: float
    least: float
    contact: float


def edge_pressure(F_w: float, B_base: float, L_base: float, e_off: float) -> EdgePressure:
    """Pressures under a stiff base of B_base by L_base (m) that carries F_w (N) at e_off (m) from its middle, along B_base.

    Raises InputError when the load stands at or past the edge: nothing holds it.
    """
    if not e_off < B_base / 2:
        raise InputError(
            f"the load stands {e_off:g} m off the middle of a base {B_base:g} m wide: it falls over. Bring it nearer the middle, or widen the base"
        )
    base = {"F_w": F_w, "B_base": B_base, "L_base": L_base, "e_off": e_off}
    if e_off <= kern(B_base=B_base):
        return EdgePressure("middle third", greatest_pressure(**base), max(0.0, least_pressure(**base)), B_base)
    return EdgePressure("partial contact", partial_contact_pressure(**base), 0.0, contact_length(B_base=B_base, e_off=e_off))
