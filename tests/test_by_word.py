"""What was done about a fail and no number shows, lists out of step, and whom to ask: nothing passes on a word, nothing is said twenty times."""

from pathlib import Path

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.judged.checks import CHECKS, findings
from brimwork.design.judged.grading import Check
from brimwork.design.typed import file
from brimwork.design.typed.fields import SECTIONS, sections
from brimwork.design.typed.ground_fields import PLANNED
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.starting import followed_up, started
from brimwork.design.typed.uneven import uneven
from brimwork.design.typed.whom import _OF, BY_ELECTRICIAN, ENGINEER, MAKER, YOU, whom, whom_of
from brimwork.pack.electrician import electrician
from brimwork.pack.results import _on_paper

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"
BOWL, COLUMNS, BLADE, CASCADE = (file.load_design(DESIGNS / f"{name}.toml") for name in ("library-bowl", "school-columns", "terrace-blade", "garden-cascade"))
ENGINEERED, CUT = "site.engineered", "reservoir.cut_walls"


def having(design, **changes):
    for key, text in changes.items():
        design = design.having(key.replace("__", "."), text)
    return design


def finding(design, check_id):
    return next(one for one in findings(chain_of(design)) if one.id == check_id and one.grade != "does not apply")


TIPS = {
    "C25": having(COLUMNS, stones__diameters=["120 mm"] * 3, stones__stand_on="blocks"),
    "C25e": having(BOWL, vessel__mass="3 kg"),
    "C26": having(BOWL, site__wind_speed="60 m/s", site__force_coefficient=1.4),
    "C62": having(BLADE, blade__wall_height="1500 mm"),
    "C21": having(BOWL, lining__panel_clearance="10 mm"),
}


@pytest.mark.parametrize("check", TIPS)
def test_what_an_engineer_designed_is_partly_met_by_that_word_and_never_passes(check):
    key, others = (CUT, ENGINEERED) if check == "C21" else (ENGINEERED, CUT)
    design = TIPS[check]
    before = finding(design, check)
    assert before.grade == "fail" and key in before.remedy, before
    assert [finding(design.having(key, "no"), check).grade, finding(design.having(others, "yes"), check).grade] == ["fail", "fail"]
    after = finding(design.having(key, "yes"), check)
    assert after.grade == "marginal" and "by your answer" in after.note and after.number == before.number


@pytest.mark.parametrize("kind", KINDS)
def test_nobody_is_given_such_a_word(kind):
    assert not {ENGINEERED, CUT, "site.slings"} & set(started(kind, "UK").values)


def test_no_word_lets_a_check_pass():
    """For every check with such a word, in every example: with all words given nothing passes that did not pass before."""
    assert {check.id for check in CHECKS if isinstance(check, Check) and check.word} == {"C25", "C25e", "C26", "C21", "C48", "C62"}
    for design in (BOWL, COLUMNS, BLADE, CASCADE, *TIPS.values()):
        passed = {(one.id, one.title) for one in findings(chain_of(design)) if one.grade == "pass"}
        said = design.having(ENGINEERED, "yes").having(CUT, "yes").having("site.slings", PLANNED)
        assert {(one.id, one.title) for one in findings(chain_of(said)) if one.grade == "pass"} <= passed


def test_what_falls_by_itself_is_held_by_no_word():
    design = having(BOWL, vessel__offset="900 mm", site__engineered="yes")
    assert finding(design, "C25").grade == "fail"


def test_wind_is_answered_by_its_speed_or_by_an_engineer():
    silent = BOWL.having("site.wind_speed", None)
    assert finding(silent, "C26").needs[-1] == ENGINEERED
    assert finding(silent.having(ENGINEERED, "yes"), "C26").grade == "marginal"


def test_a_stone_says_how_much_of_its_base_counts():
    assert "80.0 % of a stone's width counts as its base" in finding(COLUMNS.having("stones.base_share", 0.8, "judgement"), "C25").note


