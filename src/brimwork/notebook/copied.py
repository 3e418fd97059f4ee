"""Kernels in no time: one process loads all that workbooks call, and each kernel is a copy of it, which shares its memory.

Only Linux copies a process of Python safely; elsewhere, and where no copy comes, a kernel starts by itself and loads it all.
"""

from __future__ import annotations

import asyncio
import json
import os
import select
import signal
import subprocess
import sys
import threading
from contextlib import suppress
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from jupyter_client.provisioning import LocalProvisioner

from brimwork.notebook import sockets, warming

if TYPE_CHECKING:
    from jupyter_client.manager import KernelManager

_WAITED = 60.0  # s that the original may take to load everything
LINE = "from brimwork.notebook.copied import be_copied; be_copied()"
_OURS = ("python", "python3", sys.executable)  # jupyter_client takes the first two for the third
_STARTS = ["-m", "ipykernel_launcher", "-f", "{connection_file}"]  # after it, in the line of a kernel that a copy can stand for
_ALONE = "-P"  # Python loads no module that lies in the folder where it is started
_FAILED = -1  # in place of the number of a copy
_ENDED = 1  # all that is known of how a copy ended


def _can_copy() -> bool:
    """Whether this system copies processes, and holds fast which process is meant."""
    if sys.platform != "linux":
        return False
    try:
        os.close(os.pidfd_open(os.getpid()))
    except (AttributeError, OSError):
        return False
    return True


CAN_COPY = _can_copy()


class Original:
    """The process that is copied; it begins when the first copy is wanted. Copies do without it once they are made, and all end with whoever made it."""

    def __init__(self) -> None:
        self._one_by_one = threading.Lock()
        self._process: subprocess.Popen[bytes] | None = None
        self._too_slow = False  # it did not load in time: nobody waits for it again

    def copy(self, **wanted: Any) -> int:
        """The number of a new process that is a kernel: `argv` as of ipykernel, `folder` where it works, `environment` where that differs from this. Raises OSError."""
        asked = json.dumps(wanted).encode() + b"\n"
        with self._one_by_one:
            return self._answered(asked) or self._answered(asked)

    def _answered(self, asked: bytes) -> int:
        """The number of the copy; 0 where what was loaded has changed since, so that another original is wanted."""
        if self._too_slow:
            raise OSError("no copy of a kernel comes on this machine")
        if self._process is None or self._process.poll() is not None:
            self._process = subprocess.Popen([sys.executable, _ALONE, "-c", LINE], stdin=subprocess.PIPE, stdout=subprocess.PIPE, start_new_session=True)
        told, heard = self._process.stdin, self._process.stdout
        assert told and heard
        told.write(asked)
        told.flush()
        self._too_slow = not _is_told(heard.fileno(), _WAITED)
        if self._too_slow or not (line := heard.readline()):
            self.end()
            raise OSError("no copy of the kernel came")
        if (number := int(line)) == _FAILED:
            raise OSError("the system makes no copy")
        if not number:
            self.end()
        return number

    def end(self) -> None:
        """End it; copies that live go on."""
        if self._process:
            self._process.kill()
            self._process.communicate()


def _is_told(descriptor: int, within: float | None = None) -> bool:
    """Whether something can be read there, or its other end is gone, within some seconds or ever."""
    looking = select.poll()
    looking.register(descriptor, select.POLLIN)
    return bool(looking.poll(None if within is None else within * 1000))


class _Process:
    """A process that is not a child of this one, as far as a kernel's manager asks for it; never taken for another that has its number later."""

    stdin = stdout = stderr = None

    def __init__(self, number: int):
        self.pid, self._held = number, os.pidfd_open(number)

    def __del__(self) -> None:
        os.close(self._held)

    def poll(self) -> int | None:
        return _ENDED if _is_told(self._held, 0) else None

    def wait(self, timeout: float | None = None) -> int | None:
        _is_told(self._held, timeout)
        return self.poll()

    def send_signal(self, number: int) -> None:
        signal.pidfd_send_signal(self._held, number)

    def terminate(self) -> None:
        self.send_signal(signal.SIGTERM)

    def kill(self) -> None:
        self.send_signal(signal.SIGKILL)


