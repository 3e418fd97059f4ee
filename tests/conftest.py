"""The whole suite runs on every core: what belongs together stays in one process, and what takes longest begins first."""

import datetime
import gc
import importlib
import os
import sys
import tempfile
from functools import cache
from pathlib import Path

import hypothesis
import pytest
import together
from _pytest.runner import runtestprotocol

from brimwork import system, topics
from brimwork.expression import DeclarationError
from brimwork.nomenclature import wrong_row
from brimwork.notebook import swift

TESTS = Path(__file__).parent
SOON = 0.05  # s
PRINTED_ON = datetime.date(2027, 2, 20)


@pytest.fixture(scope="session")
def printed(tmp_path_factory):
    """The pack of a design in a region, printed once for all tests of a process: printed("library-bowl", "UK") is its path."""
    from brimwork.design.typed.file import load_design
    from brimwork.pack.document import write_pack

    folder = tmp_path_factory.mktemp("packs")

    @cache
    def pack(name: str, region: str) -> Path:
        path = folder / f"{name}-{region}.pdf"
        write_pack(load_design(TESTS.parent / "workbooks" / "designs" / f"{name}.toml").headed("region", region), path, PRINTED_ON)
        return path

    return pack


@pytest.fixture(scope="session")
def read(printed):
    """The text of each page of such a pack, white space made single, read once, for reading takes longer than printing: read("library-bowl", "UK")."""
    import pypdf

    return cache(lambda name, region: [" ".join(page.extract_text().split()) for page in pypdf.PdfReader(printed(name, region)).pages])


@pytest.fixture
def short():
    """A folder of a path that leaves room for sockets, as those of a test in a process of many do not."""
    with tempfile.TemporaryDirectory(prefix="bw-") as folder:
        yield Path(folder)


@pytest.fixture(autouse=True)
def nobody_has_chosen_units():
    """A class, a learner or a test that chooses a system chooses it for the process: the next test begins where nobody has."""
    yield
    system.use_none()


@pytest.fixture(autouse=True)
def no_lesson_is_open():
    """A workbook that a test runs opens a lesson in the process: the next test begins without."""
    yield
    if opened := sys.modules.get("brimwork.notebook.progress"):
        opened.closed()


def pytest_configure() -> None:
    """A wrong declaration is one line, not a traceback from every file that imports it."""
    gc.set_threshold(20_000, 20, 20)  # twenty thousand tests stay to the end: looking through them for rubbish again and again takes a tenth of the time
    hypothesis.settings.register_profile("patient", deadline=None)  # a machine that is busy is no fault of what is tested
    hypothesis.settings.load_profile("patient")
    swift.leave_out_grammars()  # nbformat, which many files import, takes a second longer with them
    try:
        topics.formulas()
        if wrong := wrong_row():
            raise DeclarationError(wrong)
        importlib.import_module("brimwork.design.judged.checks")
    except DeclarationError as error:
        raise pytest.UsageError(error.told) from None
    except Exception:  # whatever else is wrong, the tests that need it say where
        return


def pytest_sessionfinish() -> None:
    """What is left of twenty thousand tests ends with the process: pytest looks through all of it five times otherwise."""
    gc.freeze()


def pytest_xdist_auto_num_workers(config: pytest.Config) -> int:
    """One more than there are cores, for tests in a browser wait half of their time; tests that somebody names run in this process, where they can be looked into."""
    return (os.cpu_count() or 1) + 1 if config.args_source is config.ArgsSource.TESTPATHS else 0


def pytest_xdist_make_scheduler(config: pytest.Config, log):
    return together.Scheduling(config, log)


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_protocol(item: pytest.Item, nextitem: pytest.Item | None) -> bool | None:
    """Of twenty thousand tests the process that counts them hears once each: what went well before and after a test, in no time, is not sent to it."""
    if not hasattr(item.config, "workerinput"):
        return None
    for report in runtestprotocol(item, log=False, nextitem=nextitem):
        if report.when == "call" or not report.passed or report.duration > SOON:
            item.ihook.pytest_runtest_logreport(report=report)
    return True


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    items.sort(key=lambda item: together.turn(together.group(item.nodeid)))
