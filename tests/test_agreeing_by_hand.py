"""Values that also follow from others, row by row: the other number by plain arithmetic, how near the two must be, which counts, and what is said of them.

A chain stands here as the few numbers that a row asks for.
"""

from types import SimpleNamespace

import pytest
from few_numbers import FewNumbers, design

from brimwork.design.follows.agreeing import AGREEING, AT_LEAST, AT_MOST, THE_SAME, Agreeing, counted, free_depth, pieces
from brimwork.design.follows.measured import CANNOT, DIFFERS, unbelieved
from brimwork.design.judged.contradictions import contradictions
from brimwork.design.typed.asking import meant
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.patches import rectangular_patch
from brimwork.units import InputError

VESSEL, DRILLED, WALL, FALLS = "overflowing vessel", "drilled stones", "blade", "cascade"
EVERY = {VESSEL, DRILLED, WALL, FALLS}


def row(rows, key: str, place: int = 0) -> Agreeing:
    return [one for one in rows if one.key == key][place]


# --- how near they must be ----------------------------------------------------------------------------------------------------------

# key: what it must be, by how much, as a share, which counts, of which kinds
NEAR = {
    "vessel.water": (AT_LEAST, 0.05, True, max, {VESSEL}), "pump.covered": (THE_SAME, 0.005, False, min, EVERY), "reservoir.running_level": (THE_SAME, 0.003, False, max, EVERY),
    "overflow_pipe.head": (THE_SAME, 0.010, False, min, EVERY), "overflow_pipe.catch_area": (AT_LEAST, 0.01, True, max, EVERY), "blade.wall_height": (AT_LEAST, 0.020, False, max, {WALL}),
    "blade.trough_length": (AT_LEAST, 0.001, False, max, {WALL}), "cascade.pool_area": (AT_MOST, 0.02, True, max, {FALLS}), "catch.stone_thickness": (AT_LEAST, 0.001, False, None, EVERY),
    "supply.circuit_load": (AT_LEAST, 0.02, True, max, EVERY), "supply.voltage_drop": (THE_SAME, 0.15, True, max, EVERY), "supply.resistance": (THE_SAME, 0.15, True, max, EVERY),
    "supply.cable_rating": (AT_MOST, 0.01, True, min, EVERY), "pump.starting_current": (AT_LEAST, 0.02, True, max, EVERY), "supply.cord_route": (AT_LEAST, 0.05, False, max, EVERY),
    "site.footing_distance": (THE_SAME, 0.05, False, min, EVERY), "site.tree_distance": (THE_SAME, 0.05, False, min, EVERY), "buying.overflow_run": (AT_LEAST, 0.05, False, max, EVERY),
    "site.open_water": (AT_LEAST, 0.001, False, max, EVERY), "site.lift_mass": (AT_LEAST, 0.01, True, max, EVERY), "site.sling_mass": (AT_LEAST, 0.01, True, max, EVERY),
    "site.widest_item": (AT_LEAST, 0.001, False, max, {VESSEL, DRILLED, WALL}), "lining.panel_clearance": (AT_MOST, 0.001, False, min, {VESSEL, DRILLED}),
}  # fmt: skip
CANNOT_BE = [
    ("measured.flow", AT_MOST, 0.05, True, EVERY), ("measured.flow", AT_MOST, 0.05, True, EVERY), ("measured.current", AT_LEAST, 0.05, True, EVERY),
    ("measured.start_drop", AT_MOST, 0.001, False, EVERY), ("measured.filled", AT_MOST, 0.05, True, EVERY), ("measured.rim_levels", AT_LEAST, 0.0, False, {VESSEL}),
]  # fmt: skip
DIFFER = [
    ("measured.flow", AT_MOST, 0.25, True, EVERY), ("measured.start_drop", THE_SAME, 0.5, True, EVERY), ("measured.current", THE_SAME, 0.4, True, EVERY),
    ("measured.filled", THE_SAME, 0.1, True, EVERY), ("vessel.rim_out_of_level", THE_SAME, 0.002, False, {VESSEL}),
]  # fmt: skip
ROWS = [
    *((one, *NEAR[one.key]) for one in AGREEING),
    *((one, *asked[1:4], None, asked[4]) for one, asked in zip((*CANNOT, *DIFFERS), (*CANNOT_BE, *DIFFER), strict=True)),
]


