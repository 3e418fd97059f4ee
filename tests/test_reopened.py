"""Somebody else's workbook is a document: its saved widget state never reaches a page, and no save loses it."""

import asyncio
import copy
from types import SimpleNamespace

import nbformat
import pytest

from brimwork.notebook import reopened
from brimwork.notebook.reopened import STATE, WIDGET

jupyter = pytest.importorskip("jupyter_server")


def book(script: str = "export default { render() { window.taken = 1 } }") -> dict:
    state = {"version_major": 2, "version_minor": 0, "state": {"a" * 32: {"model_name": "AnyModel", "model_module": "anywidget", "state": {"_esm": script}}}}
    shown = nbformat.v4.new_output("display_data", {"text/plain": "a box", WIDGET: {"model_id": "a" * 32, "version_major": 2, "version_minor": 0}})
    cell = nbformat.v4.new_code_cell("1", outputs=[shown], id="one")
    return nbformat.v4.new_notebook(cells=[cell, nbformat.v4.new_markdown_cell("words", id="two")], metadata={"widgets": {STATE: state}})


@pytest.fixture
def server(tmp_path, monkeypatch):
    """A real contents manager over a folder, with our extension."""
    monkeypatch.setenv("JUPYTER_DATA_DIR", str(tmp_path / ".data"))
    from jupyter_server.services.contents.largefilemanager import AsyncLargeFileManager

    sessions = []

    async def listed():
        return [{"path": path} for path in sessions]

    contents = AsyncLargeFileManager(root_dir=str(tmp_path))
    app = SimpleNamespace(contents_manager=contents, session_manager=SimpleNamespace(list_sessions=listed))
    reopened.put_reopened_on(app)
    return SimpleNamespace(contents=contents, sessions=sessions, folder=tmp_path, run=asyncio.run)


def on_disk(server, name: str) -> dict:
    return nbformat.read(server.folder / name, as_version=4)


def opened(server, name: str) -> dict:
    return server.run(server.contents.get(name))["content"]


def saved(server, name: str, content: dict) -> None:
    server.run(server.contents.save({"type": "notebook", "format": "json", "content": copy.deepcopy(content)}, name))


@pytest.mark.parametrize("running", [False, True], ids=["at rest", "with a kernel"])
def test_state_of_a_stranger_never_reaches_the_page_and_is_still_in_the_file_after_a_save(server, running):
    nbformat.write(book(), server.folder / "theirs.ipynb")
    server.sessions += ["theirs.ipynb"] * running
    for _ in range(3):  # saving does not turn it into our own
        shown = opened(server, "theirs.ipynb")
        assert "widgets" not in shown["metadata"] and "window.taken" not in str(shown)
        shown["cells"][1]["source"] = "my remark"
        saved(server, "theirs.ipynb", shown)
        kept = on_disk(server, "theirs.ipynb")
        assert kept["cells"][1]["source"] == "my remark"
        assert kept["metadata"]["widgets"] == book()["metadata"]["widgets"] and kept["cells"][0]["outputs"] == book()["cells"][0]["outputs"]


def test_what_was_saved_here_from_a_running_kernel_is_shown_again(server):
    nbformat.write(nbformat.v4.new_notebook(), server.folder / "mine.ipynb")
    server.sessions.append("mine.ipynb")
    saved(server, "mine.ipynb", book("mine"))
    assert opened(server, "mine.ipynb")["metadata"]["widgets"] == book("mine")["metadata"]["widgets"]
    changed = on_disk(server, "mine.ipynb")
    changed["metadata"]["widgets"][STATE]["state"]["a" * 32]["state"]["_esm"] = "another"
    nbformat.write(changed, server.folder / "mine.ipynb")
    assert "widgets" not in opened(server, "mine.ipynb")["metadata"], "changed elsewhere since"


def test_state_that_arrives_without_a_kernel_or_beside_a_strangers_is_not_ours(server):
    saved(server, "sent.ipynb", book())
    assert "widgets" not in opened(server, "sent.ipynb")["metadata"]
    nbformat.write(book(), server.folder / "theirs.ipynb")
    server.sessions.append("theirs.ipynb")
    run = opened(server, "theirs.ipynb")
    run["metadata"]["widgets"] = {STATE: {"version_major": 2, "version_minor": 0, "state": {"b" * 32: {"model_name": "IntSliderModel", "state": {}}}}}
    saved(server, "theirs.ipynb", run)
    assert on_disk(server, "theirs.ipynb")["metadata"]["widgets"][STATE]["state"].keys() == {"a" * 32, "b" * 32}, "neither is lost"
    assert "widgets" not in opened(server, "theirs.ipynb")["metadata"]


def test_a_copy_is_whole(server):
    nbformat.write(book(), server.folder / "theirs.ipynb")
    server.run(server.contents.copy("theirs.ipynb"))
    assert on_disk(server, "theirs-Copy1.ipynb")["metadata"]["widgets"] == book()["metadata"]["widgets"]
    assert "widgets" not in opened(server, "theirs-Copy1.ipynb")["metadata"]


@pytest.mark.parametrize("widgets", [[], "words", 3, {STATE: []}, {STATE: {"state": 3}}, {"other": {}}], ids=str)
def test_state_of_a_strange_shape_is_dropped_too_and_kept_in_the_file(server, widgets):
    made = book()
    made["metadata"]["widgets"] = widgets
    nbformat.write(made, server.folder / "odd.ipynb")
    shown = opened(server, "odd.ipynb")
    assert "widgets" not in shown["metadata"]
    saved(server, "odd.ipynb", shown)
    assert on_disk(server, "odd.ipynb")["metadata"]["widgets"] == widgets


def test_our_own_workbooks_store_no_state():
    from brimwork.notebook.opening import shipped

    for path in shipped().glob("*.ipynb"):
        assert "widgets" not in nbformat.read(path, as_version=4)["metadata"], path.name
