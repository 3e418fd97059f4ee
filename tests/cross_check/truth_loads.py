"""Loads, box, pit and liner, supply and site of whole designs, by plain arithmetic."""

import math

from plain_bodies import area, greatest_pressure
from plain_design import GRAVITY, Impossible
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
    put("base_mass", lambda: r["standing_mass"] + r["stone_on_blocks"] + r["blocks_mass"] + r["rho"] * r["static_volume"])
    put("eccentricity", lambda: r["standing_mass"] * r["standing_offset"] / r["base_mass"])
    put("kern_share", lambda: abs(r["eccentricity"]) / (r["base_length"] / 6))
    put("base_pressure", lambda: greatest_pressure(GRAVITY * r["base_mass"], r["base_length"], r["base_width"], r["eccentricity"], 0.0))
    put("soil_utilisation", lambda: r["base_pressure"] / d["site.soil_bearing"])


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
        lambda: area(d["vessel.foot_corners"]) if "vessel.foot_corners" in d else pi / 4 * (d["vessel.foot_outside"] ** 2 - d["vessel.foot_inside"] ** 2),
    )
    put("patch", lambda: d["slab.length"] * d["slab.width"] if d["vessel.stands_on"] == "slab" else r["foot_area"])
    put("content", lambda: r["rho"] * d["vessel.water"])
    put("standing_mass", lambda: d["vessel.mass"] + r["content"] + r["slab_mass"])
    put("standing_offset", lambda: d["vessel.offset"])
    put("vessel_weight", lambda: GRAVITY * r["standing_mass"])
    put("block_pressure", lambda: r["vessel_weight"] / r["patch"])
    put("block_utilisation", lambda: r["block_pressure"] / r["block_allowable"])
    put("bare", lambda: r["patch"] if on_slab else pi / 4 * d["vessel.foot_outside"] ** 2 + 0.0 * len(d["vessel.stands_on"]))
    put("tipping_full", lambda: GRAVITY * (d["vessel.mass"] + r["content"]) * d["vessel.foot_outside"] / 2 / (r["push"] * d["vessel.height"]))
    put("tipping_empty", lambda: GRAVITY * d["vessel.mass"] * d["vessel.foot_outside"] / 2 / (r["push"] * d["vessel.height"]))
    widest = lambda: max(d["vessel.rim_diameter"], d.get("vessel.widest", 0.0))  # noqa: E731
    put("hoop_stress", lambda: widest() / widest() * r["rho"] * GRAVITY * d["vessel.height"] * widest() / 2 / d["vessel.wall"])
    put("wall_share", lambda: r["hoop_stress"] / d["vessel.tensile_strength"])
    put("pebbles_sink", lambda: d["vessel.pebbles"] * (1 - d["assumptions.pebble_gaps"]) * (d["assumptions.pebble_density"] - r["rho"]))
    put("foam_rises", lambda: d["vessel.foam"] * (r["rho"] - d["vessel.foam_density"]))
    put("foam_held", lambda: r["pebbles_sink"] / r["foam_rises"])


