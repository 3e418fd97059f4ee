"""Pages of the pack about results: key numbers and cautions on page one, findings, and the working behind each."""

from __future__ import annotations

import datetime
import re

from brimwork.design.follows.chain import AT_COMING, COMING, Chain, Found
from brimwork.design.follows.features import NUMBERS
from brimwork.design.judged.findings import Finding, called, grade_said, next_words, tally
from brimwork.design.typed.asking import reason
from brimwork.design.typed.cautions import CAUTIONS_AT
from brimwork.design.typed.criteria import is_safety
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.wording import ROUNDED, measured, spoken, worded
from brimwork.formula import Working
from brimwork.nomenclature import QUANTITIES
from brimwork.pack import markup
from brimwork.pack.markup import typst_table, typst_words
from brimwork.quantity import days
from brimwork.units import InputError

_MARKS = {"fail": "✗", "marginal": "!", "not shown": "?", "pass": "✓", "does not apply": "–"}
GRADED = ("fail", "marginal", "pass")
LAST_CAUTION = "Local codes and licensed practice come before anything printed here. This pack is worked out, not approved."


def summary_printed(chain: Chain, found: list[Finding], day: datetime.date) -> str:
    """Page one: how the checks stand, failing checks of safety, key numbers, cautions."""
    design = chain.design
    parts = [
        f"= {typst_words(design.title)}",
        typst_words(design.note),
        f"#parbreak()\nStatus: *draft* of {day.isoformat()}, {typst_words(design.kind)}, {typst_words(design.region)}. Checks: *{typst_words(tally(found))}*.",
        *([_ours(chain, following)] if (following := next_words(found)) else []),
        *_dangers(chain, found),
        "== Key numbers\n" + _numbers(chain),
        "== Before anyone digs, lifts or wires\n#[#set text(8.2pt)\n#set par(leading: 0.42em)\n#set list(spacing: 0.42em)\n"
        + "\n".join(f"- {_ours(chain, caution)}" for caution in (*(one.words for one in CAUTIONS_AT), LAST_CAUTION))
        + "\n]",
    ]
    return "\n\n".join(parts)


def _ours(chain: Chain, text: str) -> str:
    """A sentence of ours in the words and units of the region."""
    region = chain.design.region
    return typst_words(measured(worded(text, region), region))


def _dangers(chain: Chain, found: list[Finding]) -> list[str]:
    """A box for the checks of safety that fail, one for those that are not shown yet, and the names of the other checks that fail: all that were counted."""
    safety = [finding for finding in found if is_safety(finding.id, finding.group)]
    dangers, unshown = ([finding for finding in safety if finding.grade == grade] for grade in ("fail", "not shown"))
    others = [finding for finding in found if finding.grade == "fail" and finding not in dangers]
    rows = "\n".join(
        f"- *{typst_words(called(finding))}:* {typst_words(finding.value)}. {typst_words(sentence(_on_paper(finding.remedy)))}" for finding in dangers
    )
    parts = (
        [f'#block(stroke: 1.2pt + rgb("#C94F12"), inset: 8pt, width: 100%)[*Stop. These checks of safety are outside their limits or not met:*\n{rows}\n]']
        if dangers
        else []
    )
    if unshown:
        names = "; ".join(_lower(finding.title) for finding in unshown)
        parts.append(
            f'#block(stroke: (dash: "dashed"), inset: 8pt, width: 100%)[*{len(unshown)} checks of safety are not shown yet, and nothing is known of them:* {typst_words(names)}.]'
        )
    if others:
        parts.append(f"Other checks outside their limits or not met: {typst_words('; '.join(_lower(called(finding)) for finding in others))}.")
    return parts


_SAY_SO = re.compile(r"[,;:](?: and| when it is done,)? say so\b")


def _on_paper(remedy: str) -> str:
    """What to change, without where on the page somebody says that it was done."""
    return _SAY_SO.split(remedy)[0]


def _lower(title: str) -> str:
    """A title within a sentence."""
    return title if title[1:2].isupper() else title[:1].lower() + title[1:]


def sentence(text: str) -> str:
    return text[:1].upper() + text[1:] + "." if text else ""


def _numbers(chain: Chain) -> str:
    systems = ("US customary", "metric") if chain.design.region == "US" else ("metric", "US customary")
    return typst_table("1fr, auto, auto", ("quantity", *systems), [_number(chain, name) for name in NUMBERS if name in chain.names()], size=8.5)


