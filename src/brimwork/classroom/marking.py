"""Marks what was handed in: numbers and key are rebuilt, only what was typed is believed, and what looks odd is said to a person, never held against anyone."""

from __future__ import annotations

from bisect import bisect_left
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cache

from brimwork.classroom.classfile import SchoolClass
from brimwork.classroom.intake import ComesFrom, TakenIn
from brimwork.classroom.numbers import Issued, Sets
from brimwork.classroom.reading import HandIn, Said
from brimwork.exercise.bank import Posed
from brimwork.exercise.diagnosis import Diagnosis, read_answer
from brimwork.exercise.question import Question
from brimwork.topics import FORMER
from brimwork.units import InputError

NO_ANSWER = "no answer"
NO_HAND_IN = "nothing handed in"
AFTER_SHOWN = "right once shown"
FIT = 0.002  # how near an answer must lie to another learner's key to be said to fit it
FITS_FOR_A_WORD, FEW = 2, 60  # so many answers must fit the same other learner, and one more in a class of more than FEW, where chance fits some


@dataclass
class MarkedAnswer:
    """One question of one learner. `found` is the kind of the answer that counts; `why` says how its points came about."""

    code: str
    of: float
    points: float = 0.0
    said: str = ""
    way: str = ""
    tries: int = 0
    found: str = NO_ANSWER
    slip: int | None = None
    told: Diagnosis | None = None
    why: str = ""
    log: list[tuple[str, ...]] = field(default_factory=list)


@dataclass
class Marked:
    """All of one learner: marks by question, the file that counts, what a person should look at."""

    learner: str
    marks: dict[str, MarkedAnswer]
    source: str = ""
    sha256: str = ""
    receipt: str = ""
    notes: list[str] = field(default_factory=list)
    designs: list[tuple[str, dict]] = field(default_factory=list)

    @property
    def points(self) -> float:
        return sum(mark.points for mark in self.marks.values())


@dataclass
class Marks:
    """A whole class: each learner in the order of the roster, and every file that could not be read with its reason."""

    group: SchoolClass
    sets: Sets
    of: dict[str, Marked]
    unread: list[tuple[str, str]]


def mark(group: SchoolClass, sets: Sets, taken: Iterable[TakenIn]) -> Marks:
    """MarkedAnswer everything that was taken in."""
    hand_ins: dict[str, list[tuple[ComesFrom, str, HandIn]]] = defaultdict(list)
    designs: dict[str, list[tuple[str, dict]]] = defaultdict(list)
    unread = []
    for one in taken:
        if one.reason:
            unread.append((one.source.name, one.reason))
        elif one.design is not None:
            whose = _in_name(group, one.source.name)
            if whose:
                designs[whose].append((one.source.name, one.design))
            else:
                unread.append((one.source.name, "it is a design, and no learner code of the roster stands in its name"))
        for found in one.hand_ins:
            whose, note = _whose(group, one.source.name, found)
            if whose:
                found.notes += [note] if note else []
                hand_ins[whose].append((one.source, one.sha256, found))
            else:
                unread.append((one.source.name, note))
    marked = {learner.code: _learner(group, sets, learner.code, hand_ins.get(learner.code, []), designs.get(learner.code, [])) for learner in group.learners}
    _alike(group, marked, hand_ins)
    _fitting(group, sets, marked)
    return Marks(group, sets, marked, sorted(unread))


# --- whose it is --------------------------------------------------------------------------------------------------------------------


def _whose(group: SchoolClass, name: str, found: HandIn) -> tuple[str, str]:
    """The learner of a hand-in, by what stands in it and else by its name; with a word for a person where the two differ."""
    inside, outside = found.learner.strip().upper(), _in_name(group, name)
    if inside and group.learner(inside):
        differs = outside and outside != inside and found.kind != "paper"
        return inside, f"the name of the file says {outside} and the file says {inside}" if differs else ""
    if outside:
        return outside, f"the file says '{_shown(inside)}', which is not in the roster; its name says {outside}" if inside else ""
    return (
        "",
        f"no learner '{_shown(inside)}' is in the roster"
        if inside
        else "it does not say whose it is: no learner code of the roster stands in it or in its name",
    )


