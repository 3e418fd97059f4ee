"""Water in transit and the water balance: what is up in the feature, the drop of the level, room for what comes back, and how a reserve is spent."""

from __future__ import annotations

import math

from brimwork.drawing.pictures.paper import FRAME, Draw, Drawn, height, rectangle, said
from brimwork.drawing.records import GREY, Level, Line, Measure, Polygon, Record, Text, View, at_scale
from brimwork.nomenclature import QUANTITIES
from brimwork.topics.reservoir import level_change

# --- bars whose lengths are volumes -------------------------------------------------------------------------------------------------

_PARTS = {"V_rim": "above the rim", "V_siph": "siphons back", "V_film": "film", "V_sheet": "falling sheet", "V_pc": "hose", "V_hold": "stone"}


def _in_transit(values: dict[str, float], result: float) -> Drawn:
    """One bar for each part, all to one scale, and the whole below them."""
    mm = max(result, 1e-6) / 50
    records: list[Record] = []
    for row, (letter, name) in enumerate(_PARTS.items()):
        top, wide = 52.0 - 6.4 * row, values[letter]
        records.append(Polygon(rectangle(0, top - 4.4, max(wide, 0.15 * mm), top), "water", "thin"))
        records.append(Text((0, top), name, "end", 3.0, nudge=(-1.5, -3.2)))
        records.append(Text((wide, top), QUANTITIES[letter].text_here(wide), "start", 3.0, GREY, (1.5, -3.2)))
    records.append(Polygon(rectangle(0, 6.0, result, 10.4), "patch", "thin"))
    records.append(Text((0, 10.4), "together", "end", 3.0, nudge=(-1.5, -3.2)))
    records.append(Measure((0, 6.0), (result, 6.0), said("V_tr", result), result, -5.0))
    return View((-25 * mm, -4.0, 63 * mm, 56.0), FRAME, tuple(records)), "the lengths of the bars stand for volumes"


def _spent(values: dict[str, float], result: float) -> Drawn:
    """The usable water as a bar: what is in transit, and equal days of loss."""
    usable, away = values["V_use"], values["V_tr"]
    mm, days = usable / 66, result / 86400
    each = (usable - away) / days
    records: list[Record] = [
        Polygon(rectangle(0, 22, away, 40), "patch", "thin"),
        Polygon(rectangle(away, 22, usable, 40), "water", "thin"),
        *(Line(((away + day * each, 22), (away + day * each, 40)), "grid") for day in range(1, math.ceil(days - 1e-9)) if each > 1.2 * mm),
        Measure((0, 40), (usable, 40), said("V_use", usable), usable, 4.0),
        Measure((0, 22), (away, 22), QUANTITIES["V_tr"].text_here(away), away, -5.0),
        Text(((away + usable) / 2, 22), f"{days:.1f} days of loss, {QUANTITIES['V_tr'].text_here(each)} each", "middle", 3.0, nudge=(0, -5.0)),
        Text((0, 22), "in transit", "start", 3.0, GREY, (0, -13.0)),
    ]
    return View((-8 * mm, -4.0, 80 * mm, 56.0), FRAME, tuple(records)), "the length of the bar stands for the usable water"


# --- the reservoir in section -------------------------------------------------------------------------------------------------------


_SCALES = ((100.0, "1:10"), (50.0, "1:20"), (40.0, "1:25"), (1000 / 30, "1:30"), (25.0, "1:40"), (20.0, "1:50"))


def _scale(area: float, top: float) -> tuple[float, str]:
    return next((row for row in _SCALES if math.sqrt(area) * row[0] <= 50 and 1.15 * top * row[0] <= 46), _SCALES[-1])


def _tank(area: float, top: float, inside: list[Record]) -> Drawn:
    """A pit of that area, as if square in plan, open above `top`."""
    half, edge = math.sqrt(area) / 2, 1.15 * top
    scale, name = _scale(area, top)
    view = at_scale((0.0, edge / 2), FRAME, scale, ())
    x0, y0, x1, _ = view.window
    labels = (Level, Measure, Text)
    records: list[Record] = [
        Polygon(((x0, edge), (-half, edge), (-half, 0), (half, 0), (half, edge), (x1, edge), (x1, y0), (x0, y0)), "earth", "none"),
        *(record for record in inside if not isinstance(record, labels)),
        Line(((-half, edge), (-half, 0), (half, 0), (half, edge)), "outline"),
        *(record for record in inside if isinstance(record, labels)),
    ]
    return View(view.window, FRAME, tuple(records)), f"section, {name}, drawn as if the blocks were square in plan"


