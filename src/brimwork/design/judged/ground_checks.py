"""The checks of ground and lining: how the number of each is worked out, and what to change next."""

from __future__ import annotations

from brimwork.design.follows.chain import Chain
from brimwork.design.judged.grading import Check, Judged
from brimwork.design.typed.criteria import criterion
from brimwork.design.typed.limits import NEVER, Limits, at_most
from brimwork.design.typed.telling import INFINITE


def _sides(chain: Chain) -> Limits:
    """Depth limits of a pit, for the way in which its sides are kept; none at all for soil that runs."""
    state = chain.design["site.pit_sides"]
    water = chain.design.given("site.ground_water")
    if state.startswith("firm"):
        return at_most(-INFINITE, 1.2) if water and water.value > 0 else at_most(0.9, 1.2)
    return at_most(-INFINITE, 1.2) if state.startswith("competent") else NEVER


def _sides_said(chain: Chain) -> str:
    water = chain.design.given("site.ground_water")
    return f"by your answer: {chain.design['site.pit_sides']}" + (
        "; ground water stands in the pit, so that its sides are not firm" if water and water.value > 0 else ""
    )


def _mesh(chain: Chain) -> float:
    """Opening over the smallest stone; an opening over 20 mm counts as one that only just passes, or worse."""
    mesh = chain.design["lining.mesh_opening"]
    return max(mesh / chain.design["lining.smallest_stone"], 0.5 * mesh / 0.020)


GROUND_CHECKS: tuple[Check | Judged, ...] = (
    Check(criterion("C32"), lambda c: c.ground_depth,
          "batter or brace the sides by a competent person's plan; nobody enters if unsure", ("pit_depth",), note=_sides_said, limits=_sides),
    Check(criterion("C33"), lambda c: c.footing_share,
          "move the pit away, or ask an engineer"),
    Check(criterion("C34"), lambda c: c.counted("site.tree_distance") / c.root_radius,
          "move away, or ask an arboriculturist and dig by hand", ("root_radius",)),
    Check(criterion("C38"), lambda c: c.design["ground.clearance"],
          "10 to 20 mm on each side: tighter jams, wider leaves the liner without support", ("box_length", "box_width")),
    Check(criterion("C37"), lambda c: c.roll_spare,
          "turn the cut, take a wider roll, or ask the maker for a welded seam", ("liner_length", "liner_width", "roll")),
    Check(criterion("C39"), lambda c: c.level("staple line") - c.level("overflow"),
          "fix the liner higher, or set the overflow lower"),
    Check(criterion("C40"), _mesh,
          "a finer mesh, at most 20 mm, or larger stone"),
)  # fmt: skip
