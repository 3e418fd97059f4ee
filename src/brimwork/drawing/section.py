"""The section of a design, at a true scale: layers of the ground, reservoir with its levels, and the feature over it; a cascade whole on a view of its own."""

from __future__ import annotations

from dataclasses import dataclass

from brimwork.design.follows import levels
from brimwork.design.follows.chain import Chain
from brimwork.design.typed.design import Design
from brimwork.drawing import shown_keys
from brimwork.drawing.layout import DIMENSION_SIZE
from brimwork.drawing.lettering import BY_REGION, Lettering
from brimwork.drawing.notes import not_shown, notes_below, wrapped
from brimwork.drawing.pictures.paper import rectangle
from brimwork.drawing.placing import spread_apart, width_of
from brimwork.drawing.records import GREY, INK, NIGHT, Level, Line, Measure, Polygon, Record, Sheet, Text, View
from brimwork.drawing.scale_bar import scale_bar
from brimwork.drawing.section_features import SECTION_FEATURES, SectionFeature, stair_records
from brimwork.drawing.sizes import HEIGHT, TOO_LARGE, WIDTH, Sizes, Stairs, known_of
from brimwork.units import InputError

_LEFT = 14.0  # mm kept free for the depth of the pit
_TALLEST, AROUND = 130.0, 62.0  # mm of a section from formation to the top, and what dimensions, scale bar and notes take over and under it
_BAND = 5.0  # mm of paper that soil is hatched wide
_PITCH = 4.3  # mm between two level labels
_SIZE = 2.8  # mm of their letters
_SHORT = {"top of the highest stone": "highest stone"}


@dataclass(frozen=True)
class _Paper:
    """Where a view at a true scale stands: mm of paper for a metre, the world at its left and top edges, and the left and top of the sheet there."""

    scale: float
    x0: float
    y1: float
    left: float
    top: float

    def view(self, width: float, height: float, records: tuple[Record, ...], clip: bool) -> View:
        window = (self.x0, self.y1 - height / self.scale, self.x0 + width / self.scale, self.y1)
        return View(window, (self.left, self.top, width, height), records, clip)


def section(chain: Chain, wide: float = WIDTH) -> Sheet:
    """Section along the blocks, on a sheet that is `wide` mm wide. Raises Unknown with the keys that are missing, InputError for what no sheet can hold."""
    lettering, s = BY_REGION[chain.design.region], Sizes(chain)
    feature = SECTION_FEATURES[chain.design.kind](chain, s, lettering)
    above, top = _long_section(chain, s, lettering, wide) if chain.design.kind == "cascade" else ((), 12.0)
    views, bottom, name = _through(chain, s, feature, lettering, top, wide)
    notes = _titles(f"Section, {name}; {lettering.dimensions}; levels to the finished paving", wide, top - 5.0 if not above else top - 4.0)
    if above:
        notes = (*_titles(above[-1], wide, 7.0), *notes)
    both = chain.running_levels_said(lettering.said)
    told = [lettering.worded(sentence) for sentence in (*_stones(feature, lettering), *_ground_told(chain.design), *([both] if both else []))]
    below, bottom = notes_below(bottom, [lettering.worded(_layers(s, lettering)), *told], wide)
    rows = tuple((lettering.worded(level.name), lettering.level(level.height), level.kind) for level in reversed(chain.levels_shown()))
    columns = ("level", f"{lettering.length} to the finished paving", "kind")
    said = lettering.worded(_sentence(s, feature, lettering, name))
    return Sheet(wide, bottom, (*above[:-1], *views), f"{chain.design.title}: section", said, (*notes, *below), columns, rows, " ".join(told))


def _titles(text: str, wide: float, bottom: float) -> tuple[Text, ...]:
    """A line over a view, in as many lines as a narrow sheet takes, the last one at `bottom`."""
    lines = wrapped(text, wide - 8.0)
    return tuple(Text((4.0, bottom - 4.2 * (len(lines) - 1 - i)), line, "start", 2.9, GREY) for i, line in enumerate(lines))


def _sentence(s: Sizes, feature: SectionFeature, lettering: Lettering, name: str) -> str:
    along, across = s.count
    blocks = f"{along} by {across} blocks" if across > 1 else f"{along} block{'' if along == 1 else 's'}"
    water = s.level["static water"] - s.level["reservoir floor"]
    return (
        f"Section {name}: {feature.says} over {blocks} in a lined pit {lettering.said(-s.level['formation'])} deep; "
        f"water stands {lettering.said(water)} deep with the pump off."
    )


