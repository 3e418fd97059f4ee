"""What a person answers: each a question with the answers it can have and the grade of each; the section [answers] of a design file.

Most are checks of their own. Of some a part is computed as well (COMPUTED in `judged/computed_checks.py`), and `asks` says what is left to ask.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Asked:
    """`answers` pairs words with a grade; `kinds` names the kinds of feature it is asked of (none: all)."""

    id: str
    group: str
    title: str
    key: str
    answers: tuple[tuple[str, str], ...]
    remedy: str
    basis: str
    kinds: tuple[str, ...] = ()
    asks: str = ""  # where it is not the whole check that is asked

    @property
    def options(self) -> tuple[str, ...]:
        return tuple(words for words, _ in self.answers)

    def grade(self, answer: str) -> str:
        return dict(self.answers)[answer]


_CP, _J, _MEMORY = "common practice, no source", "judgement", "from memory; local codes govern"


def _three(good: str, fair: str, bad: str) -> tuple[tuple[str, str], ...]:
    return ((good, "pass"), (fair, "marginal"), (bad, "fail"))


QUESTIONS = (
    Asked("C11", "water", "Air and drain-back in the hose", "hose_route",
             _three("rises all the way, pump can be tilted, outlet type named", "one of the three is open", "a hump above the outlet, or outlet type unknown"),
             "let the hose rise all the way, and name how it ends: under water, above it, or with a check valve", _CP),
    Asked("C15", "reservoir", "Rain has a way out", "rain_route",
             _three("overflow drawn, falls away from the building", "spills to planting only", "none, or to a path, building or neighbour"),
             "draw an overflow that falls away from buildings and paths", _CP),
    Asked("C67", "reservoir", "Volume for treatment known", "treatment_volume",
             _three("true volume stated on the card", "estimated within a quarter", "unknown, or gross volume used"),
             "dose by the water there is, not by the size of the hole: the pack states it", _J),
    Asked("C69", "water", "Drain hole of the vessel sealed", "drain_hole",
             _three("tank connector, tested 24 h", "leaks less than 2 % of the flow", "anything more, or not tested"),
             "fit a tank connector with washers; fill it, cover it: dry underneath after 24 hours, and falling no more than a control bucket", f"physics; limits {_J}", ("overflowing vessel",)),
    Asked("C23", "loads", "Load patch over joints and lids", "load_patch",
             _three("inside one block, or bridged by 150 mm each way", "bridged by 75 to 150 mm", "edge load on a lid edge without support"),
             "a slab that bridges the joint by 150 mm on each side, or a place inside one block", _CP, ("overflowing vessel", "drilled stones"),
             "load patch over joints and lids, where it cannot be worked out"),
    Asked("C29", "loads", "Settlement seen at the rim", "settlement",
             _three("re-levelled after 7 days full, within half of what the rim allows", "re-levelled, within all of it", "more, or not looked at"),
             "after a week full: mark how far it is out, switch off, drain, lift by the plan, pack with hands clear, level, fill and look again; never lift or lever it full", _J, ("overflowing vessel",)),
    Asked("C30", "loads", "Vessel wall and frost", "frost_wall",
             _three("can be drained and vented in frost, or there is no frost", "thin resin that bulges", "cannot be drained in a frost climate"),
             "give the vessel a drain, open it before frost, and keep its cover vented in winter; a wall that is pulled too hard must be thicker or stronger",
             f"{_CP}; twice its limit {_J}", ("overflowing vessel",), "can the vessel be drained and vented in frost"),
    Asked("C24f", "loads", "What lies under the base", "formation",
             _three("undisturbed, or fill compacted in thin layers", "compacted, not tested by heel or rod", "fill that nobody compacted"),
             "dig it out and put back granular fill in layers of 75 mm, each compacted", "limit taken from Chicago code excerpt on fill (second-hand); limits of layers common practice"),
    Asked("C58", "loads", "People on the lid", "lid",
             _three("slab or grid wherever a foot can come", "grid only near the edge", "lid gives visibly"),
             "a stiff grid or slab under the stone wherever a foot can come, thick enough to spread the load; or a stronger block", _J,
             asks="slab or grid under the stone, over the blocks"),
    Asked("C31", "ground and lining", "Frost under the base", "frost_ground",
             _three("granular drained base, or below the frost line", "seasonal re-levelling accepted in writing", "rigid connection to a building"),
             "a drained granular base, free of the building", _CP),
    Asked("C35", "ground and lining", "Services located", "services",
             _three("records, search in date, marks on the ground, private lines asked about", "record incomplete, none near, hand dig only", "no search, out of date, or power tools near a mark"),
             "have records and a cable search in date before digging, and dig by hand near marks; in the US call for a locate days ahead", "limit taken from HSG47, 3rd ed. (second-hand); US tolerance zones (second-hand)"),
    Asked("C36", "ground and lining", "Box stiff while backfilling", "backfill",
             _three("strutted, thin layers, bows 5 mm at most", "bows 5 to 10 mm", "flooded sand against an empty box without struts"),
             "strut the box inside, its ends too, or take a thicker board; fill in layers of 150 mm all round", "derived; limits common practice",
             asks="box strutted, filled in thin layers"),
    Asked("C59", "ground and lining", "Surface water kept out", "surface_water",
             _three("ground falls away 1:80 for 1 m, not the lowest point", "flat", "in a hollow, or below a fertilised lawn"),
             "raise the edge, or move the feature off the low point", _CP),
    Asked("C70", "ground and lining", "Liner protected on both faces", "liner_faces",
             _three("fleece under and over, 0.75 mm or more", "one face, or 0.5 to 0.75 mm", "none, or under 0.5 mm"),
             "fleece on both faces, liner of 0.75 to 1 mm", "limit taken from NRCS 521A, 20 mil floor (second-hand); rest common practice"),
    Asked("C43", "supply", "Cable cover and route", "cable_cover",
             (("as the local table, marked on the as-built", "pass"), ("less cover than that", "fail")),
             "the electrician states the cover that applies; mark the route", "limit taken from NEC Table 300.5 (second-hand); UK practice about 600 mm; local codes govern"),
    Asked("C44", "supply", "Socket and switch position", "socket",
             (("above splash and flood, reached without crossing the water, electrician agrees", "pass"), ("lead on the ground, joint in the pit, or extension lead", "fail")),
             "a weatherproof socket above splash; never a joint in the pit, even for a trial", _MEMORY),
    Asked("C45", "supply", "Duct takes the plug", "duct",
             _three("bore is the plug's diagonal and 10 mm, draw cord left in", "40 mm, tight", "plug must be cut off"),
             "a wider duct with long bends: cutting the plug ends seal and warranty", _CP),
    Asked("C71", "supply", "Pump marked for permanent outdoor submersion", "pump_marking",
             _three("read on the plate: submersible, outdoor, voltage as supplied", "maker's sheet only", "not marked, or indoor use"),
             "another pump, marked for permanent outdoor use under water", _CP),
    Asked("C50", "people", "Pump comes out without moving the vessel", "pump_access",
             _three("under 5 minutes, one tool", "under 20 minutes", "vessel or stone must move"),
             "an opening 50 mm larger than the pump, a union, and slack in the hose", _CP),
    Asked("C53", "people", "Mains top-up cannot siphon back", "top_up",
             _three("air gap drawn with its size", "filled by hand, hose lifted out", "hose or float inlet under water"),
             "an air gap at the inlet, above the level at which the pit spills, and a check valve at the tap where a hose fills it; the water supplier's rules govern", _MEMORY),
    Asked("C54", "people", "Trips, slips and ice", "edges",
             _three("edge flush or 100 mm proud, loose stone and drips off the path", "raised 5 to 100 mm but marked", "water or stones on a walked surface"),
             "a flush edge or a clear kerb, and no drip line on the path", _CP),
    Asked("C68", "documents", "Pack complete", "pack",
             _three("every drawing and sheet there, dated, assumptions listed", "two missing at most, none of safety", "more missing"),
             "print the pack again when the values are known, and add what is missing by hand", _J),
)  # fmt: skip
