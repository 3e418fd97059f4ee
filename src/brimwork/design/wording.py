"""Words of the trade in the UK and in the US: our own sentences are written in the first and printed in either."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from brimwork.units import read, write

if TYPE_CHECKING:
    from brimwork.design.checks import Finding

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
    "residual-current device": "GFCI",
    "RCD": "GFCI",
    "rated residual current": "rated trip current",
    "residual current": "ground-fault trip",
    "earth": "ground",
    "mains electricity": "line-voltage electricity",
    "mains": "line voltage",
    "socket": "receptacle",
    "duct": "conduit",
    "rammer or plate compactor, breaker": "tamper or plate compactor, demolition hammer",
    "rammer": "tamper",
    "spirit level": "level",
    "spirit levels": "levels",
    "barrow": "wheelbarrow",
    "programme": "schedule",
    "method statement": "job hazard analysis",
    "handover": "closeout",
    "turf": "sod",
    "kerb": "curb",
    "levelled": "leveled",
    "levelling": "leveling",
    "re-levelled": "re-leveled",
    "re-levelling": "re-leveling",
    "litre": "liter",
    "litres": "liters",
    "metre": "meter",
    "metres": "meters",
    "millimetre": "millimeter",
    "millimetres": "millimeters",
    "colour": "color",
    "labour": "labor",
    "neighbour": "neighbor",
    "neighbours": "neighbors",
    "fertilised": "fertilized",
    "utilisation": "utilization",
}
_LOWER = {here.lower(): there for here, there in PAIRS.items()}
# A word of its own; not a part of a key of the design file, such as answers.formation or [programme].
_WORDS = "|".join(re.escape(word) for word in sorted(PAIRS, key=len, reverse=True))
_ANY = re.compile(rf"(?<![\w\[-])(?<!\w\.)(?:{_WORDS})(?![\w-])(?!\.\w)", re.IGNORECASE)

# A length, or two of them: 75 mm, 10 to 20 mm; but not a speed, nor one that stands in brackets behind inches already.
_METRIC = re.compile(r"(?:(?P<first>\d+(?:\.\d+)?)(?P<between> to | and | or ))?(?P<last>\d+(?:\.\d+)?) (?P<unit>mm|m)\b(?! ?\)|/)")
_INCHES = {"mm": "in", "m": "ft"}


def worded(text: str, region: str) -> str:
    """Our own text, written in the words of the UK, in the words of the region."""
    return _ANY.sub(_other, text) if region == "US" else text


def measured(text: str, region: str) -> str:
    """A sentence of ours that names lengths in mm or m: for the US with inches or feet before them."""
    return _METRIC.sub(_inches, text) if region == "US" else text


def spoken(text: str, region: str) -> str:
    """A sentence of ours in the words of the region, with its lengths in the units of the region."""
    return measured(worded(text, region), region)


def graded(found: list[Finding], region: str) -> list[Finding]:
    """Findings, which are written in the words of the UK, as they are read in the region."""
    said = ("title", "value", "limit", "remedy", "basis", "note")
    return [replace(finding, **{name: spoken(getattr(finding, name), region) for name in said}) for finding in found]


def _inches(found: re.Match) -> str:
    unit = _INCHES[found["unit"]]
    last = _there(found["last"], found["unit"])
    first = f"{_there(found['first'], found['unit']).removesuffix(f' {unit}')}{found['between']}" if found["first"] else ""
    return f"{first}{last} ({found[0]})"


def _there(figure: str, unit: str) -> str:
    return write(read(f"{figure} {unit}", "m"), _INCHES[unit], 2).replace(".0 ", " ")


def _other(found: re.Match) -> str:
    there = _LOWER[found[0].lower()]
    return there[:1].upper() + there[1:] if found[0][:1].isupper() else there
