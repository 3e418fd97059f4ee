"""The drawings of a design read as records: they say the design's sizes, keep their scale, and no label lies over another, over a curve or in hatching."""

import math
import re
from functools import cache
from itertools import combinations
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from letter_width import width_of
from matplotlib.path import Path as Outline

from brimwork import units
from brimwork.design.follows.dry_month import DAYS, basin, dry_month
from brimwork.design.follows.features import chain_of
from brimwork.design.typed import patches
from brimwork.design.typed.file import load_design
from brimwork.drawing.design import drawings
from brimwork.drawing.duty import duty_chart
from brimwork.drawing.layout import Area, Stroke, Words, layout, words
from brimwork.drawing.lettering import BY_REGION, METRIC, US
from brimwork.drawing.notes import wrapped
from brimwork.drawing.placing import Room, crosses
from brimwork.drawing.placing import width_of as room_for
from brimwork.drawing.plan import plan
from brimwork.drawing.records import Level, Line, Mark, Measure, Polygon, Sheet, View
from brimwork.drawing.section import section
from brimwork.drawing.sizes import HEIGHT
from brimwork.drawing.water import reservoir_bars, thirty_days
from brimwork.units import InputError

FOLDER = Path(__file__).parents[1] / "workbooks" / "designs"
DESIGNS = {path.stem: load_design(path) for path in sorted(FOLDER.glob("*.toml"))}
BOWL, STONES, BLADE, CASCADE = (DESIGNS[name] for name in ("library-bowl", "school-columns", "terrace-blade", "garden-cascade"))


def known_round_it(design, north="30 deg", along="-6 m", across="1.5 m", frost="450 mm"):
    """The design with what is known of its ground, of north and of its cable."""
    given = {"site.north": north, "site.frost_depth": frost, "site.ground_water": "100 mm", "supply.point_along": along, "supply.point_across": across}
    for key, text in (given | {"supply.duct_bore": "50 mm", "supply.duct_cover": "600 mm", "supply.residual_rating": "30 mA"}).items():
        design = design.having(key, text)
    return design


def stones(*wide, high):
    design = STONES.having("stones.diameters", list(wide)).having("stones.heights", [f"{one} mm" for one in high])
    return design.having("stones.branch_lengths", ["1 m"] * len(wide))


MORE = {  # what the stored designs do not show
    "all levels known": BOWL.having("pump.intake_level", "60 mm").having("reservoir.cut_out_level", "170 mm").having("reservoir.top_up_level", "375 mm"),
    "ring foot on the blocks": BOWL.having("vessel.stands_on", "blocks"),
    "foot of five corners": BOWL.having("vessel.stands_on", "blocks").having(
        "vessel.foot_corners", [["-150 mm", "-100 mm"], ["150 mm", "-100 mm"], ["180 mm", "80 mm"], ["0 mm", "160 mm"], ["-150 mm", "80 mm"]]
    ),
    "stones on three rough points": STONES.having("stones.stand_on", "blocks"),
    "one stone": STONES.having("stones.diameters", ["500 mm"]).having("stones.heights", ["900 mm"]).having("stones.branch_lengths", ["1 m"]),
    "no rill": CASCADE.having("cascade.rill_length", "0 m"),
    "vessel wider than its stone": BOWL.having("vessel.rim_diameter", "2400 mm").having("catch.apron", "200 mm"),
    "long reservoir": BOWL.having("reservoir.blocks_along", 9),
    "ground, north and cable known": known_round_it(BOWL),
    "supply point within the plan": known_round_it(STONES, north="300 deg", along="1.2 m", across="0.75 m").having("supply.residual_current", "none"),
    "footing, tree and overflow placed": BOWL.having("site.footing_along", "2.2 m")
    .having("site.footing_across", "0.3 m")
    .having("site.tree_along", "-1.1 m")
    .having("site.tree_across", "0.9 m")
    .having("site.tree_stem", "120 mm")
    .having("overflow_pipe.end_along", "0.3 m")
    .having("overflow_pipe.end_across", "-4 m"),
    "frost far below the pit": known_round_it(BLADE, north="200 deg", along="-6 m", across="-6 m", frost="1500 mm"),
    "frost in the sub-base": known_round_it(CASCADE, north="0 deg", along="9 m", across="0 m", frost="600 mm"),
    "five stones": stones("300 mm", "250 mm", "200 mm", "220 mm", "180 mm", high=(900, 700, 500, 800, 300)),
    "twelve stones": stones(*["120 mm"] * 12, high=range(900, 420, -40)).having("stones.stand_on", "blocks"),
}
TITLES = ("plan", "section", "duty chart", "water in the reservoir", "level over thirty dry days")
SHOWN = [(name, region) for name in (*DESIGNS, *MORE) for region in ("UK", "US")]
every = pytest.mark.parametrize(("name", "region"), SHOWN, ids=lambda value: value)


@cache
def chain(name, region):
    return chain_of((DESIGNS | MORE)[name].headed("region", region))


@cache
def sheets(name, region):
    made = dict(drawings(chain(name, region)))
    return {title: made[title] for title in TITLES}


def true_box(label):
    """Left, top, right, bottom in mm, with the widths of the face DejaVu Sans."""
    (x, y), wide = label.at, width_of(label.text) * label.size
    first = -wide * {"start": 0, "middle": 0.5, "end": 1}[label.anchor]
    if label.angle == 90:
        return x - 0.75 * label.size, y - first - wide, x + 0.22 * label.size, y - first
    return x + first, y - 0.75 * label.size, x + first + wide, y + 0.22 * label.size


