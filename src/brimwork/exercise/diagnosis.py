"""What an answer says: right, a slip, a slip of units, or plainly no diagnosis. Silence beats a wrong accusation.

The order: right; rounded too far; the right number in another unit; a declared slip; a wrong way found from the working's own tree; the unit of one given
value. Something is told as a fact only where it agrees with the number as closely as the figures typed allow, and nothing else does. Where several agree,
or one agrees loosely, it is asked; where nothing does, nothing is said. The more is thought of, the more fits by chance: so guesses at rarer things have
a narrower band, and nobody is told of a unit in which nothing in the question is measured.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from brimwork import dimensions, units
from brimwork.dimensions import Dimension
from brimwork.exercise import unit_slips
from brimwork.exercise.advice import advised
from brimwork.exercise.causes import Cause
from brimwork.exercise.choices import Choice, Sequence, Telling
from brimwork.exercise.question import TOLERANCE, KnownWay, Middle, Question, in_words
from brimwork.exercise.reading import Typed, typed_reading
from brimwork.exercise.unit_slips import Taken
from brimwork.units import InputError, Reading

_NARROW = 0.5  # share of the band for two slips at once
EXACT = 0.0004  # relative: what g, pi and a gallon lose when they are put in with three or four figures
_SURE = 0.003  # relative: a number that is known no closer than this is never told as a fact
_LOOSE = 0.003  # relative: how far off, by rounding on the way, a way that nobody declared is still asked about
MOST_GUESSES = 3

ONCE_SHOWN = "right once shown"  # as an answers file keeps a right answer that came after the whole solution
KINDS_OF_ANSWER = (
    *("right", "slip", "unit", "slip and unit", "way", "input", "ask", "carried", "rounded", "near", "none", "no unit", "other unit", "unread", "told"),
)
CLOSE_BY = 1.25  # as a ratio: within this the size of an answer is about right


@dataclass(frozen=True)
class Diagnosis:
    """What an answer says.

    kind     one of KINDS: "slip" is a declared slip, "way" a wrong way found from the working, "input" the unit of a given value
    message  full sentences;  echo: how the answer was read;  good: what is right about it
    slip     the known slip, counted from 0
    sure     whether a slip, way or unit is told as a fact, and not asked
    causes   every explanation that is told or asked, each a sentence
    """

    kind: str
    message: str
    echo: str = ""
    good: str = ""
    slip: int | None = None
    sure: bool = False
    causes: tuple[str, ...] = ()

    @property
    def right(self) -> bool:
        return self.kind == "right"

    @property
    def text(self) -> str:
        return " ".join(filter(None, (self.echo, self.good, self.message)))


@dataclass(frozen=True)
class _Fit:
    """An explanation of a number: kind of diagnosis, sentence, its own number (SI), the known slip, whether it may be told as a fact, and whether it gives way
    to any likelier one, as a point out of its place does."""

    kind: str
    sentence: str
    number: float
    slip: int | None = None
    likely: bool = True
    seldom: bool = False


def diagnose(question: Question | Choice | Sequence | Telling, text: str, middle: str = "") -> Diagnosis:
    """Read an answer with the bounded reader and say what it tells. `middle` is the value on the way, where the question asks for one. Never raises."""
    if isinstance(question, Choice):
        return _chosen(question, text)
    if isinstance(question, Sequence):
        return _ordered(question, text)
    if isinstance(question, Telling):
        return _told(question, text)
    try:
        answer = typed_reading(question, text)
    except InputError as error:
        return Diagnosis("unread", f"I could not read that: {error}.")
    reading = answer.reading
    echo = f"I read this as {reading}{' ' + question.label if question.label else ''}."
    trouble = _wrong_kind(question, answer, echo)
    if trouble:
        return trouble
    if _within(reading.value, question.answer, question.band(question.answer)):
        return Diagnosis("right", _right(question, reading), echo)
    return replace(_explain(question, answer, middle), echo=echo, good=what_is_right(question, reading.value))


def read_answer(question: Question, text: str) -> Reading:
    """The answer as number and unit; the question's word ("bags") counts as a unit, and money needs none. Raises InputError."""
    return typed_reading(question, text).reading


# --- the kind of unit ---------------------------------------------------------------------------------------------------------------


def _called(reading: Reading) -> str:
    """What was typed, in a learner's words: "a volume, in L"."""
    name = dimensions.kind(reading.dimension)
    if name.startswith("a quantity in "):
        return f"a quantity in {reading.unit}"
    return f"{name}, in {reading.unit}" if reading.dimension != dimensions.NUMBER else name


