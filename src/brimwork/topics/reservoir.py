"""Reservoir: water in blocks and stone, the pit it needs, levels, dead and usable water, and the blocks that fit a pit."""

from __future__ import annotations

import math
from dataclasses import dataclass

from brimwork.formula import Formula, Published, Slip
from brimwork.sources import RAIN_CATCHMENT
from brimwork.steps import Solve, Step, Take
from brimwork.units import InputError

_OWN_SPACE = "own geometry: area, height and share; only the open-water case is printed, see water up to a level"
_SOLID_SHARE = (
    "You used the solid share instead of the empty share. If 95 % is empty, 0.95 of the space holds water, not 0.05. Multiply by the void fraction itself."
)
_PLAN_ONLY = "You used the whole plan area. The blocks fill part of it: multiply by their void fraction."

# --- water in the pit ---------------------------------------------------------------------------------------------------------------

water_in_pit = Formula(
    name="water in blocks and stone",
    result="V_w",
    equals="N_b*n_v*V_b + n_s*(V_pit - N_b*V_b)",
    steps=(
        Take("the blocks leave so much empty, and the stone its own share of what the blocks do not take up", "V_void = n_v*(N_b*V_b) + n_s*(V_pit - N_b*V_b)"),
        Take("filled to the top, all the empty space is water", "V_w = V_void"),
        Step("put it in"),
    ),
    where=("N_b*V_b < V_pit",),
    unpublished="it follows from the shape alone: two spaces, each with its own share",
    slips=(
        Slip("V_pit", "You counted the whole hole as water. Block plastic and stones take up room too; count only the spaces."),
        Slip("N_b*(1 - n_v)*V_b + (1 - n_s)*(V_pit - N_b*V_b)", _SOLID_SHARE),
        Slip("n_v*V_pit", "You gave the stone around the blocks the same empty share as the blocks. Split the hole in two and use each material's own share."),
        Slip("N_b*n_v*V_b + V_pit - N_b*V_b", "You counted the stone around the blocks as water. Only the gaps between the stones hold any."),
        Slip("N_b*n_v*V_b", "You left out the gaps in the stone around the blocks. They hold water as well."),
        Slip("N_b*n_s*V_b + n_v*(V_pit - N_b*V_b)", "The two shares have changed places: the blocks are nearly empty, the stone is not."),
    ),
    ranges={"V_pit": ("1500 L", "2500 L"), "V_b": ("20 L", "60 L")},
    rises=("N_b", "n_v", "V_b", "n_s", "V_pit"),
)

blocks_for_water = Formula(
    name="blocks needed in a pit",
    result="N_b",
    equals="(V_w - n_s*V_pit)/((n_v - n_s)*V_b)",
    inverse_of=water_in_pit,
    where=("n_s*V_pit < V_w", "V_w < n_v*V_pit"),
    unpublished="it follows from the shape alone: water in blocks and stone, turned round",
    slips=(
        Slip(
            "V_w/(n_v*V_b)",
            "You let the blocks hold all of it. The stone around them holds water too, so fewer blocks will do. Take off the water in the stone first.",
        ),
        Slip("V_w/V_b", "You counted each block as all water. Its void fraction of its outside volume is. Use what a block holds more than the stone does."),
    ),
    ranges={"V_w": ("500 L", "900 L"), "V_pit": ("1000 L", "1300 L")},
    rises=("V_w",),
    falls=("n_s", "V_pit", "n_v", "V_b"),
    remark="Round up: a part of a block is a block.",
)

mean_void_fraction = Formula(
    name="void fraction of a layer of blocks and stone",
    result="n_m",
    equals="n_s + (n_v - n_s)*A_b/A_pit",
    steps=(
        Take("side by side, blocks and stone leave empty for each unit of height", "A_w = n_v*A_b + n_s*(A_pit - A_b)"),
        Take("compare that with the whole area", "n_m = A_w/A_pit"),
        Step("divide"),
    ),
    where=("A_b < A_pit",),
    unpublished="it follows from the shape alone: two shares side by side",
    slips=(
        Slip("(n_v + n_s)/2", "A plain mean holds only where both take half of the area. Weigh each share with its own area."),
        Slip("n_v", "That is the share in the blocks alone. The stone beside them holds less. Share it out by the areas."),
    ),
    rises=("n_s", "n_v", "A_b"),
    falls=("A_pit",),
)

