"""Laying out the workbooks in a user's folder: nothing of theirs is overwritten, new editions are laid beside, bad folders are told."""

import importlib.util
import json
import os
import re
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from pathlib import Path

import pytest
from jupyter_client import BlockingKernelClient

from brimwork.notebook import opening
from brimwork.units import InputError


@pytest.fixture
def edition(tmp_path, monkeypatch):
    """A shipped folder that a test can change."""
    folder = tmp_path / "shipped"
    folder.mkdir()
    (folder / "one.ipynb").write_text("first edition")
    monkeypatch.setattr(opening, "shipped", lambda: folder)
    return folder


def test_the_shipped_workbooks_arrive_whole(tmp_path):
    assert opening.lay_out(tmp_path / "mine") == []
    for path in opening.shipped().glob("*.ipynb"):
        assert (tmp_path / "mine" / path.name).read_bytes() == path.read_bytes()


def test_a_changed_workbook_is_left_alone(tmp_path, edition):
    mine = tmp_path / "mine"
    opening.lay_out(mine)
    (mine / "one.ipynb").write_text("my work")
    assert opening.lay_out(mine) == []
    assert (mine / "one.ipynb").read_text() == "my work"
    assert [path.name for path in mine.glob("*.ipynb")] == ["one.ipynb"]


def test_a_new_edition_is_laid_beside_mine_once(tmp_path, edition):
    mine = tmp_path / "mine"
    opening.lay_out(mine)
    (mine / "one.ipynb").write_text("my work")
    (edition / "one.ipynb").write_text("second edition")
    told = opening.lay_out(mine)
    assert len(told) == 1 and "changed by you and left alone" in told[0]
    assert (mine / "one.ipynb").read_text() == "my work"
    assert sorted(path.read_text() for path in mine.glob("*.ipynb")) == ["my work", "second edition"]
    assert opening.lay_out(mine) == [], "told once"


def test_a_workbook_that_nobody_changed_comes_in_its_new_edition(tmp_path, edition):
    (edition / "00-start.ipynb").write_text("first start")
    mine = tmp_path / "mine"
    opening.lay_out(mine)
    (edition / "one.ipynb").write_text("second edition")
    (edition / "00-start.ipynb").write_text("second start")
    (mine / "00-start.ipynb").write_text("first start, run by me")
    told = opening.lay_out(mine)
    assert "one.ipynb is here in its new edition; you had not changed it" in told and len(told) == 2
    assert (mine / "one.ipynb").read_text() == "second edition" and (mine / "00-start.ipynb").read_text() == "first start, run by me"
    assert [path.read_text() for path in mine.glob("00-start (edition*")] == ["second start"]


def test_a_damaged_workbook_is_offered_fresh_beside_the_old_one_and_a_changed_one_is_not(tmp_path, edition):
    cells = [{"id": "a", "cell_type": "code", "source": "1"}, {"id": "b", "cell_type": "markdown", "source": "# B"}]
    whole = json.dumps({"cells": cells})
    (edition / "one.ipynb").write_text(whole)
    mine = tmp_path / "mine"
    opening.lay_out(mine)
    changed = json.dumps({"cells": [{**cells[0], "source": "2"}, {"id": "new", "cell_type": "code", "source": ""}, cells[1]]})
    retyped, deleted = json.dumps({"cells": [{**cells[0], "cell_type": "markdown"}, cells[1]]}), json.dumps({"cells": cells[1:]})
    for text, damaged in ((changed, False), (retyped, True), (deleted, True), ("{cut", True), ("[]", True)):
        (mine / "one.ipynb").write_text(text)
        told = opening.lay_out(mine)
        fresh = mine / "one (fresh).ipynb"
        assert len(told) == damaged and fresh.exists() is damaged and (mine / "one.ipynb").read_text() == text
        if damaged:
            assert "one (fresh).ipynb" in told[0] and fresh.read_text() == whole and opening.lay_out(mine) == [], "told once"
            fresh.unlink()


def test_a_broken_record_loses_nothing(tmp_path, edition):
    mine = tmp_path / "mine"
    opening.lay_out(mine)
    (mine / "one.ipynb").write_text("my work")
    (mine / ".brimwork.json").write_text("{broken")
    opening.lay_out(mine)
    assert (mine / "one.ipynb").read_text() == "my work"


def test_a_file_where_a_folder_is_wanted_is_told(tmp_path):
    (tmp_path / "file").write_text("x")
    with pytest.raises(InputError, match="a folder is wanted"):
        opening.lay_out(tmp_path / "file")


def test_a_folder_that_cannot_be_made_is_told(tmp_path):
    (tmp_path / "file").write_text("x")
    with pytest.raises(InputError, match="cannot be written"):
        opening.lay_out(tmp_path / "file" / "below")


