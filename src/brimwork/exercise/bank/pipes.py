"""Pipes and pumps. Numbers are invented."""

from brimwork.exercise.choices import Choose, FindTheSlip, Tell
from brimwork.exercise.written import Numeric, Wrong

QUESTIONS = (
    Numeric(
        code="T05.1",
        uses=("speed in a pipe",),
        text="{Q} flows through tubing with a bore of {d}. How fast is it, in feet a second? (Speed = 0.4085 x US gallons a minute over the bore in inches squared.)",
        given={"Q": "600 US gal/h", "d": "0.75 in"},
        let={"v": "Q/(pi/4*d**2)"},
        answer="v",
        unit="ft/s",
        name="speed",
        vary={"d": ("0.75 in", "1.5 in", "0.125 in"), "Q": ("400 US gal/h", "1200 US gal/h", "20 US gal/h")},
        where=("v < 8*ft/second", "1*ft/second < v"),
        wrong=(
            Wrong("60*v", "You put gallons an hour where gallons a minute belong. Divide by 60 first."),
            Wrong("v*d/inch", "You did not square the bore. The area grows with the bore times itself."),
            Wrong("v/4", "You took the bore as the radius. The formula wants the full bore across."),
        ),
        solution=("In a minute: {Q|US gal/min}", "Speed: 0.4085 x {Q|US gal/min} over {d} squared = {v|ft/s}"),
        like=("speed in a pipe", {"Q": "Q", "d_pipe": "d"}),
    ),
    Numeric(
        code="T05.2",
        uses=("Reynolds number in a pipe", "friction factor by Blasius", "head lost to friction by flow"),
        text="{Q} runs through {l} of smooth hose with a bore of {d} (kinematic viscosity {n}). Find the friction head, with f = 0.316/Re^0.25.",
        given={"Q": "0.35 L/s", "l": "3 m", "d": "20 mm", "n": "1.1 cSt"},
        let={"v": "Q/(pi/4*d**2)", "Re": "v*d/n", "f": "0.316/Re**0.25", "h": "f*l/d*v**2/(2*g)"},
        answer="h",
        unit="m",
        name="friction head",
        vary={"n": ("1.05 cSt", "1.4 cSt", "0.05 cSt"), "d": ("16 mm", "26 mm", "1 mm"), "l": ("2 m", "6 m", "0.5 m")},
        wrong=(
            Wrong("4*h", "You put a Darcy factor into the form with 4 f. With this f there is no 4. Leave the 4 out."),
            Wrong("2*h", "You left out the 2 under the velocity head. It is the speed squared over two g. Put the 2 in."),
            Wrong("h/1000", "You left the bore in millimetres. Put it in metres, as you did the length."),
        ),
        solution=(
            "Speed: {v|m/s}, so Re = {Re}",
            "f = 0.316/Re^0.25 = {f}",
            "Friction head: f x {l}/{d} x ({v|m/s})^2/(2 g) = {h|m}",
        ),
        like=("head lost to friction by flow", {"f": "f", "L_pipe": "l", "Q": "Q", "d_pipe": "d"}),
    ),
    Numeric(
        code="T05.3",
        uses=("total dynamic head from its parts",),
        text="The lowest water level while running is {a} below ground. The water in the vessel stands {b} above ground. Friction in the hose takes {f}, fittings and"
        " exit {e}. What total head must the pump give?",
        given={"a": "0.33 m", "b": "0.44 m", "f": "0.18 m", "e": "0.12 m"},
        answer="a + b + f + e",
        unit="m",
        name="head",
        wrong=(
            Wrong("b + f + e", "You measured the lift from the ground. It begins at the lowest water level, below the ground."),
            Wrong("b - a + f + e", "You took the depth off. The level lies below the ground, so its depth adds to the lift."),
            Wrong("a + b", "You left out the losses. Add the friction, the fittings and the exit."),
        ),
        solution=("Lift: {b} + {a} = {a + b|m}", "With losses: {a + b|m} + {f} + {e} = {a + b + f + e|m}"),
    ),
    Numeric(
        code="T05.4",
        uses=("duty flow",),
        text="A pump gives the head {H} x (1 - (Q/{M})^2). The system needs a lift of {S}, and {h} of loss at {R}, which grows with Q squared. At what flow do they meet?",
        given={"H": "3 m", "M": "2000 L/h", "S": "1.3 m", "h": "0.45 m", "R": "800 L/h"},
        answer="M*sqrt((H - S)/(H + h*(M/R)**2))",
        unit="L/h",
        name="flow",
        keep=("R",),
        where=("1.4*S < H",),
        wrong=(
            Wrong(
                "M",
                "You took the greatest flow off the label. The pump gives that only at no head at all. Find the flow where pump and system have the same head.",
            ),
            Wrong("M*sqrt((H - S)/H)", "You left out the loss in the pipe. It grows with the flow squared and must be on the system's side."),
            Wrong(
                "(-H/M + sqrt((H/M)**2 + 4*h/R**2*(H - S)))/(2*h/R**2)",
                "You drew the pump's curve as a straight line. It bends: the head falls with the flow squared. Square the flow on both sides.",
            ),
        ),
        solution=(
            "At {M} the system would lose {h} x ({M}/{R})^2 = {h*(M/R)**2|m}",
            "Set both heads equal: {H} - {S} = ({H} + {h*(M/R)**2|m}) x (Q/{M})^2",
            "Take the root: Q = {M} x {sqrt((H - S)/(H + h*(M/R)**2))} = {M*sqrt((H - S)/(H + h*(M/R)**2))|L/h|4}",
        ),
        like=("duty flow", {"H_0": "H", "Q_max": "M", "z_s": "S", "h_loss": "h", "Q_1": "R"}),
    ),
    Numeric(
        code="T05.5",
        uses=("best hydraulic power of a label", "nameplate ratio"),
        text="A label claims {Q} at most, {H} at most, and {P}. The best power in the water of such a curve is 0.385 x density x g x the two. How many times the"
        " power on the label is that?",
        given={"Q": "550 US gal/min", "H": "10 ft", "P": "40 W"},
        let={"r": "1000*kg/m**3*g*Q*H/P"},
        answer="2/(3*sqrt(3))*r",
        unit="",
        name="ratio",
        wrong=(
            Wrong("r", "You multiplied the greatest flow by the greatest head. They never occur together: take 0.385 of that."),
            Wrong(
                "2/(3*sqrt(3))*r/60",
                "You read the label as gallons an hour. That may be what was meant, but work with what is printed first. Read it as gallons a minute.",
            ),
            Wrong("2/(3*sqrt(3))*r*US_gal/litre", "You changed gallons into litres twice. Once is enough: 3.785 litres each. Change them once."),
        ),
        solution=(
            "Best power in the water: 0.385 x density x g x {Q} x {H} = {2/(3*sqrt(3))*r*P|W}",
            "Over {P}: {2/(3*sqrt(3))*r}. Above 1 no pump can do that, so the unit on the label is in doubt",
        ),
    ),
    Choose(
        code="T05.6",
        uses=("total dynamic head",),
        text="From which level is the pump's lift measured?",
        right="From the lowest water level while it runs.",
        because="Water falls in the reservoir when the pump starts, and the lift grows by as much.",
        wrong=(
            ("From the ground.", "The water stands below the ground. The pump must lift it from there, so the lift is larger."),
            ("From the bottom of the pump.", "Water above the pump presses up by itself. Measure from the water's surface."),
            ("From the water level before it starts.", "Part of the water is on its way once the pump runs, and the level drops. Use that lower level."),
        ),
    ),
    Choose(
        code="T05.7",
        uses=("head lost to friction by flow",),
        text="A hose with a bore of 25 mm carries 30 litres a minute. You change it for one of 19 mm, and keep the flow. What does the head that the hose loses do?",
        right="It grows about 4 times.",
        because="At one flow the loss goes with the bore to the power 5, and 25/19 to that power is 3.9.",
        wrong=(
            ("It grows about 1.3 times.", "That is how much thinner the hose is. The water also has to run faster, and that counts far more."),
            ("It grows about 1.7 times.", "That is how much faster the water runs. Loss goes with the speed squared, and a thin hose rubs more."),
            ("It grows about 3 times.", "That is the speed squared alone. In a thinner hose more of the water rubs on the wall as well."),
        ),
    ),
    Tell(
        code="T05.8",
        uses=("head lost to friction by flow",),
        text="Why does a hose that is a little thinner lose so much more head?",
        model="The same flow runs faster in a thinner hose, loss grows with the speed squared, and more of the water rubs on the wall.",
        points=("the water runs faster", "loss grows with the speed squared", "more of the water is near the wall"),
    ),
    FindTheSlip(
        code="T05.9",
        uses=("total dynamic head",),
        text="30 L/min is to be lifted 0.9 m through 4 m of hose with a bore of 25 mm (friction factor 0.025, fittings 4.7 in all). Somebody works out the head that the"
        " pump must give.",
        lines=(
            ("Speed: 0.0005 m3/s over 0.000491 m2 = 1.02 m/s.", "The speed holds: flow over the area of the bore."),
            ("Velocity head: 1.02 squared over two g = 0.0529 m.", "The velocity head holds: speed squared over two g."),
            ("Hose: 0.025 x 4/0.025 x 0.0529 = 0.212 m.", "The hose holds: the friction factor, times how many bores long it is, times the velocity head."),
            ("Fittings: 4.7 x 0.0529 = 0.249 m.", "The fittings hold: their number times the velocity head."),
            ("Head: 0.212 + 0.249 = 0.461 m.", ""),
        ),
        slip=5,
        because="Losses are only part of it. The pump must lift the water too, so the lift is added.",
        mend=("head that the pump must give", "1.36 m", "0.461 m"),
    ),
)
