"""Sketches inside derivations, for the ground, the supply, the cost, the first filling and the other kinds of feature."""

from __future__ import annotations

from collections.abc import Callable

from brimwork.drawing.pictures.paper import rectangle, steps
from brimwork.drawing.pictures.sketching import edge_of, letter_along, letter_at, sketch_of
from brimwork.drawing.records import Arrow, Level, Line, Mark, Polygon, Sheet


def _emptied_pit() -> Sheet:
    return sketch_of(
        "An emptied pit in ground water",
        "A section: an empty box stands in the ground. The ground water stands h_gw over its floor. The weight F_w pulls it down, and the push of the water F_buoy lifts it from below.",
        Polygon(((4, 48), (34, 48), (34, 10), (90, 10), (90, 48), (120, 48), (120, 3), (4, 3)), "earth", "none"),
        Polygon(rectangle(34, 10, 90, 48), "paper", "none"),
        edge_of((34, 48), (34, 10), (90, 10), (90, 48)),
        Line(((4, 34), (34, 34)), "water"),
        Line(((90, 34), (120, 34)), "water"),
        Level((112.0, 34.0)),
        Arrow((54, 44), (54, 28)),
        letter_at((57, 36), "F_w", "start"),
        Arrow((72, 0.5), (72, 9.5)),
        letter_at((75, 14), "F_buoy", "start"),
        letter_along((90, 10), (90, 34), "h_gw", -6.0),
        letter_at((62, 22), "A_pit in plan"),
    )  # fmt: skip


def _two_conductors() -> Sheet:
    return sketch_of(
        "Out along one conductor, back along the other",
        "A loop. The supply on the left has the voltage U_s. The current I_c goes out along one conductor of the length L_c, through the pump, and back along the other, so that the"
        " resistance counts twice.",
        Polygon(rectangle(6, 14, 24, 44), "pale", "outline"),
        letter_at((15, 28), "U_s"),
        Polygon(rectangle(98, 18, 118, 40), "pale", "outline"),
        letter_at((108, 28), "pump"),
        Line(((24, 38), (98, 38)), "outline"),
        Line(((24, 20), (98, 20)), "outline"),
        Polygon(rectangle(52, 36, 68, 40), "paper", "outline"),
        Polygon(rectangle(52, 18, 68, 22), "paper", "outline"),
        letter_at((60, 43), "r_warm L_c"),
        letter_at((60, 11), "r_warm L_c"),
        Arrow((30, 34), (44, 34)),
        letter_at((37, 28), "I_c"),
        Arrow((92, 24), (78, 24)),
        letter_along((24, 47), (98, 47), "L_c", 4.0),
    )


def _price_in_parts() -> Sheet:
    return sketch_of(
        "A price in two parts",
        "A bar as long as the price C_price. The larger part is the cost C_est, the smaller the profit. The margin is the profit as a share of the whole bar, not of the cost.",
        Polygon(rectangle(10, 22, 84, 38), "pale", "outline"),
        Polygon(rectangle(84, 22, 114, 38), "patch", "outline"),
        letter_at((47, 29), "cost"),
        letter_at((99, 29), "profit"),
        letter_along((10, 22), (84, 22), "C_est", -6.0),
        letter_along((84, 22), (114, 22), "s_margin C_price", -6.0),
        letter_along((10, 38), (114, 38), "C_price", 6.0),
    )


def _thrown() -> Sheet:
    lip, foot = (26.0, 46.0), (92.0, 8.0)
    path = tuple((lip[0] + (foot[0] - lip[0]) * t, lip[1] - (lip[1] - foot[1]) * t * t) for t in steps(0.0, 1.0, 24))
    return sketch_of(
        "Water that leaves a lip level",
        "A curve from a lip on the left down to the right. The water leaves level at the speed v_b. It keeps that speed sideways while it falls h_fall, and lands x_throw from the lip.",
        Polygon(((4, 46), (26, 46), (26, 42), (4, 42)), "concrete", "outline"),
        Line(path, "water"),
        Line(((18, 8), (118, 8)), "outline"),
        Arrow((28, 50), (46, 50)),
        letter_at((49, 49), "v_b", "start"),
        letter_along((26, 8), (26, 42), "h_fall", 5.0),
        letter_along((26, 8), (92, 8), "x_throw", -6.5),
        Mark((92, 8), 0.8),
    )  # fmt: skip


