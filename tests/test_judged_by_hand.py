"""The checks of supply and people, water, ground and loads, row by row, on the few numbers that each asks for: what each works out, grades and says.

A chain stands here as those few numbers; the design is a real one with the few values that bear on it. Limits and sentences are those of the trade, written out.
"""

import math
from types import SimpleNamespace

import pytest
from few_numbers import FewNumbers, design

from brimwork.design.judged.grading import engineered
from brimwork.design.judged.ground_checks import GROUND_CHECKS
from brimwork.design.judged.load_checks import LOAD_CHECKS
from brimwork.design.judged.people_checks import PEOPLE_CHECKS, protects
from brimwork.design.judged.water_checks import WATER_CHECKS
from brimwork.design.typed.ground_fields import PLANNED
from brimwork.design.typed.known import Unknown

VESSEL, DRILLED, WALL, FALLS = "overflowing vessel", "drilled stones", "blade", "cascade"
CHECKS = (*PEOPLE_CHECKS, *WATER_CHECKS, *LOAD_CHECKS, *GROUND_CHECKS)


def graded(check: str, changes: str = "", kind: str = VESSEL, region: str = "UK", **numbers):
    row = next(one for one in CHECKS if one.id == check and (not one.kinds or kind in one.kinds))
    return row.grade(FewNumbers(design=design(kind, changes, region), **numbers))


def grade(*args, **more) -> str:
    return graded(*args, **more).grade


# --- supply -------------------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("check", "changes", "numbers", "number"),
    [
        ("C46", "supply.circuit_load 5 A; supply.breaker 16 A", {"current": 1.0}, 0.3125),
        ("C46", "supply.circuit_load 5 A; supply.breaker 16 A", {"current": 8.0}, 0.5),  # the pump alone takes more than the circuit is said to
        ("C46e", "", {"leakage_share": 0.2}, 0.2),
        ("C75", "supply.breaker 16 A", {"cable_carries": 20.0}, 0.8),
        ("C76", "supply.breaker 16 A", {"starting_current": 40.0}, 2.5),
        ("C77", "supply.voltage 230 V; pump.voltage 240 V; pump.frequency 50 Hz", {}, 10 / 240),
        ("C78", "supply.voltage 240 V", {}, 10 / 230),
        ("C47", "", {"cord_spare": 1.5}, 1.5), ("C55", "", {"running_cost": 30.0}, 30.0), ("C42", "", {"voltage_drop": 0.02}, 0.02), ("C64", "", {"noise_above": 3.0}, 3.0),
        ("C62", "", {"held_back": 0.5, "soil_held": 0.0}, 0.5), ("C48", "", {"lift_of_all": 0.9}, 0.9),
        ("C49", "site.gate 900 mm; site.widest_item 700 mm; vessel.rim_diameter 800 mm; vessel.height 750 mm", {}, 0.15),  # the narrower way through is 750 mm
        ("C65", "site.sling_angle 60 deg", {"sling_share": 0.4, "unslung": False, "slings_answered": lambda: None}, 0.4),
        ("C19", "", {"day_share": 0.1}, 0.1), ("C16", "", {"turnover": 200.0}, 200.0), ("C18", "", {"levels": {"liner edge": 0.0, "overflow": -0.08}}, 0.08),
        ("C18g", "levels.soil -30 mm", {"levels": {"liner edge": 0.01}}, 0.04), ("C39", "", {"levels": {"staple line": -0.02, "overflow": -0.08}}, 0.06),
        ("C10", "pump.intake_area 100 cm2", {"flow_sent": 5e-4, "coming_said": ""}, 0.05), ("C72", "measured.leak 3 mm/day", {}, 0.003 / 86400),
        ("C82", "pump.strainer 4 mm; pump.solids 5 mm", {}, 0.8), ("C13", "pump.covered 60 mm; pump.cut_out yes", {}, 0.06),
        ("C40", "lining.mesh_opening 10 mm; lining.smallest_stone 25 mm", {}, 0.4), ("C40", "lining.mesh_opening 30 mm; lining.smallest_stone 200 mm", {}, 0.75),  # 30 mm by 20 mm, halved
        ("C38", "ground.clearance 12 mm", {}, 0.012), ("C32", "site.pit_sides firm soil, battered or braced, spoil kept back", {"ground_depth": 0.7}, 0.7),
        ("C21", "lining.panel_clearance 100 mm", {"geometry": None}, 0.1), ("C34", "site.tree_distance 3 m", {"root_radius": 2.0}, 1.5),
        ("C22", "", {"kern_share": 0.4, "heavier": SimpleNamespace(kern_share=0.3)}, 0.4), ("C22", "", {"kern_share": 0.2, "heavier": SimpleNamespace(kern_share=0.3)}, 0.3),
        ("C20", "", {"heavier": SimpleNamespace(spread_utilisation=0.5), "overhang": 0.0}, 0.5), ("C74", "", {"thin_slab": 1.5}, 1.5), ("C28", "", {"flotation": 1.3}, 1.3),
    ],
)  # fmt: skip
def test_the_number_of_a_check(check, changes, numbers, number):
    numbers = {key: value for key, value in numbers.items() if value is not None}
    found = graded(check, changes, **numbers)
    assert found.number == pytest.approx(number) and found.unit == next(one for one in CHECKS if one.id == check).unit


