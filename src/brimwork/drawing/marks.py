"""What a sheet is laid out into: strokes, areas, dots and words in millimetres of paper, and how much room words take."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from brimwork.drawing.records import Point

Box = tuple[float, float, float, float]  # left, top, right, bottom in mm of the sheet
# Widths of the face DejaVu Sans in thousandths of its size, from the space to the tilde; of other characters that drawings use; and of all the rest.
_WIDTHS = dict(zip(map(chr, range(32, 127)), (
    318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531,
    1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557, 863, 748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500,
    500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838,
), strict=True)) | {"–": 500, "×": 838, "°": 500, "²": 401, "³": 401, "’": 318}  # fmt: skip
_REST = 838
_BEFORE = {"start": 0.0, "middle": 0.5, "end": 1.0}  # share of a text that stands before its anchor
ABOVE, BELOW = 0.75, 0.22  # over and under the base line, as shares of the size


@lru_cache(4096)
def width_of(text: str, size: float) -> float:
    """Room in mm that a text takes; other plain sans-serif faces need no more."""
    return size * sum(_WIDTHS.get(character, _REST) for character in text) / 1e3


@dataclass(frozen=True)
class Stroke:
    points: tuple[Point, ...]
    style: str
    key: str = ""


@dataclass(frozen=True)
class Area:
    points: tuple[Point, ...]
    fill: str
    style: str
    key: str = ""


@dataclass(frozen=True)
class Dot:
    at: Point
    radius: float
    colour: str
    key: str = ""


@dataclass(frozen=True)
class Words:
    """Text with its anchor on the baseline; `angle` in degrees anticlockwise, 0 or 90; `halo` draws the paper behind it."""

    at: Point
    text: str
    anchor: str
    size: float
    colour: str
    angle: float = 0.0
    halo: bool = False
    key: str = ""

    @property
    def box(self) -> Box:
        """Left, top, right, bottom on the sheet."""
        wide, (x, y) = width_of(self.text, self.size), self.at
        first = -wide * _BEFORE[self.anchor]
        if self.angle == 90:
            return x - ABOVE * self.size, y - first - wide, x + BELOW * self.size, y - first
        return x + first, y - ABOVE * self.size, x + first + wide, y + BELOW * self.size


Mark_ = Stroke | Area | Dot | Words
