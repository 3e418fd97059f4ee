"""Small messages to the browser leave at once (TCP_NODELAY), so a slider does not wait 40 ms for its picture."""

from __future__ import annotations


def put_swift_on() -> None:
    """Have Jupyter servers of this process send so."""
    from jupyter_server.services.kernels.websocket import KernelWebsocketHandler

    opened = KernelWebsocketHandler.open

    async def open_at_once(self, *arguments, **named):
        self.set_nodelay(True)
        return await opened(self, *arguments, **named)

    KernelWebsocketHandler.open = open_at_once  # type: ignore[method-assign]  # the server makes these handlers itself
