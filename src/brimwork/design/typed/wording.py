"""Words of the trade in the UK and in the US: our own sentences are written in the first and printed in either."""

from __future__ import annotations

import math
import re

from brimwork.design.typed.telling import US_UNITS
from brimwork.tape import on_a_tape
from brimwork.units import convert, number, read

# UK: US. Longer entries go before shorter ones that they hold.
PAIRS: dict[str, str] = {
    "aggregate type 1": "crushed aggregate base",
    "sharp sand": "concrete sand",
    "sand bed": "bedding course",
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
    "welded mesh": "welded wire mesh",
    "protection fleece": "protection underlayment",
    "fleece": "underlayment",
    "soakaway": "dry well",
    "services located": "utilities located",
    "rating plate": "nameplate",
    "search for services": "locate (811 ticket) for services",
    "services located and marked": "811 ticket in date, services marked",
    "residual-current protection": "ground-fault protection (GFCI)",
    "residual-current device": "GFCI",
    "RCD": "GFCI",
    "rated residual current": "rated trip current",
    "residual current": "ground-fault trip",
    "residual-current protection and earth tested": "ground-fault protection (GFCI) and equipment ground tested",
    "residual current, earth": "ground-fault trip, equipment ground",
    "earth leakage": "ground leakage",
    "mains electricity": "line-voltage electricity",
    "mains top-up": "potable-water top-up",
    "mains water": "potable water",
    "water mains": "water main",
    "socket": "receptacle",
    "duct": "conduit",
    "rammer or plate compactor, breaker": "tamper or plate compactor, demolition hammer",
    "rammer": "tamper",
    "spirit level": "level",
    "spirit levels": "levels",
    "barrow": "wheelbarrow",
    "hire": "rental",
    "care premises": "care facility",
    "electrician's certificate": "electrical permit and inspection",
    "arboriculturist": "arborist",
    "automatic level with staff": "auto level with grade rod",
    "qualified electrician": "licensed electrician",
    "qualified; local codes govern": "licensed; local codes govern",
    "stone base": "base of the drilled stones",
    "top of the highest stone": "top of the highest drilled stone",
    "highest stone": "highest drilled stone",
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
    "for each metre": "for each foot",
    "half a millimetre": "1/64 in (half a millimeter)",
    "metre": "meter",
    "metres": "meters",
    "millimetre": "millimeter",
    "millimetres": "millimeters",
    "staff": "grade rod",
    "staffs": "grade rods",
    "barrows": "wheelbarrows",
    "colour": "color",
    "centre": "center",
    "centred": "centered",
    "vapour": "vapor",
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

# A length, or two of them: 75 mm, 10 to 20 mm, +0/-10 mm; but not a speed, nor one that stands with inches already, before it or behind it.
_METRIC = re.compile(
    r"(?:(?P<word>[a-z]+) )?(?P<all>(?:(?P<first>\d+(?:\.\d+)?)(?P<between> to | and | or )|(?P<none>\+0)(?P<sign>/[+-]))?(?P<last>\d+(?:\.\d+)?) (?P<unit>mm|m)\b)"
    r"(?! ?\)|/|\^| \([\d.]+ (?:in|ft)\b)(?P<behind> at most| at least| or more| larger)?"
)
NOMINAL = 0.02  # a length that is whole inches or feet within this share is called by them, as the trade does: 150 mm and 6 in
# Words before or behind a length that may not be passed, and before one that must be reached.
_MOST = {"within", "most", "than", "over", "to", "bow", "bows", "raised"}
_LEAST = {"and", "for", "in", "under", "least", "by"}
_BRACKETED = re.compile(rf" \([^()]*\d (?:{'|'.join(map(re.escape, US_UNITS))})\)")
ROUNDED = "Inches and feet are rounded to what a tape shows, a tolerance to its tighter side; the metric figure in brackets is the one that was worked with."


def worded(text: str, region: str) -> str:
    """Our own text, written in the words of the UK, in the words of the region."""
    return _ANY.sub(_other, text) if region == "US" else text


def measured(text: str, region: str) -> str:
    """A sentence of ours that names lengths in mm or m: for the US with inches or feet before them."""
    return _METRIC.sub(_inches, text) if region == "US" else text


def spoken(text: str, region: str) -> str:
    """A sentence of ours in the words of the region, with its lengths in the units of the region."""
    return measured(worded(text, region), region)


def without_metric(text: str) -> str:
    """A sentence without the metric values that stand in brackets behind those of the US."""
    return _BRACKETED.sub("", text)


def tape(length: float) -> str:
    """A length (m) in inches, to the nearest sixteenth, as a tape in the US shows it: 75 1/8."""
    return on_a_tape(convert(length, "in"), 16)


def _inches(found: re.Match) -> str:
    """The length as the trade there writes it, with the metric one behind; what is limited is rounded so that the limit still holds."""
    word, behind = found["word"], (found["behind"] or "").strip()
    way = -1 if word in _MOST or behind == "at most" or found["sign"] else 1 if word in _LEAST or behind in ("at least", "or more") else 0
    inside = found["between"] == " to " and not way
    unit = "mil" if 0 < float(found["first"] or found["last"]) < 1 and found["unit"] == "mm" else found["unit"]
    last = _there(found["last"], unit, -1 if inside else way)
    first = found["none"] and f"+0, {found['sign'][1]}" or found["first"] and f"{_there(found['first'], unit, 1 if inside else way)}{found['between']}" or ""
    return f"{f'{word} ' if word else ''}{first}{last} {_UNITS[unit]} ({found['all']}){found['behind'] or ''}"


_UNITS = {"mm": "in", "m": "ft", "mil": "mil"}


def _there(figure: str, unit: str, way: int) -> str:
    """The figure in mils, inches or feet, as text: up, down or to the nearest mark of a tape for way = 1, -1, 0."""
    if unit == "mil":
        return f"{round(convert(float(figure) / 1e3, 'in') * 1e3, -1):.0f}"
    value = convert(read(f"{figure} {unit}", "m"), _UNITS[unit])
    if abs(round(value) - value) <= NOMINAL * value:
        return f"{round(value)}"
    if unit == "m":
        return f"{math.ceil(value)}" if way > 0 else number(float(f"{value:.2g}"))
    return on_a_tape(value, 32 if value < 0.125 else 16 if value < 1 else 4, way)


def _other(found: re.Match) -> str:
    there = _LOWER[found[0].lower()]
    return there[:1].upper() + there[1:] if found[0][:1].isupper() else there
