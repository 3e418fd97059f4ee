"""Ground: the size of the pit, its diagonal, what is dug and how it bulks, thrust of the ground, and the distances to keep from footings and trees."""

from __future__ import annotations

from brimwork.formula import Formula, Published, Slip, Solve, Step, Take
from brimwork.laws import diagonal_squared
from brimwork.sources import PLIMPTON, UNATTRIBUTED

_BOTH_SIDES = "You allowed for one side only. Both sides need it, so count it twice."
_LOOSE_IS_MORE = "Dug soil loosens and takes up more room, so the heap is bigger than the hole."
_SERVICES = "Before any digging: records, a search with a locator, marks on the ground; dig by hand near a mark."

# --- the pit ------------------------------------------------------------------------------------------------------------------------

pit_side = Formula(
    name="length of the pit",
    result="L_dig",
    equals="L_out + 2*t_work",
    steps=(
        Take("the pit is as long as the box and the working space at both ends", "L_dig = t_work + L_out + t_work"),
        Step("add"),
    ),
    unpublished="own geometry: a length and two equal spaces",
    slips=(
        Slip("L_out + t_work", _BOTH_SIDES),
        Slip("L_out", "You made the pit the size of the box. Nobody could fill and ram round it: leave working space."),
        Slip("L_out + 4*t_work", "You counted the working space four times. Along the length there are two ends."),
    ),
    remark="The width goes the same way. " + _SERVICES,
)

pit_depth = Formula(
    name="depth of the pit",
    result="D_dig",
    equals="t_st + h_bl + t_li + t_sand + t_sub",
    steps=(
        Take("from the finished ground down lie the stone and the blocks, down to the floor", "z_f = t_st + h_bl"),
        Take("below the floor lie the lining, the sand and the sub-base", "D_dig = z_f + t_li + t_sand + t_sub"),
        Step("put the floor in"),
    ),
    unpublished="own geometry: layers added up",
    slips=(
        Slip("h_bl + t_li + t_sand + t_sub", "You left out the stone over the blocks. They lie below the finished ground by its thickness."),
        Slip("t_st + h_bl", "You dug to the underside of the blocks. The lining, the sand and the sub-base lie below them."),
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
        Slip("L_dig + W_dig", "You added the sides. That is the way round the corner; the diagonal is shorter."),
        Slip("sqrt(L_dig**2 - W_dig**2)", "You subtracted the squares. The diagonal is longer than both sides: add them."),
        Slip("L_dig", "You compared with the long side. The diagonal of a rectangle is longer."),
    ),
    where=("W_dig < L_dig",),
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
    unpublished="own geometry: a box; pits with battered sides are checked at volume of a battered pit",
    slips=(
        Slip("(L_dig - 2*t_work)*(W_dig - 2*t_work)*D_dig", "You left out the working space round the box. It has to be dug too.", also_given=("t_work",)),
        Slip("L_dig*W_dig", "That is an area. Multiply by the depth."),
        Slip("2*(L_dig + W_dig)*D_dig", "That is the area of the sides. Multiply length, width and depth."),
    ),
    remark=_SERVICES,
)

loose_spoil = Formula(
    name="loose volume of spoil",
    result="V_loose",
    equals="V_dig*(1 + s_swell)",
    steps=(
        Take("loosening adds its share to what was dug", "V_loose = V_dig + s_swell*V_dig"),
        Step("take the volume out"),
    ),
    published=(Published("V_dig=1000 yd3, s_swell=0.3", "1300 yd3", 1e-9, UNATTRIBUTED.at("1,000 cubic yards of dense clay, 30 %")),),
    slips=(
        Slip("V_dig", f"This is the hole. {_LOOSE_IS_MORE}"),
        Slip("V_dig/(1 + s_swell)", "You divided, so your heap is smaller than the hole. Loosened soil takes more room: multiply."),
        Slip("V_dig*s_swell", "That is only the growth. The heap is the soil that was there and the growth."),
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
        Slip("V_dig*rho", "You used the density of water. Soil in the ground weighs nearly twice as much.", also_given=("rho",)),
    ),
)
