"""The design file: read, checked key by key, changed, and saved so that a killed program leaves the old file or the new one, never half of one."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass, field, replace
from functools import cache
from pathlib import Path

from brimwork.design.fields import BASES, HEAD, KINDS, REGIONS, SECTIONS, sections, usual
from brimwork.files import write_whole
from brimwork.spellings import nearest
from brimwork.units import InputError

FORMAT = 1
LARGEST_FILE = 1_000_000


@dataclass(frozen=True)
class Given:
    """A value of the design: SI number, word or list; the text it was written as; its basis."""

    value: object
    text: object
    basis: str = "yours"


class Unknown(Exception):
    """A result cannot be worked out: `keys` of the design are missing."""

    def __init__(self, *keys: str):
        super().__init__(*keys)
        self.keys = keys


@dataclass(frozen=True)
class Design:
    """What is known of a design: head entries, and values by "section.key". A missing value is unknown, never assumed."""

    kind: str
    title: str
    region: str = "UK"
    note: str = ""
    values: dict[str, Given] = field(default_factory=dict)

    def __getitem__(self, key: str):
        """The SI value, word or list under "section.key", else the usual one that is assumed. Raises Unknown where there is neither."""
        given = self.given(key)
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
            values[key] = Given(_field(section, name).read(text, key, self.region), text, basis)
        return replace(self, values=values)

    def turned(self, kind: str) -> Design:
        """What is known here, as far as a design of another kind has a place for it. Raises InputError for an unknown kind."""
        places = {f"{section}.{name}" for section, fields in sections(blank(kind, self.title).kind).items() for name in fields}
        return replace(self, kind=kind, values={key: given for key, given in self.values.items() if key in places})

    def headed(self, key: str, words: str) -> Design:
        """The same design with another title, note or region. Raises InputError."""
        _check_head({key: words})
        return replace(self, **{key: words})


@cache
def _assumed(key: str, region: str) -> Given | None:
    """What counts until a design says something else, where there is such a value."""
    section, _, name = key.partition(".")
    known = SECTIONS[section][name]  # a key that no design can have is our own mistake
    assumed = usual(known, region)
    return Given(known.read(assumed, key), assumed, known.basis) if assumed else None


def _check_head(table: dict) -> None:
    """Kind, region, title and note must be what they can be. Raises InputError."""
    for key, options in (("kind", tuple(KINDS)), ("region", REGIONS)):
        if table.get(key, options[0]) not in options:
            raise InputError(f"{key} = {table[key]!r} is not known: write one of {', '.join(map(repr, options))}")
    for key in ("title", "note"):
        if not isinstance(table.get(key, ""), str):
            raise InputError(f"{key} is a text: write {key} = 'words'")
        if not table.get(key, "words").isprintable() or (key == "title" and not table.get(key, "words").strip()):
            raise InputError(f"{key} must be words that can be printed: write {key} = 'words'")


def _field(section: str, key: str):
    if section not in SECTIONS:
        raise InputError(f"there is no section [{section}] in a design.{nearest(section, SECTIONS)} It has: {', '.join(SECTIONS)}")
    if key not in SECTIONS[section]:
        raise InputError(f"[{section}] has no key '{key}'.{nearest(key, SECTIONS[section])} It has: {', '.join(SECTIONS[section])}")
    return SECTIONS[section][key]


def blank(kind: str, title: str) -> Design:
    """A design of which nothing is known but its kind. Raises InputError for an unknown kind."""
    if kind not in KINDS:
        raise InputError(f"there is no kind of feature '{kind}'.{nearest(kind, KINDS)} Write one of {', '.join(map(repr, KINDS))}")
    return Design(kind, title)


def load(path: str | Path) -> Design:
    """The design in a file. Raises InputError that names the file and what to change in it."""
    path = Path(path)
    try:
        if path.stat().st_size > LARGEST_FILE:
            raise InputError(f"it is larger than {LARGEST_FILE // 1000} kB, which no design is")
        return parse(path.read_text(encoding="utf-8-sig"))
    except OSError as error:
        raise InputError(f"{path} cannot be read ({error.strerror}): give the name of a design file, such as designs/library-bowl.toml") from None
    except (InputError, UnicodeDecodeError) as error:
        told = error if isinstance(error, InputError) else "it is not a text file in UTF-8"
        raise InputError(f"{path}: {told}") from None


def parse(text: str) -> Design:
    """The design that a TOML text says. Raises InputError for broken TOML, an unknown or missing key, a value that cannot be."""
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise InputError(f"this is not TOML: {error}") from None
    except RecursionError:
        raise InputError("this is not a design: its brackets are nested too deep") from None
    if table.get("format") != FORMAT:
        raise InputError(f"format = {table.get('format', 'nothing')!r}, but this edition reads format = {FORMAT}: write 'format = {FORMAT}' on the first line")
    if "kind" not in table:
        raise InputError(f"the key 'kind' is missing: write kind = one of {', '.join(map(repr, KINDS))}")
    _check_head(table)
    values: dict[str, Given] = {}
    for section, entries in table.items():
        if section in HEAD:
            continue
        if not isinstance(entries, dict):
            raise InputError(f"there is no key '{section}' at the top of a design.{nearest(section, (*HEAD, *SECTIONS))}")
        if section in SECTIONS and section not in sections(table["kind"]):
            raise InputError(f"a design of the kind '{table['kind']}' has no section [{section}]. It has: {', '.join(sections(table['kind']))}")
        for key, entry in entries.items():
            values[f"{section}.{key}"] = _given(section, key, entry, table.get("region", "UK"))
    return Design(table["kind"], table.get("title", "Untitled design"), table.get("region", "UK"), table.get("note", ""), values)


def _given(section: str, key: str, entry, region: str) -> Given:
    """One value: bare, or {value = "...", basis = "read"}."""
    known, name, basis = _field(section, key), f"{section}.{key}", "yours"
    if isinstance(entry, dict):
        extra = sorted(set(entry) - {"value", "basis"})
        if extra or "value" not in entry:
            raise InputError(f"{name} has {', '.join(extra) or 'no value'}: write {name} = {{ value = ..., basis = 'read' }}")
        basis = entry.get("basis", "yours")
        if basis not in BASES:
            raise InputError(f"{name}: basis {basis!r} is not known: write one of {', '.join(map(repr, BASES))}")
        entry = entry["value"]
    return Given(known.read(entry, name, region), entry, basis)


def dump(design: Design, text: str = "") -> str:
    """The design as TOML; with the `text` it was read from, that text's comments and order are kept."""
    import tomlkit

    document = tomlkit.parse(text) if text else tomlkit.document()
    head = {"format": FORMAT, "kind": design.kind, "title": design.title, "region": design.region, "note": design.note}
    for key, value in head.items():
        if document.get(key) != value and (value or key in document):
            document[key] = value
    for section in SECTIONS:
        mine = {key.partition(".")[2]: given for key, given in design.values.items() if key.startswith(section + ".")}
        if not mine and section not in document:
            continue
        table = document.setdefault(section, tomlkit.table())
        for key in [key for key in table if key not in mine]:
            del table[key]
        for key, given in mine.items():
            entry = given.text if given.basis == "yours" else _tagged(given)
            if key not in table or table[key] != entry:
                table[key] = entry
    return tomlkit.dumps(document)


def _tagged(given: Given):
    import tomlkit

    entry = tomlkit.inline_table()
    entry.update({"value": given.text, "basis": given.basis})
    return entry


def _written_over(text: str, path: Path) -> Design:
    """The design that is to be written over; never a file that is something else."""
    try:
        return parse(text)
    except InputError as error:
        raise InputError(f"{path} is there already and is not a design that can be read ({error}): save under another name") from None


def save(design: Design, path: str | Path) -> None:
    """Write the design: the whole file or nothing. Comments of a design of its kind that is there already are kept. Raises InputError."""
    path = Path(path)
    try:
        before = path.read_text(encoding="utf-8-sig") if path.exists() else ""
        if before and _written_over(before, path).kind != design.kind:
            before = ""
        text = dump(design, before)
        parse(text)  # never write what could not be read again
        write_whole(path, text.encode())
    except UnicodeDecodeError:
        raise InputError(f"{path} is not a design: save under another name") from None
    except OSError as error:
        raise InputError(f"{path} cannot be written ({error.strerror}); your old file is as it was: save under another name") from None
