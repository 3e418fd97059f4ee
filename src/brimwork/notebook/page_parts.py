"""What the page of a design shows, as plain data that its script turns into elements: every text in it is words, and drawings are SVG of our own."""

from __future__ import annotations

import re
from collections import Counter
from functools import cache
from pathlib import Path
from typing import Any

from brimwork import units
from brimwork.design.done.cost import cost_sheet
from brimwork.design.follows.chain import Chain
from brimwork.design.follows.missing import missing
from brimwork.design.judged.checks import CHECKS
from brimwork.design.judged.findings import Finding, called
from brimwork.design.judged.hanging import Hangs, hangs_on
from brimwork.design.typed.asking import Refused, keys_in, tried, without_keys
from brimwork.design.typed.criteria import is_safety
from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.merging import shown as on_one_line
from brimwork.design.typed.money import currency_words
from brimwork.design.typed.reading import Several
from brimwork.design.typed.starting import ASKED_FIRST
from brimwork.design.typed.whom import BY_ELECTRICIAN, ENGINEER, MAKER, whom_of
from brimwork.design.typed.wording import worded
from brimwork.drawing.design import DRAWN
from brimwork.drawing.plan import plan
from brimwork.drawing.running import start_and_stop_chart
from brimwork.drawing.section import section
from brimwork.drawing.svg import write_svg
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook.comparing import compared
from brimwork.notebook.form import name_of
from brimwork.notebook.opened import OpenDesign
from brimwork.notebook.results import working_lines
from brimwork.notebook.shelf import DESIGNS, EXAMPLES, invented, own_designs
from brimwork.notebook.shopping import Waits, tables_of
from brimwork.pack.buying import money
from brimwork.quantity import days
from brimwork.units import InputError

DRAWINGS = {
    "section": "From the side", "plan": "From above", "duty chart": "Pump", "water in the reservoir": "Water",
    "level over thirty dry days": "Dry month", "level from start to stop": "Start and stop",
}  # fmt: skip
TABLES = {"shopping": "To buy", "cost": "Cost", "work": "Order of work", "compare": "Beside another"}
NARROW = 112.0  # mm: a sheet for a page as wide as a phone
GRADE_WORDS = {
    "fail": "Outside a limit", "marginal": "Near a limit", "not shown": "Nobody has given what is needed", "pass": "Within the limits", "does not apply": "Does not apply here",
}  # fmt: skip
DASH = "–"
# Who answers what is unanswered and somebody's safety rests on, in the order in which they are asked.
FIRST_OF_ALL, OTHERS = "First of all", "You, at the drawing board"
WHO = {
    "ground and lining": "You, before anyone digs", "people": "You, with those who live and work there", "loads": "You, with what makers and soil can bear",
}  # fmt: skip
ANOTHER = {BY_ELECTRICIAN: "Your electrician: Print makes a sheet to hand over", MAKER: "The supplier or the maker", ENGINEER: "An engineer"}
EXPECTED = ("C41", "C51", "C35", "C44")  # of the unanswered checks of safety those named first: shock, open water, services


# --- key numbers --------------------------------------------------------------------------------------------------------------------

# kind of feature: name of the result that tells how deep the water stands over its edge, and the words for it
_OVER_THE_EDGE = {
    "overflowing vessel": ("rim_head", "water over the rim"),
    "blade": ("lip_head", "water over the lip"),
    "cascade": ("step_head", "water over each step"),
}


def key_numbers(chain: Chain) -> dict[str, tuple[str, str]]:
    """Text and words of the numbers that stand on top, by name; a number that cannot be told yet is a dash."""
    region = chain.design.region
    numbers: dict[str, tuple[str, str]] = {}
    if chain.design.kind in _OVER_THE_EDGE:
        name, words = _OVER_THE_EDGE[chain.design.kind]
        comes = _told(chain, name, coming=True)
        numbers["edge"] = (
            comes if comes != DASH else _told(chain, name),
            f"{words}, at the flow that comes" if comes != DASH else f"{words}, at the required flow",
        )
    wanted = _told(chain, "flow_wanted")
    numbers["flow"] = _told(chain, "duty_flow"), "the pump sends" + (f", of {wanted} required" if wanted != DASH else "")
    usable = _told(chain, "usable")
    numbers["water"] = _told(chain, "static_volume"), "in the reservoir" + (f", {usable} of it usable" if usable != DASH else "")
    numbers["days"] = _told(chain, "days"), "without topping up, driest month"
    priced = any(key.startswith("prices.") for key in chain.design.values)
    cost = tried(lambda: _cost(chain)) if priced else None
    numbers["cost"] = (cost, f"cost, in {currency_words(chain.design)}") if isinstance(cost, str) else (DASH, "cost: no price is known yet")
    return {name: (worded(text, region), worded(words, region)) for name, (text, words) in numbers.items()}


