"""Water in blocks and stone: what is empty and what is solid, and the reservoir in section with its levels."""

from __future__ import annotations

import math

from brimwork.drawing.pictures.paper import FRAME, Draw, Drawn, rectangle, said, scale_to_fit
from brimwork.drawing.records import GREY, NIGHT, Level, Line, Measure, Polygon, Record, Text, View, at_scale
from brimwork.nomenclature import QUANTITIES

# --- empty and solid ----------------------------------------------------------------------------------------------------------------


def _column(values: dict[str, float], result: float) -> Drawn:
    """A column of loose stone, its solid pressed together at the bottom: solid 1, empty e_void."""
    ratio, share = (values["e_void"], result) if "e_void" in values else (result, values["n_por"])
    tall = 1 + ratio
    view = at_scale((0.0, tall / 2), FRAME, 44 / tall, ())
    wide = 14 * tall / 44
    records: list[Record] = [
        Polygon(rectangle(-wide, 0, wide, 1), "solid", "outline"),
        Polygon(rectangle(-wide, 1, wide, tall), "water", "outline"),
        Text((0, 0.5), "solid", "middle", 3.2, nudge=(0, -1)),
        Text((0, 1 + ratio / 2), "empty", "middle", 3.2, nudge=(0, -1)),
        Measure((-wide, 0), (-wide, 1), "solid = 1", 1.0, 5.0),
        Measure((-wide, 1), (-wide, tall), f"e_void = {ratio:.2f}", ratio, 5.0),
        Line(((wide * 1.1, 1), (wide * 1.35, 1), (wide * 1.35, tall), (wide * 1.1, tall)), "thin"),
        Text((wide * 1.5, (1 + tall) / 2), f"n_por = {share:.2f}", "start", 3.2, nudge=(0, 0.6)),
        Text((wide * 1.5, (1 + tall) / 2), "of the whole", "start", 3.2, nudge=(0, -3.6)),
    ]
    return View(view.window, FRAME, tuple(records)), "loose stone, with all its solid put at the bottom"


def _shares(blocks: float, stone: float, n_v: float, n_s: float, whole: Measure, parts: tuple[str, str], lines: int = 0) -> View:
    """Blocks on the left, stone on the right, as wide as they are big; in each the solid at the bottom, the water over it."""
    both = blocks + stone
    mm = both / 55
    records: list[Record] = []
    for low, high, share, solid in ((0.0, blocks, n_v, "solid"), (blocks, both, n_s, "stone")):
        if high > low:
            records.append(Polygon(rectangle(low, 1 - share, high, 1), "water", "none"))
            records.append(Polygon(rectangle(low, 0, high, 1 - share), solid, "none"))
            records.append(Line((*rectangle(low, 0, high, 1), (low, 0)), "thin"))
    records += [Line(((blocks * i / lines, 0), (blocks * i / lines, 1)), "grid") for i in range(1, lines)]
    widest = (blocks / 2, n_v) if blocks >= stone else (blocks + stone / 2, n_s)
    records.append(Text((widest[0], 1 - widest[1] / 2), "water", "middle", 3.2, nudge=(0, -1)))
    if blocks > 14 * mm:
        records.append(Text((blocks / 2, 0.22), "blocks", "middle", 3.2, nudge=(0, -1)))
    if stone > 14 * mm:
        records.append(Text((blocks + stone / 2, (1 - n_s) / 2), "stone", "middle", 3.2, nudge=(0, -1)))
    records += [whole, Measure((0, 1 - n_v), (0, 1), f"n_v = {n_v:.2f}", n_v, 4.0)]
    if stone:
        records.append(Measure((both, 1 - n_s), (both, 1), f"{n_s:.2f}", n_s, -4.0))
        records += [
            Measure((0, 0), (blocks, 0), parts[0], blocks, -5.0),
            Measure((blocks, 0), (both, 0), parts[1], stone, -10.5),
        ]
    return View((-14 * mm, -0.42, 74 * mm, 1.22), FRAME, tuple(records))


_SHARES = "water and solid; the areas stand for volumes"


def _filled_pit(values: dict[str, float], result: float) -> Drawn:
    pit, number = values["V_pit"], values.get("N_b", result)
    blocks = min(number * values["V_b"], pit)
    litres = QUANTITIES["V_pit"].text_here
    whole = Measure((0, 1), (pit, 1), said("V_pit", pit), pit, 3.0)
    parts = f"{litres(blocks)}", f"stone = {litres(pit - blocks)}"
    return _shares(blocks, pit - blocks, values["n_v"], values["n_s"], whole, parts, round(number)), _SHARES


def _layer(values: dict[str, float], result: float) -> Drawn:
    pit, blocks = values["A_pit"], min(values["A_b"], values["A_pit"])
    whole = Measure((0, 1), (pit, 1), said("A_pit", pit), pit, 3.0)
    area = QUANTITIES["A_pit"].text_here
    return _shares(blocks, pit - blocks, values["n_v"], values["n_s"], whole, (f"blocks = {area(blocks)}", f"stone = {area(pit - blocks)}")), _SHARES


def _needed_pit(values: dict[str, float], result: float) -> Drawn:
    whole = Measure((0, 1), (result, 1), said("V_pit", result), result, 3.0)
    return _shares(result, 0.0, values["n_v"], 0.0, whole, ("", "")), _SHARES


