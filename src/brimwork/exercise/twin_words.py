"""What questions say in the words of the other system of units, field by field, by code: US where the bank is metric, and metric where it is in US units."""

from __future__ import annotations

from typing import Any

from brimwork.exercise.written import Wrong

OTHER_WORDS: dict[str, dict[str, Any]] = {
    # --- numbers
    "T02.3": {
        "text": "A pit {a} by {b} is dug {f} deep, and then {i} deeper, in loam that bulks by {k}. How many cubic metres of loose soil are to be carted?",
        "given": {"a": "1.5 m", "b": "1.2 m", "f": "0.6 m", "i": "240 mm", "k": "25 %"},
        "vary": {"i": ("180 mm", "260 mm", "10 mm"), "k": ("15 %", "40 %", "5 %"), "a": ("1.2 m", "2.1 m", "0.1 m"), "b": ("0.9 m", "1.5 m", "0.1 m")},
        "wrong": (
            Wrong("v/(1 + k)", "You divided by the bulking. Loose soil takes up more room than it did in the ground, so multiply."),
            Wrong("v", "You left out the bulking. Loose soil takes up more room than it did in the ground, so multiply by one and the share."),
            Wrong("a*b*f*(1 + k)", "You left out the rest of the depth. Add it in the same unit before you multiply."),
        ),
        "solution": ("Depth: {f} + {i} = {f + i|m}", "In the ground: {a} x {b} x {f + i|m} = {v|m3}", "Loose: x {1 + k} = {v*(1 + k)|m3}"),
    },
    "T02.23": {
        "text": "The pit in the picture is 40 in by 32 in at its floor and 16 in deep; its sides lean out by 0.3. How deep must it be to hold twice the water?",
        "answer": 27.1,
        "wrong": (Wrong(32, "You doubled the depth. The pit gets wider as it goes up, so less will do. Take the depth at which it holds twice as much."),),
        "solution": ("At 16 in it holds 115 US gal", "At 27.1 in it holds 229 US gal, which is twice that"),
    },
    "T06.23": {"given": {"p": "430 US gal", "b": "16 US gal", "n": "95 %", "s": "40 %"}},  # a puzzle has the values at which its picture begins there
    "T04.11": {
        "given": {"b": "16 in", "H": "0.64 in"},
        "solution": ("Half the head passes 1 over 2^1.5 of the flow on each foot", "Length: {b} x 2.828 = {b*2**1.5|in}"),
    },
    "T05.10": {"given": {"q": "5 US gal/min", "k": "9"}},
    "T08.23": {"given": {"M": "250 lb", "a": "8 ft2"}},
    "T10.23": {"given": {"I": "1.6 A", "r": "2.2 ohm/kft", "U": "120 V", "d": "0.5 %"}},
    "T14.23": {"given": {"h": "18 in", "x": "11 in"}},
    "T13.23": {"given": {"s": "0.004 in", "k": "8"}},
    "T05.4": {"given": {"H": "10 ft", "M": "600 US gal/h", "S": "4.5 ft", "h": "1.5 ft", "R": "250 US gal/h"}},
    "T03.1": {
        "given": {"B": "32 ft", "s": "4.15 ft", "f": "6.09 ft", "d": "29.9 ft"},
        "vary": {"s": ("3.95 ft", "4.25 ft", "0.01 ft"), "f": ("5.98 ft", "6.23 ft", "0.01 ft")},
    },
    "T07.23": {"given": {"o": "12 in"}},
    "T06.24": {"given": {"t": "5.23 US gal", "r": "1.39 US gal", "a": "5.14 ft2"}},
    "T01.12": {"given": {"r": "10 ft", "d": "12"}},
    "T09.23": {"given": {"l": "10 ft", "b": "44 in", "h": "16 in", "e": "4 in"}},
    "T02.4": {
        "text": "A ring of pebbles, {D} across and {t} thick, surrounds a base {d} across. Their bulk density is {r}. Order {w} more for waste. How many pounds?",
        "unit": "lb",
        "solution": ("Area of the ring: {pi/4*(D**2 - d**2)|ft2}", "Volume: x {t|ft} = {v|ft3}", "Mass: x {r} x {1 + w} = {v*r*(1 + w)|lb}"),
    },
    "T02.5": {
        "text": "A round bowl is {a} across inside and {b} outside. Water stands {h} deep. What does that water weigh in kilograms? (One litre weighs 1 kg.)",
        "answer": "v*kg/litre",
        "where": ("a + 75*mm < b", "b < a + 155*mm"),
        "wrong": (
            Wrong("pi/4*b**2*h*kg/litre", "You used the outside diameter. Water fills the inside only, so take the inside."),
            Wrong("4*v*kg/litre", "You put the diameter where the radius belongs. Halve it before you square it."),
        ),
        "solution": ("Volume: pi/4 x ({a})^2 x {h} = {v|L}", "Weight: as many kilograms, {v*kg/litre|kg}"),
    },
    "T04.1": {"solution": ("Edge: pi x {D} = {pi*D|ft}", "Flow for each foot: {q|ft2/s}", "Head: ({q|ft2/s}/{C})^(2/3) = {(q/C)**(2/3)|in}")},
    "T04.2": {
        "solution": ("Edge: pi x {D} = {pi*D|m}", "Flow for each metre: {C} x ({H|m})^1.5 = {C*H**1.5|m2/s}", "Flow: {Q|m3/s} = {Q|L/h}"),
        "wrong": (
            Wrong("Q/pi", "You took the width of the bowl for the edge. Water goes over all round, so multiply by pi."),
            Wrong("Q/60", "You gave litres a minute. An hour has 60 minutes, so multiply by 60."),
        ),
    },
    "T05.1": {
        "text": "{Q} flows through tubing with a bore of {d}. How fast is it, in metres a second?",
        "given": {"Q": "2300 L/h", "d": "19 mm"},
        "vary": {"d": ("19 mm", "38 mm", "1 mm"), "Q": ("1500 L/h", "4500 L/h", "100 L/h")},
        "wrong": (
            Wrong("60*v", "You put litres an hour where litres a minute belong. Divide by 60 first."),
            Wrong("v/4", "You took the bore as the radius. The area is pi/4 times the full bore squared."),
            Wrong("v*pi/4", "You took a square for the bore. A round bore has less area, so multiply by pi/4."),
        ),
        "solution": ("In a second: {Q|m3/s}", "Area: pi/4 x ({d|m})^2 = {pi/4*d**2|m2}", "Speed: {Q|m3/s} over {pi/4*d**2|m2} = {v|m/s}"),
    },
    "T05.2": {"solution": ("Speed: {v|ft/s}, so Re = {Re}", "f = 0.316/Re^0.25 = {f}", "Friction head: f x {l}/{d|ft} x ({v|ft/s})^2/(2 g) = {h|ft}")},
    "T07.4": {
        "text": "{v} of foam glass ({F}) lies in a pot. How many US gallons of pebbles ({n} voids, grain density {r}) hold it down under water with a factor of {k}?",
        "wrong": (
            Wrong("k*u/((1 - n)*r)", "You used the dry weight of the pebbles. Under water they weigh less: take the water's density off."),
            Wrong("k*u/(r - w)", "You forgot the voids. Part of the space is water, so multiply by the solid share."),
            Wrong("u/b", "You left out the safety factor. Multiply the uplift by it."),
            Wrong("k*v*F/b", "You held down the foam's own weight. Take the water it pushes away, less that weight."),
        ),
        "solution": (
            "Uplift: {v|ft3} x ({w|lb/ft3} - {F}) = {u|lb}",
            "A cubic foot of pebbles under water: {b|lb/ft3}",
            "Pebbles: {k} x {u|lb}/{b|lb/ft3} = {k*u/b|US gal}",
        ),
    },
    "T08.2": {
        "text": "A pit with a stiff base is {l} by {w}, and blocks tie all that stands in it into one plate. In winter the ground water stands {z} above its floor. The reservoir is pumped out, so {x} of water is gone. The empty vessel"
        " weighs {a}, stone {b}, blocks {c}. What is the safety factor against floating? (Water weighs 1000 kg a cubic metre.)",
        "let": {"u": "l*w*z*1000*kg/m**3", "d": "a + b + c"},
        "solution": ("Uplift: {l} x {w} x {z|m} x 1000 = {u|kg}", "Held down by {d|kg}", "Factor: {d/u}. Below 1 it floats"),
    },
    "T08.4": {
        "text": "A sub-base {t} thick when rolled covers {l} by {w}. It takes {k} of loose stone for each 1 rolled. Loose, it weighs {r}. How many pounds?",
        "unit": "lb",
        "solution": ("Rolled: {l} x {w} x {t|ft} = {l*w*t|ft3}", "Loose: x {k} = {l*w*t*k|ft3}", "Mass: x {r} = {l*w*t*k*r|lb}"),
    },
    "T08.5": {
        "text": "Sand flooded with water acts for a while like a fluid of {q}. What is the thrust on one side, {l} long and {h} high, of an empty box, in pounds of force?",
        "given": {"q": "127 psf/ft", "l": "4 ft", "h": "17 in"},
        "solution": ("Pressure at the bottom: {q} x {h|ft} = {q*h|psf}", "Mean of half that on {h*l|ft2}: {0.5*q*h**2*l|lbf}. Brace inside and fill in layers"),
        "wrong": (Wrong("q*h**2*l", "You forgot the half. The pressure grows from nothing at the top, so its mean is half that at the bottom."),),
    },
    "T11.1": {
        "text": "A lift begins {H} in front of the ankles and {z} above the floor and goes up {D}, with no twist and seldom. The grip counts {c}. What weight limit does the"
        " NIOSH equation give? (51 lb x 10 in/H x (1 - 0.0075 |z - 30 in|) x (0.82 + 1.8 in/D) x grip.)",
        "given": {"H": "14 in", "z": "11 in", "D": "20 in", "c": "0.95"},
        "let": {"a": "10*inch/H", "b": "1 - 0.0075*abs(z - 30*inch)/inch", "d": "0.82 + 1.8*inch/D"},
        "answer": "51*lb*a*b*d*c",
        "vary": {"z": ("6 in", "18 in", "0.5 in"), "H": ("12 in", "20 in", "0.5 in"), "D": ("16 in", "24 in", "0.5 in")},
        "wrong": (
            Wrong("51*lb", "You used the 51 lb as the limit. That is for a perfect lift: multiply by each factor."),
            Wrong("55*lb", "You used a rule of thumb. This lift is far from perfect: work out each factor."),
            Wrong("51*lb*a*(1 - 0.0075*30)*d*c", "You began the lift at the floor. Put in the height where the hands begin."),
        ),
        "solution": ("Factors: {a}, {b}, {d} and {c}", "Limit: 51 lb x all of them = {51*lb*a*b*d*c|lb}"),
    },
    "T11.2": {
        "text": "A sling with two legs lifts a column of {M}. Each leg stands at {t} to the level. What is the pull in one leg, in pounds of force?",
        "wrong": (
            Wrong("M*g/2", "You halved the load. Legs that lean pull harder: divide by the sine of their angle as well."),
            Wrong("M*g/(2*cos(t))", "You used the cosine. The angle is measured from the level, so use the sine."),
            Wrong("M*g/sin(t)", "You did not share the load. Two legs carry it, so halve it."),
        ),
    },
    "T12.5": {
        "wrong": (
            Wrong("ceil(v/(1 + k)/b)", "You carted the soil as it lay in the ground. Once dug it takes up more room, so leave the loose volume as it is."),
            Wrong("floor(v/b)", "You rounded down. The rest needs a load too, so round up."),
        ),
        "given": {"k": "25 %", "v": "1.6 m3", "b": "0.085 m3"},
        "vary": {"k": ("20 %", "40 %", "5 %"), "b": ("0.07 m3", "0.1 m3", "0.005 m3")},
        "solution": ("Loose: {v}", "Over {b}: {v/b}, so {ceil(v/b)||2} loads"),
    },
    "T13.1": {
        "text": "A bucket of {v} under the hose fills in {t}. What is the flow in US gallons an hour?",
        "given": {"v": "3 US gal", "t": "21.5 s"},
        "wrong": (
            Wrong("v/t/60", "You gave gallons a minute. An hour has 60 minutes, so multiply by 60."),
            Wrong("(t/second)/(v/US_gal)*3600*US_gal/hour", "You divided the time by the volume. Turn it round: flow is volume over time."),
            Wrong("(t/second)*(v/US_gal)*60*US_gal/hour", "You multiplied volume by time. Divide by it: flow is volume over time."),
        ),
        "solution": ("In a minute: 60 x {v}/{t} = {v/t|US gal/min}", "In an hour: x 60 = {v/t|US gal/h|4}"),
    },
    "T13.3": {
        "text": "A label says {r} for each 25 US gallons. Blocks cover {l} by {w}, {n} void, with water {z} deep. The vessel holds {v}. What is the dose?",
        "answer": "(b + v)*r/(25*US_gal)",
        "wrong": (
            Wrong("(b/n + v)*r/(25*US_gal)", "You forgot the void fraction, and the dose is too strong. Blocks take up room: multiply by their void."),
            Wrong("b*r/(25*US_gal)", "You forgot the vessel. Its water needs a dose too."),
            Wrong("(b + v)*r/US_gal", "You forgot the 25. The label gives the dose for each 25 gallons."),
        ),
        "solution": ("In the tank: {b|US gal}", "With the vessel: {b + v|US gal}", "Dose: {b + v|US gal} x {r}/25 US gal = {(b + v)*r/(25*US_gal)|mL}"),
    },
    "T14.4": {
        "text": "Two pools of {p} each and a header of {h} rise by the head over their lips when {q} runs. That head is 1.5 times the critical depth. How many gallons?"
    },
    "T06.6": {
        "text": "The drawing shows a tank with water area 10 ft2. Read it. How much water went into transit when the pump started?",
        "given": {"s": "16 in", "r": "14 in", "p": "6 in"},
        "vary": {"s": ("16 in", "17.5 in", "0.1 in"), "r": ("13 in", "14 in", "0.1 in"), "p": ("5 in", "7 in", "0.1 in")},
        "answer": "10*ft**2*(s - r)",
        "wrong": (
            Wrong("10*ft**2*(r - p)", "You took what is left above the pump's limit. What is in transit is the fall from static to running level: take that."),
            Wrong("10*ft**2*s", "You took all the water at rest. Only the fall from static to running level is in transit, so take that."),
            Wrong("10*ft**2*(s - p)", "You took the usable water. What is in transit is the fall from static to running level: take that."),
        ),
        "solution": ("The level falls from {s} to {r}: {s - r|in}", "10 ft2 x {s - r|ft} = {10*ft**2*(s - r)|ft3}, which is {10*ft**2*(s - r)|US gal}"),
    },
    "T12.1": {"given": {"M": "845 lb", "w": "10 %", "b": "50 lb"}, "vary": {"w": ("8 %", "15 %", "1 %"), "b": ("40 lb", "60 lb", "10 lb")}},
    "T14.1": {
        "text": "A blade {b} long takes {Q} in all. What flow for each foot of edge is that?",
        "name": "flow for each foot",
        "wrong": (
            Wrong("Q/b*inch/ft", "You gave the flow for one inch. A foot is 12 inches, so multiply."),
            Wrong("Q/ft", "You forgot to divide by the length. Share the flow out along the edge, in feet."),
            Wrong("60*Q/b", "You gave gallons an hour. The answer is asked for a minute, so divide by 60."),
        ),
        "solution": ("Flow: {Q} = {Q|US gal/min}", "Length: {b} = {b|ft}", "For each foot: {Q/b|US gal/min per ft}"),
    },
}
