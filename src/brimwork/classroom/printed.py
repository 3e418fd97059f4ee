"""What a class is printed: a sheet for each learner, the key with full workings, an overview. One source for sheet and key, on A4 or Letter."""

from __future__ import annotations

import datetime
import io
import tempfile
from importlib.util import find_spec
from pathlib import Path

from brimwork.classroom.classfile import Learner, SchoolClass
from brimwork.classroom.numbers import Issued, Sets
from brimwork.classroom.questions import asked_text, key, worked_out
from brimwork.drawing import svg
from brimwork.drawing.records import Sheet
from brimwork.exercise.question import Question, in_words
from brimwork.needing import needed
from brimwork.pack import markup
from brimwork.pack.markup import typst_words
from brimwork.units import write

CAUTION = "Where a question sends you outside: stay out of pits and away from deep water and live cables, and lift nothing heavy alone."
_RULE = "#v(5mm)\n#line(length: 100%, stroke: 0.4pt + luma(120))"


def compiled(source: str, folder: Path) -> bytes:
    """A tagged PDF of a Typst source whose pictures stand in `folder`; the same source gives the same bytes. Raises InputError without Typst."""
    with needed("typst", "printing"):
        import typst

    page = folder / "page.typ"
    page.write_text(source, encoding="utf-8")
    moment = datetime.datetime(2026, 1, 1, tzinfo=datetime.UTC)  # one moment for all: the same class gives the same bytes
    return typst.compile(str(page), font_paths=_fonts(), ignore_system_fonts=True, pdf_standards=["ua-1"], timestamp=moment)


def _fonts() -> list[str]:
    """Drawings are lettered in DejaVu Sans, which matplotlib carries; everything else comes with Typst."""
    found = find_spec("matplotlib")
    return [str(Path(place, "mpl-data", "fonts", "ttf")) for place in (found.submodule_search_locations or ())] if found else []


def code_of(title: str, learner: str, mark: str) -> str:
    """What the machine-readable mark of a sheet says."""
    return f"BRIMWORK 1;{learner};{mark};{title}"


def square(text: str) -> str:
    """A text as a QR code (ISO/IEC 18004), in SVG."""
    with needed("segno", "a mark that a machine reads"):
        import segno

    made = io.BytesIO()
    segno.make(text, error="m", micro=False).save(made, kind="svg", border=2, scale=4)
    return made.getvalue().decode()


# --- sheets -------------------------------------------------------------------------------------------------------------------------


def sheet(group: SchoolClass, learner: Learner, issued: dict[str, Issued], mark: str) -> bytes:
    """One learner's sheet as a PDF."""
    return sheets(group, [(learner, issued, mark)])


def sheets(group: SchoolClass, of: list[tuple[Learner, dict[str, Issued], str]]) -> bytes:
    """Sheets of several learners in one PDF, each beginning on a page of its own."""
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        foot = f"{group.title}. Brimwork; numbers are invented, and different for each learner."
        parts = [markup.head(group.title, group.region, foot), *(_one(group, *one, folder, number) for number, one in enumerate(of))]
        return compiled("\n#pagebreak(weak: true)\n".join([parts[0] + parts[1], *parts[2:]]), folder)


def _one(group: SchoolClass, learner: Learner, issued: dict[str, Issued], mark: str, folder: Path, number: int) -> str:
    code = f"mark{number}.svg"
    (folder / code).write_text(square(code_of(group.title, learner.code, mark)), encoding="utf-8")
    due = f"Due: {group.due}. " if group.due else ""
    named = f"{learner.name}, code {learner.code}" if learner.name else f"Code {learner.code}"
    of = f"Learner {learner.code}, set {mark}"
    lines = [
        f"#grid(columns: (1fr, 24mm), gutter: 4mm, [#heading(level: 1, {markup.typst_quoted(group.title)})\n*{typst_words(named)}* #h(1em) {typst_words(f'set {mark}')}\n\n"
        f"{typst_words(f'{due}{_counts(group)} Write each answer with its unit, and the working below it.')}],"
        f' image("{code}", width: 24mm, alt: {markup.typst_quoted(of)}))',
    ]
    for place, (name, one) in enumerate(issued.items(), start=1):
        lines.append(_question(place, name, one, folder, f"{number}-{place}"))
    return "\n\n".join([*lines, f"#v(4mm)\n#text(8.5pt)[{typst_words(CAUTION)}]"])


def _counts(group: SchoolClass) -> str:
    return f"{len(group.questions)} question{'s' * (len(group.questions) != 1)}, {group.points:g} points."


def _question(place: int, name: str, issued: Issued, folder: Path, number: str) -> str:
    question = issued.posed
    worth = f"{issued.asked.points:g} point{'s' * (issued.asked.points != 1)}"
    first, *rest = asked_text(question)
    parts = [
        f"#v(3mm)\n*{typst_words(f'{place}. ')}* {typst_words(first)} #text(8pt, fill: luma(90))[{typst_words(f'{name}, {worth}')}]",
        *map(typst_words, rest),
    ]
    parts += [_picture(drawn, folder, number)] if (drawn := getattr(question, "sheet", None)) else []
    parts += ["#v(14mm)" if isinstance(question, Question) else "#v(2mm)"]
    if middle := getattr(question, "middle", None):
        if issued.asked.way:
            asked_in = in_words(middle.unit) or "plain numbers"
            parts += [f"On the way: {typst_words(f'{middle.name}, in {asked_in}: ')} {_line('4cm')}"]
    parts += [f"*Answer:* {_line('6cm' if isinstance(question, Question) or hasattr(question, 'options') or hasattr(question, 'items') else '14cm')}"]
    return markup.together("\n\n".join(parts))


