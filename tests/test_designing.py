"""The design workbook without a browser: boxes by steps, and nothing of a user's is left or replaced before they were asked."""

import os
import re
from pathlib import Path
from types import SimpleNamespace

import pytest

from brimwork import files
from brimwork.design.typed import file
from brimwork.design.typed.fields import sections
from brimwork.design.typed.kinds import KINDS
from brimwork.notebook import keeping
from brimwork.notebook.comparing import compare
from brimwork.notebook.designing import QUICK, DesignView
from brimwork.notebook.form import FORM_STEPS, HEADS, keys_of

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"


@pytest.fixture
def view(tmp_path):
    for name in ("library-bowl", "quick-check", "terrace-blade"):
        (tmp_path / f"{name}.toml").write_bytes((DESIGNS / f"{name}.toml").read_bytes())
    made = DesignView(tmp_path / "library-bowl.toml")
    made.findings = made.pictures = SimpleNamespace(update=lambda shown: None)  # nothing is displayed here
    return made


def test_save_asks_before_it_replaces_another_file(view, tmp_path):
    view.file.value = str(tmp_path / "quick-check.toml")
    view.save()
    assert "press Save again" in view.told.value and file.load_design(tmp_path / "quick-check.toml").title == "Quick check"
    view.save()
    assert "Saved" in view.told.value and file.load_design(tmp_path / "quick-check.toml").title == "Library bowl"
    view.file.value = str(tmp_path / "library-bowl.toml")
    view.load()
    view.save()
    assert "Saved" in view.told.value, "its own file needs no question"


def test_load_and_start_ask_before_they_leave_what_is_not_saved(view, tmp_path):
    view.form.entries["vessel.mass"].box.value = "80 kg"
    view.file.value = str(tmp_path / "terrace-blade.toml")
    view.load()
    assert "press Load again" in view.told.value and view.design["vessel.mass"] == 80
    view.load()
    assert view.design.kind == "blade" and "blade.lip_width" in view.form.entries and "vessel.mass" not in view.form.entries
    view.head("title", "Mine")
    view.other.value = "blank cascade"
    view.start()
    assert "press Start again" in view.told.value and view.design.title == "Mine"
    view.start()
    assert view.design.kind == "cascade" and not view.design.values
    assert Path(view.file.value) == tmp_path / "my-design.toml" and not Path(view.file.value).exists(), "named, not written"
    view.save()
    view.start()
    assert Path(view.file.value) == tmp_path / "my-design-2.toml"


def test_a_change_says_beside_its_box_which_findings_it_turns(view):
    mass, height = view.form.entries["vessel.mass"], view.form.entries["vessel.height"]
    grade = {finding.title: finding.grade for finding in view.found}
    mass.box.value = "2000 kg"
    turned = [finding.title for finding in view.found if finding.grade != grade[finding.title]]
    assert turned and all(f"{title}: " in mass.message.value for title in turned[:3]) and "role='status'" in mass.message.value
    height.box.value = "3 kg"
    assert "role='alert'" in height.message.value
    mass.box.value = "2000.5 kg"
    assert "No finding changes its grade" in mass.message.value
    assert "role='alert'" in height.message.value, "what is wrong stays said"
    height.box.value = height.box.value.replace("3 kg", "420 mm")
    assert not mass.message.value, "an earlier change is no longer spoken of"


def shown(path):
    made = DesignView(path)
    made.findings = made.pictures = SimpleNamespace(update=lambda shown: None)
    return made


def gone(view) -> None:
    """As if the kernel of the view had ended."""
    view.keeping._let_go()
    keeping._ours.clear()


def unsaved(folder) -> list[str]:
    return [one.name.rpartition(".")[0].rpartition(".")[0] for one in folder.glob(".*.unsaved")]


def test_changes_that_nobody_saved_are_there_again_and_can_be_left(view, tmp_path):
    view.form.entries["vessel.mass"].box.value = "80 kg"
    gone(view)
    again = shown(tmp_path / "library-bowl.toml")
    assert again.design["vessel.mass"] == 80 and again.unsaved and "not saved" in again.told.value and again.leave in again.place.children
    again.leave_changes()
    assert again.design["vessel.mass"] == 72 and not again.unsaved and again.leave not in again.place.children
    assert shown(tmp_path / "library-bowl.toml").design["vessel.mass"] == 72 and not unsaved(tmp_path)


