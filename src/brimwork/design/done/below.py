"""What lies below the paving: pit, beds, backfill, box, lining, blocks; as lines of the shopping list."""

from __future__ import annotations

from collections.abc import Iterator

from brimwork import topics
from brimwork.design.done import strips
from brimwork.design.done.amounts import ListLine, Shop
from brimwork.design.follows.flight import Flight
from brimwork.design.typed.telling import percent
from brimwork.topics.box import Panel, cut_sheets
from brimwork.topics.cost import whole_units
from brimwork.topics.ground import loads
from brimwork.topics.lining import shortest_off_a_roll
from brimwork.units import InputError, write

_CORNERS = 4
DUCT = 0.050  # m: bore of the duct where nobody says


def pit(s: Shop) -> Iterator[ListLine]:
    c = s.chain
    yield s.line("pit to dig", spec=s.sizes(c.pit_length, c.pit_width, c.pit_depth), net=f"{s.amount(c.pit_dug, 'm3', 'yd3')} in the ground",
                 note=f"diagonals {s.sizes(c.diagonal)}; spoil and feet back from its edge", where="pit")  # fmt: skip


def apron_lines(s: Shop) -> Iterator[ListLine]:
    """What is dug beyond the pit for the apron, where it reaches beyond it."""
    c = s.chain
    if c.apron_dug:
        yield s.line("apron to dig", spec=f"{s.sizes(*c.apron_size)} less the pit, {s.sizes(c.apron_depth)} deep to the edge of the box",
                     net=f"{s.amount(c.apron_dug, 'm3', 'yd3')} in the ground", where="apron")  # fmt: skip


def trenches(s: Shop) -> Iterator[ListLine]:
    """Trenches of duct and overflow, each as long as its run, where that is known; what is dug goes back, compacted."""
    d, wide = s.design, s.design["ground.trench"]
    cover, bore = d.given("supply.duct_cover"), d.given("supply.duct_bore")
    if d.given("supply.cord_route"):
        deep = cover.value + (bore.value if bore else DUCT) if cover else None
        yield _trench(s, "trench for the duct", d["supply.cord_route"], wide, deep, "cover as the electrician states it")
    if s.chain.overflow_run is not None:
        fall, start = d.given("overflow_pipe.fall"), -s.chain.level("overflow") + d["overflow_pipe.bore"] / 2
        yield _trench(s, "trench for the overflow", s.chain.overflow_run, wide, start + (fall.value / 2 if fall else 0.0), "it falls all the way")


def _trench(s: Shop, item: str, run: float, wide: float, deep: float | None, note: str) -> ListLine:
    size = f"{s.run(run)} long, {s.sizes(wide)} wide" + (f", {s.sizes(deep)} deep on the mean" if deep is not None else "")
    dug = f"{s.amount(run * wide * deep, 'm3', 'yd3')} in the ground" if deep is not None else s.run(run)
    return s.line(item, spec=size, net=dug, note=f"{note}; filled again with what was dug, compacted as it goes in", where="beyond the pit")


def spoil(s: Shop) -> Iterator[ListLine]:
    load, heap = s.design["buying.load"], s.chain.spoil
    count = loads(heap, load)
    size = s.amount(load, "m3", "yd3")
    yield s.line("spoil to take away", "spoil", spec=f"pit and apron, {s.amount(s.chain.dug, 'm3', 'yd3')}; bulking factor {s.design['ground.bulking']:g}", net=f"{s.amount(heap, 'm3', 'yd3')} loose", count=count,
                 buy=f"{count} load{'' if count == 1 else 's'} of {size}", where="pit, apron", note="less what goes back as clean fill")  # fmt: skip