@pytest.mark.parametrize(("name", "region"), SHOWN, ids=lambda value: value)
def test_the_room_that_is_kept_for_a_label_holds_it(name, region):
    """Against the face itself; a little may be lacking where a word is all broad letters, never more than half a millimetre."""
    for sheet in sheets(name, region).values():
        for label in words(sheet):
            assert room_for(label.text, label.size) >= width_of(label.text) * label.size - 0.5, label.text


def records(sheet, kind):
    return [record for view in sheet.views for record in view.records if isinstance(record, kind)]


def length(a, b):
    return math.dist(a, b)


# --- for every drawing of every design, in both regions -----------------------------------------------------------------------------


@every
def test_every_drawing_can_be_drawn_with_description_and_numbers(name, region):
    made = sheets(name, region)
    for sheet in made.values():
        assert isinstance(sheet, Sheet), sheet
        assert sheet.description.endswith(".") and sheet.title.startswith((DESIGNS | MORE)[name].title)
        assert len(sheet.rows) >= 3 and all(len(row) == len(sheet.columns) for row in sheet.rows)


@every
def test_no_label_leaves_its_sheet_or_touches_another(name, region):
    for sheet in sheets(name, region).values():
        labels = [(label.text, true_box(label)) for label in words(sheet)]
        for text, (left, top, right, bottom) in labels:
            assert left >= 0 and top >= 0 and right <= sheet.width and bottom <= sheet.height, f"{sheet.title}: {text}"
        for (text, a), (other, b) in combinations(labels, 2):
            assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1], f"{sheet.title}: '{text}' over '{other}'"


@settings(max_examples=80)
@given(
    st.sampled_from(("UK", "US")),
    st.integers(1, 6),
    st.integers(1, 4),
    st.sampled_from((100, 300, 600, 1000)),
    st.integers(150, 1500),
    st.integers(100, 1500),
    st.sampled_from((0, 60, 250, 400)),
)
def test_labels_of_plan_and_section_stand_apart_whatever_the_sizes(region, along, across, apron, wide, high, offset):
    changed = [design.headed("region", region).having("reservoir.blocks_along", along).having("reservoir.blocks_across", across) for design in (BOWL, BLADE)]
    bowl, blade = (design.having("catch.apron", f"{apron} mm") for design in changed)
    bowl = bowl.having("vessel.rim_diameter", f"{wide} mm").having("vessel.height", f"{high} mm").having("vessel.offset", f"{offset} mm")
    blade = blade.having("blade.lip_width", f"{wide} mm").having("blade.lip_level", f"{high + 100} mm").having("blade.trough_width", f"{offset + 80} mm")
    for sheet in (draw(chain_of(design)) for draw in (plan, section) for design in (bowl, blade)):
        assert_labels_stand_apart(sheet)


def assert_labels_stand_apart(sheet):
    """Every label on the sheet and off the others; no line of an unclipped view off the sheet."""
    labels = [(label.text, true_box(label)) for label in words(sheet)]
    assert all(box[0] >= 0 and box[1] >= 0 and box[2] <= sheet.width and box[3] <= sheet.height for _, box in labels)
    assert sheet.height <= HEIGHT
    for (text, a), (other, b) in combinations(labels, 2):
        assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1], f"{sheet.title}: '{text}' over '{other}'"
    for view, marks in layout(sheet):
        for mark in marks if view is not None and not view.clip else ():
            for x, y in mark.points if isinstance(mark, Stroke | Area) else ():
                assert -1e-6 <= x <= sheet.width + 1e-6 and -1e-6 <= y <= sheet.height + 1e-6, (sheet.title, mark)


@settings(max_examples=80)
@given(
    st.sampled_from(("UK", "US")),
    st.sampled_from((BOWL, STONES, BLADE, CASCADE)),
    st.floats(-12, 12),
    st.floats(-12, 12),
    st.integers(0, 359),
    st.integers(0, 2500),
    st.integers(0, 400),
)
def test_north_cable_frost_and_ground_water_stand_clear_wherever_they_are(region, design, along, across, turn, frost, water):
    known = known_round_it(design.headed("region", region), f"{turn} deg", f"{along:.3f} m", f"{across:.3f} m", f"{frost} mm")
    known = chain_of(known.having("site.ground_water", f"{water} mm"))
    for sheet in (plan(known), section(known)):
        assert_labels_stand_apart(sheet)


@settings(max_examples=40)
@given(st.sampled_from(("UK", "US")), st.integers(1, 6), st.lists(st.tuples(st.integers(60, 600), st.integers(100, 1500)), min_size=1, max_size=14))
def test_sizes_and_numbers_of_any_stones_stand_apart(region, along, sizes):
    wide, high = zip(*sizes)
    design = stones(*(f"{one} mm" for one in wide), high=high).having("stones.stand_on", "blocks").having("reservoir.blocks_along", along)
    for draw in (plan, section):
        assert_labels_stand_apart(draw(chain_of(design.headed("region", region))))


@every
def test_a_page_of_letter_holds_every_drawing_with_its_caption(name, region):
    """279 mm less margins of 18 and 20 are 241; at 10 points a line of the caption takes some 5 mm and holds 100 characters or more."""
    for sheet in sheets(name, region).values():
        assert sheet.height <= HEIGHT and sheet.height + 5.0 * (len(sheet.description) / 100 + 1) < 241


@every
def test_no_line_of_a_drawing_leaves_its_sheet(name, region):
    for sheet in sheets(name, region).values():
        for view, marks in layout(sheet):
            for mark in marks if view is not None and not view.clip else ():
                for x, y in mark.points if isinstance(mark, Stroke | Area) else (mark.at,):
                    assert -1e-6 <= x <= sheet.width + 1e-6 and -1e-6 <= y <= sheet.height + 1e-6, (sheet.title, mark)
            if view is not None and view.clip:
                left, top, wide, tall = view.frame
                assert left >= 0 and top >= 0 and left + wide <= sheet.width and top + tall <= sheet.height


