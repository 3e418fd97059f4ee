"""The programme: a forward pass in working time, checked by hand and against NumPy's business days; dates, orders and what is critical."""

import datetime
from pathlib import Path

import numpy
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from brimwork.design.done.cost import CostSheet
from brimwork.design.done.programme import Calendar, critical, days_before, forward, programme, team_time
from brimwork.design.done.quantities import quantities
from brimwork.design.follows.features import chain_of
from brimwork.design.typed import file
from brimwork.design.typed.design import blank_design
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.prices import PRICES
from brimwork.design.typed.steps import FEATURE_WORDS, HOLDS, LEADS, STEPS
from brimwork.units import InputError

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"
BOWL = file.load_design(DESIGNS / "library-bowl.toml")
COATED = BOWL.having("vessel.coat", "yes")
EIGHT = Calendar(8 * 3600.0)
MONDAY = datetime.date(2027, 3, 1)
DAY = 8 * 3600.0  # a working day in s
days = st.dates(datetime.date(2020, 1, 1), datetime.date(2040, 12, 31))


def at(day, hour, minute=0):
    return datetime.datetime(2027, 3, day, hour, minute)


def test_an_exercise_with_a_coat_that_cures_beside_the_work_takes_nine_days():
    """By hand: services 3, dig 1, duct 0.5, base 0.5, box 0.5, backfill 0.5, liner 0.5, water test 1, stone 0.5, vessel 0.5, tests 0.5: together 9 working
    days. The coat cures 5 days from the first day and is done before the vessel is set, at day 8: not critical. Here all of it counts in working days."""
    line = [("services", 3), ("dig", 1), ("duct", 0.5), ("base", 0.5), ("box", 0.5), ("backfill", 0.5), ("liner", 0.5), ("water test", 1), ("stone", 0.5)]
    steps = {name: ((line[i - 1][0],) if i else (), length * DAY, False) for i, (name, length) in enumerate(line)}
    steps |= {"coat": ((), 5 * DAY, False), "vessel": (("stone", "coat"), 0.5 * DAY, False), "tests": (("vessel",), 0.5 * DAY, False)}
    found = forward(steps, MONDAY, EIGHT)
    # nine working days from Monday 1 March: Monday to Friday are five, Monday to Thursday four more; Thursday is the 11th
    assert found["tests"][1] == at(11, 16)
    # eight of them are done on Wednesday the 10th at closing, so the vessel is set on Thursday morning
    assert found["vessel"][0] == at(11, 8)
    assert critical(steps, MONDAY, EIGHT) == set(steps) - {"coat"}


def test_work_stops_at_night_and_at_the_weekend_and_a_wait_does_not():
    """By hand, from Friday 5 March at 14:00: 4 hours of work are 2 on Friday and 2 on Monday the 8th; 48 hours of waiting end on Sunday at 14:00."""
    assert EIGHT.work(at(5, 14), 4 * 3600.0) == at(8, 10)
    found = forward({"a": ((), 4.75 * DAY, False), "test": (("a",), 48 * 3600.0, True), "b": (("test",), 3600.0, False)}, MONDAY, EIGHT)
    assert found["a"][1] == at(5, 14) and found["test"] == (at(5, 14), at(7, 14)), "4.75 days from Monday end on Friday, three quarters through"
    assert found["b"] == (at(8, 8), at(8, 9))


@given(days, st.integers(1, 60))
def test_whole_days_of_work_end_on_the_business_day_that_numpy_counts(day, count):
    start = EIGHT.next(datetime.datetime(day.year, day.month, day.day))
    last = numpy.busday_offset(day.isoformat(), count - 1, roll="forward").item()
    assert EIGHT.work(start, count * DAY) == datetime.datetime(last.year, last.month, last.day, 16)


@given(days, st.integers(0, 60))
def test_working_days_before_a_day_are_those_that_numpy_counts(day, count):
    assert days_before(day, count) == numpy.busday_offset(day.isoformat(), -count, roll="backward").item()


@given(st.lists(st.tuples(st.floats(0, 50), st.booleans()), min_size=1, max_size=12), st.randoms(use_true_random=False), days)
@settings(max_examples=60)
def test_no_step_begins_before_what_it_waits_for_and_the_last_step_is_critical(lengths, draw, day):
    steps = {f"{i}": ([f"{j}" for j in range(i) if draw.random() < 0.4], hours * 3600.0, wait) for i, (hours, wait) in enumerate(lengths)}
    found = forward(steps, day, EIGHT)
    for key, (needs, _, wait) in steps.items():
        assert all(found[need][1] <= found[key][0] for need in needs)
        assert wait or found[key][0].weekday() < 5 and 8 <= found[key][0].hour < 16
    last = max(found, key=lambda key: found[key][1])
    assert last in critical(steps, day, EIGHT)


