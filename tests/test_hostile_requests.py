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
from contextlib import contextmanager
from pathlib import Path

import pytest

from brimwork.notebook import opening

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
                     "/static/../../secret.txt", "/files/.brimwork.json")
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
def server(folder: Path):
    """A server of `brimwork open` whose user has opened all doors in the configuration; yields its port and its record."""
    mine = folder / "mine"
    config = folder / "config"
    config.mkdir()
    (config / "jupyter_server_config.json").write_text(json.dumps(OPEN))
    opening.lay_out(mine)
    for name in ("secret.txt", "unlisted.txt"):
        (mine / name).write_text(MARK)
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    own = {name: str(folder / name.lower()) for name in ("JUPYTER_RUNTIME_DIR", "JUPYTER_DATA_DIR")}
    environment = {**os.environ, **own, "JUPYTER_CONFIG_DIR": str(config), "JUPYTER_TOKEN": SECRET}
    line = [sys.executable, "-m", "brimwork", "open", str(mine), "--no-browser", "--port", str(port)]
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
    status, answer = ask(port, "GET", f"/lab?token={token}", {"Host": f"localhost:{port}"}, "")
    assert status == 200 and "JupyterLab" in answer
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
