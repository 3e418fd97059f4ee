"""Two buttons that save the picture beside them, for a slide or a sheet; all of it happens in the page."""

from __future__ import annotations

from pathlib import Path

import anywidget


class Saving(anywidget.AnyWidget):
    """Saves the figure of its cell as SVG, or as PNG as wide as a projector shows."""

    _esm = Path(__file__).with_name("saving.js")
