"""What is near, in plan: the nearest footing and tree, and the overflow pipe to where it ends; each drawn where the design says its place, or an arrow towards it."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Any

from brimwork.design.follows.chain import Chain
from brimwork.design.typed.asking import Refused, tried
from brimwork.drawing.lettering import Lettering
from brimwork.drawing.pictures.paper import circle
from brimwork.drawing.plan_supply import MARK, arrow, inside, point_mark
from brimwork.drawing.records import Line, Point, Polygon, Record
from brimwork.drawing.sizes import known_of


@dataclass(frozen=True)
class _Thing:
    """One of them: its name, the keys of its place, from where it is measured, where it is, and its line."""

    name: str
    keys: tuple[str, str]
    start: Callable[[Any], Point]
    end: Callable[[Any], Point]
    line: str


_THINGS = (
    _Thing("footing", ("site.footing_along", "site.footing_across"), lambda g: g.beside_pit(g.footing), lambda g: g.footing, "dimension"),
    _Thing("tree", ("site.tree_along", "site.tree_across"), lambda g: g.beside_pit(g.tree), lambda g: g.tree, "dimension"),
    _Thing("overflow", ("overflow_pipe.end_along", "overflow_pipe.end_across"), lambda g: g.overflow_start, lambda g: g.overflow_end, "hidden"),
)
_SAID = {"footing": "The nearest footing", "tree": "The nearest tree", "overflow": "The end of the overflow pipe"}


@dataclass(frozen=True)
class Near:
    """What is drawn of it, what is labelled, sentences under the plan, and rows of the table."""

    records: tuple[Record, ...]
    labels: tuple[tuple[Point, str, str], ...]
    sentences: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def placed(chain: Chain) -> list[tuple[_Thing, Point, Point]]:
    """Those whose place is known, each with where its distance begins and where it is (m)."""
    found = []
    for thing in _THINGS:
        if known_of(chain.design, *thing.keys):
            got = tried(partial(_ends, thing, chain))
            if not isinstance(got, Refused):
                found.append((thing, *got))
    return found


def _ends(thing: _Thing, chain: Chain) -> tuple[Point, Point]:
    return thing.start(chain.geometry), thing.end(chain.geometry)


def near_label(thing: _Thing, start: Point, end: Point, lettering: Lettering) -> str:
    far = lettering.figure(math.dist(start, end))
    return f"overflow, {far} long" if thing.name == "overflow" else f"{thing.name}, {far} off the pit"


def what_is_near(chain: Chain, lettering: Lettering, window: tuple[float, float, float, float], scale: float) -> Near:
    """What is near, as far as it lies within the `window` (m); `scale` in mm of paper for a metre."""
    records: list[Record] = []
    labels, sentences, rows = [], [], []
    for thing, start, end in placed(chain):
        share = inside(start, end, window, 2 * MARK / scale)
        stop = (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))
        length = math.dist(start, end) or 1.0
        ahead = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
        mark = arrow(stop, ahead, scale) if share < 1.0 else _stem(chain, end) if thing.name == "tree" else point_mark(end, scale)
        records += [Line((start, stop), thing.line, thing.keys[0]), *mark]
        labels.append((stop, near_label(thing, start, end, lettering), thing.keys[0]))
        sentences.append(f"{_SAID[thing.name]} lies {lettering.from_the_middle(end)} the middle of the blocks.")
        rows.append((f"{_SAID[thing.name].lower()} off the middle of the blocks", *map(lettering.level, end)))
    return Near(tuple(records), tuple(labels), tuple(sentences), tuple(rows))


def _stem(chain: Chain, at: Point) -> list[Record]:
    """The stem as wide as it is; where nobody says how wide, its middle."""
    known = known_of(chain.design, "site.tree_stem")
    return [Polygon(circle(known[0] / 2, at), "paper", "outline", "site.tree_stem")] if known and known[0] else []
