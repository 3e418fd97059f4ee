"""The design pack: written whole, the same bytes for the same day, tagged, with failing safety checks on page one."""

import datetime
import re
from pathlib import Path

import pypdf
import pytest

from brimwork import cli
from brimwork.design.follows.features import chain_of
from brimwork.design.judged import checks
from brimwork.design.typed import file
from brimwork.pack import results, site
from brimwork.pack.document import document, write_pack

BOWL = Path(__file__).parents[1] / "workbooks" / "designs" / "library-bowl.toml"
DAY = datetime.date(2027, 2, 20)  # of the packs that `printed` prints too


@pytest.fixture(scope="module")
def pack(printed):
    return printed("library-bowl", "UK")


def text_of(page):
    return " ".join(page.extract_text().split())


def test_the_same_design_and_day_give_the_same_bytes(pack, tmp_path):
    write_pack(file.load_design(BOWL), tmp_path / "again.pdf", DAY)
    assert (tmp_path / "again.pdf").read_bytes() == pack.read_bytes()


def test_failing_safety_checks_and_cautions_stand_on_page_one(read):
    first, *_ = pages = read("library-bowl", "UK")
    for part in (
        "These checks of safety are outside their limits or not met",
        "Overturning of the empty vessel",
        "Open water a child can reach",
        "Draft of 2027-02-20",
        "qualified electrician",
        "Worked out, not approved",
    ):
        assert part in first
    for claim in ("child-proof", "is safe", "safe to use", "is approved"):
        assert claim not in " ".join(pages)


def test_the_pack_is_tagged_and_every_drawing_and_equation_has_a_description(pack):
    reader = pypdf.PdfReader(pack)
    assert reader.trailer["/Root"]["/MarkInfo"]["/Marked"].value
    waiting, without, described = [reader.trailer["/Root"]["/StructTreeRoot"]], [], 0
    while waiting:
        node = waiting.pop().get_object()
        if not isinstance(node, dict):
            continue
        if node.get("/S") in ("/Figure", "/Formula"):
            described += 1
            without += [node] if not node.get("/Alt") else []
        kids = node.get("/K", [])
        waiting += [kid for kid in (kids if isinstance(kids, list) else [kids]) if not isinstance(kid, int)]
    assert described > 20 and not without


def test_workings_quantities_and_inputs_are_printed(read):
    text = " ".join(read("library-bowl", "UK"))
    for part in (
        "Workings",
        "void-former blocks",
        "3.52 m x 3.12 m",
        "off a roll 4 m wide",
        "1572 x 1172 x 620 mm",
        "bearing pressure presumed for the soil",
        "common practice",
        "electrician's certificate",
        "predicted and measured",
        "42.2 L/min (11.2 US gal/min)",
    ):
        assert part in text


@pytest.mark.parametrize("region", ("UK", "US"))
def test_an_almost_empty_design_still_makes_a_pack_that_says_what_it_needs(tmp_path, region):
    design = file.parse_design(f'format = 1\nkind = "overflowing vessel"\ntitle = "Odd #*_$ ``\\\\ title"\nregion = "{region}"')
    write_pack(design, tmp_path / "bare.pdf", DAY)
    reader = pypdf.PdfReader(tmp_path / "bare.pdf")
    assert "needs" in text_of(reader.pages[0]) and "Odd #*_$" in text_of(reader.pages[0])
    assert round(float(reader.pages[0].mediabox.width)) == {"UK": 595, "US": 612}[region]


def test_the_command_writes_the_pack_and_says_how_the_checks_stand(tmp_path, capsys):
    assert cli.main(["pack", str(BOWL), "--to", str(tmp_path / "x.pdf"), "--date", "2026-05-31"]) == 1, "checks fail on purpose"
    # the boil, both ways of tipping and the open water, as the bowl was invented; and its slab, 50 mm past a joint of the blocks
    assert "5 outside limits or not met" in capsys.readouterr().out and (tmp_path / "x.pdf").stat().st_size > 10_000


