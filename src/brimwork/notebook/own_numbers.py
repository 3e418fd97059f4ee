"""A question on a learner's own numbers: a rough estimate first, then a value on the way and the answer, each told at once."""

from __future__ import annotations

import ipywidgets as widgets
from IPython.display import display

from brimwork import topics, typeset, units
from brimwork.exercise.blanks import answered, blank
from brimwork.exercise.diagnosis import Diagnosis, read_answer
from brimwork.exercise.pieces import Worked, worked
from brimwork.exercise.question import in_words
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import progress
from brimwork.notebook.pages import say
from brimwork.notebook.practising import ByNumber, alert, box, status, told_back
from brimwork.shown import Markup, escape
from brimwork.spellings import nearest
from brimwork.units import InputError

_FAR = 3.0  # an answer that many times the estimate, or less than that part of it, does not go with it
USEFUL = 2.0  # an estimate within this would have caught most slips


class OwnNumbers(ByNumber):
    """`way` is the letter of the value on the way: a quantity that the working of the formula names."""

    def __init__(self, name: str, way: str, seed: int, record: str | None):
        self.way = way
        super().__init__(name, seed, record)

    def ask(self) -> list[widgets.Widget]:
        [answer] = super().ask()
        self.worked, self.step = _on_the_way(self.name, self.way, self.question.letters)
        self.guess = 0.0
        self.way_found: Diagnosis | None = None
        self.earlier: dict[int, float] = {}
        self.estimate = box(f"Rough estimate first{', with its unit' if self.question.unit else ''}", "30em")
        self.estimate.observe(lambda change: self.guessed(change["new"]), "value")
        piece = self.worked.pieces[self.step]
        name = f"{piece.key}, {QUANTITIES[piece.key].plain_name}" if piece.named else typeset.write_tree(piece.written, typeset.PLAIN)
        self.way_box = box(f"On the way: {name}, in {in_words(self.worked.asked_in(piece)) or 'plain numbers'}", "36em")
        self.way_box.observe(lambda change: self.check_way(change["new"]), "value")
        self.guess_said, self.way_said = widgets.HTML(), widgets.HTML()
        self.rest = [self.way_box, self.way_said, answer]
        return [self.estimate, self.guess_said]

    def come_back(self) -> None:
        """Estimate and value on the way come back too, whether an answer followed or not."""
        super().come_back()
        guess = self.keeper.kept(self._estimate_name, self.seed, 1)
        if guess and not self.guess:
            self._put_back(guess)

    def put_back(self, entry: dict) -> None:
        if guess := self.keeper.kept(self._estimate_name, self.seed, 1):
            self._put_back(guess)
        super().put_back(entry)

    def _put_back(self, guess: dict) -> None:
        with self.keeper.putting_back():
            self.estimate.value = guess["answer"]
            if way := self.keeper.kept(blank(self.worked, self.step, self.seed).code, self.seed, 1):
                self.way_box.value = way["answer"]

    @property
    def _estimate_name(self) -> str:
        return f"{self.question.code}: estimate"

    def guessed(self, text: str) -> None:
        """Take the estimate; only then the other boxes appear."""
        if not text.strip():
            return
        try:
            self.guess = (
                read_answer(self.question, text).value
                if self.question.unit == "cur"
                else units.read(
                    units.with_point(text), self.question.unit, "your estimate", f"25 {self.question.unit}" if self.question.unit else "0.5", way=str
                )
            )
        except InputError as error:
            self.guess_said.value = alert(f"{error}.")
            return
        self.guess_said.value = status(Markup(f"Kept: {escape(self.question.typed(self.guess))}. Now work it out, and type the value on the way first."))
        self.keeper.note(self._estimate_name, text, "estimate", self.seed)
        self.place.children = [self.estimate, self.guess_said, *self.rest]

    def check_way(self, text: str) -> None:
        if not text.strip():
            return
        self.way_found = found = answered(self.worked, self.step, self.seed, text, {})
        question = blank(self.worked, self.step, self.seed)
        self.way_said.value = told_back(found)
        self.earlier = {self.step: read_answer(question, text).value} if found.kind not in ("unread", "no unit", "other unit") else {}
        self.keeper.keep(question, text, found)

    def check(self, text: str) -> None:
        super().check(text)
        if text.strip() and self.found:
            last = len(self.worked.pieces) - 1
            follows = answered(self.worked, last, self.seed, text, self.earlier)
            if follows.kind == "carried":
                self.feedback.value = told_back(Diagnosis("carried", "This follows rightly from your value on the way. Correct that one first.", follows.echo))
            beside = " ".join(filter(None, (self._beside_way(self.found), self._beside_estimate(self.found, text))))
            self.feedback.value += status(escape(beside)) if beside else ""

    def _beside_way(self, found: Diagnosis) -> str:
        if found.right or found.kind in ("unread", "no unit", "other unit"):
            return ""
        if self.way_found is None:
            return "Type the value on the way too: it shows where to look."
        return "Your value on the way is right, so look at what comes after it." if self.way_found.right else ""

    def _beside_estimate(self, found: Diagnosis, text: str) -> str:
        """How answer and estimate go together."""
        if not self.guess or found.kind in ("unread", "no unit", "other unit"):
            return ""
        ratio = read_answer(self.question, text).value / self.guess
        shown = self.question.typed(self.guess)
        if found.right:
            near = 1 / USEFUL <= ratio <= USEFUL
            end = "near enough to catch a slip" if near else "too far off to catch a slip. Think of a number that you know, and start from that"
            return f"Your estimate was {shown}: {end}."
        return f"That is far from your own estimate of {shown}. Which of the two do you trust?" if not 1 / _FAR < ratio < _FAR else ""


def _on_the_way(name: str, way: str, letters: dict[str, float]) -> tuple[Worked, int]:
    """The working, and the place in it of the letter asked for; by default the last line but one. Raises InputError."""
    formula = topics.find(name)
    found = worked(formula, formula.only(letters))
    keys = [piece.key for piece in found.pieces[:-1]]
    if not keys:
        raise InputError(f"'{formula.name}' is worked in one line and has nothing on the way: use practise(\"{formula.name}\")")
    if way and way not in keys:
        raise InputError(f"the working of '{formula.name}' has no '{way}' on the way.{nearest(way, keys)} It has {', '.join(keys)}")
    return found, keys.index(way) if way else len(keys) - 1


def your_numbers(name: str, way: str = "", seed: int = 1, record: str | None = "answers.json") -> None:
    """Estimate, value on the way and answer for a formula on fresh numbers: your_numbers("total dynamic head", way="v")."""
    try:
        with progress.in_section(progress.YOUR_NUMBERS):
            own = OwnNumbers(topics.find(name).name, way, seed, record)
            own.come_back()
            progress.joins(own.question.code, own)
            display(own.widget)
    except InputError as error:
        display(say(error))
    except ValueError as error:
        display(say(InputError(str(error))))