def _layers(s: Sizes, lettering: Lettering) -> str:
    layers = {"sub-base": s.sub_base, "sand": s.sand, "lining": s.lining, "blocks": s.block[2], **({"cover": s.cover} if s.cover else {}), "stone": s.stone}
    return "Layers from the formation up: " + ", ".join(f"{name} {lettering.figure(thick)}" for name, thick in layers.items())


def _stones(feature: SectionFeature, lettering: Lettering) -> list[str]:
    """The list of the stones, where there are several."""
    if len(feature.each) < 2:
        return [f"The stone, across x high in {lettering.named}: {one}." for one in feature.each]
    return [f"Stones from left to right, across x high in {lettering.named}: {'; '.join(f'{i}) {one}' for i, one in enumerate(feature.each, start=1))}."]


def _ground_told(design: Design) -> list[str]:
    """What the section does not show of the ground, and why."""
    absent = {"site.ground_water": "No ground water stands above the reservoir floor.", "site.frost_depth": "No frost enters the ground."}
    known = {key: known_of(design, key) for key in absent}
    names = {"site.ground_water": "highest ground water", "site.frost_depth": "frost line"}
    none = [absent[key] for key, value in known.items() if value and not value[0]]
    return none + not_shown(names[key] for key, value in known.items() if not value)


def _through(chain: Chain, s: Sizes, feature: SectionFeature, lettering: Lettering, top: float, wide: float) -> tuple[list[View], float, str]:
    """The views of the section through the reservoir, where they end on the sheet, and the name of their scale."""
    shown = [(_SHORT.get(level.name, level.name), level.height, level.water) for level in reversed(chain.levels_shown()) if level.name not in feature.elsewhere]
    texts = [f"{lettering.worded(name)} {lettering.level(height)}" for name, height, _ in shown]
    labels = 11.0 + max(width_of(text, _SIZE) for text in texts)
    reach, left = max(s.reach[0], feature.right), max(s.reach[0], -feature.left)
    high = max(feature.top, s.stone_top, 0.0)
    low = min(s.level["formation"], s.level.get("frost line", 0.0))
    found = lettering.fitting(reach + left, high - low, wide - _LEFT - labels - 8.0, min(_TALLEST, HEIGHT - AROUND - top))
    if not found:
        raise InputError(TOO_LARGE)
    scale, name = found
    places = spread_apart([height * scale for _, height, _ in shown], _PITCH)
    dimensions, numbers = _with_room(feature, scale)
    upper = max(high * scale + (15.0 if dimensions else 4.0 + 1.5 * _SIZE * bool(numbers)), places[0] + _PITCH)
    lower = min(low * scale - _BAND - 16.0, places[-1] - _PITCH)
    paper = _Paper(scale, -left - 4.0 / scale, upper / scale, _LEFT, top)
    width, height = (reach + left) * scale + 8.0, upper - lower
    ground = (*_ground(s, paper, width), *_reservoir(s), *feature.records, *_water_lines(s), *_pump(s), *_in_the_ground(s, paper, width))
    drawn = paper.view(width, height, ground, clip=True)
    lettered = (*_dimensions(s, paper, lettering), *dimensions, *numbers, *_labels(s, feature, drawn, list(zip(shown, texts, places, strict=True))))
    bar = scale_bar(lettering, scale, (_LEFT, top + height + 3.0))
    return [drawn, paper.view(width, height, lettered, clip=False), bar], top + height + 12.0, name


def _with_room(feature: SectionFeature, scale: float) -> tuple[tuple[Record, ...], list[Record]]:
    """The feature's dimensions where they stand clear of each other; else, of several stones, their numbers, or nothing where even those touch."""
    if (
        not feature.numbers
        or feature.dimensions
        and _clear([(d.start[0], d.end[0], d.text) for d in feature.dimensions if isinstance(d, Measure)], scale, DIMENSION_SIZE, 7.0)
    ):
        return feature.dimensions, []
    clear = _clear([(x, x, text) for (x, _), text in feature.numbers], scale, _SIZE, 0.5)
    return (), [Text(at, text, "middle", _SIZE, nudge=(0.0, 1.2)) for at, text in feature.numbers] if clear else []


def _clear(spans: list[tuple[float, float, str]], scale: float, size: float, beside: float) -> bool:
    """Whether texts over spans from x to x stand apart, each with `beside` mm of room for its arrows."""
    rooms = [((a + b) / 2 * scale, max(width_of(text, size), (b - a) * scale) / 2 + beside / 2) for a, b, text in spans]
    return all(after - half - (before + room) >= 0 for (before, room), (after, half) in zip(rooms, rooms[1:]))


