"""What an empty box shows: an example that its own reader takes, in the units of the region; and what a wrong value is told to become."""

import re
from pathlib import Path

import pytest

from brimwork import units
from brimwork.design.follows.features import chain_of
from brimwork.design.judged import checks
from brimwork.design.typed.design import blank_design
from brimwork.design.typed.fields import SECTIONS, sections
from brimwork.design.typed.file import load_design
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.limits import Bounds
from brimwork.design.typed.reading import Corners, Curve, Date, Dates, Field, OneOf, Several
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError

DESIGNS = {path.stem: load_design(path) for path in sorted((Path(__file__).parents[1] / "workbooks" / "designs").glob("*.toml"))}
FIELDS = [(section, key, field) for section, fields in SECTIONS.items() for key, field in fields.items()]
REGIONS = ("UK", "US")
# Letters of the nomenclature that fields of the design give their value to: their usual ranges hold the examples.
LETTERS = {
    "vessel.rim_diameter": "d_rim", "vessel.foot_outside": "d_fo", "vessel.foot_inside": "d_fi", "flow.weir_coefficient": "C_w", "reservoir.void_fraction": "n_v",
    "reservoir.static_level": "h_static", "reservoir.lowest_level": "h_min", "reservoir.overflow_level": "h_over", "reservoir.running_level": "h_run",
    "reservoir.creep_factor": "k_creep", "pump.shut_off_head": "H_0", "pump.maximum_flow": "Q_max", "pump.power": "P_in", "pipe.bore": "d_pipe", "pipe.length": "L_pipe",
    "pipe.fittings": "K", "pipe.mouth_below_rim": "z_mouth", "catch.stone_thickness": "t_st", "catch.stone_density": "rho_bulk", "catch.hold_up": "n_hold",
    "climate.evaporation": "E_0", "climate.coefficient": "K_E", "cascade.rill_slope": "S_rill", "cascade.rill_roughness": "n_Manning",
    "cascade.rill_width": "w_rill", "cascade.rill_length": "L_rill",
}  # fmt: skip


def typed(field, region):
    """The example of a box as the design file would say it."""
    text = re.sub(r"^(such as|usual:) ", "", field.hint(region))
    text = re.sub(r" \((?!0)[^()]*\)$", "", text) if isinstance(field, Field) else text
    match field:
        case Several() | Dates():
            return text.split(", ")
        case Curve() | Corners():
            return [pair.split(" at ") for pair in text.split("; ")]
    return text


@pytest.mark.parametrize("region", REGIONS)
def test_every_box_but_a_list_of_words_shows_an_example_that_it_takes_itself(region):
    for section, key, field in FIELDS:
        if not isinstance(field, OneOf):
            given = re.sub(r" \([^()]*\)$", "", typed(field, region)) if isinstance(field, Field) else typed(field, region)
            field.read(given, f"{section}.{key}", region)


def test_an_example_stands_in_the_unit_of_its_region():
    for section, key, field in FIELDS:
        if isinstance(field, Field) and field.us and not field.usual_us:
            for region, unit in (("UK", field.unit), ("US", field.us)):
                assert units.unit(units.parse(field.suggested(region)).unit) == units.unit(unit), (section, key, region)
        if not isinstance(field, OneOf | Date) and not (isinstance(field, Field) and not field.us):
            assert not re.search(r"\d (mm|m|cm2|m2|kg|kPa|L|L/min|mm/day)\b", field.hint("US")), (section, key)


@pytest.mark.parametrize("key", LETTERS)
def test_an_example_lies_within_the_usual_range_of_its_letter(key):
    section, _, name = key.partition(".")
    field, row = SECTIONS[section][name], QUANTITIES[LETTERS[key]]
    for region in REGIONS:
        assert not row.unusual(field.read(field.suggested(region), key, region))


def test_by_hand_the_us_examples_are_about_as_large_as_the_others():
    """24 in are 610 mm, 1500 psf are 71.8 kPa, 16 US gal/min are 60.6 L/min. What hangs on the country's supply is another number there."""
    for section, key, field in FIELDS:
        if (
            isinstance(field, Field)
            and field.such
            and field.such_us
            and section not in ("supply", "measured", "prices", "costing")
            and key not in ("voltage", "starting_current")
        ):
            here, there = (field.read(field.suggested(region), key, region) for region in REGIONS)
            assert there == pytest.approx(here, rel=0.22), (section, key)


