"""Water in the air and in a rill: a sheet that leaves a blade and lands, and a stream in its channel, seen across."""

from __future__ import annotations

from brimwork.drawing.pictures.paper import FRAME, Draw, Drawn, height, rectangle, said, scale_to_fit, steps
from brimwork.drawing.records import Level, Line, Mark, Measure, Polygon, Record, Text, View, at_scale


def _thrown(values: dict[str, float], result: float) -> Drawn:
    """A blade on its wall, the sheet on its way down, and where it lands, at a true scale."""
    fall, throw = values["h_fall"], result
    scale, name = scale_to_fit(throw, fall, 48.0, 38.0)
    mm = 1 / scale
    view = at_scale((throw / 2, fall / 2), FRAME, scale, ())
    x0, y0, x1, _ = view.window
    wall = 7 * mm
    path = tuple((throw * part, fall * (1 - part**2)) for part in steps(0.0, 1.0, 24))
    records: list[Record] = [
        Polygon(rectangle(x0, y0, x1, 0), "stone", "none"),
        Line(((x0, 0), (x1, 0))),
        Polygon(rectangle(-wall, 0, 0, fall), "solid", "thin"),
        Line(((-wall - 3 * mm, fall), (0, fall))),
        Line(path, "water"),
        Line(((0, fall), (throw + 4 * mm, fall)), "hidden"),
        Mark((throw, 0)),
        height("h_fall", (throw, 0), fall, scale, -9.0),
        Measure((0, 0), (throw, 0), said("x_throw", throw), throw, -5.0),
    ]
    return View(view.window, FRAME, tuple(records)), f"from the side, {name}"


def _rill(values: dict[str, float], result: float) -> Drawn:
    """A rill across its stream, at a true scale."""
    wide, deep = values["w_rill"], values["y_n"]
    tall = max(2 * deep, 0.25 * wide)
    scale, name = scale_to_fit(wide, tall, 44.0, 34.0)
    mm = 1 / scale
    view = at_scale((wide / 2, tall / 2), FRAME, scale, ())
    edge = 5 * mm
    records: list[Record] = [
        Polygon(((-edge, tall), (-edge, -edge), (wide + edge, -edge), (wide + edge, tall), (wide, tall), (wide, 0), (0, 0), (0, tall)), "concrete", "thin"),
        Polygon(rectangle(0, 0, wide, deep), "water", "none"),
        Line(((0, deep), (wide, deep)), "water"),
        Level((wide / 2, deep), ""),
        Measure((0, -edge), (wide, -edge), said("w_rill", wide), wide, -5.0),
        height("y_n", (wide + edge, 0), deep, scale, -6.0),
        Text((wide / 2, tall), said("S_rill", values["S_rill"]), "middle", 3.0, nudge=(0.0, 3.0)),
    ]
    return View(view.window, FRAME, tuple(records)), f"across the stream, {name}"


DRAWN: dict[str, Draw] = {"throw of a free sheet or jet": _thrown, "flow down a rill": _rill}
