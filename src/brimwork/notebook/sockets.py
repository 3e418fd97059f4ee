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
    return {"transport": transport(), "connection_file": str(Path(jupyter_runtime_dir(), f"kernel-{uuid4()}.json"))}


def check_place() -> None:
    """Raises InputError where Jupyter can write nothing about what runs."""
    place = Path(jupyter_runtime_dir())
    try:
        place.mkdir(mode=0o700, parents=True, exist_ok=True)
        with tempfile.TemporaryFile(dir=place):
            pass
    except OSError as error:
        reason = f"Jupyter keeps what it notes of a running server in {place}, which cannot be written ({error.strerror})"
        raise InputError(f"{reason}: set JUPYTER_RUNTIME_DIR to a folder of your own, as in JUPYTER_RUNTIME_DIR=/tmp/mine brimwork open") from None


def transport() -> str:
    """Said to Jupyter: "ipc" where a socket can be a file in its folder of running kernels; "tcp" on Windows, in some folders of a network, and where its path is too long."""
    if os.name == "nt":
        return "tcp"
    tried = Path(jupyter_runtime_dir(), f"kernel-{uuid4()}-ipc-0")  # as long as those of a kernel
    try:
        tried.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        with socket.socket(socket.AF_UNIX) as line:
            line.bind(str(tried))
        tried.unlink()
    except OSError:
        return "tcp"
    return "ipc"
