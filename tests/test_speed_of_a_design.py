"""A whole design with all its checks takes no longer than so many small calls of plain Python, counted within one run; no time is asserted.

A call takes 0.43 us on the processor on which a design is to stay under 5 ms: that is as long as 11600 of them. On a machine that others use at the same
time a design loses more than a loop does, since it takes more memory: a fifth more is let through.
"""

import math
import time
from pathlib import Path

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.judged.checks import findings
from brimwork.design.typed.file import load_design

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"
CALLS, MOST, ROUNDS, TRIES = 10_000, 14_000, 9, 4
PIPES = [{"bore": 0.013 + 1e-6 * i, "flow": 2e-4, "long": 4.0, "f": 0.03} for i in range(1000)]


def head(bore: float, flow: float, long: float, f: float) -> float:
    speed = flow / (math.pi / 4 * bore * bore)
    return f * long / bore * speed * speed / (2 * 9.80665)


def small_calls() -> dict:
    """A friction head by a function with named values, kept under a name: the kind of thing that a design is made of."""
    return {(i, "head"): head(**PIPES[i % 1000]) for i in range(CALLS)}


def taken(work) -> float:
    begun = time.process_time()
    work()
    return time.process_time() - begun


def as_long_as(design) -> float:
    """Small calls that take as long as the design; every round another design, so that nothing is remembered."""
    ours, plain = [], []
    for i in range(ROUNDS):
        other = design.having("flow.for_each_metre", f"{0.3 + 0.001 * i} L/s per m")
        ours.append(taken(lambda other=other: findings(chain_of(other))))
        plain.append(taken(small_calls))
    print(f"{design.title}: {min(ours) * 1e3:.2f} ms of processor time; {CALLS} small calls {min(plain) * 1e3:.2f} ms")
    return CALLS * min(ours) / min(plain)


@pytest.mark.parametrize("name", ["library-bowl", "school-columns", "terrace-blade", "garden-cascade"])
def test_a_design_with_all_its_checks_takes_no_longer_than_so_many_small_calls(name):
    design = load_design(DESIGNS / f"{name}.toml")
    findings(chain_of(design))
    assert any(as_long_as(design) < MOST for _ in range(TRIES))
