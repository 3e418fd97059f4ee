"""Whole designs worked from the physics: every number of the four kinds of feature by plain arithmetic, from the values of `plain_design` alone.

`work(plain)` gives the results by name (SI), and why the others are not there. Each line is what a handbook says, written out; the names are those
under which the product gives the same number, so that the two can be laid side by side.
"""

from plain_design import Plain
from truth_loads import lift_limit, lining, loads, supply, surroundings
from truth_water import blade, blade_after, cascade, cascade_after, hydraulics, levels, reservoir, stones, stones_after, vessel, vessel_after
from worked import Worked

__all__ = ["Worked", "lift_limit", "work"]

KIND = {"overflowing vessel": vessel, "drilled stones": stones, "blade": blade, "cascade": cascade}
AFTER = {"overflowing vessel": vessel_after, "drilled stones": stones_after, "blade": blade_after, "cascade": cascade_after}


def work(plain: Plain) -> Worked:
    w = Worked(plain)
    for part in (levels, KIND[plain.kind], hydraulics, AFTER[plain.kind], reservoir, loads, lining, supply, surroundings):
        part(w)
    return w