@pytest.mark.parametrize(
    ("volts", "plate", "supply", "grades"),
    [
        (230, "50 Hz", "50 Hz", "pass"), (242, "50 Hz", "50 Hz", "marginal"), (254, "50 Hz", "50 Hz", "fail"), (230, "60 Hz", "50 Hz", "fail"),
        (230, "50 and 60 Hz", "50 Hz", "pass"), (230, "50 and 60 Hz", "60 Hz", "pass"), (230, "direct current", "direct current", "pass"), (218, "50 Hz", "50 Hz", "marginal"),
    ],
)  # fmt: skip
def test_the_plate_of_a_pump_is_held_against_the_supply(volts, plate, supply, grades):
    """Motors run within a twentieth, at a pinch a tenth: 242/230 is 5.2 % over, 254/230 is 10.4 %, 218/230 is 5.2 % under."""
    found = graded("C77", f"supply.voltage {volts} V; pump.voltage 230 V; pump.frequency {plate}; supply.frequency {supply}")
    assert found.grade == grades and found.note == f"plate {plate}, supply {supply}"


@pytest.mark.parametrize(
    ("plate", "supply", "through"), [(12, 230, True), (24, 230, True), (25, 230, False), (24, 24, False), (24, 25, True), (12, 24, False), (230, 240, False)]
)
def test_a_pump_on_a_transformer_is_told_which_voltage_to_give(plate, supply, through):
    note = graded("C77", f"supply.voltage {supply} V; pump.voltage {plate} V; pump.frequency 50 Hz").note
    said = f"; a pump on a transformer: give what the transformer puts out, {plate} V, as the voltage of the supply"
    assert note == "plate 50 Hz, supply 50 Hz" + (said if through else "")


@pytest.mark.parametrize(
    ("region", "volts", "frequency", "nearest", "grades"),
    [
        # 230 V -6 to +10 %, at a pinch 10 % either way: 216.2 to 253, 207 to 253 V
        ("UK", 217, "50 Hz", 230, "pass"), ("UK", 216, "50 Hz", 230, "marginal"), ("UK", 208, "50 Hz", 230, "marginal"), ("UK", 206, "50 Hz", 230, "fail"),
        ("UK", 252, "50 Hz", 230, "pass"), ("UK", 254, "50 Hz", 230, "fail"), ("UK", 400, "50 Hz", 400, "pass"), ("UK", 230, "60 Hz", 230, "fail"),
        ("UK", 12, "direct current", 12, "pass"), ("UK", 24, "direct current", 24, "pass"), ("UK", 230, "direct current", 230, "fail"), ("UK", 12, "50 Hz", 12, "pass"),
        # 120 V 5 % either way, at a pinch 8.3 % under and 5.8 % over: 114 to 126, 110.04 to 126.96 V
        ("US", 115, "60 Hz", 120, "pass"), ("US", 113, "60 Hz", 120, "marginal"), ("US", 110, "60 Hz", 120, "fail"), ("US", 126.5, "60 Hz", 120, "marginal"), ("US", 126.05, "60 Hz", 120, "marginal"), ("US", 113.95, "60 Hz", 120, "marginal"),
        ("US", 127.5, "60 Hz", 120, "fail"), ("US", 208, "60 Hz", 208, "pass"), ("US", 240, "60 Hz", 240, "pass"), ("US", 120, "50 Hz", 120, "fail"),
    ],
)  # fmt: skip
def test_a_country_has_its_own_supply(region, volts, frequency, nearest, grades):
    found = graded("C78", f"supply.voltage {volts} V; supply.frequency {frequency}", region=region)
    assert found.grade == grades and found.note == f"against {nearest} V, {'50 Hz' if region == 'UK' else '60 Hz'}; typed {frequency}"


