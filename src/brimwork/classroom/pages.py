"""Pages of HTML that stand alone: no script, nothing asked from outside, everything that a learner typed shown as words. They print, and can be read aloud."""

from __future__ import annotations

from brimwork.classroom.classfile import SchoolClass
from brimwork.classroom.marking import AFTER_SHOWN, Marked, MarkedAnswer, Marks
from brimwork.classroom.numbers import Issued
from brimwork.classroom.questions import asked_text, key, worked_out
from brimwork.classroom.slips import SMALL, Note, Row
from brimwork.exercise.question import Question
from brimwork.shown import Markup, attribute, escape
from brimwork.units import write

_PLACED = "style='text-align:left;vertical-align:top'"  # where a page of the notebook has a style of its own
ECHO = 60  # characters of what was typed
POLICY = "default-src 'none'; img-src data:; style-src 'unsafe-inline'"
_STYLE = """:root { color-scheme: light; --ink: #22303a; --quiet: #55626c; --rule: #c5ccd1; --good: #1c5f3a; --look: #7a3d00; }
body { font: 16px/1.5 Georgia, "Times New Roman", serif; color: var(--ink); background: #fff; max-width: 46rem; margin: 2rem auto; padding: 0 1rem }
h1 { font-size: 1.6rem; margin: 0 0 .3rem } h2 { font-size: 1.15rem; margin: 1.8rem 0 .3rem; border-top: 1px solid var(--rule); padding-top: .8rem }
table { border-collapse: collapse; width: 100% } th, td { text-align: left; vertical-align: top; padding: .3rem .6rem .3rem 0; border-bottom: 1px solid var(--rule) }
code { font: .95em ui-monospace, Consolas, monospace; overflow-wrap: anywhere } .quiet { color: var(--quiet) } .good { color: var(--good) } .look { color: var(--look) }
.number { text-align: right; white-space: nowrap } ol.working { padding-left: 1.4rem; margin: .3rem 0 } section, tr { break-inside: avoid } .wide { overflow-x: auto }
body.wide { max-width: 80rem } a { color: #14507a } figure { margin: 0 } figcaption { font-size: 1.3rem }
.slide { min-height: 94vh; break-after: page; break-inside: avoid; border-top: 1px solid var(--rule); padding-top: .8rem } .slide svg { width: 100% !important; max-width: none !important; height: 74vh !important }
@media print { body { margin: 0; max-width: none; font-size: 11pt } @page { margin: 18mm } h2 { break-after: avoid } }"""
_HEADS = {
    "right": ("✓", "good", "Right"), AFTER_SHOWN: ("◐", "look", "Right, after the solution was shown"), "carried": ("◐", "look", "The way is right"),
}  # fmt: skip


def page(title: str, body: Markup, wide: bool = False) -> bytes:
    """A whole page around its body; its policy lets nothing run and nothing be fetched. A `wide` one takes the whole window."""
    return (
        f'<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n<meta http-equiv="Content-Security-Policy" content="{POLICY}">\n'
        f'<meta name="viewport" content="width=device-width, initial-scale=1">\n<title>{attribute(title)}</title>\n<style>{_STYLE}</style>\n</head>\n'
        f"<body{Markup(' class=wide') if wide else Markup('')}>\n<main>\n{body}\n</main>\n</body>\n</html>\n"
    ).encode()


def echo(text: str) -> Markup:
    """What a learner typed, as words of at most 60 characters."""
    shown = " ".join("".join(character if character.isprintable() else " " for character in text[:400]).split())
    cut = f"{shown[: ECHO - 1]}…" if len(shown) > ECHO else shown
    return Markup(f"<code>{escape(cut)}</code>") if cut else Markup("<em>nothing</em>")


# --- a learner's page ---------------------------------------------------------------------------------------------------------------


def feedback(group: SchoolClass, marked: Marked, issued: dict[str, Issued], mark: str) -> bytes:
    """One learner's page: points, each question with what was typed, what it was found to be, and the full working on own numbers."""
    head = Markup(f"<h1>{escape(group.title)}</h1>\n<p>Learner {escape(marked.learner)}, set {escape(mark)}.</p>\n{_total(group, marked)}")
    parts = [_answer(place, one, issued[code]) for place, (code, one) in enumerate(marked.marks.items(), start=1)]
    parts += [_design(name, told) for name, told in marked.designs]
    receipt = f" Receipt as handed in: {marked.receipt}." if marked.receipt else ""
    foot = f"Marked from {marked.source or 'nothing handed in'}.{receipt} If a mark looks wrong to you, ask: every mark can be explained from your own file."
    return page(f"{group.title}: {marked.learner}", Markup("\n".join([head, *parts, Markup(f"<p class='quiet'>{escape(foot)}</p>")])))


def _total(group: SchoolClass, marked: Marked) -> Markup:
    if not marked.source:
        return Markup(
            "<p><strong>Nothing from you was there to mark.</strong> If you handed something in, tell your instructor: a file may have been damaged on the way.</p>"
        )
    return Markup(f"<p><strong>{marked.points:g} of {group.points:g} points.</strong></p>")


