"""Water over a lip, and a rim out of level."""

from __future__ import annotations

import math

from brimwork.drawing.pictures.paper import FRAME, SCALES, Draw, Drawn, steps
from brimwork.drawing.records import Leader, Level, Line, Measure, Point, Polygon, Record, Text, View, at_scale
from brimwork.nomenclature import QUANTITIES

_GRAVITY = QUANTITIES["g"].fixed


def _lip_section(values: dict[str, float], result: float) -> Drawn:
    """The lip seen from the side at a true scale; the falling sheet follows free fall from the lip."""
    H, b = values.get("H", result), values["b"] if "b" in values else math.pi * values.get("d_rim", values.get("d_bore", 0))
    Q = result if "H" in values else values["Q"]
    scale, name = next((s for s in SCALES if H * s[0] <= 26), SCALES[-1])
    view = at_scale((-0.012 * 1000 / scale, 0.002 * 1000 / scale), FRAME, scale, ())
    x0, y0, _, _ = view.window
    mm = 1 / scale  # a millimetre of paper
    upper, lower = _sheet_of_water(H, Q / b, y0)
    surface = [(x, H - 0.15 * H * math.exp(x / max(H, 4 * mm))) for x in steps(x0, 0, 40)]
    wall = 6 * mm
    records: list[Record] = [
        Polygon(((x0, y0), (-wall, y0), (-wall, 0), (0, 0), *lower, *reversed(upper), *reversed(surface)), "water", "none"),
        Polygon(((-wall, y0 - mm), (0, y0 - mm), (0, 0), (-wall, 0)), "solid", "outline"),
        Line((*surface, *upper), "water"),
        Line(tuple(lower), "water"),
        Line(((x0, 0), (-wall, 0)), "centre"),
        Level((x0 + 6 * mm, H), "water level"),
        Measure((x0 + 44 * mm, 0), (x0 + 44 * mm, H), f"H = {QUANTITIES['H'].text_here(H)}", H, 0.0),
        Leader((-wall / 2, y0 + 8 * mm), "vessel wall, thin edge", (-10.0, 4.0)),
    ]
    return View(view.window, FRAME, tuple(records)), f"section through the lip, {name}"


def _sheet_of_water(H: float, q: float, bottom: float) -> tuple[list[Point], list[Point]]:
    """Upper and lower edge of a sheet that leaves the lip level, 0.85 H thick, and falls freely; m, q in m2/s."""
    speed = q / (0.85 * H)
    upper, lower = [], []
    for t in steps(0.0, math.sqrt(2 * (abs(bottom) + H) / _GRAVITY), 24):
        x, y, down = speed * t, 0.425 * H - _GRAVITY * t * t / 2, _GRAVITY * t
        total = math.hypot(speed, down)
        half = q / total / 2
        across = (down / total * half, speed / total * half)
        upper.append((x + across[0], y + across[1]))
        lower.append((x - across[0], y - across[1]))
    return upper, lower


# --- rim out of level ---------------------------------------------------------------------------------------------------------------


def _rim_section(values: dict[str, float], result: float) -> Drawn:
    """A tilted rim under level water, heights drawn ten times as large as widths."""
    H, e = values["H"], values["e_rim"]
    across, upward = 100.0, next((u for u in (4000.0, 2000.0, 1000.0, 500.0) if (H + e / 2) * u <= 24), 200.0)
    half = 0.26
    window = (-0.44, -36 / upward, 0.44, 24 / upward)
    low, high = (-half, -e / 2), (half, e / 2)
    records: list[Record] = [
        Polygon((low, high, (half, H), (-half, H)), "water", "none"),
        Polygon(((-half, -36 / upward), low, high, (half, -36 / upward)), "solid", "outline"),
        Line(((-0.44, H), (0.44, H)), "water"),
        Level((-0.1, H), "water level"),
        Measure((-half, -e / 2), (-half, H), QUANTITIES["H"].text_here(H + e / 2), H + e / 2, 2.0),
        Measure((half, e / 2), (half, H), QUANTITIES["H"].text_here(H - e / 2), H - e / 2, -2.0),
        Text((0, -22 / upward), f"rim out of level by {QUANTITIES['e_rim'].text_here(e)}", "middle", 3.1),
    ]
    return View(window, FRAME, tuple(records)), f"rim from the side, heights {upward / across:.0f} times as large"


DRAWN: dict[str, Draw] = {
    **dict.fromkeys(("flow over a level lip", "head over a level lip", "flow by weir coefficient", "head by weir coefficient", "flow over a round rim",
                     "head on a round rim", "flow over a broad crest", "head at a broad crest", "flow out of a bore over its rim"), _lip_section),
    "flow ratio of a rim out of level": _rim_section,
}  # fmt: skip
