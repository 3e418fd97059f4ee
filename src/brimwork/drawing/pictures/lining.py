"""Lining: the liner in the pit and laid out flat, the sheet for a round pit, the pieces of fleece, and the stone over all from above."""

from __future__ import annotations

import math

from brimwork.drawing.marks import width_of
from brimwork.drawing.pictures.paper import FRAME, Draw, Drawn, circle, height, rectangle
from brimwork.drawing.records import GREY, Leader, Line, Measure, Point, Polygon, Record, Text, View, at_scale
from brimwork.nomenclature import QUANTITIES

_SCALES = tuple((1000 / below, f"1:{below}") for below in (2, 5, 10, 20, 25, 30, 40, 50, 75, 100, 150, 200))


def true_scale(width: float, tall: float, across: float, up: float) -> tuple[float, str]:
    """The largest scale, in mm of paper for a metre, at which width by tall (m) fits across by up (mm); and its name."""
    return next((row for row in _SCALES if width * row[0] <= across and tall * row[0] <= up), _SCALES[-1])


def exactly(letter: str, value: float) -> str:
    """ "L_in = 1236 mm": to four figures, as a length to cut is written."""
    return f"{letter} = {QUANTITIES[letter].short(value)}"


def length_drawn(letter: str, start: Point, end: Point, offset: float) -> Measure:
    """A level dimension with its letter."""
    return Measure(start, end, exactly(letter, end[0] - start[0]), end[0] - start[0], offset)


def _inside(text: str, low: float, high: float, middle: float, scale: float) -> list[Record]:
    """Words in the middle of a piece from `low` to `high`, where it is long enough for them."""
    fits = width_of(text, 2.9) + 1.0 <= (high - low) * scale
    return [Text(((low + high) / 2, middle), text, "middle", 2.9, nudge=(0, -1.0))] if fits else []


# --- down one side and up the other -------------------------------------------------------------------------------------------------


def _along(values: dict[str, float], result: float) -> Drawn:
    """The pit in section with the liner in it, and below it the same liner laid out flat; floor stands under floor."""
    floor, deep, back = values.get("L_in", values.get("L", 0.0)), values["D"], values.get("s_back", 0.0)
    apron, trim, side = values["w_apron"], values["w_trim"], math.hypot(deep, back)
    scale, name = true_scale(result, deep, 84.0, 20.0)
    mm, half = 1 / scale, floor / 2
    top, end = half + back, half + back + apron
    view = at_scale((0.0, deep / 2 - 7.5 * mm), FRAME, scale, ())
    records = [
        *ground(half, top, deep, view.window[0], -9.5 * mm),
        Line(((-end, deep), (-top, deep), (-half, 0), (half, 0), (top, deep), (end, deep)), "force"),
        *(Line(((way * end, deep), (way * (end + trim), deep)), "second curve") for way in (-1, 1)),
        length_drawn("L_in" if "L_in" in values else "L", (-half, 0), (half, 0), -4.5),
        height("D", (half, 0), deep, scale, 4.5),
        length_drawn("w_apron", (top, deep), (end, deep), 3.5),
        *([Measure((-top, deep), (-half, deep), exactly("s_back", back), back, 3.5)] if back else []),
        *_strip((half, half + side, half + side + apron, result / 2), -20.5 * mm, mm),
    ]
    return View(view.window, FRAME, tuple(records)), f"section and, below, the liner laid out flat, {name}"


def ground(half: float, top: float, deep: float, edge: float, low: float, wet: float = 0.8) -> list[Record]:
    """A pit in section from its middle: half the floor and half the top (m), with water up to a share of its depth; ground from `edge` to as far right."""
    at = half + wet * (top - half)
    return [
        Polygon(((edge, deep), (-top, deep), (-half, 0), (half, 0), (top, deep), (-edge, deep), (-edge, low), (edge, low)), "earth", "none"),
        Polygon(((-half, 0), (half, 0), (at, wet * deep), (-at, wet * deep)), "water", "none"),
    ]


def _strip(ends: tuple[float, float, float, float], top: float, mm: float) -> list[Record]:
    """The liner from end to end, 6 mm of paper wide; `ends` are where floor, side, apron and trim end, from the middle."""
    low, records = top - 6 * mm, []
    pieces = (("floor", -ends[0], ends[0], "solid"), *(piece for first, last, name, fill in zip(ends, ends[1:], ("side", "apron", "trim"), ("patch", "pale", "paper"))
              for piece in ((name, -last, -first, fill), (name, first, last, fill))))  # fmt: skip
    for name, first, last, fill in pieces:
        records += [Polygon(rectangle(first, low, last, top), fill, "thin"), *_inside(name, first, last, (low + top) / 2, 1 / mm)]
    records += [Line(((way * ends[0], -6.5 * mm), (way * ends[0], top)), "grid") for way in (-1, 1)]
    trimmed = ((ends[2] + ends[3]) / 2, top - mm)
    return [*records, Leader(trimmed, "to trim", (-4.0, 4.5)), length_drawn("l_cut", (-ends[3], low), (ends[3], low), -4.5)]


