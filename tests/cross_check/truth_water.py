"""Levels, flow, pump and reservoir of whole designs, by plain arithmetic."""

import math

from plain_design import GRAVITY, Impossible
from plain_flow import BROAD, Curve, density, film, head_over, hose, manning_depth, shared, sheet, viscosity
from worked import Worked

pi = math.pi


def levels(w: Worked) -> None:
    """To the finished paving, in metres."""
    d, r, put = w.d, w.r, w.put
    put("level:reservoir floor", lambda: d["levels.block_top"] - d["reservoir.block_height"])
    put("level:formation", lambda: r["level:reservoir floor"] - d["ground.lining_thickness"] - d["ground.sand"] - d["ground.sub_base"])
    for name, key in WATER_LEVELS.items():
        put(f"level:{name}", lambda key=key: r["level:reservoir floor"] + d[key])
    put("level:cover top", lambda: d["levels.block_top"] + d.get("reservoir.cover", 0.0))
    put("level:stone top", lambda: r["level:cover top"] + d["catch.stone_thickness"])
    put("rho", lambda: density(d["flow.water_temperature"]))
    put("nu", lambda: viscosity(d["flow.water_temperature"]))
    put("base_length", lambda: d["reservoir.blocks_along"] * d["reservoir.block_length"])
    put("base_width", lambda: d["reservoir.blocks_across"] * d["reservoir.block_width"])
    put("block_plan", lambda: r["base_length"] * r["base_width"])
    put("water_area", lambda: d["measured.filled"] / d["reservoir.static_level"] if "measured.filled" in d else r["block_plan"] * d["reservoir.void_fraction"])


WATER_LEVELS = {
    "pump intake": "pump.intake_level", "cut-out": "reservoir.cut_out_level", "top-up": "reservoir.top_up_level", "lowest water": "reservoir.lowest_level",
    "running water": "reservoir.running_level", "static water": "reservoir.static_level", "overflow": "reservoir.overflow_level",
}  # fmt: skip


# --- what is special to each kind, before the pump is known ---------------------------------------------------------------------------


