"""A design as it is, but for one value that is worked out: the flow that comes in place of the one wanted."""

from __future__ import annotations

from brimwork.design.typed.known import Given, Known


class Altered:
    """What is known of `design`, with another value (SI) under one key."""

    def __init__(self, design: Known, key: str, value: float):
        self.design, self.key, self.value = design, key, value

    def __getattr__(self, name: str):
        return getattr(self.design, name)

    def __getitem__(self, key: str):
        return self.value if key == self.key else self.design[key]

    def given(self, key: str) -> Given | None:
        return Given(self.value, "", "worked out") if key == self.key else self.design.given(key)
