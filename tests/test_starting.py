"""From a dozen answers to a design: usual values make sense, follow the answers, are never somebody's own, and pass no check of safety that a person must answer."""

import datetime
import math
import re
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from brimwork.design.follows.features import chain_of
from brimwork.design.judged.checks import findings
from brimwork.design.judged.findings import graded, keyless
from brimwork.design.typed.criteria import is_safety
from brimwork.design.typed.fields import SECTIONS, sections
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.known import Given
from brimwork.design.typed.reading import OneOf
from brimwork.design.typed.starting import (
    ALSO_SHORT,
    ASKED_FIRST,
    BUILDERS_WORDS,
    FOLLOW,
    _places,
    back_to_usual,
    followed_up,
    is_usual,
    not_as_usual,
    started,
    turned_as,
    turned_to,
)
from brimwork.drawing.section import section
from brimwork.notebook.opened import OpenDesign
from brimwork.notebook.page_parts import Listed, tally_part
from brimwork.pack.results import summary_printed
from brimwork.units import InputError

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
    assert followed_up(mine, mine.having("reservoir.static_level", None)) == design, "an emptied box takes its usual value again"
    assert followed_up(design, design.having("slab.thickness", None)) == design


def test_what_a_file_leaves_open_stays_unknown():
    design = answered("overflowing vessel")
    silent = design.having("slab.length", None).having("slab.thickness", None)
    wider = followed_up(silent, silent.having("reservoir.block_length", "700 mm"))
    assert not {"slab.length", "slab.thickness"} & set(wider.values)
    assert not {"slab.length", "slab.thickness"} & set(turned_to(silent, "US").values)
    back = back_to_usual(back_to_usual(silent, "slab.length"), "slab.thickness")
    assert back == design
    with pytest.raises(InputError, match="no usual value"):
        back_to_usual(design, "vessel.mass")


# What is typed, wrongly first and then rightly, and boxes that are left empty in between.
_TRIED = ["500 mm", "900 mm", "1200 mm", "450 mm", "20 in", "4 ft"]


@pytest.mark.parametrize("region", ["UK", "US"])
@pytest.mark.parametrize("kind", KINDS)
@settings(max_examples=40)
@given(data=st.data())
def test_no_order_of_typing_emptying_and_retyping_leaves_a_trace(kind, region, data):
    """What stands in the end is what stands when the same sizes are typed straight into a fresh design: nothing usual is left from a size that went."""
    asked = _SITE | ANSWERS[kind] | _BLOCK | _PUMP
    lengths = [
        key for key in (*asked, *FOLLOW[kind], "slab.thickness") if getattr(SECTIONS[key.partition(".")[0]].get(key.partition(".")[2]), "unit", "") == "mm"
    ]
    lengths = [key for key in lengths if key in _places(kind) or key in asked]
    design, last = started(kind, region), {}
    moves = data.draw(st.lists(st.tuples(st.sampled_from([*asked, *lengths]), st.sampled_from([None, *_TRIED, "as asked"])), max_size=25))
    for key, text in [*moves, *((key, "as asked") for key in data.draw(st.permutations(list(asked))))]:
        text = asked.get(key) if text == "as asked" else text
        if text is not None and key not in lengths:
            text = asked[key]
        elif text is not None and key in asked and isinstance(asked[key], list):
            text = asked[key]
        try:
            design = followed_up(design, design.having(key, text))
        except InputError:
            continue
        last[key] = text
    straight = started(kind, region)
    for key, text in last.items():
        if text is not None:
            straight = followed_up(straight, straight.having(key, text))
    assert design == straight


