"""The level of a design's reservoir from the start of its pump to some minutes after its stop."""

from __future__ import annotations

from dataclasses import replace

from brimwork.design.follows.chain import Chain
from brimwork.design.follows.running import course
from brimwork.design.follows.start_and_stop import Course
from brimwork.drawing.lettering import BY_REGION, Lettering
from brimwork.drawing.levels_in_time import levels_in_time
from brimwork.drawing.records import GREY, Sheet, Text
from brimwork.units import convert, number, write

EVERY = 15  # moments between two rows of the table


def start_and_stop_chart(chain: Chain) -> Sheet:
    """Level and head over the edge in time, with the overflow and the pump's limit. Raises Unknown, InputError."""
    followed, lettering = course(chain), BY_REGION[chain.design.region]
    limits = {"overflow": followed.circuit.h_over, "pump's limit": followed.circuit.h_min}
    moments = followed.moments
    sheet = levels_in_time(
        [moment.t for moment in moments],
        [followed.level(moment) for moment in moments],
        limits,
        [followed.head(moment) for moment in moments],
        moments[-1].t / 2,
        f"{chain.design.title}: start and stop",
        " ".join(filter(None, (_said(followed, lettering), chain.running_levels_said(lettering.said)))),
        lettering.length,
        "edge",
    )
    unit = lettering.length
    rows = tuple(
        (f"{moment.t:.0f}", number(convert(followed.level(moment), unit), 4), number(convert(followed.head(moment), unit), 3)) for moment in moments[::EVERY]
    )
    title = Text((4.0, 5.0), "Level of the reservoir from the start of the pump to its stop and after, at the required flow", "start", 2.9, GREY)
    return replace(sheet, notes=(*sheet.notes, title), columns=("time, s", f"level, {unit}", f"head over the edge, {unit}"), rows=rows)


def _said(followed: Course, lettering: Lettering) -> str:
    first, lowest, last = followed.moments[0], followed.lowest, followed.moments[-1]
    level = [lettering.said(followed.level(moment)) for moment in (first, lowest, last)]
    begun = (
        f"{number(followed.over_the_rim_at, 2)} s after the start water runs over the edge"
        if followed.over_the_rim_at is not None
        else "no water runs over the edge"
    )
    ends = f"{write(followed.spilled, lettering.volume, None)} leaves by the overflow" if followed.spilled > 1e-6 else "none leaves by the overflow"
    dry = "" if followed.dry_at is None else f" The pump sucks air after {number(followed.dry_at, 2)} s."
    return f"From {level[0]} with the pump off, {begun}, and the level falls to {level[1]}; after the stop it comes back to {level[2]}, and {ends}.{dry}"