def test_changes_are_kept_for_each_open_view_apart_whatever_the_clock_says(view, tmp_path):
    path = tmp_path / "library-bowl.toml"
    other = shown(path)
    view.change("vessel.mass", "80 kg")
    other.change("pump.power", "50 W")
    assert len(unsaved(tmp_path)) == 2
    for one in [*tmp_path.glob(".*"), path]:
        os.utime(one, (0, 0) if one != path else None)  # kept long before the file, as its clock says
    gone(view)
    gone(other)
    again = shown(path)
    left = {key: again.design.values[key].text for key in ("vessel.mass", "pump.power")}
    assert left in ({"vessel.mass": "80 kg", "pump.power": "45 W"}, {"vessel.mass": "72 kg", "pump.power": "50 W"}) and "There are others" in again.told.value
    again.save()
    last = shown(path)
    assert last.unsaved, "the other one's are still there"
    last.save()
    assert (file.load_design(path)["vessel.mass"], file.load_design(path)["pump.power"]) == (80, 50) and not unsaved(tmp_path) and not shown(path).unsaved


def test_a_view_that_is_opened_beside_another_leaves_that_ones_changes(view, tmp_path):
    view.change("vessel.mass", "80 kg")
    other = shown(tmp_path / "library-bowl.toml")
    assert other.design["vessel.mass"] == 80 and len(unsaved(tmp_path)) == 2
    other.leave_changes()
    gone(view)
    assert shown(tmp_path / "library-bowl.toml").design["vessel.mass"] == 80


def test_what_is_saved_or_left_on_purpose_is_not_kept_besides(view, tmp_path):
    mass = view.form.entries["vessel.mass"].box
    mass.value = "80 kg"
    view.save()
    assert "To open it another day" in view.told.value and not list(tmp_path.glob(".*"))
    mass.value = "90 kg"
    assert unsaved(tmp_path) == [".library-bowl"]
    view.file.value = str(tmp_path / "absent.toml")
    view.load()
    view.load()
    assert "cannot be read" in view.told.value and list(tmp_path.glob(".*")), "what could not be left for another is still kept"
    view.file.value = str(tmp_path / "library-bowl.toml")
    view.load()
    view.load()
    assert view.design["vessel.mass"] == 80 and not list(tmp_path.glob(".*"))


def test_changes_to_a_design_that_has_no_file_yet_are_found_again(view, tmp_path):
    view.other.value = "blank cascade"
    view.start()
    view.change("cascade.width", "500 mm")
    gone(view)
    later = shown(tmp_path / "library-bowl.toml")
    assert any("not saved of my-design" in said for said, _ in later.other.options)
    later.file.value = str(tmp_path / "my-design.toml")
    later.load()
    assert later.design["cascade.width"] == 0.5 and later.unsaved
    later.other.value = "blank blade"
    later.start()
    later.start()
    assert not Path(later.file.value).exists()


def test_changes_kept_by_an_earlier_edition_are_found(tmp_path):
    (tmp_path / "bowl.toml").write_bytes((DESIGNS / "library-bowl.toml").read_bytes())
    file.save_design(file.load_design(tmp_path / "bowl.toml").having("vessel.mass", "80 kg"), tmp_path / ".bowl.unsaved.toml")
    again = shown(tmp_path / "bowl.toml")
    assert again.design["vessel.mass"] == 80
    again.save()
    assert file.load_design(tmp_path / "bowl.toml")["vessel.mass"] == 80 and not list(tmp_path.glob(".*"))


def test_where_changes_cannot_be_kept_the_page_says_so_and_goes_on_saying_it(view, tmp_path, monkeypatch):
    def full(*_):
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as disk:
        disk.setattr(files.os, "fsync", full)
        view.change("vessel.mass", "80 kg")
        assert "cannot be kept (No space left on device)" in view.unkept.value and "role='alert'" in view.unkept.value
        view.file.value = str(tmp_path / "terrace-blade.toml")
        view.load()
        assert "cannot be kept" in view.unkept.value
        view.file.value = str(tmp_path / "library-bowl.toml")
        view.save()
        assert "cannot be written" in view.told.value and "cannot be kept" in view.unkept.value
    view.change("vessel.mass", "81 kg")
    assert not view.unkept.value and unsaved(tmp_path) == [".library-bowl"]


def test_a_save_takes_over_what_was_changed_in_the_file_and_asks_about_what_both_changed(view, tmp_path):
    path = tmp_path / "library-bowl.toml"
    theirs = file.load_design(path)
    view.change("vessel.mass", "80 kg")
    file.save_design(theirs.having("pump.power", "60 W"), path)
    view.save()
    assert view.design["pump.power"] == 60 and "somebody else had changed" in view.told.value and file.load_design(path)["vessel.mass"] == 80
    view.change("vessel.mass", "90 kg")
    view.change("vessel.height", "400 mm")
    file.save_design(file.load_design(path).having("vessel.mass", "100 kg").having("pump.power", "70 W"), path)
    before = path.read_bytes()
    view.save()
    assert path.read_bytes() == before and view.unsaved and unsaved(tmp_path)
    [choice, button] = view.asking.children
    assert [said for said, _ in choice.options] == ["yours: 90 kg", "in the file: 100 kg"] and choice.description == "Mass of the empty vessel"
    button.click()
    assert "choose for each value first" in view.told.value and path.read_bytes() == before
    choice.value = True
    file.save_design(file.load_design(path).having("vessel.mass", "110 kg"), path)
    button.click()
    assert file.load_design(path)["vessel.mass"] == 110, "changed once more while somebody chose"
    [choice, button] = view.asking.children
    choice.value = False
    button.click()
    now = file.load_design(path)
    assert (
        (now["vessel.mass"], now["vessel.height"], now["pump.power"]) == (110, 0.4, 70)
        and view.design == now
        and not view.asking.children
        and not unsaved(tmp_path)
    )


