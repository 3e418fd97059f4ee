"""How a check is graded: a number against its limits, an answer, or both with the worse counting; what is missing, in words."""

import math
from types import SimpleNamespace

import pytest
from few_numbers import FewNumbers, design

from brimwork.design.follows.missing import missing
from brimwork.design.judged.grading import OVERRULED, Check, Computed, Joined, answered_check
from brimwork.design.typed.asking import asked, keys_in, offered, reason, tried, without_keys
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.limits import Criterion, at_least, at_most
from brimwork.design.typed.patches import rectangular_patch
from brimwork.design.typed.questions import QUESTIONS
from brimwork.units import InputError

VESSEL, DRILLED = "overflowing vessel", "drilled stones"

# --- a number, a word, or both ------------------------------------------------------------------------------------------------------

ROW = Criterion("C00", "water", "How far it is", at_most(0.015, 0.040), "mm", "a test")


def made(value, **more) -> Check:
    return Check(ROW, value, "do this", **more)


def at(number: float, changes: str = "", **more):
    return made(lambda chain: number, **more).grade(FewNumbers(design=design(VESSEL, changes)))


def test_a_number_is_told_with_its_limits_and_a_remedy_where_it_needs_one():
    good, near, bad = at(0.010), at(0.030), at(0.050)
    assert [(one.grade, one.value, one.remedy) for one in (good, near, bad)] == [
        ("pass", "10.0 mm", ""),
        ("marginal", "30.0 mm", "do this"),
        ("fail", "50.0 mm", "do this"),
    ]
    assert {one.limit for one in (good, near, bad)} == {"up to 15 mm; near it up to 40 mm"} and (good.number, good.unit, good.limits) == (
        0.010,
        "mm",
        ROW.limits,
    )


def test_what_somebody_has_had_done_makes_a_fail_partly_met_and_nothing_else():
    def word(said):
        return at(0.050, word=lambda chain: said, note=lambda chain: "noted")

    assert (word("held").grade, word("held").note) == ("marginal", "by your answer: held; noted") and (word("").grade, word("").note) == ("fail", "noted")
    assert at(0.030, word=lambda chain: "held").note == "" and at(0.050, word=lambda chain: "held").note == "by your answer: held"


def unknown(chain):
    return chain.design["pipe.bore"]


def impossible(chain):
    raise InputError("the wall is thicker than the vessel")


def test_a_number_that_is_not_there_says_why():
    design_of = FewNumbers(design=design(VESSEL))
    found = made(unknown).grade(design_of)
    assert (found.grade, found.value, found.needs, found.remedy, found.number) == (
        "not shown",
        "needs true inside diameter of the hose",
        ("pipe.bore",),
        "",
        None,
    )
    refused = made(impossible).grade(design_of)
    assert (refused.grade, refused.value, refused.note, refused.remedy) == ("fail", "cannot be worked out", "the wall is thicker than the vessel", "do this")
    instead = made(unknown, word=lambda chain: "held", instead=("site.engineered",)).grade(design_of)
    assert (instead.grade, instead.value, instead.note) == ("marginal", "not worked out here", "by your answer: held")
    waits = made(unknown, word=lambda chain: "", instead=("site.engineered",)).grade(design_of)
    assert waits.grade == "not shown" and waits.needs == ("pipe.bore", "site.engineered")
    assert made(unknown, word=lambda chain: "held").grade(design_of).grade == "not shown"  # a word stands for the number only where the check says so


def test_limits_that_hang_on_the_design_are_waited_for_too():
    def limits(chain):
        return at_most(chain.design["pipe.length"], 99.0)

    assert made(unknown, limits=limits).grade(FewNumbers(design=design(VESSEL))).needs == ("pipe.bore", "pipe.length")
    assert at(2.0, "pipe.length 3 m", limits=limits).grade == "pass" and at(4.0, "pipe.length 3 m", limits=limits).grade == "marginal"


