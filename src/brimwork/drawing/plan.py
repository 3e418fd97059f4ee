"""The plan of a design (general arrangement), at a true scale: blocks, box, pit, stone, the feature, the pump, and hatched what really presses on the blocks."""

from __future__ import annotations

from dataclasses import dataclass

from brimwork.design.follows.chain import Chain
from brimwork.design.typed.known import Unknown
from brimwork.drawing import shown_keys
from brimwork.drawing.layout import DIMENSION_SIZE
from brimwork.drawing.lettering import BY_REGION, Lettering
from brimwork.drawing.notes import not_shown, notes_below
from brimwork.drawing.placing import spread_apart, width_of
from brimwork.drawing.plan_features import PLAN_FEATURES, PlanFeature
from brimwork.drawing.plan_near import near_label, placed, what_is_near
from brimwork.drawing.plan_supply import Cable, cable, north, north_mark, north_said, possible_labels
from brimwork.drawing.records import GREY, Line, Measure, Point, Polygon, Record, Sheet, Text, View
from brimwork.drawing.scale_bar import scale_bar
from brimwork.drawing.sizes import TOO_LARGE, WIDTH, Sizes
from brimwork.units import InputError, write

_SIZE, _PITCH = 2.8, 4.3  # mm: letters of the labels, and from one label to the next
RIGHT = 24.0  # mm for the dimensions across
_ROW, WIDER = 5.5, 8.0  # mm between two lines of dimensions, and where a text is longer than what it measures
_TALLEST = 125.0  # mm of the plan itself

_Labels = list[tuple[Point, str, str] | tuple[Point, str]]  # what is pointed at, the words, and the key of the value that they show


def plan(chain: Chain, wide: float = WIDTH) -> Sheet:
    """Plan with the blocks along the sheet, which is `wide` mm wide. Raises Unknown with the keys that are missing, InputError for what no sheet can hold."""
    lettering, s = BY_REGION[chain.design.region], Sizes(chain)
    feature = PLAN_FEATURES[chain.design.kind](chain, s, lettering)
    patch, told, pressed = _patch(chain, lettering)
    patches = [(pressed[0][1], *_extent(next(record for record in patch if isinstance(record, Polygon)), lettering))] if pressed else []
    labels = [*feature.labels, *pressed, *_pump_and_pit(chain, s, lettering)]
    possible = [*possible_labels(chain.design, lettering), *(near_label(*one, lettering) for one in placed(chain))]
    place, turn = _place(s, feature, lettering, [one[1] for one in labels] + possible, wide), north(chain.design)
    wired = cable(chain.design, s, lettering, place.window, place.scale)
    beside = what_is_near(chain, lettering, place.window, place.scale)
    view, bar, bottom = _drawn(s, feature, lettering, place, [*patch, *beside.records], wired, [*labels, *beside.labels])
    mark = () if turn is None else (north_mark(turn, (wide - 12.0, bottom - 12.0), place.scale),)
    under = [lettering.worded(one) for one in (*beside.sentences, wired.sentence, *not_shown([*(["north"] if turn is None else []), *wired.lacking]))]
    below, bottom = notes_below(bottom + 3.0, under, wide)
    said = f"{_sentence(chain, s, feature, place, lettering)} {told}"
    heard = " ".join([*([] if turn is None else [north_said(turn)]), *under])
    notes = (Text((4.0, 7.0), f"Plan, {place.name}; {lettering.dimensions}", "start", 2.9, GREY), *below)
    columns = ("what", f"along, {lettering.length}", f"across, {lettering.length}")
    rows = (*_rows(chain, s, lettering), *feature.rows, *patches, *beside.rows, *wired.rows)
    return Sheet(wide, bottom, (view, bar, *mark), f"{chain.design.title}: plan", said, notes, columns, rows, heard)


def _sentence(chain: Chain, s: Sizes, feature: PlanFeature, place: _Place, lettering: Lettering) -> str:
    return (
        f"Plan {place.name}: {feature.says} over {s.count[0]} by {s.count[1]} blocks ({_by(s.blocks, lettering)}) in a box of {_by(s.box, lettering)} inside, "
        f"in a pit of {_by(s.pit, lettering)} "
        f"{lettering.length}; its diagonals are {lettering.said(chain.diagonal)}."
    )


def _pump_and_pit(chain: Chain, s: Sizes, lettering: Lettering) -> _Labels:
    return [(s.pump, f"pump bay {lettering.figure(s.bay)}", "pump.bay"), (_on_diagonal(s), f"pit diagonals {lettering.figure(chain.diagonal)}")]


