"""Workbooks are readable without a kernel, short, and free of code that belongs elsewhere; what they give is compared in `test_stored_outputs`."""

import ast
import json
import re
import statistics
from pathlib import Path

import pytest
from reading_grade import grade
from store_outputs import OPEN

from brimwork.exercise import bank
from brimwork.notebook import contents

FOLDER = Path(__file__).parents[1] / "workbooks"
WORKBOOKS = sorted(FOLDER.glob("*.ipynb"))
SECTIONED = ("commissioning", "cost", "ground", "lining", "loads", "overflow", "pipes", "reservoir", "siting", "supply", "variants", "volume",
             "water-balance")  # fmt: skip
PICTURES = ("explore", "start_and_stop", "follow_days")
SECTIONS = (("recall",), ("predict",), ("explore", "puzzle"), ("look_back", "explain"), ("derive", "ledger"), ("fade",), ("find_slip",), ("your_numbers",), ("on_site",),
            ("exit_check",))  # fmt: skip


@pytest.fixture(params=WORKBOOKS, ids=lambda path: path.stem)
def cells(request):
    return json.loads(request.param.read_text(encoding="utf-8"))["cells"]


def source(cell):
    return "".join(cell["source"])


def code(cells):
    return [cell for cell in cells if cell["cell_type"] == "code"]


def test_every_cell_that_shows_something_has_its_result_stored(cells):
    shows = [cell for cell in code(cells) if not re.match(r"from \S+ import .*\Z", source(cell))]
    assert shows
    for cell in shows:
        assert cell["execution_count"] and cell["outputs"], source(cell)
        assert not any(output["output_type"] in ("error", "stream") for output in cell["outputs"]), source(cell)
        assert "Please change something" not in json.dumps(cell["outputs"]), source(cell)


def test_every_picture_is_stored_with_description_caption_and_numbers(cells):
    for cell in code(cells):
        if source(cell).partition("(")[0] in PICTURES and "after=" not in source(cell):  # that one waits for a prediction
            html = "".join("".join(output["data"].get("text/html", "")) for output in cell["outputs"] if "data" in output)
            for part in ("<figure", 'alt="', "<figcaption", "<table>"):
                assert part in html, source(cell)


def test_every_stored_picture_is_an_image_with_its_description_which_an_untrusted_notebook_shows(cells):
    """JupyterLab strips SVG from what it does not trust, and leaves images that carry their data."""
    html = "".join("".join(output.get("data", {}).get("text/html", "")) for cell in code(cells) for output in cell["outputs"])
    for figure in html.split("<figure")[1:]:
        drawn = figure.partition("<figcaption")[0]
        assert re.search(r'<img src="data:image/svg\+xml;base64,[^"]+" alt="[^"]{30,}"', drawn) and "<svg" not in drawn
        assert len(drawn) < 100_000


def test_cells_are_short_and_leave_code_to_the_package(cells):
    for cell in code(cells):
        text = source(cell)
        assert len(text.splitlines()) <= 5, text
        kinds = {type(node) for node in ast.walk(ast.parse(text))}
        assert not kinds & {ast.FunctionDef, ast.Lambda, ast.For, ast.While, ast.comprehension, ast.BinOp}, text
        assert "plt." not in text


def test_text_is_short_and_holds_no_formula(cells):
    text = " ".join(source(cell) for cell in cells if cell["cell_type"] == "markdown" or source(cell).startswith("said_here("))
    text = re.sub(r"\{([^|}]+) \| [^}]+\}", r"\1", text)  # one of two systems is read
    assert len(text.split()) <= 1000, f"{len(text.split())} words are {len(text.split()) - 1000} too many to read: shorten the text around the calls"
    assert not re.search(r"\$|\\frac|\\sqrt", text)


@pytest.mark.parametrize("path", [path for path in WORKBOOKS if path.stem in SECTIONED], ids=lambda path: path.stem)
def test_a_topic_workbook_has_its_sections_in_order_each_with_what_belongs_to_it(path):
    """A section is a heading with a number; what belongs to it are the calls that follow."""
    found, number = {}, 0
    for cell in json.loads(path.read_text(encoding="utf-8"))["cells"]:
        heading = re.match(r"## (?:(\d+) )?", source(cell)) if cell["cell_type"] == "markdown" else None
        number = int(heading[1] or 99) if heading else number
        if cell["cell_type"] == "code" and not source(cell).startswith("from "):
            call = source(cell).partition("(")[0]
            found.setdefault(number, []).append("explore" if call in PICTURES else call)
    assert found.pop(0) == ["so_far"]
    assert list(found)[:10] == list(range(1, 11))
    for number, wanted in enumerate(SECTIONS, start=1):
        assert set(wanted) <= {*found[number]}, f"section {number} lacks {wanted}"
    assert found[3] == ["explore", "puzzle"], "one picture to explore, and a box for its puzzle"
    text = path.read_text(encoding="utf-8")
    assert all(word in text for word in ("**Aim:**", "**Time:**", "**You need:**", "*Caution:", "**Puzzle:**", "goes wrong on the ground"))


