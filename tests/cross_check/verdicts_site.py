"""Ground, electricity and people graded by the cross-check: a number on file counts against any word, and the worse of two numbers."""

import math

from grading import CHECKS, Verdict, between, check, least, most, public, worst
from plain_design import GRAVITY
from standing import bodies, slab
from truth import Worked, lift_limit
from truth_loads import carrying_legs, drop_each


@check("C32")
def sides(w: Worked):
    d, deep = w.d, -w.r["level:formation"] + max(w.d.get("levels.soil", 0.0), 0.0)
    words = d["site.pit_sides"]
    if -w.r["level:formation"] <= 0:
        return Verdict("fail", deep, "there is no pit: its bottom lies above the paving")
    if words.startswith("firm"):
        dry = most(deep, 0.9, 1.2)
        return worst(dry, Verdict("marginal", deep, "ground water in the pit: not firm")) if d.get("site.ground_water", 0.0) > 0 else dry
    return most(deep, -math.inf, 1.2) if words.startswith("competent") else Verdict("fail", deep, words)


def _off(w: Worked, what: str) -> float:
    """From the edge of the pit, as typed and by its place on the plan: the smaller; of what was measured, that."""
    d, typed = w.d, f"site.{what}_distance"
    if typed in w.plain.measured or not {f"site.{what}_along", f"site.{what}_across"} <= set(d) or not w.known("pit_length", "pit_width"):
        return d[typed]
    beside = math.hypot(*(max(abs(d[f"site.{what}_{way}"]) - w.r[side] / 2, 0.0) for way, side in (("along", "pit_length"), ("across", "pit_width"))))
    return min(d.get(typed, math.inf), beside)


@check("C33")
def footing(w: Worked):
    d = w.d
    deeper = max(-w.r["level:formation"] - d["site.footing_depth"], 0.0)
    return least(_off(w, "footing") / max(max(d["assumptions.footing_slope"], 1.0) * deeper, 0.5), 1.0, 0.75)


@check("C34")
def roots(w: Worked):
    return least(_off(w, "tree") / (12 * w.d["site.tree_stem"]) if w.d["site.tree_stem"] else math.inf, 1.0, 0.8)


@check("C62")
def structure(w: Worked):
    """Height of what stands or holds back: the highest less the lowest beside it; soil held back is a wall, whoever calls it something else."""
    d, kind = w.d, w.plain.kind
    soil_held = max(d.get("levels.soil", -math.inf), 0.0)
    top = max(d["levels.block_top"], soil_held, d.get("levels.liner_edge", 0.0), w.r["level:box edge"] if "ground.box_upstand" in d else 0.0)
    low = 0.0
    if kind == "blade":
        top, low = max(top, d["blade.lip_level"], d["blade.wall_height"]), min(0.0, d["blade.stone_level"])
        if public(w) or d["blade.wall_retains"] != "nothing":
            return Verdict("fail", top - low, "near people, or it retains")
    if kind == "cascade":
        top, low = max(top, d["cascade.top_level"]), min(0.0, w.r["level:stone top"])
    low = min(low, d.get("levels.soil", 0.0))
    if soil_held > 0.15:
        return Verdict("fail", soil_held, "soil stands above the paving: something holds it back")
    return most(top - low, 0.6, 1.0)


def pump_current(w: Worked) -> float:
    d = w.d
    rated = d["pump.power"] / (d["supply.voltage"] * d["supply.power_factor"])
    return max(rated, d.get("measured.current", 0.0))


@check("C41")
def residual(w: Worked):
    word = w.d["supply.residual_current"]
    if word == "none":
        return Verdict("fail", math.nan, "none")
    protects = 0.030 if w.plain.region == "UK" else 0.006
    if w.d["supply.residual_rating"] > protects * (1 + 1e-9):
        return Verdict("fail", w.d["supply.residual_rating"], "trips at more than protects a person")
    return Verdict("pass" if word == "tested by instrument" else "marginal", w.d["supply.residual_rating"], word)


@check("C42")
def drop(w: Worked):
    d = w.d
    amperes = max(pump_current(w), d.get("supply.circuit_load", 0.0))
    return most(amperes * drop_each(d) * d["supply.cable_length"] / d["supply.voltage"], 0.03, 0.05, f"{amperes:.3g} A on the circuit")


@check("C46")
def circuit(w: Worked):
    return most(max(w.d["supply.circuit_load"], pump_current(w)) / w.d["supply.breaker"], 0.80, 1.00)


