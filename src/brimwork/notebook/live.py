"""Live controls: number box and slider for each letter, and one picture, one sentence, one table that change together.

While a slider moves, the picture is an SVG of the page, which is painted soonest; once it rests, an image, which an untrusted copy of the workbook keeps.
The kernel draws ahead while it has nothing else to do: the next steps of the sliders, and the whole track of the one that the reader has his hand on, so
that most moves, near or far, find their picture in the page already.
"""

from __future__ import annotations

import asyncio
import math
from abc import ABC, abstractmethod
from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from functools import partial
from itertools import count
from typing import Protocol

import ipywidgets as widgets
from IPython.display import display

from brimwork import system, topics
from brimwork.drawing import image, svg
from brimwork.drawing.pictures import Picture, picture
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import progress
from brimwork.notebook.given_values import of_here
from brimwork.notebook.heard import Heard
from brimwork.notebook.kept import words_here
from brimwork.notebook.pages import Page, say
from brimwork.notebook.part import Part
from brimwork.notebook.practising import ANSWERS, Keeper
from brimwork.notebook.saving import Saving
from brimwork.notebook.slider import Slider
from brimwork.notebook.text_box import TextBox
from brimwork.notebook.unfolded import Unfolded
from brimwork.shown import Markup, attribute, escape, read_here
from brimwork.units import InputError, NoValue, convert, parse

MOST_CONTROLS = 3
REST = 0.4  # s without a change
AHEAD = {True: 10, False: 3}  # steps either way that are drawn ahead of the slider that moved last, and of the others
CLOSE = 4  # of these the ones that come before its whole track
WHOLE_TRACK = 256  # steps of a track that is drawn as a whole: about as many as a pointer can tell apart
STRIDES = (16, 8, 4, 2, 1)  # of a whole track: all over it at first, then between
PAUSE, BREATH = 0.03, 0.005  # s left to the page after a move, and to the reader between two drawings ahead
_WAITS = Page("*The picture appears here once you have kept your prediction above.*", "The picture appears here once you have kept your prediction above.")
_numbers = count(1)
_ROOMY = {"min_width": "30em", "width": "max-content"}


class Figure:
    """A picture with caption, notes and the table of its numbers, as HTML and as plain text; with a `key` drawn in the page, without one an image.

    `at` names the steps of the sliders that it was drawn for, so that the page can drop it when it comes late.
    """

    def __init__(self, shown: Picture, notes: list[str], key: str = "", at: str = ""):
        self.picture, self.notes, self.key, self.at = shown, notes, key, at

    def _repr_mimebundle_(self, **_) -> dict[str, str]:
        return {"text/html": self.html(), "text/plain": " ".join([self.picture.sentence, *(f"Note: {note}." for note in self.notes)])}

    def html(self) -> Markup:
        shown = self.picture
        drawn = svg.write_svg(shown.sheet, self.key) if self.key else image.element(shown.sheet)
        notes = "".join(f"<br><em>Note: {read_here(escape(note), words_here)}.</em>" for note in self.notes)
        head = "".join(f"<th scope='col'>{escape(column)}</th>" for column in shown.columns)
        rows = "".join("<tr>" + "".join(f"<td>{escape(cell)}</td>" for cell in row) + "</tr>" for row in shown.rows)
        at = Markup(f" data-at='{attribute(self.at)}'") if self.at else Markup("")
        return Markup(
            f"<figure style='margin:0;max-width:720px'{at}>{drawn}<figcaption aria-live='polite'>{read_here(escape(shown.sentence), words_here)}{notes}</figcaption>"
            f"<details><summary>Numbers of the curve</summary><table><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table></details></figure>"
        )


class Ranges(Protocol):
    """Where controls take their usual ranges from; a formula is one."""

    def range(self, letter: str, /) -> tuple[float, float, float]: ...


