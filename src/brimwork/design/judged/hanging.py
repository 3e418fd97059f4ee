"""What a finding hangs on: the values that its check reads, each tried a little either way, and how far it alone would have to go."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from brimwork.design.follows.features import CHAINS, chain_of
from brimwork.design.judged.checks import CHECKS
from brimwork.design.judged.findings import Finding
from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.known import Given
from brimwork.design.typed.noting import Noting
from brimwork.design.typed.plausible import implausible
from brimwork.design.typed.reading import Field, Several

LITTLE, LOOKED_AT, TRIES = 0.02, 4.0, 12  # share by which a value is tried; times it that are looked at; halvings of the search
# What nobody chooses to mend a design: facts of site and maker, factors of safety and coefficients. They are found out, not moved.
_FOUND_OUT = ("site", "measured", "assumptions", "climate")
_NOT_CHOSEN = (
    "flow.water_temperature", "flow.weir_coefficient", "reservoir.void_fraction", "reservoir.creep_factor", "reservoir.safety_factor", "catch.splash_factor",
    "stones.base_share", "supply.voltage", "supply.power_factor", "costing.tax", "ground.bulking", "catch.hold_up", "slab.density",
)  # fmt: skip
_CHOSEN = ("site.budget",)


@dataclass(frozen=True)
class Hangs:
    """A value that moves the finding: its key, whether it must go up, what it is now and where it alone would do (SI; None where it alone never does)."""

    key: str
    up: bool
    now: float
    enough: float | None
    weight: float  # how much the number changes for each share of the value: for the order of a list
    passing: bool = False  # it is within its limits already


def _row(finding_id: str, kind: str) -> Any:
    return next((check for check in CHECKS if check.id == finding_id and (not check.kinds or kind in check.kinds)), None)


def _asked(design: Design, row: Any) -> list[str]:
    noting: Any = Noting(design)
    row.grade(CHAINS[design.kind](noting))
    return [key for key in noting.asked if _is_chosen(key) and isinstance(_field(key), Field | Several) and design.given(key) is not None]


def _is_chosen(key: str) -> bool:
    return key in _CHOSEN or not (key in _NOT_CHOSEN or key.partition(".")[0] in _FOUND_OUT)


def _field(key: str) -> Any:
    section, _, name = key.partition(".")
    return SECTIONS[section][name]


def _is_whole(key: str) -> bool:
    return getattr(_field(key), "whole", False)


def _with(design: Design, key: str, value: float) -> Design:
    given = design.given(key)
    there: Any = value
    if isinstance(design[key], tuple):  # several together, each in the same share
        share = value / _number(design, key)
        there = tuple(one * share for one in design[key])
    return replace(design, values={**design.values, key: Given(there, given.text if given else "", given.basis if given else "yours")})


def _number(design: Design, key: str) -> float:
    """The value, or the largest of several."""
    value = design[key]
    return max(value) if isinstance(value, tuple) else value


def hangs_on(design: Design, finding_id: str, most: int = 6) -> Iterator[Hangs]:
    """The values that a finding hangs on, those that move it most first. One that reads no number of the design has none, nor has one that waits for a value."""
    row = _row(finding_id, design.kind)
    now = row.grade(chain_of(design)) if row else None
    if now is None or now.needs:
        return
    found = [one for key in _asked(design, row) if (one := _tried(design, row, now, key))]
    for one in sorted(found, key=lambda one: (-one.weight, one.key))[:most]:
        yield replace(one, enough=_enough(design, row, now, one), passing=now.grade == "pass")


def _tried(design: Design, row: Any, now: Finding, key: str) -> Hangs | None:
    """Which way a value must go for the finding to be better, or None where it moves nothing."""
    value = _number(design, key)
    little = abs(value) * LITTLE or 0.01
    step = 1.0 if _is_whole(key) else little
    up, down = (_distance(now) - _distance(_grade(design, row, key, other)) for other in (value + step, value - step))
    gain = max(up, down) * little / step
    return Hangs(key, up >= down, value, None, gain) if round(gain, 9) > 0 else None


def _grade(design: Design, row: Any, key: str, value: float) -> Finding | None:
    whole = _is_whole(key)
    if value < 0 and not _field(key).signed or whole and value < 1:
        return None
    return row.grade(chain_of(_with(design, key, round(value) if whole else value)))


def _distance(found: Finding | None) -> float:
    """How far a finding is from passing: its grade first, then the way of its number to its limits as a share of them."""
    if found is None:
        return math.inf
    rank = {"fail": 2.0, "marginal": 1.0, "pass": 0.0}.get(found.grade, 3.0)
    if found.number is None or found.limits is None or not math.isfinite(found.number):
        return 10.0 * rank
    low, high = found.limits.good
    size = max(abs(limit) for limit in (low, high, found.number) if math.isfinite(limit)) or 1.0
    return max(low - found.number, found.number - high, -1.0 * size) / size


def _enough(design: Design, row: Any, now: Finding, one: Hangs) -> float | None:
    """The nearest value at which the finding would pass with nothing else changed; None where none within reach does."""
    if now.grade == "pass":
        return None
    away = one.up is (one.now == abs(one.now))  # from nought
    far = (one.now * LOOKED_AT if away else one.now / LOOKED_AT) or (1.0 if one.up else -1.0)
    bad, good = one.now, None
    for share in (0.1, 0.3, 0.6, 1.0):  # the first that passes, lest one goes through what passes to what fails again
        value = one.now + (far - one.now) * share
        if one.key in implausible(_with(design, one.key, value)):
            break
        if (found := _grade(design, row, one.key, value)) and found.grade == "pass":
            good = value
            break
        bad = value
    if good is None:
        return None
    for _ in range(TRIES):
        middle = (bad + good) / 2
        found = _grade(design, row, one.key, middle)
        bad, good = (bad, middle) if found and found.grade == "pass" else (middle, good)
    return float(math.ceil(good) if one.up else math.floor(good)) if _is_whole(one.key) else good
