"""What a learner's own number would lead to: how deep the water would stand, what would come out. Told and, where it can be, drawn.

It is worked from that number alone, so it gives no answer away; and it lets a learner judge a number by its consequence, as on site.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from brimwork import system, topics
from brimwork.drawing.pictures import picture
from brimwork.drawing.pictures.lining import ground, true_scale
from brimwork.drawing.pictures.paper import rectangle
from brimwork.drawing.records import ACCENT, GREY, Level, Line, Measure, Point, Polygon, Record, Sheet, Text, View, at_scale
from brimwork.exercise.diagnosis import read_answer
from brimwork.exercise.question import TOLERANCE, Question
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES
from brimwork.tables import SHEET_FLOWS
from brimwork.units import InputError, convert

# Flow for each metre of edge (m2/s), up to which the water is such: the limits of the checks on film and sheet. Common practice, no source.
FILMS = (
    (0.08e-3, "a drip here and there"),
    (0.15e-3, "a thin film that breaks into streaks"),
    (0.40e-3, "a film that clings to the face"),
    (SHEET_FLOWS[0.3].value, "too much to cling, too little for a whole sheet"),
    (math.inf, "a whole sheet"),
)
_DRAWN_HEADS = (0.05e-3, 0.6)  # m: thinner cannot be seen on paper, thicker does not fit


@dataclass(frozen=True)
class Consequence:
    """A full sentence for the learner, and a drawing where there is one."""

    sentence: str
    sheet: Sheet | None = None


def consequence(question: Question, text: str) -> Consequence | None:
    """What the number typed as an answer would lead to; None where nothing is known of that, or nothing can be read. Never raises."""
    name, letters = question.like or ("", {})
    if name not in _TOLD:
        return None
    try:
        value = read_answer(question, text)
        if value.dimension != topics.find(name).dimension or not value.value > 0:
            return None
        return _TOLD[name](_Asked(question, topics.find(name), letters), value.value)
    except (InputError, ArithmeticError, ValueError):
        return None


@dataclass(frozen=True)
class _Asked:
    question: Question
    formula: Formula
    letters: dict[str, float]

    def right(self, value: float) -> bool:
        return abs(value - self.question.answer) <= self.question.band(self.question.answer)

    def said(self, letter: str, value: float) -> str:
        """A value in the unit system of the question, to three figures."""
        row = QUANTITIES[letter]
        return row.us_text(value) if self.american else row.metric_text(value)

    @property
    def american(self) -> bool:
        """Whether the question speaks in US units."""
        return system.current() == system.FEET or any(
            word in f" {self.question.unit} {' '.join(self.question.numbers.values())}" for word in ("gal", " ft", " in")
        )


# --- edges --------------------------------------------------------------------------------------------------------------------------


def film(q: float) -> str:
    """How water runs over an edge at a flow for each metre of it (m2/s), in words."""
    return next(word for most, word in FILMS if q <= most)


def _length(letters: dict[str, float]) -> float:
    return letters["b"] if "b" in letters else math.pi * letters["d_rim"]


def _over_an_edge(asked: _Asked, value: float) -> Consequence:
    """An answer for a flow is turned into the head it makes, and the other way round."""
    given = "H" if asked.formula.result == "Q" else "Q"
    other = _other_way(asked.formula)
    letters = {**{name: number for name, number in asked.letters.items() if name != given}, asked.formula.result: value}
    found = other(**letters)
    flow, head = (value, found) if given == "H" else (found, value)
    word = film(flow / _length(letters))
    if given == "H":
        said = f"With your flow the water would stand {asked.said('H', head)} over the edge: {word}."
    else:
        said = f"With your head {asked.said('Q', flow)} would run over the edge: {word}."
    told = "" if asked.right(value) else f" The question has {asked.said(given, asked.letters[given])}."
    return Consequence(said + told, _edge_drawn(asked, other, letters, head, said))


def _other_way(formula: Formula) -> Formula:
    return formula.inverse_of or next(one for one in topics.formulas().values() if one.inverse_of is formula)


def _edge_drawn(asked: _Asked, other: Formula, letters: dict[str, float], head: float, said: str) -> Sheet | None:
    """The section of the picture that belongs to the formula, with the head that the question gives as a broken line."""
    if not _DRAWN_HEADS[0] <= head <= _DRAWN_HEADS[1]:
        return None
    shown = picture(other, letters, asked.formula.result).sheet
    view = shown.views[0]
    given = _given_level(view, asked.letters["H"], asked) if "H" in asked.letters else ()
    view = _without_sky(replace(view, records=(*_head_beside_level(view, asked.said("H", head)), *given)), max(head, asked.letters.get("H", 0.0)))
    return Sheet(96, view.frame[1] + view.frame[3] + 4, (view,), "What your number would lead to", said, shown.notes)


def _without_sky(view: View, highest: float) -> View:
    """The view cut off a little above the highest water."""
    x0, y0, x1, y1 = view.window
    left, top, width, height = view.frame
    cut = min(highest + 8 * (y1 - y0) / height, y1)
    return View((x0, y0, x1, cut), (left, top, width, height * (cut - y0) / (y1 - y0)), view.records)


def _head_beside_level(view: View, said: str) -> Iterator[Record]:
    """The section with its head written at the water level: a dimension has no room over a film."""
    for record in view.records:
        if isinstance(record, Level):
            yield replace(record, text=f"yours: {said} over the edge")
        elif not isinstance(record, Measure):
            yield record


def _given_level(view: View, head: float, asked: _Asked) -> Iterator[Record]:
    """From the edge outwards, so that it leaves the words at the water level free."""
    x0, y0, x1, y1 = view.window
    if head < y1:
        yield Line(((x0 + 0.66 * (x1 - x0), head), (x1, head)), "second curve")
        yield Text((x1, head), f"given {asked.said('H', head)}", "end", 3.0, ACCENT, (-1.0, 1.2))


# --- pipes --------------------------------------------------------------------------------------------------------------------------


def _head_to_give(asked: _Asked, value: float) -> Consequence:
    """A pump that gives just this head: what it sends through the hose."""
    lift, head = asked.letters["z_s"], asked.said("H_t", value)
    if value <= lift:
        said = f"A pump that gives just {head} cannot lift water {asked.said('z_s', lift)}: nothing would come out."
        return Consequence(said, _buckets(asked, 0.0, said))
    losses = topics.formulas()["losses for each square of the flow"]
    flow = math.sqrt((value - lift) / losses(**losses.only(asked.letters)))
    said = f"A pump that gives just {head} would send {asked.said('Q', flow)} through this hose."
    return _with_flow(asked, value, flow, said)


def _with_flow(asked: _Asked, value: float, flow: float, said: str) -> Consequence:
    told = "" if asked.right(value) else f" The question has {asked.said('Q', asked.letters['Q'])}."
    return Consequence(said + told, _buckets(asked, flow, said))


def _loss(asked: _Asked, value: float) -> Consequence:
    """Loss goes with the square of the flow, as long as the friction factor stays."""
    flow = asked.letters["Q"] * math.sqrt(value / asked.question.answer)
    return _with_flow(asked, value, flow, f"This hose loses {asked.said('h_f', value)} when it carries {asked.said('Q', flow)}.")


def _speed(asked: _Asked, value: float) -> Consequence:
    flow = value * math.pi / 4 * asked.letters["d_pipe"] ** 2
    return _with_flow(asked, value, flow, f"At {asked.said('v', value)} this hose would carry {asked.said('Q', flow)}.")


def _meeting(asked: _Asked, value: float) -> Consequence:
    """What the pump gives at this flow, and what the hose asks for."""
    letters = asked.letters
    gives = letters["H_0"] * max(1 - (value / letters["Q_max"]) ** 2, 0.0)
    asks = letters["z_s"] + letters["h_loss"] * (value / letters["Q_1"]) ** 2
    if abs(gives - asks) <= 3 * TOLERANCE * asks:
        end = "They agree, so this is what comes."
    else:
        end = "The pump cannot hold that, so less would come." if gives < asks else "There is head to spare, so more would come."
    said = f"At your flow the pump gives {asked.said('H_pump', gives)} of head, and the hose asks for {asked.said('H_t', asks)}. {end}"
    return Consequence(said, _bars((("pump gives", gives), ("hose asks for", asks)), asked, said))


# --- liners -------------------------------------------------------------------------------------------------------------------------


def _liner(asked: _Asked, value: float) -> Consequence:
    """Where the ends of a liner of that length come to lie: in the pit, on the apron, or past it."""
    letters, cut = asked.letters, asked.said("l_cut", value)
    floor, side = letters.get("L_in", letters.get("L", 0.0)), math.hypot(letters["D"], letters.get("s_back", 0.0))
    past = (value - floor) / 2 - side  # the edge of the pit, at each end
    spare = past - letters["w_apron"]
    if past < 0:
        told = f"each end would lie {asked.said('D', -past)} short of the edge of the pit" if past > -side else "it would cover no more than the floor"
        said = f"Cut to {cut}, {told}: water would run out behind it."
    elif spare < 0:
        said = f"Cut to {cut}, it would reach {asked.said('w_apron', past)} over the edge at each end. The apron is {asked.said('w_apron', letters['w_apron'])} wide."
    else:
        said = f"Cut to {cut}, it would cover the apron and leave {asked.said('w_trim', spare)} to trim at each end."
    wanted = "" if asked.right(value) or spare < 0 else f" The question wants {asked.said('w_trim', letters['w_trim'])}."
    return Consequence(said + wanted, _laid(floor / 2, letters.get("s_back", 0.0), letters["D"], letters["w_apron"], value / 2, said))


def _laid(half: float, back: float, deep: float, apron: float, reach: float, said: str) -> Sheet | None:
    """The pit in section with a liner of twice `reach` in it, water no higher than that holds it, and a mark at each end of the apron."""
    end, side = half + back + apron, math.hypot(deep, back)
    scale, _ = true_scale(2 * max(end, reach - side + back), deep, 80.0, 22.0)
    if reach * scale > 400:
        return None  # it would run far out of the picture
    mm, frame = 1 / scale, (4.0, 4.0, 88.0, 42.0)
    view = at_scale((0.0, deep / 2 + mm), frame, scale, ())
    pit = [((0.0, 0.0), (way * half, 0.0), (way * (half + back), deep), (way * 99 * max(end, reach), deep)) for way in (-1, 1)]
    records = [
        *ground(half, half + back, deep, view.window[0], -8 * mm, min(max((reach - half) / side, 0.0), 0.8)),
        *(Line(line, "thin") for line in pit),
        *(Line(((way * end, deep - 2 * mm), (way * end, deep + 3 * mm)), "thin") for way in (-1, 1)),
        *(Text((way * end, deep), "end of the apron", "start" if way < 0 else "end", 3.0, nudge=(0, 4.5)) for way in (-1, 1)),
        *(Line(_as_far(*line, reach=reach), "force") for line in pit),
    ]
    return Sheet(96, 50, (replace(view, records=tuple(records), clear=True),), "What your number would lead to", said)


def _as_far(*corners: Point, reach: float) -> tuple[Point, ...]:
    """The line through the corners, no longer than `reach`."""
    kept = [corners[0]]
    for a, b in zip(corners, corners[1:]):
        whole = math.dist(a, b)
        share = min(reach / whole, 1.0) if whole else 1.0
        kept.append((a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])))
        reach -= share * whole
        if share < 1:
            break
    return tuple(kept)


# --- drawings -----------------------------------------------------------------------------------------------------------------------

_FRAME = (4.0, 4.0, 88.0, 58.0)
_BUCKETS = {False: (10.0, "L"), True: (2.0, "US gal")}  # metric, and US
_SECONDS = (0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1800, 3600)


def _buckets(asked: _Asked, flow: float, said: str) -> Sheet:
    """Two buckets held under the outlet for as long: the flow that the question has, and the learner's own."""
    given, (size, unit) = asked.letters["Q"], _BUCKETS[asked.american]
    seconds = next((t for t in _SECONDS if convert(given * t, unit) >= 0.35 * size), _SECONDS[-1])
    records: list[Record] = [Text((44, 54), f"two buckets of {size:g} {unit} after {seconds:g} s", "middle", 3.4)]
    for left, name, each in ((8, "given", given), (50, "yours", flow)):
        records += _bucket(left, name, convert(each * seconds, unit) / size, (size, unit), asked.said("Q", each))
    return Sheet(96, 64, (_flat(records),), "What your number would lead to", said)


