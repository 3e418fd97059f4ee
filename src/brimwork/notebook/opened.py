"""The design that is open: its file, every change with its undo, saving and loading; whatever shows a design follows it. No widget here.

What is not saved is kept in a file beside it, so that a restart comes back to it as it was; which one was open last is kept too.
"""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from brimwork import files
from brimwork.design.follows.chain import Chain
from brimwork.design.follows.features import chain_of
from brimwork.design.judged.findings import Finding
from brimwork.design.typed import file, starting
from brimwork.design.typed.asking import meant
from brimwork.design.typed.design import Design, blank_design
from brimwork.design.typed.merging import Conflict, merged, shown
from brimwork.notebook.keeping import EARLIER, Keeping, Left, all_kept, begun_as, left_of, note_saved, read_kept
from brimwork.notebook.results import found_in
from brimwork.notebook.shelf import DESIGNS, LAST_OPEN, copied, free_name
from brimwork.units import InputError

MOST_UNDONE = 200  # changes that can be taken back


class Done(NamedTuple):
    """A change that can be taken back: the design before it, what it changed, in words, and which change it is of all that were made here."""

    design: Design
    what: str
    number: int


@dataclass
class Outcome:
    """What an act came to, in words; `alert` where it was refused or asks something."""

    words: str = ""
    alert: bool = False