@every
def test_every_dimension_says_the_distance_it_spans(name, region):
    unit, close = {"UK": ("mm", 0.00051), "US": ("in", 0.0254 / 16 + 1e-6)}[region]
    found = [record for title in ("plan", "section") for record in records(sheets(name, region)[title], Measure)]
    assert len(found) >= 8
    for record in found:
        assert length(record.start, record.end) == pytest.approx(record.value, rel=1e-9)
        said = re.search(r"\d[\d /]*$", record.text)[0]
        times = int((re.match(r"(\d+) x [^=]*$", record.text) or [0, "1"])[1])  # 3 x 17 3/4: each as near as a tape shows it
        assert times * units.read(f"{said} {unit}", "m") == pytest.approx(record.value, abs=times * close), record.text


@every
def test_plan_and_section_have_the_true_scale_that_they_name_and_a_bar_of_it(name, region):
    for title in ("plan", "section"):
        sheet = sheets(name, region)[title]
        ratios = [float(found) for note in sheet.notes for found in re.findall(r"1:(\d+)", note.text)]
        scales = [view.scale for view in sheet.views]
        assert sheet.width == 174 and ratios and set(ratios) == {round(1000 / across, 6) for across, _ in scales}
        assert all(across == pytest.approx(up, rel=1e-9) for across, up in scales)
        bars = [view for view in sheet.views if any(getattr(record, "text", "") == "scale bar" for record in view.records)]
        assert len(bars) == len(ratios)
        for view in bars:
            *_, said = [record.text for record in view.records if getattr(record, "text", "").endswith((" m", " ft"))]
            assert units.read(said, "m") * view.scale[0] == pytest.approx(view.frame[2])


@every
def test_no_text_of_plan_or_section_lies_in_hatching(name, region):
    hatched = ("earth", "stone", "concrete", "load", "untested")
    for title in ("plan", "section"):
        sheet = sheets(name, region)[title]
        marks = [mark for _, marks in layout(sheet) for mark in marks]
        areas = [(mark.fill, Outline([*mark.points, mark.points[0]])) for mark in marks if isinstance(mark, Area) and mark.fill in hatched]
        for label in words(sheet):
            left, top, right, bottom = true_box(label)
            box = Outline([(left, top), (right, top), (right, bottom), (left, bottom), (left, top)])
            for fill, area in areas:
                assert not area.intersects_path(box, filled=True), f"{sheet.title}: '{label.text}' in {fill}"


METRIC_ONLY, US_ONLY = re.compile(r"\d (m|mm|L)\b|L/min|in (m|mm|L)$|kPa|m2"), re.compile(r"\d (in|ft)\b|gal|in ft|psf|ft2|inches")


@every
def test_a_region_letters_its_drawings_in_its_own_units(name, region):
    for title, sheet in sheets(name, region).items():
        foreign = METRIC_ONLY if region == "US" else US_ONLY
        said = [label.text for label in words(sheet)] + [sheet.alt, *sheet.columns, *(cell for row in sheet.rows for cell in row)]
        others = [text for text in said if foreign.search(text)]
        allowed = {"duty chart": {"UK": ["flow in US gal/min, head in ft"], "US": ["flow in L/min, head in m"]}[region]}  # its second scales
        assert others == allowed.get(title, []), title


def test_lengths_are_written_as_a_tape_shows_them():
    """By hand: 1572 mm is 61.89 in, between 61 7/8 (61.875) and 62; 24 mm is 0.945 in, nearest to 1; 10 mm is 0.394 in, nearest to 3/8."""
    assert [US.figure(value) for value in (1.572, 0.024, 0.010, 0.0, 0.0127, 0.3048)] == ["61 7/8", "1", "3/8", "0", "1/2", "12"]
    assert [US.level(value) for value in (-0.0127, 0.0254, 0.0004)] == ["-1/2", "+1", "0"]
    assert METRIC.level(-0.1) == "-100" and METRIC.said(0.62) == "620 mm"


@given(st.floats(0, 50))
def test_a_length_written_in_eighths_reads_back_to_a_sixteenth(value):
    assert units.read(f"{US.figure(value)} in", "m") == pytest.approx(value, abs=0.0254 / 16 * 1.000001)


# --- plan ---------------------------------------------------------------------------------------------------------------------------


def spans_of(sheet):
    return {record.text: record for record in records(sheet, Measure)}


def test_the_plan_of_the_bowl_has_the_sizes_worked_by_hand():
    """Blocks 2 x 600 by 2 x 400; box + 2 x (10 + 8); pit + 2 x (18 + 150); stone: box + 2 x 600; the diagonal by Pythagoras."""
    sheet = plan(chain("library-bowl", "UK"))
    wanted = {"blocks 1200", "blocks 800", "box 1236", "box 836", "pit 1572", "pit 1172", "stone 2436", "stone 2036", "offset 200"}
    assert wanted <= set(spans_of(sheet))
    corners = [
        record.points for record in records(sheet, Line) if record.style == "centre" and length(*record.points) == pytest.approx(math.hypot(1.572, 1.172))
    ]
    assert len(corners) == 2 and f"pit diagonals {math.hypot(1572, 1172):.0f}" in [label.text for label in words(sheet)]


def hidden_under(line, later):
    """Whether a later level or upright line lies along the whole of a level or upright line."""
    (x, y), (u, v) = line.points[0], line.points[-1]
    for other in later:
        (a, b), (c, d) = other.points[0], other.points[-1]
        level = y == v == b == d and min(a, c) <= min(x, u) and max(x, u) <= max(a, c)
        upright = x == u == a == c and min(b, d) <= min(y, v) and max(y, v) <= max(b, d)
        if (x, y) != (u, v) and len(other.points) == 2 and (level or upright):
            return True
    return False


