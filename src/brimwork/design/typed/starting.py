"""From nothing to a design of one's own: twelve to seventeen questions for each kind of feature, in a builder's words, and a usual value with its basis for the rest.

A usual value is never marked as somebody's own. What only the site, the maker or a person can say has none: who comes near the water, what the
soil and the blocks carry, residual-current protection, every answer; a check of safety that needs such a value is not shown until somebody gives it.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from typing import Any

from brimwork import units
from brimwork.design.typed.design import Design, blank_design, field_of
from brimwork.design.typed.fields import sections
from brimwork.design.typed.known import Given, Unknown
from brimwork.design.typed.making import CP, J
from brimwork.units import InputError

_MEMORY, _READ = "memory", "read"
Usual = tuple[str | int | float | list, str | int | float | list, str]  # in the UK, in the US, basis

# What is asked first, by kind; the others of the short page are usual values that decide much.
_FIRST, _BLOCKS = ("site.use", "site.bed_length", "site.bed_width"), ("reservoir.block_length", "reservoir.block_width", "reservoir.block_height")
_LABEL = ("pump.maximum_flow", "pump.shut_off_head", "pump.power", "pipe.bore")
ASKED_FIRST: dict[str, tuple[str, ...]] = {
    "overflowing vessel": (
        *_FIRST, "vessel.rim_diameter", "vessel.height", "vessel.mass", "vessel.water", "vessel.foot_outside", *_BLOCKS, *_LABEL,
    ),
    "drilled stones": (*_FIRST, "stones.diameters", "stones.heights", *_BLOCKS, *_LABEL),
    "blade": (*_FIRST, "blade.lip_width", "blade.lip_level", "blade.wall_height", "blade.wall_retains", *_BLOCKS, *_LABEL),
    "cascade": (
        *_FIRST, "cascade.steps", "cascade.width", "cascade.step_fall", "cascade.tread", "cascade.top_level", "cascade.header_volume", "cascade.rill_length",
        *_BLOCKS, *_LABEL,
    ),
}  # fmt: skip
_COUNTS = ("reservoir.blocks_along", "reservoir.blocks_across", "catch.apron")
ALSO_SHORT: dict[str, tuple[str, ...]] = {
    "overflowing vessel": ("vessel.stands_on", "slab.length", "slab.width", "slab.thickness", *_COUNTS, "pipe.length"),
    "drilled stones": ("stones.stand_on", "slab.length", "slab.width", "slab.thickness", "stones.branch_lengths", "stones.branch_bore", *_COUNTS),
    "blade": ("blade.trough_width", "blade.trough_depth", *_COUNTS, "pipe.length"),
    "cascade": ("cascade.rill_width", "cascade.rill_slope", *_COUNTS, "pipe.length"),
}

# In a builder's words, for the UK.
BUILDERS_WORDS: dict[str, str] = {
    "site.use": "Who comes near the water?",
    "site.bed_length": "Length of the bed that you have",
    "site.bed_width": "Width of the bed that you have",
    "vessel.rim_diameter": "Across the rim",
    "vessel.height": "Height",
    "vessel.mass": "Weight, empty",
    "vessel.water": "Water that fills it to the rim",
    "vessel.foot_outside": "Across the foot",
    "vessel.stands_on": "What it stands on",
    "slab.length": "Length of the slab under it",
    "slab.width": "Width of the slab",
    "slab.thickness": "Thickness of the slab",
    "stones.diameters": "Across each stone",
    "stones.heights": "Height of each stone",
    "stones.branch_lengths": "Hose to each stone",
    "stones.branch_bore": "Inside of that hose",
    "stones.stand_on": "What the stones stand on",
    "blade.lip_width": "Width of the lip",
    "blade.lip_level": "Height of the lip over the paving",
    "blade.wall_height": "Height of the wall",
    "blade.wall_retains": "What the wall holds back",
    "blade.trough_width": "Trough behind the lip, front to back",
    "blade.trough_depth": "Depth of the trough",
    "cascade.steps": "Number of steps",
    "cascade.width": "Width of the steps",
    "cascade.step_fall": "Fall of each step",
    "cascade.tread": "Depth of a step, front to back",
    "cascade.top_level": "Height of the top lip over the paving",
    "cascade.header_volume": "Water in the top pool, below its lip",
    "cascade.rill_length": "Length of the rill below the steps (0 for none)",
    "cascade.rill_width": "Width of the rill",
    "cascade.rill_slope": "Fall of the rill",
    "reservoir.block_length": "Length of one block",
    "reservoir.block_width": "Width of one block",
    "reservoir.block_height": "Height of one block",
    "reservoir.blocks_along": "Blocks in a row",
    "reservoir.blocks_across": "Rows of blocks",
    "pump.maximum_flow": "Most water the pump sends, by its label",
    "pump.shut_off_head": "Highest lift, by its label",
    "pump.power": "Watts, by its label",
    "pipe.bore": "Inside of the hose, across",
    "pipe.length": "Length of the hose",
    "catch.apron": "Stone beyond the box, each side",
    "site.open_water": "Open water that a child can reach, depth",
    "site.soil_bearing": "What the soil carries",
    "reservoir.short_term_strength": "Crushing strength of the blocks, short term, by their maker",
}

_COMMON: dict[str, Usual] = {
    "slab.thickness": ("50 mm", "2 in", CP), "slab.density": ("2300 kg/m3", "144 lb/ft3", CP),
    "flow.water_temperature": ("20 degC", "68 degF", J),
    "reservoir.blocks_along": (1, 1, CP), "reservoir.blocks_across": (1, 1, CP),
    "reservoir.void_fraction": (0.95, 0.95, CP), "reservoir.creep_factor": (0.4, 0.4, J), "reservoir.safety_factor": (1.5, 1.5, J),
    "reservoir.lowest_level": ("150 mm", "6 in", CP),
    "pump.bay": ("200 mm", "8 in", J),
    "pipe.fittings": (4, 4, CP), "pipe.friction_law": ("Blasius", "Blasius", CP), "pipe.check_valve": ("no", "no", CP),
    "levels.block_top": ("-60 mm", "-2.5 in", CP), "levels.liner_edge": ("0 mm", "0 in", CP), "levels.staple_line": ("-20 mm", "-0.75 in", CP),
    "ground.lining_thickness": ("10 mm", "0.4 in", CP), "ground.sand": ("30 mm", "1 in", CP), "ground.sub_base": ("100 mm", "4 in", CP),
    "ground.clearance": ("12 mm", "0.5 in", CP), "ground.box_upstand": ("20 mm", "0.75 in", CP), "ground.board": ("18 mm", "0.75 in", CP),
    "ground.working_space": ("150 mm", "6 in", CP), "ground.bulking": (1.3, 1.3, CP),
    "catch.splash_factor": (0.5, 0.5, CP), "catch.stone_thickness": ("50 mm", "2 in", CP), "catch.stone_density": ("1600 kg/m3", "100 lb/ft3", CP),
    "catch.stone_waste": (0.1, 0.1, CP), "catch.hold_up": (0.03, 0.03, J),
    "lining.beyond_apron": ("100 mm", "4 in", CP), "lining.rolls": (["2 m", "3 m", "4 m", "6 m"], ["5 ft", "10 ft", "15 ft", "20 ft"], CP),
    "lining.smallest_stone": ("20 mm", "0.75 in", CP), "lining.mesh_opening": ("10 mm", "0.375 in", CP),
    "climate.evaporation": ("5 mm/day", "0.2 in/day", CP), "climate.coefficient": (1.05, 1.05, _MEMORY), "climate.splash": ("2 L/day", "0.5 US gal/day", J),
    "overflow_pipe.bore": ("40 mm", "1.5 in", CP),
    "supply.voltage": ("230 V", "120 V", CP), "supply.power_factor": (0.9, 0.9, CP), "supply.hours_per_day": ("10 h", "10 h", CP),
}  # fmt: skip
_FILM: Usual = ("0.20 L/s per m", "1.0 US gal/min per ft", CP)
_BY_KIND: dict[str, dict[str, Usual]] = {
    "overflowing vessel": {
        "flow.for_each_metre": _FILM, "flow.weir_coefficient": ("1.70 m^0.5/s", "3.08 ft^0.5/s", _MEMORY),
        "vessel.foot_inside": ("0 mm", "0 in", J), "vessel.rim_out_of_level": ("1 mm", "0.04 in", J), "vessel.offset": ("0 mm", "0 in", J), "vessel.stands_on": ("slab", "slab", CP),
        "pipe.mouth_below_rim": ("15 mm", "0.625 in", CP),
    },
    "drilled stones": {
        "flow.for_each_metre": _FILM, "stones.branch_bore": ("19 mm", "0.75 in", CP), "stones.branch_fittings": (3.5, 3.5, CP), "stones.valves": ("yes", "yes", CP),
        "stones.hole": ("30 mm", "1.25 in", CP), "stones.density": ("2650 kg/m3", "165 lb/ft3", CP), "stones.base_share": (0.8, 0.8, J),
        "stones.stand_on": ("slabs", "slabs", CP), "slab.length": ("400 mm", "16 in", CP), "slab.width": ("400 mm", "16 in", CP),
    },
    "blade": {
        "flow.for_each_metre": ("4 L/s per m", "20 US gal/min per ft", CP), "flow.weir_coefficient": ("1.70 m^0.5/s", "3.08 ft^0.5/s", _MEMORY),
        "blade.stone_level": ("0 mm", "0 in", J), "blade.trough_width": ("250 mm", "10 in", CP), "blade.trough_depth": ("200 mm", "8 in", CP),
        "blade.feed": ("bottom", "bottom", CP),
    },
    "cascade": {
        "flow.for_each_metre": ("2 L/s per m", "10 US gal/min per ft", CP), "flow.weir_coefficient": ("1.70 m^0.5/s", "3.08 ft^0.5/s", _MEMORY),
        "cascade.feed": ("bottom", "bottom", CP), "cascade.splash_edge": ("100 mm", "4 in", CP), "cascade.rill_width": ("250 mm", "10 in", CP),
        "cascade.rill_slope": ("1:100", "1:100", CP), "cascade.rill_wall": ("80 mm", "3 in", CP), "cascade.rill_roughness": (0.013, 0.013, _READ),
    },
}  # fmt: skip


# --- usual values that follow from answers -------------------------------------------------------------------------------------------


def _length(value: float, design: Design, whole: Callable[[float], float] = round) -> str:
    """A length in m as somebody would write it: to whole steps of 10 mm, or of a quarter of an inch."""
    if design.region == "US":
        return f"{units.number(whole(value / units.unit('in').factor * 4) / 4)} in"
    return f"{units.number(whole(value * 100) * 10)} mm"


def _down(steps: float) -> int:
    return math.floor(steps + 1e-9)


def _up(steps: float) -> int:
    return math.ceil(steps - 1e-9)


def _under_the_top(metric: float, inches: float) -> Callable[[Design], str]:
    """So far under the top of the blocks."""

    def follows(d: Design) -> str:
        return _length(d["reservoir.block_height"] - (inches * units.unit("in").factor if d.region == "US" else metric), d)

    return follows


def _round_the_blocks(d: Design) -> float:
    """What the box is larger than its blocks, both sides together (m)."""
    return 2 * (d["ground.clearance"] + d["ground.lining_thickness"])


def _apron(d: Design) -> str:
    """What the bed leaves beside the box, and no more than 600 mm (24 in)."""
    room = [0.6096 if d.region == "US" else 0.6]
    for key, side, way in (("site.bed_length", "length", "along"), ("site.bed_width", "width", "across")):
        bed, block, count = (d.given(one) for one in (key, f"reservoir.block_{side}", f"reservoir.blocks_{way}"))
        if bed and block and count:
            room.append((bed.value - block.value * count.value - _round_the_blocks(d)) / 2)
    return _length(max(min(room), 0.0), d, _down)


def _wet_area(d: Design) -> str:
    """A third of the lined catch, and no more than 0.9 m2 (9 ft2)."""
    beside = _round_the_blocks(d) + 2 * d["catch.apron"]
    along, across = (d[f"reservoir.block_{side}"] * d[f"reservoir.blocks_{way}"] + beside for side, way in (("length", "along"), ("width", "across")))
    return _area(min(9 * units.unit("ft2").factor if d.region == "US" else 0.9, along * across / 3), d)


def _slab(side: str, way: str) -> Callable[[Design], str]:
    """A paving slab of 600 mm (24 in), cut to what the blocks are wide where that is less."""

    def follows(d: Design) -> str:
        return _length(min(0.6096 if d.region == "US" else 0.6, d[f"reservoir.block_{side}"] * d[f"reservoir.blocks_{way}"]), d, _down)

    return follows


_PLASTIC = 1000.0  # kg/m3: plastic that blocks are made of, near that of polypropylene and polyethylene; from memory


def _block_mass(d: Design) -> str:
    """What of a block is not void, in plastic."""
    size = d["reservoir.block_length"] * d["reservoir.block_width"] * d["reservoir.block_height"]
    mass = (1 - d["reservoir.void_fraction"]) * _PLASTIC * size
    return f"{units.number(max(round(units.convert(mass, 'lb')), 1))} lb" if d.region == "US" else f"{units.number(max(round(mass * 2), 1) / 2)} kg"


def _hose(d: Design, top: float) -> str:
    """From the floor of the reservoir up to where it ends, and half a metre to move the pump."""
    long = top - d["levels.block_top"] + d["reservoir.block_height"] + 0.5
    return f"{math.ceil(long / 0.3048)} ft" if d.region == "US" else f"{units.number(math.ceil(long * 5) / 5)} m"


def _side(d: Design) -> str:
    """As the mantle of a cone from the foot to the rim."""
    rim, foot, high = (d[f"vessel.{key}"] / 2 for key in ("rim_diameter", "foot_outside", "height"))
    area = math.pi * (rim + foot) * math.hypot(rim - foot, 2 * high)
    return f"{units.number(round(units.convert(area, 'ft2'), 1))} ft2" if d.region == "US" else f"{units.number(round(area, 2))} m2"


def _area(value: float, d: Design) -> str:
    return f"{units.number(round(units.convert(value, 'ft2'), 1))} ft2" if d.region == "US" else f"{units.number(round(value, 3))} m2"


def _stones_in_a_row(d: Design) -> str:
    """As many blocks as the stones, or the slabs that they stand on, need beside each other."""
    slab = d["slab.length"] if d["stones.stand_on"] == "slabs" else 0.0
    return str(max(_up(sum(max(wide, slab) for wide in d["stones.diameters"]) / d["reservoir.block_length"]), 1))


def _rows_beside(wide: Callable[[Design], float]) -> Callable[[Design], str]:
    """As many rows of blocks as let the pump's bay stand in a corner beside water that falls so `wide` (m) on their middle, and no more than the bed takes."""

    def follows(d: Design) -> str:
        rows, bed = _up((wide(d) + 2 * d["pump.bay"]) / d["reservoir.block_width"]), d.given("site.bed_width")
        return str(max(min(rows, _down((bed.value - _round_the_blocks(d)) / d["reservoir.block_width"])) if bed else rows, 1))

    return follows


