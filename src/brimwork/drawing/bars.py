"""The bar chart of a programme: a bar for each step over the days, weekends shaded, critical steps filled, hold points marked."""

from __future__ import annotations

import datetime

from brimwork.design.done.programme import OPENING, Dated, Programme
from brimwork.design.typed.steps import WAIT
from brimwork.design.typed.wording import worded
from brimwork.drawing.records import GREY, Line, Mark, Point, Polygon, Record, Sheet, Text, View

_ROW, NAMES, _WIDE = 4.2, 36.0, 136.0  # mm: height of a row, room for the names, width of the days
_LEAST = 0.5  # mm: the narrowest bar
_HEAD, _FOOT = 10.0, 8.0
_FIRST = 24.0  # mm: room for the first day, which is named with its weekday
_FILLS = {(True, False): "accent", (True, True): "patch", (False, False): "solid", (False, True): "paper"}  # critical, wait


def bars(made: Programme, title: str, region: str = "UK") -> Sheet:
    """The chart of a programme, 174 mm wide. Only working hours have width: a day is as wide as its work, and weekends are narrow gaps shaded."""
    days = (made.end.date() - made.first).days + 1
    rows = len(made.steps)
    frame = (NAMES, _HEAD, _WIDE, rows * _ROW)
    view = View((0.0, -float(rows), float(days), 0.0), frame, (*_grid(made, days, rows), *_steps(made, days)), clip=False)
    names = tuple(Text((NAMES - 2, _HEAD + (i + 0.7) * _ROW), _name(i, one, region), "end", 2.6) for i, one in enumerate(made.steps))
    legend = Text(
        (2.0, _HEAD + rows * _ROW + 5),
        "filled: critical; grey: time to spare; pale or open: a wait; shaded: weekend; point: work stops until signed",
        "start",
        2.6,
        GREY,
    )
    return Sheet(
        NAMES + _WIDE + 2, _HEAD + rows * _ROW + _FOOT, (view,), f"{title}: {worded('programme', region)}", _description(made, region), (*names, legend)
    )


def _name(i: int, one: Dated, region: str) -> str:
    return f"{worded(one.key.replace('_', ' ').replace('sub base', 'sub-base'), region)} {i + 1}"


def _across(made: Programme, moment: datetime.datetime, hours: float) -> float:
    """Days from the first one; within a day by the hours at work."""
    since = (moment - datetime.datetime.combine(moment.date(), datetime.time(OPENING))).total_seconds() / hours
    return (moment.date() - made.first).days + min(max(since, 0.0), 1.0)


def _grid(made: Programme, days: int, rows: int) -> list[Record]:
    """Weekends, a line for each Monday with its date, and the frame."""
    found: list[Record] = []
    for i in range(days):
        day = made.first + datetime.timedelta(days=i)
        if day.weekday() >= 5:
            found.append(Polygon(_box(i, -rows, i + 1, 0), "pale", "none"))
        if day.weekday() == 0 or i == 0:
            found += [Line(((i, -rows), (i, 0.4)), "grid"), *_label(made, day, i, days)]
    return [*found, Line(((0, -rows), (days, -rows), (days, 0), (0, 0), (0, -rows)), "thin")]


def _label(made: Programme, day: datetime.date, i: int, days: int) -> list[Record]:
    """The day at its line; none where it would run into the next Monday's or over the edge."""
    each = _WIDE / days
    room = min(7 - day.weekday(), days - i) * each
    under_the_first = 0 < i < 7 and i * each < _FIRST
    return [Text((i, 0.0), made.day(day).removeprefix("Mon "), "start", 2.6, GREY, (0.5, 1.6))] if i == 0 or room >= 16 and not under_the_first else []


def _box(x0: float, y0: float, x1: float, y1: float) -> tuple[Point, ...]:
    return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))


def _steps(made: Programme, days: int) -> list[Record]:
    found: list[Record] = []
    for i, one in enumerate(made.steps):
        x0, x1 = _across(made, one.start, made.calendar.hours), _across(made, one.end, made.calendar.hours)
        x1 = max(x1, x0 + _LEAST * days / _WIDE)
        found.append(Polygon(_box(x0, -i - 0.8, x1, -i - 0.2), _FILLS[one.critical, one.step.by == WAIT], "thin"))
        if one.step.hold:
            found += _held(one.step.hold, x0, max(x1, _across(made, made.signing(one), made.calendar.hours)), -i - 0.5, days)
    return found


def _held(hold: str, start: float, signed: float, y: float, days: int) -> list[Record]:
    """A point where work stops until signed, on the day that the table of hold points names, and its name beside it."""
    left = signed > 0.85 * days
    name = Text((start if left else signed, y), hold, "end" if left else "start", 2.6, nudge=(-1.2 if left else 1.6, -0.9))
    return [Mark((signed, y), 0.9), name]


def _description(made: Programme, region: str) -> str:
    held = ", ".join(f"{i + 1}" for i, one in enumerate(made.steps) if one.critical)
    last = (made.end.date() - made.first).days + 1
    text = f"Bar chart of {len(made.steps)} steps over {last} days, weekends counted, from {made.day(made.first)} to {made.day(made.end.date())}. Critical are steps {held}: more time on them puts off the end."
    return worded(text, region)
