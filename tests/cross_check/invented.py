"""Invented designs, drawn by a seeded generator: realistic ones whose values agree with each other, and odd ones.

A design is a dictionary of texts by "section.key" as a person would type them, each with a unit; `file` makes the TOML of it. Nothing is read back
from the product.
"""

import math
import random
from functools import lru_cache

from plain_design import UNITS, Impossible, Missing, Plain
from truth import work

KINDS = ("overflowing vessel", "drilled stones", "blade", "cascade")
BEST = {
    "hose_route": "rises all the way, pump can be tilted, outlet type named", "rain_route": "overflow drawn, falls away from the building",
    "treatment_volume": "true volume stated on the card", "drain_hole": "tank connector, tested 24 h", "load_patch": "inside one block, or bridged by 150 mm each way",
    "settlement": "re-levelled after 7 days full, within half of what the rim allows", "frost_wall": "can be drained and vented in frost, or there is no frost",
    "formation": "undisturbed, or fill compacted in thin layers", "lid": "slab or grid wherever a foot can come", "frost_ground": "granular drained base, or below the frost line",
    "services": "records, search in date, marks on the ground, private lines asked about", "backfill": "strutted, thin layers, bows 5 mm at most",
    "surface_water": "ground falls away 1:80 for 1 m, not the lowest point", "liner_faces": "fleece under and over, 0.75 mm or more",
    "cable_cover": "as the local table, marked on the as-built", "socket": "above splash and flood, reached without crossing the water, electrician agrees",
    "duct": "bore is the plug's diagonal and 10 mm, draw cord left in", "pump_marking": "read on the plate: submersible, outdoor, voltage as supplied",
    "pump_access": "under 5 minutes, one tool", "top_up": "air gap drawn with its size", "edges": "edge flush or 100 mm proud, loose stone and drips off the path",
    "pack": "every drawing and sheet there, dated, assumptions listed",
}  # fmt: skip
ONLY_VESSEL = {"drain_hole", "settlement", "frost_wall"}
LENGTHS = ("mm", "cm", "m", "in", "ft")


def file(values: dict, kind: str, region: str = "UK") -> str:
    """The design file of these texts."""
    lines, sections = ["format = 1", f'kind = "{kind}"', 'title = "Invented"', f'region = "{region}"'], {}
    for key, text in values.items():
        section, _, name = key.partition(".")
        sections.setdefault(section, []).append(f"{name} = {_toml(text)}")
    for section, rows in sections.items():
        lines += [f"[{section}]", *rows]
    return "\n".join(lines) + "\n"


def _toml(text) -> str:
    if isinstance(text, list | tuple):
        return "[" + ", ".join(map(_toml, text)) + "]"
    return repr(text) if isinstance(text, int | float) else f'"{text}"'


def write(value: float, unit: str) -> str:
    """A value in SI as a text in a unit, to five figures."""
    number = value / UNITS[unit]
    return f"{float(f'{number:.5g}'):.10f}".rstrip("0").rstrip(".") + (f" {unit}" if unit else "")


class Draw:
    """Draws texts: `self.mm(low, high)` is a length between two in mm, in any unit of length."""

    def __init__(self, seed: str):
        self.random = random.Random(seed)

    def one(self, low: float, high: float, *units: str) -> str:
        """A quantity between two given in the first of the units, written in any of them."""
        return write(self.random.uniform(low, high) * UNITS[units[0]], self.random.choice(units))

    def mm(self, low: float, high: float) -> str:
        return self.one(low, high, *LENGTHS)

    def whole(self, low: int, high: int) -> int:
        return self.random.randint(low, high)

    def of(self, *words):
        return self.random.choice(words)


def realistic(kind: str, seed: str) -> tuple[dict, str]:
    """A design such as a person plans it: texts by key, and its region. Typed values that follow from others agree with them to the millimetre."""
    v, region = _realistic(kind, seed)
    return dict(v), region


@lru_cache(100)
def _realistic(kind: str, seed: str) -> tuple[dict, str]:
    draw = Draw(seed)
    region = draw.of("UK", "US")
    v = {**_site(draw), **_ground(draw), **_supply(draw, region), **FEATURE[kind](draw)}
    v |= {f"answers.{key}": words for key, words in BEST.items() if key not in ONLY_VESSEL or kind == "overflowing vessel"}
    if kind in ("blade", "cascade"):
        v.pop("answers.load_patch")
    _pump(v, kind, draw, region)
    _agree(v, kind, draw, region)
    return v, region


