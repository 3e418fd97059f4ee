"""A design: what is known of it, value by value, and how one value is changed. A missing value is unknown, never assumed."""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Any

from brimwork.design.typed.fields import REGIONS, SECTIONS, sections
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.known import Given, Unknown
from brimwork.design.typed.reading import usual
from brimwork.design.typed.renamed import RENAMED
from brimwork.files import as_toml
from brimwork.shown import clean, clipped
from brimwork.spellings import nearest
from brimwork.units import InputError

_LONGEST = {"title": 120, "note": 2000}


@dataclass(frozen=True)
class Design:
    """What is known of a design: head entries, and values by "section.key". A missing value is unknown, never assumed."""

    kind: str
    title: str
    region: str = "UK"
    note: str = ""
    values: dict[str, Given] = field(default_factory=dict)
    renamed: tuple[str, ...] = ()  # keys that the file still has, and that are called otherwise now or are gone

    def __getitem__(self, key: str):
        """The SI value, word or list under "section.key", else the usual one that is assumed. Raises Unknown where there is neither."""
        given = self.values.get(key) or _assumed(key, self.region)
        if given is None:
            raise Unknown(key)
        return given.value

    def given(self, key: str) -> Given | None:
        """The value under "section.key" with its text and basis; what the model assumes where the design says nothing; None for unknown."""
        if key in self.values:
            return self.values[key]
        return _assumed(key, self.region)

    def having(self, key: str, text, basis: str = "yours") -> Design:
        """The same design with one value changed, or taken out with text None. Raises InputError."""
        section, _, name = key.partition(".")
        values = {k: v for k, v in self.values.items() if k != key}
        if text is not None:
            values[key] = Given(field_of(section, name).read(text, key, self.region), text, basis)
        return replace(self, values=values)

    def turned(self, kind: str) -> Design:
        """What is known here, as far as a design of another kind has a place for it. Raises InputError for an unknown kind."""
        places = {f"{section}.{name}" for section, fields in sections(blank_design(kind, self.title).kind).items() for name in fields}
        return replace(self, kind=kind, values={key: given for key, given in self.values.items() if key in places})

    def headed(self, key: str, words: str) -> Design:
        """The same design with another title, note or region. Raises InputError."""
        check_head({key: words})
        changed: dict[str, Any] = {key: words}
        return replace(self, **changed)


@cache
def _assumed(key: str, region: str) -> Given | None:
    """What counts until a design says something else, where there is such a value."""
    section, _, name = key.partition(".")
    known: Any = SECTIONS[section][name]  # a key that no design can have is our own mistake
    assumed = usual(known, region)
    return Given(known.read(assumed, key), assumed, known.basis) if assumed else None


def check_head(table: dict) -> None:
    """Kind, region, title and note must be what they can be. Raises InputError."""
    for key, options in (("kind", tuple(KINDS)), ("region", REGIONS)):
        if table.get(key, options[0]) not in options:
            raise InputError(f"{key} = {clipped(as_toml(table[key]))} is not known: write one of {', '.join(map(repr, options))}")
    for key in ("title", "note"):
        if not isinstance(table.get(key, ""), str):
            raise InputError(f"{key} is a text: write {key} = 'words'")
        words = table.get(key, "words")
        if key == "title" and not words.strip():
            raise InputError(f"{key} must be words that can be printed: write {key} = 'words'")
        if wrong := _unprintable(words):
            raise InputError(f"{key} has {wrong}, which cannot be printed: leave it out")
        if len(words) > _LONGEST[key]:
            raise InputError(f"{key} has {len(words)} characters, and takes {_LONGEST[key]} at most: make it shorter")


def _unprintable(words: str) -> str:
    """The first sign in a line that cannot be printed, by its name and place; empty where there is none. A space of whatever width can be."""
    for at, sign in enumerate(words):
        if clean(sign) == " " and unicodedata.category(sign) != "Zs":
            name = {"\t": "a tab", "\n": "a line break", "\r": "a line break"}.get(sign) or f"the sign U+{ord(sign):04X}"
            return f"{name} {f'after {clipped(words[max(at - 20, 0) : at])!r}' if at else 'at its beginning'}"
    return ""


def field_of(section: str, key: str):
    if section not in SECTIONS:
        raise InputError(f"there is no section [{clipped(section)}] in a design.{nearest(section, SECTIONS)} It has: {', '.join(SECTIONS)}")
    if now := RENAMED.get(f"{section}.{key}"):
        raise InputError(f"{section}.{key} is called {now} now")
    if key not in SECTIONS[section]:
        raise InputError(f"[{section}] has no key '{clipped(key)}'.{nearest(key, SECTIONS[section])} It has: {', '.join(SECTIONS[section])}")
    return SECTIONS[section][key]


def blank_design(kind: str, title: str) -> Design:
    """A design of which nothing is known but its kind. Raises InputError for an unknown kind."""
    if kind not in KINDS:
        raise InputError(f"there is no kind of feature '{clipped(kind)}'.{nearest(kind, KINDS)} Write one of {', '.join(map(repr, KINDS))}")
    return Design(kind, title)
