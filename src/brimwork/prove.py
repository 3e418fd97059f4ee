"""Every formula verified again: its derivation step by step and its published values; the table that `brimwork prove` prints."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from brimwork import typeset
from brimwork.by_hand import ByHandCheck
from brimwork.derivation import NotProved, Proven, derived, status_of_step
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


_TAKEN = {"law": "law, not proved here", "take": "taken: a modelling choice", "formula": "proved on its own: another formula"}


@dataclass(frozen=True)
class ProvedStep:
    """One step of a derivation in plain text: why, what, and how it was verified."""

    reason: str
    relation: str
    how: str

    def __str__(self) -> str:
        return f"{self.reason}: {self.relation} [{self.how}]"


@dataclass(frozen=True)
class Verdict:
    """One formula: how it stands (a key of WORDS), its published checks, its numbers worked by hand, and what went wrong."""

    topic: str
    formula: Formula
    status: str
    checks: tuple[PublishedCheck, ...]
    by_hand: tuple[ByHandCheck, ...]
    faults: tuple[str, ...]


def verdicts() -> Iterator[Verdict]:
    """One formula after the other, in the order of declaration."""
    for topic, formulas in topics().items():
        for formula in formulas:
            yield verdict(topic, formula)


def verdict(topic: str, formula: Formula) -> Verdict:
    faults, checks, by_hand = [], [], []
    try:
        stands = status_of_step(formula)
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
    for worked in formula.by_hand:
        by_hand.append(ours := worked.check(formula))
        if not ours.agrees:
            faults.append(f"worked by hand {worked}, here {ours.got_text}")
    return Verdict(topic, formula, stands, tuple(checks), tuple(by_hand), tuple(faults))


def steps_of(formula: Formula) -> tuple[ProvedStep, ...]:
    """The verified derivation of a formula, step by step; empty for one that has none. Raises NotProved.

    >>> import brimwork
    >>> for step in brimwork.steps_of(brimwork.find("flow over a level lip")):
    ...     print(step.relation, "|", step.how)
    v = √(2·g·z) | law, not proved here
    Q = C_d·b·∫[0..H] v dz | taken: a modelling choice
    Q = C_d·b·√(2·g)·∫[0..H] √z dz | follows: by algebra
    Q = C_d·b·√(2·g)·(2/3·H·√H) | follows: by algebra
    Q = 2/3·C_d·b·√(2·g)·H^(3/2) | follows: by algebra
    """
    return tuple(ProvedStep(step.reason, typeset.relation(step.left, step.right, typeset.PLAIN), _how(step)) for step in derived(formula))


def _how(step: Proven) -> str:
    return _TAKEN.get(step.kind) or f"follows: {WORDS[step.how].split(', ')[1]}"


def lines(verdict: Verdict) -> list[str]:
    """The verdict as lines of the table."""
    formula = verdict.formula
    first = f"  {formula.name:<48} {WORDS[verdict.status]:<29}"
    rows = [f"{check.percent} against {check.published.source}" for check in verdict.checks] or [f"no printed value: {formula.unpublished}"]
    rows += [f"worked by hand: {check.by_hand}" for check in verdict.by_hand]
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
        f"{sum(bool(verdict.by_hand) for verdict in found)} formulas carry numbers worked by hand",
    ]


def verdict_as_json(verdict: Verdict) -> dict:
    """The verdict as `brimwork prove --json` prints it; values in SI."""
    formula = verdict.formula
    return {
        "formula": formula.name,
        "topic": verdict.topic,
        "status": verdict.status,
        "published": [
            {
                "source": str(check.published.source),
                "grade": check.published.source.source.grade,
                "given": check.published.given,
                "printed": check.printed,
                "here": check.got,
                "unit": formula.quantity.si,
                "difference": check.difference,
                "tolerance": check.published.tolerance,
                "agrees": check.agrees,
            }
            for check in verdict.checks
        ],
        "unpublished": formula.unpublished,
        "by_hand": [
            {"given": check.by_hand.given, "line": check.by_hand.line, "value": check.by_hand.value, "here": check.got, "agrees": check.agrees}
            for check in verdict.by_hand
        ],
        "faults": list(verdict.faults),
    }


def summary_as_json(found: list[Verdict]) -> dict:
    """How many formulas stand in which way, and how many printed values of each grade of evidence agree."""
    checks = [check for verdict in found for check in verdict.checks]
    return {
        "formulas": len(found),
        "status": {way: sum(verdict.status == way for verdict in found) for way in WORDS},
        "published": len(checks),
        "agreeing": sum(check.agrees for check in checks),
        "grades": dict(Counter(check.published.source.source.grade for check in checks)),
    }
