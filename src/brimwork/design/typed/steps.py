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
    "H3": "duct and draw cord seen before they are covered",
    "H4": "liner holds water 24 to 48 hours against a control bucket",
    "H5": "electrician's certificate: residual-current protection and earth tested",
    "H6": "levelled again after 7 days full",
    "H7": "client shown how to switch off, find the lid, top up and clean",
}


_VESSEL, _BLADE, _CASCADE, _STONES = ("overflowing vessel",), ("blade",), ("cascade",), ("drilled stones",)
COAT = "vessel.coat"
# Cautions that stand at more than one step; from memory, and local rules govern.
_NO_PEGS = "no peg, pin or post near a mark or before the hole dug by hand"
_HEAVY = "weigh it: two people or a lifter; fingers out from under"
_IN_THE_PIT = "the sides judged again each morning and after rain; nobody kneels where they are in doubt, nor in the pit while the ground beside it is rammed"
_CUTTING = "eyes, ears, water on the blade, and a fitted P3 or N100 respirator for stone, concrete and slab: the dust scars lungs"
_UNPLUG = "unplugged before a hand goes in"
_TRIPPED = "a device that trips is a warning: unplug, touch nothing wet, and call the electrician"


def _coated(design: Known) -> bool:
    """Whether the design says that the vessel is coated inside; where it says nothing, no coat is planned."""
    given = design.given(COAT)
    return given is not None and given.value == "yes"


def _foam(design: Known) -> bool:
    given = design.given("vessel.foam")
    return given is not None and given.value > 0