def test_every_row_stands_in_these_tables():
    assert (
        [one.key for one in AGREEING] == [*NEAR]
        and [one.key for one in CANNOT] == [key for key, *_ in CANNOT_BE]
        and [one.key for one in DIFFERS] == [key for key, *_ in DIFFER]
    )


@pytest.mark.parametrize(("one", "must", "near", "share", "worse", "kinds"), ROWS, ids=[one.key for one, *_ in ROWS])
def test_two_values_agree_as_near_as_does_no_harm(one, must, near, share, worse, kinds):
    assert one.must == must and {*one.kinds} == kinds
    if worse is None:
        assert one.worse is None
    else:
        assert one.worse(2.0, 3.0) == worse(2.0, 3.0)
    for other in (8.0, -8.0):  # a level may lie below nought
        room = near * 8.0 if share else near
        for off, within in ((0.999 * room, True), (1.001 * room + 1e-9, False)):
            assert one.agrees(other + off, other) == (within or must == AT_LEAST)
            assert one.agrees(other - off, other) == (within or must == AT_MOST)


def test_what_is_just_at_the_limit_agrees():
    for must in (THE_SAME, AT_LEAST, AT_MOST):
        assert Agreeing("pump.covered", must, len, "", "", 0.5).agrees(2.5, 2.0) and Agreeing("pump.covered", must, len, "", "", 0.5).agrees(1.5, 2.0)
        assert Agreeing("pump.covered", must, len, "", "", 0.25, share=True).agrees(2.5, 2.0) and Agreeing(
            "pump.covered", must, len, "", "", 0.25, share=True
        ).agrees(1.5, 2.0)


# --- the other number of each -------------------------------------------------------------------------------------------------------

BAY, FAR = rectangular_patch(0.2, 0.2), rectangular_patch(0.2, 0.2, (1.0, 0.0))


def place(**more):
    """Footing and tree by the name of the place; two pieces, of which the nearer stands on a slab."""
    return SimpleNamespace(
        catch_half=(0.5, 0.4), bay_middle=(0.0, 0.0), supply=(3.0, 4.0), overflow_start=(1.0, 1.0), overflow_end=(4.0, 5.0), bay=BAY, footing="footing", tree="tree",
        from_pit={"footing": 1.2, "tree": 3.4}.get, standing=(SimpleNamespace(foot=FAR), SimpleNamespace(foot=rectangular_patch(0.2, 0.2, (0.0, 2.0)))), slab_under=lambda piece: None,
        **more,
    )  # fmt: skip


