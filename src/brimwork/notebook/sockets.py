"""How a server and its kernels speak: through files that only their owner opens, where the system has such, so that no two programs take one number of a
port, and nobody else on the machine listens."""

from __future__ import annotations

import os
import socket
import tempfile
from pathlib import Path
from typing import TypedDict
from uuid import uuid4

from jupyter_core.paths import jupyter_runtime_dir

from brimwork.units import InputError


class Settings(TypedDict):
    """Of a Jupyter kernel manager."""

    transport: str
    connection_file: str


def for_a_kernel() -> Settings:
    """The settings of the manager of a new kernel."""
    return {"transport": transport(), "connection_file": str(_place() / f"kernel-{uuid4()}.json")}


def files_of(connection: str) -> list[str]:
    """All files by which a server and a kernel speak, by the one that says how."""
    return [connection, *(f"{connection.removesuffix('.json')}-ipc-{number}" for number in range(1, 6))]


def _place() -> Path:
    """Where Jupyter notes what runs. A kernel works in another folder than its server, so that this is always the whole path."""
    return Path(jupyter_runtime_dir()).absolute()


def check_place(folder: Path) -> None:
    """Raises InputError where Jupyter can note nothing about what runs; the folder of the workbooks has room for it."""
    place = _place()
    try:
        place.mkdir(mode=0o700, parents=True, exist_ok=True)
        with tempfile.TemporaryFile(dir=place):
            pass
    except OSError as error:
        reason = f"Jupyter notes in {place} what runs, and that cannot be written ({error.strerror})"
        line = 'set "{}={}"' if os.name == "nt" else "export {}='{}'"
        wanted = line.format("JUPYTER_RUNTIME_DIR", folder / ".running")
        raise InputError(f"{reason}: have it use a folder that you can write, as with {wanted} and type the same command again") from None


def transport() -> str:
    """Said to Jupyter: "ipc" where a socket can be a file in its folder of what runs, to which nobody else has access; "tcp" elsewhere: on Windows, in some
    folders of a network, where a path is too long, and where others may look into that folder."""
    if os.name == "nt":
        return "tcp"
    tried = _place() / f"kernel-{uuid4()}-ipc-0"  # as long as those of a kernel
    try:
        tried.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        about = tried.parent.stat()
        if about.st_uid != os.getuid() or about.st_mode & 0o077:
            return "tcp"
        with socket.socket(socket.AF_UNIX) as line:
            line.bind(str(tried))
        tried.unlink()
    except OSError:
        return "tcp"
    return "ipc"
