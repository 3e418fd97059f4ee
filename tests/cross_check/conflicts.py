"""What a drawing of the design would show and cannot be, or must not: bodies that overlap, reach outside what should hold them, or are larger than their whole.

`conflicts(worked)` names them. Places are those of the drawings: x along the blocks from their middle, the pump's bay in a corner, a wall or cascade
on the left of the box.
"""

import math
from collections.abc import Callable

from plain_bodies import area, hull
from plain_design import Impossible, Missing
from standing import bodies, slab, within
from truth import Worked
from verdicts_loads import bay

SLACK = 1e-3  # m: what is drawn nearer than this touches
BESIDE = 0.02  # m: how far from the box a wall is drawn

Test = Callable[[Worked], bool]
VESSEL, STONES, BLADE, CASCADE = ("overflowing vessel",), ("drilled stones",), ("blade",), ("cascade",)
STANDING = VESSEL + STONES
CONFLICTS: list[tuple[str, tuple[str, ...], Test]] = []


def conflict(name: str, *kinds: str):
    def named(test: Test) -> Test:
        CONFLICTS.append((name, kinds, test))
        return test

    return named


def conflicts(w: Worked) -> set[str]:
    found = set()
    for name, kinds, test in CONFLICTS:
        if kinds and w.plain.kind not in kinds:
            continue
        try:
            if test(w):
                found.add(name)
        except (Missing, Impossible, ArithmeticError, ValueError):
            continue
    return found


def catch(w: Worked) -> tuple[float, float]:
    """Half of the lined catch, along and across."""
    return w.r["box_length"] / 2 + w.d["catch.apron"], w.r["box_width"] / 2 + w.d["catch.apron"]


def outside_volume(d) -> float:
    return math.pi / 4 * max(d["vessel.rim_diameter"], d.get("vessel.widest", 0.0)) ** 2 * d["vessel.height"]


def spacing(w: Worked) -> float:
    return w.r["base_length"] / len(w.d["stones.diameters"])


def reach(w: Worked, body) -> float:
    """How far its widest part reaches beyond the lined catch."""
    half = catch(w)
    return max(abs(body.x) + body.face / 2 - half[0], abs(body.y) + body.face / 2 - half[1])


conflict("a rim or stone hangs over the edge of the lined catch", *STANDING)(lambda w: any(reach(w, body) > SLACK for body in bodies(w)))
conflict("the foot is wider than its slab", *STANDING)(
    lambda w: any(slab(w, b)[0] is not None and area(within(b.foot, slab(w, b)[0])) < area(b.foot) * (1 - 1e-6) for b in bodies(w)))  # fmt: skip
conflict("slab or foot lies over the pump's bay", *STANDING)(
    lambda w: any(area(within(bay(w), hull(slab(w, b)[0] or b.foot))) > 1e-6 for b in bodies(w)))  # fmt: skip
conflict("the foot is wider than the vessel", *VESSEL)(
    lambda w: "vessel.foot_corners" not in w.d and w.d["vessel.foot_outside"] > max(w.d["vessel.rim_diameter"], w.d.get("vessel.widest", 0)) + SLACK)  # fmt: skip
conflict("the hole in the foot is wider than the foot", *VESSEL)(
    lambda w: "vessel.foot_corners" not in w.d and w.d["vessel.foot_inside"] >= w.d["vessel.foot_outside"]
)
conflict("more water than the vessel's outside encloses", *VESSEL)(lambda w: w.d["vessel.water"] > outside_volume(w.d) * 1.001)
conflict("more foam and pebbles than the vessel's outside encloses", *VESSEL)(
    lambda w: w.d["vessel.foam"] + w.d["vessel.pebbles"] > outside_volume(w.d) * 1.001
)
conflict("the hose's mouth lies under the vessel", *VESSEL)(lambda w: w.d["pipe.mouth_below_rim"] >= w.d["vessel.height"])
conflict("the vessel's wall is thicker than its radius", *VESSEL)(lambda w: w.d["vessel.wall_thickness"] >= w.d["vessel.rim_diameter"] / 2)
conflict("the widest place is narrower than the rim", *VESSEL)(lambda w: w.d["vessel.widest"] < w.d["vessel.rim_diameter"] - SLACK)
conflict("stones overlap", *STONES)(
    lambda w: any((a + b) / 2 > spacing(w) + SLACK for a, b in zip(w.d["stones.diameters"], w.d["stones.diameters"][1:])))  # fmt: skip
conflict("slabs overlap", *STONES)(lambda w: len(w.d["stones.diameters"]) > 1 and w.d["stones.stand_on"] == "slabs" and w.d["slab.length"] > spacing(w) + SLACK)
conflict("the hole is as wide as the stone", *STONES)(lambda w: w.d["stones.hole"] >= min(w.d["stones.diameters"]))
conflict("more contact than the stone's base", *STONES)(lambda w: w.d["stones.rough_contact"] > math.pi / 4 * min(w.d["stones.diameters"]) ** 2)
conflict("the trough is shorter than its lip", *BLADE)(lambda w: w.d["blade.trough_length"] < w.d["blade.lip_width"] - SLACK)
conflict("the lip is wider than the lined catch", *BLADE)(lambda w: w.d["blade.lip_width"] / 2 > catch(w)[1] + SLACK)
conflict("the sheet lands beyond the lined catch", *BLADE)(
    lambda w: -w.r["box_length"] / 2 - w.d["ground.board"] - BESIDE + w.r["throw"] > catch(w)[0] + SLACK)  # fmt: skip