def test_a_note_that_needs_what_nobody_gave_is_left_out():
    assert at(0.010, note=unknown).note == "" and at(0.010, "pipe.bore 25 mm", note=lambda chain: f"{unknown(chain):g}").note == "0.025"
    assert at(math.inf, note=lambda chain: "noted").note == "noted" and at(math.inf).grade == "does not apply" and at(-math.inf).grade == "pass"


def test_limits_of_the_designs_own_count_and_say_so():
    own = Criterion("C06", "water", "Boil", at_most(0.015, 0.040), "mm", "a test")
    safe = Criterion("C18", "reservoir", "Edge", at_least(0.050, 0.025), "mm", "a test")

    def of(row, number, changes):
        return Check(row, lambda chain: number, "do this").grade(FewNumbers(design=design(VESSEL, changes)))

    wide = of(own, 0.030, "limits.C06 up to 35 mm; up to 60 mm".replace("; up", ";up"))
    assert wide.grade == "pass" and wide.limit == "up to 35 mm; near it up to 60 mm (set by this design)"
    tight = of(safe, 0.055, "limits.C18 from 60 mm;from 30 mm")
    assert tight.grade == "marginal" and tight.limit.endswith("(set by this design)")
    loose = of(safe, 0.030, "limits.C18 from 20 mm;from 10 mm")
    assert (
        loose.grade == "marginal" and loose.limit == "from 50 mm; near it from 25 mm (this design would set wider ones: they only count where they are tighter)"
    )


HOSE = next(one for one in QUESTIONS if one.id == "C11")
GOOD, FAIR, BAD = (words for words, _ in HOSE.answers)


def answered(changes: str):
    return answered_check(HOSE).grade(FewNumbers(design=design(VESSEL, changes)))


def test_an_answer_is_graded_by_its_words():
    assert [(one.grade, one.value) for one in (answered(f"answers.hose_route {words}") for words in (GOOD, FAIR, BAD))] == [
        ("pass", f"by your answer: {GOOD}"), ("marginal", f"by your answer: {FAIR}"), ("fail", f"by your answer: {BAD}")]  # fmt: skip
    waits = answered("")
    assert waits.grade == "not shown" and waits.needs == ("answers.hose_route",) and waits.value == f'needs an answer, one of "{GOOD}", "{FAIR}" or "{BAD}"'
    assert waits.remedy == "" and answered(f"answers.hose_route {FAIR}").remedy == HOSE.remedy


def joined(number, answer: str = "", instead: bool = False):
    row = Joined(HOSE, number, ("a result",), instead)
    return row.grade(FewNumbers(design=design(VESSEL, f"answers.hose_route {answer}" if answer else "")))


@pytest.mark.parametrize(
    ("computed", "answer", "instead", "grades", "value"),
    [
        ("pass", GOOD, False, "pass", f"half; {GOOD}"), ("pass", FAIR, False, "marginal", f"half; {FAIR}"), ("marginal", GOOD, False, "marginal", f"half; {GOOD}"),
        ("fail", GOOD, False, "fail", f"half; {GOOD}"), ("fail", "", False, "fail", "half"), ("pass", BAD, False, "fail", f"half; {BAD}"), ("pass", "", True, "pass", "half"),
        ("pass", FAIR, True, "marginal", f"half; {FAIR}"), ("pass", "", False, "not shown", 'needs the answer to "air and drain-back in the hose"'),
        ("not shown", FAIR, True, "marginal", FAIR), ("not shown", BAD, False, "fail", BAD), ("not shown", FAIR, False, "not shown", "needs true inside diameter of the hose"),
        ("not shown", "", True, "not shown", 'needs true inside diameter of the hose; or in their place the answer to "air and drain-back in the hose"'),
        ("not shown", "", False, "not shown", 'needs true inside diameter of the hose, the answer to "air and drain-back in the hose"'),
    ],
)  # fmt: skip
def test_of_a_number_and_an_answer_the_worse_counts(computed, answer, instead, grades, value):
    def number(chain):
        return unknown(chain) if computed == "not shown" else Computed(computed, "half", "up to one", "noted")

    found = joined(number, answer, instead)
    assert (found.grade, found.value) == (grades, value) and bool(found.remedy) == (grades in ("fail", "marginal"))
    assert bool(found.needs) == (grades == "not shown")
    assert computed == "not shown" or found.note == "noted" and found.limit == ("" if grades == "not shown" else "up to one")


