"""The words of a question tied to whatever takes its answer, for those who have a page read to them."""

from __future__ import annotations

from pathlib import Path

import anywidget


class Tied(anywidget.AnyWidget):
    """Shows nothing: boxes, lists and choices of its part are described by what stands there with the class ASKED."""

    _esm = Path(__file__).with_name("tied.js")


ASKED = "brimwork-asked"
