"""Loads, box, pit and liner, supply and site of whole designs, by plain arithmetic."""

import math
from typing import NamedTuple

from plain_bodies import area, greatest_pressure, rect
from plain_design import GRAVITY, Impossible, Missing
from standing import bodies, contents, grown, pieces, slab, steadied, tips_over, touching, within
from worked import Worked

pi = math.pi


# --- loads --------------------------------------------------------------------------------------------------------------------------------


def loads(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    put("block_allowable", lambda: d["reservoir.short_term_strength"] * d["reservoir.creep_factor"] / d["reservoir.safety_factor"])
    put("brief_allowable", lambda: d["reservoir.short_term_strength"] / d["reservoir.safety_factor"])
    put("wind_pressure", lambda: d["assumptions.exposure"] * d["assumptions.air_density"] * d["site.wind_speed"] ** 2 / 2)
    put("push", lambda: 250.0 if d["site.use"] == "private" else 500.0)
    STANDING[w.plain.kind](w)
    put("stone_on_blocks", lambda: _stone_on_blocks(d, r))
    put("blocks_mass", lambda: d["reservoir.blocks_along"] * d["reservoir.blocks_across"] * d["reservoir.block_mass"])
    put("cover_mass", lambda: d.get("reservoir.cover", 0.0) * r["block_plan"] * d["assumptions.cover_density"])
    put("base_mass", lambda: r["standing_mass"] + r["stone_on_blocks"] + r["blocks_mass"] + r["cover_mass"] + r["rho"] * r["static_volume"])
    put("eccentricity", lambda: abs(sum(m * body.x for m, body in zip(pieces(w), bodies(w)))) / r["base_mass"])
    put("eccentricity_across", lambda: abs(sum(m * body.y for m, body in zip(pieces(w), bodies(w)))) / r["base_mass"])
    put("kern_share", lambda: 6 * (r["eccentricity"] / r["base_length"] + r["eccentricity_across"] / r["base_width"]))
    put("base_pressure", lambda: _under_the_base(r))
    beside = {"blade": under_the_wall, "cascade": under_the_header}.get(w.plain.kind)
    put("local_pressure", lambda: max(r["base_pressure"], beside(w)) if beside else straight_down(w))
    put("soil_utilisation", lambda: r["base_pressure"] / d["site.soil_bearing"])
    put("soil_share", lambda: max(r["base_pressure"], r["local_pressure"]) / d["site.soil_bearing"])


def _under_the_base(r) -> float:
    if r["eccentricity_across"] > 1e-12 and r["kern_share"] > 1:
        raise Impossible("a corner of the base lifts")  # the product refuses there; the verdict goes by the cells
    return greatest_pressure(GRAVITY * r["base_mass"], r["base_length"], r["base_width"], r["eccentricity"], r["eccentricity_across"])


def straight_down(w: Worked) -> float:
    """Greatest pressure on the soil with each load going down from slab or foot and spread by the beds alone, with blocks and water beside it."""
    d, r, found = w.d, w.r, []
    beds = d["ground.sand"] + d["ground.sub_base"]
    field = rect(r["base_length"] + 2 * beds, r["base_width"] + 2 * beds)
    for mass, body in zip(pieces(w), bodies(w)):
        on_slab = slab(w, body)[0] is not None
        under = rect(d["slab.length"] + 2 * beds, d["slab.width"] + 2 * beds, body.x, body.y) if on_slab else grown(body.foot, beds, body)
        found.append(GRAVITY * mass / area(within(under, field)))
    return max(found) + GRAVITY * (r["blocks_mass"] / r["block_plan"] + r["rho"] * d["reservoir.void_fraction"] * d["reservoir.static_level"])


def _hardest(w: Worked) -> float:
    """Area under the piece that presses hardest."""
    return max((mass / touching(w, body), touching(w, body)) for mass, body in zip(pieces(w), bodies(w)))[1]


def _pressed(w: Worked) -> float:
    """Greatest pressure on the blocks, through foot and slab's thickness."""
    return max(GRAVITY * mass / touching(w, body) for mass, body in zip(pieces(w), bodies(w)))


def _tips(w: Worked, weight, push, arm) -> float:
    return min(weight(body) * tips_over(w, body) / (push(body) * arm(body)) for body in bodies(w))


def _blown(w: Worked) -> float:
    d, r = w.d, w.r
    return _tips(
        w, lambda body: body.empty, lambda body: r["wind_pressure"] * d["site.force_coefficient"] * body.face * body.height, lambda body: body.height / 2
    )


def _stone_on_blocks(d, r) -> float:
    if r["bare"] > r["block_plan"]:
        raise Impossible("what stands there is larger than the blocks")
    return (r["block_plan"] - r["bare"]) * d["catch.stone_thickness"] * d["catch.stone_density"]


def _slab_mass(d) -> float:
    return d["slab.length"] * d["slab.width"] * d["slab.thickness"] * d["slab.density"]


def vessel_stands(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    on_slab = d.get("vessel.stands_on") == "slab"
    put("slab_mass", lambda: _slab_mass(d) if d["vessel.stands_on"] == "slab" else 0.0)
    put(
        "foot_area",
        lambda: area(bodies(w)[0].foot) - area(bodies(w)[0].hole),
    )
    put("patch", lambda: d["slab.length"] * d["slab.width"] if d["vessel.stands_on"] == "slab" else r["foot_area"])
    put("content", lambda: contents(w))
    put(
        "water_held",
        lambda: contents(w) * 0 + d["vessel.water"] - d.get("vessel.foam", 0.0) - d.get("vessel.pebbles", 0.0) * (1 - d["assumptions.pebble_gaps"]),
    )
    put("standing_mass", lambda: d["vessel.mass"] + r["content"] + r["slab_mass"])
    put("vessel_weight", lambda: GRAVITY * r["standing_mass"])
    put("block_pressure", lambda: r["vessel_weight"] / r["patch"])
    put("block_utilisation", lambda: r["block_pressure"] / r["block_allowable"])
    put("bare", lambda: r["patch"] if on_slab else _foot_plan(w))
    put("tipping_full", lambda: _tips(w, lambda body: steadied(w, body), lambda body: r["push"], lambda body: body.height))
    put("tipping_empty", lambda: _tips(w, lambda body: body.empty, lambda body: r["push"], lambda body: body.height))
    put("tipping_in_wind", lambda: _blown(w))
    put("spread_pressure", lambda: _pressed(w))
    put("spread_area", lambda: _hardest(w) if r["spread_pressure"] else 0.0)
    put("spread_utilisation", lambda: r["spread_pressure"] / r["block_allowable"])
    widest = lambda: _only_round(d) * max(d["vessel.rim_diameter"], d.get("vessel.widest", 0.0))  # noqa: E731
    put(
        "hoop_stress",
        lambda: _thinner(d["vessel.wall_thickness"], widest() / 2) * r["rho"] * GRAVITY * d["vessel.height"] * widest() / 2 / d["vessel.wall_thickness"],
    )
    put("wall_share", lambda: r["hoop_stress"] / d["vessel.tensile_strength"])
    put("pebbles_sink", lambda: d["vessel.pebbles"] * (1 - d["assumptions.pebble_gaps"]) * (d["assumptions.pebble_density"] - r["rho"]))
    put("foam_rises", lambda: d["vessel.foam"] * (r["rho"] - d["vessel.foam_density"]))
    put("foam_held", lambda: contents(w) * 0 + (r["pebbles_sink"] / r["foam_rises"] if d["vessel.foam"] else math.inf))
    put("pebbles_wanted", lambda: 1.3 * r["foam_rises"] / ((1 - d["assumptions.pebble_gaps"]) * (d["assumptions.pebble_density"] - r["rho"])))


def _only_round(d) -> float:
    if d["vessel.shape"] != "round":
        raise Impossible("hoop stress is of a round wall")
    return 1.0


def _foot_plan(w: Worked) -> float:
    """Plan of the foot with its hole: no stone lies there."""
    return area(bodies(w)[0].foot) + 0.0 * len(w.d["vessel.stands_on"])


def stones_stand(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    on_slabs = d.get("stones.stand_on") == "slabs"
    masses = lambda: [body.full / GRAVITY for body in bodies(w)]  # noqa: E731
    put("slab_mass", lambda: _slab_mass(d) if d["stones.stand_on"] == "slabs" else 0.0)
    put("patch", lambda: d["slab.length"] * d["slab.width"] if d["stones.stand_on"] == "slabs" else d["stones.rough_contact"])
    put("heaviest", lambda: GRAVITY * (max(masses()) + r["slab_mass"]))
    put("block_pressure", lambda: r["heaviest"] / r["patch"])
    put("block_utilisation", lambda: r["block_pressure"] / r["block_allowable"])
    put("standing_mass", lambda: sum(masses()) + len(masses()) * r["slab_mass"])
    put("spread_pressure", lambda: _pressed(w))
    put("spread_area", lambda: _hardest(w) if r["spread_pressure"] else 0.0)
    put("spread_utilisation", lambda: r["spread_pressure"] / r["block_allowable"])
    put("bare", lambda: 0.0 * on_slabs)
    put("tipping", lambda: _tips(w, lambda body: body.full, lambda body: r["push"], lambda body: body.height))
    put("tipping_in_wind", lambda: _blown(w))


def nothing_stands(w: Worked) -> None:
    for name in ("standing_mass", "bare"):
        w.r[name] = 0.0
    if w.plain.kind == "blade":
        w.put("wall_mass", lambda: _wall(w).mass)
        w.put("tipping", lambda: GRAVITY * _wall(w).mass * _wall(w).deep / 2 / (w.r["push"] * _wall(w).high))
        w.put("tipping_in_wind", lambda: GRAVITY * _wall(w).mass * _wall(w).deep / 2 / _gust(w))
    if w.plain.kind == "cascade":
        w.put("header_mass", lambda: w.d["cascade.header_area"] * max(w.d["cascade.top_level"], 0.0) * w.d["assumptions.wall_density"])
        w.put("tipping", lambda: _held(w) / (w.r["push"] * _header(w)[3]) if _header(w)[3] else math.inf)
        w.put("tipping_in_wind", lambda: _held(w) / _gust_on_header(w) if _header(w)[3] else math.inf)


def _header(w: Worked) -> tuple[float, float, float, float]:
    """Mass of what carries a cascade's header, its narrower and wider side, and how high it stands over the paving."""
    d, high = w.d, max(w.d["cascade.top_level"], 0.0)
    other = d["cascade.header_area"] / d["cascade.width"]
    return d["cascade.header_area"] * high * d["assumptions.wall_density"], min(d["cascade.width"], other), max(d["cascade.width"], other), high


def _held(w: Worked) -> float:
    mass, narrow, _, _ = _header(w)
    return GRAVITY * mass * narrow / 2


def _gust_on_header(w: Worked) -> float:
    _, _, wide, high = _header(w)
    return w.r["wind_pressure"] * w.d["site.force_coefficient"] * wide * high**2 / 2


SHELL = 0.025  # m: thickness of a trough's sides and floor, as it is drawn


class Wall(NamedTuple):
    mass: float
    deep: float
    long: float
    high: float


def _wall(w: Worked) -> Wall:
    """A wall as long and deep as its trough from outside, solid up to the trough's floor; it stands on the paving."""
    d = w.d
    long, wide, depth = max(d["blade.trough_length"], d["blade.lip_width"]), d["blade.trough_width"], d["blade.trough_depth"]
    outside, inside = (long + 2 * SHELL) * (wide + 2 * SHELL), long * wide
    solid = outside * max(d["blade.lip_level"] - depth - SHELL, 0.0)
    shell = outside * SHELL + (outside - inside) * depth
    high = max(d["blade.lip_level"], d["blade.wall_height"])
    if high <= 0:
        raise Impossible("no wall stands over the paving")
    return Wall(d["assumptions.wall_density"] * (solid + shell), wide + 2 * SHELL, long + 2 * SHELL, high)


def _gust(w: Worked) -> float:
    """Moment (N m) of the wind on the wall's face, about its foot."""
    wall = _wall(w)
    return w.r["wind_pressure"] * w.d["site.force_coefficient"] * wall.long * wall.high**2 / 2


def under_the_wall(w: Worked) -> float:
    wall, held = _wall(w), w.r["trough"] * (w.d["blade.trough_depth"] + w.r["lip_head"])
    below = max(-w.r["level:formation"], 0.1) * w.d["assumptions.wall_density"]  # of its footing, as wide as the wall, down to the bottom of the pit
    return GRAVITY * ((wall.mass + w.r["rho"] * held) / (wall.deep * wall.long) + below)


def under_the_header(w: Worked) -> float:
    d = w.d
    return GRAVITY * (max(d["cascade.top_level"], 0.0) * d["assumptions.wall_density"] + w.r["rho"] * d["cascade.header_volume"] / d["cascade.header_area"])


def _side_pressure(w: Worked) -> float:
    """Mean pressure on a side of the box: that of the fill half-way down, under the soil that stands over it, and what ground water adds."""
    d, deep = w.d, w.r["box_depth"]
    over = max(max(d.get("levels.soil", 0.0), 0.0) - w.r["level:reservoir floor"] - deep, 0.0)
    wet = min(d.get("site.ground_water", 0.0), deep)
    return d["assumptions.fill_push"] * d["assumptions.fill_density"] * GRAVITY * (over + deep / 2) + w.r["rho"] * GRAVITY * wet**2 / (2 * deep)


def _unheld(w: Worked) -> float:
    return max(min(w.d["buying.strut_spacing"], w.r["box_length"]), w.r["box_width"])


# --- box, pit, liner ------------------------------------------------------------------------------------------------------------------------


def lining(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    for side in ("length", "width"):
        put(f"box_{side}", lambda side=side: r[f"base_{side}"] + 2 * (d["ground.lining_thickness"] + d["ground.clearance"]))
    put("box_depth", lambda: d["reservoir.block_height"] + d["ground.box_upstand"])
    put("level:box edge", lambda: r["level:reservoir floor"] + r["box_depth"])
    put("foot_over_box", lambda: r["foot"] - r["level:box edge"])
    for ours, side in (("panel_long", "length"), ("panel_across", "width")):
        put(ours, lambda side=side: r[f"box_{side}"] + 2 * d["ground.board"])
    for side in ("length", "width"):
        put(f"liner_{side}", lambda side=side: r[f"box_{side}"] + 2 * (r["box_depth"] + d["catch.apron"] + d["lining.beyond_apron"]))
    longest = lambda: max(r["panel_long"], r["panel_across"])  # noqa: E731
    put("side_thrust", lambda: _side_pressure(w) * r["box_depth"] * longest())
    put("side_pressure", lambda: _side_pressure(w))
    put("bow", lambda: 5 / 384 * r["side_pressure"] * _unheld(w) ** 4 / (d["assumptions.board_stiffness"] * d["ground.board"] ** 3 / 12))
    narrow = lambda: min(r["liner_length"], r["liner_width"])  # noqa: E731
    put("roll", lambda: min((one for one in d["lining.rolls"] if one >= narrow()), default=max(d["lining.rolls"])))
    put("roll_spare", lambda: r["roll"] - narrow())
    put("pit_length", lambda: r["panel_long"] + 2 * d["ground.working_space"])
    put("pit_width", lambda: r["panel_across"] + 2 * d["ground.working_space"])
    put("pit_depth", lambda: -r["level:formation"])
    put("diagonal", lambda: math.hypot(r["pit_length"], r["pit_width"]))
    put("pit_dug", lambda: r["pit_length"] * r["pit_width"] * r["pit_depth"])
    apron = lambda: (r["box_length"] + 2 * d["catch.apron"]) * (r["box_width"] + 2 * d["catch.apron"])  # noqa: E731
    edge = lambda: d["levels.block_top"] + d["ground.box_upstand"]  # noqa: E731
    put("apron_dug", lambda: max(apron() - r["pit_length"] * r["pit_width"], 0.0) * max(-edge(), 0.0))
    put("dug", lambda: r["pit_dug"] + r["apron_dug"])
    put("swell", lambda: d["ground.bulking"] - 1)
    put("spoil", lambda: r["dug"] * (1 + r["swell"]))
    put("stone_area", lambda: apron() - r["bare"])
    inside = lambda: r["box_length"] * r["box_width"] - r["bare"]  # noqa: E731
    stone = lambda: inside() * d["catch.stone_thickness"] + (r["stone_area"] - inside()) * max(r["level:stone top"] - edge(), 0.0)  # noqa: E731
    put("stone_mass", lambda: stone() * d["catch.stone_density"] * (1 + d["catch.stone_waste"]))
    dry = lambda: r["stone_on_blocks"] + r["blocks_mass"]  # noqa: E731
    lifted = lambda: r["rho"] * r["box_length"] * r["box_width"] * d["site.ground_water"]  # noqa: E731
    put("flotation", lambda: dry() / lifted() if lifted() else math.inf * (1 + dry()))
    throw = lambda: r["throw"] if w.plain.kind == "blade" else 0.0  # noqa: E731
    put("apron_wanted", lambda: d["assumptions.wind_factor"] * (throw() + d["catch.splash_factor"] * r["fall"]))
    put("apron_share", lambda: _caught(w))
    wheel = lambda: [(d["site.wheel_load"], d["site.wheel_side"])] if {"site.wheel_load", "site.wheel_side"} & set(w.plain.said) else []  # noqa: E731
    loads = lambda: [(d["assumptions.person"], d["assumptions.foot"]), *wheel()]  # noqa: E731
    under = lambda cover: max(force / (side + 2 * cover) ** 2 for force, side in loads())  # noqa: E731
    bare = lambda: "reservoir.cover" not in d and under(0.0) <= r["brief_allowable"]  # noqa: E731
    put("foot_pressure", lambda: under(0.0 if bare() else d["reservoir.cover"]))
    put("foot_utilisation", lambda: r["foot_pressure"] / r["brief_allowable"])


def _caught(w: Worked) -> float:
    """Room for splash over what water and wind want of it, where it is least: from the outermost water to the end of the lined catch."""
    d, r, kind = w.d, w.r, w.plain.kind
    half = (r["box_length"] / 2 + d["catch.apron"], r["box_width"] / 2 + d["catch.apron"])
    splash = d["assumptions.wind_factor"] * d["catch.splash_factor"]
    if kind == "cascade":
        beside = d["cascade.splash_edge"] / r["apron_wanted"]
        if not r["last_fall"]:
            return beside
        wide = d["cascade.rill_width"] if d["cascade.rill_length"] else d["cascade.width"]
        wanted = d["assumptions.wind_factor"] * r["last_throw"] + splash * r["last_fall"]
        return min(beside, max(min(d["catch.apron"], half[1] - wide / 2), 0.0) / wanted)
    if kind == "blade":
        return min(
            d["catch.apron"] / r["apron_wanted"], max(half[1] - d["blade.lip_width"] / 2, 0.0) / (splash * r["fall"]) if splash * r["fall"] else math.inf
        )
    room = [min(half[0] - abs(body.x) - body.seen[0] / 2, half[1] - abs(body.y) - body.seen[1] / 2) for body in bodies(w)]
    return max(min(d["catch.apron"], *room), 0.0) / r["apron_wanted"]


# --- supply and site ------------------------------------------------------------------------------------------------------------------------


# Two-core copper cables, mV for each ampere and metre; resistance of one solid conductor by gauge, ohm/kft at 75 degC (of the stranded ones the product's table is not used here).
DROP_OF = {"1.5 mm2": 29, "2.5 mm2": 18, "4 mm2": 13.2, "6 mm2": 8.5, "10 mm2": 5.1}
RESISTS = {"14 AWG": 3.07, "12 AWG": 1.93, "10 AWG": 1.21, "8 AWG": 0.764}


def drop_each(d) -> float:
    """V for each ampere and metre of cable, there and back: the worst of what is typed and what the conductors' tables say."""
    size = d.get("supply.conductor")
    each = [factor * d[key] for key, factor in (("supply.voltage_drop", 1.0), ("supply.resistance", 2.0)) if key in d]
    each += [DROP_OF[size] * 1e-3] if size in DROP_OF else [2 * RESISTS[size] / 304.8] if size in RESISTS else []
    return max(each or [d["supply.voltage_drop"]])


def supply(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    put("current", lambda: d["measured.current"] if "measured.current" in d else d["pump.power"] / (d["supply.voltage"] * d["supply.power_factor"]))
    put("voltage_drop", lambda: _part(max(r["current"], d.get("supply.circuit_load", 0.0)) * drop_each(d) * d["supply.cable_length"] / d["supply.voltage"]))
    put("energy", lambda: d["pump.power"] * d["supply.hours_per_day"] * 365)
    put("running_cost", lambda: r["energy"] * d["supply.tariff"])
    put("cord_wanted", lambda: max(d["supply.cord_route"], straight_route(w)) + d["assumptions.drip_loop"] + d["assumptions.lift_out"])


def _thinner(wall: float, radius: float) -> float:
    if wall >= radius:
        raise Impossible("the wall is thicker than the vessel's radius")
    return 1.0


def _part(share: float) -> float:
    """A drop of half the voltage or more is none: the current would no longer be what it was worked out for."""
    if share >= 0.5:
        raise Impossible("half of the voltage or more is lost")
    return share


def straight_route(w: Worked) -> float:
    """From the pump's bay straight to the supply point, and up from the floor."""
    d, side = w.d, w.d["pump.bay"]
    if not {"supply.point_along", "supply.point_across"} <= set(d) or not w.known("base_length", "base_width", "level:reservoir floor"):
        return 0.0
    x, y = -(w.r["base_length"] - side) / 2, -(w.r["base_width"] - side) / 2
    return math.hypot(d["supply.point_along"] - x, d["supply.point_across"] - y) - w.r["level:reservoir floor"]


def by_hand(w: Worked) -> float:
    """The heaviest thing that somebody must lift: as typed, a block, or a piece heavier than what the slings are meant for."""
    d, slung = w.d, w.d.get("site.sling_mass", math.inf if w.d.get("site.slings", "used") == "used" else 0.0)
    return max([d["site.lift_mass"], d.get("reservoir.block_mass", 0.0), *(mass for mass in set_pieces(w) if mass > slung * (1 + 1e-9))])


def by_slings(w: Worked) -> float:
    d = w.d
    return max([d["site.sling_mass"], *(mass for mass in set_pieces(w) if mass > d.get("site.lift_mass", 0.0))])


def set_pieces(w: Worked) -> list[float]:
    """Masses of what is set in one piece: vessel or stones, and slabs; none where they are not known."""
    try:
        if w.plain.kind == "overflowing vessel":  # its mass is known whatever its foot may be
            return [w.d["vessel.mass"]] + [w.r["slab_mass"]] * (w.d["vessel.stands_on"] == "slab")
        masses = [body.empty / GRAVITY for body in bodies(w)]
        return masses + [w.r["slab_mass"] for body in bodies(w) if slab(w, body)[0] is not None]
    except (Missing, Impossible):
        return []


def surroundings(w: Worked) -> None:
    d, put = w.d, w.put
    put("root_radius", lambda: 12 * d["site.tree_stem"])
    put("noise", lambda: d["site.sound_at_1m"] - 20 * math.log10(d["site.neighbour"]))
    ends = lambda: (d["site.lift_height"], min(d["site.lift_height"] + d["site.lift_travel"], 1.75))  # noqa: E731
    limit = lambda: min(lift_limit(d["site.lift_reach"], height, d["site.lift_travel"], min(d["assumptions.grip"], 1.0), w.plain.region) for height in ends())  # noqa: E731
    put("lift", lambda: by_hand(w) / limit())
    put("sling", lambda: _sling(by_slings(w), carrying_legs(d), d["site.sling_angle"]))
    put("cost_estimate", lambda: d["site.base_estimate"] * (1 + d["costing.contingency"]))


def lift_limit(reach: float, height: float, travel: float, grip: float, region: str) -> float:
    """Recommended weight limit (kg): the revised NIOSH equation (1991; manual 94-110), straight ahead and seldom, in the units of the region."""
    if reach > 0.63 or height > 1.75 or travel > 1.75:
        raise Impossible("nobody should lift so")
    if region == "US":
        h, v, d = (length / 0.0254 for length in (reach, height, travel))
        return 0.45359237 * 51 * (10 / max(h, 10.0)) * (1 - 0.0075 * abs(v - 30)) * (0.82 + 1.8 / max(d, 10.0)) * grip
    return 23 * (0.25 / max(reach, 0.25)) * (1 - 0.3 * abs(height - 0.75)) * (0.82 + 0.045 / max(travel, 0.25)) * grip


def carrying_legs(d) -> float:
    """Two of three or four legs, unless a gear makes all pull alike."""
    return d["site.sling_legs"] if d["site.sling_equal"] == "yes" else min(d["site.sling_legs"], 2)


def _sling(mass: float, legs: float, angle: float) -> float:
    if angle < math.radians(30) * (1 - 1e-9) or angle > pi / 2:
        raise Impossible("a leg flatter than 30 degrees")
    return mass * GRAVITY / (legs * math.sin(angle))


STANDING = {"overflowing vessel": vessel_stands, "drilled stones": stones_stand, "blade": nothing_stands, "cascade": nothing_stands}
