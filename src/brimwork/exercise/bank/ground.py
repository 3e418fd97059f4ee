"""Ground: digging, bearing, backfill and flotation. Numbers are invented. Local codes decide; an unstable side is never entered."""

from brimwork.exercise.choices import Choose
from brimwork.exercise.written import Numeric, Wrong

QUESTIONS = (
    Numeric(
        code="T08.1",
        uses=("pressure on a contact patch", "utilisation of the soil"),
        text="In all {M} stands on {a} of undisturbed loam, for which a code table gives {q}. What share of that is used?",
        given={"M": "680 kg", "a": "0.94 m2", "q": "24 kPa"},
        answer="M*g/a/q",
        unit="",
        name="share",
        vary={"a": ("0.6 m2", "0.9 m2", "0.02 m2"), "q": ("24 kPa", "36 kPa", "1 kPa")},
        wrong=(
            Wrong("M/a/(kg/m**2)/(q/kPa)", "You compared kilograms with kilopascals. Multiply by g, and divide by 1000, before you compare."),
            Wrong("1000*M*g/a/q", "You set pascals beside kilopascals. Divide the pressure by 1000 first."),
            Wrong("q*a/(M*g)", "You turned the ratio round. Divide what presses by what may press."),
        ),
        solution=("Pressure: {M} x g/{a} = {M*g/a|kPa}", "Allowed: {q}", "Share: {M*g/a/q}"),
    ),
    Numeric(
        code="T08.2",
        uses=("flotation factor of an emptied pit",),
        text="A lined pit is {l} by {w}. In winter the ground water stands {z} above its floor. The reservoir is pumped out, so {x} of water is gone. The empty vessel"
        " weighs {a}, stone {b}, blocks {c}. What is the safety factor against floating? (Water weighs 62.4 lb a cubic foot.)",
        given={"l": "4 ft", "w": "2.7 ft", "z": "12 in", "x": "640 lb", "a": "250 lb", "b": "300 lb", "c": "35 lb"},
        let={"u": "l*w*z*62.4*lb/ft**3", "d": "a + b + c"},
        answer="d/u",
        unit="",
        name="safety factor",
        wrong=(
            Wrong(
                "(d + x)/u",
                "You counted water that has been pumped out. Only what is still there holds the pit down. Divide by the weight of water that is still there.",
            ),
            Wrong("u/d", "You turned the ratio round. Divide the weight that holds down by the uplift."),
            Wrong("d/u/12", "You left the depth in inches. Divide by 12 to get feet."),
        ),
        solution=("Uplift: {l} x {w} x {z|ft} x 62.4 = {u|lb}", "Held down by {d|lb}", "Factor: {d/u}. Below 1 it floats"),
    ),
    Numeric(
        code="T08.3",
        uses=("top length of a battered pit",),
        text="A pit with a floor {w} wide is dug from above, {d} deep in dry, loose sand, and nobody goes in. Both sides lean back {s} across for 1 down. How wide is the top?",
        given={"w": "4 ft", "d": "3 ft", "s": "1.5"},
        answer="w + 2*s*d",
        unit="ft",
        name="width",
        keep=("s",),
        vary={"w": ("3 ft", "6 ft", "0.25 ft"), "d": ("2 ft", "4 ft", "0.25 ft")},
        wrong=(
            Wrong("w + s*d", "You leaned one side only. The pit has two sides, so count the slope twice."),
            Wrong("w + 2*d/s", "You turned the slope round. The side goes further across than down, so multiply."),
            Wrong("w + d", "You added one depth in all. Each side adds the slope times the depth. Add it twice."),
        ),
        solution=("Each side: {s} x {d} = {s*d|ft}", "Top: {w} + 2 x {s*d|ft} = {w + 2*s*d|ft}. Wet or running sand: keep out"),
    ),
    Numeric(
        code="T08.4",
        uses=("mass of a compacted layer to order",),
        text="A sub-base {t} thick when rolled covers {l} by {w}. It takes {k} m3 loose for each m3 rolled. Loose, it weighs {r}. How many tonnes?",
        given={"t": "100 mm", "l": "1.566 m", "w": "1.166 m", "k": "1.25", "r": "1.7 t/m3"},
        answer="l*w*t*k*r",
        unit="t",
        name="mass",
        vary={"k": ("1.15", "1.35", "0.05"), "r": ("1.5 t/m3", "1.8 t/m3", "0.05 t/m3")},
        wrong=(
            Wrong("l*w*t*r", "You ordered the rolled volume. Loose stone packs down, so order more by the factor."),
            Wrong("l*w*t/k*r", "You divided by the factor. It takes more loose stone than rolled, so multiply."),
            Wrong("10*l*w*t*k*r", "You put the thickness in ten times too large. A metre has 1000 mm, so divide by that."),
        ),
        solution=("Rolled: {l} x {w} x {t} = {l*w*t|m3}", "Loose: x {k} = {l*w*t*k|m3}", "Mass: x {r} = {l*w*t*k*r|t}"),
    ),
    Numeric(
        code="T08.5",
        uses=("thrust of fill on a side of the box",),
        text="Sand flooded with water acts for a while like a fluid of {q}. What is the thrust on one side, {l} long and {h} high, of an empty box?",
        given={"q": "20 kN/m3", "l": "1.23 m", "h": "0.44 m"},
        answer="0.5*q*h**2*l",
        unit="kN",
        name="thrust",
        wrong=(
            Wrong("0.5*1000*kg/m**3*g*h**2*l", "You used water alone. Wet sand is about twice as heavy: use the value given."),
            Wrong("q*h**2*l", "You forgot the half. The pressure grows from nothing at the top, so its mean is half that at the bottom."),
            Wrong("q*h*l*m", "You did not square the height. The mean pressure and the area both grow with it."),
        ),
        solution=("Pressure at the bottom: {q} x {h} = {q*h|kPa}", "Mean of half that on {h*l|m2}: {0.5*q*h**2*l|kN}. Brace inside and fill in layers"),
    ),
    Choose(
        code="T08.6",
        text="A pit 1.4 m deep in wet sand is open and its side begins to crack. Someone's level staff is at the bottom. What now?",
        right="Keep everyone out and back from the edge, and call someone who is trained.",
        because="A side can fall without warning, and a cubic metre of soil weighs well over a tonne.",
        wrong=(
            ("Fetch the staff quickly and climb out.", "A crack means that the side is about to go. No tool is worth going in for."),
            ("Dig the side back from inside the pit.", "Whoever digs stands where the soil will fall. Keep out, and get trained help."),
            ("Heap the spoil against the crack.", "Spoil at the edge loads the side and brings it down sooner. Keep people and loads away."),
        ),
    ),
)
