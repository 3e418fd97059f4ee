"""Where every body of a design is, once: outlines in plan (m, x along the blocks from their middle, y across them) and levels (m to the finished paving).

Checks, masses and drawings read it here. What needs a value that nobody gave raises Unknown with its key.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from brimwork.design.follows.kept import kept
from brimwork.design.typed.patches import Outline, Spot, disc, moved, rectangular_patch, round_patch
from brimwork.units import InputError, write

BESIDE = 0.02  # m: how far a wall stands from the box; the design does not say
PUMP = 0.6  # share of its bay that the pump takes as it is drawn
WALL = 0.025  # m: how thick the wall of a vessel or trough is taken to be, where nobody says


@dataclass(frozen=True)
class Standing:
    """One piece that stands on the blocks or on a slab: its foot, the hole in it, its middle, its rim seen from above, its height and its widest face."""

    foot: Outline
    hole: Outline
    middle: Spot
    rim: Outline
    height: float
    face: float
    foot_wide: float = 0.0  # of a round foot


class Geometry:
    """The bodies of one design; `chain` gives sizes and levels."""

    def __init__(self, chain: Any):
        self.chain, self.d, self.store = chain, chain.design, chain.store

    # --- reservoir

    @kept
    def blocks(self) -> Outline:
        return rectangular_patch(self.chain.base_length, self.chain.base_width)

    @property
    def box(self) -> Outline:
        """Inside of the box."""
        return rectangular_patch(self.chain.box_length, self.chain.box_width)

    @property
    def pit(self) -> Outline:
        return rectangular_patch(self.chain.pit_length, self.chain.pit_width)

    @property
    def panels(self) -> Outline:
        """Outside of the box."""
        return rectangular_patch(self.chain.panel_long, self.chain.panel_across)

    def round_pit(self, distance: float) -> Outline:
        """The ground round the pit, that far from it (m)."""
        return rectangular_patch(self.chain.pit_length + 2 * distance, self.chain.pit_width + 2 * distance)

    @property
    def stone_half(self) -> tuple[float, float]:
        """Half of what the stone covers, along and across: box and apron, its boards at least."""
        apron = max(self.d["catch.apron"], self.d["ground.board"])
        return self.chain.box_length / 2 + apron, self.chain.box_width / 2 + apron

    @property
    def stone(self) -> Outline:
        half = self.stone_half
        return rectangular_patch(2 * half[0], 2 * half[1])

    @property
    def catch_half(self) -> tuple[float, float]:
        """Half of the lined catch, box and apron, along and across."""
        return self.chain.box_length / 2 + self.d["catch.apron"], self.chain.box_width / 2 + self.d["catch.apron"]

    @property
    def bay_middle(self) -> Spot:
        """Middle of the pump's bay, in a corner of the blocks."""
        side = self.d["pump.bay"]
        return -(self.chain.base_length - side) / 2, -(self.chain.base_width - side) / 2

    @property
    def bay(self) -> Outline:
        side = self.d["pump.bay"]
        return rectangular_patch(side, side, self.bay_middle)

    @property
    def bay_height(self) -> float:
        """How high the bay is as it is drawn (m): as high as it is wide, no higher than a block."""
        return min(self.d["pump.bay"], self.d["reservoir.block_height"])

    @property
    def pump(self) -> Outline:
        """The pump, as it is drawn: its real size is not asked for."""
        side = PUMP * self.d["pump.bay"]
        return rectangular_patch(side, side, self.bay_middle)

    @property
    def supply(self) -> Spot:
        return self.d["supply.point_along"], self.d["supply.point_across"]

    # --- what is near

    @property
    def footing(self) -> Spot:
        """The nearest point of the nearest footing."""
        return self.d["site.footing_along"], self.d["site.footing_across"]

    @property
    def tree(self) -> Spot:
        """The middle of the nearest stem."""
        return self.d["site.tree_along"], self.d["site.tree_across"]

    @property
    def overflow_end(self) -> Spot:
        return self.d["overflow_pipe.end_along"], self.d["overflow_pipe.end_across"]

    def beside_pit(self, spot: Spot) -> Spot:
        """The place of the pit that is nearest to a spot."""
        return _nearest(spot, self.pit[2])

    @property
    def overflow_start(self) -> Spot:
        """Where the overflow pipe leaves the box: the place nearest to its end."""
        return _nearest(self.overflow_end, self.panels[2])

    def from_pit(self, spot: Spot) -> float:
        """Distance (m) from the edge of the pit to a spot; nothing within the pit."""
        return math.dist(spot, self.beside_pit(spot))

    # --- what stands on the blocks

    @kept
    def standing(self) -> tuple[Standing, ...]:
        """What stands on the blocks, from left to right; nothing of a blade or a cascade."""
        return _STANDING.get(self.d.kind, lambda geometry: ())(self)

    def slab_under(self, piece: Standing) -> Outline:
        """The slab under it, or nothing where it stands on the blocks."""
        key, word = ("vessel.stands_on", "slab") if self.d.kind == "overflowing vessel" else ("stones.stand_on", "slabs")
        return rectangular_patch(self.d["slab.length"], self.d["slab.width"], piece.middle) if self.d[key] == word else ()

    # --- blade and cascade

    @property
    def wall_face(self) -> float:
        """Where the face of a wall beside the reservoir stands (m along)."""
        return -self.chain.box_length / 2 - self.d["ground.board"] - BESIDE

    @property
    def wall(self) -> Outline:
        """A blade's wall, as long as its trough or lip and as deep as its trough."""
        length = max(self.d["blade.trough_length"], self.d["blade.lip_width"]) + 2 * WALL
        deep = self.d["blade.trough_width"] + 2 * WALL
        return rectangular_patch(deep, length, (self.wall_face - deep / 2, 0.0))

    @property
    def trough(self) -> Outline:
        """Inside of a blade's trough."""
        length, deep = max(self.d["blade.trough_length"], self.d["blade.lip_width"]), self.d["blade.trough_width"]
        return rectangular_patch(deep, length, (self.wall_face - WALL - deep / 2, 0.0))

    @property
    def sheet(self) -> Outline:
        """Where a blade's sheet falls and lands, as wide as its lip."""
        throw = self.chain.throw
        return rectangular_patch(throw, self.d["blade.lip_width"], (self.wall_face + throw / 2, 0.0))

    @property
    def stairs_end(self) -> float:
        """Where the steps, or the rill after them, pour over the edge of the box (m along)."""
        return -self.chain.box_length / 2 - self.d["ground.board"]

    @property
    def last_fall(self) -> float:
        """From where steps and rill end down to the stone, or to the water where that stands higher (m); nothing or less where the stone stands higher."""
        return self.chain.foot - max(self.chain.level("stone top"), self.chain.level("static water"))

    @property
    def pour(self) -> Outline:
        """Where a cascade's last fall lands: from the edge of the box, as far as it throws."""
        wide = self.d["cascade.rill_width"] if self.d["cascade.rill_length"] else self.d["cascade.width"]
        throw = self.chain.last_throw
        return rectangular_patch(throw, wide, (self.stairs_end + throw / 2, 0.0))