class OpenDesign:
    """One design, open. Nothing of it is left or replaced before somebody was asked once."""

    made = 0  # changes so far, those that were taken back too
    began: Left | None = None  # what another view keeps of a design that has no file yet, as which this one began

    def __init__(self, path: Path, kind: str = ""):
        self.followers: list[Callable[[], None]] = []
        self.keeping, self.asked, self.said = Keeping(), "", Outcome()
        self.undone: list[Done] = []
        self.done: list[Done] = []
        self.asking: Conflict | None = None
        self.mine, self.example = str(path), False
        self.base, self.design, left, self.others, self.began = _with_changes(path, kind)
        self.unsaved, self.before = bool(left), self.design
        self._worked()
        self._go_on(left)
        self._tell_what_is_apart()

    @classmethod
    def of(cls, design: Design, path: Path, example: bool = False) -> OpenDesign:
        """A design that has no file yet, to be saved at `path`."""
        made = cls.__new__(cls)
        made.followers, made.keeping, made.asked, made.said = [], Keeping(), "", Outcome()
        made.undone, made.done, made.asking = [], [], None
        made.base, made.design, made.before = None, design, design
        made.mine, made.example, made.others, made.unsaved = str(path), example, 0, not example
        made._worked()
        if not example:
            made._keep()
        return made

    def _worked(self) -> None:
        self.chain: Chain = chain_of(self.design)
        self.found: list[Finding] = found_in(self.chain)

    def _go_on(self, left: Left | None) -> None:
        """Go on with changes that were kept."""
        if left:
            apart = " They began before there was a file, which holds something else: Save asks before it replaces that." if self._is_apart() else ""
            self.said = Outcome(f"With the changes of {left.of}, which were not saved.{apart}" + (" There are others: see My designs." if self.others else ""))
            if self.keeping.may_take(left.path):
                self.keeping.take(left.path)
            else:
                self._keep()
        remember(self)

    def _tell_what_is_apart(self) -> None:
        """Say which values of a file, nobody's own, are not what is usual for the sizes that stand in it; they count as they are until somebody changes them."""
        keys = starting.not_as_usual(self.design)
        if keys:
            usual = (starting.usual_of(self.design, key) for key in keys)
            told = "; ".join(
                f"{meant(key)} {shown(self.design.values[key])}, usual for these sizes {shown(one)}" for key, one in zip(keys, usual, strict=True) if one
            )
            self.said.words = f"{self.said.words} Kept as it stands in the file, and nobody's own: {told}. The usual one is offered at its box.".strip()

    # --- changes

    def change(self, key: str, text, basis: str = "yours", what: str = "") -> None:
        """One value changed. Raises InputError, and then nothing is changed."""
        changed = starting.followed_up(self.design, self.design.having(key, text, basis))
        self.put(changed, what or key)
        if text is None and key in changed.values:
            self.said = Outcome("An emptied box takes its usual value again.")

    def usual(self, key: str) -> None:
        """The usual value in place of what stands there. Raises InputError where there is none."""
        self.put(starting.back_to_usual(self.design, key), key)

    def turn(self, kind: str) -> None:
        """What is known here as another kind of feature. Raises InputError for one that there is not."""
        self.put(starting.turned_as(self.design, kind), f"as {kind}")

    def head(self, key: str, words: str) -> None:
        """Title, note or region changed. Raises InputError, and then nothing is."""
        changed = self.design.headed(key, words)
        self.put(starting.turned_to(self.design, words) if key == "region" else changed, key)

    def put(self, design: Design, what: str) -> None:
        """The whole design changed, as one change that can be taken back."""
        if design == self.design:
            return
        self.made += 1
        self.done = [*self.done, Done(self.design, what, self.made)][-MOST_UNDONE:]
        self.undone = []
        self._show(design)

    def undo(self) -> str:
        """Take the last change back; what it was, or nothing."""
        return self._turn(self.done, self.undone)

    def redo(self) -> str:
        """Make the change again that was taken back last; what it was, or nothing."""
        return self._turn(self.undone, self.done)

    def _turn(self, taken: list[Done], given: list[Done]) -> str:
        if not taken:
            return ""
        last = taken.pop()
        given.append(last._replace(design=self.design))
        self._show(last.design)
        return last.what

    def _show(self, design: Design) -> None:
        self.before, self.design = self.design, design
        self.was = self.found
        self.unsaved, self.asked = True, ""
        self._worked()
        self._keep()
        self.follow()

    was: list[Finding] = []
    of_example = ""  # the example that this is, or is a copy of

    def follow(self) -> None:
        """Tell all that show it."""
        for tell in list(self.followers):
            tell()

    later: Callable[[Callable[[], None]], None] | None = None  # where what was changed is shown first, and kept right after

    def _keep(self) -> None:
        if self.later:
            self.later(self._keep_now)
        else:
            self._keep_now()

    def _keep_now(self) -> None:
        self._learn_base()
        if self.unsaved:
            self.keeping.keep(Path(self.mine), self.base, self.design)

    def _learn_base(self) -> None:
        """Another view may have gone on from what this one keeps, and saved it."""
        if self.base is None and self.keeping.path and not self.example and os.path.exists(self.mine):
            self.base = begun_as(self.keeping.path, Path(self.mine))

    def _is_apart(self) -> bool:
        """Whether there is a file, and what is open did not begin as anything that was in it."""
        return self.base is None and os.path.exists(self.mine)

    # --- the file

    @property
    def trouble(self) -> str:
        """Why changes cannot be kept, or nothing."""
        return self.keeping.trouble

    def save(self, name: str = "") -> None:
        """Write the design, under another name where one is given; a file that is there is asked about first. What a refusal says is told by `said`."""
        name = name or self.mine
        self._learn_base()
        if (os.path.exists(name) if name != self.mine else self._is_apart()) and self._first_time(
            f"save {name} {_print_of(name)}", f"{name} is there already: save again to replace it"
        ):
            return
        self._save(name, self.base if name == self.mine else None)

    def _save(self, name: str, base: Design | None) -> None:
        self.asking = None
        if self.example and self.of_example and copied(self.of_example) not in self.design.note:
            note = f"{copied(self.of_example)} {self.design.note}".strip()
            self.design = self.design.headed("note", note[:2000])
            self._worked()
        before = self.design

        def write() -> None:
            self.base = file.save_design(before, name, base)

        try:
            done = self._tell(write)
        except Conflict as conflict:
            self.asking = conflict
            self.said = Outcome(
                f"Not saved yet. Since you opened {name}, somebody else has changed in it what you changed too. Choose what counts, value by value; all "
                "other changes of both of you are kept.",
                alert=True,
            )
            return
        if not done:
            return
        self.keeping.drop()
        if self.began and name == self.mine:
            note_saved(self.began, Path(name))
        self.began = None
        self.mine, self.unsaved, self.example = name, False, False
        taken = self.base is not None and self.base != before
        if taken and self.base:
            self.design = self.base
            self._worked()
        self.said = Outcome(
            f"Saved: {name}." + (" What somebody else had changed in the file since it was read is in it, and here, too." if taken and base is not None else "")
        )
        remember(self)
        self.follow()

    def decide(self, keep: dict[str, bool]) -> None:
        """Save with what was chosen for each value that both changed."""
        conflict, base = self.asking, self.base
        if conflict is None or base is None:
            return
        if any(one.key not in keep for one in conflict.both):
            self.said = Outcome("Not saved yet: choose for each value first.", alert=True)
            return
        self.design, _ = merged(base, self.design, conflict.file, keep)
        self._worked()
        self.base = conflict.file
        self._keep()
        self._save(self.mine, conflict.file)

    def leave_changes(self) -> None:
        """Back to the file as it was saved; undo takes that back too."""

        def leave() -> None:
            saved = file.load_design(self.mine)
            self.put(saved, "back to the saved file")
            self.keeping.drop()
            self.base, self.unsaved = saved, False

        if self._tell(leave):
            self.said = Outcome(f"As it was saved: {self.mine}.")

    def may_leave(self, what: str) -> bool:
        """Whether another design may take its place: at once where all is saved or kept, else after one question."""
        return not (
            self.unsaved and self.trouble and self._first_time(what, "The last change is neither saved nor kept: press again to leave it, or save it first")
        )

    def close(self) -> None:
        """Nothing shows it any more; what was not saved stays kept."""
        self.followers.clear()
        self.keeping.close()

    def _first_time(self, what: str, question: str) -> bool:
        """Ask about something that cannot be taken back; False when it was asked just before."""
        if self.asked == what:
            self.asked = ""
            return False
        self.asked, self.said = what, Outcome(f"{question}.", alert=True)
        return True

    def _tell(self, act: Callable[[], None]) -> bool:
        try:
            act()
        except Conflict:
            raise
        except OSError as error:
            self.said = Outcome(f"{self.mine} cannot be written ({error.strerror}): save it under another name.", alert=True)
            return False
        except InputError as error:
            self.said = Outcome(f"{error}.", alert=True)
            return False
        return True