def _by(pair: tuple[float, float], lettering: Lettering) -> str:
    return " x ".join(map(lettering.figure, pair))


def _extent(patch: Polygon, lettering: Lettering) -> tuple[str, str]:
    """How far a patch reaches along and across."""
    along, across = ([point[axis] for point in patch.points] for axis in (0, 1))
    return lettering.figure(max(along) - min(along)), lettering.figure(max(across) - min(across))


def _rows(chain: Chain, s: Sizes, lettering: Lettering) -> tuple[tuple[str, ...], ...]:
    stone = (2 * s.reach[0], 2 * s.reach[1])
    spans = {"blocks": s.blocks, "box, inside": s.box, "pit": s.pit, "stone": stone, "pump bay": (s.bay, s.bay), "both diagonals of the pit": (chain.diagonal,)}
    return tuple((what, *map(lettering.figure, pair), *(("",) if len(pair) == 1 else ())) for what, pair in spans.items())


def _on_diagonal(s: Sizes) -> Point:
    """Near the corner of the pit, where the diagonal has left the box."""
    return -0.97 * s.pit[0] / 2, -0.97 * s.pit[1] / 2


# --- what presses on the blocks -----------------------------------------------------------------------------------------------------


def _patch(chain: Chain, lettering: Lettering) -> tuple[list[Record], str, _Labels]:
    """The contact patches hatched, a sentence, and a label with the pressure; where nothing stands on the blocks, or the patch is not known, the sentence says so."""
    try:
        shapes = chain.contact_shapes()
    except Unknown:
        return [], "The contact patch is not known.", []
    if not shapes:
        return [], "The blocks carry stone only.", []
    records: list[Record] = []
    for outer, *holes in shapes:
        records += [Polygon(outer, "load", "thin"), *(Polygon(hole, "pale", "thin") for hole in holes)]
    pressure = _pressure(chain, lettering)
    heaviest = " under the heaviest stone" if chain.design.kind == "drilled stones" and len(chain.sizes) > 1 else ""
    lowest = min((point for outer, *_ in shapes for point in outer), key=lambda point: (round(point[1], 6), point[0]))
    return (
        records,
        f"The contact patch is hatched; the greatest pressure on the blocks is {pressure}{heaviest}.",
        [(lowest, f"contact patch, at most {pressure}")],
    )


def _pressure(chain: Chain, lettering: Lettering) -> str:
    try:
        return write(chain.spread_pressure, lettering.pressure)
    except (Unknown, InputError):
        return "pressure not known"


# --- the drawing --------------------------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class _Place:
    """Where the plan stands: what it shows (m), where on the sheet (mm), its scale in mm of paper for a metre, with its name; and where its labels end (m)."""

    window: tuple[float, float, float, float]
    frame: tuple[float, float, float, float]
    scale: float
    name: str
    edge: float


def _place(s: Sizes, feature: PlanFeature, lettering: Lettering, texts: list[str], wide: float) -> _Place:
    """The largest scale at which the plan and its labels fit. Raises InputError where none does."""
    column = 8.0 + max(width_of(text, _SIZE) for text in texts)
    left, right, half = max(s.reach[0], -feature.left), max(s.reach[0], feature.right), max(s.reach[1], feature.half)
    room = wide - RIGHT - 4.0
    edge = s.reach[0] if feature.labels_under else left  # where the labels stand
    fits = [one for one in lettering.scales if (left + right) * one[0] <= room - _start(left, edge, column, one[0]) and 2 * half * one[0] <= _TALLEST]
    if not fits:
        raise InputError(TOO_LARGE)
    scale, name = fits[0]
    top = 12.0 + max(feature.over - (half - feature.dimensioned_at) * scale, 3.0)
    return _Place((-left, -half, right, half), (_start(left, edge, column, scale), top, (left + right) * scale, 2 * half * scale), scale, name, edge)


def _drawn(s: Sizes, feature: PlanFeature, lettering: Lettering, place: _Place, patch: list[Record], wired: Cable, labels: _Labels) -> tuple[View, View, float]:
    """The plan, its scale bar under it, and where both end on the sheet."""
    (*_, right, half), scale = place.window, place.scale
    row = _row(s, lettering, scale)
    records = (*_records(s, feature, patch, wired), *_dimensions(s, lettering, right, half, scale, row), *feature.dimensions)
    lettered = _labels([*labels, *wired.labels], scale, place.edge, half, feature)
    bottom = place.frame[1] + place.frame[3] + 3 * row + 16.0
    return View(place.window, place.frame, (*records, *lettered), clip=False), scale_bar(lettering, scale, (place.frame[0], bottom - 8.0)), bottom


