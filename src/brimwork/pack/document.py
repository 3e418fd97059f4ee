"""The design pack: summary, drawings, findings with their workings, quantities, and what everything was assumed on; one PDF."""

from __future__ import annotations

import datetime
import tempfile
from pathlib import Path

from brimwork.design.follows.chain import Chain
from brimwork.design.follows.features import chain_of
from brimwork.design.judged import checks
from brimwork.design.judged.findings import graded, keyless
from brimwork.design.typed.design import Design
from brimwork.drawing import svg
from brimwork.drawing.design import drawings
from brimwork.drawing.lettering import METRIC, US
from brimwork.drawing.records import Sheet
from brimwork.drawing.sizes import WIDTH
from brimwork.edition import __version__
from brimwork.needing import needed
from brimwork.pack import buying, markup, results
from brimwork.pack.electrician import electrician
from brimwork.pack.letters import font_folders_for, foreign_letters, letters_named, letters_without_font
from brimwork.pack.markup import typst_table, typst_words
from brimwork.pack.own import write_own
from brimwork.pack.rests import rests
from brimwork.pack.site import site
from brimwork.units import InputError


def write_pack(design: Design, path: Path, day: datetime.date | None = None, replace: bool = False) -> None:
    """Write the pack of `design` as a tagged PDF; the same design and day give the same bytes.

    A file that is there and that the kit did not write as it is now is replaced only with `replace`. Raises InputError when it cannot be written.
    """
    with needed("typst", "printing a pack"):
        import typst

    day = day or datetime.date.today()
    moment = datetime.datetime(day.year, day.month, day.day, tzinfo=datetime.UTC)
    try:
        with tempfile.TemporaryDirectory() as folder:
            source = Path(folder, "pack.typ")
            source.write_text(document(design, day, Path(folder)), encoding="utf-8")
            fonts = font_folders_for(foreign_letters(design), Path(folder))
            pdf: bytes = typst.compile(str(source), font_paths=fonts, ignore_system_fonts=True, pdf_standards=["ua-1"], timestamp=moment)
    except OSError as error:
        raise InputError(f"nothing can be printed ({error.strerror}): make room in the folder for temporary files, {tempfile.gettempdir()}") from None
    write_own(path, pdf, "name another file with --to, or replace it with --replace", replace)


def document(design: Design, day: datetime.date, folder: Path) -> str:
    """The Typst source of the pack; its drawings are written into `folder`."""
    chain = chain_of(design)
    found = [keyless(finding) for finding in graded(checks.findings(chain), design.region)]
    parts = [
        markup.head(
            f"{design.title}: design pack",
            design.region,
            f"{design.title}, {design.kind}. Draft of {day.isoformat()}, Brimwork {__version__}. Worked out, not approved.",
        ),
        results.summary_printed(chain, found, day),
        *([typst_words(letters_named(lacking))] if (lacking := letters_without_font(foreign_letters(design))) else []),
        _drawings(chain, folder),
        buying.shopping(chain),
        buying.cost(chain),
        site(chain, day, folder),
        electrician(design),
        results.findings_printed(chain, found),
        rests(design),
    ]
    return "\n".join(parts)


def _drawings(chain: Chain, folder: Path) -> str:
    parts = [
        "#pagebreak()\n== Drawings\nPrinted without fitting to the page, each drawing has the scale that it names. Take sizes from the figures, not with a rule."
    ]
    for number, (name, sheet) in enumerate(drawings(chain)):
        if isinstance(sheet, Sheet):
            file = f"drawing{number}.svg"
            (folder / file).write_text(svg.write_svg(sheet, f"d{number}", scale_to_page=False), encoding="utf-8")
            parts.append(markup.drawing(file, sheet.alt, sheet.description, min(sheet.width, WIDTH)))
        else:
            parts.append(typst_words(f"The {name} is not shown: {sheet}."))
    ways = [METRIC, US] if chain.design.region == "UK" else [US, METRIC]
    rows = [(ways[0].worded(level.name), *(way.level(level.height) for way in ways), level.kind, "") for level in reversed(chain.levels_listed())]
    head = ("level", *(way.named for way in ways), "kind", "as built")
    datum = "=== Level datum table, to the finished paving; inches to the nearest 1/8\n" + typst_table("1fr, auto, auto, auto, 28mm", head, rows)
    both = typst_words(chain.running_levels_said(ways[0].said))
    parts.insert(2, f"#block(breakable: false)[\n{datum}\n{both}\n]")  # after the plan, where a page has room
    return "\n\n".join(parts)
