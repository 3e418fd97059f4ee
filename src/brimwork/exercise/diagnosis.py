"""What an answer says: right, a known slip, a slip of units, or plainly no diagnosis. Silence beats a wrong accusation.

Likely explanations come first: the right number, a known slip, a unit of the answer taken for another; then the unit of one given value, which is only ever
a guess and is worded "either ... or ...". A known slip together with a unit is put as a question, and only where the number would be in the unit asked for or
in that of a given value: with every slip in every unit, some number always fits. It comes last, unless the unit typed is the learner's own choice, which
makes that unit the likelier slip. Rarer explanations get a narrower band.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from brimwork import dimensions, units
from brimwork.exercise import unit_slips
from brimwork.exercise.choices import Choice, Sequence, Telling
from brimwork.exercise.question import TOLERANCE, Known, Question, in_words
from brimwork.exercise.unit_slips import Taken
from brimwork.units import InputError, Reading, parse, with_point

NARROW = 0.5  # share of the band for two slips at once and for the unit of a given value
MOST_GUESSES = 3

ONCE_SHOWN = "right once shown"  # as an answers file keeps a right answer that came after the whole solution
KINDS = ("right", "slip", "unit", "slip and unit", "input", "ask", "carried", "none", "no unit", "other unit", "unread", "told")
CLOSE_BY = 1.25  # as a ratio: within this the size of an answer is about right


@dataclass(frozen=True)
class Diagnosis:
    """`kind` is one of KINDS; `echo` is how the answer was read; `good` says what is right about it; `slip` counts the known slips from 0."""

    kind: str
    message: str
    echo: str = ""
    good: str = ""
    slip: int | None = None

    @property
    def right(self) -> bool:
        return self.kind == "right"

    @property
    def text(self) -> str:
        return " ".join(filter(None, (self.echo, self.good, self.message)))


def diagnose(question: Question | Choice | Sequence | Telling, text: str, middle: str = "") -> Diagnosis:
    """Read an answer with the bounded reader and say what it tells. `middle` is the value on the way, where the question asks for one. Never raises."""
    if isinstance(question, Choice):
        return _chosen(question, text)
    if isinstance(question, Sequence):
        return _ordered(question, text)
    if isinstance(question, Telling):
        return _told(question, text)
    try:
        reading = read(question, text)
    except InputError as error:
        return Diagnosis("unread", f"I could not read that: {error}.")
    echo = f"I read this as {reading}{' ' + question.label if question.label else ''}."
    trouble = _wrong_kind(question, reading, text)
    if trouble:
        return Diagnosis("other unit" if reading.unit else "no unit", trouble, echo)
    if _near(question, reading.value, question.answer):
        return Diagnosis("right", _right(question, reading), echo)
    good = what_is_right(question, reading.value)
    kind, message, slip = _explain(question, reading, middle)
    return Diagnosis(kind, message, echo, good, slip)


def read(question: Question, text: str) -> Reading:
    """The answer as number and unit; the question's word ("bags") counts as a unit, and money needs none. Raises InputError."""
    if isinstance(text, str) and len(text) <= units.LONGEST_TEXT and question.label:
        plain = text.strip()
        for word in _words(question.label):
            if plain.casefold().endswith(word):
                return parse(with_point(plain[: len(plain) - len(word)]))
    reading = parse(with_point(text))
    if question.unit == "cur" and not reading.unit:
        return Reading(reading.value, units.unit("cur").dimension, reading.number, "cur")
    return reading


@cache
def _words(label: str) -> tuple[str, ...]:
    """The word of a question as people type it, longest first."""
    word = label.casefold()
    return tuple(sorted({word, word.removesuffix("s"), word.partition("(")[0]}, key=len, reverse=True))


def _called(reading: Reading) -> str:
    """What was typed, in a learner's words: "a volume, in L"."""
    name = dimensions.kind(reading.dimension)
    if name.startswith("a quantity in "):
        return f"a quantity in {reading.unit}"
    return f"{name}, in {reading.unit}" if reading.dimension != dimensions.NUMBER else name


def _wrong_kind(question: Question, reading: Reading, text: str) -> str:
    wanted = units.unit(question.unit)
    if not reading.unit and question.unit:
        return f"The unit is missing. Type one, such as {in_words(question.unit)}."
    if reading.dimension != wanted.dimension:
        asked = f"measured in {in_words(question.unit)}" if question.unit else "a plain number"
        return f"That is {_called(reading)}; the {question.name} is {asked}. Look at what you multiplied by what."
    if question.strict and not _same_unit(reading.unit, question.unit):
        return f"Changing the unit is the question: type the answer in {question.unit}."
    if not question.label:
        try:
            units.read(f"1 {reading.unit}" if reading.unit else "1", question.unit, "that")
        except InputError as error:
            return f"I could not use that: {error}."
    return ""


def _right(question: Question, reading: Reading) -> str:
    answer = question.typed(question.answer)
    if reading.unit and question.unit and reading.unit != question.unit and not _same_unit(reading.unit, question.unit):
        return f"Right: {answer}. You typed it in another unit, which is the same amount."
    return f"Right: {answer}."


def _same_unit(a: str, b: str) -> bool:
    return units.unit(a) == units.unit(b)


def _near(question: Question, value: float, target: float, share: float = 1.0) -> bool:
    return abs(value - target) <= question.band(target) * share


