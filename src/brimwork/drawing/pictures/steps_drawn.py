"""What stands inside a derivation: the slice, the layer or the free body that its steps speak of, drawn once, with the letters of the steps.

Volumes and levels stand in `steps_in_volumes`; what belongs to the ground, the supply, the cost and the other kinds of feature in `steps_on_site`.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from brimwork.drawing.pictures.paper import rectangle, steps
from brimwork.drawing.pictures.sketching import edge_of, letter_along, letter_at, sketch_of
from brimwork.drawing.pictures.steps_in_volumes import SKETCHED_VOLUMES
from brimwork.drawing.pictures.steps_on_site import SKETCHED_ON_SITE
from brimwork.drawing.records import GREY, Arrow, Level, Line, Mark, Polygon, Sheet, Text

# --- overflow -----------------------------------------------------------------------------------------------------------------------


def _layers_over_a_lip() -> Sheet:
    top, lip = 46.0, 18.0
    arrows = [Arrow((66.0, top - z), (66.0 + 6.2 * math.sqrt(z), top - z)) for z in (4.0, 9.0, 14.0, 19.0, 24.0)]
    return sketch_of(
        "Layers of the stream over a lip",
        "A thin lip with water behind it. The stream over it is cut into thin level layers. An arrow on each shows its speed: short near the surface, longer with the"
        " depth z, longest at the lip, H below the surface.",
        Polygon(((6, 6), (62, 6), (62, lip), (66, lip), (66, top), (6, top)), "water", "none"),
        Polygon(rectangle(62, 6, 66, lip), "solid", "outline"),
        Polygon(rectangle(40, top - 15.2, 66, top - 12.8), "patch", "thin"),
        Line(((6, top), (66, top)), "water"),
        Level((20.0, top)),
        *arrows,
        letter_along((66, lip), (66, top), "H", 32.0),
        letter_along((48, top - 14), (48, top), "z", 4.0),
        Text((99, top - 14.6), "v, faster with depth", "start", 3.2, GREY),
    )


def _broad_crest() -> Sheet:
    return sketch_of(
        "Energy and depth on a broad crest",
        "A wide flat crest. Upstream the still water stands H over the crest, which is its energy E_s. On the crest the depth is y_c, and what the depth leaves over of the energy"
        " is the velocity head.",
        Polygon(((6, 8), (36, 8), (36, 20), (100, 20), (100, 8), (118, 8), (118, 4), (6, 4)), "solid", "none"),
        Polygon(((6, 8), (36, 8), (36, 20), (100, 20), (100, 36), (56, 36), (40, 44), (6, 44)), "water", "none"),
        edge_of((6, 8), (36, 8), (36, 20), (100, 20), (100, 8), (118, 8)),
        Line(((6, 44), (40, 44), (56, 36), (100, 36)), "water"),
        Line(((40, 44), (110, 44)), "hidden"),
        Arrow((66, 28), (82, 28)),
        letter_at((74, 30.5), "v"),
        letter_along((100, 20), (100, 36), "y_c", -4.0),
        letter_along((100, 36), (100, 44), "velocity head", -4.0),
        letter_along((36, 20), (36, 44), "H = E_s", 5.0),
    )  # fmt: skip


def _film() -> Sheet:
    return sketch_of(
        "A film on an upright face",
        "Water runs down a face as a film of thickness delta. The water outside a layer at the distance y hangs on it: its weight pulls down, and the shear tau on the"
        " layer holds it. The speed grows from nothing at the face to its greatest value at the surface.",
        Polygon(rectangle(20, 4, 36, 54), "solid", "none"),
        Polygon(rectangle(36, 4, 70, 54), "water", "none"),
        Polygon(rectangle(52, 10, 70, 48), "patch", "thin"),
        Line(((36, 4), (36, 54)), "outline"),
        Line(((70, 4), (70, 54)), "water"),
        Arrow((52, 16), (52, 30)),
        letter_at((50, 22), "tau", "end"),
        Arrow((56, 40), (56, 20)),
        letter_at((58, 29), "weight", "start"),
        letter_along((36, 50), (70, 50), "delta", -3.0),
        letter_along((36, 10), (52, 10), "y", -3.0),
        Line(tuple((84 + 28 * y, 46 - 32 * (2 * y - y * y)) for y in steps(0.0, 1.0, 24)), "curve"),
        Line(((84, 46), (112, 46)), "axis"),
        Line(((84, 46), (84, 10)), "axis"),
        letter_at((98, 50), "from the face out"),
        letter_at((87, 14), "speed u", "start"),
    )  # fmt: skip


def _rising_head() -> Sheet:
    return sketch_of(
        "A surface that rises until the rim passes all",
        "A bowl that is filled from below. Q comes in, and Q_rim leaves over the rim, less than comes in as long as the surface still rises towards its settled head H_set.",
        Polygon(((34, 34), (90, 34), (82, 8), (42, 8)), "water", "none"),
        Polygon(rectangle(31, 34, 93, 40), "patch", "none"),
        edge_of((34, 34), (42, 8), (82, 8), (90, 34)),
        Line(((31, 40), (93, 40)), "water"),
        Line(((28, 48), (96, 48)), "hidden"),
        Arrow((62, 2), (62, 16)),
        letter_at((65, 11), "Q", "start"),
        Arrow((93, 38), (106, 26)),
        letter_at((108, 30), "Q_rim", "start"),
        letter_along((28, 34), (28, 48), "H_set", 4.0),
        letter_at((62, 36), "rises"),
    )  # fmt: skip


# --- pipes and pumps ----------------------------------------------------------------------------------------------------------------


def _three_bills() -> Sheet:
    return sketch_of(
        "What the pump pays for",
        "Left, a pump in a tank lifts water by z_s through a hose with a bend to an outlet. Right, three bills stand on each other: the lift z_s, friction h_f along the hose, and the"
        " fittings h_m. Together they are the head H_t.",
        Polygon(rectangle(6, 6, 50, 18), "water", "none"),
        edge_of((6, 22), (6, 6), (50, 6), (50, 22)),
        Line(((6, 18), (50, 18)), "water"),
        Polygon(rectangle(12, 6, 24, 14), "pale", "outline"),
        letter_at((18, 9), "pump"),
        Line(((20, 14), (20, 48), (44, 48)), "curve"),
        Arrow((44, 48), (52, 48)),
        letter_along((58, 18), (58, 48), "z_s", -1.0),
        Polygon(rectangle(84, 6, 96, 30), "water", "thin"),
        Polygon(rectangle(84, 30, 96, 42), "patch", "thin"),
        Polygon(rectangle(84, 42, 96, 50), "solid", "thin"),
        letter_at((90, 17), "z_s"),
        letter_at((90, 35), "h_f"),
        letter_at((90, 45), "h_m"),
        letter_along((96, 6), (96, 50), "H_t", -6.0),
    )  # fmt: skip


def _two_lines() -> Sheet:
    def pump(q):
        return 44 * (1 - (q / 70) ** 2)

    def pipe(q):
        return 14 + 0.011 * q * q

    meet = math.sqrt((44 - 14) / (44 / 70**2 + 0.011))
    return sketch_of(
        "Where pump and pipe agree",
        "Head over flow. The line of the pump falls from the shut-off head H_0 to nothing at Q_max. The line of the pipe rises from the lift z_s. They cross at the flow that comes.",
        Line(((22, 54), (22, 8), (104, 8)), "axis"),
        Line(tuple((22 + q, 8 + pump(q)) for q in steps(0, 70, 40)), "curve"),
        Line(tuple((22 + q, 8 + pipe(q)) for q in steps(0, 58, 40)), "second curve"),
        Line(((22 + meet, 8), (22 + meet, 8 + pump(meet))), "hidden"),
        Mark((22 + meet, 8 + pump(meet))),
        letter_at((20, 51), "H_0", "end"),
        letter_at((20, 21), "z_s", "end"),
        letter_at((22 + meet, 3.4), "Q"),
        letter_at((92, 3.4), "Q_max"),
        letter_at((40, 52), "pump", "start"),
        letter_at((80, 50), "pipe: lift and losses", "start"),
    )


def _core_of_a_pipe() -> Sheet:
    return sketch_of(
        "A core of water in a pipe",
        "A pipe seen from the side, with a core of radius r_p in its middle. Pressure pushes on its end, shear tau_r along its side holds it back. Right: the speed is greatest in the"
        " middle and nothing at the wall.",
        Polygon(rectangle(16, 12, 76, 46), "water", "none"),
        Polygon(rectangle(22, 20, 70, 38), "patch", "thin"),
        Line(((12, 12), (80, 12)), "outline"),
        Line(((12, 46), (80, 46)), "outline"),
        Line(((12, 29), (80, 29)), "centre"),
        *(Arrow((10, y), (22, y)) for y in (23.0, 29.0, 35.0)),
        *(Arrow((56, y), (44, y)) for y in (20.0, 38.0)),
        letter_at((50, 41), "tau_r"),
        letter_along((70, 29), (70, 38), "r_p", -6.0),
        letter_along((22, 12), (70, 12), "L_pipe", -5.0),
        Line(tuple((92 + 22 * (1 - s * s), 29 + 17 * s) for s in steps(-1.0, 1.0, 30)), "curve"),
        Line(((92, 12), (92, 46)), "axis"),
        letter_at((104, 7), "speed u_r"),
    )  # fmt: skip


# --- loads --------------------------------------------------------------------------------------------------------------------------


def _what_presses() -> Sheet:
    return sketch_of(
        "What presses on the blocks",
        "A bowl with its water on a foot, on a slab on the blocks. Arrows downwards: the weight of vessel, water and slab. Over the patch A_c the blocks press back. Beside it lies"
        " stone of the thickness t_st.",
        Polygon(((44, 52), (80, 52), (72, 32), (52, 32)), "water", "outline"),
        Polygon(rectangle(54, 28, 70, 32), "solid", "outline"),
        Polygon(rectangle(50, 23, 74, 28), "concrete", "outline"),
        Polygon(rectangle(14, 23, 50, 29), "stone", "none"),
        Polygon(rectangle(74, 23, 110, 29), "stone", "none"),
        Polygon(rectangle(14, 6, 110, 23), "blocks", "outline"),
        Arrow((62, 50), (62, 36)),
        letter_at((65, 44), "F_w", "start"),
        *(Arrow((x, 12), (x, 22)) for x in (53.0, 59.0, 65.0, 71.0)),
        letter_at((62, 8), "p_c over A_c"),
        letter_along((110, 23), (110, 29), "t_st", -4.0),
    )


def _offset_load() -> Sheet:
    return sketch_of(
        "A load beside the middle",
        "A stiff base B_base wide, with its load e_off beside the middle. Under it the pressure grows in a straight line: p_mid in the middle, p_max at the near edge.",
        Polygon(rectangle(24, 34, 96, 40), "concrete", "outline"),
        Arrow((70, 56), (70, 40)),
        letter_at((73, 51), "F_w", "start"),
        Line(((60, 6), (60, 46)), "centre"),
        letter_along((60, 42), (70, 42), "e_off", 4.0),
        Polygon(((24, 34), (96, 34), (96, 12), (24, 24)), "load", "thin"),
        letter_along((60, 18), (60, 34), "p_mid", 3.0),
        letter_along((96, 12), (96, 34), "p_max", -4.0),
        letter_along((24, 8), (96, 8), "B_base", -2.0),
    )  # fmt: skip


def _tipping() -> Sheet:
    return sketch_of(
        "What turns a piece over, and what holds it",
        "A piece on a base B_base wide. A push F_push at the height h_push turns it about the far edge. Its weight F_w, half the base away from that edge, holds it.",
        Polygon(((40, 52), (80, 52), (76, 8), (44, 8)), "solid", "outline"),
        Line(((20, 8), (104, 8)), "thin"),
        Arrow((24, 46), (41, 46)),
        letter_at((31, 50), "F_push"),
        Arrow((60, 34), (60, 18)),
        letter_at((62, 28), "F_w", "start"),
        Mark((76, 8)),
        letter_at((80, 11), "it turns about this edge", "start"),
        letter_along((32, 8), (32, 46), "h_push", 3.0),
        letter_along((60, 8), (76, 8), "B_base/2", -4.0),
    )


# --- siting, lining -----------------------------------------------------------------------------------------------------------------


def _line_of_sight() -> Sheet:
    return sketch_of(
        "One level line and two staffs",
        "A level stands between two staffs. Its line of sight is level. The staff on the bench mark reads s_first, the staff on the lower point reads more, s_next.",
        Polygon(((4, 24), (30, 24), (60, 18), (96, 10), (120, 10), (120, 4), (4, 4)), "earth", "none"),
        Line(((4, 24), (30, 24), (60, 18), (96, 10), (120, 10)), "outline"),
        Line(((14, 44), (112, 44)), "hidden"),
        Line(((20, 24), (20, 50)), "outline"),
        Line(((106, 10), (106, 50)), "outline"),
        Line(((54, 19), (60, 42), (66, 17)), "thin"),
        Polygon(rectangle(55, 42, 65, 46), "pale", "outline"),
        letter_along((20, 24), (20, 44), "s_first", 5.0),
        letter_along((106, 10), (106, 44), "s_next", -5.0),
        letter_at((84, 47), "z_line"),
        letter_at((20, 14), "z_bench"),
        letter_at((100, 5), "z_point"),
    )


def _flat_liner() -> Sheet:
    return sketch_of(
        "The liner laid flat",
        "One flat sheet. In its middle the floor, L_in by W_in. Round it a strip for each side of the depth D, then one for the apron, then one to trim. The corners are there too, and become folds.",
        Polygon(rectangle(22, 6, 102, 52), "pale", "outline"),
        Polygon(rectangle(25, 9, 99, 49), "stone", "thin"),
        Polygon(rectangle(34, 15, 90, 43), "patch", "thin"),
        *(Polygon(rectangle(x, y, x + 8, y + 6), "load", "thin") for x in (34, 82) for y in (15, 37)),
        Polygon(rectangle(42, 21, 82, 37), "water", "outline"),
        letter_at((62, 28), "floor, L_in by W_in"),
        letter_along((82, 25), (90, 25), "D", 2.0),
        letter_along((90, 24), (99, 24), "w_apron", 2.0),
        letter_at((104, 14), "w_trim", "start"),
        Line(((103.5, 15), (100.5, 12)), "thin"),
        letter_at((11, 39), "fold"),
        Line(((16, 40), (37, 40)), "thin"),
    )  # fmt: skip


SKETCHED: dict[str, Callable[[], Sheet]] = {
    **SKETCHED_VOLUMES,
    **dict.fromkeys(("flow over a level lip", "head over a level lip", "flow over a round rim", "head over a round rim"), _layers_over_a_lip),
    "flow over a broad crest": _broad_crest,
    "flow in a film on a face": _film,
    "time in which the head over a rim rises": _rising_head,
    "total dynamic head": _three_bills,
    "duty flow": _two_lines,
    "laminar flow in a pipe": _core_of_a_pipe,
    "pressure on the block tops": _what_presses,
    "greatest pressure under an offset load": _offset_load,
    "tipping factor": _tipping,
    "level of a point": _line_of_sight,
    "area of the liner": _flat_liner,
    **SKETCHED_ON_SITE,
}
