"""Lining, formwork, and the pit they stand in. Numbers are invented; services are located before anything is dug."""

from brimwork.exercise.choices import Choose, FindTheSlip, Order, Tell
from brimwork.exercise.written import Numeric, Wrong

QUESTIONS = (
    Numeric(
        code="T09.1",
        uses=("inside length of the box",),
        text="Void blocks are {b} long. The lining builds up to {t} on each side, and the blocks want {c} of clearance on each side. How long is the box inside?",
        given={"b": "1200 mm", "t": "8 mm", "c": "10 mm"},
        answer="b + 2*(t + c)",
        unit="mm",
        name="length",
        close="0.5 mm",
        vary={"t": ("5 mm", "12 mm", "1 mm"), "c": ("6 mm", "20 mm", "1 mm")},
        wrong=(
            Wrong("b", "You made the box the size of the blocks. Lining and room lie between, at both ends."),
            Wrong("b + t + c", "You allowed for one end only. There is lining and room at both ends."),
            Wrong("b + 2*t", "You forgot the clearance. Without it the blocks jam and cut the liner."),
        ),
        solution=("Each end: {t} + {c} = {t + c|mm}", "Inside: {b} + 2 x {t + c|mm} = {b + 2*(t + c)|mm|5}"),
    ),
    Numeric(
        code="T09.2",
        uses=("length of the liner",),
        text="A box is {w} wide inside and {h} deep. The liner goes on over an apron of {a} and a margin of {e} on each side. How wide a liner does it take?",
        given={"w": "760 mm", "h": "420 mm", "a": "600 mm", "e": "100 mm"},
        answer="w + 2*(h + a + e)",
        unit="m",
        name="width of the liner",
        close="10 mm",
        wrong=(
            Wrong("w + h + a + e", "You counted one side. Depth, apron and margin come twice, once on each side."),
            Wrong("w + h + 2*(a + e)", "You forgot the depth on one side. The liner goes down one side and up the other. Add the depth twice."),
            Wrong("w + 2*(a + e)", "You forgot the depth. The liner goes down one side and up the other."),
        ),
        solution=("Each side: {h} + {a} + {e} = {h + a + e|m}", "Width: {w} + 2 x {h + a + e|m} = {w + 2*(h + a + e)|m}"),
    ),
    Numeric(
        code="T09.3",
        uses=("outside length of the box",),
        text="The sides of a box are {t} thick. Its end panels fit between the long panels' ends, which lap over them. Inside it is {l} by {w}. How long is a long panel?",
        given={"t": "18 mm", "l": "1230 mm", "w": "830 mm"},
        answer="l + 2*t",
        unit="mm",
        name="length",
        close="0.5 mm",
        vary={"t": ("12 mm", "24 mm", "3 mm"), "l": ("1100 mm", "1500 mm", "10 mm"), "w": ("700 mm", "950 mm", "10 mm")},
        wrong=(
            Wrong("l", "You forgot to cover the edges of the end panels. Add their thickness at both ends."),
            Wrong("l + t", "You added one thickness. There is an end panel at each end."),
            Wrong("w + 2*t", "You made the end panels longer instead. Here the long panels lap over the ends. Add the thickness to the long panels."),
        ),
        solution=("Two thicknesses: 2 x {t} = {2*t|mm}", "Length: {l} + {2*t|mm} = {l + 2*t|mm|5}"),
    ),
    Numeric(
        code="T09.4",
        uses=("area of the protection fleece",),
        text="Fleece goes under the liner over floor, sides and an apron {a} wide all round. A second layer goes inside, over floor and sides only. The box is {l} by {w} by"
        " {h} deep. How much fleece is that, without laps?",
        given={"a": "2 ft", "l": "5 ft", "w": "2.8 ft", "h": "1.2 ft"},
        let={"b": "l*w + 2*(l + w)*h", "r": "(l + 2*a)*(w + 2*a) - l*w"},
        answer="2*b + r",
        unit="ft2",
        name="area",
        vary={"a": ("1.5 ft", "3 ft", "0.25 ft"), "l": ("4 ft", "5.5 ft", "0.25 ft"), "w": ("2.2 ft", "3.8 ft", "0.2 ft"), "h": ("1 ft", "1.4 ft", "0.1 ft")},
        wrong=(
            Wrong("b + r", "You forgot the layer inside. Floor and sides are covered twice."),
            Wrong(
                "(l + 2*h + 2*a)*(w + 2*h + 2*a) + b", "You used the flat sheet of the liner. It counts the folds at the corners; add floor, sides and apron."
            ),
            Wrong("b", "You counted the inside layer only. Add the one under the liner, with its apron."),
            Wrong("2*b", "You forgot the apron. The layer under the liner goes out over it. Add the apron once."),
        ),
        solution=("Floor and sides: {b|ft2}", "Apron: {r|ft2}", "Twice the box and once the apron: {2*b + r|ft2}"),
    ),
    Numeric(
        code="T09.5",
        text="Four panels {h} high are sawn from a sheet in two strips, with two panels end to end in each. A saw cut of {k} parts the strips, and another parts the second"
        " strip from the rest of the sheet. How much of the sheet's width is used?",
        given={"h": "440 mm", "k": "4 mm"},
        answer="2*(h + k)",
        unit="mm",
        name="width",
        close="0.5 mm",
        vary={"h": ("350 mm", "560 mm", "5 mm"), "k": ("2 mm", "5 mm", "1 mm")},
        wrong=(
            Wrong("2*h + k", "You counted one saw cut. The second strip must be sawn off the rest too, so count two."),
            Wrong("2*h", "You forgot the saw cuts. Each strip costs its height and one cut."),
            Wrong("4*(h + k)", "You gave every panel a strip of its own. Two lie end to end in one strip, so count two strips."),
        ),
        solution=("Each strip and its cut: {h} + {k} = {h + k|mm|4}", "Two of them: {2*(h + k)|mm|4}"),
    ),
    Order(
        code="T09.6",
        text="Put the lining in order, from the ground up.",
        steps=(
            "sweep the box and round its edges",
            "lay the under-fleece",
            "lay the liner",
            "fill with water and mark the level",
            "lay the inner fleece and set the blocks",
        ),
        why=(
            "Sweep first: a stone under the fleece finds its way through.",
            "Fleece goes under the liner, so lay it before the liner.",
            "Only a laid liner can be tested with water.",
            "Test before you cover the liner: a hole is hard to find under blocks.",
        ),
    ),
    Choose(
        code="T09.20",
        uses=("length of the liner",),
        text="The blocks are changed for taller ones, so a box with upright sides gets 100 mm deeper. How much longer must the liner be cut?",
        right="200 mm longer.",
        because="Along its length the liner goes down one side and up the other, so each bit of depth counts twice.",
        wrong=(
            ("100 mm longer.", "That is one side. The liner goes down one side and up the other, so the depth counts twice."),
            ("400 mm longer.", "You counted all four sides. Along its length a liner meets two of them; the other two count in its width."),
            ("Not at all.", "You took it off the apron. The apron is as wide as before, and the liner must still cover it."),
        ),
    ),
    Tell(
        code="T09.21",
        uses=("area of the liner",),
        text="Why is a liner cut as one flat sheet and folded in the corners, and not cut to the shape of the box?",
        model="A flat sheet has too much in each corner; folded away it still holds water, while a cut below the water is a leak.",
        points=("a flat sheet has too much in each corner", "a fold holds water", "a cut or a seam below the water may leak"),
    ),
    FindTheSlip(
        code="T09.22",
        uses=("inside length of the box", "outside length of the box", "length of the pit", "loose volume of spoil"),
        text="Blocks stand 1.2 m by 0.8 m. On every side come 18 mm of lining and clearance, an 18 mm panel and 150 mm of working space. The pit is 0.62 m deep"
        " in loam, which swells by a quarter. Somebody works out the heap.",
        lines=(
            ("Pit: 186 mm more at each end, so 1.572 m by 1.172 m.", "The pit holds: 18 + 18 + 150 = 186 mm, and both ends have it."),
            ("In the ground: 1.572 x 1.172 x 0.62 = 1.142 m3.", "This holds: length times width times depth."),
            ("Heap: 1.142/1.25 = 0.914 m3.", ""),
            ("Barrows of 0.085 m3: 0.914/0.085 = 10.8, so 11 loads.", "This step holds: loads are rounded up. It only starts from the wrong heap."),
        ),
        slip=3,
        because="Dug soil takes up more room than it did in the ground, so multiply by 1.25. A heap is never smaller than its hole.",
        mend=("loose volume of the heap", "1.428 m3", "0.914 m3"),
    ),
)
