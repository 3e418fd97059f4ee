"""Random values for tests: seeded points of the usual ranges of a formula."""

import random

from brimwork.formula import Formula, holds


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
