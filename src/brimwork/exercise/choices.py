"""Questions without a number to type: choose one, find the slip in a worked solution, put in order, say it in your own words."""

from __future__ import annotations

import random
import re
from dataclasses import dataclass

from brimwork import units
from brimwork.exercise.question import KnownWay, Question
from brimwork.units import InputError

_LETTERS = "abcdefghij"
LONGEST_SENTENCE = 200  # characters, as long as an answers file keeps


@dataclass(frozen=True)
class Choice:
    """A question to choose from, as posed: `right` is the place of the right option, `original` where each stood in the declaration.

    `mended` is what is asked once the slip is found: the number without it.
    """

    code: str
    seed: int
    text: str
    options: tuple[str, ...]
    right: int
    because: str
    feedback: tuple[str, ...]
    original: tuple[int, ...]
    varies: bool = False
    mended: Question | None = None

    def said(self, place: int) -> str:
        """An option as a sentence, that others may follow it."""
        option = self.options[place]
        return option if option.endswith((".", "?", "!")) else f"{option}."

    def place(self, text: str) -> int:
        """The option that a learner names: its letter, its number from 1, or its text. Raises InputError."""
        wanted = str(text)[:400].strip()
        if wanted in self.options:
            return self.options.index(wanted)
        short = wanted.lower().rstrip(".)")
        place = _LETTERS.find(short) if len(short) == 1 else -1
        if place < 0 and short.isascii() and short.isdigit() and len(short) <= 2:
            place = int(short) - 1
        if not 0 <= place < len(self.options):
            raise InputError(f"there is no such choice: type one of {', '.join(_LETTERS[: len(self.options)])}")
        return place


@dataclass(frozen=True)
class Sequence:
    """Steps to put in order, as posed: `items` are shuffled, `right` names their places in the right order."""

    code: str
    seed: int
    text: str
    items: tuple[str, ...]
    right: tuple[int, ...]
    why: tuple[str, ...]
    varies: bool = False

    def order(self, text: str) -> list[int]:
        """The order that a learner types, such as "3 1 2" or "c a b". Raises InputError."""
        typed = str(text)[:60].lower()
        found = [_LETTERS.index(c) if c.isalpha() else int(c) - 1 for c in re.findall(r"[a-j1-9]", typed)]
        if sorted(found) != list(range(len(self.items))) or re.search(r"[^a-j1-9\s,;.>-]", typed):
            raise InputError(f"each step is wanted once: type, for example, {' '.join(str(place + 1) for place in range(len(self.items)))}")
        return found


@dataclass(frozen=True)
class Choose:
    """Choose one: the right answer with a sentence that says why, and wrong ones, each with a sentence for the learner. `uses` names the formulas asked for."""

    code: str
    text: str
    right: str
    because: str
    wrong: tuple[tuple[str, str], ...]
    uses: tuple[str, ...] = ()

    def pose(self, seed: int) -> Choice:
        order = list(range(len(self.wrong) + 1))
        random.Random(f"{self.code} {seed}").shuffle(order)
        options, feedback = (self.right, *(text for text, _ in self.wrong)), ("", *(said for _, said in self.wrong))
        return Choice(
            self.code, seed, self.text, tuple(options[i] for i in order), order.index(0), self.because, tuple(feedback[i] for i in order), tuple(order)
        )

    @property
    def sentences(self) -> tuple[str, ...]:
        return (self.because, *(said for _, said in self.wrong))


@dataclass(frozen=True)
class FindTheSlip:
    """A worked solution with one slip in it: which line? Every other line has a sentence that says why it holds.

    mend   what comes out without the slip, and what came out with it: ("head", "2.21 mm", "4.73 mm")
    on_way what the line of the slip itself gives without it, where that is a number of the same kind: ("water in the stone", "312 L")
    """

    code: str
    text: str
    lines: tuple[tuple[str, str], ...]
    slip: int
    because: str
    mend: tuple[str, str, str] | None = None
    uses: tuple[str, ...] = ()
    on_way: tuple[str, str] | None = None

    def pose(self, seed: int) -> Choice:
        options = tuple(line for line, _ in self.lines)
        feedback = tuple("" if place == self.slip - 1 else said for place, (_, said) in enumerate(self.lines))
        text, places = f"{self.text} Which line has the slip?", tuple(range(len(options)))
        return Choice(
            self.code, seed, text, options, self.slip - 1, self.because, feedback, places, mended=self._mended(seed, *self.mend) if self.mend else None
        )

    def _mended(self, seed: int, name: str, right: str, slipped: str) -> Question:
        answer = units.parse(right)
        return Question(
            code=f"{self.code} mended",
            seed=seed,
            text=f"Now correct it: what is the {name}?",
            name=name,
            unit=answer.unit,
            given={},
            answer=answer.value,
            slips=(
                KnownWay(units.parse(slipped).value, "That is still the number with the slip in it. Correct the line, and go on from there."),
                *self._line(name),
            ),
            again=lambda changed: answer.value,
            lines=lambda: (self.because,),
            varies=False,
        )

    def _line(self, name: str) -> tuple[KnownWay, ...]:
        if not self.on_way:
            return ()
        what, value = self.on_way
        return (KnownWay(units.parse(value).value, f"That is the {what}, rightly mended. Go on from there: what is the {name}?"),)

    @property
    def sentences(self) -> tuple[str, ...]:
        return (self.because, *(said for place, (_, said) in enumerate(self.lines) if place != self.slip - 1))


@dataclass(frozen=True)
class Order:
    """Steps in their right order; `why` has one sentence for each pair of neighbours: why the first comes before the second."""

    code: str
    text: str
    steps: tuple[str, ...]
    why: tuple[str, ...]
    uses: tuple[str, ...] = ()

    def pose(self, seed: int) -> Sequence:
        places = list(range(len(self.steps)))
        draw = random.Random(f"{self.code} {seed}")
        while places == sorted(places):
            draw.shuffle(places)
        items = tuple(self.steps[place] for place in places)
        return Sequence(self.code, seed, self.text, items, tuple(places.index(step) for step in range(len(places))), self.why)

    @property
    def sentences(self) -> tuple[str, ...]:
        return self.why


@dataclass(frozen=True)
class Telling:
    """Something to say in one's own words, as posed. `points` are what a good sentence has in it."""

    code: str
    seed: int
    text: str
    model: str
    points: tuple[str, ...]
    varies: bool = False

    def sentence(self, text: str) -> str:
        """The sentence that a learner typed, on one line. Raises InputError for none, and for more than an answers file keeps."""
        typed = " ".join(str(text).split())
        if not typed:
            raise InputError("Nothing is written yet: write one sentence first")
        if len(typed) > LONGEST_SENTENCE:
            raise InputError(f"That is {len(typed)} characters, and one sentence takes at most {LONGEST_SENTENCE}: make it shorter")
        return typed


@dataclass(frozen=True)
class Tell:
    """Say it in your own words: what is asked, a model sentence to compare with, and its points."""

    code: str
    text: str
    model: str
    points: tuple[str, ...]
    uses: tuple[str, ...] = ()

    def pose(self, seed: int) -> Telling:
        return Telling(self.code, seed, self.text, self.model, self.points)

    @property
    def sentences(self) -> tuple[str, ...]:
        return (self.text, self.model)
