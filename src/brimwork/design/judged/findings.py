"""Findings: what the checks of a design say, sorted, counted and told in the words of the region."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

from brimwork.design.typed.asking import meant, without_keys
from brimwork.design.typed.limits import Limits
from brimwork.design.typed.wording import spoken

FINDING_GRADES = ("fail", "marginal", "not shown", "pass", "does not apply")
_OPEN = {"not shown": "not shown", "does not apply": "does not apply"}
_OF_LIMITS = {"fail": "outside the limit", "marginal": "near the limit", "pass": "within the limit", **_OPEN}
_OF_ANSWERS = {"fail": "not met", "marginal": "partly met", "pass": "met", **_OPEN}
_OF_VALUES = {"fail": "to settle", "marginal": "to settle", "pass": "settled", **_OPEN}
_COUNTED = {"fail": "outside limits or not met", "marginal": "near a limit or partly met", "pass": "within limits or met", **_OPEN}
# What a check that is named by what should be is called where it is not so.
WRONG = {
    "C03": "Rating plate that cannot be true", "C08": "Too little water for a film that clings", "C09": "Sheet breaks up", "C79": "Trough or header too fast for an even sheet",
    "C80": "Top-up falls behind the loss", "C61": "Water falls past the tread", "C13": "Pump not covered at the lowest level", "C17": "Splash leaves the apron",
    "C18": "Edge of the liner too low over the overflow", "C18g": "Edge of the liner too low over the soil", "C66": "Overflow pipe too small for the storm",
    "C57": "Levels out of order", "C73": "Lower end of the cascade beside the box", "C74": "Slab thin for its reach past the foot", "C21": "Access panel in the load path",
    "C33": "Too near to footings", "C34": "Too near to roots", "C38": "Box too small for blocks and lining", "C37": "Liner wider than the roll",
    "C39": "Liner pierced near the overflow", "C40": "Stone falls through the mesh", "C46": "Circuit overloaded", "C46e": "Earth leakage trips the protection",
    "C78": "Supply that this country does not have", "C47": "Cord too short", "C15": "Rain has no way out", "C69": "Drain hole of the vessel not sealed",
    "C36": "Box not stiff while backfilling", "C59": "Surface water runs in", "C70": "Liner not protected on both faces", "C45": "Duct does not take the plug",
    "C71": "Pump not marked for permanent outdoor submersion", "C50": "Pump does not come out without moving the vessel", "C53": "Mains top-up can siphon back",
    "C35": "Services not located", "C68": "Pack not complete",
}  # fmt: skip
# What a number without a unit counts, for those who see no formula beside it.
COUNTS = {
    "C01": "flow that comes over flow required", "C01m": "head that the pump gives over head needed", "C02": "lift over the shut-off head",
    "C03": "best power in the water over power taken in", "C05": "head lost over the whole head", "C07": "rim out of level over the head on it",
    "C09": "flow over the least that keeps the sheet whole", "C79": "speed head of the water over the head on the lip",
    "C82": "opening of the strainer over what the pump passes", "C80": "what the valve brings over the loss in strong sun",
    "C14": "room over the water that runs back", "C17": "apron over the reach of the splash", "C66": "what the pipe carries over what the storm brings",
    "C20": "pressure over what the blocks may carry", "C22": "offset of the load over the most at which all of the base presses",
    "C24": "pressure over what the soil may bear", "C25": "moment that holds over moment that tips", "C25e": "moment that holds over moment that tips",
    "C26": "moment that holds over moment that tips", "C27": "weight that holds it down over uplift", "C28": "weight that holds it down over uplift",
    "C74": "reach past the foot over thickness of the slab", "C33": "distance over the distance to keep", "C34": "distance to the stem over the radius to protect",
    "C40": "opening of the mesh over the smallest stone", "C75": "rating of the breaker over what the cable carries",
    "C76": "starting current over rating of the breaker", "C48": "weight over the limit for one lift", "C64": "decibels over the background",
    "C61": "tread over how far the water is thrown", "C56": "cost over budget",
}  # fmt: skip
NEXT = 3  # values that are named as the next ones to find out


@dataclass(frozen=True)
class Finding:
    """One check of one design: grade, value and limit as text, what to change, basis, the names of the chain's results behind it.

    Where a number was graded, `number` and `limits` have it in SI, and `unit` is the unit in which it is told.
    """

    id: str
    group: str
    title: str
    grade: str
    value: str
    limit: str
    remedy: str
    basis: str
    results: tuple[str, ...] = ()
    note: str = ""
    needs: tuple[str, ...] = ()  # keys of the design that are missing, where the check is not shown
    number: float | None = None
    unit: str = ""
    limits: Limits | None = None


def wanted(found: list[Finding]) -> list[tuple[str, int]]:
    """The keys of the design that most checks wait for, and how many; what to find out next."""
    return Counter(key for finding in found for key in finding.needs).most_common()


def tally(found: list[Finding]) -> str:
    """How many findings have each grade: "3 outside limits or not met, 8 do not apply"."""
    counts = Counter(finding.grade for finding in found)
    return ", ".join(f"{counts[grade]} {_counted(grade, counts[grade])}" for grade in FINDING_GRADES if counts[grade])


def grade_said(finding: Finding) -> str:
    """The grade in words: of a number about its limit, never as if it conformed to a standard; of an answer and of values that contradict, as such."""
    return (_OF_VALUES if finding.group.startswith("values") else _OF_LIMITS if finding.limit else _OF_ANSWERS)[finding.grade]


def called(finding: Finding) -> str:
    """Its title; of one that fails what is wrong, so that nobody reads good news."""
    return WRONG.get(finding.id, finding.title) if finding.grade == "fail" else finding.title


def _counted(grade: str, count: int) -> str:
    return "do not apply" if grade == "does not apply" and count != 1 else _COUNTED[grade]


def next_words(found: list[Finding]) -> str:
    """What to find out next, in a sentence: the values that most checks wait for. Nothing where no check waits."""
    first = [f"{meant(key)} ({count} {'check waits' if count == 1 else 'checks wait'})" for key, count in wanted(found)[:NEXT]]
    return f"To find out next: {'; '.join(first)}." if first else ""


def graded(found: list[Finding], region: str) -> list[Finding]:
    """Findings, which are written in the words of the UK, as they are read in the region."""
    said = ("title", "value", "limit", "remedy", "basis", "note")
    return [_said(finding, {name: spoken(getattr(finding, name), region) for name in said}) for finding in found] if region == "US" else found


def keyless(finding: Finding, name: Callable[[str], str] | None = None) -> Finding:
    """A finding for those who see boxes and not the file: no key in it."""
    return _said(finding, {part: without_keys(getattr(finding, part), name) for part in ("value", "limit", "remedy", "note")})


def _said(finding: Finding, words: dict[str, Any]) -> Finding:
    return replace(finding, **words)
