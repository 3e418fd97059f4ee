"""A procedure of a topic is there to be called: by the design, so that what it refuses reaches a finding, or by what is named here with its reason."""

import ast
import re
from pathlib import Path

import pytest

TOP = Path(__file__).parents[1] / "src" / "brimwork"
ELSEWHERE = {
    "edge_pressure": ("drawing/pictures/loads.py", "the picture of an offset load; the design works the same formulas in both directions at once"),
    "rise_and_fall": ("notebook/surveying.py", "a level sheet is booked on site, after the design"),
    "friction_factors": ("", "whole arrays, for those who program: the design works one flow at a time by friction_factor, and the two are held together"),
}


def procedures() -> list[tuple[Path, str]]:
    found = []
    for path in sorted((TOP / "topics").glob("*.py")):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.FunctionDef) and not node.name.startswith("_") and path.name != "__init__.py":
                found.append((path, node.name))
    return found


def callers(path: Path, name: str) -> set[str]:
    """Files that name it, the rest of its own among them where a function there does."""
    texts = {other: other.read_text(encoding="utf-8") for other in TOP.rglob("*.py")}
    own = len(re.findall(rf"\b{name}\b", texts.pop(path))) > 1
    return {other.relative_to(TOP).as_posix() for other, text in texts.items() if re.search(rf"\b{name}\b", text)} | ({"its own topic"} if own else set())


@pytest.mark.parametrize("path, name", procedures(), ids=lambda value: value if isinstance(value, str) else value.stem)
def test_every_procedure_of_a_topic_is_called_by_the_design_or_has_its_reason(path, name):
    found = callers(path, name)
    if name in ELSEWHERE:
        where, why = ELSEWHERE[name]
        assert len(why) > 20 and (not where or where in found) and not any(caller.startswith("design/") for caller in found), name
        return
    assert any(caller.startswith("design/") or caller == "its own topic" for caller in found), (
        f"{name} is called by nothing of the design: call it, or delete it"
    )


def test_nothing_is_listed_that_is_not_there():
    assert {*ELSEWHERE} <= {name for _, name in procedures()}
