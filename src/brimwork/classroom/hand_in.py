"""The one small file that a learner hands in: the answers to an exercise, whose they are, and a receipt that depends on both."""

from __future__ import annotations

import json
from pathlib import Path

from brimwork.classroom.learner_files import ExerciseInFile
from brimwork.edition import __version__
from brimwork.exercise import answers
from brimwork.files import begin
from brimwork.units import InputError

_FORMAT = 1
MOST_NAMES = 999


def record_handed_in(exercise: ExerciseInFile) -> str:
    """The file in which the answers to an exercise are kept while it is worked on."""
    return f"answers-{exercise.learner}.json"


def entries(exercise: ExerciseInFile, held: list[dict]) -> list[dict]:
    """The answers to the questions of an exercise on its own numbers, and the notes that a solution was shown."""
    asked = {(issued.asked.code, issued.seed) for issued in exercise.questions}
    return [entry for entry in held if (entry["exercise"], entry["seed"]) in asked]


def content(exercise: ExerciseInFile, held: list[dict]) -> tuple[dict, str]:
    """What is handed in, and its receipt."""
    own = entries(exercise, held)
    receipt = answers.receipt(own, exercise.learner)
    head = {"learner": exercise.learner, "set": exercise.mark, "title": exercise.title, "kit": __version__, "receipt": receipt}
    return {"format": _FORMAT, "hand_in": head, "answers": own}, receipt


def write_hand_in(folder: Path, exercise: ExerciseInFile, held: list[dict]) -> tuple[Path, str]:
    """Write the file to hand in into `folder` under a name that nothing has; the same answers once only. Returns path and receipt. Raises InputError."""
    body, receipt = content(exercise, held)
    if not body["answers"]:
        raise InputError("there is no answer yet: answer a question first")
    raw = (json.dumps(body, indent=1, ensure_ascii=True) + "\n").encode()
    for number in range(1, MOST_NAMES + 1):
        path = folder / f"hand-in-{exercise.learner}{'' if number == 1 else f'-{number}'}.json"
        try:
            if path.is_file() and path.read_bytes() == raw:
                return path, receipt
            begin(path, raw)
            return path, receipt
        except FileExistsError:
            continue
        except OSError as error:
            raise InputError(f"{path} cannot be written ({error.strerror}): make room, or move the workbook to a folder of your own") from None
    raise InputError(f"{MOST_NAMES} files named hand-in-{exercise.learner} are there already: move old ones away")
