"""From a dozen answers to a design: usual values make sense, follow the answers, are never somebody's own, and pass no check of safety that a person must answer."""

import datetime
import re

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.judged.checks import findings
from brimwork.design.judged.findings import graded, keyless
from brimwork.design.typed.criteria import is_safety
from brimwork.design.typed.fields import SECTIONS, sections
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.reading import OneOf
from brimwork.design.typed.starting import ALSO_SHORT, ASKED_FIRST, BUILDERS_WORDS, emptied, followed_up, is_usual, started, turned_to
from brimwork.drawing.section import section
from brimwork.notebook.opened import OpenDesign
from brimwork.notebook.page_parts import findings_part, tally_part
from brimwork.pack.results import summary_printed

_BLOCK = {"reservoir.block_length": "600 mm", "reservoir.block_width": "400 mm", "reservoir.block_height": "420 mm"}
_PUMP = {"pump.maximum_flow": "120 L/min", "pump.shut_off_head": "4 m", "pump.power": "120 W", "pipe.bore": "40 mm"}
_SITE = {"site.use": "private", "site.bed_length": "3 m", "site.bed_width": "2.4 m"}
ANSWERS = {
    "overflowing vessel": {
        "vessel.rim_diameter": "560 mm", "vessel.height": "500 mm", "vessel.mass": "60 kg", "vessel.water": "70 L", "vessel.foot_outside": "360 mm",
    },
    "drilled stones": {"stones.diameters": ["300 mm"], "stones.heights": ["700 mm"]},
    "blade": {"blade.lip_width": "600 mm", "blade.lip_level": "450 mm", "blade.wall_height": "450 mm", "blade.wall_retains": "nothing"},
    "cascade": {
        "cascade.steps": 3, "cascade.width": "500 mm", "cascade.step_fall": "150 mm", "cascade.tread": "450 mm", "cascade.top_level": "600 mm",
        "cascade.header_volume": "20 L", "cascade.rill_length": "2 m",
    },
}  # fmt: skip


def answered(kind, region="UK", **more):
    design = started(kind, region)
    for key, text in (_SITE | ANSWERS[kind] | _BLOCK | _PUMP | more).items():
        design = followed_up(design, design.having(key, text))
    return design


@pytest.mark.parametrize("region", ["UK", "US"])
@pytest.mark.parametrize("kind", KINDS)
def test_about_a_dozen_answers_make_a_design_that_is_drawn(kind, region):
    design = answered(kind, region)
    places = {f"{section}.{name}" for section, fields in sections(kind).items() for name in fields}
    assert set(design.values) <= places and {*ASKED_FIRST[kind], *ALSO_SHORT[kind]} <= places
    assert {key for key, given in design.values.items() if given.basis == "yours"} == set(ASKED_FIRST[kind])
    assert section(chain_of(design)).views and all(chain_of(design).working(name) for name in ("flow_wanted", "duty_flow", "static_volume", "days"))
    assert all(is_usual(design, key) for key in design.values if key not in ASKED_FIRST[kind])


@pytest.mark.parametrize("kind", KINDS)
def test_every_first_question_has_a_builders_words(kind):
    assert all(key in BUILDERS_WORDS for key in (*ASKED_FIRST[kind], *ALSO_SHORT[kind]))


@pytest.mark.parametrize("kind", KINDS)
def test_no_check_of_safety_passes_on_a_word_that_nobody_answered(kind):
    """Each word that a start fills in is taken out again: a check of safety that passed must pass without it, but for how the thing is built."""
    design = answered(kind)
    built = {"vessel.stands_on", "stones.stand_on", "stones.valves", "blade.feed", "cascade.feed", "pipe.friction_law", "pipe.check_valve"}
    words = {key for key in design.values if isinstance(SECTIONS[key.partition(".")[0]][key.partition(".")[2]], OneOf)} - set(ASKED_FIRST[kind])
    assert words <= built
    passed = {one.id for one in findings(chain_of(design)) if one.grade == "pass" and is_safety(one.id, one.group)}
    assert not passed & {"C20", "C24", "C32", "C35", "C41", "C42", "C51", "C52", "C53", "C54", "C46", "C46e", "C26"}, passed
    for section_ in ("site", "answers", "supply", "measured"):
        fills = {key for key in design.values if key.startswith(f"{section_}.")} - set(ASKED_FIRST[kind])
        assert fills <= {"supply.voltage", "supply.power_factor", "supply.hours_per_day"}, fills


