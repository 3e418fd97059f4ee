"""How a server and its kernels speak: through files where there is room for them, by ports else, and either way nothing is left when a kernel has ended."""

import asyncio
import os
import socket
import time
from contextlib import suppress
from pathlib import Path

import psutil  # ipykernel brings it
import pytest

from brimwork.notebook import alive, copied, sockets
from brimwork.notebook.books import Book, Cell

FIRST = copied.original()
TWO = Book("two", "Two", (Cell("1 + 1", True),))


def _kernels() -> set[int]:
    found = set()
    for child in psutil.Process().children(recursive=True):
        with suppress(psutil.NoSuchProcess):  # it is just ending
            line = child.cmdline()
            found |= {child.pid} if "ipykernel_launcher" in line or copied.LINE in line else set()
    return found - {FIRST._process.pid if FIRST and FIRST._process else 0}


async def _until(what, seconds: float = 60) -> None:
    end = time.monotonic() + seconds
    while not what():
        assert time.monotonic() < end, f"not within {seconds} s"
        await asyncio.sleep(0.05)


@pytest.fixture(params=["ipc", "tcp"])
def speaking(request, short, monkeypatch) -> tuple[str, Path]:
    """A folder of running kernels in which a socket has room, and one whose path is too long for one."""
    folder = short if request.param == "ipc" else short / ("long-" * 20)
    monkeypatch.setenv("JUPYTER_RUNTIME_DIR", str(folder))
    return "tcp" if os.name == "nt" else request.param, folder


def test_a_kernel_answers_by_either_and_leaves_nothing(speaking, tmp_path):
    wanted, folder = speaking

    async def story() -> None:
        kernel = alive.Kernel(tmp_path)
        assert kernel.manager.transport == wanted
        await kernel.start()
        assert len(list(folder.glob("kernel-*-ipc-*"))) == (5 if wanted == "ipc" else 0)
        kernel.send(
            "execute_request", "cell-1", {"code": "print(6 * 7)", "silent": False, "store_history": False, "allow_stdin": False, "stop_on_error": False}
        )
        while True:
            message = await asyncio.wait_for(kernel.client.get_iopub_msg(), 60)
            if message["content"].get("text") == "42\n":
                break
        await kernel.end()

    asyncio.run(story())
    assert not list(folder.glob("kernel-*")) and not _kernels()


@pytest.mark.skipif(os.name == "nt", reason="speaks by ports there")
def test_the_longest_name_of_a_socket_is_found_by_trying(short, monkeypatch):
    """A file for a socket whose path is one letter too long for the system is refused by it, not cut (unix(7), sun_path)."""
    spoken = {}
    for length in range(len(str(short)) + 1, 120):
        monkeypatch.setenv("JUPYTER_RUNTIME_DIR", str(short / ("a" * (length - len(str(short)) - 1))))
        spoken[length] = sockets.transport()
    first = min(length for length, how in spoken.items() if how == "tcp")
    assert all(how == ("ipc" if length < first else "tcp") for length, how in spoken.items())
    name = len("/kernel--ipc-0") + 36
    with socket.socket(socket.AF_UNIX) as line, pytest.raises(OSError, match="too long"):
        line.bind(str(short / ("a" * (first + name - len(str(short)) - 1))))


@pytest.mark.skipif(os.name == "nt", reason="speaks by ports there")
@pytest.mark.parametrize("mode, wanted", [(0o700, "ipc"), (0o750, "tcp"), (0o777, "tcp")])
def test_where_others_have_access_to_the_folder_nothing_is_said_in_it(short, monkeypatch, mode, wanted):
    monkeypatch.setenv("JUPYTER_RUNTIME_DIR", str(short))
    short.chmod(mode)
    assert sockets.transport() == wanted


@pytest.mark.parametrize("as_copy", [copied.CAN_COPY, False])
def test_a_page_that_is_closed_before_its_kernel_is_there_leaves_none(short, tmp_path, monkeypatch, as_copy):
    monkeypatch.setenv("JUPYTER_RUNTIME_DIR", str(short))
    if as_copy:
        FIRST.end()  # the next one is loaded for this page
    else:
        monkeypatch.setattr(copied, "original", lambda: None)

    async def story() -> None:
        pages = alive.LivePages(tmp_path)
        first = await pages.enter(TWO)
        if as_copy:
            await _until(lambda: FIRST._process and FIRST._process.poll() is None)  # the page is gone while the original is still loading
            assert not _kernels()
        else:
            await _until(_kernels)
        await pages.close(first)
        if as_copy:
            await asyncio.to_thread(FIRST.copy, argv=["--help"], folder=str(tmp_path), environment={})  # made after the one that nobody wants
        await _until(lambda: not _kernels() and not list(short.glob("kernel-*")))
        await pages.end()

    asyncio.run(story())
