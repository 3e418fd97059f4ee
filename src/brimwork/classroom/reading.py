"""Reads one file from a stranger into plain answers: bounded in size, depth, time and memory, and nothing in it is ever run.

It works in a process of its own (`python -m brimwork.classroom.reading`): a line of JSON says what to read, a line of JSON says what was found or why not.
"""

from __future__ import annotations

import csv
import hashlib
import io
import json
import os
import stat
import sys
import zipfile
from dataclasses import asdict, dataclass, field
from functools import lru_cache

_LARGEST = 5_000_000  # bytes of one file
LARGEST_ARCHIVE = 500_000_000
MOST_MEMBERS = 20_000
MOST_CELLS = 2_000
MOST_SOURCE = 64_000  # characters of a notebook that are looked at
MOST_ENTRIES = 2_000
_LONGEST_SAID = 200
_LONGEST_NAME = 120
MEMORY = 1_500_000_000
_NAMES = ("exercise", "answer")


class Unreadable(Exception):
    """Why a file is not a hand-in, in words for the instructor."""


@dataclass
class Said:
    """One answer as it stands in a file. `claims` is what the file says it was; `shown` marks the note that a solution was shown."""

    question: str
    said: str
    way: str = ""
    seed: int = 0
    numbers: dict[str, str] = field(default_factory=dict)
    claims: str = ""
    at: str = ""
    shown: bool = False


@dataclass
class HandIn:
    """What one file says for one learner. `fits` tells whether its receipt is that of its answers; None where it has none."""

    kind: str
    learner: str = ""
    mark: str = ""
    receipt: str = ""
    fits: bool | None = None
    answers: list[Said] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)


def _read(raw: bytes, name: str) -> list[HandIn]:
    """The hand-ins in the bytes of a file; `name` only tells a table from other text. Raises Unreadable."""
    if len(raw) > _LARGEST:
        raise Unreadable(f"it is larger than {_LARGEST // 1_000_000} MB")
    if not raw.strip(b"\0 \t\r\n"):
        raise Unreadable("it is empty")
    if raw.startswith(b"PK\x03\x04"):
        raise Unreadable("it is an archive inside an archive: unpack it and put its files into the folder")
    if raw.startswith((b"%PDF", b"\x89PNG", b"\xff\xd8")):
        raise Unreadable("it is a picture or a PDF: type its answers into the table for answers on paper")
    if name.lower().endswith((".csv", ".tsv")):
        return _paper(raw)
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise Unreadable("it is no text that can be read: perhaps it was cut off or changed on the way") from None
    try:
        held = json.loads(text, parse_constant=_refuse)
    except RecursionError:
        raise Unreadable("it is nested deeper than any hand-in") from None
    except ValueError as error:
        raise Unreadable(f"it is damaged: {_where(error)}") from None
    if isinstance(held, dict) and isinstance(held.get("cells"), list):
        return [_notebook(held)]
    if isinstance(held, dict) and isinstance(held.get("answers"), list):
        return [_answers(held)]
    raise Unreadable("it is neither an answers file nor a notebook")


def _refuse(word: str) -> None:
    raise ValueError(f"it holds {word}, which is no number")


def _where(error: ValueError) -> str:
    if isinstance(error, json.JSONDecodeError):
        return f"it cannot be read from line {error.lineno} on"
    return str(error)[:80] if "holds" in str(error) else "it holds a number that is too long"


# --- answers files ------------------------------------------------------------------------------------------------------------------


def _answers(held: dict) -> HandIn:
    said = held.get("hand_in")
    head = said if isinstance(said, dict) else {}
    found = HandIn("answers file", _text(head.get("learner"), 20), _text(head.get("set"), 20), _text(head.get("receipt"), 60))
    entries, skipped = held["answers"], 0
    if len(entries) > MOST_ENTRIES:
        found.notes.append(f"it has {len(entries)} answers, and the last {MOST_ENTRIES} were read")
    for entry in entries[-MOST_ENTRIES:]:
        if isinstance(entry, dict) and entry.get("exercise") == "learner code" and not head:
            found.learner = _text(entry.get("answer"), 20)
        if said := _said(entry):
            found.answers.append(said)
        else:
            skipped += 1
    if skipped:
        found.notes.append(f"{skipped} answer{' is' if skipped == 1 else 's are'} not complete and {'was' if skipped == 1 else 'were'} passed over")
    if not found.answers:
        raise Unreadable("it has no answer that can be read")
    if found.receipt:
        found.fits = _receipt(entries, found.learner) == found.receipt
    return found


