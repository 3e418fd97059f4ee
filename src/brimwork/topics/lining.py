"""Lining: the liner as cut, its area and mass, the roll to buy, the fleece on both its faces, and the stone over it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import slope_squared
from brimwork.sources import PLIMPTON
from brimwork.steps import Solve, Step, Take
from brimwork.units import InputError

_DOWN_AND_UP = "The liner goes down one side and up the other. Count the depth twice."
_BOTH_EDGES = "You left an edge on one end only. Both ends need one. Add apron and edge twice."
_NO_EDGE = "You left no edge. The liner must reach over the apron and have something to trim. Add both, twice."
_OWN = "own geometry: lengths added up"

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
        Slip("L_in + 4*D + 2*(w_apron + w_trim)", "You counted the depth four times. Along the length there are two sides. Count it twice."),
        Slip("L_in", "That covers the floor alone."),
    ),
    remark="The width goes the same way. Common practice adds some 2 % so that nothing is stretched; the liner is trimmed when the pit is full, never before.",
)

liner_area = Formula(
    name="area of the liner",
    result="A_cut",
    equals="(L_in + 2*(D + w_apron + w_trim))*(W_in + 2*(D + w_apron + w_trim))",
    steps=(
        Take("at each end the liner goes up the side, over the apron, and has something to trim", "l_end = D + w_apron + w_trim"),
        Take("along the length the floor lies between two ends", "l_cut = l_end + L_in + l_end"),
        Take("across, it lies between two ends like them", "w_cut = l_end + W_in + l_end"),
        Take("it is cut from one flat rectangle", "A_cut = l_cut*w_cut"),
        Step("put all in"),
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
    by_hand=(ByHand("rho_liner=1150 kg/m3, A_cut=12 m2, t_sheet=0.8 mm", "1150*12*0.0008", "11.04 kg"),),
    unpublished="a volume times a density",
    slips=(
        Slip("rho*A_cut*t_sheet", "You used the density of water. Put in that of the sheet.", also_given=("rho",)),
        Slip("rho_liner*t_sheet", "That is the mass of one square metre. Multiply by the area."),
        Slip("rho_liner*A_cut", "You left out the thickness."),
    ),
    remark="Weigh it in your head before unrolling it: a large sheet is a lift for two.",
)

slope_length = Formula(
    name="length of a sloping side",
    result="l_side",
    equals="sqrt(D**2 + s_back**2)",
    steps=(slope_squared, Solve("solve for the slope")),
    published=(Published("D=0.6 m, s_back=0.45 m", "0.75 m", 1e-9, PLIMPTON.at("row 11: 45, 60 and 75")),),
    slips=(
        Slip("D", "The side slopes, so the liner runs along the slope, which is longer than the depth."),
        Slip("D + s_back", "You went down and then across. Along the slope is shorter: add the squares and take the root."),
        Slip("D**2 + s_back**2", "You forgot the root. The sum of the squares is the square of the length. Take the root."),
        Slip("sqrt(D**2 - s_back**2)", "You subtracted the squares. The slope is longer than the depth: add them."),
    ),
    ranges={"D": ("400 mm", "900 mm"), "s_back": ("100 mm", "390 mm")},
)

battered_liner_length = Formula(
    name="length of the liner for sloping sides",
    result="l_cut",
    equals="L + 2*(sqrt(D**2 + s_back**2) + w_apron + w_trim)",
    steps=(
        slope_length,
        Take("at each end the liner goes up the slope, over the apron, and has something to trim", "l_end = l_side + w_apron + w_trim"),
        Take("between lies the floor", "l_cut = l_end + L + l_end"),
        Step("put both ends in"),
    ),
    unpublished="it follows from the shape alone: lengths added up; the slope is checked",
    slips=(
        Slip("L + 2*(D + w_apron + w_trim)", "The side slopes, so the liner runs along the slope. Find the slope length from depth and set-back."),
        Slip("L + 2*(D + s_back + w_apron + w_trim)", "You went down and then across. Along the slope is shorter: add the squares and take the root."),
        Slip(
            "L + 2*(D**2 + s_back**2 + w_apron + w_trim)",
            "You forgot the root. The sum of the squares is the square of the slope. Take the root before you add the rest.",
        ),
        Slip("L + sqrt(D**2 + s_back**2) + 2*(w_apron + w_trim)", "You counted one slope. The liner goes down one side and up the other. Add the slope twice."),
        Slip("L + 2*sqrt(D**2 + s_back**2)", _NO_EDGE),
    ),
    remark="The width goes the same way. The length at the top with twice the depth is a rule of thumb that is too long.",
)

round_liner_length = Formula(
    name="side of the liner for a round pit",
    result="l_cut",
    equals="d_t + 2*(D + w_apron + w_trim)",
    steps=(
        Take("at each end the liner goes up the side, over the apron, and has something to trim", "l_end = D + w_apron + w_trim"),
        Take("between lies the floor, across its middle", "l_cut = l_end + d_t + l_end"),
        Step("put both ends in"),
    ),
    unpublished=_OWN,
    slips=(
        Slip("d_t + D + 2*(w_apron + w_trim)", _DOWN_AND_UP),
        Slip("pi*d_t + 2*(D + w_apron + w_trim)", "You used the way round. The sheet lies across the floor: use the diameter."),
        Slip("d_t/2 + 2*(D + w_apron + w_trim)", "You used the radius. The sheet lies across the whole floor. Put in the whole diameter."),
        Slip("d_t + 2*D", _NO_EDGE),
    ),
    remark="A round pit takes a square sheet: this is its side.",
)

fleece_area = Formula(
    name="area of the protection fleece",
    result="A_fl",
    equals="(L_in + 2*w_apron)*(W_in + 2*w_apron) + 4*D*(L_in + W_in) + L_in*W_in",
    steps=(
        Take("the sides of the box are, all round", "A_sides = 2*D*(L_in + W_in)"),
        Take(
            "under the liner it covers the floor and the apron, which are one rectangle seen from above, and the sides",
            "A_under = (L_in + 2*w_apron)*(W_in + 2*w_apron) + A_sides",
        ),
        Take("over the liner it covers floor and sides only", "A_fl = A_under + L_in*W_in + A_sides"),
        Step("put both in"),
    ),
    unpublished="it follows from the shape alone: rectangles added up",
    slips=(
        Slip(
            "(L_in + 2*w_apron)*(W_in + 2*w_apron) + 2*D*(L_in + W_in)",
            "You forgot the inner layer. The fleece lies on both faces of the liner. Add the area of floor and sides once more.",
        ),
        Slip("2*(2*D*(L_in + W_in) + L_in*W_in)", "You forgot the apron under the liner. Add it, all round."),
        Slip("2*D*(L_in + W_in) + L_in*W_in", "You counted the inner layer only. The fleece lies on both faces of the liner. Add the layer under the liner."),
        Slip(
            "(L_in + 2*(D + w_apron))*(W_in + 2*(D + w_apron)) + 2*D*(L_in + W_in) + L_in*W_in",
            "You used the flat rectangle of the liner, which counts the folds in the corners. Fleece is laid in pieces. Add up the pieces.",
        ),
    ),
    remark="Net, without laps. Stop the inner layer 20 mm below the liner's edge, or it draws water out like a wick.",
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
    unpublished="it follows from the shape alone: one rectangle less a smaller patch",
    slips=(
        Slip("(L_in + 2*w_apron)*(W_in + 2*w_apron)", "You covered the plinth with stone as well. Take its area off."),
        Slip(
            "(L_in + w_apron)*(W_in + w_apron) - A_bare",
            "You counted the apron on one side only. It goes all round: twice its width in each direction. Add twice the apron to each side.",
        ),
        Slip("L_in*W_in - A_bare", "You left out the apron. The stone reaches beyond the box. Add it on every side."),
        Slip("(L_in + 2*w_apron)*(W_in + 2*w_apron) + A_bare", "You added the plinth. No stone lies where it stands: take it off."),
    ),
)

stone_mass = Formula(
    name="mass of stone to order",
    result="m_stone",
    equals="A_cov*t_st*rho_bulk*(1 + s_waste)",
    steps=(
        Take("the layer takes up its area times its thickness", "V = A_cov*t_st"),
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
        Slip("A_cov*t_st*rho_bulk*s_waste", "That is the waste alone. Add it to the mass that is laid."),
        Slip("A_cov*rho_bulk*(1 + s_waste)", "You left out the thickness of the layer."),
    ),
    remark="Stone in bags is bought in whole bags: round up.",
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Roll:
    """The roll to buy: its width and the length to take off it (m), what is spare in width, and whether the liner's width runs along the roll."""

    width: float
    length: float
    spare: float
    turned: bool