# A: what two-core cables in a duct in the ground carry (BS 7671 4D4A), and the largest breakers of small American conductors (NEC 240.4(D)); from memory.
CARRIES = {"1.5 mm2": 22, "2.5 mm2": 29, "4 mm2": 37, "6 mm2": 46, "10 mm2": 60, "14 AWG": 15, "12 AWG": 20, "10 AWG": 30, "8 AWG": 40}


@check("C75")
def cable(w: Worked):
    d = w.d
    known = [d[key] for key in ("supply.cable_rating",) if key in d] + [CARRIES[d[key]] for key in ("supply.conductor",) if key in d]
    return most(d["supply.breaker"] / min(known or [d["supply.cable_rating"]]), 1.0, 1.0)


@check("C76")
def start(w: Worked):
    d = w.d
    running = d["measured.current"] if "measured.current" in d else d["pump.power"] / (d["supply.voltage"] * d["supply.power_factor"])
    first = max(d["pump.starting_current"], running) if "pump.starting_current" in d else d["assumptions.starting"] * running
    return most((first + max(d.get("supply.circuit_load", 0.0) - running, 0.0)) / d["supply.breaker"], 3.0, 5.0)


@check("C77")
def plate(w: Worked):
    d = w.d
    if d["supply.frequency"].split()[0] not in d["pump.frequency"].split():
        return Verdict("fail", math.nan, "made for another frequency")
    return most(abs(d["supply.voltage"] / d["pump.voltage"] - 1), 0.05, 0.10)


@check("C78")
def country(w: Worked):
    volts, uk = w.d["supply.voltage"], w.plain.region == "UK"
    nearest = min((230, 400, 12, 24) if uk else (120, 208, 240, 12, 24), key=lambda one: abs(volts / one - 1))
    if w.d["supply.frequency"] not in ("50 Hz" if uk else "60 Hz", *(("direct current",) if nearest <= 24 else ())):
        return Verdict("fail", math.nan, "not the frequency here")
    return between(volts / nearest - 1, *((((-0.06, 0.10), (-0.10, 0.10))) if uk else ((-0.05, 0.05), (-0.083, 0.058))))


@check("C46e")
def leakage(w: Worked):
    return most(w.d["supply.leakage"] / w.d["supply.residual_rating"], 0.30, 0.50)


def straight_route(w: Worked) -> float:
    """From the pump's bay straight to the supply point, and up from the floor."""
    d, side = w.d, w.d["pump.bay"]
    if not {"supply.point_along", "supply.point_across"} <= set(d):
        return 0.0
    x, y = -(w.r["base_length"] - side) / 2, -(w.r["base_width"] - side) / 2
    return math.hypot(d["supply.point_along"] - x, d["supply.point_across"] - y) - w.r["level:reservoir floor"]


@check("C47")
def cord(w: Worked):
    d = w.d
    route = max(d["supply.cord_route"], straight_route(w))
    return least(d["supply.cord"] - route - max(d["assumptions.drip_loop"], 0.3) - max(d["assumptions.lift_out"], 1.0), 0.0, -0.3)


def word(w: Worked, key: str) -> str:
    return w.d[f"answers.{key}"]


@check("C43")
def cable_cover(w: Worked):
    said = word(w, "cable_cover")
    if w.d.get("supply.duct_cover", math.inf) < 0.150:
        return Verdict("fail", w.d["supply.duct_cover"], "less cover than any table allows")
    return Verdict("pass" if said.startswith("as the local") else "fail", math.nan, said)


@check("C44")
def socket(w: Worked):
    said, d = word(w, "socket"), w.d
    if {"supply.point_along", "supply.point_across"} <= set(d):
        inside = (w.r["box_length"] / 2 + d["catch.apron"], w.r["box_width"] / 2 + d["catch.apron"])
        if abs(d["supply.point_along"]) < inside[0] and abs(d["supply.point_across"]) < inside[1]:
            return Verdict("fail", math.nan, "the supply point stands in the catch")
    return Verdict("pass" if said.startswith("above") else "fail", math.nan, said)


@check("C45")
def duct(w: Worked):
    said, bore = word(w, "duct"), w.d.get("supply.duct_bore", math.inf)
    answered = "pass" if said.startswith("bore") else "marginal" if said.startswith("40") else "fail"
    return worst(Verdict(answered, math.nan, said), least(bore, 0.050, 0.040))


def heavy_pieces(w: Worked) -> list[float]:
    """Masses of what is set in one piece: vessel or stones, and slabs."""
    masses = [body.empty / GRAVITY for body in bodies(w)]
    return masses + [w.r["slab_mass"] for body in bodies(w) if slab(w, body)[0] is not None]


