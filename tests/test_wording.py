"""The words of the US reach everything that a US reader sees: drawings, findings, the pack, the design workbook; and keys of the design file stay as they are."""

import datetime
import re
from dataclasses import replace
from pathlib import Path

import pytest

from brimwork import units
from brimwork.design.follows.features import chain_of
from brimwork.design.judged import checks
from brimwork.design.judged.findings import graded
from brimwork.design.typed.cautions import CAUTIONS_AT
from brimwork.design.typed.design import blank_design
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.file import load_design
from brimwork.design.typed.questions import QUESTIONS
from brimwork.design.typed.wording import PAIRS, measured, spoken, worded
from brimwork.drawing.design import drawings
from brimwork.drawing.layout import words
from brimwork.drawing.records import Sheet
from brimwork.notebook.form import FORM_STEPS, keys_of
from brimwork.notebook.page_boxes import entry
from brimwork.notebook.page_parts import key_numbers, turned
from brimwork.notebook.results import drawings_shown, findings_shown
from brimwork.notebook.shopping import buying
from brimwork.pack.document import document

FOLDER = Path(__file__).parents[1] / "workbooks" / "designs"
DESIGNS = {path.stem: replace(load_design(path), title="A title", note="A note") for path in sorted(FOLDER.glob("*.toml"))}
BARE = {kind: blank_design(kind, "A title") for kind in ("overflowing vessel", "drilled stones", "blade", "cascade")}
ALL = DESIGNS | BARE
SAID = ("title", "value", "limit", "remedy", "basis", "note")
# Words and spellings of the UK, from the trade's own list of pairs; not read from the table that is tested.
BRITISH = re.compile(
    r"\b(formation|sub-base|sharp sand|fleece|timber|socket|residual[- ]current|earth leakage|duct|mains|hose tail|hose clip|tank connector|welded mesh|soakaway|"
    r"spirit level|programme|handover|turf|kerb|labour|neighbour|utilisation|fertilised|(re-)?levell(ed|ing)|(milli)?metres?|litres?|colour)s?\b",
    re.IGNORECASE,
)
every = pytest.mark.parametrize("name", ALL)


def us(name):
    return chain_of(ALL[name].headed("region", "US"))


def british(texts):
    """Those of the texts that still hold a word of the UK; the names of sections and keys of the file are not words."""
    return [text for text in texts if BRITISH.search(re.sub(r"\([a-z_]+\.[a-z_]+\)", "", text)) or worded(text, "US") != text]


def test_a_word_of_the_us_is_never_changed_again_and_the_uk_keeps_its_own():
    for here, there in PAIRS.items():
        assert worded(here, "US") == there == worded(there, "US") and worded(here, "UK") == here


def test_keys_of_the_design_file_are_no_words():
    said = "needs duct takes the plug (answers.duct), as in [programme]: give answers.socket, ground.sub_base or programme.start. The formation."
    assert worded(said, "US") == said.replace("needs duct", "needs conduit").replace("The formation", "The subgrade")


def test_two_lengths_that_share_a_unit_are_both_converted():
    """By hand: 10 and 20 mm are 0.394 and 0.787 in, within them 7/16 and 3/4; 1.2 and 0.6 m are 3.94 and 1.97 ft; 0.5 to 0.75 mm are 19.7 to 29.5 mil."""
    assert measured("10 to 20 mm on each side", "US") == "7/16 to 3/4 in (10 to 20 mm) on each side"
    assert measured("levels of 1.2 and 0.6 m", "US") == "levels of 4 and 2 ft (1.2 and 0.6 m)"
    assert measured("0.5 to 0.75 mm", "US") == "20 to 30 mil (0.5 to 0.75 mm)"
    assert measured("2 x 150 mm, 3 mm/day, 5 m/s (20 mm)", "US") == "2 x 6 in (150 mm), 3 mm/day, 5 m/s (20 mm)"
    assert measured("368 mm (14.5 in), 1.7 m^0.5/s", "US") == "368 mm (14.5 in), 1.7 m^0.5/s", "what has its inches already, and what is no length"


