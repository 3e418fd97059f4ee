"""Bad luck by the thousand: a program killed at every write, a full disk, a read-only file, a folder that is gone, two writers, a clock set back.

By hand: python tests/campaigns/faults.py [--share 1.0]. After each fault everything that a user had saved is looked for: a design, the changes that a view
keeps, an answers file, a pack. What is lost is counted, and has to be 0; so has what is told as saved and is not.
"""

from __future__ import annotations

import argparse
import errno
import multiprocessing
import os
import random
import shutil
import sys
import tempfile
from collections import Counter
from pathlib import Path

from brimwork import files
from brimwork.design.typed.file import load_design, save_design
from brimwork.exercise import answers
from brimwork.notebook import keeping, opening
from brimwork.notebook.opened import OpenDesign
from brimwork.pack.own import is_own, write_own
from brimwork.units import InputError

CALLS = ("open", "write", "fsync", "replace", "unlink", "link", "chmod", "close", "ftruncate")  # of the operating system, where a program can be stopped
TIMES = {"killed": 1000, "full": 500, "read-only": 150, "gone": 150, "two writers": 150, "clock": 150}
DESIGN = "bowl.toml"
_fork = multiprocessing.get_context("fork")


class Lost(Exception):
    """Something that a user had is nowhere."""


class AtCall:
    """Does something at the n-th call of the operating system by which files are changed."""

    def __init__(self, at: int, act):
        self.left, self.act, self.kept = at, act, {name: getattr(os, name) for name in CALLS}

    def __enter__(self) -> AtCall:
        for name, real in self.kept.items():
            setattr(os, name, self._counted(name, real))
        return self

    def _counted(self, name: str, real):
        def call(*given, **named):
            self.left -= 1
            if self.left == 0:
                self.act(name)
            return real(*given, **named)

        return call

    def __exit__(self, *_) -> None:
        for name, real in self.kept.items():
            setattr(os, name, real)


def killed(_) -> None:
    os._exit(9)


def refusing(number: int):
    def refuse(name: str) -> None:
        if name not in ("unlink", "close"):
            raise OSError(number, os.strerror(number))

    return refuse


# --- what a user does, and what must be there after it ---------------------------------------------------------------------------------


def all_gone() -> None:
    """As if the kernels of all views had ended."""
    for one in [*keeping._ours.values()]:
        one._let_go()
    keeping._ours.clear()


def view_of(path: Path) -> OpenDesign:
    view = OpenDesign(path)
    view._worked = lambda: None  # of the files only
    return view


def start(folder: Path) -> None:
    shutil.copy(opening.shipped() / "designs" / "library-bowl.toml", folder / DESIGN)
    answers.note(folder / "answers.json", "before", "the first answer", "estimate")
    write_own(folder / "pack.pdf", b"%PDF-1.7\nfirst\n%%EOF", "")


def saves(folder: Path, number: int) -> str:
    save_design(load_design(folder / DESIGN).having("vessel.mass", f"{100 + number} kg"), folder / DESIGN, load_design(folder / DESIGN))
    return "saved"


def changes(folder: Path, number: int) -> str:
    view = view_of(folder / DESIGN)
    view.change("pump.power", f"{50 + number} W")
    return "" if view.keeping.trouble else "kept"


def changes_and_saves(folder: Path, number: int) -> str:
    view = view_of(folder / DESIGN)
    view.change("pump.power", f"{50 + number} W")
    view.save()
    return "saved" if "Saved" in view.said.words else "" if view.keeping.trouble or not view.keeping.path else "kept"


def answering(folder: Path, number: int) -> str:
    answers.note(folder / "answers.json", "now", f"answer {number}", "estimate")
    return "saved"


def printing(folder: Path, number: int) -> str:
    write_own(folder / "pack.pdf", b"%%PDF-1.7\npack %d\n%%%%EOF" % number, "")
    return "saved"


