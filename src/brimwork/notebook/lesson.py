"""The sections of a topic workbook that are made of questions, each one call: recall, predict and look back, explain, find the slip, exit check.

What a learner types is kept in the answers file, and nowhere else.
"""

from __future__ import annotations

from contextlib import suppress

import ipywidgets as widgets
from IPython.display import display

from brimwork.exercise import answers, bank, claims, personal
from brimwork.exercise.choices import Choice, Telling
from brimwork.exercise.diagnosis import ONCE_SHOWN, diagnose
from brimwork.notebook import contents, progress, recalling
from brimwork.notebook.answer_sheet import write_sheet
from brimwork.notebook.kept import words_here
from brimwork.notebook.pages import say
from brimwork.notebook.part import Part
from brimwork.notebook.practising import ANSWERS, QUIET, ByChoice, Exercise, Keeper, alert, box, button, exercise, paragraph, status
from brimwork.notebook.tied import ASKED, Tied
from brimwork.notebook.to_keep import link_to
from brimwork.notebook.word_list import told_words, words_of_lesson
from brimwork.shown import Markup, escape, held_together
from brimwork.spellings import nearest
from brimwork.units import InputError

_SURE = ("a guess", "not sure", "fairly sure", "sure")


def _display(made, section: str) -> None:
    """Show what `made()` gives, or say what to change; its questions count in that section."""
    try:
        with progress.in_section(section):
            display(made().widget)
    except InputError as error:
        display(say(error))


# --- several questions --------------------------------------------------------------------------------------------------------------


class Together:
    """Questions numbered from 1; `examined` ones offer no help until they are told to."""

    def __init__(self, codes: tuple[str, ...], seed: int | dict[str, int], record: str | None, examined: bool = False, plain: str = ""):
        seeds = dict.fromkeys(codes, seed) if isinstance(seed, int) else seed
        self.exercises: list[Exercise] = [exercise(code, seeds[code], record, str(number), examined) for number, code in enumerate(codes, start=1)]
        self.widget = Part([one.widget for one in self.exercises], plain or "\n".join(one.question.text for one in self.exercises))


class Recalled:
    """Questions of earlier topics, and before them the words of the lesson that they begin, folded."""

    def __init__(self, codes: tuple[str, ...], seed: int, record: str | None, workbook: str, plain: str = ""):
        self.asked = Together(codes, seed, record, plain=plain)
        words = [words_of_lesson(workbook)] if workbook else []
        self.widget = Part([*words, self.asked.widget], self.asked.widget.plain)


def recall(*codes: str, before: str = "", seed: int = 0, record: str | None = ANSWERS) -> None:
    """Three questions from the workbooks before one, others with other numbers on another day: recall(before="overflow").

    With codes these are asked, with other numbers on another day, or on the numbers of a `seed`: recall("T02.2", "T03.4", "T01.6").
    """
    _display(lambda: Recalled(*_recalled(codes, before, seed, record), record, before or contents.recalling(codes), "" if codes else _DRAWN), progress.RECALL)


_DRAWN = "Three questions from earlier topics, drawn when this cell is run, with other numbers on another day."


def _recalled(codes: tuple[str, ...], before: str, seed: int, record: str | None) -> tuple[tuple[str, ...], int]:
    """The codes to ask, and the seed of their numbers. Raises InputError."""
    if bool(codes) == bool(before):
        raise InputError('either codes of questions are wanted, or a workbook: recall(before="overflow")')
    if before and (before not in contents.ORDER or before == contents.ORDER[0]):
        raise InputError(f"no topic stands before '{before}'.{nearest(before, contents.ORDER[1:])} Type one of {', '.join(contents.ORDER[1:])}")
    first = recalling.band(before or " ".join(codes))
    try:
        held = answers.load_answers(record) if record else []
    except InputError:
        held = []  # a damaged file is told, and set aside, with the first answer
    turn = recalling.round_now(held, first, len(codes) or recalling.COUNT)
    return codes or recalling.recalled_in(before, turn), seed or first + turn * recalling.STRIDE


def puzzle(code: str, record: str | None = ANSWERS) -> None:
    """The puzzle of a picture, with a box for its answer: puzzle("T04.11")."""
    _display(lambda: exercise(code, 1, record), progress.EXPLORE)


# --- predict, and look back ---------------------------------------------------------------------------------------------------------