def test_a_part_that_cannot_be_worked_out_fails():
    found = joined(impossible, GOOD)
    assert found.grade == "fail" and found.value == f"cannot be worked out; {GOOD}" and found.note == "the wall is thicker than the vessel"


@pytest.mark.parametrize(
    ("check", "changes", "numbers", "told"),
    [
        ("C43", "supply.duct_cover 149 mm", {}, ("fail", "149 mm over the duct: less than any table allows")), ("C43", "supply.duct_cover 150 mm", {}, None), ("C43", "", {}, None),
        ("C45", "supply.duct_bore 50 mm", {}, None), ("C45", "supply.duct_bore 49 mm", {}, ("marginal", "a duct of 49.0 mm")), ("C45", "supply.duct_bore 40 mm", {}, ("marginal", "a duct of 40.0 mm")),
        ("C45", "supply.duct_bore 39 mm", {}, ("fail", "a duct of 39.0 mm")), ("C45", "", {}, None),
        ("C44", "", {"geometry": SimpleNamespace(supply=(0.4, -0.3), catch_half=(0.5, 0.4))}, ("fail", "the supply point stands in the lined catch")),
        ("C44", "", {"geometry": SimpleNamespace(supply=(-0.6, 0.3), catch_half=(0.5, 0.4))}, None), ("C44", "", {"geometry": SimpleNamespace(supply=(0.5, 0.4), catch_half=(0.5, 0.4))}, None),
        ("C44", "", {}, None),
        ("C54", "levels.liner_edge 40 mm", {"levels": {}}, None), ("C54", "levels.liner_edge 41 mm", {}, ("marginal", "an edge 41.0 mm over the paving")),
        ("C54", "levels.liner_edge 99 mm", {}, ("marginal", "an edge 99.0 mm over the paving")), ("C54", "levels.liner_edge 100 mm", {}, None), ("C54", "", {}, None),
        ("C54", "levels.liner_edge 0 mm", {"box_top": 0.06}, ("marginal", "an edge 60.0 mm over the paving")),
        ("C31", "site.frost_depth 600 mm; ground.sub_base 0 mm", {"levels": {"formation": -0.5}}, ("fail", "frost reaches 600 mm down, the base 500 mm, on 0 mm of granular layer")),
        ("C31", "site.frost_depth 600 mm; ground.sub_base 74 mm", {"levels": {"formation": -0.5}}, ("marginal", "frost reaches 600 mm down, the base 500 mm, on 74.0 mm of granular layer")),
        ("C31", "site.frost_depth 600 mm; ground.sub_base 75 mm", {"levels": {"formation": -0.5}}, None), ("C31", "site.frost_depth 500 mm; ground.sub_base 0 mm", {"levels": {"formation": -0.5}}, None),
        ("C31", "site.frost_depth 600 mm; ground.sub_base 0 mm", {"levels": {}}, None),
        ("C54", "levels.liner_edge 0 mm", {"box_top": 0.1 - 4e-10}, None), ("C54", "levels.liner_edge 0 mm", {"levels": {"stone top": 0.07}}, ("marginal", "an edge 70.0 mm over the paving")),
        ("C54", "levels.liner_edge 0 mm", {"box_top": 0.1 - 6e-10}, ("marginal", "an edge 100 mm over the paving")),
        ("C31", "ground.sub_base 0 mm", {"levels": {"formation": -0.5}}, None), ("C31", "site.frost_depth 600 mm", {"levels": {"formation": -0.5}}, None),
        ("C70", "ground.lining_thickness 0.75 mm", {}, None), ("C70", "ground.lining_thickness 0.7 mm", {}, ("marginal", "lining and fleece together are 0.700 mm thick")),
        ("C70", "ground.lining_thickness 0.5 mm", {}, ("marginal", "lining and fleece together are 0.500 mm thick")),
        ("C70", "ground.lining_thickness 0.4 mm", {}, ("fail", "lining and fleece together are 0.400 mm thick")), ("C70", "", {}, None),
        ("C59", "levels.soil 10 mm; levels.liner_edge 0 mm", {}, ("fail", "the soil beside stands over the edge of the liner: water runs in")),
        ("C59", "levels.soil 0 mm; levels.liner_edge 0 mm", {}, None), ("C59", "levels.soil 10 mm", {}, None), ("C59", "levels.liner_edge 0 mm", {}, None),
        ("C15", "overflow_pipe.bore 0 mm", {}, ("fail", "an overflow pipe of no bore")), ("C15", "overflow_pipe.bore 40 mm", {}, None), ("C15", "", {}, None),
        ("C50", "reservoir.blocks_along 1; reservoir.blocks_across 1", {}, ("marginal", "the pump's bay is cut into the only block, which carries less for it")),
        ("C50", "reservoir.blocks_along 2; reservoir.blocks_across 2", {}, None), ("C50", "reservoir.blocks_along 1; reservoir.blocks_across 2", {}, None),
        ("C50", "reservoir.cover 40 mm", {}, ("marginal", "a stiff cover lies all over the blocks: it needs a piece over the bay that one person lifts out")), ("C50", "reservoir.cover 0 mm", {}, None),
        ("C50", "", {}, None),
    ],
)  # fmt: skip
def test_a_number_on_file_counts_before_the_answer(check, changes, numbers, told):
    assert OVERRULED[check](FewNumbers(design=design(VESSEL, changes), **numbers)) == told


