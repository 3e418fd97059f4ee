"""Where somebody is in the course, and what is next: from the learner's own answers file, and from the workbooks themselves."""

from __future__ import annotations

import re
from dataclasses import dataclass

import ipywidgets as widgets

from brimwork import system
from brimwork.classroom.course import TOPICS
from brimwork.exercise import answers, bank, claims
from brimwork.notebook import contents
from brimwork.notebook.pages import Page, Shown, say, table
from brimwork.notebook.part import Part
from brimwork.notebook.practising import ANSWERS, button
from brimwork.units import InputError


@dataclass(frozen=True)
class Lesson:
    """A workbook of the course: its file, its heading, what it asks by code (what it recalls is others'), and what its exit check is called."""

    name: str
    title: str
    asks: tuple[str, ...]
    exit: str


def lessons() -> list[Lesson]:
    """The workbooks of the course in their order."""
    return [_lesson(name) for name in contents.COURSE]


def _lesson(name: str) -> Lesson:
    calls = contents.calls(name)
    checks = [call.words[0] for call in calls if call.name == "exit_check"]
    return Lesson(name, contents.title(name), contents.asked_in(name), f"{checks[0]}: exit check" if checks else "")


@dataclass(frozen=True)
class Progress:
    """How far somebody is in a workbook: `checked` is the verdict of the last exit check, or nothing; `right` counts questions right at the last try."""

    lesson: Lesson
    right: int
    tried: int
    checked: str

    @property
    def done(self) -> bool:
        return self.checked.partition(". ")[2].startswith(("Both are right", "All are right"))

    @property
    def said(self) -> str:
        count = standing_of(self.right, self.tried, len(self.lesson.asks))
        if self.done:
            return f"✓ exit check right; {count}"
        if self.checked:
            return f"exit check not yet all right; {count}"
        return count if self.tried else "not begun"  # a question of it may have been asked in another workbook


def standing_of(right: int, tried: int, asked: int) -> str:
    """How questions stand, so that what nobody has tried yet never looks wrong: "3 questions right, 2 not tried yet"."""
    parts = [f"{right} question{'' if right == 1 else 's'} right" if right else "", f"{tried - right} not right yet" if tried > right else ""]
    return ", ".join(filter(None, [*parts, f"{asked - tried} not tried yet" if asked > tried else ""]))


def standings(held: list[dict], among: list[Lesson]) -> list[Progress]:
    """How far somebody is in each workbook, from the entries of an answers file; a verdict on answers is worked out again."""
    last = answers.last(held)
    asked = {code for lesson in among for code in lesson.asks}
    right = {name for name, entry in last.items() if name in asked and claims.found(entry, held) in ("right", "told")}
    return [
        Progress(lesson, len(right & {*lesson.asks}), len(last.keys() & {*lesson.asks}), last.get(lesson.exit, {"answer": ""})["answer"]) for lesson in among
    ]


def course_map(record: str = ANSWERS) -> Page | Shown:
    """The workbooks of the course in order, how far you are in each, and which one is next. Run it again to bring it up to date."""
    try:
        found = standings(answers.load_answers(record), lessons())
    except InputError as error:
        return say(error)
    following = next((one for one in found if not one.done), None)
    if following is None:
        head = "You have been through the whole course. Come back to any workbook: it asks with other numbers."
    elif any(one.tried or one.checked for one in found):
        verb = "Go on with" if following.tried else "Next is"
        head = f"{verb} [{following.lesson.title}]({following.lesson.name}.ipynb)."
    else:
        head = f"Begin with [{following.lesson.title}]({following.lesson.name}.ipynb)."
    rows = [
        f"| {'→' if one is following else ''} {place} | [{one.lesson.title}]({one.lesson.name}.ipynb) | {one.said} |"
        for place, one in enumerate(found, start=1)
    ]
    plain = [f"{place}. {one.lesson.title}: {one.said}" for place, one in enumerate(found, start=1)]
    return Page(
        "\n".join([f"**{head}**", "", "|  | Workbook | Where you are |", "|:--|:--|:--|", *rows]), "\n".join([re.sub(r"\[(.*?)\]\(.*?\)", r"\1", head), *plain])
    )


class Outcomes(Part):
    """The table of `outcomes`, with a button that counts again."""

    def __init__(self, topics: tuple[str, ...], record: str):
        self.topics, self.record, self.shown = topics, record, widgets.HTML()
        again = button("Count again", "bring the table up to date from your answers", self.count)
        self.count()
        super().__init__([self.shown, again], "\n".join(f"{code}: {outcome} ({said})" for code, outcome, said in self.rows))

    def count(self) -> None:
        self.rows = _served(self.topics, self.record)
        self.shown.value = table(("Code", "Afterwards you can", "Your questions"), self.rows)


def outcomes(*topics: str, record: str = ANSWERS) -> Outcomes | Shown:
    """What somebody can do after these topics, and how many of the questions that serve each outcome are right so far: outcomes("T10", "T11")."""
    try:
        return Outcomes(topics, record)
    except InputError as error:
        return say(error)


def _served(topics: tuple[str, ...], record: str) -> list[tuple[str, str, str]]:
    """Code, outcome, and how many of the questions that serve it are right. Raises InputError."""
    last = answers.last(held := answers.load_answers(record))
    rows = []
    for code in topics:
        if code not in TOPICS:
            raise InputError(f"there is no topic '{code}': name one of {', '.join(TOPICS)}")
        for number, outcome in enumerate(TOPICS[code].outcomes):
            asked = [name for name in bank.questions() if name.partition(".")[0] == code and TOPICS[code].serves(name) == number]
            tried = [name for name in asked if name in last]
            right = sum(claims.found(last[name], held) in ("right", "told") for name in tried)
            rows.append((code, system.named_here(outcome), standing_of(right, len(tried), len(asked))))
    return rows