def _wrong_kind(question: Question, answer: Typed, echo: str) -> Diagnosis | None:
    """What to say of a unit that will not do, and the wrong way that it shows, if it does."""
    reading, wanted = answer.reading, units.unit(question.unit)
    if not reading.unit and question.unit:
        shown = units.number(reading.number)
        share = f", or {units.number(100 * reading.number)} % if it is a share of one" if question.unit == "%" else ", if that is what you worked in"
        return Diagnosis("no unit", f"The unit is missing. Type {shown} {question.unit}{share}.", echo)
    if reading.dimension != wanted.dimension:
        asked = f"measured in {in_words(question.unit)}" if question.unit else "a plain number"
        said = f"That is {_called(reading)}; the {question.name} is {asked}."
        if reading.unit.replace("/", " ").split()[-1:] == ["m"] and _kind(f"{reading.unit}in") == wanted.dimension:
            return Diagnosis("other unit", f"{said} A single m is a metre: for a minute type {units.number(reading.number)} {reading.unit}in.", echo)
        ways = _of_other_kind(question, answer)
        told = f"Could it be one of these? {_listed(ways)}" if len(ways) > 1 else ways[0] if ways else "Look at what you multiplied by what."
        return Diagnosis("other unit", f"{said} {told}", echo, sure=len(ways) == 1, causes=ways)
    if question.strict and not _same_unit(reading.unit, question.unit):
        return Diagnosis("other unit", f"Changing the unit is the question: type the answer in {question.unit}.", echo)
    if not question.label:
        try:
            units.read(f"1 {reading.unit}" if reading.unit else "1", question.unit, "that")
        except InputError as error:
            return Diagnosis("other unit", f"I could not use that: {error}.", echo)
    return None


def _kind(unit: str) -> Dimension | None:
    """What is measured in a unit, where there is such a one."""
    try:
        return units.unit(unit).dimension
    except InputError:
        return None


def _of_other_kind(question: Question, answer: Typed) -> tuple[str, ...]:
    """Slips and wrong ways that end in a number of the kind that was typed."""
    reach = _reach(answer)
    found = [slip.feedback for slip in question.slips if any(_within(answer.value, number, reach) for number in slip.numbers)]
    found = found or [cause.way.sentence(question.said) for cause in question.causes
             if not cause.way.far and cause.dimension == answer.reading.dimension and _within(answer.value, cause.number, reach)]  # fmt: skip
    return tuple(dict.fromkeys(found))[:MOST_GUESSES]


def _right(question: Question, reading: Reading) -> str:
    answer = question.told
    if not _same_unit(reading.unit, question.unit):
        return f"Right: {answer}. You typed it in another unit, which is the same amount."
    return f"Right: {answer}."


def _same_unit(a: str, b: str) -> bool:
    return units.unit(a) == units.unit(b)


def _near(question: Question, value: float, target: float, share: float = 1.0) -> bool:
    return _within(value, target, question.about(target) * share)


def _within(value: float, number: float, reach: float) -> bool:
    return abs(value - number) <= reach


def _reach(answer: Typed) -> float:
    """How far a number may lie from what a slip gives and still be that to the figures typed, of which three count at least (SI)."""
    return min(answer.half * 1.001, 0.005 * abs(answer.value)) + EXACT * abs(answer.value)


def what_is_right(question: Question, value: float) -> str:
    """The first rung of help: kind of unit, and size, without giving the answer away."""
    kind = "It is a plain number, as it should be" if not question.unit else "The unit is of the right kind"
    if value * question.answer <= 0:
        return f"{kind}; the sign or the zero is not yet right."
    ratio, under = value / question.answer, question.answer < 0
    further = ratio > 1
    if 1 / CLOSE_BY <= ratio <= CLOSE_BY:
        return f"{kind}, and the size is about right, but a little {'high' if further is not under else 'low'}."
    much = "more than ten times " if ratio > 10 or ratio < 0.1 else ""
    if under:
        return f"{kind}. The number lies {'too far from' if further else 'too near to'} zero."
    return f"{kind}. The number is {much}too {'large' if further else 'small'}."


# --- what explains a number ---------------------------------------------------------------------------------------------------------


