"""What the checks ask, against a table written apart from them: the limits that practice or a standard sets, in the units in which people say them.

The table is the list of checks that the kit was commissioned with (common practice or judgement where no standard is named); none of it is read from
the source. Then the ends at which a limit is met, missed, typed and told, each worked by hand.
"""

import math
from pathlib import Path

import pytest

from brimwork.design.typed.criteria import CRITERIA, LIMITED, criterion, is_safety, only_tighter
from brimwork.design.typed.file import load_design
from brimwork.design.typed.limits import NEVER, Bounds, Criterion, Limits, at_least, at_most, between
from brimwork.expression import DeclarationError
from brimwork.units import InputError, read

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"
BOWL, STONES, BLADE, STEPS = (load_design(DESIGNS / f"{name}.toml") for name in ("library-bowl", "school-columns", "terrace-blade", "garden-cascade"))
VESSEL, DRILLED, WALL, FALLS = "overflowing vessel", "drilled stones", "blade", "cascade"

# check: unit; where it passes; where it is marginal. "a..b" between, "..b" at most, "a.." at least.
ASKED = {
    "C01": ("", "1.10..1.60", "1.00..2.50"), "C01m": ("", "1.1..2.0", "1.0..3.0"), "C02": ("", "..0.70", "..0.85"), "C03": ("", "0.04..0.50", "0.015..0.70"),
    "C04": ("m/s", "0.6..1.5", "0.3..2.4"), "C05": ("", "..0.40", "..0.60"), "C06": ("mm", "..15", "..40"), "C07": ("", "..0.5", "..1.0"),
    "C08": ("L/s per m", "0.15..0.40", "0.08.."), "C09": ("", "1.0..", "0.6.."), "C10": ("m/s", "..0.05", "..0.10"), "C14": ("", "1.10..", "1.00.."),
    "C16": ("min", "3..", "1.5.."), "C17": ("", "1.0..", "0.75.."), "C18": ("mm", "50..", "25.."), "C18g": ("mm", "25..", "10.."),
    "C19": ("%/day", "..10", "..25"), "C66": ("", "1.5..", "1.0.."), "C22": ("", "..1.0", "..1.5"), "C24": ("", "..0.67", "..1.00"),
    "C26": ("", "1.5..", "1.2.."), "C27": ("", "1.30..", "1.10.."), "C21": ("mm", "100..", "50.."), "C28": ("", "1.20..", "1.05.."),
    "C33": ("", "1.0..", "0.75.."), "C34": ("", "1.0..", "0.8.."), "C38": ("mm", "10..20", "5..40"), "C37": ("mm", "100..", "0.."),
    "C39": ("mm", "50..", "25.."), "C40": ("", "..0.5", "..0.8"), "C46": ("%", "..80", "..100"), "C46e": ("%", "..30", "..50"), "C47": ("m", "0..", "-0.3.."),
    "C48": ("", "..1", "..3"), "C42": ("%", "..3", "..5"), "C49": ("mm", "100..", "0.."), "C64": ("", "..5", "..10"), "C60": ("mm", "40..", "20.."),
    "C61": ("", "2.0..", "1.3.."), "C56": ("", "..1.0", "..1.1"),
    # no wider than the cable carries; a breaker of type B trips at once between 3 and 5 times its rating (EN 60898-1, from memory)
    "C75": ("", "..1", "..1"), "C76": ("", "..3", "..5"),
    # judgement of this kit: speed in a trough against the lip's, water warmed, top-up against the loss, reach of a slab, gap between two levels
    "C79": ("", "..0.02", "..0.05"), "C81": ("K", "..3", "..6"), "C80": ("", "2..", "1.."), "C74": ("", "..1", "..2"),
    "C72": ("mm/day", "..2", "..4"),  # 2 mm a day counts as tight
}  # fmt: skip
JUST = 1e-6  # of the limit: far more than the nine figures to which a value is rounded


def ends(span: str, unit: str) -> tuple[float, float]:
    low, high = span.split("..")
    return tuple(read(f"{end} {unit}", unit) if unit and end else float(end) if end else instead for end, instead in ((low, -math.inf), (high, math.inf)))


@pytest.mark.parametrize(("check", "asked"), ASKED.items())
def test_a_check_passes_and_is_marginal_to_the_limits_that_practice_sets(check, asked):
    unit, *spans = asked
    good, fair = (ends(span, unit) for span in spans)
    rows = [row for row in CRITERIA if row.id == check]
    assert rows
    for row in rows:
        assert row.limits is not None and (row.unit == unit or {row.unit, unit} == {"m", "mm"})
        for inside, span in (("pass", good), ("marginal", fair)):
            for end, out in zip(span, (-1, 1), strict=True):
                if math.isfinite(end):
                    beyond = end + out * JUST * max(abs(end), 1e-3)
                    assert row.limits.grade(end) in ("pass", inside), "the end belongs to it"
                    assert row.limits.grade(beyond) != inside and row.limits.grade(beyond) in ("marginal", "fail"), "and what is just past it does not"
        for low, high in (good, fair):
            assert row.limits.grade(low if math.isfinite(low) else high - 1) in ("pass", "marginal")