FOLLOWS = [
    # between 4 m2 and 1 m2, 300 mm high: 0.1 x (4 + 2 + 1) = 0.7 m3; 60 kg of hardwood at 600 kg/m3 are 0.1 m3
    ("vessel.water", VESSEL, "vessel.height 300 mm; vessel.mass 60 kg", {"vessel_surface": 4.0, "geometry": SimpleNamespace(standing=[SimpleNamespace(foot=rectangular_patch(1.0, 1.0))])}, 0.6),
    ("vessel.water", VESSEL, "vessel.height 300 mm; vessel.mass 900 kg", {"vessel_surface": 1.0, "geometry": SimpleNamespace(standing=[SimpleNamespace(foot=BAY)])}, 0.0),
    ("pump.covered", VESSEL, "reservoir.lowest_level 150 mm; pump.intake_level 50 mm", {}, 0.1),
    ("reservoir.running_level", VESSEL, "reservoir.static_level 380 mm", {"start_drop": 0.02}, 0.36),
    ("reservoir.running_level", VESSEL, "reservoir.static_level 380 mm; reservoir.top_up_level 370 mm", {"start_drop": 0.02}, 0.37),
    ("reservoir.running_level", VESSEL, "reservoir.static_level 380 mm; reservoir.top_up_level 350 mm", {"start_drop": 0.02}, 0.36),
    ("overflow_pipe.head", VESSEL, "overflow_pipe.bore 40 mm", {"levels": {"liner edge": -0.01, "overflow": -0.09}}, 0.06),
    ("overflow_pipe.catch_area", VESSEL, "", {"geometry": place()}, 0.8),
    ("blade.wall_height", WALL, "", {"levels": {"lip": 0.95}}, 0.95),
    ("blade.trough_length", WALL, "blade.lip_width 900 mm", {}, 0.9),
    ("cascade.pool_area", FALLS, "cascade.width 500 mm; cascade.tread 300 mm", {}, 0.15),
    ("catch.stone_thickness", VESSEL, "lining.smallest_stone 40 mm", {}, 0.04),
    ("supply.circuit_load", VESSEL, "", {"current": 1.5}, 1.5),
    ("supply.voltage_drop", VESSEL, "supply.conductor 4 mm2", {}, 0.0132),
    ("supply.resistance", VESSEL, "supply.conductor 14 AWG", {}, 3.07 / 304.8),  # ohms in a thousand feet
    ("supply.cable_rating", VESSEL, "supply.conductor 4 mm2", {}, 37.0),
    ("pump.starting_current", VESSEL, "", {"current": 1.5}, 1.5),
    ("supply.cord_route", VESSEL, "", {"geometry": place(), "levels": {"reservoir floor": -0.5}}, 5.5),  # 3 and 4 m, and half a metre up
    ("site.footing_distance", VESSEL, "", {"geometry": place()}, 1.2),
    ("site.tree_distance", VESSEL, "", {"geometry": place()}, 3.4),
    ("buying.overflow_run", VESSEL, "", {"geometry": place()}, 5.0),
    ("site.widest_item", VESSEL, "vessel.rim_diameter 900 mm; vessel.height 400 mm", {}, 0.4),
    ("site.widest_item", DRILLED, "", {"sizes": ((0.4, 0.9, 0), (0.6, 0.5, 0), (0.8, 0.3, 0))}, 0.5),  # each on its narrow side: 0.4, 0.5, 0.3
    ("site.widest_item", WALL, "blade.trough_length 900 mm; blade.trough_width 250 mm", {}, 0.25),
    ("lining.panel_clearance", VESSEL, "", {"geometry": place()}, 0.8),  # a metre between the middles, less a tenth of each
]  # fmt: skip


@pytest.mark.parametrize(("key", "kind", "changes", "numbers", "found"), FOLLOWS)
def test_the_other_number_follows_from_the_rest(key, kind, changes, numbers, found):
    assert row(AGREEING, key).found(FewNumbers(design=design(kind, changes), **numbers)) == pytest.approx(found, abs=1e-9)


def test_a_slab_under_a_piece_reaches_nearer_to_the_bay_than_its_foot():
    there = place()
    there.slab_under = lambda piece: rectangular_patch(0.4, 0.4, (1.0, 0.0)) if piece is there.standing[0] else None
    assert row(AGREEING, "lining.panel_clearance").found(FewNumbers(design=design(VESSEL), geometry=there)) == pytest.approx(0.7)


def test_what_cannot_be_worked_out_does_not_follow():
    def fails(error):
        def other(chain):
            raise error

        return Agreeing("pump.covered", THE_SAME, other, "", "", own=other)

    for error in (Unknown("pump.covered"), InputError("no"), ZeroDivisionError()):
        assert fails(error).found(FewNumbers()) is None and fails(error).typed(FewNumbers()) is None
    with pytest.raises(TypeError):
        fails(TypeError()).found(FewNumbers())


@pytest.mark.parametrize(
    ("kind", "changes", "numbers", "masses"),
    [
        (VESSEL, "vessel.mass 60 kg", {"slab_count": 0}, [60.0]),
        (VESSEL, "vessel.mass 60 kg", {"slab_count": 2, "slab_mass": 35.0}, [60.0, 35.0]),
        (DRILLED, "", {"masses": (90.0, 120.0), "slab_count": 0}, [90.0, 120.0]),
        (WALL, "", {"slab_count": 0}, []),
    ],
)
def test_pieces_are_vessel_or_stones_and_slabs(kind, changes, numbers, masses):
    assert pieces(FewNumbers(design=design(kind, changes), **numbers)) == pytest.approx(masses)


