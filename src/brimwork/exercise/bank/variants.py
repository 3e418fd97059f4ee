"""Other features on the same reservoir. Numbers are invented."""

from brimwork.exercise.choices import Choose, FindTheSlip, Tell
from brimwork.exercise.written import Numeric, Wrong

_CRITICAL = "(q**2/g)**(1/3)"

QUESTIONS = (
    Numeric(
        code="T14.1",
        uses=("flow for each metre of edge",),
        text="A blade {b} long takes {Q} in all. What flow for each metre of edge is that?",
        given={"b": "36 in", "Q": "3600 US gal/h"},
        answer="Q/b",
        unit="L/s per m",
        name="flow for each metre",
        vary={"b": ("24 in", "60 in", "2 in"), "Q": ("1800 US gal/h", "4800 US gal/h", "100 US gal/h")},
        wrong=(
            Wrong("Q/b*ft/m", "You gave the flow for one foot. A metre is 3.28 feet, so multiply."),
            Wrong("Q/m", "You forgot to divide by the length. Share the flow out along the edge, in metres."),
            Wrong("60*Q/b", "You gave litres a minute. The answer is asked for a second, so divide by 60."),
        ),
        solution=("Flow: {Q} = {Q|L/s}", "Length: {b} = {b|m}", "For each metre: {Q/b|L/s per m}"),
    ),
    Numeric(
        code="T14.2",
        uses=("critical depth", "depth at the brink", "speed at the brink", "time of fall", "throw of a free sheet or jet"),
        text="{q} runs over a flat blade and falls {h}. How far out does it land? (Depth at the brink = 0.715 times the critical depth.)",
        given={"q": "4 L/s per m", "h": "0.75 m"},
        let={"y": _CRITICAL, "v": "q/(0.715*y)", "t": "sqrt(2*h/g)"},
        answer="v*t",
        unit="m",
        name="throw",
        wrong=(
            Wrong("q/y*t", "You used the critical depth at the brink. There the water is thinner, 0.715 of that, and faster."),
            Wrong("v*h*second/m", "You multiplied speed by height. Find the time of the fall first."),
            Wrong("2*h", "You used the speed of falling as the speed forward. The forward speed is that at the brink. Put in the speed at the brink."),
        ),
        solution=("Critical depth {y|mm}, at the brink {0.715*y|mm}", "Speed {v|m/s}, time {t|s}", "Throw: {v|m/s} x {t|s} = {v*t|m}"),
    ),
    Numeric(
        code="T14.3",
        text="A boulder is roughly an ellipsoid {a} by {b} by {c}, of density {r}. What is its mass?",
        given={"a": "0.72 m", "b": "0.6 m", "c": "0.5 m", "r": "2650 kg/m3"},
        let={"v": "pi/6*a*b*c"},
        answer="v*r",
        unit="kg",
        name="mass",
        vary={
            "a": ("0.65 m", "0.9 m", "0.01 m"),
            "b": ("0.5 m", "0.64 m", "0.01 m"),
            "c": ("0.35 m", "0.5 m", "0.01 m"),
            "r": ("2500 kg/m3", "2750 kg/m3", "50 kg/m3"),
        },
        where=("1.1*b < a", "1.1*c < b"),
        wrong=(
            Wrong("a*b*c*r", "You took the box around it. An ellipsoid fills a little over half of that: multiply by pi and divide by 6."),
            Wrong("8*v*r", "You put full sizes where half sizes belong. Halve each one."),
            Wrong("v*1600*kg/m**3", "You used the density of loose stone. A boulder is solid: use its own density."),
        ),
        solution=("Ellipsoid: 4/3 pi x half of each size = {v|m3}", "Mass: {v|m3} x {r} = {v*r|kg}"),
    ),
    Numeric(
        code="T14.4",
        uses=("critical depth", "head over a step"),
        text="Two pools of {p} each and a header of {h} rise by the head over their lips when {q} runs. That head is 1.5 times the critical depth. How many litres do those"
        " rises hold?",
        given={"p": "0.4 m2", "h": "0.3 m2", "q": "2.2 L/s per m"},
        let={"y": _CRITICAL, "s": "2*p + h"},
        answer="1.5*y*s",
        unit="L",
        name="volume",
        wrong=(
            Wrong("1.5*y*h", "You counted the header only. Both pools rise too."),
            Wrong("y*s", "You used the critical depth as the rise. The pool rises by the whole head, 1.5 times that."),
            Wrong("s*q*second/m", "You multiplied area by flow. Find the head first, then multiply the area by that."),
        ),
        solution=("Critical depth: {y|mm}, so the head is {1.5*y|mm}", "Area: {s|m2}", "Volume: {1.5*y*s|L}"),
    ),
    Numeric(
        code="T14.5",
        uses=("speed by Manning", "flow down a rill"),
        text="A rill {w} wide falls 1 in {s}, with a Manning value of {n}, and runs {y} deep. What is its flow?",
        given={"w": "320 mm", "s": "60", "n": "0.015", "y": "12 mm"},
        let={"a": "w*y", "r": "a/(w + 2*y)", "k": "m**(1/3)/second/n"},
        answer="k*a*r**(2/3)/sqrt(s)",
        unit="L/s",
        name="flow",
        vary={"y": ("12 mm", "25 mm", "1 mm"), "w": ("200 mm", "350 mm", "10 mm")},
        wrong=(
            Wrong("k*a*y**(2/3)/sqrt(s)", "You took the depth for the hydraulic radius. The sides are wet too, so divide the area by the whole wet edge."),
            Wrong("k*a*r**(2/3)/s", "You forgot the root of the slope. Flow goes with its root."),
            Wrong("k*a*r**1.5/sqrt(s)*m**(-5/6)", "The power is the wrong way round. The radius stands to the power 2/3. Turn the power round."),
        ),
        solution=("Area {a|cm2}, wet edge {w + 2*y|mm}, radius {r|mm}", "Flow: area x radius^(2/3) x sqrt(1/{s})/{n} = {k*a*r**(2/3)/sqrt(s)|L/s}"),
    ),
    Choose(
        code="T14.6",
        text="A header tank is fed from below, and the pump stops. What keeps its water from running back?",
        right="A check valve, or a feed that comes in above the water.",
        because="Water runs back through a pump that stands still. Only a valve or an air gap stops it.",
        wrong=(
            ("The pump itself.", "A pump that stands still is an open pipe. Add a check valve or bring the feed in high."),
            ("The weight of the water.", "Weight is what drives the water back down. Add a check valve or bring the feed in high."),
            ("A narrow hose.", "A narrow hose only slows it. Add a check valve or bring the feed in high."),
        ),
    ),
    Choose(
        code="T14.20",
        text="The sheet from a blade lands one slab out from the wall. You set the blade four times as high, with the same flow. How far out does it land?",
        right="About two slabs out.",
        because="It falls for twice as long, since the time of a fall grows with the root of the height, and it moves forward as fast as before.",
        wrong=(
            ("About four slabs out.", "You let the throw grow as the height does. The time of a fall grows with its root."),
            ("Still one slab out.", "It is in the air for longer, and moves forward all that time."),
            ("About eight slabs out.", "That is the height times its root. The time of a fall grows with the root alone."),
        ),
    ),
    Tell(
        code="T14.21",
        text="A bowl is changed for a blade. Reservoir and pump may stay. Which sums do you do again, and which stay as they are?",
        model="The edge decides the flow, and the water lands further out, so flow, head and apron are done again; pit and losses are worked as before.",
        points=("the edge decides the flow that is wanted", "the water lands elsewhere", "pit and losses are worked as before"),
    ),
    FindTheSlip(
        code="T14.22",
        text="A blade 900 mm long is fed with 2.7 L/s, and its sheet falls 500 mm. Somebody works out how far out it lands.",
        lines=(
            ("For each metre: 2.7/0.9 = 3 L/s per m.", "This holds: the flow is shared out along the edge."),
            ("Critical depth: (0.003^2/9.81)^(1/3) = 0.00972 m.", "This holds: it follows from the flow for each metre alone."),
            ("At the brink: 0.715 x 9.72 = 6.95 mm deep, so 0.003/0.00695 = 0.432 m/s.", "This holds: the water is thinner at the brink, and faster."),
            ("Time of the fall: 0.5/9.81 = 0.0510 s.", ""),
            ("Throw: 0.432 x 0.0510 = 0.0220 m.", "This follows rightly from the line before."),
        ),
        slip=4,
        because="A fall takes the root of two heights over g: (2 x 0.5/9.81)^(1/2) = 0.319 s.",
        mend=("throw", "138 mm", "22 mm"),
    ),
    Numeric(
        code="T14.23",
        text="A sheet falls {h} and is to land {x} out. How fast must it leave the lip?",
        given={"h": "400 mm", "x": "300 mm"},
        answer="x/sqrt(2*h/g)",
        unit="m/s",
        name="speed",
        vary={"h": ("300 mm", "600 mm", "10 mm"), "x": ("200 mm", "350 mm", "10 mm")},
        wrong=(
            Wrong("x/sqrt(h/g)", "You left out the 2. The time of a fall is the root of two heights over g, so put it in."),
            Wrong("x/(2*h/g)*second", "You left out the root. The time of a fall is the root of two heights over g, so take it."),
        ),
        solution=("Time of the fall: sqrt(2 x {h}/g) = {sqrt(2*h/g)|s}", "Speed: {x} over that = {x/sqrt(2*h/g)|m/s}"),
        uses=("throw of a free sheet or jet",),
    ),
)
