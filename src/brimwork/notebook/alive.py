"""LivePages: a kernel for each page without code, one kept warm for the next page, and the line between kernel and page.

The server runs the cells; a page only hears what they make, and answers through the boxes that they made. A line that breaks is taken up again where it
broke. A page that is gone gives its kernel back: soon when it was closed, later when it only fell silent, as a phone does in a pocket.
"""

from __future__ import annotations

import asyncio
import base64
import json
import os
import secrets
import sys
import time
from collections import deque
from contextlib import suppress
from pathlib import Path
from typing import Protocol

from jupyter_client.kernelspec import KernelSpec, KernelSpecManager
from jupyter_client.manager import AsyncKernelManager

from brimwork.notebook import sockets
from brimwork.notebook.as_page import reduced
from brimwork.notebook.books import Book
from brimwork.notebook.copied import original, put_copies_on
from brimwork.notebook.warming import WITHIN

MOST_PAGES = 12
LEFT, SILENT = 15.0, 900.0  # s that a room waits for a page that was closed, and for one whose line broke
LOOK = 1.0  # s between two looks at all rooms
REFILL = 3.0  # s after which a kernel for the next page is made, although this one is not alive yet
READY = 60.0  # s that a kernel may take to start
TAKEN = 4409  # closes a line that its page has replaced
UNSEEN = 8_000_000  # letters of what was told that are kept for a page whose line breaks
_FROM_PAGES = {"comm_msg": ("comm_id", "data"), "comm_close": ("comm_id", "data")}  # all that a page may send to a kernel
_WARM = "from brimwork.notebook.warming import warm\nwarm()\ndel warm"


def _whole_letters(thing):
    """The same, with a sign in place of each half of a letter, which JSON can write and no text can hold."""
    return json.loads(json.dumps(thing, ensure_ascii=False).encode("utf-16", "surrogatepass").decode("utf-16", "replace"))


class Listener(Protocol):
    """Where a room tells its page something."""

    def write_message(self, message: str): ...

    def close(self, code: int, reason: str): ...


class _OurPython(KernelSpecManager):
    """The Python of this installation, whatever kernels somebody has put up under its name."""

    def get_kernel_spec(self, kernel_name: str) -> KernelSpec:
        line = [sys.executable, "-P", "-m", "ipykernel_launcher", "-f", "{connection_file}", "--HistoryManager.enabled=False", "--log-level=40"]
        return KernelSpec(argv=line, display_name="Brimwork", language="python")


class Kernel:
    """A Python process in the folder of the workbooks; `start` it before anything else."""

    def __init__(self, folder: Path, shared: bool = False):
        self.folder, self.shared = folder, shared
        self.manager = AsyncKernelManager(kernel_name="python3", kernel_spec_manager=_OurPython(), **sockets.for_a_kernel())

    async def start(self) -> Kernel:
        put_copies_on(self.manager)
        try:
            await self.manager.start_kernel(cwd=str(self.folder), env={**os.environ, **({WITHIN: str(self.folder)} if self.shared else {})})
            self.client = self.manager.client()
            self.client.start_channels(stdin=False)
            await self.client.wait_for_ready(timeout=READY)
        except BaseException:  # it does not come to life, or its page was closed first
            await self.end()
            raise
        self.send("execute_request", "warm", {"code": _WARM, "silent": True, "store_history": False, "allow_stdin": False, "stop_on_error": False})
        return self

    def send(self, kind: str, name: str, content: dict, buffers: list[bytes] | None = None) -> None:
        """Send a message under a name of its own."""
        message = self.client.session.msg(kind, content)
        message["header"]["msg_id"] = message["msg_id"] = name
        if name.startswith("cell-"):
            message["metadata"] = {"cellId": name}
        self.client.session.send(self.client.shell_channel.socket, message, buffers=buffers or [])

    async def alive(self) -> bool:
        return await self.manager.is_alive()

    async def end(self) -> None:
        with suppress(Exception):  # whatever is wrong with it, it is no longer wanted
            self.client.stop_channels()
        await self.manager.shutdown_kernel(now=True)


