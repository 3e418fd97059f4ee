"""Water levels and built levels of a design, all to the finished paving (0), and the order in which they must stand."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from brimwork.design.typed.design import Design
from brimwork.design.typed.known import Unknown

_CLOSE = 0.020  # metres; a gap below this is marginal: judgement


@dataclass(frozen=True)
class KnownLevel:
    """A level in metres to the finished paving; `water` levels are drawn with a triangle."""

    name: str
    height: float
    water: bool

    @property
    def kind(self) -> str:
        """What it is a level of: "water" in the reservoir, the "ground" round it, or what is "built"."""
        return "ground" if self.name in IN_THE_GROUND else "water" if self.water else "built"


def _floor(d: Design) -> float:
    return d["levels.block_top"] - d["reservoir.block_height"]


def _cover(d: Design) -> float:
    """Thickness of the slab or grid all over the blocks, where the design has one."""
    given = d.given("reservoir.cover")
    return given.value if given else 0.0


def _base(d: Design) -> float:
    """Where the vessel stands."""
    return d["levels.block_top"] + _cover(d) + (d["slab.thickness"] if d["vessel.stands_on"] == "slab" else 0.0)


def _stone_base(d: Design) -> float:
    return d["levels.block_top"] + _cover(d) + (d["slab.thickness"] if d["stones.stand_on"] == "slabs" else 0.0)


def _ground_water(d: Design) -> float:
    above = d["site.ground_water"]
    if not above:
        raise Unknown("site.ground_water")  # it does not reach the floor: how deep it stands nobody said
    return _floor(d) + above


def _frost_line(d: Design) -> float:
    depth = d["site.frost_depth"]
    if not depth:
        raise Unknown("site.frost_depth")  # no frost enters the ground
    return -depth


# Levels of the ground round the pit, for drawings and tables: they have no place in the order of the built ones.
IN_THE_GROUND: dict[str, tuple[bool, Callable[[Design], float]]] = {"ground water": (True, _ground_water), "frost line": (False, _frost_line)}
# Levels that not every design has: named and put in order where it does.
_WHERE_GIVEN = {"pump intake": "pump.intake_level", "cut-out": "reservoir.cut_out_level", "top-up": "reservoir.top_up_level"}
_HEIGHTS: dict[str, tuple[bool, Callable[[Design], float]]] = {
    "formation": (False, lambda d: _floor(d) - d["ground.lining_thickness"] - d["ground.sand"] - d["ground.sub_base"]),
    "reservoir floor": (False, _floor),
    "pump intake": (False, lambda d: _floor(d) + d["pump.intake_level"]),
    "cut-out": (True, lambda d: _floor(d) + d["reservoir.cut_out_level"]),
    "top-up": (True, lambda d: _floor(d) + d["reservoir.top_up_level"]),
    "lowest water": (True, lambda d: _floor(d) + d["reservoir.lowest_level"]),
    "running water": (True, lambda d: _floor(d) + d["reservoir.running_level"]),
    "static water": (True, lambda d: _floor(d) + d["reservoir.static_level"]),
    "overflow": (True, lambda d: _floor(d) + d["reservoir.overflow_level"]),
    "block top": (False, lambda d: d["levels.block_top"]),
    "stone top": (False, lambda d: d["levels.block_top"] + _cover(d) + d["catch.stone_thickness"]),
    "staple line": (False, lambda d: d["levels.staple_line"]),
    "liner edge": (False, lambda d: d["levels.liner_edge"]),
    **IN_THE_GROUND,
}
# What stands above, for each kind of feature.
_ABOVE: dict[str, dict[str, tuple[bool, Callable[[Design], float]]]] = {
    "overflowing vessel": {"vessel base": (False, _base), "rim": (False, lambda d: _base(d) + d["vessel.height"])},
    "drilled stones": {"stone base": (False, _stone_base), "top of the highest stone": (False, lambda d: _stone_base(d) + max(d["stones.heights"]))},
    "cascade": {"header lip": (False, lambda d: d["cascade.top_level"])},
    "blade": {"splash stone": (False, lambda d: d["blade.stone_level"]), "lip": (False, lambda d: d["blade.lip_level"])},
}
# Each pair: the first stands below the second (those of MAY_TOUCH not above it).
_ORDER = (
    ("formation", "reservoir floor"), ("reservoir floor", "pump intake"), ("pump intake", "lowest water"), ("reservoir floor", "lowest water"),
    ("lowest water", "cut-out"), ("cut-out", "top-up"), ("cut-out", "running water"), ("top-up", "static water"),
    ("lowest water", "running water"), ("running water", "static water"),
    ("static water", "overflow"), ("overflow", "staple line"), ("staple line", "liner edge"), ("overflow", "block top"),
)  # fmt: skip
_ORDER_ABOVE = {
    "overflowing vessel": (("block top", "vessel base"), ("vessel base", "rim"), ("stone top", "rim")),
    "drilled stones": (("block top", "stone base"), ("stone base", "top of the highest stone"), ("stone top", "top of the highest stone")),
    "cascade": (("block top", "header lip"), ("stone top", "header lip")),
    "blade": (("block top", "splash stone"), ("splash stone", "lip"), ("stone top", "lip")),
}
MAY_TOUCH = {
    ("block top", "vessel base"),
    ("block top", "stone base"),
    ("block top", "splash stone"),
    ("staple line", "liner edge"),
    ("lowest water", "cut-out"),
    ("overflow", "block top"),
    ("running water", "static water"),  # they are as far apart as the level drops on the start
}


def height_of(design: Design, name: str) -> float:
    """Level in metres to the finished paving. Raises Unknown with the missing keys."""
    return _all(design)[name][1](design)


def _all(design: Design) -> dict[str, tuple[bool, Callable[[Design], float]]]:
    return _HEIGHTS | _ABOVE[design.kind]


def levels(design: Design) -> list[KnownLevel]:
    """The levels that are known, from the lowest up."""
    found = []
    for name, (water, of) in _all(design).items():
        try:
            found.append(KnownLevel(name, of(design), water))
        except Unknown:
            continue
    return sorted(found, key=lambda level: level.height)


def gaps(design: Design) -> list[tuple[str, str, float]]:
    """Every pair that has an order, with its gap in metres; of the levels that not every design has, those that this one has. Raises Unknown."""
    absent = {name for name, key in _WHERE_GIVEN.items() if key not in design.values}
    pairs = [pair for pair in (*_ORDER, *_ORDER_ABOVE[design.kind]) if not absent & set(pair)]
    return [(low, high, height_of(design, high) - height_of(design, low)) for low, high in pairs]
