"""Lining: the box round the blocks, the liner as cut, its area and mass, the roll to buy, panels from a sheet, and the stone over it."""

from __future__ import annotations

from brimwork.formula import Formula, Slip, Step, Take

_BOTH_SIDES = "You allowed for one side only. Both sides need it, so count it twice."
_DOWN_AND_UP = "The liner goes down one side and up the other. Count the depth twice."
_BOTH_EDGES = "You left an edge on one end only. Both ends need one."
_NO_EDGE = "You left no edge. The liner must reach over the apron and have something to trim."
_OWN = "own geometry: lengths added up"

# --- the box ------------------------------------------------------------------------------------------------------------------------

box_inside = Formula(
    name="inside length of the box",
    result="L_in",
    equals="L_bl + 2*(t_li + c_side)",
    defined="the blocks, and lining and clearance at both ends",
    unpublished=_OWN,
    slips=(
        Slip("L_bl", "You made the box the size of the blocks. Lining and clearance lie between, at both ends."),
        Slip("L_bl + t_li + c_side", _BOTH_SIDES),
        Slip("L_bl + 2*t_li", "You left out the clearance. Blocks jam and cut the liner without it."),
        Slip("L_bl + 2*c_side", "You left out the thickness of the lining, at both ends."),
    ),
    remark="The width goes the same way. Common practice: 10 to 20 mm of clearance on each side.",
)

box_outside = Formula(
    name="outside length of the box",
    result="L_out",
    equals="L_in + 2*t_pan",
    defined="the inside, and a panel at each end",
    unpublished=_OWN,
    slips=(
        Slip("L_in", "You forgot the panels at the ends. The long panels lap over them."),
        Slip("L_in + t_pan", "You added one thickness. There is a panel at each end."),
        Slip("L_in - 2*t_pan", "You took the panels off. They stand outside the inside."),
    ),
    remark="The long panels are as long as this and lap the end panels, which are as long as the inside is wide.",
)

# --- the liner ----------------------------------------------------------------------------------------------------------------------

liner_length = Formula(
    name="length of the liner",
    result="l_cut",
    equals="L_in + 2*(D + w_apron + w_trim)",
    steps=(
        Take("at each end the liner goes up the side, over the apron, and has something to trim", "l_end = D + w_apron + w_trim"),
        Take("between lies the floor", "l_cut = l_end + L_in + l_end"),
        Step("put both ends in"),
    ),
    unpublished=_OWN,
    slips=(
        Slip("L_in + D + 2*(w_apron + w_trim)", _DOWN_AND_UP),
        Slip("L_in + 2*D + w_apron + w_trim", _BOTH_EDGES),
        Slip("L_in + 2*D", _NO_EDGE),
        Slip("L_in + 2*(w_apron + w_trim)", "You forgot that the liner goes down into the pit and up again: twice the depth."),
        Slip("L_in + 4*D + 2*(w_apron + w_trim)", "You counted the depth four times. Along the length there are two sides."),
        Slip("L_in", "That covers the floor alone."),
    ),
    remark="The width goes the same way. Common practice adds some 2 % so that nothing is stretched; the liner is trimmed when the pit is full, never before.",
)

liner_area = Formula(
    name="area of the liner",
    result="A_cut",
    equals="(L_in + 2*(D + w_apron + w_trim))*(W_in + 2*(D + w_apron + w_trim))",
    steps=(
        liner_length,
        Take("across, it needs the same beyond the floor", "w_cut = W_in + 2*(D + w_apron + w_trim)"),
        Take("it is cut from one flat rectangle", "A_cut = l_cut*w_cut"),
        Step("put both in"),
    ),
    unpublished=_OWN,
    slips=(
        Slip(
            "L_in*W_in + 2*D*(L_in + W_in)",
            "You added up the faces. Liner is cut from one flat rectangle, and the corners become folds, so multiply the two cut lengths.",
        ),
        Slip(
            "L_in*W_in + 2*(D + w_apron + w_trim)*(L_in + W_in)",
            "You added floor, sides and edges, and left the corners out. Liner is cut from one flat rectangle: multiply the two cut lengths.",
        ),
        Slip("(L_in + D + 2*(w_apron + w_trim))*(W_in + D + 2*(w_apron + w_trim))", _DOWN_AND_UP),
        Slip("(L_in + 2*D + w_apron + w_trim)*(W_in + 2*D + w_apron + w_trim)", _BOTH_EDGES),
        Slip("(L_in + 2*D)*(W_in + 2*D)", _NO_EDGE),
    ),
)

liner_mass = Formula(
    name="mass of the liner",
    result="m_liner",
    equals="rho_liner*A_cut*t_sheet",
    defined="the density times the volume of a sheet",
    unpublished="a volume times a density",
    slips=(
        Slip("rho*A_cut*t_sheet", "You used the density of water. Sheet is heavier.", also_given=("rho",)),
        Slip("rho_liner*t_sheet", "That is the mass of one square metre. Multiply by the area."),
        Slip("rho_liner*A_cut", "You left out the thickness."),
    ),
    remark="Weigh it in your head before unrolling it: a large sheet is a lift for two.",
)

# --- stone --------------------------------------------------------------------------------------------------------------------------

stone_area = Formula(
    name="area of the stone",
    result="A_cov",
    equals="(L_in + 2*w_apron)*(W_in + 2*w_apron) - A_bare",
    steps=(
        Take("the stone reaches the apron's width beyond the box at both ends and sides", "A_z = (L_in + 2*w_apron)*(W_in + 2*w_apron)"),
        Take("where the plinth stands there is none", "A_cov = A_z - A_bare"),
        Step("put the whole in"),
    ),
    unpublished="own geometry: one rectangle less a smaller patch",
    slips=(
        Slip("(L_in + 2*w_apron)*(W_in + 2*w_apron)", "You covered the plinth with stone as well. Take its area off."),
        Slip("(L_in + w_apron)*(W_in + w_apron) - A_bare", "You counted the apron on one side only. It goes all round: twice its width in each direction."),
        Slip("L_in*W_in - A_bare", "You left out the apron. The stone reaches beyond the box."),
        Slip("(L_in + 2*w_apron)*(W_in + 2*w_apron) + A_bare", "You added the plinth. No stone lies where it stands: take it off."),
    ),
)

stone_mass = Formula(
    name="mass of stone to order",
    result="m_stone",
    equals="A_cov*t_st*rho_bulk*(1 + s_waste)",
    steps=(
        Take("the layer takes up", "V = A_cov*t_st"),
        Take("waste and spilling add their share", "m_stone = V*rho_bulk + s_waste*(V*rho_bulk)"),
        Step("put the layer in"),
    ),
    unpublished="a volume times a density and a share; areas and volumes are checked",
    slips=(
        Slip("A_cov*t_st*rho_bulk", "You left nothing for waste. Some is lost on the way and some is the wrong size."),
        Slip(
            "A_cov*t_st*rho_s*(1 + s_waste)",
            "You used the density of solid rock. A layer of loose stone has gaps; use the loose (bulk) figure.",
            also_given=("rho_s",),
        ),
        Slip("A_cov*t_st*rho_bulk*(1 - s_waste)", "You took the waste off. It has to be bought too: add it."),
        Slip("A_cov*t_st*rho_bulk*s_waste", "That is the waste alone."),
        Slip("A_cov*rho_bulk*(1 + s_waste)", "You left out the thickness of the layer."),
    ),
    remark="Stone in bags is bought in whole bags: round up.",
)
