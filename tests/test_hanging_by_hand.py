"""What a finding hangs on, worked by hand: which way a value goes, how much it weighs, and the nearest value that would do, for a check made here."""

import math
from types import SimpleNamespace

import pytest
from few_numbers import design

from brimwork.design.judged import hanging
from brimwork.design.judged.findings import Finding
from brimwork.design.judged.grading import Check, answered_check
from brimwork.design.judged.hanging import Hangs, hangs_on
from brimwork.design.typed.design import blank_design
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.limits import Criterion, Limits, at_least, at_most, between
from brimwork.design.typed.questions import QUESTIONS
from brimwork.units import InputError

VESSEL, DRILLED = "overflowing vessel", "drilled stones"


@pytest.fixture
def hangs(monkeypatch):
    """What a check of that number and those limits hangs on, in a design of those values."""

    def of(value, limits: Limits, changes: str, kind: str = VESSEL, **more) -> list[Hangs]:
        monkeypatch.setattr(
            hanging, "CHECKS", (Check(Criterion("X1", "water", "A number", limits, "", "a test", kinds=more.pop("kinds", ())), value, "do this", **more),)
        )
        made = blank_design(kind, "A test")
        for change in filter(None, changes.split("; ")):
            key, _, text = change.partition(" ")
            made = made.having(key, text.split(", ") if ", " in text else text)
        return list(hangs_on(made, "X1"))

    return of


def bore(chain):
    return chain.design["pipe.bore"]


def edge(chain):
    return chain.design["levels.liner_edge"]


def test_a_value_that_must_go_up(hangs):
    """20 mm where 30 are wanted, looked for up to four times 20: a tenth, three tenths of the 60 mm between are 26 mm and 38 mm, which passes. Twelve halvings
    of those 12 mm make steps of 12/4096 mm, and 1366 of them are the first that reach 30. A fiftieth of 20 mm closes 0.4 of 30 mm."""
    (one,) = hangs(bore, at_least(0.030, 0.025), "pipe.bore 20 mm")
    assert (one.key, one.up, one.now) == ("pipe.bore", True, pytest.approx(0.020))
    assert one.enough == pytest.approx(0.026 + 1366 * 0.012 / 4096, abs=1e-12) and one.weight == pytest.approx(0.0004 / 0.030)


def test_a_value_that_must_go_down(hangs):
    """40 mm where 30 are the most, down to a quarter of 40: 37, 31 and 22 mm; 456 steps of 9/4096 mm down from 31."""
    (one,) = hangs(bore, at_most(0.030, 0.035), "pipe.bore 40 mm")
    assert (one.up, one.now) == (False, pytest.approx(0.040)) and one.enough == pytest.approx(0.031 - 456 * 0.009 / 4096, abs=1e-12)
    assert one.weight == pytest.approx(0.0100 / 0.0400 - 0.0092 / 0.0392)  # as shares of the largest of the number and its limits


def test_what_passes_at_the_first_look_is_looked_for_from_where_it_stands(hangs):
    """29 mm: a tenth of the way to 116 mm is 37.7 and passes; 471 steps of 8.7/4096 mm make the missing one."""
    (one,) = hangs(bore, at_least(0.030, 0.025), "pipe.bore 29 mm")
    assert one.enough == pytest.approx(0.029 + math.ceil(0.001 / (0.0087 / 4096)) * 0.0087 / 4096, abs=1e-12)


def test_a_level_at_nought_is_looked_for_a_metre_either_way(hangs):
    """A tenth of a metre is the first look; 10 mm are tried."""
    (up,), (down,) = hangs(edge, at_least(0.050, 0.020), "levels.liner_edge 0 mm"), hangs(edge, at_most(-0.050, -0.020), "levels.liner_edge 0 mm")
    assert (up.up, down.up) == (True, False) and up.enough == pytest.approx(0.1 * 2048 / 4096, abs=1e-12) and down.enough == pytest.approx(-0.05, abs=1e-12)
    assert up.weight == pytest.approx(0.01 / 0.05)


def test_a_level_under_nought_goes_up_towards_it_and_down_away_from_it(hangs):
    """-80 mm: up as far as -20 mm, past -74, -62 and -44; down as far as -320, past -104."""
    (up,), (down,) = hangs(edge, at_least(-0.050, -0.060), "levels.liner_edge -80 mm"), hangs(edge, at_most(-0.100, -0.090), "levels.liner_edge -80 mm")
    assert (up.up, down.up) == (True, False)
    assert up.enough == pytest.approx(-0.062 + math.ceil(0.012 / (0.018 / 4096)) * 0.018 / 4096, abs=1e-12)
    assert down.enough == pytest.approx(-0.080 - math.ceil(0.020 / (0.024 / 4096)) * 0.024 / 4096, abs=1e-12)