def lifts(key: str, changes: str, unslung: bool = False, masses=(90.0, 120.0)) -> float:
    """Stones of 90 and 120 kg."""
    return row(AGREEING, key).found(FewNumbers(design=design(DRILLED, changes), masses=masses, slab_count=0, unslung=unslung))


def test_by_hand_goes_the_block_and_what_no_sling_is_meant_for():
    assert lifts("site.lift_mass", "") == 0.0 and lifts("site.lift_mass", "reservoir.block_mass 7 kg") == pytest.approx(7.0)
    assert lifts("site.lift_mass", "reservoir.block_mass 7 kg; site.sling_mass 120 kg") == pytest.approx(7.0)
    assert lifts("site.lift_mass", "reservoir.block_mass 7 kg; site.sling_mass 100 kg") == pytest.approx(120.0)
    assert lifts("site.lift_mass", "reservoir.block_mass 200 kg; site.sling_mass 100 kg") == pytest.approx(200.0)
    assert lifts("site.lift_mass", "", unslung=True) == pytest.approx(120.0)
    most = 120 * (1 + 1e-9)  # a mass typed in pounds comes back no nearer
    for heaviest, over in ((most, False), (120 * (1 + 0.5e-9), False), (120 * (1 + 1.005e-9), True)):
        assert lifts("site.lift_mass", "site.sling_mass 120 kg", masses=(90.0, heaviest)) == (heaviest if over else 0.0)


def test_without_slings_nobody_needs_to_know_what_the_stones_weigh():
    def lifted(changes, unslung):
        return row(AGREEING, "site.lift_mass").found(FewNumbers(design=design(DRILLED, changes), unslung=unslung, slab_count=0))

    assert (
        lifted("reservoir.block_mass 7 kg", False) == pytest.approx(7.0)
        and lifted("reservoir.block_mass 7 kg; site.sling_mass 9 kg", False) is None
        and lifted("", True) is None
    )


def test_on_the_slings_goes_what_is_heavier_than_one_person_lifts():
    assert lifts("site.sling_mass", "") == pytest.approx(120.0) and lifts("site.sling_mass", "site.lift_mass 100 kg") == pytest.approx(120.0)
    assert lifts("site.sling_mass", "site.lift_mass 120 kg") == 0.0


STONE = "catch.stone_thickness 50 mm; reservoir.cover 0 mm; reservoir.static_level 400 mm"
HELD = "vessel.water 60 L; vessel.foam 20 L; vessel.pebbles 10 L"


@pytest.mark.parametrize(
    ("kind", "changes", "numbers", "depth"),
    [
        (VESSEL, f"site.water_covered yes; {STONE}; {HELD}", {"vessel_surface": 0.5}, 0.0),
        (VESSEL, f"site.water_covered no; {STONE}; {HELD}", {"vessel_surface": 0.5}, 0.06),  # 30 L over half a square metre
        (VESSEL, f"{STONE}; vessel.water 60 L; vessel.foam 50 L; vessel.pebbles 30 L", {"vessel_surface": 0.5}, 0.0),
        (VESSEL, f"{STONE}; vessel.water 60 L", {"vessel_surface": 0.5}, 0.12),
        (WALL, f"{STONE}; blade.trough_depth 200 mm", {}, 0.2),
        (FALLS, f"{STONE}; cascade.header_volume 80 L; cascade.header_area 0.2 m2", {}, 0.4),
        (DRILLED, STONE, {}, 0.0),
        # nothing over the bay: its water stands open, as deep as the static level
        (DRILLED, "catch.stone_thickness 0 mm; reservoir.cover 0 mm; reservoir.static_level 400 mm", {}, 0.4),
        (DRILLED, "catch.stone_thickness 0 mm; reservoir.cover 40 mm; reservoir.static_level 400 mm", {}, 0.0),
        (DRILLED, "catch.stone_thickness 0 mm; reservoir.static_level 400 mm", {}, 0.4),
        (DRILLED, "reservoir.cover 0 mm; reservoir.static_level 400 mm", {}, 0.0),  # nobody said that there is no stone
        (VESSEL, "catch.stone_thickness 0 mm; reservoir.static_level 400 mm", {"vessel_surface": 0.5}, 0.4),  # what the vessel holds is not known
        (VESSEL, f"catch.stone_thickness 0 mm; reservoir.static_level 50 mm; {HELD}", {"vessel_surface": 0.5}, 0.06),
    ],
)
def test_water_stands_open_in_the_feature_or_in_a_bare_bay(kind, changes, numbers, depth):
    assert free_depth(FewNumbers(design=design(kind, changes), **numbers)) == pytest.approx(depth)