def test_what_the_cable_carries_is_told_with_the_table():
    assert graded("C75", "supply.breaker 16 A", cable_carries=20.0).note == "the cable carries 20 A; grouping, length and heat take more off"
    table = "22 A for 1.5 mm2 (BS 7671 Table 4D4A, two-core in a duct in the ground; from memory)"
    assert (
        graded("C75", "supply.breaker 16 A; supply.conductor 1.5 mm2", cable_carries=20.0).note
        == f"the cable carries 20 A, by the table {table}; grouping, length and heat take more off"
    )


def test_a_device_protects_people_up_to_thirty_or_six_milliamperes():
    assert (
        protects(0.030, "UK") and protects(0.030 * (1 + 5e-10), "UK") and not protects(0.030001, "UK") and protects(0.006, "US") and not protects(0.0061, "US")
    )


@pytest.mark.parametrize(
    ("changes", "region", "grades", "value"),
    [
        ("supply.residual_current none", "UK", "fail", "absent"),
        ("supply.residual_current tested by instrument; supply.residual_rating 30 mA", "UK", "pass", "by your answer: present, tested by button and instrument"),
        ("supply.residual_current tested by button; supply.residual_rating 30 mA", "UK", "marginal", "by your answer: present, tested by button only"),
        ("supply.residual_current tested by button; supply.residual_rating 100 mA", "UK", "fail", "trips at 100 mA, more than the 30.0 mA that protect people"),
        ("supply.residual_current tested by instrument; supply.residual_rating 30 mA", "US", "fail", "trips at 30.0 mA, more than the 6.00 mA that protect people"),
        ("supply.residual_rating 30 mA", "UK", "not shown", 'needs a word, one of "tested by instrument", "tested by button" or "none"'),
        ("supply.residual_current tested by button", "UK", "not shown", "needs rating of the residual-current device, at which it trips"),
    ],
)  # fmt: skip
def test_residual_current_protection_is_answered_and_rated(changes, region, grades, value):
    found = graded("C41", changes, region=region)
    assert found.grade == grades and (found.value == value or grades == "not shown" and found.value.startswith("needs"))
    assert bool(found.remedy) == (grades in ("fail", "marginal"))


# --- people -------------------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("changes", "depth", "grades", "value"),
    [
        ("site.use private", 0.0, "pass", "none, by your answer: stone or a rigid grille at or above the water"), ("site.use public", 0.0, "pass", "none, by your answer"),
        ("site.use private", 50, "marginal", "50.0 mm of free water; only with no child under six unattended, in writing"),
        ("site.use private", 51, "fail", "51.0 mm of free water, where a child can reach it"),
        ("site.use public", 50, "fail", "50.0 mm of free water, where a child can reach it, at a public site"),
    ],
)  # fmt: skip
def test_open_water_is_refused_by_its_depth_and_by_who_comes_near(changes, depth, grades, value):
    found = graded("C51", f"{changes}; site.open_water {depth:g} mm")
    assert found.grade == grades and found.value.startswith(value) and ("public site" in found.value) == ("public site" in value)


COOL = "flow.water_temperature 20 degC; climate.splash 5 L/day"


