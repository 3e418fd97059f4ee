"""Carrying values from a topic into the learner's own running design: one small design file, and what the change does to the design."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

import ipywidgets as widgets
from IPython.display import display

from brimwork import system
from brimwork.design.follows.chain import Chain
from brimwork.design.follows.features import NUMBERS, chain_of
from brimwork.design.judged import checks
from brimwork.design.judged.findings import COUNTS, Finding, grade_said, graded, keyless
from brimwork.design.typed import file
from brimwork.design.typed.asking import reason
from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.reading import Field
from brimwork.design.typed.wording import without_metric
from brimwork.exercise import answers
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import progress
from brimwork.notebook.pages import say
from brimwork.notebook.part import Part
from brimwork.notebook.practising import Keeper, alert, button, paragraph, status
from brimwork.notebook.shelf import last_open
from brimwork.notebook.text_box import TextBox
from brimwork.quantity import days
from brimwork.shown import Markup, escape
from brimwork.spellings import nearest
from brimwork.units import InputError

MINE, START = "designs/my-design.toml", "designs/library-bowl.toml"
# What a site needs to know beside the numbers of a summary.
_TITLES = {**NUMBERS, "liner_length": "length of the liner as cut", "liner_width": "width of the liner as cut", "pit_length": "length of the pit as dug",
           "pit_width": "width of the pit as dug", "spoil": "loose volume of spoil", "stone_mass": "stone to order"}  # fmt: skip
_ON_SITE = "on site"  # what is carried over, in an answers file
_MARKS = {"fail": "✗", "marginal": "!", "not shown": "?", "pass": "✓"}


class Carrying:
    """Boxes for a few values of the running design; on a press they are saved, and what changes is told.

    The design is read afresh on every press, so that several workbooks may carry values into it. A box that nobody touched follows the file; where
    box and file were both changed, both are shown and nothing is saved until the button is pressed again.
    """

    def __init__(self, keys: tuple[str, ...], shows: tuple[str, ...], mine: str, start: str, record: str | None):
        self.mine, self.start, self.shows, self.keeper = Path(mine), Path(start), shows, Keeper(record)
        for name in shows:
            if name not in _TITLES:
                raise InputError(f"'{name}' is no number of a design that is shown here.{nearest(name, _TITLES)}")
        design = self.running()
        self.shown = {key: _text(design, key) for key in keys}  # what each box showed of the file
        self.fields = {key: _field(key) for key in keys}
        self.boxes = {key: TextBox(description=label_of(field), layout={"min_width": "40em", "width": "max-content"}) for key, field in self.fields.items()}
        for key, own in self.boxes.items():
            own.placeholder = f"such as {self.fields[key].suggested(_region(design))}"
            own.value = self.shown[key]
        self.said = widgets.HTML()
        carry = button("Put into my design", f"save these values in {mine}", self.carry)
        begun = "The design that your lessons feed" if os.path.lexists(self.mine) else f"Your design will begin as a copy of {start}, which is invented"
        below = " A level that lies under the paving carries a minus." if any(key.startswith("levels.") for key in keys) else ""
        head = widgets.HTML(paragraph(Markup(f"{escape(begun)}. It is kept in {escape(mine)}.{escape(self._not_this())}{below}")))
        self.standing = "kept" if self._carried_before() else ""
        progress.joins(MINE, self)
        self.widget = Part([head, *self.boxes.values(), carry, self.said, self.keeper.said], f"{begun}: {', '.join(keys)}.")

    def _not_this(self) -> str:
        """That the design which was open last is another one, where it is."""
        last = last_open(self.mine.parent)
        return (
            ""
            if last is None or last.name == self.mine.name
            else f" {last.name}, which you opened last on the page of designs, is another one and stays as it is."
        )

    def running(self) -> Design:
        """The learner's own design, or the one it begins with. Raises InputError."""
        if os.path.lexists(self.mine):
            return file.load_design(self.mine)
        begun = file.load_design(self.start)
        return replace(begun, region=_region(begun), title="My design", note=f"Begun as a copy of {self.start.name}, whose values are invented.")

    def carry(self) -> None:
        try:
            before = self.running()
            apart = self._apart(before)
            if apart:
                self.said.value = alert(f"Nothing is saved yet. Your design was changed elsewhere since this was opened: {apart}. Press again to put yours in.")
                return
            after, changed = self._changed(before)
            if not changed:
                self.said.value = alert("Nothing is changed: type your own values into the boxes first.")
                return
            after = file.save_design(after, self.mine, before)
        except InputError as error:
            self.said.value = alert(f"{error}. Nothing is saved; your design is as it was.")
            return
        self._follow(after)
        self.said.value = f"{status(Markup(f'✓ Saved in {escape(str(self.mine))}.'))}{_compared(chain_of(before), chain_of(after), self.shows)}"
        self.standing = "kept"
        progress.changed()
        self.keeper.note(_ON_SITE, "; ".join(f"{key} = {self.boxes[key].value.strip() or 'not known'}" for key in changed), "carried over")

    def _carried_before(self) -> bool:
        """Whether one of these values was carried over another time."""
        try:
            held = answers.load_answers(self.keeper.path) if self.keeper.path else []
        except InputError:
            return False
        return any(entry["exercise"] == _ON_SITE and f"{key} = " in entry["answer"] for entry in held for key in self.fields)

    def _apart(self, now: Design) -> str:
        """What both the box and the file were changed to, in words; from here on the box has seen the file."""
        found = []
        for key, own in self.boxes.items():
            typed, there = own.value.strip(), _text(now, key)
            if there == self.shown[key]:
                continue
            if typed == self.shown[key]:
                own.value = there
            elif typed != there:
                found.append(f"{self.fields[key].name} is {there or 'not known'} there, and {typed or 'not known'} in your box")
            self.shown[key] = there
        return "; ".join(found)

    def _follow(self, design: Design) -> None:
        for key, own in self.boxes.items():
            self.shown[key] = own.value = _text(design, key)

    def _changed(self, before: Design) -> tuple[Design, list[str]]:
        """The design with the boxes' values in it, and which of them are new."""
        after, changed = before, []
        for key, own in self.boxes.items():
            typed = own.value.strip()
            if typed == self.shown[key]:
                continue
            try:
                after = after.having(key, _as_in_file(typed, key), "measured" if key.startswith("measured.") else "yours")
            except InputError as error:  # says it as a design file would; here there are boxes
                raise InputError(f"{own.description}: {str(error).replace(f'{key} = ', '').replace(f'{key}: ', '').replace(key, 'it')}") from None
            changed.append(key)
        return after, changed


