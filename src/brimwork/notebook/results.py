"""What a design comes to, as a workbook shows it: graded findings with their workings, and drawings with their numbers."""

from __future__ import annotations

from brimwork import typeset
from brimwork.design.follows.chain import AT_COMING, COMING, Chain, Found
from brimwork.design.judged import checks
from brimwork.design.judged.findings import FINDING_GRADES, Finding, grade_said, graded, keyless, next_words, tally
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.wording import worded
from brimwork.drawing import image
from brimwork.drawing.design import drawings
from brimwork.drawing.records import Sheet
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook.form import ALERT
from brimwork.notebook.pages import Shown
from brimwork.shown import Markup, attribute, escape
from brimwork.units import InputError

MARKS = {"fail": ("✗", ALERT), "marginal": ("!", "inherit"), "not shown": ("?", "inherit"), "pass": ("✓", "inherit"), "does not apply": ("–", "inherit")}
NEW_LINE = "\n"


def found_in(chain: Chain) -> list[Finding]:
    """All findings, in the words of the design's region."""
    return graded(checks.findings(chain), chain.design.region)


def findings_shown(chain: Chain, found: list[Finding]) -> Shown:
    """All findings, fails first, each with its working folded behind it."""
    counts, found = tally(found), [keyless(finding) for finding in found]
    rows = "".join(_graded_html(chain, grade, [finding for finding in found if finding.grade == grade]) for grade in FINDING_GRADES)
    following = worded(next_words(found), chain.design.region)
    html = Markup(
        "<section style='max-width:760px'><h2>Findings</h2>"
        f"<p aria-live='polite'>{escape(counts)}. Nothing here is approval: local codes and licensed practice come first.</p>"
        f"{f'<p>{escape(following)}</p>' if following else ''}{rows}</section>"
    )
    plain = "\n".join(
        [f"Findings: {counts}", *([following] if following else []), *(f"{grade_said(finding)}: {finding.title}: {finding.value}" for finding in found)]
    )
    return Shown(html, plain)


def _graded_html(chain: Chain, grade: str, found: list[Finding]) -> Markup:
    """Fails and marginals in the open; the others folded, for nobody reads seventy lines."""
    rows = "".join(_finding_html(chain, finding) for finding in found)
    if grade in ("fail", "marginal") or not found:
        return Markup(rows)
    mark, colour = MARKS[grade]
    return Markup(
        f"<details data-name='{attribute(grade)}'><summary><strong style='color:{attribute(colour)}'>{escape(mark)} {escape(tally(found))}</strong></summary>"
        f"<div style='margin-left:1.5em'>{rows}</div></details>"
    )


def _finding_html(chain: Chain, finding: Finding) -> Markup:
    mark, colour = MARKS[finding.grade]
    body = [f"<p>Basis: {escape(finding.basis)}.</p>"]
    body += [f"<p>{escape(_sentence(finding.note))}</p>"] if finding.note else []
    body += [f"<p><strong>What to change:</strong> {escape(finding.remedy.removeprefix('change '))}.</p>"] if finding.remedy else []
    lines = [line for name in finding.results for line in working_lines(chain, name)]
    body += [f"<pre style='white-space:pre-wrap'>{NEW_LINE.join(escape(line) for line in lines)}</pre>"] if lines else []
    limit = f" <small>({escape(finding.limit)})</small>" if finding.limit else ""
    return Markup(
        f"<details data-name='{attribute(finding.id)}'><summary><strong style='color:{attribute(colour)}'>{escape(mark)} {escape(grade_said(finding))}</strong> "
        f"{escape(finding.title)}: {escape(finding.value)}{limit}</summary><div style='margin-left:1.5em'>{''.join(body)}</div></details>"
    )


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:].rstrip('.')}."


def working_lines(chain: Chain, name: str) -> list[str]:
    """The working of a result of the chain, line by line; nothing where it cannot be worked out."""
    try:
        worked = chain.working(name)
    except (Unknown, InputError):
        return []
    when = f"{AT_COMING}, " if name.startswith(COMING) else ""
    if isinstance(worked, Found):
        row = QUANTITIES[worked.letter]
        return [worded(f"{when}{row.short_name}: {row.both(worked.result)}, {worked.how}", chain.design.region)]
    name = worded(f"{when}{worked.formula.name}", chain.design.region)
    return [f"{name}: {worked.formula.quantity.both(worked.result)}", *(f"    {line}" for line in typeset.working(worked, typeset.PLAIN)[:-1])]


def _numbers(name: str, sheet: Sheet) -> Markup:
    """The table of a drawing's numbers, folded."""
    head = "".join(f"<th scope='col'>{escape(column)}</th>" for column in sheet.columns)
    rows = "".join("<tr>" + "".join(f"<td>{escape(cell)}</td>" for cell in row) + "</tr>" for row in sheet.rows)
    return Markup(f"<details><summary>Numbers of the {escape(name)}</summary><table><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table></details>")


def drawings_shown(chain: Chain) -> Shown:
    """The drawings with their descriptions, or what each still needs."""
    html, plain = [], []
    for name, sheet in drawings(chain):
        if isinstance(sheet, Sheet):
            caption = f"<figcaption>{escape(sheet.description)}</figcaption>"
            html.append(f"<figure style='margin:0 0 1em;max-width:720px'>{image.element(sheet)}{caption}{_numbers(name, sheet)}</figure>")
            plain.append(sheet.alt)
        else:
            html.append(f"<p>The {escape(name)} is not shown: {escape(sheet)}.</p>")
            plain.append(f"The {name} is not shown: {sheet}.")
    return Shown(Markup("".join(html)), "\n".join(plain))
