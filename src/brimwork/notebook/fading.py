"""A worked example line by line with its units, and the same kind of example with its last lines blank: first one, then two, then three.

All lines come from the formula's declaration (`exercise.pieces`); nothing is typed here.
"""

from __future__ import annotations

from dataclasses import replace

import ipywidgets as widgets
from IPython.display import display

from brimwork import topics, typeset
from brimwork.coherent import GivenNumber
from brimwork.exercise.blanks import answered, blank, given_text, hints, rounded_up
from brimwork.exercise.diagnosis import Diagnosis, read_answer
from brimwork.exercise.pieces import Piece, Worked, worked
from brimwork.exercise.question import ask, in_words
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import given_values, progress
from brimwork.notebook.given_values import InCell
from brimwork.notebook.pages import Page, Shown, once, say
from brimwork.notebook.part import Part
from brimwork.notebook.practising import Keeper, box, button, leads_to, paragraph, status, told_back
from brimwork.notebook.tied import ASKED, Tied
from brimwork.shown import Markup, attribute, escape
from brimwork.units import InputError

MOST_BLANKS = 3
_COUNTS = ("no blanks", "one blank", "two blanks", "three blanks")


_BREAK = "<br>"  # the table of a page has no other way to begin a line in a cell


def _set(latex: str) -> str:
    strut = r"\rule[-1.3em]{0pt}{2.8em}" if r"\frac" in latex else ""  # keeps fractions of two lines apart
    return f"$\\displaystyle {strut}{latex}$"


def ledger(name: str, **values: InCell) -> Page | Shown:
    """One formula worked line by line, and beside each line its units alone: ledger("flow over a level lip", b="4 m", H="0.2 m", C_d="0.62").

    A value may be given in both systems, b="4 m or 13 ft", or be carried on from a sum above: Q=...
    """
    try:
        formula = topics.find(name)
        found = worked(formula, given_values.typed(formula, values), given_values.stated(values))
    except InputError as error:
        return say(error)
    last = found.pieces[-1]
    for piece in found.pieces:
        if piece.named:
            given_values.keep(piece.key, found.shown[piece.key], found.unit(piece))
    told = given_values.given_told(formula, found.values, values, [one for factors in found.chosen.factors.values() for one in factors])
    before = [f"| | {_set(typeset.turned_line(one))} | {_set(_turned_units(one))} |" for one in found.given.values() if one.turned]
    rows = [
        f"| {number} | {_BREAK.join((_set(found.left(piece)), _set(f'= {found.put_in(piece)}'), f'$= {found.value(piece.key)}$'))} | {_set(_units(found, piece))} |"
        for number, piece in enumerate(found.pieces, start=1)
    ]
    end = f"{formula.quantity.short_name[:1].upper()}{formula.quantity.short_name[1:]}: {given_values.result_shown(formula, found.shown[last.key], found.unit(last))}"
    table = "\n".join(["| Step | Numbers put in, and what they come to | Units only |", "|:---|:---|:---|", *before, *rows])
    check = f"The units of the last line come out as {found.unit(last) or 'a plain number'}, as they must. {rounded_up(found)}".rstrip()
    plain = [typeset.turned_line(one, typeset.PLAIN) for one in found.given.values() if one.turned]
    plain += [f"{number}. {found.line(piece)}  [{_units(found, piece, typeset.PLAIN)}]" for number, piece in enumerate(found.pieces, start=1)]
    notes = [f"Note: {note}." for note in formula.notes({**found.values, **found.found})]
    return Page(
        "\n\n".join([told, table, f"**{end}.** {check}", *(f"*{note}*" for note in notes), *once(formula, told)]),
        "\n".join([told, *plain, end, check, *notes]),
    )


def _units(found: Worked, piece: Piece, target: typeset.Latex = typeset.LATEX) -> str:
    return f"{found.units_only(piece, target)}{target.equals}{_bare(found.unit(piece), target)}"


