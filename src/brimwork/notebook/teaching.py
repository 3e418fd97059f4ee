"""The instructor's workbook: choose questions, see their variants, try them as a learner, set them, mark what came back, look at the slips. All by forms.

Everything is written into one folder of the class, beside the workbook, by the same functions as the commands use.
"""

from __future__ import annotations

import json
import os
import re
from functools import cache
from pathlib import Path

import ipywidgets as widgets
from IPython.display import display

from brimwork import system
from brimwork.classroom import course, designs, exchange, handout, intake, marking, numbers, pages, slips, writing
from brimwork.classroom.classfile import load_class
from brimwork.classroom.course import TOPICS
from brimwork.classroom.qti import exchangeable
from brimwork.classroom.questions import asked_text, key, worked_out
from brimwork.exercise import bank
from brimwork.files import begin, write_instead
from brimwork.notebook.opening import shipped
from brimwork.notebook.pages import say
from brimwork.notebook.part import Part
from brimwork.notebook.practising import QUIET, alert, box, button, exercise, paragraph, status
from brimwork.shown import Markup, clipped, escape
from brimwork.units import InputError

_WIDE = {"width": "98%", "max_width": "60em"}
_VARIANTS = 3
_ALIKE = "All may have the same numbers in a question that has too few"


class _Chosen:
    """The questions chosen so far, in order; whoever shows them is told of a change."""

    def __init__(self):
        self.codes: list[str] = []
        self.told: list = []

    def change(self, codes: list[str]) -> None:
        self.codes = codes
        for tell in self.told:
            tell()


CHOSEN = _Chosen()


# --- choose -------------------------------------------------------------------------------------------------------------------------


class Choosing:
    """Questions by topic and what somebody can do afterwards; preview and trial of the one that is picked."""

    def __init__(self):
        self.topic = widgets.Dropdown(
            options=[(f"{topic.code} {topic.name}", code) for code, topic in TOPICS.items()], description="Topic", style=QUIET, layout=_WIDE
        )
        self.topic.observe(lambda _: self.list(), "value")
        self.outcomes, self.said, self.shown, self.whole = widgets.HTML(), widgets.HTML(), widgets.VBox([]), widgets.HTML()
        self.question = widgets.Select(rows=8, description="Question", style=QUIET, layout=_WIDE)
        self.question.observe(lambda _: self.read_out(), "value")
        take = button("Take this question", "put it into the exercise", self.take)
        drop = button("Leave out the last one", "take the last question out again", self.drop)
        look = button("Preview variants", "the question on three sets of numbers, with key and working", self.preview)
        try_ = button("Try it as a learner", "answer it here; nothing is kept", self.trial)
        self.list()
        CHOSEN.told.append(self.tell)
        self.tell()
        parts = [self.topic, self.outcomes, self.question, self.whole, widgets.HBox([take, drop]), widgets.HBox([look, try_]), self.said, self.shown]
        self.widget = Part(parts, "Choose questions by topic.")

    def list(self) -> None:
        topic = TOPICS[self.topic.value]
        self.outcomes.value = paragraph(escape(f"Afterwards somebody can {'; '.join(topic.outcomes)}."))
        codes = sorted((code for code in bank.every_question() if code.partition(".")[0] == topic.code), key=_by_number)
        found = [(code, bank.pose(code, 1)) for code in codes]
        self.question.options = [(f"{code}: {' '.join(posed.text.split())[:110]}", code) for code, posed in found if exchangeable(posed)]

    def read_out(self) -> None:
        """The question that is picked, whole: a list cuts off what is longer than itself."""
        asked = asked_text(bank.pose(self.question.value, 1)) if self.question.value else []
        self.whole.value = paragraph(Markup("<br>".join(escape(line) for line in asked)))

    def take(self) -> None:
        if self.question.value and self.question.value not in CHOSEN.codes:
            CHOSEN.change([*CHOSEN.codes, self.question.value])

    def drop(self) -> None:
        CHOSEN.change(CHOSEN.codes[:-1])

    def tell(self) -> None:
        chosen = f"Chosen: {', '.join(CHOSEN.codes)}." if CHOSEN.codes else "Nothing is chosen yet."
        self.said.value = status(escape(chosen))

    def preview(self) -> None:
        if self.question.value:
            self.shown.children = [widgets.HTML(_previewed(question)) for question in exchange.variants(self.question.value, _VARIANTS)]

    def trial(self) -> None:
        if self.question.value:
            self.shown.children = [exercise(self.question.value, 2 if bank.pose(self.question.value).varies else 1).widget]


