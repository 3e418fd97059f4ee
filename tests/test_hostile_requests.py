"""What a server that the kit starts answers to strangers: every request below is refused and carries nothing of the folder, the token or a cookie that opens it.

The user's own configuration is as open as it can be written. `python tests/test_hostile_requests.py` prints the list with its answers.
"""

import json
import os
import re
import socket
import subprocess
import sys
import time
from contextlib import contextmanager, suppress
from pathlib import Path

import pytest

from brimwork.notebook import opening

PAPER = "%PDF-1.7 a print of the folder"
SECRET, MARK = "a-token-that-is-only-for-this-test", "a line that only the folder knows"
OPEN = {
    "ServerApp": {
        "allow_origin": "*",
        "allow_remote_access": True,
        "disable_check_xsrf": True,
        "ip": "0.0.0.0",
        "allow_credentials": True,
        "trust_xheaders": True,
    },
    "IdentityProvider": {"token": ""},
}
SITE, OTHER_PORT = "http://evil.example", "http://localhost:1"
_SOCKET = {"Upgrade": "websocket", "Connection": "Upgrade", "Sec-WebSocket-Version": "13", "Sec-WebSocket-Key": "AAAAAAAAAAAAAAAAAAAAAA=="}


def requests(host: str, cookie: str) -> list[tuple[str, str, str, dict, str]]:
    """What it is, method, path, headers, body. `cookie` is one that the server itself gave: a browser sends it along for whoever asks."""
    mine = {"Host": host}
    own = {**mine, "Cookie": cookie}
    made = [
        ("no token", "GET", path, mine, "")
        for path in ("/api/contents", "/api/contents/secret.txt", "/files/secret.txt", "/lab", "/lab/tree/secret.txt", "/tree", "/api/sessions", "/api/kernels",
                     "/api/kernelspecs", "/api/terminals", "/api/status", "/api/me", "/nbconvert/html/00-start.ipynb", "/lab/api/workspaces", "/lab/api/settings",
                     "/lsp/status", "/view/secret.txt", "/edit/secret.txt", "/voila/render/00-start.ipynb", "/../../etc/passwd", "/files/..%2f..%2f..%2fetc%2fpasswd",
                     "/static/../../secret.txt", "/files/.brimwork.json", "/brimwork", "/brimwork/", "/brimwork/page/design", "/brimwork/static/page.js",
                     "/brimwork/print/paper.pdf", f"/brimwork/own/{'0' * 64}", f"/brimwork/line/{'0' * 24}")
    ]  # fmt: skip
    made += [
        ("a wrong token", "GET", "/api/contents?token=wrong", mine, ""),
        ("a wrong token", "GET", "/api/contents", {**mine, "Authorization": "token wrong"}, ""),
    ]
    made += [
        ("an empty token", "GET", "/api/contents?token=", mine, ""),
        ("a cookie made up", "GET", "/api/contents", {**mine, "Cookie": f"username-{host}=2|1:0|x"}, ""),
    ]
    made += [
        ("a foreign name", "GET", "/api/contents", {**own, "Host": name}, "")
        for name in ("evil.example", "evil.example:80", "localhost.evil.example", "10.0.0.1", "0.0.0.0", "[::2]", "")
    ]
    made += [("no name", "GET", "/api/contents", {"Cookie": cookie}, ""), ("two names", "GET", "/api/contents", {**own, "host": "evil.example"}, "")]
    made += [("the first page by a foreign name", "GET", f"/lab?token={SECRET}", {"Host": "evil.example"}, "")]
    made += [
        ("another site", "GET", "/api/contents", {**own, "Origin": site}, "")
        for site in (SITE, OTHER_PORT, "null", f"https://{host}", f"http://{host}.evil.example", "file://")
    ]
    made += [("a page of another site", "GET", path, {**own, "Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "no-cors", "Sec-Fetch-Dest": what}, "")
             for path, what in (("/files/secret.txt", "script"), ("/api/contents", "image"), ("/lab", "iframe"), ("/files/secret.txt", "style"))]  # fmt: skip
    made += [("another port of this machine", "GET", "/files/secret.txt", {**own, "Sec-Fetch-Site": "same-site", "Sec-Fetch-Mode": "no-cors"}, "")]
    made += [("another port, old browser", "GET", "/files/secret.txt", {**own, "Referer": f"{OTHER_PORT}/x"}, "")]
    made += [
        (
            "a link from another site",
            "GET",
            "/lab/tree/secret.txt",
            {**own, "Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate", "Sec-Fetch-Dest": "document"},
            "",
        )
    ]
    form = {**own, "Origin": SITE, "Content-Type": "application/x-www-form-urlencoded"}
    made += [("a form of another site", "POST", path, form, "a=b") for path in ("/api/kernels", "/api/terminals", "/login", "/api/shutdown", "/api/sessions")]
    put = json.dumps({"type": "file", "format": "text", "content": "taken"})
    made += [
        ("writing", method, "/api/contents/secret.txt", {**own, "Origin": SITE, "Content-Type": "text/plain"}, put)
        for method in ("PUT", "PATCH", "DELETE", "POST", "OPTIONS")
    ]
    made += [("writing without the token of a form", "PUT", "/api/contents/secret.txt", own, put), ("a kernel without it", "POST", "/api/kernels", own, "{}")]
    made += [
        ("a socket", "GET", f"/api/kernels/{'0' * 8}-0000-0000-0000-{'0' * 12}/channels", {**own, **_SOCKET, "Origin": site}, "") for site in (SITE, OTHER_PORT)
    ]
    made += [("a line to a page", "GET", f"/brimwork/line/{'0' * 24}?seen=0", {**own, **_SOCKET, "Origin": site}, "") for site in (SITE, OTHER_PORT)]
    made += [("a page asked for by another site", "GET", "/brimwork/page/design", {**own, "Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate"}, "")]
    made += [
        ("out of the folder", "GET", f"/brimwork/{path}", own, "")
        for path in ("print/../outside.pdf", "print/%2e%2e/outside.pdf", "print/..%2foutside.pdf", "print//etc/passwd", "print/%2fetc%2fpasswd", "print/linked.pdf",
                     "print/.hidden.pdf", "print/.hidden/paper.pdf", "print/secret.txt", "print/secret.pdf", "print/paper.pdf%00.pdf", "static/../start.html",
                     "static/..%2f..%2fserving.py", "static/%2fetc%2fpasswd", "static/start.html", "page/stranger", "page/..%2fstranger", "page/%2e%2e",
                     "page/python", "page/design/..", "page/designs%2fx", "line/../page/design", "own/design")
    ]  # fmt: skip
    made += [("a page by another method", method, "/brimwork/page/design", own, "") for method in ("POST", "PUT", "DELETE")]
    made += [("a socket without a cookie", "GET", "/terminals/websocket/1", {**mine, **_SOCKET, "Origin": f"http://{host}"}, "")]
    made += [("an address of another server", "GET", "http://evil.example/api/contents", own, ""), ("a doubled slash", "GET", "//evil.example/%2f..", own, "")]
    made += [("a proxy's words", "GET", "/api/contents", {**mine, "X-Forwarded-For": "127.0.0.1", "X-Scheme": "https", "X-Real-Ip": "127.0.0.1"}, "")]
    return made


def ask(port: int, method: str, path: str, headers: dict, body: str) -> tuple[int, str]:
    """The status and the whole of an answer, as raw bytes of the line give them."""
    head = "".join(f"{name}: {value}\r\n" for name, value in headers.items())
    length = f"Content-Length: {len(body)}\r\n" if body else ""
    with socket.create_connection(("127.0.0.1", port), timeout=20) as line:
        line.sendall(f"{method} {path} HTTP/1.1\r\n{head}{length}{'' if 'Upgrade' in headers else 'Connection: close' + chr(13) + chr(10)}\r\n{body}".encode())
        got = b""
        while part := line.recv(65536):
            got += part
            length = re.search(rb"(?i)content-length: (\d+)\r\n", got)
            if b"101 Switching" in got[:40] or length and len(got.partition(b"\r\n\r\n")[2]) >= int(length[1]):
                break
    return int(got.split(b" ", 2)[1]) if got.startswith(b"HTTP/") else 0, got.decode(errors="replace")


@contextmanager
def server(folder: Path, settings: str = json.dumps(OPEN), ours: bool = True):
    """A server of `brimwork open` whose user has opened all doors in the configuration, or JupyterLab by itself; yields its port and its record."""
    mine = folder / "mine"
    config = folder / "config"
    config.mkdir()
    (config / "jupyter_server_config.json").write_text(settings)
    opening.lay_out(mine)
    for name in ("secret.txt", "unlisted.txt"):
        (mine / name).write_text(MARK)
    (folder / "outside.pdf").write_text(f"%PDF-1.7 {MARK}")
    (mine / "paper.pdf").write_text(PAPER)
    (mine / "linked.pdf").symlink_to(folder / "outside.pdf")
    (mine / "secret.pdf").write_text(MARK)
    for hidden in (mine / ".hidden.pdf", mine / ".hidden" / "paper.pdf"):
        hidden.parent.mkdir(exist_ok=True)
        hidden.write_text(f"%PDF-1.7 {MARK}")
    stranger = {"cells": [{"cell_type": "code", "source": f"open('taken', 'w').write('{MARK}')", "metadata": {}, "outputs": [], "execution_count": None}]}
    (mine / "stranger.ipynb").write_text(json.dumps({**stranger, "metadata": {}, "nbformat": 4, "nbformat_minor": 4}))
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    own = {name: str(folder / name.lower()) for name in ("JUPYTER_RUNTIME_DIR", "JUPYTER_DATA_DIR")}
    environment = {**os.environ, **own, "JUPYTER_CONFIG_DIR": str(config), "JUPYTER_TOKEN": SECRET}
    line = [sys.executable, "-m", "brimwork", "open", str(mine), "--no-browser", "--port", str(port)]
    if not ours:
        alone = [f"--ServerApp.root_dir={mine}", f"--ServerApp.port={port}", "--ServerApp.ip=localhost", "--no-browser", "--allow-root"]
        line = [sys.executable, "-m", "jupyterlab", *alone]
    process = subprocess.Popen(line, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        record = _record(folder / "jupyter_runtime_dir", process)
        yield record["port"], record
    finally:
        process.terminate()
        process.wait(60)


def _record(folder: Path, process) -> dict:
    for _ in range(600):
        for path in folder.glob("jpserver-*.json"):
            record = json.loads(path.read_text() or "{}")
            with socket.socket() as probe:
                if record and probe.connect_ex(("127.0.0.1", record["port"])) == 0:
                    return record
        assert process.poll() is None, "the server ended"
        time.sleep(0.1)
    raise AssertionError("the server did not start")


def cookie_of(port: int, token: str) -> str:
    """The cookies that the first page brings."""
    status, answer = ask(port, "GET", f"/brimwork/?token={token}", {"Host": f"localhost:{port}"}, "")
    assert status == 302 and "token" not in answer.partition("\r\n\r\n")[0].split("Location:")[1].split("\r\n")[0], "the token does not stay in the address"
    return "; ".join(re.findall(r"(?im)^set-cookie: ([^;\r\n]+)", answer))


@pytest.fixture(scope="module")
def running(tmp_path_factory):
    with server(tmp_path_factory.mktemp("guarded")) as (port, record):
        yield port, record, cookie_of(port, record["token"])


def refused(status: int, answer: str, token: str) -> bool:
    """Nothing of the folder, nothing that opens it; a redirection leads to the page that asks for the token."""
    to_login = status in (301, 302) and re.search(r"(?im)^location: /login\?", answer)
    body = answer.partition("\r\n\r\n")[2]
    closed = bool(to_login) or status in (0, 400, 401, 403, 404, 405)
    return (
        closed
        and MARK not in answer
        and token not in answer
        and "root:" not in body
        and "unlisted" not in answer
        and "data-room" not in answer
        and "Access-Control-Allow-Origin: *" not in answer
    )


def test_the_server_answers_its_own_page(running):
    port, _, cookie = running
    own = {"Host": f"localhost:{port}", "Cookie": cookie, "Sec-Fetch-Site": "same-origin", "Referer": f"http://localhost:{port}/lab"}
    status, answer = ask(port, "GET", "/api/contents", own, "")
    assert status == 200 and "secret.txt" in answer
    assert MARK in ask(port, "GET", "/files/secret.txt", own, "")[1]
    first = {"Host": f"localhost:{port}", "Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate", "Sec-Fetch-Dest": "document"}
    assert ask(port, "GET", f"/lab/tree/00-start.ipynb?token={running[1]['token']}", first, "")[0] == 200, "the page that a browser is started with"


def test_a_token_is_wanted_although_the_configuration_says_none(running):
    assert len(running[1]["token"]) > 20


def test_strangers_get_nothing(running):
    port, record, cookie = running
    asked = requests(f"localhost:{port}", cookie)
    assert len(asked) >= 40
    answers = [(what, method, path, *ask(port, method, path, headers, body)) for what, method, path, headers, body in asked]
    wrong = [(what, method, path, status, answer[:300]) for what, method, path, status, answer in answers if not refused(status, answer, record["token"])]
    assert not wrong


def test_our_pages_are_given_to_their_own_user(running):
    port, _, cookie = running
    own = {"Host": f"localhost:{port}", "Cookie": cookie}
    status, start = ask(port, "GET", "/brimwork/", own, "")
    assert status == 200 and all(f'id="{way}"' in start for way in ("build", "learn", "teach"))
    policy = re.search(r"(?im)^content-security-policy: (.*)$", start)[1]
    assert "default-src 'none'" in policy and "unsafe-eval" not in policy and "http" not in policy and f"ws://localhost:{port}" in policy
    assert PAPER in ask(port, "GET", "/brimwork/print/paper.pdf", own, "")[1]
    status, page = ask(port, "GET", "/brimwork/page/quick-check", own, "")
    assert status == 200 and "data-room" in page and "quick_check(" not in page, "no code"


def test_a_line_takes_only_answers_of_boxes(running, tmp_path):
    """Every message by which somebody could have code run, sent along the line of a page that is open: the line is closed, and nothing ran."""
    port, _, cookie = running
    own = {"Host": f"localhost:{port}", "Cookie": cookie}
    taken = tmp_path / "taken"
    code = f"open({str(taken)!r}, 'w')"
    room = re.search(r'data-room="(\w+)"', ask(port, "GET", "/brimwork/page/quick-check", own, "")[1])[1]
    name = f"{room}-1"
    tried = [
        {"type": "execute_request", "id": name, "content": {"code": code, "silent": False}, "buffers": []},
        {"type": "comm_open", "id": name, "content": {"comm_id": "1", "target_name": "jupyter.widget", "target_module": "os", "data": {}}, "buffers": []},
        {"type": "comm_msg", "id": name, "content": {"comm_id": "1", "data": {}, "code": code}, "buffers": []},
        {"type": "comm_msg", "id": "cell-1", "content": {"comm_id": "1", "data": {}}, "buffers": []},
        {"type": "complete_request", "id": name, "content": {"code": code, "cursor_pos": 1}, "buffers": []},
        {"type": "shutdown_request", "id": name, "content": {"restart": False}, "buffers": []},
        [],
        "x",
    ]
    ended = [talk(port, f"/brimwork/line/{room}?seen=0", own, json.dumps(message)) for message in tried]
    assert ended == [4400] * len(tried) and not taken.exists()
    assert talk(port, f"/brimwork/line/{'0' * 24}?seen=0", own, "{}") == 4404, "a page that is not open"


def talk(port: int, path: str, headers: dict, said: str) -> int:
    """Say something along a line; the number with which the server closes it."""
    from tornado.httpclient import HTTPRequest
    from tornado.ioloop import IOLoop
    from tornado.websocket import websocket_connect

    async def once() -> int:
        line = await websocket_connect(HTTPRequest(f"ws://localhost:{port}{path}", headers={**headers, "Origin": f"http://localhost:{port}"}))
        await line.write_message(said)
        while await line.read_message() is not None:
            pass
        return line.close_code

    loop = IOLoop(make_current=False)
    try:
        return loop.run_sync(once, timeout=30)
    finally:
        loop.close()


SWITCHED_OFF = {"jupyterlab": False, "jupyter_server_terminals": False, "jupyter_lsp": False, "notebook_shim": False}


@pytest.mark.parametrize(
    "settings",
    ['{"ServerApp": {"allow_origin": "*", ', json.dumps({**OPEN, "ServerApp": {**OPEN["ServerApp"], "jpserver_extensions": SWITCHED_OFF}})],
    ids=["a damaged file", "extensions switched off"],
)
def test_settings_that_are_damaged_or_switch_something_off_open_no_door(settings, tmp_path):
    with server(tmp_path, settings) as (port, record):
        cookie = cookie_of(port, record["token"])
        host = f"localhost:{port}"
        answers = [(path, *ask(port, method, path, headers, body)) for _, method, path, headers, body in requests(host, cookie)]
        assert not [(path, status) for path, status, answer in answers if not refused(status, answer, record["token"])]


def test_the_same_requests_open_a_server_that_nobody_guards(tmp_path):
    """So we know that the list would find a door."""
    with server(tmp_path, ours=False) as (port, record):
        let_in, left = set(), iter(requests(f"localhost:{port}", ""))
        with suppress(ConnectionError):  # once a stranger has shut it down
            for what, method, path, headers, body in left:
                if not refused(*ask(port, method, path, headers, body), record["token"] or "none at all"):
                    let_in.add(what)
    assert {"no token", "a wrong token", "a foreign name"} <= let_in, let_in


def test_only_this_machine_is_listened_to(running):
    port = running[0]
    addresses = {info[4][0] for info in socket.getaddrinfo(socket.gethostname(), port, socket.AF_INET) if not info[4][0].startswith("127.")}
    for address in addresses:
        with socket.socket() as probe:
            probe.settimeout(2)
            assert probe.connect_ex((address, port)) != 0


if __name__ == "__main__":
    import tempfile

    with tempfile.TemporaryDirectory() as place, server(Path(place)) as (port, record):
        cookie = cookie_of(port, record["token"])
        for number, (what, method, path, headers, body) in enumerate(requests(f"localhost:{port}", cookie), start=1):
            status, answer = ask(port, method, path, headers, body)
            if not refused(status, answer, record["token"]):
                print(answer)
            print(f"{number:3}  {'refused' if refused(status, answer, record['token']) else 'LET IN '}  {status}  {method:7} {path[:60]:60}  {what}")
