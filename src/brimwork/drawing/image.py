"""A sheet as an image element of a page: an untrusted notebook, which strips every SVG, still shows it, with its description."""

from __future__ import annotations

from base64 import b64encode
from html import escape

from brimwork.drawing import svg
from brimwork.drawing.records import Sheet

PIXELS = 96 / 25.4  # of a page, for a millimetre


def element(sheet: Sheet) -> str:
    """An <img> that carries the SVG of the sheet within itself and its description as the alternative text; the same bytes every time."""
    data = b64encode(svg.write(sheet, scale_to_page=False).encode()).decode()
    size = f'width="{sheet.width * PIXELS:.0f}" height="{sheet.height * PIXELS:.0f}" style="max-width:100%;height:auto"'
    return f'<img src="data:image/svg+xml;base64,{data}" alt="{escape(sheet.alt)}" {size}>'
