"""The workbooks that came with this installation, as pages are made of them: their words and the cells that run.

A page runs these and nothing else. What lies in a folder under the same name, from whomever, is never run by opening a page.
"""

from __future__ import annotations

import hashlib
import json
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from brimwork.units import InputError

WITH_CODE = {"python"}  # about code, and opened in JupyterLab only
BUILD, TEACH, COURSE_MAP = ("design", "quick-check"), ("teach",), "00-start"


@dataclass(frozen=True)
class Cell:
    """One cell: Markdown, or code that makes what is shown in its place."""

    source: str
    runs: bool


@dataclass(frozen=True)
class Book:
    """One workbook."""

    name: str
    title: str
    cells: tuple[Cell, ...]

    @property
    def digest(self) -> str:
        """Tells whether a workbook would run the same code: one that does is ours, whatever its words, outputs and answers are."""
        return digest([cell.source for cell in self.cells if cell.runs])


def digest(sources: list[str]) -> str:
    """One name for the code of a workbook, cell by cell."""
    return hashlib.sha256(json.dumps([source.strip() for source in sources], ensure_ascii=True, separators=(",", ":")).encode()).hexdigest()


def shipped() -> Path:
    """The folder of workbooks that came with this installation."""
    package = Path(__file__).parents[1]
    for folder in (package / "workbooks", package.parents[1] / "workbooks"):
        if folder.is_dir():
            return folder
    raise InputError("this installation carries no workbooks: install Brimwork again")


@cache
def books() -> dict[str, Book]:
    """All workbooks by name."""
    return {path.stem: _book(path.stem, json.loads(path.read_text(encoding="utf-8"))["cells"]) for path in sorted(shipped().glob("*.ipynb"))}


def _book(name: str, cells: list[dict]) -> Book:
    made = tuple(Cell("".join(cell["source"]), cell["cell_type"] == "code") for cell in cells if cell["cell_type"] in ("code", "markdown"))
    title = next((line[2:].strip() for cell in made if not cell.runs for line in cell.source.splitlines() if line.startswith("# ")), name)
    return Book(name, title, made)


def without_code() -> dict[str, Book]:
    """The workbooks that can be opened as pages without code."""
    return {name: book for name, book in books().items() if name not in WITH_CODE}


def ours(code: str) -> bool:
    """Whether a digest of code cells is that of a workbook of this installation."""
    return any(book.digest == code for book in books().values())
