"""A small sample of the campaigns under tests/campaigns, and planted faults, so that we know they are found."""

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent / "campaigns"))

import faults  # noqa: E402
import fuzz  # noqa: E402


@pytest.fixture(autouse=True)
def as_it_was(monkeypatch):
    """What the campaigns set aside in a module is put back."""
    for name in ("_run_until_stopped", "lay_out"):
        monkeypatch.setattr(fuzz.opening, name, getattr(fuzz.opening, name))
    monkeypatch.setattr(fuzz.intake.Reader, "ask", fuzz.intake.Reader.ask)
    monkeypatch.setattr(faults.files, "STALE", faults.files.STALE)
    monkeypatch.setenv("JUPYTER_DATA_DIR", "")


@pytest.mark.parametrize(("only", "share"), [("arguments", 0.002), ("designs", 0.004), ("answers", 0.01), ("notebooks", 0.005)])
def test_no_random_or_damaged_input_is_too_much(only, share):
    found = fuzz.run(share, seed=7, only=only)
    assert found.done and not found.cases


def test_a_planted_fault_of_each_kind_is_found(tmp_path, monkeypatch):
    found = fuzz.Found()
    monkeypatch.setattr(fuzz.cli, "main", lambda given: 1)
    fuzz.argument_lists(found, 3, 1, tmp_path)
    monkeypatch.setattr(fuzz, "parse_design", lambda text: 1 / 0)
    fuzz.designs(found, 3, 1, tmp_path)
    monkeypatch.setattr(fuzz.answers, "load_answers", lambda path: path.unlink())
    fuzz.answers_files(found, 3, 1, tmp_path)
    monkeypatch.setattr(fuzz.reopened, "_signed", lambda notary, state: True)
    fuzz.notebooks(found, 3, 1, tmp_path)
    assert {"exit code", "traceback", "lost", "injection"} <= set(found.count)
    assert fuzz.foreign("<p onclick='x'>") and fuzz.foreign("<img src=x>") and not fuzz.foreign("<p style='x'><span>$</span></p>")
    assert fuzz.loose(f'#"in quotes {fuzz.MARK}" {fuzz.MARK}') and not fuzz.loose(f'#"in \\" quotes {fuzz.MARK}"')


def test_nothing_is_lost_whatever_befalls():
    done, lost = faults.run(0.01, seed=3)
    assert done.total() >= 20 and not lost


def test_a_planted_loss_is_found(monkeypatch):
    monkeypatch.setattr(faults.keeping.Keeping, "keep", lambda self, *_: setattr(self, "path", faults.Path("nowhere")))
    monkeypatch.setitem(faults.ACTS, "save", faults.changes)
    done, lost = faults.run(0.05, seed=3, only="clock")
    assert lost
