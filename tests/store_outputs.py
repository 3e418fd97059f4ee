"""Run workbooks and store their outputs, without times or machine details: python tests/store_outputs.py [NAME ...] (default: all)."""

import sys
from pathlib import Path

import nbformat
from nbclient import NotebookClient

FOLDER = Path(__file__).parents[1] / "workbooks"
METADATA = {"kernelspec": {"display_name": "Python 3", "language": "python", "name": "python3"}, "language_info": {"name": "python"}}


def store(path: Path) -> None:
    book = nbformat.read(path, as_version=4)
    NotebookClient(book, timeout=120, record_timing=False, resources={"metadata": {"path": str(FOLDER)}}).execute()
    book.metadata = nbformat.from_dict(METADATA)
    nbformat.write(book, path)


if __name__ == "__main__":
    for name in sys.argv[1:] or sorted(path.stem for path in FOLDER.glob("*.ipynb")):
        store(FOLDER / f"{Path(name).stem}.ipynb")
        print(name)
