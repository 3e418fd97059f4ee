"""How far one has come in the workbook that is open: its questions report here, and the line at its top says so; pictures wait here for a prediction."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Protocol

import ipywidgets as widgets
from IPython.display import display

from brimwork.exercise.diagnosis import ONCE_SHOWN
from brimwork.notebook.part import Part
from brimwork.shown import Markup, escape

RECALL, PREDICT, EXPLORE, EXPLAIN = "1 Recall", "2 Predict", "3 Explore", "4 Explain"
DERIVE, FADED, SLIP = "5 Derive and work", "6 Faded example", "7 Find the slip"
YOUR_NUMBERS, SITE, EXIT = "8 Your numbers", "9 On site", "10 Exit check"
_ORDER = (RECALL, PREDICT, EXPLORE, EXPLAIN, DERIVE, FADED, SLIP, YOUR_NUMBERS, SITE, EXIT)
_NOT_YET, _TO_READ = "\N{WHITE CIRCLE}", "to read"
_DONE = ("right", ONCE_SHOWN, "told", "kept", "skipped")


class Counted(Protocol):
    """A question on the page. `standing` is what its last answer was found to be, or nothing."""

    @property
    def standing(self) -> str: ...


class _Workbook:
    """What this kernel shows: the questions of each section by name, and who wants to know of changes."""

    def __init__(self) -> None:
        self.section = ""
        self.asked: dict[str, dict[str, Counted]] = {}
        self.waiting: dict[str, list[Callable[[], None]]] = {}
        self.told: Callable[[], None] | None = None
        self.notes: dict[str, str] = {}


_open = _Workbook()


@contextmanager
def in_section(name: str) -> Iterator[None]:
    """Questions made within belong to this section."""
    before, _open.section = _open.section, name
    try:
        yield
    finally:
        _open.section = before
        changed()


def joins(name: str, question: Counted) -> None:
    """Count a question in the section that is being made; outside one it is not counted. Made again, it takes its own place."""
    if _open.section:
        _open.asked.setdefault(_open.section, {})[name] = question


def leaves(name: str) -> None:
    """Count a question of the section that is being made no longer."""
    _open.asked.get(_open.section, {}).pop(name, None)


def changed() -> None:
    """Something was answered: say so at the top."""
    if _open.told:
        _open.told()


def when_predicted(code: str, act: Callable[[], None]) -> None:
    """Do something once a prediction of that code is kept."""
    _open.waiting.setdefault(code, []).append(act)


def predicted(code: str) -> None:
    """A prediction of that code is kept now."""
    for act in _open.waiting.pop(code, []):
        act()
    changed()


def in_a_lesson() -> bool:
    """Whether a workbook with a line at its top is open."""
    return _open.told is not None


def first_said(note: str, by: str) -> bool:
    """Whether a note is to stand here: in a lesson once, where `by` said it first, and there again when that is run again; elsewhere every time."""
    return not in_a_lesson() or _open.notes.setdefault(note, by) == by


def closed() -> None:
    """No lesson is open any more."""
    global _open
    _open = _Workbook()


def how_far() -> Markup:
    """How far one has come, section by section, and where to go on."""
    rows, first = [], ""
    for name in _ORDER:
        asked = _open.asked.get(name)
        if name == DERIVE and (next_one := _open.asked.get(FADED)) and not any(one.standing for one in next_one.values()):
            rows.append((name, _TO_READ))  # whoever has begun the next section is past it
        if not asked:
            continue
        standing = [one.standing for one in asked.values()]
        done, begun = sum(each in _DONE for each in standing), any(standing)
        if done < len(standing):
            first = first or name
        rows.append((name, "✓" if done == len(standing) else f"{done} of {len(standing)}" if begun or done else _NOT_YET))
    if not rows:
        return Markup("<p style='margin:.35em 0'>One moment: boxes and pictures come to life, and this line then says how far you have come.</p>")
    line = Markup(" &nbsp; ").join(
        Markup(f"<span style='white-space:nowrap'>{escape(name)}&nbsp;<strong>{escape(mark)}</strong></span>") for name, mark in rows
    )
    if all(mark in (_NOT_YET, _TO_READ) for _, mark in rows):
        end = f"Begin with <strong>{escape(first)}</strong>. What you answer is kept, and stands in its box again when you come back."
    elif first:
        end = f"Go on with <strong>{escape(first)}</strong>."
    else:
        end = "Every question here is answered."
    means = f"{_NOT_YET} stands for not yet begun. " if any(mark == _NOT_YET for _, mark in rows) else ""
    return Markup(f"<p style='line-height:1.5;margin:.35em 0'>So far: {line}<br>{escape(means)}{Markup(end)}</p>")


def so_far() -> None:
    """The line at the top of a workbook that says how far one has come; it follows what is answered below."""
    _open.asked.clear()
    _open.waiting.clear()
    _open.notes.clear()
    line = widgets.HTML(how_far())

    def follow() -> None:
        line.value = how_far()

    _open.told = follow
    display(Part([line], "How far you have come stands here."))
