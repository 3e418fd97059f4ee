"""Money as people type it, $4/ft, 1,200 USD or a plain 350, as the reader of quantities takes it: cur stands for the one currency of a design."""

from __future__ import annotations

import re

_SIGN = r"(?:US\$|[$€£]|\b(?:USD|EUR|GBP)\b)"
_BEFORE = re.compile(rf"^\s*{_SIGN}\s*(?P<figure>[\d.,]+)\s*(?P<per>/\s*\S+)?\s*$", re.IGNORECASE)
_BEHIND = re.compile(rf"^\s*(?P<figure>[\d.,]+)\s*{_SIGN}\s*(?P<per>/\s*\S+)?\s*$", re.IGNORECASE)
_PLAIN = re.compile(r"^\s*(?P<figure>[\d.,]+)\s*(?P<per>/\s*\S+)?\s*$")
_THOUSANDS = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?")
LONGEST = 60  # characters of an amount with its unit


def in_currency(given: str | int | float, unit: str) -> str | int | float:
    """What was typed for money in `unit` ("cur", "cur/ft") with the currency's sign or name put as cur; a bare amount gets the unit. Anything else as it is."""
    text = f"{given}" if isinstance(given, int | float) and not isinstance(given, bool) else given
    if not isinstance(text, str) or len(text) > LONGEST:
        return given
    found = _BEFORE.match(text) or _BEHIND.match(text) or _PLAIN.match(text)
    if not found:
        return given
    figure = found["figure"]
    if "," in figure:
        if not _THOUSANDS.fullmatch(figure):
            return given  # 3,50 may be meant either way
        figure = figure.replace(",", "")
    per = (found["per"] or "").replace(" ", "")
    return f"{figure} cur{per}" if per or unit == "cur" else f"{figure} {unit}"
