"""Changes to a design that were not saved yet: kept in a file beside it, for each open view apart, until they are saved or thrown away on purpose.

The file holds the design as it was read and as it stands now, so that it can be told without a clock whether anything in it is still to be saved.
While its view is open it is locked; one that nobody locks was left by a view that is gone.
"""

from __future__ import annotations

import glob
import json
import secrets
from contextlib import suppress
from datetime import datetime
from pathlib import Path
from typing import IO, NamedTuple

from brimwork import files
from brimwork.design.typed.design import Design
from brimwork.design.typed.file import LARGEST_FILE, dump_design, load_design, parse_design
from brimwork.design.typed.merging import merged
from brimwork.units import InputError

ENDING, EARLIER = ".unsaved", ".unsaved.toml"  # a file of an earlier edition holds the design alone
_FORMAT = 1
_ours: dict[Path, Keeping] = {}  # files of views in this process


class Left(NamedTuple):
    """Changes that were kept: the file, the design that they began as (None where there was none), and the design with them."""

    path: Path
    base: Design | None
    mine: Design

    @property
    def of(self) -> str:
        """The design file whose changes these are, and when they were made."""
        stem = self.path.name[1:].removesuffix(EARLIER) if self.path.name.endswith(EARLIER) else self.path.name[1:].rpartition(".")[0].rpartition(".")[0]
        with suppress(OSError):
            return f"{stem} ({datetime.fromtimestamp(self.path.stat().st_mtime):%d %B %Y, %H:%M})"
        return stem


class Keeping:
    """What one view keeps. `trouble` says why its changes cannot be kept, or is empty."""

    def __init__(self) -> None:
        self.path: Path | None = None
        self.trouble, self.cell = "", _cell()
        self._held: IO[bytes] | None = None
        self._base: tuple[Design | None, str | None] | None = None

    def keep(self, design_file: Path, base: Design | None, mine: Design) -> None:
        """Keep the changes to a design; what cannot be kept is told by `trouble`."""
        body = _body(self._as_text(base), dump_design(mine))
        place = self.path if self.path and self.path.parent == design_file.parent else _new(design_file)
        try:
            self._let_go()
            files.write_whole(place, body)
        except OSError as error:
            self.trouble = (
                f"These changes cannot be kept ({error.strerror}): save them under a name in another folder, or they are lost when this page is closed"
            )
            return
        if self.path and self.path != place:
            self.drop()
        self.take(place)

    def _as_text(self, base: Design | None) -> str | None:
        """The design that the changes began as, as text; written once, for it is the same from change to change."""
        if self._base is None or self._base[0] is not base:
            self._base = (base, dump_design(base) if base else None)
        return self._base[1]

    def may_take(self, place: Path) -> bool:
        """Whether nobody else needs a file of kept changes: no other view, or one that this view replaces since its cell was run again."""
        other = _ours.get(place)
        return other is None or bool(self.cell) and other.cell == self.cell

    def take(self, place: Path) -> None:
        """Go on with a file of kept changes."""
        other = _ours.get(place)
        if other not in (None, self):
            other.path = None
            other._let_go()
        self.path, self.trouble = place, ""
        _ours[place] = self
        with suppress(OSError):  # without a lock it is found by others too, and nothing is lost
            self._held = open(place, "rb")
            files.take_lock(self._held, shared=False)

    def _let_go(self) -> None:
        """Give back the lock."""
        if self._held:
            self._held.close()
        self._held = None

    def close(self) -> None:
        """The view is gone; what it kept stays."""
        self._let_go()
        if self.path and _ours.get(self.path) is self:
            del _ours[self.path]

    def drop(self) -> None:
        """What is saved, or thrown away on purpose, need not be kept."""
        self._let_go()
        self.trouble = ""
        if self.path:
            _ours.pop(self.path, None)
            with suppress(OSError):
                self.path.unlink()
        self.path = None


def _cell() -> str:
    """The cell of the notebook that runs now, where there is one."""
    from IPython import get_ipython

    try:
        return get_ipython().get_parent()["metadata"]["cellId"]
    except (AttributeError, KeyError, TypeError):
        return ""


def _new(design_file: Path) -> Path:
    stem = design_file.stem.encode()[:100].decode(errors="ignore")
    return design_file.with_name(f".{stem}.{secrets.token_hex(4)}{ENDING}")


def read_kept(path: Path) -> Left:
    """The changes in a file. Raises InputError."""
    if path.name.endswith(EARLIER):
        return Left(path, None, load_design(path))
    try:
        body = json.loads(files.read_bounded(path, 3 * LARGEST_FILE))
        if body["format"] != _FORMAT:
            raise ValueError
        base = body["base"]
        return Left(path, None if base is None else parse_design(base), parse_design(body["mine"]))
    except (OSError, ValueError, KeyError, TypeError, RecursionError, AttributeError):
        raise InputError(f"{path} holds no changes that can be read") from None


def _body(base: str | None, mine: str) -> bytes:
    return json.dumps({"format": _FORMAT, "base": base, "mine": mine}, ensure_ascii=False).encode()


def note_saved(began: Left, design_file: Path) -> None:
    """A design of which nobody had a file began as what another view kept, and is saved now: what those changes stood at then is what they are held against.

    Noted beside them, for their file is locked by whoever has them open.
    """
    with suppress(OSError):
        held = {name: text for name, text in _begun(design_file).items() if (design_file.parent / name).exists()}
        files.write_whole(_notes(design_file), json.dumps({**held, began.path.name: dump_design(began.mine)}, ensure_ascii=False).encode())


def begun_as(kept: Path, design_file: Path) -> Design | None:
    """What kept changes of a design stood at when another view that had begun as them saved it; None where none has."""
    with suppress(InputError):
        return parse_design(_begun(design_file)[kept.name]) if kept.name in _begun(design_file) else None
    return None


def _notes(design_file: Path) -> Path:
    return design_file.with_name(f".{design_file.stem}.begun")


def _begun(design_file: Path) -> dict[str, str]:
    """By the name of a file of kept changes: the text of the design that it held."""
    try:
        held = json.loads(files.read_bounded(_notes(design_file), 10 * LARGEST_FILE))
        return {str(name): str(text) for name, text in held.items()}
    except (OSError, ValueError, AttributeError, RecursionError):
        return {}


def all_kept(folder: Path, stem: str = "*") -> list[Path]:
    """The files of kept changes in a folder, or of one design in it; the newest last."""
    stem = stem if stem == "*" else glob.escape(stem.encode()[:100].decode(errors="ignore"))
    try:
        found = {*folder.glob(f".{stem}.????????{ENDING}"), *folder.glob(f".{stem}{EARLIER}")}
        return sorted(found, key=lambda path: (path.stat().st_mtime, path.name))
    except OSError:
        return []


def held_elsewhere(path: Path) -> bool:
    """Whether a view of another process has these changes open."""
    if path in _ours:
        return False
    try:
        with open(path, "rb") as file, files.locked(file, patience=0):
            return False
    except OSError:
        return True


def left_of(design_file: Path, now: Design | None) -> list[Left]:
    """Changes to a design that are not in its file `now` and that no other process has open, the newest last; those that are in it are cleared away."""
    found = []
    for path in all_kept(design_file.parent, design_file.stem):
        if held_elsewhere(path):
            continue
        try:
            left = read_kept(path)
        except InputError:
            continue
        if now is not None and left.base is None:
            left = left._replace(base=begun_as(path, design_file))
        if now is None or merged(left.base or now, left.mine, now)[0] != now:
            found.append(left)
        elif path not in _ours:
            with suppress(OSError):
                path.unlink()
    return found