def test_a_design_that_cannot_be_read_or_written_is_told(tmp_path, capsys):
    assert cli.main(["pack", str(tmp_path / "absent.toml")]) == 2
    assert cli.main(["pack", str(BOWL), "--to", str(tmp_path / "no" / "x.pdf")]) == 2
    errors = capsys.readouterr().err
    assert "absent.toml cannot be read" in errors and "cannot be written" in errors and "Traceback" not in errors


@pytest.mark.parametrize("name", ("school-columns", "terrace-blade"))
def test_every_kind_of_feature_makes_a_pack(read, name):
    pages = read(name, file.load_design(BOWL.with_stem(name)).region)
    text = " ".join(pages)
    assert "Does not apply to this kind of feature" in text and "Workings" in text and "void-former blocks" in text
    first = pages[0]
    assert {"school-columns": "Overturning of a drilled stone:", "terrace-blade": "Legionella:"}[name] in first, "its fail stands on page one"


def test_a_pack_is_never_written_over_a_design(tmp_path, capsys):
    mine = tmp_path / "mine.toml"
    mine.write_bytes(BOWL.read_bytes())
    assert cli.main(["pack", str(mine), "--to", str(mine)]) == 2
    assert mine.read_bytes() == BOWL.read_bytes() and "ends in .pdf" in capsys.readouterr().err


@pytest.mark.parametrize(("name", "region", "paper"), (("library-bowl", "UK", 210), ("school-columns", "US", 215.9)))
def test_drawings_are_printed_at_the_scale_that_they_name(tmp_path, name, region, paper):
    """As wide as their sheets, and no wider than the page between its margins of 18 mm: 210 - 36 = 174 mm of A4, more of Letter."""
    source = document(file.load_design(BOWL.with_stem(name)).headed("region", region), DAY, tmp_path)
    sheets = [(float(width), Path(tmp_path, file).read_text()) for file, width in re.findall(r'image\("(drawing\d+\.svg)", width: ([\d.]+)mm', source)]
    scaled = [width for width, text in sheets if "scale bar" in text]
    assert len(scaled) == 2 and all(f'width="{width:g}mm"' in text for width, text in sheets if "scale bar" in text)
    assert "margin: (x: 18mm" in source and all(width <= paper - 36 for width, _ in sheets)


def test_levels_of_a_us_design_stand_in_inches_first(tmp_path):
    """By hand: 18 + 2.5 in of blocks and cover put the floor at -20 1/2 in; 20.5 x 25.4 = 520.7 mm."""
    source = document(file.load_design(BOWL.with_stem("school-columns")), DAY, tmp_path)
    assert re.search(r'reservoir floor"\], \[#"-20 1/2"\], \[#"-521"\]', source) and source.index('"inches"') < source.index('"mm"')


def test_page_one_stops_for_digging_and_lifting_but_not_for_money():
    wet = (
        file.load_design(BOWL)
        .having("site.pit_sides", "wet or running soil, or nobody competent")
        .having("site.base_estimate", "9000 cur")
        .having("site.budget", "100 cur")
    )
    found = checks.findings(chain_of(wet))
    assert {"C32", "C56"} <= {finding.id for finding in found if finding.grade == "fail"}
    page = results.summary_printed(chain_of(wet), found, DAY)
    stop = page[page.index("Stop.") : page.index("== Key numbers")]
    assert "Depth of the pit" in stop and "Budget" not in stop
    assert "To find out next" in page


def test_the_fall_that_counts_as_tight_is_the_one_of_its_check():
    """2 mm in a day, common practice; a design may set its own."""
    leak = [name for _, name in site.MEASURES].index("leak")
    bowl = file.load_design(BOWL)

    def predicted(design):
        return site._predicted(chain_of(design), site.MEASURES[leak][1])

    assert predicted(bowl) == "2 mm at most"
    assert predicted(bowl.headed("region", "US")) == "1/16 in (2 mm) at most"  # 2 / 25.4 = 0.079 in, to the tighter side
    assert predicted(bowl.having("limits.C72", "up to 1 mm/day; up to 3 mm/day")) == "1 mm at most"
    assert predicted(bowl.having("limits.C72", "from 1 mm/day; from 0 mm/day")) == "no limit set"
