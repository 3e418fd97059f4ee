"""The sections of a topic workbook that are made of questions, each one call: recall, predict and look back, explain, find the slip, exit check.

What a learner types is kept in the answers file, and nowhere else.
"""

from __future__ import annotations

import ipywidgets as widgets
from IPython.display import display

from brimwork.exercise import answers, bank, claims, personal
from brimwork.exercise.choices import Choice, Telling
from brimwork.exercise.diagnosis import ONCE_SHOWN, diagnose
from brimwork.notebook.answer_sheet import write_sheet
from brimwork.notebook.pages import say
from brimwork.notebook.part import Part
from brimwork.notebook.practising import QUIET, ByChoice, Exercise, Keeper, alert, box, button, exercise, paragraph, status
from brimwork.shown import Markup, escape
from brimwork.units import InputError

ANSWERS = "answers.json"
_SURE = ("a guess", "not sure", "fairly sure", "sure")


def _display(made) -> None:
    """Show what `made()` gives, or say what to change."""
    try:
        display(made().widget)
    except InputError as error:
        display(say(error))


# --- several questions --------------------------------------------------------------------------------------------------------------


class Together:
    """Questions numbered from 1; `examined` ones offer no help until they are told to."""

    def __init__(self, codes: tuple[str, ...], seed: int | dict[str, int], record: str | None, examined: bool = False):
        seeds = dict.fromkeys(codes, seed) if isinstance(seed, int) else seed
        self.exercises: list[Exercise] = [exercise(code, seeds[code], record, str(number), examined) for number, code in enumerate(codes, start=1)]
        self.widget = Part([one.widget for one in self.exercises], "\n".join(one.question.text for one in self.exercises))


def recall(*codes: str, seed: int = 1, record: str | None = ANSWERS) -> None:
    """Quick questions from earlier topics, by code: recall("T02.2", "T03.4", "T01.6")."""
    _display(lambda: Together(codes, seed, record))


# --- predict, and look back ---------------------------------------------------------------------------------------------------------


class Prediction:
    """A choice and its reason, kept before any picture; what it tells is said only when one looks back."""

    def __init__(self, code: str, seed: int, record: str | None):
        self.question, self.keeper, self.said = _choice(code, seed), Keeper(record), widgets.HTML()
        options = [(option, place) for place, option in enumerate(self.question.options)]
        self.radio = widgets.RadioButtons(options=options, value=None, description="I predict", style=QUIET, layout={"width": "auto"})
        self.why = box("Because", "40em")
        text = widgets.HTML(paragraph(escape(self.question.text)))
        keep = button("Keep my prediction", "keep the choice and the reason", self.keep)
        self.widget = Part([text, self.radio, self.why, keep, self.said, self.keeper.said], self.question.text)

    def keep(self) -> None:
        if self.radio.value is None or not self.why.value.strip():
            self.said.value = alert("Choose one first." if self.radio.value is None else "Say why first: a few words will do.")
            return
        chosen = str(self.radio.value + 1)
        self.said.value = status(f"✎ You predict: {escape(self.question.options[self.radio.value])} Now go on and see whether it holds.")
        self.keeper.keep(self.question, chosen, diagnose(self.question, chosen), self.why.value)


class LookBack:
    """The last prediction that was kept, beside what is so."""

    def __init__(self, code: str, record: str | None):
        self.code, self.record, self.said = _choice(code, 1).code, record, widgets.HTML()
        self.widget = Part(
            [button("Compare with my prediction", "show what you predicted, and what is so", self.compare), self.said], "Look back at your prediction."
        )

    def compare(self) -> None:
        try:
            kept = [entry for entry in answers.load_answers(self.record or ANSWERS) if entry["exercise"] == self.code]
        except InputError as error:
            self.said.value = alert(f"{error}.")
            return
        if not kept:
            self.said.value = alert("No prediction of yours is kept. Go back to Predict, choose one and say why.")
            return
        found = diagnose(_choice(self.code, kept[-1]["seed"]), kept[-1]["answer"])
        why = f" Because: <q>{escape(kept[-1]['middle'])}</q>." if kept[-1]["middle"].strip() else ""
        mark = "✓" if found.right else "?"
        self.said.value = status(f"<strong>{mark}</strong> {escape(found.echo)}{why} {escape(found.message)}")


