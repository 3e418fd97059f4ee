"""Box and pit: both ends of the box from above, the pit round it, the layers under the finished ground, and the heap beside the hole."""

from __future__ import annotations

import math

from brimwork import system
from brimwork.drawing.pictures.lining import exactly, true_scale
from brimwork.drawing.pictures.paper import FRAME, Draw, Drawn, height, rectangle, said, spread
from brimwork.drawing.records import Leader, Line, Measure, Polygon, Record, Text, View, at_scale
from brimwork.nomenclature import QUANTITIES

# --- the box: both of its ends, what lies between left out --------------------------------------------------------------------------

_END = 32.0  # mm of paper from the middle of the frame to where the ground begins


def _ends(layers: tuple[tuple[float, str], ...], middle: tuple[str, str], scale: float) -> list[Record]:
    """The layers (thickness in m, fill) of one end from outside to inside, and the same turned round at the other; `middle` (words, fill) between them."""
    mm = 1 / scale
    edge, low, high = 44 * mm, -16 * mm, 4 * mm
    records: list[Record] = [Polygon(rectangle(-edge, low, edge, high), middle[1], "none"), Text((-3 * mm, -6 * mm), middle[0], "start", 2.9, nudge=(0, -1.0))]
    for way in (-1, 1):
        at = way * _END * mm
        records.append(Polygon(rectangle(way * edge, low, at, high), "earth", "none"))
        for thick, fill in layers:
            records.append(Polygon(rectangle(at, low, at - way * thick, high), fill, "thin"))
            at -= way * thick
    return records + _break(low, high, mm)


def _break(low: float, high: float, mm: float) -> list[Record]:
    """Two zigzags, between which a length is left out."""
    zigzag = ((-1.0, low - 2 * mm), (-1.0, low + 8 * mm), (-3.0, low + 9 * mm), (1.0, low + 11 * mm), (-1.0, low + 12 * mm), (-1.0, high + 2 * mm))
    gap = [[((x + shift) * mm, y) for x, y in zigzag] for shift in (-8.0, -6.0)]
    return [Polygon((*gap[0], *reversed(gap[1])), "paper", "none"), *(Line(tuple(side), "thin") for side in gap)]


def _broken(text: str, half: float, at: float, mm: float) -> list[Record]:
    """The line of a length that is not drawn in full: oblique strokes at its ends, a gap where something is left out."""
    records: list[Record] = []
    for way in (-1, 1):
        end = way * half
        records.append(Line(((end, at - 2 * mm), (end, at + 1.5 * mm)), "dimension"))
        records.append(Line(((end - 0.8 * mm, at - 0.8 * mm), (end + 0.8 * mm, at + 0.8 * mm)), "thin"))
    records += [Line(((-half, at), (-9 * mm, at)), "dimension"), Line(((-5 * mm, at), (half, at)), "dimension")]
    return [*records, Text((0, at), text, "start", 3.0, nudge=(-3.0, 1.3))]


def _box_inside(values: dict[str, float], result: float) -> Drawn:
    """Blocks, clearance, lining and the inside of the box."""
    lining, clear = values["t_li"], values["c_side"]
    scale, name = true_scale(lining + clear, 0.01, 17.0, 20.0)
    mm = 1 / scale
    view = at_scale((0.0, 2.5 * mm), FRAME, scale, ())
    panel = 3.5 * mm
    inside = _END * mm - panel
    clear_from = inside - lining - clear
    records = [
        *_ends(((panel, "solid"), (lining, "patch"), (clear, "paper")), ("blocks", "blocks"), scale),
        Measure((-inside, -16 * mm), (-inside + lining, -16 * mm), f"lining = {QUANTITIES['t_li'].short(lining)}", lining, -3.5),
        Measure((clear_from, -16 * mm), (clear_from + clear, -16 * mm), f"clearance = {QUANTITIES['c_side'].short(clear)}", clear, -3.5),
        *_broken(exactly("L_bl", values["L_bl"]), clear_from, 10 * mm, mm),
        *_broken(exactly("L_in", result), inside, 19 * mm, mm),
    ]
    return View(view.window, FRAME, tuple(records)), f"both ends of the box from above, {name}, the middle left out"


def _box_outside(values: dict[str, float], result: float) -> Drawn:
    """The panels at both ends."""
    panel = values["t_pan"]
    scale, name = true_scale(panel, 0.01, 15.0, 20.0)
    mm = 1 / scale
    view = at_scale((0.0, 2.5 * mm), FRAME, scale, ())
    outside = _END * mm
    records = [
        *_ends(((panel, "solid"),), ("inside", "paper"), scale),
        Measure((-outside, -16 * mm), (-outside + panel, -16 * mm), f"panel = {QUANTITIES['t_pan'].short(panel)}", panel, -4.0),
        *_broken(exactly("L_in", values["L_in"]), outside - panel, 10 * mm, mm),
        *_broken(exactly("L_out", result), outside, 19 * mm, mm),
    ]
    return View(view.window, FRAME, tuple(records)), f"both ends of the box from above, {name}, the middle left out"


# --- the pit ------------------------------------------------------------------------------------------------------------------------


