"""Every workbook runs, and gives again what is stored in it, to the byte: words, tables and pictures of every cell."""

import re
from base64 import b64decode, b64encode
from copy import deepcopy
from itertools import zip_longest
from os.path import commonprefix

import nbformat
import pytest
from nbformat import v4
from store_outputs import FOLDER, run

WORKBOOKS = sorted(FOLDER.glob("*.ipynb"))


def plain(cell):
    """The text of a cell as it is stored, with its pictures written out."""
    text = v4.writes_json(v4.new_notebook(cells=[cell] if cell else []))
    return re.sub(r"base64,([\w+/=]+)", lambda found: b64decode(found[1]).decode(errors="replace"), text)


def differences(stored, new):
    """Each cell that gives something else than is stored: its text, and both from shortly before the first place that differs."""
    for old, now in zip_longest(stored.cells, new.cells):
        if old != now:
            was, gives = plain(old), plain(now)
            place = max(len(commonprefix((was, gives))) - 60, 0)
            yield f"{(old or now).source}\ngives now  ...{gives[place : place + 160]!r}\nstored is  ...{was[place : place + 160]!r}"


@pytest.mark.parametrize("path", WORKBOOKS, ids=lambda path: path.stem)
def test_a_workbook_gives_again_what_is_stored_in_it(path):
    stored, new = nbformat.read(path, as_version=4), run(path)
    found = list(differences(stored, new))
    store = f"if that is meant: python tests/store_outputs.py {path.stem}"
    assert not found, f"{len(found)} cells; {store}\n\n" + "\n\n".join(found)
    assert nbformat.writes(new).rstrip() == path.read_text(encoding="utf-8").rstrip(), f"not as it is stored; {store}"


def test_a_changed_number_in_a_picture_and_an_output_that_is_gone_are_seen():
    picture = b64encode(b'<circle cx="12.5"/>').decode()
    html = v4.new_output("display_data", {"text/html": f'<img src="data:image/svg+xml;base64,{picture}">'})
    stored = v4.new_notebook(cells=[v4.new_markdown_cell("Text"), v4.new_code_cell("explore()", outputs=[html])])
    assert list(differences(stored, deepcopy(stored))) == []
    moved, gone = deepcopy(stored), deepcopy(stored)
    moved.cells[1].outputs[0].data["text/html"] = html.data["text/html"].replace(picture, b64encode(b'<circle cx="12.6"/>').decode())
    gone.cells[1].outputs = []
    for new, told in ((moved, 'cx="12.6'), (gone, '"outputs": []')):
        (said,) = differences(stored, new)
        assert said.startswith("explore()") and told in said
