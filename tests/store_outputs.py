"""Run workbooks and store their outputs, the same bytes each time, without times or machine details: python tests/store_outputs.py [NAME ...] (default: all)."""

import shutil
import sys
import tempfile
from pathlib import Path

import nbformat
from jupyter_client.manager import AsyncKernelManager
from nbclient import NotebookClient

from brimwork.notebook import sockets
from brimwork.notebook.copied import put_copies_on

FOLDER = Path(__file__).parents[1] / "workbooks"
WIDGET = "application/vnd.jupyter.widget-view+json"
OPEN = ("python",)  # workbooks whose cells are their reader's to change
METADATA = {"kernelspec": {"display_name": "Python 3", "language": "python", "name": "python3"}, "language_info": {"name": "python"}}


def run(path: Path) -> nbformat.NotebookNode:
    """The workbook as it is to be stored: run where nobody has answered or designed anything yet."""
    book = nbformat.read(path, as_version=4)
    with tempfile.TemporaryDirectory() as folder:
        for part in ("designs", "briefs"):
            shutil.copytree(
                path.parent / part,
                Path(folder, part),
                ignore=lambda _, names: [name for name in names if not name.endswith(".toml") or name.startswith(".")],
            )
        client = NotebookClient(book, timeout=120, record_timing=False, shutdown_kernel="immediate", resources={"metadata": {"path": folder}})
        client.km = AsyncKernelManager(kernel_name="python3", **sockets.for_a_kernel())
        put_copies_on(client.km)
        client.execute()
    book.metadata = nbformat.from_dict(METADATA)
    _number_widgets(book)
    _lock(book, path.stem)
    return book


def _lock(book: nbformat.NotebookNode, name: str) -> None:
    """Cells of a workbook cannot be deleted, nor its text changed by a key; but for the one of those who write Python."""
    for cell in book.cells if name not in OPEN else ():
        cell.metadata["deletable"] = False
        if cell.cell_type == "markdown":
            cell.metadata["editable"] = False


def _number_widgets(book: nbformat.NotebookNode) -> None:
    """Widgets live in the kernel that is gone: their random names become numbers."""
    outputs = (output for cell in book.cells if cell.cell_type == "code" for output in cell.outputs)
    views = (output.data[WIDGET] for output in outputs if WIDGET in output.get("data", {}))
    for number, view in enumerate(views, start=1):
        view["model_id"] = f"{number:032x}"


if __name__ == "__main__":
    for name in sys.argv[1:] or sorted(path.stem for path in FOLDER.glob("*.ipynb")):
        path = FOLDER / f"{Path(name).stem}.ipynb"
        nbformat.write(run(path), path)
        print(name)