@pytest.mark.parametrize("name", DESIGNS)
def test_no_joint_and_no_hose_lies_under_a_middle_line_or_a_level_of_the_water(name):
    """Three columns stand over 3 by 2 blocks: the long joint is the middle line. Static water of the bowl stands 40 mm under its blocks' top, as the hose is drawn."""
    for sheet in (plan(chain(name, "UK")), section(chain(name, "UK"))):
        for view in sheet.views:
            lines = [record for record in view.records if isinstance(record, Line)]
            for i, line in enumerate(lines):
                if line.key in ("reservoir.block_length", "reservoir.block_width", "pipe.bore") and line.style == "hidden":
                    pieces = [Line(pair, line.style) for pair in zip(line.points, line.points[1:], strict=False)]
                    assert not any(hidden_under(piece, lines[i + 1 :]) for piece in pieces), (name, line.key)


def ring_area():
    return math.pi / 4 * (0.360**2 - 0.300**2)


@pytest.mark.parametrize(
    ("name", "area"),
    (
        ("library-bowl", 0.5 * 0.5),
        ("ring foot on the blocks", ring_area()),
        ("school-columns", 3 * (16 * 0.0254) ** 2),
        ("stones on three rough points", 3 * 12 * 0.0254**2),
    ),
)
def test_the_hatched_patch_has_the_area_that_touches_the_blocks(name, area):
    """By hand: slab 500 x 500; ring of 360 and 300; three slabs of 16 in; three times 12 square inches. A circle drawn with 48 corners lacks 0.3 %."""
    sheet = plan(chain(name, "UK"))
    found = records(sheet, Polygon)
    hatched = [patches.area(record.points) for record in found if record.fill == "load"]
    first = next(i for i, record in enumerate(found) if record.fill == "load")
    holes = [patches.area(record.points) for record in found[first:] if record.fill == "pale"]
    assert sum(hatched) - sum(holes) == pytest.approx(area, rel=4e-3)
    assert chain(name, "UK").contact_shapes() and any(
        label.text.startswith("contact patch, at most ") and label.text.endswith(" kPa") for label in words(sheet)
    )


def test_the_patch_stands_under_the_vessel_at_its_offset_and_carries_its_pressure():
    """(72 kg + 95 L + 2700 kg/m3 x 0.5 x 0.5 x 0.08 m3) x 9.80665 = 2166 N, by hand, on the ring foot of 360 and 300 and 80 mm of slab all round it: a circle of
    520 less its four segments beyond the slab of 500 (0.0010 m2 each) and less the hole of 140, 0.1931 m2: 11.2 kPa, or 234 lbf/ft2."""
    patch = next(record for record in records(plan(chain("library-bowl", "UK")), Polygon) if record.fill == "load")
    assert [sum(c) / 4 for c in zip(*patch.points)] == pytest.approx([0.2, 0.0])
    for region, text in (("UK", "contact patch, at most 11.2 kPa"), ("US", "contact patch, at most 234 psf")):
        assert text in [label.text for label in words(plan(chain("library-bowl", region)))]


def test_a_blade_lands_at_its_throw_and_its_blocks_carry_stone_only():
    """By hand: y_c = (q2/g)^(1/3), brink 0.715 y_c, speed q/brink, 750 mm of fall."""
    q, g = 4.0e-3, 9.80665
    throw = q / (0.715 * (q * q / g) ** (1 / 3)) * math.sqrt(2 * 0.750 / g)
    sheet = plan(chain("terrace-blade", "UK"))
    span = spans_of(sheet)[f"throw {throw * 1e3:.0f}"]
    assert span.value == pytest.approx(throw, rel=1e-3)
    landing = next(record for record in records(sheet, Line) if record.style == "water level")
    assert landing.points[0][0] == pytest.approx(span.end[0]) and length(*landing.points) == pytest.approx(0.900)
    assert "carry stone only" in sheet.description and not [record for record in records(sheet, Polygon) if record.fill == "load"]


def test_a_cascade_shows_header_three_pools_and_the_rill_end_to_end():
    """Header 0.20 m2 / 0.5 m; three treads; the rill of 2 m: each starts where the last one ends, and the last ends at the box."""
    spans = [record for record in records(plan(chain("garden-cascade", "UK")), Measure) if record.text in ("header 400", "3 x 450 = 1350", "rill 2000")]
    assert [record.text for record in spans] == ["header 400", "3 x 450 = 1350", "rill 2000"]
    for before, after in zip(spans, spans[1:]):
        assert before.end[0] == pytest.approx(after.start[0])
    assert spans[-1].end[0] == pytest.approx(-(1.8 / 2 + 0.010 + 0.012 + 0.018))


def notes_of(sheet):
    return " ".join(note.text for note in sheet.notes)


def filled(sheet, fill):
    return [record for record in records(sheet, Polygon) if record.fill == fill]


@pytest.mark.parametrize(
    ("given", "way"), (("0 deg", (0, 1)), ("90 deg", (1, 0)), ("180 deg", (0, -1)), ("270 deg", (-1, 0)), ("45 deg", (0.5**0.5, 0.5**0.5)))
)
def test_the_arrow_points_to_the_north_that_is_given_clockwise_from_the_top(given, way):
    sheet = plan(chain_of(BOWL.having("site.north", given)))
    arrow = next(view for view in sheet.views if any(getattr(record, "text", "") == "N" for record in view.records))
    tip = next(record.points[0] for record in arrow.records if isinstance(record, Polygon) and record.fill == "ink")
    letter = next(record.at for record in arrow.records if getattr(record, "text", "") == "N")
    for at in (tip, letter):
        assert [part / length((0, 0), at) for part in at] == pytest.approx(way, abs=1e-9)
    assert "north" not in notes_of(sheet) and "North" in sheet.alt
    assert given.startswith("0") or f"North lies {given.split()[0]} degrees clockwise from the top of the sheet." in sheet.alt