def test_making_a_critical_step_longer_puts_off_the_end_and_a_step_with_time_to_spare_does_not():
    chain = chain_of(COATED)
    before = programme(chain)
    kinds = {one.key: one.critical for one in before.steps}
    assert kinds["edge"] and kinds["settling"] and not kinds["wiring"] and not kinds["cure"]
    assert not kinds["dig"], "the water test ends on Saturday, so digging has until Monday to spare"
    later = programme(chain_of(chain.design.having("programme.edge", "3.5 h")))
    same = programme(chain_of(chain.design.having("programme.wiring", "8 h").having("programme.dig", "8 h")))
    assert later.end > before.end and same.end == before.end


def test_the_dates_of_the_bowl_follow_from_its_hours_by_hand():
    """Team in line: 0.5 + 1 + 1.5 + 1 + 0.5 + 6 = 10.5 h, so digging ends on Tuesday 2 March at 10:30. Trenches 1.5, filling them 0.5, sub-base 2, sand 1, box 2,
    overflow 0.5, backfill 3, lining 2 are 12.5 h more: 23 h, Wednesday at 15:00. The 48 h test ends on Friday at 15:00. Emptied by 15:30; blocks 1.5: half an hour on
    Friday, an hour on Monday; edge 1: 10:00. The electrician's 2 h, from Friday 15:00, end on Monday at 9:00. Trial 0.5, pump 1.5, mesh 0.5, slabs 0.5: 13:00;
    connector 0.25, feature 2, upright 0.25: 15:30; 24 h of vessel test: Tuesday 15:30; start 1: Wednesday 8:30; seven days full: Wednesday the 17th at 8:30; level again 1, handover 1: 10:30."""
    made = {one.key: one for one in programme(chain_of(BOWL)).steps}
    assert made["dig"].end == at(2, 10, 30) and made["lining"].end == at(3, 15) and made["liner_test"].end == at(5, 15)
    assert made["empty"].end == at(5, 15, 30) and made["edge"].end == at(8, 10) and made["certificate"].end == at(8, 9) and made["trial"].end == at(8, 10, 30)
    assert (
        made["slabs"].end == at(8, 13)
        and made["vessel_test"].end == at(9, 15, 30)
        and made["start_up"].end == at(10, 8, 30)
        and made["handover"].end == at(17, 10, 30)
    )


def test_a_vessel_is_coated_and_its_coat_cures_only_where_the_design_says_so():
    """By hand, coated: 2 h on the first day from 8:30 to 10:30, seven days to Monday the 8th at 10:30; 2 h more put the lining's end to Thursday the 4th, 9:00, and
    that of its test to Saturday the 6th."""
    made = {one.key: one for one in programme(chain_of(COATED)).steps}
    assert made["cure"].end == at(8, 10, 30) and made["lining"].end == at(4, 9) and made["liner_test"].end == at(6, 9)
    told = programme(chain_of(BOWL))
    assert not {"coat", "cure"} & {one.key for one in told.steps} and not any("coated" in note for note in told.notes)
    unsaid = programme(chain_of(BOWL.having("vessel.coat", None)))
    assert [one.key for one in unsaid.steps] == [one.key for one in told.steps] and any(
        "Nobody has said whether the vessel is coated" in note for note in unsaid.notes
    )


def test_foam_goes_in_only_where_the_design_names_it():
    def keys(design):
        return [one.key for one in programme(chain_of(design)).steps]

    assert "foam" not in keys(BOWL) and "foam" not in keys(BOWL.having("vessel.foam", "0 L"))
    with_foam = keys(BOWL.having("vessel.foam", "40 L"))
    assert with_foam.index("vessel_test") < with_foam.index("foam") < with_foam.index("start_up")


@pytest.mark.parametrize("kind", KINDS)
def test_nothing_floats_nothing_is_wired_untested_and_the_drilled_hole_is_tested(kind):
    """The pit is emptied before the blocks go in; the pump runs in a tub on a certified supply before it goes into the pit; the vessel is tested with its upright."""
    made = {one.key: one for one in programme(chain_of(blank_design(kind, "x"))).steps}
    orders = [("liner_test", "empty"), ("empty", "blocks"), ("wiring", "certificate"), ("certificate", "trial"), ("trial", "pump"), ("edge", "pump")]
    orders += [("feature", "standpipe"), ("standpipe", "vessel_test"), ("vessel_test", "start_up")] if kind == "overflowing vessel" else []
    for first, then in orders:
        assert made[first].end <= made[then].start, (first, then)