def _line(width: str) -> str:
    return f"#box(width: {width}, line(length: 100%, stroke: 0.5pt))"


def _picture(sheet: Sheet, folder: Path, number: str) -> str:
    file = f"q{number}.svg"
    (folder / file).write_text(svg.write_svg(sheet, f"d{number}", scale_to_page=False), encoding="utf-8")
    return markup.drawing(file, sheet.alt, sheet.description, min(sheet.width, 120))


# --- key and overview ---------------------------------------------------------------------------------------------------------------


def key_pages(group: SchoolClass, sets: Sets) -> bytes:
    """The key of all learners, each with the full working on their own numbers."""
    parts = [
        markup.head(f"{group.title}: key", group.region, f"{group.title}: key. For the instructor only."),
        f"= {typst_words(f'{group.title}: key')}",
        typst_words("For the instructor only: every learner's numbers, answers and full workings."),
    ]
    for learner in group.learners:
        parts.append(f"== {typst_words(f'{learner.code}  {learner.name}   set {sets.mark(group.title, learner.code)}')}")
        for place, (name, issued) in enumerate(sets.of[learner.code].items(), start=1):
            question = issued.posed
            rows = [f"*{typst_words(f'{place}. {name}: {key(question)}')}* #h(1em) {typst_words(_given(issued))}"]
            rows += [f"#text(8.5pt)[{typst_words(line)}]" for line in (*_on_the_way(issued), *worked_out(question))]
            parts.append(markup.together(" \\\n".join(rows)))
    with tempfile.TemporaryDirectory() as folder:
        return compiled("\n\n".join(parts), Path(folder))


def _given(issued: Issued) -> str:
    return ", ".join(f"{name} = {text}" for name, text in issued.numbers.items())


def _on_the_way(issued: Issued) -> list[str]:
    middle = getattr(issued.posed, "middle", None)
    return [f"On the way: {middle.name} = {write(middle.number, middle.unit, 4)}"] if middle and issued.asked.way else []


def overview(group: SchoolClass, sets: Sets, files: str) -> bytes:
    """One page for the instructor: who has which answers, and what to do next. A large class takes more pages."""
    head = ("code", "name", "set", *(f"{place}" for place in range(1, len(group.questions) + 1)))
    rows = [
        (learner.code, learner.name, sets.mark(group.title, learner.code), *(_short(issued) for issued in sets.of[learner.code].values()))
        for learner in group.learners
    ]
    legend = "; ".join(f"{place}: {asked.code}, {asked.points:g} points" for place, asked in enumerate(group.questions, start=1))
    small = 8 if len(group.questions) <= 6 and len(group.learners) <= 32 else 6.5
    said = {"at once": "each answer is told at once", "after": "silent until handed in, then all is told", "none": "silent"}[group.feedback]
    tries = "As many tries as wanted" if group.tries == 0 else f"{group.tries} tries"
    parts = [
        markup.head(f"{group.title}: overview", group.region, f"{group.title}: overview. For the instructor only."),
        f"= {typst_words(f'{group.title}: overview')}",
        typst_words(f"{len(group.learners)} learners, {_counts(group)} {tries}, {said}. {f'Due: {group.due}. ' if group.due else ''}Questions {legend}."),
        markup.typst_table(", ".join(["auto", "1fr", "auto", *["auto"] * len(group.questions)]), head, rows, small),
        typst_words(files),
    ]
    with tempfile.TemporaryDirectory() as folder:
        return compiled("\n\n".join(parts), Path(folder))


def _short(issued: Issued) -> str:
    return key(issued.posed)[:24]


# --- worksheets of a course ---------------------------------------------------------------------------------------------------------


def worksheet(title: str, region: str, issued: list[Issued], keyed: bool = False) -> bytes:
    """A sheet of questions to work with pencil and pocket calculator, or its key: the same questions with answers and workings."""
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        name = f"{title}: key" if keyed else title
        said = "Answers and workings." if keyed else "Name: ______________________   Work with pencil and pocket calculator; write the unit beside each number."
        parts = [markup.head(name, region, f"{name}. Brimwork; numbers are invented."), f"= {typst_words(name)}", typst_words(said)]
        for number, one in enumerate(issued, start=1):
            parts.append(_question(number, one.asked.code, one, folder, str(number)) if not keyed else _keyed(number, one))
        return compiled("\n\n".join([*parts, f"#v(4mm)\n#text(8.5pt)[{typst_words(CAUTION)}]"]), folder)


def _keyed(number: int, issued: Issued) -> str:
    question = issued.posed
    rows = [
        f"*{typst_words(f'{number}. {issued.asked.code}: {key(question)}')}*",
        *(f"#text(9pt)[{typst_words(line)}]" for line in (asked_text(question)[0], *worked_out(question))),
    ]
    return markup.together(" \\\n".join(rows))
