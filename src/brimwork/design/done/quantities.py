"""What to buy, cut and dig: the quantities that follow from a design alone, each rounded up to what is sold."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from brimwork.design.done import above, below, plumbing
from brimwork.design.done.amounts import ListLine, Shop
from brimwork.design.follows.chain import Chain
from brimwork.design.typed.asking import Refused, tried, without_keys
from brimwork.topics.cost import to_buy

# Tools and what people wear, for the region's words to be put in.
TOOLS = (
    "spirit levels of 1.2 and 0.6 m, straightedge, laser or automatic level with staff, pegs and lines, tape, marker",
    "spade, barrow, hand rammer, saw, drill, shears, tubs, marked bucket, stop-watch, thermometer, pH strips",
    "eye and ear protection, gloves, boots, knee pads; water for the blade and a fitted P3 or N100 respirator for cutting",
)


def quantities(chain: Chain) -> list[ListLine]:
    """Every line that can be worked out; a line that cannot says what it needs."""
    shop = Shop(chain)
    return [line for item, make in _LINES.items() for line in _made(item, make, shop)]


def _made(item: str, make: Callable[[Shop], Iterator[ListLine]], shop: Shop) -> list[ListLine]:
    """The lines that `make` gives until one of them cannot be worked out."""
    made: list[ListLine] = []
    got = tried(lambda: made.extend(make(shop)))
    return [*made, _open(shop, item, got)] if isinstance(got, Refused) else made


def _open(shop: Shop, item: str, got: Refused) -> ListLine:
    return shop.line(item, buy="not known", note=without_keys(got.why), known=False, missing=got.needs)


def _duct(s: Shop) -> Iterator[ListLine]:
    d = s.design
    route = d["supply.cord_route"]
    yield s.cut(
        "duct",
        "duct",
        route,
        "buying.pipe_waste",
        sold="buying.duct_coil",
        spec="its bore the plug's diagonal and 10 mm; long bends",
        where="socket to pump bay",
    )
    yield s.cut("draw_cord", "draw cord", route, "buying.pipe_waste", spec="left in the duct", where="duct")
    gross, rolls = to_buy(route, d["buying.pipe_waste"], d["buying.tape_roll"])
    yield s.pieces("warning_tape", "warning tape", rolls, f"{s.run(gross)}; rolls of {s.run(d['buying.tape_roll'])}", "over the duct")


def _services(s: Shop) -> Iterator[ListLine]:
    yield s.pieces("electrician", "electrician", 1, "cable, residual-current protection, test and certificate", "supply", "qualified; local codes govern")
    yield s.pieces("hire", "hire", 1, "rammer or plate compactor, breaker, laser level", "site")
    yield s.pieces("delivery", "deliveries", 1, "all of them", "site")


_LINES: dict[str, Callable[[Shop], Iterator[ListLine]]] = {
    "pit to dig": below.pit, "apron to dig": below.apron_lines, "trenches": below.trenches, "spoil to take away": below.spoil, "separation fabric": below.fabric, "aggregate type 1": below.aggregate, "sharp sand": below.sand,
    "box": below.box_lines, "strut timber": below.struts, "cleat timber": below.cleats, "exterior screws": below.screws, "liner": below.liner, "protection fleece": below.fleece, "void-former blocks": below.blocks, "cover": below.cover, "mesh": below.mesh, "slab": above.slabs,
    "feature": above.feature, "waterproofer": above.coat, "foam and pebbles": above.foam, "rounded stone": below.stone, "submersible pump": plumbing.pump, "strainer": plumbing.intake,
    "low-water cut-out": plumbing.cut_out, "top-up valve": plumbing.top_up_lines, "delivery hose": plumbing.hose, "fittings": plumbing.fittings,
    "branches": plumbing.branches, "seals": plumbing.seals, "standpipe": plumbing.standpipe, "overflow pipe": plumbing.overflow, "duct": _duct, "services": _services,
    "water for the first fill": plumbing.first_fill,
}  # fmt: skip