@pytest.mark.parametrize(
    ("changes", "warming", "grades", "value"),
    [
        ("site.use care premises; site.legionella in place", 0.0, "fail", "care or health premises: refer to the duty holder before anything is built"),
        ("site.use public; site.legionella in place", 0.0, "pass", "by your answer: written assessment in place"),
        ("site.use public; site.legionella commissioned", 0.0, "marginal", "public, design stage, assessment commissioned"),
        ("site.use public; site.legionella none", 0.0, "fail", "public; assessment: none"),
        (f"site.use private; site.legionella low splash, private; {COOL}", 0.0, "pass", "by your answer: private, low splash"),
        (f"site.use private; site.legionella low splash, private; {COOL}", None, "pass", "by your answer: private, low splash"),
        ("site.use private; site.legionella low splash, private; flow.water_temperature 25 degC; climate.splash 5 L/day", None, "pass", "by your answer: private, low splash"),
        (f"site.use private; site.legionella low splash, private; {COOL}", 5.0, "pass", "by your answer: private, low splash"),
        (f"site.use private; site.legionella low splash, private; {COOL}", 5.1, "marginal", "by your answer: private; assessment: low splash, private but the water is warm"),
        (f"site.use private; site.legionella none; {COOL}", 0.0, "marginal", "by your answer: private; assessment: none"),
        ("site.use private; site.legionella low splash, private; flow.water_temperature 20 degC; climate.splash 10 L/day", 0.0, "pass", "by your answer: private, low splash"),
        ("site.use private; site.legionella low splash, private; flow.water_temperature 20 degC; climate.splash 11 L/day", 0.0, "marginal",
         "by your answer: private; assessment: low splash, private but much of it splashes"),
        ("site.use private; site.legionella low splash, private; flow.water_temperature 26 degC; climate.splash 11 L/day", 0.0, "marginal",
         "by your answer: private; assessment: low splash, private but the water is warm"),
    ],
)  # fmt: skip
def test_droplets_are_judged_by_warmth_splash_and_who_breathes_them(changes, warming, grades, value):
    """Warm is over 25 degC, much splash over 10 litres a day: judgement."""
    found = graded("C52", changes, **({} if warming is None else {"warming": warming}))
    assert (found.grade, found.value) == (grades, value)


def test_slings_have_a_limit_by_the_flattest_leg_or_are_not_used():
    def slings(changes="", share=0.4, unslung=False):
        return graded("C65", changes, sling_share=share, unslung=unslung, slings_answered=lambda: None)

    assert slings("site.sling_angle 30 deg").grade == "pass" and slings("site.sling_angle 29 deg").grade == "fail"
    assert (
        slings("site.sling_angle 60 deg", 0.50).grade == "pass"
        and slings("site.sling_angle 60 deg", 0.51).grade == "marginal"
        and slings("site.sling_angle 60 deg", 1.01).grade == "fail"
    )
    assert slings("site.slings used; site.sling_angle 60 deg").note == "" == slings("site.sling_angle 60 deg").note
    kept = slings(f"site.slings {PLANNED}; site.sling_mass 90 kg; site.sling_angle 60 deg")
    assert kept.note == "no slings, by your answer, but a mass on them is on file, and counts: empty that box where none are used"
    none = slings(f"site.slings {PLANNED}", math.inf, True)
    assert none.grade == "does not apply" and none.note == "by your answer: no slings are used" and none.value == "nothing to compare with"


def test_nobody_is_asked_for_an_angle_before_it_is_known_whether_there_are_slings():
    def nobody_says():
        raise Unknown("site.slings")

    found = graded("C65", "", sling_share=0.4, unslung=False, slings_answered=nobody_says)
    assert found.grade == "not shown" and found.needs[0] == "site.slings"


def test_a_heavy_lift_that_is_planned_without_slings_is_partly_met():
    planned = f"site.slings {PLANNED}"
    assert graded("C48", planned, lift_of_all=4.0, unslung=True).grade == "marginal" and graded("C48", planned, lift_of_all=4.0, unslung=False).grade == "fail"
    assert (
        graded("C48", planned, lift_of_all=4.0, unslung=True).note
        == "by your answer: no slings; every heavier piece is wheeled, rolled or carried by several, planned in writing"
    )
    assert graded("C48", "site.slings not used, and not planned yet", lift_of_all=4.0, unslung=True).grade == "fail"