def test_browser_messages_leave_at_once_when_our_extension_is_loaded():
    """A websocket handler opened after loading has TCP_NODELAY on its socket; read from the real socket of a real Tornado server."""
    code = """
import asyncio, socket
from tornado import web, websocket, httpserver, netutil
from jupyter_server.services.kernels import websocket as kernels
seen = []
class Handler(websocket.WebSocketHandler):
    async def open(self, *a): seen.append(self.ws_connection.stream.socket.getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY))
kernels.KernelWebsocketHandler = Handler
from brimwork.notebook import swift
swift.put_swift_on()
async def main():
    sockets = netutil.bind_sockets(0, "127.0.0.1")
    httpserver.HTTPServer(web.Application([("/", Handler)])).add_sockets(sockets)
    client = await websocket.websocket_connect(f"ws://127.0.0.1:{sockets[0].getsockname()[1]}/")
    await asyncio.sleep(0.3)
    print("NODELAY", seen)
asyncio.run(main())
"""
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=60)
    assert socket.TCP_NODELAY and "NODELAY [1]" in done.stdout, done.stderr


def test_no_time_is_spent_on_grammars_that_no_schema_of_jupyter_asks_for():
    code = (
        "from brimwork.notebook import swift; swift.leave_out_grammars(); import jsonschema, sys; print(sorted(name for name in sys.modules if name == 'lark'))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=60)
    assert done.stdout == "[]\n", done.stderr
    folders = [
        Path(importlib.util.find_spec(name).origin).parent for name in ("jupyter_events", "jupyter_server", "jupyterlab", "jupyterlab_server", "nbformat")
    ]
    schemas = [path for folder in folders for end in ("json", "yaml", "yml") for path in folder.rglob(f"*.{end}") if "node_modules" not in path.parts]
    assert len(schemas) > 50
    assert not [path for path in schemas if re.search(rb"""["']?format["']?:\s*["']?iri""", path.read_bytes())]


def test_a_record_that_is_not_ours_and_a_link_to_nothing_are_left_alone(tmp_path, edition):
    mine = tmp_path / "mine"
    mine.mkdir()
    (mine / ".brimwork.json").write_text("not ours")
    (mine / "one.ipynb").symlink_to(tmp_path / "nowhere")
    opening.lay_out(mine)
    assert (mine / ".brimwork.json").read_text() == "not ours" and (mine / "one.ipynb").is_symlink()


# --- the server -----------------------------------------------------------------------------------------------------------------------


def _free_port() -> int:
    while True:
        with socket.socket() as probe:
            probe.bind(("127.0.0.1", 0))
            if probe.getsockname()[1] >= 1024:
                return probe.getsockname()[1]


def _is_open(port: int) -> bool:
    with socket.socket() as probe:
        return probe.connect_ex(("127.0.0.1", port)) == 0


@pytest.fixture
def own(tmp_path, monkeypatch):
    """Jupyter's own files of this test stay in its folder."""
    for name in ("RUNTIME", "CONFIG", "DATA"):
        monkeypatch.setenv(f"JUPYTER_{name}_DIR", str(tmp_path / name.lower()))
    return tmp_path


def _opened(folder: Path, port: int) -> subprocess.Popen:
    line = [sys.executable, "-m", "brimwork", "open", str(folder), "--no-browser", "--port", str(port)]
    heard = None if os.name == "nt" else lambda: signal.signal(signal.SIGINT, signal.SIG_DFL)  # a suite that runs in the background hears no Ctrl+C
    return subprocess.Popen(line, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, preexec_fn=heard)


def _wait_for(what, seconds: float = 180):
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if found := what():
            return found
        time.sleep(0.2)
    pytest.fail(f"not within {seconds} s")


@pytest.mark.skipif(os.name == "nt", reason="signals as on Unix")
@pytest.mark.parametrize("asked", [signal.SIGTERM, signal.SIGINT], ids=["ended", "Ctrl+C"])
def test_a_second_open_shows_the_running_server_and_its_end_is_passed_on(own, monkeypatch, asked):
    """Even where a thread of the server waits for what never comes, as those that read its files do when they are stopped in the midst of it."""
    waits = "import sys, threading\nif 'brimwork.notebook.serving' in sys.orig_argv: threading.Thread(target=threading.Event().wait).start()"
    (own / "sitecustomize.py").write_text(waits)
    monkeypatch.setenv("PYTHONPATH", str(own), prepend=os.pathsep)
    mine, port = own / "mine", _free_port()
    first = _opened(mine, port)
    try:
        address = _wait_for(lambda: opening.running(mine))
        assert f":{port}/brimwork/?token=" in address
        second = _opened(mine, _free_port())
        out, err = second.communicate(timeout=120)
        assert second.returncode == 0 and out == f"{address}\n" and "are open already" in err
        assert opening.running(own / "other") is None
        first.send_signal(asked)
        first.communicate(timeout=60)
        assert first.returncode == 0 and not _is_open(port) and opening.running(mine) is None
    finally:
        if first.poll() is None:
            first.terminate()
            first.communicate(timeout=60)


def test_the_address_of_a_running_server_is_opened_in_the_browser(tmp_path, monkeypatch, capsys):
    opened = []
    monkeypatch.setattr(opening, "running", lambda folder: "http://localhost:8888/brimwork/")
    monkeypatch.setattr(opening.webbrowser, "open", opened.append)
    assert opening.open_workbooks(tmp_path / "mine") == 0 and opening.open_workbooks(tmp_path / "mine", browser=False) == 0
    assert opened == ["http://localhost:8888/brimwork/"]


def test_a_record_left_by_a_server_that_is_gone_does_not_count(own):
    (own / "runtime").mkdir()
    left = f'{{"pid": {os.getpid()}, "root_dir": "{own}", "url": "http://localhost:1/", "hostname": "localhost", "port": {_free_port()}, "token": "x"}}'
    (own / "runtime" / "jpserver-1.json").write_text(left)
    assert opening.running(own) is None


@pytest.mark.skipif(os.name == "nt", reason="signals as on Unix")
def test_two_opens_in_one_second_give_one_server_and_a_killed_one_leaves_no_orphan(own, short, monkeypatch):
    mine, runtime = own / "mine", short
    monkeypatch.setenv("JUPYTER_RUNTIME_DIR", str(runtime))
    both = [_opened(mine, _free_port()) for _ in range(2)]
    try:
        second = _wait_for(lambda: next((one for one in both if one.poll() is not None), None))
        first = next(one for one in both if one is not second)
        out, err = second.communicate(timeout=60)
        assert second.returncode == 0 and "are open already" in err and out == f"{opening.running(mine)}\n"
        records = list(runtime.glob("jpserver-*.json"))
        assert len(records) == 1
        server = json.loads(records[0].read_text())
        kernel = _kernel(server)
        speaking = {json.loads(file.read_text())["transport"] for file in runtime.glob("kernel-*.json")}
        assert speaking == ({"tcp"} if os.name == "nt" else {"ipc"})
        first.kill()
        first.communicate(timeout=60)
        _wait_for(lambda: not _alive(server["pid"]) and not _alive(kernel), 60)
        assert not _is_open(server["port"])
    finally:
        for one in both:
            one.kill()
            one.communicate(timeout=60)


def test_a_file_beside_the_workbooks_is_never_loaded_for_a_module_and_no_kernel_says_how_to_stop_it(own, short, monkeypatch):
    """Kernels of pages and of JupyterLab; where running ones are noted is named from where the command is typed."""
    mine = own / "mine"
    mine.mkdir()
    for name in ("json", "sympy", "brimwork", "ipykernel", "ipykernel_launcher"):
        (mine / f"{name}.py").write_text("open('was-loaded', 'w').close()")
    monkeypatch.chdir(short)
    monkeypatch.setenv("JUPYTER_RUNTIME_DIR", "runtime")
    server = _opened(mine, _free_port())
    try:
        _wait_for(lambda: opening.running(mine))
        (record,) = (short / "runtime").glob("jpserver-*.json")
        _kernel(json.loads(record.read_text()))
        _wait_for(lambda: len(list((short / "runtime").glob("kernel-*.json"))) > 1)  # that for the first page
        for connection in (short / "runtime").glob("kernel-*.json"):
            client = BlockingKernelClient(connection_file=str(connection))
            client.load_connection_file()
            client.start_channels()
            client.wait_for_ready(timeout=60)
            client.stop_channels()
        assert server.poll() is None and not (mine / "was-loaded").exists()
    finally:
        server.terminate()
        _, err = server.communicate(timeout=60)
    assert "Stop with Ctrl+C" in err and not re.search("NOTE|WARN|existing|ipython|Traceback", err), err


def test_a_home_that_cannot_be_written_is_told_in_words_and_what_it_says_helps(own, monkeypatch):
    (own / "file").write_text("")
    monkeypatch.setenv("JUPYTER_RUNTIME_DIR", str(own / "file" / "runtime"))
    server = _opened(own / "mine", _free_port())
    out, err = server.communicate(timeout=120)
    assert server.returncode and "Traceback" not in err and "runtime what runs, and that cannot be written" in err, err
    name, place = re.search(r"with (?:export|set \") ?(\w+)='?([^'\"]+)['\"] and type the same command again", err).groups()
    monkeypatch.setenv(name, place)
    server = _opened(own / "mine", _free_port())
    try:
        assert _wait_for(lambda: opening.running(own / "mine")) and list((own / "mine").glob(".running/jpserver-*.json"))
    finally:
        server.terminate()
        server.communicate(timeout=60)


def _alive(pid: int) -> bool:
    state = Path(f"/proc/{pid}/stat")
    if state.parent.parent.joinpath("self").exists():
        return state.exists() and state.read_text().rpartition(")")[2].split()[0] != "Z"
    try:
        os.kill(pid, 0)
    except OSError:
        return False
    return True


def _kernel(server: dict) -> int:
    """Start a kernel and tell its process."""
    ask = urllib.request.Request(f"{server['url']}api/kernels", data=b"{}", headers={"Authorization": f"token {server['token']}"})
    with urllib.request.urlopen(ask, timeout=60) as answer:
        assert answer.status == 201
    children = subprocess.run(["ps", "-o", "pid=", "--ppid", str(server["pid"])], capture_output=True, text=True).stdout.split()
    return int(children[-1])