def _site(draw: Draw) -> dict:
    return {
        "site.use": draw.of("private", "private", "private", "public", "school"), "site.soil_bearing": draw.one(25, 150, "kPa", "psf"), "site.open_water": "0 mm", "site.legionella": "in place",
        "site.unattended": draw.one(1, 9, "day"), "site.footing_distance": draw.one(1.5, 6, "m", "ft"), "site.footing_depth": draw.one(0.3, 1.2, "m", "ft"),
        "site.tree_distance": draw.one(3, 15, "m", "ft"), "site.tree_stem": draw.mm(50, 400), "site.pit_sides": "firm soil, battered or braced, spoil kept back",
        "site.ground_water": draw.of("0 mm", "0 mm", draw.mm(5, 120)), "site.frost_depth": draw.mm(100, 600), "site.gate": draw.mm(800, 1500), "site.widest_item": draw.mm(400, 790),
        "site.sound_at_1m": round(draw.random.uniform(40, 65), 1), "site.neighbour": draw.one(4, 30, "m", "ft"), "site.background": round(draw.random.uniform(30, 45), 1),
        "site.wind_speed": draw.one(12, 28, "m/s", "ft/s"), "site.force_coefficient": round(draw.random.uniform(0.7, 1.4), 2), "site.lift_mass": draw.one(8, 16, "kg", "lb"),
        "site.lift_reach": draw.mm(250, 400), "site.lift_height": draw.mm(300, 900), "site.lift_travel": draw.mm(250, 700), "site.sling_mass": draw.one(400, 900, "kg", "lb"),
        "site.sling_legs": draw.whole(2, 4), "site.sling_angle": draw.one(45, 80, "deg"), "site.sling_rating": draw.one(8, 30, "kN", "lbf"),
        "flow.water_temperature": draw.of("20 degC", "12 degC", "50 degF", f"{draw.whole(4, 30)} degC"),
    }  # fmt: skip


def _ground(draw: Draw) -> dict:
    height = draw.random.uniform(0.30, 0.60)
    top = draw.random.uniform(-0.10, -0.02)
    over = height - draw.random.uniform(0.0, 0.03)
    static = over - draw.random.uniform(0.012, 0.03)
    low = draw.random.uniform(0.12, 0.20)
    intake = low - draw.random.uniform(0.055, 0.09)
    mm = lambda value: write(round(value, 3), draw.of("mm", "cm", "m"))  # noqa: E731
    return {
        "reservoir.block_length": draw.mm(500, 1200), "reservoir.block_width": draw.mm(400, 800), "reservoir.block_height": mm(height), "reservoir.blocks_along": draw.whole(1, 4),
        "reservoir.blocks_across": draw.whole(2, 3), "reservoir.block_mass": draw.one(4, 8, "kg", "lb"), "reservoir.void_fraction": round(draw.random.uniform(0.9, 0.97), 3),
        "reservoir.short_term_strength": draw.one(90, 300, "kPa", "psi"), "reservoir.creep_factor": round(draw.random.uniform(0.35, 0.6), 2), "reservoir.safety_factor": 1.5,
        "reservoir.cover": draw.of("0 mm", draw.mm(30, 60)), "reservoir.lowest_level": mm(low), "reservoir.cut_out_level": mm(low + draw.random.uniform(0.005, 0.02)),
        "reservoir.static_level": mm(static), "reservoir.overflow_level": mm(over), "pump.intake_level": mm(intake), "pump.intake_area": draw.one(120, 400, "cm2", "in2"),
        "pump.cut_out": "yes", "levels.block_top": mm(top), "levels.soil": draw.mm(-60, -30), "levels.liner_edge": draw.mm(0, 30),
        "levels.staple_line": draw.mm(-15, -5), "ground.lining_thickness": draw.mm(6, 14), "ground.sand": draw.mm(20, 40), "ground.sub_base": draw.mm(75, 150), "ground.clearance": draw.mm(10, 20),
        "ground.box_upstand": draw.mm(0, 20), "ground.board": draw.mm(15, 22), "ground.working_space": draw.mm(100, 250), "ground.bulking": round(draw.random.uniform(1.1, 1.4), 2),
        "catch.apron": draw.mm(400, 1200), "catch.splash_factor": 0.5, "catch.stone_thickness": draw.mm(40, 80), "catch.stone_density": draw.one(1500, 1700, "kg/m3", "lb/ft3"),
        "catch.stone_waste": 0.1, "catch.wet_area": draw.one(0.3, 1.5, "m2", "ft2"), "catch.hold_up": round(draw.random.uniform(0.02, 0.05), 3), "lining.beyond_apron": draw.mm(80, 150),
        "lining.rolls": ["2 m", "3 m", "4 m", "6 m", "8 m", "10 m"], "lining.mesh_opening": draw.mm(5, 10), "lining.smallest_stone": draw.mm(20, 40), "lining.panel_clearance": draw.mm(100, 300),
        "climate.evaporation": draw.one(3, 7, "mm/day", "in/day"), "climate.coefficient": 1.05, "climate.splash": draw.one(1, 6, "L/day", "US gal/day"),
        "overflow_pipe.bore": draw.mm(40, 110), "overflow_pipe.rain": draw.one(30, 90, "mm/h", "in/h"), "overflow_pipe.stuck_flow": draw.one(0, 12, "L/min", "US gal/min"),
    }  # fmt: skip