def _pit(values: dict[str, float], result: float) -> Drawn:
    """The pit from above with the box in it; as wide as two thirds of the box is long, for only the length is known."""
    out, work = values["L_out"], values["t_work"]
    wide = 2 * out / 3
    scale, name = true_scale(result, wide + 2 * work, 68.0, 34.0)
    x, y = out / 2, wide / 2
    view = at_scale((0.0, 0.0), FRAME, scale, ())
    x0, y0, x1, y1 = view.window
    records: list[Record] = [
        Polygon(rectangle(x0, y0, x1, y1), "earth", "none"),
        Polygon(rectangle(-result / 2, -y - work, result / 2, y + work), "pale", "outline"),
        Polygon(rectangle(-x, -y, x, y), "paper", "outline"),
        Text((0, y), "box", "middle", 2.9, nudge=(0, -4.5)),
        Measure((-x, 0), (x, 0), exactly("L_out", out), out, 0.0),
        Measure((x, -y - work), (x + work, -y - work), QUANTITIES["t_work"].short(work), work, -5.0),
        Measure((-result / 2, y + work), (result / 2, y + work), said("L_dig", result), result, 5.0),
    ]
    return View(view.window, FRAME, tuple(records)), f"pit and box from above, {name}, drawn two thirds as wide as long"


def _gap(values: dict[str, float], result: float) -> Drawn:
    """The pit from above with the box in it, and the gap round the box that is filled."""
    long, wide, out, across = (values[letter] for letter in ("L_dig", "W_dig", "L_out", "W_out"))
    scale, name = true_scale(long, wide, 50.0, 30.0)
    x, y = long / 2, wide / 2
    view = at_scale((0.0, 0.0), FRAME, scale, ())
    x0, y0, x1, y1 = view.window
    records: list[Record] = [
        Polygon(rectangle(x0, y0, x1, y1), "pale", "none"),
        Polygon(rectangle(-x, -y, x, y), "concrete", "outline"),
        Polygon(rectangle(-out / 2, -across / 2, out / 2, across / 2), "paper", "outline"),
        Text((0, across / 2), "box", "middle", 2.9, nudge=(0, -4.5)),
        Measure((-x, y), (x, y), said("L_dig", long), long, 4.0),
        height("W_dig", (-x, -y), wide, scale, 3.5),
        Measure((-out / 2, -y), (out / 2, -y), said("L_out", out), out, -4.5),
        height("W_out", (x, -across / 2), across, scale, -3.5),
    ]
    return View(view.window, FRAME, tuple(records)), f"pit and box from above, {name}; the gap between them is filled"


_LAYERS = (("t_sub", "sub-base", "concrete"), ("t_sand", "sand", "pale"), ("t_li", "lining", "patch"), ("h_bl", "blocks", "blocks"), ("t_st", "stone", "stone"))


def _layers(values: dict[str, float], result: float) -> Drawn:
    """Every layer between the formation and the finished ground, as thick as it is."""
    scale, name = true_scale(0.01, result, 50.0, 44.0)
    mm, low = 1 / scale, -result
    view = at_scale((2 * mm, -result / 2), FRAME, scale, ())
    x0, y0, x1, _ = view.window
    left, right = -22 * mm, 12 * mm
    records: list[Record] = [
        Polygon(((x0, 0), (left, 0), (left, low), (right, low), (right, 0), (x1, 0), (x1, y0), (x0, y0)), "earth", "none"),
        Line(((x0, 0), (left, 0), (left, low), (right, low), (right, 0), (x1, 0)), "outline"),
    ]
    middles = []
    for letter, _, fill in _LAYERS:
        records.append(Polygon(rectangle(left, low, right, low + values[letter]), fill, "thin"))
        middles.append(low + values[letter] / 2)
        low += values[letter]
    for (letter, word, _), middle, place in zip(_LAYERS, middles, spread([middle * scale for middle in middles], 4.6)):
        records.append(Leader((right - 2 * mm, middle), f"{word} {QUANTITIES[letter].short(values[letter])}", (5.5, place - middle * scale)))
    records.append(Measure((left, -result), (left, 0), said("D_dig", result), result, 5.0))
    return View(view.window, FRAME, tuple(records)), f"layers under the finished ground, {name}"


# --- spoil --------------------------------------------------------------------------------------------------------------------------

_BARROW = 0.085  # m3, loose: common practice, no source
_MOST_MARKS = 100  # loads that can be told apart on the bar


def _spoil(values: dict[str, float], result: float) -> Drawn:
    """Two bars of one height: what lay in the ground, and the same soil loose, marked off in barrow loads."""
    dug = values["V_dig"]
    mm = max(dug, result, 1e-9) / 74
    loads = math.ceil(result / _BARROW * (1 - 1e-12))
    records: list[Record] = [
        Polygon(rectangle(0, 33, dug, 45), "earth", "outline"),
        Polygon(rectangle(0, 10, dug, 22), "pale", "none"),
        Polygon(rectangle(dug, 10, result, 22), "patch", "none"),
        *(Line(((_BARROW * i, 10), (_BARROW * i, 22)), "grid") for i in range(1, loads if loads <= _MOST_MARKS else 1)),
        Line((*rectangle(0, 10, result, 22), (0, 10)), "outline"),
        Text((0, 45), "in the ground", "start", 3.1, nudge=(0, 1.5)),
        Text((0, 22), f"the same soil loose: {loads} barrows of {'3 ft3' if system.current() == system.FEET else '85 L'}", "start", 3.1, nudge=(0, 1.5)),
        Measure((0, 33), (dug, 33), said("V_dig", dug), dug, -4.5),
        Measure((0, 10), (result, 10), said("V_loose", result), result, -4.5),
    ]
    return View((-7 * mm, -4, 81 * mm, 56), FRAME, tuple(records)), "the lengths of the bars stand for volumes"


DRAWN: dict[str, Draw] = {
    "inside length of the box": _box_inside,
    "outside length of the box": _box_outside,
    "length of the pit": _pit,
    "depth of the pit": _layers,
    "mass of backfill to order": _gap,
    "loose volume of spoil": _spoil,
}
