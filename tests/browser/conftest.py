"""One JupyterLab for the tests of a file, and pages of a headless Chromium; without Chromium these tests are left out, and say so."""

import os
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))

import lab  # noqa: E402
from playwright.sync_api import sync_playwright  # noqa: E402


@pytest.fixture(scope="module")
def browser():
    if not lab.chromium():
        if os.environ.get("CI"):
            pytest.fail("Chromium is missing: install Debian's package chromium", pytrace=False)
        pytest.skip("no Chromium on this machine: install it, or name it in BRIMWORK_CHROMIUM")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=lab.chromium(), args=lab.FLAGS)
        yield browser
        browser.close()


@pytest.fixture(scope="module")
def address(browser, tmp_path_factory):
    with lab.server(tmp_path_factory.mktemp("workbooks")) as address:
        yield address


@pytest.fixture
def page(browser):
    page = browser.new_page(viewport={"width": 1300, "height": 5000})
    page.set_default_timeout(60_000)
    yield page
    page.close()
