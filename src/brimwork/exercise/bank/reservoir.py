"""Reservoir and water balance. Numbers are invented."""

from brimwork import system
from brimwork.drawing.records import Level, Line, Measure, Polygon, Record, Sheet, Text, at_scale
from brimwork.exercise.choices import Choose, FindTheSlip, Tell
from brimwork.exercise.written import Numeric, Wrong

_VOID = {"n": ("90 %", "95 %", "1 %")}


def _tank(given: dict[str, float]) -> Sheet:
    """Section through a tank with its running and static levels and the pump's limit."""
    static, running, limit = given["s"], given["r"], given["p"]
    top = static + 0.1
    records: list[Record] = [
        Polygon(((0, 0), (0.9, 0), (0.9, running), (0, running)), "water", "none"),
        Line(((0, top), (0, 0), (0.9, 0), (0.9, top))),
        Line(((0, running), (0.9, running)), "water"),
        Line(((0, static), (0.9, static)), "hidden"),
        Line(((0, limit), (0.9, limit)), "hidden"),
        Level((0.12, running), "running"),
        Level((0.5, static), "static"),
        Text((0.45, limit / 2), "the pump draws air below this line", "middle", 2.8),
    ]
    for place, height in ((1.08, limit), (1.2, running), (1.32, static)):
        records.append(Measure((place, height), (place, 0.0), system.length(height), height, 0.0))
    view = at_scale((0.66, top / 2), (4, 6, 152, 62), 56 / (top + 0.02), tuple(records))
    said = f"From the floor up: the pump's limit {system.length(limit)}, running level {system.length(running)}, static level {system.length(static)}."
    return Sheet(160, 74, (view,), "Section through the tank", said)


