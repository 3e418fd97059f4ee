"""The only door to the product: a design's text in, its results and findings out. Everything else in this folder works without it."""

from functools import cache
from typing import NamedTuple

from brimwork.design.done.quantities import quantities
from brimwork.design.follows.features import chain_of
from brimwork.design.judged.checks import findings
from brimwork.design.typed.design import blank_design
from brimwork.design.typed.fields import sections
from brimwork.design.typed.file import parse_design
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.reading import usual
from brimwork.design.typed.spans import SPANS
from brimwork.units import InputError

__all__ = ["InputError", "Told", "bought", "fields", "names", "ranges"]


class Told:
    """What the product says of a design: `results` by name, why others are `missing` or `refused`, and the `findings` by id."""

    def __init__(self, text: str, only: set[str] | None = None):
        self.chain = chain_of(parse_design(text))
        self.results, self.missing, self.refused = {}, {}, {}
        for name in type(self.chain).names():
            if only is not None and name not in only:
                continue
            try:
                self.results[name] = getattr(self.chain, name)
            except Unknown as unknown:
                self.missing[name] = unknown.keys
            except InputError as refused:
                self.refused[name] = str(refused)

    @property
    def findings(self) -> dict:
        """By id; of two rows with one id the one that applies."""
        found = findings(self.chain)
        return {one.id: one for one in sorted(found, key=lambda one: one.grade != "does not apply")}


def bought(text: str) -> tuple[dict[str, float], dict[str, str], set[str]]:
    """How many of everything are bought, by the key of its price (lengths in m); what else is told of a line, by its words; the keys of lines that are not known."""
    counts: dict[str, float] = {}
    chain = chain_of(parse_design(text))
    lines = quantities(chain)
    for line in lines:
        if line.key and line.count is not None:
            counts[line.key] = counts.get(line.key, 0) + line.count
    return counts, {line.item: line.net for line in lines}, {line.item for line in lines if not line.known}


class Shape(NamedTuple):
    """How a value is typed: its words where it is one of a few, an example, what counts without it, whether it is whole, below zero too, one or a list."""

    words: tuple[str, ...]
    such: object
    usual: object
    whole: bool
    signed: bool
    shape: str


def names(kind: str) -> set[str]:
    """Every result that a design of that kind can have."""
    return {*type(chain_of(blank_design(kind, "x"))).names()}


@cache
def fields(kind: str) -> dict[str, Shape]:
    """Every value that a design of that kind can give, by "section.key"."""
    return {f"{section}.{key}": _shape(one) for section, keys in sections(kind).items() for key, one in keys.items()}


EXAMPLES = {
    "Date": "2027-03-01", "Dates": ["2027-12-24", "2027-12-27"], "Bounds": None, "Several": None, "Curve": [["0 L/min", "3 m"], ["60 L/min", "0 m"]], "Corners": [["-90 mm", "-90 mm"], ["90 mm", "-90 mm"], ["0 mm", "90 mm"]],
}  # fmt: skip


def _shape(one) -> Shape:
    name = type(one).__name__
    such = EXAMPLES.get(name)
    if name == "Bounds":
        such = one.usually() or one.hint().removeprefix("such as ")
    if name == "Several":
        such = one.such.split(", ")
    if name == "Field":
        such = _typed(one.suggested())
    given = usual(one, "UK")
    return Shape(getattr(one, "options", ()), such, _typed(given) if given and name == "Field" else given or None, getattr(one, "whole", False), getattr(one, "signed", False),
                 "one" if name == "Field" else name)  # fmt: skip


def _typed(text: str):
    """A number without a unit as a number, as TOML wants it."""
    try:
        return float(text) if "." in text else int(text)
    except ValueError:
        return text


def ranges(key: str) -> list:
    """The least and the most that one number can be, as typed; nothing for a list, a word or money."""
    row = SPANS.get(key)
    return [_typed(text) for text in (row.low, row.high)] if row and fields_of_any()[key].shape == "one" else []


@cache
def fields_of_any() -> dict[str, Shape]:
    return {key: what for kind in KINDS for key, what in fields(kind).items()}