class Prediction:
    """A choice and its reason, kept before any picture; what it tells is said only when one looks back."""

    def __init__(self, code: str, seed: int, record: str | None):
        self.question, self.keeper, self.said, self.standing = _choice(code, seed), Keeper(record), widgets.HTML(), ""
        options = [(held_together(words_here(option)), place) for place, option in enumerate(self.question.options)]
        self.radio = widgets.RadioButtons(options=options, value=None, description="I predict", style=QUIET, layout={"width": "auto"})
        self.why = box("Because", "40em")
        text = widgets.HTML(f"{paragraph(escape(self.question.text))}{told_words(self.question.text, self.question.code)}")
        keep = button("Keep my prediction", "keep the choice and the reason", self.keep)
        text.add_class(ASKED)
        self.widget = Part([text, self.radio, self.why, keep, self.said, self.keeper.said, Tied()], self.question.text)
        if entry := self.keeper.kept(self.question.code, seed):
            with suppress(InputError), self.keeper.putting_back():
                self.radio.value, self.why.value = self.question.place(entry["answer"]), entry["middle"]
                self.keep()
        progress.joins(self.question.code, self)

    def keep(self) -> None:
        if self.radio.value is None or not self.why.value.strip():
            self.said.value = alert("Choose one first." if self.radio.value is None else "Say why first: a few words will do.")
            return
        chosen = str(self.radio.value + 1)
        self.said.value = status(Markup(f"✎ You predict: {escape(self.question.said(self.radio.value))} Now go on and see whether it holds."))
        self.keeper.keep(self.question, chosen, diagnose(self.question, chosen), self.why.value)
        self.standing = "kept"
        progress.predicted(self.question.code)


class LookBack:
    """The last prediction that was kept, beside what is so."""

    def __init__(self, code: str, record: str | None):
        self.code, self.record, self.said = _choice(code, 1).code, record, widgets.HTML()
        self.widget = Part(
            [button("Compare with my prediction", "show what you predicted, and what is so", self.compare), self.said], "Look back at your prediction."
        )
        if Keeper(record).kept(self.code, 1):
            self.compare()

    def compare(self) -> None:
        try:
            kept = [entry for entry in answers.load_answers(self.record or ANSWERS) if entry["exercise"] == self.code]
        except InputError as error:
            self.said.value = alert(f"{error}.")
            return
        if not kept:
            self.said.value = alert("No prediction of yours is kept. Go back to Predict, choose one and say why.")
            return
        question = _choice(self.code, kept[-1]["seed"])
        found = diagnose(question, kept[-1]["answer"])
        why = f" Because: <q>{escape(kept[-1]['middle'])}</q>." if kept[-1]["middle"].strip() else ""
        so = "" if found.right else f"<br><strong>It is so:</strong> {escape(question.said(question.right))} {escape(question.because)}"
        self.said.value = status(Markup(f"<strong>{'✓' if found.right else '?'}</strong> {escape(found.echo)}{why} {escape(found.message)}{so}"))


def _choice(code: str, seed: int) -> Choice:
    posed = bank.pose(code, seed)
    if not isinstance(posed, Choice):
        raise InputError(f"{code} is no question to choose from, and a prediction needs one: name another code")
    return posed


def predict(code: str, seed: int = 1, record: str | None = ANSWERS) -> None:
    """Choose and say why, before any picture: predict("T04.8")."""
    _display(lambda: Prediction(code, seed, record), progress.PREDICT)


def look_back(code: str, record: str | None = ANSWERS) -> None:
    """Compare the prediction that was kept with what is so: look_back("T04.8")."""
    _display(lambda: LookBack(code, record), "")


# --- explain, find the slip ---------------------------------------------------------------------------------------------------------


def explain(code: str, record: str | None = ANSWERS) -> None:
    """One sentence in one's own words, then a model sentence: explain("T04.9")."""

    def made() -> Exercise:
        if not isinstance(bank.pose(code), Telling):
            raise InputError(f"{code} does not ask for a sentence: name another code")
        return exercise(code, 1, record)

    _display(made, progress.EXPLAIN)


class Mending:
    """A wrong solution to mend, which may be skipped."""

    def __init__(self, code: str, record: str | None):
        self.exercise = exercise(code, 1, record)
        if not isinstance(self.exercise, ByChoice):
            raise InputError(f"{code} has no slip to find: name another code")
        self.skip = button("Skip this part", "go on without it; you can open it again", self.turn)
        self.widget = Part([self.exercise.widget, self.skip], self.exercise.question.text)
        self.skipped = False
        if (entry := self.exercise.keeper.kept((code, f"{code} mended"), 1)) and entry["kind"] == "skipped":
            with self.exercise.keeper.putting_back():
                self.turn()
        progress.joins(self.exercise.question.code, self)

    @property
    def standing(self) -> str:
        return "skipped" if self.skipped else self.exercise.standing

    def turn(self) -> None:
        """Fold it away, or open it again."""
        self.skipped = skipped = self.exercise.widget in self.widget.children
        self.widget.children = [self.skip] if skipped else [self.exercise.widget, self.skip]
        self.skip.description = "Open this part again" if skipped else "Skip this part"
        if skipped:
            self.exercise.keeper.note(self.exercise.question.code, "", "skipped")
        progress.changed()