QUESTIONS = (
    Numeric(
        code="T06.1",
        uses=("usable water above the pump limit",),
        text="Void blocks cover {l} by {w} and are {n} void. The water stands {z} deep at rest. The pump needs {d}. How much water is usable?",
        given={"l": "1.2 m", "w": "0.8 m", "n": "95 %", "z": "380 mm", "d": "150 mm"},
        answer="l*w*n*(z - d)",
        unit="L",
        name="usable volume",
        vary=_VOID,
        where=("1.4*d < z",),
        wrong=(
            Wrong("l*w*(z - d)", "You left out the void fraction. The blocks themselves take up room, so multiply by their void."),
            Wrong("l*w*n*z", "You left in the water that the pump cannot reach. Take its depth off first."),
            Wrong("l*w*0.4*(z - d)", "You used the void of loose stone. Blocks are nearly all void: use the figure given for them."),
        ),
        solution=("Usable depth: {z} - {d} = {z - d|mm}", "Volume: {l} x {w} x {n} x {z - d|mm} = {l*w*n*(z - d)|L}"),
    ),
    Numeric(
        code="T06.2",
        uses=("days without top-up",),
        text="{a} of wet surface is open to the air; the tank's plan is {p}. Grass would give off {E}, and these surfaces give off {k} times that. Splash takes {s}. Of {v} usable, {t} is"
        " in transit while the pump runs. For how many days does it run without a top-up?",
        given={"a": "2.2 m2", "p": "0.96 m2", "E": "4 mm/day", "k": "1.15", "s": "3 L/day", "t": "24 L", "v": "190 L"},
        answer="(v - t)/(a*E*k + s)",
        unit="day",
        name="time",
        vary={"p": ("0.7 m2", "1.2 m2", "0.02 m2"), "k": ("1.1", "1.4", "0.05")},
        wrong=(
            Wrong("v/(a*E*k + s)", "You forgot the water in transit. While the pump runs it is not in the tank, so take it off."),
            Wrong("(v - t)/(a*E*k)", "You forgot the splash. Add it to what dries each day."),
            Wrong("(v - t)/(p*E*k + s)", "You used the plan of the tank. Water dries from every wet surface, so use that area."),
        ),
        solution=("Loss: {a} x {E} x {k} + {s} = {a*E*k + s|L/day}", "Water to lose: {v} - {t} = {v - t|L}", "Days: {(v - t)/(a*E*k + s)|day}"),
    ),
    Numeric(
        code="T06.3",
        uses=("water that siphons back", "water that stands above the rim"),
        text="The pump starts with everything drained back. The vessel's surface is {a}; water rises {H} over its rim, and the hose mouth lies {y} below the rim with no"
        " check valve. How much water does the vessel take?",
        given={"a": "0.478 m2", "H": "2.4 mm", "y": "15 mm"},
        answer="a*(H + y)",
        unit="L",
        name="volume",
        vary={"a": ("0.3 m2", "0.7 m2", "0.01 m2"), "H": ("2 mm", "5 mm", "0.1 mm"), "y": ("12 mm", "30 mm", "1 mm")},
        wrong=(
            Wrong("a*H", "You forgot what siphons back. With no check valve the vessel drains down to the hose mouth, and must be filled again."),
            Wrong("a*y", "You forgot what stands over the rim. The water rises by that too, so add it."),
            Wrong("a*(y - H)", "You took the rise over the rim off. It must be filled as well, so add it."),
        ),
        solution=("From the hose mouth up: {y} + {H} = {y + H|mm}", "Volume: {a} x {y + H|mm} = {a*(H + y)|L}"),
    ),
    Numeric(
        code="T06.12",
        uses=("water in a pipe", "water on its way through the stone"),
        text="While the pump runs, {l} of hose with a bore of {d} stands full. {c} of stone, {t} thick, holds {r} of its space as water on its way. How much do hose and"
        " stone hold?",
        given={"l": "2.4 m", "d": "25 mm", "c": "0.9 m2", "t": "50 mm", "r": "3 %"},
        let={"h": "pi/4*d**2*l", "s": "c*t*r"},
        answer="h + s",
        unit="L",
        name="volume",
        vary={
            "l": ("2 m", "4 m", "0.1 m"),
            "d": ("19 mm", "32 mm", "1 mm"),
            "c": ("0.6 m2", "1.5 m2", "0.05 m2"),
            "t": ("40 mm", "80 mm", "5 mm"),
            "r": ("2 %", "5 %", "0.5 %"),
        },
        wrong=(
            Wrong("h + c*t", "You filled the stone with water. It only runs through, and takes the share that is given."),
            Wrong("4*h + s", "You put the bore where half of it belongs. Halve it before you square it."),
            Wrong("h", "You forgot the stone. It holds water on its way, so add that."),
            Wrong("s", "You forgot the hose. It stands full while the pump runs, so add it."),
        ),
        solution=("Hose: pi/4 x ({d})^2 x {l} = {h|L}", "Stone: {c} x {t} x {r} = {s|L}", "Together {h + s|L}"),
    ),
    Numeric(
        code="T06.13",
        uses=("drop of the level on start",),
        text="When the pump starts, the vessel takes {v}, hose and stone take {w}. The tank has a plan of {p}, and blocks of {n} void fill it. By how much does the level"
        " fall?",
        given={"v": "8.3 L", "w": "2.6 L", "p": "0.96 m2", "n": "93 %"},
        answer="(v + w)/(p*n)",
        unit="mm",
        name="drop in level",
        vary={"v": ("6 L", "20 L", "0.5 L"), "w": ("2 L", "6 L", "0.2 L"), "p": ("0.7 m2", "1.6 m2", "0.02 m2"), "n": ("88 %", "95 %", "1 %")},
        wrong=(
            Wrong("(v + w)/p", "You divided by the whole plan. The blocks fill part of it, so multiply the plan by the void fraction."),
            Wrong("v/(p*n)", "You forgot hose and stone. Their water comes out of the tank too, so add it."),
            Wrong("(v + w)*n/p", "You multiplied by the void fraction. There is less room, so the level falls by more: divide by it."),
        ),
        solution=("In all {v} + {w} = {v + w|L}", "Water area: {p} x {n} = {p*n|m2}", "Drop: {v + w|L} over {p*n|m2} = {(v + w)/(p*n)|mm}"),
    ),
    Numeric(
        code="T06.4",
        uses=("drain-back ratio",),
        text="A float valve holds the running level {z} below the overflow. The tank's plan is {p}, its void fraction {n}. {t} comes back when the pump stops. How many"
        " times does the free space hold that?",
        given={"z": "36 mm", "p": "1.2 m2", "n": "92 %", "t": "21.5 L"},
        answer="p*n*z/t",
        unit="",
        name="ratio",
        vary={"n": ("88 %", "95 %", "1 %")},
        wrong=(
            Wrong("p*z/t", "You used the whole plan. The blocks fill part of it, so multiply by the void fraction."),
            Wrong("t/(p*n*z)", "You turned the ratio round. Divide the free space by the water that comes back."),
        ),
        solution=("Free space: {p} x {n} x {z} = {p*n*z|L}", "Ratio: {p*n*z|L} over {t} = {p*n*z/t}"),
    ),
    Numeric(
        code="T06.5",
        uses=("storm water for the overflow",),
        text="A storm brings {r} of rain on {a} of catch area. There is {f} of space below the overflow. How much must the overflow pipe carry away?",
        given={"r": "1.5 in", "a": "45 ft2", "f": "25 US gal"},
        answer="a*r - f",
        unit="US gal",
        name="volume",
        where=("1.3*f < a*r",),
        wrong=(
            Wrong("a*r", "You forgot the free space. It fills first, so take it off."),
            Wrong("a*r/ft**3*US_gal", "You left it in cubic feet and took nothing off. A cubic foot is 7.48 gallons; then take off the free space."),
            Wrong("12*a*r - f", "You left the rain in inches. Divide by 12 to get feet before you multiply by square feet."),
        ),
        solution=("Rain: {a} x {r|ft} = {a*r|ft3} = {a*r|US gal}", "Over: {a*r|US gal} - {f} = {a*r - f|US gal}"),
    ),
    Numeric(
        code="T06.6",
        uses=("drop of the level on start",),
        text="The drawing shows a tank with water area 0.9 m2. Read it. How much water went into transit when the pump started?",
        given={"s": "410 mm", "r": "360 mm", "p": "150 mm"},
        answer="0.9*m**2*(s - r)",
        unit="L",
        name="volume in transit",
        vary={"s": ("405 mm", "440 mm", "5 mm"), "r": ("330 mm", "360 mm", "5 mm"), "p": ("120 mm", "180 mm", "10 mm")},
        wrong=(
            Wrong(
                "0.9*m**2*(r - p)",
                "You took what is left above the pump's limit. What is in transit is the fall from static to running level. Take the running level from the static one.",
            ),
            Wrong("0.9*m**2*s", "You took all the water at rest. Only the fall from static to running level is in transit."),
            Wrong(
                "0.9*m**2*(s - p)",
                "You took the usable water. What is in transit is the fall from static to running level. Take the running level from the static one.",
            ),
        ),
        solution=("The level falls from {s} to {r}: {s - r|mm}", "0.9 m2 x {s - r|mm} = {0.9*m**2*(s - r)|L}"),
        picture=_tank,
    ),
    FindTheSlip(
        code="T06.7",
        uses=("drop of the level on start",),
        text="Blocks 1.2 m by 0.8 m, 95 % void, stand in a tank. 20 L goes into transit. How far does the level fall?",
        lines=(
            ("Plan: 1.2 x 0.8 = 0.96 square metres.", "The plan holds: length times width."),
            ("20 L is 0.020 cubic metres.", "This holds: a cubic metre has 1000 litres."),
            ("Water area: 0.96 / 0.95 = 1.011 square metres.", ""),
            ("Fall: the volume over the water area.", "This holds: volume over area gives depth."),
        ),
        slip=3,
        because="The blocks leave less room, so the water area is 0.96 x 0.95 = 0.912 square metres. The level falls by 21.9 mm.",
    ),
    Choose(
        code="T06.20",
        uses=("water in blocks and stone",),
        text="A lined pit measures 1500 litres. Twelve blocks of 60 litres go in, each 95 % empty. Pebbles fill the rest; 40 % of their space is empty. How much water"
        " does it hold?",
        right="About 1000 litres.",
        because="The blocks hold 684 litres. The other 780 litres of the pit are 40 % empty and hold 312. Together 996.",
        wrong=(
            ("About 680 litres.", "That is the water in the blocks alone. Water stands between the pebbles too."),
            ("About 1430 litres.", "You took 95 % of the whole pit. Only the blocks are so empty; pebbles leave 40 %."),
            ("About 600 litres.", "You took 40 % of the whole pit. That goes for pebbles alone, and blocks hold far more."),
        ),
    ),
    Tell(
        code="T06.21",
        uses=("water in blocks and stone",),
        text="Why does the same pit hold so much more water with void blocks than with pebbles?",
        model="Blocks are nearly all empty, so almost all their space takes water, while pebbles fill more than half of theirs with stone.",
        points=("blocks are nearly all empty", "pebbles fill more than half of their space", "water gets only the empty share"),
    ),
    FindTheSlip(
        code="T06.22",
        uses=("water in blocks and stone",),
        text="A lined pit of 2000 litres takes 16 blocks of 50 litres, each 95 % empty. Pebbles, 35 % empty, fill the rest. Somebody works out the water.",
        lines=(
            ("Space of the blocks: 16 x 50 = 800 L.", "This holds: the number of blocks times the size of one."),
            ("Water in the blocks: 0.95 x 800 = 760 L.", "This holds: the empty share of the blocks."),
            ("Water in the stone: 0.35 x 2000 = 700 L.", ""),
            ("Together: 760 + 700 = 1460 L.", "The sum holds: blocks and stone together."),
        ),
        slip=3,
        because="Stone fills only what the blocks leave. Take their 800 litres off the pit first.",
        mend=("water held", "1180 L", "1460 L"),
        on_way=("water in the stone", "420 L"),
    ),
)
