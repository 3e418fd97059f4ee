"""Values for tests: points of the usual ranges of a formula, seeded at random, and at the ends of its letters."""

import random
from collections.abc import Iterator
from itertools import product

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


def swept(formula: Formula, count: int = 60) -> Iterator[dict[str, float]]:
    """So many points of the usual ranges, and each of them again with one letter at each of its ends; and the corners, where there are few. All keep the conditions."""
    ends = {name: formula.range(name)[:2] for name in formula.inputs}
    corners = [dict(zip(ends, corner)) for corner in product(*ends.values())] if len(ends) <= 6 else []
    for point in usual_points(formula, count):
        for at in (point, *({**point, name: end} for name in ends for end in ends[name]), *corners):
            if all(holds(condition, at) for condition in formula.where):
                yield at
        corners = []
