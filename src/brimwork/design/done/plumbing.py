"""What carries the water: pump, hoses, valves, fittings, overflow; as lines of the shopping list."""

from __future__ import annotations

from collections.abc import Iterator

from brimwork.design.done.amounts import ListLine, Shop
from brimwork.design.typed.known import Unknown
from brimwork.topics.cost import whole_units

ENDS = 2  # of each piece of hose: a tail and a clip at both
WASHERS_OF_A_CONNECTOR = 2


def pump(s: Shop) -> Iterator[ListLine]:
    c = s.chain
    duty = f"at least {s.amount(c.flow_wanted, 'L/min', 'US gal/min')} at {s.amount(c.head_wanted, 'm', 'ft')}"
    yield s.pieces("pump", "submersible pump", 1, duty + _cord(s), "reservoir", "marked for permanent outdoor submersion")


def _cord(s: Shop) -> str:
    try:
        return f"; cord of {s.run(s.chain.cord_wanted)} at least"
    except Unknown:
        return "; cord long enough for its route"


def intake(s: Shop) -> Iterator[ListLine]:
    given = s.design.given("pump.intake_area")
    open_area = f"open area {s.amount(given.value, 'cm2', 'in2')}" if given else "as large as the bay takes"
    yield s.pieces("pre_filter", "strainer", 1, open_area, "round the pump")


def cut_out(s: Shop) -> Iterator[ListLine]:
    if s.design["pump.cut_out"] == "yes":
        yield s.pieces("cut_out", "low-water cut-out", 1, "stops the pump at its lowest level", "pump bay")


def top_up_lines(s: Shop) -> Iterator[ListLine]:
    if "reservoir.top_up_level" in s.design.values:
        yield s.pieces("float_valve", "top-up valve", 1, "float valve with an air gap as the water supplier's rules say", "pump bay")


def hose(s: Shop) -> Iterator[ListLine]:
    d = s.design
    yield s.cut("hose", "delivery hose", d["pipe.length"], "buying.hose_waste", d["buying.hose_extra"], spec=f"true bore {s.sizes(d['pipe.bore'])}", where="pump to outlet",
                note="within the length that the design counts")  # fmt: skip


def fittings(s: Shop) -> Iterator[ListLine]:
    """In-line fittings of the delivery hose, and a tail and a clip for each end of hose that they make."""
    d = s.design
    bore, check = d["pipe.bore"], d["pipe.check_valve"] == "yes"
    own_valve = d.kind != "drilled stones"
    if own_valve:
        yield s.pieces("valve", "valve", 1, f"bore {s.sizes(bore)}", "delivery hose, where a hand reaches it")
    yield s.pieces("union", "union", 1, f"bore {s.sizes(bore)}", "above the pump, so that it lifts out")
    if check:
        yield s.pieces("check_valve", "check valve", 1, f"bore {s.sizes(bore)}", "delivery hose")
    yield from _ends(s, ENDS * (2 + own_valve + check), bore, "delivery hose")


def _ends(s: Shop, count: int, bore: float, where: str) -> Iterator[ListLine]:
    yield s.pieces("hose_tail", "hose tails", count, f"for a bore of {s.sizes(bore)}", where, "the pump's own may serve as one")
    yield s.pieces("hose_clip", "hose clips", count, f"stainless steel, for a bore of {s.sizes(bore)}", where)


