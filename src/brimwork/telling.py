"""A formula, and a formula worked with numbers, as lines for a terminal and as what `--json` prints."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping

from brimwork import system, typeset
from brimwork.conditions import holds
from brimwork.formula import Formula, Working, origin
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError

_DRAWS = 200


def naming(formula: Formula) -> dict:
    takes = {letter: QUANTITIES[letter].name for letter in formula.inputs}
    return {"formula": formula.name, "gives": {formula.result: formula.quantity.name}, "takes": takes}


def description(formula: Formula) -> list[str]:
    """What a formula gives, takes and rests on, and how to work it."""
    lines = [formula.name, "", f"  {typeset.relation(formula.left, formula.right, typeset.PLAIN)}", ""]
    lines += [f"  gives  {formula.result:<8} {formula.quantity.name}", "", "  takes"]
    lines += [f"    {letter:<8} {QUANTITIES[letter].name}; usually {QUANTITIES[letter].span(*formula.range(letter)[:2])}" for letter in formula.inputs]
    lines += [f"  {origin(formula)}", *([f"  remark: {formula.remark}"] if formula.remark else []), "", "  type, for example", f"    {_example(formula)}"]
    lines += [f"    {_example(formula, us=True)}"] if _example(formula, us=True) != _example(formula) else []
    return lines


def description_as_json(formula: Formula) -> dict:
    equation = typeset.relation(formula.left, formula.right, typeset.PLAIN)
    return {**naming(formula), "equation": equation, "origin": origin(formula), "example": _example(formula)}


def _example(formula: Formula, us: bool = False) -> str:
    typed = (QUANTITIES[letter].typed(value, us) for letter, value in _ordinary(formula).items())
    return " ".join(["brimwork work", quoted(formula.name), *map(quoted, typed)])


def _ordinary(formula: Formula) -> dict[str, float]:
    """Values in the middle of the usual ranges, or elsewhere in them where those in the middle do not go together."""
    draw, share = random.Random(formula.name), dict.fromkeys(formula.inputs, 0.5)
    for _ in range(_DRAWS):
        values = {letter: _on_a_step(*formula.range(letter), share[letter]) for letter in formula.inputs}
        share = {letter: draw.uniform(0.05, 0.95) for letter in formula.inputs}
        if all(holds(condition, values) for condition in formula.where) and _has_result(formula, values):
            return values
    return values


def _on_a_step(low: float, high: float, step: float, share: float) -> float:
    return low + step * round((high - low) * share / step)


def _has_result(formula: Formula, values: dict[str, float]) -> bool:
    try:
        return math.isfinite(formula(**values))
    except InputError:
        return False


def quoted(text: str) -> str:
    """As a shell wants it: in quotes where there is a space in it."""
    return f'"{text}"' if " " in text or "'" in text else text


def _working(worked: Working, stated: Mapping[str, str]) -> list[str]:
    """The lines of a working, in the units in which values are stated: of the US where no metric one is among them."""
    systems = {unit: system.of_names(unit) for unit in stated.values()}
    here = system.FEET if {*systems.values()} - {""} == {system.FEET} else system.METRES
    with system.working_in(here):
        return typeset.working(worked, typeset.PLAIN, stated={letter: unit for letter, unit in stated.items() if systems[unit] in ("", here)})


def worked_as_text(worked: Working, stated: Mapping[str, str]) -> list[str]:
    """Worked with numbers; `stated` are the units in which they were typed, by letter."""
    formula = worked.formula
    lines = [formula.name, "", *(f"  {line}" for line in _working(worked, stated)), ""]
    lines.append(f"  {formula.quantity.short_name}: {formula.quantity.both(worked.result, 4)}")
    lines += ["", "  with"]
    lines += [f"    {name:<8} {QUANTITIES[name].both(value, None):<36} {QUANTITIES[name].name}" for name, value in worked.values.items()]
    lines += [f"  note: {note}" for note in _notes(worked)]
    lines += [f"  remark: {formula.remark}"] if formula.remark else []
    lines += ["", f"  {origin(formula)}"]
    lines += [f"  tested range: {tested}" for tested in formula.tested]
    lines += [f"  checked against: {p.source}: {p.value} for {p.given}, here {p.check(formula).percent}" for p in formula.published]
    lines += [f"  no printed value: {formula.unpublished}"] if formula.unpublished else []
    lines += [f"  worked by hand {worked_out.told}" for worked_out in formula.by_hand]
    return lines


def _notes(worked: Working) -> list[str]:
    """What must be said: outside the usual range of a letter, outside a tested range, outside the conditions."""
    formula = worked.formula
    unusual = (QUANTITIES[letter].unusual(worked.values[letter], *formula.range(letter)[:2]) for letter in formula.inputs)
    return [*filter(None, unusual), *worked.notes]


def worked_as_json(worked: Working, stated: Mapping[str, str]) -> dict:
    formula = worked.formula
    return {
        "formula": formula.name,
        "equation": typeset.relation(formula.left, formula.right, typeset.PLAIN),
        "inputs": {name: _quantity(name, value) for name, value in worked.values.items()},
        "result": {"letter": formula.result, **_quantity(formula.result, worked.result)},
        "working": _working(worked, stated),
        "notes": _notes(worked),
        "origin": origin(formula),
        "tested": [str(tested) for tested in formula.tested],
        "published": [
            {
                "source": str(p.source),
                "grade": p.source.source.grade,
                "given": p.given,
                "value": p.value,
                "tolerance": p.tolerance,
                "difference": p.check(formula).difference,
            }
            for p in formula.published
        ],
        "unpublished": formula.unpublished,
        "by_hand": [{"given": one.given, "line": one.line, "value": one.value} for one in formula.by_hand],
    }


def _quantity(letter: str, value: float) -> dict:
    row = QUANTITIES[letter]
    return {"name": row.name, "value": value, "unit": row.si, "metric": row.metric_text(value, 4), "us": row.us_text(value, 4)}
