"""Ground: the size of the pit, its diagonal, what is dug and how it bulks, thrust of the ground, and the distances to keep from footings and trees."""

from __future__ import annotations

import math

from brimwork import tables
from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import diagonal_squared, root_circle, soil_about_to_slip
from brimwork.sources import CALTRANS, GEOTECH, PLIMPTON, ROOT_AREA, UNATTRIBUTED
from brimwork.steps import Eliminate, Solve, Step, Take
from brimwork.tables import LEAST_FROM_FOOTING
from brimwork.units import InputError

_BOTH_SIDES = "You allowed for one side only. Both sides need it, so count it twice."
_LOOSE_IS_MORE = "Dug soil loosens and takes up more room, so the heap is bigger than the hole."
_SERVICES = "Before any digging: records, a search with a locator, marks on the ground; dig by hand near a mark."

# --- the pit ------------------------------------------------------------------------------------------------------------------------

pit_side = Formula(
    name="length of the pit",
    result="L_dig",
    equals="L_out + 2*t_work",
    defined="the box, and working space at both ends",
    by_hand=(ByHand("L_out=1286 mm, t_work=150 mm", "1286 + 2*150", "1586 mm"),),
    unpublished="it follows from the shape alone: a length and two equal spaces",
    slips=(
        Slip("L_out + t_work", _BOTH_SIDES),
        Slip("L_out", "You made the pit the size of the box. Nobody could fill and ram round it: leave working space."),
        Slip("L_out + 4*t_work", "You counted the working space four times. Along the length there are two ends. Add it twice."),
    ),
    remark="The width goes the same way. " + _SERVICES,
)

pit_depth = Formula(
    name="depth of the pit",
    result="D_dig",
    equals="t_st + h_bl + t_li + t_sand + t_sub",
    defined="the layers from the finished ground down: stone, blocks, lining, sand, sub-base",
    close="1 mm",
    by_hand=(ByHand("t_st=60 mm, h_bl=400 mm, t_li=8 mm, t_sand=30 mm, t_sub=100 mm", "60 + 400 + 8 + 30 + 100", "598 mm"),),
    unpublished="it follows from the shape alone: layers added up",
    slips=(
        Slip("h_bl + t_li + t_sand + t_sub", "You left out the stone over the blocks. They lie below the finished ground by its thickness."),
        Slip("t_st + h_bl", "You dug to the underside of the blocks. The lining, the sand and the sub-base lie below them. Add their thicknesses."),
        Slip("h_bl", "You dug as deep as the blocks are high. Count every layer between the finished ground and the formation."),
        Slip("t_st + h_bl + t_li + t_sand", "You left out the sub-base. It lies under the sand."),
    ),
    remark="Any depth can collapse: spoil and feet 0.6 m back, nobody kneels in an unsupported pit, and a competent person judges the sides.",
)

pit_diagonal = Formula(
    name="diagonal for squaring",
    result="d_diag",
    equals="sqrt(L_dig**2 + W_dig**2)",
    steps=(diagonal_squared, Solve("solve for the diagonal")),
    published=(
        Published("L_dig=1.2 m, W_dig=1.19 m", "1.69 m", 1e-9, PLIMPTON.at("row 1: 119, 120 and 169")),
        Published("L_dig=6 m, W_dig=4.5 m", "7.5 m", 1e-9, PLIMPTON.at("row 11: 45, 60 and 75")),
    ),
    slips=(
        Slip("L_dig + W_dig", "You added the sides. That is the way round the corner; the diagonal is shorter. Square both sides, add them and take the root."),
        Slip("sqrt(L_dig**2 - W_dig**2)", "You subtracted the squares. The diagonal is longer than both sides: add them."),
        Slip("L_dig", "You compared with the long side. The diagonal of a rectangle is longer."),
    ),
    ranges={"L_dig": ("1600 mm", "3200 mm"), "W_dig": ("900 mm", "1590 mm")},
    remark="A pit or box is square when both diagonals are the same; the sum tells how long they should be.",
)

