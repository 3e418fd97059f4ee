"""What one learner gets: a workbook whose exercise part has that learner's numbers, written out for all to read, and nothing that tells the key."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

from brimwork import system
from brimwork.classroom.classfile import SchoolClass
from brimwork.classroom.numbers import Issued
from brimwork.classroom.questions import SetQuestion
from brimwork.exercise.personal import learner_code
from brimwork.units import InputError

_LONGEST = 40_000  # characters of an exercise as text
_CALL = "class_exercise"


@dataclass(frozen=True)
class ExerciseInFile:
    """An exercise as it stands in a learner's workbook."""

    learner: str
    title: str
    mark: str
    feedback: str
    tries: int
    questions: tuple[Issued, ...]
    units: str = system.METRES


def as_text(exercise: ExerciseInFile) -> str:
    """An exercise as lines that a person can read: whose, which set, then a line a question with its numbers."""
    lines = [f"learner: {exercise.learner}", f"set: {exercise.mark}", f"title: {exercise.title}", f"feedback: {exercise.feedback}", f"tries: {exercise.tries}"]
    lines += [f"units: {exercise.units}"] if exercise.units != system.METRES else []
    for issued in exercise.questions:
        given = "; ".join(f"{name} = {text}" for name, text in issued.numbers.items())
        way = f" > {issued.asked.way}" if issued.asked.way else ""
        lines.append(f"{issued.asked.code}{way} | {issued.seed} | {given}")
    return "\n".join(lines)


def read_learner_file(text: str) -> ExerciseInFile:
    """The exercise of such lines. Raises InputError when they are not as they were handed out."""
    wrong = InputError("this exercise is not as it was handed out: take a fresh copy of your workbook; your answers stay")
    if len(text) > _LONGEST:
        raise wrong
    head, questions = {}, []
    for line in filter(None, (line.strip() for line in text.splitlines())):
        name, colon, value = line.partition(": ")
        if line.count("|") == 2:
            code, seed, given = (part.strip() for part in line.split("|"))
            code, _, way = (part.strip() for part in code.partition(">"))
            pairs = [pair.partition(" = ") for pair in given.split("; ") if pair]
            if not (seed.isascii() and seed.isdigit() and len(seed) < 18) or any(not mark for _, mark, _ in pairs):
                raise wrong
            questions.append(Issued(SetQuestion(code, 1, way), int(seed), {key: value for key, _, value in pairs}))
        elif colon and name in ("learner", "set", "title", "feedback", "tries", "units"):
            head[name] = value.strip()
        else:
            raise wrong
    units = head.pop("units", system.METRES)
    if (
        units not in system.SYSTEMS
        or len(head) < 5
        or not questions
        or not head["tries"].isdigit()
        or len(head["tries"]) > 3
        or head["feedback"] not in ("at once", "after", "none")
    ):
        raise wrong
    return ExerciseInFile(learner_code(head["learner"]), head["title"], head["set"][:16], head["feedback"], int(head["tries"]), tuple(questions), units)


def workbook(group: SchoolClass, learner: str, issued: dict[str, Issued], mark: str, shipped: Path) -> bytes:
    """The workbook of one learner: the lesson named by the class file with the exercise in place of its exit check, or the exercise alone. Raises InputError."""
    exercise = ExerciseInFile(learner, group.title, mark, group.feedback, group.tries, tuple(issued.values()), group.units)
    cells = _exercise_cells(group, exercise)
    if group.workbook:
        book = _lesson(shipped / f"{group.workbook}.ipynb")
        place, after = _exit(book["cells"])
        book["cells"][place:after] = cells
    else:
        book = {"cells": cells, "metadata": _METADATA, "nbformat": 4, "nbformat_minor": 5}
    for number, cell in enumerate(book["cells"]):
        cell["id"] = f"cell-{number}"
    return (json.dumps(book, indent=1, ensure_ascii=False) + "\n").encode()


_METADATA = {"kernelspec": {"display_name": "Python 3", "language": "python", "name": "python3"}, "language_info": {"name": "python"}}


def _lesson(path: Path) -> dict:
    if not path.is_file():
        names = sorted(found.stem for found in path.parent.glob("*.ipynb"))
        raise InputError(f'there is no workbook "{path.stem}": write one of {", ".join(names)}, or leave the line out')
    return json.loads(path.read_text(encoding="utf-8"))


def _exit(cells: list[dict]) -> tuple[int, int]:
    """Where the exit check stands with its heading; at the end where there is none."""
    for place, cell in enumerate(cells):
        source = "".join(cell["source"])
        if cell["cell_type"] == "code" and source.lstrip().startswith("exit_check("):
            begin = place - 1 if place and "Exit check" in "".join(cells[place - 1]["source"]) else place
            return begin, place + 1
    return len(cells), len(cells)


def _exercise_cells(group: SchoolClass, exercise: ExerciseInFile) -> list[dict]:
    due = f" Hand it in by: {group.due}." if group.due else ""
    silent = {
        "at once": "Each answer is told at once.",
        "after": "Nothing is told until you hand in; then everything is.",
        "none": "Your instructor tells you what became of your answers.",
    }[group.feedback]
    tries = "" if group.tries == 0 else f" The first {group.tries} answers to a question count." if group.tries > 1 else " Your first answer counts."
    said = (
        f"## {_plain(group.title)}\n\nYour own numbers, learner {exercise.learner}: nobody else has them. Type each answer with its unit. {silent}{tries}"
        f" At the end press the button: it makes one small file, and you hand in that file.{due}"
    )
    lines = "\n".join(f"answer {issued.asked.code}: " + (f"\nway {issued.asked.code}: " if issued.asked.way else "") for issued in exercise.questions)
    paper = (
        "*If the boxes do not come alive:* double-click here, write each answer behind its colon with its unit, save the workbook, and hand in the workbook."
        f"\n\n```\nlearner: {exercise.learner}\n{lines}\n```"
    )
    call = f'from brimwork.notebook import {_CALL}\n\n{_CALL}("""\n{as_text(exercise)}\n""")'
    return [_text(said), {"cell_type": "code", "execution_count": None, "metadata": {}, "outputs": [], "source": call}, _text(paper)]


def _text(source: str) -> dict:
    return {"cell_type": "markdown", "metadata": {}, "source": source}


def _plain(title: str) -> str:
    """A title inside Markdown, as words."""
    from brimwork.shown import in_markdown

    return in_markdown(title)
