"""The exercise part of a learner's workbook: own numbers, answers kept and counted, and one button that makes the file to hand in."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import ipywidgets as widgets
from IPython.display import display

from brimwork import system
from brimwork.classroom import hand_in, learner_files
from brimwork.classroom.learner_files import ExerciseInFile as Handed
from brimwork.classroom.numbers import Issued
from brimwork.exercise import answers
from brimwork.exercise.bank import Posed
from brimwork.exercise.choices import Choice, Sequence
from brimwork.exercise.diagnosis import Diagnosis
from brimwork.exercise.question import in_words
from brimwork.notebook.pages import say
from brimwork.notebook.part import Part
from brimwork.notebook.practising import ByChoice, ByNumber, ByOrder, Exercise, alert, box, button, leads_to, paragraph, status, told_back
from brimwork.shown import Markup, escape
from brimwork.units import InputError

KEPT = "kept"  # kind of an answer that nothing was told of
HANDED_IN = "handed in"


class _Set(Exercise):
    """A question on numbers that were handed out. `sheet` is the exercise that it belongs to."""

    def __init__(self, sheet: ClassExercise, issued: Issued, number: str):
        self.sheet, self.issued = sheet, issued
        super().__init__(issued.asked.code, issued.seed, sheet.record, number, examined=True)
        self.shown_before()

    def posed(self) -> Posed:
        question = self.issued.posed
        return replace(question, mended=None) if isinstance(question, Choice) else question

    def judged(self, text: str, middle: str) -> Diagnosis:
        return self.issued.asked.diagnosed(self.question, text, middle)

    def rungs(self) -> tuple[str, ...]:
        return super().rungs() if self.sheet.handed_in else super().rungs()[:-1]

    def open_help(self) -> None:
        """Hints, but for the solution, which comes once the exercise is handed in; never other numbers."""
        self.buttons.children = [*self.own, self.hint]

    @property
    def entries(self) -> list[dict]:
        """The answers to this question so far."""
        held = answers.load_answers(self.sheet.record)
        return [one for one in held if one["exercise"] == self.question.code and one["seed"] == self.question.seed and one["kind"] not in answers.NOTES]

    def shown_before(self) -> None:
        """What was answered before this workbook was opened again."""
        if before := self.entries:
            last = before[-1]
            self.found, self.taken = self.judged(last["answer"], last["middle"]), last["answer"]
            way = f" (on the way {last['middle']})" if last["middle"].strip() else ""
            self.kept.value = paragraph(escape(f"Your last answer: {self._said(last['answer'])}{way}. Answers so far: {len(before)}."), "note")
            self.tell()

    def _said(self, text: str) -> str:
        """An answer as the learner saw it: the option for a choice."""
        options = getattr(self.question, "options", ())
        return options[int(text) - 1] if options and text.isdigit() and 0 < int(text) <= len(options) else text

    def take(self, text: str, middle: str = "") -> Diagnosis | None:
        try:
            used = len(self.entries)
        except InputError as error:
            self.feedback.value = alert(f"{error}.")
            return None
        if self.sheet.tries and used >= self.sheet.tries:
            self.feedback.value = alert(f"Your {self.sheet.tries} {'answer is' if self.sheet.tries == 1 else 'answers are'} used up: this one is not kept.")
            return None
        self.found = found = self.judged(text, middle)
        self.taken = text
        open_now = self.sheet.tells_now
        self.keeper.keep(self.question, text, replace(found, kind=self.standing) if open_now else Diagnosis(KEPT, ""), middle)
        self.help.value = ""
        self.tell(used + 1)
        return found if open_now else None

    def tell(self, used: int = 0) -> None:
        """What may be told of the last answer now."""
        if self.sheet.tells_now and self.found:
            self.feedback.value = told_back(self.found)
            self.open_help()
        elif used:
            most = f" of {self.sheet.tries}" if self.sheet.tries else ""
            self.feedback.value = status(escape(f"Kept as answer {used}{most}: {self._said(self.taken)}."))


class _SetNumber(_Set, ByNumber):
    def ask(self) -> list[widgets.Widget]:
        with_unit = "" if self.question.label or not self.question.unit else ", with its unit"
        self.box = box(f"Your answer{self.number}{with_unit}")
        wanted = self.question.middle if self.issued.asked.way else None
        self.middle = box(f"On the way{self.number}: {wanted.name}, in {in_words(wanted.unit) or 'plain numbers'}", "36em") if wanted else None
        self.own = [button(f"Keep answer{self.number}", "keep what stands in the boxes", self.keep)]
        return [*([self.middle] if self.middle else []), self.box]

    def keep(self) -> None:
        if not self.box.value.strip():
            self.feedback.value = alert("Type an answer first.")
            return
        self.take(self.box.value, self.middle.value if self.middle else "")

    def settle(self) -> None:
        if self.box.value.strip() and self.box.value != self.taken:
            self.keep()

    def tell(self, used: int = 0) -> None:
        super().tell(used)
        if self.sheet.tells_now and self.found:
            self.outcome.value = leads_to(self.question, self.taken, f"o{id(self)}")


class _SetChoice(_Set, ByChoice):
    pass


class _SetOrder(_Set, ByOrder):
    pass


class ClassExercise:
    """All questions of an exercise, and the button to hand in. Nothing is told before it may be."""

    def __init__(self, handed: Handed, folder: Path = Path()):
        self.handed, self.folder, self.tries = handed, folder, handed.tries
        self.record = str(folder / hand_in.record_handed_in(handed))
        answers.load_answers(self.record)  # a damaged file is told at once
        self.handed_in = any(entry["exercise"] == HANDED_IN and entry["answer"] == handed.mark for entry in answers.load_answers(self.record))
        self.said = widgets.HTML()
        self.exercises = [_kind(issued)(self, issued, str(number)) for number, issued in enumerate(handed.questions, start=1)]
        make = button("Make the file to hand in", "write one small file beside this workbook", self.hand_in)
        head = widgets.HTML(paragraph(escape(f"{handed.title}. Learner {handed.learner}, set {handed.mark}.")))
        parts = [head, *(one.widget for one in self.exercises), make, self.said]
        self.widget = Part(parts, "\n".join(one.question.text for one in self.exercises))

    @property
    def tells_now(self) -> bool:
        return self.handed.feedback == "at once" or (self.handed.feedback == "after" and self.handed_in)

    def hand_in(self) -> None:
        for one in self.exercises:
            one.settle()
        try:
            held = answers.load_answers(self.record)
            path, receipt = hand_in.write_hand_in(self.folder, self.handed, held)
            if not self.handed_in:
                answers.note(self.record, HANDED_IN, self.handed.mark, HANDED_IN)
        except InputError as error:
            self.said.value = alert(f"{error}.")
            return
        self.handed_in = True
        missing = [number for number, one in enumerate(self.exercises, start=1) if not one.taken]
        without = f" No answer yet: question {', '.join(map(str, missing))}. You may answer and make the file again." if missing else ""
        self.said.value = status(
            Markup(f"Hand in the file {escape(path.name)}. <strong>Receipt: {escape(receipt)}</strong>. Write the receipt down.{escape(without)}")
        )
        for one in self.exercises:
            one.tell()


def _kind(issued: Issued) -> type[_Set]:
    question = issued.posed
    return _SetChoice if isinstance(question, Choice) else _SetOrder if isinstance(question, Sequence) else _SetNumber


def class_exercise(text: str) -> None:
    """The exercise that an instructor handed out, from the lines that stand in the learner's workbook."""
    try:
        handed = learner_files.read_learner_file(text)
        system.use(handed.units)
        display(ClassExercise(handed).widget)
    except InputError as error:
        display(say(error))
