"""Levels, setting out and tolerances. Numbers are invented."""

from brimwork import system
from brimwork.drawing.records import Level, Line, Measure, Polygon, Record, Sheet, Text, at_scale
from brimwork.exercise.written import Numeric, Wrong


def _build_up(given: dict[str, float]) -> Sheet:
    """Layers under the ground beside the block, from the ground down."""
    records: list[Record] = []
    top = 0.0
    for name, fill, word in (("s", "stone", "stone"), ("b", "blocks", "block"), ("l", "paper", "lining"), ("a", "earth", "sand")):
        bottom = top - given[name]
        records.append(Polygon(((0, bottom), (0.5, bottom), (0.5, top), (0, top)), fill, "thin"))
        records.append(
            Measure((0.5, bottom), (0.5, top), system.length(given[name]), given[name], -17.5 if name == "l" else -6.0)
        )  # thin, and so is its neighbour
        records.append(Text((0.0, (top + bottom) / 2), word, "end", 3.0, nudge=(-2.0, -1.0)))
        top = bottom
    records += [Line(((-0.25, 0), (0, 0))), Level((-0.12, 0), "0.000")]
    words = ("stone", "block", "lining", "sand")
    shown = ", ".join(f"{word} {system.length(given[name])}" for word, name in zip(words, "sbla"))
    view = at_scale((0.3, top / 2), (2, 6, 126, 92), 92 / (0.12 - top * 1.05), tuple(records))
    return Sheet(130, 104, (view,), "Layers under the ground", f"From the ground down: {shown}.")