excavation = Formula(
    name="volume to dig",
    result="V_dig",
    equals="L_dig*W_dig*D_dig",
    steps=(
        Take("a pit with upright sides has the same area at every height", "A_z = L_dig*W_dig"),
        Take("add the slices up", "V_dig = Integral(A_z, (z_f, 0, D_dig))"),
        Step("all slices are equal, so the depth only multiplies"),
    ),
    unpublished="it follows from the shape alone: a box; pits with battered sides are checked at volume of a battered pit",
    slips=(
        Slip(
            "(L_dig - 2*t_work)*(W_dig - 2*t_work)*D_dig",
            "You left out the working space round the box. It has to be dug too. Use the length and the width of the pit.",
            also_given=("t_work",),
        ),
        Slip("L_dig*W_dig", "That is an area. Multiply by the depth."),
        Slip("2*(L_dig + W_dig)*D_dig", "That is the area of the sides. Multiply length, width and depth."),
    ),
    remark=_SERVICES,
)

loose_spoil = Formula(
    name="loose volume of spoil",
    result="V_loose",
    equals="V_dig*(1 + s_swell)",
    defined="the swell is a share of the volume in the ground",
    published=(Published("V_dig=1000 yd3, s_swell=0.3", "1300 yd3", 1e-9, UNATTRIBUTED.at("1,000 cubic yards of dense clay, 30 %")),),
    slips=(
        Slip("V_dig", f"This is the hole. {_LOOSE_IS_MORE}"),
        Slip("V_dig/(1 + s_swell)", "You divided, so your heap is smaller than the hole. Loosened soil takes more room: multiply."),
        Slip("V_dig*s_swell", "That is only the growth. The heap is the soil that was there and the growth. Add the two."),
        Slip("V_dig*(1 - s_swell)", f"You made it shrink. {_LOOSE_IS_MORE}"),
        Slip("V_dig/(1 - s_swell)", "You divided by one less the share. The share is of the volume in the ground: multiply by one plus it."),
    ),
    remark="A bulking factor of 1.30 is a share of 0.30.",
)

spoil_mass = Formula(
    name="mass of spoil",
    result="m_spoil",
    equals="V_dig*rho_bank",
    steps=(
        loose_spoil,
        Take("loosening adds no mass: the loose density is smaller by as much", "rho_loose = rho_bank/(1 + s_swell)"),
        Take("mass is volume times density, both loose", "m_spoil = V_loose*rho_loose"),
        Step("what it bulks cancels"),
    ),
    unpublished="a volume times a density; the volumes are checked",
    slips=(
        Slip(
            "V_dig*(1 + s_swell)*rho_bank",
            "You used loose volume with in-ground density. Digging does not add mass; pair hole volume with in-ground density.",
            also_given=("s_swell",),
        ),
        Slip(
            "V_dig*rho_bank/(1 + s_swell)",
            "You used the volume of the hole with loose density. Pair hole volume with in-ground density.",
            also_given=("s_swell",),
        ),
        Slip(
            "V_dig*rho",
            "You used the density of water. Soil in the ground weighs much more. Put in the density of the soil in the ground.",
            also_given=("rho",),
        ),
    ),
)

swell_from_densities = Formula(
    name="swell from densities",
    result="s_swell",
    equals="rho_bank/rho_loose - 1",
    steps=(
        Take("digging changes the volume and not the mass", "V_loose = V_dig*rho_bank/rho_loose"),
        Take("the swell is what it grows by, as a share of what was dug", "s_swell = (V_loose - V_dig)/V_dig"),
        Step("the volume cancels"),
    ),
    where=("rho_loose < rho_bank",),
    published=(Published("rho_bank=3400 lb/yd3, rho_loose=2700 lb/yd3", "0.26", 3e-3, UNATTRIBUTED.at("3400 and 2700 pounds a cubic yard: 26 %")),),
    slips=(
        Slip(
            "1 - rho_loose/rho_bank",
            "You compared with the heap. The swell is a share of the volume in the ground. Divide the density in the ground by the loose one, then take one off.",
        ),
        Slip("rho_bank/rho_loose", "That is the bulking factor, whole and growth together. The swell is the growth alone: take 1 off."),
        Slip("rho_loose/rho_bank", "Upside down: the soil in the ground is the denser one."),
    ),
)

# --- what goes back in --------------------------------------------------------------------------------------------------------------

