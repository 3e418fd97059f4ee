"""What is known of a design, as seen by whatever reads it: a value with its text and basis, or nothing."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Protocol


@dataclass(frozen=True)
class Given:
    """A value of the design: SI number, word or list; the text it was written as; its basis."""

    value: Any
    text: Any
    basis: str = "yours"


class Unknown(Exception):
    """A result cannot be worked out: `keys` of the design are missing."""

    def __init__(self, *keys: str):
        super().__init__(*keys)
        self.keys = keys


class Known(Protocol):
    """A design as its steps, levels and lists see it: its kind, its region, and values by "section.key"."""

    @property
    def kind(self) -> str: ...

    @property
    def region(self) -> str: ...

    @property
    def values(self) -> dict[str, Given]: ...

    def __getitem__(self, key: str) -> Any:
        """The value in SI, a word or a list. Raises Unknown."""

    def given(self, key: str) -> Given | None:
        """The value with its text and basis; None where nobody gave it and nothing is assumed."""