class Control:
    """One letter: a box that takes any unit, and a slider over the usual range. Calls `changed` when the value (SI) changes: with itself, and whether by the slider; `at_hand`
    when the reader is about to move the slider."""

    def __init__(
        self, ranges: Ranges, letter: str, value: float, changed: Callable[[Control, bool], None], at_hand: Callable[[Control], None] = lambda _: None
    ):
        self.letter, self.row, self.value, self._changed, self._busy = letter, QUANTITIES[letter], value, changed, False
        self._done = 0.0  # when the page did what was taken last
        low, high, step = self.row.on_a_slider(*ranges.range(letter))
        low, high = _taking_in(convert(value, self.row.here), low, high, step)
        self.span = low, high
        self.box = TextBox(value=self._text(), description=f"{letter}, {self.row.plain_name}", layout=_ROOMY)
        self.slider = Slider(name=self._said(low, high), letter=letter, unit=self.row.here, min=low, max=high, step=step)
        self.slider.value = self._nearest_step(convert(value, self.row.here))
        self.message = widgets.HTML(layout={"margin": "0 0 0 1em"})
        self.box.observe(self._typed, "value")
        self.slider.observe(self._slid, "value")
        self.slider.on_msg(lambda _, said, buffers: at_hand(self) if said == {"near": True} else None)
        self.widget = widgets.HBox([self.box, self.slider, self.message], layout={"flex_flow": "row wrap", "align_items": "center"})

    def _text(self) -> str:
        return self.row.text_here(self.value, None)

    def read(self, position: float) -> float:
        """The value (SI) for a place of the slider."""
        return self.row.read(f"{position:.6g} {self.row.here}")

    def _said(self, low: float, high: float) -> str:
        return f"{self.row.plain_name}, from {low:.6g} to {high:.6g} {self.row.here}".strip()

    def ends_where(self, fits: Callable[[float], bool], first: bool = False) -> None:
        """Let the slider end where values no longer fit: `fits` tells it of a value (SI). Its lower end, from which steps are counted, moves only at `first`."""
        (low, high), step = self.span, self.slider.step
        here = round((self.slider.value - low) / step)
        ends = [low + step * _furthest(here, end, lambda at: fits(self.read(low + step * at))) for end in (0, round((high - low) / step))]
        least = ends[0] if first else self.slider.min
        if [least, ends[1]] == [self.slider.min, self.slider.max] or least >= ends[1]:
            return
        self._busy = True
        try:
            self.slider.min, self.slider.max, self.slider.name = least, ends[1], self._said(least, ends[1])
        finally:
            self._busy = False

    @property
    def last(self) -> int:
        """The number of the last step of the slider."""
        return round((self.slider.max - self.slider.min) / self.slider.step)

    def on(self, step: int) -> float:
        """The value (SI) at a step of the slider."""
        return self.read(self.slider.min + step * self.slider.step)

    def _slid(self, change) -> None:
        if self._busy or self._late(self.slider):
            return
        self.value = self.read(change["new"])
        self._take(self._text(), slid=True)

    def _typed(self, change) -> None:
        if self._busy or self._late(self.box):
            return
        try:
            self.value = self.row.read(change["new"])
        except InputError as error:
            self.message.value = f"<span role='alert'>{escape(str(error))}. Still shown: {escape(self._text())}.</span>"
            return
        self._take(change["new"], slid=False)

    def _nearest_step(self, position: float) -> float:
        """Where the slider stands for a value: on a step of its own, or the page would move it there and report that as a wish."""
        slider = self.slider
        steps = round((min(max(position, slider.min), slider.max) - slider.min) / slider.step)
        return min(slider.min + steps * slider.step, slider.max)

    def _late(self, one: Heard) -> bool:
        """Whether this waited in the page while something that was done after it was taken; both then show that again."""
        if late := one.done < self._done:
            self._show(self._text())
        return late

    def _take(self, text: str, slid: bool) -> None:
        self._done = (self.slider if slid else self.box).done
        self._show(text, lambda: self._changed(self, slid))  # the picture leaves before the words: it is what the eye waits for

    def _show(self, text: str, between: Callable[[], None] = lambda: None) -> None:
        """Put the slider, and then the words of the box, at the value."""
        self._busy = True
        try:
            self.slider.value = self._nearest_step(convert(self.value, self.row.here))  # it stands there when its picture comes
            between()
            self.box.value, self.message.value = text, ""
        finally:
            self._busy = False


def _taking_in(value: float, low: float, high: float, step: float) -> tuple[float, float]:
    """Both ends of a slider, so many steps further out that the value where it begins lies between them."""
    below, above = math.ceil((low - value) / step - 1e-6), math.ceil((value - high) / step - 1e-6)
    return low - max(below, 0) * step, high + max(above, 0) * step


def _furthest(here: int, end: int, fits: Callable[[int], bool]) -> int:
    """The step nearest to `end`, seen from `here`, at which it still fits; what lies between is taken to fit."""
    if fits(end):
        return end
    good, bad = here, end
    while abs(good - bad) > 1:
        middle = (good + bad) // 2
        good, bad = (middle, bad) if fits(middle) else (good, middle)
    return good


