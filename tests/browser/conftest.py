"""One JupyterLab and one headless Chromium for this folder; every test finds the folder of workbooks as new. Without Chromium these tests are left out, and say so.

Fixtures end with this folder, not with the run: Playwright keeps an event loop running in its process, and the tests that follow there start their own.
"""

import faulthandler
import os
import sys
from pathlib import Path

import pytest
from _pytest.faulthandler import fault_handler_stderr_fd_key

sys.path.insert(0, str(Path(__file__).parent))

import lab  # noqa: E402
from playwright.sync_api import Error, sync_playwright  # noqa: E402

STILL = 600  # s
_WELL = pytest.StashKey[bool]()  # of a test: what was reported of it so far is good


@pytest.fixture(autouse=True)
def never_for_ever(request):
    """What a page never answers ends the process, which says where it stood. Only here: a test that forks would wait in its copy for who looks at the time."""
    faulthandler.dump_traceback_later(STILL, exit=True, file=request.config.stash[fault_handler_stderr_fd_key])
    yield
    faulthandler.cancel_dump_traceback_later()


@pytest.fixture(scope="package")
def browser():
    if not lab.chromium():
        if os.environ.get("CI"):
            pytest.fail("Chromium is missing: install Debian's package chromium-headless-shell, or chromium", pytrace=False)
        pytest.skip("no Chromium on this machine: install it, or name it in BRIMWORK_CHROMIUM")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=lab.chromium(), args=lab.FLAGS)
        yield browser
        browser.close()


@pytest.fixture(scope="package")
def context(browser):
    """Pages share what the browser has fetched once."""
    context = browser.new_context(viewport=lab.VIEW, extra_http_headers=lab.AUTHORIZED)
    yield context
    context.close()


@pytest.fixture(scope="package")
def served(browser, tmp_path_factory):
    """Folder and address of the JupyterLab."""
    folder = tmp_path_factory.mktemp("workbooks")
    with lab.server(folder) as address:
        yield folder, address


@pytest.fixture
def address(served):
    folder, address = served
    lab.lay_out_afresh(folder)
    return address


@pytest.fixture(scope="package")
def pages(context):
    """The page that the test before has left, with JupyterLab loaded in it: loading takes longer than most tests."""
    return []


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item, call):
    report = yield
    item.stash[_WELL] = item.stash.get(_WELL, True) and not report.failed
    return report


@pytest.fixture
def page(request, context, pages):
    page = pages.pop() if pages else context.new_page()
    page.bring_to_front()  # what lies behind another page is painted once a second, and every wait in it takes that long
    page.set_default_timeout(180_000)
    page.set_viewport_size(lab.VIEW)
    yield page
    try:
        if request.node.stash[_WELL]:
            lab.tidy(page)
            pages.append(page)
            return
    except Error:  # the test has left JupyterLab, or it broke down
        pass
    page.close()


@pytest.fixture
def plain(context, address):
    """A page of its own, narrow enough to scroll, that keeps what it asked for; `start` is where pages without code begin."""
    page = context.new_page()
    page.set_default_timeout(180_000)
    page.set_viewport_size({"width": 1300, "height": 900})
    page.start, page.asked = address.removesuffix("lab") + "brimwork/", []
    page.on("request", lambda request: page.asked.append(request.url))
    yield page
    page.close()