def _choice(code: str, seed: int) -> Choice:
    posed = bank.pose(code, seed)
    if not isinstance(posed, Choice):
        raise InputError(f"{code} is no question to choose from, and a prediction needs one: name another code")
    return posed


def predict(code: str, seed: int = 1, record: str | None = ANSWERS) -> None:
    """Choose and say why, before any picture: predict("T04.8")."""
    _display(lambda: Prediction(code, seed, record))


def look_back(code: str, record: str | None = ANSWERS) -> None:
    """Compare the prediction that was kept with what is so: look_back("T04.8")."""
    _display(lambda: LookBack(code, record))


# --- explain, find the slip ---------------------------------------------------------------------------------------------------------


def explain(code: str, record: str | None = ANSWERS) -> None:
    """One sentence in one's own words, then a model sentence: explain("T04.9")."""

    def made() -> Exercise:
        if not isinstance(bank.pose(code), Telling):
            raise InputError(f"{code} does not ask for a sentence: name another code")
        return exercise(code, 1, record)

    _display(made)


class Mending:
    """A wrong solution to mend, which may be skipped."""

    def __init__(self, code: str, record: str | None):
        self.exercise = exercise(code, 1, record)
        if not isinstance(self.exercise, ByChoice):
            raise InputError(f"{code} has no slip to find: name another code")
        self.skip = button("Skip this part", "go on without it; you can open it again", self.turn)
        self.widget = Part([self.exercise.widget, self.skip], self.exercise.question.text)

    def turn(self) -> None:
        """Fold it away, or open it again."""
        skipped = self.exercise.widget in self.widget.children
        self.widget.children = [self.skip] if skipped else [self.exercise.widget, self.skip]
        self.skip.description = "Open this part again" if skipped else "Skip this part"
        if skipped:
            self.exercise.keeper.note(self.exercise.question.code, "", "skipped")


def find_slip(code: str, record: str | None = ANSWERS) -> None:
    """One wrong solution: find the line with the slip, then mend it: find_slip("T04.10")."""
    _display(lambda: Mending(code, record))


# --- exit check ---------------------------------------------------------------------------------------------------------------------


