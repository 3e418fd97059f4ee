"""Files written whole or not at all: a killed program leaves the old file or the new one, never half of one. And TOML: a value as it stands there, and what is wrong with a text."""

from __future__ import annotations

import datetime
import errno
import glob
import json
import os
import secrets
import stat
import sys
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path

_WHAT = "it is no ordinary file but a folder, a pipe or a device"
_ENDING = ".part"
STALE = 60.0  # s after which a part that nobody writes is litter


class Meanwhile(OSError):
    """The file is no longer what it was when it was read."""


def read_bounded(path: Path, most: int) -> bytes:
    """The bytes of an ordinary file, at most one more than `most`. Raises OSError, at once for a pipe or a device."""
    try:
        if not stat.S_ISREG(os.stat(path).st_mode):
            raise OSError(errno.EINVAL, _WHAT)
        handle = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
        with os.fdopen(handle, "rb") as file:
            if not stat.S_ISREG(os.fstat(handle).st_mode):
                raise OSError(errno.EINVAL, _WHAT)
            return file.read(most + 1)
    except ValueError:
        raise OSError(errno.EINVAL, "no file can have such a name") from None


def as_toml(value: object) -> str:
    """A value as it stands in TOML, whose strings are those of JSON but for one letter."""
    if isinstance(value, list | tuple):
        return f"[{', '.join(map(as_toml, value))}]"
    if isinstance(value, dict):
        return f"{{{', '.join(f'{key} = {as_toml(one)}' for key, one in value.items())}}}"
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")
    return value.isoformat() if isinstance(value, datetime.date | datetime.time) else repr(value).lower()


def not_toml(error: Exception) -> str:
    """What is wrong with a text that should be TOML, from what its reader raised."""
    told = str(error)
    if isinstance(error, UnicodeDecodeError):
        return "it is not a text file in UTF-8: open it in a text editor, and save it again with the encoding UTF-8"
    if isinstance(error, RecursionError):
        return "its brackets are nested too deep"
    if "overwrite" in told or "twice" in told or "Duplicate" in told:
        return f"a key or a section stands in it twice: {told}"
    return f"this is not TOML: {told}"


def write_whole(path: Path, content: bytes) -> None:
    """Replace the file at `path` by `content`, through a link, keeping its permissions. Raises OSError, and then the old file is as it was."""
    target = _target(path)
    part, handle = _part(target)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        if target.exists():
            os.chmod(part, stat.S_IMODE(target.stat().st_mode))
        os.replace(part, target)
        _settle(target.parent)
    except BaseException:
        with suppress(OSError):
            os.unlink(part)
        raise


def write_instead(path: Path, was: bytes | None, content: bytes) -> None:
    """Replace a file that is still `was`, or None where there was none. Raises Meanwhile where it is not, and OSError; then the file is as it is."""
    target = _target(path)
    with _folder_locked(target.parent):
        if (target.read_bytes() if target.exists() else None) != was:
            raise Meanwhile(errno.EBUSY, "it was changed meanwhile")
        write_whole(target, content)


def begin(path: Path, content: bytes) -> None:
    """Make a file that is not there yet, whole at once. Raises FileExistsError where there is one, and OSError."""
    part, handle = _part(path)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        try:
            os.link(part, path)
        except OSError:
            if os.path.lexists(path):
                raise FileExistsError(17, "the file exists", str(path)) from None
            with open(path, "xb") as file:  # a disk without links
                file.write(content)
    finally:
        with suppress(OSError):
            os.unlink(part)


def _target(path: Path) -> Path:
    """Where a write to `path` goes. Raises OSError for what is not to be replaced: a read-only file, a folder, a device."""
    try:
        target = Path(os.path.realpath(path))
        mode = target.stat().st_mode
    except FileNotFoundError:
        return target
    except ValueError:
        raise OSError(errno.EINVAL, "no file can have such a name") from None
    if not stat.S_ISREG(mode):
        raise OSError(errno.EINVAL, _WHAT)
    if not mode & 0o222 or not os.access(target, os.W_OK):
        raise OSError(errno.EACCES, "it is read-only")
    return target


def _part(target: Path) -> tuple[Path, int]:
    """A new file beside `target` to write into, with the permissions that new files get here, and its handle. Parts that a killed program left are cleared away."""
    shown = target.name.encode()[:100].decode(errors="ignore")
    _clear(target.parent, shown)
    part = target.parent / f".{shown}.{secrets.token_hex(4)}{_ENDING}"
    handle = os.open(part, os.O_CREAT | os.O_EXCL | os.O_WRONLY | getattr(os, "O_BINARY", 0), 0o666)
    if os.name != "nt":
        take_lock(handle, shared=False)  # held as long as it is written, and by nobody once the writer is gone
    return part, handle


def _clear(folder: Path, name: str) -> None:
    if sys.platform == "win32":
        return
    for part in folder.glob(f".{glob.escape(name)}.????????{_ENDING}"):
        with suppress(OSError), open(part, "rb") as file:
            if abs(time.time() - os.fstat(file.fileno()).st_mtime) > STALE and take_lock(file, shared=False):
                os.unlink(part)


def _settle(folder: Path) -> None:
    """Have the disk keep the new name of a file too, where it can."""
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


@contextmanager
def _folder_locked(folder: Path) -> Iterator[None]:
    """Only one program of this machine at a time replaces a file of this folder, where folders can be locked."""
    with ExitStack() as held:
        with suppress(OSError):
            handle = os.open(folder, os.O_RDONLY)
            held.callback(os.close, handle)
            held.enter_context(locked(handle))
        yield


@contextmanager
def locked(file, shared: bool = False, patience: float = 10.0) -> Iterator[None]:
    """Hold the lock of an open file, or on Unix of a handle, while something is done with it; a disk that knows no locks is used without. Raises OSError when another program keeps it."""
    until = time.monotonic() + patience
    while not take_lock(file, shared):
        if time.monotonic() > until:
            raise BlockingIOError(11, "another program is writing to it")
        time.sleep(0.005)
    try:
        yield
    finally:
        _give_lock(file)


_FAR = 1 << 40  # on Windows a byte beyond every file is locked, so that what is in the file can still be read


def take_lock(file, shared: bool) -> bool:
    """Whether the lock of an open file is ours now, or there are no locks here; it is given back when the file is closed."""
    try:
        if sys.platform == "win32":
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
        if sys.platform == "win32":
            import msvcrt

            file.seek(_FAR)
            msvcrt.locking(file.fileno(), msvcrt.LK_UNLCK, 1)
        else:
            import fcntl

            fcntl.flock(file, fcntl.LOCK_UN)
    except OSError:
        pass
