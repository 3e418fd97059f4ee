"""What stands on the blocks: what it weighs, where its weight acts, what of it really touches, and over which line it tips."""

from __future__ import annotations

from collections.abc import Callable

from brimwork.design.follows.chain import GRAVITY, Chain, Found, result
from brimwork.design.follows.geometry import Standing
from brimwork.design.typed import patches
from brimwork.design.typed.design import Design
from brimwork.formula import Working
from brimwork.units import InputError, write


class StandingLoads(Chain):
    """One or several pieces, each with its foot, on a slab or on the blocks."""

    def __init__(self, design: Design):
        super().__init__(design)
        self._levers: dict[Standing, float] = {}

    def empties(self) -> list[float]:
        """Mass (kg) of every piece as it is set, in their order. Raises Unknown."""
        return []

    def fulls(self) -> list[float]:
        """Mass (kg) of every piece with what it holds. Raises Unknown."""
        return self.empties()

    @property
    def slab_each(self) -> float:
        """Mass (kg) of the slab under one piece; nothing where there is none."""
        return 0.0

    @property
    def standing_mass(self) -> float:
        return sum(mass + self.slab_each for mass in self.fulls())

    @property
    def resultant(self) -> tuple[float, float]:
        """Where the weight of all that stands there acts (m from the middle of the blocks, along and across)."""
        each = [(mass + self.slab_each, piece.middle) for mass, piece in zip(self.fulls(), self.geometry.standing, strict=True)]
        whole = sum(mass for mass, _ in each)
        return (sum(mass * at[0] for mass, at in each) / whole, sum(mass * at[1] for mass, at in each) / whole) if whole else (0.0, 0.0)

    # --- what touches

    def touching(self, piece: Standing) -> float:
        """Area (m2) through which it presses on the blocks: its foot, on a slab grown by the slab's thickness all round, as far as slab and blocks reach.

        Raises InputError where the foot touches nothing of its slab.
        """
        slab, blocks = self.geometry.slab_under(piece), self.geometry.blocks
        if not slab:
            bare = _within(piece.foot, blocks) - _within(piece.hole, blocks)
            if bare <= patches.NEAR**2:
                raise InputError("the foot touches nothing of the blocks: move it over them")
            return bare
        if _within(piece.foot, slab) - _within(piece.hole, slab) <= patches.NEAR**2:
            raise InputError(
                f"the foot touches nothing of its slab of {write(self.design['slab.length'], 'mm')} by {write(self.design['slab.width'], 'mm')}: take a larger slab"
            )
        thick = self.design["slab.thickness"]
        outer, inner = (patches.grown(outline, by, piece.middle) for outline, by in ((piece.foot, thick), (piece.hole, -thick)))
        spread = _within(outer, slab, blocks) - _within(inner, slab, blocks)
        if spread <= patches.NEAR**2:
            raise InputError("the slab presses on nothing of the blocks: move it over them")
        return spread

    def lever(self, piece: Standing) -> float:
        """Distance (m) from its middle to the line over which it tips: the nearest side of what foot, slab and blocks share. Nothing where it falls by itself."""
        return self.store.once(self._levers, piece, lambda: self._lever(piece))

    def _lever(self, piece: Standing) -> float:
        slab, support = self.geometry.slab_under(piece), piece.foot
        for window in (slab, self.geometry.blocks):
            support = patches.shared(support, window) if window and support else support if not window else ()
        if slab and piece.hole and patches.area_of(support) <= _within(piece.hole, slab) + 1e-9:
            return 0.0
        if abs(patches.area_of(support) - patches.area_of(piece.foot)) < 1e-12 and self._round(piece):
            return piece.foot_wide / 2
        return max(patches.lever(support, piece.middle), 0.0) if support else 0.0

    def _round(self, piece: Standing) -> bool:
        return bool(piece.foot_wide)

    @property
    def fallen(self) -> str:
        """In words, what stands so that it falls without a push; nothing where all stand."""
        for number, piece in enumerate(self.geometry.standing, start=1):
            if self.lever(piece) <= patches.NEAR:
                name = f"stone {number}" if len(self.geometry.standing) > 1 else "it"
                slab = self.geometry.slab_under(piece)
                touches = _within(piece.foot, *filter(None, (slab, self.geometry.blocks))) - _within(piece.hole, *filter(None, (slab, self.geometry.blocks)))
                why = "its foot touches nothing of what should carry it" if touches <= patches.NEAR**2 else "its middle stands beside what carries it"
                return f"{name} falls by itself: {why}"
        return ""

    # --- pressure through the slab

    def _pressed_hardest(self) -> tuple[float, Standing]:
        """Weight (N) and place of the piece that presses hardest on the blocks, through foot and slab."""
        each = zip(self.fulls(), self.geometry.standing, strict=True)
        return max(((GRAVITY * (mass + self.slab_each), piece) for mass, piece in each), key=lambda one: one[0] / self.spread_patch(one[1]))

    @result
    def spread_area(self):
        """What the piece that presses hardest presses on."""
        _, piece = self._pressed_hardest()
        slab = self.geometry.slab_under(piece)
        how = (
            f"the foot and {write(self.design['slab.thickness'], 'mm')} of slab all round it, as far as slab and blocks reach"
            if slab
            else "the foot on the blocks"
        )
        return Found("A_c", self.spread_patch(piece), how)

    @result
    def spread_pressure(self):
        """Under the piece that presses hardest on the blocks, through foot and slab."""
        weight, piece = self._pressed_hardest()
        return self._work("pressure on a contact patch", F_w=weight, A_c=self.spread_patch(piece))

    def spread_patch(self, piece: Standing) -> float:
        return self.touching(piece)

    @result
    def spread_utilisation(self):
        return self._work("utilisation of the blocks", p_c=self.spread_pressure, p_all=self.block_allowable)

    @property
    def thin_slab(self) -> float:
        """How far a slab reaches past the foot on it, the way it reaches further, over its thickness; at the piece where that is most. Infinite without a slab."""
        d = self.design
        if not self.slab_count:
            return float("inf")
        reaches = [
            max(max(abs(point[axis] - piece.middle[axis]) for point in slab) - _half(piece, axis) for axis in (0, 1))
            for piece in self.geometry.standing
            for slab in (self.geometry.slab_under(piece),)
        ]
        return max(0.0, *reaches) / d["slab.thickness"]

    # --- tipping

    def tips(self, masses: list[float], force: Callable[[float, Standing], Working]) -> Working:
        """The piece that tips first: `force` works its factor from its weight (N) and itself."""
        each = zip(masses, self.geometry.standing, strict=True)
        return min((force(GRAVITY * mass, piece) for mass, piece in each), key=lambda worked: worked.result)

    def pushed(self, weight: float, piece: Standing) -> Working:
        return self._work("tipping factor", F_w=weight, B_base=2 * self.lever(piece), F_push=self.push, h_push=piece.height)

    def blown(self, weight: float, piece: Standing) -> Working:
        return self._work("tipping factor in wind", F_w=weight, B_base=2 * self.lever(piece), p_wind=self.wind_pressure, c_f=self.design["site.force_coefficient"],
                          b_face=piece.face, h_face=piece.height)  # fmt: skip

    @result
    def tipping_in_wind(self):
        """The piece that the wind tips first, empty."""
        return self.tips(self.empties(), self.blown)

    # --- on the soil

    @result
    def local_pressure(self):
        """Under the piece that presses hardest, its load straight down from slab or foot and spread by the beds alone: loose blocks spread nothing."""
        d, beds = self.design, self.design["ground.sand"] + self.design["ground.sub_base"]
        field = patches.rectangular_patch(self.base_length + 2 * beds, self.base_width + 2 * beds)
        pressures = []
        for mass, piece in zip(self.fulls(), self.geometry.standing, strict=True):
            slab = self.geometry.slab_under(piece)
            under = (
                patches.rectangular_patch(d["slab.length"] + 2 * beds, d["slab.width"] + 2 * beds, piece.middle)
                if slab
                else patches.grown(piece.foot, beds, piece.middle)
            )
            area = _within(under, field)
            if not area:
                raise InputError("it stands beside the blocks: move it over them")
            pressures.append(GRAVITY * (mass + self.slab_each) / area)
        even = GRAVITY * (self.blocks_mass / self.block_plan + self.water["rho"] * d["reservoir.void_fraction"] * d["reservoir.static_level"])
        return Found("p_max", max(pressures) + even, f"slab or foot spread by sand and sub-base, {write(beds, 'mm')} each way, with blocks and water beside it")


def _within(outline: patches.Outline, *windows: patches.Outline) -> float:
    for window in windows:
        outline = patches.shared(outline, window) if outline else ()
    return patches.area_of(outline)


def _half(piece: Standing, axis: int) -> float:
    return max(abs(point[axis] - piece.middle[axis]) for point in piece.foot)
