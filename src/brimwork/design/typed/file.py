"""The design file: read, checked key by key, and saved so that a killed program leaves the old file or the new one, never half of one."""

from __future__ import annotations

import errno
import os
import tomllib
from pathlib import Path

from brimwork import files
from brimwork.design.typed.design import Design, check_head, field_of
from brimwork.design.typed.fields import BASES, HEAD, SECTIONS, sections
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.known import Given
from brimwork.design.typed.merging import Conflict, merged
from brimwork.design.typed.renamed import DROPPED, now_called
from brimwork.shown import clipped
from brimwork.spellings import nearest
from brimwork.units import InputError

_FORMAT = 1
LARGEST_FILE = 250_000
_LONGEST_NAME = 300  # of a file, in a sentence
MOST_TRIES = 20  # to save while another program writes too
_A_NAME = "give the name of a design file, such as designs/library-bowl.toml"


def load_design(path: str | Path) -> Design:
    """The design in a file. Raises InputError that names the file and what to change in it."""
    raw, shown = _raw(Path(path)), _named(path)
    if raw is None:
        raise InputError(f"{shown} cannot be read ({os.strerror(errno.ENOENT)}): {_A_NAME}")
    return _read(raw, shown)


def _named(path: str | Path) -> str:
    return clipped(str(path), _LONGEST_NAME)


def _raw(path: Path) -> bytes | None:
    """What is in a file; None where there is none. Raises InputError for what cannot be read or is no design by its size."""
    try:
        raw = files.read_bounded(path, LARGEST_FILE)
    except FileNotFoundError:
        return None
    except OSError as error:
        raise InputError(f"{_named(path)} cannot be read ({error.strerror}): {_A_NAME}") from None
    if len(raw) > LARGEST_FILE:
        raise InputError(f"{_named(path)}: it is larger than {LARGEST_FILE // 1000} kB, which no design is")
    return raw


def _read(raw: bytes, shown: str) -> Design:
    try:
        return parse_design(raw.decode("utf-8-sig"))
    except (InputError, UnicodeDecodeError) as error:
        told = error if isinstance(error, InputError) else files.not_toml(error)
        raise InputError(f"{shown}: {told}") from None


def parse_design(text: str) -> Design:
    """The design that a TOML text says. Raises InputError for broken TOML, an unknown or missing key, a value that cannot be."""
    if len(text) > LARGEST_FILE:
        raise InputError(f"it is larger than {LARGEST_FILE // 1000} kB, which no design is")
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise InputError(clipped(files.not_toml(error), _LONGEST_NAME)) from None
    except ValueError:
        raise InputError("this is not a design: a number in it has more digits than can be meant") from None
    except RecursionError:
        raise InputError("this is not a design: its brackets are nested too deep") from None
    if table.get("format") != _FORMAT:
        raise InputError(
            f"format = {clipped(table.get('format', 'nothing'))}, but this edition reads format = {_FORMAT}: write 'format = {_FORMAT}' on the first line"
        )
    if "kind" not in table:
        raise InputError(f"the key 'kind' is missing: write kind = one of {', '.join(map(repr, KINDS))}")
    check_head(table)
    values: dict[str, Given] = {}
    renamed: tuple[str, ...] = ()
    for section, entries in table.items():
        if section in HEAD:
            continue
        if section in SECTIONS and isinstance(entries, list):
            raise InputError(f"[{section}] stands once in a design: write it with one bracket on each side")
        if not isinstance(entries, dict):
            raise InputError(f"there is no key '{clipped(section)}' at the top of a design.{nearest(section, (*HEAD, *SECTIONS))}")
        if section in SECTIONS and section not in sections(table["kind"]):
            raise InputError(f"a design of the kind '{table['kind']}' has no section [{section}]. It has: {', '.join(sections(table['kind']))}")
        for key, entry in entries.items():
            if f"{section}.{key}" in DROPPED:
                renamed += (f"{section}.{key}",)
                continue
            now = now_called(f"{section}.{key}", table)
            values[now] = _given(section, now.partition(".")[2], entry, table.get("region", "UK"))
            renamed += (f"{section}.{key}",) if now != f"{section}.{key}" else ()
    return Design(table["kind"], table.get("title", "Untitled design"), table.get("region", "UK"), table.get("note", ""), values, renamed)


