"""CSV as a spreadsheet opens it without harm: numbers as numbers, and no text that it would take for a formula."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence

_DANGEROUS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")


def as_csv(head: Sequence[str], rows: Iterable[Sequence[object]]) -> bytes:
    """A table in UTF-8 with its mark, so that every spreadsheet sees the accents; the same table gives the same bytes."""
    made = io.StringIO(newline="")
    writer = csv.writer(made, lineterminator="\r\n")
    writer.writerow(head)
    writer.writerows([cell(value) for value in row] for row in rows)
    return b"\xef\xbb\xbf" + made.getvalue().encode()


def cell(value: object) -> str:
    """One cell: a number plainly, a text cleaned of what turns lines round, and never a formula."""
    if isinstance(value, bool) or value is None:
        return {True: "yes", False: "no", None: ""}[value]
    if isinstance(value, int | float):
        return f"{value:.6g}" if isinstance(value, float) else str(value)
    text = "".join(character if character.isprintable() else " " for character in str(value))
    return f"'{text}" if text.lstrip().startswith(_DANGEROUS) or text.startswith(_DANGEROUS) else text