# A tolerance in mm, which way it may be missed, and the fraction of an inch, by hand: 2 mm are 0.0787 in, between 1/16 and 3/32.
TOLERANCES = (
    ("bench mark within 2 mm", "benchmark within 1/16 in (2 mm)"), ("lip or rim within 1 mm", "lip or rim within 1/32 in (1 mm)"),
    ("top within 3 mm; bow 5 mm at most", "top within 3/32 in (3 mm); bow 3/16 in (5 mm) at most"), ("+0/-10 mm", "+0, -3/8 in (+0/-10 mm)"),
    ("flat within 10 mm in 1 m", "flat within 3/8 in (10 mm) in 4 ft (1 m)"), ("falls away 1:80 for 1 m", "falls away 1:80 for 4 ft (1 m)"),
    ("in layers of 150 mm", "in layers of 6 in (150 mm)"), ("layers of 75 mm", "layers of 3 in (75 mm)"), ("feet 0.6 m back", "feet 2 ft (0.6 m) back"),
    ("the plug's diagonal and 10 mm", "the plug's diagonal and 7/16 in (10 mm)"), ("less than 2 mm a day", "less than 1/16 in (2 mm) a day"), ("40 mm, tight", "1 1/2 in (40 mm), tight"),
)  # fmt: skip


@pytest.mark.parametrize(("here", "there"), TOLERANCES)
def test_a_tolerance_is_told_in_marks_of_a_tape_to_its_tighter_side(here, there):
    assert spoken(here, "US") == there == spoken(there, "US") and spoken(here, "UK") == here


@pytest.mark.parametrize("tenths", range(10, 1000, 7))
def test_what_must_not_be_passed_is_never_made_larger_and_what_must_be_reached_never_smaller(tenths):
    """But for whole inches within a fiftieth, which the trade calls by the same name: 25 mm and 1 in."""
    most, least = (units.read(re.search(r"[\d /]+ in", measured(f"{word} {tenths / 10} mm", "US"))[0].strip(), "in") * 1e4 for word in ("within", "least"))
    assert 0.5 * tenths < most <= tenths * 1.021 and tenths * 0.98 <= least < 2 * tenths


@every
def test_every_text_of_every_finding_is_in_the_words_of_its_region(name):
    raw = checks.findings(us(name))
    found = graded(raw, "US")
    assert british(getattr(one, text) for one in raw for text in SAID), "there is something to put into other words"
    assert not british(getattr(one, text) for one in found for text in SAID)
    assert graded(raw, "UK") == raw and graded(found, "US") == found
    assert [(one.id, one.grade, one.group, one.needs, one.results) for one in found] == [(one.id, one.grade, one.group, one.needs, one.results) for one in raw]


@every
def test_every_drawing_and_every_reason_why_there_is_none_is_in_the_words_of_the_us(name):
    for title, sheet in drawings(us(name)):
        if isinstance(sheet, Sheet):
            cells = [cell for row in sheet.rows for cell in row]
            assert not british([*(label.text for label in words(sheet)), sheet.title, sheet.alt, *sheet.columns, *cells]), title
        else:
            assert not british([sheet]), title


@pytest.mark.parametrize("name", DESIGNS)
def test_levels_and_layers_are_drawn_in_the_words_of_the_region(name):
    for region, its, other in (("UK", ("formation", "sub-base"), ("subgrade", "base course")), ("US", ("subgrade", "base course"), ("formation", "sub-base"))):
        sheet = dict(drawings(chain_of(DESIGNS[name].headed("region", region))))["section"]
        said = " ".join([*(label.text for label in words(sheet)), *(row[0] for row in sheet.rows)])
        assert all(word in said for word in its) and not any(word in said for word in other)


@every
def test_every_text_of_the_pack_is_in_the_words_of_the_us(name, tmp_path):
    source = document(ALL[name].headed("region", "US"), datetime.date(2027, 2, 20), tmp_path)
    quoted = {text for text in re.findall(r'"((?:[^"\\]|\\.)*)"', source)} - {section.replace("_", " ") for section in SECTIONS}
    rest = re.sub(r'"((?:[^"\\]|\\.)*)"', '""', source).splitlines()
    assert not british([*(text for text in quoted if not text.endswith(".svg")), *rest])
    there = document(ALL[name].headed("region", "UK"), datetime.date(2027, 2, 20), tmp_path)
    assert len(BRITISH.findall(there)) > 20 and not re.search(r"subgrade|GFCI|receptacle|underlayment", there)


@every
def test_the_design_workbook_shows_the_words_of_the_us(name):
    chain = us(name)
    shown = findings_shown(chain, graded(checks.findings(chain), "US")), drawings_shown(chain), buying(chain.design)
    for each in shown:
        text = re.sub(r"data:image[^'\"]*|<[^>]*>|\([a-z_]+\.[a-z_]+\)", " ", each.html)
        assert not british(re.split(r"\s{2,}|\n", text)) and not british(each.plain.splitlines())


def test_what_a_change_turned_is_told_in_the_words_of_the_us():
    bowl = DESIGNS["library-bowl"].headed("region", "US")
    before, after = (graded(checks.findings(chain_of(one)), "US") for one in (bowl, bowl.having("answers.duct", "plug must be cut off")))
    told = turned(before, after, "US")
    assert "now: conduit does not take the plug" in told and not british([told])


