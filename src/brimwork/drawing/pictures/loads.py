"""Loads on blocks and ground: the contact patch, how it spreads, what presses, what may press, and a load off the middle."""

from __future__ import annotations

import math

from brimwork.drawing.marks import width_of
from brimwork.drawing.pictures.paper import FRAME, Draw, Drawn, circle, height, rectangle, said, scale_to_fit
from brimwork.drawing.records import NIGHT, Arrow, Leader, Line, Mark, Measure, Polygon, Record, Text, View, at_scale
from brimwork.nomenclature import QUANTITIES
from brimwork.topics.offset_loads import edge_pressure
from brimwork.units import InputError, number

# --- contact patch ------------------------------------------------------------------------------------------------------------------


def _slab(values: dict[str, float], result: float) -> Drawn:
    length, width = values["l_s"], values["w_s"]
    scale, name = scale_to_fit(length, width, 52.0, 40.0)
    fits = length * scale > width_of("touches all over", 3.2) + 2.0
    view = at_scale((0.0, -1 / scale), FRAME, scale, ())
    shape = rectangle(-length / 2, -width / 2, length / 2, width / 2)
    records = (
        Polygon(shape, "patch", "outline"),
        Text((0, 0), "touches all over", "middle", 3.2, nudge=(0, -1.0 if fits else width * scale / 2 + 1.6)),
        Measure((-length / 2, -width / 2), (length / 2, -width / 2), said("l_s", length), length, -6.0),
        height("w_s", (length / 2, -width / 2), width, scale, -5.0),
    )
    return View(view.window, FRAME, records), f"slab from above, {name}"


def _ring(outside: float, inside: float) -> list[Record]:
    shapes: list[Record] = [Polygon(circle(outside / 2), "patch", "outline")]
    return shapes + ([Polygon(circle(inside / 2), "paper", "outline")] if inside else [])


def _ring_foot(values: dict[str, float], result: float) -> Drawn:
    outside, inside = values["d_fo"], values["d_fi"]
    scale, name = scale_to_fit(outside, outside, 62.0, 40.0)
    view = at_scale((0.0, 1 / scale), FRAME, scale, ())
    records = (
        *_ring(outside, inside),
        Measure((-inside / 2, outside / 2), (inside / 2, outside / 2), said("d_fi", inside), inside, 4.0),
        Measure((-outside / 2, -outside / 2), (outside / 2, -outside / 2), said("d_fo", outside), outside, -4.0),
        Leader(((outside + inside) / 4 * math.cos(0.9), (outside + inside) / 4 * math.sin(0.9)), "touches here", (7.0, 4.0)),
    )
    return View(view.window, FRAME, records), f"foot from below, {name}"


def _kern_of_ring(values: dict[str, float], result: float) -> Drawn:
    """The kern as a circle: a load inside it presses on the whole foot."""
    outside, inside = values["d_fo"], values["d_fi"]
    scale, name = scale_to_fit(outside, outside, 62.0, 40.0)
    view = at_scale((0.0, 1 / scale), FRAME, scale, ())
    records = (
        *_ring(outside, inside),
        Line(circle(result), "hidden"),
        Measure((0, outside / 2), (result, outside / 2), said("e_k", result), result, 4.0),
        Mark((0, 0), 0.7, NIGHT),
        Measure((-outside / 2, -outside / 2), (outside / 2, -outside / 2), said("d_fo", outside), outside, -4.0),
        Leader((result * math.cos(2.4), result * math.sin(2.4)), "kern", (-22.0, 2.0)),
    )
    return View(view.window, FRAME, records), f"foot from below, {name}; a load inside the kern presses on all of it"


def _spread_load(values: dict[str, float], result: float) -> Drawn:
    """A foot on a slab in section: under the slab the load has gained the thickness on every side."""
    outside, inside, thick = values["d_fo"], values.get("d_fi", 0.0), values["t_s"]
    below = outside + 2 * thick
    scale, name = scale_to_fit(below * 1.08, thick, 54.0, 16.0)
    mm = 1 / scale
    view = at_scale((3 * mm, -3 * mm), FRAME, scale, ())
    edge = below * 0.54
    legs = ((-outside / 2, -inside / 2), (inside / 2, outside / 2)) if inside else ((-outside / 2, outside / 2),)
    records: list[Record] = [
        Polygon(rectangle(-edge, -thick - 9 * mm, edge, -thick), "blocks", "thin"),
        Polygon(rectangle(-edge, -thick, edge, 0), "concrete", "outline"),
    ]
    for low, high in legs:
        records.append(Polygon(((low, 0), (high, 0), (high + thick, -thick), (low - thick, -thick)), "patch", "none"))
        records += [Line(((x, 0), (x + way * thick, -thick)), "hidden") for x, way in ((low, -1), (high, 1))]
        records.append(Polygon(rectangle(low, 0, high, 10 * mm), "solid", "outline"))
    records += [
        Line(((-edge, 0), (edge, 0)), "outline"),
        Line(((-edge, -thick), (edge, -thick)), "outline"),
        Measure((-outside / 2, 10 * mm), (outside / 2, 10 * mm), said("d_fo", outside), outside, 4.0),
        Measure((edge, -thick), (edge, 0), QUANTITIES["t_s"].text_here(thick), thick, -2.5),
        Measure((-below / 2, -thick), (below / 2, -thick), f"loaded = {QUANTITIES['d_fo'].text_here(below)}", below, -14.0),
    ]
    return View(view.window, FRAME, tuple(records)), f"foot, slab and blocks in section, {name}"


