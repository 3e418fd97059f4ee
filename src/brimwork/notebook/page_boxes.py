"""The boxes of the page of a design, as plain data: the steps of the form, its first questions group by group, and each box with what is said beside it."""

from __future__ import annotations

from typing import Any

from brimwork.design.done.quantities import quantities
from brimwork.design.typed.cautions import cautions_at
from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import BASES, REGIONS, SECTIONS
from brimwork.design.typed.reading import OneOf
from brimwork.design.typed.starting import ALSO_SHORT, ASKED_FIRST, usual_of
from brimwork.design.typed.uneven import uneven
from brimwork.design.typed.wording import spoken
from brimwork.notebook.boxes import UNKNOWN, as_typed, empty_words
from brimwork.notebook.form import FORM_STEPS, HEADS, idle, is_seldom, keys_of, name_of
from brimwork.notebook.opened import OpenDesign


def form_part(opened: OpenDesign, full: bool) -> list[dict[str, Any]]:
    """The steps with their boxes; in the short form only what is asked first, and a few usual values that decide much."""
    design = opened.design
    if not full:
        return [
            *_first(design),
            _step("Usual values: change what you know better", "also", ALSO_SHORT[design.kind], (), design, ("The feature", "Pump and hose")),
        ]
    priced = frozenset(line.key for line in quantities(opened.chain) if line.key)
    made = []
    for step in FORM_STEPS:
        keys = keys_of(step, design, priced)
        if keys:
            made.append(
                _step(
                    step, step, [key for key in keys if not is_seldom(key, design.kind)], [key for key in keys if is_seldom(key, design.kind)], design, (step,)
                )
            )
    return made


# The first questions by the section of their values: what stands over them, and what somebody who has not heard of it should know.
_GROUPS = {
    "site": ("The place", ""),  # what lies in the bed is said by kind
    "vessel": ("The bowl or pot", ""),
    "stones": ("The drilled stones", "For several stones a row with commas between: 300 mm, 250 mm."),
    "blade": ("The blade and its wall", ""),
    "cascade": ("The steps", ""),
    "reservoir": (
        "The blocks that hold the water",
        "Void-former blocks: open plastic crates in the lined pit. The water stands in them, and they carry what stands on top.",
    ),
    "pump": ("The pump and its hose", "What its label says; the pump's name plate, not the box."),
}
_BED = {
    "overflowing vessel": "The bed holds the pit, with room to work round the blocks, and what stands over it.",
    "drilled stones": "The bed holds the pit, with room to work round the blocks, and the stones over it.",
    "blade": "The bed holds the pit, with room to work round the blocks, and the wall behind it.",
    "cascade": "The bed holds the pit, with room to work round the blocks, and the steps and the rill behind it.",
}


def _first(design: Design) -> list[dict[str, Any]]:
    """The first questions, group by group."""
    groups: dict[str, list[str]] = {}
    for key in ASKED_FIRST[design.kind]:
        section_ = key.partition(".")[0]
        groups.setdefault("pump" if section_ == "pipe" else section_, []).append(key)
    steps = {"site": ("Site and people",), "reservoir": ("Reservoir",), "pump": ("Pump and hose",)}
    made, said = [], set[str]()
    for name, keys in groups.items():
        step = _step(_GROUPS[name][0], f"first {name}", keys, (), design, steps.get(name, ("The feature",)))
        cautions = [one for one in step["cautions"] if one["words"] not in said]
        said |= {one["words"] for one in cautions}
        about = _BED[design.kind] if name == "site" else _GROUPS[name][1]
        made.append({**step, "cautions": cautions, "about": spoken(about, design.region)})
    return made


def _step(title: str, name: str, keys, more, design: Design, steps: tuple[str, ...]) -> dict[str, Any]:
    region = design.region
    return {
        "title": spoken(title, region),
        "name": name,
        "cautions": [{"words": spoken(one.words, region), "basis": one.basis} for step in steps for one in cautions_at(step)],
        "entries": [entry(key, design) for key in keys],
        "more": [entry(key, design) for key in more],
    }


def entry(key: str, design: Design) -> dict[str, Any]:
    """One box: its name, what stands in it, what it rests on, and whether that is somebody's own."""
    region = design.region
    if key in HEADS:
        options = [[one, {"UK": "UK: metric", "US": "US: feet, inches, gallons"}[one]] for one in REGIONS] if key == "region" else []
        return {"key": key, "label": HEADS[key], "value": getattr(design, key), "options": options, "hint": "", "state": "yours", "basis": ""}
    section_, _, name = key.partition(".")
    field, given = SECTIONS[section_][name], design.values.get(key)
    options = [["", empty_words(key, region)], *([option, spoken(option, region)] for option in field.options)] if isinstance(field, OneOf) else []
    usual = usual_of(design, key)
    state = "empty" if given is None else "usual" if given == usual and given.basis != "yours" else "yours"
    return {
        "key": key,
        "label": name_of(key, region),
        "value": "" if given is None else as_typed(key, given.text),
        "options": options,
        "hint": "" if options else field.hint(region) or UNKNOWN,
        "state": state,
        "wants": uneven(design).get(key, "") if section_ == "stones" else "",
        "usual": as_typed(key, usual.text) if usual and state != "usual" else "",  # what can be had instead
        "basis": given.basis if given else "",
        "unit": field.here(region) if hasattr(field, "here") else "",
        "idle": key in idle(design),
    }


def answered_part(design: Design) -> dict[str, int]:
    """How many of the first questions are answered."""
    return {"answered": sum(key in design.values for key in ASKED_FIRST[design.kind]), "asked": len(ASKED_FIRST[design.kind])}


ALL_BASES = list(BASES)