def test_a_vessel_of_which_nothing_is_known_stands_open_by_nobody_knows_how_much():
    with pytest.raises(Unknown):
        free_depth(FewNumbers(design=design(VESSEL, STONE), vessel_surface=0.5))


# --- what was measured --------------------------------------------------------------------------------------------------------------

WATER = {"rho": 1000.0}
LIFTED = [
    (CANNOT, "measured.flow", 0, "", {"pump": SimpleNamespace(Q_max=1e-3)}, 1e-3),
    (CANNOT, "measured.flow", 1, "pump.power 100 W", {"water": WATER, "static_lift": 2.0}, 0.7 * 100 / (1000 * 9.80665 * 2)),
    (CANNOT, "measured.current", 0, "supply.voltage 230 V", {"water": WATER, "duty_flow": 1e-3, "static_lift": 2.0}, 1000 * 9.80665 * 1e-3 * 2 / 230),
    (CANNOT, "measured.start_drop", 0, "reservoir.static_level 400 mm", {}, 0.4),
    (CANNOT, "measured.filled", 0, "reservoir.static_level 400 mm", {"box_length": 1.2, "box_width": 0.8}, 0.384),
    (CANNOT, "measured.rim_levels", 0, "", {}, 8),  # points that make a map: common practice
    (DIFFERS, "measured.flow", 0, "", {"duty": SimpleNamespace(Q=2e-3)}, 2e-3),
    (DIFFERS, "measured.start_drop", 0, "", {"transit_by_model": 0.02, "water_area": 0.8}, 0.025),
    (DIFFERS, "measured.current", 0, "pump.power 46 W; supply.voltage 230 V; supply.power_factor 0.8", {}, 0.25),
    (DIFFERS, "measured.filled", 0, "reservoir.static_level 400 mm; reservoir.void_fraction 95 %", {"block_plan": 0.9}, 0.342),
    (DIFFERS, "vessel.rim_out_of_level", 0, "measured.rim_levels 0 mm, 1 mm, -1 mm, 0 mm, 0 mm, 2 mm, 0 mm, 0 mm", {}, 0.003),
    (DIFFERS, "vessel.rim_out_of_level", 0, "measured.rim_levels 0 mm, 1 mm, -1 mm, 0 mm, 0 mm, 2 mm, 0 mm", {}, None),  # seven points are no map
]  # fmt: skip


@pytest.mark.parametrize(("rows", "key", "at", "changes", "numbers", "found"), LIFTED)
def test_what_was_measured_is_held_against_physics_and_the_rest(rows, key, at, changes, numbers, found):
    assert row(rows, key, at).found(FewNumbers(design=design(VESSEL, changes), **numbers)) == (found if found is None else pytest.approx(found))


def test_what_cannot_have_been_measured_is_not_believed():
    """A pump that sends 60 L/min at most, and by its power 0.7 x 10/(1000 x 9.80665 x 1) = 42.8 L/min; to either a twentieth is read too much."""
    numbers = {"pump": SimpleNamespace(Q_max=1e-3), "water": WATER, "static_lift": 1.0}

    def doubted(changes, kind=VESSEL):
        return [one.words for one in unbelieved(FewNumbers(design=design(kind, changes), **numbers))]

    assert doubted("pump.power 10 W; measured.flow 44 L/min") == [] == doubted("pump.power 10 W")
    assert doubted("pump.power 10 W; measured.flow 46 L/min") == ["the most that the pump's power lifts to the outlet"]
    assert len(doubted("pump.power 10 W; measured.flow 64 L/min")) == 2
    assert doubted("measured.flow 64 L/min") == ["the most that the pump sends, with nothing to lift"]  # its power is not known
    assert len(doubted("measured.rim_levels 0 mm, 1 mm")) == 1 and doubted("measured.rim_levels 0 mm, 1 mm", DRILLED) == []
    assert doubted("measured.rim_levels 0 mm, 1 mm, 0 mm, 1 mm, 0 mm, 1 mm, 0 mm, 1 mm") == []


