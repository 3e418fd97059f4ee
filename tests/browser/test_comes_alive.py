"""In JupyterLab: our own workbooks come to life when they are opened, and nobody else's; a restarted kernel says so, with one button."""

import json

import lab

PLUGINS = "() => ['notification', 'announcements'].map(name => window.jupyterapp.isPluginActivated(`@jupyterlab/apputils-extension:${name}`))"
BOOK = "() => window.jupyterapp.shell.currentWidget.node.dataset.brimwork"


def test_an_unchanged_workbook_of_ours_is_alive_at_its_top_and_a_changed_one_waits(page, address, served):
    lab.open_workbook(page, address, "volume.ipynb", run=False)
    assert page.evaluate(BOOK) == "ours"
    assert page.evaluate(PLUGINS) == [True, False], "nobody is asked for Jupyter's news"
    page.locator(".jp-NotebookPanel .widget-radio-box input, .jp-NotebookPanel .widget-text input").first.wait_for()
    page.wait_for_function("() => [...document.querySelectorAll('.jp-WindowedPanel-outer')].every(one => one.scrollTop === 0)")
    taken = served[0] / "taken"
    book = json.loads((served[0] / "reservoir.ipynb").read_text())
    code = next(cell for cell in book["cells"] if cell["cell_type"] == "code")
    code["source"] = ["".join(code["source"]), f"\nopen({str(taken)!r}, 'w').close()"]
    (served[0] / "reservoir.ipynb").write_text(json.dumps(book))
    lab.open_workbook(page, address, "reservoir.ipynb", run=False)
    page.wait_for_timeout(500)
    assert page.evaluate(BOOK) == "theirs" and not taken.exists()


def test_a_restarted_kernel_says_so_and_one_button_brings_the_page_back(page, address):
    lab.open_workbook(page, address, "quick-check.ipynb")
    page.evaluate("() => window.jupyterapp.shell.currentWidget.sessionContext.session.kernel.restart()")
    page.get_by_role("button", name="Bring the page to life again").click()
    page.get_by_role("button", name="Begin: A bowl or pot that overflows").wait_for()