class Copied(LocalProvisioner):
    """Gives a kernel's manager a copy of an original."""

    original: Original

    async def launch_kernel(self, cmd: list[str], **given: Any):
        folder = str(given.get("cwd") or os.getcwd())
        if not os.path.isdir(folder):
            return await super().launch_kernel(cmd, **given)
        differs = {name: value for name, value in (given.get("env") or {}).items() if os.environ.get(name) != value}
        copying = asyncio.ensure_future(asyncio.to_thread(self.original.copy, argv=cmd[cmd.index("-f") :], folder=folder, environment=differs))
        try:
            process = _Process(await asyncio.shield(copying))
        except OSError:
            return await super().launch_kernel(cmd, **given)
        except asyncio.CancelledError:  # it is no longer wanted, and comes all the same
            copying.add_done_callback(_unwanted)
            raise
        self.process = process  # type: ignore[assignment]
        self.pid = self.pgid = process.pid  # each copy leads a group of its own
        self.cwd = folder
        return self.connection_info

    async def send_signal(self, signum: int) -> None:
        if await self.poll() is None:
            await super().send_signal(signum)


def _unwanted(copying: asyncio.Future[int]) -> None:
    """End a copy that came when nobody waited for it any more."""
    if not copying.cancelled() and not copying.exception():
        _Process(copying.result()).kill()


@cache
def original() -> Original | None:
    """The original of this process, where kernels can be copies."""
    return Original() if CAN_COPY else None


def put_copies_on(manager: KernelManager) -> None:
    """Where a kernel's manager would start the Python of this installation: have it load nothing from the folder of the workbook, and be a copy where kernels can be."""
    spec, first = manager.kernel_spec, original()
    if not spec or spec.argv[0] not in _OURS:
        return
    spec.argv[1:] = [_ALONE, *(word for word in spec.argv[1:] if word != _ALONE)]
    if first and spec.argv[2:6] == _STARTS and not spec.env and not spec.metadata.get("kernel_provisioner"):
        provisioner = Copied(kernel_id=manager.kernel_id or "", kernel_spec=spec, parent=manager)
        provisioner.original = first
        manager.provisioner = provisioner


def be_copied() -> None:
    """Load everything, then make a copy for each line that comes, until none can come any more."""
    told = os.dup(1)
    os.dup2(2, 1)  # nothing but numbers is told there, whatever prints while it is loaded
    maker = os.pidfd_open(os.getppid())
    os.environ.pop("JPY_PARENT_PID", None)  # with which ipykernel would look after itself whether the process that made it is there: the original may go
    import gc

    import ipykernel.kernelapp  # noqa: F401
    import ipywidgets  # noqa: F401

    warming.load()
    signal.signal(signal.SIGCHLD, signal.SIG_IGN)  # nobody waits for copies that have ended
    loaded = _as_loaded()
    gc.collect()
    gc.freeze()
    while line := sys.stdin.buffer.readline():
        if _as_loaded() != loaded:
            os.write(told, b"0\n")
            continue
        try:
            number = os.fork()
        except OSError:  # no memory, or too many processes
            number = _FAILED
        if number:
            os.write(told, f"{number}\n".encode())
        else:
            os.close(told)
            _be_kernel(maker, **json.loads(line))


def _as_loaded() -> dict[str, int]:
    """When each file was written that is loaded, and each of our own, scripts of the page among them: who changes or updates one sees it in the next kernel."""
    files = {os.path.join(folder, name) for folder, _, names in os.walk(Path(__file__).parents[1]) if not folder.endswith("__pycache__") for name in names}
    files |= {module.__dict__.get("__file__") or "" for module in [*sys.modules.values()]}
    return {path: os.stat(path).st_mtime_ns for path in files if os.path.isfile(path)}


def _be_kernel(maker: int, argv: list[str], folder: str, environment: dict[str, str]) -> None:
    """Be a kernel, in a session of its own, until it is told to end, or whoever wanted it is gone."""
    import ipykernel.kernelapp
    import ipywidgets

    class BrimworkKernel(ipykernel.kernelapp.IPKernelApp):
        def log_connection_info(self) -> None:
            """It was not started by hand: nobody is told how to stop it, or to connect to it."""

    os.setsid()
    signal.signal(signal.SIGCHLD, signal.SIG_DFL)
    with open(os.devnull, "rb") as nothing:
        os.dup2(nothing.fileno(), 0)
    os.chdir(folder)
    os.environ.update(environment)
    threading.Thread(target=_end_with, args=(maker, argv[1]), daemon=True).start()
    sys.argv = ["ipykernel_launcher", *argv]
    application = BrimworkKernel.instance()
    application.initialize(argv)
    ipywidgets.load_ipython_extension(application.shell)
    application.start()
    sys.exit()


def _end_with(maker: int, connection: str) -> None:
    """End with the process that wanted the kernel, and take away what it can no longer: the files by which they spoke."""
    _is_told(maker)
    for left in sockets.files_of(connection):
        with suppress(OSError):
            os.remove(left)
    os._exit(_ENDED)