# --- which of the two counts --------------------------------------------------------------------------------------------------------


def counts(key: str, changes: str, kind: str = VESSEL, measured: tuple[str, ...] = (), **numbers) -> float:
    return counted(FewNumbers(design=design(kind, changes, measured=measured), **numbers), key)


def test_the_worse_of_typed_and_following_counts_and_what_was_measured_before_both():
    static = "reservoir.static_level 380 mm"
    assert counts("reservoir.running_level", f"{static}; reservoir.running_level 300 mm", start_drop=0.02) == pytest.approx(0.36)
    assert counts("reservoir.running_level", f"{static}; reservoir.running_level 370 mm", start_drop=0.02) == pytest.approx(0.37)
    assert counts("reservoir.running_level", static, start_drop=0.02) == pytest.approx(0.36)
    assert counts(
        "reservoir.running_level", f"{static}; reservoir.running_level 300 mm", measured=("reservoir.running_level",), start_drop=0.02
    ) == pytest.approx(0.3)
    assert counts("reservoir.running_level", "reservoir.running_level 300 mm", start_drop=0.02) == pytest.approx(0.3)  # nothing follows


def test_what_only_has_to_leave_room_is_not_taken_for_the_value():
    with pytest.raises(Unknown, match="supply.circuit_load"):
        counts("supply.circuit_load", "", current=1.5)
    with pytest.raises(Unknown, match="reservoir.running_level"):
        counts("reservoir.running_level", "")
    assert counts("catch.stone_thickness", "catch.stone_thickness 15 mm; lining.smallest_stone 40 mm") == pytest.approx(0.015)  # neither is the worse
    assert counts("lining.panel_clearance", "", geometry=place()) == pytest.approx(0.8) and counts(
        "buying.overflow_run", "", geometry=place()
    ) == pytest.approx(5.0)
    assert counts("lining.panel_clearance", "lining.panel_clearance 100 mm", geometry=place()) == pytest.approx(0.1)


def test_what_follows_for_other_kinds_does_not_count():
    assert counts("blade.wall_height", "blade.wall_height 500 mm", FALLS, levels={"lip": 0.95}) == pytest.approx(0.5)
    assert counts("blade.wall_height", "blade.wall_height 500 mm", WALL, levels={"lip": 0.95}) == pytest.approx(0.95)


# --- what is said of it -------------------------------------------------------------------------------------------------------------


def said(changes: str, kind: str = VESSEL, region: str = "UK", measured: tuple[str, ...] = (), **numbers):
    (found,) = contradictions(FewNumbers(design=design(kind, changes, region, measured), **numbers))
    return found


SETTLES = "until this is settled the worse of the two counts in checks of safety and of water"


def test_two_values_that_should_be_one():
    found = said("reservoir.static_level 380 mm; reservoir.running_level 300 mm", start_drop=0.02)
    assert (found.id, found.grade, found.title) == ("reservoir.running_level", "marginal", "Contradiction: highest level while running, above the floor")
    assert (
        found.value
        == "reservoir.running_level gives 300 mm; the static level less the start drop, or the level of the top-up valve: 360 mm; the two should be one"
    )
    assert found.note == f"{SETTLES}: 360 mm"
    assert (
        found.remedy
        == "change reservoir.running_level, or reservoir.static_level, or what goes up in the feature; or measure it on site, and say of it that it is measured"
    )


def test_a_value_that_was_measured_settles_it():
    found = said("reservoir.static_level 380 mm; reservoir.running_level 300 mm", measured=("reservoir.running_level",), start_drop=0.02)
    assert (found.grade, found.remedy, found.note) == ("pass", "", "it was measured on site, and counts before the other: 300 mm")


