"""The steps of a derivation, as data; `derivation` verifies them."""

from __future__ import annotations

from dataclasses import dataclass

from brimwork.sources import Citation


@dataclass(frozen=True)
class Law:
    """A law of nature or geometry, taken as given: named and sourced, never proved here."""

    name: str
    relation: str
    source: Citation
    holds: str = ""


@dataclass(frozen=True)
class Take:
    """A modelling choice that names one new quantity: "we take ..."."""

    reason: str
    relation: str


@dataclass(frozen=True)
class Step:
    """Both sides agree once all earlier definitions are put in. Without a relation: the formula itself."""

    reason: str
    relation: str = ""


@dataclass(frozen=True)
class Rearrange:
    """The last equation said in another way: the same up to a factor that is never zero. Both sides may be sums; it takes that equation's place."""

    reason: str
    relation: str


@dataclass(frozen=True)
class Eliminate:
    """The letters `out` are solved out of the earlier equations; `relation` is what remains."""

    reason: str
    out: tuple[str, ...]
    relation: str = ""


@dataclass(frozen=True)
class Solve:
    """An earlier equation (that for the letter `of`, else the last) solved for another letter; verified by putting back."""

    reason: str
    of: str = ""
    relation: str = ""


@dataclass(frozen=True)
class Optimum:
    """`of` has its greatest or smallest value ("max", "min") over one letter at `relation`."""

    reason: str
    of: str
    kind: str
    relation: str


@dataclass(frozen=True)
class Approach:
    """As `letter` goes to `to`, both sides of `relation` tend to the same."""

    reason: str
    letter: str
    to: str
    relation: str = ""


@dataclass(frozen=True)
class Ode:
    """A solution of the differential equations that stand before, with its boundary values: (where, what) pairs."""

    reason: str
    relation: str
    at: tuple[tuple[str, str], ...]
