"""A slider that the browser draws itself, so that it has a name for whoever does not see it; the one of ipywidgets has none."""

from __future__ import annotations

from pathlib import Path

import anywidget
import traitlets


class Slider(anywidget.AnyWidget):
    """A number between `min` and `max` in steps, in `unit`; `name` is read out and shown on pointing.

    `frames` holds the figure beside it, as HTML, for each step: the page shows that at once and the kernel's follows; "" where only the kernel knows.
    """

    _esm = Path(__file__).with_name("slider.js")
    name = traitlets.Unicode().tag(sync=True)
    unit = traitlets.Unicode().tag(sync=True)
    value = traitlets.Float().tag(sync=True)
    min = traitlets.Float().tag(sync=True)
    max = traitlets.Float().tag(sync=True)
    step = traitlets.Float().tag(sync=True)
    frames = traitlets.List(traitlets.Unicode()).tag(sync=True)
