"""Other devices of the own network: let in only when asked for, by one address and one code, to the pages without code and to nothing else."""

import os
import re
import subprocess
import sys
from types import SimpleNamespace

import pytest
from test_hostile_requests import SECRET, ask
from tornado.httputil import HTTPHeaders, HTTPServerRequest, RequestStartLine

from brimwork.cli import main
from brimwork.notebook import guard, opening, yard
from brimwork.notebook.yard import Yard, yard_at
from brimwork.units import InputError

PHONE, MINE = "192.168.1.50", Yard("192.168.1.20", "abcde-fghjk")


def request(path: str, host: str, from_: str, **headers: str) -> HTTPServerRequest:
    made = HTTPServerRequest(
        start_line=RequestStartLine("GET", path, "HTTP/1.1"),
        headers=HTTPHeaders({"Host": host, **{name.replace("_", "-"): text for name, text in headers.items()}}),
    )
    made.remote_ip = from_
    return made


def why(path: str, host: str = "192.168.1.20:8888", from_: str = PHONE, yard: Yard | None = MINE, **headers: str) -> bool:
    """Whether the guard lets a request on."""
    app = SimpleNamespace(settings={}, find_handler=lambda request, **_: "on", get_handler_delegate=lambda request, kind, named: named["why"])
    guard.stand_before(app, SECRET, yard, 8888)
    return app.find_handler(request(path, host, from_, **headers)) == "on"


@pytest.mark.parametrize(
    "path", ["/brimwork/", "/brimwork", f"/brimwork/{MINE.code}", "/brimwork/page/design", "/brimwork/static/page.js", "/brimwork/print/designs/a.pdf"]
)
def test_a_device_reaches_pages_without_code_only_where_it_was_asked_in(path):
    assert why(path) and not why(path, yard=None)
    for host in ("localhost:8888", "127.0.0.1:8888", "192.168.1.20", "192.168.1.20:1", "192.168.1.21:8888", "evil.example:8888", ""):
        assert not why(path, host=host), host
    assert not why(path, Origin="http://evil.example") and not why(path, Origin="http://localhost:8888") and why(path, Origin="http://192.168.1.20:8888")


@pytest.mark.parametrize("path", ["/", "/lab", "/lab/tree/a.ipynb", "/api/kernels", "/api/contents", "/files/a.txt", "/terminals/1", "/login", "/static/x.js",
                                  f"/brimwork/own/{'0' * 64}", "/brimwork/../lab", "/brimworks", "/brimwork/page/a/../../lab", f"/lab?token={SECRET}"])  # fmt: skip
def test_nothing_else_is_for_other_devices(path):
    assert not why(path) and not why(path, host="localhost:8888") and not why(path, Cookie="anything")


def test_this_machine_goes_on_by_its_own_name():
    assert why("/lab", host="localhost:8888", from_="127.0.0.1") and why("/lab", host="[::1]:8888", from_="::1")
    assert not why("/lab", host="192.168.1.20:8888", from_="127.0.0.1")


def test_a_link_with_the_code_may_come_from_elsewhere_and_a_picture_may_not():
    link = {"Sec_Fetch_Site": "cross-site", "Sec_Fetch_Mode": "navigate", "Sec_Fetch_Dest": "document"}
    assert why(f"/brimwork/{MINE.code}", **link)
    assert not why("/brimwork/page/design", **link) and not why(f"/brimwork/{MINE.code}", **{**link, "Sec_Fetch_Dest": "image", "Sec_Fetch_Mode": "no-cors"})


@pytest.mark.parametrize("address", ["8.8.8.8", "127.0.0.1", "0.0.0.0", "169.254.1.1", "localhost", "10.255.255.254", "x"])
def test_an_address_that_is_not_of_an_own_network_is_refused_in_words(address, capsys, tmp_path):
    assert main(["open", str(tmp_path), "--yard", address]) == 2
    assert "--yard" in capsys.readouterr().err and not list(tmp_path.iterdir())


def test_each_time_has_a_code_of_its_own(monkeypatch):
    monkeypatch.setattr(yard.socket.socket, "bind", lambda self, address: None)
    codes = {yard_at("192.168.1.20").code for _ in range(50)}
    assert len(codes) == 50 and all(re.fullmatch("[a-z2-9]{5}-[a-z2-9]{5}", code) for code in codes)