def _cost(chain: Chain) -> str:
    sheet = cost_sheet(chain)
    return f"{'' if sheet.whole else 'at least '}{money(sheet.paid)}"


def _told(chain: Chain, name: str, coming: bool = False) -> str:
    if name not in chain.names():
        return DASH
    got = tried(lambda: (chain.coming if coming else chain).working(name))
    if isinstance(got, Refused):
        return DASH
    row = QUANTITIES[got.letter]
    return days(row.us_text(got.result) if chain.design.region == "US" else row.metric_text(got.result))


def numbers_part(now: dict[str, tuple[str, str]], before: dict[str, tuple[str, str]]) -> list[dict[str, str]]:
    """The numbers on top, each with what it was before the last change where that moved it."""
    return [
        {"name": name, "value": text, "words": words, "was": before[name][0] if name in before and before[name][0] not in (text, DASH) else ""}
        for name, (text, words) in now.items()
    ]


def kept_words(opened: OpenDesign) -> str:
    """Whether what is open is kept in a file of the user's own, in words."""
    if opened.example and not opened.done:
        return "an invented example"
    changed = f"changes not saved yet; the file is {opened.mine}" if opened.unsaved and Path(opened.mine).exists() else ""
    said = changed or ("not saved yet" if opened.unsaved or opened.example or not Path(opened.mine).exists() else f"saved as {opened.mine}")
    if opened.example:
        return f"a changed copy of the invented example {opened.of_example.replace('-', ' ')}; {said}"
    left = invented(opened.design)
    return f"{said} · a copy of an invented example: {left} of its values are still invented" if left else said


# --- findings -----------------------------------------------------------------------------------------------------------------------


# What hurts soonest and worst comes first: shock, drowning, what falls or caves in, then what gives way in time.
_GRAVEST = (
    "C41",
    "C46",
    "C75",
    "C77",
    "C78",
    "C44",
    "C43",
    "C71",
    "C51",
    "C25",
    "C25e",
    "C26",
    "C62",
    "C32",
    "C35",
    "C65",
    "C48",
    "C20",
    "C74",
    "C58",
    "C21",
    "C24",
)


def gravity(finding: Finding) -> tuple[bool, bool, int]:
    """The order in which findings of one grade are named: those of safety first, the gravest of them first; then what is typed twice, which bears on others."""
    return _gravity(finding.id, finding.group)


@cache
def _gravity(check_id: str, group: str) -> tuple[bool, bool, int]:
    place = _GRAVEST.index(check_id) if check_id in _GRAVEST else len(_GRAVEST)
    return not is_safety(check_id, group), not group.startswith("values"), place


class Listed:
    """The findings as a page has them. One that it has already is told by its place in the list before, for from change to change most are the same."""

    def __init__(self) -> None:
        self.places: dict[Finding, int] = {}
        self.nth, self.region = 0, ""

    def part(self, opened: OpenDesign, whole: bool) -> dict[str, Any]:
        """The list in its order, and how many were told since the last `whole` one."""
        found, design = _safety_first(opened.found), opened.design
        if whole or design.region != self.region:
            self.places, self.nth, self.region = {}, -1, design.region
        made = [self.places[one] if one in self.places else _finding(one, design) for one in found]
        self.places, self.nth = {one: place for place, one in enumerate(found)}, self.nth + 1
        return {"nth": self.nth, "found": made}