def test_long_leads_are_ordered_working_days_before_they_are_needed():
    """By hand, each there a working day before it is used: the vessel is set on Monday 8 March, so it is wanted on Friday the 5th; 15 working days before is three
    weeks: 12 February; coated on Monday the 1st, it is wanted on Friday 26 February: the 5th. Liner and fleece are laid on Wednesday the 3rd: ten days before
    Tuesday the 2nd is 16 February, five are the 23rd. Stone is laid on Wednesday the 10th: five before the 9th, the 2nd."""
    made = programme(chain_of(BOWL))
    by = {order.what: order.by for order in made.orders}
    assert by["vessel"] == datetime.date(2027, 2, 12) and by["liner to size"] == datetime.date(2027, 2, 16)
    assert by["protection fleece"] == datetime.date(2027, 2, 23) and by["rounded stone and net bag"] == datetime.date(2027, 3, 2)
    assert len(by) == len(made.orders)
    coated = {order.what: order.by for order in programme(chain_of(COATED)).orders}
    assert coated["vessel"] == datetime.date(2027, 2, 5) and coated["waterproofer for the vessel"] == datetime.date(2027, 2, 19)
    us = programme(chain_of(file.load_design(DESIGNS / "school-columns.toml").having("programme.start", "2027-03-01")))
    locate = next(order for order in us.orders if order.what.startswith("records"))
    assert locate.by == datetime.date(2027, 2, 24), "three working days before Monday 1 March: Wednesday"


def test_whatever_is_bought_is_in_one_order_but_for_deliveries():
    held = [item for lead in LEADS.values() for item in lead.items]
    assert len(held) == len(set(held)) and set(held) == set(PRICES) - {"delivery"}


@pytest.mark.parametrize("name", ("library-bowl", "school-columns", "terrace-blade", "garden-cascade"))
def test_every_line_that_is_bought_has_an_order_and_every_order_a_step(name):
    design = file.load_design(DESIGNS / f"{name}.toml")
    bare = name == "library-bowl"
    chain = chain_of(design.having("vessel.foam", "40 L").having("vessel.coat", "yes") if bare else design)
    ordered = {order.what for order in programme(chain).orders}
    for line in quantities(chain):
        leads = [key for key, lead in LEADS.items() if line.key in lead.items]
        assert not line.key or line.key == "delivery" or (FEATURE_WORDS[design.kind] if leads == ["feature"] else LEADS[leads[0]].words) in ordered, line.item
    assert "slabs" in ordered or not any(line.key == "slab" for line in quantities(chain))


def test_what_lies_on_the_blocks_needs_no_slab_ordered():
    assert "slabs" in {order.what for order in programme(chain_of(BOWL)).orders}
    assert "slabs" not in {order.what for order in programme(chain_of(BOWL.having("vessel.stands_on", "blocks"))).orders}


def test_an_order_is_needed_when_the_first_step_that_uses_it_begins():
    for name in ("library-bowl", "school-columns", "terrace-blade", "garden-cascade"):
        made = programme(chain_of(file.load_design(DESIGNS / f"{name}.toml")))
        needed = {order.what: order.needed for order in made.orders}
        for one in made.steps:
            for lead in one.step.order:
                assert lead == "feature" or LEADS[lead].words not in needed or needed[LEADS[lead].words] <= one.start.date(), (name, one.key, lead)


def test_a_hold_point_is_signed_when_people_are_at_work():
    """By hand, coated: the liner's test ends on Saturday 6 March at 9:00, so it is signed on Monday the 8th at 8; what ends within the day is signed then."""
    made = programme(chain_of(COATED))
    steps = {one.key: one for one in made.steps}
    assert made.signing(steps["liner_test"]) == at(8, 8) and made.signed(steps["liner_test"]) == "Mon 2027-03-08"
    assert made.signing(steps["dig"]) == steps["dig"].end


def test_a_first_day_at_a_weekend_is_told_and_not_worked():
    made = programme(chain_of(BOWL.having("programme.start", "2027-03-06")))
    assert made.steps[0].start == at(8, 8) and "at a weekend" in made.notes[0]