def vessel(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    put("level:vessel base", lambda: r["level:cover top"] + (d["slab.thickness"] if d["vessel.stands_on"] == "slab" else 0.0))
    put("level:rim", lambda: r["level:vessel base"] + d["vessel.height"])
    put("rim_length", lambda: _round_it(d)[0])
    put("vessel_surface", lambda: _round_it(d)[1])
    put("flow_wanted", lambda: d["flow.for_each_metre"] * r["rim_length"])
    put("rim_head", lambda: head_over(r["flow_wanted"], r["rim_length"], d["flow.weir_coefficient"]))
    put("delivery", lambda: r["level:rim"] + r["rim_head"])
    put("fall", lambda: _falls(r["level:rim"] - min(0.0, r["level:stone top"])))


def _round_it(d) -> tuple[float, float]:
    """Length of the rim all round, and the water surface within it."""
    long = d["vessel.rim_diameter"] if d["vessel.shape"] != "another" else 0.0
    if d["vessel.shape"] == "round":
        return pi * long, pi / 4 * long**2
    if d["vessel.shape"] == "another":
        return d["vessel.rim_length"], d["vessel.surface"]
    wide = d["vessel.rim_width"] if d["vessel.shape"] == "rectangular" else long
    return 2 * (long + wide), long * wide


def _falls(height: float) -> float:
    if height <= 0:
        raise Impossible("nothing falls")
    return height


def stones(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    put("level:stone base", lambda: r["level:cover top"] + (d["slab.thickness"] if d["stones.stand_on"] == "slabs" else 0.0))
    put("level:top of the highest stone", lambda: r["level:stone base"] + max(d["stones.heights"]))
    put("flow_wanted", lambda: sum(pi * one * d["flow.for_each_metre"] for one in d["stones.diameters"]))
    put("fall", lambda: r["level:top of the highest stone"] - min(0.0, r["level:stone top"]))
    put("sides", lambda: sum(pi * a * h for a, h in zip(d["stones.diameters"], d["stones.heights"])))
    if w.known("stones.diameters", "stones.heights", "stones.branch_lengths"):
        if len({len(d[f"stones.{key}"]) for key in ("diameters", "heights", "branch_lengths")}) > 1:
            w.why["stones"] = ("impossible", "lists of different length")


def _edge(w: Worked) -> float:
    return w.d.get("flow.weir_coefficient", BROAD)


def _sheet(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    for i, name in enumerate(("critical_depth", "brink_depth", "brink_speed")):
        put(name, lambda i=i: sheet(d["flow.for_each_metre"], 0.0)[i])
    put("fall_time", lambda: (2 * r["fall"] / GRAVITY) ** 0.5 if r["fall"] >= 0 else math.nan)
    put("throw", lambda: r["brink_speed"] * r["fall_time"])


def blade(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    put("level:lip", lambda: d["blade.lip_level"])
    put("flow_wanted", lambda: d["flow.for_each_metre"] * d["blade.lip_width"])
    put("lip_head", lambda: head_over(r["flow_wanted"], d["blade.lip_width"], _edge(w)))
    put("delivery", lambda: d["blade.lip_level"] + r["lip_head"])
    put("fall", lambda: _falls(d["blade.lip_level"] - d["blade.stone_level"]))
    put("trough", lambda: max(d["blade.trough_length"], d["blade.lip_width"]) * d["blade.trough_width"])
    _sheet(w)
    put("landing_speed", lambda: (r["brink_speed"] ** 2 + 2 * GRAVITY * r["fall"]) ** 0.5)
    put("landing_thickness", lambda: d["flow.for_each_metre"] / r["landing_speed"])


def cascade(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    put("level:header lip", lambda: d["cascade.top_level"])
    put("flow_wanted", lambda: d["flow.for_each_metre"] * d["cascade.width"])
    put("step_head", lambda: head_over(r["flow_wanted"], d["cascade.width"], _edge(w)))
    put("delivery", lambda: d["cascade.top_level"] + r["step_head"])
    put("fall", lambda: d["cascade.step_fall"])
    put("pools", lambda: d["cascade.header_area"] + d["cascade.steps"] * max(d["cascade.pool_area"], _one_pool(d)))
    _sheet(w)
    put("tread_share", lambda: d["cascade.tread"] / r["throw"])
    put("normal_depth", lambda: manning_depth(r["flow_wanted"], d["cascade.rill_width"], d["cascade.rill_slope"], d["cascade.rill_roughness"]))
    put("freeboard", lambda: d["cascade.rill_wall"] - r["normal_depth"])
    put("foot", lambda: d["cascade.top_level"] - d["cascade.steps"] * d["cascade.step_fall"]
        - (d["cascade.rill_length"] * d["cascade.rill_slope"] if d["cascade.rill_length"] else 0.0))  # fmt: skip
    put("last_fall", lambda: max(r["foot"] - max(r["level:stone top"], r["level:static water"]), 0.0))
    put("last_speed", lambda: r["flow_wanted"] / (d["cascade.rill_width"] * r["normal_depth"]) if d["cascade.rill_length"] else r["brink_speed"])
    put("last_throw", lambda: r["last_speed"] * (2 * r["last_fall"] / GRAVITY) ** 0.5 if r["last_fall"] else 0.0)
    put("last_sheet", lambda: r["flow_wanted"] * (2 * r["last_fall"] / GRAVITY) ** 0.5 if r["last_fall"] else 0.0)


def _one_pool(d) -> float:
    return d["cascade.width"] * d["cascade.tread"] if "cascade.tread" in d else 0.0


# --- pump and pipe --------------------------------------------------------------------------------------------------------------------


def hydraulics(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    common_area = lambda: pi / 4 * d["pipe.bore"] ** 2  # noqa: E731
    put("speed_wanted", lambda: r["flow_wanted"] / common_area())
    put("reynolds", lambda: r["speed_wanted"] * d["pipe.bore"] / r["nu"])
    put("friction_head", lambda: hose(d, d["pipe.bore"], d["pipe.length"], 0.0)(r["flow_wanted"])[0])
    put("friction", lambda: _factor(d, r["flow_wanted"], r["speed_wanted"]))
    put("fittings_head", lambda: d["pipe.fittings"] * r["speed_wanted"] ** 2 / (2 * GRAVITY))
    pump = []
    put("shut_off", lambda: pump.append(Curve(d)) or pump[0].shut_off)
    if w.plain.kind == "drilled stones":
        _branches(w, pump)
    else:
        put("static_lift", lambda: r["delivery"] - r["level:lowest water"])
        put("head_wanted", lambda: r["static_lift"] + r["friction_head"] + r["fittings_head"])
        lost = lambda: hose(d, d["pipe.bore"], d["pipe.length"], d["pipe.fittings"])  # noqa: E731
        put("model_flow", lambda: _meets(r, pump, lost()))
    put("loss_share", lambda: 1 - r["static_lift"] / r["head_wanted"])
    put("lift_share", lambda: r["static_lift"] / r["shut_off"])
    put("pump_head_at_flow_wanted", lambda: max(_head(r, pump), 0.0))
    put("duty_head", lambda: r["shut_off"] and pump[0].head(r["model_flow"]))
    put("duty_flow", lambda: d["measured.flow"] if "measured.flow" in d else r["model_flow"])
    put("flow_sent", lambda: min(r["duty_flow"], r["flow_wanted"]) if _throttled(w) else r["duty_flow"])
    put("flow_ratio", lambda: r["duty_flow"] / r["flow_wanted"])
    put("duty_speed", lambda: r["duty_flow"] / common_area())
    put("nameplate", lambda: r["shut_off"] and pump[0].power(r["rho"]) / d["pump.power"])


def _factor(d, flow: float, speed: float) -> float:
    """Darcy's friction factor, from the head lost in one metre of the hose; none of water that stands, or where there is no hose."""
    return hose(d, d["pipe.bore"], 1.0, 0.0)(flow)[0] * d["pipe.bore"] * 2 * GRAVITY / speed**2 if flow and d["pipe.length"] else 0.0


def _throttled(w: Worked) -> bool:
    """Whether a valve can bring the flow down to the one wanted."""
    return w.d["stones.valves"] == "yes" if w.plain.kind == "drilled stones" else w.d.get("pipe.valve") == "yes"


def _head(r, pump) -> float:
    flow = r["shut_off"] and r["flow_wanted"]
    if flow > pump[0].most and pump[0]._ends:
        raise Impossible("the flow wanted lies beyond the maker's curve")
    return pump[0].head(flow)


def _meets(r, pump, lost) -> float:
    lift = r["shut_off"] and r["static_lift"]
    return pump[0].meets(lambda flow: lift + sum(lost(flow)))


def branch(d, high: float, long: float):
    """Head lost in the hose of one stone and in the hole through it; a hole narrower than the hose draws the water together and throws it out faster; in a wider one the
    speed head that the water gives up on the way, and that no eddy takes, goes against the friction, and no further."""
    pipe, narrow = hose(d, d["stones.branch_bore"], long, d["stones.branch_fittings"]), d["stones.hole"] / d["stones.branch_bore"]
    if narrow >= 1:
        rubbed = hose(d, d["stones.hole"], high, 0.0)

        def wide(flow):
            fast, slow = (flow / (pi / 4 * bore**2) for bore in (d["stones.branch_bore"], d["stones.hole"]))
            kept = (fast**2 - (fast - slow) ** 2 - slow**2) / (2 * GRAVITY)
            return (*pipe(flow), max(sum(rubbed(flow)) - kept, 0.0))

        return wide
    hole = hose(d, d["stones.hole"], high, (1 - narrow**2) / 2 + 1 - narrow**4)
    return lambda flow: (*pipe(flow), *hole(flow))


def _branches(w: Worked, pump) -> None:
    """Every branch needs its own head where they part; the one that needs most governs, and its valve stands open."""
    d, r, put = w.d, w.r, w.put
    if "stones" in w.why:
        return

    def needs():
        base = r["level:stone base"] - r["level:lowest water"]
        for wide, high, long in zip(d["stones.diameters"], d["stones.heights"], d["stones.branch_lengths"]):
            lost = branch(d, high, long)
            if base + high < 0 or wide * d["flow.for_each_metre"] <= 0:
                raise Impossible("a stone under the lowest water, or without flow")
            yield base + high, sum(lost(pi * wide * d["flow.for_each_metre"])), lost, pi * wide * d["flow.for_each_metre"]

    def most():
        return max(needs(), key=lambda one: one[0] + one[1])

    put("boil", lambda: (max(d["stones.diameters"]) * pi * d["flow.for_each_metre"] / (pi / 4 * d["stones.hole"] ** 2)) ** 2 / (2 * GRAVITY))
    put("outlet_bore", lambda: (max(d["stones.diameters"]) * pi * d["flow.for_each_metre"] / (pi / 4) / (2 * GRAVITY * 0.015) ** 0.5) ** 0.5)
    put("static_lift", lambda: r["level:stone base"] + max(d["stones.heights"]) - r["level:lowest water"])
    put("branch_head", lambda: sum(most()[:2]) - r["static_lift"])
    put("throttle", lambda: sum(most()[:2]) - min(lift + lost for lift, lost, *_ in needs()))
    put("head_wanted", lambda: r["static_lift"] + r["friction_head"] + r["fittings_head"] + r["branch_head"])
    put("head_in_hand", lambda: max(_head(r, pump), 0.0) / r["head_wanted"])

    def valves_share():
        """Valves set so that the flows keep the shares that the stones want: the governing branch stands open."""
        whole, wanted, each = hose(d, d["pipe.bore"], d["pipe.length"], d["pipe.fittings"]), r["flow_wanted"], list(needs())
        return pump[0].meets(lambda flow: max(lift + sum(lost(flow * own / wanted)) for lift, _, lost, own in each) + sum(whole(flow)))

    put("model_flow", lambda: (r["shut_off"] and valves_share()) if d["stones.valves"] == "yes" else r["open_total"])
    open_flows = []
    common_hose = lambda: hose(d, d["pipe.bore"], d["pipe.length"], d["pipe.fittings"])  # noqa: E731
    put("open_total", lambda: r["shut_off"] and sum(open_flows.extend(shared(pump[0], common_hose(), [(a, c) for a, _, c, _ in needs()])) or open_flows))
    put("open_least", lambda: r["open_total"] and min(got / want for got, (*_, want) in zip(open_flows, needs())))


# --- what is special to each kind, after it --------------------------------------------------------------------------------------------


def vessel_after(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    measured = d.get("measured.rim_levels")
    put("rim_error_share", lambda: (max(measured) - min(measured) if measured else d["vessel.rim_out_of_level"]) / r["rim_head"])
    put("rim_runs_dry", lambda: (0.75 * math.pi) ** (2 / 3) * r["rim_head"])  # heads grow as 1 + cos from there, and the mean of their power 3/2 is unchanged
    put(
        "rim_flow_ratio",
        lambda: math.inf if r["rim_error_share"] >= (0.75 * math.pi) ** (2 / 3) else ((1 + r["rim_error_share"] / 2) / (1 - r["rim_error_share"] / 2)) ** 1.5,
    )
    put("film", lambda: film(d["flow.for_each_metre"], r["nu"]))
    put("boil", lambda: (r["flow_wanted"] / (pi / 4 * d["pipe.bore"] ** 2)) ** 2 / (2 * GRAVITY))
    put("outlet_bore", lambda: (r["flow_wanted"] / (pi / 4) / (2 * GRAVITY * 0.015) ** 0.5) ** 0.5)
    put("transit_rim", lambda: r["vessel_surface"] * r["rim_head"])
    put("transit_siphon", lambda: 0.0 if d["pipe.check_valve"] == "yes" else r["vessel_surface"] * d["pipe.mouth_below_rim"])
    put("transit_film", lambda: d["vessel.side_area"] * r["film"])
    put("transit_above", lambda: r["transit_rim"] + r["transit_siphon"] + r["transit_film"])
    put("wet_above", lambda: r["vessel_surface"] + d["vessel.side_area"])


def stones_after(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    put("film", lambda: film(d["flow.for_each_metre"], r["nu"]))
    put("transit_film", lambda: r["sides"] * r["film"])
    put("transit_above", lambda: r["transit_film"])
    put("wet_above", lambda: r["sides"] + sum(pi / 4 * one * one for one in d["stones.diameters"]))


def blade_after(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    put("transit_head", lambda: r["trough"] * r["lip_head"])
    put("transit_sheet", lambda: r["flow_wanted"] * r["fall_time"])
    kept = d.get("pipe.check_valve") == "yes" or (d.get("blade.feed") == "top" and "pipe.check_valve" in d)
    put("transit_siphon", lambda: 0.0 if kept else _ask(d, "pipe.check_valve", "blade.feed") or r["trough"] * d["blade.trough_depth"])
    put("transit_above", lambda: r["transit_head"] + r["transit_sheet"] + r["transit_siphon"])
    put("wet_above", lambda: 2 * d["blade.lip_width"] * r["fall"] + r["trough"])


def cascade_after(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    put("transit_pools", lambda: r["pools"] * r["step_head"])
    put("transit_rill", lambda: d["cascade.rill_width"] * r["normal_depth"] * d["cascade.rill_length"])
    put("transit_sheet", lambda: d["cascade.steps"] * r["flow_wanted"] * r["fall_time"] + r["last_sheet"])
    kept = d.get("pipe.check_valve") == "yes" or (d.get("cascade.feed") == "top" and "pipe.check_valve" in d)
    put("transit_siphon", lambda: 0.0 if kept else _ask(d, "pipe.check_valve", "cascade.feed") or d["cascade.header_volume"])
    put("transit_above", lambda: r["transit_pools"] + r["transit_rill"] + r["transit_sheet"] + r["transit_siphon"])
    put("wet_above", lambda: r["pools"] + 2 * d["cascade.steps"] * d["cascade.width"] * r["fall"] + d["cascade.rill_width"] * d["cascade.rill_length"]
        + 2 * (d["cascade.rill_width"] if d["cascade.rill_length"] else d["cascade.width"]) * r["last_fall"])  # fmt: skip


def _ask(d, *keys: str) -> float:
    """Raises Missing where one of these words was not given."""
    return 0.0 * len([d[key] for key in keys])


# --- the reservoir ----------------------------------------------------------------------------------------------------------------------


def reservoir(w: Worked) -> None:
    d, r, put = w.d, w.r, w.put
    put("static_volume", lambda: r["water_area"] * d["reservoir.static_level"])
    put("stops", lambda: max(d["reservoir.lowest_level"], d.get("reservoir.cut_out_level", 0.0) if d.get("pump.cut_out") != "no" else 0.0))
    put("usable", lambda: r["water_area"] * (min(d["reservoir.static_level"], d.get("reservoir.overflow_level", math.inf)) - r["stops"]))
    put("turnover", lambda: r["usable"] / r["flow_wanted"])
    put("transit_pipe", lambda: 0.0 if d["pipe.check_valve"] == "yes" else pi / 4 * d["pipe.bore"] ** 2 * d["pipe.length"] + _beyond(w))
    put("transit_stone", lambda: d["catch.wet_area"] * d["catch.stone_thickness"] * d["catch.hold_up"])
    put("transit_by_model", lambda: r["transit_above"] + r["transit_pipe"] + r["transit_stone"])
    put("transit", lambda: d["measured.start_drop"] * r["water_area"] if "measured.start_drop" in d else r["transit_by_model"])
    put("start_drop", lambda: r["transit"] / r["water_area"])
    put("wet_area", lambda: r["wet_above"] + d["catch.wet_area"])
    put(
        "daily_loss",
        lambda: (
            d["climate.coefficient"] * d["climate.evaporation"] * r["wet_area"]
            + d["climate.splash"]
            + max(d.get("measured.leak", 0.0), 0.0) * r.get("water_area", 0.0)
        ),
    )
    put("days", lambda: (r["usable"] - r["transit"]) / r["daily_loss"])
    put("drainback_room", lambda: r["water_area"] * (d["reservoir.overflow_level"] - _runs_at(w)))
    put("drainback", lambda: r["drainback_room"] / r["transit"])
    put("day_share", lambda: r["daily_loss"] / r["usable"])
    put("overflow_flow", lambda: _carried(w))
    put("storm", lambda: d["assumptions.run_off"] * _rained_on(w) * d["overflow_pipe.rain"] + d["overflow_pipe.stuck_flow"])
    put("overflow_ratio", lambda: r["overflow_flow"] / r["storm"])


def _runs_at(w: Worked) -> float:
    """The highest level while running: as typed, as the water settles, or as a top-up valve holds it; of a measured one, that."""
    d, typed = w.d, w.d["reservoir.running_level"]
    if "reservoir.running_level" in w.plain.measured or "reservoir.static_level" not in d or "start_drop" not in w.r:
        return typed
    return max(typed, d["reservoir.static_level"] - w.r["start_drop"], d.get("reservoir.top_up_level", 0.0))


def _carried(w: Worked) -> float:
    """What the overflow passes under the head that the levels leave: by its inlet, or by the pipe over its run, whichever is less."""
    d, r, head = w.d, w.r, w.d["overflow_pipe.head"] if "overflow_pipe.head" in w.d else math.inf
    if {"levels.liner_edge", "overflow_pipe.bore"} <= set(d) and "level:overflow" in w.r and "overflow_pipe.head" not in w.plain.measured:
        head = min(head, d["levels.liner_edge"] - w.r["level:overflow"] - d["overflow_pipe.bore"] / 2)
    if head == math.inf:
        head = d["overflow_pipe.head"]
    if head <= 0:
        raise Impossible("no head over the overflow pipe")
    bore = pi / 4 * d["overflow_pipe.bore"] ** 2
    inlet = d["assumptions.overflow_discharge"] * bore * (2 * GRAVITY * head) ** 0.5
    run = d.get("buying.overflow_run", -1.0)
    if (
        {"overflow_pipe.end_along", "overflow_pipe.end_across"} <= set(d)
        and "buying.overflow_run" not in w.plain.measured
        and w.known("panel_long", "panel_across")
    ):
        beside = zip((d["overflow_pipe.end_along"], d["overflow_pipe.end_across"]), (r["panel_long"], r["panel_across"]))
        run = max(run, sum(max(abs(far) - side / 2, 0.0) ** 2 for far, side in beside) ** 0.5)
    if run < 0:
        return inlet
    driven = head + d.get("overflow_pipe.fall", 0.0)
    return min(inlet, bore * (2 * GRAVITY * driven / (1 + 0.5 + 0.03 * run / d["overflow_pipe.bore"])) ** 0.5)


def _rained_on(w: Worked) -> float:
    d = w.d
    if "overflow_pipe.catch_area" in w.plain.measured or not w.known("base_length", "base_width", "ground.lining_thickness", "ground.clearance", "catch.apron"):
        return d["overflow_pipe.catch_area"]
    beyond = 2 * (d["ground.lining_thickness"] + d["ground.clearance"] + d["catch.apron"])
    return max(d["overflow_pipe.catch_area"], (w.r["base_length"] + beyond) * (w.r["base_width"] + beyond))


def _beyond(w: Worked) -> float:
    """Water in the branches and in the holes of drilled stones."""
    if w.plain.kind != "drilled stones":
        return 0.0
    d = w.d
    return pi / 4 * (d["stones.branch_bore"] ** 2 * sum(d["stones.branch_lengths"]) + d["stones.hole"] ** 2 * sum(d["stones.heights"]))