def _supply(draw: Draw, region: str) -> dict:
    each = {"supply.voltage_drop": draw.one(17, 20, "mV/A/m")} if region == "UK" else {"supply.resistance": draw.one(1.7, 2.1, "ohm/kft", "ohm/km")}
    plate = ("2.5 mm2", "230 V", "50 Hz") if region == "UK" else ("12 AWG", "120 V", "60 Hz")
    return {
        **dict(zip(("supply.conductor", "pump.voltage", "pump.frequency"), plate, strict=True)),
        "supply.voltage": "230 V" if region == "UK" else "120 V", "supply.power_factor": round(draw.random.uniform(0.6, 1), 2), "supply.cable_length": draw.one(5, 30, "m", "ft"), **each,
        "supply.hours_per_day": draw.one(4, 20, "h"), "supply.tariff": "0.3 cur/kWh", "supply.cord": draw.one(9, 12, "m", "ft"), "supply.cord_route": draw.one(3, 7, "m", "ft"),
        "supply.duct_bore": draw.mm(50, 110), "supply.duct_cover": draw.mm(610, 800), "supply.circuit_load": draw.one(2.5, 8, "A"), "supply.breaker": draw.of("16 A", "15 A", "20 A"),
        "supply.leakage": draw.one(0.1, 1, "mA"), "supply.residual_rating": "30 mA" if region == "UK" else "5 mA", "supply.residual_current": "tested by instrument",
    }  # fmt: skip


def _vessel(draw: Draw) -> dict:
    rim, high = draw.random.uniform(450, 1000), draw.random.uniform(250, 600)
    foot = rim * draw.random.uniform(0.5, 0.95)
    litres = math.pi / 4 * rim**2 * high * draw.random.uniform(0.3, 0.55) / 1e6
    litres = round(litres, 1)
    slab, across = foot + draw.random.uniform(40, 160), draw.whole(1, 2)
    room = slab + 620 + draw.random.uniform(0, 200)  # for the pump's bay beside the slab
    mm = lambda value: write(round(value) * 1e-3, draw.of(*LENGTHS))  # noqa: E731
    return {
        "reservoir.block_width": mm(room / across), "reservoir.blocks_across": across, "reservoir.block_length": mm(room / 2 + 30), "reservoir.blocks_along": draw.whole(2, 3),
        "vessel.rim_diameter": mm(rim), "vessel.height": mm(high), "vessel.mass": draw.one(60, 250, "kg", "lb"), "vessel.water": f"{litres} L",
        "vessel.foot_outside": mm(foot), "vessel.foot_inside": mm(foot * draw.random.uniform(0, 0.85)), "vessel.side_area": draw.one(0.4, 1.8, "m2", "ft2"),
        "vessel.rim_out_of_level": draw.mm(0.2, 1.2), "vessel.offset": draw.mm(0, 60), "vessel.stands_on": draw.of("slab", "slab", "blocks"), "vessel.foam": f"{litres * 0.4:.2f} L",
        "vessel.foam_density": draw.one(15, 32, "kg/m3", "lb/ft3"), "vessel.pebbles": f"{litres * 0.6:.2f} L",
        "vessel.wall_thickness": draw.mm(20, 60), "vessel.tensile_strength": draw.one(1, 6, "MPa", "psi"), "slab.length": mm(slab), "slab.width": mm(slab), "slab.thickness": draw.mm(50, 120),
        "slab.density": draw.one(2200, 2750, "kg/m3", "lb/ft3"), "flow.for_each_metre": draw.one(0.15, 0.35, "L/s per m", "US gal/min per ft"),
        "flow.weir_coefficient": draw.one(1.6, 1.85, "m^0.5/s", "ft^0.5/s"), "pipe.mouth_below_rim": draw.mm(5, 40),
    }  # fmt: skip


