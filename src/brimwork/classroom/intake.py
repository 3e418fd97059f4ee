"""Everything that was handed in: a folder or an archive, looked through without following a link, each file read in a process apart that may be ended."""

from __future__ import annotations

import json
import os
import queue
import subprocess
import sys
import threading
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import IO

from brimwork.classroom.reading import HandIn, Said
from brimwork.units import InputError

SECONDS = 5.0  # for one file
MOST_FILES = 50_000
DEEPEST = 20
MOST_BYTES = 2_000_000_000  # of an archive, unpacked
_LITTER = {".DS_Store", "Thumbs.db", "desktop.ini"}


@dataclass(frozen=True)
class ComesFrom:
    """A file as it was handed in: the name under which it is listed, and where it is."""

    name: str
    path: str
    member: int | None = None


@dataclass(frozen=True)
class TakenIn:
    """What became of a file: hand-ins, or a marked design, or the reason why it could not be read."""

    source: ComesFrom
    sha256: str = ""
    hand_ins: tuple[HandIn, ...] = ()
    design: dict | None = None
    reason: str = ""


class Reader:
    """The process that reads; it is begun again when a file takes too long or ends it."""

    def __init__(self, brief: dict | None = None):
        self.brief = brief
        self.process: subprocess.Popen[str] | None = None
        self.lines: queue.Queue[str | None] = queue.Queue()

    def __enter__(self) -> Reader:
        return self

    def __exit__(self, *_) -> None:
        self._end()

    def ask(self, source: ComesFrom, do: str = "read") -> dict:
        process = self.process
        if process is None or process.poll() is not None:
            process = self._begin()
        job = {"do": do, "path": source.path, "member": source.member, "name": source.name, "brief": self.brief}
        try:
            _into(process).write(json.dumps(job) + "\n")
            _into(process).flush()
            line = self.lines.get(timeout=SECONDS)
        except queue.Empty:
            self._end()
            return {"reason": f"reading it took longer than {SECONDS:g} seconds"}
        except (OSError, ValueError):
            line = None
        if line is None:
            self._end()
            return {"reason": "the reader broke off at this file"}
        return json.loads(line)

    def _begin(self) -> subprocess.Popen[str]:
        line = [sys.executable, "-P", "-m", "brimwork.classroom.reading"]
        environment = {**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, sys.path))}
        self.process = process = subprocess.Popen(
            line, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True, encoding="utf-8", env=environment
        )
        self.lines = queue.Queue()
        threading.Thread(target=_listen, args=(process, self.lines), daemon=True).start()
        return process

    def _end(self) -> None:
        if self.process is not None:
            self.process.kill()
            self.process.wait()
            _into(self.process).close()
            self.process = None


def _into(process: subprocess.Popen[str]) -> IO[str]:
    assert process.stdin, "it was begun with a line into it"
    return process.stdin


def _listen(process: subprocess.Popen[str], lines: queue.Queue[str | None]) -> None:
    assert process.stdout, "it was begun with a line out of it"
    with process.stdout as said:
        for line in said:
            lines.put(line)
    lines.put(None)


def sources(place: Path) -> Iterator[ComesFrom | TakenIn]:
    """All files of a folder or of one archive, by name; what is passed over comes with its reason. Raises InputError where there is neither."""
    if place.is_dir():
        yield from _of_folder(place)
    elif place.is_file():
        yield ComesFrom(place.name, str(place))
    else:
        raise InputError(f"there is no folder or archive {place}: type brimwork mark FOLDER, with the folder that holds the files handed in")


def _of_folder(place: Path) -> Iterator[ComesFrom | TakenIn]:
    found: list[ComesFrom | TakenIn] = []
    waiting = [(str(place), "", 0)]
    while waiting:
        folder, prefix, depth = waiting.pop()
        try:
            entries = sorted(os.scandir(folder), key=lambda entry: entry.name)
        except OSError as error:
            found.append(TakenIn(ComesFrom(prefix or place.name, folder), reason=f"this folder cannot be opened ({error.strerror})"))
            continue
        for entry in entries:
            name = f"{prefix}{entry.name}"
            if len(found) > MOST_FILES:
                raise InputError(f"{place} holds more than {MOST_FILES} files: is it the folder of what was handed in?")
            if entry.name in _LITTER or entry.name == "__MACOSX" or entry.name == ".ipynb_checkpoints":
                found.append(TakenIn(ComesFrom(name, entry.path), reason="passed over: the machine made it, not the learner"))
            elif entry.is_symlink():
                found.append(TakenIn(ComesFrom(name, entry.path), reason="it is a link, and links are not followed"))
            elif entry.is_dir(follow_symlinks=False):
                if depth < DEEPEST:
                    waiting.append((entry.path, f"{name}/", depth + 1))
                else:
                    found.append(TakenIn(ComesFrom(name, entry.path), reason=f"it lies more than {DEEPEST} folders deep"))
            elif entry.is_file(follow_symlinks=False):
                found.append(ComesFrom(name, entry.path))
            else:
                found.append(TakenIn(ComesFrom(name, entry.path), reason="it is no file but a device or a pipe"))
    yield from sorted(found, key=lambda one: (one.source if isinstance(one, TakenIn) else one).name)


def take_in(place: Path, brief: dict | None = None) -> Iterator[TakenIn]:
    """Every file of a folder or archive, read or with the reason why not, in the order of their names. Raises InputError."""
    with Reader(brief) as reader:
        for source in sources(place):
            if isinstance(source, TakenIn):
                yield source
            elif _is_archive(source.path):
                yield from _of_archive(reader, source)
            else:
                yield _taken(reader, source)


def _is_archive(path: str) -> bool:
    try:
        with open(path, "rb") as file:
            return file.read(4) in (b"PK\x03\x04", b"PK\x05\x06")
    except OSError:
        return False


def _of_archive(reader: Reader, archive: ComesFrom) -> Iterator[TakenIn]:
    told = reader.ask(archive, "members")
    if "members" not in told:
        yield TakenIn(archive, reason=told["reason"])
        return
    left, found = MOST_BYTES, []
    for number, name, kind in told["members"]:
        source = ComesFrom(f"{archive.name}: {name}", archive.path, number)
        if kind == "folder":
            continue
        if kind == "link":
            found.append(TakenIn(source, reason="it is a link, and links are not followed"))
        elif "__MACOSX" in name or Path(name).name in _LITTER:
            found.append(TakenIn(source, reason="passed over: the machine made it, not the learner"))
        elif left <= 0:
            found.append(TakenIn(source, reason="the archive unpacks to more than any class hands in: it was read no further"))
        else:
            taken, size = _with_size(reader, source)
            left -= size
            found.append(taken)
    if not found:
        found.append(TakenIn(archive, reason="it is an archive without a file"))
    yield from sorted(found, key=lambda one: (one.source.name, one.source.member))


def _taken(reader: Reader, source: ComesFrom) -> TakenIn:
    return _with_size(reader, source)[0]


def _with_size(reader: Reader, source: ComesFrom) -> tuple[TakenIn, int]:
    told = reader.ask(source)
    hand_ins = tuple(HandIn(**{**one, "answers": [Said(**said) for said in one["answers"]]}) for one in told.get("hand_ins", ()))
    return TakenIn(source, told.get("sha256", ""), hand_ins, told.get("design"), told.get("reason", "")), told.get("size", 5_000_000)
