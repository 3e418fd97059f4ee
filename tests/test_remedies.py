"""What a check says to change, changed: it passes then, and no check becomes worse on which safety rests or that keeps the water in; and no remedy teaches what hurts."""

import re
from pathlib import Path

import pytest

from brimwork import topics
from brimwork.design.follows.features import chain_of
from brimwork.design.judged.checks import CHECKS, findings
from brimwork.design.typed import file
from brimwork.design.typed.criteria import only_tighter
from brimwork.design.typed.questions import QUESTIONS
from brimwork.exercise import bank

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"
BOWL, COLUMNS, BLADE, CASCADE = (file.load_design(DESIGNS / f"{name}.toml") for name in ("library-bowl", "school-columns", "terrace-blade", "garden-cascade"))
WORSE = {"pass": 0, "does not apply": 0, "not shown": 1, "marginal": 2, "fail": 3}
# check: design, what makes it fail, what its remedy names done; "key value; key value"
DONE = {
    "C02": (BOWL, "pump.shut_off_head 0.9 m", "pump.shut_off_head 2.8 m"),
    "C05": (BOWL, "pipe.bore 15 mm", "pipe.bore 20 mm; pipe.bore 25 mm"),
    "C06": (BOWL, "pipe.bore 25 mm", "pipe.bore 50 mm"),
    "C07": (BOWL, "vessel.rim_out_of_level 4 mm", "vessel.rim_out_of_level 1 mm"),
    "C10": (BOWL, "pump.intake_area 30 cm2", "pump.intake_area 150 cm2"),
    "C13": (BOWL, "pump.intake_level 145 mm", "reservoir.lowest_level 200 mm"),
    "C14": (BOWL, "reservoir.running_level 396 mm; reservoir.static_level 399 mm", "reservoir.running_level 368 mm; reservoir.static_level 380 mm"),
    "C17": (BOWL, "catch.apron 100 mm", "catch.apron 600 mm"),
    "C18": (BOWL, "levels.liner_edge -70 mm", "levels.liner_edge 0 mm"),
    "C18g": (BOWL, "levels.soil 0 mm", "levels.soil -40 mm"),
    "C20": (BOWL, "slab.length 300 mm; slab.width 300 mm; vessel.mass 400 kg", "slab.length 700 mm; slab.width 750 mm; slab.thickness 200 mm"),
    "C21": (BOWL, "lining.panel_clearance 20 mm", "lining.panel_clearance 120 mm"),
    "C22": (BOWL, "vessel.offset 1200 mm", "vessel.offset 200 mm"),
    "C38": (BOWL, "ground.clearance 3 mm", "ground.clearance 15 mm"),
    "C40": (BOWL, "lining.mesh_opening 18 mm; lining.smallest_stone 20 mm", "lining.mesh_opening 10 mm"),
    "C42": (BOWL, "supply.cable_length 3000 m", "supply.cable_length 20 m"),
    "C47": (BOWL, "supply.cord 5 m", "supply.cord 10 m"),
    "C60": (CASCADE, "cascade.rill_wall 25 mm", "cascade.rill_wall 100 mm"),
    "C61": (CASCADE, "cascade.tread 70 mm; cascade.pool_area 0.035 m2", "cascade.tread 450 mm; cascade.pool_area 0.225 m2"),
    "C63": (COLUMNS, "stones.valves no", "stones.valves yes"),
    "C75": (BOWL, "supply.breaker 32 A; supply.conductor 1.5 mm2", "supply.conductor 4 mm2; supply.voltage_drop 13.2 mV/A/m"),
    "C76": (BOWL, "supply.breaker 6 A; pump.starting_current 40 A", "supply.breaker 16 A"),
    "C77": (BOWL, "pump.frequency 60 Hz; pump.voltage 120 V", "pump.frequency 50 Hz; pump.voltage 230 V"),
    "C79": (BLADE, "blade.trough_width 100 mm", "blade.trough_width 250 mm; blade.feed top"),
    "C82": (BOWL, "pump.solids 5 mm; pump.strainer 8 mm", "pump.strainer 4 mm"),
}  # fmt: skip


def changed(design, changes):
    for change in changes.split("; "):
        key, _, text = change.partition(" ")
        design = design.having(key, text)
    return design


def grades(design):
    return {(one.id, one.title): one.grade for one in findings(chain_of(design))}


@pytest.mark.parametrize("check", DONE)
def test_a_remedy_done_cures_its_check_and_makes_none_of_safety_worse(check):
    design, ill, cure = DONE[check]
    before = grades(changed(design, ill))
    after = grades(changed(changed(design, ill), cure))
    (name,) = [one for one in before if one[0] == check and before[one] != "does not apply"]
    assert before[name] == "fail" and after[name] == "pass"
    group = {check.id: check.group for check in CHECKS}
    held = [one for one in after if one[0] in group and only_tighter(one[0], group[one[0]])]
    assert not {one: (before[one], after[one]) for one in held if WORSE[after[one]] > WORSE[before[one]]}


HURTS = re.compile(
    r"\breset (?:it|them|the (?:device|breaker|trip))|\bpush (?:it|the (?:piece|vessel|stone|wall))|\blever\b|drill the (?:vessel|bowl)|lift (?:it|the vessel) full|leave the hose full|bypass|tape (?:it|over)"
    r"|\bfor nothing\b|under its full weight|siphoned|up to just below the (?:surface|water)|(?<!own )\balways works\b",
    re.IGNORECASE,
)
NOT = re.compile(r"\b(?:never|not|do not|nor)\b[^;:.]*$")


def right_words():
    """What the bank calls right, and what every formula remarks."""
    for question in bank.questions().values():
        yield from (text for text in (getattr(question, field, "") for field in ("right", "because", "model")) if text)
        yield from (line for field in ("solution", "why", "steps") for line in getattr(question, field, ()))
    yield from (formula.remark for formula in topics.formulas().values() if formula.remark)


def test_no_remedy_teaches_what_hurts():
    """A word of it may stand only after "never" or "not"."""
    remedies = {(check.remedy if hasattr(check, "remedy") else check.question.remedy) for check in CHECKS} | {question.remedy for question in QUESTIONS}
    found = [(remedy, match[0]) for remedy in remedies for match in HURTS.finditer(remedy) if not NOT.search(remedy[: match.start()])]
    found += [(text, match[0]) for text in right_words() for match in HURTS.finditer(text) if not NOT.search(text[: match.start()])]
    assert len(remedies) > 60 and not found
    assert HURTS.search("if it trips, reset it") and not NOT.search("if it trips, ") and NOT.search("never ")