def test_without_a_first_day_days_are_numbered():
    made = programme(chain_of(BOWL.having("programme.start", None)))
    assert not made.dated and made.day(made.first) == "day 1" and "No first day is given" in made.notes[0]
    assert made.orders[0].by < made.first and made.day(made.orders[0].by).endswith("days before")


def test_digging_takes_the_slower_table_shared_by_the_people_where_the_soil_is_named():
    """By hand: pit 1.572 x 1.172 x 0.62 m = 1.14228 m3, apron beyond it (2.436 x 2.036 - 1.572 x 1.172) x 0.04 = 0.12469 m3; clay at 3.3 h/m3 and barrowing
    at 2: 5.3 x 1.26697 = 6.7149 h; two people: 3.3575 h."""
    made = {one.key: one for one in programme(chain_of(BOWL.having("programme.soil_type", "clay or heavy soil"))).steps}
    assert made["dig"].seconds / 3600 == pytest.approx(3.3575, abs=0.001)
    assert "clay" in made["dig"].note and "apron 0.125 m3" in made["dig"].note


def test_hours_of_the_team_leave_out_waits_electrician_and_other_kinds():
    """By hand for the bowl: 10.5 to the formation, 12.5 to the liner, 0.5 + 1.5 + 1 + 0.5 + 1.5 + 1 = 6, feature 2, connector and upright 0.5, start 1, stone 2, tests 2,
    make good 8, level 1, handover 1: 46.5 h; with a coat of 2 h and foam of 0.5 h: 49 h."""
    assert team_time(chain_of(BOWL)) / 3600 == pytest.approx(46.5)
    assert team_time(chain_of(COATED.having("vessel.foam", "40 L"))) / 3600 == pytest.approx(49)


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_has_all_hold_points_once_in_order(kind):
    made = programme(chain_of(blank_design(kind, "x")))
    assert [one.step.hold for one in sorted(made.steps, key=lambda one: one.start) if one.step.hold] == list(HOLDS)
    assert made.steps[-1].key == "handover" and made.steps[-1].end == made.end


def test_every_step_waits_for_steps_that_stand_before_it_and_has_its_value_in_the_design_file():
    keys = list(STEPS)
    for i, (key, step) in enumerate(STEPS.items()):
        assert set(step.needs) <= set(keys[:i]) and key in SECTIONS["programme"]


@pytest.mark.parametrize("text", ["1 March 2027", "2027-3-1", "2027-02-30", "20270301", "1899-01-01", "2027-03-01T08:00:00", "", "2027-W09-1"])
def test_what_is_not_a_date_is_refused_with_an_example(text):
    with pytest.raises(InputError, match="2027-03-01"):
        BOWL.having("programme.start", text)


def test_a_date_is_read_with_and_without_quotes_and_saved_as_it_was():
    text = (DESIGNS / "library-bowl.toml").read_text(encoding="utf-8").split("[programme]")[0]
    for written in ('"2027-03-01"', "2027-03-01"):
        design = file.parse_design(f"{text}\n[programme]\nstart = {written}\n")
        assert design["programme.start"] == MONDAY
        assert f"start = {written}" in file.dump_design(design, f"{text}\n[programme]\nstart = {written}\n")
        assert file.parse_design(file.dump_design(design)) == design
    with pytest.raises(InputError, match="is not a date"):
        file.parse_design(f"{text}\n[programme]\nstart = 2027-03-01T08:00:00\n")


def test_one_person_takes_twice_the_usual_time_and_is_paid_for_the_same_hours():
    """By hand, for one alone: 46.5 h less 6 h that take as long for anybody (briefing 0.5, trial 0.5, start 1, tests 2, handover 1 = 5; 41.5 left) are 2 x 41.5 + 5 = 88 h;
    times that are given are not shared: dig given as 6 h takes 6 h off, 82 h. Two people are paid 2 x 46.5 = 93 h."""
    alone = BOWL.having("programme.people", 1)
    assert team_time(chain_of(alone)) / 3600 == pytest.approx(88) and CostSheet(chain_of(alone)).labour == pytest.approx(88 * 28)
    assert CostSheet(chain_of(BOWL)).labour == pytest.approx(93 * 28)
    assert team_time(chain_of(alone.having("programme.dig", "6 h"))) / 3600 == pytest.approx(82)


