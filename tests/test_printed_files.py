"""A printed file is replaced only if the kit wrote it and nobody changed it since; titles print in whatever script there is a font for."""

import datetime
import os
from pathlib import Path

import pypdf
import pytest

from brimwork.cli import main
from brimwork.design.typed.file import load_design
from brimwork.pack import letters
from brimwork.pack.document import document, write_pack
from brimwork.pack.own import is_own, write_own
from brimwork.units import InputError

BOWL = Path(__file__).parents[1] / "workbooks" / "designs" / "quick-check.toml"
DAY = datetime.date(2026, 5, 31)
PDF = b"%PDF-1.7\n1 0 obj\n%%EOF"


def test_only_what_the_kit_wrote_and_nobody_changed_is_replaced(tmp_path):
    path = tmp_path / "x.pdf"
    write_own(path, PDF, "name another")
    write_own(path, PDF + b"2", "name another")
    assert is_own(path.read_bytes()) and path.read_bytes().startswith(PDF + b"2")
    for theirs in (PDF, path.read_bytes() + b"a note of mine", path.read_bytes().replace(b"obj", b"OBJ"), b"words", b"%PDF"):
        path.write_bytes(theirs)
        with pytest.raises(InputError, match="name another"):
            write_own(path, PDF, "name another")
        assert path.read_bytes() == theirs
    with pytest.raises(InputError):
        path.write_bytes(b"words")
        write_own(path, PDF, "name another", replace=True)
    path.write_bytes(PDF)
    write_own(path, PDF, "name another", replace=True)
    assert is_own(path.read_bytes())


def test_the_command_replaces_its_own_pack_and_asks_before_another(tmp_path, capsys):
    to = tmp_path / "pack.pdf"
    line = ["pack", str(BOWL), "--to", str(to), "--date", "2026-05-31"]
    assert main(line) in (0, 1) and main(line) in (0, 1)
    assert len(pypdf.PdfReader(to).pages) > 3
    to.write_bytes(PDF)
    assert main(line) == 2 and to.read_bytes() == PDF and "--replace" in capsys.readouterr().err
    assert main([*line, "--replace"]) in (0, 1) and is_own(to.read_bytes())


def test_a_full_disk_for_temporary_files_is_a_plain_line(tmp_path, monkeypatch, capsys):
    def full(*_, **__):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("brimwork.pack.document.tempfile.TemporaryDirectory", full)
    assert main(["pack", str(BOWL), "--to", str(tmp_path / "x.pdf")]) == 2
    assert "No space left on device" in capsys.readouterr().err and not os.listdir(tmp_path)


@pytest.mark.parametrize("title", ["Schüssel", "Чаша", "Κύπελλο", "נביעה", "نافورة", "Աղբյուր"])
def test_a_title_in_a_script_of_the_kits_fonts_prints(title, tmp_path):
    design = load_design(BOWL).headed("title", title)
    assert not letters.foreign_letters(design)
    write_pack(design, tmp_path / "x.pdf", DAY)
    fonts = {str(font.get_object()["/BaseFont"]) for page in pypdf.PdfReader(tmp_path / "x.pdf").pages for font in page["/Resources"]["/Font"].values()}
    assert not any("LastResort" in font for font in fonts), "every letter has a font"


def test_letters_that_no_font_has_are_named_on_the_page_and_by_the_command(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(letters, "_others", lambda: [])
    letters.letters_without_font.cache_clear(), letters._having.cache_clear()
    path = tmp_path / "garden.toml"
    path.write_text(BOWL.read_text(encoding="utf-8").replace('title = "', 'title = "水 '), encoding="utf-8")
    assert main(["pack", str(path)]) in (0, 1)
    assert "cjk unified ideograph-6c34 (U+6C34)" in capsys.readouterr().err
    said = "".join(page.extract_text() for page in pypdf.PdfReader(path.with_suffix(".pdf")).pages)
    assert "nofontofthismachinehastheseletters" in "".join(said.split()).lower()
    letters.letters_without_font.cache_clear(), letters._having.cache_clear()


def test_a_font_of_the_machine_that_has_the_letters_is_used(tmp_path, monkeypatch):
    from fontTools.fontBuilder import FontBuilder
    from fontTools.pens.ttGlyphPen import TTGlyphPen

    pen = TTGlyphPen(None)
    pen.moveTo((0, 0)), pen.lineTo((500, 0)), pen.lineTo((250, 700)), pen.closePath()
    made = FontBuilder(1000, isTTF=True)
    made.setupGlyphOrder([".notdef", "water"])
    made.setupCharacterMap({0x6C34: "water"})
    made.setupGlyf({".notdef": TTGlyphPen(None).glyph(), "water": pen.glyph()})
    made.setupHorizontalMetrics({".notdef": (500, 0), "water": (500, 0)})
    made.setupHorizontalHeader(ascent=800, descent=-200)
    made.setupNameTable({"familyName": "Invented", "styleName": "Regular", "psName": "Invented-Regular"})
    made.setupOS2(), made.setupPost()
    made.save(tmp_path / "invented.ttf")
    monkeypatch.setattr(letters, "_others", lambda: [str(tmp_path / "invented.ttf")])
    letters.letters_without_font.cache_clear(), letters._having.cache_clear()
    design = load_design(BOWL).headed("title", "水")
    write_pack(design, tmp_path / "x.pdf", DAY)
    fonts = {str(font.get_object()["/BaseFont"]) for page in pypdf.PdfReader(tmp_path / "x.pdf").pages for font in page["/Resources"]["/Font"].values()}
    assert any("Invented" in font for font in fonts) and not any("LastResort" in font for font in fonts)
    assert "U+6C34" not in document(design, DAY, tmp_path)
    letters.letters_without_font.cache_clear(), letters._having.cache_clear()