def _by_number(code: str) -> tuple[str, int, str]:
    topic, _, number = code.partition(".")
    return topic, int(number) if number.isdigit() else 0, number


def _previewed(question) -> Markup:
    lines = Markup("").join(Markup(f"<li>{escape(line)}</li>") for line in worked_out(question))
    asked = Markup("<br>").join(escape(line) for line in asked_text(question))
    return Markup(f"<p>{asked}</p><details><summary>Key: {escape(key(question))}</summary><ol>{lines}</ol></details>")


# --- set ----------------------------------------------------------------------------------------------------------------------------


class Setting:
    """A class by a form: title, learners, feedback, tries; writes class file and roster, then everything that is handed out."""

    def __init__(self):
        self.title = box("Title, such as Overflow, week 4", "34em")
        self.learners = widgets.Textarea(description="Learners, a line each: code, name", rows=6, style=QUIET, layout=_WIDE, placeholder="A01, Ada Rowan")
        self.region = widgets.Dropdown(
            options=[("A4, metric units (UK)", "UK"), ("Letter, US units (US)", "US")],
            value="US" if system.current() == system.FEET else "UK",
            description="Paper and units",
            style=QUIET,
            layout={"width": "26em"},
        )
        self.feedback = widgets.Dropdown(
            options=[("told at once", "at once"), ("silent until handed in, then all", "after"), ("silent", "none")],
            description="Answers are",
            style=QUIET,
            layout={"width": "28em"},
        )
        self.tries = widgets.BoundedIntText(
            value=0, min=0, max=100, description="Tries that count (0: as many as wanted)", style=QUIET, layout={"width": "30em"}
        )
        self.points = widgets.BoundedFloatText(
            value=2, min=0.5, max=100, step=0.5, description="Points for each question", style=QUIET, layout={"width": "20em"}
        )
        self.alike = widgets.Checkbox(description=_ALIKE, indent=False, style=QUIET, layout=_WIDE)
        self._began: dict[Path, bytes] = {}  # files of classes that this form has begun, as it wrote them
        self.due = box("Due", "24em")
        names = sorted(path.stem for path in shipped().glob("*.ipynb") if "exit_check(" in path.read_text(encoding="utf-8"))
        self.lesson = widgets.Dropdown(
            options=[("the exercise alone", ""), *((name, name) for name in names)],
            description="Goes out with the lesson",
            style=QUIET,
            layout={"width": "26em"},
        )
        self.said = widgets.HTML()
        make = button("Write everything to hand out", "numbers, workbooks, sheets, key, overview", self.make)
        rows = [
            self.title,
            self.learners,
            widgets.HBox([self.region, self.feedback]),
            self.tries,
            self.points,
            self.alike,
            self.due,
            self.lesson,
            make,
            self.said,
        ]
        self.widget = Part(rows, "Set an exercise to a class.")

    def make(self) -> None:
        self.said.value = status(Markup("Writing …"))
        try:
            folder, out = self._handed_out(self._alike_already())
        except InputError as error:
            self.said.value = alert(f"{error}.")
            return
        notes = f" Note: {'; '.join(out.notes)}." if out.notes else ""
        said = f"Written in the folder {folder}: {out.learners.name} to give away, {out.instructor.name} and {numbers.SECRET} to keep. {len(out.sets.of)} learners.{notes}"
        self.said.value = status(escape(said))
        form_to_mark().folder.value = str(folder / "handed-in")
        (folder / "handed-in").mkdir(exist_ok=True)

    def _handed_out(self, alike: set[str]) -> tuple[Path, handout.HandedOut]:
        """Everything written, with the same numbers for all in some questions; where that is ticked, in those that have too few. Raises InputError."""
        folder = self._write(alike)
        try:
            return folder, handout.hand_out(load_class(folder / "class.toml"), shipped())
        except numbers.TooFew as few:
            if few.code in alike:  # it has no fair numbers at all
                raise
            if not self.alike.value:
                raise InputError(f"{few.code} {few.why}: choose another question, or tick '{_ALIKE}'") from None
            return self._handed_out({*alike, few.code})

    def _folder(self) -> Path:
        title = " ".join(self.title.value.split())
        return Path("classes", re.sub("[^a-z0-9]+", "-", title.lower()).strip("-")[:40] or "class")

    def _alike_already(self) -> set[str]:
        """Questions that have the same numbers for all in what was written under this title before."""
        try:
            return {one.code for one in load_class(self._folder() / "class.toml").questions if one.alike} & {*CHOSEN.codes} if self.alike.value else set()
        except InputError:
            return set()

    def _write(self, alike: set[str]) -> Path:
        """Class file and roster, as the form says. What was handed out already, or is not as this form wrote it, is never written over. Raises InputError."""
        if not CHOSEN.codes:
            raise InputError("no question is chosen: choose some above")
        if not (title := " ".join(self.title.value.split())):
            raise InputError("this exercise has no title: type one, such as Overflow, week 4")
        folder = self._folder()
        points = {code: f"{self.points.value:g}" for code in CHOSEN.codes}
        asked = "\n".join(f"{json.dumps(code)} = {f'{{ points = {each}, alike = true }}' if code in alike else each}" for code, each in points.items())
        entries = {
            "title": title,
            "region": self.region.value,
            "feedback": self.feedback.value,
            "tries": self.tries.value,
            "due": self.due.value,
            "workbook": self.lesson.value,
        }
        head = "\n".join(f"{name} = {json.dumps(value, ensure_ascii=False)}" for name, value in entries.items())
        roster = "code,name\n" + "\n".join(_row(line) for line in self.learners.value.splitlines() if line.strip()) + "\n"
        try:
            folder.mkdir(parents=True, exist_ok=True)
            wanted = {folder / "class.toml": f"format = 1\n{head}\n\n[questions]\n{asked}\n".encode(), folder / "roster.csv": roster.encode()}
            for path, content in wanted.items():
                self._may_write(path, content)
            for path, content in wanted.items():
                self._begin(path, content)
        except OSError as error:
            raise InputError(f"{folder} cannot be written ({error.strerror}): move this workbook into a folder of your own") from None
        return folder

    def _may_write(self, path: Path, content: bytes) -> None:
        there = path.read_bytes() if path.exists() else content
        if there != content and (numbers.record_of(path.with_name("class.toml")).exists() or self._began.get(path) != there):
            raise InputError(f"{path} is there already and says something else: give this exercise another title, or edit that file and use the command")

    def _begin(self, path: Path, content: bytes) -> None:
        if path.exists():
            write_instead(path, path.read_bytes() if path not in self._began else self._began[path], content)
        else:
            begin(path, content)
        self._began[path] = content


