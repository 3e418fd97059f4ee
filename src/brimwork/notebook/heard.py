"""A widget whose value page and kernel both change: what somebody does in the page is never undone by an answer to what was done before."""

from __future__ import annotations

import anywidget
import traitlets


class Heard(anywidget.AnyWidget):
    """The page counts what it says, and the kernel sends with each value how much of that it had heard; by this the page knows one that comes late.

    With each value it also says when it was `done` (ms): what waited behind others of its own widget may come after what was done later in another one.
    """

    said = traitlets.Int().tag(sync=True)
    done = traitlets.Float().tag(sync=True)

    def send_state(self, key=None):
        keys = {key} if isinstance(key, str) else key
        super().send_state({*keys, "said"} if keys and "value" in keys else key)
