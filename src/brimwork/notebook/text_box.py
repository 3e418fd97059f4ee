"""A box for a short text that the kernel changes too; one of ipywidgets lets late answers take the place of what somebody types."""

from __future__ import annotations

from pathlib import Path

import traitlets

from brimwork.notebook.heard import Heard


class TextBox(Heard):
    """Its text counts once it is entered. What is being typed, and what was entered since, stands until the kernel has answered that."""

    _esm = Path(__file__).with_name("text_box.js")
    value = traitlets.Unicode().tag(sync=True)
    description = traitlets.Unicode().tag(sync=True)
    placeholder = traitlets.Unicode().tag(sync=True)