def _in_the_ground(s: Sizes, paper: _Paper, width: float) -> list[Record]:
    """Ground water and frost line: beside the box, and under the floor right across."""
    left, right, out = paper.x0, paper.x0 + width / paper.scale, s.box[0] / 2 + s.board
    records: list[Record] = []
    for name in levels.IN_THE_GROUND:
        if name in s.level:
            y = s.level[name]
            pieces = ((left, right),) if y < s.level["reservoir floor"] else ((left, -out), (out, right))
            records += [Line(((a, y), (b, y)), name, shown_keys.OF_LEVEL[name]) for a, b in pieces]
    return records


def _ground(s: Sizes, paper: _Paper, width: float) -> list[Record]:
    """A band of soil with the pit cut out, the layers under the floor, the fill beside the box, and the finished paving."""
    left, right = paper.x0, paper.x0 + width / paper.scale
    low, edge, band = s.level["formation"], s.pit[0] / 2, _BAND / paper.scale
    under_it = min(low, s.level.get("frost line", low)) - band
    bed, reach = min(0.0, s.box_top), s.reach[0]
    shelf = ((-reach, 0.0), (-reach, bed), (-edge, bed)) if reach > edge else ((-edge, 0.0),)
    top = [(left, 0.0), *shelf, (-edge, low), (edge, low), *((-x, y) for x, y in reversed(shelf)), (right, 0.0)]
    under = [
        (right, bed - band),
        (edge + band, bed - band),
        (edge + band, under_it),
        (-edge - band, under_it),
        (-edge - band, bed - band),
        (left, bed - band),
    ]
    return [
        Polygon((*top, *under), "earth", "none"),
        Polygon(s.bodies["sub-base"].upright, "concrete", "thin", "ground.sub_base"),
        Polygon(s.bodies["sand bed"].upright, "pale", "thin", "ground.sand"),
        *(Polygon(side, "pale", "none", "ground.working_space") for side in s.bodies["working space"].cut),
        Line(tuple(top), "outline"),
    ]


def _reservoir(s: Sizes) -> list[Record]:
    """Box, blocks with their water, stone over them and over the apron, lining."""
    floor, block_top, inside, (block, _, _) = s.level["reservoir floor"], s.level["block top"], s.box[0] / 2, s.block
    half, top, reach, bodies = s.blocks[0] / 2, s.stone_top, s.reach[0], s.bodies
    starts = [-half + i * block for i in range(s.count[0])]
    return [
        *(Polygon(side, "solid", "thin", "ground.board") for side in bodies["box"].cut),
        Polygon(bodies["water at rest"].upright, "water", "none", "reservoir.static_level"),
        *(Line((*rectangle(x, floor, x + block, block_top), (x, floor)), "thin", "reservoir.block_length") for x in starts),
        *(Line(((x + block * k / 6, floor), (x + block * k / 6, block_top)), "grid") for x in starts for k in range(1, 6)),
        *((Polygon(bodies["stone"].upright, "stone", "none", "catch.apron"),) if top > s.box_top else ()),
        Polygon(bodies["stone in the box"].upright, "stone", "none", "catch.stone_thickness"),
        *((Polygon(bodies["cover"].upright, "concrete", "outline", "reservoir.cover"),) if s.cover else ()),
        Line(((-reach, 0.0), (-reach, s.box_top), (-inside, s.box_top), (-inside, floor), (inside, floor), (inside, s.box_top), (reach, s.box_top), (reach, 0.0)),
             "second curve", "ground.lining_thickness"),
    ]  # fmt: skip


def _pump(s: Sizes) -> list[Record]:
    """The pump in its bay in the corner, and the hose that rises to where the feature is fed."""
    bay, pump = s.bodies["pump bay"], s.bodies["pump"]
    (left, right), tall = bay.reach(0), pump.high - pump.low
    return [
        *(Line(((x, bay.low), (x, bay.high)), "outline", "pump.bay") for x in (left, right)),
        Polygon(pump.upright, "pale", "outline", shown_keys.PUMPED),
        Line(((s.pump[0], pump.high), *((x, z) for x, _, z in s.bodies.hose)), "hidden", "pipe.bore"),
        Text((right, pump.low + 0.4 * tall), "pump", "start", 2.8, INK, (1.0, 0.0), key=shown_keys.PUMPED),
    ]


def _water_lines(s: Sizes) -> list[Record]:
    """The water levels across the blocks: the static one drawn out, the others dashed; the triangle stands on the static one."""
    half, static = s.blocks[0] / 2, s.level["static water"]
    others = [name for name in ("lowest water", "cut-out", "top-up", "running water", "overflow") if name in s.level]
    return [
        *(Line(((-half, s.level[name]), (half, s.level[name])), "water level", shown_keys.OF_LEVEL[name]) for name in others),
        Line(((-half, static), (half, static)), "water", "reservoir.static_level"),
        Level((half - 0.08, static)),
    ]


