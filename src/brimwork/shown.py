"""Text made fit for where it is shown: the only way from a string into HTML, SVG or Markdown. Whatever stands in a file is words, never markup.

`tests/test_text_is_never_markup.py` reads the source and refuses a string with markup in it whose holes hold anything else.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from html import escape as _entities
from typing import NewType

from brimwork.unit_table import UNITS

Markup = NewType("Markup", str)  # HTML that this kit wrote, with every text in it escaped
JOINERS = "\u200c\u200d"  # needed in Persian, Hindi and other scripts, and harmless
_OWN_MARKS = {ord(sign): f"&#{ord(sign)};" for sign in "\\`*_{}[]()#+-.!|~^:=@\"'"}
# A page looks for formulas between dollars or after a backslash; one that stands alone in an element begins none.
_ALONE = {ord(sign): f"<span>&#{ord(sign)};</span>" for sign in "$\\"}

_UNIT = "|".join(re.escape(unit) for unit in sorted({*UNITS, "%"}, key=len, reverse=True))
_APART = re.compile(r"(<q>.*?</q>|<[^>]*>|\$[^$]*\$)", re.DOTALL)
# A letter keeps its "=" and its number, and a number its unit.
_TOGETHER = re.compile(rf"(?<=[\w)]) = (?=[-\d.(])|(?<=\d) (?:{_UNIT})[23]?(?:/(?:{_UNIT})[23]?)?(?: per (?:m|ft))?(?!\w)")


def clean(text: object) -> str:
    """One line of what can be seen: no control characters, nothing that turns the line round."""
    line = str(text)
    return line if line.isprintable() else "".join(sign if sign.isprintable() or sign in JOINERS else " " for sign in line)


def clipped(text: object, most: int = 80) -> str:
    """Something given, for a sentence about it: one line, and of a long one the beginning."""
    line = clean(text if isinstance(text, str) else repr(text) if not isinstance(text, int) or abs(text) < 10**most else "a number of very many digits")
    return line if len(line) <= most else f"{line[:most]}…"


def escape(text: object) -> Markup:
    """Words inside an element of a page, exactly as they stand: no tag, no entity, no formula."""
    return Markup(_entities(clean(text)).translate(_ALONE))


def attribute(text: object) -> Markup:
    """Words inside the quotes of an attribute, or in an SVG."""
    return Markup(_entities(clean(text)))


def in_markdown(text: object) -> Markup:
    """Words inside a line of Markdown: no tag, no link, no emphasis, no cell of a table, no formula."""
    return Markup(_entities(clean(text), quote=False).translate({**_OWN_MARKS, **_ALONE, ord("&"): "&", ord(";"): ";"}))


def read_here(markup: Markup, words: Callable[[str], str] = str) -> Markup:
    """A page as it is read: its sentences in other `words` where these differ, no line broken between a number and its unit, or a letter, "=" and what it is.

    Tags, formulas between dollars and what somebody is quoted with stand as they are.
    """
    return Markup(markdown_read_here(markup, words))


def markdown_read_here(markdown: str, words: Callable[[str], str] = str) -> str:
    """The same for Markdown of ours."""
    parts = _APART.split(markdown)
    return "".join(part if at % 2 else held_together(words(part)) for at, part in enumerate(parts))


def held_together(text: str) -> str:
    """The same for a few words, which keep their spelling."""
    return _TOGETHER.sub(lambda found: found[0].replace(" ", "\N{NO-BREAK SPACE}"), text)