def test_the_limits_of_levels_are_two_centimetres_and_any_gap_at_all():
    for check in ("C57", "C73"):
        grade = criterion(check).limits.grade
        assert [grade(gap) for gap in (0.020, 0.01999, 1e-6, 0.0, -0.001)] == ["pass", "marginal", "marginal", "fail", "fail"]


def test_a_cost_that_is_known_passes_whatever_it_is():
    assert [criterion("C55").limits.grade(cost) for cost in (0.0, 1e6, -1.0)] == ["pass", "pass", "fail"]


# Nobody's limits but the kit's: what holds up, falls over, gives way, shocks, drowns or makes ill.
FIRM = {
    "C20", "C24", "C25", "C25e", "C26", "C28", "C32", "C41", "C46e", "C48", "C51", "C52", "C62", "C63", "C65", "C74", "C75", "C76", "C77", "C78",
    "C55",  # whether it is known has no limit to set
}  # fmt: skip


def test_a_design_sets_no_limits_where_somebodys_safety_rests_on_them():
    assert {row.id for row in CRITERIA if row.firm} == FIRM
    assert not FIRM & {*LIMITED} and {*LIMITED} | FIRM == {row.id for row in CRITERIA}


@pytest.mark.parametrize("check", ["C13", "C14", "C17", "C18", "C18g", "C39", "C57", "C60", "C66", "C73", "C42", "C46", "C47", "C21", "C22", "C27", "C33"])
def test_where_water_or_somebody_could_come_to_harm_own_limits_are_only_tighter(check):
    assert only_tighter(check, criterion(check).group)


@pytest.mark.parametrize("check", ["C01", "C02", "C04", "C06", "C12", "C40", "C56", "C64"])
def test_a_matter_of_taste_or_money_is_the_designs_own(check):
    assert not only_tighter(check, criterion(check).group) and not is_safety(check, criterion(check).group)


KINDS = {
    "C01": {VESSEL, WALL, FALLS}, "C01m": {DRILLED}, "C63": {DRILLED}, "C07": {VESSEL}, "C08": {VESSEL, DRILLED}, "C09": {WALL, FALLS}, "C79": {WALL, FALLS},
    "C20": {VESSEL, DRILLED}, "C25": {VESSEL, DRILLED, WALL, FALLS}, "C25e": {VESSEL}, "C27": {VESSEL}, "C60": {FALLS}, "C61": {FALLS}, "C73": {FALLS},
    "C06": {VESSEL, DRILLED}, "C26": {VESSEL, DRILLED, WALL, FALLS}, "C74": {VESSEL, DRILLED},
}  # fmt: skip


def test_a_check_is_made_of_the_kinds_of_feature_that_have_what_it_asks():
    for row in CRITERIA:
        assert ({*row.kinds} <= KINDS[row.id]) if row.id in KINDS else not row.kinds, row.id
    for check, kinds in KINDS.items():
        assert {kind for row in CRITERIA if row.id == check for kind in row.kinds} == kinds


def test_a_check_that_nobody_asks_is_named_with_where_its_row_goes():
    with pytest.raises(DeclarationError, match="'C999' has no row in CRITERIA of design/typed/criteria.py"):
        criterion("C999")
    assert criterion("C26", WALL).title == "Wind on the wall" and criterion("C26", DRILLED).kinds == (DRILLED,)


# --- limits themselves --------------------------------------------------------------------------------------------------------------


def test_a_limit_that_is_met_but_for_the_last_bit_is_met():
    assert at_most(0.3, 0.5).grade(0.1 + 0.2) == "pass" and at_least(0.3, 0.1).grade(0.1 * 3) == "pass" and 0.1 + 0.2 > 0.3
    assert at_least(1.0, 0.5).grade(1 - 1e-12) == "pass" and at_least(1.0, 0.5).grade(1 - 1e-8) == "marginal"


@pytest.mark.parametrize(
    ("one", "other", "both"),
    [
        (at_most(3, 5), at_most(2, 6), at_most(2, 5)),
        (at_least(3, 1), at_least(2, 2), at_least(3, 2)),
        (between((1, 4), (0, 9)), between((2, 5), (1, 6)), between((2, 4), (1, 6))),
        (at_most(1, 2), at_least(1, 3), Limits((1, 1), NEVER.fair)),  # they touch at one point, and then have nothing in common
        (at_most(1, 2), at_least(3, 4), NEVER),
    ],
)
def test_two_limits_together_are_nowhere_wider_than_either(one, other, both):
    assert one.within(other) == both == other.within(one)
    assert NEVER.grade(0.0) == NEVER.grade(-1e300) == "fail"


