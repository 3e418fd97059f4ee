"""The kinds of feature, and the sections that a design of each kind has."""

from __future__ import annotations

_REST = (
    "flow",
    "reservoir",
    "pump",
    "pipe",
    "levels",
    "ground",
    "catch",
    "overflow_pipe",
    "lining",
    "climate",
    "supply",
    "buying",
    "prices",
    "costing",
    "programme",
    "assumptions",
    "measured",
    "answers",
    "limits",
)
# kind of feature: the sections that a design of that kind has, in the order in which they are shown
KINDS: dict[str, tuple[str, ...]] = {
    "overflowing vessel": ("site", "vessel", "slab", *_REST),
    "drilled stones": ("site", "stones", "slab", *_REST),
    "blade": ("site", "blade", *_REST),
    "cascade": ("site", "cascade", *_REST),
}
