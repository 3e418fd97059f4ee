"""A sheet for the electrician: everything that is asked of one, what has been said so far, and room for the answers."""

from __future__ import annotations

from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import SECTIONS, sections
from brimwork.design.typed.reading import OneOf
from brimwork.design.typed.whom import BY_ELECTRICIAN, whom
from brimwork.design.typed.wording import spoken, worded
from brimwork.pack.markup import typst_table, typst_words
from brimwork.pack.rests import inputs_printed

_TOLD = (
    "pump.power",
    "pump.voltage",
    "pump.frequency",
    "supply.power_factor",
    "supply.cord",
    "supply.cord_route",
    "supply.hours_per_day",
)  # what he must know of the pump


def electrician(design: Design) -> str:
    """The page. A word that was not chosen is shown with those that it can be; a value nobody gave is left blank."""
    here = {f"{section}.{name}": field for section, fields in sections(design.kind).items() for name, field in fields.items()}
    told = [(_asked(key, design), _said(key, design) or "not known yet") for key in _TOLD if key in here]
    asked = [(_asked(key, design), _said(key, design), _choices(key, design)) for key in here if whom(key) == BY_ELECTRICIAN]
    words = "A qualified electrician fills in the last column, measures what must be measured, and signs. What is written here is typed into the steps Electricity and Questions to answer. This sheet asks; it designs no wiring: local codes and licensed practice govern."
    return "\n\n".join([
        "#pagebreak()\n== For the electrician\n" + typst_words(worded(words, design.region)),
        typst_table("1.6fr, 1fr", ("the pump, as it is known here", "said so far"), told),
        typst_table("1.6fr, 1fr, 1.2fr", ("asked of the electrician", "said so far", "answer"), asked),
        typst_words("Name, date, signature:") + " #box(width: 1fr, repeat[.])",
    ])  # fmt: skip


def _asked(key: str, design: Design) -> str:
    section, _, name = key.partition(".")
    words = spoken(SECTIONS[section][name].name, design.region)
    return f"{words[:1].upper()}{words[1:]}"


def _said(key: str, design: Design) -> str:
    section, _, name = key.partition(".")
    given = design.given(key)
    if given is None:
        return ""
    doubt = "" if given.basis in ("yours", "measured") else f" ({given.basis}: to be confirmed)"
    return f"{inputs_printed(SECTIONS[section][name], given, design.region)}{doubt}"


def _choices(key: str, design: Design) -> str:
    """What the answer can be, to ring one; nothing for a number, or for a list that is longer than a cell."""
    section, _, name = key.partition(".")
    field = SECTIONS[section][name]
    if isinstance(field, OneOf):
        return "ring one: " + " / ".join(spoken(one, design.region) for one in field.options) if len(field.options) <= 4 else ""
    return field.here(design.region) if hasattr(field, "here") else ""