ACTS = {"save": saves, "change": changes, "change and save": changes_and_saves, "answer": answering, "print": printing}


def look(folder: Path, act: str, number: int, told: str) -> None:
    """Raises Lost where something is missing that was there before, or that was told as saved or kept."""
    design = load_design(folder / DESIGN)
    if len(design.values) < 50:
        raise Lost("values of the design")
    if act == "save" and design["vessel.mass"] not in ((100 + number, 72) if not told else (100 + number,)):
        raise Lost(f"the design has {design['vessel.mass']}")
    if act.startswith("change"):
        left = [one.mine["pump.power"] for one in keeping.left_of(folder / DESIGN, design)]
        if told == "saved" and design["pump.power"] != 50 + number or told == "kept" and 50 + number not in left and design["pump.power"] != 50 + number:
            raise Lost(f"a change, {told}: {design['pump.power']}, {left}")
    held = [entry["answer"] for entry in answers.load_answers(folder / "answers.json")]
    if "the first answer" not in held or act == "answer" and told and f"answer {number}" not in held:
        raise Lost(f"an answer: {held}")
    pack = (folder / "pack.pdf").read_bytes()
    if not is_own(pack) or act == "print" and told and b"pack %d\n" % number not in pack:
        raise Lost("the pack")
    files.STALE = -1.0
    files.write_whole(folder / DESIGN, (folder / DESIGN).read_bytes())  # the next write clears away what a killed one left
    files.STALE = 60.0
    if litter := [path.name for path in folder.glob(f".{DESIGN}.*.part")]:
        raise Lost(f"litter: {litter}")


# --- the faults ------------------------------------------------------------------------------------------------------------------------


def in_child(act: str, folder: Path, number: int, at: int) -> str:
    """Do it in a process that is killed at the call numbered `at`; what it had told before, and whether it was killed."""
    tell, told = _fork.Pipe(False), None
    told, send = tell

    def work() -> None:
        all_gone()
        with AtCall(at, killed):
            said = ACTS[act](folder, number)
        send.send(said)
        os._exit(0)

    child = _fork.Process(target=work)
    child.start()
    child.join(60)
    said = told.recv() if told.poll() else ""
    told.close(), send.close()
    return said


def fault_killed(folder: Path, draw: random.Random, number: int) -> None:
    act = draw.choice(list(ACTS))
    look(folder, act, number, in_child(act, folder, number, draw.randint(1, 24)))


def fault_full(folder: Path, draw: random.Random, number: int) -> None:
    act, told = draw.choice(list(ACTS)), ""
    with AtCall(draw.randint(1, 20), refusing(draw.choice((errno.ENOSPC, errno.EDQUOT, errno.EIO, errno.EACCES)))):
        try:
            told = ACTS[act](folder, number)
        except InputError:
            pass
    all_gone()
    look(folder, act, number, told)


def fault_read_only(folder: Path, draw: random.Random, number: int) -> None:
    act, path = draw.choice((("save", DESIGN), ("change and save", DESIGN), ("print", "pack.pdf")))
    before = (folder / path).read_bytes()
    os.chmod(folder / path, 0o444)
    try:
        told = ACTS[act](folder, number)
    except InputError:
        told = ""
    os.chmod(folder / path, 0o644)
    if told == "saved" or (folder / path).read_bytes() != before:
        raise Lost("a read-only file was written")
    all_gone()
    look(folder, act, number, told)


def fault_gone(folder: Path, draw: random.Random, number: int) -> None:
    """The folder goes away while a view stands open, and comes back; meanwhile the page says that it keeps nothing."""
    view, away = view_of(folder / DESIGN), folder.with_name(f"{folder.name}-away")
    folder.rename(away)
    view.change("pump.power", f"{50 + number} W")
    if not view.keeping.trouble or "cannot be kept" not in view.trouble:
        raise Lost("not said")
    view.save()
    if "Saved" in view.said.words:
        raise Lost("told as saved")
    if folder.exists():
        shutil.rmtree(folder)
    away.rename(folder)
    view.change("pump.power", f"{60 + number} W")
    all_gone()
    look(folder, "change", number + 10, "kept")


