"""Who may speak to a server that the kit starts: pages that it served itself, on this machine, and nobody else. It stands before every address of the server.

A browser sends its cookies along with what any page asks for, and a name of somebody else's may point to this machine; so a request must name this
machine, and come from a page of this very server. The one exception is a link with the token in it, which is how the first page is opened.
"""

from __future__ import annotations

import hmac
import re
from urllib.parse import parse_qs, urlsplit

from tornado.httputil import HTTPServerRequest
from tornado.web import Application, RequestHandler

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


def stand_before(app: Application, token: str) -> None:
    """Put the guard before all that `app` serves, what is added later included; `token` opens the first page."""
    found = app.find_handler

    def find_handler(request: HTTPServerRequest, **named):
        why = refusal(request, token)
        return app.get_handler_delegate(request, TurnedAway, {"why": why}) if why else found(request, **named)

    app.find_handler = find_handler
    app.settings["headers"] = {**app.settings.get("headers", {}), **HEADERS}


def refusal(request: HTTPServerRequest, token: str) -> str:
    """Why a request is refused, or "" for one that may go on to be asked for its cookie or token."""
    headers = request.headers
    hosts, origins = headers.get_list("Host"), headers.get_list("Origin")
    if len(hosts) != 1 or not LOOPBACK.fullmatch(hosts[0].lower()):
        return "this server has no such name"
    if not request.uri.startswith("/") or request.uri.startswith("//"):
        return "this is no address of this server"
    host = hosts[0].lower()
    if len(origins) > 1 or any(origin.lower() != f"http://{host}" for origin in origins):
        return "that page is not of this server"
    if _first_page(request, token):
        return ""
    if headers.get("Sec-Fetch-Site", "none") not in ("same-origin", "none"):
        return "that page is not of this server"
    referer = headers.get("Referer")
    if referer and urlsplit(referer).netloc.lower() != host:
        return "that page is not of this server"
    return ""


def _first_page(request: HTTPServerRequest, token: str) -> bool:
    """Whether somebody follows a link that has the token in it, to a page of its own."""
    given = parse_qs(urlsplit(request.uri).query).get("token", [])
    a_page = request.method == "GET" and request.headers.get("Sec-Fetch-Mode", "navigate") == "navigate"
    alone = request.headers.get("Sec-Fetch-Dest", "document") == "document"
    return a_page and alone and bool(token) and len(given) == 1 and hmac.compare_digest(given[0].encode(), token.encode())
