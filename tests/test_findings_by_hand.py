"""Findings counted, named and told; which checks there are; the parts of answered checks that are computed. Sentences and numbers by hand."""

import math
from dataclasses import replace

import pytest
from few_numbers import FewNumbers, design

from brimwork.design.judged.checks import CHECKS, _renamed, limits_of, numbered
from brimwork.design.judged.computed_checks import COMPUTED
from brimwork.design.judged.findings import Finding, called, grade_said, graded, keyless, next_words, tally, wanted
from brimwork.design.judged.grading import Joined
from brimwork.design.typed.limits import at_most
from brimwork.design.typed.plausible import implausible
from brimwork.design.typed.renamed import DROPPED, RENAMED

VESSEL = "overflowing vessel"


def found(grade: str, **more) -> Finding:
    return Finding(**{"id": "X1", "group": "water", "title": "A number", "grade": grade, "value": "", "limit": "", "remedy": "", "basis": "", **more})


def test_findings_are_counted_by_their_grades():
    assert (
        tally([found("pass"), found("fail"), found("fail"), found("does not apply")]) == "2 outside limits or not met, 1 within limits or met, 1 does not apply"
    )
    assert (
        tally([found("does not apply")] * 2 + [found("not shown"), found("marginal")]) == "1 near a limit or partly met, 1 not shown, 2 do not apply"
        and tally([]) == ""
    )


@pytest.mark.parametrize(
    ("grade", "number", "answer", "value"),
    [("fail", "outside the limit", "not met", "to settle"), ("marginal", "near the limit", "partly met", "to settle"), ("pass", "within the limit", "met", "settled"),
     ("not shown", "not shown", "not shown", "not shown")],
)  # fmt: skip
def test_a_grade_is_said_as_what_it_is_of(grade, number, answer, value):
    assert grade_said(found(grade, limit="up to 3")) == number and grade_said(found(grade)) == answer
    assert grade_said(found(grade, group="values that contradict each other")) == value == grade_said(found(grade, group="values", limit="up to 3"))


def test_a_check_that_fails_is_called_by_what_is_wrong():
    assert called(found("fail", id="C13", title="Pump covered")) == "Pump not covered at the lowest level"
    assert called(found("pass", id="C13", title="Pump covered")) == "Pump covered" == called(found("marginal", id="C13", title="Pump covered"))
    assert called(found("fail")) == "A number"


def test_what_most_checks_wait_for_is_found_out_next():
    waits = [found("not shown", needs=("pipe.bore", "vessel.height")), found("not shown", needs=("pipe.bore",))]
    assert next_words(waits) == "To find out next: true inside diameter of the hose (2 checks wait); height of the vessel (1 check waits)."
    more = [*waits, found("not shown", needs=("vessel.mass", "pump.power"))]
    assert wanted(more)[0] == ("pipe.bore", 2) and next_words(more).count("wait") == 3 and next_words([found("pass")]) == ""


def test_no_key_stands_in_what_readers_of_boxes_see():
    said = found("fail", value="pipe.bore is 20 mm", limit="over pipe.bore", remedy="change pipe.bore", note="see pipe.bore", title="pipe.bore")
    shown = keyless(said, lambda key: "Bore")
    assert (shown.value, shown.limit, shown.remedy, shown.note, shown.title) == ("“Bore” is 20 mm", "over “Bore”", "change “Bore”", "see “Bore”", "pipe.bore")
    assert "true inside diameter of the hose" in keyless(said).value and graded([said], "UK") == [said]


def test_a_number_has_its_check_and_its_limits():
    assert numbered("C46").id == "C46" and limits_of(FewNumbers(design=design(VESSEL)), "C46") == at_most(0.80, 1.00)
    assert {check.id for check in CHECKS if isinstance(check, Joined)} == {"C23", "C30", "C36", "C58"} == {*COMPUTED}
    assert {check: instead for check, (_, _, instead) in COMPUTED.items()} == {"C23": True, "C30": False, "C36": False, "C58": False}


def computed(check: str, **numbers) -> tuple[str, str, str]:
    part = COMPUTED[check][0](FewNumbers(design=design(VESSEL), **numbers))
    return part.grade, part.value, part.limit