def branches(s: Shop) -> Iterator[ListLine]:
    """Hose, valve and outlet sleeve for each stone, and what parts the flow; only drilled stones have them."""
    c, d = s.chain, s.design
    if d.kind != "drilled stones":
        return
    number, bore = len(c.sizes), d["stones.branch_bore"]
    valves = number * (d["stones.valves"] == "yes")
    lengths = [length for _, _, length in c.sizes]
    each = " + ".join(s.run(length) for length in lengths)
    yield s.cut("branch_hose", "branch hose", sum(lengths), "buying.hose_waste", number * d["buying.hose_extra"], spec=f"true bore {s.sizes(bore)}: {each}",
                where="manifold to stones")  # fmt: skip
    if number > 1:
        yield s.pieces(
            "manifold", f"manifold with {number} outlets, or tees", 1, f"inlet {s.sizes(d['pipe.bore'])}, outlets {s.sizes(bore)}", "end of the delivery hose"
        )
    if valves:
        yield s.pieces("valve", "branch valves", valves, f"bore {s.sizes(bore)}", "one on each branch")
    yield from _ends(s, ENDS * (number + valves), bore, "branches")
    yield s.pieces("sleeve", "outlet sleeves", number, f"for a hole of {s.sizes(d['stones.hole'])}", "top of each stone")


def seals(s: Shop) -> Iterator[ListLine]:
    """Tank connectors where the hose goes through the wall of a vessel, trough or header; washers with their spare; thread-seal tape."""
    connectors = int(_through_a_wall(s))
    if connectors:
        yield s.pieces(
            "tank_connector", "tank connector", connectors, f"for a bore of {s.sizes(s.design['pipe.bore'])}", "where the hose goes through the wall"
        )
    where = "for tank connector and union" if connectors else "for the union"
    yield s.pieces("washer", "washers", WASHERS_OF_A_CONNECTOR * connectors + 1, where, "fittings", spare=s.design["buying.spare_washers"])
    yield s.pieces("thread_tape", "thread-seal tape", 1, "one roll", "threads")


def _through_a_wall(s: Shop) -> bool:
    feeds = {"overflowing vessel": lambda: True, "blade": lambda: s.design["blade.feed"] == "bottom", "cascade": lambda: s.design["cascade.feed"] == "bottom"}
    return feeds.get(s.design.kind, lambda: False)()


def standpipe(s: Shop) -> Iterator[ListLine]:
    if s.design.kind != "overflowing vessel":
        return
    d = s.design
    length = max(d["vessel.height"] - d["pipe.mouth_below_rim"], 0.0)
    sticks, stick = whole_units(length, d["buying.pipe_stick"]), s.run(d["buying.pipe_stick"])
    yield s.pieces("standpipe", "pipe for the standpipe", sticks, f"bore {s.sizes(d['pipe.bore'])}, cut to {s.sizes(length)}; lengths of {stick}", "vessel",
                   "part of the length of the hose in the design")  # fmt: skip


def overflow(s: Shop) -> Iterator[ListLine]:
    d = s.design
    yield s.cut("overflow_pipe", "overflow pipe", s.chain.counted("buying.overflow_run"), "buying.pipe_waste", sold="buying.pipe_stick", spec=f"bore {s.sizes(d['overflow_pipe.bore'])}",
                where="reservoir to where it drains")  # fmt: skip
    bore = f"for a bore of {s.sizes(d['overflow_pipe.bore'])}"
    yield s.pieces("overflow_mesh", "mesh over the overflow", 1, bore, "inlet of the overflow")
    yield s.pieces("overflow_flange", "flange of the overflow", 1, f"{bore}, with its seal", "clamps the liner round the overflow")
    yield s.pieces("overflow_bend", "bends", d["buying.overflow_bends"], bore, "overflow pipe")
    yield s.pieces("overflow_end", "end of the overflow", 1, "a soakaway of its own, or a grille where it runs out on ground that takes it", "where it drains",
                   "away from buildings and paths")  # fmt: skip


def first_fill(s: Shop) -> Iterator[ListLine]:
    c = s.chain
    once = c.static_volume + c.held_above
    test = c.design["reservoir.overflow_level"] * c.box_length * c.box_width  # the liner is tested empty of blocks
    yield s.line(
        "water for the first fill",
        spec="reservoir to its static level, and what stands above it",
        net=s.water(once),
        note="soft or rain water leaves less scale",
    )
    yield s.line(
        "water for the test of the liner",
        spec="the empty pit to the overflow",
        net=s.water(test),
        gross=s.water(once + test),
        note="with the first fill; kept in tubs it fills the reservoir afterwards",
    )
