"""How the drawings of a region are lettered: its words, the units of their lengths, flows, volumes and pressures, and the true scales that its rules carry."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from brimwork.design.typed.wording import worded
from brimwork.tape import on_a_tape
from brimwork.units import number, unit

_FOOT = 0.3048


@dataclass(frozen=True)
class Lettering:
    """`figure` writes a length (m) as it stands on a dimension line, without its unit; `dimensions` says in the caption what that unit is."""

    figure: Callable[[float], str]
    dimensions: str
    length: str  # units, as `units.write` takes them
    named: str  # the unit of a length in words
    head: str
    flow: str
    volume: str
    pressure: str
    scales: tuple[tuple[float, str], ...]  # mm of paper for a metre, and the name; the largest first
    bar: tuple[float, str]  # unit of the scale bar in m, and its name
    region: str

    @property
    def flow_unit(self) -> float:
        """m3/s"""
        return unit(self.flow).factor

    @property
    def head_unit(self) -> float:
        """m"""
        return unit(self.head).factor

    def level(self, height: float) -> str:
        """A level with its sign; the datum is 0."""
        text = self.figure(abs(height))
        return text if text == "0" else f"{'-' if height < 0 else '+'}{text}"

    def worded(self, text: str) -> str:
        """Our own text, written in the words of the UK, in the words of the region."""
        return worded(text, self.region)

    def said(self, value: float) -> str:
        """A length as it stands in a sentence, with its unit."""
        return f"{'-' if value < 0 else ''}{self.figure(abs(value))} {self.length}"

    def from_the_middle(self, to: tuple[float, float]) -> str:
        """In words, where a place (m along and across) lies: "3 m to the right and 1 m up from", or "at"."""
        ways = [f"{self.said(abs(way))} {words[way < 0]}" for way, words in zip(to, (("to the right", "to the left"), ("up", "down")), strict=True) if way]
        return f"{' and '.join(ways)} from" if ways else "at"

    def fitting(self, width: float, height: float, wide: float, tall: float) -> tuple[float, str] | None:
        """The largest scale at which width by height (m) fits wide by tall (mm of paper), and its name; None where even the smallest does not."""
        return next((scale for scale in self.scales if width * scale[0] <= wide and height * scale[0] <= tall), None)


def _millimetres(value: float) -> str:
    return f"{value * 1e3:.0f}"


def _eighths(value: float) -> str:
    """Inches to the nearest eighth, as a tape shows them: 61 7/8."""
    return on_a_tape(value / unit("in").factor, 8)


def _ratio(below: float) -> tuple[float, str]:
    return 1000 / below, f"1:{number(below)}"


METRIC = Lettering(
    _millimetres, "dimensions in mm", "mm", "mm", "m", "L/min", "L", "kPa",
    tuple(map(_ratio, (5, 10, 20, 25, 30, 40, 50, 75, 100, 200))), (1.0, "m"), "UK",
)  # fmt: skip
# Inches on the drawing stand for a foot in the world: the scales of an architect's rule.
_RULE = (("3", 4), ("1 1/2", 8), ("1", 12), ("3/4", 16), ("1/2", 24), ("3/8", 32), ("1/4", 48), ("3/16", 64), ("1/8", 96), ("1/16", 192))
US = Lettering(
    _eighths, "dimensions in inches to the nearest 1/8", "in", "inches", "ft", "US gal/min", "US gal", "psf",
    tuple((1000 / below, f'{inches}" = 1 ft (1:{below})') for inches, below in _RULE), (_FOOT, "ft"), "US",
)  # fmt: skip
BY_REGION = {"UK": METRIC, "US": US}
