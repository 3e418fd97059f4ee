"""The server behind `brimwork open`: JupyterLab as its user has configured it, with our parts put on before it starts, and closed to everybody else.

What keeps others out is set here and not in a file of settings, so that no configuration can leave it out by accident.
"""

from __future__ import annotations

import os
import secrets
import sys
import threading
import time
import warnings
from contextlib import suppress
from pathlib import Path

from brimwork.notebook import guard, reopened, sockets, steady, swift
from brimwork.notebook.yard import WARNING, Yard, yard_at
from brimwork.units import InputError

WATCHED = "BRIMWORK_WATCHED"  # in the environment: the server ends when whoever started it is gone
CLOSED = (
    "--ServerApp.ip=localhost", "--ServerApp.allow_remote_access=False", "--ServerApp.allow_origin=", "--ServerApp.allow_origin_pat=",
    "--ServerApp.allow_credentials=False", "--ServerApp.disable_check_xsrf=False", "--ServerApp.allow_unauthenticated_access=False",
    "--ServerApp.trust_xheaders=False",
)  # fmt: skip
# A kernel of JupyterLab that no page is open for is given back, too.
_TIDY = ("--MappingKernelManager.cull_idle_timeout=1800", "--MappingKernelManager.cull_interval=120", "--MappingKernelManager.cull_connected=False")
PATIENCE = 4.0  # s for what a thread may still write after the server has stopped
_TRACED, _SILENT = "BRIMWORK_TRACEBACK", ["--Application.log_level=ERROR"]  # contributors see what the server logs
YARD = "--yard="
_OURS = (f"--LabApp.extra_labextensions_path={Path(__file__).with_name('lab')}",)  # brings our own workbooks to life in JupyterLab
_QUIET = ("--LabApp.news_url=None", "--LabApp.check_for_updates_class=jupyterlab.handlers.announcements.NeverCheckForUpdate")


def serve(arguments: list[str]) -> None:
    sockets.check_place(Path.cwd())
    swift.leave_out_grammars()
    from jupyter_server.utils import JupyterServerAuthWarning
    from jupyterlab.labapp import LabApp

    from brimwork.notebook import doors  # loads the server

    watched = os.environ.pop(WATCHED, "")
    asked = [argument.removeprefix(YARD) for argument in arguments if argument.startswith(YARD)]
    yard = yard_at(asked[-1]) if asked else None
    if not (traced := os.environ.get(_TRACED)):
        warnings.filterwarnings("ignore", category=JupyterServerAuthWarning)  # about addresses of Jupyter's own extensions
    named = [argument for argument in arguments if not argument.startswith(YARD)]
    speaking = f"--KernelManager.transport={sockets.transport()}"
    server = LabApp.initialize_server([*named, *CLOSED, *_QUIET, *_TIDY, *_OURS, speaking, *([] if traced else _SILENT)])
    if not server.identity_provider.auth_enabled:
        server.identity_provider.token = secrets.token_hex(24)
    guard.stand_before(server.web_app, server.identity_provider.token, yard, server.port)
    reopened.put_reopened_on(server)
    doors.put_doors_on(server, yard)
    swift.put_swift_on()
    _copy_kernels(server.kernel_manager)
    steady.put_steady_on()
    if yard:
        _let_in(server, yard)
    if watched:
        threading.Thread(target=_end_with_the_starter, args=(server,), daemon=True).start()
    threading.Thread(target=_end_whatever_waits, daemon=True).start()
    server.start()


def _copy_kernels(kernels) -> None:
    """Have JupyterLab's kernels be copies too."""
    from jupyter_client.kernelspec import NoSuchKernel

    from brimwork.notebook.copied import put_copies_on

    made = kernels.kernel_manager_factory

    def with_copies(*given, **named):
        manager = made(*given, **named)
        with suppress(NoSuchKernel):  # which is told when it is to start
            put_copies_on(manager)
        return manager

    kernels.kernel_manager_factory = with_copies


def _let_in(server, yard: Yard) -> None:
    """Listen at the address for other devices, too, and say how they come in."""
    from tornado.netutil import bind_sockets

    try:
        sockets = bind_sockets(server.port, yard.address)
    except OSError as error:
        raise InputError(f"{yard.host(server.port)} cannot be listened to ({error.strerror}): name another port with --port") from None
    server.io_loop.add_callback(server.http_server.add_sockets, sockets)
    address = yard.url(server.port, server.base_url)
    print(f"\nOn a phone or tablet in your own network, type this address or take a picture of the mark:\n\n    {address}\n\n{WARNING}\n", file=sys.stderr)
    with suppress(ImportError, UnicodeEncodeError):  # the address is enough
        import segno

        segno.make(address, error="m").terminal(sys.stderr, compact=True)


def _end_with_the_starter(server) -> None:
    """Wait until the other end of standard input is closed, which happens however its holder ends."""
    while os.read(sys.stdin.fileno(), 1024):  # past the buffer, whose lock a thread that still waits would hold when Python ends
        pass
    server.io_loop.add_callback(server.stop)


def _end_whatever_waits() -> None:
    """End the process soon after its work is over. A file that is asked for just when the server stops leaves a thread that waits for the next for ever, and Python for it."""
    threading.main_thread().join()
    time.sleep(PATIENCE)
    os._exit(0)


if __name__ == "__main__":
    try:
        serve(sys.argv[1:])
    except InputError as error:
        sys.exit(f"brimwork: {error}")
