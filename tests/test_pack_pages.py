"""Pages of the pack: values stand as they were typed, US packs use US words and units first, cost and programme are whole, the chart can be read."""

import re
from dataclasses import replace
from pathlib import Path

import pytest

from brimwork.design.done.programme import programme
from brimwork.design.follows.features import chain_of
from brimwork.design.typed import file
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.known import Given
from brimwork.design.typed.wording import PAIRS, measured, worded
from brimwork.drawing.bars import bars
from brimwork.drawing.layout import words
from brimwork.drawing.records import Mark, Polygon
from brimwork.pack.rests import inputs_printed

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"
NAMES = ("library-bowl", "school-columns", "terrace-blade", "garden-cascade")


def load(name, region=""):
    design = file.load_design(DESIGNS / f"{name}.toml")
    return replace(design, region=region) if region else design


@pytest.fixture(scope="module")
def texts(read):
    """Text of every page of the packs of all designs in both regions."""
    return {(name, region): read(name, region) for name in NAMES for region in ("UK", "US")}


def page(pages, title):
    return next(text for text in pages if text.startswith(title))


def said(section, key, text, region="UK"):
    field = SECTIONS[section][key]
    return inputs_printed(field, Given(field.read(text, key), text), region)


def test_a_value_stands_as_it_was_typed_with_its_conversion_beside_it(texts):
    """1500 psf are 1500 x 47.8803 Pa = 71.8 kPa; 16 in are 406.4 mm; 780 mm are 30.7 in; 20 degC are 68 degF."""
    assert said("site", "soil_bearing", "1500 psf") == said("site", "soil_bearing", "1500 psf", "US") == "1500 psf (71.8 kPa)"
    assert said("vessel", "rim_diameter", "780 mm") == "780 mm" and said("vessel", "rim_diameter", "780 mm", "US") == "780 mm (30.7 in)"
    assert said("slab", "length", "16 in") == "16 in (406 mm)" == said("slab", "length", "16 in", "US")
    assert said("flow", "water_temperature", "20 degC", "US") == "20 degC (68 degF)"
    assert said("slab", "length", "1 1/2 in") == "1 1/2 in (38.1 mm)" and said("pipe", "length", "2.40 m") == "2.40 m"
    assert said("stones", "diameters", ["13 in", "300 mm"]) == "13 in (330 mm), 300 mm"
    assert said("pump", "curve", [["0 L/h", "6.0 m"], ["4000 L/h", "5.6 m"]]) == "0 L/h (0 L/min) at 6.0 m; 4000 L/h (66.7 L/min) at 5.6 m"
    assert said("reservoir", "void_fraction", 0.95) == "0.95" and said("costing", "tax", "20 %") == "20 %"
    assert said("vessel", "foot_corners", [["0 mm", "0 mm"], ["300 mm", "0 mm"], ["0 mm", "300 mm"]]) == "0 mm at 0 mm; 300 mm at 0 mm; 0 mm at 300 mm"
    assert "1500 psf (71.8 kPa)" in " ".join(texts["library-bowl", "UK"])


def test_usual_values_are_printed_as_assumed_with_their_basis(texts):
    rests = " ".join(texts["library-bowl", "UK"])
    assert "slack of the liner 0.02 common practice, assumed" in rests and "15 % for work in the ground 0.12 common practice, assumed" in rests
    there = " ".join(texts["school-columns", "US"])
    assert "what one bag holds 50 lb (22.7 kg)" in there
    assert "slack of the cord to lift the pump out 3.28 ft (1 m) common practice, assumed" in there, "what nobody typed begins with the unit of the region"
    assert "schedule time: stands full 7 days" in there and "schedule people who work on site 2" in there and "programme" not in there.lower()


@pytest.mark.parametrize("name", NAMES)
def test_packs_of_the_us_use_its_words_and_its_units_first(texts, name):
    there, here = texts[name, "US"], texts[name, "UK"]
    shopping, work, first = page(there, "Shopping list"), page(there, "Schedule"), there[0]
    assert "quantity US customary metric" in first and "quantity metric US customary" in here[0]
    assert "2 ft (0.6 m) back" in first and "Line-voltage electricity" in first and "Mains electricity" in here[0]
    for word in ("crushed aggregate base", "concrete sand", "underlayment", "lumber"):
        assert word in shopping
    for word in ("aggregate type 1", "sharp sand", "fleece", "timber", "sub-base"):
        assert word in page(here, "Shopping list") and word not in shopping
    assert "subgrade" in work and "formation" not in work and "3 in (75 mm)" in work and "closeout" in " ".join(there)
    # whatever is named in metres stands in brackets behind feet, but for what is typed
    assert not re.findall(r"(?<![(\d.])\d[\d.]* m\b", shopping)


def test_the_cost_sheet_says_when_it_is_whole_and_when_it_is_at_least(texts):
    """9167.92 is worked by hand in test_buying."""
    assert "Every price is known" in page(texts["library-bowl", "UK"], "Cost sheet") and "9 167.92" in page(texts["library-bowl", "UK"], "Cost sheet")
    school = page(texts["school-columns", "US"], "Cost sheet")
    # a stone at 980 and three branch valves at 16
    assert "at least" in school and "price not known" in school and "980.00 980.00" in school and "48.00" in school


