"""Files of strangers in real JupyterLab: nothing in them runs. Beside each case stands the same file where nothing is done about it, so that we know the case is real."""

import json

import anywidget
import lab
import nbformat
import pytest
from ipywidgets.embed import dependency_state

from brimwork.notebook import opening
from brimwork.notebook.reopened import STATE, WIDGET

IMAGE = "<img src=x onerror='window.taken=1'>"
TITLE = "Bowl | <b>bold</b> & $x^2$ &lt; \\(y\\)"
TAKEN = "() => window.taken === 1"


@pytest.fixture
def folder(served):
    return served[0]


def notebook(folder, name: str, *cells: str, **metadata) -> None:
    made = nbformat.v4.new_notebook(cells=[nbformat.v4.new_code_cell(cell) for cell in cells], metadata=metadata)
    made.metadata["kernelspec"] = {"name": "python3", "display_name": "Python 3", "language": "python"}
    nbformat.write(made, folder / name)


def test_text_of_a_design_file_is_never_markup(page, address, folder):
    bowl = (opening.shipped() / "designs" / "library-bowl.toml").read_text(encoding="utf-8")
    (folder / "designs" / "titled.toml").write_text(bowl.replace('"Library bowl"', json.dumps(TITLE)), encoding="utf-8")
    evil = {
        "kind": bowl.replace('kind = "overflowing vessel"', f'kind = "{IMAGE}"'),
        "region": bowl.replace('region = "UK"', f'region = "{IMAGE}"'),
        "section": f'{bowl}\n["{IMAGE}"]\nx = 1\n',
        "key": bowl.replace("[pump]", f'[pump]\n"{IMAGE}" = 1'),
        "choice": bowl.replace('check_valve = "no"', f'check_valve = "{IMAGE}"'),
        "quantity": bowl.replace('"780 mm"', f'"{IMAGE}"'),
        "title": bowl.replace('"Library bowl"', f'"{IMAGE}"'),
        "note": bowl.replace('title = "Library bowl"', f'title = "Library bowl"\nnote = "{IMAGE}"'),
    }
    calls = []
    for name, text in evil.items():
        assert text != bowl
        (folder / "designs" / f"{name}.toml").write_text(text, encoding="utf-8")
        calls += [
            f'design("designs/{name}.toml")',
            f'quick_check("designs/{name}.toml")',
            f'compare("designs/{name}.toml", "designs/titled.toml")',
            f'buying("designs/{name}.toml")',
        ]
    calls += [
        f"work({IMAGE!r})",
        f"practise({IMAGE!r})",
        f"level_sheet({IMAGE!r}, a='1 m')",
        f"explore({IMAGE!r})",
        f"on_site({IMAGE!r})",
        f"design({IMAGE!r})",
    ]
    start = "from brimwork.notebook import *\nfrom brimwork.notebook import buying, compare, design, explore, level_sheet, on_site, practise, quick_check, work"
    notebook(folder, "shown.ipynb", start, *calls)
    lab.open_workbook(page, address, "shown.ipynb")
    page.wait_for_timeout(1500)
    shown = page.locator(".jp-NotebookPanel")
    assert "Please change something" in shown.inner_text() and IMAGE in shown.inner_text(), "it is told, as words"
    assert page.locator("img[src=x]").count() == 0 and not page.evaluate(TAKEN)
    assert shown.locator("th", has_text="Bowl").first.inner_text() == TITLE, "as it is, no formula either"
    assert "Traceback" not in shown.inner_text()
    control = f"**Please change something:** {IMAGE}"
    notebook(folder, "control.ipynb", f"from IPython.display import Markdown\nMarkdown({control!r})")
    lab.open_workbook(page, address, "control.ipynb")
    page.wait_for_function(TAKEN)


def test_a_workbook_of_a_stranger_runs_nothing_when_it_is_opened(page, address, folder, tmp_path_factory):
    class Taking(anywidget.AnyWidget):
        _esm = "window.taken = 1; export default { render() { window.taken = 1 } }"

    widget = Taking()
    kept = {"version_major": 2, "version_minor": 0, "state": dependency_state([widget], drop_defaults=False)}
    cell = nbformat.v4.new_code_cell("1", execution_count=1)
    cell.outputs = [nbformat.v4.new_output("display_data", {WIDGET: {"model_id": widget.model_id, "version_major": 2, "version_minor": 0}})]
    kernel = {"name": "python3", "display_name": "Python 3", "language": "python"}
    handed = nbformat.v4.new_notebook(cells=[cell], metadata={"widgets": {STATE: kept}, "kernelspec": kernel})
    nbformat.write(handed, folder / "handed-in.ipynb")
    page.evaluate("() => { delete window.taken }")  # the page is the one that the test before has left
    lab.open_workbook(page, address, "handed-in.ipynb", run=False)
    page.wait_for_timeout(6000)
    assert not page.evaluate(TAKEN)
    lab.save(page)
    assert nbformat.read(folder / "handed-in.ipynb", as_version=4).metadata.widgets == handed.metadata.widgets, "the file still has what its author saved"
    other = tmp_path_factory.mktemp("unpatched")
    nbformat.write(handed, other / "handed-in.ipynb")
    with lab.server(other, ours=False) as unpatched:
        lab.open_workbook(page, unpatched, "handed-in.ipynb", run=False)
        page.wait_for_function(TAKEN, timeout=30_000)
