"""What a page says in a paragraph, and the keeper of a learner's answers, which says in one whether they are kept."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager

import ipywidgets as widgets

from brimwork import system
from brimwork.design.typed.wording import worded
from brimwork.exercise import answers, claims
from brimwork.exercise.diagnosis import Diagnosis
from brimwork.shown import Markup, attribute, escape, read_here
from brimwork.units import InputError

ROUNDS = 100  # seeds that "new numbers" may go through from the first on


def words_here(text: str) -> str:
    """Our own words, which are those of the UK, in those of the system in use."""
    return worded(text, "US" if system.current() == system.FEET else "UK")


def paragraph(markup: Markup, role: str = "") -> Markup:
    """A paragraph as widgets show it, its lines as close as those of the page; `role` is what a screen reader makes of it."""
    meant = f" role='{attribute(role)}'" if role else ""
    return Markup(f"<p{meant} style='line-height:1.45;margin:.35em 0'>{read_here(markup, words_here)}</p>")


def status(markup: Markup) -> Markup:
    return paragraph(markup, "status")


def alert(text: str) -> Markup:
    return paragraph(escape(text), "alert")


class Keeper:
    """Keeps answers in the learner's file, and says so or says why not."""

    def __init__(self, path: str | None):
        self.path, self.said, self._quiet = path, widgets.HTML(), False

    @contextmanager
    def putting_back(self) -> Iterator[None]:
        """What is answered meanwhile was kept before, and is not kept again."""
        before, self._quiet = self._quiet, True
        try:
            yield
        finally:
            self._quiet = before

    def kept(self, name: str | tuple[str, ...], first: int, count: int = ROUNDS, but: str = answers.SHOWN, fresh: bool = False) -> dict | None:
        """The last entry of that name, or of several, on numbers from the seed `first` on, leaving out those of the kind `but`; None where nothing was kept.

        With `fresh` it may be that numbers were drawn which have no answer yet.
        """
        left_out = (but, *(kind for kind in answers.NOTES if not fresh or kind != answers.FRESH))
        names = (name,) if isinstance(name, str) else name
        if not self.path:
            return None
        try:
            held = answers.load_answers(self.path)
        except InputError:
            return None
        return next(
            (one for one in reversed(held) if one["exercise"] in names and one["kind"] not in left_out and first <= one["seed"] < first + count),
            None,
        )

    def noted(self, name: str, kind: str) -> str:
        """The last note of that kind under a name, or nothing."""
        try:
            held = answers.load_answers(self.path) if self.path else []
        except InputError:
            return ""
        return next((one["answer"] for one in reversed(held) if one["exercise"] == name and one["kind"] == kind), "")

    def chose_others(self, question) -> bool:
        """Whether something else was chosen today for a question that may be guessed."""
        try:
            held = answers.load_answers(self.path) if self.path and claims.wants_reason(question) else []
        except InputError:
            return False
        return claims.chose_others(question.code, held, held[-1]["at"][:10]) if held else False

    def keep(self, question, text: str, found: Diagnosis, middle: str = "") -> None:
        self._tell(lambda path: answers.record(path, question, text, found, middle))

    def note(self, name: str, text: str, kind: str, seed: int = 1) -> None:
        self._tell(lambda path: answers.note(path, name, text, kind, seed))

    def was_shown(self, question) -> bool:
        """Whether the file says that the whole solution of this question was shown on these numbers."""
        try:
            return answers.was_shown(answers.load_answers(self.path), question.code, question.seed) if self.path else False
        except InputError:
            return False

    def _tell(self, act: Callable[[str], answers.Kept]) -> None:
        if not self.path or self._quiet:
            return
        try:
            kept = act(self.path)
        except InputError as error:
            self.said.value = alert(f"This answer is not kept: {error}.")
            return
        self.said.value = paragraph(escape(f"{kept.said} Kept in {self.path}; receipt {kept.receipt}.".strip()), "note")