pit_for_water = Formula(
    name="pit needed for a volume of water",
    result="V_pit",
    equals="V_w/n_v",
    steps=(
        Take("of a pit filled with blocks their void fraction is water, which has to be what is needed", "V_w = n_v*V_pit"),
        Solve("solve for the pit", of="V_w"),
    ),
    unpublished=_OWN_SPACE,
    slips=(
        Slip("V_w*n_v", "You multiplied by the empty share, which makes the tank smaller than the water it must hold. To find the size you need, divide."),
        Slip("V_w", "You counted the whole pit as water. The blocks take up room too."),
        Slip("V_w/(1 - n_v)", _SOLID_SHARE),
    ),
    rises=("V_w",),
    falls=("n_v",),
    remark="The same formula tells what stone alone would need: put its own void fraction in, and the pit grows to more than twice the size.",
)

# --- levels -------------------------------------------------------------------------------------------------------------------------

water_area = Formula(
    name="water area",
    result="A_w",
    equals="A_b*n_v",
    steps=(
        Take("water between the floor and a depth, in the empty share", "V_w = n_v*(A_b*h)"),
        Take("the water area is that of an open tank with the same water at the same depth", "A_w = V_w/h"),
        Step("the depth cancels"),
    ),
    unpublished=_OWN_SPACE,
    slips=(Slip("A_b", _PLAN_ONLY), Slip("A_b*(1 - n_v)", _SOLID_SHARE), Slip("A_b/n_v", "You divided. The empty share makes the area smaller.")),
    rises=("A_b", "n_v"),
)

water_per_level = Formula(
    name="water for each millimetre of level",
    result="w_l",
    equals="A_b*n_v",
    steps=(
        water_area,
        Take("a rise of the level takes in the water area times the rise", "V_w = A_w*z_r"),
        Take("share it out over the rise", "w_l = V_w/z_r"),
        Step("the rise cancels"),
    ),
    published=(Published("A_b=1000 ft2, n_v=1", "623 US gal/in", 1e-3, RAIN_CATCHMENT.at("1000 ft2 x 1 in"), note="open water: void fraction 1"),),
    slips=(Slip("A_b", _PLAN_ONLY), Slip("A_b*(1 - n_v)", _SOLID_SHARE)),
    rises=("A_b", "n_v"),
    remark="A square metre of open water takes one litre for each millimetre; blocks take a little less.",
)

level_change = Formula(
    name="change of level",
    result="z_r",
    equals="V_w/(A_b*n_v)",
    steps=(
        water_per_level,
        Take("a volume moves the level by its share of the water area", "z_r = V_w/w_l"),
        Step("put the water for each unit of level in"),
    ),
    published=(Published("V_w=623 US gal, A_b=1000 ft2, n_v=1", "1 in", 1e-3, RAIN_CATCHMENT.at("1000 ft2 x 1 in, turned round")),),
    slips=(
        Slip("V_w/A_b", "You divided by the plan area. The water only stands in the empty share, so the level moves more."),
        Slip("V_w*n_v/A_b", "You multiplied by the void fraction. It makes the area smaller, and so the change bigger."),
    ),
    ranges={"V_w": ("5 L", "60 L")},
    rises=("V_w",),
    falls=("A_b", "n_v"),
)

water_to_level = Formula(
    name="water up to a level",
    result="V_w",
    equals="A_b*n_v*h",
    steps=(
        Take("a straight layer holds, up to the level", "V_pit = A_b*h"),
        Take("of which the empty share is water", "V_w = n_v*V_pit"),
        Step("multiply"),
    ),
    published=(Published("A_b=1000 ft2, n_v=1, h=1 in", "623 US gal", 1e-3, RAIN_CATCHMENT.at("1000 ft2 x 1 in"), note="open water: void fraction 1"),),
    slips=(Slip("A_b*h", _PLAN_ONLY), Slip("A_b*(1 - n_v)*h", _SOLID_SHARE)),
    rises=("A_b", "n_v", "h"),
)

level_of_water = Formula(
    name="level of a volume of water",
    result="h",
    equals="V_w/(A_b*n_v)",
    inverse_of=water_to_level,
    published=(Published("V_w=623 US gal, A_b=1000 ft2, n_v=1", "1 in", 1e-3, RAIN_CATCHMENT.at("1000 ft2 x 1 in, turned round")),),
    slips=(Slip("V_w/A_b", "You divided by the plan area. The water only stands in the empty share, so it stands higher."),),
    rises=("V_w",),
    falls=("A_b", "n_v"),
)

