"""Pits, tanks and bowls in section."""

from __future__ import annotations

import math
from collections.abc import Callable

from brimwork.drawing.pictures.paper import FRAME, Draw, Drawn, height, said, scale_to_fit, steps
from brimwork.drawing.records import Level, Line, Measure, Polygon, Record, View, at_scale
from brimwork.nomenclature import QUANTITIES


def _vessel_section(half_widths: Callable[[float], float], depth: float, full: float, labels: list[Record]) -> Drawn:
    """A section through something that opens upwards: its half width at each height, the water depth and the full depth, in metres."""
    edge = [(half_widths(z), z) for z in steps(0.0, full, 24)]
    water = [(half_widths(z), z) for z in steps(0.0, depth, 24)]
    widest = max(x for x, _ in edge)
    scale, text = scale_to_fit(2 * widest, full)
    if depth * scale < 24:  # too short for its number to stand upright: leave room beside it
        scale, text = scale_to_fit(2 * widest, full, 52.0)
    view = at_scale((0.0, full / 2 - 1 / scale), FRAME, scale, ())
    x0, y0, x1, _ = view.window
    records: list[Record] = [
        Polygon(((x0, full), *((-x, z) for x, z in reversed(edge)), *edge, (x1, full), (x1, y0), (x0, y0)), "earth", "none"),
        Polygon((*((-x, z) for x, z in reversed(water)), *water), "water", "none"),
        Line(tuple((-x, z) for x, z in reversed(edge)) + tuple(edge), "outline"),
        Line(((-water[-1][0], depth), (water[-1][0], depth)), "water"),
        Level((-water[-1][0] * 0.4, depth)),
        *labels,
        height("h", (half_widths(full), 0.0), depth, scale, -4.5),
    ]
    return View(view.window, FRAME, tuple(records)), f"section, {text}"


def _pit(values: dict[str, float], result: float) -> Drawn:
    L, h, batter = values["L"], values.get("h", result), values.get("m_b", 0.0)
    top = L / 2 + batter * h
    labels: list[Record] = [Measure((-L / 2, 0), (L / 2, 0), said("L", L), L, -6.0)]
    if batter:
        labels.append(Measure((-top, h), (top, h), QUANTITIES["L"].text_here(2 * top), 2 * top, 6.0))
    return _vessel_section(lambda z: L / 2 + batter * z, h, h, labels)


def _tank(values: dict[str, float], result: float) -> Drawn:
    d, h = values["d_t"], values.get("h", result)
    labels: list[Record] = [Measure((-d / 2, 0), (d / 2, 0), said("d_t", d), d, -6.0)]
    return _vessel_section(lambda z: d / 2, h, h * 1.1, labels)


def _cone(values: dict[str, float], result: float) -> Drawn:
    low, rim, D, h = values["d_floor"], values["d_rim"], values["D"], values.get("h", result)
    labels: list[Record] = [Measure((-rim / 2, D), (rim / 2, D), said("d_rim", rim), rim, 4.0)]
    return _vessel_section(lambda z: low / 2 + (rim - low) / 2 * z / D, h, D, labels)


def _bowl(values: dict[str, float], result: float) -> Drawn:
    R, h = values["R_s"], values.get("h", result)
    full = min(max(1.15 * h, 0.1 * R), R)
    return _vessel_section(lambda z: math.sqrt(max(R * R - (R - z) ** 2, 0.0)), h, full, [])


DRAWN: dict[str, Draw] = {
    **dict.fromkeys(("volume of a straight pit", "depth in a straight pit", "volume of a battered pit", "depth in a battered pit"), _pit),
    **dict.fromkeys(("volume of a round tank", "depth in a round tank"), _tank),
    **dict.fromkeys(("water in a cone-shaped bowl", "depth in a cone-shaped bowl"), _cone),
    **dict.fromkeys(("water in a round bowl", "depth in a round bowl"), _bowl),
}  # fmt: skip