class LivePage:
    """One page, its kernel, and what was told to it."""

    def __init__(self, book: Book, folder: Path):
        self.book, self.folder, self.name = book, folder, secrets.token_hex(12)
        self.kernel: Kernel | None = None
        self.line: Listener | None = None
        self.leaving, self.since = False, time.monotonic()
        self.alive, self.ended = asyncio.Event(), False  # all cells have run; it was closed
        self._told: deque[tuple[int, str]] = deque()
        self._number = self._size = 0
        self._heard = 0  # the number of the last message of the page that was taken: after a break it sends again what may not have come
        self.working: list[asyncio.Task] = []

    # --- from the kernel to the page

    def tell(self, **what) -> None:
        """Tell the page something, now or when its line is there."""
        self._number += 1
        text = json.dumps({"n": self._number, **what}, default=str)
        self._told.append((self._number, text))
        self._size += len(text)
        while self._size > UNSEEN and len(self._told) > 1:
            self._size -= len(self._told.popleft()[1])
        self._write(text)

    def _write(self, text: str) -> None:
        if self.line is not None:
            with suppress(Exception):  # a line that is just breaking: it is told again when the page is back
                self.line.write_message(text)

    def take_line(self, line: Listener, seen: int) -> bool:
        """A page is there that has seen what was told up to a number; False when it has missed what is no longer kept."""
        if self._told and self._told[0][0] > seen + 1:
            return False
        if self.line is not None:  # it broke, and only the page has noticed yet
            self.line.close(TAKEN, "taken up again")
        self.line, self.leaving = line, False
        while self._told and self._told[0][0] <= seen:
            self._size -= len(self._told.popleft()[1])
        for _, text in list(self._told):
            self._write(text)
        return True

    def lose_line(self, line: Listener) -> None:
        if self.line is line:
            self.line, self.since = None, time.monotonic()

    async def run(self, kernel: Kernel) -> None:
        """Run the cells of the workbook, and tell the page what comes of it for as long as the kernel lives."""
        self.kernel = kernel
        cells = [number for number, cell in enumerate(self.book.cells) if cell.runs]
        for number in cells:
            kernel.send("execute_request", f"cell-{number}", {"code": self.book.cells[number].source, "silent": False, "store_history": False,
                        "user_expressions": {}, "allow_stdin": False, "stop_on_error": False})  # fmt: skip
        self.working.append(asyncio.create_task(self._drain(kernel)))
        while True:
            message = await kernel.client.get_iopub_msg()
            kind, content, parent = message["header"]["msg_type"], message["content"], message["parent_header"].get("msg_id", "")
            if kind == "status":
                if content["execution_state"] == "idle" and parent.startswith("cell-"):
                    last = parent == f"cell-{cells[-1]}"
                    self.tell(type="ran", content={"cell": int(parent[5:]), "last": last})
                    if last:
                        self.alive.set()
                elif content["execution_state"] == "idle" and parent.startswith(f"{self.name}-"):
                    self.tell(type="done", parent=parent)
            elif kind in ("comm_open", "comm_msg", "comm_close"):
                buffers = [base64.b64encode(bytes(part)).decode() for part in message.get("buffers", ())]
                self.tell(type=kind, content=content, metadata=message["metadata"], parent=parent, buffers=buffers)
            elif kind == "clear_output":
                self.tell(type="clear", parent=parent)
            elif parent != "warm" and (output := reduced(kind, content)):
                self.tell(type="output", parent=parent, content=output)

    async def _drain(self, kernel: Kernel) -> None:
        while True:  # answers that nobody waits for
            await kernel.client.get_shell_msg()

    # --- from the page to the kernel

    def hear(self, text: str) -> bool:
        """Take a message of the page; False for one that no page of ours sends."""
        try:
            message = _whole_letters(json.loads(text)) if "\\ud" in text else json.loads(text)
            if message == {"leaving": True}:
                self.leaving = True
                return True
            kind, name, content = message["type"], message["id"], message["content"]
            wanted = _FROM_PAGES[kind]
            buffers = [base64.b64decode(part, validate=True) for part in message["buffers"]]
            number = int(name.removeprefix(f"{self.name}-"))
        except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
            return False
        if not (name.startswith(f"{self.name}-") and len(name) < 80 and isinstance(content, dict) and set(content) == set(wanted)):
            return False
        if not (isinstance(content["comm_id"], str) and isinstance(content["data"], dict)):
            return False
        self.leaving = False
        if self.kernel is not None and number > self._heard:
            self._heard = number
            self.kernel.send(kind, name, content, buffers)
        return True

    def forsaken(self) -> bool:
        """Whether no page has been here for so long that none will come back."""
        return self.line is None and time.monotonic() - self.since > (LEFT if self.leaving else SILENT)

    async def end(self) -> None:
        self.ended = True
        for task in self.working:
            task.cancel()
        if self.kernel:
            await self.kernel.end()


