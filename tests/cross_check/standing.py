"""What stands on the blocks: its foot, its weight, what of it really touches, and over which line it tips."""

import math
from typing import NamedTuple

from plain_bodies import area, common, disc, lever, rect
from plain_design import GRAVITY, Impossible, Missing
from worked import Worked


class Body(NamedTuple):
    """Something that stands on the blocks: outline of its foot and hole, place, weights in N (lightest and heaviest full, empty), height, widest face."""

    foot: tuple
    hole: tuple
    x: float
    y: float
    full: float
    empty: float
    height: float
    face: float
    rough: float | None  # area in m2 of three touching points; None for a foot that sits even
    reach: float  # share of the foot's width that resists tipping
    seen: tuple[float, float]  # how wide it is seen from above, along and across


def bodies(w: Worked) -> list[Body]:
    """What stands there, worked once for a design."""
    if w.standing is None:
        w.standing = _bodies(w)
    return w.standing


def _bodies(w: Worked) -> list[Body]:
    d, r = w.d, w.r
    if w.plain.kind == "overflowing vessel":
        x, y, mass = d["vessel.offset"], d["vessel.offset_across"], d["vessel.mass"]
        foot, hole = foot_of(d, x, y)
        shape, rim = d["vessel.shape"], d["vessel.rim_diameter"]
        across = d["vessel.rim_width"] if shape == "rectangular" else rim
        face = max(rim, d.get("vessel.widest", 0.0), across)
        seen = (max(rim, d.get("vessel.widest", 0.0)), face if shape in ("round", "another") else across)
        return [Body(foot, hole, x, y, GRAVITY * (mass + _held(w)), GRAVITY * mass, d["vessel.height"], face, None, 1.0, seen)]
    if w.plain.kind == "drilled stones":
        sizes, found = list(zip(d["stones.diameters"], d["stones.heights"], strict=True)), []
        solid = d["stones.hole"] < min(wide for wide, _ in sizes)  # what hangs on the mass alone has no number else
        even = [r["base_length"] * ((i + 0.5) / len(sizes) - 0.5) for i in range(len(sizes))]
        places = zip(d.get("stones.places_along", even), d.get("stones.places_across", [0.0] * len(sizes)), strict=True)
        for (wide, high), (x, y) in zip(sizes, places, strict=True):
            weight = GRAVITY * math.pi / 4 * (wide**2 - d["stones.hole"] ** 2) * high * d["stones.density"] if solid else math.nan
            rough = d["stones.rough_contact"] if d["stones.stand_on"] == "blocks" else None
            found.append(Body(disc(wide, x, y), (), x, y, weight, weight, high, wide, rough, d["stones.base_share"], (wide, wide)))
        return found
    return []


def foot_of(d, x: float, y: float):
    """Outline of a vessel's foot, and of the hole in it."""
    if "vessel.foot_corners" in d:
        return tuple((a + x, b + y) for a, b in d["vessel.foot_corners"]), ()
    outside, inside = d["vessel.foot_outside"], d["vessel.foot_inside"]
    if inside >= outside:
        raise Impossible("the foot is wider inside than outside")
    if d["vessel.shape"] in ("round", "another"):
        return disc(outside, x, y), disc(inside, x, y) if inside else ()
    across = d["vessel.foot_width"] if d["vessel.shape"] == "rectangular" else outside
    return rect(outside, across, x, y), rect(inside, across - (outside - inside), x, y) if inside and across > outside - inside else ()


def steadied(w: Worked, body: Body) -> float:
    """Weight (N) that holds a piece: full, but for a vessel said to hold more than its outside encloses."""
    if w.plain.kind != "overflowing vessel":
        return body.full
    d = w.d
    try:
        plan = math.pi / 4 * max(d["vessel.rim_diameter"], d.get("vessel.widest", 0.0)) ** 2 if d["vessel.shape"] == "round" else w.r["vessel_surface"]
        return body.empty if d["vessel.water"] > plan * d["vessel.height"] * 1.001 else body.full
    except (Missing, Impossible):
        return body.full


def _held(w: Worked) -> float:
    """Mass of what the vessel holds; no number where it cannot hold that, so that only what hangs on it is refused."""
    try:
        return contents(w)
    except Impossible:
        return math.nan


def contents(w: Worked) -> float:
    """Mass of what the vessel holds: water up to its rim less what foam and stones take, with both in it."""
    d = w.d
    foam, pebbles = d.get("vessel.foam", 0.0), d.get("vessel.pebbles", 0.0)
    if foam + pebbles > d["vessel.water"] * (1 + 1e-9):
        raise Impossible("foam and pebbles are more than the vessel holds")
    solid = pebbles * (1 - d["assumptions.pebble_gaps"])
    fill = foam * (d["vessel.foam_density"] if foam else 0.0) + solid * d["assumptions.pebble_density"]
    return w.r["rho"] * (d["vessel.water"] - foam - solid) + fill


def pieces(w: Worked) -> list[float]:
    """Mass of each piece, full, with the slab under it."""
    return [body.full / GRAVITY + (w.r["slab_mass"] if slab(w, body)[0] is not None else 0.0) for body in bodies(w)]


def slab(w: Worked, body: Body):
    """Outline and thickness of the slab under it, or nothing."""
    d = w.d
    on = d["vessel.stands_on"] == "slab" if w.plain.kind == "overflowing vessel" else d["stones.stand_on"] == "slabs"
    return (rect(d["slab.length"], d["slab.width"], body.x, body.y), d["slab.thickness"]) if on else (None, 0.0)


def blocks(w: Worked):
    return rect(w.r["base_length"], w.r["base_width"])


def within(shape, *windows):
    for window in windows:
        if window is not None:
            shape = common(shape, window) if shape else ()
    return shape


def touching(w: Worked, body: Body) -> float:
    """Area (m2) through which it presses on the blocks: its foot, on a slab grown by the slab's thickness all round, as far as slab and blocks reach."""
    under, thick = slab(w, body)
    if under is None:
        bare = area(within(body.foot, blocks(w))) - area(within(body.hole, blocks(w)))
        return _some(min(body.rough, bare) if body.rough is not None else bare)
    if area(within(body.foot, under)) - area(within(body.hole, under)) <= 0:
        raise Impossible("the foot does not touch its slab")
    outer = within(grown(body.foot, thick, body), under, blocks(w))
    inner = within(grown(body.hole, -thick, body), under, blocks(w)) if body.hole else ()
    return _some(area(outer) - area(inner))


def _some(touched: float) -> float:
    if touched <= 1e-12:
        raise Impossible("nothing is touched")
    return touched


def grown(shape, by: float, body: Body):
    """An outline about a body's axis, every corner moved outwards by a length."""
    points = []
    for x, y in shape:
        far = math.hypot(x - body.x, y - body.y)
        if far + by <= 0:
            return ()
        points.append((body.x + (x - body.x) * (far + by) / far, body.y + (y - body.y) * (far + by) / far))
    return tuple(points)


def tips_over(w: Worked, body: Body) -> float:
    """Distance (m) from its axis to the nearest line over which it tips: what foot, slab and blocks share; three rough points tip between two of them."""
    under, _ = slab(w, body)
    support = within(body.foot, under, blocks(w))
    if under is not None and body.hole and area(support) <= area(within(body.hole, under)) + 1e-9:
        return 0.0
    far = lever(support, body.x, body.y)
    wide = body.reach * body.face / 2 if w.plain.kind == "drilled stones" else math.inf
    return min(far, wide / 2 if body.rough is not None else wide)
