"""Findings of their own: values that were typed and follow from others differently, and sizes that cannot be together; with both numbers and both ways to settle it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from brimwork.design.follows.agreeing import AGREEING, AT_LEAST, AT_MOST, THE_SAME, Agreeing
from brimwork.design.follows.chain import Chain
from brimwork.design.follows.measured import CANNOT, DIFFERS
from brimwork.design.follows.together import TOGETHER
from brimwork.design.judged.findings import Finding
from brimwork.design.typed.asking import keys_in, meant
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.money import currencies
from brimwork.units import write

GROUP = "values that contradict each other"


def contradictions(chain: Chain) -> list[Finding]:
    """Every value that is apart from what it follows from. Never raises for a value of the design."""
    found = [_apart(row, chain) for row in (*AGREEING, *TOGETHER, *CANNOT, *DIFFERS) if chain.design.kind in row.kinds]
    return [one for one in (*found, _currencies(chain)) if one]


def _currencies(chain: Chain) -> Finding | None:
    """Amounts of money typed in two currencies: they are added up as they stand, for no rate is known here."""
    named = currencies(chain.design)
    if len(named) < 2:
        return None
    value = "; ".join(f"{sign} in {keys[0]}{f' and {len(keys) - 1} more' if len(keys) > 1 else ''}" for sign, keys in named.items())
    remedy = "type every amount in one currency; none is changed into another here"
    return Finding(
        f"{next(iter(named.values()))[0]} currency", GROUP, "Contradiction: money in two currencies", "fail", value, "", remedy, "a design has one currency"
    )


def _apart(row: Agreeing, chain: Chain) -> Finding | None:
    if chain.design.given(row.key) is None:
        return None
    typed, other = row.typed(chain), chain.following(row)
    if typed is None or other is None or row.agrees(typed, other):
        return None
    said = _said(row, chain)
    apart = row.near < 0  # they may not touch
    must = {
        THE_SAME: "the two should be one",
        AT_LEAST: "it must be more than that" if apart else "it must be at least that",
        AT_MOST: "it must be less than that" if apart else "it can be at most that",
    }[row.must]
    value = (
        f"{row.said}: {said(typed)}; it must be {'more than' if apart else 'at least'} {said(other)}{_typed(row, chain)}"
        if row.said and not other and row.must == AT_LEAST
        else f"{row.key} gives {said(typed)}{f' ({row.said})' if row.said else ''}; {row.words}: {said(other)}; {must}{_typed(row, chain) if row.said else ''}"
    )
    if row in CANNOT or row in DIFFERS:
        return _measured_apart(row, value)
    measured = row.measured(chain)
    note = (
        f"it was measured on site, and counts before the other: {said(typed)}"
        if measured
        else f"until this is settled the worse of the two counts in checks of safety and of water: {said(row.worse(typed, other))}"
        if row.worse
        else ""
    )
    grade = "pass" if measured else "marginal" if row.must == THE_SAME else "fail"
    remedy = "" if measured else f"change {row.key}, or {row.settle}; or measure it on site, and say of it that it is measured"
    title = row.said or meant(row.key)
    return Finding(
        f"{row.key}{'' if not row.said else ' ' + row.said}", GROUP, f"Contradiction: {title}", grade, value, "", remedy, "geometry of this design", note=note
    )


def _typed(row: Agreeing, chain: Chain) -> str:
    """What stands under the keys of a row whose number follows from them."""
    stands = {key: given.text for key in (row.key, *keys_in(row.settle)) if (given := chain.design.given(key))}
    return f" ({'; '.join(f'{key} is ' + (', '.join(map(str, text)) if isinstance(text, list) else str(text)) for key, text in stands.items())})"


def _measured_apart(row: Agreeing, value: str) -> Finding:
    """What was measured and cannot be, or differs from what the rest of the design says."""
    cannot = row in CANNOT
    note = "so it is not believed: no check passes with it" if cannot else "what was measured counts; find out why the two differ"
    remedy = f"measure again, and look at {row.settle}"
    return Finding(
        f"{row.key} {'cannot be' if cannot else 'differs'} {1 + [one.words for one in (CANNOT if cannot else DIFFERS) if one.key == row.key].index(row.words)}",
        GROUP,
        f"Contradiction: {row.said or meant(row.key)}",
        "marginal",
        value,
        "",
        remedy,
        "physics; how near they must be is judgement",
        note=note,
    )


def _said(row: Agreeing, chain: Chain) -> Callable[[float], str]:
    """How its numbers are told: in the unit of its field, a count of things as a plain number."""
    section, _, name = row.key.partition(".")
    field: Any = SECTIONS[section][name]  # a quantity, or several
    unit, digits = ("", None) if row.counts else (chain.design.region == "US" and field.us or field.unit, 3)
    return lambda value: write(value, unit, digits)
