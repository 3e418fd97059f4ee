"""What somebody who writes Python meets: the public names, their examples, numbers with units, JSON."""

import doctest
import importlib
import inspect
import json
import math
import re
import subprocess
import sys
from pathlib import Path

import numpy
import pandas
import pytest
from of_pint import REGISTRY

import brimwork
from brimwork.cli import main
from brimwork.notebook.opening import shipped

DESIGNS = sorted((shipped() / "designs").glob("*.toml"))
every_design = pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.stem)
DESIGN_KEYS = ["format", "design", "given", "results", "findings", "grades"]
RESULT_KEYS = ["code", "name", "letter", "value", "unit", "text", "formula", "working", "notes", "why", "needs"]
FINDING_KEYS = """code group title grade value unit passes marginal shown limit remedy basis note results needs""".split()
WORK_KEYS = ["formula", "equation", "inputs", "result", "working", "notes", "origin", "tested", "published", "unpublished", "by_hand"]


@pytest.mark.parametrize("module", ["brimwork", "brimwork.door", "brimwork.prove", "brimwork.units", "brimwork.topics", "brimwork.formula"])
def test_the_examples_in_the_docstrings_run(module, monkeypatch):
    monkeypatch.chdir(shipped())
    ran = doctest.testmod(importlib.import_module(module))
    assert ran.attempted and not ran.failed


def test_the_examples_of_the_readme_run(monkeypatch):
    monkeypatch.chdir(shipped())
    readme = Path(__file__).parents[1] / "README.md"
    example = readme.read_text(encoding="utf-8").partition("## From Python")[2].partition("```python\n")[2].partition("```")[0]
    test = doctest.DocTestParser().get_doctest(example, {}, "README", str(readme), 0)
    with numpy.printoptions(precision=8):  # a notebook that another test runs may have set its own
        ran = doctest.DocTestRunner().run(test)
    assert ran.attempted > 10 and not ran.failed


def test_there_are_about_ten_names_each_with_words_about_it():
    assert 8 <= len(brimwork.__all__) <= 12 and {*brimwork.__all__} <= {*dir(brimwork)}
    for name in brimwork.__all__:
        assert len(inspect.getdoc(getattr(brimwork, name))) > 60, name
        assert name in brimwork.__doc__
    with pytest.raises(AttributeError, match="no name 'serch'; it has Feature"):
        brimwork.serch  # noqa: B018


def test_asking_for_a_public_name_loads_no_library_but_those_it_needs():
    script = "import sys, brimwork; brimwork.find; brimwork.read; brimwork.InputError; print('numpy' in sys.modules, 'sympy' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True).stdout.split() == ["False", "False"]


@every_design
def test_a_design_is_numbers_with_units_and_limits(path):
    feature = brimwork.Feature.load(path)
    assert len(feature.results) > 60 and len(feature.findings) > 60
    for result in feature.results:
        assert (result.value is None) == bool(result.why)
        assert result.value is None or math.isfinite(result.value) and result.text and result.working
    numbered = [finding for finding in feature.findings if finding.value is not None]
    assert len(numbered) > 10
    codes = {result.code for result in feature.results}
    for finding in feature.findings:
        assert {*finding.results} <= codes or finding.grade == "does not apply"
    for finding in numbered:
        value = float(f"{finding.value:.9g}")
        inside = [low * (1 - 1e-9) - 1e-9 <= value <= high * (1 + 1e-9) + 1e-9 for low, high in (finding.passes, finding.marginal)]
        assert inside[0] or finding.grade != "pass"
        assert not inside[1] or finding.grade != "fail", finding


def test_a_result_is_what_its_working_says():
    """By hand: 60 L/min for each metre of a rim of pi x 0.78 m, a litre a minute being 1/60 000 m3/s."""
    bowl = brimwork.Feature.load(shipped() / "designs" / "library-bowl.toml").having("flow.for_each_metre", "60 L/min per m")
    flow = 1e-3 * math.pi * 0.78
    assert bowl.result("flow_wanted").value == pytest.approx(flow, rel=1e-9)
    assert bowl.result("flow_wanted").working == ("Q = q·b", "b = 2450.44 mm ÷ 1000 mm/m = 2.45044 m", "Q = 60 L/min per m × 2.45044 m", "Q = 147.0 L/min")


def test_tables_are_lists_of_dicts_or_a_data_frame():
    feature = brimwork.Feature.load(DESIGNS[0])
    rows = brimwork.as_table(feature.findings)
    assert list(rows[0])[:9] == ["code", "group", "title", "grade", "value", "unit", "passes_from", "passes_to", "marginal_from"]
    frame = brimwork.as_table(feature.results, frame=True)
    assert isinstance(frame, pandas.DataFrame) and len(frame) == len(feature.results) and frame["value"].dtype == float
    assert brimwork.as_table([]) == []
    with pytest.raises(brimwork.InputError, match="is no row of a table"):
        brimwork.as_table([3.0])


