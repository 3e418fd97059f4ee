"""What can hardly be is asked about, and lets no check pass; a design's own limits never loosen one that somebody's safety rests on."""

from pathlib import Path

import pytest
from bounds_of_fields import HELD_AGAINST, bounds

from brimwork.design.follows.features import chain_of
from brimwork.design.judged.checks import CHECKS, findings
from brimwork.design.judged.computed_checks import COMPUTED
from brimwork.design.judged.grading import OVERRULED
from brimwork.design.typed import file
from brimwork.design.typed.asking import meant
from brimwork.design.typed.criteria import LIMITED, is_safety, only_tighter
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.limits import Limits, at_least, at_most
from brimwork.design.typed.noting import Noting
from brimwork.design.typed.plausible import implausible, span, without
from brimwork.design.typed.questions import QUESTIONS
from brimwork.design.typed.reading import Corners, Curve, Field, Several
from brimwork.design.typed.spans import SPANS, UNBOUNDED

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
        (BOWL, "reservoir.short_term_strength", "20 MPa", "C20", "not shown"),
        (BOWL, "supply.voltage", "2300 V", "C42", "not shown"),
        (COLUMNS, "site.force_coefficient", "0.01", "C26", "not shown"),
    ],
)
def test_a_value_that_can_hardly_be_is_asked_about_and_not_counted_with(design, key, text, check, grade):
    changed = design.having(key, text)
    assert graded(changed, check).grade == grade
    asked = [finding for finding in findings(chain_of(changed)) if finding.id == "C99"]
    assert len(asked) == 1 and asked[0].grade == "marginal" and asked[0].title == f"Can it be: {meant(key)}" and text in asked[0].value


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


def test_every_number_of_a_design_has_one_span_or_a_reason_why_it_can_have_none():
    numbers = {f"{section}.{key}" for section, keys in SECTIONS.items() for key, field in keys.items() if isinstance(field, Field | Several | Curve | Corners)}
    assert numbers == SPANS.keys() | UNBOUNDED.keys() and not SPANS.keys() & UNBOUNDED.keys()
    assert all(row.why for row in SPANS.values()) and all(UNBOUNDED.values())


def test_every_value_has_a_line_that_says_what_bounds_it_or_why_nothing_can():
    """Words that a number overrules, or that are part number, say which; no line is of a value that there is not."""
    lines, keys = bounds(), {f"{section}.{key}" for section, fields in SECTIONS.items() for key in fields}
    assert lines.keys() == keys and all(all(line) for line in lines.values())
    assert keys >= HELD_AGAINST.keys() and not HELD_AGAINST.keys() & SPANS.keys()
    answered = {f"answers.{question.key}" for question in QUESTIONS if question.id in {*OVERRULED, *COMPUTED}}
    assert answered == {key for key, said in HELD_AGAINST.items() if key.startswith("answers.") and "no number on file" not in said}


def test_every_span_holds_what_is_usual_and_what_its_box_shows_as_an_example():
    for key in SPANS:
        section, _, name = key.partition(".")
        field = SECTIONS[section][name]
        assert all(low < high for low, high in span(key)), key
        for region in ("UK", "US"):
            texts = (field.usual, field.such) if isinstance(field, Field) else ()
            for text in filter(None, (*texts, getattr(field, "usual_us", ""), getattr(field, "such_us", ""))):
                if isinstance(field, Field):
                    (low, high), value = span(key)[0], field.read(text, key, region)
                    assert low <= value <= high, (key, text)


def test_a_point_of_a_curve_and_an_entry_of_a_list_are_asked_about_too():
    assert "9000 L/min" in implausible(BLADE.having("pump.curve", [["0 L/min", "5 m"], ["9000 L/min", "0 m"]]))["pump.curve"]
    assert "50 m" in implausible(BLADE.having("pump.curve", [["0 L/min", "50 m"], ["100 L/min", "0 m"]]))["pump.curve"]
    assert "stones.heights" in implausible(COLUMNS.having("stones.heights", ["30 in", "24 m", "18 in"]))


def test_a_value_that_can_hardly_be_hides_no_fail_either():
    """90 t lifted by hand is a slip of the finger, and a fail all the same."""
    changed = BOWL.having("site.lift_reach", "400 mm").having("site.lift_height", "300 mm").having("site.lift_travel", "500 mm")
    assert graded(changed.having("site.lift_mass", "90000 kg"), "C48").grade == "fail"


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


DOUBTED = [
    (BOWL, "pipe.length", "4000 m"), (BOWL, "slab.length", "90 m"), (BOWL, "reservoir.block_width", "30 m"), (BOWL, "flow.water_temperature", "99 degC"), (BOWL, "vessel.mass", "900 t"),
    (COLUMNS, "pump.bay", "60 ft"), (COLUMNS, "stones.heights", ["3000 in", "24 in", "18 in"]), (COLUMNS, "slab.width", "300 ft"), (COLUMNS, "reservoir.static_level", "300 ft"),
    (BLADE, "blade.lip_width", "90 m"), (BLADE, "catch.splash_factor", "0.01"), (BLADE, "pump.power", "90 kW"), (BLADE, "reservoir.void_fraction", "0.001"),
    (CASCADE, "cascade.width", "90 m"), (CASCADE, "cascade.header_volume", "900 m3"), (CASCADE, "climate.evaporation", "0 mm/day"), (CASCADE, "ground.sub_base", "90 m"),
]  # fmt: skip


@pytest.mark.parametrize(("design", "key", "text"), DOUBTED, ids=lambda one: one if isinstance(one, str) else None)
def test_a_doubted_design_is_graded_as_if_every_check_were_worked_twice_from_scratch(design, key, text):
    """What none of the doubted values went into is worked once, and stands for both; that changes no finding."""
    changed = design.having(key, text)
    assert key in implausible(changed)
    found = {(finding.id, finding.title): finding for finding in findings(chain_of(changed))}
    rank = ("fail", "not shown", "marginal", "pass", "does not apply").index
    for check in (check for check in CHECKS if not check.kinds or design.kind in check.kinds):
        noting = Noting(without(changed, (key,)))
        bare, typed, said = check.grade(type(chain_of(changed))(noting)), check.grade(chain_of(changed)), found[check.id, check.title]
        if key in noting.missing and bare.grade != "fail":
            assert said.grade == "fail" or (said.grade == "not shown" and key in said.needs), check.id
        else:
            assert said == min(bare, typed, key=lambda finding: rank(finding.grade)), check.id


def test_only_the_checks_that_look_at_a_doubted_value_are_worked_twice(monkeypatch):
    """How long the cable is decides the voltage drop, and nothing else that is judged; people on the lid are tried with another design, which goes through all values."""
    graded_of = dict.fromkeys((check.id for check in CHECKS), 0)

    def counting(row):
        grade = row.grade

        def counted(self, chain):
            graded_of[self.id] += 1
            return grade(self, chain)

        monkeypatch.setattr(row, "grade", counted)

    for row in {type(check) for check in CHECKS}:
        counting(row)
    findings(chain_of(BLADE))
    once = dict(graded_of)
    findings(chain_of(BLADE.having("supply.cable_length", "3 mm")))
    assert {check for check, times in graded_of.items() if times > 2 * once[check]} <= {"C42", "C58"}
    assert graded_of["C42"] == 3
