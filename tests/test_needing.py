"""Libraries that only some parts need: without them the workbooks open and run, and the part that wants one says so in words."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from brimwork import topics
from brimwork.classroom import printed
from brimwork.drawing import plotted
from brimwork.drawing.pictures import picture
from brimwork.needing import needed
from brimwork.notebook import answer_sheet
from brimwork.notebook.opening import shipped
from brimwork.topics.box import Panel, cut_sheets
from brimwork.topics.friction import friction_factors
from brimwork.units import InputError

LIP = topics.find("flow over a level lip")
PAGE = '#set document(title: "A page")\nwords'
NOT_NEEDED = ("numpy", "scipy", "matplotlib", "typst", "rectpack", "pint", "segno", "pandas")


def _lip_figure():
    return plotted.figure(picture(LIP, {"C_d": 0.62, "b": 0.6, "H": 0.012}, "H").sheet)


PLACES = {
    "an array called": ("numpy", lambda: LIP(C_d=0.62, b=0.6, H=[0.01, 0.02])),
    "an array worked": ("numpy", lambda: LIP.array(C_d=0.62, b=0.6, H=0.02)),
    "friction of an array": ("numpy", lambda: friction_factors([1e4, 1e5])),
    "a sheet cut up": ("rectpack", lambda: cut_sheets([Panel("a side", 1.0, 0.5)], 2.44, 1.22, 0.003)),
    "a picture of dots": ("matplotlib", _lip_figure),
    "a sheet for a class": ("typst", lambda: printed.compiled(PAGE, Path("."))),
    "a mark": ("segno", lambda: printed.square("words")),
    "an answer sheet": ("typst", lambda: answer_sheet._printed(PAGE)),
}


@pytest.mark.parametrize("library, does", PLACES.values(), ids=PLACES)
def test_what_wants_a_library_that_is_not_there_says_so_in_words(monkeypatch, library, does):
    monkeypatch.setitem(sys.modules, library, None)  # as Python itself marks what cannot be imported
    with pytest.raises(InputError, match=f"needs the library {library}, which is not installed here: type pip install {library}"):
        does()


@pytest.mark.parametrize("library, does", PLACES.values(), ids=PLACES)
def test_the_same_places_do_not_speak_of_it_where_it_is_there(library, does, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    does()


def test_another_library_that_is_missing_inside_one_is_not_hidden():
    with pytest.raises(ImportError, match="no such thing"), needed("numpy", "working an array"):
        raise ImportError("no such thing", name="something_else")


BLOCKED = """
import contextlib, io, json, sys

class Blocked:
    def find_spec(self, name, path=None, target=None):
        if name.partition(".")[0] in NOT_NEEDED:
            raise ModuleNotFoundError(f"{name} is blocked", name=name)

sys.meta_path.insert(0, Blocked())
from IPython.core.interactiveshell import InteractiveShell

shell, ran = InteractiveShell.instance(), 0
for cell in json.load(open(sys.argv[1], encoding="utf-8"))["cells"]:
    if cell["cell_type"] == "code":
        with contextlib.redirect_stdout(io.StringIO()):
            shell.run_cell("".join(cell["source"])).raise_error()
        ran += 1
print(ran)
"""


@pytest.mark.parametrize("name", ["00-start", "overflow", "lining", "design"])
def test_a_workbook_opens_and_runs_with_nothing_compiled(name, tmp_path):
    """Every cell, as somebody runs it who has none of the libraries in NOT_NEEDED; JupyterLab's own stack is all that is there."""
    notebook = shipped() / f"{name}.ipynb"
    cells = sum(cell["cell_type"] == "code" for cell in json.loads(notebook.read_text(encoding="utf-8"))["cells"])
    for folder in ("designs", "classes"):
        if (shipped() / folder).is_dir():
            (tmp_path / folder).mkdir()
            for file in (shipped() / folder).iterdir():
                (tmp_path / folder / file.name).write_bytes(file.read_bytes())
    ran = subprocess.run([sys.executable, "-c", f"NOT_NEEDED = {NOT_NEEDED}\n{BLOCKED}", str(notebook)], cwd=tmp_path, capture_output=True, text=True)
    assert ran.returncode == 0, ran.stderr
    assert int(ran.stdout.splitlines()[-1]) == cells > 0