def test_what_is_not_there_is_told_with_the_nearest(tmp_path):
    feature = brimwork.Feature.load(DESIGNS[0])
    for wrong, told in (
        (lambda: feature.result("duty_flo"), "no result 'duty_flo'. Nearest: duty_flow"),
        (lambda: feature.finding("C999"), "no check 'C999'"),
        (lambda: feature.draw("plane"), "no drawing 'plane'. Nearest: plan"),
        (lambda: feature.having("flow.none", "3"), r"\[flow\] has no key 'none'"),
        (lambda: brimwork.Feature.load(tmp_path / "none.toml"), "cannot be read"),
        (lambda: brimwork.find("flow over a lip that is not"), "no formula"),
        (lambda: brimwork.drawn("flow over a level lip", over="zz", b=0.6, H=0.01, C_d=0.6), "takes no letter 'zz'"),
    ):
        with pytest.raises(brimwork.InputError, match=told):
            wrong()


def test_a_value_of_a_design_may_be_a_quantity_and_is_converted_or_refused():
    bowl = brimwork.Feature.load(shipped() / "designs" / "library-bowl.toml")
    quantity = REGISTRY.Quantity
    for given in ("900 mm", quantity(0.9, "m"), quantity(90, "cm"), quantity(900 / 25.4, "inch")):
        assert bowl.having("vessel.rim_diameter", given).result("rim_length").value == pytest.approx(math.pi * 0.9, rel=1e-12)
    assert bowl.having("site.sling_angle", quantity(math.pi / 3, "rad")).as_json()["given"]["site.sling_angle"]["text"].endswith(" deg")
    for key, value, told in (
        ("vessel.rim_diameter", quantity(9, "kg"), "9 kilogram is a mass, but a length is wanted"),
        ("vessel.rim_diameter", quantity([1, 2], "m"), "holds more than one"),
        ("vessel.stands_on", quantity(1, "m"), "but no number is wanted"),
        ("vessel.rim_diametr", quantity(1, "m"), "Nearest: rim_diameter"),
        ("vessel.rim_diameter", 900, "has no unit"),
        ("vessel.rim_diameter", True, "is not a quantity"),
    ):
        with pytest.raises(brimwork.InputError, match=told):
            bowl.having(key, value)


def test_drawings_are_pictures_and_a_changed_feature_leaves_the_first_as_it_was(tmp_path):
    bowl = brimwork.Feature.load(shipped() / "designs" / "library-bowl.toml")
    before = bowl.result("rim_length").value
    assert bowl.having("vessel.rim_diameter", "900 mm").result("rim_length").value == pytest.approx(math.pi * 0.9) and bowl.result("rim_length").value == before
    assert all(bowl.draw(name).startswith("<svg ") for name in bowl.drawings)
    picture = brimwork.drawn("flow over a level lip", b="2 ft", H=0.012, C_d=0.62)
    assert (
        "</svg>" in picture and picture._repr_html_().startswith('<img src="data:image/svg+xml;base64,') and re.search('alt="[^"]{60,}"', picture._repr_html_())
    )
    bowl.save(tmp_path / "mine.toml")
    assert brimwork.Feature.load(tmp_path / "mine.toml").as_json() == bowl.as_json()


@every_design
def test_the_json_of_a_design_keeps_its_keys(path, capsys):
    """The guide describes them: whoever reads this JSON counts on every one."""
    folder = set(path.parent.iterdir())
    code = main(["pack", str(path), "--json"])
    told = json.loads(capsys.readouterr().out, parse_constant=lambda name: pytest.fail(f"{name} is no JSON"))
    assert list(told) == DESIGN_KEYS and told["format"] == 1 and set(path.parent.iterdir()) == folder
    assert all(list(row) == RESULT_KEYS for row in told["results"]) and all(list(row) == FINDING_KEYS for row in told["findings"])
    assert list(told["grades"]) == ["fail", "marginal", "not shown", "pass", "does not apply"]
    assert sum(told["grades"].values()) == len(told["findings"]) and code == bool(told["grades"]["fail"])
    assert all(list(given) == ["text", "basis"] for given in told["given"].values())
    assert [row["code"] for row in told["findings"]] == [finding.code for finding in brimwork.Feature.load(path).findings]


def test_json_and_a_pdf_at_once_are_refused(capsys):
    assert main(["pack", str(DESIGNS[0]), "--json", "--to", "a.pdf"]) == 2
    assert "--json writes no pack" in json.loads(capsys.readouterr().out)["error"]


def test_the_json_of_a_formula_keeps_its_keys(capsys):
    assert main(["work", "flow over a level lip", "b=4m", "H=0.2m", "C_d=0.62", "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert list(told) == WORK_KEYS and list(told["inputs"]["b"]) == ["name", "value", "unit", "metric", "us"]
    assert list(told["result"]) == ["letter", "name", "value", "unit", "metric", "us"]
    assert list(told["published"][0]) == ["source", "grade", "given", "value", "tolerance", "difference"]
    assert main(["work", "flow over a level lip", "--json"]) == 0
    assert list(json.loads(capsys.readouterr().out)) == ["formula", "gives", "takes", "equation", "origin", "example"]
    assert main(["work", "weir", "--json"]) == 0
    assert all(list(row) == ["under", "formula", "gives", "takes"] for row in json.loads(capsys.readouterr().out)["formulas"])


def test_of_two_checks_with_one_code_the_one_that_applies_is_given():
    """C06 asks of a vessel how high its outlet boils, of a drilled stone whether its water jets."""
    bowl = brimwork.Feature.load(shipped() / "designs" / "library-bowl.toml")
    assert bowl.finding("C06").grade == "fail" and bowl.finding("C25").grade == "fail"