def _in_name(group: SchoolClass, name: str) -> str:
    """The one code of the roster that stands in the name of a file, the parts nearest to its end first."""
    for part in reversed(name.upper().split("/")):
        words = "".join(character if character.isascii() and (character.isalnum() or character in "-_") else " " for character in part).split()
        pieces = [word for text in words for word in (text, *text.split("-"), *text.split("_"), *text.replace("_", "-").split("-"))]
        found = {piece for piece in pieces if group.learner(piece)}
        if len(found) == 1:
            return found.pop()
    return ""


def _shown(text: str) -> str:
    return "".join(character for character in text[:20] if character.isprintable())


# --- one learner --------------------------------------------------------------------------------------------------------------------


def _learner(group: SchoolClass, sets: Sets, code: str, handed: list[tuple[ComesFrom, str, HandIn]], designs: list[tuple[str, dict]]) -> Marked:
    issued = sets.of[code]
    out = Marked(
        code, {asked.code: MarkedAnswer(asked.code, asked.points, found=NO_ANSWER if handed else NO_HAND_IN) for asked in group.questions}, designs=designs
    )
    if not handed:
        return out
    source, sha256, best = max(handed, key=lambda one: _rank(group, one))
    out.source, out.sha256, out.receipt = source.name, sha256, best.receipt
    out.notes += best.notes
    if len(handed) > 1:
        others = ", ".join(sorted(one[0].name for one in handed if one[2] is not best))
        out.notes.append(f"handed in {len(handed)} times: {source.name} counts, as the last that is complete; also there: {others}"[:400])
    if best.fits is False:
        out.notes.append("the receipt does not fit the answers: the file was changed after it was made, or damaged")
    if best.mark and best.mark.upper() != sets.mark(group.title, code):
        out.notes.append("the mark of the set is not that of this learner: perhaps an older sheet, or somebody else's workbook")
    for asked in group.questions:
        said = [one for one in best.answers if _called(one.question) == asked.code.casefold()]
        out.marks[asked.code] = _question(group, issued[asked.code], said, out.notes)
    return out


def _called(name: str) -> str:
    """What a question is called now, whatever it was called when it was answered, in small letters."""
    return FORMER.get(name.strip(), name.strip()).casefold()


def _rank(group: SchoolClass, one: tuple[ComesFrom, str, HandIn]) -> tuple:
    source, sha256, found = one
    answered = {_called(said.question) for said in found.answers if said.said.strip()}
    complete = sum(asked.code.casefold() in answered for asked in group.questions)
    return complete == len(group.questions), max((said.at for said in found.answers), default=""), complete, source.name, sha256


def _question(group: SchoolClass, issued: Issued, said: list[Said], notes: list[str]) -> MarkedAnswer:
    out = MarkedAnswer(issued.asked.code, issued.asked.points)
    shown = next((place for place, one in enumerate(said) if one.shown), None)
    tries = [(place, one) for place, one in enumerate(said) if not one.shown and one.said.strip()]
    out.tries = len(tries)
    if not tries:
        return out
    counting = [(place, one) for place, one in tries[: group.tries or None] if shown is None or place < shown]
    judge = cache(lambda text, way: issued.asked.diagnosed(question, text, way))
    question = issued.posed
    for number, (place, one) in enumerate(tries, start=1):
        if number > 20 and (place, one) not in counting[-1:]:
            continue  # a log of the first twenty and of the one that counts
        found = judge(one.said, one.way)
        beyond = (
            ""
            if (place, one) in counting
            else "not counted: after the solution was shown"
            if shown is not None and place >= shown
            else "not counted: beyond the tries allowed"
        )
        out.log.append((str(number), one.said, one.way, found.echo, found.kind, beyond))
    if not counting:
        last = tries[-1][1]
        out.said, out.way, out.told = last.said, last.way, judge(last.said, last.way)
        out.found = AFTER_SHOWN if out.told.right else out.told.kind
        out.why = "answered only after the solution was shown: no points"
        return out
    last = counting[-1][1]
    out.said, out.way, out.told = last.said, last.way, judge(last.said, last.way)
    out.found, out.slip = out.told.kind, out.told.slip
    out.points, out.why = _points(group, issued, question, last, out.told)
    _odd(issued, out, last, notes)
    return out