def label_of(field: Field) -> str:
    """What stands at a box, in words of the system in use."""
    name = system.named_here(field.name)
    return f"{name[:1].upper()}{name[1:]}"


def _region(design: Design) -> str:
    """That of a design, or the US where its units were chosen."""
    return "US" if system.was_chosen() and system.current() == system.FEET else design.region


def _text(design: Design, key: str) -> str:
    """A value as the box shows it: as it was typed, in units of the system that was chosen."""
    given = design.values.get(key)
    if not given:
        return ""
    try:
        return system.in_chosen(str(given.text), 3)
    except InputError:
        return str(given.text)


def _field(key: str) -> Field:
    """The field of a key. Raises InputError for one that is not a single quantity."""
    section, _, name = key.partition(".")
    field = SECTIONS.get(section, {}).get(name)
    if not isinstance(field, Field):
        known = [f"{part}.{one}" for part, fields in SECTIONS.items() for one, each in fields.items() if isinstance(each, Field)]
        raise InputError(f"'{key}' is no single quantity of a design.{nearest(key, known)}")
    return field


def _as_in_file(typed: str, key: str):
    """What the file would say: text, a plain number without quotes, or None for a value that is not known."""
    field = _field(key)
    if not typed:
        return None
    if field.unit:
        return typed
    value = field.read(typed, key)
    return int(value) if value == int(value) else value


def _compared(before: Chain, after: Chain, shows: tuple[str, ...]) -> Markup:
    """A table of the numbers that were asked for, before and now; then every check that is graded otherwise."""
    rows = "".join(
        f"<tr><th scope='row' style='text-align:left;font-weight:normal;padding:.25em .8em .25em 0;vertical-align:baseline'>{escape(_TITLES[name])}</th>{_cell(before, name)}{_cell(after, name)}</tr>"
        for name in shows
        if name in after.names()
    )
    table = (
        f"<table><thead><tr><th scope='col'></th><th scope='col'>before</th><th scope='col'>now</th></tr></thead><tbody>{rows}</tbody></table>" if rows else ""
    )
    old, new = _graded(before), _graded(after)
    moved = [finding for id, finding in new.items() if id in old and finding.grade != old[id].grade]
    if not moved:
        return Markup(f"{table}{paragraph(Markup('No check is graded otherwise than before.'))}")
    items = "".join(
        f"<li>{escape(finding.title)}: {_MARKS[old[finding.id].grade]} {escape(grade_said(old[finding.id]))}, now <strong>{_MARKS[finding.grade]} {escape(grade_said(finding))}</strong>"
        f" ({escape(_measured(finding))})</li>"
        for finding in moved
    )
    return Markup(f"{table}{paragraph(Markup('Checks that are graded otherwise than before:'))}<ul style='line-height:1.45'>{items}</ul>")


def _measured(finding: Finding) -> str:
    """The number of a check with what it counts and what is asked of it, a note such as which levels are meant, and what to change where it does not hold."""
    value = f"{COUNTS[finding.id]}: {finding.value}" if finding.number is not None and not finding.unit else finding.value
    asked = "; ".join(part for part in (value, f"wanted: {finding.limit}" if finding.limit else "", finding.note) if part)
    told = f"{asked}. To change it: {finding.remedy}" if finding.remedy and finding.grade in ("fail", "marginal") else asked
    return without_metric(told) if system.was_chosen() else told


def _graded(chain: Chain) -> dict[str, Finding]:
    """The checks that apply; one check may stand in a second row for another kind of feature."""
    found = (keyless(finding) for finding in graded(checks.findings(chain), chain.design.region))
    return {finding.id: finding for finding in found if finding.grade != "does not apply"}


def _cell(chain: Chain, name: str) -> Markup:
    return Markup(f"<td style='padding:.25em .8em;vertical-align:baseline'>{escape(_number(chain, name))}</td>")


def _number(chain: Chain, name: str) -> str:
    try:
        found = chain.working(name)
    except (Unknown, InputError) as missing:
        return reason(missing)
    row = QUANTITIES[found.letter]
    if system.was_chosen():
        return days(row.text_here(found.result))
    return days(row.us_text(found.result) if chain.design.region == "US" else row.metric_text(found.result))


def on_site(*keys: str, shows: tuple[str, ...] = (), mine: str = MINE, start: str = START, record: str | None = "answers.json") -> None:
    """Boxes that carry values into the learner's own design: on_site("vessel.rim_diameter", shows=("flow_wanted", "rim_head"))."""
    try:
        with progress.in_section(progress.SITE):
            display(Carrying(keys, shows, mine, start, record).widget)
    except InputError as error:
        display(say(error))