# --- the reservoir in section -------------------------------------------------------------------------------------------------------


_LABELS = Level | Measure | Text


def _reservoir(area: float, top: float, inside: list[Record]) -> Drawn:
    """A pit of that area, drawn as if square in plan, with blocks up to a little over `top` and stone over them; `inside` stands between."""
    half, block_top = math.sqrt(area) / 2, top * 1.12
    scale, name = scale_to_fit(2 * half, block_top * 1.1, 52.0, 42.0)
    mm = 1 / scale
    view = at_scale((0.0, block_top / 2 - mm), FRAME, scale, ())
    x0, y0, x1, _ = view.window
    across = max(1, round(2 * half / 0.4))
    upright = [-half + 2 * half * i / across for i in range(1, across)]
    stone = block_top + 4 * mm
    records: list[Record] = [
        Polygon(((x0, stone), (-half, stone), (-half, 0), (half, 0), (half, stone), (x1, stone), (x1, y0), (x0, y0)), "earth", "none"),
        *(record for record in inside if not isinstance(record, _LABELS)),
        *(Line(((x, 0), (x, block_top)), "grid") for x in upright),
        Polygon(rectangle(-half, block_top, half, stone), "stone", "none"),
        Line(((-half, block_top), (half, block_top)), "thin"),
        Line(((-half, stone), (-half, 0), (half, 0), (half, stone)), "outline"),
    ]
    labels = (record for record in inside if isinstance(record, _LABELS))
    return View(view.window, FRAME, (*records, *labels)), f"section, {name}, drawn as if the blocks were square in plan"


def _water(half: float, low: float, high: float) -> list[Record]:
    return [Polygon(rectangle(-half, low, half, high), "water", "none"), Line(((-half, high), (half, high)), "water")]


def _pump(half: float, reach: float) -> Polygon:
    wide = min(0.14, half / 2)
    return Polygon(rectangle(-half + wide / 3, 0.0, -half + wide * 4 / 3, 0.75 * reach), "pale", "outline")


def _usable(values: dict[str, float], result: float) -> Drawn:
    half, low, high = math.sqrt(values["A_b"]) / 2, values["h_min"], values["h_static"]
    inside = [
        *_water(half, 0.0, max(low, high)),
        Polygon(rectangle(-half, 0.0, half, low), "untested", "none"),
        Line(((-half, low), (half, low)), "hidden"),
        _pump(half, low),
        Level((-half * 0.9, high)),
        Text((-half * 0.9, high), "static", "start", 3.2, NIGHT, (2.4, -3.6)),
        Text((half * 0.4, (low + high) / 2), "usable", "middle", 3.2, nudge=(0, -1)),
        Text((half * 0.2, low / 2), "dead water", "middle", 3.2, nudge=(0, -1)),
        Measure((half, 0), (half, high), QUANTITIES["h_static"].text_here(high), high, -4.0),
        Measure((-half, 0), (-half, low), QUANTITIES["h_min"].text_here(low), low, 4.0),
    ]
    return _reservoir(values["A_b"], max(low, high), inside)


def _dead(values: dict[str, float], result: float) -> Drawn:
    half, low = math.sqrt(values["A_b"]) / 2, values["h_min"]
    inside = [
        *_water(half, 0.0, low),
        Polygon(rectangle(-half, 0.0, half, low), "untested", "none"),
        _pump(half, low),
        Level((half * 0.35, low), ""),
        Measure((half, 0), (half, low), QUANTITIES["h_min"].text_here(low), low, -4.0),
    ]
    return _reservoir(values["A_b"], 2.2 * low, inside)


def _up_to(values: dict[str, float], result: float) -> Drawn:
    half, h = math.sqrt(values["A_b"]) / 2, values.get("h", result)
    inside = [*_water(half, 0.0, h), Level((half * 0.35, h), ""), Measure((half, 0), (half, h), QUANTITIES["h"].text_here(h), h, -4.0)]
    return _reservoir(values["A_b"], h, inside)


def _rise(values: dict[str, float], result: float) -> Drawn:
    """The level before and after a volume has come in."""
    half, before = math.sqrt(values["A_b"]) / 2, 0.3
    inside = [
        *_water(half, 0.0, before),
        Polygon(rectangle(-half, before, half, before + result), "patch", "none"),
        Line(((-half, before + result), (half, before + result)), "water"),
        Text((-half * 0.95, before / 3), "before", "start", 3.2, GREY),
        Level((half * 0.35, before + result), ""),
        Measure((half, before), (half, before + result), QUANTITIES["z_r"].text_here(result), result, -4.0),
    ]
    return _reservoir(values["A_b"], before + result, inside)


DRAWN: dict[str, Draw] = {
    **dict.fromkeys(("void fraction from void ratio", "void ratio from void fraction"), _column),
    **dict.fromkeys(("water in blocks and stone", "blocks needed in a pit"), _filled_pit),
    "void fraction of a layer of blocks and stone": _layer,
    "pit needed for a volume of water": _needed_pit,
    "usable water above the pump limit": _usable,
    "dead water": _dead,
    **dict.fromkeys(("water up to a level", "level of a volume of water"), _up_to),
    "change of level": _rise,
}
