"""A learner's design file against a brief: values required, checks that must pass, limits left alone, rows for a person. A design that cannot be read stops nothing."""

from pathlib import Path

import pytest

from brimwork.classroom import classfile, designs, intake, marking, numbers, writing
from brimwork.cli import main
from brimwork.units import InputError

BOWL = Path(__file__).parents[1].joinpath("workbooks", "designs", "library-bowl.toml").read_text(encoding="utf-8")
BRIEF = """format = 1
kind = "overflowing vessel"
points = 8

[required]
"vessel.rim_diameter" = { is = "780 mm", near = "5 mm" }
"vessel.rim_out_of_level" = { at_most = "1 mm" }

[must_pass]
checks = ["C12", "C07"]

[unchanged]
limits = "all"

[rubric]
rows = ["the position is justified in writing"]
"""


def brief(tmp_path, text=BRIEF):
    (tmp_path / "brief.toml").write_text(text)
    return designs.brief(tmp_path / "brief.toml")


def rows(told):
    return {row["what"]: row["mark"] for row in told["rows"]}


def graded(raw):
    """Grades of the design by the pack's own findings."""
    return {finding.id: finding.grade for finding in designs.checks.findings(designs.chain_of(designs.parse_design(raw)))}


def test_values_checks_and_limits_are_marked(tmp_path):
    wanted, grades = brief(tmp_path), graded(BOWL)
    told = designs.marked(BOWL.encode(), wanted)
    marks = [row["mark"] for row in told["rows"]]
    assert len(marks) == 6 and told["of"] == 8 and told["rubric"] == ["the position is justified in writing"]
    by_check = {row["what"][:3]: row for row in told["rows"] if row["what"].startswith("C")}
    assert {name: row["mark"] for name, row in by_check.items()} == {name: "yes" if grades[name] == "pass" else "no" for name in ("C12", "C07")}
    assert told["points"] == round(8 * marks.count("yes") / 6, 2)
    assert {row["mark"] for row in told["rows"] if row["what"] == "limits as the kit has them"} == {"yes"}


def test_a_changed_limit_a_missing_value_and_another_value_are_seen(tmp_path):
    wanted = brief(tmp_path)
    changed = BOWL + '\n[limits]\nC07 = "0 to 1; 0 to 1"\n' if "[limits]" not in BOWL else BOWL
    told = designs.marked(changed.encode(), wanted)
    if not told.get("reason"):
        assert [row["found"] for row in told["rows"] if row["what"] == "limits as the kit has them"] == ["changed: C07"]
    without = "\n".join(line for line in BOWL.splitlines() if not line.startswith("rim_out_of_level"))
    found = {row["found"] for row in designs.marked(without.encode(), wanted)["rows"]}
    assert "not given" in found
    other = BOWL.replace("780 mm", "700 mm")
    assert [row["mark"] for row in designs.marked(other.encode(), wanted)["rows"] if "700 mm" in row["found"]] == ["no"]


@pytest.mark.parametrize(
    "raw",
    [b"", b"\xff", b"[", b"format = 9", b"format = 1\nkind = 5", b"[" * 50_000, b'format = 1\nkind = "overflowing vessel"\n[vessel]\nrim_diameter = "9**9**9"'],
)
def test_a_design_that_cannot_be_read_says_why(tmp_path, raw):
    assert "cannot be read" in designs.marked(raw, brief(tmp_path))["reason"]


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("vessel.rim_diameter", "vessel.rim_diametr", "no value 'vessel.rim_diametr'"),
        ('"C12"', '"C999"', "no check 'C999'"),
        ("near", "about", "is written"),
        ("780 mm", "780 kg", "rim_diameter"),
        ("format = 1", "format = 2", "format = 1"),
        ("points", "pionts", "does not stand so"),
    ],
)  # fmt: skip
def test_a_brief_that_cannot_be_says_what_to_type(tmp_path, old, new, told):
    with pytest.raises(InputError, match=told):
        brief(tmp_path, BRIEF.replace(old, new))


def test_the_example_of_a_brief_can_be_read(tmp_path):
    assert brief(tmp_path, designs.BRIEF_EXAMPLE)["points"] == 10


def test_designs_are_marked_with_a_class(tmp_path):
    brief(tmp_path)
    (tmp_path / "c.toml").write_text('format = 1\ntitle = "Own design"\nbrief = "brief.toml"\n')
    (tmp_path / "roster.csv").write_text("code,name\nA01,Ada\nA02,Ben\n")
    group = classfile.load_class(tmp_path / "c.toml")
    numbers.secret_of(tmp_path, make=True)
    place = tmp_path / "in"
    place.mkdir()
    (place / "A01 my design.toml").write_text(BOWL, encoding="utf-8")
    (place / "A02.toml").write_text("format = 9")
    (place / "nobody.toml").write_text(BOWL, encoding="utf-8")
    assert main(["mark", str(place), "--of", str(group.path)]) == 1
    page = (tmp_path / "in-marks" / "pages" / "A01.html").read_text(encoding="utf-8")
    assert "limits as the kit has them" in page and "What a person judges" in page and "the position is justified" in page
    assert "cannot be read" in (tmp_path / "in-marks" / "pages" / "A02.html").read_text(encoding="utf-8")
    table = (tmp_path / "in-marks" / "designs.csv").read_text(encoding="utf-8-sig")
    assert "for a person" in table and "nobody.toml" in (tmp_path / "in-marks" / "could-not-be-read.csv").read_text(encoding="utf-8-sig")
    marks = marking.mark(group, numbers.draw(group, numbers.secret_of(tmp_path)), intake.take_in(place, designs.brief(tmp_path / "brief.toml")))
    writing.write_feedback(marks, tmp_path / "again")
    assert (tmp_path / "again" / "designs.csv").read_bytes() == (tmp_path / "in-marks" / "designs.csv").read_bytes()


def test_a_brief_of_an_earlier_edition_asks_for_the_same_values(tmp_path):
    wanted = brief(tmp_path, 'format = 1\n[required]\n"vessel.rim_error" = { at_most = "3 mm" }\n')
    assert rows(designs.marked(BOWL.encode(), wanted))["difference in level round the rim"] == "yes"
