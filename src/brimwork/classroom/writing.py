"""Writes what marking found: marks, totals, a page for each learner, slips by question, what could not be read, and a log that explains every mark."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable
from pathlib import Path

from brimwork.classroom import pages, slips
from brimwork.classroom.marking import Marks
from brimwork.classroom.questions import key
from brimwork.exercise.question import Question
from brimwork.files import write_whole
from brimwork.spellings import nearest
from brimwork.tabular import as_csv
from brimwork.units import InputError

COLUMNS = ("code", "question", "said", "tries")  # of the marks, unless others are asked for
_MORE = ("points", "of", "found")
ALL = ("code", "name", "question", "said", "on the way", "tries", "points", "of", "found", "told", "why", "file", "look at")
_LIST = "written.json"  # what was written here, so that a file changed by hand is not replaced


def columns(text: str) -> tuple[str, ...]:
    """The columns that somebody asks for, such as "code,question,points". Raises InputError."""
    wanted = tuple(part.strip() for part in text.split(",") if part.strip()) or (*COLUMNS, *_MORE)
    for name in wanted:
        if name not in ALL:
            raise InputError(f"there is no column '{name[:30]}'.{nearest(name, ALL)} There are {', '.join(ALL)}")
    return wanted


def write_feedback(
    marks: Marks, folder: Path, wanted: tuple[str, ...] = (*COLUMNS, *_MORE), progress: Callable[[int, int], None] = lambda done, of: None
) -> list[str]:
    """Write everything into `folder`; the same marks give the same bytes. Returns the names of what was written. Raises InputError."""
    group = marks.group
    rows, notes = slips.slips_table(marks), slips.notes(marks)
    made: dict[str, bytes] = {
        "marks.csv": _marks(marks, wanted),
        "totals.csv": _totals(marks),
        "slips.csv": as_csv(("question", "what became of it", "learners"), [(row.question, row.what, row.shown) for row in rows]),
        "slips.html": pages.class_page(marks, rows, notes),
        "could-not-be-read.csv": as_csv(("file", "reason"), marks.unread),
        "look-at.csv": as_csv(("code", "look at"), [(one.learner, note) for one in marks.of.values() for note in one.notes]),
        "log.csv": _log(marks),
    }
    if any(one.designs for one in marks.of.values()):
        made["designs.csv"] = _designs(marks)
    written = _Written(folder)
    for name, content in made.items():
        written.add(name, content)
    for done, one in enumerate(marks.of.values(), start=1):
        mark = marks.sets.mark(group.title, one.learner)
        written.add(f"pages/{one.learner}.html", pages.feedback(group, one, marks.sets.of[one.learner], mark))
        progress(done, len(marks.of))
    written.end()
    return [*made, "pages"]


class _Written:
    """Files of a folder that only this program writes: one that was changed by hand since is left alone, and said."""

    def __init__(self, folder: Path):
        self.folder, self.known = folder, {}
        try:
            (folder / "pages").mkdir(parents=True, exist_ok=True)
            if (folder / _LIST).exists():
                held = json.loads((folder / _LIST).read_text(encoding="utf-8"))
                self.known = held if isinstance(held, dict) else {}
        except OSError as error:
            raise InputError(f"{folder} cannot be written ({error.strerror}): name another folder with --to") from None
        except ValueError:
            self.known = {}

    def add(self, name: str, content: bytes) -> None:
        path, digest = self.folder / name, hashlib.sha256(content).hexdigest()
        try:
            there = hashlib.sha256(path.read_bytes()).hexdigest() if path.exists() else ""
            if there and there not in (digest, self.known.get(name)):
                raise InputError(f"{path} was changed by hand, or is not from marking, and was left as it is: name another folder with --to")
            if there != digest:
                write_whole(path, content)
            self.known[name] = digest
        except OSError as error:
            raise InputError(f"{path} cannot be written ({error.strerror}): make room, or name another folder with --to") from None

    def end(self) -> None:
        write_whole(self.folder / _LIST, (json.dumps(self.known, indent=1, sort_keys=True) + "\n").encode())


def _marks(marks: Marks, wanted: tuple[str, ...]) -> bytes:
    return as_csv(wanted, ([row[name] for name in wanted] for row in _rows(marks)))


def _rows(marks: Marks):
    for learner in marks.group.learners:
        one = marks.of[learner.code]
        for code, mark in one.marks.items():
            yield {
                "code": learner.code, "name": learner.name, "question": code, "said": mark.said, "on the way": mark.way, "tries": mark.tries, "points": mark.points, "of": mark.of,
                "found": slips.said_of_slip(mark.found), "told": mark.told.message if mark.told else "", "why": mark.why, "file": one.source, "look at": "; ".join(one.notes),
            }  # fmt: skip


def _totals(marks: Marks) -> bytes:
    rows = [(one.code, marks.of[one.code].points, marks.group.points, "yes" if marks.of[one.code].source else "no") for one in marks.group.learners]
    return as_csv(("code", "points", "of", "handed in"), rows)


def _log(marks: Marks) -> bytes:
    """A row for each try: file, its SHA-256, what was typed, how it was read, what was right and how near it had to be, and what came of it."""
    head = (
        "code",
        "file",
        "sha256",
        "receipt",
        "question",
        "numbers",
        "right",
        "within",
        "try",
        "said",
        "on the way",
        "read as",
        "found",
        "not counted",
        "points",
        "why",
    )
    rows = []
    for one in marks.of.values():
        for code, mark in one.marks.items():
            issued = marks.sets.of[one.learner][code]
            question, given = issued.posed, "; ".join(f"{name} = {text}" for name, text in issued.numbers.items())
            within = question.typed(question.band(question.answer), 2) if isinstance(question, Question) and question.answer else ""
            for number, said, way, read_as, found, beyond in mark.log or [("", "", "", "", mark.found, "")]:
                rows.append(
                    (
                        one.learner,
                        one.source,
                        one.sha256,
                        one.receipt,
                        code,
                        given,
                        key(question),
                        within,
                        number,
                        said,
                        way,
                        read_as,
                        found,
                        beyond,
                        mark.points,
                        mark.why,
                    )
                )
    return as_csv(head, rows)


def _designs(marks: Marks) -> bytes:
    rows = []
    for one in marks.of.values():
        for name, told in one.designs:
            if told.get("reason"):
                rows.append((one.learner, name, "", "", told["reason"], "could not be marked"))
            rows += [(one.learner, name, row["what"], row["wanted"], row["found"], row["mark"]) for row in told.get("rows", ())]
            rows += [(one.learner, name, row, "", "", "for a person") for row in told.get("rubric", ())]
    return as_csv(("code", "file", "what", "wanted", "found", "mark"), rows)
