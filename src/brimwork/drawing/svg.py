"""A sheet as one SVG string, the same bytes every time: for live pictures, stored figures and print."""

from __future__ import annotations

from brimwork.drawing.layout import Area, Dot, Stroke, Words, layout
from brimwork.drawing.records import ACCENT, FILLS, GREY, STYLES, Sheet
from brimwork.shown import Markup, attribute

_COLOURS = {**{name: colour for name, colour in FILLS.items() if colour}, "grey": GREY}
_HATCHINGS = {
    "earth": (3.0, 3.0, f'<rect width="3" height="3" fill="#f1ebe6"/><path d="M0 3L3 0M-.5 .5L.5 -.5M2.5 3.5L3.5 2.5" stroke="{GREY}" stroke-width=".18"/>'),
    "stone": (4.0, 4.0, f'<rect width="4" height="4" fill="#f4f1ee"/><circle cx="1" cy="1.1" r=".75" fill="none" stroke="{GREY}" stroke-width=".18"/>'
                        f'<circle cx="3" cy="2.9" r=".9" fill="none" stroke="{GREY}" stroke-width=".18"/>'),
    "concrete": (4.0, 4.0, f'<rect width="4" height="4" fill="#e6e2e0"/><circle cx="1" cy="1" r=".2" fill="{GREY}"/><circle cx="3" cy="2.4" r=".28" fill="{GREY}"/>'
                           f'<path d="M.8 3.2l.5 -.7l.4 .8z" fill="none" stroke="{GREY}" stroke-width=".15"/>'),
    "blocks": (5.0, 5.0, f'<rect width="5" height="5" fill="#f7f9ff"/><path d="M0 0L5 5M5 0L0 5" stroke="{GREY}" stroke-width=".18"/>'),
    "untested": (2.4, 2.4, f'<path d="M0 0L2.4 2.4" stroke="{GREY}" stroke-width=".16"/>'),
    "load": (2.0, 2.0, f'<rect width="2" height="2" fill="#f7dfd0"/><path d="M0 2L2 0M-.5 .5L.5 -.5M1.5 2.5L2.5 1.5" stroke="{ACCENT}" stroke-width=".3"/>'),
}  # fmt: skip
TOUCHED = 6.2  # mm of a sheet: height of the room in which words can be touched, 24 px where the sheet is shown in its own size
_FONT = "'DejaVu Sans', 'Segoe UI', Arial, sans-serif"


def write_svg(sheet: Sheet, key: str = "s", scale_to_page: bool = True, linked: bool = False) -> Markup:
    """The SVG text; `key` makes the names of its hatchings unique on a page. Its size is in mm, or the full width of the page it stands in.

    When `linked`, whatever shows a value of a design names its key in `data-key`, and words among it have room to be touched.
    """
    size = f'style="width:100%;height:auto;max-width:{sheet.width * 3.7795:g}px"' if scale_to_page else f'width="{sheet.width:g}mm" height="{sheet.height:g}mm"'
    mine, body, used = attribute(key), list[str](), set[str]()
    for number, (view, marks) in enumerate(layout(sheet)):
        pieces: list[str] = [_linked(mark, _piece(mark, mine, used)) if linked and mark.key else _piece(mark, mine, used) for mark in marks]
        if view is not None and view.clip:
            left, top, width, height = view.frame
            body.append(f'<clipPath id="{mine}v{number}"><rect x="{left:g}" y="{top:g}" width="{width:g}" height="{height:g}"/></clipPath>')
            pieces = [f'<g clip-path="url(#{mine}v{number})">', *pieces, "</g>"]
        body += pieces
    return Markup(
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} viewBox="0 0 {sheet.width:g} {sheet.height:g}" role="img" aria-label="{attribute(sheet.title)}">'
        f"<title>{attribute(sheet.title)}</title><desc>{attribute(sheet.alt)}</desc><defs>{_patterns(mine, used)}</defs>"
        f'<rect width="{sheet.width:g}" height="{sheet.height:g}" fill="#ffffff"/><g font-family="{_FONT}" stroke-linejoin="round" stroke-linecap="round">'
        + "".join(body)
        + "</g></svg>"
    )


def _patterns(key: Markup, used: set[str]) -> Markup:
    return Markup(
        "".join(
            f'<pattern id="{key}{attribute(name)}" width="{width:g}" height="{height:g}" patternUnits="userSpaceOnUse">{_HATCHINGS[name][2]}</pattern>'
            for name, (width, height, _) in _HATCHINGS.items()
            if name in used
        )
    )


def _piece(mark: Stroke | Area | Dot | Words, key: Markup, used: set[str]) -> Markup:
    match mark:
        case Stroke(points, style):
            return Markup(f'<polyline points="{_points(points)}" fill="none"{_stroke(style)}/>')
        case Area(points, fill, style):
            if fill in _HATCHINGS:
                used.add(fill)
            paint = f"url(#{key}{attribute(fill)})" if fill in _HATCHINGS else _COLOURS[fill]
            return Markup(f'<polygon points="{_points(points)}" fill="{paint}"{_stroke(style)}/>')
        case Dot(at, radius, colour):
            return Markup(f'<circle cx="{at[0]:.2f}" cy="{at[1]:.2f}" r="{radius:g}" fill="{attribute(colour)}"/>')
        case Words():
            x, y = mark.at
            turn = f' transform="rotate({-mark.angle:g} {x:.2f} {y:.2f})"' if mark.angle else ""
            halo = ' stroke="#ffffff" stroke-width=".9" paint-order="stroke"' if mark.halo else ""
            anchor = "" if mark.anchor == "start" else f' text-anchor="{attribute(mark.anchor)}"'
            return Markup(
                f'<text x="{x:.2f}" y="{y:.2f}" font-size="{mark.size:g}" fill="{attribute(mark.colour)}"{anchor}{halo}{turn}>{attribute(mark.text)}</text>'
            )


def _linked(mark: Stroke | Area | Dot | Words, piece: Markup) -> Markup:
    """The piece in a group that names its key."""
    room = ""
    if isinstance(mark, Words):
        left, top, right, bottom = mark.box
        more = (TOUCHED - (bottom - top)) / 2
        room = f'<rect x="{left - 1:.2f}" y="{top - more:.2f}" width="{right - left + 2:.2f}" height="{TOUCHED:g}" fill="transparent"/>'
    return Markup(f'<g data-key="{attribute(mark.key)}">{room}{piece}</g>')


def _points(points) -> Markup:
    return Markup(" ".join(["%.2f,%.2f" % point for point in points]))  # noqa: UP031 an f-string takes a third longer, and these are most of a picture


def _stroke(style: str) -> Markup:
    width, colour, dash = STYLES[style]
    if colour == "none":
        return Markup("")
    return Markup(f' stroke="{colour}" stroke-width="{width:g}"' + (f' stroke-dasharray="{dash}"' if dash else ""))