def _slope(values: dict[str, float], result: float) -> Drawn:
    """One sloping side: depth, set-back, and the slope over both."""
    deep, back = values["D"], values["s_back"]
    scale, name = true_scale(back, deep, 40.0, 34.0)
    mm = 1 / scale
    view = at_scale((back / 2, deep / 2), FRAME, scale, ())
    x0, y0, x1, _ = view.window
    records: list[Record] = [
        Polygon(((x0, 0), (0, 0), (back, deep), (x1, deep), (x1, y0), (x0, y0)), "earth", "none"),
        Line(((x0, 0), (0, 0), (back, deep), (x1, deep)), "force"),
        Line(((0, 0), (back, 0), (back, deep)), "hidden"),
        Line(((0, 0), (0, deep)), "grid"),
        height("D", (0, 0), deep, scale, 4.0),
        Measure((0, 0), (back, 0), exactly("s_back", back), back, -4.5),
        Measure((0, 0), (back, deep), exactly("l_side", result), result, 5.0),
        Text((x0 + 2 * mm, 0), "floor", "start", 2.9, nudge=(0, 1.4)),
    ]
    return View(view.window, FRAME, tuple(records)), f"a sloping side in section, {name}"


# --- the whole sheet from above -----------------------------------------------------------------------------------------------------


def _flat(values: dict[str, float], result: float) -> Drawn:
    """The liner as cut, from above: floor, sides, apron and what is trimmed, and the squares in the corners that become folds."""
    x, y, deep, apron, trim = values["L_in"] / 2, values["W_in"] / 2, values["D"], values["w_apron"], values["w_trim"]
    reach = deep + apron + trim
    scale, name = true_scale(2 * (x + reach), 2 * (y + reach), 70.0, 47.0)
    mm = 1 / scale
    view = at_scale((3 * mm, -2.5 * mm), FRAME, scale, ())
    records: list[Record] = [
        Polygon(_round_about(x, y, reach), "paper", "outline"),
        Polygon(_round_about(x, y, deep + apron), "pale", "hidden"),
        Polygon(((x + deep, y), (x, y), (x, y + deep), (-x, y + deep), (-x, y), (-x - deep, y), (-x - deep, -y), (-x, -y), (-x, -y - deep),
                 (x, -y - deep), (x, -y), (x + deep, -y)), "patch", "thin"),
        *(Polygon(rectangle(a * x, b * y, a * (x + deep), b * (y + deep)), "load", "thin") for a in (-1, 1) for b in (-1, 1)),
        Polygon(_round_about(x, y, 0.0), "solid", "thin"),
        *_inside("floor", -x, x, 0.0, scale),
        *(_inside("side", -x, x, y + deep / 2, scale) if deep * scale > 4 else []),
        *(_inside("apron", -x, x, y + deep + apron / 2, scale) if apron * scale > 4 else []),
        Leader((x + deep / 2, y + deep / 2), "folded", ((reach - deep / 2) * scale + 1.5, 4.0)),
        length_drawn("l_cut", (-x - reach, -y - reach), (x + reach, -y - reach), -4.5),
        height("w_cut", (-x - reach, -y - reach), 2 * (y + reach), scale, 4.5),
    ]  # fmt: skip
    return View(view.window, FRAME, tuple(records)), f"the liner laid out flat, {name}; outside the broken line: to trim"


def _round_about(x: float, y: float, more: float) -> tuple[Point, ...]:
    return rectangle(-x - more, -y - more, x + more, y + more)


def _round_pit(values: dict[str, float], result: float) -> Drawn:
    """The square sheet for a round pit: floor, side and apron are rings on it, and its corners lie outside all of them."""
    floor, deep, apron = values["d_t"] / 2, values["D"], values["w_apron"]
    scale, name = true_scale(result, result, 45.0, 45.0)
    mm, half, edge = 1 / scale, result / 2, floor + deep
    view = at_scale((17 * mm, 0.0), FRAME, scale, ())
    places = [(round_about * math.cos(angle), round_about * math.sin(angle)) for round_about, angle in ((edge, -0.3), (edge + apron, -0.55))]
    records: list[Record] = [
        Polygon(rectangle(-half, -half, half, half), "paper", "outline"),
        Polygon(circle(edge + apron), "pale", "hidden"),
        Polygon(circle(edge), "patch", "thin"),
        Polygon(circle(floor), "solid", "thin"),
        *(Line(((way * floor, 0), (way * floor, half)), "grid") for way in (-1, 1)),
        *(Line(((0, high), (half, high)), "grid") for high in (floor, edge)),
        Measure((-floor, half), (floor, half), exactly("d_t", 2 * floor), 2 * floor, 3.0),
        Measure((half, floor), (half, edge), exactly("D", deep), deep, -3.5),
        *(Leader(at, f"edge of the {name}", ((half - at[0]) * scale + 2.0, 0.0)) for at, name in zip(places, ("pit", "apron"))),
        Text((half, -half), "corners: cut off last", "start", 2.9, GREY, (2.0, 0.5)),
        length_drawn("l_cut", (-half, -half), (half, -half), -4.5),
    ]
    return View(view.window, FRAME, tuple(records)), f"the sheet for a round pit, laid out flat, {name}"