def test_a_change_after_which_something_is_not_known_says_what_it_needs():
    bowl = DESIGNS["library-bowl"]
    before, after = (graded(checks.findings(chain_of(one)), "UK") for one in (bowl, bowl.having("vessel.foot_outside", None)))
    assert "is not known now (it needs: across the foot)" in turned(before, after, "UK", most=20)


@every
def test_the_page_of_a_design_speaks_as_the_us_does(name):
    design = us(name).design
    said = [one["label"] for step in FORM_STEPS for key in keys_of(step, design) for one in [entry(key, design)]]
    said += [spoken(one.words, "US") for one in CAUTIONS_AT] + [words for _, words in key_numbers(us(name)).values()]
    assert not british(said)


def test_words_and_lengths_together():
    assert spoken("sand bed of 30 mm on the sub-base", "US") == "bedding course of 1 1/4 in (30 mm) on the base course"


# The pairs of the trade that are refused besides: water mains and earth as well, which a reader there takes for electricity and for soil.
LEFT_OVER = re.compile(
    r"\b(mains|earth|metres?|millimetres?|litres?|kerbs?|turf|timber|skips?|soakaways?|hosepipes?|sockets?|residual[- ]current|RCDs?|ducts?|fleece|formation|sub-base|"
    r"hire|hired|neighbours?|labour|colours?|(re-)?levell(ed|ing)|fertilised|programme|handover|gully|flex|fused spur|consumer unit|isolator|tank connectors?)\b",
    re.IGNORECASE,
)
ELECTRIC = re.compile(r"\b(line[- ]voltage|receptacles?|GFCIs?|ground[- ]fault|conduits?|electric\w*)\b", re.IGNORECASE)
OF_WATER = re.compile(r"\b(siphons?|top-up|potable|air gap|supplier|overflow pipe|spills?)\b", re.IGNORECASE)


def shown_in_the_us(folder):
    """Every text that a reader in the US sees: findings and packs of all designs and blanks, questions, names of fields and what their boxes show."""
    for name in ALL:
        for one in graded(checks.findings(us(name)), "US"):
            yield from (getattr(one, text) for text in SAID)
        source = document(ALL[name].headed("region", "US"), datetime.date(2027, 2, 20), folder)
        yield from re.findall(r'"((?:[^"\\]|\\.)*)"', source)
        yield from re.sub(r'"((?:[^"\\]|\\.)*)"', '""', source).splitlines()
    for question in QUESTIONS:
        yield from (spoken(text, "US") for text in (question.title, question.asks, question.remedy, question.basis, *question.options))
    for fields in SECTIONS.values():
        for field in fields.values():
            yield from (spoken(text, "US") for text in (field.name, field.hint("US"), *getattr(field, "options", ())))


def test_no_word_of_the_uk_is_left_and_no_sentence_on_water_speaks_of_electricity(tmp_path):
    keys = {section.replace("_", " ") for section in SECTIONS} | {"programme.svg"}  # sections of the file, and a file's name
    texts = {re.sub(r"\(?\b[a-z_]+\.[a-z_]+\)?|\[[a-z_]+\]", "", text) for text in set(shown_in_the_us(tmp_path)) - keys}
    assert len(texts) > 2000 and not [text for text in texts if LEFT_OVER.search(text)]
    sentences = [sentence for text in texts for sentence in re.split(r"[.;,:] ", text)]
    of_water = [sentence for sentence in sentences if OF_WATER.search(sentence)]
    assert any("Potable-water top-up cannot siphon back" in sentence for sentence in of_water)
    assert not [sentence for sentence in of_water if ELECTRIC.search(sentence)]
    assert any("Line-voltage electricity near water is work for a licensed electrician" in sentence for sentence in sentences), "electricity stays"
    leakage = [text for text in texts if "leakage" in text]
    assert leakage and all("ground leakage" in text.lower() for text in leakage)
    assert not [
        text for text in texts if re.search(r"\d\.\d+ (in|ft) \(\d+(\.\d+)? mm\).*\b(within|layers|flat)\b|\b(within|layers of|flat) \d?\.\d+ (in|ft)", text)
    ]


def test_fields_of_drilled_stones_name_the_stone_that_is_drilled():
    for key in ("diameters", "heights", "branch_bore", "hole", "density", "stand_on"):
        assert "drilled stone" in SECTIONS["stones"][key].name
    titles = {check.title for check in checks.CHECKS if check.kinds == ("drilled stones",)}
    assert {"Overturning of a drilled stone", "Wind on a tall drilled stone"} <= titles
    assert worded("stone base, top of the highest stone, stone top", "US") == "base of the drilled stones, top of the highest drilled stone, stone top"