def test_a_slab_over_the_bay_keeps_the_pump_in():
    def over(middle):
        place = SimpleNamespace(bay=rectangular_patch(0.2, 0.2), standing=("it",), slab_under=lambda piece: rectangular_patch(0.4, 0.4, middle))
        return OVERRULED["C50"](FewNumbers(design=design(VESSEL), geometry=place))

    assert over((0.2, 0.0)) == ("fail", "a slab lies over the pump's bay") and over((0.31, 0.0)) is None

    slabs = {"beside": rectangular_patch(0.4, 0.4, (0.5, 0.0)), "over": rectangular_patch(0.4, 0.4), "on no slab": None}
    place = SimpleNamespace(bay=rectangular_patch(0.2, 0.2), standing=tuple(slabs), slab_under=slabs.get)
    assert OVERRULED["C50"](FewNumbers(design=design(VESSEL), geometry=place)) == ("fail", "a slab lies over the pump's bay")  # one of three is enough


def test_the_worse_of_number_and_answer_is_told_with_both():
    duct = next(one for one in QUESTIONS if one.id == "C45")
    (good, _), (fair, _), (bad, _) = duct.answers

    def told(bore, answer):
        found = answered_check(duct).grade(FewNumbers(design=design(VESSEL, f"supply.duct_bore {bore} mm; answers.{duct.key} {answer}")))
        return found.grade, found.value

    assert told(45, good) == ("marginal", f"a duct of 45.0 mm; by your answer: {good}") and told(45, fair) == ("marginal", f"by your answer: {fair}")
    assert told(45, bad) == ("fail", f"by your answer: {bad}") and told(50, good) == ("pass", f"by your answer: {good}")


