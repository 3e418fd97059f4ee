"""The topic that the guide adds from end to end can be added so, and is held to every rule at once."""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]


def additions():
    """By file: the line after which something is added (none for a new file), and what."""
    (block,) = re.findall(r"```diff\n(.*?)```", (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8"), re.DOTALL)
    for part in re.split(r"^(?=(?:src|tests)/)", block, flags=re.MULTILINE)[1:]:
        name, *lines = part.splitlines()
        yield name, "".join(f"{line[1:]}\n" for line in lines if line[0] == " "), "".join(f"{line[1:]}\n" for line in lines if line[0] == "+")


@pytest.fixture(scope="module")
def copy(tmp_path_factory):
    folder = tmp_path_factory.mktemp("copy")
    for part in ("src", "tests", "workbooks"):
        shutil.copytree(ROOT / part, folder / part, ignore=shutil.ignore_patterns("__pycache__", "browser", "published"))
    shutil.copy(ROOT / "pyproject.toml", folder)
    for name, after, added in additions():
        path = folder / name
        text = path.read_text(encoding="utf-8") if after else ""
        assert after or not path.exists(), f"{name} is there already"
        assert not after or text.count(after) == 1, f"'{after.strip()}' stands {text.count(after)} times in {name}"
        path.write_text(text.replace(after, after + added) if after else added, encoding="utf-8")
    return folder


@pytest.mark.parametrize(
    ("command", "said"),
    [
        (("brimwork", "prove", "light left at the surface"), "derived, by algebra"),
        (
            ("pytest", "-k", "light or C99 or T20 or left_out or belong", *(f"tests/test_{name}.py" for name in ("topics", "drawing", "checks", "exercise"))),
            "passed",
        ),
    ],
    ids=("proved", "tested"),
)
def test_the_topic_of_the_guide_is_whole(copy, command, said):
    environment = {**os.environ, "PYTHONPATH": str(copy / "src")}
    ran = subprocess.run([sys.executable, "-m", *command], cwd=copy, env=environment, capture_output=True, text=True)
    assert ran.returncode == 0 and said in ran.stdout, ran.stdout[-3000:] + ran.stderr[-2000:]