def _dimensions(s: Sizes, paper: _Paper, lettering: Lettering) -> list[Record]:
    low, left = s.level["formation"], paper.x0
    deeper = (low - min(low, s.level.get("frost line", low))) * paper.scale
    box = f"box {lettering.figure(s.box[0])}"
    first = _BAND + 5.0 + deeper
    second = first + (6.0 if width_of(box, DIMENSION_SIZE) <= s.box[0] * paper.scale else 8.0)
    spans = ((s.box[0], box, first, shown_keys.BOX_SIZE), (s.pit[0], f"pit {lettering.figure(s.pit[0])}", second, shown_keys.PIT_SIZE))
    along = [Measure((-span / 2, low), (span / 2, low), text, span, -offset, key=key) for span, text, offset, key in spans]
    return [*along, Measure((left, low), (left, 0.0), lettering.figure(-low), -low, 4.0, along=True, key=shown_keys.PIT_DEPTH)]


def _labels(s: Sizes, feature: SectionFeature, view: View, shown: list) -> list[Record]:
    """Level labels in a column on the right, each with a line to its level; a water level carries its triangle."""
    scale, right = view.scale[0], view.window[2]
    starts = {"block top": s.blocks[0] / 2, "stone top": s.box[0] / 2, "liner edge": s.reach[0], "staple line": s.reach[0]} | feature.starts
    records: list[Record] = []
    for (name, height, water), text, place in shown:
        inside = s.blocks[0] / 2 if water or name in ("pump intake", "reservoir floor") else s.pit[0] / 2
        start = right if name in levels.IN_THE_GROUND else starts.get(name, inside)
        bend, end, key = right + 2.0 / scale, right + 6.0 / scale, shown_keys.OF_LEVEL.get(name, "")
        records.append(Line(((start, height), (bend, height), (end, place / scale), (end + (3.4 if water else 0.0) / scale, place / scale)), "dimension", key))
        records += [Level((end + 1.7 / scale, place / scale))] if water else []
        records.append(Text((end, place / scale), text, "start", _SIZE, NIGHT if water else INK, (4.0 if water else 1.0, -1.0), key=key))
    return records


def _long_section(chain: Chain, s: Sizes, lettering: Lettering, wide: float) -> tuple[tuple, float]:
    """A cascade whole, from header to reservoir: its views, and last the words over it; and where they end on the sheet."""
    stairs = Stairs(chain)
    reach, high, low = s.reach[0], stairs.lips[0][1], s.level["formation"]
    found = lettering.fitting(reach - stairs.back, high - low, wide - 26.0, 90.0)
    if not found:
        raise InputError(TOO_LARGE)
    scale, name = found
    paper = _Paper(scale, stairs.back - 16.0 / scale, high + 17.0 / scale, 4.0, 12.0)
    width, height = (reach - stairs.back) * scale + 18.0, (high - low) * scale + 17.0 + _BAND + 2.0
    drawn = paper.view(width, height, (*_ground(s, paper, width), *_reservoir(s), *stair_records(chain, stairs)), clip=True)
    under = 12.0 + 17.0 + high * scale + _BAND + 5.0  # there is room under the ground on the left
    bar, bottom = scale_bar(lettering, scale, (8.0, under)), max(12.0 + height, under + 6.0)
    said = f"Long section, {name}; {lettering.dimensions}; each fall {lettering.figure(stairs.fall)}"
    return (drawn, paper.view(width, height, tuple(_stair_dimensions(stairs, lettering, scale)), clip=False), bar, said), bottom + 14.0


def _stair_dimensions(stairs: Stairs, lettering: Lettering, scale: float) -> list[Record]:
    (x, top), (last, low) = stairs.lips[0], stairs.lips[-1]
    along = [Measure((a, top), (b, top), text, b - a, offset, key=key) for (a, b, text, offset), key in zip(stairs.spans(lettering), stairs.span_keys)]
    down = (Measure((last, low), (last, top), lettering.figure(top - low), top - low, -1.0, key="cascade.step_fall"),) if (top - low) * scale >= 5.0 else ()
    lip = (
        Line(((x, top), (last, top)), "dimension"),
        Text((last, top), f"header lip {lettering.level(top)}", "start", _SIZE, nudge=(1.5, 1.2), key="cascade.top_level"),
    )
    height = (Measure((stairs.back, 0.0), (stairs.back, top), lettering.figure(top), top, 5.0, along=True, key="cascade.top_level"),) if top > 0 else ()
    return [*along, *down, *lip, *height]