def _given(section: str, key: str, entry, region: str) -> Given:
    """One value: bare, or {value = "...", basis = "read"}."""
    known, name, basis = field_of(section, key), f"{section}.{key}", "yours"
    if isinstance(entry, dict):
        extra = sorted(set(entry) - {"value", "basis"})
        if extra or "value" not in entry:
            has = f"the key {clipped(', '.join(extra))}" if extra else "no value"
            raise InputError(f"{name} has {has}: write {name} = {{ value = ..., basis = 'read' }}")
        basis = entry.get("basis", "yours")
        if basis not in BASES:
            raise InputError(f"{name}: basis {clipped(basis)!r} is not known: write one of {', '.join(map(repr, BASES))}")
        entry = entry["value"]
    return Given(known.read(entry, name, region), entry, basis)


def dump_design(design: Design, text: str = "") -> str:
    """The design as TOML; with the `text` it was read from, that text's comments and order are kept."""
    head: dict[str, str | int] = {"format": _FORMAT, "kind": design.kind, "title": design.title, "region": design.region, "note": design.note}
    if not text:
        return _afresh({key: value for key, value in head.items() if value}, design.values)
    import tomlkit

    document = tomlkit.parse(text)
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


def _afresh(head: dict[str, str | int], values: dict[str, Given]) -> str:
    """A design as TOML where there are no comments to keep: after each change, so it is written without the library that keeps them."""
    lines = [f"{key} = {files.as_toml(value)}" for key, value in head.items()]
    by_section: dict[str, list[str]] = {section: [] for section in SECTIONS}
    for name, given in values.items():
        section, _, key = name.partition(".")
        entry = files.as_toml(given.text)
        by_section[section].append(f"{key} = {entry}" if given.basis == "yours" else f"{key} = {{value = {entry}, basis = {files.as_toml(given.basis)}}}")
    for section, made in by_section.items():
        lines += ["", f"[{section}]", *made] if made else []
    return "\n".join([*lines, ""])


def _tagged(given: Given):
    import tomlkit

    entry = tomlkit.inline_table()
    entry.update({"value": given.text, "basis": given.basis})
    return entry


def save_design(design: Design, path: str | Path, base: Design | None = None) -> Design:
    """Write the design, the whole file or nothing, and return what is in the file then.

    With the `base` that the design began as, what somebody else has changed in the file since is kept; where both changed a value, Conflict is raised
    and nothing written. Without a base the file is replaced. Comments of a design of its kind
    that is there already are kept. Raises InputError.
    """
    path = Path(path)
    for _ in range(MOST_TRIES):
        was = _raw(path)
        theirs = _written_over(was, path) if was else None
        after = design
        if base is not None and theirs is not None:
            after, both = merged(base, design, theirs)
            if both:
                raise Conflict(_named(path), both, theirs)
        text = dump_design(after, was.decode("utf-8-sig") if was and theirs and theirs.kind == after.kind else "")
        written = parse_design(text)  # never write what could not be read again
        try:
            files.write_instead(path, was, text.encode())
        except files.Meanwhile:
            continue
        except OSError as error:
            raise InputError(f"{_named(path)} cannot be written ({error.strerror}); your old file is as it was: save under another name") from None
        return written
    raise InputError(f"{_named(path)} is written by another program all the time; your old file is as it was: save under another name")


def _written_over(raw: bytes, path: Path) -> Design:
    """The design that is to be written over; never a file that is something else."""
    try:
        return parse_design(raw.decode("utf-8-sig"))
    except UnicodeDecodeError:
        raise InputError(f"{_named(path)} is not a design: save under another name") from None
    except InputError as error:
        raise InputError(f"{_named(path)} is there already and is not a design that can be read ({error}): save under another name") from None