def _each(d: Design) -> list[str]:
    return ["6 ft" if d.region == "US" else "2 m"] * len(d["stones.diameters"])


_Follows = Callable[[Design], "str | list[str]"]
_FOLLOW_ALL: dict[str, _Follows] = {
    "reservoir.overflow_level": _under_the_top(0.020, 1),
    "reservoir.static_level": _under_the_top(0.040, 2),
    "reservoir.block_mass": _block_mass,
    "catch.apron": _apron,
    "catch.wet_area": _wet_area,
}
FOLLOW: dict[str, dict[str, _Follows]] = {
    "overflowing vessel": {
        **_FOLLOW_ALL,
        "vessel.side_area": _side,
        "slab.length": _slab("length", "along"),
        "slab.width": _slab("width", "across"),
        "pipe.length": lambda d: _hose(d, d["levels.block_top"] + d["slab.thickness"] + d["vessel.height"]),
    },
    "drilled stones": {
        "reservoir.blocks_along": _stones_in_a_row,
        **_FOLLOW_ALL,
        "stones.branch_lengths": _each,
        "pipe.length": lambda d: "3 ft" if d.region == "US" else "1 m",
    },
    "blade": {
        "reservoir.blocks_across": _rows_beside(lambda d: d["blade.lip_width"]),
        **_FOLLOW_ALL,
        "blade.trough_length": lambda d: _length(d["blade.lip_width"], d, _up),
        "pipe.length": lambda d: _hose(d, d["blade.lip_level"]),
    },
    "cascade": {
        "reservoir.blocks_across": _rows_beside(lambda d: d["cascade.rill_width"] if d["cascade.rill_length"] else d["cascade.width"]),
        **_FOLLOW_ALL,
        "cascade.header_area": lambda d: _area(d["cascade.width"] * d["cascade.tread"], d),
        "cascade.pool_area": lambda d: _area(d["cascade.width"] * d["cascade.tread"], d),
        "pipe.length": lambda d: _hose(d, d["cascade.top_level"] + d["cascade.steps"] * d["cascade.tread"] + d["cascade.rill_length"]),
    },
}


