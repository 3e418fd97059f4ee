"""What stands above the reservoir: the feature of each kind and what it stands on; as lines of the shopping list."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace

from brimwork.design.done.amounts import ListLine, Shop
from brimwork.design.typed.steps import COAT
from brimwork.topics.cost import to_buy, whole_units
from brimwork.topics.lining import shortest_off_a_roll
from brimwork.units import InputError


def slabs(s: Shop) -> Iterator[ListLine]:
    c, d = s.chain, s.design
    if c.slab_count:
        size = s.sizes(d["slab.length"], d["slab.width"], d["slab.thickness"])
        yield s.pieces(
            "slab",
            "slab",
            c.slab_count,
            size,
            "on the blocks, under the feature",
            f"{s.mass(c.slab_mass)} each: weigh one; two people or a lifter. Holes for hoses are drilled before it is laid",
        )


def feature(s: Shop) -> Iterator[ListLine]:
    yield from _FEATURES[s.design.kind](s)


def _vessel(s: Shop) -> Iterator[ListLine]:
    d = s.design
    size = f"{s.sizes(d['vessel.rim_diameter'])} across, {s.sizes(d['vessel.height'])} high, {s.mass(d['vessel.mass'])} empty, {s.water(d['vessel.water'])} of water"
    yield s.pieces(
        "feature", "vessel", 1, size, "on the slab" if d["vessel.stands_on"] == "slab" else "on the blocks", "drilled for the tank connector; lift by a plan"
    )
    yield s.pieces("shims", "shims", 1, "a set, stainless steel or polyethylene", "under the foot")


def coat(s: Shop) -> Iterator[ListLine]:
    """Waterproofer, where the design says that the vessel is coated inside."""
    if s.design.kind == "overflowing vessel" and s.design[COAT] == "yes":
        yield s.pieces("waterproofer", "waterproofer", 1, "for the inside, as its sheet says", "vessel", "5 to 7 days to cure")


def foam(s: Shop) -> Iterator[ListLine]:
    """Foam and the pebbles that hold it down, where the design has them."""
    d = s.design
    if "vessel.foam" in d.values:
        board, unit = d["buying.foam_board"], ("L", "ft3", "board")
        yield s.packs(
            "foam",
            "foam",
            d["vessel.foam"],
            "buying.foam_waste",
            board,
            unit,
            spec=f"boards of {s.amount(board, 'L', 'ft3')}, in a bag",
            where="in the vessel",
        )
    if "vessel.pebbles" in d.values:
        mass, bag = d["vessel.pebbles"] * d["catch.stone_density"], d["buying.bag"]
        share = d["catch.stone_waste"]
        gross, bags = to_buy(mass, share, bag)
        yield s.line("pebbles on the foam", "pebbles", spec=f"{s.water(d['vessel.pebbles'])} with their gaps", net=s.mass(mass), waste=f"{share * 100:g} %",
                     gross=s.mass(gross), count=bags, buy=f"{bags} {'bag' if bags == 1 else 'bags'} of {s.amount(bag, 'kg', 'lb')}", where="in the vessel")  # fmt: skip


def _stones(s: Shop) -> Iterator[ListLine]:
    c, d = s.chain, s.design
    given = d.given("prices.stones")
    prices = given.value if given else (None,) * len(c.sizes)
    if len(prices) != len(c.sizes):
        raise InputError(f"prices.stones has {len(prices)} prices for {len(c.sizes)} stones: give one for every stone, in their order")
    stones = Counter((wide, high, mass, own) for (wide, high, _), mass, own in zip(c.sizes, c.masses, prices, strict=True))
    for (wide, high, mass, own), count in stones.items():
        size = f"{s.sizes(wide)} across, {s.sizes(high)} high, hole {s.sizes(d['stones.hole'])}, {s.mass(mass)} each"
        line = s.pieces("feature", "drilled stone", count, size, "on the slabs" if c.on_slabs else "on the blocks", "lift by a plan")
        yield replace(line, each=own, waits="prices.stones" if len(stones) > 1 else "")
    yield s.pieces("shims", "shims", 1, "a set, stainless steel or polyethylene", "under the stones")


def _blade(s: Shop) -> Iterator[ListLine]:
    d = s.design
    size = s.sizes(d["blade.trough_length"], d["blade.trough_width"], d["blade.trough_depth"])
    yield s.pieces(
        "feature",
        "trough with its lip",
        1,
        f"{size} inside, lip {s.sizes(d['blade.lip_width'])}, fed at the {d['blade.feed']}",
        "in the wall",
        "lip dead level",
    )
    yield s.pieces(
        "wall", "wall", 1, f"{s.sizes(d['blade.wall_height'])} high, with a footing of its own", "behind the blade", "as a structural engineer designs it"
    )
    yield s.pieces(
        "landing_stone",
        "splash stone",
        1,
        f"{s.sizes(d['blade.lip_width'])} wide at least, {s.sizes(0.040)} to {s.sizes(0.080)} thick",
        "catch area",
    )
    yield _sealant(s, d["blade.lip_width"], "joint of the lip")


def _cascade(s: Shop) -> Iterator[ListLine]:
    d = s.design
    steps, width = round(d["cascade.steps"]), d["cascade.width"]
    yield s.pieces("feature", "step stones", steps, f"lip {s.sizes(width)} wide, tread {s.sizes(d['cascade.tread'])}, fall {s.sizes(d['cascade.step_fall'])}", "cascade",
                   "on compacted fill of its own")  # fmt: skip
    yield s.pieces(
        "header", "header", 1, f"{s.water(d['cascade.header_volume'])}, {s.amount(d['cascade.header_area'], 'm2', 'ft2')} of water", "top of the cascade"
    )
    if d["cascade.rill_length"]:
        yield s.pieces(
            "rill",
            "rill",
            1,
            f"{s.run(d['cascade.rill_length'])} long, {s.sizes(d['cascade.rill_width'])} wide, sides {s.sizes(d['cascade.rill_wall'])}",
            "header to steps",
        )
    pieces = [("rill", d["cascade.rill_length"] + 2 * d["buying.liner_lap"], d["cascade.rill_width"] + 2 * (d["cascade.rill_wall"] + d["lining.beyond_apron"]))]
    down = steps * (d["cascade.tread"] + d["cascade.step_fall"] + d["buying.liner_lap"]) + d["buying.liner_lap"]
    pieces = (pieces if d["cascade.rill_length"] else []) + [("steps", down, width + 2 * (d["cascade.splash_edge"] + d["lining.beyond_apron"]))]
    yield from _liners(s, pieces)
    yield _sealant(s, (steps + 1) * width, "every lip, the header's too")


def _liners(s: Shop, pieces: list[tuple[str, float, float]]) -> Iterator[ListLine]:
    """Liner of each piece (its name, length and width in m), cut side by side off one roll where that takes less than one after the other."""
    d, step = s.design, s.design["buying.cut_step"]
    apart = [shortest_off_a_roll(length, width, d["lining.rolls"], d["buying.liner_slack"]) for _, length, width in pieces]
    slack = 1 + d["buying.liner_slack"]
    beside, longest = sum(width for *_, width in pieces), max(length for _, length, _ in pieces)
    roll = min((wide for wide in d["lining.rolls"] if wide >= beside * slack), default=None)
    if len(pieces) < 2 or roll is None or whole_units(longest * slack, step) >= sum(whole_units(one.length * slack, step) for one in apart):
        for name, length, width in pieces:
            yield _liner(s, f"liner of the {name}", length, width)
        return
    sizes = " and ".join(f"{name} {s.run(length)} x {s.run(width)}" for name, length, width in pieces)
    yield s.cut("feature_liner", "liner of rill and steps", longest, "buying.liner_slack", spec=f"{sizes}, with laps, side by side off a roll {s.run(roll)} wide", where="cascade",
                note="upper piece over lower, every edge above the water")  # fmt: skip


def _liner(s: Shop, item: str, length: float, width: float) -> ListLine:
    """A strip cut off the narrowest roll that covers it; with its laps, in pieces laid like tiles downhill."""
    roll = shortest_off_a_roll(length, width, s.design["lining.rolls"], s.design["buying.liner_slack"])
    cut = f"{s.run(length)} x {s.run(width)} with laps, off a roll {s.run(roll.width)} wide"
    return s.cut("feature_liner", item, roll.length, "buying.liner_slack", spec=cut, where="cascade", note="upper piece over lower, every edge above the water")


def _sealant(s: Shop, joint: float, where: str) -> ListLine:
    reach = s.design["buying.sealant_reach"]
    return s.pieces("sealant", "sealant", whole_units(joint, reach), f"for water that stays wet; {s.run(joint)}, a cartridge fills {s.run(reach)}", where)


_FEATURES = {"overflowing vessel": _vessel, "drilled stones": _stones, "blade": _blade, "cascade": _cascade}