def test_a_value_that_is_too_small_or_too_large():
    least = said("blade.lip_width 900 mm; blade.trough_length 500 mm", WALL)
    assert least.grade == "fail" and "it must be at least that" in least.value and least.note == f"{SETTLES}: 900 mm"
    most = said("cascade.width 500 mm; cascade.tread 300 mm; cascade.pool_area 0.2 m2", FALLS)
    assert most.grade == "fail" and "gives 0.200 m2; " in most.value and "0.150 m2; it can be at most that" in most.value and most.note.endswith(": 0.200 m2")
    none = said("catch.stone_thickness 15 mm; lining.smallest_stone 40 mm")
    assert none.grade == "fail" and none.note == ""


def test_an_american_reads_inches():
    found = said("blade.lip_width 36 in; blade.trough_length 20 in", WALL, "US")
    assert "blade.trough_length gives 20.0 in; the width of the lip: 36.0 in" in found.value and found.note == f"{SETTLES}: 36.0 in"


def test_what_agrees_or_was_not_given_or_is_of_another_kind_is_no_finding():
    assert contradictions(FewNumbers(design=design(VESSEL, "reservoir.static_level 380 mm"), start_drop=0.02)) == []
    assert contradictions(FewNumbers(design=design(VESSEL, "reservoir.static_level 380 mm; reservoir.running_level 361 mm"), start_drop=0.02)) == []
    assert contradictions(FewNumbers(design=design(FALLS, "blade.lip_width 900 mm; blade.trough_length 500 mm"))) == []


def test_what_was_measured_and_cannot_be_or_differs_is_asked_about():
    numbers = {"water": WATER, "static_lift": 1.0, "pump": SimpleNamespace(Q_max=1e-3), "duty": SimpleNamespace(Q=1e-3)}
    design_of = design(VESSEL, "pump.power 10 W; measured.flow 90 L/min")  # over 60 and 42.8 L/min, and over 75, a quarter more than the duty flow
    found = contradictions(FewNumbers(design=design_of, **numbers))
    assert [one.id for one in found] == ["measured.flow cannot be 1", "measured.flow cannot be 2", "measured.flow differs 1"]
    assert {one.grade for one in found} == {"marginal"} and found[0].value.startswith("measured.flow gives 90.0 L/min; the most that the pump sends")
    assert found[0].title == f"Contradiction: {meant('measured.flow')}"
    assert found[0].note == "so it is not believed: no check passes with it" and found[2].note == "what was measured counts; find out why the two differ"
    assert (
        found[0].remedy == "measure again, and look at pump.maximum_flow or pump.curve"
        and found[2].remedy == "measure again, and look at pipe.fittings or the pump's numbers"
    )


def test_points_of_a_rim_are_told_as_a_number_of_points():
    found = said("measured.rim_levels 0 mm, 1 mm")
    assert found.title == "Contradiction: points measured round the rim"
    assert (
        found.value
        == "measured.rim_levels gives 2 (points measured round the rim); the 8 points round the rim that make a map of it: 8; it must be at least that (measured.rim_levels is 0 mm, 1 mm)"
    )


def test_what_may_not_even_touch_must_be_less():
    found = said("reservoir.lowest_level 100 mm; pump.intake_level 100 mm")
    assert found.value == "pump.intake_level gives 100 mm; the lowest level at which the pump may run: 100 mm; it must be less than that" and found.note == ""


def test_a_number_that_is_not_the_typed_one_says_what_it_is():
    """No layer at all under a formation at the paving: what is dug must lie under it."""
    found = said("ground.sub_base 100 mm", levels={"formation": 0.0})
    assert (found.id, found.title) == ("ground.sub_base the bottom of the pit", "Contradiction: the bottom of the pit")
    assert found.value.startswith(
        "ground.sub_base gives -100 mm (the bottom of the pit); the finished paving, less the layers over it: -100 mm; it can be at most that"
    )


def test_money_in_two_currencies_is_never_added_up():
    found = said("costing.rate £25; costing.service £30; prices.electrician £90; site.budget $900")
    assert found.title == "Contradiction: money in two currencies" and (found.id, found.grade) == ("costing.rate currency", "fail")
    assert (
        found.value == "£ in costing.rate and 2 more; $ in site.budget"
        and found.remedy == "type every amount in one currency; none is changed into another here"
    )
    assert contradictions(FewNumbers(design=design(VESSEL, "costing.rate £25; site.budget £900"))) == []
    assert said("costing.rate £25; site.budget $900").value == "£ in costing.rate; $ in site.budget"
