"""The question bank for other programs and for reading: content packages of QTI 2.1 and 3.0, CSV, Markdown."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from brimwork.classroom import qti
from brimwork.classroom.questions import asked_text, key, worked_out
from brimwork.exercise import bank
from brimwork.exercise.bank import Posed
from brimwork.exercise.choices import Choice
from brimwork.exercise.personal import ATTEMPTS, fair, seeds
from brimwork.exercise.question import Question
from brimwork.files import begin
from brimwork.shown import in_markdown
from brimwork.tabular import as_csv
from brimwork.units import InputError

_KEY = b"brimwork: numbers for exchange"
MOST_VARIANTS = 100


def variants(code: str, count: int) -> list[Posed]:
    """A question on so many different sets of fair numbers, or on as many as it has. Raises InputError."""
    first = bank.pose(code, 1)
    if not isinstance(first, Question) or not first.varies:
        return [first]
    found = [first]
    for _, seed in zip(range(ATTEMPTS * count), seeds(_KEY, first.code)):
        if len(found) >= count:
            break
        drawn = bank.pose(code, seed % 1_000_000)
        if isinstance(drawn, Question) and fair(drawn) and not any(drawn.numbers == one.numbers for one in found):
            found.append(drawn)
    return [*found]


def chosen(codes: Iterable[str], count: int) -> list[Posed]:
    """Variants of all questions of these codes, or of the whole hand-written bank where none is named. Raises InputError."""
    if not 1 <= count <= MOST_VARIANTS:
        raise InputError(f"{count} variants cannot be made: ask for 1 to {MOST_VARIANTS}")
    return [question for code in (list(codes) or list(bank.questions())) for question in variants(code, count) if qti.exchangeable(question)]


def write_bank(folder: Path, codes: Iterable[str], count: int) -> list[str]:
    """Write packages, CSV and Markdown into `folder`; nothing is written over. Returns their names. Raises InputError."""
    questions = chosen(codes, count)
    made = {f"questions-qti-{edition.name}.zip": qti.package(questions, edition) for edition in qti.EDITIONS}
    made |= {"questions.csv": _as_table(questions), "questions.md": as_markdown(questions)}
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name, content in made.items():
            try:
                begin(folder / name, content)
            except FileExistsError:
                if (folder / name).read_bytes() != content:
                    raise InputError(f"{folder / name} is there already: name another folder with --to") from None
    except OSError as error:
        raise InputError(f"{folder} cannot be written ({error.strerror}): name another folder with --to") from None
    return [*made]


def _as_table(questions: list[Posed]) -> bytes:
    """A row for each question on its numbers: what is asked, the answer, how near it must be, the known slips with what each is told."""
    rows = []
    for question in questions:
        within, slips = "", list[str]()
        if isinstance(question, Question):
            within = question.typed(question.band(question.answer), 2)
            slips = [f"{question.typed(slip.number)}: {slip.feedback}" for slip in question.slips]
        if isinstance(question, Choice):
            slips = [f"{option} {said}" for option, said in zip(question.options, question.feedback) if said]
        rows.append(
            (question.code, question.seed, " / ".join(asked_text(question)), key(question), within, " | ".join(slips), " / ".join(worked_out(question)))
        )
    return as_csv(("question", "variant", "asked", "right", "within", "known slips", "working"), rows)


def as_markdown(questions: list[Posed]) -> bytes:
    """The questions to read, each with its key and working folded under it."""
    parts = ["# Questions\n\nAll numbers are invented unless a source stands beside them."]
    for question in questions:
        first, *rest = asked_text(question)
        listed = "\n".join(f"- {in_markdown(line)}" for line in rest)
        worked = "\n".join(f"1. {in_markdown(line)}" for line in worked_out(question))
        parts.append(f"## {in_markdown(question.code)}, variant {question.seed}\n\n{in_markdown(first)}\n\n{listed}".rstrip())
        parts.append(f"**Key:** {in_markdown(key(question))}\n\n{worked}")
    return ("\n\n".join(parts) + "\n").encode()