@pytest.mark.parametrize(
    ("kind", "changes", "held", "soil", "grades"),
    [
        (WALL, "site.use private; blade.wall_retains nothing", 0.6, 0.0, "pass"), (WALL, "site.use private; blade.wall_retains nothing", 1.0, 0.0, "marginal"),
        (WALL, "site.use private; blade.wall_retains nothing", 1.01, 0.0, "fail"), (WALL, "site.use private; blade.wall_retains soil", 0.3, 0.0, "fail"),
        (WALL, "site.use public; blade.wall_retains nothing", 0.3, 0.0, "fail"), (VESSEL, "site.use public", 0.3, 0.0, "pass"), (VESSEL, "", 0.3, 0.15, "pass"),
        (VESSEL, "", 0.3, 0.16, "fail"), (VESSEL, "site.engineered yes", 0.3, 0.16, "marginal"), (VESSEL, "site.engineered no", 0.3, 0.16, "fail"),
    ],
)  # fmt: skip
def test_a_wall_stands_alone_low_and_away_from_people(kind, changes, held, soil, grades):
    assert grade("C62", changes, kind, held_back=held, soil_held=soil, fallen="") == grades


def test_an_engineer_holds_nothing_that_falls_by_itself():
    yes = FewNumbers(design=design(VESSEL, "site.engineered yes"), fallen="")
    assert engineered(yes) == "held as a structural engineer has designed it; this kit counts no fixing"
    assert engineered(FewNumbers(design=yes.design, fallen="it falls by itself")) == "" == engineered(FewNumbers(design=design(VESSEL), fallen=""))


# --- water, ground, loads -----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("changes", "days", "grades"),
    [("", 7, "pass"), ("", 6.9, "marginal"), ("", 3, "marginal"), ("", 2.9, "fail"), ("site.unattended 5 day", 6, "marginal"), ("site.unattended 5 day", 4.9, "fail"),
     ("site.unattended 14 day", 13, "fail"), ("site.unattended 14 day", 14, "pass")],
)  # fmt: skip
def test_water_lasts_a_week_or_as_long_as_nobody_comes(changes, days, grades):
    assert grade("C12", changes, days=days * 86400.0) == grades


def test_a_bed_is_told_how_many_blocks_it_has_room_for():
    """3 m less twice 600 and 10 mm leaves 1780 mm, 2.5 m leaves 1280: of 600 x 400 mm with 10 mm round, 2 x 3 one way (1200 + 20, 1200 + 20) and 4 x 2 turned."""
    bed = "catch.apron 600 mm; ground.lining_thickness 10 mm; ground.clearance 10 mm; reservoir.block_length 600 mm; reservoir.block_width 400 mm; reservoir.block_height 400 mm"
    note = graded("C12", f"{bed}; site.bed_length 3 m; site.bed_width 2.5 m", days=8 * 86400.0).note
    assert note == "a bed of that size, apron taken off, has room for 8 blocks, 4 x 2 turned (2 x 3 the other way)"
    assert graded("C12", bed, days=8 * 86400.0).note == ""


@pytest.mark.parametrize(
    ("changes", "grades", "note"),
    [
        ("pump.cut_out yes; pump.covered 50 mm; site.unattended 5 day", "pass", ""), ("pump.cut_out yes; pump.covered 49 mm", "marginal", ""), ("pump.cut_out yes; pump.covered 24 mm", "fail", ""),
        ("pump.cut_out no; pump.covered 50 mm; site.unattended 0 day", "pass", ""), ("pump.cut_out yes; pump.covered 25 mm", "marginal", ""),
        ("pump.cut_out no; pump.covered 500 mm; site.unattended 1 day", "fail", "no low-water cut-out, and nobody looks after it all the time"),
    ],
)  # fmt: skip
def test_a_pump_is_covered_and_stops_before_it_is_not(changes, grades, note):
    found = graded("C13", changes)
    assert (found.grade, found.note) == (grades, note)