def test_a_question_about_a_file_holds_for_what_it_was_then(view, tmp_path):
    path = tmp_path / "quick-check.toml"
    view.file.value = str(path)
    view.save()
    file.save_design(file.load_design(path).headed("title", "Changed since"), path)
    view.save()
    assert "press Save again" in view.told.value and file.load_design(path).title == "Changed since"
    view.save()
    assert file.load_design(path).title == "Library bowl"


def test_another_kind_keeps_what_it_has_a_place_for(view, tmp_path):
    view.other.value = "turned cascade"
    view.start()
    kept = view.design
    assert kept.kind == "cascade" and kept["reservoir.block_length"] and kept["pump.shut_off_head"]
    assert not any(key.startswith("vessel.") for key in kept.values)
    view.file.value = str(tmp_path / "library-bowl.toml")
    view.save()
    view.save()
    assert file.load_design(tmp_path / "library-bowl.toml").kind == "cascade", "also over a design of another kind"
    assert file.parse_design(file.dump_design(kept)).values.keys() == kept.values.keys()


def test_print_writes_the_pack_and_asks_before_it_replaces_one(view, tmp_path):
    view.print()
    paper = tmp_path / "library-bowl.pdf"
    assert paper.read_bytes().startswith(b"%PDF") and "Printed" in view.told.value
    before = paper.stat().st_mtime_ns
    view.print()
    assert "press Print again" in view.told.value and paper.stat().st_mtime_ns == before
    view.print()
    assert paper.stat().st_mtime_ns > before


def test_a_file_without_a_name_is_asked_for(view):
    for act in (view.save, view.load):
        view.file.value = "  "
        act()
        assert "has no name" in view.told.value


def test_a_box_takes_a_value_its_basis_and_tells_what_it_refuses(view):
    mass = view.form.entries["vessel.mass"]
    mass.box.value = "80 kg"
    mass.basis.value = "measured"
    assert view.design.given("vessel.mass").basis == "measured" and view.design["vessel.mass"] == 80
    mass.box.value = "-3 kg"
    assert "below zero" in mass.message.value and "vessel.mass" not in mass.message.value and view.design["vessel.mass"] == 80
    mass.box.value = ""
    assert "vessel.mass" not in view.design.values and mass.basis.disabled
    view.form.widget.selected_index = list(view.form.steps).index("Assumptions and limits")
    assert view.form.entries["assumptions.drip_loop"].box.placeholder == "usual: 0.3 m (common practice)"


def test_lists_stand_in_their_box_as_they_were_typed(view, tmp_path):
    (tmp_path / "columns.toml").write_bytes((DESIGNS / "school-columns.toml").read_bytes())
    view.file.value = str(tmp_path / "columns.toml")
    view.load()
    box = view.form.entries["stones.heights"].box
    assert box.value == "30 in, 24 in, 18 in"
    box.value = "30 in, 2 ft, 500 mm"
    assert view.design["stones.heights"] == pytest.approx((0.762, 0.6096, 0.5))


def test_a_step_says_how_much_of_it_is_known(view):
    at = list(view.form.steps).index("Feature")
    before = view.form.widget.titles[at]
    view.form.entries["vessel.mass"].box.value = ""
    some, all_ = (int(word) for word in before.split() if word.isdigit())
    assert view.form.widget.titles[at] == f"Feature: {some - 1} of {all_} known"


@pytest.mark.parametrize("kind", KINDS)
def test_every_value_of_a_design_stands_in_one_step_of_its_form(kind):
    shown = [key for step in FORM_STEPS for key in keys_of(step, kind)]
    assert sorted(shown) == sorted([*HEADS, *(f"{section}.{name}" for section, fields in sections(kind).items() for name in fields)])
    assert len(QUICK[kind]) == 10 and set(QUICK[kind]) <= set(shown)


def test_two_designs_side_by_side_grade_the_check_that_each_of_them_has():
    table = compare(str(DESIGNS / "library-bowl.toml"), str(DESIGNS / "terrace-blade.toml")).html
    assert re.search(r">Overturning of the full vessel</th><td[^>]*>✗ fail", table)
