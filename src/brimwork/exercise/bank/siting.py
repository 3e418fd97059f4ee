"""Brief, siting and survey. Numbers are invented; the rules inside the questions are common practice, no source."""

from brimwork.exercise.choices import Choose, Order
from brimwork.exercise.written import Numeric, Wrong

QUESTIONS = (
    Numeric(
        code="T01.1",
        uses=("root protection radius",),
        text="A tree's stem is {d} across. A pit {l} long points at the tree, with its centre {a} from the stem. Roots are kept clear in a circle whose radius"
        " is 12 stem diameters. How far does the nearest edge of the pit lie inside that circle? (Outside counts as minus.)",
        given={"d": "350 mm", "l": "1.8 m", "a": "5 m"},
        answer="12*d - (a - l/2)",
        unit="m",
        name="distance inside the circle",
        close="0.01 m",
        wrong=(
            Wrong("12*d - a", "You measured to the middle of the pit. Take off half its length, for roots meet the near edge first."),
            Wrong("12*pi*d - (a - l/2)", "You used the girth of the stem. The rule wants the width across it, so leave pi out."),
        ),
        solution=("Radius of the circle: 12 x {d} = {12*d|m}", "Nearest edge: {a} - {l/2|m} = {a - l/2|m}", "Inside by {12*d - a + l/2|m}"),
    ),
    Numeric(
        code="T01.2",
        uses=("distance to keep from a footing",),
        text="The underside of a wall footing is {f} below ground. A pit will be {D} deep in loose sand. It must stay outside a line that runs from the footing's"
        " bottom edge, {s} across for 1 down. How far from the footing must the pit's edge be at least?",
        given={"f": "14 in", "D": "31 in", "s": "1.5"},
        answer="(D - f)*s",
        unit="in",
        name="distance",
        keep=("s",),
        where=("1.3*f < D",),
        wrong=(
            Wrong("D*s", "You used the whole depth of the pit. Only the depth below the footing counts, so take the footing's depth off first."),
            Wrong("D - f", "You used one across for one down. Loose sand needs the flatter line that is given."),
            Wrong("(D - f)/s", "You turned the slope round. The distance across is larger than the depth here, so multiply."),
        ),
        solution=("Depth below the footing: {D} - {f} = {D - f|in}", "Distance: {s} x {D - f|in} = {(D - f)*s|in}"),
    ),
    Numeric(
        code="T01.3",
        uses=("height that a sill hides",),
        text="A reader's eye is {e} above the floor, {a} behind a window. The sill is {s} above the floor. A bowl stands {b} beyond the window, in a yard {y} lower"
        " than the floor. What is the lowest height above the yard that the reader can see there?",
        given={"e": "1.15 m", "a": "3 m", "s": "0.8 m", "b": "4 m", "y": "0.2 m"},
        answer="s - (e - s)/a*b + y",
        unit="m",
        name="height",
        where=("s + 0.1*m < e", "0.1*m < s - (e - s)/a*b"),
        wrong=(
            Wrong("s - (e - s)/a*b", "You measured from the floor. The yard is lower, so add the step down to it."),
            Wrong("s + y", "You let the line of sight run level. It falls from the eye to the sill and goes on falling."),
            Wrong("e - (e - s)/a*b + y", "You began the falling line at the eye. Begin at the sill, for the bowl's distance is measured from there."),
        ),
        solution=(
            "The line falls {e - s|m} in {a}",
            "At {b} past the sill it is {s} - {(e - s)/a*b|m} = {s - (e - s)/a*b|m} above the floor",
            "Above the yard: {s - (e - s)/a*b + y|m}",
        ),
    ),
    Numeric(
        code="T01.4",
        uses=("sound level at a distance",),
        text="A small fall makes {n} dB(A) at {r}. Take it as a small source in the open. What level reaches a seat {x} away?",
        given={"n": "58", "r": "2 m", "x": "6 m"},
        answer="n - 20*log10(x/r)",
        unit="",
        label="dB(A)",
        name="level",
        vary={"n": ("52", "62", "1"), "r": ("1.5 m", "2.5 m", "0.5 m"), "x": ("5 m", "9 m", "0.5 m")},
        wrong=(
            Wrong("n*r/x", "You divided the decibels by the distance. Take off 20 times the logarithm of the ratio of distances."),
            Wrong(
                "n - 10*log10(x/r)",
                "You took off 3 dB for each doubling. That is a long line of sound; a small source loses 6 dB. Take off 20 times the logarithm.",
            ),
            Wrong("n - 6*(x - r)/m", "You took off 6 dB for each metre. It is 6 dB for each doubling of the distance. Count the doublings."),
        ),
        solution=("Drop: 20 log10({x}/{r}) = {20*log10(x/r)} dB", "Level: {n} - {20*log10(x/r)} = {n - 20*log10(x/r)} dB(A). Walls near by raise it"),
    ),
    Numeric(
        code="T01.5",
        uses=("time of fall", "drift of a drop in wind"),
        text="A drop leaves a lip and falls {h} in a wind of {w}. Take it as carried along at full wind speed. How far down-wind does it land?",
        given={"h": "0.6 m", "w": "3 m/s"},
        answer="w*sqrt(2*h/g)",
        unit="m",
        name="distance",
        vary={"h": ("0.4 m", "0.9 m", "0.02 m"), "w": ("2 m/s", "6 m/s", "0.5 m/s")},
        wrong=(
            Wrong("w*h", "You multiplied speed by height. Find the time of the fall first, then multiply the speed by that."),
            Wrong("w*h/g", "You left out the 2 and the root. The time of a fall is the root of two heights over g."),
            Wrong(
                "h",
                "You took the splash as wide as the fall is high. Here the wind carries the drop: speed times time. Multiply the speed of the wind by the time of the fall.",
            ),
        ),
        solution=("Time of the fall: sqrt(2 x {h}/g) = {sqrt(2*h/g)|s}", "Distance: {w} x {sqrt(2*h/g)|s} = {w*sqrt(2*h/g)|m}"),
    ),
    Choose(
        code="T01.6",
        text="You are to dig a pit in a garden with a house near by. What comes before the first spade goes in?",
        right="Search for pipes and cables: plans, a locator, and a hole dug by hand.",
        because="What lies under the ground can kill, so it is looked for first. Plans alone are not enough.",
        wrong=(
            ("Mark out the pit and check its diagonals.", "Marking out is right, but the place may have to move. Look for pipes and cables first."),
            ("Order the vessel, since it takes longest.", "The place decides the vessel's size and how it gets there. Look under the ground first."),
            ("Dig slowly and stop if you see a cable.", "You may meet it with the blade before you see it. Search with plans and a locator, then dig by hand."),
        ),
    ),
    Order(
        code="T01.7",
        text="Put the steps of choosing a place in order.",
        steps=("ask what the client wants to see and hear", "draw the survey sheet", "test places against the limits", "write down the place and why"),
        why=(
            "Ask first: the wish says what the survey must look at.",
            "Survey before you test a place: the limits are distances on that sheet.",
            "Test before you write the place down: a place that fails a limit is not chosen.",
        ),
    ),
)