compaction_factor = Formula(
    name="compaction factor from densities",
    result="k_comp",
    equals="rho_fill/(rho_loose*(1 - s_lost))",
    steps=(
        Take("of the loose material a share is lost on the way", "m_fill = rho_loose*V_loose*(1 - s_lost)"),
        Take("the rest lies compacted in", "V_fill = m_fill/rho_fill"),
        Take("the factor compares loose with compacted", "k_comp = V_loose/V_fill"),
        Step("the volume cancels"),
    ),
    where=("rho_loose < rho_fill",),
    published=(
        Published(
            "rho_fill=1750 kg/m3, rho_loose=1600 kg/m3, s_lost=0.05",
            "1.151316",
            1e-6,
            GEOTECH.at("chapter 3, shrinkage factor of 17.5 and 16 kN/m3"),
            note="only the ratio of the two counts; the text carried beside that function prints 1 + s_lost, which loses mass",
        ),
    ),
    slips=(
        Slip("rho_loose/rho_fill", "Upside down: it takes more loose material than the layer is big."),
        Slip("rho_fill/rho_loose", "You left out what is lost on the way."),
        Slip("rho_fill*(1 - s_lost)/rho_loose", "You took the loss off. More has to be bought, not less: divide."),
    ),
    ranges={"s_lost": ("0.03", "0.1")},
)

layer_mass = Formula(
    name="mass of a compacted layer to order",
    result="m_fill",
    equals="L_dig*W_dig*t_sub*k_comp*rho_loose",
    steps=(
        Take("compacted, the layer takes up its area times its thickness", "V_fill = L_dig*W_dig*t_sub"),
        Take("loose, that is more by the compaction factor", "V_loose = k_comp*V_fill"),
        Take("mass is volume times density, both loose", "m_fill = rho_loose*V_loose"),
        Step("put both in"),
    ),
    unpublished="a volume times a factor and a density; the factor is checked",
    slips=(
        Slip("L_dig*W_dig*t_sub*rho_loose", "You ordered the compacted volume. It is bought loose, and takes up more room so."),
        Slip("L_dig*W_dig*t_sub*rho_loose/k_comp", "You divided by the factor. Loose material takes more room than the layer, so multiply."),
        Slip("L_dig*W_dig*k_comp*rho_loose", "You left out the thickness of the layer."),
    ),
    remark="Compact in layers; over-dig is made up with the same material, never with loose soil.",
)

backfill_mass = Formula(
    name="mass of backfill to order",
    result="m_fill",
    equals="(L_dig*W_dig - L_out*W_out)*D*k_comp*rho_loose",
    steps=(
        Take("seen from above, the box leaves a ring of the pit", "A_z = L_dig*W_dig - L_out*W_out"),
        Take("up to the top of the box that is, compacted", "V_fill = A_z*D"),
        Take("loose, that is more by the compaction factor", "V_loose = k_comp*V_fill"),
        Take("mass is volume times density, both loose", "m_fill = rho_loose*V_loose"),
        Step("put all in"),
    ),
    where=("L_out < L_dig", "W_out < W_dig"),
    unpublished="it follows from the shape alone: one rectangle less another; the factor is checked",
    slips=(
        Slip("L_dig*W_dig*D*k_comp*rho_loose", "You filled the whole pit. The box stands in it: take its plan off."),
        Slip("(L_dig*W_dig - L_out*W_out)*D*rho_loose", "You ordered the compacted volume. It is bought loose, and takes up more room so."),
        Slip("(L_dig*W_dig - L_out*W_out)*D*rho_loose/k_comp", "You divided by the factor. Loose material takes more room than the layer, so multiply."),
        Slip("(L_dig - L_out)*(W_dig - W_out)*D*k_comp*rho_loose", "That is the four corners alone. Take the plan of the box off the plan of the pit."),
    ),
    remark="Fill in layers of 150 mm all round, with the box strutted inside.",
)

# --- thrust on the box --------------------------------------------------------------------------------------------------------------

_BOX_ONLY = (
    "For the box of a buried reservoir while it is filled round: strut it inside, fill in layers of 150 mm at most, on alternate sides. "
    "A raised or retaining wall is a structure, and this is no design for one: an engineer designs it."
)