def _turned_units(one: GivenNumber, target: typeset.Latex = typeset.LATEX) -> str:
    by = typeset.by(replace(one.factor, number=""), target) if one.factor else ""
    return f"{_bare(one.unit, target)}{by}{target.equals}{_bare(one.put_in_unit, target)}"


def _bare(unit: str, target: typeset.Latex) -> str:
    return target.unit(unit).strip().removeprefix(r"\,") or "1"


def _in_line(latex: str) -> Markup:
    """A formula in a line of HTML: its dollars and backslashes stand, a "<" in it begins no tag."""
    return Markup(f"${attribute(latex)}$")


class Blank:
    """One blank line: a box with instant diagnosis."""

    def __init__(self, example: Example, place: int):
        self.example, self.place, self.done = example, place, False
        self.value: float | None = None
        piece = example.worked.pieces[place]
        name = f"{piece.key}, {QUANTITIES[piece.key].plain_name}" if piece.named else typeset.write_tree(piece.written, typeset.PLAIN)
        unit = f", in {in_words(asked)}" if (asked := example.worked.unit(piece)) else ""
        self.box = box(f"Step {place + 1}: {name}{unit}", "36em")
        self.box.observe(lambda change: self.check(change["new"]), "value")
        self.said, self.outcome = widgets.HTML(), widgets.HTML()
        self.found: Diagnosis | None = None

    def check(self, text: str) -> None:
        if not text.strip():
            return
        example, piece = self.example, self.example.worked.pieces[self.place]
        found = answered(example.worked, self.place, example.seed, text, example.earlier())
        if found.kind == "no unit" and not piece.named:  # nobody writes a unit such as m^1.5
            text = f"{text} {example.worked.unit(piece)}"
            found = answered(example.worked, self.place, example.seed, text, example.earlier())
        self.found = found
        self.value = self._read(found, text)
        self.done = found.right
        self.said.value = told_back(found)
        if self.place == len(example.worked.pieces) - 1:
            self.outcome.value = leads_to(example.question, text, f"b{id(self)}")
        example.keeper.keep(blank(example.worked, self.place, example.seed), text, found)
        example.show()
        progress.changed()

    def come_back(self) -> bool:
        """Put the answer that was kept into the box again; whether there was one."""
        entry = self.example.keeper.kept(blank(self.example.worked, self.place, self.example.seed).code, self.example.seed, 1)
        if entry:
            self.box.value = entry["answer"]
        return bool(entry)

    def _read(self, found: Diagnosis, text: str) -> float | None:
        """The learner's own value, if it is of the right kind."""
        if found.kind in ("unread", "no unit", "other unit"):
            return None
        return read_answer(blank(self.example.worked, self.place, self.example.seed), text).value


