"""The designs that lie in a folder: whose they are, which was open last, and how much of one is still an example's."""

from __future__ import annotations

import datetime
import json
import os
import re
from contextlib import suppress
from itertools import count
from pathlib import Path

from brimwork import files
from brimwork.design.typed import file, starting
from brimwork.design.typed.design import Design, blank_design
from brimwork.notebook.keeping import Left, all_kept
from brimwork.shown import clipped
from brimwork.units import InputError

DESIGNS = Path("designs")
EXAMPLES = ("library-bowl", "school-columns", "terrace-blade", "garden-cascade")  # invented designs that come with the workbooks: looked at, never written over
LAST_OPEN = ".last-open.json"
_NAME = re.compile(r"[^\W_][\w .,'()+-]{0,59}")
_DEVICES = re.compile(r"(?i)(con|prn|aux|nul|com\d|lpt\d)(\..*)?")


def file_name(name: str) -> str:
    """A name that every system can keep in one folder. Raises InputError."""
    stem = name.removesuffix(".toml").strip()
    if not _NAME.fullmatch(stem) or stem.endswith(".") or _DEVICES.fullmatch(stem):
        raise InputError(
            f"a design cannot be saved under the name {clipped(name, 40)!r}: type 60 letters, digits, spaces or hyphens at most, such as front-path"
        )
    return stem


def free_name(folder: Path, title: str = "my design") -> Path:
    """A file name in the folder that nothing has yet, from the title."""
    stem = re.sub(r"[^a-z0-9]+", "-", title.lower()).strip("-")[:40] or "my-design"
    for number in count(1):
        name = folder / f"{stem}{'' if number == 1 else f'-{number}'}.toml"
        if not os.path.lexists(name) and not all_kept(folder, name.stem):
            return name
    raise AssertionError


def invented(design: Design, folder: Path = DESIGNS) -> int:
    """How many values of a copy of an example are still those of the example; 0 for what is no copy, or where the example is gone."""
    name = next((name for name in EXAMPLES if copied(name) in design.note), "")
    with suppress(InputError):
        values = file.load_design(folder / f"{name}.toml").values if name else {}
        return sum(design.values.get(key) == given for key, given in values.items() if not starting.is_usual(design, key))
    return 0


def copied(name: str) -> str:
    """What the note of a copy of an example says."""
    return f"A copy of the invented example {name.replace('-', ' ')}: what was not changed in it is invented."


def own_designs(folder: Path = DESIGNS) -> list[tuple[str, str, str]]:
    """The designs in a folder that are somebody's own, as (path, what it is, when it was changed), the newest first: saved ones, and those of which only unsaved changes are kept."""
    shipped = {*EXAMPLES, "quick-check"}
    saved = [path for path in folder.glob("[!.]*.toml") if path.stem not in shipped]
    found: dict[str, float] = {}
    for path in saved:
        with suppress(OSError):
            found[str(path)] = path.stat().st_mtime
    for kept in all_kept(folder):
        stem = Left(kept, None, blank_design("blade", "x")).path.name[1:].rpartition(".")[0].rpartition(".")[0]
        if stem and stem not in shipped:
            with suppress(OSError):
                found[str(folder / f"{stem}.toml")] = max(found.get(str(folder / f"{stem}.toml"), 0.0), kept.stat().st_mtime)
    return [
        (path, _titled(Path(path)), f"{datetime.datetime.fromtimestamp(found[path]):%d %b %Y, %H:%M}") for path in sorted(found, key=lambda path: -found[path])
    ]


def _titled(path: Path) -> str:
    with suppress(InputError, OSError):
        if path.exists():
            design = file.load_design(path)
            return f"{design.title}, {design.kind}"
        return f"{path.stem}, not saved yet"
    return f"{path.stem}, cannot be read"


def last_open(folder: Path = DESIGNS) -> Path | None:
    """The file of the design that was open last, where it or what was kept of it is still there."""
    with suppress(OSError, ValueError, KeyError, TypeError):
        name = json.loads(files.read_bounded(folder / LAST_OPEN, 1000))["file"]
        path = folder / Path(name).name
        if path.exists() or all_kept(folder, path.stem):
            return path
    return None