def choose_roll(l_cut: float, w_cut: float, widths: Sequence[float]) -> Roll:
    """The narrowest of the rolls `widths` (m) that covers the narrower side of a liner l_cut x w_cut (m) without a seam.

    Raises InputError when no roll is wide enough.
    """
    if not (0 < l_cut < math.inf and 0 < w_cut < math.inf and widths and min(widths) > 0):
        raise InputError(
            f"a liner of {l_cut:g} x {w_cut:g} m and rolls of {', '.join(f'{w:g}' for w in widths)} m: give lengths above zero, such as 3.5 x 3.1 m"
        )
    across, along = min(l_cut, w_cut), max(l_cut, w_cut)
    wide = [width for width in widths if width >= across * (1 - 1e-12)]
    if not wide:
        raise InputError(
            f"no roll up to {max(widths):g} m covers {across:g} m in one piece: order a wider one, or a sheet that a specialist welds or joints; do not glue one in the garden"
        )
    return Roll(min(wide), along, min(wide) - across, w_cut > l_cut)


def shortest_off_a_roll(l_cut: float, w_cut: float, widths: Sequence[float], slack: float = 0.0) -> Roll:
    """The narrowest roll that covers a liner l_cut x w_cut (m) in one piece, and the way round that takes less length off it. Raises InputError when none does.

    The longer side lies across the roll only where its width holds that side and a share of slack.
    """
    roll = choose_roll(l_cut, w_cut, widths)
    across, along = sorted((l_cut, w_cut))
    fits = across < along and along * (1 + slack) <= roll.width
    return Roll(roll.width, across, roll.width - along, not roll.turned) if fits else roll