QUESTIONS = (
    Numeric(
        code="T03.1",
        uses=("depth still to dig",),
        text="The bench mark stands at {B}. Back-sight {s}, fore-sight on the bottom of the pit {f}. The design wants the bottom at {d}. How much is still to dig?",
        given={"B": "10 m", "s": "1.265 m", "f": "1.855 m", "d": "9.35 m"},
        answer="B + s - f - d",
        unit="mm",
        name="depth still to dig",
        keep=("B", "d"),
        vary={"s": ("1.2 m", "1.3 m", "0.005 m"), "f": ("1.82 m", "1.9 m", "0.005 m")},
        where=("0.01*m < B + s - f - d",),
        close="0.5 mm",
        wrong=(
            Wrong("B - s + f - d", "You added the fore-sight. Add the back-sight to the bench mark, then take the fore-sight off."),
            Wrong("-(B + s - f - d)", "The sign is turned. The bottom is still higher than the design, so you dig and do not fill. Turn the sign round."),
        ),
        solution=("Line of sight: {B} + {s} = {B + s|m|5}", "Bottom now: {B + s|m|5} - {f} = {B + s - f|m|4}", "To dig: {B + s - f - d|mm}"),
    ),
    Numeric(
        code="T03.2",
        uses=("depth of the pit",),
        text="Finished ground is level 0, and levels below it carry a minus. Below it lie {s} of stone, a block {b} high, {l} of lining, {a} of sand and {c} of sub-base. What is the level of the"
        " bottom of the dig?",
        given={"s": "65 mm", "b": "420 mm", "l": "10 mm", "a": "30 mm", "c": "100 mm"},
        answer="-(s + b + l + a + c)",
        unit="m",
        name="level",
        close="1 mm",
        vary={"l": ("6 mm", "15 mm", "1 mm"), "c": ("80 mm", "150 mm", "5 mm")},
        wrong=(
            Wrong("-(b + l + a + c)", "You left out the stone. It lies on top of the block, so the dig goes deeper by that much."),
            Wrong("-(s + b)", "You dug to the bottom of the block. Lining, sand and sub-base go under it. Add them as well."),
            Wrong("s + b + l + a + c", "The sign is turned. Levels below the ground carry a minus. Put the minus in."),
            Wrong("-(s + b + a + c)", "You left out the lining. It is thin, yet a rim is set to the millimetre."),
        ),
        solution=("Add all layers: {s} + {b} + {l} + {a} + {c}", "Level: {-(s + b + l + a + c)|m}"),
    ),
    Numeric(
        code="T03.3",
        uses=("diagonal for squaring",),
        text="A pit is to be {a} by {b}. One diagonal measures {d}. By how much is it too long?",
        given={"a": "1.566 m", "b": "1.166 m", "d": "1.975 m"},
        answer="d - sqrt(a**2 + b**2)",
        unit="mm",
        name="difference",
        close="1 mm",
        vary={"d": ("1.6 m", "2.4 m", "0.005 m")},
        where=("8*mm < d - sqrt(a**2 + b**2)", "d - sqrt(a**2 + b**2) < 45*mm"),
        wrong=(
            Wrong("a + b - d", "You added the sides. The diagonal is the root of the sum of their squares. Take that root from the diagonal you measured."),
            Wrong("d - a", "You compared the diagonal with the long side. Work out the true diagonal from both sides first."),
        ),
        solution=("True diagonal: sqrt({a}^2 + {b}^2) = {sqrt(a**2 + b**2)|m|4}", "Too long by {d - sqrt(a**2 + b**2)|mm}: push the sharp corners in"),
    ),
    Numeric(
        code="T03.4",
        text="A bowl's foot is {f} across and stands {e} out of level. Its rim is {r} across. How much is the rim out of level?",
        given={"f": "400 mm", "e": "3 mm", "r": "780 mm"},
        answer="e*r/f",
        unit="mm",
        name="difference in level",
        where=("1.2*f < r",),
        wrong=(
            Wrong("e", "You gave the rim the same drop as the foot. The whole bowl tilts, so a wider rim drops more. Multiply by the ratio of rim to foot."),
            Wrong("e*f/r", "You turned the ratio round. The rim is wider than the foot, so its drop is larger. Multiply by rim over foot."),
        ),
        solution=("The tilt is the same: {e} in {f}", "At the rim: {e} x {r}/{f} = {e*r/f|mm}"),
    ),
    Numeric(
        code="T03.5",
        uses=("flow ratio of a rim out of level",),
        text="Water is to stand {H} over a rim. The rim is out of level by {e} from side to side. How many times as much water goes over the low side as over the high side?",
        given={"H": "3 mm", "e": "1.6 mm"},
        let={"a": "(H + e/2)/(H - e/2)", "b": "(H + e)/(H - e)"},
        answer="a**1.5",
        unit="",
        name="ratio of flows",
        vary={"H": ("3 mm", "6 mm", "0.2 mm"), "e": ("1 mm", "2.5 mm", "0.1 mm")},
        where=("e + 0.4*mm < H",),
        wrong=(
            Wrong("a", "You let the flow grow as the head does. Take the ratio of the heads to the power one and a half."),
            Wrong("b", "You gave each side the whole difference, and left out the power. Half of it lies on each side; then take the power one and a half."),
            Wrong("b**1.5", "You gave each side the whole difference. Half of it lies above the mean and half below. Put in half on each side."),
        ),
        solution=("Low side {H + e/2|mm}, high side {H - e/2|mm}", "Ratio: ({a})^1.5 = {a**1.5}"),
    ),
    Numeric(
        code="T03.6",
        uses=("depth of the pit",),
        text="The drawing shows the layers under the ground, from the top: stone, block, lining, sand. Read it. At what level is the underside of the block?",
        given={"s": "70 mm", "b": "400 mm", "l": "12 mm", "a": "40 mm"},
        answer="-(s + b)",
        unit="m",
        name="level",
        close="1 mm",
        vary={"s": ("50 mm", "90 mm", "5 mm"), "b": ("350 mm", "450 mm", "10 mm"), "l": ("8 mm", "15 mm", "1 mm"), "a": ("30 mm", "60 mm", "5 mm")},
        wrong=(
            Wrong("-b", "You took the block's height alone. The stone lies over it, so add that too."),
            Wrong("-(s + b + l)", "You went on down through the lining. The block stands on the lining, so stop above it."),
            Wrong("-(s + b + l + a)", "You went down to the bottom of the sand. Stop at the underside of the block, which the question asks for."),
            Wrong("s + b", "The sign is turned. Levels below the ground carry a minus. Put the minus in."),
        ),
        solution=("From the ground down: {s} of stone and {b} of block", "Level: {-(s + b)|m}"),
        picture=_build_up,
    ),
)