def usual_of(design: Design, key: str) -> Given | None:
    """The usual value under a key, as it would stand in this design with its basis; None where there is none, or what it follows from is not known."""
    follows, row = FOLLOW[design.kind].get(key), _BY_KIND[design.kind].get(key) or _COMMON.get(key)
    text: str | float | list[Any]
    try:
        if follows:
            text, basis = follows(design), J
        elif row:
            text, basis = row[design.region == "US"], row[2]
        else:
            return None
        section, _, name = key.partition(".")
        return Given(field_of(section, name).read(text, key, design.region), text, basis)
    except (Unknown, InputError):  # nothing to follow from; sizes from which nothing that can be follows
        return None


def is_usual(design: Design, key: str) -> bool:
    """Whether what stands under a key is the usual value, and nobody's own."""
    given = design.values.get(key)
    return given is not None and given.basis != "yours" and given == usual_of(design, key)


def not_as_usual(design: Design) -> list[str]:
    """The values that follow from sizes where they are usual, that nobody calls his own, and that are not what follows from the sizes that stand there now."""
    nobodys = [key for key in FOLLOW[design.kind] if (given := design.values.get(key)) and given.basis == J]
    return [key for key in nobodys if (usual := usual_of(design, key)) and usual != design.values[key]]


def _places(kind: str) -> list[str]:
    """The keys with a usual value that play a part in a design of that kind."""
    keys = {f"{section}.{name}" for section, fields in sections(kind).items() for name in fields}
    return [key for key in dict.fromkeys([*_COMMON, *_BY_KIND[kind], *FOLLOW[kind]]) if key in keys]


