"""A learner's answers, in one small file that the learner owns: written whole on every answer, never sent anywhere.

The file carries what was asked (code, seed, numbers), what was typed and when, and what kind of answer it was. A file that cannot be read
is set aside under another name, never written over.
"""

from __future__ import annotations

import hashlib
import json
import os
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from brimwork import files
from brimwork.exercise.diagnosis import Diagnosis
from brimwork.units import InputError

FORMAT = 1
LARGEST = 5_000_000  # bytes
LONGEST_ANSWER = 200
_FIELDS = {"exercise": str, "seed": int, "numbers": dict, "answer": str, "middle": str, "at": str, "kind": str}


@dataclass(frozen=True)
class Kept:
    """What became of a record: the receipt of the whole file, and a word for the learner where something was not as it should be."""

    receipt: str
    said: str = ""


def record(path: str | Path, question, answer: str, found: Diagnosis, middle: str = "") -> Kept:
    """Add one answer to the file. Raises InputError when it cannot be written; the file is then as it was."""
    return _add(Path(path), question.code, question.seed, getattr(question, "numbers", {}), answer, middle, found.kind)


def note(path: str | Path, name: str, text: str, kind: str) -> Kept:
    """Add what is no answer to a question: an estimate, how sure somebody is, a value carried into a design. `kind` says which. Raises InputError."""
    return _add(Path(path), name, 1, {}, text, "", kind)


def _add(path: Path, name: str, seed: int, numbers: dict[str, str], answer: str, middle: str, kind: str) -> Kept:
    held, said = _opened(path)
    cut = {"answer": answer[:LONGEST_ANSWER], "middle": middle[:LONGEST_ANSWER]}
    entry = {"exercise": name, "seed": seed, "numbers": numbers, **cut, "at": datetime.now(UTC).isoformat(timespec="seconds"), "kind": kind}
    answers = [*held, entry]
    _save(path, answers)
    return Kept(receipt(answers), said)


def load(path: str | Path) -> list[dict]:
    """The answers in a file, oldest first; none where there is no file. Raises InputError for a file that is damaged or not of this kind."""
    path = Path(path)
    try:
        if not path.exists():
            return []
        with open(path, "rb") as file:
            raw = file.read(LARGEST + 1)
    except OSError as error:
        raise InputError(f"{path} cannot be read ({error.strerror}): choose another file") from None
    return read(raw, str(path))


def read(raw: bytes, shown: str = "the answers file") -> list[dict]:
    """The answers in the bytes of a file. Raises InputError."""
    if len(raw) > LARGEST:
        raise InputError(f"{shown} is larger than {LARGEST // 1_000_000} MB, which no answers file is")
    try:
        held = json.loads(raw.decode("utf-8"), parse_constant=_refuse)
    except (ValueError, RecursionError):
        raise InputError(f"{shown} is damaged: it is not readable as an answers file") from None
    if not isinstance(held, dict) or held.get("format") != FORMAT or not isinstance(held.get("answers"), list):
        raise InputError(f"{shown} is not an answers file of format {FORMAT}")
    if not all(isinstance(entry, dict) and all(type(entry.get(name)) is kind for name, kind in _FIELDS.items()) for entry in held["answers"]):
        raise InputError(f"{shown} is damaged: an answer in it is not complete")
    return held["answers"]


def _refuse(word: str) -> None:
    raise ValueError(word)


def last(answers: list[dict]) -> dict[str, dict]:
    """The last entry of everything that was asked: it is the one that counts."""
    return {entry["exercise"]: entry for entry in answers}


def counted(answers: list[dict]) -> str:
    """How many entries there are, and how many questions are right by their last answer, in words for page and paper."""
    right, entries = sum(entry["kind"] == "right" for entry in last(answers).values()), len(answers)
    return f"{entries} {'entry' if entries == 1 else 'entries'}, and {right} {'question' if right == 1 else 'questions'} right at the last try"


def receipt(answers: list[dict]) -> str:
    """A short code of everything in the file: SHA-256, its first 12 digits in groups of four. The same answers always give the same code."""
    text = json.dumps(answers, sort_keys=True, separators=(",", ":"), ensure_ascii=True)
    digest = hashlib.sha256(text.encode()).hexdigest()[:12].upper()
    return "-".join(digest[start : start + 4] for start in (0, 4, 8))


def _opened(path: Path) -> tuple[list[dict], str]:
    """The answers so far; a file that cannot be read is set aside."""
    try:
        return load(path), ""
    except InputError as error:
        if not path.is_file():
            raise
        aside = _set_aside(path)
        return [], f"{error}. It is kept as {aside.name}, and a new file was begun."


def _set_aside(path: Path) -> Path:
    """Rename a damaged file to a name that nothing has."""
    for number in range(1, 1000):
        aside = path.with_name(f"{path.stem}.damaged-{number}{path.suffix}")
        try:
            os.close(os.open(aside, os.O_CREAT | os.O_EXCL | os.O_WRONLY))  # takes the name, so that nothing there is replaced
        except FileExistsError:
            continue
        except OSError as error:
            raise InputError(f"{path} is damaged and cannot be set aside ({error.strerror}): save your answers under another name") from None
        os.replace(path, aside)
        return aside
    raise InputError(f"{path} is damaged, and too many damaged files stand beside it: clear them away")


def _save(path: Path, answers: list[dict]) -> None:
    text = json.dumps({"format": FORMAT, "answers": answers}, indent=1) + "\n"
    if len(text.encode()) > LARGEST:
        raise InputError(f"{path} is full: begin another answers file")
    try:
        files.write_whole(path, text.encode())
    except OSError as error:
        raise InputError(f"{path} cannot be written ({error.strerror}); the answers in it are as they were: make room, or name another file") from None