def _row(line: str) -> str:
    code, _, name = line.partition("," if "," in line else ";" if ";" in line else "\t" if "\t" in line else " ")
    name = name.strip().replace('"', '""')
    return f'{code.strip()},"{name}"'


# --- mark ---------------------------------------------------------------------------------------------------------------------------


class MarkingForm:
    """Marks a folder of what was handed in, shows the totals, what could not be read, what to look at, and the table of slips."""

    def __init__(self):
        self.folder = box("Folder or zip of what was handed in", "44em")
        self.said, self.shown = widgets.HTML(), widgets.HTML()
        self.progress = widgets.IntProgress(description="Files", layout={"width": "30em", "display": "none"})
        go = button("Mark", "mark everything in that folder", self.mark)
        self.widget = Part([self.folder, go, self.progress, self.said, self.shown], "Mark what a class handed in.")

    def mark(self) -> None:
        try:
            marks, to = self._marks(Path(self.folder.value.strip() or "handed-in"))
        except InputError as error:
            self.said.value = alert(f"{error}.")
            return
        finally:
            self.progress.layout.display = "none"
        handed = sum(bool(one.source) for one in marks.of.values())
        self.said.value = status(escape(f"{handed} of {len(marks.of)} learners marked. Written in {to}: marks.csv, totals.csv, pages, slips.html, log.csv."))
        rows, notes = slips.slips_table(marks), slips.notes(marks)
        self.shown.value = Markup(f"{_listed(marks)}{pages.slips_table_page(rows)}{pages.taught(notes, len(marks.of))}")

    def _marks(self, folder: Path) -> tuple[marking.Marks, Path]:
        if not os.path.exists(folder):
            raise InputError(
                f"{clipped(str(folder))} is not there: type the folder or zip of a class with what came back, such as classes/overflow-week-4/handed-in"
            )
        group = load_class(folder.parent / "class.toml")
        secret = numbers.secret_of(group.folder)
        sets = numbers.draw(group, secret, numbers.read_record(group, secret))
        brief = designs.brief(group.folder / group.brief) if group.brief else None
        self.progress.max, self.progress.layout.display = max(len(group.learners), 1), "flex"
        marks = marking.mark(group, sets, self._counted(intake.take_in(folder, brief)))
        to = folder.with_name(f"{folder.stem}-marks")
        writing.write_feedback(marks, to)
        return marks, to

    def _counted(self, taken):
        for done, one in enumerate(taken, start=1):
            self.progress.value = done
            yield one


