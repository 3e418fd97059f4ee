"""A sheet as an image element of a page: an untrusted notebook, which strips every SVG, still shows it, with its description."""

from __future__ import annotations

from base64 import b64encode

from brimwork.drawing import svg
from brimwork.drawing.records import Sheet
from brimwork.shown import Markup, attribute

PIXELS = 96 / 25.4  # of a page, for a millimetre


def element(sheet: Sheet) -> Markup:
    """An <img> that carries the SVG of the sheet within itself and its description as the alternative text; the same bytes every time."""
    data = attribute(b64encode(svg.write_svg(sheet, scale_to_page=False).encode()).decode())
    size = f'width="{sheet.width * PIXELS:.0f}" height="{sheet.height * PIXELS:.0f}" style="max-width:100%;height:auto"'
    return Markup(f'<img src="data:image/svg+xml;base64,{data}" alt="{attribute(sheet.alt)}" {size}>')
