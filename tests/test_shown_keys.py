"""What a drawing shows of a design can be touched to change it: the keys that its records carry are values of that kind of design, and the page finds them."""

import re
from pathlib import Path

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.typed.fields import sections
from brimwork.design.typed.file import load_design
from brimwork.drawing.plan import plan
from brimwork.drawing.records import Measure
from brimwork.drawing.section import section
from brimwork.drawing.svg import write_svg

DESIGNS = sorted((Path(__file__).parents[1] / "workbooks" / "designs").glob("*.toml"))


def records(sheet):
    return [record for view in sheet.views for record in view.records]


@pytest.mark.parametrize("draw", [section, plan])
@pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.stem)
def test_every_dimension_leads_to_a_value_of_its_kind_of_design(path, draw):
    design = load_design(path)
    places = {f"{section}.{name}" for section, fields in sections(design.kind).items() for name in fields}
    sheet = draw(chain_of(design))
    keys = {key for record in records(sheet) if (key := getattr(record, "key", ""))}
    assert len(keys) >= 8 and keys <= places, keys - places
    assert all(record.key for record in records(sheet) if isinstance(record, Measure) and record.value)


@pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.stem)
def test_only_a_linked_drawing_names_keys(path):
    sheet = section(chain_of(load_design(path)))
    linked = write_svg(sheet, linked=True)
    assert set(re.findall(r'data-key="([^"]+)"', linked)) == {key for record in records(sheet) if (key := getattr(record, "key", ""))}
    assert "data-key" not in write_svg(sheet)
    assert re.sub(r'</?g(?: data-key="[^"]+")?>|<rect [^>]*fill="transparent"/>', "", linked) == re.sub(r"</?g>", "", write_svg(sheet))


@pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.stem)
@pytest.mark.parametrize("draw", [section, plan])
def test_a_narrow_sheet_holds_the_same_drawing(path, draw):
    """Redrawn for a phone: a smaller scale, letters of the same size, nothing left out."""
    wide, narrow = (draw(chain_of(load_design(path)), width) for width in (174.0, 112.0))
    assert narrow.width == 112.0 and narrow.rows == wide.rows
    measured = [{(record.key, round(record.value, 6)) for record in records(sheet) if isinstance(record, Measure)} for sheet in (wide, narrow)]
    assert {one for one in measured[0] - measured[1] if one[0] != "stones.diameters"} == set(), "stones that stand close are numbered instead"
    for view in narrow.views:
        left, _, width, _ = view.frame
        assert left >= 0 and left + width <= 112.0 + 1e-6
