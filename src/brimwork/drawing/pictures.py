"""The pictures that stand beside formulas: a drawing, one sentence, and the table of its numbers, all from the same values."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from brimwork import topics
from brimwork.drawing.graph import Axis, graph, nice_high
from brimwork.drawing.records import GREY, Dimension, Leader, Level, Line, Point, Polygon, Record, Sheet, Text, View, at_scale
from brimwork.formula import Formula, holds
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError, convert, read

GRAVITY = QUANTITIES["g"].constant
_SCALES = ((1000.0, "full size"), (500.0, "1:2"), (200.0, "1:5"), (100.0, "1:10"), (50.0, "1:20"), (40.0, "1:25"), (20.0, "1:50"), (10.0, "1:100"))
_PLOT = (112.0, 14.0, 64.0, 48.0)


@dataclass(frozen=True)
class Picture:
    """A sheet with its sentence and its numbers: `columns` and `rows` of text."""

    sheet: Sheet
    sentence: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def picture(formula: Formula, values: dict[str, float], over: str) -> Picture:
    """The picture of a formula at `values` (SI), its curve drawn over the letter `over`."""
    result = formula(**values)
    curve = _curve(formula, values, over)
    draw = _SECTIONS.get(formula.name)
    section, caption = draw(values, result) if draw else (None, "")
    plot = _plot(formula, values, over, result, curve, wide=section is None)
    views = (section, plot) if section else (plot,)
    sentence = _sentence(formula, values, result)
    x, y = QUANTITIES[over], formula.quantity
    columns = (_title(over), _title(formula.result))
    rows = tuple((x.metric_text(a), y.metric_text(b)) for a, b in curve[:: max(1, len(curve) // 6)])
    notes = (Text((4.0, 7.0), caption, "start", 3.1, GREY),) if caption else ()
    return Picture(Sheet(180, 76, views, formula.name.capitalize(), sentence, notes), sentence, columns, rows)


def _sentence(formula: Formula, values: dict[str, float], result: float) -> str:
    given = ", ".join(f"{QUANTITIES[name].short_name.partition(',')[0]} {QUANTITIES[name].short(value)}" for name, value in values.items())
    return f"{formula.quantity.short_name.capitalize()} {formula.quantity.both(result)}, with {given}."


def _title(letter: str) -> str:
    row = QUANTITIES[letter]
    return f"{letter} in {row.metric}" if row.metric else letter


def _curve(formula: Formula, values: dict[str, float], over: str, count: int = 48) -> list[Point]:
    """Points (SI) over the usual range of `over`, stretched to take the given value in; where the formula has no value there is no point."""
    low, high, _ = formula.range(over)
    points = []
    first, last = min(low, 0.0), max(high, values[over])
    for x in (first + (last - first) * share**2 for share in _steps(0.0, 1.0, count)):  # closer together where curves bend most
        at = {**values, over: x}
        if all(holds(condition, at) for condition in formula.where):
            try:
                points.append((x, formula(**at)))
            except InputError:
                continue
    return points


def _plot(formula: Formula, values: dict[str, float], over: str, result: float, curve: list[Point], wide: bool) -> View:
    across, up = QUANTITIES[over], formula.quantity
    shown = [(convert(x, across.metric), convert(y, up.metric)) for x, y in curve]
    top = nice_high(max([y for _, y in shown] + [convert(result, up.metric)]) * 1.02)
    axes = Axis(_title(over), 0.0, nice_high(shown[-1][0])), Axis(_title(formula.result), 0.0, top)
    frame = (20.0, 14.0, 152.0, 48.0) if wide else _PLOT
    point = (convert(values[over], across.metric), convert(result, up.metric))
    return graph(frame, *axes, [(shown, "curve", "")], point, _untested_below(formula, over), up.metric_text(result))


def _untested_below(formula: Formula, over: str) -> float | None:
    unit = QUANTITIES[over].metric
    lows = [convert(read(tested.low, unit, over), unit) for tested in formula.tested if tested.of == over and tested.low]
    return max(lows, default=None)


# --- water over a lip ---------------------------------------------------------------------------------------------------------------


def _lip_section(values: dict[str, float], result: float) -> tuple[View, str]:
    """The lip seen from the side at a true scale; the falling sheet follows free fall from the lip."""
    H, b = values.get("H", result), values["b"] if "b" in values else math.pi * values.get("d_rim", values.get("d_bore", 0))
    Q = result if "H" in values else values["Q"]
    scale, name = next((s for s in _SCALES if H * s[0] <= 26), _SCALES[-1])
    frame = (4.0, 10.0, 88.0, 60.0)
    view = at_scale((-0.012 * 1000 / scale, 0.002 * 1000 / scale), frame, scale, ())
    x0, y0, _, _ = view.window
    mm = 1 / scale  # a millimetre of paper
    upper, lower = _sheet_of_water(H, Q / b, y0)
    surface = [(x, H - 0.15 * H * math.exp(x / max(H, 4 * mm))) for x in _steps(x0, 0, 40)]
    wall = 6 * mm
    records: list[Record] = [
        Polygon(((x0, y0), (-wall, y0), (-wall, 0), (0, 0), *lower, *reversed(upper), *reversed(surface)), "water", "none"),
        Polygon(((-wall, y0 - mm), (0, y0 - mm), (0, 0), (-wall, 0)), "solid", "outline"),
        Line((*surface, *upper), "water"),
        Line(tuple(lower), "water"),
        Line(((x0, 0), (-wall, 0)), "centre"),
        Level((x0 + 6 * mm, H), "water level"),
        Dimension((x0 + 44 * mm, 0), (x0 + 44 * mm, H), f"H = {QUANTITIES['H'].metric_text(H)}", H, 0.0),
        Leader((-wall / 2, y0 + 8 * mm), "vessel wall, thin edge", (-10.0, 4.0)),
    ]
    return View(view.window, frame, tuple(records)), f"section through the lip, {name}"


def _sheet_of_water(H: float, q: float, bottom: float) -> tuple[list[Point], list[Point]]:
    """Upper and lower edge of a sheet that leaves the lip level, 0.85 H thick, and falls freely; m, q in m2/s."""
    speed = q / (0.85 * H)
    upper, lower = [], []
    for t in _steps(0.0, math.sqrt(2 * (abs(bottom) + H) / GRAVITY), 24):
        x, y, down = speed * t, 0.425 * H - GRAVITY * t * t / 2, GRAVITY * t
        total = math.hypot(speed, down)
        half = q / total / 2
        across = (down / total * half, speed / total * half)
        upper.append((x + across[0], y + across[1]))
        lower.append((x - across[0], y - across[1]))
    return upper, lower


def _steps(low: float, high: float, count: int) -> list[float]:
    return [low + (high - low) * i / count for i in range(count + 1)]


# --- rim out of level ---------------------------------------------------------------------------------------------------------------


def _rim_section(values: dict[str, float], result: float) -> tuple[View, str]:
    """A tilted rim under level water, heights drawn ten times as large as widths."""
    H, e = values["H"], values["e_rim"]
    frame, across, upward = (4.0, 10.0, 88.0, 60.0), 100.0, 4000.0
    half = 0.29
    window = (-0.44, -0.009, 0.44, -0.009 + 60 / upward)
    low, high = (-half, -e / 2), (half, e / 2)
    records: list[Record] = [
        Polygon((low, high, (half, H), (-half, H)), "water", "none"),
        Polygon(((-half, -0.009), low, high, (half, -0.009)), "solid", "outline"),
        Line(((-0.44, H), (0.44, H)), "water"),
        Level((-0.1, H), "water level"),
        Dimension((-half, -e / 2), (-half, H), QUANTITIES["H"].metric_text(H + e / 2), H + e / 2, 3.0),
        Dimension((half, e / 2), (half, H), QUANTITIES["H"].metric_text(H - e / 2), H - e / 2, -3.0),
        Text((0, -0.0055), f"rim out of level by {QUANTITIES['e_rim'].metric_text(e)}", "middle", 3.1),
    ]
    return View(window, frame, tuple(records)), f"rim from the side, heights {upward / across:.0f} times as large"


# --- pits and vessels ---------------------------------------------------------------------------------------------------------------


def _vessel_section(half_widths: Callable[[float], float], depth: float, full: float, labels: list[Record]) -> tuple[View, str]:
    """A section through something that opens upwards: its half width at each height, the water depth and the full depth, in metres."""
    edge = [(half_widths(z), z) for z in _steps(0.0, full, 24)]
    water = [(half_widths(z), z) for z in _steps(0.0, depth, 24)]
    widest = max(x for x, _ in edge)
    frame = (4.0, 10.0, 88.0, 60.0)
    scale, text = next((s for s in _SCALES if 2 * widest * s[0] <= 70 and full * s[0] <= 40), _SCALES[-1])
    view = at_scale((0.0, full / 2 - 1 / scale), frame, scale, ())
    x0, y0, x1, _ = view.window
    records: list[Record] = [
        Polygon(((x0, full), *((-x, z) for x, z in reversed(edge)), *edge, (x1, full), (x1, y0), (x0, y0)), "earth", "none"),
        Polygon((*((-x, z) for x, z in reversed(water)), *water), "water", "none"),
        Line(tuple((-x, z) for x, z in reversed(edge)) + tuple(edge), "outline"),
        Line(((-water[-1][0], depth), (water[-1][0], depth)), "water"),
        Level((-water[-1][0] * 0.4, depth)),
        *labels,
    ]
    return View(view.window, frame, tuple(records)), f"section, {text}"


def _mm(letter: str, value: float) -> str:
    return f"{letter} = {QUANTITIES[letter].metric_text(value)}"


def _pit(values: dict[str, float], result: float) -> tuple[View, str]:
    L, h, batter = values["L"], values.get("h", result), values.get("m_b", 0.0)
    top = L / 2 + batter * h
    labels = [Dimension((-L / 2, 0), (L / 2, 0), _mm("L", L), L, -6.0), Dimension((top, 0), (top, h), _mm("h", h), h, -4.0)]
    if batter:
        labels.append(Dimension((-top, h), (top, h), QUANTITIES["L"].metric_text(2 * top), 2 * top, 6.0))
    return _vessel_section(lambda z: L / 2 + batter * z, h, h, labels)


def _tank(values: dict[str, float], result: float) -> tuple[View, str]:
    d, h = values["d_t"], values.get("h", result)
    labels = [Dimension((-d / 2, 0), (d / 2, 0), _mm("d_t", d), d, -6.0), Dimension((d / 2, 0), (d / 2, h), _mm("h", h), h, -4.0)]
    return _vessel_section(lambda z: d / 2, h, h * 1.1, labels)


def _cone(values: dict[str, float], result: float) -> tuple[View, str]:
    low, rim, D, h = values["d_floor"], values["d_rim"], values["D"], values.get("h", result)
    labels = [Dimension((-rim / 2, D), (rim / 2, D), _mm("d_rim", rim), rim, 4.0), Dimension((rim / 2, 0), (rim / 2, h), _mm("h", h), h, -4.0)]
    return _vessel_section(lambda z: low / 2 + (rim - low) / 2 * z / D, h, D, labels)


def _bowl(values: dict[str, float], result: float) -> tuple[View, str]:
    R, h = values["R_s"], values.get("h", result)
    full = min(max(1.15 * h, 0.1 * R), R)
    widest = math.sqrt(R * R - (R - full) ** 2)
    labels = [Dimension((widest, 0), (widest, h), _mm("h", h), h, -4.0)]
    return _vessel_section(lambda z: math.sqrt(max(R * R - (R - z) ** 2, 0.0)), h, full, labels)


_SECTIONS: dict[str, Callable[[dict[str, float], float], tuple[View, str]]] = {
    **dict.fromkeys(("flow over a level lip", "head over a level lip", "flow by weir coefficient", "head by weir coefficient", "flow over a round rim",
                     "head on a round rim", "flow over a broad crest", "head at a broad crest", "flow out of a bore over its rim"), _lip_section),
    "flow ratio of a rim out of level": _rim_section,
    **dict.fromkeys(("volume of a straight pit", "depth in a straight pit", "volume of a battered pit", "depth in a battered pit"), _pit),
    **dict.fromkeys(("volume of a round tank", "depth in a round tank"), _tank),
    **dict.fromkeys(("water in a cone-shaped bowl", "depth in a cone-shaped bowl"), _cone),
    **dict.fromkeys(("water in a round bowl", "depth in a round bowl"), _bowl),
}  # fmt: skip


def pictured() -> tuple[str, ...]:
    """Names of the formulas that have a drawing of their own beside the curve."""
    return tuple(name for name in topics.formulas() if name in _SECTIONS)