class LivePages:
    """All rooms of a server over one folder; `shared` when other devices are let in."""

    def __init__(self, folder: Path, shared: bool = False):
        self.folder, self.shared = folder, shared
        self.open: dict[str, LivePage] = {}
        self.spare: asyncio.Task[Kernel] | None = None

    def keep_warm(self) -> asyncio.Task[Kernel]:
        """Have a kernel ready for the next page."""
        if self.spare is None:
            self.spare = asyncio.create_task(Kernel(self.folder, self.shared).start())
        return self.spare

    async def enter(self, book: Book, was: str = "") -> LivePage | None:
        """A room for a page, in place of the one that it `was` in before it was loaded again; None when too many are open."""
        if before := await self._left(was):
            await self.close(before)
        if len(self.open) >= MOST_PAGES:
            for room in sorted(self.open.values(), key=lambda room: room.since):
                if room.line is None:
                    await self.close(room)
                    break
            else:
                return None
        room = LivePage(book, self.folder)
        self.open[room.name] = room
        room.working.append(asyncio.create_task(self._live(room)))
        return room

    async def _left(self, was: str) -> LivePage | None:
        """The room that a page has left to be loaded again. The word that it leaves may come a moment after its question; a page that was only copied leaves none."""
        room = self.open.get(was)
        for _ in range(15):
            if room is None or room.line is None or room.leaving:
                return room
            await asyncio.sleep(0.02)
        return None

    async def _live(self, room: LivePage) -> None:
        spare, self.spare = self.keep_warm(), None
        try:
            kernel = await self._sound(spare)
            if room.ended:
                await kernel.end()
                return
            room.working.append(asyncio.create_task(self._refill(room)))
            await room.run(kernel)
        except asyncio.CancelledError:
            raise
        except Exception:
            room.tell(type="gone")

    async def _sound(self, spare: asyncio.Task[Kernel]) -> Kernel:
        """The kernel that was kept warm, or a new one where somebody has ended it while it started or waited."""
        with suppress(Exception):
            kernel = await spare
            if await kernel.alive():
                return kernel
            await kernel.end()
        return await Kernel(self.folder, self.shared).start()

    async def _refill(self, room: LivePage) -> None:
        """Make the next kernel ready once this page is alive, so that it takes nothing from it; and soon in any case."""
        with suppress(TimeoutError, asyncio.TimeoutError):
            await asyncio.wait_for(room.alive.wait(), REFILL)
        self.keep_warm()

    async def close(self, room: LivePage) -> None:
        self.open.pop(room.name, None)
        await room.end()

    async def look(self) -> None:
        """Close rooms that were forsaken, and those whose kernel has ended, which their page is told."""
        for room in list(self.open.values()):
            if room.kernel and not await room.kernel.alive():
                room.tell(type="gone")
                await self.close(room)
            elif room.forsaken():
                await self.close(room)

    async def watch(self) -> None:
        """Look after all rooms, for as long as the server runs."""
        self.keep_warm()
        while True:
            await asyncio.sleep(LOOK)
            with suppress(Exception):  # one room that cannot be closed keeps no other open
                await self.look()

    async def end(self) -> None:
        for room in list(self.open.values()):
            await self.close(room)
        if self.spare:
            with suppress(Exception):
                await (await self.spare).end()
        if first := original():
            first.end()