class Example:
    """A worked example of which the last lines are blank."""

    def __init__(self, formula: Formula, seed: int, blanks: int, keeper: Keeper):
        self.seed, self.keeper = seed, keeper
        self.rung: int = 0
        self.question = ask(formula, seed)
        self.worked = worked(formula, formula.only({name: given.value for name, given in self.question.given.items()}))
        count = len(self.worked.pieces)
        self.blanks = {place: Blank(self, place) for place in range(max(count - blanks, 0), count)}
        self.lines = [widgets.HTMLMath() for _ in range(count)]
        self.help = widgets.HTML()
        self.hint = button(f"Hint, {_COUNTS[blanks]}", "the next bit of help for the first line that is still open", self.next_hint)
        asked = widgets.HTML(paragraph(Markup(f"<strong>{escape(_COUNTS[blanks].capitalize())}.</strong> {escape(given_text(self.worked))}")))
        asked.add_class(ASKED)
        turned = [one for one in self.worked.given.values() if one.turned]
        first = [widgets.HTMLMath(f"In the units of the sum: {', '.join(_in_line(typeset.turned_line(one)) for one in turned)}.")] if turned else []
        rows: list[widgets.Widget] = [asked, *first]
        for place, line in enumerate(self.lines):
            own = self.blanks.get(place)
            rows += [line, *([own.box, own.said, own.outcome] if own else [])]
        self.widget = Part([*rows, self.hint, self.help, Tied()], given_text(self.worked))
        self.show()

    def earlier(self) -> dict[int, float]:
        return {place: own.value for place, own in self.blanks.items() if own.value is not None}

    @property
    def open(self) -> list[Blank]:
        return [own for own in self.blanks.values() if not own.done]

    def show(self) -> None:
        """Write the lines; a line that is still open ends in a frame with a question mark, and its value stands in later ones as a frame that names it."""
        pieces = {self.worked.pieces[own.place].key: own.place for own in self.open}
        unit = {key: typeset.LATEX.unit(self.worked.chosen.unit[key]) for key in pieces}
        hidden = {key: rf"\boxed{{\text{{step {place + 1}}}}}{unit[key]}" for key, place in pieces.items()}
        for place, (piece, line) in enumerate(zip(self.worked.pieces, self.lines, strict=True)):
            end = rf"\boxed{{\,?\,}}{unit[piece.key]}" if piece.key in hidden else self.worked.value(piece.key)
            worked_out = rf"\displaystyle {self.worked.left(piece)} = {self.worked.put_in(piece, hidden=hidden)} = {end}"
            line.value = Markup(f"Step {place + 1:d}: {_in_line(worked_out)}")
        if not self.open:
            self.help.value = status(escape(f"✓ This example is worked to its end. {rounded_up(self.worked)}".rstrip()))

    def next_hint(self) -> None:
        if not self.open:
            return
        first = self.open[0]
        rungs = hints(self.worked, first.place, first.found)
        self.rung = min(self.rung + 1, len(rungs))
        self.help.value = status(Markup(f"Step {first.place + 1:d}, hint {self.rung} of {len(rungs)}: {escape(rungs[self.rung - 1])}"))


class Fading:
    """Examples of one formula, each with one more blank than the last."""

    def __init__(self, name: str, seed: int, record: str | None):
        self.formula, self.seed, self.keeper = topics.find(name), seed, Keeper(record)
        self.examples: list[Example] = []
        self.place = widgets.VBox([])
        self.next = button("Next example, one more blank", "a fresh example with one more blank", self.go_on)
        self.go_on()
        self.widget = Part([self.place, self.next, self.keeper.said], given_text(self.examples[0].worked))

    @property
    def most(self) -> int:
        return min(MOST_BLANKS, len(self.examples[0].worked.pieces))

    def come_back(self) -> None:
        """What was answered before stands in its boxes again, and as many examples are open as were."""
        with self.keeper.putting_back():
            while any([one.come_back() for one in self.examples[-1].blanks.values()]) and not self.next.disabled:
                self.go_on()

    @property
    def standing(self) -> str:
        """ "right" once every example is worked, to the one with most blanks."""
        if len(self.examples) == self.most and not any(example.open for example in self.examples):
            return "right"
        return "begun" if any(one.found for example in self.examples for one in example.blanks.values()) else ""

    def go_on(self) -> None:
        count = len(self.examples) + 1
        self.examples.append(Example(self.formula, self.seed + count - 1, count, self.keeper))
        self.place.children = [example.widget for example in self.examples]
        self.next.disabled = count >= self.most


def fade(name: str, seed: int = 1, record: str | None = "answers.json") -> None:
    """Examples of one formula with their last lines blank, each blank a box: fade("total dynamic head"). Answers are kept in `record`."""
    try:
        with progress.in_section(progress.FADED):
            fading = Fading(name, seed, record)
            fading.come_back()
            progress.joins(fading.formula.name, fading)
            display(fading.widget)
    except InputError as error:
        display(say(error))
    except ValueError as error:
        display(say(InputError(str(error))))