def _said(entry: object) -> Said | None:
    if not isinstance(entry, dict) or not all(isinstance(entry.get(name), str) and len(entry[name]) <= _LONGEST_NAME * 2 for name in _NAMES):
        return None
    seed, numbers = entry.get("seed"), entry.get("numbers")
    plain = numbers if isinstance(numbers, dict) and len(numbers) <= 40 and all(isinstance(text, str) for text in numbers.values()) else {}
    return Said(
        entry["exercise"],
        entry["answer"][:_LONGEST_SAID],
        _text(entry.get("middle"), _LONGEST_SAID),
        seed if type(seed) is int and abs(seed) < 1 << 62 else 0,
        {name[:40]: text[:60] for name, text in plain.items()},
        _text(entry.get("kind"), 40),
        _text(entry.get("at"), 40),
        entry.get("kind") == "solution shown",
    )


def _text(value: object, longest: int) -> str:
    return value[:longest] if isinstance(value, str) else ""


def _receipt(entries: list, learner: str) -> str:
    from brimwork.exercise import answers

    try:
        return answers.receipt(entries, learner)
    except (KeyError, TypeError, ValueError, RecursionError, AttributeError):
        return ""


# --- notebooks ----------------------------------------------------------------------------------------------------------------------


def _notebook(held: dict) -> HandIn:
    found, left = HandIn("notebook"), MOST_SOURCE
    if len(held["cells"]) > MOST_CELLS:
        found.notes.append(f"it has {len(held['cells'])} cells, and the first {MOST_CELLS} were read")
    filled: dict[str, list[str]] = {}
    ways: dict[str, str] = {}
    for cell in held["cells"][:MOST_CELLS]:
        source = cell.get("source") if isinstance(cell, dict) else None
        pieces = source if isinstance(source, list) else [source]
        text = "".join(piece for piece in pieces if isinstance(piece, str))[: max(left, 0)]
        left -= len(text)
        for line in text.splitlines():
            _line(line.strip(), found, filled, ways)
    if left <= 0:
        found.notes.append(f"only its first {MOST_SOURCE} characters were read")
    twice = sorted(code for code, texts in filled.items() if len(texts) > 1)
    if twice:
        found.notes.append(f"more than one answer line for {', '.join(twice)[:120]}: the last one that is filled in counts")
    found.answers = [Said(code, text, ways.get(code, "")) for code, texts in filled.items() for text in texts]
    if not found.answers:
        raise Unreadable("no answer line of the notebook is filled in: who worked in the boxes hands in the file that the button makes")
    return found


def _line(line: str, found: HandIn, filled: dict[str, list[str]], ways: dict[str, str]) -> None:
    head, colon, text = line.lstrip("#>*- ").partition(":")
    if not colon or len(line) > 500 or len(filled) > MOST_ENTRIES:
        return
    word, _, code = head.strip().partition(" ")
    text, code = text.strip()[:_LONGEST_SAID], code.strip()[:_LONGEST_NAME]
    if word.casefold() == "learner" and not code and text:
        found.learner = text[:20]
    elif word.casefold() == "set" and not code and text:
        found.mark = text[:20]
    elif word.casefold() == "answer" and code and text:
        filled.setdefault(code, []).append(text)
    elif word.casefold() == "way" and code and text:
        ways[code] = text


# --- from paper ---------------------------------------------------------------------------------------------------------------------


def _paper(raw: bytes) -> list[HandIn]:
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = raw.decode("cp1252", errors="replace")
    first = text.partition("\n")[0]
    try:
        rows = [[cell.strip() for cell in row] for row in csv.reader(io.StringIO(text, newline=""), delimiter=max(",;\t", key=first.count))]
    except csv.Error as error:
        raise Unreadable(f"it is damaged as a table: {error}") from None
    head = [cell.casefold() for cell in rows[0]] if rows else []
    if not {"code", "question", "said"} <= {*head}:
        raise Unreadable("it is a table without the columns code, question and said")
    places = [head.index(name) if name in head else None for name in ("code", "question", "said", "on the way")]
    by_code: dict[str, HandIn] = {}
    for row in rows[1 : MOST_MEMBERS + 1]:
        code, question, said, way = (row[place] if place is not None and place < len(row) else "" for place in places)
        if code and question and said:
            found = by_code.setdefault(code[:20], HandIn("paper", code[:20]))
            found.answers.append(Said(question[:_LONGEST_NAME], _plain(said)[:_LONGEST_SAID], _plain(way)[:_LONGEST_SAID]))
    if not by_code:
        raise Unreadable("it is a table in which no answer stands yet")
    return list(by_code.values())


