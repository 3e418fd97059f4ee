"""Folds of a liner: a corner of the flat sheet, the pleat laid along a side, the layers over each other, and pleats round a circle."""

from __future__ import annotations

import math

from brimwork.drawing.pictures.paper import FRAME, SCALES, Draw, Drawn, circle, rectangle, said
from brimwork.drawing.records import GREY, Dimension, Line, Polygon, Record, Text, View, at_scale
from brimwork.nomenclature import QUANTITIES


def _scale(size: float, room: float) -> tuple[float, str]:
    return next((row for row in SCALES if size * row[0] <= room), SCALES[-1])


def _flat_corner(values: dict[str, float], result: float) -> Drawn:
    """The sheet seen flat: floor at the lower left, both sides turned down, and the square between them that must be folded."""
    tall = values["z_f"] if "z_f" in values else values["D"]
    scale, name = _scale(tall, 26.0)
    mm = 1 / scale
    view = at_scale((tall / 2 + 5 * mm, tall / 2 - 7 * mm), FRAME, scale, ())
    low = -16 * mm
    records: list[Record] = [
        Polygon(rectangle(low, low, 0, 0), "solid", "thin"),
        Polygon(rectangle(low, 0, 0, tall), "pale", "thin"),
        Polygon(rectangle(0, low, tall, 0), "pale", "thin"),
        Polygon(rectangle(0, 0, tall, tall), "patch", "thin"),
        Line(((0, 0), (tall, tall)), "hidden"),
        Line(((low, tall), (tall, tall), (tall, low)), "force"),
        Text((low / 2, low / 2), "floor", "middle", 3.0, nudge=(0, -1.0)),
        Text((low / 2, tall / 2), "side", "middle", 3.0, nudge=(0, -1.0)),
        Text((tall / 2, low / 2), "side", "middle", 3.0, nudge=(0, -1.0)),
        Dimension((0, tall), (tall, tall), said("z_f" if "z_f" in values else "D", tall), tall, 3.0),
        Text((tall, tall / 2), "goes past the corner", "start", 2.9, GREY, (2.0, 1.0)),
        Text((tall, tall / 2), "and comes back", "start", 2.9, GREY, (2.0, -3.0)),
    ]
    return View(view.window, FRAME, tuple(records)), f"one corner of the flat liner, {name}"


def _pleat(values: dict[str, float], result: float) -> Drawn:
    """Two sides of the box from above, and the pleat laid along one of them; the layers stand apart so that they can be seen."""
    folds, reach = max(1, round(values["N_fold"])), result
    scale, name = _scale(reach, 56.0)
    mm = 1 / scale
    view = at_scale((30 * mm, 2 * mm), FRAME, scale, ())
    apart = 2.2 * mm
    zigzag = [(0.0, 0.0)]
    for fold in range(folds):
        zigzag += [(reach, apart * (2 * fold + 1)), (0.8 * mm if fold + 1 < folds else 0.0, apart * (2 * fold + 2))]
    records: list[Record] = [
        Polygon(rectangle(-6 * mm, -22 * mm, 70 * mm, -1.5 * mm), "earth", "none"),
        Polygon(rectangle(-6 * mm, -1.5 * mm, -1.5 * mm, 24 * mm), "earth", "none"),
        Line(((66 * mm, 0.0), (0.0, 0.0)), "outline"),
        Line(tuple(zigzag), "second curve"),
        Line((zigzag[-1], (0.0, 24 * mm)), "outline"),
        Dimension((0, 0), (reach, 0), said("w_fold", reach), reach, -8.0),
        Text((-1 * mm, 24 * mm), f"{folds} {'fold' if folds == 1 else 'folds'}, {1 + 2 * folds} layers with the side", "start", 3.0, GREY, (4.0, -2.0)),
    ]
    return View(view.window, FRAME, tuple(records)), f"corner from above, lengths {name}, layers drawn apart"


def _stack(values: dict[str, float], result: float) -> Drawn:
    """The layers over each other, as thick as they are."""
    layers, thick = 1 + 2 * max(1, round(values["N_fold"])), values["t_sheet"]
    true = layers * thick
    times = next((times for times in (20, 10, 5, 2, 1) if true * 1e3 * times <= 42), 1)
    view = at_scale((0.0, true / 2), FRAME, 1e3 * times, ())
    mm, wide = 1e-3 / times, 22e-3 / times
    records: list[Record] = [
        Polygon(rectangle(-wide, thick * layer, wide, thick * (layer + 1)), "pale" if layer else "solid", "thin") for layer in range(layers)
    ]
    records += [
        Text((0, thick / 2), "side", "middle", min(3.0, 0.8 * thick / mm), nudge=(0, -0.35 * min(3.0, 0.8 * thick / mm))),
        Dimension((wide, 0), (wide, true), QUANTITIES["t_fold"].metric_text(true), true, -4.0),
    ]
    return View(view.window, FRAME, tuple(records)), f"layers of the corner, {times} times full size" if times > 1 else "layers of the corner, full size"


_ACROSS = 1.2  # m: the pit in the picture; the number of pleats does not depend on it


def _round(values: dict[str, float], result: float) -> Drawn:
    """A round pit from above with its pleats laid to one hand."""
    radius, reach, pleats = _ACROSS / 2, values["w_fold"], max(1, math.ceil(result - 1e-9))
    scale, name = 1000 / 30, "1:30"
    view = at_scale((0.0, 0.0), FRAME, scale, ())
    gap = 1.0 / scale
    records: list[Record] = [Polygon(circle(radius), "water", "outline")]
    for pleat in range(pleats):
        angle = 2 * math.pi * pleat / pleats
        foot = (radius * math.cos(angle), radius * math.sin(angle))
        tip = (foot[0] - reach * math.sin(angle) - gap * math.cos(angle), foot[1] + reach * math.cos(angle) - gap * math.sin(angle))
        records.append(Line((foot, tip), "second curve"))
    records.append(Dimension((radius, 0), (radius, reach), QUANTITIES["w_fold"].metric_text(reach), reach, -4.0))
    records.append(Text((0, 0), f"{pleats} pleats", "middle", 3.2, nudge=(0, -1.0)))
    return View(view.window, FRAME, tuple(records)), f"pit from above, {name}, drawn 1.2 m wide"


DRAWN: dict[str, Draw] = {
    **dict.fromkeys(("liner to spare in a corner", "liner folded away in a corner"), _flat_corner),
    "reach of a corner pleat": _pleat,
    "thickness of a folded corner": _stack,
    "pleats round a circle": _round,
}