# --- what presses and what may ------------------------------------------------------------------------------------------------------


def _pressed(values: dict[str, float], result: float) -> Drawn:
    """A weight on its patch, and the pressure that answers."""
    side = math.sqrt(values["A_c"])
    scale, name = scale_to_fit(side, 0.01, 50.0)
    mm = 1 / scale
    view = at_scale((0.0, 6 * mm), FRAME, scale, ())
    rises = [side * (i / 6 - 0.5) for i in range(7)]
    records: tuple[Record, ...] = (
        Polygon(rectangle(-36 * mm, -8 * mm, 36 * mm, 0), "blocks", "thin"),
        Polygon(rectangle(-side / 2, 0, side / 2, 8 * mm), "patch", "outline"),
        *(Arrow((x, -8 * mm), (x, -mm)) for x in rises),
        Arrow((0, 28 * mm), (0, 9 * mm)),
        Text((0, 24 * mm), said("F_w", values["F_w"]), "start", 3.2, nudge=(3.0, 0)),
        Text((0, -8 * mm), said("p_c", result), "middle", 3.2, nudge=(0, -5.0)),
        Measure((-side / 2, -8 * mm), (side / 2, -8 * mm), f"side = {QUANTITIES['l_s'].text_here(side)}", side, -11.5),
    )
    return View(view.window, FRAME, records), f"a weight on its patch, drawn as a square, {name}"


def _vessel_on_blocks(values: dict[str, float], result: float) -> Drawn:
    """What stands on the blocks: vessel, water, slab and the stone beside it."""
    side, stone = math.sqrt(values["A_c"]), values["t_st"]
    scale, name = scale_to_fit(side, stone, 40.0, 16.0)
    mm, half = 1 / scale, side / 2
    view = at_scale((3.5 * mm, 8 * mm), FRAME, scale, ())
    slab, end = 5 * mm, 22 * mm
    outer = ((-0.55 * half, slab), (-0.85 * half, slab + 18 * mm), (0.85 * half, slab + 18 * mm), (0.55 * half, slab))
    inner = ((-0.5 * half, slab + 2 * mm), (-0.75 * half, slab + 17 * mm), (0.75 * half, slab + 17 * mm), (0.5 * half, slab + 2 * mm))
    records: list[Record] = [
        Polygon(rectangle(-end, -9 * mm, end, 0), "blocks", "thin"),
        Polygon(rectangle(-end, 0, -half, stone), "stone", "none"),
        Polygon(rectangle(half, 0, end, stone), "stone", "none"),
        Polygon(rectangle(-half, 0, half, slab), "concrete", "outline"),
        Polygon(outer, "solid", "outline"),
        Polygon(inner, "water" if values["V_v"] else "paper", "thin"),
        Measure((-half, 0), (half, 0), f"side of the patch = {QUANTITIES['l_s'].text_here(side)}", side, -14.0),
        Measure((-end, 0), (-end, stone), QUANTITIES["t_st"].text_here(stone), stone, 2.0),
    ]
    for word, letter, x, y, rise in (("vessel", "m_v", 0.79 * half, 20, 6.0), ("water", "V_v", 0.5 * half, 14, 5.0), ("slab", "m_slab", 0.9 * half, 3, 9.0)):
        records.append(Leader((x, y * mm), f"{word} {QUANTITIES[letter].short(values[letter])}", (20.5 - x * scale, rise)))
    return View(view.window, FRAME, tuple(records)), f"on the blocks, {name}; the patch is drawn as a square"


def _bars(bars: list[tuple[str, float, str]], end: Measure | None = None) -> View:
    """Horizontal bars from the top down: words, pressure in Pa, fill; the last with its dimension."""
    longest = max(value for _, value, _ in bars)
    mm = longest / 70
    records: list[Record] = []
    for row, (text, value, fill) in enumerate(bars):
        y = 46 - 16 * row
        records += [Polygon(rectangle(0, y - 6, value, y), fill, "outline"), Text((0, y), text, "start", 3.2, nudge=(0, 1.4))]
    value, low = bars[-1][1], 46 - 16 * (len(bars) - 1) - 6
    records.append(Measure((0, low), (value, low), f"= {QUANTITIES['p_all'].text_here(value)}", value, -4.5))
    return View((-6 * mm, -4, 82 * mm, 56), FRAME, tuple(records))


