"""A level sheet worked out by rise and fall, as a table."""

from __future__ import annotations

from itertools import pairwise

from brimwork.nomenclature import QUANTITIES
from brimwork.notebook.pages import Shown, say, table
from brimwork.shown import Markup, escape
from brimwork.topics.survey import MISCLOSURE, Booking, rise_and_fall
from brimwork.units import InputError

_HEAD = ("point", "reading", "rise", "fall", "level")


def level_sheet(bench: str, **readings: str) -> Shown:
    """Levels of points from one set-up: level_sheet("10.000 m", bench_mark="1.245 m", pit="1.870 m", bench_mark_again="1.245 m").

    The first reading stands on the bench mark. A last one named bench_mark_again closes the sheet.
    """
    try:
        level, heights = QUANTITIES["z_bench"].read(bench), [QUANTITIES["s_next"].read(text) for text in readings.values()]
        booked = rise_and_fall(level, heights, back_to_bench=list(readings)[-1:] == ["bench_mark_again"])
    except InputError as error:
        return say(error)
    rows = _rows(list(readings), heights, booked)
    plain = "\n".join("  ".join(row) for row in (_HEAD, *rows))
    return Shown(Markup(f"{table(_HEAD, rows)}<p>{escape(_check(booked))}</p>"), f"{plain}\n{_check(booked)}")


def _rows(names: list[str], heights: list[float], booked: Booking) -> list[tuple[str, ...]]:
    steps = [0.0, *(before - after for before, after in pairwise(heights))]
    return [
        (name.replace("_", " "), f"{height:.3f}", f"{step:.3f}" if step > 0 else "", f"{-step:.3f}" if step < 0 else "", f"{level:.3f}")
        for name, height, step, level in zip(names, heights, steps, booked.levels)
    ]


def _check(booked: Booking) -> str:
    sums = f"Rises {booked.rises:.3f}, falls {booked.falls:.3f}: together {booked.rises - booked.falls:+.3f}, and last less first level {booked.levels[-1] - booked.levels[0]:+.3f}."
    if booked.misclosure is None:
        return f"{sums} All in metres. It does not close back on the bench mark, so a wrong reading would not show."
    verdict = "within" if booked.closes else "more than"
    return f"{sums} All in metres. Back on the bench mark it misses by {abs(booked.misclosure) * 1e3:.0f} mm, {verdict} the {MISCLOSURE * 1e3:.0f} mm that are allowed (judgement)."
