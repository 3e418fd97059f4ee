"""What somebody means who types into a box of a design: where the country says which gallon it is and what a comma does, nobody is asked."""

from __future__ import annotations

import re

from brimwork.spellings import meant_in_the_us

_FRACTIONS = {"half": "1/2", "quarter": "1/4", "three quarter": "3/4", "three-quarter": "3/4", "three quarters": "3/4", "eighth": "1/8"}
_PARTS = "|".join(sorted(_FRACTIONS, key=len, reverse=True))
_IN_WORDS = re.compile(r"^\s*(" + _PARTS + r")(?:\s+of)?(?:\s+an?)?[\s-]+(?:inch|in)\s*$", re.IGNORECASE)
_THOUSANDS = re.compile(r"(?<![\d,.])\d{1,3}(?:,\d{3})+(?![\d,])")


def as_meant(text: str, region: str) -> str:
    """The text as the reader of quantities takes it: half an inch as 1/2 in; for the US gallons, pints and the like as those of the US, 1,000 as 1000."""
    if found := _IN_WORDS.match(text):
        return f"{_FRACTIONS[found[1].lower()]} in"
    if region == "US":
        return meant_in_the_us(_THOUSANDS.sub(lambda number: number[0].replace(",", ""), text))
    return text