def _rill_across() -> Sheet:
    return sketch_of(
        "A rill across, and along",
        "Left, a section across: the water is w_rill wide and y_n deep, and rubs on the floor and on both sides. Right, along: the floor falls by the slope S_rill, and the weight of"
        " the water pulls it down the slope.",
        Polygon(rectangle(12, 14, 54, 36), "water", "none"),
        edge_of((12, 46), (12, 14), (54, 14), (54, 46)),
        Line(((12, 36), (54, 36)), "water"),
        letter_along((12, 14), (54, 14), "w_rill", -5.0),
        letter_along((54, 14), (54, 36), "y_n", -5.0),
        Polygon(((72, 26), (118, 14), (118, 26), (72, 38)), "water", "none"),
        edge_of((72, 26), (118, 14)),
        Line(((72, 38), (118, 26)), "water"),
        Arrow((84, 29), (102, 24.3)),
        letter_at((88, 22), "v", "end"),
        Line(((72, 26), (118, 26)), "hidden"),
        letter_at((95, 45), "slope S_rill"),
    )  # fmt: skip


def _gap_round_a_pipe() -> Sheet:
    curve = tuple((58 + 16 * (1 - (y / 9) ** 2), 29 + y) for y in steps(-9.0, 9.0, 20))
    return sketch_of(
        "The gap round a pipe, cut open",
        "A section along the gap: two walls s_gap apart and L_gap long, water between them. It stands still at both walls and runs fastest in the middle. A layer y_g from the middle"
        " carries the push on the water inside it.",
        Polygon(rectangle(20, 38, 104, 46), "concrete", "none"),
        Polygon(rectangle(20, 12, 104, 20), "concrete", "none"),
        Polygon(rectangle(20, 20, 104, 38), "water", "none"),
        Polygon(rectangle(20, 25, 104, 33), "patch", "none"),
        edge_of((20, 38), (104, 38)),
        edge_of((20, 20), (104, 20)),
        Line(((20, 29), (104, 29)), "hidden"),
        Line(curve, "outline"),
        Line(((58, 20), (58, 38)), "thin"),
        letter_at((84, 34.5), "tau_g"),
        letter_at((66, 42), "u_g"),
        letter_along((20, 12), (104, 12), "L_gap", -5.0),
        letter_along((104, 20), (104, 38), "s_gap", -5.0),
        letter_along((36, 29), (36, 33), "y_g", 4.0),
        letter_at((10, 30), "H_o"),
        Arrow((5, 26), (18, 26)),
    )  # fmt: skip


def _over_a_sill() -> Sheet:
    return sketch_of(
        "A line of sight over a sill",
        "From the eye on the left, z_eye high, a straight line falls to the sill, z_sill high at the distance x_sill, and goes on falling to the feature, x_beyond farther on."
        " There it stands z_hid high: what is lower is hidden.",
        Line(((6, 10), (118, 10)), "outline"),
        Line(((14, 50), (58, 34), (107, 16.2)), "force"),
        Mark((14, 50), 1.5),
        Polygon(rectangle(56.5, 10, 59.5, 34), "solid", "outline"),
        Polygon(rectangle(107, 10, 115, 34), "pale", "thin"),
        letter_along((14, 10), (14, 50), "z_eye", 4.0),
        letter_along((58, 10), (58, 34), "z_sill", -5.0),
        letter_along((107, 10), (107, 16.2), "z_hid", 4.0),
        letter_along((14, 10), (58, 10), "x_sill", -6.0),
        letter_along((58, 10), (107, 10), "x_beyond", -6.0),
        letter_at((40, 47), "falls by m_sight", "start"),
    )


SKETCHED_ON_SITE: dict[str, Callable[[], Sheet]] = {
    "height that a sill hides": _over_a_sill,
    "flotation factor of an emptied pit": _emptied_pit,
    "voltage drop in per cent by resistance": _two_conductors,
    "price from margin": _price_in_parts,
    "throw of a free sheet or jet": _thrown,
    "flow down a rill": _rill_across,
    "leak through a narrow gap round a pipe": _gap_round_a_pipe,
}