def _explain(question: Question, answer: Typed, middle: str) -> Diagnosis:
    """What to say of an answer that is read and not right."""
    value, reach = answer.value, _reach(answer)
    declared = [_Fit("slip", advised(question, slip), slip.number, place) for place, slip in _slips(question, value, 1.0)]
    if question.middle and len({fit.number for fit in declared}) < len(declared):
        return _by_middle(question, question.middle, declared, middle)
    if not declared and _rounded(question, answer):
        return Diagnosis("rounded", f"You rounded too far: that would be right to {_figures(answer.figures)}. Give {_wanted(question)}.", sure=True)
    if not declared and _near(question, value, question.answer):
        return Diagnosis("near", _CLOSE)
    used = (question.unit, *(given.unit for given in question.given.values()))
    alternatives = tuple(unit_slips.taken(value, answer.reading.unit, used))
    in_unit = next((other for other in alternatives if _near(question, other.value, question.answer)), None)
    close = [fit for fit in declared if _within(value, fit.number, reach)]
    if in_unit and not close and _in_unit(question, in_unit, answer):
        close = [_Fit("unit", _of_a_unit(in_unit), value)]
    own_unit = not any(_same_unit(answer.reading.unit, unit) for unit in used)
    both = _of_both(question, [other for other in alternatives if other.of(used)]) if not declared and not in_unit else None
    if both and own_unit:
        return both
    ways = _ways(question, value, reach, close)
    fits, one = [*(close or declared), *ways], _of_an_input(question, answer, used)
    if fits and not (one and all(fit.seldom for fit in fits)):
        return _fitting(question, answer, fits)
    if in_unit:
        return Diagnosis("unit", _of_a_unit(in_unit), causes=(in_unit.sentence,))
    multiple = _multiple(question, answer)
    if multiple and not one:
        return _of_a_multiple(multiple)
    loose = _ways(question, value, _LOOSE * abs(value) + reach, [])
    near = _fitting(question, answer, loose) if len({f"{fit.number:.6g}" for fit in loose}) == 1 else None
    return one or near or both or Diagnosis("none", _SILENT)


_CLOSE = (
    "You are close, but not yet right to three figures. Did you round on the way, or use a rough number? Then keep four figures until the end."
    " If not, something small is missing."
)


def _of_a_unit(other: Taken) -> str:
    return f"The working may be right: {other.sentence}."


def _in_unit(question: Question, other: Taken, answer: Typed) -> bool:
    """Whether the right number in another unit agrees to the figures typed."""
    return _within(other.value, question.answer, _reach(answer) * abs(other.value / answer.value))


def _rounded(question: Question, answer: Typed) -> bool:
    """Whether a number that is not right is the right one rounded: to fewer than three figures."""
    return _within(answer.value, question.answer, answer.half * 1.001)


def _figures(count: int) -> str:
    return "one figure" if count == 1 else f"{count} figures"


def _wanted(question: Question) -> str:
    return "it closer" if question.close else "three figures"


def _slips(question: Question, value: float, share: float) -> list[tuple[int, KnownWay]]:
    """Known slips that give this number, the nearest first, with their place."""
    near = [(place, slip) for place, slip in enumerate(question.slips) if any(_near(question, value, number, share) for number in slip.numbers)]
    return sorted(near, key=lambda found: min(abs(value - number) for number in found[1].numbers))


def _ways(question: Question, value: float, reach: float, others: list[_Fit]) -> list[_Fit]:
    """Wrong ways with the working that give this number, but for those that give the number of a declared slip; then the plain multiples."""
    unit = units.unit(question.unit).dimension
    found: dict[str, _Fit] = {}
    for cause in question.causes:
        if _within(value, cause.number, reach) and not _known(cause, unit, others):
            sentence = cause.way.sentence(question.said)
            seldom = cause.way.kind == "point" or cause.way.kind == "brackets" and cause.dimension is None  # a plain number added to what has a unit
            found.setdefault(sentence, _Fit("way", sentence, cause.number, likely=cause.way.likely, seldom=seldom))
    return list(found.values())


def _known(cause: Cause, unit: Dimension, others: list[_Fit]) -> bool:
    return cause.far or not cause.typed_as(unit) or any(_within(cause.number, fit.number, 1e-6 * abs(fit.number)) for fit in others if fit.kind == "slip")


def _fitting(question: Question, answer: Typed, fits: list[_Fit]) -> Diagnosis:
    """One explanation told as a fact where it may be, else asked; several always asked."""
    if any(fit.likely for fit in fits):  # a point far out of its place is as good as a value left out, and seldom
        fits = [fit for fit in fits if not fit.seldom]
    slip = next((fit.slip for fit in fits if fit.slip is not None), None)
    kind, sentences = fits[0].kind, tuple(fit.sentence for fit in fits)[:MOST_GUESSES]
    multiple = _multiple(question, answer) if kind == "way" else ""
    if len(fits) == 1:
        sharp = _reach(answer) <= _SURE * abs(answer.value) and _within(answer.value, fits[0].number, _reach(answer))
        if sharp and fits[0].likely and not multiple:
            return Diagnosis(kind, sentences[0], slip=slip, sure=True, causes=sentences)
        return Diagnosis(kind, f"{multiple}Could it be this? {sentences[0]}", slip=slip, causes=sentences)
    return Diagnosis(kind, f"{multiple}More than one slip gives this number. Could it be one of these? {_listed(sentences)}", slip=slip, causes=sentences)


