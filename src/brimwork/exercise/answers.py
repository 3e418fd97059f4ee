"""A learner's answers, in one small file that the learner owns: every answer is added at its end under a lock, and nothing is sent anywhere.

The file carries what was asked (code, seed, numbers), what was typed and when, which try it was, what kind of answer it was taken for, and by which edition of
the kit. What it says about itself is worked out again by whoever counts it (`claims`). A file that cannot be read is kept under another name, and what is
whole in it is carried over; a full one goes on in a next part.
"""

from __future__ import annotations

import hashlib
import json
import os
import re
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from brimwork import files
from brimwork.edition import __version__
from brimwork.exercise.diagnosis import Diagnosis
from brimwork.exercise.receipts import receipt_in_words
from brimwork.topics import FORMER
from brimwork.units import InputError

_FORMAT = 1
LARGEST = 5_000_000  # bytes of one part
MOST_PARTS = 99
LONGEST_ANSWER = 200
SHOWN = "solution shown"  # kind of the note that the whole solution was shown
FRESH = "fresh numbers"  # kind of the note that somebody asked for other numbers
POINTS = "points seen"  # kind of the note which points of a model somebody found in a sentence of one's own
REASON = "reason given"  # kind of the note why a choice is right that came after others
NOTES = (SHOWN, FRESH, POINTS, REASON)  # kinds of notes that stand under the code of a question and are no answer to it
LEARNER = "learner code"  # what the note is called that says whose answers these are
_FIELDS = {"exercise": str, "seed": int, "numbers": dict, "answer": str, "middle": str, "at": str, "kind": str}
_HEAD, _TAIL = b'{"format": 1, "answers": [', b"\n]}\n"
_END = re.compile(rb"\s*\]\s*\}\s*\Z")


@dataclass(frozen=True)
class Kept:
    """What became of a record: the receipt of all answers, and a word for the learner where something was not as it should be."""

    receipt: str
    said: str = ""


def record(path: str | Path, question, answer: str, found: Diagnosis, middle: str = "") -> Kept:
    """Add one answer to the file. Raises InputError when it cannot be written; the file is then as it was."""
    return _add(Path(path), question.code, question.seed, getattr(question, "numbers", {}), answer, middle, found.kind, found.slip)


def note(path: str | Path, name: str, text: str, kind: str, seed: int = 1) -> Kept:
    """Add what is no answer to a question: an estimate, how sure somebody is, a value carried into a design. `kind` says which. Raises InputError."""
    return _add(Path(path), name, seed, {}, text, "", kind)


def load_answers(path: str | Path) -> list[dict]:
    """The answers in a file and its further parts, oldest first; none where there is no file. Raises InputError for one that is damaged or of another kind."""
    return [entry for part in parts(Path(path)) for entry in _entries(part)]


def _entries(part: Path) -> list[dict]:
    """The answers in one part, which is read again only where it is not as it was left. Raises InputError."""
    look = _look(part) if part.exists() else None
    if part in _READ and _READ[part][0] == look:
        return _READ[part][1]
    entries = _read(_bytes(part), str(part))
    if look is not None and look == _look(part) and part.exists():
        _READ[part] = look, entries
    return entries


def parts(path: Path) -> list[Path]:
    """The parts of an answers file that are there, the first one first."""
    found = [path] if path.exists() or path.is_symlink() else []
    while found and len(found) < MOST_PARTS and (more := _part(path, len(found) + 1)).exists():
        found.append(more)
    return found


def _part(path: Path, number: int) -> Path:
    return path if number == 1 else path.with_name(f"{path.stem}.part-{number}{path.suffix}")


def _bytes(path: Path) -> bytes:
    try:
        with open(path, "rb") as file, files.locked(file, shared=True):
            return file.read(LARGEST + 1)
    except OSError as error:
        raise InputError(f"{path} cannot be read ({error.strerror}): choose another file") from None


def _read(raw: bytes, shown: str = "the answers file") -> list[dict]:
    """The answers in the bytes of a file. Raises InputError."""
    if len(raw) > LARGEST:
        raise InputError(f"{shown} is larger than {LARGEST // 1_000_000} MB, which no answers file is")
    try:
        held = json.loads(raw.decode("utf-8"), parse_constant=_refuse)
    except (ValueError, RecursionError):
        raise InputError(f"{shown} is damaged: it is not readable as an answers file") from None
    if not isinstance(held, dict) or type(held.get("format")) is not int or held["format"] != _FORMAT or not isinstance(held.get("answers"), list):
        raise InputError(f"{shown} is not an answers file of format {_FORMAT}")
    if not all(map(complete, held["answers"])):
        raise InputError(f"{shown} is damaged: an answer in it is not complete")
    return [_now_called(entry) for entry in held["answers"]]


