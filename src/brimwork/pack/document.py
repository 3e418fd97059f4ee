"""The design pack: summary, drawings, findings with their workings, quantities, and what everything was assumed on; one PDF."""

from __future__ import annotations

import datetime
import tempfile
from importlib.util import find_spec
from pathlib import Path

from brimwork import __version__, units
from brimwork.design import checks, levels
from brimwork.design.chain import Chain, Found
from brimwork.design.checks import Finding
from brimwork.design.features import NUMBERS, chain_of
from brimwork.design.fields import Bounds, sections
from brimwork.design.inputs import Design, Unknown
from brimwork.drawing import svg
from brimwork.drawing.design import drawings
from brimwork.drawing.records import Sheet
from brimwork.files import write_whole
from brimwork.formula import Working
from brimwork.nomenclature import QUANTITIES
from brimwork.pack import buying, markup
from brimwork.pack.markup import table, words
from brimwork.units import InputError

MARKS = {"fail": "✗ fail", "marginal": "! marginal", "not shown": "? not shown", "pass": "✓ pass", "does not apply": "– does not apply"}
GRADED = ("fail", "marginal", "pass")
SAFETY = ("people", "supply", "loads")  # groups whose fails stand on page one
CAUTIONS = (
    "Have services under the ground located before digging, and dig by hand near any mark.",
    "Keep spoil and feet 0.6 m back from the edge of the pit; nobody enters a pit whose sides nobody competent has looked at.",
    "Lift by a plan, with the masses on these pages; a crane needs a lifting plan by a competent person.",
    "Mains electricity near water is work for a licensed electrician, who tests and certifies it.",
    "Open water of any depth is a danger to small children. Drifting droplets can carry Legionella: have it assessed.",
    "Local codes and licensed practice come before anything printed here. This pack is worked out, not approved.",
)


def write_pack(design: Design, path: Path, day: datetime.date | None = None) -> None:
    """Write the pack of `design` as a tagged PDF; the same design and day give the same bytes. Raises InputError when it cannot be written."""
    import typst

    day = day or datetime.date.today()
    with tempfile.TemporaryDirectory() as folder:
        source = Path(folder, "pack.typ")
        source.write_text(document(design, day, Path(folder)), encoding="utf-8")
        moment = datetime.datetime(day.year, day.month, day.day, tzinfo=datetime.UTC)
        pdf = typst.compile(source, font_paths=_fonts(), ignore_system_fonts=True, pdf_standards=["ua-1"], timestamp=moment)
    try:
        if path.exists() and not path.read_bytes().startswith(b"%PDF"):
            raise InputError(f"{path} is there already and is not a PDF: name another file with --to")
        write_whole(path, pdf)
    except OSError as error:
        raise InputError(f"{path} cannot be written ({error.strerror}): name another file with --to") from None


def _fonts() -> list[str]:
    """Drawings are lettered in DejaVu Sans, which matplotlib carries; everything else comes with Typst."""
    found = find_spec("matplotlib")
    return [str(Path(place, "mpl-data", "fonts", "ttf")) for place in (found.submodule_search_locations or ())] if found else []


def document(design: Design, day: datetime.date, folder: Path) -> str:
    """The Typst source of the pack; its drawings are written into `folder`."""
    chain = chain_of(design)
    found = checks.findings(chain)
    parts = [
        markup.head(
            f"{design.title}: design pack",
            design.region,
            f"{design.title}, {design.kind}. Draft of {day.isoformat()}, Brimwork {__version__}. Worked out, not approved.",
        ),
        _summary(design, chain, found, day),
        _drawings(chain, folder),
        buying.shopping(chain),
        _findings(chain, found),
        _site(chain),
        _inputs(design),
    ]
    return "\n".join(parts)


