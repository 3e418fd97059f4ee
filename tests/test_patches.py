"""What touches the blocks, as shapes; and levels that not every design has."""

import math
from pathlib import Path

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.follows.levels import gaps, levels
from brimwork.design.judged import checks
from brimwork.design.typed import file, patches
from brimwork.units import InputError

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"
BOWL, STONES, BLADE = (file.load_design(DESIGNS / f"{name}.toml") for name in ("library-bowl", "school-columns", "terrace-blade"))
# An L: 300 by 300 mm with a corner of 200 by 200 mm taken out, so 0.09 - 0.04 = 0.05 m2.
L_SHAPE = [["0 mm", "0 mm"], ["300 mm", "0 mm"], ["300 mm", "100 mm"], ["100 mm", "100 mm"], ["100 mm", "300 mm"], ["0 mm", "300 mm"]]


def on_blocks(design):
    return design.having("vessel.stands_on", "blocks")


def graded(design, check):
    return next(f for f in checks.findings(chain_of(design)) if f.id == check and f.grade != "does not apply")


def test_a_foot_drawn_by_its_corners_goes_before_its_diameters():
    drawn = chain_of(on_blocks(BOWL).having("vessel.foot_corners", L_SHAPE))
    assert drawn.patch == pytest.approx(0.05, rel=1e-12)
    # 72 kg and 95 L at 998.2 kg/m3 on 0.05 m2: (72 + 94.83) x 9.80665 / 0.05 = 32.7 kPa
    assert drawn.block_pressure == pytest.approx(32.7e3, rel=2e-3)
    ((outline,),) = drawn.contact_shapes()
    assert min(x for x, _ in outline) == pytest.approx(0.2), "moved with the vessel, 200 mm off the middle"


@pytest.mark.parametrize("design", [BOWL, on_blocks(BOWL), STONES, STONES.having("stones.stand_on", "blocks")])
def test_the_shapes_that_are_drawn_have_the_area_that_presses(design):
    chain = chain_of(design)
    drawn = sum(patches.area(outer) - sum(map(patches.area, holes)) for outer, *holes in chain.contact_shapes())
    count = 1 if design.kind == "overflowing vessel" else 3
    assert drawn == pytest.approx(count * chain.patch, rel=0.004), "a circle is drawn with 48 corners, 0.3 % short of it"


def test_corners_that_enclose_nothing_or_cross_are_refused():
    crossed = [["0 mm", "0 mm"], ["300 mm", "300 mm"], ["300 mm", "0 mm"], ["0 mm", "300 mm"]]
    for bad, told in (
        (crossed, "crosses"),
        ([["0 mm", "0 mm"], ["1 mm", "1 mm"], ["2 mm", "2 mm"]], "one line"),
        (crossed[:2], "three corners"),
        ("0 mm", "three corners"),
    ):
        with pytest.raises(InputError, match=told):
            BOWL.having("vessel.foot_corners", bad)


def test_corners_are_saved_and_read_again(tmp_path):
    file.save_design(on_blocks(BOWL).having("vessel.foot_corners", L_SHAPE), tmp_path / "foot.toml")
    assert len(file.load_design(tmp_path / "foot.toml")["vessel.foot_corners"]) == 6


def test_what_reaches_over_the_edge_of_the_blocks_is_told():
    assert "over their edge" not in graded(BOWL, "C20").note
    # half of the blocks is 600 mm; a slab of 500 mm whose middle lies 420 mm off it ends at 670 mm
    off = graded(BOWL.having("vessel.offset", "420 mm"), "C20")
    assert off.grade == "fail" and "70.0 mm" in off.note


def test_a_pump_with_nothing_to_stop_it_fails_however_deep_it_lies():
    deep = BOWL.having("pump.covered", "200 mm").having("pump.cut_out", None)
    assert graded(deep, "C13").grade == "not shown"
    bare = deep.having("pump.cut_out", "no")
    assert graded(bare.having("site.unattended", "3 day"), "C13").grade == "fail"
    assert "cut-out" in graded(bare.having("site.unattended", "3 day"), "C13").note
    assert graded(bare.having("site.unattended", "0 day"), "C13").grade == "pass"
    assert graded(bare.having("pump.cut_out", "yes"), "C13").grade == "pass"


def test_flat_slings_fail_whatever_their_rating():
    legs = BOWL.having("site.sling_legs", 2).having("site.sling_mass", "100 kg").having("site.sling_rating", "50 kN")
    assert graded(legs.having("site.sling_angle", "45 deg"), "C65").grade == "pass"
    assert graded(legs.having("site.sling_angle", "25 deg"), "C65").grade == "fail"


def test_wind_widens_the_splash_by_half():
    assert chain_of(BOWL.having("assumptions.wind_factor", 1.5)).apron_wanted == pytest.approx(1.5 * chain_of(BOWL).apron_wanted)
    assert chain_of(BLADE.having("assumptions.wind_factor", 1.5)).apron_share == pytest.approx(chain_of(BLADE).apron_share / 1.5)


def test_levels_that_a_design_has_stand_in_their_order():
    assert not {"pump intake", "cut-out", "top-up"} & {low for low, _, _ in gaps(BOWL)}
    full = BOWL.having("pump.intake_level", "60 mm").having("reservoir.cut_out_level", "180 mm").having("reservoir.top_up_level", "300 mm")
    names = [level.name for level in levels(full)]
    order = ["reservoir floor", "pump intake", "lowest water", "cut-out", "top-up", "running water", "static water", "overflow"]
    assert [name for name in names if name in order] == order
    assert graded(full.having("reservoir.cut_out_level", "120 mm"), "C57").grade == "fail", "a cut-out below the lowest level protects nothing"
    assert graded(full.having("pump.intake_level", "170 mm"), "C57").grade == "fail"
    assert graded(BOWL.having("catch.stone_thickness", "600 mm"), "C57").grade == "fail", "stone over the rim"


def test_a_running_level_that_the_start_cannot_leave_is_told():
    # the library bowl draws 12.2 mm on start: from 380 mm it settles at 368 mm, further from the 372 mm given than the 3 mm to which levels are set
    note = graded(BOWL, "C14").note
    assert (
        note.startswith("Running level above the floor: given 372 mm (14.6 in); from static level and start drop 368 mm (14.5 in)") and "top-up valve" in note
    )
    assert graded(BOWL.having("reservoir.running_level", "370 mm"), "C14").note == "", "2 mm apart are one level"
    low = graded(BOWL.having("reservoir.running_level", "300 mm"), "C14").note
    assert "300 mm" in low and "368 mm" in low and "less water" in low


def test_an_assumption_counts_until_the_design_says_something_else_and_says_its_basis():
    assert "assumptions.air_density" not in BOWL.values
    assert BOWL["assumptions.air_density"] == 1.25 and BOWL.given("assumptions.air_density").basis == "common practice"
    assert BOWL.having("assumptions.air_density", "1.2 kg/m3", "read")["assumptions.air_density"] == 1.2
    assert math.isclose(BOWL["flow.water_temperature"], 293.15)
