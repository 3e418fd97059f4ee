"""Words of the trade in the UK and in the US: our own sentences are written in the first and printed in either."""

from __future__ import annotations

import re

from brimwork.units import read, write

# UK: US. Longer entries go before shorter ones that they hold.
PAIRS: dict[str, str] = {
    "aggregate type 1": "crushed aggregate base",
    "sharp sand": "coarse sand",
    "sand bed": "leveling bed",
    "sub-base": "base course",
    "formation": "subgrade",
    "temporary bench mark": "benchmark",
    "bench mark": "benchmark",
    "paving slab": "paver",
    "exterior plywood": "exterior-grade plywood",
    "strut timber": "strut lumber",
    "timber": "lumber",
    "skip": "roll-off container",
    "hose clip": "hose clamp",
    "hose clips": "hose clamps",
    "hose tail": "barb fitting",
    "hose tails": "barb fittings",
    "tank connector": "bulkhead fitting",
    "tank connectors": "bulkhead fittings",
    "stop valve": "shutoff valve",
    "garden hosepipe": "garden hose",
    "weldmesh": "welded wire mesh",
    "protection fleece": "protection underlayment",
    "fleece": "underlayment",
    "soakaway": "dry well",
    "search for services": "locate (811 ticket) for services",
    "services located and marked": "811 ticket in date, services marked",
    "residual-current protection": "ground-fault protection (GFCI)",
    "residual current": "ground-fault trip",
    "earth": "ground",
    "mains electricity": "line-voltage electricity",
    "mains": "line voltage",
    "socket": "receptacle",
    "method statement": "job hazard analysis",
    "handover": "closeout",
    "turf": "sod",
    "kerb": "curb",
    "levelled": "leveled",
    "levelling": "leveling",
    "litres": "liters",
    "metre": "meter",
    "colour": "color",
}
_ANY = re.compile("|".join(rf"(?<![\w-]){re.escape(word)}(?![\w-])" for word in sorted(PAIRS, key=len, reverse=True)), re.IGNORECASE)


_METRIC = re.compile(r"(\d+(?:\.\d+)?) (mm|m)\b(?! ?\))")
_INCHES = {"mm": "in", "m": "ft"}


def worded(text: str, region: str) -> str:
    """Our own text, written in the words of the UK, in the words of the region."""
    return _ANY.sub(_other, text) if region == "US" else text


def measured(text: str, region: str) -> str:
    """A sentence of ours that names lengths in mm or m: for the US with inches or feet before them."""
    return _METRIC.sub(_inches, text) if region == "US" else text


def _inches(found: re.Match) -> str:
    length = read(found[0], "m")
    here = write(length, _INCHES[found[2]], 2).replace(".0 ", " ")
    return f"{here} ({found[0]})"


def _other(found: re.Match) -> str:
    there = PAIRS[found[0].lower()]
    return there[:1].upper() + there[1:] if found[0][:1].isupper() else there
