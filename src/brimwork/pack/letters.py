"""Which letters of a design the fonts at hand can print: those that come with the kit, else those of this machine."""

from __future__ import annotations

import shutil
import unicodedata
from collections.abc import Iterable
from functools import cache
from importlib.util import find_spec
from pathlib import Path

from brimwork.design.typed.design import Design

FONT = "DejaVuSans.ttf"  # of those that come along, the one with most scripts
MOST_NAMED = 10


def font_folders() -> list[str]:
    """Drawings are lettered in DejaVu Sans, which matplotlib carries; everything else comes with Typst."""
    found = find_spec("matplotlib")
    return [str(Path(place, "mpl-data", "fonts", "ttf")) for place in (found.submodule_search_locations or ())] if found else []


def foreign_letters(design: Design) -> frozenset[str]:
    """Letters of a design that the fonts of the kit do not have."""
    texts = [design.title, design.note, *(given.text for given in design.values.values() if isinstance(given.text, str))]
    letters = {sign for text in texts for sign in text if ord(sign) > 0x24F and unicodedata.category(sign)[0] not in "MZC"}
    return frozenset(letters - _covered(_own())) if letters else frozenset()


@cache
def letters_without_font(letters: frozenset[str]) -> tuple[str, ...]:
    """Those of the letters that no font of this machine has either."""
    return tuple(sorted(letters.difference(*map(_covered, _having(letters)))))


def font_folders_for(letters: frozenset[str], folder: Path) -> list[str]:
    """Folders of fonts that have the letters too, as far as this machine has such; `folder` is where one may be made.

    A font that has a box for every letter stands aside where a real one is at hand.
    """
    if not letters:
        return font_folders()
    together = folder / "fonts"
    together.mkdir()
    kit = [path for place in font_folders() for path in Path(place).glob("*.ttf") if "LastResort" not in path.name or letters_without_font(letters)]
    for path in [*kit, *map(Path, _having(letters))]:
        shutil.copy(path, together)
    return [str(together)]


@cache
def _having(letters: frozenset[str]) -> tuple[str, ...]:
    """Font files of this machine that together have as many of the letters as can be."""
    left, found = set(letters), []
    for path in _others() if left else ():
        if left & _covered(path):
            found.append(path)
            left -= _covered(path)
        if not left:
            break
    return tuple(found)


def letters_named(letters: Iterable[str]) -> str:
    """Letters that cannot be printed, by what they are called."""
    first = [f"{unicodedata.name(sign, 'letter').lower()} (U+{ord(sign):04X})" for sign in list(letters)[:MOST_NAMED]]
    more = len(list(letters)) - len(first)
    return f"No font of this machine has these letters, and they stand as boxes: {', '.join(first)}{f', and {more} more' if more > 0 else ''}."


def _own() -> str:
    return next((str(Path(folder, FONT)) for folder in font_folders()), "")


def _others() -> list[str]:
    """The font files of this machine."""
    try:
        from matplotlib.font_manager import findSystemFonts
    except ImportError:
        return []
    return sorted(path for path in findSystemFonts() if "LastResort" not in path)


@cache
def _covered(path: str) -> frozenset[str]:
    """The letters that a font file has; none for one that cannot be read."""
    try:
        from matplotlib.ft2font import FT2Font

        return frozenset(map(chr, FT2Font(path).get_charmap()))
    except (ImportError, OSError, RuntimeError, ValueError):
        return frozenset()
