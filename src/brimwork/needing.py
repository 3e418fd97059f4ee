"""Libraries that only some parts need: where one is missing, words in place of a traceback."""

from __future__ import annotations

from brimwork.units import InputError


class needed:  # noqa: N801 - reads as a sentence: with needed("numpy", "working arrays")
    """Around an import. Raises InputError where that library is not installed, with what wanted it and what to type."""

    def __init__(self, library: str, purpose: str) -> None:
        self.library, self.purpose = library, purpose

    def __enter__(self) -> None:
        pass

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: object) -> None:
        if isinstance(error, ImportError) and (error.name or "").partition(".")[0] == self.library:
            raise InputError(f"{self.purpose} needs the library {self.library}, which is not installed here: type pip install {self.library}") from None