def test_what_no_value_within_reach_mends_has_no_value_that_would_do(hangs):
    (one,) = hangs(bore, at_least(0.090, 0.085), "pipe.bore 20 mm")  # 80 mm is as far as is looked
    assert one.up and one.enough is None
    (one,) = hangs(bore, at_least(0.080, 0.070), "pipe.bore 20 mm")
    assert one.enough == pytest.approx(0.080, abs=1e-9)
    (one,) = hangs(bore, at_least(0.190, 0.170), "pipe.bore 60 mm")  # over 160 mm no hose is sold: what can hardly be is no remedy
    assert one.enough is None


def test_what_passes_hangs_on_what_would_move_it_and_needs_nothing(hangs):
    (one,) = hangs(bore, at_least(0.030, 0.025), "pipe.bore 40 mm")
    assert one.up and one.enough is None and one.weight == pytest.approx(0.0108 / 0.0408 - 0.0100 / 0.0400)


def test_a_number_inside_two_limits_goes_away_from_the_nearer(hangs):
    (low,), (high,) = (hangs(bore, between((0.030, 0.060), (0.020, 0.080)), f"pipe.bore {mm} mm") for mm in (33, 57))
    assert low.up and not high.up


def test_the_value_that_moves_it_most_comes_first_and_six_at_most(hangs):
    def several(chain):
        d = chain.design
        return d["pipe.bore"] + 2 * d["vessel.height"] + 3 * d["slab.length"] + d["slab.width"] + d["slab.thickness"] + d["pump.strainer"] + d["pump.solids"]

    values = "pipe.bore 20 mm; vessel.height 20 mm; slab.length 20 mm; slab.width 20 mm; slab.thickness 20 mm; pump.strainer 20 mm; pump.solids 20 mm"
    assert [one.key for one in hangs(several, at_least(2.0, 1.0), values)] == [
        "slab.length",
        "vessel.height",
        "pipe.bore",
        "pump.solids",
        "pump.strainer",
        "slab.thickness",
    ]


def test_what_is_found_out_or_belongs_to_no_choice_is_not_moved(hangs):
    def of(*keys):
        return lambda chain: sum(chain.design[key] for key in keys)

    assert hangs(of("site.soil_bearing"), at_least(1e9, 1e9), "site.soil_bearing 70 kPa") == []
    assert hangs(of("reservoir.void_fraction"), at_least(2.0, 2.0), "reservoir.void_fraction 95 %") == []
    (money,) = hangs(of("site.budget"), at_least(2000.0, 1500.0), "site.budget 1000 cur")
    assert money.key == "site.budget" and money.enough == pytest.approx(2000.0, rel=1e-3)
    assert hangs(lambda chain: 1.0 if chain.design["pump.cut_out"] == "yes" else 0.0, at_least(1.0, 1.0), "pump.cut_out no") == []  # a word is no number


def test_a_value_that_moves_nothing_is_left_out(hangs):
    assert hangs(lambda chain: 0 * bore(chain) + 1.0, at_least(2.0, 1.5), "pipe.bore 20 mm") == []
    assert hangs(lambda chain: 1e-12 * bore(chain) + 1.0, at_least(2.0, 1.5), "pipe.bore 20 mm") == []


def test_nothing_goes_below_nought_that_cannot(hangs):
    """10 mm are tried about nought; a bore cannot shrink from there, a level can."""
    assert hangs(lambda chain: chain.design["reservoir.cover"], at_most(-1.0, -0.5), "reservoir.cover 0 mm") == []
    row = SimpleNamespace(grade=lambda chain: "graded")
    values = (("reservoir.cover", 0.0), ("reservoir.cover", -0.001), ("levels.soil", -0.001), ("reservoir.blocks_along", 1.0), ("reservoir.blocks_along", 0.9))
    assert [hanging._grade(design(VESSEL, "reservoir.cover 1 mm; levels.soil 1 mm; reservoir.blocks_along 2"), row, key, value) for key, value in values] == [
        "graded",
        None,
        "graded",
        "graded",
        None,
    ]


def test_several_values_go_together_in_one_share(hangs):
    """The wider of 300 and 400 mm stands for both; the narrower is wanted at 360, so that the wider comes to 480."""
    (one,) = hangs(lambda chain: min(chain.design["stones.diameters"]), at_least(0.360, 0.330), "stones.diameters 300 mm, 400 mm", DRILLED)
    assert one.now == pytest.approx(0.4) and one.up and one.enough == pytest.approx(0.480, abs=1e-4)


