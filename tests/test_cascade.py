"""The invented garden cascade against arithmetic of its own, written out here and independent of the formulas; tolerances as for the other scenarios."""

import math
from pathlib import Path

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.judged import checks
from brimwork.design.typed import file

CHAIN = chain_of(file.load_design(Path(__file__).parents[1] / "workbooks" / "designs" / "garden-cascade.toml"))
G, NU = 9.80665, 1.0034e-6
q, width, steps, fall, tread = 2.0e-3, 0.5, 3, 0.15, 0.45
Q = q * width
y_c = (q * q / G) ** (1 / 3)
head, brink = 1.5 * y_c, 0.715 * y_c
t = math.sqrt(2 * fall / G)
throw = q / brink * t
floor, low = -0.060 - 0.420, -0.060 - 0.420 + 0.150
lift = 0.600 + head - low
speed = Q / (math.pi / 4 * 0.040**2)


def colebrook(reynolds, relative):
    """By repeated substitution."""
    x = 7.0
    for _ in range(60):
        x = -2 * math.log10(relative / 3.7 + 2.51 * x / reynolds)
    return 1 / x**2


def head_needed(flow):
    v = flow / (math.pi / 4 * 0.040**2)
    return lift + (colebrook(v * 0.040 / NU, 1.5e-6 / 0.040) * 6 / 0.040 + 4.0) * v * v / (2 * G)


def halve(wrong, low, high):
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if (wrong(middle) > 0) == (wrong(low) > 0) else (low, middle)
    return low


duty = halve(lambda flow: 4.0 * (1 - (flow / 2e-3) ** 2) - head_needed(flow), 1e-5, 1.999e-3)
rill = halve(lambda y: 0.25 * y / 0.013 * (0.25 * y / (0.25 + 2 * y)) ** (2 / 3) * math.sqrt(0.01) - Q, 1e-4, 0.2)
last = 0.600 - 3 * fall - 2.0 * 0.01 - (-0.060 + 0.050)  # from the end of the rill to the stone
pools, sheets, pipe, stone = (0.20 + 3 * 0.225) * head, 3 * Q * t + Q * math.sqrt(2 * last / G), math.pi / 4 * 0.040**2 * 6, 1.0 * 0.050 * 0.03
transit = pools + 0.25 * rill * 2.0 + sheets + pipe + stone
area = 3 * 0.6 * 2 * 0.4 * 0.95
wet = 0.20 + 3 * 0.225 + 2 * 3 * width * fall + 2 * 0.25 * last + 0.25 * 2.0 + 1.0
loss = wet * 5.0 * 1.05 + 3.0  # litres a day

VALUES = {
    "flow_wanted": Q, "step_head": head, "throw": throw, "tread_share": tread / throw, "static_lift": lift, "speed_wanted": speed, "head_wanted": head_needed(Q),
    "duty_flow": duty, "flow_ratio": duty / Q, "normal_depth": rill, "freeboard": 0.080 - rill, "transit": transit, "start_drop": transit / area, "wet_area": wet,
    "usable": area * 0.220, "drainback": area * (0.395 - max(0.351, 0.370 - transit / area)) / transit, "days": (area * 220 - transit * 1e3) / loss * 86400, "turnover": area * 0.220 / Q, "apron_share": 0.100 / (0.5 * fall),
}  # fmt: skip


@pytest.mark.parametrize("name", VALUES)
def test_every_number_agrees_with_the_arithmetic_written_out(name):
    assert getattr(CHAIN, name) == pytest.approx(VALUES[name], rel=0.01)


def test_the_checks_of_the_steps_pass_and_shallow_water_is_marginal():
    grades = {finding.id: finding.grade for finding in checks.findings(CHAIN)}
    assert (grades["C60"], grades["C61"], grades["C09"], grades["C01"], grades["C51"], grades["C20"]) == (
        "pass",
        "pass",
        "pass",
        "pass",
        "marginal",
        "does not apply",
    )