def find_slip(code: str, record: str | None = ANSWERS) -> None:
    """One wrong solution: find the line with the slip, then correct it: find_slip("T04.10")."""
    _display(lambda: Mending(code, record), progress.SLIP)


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
        self._come_back()

    def finish(self) -> None:
        if self.sure.value is None:
            self.said.value = alert("Say first how sure you are.")
            return
        for one in self.asked.exercises:
            one.settle()
        verdict = self._calibrated([one.standing for one in self.asked.exercises])
        try:
            kept = answers.note(self.record, self._name, f"{self.sure.value}. {verdict}", "sure")
            held = answers.load_answers(self.record)
        except InputError as error:
            self.said.value = alert(f"{error}.")
            return
        self._finished(kept.said, verdict, held, kept.receipt)

    def _finished(self, said: str, verdict: str, held: list[dict], receipt: str) -> None:
        for one in self.asked.exercises:
            one.open_help()
        self.said.value = self.verdict = status(
            Markup(
                f"{escape(said)} {escape(verdict)} In {escape(self.record)}: {escape(claims.counted_answers(held))}."
                f" <strong>Receipt {escape(receipt)}</strong>: write it down, and hand in the file {link_to(self.record)}."
            )
        )

    def _come_back(self) -> None:
        """Once finished it stands finished, with the receipt of all that is in the file by now."""
        try:
            held = answers.load_answers(self.record)
        except InputError:
            return
        finished = next((one for one in reversed(held) if one["exercise"] == self._name and one["kind"] == "sure"), None)
        sure, _, verdict = finished["answer"].partition(". ") if finished else ("", "", "")
        if sure in _SURE:
            self.sure.value = sure
            self._finished("", verdict, held, answers.receipt(held, answers.learner(held)))

    @property
    def _name(self) -> str:
        return f"{self.title}: exit check"

    def _calibrated(self, standing: list[str]) -> str:
        """How sureness and the last answers go together, in at most as many characters as an answers file keeps."""
        sure = _SURE.index(self.sure.value) >= 2
        all_of_them = "Both" if len(standing) == 2 else "All"
        if {*standing} == {"right"}:
            return f"{all_of_them} are right, and you were sure." if sure else f"{all_of_them} are right: you may trust yourself more."
        if {*standing} <= {"right", ONCE_SHOWN}:
            return f"{_numbered(standing, ONCE_SHOWN)} came right only once the solution was shown. Take new numbers, or come back another day."
        missing = f" {_numbered(standing, '')} {'has' if standing.count('') == 1 else 'have'} no answer." if "" in standing else ""
        if sure:
            return f"You were {self.sure.value}, and not all is right yet.{missing} Look at the hints, which are open now."
        return f"Not all is right yet, and you saw that.{missing} Go back to the worked example."

    def print(self) -> None:
        try:
            path = write_sheet(self.title, self.record)
        except InputError as error:
            self.said.value = f"{self.verdict}{alert(f'{error}.')}"
            return
        written = Markup(f"Written beside this workbook: {link_to(path)}. Open it, and print it.")
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
        self.other = button("This is not my code", "type another code; the questions then come with its numbers", self.ask_again)
        why = paragraph(Markup("Your code picks your numbers, so that they differ from your neighbour's. You type it once."))
        self.widget = Part([widgets.HTML(why), self.code, self.said], "The last questions, on numbers of your own.")
        self.check: Exit | None = None
        progress.joins(self._begin, self)
        if known := self._known():
            self._ask(known)

    standing = ""  # as long as no code is typed the check counts as one question that is not begun

    @property
    def _begin(self) -> str:
        return f"{self.title}: begin"

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

    def ask_again(self) -> None:
        """Show the box for the code once more."""
        self.code.value = ""
        self.widget.children = [self.said, self.code, *([self.check.widget] if self.check else [])]

    def _ask(self, learner: str) -> None:
        with progress.in_section(progress.EXIT):
            progress.leaves(self._begin)
            self.check = Exit(self.title, self.codes, {code: personal.own_seed(learner, code) for code in self.codes}, self.record)
        self.said.value = status(Markup(f"These are the numbers of {escape(learner)}."))
        self.widget.children = [self.said, self.other, self.check.widget]


def exit_check(title: str, *codes: str, record: str = ANSWERS) -> None:
    """The last questions of a workbook on a learner's own numbers, with receipt and a sheet to print: exit_check("Overflow", "T04.1", "T04.3")."""
    _display(lambda: OwnCheck(title, codes, record), progress.EXIT)
