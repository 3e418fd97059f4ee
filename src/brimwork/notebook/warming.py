"""What a kernel of a page does before anybody needs it, so that the page is alive as soon as it opens: it loads what workbooks call, and works one design
through. Where other devices are let in, it also sees to it that nothing is written outside the folder of the workbooks, whatever is typed into a box."""

from __future__ import annotations

import errno
import os
import sys
import tempfile
from functools import cache

from brimwork.notebook import sockets

WITHIN = "BRIMWORK_WITHIN"  # in the environment: the only folder that is written to
_WRITING = {
    "open": (0,),
    "os.rename": (0, 1),
    "os.link": (1,),
    "os.symlink": (1,),
    "os.remove": (0,),
    "os.mkdir": (0,),
    "os.rmdir": (0,),
    "os.truncate": (0,),
    "os.chmod": (0,),
}
_WRITES = os.O_WRONLY | os.O_RDWR | os.O_CREAT | os.O_TRUNC | os.O_APPEND


def stay_within(folder: str, *besides: str) -> None:
    """From now on this process writes in the folder only, in the files `besides`, and where programs keep what lasts no longer than they do; anything else raises OSError."""
    allowed = tuple(os.path.normcase(os.path.realpath(place)) + os.sep for place in (folder, tempfile.gettempdir(), *besides))

    def judge(event: str, given: tuple) -> None:
        if event not in _WRITING or event == "open" and not (isinstance(given[2], int) and given[2] & _WRITES):
            return
        for at in _WRITING[event]:
            path = given[at]
            if isinstance(path, (str, bytes, os.PathLike)) and not (os.path.normcase(os.path.realpath(os.fsdecode(path))) + os.sep).startswith(
                (*allowed, os.devnull)
            ):
                raise OSError(errno.EACCES, "other devices are let in, so nothing is written outside the folder of the workbooks")

    sys.addaudithook(judge)


def warm() -> None:
    """Load all that workbooks call, where that was not done, and write within the folder only where that is wanted."""
    if folder := os.environ.get(WITHIN):
        from ipykernel.connect import get_connection_file

        stay_within(folder, *sockets.files_of(get_connection_file()))
    load()


@cache
def load() -> None:
    """Load all that workbooks call, work, judge and draw an invented design once, and follow a derivation; nothing is shown, written or read of any folder of workbooks."""
    from brimwork import notebook
    from brimwork.design.follows.features import chain_of
    from brimwork.design.typed.file import load_design
    from brimwork.notebook.books import shipped

    notebook.load_all()
    from brimwork.notebook.pages import derive
    from brimwork.notebook.results import drawings_shown, findings_shown, found_in

    chain = chain_of(load_design(shipped() / "designs" / "library-bowl.toml"))
    findings_shown(chain, found_in(chain))
    drawings_shown(chain)
    derive("flow over a broad crest")  # with a system of equations and an optimum, for which SymPy loads half of itself only then
