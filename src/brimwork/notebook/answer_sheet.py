"""A learner's answers on paper: one PDF, made from the answers file, with its receipt."""

from __future__ import annotations

import datetime
import re
import tempfile
from pathlib import Path

from brimwork.exercise import answers, bank, claims
from brimwork.exercise.choices import Choice
from brimwork.exercise.diagnosis import ONCE_SHOWN
from brimwork.needing import needed
from brimwork.pack import markup
from brimwork.pack.markup import typst_words
from brimwork.pack.own import write_own
from brimwork.units import InputError

_SAID = {
    "right": "right", ONCE_SHOWN: "right, once the solution was shown", claims.GUESSED: "right after others, no reason", "slip": "a known slip", "unit": "a slip of units", "way": "a wrong way", "rounded": "rounded too far", "near": "close",
    "slip and unit": "a slip, and one of units", "input": "the unit of a given value, perhaps",
    "ask": "more than one slip fits", "carried": "follows from an earlier slip", "none": "no diagnosis", "no unit": "no unit", "other unit": "another kind of unit",
    "unread": "could not be read", "told": "own words", "estimate": "an estimate", "skipped": "skipped", "sure": "how sure", "carried over": "into my design", "learner": "whose answers these are", "handed in": "handed in", "kept": "kept",
}  # fmt: skip


def write_sheet(title: str, record: str) -> str:
    """Write the last answer to every question in the file `record` as a PDF beside it; returns its name. Raises InputError."""
    held = answers.load_answers(record)
    if not held:
        raise InputError(f"there are no answers in {record} yet: answer a question first")
    path = Path(record).with_name(f"{re.sub('[^a-z0-9]+', '-', title.lower()).strip('-')}-answers.pdf")
    write_own(path, _printed(answers_printed(title, held)), "move it away, or give it another name")
    return str(path)


def answers_printed(title: str, held: list[dict]) -> str:
    """The Typst source: a row for every question with its last answer, and the receipt of all."""
    last = answers.last(held)
    rows = [(_asked(entry), _typed(entry), str(answers.tries(held, name)), _told(entry, held)) for name, entry in last.items()]
    receipt = f"Receipt {answers.receipt(held)}"
    return "\n".join(
        [
            markup.head(f"{title}: my answers", "UK", f"{title}. {receipt}. Printed from the learner's own answers file."),
            f"= {typst_words(f'{title}: my answers')}",
            typst_words(f"{claims.counted_answers(held)}. The last entry is of {held[-1]['at'][:10]}. {receipt}."),
            markup.typst_table("2fr, 1.4fr, auto, 1fr", ("Question", "Last answer", "Tries", "Told"), rows),
            "#v(8mm)",
            typst_words(f"Name or learner code: {answers.learner(held) or '______________________'}      Date: ______________"),
        ]
    )


def _told(entry: dict, held: list[dict]) -> str:
    """What the answer was found to be, worked out afresh; a file that says more is named."""
    said = _SAID.get(claims.found(entry, held), "")
    return f"{said} (the file says right)" if claims.doubtful(entry, held) else said


def _asked(entry: dict) -> str:
    """The text of the question, or its name where that is all there is."""
    try:
        return f"{entry['exercise']}: {bank.pose(entry['exercise'], entry['seed']).text}"
    except (InputError, ValueError):
        return entry["exercise"]


def _typed(entry: dict) -> str:
    """What was typed; for a choice, the option and the reason."""
    try:
        posed = bank.pose(entry["exercise"], entry["seed"])
        typed = posed.options[posed.place(entry["answer"])] if isinstance(posed, Choice) else entry["answer"]
    except (InputError, ValueError):
        typed = entry["answer"]
    return f"{typed} ({entry['middle']})" if entry["middle"].strip() else typed


def _printed(source: str) -> bytes:
    with needed("typst", "printing"):
        import typst

    day = datetime.datetime.now(datetime.UTC).replace(microsecond=0)
    with tempfile.TemporaryDirectory() as folder:
        page = Path(folder, "answers.typ")
        page.write_text(source, encoding="utf-8")
        return typst.compile(page, ignore_system_fonts=True, pdf_standards=["ua-1"], timestamp=day)
