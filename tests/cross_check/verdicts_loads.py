"""Loads graded by the cross-check, from what is true on the ground: what really touches, what really stands there, the worse of typed and true."""

import math
from collections.abc import Callable

from grading import Verdict, check, least, most, public, worst
from plain_bodies import area, greatest_pressure, hull, rect
from plain_design import GRAVITY
from standing import Body, blocks, bodies, grown, slab, steadied, tips_over, touching, within
from truth import Worked

# What a value cannot be beyond, whatever is typed: plausible spans, this project's judgement.
LEAST_FACTOR, LEAST_PERSON, WIDEST_FOOT, STRONGEST_BLOCK, SMOOTHEST = 1.0, 500.0, 0.15, 2e6, 160.0


@check("C20")
def pressure_on_blocks(w: Worked):
    if not bodies(w):
        return None
    strength = min(w.d["reservoir.short_term_strength"], STRONGEST_BLOCK) * w.d["reservoir.creep_factor"] / max(w.d["reservoir.safety_factor"], LEAST_FACTOR)
    found = []
    for body in bodies(w):
        under, _ = slab(w, body)
        outside = under if under is not None else body.foot
        whole = area(within(outside, blocks(w))) >= area(outside) * (1 - 1e-6)
        weight = body.full + GRAVITY * (w.r["slab_mass"] if under is not None else 0.0)
        used = weight / touching(w, body) / strength
        found.append(most(used, 0.80, 1.00, "through foot and slab's thickness") if whole else Verdict("fail", used, "reaches over the edge of the blocks"))
    return worst(*found)


def tipping(w: Worked, weight: Callable[[Body], float]) -> Verdict | None:
    if not bodies(w) and w.plain.kind not in ("blade", "cascade"):
        return None
    good, fair = (2.0, 1.5) if public(w) else (1.5, 1.2)
    push = 500.0 if public(w) else 250.0
    if w.plain.kind == "blade":
        return least(w.r["tipping"], good, fair, "somebody leans on the wall")
    if w.plain.kind == "cascade":
        return least(w.r["tipping"], good, fair, "somebody leans on the header")
    return worst(*(least(weight(body) * tips_over(w, body) / (push * body.height), good, fair, f"lever {tips_over(w, body):.4g} m") for body in bodies(w)))


@check("C25")
def tipping_full(w: Worked):
    return tipping(w, lambda body: steadied(w, body))


@check("C25e")
def tipping_empty(w: Worked):
    return tipping(w, lambda body: body.empty) if w.plain.kind == "overflowing vessel" else None


@check("C26")
def wind(w: Worked):
    d = w.d
    if w.plain.kind == "blade":
        return least(w.r["tipping_in_wind"], 1.5, 1.2, "the wall, its trough empty")
    if w.plain.kind == "cascade":
        return least(w.r["tipping_in_wind"], 1.5, 1.2, "the header, empty")
    if not bodies(w):
        return None
    pressure = d["assumptions.exposure"] * d["assumptions.air_density"] * d["site.wind_speed"] ** 2 / 2
    found = []
    for body in bodies(w):
        push = pressure * d["site.force_coefficient"] * body.face * body.height
        found.append(least(body.empty * tips_over(w, body) / (push * body.height / 2) if push else math.inf, 1.5, 1.2, "empty"))
    return worst(*found)


def resultant(w: Worked) -> tuple[float, float, float]:
    """Mass of everything on the base, and how far its middle lies off, along and across."""
    r = w.r
    each = [(body, body.full / GRAVITY + (r["slab_mass"] if slab(w, body)[0] is not None else 0.0)) for body in bodies(w)]
    cover = w.d.get("reservoir.cover", 0.0) * 2300 * r["block_plan"]
    total = sum(mass for _, mass in each) + r["stone_on_blocks"] + r["blocks_mass"] + r["rho"] * r["static_volume"] + cover
    return total, abs(sum(b.x * m for b, m in each)) / total, abs(sum(b.y * m for b, m in each)) / total


@check("C22")
def off_the_middle(w: Worked):
    _, along, across = resultant(w)
    return most(6 * (along / w.r["base_length"] + across / w.r["base_width"]), 1.0, 1.5)


