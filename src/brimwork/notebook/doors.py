"""The start page and the pages without code: their addresses on the server of `brimwork open`, behind the same token and the same guard.

Files are given by name from a list made beforehand, never by a path that somebody asks for; prints only from the folder of the workbooks.
"""

from __future__ import annotations

import asyncio
import atexit
import io
import re
from contextlib import suppress
from functools import cache
from pathlib import Path
from string import Template
from typing import cast
from urllib.parse import quote

import anywidget
from jupyter_server.auth import User
from jupyter_server.base.handlers import JupyterHandler
from jupyter_server.base.websocket import WebSocketMixin
from tornado.web import Application, HTTPError, authenticated
from tornado.websocket import WebSocketHandler

from brimwork import files
from brimwork.notebook import books
from brimwork.notebook.alive import LivePage, LivePages
from brimwork.notebook.as_page import as_html
from brimwork.notebook.books import Book
from brimwork.notebook.contents import COURSE
from brimwork.notebook.guard import of_this_machine
from brimwork.notebook.yard import WARNING, Yard
from brimwork.shown import Markup, attribute, escape

ROOT = "brimwork"
_HERE = Path(__file__).with_name("page")
_KINDS = {".js": "text/javascript", ".css": "text/css", ".woff2": "font/woff2", ".svg": "image/svg+xml"}
GONE = 1001  # how a browser closes the line of a page that is closed
LARGEST_PRINT, MOST_PRINTS = 100_000_000, 8  # bytes; shown on the start page
_NAME = r"([\w-]{1,60})"
_FOR_CODE = re.compile(r"[^\n]*\bRun (All|the cell|its cell)\b[^\n]*\n?")  # what to press where there is code; a page runs by itself
# Only what this server gives, so that nothing on a page can ask for anything elsewhere. The script of an anywidget comes over the line, and is run from a blob.
_ALLOWED = (
    "default-src 'none'; script-src 'self' blob:; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self' {line}; "
    "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)


class Door(JupyterHandler):
    """What all our pages have in common."""

    @property
    def content_security_policy(self) -> str:
        return _ALLOWED.format(line=f"ws://{self.request.host}")

    def check_host(self) -> bool:
        return True  # the guard has judged it, more strictly

    @property
    def yard(self) -> Yard | None:
        return self.settings["brimwork_yard"]

    @property
    def rooms(self) -> LivePages:
        return self.settings["brimwork_rooms"]

    @property
    def home(self) -> str:
        return f"{self.settings['base_url']}{ROOT}/"

    async def prepare(self, *, _redirect_to_login: bool = True) -> None:
        await super().prepare()
        if self._finished:
            return
        came_in = of_this_machine(self.request) or self.yard and self.current_user and self.current_user.username == f"yard {self.yard.code}"
        if self.current_user is None or not came_in:  # a device that came in by the code of another day
            raise HTTPError(403)
        if self.request.method == "GET" and "token" in self.request.arguments and not isinstance(self, Talk):
            self.redirect(self.request.path)  # the cookie is set: no token stays in the address

    def write_error(self, status_code: int, **_) -> None:
        """One line; the pages on which Jupyter tells errors carry the token."""
        self.set_header("Content-Type", "text/plain; charset=utf-8")
        self.finish(f"{status_code}: {'there is no such page' if status_code == 404 else 'refused'}.\n")

    def give(self, html: Markup) -> None:
        self.set_header("Content-Type", "text/html; charset=utf-8")
        self.set_header("Cache-Control", "no-store")
        self.finish(html)


class Start(Door):
    """Three ways on."""

    @authenticated
    async def get(self) -> None:
        here = of_this_machine(self.request)
        address = self.yard.url(self.settings["brimwork_port"], self.settings["base_url"]) if self.yard and here else ""
        self.give(start_page(self.home, self.settings["base_url"], self.rooms.folder, here, address))


class Entrance(Door):
    """Where another device comes in, by the code in its address."""

    async def prepare(self, *, _redirect_to_login: bool = True) -> None:
        if not (self.yard and self.yard.opens(self.path_args[0])):
            raise HTTPError(404)

    async def get(self, code: str) -> None:
        self.identity_provider.set_login_cookie(self, User(username=f"yard {code}"))
        self.redirect(self.home)

    setattr(get, "__allow_unauthenticated", True)  # for Jupyter, which asks every address for a token else: the code is the token here


class Bare(Door):
    """The address without the stroke at its end."""

    @authenticated
    async def get(self) -> None:
        self.redirect(self.home)


class Nowhere(Door):
    """Whatever else is asked for under our address."""

    @authenticated
    async def get(self) -> None:
        raise HTTPError(404)


class Opened(Door):
    """A workbook as a page without code."""

    @authenticated
    async def get(self, name: str) -> None:
        book = books.without_code().get(name)
        if book is None or self.request.headers.get("Sec-Purpose", "").startswith("prefetch"):
            raise HTTPError(404)
        room = await self.rooms.enter(book, self.get_query_argument("was", ""))
        self.give(book_page(book, room, self.home, of_this_machine(self.request)) if room else full_page(self.home))


class Linked(Door):
    """Where a link from one workbook to another leads, as it stands in both: to its page, or to JupyterLab where it has none."""

    @authenticated
    async def get(self, name: str) -> None:
        self.redirect(f"{self.home}page/{name}" if name in books.without_code() else f"{self.settings['base_url']}lab/tree/{name}.ipynb")


class Static(Door):
    """The files that pages are made of."""

    @authenticated
    async def get(self, name: str) -> None:
        file = given_files().get(name)
        if file is None:
            raise HTTPError(404)
        self.set_header("Content-Type", _KINDS[file.suffix])
        self.set_header("Cache-Control", "no-cache")
        self.finish(file.read_bytes())


class Print(Door):
    """A PDF that lies in the folder of the workbooks, to open or keep."""

    @authenticated
    async def get(self, name: str) -> None:
        try:
            content = files.read_bounded(print_in(self.rooms.folder, name), LARGEST_PRINT)
        except (OSError, ValueError):
            raise HTTPError(404) from None
        if not content.startswith(b"%PDF-"):
            raise HTTPError(404)
        self.set_header("Content-Type", "application/pdf")
        self.set_header("Content-Disposition", f"inline; filename*=UTF-8''{quote(Path(name).name)}")
        self.set_header("Cache-Control", "no-store")
        self.finish(content)


class Own(Door):
    """Whether the code of a workbook, named by its digest, is that of this installation: JupyterLab then brings it to life by itself."""

    @authenticated
    async def get(self, digest: str) -> None:
        self.finish({"ours": books.ours(digest)})


class Talk(WebSocketMixin, WebSocketHandler, Door):
    """The line between a page and its room."""

    room: LivePage | None = None

    async def prepare(self, *, _redirect_to_login: bool = True) -> None:
        await Door.prepare(self)

    def open(self, name: str) -> None:
        self.set_nodelay(True)
        self.room = self.rooms.open.get(name)
        seen = self.get_query_argument("seen", "0")
        if self.room is None or not seen.isdecimal() or len(seen) > 12 or not self.room.take_line(self, int(seen)):
            self.room = None
            self.close(4404, "no such page")

    def on_message(self, message: str | bytes) -> None:
        if self.room and (isinstance(message, bytes) or not self.room.hear(message)):
            self.close(4400, "no message of a page")

    def on_close(self) -> None:
        if self.room:
            self.room.leaving |= self.close_code == GONE
            self.room.lose_line(self)


def print_in(folder: Path, name: str) -> Path:
    """Where a PDF of that name lies in the folder; raises ValueError for a name that leads out of it, or to what is hidden."""
    wanted = folder / name
    inside = Path(name)
    if wanted.suffix.lower() != ".pdf" or inside.is_absolute() or any(part.startswith(".") for part in inside.parts):
        raise ValueError(name)
    if not wanted.resolve(strict=False).is_relative_to(folder.resolve()):
        raise ValueError(name)
    return wanted


@cache
def given_files() -> dict[str, Path]:
    """The files that pages may ask for, by name."""
    own = [*(_HERE / "built").iterdir(), *_HERE.glob("*.css"), *_HERE.glob("*.svg")]
    carrier = Path(anywidget.__file__).with_name("nbextension") / "index.js"
    return {"anywidget.js": carrier, **{file.name: file for file in own if file.suffix in _KINDS}}


# --- the pages as HTML --------------------------------------------------------------------------------------------------------------


def _filled(template: str, **parts: Markup) -> Markup:
    return cast(Markup, Template((_HERE / template).read_text(encoding="utf-8")).substitute(parts))


def start_page(home: str, base: str, folder: Path, here: bool = True, yard: str = "") -> Markup:
    """The three ways on, with a link for each workbook, and what was printed last; `home` is the address of our pages, `base` that of the server. On this
    machine (`here`) stands also where the files lie, the way to the code, and the address for other devices."""
    return _filled(
        "start.html",
        home=attribute(home),
        foot=_to_the_code(base, bool(yard), folder) if here else Markup(""),
        printed=_printed(folder, home),
        yard=_yard(yard) if yard else Markup(""),
        lessons=Markup("".join(f"<li>{_link(book, home)}</li>" for book in _lessons())),
    )


def _lessons() -> list[Book]:
    """The workbooks to learn from: the course in its order, then what is besides."""
    named = books.without_code()
    other = [name for name in named if name not in (*COURSE, *books.BUILD, *books.TEACH, books.COURSE_MAP)]
    return [named[name] for name in (*COURSE, *other) if name in named]


def _printed(folder: Path, home: str) -> Markup:
    """Links to what was printed last."""
    names = prints_of(folder)
    links = "".join(f"<li><a href='{attribute(home)}print/{attribute(quote(name))}'>{escape(name)}</a></li>" for name in names)
    return Markup(f"<section class='prints' aria-labelledby='prints'><h2 id='prints'>Printed</h2><ul>{links}</ul></section>") if names else Markup("")


def prints_of(folder: Path) -> list[str]:
    """The PDFs of a folder and of the folders in it, the newest first, as many as a page shows."""
    found = []
    for path in (*folder.glob("*.pdf"), *folder.glob("[!.]*/*.pdf")):
        with suppress(OSError, ValueError):
            name = path.relative_to(folder).as_posix()
            found.append((print_in(folder, name).stat().st_mtime, name))
    return [name for _, name in sorted(found, reverse=True)[:MOST_PRINTS]]


def _to_the_code(base: str, let_in: bool, folder: Path) -> Markup:
    lab = attribute(f"{base}lab/tree/")
    return Markup(
        f"<p class='fine'>Rather see the code? The same workbooks <a href='{lab}00-start.ipynb'>in JupyterLab</a>, and one "
        f"<a href='{lab}python.ipynb'>for those who program</a>. Your files lie in <code>{escape(folder)}</code>. Nothing leaves this machine{', but for the devices that you let in' if let_in else ''}.</p>"
    )


def _yard(address: str) -> Markup:
    return Markup(
        "<section class='yard' aria-labelledby='yard'><h2 id='yard'>On a phone in the yard</h2>"
        f"<div class='mark'>{_mark(address)}</div><p>Take a picture of the mark, or type this address:<br><strong>{escape(address)}</strong></p>"
        f"<p><strong>Take care.</strong> {escape(WARNING)}</p></section>"
    )


def _mark(address: str) -> Markup:
    """The address as a mark that a phone reads, as SVG; nothing where what draws it is not installed."""
    try:
        import segno
    except ImportError:
        return Markup("")
    drawn = io.BytesIO()
    segno.make(address, error="m").save(drawn, kind="svg", scale=4, border=3, dark="black", light="white", xmldecl=False)
    return cast(Markup, drawn.getvalue().decode())


def _link(book: Book, home: str) -> Markup:
    return Markup(f"<a href='{attribute(home)}page/{attribute(book.name)}'>{escape(book.title)}</a>")


def book_page(book: Book, room: LivePage, home: str, here: bool = True) -> Markup:
    """The words of a workbook, with a place for what each of its code cells shows; and the way to the next lesson, and on this machine (`here`) to the code."""
    parts: list[Markup] = [
        Markup(f"<div class='jp-OutputArea jp-RenderedHTMLCommon' data-cell='{number:d}' aria-busy='true'></div>")
        if cell.runs
        else Markup(f"<section class='words'>{as_html(_FOR_CODE.sub('', cell.source))}</section>")
        for number, cell in enumerate(book.cells)
    ]
    return _filled(
        "book.html",
        home=attribute(home),
        name=attribute(book.name),
        title=escape(book.title),
        room=attribute(room.name),
        body=Markup("".join(parts)),
        after=_after(book, home, here),
    )


def _after(book: Book, home: str, here: bool) -> Markup:
    lessons = _lessons()
    following = lessons[lessons.index(book) + 1 :] if book in lessons else []
    onward = Markup(f"<p>Next: {_link(following[0], home)}</p>") if following else Markup("")
    code = Markup(f"<p class='fine'><a href='../../lab/tree/{attribute(book.name)}.ipynb'>See this page with its code, in JupyterLab</a></p>")
    return Markup(f"{onward}{code if here else ''}")


def full_page(home: str) -> Markup:
    """What is said when no more pages can be open at once."""
    return _filled("full.html", home=attribute(home))


# --- putting it up ------------------------------------------------------------------------------------------------------------------


def put_doors_on(server, yard: Yard | None = None) -> None:
    """Have a Jupyter server give our pages, and keep a kernel warm for them as soon as it runs."""
    app: Application = server.web_app
    rooms = LivePages(Path(server.contents_manager.root_dir), shared=yard is not None)
    app.settings |= {"brimwork_rooms": rooms, "brimwork_yard": yard, "brimwork_port": server.port}
    base = re.escape(app.settings["base_url"]) + ROOT
    app.add_handlers(".*$", [
        (base, Bare), (f"{base}/", Start), (f"{base}/([a-z0-9]{{5}}-[a-z0-9]{{5}})", Entrance), (rf"{base}/page/{_NAME}\.ipynb", Linked), (f"{base}/page/{_NAME}", Opened), (f"{base}/line/([0-9a-f]{{24}})", Talk),
        (rf"{base}/static/([\w.-]{{1,80}})", Static), (f"{base}/print/(.{{1,400}})", Print), (f"{base}/own/([0-9a-f]{{64}})", Own),
        (f"{base}/.*", Nowhere),
    ])  # fmt: skip
    server.io_loop.add_callback(lambda: asyncio.ensure_future(rooms.watch()))
    atexit.register(_end, rooms)


def _end(rooms: LivePages) -> None:
    with suppress(Exception):  # kernels end with the process that started them, too
        asyncio.new_event_loop().run_until_complete(rooms.end())
