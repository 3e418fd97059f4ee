"""The server behind `brimwork open`: JupyterLab as its user has configured it, with our parts put on before it starts, and closed to everybody else.

What keeps others out is set here and not in a file of settings, so that no configuration can leave it out by accident.
"""

from __future__ import annotations

import os
import secrets
import sys
import threading

from brimwork.notebook import guard, reopened, steady, swift

WATCHED = "BRIMWORK_WATCHED"  # in the environment: the server ends when whoever started it is gone
CLOSED = (
    "--ServerApp.ip=localhost", "--ServerApp.allow_remote_access=False", "--ServerApp.allow_origin=", "--ServerApp.allow_origin_pat=",
    "--ServerApp.allow_credentials=False", "--ServerApp.disable_check_xsrf=False", "--ServerApp.allow_unauthenticated_access=False",
    "--ServerApp.trust_xheaders=False",
)  # fmt: skip
_QUIET = ("--LabApp.news_url=None", "--LabApp.check_for_updates_class=jupyterlab.handlers.announcements.NeverCheckForUpdate")


def serve(arguments: list[str]) -> None:
    from jupyterlab.labapp import LabApp

    from brimwork.notebook import doors  # loads the server

    watched = os.environ.pop(WATCHED, "")
    server = LabApp.initialize_server([*arguments, *CLOSED, *_QUIET])
    if not server.identity_provider.auth_enabled:
        server.identity_provider.token = secrets.token_hex(24)
    guard.stand_before(server.web_app, server.identity_provider.token)
    reopened.put_reopened_on(server)
    doors.put_doors_on(server)
    swift.put_swift_on()
    steady.put_steady_on()
    if watched:
        threading.Thread(target=_end_with_the_starter, args=(server,), daemon=True).start()
    server.start()


def _end_with_the_starter(server) -> None:
    """Wait until the other end of standard input is closed, which happens however its holder ends."""
    sys.stdin.buffer.read()
    server.io_loop.add_callback(server.stop)


if __name__ == "__main__":
    serve(sys.argv[1:])
