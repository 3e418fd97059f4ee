"""Live controls: number box and slider for each letter, and one picture, one sentence, one table that change together.

While a slider moves, the picture is an SVG of the page, which is painted soonest; once it rests, an image, which an untrusted copy of the workbook keeps.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from html import escape
from itertools import count
from time import perf_counter

import ipywidgets as widgets
from IPython.display import display

from brimwork import topics
from brimwork.drawing import image, svg
from brimwork.drawing.pictures import Picture, picture
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook.pages import say
from brimwork.notebook.part import Part
from brimwork.notebook.slider import Slider
from brimwork.units import InputError, convert, unit

MOST_CONTROLS = 3
REST = 0.4  # s without a change
AHEAD = 0.5  # s that may be spent on drawing beforehand
_numbers = count(1)
_QUIET = {"description_width": "initial"}
_ROOMY = {"min_width": "30em", "width": "max-content"}


class Figure:
    """A picture with caption, notes and the table of its numbers, as HTML and as plain text; with a `key` drawn in the page, without one an image."""

    def __init__(self, shown: Picture, notes: list[str], key: str = ""):
        self.picture, self.notes, self.key = shown, notes, key

    def _repr_mimebundle_(self, **_) -> dict[str, str]:
        return {"text/html": self.html(), "text/plain": " ".join([self.picture.sentence, *(f"Note: {note}." for note in self.notes)])}

    def html(self) -> str:
        shown = self.picture
        drawn = svg.write(shown.sheet, self.key) if self.key else image.element(shown.sheet)
        notes = "".join(f"<br><em>Note: {escape(note)}.</em>" for note in self.notes)
        head = "".join(f"<th scope='col'>{escape(column)}</th>" for column in shown.columns)
        rows = "".join("<tr>" + "".join(f"<td>{escape(cell)}</td>" for cell in row) + "</tr>" for row in shown.rows)
        return (
            f"<figure style='margin:0;max-width:720px'>{drawn}<figcaption aria-live='polite'>{escape(shown.sentence)}{notes}</figcaption>"
            f"<details><summary>Numbers of the curve</summary><table><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table></details></figure>"
        )


class Control:
    """One letter: a box that takes any unit, and a slider over the usual range. Calls `changed` when the value (SI) changes."""

    def __init__(self, formula: Formula, letter: str, value: float, changed: Callable[[], None]):
        self.row, self.value, self._changed, self._busy = QUANTITIES[letter], value, changed, False
        low, high, step = (convert(v, self.row.metric) if i < 2 else v / unit(self.row.metric).factor for i, v in enumerate(formula.range(letter)))
        name = self.row.plain_name
        self.box = widgets.Text(value=self._text(), description=f"{letter}, {name}", continuous_update=False, style=_QUIET, layout=_ROOMY)
        span = f"{name}, from {low:g} to {high:g} {self.row.metric}".strip()
        self.slider = Slider(name=span, unit=self.row.metric, min=low, max=high, step=step)
        self.slider.value = self._nearest_step(convert(value, self.row.metric))
        self.message = widgets.HTML(layout={"margin": "0 0 0 1em"})
        self.box.observe(self._typed, "value")
        self.slider.observe(self._slid, "value")
        self.widget = widgets.HBox([self.box, self.slider, self.message], layout={"flex_flow": "row wrap", "align_items": "center"})

    def _text(self) -> str:
        return self.row.metric_text(self.value, None)

    def read(self, position: float) -> float:
        """The value (SI) for a place of the slider."""
        return self.row.read(f"{position:.6g} {self.row.metric}")

    def positions(self) -> list[float]:
        """The places on which the slider stops."""
        return [self.slider.min + step * self.slider.step for step in range(round((self.slider.max - self.slider.min) / self.slider.step) + 1)]

    def _slid(self, change) -> None:
        if not self._busy:
            self.value = self.read(change["new"])
            self._take(self._text(), change["new"])

    def _typed(self, change) -> None:
        if self._busy:
            return
        try:
            self.value = self.row.read(change["new"])
        except InputError as error:
            self.message.value = f"<span role='alert'>{escape(str(error))}. Still shown: {escape(self._text())}.</span>"
            return
        self._take(change["new"], convert(self.value, self.row.metric))

    def _nearest_step(self, position: float) -> float:
        """Where the slider stands for a value: on a step of its own, or the page would move it there and report that as a wish."""
        slider = self.slider
        steps = round((min(max(position, slider.min), slider.max) - slider.min) / slider.step)
        return min(slider.min + steps * slider.step, slider.max)

    def _take(self, text: str, position: float) -> None:
        self._changed()  # the picture leaves first: it is what the eye waits for
        self._busy = True
        try:
            self.box.value, self.message.value = text, ""
            self.slider.value = self._nearest_step(position)
        finally:
            self._busy = False


class Explorer:
    """Up to three controls over one picture. `given` fixes the other letters; the curve runs over the first control."""

    def __init__(self, formula: Formula, letters: tuple[str, ...], given: dict[str, float]):
        self.formula, self.letters, self.given = formula, letters, given
        self.key = f"p{next(_numbers)}"
        self.controls = [Control(formula, letter, given[letter], self.redraw) for letter in letters]
        self.trouble, self.rest = widgets.HTML(), None

    def show(self) -> None:
        names = "; ".join(control.box.description for control in self.controls)
        display(Part([*(control.widget for control in self.controls), self.trouble], f"Boxes and sliders for {names}. They come to life when the cell is run."))
        self.handle = display(self.figure(), display_id=True)
        if len(self.controls) == 1:
            self.controls[0].slider.frames = self.frames()

    def values(self) -> dict[str, float]:
        return {**self.given, **{letter: control.value for letter, control in zip(self.letters, self.controls, strict=True)}}

    def figure(self, key: str = "") -> Figure:
        values = self.values()
        shown = picture(self.formula, values, self.letters[0])
        return Figure(shown, self.formula.notes({**values, self.formula.result: self.formula(**values)}), key)

    def frames(self) -> list[str]:
        """The figure at each step of the only slider, as many as can be drawn in the time there is; "" where there is none."""
        control, made, end = self.controls[0], [], perf_counter() + AHEAD
        kept = control.value
        for position in control.positions():
            control.value = control.read(position)
            try:
                made.append(self.figure(self.key).html() if perf_counter() < end else "")
            except InputError:
                made.append("")
        control.value = kept
        return made

    def redraw(self) -> None:
        try:
            figure = self.figure(self.key)
        except InputError as error:
            self.trouble.value = f"<span role='alert'>{escape(str(error))}.</span>"
            return
        if self.trouble.value:
            self.trouble.value = ""
        self.handle.update(figure)
        if self.rest:
            self.rest.cancel()
        self.rest = asyncio.get_running_loop().call_later(REST, lambda: self.handle.update(Figure(figure.picture, figure.notes)))


def explore(name: str, *letters: str, **given: str) -> None:
    """Controls for up to three letters of a formula, with its picture: explore("flow over a level lip", "H", "b", C_d="0.62").

    Letters that are not named start in the middle of their usual range, or at the value given as text.
    """
    try:
        formula = topics.find(name)
        wanted = letters or formula.inputs[:MOST_CONTROLS]
        for letter in (*wanted, *given):
            if letter not in formula.inputs:
                raise formula.unknown_letter(letter)
        if len(wanted) > MOST_CONTROLS:
            raise InputError(f"{len(wanted)} controls were asked for; a picture takes at most {MOST_CONTROLS}")
        values = {letter: QUANTITIES[letter].read(given[letter]) if letter in given else _middle(formula, letter) for letter in formula.inputs}
        Explorer(formula, wanted, values).show()
    except InputError as error:
        display(say(error))


def _middle(formula: Formula, letter: str) -> float:
    low, high, step = formula.range(letter)
    return QUANTITIES[letter].read(QUANTITIES[letter].metric_text(low + round((high - low) / 2 / step) * step, None))
