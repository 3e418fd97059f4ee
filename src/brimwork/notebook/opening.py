"""Opens Brimwork in the browser, over a folder of the user's own, where nothing of theirs is ever overwritten."""

from __future__ import annotations

import hashlib
import json
import os
import signal
import socket
import subprocess
import sys
import time
import webbrowser
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path

from brimwork import files
from brimwork.edition import __version__
from brimwork.files import write_whole
from brimwork.notebook.books import shipped
from brimwork.notebook.serving import WATCHED, YARD
from brimwork.notebook.yard import yard_at
from brimwork.units import InputError

STARTING = 60.0  # s that a server may take until it answers
_FOLDERS = ("JUPYTER_RUNTIME_DIR", "JUPYTER_DATA_DIR", "JUPYTER_CONFIG_DIR", "IPYTHONDIR")  # in the environment, maybe
_RECORD = ".brimwork.json"  # which edition of each file was laid out: name -> hash


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
        return _offer_fresh(target, name, content) if target.is_file() else []
    mine = target.read_bytes()
    if hashlib.sha256(mine).hexdigest() == known.get(name):
        files.write_instead(target, mine, content)
        known[name] = edition
        return [f"{name} is here in its new edition; you had not changed it"]
    beside = _beside(target, edition)
    if not beside.exists():
        _write(beside, content)
    known[name] = edition
    return [f"{name} was changed by you and left alone; the new edition is {beside.name}"]


def _offer_fresh(target: Path, name: str, content: bytes) -> list[str]:
    """Lay a workbook of ours beside one that was damaged since it was laid out: that cannot be read, or has lost cells of ours or their kind."""
    fresh = target.with_name(f"{target.stem} (fresh){target.suffix}")
    if target.suffix != ".ipynb" or fresh.exists() or not (lost := _lost(target.read_bytes(), content)):
        return []
    _write(fresh, content)
    return [f"{name} {lost}; a fresh one is {fresh.name}, and yours is left as it is"]


def _lost(mine: bytes, ours: bytes) -> str:
    """What is wrong with a workbook in comparison with the one that was laid out, or ""."""
    wanted = _kinds(ours)
    if not wanted:
        return ""
    have = _kinds(mine)
    if have is None:
        return "cannot be read as a workbook"
    gone = sum(have.get(cell) != kind for cell, kind in wanted.items())
    return f"has lost {gone} of its cells, or what they are" if gone else ""


def _kinds(book: bytes) -> dict[str, str] | None:
    """Which kind each cell of a workbook is, by its name; None for what is no workbook."""
    try:
        return {cell["id"]: cell["cell_type"] for cell in json.loads(book)["cells"]}
    except (ValueError, KeyError, TypeError, RecursionError):
        return None


def _beside(target: Path, edition: str) -> Path:
    return target.with_name(f"{target.stem} (edition {__version__}-{edition[:4]}){target.suffix}")


def first_page() -> str:
    """The start page, under the address of the server."""
    return "brimwork/"


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
    """What JupyterLab runs with: `brimwork` is a command in its terminals, and folders are named from where this command was typed."""
    named = {name: os.path.abspath(os.environ[name]) for name in _FOLDERS if os.environ.get(name)}
    return {**os.environ, **named, "PATH": os.pathsep.join([str(Path(sys.executable).parent), *filter(None, [os.environ.get("PATH")])])}


def command(folder: Path, browser: bool, port: int, yard: str | None = None) -> list[str]:
    options = [f"--ServerApp.root_dir={folder}", f"--LabApp.default_url=/{first_page()}", f"--ServerApp.port={port}"]
    options += [] if yard is None else [f"{YARD}{yard}"]
    return [sys.executable, "-P", "-m", "brimwork.notebook.serving", *options, *([] if browser else ["--no-browser"])]