def _stones(draw: Draw) -> dict:
    count, across = draw.whole(1, 4), draw.whole(2, 3)
    return {
        "reservoir.block_length": draw.mm(560, 800), "reservoir.blocks_along": count, "reservoir.block_width": draw.mm(1140 / across, 1400 / across), "reservoir.blocks_across": across,
        "stones.diameters": [draw.mm(330, 425) for _ in range(count)], "stones.heights": [draw.mm(220, 480) for _ in range(count)],
        "stones.branch_lengths": [draw.one(0.6, 3, "m", "ft") for _ in range(count)], "stones.branch_bore": draw.mm(13, 25), "stones.branch_fittings": round(draw.random.uniform(2, 6), 1),
        "stones.valves": "yes", "stones.hole": draw.mm(20, 50), "stones.density": draw.one(2500, 2900, "kg/m3", "lb/ft3"), "stones.rough_contact": draw.one(40, 200, "cm2", "in2"),
        "stones.base_share": round(draw.random.uniform(0.6, 0.9), 2), "stones.stand_on": draw.of("slabs", "slabs", "blocks"), "slab.length": draw.mm(430, 500),
        "slab.width": draw.mm(430, 500), "slab.thickness": draw.mm(40, 80), "slab.density": draw.one(2200, 2750, "kg/m3", "lb/ft3"),
        "flow.for_each_metre": draw.one(0.15, 0.35, "L/s per m", "US gal/min per ft"),
    }  # fmt: skip


def _blade(draw: Draw) -> dict:
    lip, stone = draw.random.uniform(300, 900), draw.random.uniform(0.0, 0.06)
    level = stone + draw.random.uniform(0.2, 0.95)
    mm = lambda value: write(round(value, 3), draw.of(*LENGTHS))  # noqa: E731
    some = {"flow.weir_coefficient": draw.one(1.65, 1.9, "m^0.5/s", "ft^0.5/s")} if draw.whole(0, 1) else {}
    return some | {
        "blade.lip_width": mm(lip * 1e-3), "blade.lip_level": mm(level), "blade.stone_level": mm(stone), "blade.trough_length": mm(lip * 1e-3 + draw.random.uniform(0, 0.1)),
        "blade.trough_width": draw.mm(120, 250), "blade.trough_depth": draw.mm(100, 200), "blade.feed": draw.of("top", "bottom"), "blade.wall_height": mm(level),
        "blade.wall_retains": "nothing", "flow.for_each_metre": draw.one(2, 5, "L/s per m", "US gal/min per ft"),
    }  # fmt: skip


def _cascade(draw: Draw) -> dict:
    steps, fall, wide, tread = draw.whole(1, 4), draw.random.uniform(0.06, 0.16), draw.random.uniform(0.3, 0.8), draw.random.uniform(0.35, 0.7)
    rill, slope = draw.of(0.0, draw.random.uniform(0.5, 3)), draw.random.uniform(0.006, 0.03)
    mm = lambda value: write(round(value, 3), draw.of(*LENGTHS))  # noqa: E731
    top = 0.02 + steps * fall + rill * slope + draw.random.uniform(0.03, 0.1)
    header = draw.random.uniform(0.1, 0.4)
    return {
        "cascade.steps": steps, "cascade.width": mm(wide), "cascade.step_fall": mm(fall), "cascade.tread": mm(tread), "cascade.top_level": mm(top),
        "cascade.header_area": write(header, "m2"), "cascade.header_volume": write(header * draw.random.uniform(0.08, 0.2), draw.of("L", "US gal")),
        "cascade.pool_area": write(wide * tread, draw.of("m2", "ft2")), "cascade.feed": draw.of("top", "bottom"), "cascade.splash_edge": draw.mm(100, 300), "cascade.rill_length": mm(rill),
        "cascade.rill_width": draw.mm(150, 400), "cascade.rill_slope": round(slope, 4), "cascade.rill_wall": draw.mm(80, 150), "cascade.rill_roughness": round(draw.random.uniform(0.011, 0.02), 4),
        "flow.for_each_metre": draw.one(1, 4, "L/s per m", "US gal/min per ft"),
    }  # fmt: skip