def fault_two_writers(folder: Path, draw: random.Random, number: int) -> None:
    """Two programs save other values of one design, and add answers, all at once."""

    def one(key: str, name: str) -> None:
        base = load_design(folder / DESIGN)
        save_design(base.having(key, f"{300 + number} mm"), folder / DESIGN, base)
        for count in range(3):
            answers.note(folder / "answers.json", name, f"{name} {count}", "estimate")
        os._exit(0)

    keys = draw.sample(("vessel.height", "vessel.foot_outside", "vessel.rim_diameter", "reservoir.block_length"), 2)
    both = [_fork.Process(target=one, args=(key, key)) for key in keys]
    for child in both:
        child.start()
    for child in both:
        child.join(60)
    design, held = load_design(folder / DESIGN), [entry["answer"] for entry in answers.load_answers(folder / "answers.json")]
    if any(round(design[key] * 1000) != 300 + number for key in keys):
        raise Lost(f"a save was undone: {[design[key] for key in keys]}")
    if len(held) != 7:
        raise Lost(f"{len(held)} of 7 answers")
    look(folder, "", number, "")


def fault_clock(folder: Path, draw: random.Random, number: int) -> None:
    """The clock stands anywhere: what was kept, and what was changed in the file meanwhile, both count."""
    view = view_of(folder / DESIGN)
    view.change("pump.power", f"{50 + number} W")
    path = folder / DESIGN
    path.write_text(path.read_text(encoding="utf-8").replace('mass = "72 kg"', 'mass = "73 kg"'), encoding="utf-8")
    for one in (view.keeping.path, path):
        moment = draw.randrange(4_000_000_000)
        os.utime(one, (moment, moment))
    all_gone()
    again = view_of(path)
    if again.design["pump.power"] != 50 + number:
        raise Lost("what was kept is not offered")
    again.save()
    design = load_design(path)
    if (design["pump.power"], design["vessel.mass"]) != (50 + number, 73):
        raise Lost(f"{design['pump.power']}, {design['vessel.mass']}")
    all_gone()
    look(folder, "change", number, "saved")


FAULTS = {
    "killed": fault_killed, "full": fault_full, "read-only": fault_read_only, "gone": fault_gone, "two writers": fault_two_writers, "clock": fault_clock,
}  # fmt: skip


def run(share: float = 1.0, seed: int = 1, only: str = "") -> tuple[Counter, list[str]]:
    """How many faults of each kind, and what was lost."""
    draw, done, lost = random.Random(seed), Counter(), []
    with tempfile.TemporaryDirectory() as place:
        for kind, times in TIMES.items():
            for number in range(round(times * share) if not only or only == kind else 0):
                folder = Path(place, f"{kind.replace(' ', '-')}-{number}")
                folder.mkdir()
                start(folder)
                all_gone()
                done[kind] += 1
                try:
                    FAULTS[kind](folder, draw, number % 40)
                except Exception as error:
                    lost.append(f"{kind} {number}: {type(error).__name__}: {error}")
                shutil.rmtree(folder, ignore_errors=True)
    return done, lost


def main() -> int:
    reader = argparse.ArgumentParser(description=__doc__)
    reader.add_argument("--share", type=float, default=1.0, help="of the full number of faults")
    reader.add_argument("--seed", type=int, default=1)
    reader.add_argument("--only", default="", choices=("", *TIMES))
    chosen = reader.parse_args()
    done, lost = run(chosen.share, chosen.seed, chosen.only)
    for kind, times in done.items():
        print(f"{times:6} {kind}")
    for line in lost[:40]:
        print(f"  {line}")
    print(f"{done.total():6} faults, lost: {len(lost)}")
    return 1 if lost else 0


if __name__ == "__main__":
    sys.exit(main())