def test_usual_values_follow_the_answers_and_leave_alone_what_is_somebodys_own():
    design = answered("overflowing vessel")
    assert design.values["reservoir.static_level"].text == "380 mm" and design.values["slab.length"].text == "600 mm"
    higher = followed_up(design, design.having("reservoir.block_height", "500 mm"))
    assert higher.values["reservoir.static_level"].text == "460 mm" and higher.values["reservoir.static_level"].basis != "yours"
    mine = followed_up(design, design.having("reservoir.static_level", "370 mm"))
    assert followed_up(mine, mine.having("reservoir.block_height", "500 mm")).values["reservoir.static_level"].text == "370 mm"
    without = followed_up(design, design.having("slab.length", None))
    assert "slab.length" not in without.values
    assert "slab.length" not in followed_up(without, without.having("reservoir.block_length", "700 mm")).values, "what was emptied stays empty"


def test_the_stone_takes_what_the_bed_leaves():
    """600 + 2 (12 + 10) mm of box in 1.5 m of bed leave 428 mm on each side; 400 + 44 in 1.2 m leave 378."""
    design = answered("overflowing vessel", **{"site.bed_length": "1.5 m", "site.bed_width": "1.2 m"})
    assert design.values["catch.apron"].text == "370 mm"
    assert not [one for one in findings(chain_of(design)) if one.id.startswith("site.bed")]
    wide = followed_up(design, design.having("site.bed_length", "1 m"))
    assert wide.values["catch.apron"].text == "170 mm"


def test_another_region_brings_its_usual_values_and_keeps_the_answers():
    design = answered("overflowing vessel")
    there = turned_to(design, "US")
    assert there["vessel.mass"] == 60 and there["supply.voltage"] == 120 and there.values["slab.thickness"].text == "2 in"
    assert {key for key, given in there.values.items() if given.basis == "yours"} == {key for key, given in design.values.items() if given.basis == "yours"}


@pytest.mark.parametrize("region", ["UK", "US"])
@pytest.mark.parametrize("kind", KINDS)
def test_a_box_that_is_emptied_and_filled_again_leaves_no_usual_value_of_before(kind, region):
    """Whatever way an answer was come by, the same answers make the same design: typed at once, typed wrong first, or emptied in between."""
    straight = answered(kind, region)
    for key, text in (_SITE | ANSWERS[kind] | _BLOCK | _PUMP).items():
        round_about = straight
        for words in (_other(straight, key), None, text):
            round_about = followed_up(round_about, round_about.having(key, words))
        assert round_about.values == straight.values, key


def _other(design, key):
    """Another value that the box takes."""
    text = design.values[key].text
    field = SECTIONS[key.partition(".")[0]][key.partition(".")[2]]
    if isinstance(field, OneOf):
        return next(option for option in field.options if option != text)
    return [re.sub(r"^[\d.]+", "97", one) for one in text] if isinstance(text, list) else re.sub(r"^[\d.]+", "97", text) if isinstance(text, str) else text + 1


def test_somebodys_own_value_that_is_emptied_gives_way_to_the_usual_one_and_that_one_to_nothing():
    design = answered("overflowing vessel", "UK")
    mine = followed_up(design, design.having("slab.length", "450 mm"))
    usual = emptied(mine, "slab.length")
    assert usual.values["slab.length"] == design.values["slab.length"] and is_usual(usual, "slab.length")
    assert "slab.length" not in emptied(usual, "slab.length").values
    assert "vessel.mass" not in emptied(design, "vessel.mass").values, "what only the maker can say has no usual value"


def test_a_usual_slab_never_reaches_over_the_blocks_in_whatever_units():
    """A block of 400 mm is 15.748 in: a slab of 15.75 in would hang over it by a fortieth of a millimetre."""
    design = answered("overflowing vessel", "UK", **{"reservoir.block_width": "400 mm"})
    assert design.values["slab.width"].text == "400 mm" and turned_to(design, "US").values["slab.width"].text == "15.5 in"
    assert answered("overflowing vessel", "UK", **{"reservoir.block_width": "385 mm"}).values["slab.width"].text == "380 mm"


@pytest.mark.parametrize("kind", KINDS)
def test_every_unanswered_check_of_safety_stands_on_page_one_and_on_the_page_beside_those_that_fail(kind, tmp_path):
    """All of them by name, however many: in the summary that is printed first, and among the findings and in the count on top of the page."""
    design = answered(kind)
    found = [keyless(one) for one in graded(findings(chain_of(design)), "UK")]
    waiting = {one.title for one in found if one.grade == "not shown" and is_safety(one.id, one.group)}
    printed = summary_printed(chain_of(design), found, datetime.date(2027, 2, 20)).partition("== Key numbers")[0]
    assert len(waiting) > 15 and f"{len(waiting)} checks of safety are not shown yet" in printed
    assert not [title for title in waiting if title[1:] not in printed]
    opened = OpenDesign.of(design, tmp_path / "one.toml", example=True)
    shown = {one["title"] for one in findings_part(opened) if one["grade"] == "not shown" and one["safety"]}
    assert shown == waiting and tally_part(opened)["unanswered"] == len(waiting)
