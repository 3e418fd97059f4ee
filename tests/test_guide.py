"""The topic that the guide adds from end to end can be added so, and is held to every rule at once."""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
GUIDE = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
# Tests that hold all of a kind to a rule whatever their names are: counts, spans, places in workbooks, what is stored.
HOLDING = "says_in_words_what or one_outcome or counted_by_code or one_span or of_the_bank_is_asked or stored_in_it or without_a_bound or unit_of_its_region or cross_check"


def additions():
    """By file: the line after which something is added (none for a new file), and what."""
    (block,) = re.findall(r"```diff\n(.*?)```", GUIDE, re.DOTALL)
    for part in re.split(r"^(?=(?:src|tests|workbooks)/)", block, flags=re.MULTILINE)[1:]:
        name, *lines = part.splitlines()
        yield name, "".join(f"{line[1:]}\n" for line in lines if line[0] == " "), "".join(f"{line[1:]}\n" for line in lines if line[0] == "+")


def ran(copy, *command):
    environment = {**os.environ, "PYTHONPATH": str(copy / "src")}
    return subprocess.run([sys.executable, *command], cwd=copy, env=environment, capture_output=True, text=True)


@pytest.fixture(scope="module")
def copy(tmp_path_factory):
    folder = tmp_path_factory.mktemp("copy")
    for part in ("src", "tests", "workbooks"):
        shutil.copytree(ROOT / part, folder / part, ignore=shutil.ignore_patterns("__pycache__", "browser", "published"))
    for name in ("pyproject.toml", "README.md", "DEVELOPERS.md"):
        shutil.copy(ROOT / name, folder)
    for name, after, added in additions():
        path = folder / name
        text = path.read_text(encoding="utf-8") if after else ""
        assert after or not path.exists(), f"{name} is there already"
        assert not after or text.count(after) == 1, f"'{after.strip()}' stands {text.count(after)} times in {name}"
        path.write_text(text.replace(after, after + added) if after else added, encoding="utf-8")
    stored = ran(folder, *_named("python tests/store_outputs.py"))
    assert not stored.returncode, stored.stderr
    return folder


def _named(begins: str) -> list[str]:
    """The command of the guide that begins so, without Python."""
    (line,) = {found for found in re.findall(r"`([^`\n]+)`", GUIDE.partition("```diff")[2]) if found.startswith(begins) and "00-start" in found}
    return line.split()[1:]


@pytest.mark.parametrize(
    ("command", "said"),
    [
        (("-m", "brimwork", "prove", "light left at the surface"), "derived, by algebra"),
        (("-m", "pytest", "-k", f"light or C83 or T10.24 or {HOLDING}"), "passed"),
    ],
    ids=("proved", "tested"),
)
def test_the_topic_of_the_guide_is_whole(copy, command, said):
    done = ran(copy, *command)
    assert done.returncode == 0 and said in done.stdout, done.stdout[-3000:] + done.stderr[-2000:]