def _listed(sentences: tuple[str, ...]) -> str:
    return " ".join(f"({place}) {sentence}" for place, sentence in enumerate(sentences, start=1))


_MULTIPLES = {2.0: "twice", 0.5: "half of", 4.0: "four times", 0.25: "a quarter of"}


def _multiple(question: Question, answer: Typed) -> str:
    """ "Your number is twice what it should be. " where it is that, to the figures typed, or ""; so for ten, a hundred and a thousand times."""
    for ratio, word in _MULTIPLES.items():
        if _within(answer.value, ratio * question.answer, _reach(answer)):
            return f"Your number is {word} what it should be. "
    for tens in range(1, 7):
        for size, ratio in (("large", 10.0**tens), ("small", 0.1**tens)):
            if _within(answer.value, ratio * question.answer, _reach(answer)):
                return f"The figures are right, but your number is {10**tens} times too {size}. "
    return ""


def _of_a_multiple(multiple: str) -> Diagnosis:
    """What to say of a number that is a plain multiple of the right one, and of nothing else that is known."""
    ask = (
        "Is a unit changed once too often, or not at all?"
        if multiple.startswith("The figures")
        else "Is a diameter in the place of a radius, or something counted twice?"
    )
    return Diagnosis("way", f"{multiple}{ask}", causes=(multiple.strip(),))


def _of_both(question: Question, alternatives: list[Taken]) -> Diagnosis | None:
    """A known slip whose number was then typed in another unit."""
    for other in alternatives:
        for place, slip in _slips(question, other.value, _NARROW):
            said = (f"First, {other.question}", slip.feedback)
            return Diagnosis("slip and unit", f"Perhaps two things at once. {said[0]} And could it be this? {said[1]}", slip=place, causes=said)
    return None


def _by_middle(question: Question, wanted: Middle, found: list[_Fit], text: str) -> Diagnosis:
    if not text.strip():
        asked = f"What did you get on the way for the {wanted.name}? Type it, in {in_words(wanted.unit) or 'plain numbers'}."
        return Diagnosis("ask", f"More than one slip gives this number. {asked}")
    try:
        value = units.read(text, wanted.unit, wanted.name)
    except InputError as error:
        return Diagnosis("ask", f"I could not read the {wanted.name}: {error}.")
    for fit, slip in ((fit, question.slips[fit.slip]) for fit in found if fit.slip is not None):
        at = wanted.number if slip.middle is None else slip.middle
        if _within(value, at, TOLERANCE * abs(at)):
            return Diagnosis("slip", f"Could it be this? {fit.sentence}", slip=fit.slip, causes=(fit.sentence,))
    return Diagnosis("none", _SILENT)


_SILENT = "I do not know which slip this is. Go through the working line by line, with the unit written beside each number."


def _of_an_input(question: Question, answer: Typed, used: tuple[str, ...]) -> Diagnosis | None:
    reach = _reach(answer)
    guesses = [said for number, said in unit_slips.of_an_input(question, (answer.reading.unit, *used)) if _within(answer.value, number, reach)]
    if not guesses:
        return None
    guesses = guesses[:MOST_GUESSES]
    said = tuple(guesses)
    last = guesses.pop() if len(guesses) > 1 else "it is a slip that I do not know"
    return Diagnosis("input", f"Either {', or '.join(guesses)}, or {last}. Check the unit of each given value.", causes=said)


# --- choosing and ordering ----------------------------------------------------------------------------------------------------------


def _chosen(question: Choice, text: str) -> Diagnosis:
    try:
        place = question.place(text)
    except InputError as error:
        return Diagnosis("unread", f"I could not read that: {error}.")
    echo = f"You chose: {question.said(place)}"
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
    turned = [step for step in range(len(steps) - 1) if step + 1 in steps[: steps.index(step)]]
    if not turned:
        return Diagnosis("right", "Right: that order works.", echo)
    good = f"{len(steps) - 1 - len(turned)} of {len(steps) - 1} neighbours stand the right way round."
    return Diagnosis("slip", f"Look at two of them again: {question.why[turned[0]]}", echo, good, turned[0])
