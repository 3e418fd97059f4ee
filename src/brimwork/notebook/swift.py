"""A Jupyter server extension: small messages to the browser leave at once (TCP_NODELAY), so a slider does not wait 40 ms for its picture."""

from __future__ import annotations


def _jupyter_server_extension_points() -> list[dict[str, str]]:
    return [{"module": "brimwork.notebook.swift"}]


def _load_jupyter_server_extension(serverapp) -> None:
    from jupyter_server.services.kernels.websocket import KernelWebsocketHandler

    opened = KernelWebsocketHandler.open

    async def open_at_once(self, *arguments, **named):
        self.set_nodelay(True)
        return await opened(self, *arguments, **named)

    KernelWebsocketHandler.open = open_at_once
    serverapp.log.info("Brimwork: messages to the browser are sent without delay")