conflict("the trough is deeper than its wall", *BLADE)(lambda w: w.d["blade.trough_depth"] > max(w.d["blade.wall_height"], w.d["blade.lip_level"]) + SLACK)
conflict("the lip lies under the stone it falls on", *BLADE)(lambda w: w.d["blade.lip_level"] <= w.d["blade.stone_level"])
conflict("the lip is higher than its wall", *BLADE)(lambda w: w.d["blade.lip_level"] > w.d["blade.wall_height"] + 0.02)
conflict("the pools are larger than width and tread", *CASCADE)(lambda w: w.d["cascade.pool_area"] > w.d["cascade.width"] * w.d["cascade.tread"] * 1.02)
conflict("steps or rill are wider than the lined catch", *CASCADE)(
    lambda w: max(w.d["cascade.width"], w.d["cascade.rill_width"] if w.d["cascade.rill_length"] else 0.0) / 2 > catch(w)[1] + SLACK)  # fmt: skip
conflict("the last fall is higher than the steps", *CASCADE)(lambda w: w.r["foot"] - w.r["level:stone top"] > max(w.d["cascade.step_fall"], 0.10) + 0.05)
conflict("the lower end lies under the edge of the box", *CASCADE)(lambda w: w.r["foot_over_box"] < 0)
conflict("there is no pit: its bottom lies above the paving")(lambda w: w.r["level:formation"] >= 0)
conflict("the blocks stand above the paving")(lambda w: w.d["levels.block_top"] > 0.02)
conflict("more wet stone than stone")(lambda w: w.d["catch.wet_area"] > w.r["stone_area"] * 1.001)
conflict("the pump's bay is larger than the blocks")(lambda w: w.d["pump.bay"] > min(w.r["base_length"], w.r["base_width"]))
conflict("the pump's intake stands out of the water at its lowest")(lambda w: w.d["pump.intake_level"] >= w.d["reservoir.lowest_level"])
conflict("the water at rest stands above the overflow")(lambda w: w.d["reservoir.static_level"] > w.d["reservoir.overflow_level"] + SLACK)
conflict("the overflow lies above the blocks")(lambda w: w.d["reservoir.overflow_level"] > w.d["reservoir.block_height"] + SLACK)
conflict("the overflow pipe reaches over the edge of the liner")(lambda w: w.r["level:overflow"] + w.d["overflow_pipe.bore"] > w.d["levels.liner_edge"] + SLACK)
conflict("a staple lies above the edge of the liner")(lambda w: w.d["levels.staple_line"] > w.d["levels.liner_edge"] + SLACK)
conflict("the soil stands above the edge of the liner")(lambda w: w.d["levels.soil"] > w.d["levels.liner_edge"] + SLACK)
conflict("the layer of stone is thinner than its smallest stone")(lambda w: w.d["lining.smallest_stone"] > w.d["catch.stone_thickness"] + SLACK)
conflict("the supply point stands in the catch")(
    lambda w: abs(w.d["supply.point_along"]) < catch(w)[0] and abs(w.d["supply.point_across"]) < catch(w)[1])  # fmt: skip
conflict("the overflow pipe ends in the catch")(
    lambda w: abs(w.d["overflow_pipe.end_along"]) < catch(w)[0] and abs(w.d["overflow_pipe.end_across"]) < catch(w)[1])  # fmt: skip
conflict("the footing is placed in the catch")(
    lambda w: abs(w.d["site.footing_along"]) < catch(w)[0] and abs(w.d["site.footing_across"]) < catch(w)[1])  # fmt: skip
conflict("the tree is placed in the catch")(
    lambda w: abs(w.d["site.tree_along"]) < catch(w)[0] and abs(w.d["site.tree_across"]) < catch(w)[1])  # fmt: skip
conflict("the hose is shorter than the way up")(
    lambda w: w.d["pipe.length"] + (max(w.d["stones.branch_lengths"]) if w.plain.kind == "drilled stones" else 0.0)
    < _up(w) - w.r["level:reservoir floor"] - w.d["pump.intake_level"] - 0.05)  # fmt: skip
conflict("ground water stands over the paving")(lambda w: w.r["level:reservoir floor"] + w.d["site.ground_water"] > 0)
conflict("less catch for the rain than the apron and box are")(lambda w: w.d["overflow_pipe.catch_area"] < 4 * catch(w)[0] * catch(w)[1] * 0.99)
conflict("the widest thing to come in is narrower than the vessel", *VESSEL)(
    lambda w: w.d["site.widest_item"] < min(w.d["vessel.rim_diameter"], w.d["vessel.height"]) - SLACK)  # fmt: skip
conflict("the tree stands in the pit or the apron")(lambda w: w.d["site.tree_distance"] < w.d["site.tree_stem"] / 2 + _beyond_the_pit(w) - 2 * SLACK)
conflict("the footing stands in the apron")(lambda w: w.d["site.footing_distance"] < _beyond_the_pit(w) - 2 * SLACK)


def _beyond_the_pit(w: Worked) -> float:
    """How far the apron reaches beyond the working space."""
    return max(w.d["catch.apron"] - w.d["ground.board"] - w.d["ground.working_space"], 0.0)


def _up(w: Worked) -> float:
    """Level of the highest place to which the hose goes."""
    key = {"overflowing vessel": "level:rim", "drilled stones": "level:top of the highest stone", "blade": "level:lip", "cascade": "level:header lip"}
    return w.r[key[w.plain.kind]]
