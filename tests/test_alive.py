"""Pages without code, without a browser: what a broken line loses (nothing), when a kernel is given back, and that no script is asked for elsewhere."""

import asyncio
import hashlib
import json
import os
import re
import subprocess
import sys
import time
from contextlib import suppress
from pathlib import Path

import pytest
from jupyter_client.kernelspec import KernelSpec
from jupyter_client.manager import AsyncKernelManager

from brimwork import system
from brimwork.notebook import alive, books, copied, doors
from brimwork.notebook.books import Book, Cell
from brimwork.notebook.contents import COURSE

FILES = Path(doors.__file__).with_name("page")
COUNTING = Book("counting", "Counting", (Cell("# Counting", False), Cell("import ipywidgets\nbox = ipywidgets.Text(value='7')\nbox", True)))


class Heard(list):
    def write_message(self, message: str) -> None:
        self.append(json.loads(message))

    def close(self, code: int, reason: str) -> None:
        self.closed = code


def test_what_was_told_while_nobody_listened_is_told_once_and_in_order():
    page = alive.LivePage(COUNTING, Path())
    page.tell(type="a")
    first, second = Heard(), Heard()
    assert page.take_line(first, seen=0)
    page.tell(type="b")
    page.lose_line(first)
    page.tell(type="c")
    assert page.take_line(second, seen=1)
    assert [told["type"] for told in first] == ["a", "b"] and [told["type"] for told in second] == ["b", "c"]


def test_a_page_that_missed_what_is_no_longer_kept_is_told_to_begin_again(monkeypatch):
    monkeypatch.setattr(alive, "UNSEEN", 100)
    page = alive.LivePage(COUNTING, Path())
    for _ in range(5):
        page.tell(type="long", content="x" * 60)
    assert not page.take_line(Heard(), seen=2)


def test_a_room_is_given_back_soon_after_leaving_and_late_after_silence(monkeypatch):
    page = alive.LivePage(COUNTING, Path())
    now = time.monotonic()
    for leaving, after, gone in ((True, alive.LEFT - 1, False), (True, alive.LEFT + 1, True), (False, alive.LEFT + 1, False), (False, alive.SILENT + 1, True)):
        page.leaving, page.since = leaving, now
        monkeypatch.setattr(alive.time, "monotonic", lambda after=after: now + after)
        assert page.forsaken() is gone


def test_a_line_that_broke_unnoticed_is_replaced_and_what_is_sent_again_is_taken_once():
    class Sent(list):
        def send(self, kind, name, content, buffers):
            self.append(name)

    page = alive.LivePage(COUNTING, Path())
    page.kernel, old, new = Sent(), Heard(), Heard()
    assert page.take_line(old, 0) and page.take_line(new, 0) and old.closed == alive.TAKEN and page.line is new
    page.lose_line(old)
    assert page.line is new
    said = [json.dumps({"type": "comm_msg", "id": f"{page.name}-{number}", "content": {"comm_id": "1", "data": {}}, "buffers": []}) for number in (1, 2, 3)]
    assert all(page.hear(one) for one in (said[0], said[1], said[0], said[1], said[2]))
    assert page.kernel == [f"{page.name}-{number}" for number in (1, 2, 3)]


def test_half_a_letter_that_a_page_sends_is_a_sign_and_what_follows_is_heard():
    """JSON can write one, as a box sends it after a paste was cut; a text that holds one cannot be sent on."""

    class Sent(list):
        def send(self, kind, name, content, buffers):
            json.dumps(content, ensure_ascii=False).encode()
            self.append(content["data"]["text"])

    page = alive.LivePage(COUNTING, Path())
    page.kernel = sent = Sent()
    for number, written in enumerate((r"half \ud83d", r"whole \ud83d\udca7", "next"), start=1):
        said = '{"type": "comm_msg", "id": "%s-%d", "content": {"comm_id": "c", "data": {"text": "%s"}}, "buffers": []}'
        assert page.hear(said % (page.name, number, written))
    assert sent == ["half \ufffd", "whole \U0001f4a7", "next"]


