"""Which questions of earlier topics come up again, with which numbers: another three on another day, the further back the less often."""

from __future__ import annotations

import zlib
from datetime import UTC, datetime

from brimwork.exercise import bank
from brimwork.exercise.written import Numeric
from brimwork.notebook import contents

COUNT = 3
STRIDE = 100  # seeds of one round, so that "new numbers" do not run into the next
_BAND = 10_000  # seeds of one workbook; other sections use those below


def band(name: str) -> int:
    """The first seed of what is recalled under a name; others lie far from it."""
    return _BAND * (1 + zlib.crc32(name.encode()) % 100_000)


def round_now(held: list[dict], first: int, count: int) -> int:
    """Which round it is: the last one that was begun, or, if it was answered on an earlier day, the next."""
    mine = [entry for entry in held if first <= entry["seed"] < first + _BAND]
    if not mine:
        return 0
    last = max((entry["seed"] - first) // STRIDE for entry in mine)
    of_last = [entry for entry in mine if (entry["seed"] - first) // STRIDE == last]
    done = len({entry["exercise"] for entry in of_last}) >= count
    today = datetime.now(UTC).date().isoformat()
    return (last + 1) % (_BAND // STRIDE) if done and all(entry["at"][:10] < today for entry in of_last) else last


def recalled_in(workbook: str, turn: int) -> tuple[str, ...]:
    """The questions of a round: one of the topic before, one of the topic before that, one of longer ago, each round the next in turn.

    Where fewer topics stand before, what is missing comes from them too.
    """
    before = [pool for pool in map(fresh, contents.earlier(workbook)) if pool]
    groups = [*before[:2], tuple(one for pool in before[2:] for one in pool)] if len(before) > 2 else before
    taken: list[str] = []
    for place in range(COUNT):
        group = groups[place % len(groups)]
        at = turn + (turn + place // len(groups)) // len(group) + place // len(groups)
        taken.append(next(name for name in (*group[at % len(group) :], *group) if name not in taken))
    return tuple(taken)


def fresh(workbook: str) -> tuple[str, ...]:
    """What a workbook asks about that can be asked again with other numbers."""
    return tuple(name for name in contents.asked_after_teaching(workbook) if _varies(name))


def _varies(name: str) -> bool:
    """Whether a question has other numbers on another day: one on a formula does."""
    declared = bank.questions().get(name)
    return declared is None or isinstance(declared, Numeric) and declared.varies
