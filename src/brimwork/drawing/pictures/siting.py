"""Siting: a sight line over a sill, a level with its staffs, the circle of a tree's roots, and a pit squared by its diagonal."""

from __future__ import annotations

from brimwork.drawing.pictures.paper import FRAME, Draw, Drawn, circle, height, rectangle, said, scale_to_fit
from brimwork.drawing.records import GREY, Line, Mark, Measure, Point, Polygon, Record, Text, View, at_scale
from brimwork.nomenclature import QUANTITIES

# --- sight line ---------------------------------------------------------------------------------------------------------------------


def _sight(values: dict[str, float], result: float) -> Drawn:
    """Eye, sill and feature from the side; what lies under the line of sight is hidden."""
    eye, sill, near, far = values["z_eye"], values["z_sill"], values["x_sill"], values["x_sill"] + values["x_beyond"]
    across, up = 54 / far, 34 / eye
    x0, y0 = -11 / across, -17 / up
    window = (x0, y0, x0 + 88 / across, y0 + 60 / up)
    hits = (far, result) if result > 0 else (near + sill * near / (eye - sill), 0.0)
    wall, tall = 0.8 / across, max(0.75 * eye, 1.2 * result)
    records: list[Record] = [
        Polygon(rectangle(window[0], -2.5 / up, window[2], 0), "earth", "none"),
        Line(((window[0], 0), (window[2], 0))),
        Polygon(rectangle(near - wall, 0, near + wall, sill), "solid", "thin"),
        Polygon(rectangle(far, 0, far + 4 / across, tall), "pale", "thin"),
        Polygon(rectangle(far, 0, far + 4 / across, max(result, 0.0)), "patch", "none"),
        Line(((0, eye), (near, sill), hits), "force"),
        Mark((0, eye)),
        height("z_eye", (0, 0), eye, up, 4.0),
        height("z_sill", (near, 0), sill, up, 4.0 if near * across > 14 else -6.0),
        *_hidden(far + 4 / across, result, up, hits),
        Measure((0, 0), (near, 0), QUANTITIES["x_sill"].text_here(near), near, -5.0),
        Measure((near, 0), (far, 0), QUANTITIES["x_beyond"].text_here(far - near), far - near, -10.5),
    ]
    return View(window, FRAME, tuple(records)), f"from the side, heights {up / across:.1f} times as large as distances"


def _hidden(edge: float, result: float, up: float, hits: Point) -> list[Record]:
    if result * up > 2.5:
        return [Measure((edge, 0), (edge, result), QUANTITIES["z_hid"].text_here(result), result, -4.5)]
    return [Text((edge, hits[1]), "nothing hidden", "end", 3.0, GREY, (4.0, 30.0))]


# --- level and staff ----------------------------------------------------------------------------------------------------------------


def _staffs(values: dict[str, float], result: float) -> Drawn:
    """Heights at a true scale from the bench mark; distances are not."""
    first = values["s_first"]
    point = first - values["s_next"] if "s_next" in values else None
    form = values["z_form"] - values["z_bench"] if "z_form" in values else None
    lowest, highest = min(0.0, point or 0.0, form or 0.0), max(first, point or 0.0)
    scale, name = scale_to_fit(0.0, highest - lowest, 70.0, 34.0)
    mm = 1 / scale
    view = at_scale((0.0, (highest + lowest) / 2 + mm), FRAME, scale, ())
    x0, y0, x1, _ = view.window
    ground = 0.0 if point is None else point
    records: list[Record] = [
        Polygon(((x0, y0), (x0, 0), (-10 * mm, 0), (8 * mm, ground), (x1, ground), (x1, y0)), "earth", "none"),
        Line(((x0, 0), (-10 * mm, 0), (8 * mm, ground), (x1, ground))),
        Line(((x0 + 5 * mm, first), (x1 - 5 * mm, first)), "centre"),
        *_instrument(first, min(0.0, ground), mm),
        *_staff(-24 * mm, 0.0, first, mm),
        height("s_first", (-24 * mm, 0), first, scale, 5.0),
        Text((x0 + 2 * mm, 0), said("z_bench", values["z_bench"]), "start", 3.0, nudge=(0, -4.6)),
    ]
    if point is None:
        records.append(Text((x1 - 5 * mm, first), said("z_line", result), "end", 3.0, nudge=(0, 1.6)))
    else:
        records += [*_staff(20 * mm, point, first, mm), height("s_next", (20 * mm, point), first - point, scale, -5.0)]
        under = point if form is None else min(point, form)
        records.append(Text((x1 - 2 * mm, under), said("z_point", values["z_bench"] + point), "end", 3.0, nudge=(0, -4.6)))
    if form is not None and point is not None:
        cut = QUANTITIES["h_cut"].text_here(abs(result))
        records += [Line(((4 * mm, form), (x1, form)), "hidden"), Measure((26.5 * mm, form), (26.5 * mm, point), cut, abs(result), -1.5)]
    return View(view.window, FRAME, tuple(records)), f"level and staffs, heights {name}, distances not to scale"