def _number(chain: Chain, name: str) -> tuple[str, str, str]:
    region = chain.design.region
    title = worded(NUMBERS[name], region)
    try:
        worked = chain.working(name)
    except (Unknown, InputError) as missing:
        return title, worded(reason(missing), region), ""
    row = QUANTITIES[worked.letter]
    metric, us = (days(text) for text in (row.metric_text(worked.result), row.us_text(worked.result)))
    return (title, us, metric) if region == "US" else (title, metric, us)


def findings_printed(chain: Chain, found: list[Finding]) -> str:
    """Every check with its grade, then the workings; the findings in the words of the region."""
    numbers = {id(finding): number for number, finding in enumerate(_in_print(found), start=1)}
    rows = [
        (str(numbers[id(finding)]), finding.title, f"{_MARKS[finding.grade]} {grade_said(finding)}", finding.value, finding.limit)
        for finding in found
        if finding.grade in GRADED
    ]
    rounded = f" {ROUNDED}" if chain.design.region == "US" else ""
    parts = [
        f"#pagebreak()\n== Findings\nWhat is outside a limit or not met comes first. A value that nobody has given is not shown, and never counts as within.{rounded}",
        typst_table("auto, 3fr, auto, 3fr, 3fr", ("", "check", "grade", "value", "limit"), rows),
    ]
    for grade, said in (("not shown", "Not shown, because something is not known yet"), ("does not apply", "Does not apply to this kind of feature")):
        rest = [(str(numbers[id(finding)]), finding.title, finding.value) for finding in found if finding.grade == grade]
        parts += [f"=== {said}\n" + typst_table("auto, 1fr, 1.4fr", ("", "check", "because"), rest)] if rest else []
    parts.append("== Workings\nEvery number of a check, with the numbers put in. Units are SI in the working.")
    shown: set[str] = set()
    parts += [_working_of(chain, finding, numbers[id(finding)], shown) for finding in found if finding.grade in GRADED]
    return "\n\n".join(parts)


def _code(finding: Finding) -> str:
    """The code of a check; none of a contradiction, whose values are named."""
    return "" if "." in finding.id else finding.id


def _in_print(found: list[Finding]) -> list[Finding]:
    """The findings in the order in which they are printed: graded ones, then what is not shown, then what does not apply."""
    return [one for grades in (GRADED, ("not shown",), ("does not apply",)) for one in found if one.grade in grades]


def _working_of(chain: Chain, finding: Finding, number: int, shown: set[str]) -> str:
    limit, region = f"; {finding.limit}" if finding.limit else "", chain.design.region
    title = f"{number} {finding.title}: {_MARKS[finding.grade]} {grade_said(finding)}"
    kept = f" On file: {code}." if (code := _code(finding)) else ""
    lines = [f"=== {typst_words(title)}", typst_words(f"Value: {finding.value}{limit}. Basis: {finding.basis}.{kept}")]
    if finding.note:
        lines.append(typst_words(sentence(finding.note.rstrip("."))))
    if finding.remedy:
        lines.append(typst_words(f"What to change: {finding.remedy.removeprefix('change ')}."))
    for name in finding.results:
        try:
            worked = chain.working(name)
        except (Unknown, InputError):
            continue
        lines.append(_one_working(worked, name in shown, region, f"{AT_COMING}, " if name.startswith(COMING) else ""))
        shown.add(name)
    return "\n\n".join(lines)


def _one_working(worked: Working | Found, again: bool, region: str, when: str) -> str:
    if isinstance(worked, Found):
        name = worded(f"{when}{QUANTITIES[worked.letter].short_name}", region)
        return (
            f"{typst_words(sentence(name)[:-1])}: {typst_words(markup.both(worked.letter, worked.result, region))}, {typst_words(spoken(worked.how, region))}."
        )
    title = (
        f"{typst_words(sentence(worded(when + worked.formula.name, region))[:-1])}: {typst_words(markup.both(worked.formula.result, worked.result, region))}"
    )
    if again:
        return f"{title}, worked above."
    notes = "".join(f"\n\n{typst_words(worded(f'Note: {note}.', region))}" for note in worked.notes)
    return f"#block(breakable: false)[{title}\n{markup.typst_working(worked)}{notes}]"
