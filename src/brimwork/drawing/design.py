"""The drawings of a design: section through vessel and reservoir at a true scale, and the duty chart of its pump."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from brimwork.design import levels
from brimwork.design.chain import Chain
from brimwork.design.checks import asked
from brimwork.design.inputs import Unknown
from brimwork.drawing.graph import Axis, graph, nice_high
from brimwork.drawing.records import ACCENT, GREY, INK, NIGHT, Dimension, Leader, Level, Line, Mark, Point, Polygon, Record, Sheet, Text, View, at_scale
from brimwork.topics.pumps import Pump
from brimwork.units import InputError, convert, number, write

SCALES = ((200.0, "1:5"), (100.0, "1:10"), (50.0, "1:20"), (40.0, "1:25"), (1000 / 30, "1:30"), (20.0, "1:50"), (10.0, "1:100"))
WALL = 0.025  # m: how thick the wall of the vessel is drawn; its real thickness is not asked for
LABEL = 3.9  # mm of paper between two level labels


def section(chain: Chain) -> Sheet:
    """Section along the blocks through feature and reservoir. Raises Unknown with the keys of the design that are still missing."""
    p = _Places(chain)
    feature = _FEATURES[chain.design.kind](chain, p)
    frame = (12.0, 10.0, 126.0, 84.0)
    half, depth, top = max(p.pit / 2 + p.apron, feature.reach), -p.level["formation"], max(feature.top, 0.05)
    scale, name = next((s for s in SCALES if 2 * half * s[0] <= frame[2] - 4 and (depth + top) * s[0] <= frame[3] - 20), SCALES[-1])
    view = at_scale((0.0, (top - depth) / 2 - 3 / scale), frame, scale, ())
    records = [*_ground(p, view), *_reservoir(p), *feature.records, *_hose(p, feature), *_distances(p), *feature.dimensions, *_heights(p, feature, view)]
    water = p.level["static water"] - p.level["reservoir floor"]
    sentence = f"Section {name}: {feature.says} over {p.across} {'block' if p.across == 1 else 'blocks'} in a lined pit {write(depth, 'mm')} deep; water stands {write(water, 'mm')} deep with the pump off."
    notes = (Text((4.0, 7.0), f"Section through feature and reservoir, {name}, levels in mm to the finished paving", "start", 3.2, GREY),)
    return Sheet(180, 96, (View(view.window, frame, tuple(records), clip=False),), f"{chain.design.title}: section", sentence, notes)


class _Places:
    """The sizes of pit and reservoir that the section needs, all in metres; sizes of the ground that nobody gave are drawn as thin as can be seen."""

    def __init__(self, chain: Chain):
        d = chain.design
        names = ("formation", "reservoir floor", "lowest water", "running water", "static water", "overflow", "block top")
        self.level = {name: levels.height(d, name) for name in names}
        self.pit, self.box, self.board = chain.pit_length, chain.box_length, d["ground.board"]
        self.blocks, self.across, self.block = chain.base_length, round(d["reservoir.blocks_along"]), d["reservoir.block_length"]
        self.sub_base, self.sand, self.box_depth = d["ground.sub_base"], d["ground.sand"], chain.box_depth
        self.apron, self.stone = max(d["catch.apron"] - d["ground.working_space"] - d["ground.board"], 0.1), d["catch.stone_thickness"]


@dataclass(frozen=True)
class _Feature:
    """What stands over the reservoir: its records and dimensions, the level of its top, where the hose ends, its named levels, and words for it."""

    records: tuple[Record, ...]
    dimensions: tuple[Record, ...]
    top: float
    outlet: Point
    heights: dict[str, tuple[float, float]]  # name: level, and the place across from which its line starts
    says: str
    reach: float = 0.0  # how far it goes to the left of the middle


def _rectangle(x0: float, y0: float, x1: float, y1: float) -> tuple[Point, ...]:
    return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))


def _ground(p: _Places, view: View) -> list[Record]:
    """Soil with the pit cut out, the layers under the floor, and the finished paving."""
    left, bottom, right, _ = view.window
    formation, edge = p.level["formation"], p.pit / 2
    soil = ((left, 0.0), (-edge, 0.0), (-edge, formation), (edge, formation), (edge, 0.0), (right, 0.0), (right, bottom + 0.02), (left, bottom + 0.02))
    sand = formation + p.sub_base
    return [
        Polygon(soil, "earth", "none"),
        Polygon(_rectangle(-edge, formation, edge, sand), "concrete", "thin"),
        Polygon(_rectangle(-edge, sand, edge, sand + p.sand), "pale", "thin"),
        *(
            Polygon(
                _rectangle(*sorted((s * edge, s * (p.box / 2 + p.board)))[:1], sand + p.sand, sorted((s * edge, s * (p.box / 2 + p.board)))[1], 0.0),
                "pale",
                "none",
            )
            for s in (-1, 1)
        ),
        Line(((left, 0.0), (-edge, 0.0), (-edge, formation), (edge, formation), (edge, 0.0), (right, 0.0)), "outline"),
    ]


def _reservoir(p: _Places) -> list[Record]:
    """Box, blocks with their water, lining, and the stone over them and over the apron."""
    floor, block_top, static = p.level["reservoir floor"], p.level["block top"], p.level["static water"]
    inside, outside, box_top = p.box / 2, p.box / 2 + p.board, floor + p.box_depth
    stone_top = block_top + p.stone
    reach = p.pit / 2 + p.apron
    records: list[Record] = [
        Polygon(_rectangle(*sorted((s * inside, s * outside))[:1], floor, sorted((s * inside, s * outside))[1], box_top), "solid", "thin") for s in (-1, 1)
    ]
    records.append(Polygon(_rectangle(-p.blocks / 2, floor, p.blocks / 2, static), "water", "none"))
    for i in range(p.across):
        x = -p.blocks / 2 + i * p.block
        records.append(Line((*_rectangle(x, floor, x + p.block, block_top), (x, floor)), "thin"))
        records += [Line(((x + p.block * k / 6, floor), (x + p.block * k / 6, block_top)), "grid") for k in range(1, 6)]
    records.append(Polygon(((-reach, box_top), (reach, box_top), (reach, stone_top), (-reach, stone_top)) if stone_top > box_top else
                           _rectangle(-reach, block_top, reach, max(stone_top, block_top)), "stone", "none"))  # fmt: skip
    records.append(Polygon(_rectangle(-inside, block_top, inside, max(stone_top, block_top)), "stone", "none"))
    records.append(
        Line(
            ((-reach, 0.0), (-reach, box_top), (-inside, box_top), (-inside, floor), (inside, floor), (inside, box_top), (reach, box_top), (reach, 0.0)),
            "second curve",
        )
    )
    return records


def _vessel(chain: Chain, p: _Places) -> _Feature:
    d = chain.design
    rim, foot, x = d["vessel.rim_diameter"], d["vessel.foot_outside"], d["vessel.offset"]
    base, edge, head = levels.height(d, "vessel base"), levels.height(d, "rim"), chain.rim_head
    outer = ((x - foot / 2, base), (x - rim / 2, edge), (x + rim / 2, edge), (x + foot / 2, base))
    inner = ((x - foot / 2 + WALL, base + WALL), (x - rim / 2 + WALL, edge), (x + rim / 2 - WALL, edge), (x + foot / 2 - WALL, base + WALL))
    over = ((x - rim / 2, edge), (x - rim / 2, edge + head), (x + rim / 2, edge + head), (x + rim / 2, edge))
    slab = (_slab(x, base, d["slab.length"], d["slab.thickness"]),) if chain.on_slab else ()
    records = (
        *slab,
        Polygon(outer, "solid", "outline"),
        Polygon((*inner[:2], *over, *inner[2:]), "water", "none"),
        Line((inner[1], inner[0], inner[3], inner[2]), "thin"),
        *(Line(((x + s * rim / 2, edge), (x + s * (foot / 2 + 0.004), base)), "water") for s in (-1, 1)),
        Line(over[1:3], "water"),
    )
    across = Dimension((x - rim / 2, edge), (x + rim / 2, edge), f"{rim * 1e3:.0f}", rim, 5.0)
    where = f"{write(x, 'mm')} off the middle" if x else "in the middle"
    heights = {"vessel base": (base, p.pit / 2), "rim": (edge, x + rim / 2)}
    return _Feature(records, (across,), edge, (x, edge - 0.015), heights, f"a vessel {write(rim, 'mm')} across stands {where}")


def _stones(chain: Chain, p: _Places) -> _Feature:
    d = chain.design
    base, hole = levels.height(d, "stone base"), d["stones.hole"]
    sizes = [(wide, high) for wide, high, _ in chain.sizes]
    records: list[Record] = []
    places = [p.blocks * ((i + 0.5) / len(sizes) - 0.5) for i in range(len(sizes))]
    for x, (wide, high) in zip(places, sizes, strict=True):
        records += [_slab(x, base, d["slab.length"], d["slab.thickness"])] if chain.on_slabs else []
        records += [Polygon(_rectangle(x - wide / 2, base, x + wide / 2, base + high), "concrete", "outline")]
        records += [Line(((x + s * hole / 2, base), (x + s * hole / 2, base + high)), "hidden") for s in (-1, 1)]
        records += [Line(((x - wide / 2, base), (x - wide / 2, base + high), (x + wide / 2, base + high), (x + wide / 2, base)), "water")]
    tall = max(range(len(sizes)), key=lambda i: sizes[i][1])
    x, (wide, high) = places[tall], sizes[tall]
    across = Dimension((x - wide / 2, base + high), (x + wide / 2, base + high), f"{wide * 1e3:.0f}", wide, 5.0)
    heights = {"stone base": (base, p.pit / 2), "highest stone": (base + high, x + wide / 2)}
    return _Feature(tuple(records), (across,), base + high, (x, base + high), heights, f"{len(sizes)} drilled stones, the highest {write(high, 'mm')},")


def _blade(chain: Chain, p: _Places) -> _Feature:
    d = chain.design
    lip, landing, wide, deep = levels.height(d, "lip"), levels.height(d, "landing stone"), d["blade.trough_width"], d["blade.trough_depth"]
    face = -p.box / 2 - p.board - 0.02
    back = face - wide - 2 * WALL
    head = chain.lip_head
    speed, fall = chain.brink_speed, lip - landing
    path = [(face + speed * chain.fall_time * i / 16, lip - fall * (i / 16) ** 2) for i in range(17)]
    upper = [(x, y + chain.brink_depth * (1 - i / 20)) for i, (x, y) in enumerate(path)]
    trough = _rectangle(back + WALL, lip - deep, face - WALL, lip + head)
    records = (
        Polygon(_rectangle(back, 0.0, face, lip - deep - WALL), "solid", "outline"),
        Polygon(((back, lip - deep - WALL), (face, lip - deep - WALL), (face, lip), (face - WALL, lip), (face - WALL, lip - deep), (back + WALL, lip - deep), (back + WALL, lip + 0.05), (back, lip + 0.05)), "solid", "thin"),
        Polygon(trough, "water", "none"),
        Polygon((*path, *reversed(upper)), "water", "none"),
        Line(((back + WALL, lip + head), (face - WALL, lip + head), *upper), "water"),
        Line(tuple(path), "water"),
    )  # fmt: skip
    down = Dimension((path[-1][0] + 0.06, landing), (path[-1][0] + 0.06, lip), f"{fall * 1e3:.0f}", fall, 0.0)
    out = Dimension((face, lip + 0.06), (path[-1][0], lip + 0.06), f"throw {chain.throw * 1e3:.0f}", chain.throw, 4.0)
    heights = {"landing stone": (landing, p.pit / 2), "lip": (lip, face + chain.throw)}
    says = f"a sheet falls {write(fall, 'mm')} from a lip {write(d['blade.lip_width'], 'mm')} wide and lands {write(chain.throw, 'mm')} out"
    return _Feature(records, (down, out), lip + 0.08, ((back + face) / 2, lip - deep), heights, says)


def _cascade(chain: Chain, p: _Places) -> _Feature:
    d = chain.design
    steps, fall, tread = round(d["cascade.steps"]), d["cascade.step_fall"], d["cascade.tread"]
    top, head, depth = levels.height(d, "header lip"), chain.step_head, chain.brink_depth
    foot = -p.box / 2 - p.board - 0.02
    lips = [(foot - i * tread, top - (steps - 1 - i) * fall) for i in range(steps)]  # the lowest lip first, nearest to the reservoir
    back = lips[-1][0] - tread
    ground = [(foot, 0.0), *(point for x, y in lips for point in ((x, y), (x - tread, y))), (back, 0.0)]
    records: list[Record] = [Polygon(tuple(ground), "concrete", "outline")]
    for x, y in lips:
        records.append(Polygon(_rectangle(x - tread, y, x, y + head), "water", "none"))
        path = [(x + chain.brink_speed * chain.fall_time * i / 10, y - fall * (i / 10) ** 2) for i in range(11)]
        upper = [(u, v + depth * (1 - i / 12)) for i, (u, v) in enumerate(path)]
        records += [Polygon((*path, *reversed(upper)), "water", "none"), Line(((x - tread, y + head), (x, y + head), *upper), "water")]
    down = Dimension((foot + 0.05, lips[0][1] - fall), (foot + 0.05, lips[0][1]), f"{fall * 1e3:.0f}", fall, 0.0)
    along = Dimension((back, top + 0.06), (lips[-1][0], top + 0.06), f"tread {tread * 1e3:.0f}", tread, 4.0)
    says = f"{steps} steps of {write(fall, 'mm')} run down from a header beside the pit and"
    return _Feature(tuple(records), (down, along), top + 0.08, (back, top), {"header lip": (top, lips[-1][0])}, says, 0.1 - back)


def _slab(x: float, base: float, length: float, thickness: float) -> Polygon:
    return Polygon(_rectangle(x - length / 2, base - thickness, x + length / 2, base), "concrete", "outline")


_FEATURES: dict[str, Callable[[Chain, _Places], _Feature]] = {"overflowing vessel": _vessel, "drilled stones": _stones, "blade": _blade, "cascade": _cascade}


def _hose(p: _Places, feature: _Feature) -> list[Record]:
    """Pump in the corner, and the hose that rises to where the feature is fed."""
    floor, x = p.level["reservoir floor"], -p.blocks / 2 + 0.12
    pump = _rectangle(x - 0.06, floor + 0.02, x + 0.06, floor + 0.12)
    run = p.level["block top"] - 0.04
    path = ((x, floor + 0.12), (x, run), (feature.outlet[0], run), feature.outlet)
    return [Polygon(pump, "pale", "outline"), Line(path, "hidden"), Leader((x, floor + 0.07), "pump", (-9.0, -3.0))]


def _distances(p: _Places) -> list[Record]:
    formation = p.level["formation"]
    text = "{:.0f}".format
    left = -p.pit / 2 - p.apron
    return [
        Dimension((-p.pit / 2, formation), (p.pit / 2, formation), text(p.pit * 1e3), p.pit, -10.0),
        Dimension((-p.box / 2, formation), (p.box / 2, formation), text(p.box * 1e3), p.box, -4.0),
        Dimension((left, formation), (left, 0.0), text(-formation * 1e3), -formation, 4.0),
    ]


def _heights(p: _Places, feature: _Feature, view: View) -> list[Record]:
    """Level labels in a column on the right, spread so that no two touch, each with a line to its level."""
    scale, right = view.scale[0], view.window[2]
    water = {"lowest water", "running water", "static water", "overflow"}
    starts = {name: (height, p.blocks / 2 if name in water else p.pit / 2) for name, height in p.level.items()} | feature.heights
    wanted = sorted(((height, start, name) for name, (height, start) in starts.items()), reverse=True)
    places = _spread([height * scale for height, _, _ in wanted])
    records: list[Record] = []
    for (height, start, name), at in zip(wanted, places, strict=True):
        shown = f"{name} {height * 1e3:+.0f}" if abs(height) > 5e-7 else f"{name} 0"
        elbow = right + 2 / scale
        records.append(Line(((start, height), (elbow, height), (elbow + 4 / scale, at / scale)), "dimension"))
        records.append(Text((elbow + 4 / scale, at / scale), shown, "start", 3.0, NIGHT if name in water else INK, (1.0, -1.0)))
    records.append(Level((p.blocks / 2 - 0.08, p.level["static water"])))
    return records


def _spread(places: list[float]) -> list[float]:
    """Places from the top down moved apart to LABEL, as near to where they belong as a simple push allows."""
    out = list(places)
    for _ in range(200):
        moved = False
        for i in range(len(out) - 1):
            lack = LABEL - (out[i] - out[i + 1])
            if lack > 1e-6:
                out[i], out[i + 1], moved = out[i] + lack / 2, out[i + 1] - lack / 2, True
        if not moved:
            break
    return out


# --- duty chart ---------------------------------------------------------------------------------------------------------------------


def duty_chart(chain: Chain) -> Sheet:
    """Pump curve and system curve, where they meet, and the flow wanted with its band. Raises Unknown with the keys that are missing."""
    pump, wanted, duty = chain.pump, chain.flow_wanted, chain.duty
    curve = _pump_points(pump)
    system = [(flow, chain.head_needed(flow)) for flow in (pump.Q_max * share / 40 for share in range(41))]
    across = Axis("flow in L/min", 0.0, nice_high(convert(pump.Q_max, "L/min")))
    up = Axis("head in m", 0.0, nice_high(max(pump.head(0.0), chain.head_wanted) * 1.02))
    shown = [[(convert(flow, "L/min"), head) for flow, head in points] for points in (curve, system)]
    point = (convert(duty.Q, "L/min"), duty.H)
    view = graph(
        (18.0, 16.0, 154.0, 62.0),
        across,
        up,
        [(shown[0], "curve", ""), (shown[1], "second curve", "")],
        point,
        None,
        f"duty {write(duty.Q, 'L/min')} at {write(duty.H, 'm')}",
    )
    band = Polygon(
        tuple((min(convert(wanted, "L/min") * share, across.high), y) for share, y in ((1.1, 0.0), (1.6, 0.0), (1.6, up.high), (1.1, up.high))), "pale", "none"
    )
    need = (convert(wanted, "L/min"), chain.head_wanted)
    labels = (
        Text((0.0, pump.head(0.0)), "pump", "start", 3.2, "#386BFC", (3.0, 1.6)),
        Text((0.0, system[0][1]), "pipe and lift", "start", 3.2, ACCENT, (3.0, -4.6)),
        Mark(need, 1.1, NIGHT),
        Text(need, f"wanted {write(wanted, 'L/min')}", "start", 3.2, NIGHT, (1.6, -5.0)),
    )
    records = (band, *view.records, *labels, *_by_bucket(chain))
    sentence = (
        f"With the valve open the pump sends {write(duty.Q, 'L/min')} at a head of {write(duty.H, 'm')}, {number(duty.Q / wanted, 3)} times the {write(wanted, 'L/min')} wanted. "
        "The pale band is 1.1 to 1.6 times the flow wanted."
    )
    notes = (Text((4.0, 7.0), "Duty chart: pump curve, and what pipe and lift ask for, water at its lowest", "start", 3.2, GREY),)
    return Sheet(180, 90, (View(view.window, view.frame, records, clip=False),), f"{chain.design.title}: duty chart", sentence, notes)


def _by_bucket(chain: Chain) -> tuple[Record, ...]:
    """The measured flow, where there is one, on the line of the head that it needs."""
    if "measured.flow" not in chain.design.values:
        return ()
    flow = chain.design["measured.flow"]
    at = (convert(flow, "L/min"), chain.head_needed(flow))
    return Mark(at, 1.4, INK), Text(at, f"by bucket {write(flow, 'L/min')}", "start", 3.2, INK, (1.6, 3.2))


def _pump_points(pump: Pump) -> list[Point]:
    return [(flow, pump.head(flow)) for flow in (pump.Q_max * share / 40 for share in range(41))]


def drawings(chain: Chain) -> list[tuple[str, Sheet | str]]:
    """Section and duty chart; for one that cannot be drawn, why."""
    made: list[tuple[str, Sheet | str]] = []
    for name, draw in (("section", section), ("duty chart", duty_chart)):
        try:
            made.append((name, draw(chain)))
        except Unknown as missing:
            made.append((name, f"it needs {asked(missing)}"))
        except InputError as refused:
            made.append((name, str(refused)))
        except ArithmeticError:
            made.append((name, "a value that must be more than nothing is zero"))
    return made