class Exit:
    """The last questions, how sure one is, the receipt of all answers, and a sheet to print. Help and new numbers come once it is finished.

    The last answer to each question counts. What the page says of them is kept in the answers file, so that sheet and receipt say the same.
    """

    def __init__(self, title: str, codes: tuple[str, ...], seed: int | dict[str, int], record: str):
        self.title, self.codes, self.record = title, codes, record
        self.asked, self.said = Together(codes, seed, record, examined=True), widgets.HTML()
        self.verdict: Markup = Markup("")
        self.sure = widgets.RadioButtons(options=_SURE, value=None, description="How sure are you of these answers?", style=QUIET, layout={"width": "auto"})
        finish = button("Finish and show my receipt", "keep how sure you are, and show the receipt code", self.finish)
        sheet = button("Make a sheet to print", "write your answers as a PDF beside this workbook", self.print)
        self.widget = Part([self.asked.widget, self.sure, widgets.HBox([finish, sheet]), self.said], self.asked.widget.plain)

    def finish(self) -> None:
        if self.sure.value is None:
            self.said.value = alert("Say first how sure you are.")
            return
        for one in self.asked.exercises:
            one.settle()
        verdict = self._calibrated([one.standing for one in self.asked.exercises])
        try:
            kept = answers.note(self.record, f"{self.title}: exit check", f"{self.sure.value}. {verdict}", "sure")
            held = answers.load_answers(self.record)
        except InputError as error:
            self.said.value = alert(f"{error}.")
            return
        for one in self.asked.exercises:
            one.open_help()
        self.said.value = self.verdict = status(
            f"{escape(kept.said)} {escape(verdict)} In {escape(self.record)}: {escape(claims.counted_answers(held))}."
            f" <strong>Receipt {escape(kept.receipt)}</strong>: write it down, and hand in that file."
        )

    def _calibrated(self, standing: list[str]) -> str:
        """How sureness and the last answers go together, in at most as many characters as an answers file keeps."""
        sure = _SURE.index(self.sure.value) >= 2
        all_of_them = "Both" if len(standing) == 2 else "All"
        if {*standing} == {"right"}:
            return f"{all_of_them} are right, and you knew it." if sure else f"{all_of_them} are right: you may trust yourself more."
        if {*standing} <= {"right", ONCE_SHOWN}:
            return f"{_numbered(standing, ONCE_SHOWN)} came right only once the solution was shown. Take new numbers, or come back another day."
        missing = f" {_numbered(standing, '')} {'has' if standing.count('') == 1 else 'have'} no answer." if "" in standing else ""
        if sure:
            return f"You were sure, and not all is right yet.{missing} Look at the hints, which are open now."
        return f"Not all is right yet, and you saw that.{missing} Go back to the worked example."

    def print(self) -> None:
        try:
            path = write_sheet(self.title, self.record)
        except InputError as error:
            self.said.value = f"{self.verdict}{alert(f'{error}.')}"
            return
        written = f"Written: {escape(path)}. Open it from the list of files at the left, and print it there."
        self.said.value = f"{self.verdict}{status(written)}"


def _numbered(standing: list[str], kind: str) -> str:
    """The questions that stand so, by number: "Question 1" or "Question 1 and question 2"."""
    named = " and ".join(f"question {number}" for number, each in enumerate(standing, start=1) if each == kind)
    return f"{named[:1].upper()}{named[1:]}"


class OwnCheck:
    """Asks once for the learner's code, keeps it in the answers file, and then asks the last questions on that learner's own numbers."""

    def __init__(self, title: str, codes: tuple[str, ...], record: str):
        self.title, self.codes, self.record = title, codes, record
        self.keeper, self.said = Keeper(record), widgets.HTML()
        for code in codes:
            bank.pose(code)  # a code that is not there is told at once
        self.code = box("Your learner code, or a short name of your own", "34em")
        self.code.observe(lambda change: self.begin(change["new"]), "value")
        why = paragraph("Your code picks your numbers, so that they differ from your neighbour's. You type it once.")
        self.widget = Part([widgets.HTML(why), self.code, self.said], "The last questions, on numbers of your own.")
        self.check: Exit | None = None
        if known := self._known():
            self._ask(known)

    def _known(self) -> str:
        try:
            return answers.learner(answers.load_answers(self.record))
        except InputError:
            return ""

    def begin(self, text: str) -> None:
        """Take the code, keep it, and ask."""
        if not text.strip():
            return
        try:
            learner = personal.learner_code(text)
        except InputError as error:
            self.said.value = alert(f"{error}.")
            return
        self.keeper.note(answers.LEARNER, learner, "learner")
        self._ask(learner)

    def _ask(self, learner: str) -> None:
        self.check = Exit(self.title, self.codes, {code: personal.own_seed(learner, code) for code in self.codes}, self.record)
        self.said.value = status(f"These are the numbers of {escape(learner)}.")
        self.widget.children = [self.said, self.check.widget]


def exit_check(title: str, *codes: str, record: str = ANSWERS) -> None:
    """The last questions of a workbook on a learner's own numbers, with receipt and a sheet to print: exit_check("Overflow", "T04.1", "T04.3")."""
    _display(lambda: OwnCheck(title, codes, record))
