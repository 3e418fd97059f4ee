"""A level sheet worked out by rise and fall, as a table."""

from __future__ import annotations

from itertools import pairwise

from brimwork import system
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook.given_values import of_here
from brimwork.notebook.pages import Shown, say, table
from brimwork.shown import Markup, escape
from brimwork.topics.survey import MISCLOSURE, Booking, rise_and_fall
from brimwork.units import InputError, convert

_HEAD = ("point", "reading", "rise", "fall", "level")


def level_sheet(bench: str, **readings: str) -> Shown:
    """Levels of points from one set-up: level_sheet("10.000 m", bench_mark="1.245 m", pit="1.870 m", bench_mark_again="1.245 m").

    Each in one system, or in both: "1.245 m or 4.08 ft". The first reading stands on the bench mark. A last one named bench_mark_again closes the sheet.
    """
    try:
        level, heights = QUANTITIES["z_bench"].read(of_here(bench)), [QUANTITIES["s_next"].read(of_here(text)) for text in readings.values()]
        booked = rise_and_fall(level, heights, back_to_bench=list(readings)[-1:] == ["bench_mark_again"])
    except InputError as error:
        return say(error)
    rows = _rows(list(readings), heights, booked)
    plain = "\n".join("  ".join(row) for row in (_HEAD, *rows))
    return Shown(Markup(f"{table(_HEAD, rows)}<p>{escape(_check(booked))}</p>"), f"{plain}\n{_check(booked)}")


def _rows(names: list[str], heights: list[float], booked: Booking) -> list[tuple[str, ...]]:
    steps = [0.0, *(before - after for before, after in pairwise(heights))]
    return [
        (name.replace("_", " "), _long(height), _long(step) if step > 0 else "", _long(-step) if step < 0 else "", _long(level))
        for name, height, step, level in zip(names, heights, steps, booked.levels)
    ]


def _long(metres: float, sign: str = "") -> str:
    """A level in metres, or in feet, to the last place that a staff shows."""
    return f"{convert(metres, 'ft' if system.current() == system.FEET else 'm'):{sign}.3f}"


def _check(booked: Booking) -> str:
    apart, moved = booked.rises - booked.falls, booked.levels[-1] - booked.levels[0]
    sums = f"Rises {_long(booked.rises)}, falls {_long(booked.falls)}: together {_long(apart, '+')}, and last less first level {_long(moved, '+')}."
    sums += f" All in {'feet' if system.current() == system.FEET else 'metres'}."
    if booked.misclosure is None:
        return f"{sums} It does not close back on the bench mark, so a wrong reading would not show."
    verdict = "within" if booked.closes else "more than"
    return f"{sums} Back on the bench mark it misses by {system.length(abs(booked.misclosure))}, {verdict} the {system.length(MISCLOSURE)} that are allowed (our own choice)."
