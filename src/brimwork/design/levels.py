"""Water levels and built levels of a design, all to the finished paving (0), and the order in which they must stand."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from brimwork.design.inputs import Design, Unknown

CLOSE = 0.020  # metres; a gap below this is marginal: judgement


@dataclass(frozen=True)
class Level:
    """A level in metres to the finished paving; `water` levels are drawn with a triangle."""

    name: str
    height: float
    water: bool


def _floor(d: Design) -> float:
    return d["levels.block_top"] - d["reservoir.block_height"]


def _base(d: Design) -> float:
    """Where the vessel stands."""
    return d["levels.block_top"] + (d["slab.thickness"] if d["vessel.stands_on"] == "slab" else 0.0)


_HEIGHTS: dict[str, tuple[bool, Callable[[Design], float]]] = {
    "formation": (False, lambda d: _floor(d) - d["ground.lining"] - d["ground.sand"] - d["ground.sub_base"]),
    "reservoir floor": (False, _floor),
    "lowest water": (True, lambda d: _floor(d) + d["reservoir.lowest_level"]),
    "running water": (True, lambda d: _floor(d) + d["reservoir.running_level"]),
    "static water": (True, lambda d: _floor(d) + d["reservoir.static_level"]),
    "overflow": (True, lambda d: _floor(d) + d["reservoir.overflow_level"]),
    "block top": (False, lambda d: d["levels.block_top"]),
    "staple line": (False, lambda d: d["levels.staple_line"]),
    "liner edge": (False, lambda d: d["levels.liner_edge"]),
    "vessel base": (False, _base),
    "rim": (False, lambda d: _base(d) + d["vessel.height"]),
}
# Each pair: the first stands below the second (or, for the last two, not above it).
ORDER = (
    ("formation", "reservoir floor"), ("reservoir floor", "lowest water"), ("lowest water", "running water"), ("running water", "static water"),
    ("static water", "overflow"), ("overflow", "staple line"), ("staple line", "liner edge"), ("overflow", "block top"), ("block top", "vessel base"),
    ("vessel base", "rim"),
)  # fmt: skip
MAY_TOUCH = {("block top", "vessel base")}


def height(design: Design, name: str) -> float:
    """Level in metres to the finished paving. Raises Unknown with the missing keys."""
    return _HEIGHTS[name][1](design)


def levels(design: Design) -> list[Level]:
    """The levels that are known, from the lowest up."""
    found = []
    for name, (water, of) in _HEIGHTS.items():
        try:
            found.append(Level(name, of(design), water))
        except Unknown:
            continue
    return sorted(found, key=lambda level: level.height)


def gaps(design: Design) -> list[tuple[str, str, float]]:
    """Every pair of ORDER with its gap in metres. Raises Unknown."""
    return [(low, high, height(design, high) - height(design, low)) for low, high in ORDER]