def test_a_plan_without_north_or_supply_point_draws_neither_and_says_so():
    sheet = plan(chain("library-bowl", "UK"))
    assert "N" not in [label.text for label in words(sheet)] and not [record for record in records(sheet, Line) if record.style == "cable"]
    assert "Not shown, because nobody gave it: north, supply point and cable route, bore of the duct, cover over the duct." in notes_of(sheet)


@every
def test_every_plan_leaves_route_cover_and_protection_to_an_electrician_of_the_region(name, region):
    sheet, whose = sheets(name, region)["plan"], "licensed" if region == "US" else "qualified"
    for told in (notes_of(sheet), sheet.alt):
        assert f"for a {whose} electrician to settle and test, by the local code" in told and "over the edge of the lining, never through it" in told


def test_the_cable_runs_in_its_duct_to_a_supply_point_that_lies_within_the_plan():
    """From the middle of the bay, in a corner of 3 x 24 in by 2 x 16 in of blocks, to 1.2 m right and 0.75 m up; the sides of the duct 50 mm apart."""
    sheet = plan(chain("supply point within the plan", "UK"))
    found = records(sheet, Line)
    at = next(i for i, record in enumerate(found) if record.style == "cable")
    corner = (-(3 * 24 * 0.0254) / 2 + 0.1, -(2 * 16 * 0.0254) / 2 + 0.1)
    assert found[at].points[0] == pytest.approx(corner) and found[at].points[1] == pytest.approx((1.2, 0.75))
    for side in found[at - 2 : at]:
        (ax, ay), (bx, by) = found[at].points
        apart = abs((side.points[0][0] - ax) * (by - ay) - (side.points[0][1] - ay) * (bx - ax)) / length((ax, ay), (bx, by))
        assert side.style == "thin" and apart == pytest.approx(0.025)
    shown = {label.text for label in words(sheet)}
    assert {"supply, no RCD", "duct 50, cover 600"} <= shown
    assert "it has no residual-current protection" in notes_of(sheet)
    assert ("supply point off the middle of the blocks", "+1200", "+750") in sheet.rows


@pytest.mark.parametrize(
    ("name", "to", "told"),
    (
        ("ground, north and cable known", (-6.0, 1.5), "lies 6000 mm to the left and 1500 mm up from the middle of the blocks"),
        ("frost far below the pit", (-6.0, -6.0), "lies 6000 mm to the left and 6000 mm down from the middle of the blocks"),
        ("frost in the sub-base", (9.0, 0.0), "lies 9000 mm to the right from the middle of the blocks"),
    ),
)
def test_a_cable_to_a_supply_point_off_the_plan_ends_within_it_on_the_way_there(name, to, told):
    sheet = plan(chain(name, "UK"))
    (start, stop) = next(record.points for record in records(sheet, Line) if record.style == "cable")
    x0, y0, x1, y1 = sheet.views[0].window
    assert x0 < stop[0] < x1 and y0 < stop[1] < y1
    way, all_the_way = [(b - a) for a, b in zip(start, stop)], [(b - a) for a, b in zip(start, to)]
    assert way[0] * all_the_way[1] == pytest.approx(way[1] * all_the_way[0], abs=1e-9) and 0 < way[0] / all_the_way[0] < 1
    assert any(label.text.startswith("to supply") for label in words(sheet))
    assert told in notes_of(sheet)


def test_cable_and_protection_are_told_as_far_as_they_are_known():
    told = notes_of(plan(chain_of(BOWL.having("supply.duct_cover", "450 mm"))))
    assert "in a duct, cover 450 mm, route 8000 mm long; residual-current protection of 30 mA, tested by button." in told and "cover over the duct" not in told
    protected = plan(chain("ground, north and cable known", "UK"))
    assert "residual-current protection of 30 mA, tested by button" in notes_of(protected)
    for region, device in (("UK", "RCD 30 mA"), ("US", "GFCI 30 mA, too high")):
        assert f"to supply, {device}" in {label.text for label in words(plan(chain("ground, north and cable known", region)))}
    assert "residual-current protection" in notes_of(plan(chain("terrace-blade", "UK"))).partition("Not shown")[2]


def test_the_pump_stands_in_a_bay_of_the_size_given_or_the_usual_one():
    for bay_side, side in ((None, 0.200), ("330 mm", 0.330)):
        design = BOWL.having("pump.bay", bay_side)
        bay = filled(plan(chain_of(design)), "paper")[0].points
        assert bay[0] == pytest.approx((-0.6, -0.4)) and bay[2] == pytest.approx((side - 0.6, side - 0.4)), "in the corner of 1200 by 800 of blocks"
        assert f"pump bay {side * 1e3:.0f}" in [label.text for label in words(plan(chain_of(design)))]
        walls = [
            record.points for record in records(section(chain_of(design)), Line) if record.style == "outline" and record.points[0][0] == record.points[1][0]
        ]
        assert sorted(points[0][0] for points in walls) == pytest.approx([-0.6, side - 0.6])
    with pytest.raises(InputError, match="wider than the blocks: look at pump.bay = 900 mm"):
        plan(chain_of(BOWL.having("pump.bay", "900 mm")))


def test_the_pump_is_drawn_within_the_blocks_however_wide_its_bay():
    """Blocks of 420 mm whose floor lies at -480: the body stands between -480 and -60."""
    body = next(r.points for r in records(section(chain_of(BOWL.having("pump.bay", "790 mm"))), Polygon) if r.fill == "pale" and r.style == "outline")
    assert all(-0.480 <= y <= -0.060 for _, y in body)


def test_the_bay_of_the_us_is_eight_inches():
    assert "pump bay 8" in [label.text for label in words(plan(chain("library-bowl", "US")))]


