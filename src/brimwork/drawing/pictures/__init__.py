"""The pictures that stand beside formulas: a drawing, one sentence, and the table of its numbers, all from the same values.

The drawings are found by listing this folder: each file names its formulas in `DRAWN`.
"""

from __future__ import annotations

import importlib
import pkgutil
from contextlib import suppress
from dataclasses import dataclass, replace
from itertools import pairwise

from brimwork import system, topics
from brimwork.conditions import holds
from brimwork.drawing.graph import Axis, graph, nice_high, ticks
from brimwork.drawing.pictures.paper import Draw, steps
from brimwork.drawing.records import GREY, Level, Mark, Measure, Point, Sheet, Text, View
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError, convert, read

_PLOT = (112.0, 14.0, 64.0, 48.0)


def _drawn() -> dict[str, Draw]:
    """What the files of this folder draw, by the name of the formula. Raises ValueError when two draw the same."""
    table: dict[str, Draw] = {}
    for name in sorted(module.name for module in pkgutil.iter_modules(__path__)):
        for formula, draw in getattr(importlib.import_module(f"{__name__}.{name}"), "DRAWN", {}).items():
            if formula in table:
                raise ValueError(f"'{formula}' is drawn twice (the second time in {name})")
            table[formula] = draw
    return table


_SECTIONS = _drawn()


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
    if abs(result) < 1e-12 * max(abs(y) for _, y in curve):
        result = 0.0  # what rounding left of a difference
    draw = _SECTIONS.get(formula.name)
    section, caption = draw(values, result) if draw else (None, "")
    plot = _plot(formula, values, over, result, curve, wide=section is None)
    views = (replace(section, clear=True), plot) if section else (plot,)
    sentence = _sentence(formula, values, result) + (_NOT_ALL if section and _leaves(section) else "")
    x, y = QUANTITIES[over], formula.quantity
    columns = (_title(over), _title(formula.result))
    rows = tuple((x.text_here(a, None), y.text_here(b)) for a, b in _at_round_numbers(formula, values, over, curve))
    notes = (Text((4.0, 7.0), caption, "start", 3.1, GREY),) if caption else ()
    return Picture(Sheet(180, 76, views, _capital(system.named_here(formula.name)), _shape(formula, over, curve, caption), notes), sentence, columns, rows)


_NOT_ALL = " Not all of it fits into the drawing; the curve beside it has it all."


def _leaves(section: View) -> bool:
    """Whether something that is measured or marked lies outside the drawing."""
    x0, y0, x1, y1 = section.window
    ends = [end for record in section.records if isinstance(record, Measure) for end in (record.start, record.end)]
    ends += [record.at for record in section.records if isinstance(record, Mark | Level)]
    return any(not (x0 <= x <= x1 and y0 <= y <= y1) for x, y in ends)


def _shape(formula: Formula, over: str, curve: list[Point], caption: str) -> str:
    """What is to be seen, for those who do not see it: the drawing, the course of the curve from end to end, and where the mark stands."""
    x, y = QUANTITIES[over], formula.quantity
    heights = [b for _, b in curve]
    top, bottom, small = max(heights), min(heights), 1e-3 * max(map(abs, heights))
    if top - bottom <= small:
        course = "stays level"
    elif all(b >= a - small for a, b in pairwise(heights)):
        course = f"rises, {_bent(curve)}"
    elif all(b <= a + small for a, b in pairwise(heights)):
        course = f"falls, {_bent(curve)}"
    else:
        course = f"turns round at {x.text_here(curve[heights.index(top if heights[0] < top > heights[-1] else bottom)][0])}"
    drawn = f"{_capital(caption)}. Beside it a curve: the" if caption else "A curve: the"
    (x0, y0), (x1, y1) = curve[0], curve[-1]
    ends = f"from {y.text_here(y0)} at {x.text_here(x0)} to {y.text_here(y1)} at {x.text_here(x1)}"
    return f"{drawn} {y.plain_name} over the {x.plain_name} {course}, {ends}. A mark stands on it at the values of the boxes."


def _bent(curve: list[Point]) -> str:
    """How steep a curve is at its two ends."""
    slopes = [abs((b - y) / (a - x)) for (x, y), (a, b) in (curve[:2], curve[-2:]) if a != x]
    if len(slopes) < 2 or max(slopes) <= 1.1 * min(slopes):
        return "evenly"
    return "steeper and steeper" if slopes[1] > slopes[0] else "less and less steeply"


