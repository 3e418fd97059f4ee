"""Opens the workbooks in JupyterLab, in a folder of the user's own, where nothing of theirs is ever overwritten."""

from __future__ import annotations

import hashlib
import json
import os
import subprocess
import sys
from pathlib import Path

from brimwork import __version__
from brimwork.files import write_whole
from brimwork.units import InputError

SETTINGS = Path(__file__).with_name("settings")
_RECORD = ".brimwork.json"  # which edition of each file was laid out: name -> hash


def shipped() -> Path:
    """The folder of workbooks that came with this installation."""
    package = Path(__file__).parents[1]
    for folder in (package / "workbooks", package.parents[1] / "workbooks"):
        if folder.is_dir():
            return folder
    raise InputError("this installation carries no workbooks: install Brimwork again")


def lay_out(folder: Path) -> list[str]:
    """Copy the workbooks into `folder`; a file that is there stays as it is, and a new edition of it is laid beside it. Returns what to tell."""
    if folder.exists() and not folder.is_dir():
        raise InputError(f"{folder} is a file; a folder is wanted: type 'brimwork open' with another name")
    source, told = shipped(), []
    try:
        folder.mkdir(parents=True, exist_ok=True)
        known = _known(folder)
        for path in sorted(p for p in source.rglob("*") if p.suffix in (".ipynb", ".toml") and ".ipynb_checkpoints" not in p.parts):
            name = path.relative_to(source)
            told += _lay(path, folder / name, str(name), {} if known is None else known)
        if known is not None:
            _write(folder / _RECORD, json.dumps(known, indent=1, sort_keys=True).encode())
    except OSError as error:
        raise InputError(f"{folder} cannot be written ({error.strerror}): type 'brimwork open' with a folder of your own") from None
    return told


def _lay(path: Path, target: Path, name: str, known: dict[str, str]) -> list[str]:
    content = path.read_bytes()
    edition = hashlib.sha256(content).hexdigest()
    if not os.path.lexists(target):
        _write(target, content)
        known[name] = edition
        return []
    if known.get(name) == edition or not target.is_file() or target.read_bytes() == content:
        known[name] = edition
        return []
    beside = target.with_name(f"{target.stem} (edition {__version__}-{edition[:4]}){target.suffix}")
    if not beside.exists():
        _write(beside, content)
    known[name] = edition
    return [f"{name} is yours and was left alone; the new edition is {beside.name}"]


def _known(folder: Path) -> dict[str, str] | None:
    """The record of this folder; None for one that cannot be read, which is left as it is."""
    try:
        known = json.loads((folder / _RECORD).read_text())
    except FileNotFoundError:
        return {}
    except (OSError, ValueError):
        return None
    return known if isinstance(known, dict) else None


def _write(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    write_whole(path, content)


def environment() -> dict[str, str]:
    """The settings that JupyterLab runs with: our server extension, and no news question."""
    paths = [str(SETTINGS), *filter(None, [os.environ.get("JUPYTER_CONFIG_PATH")])]
    return {**os.environ, "JUPYTER_CONFIG_PATH": os.pathsep.join(paths)}


def command(folder: Path, browser: bool, port: int) -> list[str]:
    options = [f"--ServerApp.root_dir={folder}", "--LabApp.default_url=/lab/tree/00-start.ipynb", f"--ServerApp.port={port}"]
    return [sys.executable, "-m", "jupyterlab", *options, *([] if browser else ["--no-browser"])]


def open_workbooks(folder: Path, browser: bool = True, port: int = 8888) -> int:
    """Lay out the workbooks and run JupyterLab until it is stopped; returns its exit code."""
    folder = folder.expanduser().resolve()
    for line in lay_out(folder):
        print(f"brimwork: {line}", file=sys.stderr)
    print(f"Your workbooks are in {folder}. Stop with Ctrl+C.", file=sys.stderr)
    options = ["--allow-root"] if getattr(os, "geteuid", lambda: 1)() == 0 else []
    try:
        return subprocess.run([*command(folder, browser, port), *options], env=environment()).returncode
    except KeyboardInterrupt:
        return 0
