"""Practice in a workbook: one question, an answer that is told which slip it looks like, help in rungs, fresh numbers, and answers kept in a file."""

from __future__ import annotations

from html import escape

import ipywidgets as widgets
from IPython.display import display

from brimwork.drawing import svg
from brimwork.exercise import answers, bank
from brimwork.exercise.bank import Posed
from brimwork.exercise.choices import Choice, Sequence
from brimwork.exercise.diagnosis import Diagnosis, diagnose
from brimwork.exercise.hints import TOLD, ladder
from brimwork.notebook.pages import say
from brimwork.units import InputError

_MARKS = {"right": "✓ ", "none": "… "}
_QUIET = {"description_width": "initial"}
_ORDINALS = ("First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth", "Ninth")


class Exercise:
    """A question with what a kind of question adds: `ask` shows it, `given` reads the answer. Help comes in rungs, and answers are kept if asked."""

    def __init__(self, name: str, seed: int, record: str | None):
        self.name, self.seed, self.record = name, seed, record
        self.text, self.feedback, self.help, self.kept = (widgets.HTML() for _ in range(4))
        self.place = widgets.VBox([])
        self.hint = widgets.Button(description="Hint", tooltip="the next bit of help")
        self.hint.on_click(lambda _: self.next_hint())
        self.again = widgets.Button(description="New numbers", tooltip="the same question with other numbers")
        self.again.on_click(lambda _: self.renew())
        self.buttons = widgets.HBox([])
        self.widget = widgets.VBox([self.text, self.place, self.buttons, self.feedback, self.help, self.kept])
        self._pose()

    def _pose(self) -> None:
        self.question = bank.pose(self.name, self.seed)
        self.found, self.rung = None, 0
        drawn = getattr(self.question, "sheet", None)
        picture = f"<figure style='margin:0;max-width:620px'>{svg.write(drawn, f'q{id(self)}')}</figure>" if drawn else ""
        self.text.value = f"<p>{escape(self.question.text)}</p>{picture}"
        self.feedback.value = self.help.value = ""
        self.buttons.children = [self.hint, *([self.again] if self.question.varies else [])]
        self.place.children = self.ask()

    def ask(self) -> list[widgets.Widget]:
        raise NotImplementedError

    def renew(self) -> None:
        self.seed += 1
        self._pose()

    def take(self, text: str, middle: str = "") -> None:
        """Say what an answer tells, and keep it."""
        self.found = diagnose(self.question, text, middle)
        self.rung = TOLD.get(self.found.kind, 0) if isinstance(self, ByNumber) else 0
        self.help.value = ""
        mark = _MARKS.get(self.found.kind, "? ")
        self.feedback.value = f"<p role='status'><strong>{mark}</strong>{escape(self.found.text)}</p>"
        if self.record:
            self._keep(text, self.found, middle)

    def _keep(self, text: str, found: Diagnosis, middle: str) -> None:
        try:
            kept = answers.record(self.record, self.question, text, found, middle)
        except InputError as error:
            self.kept.value = f"<p role='alert'>This answer is not kept: {escape(str(error))}.</p>"
            return
        self.kept.value = f"<p role='note'>{escape(kept.said)} Kept in {escape(str(self.record))}; receipt {kept.receipt}.</p>"

    def next_hint(self) -> None:
        rungs = ladder(self.question, self.found)
        self.rung = min(self.rung + 1, len(rungs))
        self.help.value = f"<p role='status'>Hint {self.rung} of {len(rungs)}: {escape(rungs[self.rung - 1])}</p>"


class ByNumber(Exercise):
    """A number with its unit; a second box for a value on the way appears when the answer alone does not tell."""

    def ask(self) -> list[widgets.Widget]:
        label = "Your answer" if self.question.label or not self.question.unit else "Your answer, with its unit"
        self.box = _box(label)
        self.box.observe(lambda change: self.check(change["new"]), "value")
        self.middle = _box(f"On the way: {self.question.middle.name}") if self.question.middle else None
        if self.middle:
            self.middle.observe(lambda change: self.check(self.box.value), "value")
        return [self.box]

    def check(self, text: str) -> None:
        if not text.strip():
            return
        self.take(text, self.middle.value if self.middle else "")
        if self.found.kind == "ask" and len(self.place.children) == 1:
            self.place.children = [self.box, self.middle]


def _box(label: str) -> widgets.Text:
    return widgets.Text(description=label, continuous_update=False, style=_QUIET, layout={"width": "26em"})


class ByChoice(Exercise):
    """One of several: radio buttons, and a button to check, so that moving through them by keyboard is not an answer."""

    def ask(self) -> list[widgets.Widget]:
        options = [(option, place) for place, option in enumerate(self.question.options)]
        self.radio = widgets.RadioButtons(options=options, value=None, description="Choose one", style=_QUIET, layout={"width": "auto"})
        check = widgets.Button(description="Check", tooltip="check the choice")
        check.on_click(lambda _: self.check())
        return [self.radio, check]

    def check(self) -> None:
        if self.radio.value is None:
            self.feedback.value = "<p role='alert'>Choose one first.</p>"
            return
        self.take(str(self.radio.value + 1))


class ByOrder(Exercise):
    """Steps in order: a list to choose from for each place."""

    def ask(self) -> list[widgets.Widget]:
        options = [("choose", None), *((item, place) for place, item in enumerate(self.question.items))]
        self.places = [
            widgets.Dropdown(options=options, value=None, description=f"{_ORDINALS[place]}", style=_QUIET, layout={"width": "34em"})
            for place in range(len(self.question.items))
        ]
        check = widgets.Button(description="Check", tooltip="check the order")
        check.on_click(lambda _: self.check())
        return [*self.places, check]

    def check(self) -> None:
        chosen = [place.value for place in self.places]
        if None in chosen or len({*chosen}) < len(chosen):
            self.feedback.value = "<p role='alert'>Give every step one place.</p>"
            return
        self.take(" ".join(str(place + 1) for place in chosen))


def exercise(name: str, seed: int = 1, record: str | None = None) -> Exercise:
    """The exercise for a question code or the name of a formula. Raises InputError."""
    posed: Posed = bank.pose(name, seed)
    kind = ByChoice if isinstance(posed, Choice) else ByOrder if isinstance(posed, Sequence) else ByNumber
    return kind(name, seed, record)


def practise(name: str, seed: int = 1, record: str | None = None) -> None:
    """One question: practise("flow over a level lip") on a formula, or practise("T04.1", record="answers.json") by its code, with answers kept."""
    try:
        display(exercise(name, seed, record).widget)
    except InputError as error:
        display(say(error))