def test_a_size_typed_wrongly_emptied_and_typed_again_leaves_no_level_behind():
    """800 mm, nothing, 420 mm: the water with the pump off stands 40 mm under the top of the blocks, and the side is that of a cone 700 over 350 mm."""
    design = started("overflowing vessel", "UK")
    for key, text in (("reservoir.block_height", "800 mm"), ("reservoir.block_height", None)):
        design = followed_up(design, design.having(key, text))
    assert "reservoir.static_level" not in design.values, "nobody can tell it while nobody knows the blocks"
    design = followed_up(design, design.having("reservoir.block_height", "420 mm"))
    assert design.values["reservoir.static_level"].text == "380 mm" and design.values["reservoir.overflow_level"].text == "400 mm"
    for key, text in (("vessel.foot_outside", "350 mm"), ("vessel.height", "450 mm"), ("vessel.rim_diameter", "500 mm"), ("vessel.rim_diameter", None)):
        design = followed_up(design, design.having(key, text))
    assert "vessel.side_area" not in design.values
    design = followed_up(design, design.having("vessel.rim_diameter", "700 mm"))
    assert design["vessel.side_area"] == pytest.approx(math.pi * (0.35 + 0.175) * math.hypot(0.175, 0.45), abs=0.005)  # mantle of the cone


def test_a_number_of_an_old_file_that_no_longer_fits_is_kept_and_told():
    old = replace(answered("overflowing vessel"), values={**answered("overflowing vessel").values, "vessel.side_area": Given(0.61, "0.61 m2", "judgement")})
    assert not_as_usual(old) == ["vessel.side_area"] and not not_as_usual(answered("overflowing vessel"))
    wider = followed_up(old, old.having("vessel.rim_diameter", "700 mm"))
    assert wider.values["vessel.side_area"].text == "0.61 m2", "a number of a file is never changed behind anybody's back"
    assert is_usual(back_to_usual(wider, "vessel.side_area"), "vessel.side_area")


@pytest.mark.parametrize("kind", KINDS)
def test_taken_over_to_another_kind_it_has_the_usual_values_of_that_kind(kind):
    design = answered("overflowing vessel")
    there = turned_as(design, kind)
    assert there["reservoir.block_height"] == 0.42 and there.values["pump.power"].text == "120 W"
    assert there.values.keys() >= started(kind, "UK").values.keys()
    assert all(is_usual(there, key) for key, given in there.values.items() if given.basis != "yours")


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
    shown = {one["title"] for one in Listed().part(opened, whole=True)["found"] if one["grade"] == "not shown" and one["safety"]}
    assert shown == waiting and tally_part(opened)["unanswered"] == len(waiting)