@pytest.mark.parametrize("path", [path for path in WORKBOOKS if path.stem in contents.COURSE], ids=lambda path: path.stem)
def test_the_text_of_a_lesson_reads_easily_and_asks_something_soon(path):
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    grades = [grade(source(cell)) for cell in cells if cell["cell_type"] == "markdown"]
    assert statistics.median(grades) <= 8 and max(grades) <= 10
    first = next(place for place, cell in enumerate(cells) if source(cell).startswith(("recall(", "practise(")))
    assert first < 6 and len(" ".join(source(cell) for cell in cells[:first]).split()) <= 250


def test_headings_go_down_one_level_at_a_time_and_begin_with_the_only_one_of_the_first(cells):
    levels = [len(marks) for cell in cells if cell["cell_type"] == "markdown" for marks in re.findall(r"^(#+) ", source(cell), re.MULTILINE)]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(after <= before + 1 for before, after in zip(levels, levels[1:]))


def _order():
    """The topic workbooks in the order of the course."""
    return [name for name in contents.ORDER if name in SECTIONED]


def _text(name):
    return "\n".join(source(cell) for cell in json.loads((FOLDER / f"{name}.ipynb").read_text(encoding="utf-8"))["cells"])


def test_the_first_page_and_the_list_of_workbooks_name_the_topics_in_one_order():
    named = re.findall(r"^\| `(\S+)` \|", (FOLDER.parent / "README.md").read_text(encoding="utf-8"), re.MULTILINE)
    assert {*_order()} == {*SECTIONED} and len(_order()) == len(SECTIONED)
    assert [name for name in named if name in contents.COURSE] == [*contents.COURSE]
    start = (FOLDER / "00-start.ipynb").read_text(encoding="utf-8")
    mapped = re.findall(r"\]\((\S+?)\.ipynb\) \|", start)
    assert mapped == [*contents.COURSE]


def test_what_is_recalled_was_asked_about_in_a_workbook_that_comes_before():
    """The first workbook recalls what it needs itself, units and a tank."""
    assert tuple(_order()) == contents.ORDER
    for name in contents.ORDER:
        [call] = [call for call in contents.calls(name) if call.name == "recall"]
        if name == contents.ORDER[0]:
            assert len(call.words) == 3 and not {*call.words} & {*contents.asked_after_teaching(name)}
        else:
            assert call.named == {"before": name} and not call.words


def test_every_question_of_the_bank_is_asked_in_some_workbook():
    asked = {word for name in contents.COURSE for call in contents.calls(name) if call.name not in ("recall", "look_back") for word in call.words}
    assert {*bank.questions()} <= asked, sorted({*bank.questions()} - asked)


@pytest.mark.parametrize("name", SECTIONED)
def test_a_topic_workbook_says_first_how_it_comes_to_life(name):
    opening = source(json.loads((FOLDER / f"{name}.ipynb").read_text(encoding="utf-8"))["cells"][0])
    assert "Run > Run All Cells" in opening and "when you open the workbook another day" in opening


@pytest.mark.parametrize("path", [path for path in WORKBOOKS if path.stem not in OPEN], ids=lambda path: path.stem)
def test_no_cell_can_be_deleted_and_no_text_changed_by_a_stray_key(path):
    for cell in json.loads(path.read_text(encoding="utf-8"))["cells"]:
        assert cell["metadata"]["deletable"] is False
        assert cell["cell_type"] == "code" or cell["metadata"]["editable"] is False


def test_notebooks_name_the_kernel_that_opens_without_a_question_and_no_machine():
    for path in WORKBOOKS:
        text = path.read_text(encoding="utf-8")
        assert json.loads(text)["metadata"]["kernelspec"]["name"] == "python3"
        assert not re.search(r"/home/|/root/|/tmp/|[A-Z]:\\\\Users", text), path.name


def test_all_workbooks_are_found():
    assert {path.stem for path in WORKBOOKS} >= {"00-start", "lining", "volume", "reservoir", "overflow", "pipes", "loads", "siting", "water-balance"}