def what_is_right(question: Question, value: float) -> str:
    """The first rung of help: kind of unit, and size, without giving the answer away."""
    kind = "It is a plain number, as it should be" if not question.unit else "The unit is of the right kind"
    if question.answer == 0 or value == 0 or value * question.answer < 0:
        return f"{kind}; the sign or the zero is not yet right." if value * question.answer <= 0 else f"{kind}."
    ratio = value / question.answer
    if 1 / CLOSE_BY <= ratio <= CLOSE_BY:
        return f"{kind}, and the size is about right, but a little {'high' if ratio > 1 else 'low'}."
    much = "more than ten times " if ratio > 10 or ratio < 0.1 else ""
    return f"{kind}. The number is {much}too {'large' if ratio > 1 else 'small'}."


def _explain(question: Question, reading: Reading, middle: str) -> tuple[str, str, int | None]:
    """Kind, message and number of the slip for an answer that is read and not right."""
    found = _slips(question, reading.value, 1.0)
    if len(found) > 1 and question.middle and len({slip.number for _, slip in found}) < len(found):
        return _by_middle(question, found, middle)
    if found:
        return "slip", f"Could it be this? {found[0][1].feedback}", found[0][0]
    used = (question.unit, *(given.unit for given in question.given.values()))
    alternatives = tuple(unit_slips.taken(reading.value, reading.unit, used))
    for other in alternatives:
        if _near(question, other.value, question.answer):
            return "unit", f"The working may be right: {other.sentence}.", None
    both, one = _of_both(question, [other for other in alternatives if other.of(used)]), _of_an_input(question, reading.value)
    own_unit = not any(_same_unit(reading.unit, unit) for unit in used)
    return (both or one if own_unit else one or both) or ("none", _SILENT, None)


def _of_both(question: Question, alternatives: list[Taken]) -> tuple[str, str, int | None] | None:
    """A known slip whose number was then typed in another unit."""
    for other in alternatives:
        for place, slip in _slips(question, other.value, NARROW):
            return "slip and unit", f"Perhaps two things at once. First, {other.question} And could it be this? {slip.feedback}", place
    return None


def _slips(question: Question, value: float, share: float) -> list[tuple[int, Known]]:
    """Known slips that give this number, the nearest first, with their place."""
    near = [(place, slip) for place, slip in enumerate(question.slips) if _near(question, value, slip.number, share)]
    return sorted(near, key=lambda found: abs(value - found[1].number))


def _by_middle(question: Question, found: list[tuple[int, Known]], text: str) -> tuple[str, str, int | None]:
    wanted = question.middle
    if not text.strip():
        return (
            "ask",
            f"More than one slip gives this number. What did you get on the way for the {wanted.name}? Type it, in {in_words(wanted.unit) or 'plain numbers'}.",
            None,
        )
    try:
        value = units.read(text, wanted.unit, wanted.name)
    except InputError as error:
        return "ask", f"I could not read the {wanted.name}: {error}.", None
    for place, slip in found:
        at = wanted.number if slip.middle is None else slip.middle
        if abs(value - at) <= TOLERANCE * abs(at):
            return "slip", f"Could it be this? {slip.feedback}", place
    return "none", _SILENT, None


_SILENT = "I do not know which slip this is. Go through the working line by line, with the unit written beside each number."


def _of_an_input(question: Question, value: float) -> tuple[str, str, int | None] | None:
    guesses = [said for number, said in unit_slips.of_an_input(question) if _near(question, value, number, NARROW)]
    if not guesses:
        return None
    guesses = guesses[:MOST_GUESSES]
    last = guesses.pop() if len(guesses) > 1 else "it is a slip that I do not know"
    return "input", f"Either {', or '.join(guesses)}, or {last}. Check the unit of each given value.", None


# --- choosing and ordering ----------------------------------------------------------------------------------------------------------


def _chosen(question: Choice, text: str) -> Diagnosis:
    try:
        place = question.place(text)
    except InputError as error:
        return Diagnosis("unread", f"I could not read that: {error}.")
    echo = f"You chose: {question.options[place]}"
    if place == question.right:
        return Diagnosis("right", f"Right. {question.because}", echo)
    return Diagnosis("slip", question.feedback[place], echo, slip=question.original[place])


def _told(question: Telling, text: str) -> Diagnosis:
    """Own words are kept and set beside a model sentence; nobody judges them but the learner."""
    try:
        question.sentence(text)
    except InputError as error:
        return Diagnosis("unread", f"{error}.")
    return Diagnosis("told", f"A model sentence: {question.model} Which of its points does yours have?")


def _ordered(question: Sequence, text: str) -> Diagnosis:
    try:
        order = question.order(text)
    except InputError as error:
        return Diagnosis("unread", f"I could not read that: {error}.")
    echo = f"You put them: {', '.join(question.items[place] for place in order)}."
    steps = [question.right.index(place) for place in order]
    turned = next((step for step in range(len(steps) - 1) if steps.index(step) > steps.index(step + 1)), None)
    if turned is None:
        return Diagnosis("right", "Right: that order works.", echo)
    kept = sum(steps.index(step) < steps.index(step + 1) for step in range(len(steps) - 1))
    good = f"{kept} of {len(steps) - 1} neighbours stand the right way round."
    return Diagnosis("slip", f"Look at two of them again: {question.why[turned]}", echo, good, turned)