def aggregate(s: Shop) -> Iterator[ListLine]:
    c, d = s.chain, s.design
    thick, density, packing = d["ground.sub_base"], d["buying.sub_base_density"], d["buying.sub_base_packing"]
    bed = _layer(c.pit_length, c.pit_width, thick, packing, density)
    fill = topics.formulas()["mass of backfill to order"](
        L_dig=c.pit_length, W_dig=c.pit_width, L_out=c.panel_long, W_out=c.panel_across, D=panel_height(s), k_comp=packing, rho_loose=density
    )
    steps = fill_under_steps(s) * packing * density if d.kind == "cascade" else 0.0
    placed, under = (bed + fill + steps) / packing / density, f"; fill under header, steps and rill, {s.mass(steps)}" if steps else ""
    yield s.loose("sub_base", "aggregate type 1", f"{s.amount(placed, 'm3', 'yd3')} placed", bed + fill + steps, f"x {packing:g}: it packs down", density, "buying.sub_base_sold",
                  spec=f"sub-base {s.sizes(thick)} thick, {s.mass(bed)}; backfill round the box, {s.mass(fill)}{under}",
                  where="sub-base, backfill" + (", fill" if steps else ""), note="compacted as it goes in" if steps else "")  # fmt: skip


def fill_under_steps(s: Shop) -> float:
    """Fill (m3) that carries header, steps and rill from the paving up to their beds, as wide as they are with their edges."""
    d, flight = s.design, Flight(s.chain)
    wide = flight.width + 2 * d["cascade.splash_edge"]
    header, *pools = flight.pools
    beds = [(header[1] - header[0], header[2] - d["cascade.header_volume"] / d["cascade.header_area"])]
    beds += [(end - start, level) for start, end, level in pools]
    filled = sum(wide * long * max(bed, 0.0) for long, bed in beds)
    if flight.rill:
        long, inside, _ = flight.rill
        low, high = max(s.chain.foot, 0.0), max(flight.lips[-1][1], 0.0)
        filled += (inside + 2 * d["cascade.splash_edge"]) * long * (low + high) / 2
    return filled


def _layer(length: float, width: float, thick: float, packing: float, density: float) -> float:
    return topics.formulas()["mass of a compacted layer to order"](L_dig=length, W_dig=width, t_sub=thick, k_comp=packing, rho_loose=density)


def sand(s: Shop) -> Iterator[ListLine]:
    c, d = s.chain, s.design
    density, packing = d["buying.sand_density"], d["buying.sand_packing"]
    bed = _layer(c.pit_length, c.pit_width, d["ground.sand"], packing, density)
    yield s.loose("sand", "sharp sand", f"{s.amount(bed / packing / density, 'm3', 'yd3')} placed", bed, f"x {packing:g}: it packs down", density,
                  "buying.sand_sold", spec=f"sand bed {s.sizes(d['ground.sand'])} thick, under box and lining", where="sand bed")  # fmt: skip


def fabric(s: Shop) -> Iterator[ListLine]:
    pieces = {"": (s.chain.pit_length, s.chain.pit_width)}
    yield _in_strips(
        s, "fabric", "separation fabric", "buying.fabric", pieces, where="under the sub-base", note="on clay or silt; on clean gravel none is needed"
    )


def _in_strips(s: Shop, key: str, item: str, buying: str, pieces: dict[str, tuple[float, float]], lap: str = "lap", spec: str = "", **rest) -> ListLine:
    """Pieces length x width (m), each by the words that stand before it, cut in strips off a roll; `buying` begins the keys of its sizes."""
    d, waste = s.design, s.design[f"{buying}_waste"]
    roll, over = d[f"{buying}_roll"], d[f"{buying}_{lap}"]
    found = {name: strips.laid(*size, roll, over, waste, d["buying.cut_step"]) for name, size in pieces.items()}
    said = [f"{name} {_strips(s, pieces[name], one)}".strip() for name, one in found.items()]
    laps = f", laps of {s.sizes(over)}" if any(one.count > 1 for one in found.values()) else ""
    net, gross = (sum(one.count * getattr(one, what) for one in found.values()) for what in ("length", "gross"))
    bought = sum(one.bought for one in found.values())
    text = "; ".join(part for part in (spec, *said) if part) + f"; off a roll {s.run(roll)} wide{laps}"
    return s.line(item, key, spec=text, net=s.run(net), waste=percent(waste), gross=s.run(gross), count=bought, by_length=True, buy=s.run(bought), **rest)


