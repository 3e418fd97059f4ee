"""Every formula verified again: its derivation step by step and its published values; the table that `brimwork prove` prints."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from brimwork.derivation import NotProved, status
from brimwork.formula import Formula, PublishedCheck
from brimwork.topics import topics
from brimwork.units import InputError

WORDS = {
    "algebra": "derived, by algebra",
    "numbers": "derived, checked numerically",
    "fitted": "fitted to measurements",
    "defined": "a definition",
    "failed": "NOT PROVED",
}


@dataclass(frozen=True)
class Verdict:
    """One formula: how it stands (a key of WORDS), its published checks, and what went wrong."""

    topic: str
    formula: Formula
    status: str
    checks: tuple[PublishedCheck, ...]
    faults: tuple[str, ...]


def verdicts() -> Iterator[Verdict]:
    """One formula after the other, in the order of declaration."""
    for topic, formulas in topics().items():
        for formula in formulas:
            yield verdict(topic, formula)


def verdict(topic: str, formula: Formula) -> Verdict:
    faults, checks = [], []
    try:
        stands = status(formula)
    except NotProved as error:
        stands, faults = "failed", [str(error)]
    for published in formula.published:
        try:
            check = published.check(formula)
        except InputError as error:
            faults.append(f"{published.source}: {error}")
            continue
        checks.append(check)
        if not check.agrees:
            faults.append(
                f"{published.source}: printed {published.value}, here {check.got_text}, {check.percent} against a tolerance of {published.tolerance:.2g}"
            )
    return Verdict(topic, formula, stands, tuple(checks), tuple(faults))


def lines(verdict: Verdict) -> list[str]:
    """The verdict as lines of the table."""
    formula = verdict.formula
    first = f"  {formula.name:<48} {WORDS[verdict.status]:<29}"
    rows = [f"{check.percent} against {check.published.source}" for check in verdict.checks] or [f"no printed value: {formula.unpublished}"]
    return [first + rows[0], *(" " * len(first) + row for row in rows[1:]), *(f"    ! {fault}" for fault in verdict.faults)]


def summary(found: list[Verdict]) -> list[str]:
    """Counts: formulas, how they stand, published values by grade of evidence."""
    ways = Counter(verdict.status for verdict in found)
    grades = Counter(check.published.source.source.grade for verdict in found for check in verdict.checks)
    agreed = sum(check.agrees for verdict in found for check in verdict.checks)
    return [
        f"{len(found)} formulas: " + ", ".join(f"{ways[way]} {words}" for way, words in WORDS.items() if ways[way]),
        f"{grades.total()} published values, {agreed} agree: " + ", ".join(f"{count} {grade}" for grade, count in grades.most_common()),
        f"{sum(not verdict.checks for verdict in found)} formulas say why no printed value stands beside them",
    ]
