"""What stands inside a derivation about volumes and levels: a pit and its slice, a bowl, blocks and stone, what is usable, what goes up on start."""

from __future__ import annotations

import math
from collections.abc import Callable

from brimwork.drawing.pictures.paper import rectangle, steps
from brimwork.drawing.pictures.sketching import edge_of, letter_along, letter_at, sketch_of
from brimwork.drawing.records import Arrow, Level, Line, Mark, Polygon, Sheet

# --- volumes ------------------------------------------------------------------------------------------------------------------------


def _battered_pit() -> Sheet:
    floor, top, low, high, at = (18.0, 46.0), (6.0, 58.0), 12.0, 44.0, 30.0
    lean = (at - low) / (high - low) * 12
    return sketch_of(
        "A slice of a pit with leaning sides, and the pit from above",
        "Left, a section: the floor is L long, the sides lean outwards, and a thin level slice at the height z_f is L_z long. Right, from above: the core over the"
        " floor in the middle, four leaning wedges along its sides, and a small pyramid in each of the four corners.",
        Polygon(((floor[0], low), (floor[1], low), (top[1], high), (top[0], high)), "water", "none"),
        Polygon(rectangle(floor[0] - lean, at, floor[1] + lean, at + 2.4), "patch", "thin"),
        edge_of((top[0], high), (floor[0], low), (floor[1], low), (top[1], high)),
        Level((50.0, high)),
        letter_along((floor[0], low), (floor[1], low), "L", -5.0),
        letter_along((floor[0] - lean, at + 2.4), (floor[1] + lean, at + 2.4), "L_z", 4.0),
        letter_along((60.0, low), (60.0, high), "h", -3.0),
        letter_along((floor[0], low), (floor[0], at), "z_f", -6.0),
        Polygon(rectangle(74, 8, 116, 48), "water", "outline"),
        Polygon(rectangle(84, 18, 106, 38), "patch", "thin"),
        *(Line(pair, "thin") for pair in (((74, 8), (84, 18)), ((116, 8), (106, 18)), ((74, 48), (84, 38)), ((116, 48), (106, 38)))),
        letter_at((95, 29), "core"),
        letter_at((95, 24), "L W h"),
        letter_at((95, 42), "wedge"),
        letter_at((95, 12), "wedge"),
        Line(((74, 38), (84, 38), (84, 48)), "hidden"),
        letter_at((79, 51), "corner"),
    )  # fmt: skip


def _round_bowl() -> Sheet:
    centre, radius, at, depth = (62.0, 52.0), 44.0, 24.0, 34.0
    low = centre[1] - radius
    half, wide = math.sqrt(radius**2 - (centre[1] - at) ** 2), math.sqrt(radius**2 - (centre[1] - low - depth) ** 2)
    arc = [(centre[0] + radius * math.sin(a), centre[1] - radius * math.cos(a)) for a in steps(-1.34, 1.34, 40)]
    return sketch_of(
        "A level slice of a ball",
        "A bowl that is part of a ball of radius R_s. A level slice at the height z_f is a circle. Its radius is one side of a right-angled triangle: the long side is R_s, and the"
        " upright one is R_s less z_f.",
        Polygon(tuple((x, y) for x, y in arc if y <= low + depth), "water", "none"),
        Polygon(rectangle(centre[0] - half, at, centre[0] + half, at + 2.0), "patch", "thin"),
        Line(tuple(arc), "outline"),
        Line(((centre[0] - wide, low + depth), (centre[0] + wide, low + depth)), "water"),
        Line((centre, (centre[0], at), (centre[0] + half, at), centre), "thin"),
        Mark(centre, 0.8),
        letter_at((centre[0] + half / 2 + 7, (centre[1] + at) / 2 + 2), "R_s", "start"),
        letter_at((centre[0] - 1.5, (centre[1] + at) / 2), "R_s − z_f", "end"),
        letter_along((centre[0] - half - 16, low), (centre[0] - half - 16, at), "z_f", 3.0),
        letter_along((112.0, low), (112.0, low + depth), "h", -2.0),
    )


# --- blocks, stone, levels ----------------------------------------------------------------------------------------------------------


def _blocks_and_stone() -> Sheet:
    return sketch_of(
        "Blocks and stone, each with its solid at the bottom",
        "A pit in two parts: N_b blocks of V_b on the left, stone in the rest on the right. In each the solid has sunk to the bottom, thin under the blocks and more than half in the"
        " stone. What is empty is filled with water.",
        Polygon(rectangle(14, 10, 64, 13), "solid", "none"),
        Polygon(rectangle(14, 13, 64, 46), "water", "none"),
        Polygon(rectangle(64, 10, 104, 32), "stone", "none"),
        Polygon(rectangle(64, 32, 104, 46), "water", "none"),
        edge_of((14, 48), (14, 10), (104, 10), (104, 48)),
        Line(((64, 10), (64, 46)), "thin"),
        letter_at((39, 29), "n_v of the blocks"),
        letter_at((84, 38), "n_s of the stone"),
        letter_at((84, 20), "stone"),
        letter_along((14, 10), (64, 10), "N_b V_b", -5.0),
        letter_along((64, 10), (104, 10), "V_pit − N_b V_b", -5.0),
    )


def _column() -> Sheet:
    return sketch_of(
        "Loose stone with its solid pressed together",
        "A column of loose stone. All the solid lies at the bottom, the empty space stands over it. The void ratio compares empty with solid, the void fraction empty with both.",
        Polygon(rectangle(48, 8, 76, 32), "solid", "outline"),
        Polygon(rectangle(48, 32, 76, 50), "water", "outline"),
        letter_at((62, 19), "solid"),
        letter_at((62, 40), "empty"),
        letter_along((48, 8), (48, 32), "V_solid", 6.0),
        letter_along((48, 32), (48, 50), "V_void", 6.0),
        letter_along((76, 8), (76, 50), "the whole", -6.0),
    )  # fmt: skip