FEATURE = {"overflowing vessel": _vessel, "drilled stones": _stones, "blade": _blade, "cascade": _cascade}


def _pump(v: dict, kind: str, draw: Draw, region: str) -> None:
    """Hose and pump for the flow wanted: a speed near one metre a second, and a pump with some head to spare."""
    worked = work(Plain(file(v, kind, region)))
    flow, lift = worked.r["flow_wanted"], max(worked.r.get("fall", 0.3), 0.3) + 0.4
    bore = (flow / (math.pi / 4 * draw.random.uniform(0.6, 1.6))) ** 0.5
    v |= {
        "pipe.bore": write(round(bore, 3), draw.of("mm", "in")),
        "pipe.length": draw.one(1.5, 6, "m", "ft"),
        "pipe.fittings": round(draw.random.uniform(2, 6), 1),
    }
    law = draw.of("Colebrook", "Swamee-Jain", "Haaland", "Blasius", "Hazen-Williams", "ribbed hose")
    v |= {
        "pipe.friction_law": law,
        "pipe.roughness": draw.one(0.0015, 0.05, "mm"),
        "pipe.hazen_williams": draw.whole(130, 150),
        "pipe.check_valve": draw.of("yes", "no"),
    }
    shut_off, most = (lift + 1) * draw.random.uniform(1.3, 2.2), flow * draw.random.uniform(1.6, 2.6)
    if draw.whole(0, 1):
        v |= {"pump.shut_off_head": write(shut_off, draw.of("m", "ft")), "pump.maximum_flow": write(most, draw.of("L/min", "L/h", "US gal/h"))}
    else:
        bend = draw.random.uniform(1.3, 2.5)
        at = (0, 0.25, 0.5, 0.75, 1.0)
        v["pump.curve"] = [[write(most * t, "L/min") if t else "0 L/min", write(shut_off * (1 - t**bend), "m") if t < 1 else "0 m"] for t in at]
    v["pump.power"] = write(0.385 * 9810 * most * shut_off / draw.random.uniform(0.15, 0.45), "W")


def _agree(v: dict, kind: str, draw: Draw, region: str) -> None:
    """Gives the values that follow from others as those others leave them."""
    mm = lambda value: write(round(value, 4), "mm")  # noqa: E731
    worked = work(Plain(file(v, kind, region)))
    r, d = worked.r, worked.d
    try:
        if kind == "overflowing vessel":
            v["site.widest_item"] = mm(max(d["vessel.rim_diameter"], d["site.widest_item"]))
            v["site.gate"] = mm(d["site.gate"] + max(d["vessel.rim_diameter"] - d["site.widest_item"], 0.0))
        if kind in ("blade", "cascade"):
            v["site.open_water"] = mm(d["blade.trough_depth"] if kind == "blade" else d["cascade.header_volume"] / d["cascade.header_area"])
        v["pump.covered"] = mm(d["reservoir.lowest_level"] - d["pump.intake_level"])
        bore = min(d["overflow_pipe.bore"], (d["levels.liner_edge"] - r["level:overflow"]) * 0.9)
        v["overflow_pipe.bore"] = mm(bore)
        v["overflow_pipe.head"] = mm(d["levels.liner_edge"] - r["level:overflow"] - bore / 2)
        v["overflow_pipe.catch_area"] = write((r["box_length"] + 2 * d["catch.apron"]) * (r["box_width"] + 2 * d["catch.apron"]), "m2")
        v["reservoir.running_level"] = mm(d["reservoir.static_level"] - r["start_drop"])
        running = d["reservoir.static_level"] - r["start_drop"]
        if running - 0.005 > d["reservoir.cut_out_level"]:
            v["reservoir.top_up_level"] = mm((running + d["reservoir.cut_out_level"]) / 2)
    except (Missing, Impossible):
        pass


def odd(kind: str, seed: str) -> tuple[dict, str]:
    """A realistic design with some of its values changed wildly, some taken away, and words chosen anyhow."""
    v, region = realistic(kind, seed)
    draw = Draw(f"odd {seed}")
    for key in draw.random.sample(sorted(v), draw.whole(1, 8)):
        v = changed(v, key, draw)
    return v, region