# --- section ------------------------------------------------------------------------------------------------------------------------


@every
def test_every_level_that_is_known_is_labelled_once_and_every_water_level_has_its_triangle(name, region):
    sheet, design = sheets(name, region)["section"], chain(name, region).design
    known, lettering = chain_of(design).levels_shown(), BY_REGION[region]
    said = [label.text.replace("highest ", "top of the highest ") for label in words(sheet)]
    us = {"formation": "subgrade", "stone base": "base of the drilled stones", "top of the highest stone": "top of the highest drilled stone"}
    names = [us.get(level.name, level.name) if region == "US" else level.name for level in known]
    for name, level in zip(names, known, strict=True):
        assert said.count(f"{name} {lettering.level(level.height)}") == 1, name
    assert len(records(sheet, Level)) == sum(level.water for level in known) + 1, "and one on the water itself"
    assert [row[0] for row in sheet.rows] == names[::-1]


def test_intake_cut_out_and_top_up_are_drawn_where_the_design_has_them():
    shown = {label.text for label in words(section(chain("all levels known", "UK")))}
    assert {"pump intake -420", "cut-out -310", "top-up -105"} <= shown, "the floor stands at -480"


def in_the_ground(sheet, style):
    """Height of a line and the stretches that it is drawn over, in m."""
    found = [record.points for record in records(sheet, Line) if record.style == style]
    return sorted({y for points in found for _, y in points}), sorted((a[0], b[0]) for a, b in found)


def test_ground_water_and_frost_stand_beside_the_box_at_the_levels_given():
    """The floor lies at -60 - 420 = -480: water 100 over it at -380; frost 450 under the paving. The box reaches to (1236 + 2 x 18) / 2 = 636 from the middle."""
    sheet = section(chain("ground, north and cable known", "UK"))
    for style, level in (("ground water", -0.380), ("frost line", -0.450)):
        heights, pieces = in_the_ground(sheet, style)
        assert heights == pytest.approx([level]) and [pieces[0][1], pieces[1][0]] == pytest.approx([-0.636, 0.636])
    assert {"ground water -380", "frost line -450"} <= {label.text for label in words(sheet)}
    assert {("ground water", "-380", "ground"), ("frost line", "-450", "ground"), ("static water", "-100", "water"), ("formation", "-620", "built")} <= set(
        sheet.rows
    )
    assert "Not shown" not in notes_of(sheet)


@pytest.mark.parametrize(("name", "level"), (("frost far below the pit", -1.500), ("frost in the sub-base", -0.600)))
def test_frost_that_goes_below_the_floor_is_one_line_with_soil_under_it(name, level):
    sheet = section(chain(name, "UK"))
    heights, pieces = in_the_ground(sheet, "frost line")
    assert heights == pytest.approx([level]) and len(pieces) == 1
    assert min(y for record in filled(sheet, "earth") for _, y in record.points) < level
    below = [record for record in records(sheet, Measure) if record.text.startswith(("box", "pit")) and not record.along]
    scale = next(view for view in sheet.views if below[0] in view.records).scale[0]
    assert all(record.start[1] + record.offset / scale < level for record in below), "dimensions stand under the line"


def test_what_nobody_gave_of_the_ground_is_not_drawn_and_what_is_nothing_is_said():
    bare, dry = section(chain("library-bowl", "UK")), section(chain_of(BOWL.having("site.ground_water", "0 mm").having("site.frost_depth", "0 mm")))
    for sheet in (bare, dry):
        assert not [record for record in records(sheet, Line) if record.style in ("ground water", "frost line")]
    assert "Not shown, because nobody gave it: highest ground water, frost line." in notes_of(bare)
    assert "No ground water stands above the reservoir floor. No frost enters the ground." in notes_of(dry) and "Not shown" not in notes_of(dry)


def test_ground_water_is_no_water_of_the_reservoir():
    shown = [label.text for label in words(reservoir_bars(chain("ground, north and cable known", "UK")))]
    assert not [text for text in shown if "ground" in text or "frost" in text]


def test_every_stone_is_listed_with_its_width_and_height():
    """1) 13 x 30, 2) 12 x 24, 3) 11 x 18 in, as the design gives them; times 25.4 in mm."""
    for region, each in (("UK", "mm: 1) 330 x 762; 2) 305 x 610; 3) 279 x 457."), ("US", "inches: 1) 13 x 30; 2) 12 x 24; 3) 11 x 18.")):
        sheet = section(chain("school-columns", region))
        assert f"Stones from left to right, across x high in {each}" in notes_of(sheet) and each in sheet.alt
    five = section(chain("five stones", "UK"))
    assert "1) 300 x 900; 2) 250 x 700; 3) 200 x 500; 4) 220 x 800; 5) 180 x 300." in notes_of(five)
    assert "The stone, across x high in mm: 500 x 900." in notes_of(section(chain("one stone", "UK")))


@pytest.mark.parametrize(("name", "count"), (("five stones", 5), ("twelve stones", 12)))
def test_more_than_three_stones_are_numbered_over_their_middles(name, count):
    sheet = section(chain(name, "UK"))
    numbers = {record.text: record.at[0] for view in sheet.views for record in view.records if getattr(record, "text", "").isdigit() and hasattr(record, "at")}
    blocks = 3 * 24 * 0.0254
    assert [numbers[str(i)] for i in range(1, count + 1)] == pytest.approx([blocks * ((i - 0.5) / count - 0.5) for i in range(1, count + 1)])


