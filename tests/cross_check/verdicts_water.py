"""Water graded by the cross-check at the flow that comes, with the levels and the catch as they are."""

import math

from grading import Verdict, between, check, least, most
from plain_design import GRAVITY
from plain_flow import head_over, manning_depth, sheet
from standing import bodies
from truth import Worked


@check("C12")
def days(w: Worked):
    r, d = w.r, w.d
    low = max(d["reservoir.lowest_level"], d.get("reservoir.cut_out_level", 0.0) if d.get("pump.cut_out") == "yes" else 0.0)
    usable = r["water_area"] * (min(d["reservoir.static_level"], d["reservoir.overflow_level"]) - low)
    loss = r["daily_loss"] + max(d.get("measured.leak", 0.0), 0.0) * r["water_area"]
    spell = d.get("site.unattended", 0.0)
    return least((usable - r["transit"]) / loss / 86400, max(7.0, spell / 86400), max(3.0, spell / 86400))


@check("C13")
def covered(w: Worked):
    d = w.d
    if d["pump.cut_out"] == "no" and d["site.unattended"] > 0:
        return Verdict("fail", math.nan, "nothing stops it, and nobody looks after it")
    levels = [d["reservoir.lowest_level"] - d["pump.intake_level"]] if {"reservoir.lowest_level", "pump.intake_level"} <= set(d) else []
    typed = [d["pump.covered"]] if "pump.covered" in d or not levels else []
    return least(min(levels + typed), 0.050, 0.025)


@check("C14")
def comes_back(w: Worked):
    r, d = w.r, w.d
    highest = max(d["reservoir.running_level"], d["reservoir.static_level"] - r["start_drop"], d.get("reservoir.top_up_level", 0.0))
    return least(r["water_area"] * (d["reservoir.overflow_level"] - highest) / r["transit"], 1.10, 1.00)


@check("C18")
def liner_over_overflow(w: Worked):
    return least(w.d["levels.liner_edge"] - w.r["level:overflow"], 0.050, 0.025)


@check("C39")
def pierced(w: Worked):
    return least(w.d["levels.staple_line"] - w.r["level:overflow"], 0.050, 0.025)


@check("C66")
def storm(w: Worked):
    r, d = w.r, w.d
    head = min(d["overflow_pipe.head"], d["levels.liner_edge"] - r["level:overflow"]) if "levels.liner_edge" in d else d["overflow_pipe.head"]
    if head <= 0:
        return Verdict("fail", head, "no head over the pipe before the liner's edge")
    catch = d["overflow_pipe.catch_area"]
    if w.known("box_length", "box_width", "catch.apron"):
        catch = max(catch, (r["box_length"] + 2 * d["catch.apron"]) * (r["box_width"] + 2 * d["catch.apron"]))
    carried = min(d["assumptions.overflow_discharge"], 0.62) * math.pi / 4 * d["overflow_pipe.bore"] ** 2 * (2 * GRAVITY * head) ** 0.5
    return least(
        carried / (d["assumptions.run_off"] * catch * d["overflow_pipe.rain"] + d["overflow_pipe.stuck_flow"]),
        1.5,
        1.0,
        f"head {head:.4g} m, catch {catch:.4g} m2",
    )


@check("C17")
def splash(w: Worked):
    """From the outermost water to the end of the lined catch, against what the fall wants; at the flow that comes."""
    r, d, kind = w.r, w.d, w.plain.kind
    wind_factor, each = max(d["assumptions.wind_factor"], 1.0), d["catch.splash_factor"]
    if kind == "cascade":
        return least(d["cascade.splash_edge"] / (wind_factor * each * r["fall"]), 1.0, 0.75)
    reach = (r["box_length"] / 2 + d["catch.apron"], r["box_width"] / 2 + d["catch.apron"])
    if kind == "blade":
        through = sheet(max(d["flow.for_each_metre"], r.get("duty_flow", 0.0) / d["blade.lip_width"]), r["fall"])
        wanted = wind_factor * (through[2] * through[3] + each * r["fall"])
        return least(min(d["catch.apron"], 2 * reach[0] - d["catch.apron"] + d["catch.apron"]) / wanted, 1.0, 0.75)
    wanted = wind_factor * each * r["fall"]
    if wanted <= 0:
        return Verdict("pass", math.inf, "nothing falls")
    room = [min(reach[0] - abs(body.x), reach[1] - abs(body.y)) - body.face / 2 for body in bodies(w)]
    return least(min(d["catch.apron"], *room) / wanted, 1.0, 0.75, "from the outermost rim to the end of the catch")


@check("C07")
def rim(w: Worked):
    if w.plain.kind != "overflowing vessel":
        return None
    d, r = w.d, w.r
    measured = d.get("measured.rim_levels")
    error = max(measured) - min(measured) if measured and len(measured) >= 8 else d["vessel.rim_out_of_level"]  # one point is no map
    return most(error / head_over(r["duty_flow"], r["rim_length"], d["flow.weir_coefficient"]), 0.5, 1.0, "at the flow that comes")


@check("C08")
def clings(w: Worked):
    d, r = w.d, w.r
    if w.plain.kind == "overflowing vessel":
        each = r["duty_flow"] / r["rim_length"]
    elif w.plain.kind == "drilled stones":
        each = min(r["duty_flow"] / r["flow_wanted"], 1.0) * d["flow.for_each_metre"]
    else:
        return None
    return between(each, (0.15e-3, 0.40e-3), (0.08e-3, math.inf), "at the flow that comes")


@check("C09")
def whole_sheet(w: Worked):
    d, r = w.d, w.r
    if w.plain.kind not in ("blade", "cascade"):
        return None
    each = r["duty_flow"] / d["blade.lip_width" if w.plain.kind == "blade" else "cascade.width"]
    if r["fall"] > 1.0:
        return Verdict("fail", r["fall"], "beyond the table")
    return least(each / (2e-3 if r["fall"] <= 0.3 else 3e-3 if r["fall"] <= 0.5 else 4e-3), 1.0, 0.6, "at the flow that comes")


@check("C60")
def rill(w: Worked):
    d, r = w.d, w.r
    if w.plain.kind != "cascade" or not d.get("cascade.rill_length", 0.0):
        return None
    flow = max(r["duty_flow"], r["flow_wanted"])
    depth = manning_depth(flow, d["cascade.rill_width"], d["cascade.rill_slope"], d["cascade.rill_roughness"])
    return least(d["cascade.rill_wall"] - depth, 0.040, 0.020, "at the greater of the flow wanted and the flow that comes")


@check("C61")
def tread(w: Worked):
    d, r = w.d, w.r
    if w.plain.kind != "cascade":
        return None
    through = sheet(max(r["duty_flow"], r["flow_wanted"]) / d["cascade.width"], r["fall"])
    return least(d["cascade.tread"] / (through[2] * through[3]), 2.0, 1.3)


@check("C01")
def enough(w: Worked):
    return None if w.plain.kind == "drilled stones" else between(w.r["flow_ratio"], (1.10, 1.60), (1.00, 2.50))


@check("C01m")
def in_hand(w: Worked):
    return between(w.r["head_in_hand"], (1.1, 2.0), (1.0, 3.0)) if w.plain.kind == "drilled stones" else None


@check("C02")
def lift_of_shut_off(w: Worked):
    return most(w.r["lift_share"], 0.70, 0.85)


@check("C03")
def label(w: Worked):
    return most(w.r["nameplate"], 0.50, 0.70)