def _now_called(entry: dict) -> dict:
    """An answer under the name that its question has now; `called` keeps the one that was written."""
    return entry | {"exercise": FORMER[was], "called": was} if (was := entry["exercise"]) in FORMER else entry


def _as_written(entry: dict) -> dict:
    """An answer as it stands in the file, for the receipt."""
    return {name: value for name, value in (entry | {"exercise": entry["called"]}).items() if name != "called"} if "called" in entry else entry


def complete(entry: object) -> bool:
    """Whether an entry has all that every answer has, each of its kind."""
    return isinstance(entry, dict) and all(type(entry.get(name)) is kind for name, kind in _FIELDS.items())


def _refuse(word: str) -> None:
    raise ValueError(word)


# --- what the answers say -----------------------------------------------------------------------------------------------------------


def last(answers: list[dict]) -> dict[str, dict]:
    """The last entry of everything that was asked: it is the one that counts."""
    return {entry["exercise"]: entry for entry in answers if entry["kind"] not in NOTES and entry["exercise"] != LEARNER}


def learner(answers: list[dict]) -> str:
    """The code that the learner gave, or nothing."""
    return next((entry["answer"] for entry in reversed(answers) if entry["exercise"] == LEARNER), "")


def was_shown(answers: list[dict], name: str, seed: int) -> bool:
    """Whether the whole solution of a question on these numbers was ever shown."""
    return any(entry["kind"] == SHOWN and entry["exercise"] == name and entry["seed"] == seed for entry in answers)


def tries(answers: list[dict], name: str, seed: int | None = None) -> int:
    """How many answers were given to a question; on these numbers, or on any."""
    return sum(entry["exercise"] == name and entry["kind"] not in NOTES and seed in (None, entry["seed"]) for entry in answers)


def receipt(answers: list[dict], whose: str = "") -> str:
    """Two words and a number that stand for everything in the file and for whose it is. The same answers of the same learner always give the same."""
    state = _State(learner=whose)
    for entry in answers:
        state.add(entry)
    return state.receipt


@dataclass
class _State:
    """What must be known of a file to add to it: its bytes at its last look, a running hash of its answers, tries by question, whose it is."""

    looked: tuple[int, int, int] = (0, 0, 0)
    digest: Any = field(default_factory=hashlib.sha256)
    learner: str = ""
    tries: Counter = field(default_factory=Counter)

    def add(self, entry: dict) -> None:
        self.digest.update(json.dumps(_as_written(entry), sort_keys=True, separators=(",", ":"), ensure_ascii=True).encode() + b"\n")
        if entry["exercise"] == LEARNER:
            self.learner = entry["answer"]
        if entry["kind"] not in NOTES:
            self.tries[entry["exercise"], entry["seed"]] += 1

    @property
    def receipt(self) -> str:
        return receipt_in_words(hashlib.sha256(f"{self.learner}\n{self.digest.hexdigest()}".encode()).digest())


# --- adding one ---------------------------------------------------------------------------------------------------------------------

_READ: dict[Path, tuple[tuple[int, int, int], list[dict]]] = {}  # what was read of a part, with its look then
_STATES: dict[Path, list[tuple[Path, _State]]] = {}  # by answers file: its parts, each with what is known up to its end


def _add(path: Path, name: str, seed: int, numbers: dict[str, str], answer: str, middle: str, kind: str, slip: int | None = None) -> Kept:
    cut = {"answer": answer[:LONGEST_ANSWER], "middle": middle[:LONGEST_ANSWER]}
    entry = {"exercise": name, "seed": seed, "numbers": numbers, **cut, "at": datetime.now(UTC).isoformat(timespec="seconds"), "kind": kind}
    try:
        with _opened(path) as file:
            state, said = _known(path, file)
            entry |= {"try": state.tries[name, seed] + 1, "slip": slip, "kit": __version__}
            state.add(entry)
            _write(path, file, entry, state)
            return Kept(state.receipt, said)
    except OSError as error:
        _STATES.pop(path, None)
        _READ.clear()
        raise InputError(f"{path} cannot be written ({error.strerror}); the answers in it are as they were: make room, or name another file") from None


@contextmanager
def _opened(path: Path) -> Iterator:
    """The first part, locked for all of them; made where there is none. Raises InputError for what cannot be read."""
    if not path.exists():
        with suppress(FileExistsError):  # another writer was first
            files.begin(path, _HEAD + _TAIL)
    try:
        file = open(path, "r+b", buffering=0)
    except OSError as error:
        word = "cannot be written" if path.is_file() else "cannot be read"
        raise InputError(f"{path} {word} ({error.strerror}): choose another file") from None
    with file, files.locked(file):
        yield file


