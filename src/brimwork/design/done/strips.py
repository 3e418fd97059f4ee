"""A piece that is wider than its roll, laid in strips side by side: how many, how long each, and which way they run."""

from __future__ import annotations

from dataclasses import dataclass

from brimwork.topics.cost import whole_units
from brimwork.units import InputError


@dataclass(frozen=True)
class Strips:
    """How a piece is laid: how many strips, how long each is as it lies, with its slack, and as it is cut off in whole steps (m)."""

    count: int
    length: float
    gross: float
    cut: float

    @property
    def bought(self) -> float:
        """What is cut off the roll for all of them (m)."""
        return self.count * self.cut


def beside(width: float, roll: float, lap: float) -> int:
    """Strips of a roll (m wide) that cover a width (m), each over the one before by its lap (m). Raises InputError for a lap as wide as the roll."""
    if not 0 <= lap < roll:
        raise InputError(f"strips off a roll {roll:g} m wide with laps of {lap:g} m cover nothing: give a roll wider than its lap, such as 2 m and 0.1 m")
    return max(whole_units(max(width - lap, 0.0), roll - lap), 1)


def laid(length: float, width: float, roll: float, lap: float, slack: float, step: float) -> Strips:
    """The strips that cover a piece length x width (m), along the side that takes less off the roll; each with a share of slack, cut in whole steps (m)."""
    ways = [_along(length, width, roll, lap, slack, step), _along(width, length, roll, lap, slack, step)]
    return min(ways, key=lambda way: (way.bought, way.count * way.length))


def _along(length: float, width: float, roll: float, lap: float, slack: float, step: float) -> Strips:
    gross = length * (1 + slack)
    return Strips(beside(width, roll, lap), length, gross, whole_units(gross, step) * step)