def test_a_check_for_other_kinds_or_of_no_name_hangs_on_nothing(hangs):
    assert (
        hangs(bore, at_least(0.030, 0.025), "pipe.bore 20 mm", kinds=(DRILLED,)) == []
        and len(hangs(bore, at_least(0.030, 0.025), "pipe.bore 20 mm", kinds=(VESSEL,))) == 1
    )
    assert list(hangs_on(blank_design(VESSEL, "A test"), "X2")) == []


def test_an_answer_hangs_on_nothing(monkeypatch):
    question = next(one for one in QUESTIONS if one.id == "C11")
    monkeypatch.setattr(hanging, "CHECKS", (answered_check(question),))
    made = blank_design(VESSEL, "A test").having(f"answers.{question.key}", question.options[2])
    assert list(hangs_on(made, "C11")) == []


def test_what_waits_for_a_value_hangs_on_no_other(hangs):
    """A bore of 20.4 mm would give it a number, but one that fails: nobody is helped by that."""

    def needed(chain):
        if bore(chain) < 0.0203:
            raise Unknown("pipe.length")
        return 1.0

    assert hangs(needed, at_least(2.0, 1.5), "pipe.bore 20 mm") == []


def test_what_cannot_be_worked_out_comes_after_what_fails(hangs):
    """It is twenty away, and a number of 1 where 2 are wanted half: the way out of it is the better one. And nobody goes from a number to what is not known."""

    def worked(chain):
        if bore(chain) < 0.0203:
            raise InputError("too narrow")
        return 1.0

    (one,) = hangs(worked, at_least(2.0, 1.5), "pipe.bore 20 mm")
    assert one.up and one.weight == pytest.approx(20.0 - 0.5) and one.enough is None
    assert hangs(lambda chain: bore(chain) if bore(chain) <= 0.020 else chain.design["pipe.length"], at_least(0.030, 0.025), "pipe.bore 20 mm") == []


def test_a_count_goes_by_one_and_to_the_next_whole_one(hangs):
    """2 blocks where 5 are wanted: one more closes a fifth of the way, which counts as a fiftieth of 2 does. From 8 down to 3. One block is the least."""

    def row(chain):
        return float(chain.design["reservoir.blocks_along"])

    (more,), (fewer,) = hangs(row, at_least(5.0, 4.0), "reservoir.blocks_along 2"), hangs(row, at_most(3.0, 4.0), "reservoir.blocks_along 8")
    assert (more.up, more.now, more.enough, more.weight) == (True, 2, 5.0, pytest.approx((1 / 5) * 0.04))
    assert (fewer.up, fewer.now, fewer.enough) == (False, 8, 3.0)
    assert hangs(row, at_most(0.5, 0.5), "reservoir.blocks_along 1") == [] and len(hangs(row, at_most(0.5, 0.5), "reservoir.blocks_along 2")) == 1


def test_either_way_may_be_as_good_and_then_it_is_up(hangs):
    (one,) = hangs(lambda chain: abs(edge(chain)), at_least(0.050, 0.040), "levels.liner_edge 0 mm")
    assert one.up


def test_a_gain_of_less_than_a_thousand_millionth_is_none(hangs):
    """A fiftieth of 20 mm is 0.0004 of a metre: of a number of one metre and some of them."""
    assert [len(hangs(lambda chain, part=part: part * bore(chain) + 1.0, at_least(2.0, 1.5), "pipe.bore 20 mm")) for part in (1.5e-6, 5e-6)] == [0, 1]


@pytest.mark.parametrize(
    ("grade", "number", "limits", "away"),
    [
        ("fail", None, at_most(1, 2), 20.0), ("marginal", None, at_most(1, 2), 10.0), ("pass", None, None, 0.0), ("not shown", None, None, 30.0), ("fail", math.inf, at_most(1, 2), 20.0),
        ("fail", 3.0, None, 20.0), ("fail", 3.0, at_most(1.0, 2.0), 2 / 3), ("fail", 0.5, at_least(2.0, 1.0), 0.75), ("pass", 1.5, between((1, 2), (0, 3)), -0.25),
        ("pass", 1.2, between((1, 2), (0, 3)), -0.1), ("pass", -50.0, at_most(1.0, 2.0), -1.0), ("fail", 0.0, at_most(0.0, 0.0), 0.0), ("fail", 0.5, at_most(-math.inf, 1.0), math.inf),
        ("fail", -3.0, at_least(-1.0, -2.0), 2 / 3),
    ],
)  # fmt: skip
def test_how_far_a_finding_is_from_passing(grade, number, limits, away):
    found = Finding("X1", "water", "A number", grade, "", "", "", "", number=number, limits=limits)
    assert hanging._distance(found) == pytest.approx(away) and hanging._distance(None) == math.inf