@pytest.mark.parametrize(
    ("overhang", "bridge", "slabs", "grade", "value"),
    [
        (0.002, 0.2, 1, "fail", "reaches 2.00 mm over the edge of the blocks"), (0.001, math.inf, 0, "pass", "inside one block"), (0.0, 0.2, 0, "fail", "stands across a joint, with no slab that bridges it"),
        (0.0, 0.150, 1, "pass", "bridges a joint by 150 mm where it reaches least"), (0.0, 0.149, 2, "marginal", "bridges a joint by 149 mm where it reaches least"),
        (0.0, 0.075, 1, "marginal", "bridges a joint by 75.0 mm where it reaches least"), (0.0, 0.0745, 1, "fail", "bridges a joint by 74.5 mm where it reaches least"),
    ],
)  # fmt: skip
def test_what_stands_on_the_blocks_is_held_against_their_joints(overhang, bridge, slabs, grade, value):
    assert computed("C23", overhang=overhang, bridge=bridge, slab_count=slabs) == (grade, value, "from 150 mm; near it from 75 mm")


@pytest.mark.parametrize(
    ("used", "cover", "grade", "value"),
    [
        (1.0, 0.0, "pass", "a wheel presses 1.00 of what a bare block may carry for seconds"),
        (1.01, 0.0, "fail", "a wheel presses 1.01 of what a bare block may carry for seconds"),
        (0.5, 0.04, "pass", "a wheel presses 0.500 of what a block under its cover may carry for seconds"),
    ],
)
def test_a_foot_presses_on_a_block_or_its_cover(used, cover, grade, value):
    assert computed("C58", foot_utilisation=used, pressed_under=lambda thick: ("a wheel" if thick == cover else "nothing", 0.0), cover=cover) == (
        grade,
        value,
        "up to 1",
    )


@pytest.mark.parametrize(("share", "grade"), [(0.10, "pass"), (0.1005, "marginal"), (0.20, "marginal"), (0.201, "fail")])
def test_the_full_vessel_pulls_its_wall(share, grade):
    found_grade, value, limit = computed("C30", wall_share=share)
    assert (
        found_grade == grade
        and value.startswith("the full vessel pulls its wall with 0.")
        and value.endswith(" of its strength")
        and limit == "up to 0.1; near it up to 0.2"
    )


@pytest.mark.parametrize(
    ("bow", "grade", "told"), [(0.005, "pass", "5.00"), (0.00502, "marginal", "5.02"), (0.010, "marginal", "10.0"), (0.0101, "fail", "10.1")]
)
def test_the_fill_bows_the_box(bow, grade, told):
    seen = computed("C36", bow=bow, unheld=0.6)
    assert (seen[0], seen[2]) == (grade, "up to 5 mm; near it up to 10 mm") and seen[1].endswith(" mm, 600 mm between two struts or corners")
    assert seen[1].startswith(f"the fill bows the box by {told} mm")


def test_a_key_of_an_older_edition_is_read_and_told():
    old, gone = next(iter(RENAMED)), next(iter(DROPPED))
    made = replace(design(VESSEL), renamed=(old, gone))
    dropped, renamed = _renamed(FewNumbers(design=made))
    assert (
        renamed.value == f"{old} in the file is {RENAMED[old]} now"
        and renamed.grade == dropped.grade == "marginal"
        and dropped.title == f"Asked for no more: {gone}"
    )
    assert _renamed(FewNumbers(design=design(VESSEL))) == []


def test_every_point_of_a_curve_is_held_against_what_can_be():
    fine = design(VESSEL).having("pump.curve", [["0 L/min", "3 m"], ["60 L/min", "0 m"]])
    assert implausible(fine) == {}
    square = [["0 mm", "0 mm"], ["300 mm", "0 mm"], ["300 mm", "300 mm"], ["0 mm", "300 mm"]]
    assert implausible(design(VESSEL).having("vessel.foot_corners", square)) == {}
    far = design(VESSEL).having("vessel.foot_corners", [*square[:3], ["0 mm", "5000 mm"]])  # four metres are the most to a side
    assert implausible(far) == {"vessel.foot_corners": "5000 mm, where -4000 mm to 4000 mm can be"}
    assert [*implausible(fine.having("pump.curve", [["0 L/min", "3000 m"], ["60 L/min", "0 m"]]))] == ["pump.curve"]
    assert [*implausible(fine.having("pump.curve", [["0 L/min", "3 m"], ["90000 L/min", "0 m"]]))] == ["pump.curve"]
