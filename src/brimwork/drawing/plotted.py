"""A sheet drawn by matplotlib: PNG for whoever cannot show SVG, or a figure to go on with."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from brimwork.drawing.layout import Area, Dot, Stroke, Words, layout
from brimwork.drawing.records import FILLS, GREY, STYLES, Sheet
from brimwork.needing import needed

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

MM = 72 / 25.4  # points
_HATCHES = {
    "earth": ("#f1ebe6", "////"),
    "stone": ("#f4f1ee", "oo"),
    "concrete": ("#e6e2e0", "..."),
    "blocks": ("#f7f9ff", "xx"),
    "untested": ("none", "\\\\\\\\"),
    "load": ("#f7dfd0", "//////"),
}


def figure(sheet: Sheet) -> Figure:
    """The sheet as a matplotlib figure of its true size; needs no display and leaves pyplot's state alone. Raises InputError without it."""
    with needed("matplotlib", "a drawing as a picture of dots"):
        import matplotlib  # noqa: F401 - by itself: where it is gone, a part of it may stand loaded still
        from matplotlib.figure import Figure

    made = Figure(figsize=(sheet.width / 25.4, sheet.height / 25.4), facecolor="white")
    axes = made.add_axes((0, 0, 1, 1))
    axes.set(xlim=(0, sheet.width), ylim=(sheet.height, 0))
    axes.axis("off")
    for order, (view, marks) in enumerate(layout(sheet)):
        artists = [_artist(mark, axes, order) for mark in marks]
        if view is not None and view.clip:
            from matplotlib.patches import Rectangle

            left, top, width, height = view.frame
            frame = axes.add_patch(Rectangle((left, top), width, height, visible=False))
            for artist in artists:
                artist.set_clip_path(frame)
    return made


def write_png(sheet: Sheet, path: str | Path, dots_per_inch: float = 150) -> None:
    """Write the sheet as a PNG; the title and description stand in its metadata."""
    figure(sheet).savefig(path, dpi=dots_per_inch, metadata={"Title": sheet.title, "Description": sheet.alt, "Software": None})


def _artist(mark: Stroke | Area | Dot | Words, axes: Axes, order: int):
    match mark:
        case Stroke(points, style):
            return axes.plot(*zip(*points), zorder=order, **_line(style))[0]
        case Area(points, fill, style):
            from matplotlib.patches import Polygon

            colour, hatch = _HATCHES.get(fill, (FILLS.get(fill) or GREY, None))
            line = _line(style)
            edge = {"linewidth": line["linewidth"], "edgecolor": line["color"]} if line["color"] != "none" else {"linewidth": 0}
            hatched = {"hatch": hatch, "hatch_linewidth": 0.3, "hatchcolor": GREY} if hatch else {}
            return axes.add_patch(Polygon(points, closed=True, facecolor=colour, zorder=order, **edge, **hatched))
        case Dot(at, radius, colour):
            from matplotlib.patches import Circle

            return axes.add_patch(Circle(at, radius, color=colour, linewidth=0, zorder=order))
        case Words():
            return _words(mark, axes, order)


def _words(mark: Words, axes: Axes, order: int):
    from matplotlib import patheffects

    halo = [patheffects.withStroke(linewidth=0.9 * MM, foreground="white")] if mark.halo else []
    align = {"start": "left", "middle": "center", "end": "right"}[mark.anchor]
    upright = mark.angle == 0
    return axes.text(
        *mark.at, mark.text, fontsize=mark.size * MM, color=mark.colour, ha=align, va="baseline", rotation=mark.angle, rotation_mode="anchor" if not upright else None,
        family="DejaVu Sans", path_effects=halo, zorder=order + 0.5, parse_math=False,
    )  # fmt: skip


def _line(style: str) -> dict:
    width, colour, dash = STYLES[style]
    pattern = (0, tuple(float(part) * MM for part in dash.split())) if dash else "solid"
    return {"linewidth": width * MM, "color": colour, "linestyle": pattern}