def _listed(marks: marking.Marks) -> Markup:
    """What could not be read and what to look at, as lists."""
    unread = [f"{name}: {reason}" for name, reason in marks.unread]
    look = [f"{one.learner}: {note}" for one in marks.of.values() for note in one.notes]
    parts = []
    for head, lines in (("Could not be read", unread), ("To look at", look)):
        if lines:
            items = Markup("").join(Markup(f"<li>{escape(line)}</li>") for line in lines)
            parts.append(Markup(f"<details><summary>{escape(head)}: {escape(len(lines))}</summary><ul>{items}</ul></details>"))
    return Markup(Markup("").join(parts))


# --- course -------------------------------------------------------------------------------------------------------------------------


class CourseForm:
    """Writes the page of the course with its sheets, keys and slides."""

    def __init__(self):
        self.region = widgets.Dropdown(options=[("A4 (UK)", "UK"), ("Letter (US)", "US")], description="Paper", style=QUIET)
        self.said = widgets.HTML()
        go = button("Write course, sheets, keys and slides", "into the folder course", self.make)
        self.widget = Part([self.region, go, self.said], "Write the page of a course of twelve weeks.")

    def make(self) -> None:
        self.said.value = status(Markup("Writing …"))
        try:
            to = Path("course" if self.region.value == "UK" else "course-US")
            names = course.write_course_pages(to, self.region.value)
        except InputError as error:
            self.said.value = alert(f"{error}.")
            return
        self.said.value = status(
            escape(f"Written: {len(names)} files in the folder {to}. Open {to / 'course.html'} in a browser: {to.resolve() / 'course.html'}")
        )


def _shown(made) -> None:
    try:
        display(made().widget)
    except InputError as error:
        display(say(error))


def choose_questions() -> None:
    """A form to choose questions by topic, with preview and trial."""
    _shown(Choosing)


def set_exercise() -> None:
    """A form to set the chosen questions to a class."""
    _shown(Setting)


@cache
def form_to_mark() -> MarkingForm:
    """The one form to mark with, which the one to set a class tells where the hand-ins will lie; made when it is wanted, for no widget is made by loading."""
    return MarkingForm()


def mark_hand_ins() -> None:
    """A form to mark what a class handed in."""
    _shown(form_to_mark)


def write_course() -> None:
    """A form to write the page of the course with its sheets."""
    _shown(CourseForm)