def _strips(s: Shop, size: tuple[float, float], one: strips.Strips) -> str:
    many = "strip" if one.count == 1 else "strips"
    return f"{s.run(size[0])} x {s.run(size[1])}: {one.count} {many} of {s.run(one.cut)} along the {s.run(one.length)}"


def panel_height(s: Shop) -> float:
    """Height (m) of the panels: they stand on the sand, with the lining inside them, and reach over the blocks."""
    return s.chain.box_depth + s.design["ground.lining_thickness"]


def _sides(s: Shop) -> dict[str, tuple[float, float, int]]:
    """Length and height of the panels of the box, and in how many parts each is made: a panel longer than a sheet is joined."""
    c, sheet = s.chain, max(s.design["buying.sheet_length"], s.design["buying.sheet_width"])
    high = panel_height(s)
    pairs = {"long panel": (c.panel_long, high), "end panel": (c.box_width, high)}
    return {name: (length, height, max(1, whole_units(length, sheet))) for name, (length, height) in pairs.items()}


def _joints(s: Shop) -> int:
    return sum(2 * (parts - 1) for *_, parts in _sides(s).values())


def box_lines(s: Shop) -> Iterator[ListLine]:
    d, sides = s.design, _sides(s)
    panels = [Panel(name, length / parts, height) for name, (length, height, parts) in sides.items() for _ in range(2 * parts)]
    length, width = d["buying.sheet_length"], d["buying.sheet_width"]
    count = 1 + max(cut.sheet for cut in cut_sheets(panels, length, width, d["buying.saw"]))
    made = {name: f", each in {parts} parts of {s.sizes(long / parts)}" if parts > 1 else "" for name, (long, _, parts) in sides.items()}
    sizes = "; ".join(f"2 {name}s {s.sizes(long, high)}{made[name]}" for name, (long, high, _) in sides.items())
    yield s.pieces("sheet", f"exterior plywood {s.sizes(d['ground.board'])}", count, f"sheets of {s.sizes(length, width)}; cut {sizes}", "box",
                   "by the cutting layout, either way of the grain")  # fmt: skip


def cleats(s: Shop) -> Iterator[ListLine]:
    """A cleat over every joint of a panel that is longer than a sheet, as tall as the box; screwed on from outside."""
    batten, depth, joints = s.design["buying.batten"], panel_height(s), _joints(s)
    each = int(batten * (1 + 1e-9) / depth)
    if joints and not each:
        raise InputError(f"a cleat of {write(depth, 'm')} is longer than timber of {write(batten, 'm')}: change buying.batten")
    if joints:
        yield s.pieces("batten", "cleat timber", whole_units(joints, each), f"{joints} cleats of {s.sizes(depth)}; {s.timber()}", "joints of the box",
                       "over each joint, outside, screwed to both parts")  # fmt: skip


def struts(s: Shop) -> Iterator[ListLine]:
    """Struts across the box, which stay until it is backfilled; none in a box shorter than their spacing."""
    c, batten = s.chain, s.design["buying.batten"]
    count = whole_units(c.box_length, s.design["buying.strut_spacing"]) - 1
    each = int(batten * (1 + 1e-9) / c.box_width)
    if count and not each:
        raise InputError(f"a strut of {write(c.box_width, 'm')} is longer than timber of {write(batten, 'm')}: change buying.batten")
    if count:
        yield s.pieces("batten", "strut timber", whole_units(count, each), f"{count} strut{'' if count == 1 else 's'} of {s.sizes(c.box_width)}; {s.timber()}", "inside the box",
                       "out again before the liner")  # fmt: skip


def screws(s: Shop) -> Iterator[ListLine]:
    """A row at each corner of the box, and one on either side of each joint."""
    d = s.design
    count = (_CORNERS + 2 * _joints(s)) * (whole_units(panel_height(s), d["buying.screw_spacing"]) + 1)
    boxes = whole_units(count, d["buying.screw_box"])
    yield s.pieces("screws", "exterior screws", boxes, f"{count} at {s.sizes(d['buying.screw_spacing'])}; boxes of {d['buying.screw_box']:g}", "box corners")


