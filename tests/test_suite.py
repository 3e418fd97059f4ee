"""The suite itself: tests that share what was made once run in one process, and what takes longest begins first."""

import os
from collections import OrderedDict
from pathlib import Path

import pytest
import together

RAN = []


@pytest.mark.parametrize("turn", range(12))
def test_the_tests_of_a_file_run_in_one_process_one_after_another(turn):
    """Each in a process of its own choice, as pytest-xdist sends them unless it is told, would leave gaps here."""
    RAN.append((os.getpid(), turn))
    assert RAN == [(os.getpid(), one) for one in range(turn + 1)]


def test_groups_are_files_parts_of_files_and_several_files():
    assert together.group("tests/test_units.py::test_a[x::y]") == "tests/test_units.py"
    assert together.group("tests/test_pack.py::test_a") == together.group("tests/test_pack_pages.py::test_b")
    assert together.group("tests/test_topics.py::test_a[x]") == together.group("tests/test_cli.py::test_b") == "derivations", "proved once"
    assert together.group("tests/browser/test_lab.py::test_a") == together.group("tests/browser/test_class.py::test_a")
    assert together.group("tests/browser/test_walk.py::test_a") == together.group("tests/browser/test_access.py::test_a[x]") == "first browser"
    assert together.turn("first browser") < together.turn("tests/test_units.py")


def test_what_begins_first_is_there():
    root = Path(__file__).parents[1]
    assert all((root / name).exists() for name in (*together._FIRST, *together._TOGETHER) if "/" in name)


def test_a_test_with_which_a_process_broke_down_is_told_of_and_not_begun_again():
    scheduling, node, name = together.Scheduling.__new__(together.Scheduling), object(), "tests/test_units.py"
    before, broken, after, last = (f"{name}::test_{one}" for one in "abcd")
    scheduling.workqueue = OrderedDict()
    scheduling.assigned_work = {node: {name: {before: True, broken: False, after: False}}}
    assert scheduling.remove_node(node) == broken
    assert scheduling.workqueue == {name: {before: True, broken: True, after: False}} and scheduling.assigned_work == {}
    scheduling.workqueue = OrderedDict()
    scheduling.assigned_work = {node: {name: {before: True, last: False}}}
    assert scheduling.remove_node(node) == last and not scheduling.workqueue, "nothing of it is left"
    scheduling.assigned_work = {node: {}}
    assert scheduling.remove_node(node) is None, "it had done all"


def test_the_top_level_holds_what_the_guide_names_and_nothing_that_a_try_left_there():
    here = {path.name for path in Path(__file__).parents[1].iterdir() if not path.name.startswith(".")}
    assert here <= {"README.md", "DEVELOPERS.md", "pyproject.toml", "workbooks", "src", "tests", "figures", "build", "dist", "node_modules", "__pycache__"}
