"""The box that holds the lining while the ground is filled in round it: its size, its panels, and how to cut them from sheets."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache, partial

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Slip
from brimwork.needing import needed
from brimwork.steps import Step, Take
from brimwork.units import InputError

_BOTH_SIDES = "You allowed for one side only. Both sides need it, so count it twice."
_OWN = "own geometry: lengths added up"

# --- its size ------------------------------------------------------------------------------------------------------------------------

box_inside = Formula(
    name="inside length of the box",
    result="L_in",
    close="1 mm",
    equals="L_bl + 2*(t_li + c_side)",
    defined="the blocks, and lining and clearance at both ends",
    by_hand=(ByHand("L_bl=1200 mm, t_li=10 mm, c_side=15 mm", "1200 + 2*(10 + 15)", "1250 mm"),),
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
    close="1 mm",
    equals="L_in + 2*t_pan",
    defined="the inside, and a panel at each end",
    by_hand=(ByHand("L_in=1250 mm, t_pan=18 mm", "1250 + 2*18", "1286 mm"),),
    unpublished=_OWN,
    slips=(
        Slip("L_in", "You forgot the panels at the ends. The long panels lap over them."),
        Slip("L_in + t_pan", "You added one thickness. There is a panel at each end."),
        Slip("L_in - 2*t_pan", "You took the panels off. They stand outside the inside."),
    ),
    remark="The long panels are as long as this and lap the end panels, which are as long as the inside is wide.",
)

# --- what pushes on it -----------------------------------------------------------------------------------------------------------------

panel_bow = Formula(
    name="bow of a panel between struts",
    result="w_bow",
    equals="5*p_side*s_strut**4/(32*E_pan*t_pan**3)",
    steps=(
        Take("an even push bends a strip of the panel, a metre high and free to turn at its struts", "m_bend = p_side*(s_strut*x_strut - x_strut**2)/2"),
        Take(
            "every bent part moves the middle by half its distance from the strut; a strip of a board resists with a twelfth of its thickness cubed",
            "w_bow = 2*Integral(m_bend*x_strut/2, (x_strut, 0, s_strut/2))/(E_pan*t_pan**3/12)",
        ),
        Step("put the moment in and integrate"),
    ),
    by_hand=(ByHand("p_side=2 kPa, s_strut=600 mm, E_pan=6000 MPa, t_pan=18 mm", "1000*5*2000*0.6**4/(32*6e9*0.018**3)", "1.15741 mm"),),
    unpublished="5/384 of the textbooks for an even load on a beam free to turn at its ends, with the stiffness of a strip of board put in",
    slips=(
        Slip(
            "p_side*s_strut**4/(32*E_pan*t_pan**3)", "That is a strip that cannot turn at its struts. A panel on struts turns freely: take five times as much."
        ),
        Slip("5*p_side*s_strut**4/(384*E_pan*t_pan**3)", "You left out the twelfth in the stiffness of the strip. Divide the thickness cubed by twelve."),
        Slip("5*p_side*s_strut**3/(32*E_pan*t_pan**2)", "You took the wrong powers. Use the fourth power of the distance and the third of the thickness."),
    ),
    rises=("p_side", "s_strut"),
    falls=("t_pan", "E_pan"),
    remark="Twice the distance bows sixteen times as much: struts come before thickness. Common practice: 5 mm at most before the fill goes in.",
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Panel:
    """One panel of the box: which it is, length and height (m)."""

    name: str
    length: float
    height: float


@dataclass(frozen=True)
class Cut:
    """Where a panel lies: which sheet (from 0), its corner, its length and width on the sheet (m), and whether it was turned."""

    panel: Panel
    sheet: int
    x: float
    y: float
    length: float
    width: float
    turned: bool


def cut_sheets(panels: Sequence[Panel], length: float, width: float, saw: float) -> tuple[Cut, ...]:
    """Lay `panels` out on as few sheets length x width (m) as the packer finds, `saw` (m) apart, so that every cut runs from edge to edge.

    The grain is not kept: panels may be turned. Raises InputError for a panel that is larger than a sheet.
    """
    if not (0 < length < math.inf and 0 < width < math.inf and 0 <= saw < min(length, width)):
        raise InputError(
            f"a sheet of {length:g} x {width:g} m with a saw cut of {saw:g} m cannot be cut: give a sheet such as 2.44 x 1.22 m and a cut of 0.004 m"
        )
    for panel in panels:
        if not (0 < panel.length < math.inf and 0 < panel.height < math.inf):
            raise InputError(f"the {panel.name} is {panel.length:g} x {panel.height:g} m: give lengths above zero")
        if max(panel.length, panel.height) > max(length, width) or min(panel.length, panel.height) > min(length, width):
            raise InputError(
                f"the {panel.name}, {panel.length:g} x {panel.height:g} m, is larger than a sheet of {length:g} x {width:g} m: join it, or buy larger sheets"
            )
    return _best_layout(tuple(panels), length, width, saw)


@lru_cache(64)
def _best_layout(panels: tuple[Panel, ...], length: float, width: float, saw: float) -> tuple[Cut, ...]:
    layouts = [_lay_out(panels, length, width, saw, order) for order in ("SORT_LSIDE", "SORT_SSIDE", "SORT_AREA", "SORT_PERI")]
    return min(layouts, key=lambda cuts: (max((cut.sheet for cut in cuts), default=0), max((cut.y + cut.width for cut in cuts), default=0.0)))


_GRAIN = 1e4  # the packer counts whole tenths of a millimetre; panels are rounded up to them


def _lay_out(panels: Sequence[Panel], length: float, width: float, saw: float, order: str) -> tuple[Cut, ...]:
    with needed("rectpack", "laying panels out on sheets"):
        import rectpack
        from rectpack.guillotine import GuillotineBssfSas

    gap = _up(saw)
    packer = rectpack.newPacker(pack_algo=partial(GuillotineBssfSas, merge=False), sort_algo=getattr(rectpack, order), rotation=True)
    packer.add_bin(_down(length) + gap, _down(width) + gap, count=max(1, len(panels)))
    for number, panel in enumerate(panels):
        packer.add_rect(_up(panel.length) + gap, _up(panel.height) + gap, rid=number)
    packer.pack()
    placed = sorted(packer.rect_list(), key=lambda row: row[5])
    return tuple(_cut(panels[number], sheet, x, y, across, up, gap) for sheet, x, y, across, up, number in placed)


def _cut(panel: Panel, sheet: int, x: int, y: int, across: int, up: int, gap: int) -> Cut:
    turned = (across, up) != (_up(panel.length) + gap, _up(panel.height) + gap)
    length, width = (panel.height, panel.length) if turned else (panel.length, panel.height)
    return Cut(panel, sheet, x / _GRAIN, y / _GRAIN, length, width, turned)


def _up(size: float) -> int:
    return math.ceil(size * _GRAIN - 1e-6)


def _down(size: float) -> int:
    return math.floor(size * _GRAIN + 1e-6)