def _summary(design: Design, chain: Chain, found: list[Finding], day: datetime.date) -> str:
    counts = {grade: sum(finding.grade == grade for finding in found) for grade in checks.GRADES}
    said = ", ".join(f"{count} {grade}" for grade, count in counts.items() if count)
    dangers = [finding for finding in found if finding.grade == "fail" and finding.group in SAFETY]
    parts = [
        f"= {words(design.title)}",
        words(design.note),
        f"#parbreak()\nStatus: *draft* of {day.isoformat()}, {words(design.kind)}, {words(design.region)}. Checks: *{words(said)}*.",
    ]
    if dangers:
        rows = "\n".join(f"- *{words(finding.title)}:* {words(finding.value)}. {words(_sentence(finding.remedy))}" for finding in dangers)
        parts.append(f'#block(stroke: 1.2pt + rgb("#C94F12"), inset: 8pt, width: 100%)[*Stop. These checks of safety fail:*\n{rows}\n]')
    parts.append(
        "== Key numbers\n" + table("1fr, auto, auto", ("quantity", "metric", "US customary"), [_row(chain, name) for name in NUMBERS if name in chain.names()])
    )
    parts.append("== Before anyone digs, lifts or wires\n" + "\n".join(f"- {words(caution)}" for caution in CAUTIONS))
    return "\n\n".join(parts)


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:] + "." if text else ""


def _row(chain: Chain, name: str) -> tuple[str, str, str]:
    title = NUMBERS[name]
    try:
        worked = chain.working(name)
    except Unknown as missing:
        return title, f"needs {checks.asked(missing)}", ""
    except InputError as refused:
        return title, str(refused), ""
    row = QUANTITIES[worked.letter if isinstance(worked, Found) else worked.formula.result]
    return title, row.metric_text(worked.result), row.us_text(worked.result)


def _drawings(chain: Chain, folder: Path) -> str:
    parts = ["#pagebreak()\n== Drawings"]
    for number, (name, sheet) in enumerate(drawings(chain)):
        if isinstance(sheet, Sheet):
            file = f"drawing{number}.svg"
            (folder / file).write_text(svg.write(sheet, f"d{number}", scale_to_page=False), encoding="utf-8")
            parts.append(markup.drawing(file, sheet.description) + f"\n{words(sheet.description)}")
        else:
            parts.append(words(f"The {name} is not shown: {sheet}."))
    rows = [
        (level.name, f"{level.height * 1e3:+.0f} mm", f"{units.write(level.height, 'in')}", "water" if level.water else "built", "")
        for level in reversed(levels.levels(chain.design))
    ]
    datum = "=== Level datum table, to the finished paving\n" + table("1fr, auto, auto, auto, 28mm", ("level", "metric", "US", "kind", "as built"), rows)
    parts.append(f"#block(breakable: false)[\n{datum}\n]")
    return "\n\n".join(parts)


def _findings(chain: Chain, found: list[Finding]) -> str:
    rows = [(finding.id, finding.title, MARKS[finding.grade], finding.value, finding.limit) for finding in found if finding.grade in GRADED]
    parts = [
        "#pagebreak()\n== Findings\nFails first. A value that nobody has given is not shown; it never passes.",
        table("auto, 3fr, auto, 3fr, 3fr", ("", "check", "grade", "value", "limit"), rows),
    ]
    for grade, said in (("not shown", "Not shown, because something is not known yet"), ("does not apply", "Does not apply to this kind of feature")):
        rest = [(finding.id, finding.title, finding.value) for finding in found if finding.grade == grade]
        parts += [f"=== {said}\n" + table("auto, 1fr, 1.4fr", ("", "check", "because"), rest)] if rest else []
    parts.append("== Workings\nEvery number of a check, with the numbers put in. Units are SI in the working.")
    shown: set[str] = set()
    parts += [_working_of(chain, finding, shown) for finding in found if finding.grade in GRADED]
    return "\n\n".join(parts)


