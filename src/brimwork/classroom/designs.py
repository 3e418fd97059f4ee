"""Marks a learner's design file against a brief: values that were required, checks that must pass, limits that must not have been changed."""

from __future__ import annotations

import tomllib
from functools import cache
from pathlib import Path
from typing import Any

from brimwork import files
from brimwork.design.follows.features import chain_of
from brimwork.design.judged import checks
from brimwork.design.typed.asking import meant
from brimwork.design.typed.design import Design, blank_design
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.file import parse_design
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.renamed import RENAMED
from brimwork.spellings import nearest
from brimwork.units import InputError, read

BRIEF_EXAMPLE = """\
# A brief: what a design handed in must hold. All values are invented.
format = 1
kind = "overflowing vessel"
points = 10

[required]                            # values, as a design file has them; near = how far off they may be
"vessel.rim_diameter" = { is = "780 mm", near = "5 mm" }
"flow.for_each_metre" = { at_least = "0.15 L/s per m", at_most = "0.3 L/s per m" }

[must_pass]                           # checks by number; "not shown" does not pass
checks = ["C04", "C12"]

[unchanged]                           # limits of the design file that must stand as the kit has them
limits = "all"

[rubric]                              # rows that a person fills in
rows = ["the position is justified in writing", "drawings are complete and legible"]
"""
_LARGEST = 1_000_000
_KEYS: dict[str, type | tuple[type, ...]] = {
    "format": int,
    "kind": str,
    "points": (int, float),
    "required": dict,
    "must_pass": dict,
    "unchanged": dict,
    "rubric": dict,
}


def brief(path: Path) -> dict:
    """A brief as read from its file. Raises InputError, with what to type."""
    try:
        with open(path, "rb") as file:
            raw = file.read(_LARGEST + 1)
        held = tomllib.loads(raw.decode("utf-8"))
    except OSError as error:
        raise InputError(f"the brief {path} cannot be read ({error.strerror})") from None
    except (ValueError, RecursionError) as error:
        raise InputError(f"the brief {path}: {files.not_toml(error)}") from None
    for key, value in held.items():
        if key not in _KEYS or not isinstance(value, _KEYS[key]) or isinstance(value, bool):
            raise InputError(f"'{key[:40]}' does not stand so in a brief: it has {', '.join(_KEYS)}")
    if held.get("format") != 1:
        raise InputError(f"{path} needs the line format = 1")
    held["required"] = {RENAMED.get(key, key): wanted for key, wanted in held.get("required", {}).items()}  # a brief of an earlier edition
    for key, wanted in held["required"].items():
        if (
            not isinstance(wanted, dict)
            or not wanted
            or not {*wanted} <= {"is", "near", "at_least", "at_most"}
            or not all(isinstance(text, str) for text in wanted.values())
        ):
            raise InputError(f'required "{key[:60]}" is written {{ is = "780 mm", near = "5 mm" }} or {{ at_least = "...", at_most = "..." }}')
        _wanted(key, wanted)
    known = _check_numbers()
    for number in held.get("must_pass", {}).get("checks", []):
        if number not in known:
            raise InputError(f"there is no check '{str(number)[:20]}'.{nearest(str(number), sorted(known))} Write its number as in a design file, such as C04")
    rows = held.get("rubric", {}).get("rows", [])
    if not isinstance(rows, list) or not all(isinstance(row, str) and len(row) <= 200 for row in rows):
        raise InputError('the rows of [rubric] are texts of at most 200 characters: rows = ["...", "..."]')
    return held


@cache
def _check_numbers() -> frozenset[str]:
    """The numbers of all checks of all kinds of feature."""
    return frozenset(finding.id for kind in KINDS for finding in checks.findings(chain_of(blank_design(kind, "none"))))


def _field(key: str):
    section, _, name = key.partition(".")
    if name not in SECTIONS.get(section, {}):
        keys = [f"{section}.{name}" for section, fields in SECTIONS.items() for name in fields]
        raise InputError(f"a design has no value '{key[:60]}'.{nearest(key, keys)} Write section and key, such as vessel.rim_diameter")
    return SECTIONS[section][name]


def _wanted(key: str, limits: dict[str, str]) -> dict[str, Any]:
    """What is wanted of a value, in SI. Raises InputError."""
    field = _field(key)
    return {name: read(text, getattr(field, "unit", ""), key) if name == "near" else field.read(text, key) for name, text in limits.items()}


def marked(raw: bytes, wanted: dict) -> dict:
    """What a design file comes to against a brief: rows, points, and rows for a person; or the reason why it could not be marked."""
    try:
        design = parse_design(raw.decode("utf-8-sig"))
    except (UnicodeDecodeError, InputError) as error:
        return {"reason": f"the design file cannot be read: {str(error)[:300]}"}
    rows = [*_kind(design, wanted), *_values(design, wanted), *_passing(design, wanted), *_limits(design, wanted)]
    of, right = float(wanted.get("points", len(rows))), sum(row["mark"] == "yes" for row in rows)
    return {"rows": rows, "points": round(of * right / len(rows), 2) if rows else 0.0, "of": of, "rubric": wanted.get("rubric", {}).get("rows", [])}


def _row(what: str, asked: str, found: str, good: bool) -> dict:
    return {"what": what, "wanted": asked, "found": found[:120], "mark": "yes" if good else "no"}


def _kind(design: Design, wanted: dict) -> list[dict]:
    kind = wanted.get("kind", "")
    return [_row("kind of feature", kind, design.kind, design.kind == kind)] if kind else []


def _values(design: Design, wanted: dict) -> list[dict]:
    rows = []
    for key, limits in wanted.get("required", {}).items():
        given = design.values.get(key)
        asked = ", ".join(f"{name.replace('_', ' ')} {text}" for name, text in limits.items())
        if given is None:
            rows.append(_row(meant(key), asked, "not given", False))
            continue
        rows.append(_row(meant(key), asked, str(given.text), _within(key, given.value, limits)))
    return rows


def _within(key: str, value: Any, limits: dict[str, str]) -> bool:
    wanted = _wanted(key, limits)
    if not isinstance(value, int | float):
        return value == wanted.get("is", value)
    slack = 1e-9 * max(abs(value), 1e-9)
    near = abs(wanted.get("near", 0.0)) + slack
    return abs(value - wanted.get("is", value)) <= near and value >= wanted.get("at_least", value) - slack and value <= wanted.get("at_most", value) + slack


def _passing(design: Design, wanted: dict) -> list[dict]:
    numbers = [str(number) for number in wanted.get("must_pass", {}).get("checks", [])]
    if not numbers:
        return []
    try:
        found = {finding.id: finding for finding in reversed(checks.findings(chain_of(design)))}  # of two kinds' rows the one that applies
    except (InputError, Unknown) as error:
        return [_row("checks", "pass", f"cannot be worked out: {error}", False)]
    rows = []
    for number in numbers:
        finding = found.get(number)
        grade = finding.grade if finding else "does not apply"
        rows.append(_row(f"{number}: {finding.title if finding else 'not for this kind of feature'}", "pass", grade, grade == "pass"))
    return rows


def _limits(design: Design, wanted: dict) -> list[dict]:
    """Limits that the design file sets for itself, where the brief wants those of the kit."""
    limits = wanted.get("unchanged", {}).get("limits")
    if not limits:
        return []
    own = [key.partition(".")[2] for key in design.values if key.startswith("limits.")]
    touched = own if limits == "all" else [name for name in own if name in limits]
    return [_row("limits as the kit has them", "unchanged", f"changed: {', '.join(touched)}" if touched else "unchanged", not touched)]
