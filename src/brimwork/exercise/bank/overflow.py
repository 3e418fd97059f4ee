"""Overflow: edges, films and boils. Numbers are invented."""

from brimwork.exercise.choices import Choose, FindTheSlip, Tell
from brimwork.exercise.written import Numeric, Wrong

_EDGE = "You used the diameter as the edge. Water goes over all round, so the edge is pi times the diameter."

QUESTIONS = (
    Numeric(
        code="T04.1",
        text="{Q} runs evenly over a round rim {D} across (weir coefficient {C}). How high does the water stand over the rim?",
        given={"Q": "1800 L/h", "D": "0.78 m", "C": "1.7 m^0.5/s"},
        let={"q": "Q/(pi*D)"},
        answer="(q/C)**(2/3)",
        unit="mm",
        name="head",
        keep=("C",),
        vary={"Q": ("1200 L/h", "2500 L/h", "20 L/h"), "D": ("0.6 m", "1.1 m", "0.01 m")},
        wrong=(
            Wrong("(Q/D/C)**(2/3)", _EDGE),
            Wrong("q/C", "You left out the power. Flow goes with head to the power 3/2, so head goes with flow to the power 2/3."),
            Wrong("(q/C)**1.5", "The power is the wrong way round. To undo the power 3/2, take the power 2/3."),
        ),
        solution=("Edge: pi x {D} = {pi*D|m}", "Flow for each metre: {q|L/s per m}", "Head: ({q|m2/s}/{C})^(2/3) = {(q/C)**(2/3)|mm}"),
        like=("head on a round rim", {"Q": "Q", "d_rim": "D", "C_w": "C"}),
    ),
    Numeric(
        code="T04.2",
        text="Water is to stand {H} over the round rim of a bowl {D} across (weir coefficient {C}). What flow does that take?",
        given={"D": "30 in", "H": "0.12 in", "C": "3.08 ft^0.5/s"},
        let={"Q": "C*pi*D*H**1.5"},
        answer="Q",
        unit="US gal/h",
        name="flow",
        keep=("C",),
        vary={"D": ("22 in", "38 in", "1 in"), "H": ("0.1 in", "0.2 in", "0.01 in")},
        wrong=(
            Wrong("Q/pi", _EDGE),
            Wrong("Q*US_gal/litre", "You gave litres an hour. Divide by 3.785 to get US gallons."),
            Wrong("Q/60", "You gave gallons a minute. An hour has 60 minutes, so multiply by 60."),
        ),
        solution=("Edge: pi x {D} = {pi*D|ft}", "Flow for each foot: {C} x ({H|ft})^1.5 = {C*H**1.5|ft3/s/ft}", "Flow: {Q|ft3/s} = {Q|US gal/h}"),
        like=("flow over a round rim", {"H": "H", "d_rim": "D", "C_w": "C"}),
    ),
    Numeric(
        code="T04.3",
        text="A client wants {k} times the head over the rim. By what factor must the flow rise?",
        given={"k": "2.5"},
        answer="k**1.5",
        unit="",
        name="factor",
        vary={"k": ("1.5", "4", "0.05")},
        wrong=(
            Wrong("k", "You let the flow rise as the head does. More depth also makes the water faster: take the power 3/2."),
            Wrong(
                "k**(2/3)",
                "You used the power the wrong way round. That is how head grows with flow; flow grows with head to the power 3/2. Turn the power round.",
            ),
            Wrong("k**2", "You used the square, which belongs to loss in pipes. Over an edge it is the power 3/2. Use 3/2."),
        ),
        solution=("Flow goes with head to the power 3/2", "{k}^1.5 = {k**1.5}"),
    ),
    Numeric(
        code="T04.4",
        text="{q} runs down an upright wet face. The kinematic viscosity is {n}. How thick is the smooth film?",
        given={"q": "0.2 L/s per m", "n": "1.15 cSt"},
        answer="(3*n*q/g)**(1/3)",
        unit="mm",
        name="thickness",
        vary={"n": ("1.1 cSt", "1.6 cSt", "0.05 cSt")},
        wrong=(
            Wrong(
                "(3*n*q*1000/g)**(1/3)",
                "You put litres where cubic metres belong. A litre is a thousandth of a cubic metre, so the film came out ten times too thick. Put in cubic metres.",
            ),
            Wrong("(n*q/g)**(1/3)", "You left out the 3. The film moves slower near the wall, and the 3 stands for that."),
            Wrong(
                "(q/(1.7*m**0.5/second))**(2/3)",
                "You worked out the head over the rim. On the face the film runs fast and is far thinner: use viscosity and gravity.",
            ),
        ),
        solution=("Under the root: 3 x {n} x {q}/g", "Cube root: {(3*n*q/g)**(1/3)|mm}"),
    ),
    Numeric(
        code="T04.5",
        text="A hose with a bore of {d} sends {Q} straight up, just under the surface. How high does the water boil up, taken as the velocity head?",
        given={"d": "25 mm", "Q": "1500 L/h"},
        let={"v": "Q/(pi/4*d**2)"},
        answer="v**2/(2*g)",
        unit="mm",
        name="height",
        wrong=(
            Wrong("v**2/(2*g)/16", "You took the bore as the radius. The area came out four times too large; halve the bore first."),
            Wrong("v**2/g", "You left out the 2. The velocity head is the speed squared over two g."),
            Wrong("v/(2*g)*m/second", "You did not square the speed. Twice the speed makes four times the height."),
        ),
        solution=("Speed: {Q} over {pi/4*d**2|cm2} = {v|m/s}", "Height: ({v|m/s})^2/(2 g) = {v**2/(2*g)|mm}"),
    ),
    Choose(
        code="T04.6",
        text="Flow over a rim is doubled. What does the head over the rim do?",
        right="It grows by about 1.6 times.",
        because="Head goes with flow to the power 2/3, and 2 to that power is 1.59.",
        wrong=(
            ("It doubles.", "Deeper water is also faster, so less depth is needed. Take the power 2/3 of 2."),
            ("It grows by about 2.8 times.", "That is what flow does when the head doubles. Here the flow is doubled: take the power 2/3."),
            ("It stays as it is.", "More water needs more depth to pass the same edge. Take the power 2/3 of 2."),
        ),
    ),
    FindTheSlip(
        code="T04.7",
        text="1,200 L/h runs over a round rim 600 mm across, with a weir coefficient of 1.7 m^0.5/s.",
        lines=(
            ("Flow: 1200 litres an hour is 0.333 L/s.", "The flow holds: 1200 over 3600 seconds."),
            ("Edge: the rim is 600 mm across, so the edge is 0.600 m.", ""),
            ("Flow for each metre: the flow over the edge.", "This step holds: share the flow out along the edge."),
            ("Head: flow for each metre over 1.7, to the power 2/3.", "The power holds: 2/3 undoes 3/2."),
        ),
        slip=2,
        because="Water goes over all round. The edge is pi x 0.600 = 1.885 m, and the head is 2.21 mm.",
    ),
    Choose(
        code="T04.8",
        text="A lip passes 30 litres a minute with 6 mm of water over it. You want 12 mm. How much flow does that take?",
        right="About 85 litres a minute.",
        because="Flow goes with head to the power 3/2, and 2 to that power is 2.83. So 30 becomes 85.",
        wrong=(
            ("About 60 litres a minute.", "Twice the depth makes twice the area. But deeper water is faster too, so more than twice as much flows."),
            ("About 120 litres a minute.", "Four times would be the square. The speed grows with the root of the depth, so it is the power 3/2."),
            ("About 42 litres a minute.", "That is the root: it is how the speed alone grows. The stream is also twice as deep."),
        ),
    ),
    Tell(
        code="T04.9",
        text="Why does twice the head send almost three times the flow over a lip?",
        model="Twice the head makes the stream twice as deep and the water 1.4 times as fast, and twice 1.4 is 2.8.",
        points=("the stream gets deeper", "deeper water runs faster", "both count at once, so they multiply"),
    ),
    FindTheSlip(
        code="T04.10",
        text="A pump sends 40 L/min over a straight lip 500 mm long, with a weir coefficient of 1.8 m^0.5/s. Somebody works out the head.",
        lines=(
            ("Flow: 40 litres a minute is 0.000667 m3/s.", "The flow holds: 40 over 60 seconds, and a litre is a thousandth of a cubic metre."),
            ("Flow for each metre: 0.000667/0.5 = 0.00133 m2/s.", "This holds: the flow is shared out along the lip."),
            ("Over the coefficient: 0.00133/1.8 = 0.000741 m^1.5.", "This holds: what is left is the head to the power 3/2."),
            ("Head: 0.000741 to the power 3/2 = 0.0202 mm.", ""),
        ),
        slip=4,
        because="To undo the power 3/2, take the power 2/3. Water 0.02 mm deep would be thinner than a hair.",
        mend=("head over the lip", "8.19 mm", "0.0202 mm"),
    ),
)
