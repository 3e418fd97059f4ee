"""What stands over the reservoir, in plan: vessel, stones, blade, cascade."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from brimwork.design.follows.chain import Chain
from brimwork.drawing.lettering import Lettering
from brimwork.drawing.pictures.paper import circle
from brimwork.drawing.records import Line, Measure, Point, Polygon, Record
from brimwork.drawing.sizes import Sizes, Stairs


@dataclass(frozen=True)
class PlanFeature:
    """Its records (`under` lie below the blocks' lines), dimensions and labels, how far it reaches to the left, to the right and to each side; where its
    dimensions start, and the paper (mm) that they take over that; whether labels stand under what reaches to the left, words for it, and rows of its own in the table."""

    records: tuple[Record, ...]
    dimensions: tuple[Record, ...] = ()
    labels: tuple[tuple[Point, str, str] | tuple[Point, str], ...] = ()
    under: tuple[Record, ...] = ()
    left: float = 0.0
    right: float = 0.0
    half: float = 0.0
    dimensioned_at: float = 0.0
    over: float = 9.0
    labels_under: bool = False
    says: str = ""
    rows: tuple[tuple[str, ...], ...] = ()


def _outline(points: tuple[Point, ...], style: str, key: str = "") -> Line:
    return Line((*points, points[0]), style, key)


def plan_of_vessel(chain: Chain, s: Sizes, lettering: Lettering) -> PlanFeature:
    d = chain.design
    corners = "vessel.foot_corners" in d.values and not chain.on_slab  # the patch itself shows the foot
    rim, foot, piece = d["vessel.rim_diameter"], d["vessel.foot_outside"], chain.geometry.standing[0]
    (x, y), under = piece.middle, chain.geometry.slab_under(piece)
    wide, high = (max(abs(point[axis] - piece.middle[axis]) for point in piece.rim) for axis in (0, 1))
    half = max(high + abs(y), rim / 2) + 0.05
    top = max(s.reach[1], half)
    seen = circle(rim / 2, piece.middle) if chain.shape == "round" else piece.rim
    below = circle(foot / 2, piece.middle) if chain.shape in ("round", "another") else piece.foot
    records = (
        *((_outline(under, "thin", "slab.length"),) if under else ()),
        _outline(seen, "outline", "vessel.rim_diameter"),
        *(() if corners else (_outline(below, "hidden", "vessel.foot_outside"),)),
        Line(((x, y - high - 0.05), (x, y + high + 0.05)), "centre"),
        *((Line(((x - wide - 0.05, y), (x + wide + 0.05, y)), "centre"),) if y else ()),
    )
    dimensions = (Measure((0.0, top), (x, top), f"offset {lettering.figure(x)}", x, 4.5, key="vessel.offset"),) if x else ()
    turn = math.radians(150)
    on_rim = (x + rim / 2 * math.cos(turn), y + rim / 2 * math.sin(turn)) if chain.shape == "round" else (x - wide, y + 0.5 * high)
    labels = [(on_rim, f"rim {_rim(chain, lettering)}", "vessel.rim_diameter")]
    labels += [] if corners else [((x - 0.87 * foot / 2, y - 0.25 * foot), f"foot {lettering.figure(foot)}", "vessel.foot_outside")]
    labels += [((x - d["slab.length"] / 2, y + 0.3 * d["slab.width"]), f"slab {_by(d, lettering)}", "slab.length")] if chain.on_slab else []
    off = " and ".join(f"{lettering.said(abs(by))} {words[by < 0]}" for by, words in ((x, ("to the right", "to the left")), (y, ("up", "down"))) if by)
    where = (f"{off} of the middle" if y or x < 0 else f"{lettering.said(x)} off the middle") if off else "in the middle"
    says = f"a vessel {_rim(chain, lettering)} {lettering.length} across stands {where}"
    rows = (("rim", lettering.figure(2 * wide if chain.shape != "round" else rim), "" if chain.shape == "round" else lettering.figure(2 * high)),
            ("vessel off the middle", lettering.level(x) if x < 0 else lettering.figure(x), lettering.level(y) if y else ""))  # fmt: skip
    return PlanFeature(records, dimensions, tuple(labels), left=x - wide, right=x + wide, half=half, dimensioned_at=top, says=says, rows=rows)


def _rim(chain: Chain, lettering: Lettering) -> str:
    """Size of the rim: its diameter, or length by width."""
    if chain.shape in ("round", "another"):
        return lettering.figure(chain.design["vessel.rim_diameter"])
    return " x ".join(map(lettering.figure, chain.rim_sides))


def _by(d, lettering: Lettering) -> str:
    return f"{lettering.figure(d['slab.length'])} x {lettering.figure(d['slab.width'])}"


def plan_of_stones(chain: Chain, s: Sizes, lettering: Lettering) -> PlanFeature:
    d = chain.design
    hole, sizes = d["stones.hole"], list(zip(chain.places, chain.sizes, strict=True))
    records: list[Record] = []
    for piece, (at, (wide, _, _)) in zip(chain.geometry.standing, sizes, strict=True):
        records += [_outline(chain.geometry.slab_under(piece), "thin", "slab.length")] if chain.on_slabs else []
        records += [_outline(circle(wide / 2, at), "outline", "stones.diameters"), _outline(circle(hole / 2, at), "thin", "stones.hole")]
    top = max(s.reach[1], max(wide / 2 + abs(y) for (_, y), (wide, _, _) in sizes))
    along = sorted(x for (x, _), _ in sizes)
    first, last, gaps = along[0], along[-1], len(sizes) - 1
    even = all(abs(b - a - (last - first) / gaps) < 1e-6 for a, b in zip(along, along[1:])) if gaps else False
    apart = f"{gaps} x {lettering.figure((last - first) / gaps)} = " if gaps > 1 and even else ""
    dimensions = (
        (Measure((first, top), (last, top), f"{apart}{lettering.figure(last - first)}", last - first, 4.5, key="stones.places_along"),)
        if gaps and last > first
        else ()
    )
    (x, y), (wide, _, _) = sizes[0]
    turn = math.radians(150)
    each = ", ".join(lettering.figure(one) for _, (one, _, _) in sizes)
    labels = [
        (
            (x + wide / 2 * math.cos(turn), y + wide / 2 * math.sin(turn)),
            (f"stones {each}" if len(sizes) <= 4 else f"{len(sizes)} stones, see the section") if len(sizes) > 1 else f"stone {each}",
            "stones.diameters",
        )
    ]
    labels += [((x - hole / 2, y), f"hole {lettering.figure(hole)}", "stones.hole")]
    labels += [((x - d["slab.length"] / 2, y - 0.2 * d["slab.width"]), f"slab {_by(d, lettering)}", "slab.length")] if chain.on_slabs else []
    says = f"{len(sizes)} drilled {'stone' if len(sizes) == 1 else 'stones'}, {each} {lettering.length} across from left to right,"
    rows = tuple(
        (f"stone {i} across, and off the middle", lettering.figure(one), f"{lettering.level(x)}{f', across {lettering.level(y)}' if y else ''}")
        for i, ((x, y), (one, _, _)) in enumerate(sizes, start=1)
    )
    left, right = min(x - one / 2 for (x, _), (one, _, _) in sizes), max(x + one / 2 for (x, _), (one, _, _) in sizes)
    return PlanFeature(tuple(records), dimensions, tuple(labels), left=left, right=right, half=top, dimensioned_at=top, says=says, rows=rows)


def plan_of_blade(chain: Chain, s: Sizes, lettering: Lettering) -> PlanFeature:
    d = chain.design
    lip, throw, wall = d["blade.lip_width"], chain.throw, chain.bodies["wall"]
    (back, face), length = wall.reach(0), wall.reach(1)[1] - wall.reach(1)[0]
    deep = face - back
    landing = ((face + throw, -lip / 2), (face + throw, lip / 2))
    records = (
        Polygon(wall.outline, "solid", "outline", "blade.trough_width"),
        Polygon(chain.geometry.trough, "water", "thin", "blade.trough_length"),
        Line(((face, -lip / 2), (face, lip / 2)), "water", "blade.lip_width"),
        Line(landing, "water level"),
    )
    falling = Polygon(chain.geometry.sheet, "water", "none")
    top = max(s.reach[1], length / 2)
    dimensions = (Measure((face, top), (face + throw, top), f"throw {lettering.figure(throw)}", throw, 4.5, key="flow.for_each_metre"),)
    labels = (
        ((back, 0.48 * length), f"wall, {lettering.figure(length)} long", "blade.trough_length"),
        ((face, 0.4 * lip), f"lip {lettering.figure(lip)}", "blade.lip_width"),
        ((face + throw, 0.2 * lip), f"landing line, {lettering.figure(throw)} out"),
    )
    says = f"a wall with a lip {lettering.said(lip)} wide stands beside the box, its sheet lands {lettering.said(throw)} out"
    rows = (
        ("lip", "", lettering.figure(lip)),
        ("throw of the sheet", lettering.figure(throw), ""),
        ("wall as it is drawn", lettering.figure(deep), lettering.figure(length)),
    )
    return PlanFeature(records, dimensions, labels, (falling,), left=back, half=length / 2, dimensioned_at=top, says=says, rows=rows)


def plan_of_cascade(chain: Chain, s: Sizes, lettering: Lettering) -> PlanFeature:
    stairs = Stairs(chain)
    half, top = stairs.width / 2, stairs.width / 2
    names = [f"pool {i}" if i else "header" for i in range(len(stairs.pools))]
    records: list[Record] = [Polygon(chain.bodies[name].outline, "water", "outline", "cascade.tread") for name in names]
    records += [Line(((x, -half), (x, half)), "water") for x, _ in stairs.lips]
    if stairs.rill:
        side = stairs.rill[1] / 2
        records.append(Polygon(chain.bodies["rill"].outline, "water", "thin", "cascade.rill_length"))
    along = [Measure((a, top), (b, top), text, b - a, offset, key=key) for (a, b, text, offset), key in zip(stairs.spans(lettering), stairs.span_keys)]
    across = [Measure((stairs.back, -half), (stairs.back, half), lettering.figure(stairs.width), stairs.width, 4.0, along=True, key="cascade.width")]
    if stairs.rill:
        middle = (stairs.start + stairs.end) / 2
        across.append(Measure((middle, -side), (middle, side), lettering.figure(stairs.rill[1]), stairs.rill[1], 0.0, key="cascade.rill_width"))
    says = f"header, {stairs.steps} pools of {_pair(stairs, lettering)} {lettering.length}" + (
        f" and a rill {lettering.said(stairs.rill[0])} long" if stairs.rill else ""
    )
    rows = (
        ("pool", lettering.figure(stairs.tread), lettering.figure(stairs.width)),
        *((("rill", lettering.figure(stairs.rill[0]), lettering.figure(stairs.rill[1])),) if stairs.rill else ()),
    )
    return PlanFeature(tuple(records), (*along, *across), left=stairs.back - 0.02, half=half, dimensioned_at=top, over=14.0, labels_under=True, says=f"{says} run down to a reservoir",
                   rows=rows)  # fmt: skip


def _pair(stairs: Stairs, lettering: Lettering) -> str:
    return f"{lettering.figure(stairs.tread)} x {lettering.figure(stairs.width)}"


PLAN_FEATURES: dict[str, Callable[[Chain, Sizes, Lettering], PlanFeature]] = {
    "overflowing vessel": plan_of_vessel,
    "drilled stones": plan_of_stones,
    "blade": plan_of_blade,
    "cascade": plan_of_cascade,
}
