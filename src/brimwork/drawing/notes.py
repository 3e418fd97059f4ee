"""Sentences on a sheet: wrapped to its width, and the one that says what is not shown because nobody gave it."""

from __future__ import annotations

import re
from collections.abc import Iterable

from brimwork.drawing.placing import width_of
from brimwork.drawing.records import GREY, Text
from brimwork.drawing.sizes import WIDTH

_SIZE, _PITCH, _LEFT = 2.9, 4.4, 4.0  # mm: letters, from one line to the next, and from the sheet's edge
_HELD, _WITHIN = "\N{NO-BREAK SPACE}", re.compile(r"(?<=[\d)]) (?:x )?(?=\d)|(?<=\d) (?=mA\b|mm\b|in\b)")


def notes_below(top: float, sentences: Iterable[str], wide: float = WIDTH) -> tuple[tuple[Text, ...], float]:
    """The sentences one under the other on a sheet that is `wide` mm wide, the first one's letters standing at `top` (mm), and where the next would stand."""
    lines = [line for sentence in sentences for line in wrapped(sentence, wide - 2 * _LEFT)]
    return tuple(Text((_LEFT, top + _PITCH * i), line, "start", _SIZE, GREY) for i, line in enumerate(lines)), top + _PITCH * len(lines)


def wrapped(text: str, wide: float) -> list[str]:
    """The text in lines that are no wider than `wide` (mm), broken between words, never within a size such as "11 3/4 x 35 3/8"."""
    lines: list[str] = []
    for word in (part.replace(_HELD, " ") for part in _WITHIN.sub(lambda gap: gap[0].replace(" ", _HELD), text).split(" ")):
        if lines and width_of(f"{lines[-1]} {word}", _SIZE) <= wide:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines


def not_shown(names: Iterable[str]) -> list[str]:
    """A sentence for what is not known and therefore not drawn; nothing where all is known."""
    told = list(names)
    return [f"Not shown, because nobody gave it: {', '.join(told)}."] if told else []