@pytest.mark.parametrize(
    ("opening", "solids", "grades"),
    [(2.0, 2.0, "pass"), (2.1, 2.0, "fail"), (1.9, 5.0, "marginal"), (1.0, 1.0, "marginal"), (1.5, 1.4, "fail"), (0.9, 5.0, "fail")],
)
def test_a_strainer_is_no_wider_than_the_pump_passes_and_no_finer_than_it_can_be(opening, solids, grades):
    assert grade("C82", f"pump.strainer {opening} mm; pump.solids {solids} mm") == grades


FIRM, KNOWING, RUNS = (
    "firm soil, battered or braced, spoil kept back",
    "competent person on site, nobody kneels in it",
    "wet or running soil, or nobody competent",
)


@pytest.mark.parametrize(
    ("sides", "water", "depth", "grades"),
    [
        (FIRM, "", 0.9, "pass"), (FIRM, "", 1.2, "marginal"), (FIRM, "", 1.21, "fail"), (FIRM, "0 mm", 0.9, "pass"), (FIRM, "50 mm", 0.5, "marginal"), (FIRM, "50 mm", 1.21, "fail"),
        (KNOWING, "", 0.5, "marginal"), (KNOWING, "", 1.2, "marginal"), (KNOWING, "", 1.21, "fail"), (RUNS, "", 0.1, "fail"),
    ],
)  # fmt: skip
def test_a_pit_is_as_deep_as_its_sides_are_kept(sides, water, depth, grades):
    found = graded("C32", f"site.pit_sides {sides}" + (f"; site.ground_water {water}" if water else ""), ground_depth=depth)
    wet = "; ground water stands in the pit, so that its sides are not firm" if water == "50 mm" else ""
    assert found.grade == grades and found.note == f"by your answer: {sides}{wet}"


@pytest.mark.parametrize(
    ("check", "use", "number", "grades"),
    [
        ("C25", "private", 1.5, "pass"), ("C25", "private", 1.2, "marginal"), ("C25", "private", 1.19, "fail"), ("C25", "public", 2.0, "pass"), ("C25", "public", 1.5, "marginal"),
        ("C25", "school", 1.49, "fail"), ("C25e", "private", 1.5, "pass"), ("C25e", "public", 1.9, "marginal"),
    ],
)  # fmt: skip
def test_what_stands_where_others_come_stands_twice_as_fast(check, use, number, grades):
    found = graded(check, f"site.use {use}", tipping_full=number, tipping_empty=number, fallen="")
    assert found.grade == grades
    held = graded(check, f"site.use {use}; site.engineered yes", tipping_full=1.0, tipping_empty=1.0, fallen="")
    assert held.grade == "marginal" and held.note.startswith("by your answer: held as a structural engineer")


def test_a_wall_that_holds_something_back_is_not_worked_out_here():
    assert graded("C25", "site.use private; blade.wall_retains nothing", WALL, tipping=1.6).grade == "pass"
    soil = graded("C25", "site.use private; blade.wall_retains soil", WALL, tipping=9.0)
    assert soil.grade == "fail" and soil.value == "cannot be worked out" and soil.note.startswith("the push of the soil behind the wall is not worked out here")
    engineer = graded("C25", "site.use private; blade.wall_retains soil; site.engineered yes", WALL, tipping=9.0, fallen="")
    assert (engineer.grade, engineer.value) == ("marginal", "not worked out here") and engineer.note.startswith("by your answer: held as a structural engineer")


def test_what_hangs_over_the_edge_of_the_blocks_presses_unevenly():
    def on_blocks(used, over):
        return graded("C20", "", heavier=SimpleNamespace(spread_utilisation=used), overhang=over)

    assert (
        on_blocks(0.80, 0.001).grade == "pass"
        and on_blocks(0.805, 0.0).grade == "marginal"
        and on_blocks(1.01, 0.0).grade == "fail"
        and on_blocks(0.1, 0.002).grade == "fail"
    )
    assert (
        on_blocks(0.5, 0.001).note == "" and on_blocks(0.1, 0.02).note == "what stands on the blocks reaches 20.0 mm over their edge: that part carries nothing"
    )


