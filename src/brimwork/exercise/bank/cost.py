"""Cost, buying and programme. Numbers are invented."""

from brimwork.exercise.choices import Choose, FindTheSlip, Order, Tell
from brimwork.exercise.written import Numeric, Wrong

QUESTIONS = (
    Numeric(
        code="T12.1",
        uses=("bags before rounding up",),
        text="{M} of pebbles are needed. Add {w} for waste. A bag holds {b}. How many bags are to be bought?",
        given={"M": "0.375 t", "w": "10 %", "b": "20 kg"},
        let={"n": "M*(1 + w)/b"},
        answer="ceil(n)",
        unit="",
        label="bags",
        close="0.1",
        vary={"w": ("8 %", "15 %", "1 %"), "b": ("20 kg", "25 kg", "5 kg")},
        wrong=(
            Wrong("floor(n)", "You rounded down. Then there is too little, so round up to the next whole bag."),
            Wrong("ceil(M/b)", "You left out the waste. Add it before you divide."),
            Wrong("n", "You did not round. Shops sell whole bags, so go up to the next one."),
        ),
        solution=("With waste: {M*(1 + w)|kg}", "Bags: {n}, so buy {ceil(n)||2}"),
    ),
    Numeric(
        code="T12.2",
        uses=("price from margin",),
        text="A job costs {c/money||4}. The firm wants {k} of the selling price as margin. What is the price before tax?",
        given={"c": "1480 cur", "k": "25 %"},
        answer="c/(1 - k)",
        unit="cur",
        name="price",
        vary={"k": ("15 %", "40 %", "5 %")},
        wrong=(
            Wrong("c*(1 + k)", "You added the share to the cost, which is a mark-up. A margin is a share of the price: divide by one less the share."),
            Wrong("c*(1 + k)**2", "You marked up twice. Divide the cost once by one less the margin."),
            Wrong("c*k", "You gave a profit on the cost. The question asks for the price: divide the cost by one less the margin."),
        ),
        solution=("The cost is {1 - k} of the price", "Price: {c/money||4}/{1 - k} = {c/(1 - k)/money||4}"),
    ),
    Numeric(
        code="T12.3",
        text="Jobs that wait for one another take these days: search for services {s}, dig {d}, base, box and duct {b}, line and test with water {w}, then the"
        " electrician's test, setting and start {v} together. The"
        " coat of the vessel cures for {c}, beside the other work, from the day the job begins. On what day from the start is all done?",
        given={"s": "3 day", "d": "1.5 day", "b": "2 day", "w": "2.5 day", "v": "1 day", "c": "5 day"},
        answer="s + d + b + w + v",
        unit="day",
        name="time",
        close="0.1 day",
        vary={
            "s": ("2 day", "5 day", "0.5 day"),
            "d": ("1 day", "2.5 day", "0.5 day"),
            "b": ("1.5 day", "3 day", "0.5 day"),
            "w": ("2.5 day", "3.5 day", "0.5 day"),
        }
        | {"v": ("0.5 day", "2 day", "0.5 day"), "c": ("4 day", "6 day", "1 day")},
        where=("c + 0.4*day < s + d + b + w",),
        wrong=(
            Wrong(
                "s + d + b + w + v + c", "You put the coat in line. It cures beside the other work and is done before the vessel is set. Leave the coat out."
            ),
            Wrong("s + d + b + v", "You left out lining and testing. Nothing is set before the liner has held water."),
            Wrong("d + b + w + v", "You began to dig before the search was done. Wait for its answer, for cables can kill."),
        ),
        solution=("Add what stands in line: {s} + {d} + {b} + {w} + {v}", "Done after {s + d + b + w + v|day}; the coat has cured by then"),
    ),
    Numeric(
        code="T12.4",
        uses=("years to pay back a dearer pump",),
        text="Pump A costs {a/money||3} and takes {p}. Pump B costs {b/money||3} and takes {q}. They run {t} a day, and a kilowatt hour costs {c/money||2}. After how many"
        " years has B paid back its higher price?",
        given={"a": "90 cur", "p": "70 W", "b": "160 cur", "q": "40 W", "t": "12 h", "c": "0.28 cur"},
        let={"y": "t*365*c/kWh"},
        answer="(b - a)/((p - q)*y)",
        unit="",
        label="years",
        name="time",
        where=("1.3*a < b", "1.3*q < p"),
        wrong=(
            Wrong("b/((p - q)*y)", "You used the whole price of B. You must buy one pump in any case, so use the difference."),
            Wrong("(b - a)/(q*y)", "You took B's power as what is saved. The saving is the difference of the two. Divide by the difference."),
            Wrong("(b - a)/((p - q)*y)*t/(24*hour)", "You ran them all day and night. Use the hours that they run."),
        ),
        solution=("Saved in a year: {p - q|W} x {t} x 365 = {(p - q)*t*365|kWh}", "In money: {(p - q)*y/money}", "Years: {(b - a)/((p - q)*y)}"),
    ),
    Numeric(
        code="T12.5",
        text="Soil that bulked by {k} makes {v} loose. A barrow takes {b}. How many loads is that?",
        given={"k": "25 %", "v": "2.08 yd3", "b": "3 ft3"},
        answer="ceil(v/b)",
        unit="",
        label="loads",
        close="0.1",
        vary={"k": ("20 %", "40 %", "5 %"), "b": ("2.5 ft3", "3.5 ft3", "0.25 ft3")},
        wrong=(
            Wrong(
                "ceil(v/yd**3/(b/ft**3/10))",
                "You divided cubic yards by a tenth of the cubic feet. A cubic yard has 27 cubic feet. Multiply by 27 before you divide by the barrow.",
            ),
            Wrong(
                "ceil(v/(1 + k)/b)", "You carted the soil as it lay in the ground. Once dug it takes up more room. Work out the volume with its swell first."
            ),
            Wrong("floor(v/b)", "You rounded down. The rest needs a load too, so round up."),
        ),
        solution=("Loose: {v|ft3}", "Over {b}: {v/b}, so {ceil(v/b)||2} loads"),
    ),
    Order(
        code="T12.6",
        text="Put the job in order.",
        steps=(
            "search for services",
            "dig",
            "lay the duct",
            "make the base and the box",
            "line and test with water",
            "electrician certifies, then pump and vessel",
        ),
        why=(
            "Search before you dig: cables and pipes can kill.",
            "The duct lies in the ground, so dig first.",
            "Lay the duct before the base, which goes over it.",
            "The liner needs a box to lie in.",
            "Test with water before the vessel stands on top, and plug nothing in before the certificate.",
        ),
    ),
    Choose(
        code="T12.20",
        text="A job costs 800 in all. The firm wants to keep a fifth of its price. What is the price?",
        right="1000",
        because="The cost is the other four fifths of the price. A fifth of 1000 is 200, and 800 is left for the cost.",
        wrong=(
            ("960", "You added a fifth of the cost. A fifth of 960 is 192, and then only 768 is left for the cost."),
            ("1200", "That keeps 400, which is a third of the price. A fifth was asked for."),
            ("840", "That keeps 40, which is far less than a fifth of the price."),
        ),
    ),
    Tell(
        code="T12.21",
        text="One firm adds a fifth to its cost. Another keeps a fifth of its price. Their costs are alike. Why are their prices not?",
        model="The first share is counted on the cost and the second on the price, which is larger, so the second firm asks more.",
        points=("a mark-up is counted on the cost", "a margin is counted on the price", "a share of the larger number is more money"),
    ),
    FindTheSlip(
        code="T12.22",
        text="A job costs 1200. To that comes 10 % for what nobody can foresee, and the firm wants a margin of 20 %. Somebody works out the price.",
        lines=(
            ("With what nobody can foresee: 1200 x 1.10 = 1320.", "This holds: one tenth more than the cost."),
            ("The margin: 0.20 x 1320 = 264.", ""),
            ("Price: 1320 + 264 = 1584.", "This follows rightly from the line before."),
        ),
        slip=2,
        because="A margin is a share of the price, and 1320 is the cost. The cost is four fifths of the price, so divide it by 0.80.",
        mend=("price", "1650 cur", "1584 cur"),
        on_way=("margin", "330 cur"),
    ),
    Numeric(
        code="T12.23",
        text="At which margin is the price {k} times the cost?",
        given={"k": "1.25"},
        answer="1 - 1/k",
        unit="%",
        name="margin",
        vary={"k": ("1.2", "1.6", "0.05")},
        wrong=(
            Wrong("k - 1", "That is the mark-up, a share of the cost. Divide by the price: the margin is a share of that."),
            Wrong("1/k", "That share pays the cost. Take it from one: the margin is what is left."),
        ),
        solution=("The cost is 1/{k} of the price: {1/k}", "The margin is the rest: {1 - 1/k|%}"),
        uses=("price from margin",),
    ),
)