def test_a_page_writes_in_the_folder_only_when_others_are_let_in(tmp_path):
    mine, other = tmp_path / "mine", tmp_path / "other"
    mine.mkdir(), other.mkdir()
    script = f"""
import os, tempfile
tempfile.tempdir = {str(tmp_path / "temporary")!r}
from brimwork.notebook.warming import stay_within
stay_within({str(mine)!r})
from brimwork import files
from pathlib import Path
files.write_whole(Path({str(mine / "a.toml")!r}), b'1')
os.symlink({str(other)!r}, {str(mine / "link")!r})
for path in ({str(other / "b.toml")!r}, {str(mine / ".." / "b.toml")!r}, {str(mine / "link" / "b.toml")!r}):
    for write in (lambda: files.write_whole(Path(path), b'1'), lambda: open(path, 'w'), lambda: os.open(path, os.O_CREAT), lambda: os.rename({str(mine / "a.toml")!r}, path)):
        try: write()
        except OSError: continue
        raise SystemExit(path)
print(open(os.__file__).readline() and 'read')
"""
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, env={**os.environ})
    assert done.stdout == "read\n", done.stderr
    assert [path.name for path in mine.iterdir() if path.is_file()] == ["a.toml"] and not list(other.iterdir()) and not (tmp_path / "b.toml").exists()


def test_a_phone_comes_in_by_the_code_and_by_no_other_day_s(tmp_path):
    try:
        address = yard_at("").address
    except InputError as error:
        pytest.skip(str(error))
    own = {"JUPYTER_RUNTIME_DIR": str(tmp_path / "run"), "JUPYTER_DATA_DIR": str(tmp_path / "data"), "JUPYTER_CONFIG_DIR": str(tmp_path / "config")}
    environment = {**os.environ, **own, "JUPYTER_TOKEN": SECRET}
    line = [sys.executable, "-m", "brimwork", "open", str(tmp_path / "mine"), "--no-browser", "--port", "8923", "--yard", address]
    process = subprocess.Popen(line, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True)
    try:
        told = ""
        while "at this address" not in told:
            told += (read := process.stderr.readline())
            assert read, told
        url = re.search(rf"http://{re.escape(address)}:(\d+)(/brimwork/\S{{11}})\n", told)
        port, host = int(url[1]), f"{address}:{url[1]}"
        assert yard.WARNING in told
        status, answer = _ask(address, port, url[2], {"Host": host})
        cookie = re.search(r"(?im)^set-cookie: ([^;\r\n]+)", answer)[1]
        assert status == 302 and SECRET not in answer
        mine = {"Host": host, "Cookie": cookie}
        status, start = _ask(address, port, "/brimwork/", mine)
        assert status == 200 and "JupyterLab" not in start and url[2] not in start and SECRET not in start
        assert "data-room" in _ask(address, port, "/brimwork/page/quick-check", mine)[1]
        for path in ("/lab", "/api/contents", f"/api/contents?token={SECRET}", "/brimwork/nothing", "/brimwork/print/nothing.pdf"):
            status, answer = _ask(address, port, path, mine)
            assert status in (403, 404) and SECRET not in answer, path
        assert _ask(address, port, "/brimwork/", {"Host": host})[0] in (302, 403)
        assert _ask(address, port, "/brimwork/aaaaa-aaaaa", {"Host": host})[0] in (403, 404)
        status, here = ask(port, "GET", "/brimwork/", {"Host": f"localhost:{port}", "Authorization": f"token {SECRET}"}, "")
        assert status == 200 and url[0].strip() in here and "<svg" in here and yard.WARNING[:40] in here
    finally:
        process.terminate()
        process.communicate(timeout=60)
    assert opening.running(tmp_path / "mine") is None


def _ask(address: str, port: int, path: str, headers: dict) -> tuple[int, str]:
    from unittest import mock

    import test_hostile_requests

    real = test_hostile_requests.socket.create_connection
    with mock.patch.object(test_hostile_requests.socket, "create_connection", lambda place, **named: real((address, port), **named)):
        return ask(port, "GET", path, headers, "")
