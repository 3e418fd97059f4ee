"""Folds of a liner: a corner of the flat sheet, the pleat from the side and from above, the layers over each other, and pleats round a circle."""

from __future__ import annotations

import math

from brimwork import system
from brimwork.drawing.pictures.paper import FRAME, SCALES, Draw, Drawn, circle, height, rectangle, said
from brimwork.drawing.records import GREY, Leader, Line, Measure, Polygon, Record, Text, View, at_scale
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError

_MOST_OVER = 12  # folds or pleats over each other that can still be told apart
_MOST_ROUND = 400  # pleats round a circle that can be drawn


def _scale(size: float, room: float) -> tuple[float, str]:
    return next((row for row in SCALES if size * row[0] <= room), SCALES[-1])


def _folds(number: float) -> int:
    """Whole folds to draw. Raises InputError for more than can be told apart."""
    if number > _MOST_OVER:
        raise InputError(f"{number:g} folds over each other are too many to draw: give 1 to {_MOST_OVER}")
    return max(1, round(number))


def _flat_corner(values: dict[str, float], result: float) -> Drawn:
    """The sheet seen flat: floor at the lower left, both sides turned down, and the square between them that must be folded."""
    tall = values["z_f"]
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
        Measure((0, tall), (tall, tall), said("z_f", tall), tall, 3.0),
        Text((tall, tall / 2), "goes past the corner", "start", 2.9, GREY, (2.0, 1.0)),
        Text((tall, tall / 2), "and comes back", "start", 2.9, GREY, (2.0, -3.0)),
    ]
    return View(view.window, FRAME, tuple(records)), f"one corner of the flat liner, {name}"


def _pleat(values: dict[str, float], result: float) -> Drawn:
    """The pleat laid along a side: seen from within the box, and under that from above, where the layers stand apart so that they can be seen."""
    folds, reach = _folds(values["N_fold"]), result
    tall = values["z_f"]
    scale, name = _scale(tall, 28.0)
    mm = 1 / scale
    view = at_scale((31 * mm, 13.5 * mm), FRAME, scale, ())
    floor, end, apart = 11 * mm, 66 * mm, 1.4 * mm
    zigzag = [(0.0, 0.0)]
    for fold in range(folds):
        zigzag += [(reach, apart * (2 * fold + 1)), (0.8 * mm if fold + 1 < folds else 0.0, apart * (2 * fold + 2))]
    records: list[Record] = [
        Polygon(((-9 * mm, floor + tall), (0, floor + tall), (0, floor), (end, floor), (end, floor - 1.5 * mm), (-9 * mm, floor - 1.5 * mm)), "earth", "none"),
        Polygon(((0, floor), (reach, floor + tall), (0, floor + tall)), "patch", "none"),
        Line(((0, floor), (reach, floor + tall)), "force"),
        Line(((0, floor + tall), (0, floor), (end, floor)), "outline"),
        Line(((0, floor + tall), (end, floor + tall)), "thin"),
        height("z_f", (0, floor), tall, scale, 3.5),
        Text((end, floor + tall), "pleat on the side, from within", "end", 2.9, GREY, (0.0, -4.0)),
        Line(((end, 0.0), (0.0, 0.0)), "outline"),
        Line(tuple(zigzag), "second curve"),
        Line((zigzag[-1], (0.0, 9.3 * mm)), "outline"),
        Polygon(rectangle(-9 * mm, -9 * mm, end, -0.6 * mm), "earth", "none"),
        Measure((0, 0), (reach, 0), said("w_fold", reach), reach, -4.0),
        Text((end, 0), f"from above: {folds} {'fold' if folds == 1 else 'folds'}, {1 + 2 * folds} layers with the side", "end", 2.9, GREY, (0.0, 1.4)),
    ]
    return View(view.window, FRAME, tuple(records)), f"corner pleat, {name}; from above the layers are drawn apart"


def _from_the_side(values: dict[str, float], result: float) -> Drawn:
    """A corner pleat seen from within the box, the apron turned up into the same plane: what shows of the pleat lies double."""
    deep, apron, trim = values["D"], values["w_apron"], values["w_trim"]
    tall = deep + apron + trim
    scale, name = _scale(tall, 46.0)
    mm = 1 / scale
    view = at_scale((26 * mm, tall / 2), FRAME, scale, ())
    low, end = view.window[1], deep + 24 * mm
    records: list[Record] = [
        Polygon(((-7 * mm, deep), (0, deep), (0, 0), (end, 0), (end, low), (-7 * mm, low)), "earth", "none"),
        Polygon(((0, 0), (deep, deep), (deep, tall), (0, tall)), "patch", "thin"),
        Line(((0, 0), (deep, deep), (deep, tall)), "force"),
        Line(((0, tall), (0, 0), (end, 0)), "outline"),
        Line(((-7 * mm, deep), (end, deep)), "outline"),
        Line(((0, tall), (end, tall)), "thin"),
        Line(((0, deep + apron), (end, deep + apron)), "hidden"),
        Measure((deep, deep), (deep, deep + apron), said("w_apron", apron), apron, -3.5),
        Measure((0, tall), (deep, tall), said("D", deep), deep, 3.0),
        Text((end, deep), "side", "end", 2.9, GREY, (-1.0, -4.2)),
        Leader((deep / 2, deep * 0.75), "this lies double", (deep * scale / 2 + 5.0, -deep * scale * 0.35)),
    ]
    return View(view.window, FRAME, tuple(records)), f"corner pleat from within, {name}; the apron is drawn turned up"


