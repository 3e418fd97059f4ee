"""Widgets with words for those who open a workbook without running it."""

from __future__ import annotations

import ipywidgets as widgets

from brimwork.shown import escape

# Long answers to choose from take the lines they need, and no box is wider than the page.
_LOOK = """<style>.brimwork .widget-radio-box { height: auto !important }
.brimwork .widget-radio-box label { display: flex; align-items: flex-start; height: auto; line-height: 1.35; white-space: normal; margin-bottom: 4px }
.brimwork .widget-radio-box input { order: -1; flex: none }
.brimwork .widget-text { min-width: min(26em, 100%) !important; max-width: 100% }
.brimwork .widget-text input { min-width: 6em }
.brimwork.jupyter-widgets-disconnected > * { display: none !important }
.brimwork.jupyter-widgets-disconnected::before { font: inherit; color: inherit; width: auto;
  content: "This part has stopped. Choose Run > Run All Cells: what you answered is kept, and comes back into its boxes." }
.brimwork .widget-text .widget-label { flex-shrink: 1; white-space: normal; overflow: visible; height: auto; line-height: 1.35 }
[data-jp-theme-light=false] figure:not(.bw figure) :is(img[src^="data:image/svg"], svg[role=img]) { filter: invert(.88) hue-rotate(180deg) }
[data-jp-theme-light=false] .brimwork select { appearance: auto; background-image: none !important; color-scheme: dark }</style>"""


class Part(widgets.VBox):
    """Widgets one below the other, with a plain text for those who see no widgets."""

    def __init__(self, children: list[widgets.Widget], plain: str):
        super().__init__([*children, widgets.HTML(_LOOK, layout={"display": "none"})])
        self.add_class("brimwork")
        self.plain = plain

    def _repr_mimebundle_(self, **named) -> dict[str, object]:
        lines = "".join(f"<p>{escape(line)}</p>" for line in self.plain.splitlines())
        return {
            **super()._repr_mimebundle_(**named),
            "text/html": f"{lines}<p><em>Run this cell to bring it to life: Run, Run All Cells.</em></p>",
            "text/plain": self.plain,
        }