@check("C24")
def soil(w: Worked):
    """The worse of a stiff base as a whole, and the load going straight down from the slab, through the beds alone."""
    r, d = w.r, w.d
    total, along, across = resultant(w)
    pressures = [greatest_pressure(GRAVITY * total, r["base_length"], r["base_width"], along, across)]
    beds, even = (
        d["ground.sand"] + d["ground.sub_base"],
        GRAVITY * (r["blocks_mass"] / r["block_plan"] + r["rho"] * d["reservoir.void_fraction"] * d["reservoir.static_level"]),
    )
    if not bodies(w):
        pressures.append(r["local_pressure"])
    for body in bodies(w):
        under, _ = slab(w, body)
        field = rect(r["base_length"] + 2 * beds, r["base_width"] + 2 * beds)
        if under is not None:
            foot = rect(d["slab.length"] + 2 * beds, d["slab.width"] + 2 * beds, body.x, body.y)
        else:
            foot = grown(body.foot, beds, body)
        weight = body.full + GRAVITY * (r["slab_mass"] if under is not None else 0.0)
        pressures.append(weight / area(within(foot, field)) + even)
    return most(max(pressures) / d["site.soil_bearing"], 0.67, 1.00)


@check("C23")
def joints(w: Worked):
    if not bodies(w):
        return None
    d, found = w.d, []
    for body in bodies(w):
        under, _ = slab(w, body)
        outside = under if under is not None else body.foot
        if area(within(outside, blocks(w))) < area(outside) * (1 - 1e-6):
            return Verdict("fail", math.nan, "reaches over the edge of the blocks")
        for axis, size, count in ((0, d["reservoir.block_length"], d["reservoir.blocks_along"]), (1, d["reservoir.block_width"], d["reservoir.blocks_across"])):
            low, high = min(p[axis] for p in outside), max(p[axis] for p in outside)
            for i in range(1, round(count)):
                line = (i - count / 2) * size
                if low + 1e-6 < line < high - 1e-6:
                    found.append(
                        least(min(line - low, high - line), 0.150, 0.075) if under is not None else Verdict("fail", 0.0, "across a joint without a slab")
                    )
    return worst(*found) if found else Verdict("pass", math.inf, "inside one block")


def bay(w: Worked):
    """The pump's bay in the corner of the blocks where the plan draws it."""
    side, d = w.d["pump.bay"], w.r
    return rect(side, side, -(d["base_length"] - side) / 2, -(d["base_width"] - side) / 2)


@check("C21")
def panel(w: Worked):
    """The clear distance that was typed, and that from the pump's bay to what stands there, whichever is less."""
    clear = w.d["lining.panel_clearance"]
    for body in bodies(w):
        under, _ = slab(w, body)
        outside, box = under if under is not None else body.foot, bay(w)
        right, upper = max(p[0] for p in box), max(p[1] for p in box)
        gaps = [math.hypot(max(x - right, 0.0), max(y - upper, 0.0)) for x, y in outside]
        clear = min(clear, 0.0 if area(within(box, hull(outside))) > 1e-9 else min(gaps))
    return least(clear, 0.100, 0.050)


@check("C27")
def foam(w: Worked):
    if w.plain.kind != "overflowing vessel":
        return None
    return least(w.r["foam_held"], 1.30, 1.10)


@check("C28")
def flotation(w: Worked):
    return least(w.r["flotation"], 1.20, 1.05)


@check("C30")
def hoop(w: Worked):
    return most(w.r["wall_share"], 0.10, 0.20) if w.plain.kind == "overflowing vessel" else None


@check("C58")
def underfoot(w: Worked):
    d = w.d
    strength = min(d["reservoir.short_term_strength"], STRONGEST_BLOCK) / max(d["reservoir.safety_factor"], LEAST_FACTOR)
    loads = [(max(d["assumptions.person"], LEAST_PERSON), min(d["assumptions.foot"], WIDEST_FOOT))]
    if {"site.wheel_load", "site.wheel_side"} & set(w.plain.said):
        loads.append((d["site.wheel_load"], d["site.wheel_side"]))
    bare = max(force / side**2 for force, side in loads)
    cover = d.get("reservoir.cover", 0.0) if bare <= strength else d["reservoir.cover"]
    return most(max(force / (side + 2 * cover) ** 2 for force, side in loads) / strength, 1.0, 1.0)