@pytest.mark.parametrize("region", ["UK", "US"])
@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("block", [(600, 400, 420), (685, 405, 430), (400, 300, 240), (1200, 600, 500)], ids=str)
def test_usual_values_contradict_nothing(kind, region, block):
    """With a bed that has room: a finding that blames a value which nobody typed would be the first thing that a builder sees."""
    sizes = {f"reservoir.block_{side}": f"{size} mm" for side, size in zip(("length", "width", "height"), block, strict=True)}
    design = answered(
        kind,
        region,
        **sizes,
        **{"site.bed_length": "7 m", "site.bed_width": "3 m", "reservoir.blocks_along": 2, "reservoir.blocks_across": -(-1200 // block[1])},
    )
    assert [finding.value for finding in findings(chain_of(design)) if "contradict" in finding.group] == []


def test_usual_values_that_follow_worked_by_hand():
    """600 x 400 x 420 mm of which 5 % is plastic of 1000 kg/m3: 5.04 kg; the catch of one such block with 600 mm of stone round box and lining."""
    bowl = answered("overflowing vessel")
    assert bowl.values["reservoir.block_mass"].text == "5 kg"
    assert float(bowl.values["catch.wet_area"].text.removesuffix(" m2")) == 0.9 < (0.600 + 0.044 + 1.2) * (0.400 + 0.044 + 1.2) / 3
    narrow = answered("overflowing vessel", **{"site.bed_length": "784 mm", "site.bed_width": "584 mm"})
    assert (
        narrow.values["catch.apron"].text == "70 mm" and narrow.values["catch.wet_area"].text == f"{(0.600 + 0.044 + 0.14) * (0.400 + 0.044 + 0.14) / 3:.3f} m2"
    )
    assert answered("blade", "US", **{"blade.lip_width": "604 mm"}).values["blade.trough_length"].text == "24 in"


def test_stones_have_as_many_blocks_as_they_need_beside_each_other():
    """Three slabs of 400 mm (16 in, 1219 mm in all) on blocks of 600 mm; three stones of 300 mm on the blocks themselves."""
    three = {"stones.diameters": ["300 mm"] * 3, "stones.heights": ["700 mm"] * 3}
    assert answered("drilled stones", **three)["reservoir.blocks_along"] == 2
    assert answered("drilled stones", "US", **three)["reservoir.blocks_along"] == 3
    assert answered("drilled stones", **three, **{"stones.stand_on": "blocks"})["reservoir.blocks_along"] == 2
    assert answered("drilled stones", **three, **{"reservoir.blocks_along": 4})["reservoir.blocks_along"] == 4
    assert not [finding.value for finding in findings(chain_of(answered("drilled stones", **three))) if "contradict" in finding.group]


def test_blocks_are_as_many_rows_as_the_bay_needs_beside_the_falling_water():
    """A lip or steps of 600 mm, and a bay of 200 mm in a corner: 600 + 2 x 200 mm, on blocks of 400 mm three rows; with a rill of 200 mm at the end two."""
    assert answered("blade", **{"blade.lip_width": "600 mm"})["reservoir.blocks_across"] == 3
    steps = {"cascade.width": "600 mm", "cascade.rill_width": "200 mm"}
    assert answered("cascade", **steps, **{"cascade.rill_length": "0 m"})["reservoir.blocks_across"] == 3
    assert answered("cascade", **steps, **{"cascade.rill_length": "1 m"})["reservoir.blocks_across"] == 2
    for kind in ("blade", "cascade"):
        design = answered(kind, **{"site.bed_length": "7 m", "site.bed_width": "3 m"})
        assert [finding.value for finding in findings(chain_of(design)) if "contradict" in finding.group] == []


def test_as_many_questions_are_asked_first_as_the_pages_say():
    counts = [len(keys) for keys in ASKED_FIRST.values()]
    assert (min(counts), max(counts)) == (12, 17)
    for page in ("README.md", "workbooks/design.ipynb", "workbooks/quick-check.ipynb", "workbooks/00-start.ipynb"):
        assert "welve to seventeen" in (Path(__file__).parent.parent / page).read_text(encoding="utf-8"), page


@pytest.mark.parametrize("region", ("UK", "US"))
@pytest.mark.parametrize(
    ("kind", "wide"),
    (("blade", {"blade.lip_width": ("1.2 m", "48 in")}), ("cascade", {"cascade.width": ("1.2 m", "48 in"), "cascade.rill_length": ("0 mm", "0 in")})),
)
def test_no_more_rows_are_usual_than_the_bed_takes(kind, wide, region):
    """With their box, whose walls and clearance stand beside them; by hand: 800 mm take one row of 400 mm (2 x 400 + 2 x (12 + 10) = 844), 850 mm take two."""
    at = region == "US"
    blocks = {"reservoir.block_length": ("600 mm", "24 in"), "reservoir.block_width": ("400 mm", "16 in"), "reservoir.block_height": ("420 mm", "16 in")}
    design = started(kind, region)
    for key, texts in {**wide, **blocks}.items():
        design = followed_up(design, design.having(key, texts[at]))
    assert design["reservoir.blocks_across"] == 4  # (1.2 + 2 x 0.2) / 0.4, and (48 + 2 x 8) / 16
    for bed, rows in ((("800 mm", "33 in"), 1), (("850 mm", "34 in"), 2), (("300 mm", "12 in"), 1), (("3 m", "10 ft"), 4)):
        assert followed_up(design, design.having("site.bed_width", bed[at]))["reservoir.blocks_across"] == rows, bed
