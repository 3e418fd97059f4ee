"""What stands over the reservoir, in section: vessel, stones, blade, and the foot of a cascade. The cascade itself has a section of its own."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from brimwork.design.follows import levels
from brimwork.design.follows.chain import Chain
from brimwork.design.follows.geometry import WALL
from brimwork.design.typed.known import Unknown
from brimwork.drawing.lettering import Lettering
from brimwork.drawing.records import Line, Measure, Point, Polygon, Record
from brimwork.drawing.sizes import Sizes, Stairs
from brimwork.units import InputError


@dataclass(frozen=True)
class SectionFeature:
    """Its records and dimensions, the level of its top, how far it reaches to either side, where the lines of its named levels start, and words for it."""

    records: tuple[Record, ...]
    dimensions: tuple[Record, ...]
    top: float
    left: float
    right: float
    starts: dict[str, float] = field(default_factory=dict)
    says: str = ""
    elsewhere: tuple[str, ...] = ()  # levels that are labelled on another view
    numbers: tuple[tuple[Point, str], ...] = ()  # of several stones, each over its stone, in a row over the highest
    each: tuple[str, ...] = ()  # width and height of every stone


def section_of_vessel(chain: Chain, s: Sizes, lettering: Lettering) -> SectionFeature:
    d = chain.design
    rim, foot, x = d["vessel.rim_diameter"], d["vessel.foot_outside"], chain.geometry.standing[0].middle[0]
    base, edge, head = levels.height_of(d, "vessel base"), levels.height_of(d, "rim"), chain.rim_head
    outer = ((x - foot / 2, base), (x - rim / 2, edge), (x + rim / 2, edge), (x + foot / 2, base))
    inner = ((x - foot / 2 + WALL, base + WALL), (x - rim / 2 + WALL, edge), (x + rim / 2 - WALL, edge), (x + foot / 2 - WALL, base + WALL))
    over = ((x - rim / 2, edge), (x - rim / 2, edge + head), (x + rim / 2, edge + head), (x + rim / 2, edge))
    records = (
        *((_slab(chain, "vessel"),) if chain.on_slab else ()),
        Polygon(outer, "solid", "outline", "vessel.height"),
        Polygon((*inner[:2], *over, *inner[2:]), "water", "none", "vessel.water"),
        Line((inner[1], inner[0], inner[3], inner[2]), "thin"),
        *(Line(((x + side * rim / 2, edge), (x + side * (foot / 2 + 0.004), base)), "water", "flow.for_each_metre") for side in (-1, 1)),
        Line(over[1:3], "water", "flow.for_each_metre"),
        *(
            (Line(((x, s.level["block top"] - 0.05), (x, edge + head)), "centre"), Line(((0.0, s.level["block top"] - 0.05), (0.0, edge)), "centre"))
            if x
            else ()
        ),
    )
    across = Measure((x - rim / 2, edge), (x + rim / 2, edge), lettering.figure(rim), rim, 11.0 if x else 5.0, key="vessel.rim_diameter")
    offset = (Measure((min(x, 0.0), edge), (max(x, 0.0), edge), lettering.figure(x), x, 5.0, key="vessel.offset"),) if x else ()
    where = f"{lettering.said(abs(x))} {'off' if x > 0 else 'to the left of'} the middle of the blocks" if x else "in the middle of the blocks"
    says = f"a vessel {lettering.said(rim)} across stands {where}"
    return SectionFeature(records, (across, *offset), edge, x - rim / 2, x + rim / 2, {"rim": x + rim / 2, "vessel base": x + foot / 2}, says)


def section_of_stones(chain: Chain, s: Sizes, lettering: Lettering) -> SectionFeature:
    d = chain.design
    base, hole = levels.height_of(d, "stone base"), d["stones.hole"]
    named = ((x, size, f"stone {i}") for i, ((x, _), size) in enumerate(zip(chain.places, chain.sizes, strict=True), start=1))
    row = sorted(named, key=lambda one: one[0])
    sizes = [(x, size) for x, size, _ in row]
    records: list[Record] = []
    for x, (wide, high, _), name in row:
        records += [_slab(chain, name)] if chain.on_slabs else []
        records += [Polygon(chain.bodies[name].upright, "concrete", "outline", "stones.heights")]
        records += [Line(((x + side * hole / 2, base), (x + side * hole / 2, base + high)), "hidden", "stones.hole") for side in (-1, 1)]
        records += [Line(((x - wide / 2, base), (x - wide / 2, base + high), (x + wide / 2, base + high), (x + wide / 2, base)), "water")]
    tallest = max(sizes, key=lambda one: one[1][1])
    shown = sizes if len(sizes) <= 3 else []  # the list under the section has them all
    across = tuple(
        Measure((x - wide / 2, base + high), (x + wide / 2, base + high), lettering.figure(wide), wide, 5.0, key="stones.diameters")
        for x, (wide, high, _) in shown
    )
    each = [f"{lettering.figure(wide)} x {lettering.figure(high)}" for _, (wide, high, _) in sizes]
    numbers = tuple(((x, base + tallest[1][1]), str(i)) for i, (x, _) in enumerate(sizes, start=1)) if len(sizes) > 1 else ()
    x, (wide, high, _) = tallest
    far = max(place for place, _ in sizes)
    starts = {"stone base": far + sizes[-1][1][0] / 2, "highest stone": x + wide / 2}
    left, right = min(place - one[0] / 2 for place, one in sizes), max(place + one[0] / 2 for place, one in sizes)
    says = f"{len(sizes)} drilled {'stone stands' if len(sizes) == 1 else 'stones stand'}, the highest {lettering.said(high)} high,"
    return SectionFeature(tuple(records), across, base + high, left, right, starts, says, numbers=numbers, each=tuple(each))


def section_of_blade(chain: Chain, s: Sizes, lettering: Lettering) -> SectionFeature:
    d = chain.design
    lip, landing = levels.height_of(d, "lip"), levels.height_of(d, "splash stone")
    wall, trough, held, footing = (chain.bodies[name] for name in ("wall", "trough", "water in the trough", "footing of the wall"))
    (back, face), (inner, outer), head, fall = wall.reach(0), held.reach(0), chain.lip_head, lip - landing
    lower, upper = _nappe(chain, (face, lip), fall)
    records = (
        Line((*footing.upright, footing.upright[0]), "hidden"),
        Polygon(wall.upright, "solid", "outline", "blade.wall_height"),
        Polygon(((back, trough.low), (face, trough.low), (face, lip), (outer, lip), (outer, held.low), (inner, held.low), (inner, trough.high), (back, trough.high)),
                "solid", "thin", "blade.trough_depth"),
        Polygon(held.upright, "water", "none", "blade.trough_width"),
        Polygon((*lower, *reversed(upper)), "water", "none", "flow.for_each_metre"),
        Line(((inner, lip + head), (outer, lip + head), *upper), "water"),
        Line(tuple(lower), "water"),
    )  # fmt: skip
    reach = lower[-1][0]
    down = Measure((reach + 0.06, landing), (reach + 0.06, lip), lettering.figure(fall), fall, -4.0, key="blade.lip_level")
    out = Measure((face, lip + head), (reach, lip + head), f"throw {lettering.figure(chain.throw)}", chain.throw, 6.0, key="flow.for_each_metre")
    says = f"a sheet falls {lettering.said(fall)} from a lip {lettering.said(d['blade.lip_width'])} wide, lands {lettering.said(chain.throw)} out"
    return SectionFeature(records, (down, out), lip + 0.06, back, face, {"splash stone": reach, "lip": face}, says)


def section_of_cascade(chain: Chain, s: Sizes, lettering: Lettering) -> SectionFeature:
    """Only the foot of the rill, which the view cuts off; `long_section` shows the whole."""
    stairs = Stairs(chain)
    if stairs.foot < s.box_top:
        raise InputError(
            f"steps and rill run down to {lettering.said(stairs.foot)}, below the edge of the reservoir at {lettering.said(s.box_top)}: "
            "raise the header's lip, or take fewer or lower falls"
        )
    left = stairs.end - 0.35
    says = (
        f"{stairs.steps} falls of {lettering.said(stairs.fall)} run down from a header, "
        + (f"then a rill {lettering.said(stairs.rill[0])} long," if stairs.rill else "and")
        + " to the reservoir"
    )
    return SectionFeature(tuple(stair_records(chain, stairs)), (), max(stairs.foot, s.stone_top) + 0.03, left, 0.0, says=says, elsewhere=("header lip",))


def stair_records(chain: Chain, stairs: Stairs) -> list[Record]:
    """Header, pools, falls and rill on their fill, the water on them."""
    head, top = chain.step_head, [(stairs.back, stairs.lips[0][1])]
    for (x, y), (_, after) in zip(stairs.lips, stairs.lips[1:]):
        top += [(x, y), (x, after)]
    top += [stairs.lips[-1], (stairs.end, stairs.foot)]
    records: list[Record] = [Polygon((*top, (stairs.end, min(0.0, stairs.foot)), (stairs.back, 0.0)), "concrete", "outline", "cascade.top_level")]
    for i, (first, x, y) in enumerate(stairs.pools):
        records.append(Polygon(chain.bodies[f"pool {i}" if i else "header"].upright, "water", "none", "cascade.width"))
        if (x, y) != stairs.lips[-1]:
            lower, upper = _nappe(chain, (x, y), stairs.fall)
            records += [Polygon((*lower, *reversed(upper)), "water", "none", "cascade.step_fall"), Line(((first, y + head), (x, y + head), *upper), "water")]
        else:
            records.append(Line(((first, y + head), (x, y + head)), "water"))
    return records + _rill(chain, stairs)


def _rill(chain: Chain, stairs: Stairs) -> list[Record]:
    """The water down the rill, and how it drops over the edge of the box."""
    depth = _rill_depth(chain, stairs)
    (x, y), (end, low) = stairs.lips[-1], (stairs.end, stairs.foot)
    ground = chain.level("stone top")
    drop = max(low - ground, 0.0)
    out = 0.25 * drop
    return [
        Polygon(((x, y), (x, y + depth), (end, low + depth), (end + out, ground), (end, ground), (end, low)), "water", "none", "cascade.rill_slope"),
        Line(((x, y + depth), (end, low + depth), (end + 0.7 * out, low - 0.3 * drop), (end + out, ground)), "water"),
    ]


def _rill_depth(chain: Chain, stairs: Stairs) -> float:
    try:
        return chain.normal_depth if stairs.rill else chain.step_head
    except Unknown:
        return chain.step_head


def _nappe(chain: Chain, lip: Point, fall: float) -> tuple[list[Point], list[Point]]:
    """Under and upper side of the free sheet from a lip, by free fall."""
    (x, y), throw, count = lip, chain.brink_speed * chain.fall_time, 12
    lower = [(x + throw * i / count, y - fall * (i / count) ** 2) for i in range(count + 1)]
    return lower, [(u, v + chain.brink_depth * (1 - i / (1.2 * count))) for i, (u, v) in enumerate(lower)]


def _slab(chain: Chain, name: str) -> Polygon:
    return Polygon(chain.bodies[f"slab under {name}"].upright, "concrete", "outline", "slab.thickness")


SECTION_FEATURES: dict[str, Callable[[Chain, Sizes, Lettering], SectionFeature]] = {
    "overflowing vessel": section_of_vessel,
    "drilled stones": section_of_stones,
    "blade": section_of_blade,
    "cascade": section_of_cascade,
}