def started(kind: str, region: str, title: str = "My design") -> Design:
    """A design with nothing but usual values, which waits for the answers of ASKED_FIRST. Raises InputError for a kind that there is not."""
    return _filled(replace(blank_design(kind, title), region=region))


def _filled(design: Design, empty: frozenset[str] = frozenset()) -> Design:
    """The design with the usual value wherever nothing stands, as far as it can be told yet; but for what is `empty` on purpose."""
    for key in _places(design.kind):
        if key not in design.values and key not in empty and (given := usual_of(design, key)):
            design = replace(design, values={**design.values, key: given})
    return design


def followed_up(before: Design, after: Design) -> Design:
    """The design after a change, with its usual values following it.

    What was usual stays so, and is not there while nobody knows what it follows from. Whoever empties a box gets its usual value again. A file may
    say nothing where there is a usual value: that stays unknown.
    """
    emptied = [key for key in before.values if key not in after.values and key not in FOLLOW[after.kind]]
    for key in (*emptied, *FOLLOW[after.kind]):
        was, now = before.values.get(key), after.values.get(key)
        if now is not None and now != was:
            continue  # typed just now
        if now is None and was is None and usual_of(before, key) is not None:
            continue  # unknown in its file
        if now is not None and not is_usual(before, key):
            continue  # somebody's own
        usual = usual_of(after, key)
        if usual != now:
            values = {one: given for one, given in after.values.items() if one != key}
            after = replace(after, values={**values, key: usual} if usual else values)
    return after


def back_to_usual(design: Design, key: str) -> Design:
    """The design with the usual value under a key, and what follows from it. Raises InputError where there is none."""
    usual = usual_of(design, key)
    if usual is None:
        raise InputError(f"{key} has no usual value here: type one, or leave the box empty")
    return followed_up(design, replace(design, values={**design.values, key: usual}))


def turned_to(design: Design, region: str) -> Design:
    """The design for another region: its usual values become those that are usual there, all others stay as they are."""
    return _again(design, replace(design, region=region, values=_own(design)))


def turned_as(design: Design, kind: str) -> Design:
    """What is known here as far as a design of another kind has a place for it, with the usual values of that kind. Raises InputError for an unknown kind."""
    return _again(design, replace(design, values=_own(design)).turned(kind))


def _own(design: Design) -> dict[str, Given]:
    """The values of a design that are not the usual ones."""
    return {key: given for key, given in design.values.items() if not is_usual(design, key)}


def _again(before: Design, after: Design) -> Design:
    """The design after a turn with the usual values of where it is now; what was unknown though there is a usual value stays so."""
    return _filled(after, frozenset(key for key in _places(before.kind) if key not in before.values and usual_of(before, key)))