def _bucket(left: float, name: str, full: float, bucket: tuple[float, str], flow: str) -> Iterator[Record]:
    """A bucket that is `full` to a share of its size."""
    bottom, top, share, (size, unit) = 13.0, 45.0, min(full, 1.0), bucket
    lean, level = 4.0, 13.0 + 32.0 * share
    middle, out = left + 15, 4.0 * share
    yield Polygon(((left + lean, bottom), (left + 30 - lean, bottom), (left + 30 - lean + out, level), (left + lean - out, level)), "water", "none")
    yield Line(((left, top), (left + lean, bottom), (left + 30 - lean, bottom), (left + 30, top)), "outline")
    yield Line(((left + lean - out, level), (left + 30 - lean + out, level)), "water")
    yield Text((middle, 48), "runs over" if full > 1 else f"{full * size:.2g} {unit}" if full else "nothing", "middle", 3.2)
    yield Text((middle, 7), f"{name}: {flow}", "middle", 3.2, ACCENT if name == "yours" else GREY)


def _bars(heads: tuple[tuple[str, float], ...], asked: _Asked, said: str) -> Sheet:
    most = max(head for _, head in heads)
    records: list[Record] = [Text((44, 54), "at your flow", "middle", 3.4), Line(((8, 13), (80, 13)), "axis")]
    for left, (name, head) in zip((14, 50), heads):
        high = 13 + 32 * head / most
        records.append(Polygon(rectangle(left, 13, left + 24, high), "water", "thin"))
        records += [Text((left + 12, high + 1.5), asked.said("H_t", head), "middle", 3.2), Text((left + 12, 7), name, "middle", 3.2, GREY)]
    return Sheet(96, 64, (_flat(records),), "What your number would lead to", said)


def _flat(records: list[Record]) -> View:
    """A view whose world is the paper itself, in mm."""
    return View((0.0, 0.0, _FRAME[2], _FRAME[3]), _FRAME, tuple(records))


_TOLD: dict[str, Callable[[_Asked, float], Consequence]] = {
    **dict.fromkeys(("flow over a level lip", "head over a level lip", "flow by weir coefficient", "head by weir coefficient", "flow over a round rim",
                     "head on a round rim", "flow over a broad crest", "head at a broad crest"), _over_an_edge),
    **dict.fromkeys(("length of the liner", "length of the liner for sloping sides"), _liner),
    "total dynamic head": _head_to_give,
    "head lost to friction by flow": _loss,
    "speed in a pipe": _speed,
    "duty flow": _meeting,
}  # fmt: skip
