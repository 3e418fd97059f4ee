"""Values for tests: points of the usual ranges of a formula, seeded at random or searched by Hypothesis."""

import random

from hypothesis import assume
from hypothesis import strategies as st

from brimwork.conditions import holds
from brimwork.formula import Formula


def usual_points(formula: Formula, count: int, seed: int = 1) -> list[dict[str, float]]:
    """Random points of the usual ranges that keep the conditions of the formula; whole numbers where the step is 1 of a pure number."""
    draw, points = random.Random(seed), []
    for _ in range(400 * count):
        point = {}
        for name in formula.inputs:
            low, high, step = formula.range(name)
            point[name] = low + step * round(draw.uniform(0, (high - low) / step)) if step == 1 else draw.uniform(low, high)
        if all(holds(condition, point) for condition in formula.where):
            points.append(point)
        if len(points) == count:
            return points
    raise AssertionError(f"{formula.name}: its usual ranges hardly ever keep its conditions")


@st.composite
def usual_values(draw, formula: Formula) -> dict[str, float]:
    """A point of the usual ranges, ends included, that keeps the conditions of the formula; whole numbers where the step is 1 of a pure number."""
    point = {}
    for name in formula.inputs:
        low, high, step = formula.range(name)
        point[name] = float(draw(st.integers(0, round((high - low) / step)))) * step + low if step == 1 else draw(st.floats(low, high), label=name)
    assume(all(holds(condition, point) for condition in formula.where))
    return point