@pytest.mark.parametrize(
    ("limits", "unit", "region", "text"),
    [
        (at_most(0.015, 0.040), "mm", "UK", "up to 15 mm; near it up to 40 mm"),
        (at_least(0.1, 0.0), "mm", "UK", "from 100 mm; near it from 0 mm"),
        (between((0.6, 1.5), (0.3, 2.4)), "m/s", "UK", "0.6 to 1.5 m/s; near it 0.3 to 2.4 m/s"),
        (at_most(1, 1), "", "UK", "up to 1"),
        (at_least(0.020, 1e-9), "mm", "UK", "from 20 mm; near it above 0"),
        (at_least(0.020, 1e-5), "mm", "UK", "from 20 mm; near it from 0.01 mm"),
        (NEVER, "mm", "UK", "no number passes as it stands"),
        (at_least(0.0254, 0.0127), "mm", "US", "from 1 in (25.4 mm); near it from 0.5 in (12.7 mm)"),
        (at_most(0.9144, 1.2192), "m", "US", "up to 3 ft (0.9144 m); near it up to 4 ft (1.2192 m)"),
        (at_most(0.012345678, 1), "mm", "UK", "up to 12.3457 mm; near it up to 1000 mm"),  # six figures, and two of what is changed into inches
        (at_most(0.012345678, 1), "mm", "US", "up to 0.49 in (12.3457 mm); near it up to 39 in (1000 mm)"),
        (between((0.010, 0.020), (0.005, 0.040)), "mm", "US", "0.39 to 0.79 in (10 to 20 mm); near it 0.2 to 1.6 in (5 to 40 mm)"),
        (at_least(0.020, 1e-9), "mm", "US", "from 0.79 in (20 mm); near it above 0"),
        (NEVER, "mm", "US", "no number passes as it stands"),
        (at_most(0.2, 0.3), "", "US", "up to 0.2; near it up to 0.3"),
    ],
)
def test_limits_are_told_as_people_say_them(limits, unit, region, text):
    assert limits.text(unit, region) == text


def of(check_limits, unit="mm"):
    return Bounds(Criterion("C00", "water", "How far it is", check_limits, unit, "a test"))


@pytest.mark.parametrize(
    ("typed", "spans"),
    [
        ("from 60 mm; from 30 mm", ((0.06, math.inf), (0.03, math.inf))),
        ("up to 6 cm; up to 90 mm", ((-math.inf, 0.06), (-math.inf, 0.09))),
        ("10 to 20 mm; 5 mm to 4 cm", ((0.01, 0.02), (0.005, 0.04))),
        ("20 to 20 mm; 20 to 20 mm", ((0.02, 0.02), (0.02, 0.02))),
        ("from 5 mm; above 0", ((0.005, math.inf), (1e-9, math.inf))),
    ],
)
def test_a_design_types_its_own_limits_as_two_spans(typed, spans):
    assert [end for span in of(None).read(typed, "limits.C00") for end in span] == pytest.approx([end for span in spans for end in span])


@pytest.mark.parametrize(
    ("typed", "told_back"),
    [
        ("from 60 mm", 'is two spans.*: write limits.C00 = "from 50 mm; from 25 mm"'),
        (3, "is two spans"),
        ("from 1 mm; from 2 mm", "a span runs upwards, and the second one holds the first"),
        ("20 to 10 mm; 5 to 40 mm", "a span runs upwards"),
        ("10 to 20 mm; 12 to 40 mm", "a span runs upwards"),
        ("10 to 20 mm; 5 to 15 mm", "a span runs upwards"),
        ("up and down; from 1 mm", '"up and down" is not a span: write'),
        ("upwards; from 1 mm", "is not a span"),
        ("from 60 kg; from 30 mm", "kg"),
    ],
)
def test_limits_that_cannot_be_are_told_with_what_to_type(typed, told_back):
    with pytest.raises(InputError, match=told_back):
        of(at_least(0.050, 0.025)).read(typed, "limits.C00")


def test_limits_that_hang_on_the_design_are_typed_by_an_example():
    assert of(None).usually() == "" and of(None).hint() == "such as from 2 mm; from 1 mm" and of(None, "").hint() == "such as 1.1 to 1.6; 1 to 2.5"
    assert of(None).hint("US") == "such as from 2 in; from 1 in" and of(None, "kPa").hint("UK") == "such as from 2 kPa; from 1 kPa"
    with pytest.raises(InputError, match='write limits.C00 = "from 2 mm; from 1 mm"'):
        of(None).read("twice", "limits.C00")
    assert of(at_least(0.050, 0.025)).hint() == "usual: from 50 mm; from 25 mm" and of(at_least(0.0254, 0.0127)).hint("US") == "usual: from 1 in; from 0.5 in"
    assert of(at_most(0.012345678, 1)).usually() == "up to 12.3 mm; up to 1000 mm" and of(at_most(0.012345678, 1), "").usually("US") == "up to 0.0123; up to 1"
    assert of(None).name == "limits of: how far it is" and of(None).write(((0.5, 1.25), (0.0, 2.0))) == "0.5 to 1.25; 0 to 2"
