"""Where metric or US was chosen, a workbook shows nothing of the other system: no text, no output, no box, no list. Only what is about converting names both."""

import json
import re
import shutil
from base64 import b64decode
from pathlib import Path

import pytest
from IPython.core.interactiveshell import InteractiveShell
from IPython.utils.capture import capture_output
from ipywidgets.widgets import widget as every

from brimwork import system, units
from brimwork.exercise import answers, bank
from brimwork.notebook import contents
from brimwork.notebook.settings import take_settings

WORKBOOKS = Path(__file__).parents[1] / "workbooks"
CONVERTING = ("T02.1", "T02.2", "T02.6", "T14.1")  # held in tests/test_units_of_a_class.py
ABOUT_BOTH = "change between gallons, litres and cubic feet without a slip"  # an outcome
_WORDS = ("value", "description", "placeholder", "tooltip", "name")


def cells(name):
    for cell in json.loads((WORKBOOKS / f"{name}.ipynb").read_text(encoding="utf-8"))["cells"]:
        yield "".join(cell["source"]), cell["cell_type"] == "code"


def shown(shell, source):
    """All words that a cell shows: its outputs, with the words of their pictures, and those of its boxes, lists and buttons."""
    every.Widget.close_all()
    with capture_output() as captured:
        result = shell.run_cell(source).result
    texts = list(shell.display_formatter.format(result)[0].values()) if result is not None else []
    texts += [value for output in captured.outputs for value in output.data.values()]
    for one in every._instances.values():
        texts += [getattr(one, word, "") for word in _WORDS]
        texts += [option[0] if isinstance(option, tuple) else option for option in getattr(one, "options", None) or ()]
    return [plain(text) for text in texts if isinstance(text, str)]


def plain(text):
    """Words without their markup, a picture by what is written in it."""
    text = re.sub(r"base64,([\w+/=]+)", lambda found: " ".join(re.findall(r">([^<]+)<", b64decode(found[1]).decode(errors="replace"))), text)
    return " ".join(re.sub(r"<[^>]+>", " ", text).split())


def converting():
    return [plain(question.pose(seed).text)[:60] for code, question in bank.questions().items() if code in CONVERTING for seed in (1,)]


@pytest.mark.parametrize("wanted", system.SYSTEMS)
@pytest.mark.parametrize("name", (*contents.COURSE, "00-start", "terms"))
def test_a_workbook_shows_nothing_of_the_other_system(name, wanted, tmp_path, monkeypatch):
    for part in ("designs", "briefs"):
        shutil.copytree(WORKBOOKS / part, tmp_path / part)
    (tmp_path / system.SETTINGS).write_bytes(system.settings(wanted))
    monkeypatch.chdir(tmp_path)
    for call in contents.calls(name):
        if call.name == "predict":  # so that the picture is there
            answers.note("answers.json", call.words[0], "1", "prediction")
    take_settings(tmp_path)
    shell, found = InteractiveShell.instance(), []
    for source, runs in cells(name):
        if not runs:
            found += [(source[:40], source)] if system.foreign(source, wanted) else []
            continue
        for text in shown(shell, source) if not EXEMPT.search(source) else ():
            if system.foreign(text.replace(ABOUT_BOTH, ""), wanted) and not any(code in text for code in CONVERTING):
                near = system._WORDS[system.other(wanted)].search(text)
                found.append((source[:40], text[max(near.start() - 60, 0) : near.end() + 30]))
    assert not found, "\n".join(f"{where}: {text}" for where, text in found)


# Cells about converting: their questions stand in both systems, and so does the choice of units itself.
EXEMPT = re.compile(rf"^recall\(\"T02\.1\"|^my_units|^glossary|^more_questions\([^)]*({'|'.join(map(re.escape, CONVERTING))})|^exit_check\([^)]*T14\.1")


def test_what_metric_and_us_readers_are_told_in_one_place_is_the_same():
    """Both values of a pair, where they are quantities, lie within a tenth of each other."""
    pairs = [
        pair
        for name in contents.COURSE
        for call in contents.calls(name)
        if call.name == "said_here"
        for pair in re.findall(r"\{([^|}]+) \| ([^|}]+)\}", call.words[0])
    ]
    assert len(pairs) > 5
    compared = 0
    for metric, us in pairs:
        if re.fullmatch(r"[\d./]+ \S+", metric) and re.fullmatch(r"[\d./ ]+ \S+", us):
            assert units.parse(metric).value == pytest.approx(units.parse(us).value, rel=0.1), (metric, us)
            compared += 1
    assert compared >= 5
