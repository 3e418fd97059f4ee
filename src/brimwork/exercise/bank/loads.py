"""Loads, void blocks and stability. Numbers are invented. A real load path is for a licensed engineer."""

from brimwork.exercise.choices import Choose, FindTheSlip, Tell
from brimwork.exercise.written import Numeric, Wrong

QUESTIONS = (
    Numeric(
        code="T07.1",
        uses=("volume of a round tank",),
        text="A cast-stone urn is {a} across outside and {b} inside, {h} high, with a base {c} thick. Its density is {r}. What is its mass full of water?",
        given={"a": "660 mm", "b": "580 mm", "h": "500 mm", "c": "60 mm", "r": "2200 kg/m3"},
        let={"o": "pi/4*a**2*h", "i": "pi/4*b**2*(h - c)", "w": "1000*kg/m**3"},
        answer="(o - i)*r + i*w",
        unit="kg",
        name="mass",
        vary={"r": ("2000 kg/m3", "2400 kg/m3", "50 kg/m3")},
        where=("b + 60*mm < a", "a < b + 160*mm"),
        wrong=(
            Wrong("(o - i)*r", "You forgot the water. Add the inside volume times the density of water."),
            Wrong("o*r", "You took the urn as solid. Take the hollow off, and fill it with water."),
            Wrong(
                "(o - i)*r + o*w", "You filled the outside volume with water. Only the hollow holds water. Multiply the density of water by the hollow alone."
            ),
        ),
        solution=("Stone: {o - i|m3} x {r} = {(o - i)*r|kg}", "Water: {i|L} weighs {i*w|kg}", "Together {(o - i)*r + i*w|kg}"),
    ),
    Numeric(
        code="T07.2",
        uses=("contact patch of a ring foot", "pressure on a contact patch"),
        text="A pot of {M} stands on a ring foot, {a} across outside and {b} inside. What is the pressure under the ring?",
        given={"M": "220 kg", "a": "500 mm", "b": "440 mm"},
        let={"s": "pi/4*(a**2 - b**2)"},
        answer="M*g/s",
        unit="kPa",
        name="pressure",
        where=("b + 30*mm < a", "a < b + 150*mm"),
        wrong=(
            Wrong("M*g/(pi/4*a**2)", "You used the whole disc. Only the ring touches the ground, so take the hollow off."),
            Wrong("M/s*m/second**2", "You left out g. A mass presses with its weight: multiply by 9.81."),
            Wrong("M*g/(pi*((a - b)/2)**2)", "You used the width of the ring as a radius. Take the inner circle off the outer one."),
        ),
        solution=("Area of the ring: {s|m2}", "Weight: {M} x g = {M*g|kN}", "Pressure: {M*g/s|kPa}"),
    ),
    Numeric(
        code="T07.3",
        uses=("pressure that the blocks may carry", "utilisation of the blocks"),
        text="A block carries {S} for a short time. The factor for long load is {c}, the safety factor {f}. The load asks for {p}. What share of the allowable strength is that?",
        given={"S": "16 psi", "c": "0.4", "f": "1.5", "p": "3.1 psi"},
        answer="p/(S*c/f)",
        unit="",
        name="share",
        vary={"f": ("1.5", "3", "0.1"), "c": ("0.3", "0.6", "0.05")},
        wrong=(
            Wrong("p/S", "You used the strength from the catalogue. Bring it down for long load and for safety first."),
            Wrong("p/(S*c)", "You left out the safety factor. Divide the strength by it."),
            Wrong("p*f/S", "You left out the factor for long load. Plastic gives way slowly, so bring the strength down by it."),
        ),
        solution=("Allowable: {S} x {c}/{f} = {S*c/f|psi}", "Share: {p} over {S*c/f|psi} = {p/(S*c/f)}"),
    ),
    Numeric(
        code="T07.4",
        uses=("pebbles needed to hold foam down",),
        text="{v} of foam glass ({F}) lies in a pot. How many litres of pebbles ({n} voids, grain density {r}) hold it down under water with a factor of {k}?",
        given={"v": "60 L", "F": "120 kg/m3", "n": "40 %", "r": "2650 kg/m3", "k": "1.3"},
        let={"w": "1000*kg/m**3", "u": "v*(w - F)", "b": "(1 - n)*(r - w)"},
        answer="k*u/b",
        unit="L",
        name="volume of pebbles",
        vary={
            "F": ("100 kg/m3", "160 kg/m3", "5 kg/m3"),
            "n": ("35 %", "45 %", "1 %"),
            "r": ("2500 kg/m3", "2750 kg/m3", "50 kg/m3"),
            "k": ("1.2", "1.5", "0.1"),
        },
        wrong=(
            Wrong("k*u/((1 - n)*r)", "You used the dry weight of the pebbles. Under water they weigh less: take the water's density off."),
            Wrong("k*u/(r - w)", "You forgot the voids. Part of each litre is water, so multiply by the solid share."),
            Wrong("u/b", "You left out the safety factor. Multiply the uplift by it."),
            Wrong(
                "k*v*F/b",
                "You held down the foam's own weight. What lifts is the water it pushes away, less that weight. Multiply by the lift, not by the weight.",
            ),
        ),
        solution=("Uplift: {v} x ({w|kg/m3} - {F}) = {u|kg}", "One litre of pebbles under water: {b|kg/L}", "Pebbles: {k} x {u|kg}/{b|kg/L} = {k*u/b|L}"),
    ),
    Numeric(
        code="T07.5",
        uses=("greatest pressure under an offset load",),
        text="A vessel of {M} stands {e} off the centre of a base {l} by {w}. All other load, {P}, is centred. Take the base as stiff. What is the greatest pressure"
        " under it?",
        given={"M": "220 kg", "e": "180 mm", "l": "1.2 m", "w": "0.8 m", "P": "460 kg"},
        let={"T": "M + P", "x": "M*e/T", "p": "T*g/(l*w)"},
        answer="p*(1 + 6*x/l)",
        unit="kPa",
        name="pressure",
        where=("6*x < l",),
        wrong=(
            Wrong("p*(1 + 6*e/l)", "You used the vessel's own offset for the whole load. Share it out: vessel times offset over the total."),
            Wrong("p", "You left out the offset. It adds pressure on one side: multiply by one plus 6 offsets over the length."),
            Wrong("p*(1 + x/l)", "You left out the 6. The pressure at the edge grows by 6 offsets over the length."),
        ),
        solution=("Offset of the whole: {M} x {e}/{T|kg} = {x|mm}", "Mean pressure: {p|kPa}", "At the edge: x (1 + 6 x {x|mm}/{l}) = {p*(1 + 6*x/l)|kPa}"),
    ),
    Choose(
        code="T07.6",
        uses=("contact patch of a ring foot",),
        text="A round vessel with a ring foot stands on void blocks. Which area carries it?",
        right="The ring that touches, and nothing inside it.",
        because="Load goes only where things touch. The hollow inside the ring carries nothing.",
        wrong=(
            ("The whole disc under the vessel.", "The hollow does not touch the block. Take it off, or the pressure comes out far too low."),
            ("The whole top of the block.", "A block is not stiff enough to spread a ring over all of its top. Use the ring that touches."),
            ("Half of the ring, to be careful.", "Care belongs in the safety factor. Use the area that truly touches."),
        ),
    ),
    Choose(
        code="T07.20",
        uses=("contact patch of a ring foot",),
        text="A full bowl stands on a ring foot, 400 mm outside and 240 mm inside. You change the ring for a full foot of the same size outside. What does the pressure"
        " under it do?",
        right="It falls by about a third.",
        because="Areas go with the width squared. The hole was 0.6 squared, or 36 %, of the full foot, so the pressure falls to 64 %.",
        wrong=(
            ("It falls by about a tenth.", "The hole is more than half as wide as the foot. Square that, and it takes over a third of the area."),
            ("It falls by more than a half.", "You compared the widths, 240 with 400. Areas go with the width squared."),
            ("It rises by about a third.", "The same load on more area presses less: divide by the larger area."),
        ),
    ),
    Tell(
        code="T07.21",
        uses=("contact patch of a ring foot",),
        text="Why do blocks bear a heavy bowl on a slab, and give way under the same bowl on its ring foot?",
        model="The load is the same, but the slab shares it out over far more area, so each bit of the block is pressed less.",
        points=("the load stays the same", "the slab touches on far more area", "pressure is load over area"),
    ),
    FindTheSlip(
        code="T07.22",
        uses=("contact patch of a ring foot", "pressure on the block tops"),
        text="A bowl of 150 kg with 60 litres of water stands on a ring foot, 400 mm outside and 240 mm inside. Somebody works out the pressure under the ring.",
        lines=(
            ("Mass: 150 + 60 = 210 kg.", "The mass holds: a litre of water is a kilogram."),
            ("Weight: 210 x 9.81 = 2060 N.", "The weight holds: mass times gravity."),
            ("Area: pi/4 x (0.40 - 0.24) squared = 0.0201 m2.", ""),
            ("Pressure: 2060/0.0201 = 102 kPa.", "The pressure holds: weight over area."),
        ),
        slip=3,
        because="Square each width first, then take the inner from the outer.",
        mend=("pressure", "25.6 kPa", "102 kPa"),
    ),
)
