"""Files written whole or not at all: a killed program leaves the old file or the new one, never half of one."""

from __future__ import annotations

import os
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


def write_whole(path: Path, content: bytes) -> None:
    """Replace the file at `path` by `content`, keeping its permissions. Raises OSError, and then the old file is as it was."""
    handle, part = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(part, path.stat().st_mode & 0o777 if path.exists() else 0o644)
        os.replace(part, path)
    except BaseException:
        os.unlink(part)
        raise


def begin(path: Path, content: bytes) -> None:
    """Make a file that is not there yet, whole at once. Raises FileExistsError where there is one, and OSError."""
    handle, part = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(part, 0o644)
        try:
            os.link(part, path)
        except OSError:
            if os.path.lexists(path):
                raise FileExistsError(17, "the file exists", str(path)) from None
            with open(path, "xb") as file:  # a disk without links
                file.write(content)
    finally:
        os.unlink(part)


@contextmanager
def locked(file, shared: bool = False, patience: float = 10.0) -> Iterator[None]:
    """Hold the lock of an open file while something is done with it; a disk that knows no locks is used without. Raises OSError when another program keeps it."""
    until = time.monotonic() + patience
    while not _take_lock(file, shared):
        if time.monotonic() > until:
            raise BlockingIOError(11, "another program is writing to it")
        time.sleep(0.005)
    try:
        yield
    finally:
        _give_lock(file)


_FAR = 1 << 40  # on Windows a byte beyond every file is locked, so that what is in the file can still be read


def _take_lock(file, shared: bool) -> bool:
    """Whether the lock is ours now, or there are no locks here."""
    try:
        if os.name == "nt":
            import msvcrt

            here = file.tell()
            file.seek(_FAR)
            try:
                msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
            finally:
                file.seek(here)
        else:
            import fcntl

            fcntl.flock(file, (fcntl.LOCK_SH if shared else fcntl.LOCK_EX) | fcntl.LOCK_NB)
    except (BlockingIOError, PermissionError):
        return False
    except OSError:
        pass
    return True


def _give_lock(file) -> None:
    try:
        if os.name == "nt":
            import msvcrt

            file.seek(_FAR)
            msvcrt.locking(file.fileno(), msvcrt.LK_UNLCK, 1)
        else:
            import fcntl

            fcntl.flock(file, fcntl.LOCK_UN)
    except OSError:
        pass