def _creep(values: dict[str, float], result: float) -> Drawn:
    """Short-term strength, what lasts of it, and what may be used."""
    short, lasting = values["p_short"], values["p_short"] * values["k_creep"]
    text = QUANTITIES["p_short"].text_here
    bars = [
        (f"short-term, from the sheet: {text(short)}", short, "pale"),
        (f"what lasts for years: {text(lasting)}", lasting, "patch"),
        ("over the safety factor: what it may carry", result, "water"),
    ]
    return _bars(bars), "pressures on the block tops"


def _used(values: dict[str, float], result: float) -> Drawn:
    carried, may = values["p_c"], values["p_all"]
    text = QUANTITIES["p_c"].text_here
    bars = [(f"what the blocks may carry: {text(may)}", may, "water"), ("what they carry", carried, "patch")]
    return _bars(bars), "pressures on the block tops"


# --- a load off the middle ----------------------------------------------------------------------------------------------------------


def _pressures(values: dict[str, float], result: float) -> Drawn:
    """The pressure under a base: a trapezoid while the load stands in the middle third, a triangle beyond it, nothing when it falls over."""
    width, e = values["B_base"], values.get("e_off", result)
    across, weight = values.get("L_base", 1.0), values.get("F_w", 0.0)
    scale, name = scale_to_fit(width, 0.01, 64.0)
    mm, middle = 1 / scale, width / 2
    view = at_scale((0.0, -8 * mm), FRAME, scale, ())
    records: list[Record] = [
        Line((*rectangle(-middle, 0, middle, 5 * mm), (-middle, 0)), "outline"),
        Polygon(rectangle(-width / 6, 0, width / 6, 5 * mm), "pale", "thin"),
        Line(((0, -3 * mm), (0, 17 * mm)), "centre"),
        Arrow((e, 16 * mm), (e, 5.5 * mm)),
        *([Measure((0, 5 * mm), (e, 5 * mm), said("e_off", e), e, 12.0)] if e * scale > 0.3 else []),
        Measure((-middle, -22 * mm), (middle, -22 * mm), said("B_base", width), width, -9.5),
    ]
    if e < middle:
        records += _diagram(width, e, mm, weight / (width * across), edge_pressure(1.0, width, 1.0, e))
    else:
        records.append(Text((0, -10 * mm), "past the edge: it falls over", "middle", 3.2, NIGHT))
    return View(view.window, FRAME, tuple(records)), f"base with its middle third, {name}, and the pressure under it"


def _diagram(width: float, e: float, mm: float, mean: float, edge) -> list[Record]:
    """The pressure as an area under the base, 5 mm of paper for its mean; `mean` in Pa, or 0 where only the shape is known."""
    unit = min(5.0, 21.0 / (edge.greatest * width)) * mm * width
    right, left = width / 2, width / 2 - edge.contact
    low, high = -unit * edge.least, -unit * edge.greatest

    def text(share: float) -> str:
        return QUANTITIES["p_max"].text_here(share * mean) if mean else f"{number(share, 3)} x mean"

    records: list[Record] = [Polygon(((left, 0), (right, 0), (right, high), (left, low)), "patch", "thin")]
    records.append(Text((right, high), text(edge.greatest * width), "end", 3.2, NIGHT, (1.5, -4.2)))
    if edge.contact < width:
        records.append(Text((-width / 2, 0), "lifts", "start", 3.2, NIGHT, (0.5, -4.2)) if width - edge.contact > 11 * mm else Mark((left, 0), 0.8, NIGHT))
    elif edge.least * width > 0.005:
        records.append(Text((left, high), text(edge.least * width), "start", 3.2, NIGHT, (-1.5, -4.2)))
    return records


def _lifted(values: dict[str, float], result: float) -> Drawn:
    if values["e_off"] <= values["B_base"] / 6:
        raise InputError("the load stands within the middle third and the whole base presses: take the greatest pressure under an offset load")
    return _pressures(values, result)


DRAWN: dict[str, Draw] = {
    "contact patch of a slab": _slab,
    "contact patch of a ring foot": _ring_foot,
    **dict.fromkeys(("patch of a ring foot through a slab", "patch of a round foot through a slab"), _spread_load),
    "pressure on a contact patch": _pressed,
    "pressure on the block tops": _vessel_on_blocks,
    "pressure that the blocks may carry": _creep,
    "utilisation of the blocks": _used,
    **dict.fromkeys(("greatest pressure under an offset load", "least pressure under an offset load", "edge of the kern",
                     "tipping factor from the eccentricity"), _pressures),
    **dict.fromkeys(("greatest pressure under partial contact", "length of base still in contact"), _lifted),
    "edge of the kern of a ring foot": _kern_of_ring,
}  # fmt: skip
