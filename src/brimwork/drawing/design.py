"""The drawings of a design, or why one cannot be drawn."""

from __future__ import annotations

from functools import partial

from brimwork.design.follows.chain import Chain
from brimwork.design.typed.asking import Refused, tried, without_keys
from brimwork.design.typed.wording import worded
from brimwork.drawing.duty import duty_chart
from brimwork.drawing.plan import plan
from brimwork.drawing.records import Sheet
from brimwork.drawing.running import start_and_stop_chart
from brimwork.drawing.section import section
from brimwork.drawing.water import reservoir_bars, thirty_days

DRAWN = {
    "plan": plan,
    "section": section,
    "duty chart": duty_chart,
    "water in the reservoir": reservoir_bars,
    "level over thirty dry days": thirty_days,
    "level from start to stop": start_and_stop_chart,
}


def drawings(chain: Chain) -> list[tuple[str, Sheet | str]]:
    """Every drawing by its name; for one that cannot be drawn, why."""
    made: list[tuple[str, Sheet | str]] = []
    for name, draw in DRAWN.items():
        if draw is start_and_stop_chart and not chain.edges:
            continue  # drilled stones hold no water over an edge
        got = tried(partial(draw, chain))
        made.append((name, worded(without_keys(f"it {got.why}" if got.needs else got.why), chain.design.region) if isinstance(got, Refused) else got))
    return made
