"""What a finding hangs on: the ways are those of physics, and where a value alone would do, the check then passes."""

from dataclasses import replace
from pathlib import Path

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.judged.checks import findings
from brimwork.design.judged.hanging import hangs_on
from brimwork.design.typed.file import load_design
from brimwork.design.typed.known import Given

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"
BOWL = load_design(DESIGNS / "library-bowl.toml")


def grade(design, finding_id):
    return next(one.grade for one in findings(chain_of(design)) if one.id == finding_id)


@pytest.mark.parametrize(
    ("check", "ways"),
    [
        ("C25", {"vessel.height": False, "vessel.foot_outside": True, "vessel.mass": True}),  # overturning: lower, wider, heavier
        ("C07", {"vessel.rim_out_of_level": False, "pump.maximum_flow": True}),  # rim out of level against the head
        ("C39", {"levels.staple_line": True, "reservoir.overflow_level": False}),
    ],
)
def test_the_ways_are_those_of_physics(check, ways):
    found = {one.key: one.up for one in hangs_on(BOWL, check)}
    assert ways.items() <= found.items(), found


@pytest.mark.parametrize("name", ["library-bowl", "school-columns", "terrace-blade", "garden-cascade"])
def test_where_a_value_alone_would_do_the_check_passes_with_it(name):
    design, tried = load_design(DESIGNS / f"{name}.toml"), 0
    for finding in [one for one in findings(chain_of(design)) if one.grade in ("fail", "marginal") and one.id != "C56"]:
        for one in hangs_on(design, finding.id):
            assert one.key.partition(".")[0] not in ("measured", "assumptions", "climate") and "factor" not in one.key
            if one.enough is not None:
                was = design[one.key]
                value = tuple(each * one.enough / max(was) for each in was) if isinstance(was, tuple) else one.enough
                there = replace(design, values={**design.values, one.key: Given(value, "", "yours")})
                assert grade(there, finding.id) == "pass", (finding.id, one)
                assert (one.enough > one.now) == one.up
                tried += 1
    assert tried >= 1


def test_what_rests_on_an_answer_hangs_on_no_number():
    assert list(hangs_on(BOWL, "C41")) == [] == list(hangs_on(BOWL, "no such check"))
