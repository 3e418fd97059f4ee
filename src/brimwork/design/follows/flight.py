"""A flight of steps beside the reservoir: header, a pool at the foot of every fall, then the rill; where each lip lies (m along) and its level (m)."""

from __future__ import annotations

from functools import cached_property
from typing import Any

from brimwork.design.typed.known import Unknown


class Flight:
    """The flight of one cascade. Raises Unknown with the keys that are missing."""

    def __init__(self, chain: Any):
        self.chain = chain
        d = self.design = chain.design
        self.fall, self.tread, self.width, top = d["cascade.step_fall"], d["cascade.tread"], d["cascade.width"], chain.level("header lip")
        self.steps = round(d["cascade.steps"])
        self.end = chain.geometry.stairs_end  # the rill pours over the edge of the box
        self.start = self.end - (self.rill[0] if self.rill else 0.0)
        self.lips = [(self.start - (self.steps - i) * self.tread, top - i * self.fall) for i in range(self.steps + 1)]  # of the header, then of every pool
        self.back = self.lips[0][0] - self.header

    @cached_property
    def rill(self) -> tuple[float, float, float] | None:
        """Length, width and slope of the rill; None where there is none, or the design says too little of it."""
        known = self._known("cascade.rill_length", "cascade.rill_width", "cascade.rill_slope")
        return known if known and known[0] else None

    @property
    def header(self) -> float:
        """Length of the header, as wide as the steps; a tread where its area is not known."""
        area = self._known("cascade.header_area")
        return area[0] / self.width if area and self.width else self.tread

    @property
    def foot(self) -> float:
        """Level of the rill's bed at its end, or of the lowest pool's lip."""
        return self.chain.foot if self.rill else self.lips[-1][1]

    @property
    def pools(self) -> list[tuple[float, float, float]]:
        """Of the header, then of every pool: where it begins and ends, and the level of its lip."""
        starts = [self.back, *(x for x, _ in self.lips)]
        return [(first, x, level) for first, (x, level) in zip(starts, self.lips)]

    def _known(self, *keys: str) -> tuple | None:
        try:
            return tuple(self.design[key] for key in keys)
        except Unknown:
            return None