def _known(path: Path, first) -> tuple[_State, str]:
    """What is known of all parts, reading again only what another hand has changed; a damaged part is kept under another name and begun anew."""
    held = parts(path)
    known = _STATES.get(path, [])
    if [part for part, _ in known] == held and all(state.looked == _look(part) for part, state in known):
        return known[-1][1], ""
    state, told, known = _State(), [], []
    for part in held:
        try:
            entries = _read(_whole(first if part == path else part), str(part))
        except InputError as error:
            entries, said = _begun_anew(part, error)
            told.append(said)
        for entry in entries:
            state.add(entry)
        known.append((part, state))
    for part, _ in known:
        state.looked = _look(part)
    _STATES[path] = [(part, _State(_look(part), state.digest, state.learner, state.tries)) for part, _ in known]
    return _STATES[path][-1][1], " ".join(told)


def _whole(file) -> bytes:
    if isinstance(file, Path):
        return file.open("rb").read(LARGEST + 1)
    file.seek(0)
    return file.read(LARGEST + 1)


def _look(path: Path) -> tuple[int, int, int]:
    found = os.stat(path)
    return found.st_ino, found.st_size, found.st_mtime_ns


def _write(path: Path, first, entry: dict, state: _State) -> None:
    """Put one entry at the end of the last part, or begin the next part where that one is full; on failure the part is as it was."""
    line = json.dumps(entry, ensure_ascii=True).encode()
    part = _STATES[path][-1][0]
    read = _READ.pop(part, None)
    if os.stat(part).st_size + len(line) + 8 > LARGEST:
        if len(_STATES[path]) == MOST_PARTS:
            raise InputError(f"{path} is full, and so are its {MOST_PARTS} parts: begin another answers file")
        part = _part(path, len(_STATES[path]) + 1)
        files.begin(part, _HEAD + _TAIL)
        _STATES[path].append((part, _State(_look(part), state.digest, state.learner, state.tries)))
        read = None
    before = _look(part)
    if part == path:
        _append(first, line)
    else:
        with open(part, "r+b", buffering=0) as file:
            _append(file, line)
    _STATES[path][-1][1].looked = _look(part)
    if read and read[0] == before:
        _READ[part] = _look(part), [*read[1], entry]


def _append(file, line: bytes) -> None:
    size = file.seek(0, os.SEEK_END)
    start = file.seek(max(size - 200, 0))
    end = file.read()
    tail = _END.search(end)
    if not tail:  # so much white space that the end is not in sight
        start, end = file.seek(0), file.read()
        tail = _END.search(end)
        assert tail, "the end of a whole file is always found"
    place, old = start + tail.start(), end[tail.start() :]
    new = (b"" if end[: tail.start()].endswith(b"[") else b",") + b"\n" + line + _TAIL
    try:
        file.seek(place)
        written = file.write(new)
        if written != len(new):
            raise OSError(28, "no room on the disk")
        file.truncate(place + len(new))
        os.fsync(file.fileno())
    except OSError:
        file.seek(place)
        file.write(old)
        file.truncate(size)
        raise


def _begun_anew(path: Path, error: InputError) -> tuple[list[dict], str]:
    """Keep a damaged file under another name, and begin it anew with the answers in it that are whole."""
    raw = path.read_bytes()
    aside = _kept_aside(path, raw)
    whole = _salvaged(raw[:LARGEST])
    with open(path, "r+b") as file:  # in place: the lock is on this file
        file.truncate(0)
        file.write(_HEAD + b",".join(b"\n" + json.dumps(entry, ensure_ascii=True).encode() for entry in whole) + _TAIL)
    carried = f" with the {len(whole)} whole answers in it" if whole else ""
    return whole, f"{error}. It is kept as {aside.name}, and a new file was begun{carried}."


def _salvaged(raw: bytes) -> list[dict]:
    """The answers that stand whole on a line of a file that was cut off."""
    found = []
    if raw.startswith(_HEAD):
        for line in raw[len(_HEAD) :].split(b"\n"):
            try:
                entry = json.loads(line.rstrip().rstrip(b",").decode("utf-8"), parse_constant=_refuse)
            except (ValueError, RecursionError):
                continue
            if complete(entry):
                found.append(entry)
    return found


def _kept_aside(path: Path, raw: bytes) -> Path:
    """The damaged content under a name that nothing has."""
    for number in range(1, 1000):
        aside = path.with_name(f"{path.stem}.damaged-{number}{path.suffix}")
        try:
            files.begin(aside, raw)
        except FileExistsError:
            continue
        except OSError as error:
            raise InputError(f"{path} is damaged and cannot be set aside ({error.strerror}): save your answers under another name") from None
        return aside
    raise InputError(f"{path} is damaged, and too many damaged files stand beside it: clear them away")
