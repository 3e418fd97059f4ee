"""Water in a pipe: its speed, its profile, the head it loses on the way, and where pump and pipe agree."""

from __future__ import annotations

from dataclasses import replace

from brimwork.drawing.graph import Axis, graph, nice_high
from brimwork.drawing.pictures.paper import FRAME, SCALES, Draw, Drawn, rectangle, said, spread, steps
from brimwork.drawing.records import ACCENT, GREY, INK, NIGHT, WATER, Arrow, Line, Mark, Measure, Polygon, Record, Text, View, at_scale
from brimwork.nomenclature import QUANTITIES
from brimwork.topics.pipes import fitting_head, friction_head, speed_in_a_pipe
from brimwork.topics.pumps import pump_curve
from brimwork.units import convert

_HEIGHTS = ((1000.0, "full size"), *SCALES[1:], (5.0, "1:200"), (2.0, "1:500"), (1.0, "1:1000"))
_ENLARGED = ((20000.0, "20:1"), (10000.0, "10:1"), (5000.0, "5:1"), (2000.0, "2:1"), *SCALES)

# --- speed --------------------------------------------------------------------------------------------------------------------------


def _one_second(values: dict[str, float], result: float) -> Drawn:
    """The water that passes in a second, as a length of pipe; the bore at full size, the length at its own scale."""
    bore, v = values.get("d_pipe", result), values.get("v", result)
    scale, name = next((s for s in SCALES if v * s[0] <= 62), SCALES[-1])
    high = min(1000.0, 40.0 / bore)  # mm of paper for a metre of bore
    window = (-14 / scale, -30 / high, 74 / scale, 30 / high)
    left, right = -3 / scale, 66 / scale
    records: list[Record] = [
        Polygon(rectangle(0, -bore / 2, v, bore / 2), "water", "none"),
        Line(((left, bore / 2), (right, bore / 2)), "outline"),
        Line(((left, -bore / 2), (right, -bore / 2)), "outline"),
        Line(((0, -bore / 2), (0, bore / 2)), "water"),
        Line(((v, -bore / 2), (v, bore / 2)), "water"),
        Measure((0, bore / 2), (v, bore / 2), f"in 1 s = {QUANTITIES['L_pipe'].text_here(v)}", v, 6.0),
        Measure((0, -bore / 2), (0, bore / 2), QUANTITIES["d_pipe"].text_here(bore), bore, 6.0),
    ]
    across = "bore at full size" if high == 1000.0 else "bore made smaller"
    return View(window, FRAME, tuple(records)), f"the water of one second, its length {name}, the {across}"


def _profile(values: dict[str, float], result: float) -> Drawn:
    """The speeds of laminar flow across a thin tube: a parabola."""
    bore = values["d_pipe"]
    scale, name = next((s for s in _ENLARGED if bore * s[0] <= 40), SCALES[-1])
    mm = 1 / scale
    view = at_scale((30 * mm, 0.0), FRAME, scale, ())
    tip = 44 * mm
    speeds = [(tip * (1 - (2 * r / bore) ** 2), r) for r in steps(-bore / 2, bore / 2, 24)]
    records: list[Record] = [
        Polygon(rectangle(-4 * mm, -bore / 2, 66 * mm, bore / 2), "water", "none"),
        *(Polygon(rectangle(-4 * mm, side * bore / 2, 66 * mm, side * (bore / 2 + 2 * mm)), "solid", "none") for side in (-1, 1)),
        *(Line(((-4 * mm, side * bore / 2), (66 * mm, side * bore / 2)), "outline") for side in (-1, 1)),
        *(Arrow((0, r), (x, r)) for x, r in speeds[3:-3:3]),
        Line(tuple(speeds), "curve"),
        Line(((0, -bore / 2), (0, bore / 2)), "thin"),
        Measure((-4 * mm, -bore / 2), (-4 * mm, bore / 2), QUANTITIES["d_pipe"].text_here(bore), bore, 3.0),
        Text((30 * mm, -bore / 2 - 2 * mm), "still at the wall; in the middle twice the mean", "middle", 3.0, GREY, (0, -4.5)),
    ]
    return View(view.window, FRAME, tuple(records)), f"speeds across the tube, {name}"


# --- head lost ----------------------------------------------------------------------------------------------------------------------


def _standpipes(values: dict[str, float], result: float) -> Drawn:
    """Two open tubes on a level pipe: the water in the second stands lower by the head lost."""
    lost, length = values.get("h_f", result), values["L_pipe"]
    scale, name = next((s for s in _HEIGHTS if lost * s[0] <= 26), _HEIGHTS[-1])
    mm, across = 1 / scale, length / 46  # a millimetre of paper, up and along
    window = (-10 * across, -16 * mm, 78 * across, 44 * mm)
    near, far = lost + 10 * mm, 10 * mm
    tubes = [(x, level) for x, level in ((0.0, near), (length, far))]
    records: list[Record] = [Polygon(rectangle(-8 * across, -3 * mm, length + 8 * across, 3 * mm), "water", "none")]
    for x, level in tubes:
        records.append(Polygon(rectangle(x - across, 3 * mm, x + across, level), "water", "none"))
        records += [Line(((x + side * across, 3 * mm), (x + side * across, near + 3 * mm)), "thin") for side in (-1, 1)]
        records.append(Line(((x - across, level), (x + across, level)), "water"))
    records += [Line(((-8 * across, side * 3 * mm), (length + 8 * across, side * 3 * mm)), "outline") for side in (-1, 1)]
    records += [
        Line(((across, near), (length + 8 * across, near)), "centre"),
        Line(((0, near), (length, far)), "second curve"),
        Arrow((length * 0.4, 0), (length * 0.6, 0)),
        Measure((length + 2 * across, far), (length + 2 * across, near), said("h_f", lost), lost, -4.5),
        Measure((0, -3 * mm), (length, -3 * mm), said("L_pipe", length), length, -5.0),
    ]
    return View(window, FRAME, tuple(records)), f"a level pipe with two open tubes; heights {name}"