def _stack(values: dict[str, float], result: float) -> Drawn:
    """The layers over each other, as thick as they are."""
    layers, thick = 1 + 2 * _folds(values["N_fold"]), values["t_sheet"]
    true = layers * thick
    times = next((times for times in (20, 10, 5, 2, 1) if true * 1e3 * times <= 42), 1)
    view = at_scale((0.0, true / 2), FRAME, 1e3 * times, ())
    mm, wide = 1e-3 / times, 22e-3 / times
    records: list[Record] = [
        Polygon(rectangle(-wide, thick * layer, wide, thick * (layer + 1)), "pale" if layer else "solid", "thin") for layer in range(layers)
    ]
    records += [
        Text((0, thick / 2), "side", "middle", min(3.0, 0.8 * thick / mm), nudge=(0, -0.35 * min(3.0, 0.8 * thick / mm))),
        Measure((wide, 0), (wide, true), QUANTITIES["t_fold"].text_here(true), true, -4.0),
    ]
    return View(view.window, FRAME, tuple(records)), f"layers of the corner, {times} times full size" if times > 1 else "layers of the corner, full size"


_ACROSS = 1.2  # m: the pit in the picture; the number of pleats does not depend on it


def _round(values: dict[str, float], result: float) -> Drawn:
    """A round pit from above with its pleats laid to one hand."""
    if result > _MOST_ROUND:
        raise InputError(f"{result:.0f} pleats are too many to draw: give pleats that reach farther, such as {system.in_chosen('60 mm')}")
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
    records.append(Measure((radius, 0), (radius, reach), QUANTITIES["w_fold"].text_here(reach), reach, -4.0))
    records.append(Text((0, 0), f"{pleats} pleats", "middle", 3.2, nudge=(0, -1.0)))
    return View(view.window, FRAME, tuple(records)), f"pit from above, {name}, drawn {system.in_chosen('1.2 m')} wide"


_PITCHES, _PITCH = 4, 16.0  # pleats that are drawn, and mm of paper from one to the next


def _layers_round(values: dict[str, float], result: float) -> Drawn:
    """A piece of the edge stretched out straight: a pleat adds two layers as far as it reaches, and the mean of all lies at the broken line."""
    sheet, share = values["t_sheet"], values["D"] / values["d_t"]  # of its way to the next one a pleat covers that much
    over = math.ceil(share - 1e-9)
    if over > _MOST_OVER:
        raise InputError(f"a pit more than {_MOST_OVER} times as deep as it is wide takes too many layers to draw: give a wider pit, or a shallower one")
    up = 34.0 / ((1 + 2 * over) * max(sheet, 1e-9))
    window = (-8.0, -14.0 / up, 80.0, 46.0 / up)
    records: list[Record] = [Polygon(rectangle(0, 0, _PITCHES * _PITCH, sheet), "solid", "thin")]
    for pitch in range(_PITCHES):
        for layer in range(over):
            covered = min(share - layer, 1.0) * _PITCH
            foot = (1 + 2 * layer) * sheet
            records += [
                Polygon(rectangle(pitch * _PITCH, foot + half * sheet, pitch * _PITCH + covered, foot + (half + 1) * sheet), "patch", "thin") for half in (0, 1)
            ]
    end = _PITCHES * _PITCH
    records += [
        Line(((0, result), (end, result)), "second curve"),
        Measure((end, 0), (end, result), said("t_fold", result), result, -3.5, along=True),
        Text((0, 0), "side", "start", 2.9, nudge=(0, -4.0)),
        Text((0, (1 + 2 * over) * sheet), "pleats" if over == 1 else "pleats over each other", "start", 2.9, nudge=(0, 1.4)),
        Text((0, 0), f"one layer {QUANTITIES['t_sheet'].text_here(sheet)} thick", "start", 2.9, GREY, (0.0, -8.4)),
    ]
    return View(window, FRAME, tuple(records)), "layers along the edge, stretched out straight, not to scale"


DRAWN: dict[str, Draw] = {
    "liner to spare in a corner": _flat_corner,
    "liner folded away in a corner": _from_the_side,
    "reach of a corner pleat": _pleat,
    "thickness of a folded corner": _stack,
    "pleats round a circle": _round,
    "mean thickness of the folds round a circle": _layers_round,
}
