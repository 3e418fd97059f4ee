"""What can hardly be is asked about, and lets no check pass; a design's own limits never loosen one that somebody's safety rests on."""

from pathlib import Path

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.judged.checks import findings
from brimwork.design.typed import file
from brimwork.design.typed.criteria import LIMITED, is_safety, only_tighter
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.limits import Limits, at_least, at_most
from brimwork.design.typed.plausible import PLAUSIBLE, implausible

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"
BOWL, COLUMNS, BLADE, CASCADE = (file.load_design(DESIGNS / f"{name}.toml") for name in ("library-bowl", "school-columns", "terrace-blade", "garden-cascade"))


def graded(design, check):
    return next(finding for finding in findings(chain_of(design)) if finding.id == check)


@pytest.mark.parametrize("design", [BOWL, COLUMNS, BLADE, CASCADE], ids=lambda design: design.kind)
def test_no_value_of_the_invented_designs_is_doubted(design):
    assert implausible(design) == {}


@pytest.mark.parametrize(
    ("design", "key", "text", "check", "grade"),
    [
        (BOWL, "reservoir.safety_factor", "0.2", "C20", "not shown"),
        (BOWL, "reservoir.short_term_strength", "11 MPa", "C20", "not shown"),
        (BOWL, "supply.voltage", "2300 V", "C42", "not shown"),
        (COLUMNS, "site.force_coefficient", "0.01", "C26", "not shown"),
    ],
)
def test_a_value_that_can_hardly_be_is_asked_about_and_not_counted_with(design, key, text, check, grade):
    changed = design.having(key, text)
    assert graded(changed, check).grade == grade
    asked = [finding for finding in findings(chain_of(changed)) if finding.id == "C99"]
    assert len(asked) == 1 and asked[0].grade == "marginal" and key in asked[0].value and text in asked[0].value


@pytest.mark.parametrize(
    ("changes", "check", "grade"),
    [
        ({"pump.power": "6 kW"}, "C46", "fail"),  # 26 A by the power as typed, though the load of the circuit is given as 3 A
        ({"supply.voltage": "1.2 V"}, "C46", "fail"),
        ({"supply.voltage": "600 V"}, "C46", "not shown"),  # the 3 A alone say nothing of what the pump takes
        ({"measured.current": "0.001 A"}, "C46", "pass"),  # nobody need measure it: the rated current counts
        ({"assumptions.wind_factor": "0.1", "catch.apron": "150 mm"}, "C17", "fail"),  # the usual factor counts
    ],
)
def test_a_value_laid_aside_lets_no_check_pass(changes, check, grade):
    design = BOWL.having("supply.circuit_load", "3 A").having("supply.breaker", "16 A")
    for key, text in changes.items():
        design = design.having(key, text)
    assert graded(design, check).grade == grade


def test_a_person_of_one_newton_leaves_the_usual_person_on_the_lid():
    """0.8 kN on 100 x 100 mm is 80 kPa, whatever was typed instead."""
    believed = graded(BOWL.having("assumptions.person", "1 N"), "C58")
    assert believed.grade == graded(BOWL, "C58").grade and believed.value == graded(BOWL, "C58").value


def test_every_plausible_span_is_of_a_quantity_and_holds_its_usual_value():
    for key, (low, high) in PLAUSIBLE.items():
        section, _, name = key.partition(".")
        field = SECTIONS[section][name]
        assert field.read(low, key) < field.read(high, key)
        if field.usual:
            assert field.read(low, key) <= field.read(field.usual, key) <= field.read(high, key)


def test_limits_within_others_are_nowhere_wider():
    usual = at_most(0.8, 1.0)
    assert at_most(3.0, 4.0).within(usual) == usual
    assert at_most(0.5, 0.9).within(usual) == at_most(0.5, 0.9)
    assert at_least(0.05, 0.02).within(at_least(0.03, 0.03)) == at_least(0.05, 0.03)
    assert Limits((2.0, 3.0), (2.0, 3.0)).within(usual).grade(2.5) == "fail"


@pytest.mark.parametrize("check", [check for check, row in LIMITED.items() if only_tighter(check, row.group)])
def test_a_design_cannot_loosen_what_safety_rests_on(check):
    """Limits wide enough for anything give no other grade than the usual ones."""
    unit = LIMITED[check].unit
    wide = f"-1000000 to 1000000 {unit}; -1000000 to 1000000 {unit}".replace(" ;", ";").strip()
    for design in (BOWL, COLUMNS, BLADE, CASCADE):
        loosened = design.having(f"limits.{check}", wide)
        assert graded(loosened, check).grade == graded(design, check).grade
        if graded(design, check).limit:
            assert "only count where they are tighter" in graded(loosened, check).limit


def test_a_breaker_at_three_times_its_rating_fails_whatever_the_design_says():
    over = BOWL.having("supply.circuit_load", "48 A").having("supply.breaker", "16 A").having("limits.C46", "up to 300 %; up to 300 %")
    assert graded(over, "C46").grade == "fail"
    assert is_safety("C46", LIMITED["C46"].group)
