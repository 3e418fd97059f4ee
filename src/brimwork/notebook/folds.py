"""Parts under titles, one open at a time. The titles are buttons, which the keyboard reaches; those of the accordion of ipywidgets take no focus."""

from __future__ import annotations

import ipywidgets as widgets
import traitlets

# Shared by all, because the page opens faster with few of them.
_TITLE = widgets.Layout(width="auto", margin="2px 0")
_STYLE = widgets.ButtonStyle(text_color="var(--jp-ui-font-color1)", font_weight="bold")
_SHOWN, _HIDDEN = widgets.Layout(padding="0 0 0 1.5em"), widgets.Layout(display="none")
_OPEN, _CLOSED = "▾ ", "▸ "


class Folds(widgets.VBox):
    """`parts` holds what stands under each title; `selected_index` is the one that is open, or None."""

    selected_index = traitlets.Int(None, allow_none=True)

    def __init__(self, count: int):
        self.parts = [widgets.VBox(layout=_HIDDEN) for _ in range(count)]
        self.heads = [widgets.Button(layout=_TITLE, style=_STYLE) for _ in range(count)]
        super().__init__([widget for pair in zip(self.heads, self.parts) for widget in pair])
        for place, head in enumerate(self.heads):
            head.add_class("brimwork-fold")
            head.on_click(lambda _, place=place: self._pressed(place))
        self.observe(lambda _: self._show(), "selected_index")
        self.titles = [""] * count

    @property
    def titles(self) -> tuple[str, ...]:
        return self._titles

    @titles.setter
    def titles(self, titles) -> None:
        self._titles = tuple(titles)
        self._show()

    def _pressed(self, place: int) -> None:
        self.selected_index = None if place == self.selected_index else place

    def _show(self) -> None:
        for place, (head, part, title) in enumerate(zip(self.heads, self.parts, self._titles)):
            opened = place == self.selected_index
            head.description, head.tooltip = f"{_OPEN if opened else _CLOSED}{title}", "open; press to close" if opened else "press to open"
            part.layout = _SHOWN if opened else _HIDDEN
