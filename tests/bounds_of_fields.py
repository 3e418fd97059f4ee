"""Every value of a design in one table: what it can be, what it is held against, or why nothing can be: python tests/bounds_of_fields.py [WORDS]"""

import sys

from brimwork.design.follows.agreeing import AGREEING
from brimwork.design.follows.measured import CANNOT, DIFFERS
from brimwork.design.follows.together import TOGETHER
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.limits import Bounds
from brimwork.design.typed.spans import SPANS, UNBOUNDED

_SITE = "what somebody does or sees on site: no number on file bears on it"
_BUILT = "what is built: the drawing shows it, and whatever hangs on it follows"
# What a word, a day or a limit of a design's own is held against, or why nothing can be.
HELD_AGAINST: dict[str, str] = {
    "site.use": "nothing on file says who comes near; every word but 'private' is stricter",
    "site.water_covered": "seen on site; without it the depth that vessel, trough or header leave open counts",
    "site.sling_equal": "seen on the gear; without it two legs carry, whatever their number",
    "site.legionella": "use, temperature of the water and splash: the worse counts",
    "site.pit_sides": "ground water in the pit: sides in water are not firm",
    **dict.fromkeys(("vessel.shape", "vessel.stands_on", "vessel.coat", "stones.stand_on", "stones.valves", "blade.feed", "cascade.feed"), _BUILT),
    **dict.fromkeys(("pipe.valve", "pipe.check_valve", "pump.cut_out"), _BUILT + "; the shopping list buys it"),
    "blade.wall_retains": "soil over the paving, which counts as held back whatever the word",
    "pipe.friction_law": "laws for the same hose lie within a few per cent of each other, as the tests of pipes show",
    "pump.frequency": "the frequency of the supply",
    "supply.frequency": "the frequency of the country",
    "supply.conductor": "drop, resistance, rating of cable and breaker, by the tables of conductors",
    "supply.residual_current": "the rating of the device, and what protects people in the country",
    **dict.fromkeys(("buying.stone_sold", "buying.sand_sold", "buying.sub_base_sold"), "what its price is for"),
    **dict.fromkeys(("prices.stone_per", "prices.sand_per", "prices.sub_base_per"), "how it is bought: a price counts for nothing else"),
    **dict.fromkeys(("costing.tax_on", "costing.prices_are"), "the tax office: nothing on file can bear on it"),
    **dict.fromkeys(("programme.start", "programme.closed"), "the calendar"),
    **dict.fromkeys(
        ("site.engineered", "reservoir.cut_walls"), "an engineer's drawing, which no number on file shows: no check passes by it, a fail is partly met"
    ),
    "site.slings": "the lift by hand, which counts every piece where none are used",
    "programme.soil_type": "a trial dig: no number on file bears on it",
    "answers.hose_route": _SITE,
    "answers.rain_route": "the bore of the overflow pipe",
    "answers.treatment_volume": _SITE,
    "answers.drain_hole": _SITE,
    "answers.load_patch": "slab and joints of the blocks, wherever their places are known",
    "answers.settlement": _SITE,
    "answers.frost_wall": "the pull in the wall over its strength",
    "answers.formation": _SITE,
    "answers.lid": "a foot and a wheel on a block under its cover",
    "answers.frost_ground": "frost depth, depth of the base and its granular layer",
    "answers.services": _SITE,
    "answers.backfill": "the bow of the box between its struts",
    "answers.surface_water": "soil beside the liner against its edge",
    "answers.liner_faces": "thickness of lining and fleece together",
    "answers.cable_cover": "the cover over the duct",
    "answers.socket": "the place of the supply point against the lined catch",
    "answers.duct": "the bore of the duct",
    "answers.pump_marking": _SITE,
    "answers.pump_access": "slabs and covers over the pump's bay, and a bay in the only block",
    "answers.top_up": _SITE,
    "answers.edges": "edges over the paving, by the levels",
    "answers.pack": _SITE,
}
OWN_LIMITS = "the usual limits: where safety or water rests on a check a design's own only tighten it"


def bounds() -> dict[str, tuple[str, str]]:
    """By "section.key": what it can be, and what it is held against or why nothing can be. Raises KeyError for a value of which nothing is said."""
    with_it: dict[str, list[str]] = {}
    for row in (*AGREEING, *TOGETHER, *CANNOT, *DIFFERS):
        with_it.setdefault(row.key, []).append(f"{row.must} {row.words}")
    return {f"{section}.{name}": _line(f"{section}.{name}", field, with_it) for section, fields in SECTIONS.items() for name, field in fields.items()}


def _line(key: str, field, with_it: dict[str, list[str]]) -> tuple[str, str]:
    if isinstance(field, Bounds):
        return "limits of its own", OWN_LIMITS
    if key in UNBOUNDED:
        return "anything from nothing up", UNBOUNDED[key]
    if key in SPANS:
        low, high, why = SPANS[key]
        return f"{low} to {high} ({why})", "; ".join(with_it.get(key, ["its span alone"]))
    return "one of its words, or a day", HELD_AGAINST[key]


if __name__ == "__main__":
    for name, (can_be, held) in bounds().items():
        if all(word in name for word in sys.argv[1:]):
            print(f"{name}: {can_be}; {held}")