WORDS = {
    "site.use": ("private", "public", "school", "care premises"), "site.legionella": ("low splash, private", "commissioned", "in place", "none"),
    "site.pit_sides": ("firm soil, battered or braced, spoil kept back", "competent person on site, nobody kneels in it", "wet or running soil, or nobody competent"),
    "vessel.stands_on": ("slab", "blocks"), "stones.stand_on": ("slabs", "blocks"), "stones.valves": ("yes", "no"), "blade.feed": ("bottom", "top"), "cascade.feed": ("bottom", "top"),
    "blade.wall_retains": ("nothing", "soil", "water"), "pump.cut_out": ("yes", "no"), "pipe.check_valve": ("yes", "no"),
    "pipe.friction_law": ("Colebrook", "Swamee-Jain", "Haaland", "Blasius", "Hazen-Williams", "ribbed hose"),
    "supply.residual_current": ("tested by instrument", "tested by button", "none"), "supply.conductor": ("1.5 mm2", "2.5 mm2", "4 mm2", "14 AWG", "12 AWG"),
    "pump.frequency": ("50 Hz", "60 Hz", "50 and 60 Hz", "direct current"),
}  # fmt: skip
FACTORS = (0.01, 0.1, 0.3, 0.5, 0.7, 0.9, 1.1, 1.4, 2.0, 3.0, 10.0)
SHARES = {"reservoir.void_fraction", "reservoir.creep_factor", "catch.hold_up", "supply.power_factor", "stones.base_share", "catch.stone_waste"}
SIGNED = {"levels.block_top", "levels.soil", "levels.liner_edge", "levels.staple_line", "blade.lip_level", "blade.stone_level", "cascade.top_level"}


def changed(v: dict, key: str, draw: Draw) -> dict:
    """The same texts with one changed: another word, a number times a factor, a level moved, now and then nothing at all."""
    v, text = dict(v), v[key]
    if draw.random.random() < 0.06 and not key.startswith("answers."):
        del v[key]
    elif key in WORDS:
        v[key] = draw.of(*WORDS[key])
    elif key.startswith(("answers.", "limits.")) or (isinstance(text, list) and isinstance(text[0], list)):
        pass
    elif isinstance(text, list):
        at = draw.whole(0, len(text) - 1)
        v[key] = [_times(one, draw.of(*FACTORS[2:9])) if i == at else one for i, one in enumerate(text)]
    elif key in SIGNED:
        v[key] = write(_si(text) + draw.random.uniform(-0.3, 0.5), "mm")
    elif isinstance(text, int):
        v[key] = max(1, text + draw.of(-1, 1, 2))
    elif key in SHARES:
        v[key] = round(min(1.0, max(0.01, _si(text) * draw.of(0.3, 0.8, 1.1, 1.5))), 3)
    elif key == "flow.water_temperature":
        v[key] = f"{draw.whole(1, 38)} degC"
    elif draw.random.random() < 0.05:
        v[key] = _times(text, 0.0)
    else:
        v[key] = _times(text, draw.of(*FACTORS))
    return v


def _si(text) -> float:
    from plain_design import quantity

    return quantity(text)


def _times(text, factor: float):
    """A text with its number multiplied, in its own unit."""
    if isinstance(text, float):
        return float(f"{text * factor:.5g}")
    number, _, unit = text.partition(" ")
    return f"{float(f'{float(number) * factor:.5g}'):.10f}".rstrip("0").rstrip(".") + (f" {unit}" if unit else "")


def _one(key: str, *texts):
    return lambda draw: {key: draw.of(*texts)}