def test_stones_too_close_for_their_sizes_are_numbered_and_for_their_numbers_only_listed():
    close = STONES.having("reservoir.blocks_along", 1).having("stones.diameters", ["150 mm"] * 3).having("slab.length", "150 mm")
    texts = {label.text for label in words(section(chain_of(close.headed("region", "UK"))))}
    assert {"1", "2", "3"} <= texts and "150" not in texts
    many = chain_of(stones(*["20 mm"] * 40, high=[400] * 40).having("stones.stand_on", "blocks").headed("region", "UK"))
    shown = section(many)
    bare = [record.text for view in shown.views for record in view.records if getattr(record, "text", "") in ("17", "39")]
    assert not bare and "39) 20 x 400" in notes_of(shown)


@given(st.lists(st.text("mil.", min_size=1, max_size=30), max_size=60))
def test_a_note_is_broken_between_words_into_lines_that_fit(parts):
    lines = wrapped(" ".join(parts), 166.0)
    assert " ".join(lines).split() == parts and all(room_for(line, 2.9) <= 166.0 for line in lines)
    assert all(room_for(f"{line} {after.split()[0]}", 2.9) > 166.0 for line, after in zip(lines, lines[1:])), "no line ends early"


def test_a_size_is_never_broken_over_two_lines():
    sizes = "; ".join(f"{i}) 11 3/4 x 35 3/8" for i in range(1, 30))
    lines = wrapped(f"Stones: {sizes}.", 80.0)
    assert len(lines) > 5 and all(re.fullmatch(r"(Stones: )?(\d+\) 11 3/4 x 35 3/8[;.] ?)+", line) for line in lines)


def test_the_water_in_the_section_stands_up_to_the_static_level():
    water = next(record for record in records(section(chain("library-bowl", "UK")), Polygon) if record.fill == "water")
    assert {round(y, 9) for _, y in water.points} == {-0.480, -0.100}


def test_the_long_section_of_a_cascade_falls_from_lip_to_lip_and_down_the_rill():
    """600 - 3 x 150 = 150 mm at the last pool, less 2 m at 1 in 100 = 130 mm at the end of the rill."""
    sheet = section(chain("garden-cascade", "UK"))
    fill = max(
        (record for record in sheet.views[0].records if isinstance(record, Polygon) and record.fill == "concrete"), key=lambda record: len(record.points)
    )
    heights = sorted({round(y * 1e3) for _, y in fill.points})
    assert heights == [0, 130, 150, 300, 450, 600]
    assert {"450", "rill 2000", "header 400", "600"} <= set(spans_of(sheet))


def test_a_cascade_that_runs_down_past_its_reservoir_is_told_so():
    """From 300 mm three falls of 150 mm end at -150 mm, and the edge of the box stands at -40."""
    with pytest.raises(InputError, match="run down to -170 mm, below the edge of the reservoir at -40 mm"):
        section(chain_of(CASCADE.having("cascade.top_level", "300 mm")))


def test_a_design_as_large_as_a_slip_of_a_unit_makes_it_is_told_so():
    wild = chain_of(BOWL.having("reservoir.block_length", "60 m"))
    for name, sheet in drawings(wild)[:2]:
        assert isinstance(sheet, str) and "unit" in sheet, name
    with pytest.raises(InputError, match="larger than a sheet"):
        section(wild)


# --- duty chart ---------------------------------------------------------------------------------------------------------------------


def assert_labels_stand_clear(sheet):
    """No label over a curve, a guide, a mark or another label, nor off the sheet."""
    marks = [mark for _, marks in layout(sheet) for mark in marks]
    curves = [mark for mark in marks if isinstance(mark, Stroke) and mark.style in ("curve", "second curve", "hidden")]
    labels = [(mark.text, true_box(mark)) for mark in marks if isinstance(mark, Words)]
    for text, box in labels:
        assert 0 <= box[0] and 0 <= box[1] and box[2] <= sheet.width and box[3] <= sheet.height, text
        assert not any(crosses(box, a, b) for curve in curves for a, b in zip(curve.points, curve.points[1:])), f"'{text}' over a curve"
    for (text, a), (other, b) in combinations(labels, 2):
        assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1], f"'{text}' over '{other}'"
    for a, b in (mark.points for mark in marks if isinstance(mark, Stroke) and mark.style == "dimension"):
        struck = [text for text, (left, top, right, bottom) in labels if crosses((left + 0.3, top + 0.3, right - 0.3, bottom - 0.3), a, b)]
        assert not struck, f"the line to another label runs through {struck}"


@every
def test_no_label_of_a_chart_lies_over_a_curve(name, region):
    for title in ("duty chart", "level over thirty dry days"):
        assert_labels_stand_clear(sheets(name, region)[title])


@settings(max_examples=150)
@given(
    st.sampled_from((BOWL, STONES, CASCADE)),
    st.sampled_from(("UK", "US")),
    st.floats(0.3, 30),
    st.floats(3, 2000),
    st.floats(0.02, 20),
    st.none() | st.floats(1, 3000),
)
def test_labels_stand_clear_whatever_the_pump_and_the_flow(design, region, head, flow, wanted, bucket):
    changed = design.headed("region", region).having("pump.shut_off_head", f"{head:.3f} m").having("pump.maximum_flow", f"{flow:.2f} L/min")
    changed = changed.having("flow.for_each_metre", f"{wanted:.3f} L/s per m").having("measured.flow", bucket and f"{bucket:.2f} L/min")
    sheet = duty_chart(chain_of(changed))
    assert_labels_stand_clear(sheet)
    said = [label.text.partition(" ")[0] for label in words(sheet)]
    assert {"required", "pump", "system"} <= set(said) and ("duty" in said) == ("do not meet" not in sheet.description), "every name stands somewhere"


def test_a_label_for_which_there_is_no_place_is_not_forced_on_the_chart():
    room = Room(View((0.0, 0.0, 1.0, 1.0), (0.0, 0.0, 20.0, 10.0), ()))
    assert room.label([(0.5, 0.5)], "as long as this label is, it cannot stand here") == []
    assert len(room.label([(0.5, 0.2)], "short")) == 1


