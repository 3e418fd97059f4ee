"""What the class got wrong: a table of slips by question with small counts hidden, and five-minute notes for the commonest."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from brimwork.classroom.marking import AFTER_SHOWN, NO_ANSWER, NO_HAND_IN, MarkedAnswer, Marks
from brimwork.classroom.questions import SetQuestion, asked_text, key, worked_out
from brimwork.exercise.bank import Posed
from brimwork.exercise.choices import Choice, Sequence
from brimwork.exercise.personal import own_seed
from brimwork.exercise.question import Question

SMALL = 5  # counts under this are hidden, so that the table tells of nobody
RETAUGHT = 3
_SAID = {
    "right": "right", AFTER_SHOWN: "right only after the solution was shown", "carried": "right way from a wrong value before", "unit": "a slip of the unit",
    "way": "a wrong way", "rounded": "right, but rounded too far", "near": "close, but not to three figures",
    "slip and unit": "a slip, perhaps with one of the unit", "input": "perhaps the unit of a given value", "ask": "one of several slips", "none": "not right, slip not known",
    "no unit": "no unit typed", "other unit": "another kind of quantity", "unread": "could not be read", NO_ANSWER: "no answer", NO_HAND_IN: "nothing handed in",
}  # fmt: skip


@dataclass(frozen=True)
class Row:
    """How often one thing became of one question. `slip` is the place of the known slip, if it is one."""

    question: str
    what: str
    count: int
    slip: int | None = None

    @property
    def shown(self) -> str:
        return str(self.count) if self.count >= SMALL else f"under {SMALL}"


def said_of_slip(kind: str) -> str:
    """A kind of answer in words for a table."""
    return _SAID.get(kind, kind)


def slips_table(marks: Marks) -> list[Row]:
    """Question by slip, in the order of the class file, the commonest first."""
    rows = []
    for asked in marks.group.questions:
        counted = Counter(
            (mark.found, mark.slip if mark.found == "slip" else None, _cause(mark)) for one in marks.of.values() if (mark := one.marks[asked.code])
        )
        for (kind, slip, cause), count in sorted(counted.items(), key=lambda one: (one[0][0] != "right", -one[1], one[0][0], one[0][1] or 0, one[0][2])):
            what = _slip(asked, slip) if slip is not None else cause or said_of_slip(kind) if kind != "slip" else "a wrong choice or order"
            rows.append(Row(asked.code, what, count, slip))
    return rows


def _cause(mark: MarkedAnswer) -> str:
    """What an undeclared way was found to be, where that is the same for everybody: the one explanation, without numbers of a learner's own."""
    causes = mark.told.causes if mark.told and mark.found == "way" else ()
    return causes[0] if len(causes) == 1 and not any(character.isdigit() for character in causes[0]) else ""


def _slip(asked: SetQuestion, slip: int) -> str:
    question = asked.posed(1)
    if isinstance(question, Question):
        return question.slips[slip].feedback if slip < len(question.slips) else "a known slip"
    if isinstance(question, Choice):
        place = question.original.index(slip)
        return f"chose: {question.options[place]}"
    return question.why[slip] if isinstance(question, Sequence) else "a known slip"


@dataclass(frozen=True)
class Note:
    """Five minutes for one slip: lines with their minutes."""

    question: str
    slip: str
    count: str
    lines: tuple[tuple[str, str], ...]


def notes(marks: Marks) -> list[Note]:
    """A note for each of the commonest slips, on numbers that no learner has."""
    common = sorted(((row, row.slip) for row in slips_table(marks) if row.slip is not None), key=lambda found: -found[0].count)[:RETAUGHT]
    asked = {one.code: one for one in marks.group.questions}
    return [Note(row.question, row.what, row.shown, tuple(_lines(asked[row.question], slip))) for row, slip in common]


def _lines(asked: SetQuestion, slip: int) -> list[tuple[str, str]]:
    board, again = (asked.posed(own_seed(name, asked.code)) for name in ("BOARD-1", "BOARD-2"))
    wrong = _wrong(board, slip)
    return [
        ("1 min", f"On the board: {' '.join(asked_text(board))} Everyone works it alone, without a word."),
        ("1 min", f"Hands up for {key(board)}; hands up for {wrong}. Each finds somebody with the other one and says how it came about."),
        ("2 min", f"Say which step makes the difference. {_slip(asked, slip)} Then: {'. '.join(line.rstrip('.') for line in worked_out(board))}."),
        ("1 min", f"Once more with other numbers: {again.text} Right is {key(again)}; who still gets {_wrong(again, slip)} comes to you afterwards."),
    ]


def _wrong(question: Posed, slip: int) -> str:
    if isinstance(question, Question):
        return question.typed(question.slips[slip].number)
    if isinstance(question, Choice):
        return question.options[question.original.index(slip)]
    return "another order"
