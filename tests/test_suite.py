"""The suite itself: tests that share what was made once run in one process, and what takes longest begins first."""

import os
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
    assert together.group("tests/test_stored_outputs.py::test_a[lining]") != together.group("tests/test_stored_outputs.py::test_a[pipes]")
    assert together.group("tests/browser/test_lab.py::test_a") == together.group("tests/browser/test_class.py::test_a")
    assert together.group("tests/browser/test_walk.py::test_a") == together.group("tests/browser/test_access.py::test_a[x]") == "first browser"
    assert together.turn("first browser") < together.turn("tests/test_units.py")


def test_what_begins_first_is_there():
    root = Path(__file__).parents[1]
    assert all((root / name).exists() for name in (*together._FIRST, *together._TOGETHER, *together._APART) if "/" in name)