def _print_of(name: str | Path) -> str:
    """Tells one content of a file from another, so that a question about one is not an answer for the next."""
    with suppress(OSError):
        return hashlib.sha256(files.read_bounded(Path(name), 50_000_000)).hexdigest()
    return ""


def _with_changes(path: Path, kind: str = "") -> tuple[Design | None, Design, Left | None, int, Left | None]:
    """What a file holds, the design with the changes that were made since and never saved, those changes, how many more there are, and what another page
    keeps of a design that has no file, where this one begins from that. Raises InputError.

    With a `kind`, a blank design of that kind where there is no file and nothing was kept.
    """
    now = file.load_design(path) if os.path.lexists(path) or not kind and not all_kept(path.parent, path.stem) else None
    if left := left_of(path, now):
        last = left[-1]
        return last.base or (now if last.path.name.endswith(EARLIER) else None), last.mine, last, len(left) - 1, None
    if now is None and not kind:  # nothing was saved yet, and another page has it open: begin from what that one keeps
        kept = read_kept(all_kept(path.parent, path.stem)[-1])
        return kept.mine, kept.mine, None, 0, kept
    return now, now or blank_design(kind, path.stem), None, 0, None


# --- which design, and those that lie there


def begin_design(kind: str, region: str, folder: Path = DESIGNS) -> OpenDesign:
    """A new design with usual values, which waits for its first answers. Raises InputError."""
    with suppress(OSError):  # where it cannot be made, saving says so
        folder.mkdir(exist_ok=True)
    made = OpenDesign.of(starting.started(kind, region), free_name(folder))
    remember(made)
    return made


def look_at(name: str, folder: Path = DESIGNS) -> OpenDesign:
    """An invented example, to look at and to change; saved, it becomes one's own under another name. Raises InputError."""
    made = OpenDesign.of(file.load_design(folder / f"{name}.toml"), free_name(folder, f"my {name}"), example=True)
    made.of_example = name
    made.said = Outcome("An invented example: nothing in it is yours, and some of its checks fail on purpose.")
    return made


def remember(opened: OpenDesign) -> None:
    """Keep which design was open last."""
    if not opened.example:
        with suppress(OSError):
            place = Path(opened.mine).parent / LAST_OPEN
            if place.parent.is_dir():
                files.write_whole(place, json.dumps({"file": Path(opened.mine).name}).encode())