def stones_stand(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    on_slabs = d.get("stones.stand_on") == "slabs"
    masses = lambda: [pi / 4 * (a * a - d["stones.hole"] ** 2) * h * d["stones.density"] for a, h in zip(d["stones.diameters"], d["stones.heights"])]  # noqa: E731
    put("slab_mass", lambda: _slab_mass(d) if d["stones.stand_on"] == "slabs" else 0.0)
    put("patch", lambda: d["slab.length"] * d["slab.width"] if d["stones.stand_on"] == "slabs" else d["stones.rough_contact"])
    put("heaviest", lambda: GRAVITY * (max(masses()) + r["slab_mass"]))
    put("block_pressure", lambda: r["heaviest"] / r["patch"])
    put("block_utilisation", lambda: r["block_pressure"] / r["block_allowable"])
    put("standing_mass", lambda: sum(masses()) + len(masses()) * r["slab_mass"])
    spread = lambda: [(i + 0.5) / len(masses()) - 0.5 for i in range(len(masses()))]  # noqa: E731
    put("standing_offset", lambda: r["base_length"] * sum(m * x for m, x in zip(masses(), spread())) / r["standing_mass"])
    put("bare", lambda: 0.0 * on_slabs)
    put("lever_share", lambda: d["stones.base_share"])
    put(
        "tipping",
        lambda: min(GRAVITY * m * a / 2 * d["stones.base_share"] / (r["push"] * h) for m, a, h in zip(masses(), d["stones.diameters"], d["stones.heights"])),
    )
    put("tipping_in_wind", lambda: min(
        GRAVITY * m * a / 2 * d["stones.base_share"] / (r["wind_pressure"] * d["site.force_coefficient"] * a * h * h / 2)
        for m, a, h in zip(masses(), d["stones.diameters"], d["stones.heights"])))  # fmt: skip


def nothing_stands(w: Worked) -> None:
    for name in ("standing_mass", "standing_offset", "bare"):
        w.r[name] = 0.0


# --- box, pit, liner ------------------------------------------------------------------------------------------------------------------------


def lining(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    for side in ("length", "width"):
        put(f"box_{side}", lambda side=side: r[f"base_{side}"] + 2 * (d["ground.lining"] + d["ground.clearance"]))
    put("box_depth", lambda: d["reservoir.block_height"] + d["ground.box_upstand"])
    put("level:box edge", lambda: r["level:reservoir floor"] + r["box_depth"])
    put("foot_over_box", lambda: r["foot"] - r["level:box edge"])
    for ours, side in (("panel_long", "length"), ("panel_across", "width")):
        put(ours, lambda side=side: r[f"box_{side}"] + 2 * d["ground.board"])
    for side in ("length", "width"):
        put(f"liner_{side}", lambda side=side: r[f"box_{side}"] + 2 * (r["box_depth"] + d["catch.apron"] + d["lining.margin"]))
    narrow = lambda: min(r["liner_length"], r["liner_width"])  # noqa: E731
    put("roll", lambda: min((one for one in d["lining.rolls"] if one >= narrow()), default=max(d["lining.rolls"])))
    put("roll_spare", lambda: r["roll"] - narrow())
    put("pit_length", lambda: r["panel_long"] + 2 * d["ground.working_space"])
    put("pit_width", lambda: r["panel_across"] + 2 * d["ground.working_space"])
    put("pit_depth", lambda: -r["level:formation"])
    put("diagonal", lambda: math.hypot(r["pit_length"], r["pit_width"]))
    put("pit_dug", lambda: r["pit_length"] * r["pit_width"] * r["pit_depth"])
    apron = lambda: (r["box_length"] + 2 * d["catch.apron"]) * (r["box_width"] + 2 * d["catch.apron"])  # noqa: E731
    put("apron_dug", lambda: max(apron() - r["pit_length"] * r["pit_width"], 0.0) * max(-d["levels.block_top"], 0.0))
    put("dug", lambda: r["pit_dug"] + r["apron_dug"])
    put("swell", lambda: d["ground.bulking"] - 1)
    put("spoil", lambda: r["dug"] * (1 + r["swell"]))
    put("stone_area", lambda: apron() - r["bare"])
    put("stone_mass", lambda: r["stone_area"] * d["catch.stone_thickness"] * d["catch.stone_density"] * (1 + d["catch.stone_waste"]))
    dry = lambda: r["stone_on_blocks"] + r["blocks_mass"]  # noqa: E731
    lifted = lambda: r["rho"] * r["box_length"] * r["box_width"] * d["site.ground_water"]  # noqa: E731
    put("flotation", lambda: dry() / lifted() if lifted() else math.inf * (1 + dry()))
    throw = lambda: r["throw"] if w.plain.kind == "blade" else 0.0  # noqa: E731
    put("apron_wanted", lambda: d["assumptions.wind_factor"] * (throw() + d["catch.splash_factor"] * r["fall"]))
    put("apron_share", lambda: (d["cascade.edge"] if w.plain.kind == "cascade" else d["catch.apron"]) / r["apron_wanted"])
    wheel = lambda: [(d["site.wheel_load"], d["site.wheel_side"])] if {"site.wheel_load", "site.wheel_side"} & set(w.plain.said) else []  # noqa: E731
    loads = lambda: [(d["assumptions.person"], d["assumptions.foot"]), *wheel()]  # noqa: E731
    under = lambda cover: max(force / (side + 2 * cover) ** 2 for force, side in loads())  # noqa: E731
    bare = lambda: "reservoir.cover" not in d and under(0.0) <= r["brief_allowable"]  # noqa: E731
    put("foot_pressure", lambda: under(0.0 if bare() else d["reservoir.cover"]))
    put("foot_utilisation", lambda: r["foot_pressure"] / r["brief_allowable"])


# --- supply and site ------------------------------------------------------------------------------------------------------------------------


def supply(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    put("current", lambda: d["measured.current"] if "measured.current" in d else d["pump.power"] / (d["supply.voltage"] * d["supply.power_factor"]))
    each = lambda: 2 * d["supply.resistance"] if "supply.resistance" in d else d["supply.drop"]  # noqa: E731
    put("voltage_drop", lambda: _part(r["current"] * each() * d["supply.cable_length"] / d["supply.voltage"]))
    put("energy", lambda: d["pump.power"] * d["supply.hours_per_day"] * 365)
    put("running_cost", lambda: r["energy"] * d["supply.tariff"])
    put("cord_wanted", lambda: d["supply.cord_route"] + d["assumptions.drip_loop"] + d["assumptions.lift_out"])


def _part(share: float) -> float:
    """A drop of half the voltage or more is none: the current would no longer be what it was worked out for."""
    if share >= 0.5:
        raise Impossible("half of the voltage or more is lost")
    return share


def surroundings(w: Worked) -> None:
    d, put = w.d, w.put
    put("root_radius", lambda: 12 * d["site.tree_stem"])
    put("noise", lambda: d["site.sound_at_1m"] - 20 * math.log10(d["site.neighbour"]))
    put("lift", lambda: d["site.lift_mass"] / lift_limit(d["site.lift_reach"], d["site.lift_height"], d["site.lift_travel"], d["assumptions.grip"]))
    put("sling", lambda: _sling(d["site.sling_mass"], d["site.sling_legs"], d["site.sling_angle"]))
    put("cost_estimate", lambda: d["site.cost"] * (1 + d["costing.contingency"]))


def lift_limit(reach: float, height: float, travel: float, grip: float) -> float:
    """Recommended weight limit (kg): the revised NIOSH equation in metric units, straight ahead and seldom."""
    if reach > 0.63 or height > 1.75 or travel > 1.75:
        raise Impossible("nobody should lift so")
    return 23 * (0.25 / max(reach, 0.25)) * (1 - 0.3 * abs(height - 0.75)) * (0.82 + 0.045 / max(travel, 0.25)) * grip


def _sling(mass: float, legs: float, angle: float) -> float:
    if angle < math.radians(30) * (1 - 1e-9) or angle > pi / 2:
        raise Impossible("a leg flatter than 30 degrees")
    return mass * GRAVITY / (min(legs, 2) * math.sin(angle))


STANDING = {"overflowing vessel": vessel_stands, "drilled stones": stones_stand, "blade": nothing_stands, "cascade": nothing_stands}
