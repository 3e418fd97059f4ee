"""Buttons that save the pictures of a page, for a slide or a sheet; all of it happens in the page."""

from __future__ import annotations

from pathlib import Path

import anywidget

SAVES = Path(__file__).with_name("saving.js").read_text(encoding="utf-8")


class Saving(anywidget.AnyWidget):
    """Puts two buttons below each picture of its page that has a caption."""

    _esm = f"{SAVES}\nexport default {{ render: saves }};"