async def _told(heard: Heard, wanted: str) -> dict:
    until = time.monotonic() + 60
    while time.monotonic() < until:
        if found := [told for told in heard if told["type"] == wanted]:
            return found[-1]
        await asyncio.sleep(0.02)
    raise AssertionError(f"never told: {wanted}; {heard}")


async def _entered(pages):
    """A room of a page of COUNTING that is alive, and what it has heard."""
    page, heard = await pages.enter(COUNTING), Heard()
    assert page.take_line(heard, seen=0)
    assert (await _told(heard, "ran"))["content"] == {"cell": 1, "last": True}
    return page, heard


def test_a_page_lives_answers_and_ends_with_its_kernel(tmp_path):
    async def story() -> None:
        pages = alive.LivePages(tmp_path)
        page, heard = await _entered(pages)
        box = next(told for told in heard if told["type"] == "comm_open" and told["content"]["data"]["state"].get("value") == "7")
        said = {
            "type": "comm_msg",
            "id": f"{page.name}-1",
            "content": {"comm_id": box["content"]["comm_id"], "data": {"method": "update", "state": {"value": "8"}}},
        }
        assert page.hear(json.dumps({**said, "buffers": []}))
        assert (await _told(heard, "done"))["parent"] == f"{page.name}-1"
        again = await pages.enter(COUNTING, was=page.name)
        assert again is not page and page.name in pages.open, "a copy of a page takes nothing from it"
        assert page.hear('{"leaving": true}')
        third = await pages.enter(COUNTING, was=page.name)
        assert page.name not in pages.open and third.name in pages.open and page.ended
        await page.kernel.manager.finish_shutdown() if hasattr(page.kernel.manager, "finish_shutdown") else None
        assert not await page.kernel.alive()
        await pages.end()
        assert not pages.open

    asyncio.run(story())


async def _said_by(kernel: alive.Kernel, code: str) -> str:
    """What a kernel prints."""
    kernel.send(
        "execute_request",
        "cell-1",
        {"code": code, "silent": False, "store_history": False, "user_expressions": {}, "allow_stdin": False, "stop_on_error": False},
    )
    said = ""
    while True:
        message = await asyncio.wait_for(kernel.client.get_iopub_msg(), 60)
        if message["parent_header"].get("msg_id") == "cell-1":
            said += message["content"].get("text", "")
            if message["content"].get("execution_state") == "idle":
                return said


async def _ended(kernel: alive.Kernel) -> None:
    """Wait until it is known that a kernel has ended."""
    for _ in range(300):
        if not await kernel.alive():
            return
        await asyncio.sleep(0.1)
    pytest.fail("it lives for ever")


_ABOUT = """import os, random, sys, threading, uuid
from comm import get_comm_manager
from ipywidgets.widgets.widget import _instances
print(os.getcwd(), os.getsid(0) == os.getpid(), "sympy" in sys.modules, os.path.abspath("") in sys.path, "jupyter.widget.control" in get_comm_manager().targets, len(_instances))
print(random.random(), uuid.uuid4())"""


@pytest.mark.skipif(not copied.CAN_COPY, reason="processes are copied on Linux only")
def test_a_kernel_is_a_copy_with_chances_of_its_own_and_one_that_has_ended_is_known(tmp_path, monkeypatch):
    lesson = tmp_path / "a_lesson.py"
    lesson.write_text("")
    monkeypatch.setattr(copied, "LINE", f"import sys; sys.path.append({str(tmp_path)!r}); import a_lesson; sys.path.pop(); {copied.LINE}")

    async def story() -> None:
        original = copied.original()
        original.end()
        both = [await alive.Kernel(tmp_path).start() for _ in range(2)]
        said = [(await _said_by(kernel, _ABOUT)).splitlines() for kernel in both]
        assert {about for about, _ in said} == {f"{tmp_path} True True False True 0"} and said[0][1] != said[1][1]
        assert os.getpid() not in {kernel.manager.provisioner.pid for kernel in both} and original._process.poll() is None
        one, other = both
        await one.end()
        await _ended(one)
        with suppress(asyncio.TimeoutError):
            await asyncio.wait_for(_said_by(other, "import os; os.kill(os.getpid(), 9)"), 1)
        await _ended(other)
        alone = await alive.Kernel(tmp_path).start()
        original._process.kill()
        again = await alive.Kernel(tmp_path).start()
        assert await _said_by(again, "print(7)") == "7\n", "another original is made"
        process = original._process
        os.utime(lesson, ns=(1, 1))
        newer = await alive.Kernel(tmp_path).start()
        assert original._process is not process and await newer.alive(), "whoever changes a file that is loaded sees it in the next kernel"
        await asyncio.sleep(1.5)  # in which ipykernel itself would see that the process that made it is gone
        for kernel in (alone, again, newer):
            assert await _said_by(kernel, "print(8)") == "8\n", "a copy does without its original"
            await kernel.end()

    asyncio.run(story())