dead_water = Formula(
    name="dead water",
    result="V_dead",
    equals="A_b*n_v*h_min",
    steps=(
        water_area,
        Take("below the lowest level at which the pump may run all is dead water", "V_dead = A_w*h_min"),
        Step("put the water area in"),
    ),
    unpublished=_OWN_SPACE,
    slips=(Slip("A_b*h_min", _PLAN_ONLY),),
    rises=("A_b", "n_v", "h_min"),
)

usable_water = Formula(
    name="usable water above the pump limit",
    result="V_use",
    equals="A_b*n_v*(h_static - h_min)",
    steps=(
        dead_water,
        Take("up to the static level the blocks hold", "V_w = A_b*n_v*h_static"),
        Take("the pump can draw on all but the dead water", "V_use = V_w - V_dead"),
        Step("take out what both have"),
    ),
    where=("h_min < h_static",),
    unpublished=_OWN_SPACE,
    slips=(
        Slip("A_b*n_v*h_static", "You counted water below the pump inlet. The pump cannot reach it, so take that depth off first."),
        Slip("A_b*n_v*h_min", "That is the dead water, which the pump cannot reach. The usable water stands above it. Use the depth between the two levels."),
        Slip("A_b*(h_static - h_min)", _PLAN_ONLY),
        Slip("A_b*n_v*(h_static + h_min)", "You added the dead water. It does not help the pump: take it off."),
        Slip(
            "A_b*n_s*(h_static - h_min)",
            "You used the void fraction of the stone. The blocks have their own, more than twice as much. Put in that of the blocks.",
            also_given=("n_s",),
        ),
    ),
    rises=("A_b", "n_v", "h_static"),
    falls=("h_min",),
)

turnover_time = Formula(
    name="turnover time",
    result="t_turn",
    equals="V_use/Q",
    steps=(
        Take("in the time the pump moves as much as it can draw on", "V_use = Q*t_turn"),
        Solve("solve for the time", of="V_use"),
    ),
    unpublished="volume over flow, by definition",
    slips=(Slip("Q/V_use", "The two have changed places: a bigger pump turns the water over in less time."),),
    rises=("V_use",),
    falls=("Q",),
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class BlockFit:
    """How whole blocks fit a pit: numbers along, across and upwards, whether they lie turned by a quarter, and what is left over (m)."""

    along: int
    across: int
    layers: int
    turned: bool
    spare_length: float
    spare_width: float
    spare_height: float

    @property
    def blocks(self) -> int:
        return self.along * self.across * self.layers


def blocks_in_pit(L: float, W: float, D: float, block: tuple[float, float, float], clearance: float = 0.0) -> tuple[BlockFit, BlockFit]:
    """Both ways to lay blocks (length, width, height in m) in a pit of inside length L, width W and depth D (m): the one with more blocks first.

    `clearance` (m) stays free on each of the four sides. Blocks stand upright, all turned the same way. Raises InputError when none fits.
    """
    length, width, height = block
    if not (all(0.001 <= size < math.inf for size in (L, W, D, length, width, height)) and 0 <= clearance < math.inf):
        raise InputError("pit and block need lengths of a millimetre and more, and the clearance cannot be below zero: measure again and type metres")
    fits = [_fit(L, W, D, sizes, clearance, turned) for sizes, turned in (((length, width, height), False), ((width, length, height), True))]
    fits.sort(key=lambda fit: -fit.blocks)
    if not fits[0].blocks:
        raise InputError(
            f"no block of {length:g} x {width:g} x {height:g} m fits a pit of {L:g} x {W:g} x {D:g} m with {clearance:g} m free all round: widen or deepen the pit"
        )
    return fits[0], fits[1]


def _fit(L: float, W: float, D: float, sizes: tuple[float, float, float], clearance: float, turned: bool) -> BlockFit:
    room = (L - 2 * clearance, W - 2 * clearance, D)
    along, across, up = (max(0, math.floor(space / size + 1e-9)) for space, size in zip(room, sizes))
    spare = [max(0.0, space - count * size) for space, count, size in zip(room, (along, across, up), sizes)]
    return BlockFit(along, across, up, turned, *spare)