def _answer(place: int, mark: MarkedAnswer, issued: Issued) -> Markup:
    question = issued.posed
    first, *rest = asked_text(question)
    listed = Markup(f"<p>{Markup('<br>').join(escape(line) for line in rest)}</p>") if rest else Markup("")
    sign, look, head = _HEADS.get(mark.found, ("–", "quiet", "No answer") if mark.told is None else ("?", "look", "Not right yet"))
    way = Markup(f" On the way: {echo(mark.way)}.") if mark.way.strip() else Markup("")
    tries = f" Answers: {mark.tries}." if mark.tries else ""
    typed = Markup(f"<p>Your answer: {echo(_chosen(question, mark.said))}.{way}{escape(tries)}</p>") if mark.told else Markup("")
    told = Markup(f"<p>{escape(mark.told.text)}</p>") if mark.told else Markup("")
    because = f" ({mark.why.partition(': ')[0]})" if 0 < mark.points < mark.of else ""
    lines = Markup("").join(Markup(f"<li>{escape(line)}</li>") for line in (*_way(issued), *worked_out(question)))
    return Markup(
        f"<section>\n<h2>{place}. <span class='{attribute(look)}'>{escape(sign)} {escape(head)}</span>, {mark.points:g} of {mark.of:g}{escape(because)}</h2>\n"
        f"<p>{escape(first)} <span class='quiet'>({escape(mark.code)})</span></p>{listed}\n{typed}\n{told}\n"
        f"<p>The working on your numbers:</p>\n<ol class='working'>{lines}</ol>\n<p>So the answer is <strong>{escape(key(question))}</strong>.</p>\n</section>"
    )


def _way(issued: Issued) -> list[str]:
    middle = getattr(issued.posed, "middle", None)
    return [f"On the way: {middle.name} = {write(middle.number, middle.unit, 4)}"] if middle and issued.asked.way else []


def _chosen(question: object, said: str) -> str:
    options = getattr(question, "options", ())
    if isinstance(question, Question) or not options:
        return said
    return options[int(said) - 1] if said.isascii() and said.isdigit() and len(said) < 3 and 0 < int(said) <= len(options) else said


def _design(name: str, told: dict) -> Markup:
    """What became of a design, with rows for a person to fill in."""
    if told.get("reason"):
        return Markup(f"<section><h2>Design {echo(name)}</h2><p>It could not be marked: {escape(told['reason'])}.</p></section>")
    rows = Markup("").join(
        Markup(
            f"<tr><th scope='row'>{escape(row['what'])}</th><td>{escape(row['wanted'])}</td><td>{escape(row['found'])}</td><td>{escape(row['mark'])}</td></tr>"
        )
        for row in told["rows"]
    )
    rubric = Markup("").join(Markup(f"<tr><th scope='row'>{escape(row)}</th><td>&nbsp;</td><td>&nbsp;</td></tr>") for row in told["rubric"])
    judged = (
        Markup(
            f"<p>What a person judges:</p><table><thead><tr><th scope='col'>what</th><th scope='col'>points</th><th scope='col'>words</th></tr></thead><tbody>{rubric}</tbody></table>"
        )
        if rubric
        else Markup("")
    )
    return Markup(
        f"<section><h2>Design {echo(name)}: {float(told['points']):g} of {float(told['of']):g}</h2><div class='wide'><table><thead><tr><th scope='col'>what</th><th scope='col'>wanted</th>"
        f"<th scope='col'>found</th><th scope='col'></th></tr></thead><tbody>{rows}</tbody></table></div>{judged}</section>"
    )


# --- the class's page ---------------------------------------------------------------------------------------------------------------


def slips_table_page(rows: list[Row]) -> Markup:
    """Question by slip, small counts hidden."""
    body = Markup("").join(
        Markup(
            f"<tr><th scope='row' {_PLACED}>{escape(row.question)}</th><td {_PLACED}>{escape(row.what)}</td><td class='number'>{escape(row.shown)}</td></tr>"
        )
        for row in rows
    )
    heads = Markup(
        "<th scope='col' style='text-align:left'>question</th><th scope='col' style='text-align:left'>what became of it</th><th scope='col' class='number'>learners</th>"
    )
    return Markup(f"<div class='wide'><table><thead><tr>{heads}</tr></thead><tbody>{body}</tbody></table></div>")


def taught(notes: list[Note], learners: int) -> Markup:
    """The five-minute notes."""
    each = (
        Markup(
            f"<section><h2>Five minutes on {escape(note.question)}: {escape(note.count)} of {escape(learners)}</h2><table><tbody>{_minutes(note)}</tbody></table></section>"
        )
        for note in notes
    )
    return Markup(Markup("").join(each))


def _minutes(note: Note) -> Markup:
    rows = (
        Markup(f"<tr><th scope='row' class='number' {_PLACED}>{escape(minutes)}</th><td {_PLACED}>{escape(line)}</td></tr>") for minutes, line in note.lines
    )
    return Markup(Markup("").join(rows))


def class_page(marks: Marks, rows: list[Row], notes: list[Note]) -> bytes:
    """The table of slips by question and the notes for teaching again. It names nobody."""
    handed, title = sum(bool(one.source) for one in marks.of.values()), f"{marks.group.title}: slips by question"
    said = f"{handed} of {len(marks.of)} handed in. Counts under {SMALL} are hidden, so that the table tells of nobody."
    return page(title, Markup(f"<h1>{escape(title)}</h1>\n<p>{escape(said)}</p>\n{slips_table_page(rows)}\n{taught(notes, len(marks.of))}"))