def _instrument(line: float, foot: float, mm: float) -> list[Record]:
    return [
        Line(((-5 * mm, foot), (0, line - 1.6 * mm), (5 * mm, foot)), "thin"),
        Polygon(rectangle(-3.2 * mm, line - 1.6 * mm, 3.2 * mm, line + 1.6 * mm), "pale", "thin"),
    ]


def _staff(x: float, foot: float, line: float, mm: float) -> list[Record]:
    return [Polygon(rectangle(x - 0.8 * mm, foot, x + 0.8 * mm, max(line + 4 * mm, foot)), "paper", "thin"), Mark((x, line))]


# --- seen from above ----------------------------------------------------------------------------------------------------------------

_PLANS = ((1000 / 30, "1:30"), (25.0, "1:40"), (20.0, "1:50"), (10.0, "1:100"), (5.0, "1:200"), (2.5, "1:400"), (2.0, "1:500"), (1.0, "1:1000"))


def _roots(values: dict[str, float], result: float) -> Drawn:
    radius = 12 * values["d_stem"]
    scale, name = next((row for row in _PLANS if 2 * radius * row[0] <= 50), _PLANS[-1])
    view = at_scale((0.0, 0.0), FRAME, scale, ())
    stem = max(values["d_stem"] / 2, 0.5 / scale)
    records: list[Record] = [
        Polygon(circle(radius), "patch", "hidden"),
        Polygon(circle(stem), "solid", "thin"),
        Measure((0, 0), (radius, 0), QUANTITIES["r_root"].text_here(radius), radius, 0.0),
        Text((0, -radius), "no digging inside without advice", "middle", 3.0, GREY, (0, -3.6)),
    ]
    return View(view.window, FRAME, tuple(records)), f"circle of root protection from above, {name}"


def _squared(values: dict[str, float], result: float) -> Drawn:
    L, W = values["L_dig"], values["W_dig"]
    scale, name = next((row for row in _PLANS if L * row[0] <= 64 and W * row[0] <= 42), _PLANS[-1])
    view = at_scale((L / 2, W / 2 - 2 / scale), FRAME, scale, ())
    records: list[Record] = [
        Polygon(rectangle(0, 0, L, W), "earth"),
        Line(((0, W), (L, 0)), "centre"),
        Measure((0, 0), (L, W), said("d_diag", result), result, 0.0),
        Measure((0, 0), (L, 0), said("L_dig", L), L, -5.0),
        height("W_dig", (0, 0), W, scale, 4.0),
    ]
    return View(view.window, FRAME, tuple(records)), f"pit from above, {name}: both diagonals alike"


DRAWN: dict[str, Draw] = {
    "height that a sill hides": _sight,
    **dict.fromkeys(("height of collimation", "level of a point", "depth still to dig"), _staffs),
    **dict.fromkeys(("root protection radius", "root protection area"), _roots),
    "diagonal for squaring": _squared,
}
