"""A machine that lacks something: no home folder, no such user, folders closed to writing. A plain line each, exit 2, and nothing is changed."""

import ctypes
import os
import pwd
import subprocess
import sys
from pathlib import Path

import pytest

from brimwork import cli
from brimwork.notebook import opening

DESIGN = opening.shipped() / "designs" / "library-bowl.toml"


@pytest.fixture
def unknown(monkeypatch):
    """A user that the machine does not know, without a home folder."""

    def nobody(_):
        raise KeyError("no such user")

    monkeypatch.delenv("HOME", raising=False)
    monkeypatch.setattr(pwd, "getpwuid", nobody)
    monkeypatch.setattr(pwd, "getpwnam", nobody)
    with pytest.raises(RuntimeError):
        Path.home()


def test_who_has_no_home_folder_works_all_the_same(unknown, capsys):
    assert cli.main(["work", "time of fall", "h_fall=0.3 m"]) == 0 and "0.247" in capsys.readouterr().out  # sqrt(0.6/9.80665)


def test_a_user_who_does_not_exist_is_told(unknown, capsys):
    assert cli.main(["open", "~nobody-here/mine", "--no-browser"]) == 2
    assert "there is no user of the name in ~nobody-here" in capsys.readouterr().err


def test_a_home_folder_that_cannot_be_made_is_told(tmp_path, monkeypatch, capsys):
    (tmp_path / "file").write_text("x")
    monkeypatch.setenv("HOME", str(tmp_path / "file"))
    assert cli.main(["open", "--no-browser"]) == 2 and "type 'brimwork open' with a folder of your own" in capsys.readouterr().err


# --- folders closed to writing --------------------------------------------------------------------------------------------------------


def _without_privilege() -> None:
    """Root may write everywhere; without these two privileges it may not."""
    for privilege in (1, 2):  # CAP_DAC_OVERRIDE, CAP_DAC_READ_SEARCH
        ctypes.CDLL(None).prctl(24, privilege)


@pytest.fixture
def closed(tmp_path):
    folder = tmp_path / "closed"
    folder.mkdir()
    (folder / "bowl.toml").write_bytes(DESIGN.read_bytes())
    folder.chmod(0o555)
    yield folder
    folder.chmod(0o755)


@pytest.mark.skipif(sys.platform != "linux", reason="privileges as on Linux")
@pytest.mark.parametrize(
    "line",
    [
        ["pack", "{closed}/bowl.toml"], ["pack", "{closed}/bowl.toml", "--to", "{closed}/new/bowl.pdf"], ["handout", "--begin", "{closed}/week.toml"],
        ["bank", "T04.1", "--to", "{closed}/questions"], ["course", "--to", "{closed}/course"], ["open", "{closed}", "--no-browser"],
        ["open", "{closed}/mine", "--no-browser"],
    ],
    ids=lambda line: " ".join(line),
)  # fmt: skip
def test_a_folder_closed_to_writing_is_told_and_left_as_it_is(closed, line):
    given = [part.replace("{closed}", str(closed)) for part in line]
    preexec = _without_privilege if os.geteuid() == 0 else None
    done = subprocess.run([sys.executable, "-m", "brimwork", *given], capture_output=True, text=True, timeout=120, preexec_fn=preexec)
    assert done.returncode == 2 and "cannot be written" in done.stderr, done.stderr
    assert len(done.stderr.strip().splitlines()) == 1 and "Traceback" not in done.stderr and "should not" not in done.stderr
    assert [path.name for path in closed.iterdir()] == ["bowl.toml"] and (closed / "bowl.toml").read_bytes() == DESIGN.read_bytes()
