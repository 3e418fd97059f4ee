"""What the topic workbooks call, section by section, read from the workbooks themselves: which questions are asked where, and which formulas are taught."""

from __future__ import annotations

import ast
import json
import re
from functools import cache
from typing import NamedTuple

from brimwork.notebook.books import shipped

# The topic workbooks in the order of the course; each asks about those before it.
ORDER = ("volume", "reservoir", "overflow", "pipes", "loads", "water-balance", "siting", "lining", "ground", "supply", "cost", "variants", "commissioning")
COURSE = (*ORDER, "capstone")
ASKING = range(7, 11)  # sections that ask for what was taught before
_CODE = re.compile(r"T\d\d\.\d+")
MORE = 99  # the number of what stands after the last section


class Call(NamedTuple):
    """A call of a workbook: the number of its section, the name of the call, its words in order, and those by name."""

    section: int
    name: str
    words: tuple[str, ...]
    named: dict[str, object]


@cache
def calls(workbook: str) -> tuple[Call, ...]:
    """All calls of a workbook, from its first cell to its last."""
    found, section = [], 0
    for cell in json.loads((shipped() / f"{workbook}.ipynb").read_text(encoding="utf-8"))["cells"]:
        source = "".join(cell["source"])
        if cell["cell_type"] == "markdown":
            heading = re.match(r"## (?:(\d+) )?", source)
            section = int(heading[1] or MORE) if heading else section
            continue
        for node in ast.parse(source).body:
            match node:
                case ast.Expr(value=ast.Call(func=ast.Name(id=name), args=words, keywords=named)):
                    given = {one.arg: ast.literal_eval(one.value) for one in named if one.arg}
                    found.append(Call(section, name, tuple(map(ast.literal_eval, words)), given))
    return tuple(found)


@cache
def title(workbook: str) -> str:
    """The heading of a workbook."""
    first = json.loads((shipped() / f"{workbook}.ipynb").read_text(encoding="utf-8"))["cells"][0]
    return "".join(first["source"]).partition("\n")[0].lstrip("# ")


def prose(workbook: str) -> str:
    """All that a workbook says in words of its own, cell after cell."""
    cells = json.loads((shipped() / f"{workbook}.ipynb").read_text(encoding="utf-8"))["cells"]
    sources = ("".join(cell["source"]) for cell in cells if cell["cell_type"] == "markdown")
    return "\n".join([*sources, *(call.words[0] for call in calls(workbook) if call.name == "said_here")])


def asked_in(workbook: str) -> tuple[str, ...]:
    """Codes of all questions that a workbook asks, but for those that it recalls."""
    words = (word for call in calls(workbook) if call.name not in ("recall", "look_back", "outcomes") for word in call.words)
    return tuple(dict.fromkeys(word for word in words if _CODE.fullmatch(word)))


def recalling(codes: tuple[str, ...]) -> str:
    """The lesson that begins with these questions, or ""."""
    return next((name for name in COURSE for call in calls(name) if call.name == "recall" and call.words == codes), "")


def asked_after_teaching(workbook: str) -> tuple[str, ...]:
    """Codes of questions, and names of formulas, that the sections after the teaching ask about."""
    names = []
    for call in calls(workbook):
        if call.section in ASKING and call.name in ("practise", "your_numbers", "find_slip"):
            names.append(call.words[0])
        elif call.name == "exit_check":
            names += call.words[1:]
    return tuple(dict.fromkeys(names))


def earlier(workbook: str) -> tuple[str, ...]:
    """The workbooks before this one, the nearest first."""
    return ORDER[: ORDER.index(workbook)][::-1]
