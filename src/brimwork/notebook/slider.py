"""A slider that the browser draws itself, so that it has a name for whoever does not see it; the one of ipywidgets has none."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import traitlets

from brimwork.notebook.heard import Heard


class Slider(Heard):
    """A number between `min` and `max` in steps, in `unit`; `name` is read out and shown on pointing.

    It shows pictures in the figure beside it: `show` one at once, `keep` some for its steps, as long as the other values are those of `beside`.
    When the reader moves it to a step whose picture it keeps, the page shows that without waiting, and `shown` says for which `beside` it did.
    """

    _esm = Path(__file__).with_name("slider.js")
    name = traitlets.Unicode().tag(sync=True)
    letter = traitlets.Unicode().tag(sync=True)
    unit = traitlets.Unicode().tag(sync=True)
    value = traitlets.Float().tag(sync=True)
    min = traitlets.Float().tag(sync=True)
    max = traitlets.Float().tag(sync=True)
    step = traitlets.Float().tag(sync=True)
    shown = traitlets.Unicode().tag(sync=True, echo_update=False)

    def at(self) -> int:
        """The number of the step it stands on."""
        return round((self.value - self.min) / self.step)

    def show(self, figure: str) -> None:
        """Show a figure (HTML), if the sliders still stand on the steps that it names in `data-at`."""
        self.send({"show": figure})

    def keep(self, beside: str, figures: Mapping[int, str]) -> None:
        """Keep figures (HTML) for steps, by their numbers; those kept beside other values are dropped."""
        self.send({"beside": beside, "keep": figures})
