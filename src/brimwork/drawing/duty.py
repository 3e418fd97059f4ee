"""The duty chart of a design: what the pump gives, what pipe and lift ask for, where they meet, and the flow wanted with its band."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from brimwork.design.follows.chain import Chain
from brimwork.drawing.graph import Axis, graph, nice_high, tick_mark, ticks
from brimwork.drawing.lettering import BY_REGION, METRIC, US, Lettering
from brimwork.drawing.placing import Room
from brimwork.drawing.records import ACCENT, GREY, INK, NIGHT, WATER, Line, Mark, Point, Polygon, Record, Sheet, Text, View
from brimwork.drawing.sizes import WIDTH
from brimwork.topics.pumps import Duty
from brimwork.units import InputError, convert, number, write

_BAND = (1.1, 1.6)  # times the flow wanted that a pump should send with its valve open
_FRAME = (15.0, 22.0, 143.0, 62.0)
_POINTS = 30
BLUE = WATER


@dataclass(frozen=True)
class _Curves:
    """Points of flow (m3/s) and head (m): of the pump, of pipe and lift with the valve open, and with it throttled to the flow wanted where that can be."""

    pump: list[Point]
    system: list[Point]
    throttled: list[Point]


def duty_chart(chain: Chain) -> Sheet:
    """Pump against system, water at its lowest. Raises Unknown with the keys that are missing."""
    lettering = BY_REGION[chain.design.region]
    pump, wanted, need = chain.pump, chain.flow_wanted, chain.head_wanted
    duty, why = _duty(chain)
    bucket = chain.design["measured.flow"] if "measured.flow" in chain.design.values else 0.0
    across = Axis(f"flow in {lettering.flow}", 0.0, nice_high(max(pump.Q_max, 1.05 * wanted, 1.05 * bucket) / lettering.flow_unit))
    up = Axis(f"head in {lettering.head}", 0.0, nice_high(1.06 * max(pump.head(0.0), need) / lettering.head_unit))
    curves = _curves(chain, duty, wanted, need, across.high * lettering.flow_unit)
    view = _view(across, up, curves, wanted, lettering)
    marks = _marks(chain, duty, wanted, need, lettering)
    records, left_over = _labelled(view, curves, marks, lettering)
    notes = [Text((4.0, 7.0), "Duty chart: pump curve and system curve, water at its lowest", "start", 2.9, GREY)]
    notes += [Text((_FRAME[0], 94.0 + 4.0 * row), text, "start", 2.9, GREY) for row, text in enumerate(left_over)]
    whole = replace(view, records=(*view.records, *_other_system(across, up, lettering), *records))
    return Sheet(WIDTH, 96.0 + 4.0 * len(left_over), (whole,), f"{chain.design.title}: duty chart", _sentence(duty, why, wanted, lettering), tuple(notes),
                 *_table(curves, lettering))  # fmt: skip


def _duty(chain: Chain) -> tuple[Duty | None, str]:
    """Where pump and system meet, or why they do not."""
    try:
        return chain.duty, ""
    except InputError as error:
        return None, str(error)


def _curves(chain: Chain, duty: Duty | None, wanted: float, need: float, end: float) -> _Curves:
    """Up to the flow `end`; the pump as far as its curve goes, at the same flows."""
    pump = chain.pump
    flows = [pump.Q_max * (i / _POINTS) ** 2 for i in range(_POINTS + 1)]  # closer together where a system curve may be steep
    beyond = [pump.Q_max + (end - pump.Q_max) * i / 8 for i in range(1, 9)] if end > 1.001 * pump.Q_max else []
    system = [(flow, chain.head_needed(flow)) for flow in (*flows, *beyond)]
    spare = pump.head(wanted) - need if duty and wanted < min(duty.Q, pump.Q_max) else 0.0
    extra = spare / wanted**2 if spare > 0.02 * need else 0.0  # a valve takes as the flow squared
    throttled = [(flow, head + extra * flow**2) for flow, head in system] if extra else []
    return _Curves([(flow, pump.head(flow)) for flow in flows], system, throttled)


def _shown(points: Sequence[Point], lettering: Lettering) -> list[Point]:
    flow, head = lettering.flow_unit, lettering.head_unit
    return [(x / flow, y / head) for x, y in points]


def _lines(curves: _Curves, right: float, high: float, lettering: Lettering) -> dict[str, list[Point]]:
    """The curves in the units of the chart, each up to where it leaves it."""
    return {name: _clipped(_shown(points, lettering), right, high) for name, points in vars(curves).items()}


def _clipped(points: list[Point], right: float, high: float) -> list[Point]:
    """What is inside from the first point on, to where the line crosses the top or the right."""
    inside: list[Point] = []
    for point in points:
        if point[0] <= right and 0 <= point[1] <= high:
            inside.append(point)
        elif inside:
            (x, y), (u, v) = inside[-1], point
            share = min((right - x) / (u - x) if u > right else 1.0, (high - y) / (v - y) if v > high else 1.0)
            return [*inside, (x + share * (u - x), min(y + share * (v - y), high))]
    return inside


def _view(across: Axis, up: Axis, curves: _Curves, wanted: float, lettering: Lettering) -> View:
    lines = _lines(curves, across.high, up.high, lettering)
    styles = {"pump": "curve", "system": "second curve", "throttled": "hidden"}
    view = graph(_FRAME, across, up, [(points, styles[name]) for name, points in lines.items() if points])
    low, high = (min(convert(wanted, lettering.flow) * share, across.high) for share in _BAND)
    band = Polygon(((low, 0.0), (low, up.high), (high, up.high), (high, 0.0)), "pale", "none")
    return replace(view, records=(band, *view.records))


def _other_system(across: Axis, up: Axis, lettering: Lettering) -> list[Record]:
    """The scales of the other system of units, above and on the right."""
    other = US if lettering is METRIC else METRIC
    flow, head = lettering.flow_unit / other.flow_unit, lettering.head_unit / other.head_unit
    records: list[Record] = [Line(((0.0, up.high), (across.high, up.high), (across.high, 0.0)), "thin")]
    for at in ticks(Axis("", 0.0, across.high * flow))[1:]:
        records += [Line(((at / flow, up.high), (at / flow, up.high * 0.98)), "thin"), Text((at / flow, up.high), tick_mark(at), "middle", 2.6, GREY, (0, 1.2))]
    for at in ticks(Axis("", 0.0, up.high * head)):
        records += [
            Line(((across.high, at / head), (across.high * 0.991, at / head)), "thin"),
            Text((across.high, at / head), tick_mark(at), "start", 2.6, GREY, (1.2, -0.9)),
        ]
    records.append(Text((across.high, up.high), f"flow in {other.flow}, head in {other.head}", "end", 2.9, GREY, (12.0, 5.2)))
    return records


@dataclass(frozen=True)
class _Named:
    """A point of flow (m3/s) and head (m), its mark and its words."""

    at: Point
    text: str
    colour: str
    radius: float


def _marks(chain: Chain, duty: Duty | None, wanted: float, need: float, lettering: Lettering) -> list[_Named]:
    said = [_Named((duty.Q, duty.H), f"duty {write(duty.Q, lettering.flow)} at {write(duty.H, lettering.head)}", ACCENT, 1.3)] if duty else []
    said.append(_Named((wanted, need), f"required {write(wanted, lettering.flow)}", NIGHT, 1.1))
    if "measured.flow" in chain.design.values:
        flow = chain.design["measured.flow"]
        said.append(_Named((flow, chain.head_needed(flow)), f"by bucket {write(flow, lettering.flow)}", INK, 1.4))
    return said


_CURVES = (("pump", "pump", BLUE), ("system", "system", ACCENT), ("throttled", "system, throttled to the required flow", INK))
_ALONG = (1, 8, 3, 6, 5, 9, 2, 7, 4)  # tenths of a curve at which its label is tried


def _labelled(view: View, curves: _Curves, marks: list[_Named], lettering: Lettering) -> tuple[list[Record], list[str]]:
    """Marks and labels, each where it touches no curve and no other label; and the words for which there was no place."""
    room, (_, _, right, high) = Room(view), view.window
    lines = _lines(curves, right, high, lettering)
    placed = [(mark, point) for mark in marks for point in _inside(_shown([mark.at], lettering), right, high)]
    guides = [Line(((0.0, y), (x, y), (x, 0.0)), "hidden") for mark, (x, y) in placed if mark.text.startswith("duty")]
    for points in (*lines.values(), *(guide.points for guide in guides)):
        room.line(points)
    for mark, point in placed:
        room.mark(point, mark.radius)
    asked = [([point], mark.text, mark.colour) for mark, point in placed]
    asked += [([lines[name][len(lines[name]) * share // 10] for share in _ALONG], text, colour) for name, text, colour in _CURVES if lines[name]]
    made = [(text, room.label(points, text, 3.1, colour)) for points, text, colour in asked]
    away = [f"{mark.text}: not on the chart" for mark in marks if mark.text not in [one.text for one, _ in placed]]
    records = [*guides, *(Mark(point, mark.radius, mark.colour) for mark, point in placed), *(record for _, records in made for record in records)]
    return records, [*away, *(text for text, records in made if not records)]


def _inside(points: list[Point], right: float, high: float) -> list[Point]:
    return [(x, y) for x, y in points if x <= right and 0 <= y <= high]


def _sentence(duty: Duty | None, why: str, wanted: float, lettering: Lettering) -> str:
    low, high = map(number, _BAND)
    band = f"The pale band is {low} to {high} times the required flow."
    if not duty:
        return f"Pump and system do not meet: {why}. {band}"
    return (
        f"With the valve open the pump sends {write(duty.Q, lettering.flow)} at a head of {write(duty.H, lettering.head)}, "
        f"{number(duty.Q / wanted, 3)} times the required {write(wanted, lettering.flow)}. {band}"
    )


def _table(curves: _Curves, lettering: Lettering) -> tuple[tuple[str, ...], tuple[tuple[str, ...], ...]]:
    """Flow, head of the pump, head that pipe and lift ask for."""
    pairs = list(zip(curves.pump, curves.system))[:: _POINTS // 5]
    columns = (f"flow in {lettering.flow}", f"pump: head in {lettering.head}", f"system: head in {lettering.head}")
    units = (lettering.flow_unit, lettering.head_unit, lettering.head_unit)
    return columns, tuple(tuple(number(value / unit, 3) for value, unit in zip((flow, gives, asks), units, strict=True)) for (flow, gives), (_, asks) in pairs)