def _finding(finding: Finding, design: Design) -> dict[str, Any]:
    unshown = finding.grade == "not shown"
    return {
        "id": finding.id,
        "grade": finding.grade,
        "title": worded(called(finding), design.region),
        "value": "" if unshown else without_keys(finding.value, _name(design.region)),
        "limit": finding.limit,
        "remedy": _linked(finding.remedy.removeprefix("change "), design),  # it stands behind "To change:"
        "note": without_keys(finding.note, _name(design.region)),
        "basis": finding.basis,
        "safety": is_safety(finding.id, finding.group),
        "who": FIRST_OF_ALL if finding.id in EXPECTED else worded(_who(finding), design.region),
        "needs": _boxes(finding.needs, design),
    }


def _who(finding: Finding) -> str:
    """Who answers what is missing: somebody else, where a value is theirs to give."""
    return ANOTHER.get(whom_of(finding.needs)) or WHO.get(finding.group, OTHERS)


def _linked(text: str, design: Design) -> dict[str, Any]:
    """A sentence with the names of boxes in it, and the way to them."""
    return {"words": without_keys(text, _name(design.region)), "needs": _boxes(keys_in(text), design)}


def _name(region: str):
    return lambda key: name_of(key, region)


def tally_part(opened: OpenDesign) -> dict[str, Any]:
    """How many are outside, near, and unanswered though somebody's safety rests on them; and what the last change did."""
    found = opened.found
    return {
        "fail": sum(one.grade == "fail" for one in found),
        "marginal": sum(one.grade == "marginal" for one in found),
        "unanswered": sum(one.grade == "not shown" and is_safety(one.id, one.group) for one in found),
        "names": [
            {"id": one.id, "title": worded(called(one), opened.design.region), "safety": is_safety(one.id, one.group)}
            for one in _safety_first(found)
            if one.grade == "fail"
        ],
        "words": GRADE_WORDS,
    }


def within(title: str) -> str:
    """A title, or the name of a box, within a sentence; abbreviations stay as they are."""
    return title if re.match("[A-Z]{2}", title) else title[:1].lower() + title[1:]


def _safety_first(found: list[Finding]) -> list[Finding]:
    return sorted(found, key=gravity)


def _wanting(one: Finding, region: str) -> str:
    """Without what a finding is not known."""
    return f" (it needs: {within(name_of(one.needs[0], region))})" if one.grade == "not shown" and one.needs else ""


def _by_place(found: list[Finding]) -> dict[tuple[str, str], Finding]:
    """Findings by their check and the how manieth of it each is, for its title has other words in another country; those of no check, which come and go, by title."""
    checks, seen = {check.id for check in CHECKS}, Counter[str]()
    held = {}
    for one in found:
        held[one.id, str(seen[one.id]) if one.id in checks else one.title] = one
        seen[one.id] += 1
    return held


def turned(before: list[Finding], after: list[Finding], region: str = "UK", most: int = 3) -> str:
    """What a change did to the findings, in a sentence; what somebody's safety rests on first."""
    was, now = _by_place(before), _by_place(after)
    words = {
        "fail": "is outside its limit now",
        "marginal": "is near its limit now",
        "pass": "is within its limits now",
        "not shown": "is not known now",
        "does not apply": "does not apply any more",
    }
    grades = {id(one): was[place].grade for place, one in now.items() if place in was}
    told = [
        f"{one.title} {words[one.grade]}{_wanting(one, region)}" if called(one) == one.title else f"now: {within(worded(called(one), region))}"
        for one in _safety_first(after)
        if grades.get(id(one), "pass" if one.grade == "pass" else "") != one.grade
    ]
    told += [f"{one.title}: settled" for place, one in was.items() if place not in now]
    more = f"; and {len(told) - most} more" if len(told) > most else ""
    return f"{'; '.join(told[:most])}{more}." if told else "No finding changes."


def why_part(opened: OpenDesign, finding_id: str) -> dict[str, Any]:
    """The working of one finding."""
    finding = next((one for one in opened.found if one.id == finding_id), None)
    lines = [line for name in finding.results for line in working_lines(opened.chain, name)] if finding else []
    return {"id": finding_id, "lines": lines}


def hangs_part(design: Design, finding_id: str) -> list[dict[str, str]]:
    """What a finding hangs on, in words."""
    return [{"key": one.key, "name": name_of(one.key, design.region), "words": _way(one, design)} for one in hangs_on(design, finding_id)]