def _sentence(formula: Formula, values: dict[str, float], result: float) -> str:
    given = ", ".join(f"{QUANTITIES[name].plain_name} {QUANTITIES[name].short(value)}" for name, value in values.items())
    return f"{_capital(formula.quantity.plain_name)} {formula.quantity.shown(result, _figures(formula))}, with {given}."


def _figures(formula: Formula) -> int:
    """Three, and four where three are too coarse to cut by."""
    return 4 if formula.close else 3


def _capital(text: str) -> str:
    return text[0].upper() + text[1:]


def _title(letter: str) -> str:
    row = QUANTITIES[letter]
    unit = {"in": "inches", "in2": "square inches", "day": "days"}.get(row.here, row.here) or ("decibels" if row.name.endswith(" in decibels") else "")
    return f"{letter} in {unit}" if unit else letter


def _curve(formula: Formula, values: dict[str, float], over: str, count: int = 48) -> list[Point]:
    """Points (SI) over the usual range of `over`, stretched to take the given value in; where the formula has no value there is no point."""
    points = []
    first, last = _start(formula, values, over), max(_usual(formula, over)[1], values[over])
    for x in (first + (last - first) * share**2 for share in steps(0.0, 1.0, count)):  # closer together where curves bend most
        at = {**values, over: x}
        if all(holds(condition, at) for condition in formula.where):
            try:
                points.append((x, formula(**at)))
            except InputError:
                continue
    if not points:
        raise InputError(f"no usual {over} fits the other values: change one of them")
    return points


def _usual(formula: Formula, over: str) -> tuple[float, float]:
    """Both ends of the usual range (SI), as sliders have them."""
    row = QUANTITIES[over]
    low, high, _ = row.on_a_slider(*formula.range(over))
    return row.read(f"{low:.9g} {row.here}"), row.read(f"{high:.9g} {row.here}")


def _at_round_numbers(formula: Formula, values: dict[str, float], over: str, curve: list[Point]) -> list[Point]:
    """Points (SI) of a curve at its ends and at round numbers of the units of the page, for its table."""
    row, points = QUANTITIES[over], [curve[0], curve[-1]]
    axis = Axis("", *(convert(end, row.here) for end, _ in points))
    for place in ticks(axis) if axis.high > axis.low else ():
        x = row.read(f"{place:.9g} {row.here}")
        with suppress(InputError):
            points.insert(-1, (x, formula(**{**values, over: x})))
    return list(dict((f"{x:.6g}", (x, y)) for x, y in points).values())


def _start(formula: Formula, values: dict[str, float], over: str) -> float:
    """Where a curve begins: at zero, or, for one that has no value there, with the usual range."""
    low = _usual(formula, over)[0]
    try:
        formula(**{**values, over: 0.0})
    except InputError:
        return min(low, values[over])
    return min(low, 0.0)


def _plot(formula: Formula, values: dict[str, float], over: str, result: float, curve: list[Point], wide: bool) -> View:
    across, up = QUANTITIES[over], formula.quantity
    shown = [(convert(x, across.here), convert(y, up.here)) for x, y in curve]
    heights = sorted(y for _, y in shown)
    most = min(heights[-1], 3 * heights[len(heights) * 9 // 10])  # a curve that shoots up at its end is cut off there
    top = nice_high(max(most, convert(result, up.here)) * 1.02)
    point = (convert(values[over], across.here), convert(result, up.here))
    axes = Axis(_title(over), _low(point[0]), nice_high(max(shown[-1][0], point[0]))), Axis(_title(formula.result), _low(point[1]), top)
    frame = (20.0, 14.0, 152.0, 48.0) if wide else _PLOT
    return graph(frame, *axes, [(shown, "curve")], point, _untested_below(formula, over), up.text_here(result, _figures(formula)))


def _low(value: float) -> float:
    """Where an axis begins: at zero, or under the marked value where that is less."""
    return -nice_high(-1.02 * value) if value < 0 else 0.0


def _untested_below(formula: Formula, over: str) -> float | None:
    unit = QUANTITIES[over].here
    lows = [convert(read(tested.low, unit, over), unit) for tested in formula.tested if tested.of == over and tested.low]
    return max(lows, default=None)


def pictured() -> tuple[str, ...]:
    """Names of the formulas that have a drawing of their own beside the curve."""
    return tuple(name for name in topics.formulas() if name in _SECTIONS)