active_coefficient = Formula(
    name="active coefficient of earth pressure",
    result="K_soil",
    equals="(1 - sin(phi_s))/(1 + sin(phi_s))",
    steps=(
        soil_about_to_slip,
        Take("compare the push to the side with the weight above", "K_soil = p_side/p_over"),
        Eliminate("the pressures cancel", out=("p_side", "p_over")),
    ),
    published=(
        Published("phi_s=41 deg", "0.21", 0.015, CALTRANS.at("Table 3-2: dense gravel")),
        Published("phi_s=34 deg", "0.28", 0.01, CALTRANS.at("Table 3-2: medium-dense gravel")),
        Published("phi_s=29 deg", "0.35", 0.01, CALTRANS.at("Table 3-2: loose gravel")),
    ),
    slips=(
        Slip("(1 + sin(phi_s))/(1 - sin(phi_s))", "Upside down: that is the passive coefficient, of ground that is pushed back. Here it leans on the box."),
        Slip("1 - sin(phi_s)", "That is the coefficient at rest, of a wall that does not give at all."),
        Slip("1", "Only a fluid pushes sideways as hard as it weighs. Drained fill holds itself in part."),
    ),
    remark=_BOX_ONLY,
)

rest_coefficient = Formula(
    name="coefficient of earth pressure at rest",
    result="K_soil",
    equals="1 - sin(phi_s)",
    fitted="J. Jaky (1944), to sands and gravels that were never loaded more",
    by_hand=(ByHand("phi_s=34 deg", "1 - sin(34*3.14159265/180)", "0.440807"),),
    published=(Published("phi_s=30 deg", "0.5", 1e-9, CALTRANS.at("at-rest coefficient, 30 degrees")),),
    slips=(
        Slip(
            "(1 - sin(phi_s))/(1 + sin(phi_s))",
            "That is the active coefficient, of a wall that gives a little. One that stands still is pushed harder. Use one less the sine.",
        ),
        Slip("sin(phi_s)", "The steeper the angle of friction, the less it pushes: one less the sine. Take one less the sine."),
    ),
    remark=_BOX_ONLY,
)

fill_thrust = Formula(
    name="thrust of fill on a side of the box",
    result="F_fill",
    equals="1/2*K_soil*rho_fill*g*D**2*L_out",
    steps=(
        Take("at a depth the weight above presses down on each square metre", "p_over = rho_fill*g*z_fill"),
        Take("a share of it presses to the side", "p_side = K_soil*p_over"),
        Take("add it up over the depth", "F_fill = L_out*Integral(p_side, (z_fill, 0, D))"),
        Step("integrate"),
    ),
    published=(
        Published("K_soil=0.5, rho_fill=2000 kg/m3, g=10 m/s2, D=2.5 m, L_out=1 m", "31.25 kN", 1e-9, UNATTRIBUTED.at("basement wall, 20 kN/m3, 2.5 m deep")),
    ),
    slips=(
        Slip("K_soil*rho_fill*g*D**2*L_out", "You used the pressure at the foot over the whole depth. It grows from nothing: half of that."),
        Slip("1/2*rho*g*D**2*L_out", "You used water alone. Flooded fill is about twice as heavy. Put in the density of the fill.", also_given=("rho",)),
        Slip("1/2*K_soil*rho_fill*g*D*L_out", "You left out one depth: pressure grows with depth, and the area does too."),
        Slip("1/2*K_soil*rho_fill*D**2*L_out", "That is a mass. A force is mass times gravity, in newtons."),
    ),
    remark=f"Flooded sand acts for a while like a fluid of 2000 kg/m3: its coefficient is 1. {_BOX_ONLY}",
)

# --- distances to keep --------------------------------------------------------------------------------------------------------------

footing_distance = Formula(
    name="distance to keep from a footing",
    result="x_foot",
    equals="k_foot*(D_dig - D_foot)",
    defined="a line down and outwards from the underside of the footing, which the pit must not cut",
    where=("D_foot < D_dig",),
    by_hand=(ByHand("k_foot=1.5, D_dig=0.75 m, D_foot=0.35 m", "1.5*(0.75 - 0.35)", "0.6 m"),),
    unpublished="common practice, no source: 1.0 in firm ground, 1.5 in loose ground",
    slips=(
        Slip("k_foot*D_dig", "You measured from the surface. The line starts at the underside of the footing."),
        Slip("(D_dig - D_foot)/k_foot", "Upside down: loose ground needs a longer distance."),
        Slip("k_foot*(D_dig + D_foot)", "You added the depth of the footing. Only what lies below it counts: take it off."),
    ),
    remark="And at least 0.5 m. A pit nearer than this is for an engineer.",
)

