"""Widgets with words for those who open a workbook without running it."""

from __future__ import annotations

import ipywidgets as widgets


class Part(widgets.VBox):
    """Widgets one below the other, with a plain text for those who see no widgets."""

    def __init__(self, children: list[widgets.Widget], plain: str):
        super().__init__(children)
        self._plain = plain

    def _repr_mimebundle_(self, **named) -> dict[str, object]:
        return {**super()._repr_mimebundle_(**named), "text/plain": self._plain}
