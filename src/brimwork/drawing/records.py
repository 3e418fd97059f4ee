"""What a drawing is made of: plain records in real-world metres, grouped in views on a sheet whose units are millimetres of paper.

A test reads the records; a writer draws them. Nothing here knows how. A record that shows a value of a design carries its `key`, so that a page can lead
from the drawing to the box of that value and back.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

Point = tuple[float, float]

INK, WATER, WATER_FILL, ACCENT, NIGHT, BROWN, GREY, PALE = "#21262e", "#3468F8", "#dfe8ff", "#C94F12", "#070989", "#450F1B", "#786574", "#f3f1ee"

# name: (width in mm, colour, dash pattern in mm)
STYLES: dict[str, tuple[float, str, str]] = {
    "outline": (0.5, INK, ""),
    "thin": (0.25, INK, ""),
    "hidden": (0.25, INK, "2 1.2"),
    "centre": (0.18, GREY, "5 1.2 1 1.2"),
    "water": (0.45, WATER, ""),
    "water level": (0.25, WATER, "1.6 1.2"),
    "curve": (0.6, WATER, ""),
    "second curve": (0.5, ACCENT, "2.4 1.4"),
    "ground water": (0.35, WATER, "4 1 0.8 1"),
    "frost line": (0.35, BROWN, "4 1 0.8 1 0.8 1"),
    "cable": (0.45, BROWN, "3 1"),
    "dimension": (0.18, GREY, ""),
    "force": (0.6, ACCENT, ""),
    "axis": (0.25, INK, ""),
    "grid": (0.12, "#d5d0d3", ""),
    "none": (0.0, "none", ""),
}
FILLS = {
    "water": WATER_FILL,
    "paper": "#ffffff",
    "solid": "#dad4d7",
    "pale": PALE,
    "patch": "#f7dfd0",
    "accent": ACCENT,
    "ink": INK,
    "earth": "",
    "stone": "",
    "concrete": "",
    "blocks": "",
    "untested": "",
    "load": "",
}


@dataclass(frozen=True)
class Line:
    points: tuple[Point, ...]
    style: str = "outline"
    key: str = ""


@dataclass(frozen=True)
class Polygon:
    """A closed area: `fill` names a row of FILLS (a colour or a hatching)."""

    points: tuple[Point, ...]
    fill: str = "paper"
    style: str = "outline"
    key: str = ""


@dataclass(frozen=True)
class Arc:
    """Part of a circle, anticlockwise from `start` to `end` in degrees."""

    centre: Point
    radius: float
    start: float = 0.0
    end: float = 360.0
    style: str = "outline"
    key: str = ""


@dataclass(frozen=True)
class Text:
    """Words at a place; `nudge` moves them on the sheet, in mm right and up."""

    at: Point
    text: str
    anchor: str = "start"
    size: float = 3.2
    colour: str = INK
    nudge: Point = (0.0, 0.0)
    angle: float = 0.0
    key: str = ""


@dataclass(frozen=True)
class Measure:
    """A distance between two places with its text; `value` in metres is what the text says. `offset` in mm moves the line to its left.

    The text of an upright one stands along it, or, where it is longer, beside it; along it all the same with `along`.
    """

    start: Point
    end: Point
    text: str
    value: float
    offset: float = 6.0
    along: bool = False
    key: str = ""


@dataclass(frozen=True)
class Level:
    """A level mark: the triangle that stands on a water or ground line."""

    at: Point
    text: str = ""
    colour: str = NIGHT
    key: str = ""


@dataclass(frozen=True)
class Leader:
    """A note that points at something; `to` in mm from the place, right and up."""

    at: Point
    text: str
    to: Point = (8.0, 8.0)


@dataclass(frozen=True)
class Mark:
    """A point on a curve."""

    at: Point
    radius: float = 1.3
    colour: str = ACCENT


@dataclass(frozen=True)
class Arrow:
    """A force or a speed: from its tail to its tip."""

    tail: Point
    tip: Point


Record = Line | Polygon | Arc | Text | Measure | Level | Leader | Mark | Arrow


@dataclass(frozen=True)
class View:
    """Records seen through a window of the world (x0, y0, x1, y1) and put into a frame of the sheet (left, top, width, height in mm).

    With `clip` nothing is drawn outside the frame; with `clear` words that would run into a line move aside.
    """

    window: tuple[float, float, float, float]
    frame: tuple[float, float, float, float]
    records: tuple[Record, ...]
    clip: bool = True
    clear: bool = False

    def place(self, point: Point) -> Point:
        """From the world to the sheet: mm from its left and top edges."""
        x0, y0, x1, y1 = self.window
        left, top, width, height = self.frame
        return left + (point[0] - x0) / (x1 - x0) * width, top + (y1 - point[1]) / (y1 - y0) * height

    def places(self, points: Iterable[Point]) -> tuple[Point, ...]:
        """Many points at once, for the long lines of live pictures."""
        x0, y0, x1, y1 = self.window
        left, top, width, height = self.frame
        across, up = width / (x1 - x0), height / (y1 - y0)
        return tuple([(left + (x - x0) * across, top + (y1 - y) * up) for x, y in points])

    @property
    def scale(self) -> tuple[float, float]:
        """Millimetres of paper for a unit of the world, across and up."""
        x0, y0, x1, y1 = self.window
        return self.frame[2] / (x1 - x0), self.frame[3] / (y1 - y0)


@dataclass(frozen=True)
class Sheet:
    """A drawing: size in mm, views, a title, a description, the sentences `told` by its notes, and the table of its numbers (`columns` and `rows` of text)."""

    width: float
    height: float
    views: tuple[View, ...]
    title: str
    description: str
    notes: tuple[Text, ...] = field(default=())  # placed in mm from the left and top of the sheet
    columns: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()
    told: str = ""

    @property
    def alt(self) -> str:
        """The whole in words, for those who do not see it; a caption leaves out what the notes say already."""
        return f"{self.description} {self.told}".rstrip()


def at_scale(centre: Point, frame: tuple[float, float, float, float], scale: float, records: tuple[Record, ...]) -> View:
    """A view at a true scale: `scale` is mm of paper for a metre, the same across and up; `centre` stands in the middle of the frame."""
    half_width, half_height = frame[2] / scale / 2, frame[3] / scale / 2
    return View((centre[0] - half_width, centre[1] - half_height, centre[0] + half_width, centre[1] + half_height), frame, records)
