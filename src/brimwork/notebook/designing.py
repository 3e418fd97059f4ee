"""Opens the page of a design: the one that was open last, one by its file, or the way to a first one; whole, or with what is asked first."""

from __future__ import annotations

from pathlib import Path

from IPython.display import display

from brimwork.notebook.design_page import DesignPage
from brimwork.notebook.opened import OpenDesign, look_at
from brimwork.notebook.pages import say
from brimwork.notebook.shelf import EXAMPLES, last_open
from brimwork.units import InputError

_shown: list[DesignPage] = []  # the page of this kernel: a cell that is run again goes on with what it has open


def design(path: str = "", kind: str = "") -> DesignPage | None:
    """Open the page of a design: boxes, drawing, findings that follow every change. Returns what is open, for `buying` and `compare`.

    Without a `path` it is the design that was open last, or the way to a first one. With a `kind` ("overflowing vessel", "drilled stones", "blade",
    "cascade") and a file that is not there yet, a blank design of that kind.
    """
    return _open(path, kind, full=True)


def quick_check(path: str = "") -> None:
    """The same page with what is asked first: twelve to seventeen questions, everything else a usual value."""
    _open(path, "", full=False)


def _open(path: str, kind: str, full: bool) -> DesignPage | None:
    try:
        opened = _chosen(path, kind)
    except InputError as error:
        display(say(error))
        return None
    page = DesignPage(opened, full)
    for before in _shown:
        before.opened = None
        before.close()
    _shown[:] = [page]
    display(page)
    return page


def _chosen(path: str, kind: str) -> OpenDesign | None:
    """The design to open; None where the reader has still to choose. Raises InputError."""
    here = _shown[0].opened if _shown else None
    if here is not None and path in ("", here.mine):
        return here
    if path:
        file = Path(path)
        return look_at(file.stem, file.parent) if file.stem in EXAMPLES and file.parent.name == "designs" else OpenDesign(file, kind)
    last = last_open()
    return OpenDesign(last) if last else None