def running(folder: Path) -> str | None:
    """The address of a server that has this folder open, if there is one that answers."""
    from jupyter_server.serverapp import list_running_servers

    for server in list_running_servers():
        if Path(server.get("root_dir", "")).resolve() == folder.resolve() and _answers(server):
            token = f"?token={server['token']}" if server.get("token") else ""
            return f"{server['url']}{first_page()}{token}"
    return None


def _answers(server: dict) -> bool:
    try:
        socket.create_connection((server["hostname"], server["port"]), timeout=2).close()
    except OSError:
        return False
    return True


@contextmanager
def _alone(folder: Path) -> Iterator[Callable[[], None]]:
    """Only one of several `brimwork open` for a folder looks for a server and starts one; the others wait until it has. Call what this gives to let them on."""
    from jupyter_core.paths import jupyter_runtime_dir

    with ExitStack() as held:
        with suppress(OSError):  # where nothing can be locked, each looks for itself
            place = Path(jupyter_runtime_dir())
            place.mkdir(parents=True, exist_ok=True, mode=0o700)
            name = hashlib.sha256(str(folder).encode()).hexdigest()[:16]
            held.enter_context(files.locked(held.enter_context(open(place / f"brimwork-{name}.lock", "ab")), patience=STARTING))
        yield held.close


def open_workbooks(folder: Path, browser: bool = True, port: int = 8888, yard: str | None = None) -> int:
    """Lay out the workbooks and serve them until that is stopped, or show where they are served already; returns the exit code.

    With `yard`, an address of this machine or "" for the usual one, other devices of its network are let in. Raises InputError.
    """
    if yard is not None:
        yard = yard_at(yard).address
    try:
        folder = folder.expanduser().resolve()
    except RuntimeError:
        raise InputError(f"there is no user of the name in {folder}: type 'brimwork open' with a folder of your own") from None
    with _alone(folder) as let_on:
        for line in lay_out(folder):
            print(f"brimwork: {line}", file=sys.stderr)
        if address := running(folder):
            print(f"Your workbooks in {folder} are open already, at this address:", file=sys.stderr)
            print(address)
            if yard is not None:
                raise InputError(f"your workbooks in {folder} are open already: stop that with Ctrl+C first, then type brimwork open --yard again")
            if browser:
                webbrowser.open(address)
            return 0
        print(f"Your workbooks are in {folder}. Stop with Ctrl+C.", file=sys.stderr)
        options = ["--allow-root"] if getattr(os, "geteuid", lambda: 1)() == 0 else []
        return _run_until_stopped([*command(folder, browser, port, yard), *options], folder, let_on, browser)


def _run_until_stopped(line: list[str], folder: Path, let_on: Callable[[], None], browser: bool) -> int:
    """Run the server in the folder of the workbooks, where its terminals start too; it ends when this command is asked to, and when this command is gone.

    The server stands in a session of its own: Ctrl+C comes to this command only, and the server does not ask whether it is meant.
    """
    asked: list[int] = []
    named = [getattr(signal, name) for name in ("SIGTERM", "SIGHUP", "SIGINT") if hasattr(signal, name)]
    before = {number: signal.signal(number, lambda number, _: asked.append(number)) for number in named if signal.getsignal(number) != signal.SIG_IGN}
    server = subprocess.Popen(line, env={**environment(), WATCHED: "1"}, cwd=folder, stdin=subprocess.PIPE, start_new_session=os.name != "nt")
    until, told = time.monotonic() + STARTING, False
    try:
        while server.poll() is None:
            if asked and not told:
                server.terminate()
                told = True
            if until and ((address := running(folder)) or time.monotonic() > until):
                if address:
                    print(f"It is {'open in your browser, or ' if browser else ''}at this address: {address}", file=sys.stderr)
                let_on()
                until = 0.0
            with suppress(subprocess.TimeoutExpired):
                server.wait(0.2)
    finally:
        server.terminate()
        server.wait()
        for number, handler in before.items():
            signal.signal(number, handler)
    return 0 if asked else server.returncode