# --- what is missing ----------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("asked_for", "keys"),
    [
        (lambda d: d["pipe.bore"] + d["pipe.length"], ("pipe.bore", "pipe.length")),
        (lambda d: [0, 1][d["reservoir.blocks_along"]] * d["pipe.bore"], ("reservoir.blocks_along", "pipe.bore")),  # a count stands in as one
        (lambda d: max(d["stones.diameters"]) + d["pipe.bore"], ("stones.diameters", "pipe.bore")),
        (lambda d: max(head for flow, head in d["pump.curve"]) + d["pipe.bore"], ("pump.curve", "pipe.bore")),
        (lambda d: d["pipe.bore"] and d["pump.cut_out"] == "no" and d["pipe.length"], ("pipe.bore", "pump.cut_out")),  # a word decides what else is asked
    ],
)  # fmt: skip
def test_all_that_a_number_still_waits_for_is_found(asked_for, keys):
    assert missing(FewNumbers(design=design(DRILLED)), lambda chain: asked_for(chain.design)) == keys
    assert missing(FewNumbers(design=design(DRILLED, "pipe.bore 25 mm")), lambda chain: asked_for(chain.design)) == tuple(
        key for key in keys if key != "pipe.bore"
    )


def test_where_the_stand_ins_do_not_go_together_others_are_tried():
    """One for everything, then a hundredth, then a hundred; what was asked for before it went wrong is needed too."""

    def small(chain, least: float, most: float) -> float:
        wall = chain.design["vessel.wall_thickness"]
        if not least < wall < most:
            raise InputError("the wall is thicker than the vessel")
        return wall + chain.design["vessel.height"]

    def of(least, most):
        return missing(FewNumbers(design=design(VESSEL)), lambda chain: small(chain, least, most))

    both = ("vessel.wall_thickness", "vessel.height")
    assert of(0.9, 1.1) == of(0.009, 0.011) == of(90.0, 110.0) == both and of(2.0, 3.0) == ("vessel.wall_thickness",)
    assert missing(FewNumbers(design=design(VESSEL)), lambda chain: 1 / (chain.design["pipe.bore"] - 1.0) + chain.design["pipe.length"]) == (
        "pipe.bore",
        "pipe.length",
    )


# --- what is missing, in words ------------------------------------------------------------------------------------------------------


def test_what_goes_wrong_with_a_number_is_caught_in_one_place():
    def fails(error):
        raise error

    assert tried(lambda: 3.0) == 3.0 and tried(lambda: fails(Unknown("pipe.bore", "pipe.length"))).needs == ("pipe.bore", "pipe.length")
    assert tried(lambda: fails(InputError("too wide"))).why == "too wide" and tried(lambda: fails(InputError("too wide"))).needs == ()
    assert tried(lambda: 1 / 0).why == "a value that must be more than nothing is zero, or one is far too large"
    assert tried(lambda: fails(Unknown("pipe.bore"))).why == "needs true inside diameter of the hose"


def test_of_many_that_are_missing_four_are_named():
    keys = ("pipe.bore", "pump.power", "vessel.height", "vessel.mass", "pipe.length", "slab.length")
    names = ["true inside diameter of the hose", "power that the pump takes in", "height of the vessel", "mass of the empty vessel"]
    assert asked(*keys[:1]) == names[0] and asked(*keys[:4]) == ", ".join(names) and asked(*keys) == ", ".join(names) + ", and 2 more"
    assert (
        reason(Unknown("pipe.bore")) == "needs true inside diameter of the hose"
        and reason(InputError("pipe.bore is too wide")) == "“true inside diameter of the hose” is too wide"
    )


def test_a_word_or_an_answer_is_asked_for_with_what_it_can_be():
    assert offered("reservoir.cut_walls") == 'a word, one of "yes" or "no"' and offered("answers.hose_route").startswith(f'an answer, one of "{GOOD}", ')
    assert offered("pipe.bore") == "true inside diameter of the hose"


def test_keys_in_a_sentence_are_found_and_put_in_words():
    text = "set pipe.bore or pump.power, or pipe.bore; not pipe.dream, e.g. this.that or answers.hose_route"
    assert keys_in(text) == ("pipe.bore", "pump.power", "answers.hose_route")
    assert (
        without_keys("set pipe.bore, not pipe.dream") == "set “true inside diameter of the hose”, not pipe.dream"
        and without_keys("set pipe.bore", str.upper) == "set “PIPE.BORE”"
    )
    assert without_keys("answers.hose_route") == '“the answer to "air and drain-back in the hose"”'