def _way(one: Hangs, design: Design) -> str:
    section_, _, name = one.key.partition(".")
    field: Any = SECTIONS[section_][name]
    many = isinstance(field, Several)
    unit = (field.us or field.unit) if design.region == "US" else field.unit
    given = design.given(one.key)
    here = on_one_line(given) if given else ""
    way = "more" if one.up else "less"
    if one.passing:
        return f"{way} than {here} leaves more room to its limit"
    if one.enough is None:
        return f"{way} than {here} helps, and is not enough by itself"
    enough = units.write(one.enough, unit, None) if getattr(field, "whole", False) else f"about {units.write(one.enough, unit, 3)}"
    return f"{way} than {here}: {enough} would do by itself" + (", the others in the same share" if many else "")


# --- drawings and lists -------------------------------------------------------------------------------------------------------------


def views_part(opened: OpenDesign) -> list[dict[str, str]]:
    drawn = [name for name in DRAWINGS if not (DRAWN[name] is start_and_stop_chart and not opened.chain.edges)]
    return [{"name": name, "title": title} for name, title in (DRAWINGS | TABLES).items() if name in (*drawn, *TABLES)]


def view_part(opened: OpenDesign, name: str, narrow: bool, other: str = "") -> dict[str, Any]:
    """A drawing, or a list; or what it still needs."""
    chain, region = opened.chain, opened.design.region
    if name in TABLES:
        return {"name": name, "tables": _tables(opened, name, other)}
    draw = DRAWN[name]
    sheet = tried(lambda: draw(chain, NARROW) if narrow and draw in (section, plan) else draw(chain))
    if isinstance(sheet, Refused):
        keys = dict.fromkeys((*sheet.needs, *(key for key in missing(chain, draw) if key in ASKED_FIRST[chain.design.kind]))) if sheet.needs else ()
        return {"name": name, "needs": _boxes(keys, opened.design), "why": "" if keys else worded(without_keys(sheet.why, _name(region)), region)}
    return {"name": name, "svg": write_svg(sheet, "bw", linked=True), "caption": sheet.description, "told": sheet.told,
            "table": {"head": sheet.columns, "rows": sheet.rows}}  # fmt: skip


def _tables(opened: OpenDesign, name: str, other: str) -> list[dict[str, Any]]:
    try:
        made = compared(opened.design, other) if name == "compare" else tables_of(opened.chain, name)
    except InputError as error:
        return [{"caption": "", "head": [], "rows": [], "note": f"{without_keys(str(error), _name(opened.design.region))}."}]
    return [
        {"caption": caption, "head": list(head), "rows": [[_cell(cell, opened) for cell in row] for row in rows], "note": _cell(note, opened)}
        for caption, head, rows, note in made
    ]


def _cell(cell: str, opened: OpenDesign) -> str | dict[str, Any]:
    """The words of a cell, and where it waits for values the way to their boxes."""
    return {"words": str(cell), "needs": _boxes(cell.keys, opened.design)} if isinstance(cell, Waits) else cell


def _boxes(keys, design: Design) -> list[dict[str, str]]:
    """Boxes by their names, for the way there."""
    return [{"key": key, "name": name_of(key, design.region)} for key in keys]


# --- the ways in -------------------------------------------------------------------------------------------------------------------

KIND_WORDS = {
    "overflowing vessel": ("A bowl or pot that overflows", "water leaves all round its rim and runs down its face"),
    "drilled stones": ("Drilled stones", "water rises through one stone or several and runs down them"),
    "blade": ("A straight blade", "a sheet of water falls from a lip in a wall"),
    "cascade": ("Steps or a rill", "water falls from pool to pool"),
}


def ways_part(is_open: bool) -> dict[str, Any]:
    """The ways to a design: a new one of each kind, those at hand, and the examples."""
    return {
        "kinds": [{"kind": kind, "name": KIND_WORDS[kind][0], "words": KIND_WORDS[kind][1]} for kind in KINDS],
        "designs": [{"path": path, "words": words, "when": when} for path, words, when in own_designs()],
        "examples": [{"name": name, "words": name.replace("-", " ")} for name in EXAMPLES if (DESIGNS / f"{name}.toml").exists()],
        "open": is_open,
    }