_MAKER = """import asyncio, os, pathlib, sys
from brimwork.notebook import alive
async def story():
    kernels = [await alive.Kernel(pathlib.Path("."), shared).start() for shared in (False, True)]
    print(*(kernel.manager.provisioner.pid for kernel in kernels), flush=True)
    sys.stdin.readline()
    os.kill(os.getpid(), 9)
asyncio.run(story())"""


@pytest.mark.skipif(not copied.CAN_COPY, reason="processes are copied on Linux only")
def test_copies_end_with_a_process_that_is_killed_and_leave_no_file(short, tmp_path, monkeypatch):
    monkeypatch.setenv("JUPYTER_RUNTIME_DIR", str(short))
    monkeypatch.setenv("TMPDIR", str(tmp_path))  # one that is shared writes nowhere else, but for these files
    with subprocess.Popen([sys.executable, "-c", _MAKER], cwd=tmp_path, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as maker:
        numbers = [int(number) for number in maker.stdout.readline().split()]
        assert len(numbers) == 2 and len(list(short.glob("kernel-*"))) == 12
        maker.communicate("\n")
    end = time.monotonic() + 30
    while time.monotonic() < end and (list(short.glob("kernel-*")) or any(_running(number) for number in numbers)):
        time.sleep(0.1)
    assert not list(short.glob("kernel-*")) and not any(_running(number) for number in numbers)


def _running(number: int) -> bool:
    try:
        return Path(f"/proc/{number}/stat").read_text().rpartition(")")[2].split()[0] != "Z"
    except OSError:
        return False


@pytest.mark.skipif(not copied.CAN_COPY, reason="processes are copied on Linux only")
@pytest.mark.parametrize("line", [["--f={connection_file}"], ["-f", "{connection_file}"]])
def test_only_a_kernel_that_is_started_as_ours_is_a_copy(monkeypatch, line):
    spec = KernelSpec(argv=["python3", "-m", "ipykernel_launcher", *line], language="python")
    for options, env in (([], {}), (["-W", "error"], {}), ([], {"PYTHONPATH": "elsewhere"})):
        given = KernelSpec(argv=[spec.argv[0], *options, *spec.argv[1:]], language="python", env=env)
        manager = AsyncKernelManager()
        manager._kernel_spec = given
        copied.put_copies_on(manager)
        assert given.argv == ["python3", "-P", *options, *spec.argv[1:]], "nothing that lies in its folder is loaded, copy or not"
        assert (manager.provisioner is not None) is (line[0] == "-f" and not options and not env)


def test_a_manager_of_another_python_is_left_as_it_is():
    given = KernelSpec(argv=["/elsewhere/python3", "-m", "ipykernel_launcher", "-f", "{connection_file}"], language="python")
    manager = AsyncKernelManager()
    manager._kernel_spec = given
    copied.put_copies_on(manager)
    assert manager.provisioner is None and given.argv[1] == "-m"


@pytest.mark.skipif(not copied.CAN_COPY, reason="processes are copied on Linux only")
def test_a_copy_brings_nothing_along_that_stands_beside_other_workbooks(tmp_path, monkeypatch):
    """Nor do settings that were there when its original was loaded hold for it."""
    (tmp_path / "mine").mkdir()
    (tmp_path / "settings.toml").write_bytes(system.settings(system.FEET))
    monkeypatch.chdir(tmp_path)
    asked = "from brimwork import system\nfrom brimwork.notebook import work\nprint(system.current(), system.was_chosen())"

    async def story() -> None:
        copied.original().end()
        for folder, said in ((tmp_path / "mine", f"{system.METRES} False\n"), (tmp_path, f"{system.FEET} True\n")):
            kernel = await alive.Kernel(folder).start()
            assert await _said_by(kernel, asked) == said
            await kernel.end()

    asyncio.run(story())


@pytest.mark.skipif(not copied.CAN_COPY, reason="processes are copied on Linux only")
def test_nobody_waits_twice_for_an_original_that_does_not_load_in_time(monkeypatch):
    monkeypatch.setattr(copied, "_WAITED", 0.01)
    slow = copied.Original()
    with pytest.raises(OSError, match="no copy of the kernel came"):
        slow.copy(argv=[], folder="/", environment={})
    process = slow._process
    with pytest.raises(OSError, match="on this machine"):
        slow.copy(argv=[], folder="/", environment={})
    assert slow._process is process and process.poll() is not None


@pytest.mark.skipif(not copied.CAN_COPY, reason="processes are copied on Linux only")
def test_a_server_that_has_many_files_open_sees_its_kernels_end(monkeypatch):
    import fcntl

    reads, writes = os.pipe()
    high = fcntl.fcntl(reads, fcntl.F_DUPFD, 1030)  # select(2) looks at 1024
    assert not copied._is_told(high, 0)
    os.close(writes)
    assert copied._is_told(high, 0)
    os.close(high)
    os.close(reads)


@pytest.mark.skipif(not copied.CAN_COPY, reason="processes are copied on Linux only")
def test_where_the_system_makes_no_copy_the_original_goes_on(tmp_path):
    """The second copy fails, as it does where there is no memory."""
    first = "import os, sys; made = [os.fork, None]\ndef fork():\n    if len(made) > 1: made.pop(); return made[0]()\n    raise OSError(12, 'no memory')\nos.fork = fork\n"

    async def story() -> None:
        original = copied.original()
        original.end()
        line = copied.LINE
        try:
            copied.LINE = first + line
            one, other = [await alive.Kernel(tmp_path).start() for _ in range(2)]
        finally:
            copied.LINE = line
        assert isinstance(one.manager.provisioner.process, copied._Process) and not isinstance(other.manager.provisioner.process, copied._Process)
        for kernel in (one, other):
            assert await _said_by(kernel, "print(9)") == "9\n"
            await kernel.end()
        original.end()

    asyncio.run(story())


@pytest.mark.parametrize("why", ["none can be made", "none comes"])
def test_where_no_copy_comes_a_kernel_starts_by_itself(tmp_path, monkeypatch, why):
    class Never(copied.Original):
        def copy(self, **wanted):
            raise OSError("no copy")

    monkeypatch.setattr(copied, "original", lambda: Never() if why == "none comes" else None)

    async def story() -> None:
        pages = alive.LivePages(tmp_path)
        await _entered(pages)
        await pages.end()

    asyncio.run(story())


@pytest.mark.parametrize("as_copy", [True, False])
def test_where_other_devices_are_let_in_a_kernel_writes_in_its_folder_only(tmp_path, monkeypatch, as_copy):
    """And where programs keep what lasts no longer than they do, which is in a folder beside it here."""
    mine, short = tmp_path / "mine", tmp_path / "short"
    mine.mkdir()
    short.mkdir()
    monkeypatch.setenv("TMPDIR", str(short))
    if first := copied.original():
        first.end()  # the next one finds that folder
    if not as_copy:
        monkeypatch.setattr(copied, "original", lambda: None)

    async def story() -> None:
        kernel = await alive.Kernel(mine, shared=True).start()
        elsewhere = tmp_path / "written-by-a-page"
        write = f"open('here.txt', 'w').close()\ntry: open({str(elsewhere)!r}, 'w').close()\nexcept OSError as error: print(error)"
        assert "nothing is written outside the folder" in await _said_by(kernel, write)
        assert (mine / "here.txt").exists() and not elsewhere.exists()
        await kernel.end()

    asyncio.run(story())
    if first:
        first.end()


def test_too_many_pages_are_refused_before_any_that_somebody_looks_at_is_closed(tmp_path, monkeypatch):
    async def story() -> None:
        monkeypatch.setattr(alive, "MOST_PAGES", 2)
        monkeypatch.setattr(alive.LivePages, "_live", lambda self, room: asyncio.sleep(0))
        pages = alive.LivePages(tmp_path)
        one, two = await pages.enter(COUNTING), await pages.enter(COUNTING)
        assert one.take_line(Heard(), 0) and two.take_line(Heard(), 0)
        assert await pages.enter(COUNTING) is None
        one.lose_line(one.line)
        assert await pages.enter(COUNTING) is not None and one.name not in pages.open and two.name in pages.open

    asyncio.run(story())


def test_the_start_page_shows_what_was_printed_and_nothing_hidden_or_outside(tmp_path):
    mine = tmp_path / "mine"
    for name in ("old.pdf", "designs/a & <b>.pdf", ".hidden.pdf", ".unseen/x.pdf", "designs/notes.txt"):
        (mine / name).parent.mkdir(parents=True, exist_ok=True)
        (mine / name).write_bytes(b"%PDF-1.7")
    os.utime(mine / "old.pdf", (1, 1))
    (tmp_path / "outside.pdf").write_bytes(b"%PDF-1.7")
    (mine / "linked.pdf").symlink_to(tmp_path / "outside.pdf")
    assert doors.prints_of(mine) == ["designs/a & <b>.pdf", "old.pdf"]
    shown = doors.start_page("/brimwork/", "/", mine)
    assert "/brimwork/print/designs/a%20%26%20%3Cb%3E.pdf" in shown and "<b>.pdf" not in shown and str(mine) in shown
    assert str(mine) not in doors.start_page("/brimwork/", "/", mine, here=False)


def test_lessons_stand_in_the_order_of_the_course(tmp_path):
    shown = doors.start_page("/brimwork/", "/", tmp_path)
    assert re.findall(r"/page/([\w-]+)'", shown)[: len(COURSE)] == list(COURSE)


def test_only_our_own_code_counts_as_ours():
    book = books.books()["volume"]
    sources = [cell.source for cell in book.cells if cell.runs]
    assert books.ours(books.digest(sources)) and books.ours(books.digest([f"{source}\n" for source in sources]))
    assert not books.ours(books.digest([*sources, "1"])) and not books.ours(books.digest(sources[:-1])) and not books.ours(books.digest([]))


@pytest.mark.parametrize("name", sorted(doors.given_files()))
def test_no_file_of_a_page_asks_for_anything_elsewhere(name):
    """Addresses of other machines may stand in a licence or name a kind of markup, but nothing is fetched from one."""
    if not name.endswith((".js", ".css")):
        return
    text = doors.given_files()[name].read_text(encoding="utf-8")
    fetched = re.findall(r"""(?:url\(|import\s*\(?|from|src\s*[:=]|href\s*[:=])\s*["']?((?:https?:)?//[\w.-]+\.\w+[^"')\s]*)""", text)
    assert fetched == []


def test_what_is_built_is_built_from_the_script_that_lies_beside_it():
    """The digest of the script stands in what was built from it; `python tests/build_page.py` builds it again."""
    for name in ("page.js", "math.js"):
        source = hashlib.sha256((FILES / "source" / name).read_bytes()).hexdigest()
        assert f"built from {source[:16]}" in (FILES / "built" / name).read_text(encoding="utf-8"), name


def test_a_page_does_not_say_what_to_press_where_there_is_code(tmp_path):
    for book in books.without_code().values():
        shown = doors.book_page(book, alive.LivePage(book, tmp_path), "/brimwork/")
        assert not re.search(r"Run All|Run the cell|Run its cell|Shift and Enter", shown), book.name
        assert f"<h1>{book.title}" in shown or book.title in shown