NEVER_BEFORE = (  # what may never come before what, whatever the kind: common practice, no source
    ("set_out", "brief"), ("dig", "trial_dig"), ("trench_fill", "duct"), ("sub_base", "trench_fill"), ("backfill", "overflow"), ("lining", "backfill"),
    ("lining", "build_fill"), ("liner_test", "overflow"), ("blocks", "liner_test"), ("blocks", "empty"), ("trial", "certificate"), ("pump", "trial"), ("mesh", "pump"),
    ("slabs", "mesh"), ("connector", "slabs"), ("feature", "connector"), ("standpipe", "feature"), ("foam", "vessel_test"), ("wall", "footing"), ("wall_cure", "wall"),
    ("feature", "wall_cure"), ("build", "build_fill"), ("start_up", "certificate"), ("stone", "start_up"), ("handover", "relevel"),
)  # fmt: skip


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("people", (1, 3))
def test_no_step_comes_before_what_it_would_hide_or_rest_on(kind, people):
    made = {one.key: one for one in programme(chain_of(blank_design(kind, "x").having("programme.people", people))).steps}
    wrong = [(later, first) for later, first in NEVER_BEFORE if later in made and first in made and made[later].start < made[first].end]
    assert wrong == []


@pytest.mark.parametrize("kind", KINDS)
def test_a_hold_point_stands_before_what_hides_it(kind):
    made = {one.key: one for one in programme(chain_of(blank_design(kind, "x"))).steps}
    held = {one.step.hold: one for one in made.values() if one.step.hold}
    for hold, hidden_by in (("H2", "sub_base"), ("H3", "trench_fill"), ("H4", "blocks"), ("H5", "trial")):
        assert held[hold].end <= made[hidden_by].start, hold


def test_every_step_where_somebody_can_be_hurt_has_its_caution():
    """Standing water overnight, hands beside a live pump, kneeling in a pit, pegs before the trial dig, lifting, cutting: a caution at that step."""
    words = {
        ("liner_test", "vessel_test", "settling", "start_up"): "water",
        ("pump", "standpipe", "foam", "start_up", "tests"): "unplugged before a hand goes in",
        ("sub_base", "sand_bed", "box", "overflow", "lining", "blocks"): "the sides judged again each morning",
        ("protect", "set_out"): "no peg, pin or post near a mark",
        ("lift_surface", "slabs", "build", "stone"): "weigh it",
        ("box", "wall", "slabs"): "respirator",
        ("relevel",): "never lifted or levered while it is full",
    }
    for keys, caution in words.items():
        for key in keys:
            assert caution in STEPS[key].caution, key
    assert not [key for key, step in STEPS.items() if not step.caution and key not in ("brief", "make_good")]


def test_closed_days_are_not_worked_and_put_orders_earlier():
    """By hand: with Tuesday 2 March closed, what ended at 10:30 on Tuesday ends at 10:30 on Wednesday; an order five working days before the 9th goes back one more day."""
    closed = BOWL.having("programme.closed", ["2027-03-02"])
    made = {one.key: one for one in programme(chain_of(closed)).steps}
    assert made["dig"].end == at(3, 10, 30)
    day, shut = datetime.date(2027, 3, 9), {datetime.date(2027, 3, 5)}
    assert days_before(day, 5, shut) == numpy.busday_offset("2027-03-09", -5, holidays=["2027-03-05"]).item()
    for bad in ("2027-03-02", [], ["2027-13-01"], ["soon"]):
        with pytest.raises(InputError):
            BOWL.having("programme.closed", bad)


def test_what_is_hired_fits_the_space_beside_the_box_and_has_its_days():
    """By hand: used first on Monday (levels) and Tuesday the 2nd (rammer), off after the backfill on Wednesday the 3rd."""
    hires = {hire.what: hire for hire in programme(chain_of(BOWL)).hires}
    rammer = next(hire for what, hire in hires.items() if "rammer" in what)
    assert "too narrow for a plate compactor" in rammer.what, "150 mm beside the box"
    assert rammer.on == datetime.date(2027, 3, 2) and rammer.off == datetime.date(2027, 3, 3)
    wide = programme(chain_of(BOWL.having("ground.working_space", "600 mm"))).hires
    assert any(hire.what == "rammer or plate compactor" for hire in wide)


def test_a_team_that_cannot_lift_what_it_sets_is_told():
    """By hand: two people lift 2/3 of 2 x 25 kg = 33 kg by hand, so a vessel of 90 kg asks for a machine; six lift 75 kg, ten 125 kg."""

    def told(people):
        return any(
            "can lift by hand: the vessel" in note for note in programme(chain_of(BOWL.having("programme.people", people).having("vessel.mass", "90 kg"))).notes
        )

    assert told(2) and told(6) and not told(10)
