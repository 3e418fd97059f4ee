"""Sets an exercise: for each learner numbers, workbook and sheet; for the instructor key, overview, and a table for answers on paper."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from brimwork import system
from brimwork.classroom import learner_files, numbers, printed
from brimwork.classroom.classfile import CLASS_EXAMPLE, EXAMPLE_ROSTER, SchoolClass
from brimwork.classroom.numbers import SECRET, Sets
from brimwork.classroom.questions import key
from brimwork.exercise import own_questions
from brimwork.files import begin, write_whole
from brimwork.tabular import as_csv
from brimwork.units import InputError, write

_Progress = Callable[[int, int], None]


@dataclass(frozen=True)
class HandedOut:
    """What was written, and where; `notes` say what is worth knowing."""

    learners: Path
    instructor: Path
    sets: Sets
    notes: tuple[str, ...]


def begin_class(path: Path) -> list[Path]:
    """Write an example class file and, if there is none, an example roster beside it. Raises InputError; nothing is written over."""
    if path.suffix != ".toml":
        raise InputError(f"a class file ends in .toml: type, for example, brimwork handout --begin {path.with_suffix('.toml')}")
    made = []
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        begin(path, CLASS_EXAMPLE.encode())
        made.append(path)
        begin(path.with_name("roster.csv"), EXAMPLE_ROSTER.encode())
        made.append(path.with_name("roster.csv"))
    except FileExistsError:
        if not made:
            raise InputError(f"{path} is there already: name another file, or edit this one") from None
    except OSError as error:
        raise InputError(f"{path} cannot be written ({error.strerror}): name a file in a folder of your own") from None
    return made


def hand_out(group: SchoolClass, shipped: Path, progress: _Progress = lambda done, of: None) -> HandedOut:
    """Write everything for a class beside its class file: one folder to give away, one to keep. `shipped` holds the lessons. Raises InputError."""
    secret = numbers.secret_of(group.folder, make=True)
    sets = numbers.draw(group, secret, numbers.read_record(group, secret))
    out = HandedOut(group.folder / f"{group.path.stem}-for-learners", group.folder / f"{group.path.stem}-to-keep", sets, group.notes)
    if secrets := [str(path) for path in out.learners.rglob(SECRET)]:
        raise InputError(f"{secrets[0]} would go out with the learners' files: move the class secret back into {group.folder}")
    try:
        for learner in group.learners:  # before anything is written: every set can be asked
            learner_files.workbook(group, learner.code, sets.of[learner.code], "", shipped)
            break
        numbers.write_record(group, sets)
        for done, learner in enumerate(group.learners, start=1):
            issued, mark = sets.of[learner.code], sets.mark(group.title, learner.code)
            book = learner_files.workbook(group, learner.code, issued, mark, shipped)
            _give(out.learners / learner.code / f"{group.path.stem}-{learner.code}.ipynb", book, secret)
            _give(out.learners / learner.code / f"{group.path.stem}-{learner.code}.pdf", printed.sheet(group, learner, issued, mark), secret)
            for name, content in _beside(group).items():
                _give(out.learners / learner.code / name, content, secret)
            progress(done, len(group.learners))
        _keep(out, group, sets)
    except OSError as error:
        raise InputError(
            f"{error.filename or group.folder} cannot be written ({error.strerror}): make room, or move the class file to a folder of your own"
        ) from None
    return out


def _beside(group: SchoolClass) -> dict[str, bytes]:
    """What stands beside a learner's workbook, by name: the units of the class, and the instructor's own questions where one of them is asked."""
    files = {system.SETTINGS: system.settings(group.units)}
    own = own_questions.codes()
    if any(asked.code in own for asked in group.questions):
        files[own_questions.OWN_FILE] = (group.folder / own_questions.OWN_FILE).read_bytes()
    return files


def _give(path: Path, content: bytes, secret: bytes) -> None:
    """Write a file for a learner, after a look whether it carries the class secret."""
    if numbers.numbers_told(content, secret):
        raise InputError(f"{path} would carry the class secret, and was not written: take the secret out of the class file, the roster or the workbook")
    path.parent.mkdir(parents=True, exist_ok=True)
    write_whole(path, content)


def _keep(out: HandedOut, group: SchoolClass, sets: Sets) -> None:
    out.instructor.mkdir(parents=True, exist_ok=True)
    every = [(learner, sets.of[learner.code], sets.mark(group.title, learner.code)) for learner in group.learners]
    files = f"To give away: the folder {out.learners.name}, one folder inside it for each learner. To keep: {out.instructor.name}, {SECRET}. When files come back, put them into one folder and type: brimwork mark THAT-FOLDER --of {group.path.name}"
    write_whole(out.instructor / "all-sheets.pdf", printed.sheets(group, every))
    write_whole(out.instructor / "key.pdf", printed.key_pages(group, sets))
    write_whole(out.instructor / "key.csv", key_table(group, sets))
    write_whole(out.instructor / "overview.pdf", printed.overview(group, sets, files))
    write_whole(out.instructor / "answers-on-paper.csv", paper_table(group))


def key_table(group: SchoolClass, sets: Sets) -> bytes:
    """The key as CSV: a row for each learner and question."""
    rows = []
    for learner in group.learners:
        for code, issued in sets.of[learner.code].items():
            question = issued.posed
            middle = getattr(question, "middle", None)
            way = write(middle.number, middle.unit, 4) if middle and issued.asked.way else ""
            given = "; ".join(f"{name} = {text}" for name, text in issued.numbers.items())
            rows.append((learner.code, code, given, key(question), way, issued.asked.points))
    return as_csv(("code", "question", "given", "right", "on the way", "points"), rows)


def paper_table(group: SchoolClass) -> bytes:
    """An empty table into which answers from paper are typed."""
    rows = [(learner.code, asked.code, "", "") for learner in group.learners for asked in group.questions]
    return as_csv(("code", "question", "said", "on the way"), rows)