def test_without_slings_nothing_of_them_is_asked_and_what_is_heavy_is_lifted_by_hand():
    silent = having(BOWL, site__lift_mass="15 kg", site__lift_reach="300 mm", site__lift_height="700 mm", site__lift_travel="500 mm", site__slings=None)
    for key in ("mass", "legs", "angle", "rating"):
        silent = silent.having(f"site.sling_{key}", None)
    assert finding(silent, "C65").needs == ("site.slings",)
    bare = silent.having("site.slings", "not used, and not planned yet")
    slings = next(one for one in findings(chain_of(bare)) if one.id == "C65")
    assert slings.grade == "does not apply" and "no slings are used" in slings.note
    by_hand = finding(bare.having("vessel.mass", "120 kg"), "C48")
    assert by_hand.grade == "fail" and chain_of(bare.having("vessel.mass", "120 kg")).counted("site.lift_mass") >= 120
    assert finding(silent.having("vessel.mass", "120 kg").having("site.slings", PLANNED), "C48").grade == "marginal"


def test_lists_out_of_step_are_said_once_at_their_box_and_the_rest_waits():
    three = having(COLUMNS, stones__heights=["36 in", "28 in"], stones__branch_lengths=["6 ft", "6 ft", "6 ft"])
    assert uneven(three) == {"stones.heights": "three stones are given by their diameters, and two here: give three"}
    found = findings(chain_of(three))
    failed = [one for one in found if one.grade == "fail" and (one.note + one.value).count("stones")]
    assert [one.id for one in failed] == ["stones.heights uneven"] and not [one for one in found if one.value == "cannot be worked out"]
    waiting = [one for one in found if one.grade == "not shown" and "stones.heights" in one.needs]
    assert len(waiting) > 10
    assert not uneven(COLUMNS) and not uneven(BOWL) and uneven(having(COLUMNS, stones__places_along=["0 in"])).keys() == {"stones.places_along"}


def test_whom_to_ask_names_keys_that_there_are():
    for keys in _OF.values():
        for key in keys:
            section, _, name = key.partition(".")
            assert section in SECTIONS and (not name or name in SECTIONS[section]), key
    assert [whom(key) for key in ("supply.breaker", "pump.power", "site.wind_speed", "vessel.mass")] == [BY_ELECTRICIAN, MAKER, ENGINEER, YOU]
    assert whom_of(("vessel.mass", "supply.leakage")) == BY_ELECTRICIAN and whom_of(()) == YOU


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("region", ["UK", "US"])
def test_the_sheet_for_the_electrician_asks_all_that_is_asked_of_one_and_answers_nothing(kind, region):
    page = electrician(started(kind, region))
    asked = [f"{section}.{name}" for section, fields in sections(kind).items() for name in fields if whom(f"{section}.{name}") == BY_ELECTRICIAN]
    assert len(asked) >= 15 and page.count("ring one: ") >= 4
    assert ("A licensed" if region == "US" else "A qualified") in page and "Name, date, signature" in page


def test_stones_of_which_only_the_diameters_are_known_wait_for_their_heights():
    only = started("drilled stones", "US").having("stones.diameters", ["14 in", "12 in", "10 in"])
    found = findings(chain_of(followed_up(started("drilled stones", "US"), only)))
    assert [one for one in found if one.grade == "not shown" and "stones.heights" in one.needs]


def test_a_wall_that_holds_something_back_is_an_engineers_whatever_it_weighs():
    wall = having(BLADE, blade__wall_retains="soil")
    assert finding(wall, "C25").grade == "fail" and ENGINEERED in finding(wall, "C25").remedy
    assert finding(wall.having(ENGINEERED, "yes"), "C25").grade == "marginal"


def test_a_mass_on_slings_counts_although_somebody_says_that_none_are_used():
    heavy = BOWL.having("site.sling_mass", "600 kg").having("site.sling_legs", "2").having("site.sling_angle", "60 deg").having("site.sling_rating", "2 kN")
    for word in (PLANNED, "not used, and not planned yet"):
        told = finding(heavy.having("site.slings", word), "C65")
        assert told.grade == "fail" and "a mass on them is on file" in told.note


def test_on_paper_a_remedy_does_not_ask_to_press_something():
    remedies = {finding(design, check).remedy for check, design in TIPS.items()} | {finding(BLADE, "C25").remedy}
    assert len(remedies) > 3 and all("say so" in remedy for remedy in remedies)
    assert not any("say so" in _on_paper(remedy) or len(_on_paper(remedy)) < 8 for remedy in remedies)
