"""North, and the cable from the supply point to the pump, in plan: drawn where the design says them, and otherwise named as not shown."""

from __future__ import annotations

import math
from dataclasses import dataclass

from brimwork.design.judged.people_checks import protects
from brimwork.design.typed.design import Design
from brimwork.drawing.layout import DIMENSION_SIZE
from brimwork.drawing.lettering import Lettering
from brimwork.drawing.pictures.paper import circle
from brimwork.drawing.records import INK, Line, Point, Polygon, Record, Text, View
from brimwork.drawing.sizes import Sizes, known_of
from brimwork.units import number

RING = 4.2  # mm: radius of the north mark
NORTH = RING + 4.0  # mm: what the mark takes with its letter, from its middle
MARK = 1.5  # mm: half the side of the supply point, and half the length of the arrow towards it
_CAUTION = (
    "Route, cover and protection are for a qualified electrician to settle and test, by the local code. "
    "The cable goes over the edge of the lining, never through it; its route is recorded before it is covered."
)
_Labels = tuple[tuple[Point, str], ...]


@dataclass(frozen=True)
class Cable:
    """What is drawn of the cable, what is labelled, the sentence under the plan, rows of the table, and what nobody gave."""

    records: tuple[Record, ...]
    labels: _Labels
    sentence: str
    rows: tuple[tuple[str, ...], ...]
    lacking: tuple[str, ...]


# --- north --------------------------------------------------------------------------------------------------------------------------


def north(design: Design) -> float | None:
    """Direction of north in radians, clockwise from the top of the sheet; None where nobody gave it."""
    known = known_of(design, "site.north")
    return known[0] if known else None


def north_mark(turn: float, at: Point, scale: float) -> View:
    """A ring with an arrow to the north and its letter, its middle `at` in mm of the sheet; `scale` in mm of paper for a metre."""
    ring, (x, y) = RING / scale, (math.sin(turn), math.cos(turn))  # of the ring's edge, and of the way to the north
    tip, tail, left, right = (
        (ring * (along * x + across * y), ring * (along * y - across * x)) for along, across in ((1.0, 0.0), (-0.45, 0.0), (-0.9, -0.44), (-0.9, 0.44))
    )
    letter = ((RING + 2.4) / scale * x, (RING + 2.4) / scale * y)
    records = (
        Polygon(circle(ring), "paper", "thin"),
        Polygon((tip, left, tail), "ink", "thin"),
        Polygon((tip, tail, right), "paper", "thin"),
        Text(letter, "N", "middle", DIMENSION_SIZE, INK, (0.0, -0.35 * DIMENSION_SIZE)),
    )
    reach = NORTH / scale
    return View((-reach, -reach, reach, reach), (at[0] - NORTH, at[1] - NORTH, 2 * NORTH, 2 * NORTH), records, clip=False)


def north_said(turn: float) -> str:
    """Where north lies, in words."""
    angle = f"{math.degrees(turn):.0f}"
    return "North is at the top of the sheet." if angle in ("0", "360") else f"North lies {angle} degrees clockwise from the top of the sheet."


# --- the cable ----------------------------------------------------------------------------------------------------------------------


def cable(design: Design, s: Sizes, lettering: Lettering, window: tuple[float, float, float, float], scale: float) -> Cable:
    """The cable from the pump's bay, drawn straight towards the supply point, as far as that lies within the `window` (m); `scale` in mm of paper for a metre."""
    to, bore, cover = (known_of(design, *keys) for keys in (("supply.point_along", "supply.point_across"), ("supply.duct_bore",), ("supply.duct_cover",)))
    lacking = [name for name, known in (("supply point and cable route", to), ("bore of the duct", bore), ("cover over the duct", cover)) if not known]
    lacking += [] if known_of(design, "supply.residual_current") else ["residual-current protection"]
    records, leaves, stop, reached = _drawn(to, bore, s, window, scale) if to else ((), None, None, False)
    duct, point = _short_duct(bore, cover, lettering), lettering.worded(_short_point(design, reached))
    labels = ((leaves, duct), (stop, point)) if leaves and stop else ()
    rows = [("supply point off the middle of the blocks", *map(lettering.level, to))] if to else []
    rows += [
        (lettering.worded(f"{name} of the duct"), lettering.figure(known[0]), "") for name, known in (("bore", bore), ("cover over the top", cover)) if known
    ]
    return Cable(records, labels, _sentence(design, to, _duct(bore, cover, lettering), lettering), tuple(rows), tuple(lacking))


def possible_labels(design: Design, lettering: Lettering) -> list[str]:
    """The texts for which the plan keeps room."""
    if not known_of(design, "supply.point_along", "supply.point_across"):
        return []
    duct = _short_duct(known_of(design, "supply.duct_bore"), known_of(design, "supply.duct_cover"), lettering)
    return [duct, lettering.worded(_short_point(design, False))]


