"""What tips and what floats: a push, the wind, and foam under pebbles."""

from __future__ import annotations

from brimwork.drawing.pictures.paper import FRAME, Draw, Drawn, rectangle, said, scale_to_fit
from brimwork.drawing.records import ACCENT, NIGHT, Arrow, Line, Mark, Measure, Point, Polygon, Record, Text, View, at_scale
from brimwork.nomenclature import QUANTITIES
from brimwork.topics.stability import foam_uplift, pebbles_under_water

# --- tipping ------------------------------------------------------------------------------------------------------------------------


def _tipped(base: float, height: float, weight: float, push: float, at: float, pushes: list[float], what: str, pushed: str) -> Drawn:
    """A piece on its base, pushed from the left with `push` at a height `at`: where push and weight together meet the ground."""
    wide = base * 1.15
    scale, name = scale_to_fit(wide, height, 30.0, 36.0)
    mm, half = 1 / scale, wide / 2
    view = at_scale((-4 * mm, height / 2 - mm), FRAME, scale, ())
    right = view.window[2]
    meets = push * at / weight
    records: list[Record] = [
        Polygon(rectangle(view.window[0], -2 * mm, right, 0), "earth", "none"),
        Line(((view.window[0], 0), (right, 0)), "thin"),
        Polygon(((-base / 2, 0), (base / 2, 0), (half, height), (-half, height)), "pale", "outline"),
        Line(((0, at), (min(meets, right), at * (1 - min(meets, right) / meets))), "hidden"),
        Arrow((0, at), (0, at * 0.35)),
        *(Arrow((-half - 12 * mm, y), (-half, y)) for y in pushes),
        Text((-half - 13 * mm, pushes[-1]), pushed, "start", 3.2, nudge=(-9.0, 2.4)),
        Text((0, height), said("F_w", weight), "middle", 3.2, nudge=(0, 6.5)),
        Mark((base / 2, 0), 0.9),
        *([Mark((meets, 0), 0.9, NIGHT)] if meets < right else []),
        Measure((0, -2 * mm), (base / 2, -2 * mm), f"arm = {QUANTITIES['B_base'].text_here(base / 2)}", base / 2, -4.0),
    ]
    verdict = f"{what} and weight meet the ground inside the base" if meets < base / 2 else f"{what} and weight meet the ground outside: it tips"
    return View(view.window, FRAME, tuple(records)), f"{verdict}; {name}"


def _pushed(values: dict[str, float], result: float) -> Drawn:
    height = values["h_push"]
    view, caption = _tipped(values["B_base"], height, values["F_w"], values["F_push"], height, [height], "push", said("F_push", values["F_push"]))
    return _with_height(view, values["B_base"], "h_push", height), caption


def _blown(values: dict[str, float], result: float) -> Drawn:
    height, width = values["h_face"], values["b_face"]
    force = values["p_wind"] * values["c_f"] * width * height
    pushes = [height * share for share in (0.1, 0.3, 0.5, 0.7, 0.9)]
    view, caption = _tipped(values["B_base"], height, values["F_w"], force, height / 2, pushes, "wind", f"wind {QUANTITIES['F_wind'].text_here(force)}")
    return _with_height(view, values["B_base"], "h_face", height), caption


def _with_height(view: View, base: float, letter: str, height: float) -> View:
    half = base * 0.575
    return View(view.window, view.frame, (*view.records, Measure((half, 0), (half, height), QUANTITIES[letter].text_here(height), height, -9.0)))


# --- foam under water ---------------------------------------------------------------------------------------------------------------


def _foam(values: dict[str, float], result: float) -> Drawn:
    """Foam under pebbles under water: layers as high as they are big, and what lifts and holds."""
    foam, pebbles = values.get("V_f", 0.0), values.get("V_p", result)
    if "V_p" not in values and "f_hold" not in values:
        pebbles = 0.0
    top = (foam + pebbles) * 1.15
    mm = top / 42
    records: list[Record] = [Polygon(rectangle(18, 0, 52, top), "water", "none")]
    if foam:
        records += [Polygon(rectangle(18, 0, 52, foam), "patch", "thin"), Text((33, foam / 2), "foam", "middle", 3.2, nudge=(9.5, -1))]
        records.append(Measure((18, 0), (18, foam), QUANTITIES["V_f"].text_here(foam), foam, 3.0))
        records += _arrow_with_words((28, 0.1 * foam), (28, 0.9 * foam), 0.5 * foam - 1.2 * mm, "lifts", foam_uplift(**foam_uplift.only(values)))
    if pebbles:
        records += [
            Polygon(rectangle(18, foam, 52, foam + pebbles), "stone", "thin"),
            Text((33, foam + pebbles / 2), "pebbles", "middle", 3.2, nudge=(9.5, -1)),
        ]
        records.append(Measure((18, foam), (18, foam + pebbles), QUANTITIES["V_p"].text_here(pebbles), pebbles, 3.0))
        given = {**values, "V_p": pebbles}
        held = pebbles_under_water(**pebbles_under_water.only(given))
        low, high = foam + 0.1 * pebbles, foam + 0.9 * pebbles
        records += _arrow_with_words((28, high), (28, low), foam + 0.5 * pebbles - 1.2 * mm, "holds", held)
    records += [Line(((18, top), (52, top)), "water"), Line(((18, top * 1.06), (18, 0), (52, 0), (52, top * 1.06)), "outline")]
    return View((0, -7 * mm, 88, 53 * mm), FRAME, tuple(records)), "foam and pebbles in a vessel; heights stand for volumes"


def _arrow_with_words(tail: Point, tip: Point, at: float, word: str, force: float) -> list[Record]:
    return [Arrow(tail, tip), Text((55, at), f"{word} {QUANTITIES['F_up'].text_here(force)}", "start", 3.2, ACCENT)]


DRAWN: dict[str, Draw] = {
    "tipping factor": _pushed,
    "tipping factor in wind": _blown,
    **dict.fromkeys(("uplift of foam", "weight of pebbles under water", "hold-down ratio of pebbles on foam", "pebbles needed to hold foam down"), _foam),
}
