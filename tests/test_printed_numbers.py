"""Checks are numbered afresh where they are printed, 1 to n; the code by which a file knows one stands small with its working."""

import json
import re
from pathlib import Path

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.judged.checks import findings
from brimwork.design.judged.findings import graded
from brimwork.design.typed.file import load_design
from brimwork.pack.results import GRADED, findings_printed

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"


@pytest.mark.parametrize("name", ["library-bowl", "school-columns", "terrace-blade", "garden-cascade"])
def test_checks_are_numbered_from_one_to_the_last_in_the_order_of_the_print(name):
    chain = chain_of(load_design(DESIGNS / f"{name}.toml"))
    found = graded(findings(chain), chain.design.region)
    tables, workings = findings_printed(chain, found).split("== Workings", 1)
    kinds = (GRADED, ("not shown",), ("does not apply",))
    order = [one for grades in kinds for one in found if one.grade in grades]
    places = [tables.find(f'[#"{number}"], [#{json.dumps(one.title)}]') for number, one in enumerate(order, start=1)]
    assert len(order) == len(found) and -1 not in places and places == sorted(places)
    assert not re.search(r"\bC\d\d", tables)
    shown = [one for one in found if one.grade in GRADED]
    assert [int(number) for number in re.findall(r"^=== #\"(\d+) ", workings, re.MULTILINE)] == list(range(1, len(shown) + 1))
    assert all(f"On file: {one.id}." in workings for one in shown if "." not in one.id)