def test_the_programme_is_dated_and_hold_points_have_their_planned_days(texts):
    assert "Mon 2027-03-01, 08:00" in page(texts["library-bowl", "UK"], "Programme")
    holds = next(text for text in texts["library-bowl", "UK"] if "Hold points: work stops here" in text)
    assert "H4 liner holds water 24 to 48 hours against a control bucket Fri 2027-03-05" in holds, "the lining is done on Wednesday at 14:30; 48 hours"
    assert "(past)" in " ".join(texts["library-bowl", "UK"]), "the vessel was to be ordered before the day of the pack"
    assert "day 1, 08:00" in page(texts["terrace-blade", "UK"], "Programme") and "as if day 1 were a Monday" in page(texts["terrace-blade", "UK"], "Programme")


def test_the_card_to_hand_over_has_the_numbers_of_its_design(texts):
    """By hand: 1.2 m x 0.8 m of blocks, 0.95 of them empty, 380 mm deep hold 346.6 L, and 95 L stand in the bowl: 441.6 L."""
    card = next(text for text in texts["library-bowl", "UK"] if "Card to hand over" in text)
    assert "Dose by the water there is, 442 L (117 US gal)" in card and "residual-current device" in card
    assert "press the test button of the gfci" in next(text for text in texts["library-bowl", "US"] if "Card to hand over" in text).lower()


def test_the_datum_table_of_a_cascade_lists_its_steps_and_the_end_of_its_rill(texts):
    """By hand: from the lip at 600 mm three falls of 150 mm, then 2 m of rill at 1:100, which is 20 mm."""
    table = next(text for text in texts["garden-cascade", "UK"] if "Level datum table" in text)
    for row in ("step 1 from the header +450", "step 2 from the header +300", "step 3 from the header +150", "lower end of the rill +130"):
        assert row in table
    without = chain_of(load("garden-cascade").having("cascade.top_level", None))
    assert not any("step" in level.name for level in without.levels_listed())


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("start", (None, "2027-03-01", "2027-03-04", "2027-03-05"))
def test_names_and_hold_points_of_the_chart_stand_apart_and_on_the_sheet(name, start):
    sheet = bars(programme(chain_of(load(name).having("programme.start", start))), name)
    labels = words(sheet)
    for i, a in enumerate(labels):
        left, top, right, bottom = a.box
        assert left >= 0 and top >= 0 and right <= sheet.width and bottom <= sheet.height, a.text
        for b in labels[:i]:
            assert a.box[2] <= b.box[0] or b.box[2] <= a.box[0] or a.box[3] <= b.box[1] or b.box[3] <= a.box[1], (a.text, b.text)


def test_the_chart_has_a_bar_for_every_step_filled_where_it_is_critical_and_a_point_for_every_hold():
    made = programme(chain_of(load("library-bowl")))
    (view,) = bars(made, "x").views
    drawn = [record for record in view.records if isinstance(record, Polygon) and record.style == "thin"]
    assert len(drawn) == len(made.steps) and [bar.fill in ("accent", "patch") for bar in drawn] == [one.critical for one in made.steps]
    assert sum(isinstance(record, Mark) for record in view.records) == 7


@pytest.mark.parametrize("start", ("2027-03-01", "2027-03-02", "2027-03-03", "2027-03-04", "2027-03-05"))
def test_the_chart_marks_every_hold_point_on_the_day_that_the_table_plans(start):
    """A test that ends on Saturday is signed on Monday: the point stands there, not at the end of the bar. Days are counted from the first, across the sheet."""
    made = programme(chain_of(load("library-bowl").having("programme.start", start).having("vessel.coat", "yes")))
    (view,) = bars(made, "x").views
    marked = [record.at[0] for record in view.records if isinstance(record, Mark)]
    planned = [made.signing(one).date() for one in made.steps if one.step.hold]
    for x, day in zip(marked, planned, strict=True):
        assert day.weekday() < 5 and (day - made.first).days - 1e-9 <= x <= (day - made.first).days + 1 + 1e-9


def test_words_of_the_us_are_put_in_whole_and_keep_their_capital():
    assert worded("Sub-base on the formation; earthworks", "US") == "Base course on the subgrade; earthworks"
    assert worded("Sub-base on the formation", "UK") == "Sub-base on the formation"
    assert measured("layers of 75 mm, 1.5 m apart (20 mm)", "US") == "layers of 3 in (75 mm), 5 ft (1.5 m) apart (20 mm)"
    for there in PAIRS.values():
        assert worded(there, "US") == there, "a word of the US is never changed again"


@pytest.mark.parametrize("key", [("library-bowl", "UK"), ("library-bowl", "US"), ("school-columns", "US")])
def test_page_one_holds_status_dangers_key_numbers_and_cautions(texts, key):
    """Nothing of them runs over to a second page, which would hold two lines."""
    assert "Local codes and licensed practice" in texts[key][0] and texts[key][1].startswith("Drawings")