class Explorer(ABC):
    """Up to three controls over one picture; `given` fixes the other letters."""

    def __init__(self, ranges: Ranges, letters: tuple[str, ...], given: dict[str, float]):
        self.letters, self.given = letters, given
        self.key = f"p{next(_numbers)}"
        self.controls = [Control(ranges, letter, given[letter], self.redraw, partial(self._draw_ahead, pause=0.0, whole=True)) for letter in letters]
        self.trouble = widgets.HTML()
        self._rest: asyncio.TimerHandle | None = None
        self._ahead: asyncio.Task[None] | None = None
        self._kept: dict[str, tuple[str, set[int]]] = {
            letter: ("", set()) for letter in letters
        }  # by letter: beside which values the page keeps pictures, and of which steps

    def show(self, after: str = "") -> None:
        """Show controls and picture; with `after` once the prediction of that code is kept, and until then a line that says so."""
        names = "; ".join(control.box.description for control in self.controls)
        boxes = widgets.VBox([*(control.widget for control in self.controls), self.trouble, Saving(), Unfolded()])
        self._set_ends(first=True)
        waits = bool(after) and Keeper(ANSWERS).kept(after, 1) is None
        boxes.layout.display = "none" if waits else None
        display(Part([boxes], f"Boxes and sliders for {names}."))
        self.handle = display(_WAITS if waits else self.figure(), display_id=True)

        def appear() -> None:
            boxes.layout.display = None
            self.handle.update(self.figure(at=self.at()))
            self._draw_ahead(self.controls[0], REST)

        if waits:
            progress.when_predicted(after, appear)
        else:
            self._draw_ahead(self.controls[0], REST)

    def values(self) -> dict[str, float]:
        return {**self.given, **{control.letter: control.value for control in self.controls}}

    def at(self, moved: Control | None = None, step: int = 0) -> str:
        """The steps on which the sliders stand, by letter, with another step for the one that was `moved`."""
        return " ".join(f"{control.letter}={step if control is moved else control.slider.at()}" for control in self.controls)

    def figure(self, key: str = "", at: str = "", **instead: float) -> Figure:
        """The figure for the present values, with others instead of some by their letters. Raises InputError where there is none."""
        return Figure(*self.drawn({**self.values(), **instead}), key, at)

    @abstractmethod
    def drawn(self, values: dict[str, float]) -> tuple[Picture, list[str]]:
        """The picture for values (SI), and the notes below it. Raises InputError where there is none."""

    @abstractmethod
    def fits(self, values: dict[str, float]) -> bool:
        """Whether there is a picture at these values (SI)."""

    def redraw(self, control: Control, slid: bool) -> None:
        """Show the figure for the present values, unless the page has shown it already."""
        if not (slid and control.slider.shown == self._beside(control)):
            try:
                html = self.figure(self.key, self.at()).html()
            except InputError as error:
                self.trouble.value = (
                    f"<span role='alert'>{escape(error.words if isinstance(error, NoValue) else str(error))}. The picture is the one before.</span>"
                )
                return
            control.slider.show(html)
            if slid and control.slider.at() in self._kept[control.letter][1]:
                self._kept[control.letter] = "", set()  # the page has been loaded again and keeps nothing
        if self.trouble.value:
            self.trouble.value = ""
        if self._rest:
            self._rest.cancel()
        self._rest = asyncio.get_running_loop().call_later(REST, self._at_rest)
        self._draw_ahead(control, PAUSE, whole=True)

    def _at_rest(self) -> None:
        with suppress(InputError):  # said already
            self.handle.update(self.figure(at=self.at()))
        self._set_ends()

    def _set_ends(self, first: bool = False) -> None:
        """Each slider ends where the values of the others leave it room."""
        for control in self.controls:
            control.ends_where(partial(self._fits_with, control.letter), first)

    def _fits_with(self, letter: str, value: float) -> bool:
        return self.fits({**self.values(), letter: value})

    def _beside(self, control: Control) -> str:
        """The values of all other controls: pictures drawn ahead hold as long as these do."""
        return " ".join(["beside", *(f"{other.letter}={other.value!r}" for other in self.controls if other is not control)])

    def _draw_ahead(self, moved: Control, pause: float, whole: bool = False) -> None:
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:
            return  # nobody is there who could move a slider
        if self._ahead:
            self._ahead.cancel()
        self._ahead = loop.create_task(self._draw_next(moved, pause, whole))

    async def _draw_next(self, moved: Control, pause: float, whole: bool) -> None:
        """Draw ahead, until the next move: the steps beside the slider that moved, its track from end to end when `whole`, and some steps of the others."""
        await asyncio.sleep(pause)
        if whole and moved.last <= WHOLE_TRACK:
            await self._keep(moved, _beside(moved, CLOSE))
            await self._keep(moved, _all_over(moved))
        await self._keep(moved, _beside(moved, AHEAD[True]))
        for control in self.controls:
            if control is not moved:
                await asyncio.sleep(REST)
                await self._keep(control, _beside(control, AHEAD[False]))

    async def _keep(self, control: Control, wanted: Iterable[int]) -> None:
        """Have the page keep the pictures of steps of a control, where it does not yet."""
        beside = self._beside(control)
        if self._kept[control.letter][0] != beside:
            self._kept[control.letter] = beside, set()
        steps = self._kept[control.letter][1]
        for step in wanted:
            if 0 <= step <= control.last and step not in steps:
                steps.add(step)
                control.slider.keep(beside, self._drawn(control, [step]))
                await asyncio.sleep(BREATH)  # a move of the reader comes first

    def _drawn(self, control: Control, steps: list[int]) -> dict[int, Markup]:
        """The figures, as HTML, at steps of a control, without those that cannot be drawn: why is said when the slider comes there."""
        drawn = {}
        for step in steps:
            with suppress(InputError):
                drawn[step] = self.figure(self.key, self.at(control, step), **{control.letter: control.on(step)}).html()
        return drawn


