"""A worked example line by line with its units, and the same kind of example with its last lines blank: first one, then two, then three.

All lines come from the formula's declaration (`exercise.pieces`); nothing is typed here.
"""

from __future__ import annotations

from dataclasses import replace

import ipywidgets as widgets
from IPython.display import display

from brimwork import topics, typeset, units
from brimwork.exercise.blanks import answered, blank, given_text
from brimwork.exercise.diagnosis import Diagnosis, read_answer
from brimwork.exercise.hints import ladder
from brimwork.exercise.pieces import FIGURES, Piece, Worked, worked
from brimwork.exercise.question import ask, in_words
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import progress
from brimwork.notebook.pages import Page, Shown, checked, given_line, say, typed
from brimwork.notebook.part import Part
from brimwork.notebook.practising import Keeper, box, button, leads_to, paragraph, status, told_back
from brimwork.notebook.tied import ASKED, Tied
from brimwork.shown import Markup, escape
from brimwork.units import InputError

MOST_BLANKS = 3
_COUNTS = ("no blanks", "one blank", "two blanks", "three blanks")


_BREAK = "<br>"  # the table of a page has no other way to begin a line in a cell


def _set(latex: str) -> str:
    strut = r"\rule[-0.9em]{0pt}{2.2em}" if r"\frac" in latex else ""  # keeps fractions of two lines apart
    return f"$\\displaystyle {strut}{latex}$"


def ledger(name: str, **values: str) -> Page | Shown:
    """One formula worked line by line, and beside each line its units alone: ledger("flow over a level lip", b="4 m", H="0.2 m", C_d="0.62")."""
    try:
        formula = topics.find(name)
        found = worked(formula, typed(formula, values))
    except InputError as error:
        return say(error)
    rows = [
        f"| {number} | {_BREAK.join((_set(found.left(piece)), _set(f'= {found.put_in(piece)}'), f'$= {found.value(piece.key)}$'))} | {_set(_units(found, piece))} |"
        for number, piece in enumerate(found.pieces, start=1)
    ]
    end = f"{formula.quantity.short_name[:1].upper()}{formula.quantity.short_name[1:]}: {formula.quantity.shown(found.found[formula.result], 4)}"
    table = "\n".join(["| Step | Numbers put in, and what they come to | Units only |", "|:---|:---|:---|", *rows])
    check = f"The units of the last line come out as {found.unit(found.pieces[-1]) or 'a plain number'}, as they must."
    plain = [f"{number}. {found.line(piece)}  [{_units(found, piece, typeset.PLAIN)}]" for number, piece in enumerate(found.pieces, start=1)]
    notes = [f"Note: {note}." for note in formula.notes({**found.values, **found.found})]
    given = given_line(formula, found.values)
    return Page(
        "\n\n".join([given, table, f"**{end}.** {check}", *(f"*{note}*" for note in notes), checked(formula)]), "\n".join([given, *plain, end, check, *notes])
    )


def _units(found: Worked, piece: Piece, target: typeset.Latex = typeset.LATEX) -> str:
    end = target.unit(found.unit(piece)).strip().removeprefix(r"\,") or "1"
    return f"{found.units_only(piece, target)}{target.equals}{end}"


class Blank:
    """One blank line: a box with instant diagnosis."""

    def __init__(self, example: Example, place: int):
        self.example, self.place, self.done = example, place, False
        self.value: float | None = None
        piece = example.worked.pieces[place]
        name = f"{piece.key}, {QUANTITIES[piece.key].plain_name}" if piece.named else typeset.write_tree(piece.written, typeset.PLAIN)
        unit = f", in {in_words(asked)}" if (asked := example.worked.asked_in(piece)) else ""
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
            text = f"{text} {example.worked.asked_in(piece)}"
            found = answered(example.worked, self.place, example.seed, text, example.earlier())
        elif found.kind == "no unit" and example.worked.unit(piece) != example.worked.asked_in(piece):
            both = f"The line comes out in {example.worked.unit(piece)}, and the box asks for {in_words(example.worked.asked_in(piece))}: which of them is it? Type it too."
            found = replace(found, message=both)
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
        rows: list[widgets.Widget] = [asked]
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
        hidden = {self.worked.pieces[own.place].key: rf"\boxed{{\text{{step {own.place + 1}}}}}" for own in self.open}
        for place, (piece, line) in enumerate(zip(self.worked.pieces, self.lines, strict=True)):
            end = rf"\boxed{{\,?\,}}{self._converted(piece)}" if piece.key in hidden else self._value(piece)
            line.value = f"Step {place + 1}: $\\displaystyle {self.worked.left(piece)} = {self.worked.put_in(piece, hidden=hidden)} = {end}$"
        if not self.open:
            self.help.value = status(Markup("✓ This example is worked to its end."))

    def _value(self, piece: Piece) -> str:
        """The value, and for a letter that is shown in another unit, that one too."""
        value = self.worked.value(piece.key)
        if not piece.named or QUANTITIES[piece.key].here == self.worked.unit(piece):
            return value
        number, _, unit = QUANTITIES[piece.key].text_here(self.worked.found[piece.key], FIGURES).partition(" ")
        return f"{value} = {typeset.LATEX.number(number)}{typeset.LATEX.unit(unit)}"

    def _converted(self, piece: Piece) -> str:
        """Where the box asks for another unit than the line comes out in: both, and what one is in the other."""
        unit, asked = self.worked.unit(piece), self.worked.asked_in(piece)
        if asked == unit:
            return ""
        one = typeset.LATEX.number(units.number(units.convert(units.unit(unit).factor, asked)))
        return rf"{typeset.LATEX.unit(unit)} \quad (1{typeset.LATEX.unit(unit)} = {one}{typeset.LATEX.unit(asked)})"

    def next_hint(self) -> None:
        if not self.open:
            return
        first = self.open[0]
        rungs = ladder(blank(self.worked, first.place, self.seed), first.found)
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