_BEFORE = 0.38  # m: the level before the start in the picture; any would do


def _drop(values: dict[str, float], result: float) -> Drawn:
    half, before = math.sqrt(values["A_b"]) / 2, max(_BEFORE, 1.5 * result)
    after = before - result
    inside: list[Record] = [
        Polygon(rectangle(-half, 0, half, after), "water", "none"),
        Polygon(rectangle(-half, after, half, before), "patch", "none"),
        Line(((-half, before), (half, before)), "hidden"),
        Line(((-half, after), (half, after)), "water"),
        Level((-half * 0.85, before), "before the start"),
        Text((-half * 0.9, after), "while it runs", "start", 3.0, nudge=(0, -5.0)),
        Measure((half, after), (half, before), QUANTITIES["z_r"].text_here(result), result, -4.0),
    ]
    return _tank(values["A_b"], before, inside)


def _room(values: dict[str, float], result: float) -> Drawn:
    """On the left the room between running level and overflow, on the right what comes back into it."""
    area, run, over = values["A_b"], values["h_run"], values["h_over"]
    half, back = math.sqrt(area) / 2, level_change(V_w=values["V_tr"], A_b=area, n_v=values["n_v"])
    inside: list[Record] = [
        Polygon(rectangle(-half, 0, half, run), "water", "none"),
        Polygon(rectangle(0.02 * half, run, half, run + back), "patch", "thin"),
        Line(((-half, over), (half, over)), "hidden"),
        Line(((-half, run), (half, run)), "water"),
        Text((-half * 0.94, over), "overflow", "start", 3.0, nudge=(0, 1.2)),
        Text((-half * 0.94, run), "running", "start", 3.0, nudge=(0, -4.0)),
        Text((half * 0.94, run + back), "comes back", "end", 3.0, nudge=(0, 1.2)),
        height("h_run", (-half, 0), run, _scale(area, max(over, run + back))[0], 4.0),
        Measure((half, 0), (half, over), QUANTITIES["h_over"].text_here(over), over, -4.0),
    ]
    return _tank(area, max(over, run + back), inside)


# --- siphon -------------------------------------------------------------------------------------------------------------------------


def _crest(values: dict[str, float], result: float) -> Drawn:
    """Water, the pipe up to its crest and down again; only the height of the crest is to scale."""
    scale = next((scale for scale in (10.0, 5.0, 4.0, 2.0) if result * scale <= 40), 2.0)
    mm = 1 / scale
    low = -7 * mm
    view = at_scale((0.0, result / 2 + 1.5 * mm), FRAME, scale, ())
    pipe = ((-12 * mm, low + 2 * mm), (-12 * mm, result - 3 * mm), (-9 * mm, result), (5 * mm, result), (8 * mm, result - 3 * mm), (8 * mm, low))
    records: list[Record] = [
        Polygon(rectangle(-30 * mm, low, -2 * mm, 0), "water", "none"),
        Line(((-30 * mm, 5 * mm), (-30 * mm, low), (-2 * mm, low), (-2 * mm, 5 * mm)), "outline"),
        Line(((-30 * mm, 0), (-2 * mm, 0)), "water"),
        Line(pipe, "curve"),
        Level((-22 * mm, 0), ""),
        Text((5 * mm, result), "crest", "start", 3.0, nudge=(3.0, 1.0)),
        height("z_crest", (-12 * mm, 0), result, scale, 8.0),
    ]
    return View(view.window, FRAME, tuple(records)), f"siphon, height of the crest 1:{1000 / scale:g}"


DRAWN: dict[str, Draw] = {
    "water in transit": _in_transit,
    "days without top-up": _spent,
    "drop of the level on start": _drop,
    "drain-back ratio": _room,
    "greatest height of a siphon's crest": _crest,
}
