"""The types hold over the whole source, and reach whoever imports Brimwork: mypy, with the settings of pyproject.toml."""

import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

pytest.importorskip("mypy")
ROOT = Path(__file__).parents[1]

# What somebody writes who imports Brimwork; a line with a comment is wrong, and must be found.
SOMEBODY = """
import brimwork

lip = brimwork.find("flow over a level lip")
head: float = lip(b="600 mm", H=0.012, C_d=0.62)
wrong: int = lip.name  # assignment
brimwork.find(3)  # arg-type
bowl = brimwork.Feature.load("bowl.toml").having("vessel.rim_diameter", "900 mm")
grades: list[str] = [finding.grade for finding in bowl.findings]
bowl.resluts  # attr-defined
value = bowl.result("duty_flow").value
print(value * 2)  # operator
print(brimwork.read("25 mm", "m") + 1.0, brimwork.steps_of(lip)[0].relation.upper())
"""


def test_types_hold_and_what_is_planted_is_found(tmp_path):
    somebody = tmp_path / "somebody.py"
    somebody.write_text(SOMEBODY)
    command = [
        sys.executable,
        "-m",
        "mypy",
        "--config-file",
        str(ROOT / "pyproject.toml"),
        "--cache-dir",
        str(tmp_path / "cache"),
        "src/brimwork",
        str(somebody),
    ]
    told = subprocess.run(command, cwd=ROOT, capture_output=True, text=True).stdout.splitlines()
    planted = {(place, line.rpartition("# ")[2]) for place, line in enumerate(SOMEBODY.splitlines(), start=1) if "# " in line}
    found = [re.match(r".*somebody\.py:(\d+): error: .*\[([a-z-]+)\]$", line) for line in told]
    assert {(int(one[1]), one[2]) for one in found if one} == planted
    assert not [line for line in told if " error: " in line and "somebody.py" not in line]


def test_no_file_is_let_off():
    """Only libraries that carry no types of their own are, and a line that means it says so on the spot."""
    for rule in tomllib.loads((ROOT / "pyproject.toml").read_text())["tool"]["mypy"]["overrides"]:
        assert not [name for name in rule["module"] if name.startswith("brimwork") or name == "*"]