class FormulaExplorer(Explorer):
    """Controls over the picture of a formula; its curve runs over the first of them."""

    def __init__(self, formula: Formula, letters: tuple[str, ...], given: dict[str, float]):
        self.formula = formula
        super().__init__(formula, letters, given)

    def drawn(self, values: dict[str, float]) -> tuple[Picture, list[str]]:
        shown = picture(self.formula, values, self.letters[0])
        return shown, self.formula.notes({**values, self.formula.result: self.formula(**values)})

    def fits(self, values: dict[str, float]) -> bool:
        try:
            self.formula(**values)
        except InputError:
            return False
        return True


def _beside(control: Control, away: int) -> Iterator[int]:
    """The steps of a control beside the one on which it stands, the nearest first."""
    at = control.slider.at()
    return (at + side * one for one in range(1, away + 1) for side in (1, -1))


def _all_over(control: Control) -> Iterator[int]:
    """All steps of a control, far apart at first and ever nearer."""
    return (step for stride in STRIDES for step in range(0, control.last + 1, stride))


def explore(name: str, *letters: str, after: str = "", **given: str) -> None:
    """Controls for up to three letters of a formula, with its picture: explore("flow over a level lip", "H", "b", C_d="0.62").

    Letters that are not named start in the middle of their usual range, or at the value given as text. With `after` all of it appears once the prediction
    of that code is kept.
    """
    try:
        formula = topics.find(name)
        given = {letter: of_here(text) for letter, text in given.items()}
        wanted = letters or formula.inputs[:MOST_CONTROLS]
        for letter in (*wanted, *given):
            if letter not in formula.inputs:
                raise formula.unknown_letter(letter)
        if len(wanted) > MOST_CONTROLS:
            raise InputError(f"{len(wanted)} controls were asked for; a picture takes at most {MOST_CONTROLS}")
        values = {letter: QUANTITIES[letter].read(given[letter]) if letter in given else _middle(formula, letter) for letter in formula.inputs}
        if not after:  # a puzzle asks about the other ones, on their very values
            values |= {
                letter: on_a_step(formula, letter, values[letter])
                for letter in {*wanted, *given}
                if system.foreign(f"1 {parse(given.get(letter, '1')).unit}", system.current())
            }
        FormulaExplorer(formula, wanted, values).show(after)
    except InputError as error:
        display(say(error))


def on_a_step(ranges: Ranges, letter: str, value: float) -> float:
    """The step of the slider, or of one that goes on beyond its ends, that is nearest to a value: a round number in the units of the page."""
    row = QUANTITIES[letter]
    low, _, step = row.on_a_slider(*ranges.range(letter))
    place = low + round((convert(value, row.here) - low) / step) * step
    return row.read(f"{place:.6g} {row.here}") if place >= 0 or low < 0 else value


def _middle(formula: Formula, letter: str) -> float:
    low, high, step = formula.range(letter)
    return QUANTITIES[letter].read(QUANTITIES[letter].text_here(low + round((high - low) / 2 / step) * step, None))