# Values that a design seldom gives, and that somebody may type to be rid of a fail.
EXTRA = {
    "measured.current": lambda draw: {"measured.current": draw.one(0.01, 4, "A")},
    "measured.flow": lambda draw: {"measured.flow": draw.one(5, 200, "L/min")},
    "measured.start_drop": lambda draw: {"measured.start_drop": draw.mm(0.1, 60)},
    "measured.leak": lambda draw: {"measured.leak": draw.one(-2, 20, "mm/day")},
    "measured.rim_levels": _one("measured.rim_levels", ["0 mm"], ["0 mm", "1 mm", "-1 mm", "0 mm", "1 mm", "2 mm", "0 mm", "1 mm"]),
    "assumptions.person": _one("assumptions.person", "1 N", "100 N", "1.2 kN"), "assumptions.foot": _one("assumptions.foot", "50 mm", "300 mm"),
    "assumptions.fill_push": _one("assumptions.fill_push", 0.05, 0.3, 1.0), "assumptions.board_stiffness": _one("assumptions.board_stiffness", "9900 MPa", "3000 MPa"),
    "assumptions.wall_density": _one("assumptions.wall_density", "9000 kg/m3", "1600 kg/m3"), "assumptions.fill_density": _one("assumptions.fill_density", "100 kg/m3", "2100 kg/m3"),
    "buying.strut_spacing": _one("buying.strut_spacing", "50 mm", "1.2 m"),
    "assumptions.footing_slope": _one("assumptions.footing_slope", 0.08, 0.5, 1.0), "assumptions.grip": _one("assumptions.grip", 0.9, 1.0),
    "assumptions.drip_loop": _one("assumptions.drip_loop", "0 m", "0.1 m"), "assumptions.lift_out": _one("assumptions.lift_out", "0 m", "0.2 m"),
    "assumptions.wind_factor": _one("assumptions.wind_factor", 0.1, 1.5), "assumptions.run_off": _one("assumptions.run_off", 0.2, 1.0),
    "assumptions.overflow_discharge": _one("assumptions.overflow_discharge", 0.4, 1.0), "assumptions.pebble_gaps": _one("assumptions.pebble_gaps", 0.01, 0.35, 0.45),
    "assumptions.pebble_density": _one("assumptions.pebble_density", "8000 kg/m3", "2400 kg/m3"), "assumptions.exposure": _one("assumptions.exposure", 1.5, 2.0),
    "supply.point": lambda draw: {"supply.point_along": draw.one(-9, 9, "m", "ft"), "supply.point_across": draw.one(-9, 9, "m", "ft")},
    "overflow_pipe.end": lambda draw: {"overflow_pipe.end_along": draw.one(-9, 9, "m", "ft"), "overflow_pipe.end_across": draw.one(-9, 9, "m", "ft")},
    "site.footing place": lambda draw: {"site.footing_along": draw.one(-4, 4, "m", "ft"), "site.footing_across": draw.one(-4, 4, "m", "ft")},
    "site.tree place": lambda draw: {"site.tree_along": draw.one(-6, 6, "m", "ft"), "site.tree_across": draw.one(-6, 6, "m", "ft")},
    "site.wheel": lambda draw: {"site.wheel_load": draw.one(0.3, 4, "kN"), "site.wheel_side": draw.mm(80, 200)},
    "vessel.widest": lambda draw: {"vessel.widest": draw.mm(500, 1400)},
    "vessel.foot_corners": lambda draw: {"vessel.foot_corners": [[draw.mm(-260, -60), draw.mm(-260, -60)], [draw.mm(60, 260), draw.mm(-260, -60)], [draw.mm(-60, 60), draw.mm(60, 260)]]},
    "limits": lambda draw: {f"limits.{check}": limits for check, limits in (draw.of(*LOOSENED),)},
    "supply.both": lambda draw: {"supply.voltage_drop": draw.one(5, 50, "mV/A/m"), "supply.resistance": draw.one(1, 20, "ohm/km")},
    "duct": lambda draw: {"supply.duct_bore": draw.mm(15, 60), "supply.duct_cover": draw.mm(0, 500)},
    "residual": _one("supply.residual_rating", "100 mA", "500 mA", "30 mA", "6 mA"),
    "soil": lambda draw: {"levels.soil": draw.mm(-100, 900)},
    "no fill": lambda draw: {"vessel.foam": "0 L", "vessel.pebbles": "0 L"},
    "strength": _one("reservoir.short_term_strength", "110 MPa", "20 kPa"), "factor": _one("reservoir.safety_factor", 0.2, 2.0),
}  # fmt: skip
LOOSENED = (
    ("C22", "up to 5; up to 9"), ("C33", "from 0.08; from 0.05"), ("C13", "from 1 mm; from 0 mm"), ("C21", "from 0 mm; from 0 mm"), ("C42", "up to 30 %; up to 40 %"),
    ("C46", "up to 300 %; up to 400 %"), ("C47", "from -3 m; from -4 m"), ("C27", "from 0.2; from 0.1"),
)  # fmt: skip
