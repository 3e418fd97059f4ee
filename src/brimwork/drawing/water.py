"""Water in the reservoir of a design: what it holds stopped and running, as bars to a true scale, and its level over thirty dry days."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from brimwork.design.follows.chain import Chain
from brimwork.design.follows.dry_month import DAYS, dry_month
from brimwork.drawing.graph import Axis, graph
from brimwork.drawing.lettering import BY_REGION, Lettering
from brimwork.drawing.pictures.paper import rectangle
from brimwork.drawing.placing import Room, spread_apart
from brimwork.drawing.records import ACCENT, GREY, INK, NIGHT, WATER, Line, Point, Polygon, Record, Sheet, Text, View
from brimwork.drawing.sizes import TOO_LARGE, WIDTH
from brimwork.topics.water_balance import DayOfWater
from brimwork.units import InputError, convert, number, write

BARS = ((50.0, 66.0), (110.0, 126.0))  # mm of the sheet: left and right of the bar with the pump off, and of the one with it running
_TALLEST, _SIZE, _PITCH = 95.0, 2.7, 4.0
_FRAME = (18.0, 16.0, 148.0, 50.0)


@dataclass(frozen=True)
class _Piece:
    """A layer of the reservoir: its name, from and to which level above the floor (m), and its fill."""

    name: str
    low: float
    high: float
    fill: str


# --- bars ---------------------------------------------------------------------------------------------------------------------------


def reservoir_bars(chain: Chain) -> Sheet:
    """Dead water, usable water, water in transit and free space, stopped and running. Raises Unknown, InputError."""
    lettering, area = BY_REGION[chain.design.region], chain.water_area
    stopped, running = _pieces(chain)
    known = [
        (level.name, level.height - chain.level("reservoir floor"))
        for level in reversed(chain.levels_shown())
        if level.kind == "water" or level.name == "pump intake"
    ]
    top = max(stopped[-1].high, running[-1].high, *(height for _, height in known))
    found = lettering.fitting(1.0, top, float("inf"), _TALLEST)
    if not found:
        raise InputError(TOO_LARGE)
    scale, name = found
    texts = [
        [f"{piece.name} {lettering.said(piece.high - piece.low)}, {write(area * (piece.high - piece.low), lettering.volume)}" for piece in pieces]
        for pieces in (stopped, running)
    ]
    marks = [(height, f"{name} {lettering.figure(height)}") for name, height in known]
    records = [
        *_bar(BARS[0], stopped),
        *_bar(BARS[1], running),
        *_beside(stopped, texts[0], scale, -1),
        *_beside(running, texts[1], scale, 1),
        *_marks(marks, scale),
    ]
    view = _to_scale(top, scale, records)
    bottom = view.frame[1] + view.frame[3]
    heads = [Text((sum(bar) / 2, bottom + 5.0), text, "middle", 2.9, INK) for bar, text in zip(BARS, ("pump off", "running"), strict=True)]
    notes = (Text((4.0, 7.0), f"Water in the reservoir, heights {name}, in {lettering.named} above the floor", "start", 2.9, GREY), *heads)
    columns = ("layer", f"pump off: height, volume over {write(area, 'm2' if lettering.length == 'mm' else 'ft2')} of water", "running")
    rows = _rows(stopped, running, area, lettering)
    return Sheet(WIDTH, bottom + 9.0, (view,), f"{chain.design.title}: water in the reservoir", _said(chain, stopped, running, lettering), notes, columns, rows)


def _pieces(chain: Chain) -> tuple[list[_Piece], list[_Piece]]:
    """The layers from the floor up. On the start the water in transit leaves: what was under the static level then stands so much lower."""
    d = chain.design
    low, static, over = (d[f"reservoir.{name}_level"] for name in ("lowest", "static", "overflow"))
    if not low <= static <= over:
        raise InputError("the levels do not fit: the lowest water must not stand over the static level, nor that over the overflow")
    settled = static - chain.start_drop
    if settled < 0:
        raise InputError("more water is in transit than the reservoir holds: nothing would be left in it")
    reached = min(low, settled)
    stopped = [_Piece("dead", 0.0, low, "untested"), _Piece("usable", low, static, "water"), _Piece("free", static, over, "paper")]
    running = [_Piece("dead", 0.0, reached, "untested"), _Piece("usable", reached, settled, "water"), _Piece("in transit", settled, static, "patch"),
               _Piece("free", static, over, "paper")]  # fmt: skip
    return stopped, running


def _to_scale(top: float, scale: float, records: list[Record]) -> View:
    """A view whose heights are metres at a true scale, and whose places across are mm of the sheet."""
    high, low = top * scale + 6.0, 5.0
    return View((0.0, -low / scale, WIDTH, high / scale), (0.0, 10.0, WIDTH, high + low), tuple(records), clip=False)


def _bar(bar: tuple[float, float], pieces: list[_Piece]) -> list[Record]:
    left, right = bar
    base = [Polygon(rectangle(left, 0.0, right, pieces[0].high), "water", "none")]
    return [*base, *(Polygon(rectangle(left, piece.low, right, piece.high), piece.fill, "thin") for piece in pieces if piece.high > piece.low)]


def _beside(pieces: list[_Piece], texts: list[str], scale: float, side: int) -> list[Record]:
    """What each layer is, on the outer side of its bar, spread so that no two touch."""
    shown = [(piece, text) for piece, text in reversed(list(zip(pieces, texts, strict=True))) if piece.high > piece.low]
    middles = [(piece.low + piece.high) / 2 for piece, _ in shown]
    places = spread_apart([middle * scale for middle in middles], _PITCH)
    edge, anchor = (BARS[0][0], "end") if side < 0 else (BARS[1][1], "start")
    records: list[Record] = []
    for (_, text), middle, place in zip(shown, middles, places, strict=True):
        end = (edge + side * 4.0, place / scale)
        records += [Line(((edge, middle), end), "dimension"), Text(end, text, anchor, _SIZE, nudge=(side * 0.8, -1.0))]
    return records


def _marks(marks: list[tuple[float, str]], scale: float) -> list[Record]:
    """The levels, named between the two bars, with a line to each."""
    left, right = BARS[0][1], BARS[1][0]
    places = spread_apart([height * scale for height, _ in marks], _PITCH)
    records: list[Record] = []
    for (height, text), place in zip(marks, places, strict=True):
        y = place / scale
        records += [
            Line((*((x, height) for x in BARS[0]), (left + 4.0, y)), "water level"),
            Line(((right - 4.0, y), *((x, height) for x in BARS[1])), "water level"),
        ]
        records.append(Text(((left + right) / 2, y), text, "middle", _SIZE, NIGHT, (0.0, -1.0)))
    return records


def _rows(stopped: list[_Piece], running: list[_Piece], area: float, lettering: Lettering) -> tuple[tuple[str, ...], ...]:
    def said(pieces: list[_Piece], name: str) -> str:
        heights = [piece.high - piece.low for piece in pieces if piece.name == name]
        return f"{lettering.said(heights[0])}, {write(area * heights[0], lettering.volume)}" if heights else "none"

    return tuple((piece.name, said(stopped, piece.name), said(running, piece.name)) for piece in running)


def _said(chain: Chain, stopped: list[_Piece], running: list[_Piece], lettering: Lettering) -> str:
    area, (_, usable, free), transit = chain.water_area, stopped, running[2]
    volume = [write(area * (piece.high - piece.low), lettering.volume) for piece in (usable, transit, free)]
    other = f" {both}" if (both := chain.running_levels_said(lettering.said)) else ""
    short = " The start draws the water below the pump's lowest level: it holds too little." if transit.low < usable.low else ""
    return (
        f"With the pump off the water stands {lettering.said(usable.high)} deep, {volume[0]} of it usable, with {volume[2]} of free space up to the overflow. "
        f"On the start {volume[1]} goes up into the feature and the level falls by {lettering.said(transit.high - transit.low)}.{other}{short}"
    )


# --- thirty days --------------------------------------------------------------------------------------------------------------------


def thirty_days(chain: Chain) -> Sheet:
    """The level with the pump running over thirty days of the driest month, with top-up and without. Raises Unknown, InputError."""
    lettering, d = BY_REGION[chain.design.region], chain.design
    kept, falling = dry_month(chain, True), dry_month(chain, False)
    drop, static, low = chain.start_drop, d["reservoir.static_level"], d["reservoir.lowest_level"]
    daily = {
        name: [(float(day), convert(level - drop, lettering.length)) for day, level in enumerate([static, *(one.level for one in run)])]
        for name, run in (("with", kept), ("without", falling))
    }
    curves = {"with": daily["with"], "without": _with_the_end(daily["without"], falling)}
    limits = {"the pump's low limit": low} | ({"cut-out": d["reservoir.cut_out_level"]} if "reservoir.cut_out_level" in d.values else {})
    view, left_over = _month(curves, {f"{name} {lettering.figure(level)}": convert(level, lettering.length) for name, level in limits.items()}, lettering)
    notes = [Text((4.0, 7.0), "Level over thirty days of the driest month, no rain, pump running", "start", 2.9, GREY)]
    notes += [Text((_FRAME[0], 82.0 + 4.0 * row), text, "start", 2.9, GREY) for row, text in enumerate(left_over)]
    unit = lettering.length
    columns = ("day", f"with top-up, {unit}", f"without, {unit}", f"topped up that day, {lettering.volume}")
    rows = tuple((str(day), *(number(points[day][1], 3) for points in daily.values()), number(convert(kept[day - 1].topped_up, lettering.volume), 3) if day else "–")
                 for day in range(0, DAYS + 1, 5))  # fmt: skip
    return Sheet(WIDTH, 80.0 + 4.0 * len(left_over), (view,), f"{d.title}: thirty dry days", _month_said(kept, falling, lettering), tuple(notes), columns, rows)


def _with_the_end(points: list[Point], run: list[DayOfWater]) -> list[Point]:
    """With the hour at which the pump has no water left, from when the level stands, within its day."""
    dry = next((day for day, one in enumerate(run) if one.running < 1), None)
    return points if dry is None else [*points[: dry + 1], (dry + run[dry].running, points[dry + 1][1]), *points[dry + 1 :]]


def _month(curves: dict[str, list[Point]], limits: dict[str, float], lettering: Lettering) -> tuple[View, list[str]]:
    low, high = _span([y for points in curves.values() for _, y in points] + list(limits.values()))
    across, up = Axis("days without rain", 0.0, float(DAYS)), Axis(f"level above the floor, {lettering.length}", low, high)
    view = graph(_FRAME, across, up, [(curves["with"], "curve"), (curves["without"], "second curve")])
    room = Room(view)
    lines = [((0.0, level), (float(DAYS), level)) for level in limits.values()]
    for points in (*curves.values(), *lines):
        room.line(points)
    named = [
        ("with top-up", curves["with"], WATER),
        ("without top-up", curves["without"], ACCENT),
        *((name, line, INK) for name, line in zip(limits, lines, strict=True)),
    ]
    made = [(text, room.label(_along(points), text, 3.0, colour)) for text, points, colour in named]
    records = [*view.records, *(Line(line, "hidden") for line in lines), *(record for _, records in made for record in records)]
    return replace(view, records=tuple(records)), [text for text, records in made if not records]


def _along(points: Sequence[Point]) -> Sequence[Point]:
    """Places along a line at which its label is tried."""
    if len(points) == 2:
        return [(points[1][0] * share, points[0][1]) for share in (0.1, 0.3, 0.5, 0.7, 0.9)]
    return [points[len(points) * share // 10] for share in (3, 2, 5, 7, 1, 8)]


def _span(heights: list[float]) -> tuple[float, float]:
    """The axis a little wider than what it must show."""
    low, high = min(heights), max(heights)
    room = 0.12 * (high - low) or 0.1 * high or 1.0
    return low - room, high + room


def _month_said(kept: list[DayOfWater], falling: list[DayOfWater], lettering: Lettering) -> str:
    added = sum(day.topped_up for day in kept)
    lasts = sum(day.running for day in falling)
    ends = f"the pump has water for {number(lasts, 3)} days" if lasts < DAYS else f"the pump still has water after {DAYS} days"
    return f"In {DAYS} days without rain the top-up adds {write(added, lettering.volume)}, {write(kept[-1].topped_up, lettering.volume)} on a day; without it {ends}."