def _plain(text: str) -> str:
    """A cell without the mark that keeps a spreadsheet from taking it for a formula."""
    return text[1:] if text[:1] == "'" else text


# --- the process --------------------------------------------------------------------------------------------------------------------


def _content(path: str, member: int | None) -> bytes:
    """The bytes of a file or of a member of an archive, one more than allowed at most. Raises Unreadable."""
    if member is not None:
        try:
            with _archive(path) as opened:
                with opened.open(opened.infolist()[member]) as file:
                    return file.read(_LARGEST + 1)
        except RuntimeError:
            raise Unreadable("it is locked with a password") from None
        except (OSError, zipfile.BadZipFile, NotImplementedError, EOFError, ValueError, MemoryError) as error:
            raise Unreadable(f"the archive is damaged at this file ({type(error).__name__})") from None
        except Exception as error:  # the decoders of an archive have errors of their own
            raise Unreadable(f"the archive is damaged at this file ({type(error).__name__})") from None
    try:
        handle = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_BINARY", 0))
        with os.fdopen(handle, "rb") as file:
            if not stat.S_ISREG(os.fstat(handle).st_mode):
                raise Unreadable("it is no file but a device, a pipe or a folder")
            return file.read(_LARGEST + 1)
    except OSError as error:
        raise Unreadable(f"it cannot be opened ({error.strerror})") from None


@lru_cache(maxsize=1)
def _opened(path: str) -> zipfile.ZipFile:
    return zipfile.ZipFile(path)


class _archive:
    """An archive that stays open from one member to the next."""

    def __init__(self, path: str):
        self.path = path

    def __enter__(self) -> zipfile.ZipFile:
        return _opened(self.path)

    def __exit__(self, *_) -> None:
        return None


def members(path: str) -> list[list]:
    """Number, name and kind of each member of an archive. Raises Unreadable."""
    if os.path.getsize(path) > LARGEST_ARCHIVE:
        raise Unreadable(f"it is an archive larger than {LARGEST_ARCHIVE // 1_000_000} MB")
    try:
        infos = _opened(path).infolist()
    except Exception as error:  # whatever a damaged archive makes of its reader
        raise Unreadable(f"it is a damaged archive ({type(error).__name__})") from None
    if len(infos) > MOST_MEMBERS:
        raise Unreadable(f"it is an archive with {len(infos)} files, and {MOST_MEMBERS} is the most")
    return [
        [number, info.filename[:400], "folder" if info.is_dir() else "link" if stat.S_ISLNK(info.external_attr >> 16) else "file"]
        for number, info in enumerate(infos)
    ]


def answer(job: dict) -> dict:
    """What a job finds, or the reason why not; a job for a design is marked against a brief."""
    try:
        if job["do"] == "members":
            return {"members": members(job["path"])}
        raw = _content(job["path"], job["member"])
        told = {"sha256": hashlib.sha256(raw).hexdigest(), "size": len(raw)}
        try:
            if job["name"].lower().endswith(".toml"):
                if not job.get("brief"):
                    raise Unreadable("it is a design file, and the class file names no brief to mark it against")
                from brimwork.classroom.designs import marked

                return {**told, "design": marked(raw, job["brief"])}
            return {**told, "hand_ins": [asdict(found) for found in _read(raw, job["name"])]}
        except Unreadable as error:
            return {**told, "reason": str(error)}
    except Unreadable as error:
        return {"reason": str(error)}
    except MemoryError:
        return {"reason": "it takes more memory than any hand-in"}
    except Exception as error:  # one file never stops the others
        return {"reason": f"it could not be read ({type(error).__name__})"}


def read_apart() -> None:
    """Answer jobs, a line each, until there are no more."""
    try:
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    except (ImportError, ValueError, OSError):
        pass
    for line in sys.stdin:
        print(json.dumps(answer(json.loads(line))), flush=True)


if __name__ == "__main__":
    read_apart()