def test_what_of_a_stones_base_counts_is_told():
    assert graded("C25", "site.use private; stones.base_share 80 %", DRILLED, tipping=2.0, fallen="").note.startswith(
        "80.0 % of a stone's width counts as its base ("
    )
    fallen = graded("C25", "site.use private; stones.base_share 80 %", DRILLED, tipping=0.0, fallen="stone 2 falls by itself")
    assert fallen.note.startswith("stone 2 falls by itself; 80.0 % of") and fallen.grade == "fail"


def test_cut_walls_that_are_held_again_are_partly_met():
    def panel(answer):
        return graded("C21", f"lining.panel_clearance 20 mm{answer}", FALLS)

    assert panel("").grade == "fail" == panel("; reservoir.cut_walls no").grade and panel("; reservoir.cut_walls yes").grade == "marginal"


def test_splash_is_that_of_the_flow_that_comes_where_a_sheet_is_thrown():
    coming = SimpleNamespace(apron_share=0.8)
    assert graded("C17", "", WALL, apron_share=1.2, coming=coming).number == 0.8 and graded("C17", "", FALLS, apron_share=0.6, coming=coming).number == 0.6
    assert graded("C17", "", VESSEL, apron_share=1.2, coming=coming).number == 1.2


def test_branches_without_valves_never_share_water():
    assert grade("C63", "stones.valves yes", DRILLED, throttle=1.0) == "pass" and grade("C63", "stones.valves yes", DRILLED, throttle=2.0) == "marginal"
    assert grade("C63", "stones.valves yes", DRILLED, throttle=1.001) == "marginal" and grade("C63", "stones.valves yes", DRILLED, throttle=2.001) == "fail"
    assert grade("C63", "stones.valves yes", DRILLED, throttle=2.1) == "fail" == grade("C63", "stones.valves no", DRILLED, throttle=0.1)


LEVELS = (
    "levels.block_top -100 mm; reservoir.block_height 500 mm; ground.lining_thickness 10 mm; ground.sand 50 mm; ground.sub_base 100 mm; reservoir.lowest_level 100 mm; reservoir.running_level 350 mm;"
    " reservoir.static_level 380 mm; reservoir.overflow_level 420 mm; catch.stone_thickness 50 mm; levels.staple_line -40 mm; levels.liner_edge 0 mm; vessel.stands_on blocks; vessel.height 400 mm"
)  # fmt: skip


@pytest.mark.parametrize(
    ("changes", "gap", "said"),
    [
        # what may touch does so: overflow 20 mm under the blocks' top counts for nothing, static 40 mm under the overflow is the closest
        ("", 0.04, "closest: static water below overflow, 40.0 mm"),
        ("reservoir.static_level 415 mm", 0.005, "closest: static water below overflow, 5.00 mm"),
        ("reservoir.running_level 390 mm", -0.01, "closest: running water below static water, -10.0 mm"),  # what may touch must not cross
        ("reservoir.overflow_level 410 mm; reservoir.block_height 410 mm; levels.staple_line -15 mm", 0.03, "closest: static water below overflow, 30.0 mm"),
    ],
)  # fmt: skip
def test_levels_stand_in_their_order(changes, gap, said):
    found = graded("C57", "; ".join(filter(None, (LEVELS, changes))))
    assert found.number == pytest.approx(gap) and found.note == said


def test_notes_are_joined_and_what_is_empty_is_left_out():
    coming = SimpleNamespace(trough_share=0.01, thin_lip_said="thin", rill_notes=("one", "two"), freeboard=0.03)
    assert (
        graded("C79", "", WALL, coming=coming, coming_said="more").note == "thin; more"
        and graded("C79", "", WALL, coming=coming, coming_said="").note == "thin"
    )
    rill = graded("C60", "", FALLS, coming=coming, coming_said="", freeboard=0.05)
    assert rill.note == "one; two" and rill.number == 0.03 and graded("C60", "", FALLS, coming=coming, coming_said="", freeboard=0.02).number == 0.02
