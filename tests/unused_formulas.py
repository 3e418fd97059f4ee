"""Lists the formulas that nothing outside their own topic uses: python tests/unused_formulas.py.

A use is the formula's name in quotes, or its Python name, in a file of the kit, a workbook or a bank of questions. All of them can be looked up and
worked; those listed are waiting for a place in a workbook or in a design.
"""

import importlib
import re
import sys
from pathlib import Path

from brimwork.formula import Formula
from brimwork.topics import topics

TOP = Path(__file__).parents[1]


def unused() -> list[tuple[str, str]]:
    """(topic, name) of every formula that nothing else mentions; one that another formula of its topic starts from is used."""
    kit = {path: path.read_text() for path in (TOP / "src" / "brimwork").rglob("*.py")}
    books = [path.read_text() for path in (TOP / "workbooks").glob("*.ipynb")]
    found = []
    for topic in topics():
        module = importlib.import_module(f"brimwork.topics.{topic}")
        own = kit[Path(module.__file__)]
        others = [text for path, text in kit.items() if path != Path(module.__file__)]
        for variable, formula in vars(module).items():
            if isinstance(formula, Formula) and len(re.findall(rf"\b{variable}\b", own)) < 2:
                if not any(re.search(rf"\b{variable}\b", text) or f'"{formula.name}"' in text for text in others):
                    if not any(formula.name in text for text in books):
                        found.append((topic, formula.name))
    return found


if __name__ == "__main__":
    rows = unused()
    for topic, name in rows:
        print(f"{topic:<20} {name}")
    print(f"{len(rows)} formulas that nothing else uses")
    sys.exit(0)
