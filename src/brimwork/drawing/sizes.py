"""The sizes that section and plan of a design share, in metres, x along the blocks from their middle, levels to the finished paving."""

from __future__ import annotations

from brimwork.design.follows import levels
from brimwork.design.follows.chain import Chain
from brimwork.design.follows.flight import Flight
from brimwork.design.typed.design import Design
from brimwork.design.typed.known import Unknown
from brimwork.drawing.lettering import Lettering
from brimwork.units import InputError

WIDTH = 174.0  # mm of a sheet: what both A4 and Letter leave between margins of 18 mm, so that a printed scale is true
HEIGHT = 215.0  # mm: the tallest sheet of a design, which a page of Letter holds with its caption
TOO_LARGE = "it is larger than a sheet at the smallest scale: look for a length in a wrong unit"


class Sizes:
    """Box, pit, stone and levels. Raises Unknown with the keys that are missing."""

    def __init__(self, chain: Chain):
        d = chain.design
        self.level = {level.name: level.height for level in chain.levels_shown()}
        for name in ("formation", "reservoir floor", "static water", "block top"):
            levels.height_of(d, name)
        self.pit, self.box, self.blocks = (
            _pair(chain, "pit_length", "pit_width"),
            _pair(chain, "box_length", "box_width"),
            _pair(chain, "base_length", "base_width"),
        )
        self.board, self.sub_base, self.sand, self.lining = (d[f"ground.{name}"] for name in ("board", "sub_base", "sand", "lining_thickness"))
        self.block = (d["reservoir.block_length"], d["reservoir.block_width"], d["reservoir.block_height"])
        self.count = (round(d["reservoir.blocks_along"]), round(d["reservoir.blocks_across"]))
        self.box_top, self.stone = chain.box_top, d["catch.stone_thickness"]
        self.stone_top = levels.height_of(d, "stone top")
        self.cover = chain.thickness_of_cover
        self.reach = chain.geometry.stone_half  # where the stone ends
        self.bay = d["pump.bay"]
        if self.bay > min(self.blocks):
            given = d.given("pump.bay")
            raise InputError(f"the bay of the pump is wider than the blocks: look at pump.bay = {given.text if given else ''}")
        self.pump, self.bodies = chain.geometry.bay_middle, chain.bodies


def _pair(chain: Chain, along: str, across: str) -> tuple[float, float]:
    return getattr(chain, along), getattr(chain, across)


class Stairs(Flight):
    """A flight of steps, with what is dimensioned along it."""

    def spans(self, lettering: Lettering) -> list[tuple[float, float, str, float]]:
        """What is dimensioned along it: from x to x, the text, and how far over it the line stands, in mm of paper."""
        first, pools = self.lips[0][0], self.start - self.lips[0][0]
        each = lettering.figure(self.tread)
        whole = "" if " " in lettering.figure(pools) else f" = {lettering.figure(pools)}"  # with fractions there is no room between the lines
        treads = f"{self.steps} x {each}{whole}" if self.steps > 1 else f"tread {each}"
        spans = [(self.back, first, f"header {lettering.figure(first - self.back)}", 10.5), (first, self.start, treads, 4.5)]
        return [*spans, (self.start, self.end, f"rill {lettering.figure(self.rill[0])}", 10.5)] if self.rill else spans

    @property
    def span_keys(self) -> tuple[str, ...]:
        """The value that each of its spans shows."""
        return ("cascade.header_area", "cascade.tread", "cascade.rill_length")


def known_of(design: Design, *keys: str) -> tuple | None:
    """The values of all these keys, or None where one of them is not known."""
    try:
        return tuple(design[key] for key in keys)
    except Unknown:
        return None
