"""What is missing is asked for in words that stand alone; two running levels of one design are both named; counts and days agree with their words."""

import datetime
import re
from pathlib import Path

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.judged import checks
from brimwork.design.judged.computed_checks import COMPUTED
from brimwork.design.judged.findings import Finding, next_words, tally
from brimwork.design.typed.design import blank_design
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.file import load_design
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.limits import Limits
from brimwork.design.typed.questions import QUESTIONS
from brimwork.drawing.running import start_and_stop_chart
from brimwork.drawing.water import reservoir_bars
from brimwork.pack.document import document

BOWL = load_design(Path(__file__).parents[1] / "workbooks" / "designs" / "library-bowl.toml")


def finding(design, check):
    return next(one for one in checks.findings(chain_of(design)) if one.id == check)


def test_no_value_is_named_after_another_that_the_reader_may_not_see():
    pointing = re.compile(r"\b(that (footing|wheel|foot|device|leg)|its (stem|route|wall|material|middle|ends)|\bof one leg$|level there)\b")
    assert not [field.name for fields in SECTIONS.values() for field in fields.values() if pointing.search(field.name)]
    names = [SECTIONS[section][key].name for section, key in (("site", "footing_depth"), ("site", "tree_stem"), ("supply", "cord_route"))]
    assert names == ["depth of the nearest footing", "diameter of the stem of the nearest tree, 1.5 m up", "length of the route of the pump's cord"]


@pytest.mark.parametrize("kind", KINDS)
def test_a_question_that_nobody_answered_says_what_can_be_answered(kind):
    found = {one.id: one for one in checks.findings(chain_of(blank_design(kind, "Nothing yet")))}
    for question in QUESTIONS:
        one = found[question.id]
        if one.grade == "not shown" and question.id not in COMPUTED:
            assert question.title.lower() not in one.value.lower() and all(f'"{option}"' in one.value for option in question.options)
    assert found["C41"].value == 'needs a word, one of "tested by instrument", "tested by button" or "none"'


def test_what_to_find_out_next_calls_an_answer_an_answer():
    waiting = [Finding("C15", "reservoir", "Rain has a way out", "not shown", "", "", "", "", needs=("answers.rain_route",))]
    assert next_words(waiting) == 'To find out next: the answer to "rain has a way out" (1 check waits).'


def test_how_many_findings_have_a_grade_is_said_in_the_number_of_its_verb():
    one = Finding("C1", "water", "One", "does not apply", "", "", "", "")
    assert tally([one]) == "1 does not apply" and tally([one] * 8) == "8 do not apply"


def test_days_are_counted_in_words_and_a_marginal_limit_that_equals_the_passing_one_is_left_out():
    assert finding(BOWL, "C12").limit == "from 7 days; near it from 3 days" and finding(BOWL, "C12").value.endswith(" days")
    assert finding(BOWL.having("site.unattended", "7 day"), "C12").limit == "from 7 days"
    assert finding(BOWL.having("site.unattended", "1e6 s"), "C12").limit.startswith("from 11.57")
    assert Limits((86400, float("inf")), (43200, float("inf"))).text("day") == "from 1 day; near it from 0.5 days"


def test_a_limit_of_nothing_and_one_below_nothing_are_told_as_they_are():
    """The cord may be 0.3 m short and be marginal: that is not "above 0"."""
    assert checks.numbered("C47").criterion.limits.text("m") == "from 0 m; near it from -0.3 m"
    assert checks.numbered("C57").criterion.limits.text("mm") == "from 20 mm; near it above 0"


def test_the_room_up_to_the_overflow_is_worked_by_a_formula_of_its_own():
    """By hand: 4 blocks of 0.6 by 0.4 m, 0.95 of them empty, from 372 mm up to 400 mm: 0.96 x 0.95 x 0.028 m3 = 25.5 L."""
    worked = chain_of(BOWL).working("drainback_room")
    assert worked.formula.name == "room from the running level up to the overflow" and worked.result == pytest.approx(0.96 * 0.95 * 0.028)


@pytest.mark.parametrize(("region", "said"), [("UK", ("372 mm", "368 mm")), ("US", ("14 5/8 in", "14 1/2 in"))])
def test_where_two_running_levels_are_shown_both_are_named(region, said, tmp_path):
    """By hand: 11.1 L go up, 12.2 mm over 0.912 m2, from 380 mm."""
    chain = chain_of(BOWL.headed("region", region))
    sentence = f"Running level above the floor: given {said[0]}; from static level and start drop {said[1]}."
    assert sentence in reservoir_bars(chain).description and sentence in start_and_stop_chart(chain).description
    assert document(chain.design, datetime.date(2027, 2, 20), tmp_path).count(sentence) >= 3
    near = chain_of(BOWL.headed("region", region).having("reservoir.running_level", "369 mm"))
    assert "Running level" not in reservoir_bars(near).description + start_and_stop_chart(near).description
    assert not near.two_running_levels and not finding(near.design, "C14").note


def test_levels_are_one_within_what_is_set_on_site():
    """3 mm, to which overflow and blocks are set: common practice."""
    settled = 0.380 - chain_of(BOWL).start_drop
    for apart, two in ((2.9, False), (3.1, True), (-2.9, False), (-3.1, True)):
        assert bool(chain_of(BOWL.having("reservoir.running_level", f"{settled * 1e3 + apart:.6f} mm")).two_running_levels) == two


def test_the_pack_counts_days_in_words(tmp_path):
    for region in ("UK", "US"):
        text = document(BOWL.headed("region", region), datetime.date(2027, 2, 20), tmp_path)
        said = re.sub(r'alt: "[^"]*"', "", text.split("What this design rests on")[0])  # in a working day is a unit, as m is
        assert "15.3 days" in said and not re.search(r"\d day\b(?! )", said)


@pytest.mark.parametrize("name", ["library-bowl", "school-columns", "terrace-blade", "garden-cascade"])
def test_a_chain_that_supposes_values_asks_no_other_chain(name):
    """What was worked out is kept; what would ask the first chain, which lacks the values, is made again."""
    chain = chain_of(load_design(Path(__file__).parents[1] / "workbooks" / "designs" / f"{name}.toml"))
    checks.findings(chain)
    other = chain.supposing(chain.design.having("catch.stone_density", "1600 kg/m3"))
    assert other._worked and other._worked is not chain._worked
    assert not [kept for kept in vars(other).values() if kept is chain or getattr(kept, "chain", None) is chain or hasattr(kept, "working")]
    assert other.geometry.chain is other and other.coming is not chain.coming


@pytest.mark.parametrize(
    ("changes", "check", "said"),
    [
        ({"reservoir.lowest_level": "379 mm", "pipe.mouth_below_rim": "400 mm"}, "C12", ("usable water", "must be more than", "water in transit")),
        ({"flow.weir_coefficient": "0 m^0.5/s"}, "C06", ("weir coefficient", "nothing")),
        ({"site.soil_bearing": "0 kPa"}, "C24", ("bearing pressure", "nothing")),
    ],
)
def test_what_has_no_value_is_told_without_letters(changes, check, said):
    design = BOWL
    for key, text in changes.items():
        design = design.having(key, text)
    found = next(one for one in checks.findings(chain_of(design)) if one.id == check and one.grade == "fail")
    assert all(words in found.note for words in said) and "has no value" not in found.note and not re.search(r"\b[A-Za-z]+_[A-Za-z]+\b", found.note), found.note
