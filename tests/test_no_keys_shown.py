"""No key of the design file reaches a page, list, drawing or pack: whoever reads them sees boxes, and those have names."""

import datetime
import re
from pathlib import Path

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.typed import starting
from brimwork.design.typed.asking import keys_in, meant, without_keys
from brimwork.design.typed.design import blank_design
from brimwork.design.typed.fields import REGIONS, SECTIONS
from brimwork.design.typed.file import load_design
from brimwork.design.typed.kinds import KINDS
from brimwork.notebook import page_parts as parts
from brimwork.notebook.design_page import DesignPage
from brimwork.notebook.opened import OpenDesign
from brimwork.notebook.results import drawings_shown, findings_shown
from brimwork.notebook.shopping import buying
from brimwork.pack.document import document
from brimwork.pack.lists import lists

EXAMPLES = sorted((Path(__file__).parents[1] / "workbooks" / "designs").glob("*.toml"))
NAMES = {key for keys in SECTIONS.values() for key in keys if "_" in key}
_SECTION = re.compile(rf"\[(?:{'|'.join(SECTIONS)})\]|\b(?:{'|'.join(sorted(NAMES))})\b|basis = ")
_NOT_READ = {"key", "id", "name", "path", "mine", "state", "kind"}  # what the script of the page goes by


def read(shown) -> list[str]:
    """All that is read of what a page is told: markup of drawings by its words."""
    if isinstance(shown, dict):
        return [text for name, value in shown.items() if name not in _NOT_READ for text in read(value)]
    if isinstance(shown, list | tuple):
        return [text for value in shown for text in read(value)]
    return [re.sub(r"<[^>]*>", " ", shown)] if isinstance(shown, str) else []


def keys_among(texts) -> list[str]:
    return [text[:300] for text in texts if keys_in(text) or _SECTION.search(text)]


def designs():
    for region in REGIONS:
        for kind in KINDS:
            yield pytest.param(blank_design(kind, "Bare").headed("region", region), id=f"bare {kind} {region}")
            yield pytest.param(starting.started(kind, region), id=f"begun {kind} {region}")
    for path in EXAMPLES:
        yield pytest.param(load_design(path), id=path.stem)
    bowl = load_design(EXAMPLES[0].with_name("library-bowl.toml"))
    for key, text in (
        ("vessel.foot_outside", "900 mm"),
        ("vessel.foam", "400 L"),
        ("reservoir.running_level", "900 mm"),
        ("levels.block_top", "2 m"),
        ("pump.bay", "2 m"),
    ):
        yield pytest.param(bowl.having(key, text), id=f"{key} {text}")


@pytest.mark.parametrize("design", list(designs()))
def test_no_key_is_read_on_page_list_drawing_or_pack(design, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    opened, chain = OpenDesign.of(design, tmp_path / "one.toml"), chain_of(design)
    page = DesignPage(opened)
    texts = read(page._all())
    for name in (*parts.DRAWINGS, *(name for name in parts.TABLES if name != "compare")):
        texts += read(parts.view_part(opened, name, narrow=False))
    for finding in opened.found:
        texts += read(parts.why_part(opened, finding.id))
    for made in (findings_shown(chain, opened.found), drawings_shown(chain), buying(design)):
        texts += [*re.sub(r"<[^>]*>", "\n", made.html).split("\n"), *made.plain.split("\n")]
    texts += document(design, datetime.date(2026, 3, 2), tmp_path).replace("\\_", "_").split('"')
    texts += [line for made in lists(chain).values() for line in made.decode().split("\n")]
    page.close()
    assert keys_among(texts) == []


def test_a_key_in_a_sentence_becomes_the_name_of_its_value():
    said = "Raise reservoir.static_level, or look at pump.bay. www.example.org is no key"
    assert without_keys(said) == f"Raise “{meant('reservoir.static_level')}”, or look at “{meant('pump.bay')}”. www.example.org is no key"
    assert keys_in(said) == ("reservoir.static_level", "pump.bay")
    assert without_keys("see pump.power", lambda key: "Watts") == "see “Watts”"