root_radius = Formula(
    name="root protection radius",
    result="r_root",
    equals="12*d_stem",
    fitted="BS 5837:2012, to trees of one stem, measured 1.5 m above the ground",
    published=(Published("d_stem=1250 mm", "15 m", 1e-9, ROOT_AREA.at("largest root protection area: a circle of 15 m")),),
    slips=(
        Slip("12*d_stem/2", "You used the radius of the stem. The rule is twelve times its diameter. Put in the diameter."),
        Slip("12*pi*d_stem", "You used the girth. Divide the girth by pi first: the rule takes the diameter."),
    ),
    ranges={"d_stem": ("50 mm", "1250 mm")},
    remark="At most 15 m. This is what is protected, not how far roots reach: they go well beyond. Inside the circle an arboriculturist decides, and digging is by hand. In the US: a foot for each inch of stem, common practice.",
)

root_area = Formula(
    name="root protection area",
    result="A_root",
    equals="pi*(12*d_stem)**2",
    steps=(root_radius, root_circle, Step("put the radius in")),
    published=(Published("d_stem=1250 mm", "707 m2", 1e-3, ROOT_AREA.at("largest root protection area: 707 m2")),),
    slips=(
        Slip("pi/4*(12*d_stem)**2", "You took the radius for the diameter of the circle. It is four times as large. Use twelve stem diameters as the radius."),
        Slip("2*pi*12*d_stem", "That is the way round the circle. An area needs the radius squared. Square the radius and multiply by pi."),
    ),
    ranges={"d_stem": ("50 mm", "1250 mm")},
)

# --- digging ------------------------------------------------------------------------------------------------------------------------

digging_time = Formula(
    name="time of digging by hand",
    result="t_dig",
    equals="V_dig*k_dig",
    defined="the hours for each cubic metre in the ground, from a table",
    by_hand=(ByHand("V_dig=1.8 m3, k_dig=2.5 h/m3", "1.8*2.5", "4.5 h"),),
    unpublished="a volume times a tabled figure; two tables differ by up to two thirds, so give a range",
    slips=(
        Slip("V_dig/k_dig*3600**2", "You divided. Hours for each cubic metre multiply; cubic metres an hour divide. Multiply the volume by the hours."),
        Slip(
            "V_dig*(1 + s_swell)*k_dig",
            "You used the loose volume. The table is for soil as it lies in the ground. Put in the volume in the ground.",
            also_given=("s_swell",),
        ),
    ),
    remark="Loading, barrowing and backfilling come on top: common tables give about an hour for each cubic metre of each.",
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------


def loads(volume: float, load: float) -> int:
    """Whole loads that carry away `volume` (m3, loose) with `load` (m3, loose) at a time. Raises InputError when the load is not above zero."""
    if not (0 < load < math.inf and 0 <= volume < math.inf):
        raise InputError(f"{volume:g} m3 in loads of {load:g} m3 cannot be counted: give a loose volume, and a load above zero such as 0.085 m3 for a barrow")
    return math.ceil(volume / load * (1 - 1e-12))


def digging_hours(V_dig: float, soil: str) -> tuple[float, float]:
    """Least and most hours (in s) to dig V_dig (m3 in the ground) by hand in a soil of the table. Raises InputError for an unknown soil."""
    row = tables.hand_digging(soil)
    return digging_time(V_dig=V_dig, k_dig=row.low), digging_time(V_dig=V_dig, k_dig=row.high)


def clear_of_footing(D_dig: float, D_foot: float, k_foot: float) -> float:
    """Distance (m) to keep from a footing of depth D_foot (m): at least 0.5 m, and more where the pit is deeper than the footing."""
    least = LEAST_FROM_FOOTING.value
    return least if D_dig <= D_foot else max(least, footing_distance(k_foot=k_foot, D_dig=D_dig, D_foot=D_foot))