def _cover(design: Known) -> bool:
    given = design.given("reservoir.cover")
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
    fixed: bool = False  # takes as long, however many people are there


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
    "brief": Task("brief the team; photographs, first aid, welfare", "0.5 h", (), "permits and search on site", "H1", order=("search",), fixed=True),
    "coat": Task(
        "coat the vessel inside", "2 h", ("brief",), order=("feature", "coat"), kinds=_VESSEL, caution="gloves, and air: read the sheet of the coat", when=_coated
    ),
    "protect": Task("protect paving, trees and drains; put up a fence", "1 h", ("brief", "coat"), caution=f"{_NO_PEGS}; the fence stays until the pit is filled"),
    "set_out": Task(
        "temporary bench mark, offset pegs, marking out",
        "1.5 h",
        ("protect",),
        "bench mark within 2 mm; diagonals equal within 5 mm",
        order=("hire",),
        caution=_NO_PEGS,
    ),
    "lift_surface": Task("lift and store turf or paving", "1 h", ("set_out",), caution=_HEAVY),
    "trial_dig": Task("trial dig by hand at service marks", "0.5 h", ("lift_surface",), "photograph", caution="no machine and no breaker near a mark"),
    "dig": Task(
        "dig to formation, the last 50 mm by hand; the apron to the edge of the box",
        "6 h",
        ("trial_dig",),
        "+0/-10 mm; flat within 10 mm in 1 m",
        "H2",
        order=("spoil",),
        caution="spoil and feet 0.6 m back; a competent person judges the sides; nobody kneels in a pit whose sides nobody judged; stop at any service or water",
    ),
    "duct": Task(
        "trenches; duct with its draw cord",
        "1.5 h",
        ("dig",),
        "cover as the electrician states; as-built offsets",
        "H3",
        order=("duct",),
        caution="the trench is dug by hand where records are unsure or a mark is near",
    ),
    "trench_fill": Task("bed and cover the duct, warning tape over it, fill in layers", "0.5 h", ("duct",), "seen and signed before it is covered", caution="no rammer over a duct with less than 300 mm over it"),
    "sub_base": Task(
        "separation fabric on clay, sub-base in layers of 75 mm",
        "2 h",
        ("trench_fill",),
        "within 5 mm; a heel leaves no print over 5 mm",
        order=("sub_base",),
        caution=f"{_IN_THE_PIT}; no petrol engine in the pit",
    ),
    "sand_bed": Task("screed and level the sand bed", "1 h", ("sub_base",), "within 3 mm, both diagonals", order=("sand",), caution=_IN_THE_PIT),
    "box": Task(
        "cut the box, set it, strut it inside", "2 h", ("sand_bed",), "inside +0/+5 mm; diagonals within 3 mm", order=("board",), caution=f"{_CUTTING}; {_IN_THE_PIT}"
    ),
    "overflow": Task(
        "overflow pipe with its flange and bends through the box, to where it drains",
        "0.5 h",
        ("box",),
        "overflow +0/-3 mm; falls all the way, and ends where water may go",
        order=("overflow",),
        caution=_IN_THE_PIT,
    ),
    "backfill": Task(
        "backfill round the box in layers of 150 mm", "3 h", ("overflow",), "top within 3 mm; bow 5 mm at most", caution="nobody in the box while the ground beside it is rammed"
    ),
    "build_fill": Task(
        "fill under steps and rill, compacted in layers of 75 mm", "3 h", ("backfill",), "a heel leaves no print over 5 mm", kinds=_CASCADE, caution="feet clear of the rammer; hearing protection"
    ),
    "lining": Task(
        "hand sweep; fleece; liner, pleated, seated, clamped in the flange of the overflow",
        "2 h",
        ("backfill", "build_fill"),
        "no tension",
        order=("liner", "fleece"),
        caution=_IN_THE_PIT,
    ),
    "liner_test": Task(
        "water test of the liner, to the overflow, with a control bucket",
        "48 h",
        ("lining",),
        f"less than {_TIGHT} a day",
        "H4",
        WAIT,
        caution="deep open water day and night: fenced and covered, and nobody in it",
    ),
    "empty": Task(
        "empty the pit: blocks would float",
        "0.5 h",
        ("liner_test",),
        "no water over the floor; liner wiped and looked at",
        caution="by hand pump or buckets while no supply is certified; nobody in the water while a pump is connected; not where ground water stands over the floor",
    ),
    "blocks": Task("inner fleece, blocks, clips, lids", "1.5 h", ("empty",), "top within 3 mm, nothing rocks", order=("blocks",), caution=_IN_THE_PIT),
    "edge": Task("edge of the liner, apron", "1 h", ("blocks",), "edge within 5 mm", caution="knee pads; knives closed when laid down"),
    "wiring": Task(
        "electrician lays the cable and fits the protection", "6 h", ("duct",), by=ELECTRICIAN, order=("electrician",), caution="a qualified electrician only"
    ),
    "certificate": Task(
        "electrician tests and certifies, before anything is connected", "2 h", ("wiring", "liner_test"), "residual current, earth", "H5", ELECTRICIAN,
        caution="nothing is plugged in before the certificate",
    ),
    "trial": Task(
        "wet trial of the pump in a tub: current, flow by bucket, noise",
        "0.5 h",
        ("edge", "certificate"),
        "flow within 15 % of the curve",
        order=("pump",),
        caution=f"no hand in the water while the pump is connected; {_TRIPPED}",
        fixed=True,
    ),
    "pump": Task("pump, strainer, valve, hose; cable over the edge", "1.5 h", ("trial",), "hose rises all the way", caution=_UNPLUG),
    "cover": Task("stiff slab or grid over the blocks, the piece over the pump bay last", "1 h", ("pump",), "lies full, rocks nowhere", order=("cover",), when=_cover, caution=_HEAVY),
    "mesh": Task("mesh over the blocks, its edges turned under", "0.5 h", ("pump", "cover"), "no end of wire points at the liner", order=("mesh",), caution="gloves and eyes: cut wire springs"),
    "slabs": Task(
        "slabs on the mesh over the blocks, not on stone or loose sand; holes for hoses drilled first", "0.5 h", ("mesh",), "slab within 2 mm", order=("slab",), kinds=(*_VESSEL, *_STONES), when=_slabs,
        caution=f"{_HEAVY}; drilling: {_CUTTING}",
    ),
    "cure": Task("the coat cures", "7 day", ("coat",), "5 to 7 days; the maker's sheet governs", by=WAIT, kinds=_VESSEL, when=_coated, caution="no flame, and air, while it cures"),
    "footing": Task(
        "footing of the wall, dug and poured as the structural engineer draws it", "4 h", ("sub_base",), "seen by the engineer before concrete", by=MASON, kinds=_BLADE,
        order=("wall",), caution="a competent person judges the sides of the trench; wet concrete burns: gloves, boots, eyes",
    ),
    "wall": Task(
        "mason builds the wall, its trough in it, as the structural engineer designs it",
        "16 h",
        ("footing",),
        "as the engineer says",
        by=MASON,
        order=("feature",),
        kinds=_BLADE,
        caution=f"a wall is a structure; {_CUTTING}",
    ),
    "wall_cure": Task("the wall gains strength", "7 day", ("wall",), "as the engineer says", by=WAIT, kinds=_BLADE, caution="nothing leans on it and nobody stands below it"),
    "build": Task(
        "steps, header and rill on their fill; liner shingled downhill", "8 h", ("mesh",), "every lip sealed and level", order=("feature",), kinds=_CASCADE, caution=_HEAVY
    ),
    "connector": Task(
        "tank connector into the drilled hole, washers on both sides, while the underside can be reached", "0.25 h", ("mesh", "slabs"), "hand-tight and a half turn; nothing strained",
        order=("feature",), kinds=_VESSEL, caution="the vessel lies on padding and cannot roll; nobody under it",
    ),
    "feature": Task(
        "set the feature by a lifting plan, and level it",
        "2 h",
        ("slabs", "mesh", "connector", "cure", "wall_cure", "build"),
        "lip or rim within 1 mm",
        order=("feature",),
        caution="weighed, or its mass asked of the maker; nobody under the load; never tested by pushing; a crane needs a lifting plan of its own",
    ),
    "standpipe": Task("standpipe cut to length and pushed into the connector; hose on below", "0.25 h", ("feature",), "standpipe plumb", kinds=_VESSEL, caution=_UNPLUG),
    "vessel_test": Task(
        "water test of the vessel alone, covered, its drilled hole with it, with a control bucket",
        "24 h",
        ("standpipe",),
        "filled to just under the mouth of the standpipe; dry underneath; falls no more than the bucket",
        by=WAIT,
        kinds=_VESSEL,
        caution="open water day and night: covered and fenced",
    ),
    "foam": Task("draw the vessel down; foam in a bag, ballast", "0.5 h", ("vessel_test",), "foam held down", order=("foam",), kinds=_VESSEL, when=_foam, caution=_UNPLUG),
    "start_up": Task(
        "fill to the static mark, start, trim the valve",
        "1 h",
        ("feature", "vessel_test", "foam"),
        "wet all round",
        caution=f"open water: keep children away; nobody touches it before the certificate; the valve's handle is reached from dry ground; {_UNPLUG}; {_TRIPPED}",
        fixed=True,
    ),
    "stone": Task("stone, net bag over the lid, edges", "2 h", ("start_up",), "lid found blind in 30 seconds", order=("stone",), caution=_HEAVY),
    "tests": Task("commissioning tests", "2 h", ("stone",), "as the table of what is measured when it first runs", caution=f"{_UNPLUG}; {_TRIPPED}", fixed=True),
    "make_good": Task("make good, remove spoil, photographs", "8 h", ("tests",), caution="no open pit or trench is left without a fence"),
    "settling": Task("stands full", "7 day", ("start_up",), by=WAIT, caution="open water until stone or a grille closes it: nobody small alone near it"),
    "relevel": Task(
        "mark how far rim, stones or lip are out of level, full; switch off, drain, pack and level, fill again", "1 h", ("make_good", "settling"), "out of level by no more than half of the head over the edge", "H6",
        caution="never lifted or levered while it is full; hands clear while it is packed; lift by the plan; unplugged",
    ),
    "handover": Task(
        "demonstration and handover", "1 h", ("relevel",), "certificates, spares, what to do after weeks at a standstill", "H7", fixed=True,
        caution="after weeks at a standstill the water is changed before it sprays; no cleaning by jet without a mask: spray can carry Legionella",
    ),
}  # fmt: skip


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
    "overflow": Lead("overflow pipe with flange, bends, end and mesh", "3 day", "judgement", items=("overflow_pipe", "overflow_mesh", "overflow_flange", "overflow_bend", "overflow_end")),
    "pump": Lead(
        "pump, hose and fittings", "5 day", "judgement",
        items=("pump", "pre_filter", "cut_out", "float_valve", "hose", "branch_hose", "valve", "check_valve", "union", "manifold", "hose_tail", "hose_clip",
               "tank_connector", "washer", "thread_tape", "standpipe", "sleeve"),
    ),
    "cover": Lead("slab or grid over the blocks", "5 day", "judgement", items=("cover",), when=_cover),
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
