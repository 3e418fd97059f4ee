"""The steps of the work on site, in order: what each waits for, how long it usually takes, what must be true of it, and where work stops until signed."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from brimwork import tables, units
from brimwork.design.typed.known import Known

TEAM, ELECTRICIAN, MASON, WAIT = "team", "electrician", "mason", "wait"
USUAL_TEAM = 2  # people for whom the usual hours of the team are
_TIGHT = units.write(tables.TIGHT.value * 86400, "mm", None)
HOLDS = {
    "H1": "services located and marked; permissions and insurance in hand",
    "H2": "formation seen: depth, soil, no loose over-dig",
    "H3": "duct and draw cord seen before backfilling",
    "H4": "liner holds water 24 to 48 hours against a control bucket",
    "H5": "electrician's certificate: residual-current protection and earth tested",
    "H6": "rim levelled again after 7 days full",
    "H7": "client shown how to switch off, find the lid, top up and clean",
}


_VESSEL, _BLADE, _CASCADE, _STONES = ("overflowing vessel",), ("blade",), ("cascade",), ("drilled stones",)
COAT = "vessel.coat"


def _coated(design: Known) -> bool:
    """Whether the design says that the vessel is coated inside; where it says nothing, no coat is planned."""
    given = design.given(COAT)
    return given is not None and given.value == "yes"


def _foam(design: Known) -> bool:
    given = design.given("vessel.foam")
    return given is not None and given.value > 0


def _slabs(design: Known) -> bool:
    """Whether slabs lie under the feature, or nobody has said that none do."""
    given = design.given("vessel.stands_on" if design.kind in _VESSEL else "stones.stand_on")
    return given is None or given.value != "blocks"


class Task(NamedTuple):
    """`usual` is its time: hours at work, or for a wait the time that passes, nights and weekends included; `order` names the leads of LEADS it needs on site.

    `kinds` are the kinds of feature that have it (none: all), `when` tells from the design whether it has it.
    """

    words: str
    usual: str
    needs: tuple[str, ...]
    must: str = ""
    hold: str = ""
    by: str = TEAM
    order: tuple[str, ...] = ()
    kinds: tuple[str, ...] = ()
    caution: str = ""
    when: Callable[[Known], bool] | None = None


class Lead(NamedTuple):
    """What must be ordered ahead: working days from order to site, and in the US where that differs; `items` are the prices of what it holds.

    `kinds` and `when` as of a step.
    """

    words: str
    usual: str
    basis: str
    usual_us: str = ""
    items: tuple[str, ...] = ()
    kinds: tuple[str, ...] = ()
    when: Callable[[Known], bool] | None = None


def applies(row: Task | Lead, design: Known) -> bool:
    """Whether a design has a step of the work, or what must be ordered for it."""
    return (not row.kinds or design.kind in row.kinds) and (row.when is None or row.when(design))


# Together the hours of the team come to the 3 to 4 days that are common practice for a small feature, a day for making good, and one for
# tests, levelling again and handover; how the steps share them is judgement. Tolerances are common practice.
STEPS: dict[str, Task] = {
    "brief": Task("brief the team; photographs, first aid, welfare", "0.5 h", (), "permits and search on site", "H1", order=("search",)),
    "coat": Task(
        "coat the vessel inside",
        "2 h",
        ("brief",),
        order=("feature", "coat"),
        kinds=_VESSEL,
        caution="gloves, and air: read the sheet of the coat",
        when=_coated,
    ),
    "protect": Task("protect paving, trees and drains; put up a fence", "1 h", ("brief", "coat")),
    "set_out": Task(
        "temporary bench mark, offset pegs, marking out", "1.5 h", ("protect",), "bench mark within 2 mm; diagonals equal within 5 mm", order=("hire",)
    ),
    "lift_surface": Task("lift and store turf or paving", "1 h", ("set_out",)),
    "trial_dig": Task("trial dig by hand at service marks", "0.5 h", ("lift_surface",), "photograph", caution="no machine and no breaker near a mark"),
    "dig": Task(
        "dig to formation, the last 50 mm by hand; the apron to the level of the block tops",
        "6 h",
        ("trial_dig",),
        "+0/-10 mm; flat within 10 mm in 1 m",
        "H2",
        order=("spoil",),
        caution="spoil and feet 0.6 m back; a competent person judges the sides; stop at any service or water",
    ),
    "duct": Task("duct trench, duct, warning tape, draw cord", "2 h", ("dig",), "cover as the electrician states; as-built offsets", "H3", order=("duct",)),
    "sub_base": Task(
        "separation fabric on clay, sub-base in layers of 75 mm", "2 h", ("duct",), "within 5 mm; a heel leaves no print over 5 mm", order=("sub_base",)
    ),
    "sand_bed": Task("screed and level the sand bed", "1 h", ("sub_base",), "within 3 mm, both diagonals", order=("sand",)),
    "box": Task(
        "cut the box, set it, strut it inside",
        "2 h",
        ("sand_bed",),
        "inside +0/+5 mm; diagonals within 3 mm",
        order=("board",),
        caution="eyes, ears and dust mask while cutting",
    ),
    "backfill": Task("backfill round the box in layers of 150 mm", "3 h", ("box",), "top within 3 mm; bow 5 mm at most"),
    "lining": Task("hand sweep; fleece; liner, pleated and seated", "2 h", ("backfill",), "no tension", order=("liner", "fleece")),
    "liner_test": Task("water test of the liner, to the overflow, with a control bucket", "48 h", ("lining",), f"less than {_TIGHT} a day", "H4", WAIT),
    "empty": Task(
        "empty the pit: blocks would float",
        "0.5 h",
        ("liner_test",),
        "no water over the floor; liner wiped and looked at",
        caution="by hand pump or buckets while no supply is certified; nobody in the water while a pump is connected; not where ground water stands over the floor",
    ),
    "blocks": Task("inner fleece, blocks, clips, lids", "1.5 h", ("empty",), "top within 3 mm, nothing rocks", order=("blocks",)),
    "edge": Task("edge of the liner, apron, overflow pipe", "1.5 h", ("blocks",), "overflow +0/-3 mm; edge within 5 mm", order=("overflow",)),
    "wiring": Task(
        "electrician lays the cable and fits the protection", "6 h", ("duct",), by=ELECTRICIAN, order=("electrician",), caution="licensed electrician only"
    ),
    "certificate": Task(
        "electrician tests and certifies, before anything is connected", "2 h", ("wiring", "liner_test"), "residual current, earth", "H5", ELECTRICIAN
    ),
    "trial": Task(
        "wet trial of the pump in a tub: current, flow by bucket, noise",
        "0.5 h",
        ("edge", "certificate"),
        "flow within 15 % of the curve",
        order=("pump",),
        caution="no hand in the water while the pump is connected",
    ),
    "pump": Task("pump, intake cage, valve, hose; cable over the edge", "1.5 h", ("trial",), "hose rises all the way"),
    "slabs": Task("mesh; slabs on their bed, not on stone", "1 h", ("pump",), "slab within 2 mm", order=("mesh", "slab")),
    "cure": Task("the coat cures", "7 day", ("coat",), "5 to 7 days; the maker's sheet governs", by=WAIT, kinds=_VESSEL, when=_coated),
    "wall": Task(
        "mason builds the wall as the structural engineer designs it",
        "16 h",
        ("sub_base",),
        "as the engineer says",
        by=MASON,
        order=("wall",),
        kinds=_BLADE,
        caution="a wall is a structure",
    ),
    "wall_cure": Task("the wall gains strength", "7 day", ("wall",), "as the engineer says", by=WAIT, kinds=_BLADE),
    "build": Task(
        "steps, header and rill on compacted fill; liner shingled downhill", "8 h", ("slabs",), "every lip sealed and level", order=("feature",), kinds=_CASCADE
    ),
    "feature": Task(
        "set the feature by a lifting plan, and level it",
        "2 h",
        ("slabs", "cure", "wall_cure", "build"),
        "lip or rim within 1 mm",
        order=("feature",),
        caution="masses known, nobody under the load; a crane needs a lifting plan of its own",
    ),
    "upright": Task("tank connector and upright through the drilled hole", "0.5 h", ("feature",), "upright plumb, washers on both sides", kinds=_VESSEL),
    "vessel_test": Task(
        "water test of the vessel alone, its drilled hole with it",
        "24 h",
        ("upright",),
        "filled to just under the mouth of the upright; no drop seen",
        by=WAIT,
        kinds=_VESSEL,
    ),
    "foam": Task("draw the vessel down; foam in a bag, ballast", "0.5 h", ("vessel_test",), "foam held down", order=("foam",), kinds=_VESSEL, when=_foam),
    "start_up": Task(
        "fill to the static mark, start, trim the valve",
        "1 h",
        ("feature", "vessel_test", "foam"),
        "wet all round",
        caution="open water: keep children away; nobody touches it before the certificate",
    ),
    "stone": Task("stone, net bag over the lid, edges", "2 h", ("start_up",), "lid found blind in 30 seconds", order=("stone",)),
    "tests": Task("commissioning tests", "2 h", ("stone",), "as the commissioning sheet"),
    "make_good": Task("make good, remove spoil, photographs", "8 h", ("tests",), caution="no open pit or trench is left without a fence"),
    "settling": Task("stands full", "7 day", ("start_up",), by=WAIT),
    "relevel": Task("level and trim again", "1 h", ("make_good", "settling"), "rim within half of the head over it", "H6"),
    "handover": Task("demonstration and handover", "1 h", ("relevel",), "card, certificates, spares", "H7"),
}


FEATURE_WORDS = {"overflowing vessel": "vessel", "drilled stones": "drilled stones", "blade": "trough with its lip", "cascade": "step stones, header and rill"}


# Working days from order to site: judgement, to be asked of each supplier; that of the US search is the notice that a locate takes (second-hand).
LEADS: dict[str, Lead] = {
    "search": Lead("records and search for services under the ground", "10 day", "judgement", "3 day"),
    "hire": Lead("hire of rammer or plate compactor, breaker, laser level", "3 day", "judgement", items=("hire",)),
    "spoil": Lead("loads of spoil taken away", "3 day", "judgement", items=("spoil",)),
    "duct": Lead("duct, draw cord and warning tape", "3 day", "judgement", items=("duct", "draw_cord", "warning_tape")),
    "electrician": Lead("electrician", "10 day", "judgement", items=("electrician",)),
    "sub_base": Lead("separation fabric, and aggregate for sub-base and backfill", "3 day", "judgement", items=("fabric", "sub_base")),
    "sand": Lead("sand", "3 day", "judgement", items=("sand",)),
    "board": Lead("board, strut timber and screws for the box", "3 day", "judgement", items=("sheet", "batten", "screws")),
    "liner": Lead("liner to size", "10 day", "judgement", items=("liner",)),
    "fleece": Lead("protection fleece", "5 day", "judgement", items=("fleece",)),
    "blocks": Lead("void-former blocks and edge tape", "5 day", "judgement", items=("block", "edge_tape")),
    "overflow": Lead("overflow pipe and its mesh", "3 day", "judgement", items=("overflow_pipe", "overflow_mesh")),
    "pump": Lead(
        "pump, hose and fittings", "5 day", "judgement",
        items=("pump", "pre_filter", "cut_out", "float_valve", "hose", "branch_hose", "valve", "check_valve", "union", "manifold", "hose_tail", "hose_clip",
               "tank_connector", "washer", "thread_tape", "upright", "sleeve"),
    ),
    "mesh": Lead("mesh over the blocks", "3 day", "judgement", items=("mesh",)),
    "slab": Lead("slabs", "5 day", "judgement", items=("slab",), kinds=_VESSEL + _STONES, when=_slabs),
    "wall": Lead("structural engineer and mason, for the wall", "15 day", "judgement", items=("wall",), kinds=_BLADE),
    "feature": Lead(
        "vessel, drilled stones, trough or step stones", "15 day", "judgement", items=("feature", "shims", "header", "rill", "landing_stone", "feature_liner", "sealant")
    ),
    "coat": Lead("waterproofer for the vessel", "5 day", "judgement", items=("waterproofer",), kinds=_VESSEL, when=_coated),
    "foam": Lead("foam, and pebbles to hold it down", "5 day", "judgement", items=("foam", "pebbles"), kinds=_VESSEL, when=_foam),
    "stone": Lead("rounded stone and net bag", "5 day", "judgement", items=("stone", "net_bag")),
}  # fmt: skip