def _short_duct(bore: tuple | None, cover: tuple | None, lettering: Lettering) -> str:
    """As a label has it: duct 50, cover 600."""
    duct = (f"duct {lettering.figure(bore[0])}" if bore else "duct") + (f", cover {lettering.figure(cover[0])}" if cover else "")
    return lettering.worded(duct)


def _short_point(design: Design, reached: bool) -> str:
    """As a label has it, with its residual-current device: supply, RCD 30 mA."""
    known, rating = known_of(design, "supply.residual_current"), known_of(design, "supply.residual_rating")
    rated = f" {number(rating[0] * 1e3)} mA{'' if protects(rating[0], design.region) else ', too high'}" if rating else ""
    device = "" if not known else ", no RCD" if known[0] == "none" else f", RCD{rated}"
    return f"{'' if reached else 'to '}supply{device}"


def _duct(bore: tuple | None, cover: tuple | None, lettering: Lettering) -> str:
    """As a sentence has it: duct, bore 50 mm, cover 600 mm."""
    said = [f"{name} {lettering.said(known[0])}" for name, known in (("bore", bore), ("cover", cover)) if known]
    return ", ".join(["duct", *said])


def _sentence(design: Design, to: tuple | None, duct: str, lettering: Lettering) -> str:
    route = known_of(design, "supply.cord_route")
    said = f"Cable to the pump in a {duct}" + (f", route {lettering.said(route[0])} long" if route else "")
    if to:
        said += f", drawn straight to the supply point, which lies {lettering.from_the_middle(to)} the middle of the blocks"
    return f"{said}{_protection(design)}. {_CAUTION}"


def _protection(design: Design) -> str:
    """The residual-current protection at the supply point, in words; nothing where it is not known."""
    known, rating = known_of(design, "supply.residual_current"), known_of(design, "supply.residual_rating")
    if not known:
        return ""
    if known[0] == "none":
        return "; it has no residual-current protection"
    if rating and not protects(rating[0], design.region):
        return f"; a residual-current device of {number(rating[0] * 1e3)} mA, which does not protect people"
    return f"; residual-current protection {f'of {number(rating[0] * 1e3)} mA, ' if rating else ''}{known[0]}"


def _drawn(to: tuple[float, float], bore: tuple | None, s: Sizes, window: tuple, scale: float) -> tuple[tuple[Record, ...], Point, Point, bool]:
    """The line of the cable with the sides of its duct and the mark at its end; a place on it, its end, and whether that is the supply point."""
    start, end = s.pump, (to[0], to[1])
    share = inside(start, end, window, 2 * MARK / scale)
    shown = share >= 1.0
    stop = (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))
    length = math.dist(start, stop) or 1.0
    ahead = ((stop[0] - start[0]) / length, (stop[1] - start[1]) / length)
    mark = point_mark(stop, scale) if shown else arrow(stop, ahead, scale)
    leaves = ((start[0] + 3 * stop[0]) / 4, (start[1] + 3 * stop[1]) / 4)
    return (*_sides(start, stop, ahead, bore), Line((start, stop), "cable"), *mark), leaves, stop, shown


def _sides(start: Point, stop: Point, ahead: Point, bore: tuple | None) -> list[Record]:
    half = bore[0] / 2 if bore else 0.0
    shifted = [tuple((x - side * half * ahead[1], y + side * half * ahead[0]) for x, y in (start, stop)) for side in (-1, 1)]
    return [Line(pair, "thin") for pair in shifted] if half else []


def inside(start: Point, end: Point, window: tuple[float, float, float, float], margin: float) -> float:
    """The share of the way from start to end that stays within the window, `margin` off its sides."""
    low, high = (window[0] + margin, window[1] + margin), (window[2] - margin, window[3] - margin)
    shares = [
        ((high if end[axis] > start[axis] else low)[axis] - start[axis]) / (end[axis] - start[axis])
        for axis in (0, 1)
        if not low[axis] <= end[axis] <= high[axis]
    ]
    return max(min(1.0, *shares), 0.0) if shares else 1.0


def point_mark(at: Point, scale: float) -> list[Record]:
    half, (x, y) = MARK / scale, at
    square = ((x - half, y - half), (x + half, y - half), (x + half, y + half), (x - half, y + half))
    return [Polygon(square, "paper", "outline"), Line((square[0], square[2]), "thin"), Line((square[1], square[3]), "thin")]


def arrow(at: Point, ahead: Point, scale: float) -> list[Record]:
    long, half, (x, y) = 2 * MARK / scale, 0.5 * MARK / scale, at
    base = (x - long * ahead[0], y - long * ahead[1])
    return [Polygon((at, (base[0] - half * ahead[1], base[1] + half * ahead[0]), (base[0] + half * ahead[1], base[1] - half * ahead[0])), "ink", "none")]
