"""Units, geometry and quantities. Numbers are invented."""

from brimwork.exercise.choices import FindTheSlip
from brimwork.exercise.written import Numeric, Wrong

QUESTIONS = (
    Numeric(
        code="T02.1",
        text="A pump is rated at {Q}. How much is that in litres an hour?",
        given={"Q": "1300 US gal/h"},
        answer="Q",
        unit="L/h",
        name="flow",
        strict=True,
        wrong=(
            Wrong("Q*imp_gal/US_gal", "You used the imperial gallon, 4.546 litres. The label says US gallons, and those are 3.785 litres."),
            Wrong("Q*(litre/US_gal)**2", "You divided by 3.785. A gallon is more than a litre, so the number of litres must be larger: multiply."),
            Wrong("Q/60", "You changed hours into minutes as well. The answer is asked per hour, so leave the time as it is."),
        ),
        solution=("One US gallon is 3.785 litres", "{Q} x 3.785 = {Q|L/h|4}"),
    ),
    Numeric(
        code="T02.2",
        text="A meter on site reads {Q}. Express that in US gallons an hour.",
        given={"Q": "40 L/min"},
        answer="Q",
        unit="US gal/h",
        name="flow",
        strict=True,
        wrong=(
            Wrong("Q/60", "You left it per minute. An hour has 60 minutes, so multiply by 60."),
            Wrong("Q*(US_gal/litre)**2", "You multiplied by 3.785. A gallon is more than a litre, so there are fewer of them: divide."),
            Wrong("Q*US_gal/imp_gal", "You used the imperial gallon, 4.546 litres. A US gallon is 3.785 litres."),
        ),
        solution=("In an hour: {Q} x 60 = {Q|L/h}", "Divided by 3.785 litres: {Q|US gal/h}"),
    ),
    Numeric(
        code="T02.3",
        text="A pit {a} by {b} and {f} {i} deep is dug in loam that bulks by {k}. How many cubic yards of loose soil are to be carted?",
        given={"a": "5 ft", "b": "4 ft", "f": "2 ft", "i": "9 in", "k": "25 %"},
        let={"v": "a*b*(f + i)"},
        answer="v*(1 + k)",
        unit="yd3",
        name="volume",
        vary={"i": ("7 in", "9 in", "1 in"), "k": ("15 %", "40 %", "5 %"), "a": ("4 ft", "7 ft", "0.5 ft"), "b": ("3 ft", "5 ft", "0.5 ft")},
        keep=("f",),
        wrong=(
            Wrong("3*v*(1 + k)", "You divided cubic feet by 9. That is for square yards; a cubic yard has 3 x 3 x 3 = 27 cubic feet."),
            Wrong("v/(1 + k)", "You divided by the bulking. Loose soil takes up more room than it did in the ground, so multiply."),
            Wrong("a*b*(f + i/inch*ft/10)*(1 + k)", "You read the inches as tenths of a foot. Divide inches by 12 before you add them."),
        ),
        solution=("In the ground: {a} x {b} x {f + i|ft} = {v|ft3}", "Over 27: {v|yd3}", "Loose: x {1 + k} = {v*(1 + k)|yd3}"),
    ),
    Numeric(
        code="T02.4",
        text="A ring of pebbles, {D} across and {t} thick, surrounds a base {d} across. Their bulk density is {r}. Order {w} more for waste. How many tonnes?",
        given={"D": "2 m", "d": "0.6 m", "t": "60 mm", "r": "1.6 t/m3", "w": "10 %"},
        let={"v": "pi/4*(D**2 - d**2)*t"},
        answer="v*r*(1 + w)",
        unit="t",
        name="mass",
        vary={"r": ("1.5 t/m3", "1.7 t/m3", "0.05 t/m3"), "w": ("5 %", "15 %", "1 %")},
        where=("1.8*d < D",),
        wrong=(
            Wrong("4*v*r*(1 + w)", "You put diameters where radii belong. Halve them before you square them."),
            Wrong("pi/4*D**2*t*r*(1 + w)", "You did not take out the base. No pebbles lie where it stands, so take its area off."),
            Wrong("v*2650*kg/m**3*(1 + w)", "You used the density of solid rock. Between pebbles there is air, so use the bulk density."),
        ),
        solution=(
            "Area of the ring: {pi/4*(D**2 - d**2)|m2}",
            "Volume: x {t} = {v|m3}",
            "Mass: x {r} x {1 + w} = {v*r*(1 + w)|t}",
        ),
    ),
    Numeric(
        code="T02.5",
        text="A round bowl is {a} across inside and {b} outside. Water stands {h} deep. What does that water weigh in pounds? (One US gallon weighs 8.345 lb.)",
        given={"a": "26 in", "b": "30 in", "h": "20 in"},
        let={"v": "pi/4*a**2*h"},
        answer="v*8.345*lb/US_gal",
        unit="lb",
        name="weight of the water",
        where=("a + 3*inch < b", "b < a + 6*inch"),
        wrong=(
            Wrong("pi/4*b**2*h*8.345*lb/US_gal", "You used the outside diameter. Water fills the inside only."),
            Wrong("4*v*8.345*lb/US_gal", "You put the diameter where the radius belongs. Halve it before you square it."),
            Wrong("v*10*lb/US_gal", "You took 10 lb a gallon, which is the imperial gallon. The US gallon is smaller and weighs 8.345 lb."),
        ),
        solution=("Volume: pi/4 x ({a})^2 x {h} = {v|US gal}", "Weight: {v|US gal} x 8.345 = {v*8.345*lb/US_gal|lb}"),
    ),
    FindTheSlip(
        code="T02.6",
        text="A tank 1.2 m by 0.8 m holds water 300 mm deep. A learner works out how many US gallons that is.",
        lines=(
            ("Area: 1.2 x 0.8 = 0.96 square metres.", "The area holds: length times width, both in metres."),
            ("Depth: 300 mm = 0.30 m.", "The depth holds: a metre has 1000 mm."),
            ("Volume: 0.96 x 0.30 = 0.288 cubic metres = 28.8 litres.", ""),
            ("One US gallon is 3.785 litres, so divide the litres by 3.785.", "This holds: there are fewer gallons than litres, so divide."),
        ),
        slip=3,
        because="A cubic metre has 1000 litres, not 100. The tank holds 288 litres, which is 76 US gallons.",
    ),
)