def _heads(values: dict[str, float], result: float) -> tuple[float, float, float]:
    """Lift, head lost in the pipe, head lost in fittings."""
    if "h_f" in values:
        return values["z_s"], values["h_f"], values["h_m"]
    v = speed_in_a_pipe(Q=values["Q"], d_pipe=values["d_pipe"])
    return values["z_s"], friction_head(f=values["f"], L_pipe=values["L_pipe"], d_pipe=values["d_pipe"], v=v), fitting_head(K=values["K"], v=v)


def _head_said(head: float) -> str:
    unit = QUANTITIES["H_t"].here
    there = convert(head, unit)
    return f"{there:.2f} {unit}" if there < 9.995 else f"{there:.1f} {unit}"


def _head_line(values: dict[str, float], result: float) -> Drawn:
    """From the reservoir to the feature: the head that the pump gives, falling along the hose and at the fittings to the level of the outlet."""
    lift, friction, fittings = _heads(values, result)
    up = 40 / result  # mm of paper for a metre of head
    mm = 1 / up
    top, end = result, lift + fittings
    records: list[Record] = [
        Polygon(rectangle(9, -9 * mm, 28, 0), "water", "none"),
        Line(((9, 3 * mm), (9, -9 * mm), (28, -9 * mm), (28, 3 * mm)), "outline"),
        Line(((9, 0), (28, 0)), "water"),
        Line(((28, 0), (59.5, 0)), "centre"),
        Polygon(((42, lift), (45, lift - 4 * mm), (54, lift - 4 * mm), (57, lift)), "water", "outline"),
        Line(((16, -6 * mm), (49.5, -6 * mm), (49.5, lift)), "outline"),
        Polygon(rectangle(12, -8 * mm, 18, -4 * mm), "pale", "outline"),
        Line(((15, 0), (15, top)), "hidden"),
        Line(((15, top), (49.5, end), (49.5, lift)), "second curve"),
        Mark((15, top), 1.0),
        Measure((15, 0), (15, top), said("H_t", top), top, 9.0),
        Text((24, top), "head line", "start", 3.0, ACCENT, (0, 1.5)),
        Text((15, -9 * mm), "pump", "middle", 3.0, nudge=(0, -4.0)),
    ]
    parts = (("lift", 0.0, lift, "pale", NIGHT), ("fittings", lift, end, "solid", INK), ("hose", end, top, "water", WATER))
    places = spread([(low + high) / 2 * up for _, low, high, _, _ in parts], 4.2)
    for (name, low, high, fill, colour), place in zip(parts, places):
        records.append(Polygon(rectangle(59.5, low, 62, high), fill, "thin"))
        records.append(Text((63, place * mm), f"{name} {_head_said(high - low)}", "start", 3.0, colour, (0, -1)))
    return View((0, -15 * mm, 88, 45 * mm), FRAME, tuple(records)), "the head along the way, from the pump to the outlet"


# --- pump and pipe ------------------------------------------------------------------------------------------------------------------


def _meeting(values: dict[str, float], result: float) -> Drawn:
    """Pump curve and system curve, and where they cross."""
    shut_off, most, lift = (values[name] for name in ("H_0", "Q_max", "z_s"))
    k = values["h_loss"] / values["Q_1"] ** 2
    flows = steps(0.0, most * 0.9989, 32)
    flow, head = QUANTITIES["Q"].here, QUANTITIES["H_t"].here
    pump = [(convert(Q, flow), convert(pump_curve(H_0=shut_off, Q_max=most, Q=Q), head)) for Q in flows]
    system = [(convert(Q, flow), convert(lift + k * Q * Q, head)) for Q in flows]
    point = (convert(result, flow), convert(lift + k * result**2, head))
    wide, high = nice_high(convert(most, flow)), nice_high(convert(shut_off * 1.12, head))
    axes = Axis(f"Q in {flow}", 0.0, wide), Axis(f"head in {head}", 0.0, high)
    view = graph((17.0, 15.0, 72.0, 47.0), *axes, [(pump, "curve"), (system, "second curve")], point)
    labels = (
        Text((0.0, convert(shut_off, head)), "pump", "start", 3.2, WATER, (2.0, 1.6)),
        Measure((0.06 * wide, 0.0), (0.06 * wide, convert(lift, head)), said("z_s", lift), lift, -0.01),
    )
    return replace(view, records=(*view.records, *labels)), "solid: what the pump gives; dashed: what lift and pipe ask for"


DRAWN: dict[str, Draw] = {
    **dict.fromkeys(("speed in a pipe", "bore for a speed"), _one_second),
    "laminar flow in a pipe": _profile,
    **dict.fromkeys(
        ("head lost to friction", "head lost to friction by flow", "head lost in laminar flow", "head lost by Hazen-Williams", "flow by Hazen-Williams",
         "flow that a friction head drives"), _standpipes),
    **dict.fromkeys(("total dynamic head", "total dynamic head from its parts"), _head_line),
    "duty flow": _meeting,
}  # fmt: skip