def _working_of(chain: Chain, finding: Finding, shown: set[str]) -> str:
    limit = f"; {finding.limit}" if finding.limit else ""
    lines = [f"=== {words(f'{finding.id} {finding.title}: {MARKS[finding.grade]}')}", words(f"Value: {finding.value}{limit}. Basis: {finding.basis}.")]
    if finding.note:
        lines.append(words(_sentence(finding.note.rstrip("."))))
    if finding.remedy:
        lines.append(words(f"What to change: {finding.remedy}."))
    for name in finding.results:
        try:
            worked = chain.working(name)
        except (Unknown, InputError):
            continue
        lines.append(_one_working(worked, name in shown))
        shown.add(name)
    return "\n\n".join(lines)


def _one_working(worked: Working | Found, again: bool) -> str:
    if isinstance(worked, Found):
        row = QUANTITIES[worked.letter]
        return f"{words(_sentence(row.short_name)[:-1])}: {words(row.both(worked.result))}, {words(worked.how)}."
    row = worked.formula.quantity
    title = f"{words(_sentence(worked.formula.name)[:-1])}: {words(row.both(worked.result))}"
    if again:
        return f"{title}, worked above."
    notes = "".join(f"\n\n{words('Note: ' + note + '.')}" for note in worked.notes)
    return f"#block(breakable: false)[{title}\n{markup.working(worked)}{notes}]"


HOLD_POINTS = (
    ("H1", "services located and marked; permissions and insurance in hand"),
    ("H2", "formation seen: depth, soil, no loose over-dig"),
    ("H3", "duct and draw cord seen before backfilling"),
    ("H4", "liner holds water 24 to 48 hours against a control bucket"),
    ("H5", "electrician's certificate: residual-current protection and earth tested"),
    ("H6", "rim levelled again after 7 days full"),
    ("H7", "client shown how to switch off, find the lid, top up and clean"),
)
MEASURES = (
    ("flow by bucket at the outlet, mean of three", "duty_flow"), ("drop of the level when the pump starts", "start_drop"), ("current of the running pump", "current"),
    ("head over the rim or lip, level to half a millimetre", "edge"), ("fall of the level in a day, pump off, less the control bucket", "leak"),
)  # fmt: skip


def _site(chain: Chain) -> str:
    """Hold points to sign, and what to measure when it first runs, predicted beside a blank."""
    holds = [(name, what, "") for name, what in HOLD_POINTS]
    rows = [(what, _predicted(chain, name), "") for what, name in MEASURES]
    return "\n\n".join([
        "#pagebreak()\n== Hold points: work stops here until signed\n" + table("auto, 1fr, 52mm", ("", "what", "date and signature"), holds),
        "== When it first runs: predicted and measured\nWhat is measured goes into the design file under [measured], and grades the checks again.\n\n"
        + table("1fr, auto, 40mm", ("what", "predicted", "measured, date"), rows),
    ])  # fmt: skip


def _predicted(chain: Chain, name: str) -> str:
    if name == "leak":
        return "2 mm at most"
    try:
        if name == "edge":
            return QUANTITIES["H"].both(chain.edge_head) if chain.edge_head else "a film all round"
        worked = chain.working(name)
    except Unknown as missing:
        return f"needs {checks.asked(missing)}"
    except InputError as refused:
        return str(refused)
    return QUANTITIES[worked.letter if isinstance(worked, Found) else worked.formula.result].both(worked.result)


def _said(field, given, region: str) -> str:
    if given is None:
        return "not given"
    return str(given.text) if isinstance(field, Bounds) else field.write(given.value, region)


def _inputs(design: Design) -> str:
    rows = []
    for section, fields in sections(design.kind).items():
        for key, field in fields.items():
            given = design.values.get(f"{section}.{key}")
            if section in ("limits", "measured", "answers") and not given:
                continue  # nothing to rest on
            rows.append((section.replace("_", " "), field.name, _said(field, given, design.region), given.basis if given else ""))
    return "#pagebreak()\n== What this design rests on\n\n" + table("auto, 1.5fr, 1fr, auto", ("part", "what", "value", "basis"), rows)
