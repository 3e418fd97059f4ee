"""The server starts sooner, and small messages to the browser leave at once (TCP_NODELAY), so a slider does not wait 40 ms for its picture."""

from __future__ import annotations

import sys

_GRAMMARS = "rfc3987_syntax"


def leave_out_grammars() -> None:
    """Have jsonschema, which is loaded after this, check no addresses with letters of other alphabets: no schema of Jupyter's asks it to.

    The grammars for that, of a package that comes with Jupyter, are built whenever it is imported, and take as long as all the rest of a start.
    """
    sys.modules.setdefault(_GRAMMARS, None)  # type: ignore[arg-type]  # what is None here is not found


def put_swift_on() -> None:
    """Have Jupyter servers of this process send so."""
    from jupyter_server.services.kernels.websocket import KernelWebsocketHandler

    opened = KernelWebsocketHandler.open

    async def open_at_once(self, *arguments, **named):
        self.set_nodelay(True)
        return await opened(self, *arguments, **named)

    KernelWebsocketHandler.open = open_at_once  # type: ignore[method-assign]  # the server makes these handlers itself