def _points(group: SchoolClass, issued: Issued, question: Posed, last: Said, found: Diagnosis) -> tuple[float, str]:
    if found.right:
        return issued.asked.points, "right: all points"
    part = round(issued.asked.points * group.method, 2)
    if issued.asked.way and issued.asked.middle_right(question, last.way):
        return part, f"the value on the way is right: {group.method:g} of the points for the method"
    if found.kind == "rounded":
        return part, f"right, but rounded too far: {group.method:g} of the points for the method"
    if found.kind == "near":
        return part, f"close, but not to three figures: {group.method:g} of the points for the method"
    if found.kind == "carried":
        return part, f"worked rightly from an own value on the way: {group.method:g} of the points for the method"
    return 0.0, "not right: no points"


def _odd(issued: Issued, out: MarkedAnswer, last: Said, notes: list[str]) -> None:
    """What a person should look at."""
    if last.numbers and last.numbers != issued.numbers:
        notes.append(f"{out.code} was answered on other numbers than were handed out; it is marked on those handed out")
    if last.claims == "right" and out.found != "right":
        notes.append(f"{out.code}: the file says right, and the answer is not; it is marked by the answer")


# --- between learners: said to a person, never an accusation ------------------------------------------------------------------------


def _alike(group: SchoolClass, marked: dict[str, Marked], hand_ins: dict[str, list[tuple[ComesFrom, str, HandIn]]]) -> None:
    """Files of two learners with the same answers, made at the same moments."""
    by_answers = defaultdict(list)
    for learner, handed in hand_ins.items():
        for _, _, found in handed:
            trace = tuple((one.question, one.said, one.at) for one in found.answers if one.at)
            if trace:
                by_answers[trace].append(learner)
    for learners in by_answers.values():
        names = sorted({*learners})
        for learner in names if len(names) > 1 else ():
            others = ", ".join(name for name in names if name != learner)
            marked[learner].notes.append(f"the same answers, made at the same moments, were handed in by {others}: have a look, and ask"[:300])


def _fitting(group: SchoolClass, sets: Sets, marked: dict[str, Marked]) -> None:
    """Answers that are not right for a learner's own numbers and fit those of another."""
    fits: dict[tuple[str, str], list[str]] = defaultdict(list)
    for asked in group.questions:
        wrong = [
            (one.learner, one.marks[asked.code]) for one in marked.values() if one.marks[asked.code].found in ("none", "input", "ask", "way", "slip and unit")
        ]
        if asked.alike or not wrong:
            continue
        keys = sorted((question.answer, learner) for learner in marked if isinstance(question := sets.of[learner][asked.code].posed, Question))
        for learner, mark in wrong if keys else ():
            try:
                question = sets.of[learner][asked.code].posed
                assert isinstance(question, Question), "keys are of questions with numbers"
                value = read_answer(question, mark.said).value
            except InputError:
                continue
            near = FIT * abs(value)
            for answer, other in keys[bisect_left(keys, (value - near, "")) :]:
                if answer > value + near:
                    break
                if other != learner:
                    fits[learner, other].append(asked.code)
    for (learner, other), codes in sorted(fits.items()):
        if len(codes) >= FITS_FOR_A_WORD + (len(marked) > FEW):
            marked[learner].notes.append(f"the answers to {', '.join(codes)} are not right for these numbers and fit those of {other}: have a look, and ask")