def liner(s: Shop) -> Iterator[ListLine]:
    c, d = s.chain, s.design
    roll = shortest_off_a_roll(c.liner_length, c.liner_width, d["lining.rolls"], d["buying.liner_slack"])
    cut = f"{s.run(c.liner_length)} x {s.run(c.liner_width)}"
    yield s.cut("liner", "liner", roll.length, "buying.liner_slack", spec=f"PVC or rubber, cut {cut} off a roll {s.run(roll.width)} wide, its {s.run(roll.length)} along the roll", where="reservoir",
                note="one piece, no seam; trimmed when the pit is full")  # fmt: skip


def fleece(s: Shop) -> Iterator[ListLine]:
    """Under the liner and over it, over floor, sides and apron, where people walk on the stone; each as it lies flat, with its folds."""
    c, flat = s.chain, topics.formulas()["length of the liner"]
    aprons = dict.fromkeys(("under the liner", "over it"), s.design["catch.apron"])
    pieces = {name: tuple(flat(L_in=side, D=c.box_depth, w_apron=apron, w_trim=0.0) for side in (c.box_length, c.box_width)) for name, apron in aprons.items()}
    yield _in_strips(s, "fleece", "protection fleece", "buying.fleece", pieces, where="under and over the liner")


def blocks(s: Shop) -> Iterator[ListLine]:
    c, d = s.chain, s.design
    size = s.sizes(d["reservoir.block_length"], d["reservoir.block_width"], d["reservoir.block_height"])
    count = d["reservoir.blocks_along"] * d["reservoir.blocks_across"]
    yield s.pieces("block", "void-former blocks", count, size, "reservoir", "with clips and lids as the maker says")
    rounds = 2 * (c.base_length + c.base_width)
    rolls = whole_units(rounds, d["buying.tape_roll"])
    yield s.pieces("edge_tape", "edge tape", rolls, f"{s.run(rounds)} round the blocks; rolls of {s.run(d['buying.tape_roll'])}", "cut edges of the blocks")


def cover(s: Shop) -> Iterator[ListLine]:
    """The slab or grid all over the blocks, where the design has one."""
    c, thick = s.chain, s.chain.thickness_of_cover
    if thick:
        size = s.sizes(c.base_length, c.base_width, thick)
        note = f"{s.mass(c.cover_mass)} in all; in pieces that can be lifted, one over the pump bay that one person lifts out; holes for what passes through it"
        yield s.pieces("cover", "stiff slab or grid over the blocks", 1, f"{size}, laid in pieces", "on the blocks, under mesh and stone", note)


def mesh(s: Shop) -> Iterator[ListLine]:
    c, d = s.chain, s.design
    beyond, given = 2 * d["buying.mesh_lap"], d.given("lining.mesh_opening")
    opening = f"opening {s.sizes(given.value)}" if given else "opening half of the smallest stone at most"
    pieces = {"": (c.box_length + beyond, c.box_width + beyond)}
    yield _in_strips(s, "mesh", "mesh", "buying.mesh", pieces, "strip_lap", opening, where="over the blocks, under the stone")


def stone(s: Shop) -> Iterator[ListLine]:
    c, d = s.chain, s.design
    thick, density = d["catch.stone_thickness"], d["catch.stone_density"]
    yield s.loose("stone", "rounded stone", f"{s.amount(c.stone_area, 'm2', 'ft2')} x {s.sizes(c.stone_layer)} on the mean", c.stone_mass, percent(d["catch.stone_waste"]), density,
                  "buying.stone_sold", spec=f"washed, rounded{_smallest(s)}; {s.sizes(thick)} thick over the blocks, from the edge of the box up to the same level over the apron", where="catch area")  # fmt: skip
    yield s.pieces("net_bag", "net bag", 1, "for the stone over the lid", "lid")


def _smallest(s: Shop) -> str:
    given = s.design.given("lining.smallest_stone")
    return f", {s.sizes(given.value)} at least" if given else ""