def test_a_refusal_shows_an_example_in_the_units_of_the_region():
    us, uk = (blank_design("overflowing vessel", "Mine").headed("region", region) for region in ("US", "UK"))
    with pytest.raises(InputError, match=r"such as vessel.rim_diameter = 31 in"):
        us.having("vessel.rim_diameter", "wide")
    with pytest.raises(InputError, match=r"such as vessel.rim_diameter = 30 in$"):
        us.having("vessel.rim_diameter", "30")
    with pytest.raises(InputError, match=r'write vessel.rim_diameter = "780 mm"'):
        uk.having("vessel.rim_diameter", "-780 mm")
    with pytest.raises(InputError, match="the ground leakage of everything on the GFCI, pump running cannot be below zero"):
        us.having("supply.leakage", "-1 mA")
    columns = blank_design("drilled stones", "Mine").headed("region", "US")
    for given, example in ((5, '"30 in", "24 in"'), (["wide"], "30 in"), (["14"], "14 in")):
        with pytest.raises(InputError, match=example):
            columns.having("stones.heights", given)


def test_a_share_typed_as_a_percentage_is_offered_both_ways():
    with pytest.raises(InputError, match=r'is over 1, .*: write reservoir.void_fraction = 0.95 or reservoir.void_fraction = "95 %"$'):
        blank_design("blade", "Mine").having("reservoir.void_fraction", 95)
    assert blank_design("blade", "Mine").having("reservoir.void_fraction", "95 %")["reservoir.void_fraction"] == pytest.approx(0.95)


@pytest.mark.parametrize(
    ("text", "fall"), [("1:100", 0.01), ("1 in 80", 0.0125), ("1 : 50", 0.02), ("1 %", 0.01), ("0.01", 0.01), (0.01, 0.01), ("1/8 in/ft", 1 / 96)]
)
def test_a_slope_is_read_as_the_trade_writes_it(text, fall):
    assert blank_design("cascade", "Mine").having("cascade.rill_slope", text)["cascade.rill_slope"] == pytest.approx(fall)


@pytest.mark.parametrize("text", ["1:0", "1 in", "1:", ":100", "a:b", "1:100:2", "1:" + "9" * 70, "-1:100"])
def test_what_is_no_slope_is_refused_with_one_that_is(text):
    with pytest.raises(InputError):
        blank_design("cascade", "Mine").having("cascade.rill_slope", text)
    with pytest.raises(InputError, match="such as cascade.rill_slope = 1:100"):
        blank_design("cascade", "Mine").having("cascade.rill_slope", "steep")


def test_limits_are_named_by_their_check_and_show_what_counts_until_the_design_says_its_own():
    speed = SECTIONS["limits"]["C04"]
    assert speed.name == "limits of: speed in the hose" and speed.hint() == "usual: 0.6 to 1.5 m/s; 0.3 to 2.4 m/s"
    assert speed.hint("US") == "usual: 1.97 to 4.92 ft/s; 0.984 to 7.87 ft/s"  # 0.6 m/s / 0.3048 m = 1.97 ft/s
    for check, field in SECTIONS["limits"].items():
        assert isinstance(field, Bounds) and check not in field.name
        row = checks.numbered(check)
        if usual := row.criterion.limits:
            good, fair = field.read(typed(field, "UK"), check)
            assert good == pytest.approx(usual.good) and fair == pytest.approx(usual.fair)


@pytest.mark.parametrize("kind", KINDS)
def test_no_box_asks_for_what_plays_no_part_in_the_kind(kind):
    shown = {f"{section}.{key}" for section, fields in sections(kind).items() for key in fields}
    assert ("flow.weir_coefficient" in shown) == (kind != "drilled stones")
    assert ("pipe.mouth_below_rim" in shown) == (kind == "overflowing vessel") and ("limits.C61" in shown) == (kind == "cascade")
    assert ("programme.coat" in shown) == (kind == "overflowing vessel") and ("limits.C01m" in shown) == (kind == "drilled stones")
    for design in DESIGNS.values():
        assert design.kind != kind or set(design.values) <= shown, "what a design gives has its box"
    needed = {key for finding in checks.findings(chain_of(blank_design(kind, "Nothing yet"))) for key in finding.needs}
    assert needed <= shown, "what a check waits for has its box"


@pytest.mark.parametrize("name", ["garden-cascade", "terrace-blade"])
def test_a_lip_takes_the_weir_coefficient_that_the_design_gives(name):
    """By hand: 120 L/min over each metre with 1.8 m^0.5/s stand (0.002/1.8)^(2/3) m high; a broad crest, by q = sqrt(g (2/3 H)^3), 1.5 (q^2/g)^(1/3)."""
    design = DESIGNS[name].having("flow.for_each_metre", "120 L/min per m")
    own, crest = chain_of(design.having("flow.weir_coefficient", "1.8 m^0.5/s")), chain_of(design)
    assert own.edge_head == pytest.approx((0.002 / 1.8) ** (2 / 3)) == pytest.approx(0.0107, abs=5e-5) and own.edge()[2] == 1.8
    assert crest.edge_head == pytest.approx(1.5 * (0.002**2 / 9.80665) ** (1 / 3)) and crest.edge()[2] == pytest.approx((8 * 9.80665 / 27) ** 0.5)
    assert own.static_lift - crest.static_lift == pytest.approx(own.edge_head - crest.edge_head)