def test_the_duty_stands_where_the_two_curves_cross_and_throttled_at_the_flow_wanted():
    sheet = duty_chart(chain("library-bowl", "UK"))
    pump, system, throttled = (
        next(r.points for r in records(sheet, Line) if r.style == style and len(r.points) > 5) for style in ("curve", "second curve", "hidden")
    )
    duty, wanted = next(record.at for record in records(sheet, Mark) if record.radius == 1.3), chain("library-bowl", "UK").flow_wanted * 6e4

    def at(points, x):
        (x0, y0), (x1, y1) = next((a, b) for a, b in zip(points, points[1:]) if a[0] <= x <= b[0])
        return y0 + (y1 - y0) * (x - x0) / (x1 - x0)

    assert at(pump, duty[0]) == pytest.approx(duty[1], rel=2e-3) == at(system, duty[0])
    assert at(throttled, wanted) == pytest.approx(at(pump, wanted), rel=5e-3)


def test_a_pump_that_cannot_lift_it_is_drawn_and_the_sentence_says_why():
    sheet = duty_chart(chain_of(BOWL.having("pump.shut_off_head", "0.5 m")))
    assert "do not meet" in sheet.description and "no water comes" in sheet.description
    assert len([record for record in records(sheet, Line) if record.style == "curve"]) == 1


# --- water --------------------------------------------------------------------------------------------------------------------------


@every
def test_the_bars_hold_the_same_water_stopped_and_running(name, region):
    """What leaves the level on the start is what is in transit: dead, usable and in transit together are the water up to the static level."""
    c = chain(name, region)
    pieces = [record for record in records(reservoir_bars(c), Polygon) if record.style == "thin"]
    volume = {}
    for record in pieces:
        (x, low), (_, high) = record.points[0], record.points[2]
        volume[x < 100, record.fill] = (high - low) * c.water_area
    filled = sum(volume.get((True, fill), 0.0) for fill in ("untested", "water"))
    running = sum(volume.get((False, fill), 0.0) for fill in ("untested", "water", "patch"))
    assert filled == pytest.approx(running, abs=1e-9) == pytest.approx(c.static_volume, abs=1e-9)
    assert volume[False, "patch"] == pytest.approx(c.transit, abs=1e-9)
    assert volume[True, "paper"] == pytest.approx(c.water_area * (c.design["reservoir.overflow_level"] - c.design["reservoir.static_level"]), abs=1e-9)


def test_the_layers_of_the_bowl_worked_by_hand():
    """0.96 m2 x 0.95 = 0.912 m2: 150 mm dead 136.8 L, 230 mm usable 209.8 L, 20 mm free 18.2 L."""
    shown = [label.text for label in words(reservoir_bars(chain("library-bowl", "UK")))]
    assert {"dead 150 mm, 137 L", "usable 230 mm, 210 L", "free 20 mm, 18.2 L"} <= set(shown)


def test_levels_in_the_wrong_order_are_not_drawn_as_bars():
    with pytest.raises(InputError, match="do not fit"):
        reservoir_bars(chain_of(BOWL.having("reservoir.static_level", "120 mm")))


@every
@pytest.mark.parametrize("topped_up", (True, False))
def test_no_water_is_made_or_lost_in_the_dry_month(name, region, topped_up):
    c = chain(name, region)
    days, area = dry_month(c, topped_up), c.water_area
    level = c.design["reservoir.static_level"]
    for day in days:
        assert area * (day.level - level) == pytest.approx(day.rain + day.topped_up - day.lost - day.spilled, abs=1e-9)
        level = day.level
    assert len(days) == DAYS and all(day.rain == 0 for day in days)


@every
def test_without_top_up_the_pump_runs_as_many_days_as_the_balance_says(name, region):
    """The formula for days without top-up divides once; the run goes day by day."""
    c = chain(name, region)
    ran = sum(day.running for day in dry_month(c, False))
    assert ran == pytest.approx(min(c.days / 86400, DAYS), rel=1e-9)


def test_a_valve_fills_to_the_top_up_level_where_there_is_one_else_to_the_static_level():
    assert basin(chain("all levels known", "UK"), True).h_top == 0.375 and basin(chain("library-bowl", "UK"), True).h_top == 0.380
    assert basin(chain("library-bowl", "UK"), False).h_top is None
    assert dry_month(chain("all levels known", "UK"), True)[-1].level == pytest.approx(0.375)


@pytest.mark.parametrize("name", ["library-bowl", "terrace-blade", "garden-cascade"])
def test_without_top_up_the_level_stands_from_the_hour_at_which_the_pump_runs_dry(name):
    """As long as the caption says, and as one line down to it: (level at first - limit) over the loss of a day."""
    design = chain(name, "UK")
    (falling,) = (record.points for record in records(thirty_days(design), Line) if record.style == "second curve")
    falling = [point for point in falling if point not in ((0.0, falling[0][1]),)]
    day, level = next(point for point, after in zip(falling, falling[1:], strict=False) if after[1] == pytest.approx(point[1], abs=1e-9))
    assert level == pytest.approx(1000 * design.design["reservoir.lowest_level"])
    assert day == pytest.approx((design.usable - design.transit) / design.daily_loss / 86_400, rel=1e-6)


def test_the_limit_of_the_pump_and_its_cut_out_are_marked_in_the_dry_month():
    sheet = thirty_days(chain("all levels known", "UK"))
    marked = {record.points[0][1] for record in records(sheet, Line) if record.style == "hidden"}
    assert {round(level, 9) for level in marked} == {150, 170}
    assert {"the pump's low limit 150", "cut-out 170"} <= {label.text for label in words(sheet)}