@check("C48")
def lift(w: Worked):
    d, slung = w.d, w.d.get("site.sling_mass", 0.0)
    mass = max([d["site.lift_mass"], d.get("reservoir.block_mass", 0.0), *(piece for piece in heavy_pieces(w) if piece > slung * (1 + 1e-9))])
    start, end = d["site.lift_height"], d["site.lift_height"] + d["site.lift_travel"]
    limits = [
        lift_limit(d["site.lift_reach"], height, d["site.lift_travel"], min(d["assumptions.grip"], 1.0), w.plain.region) for height in (start, min(end, 1.75))
    ]
    return most(mass / min(limits), 1.0, 3.0, f"{mass:.4g} kg, the worse end of the lift")


@check("C65")
def slings(w: Worked):
    d = w.d
    mass = max([d["site.sling_mass"], *(piece for piece in heavy_pieces(w) if piece > d.get("site.lift_mass", 0.0))])
    angle = d["site.sling_angle"]
    if angle < math.radians(30) * (1 - 1e-9) or angle > math.pi / 2:
        return Verdict("fail", angle, "a leg flatter than 30 degrees")
    return most(mass * GRAVITY / (carrying_legs(d) * math.sin(angle)) / d["site.sling_rating"], 0.5, 1.0, f"{mass:.4g} kg")


def open_depth(w: Worked) -> float:
    """Depth (m) of water that stands open for certain: in the feature over any fill, and in the pump's bay where neither stone nor cover lies over it."""
    d = w.d
    if d.get("site.water_covered") == "yes":
        return 0.0
    bare = d.get("catch.stone_thickness", 1.0) == 0 and d.get("reservoir.cover", 0.0) == 0
    return max(_in_feature(w), d["reservoir.static_level"] if bare else 0.0)


def _in_feature(w: Worked) -> float:
    d, kind = w.d, w.plain.kind
    if kind == "overflowing vessel":
        free = d.get("vessel.water", 0.0) - d.get("vessel.foam", 0.0) - d.get("vessel.pebbles", 0.0)
        return max(free, 0.0) / w.r["vessel_surface"]
    if kind == "blade":
        return d.get("blade.trough_depth", 0.0)
    if kind == "cascade":
        return d["cascade.header_volume"] / d["cascade.header_area"] if {"cascade.header_volume", "cascade.header_area"} <= set(d) else 0.0
    return 0.0


@check("C51")
def open_water(w: Worked):
    depth = max(w.d["site.open_water"], open_depth(w))
    if depth <= 1e-6:
        return Verdict("pass", 0.0, "none")
    return Verdict("marginal", depth, "private") if not public(w) and depth <= 0.050 else Verdict("fail", depth, "open water where a child can reach it")


@check("C52")
def legionella(w: Worked):
    use, said, d = w.d["site.use"], w.d["site.legionella"], w.d
    if use == "care premises":
        return Verdict("fail", math.nan, use)
    if said == "in place":
        return Verdict("pass", math.nan, said)
    if use == "private":
        splashes = d.get("climate.splash", 0.0) * 86400e3 > 10 or d["flow.water_temperature"] > 298.15
        return Verdict("pass" if said == "low splash, private" and not splashes else "marginal", d.get("climate.splash", 0.0), said)
    return Verdict("marginal" if said == "commissioned" else "fail", math.nan, said)


@check("C54")
def trips(w: Worked):
    said = word(w, "edges")
    answered = Verdict("pass" if said.startswith("edge flush") else "marginal" if said.startswith("raised") else "fail", math.nan, said)
    edge = max(w.d.get("levels.liner_edge", 0.0), w.r.get("level:box edge", 0.0), w.r.get("level:stone top", 0.0))
    raised = 0.040 < edge < 0.100 * (1 - 1e-9)
    return worst(answered, Verdict("marginal", edge, "an edge between flush and 100 mm")) if raised else answered


def answered_only(key: str, good: str, fair: str = "\0"):
    def graded(w: Worked):
        said = word(w, key)
        return Verdict("pass" if said.startswith(good) else "marginal" if said.startswith(fair) else "fail", math.nan, said)

    return graded


CHECKS |= {
    "C24f": answered_only("formation", "undisturbed", "compacted,"), "C35": answered_only("services", "records", "record incomplete"),
    "C36": lambda w: worst(answered_only("backfill", "strutted", "bows 5")(w), most(w.r["bow"], 0.005, 0.010, "between two struts or corners")), "C53": answered_only("top_up", "air gap", "filled by hand"),
    "C71": answered_only("pump_marking", "read on the plate", "maker's sheet"),
    "C29": lambda w: answered_only("settlement", "re-levelled after", "re-levelled,")(w) if w.plain.kind == "overflowing vessel" else None,
}  # fmt: skip