# --- fleece and stone ---------------------------------------------------------------------------------------------------------------


def _fleece(values: dict[str, float], result: float) -> Drawn:
    """The pieces to cut: under the liner floor with apron, over it the floor; the sides of each as one strip all round."""
    x, y, deep, apron = values["L_in"], values["W_in"], values["D"], values["w_apron"]
    wide, tall, round_about = x + 2 * apron, y + 2 * apron, 2 * (x + y)
    scale, name = true_scale(max(round_about, wide + x), tall + 2 * deep, 72.0, 38.0)
    mm = 1 / scale
    left, low = -max(round_about, wide + x) / 2 + mm, 0.0
    view = at_scale((0.0, tall / 2 - deep - 3.5 * mm), FRAME, scale, ())
    text = QUANTITIES["L_in"].short
    over = left + wide + 5 * mm
    records: list[Record] = [
        Polygon(rectangle(left, low, left + wide, low + tall), "pale", "outline"),
        Polygon(rectangle(left + apron, low + apron, left + apron + x, low + apron + y), "pale", "hidden"),
        *_inside("under", left, left + wide, low + tall / 2, scale),
        Measure((left, tall), (left + wide, tall), text(wide), wide, 3.0),
        Measure((left, low), (left, tall), text(tall), tall, 2.5, along=True),
        Polygon(rectangle(over, low, over + x, low + y), "patch", "outline"),
        *_inside("over", over, over + x, low + y / 2, scale),
        Measure((over, y), (over + x, y), text(x), x, 3.0),
    ]
    for top, fill in ((-3.5 * mm, "pale"), (-5.5 * mm - deep, "patch")):
        records += _side_strip(left, top, values, fill, scale)
    end = (left + round_about, -5.5 * mm - 2 * deep)
    records += [
        Measure((left, end[1]), end, f"all round = {text(round_about)}", round_about, -3.5),
        Measure(end, (end[0], end[1] + deep), text(deep), deep, -3.0, along=True),
    ]
    return View(view.window, FRAME, tuple(records)), f"fleece under and over the liner, {name}, without laps"


def _side_strip(left: float, top: float, values: dict[str, float], fill: str, scale: float) -> list[Record]:
    """The four sides as one strip, its folds at the corners."""
    x, y, deep = values["L_in"], values["W_in"], values["D"]
    ends = (left, left + x, left + x + y, left + 2 * x + y, left + 2 * (x + y))
    strip: list[Record] = [Polygon(rectangle(ends[0], top - deep, ends[4], top), fill, "outline")]
    strip += [Line(((at, top - deep), (at, top)), "hidden") for at in ends[1:4]]
    return strip + _inside("sides", ends[0], ends[1], top - deep / 2, scale)


def _stone(values: dict[str, float], result: float) -> Drawn:
    """Stone from above: over the box and the apron, and none under the plinth, which is drawn as a square."""
    x, y, apron, bare = values["L_in"] / 2, values["W_in"] / 2, values["w_apron"], math.sqrt(values["A_bare"]) / 2
    scale, name = true_scale(2 * (x + apron), 2 * (y + apron), 70.0, 43.0)
    mm = 1 / scale
    view = at_scale((3 * mm, -mm), FRAME, scale, ())
    records: list[Record] = [
        Polygon(_round_about(x, y, apron), "stone", "outline"),
        Polygon(_round_about(bare, bare, 0.0), "concrete", "outline"),
        Line((*_round_about(x, y, 0.0), (-x, -y)), "hidden"),
        *_inside("bare", -bare, bare, 0.0, scale),
        length_drawn("L_in", (-x, -y - apron), (x, -y - apron), -4.5),
        length_drawn("w_apron", (x, y), (x + apron, y), apron * scale + 3.0),
        Measure((-x - apron, -y), (-x - apron, y), QUANTITIES["W_in"].short(2 * y), 2 * y, 4.0, along=True),
    ]
    return View(view.window, FRAME, tuple(records)), f"stone from above, {name}; the box is the broken line"


DRAWN: dict[str, Draw] = {
    **dict.fromkeys(("length of the liner", "length of the liner for sloping sides"), _along),
    "length of a sloping side": _slope,
    "area of the liner": _flat,
    "side of the liner for a round pit": _round_pit,
    "area of the protection fleece": _fleece,
    "area of the stone": _stone,
}
