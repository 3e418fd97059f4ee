"""Who may speak to a server that the kit starts: pages that it served itself, on this machine, and nobody else. It stands before every address of the server.

A browser sends its cookies along with what any page asks for, and a name of somebody else's may point to this machine; so a request must name this
machine, and come from a page of this very server. The one exception is a link with the token in it, which is how the first page is opened. Where other devices of the own network were asked in
(`yard`), they reach the pages without code under the one address that was given to them, whatever name, cookie or token they bring.
"""

from __future__ import annotations

import hmac
import ipaddress
import re
from urllib.parse import parse_qs, urlsplit

from tornado.httputil import HTTPServerRequest
from tornado.web import Application, RequestHandler

from brimwork.notebook.yard import Yard

LOOPBACK = re.compile(r"(localhost|127\.0\.0\.1|\[::1\])(:\d{1,5})?")
# Nothing of ours is for other sites, and no address of ours is told to them.
HEADERS = {
    "Cross-Origin-Resource-Policy": "same-origin",
    "Referrer-Policy": "same-origin",
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "SAMEORIGIN",
}


class TurnedAway(RequestHandler):
    """Answers whatever was asked with one line and nothing else."""

    def initialize(self, why: str) -> None:
        self.why = why

    def set_default_headers(self) -> None:
        self.clear_header("Server")
        for name, value in HEADERS.items():
            self.set_header(name, value)

    def prepare(self) -> None:
        self.set_status(403)
        self.set_header("Content-Type", "text/plain; charset=utf-8")
        self.finish(f"Refused: {self.why}.\n")


def stand_before(app: Application, token: str, yard: Yard | None = None, port: int = 0) -> None:
    """Put the guard before all that `app` serves, what is added later included; `token` opens the first page, `yard` and `port` let other devices in."""
    base = app.settings.get("base_url", "/")

    def why_not(request: HTTPServerRequest) -> str:
        if of_this_machine(request):
            return refusal(request, token)
        if yard is None or not yard.reaches(request.path, base):
            return "this is not for other devices"
        return refusal(request, token, yard.host(port), coming_in=hmac.compare_digest(request.path.encode(), f"{base}brimwork/{yard.code}".encode()))

    found = app.find_handler

    def find_handler(request: HTTPServerRequest, **named):
        why = why_not(request)
        return app.get_handler_delegate(request, TurnedAway, {"why": why}) if why else found(request, **named)

    app.find_handler = find_handler  # type: ignore[method-assign]  # whatever comes to be served later is asked for by this one method
    app.settings["headers"] = {**app.settings.get("headers", {}), **HEADERS}


def of_this_machine(request: HTTPServerRequest) -> bool:
    """Whether a request came over a line that does not leave this machine."""
    try:
        return ipaddress.ip_address(request.remote_ip or "").is_loopback
    except ValueError:
        return False


def refusal(request: HTTPServerRequest, token: str, name: str = "", coming_in: bool = False) -> str:
    """Why a request is refused, or "" for one that may go on to be asked for its cookie or token; `name` is the only one by which another device may ask."""
    headers = request.headers
    hosts, origins = headers.get_list("Host"), headers.get_list("Origin")
    if len(hosts) != 1 or not (hosts[0] == name if name else LOOPBACK.fullmatch(hosts[0].lower())):
        return "this server has no such name"
    if not request.uri.startswith("/") or request.uri.startswith("//"):
        return "this is no address of this server"
    host = hosts[0].lower()
    if len(origins) > 1 or any(origin.lower() != f"http://{host}" for origin in origins):
        return "that page is not of this server"
    if _link(request) and (coming_in or not name and _has(request, token)):
        return ""
    if headers.get("Sec-Fetch-Site", "none") not in ("same-origin", "none"):
        return "that page is not of this server"
    referer = headers.get("Referer")
    if referer and urlsplit(referer).netloc.lower() != host:
        return "that page is not of this server"
    return ""


def _link(request: HTTPServerRequest) -> bool:
    """Whether somebody follows a link to a page of its own."""
    a_page = request.method == "GET" and request.headers.get("Sec-Fetch-Mode", "navigate") == "navigate"
    return a_page and request.headers.get("Sec-Fetch-Dest", "document") == "document"


def _has(request: HTTPServerRequest, token: str) -> bool:
    """Whether the token is in an address."""
    given = parse_qs(urlsplit(request.uri).query).get("token", [])
    return bool(token) and len(given) == 1 and hmac.compare_digest(given[0].encode(), token.encode())
