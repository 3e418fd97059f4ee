"""The steps of the work on site, in order: what each waits for, how long it usually takes, what must be true of it, and where work stops until signed."""

from __future__ import annotations

from typing import NamedTuple

from brimwork import tables, units

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


class Step(NamedTuple):
    """`usual` is its time: hours at work, or for a wait the time that passes, nights and weekends included; `order` names the lead of LEADS it needs on site."""

    words: str
    usual: str
    needs: tuple[str, ...]
    must: str = ""
    hold: str = ""
    by: str = TEAM
    order: str = ""
    kinds: tuple[str, ...] = ()
    caution: str = ""


_VESSEL, _BLADE, _CASCADE = ("overflowing vessel",), ("blade",), ("cascade",)
# Together the hours of the team come to the 3 to 4 days that are common practice for a small feature, a day for making good, and one for
# tests, levelling again and handover; how the steps share them is judgement. Tolerances are common practice.
STEPS: dict[str, Step] = {
    "brief": Step("brief the team; photographs, first aid, welfare", "0.5 h", (), "permits and search on site", "H1", order="search"),
    "coat": Step("coat the vessel inside", "2 h", ("brief",), order="feature", kinds=_VESSEL, caution="gloves, and air: read the sheet of the coat"),
    "protect": Step("protect paving, trees and drains; put up a fence", "1 h", ("brief", "coat")),
    "set_out": Step("temporary bench mark, offset pegs, marking out", "1.5 h", ("protect",), "bench mark within 2 mm; diagonals equal within 5 mm"),
    "lift_surface": Step("lift and store turf or paving", "1 h", ("set_out",)),
    "trial_dig": Step("trial dig by hand at service marks", "0.5 h", ("lift_surface",), "photograph", caution="no machine and no breaker near a mark"),
    "dig": Step(
        "dig to formation, the last 50 mm by hand",
        "6 h",
        ("trial_dig",),
        "+0/-10 mm; flat within 10 mm in 1 m",
        "H2",
        caution="spoil and feet 0.6 m back; a competent person judges the sides; stop at any service or water",
    ),
    "duct": Step("duct trench, duct, warning tape, draw cord", "2 h", ("dig",), "cover as the electrician states; as-built offsets", "H3"),
    "sub_base": Step("separation fabric on clay, sub-base in layers of 75 mm", "2 h", ("duct",), "within 5 mm; a heel leaves no print over 5 mm"),
    "sand_bed": Step("screed and level the sand bed", "1 h", ("sub_base",), "within 3 mm, both diagonals"),
    "box": Step(
        "cut the box, set it, strut it inside", "2 h", ("sand_bed",), "inside +0/+5 mm; diagonals within 3 mm", caution="eyes, ears and dust mask while cutting"
    ),
    "backfill": Step("backfill round the box in layers of 150 mm", "3 h", ("box",), "top within 3 mm; bow 5 mm at most"),
    "lining": Step("hand sweep; fleece; liner, pleated and seated", "2 h", ("backfill",), "no tension", order="liner"),
    "liner_test": Step("water test of the liner, to the overflow, with a control bucket", "48 h", ("lining",), f"less than {_TIGHT} a day", "H4", WAIT),
    "blocks": Step("inner fleece, blocks, clips, lids", "1.5 h", ("liner_test",), "top within 3 mm, nothing rocks", order="blocks"),
    "edge": Step("edge of the liner, apron, overflow pipe", "1.5 h", ("blocks",), "overflow +0/-3 mm; edge within 5 mm"),
    "pump": Step("pump, intake cage, valve, hose; cable over the edge", "1.5 h", ("edge",), "hose rises all the way", order="pump"),
    "wiring": Step(
        "electrician lays the cable and fits the protection", "6 h", ("duct",), by=ELECTRICIAN, order="electrician", caution="licensed electrician only"
    ),
    "certificate": Step("electrician tests and certifies", "2 h", ("wiring", "pump"), "residual current, earth", "H5", ELECTRICIAN),
    "trial": Step(
        "wet trial in a tub: current, flow by bucket, noise",
        "0.5 h",
        ("certificate",),
        "flow within 15 % of the curve",
        caution="no hand in the water while the pump is connected",
    ),
    "slabs": Step("mesh; slabs on their bed, not on stone", "1 h", ("trial",), "slab within 2 mm"),
    "cure": Step("the coat cures", "7 day", ("coat",), "5 to 7 days; the maker's sheet governs", by=WAIT, kinds=_VESSEL),
    "wall": Step(
        "mason builds the wall as the structural engineer designs it",
        "16 h",
        ("sub_base",),
        "as the engineer says",
        by=MASON,
        kinds=_BLADE,
        caution="a wall is a structure",
    ),
    "wall_cure": Step("the wall gains strength", "7 day", ("wall",), "as the engineer says", by=WAIT, kinds=_BLADE),
    "build": Step("steps, header and rill on compacted fill; liner shingled downhill", "8 h", ("slabs",), "every lip sealed and level", kinds=_CASCADE),
    "feature": Step(
        "set the feature by a lifting plan, and level it",
        "2 h",
        ("slabs", "cure", "wall_cure", "build"),
        "lip or rim within 1 mm",
        order="feature",
        caution="masses known, nobody under the load; a crane needs a lifting plan of its own",
    ),
    "vessel_test": Step("water test of the vessel alone", "24 h", ("feature",), "no drop seen", by=WAIT, kinds=_VESSEL),
    "foam": Step("upright, foam in a bag, ballast", "1 h", ("vessel_test",), "foam held down", kinds=_VESSEL),
    "start_up": Step(
        "fill to the static mark, start, trim the valve",
        "1 h",
        ("feature", "foam"),
        "wet all round",
        caution="open water: keep children away; nobody touches it before the certificate",
    ),
    "stone": Step("stone, net bag over the lid, edges", "2 h", ("start_up",), "lid found blind in 30 seconds"),
    "tests": Step("commissioning tests", "2 h", ("stone",), "as the commissioning sheet"),
    "make_good": Step("make good, remove spoil, photographs", "8 h", ("tests",), caution="no open pit or trench is left without a fence"),
    "settling": Step("stands full", "7 day", ("start_up",), by=WAIT),
    "relevel": Step("level and trim again", "1 h", ("make_good", "settling"), "rim within half of the head over it", "H6"),
    "handover": Step("demonstration and handover", "1 h", ("relevel",), "card, certificates, spares", "H7"),
}


FEATURES = {"overflowing vessel": "vessel", "drilled stones": "drilled stones", "blade": "trough with its lip", "cascade": "step stones, header and rill"}


class Lead(NamedTuple):
    """What must be ordered ahead: working days from order to site, and in the US where that differs."""

    words: str
    usual: str
    basis: str
    usual_us: str = ""


LEADS: dict[str, Lead] = {
    "search": Lead("records and search for services under the ground", "10 day", "judgement", "3 day"),
    "electrician": Lead("electrician", "10 day", "judgement"),
    "blocks": Lead("void-former blocks and fleece", "5 day", "judgement"),
    "liner": Lead("liner to size", "10 day", "judgement"),
    "pump": Lead("pump, hose and fittings", "5 day", "judgement"),
    "feature": Lead("vessel, drilled stones, trough or step stones", "15 day", "judgement"),
}