def _vessel(geometry: Geometry) -> tuple[Standing, ...]:
    d = geometry.d
    middle = (d["vessel.offset"], d["vessel.offset_across"])
    shape, rim = d["vessel.shape"], d["vessel.rim_diameter"]
    widest = max(rim, d["vessel.widest"]) if "vessel.widest" in d.values else rim
    across = d["vessel.rim_width"] if shape == "rectangular" else rim
    seen = round_patch(widest, middle) if shape in ("round", "another") else rectangular_patch(widest, max(across, 0.0), middle)
    face = max(widest, across) if shape != "square" else widest
    if "vessel.foot_corners" in d.values:
        return (Standing(moved(d["vessel.foot_corners"], middle), (), middle, seen, d["vessel.height"], face),)
    foot, hole = foot_outlines(d, middle)
    return (Standing(foot, hole, middle, seen, d["vessel.height"], face, d["vessel.foot_outside"] if shape in ("round", "another") else 0.0),)


def foot_outlines(d: Any, middle: Spot) -> tuple[Outline, Outline]:
    """Outline of a vessel's foot and of the hole in it, for its shape. Raises InputError where the foot is wider inside than outside."""
    outside, inside = d["vessel.foot_outside"], d["vessel.foot_inside"]
    if inside >= outside:
        raise InputError(
            f"the foot is {write(inside, 'mm')} wide inside and {write(outside, 'mm')} outside: give vessel.foot_inside smaller than vessel.foot_outside, 0 for a full foot"
        )
    if d["vessel.shape"] in ("round", "another"):
        return disc(outside, middle), disc(inside, middle) if inside else ()
    across = d["vessel.foot_width"] if d["vessel.shape"] == "rectangular" else outside
    wall = outside - inside
    return rectangular_patch(outside, across, middle), rectangular_patch(inside, max(across - wall, 0.0), middle) if inside and across > wall else ()


def _stones(geometry: Geometry) -> tuple[Standing, ...]:
    chain = geometry.chain
    places = zip(chain.places, chain.sizes, strict=True)
    return tuple(Standing(disc(wide, at), (), at, round_patch(wide, at), high, wide, wide) for at, (wide, high, _) in places)


_STANDING: dict[str, Callable[[Geometry], tuple[Standing, ...]]] = {"overflowing vessel": _vessel, "drilled stones": _stones}


def _nearest(spot: Spot, half: Spot) -> Spot:
    """The place of a rectangle about the middle that is nearest to a spot."""
    (x, y), (along, across) = spot, half
    return min(max(x, -along), along), min(max(y, -across), across)


def room_inside(outline: Outline, half: tuple[float, float]) -> float:
    """Least distance (m) from an outline to the edge of a rectangle about the middle; below zero where it reaches over."""
    along, across = zip(*outline)
    return min(half[0] - max(max(along), -min(along)), half[1] - max(max(across), -min(across)))