def _start(left: float, edge: float, column: float, scale: float) -> float:
    """Where the drawing starts on the sheet, so that the labels left of `edge` have room."""
    return max(column - (left - edge) * scale, 6.0 if left == edge else 11.0)


def _records(s: Sizes, feature: PlanFeature, patch: list[Record], wired: Cable) -> list[Record]:
    (rx, ry), (px, py), bodies = s.reach, (s.pit[0] / 2, s.pit[1] / 2), s.bodies
    pit = bodies["pit"].outline
    return [
        Polygon(bodies["stone"].outline, "pale", "thin", "catch.apron"),
        Polygon(bodies["box"].outline, "solid", "thin", "ground.board"),
        Polygon(bodies["box"].hole, "pale", "thin"),
        *feature.under,
        *patch,
        Line((*pit, pit[0]), "outline", shown_keys.PIT_SIZE),
        *(Line(((-px, side * py), (px, -side * py)), "centre") for side in (-1, 1)),
        Line(((-rx, 0.0), (rx, 0.0)), "centre"),
        Line(((0.0, -ry), (0.0, ry)), "centre"),
        *_blocks(s),  # over the middle lines, where a joint may lie
        *feature.records,
        *wired.records,
        Polygon(bodies["pump bay"].outline, "paper", "outline", "pump.bay"),
    ]


def _blocks(s: Sizes) -> list[Record]:
    (along, across), (half, side), (length, width, _) = s.count, (s.blocks[0] / 2, s.blocks[1] / 2), s.block
    upright: list[Record] = [Line(((-half + i * length, -side), (-half + i * length, side)), "hidden", "reservoir.block_length") for i in range(along + 1)]
    return upright + [Line(((-half, -side + i * width), (half, -side + i * width)), "hidden", "reservoir.block_width") for i in range(across + 1)]


def _spans(s: Sizes) -> tuple[tuple[str, tuple[float, float]], ...]:
    return ("blocks", s.blocks), ("box", s.box), ("pit", s.pit), ("stone", (2 * s.reach[0], 2 * s.reach[1]))


def _row(s: Sizes, lettering: Lettering, scale: float) -> float:
    """mm from one line of dimensions to the next under the drawing."""
    return WIDER if any(width_of(f"{what} {lettering.figure(along)}", DIMENSION_SIZE) > along * scale for what, (along, _) in _spans(s)) else _ROW


def _dimensions(s: Sizes, lettering: Lettering, right: float, half: float, scale: float, row: float) -> list[Record]:
    """Along under the drawing, across on its right: blocks, box, pit, stone; across in the same order without words where those are too long."""
    spans = _spans(s)
    records: list[Record] = []
    long = any(width_of(f"{what} {lettering.figure(across)}", DIMENSION_SIZE) > across * scale for what, (_, across) in spans)
    for i, (what, (along, across)) in enumerate(spans):
        records.append(
            Measure((-along / 2, -half), (along / 2, -half), f"{what} {lettering.figure(along)}", along, -(4.5 + row * i), key=shown_keys.ALONG[what])
        )
        records.append(
            Measure(
                (right, -across / 2),
                (right, across / 2),
                lettering.figure(across) if long else f"{what} {lettering.figure(across)}",
                across,
                -(4.5 + _ROW * i),
                along=True,
                key=shown_keys.ACROSS[what],
            )
        )
    return records


def _labels(labels: _Labels, scale: float, edge: float, half: float, feature: PlanFeature) -> list[Record]:
    """Labels in a column on the left, spread so that no two touch, each with a line to what it names."""
    ordered = sorted(labels, key=lambda label: -label[0][1])
    highest = -feature.half * scale - 5.0 if feature.labels_under else half * scale - 3.0
    places = spread_apart([min(label[0][1] * scale, highest) for label in ordered], _PITCH)
    shift = min(highest - places[0], 0.0)
    records: list[Record] = []
    for (point, text, *key), place in zip(ordered, places, strict=True):
        end = (-edge - 3.0 / scale, (place + shift) / scale)
        records += [Line((point, (-edge, end[1]), end), "dimension"), Text(end, text, "end", _SIZE, nudge=(-1.0, -1.0), key=key[0] if key else "")]
    return records
