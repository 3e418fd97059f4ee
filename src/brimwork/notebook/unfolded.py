"""What a reader has unfolded in the outputs of a cell stays so when they are drawn again; a new output alone comes folded."""

from __future__ import annotations

from pathlib import Path

import anywidget


class Unfolded(anywidget.AnyWidget):
    """Shows nothing, and minds every `details` of its cell's outputs by its `data-name`, or by the words of its summary."""

    _esm = Path(__file__).with_name("unfolded.js")
