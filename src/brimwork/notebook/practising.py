"""Practice in a workbook: one question, an answer that is told which slip it looks like, help in rungs, fresh numbers, and answers kept in a file."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from dataclasses import replace

import ipywidgets as widgets
from IPython.display import display

from brimwork.drawing import svg
from brimwork.exercise import answers, bank
from brimwork.exercise.bank import Posed
from brimwork.exercise.choices import LONGEST_SENTENCE, Choice, Sequence, Telling
from brimwork.exercise.consequence import consequence
from brimwork.exercise.diagnosis import ONCE_SHOWN, Diagnosis, diagnose
from brimwork.exercise.hints import TOLD, ladder
from brimwork.exercise.question import Question
from brimwork.notebook import progress
from brimwork.notebook.kept import Keeper, alert, paragraph, status, words_here
from brimwork.notebook.pages import say
from brimwork.notebook.part import Part
from brimwork.notebook.tied import ASKED, Tied
from brimwork.notebook.word_list import told_words
from brimwork.shown import Markup, escape, held_together
from brimwork.units import InputError

FEWEST_WORDS = 3  # of a reason
ANSWERS = "answers.json"  # where a learner's answers are kept, beside the workbooks
_MARKS = {"right": "✓ ", "none": "… ", "told": "✎ "}
QUIET = {"description_width": "initial"}
_ORDINALS = ("First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth", "Ninth")


def box(label: str, width: str = "26em") -> widgets.Text:
    """A box for a short text that counts once it is entered."""
    return widgets.Text(description=label, continuous_update=False, style=QUIET, layout={"min_width": width, "width": "max-content"})


def button(name: str, tip: str, act: Callable[[], object]) -> widgets.Button:
    made = widgets.Button(description=name, tooltip=tip, layout={"width": "max-content"})
    made.on_click(lambda _: act())
    return made


def told_back(found: Diagnosis) -> Markup:
    """A diagnosis as a page says it: a mark and full sentences."""
    return status(Markup(f"<strong>{escape(_MARKS.get(found.kind, '? '))}</strong>{escape(found.text)}"))


class Exercise:
    """A question with what a kind of question adds: `ask` shows it, `given` reads the answer. Help comes in rungs, and answers are kept if asked.

    `number` tells several questions of one page apart, for the eye and for a screen reader. One that is `examined` offers help only by `open_help`.
    """

    question: Posed
    found: Diagnosis | None

    def __init__(self, name: str, seed: int, record: str | None, number: str = "", examined: bool = False):
        self.name, self.seed, self.number, self.examined = name, seed, f" {number}" if number else "", examined
        self.first, self.keeper = seed, Keeper(record)
        self.kept = self.keeper.said
        self.text, self.feedback, self.outcome, self.help = (widgets.HTML() for _ in range(4))
        self.place = widgets.VBox([])
        self.hint = button(f"Hint{self.number}", "the next bit of help", self.next_hint)
        self.again = button(f"New numbers{self.number}", "the same question with other numbers", self.renew)
        self.buttons = widgets.HBox([])
        self._pose()
        self.text.add_class(ASKED)
        self.widget = Part([self.text, self.place, self.buttons, self.feedback, self.outcome, self.help, self.kept, Tied()], self.question.text)

    def _pose(self) -> None:
        self.question = self.posed()
        self.found, self.taken, self.shown = None, "", self.keeper.was_shown(self.question)
        self.rung: int = 0
        drawn = getattr(self.question, "sheet", None)
        picture = f"<figure style='margin:0;max-width:620px'>{svg.write_svg(drawn, f'q{id(self)}')}</figure>" if drawn else ""
        head = f"<strong>{escape(self.number.strip())}.</strong> " if self.number else ""
        self.feedback.value = self.outcome.value = self.help.value = ""
        self.own: list[widgets.Button] = []
        self.place.children = self.ask()
        self.buttons.children = self.own
        if not self.examined:
            self.open_help()
        words = told_words(self.question.text, self.question.code)
        self.text.value = f"{paragraph(Markup(f'{head}{escape(self.question.text)}'))}{words}{picture}"  # last: who reads it finds its boxes, not those that go

    def posed(self) -> Posed:
        return bank.pose(self.name, self.seed)

    def judged(self, text: str, middle: str) -> Diagnosis:
        return diagnose(self.question, text, middle)

    def rungs(self) -> tuple[str, ...]:
        """The hints that may be asked for."""
        return ladder(self.question, self.found)

    def open_help(self) -> None:
        """Offer hints, and new numbers where there are any."""
        self.buttons.children = [*self.own, self.hint, *([self.again] if self.question.varies else [])]

    def settle(self) -> None:
        """Take what stands there and has not been taken yet."""

    @property
    def standing(self) -> str:
        """How the last answer stands: a kind of diagnosis, ONCE_SHOWN for one that came right after its whole solution was shown, "" for none."""
        return ONCE_SHOWN if self.found and self.found.right and self.shown else self.found.kind if self.found else ""

    def ask(self) -> list[widgets.Widget]:
        raise NotImplementedError

    def come_back(self) -> None:
        """Put the last answer that was kept into its box again, on its numbers, with what it was told."""
        entry = self.keeper.kept(self.question.code, self.first, but="skipped", fresh=True)
        if entry is None:
            return
        if entry["seed"] != self.seed:
            self.seed = entry["seed"]
            self._pose()
        if entry["kind"] == answers.FRESH or entry["numbers"] != getattr(self.question, "numbers", {}):
            return  # an earlier edition drew other numbers
        with self.keeper.putting_back():
            self.put_back(entry)

    def put_back(self, entry: dict) -> None:
        """Answer as it was answered before."""

    def renew(self) -> None:
        self.seed += 1
        self._pose()
        if not self.examined:  # there the answers that were finished stand
            self.keeper.note(self.question.code, "", answers.FRESH, self.seed)

    def take(self, text: str, middle: str = "") -> Diagnosis | None:
        """Say what an answer tells, keep it, and give it back; None where it was not taken or may not be told."""
        self.found = found = self.judged(text, middle)
        self.taken = text
        self.rung = TOLD.get(found.kind, 0) if isinstance(self, ByNumber) else 0
        self.help.value = ""
        self.feedback.value = told_back(found)
        self.keeper.keep(self.question, text, replace(found, kind=self.standing), middle)
        progress.changed()
        return found

    def next_hint(self) -> None:
        rungs = self.rungs()
        self.rung = min(self.rung + 1, len(rungs))
        if self.rung == len(rungs) and not self.shown and not (self.found and self.found.right):
            self.shown = True
            self.keeper.note(self.question.code, "", answers.SHOWN, self.question.seed)
        self.help.value = status(Markup(f"Hint {self.rung} of {len(rungs)}: {escape(rungs[self.rung - 1])}"))


class ByNumber(Exercise):
    """A number with its unit; a second box for a value on the way appears when the answer alone does not tell. What it would lead to is told."""

    question: Question

    def ask(self) -> list[widgets.Widget]:
        with_unit = "" if self.question.label or not self.question.unit else ", with its unit"
        self.box = box(f"Your answer{self.number}{with_unit}")
        self.box.observe(lambda change: self.check(change["new"]), "value")
        self.middle = box(f"On the way{self.number}: {self.question.middle.name}") if self.question.middle else None
        if self.middle:
            self.middle.observe(lambda change: self.check(self.box.value), "value")
        return [self.box]

    def put_back(self, entry: dict) -> None:
        if self.middle:
            self.middle.value = entry["middle"]
        self.box.value = entry["answer"]

    def check(self, text: str) -> None:
        if not text.strip():
            return
        found = self.take(text, self.middle.value if self.middle else "")
        self.outcome.value = leads_to(self.question, text, f"o{id(self)}")
        if found and found.kind == "ask" and len(self.place.children) == 1:
            self.place.children = [self.box, self.middle]


def leads_to(question: Question, text: str, key: str) -> Markup:
    """What the number typed would lead to, as a sentence and a picture; nothing where that is not known."""
    found = consequence(question, text)
    if not found:
        return Markup("")
    drawn = f"<div style='max-width:400px'>{svg.write_svg(found.sheet, key)}</div>" if found.sheet else ""
    return Markup(f"<figure style='margin:0'><figcaption>{status(Markup(f'⇒ {escape(found.sentence)}'))}</figcaption>{drawn}</figure>")


class ByChoice(Exercise):
    """One of several: radio buttons, and a button to check, so that moving through them by keyboard is not an answer.

    Where a slip was to be found, a box then asks for what comes out without it.
    """

    question: Choice
    mended_taken = ""  # what was typed last for the number without the slip

    def ask(self) -> list[widgets.Widget]:
        options = [(held_together(words_here(option)), place) for place, option in enumerate(self.question.options)]
        self.radio = widgets.RadioButtons(
            options=options, value=None, description=f"Choose one{f' for question{self.number}' if self.number else ''}", style=QUIET, layout={"width": "auto"}
        )
        self.mended: widgets.Text | None = None
        self.mended_said = widgets.HTML()
        if slip := self.question.mended:
            self.mended = box(f"Mended: the {slip.name}, with its unit", "34em")
            self.mended.observe(lambda change: self.mend(slip, change["new"]), "value")
        self.why = box(f"Why is it so{self.number}? It counts once you say", "34em")
        self.why.value = self.keeper.noted(self.question.code, answers.REASON)
        self.why.observe(lambda change: self.reason(change["new"]), "value")
        self.own = [button(f"Check{self.number}", "check the choice", self.check)]
        return [self.radio]

    def put_back(self, entry: dict) -> None:
        self.radio.value = self.question.place(entry["answer"])
        self.check()
        slip, own = self.question.mended, self.mended
        if slip and own and own in self.place.children and (mended := self.keeper.kept(slip.code, self.first)):
            own.value = mended["answer"]

    def check(self) -> None:
        if self.radio.value is None:
            self.feedback.value = alert("Choose one first.")
            return
        found = self.take(str(self.radio.value + 1))
        if found and found.right and self.mended and (slip := self.question.mended):
            asked = widgets.HTML(paragraph(escape(slip.text)))
            self.place.children = [self.radio, asked, self.mended, self.mended_said]
            self.mend(slip, self.mended.value)
        elif found and not self.examined:
            self.place.children = [self.radio, self.why] if found.right and self.keeper.chose_others(self.question) else [self.radio]

    def reason(self, text: str) -> None:
        """Keep why a choice is right that came after others: by chance any comes in the end."""
        if len(text.split()) < FEWEST_WORDS:
            self.outcome.value = alert("Say it in a few words more.") if text.strip() else ""
            return
        self.keeper.note(self.question.code, text[:LONGEST_SENTENCE], answers.REASON)
        self.outcome.value = status(Markup("Kept. Hold it against the sentence above."))
        progress.changed()

    def settle(self) -> None:
        if self.radio.value is not None and str(self.radio.value + 1) != self.taken:
            self.check()

    def mend(self, slip: Question, text: str) -> None:
        if text.strip():
            found = diagnose(slip, text)
            if found.kind == "none":
                whole = f"What is asked for is the {slip.name}: correct the line, and then work on to the last one."
                found = replace(found, message=f"{found.message} {whole}")
            self.mended_said.value = told_back(found)
            if text != self.mended_taken:
                self.keeper.keep(slip, text, found)
            self.mended_taken = text


class ByOrder(Exercise):
    """Steps in order: a list to choose from for each place."""

    question: Sequence

    def ask(self) -> list[widgets.Widget]:
        options = [("choose", None), *((item, place) for place, item in enumerate(self.question.items))]
        self.places = [
            widgets.Dropdown(options=options, value=None, description=f"{_ORDINALS[place]}", style=QUIET, layout={"width": "34em"})
            for place in range(len(self.question.items))
        ]
        self.own = [button(f"Check{self.number}", "check the order", self.check)]
        return self.places

    def put_back(self, entry: dict) -> None:
        for place, item in zip(self.places, self.question.order(entry["answer"])):
            place.value = item
        self.check()

    def check(self) -> None:
        order = self.order()
        if not order:
            self.feedback.value = alert("Give every step one place.")
            return
        self.take(order)

    def settle(self) -> None:
        if self.order() not in ("", self.taken):
            self.check()

    def order(self) -> str:
        """The order chosen, or "" while a step has no place of its own."""
        chosen = [place.value for place in self.places]
        return "" if None in chosen or len({*chosen}) < len(chosen) else " ".join(str(place + 1) for place in chosen)


class ByWords(Exercise):
    """A sentence of one's own, then a model to compare with, point by point. Nobody judges it but the learner."""

    question: Telling

    def ask(self) -> list[widgets.Widget]:
        self.box = widgets.Textarea(description="Your sentence", rows=3, style=QUIET, layout={"width": "44em", "max_width": "98%"})
        self.points = [widgets.Checkbox(description=f"Mine says: {point}", indent=False, layout={"width": "auto"}) for point in self.question.points]
        for point in self.points:
            point.observe(lambda _: self.count(), "value")
        self.own = [button("Keep and compare", f"keep your sentence, at most {LONGEST_SENTENCE} characters, and see a model", self.check)]
        return [self.box]

    def put_back(self, entry: dict) -> None:
        self.box.value = entry["answer"]
        self.check()
        seen = self.keeper.noted(self.question.code, answers.POINTS).split()
        for number, point in enumerate(self.points, start=1):
            point.value = str(number) in seen

    def check(self) -> None:
        found = diagnose(self.question, self.box.value)
        if found.kind == "unread":
            self.feedback.value = alert(found.text)
            return
        self.take(self.question.sentence(self.box.value))
        self.feedback.value = f"{paragraph(Markup(f'You wrote: <q>{escape(self.box.value)}</q>'))}{self.feedback.value}"
        self.place.children = [self.box, *self.points]

    def count(self) -> None:
        missing = [point for box, point in zip(self.points, self.question.points) if not box.value]
        said = f"Not yet in yours: {'; '.join(missing)}. You may write it again." if missing else "All its points are in yours."
        self.outcome.value = status(escape(said))
        self.keeper.note(self.question.code, " ".join(str(number) for number, box in enumerate(self.points, start=1) if box.value), answers.POINTS)


_KINDS = {Choice: ByChoice, Sequence: ByOrder, Telling: ByWords, Question: ByNumber}


def exercise(name: str, seed: int = 1, record: str | None = None, number: str = "", examined: bool = False) -> Exercise:
    """The exercise for a question code or the name of a formula, with what was answered before. Raises InputError."""
    posed: Posed = bank.pose(name, seed)
    made = _KINDS[type(posed)](name, seed, record, number, examined)
    with suppress(InputError, ValueError):  # an answer that cannot be put back leaves an empty box
        made.come_back()
    if record:
        progress.joins(made.question.code, made)
    return made


def practise(name: str, seed: int = 1, record: str | None = None) -> None:
    """One question: practise("flow over a level lip") on a formula, or practise("T04.1", record="answers.json") by its code, with answers kept."""
    try:
        with progress.in_section(progress.YOUR_NUMBERS):
            display(exercise(name, seed, record).widget)
    except InputError as error:
        display(say(error))