def _layer_of_water() -> Sheet:
    return sketch_of(
        "A thin layer of water among blocks",
        "A tank with blocks, A_b in plan. The level rises by z_r, and the water that came in fills the empty share of that layer.",
        Polygon(rectangle(24, 8, 100, 30), "water", "none"),
        Polygon(rectangle(24, 30, 100, 38), "patch", "none"),
        *(Line(((x, 8), (x, 46)), "grid") for x in (43, 62, 81)),
        edge_of((24, 48), (24, 8), (100, 8), (100, 48)),
        Line(((24, 30), (100, 30)), "hidden"),
        Line(((24, 38), (100, 38)), "water"),
        letter_at((62, 33), "V_w"),
        letter_along((100, 30), (100, 38), "z_r", -5.0),
        letter_along((24, 8), (100, 8), "A_b in plan, n_v of it empty", -5.0),
    )  # fmt: skip


def _usable() -> Sheet:
    return sketch_of(
        "Dead and usable water",
        "A tank with blocks. Up to the pump's limit h_min the water is dead. From there up to the static level h_static it is usable.",
        Polygon(rectangle(24, 8, 100, 20), "untested", "none"),
        Polygon(rectangle(24, 20, 100, 44), "water", "none"),
        edge_of((24, 48), (24, 8), (100, 8), (100, 48)),
        Line(((24, 20), (100, 20)), "hidden"),
        Line(((24, 44), (100, 44)), "water"),
        Polygon(rectangle(28, 8, 40, 18), "pale", "outline"),
        letter_at((66, 12), "dead, V_dead"),
        letter_at((66, 31), "usable, V_use"),
        letter_along((24, 8), (24, 20), "h_min", 6.0),
        letter_along((100, 8), (100, 44), "h_static", -6.0),
    )  # fmt: skip


def _start_drop() -> Sheet:
    return sketch_of(
        "What goes up is missing below",
        "A bowl over a tank with blocks. The water V_tr that is up in bowl, hose and stone has left the tank, whose level has fallen by z_r.",
        Polygon(rectangle(20, 6, 104, 22), "water", "none"),
        Polygon(rectangle(20, 22, 104, 28), "patch", "none"),
        *(Line(((x, 6), (x, 32)), "grid") for x in (41, 62, 83)),
        edge_of((20, 34), (20, 6), (104, 6), (104, 34)),
        Line(((20, 28), (104, 28)), "hidden"),
        Line(((20, 22), (104, 22)), "water"),
        Polygon(((44, 50), (80, 50), (74, 40), (50, 40)), "water", "outline"),
        letter_at((62, 44), "V_tr"),
        Arrow((34, 24), (42, 44)),
        letter_along((104, 22), (104, 28), "z_r", -5.0),
        letter_at((62, 12), "water area A_w"),
    )  # fmt: skip


def _up_in_the_feature() -> Sheet:
    wall_left, wall_right = ((36, 45), (45, 27)), ((78, 27), (87, 45))
    return sketch_of(
        "Where the water in transit is",
        "A bowl over a tank with blocks, while the pump runs. Above the rim stands V_rim. From the hose mouth up to the rim lies V_siph, which siphons back at a stop. The hose"
        " holds V_pc. V_film runs down the face, V_sheet falls free, and V_hold runs through the stone into the tank.",
        Polygon(rectangle(14, 3, 110, 13), "water", "none"),
        Polygon(rectangle(14, 15, 110, 21), "stone", "none"),
        edge_of((14, 24), (14, 3), (110, 3), (110, 24)),
        Polygon(((39, 38), (84, 38), (78, 27), (45, 27)), "water", "none"),
        Polygon(((35.5, 45), (87.5, 45), (84, 38), (39, 38)), "patch", "none"),
        Polygon(rectangle(35.5, 45, 87.5, 48), "water", "thin"),
        Polygon(((87.5, 45), (90, 45), (81, 23), (78.5, 27)), "water", "thin"),
        Polygon(((32.5, 46), (35, 46), (33, 22), (30.5, 22)), "water", "thin"),
        edge_of(*wall_left, *wall_right),
        Line(((39, 38), (84, 38)), "hidden"),
        Polygon(rectangle(60, 6, 63, 38), "pale", "outline"),
        Polygon(rectangle(56, 4, 67, 8), "pale", "outline"),
        letter_at((61.5, 50.5), "V_rim"),
        letter_at((74, 40.3), "V_siph"),
        letter_at((58, 22.8), "V_pc", "end"),
        letter_at((94, 37), "V_film", "start"),
        letter_at((29, 34), "V_sheet", "end"),
        letter_at((98, 16.8), "V_hold"),
        letter_at((42, 40.3), "mouth", "start"),
        letter_at((30, 7), "tank"),
        letter_at((71, 5), "pump", "start"),
    )  # fmt: skip


SKETCHED_VOLUMES: dict[str, Callable[[], Sheet]] = {
    **dict.fromkeys(("volume of a battered pit", "depth in a battered pit"), _battered_pit),
    "water in a round bowl": _round_bowl,
    "water in blocks and stone": _blocks_and_stone,
    "void fraction from void ratio": _column,
    "water for each millimetre of level": _layer_of_water,
    "usable water above the pump limit": _usable,
    "drop of the level on start": _start_drop,
    "water in transit": _up_in_the_feature,
}
