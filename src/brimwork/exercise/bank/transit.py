"""Water in transit, start and stop, folds of a liner. Numbers are invented; the rules inside the questions are common practice, no source."""

from brimwork.exercise.choices import Choose, FindTheSlip, Tell
from brimwork.exercise.written import Numeric, Wrong

QUESTIONS = (
    Choose(
        code="T06.8",
        uses=("drop of the level on start",),
        text="While the pump runs, water stands 2 mm over the rim of a bowl. The hose mouth lies 15 mm under the rim, and there is no check valve. The hidden"
        " tank has twice the plan area of the bowl. The pump starts after a rest. About how far does the tank fall?",
        right="By more than 8 mm.",
        because="The bowl has emptied itself down to the hose mouth, so 17 mm of it must be filled. Over twice the plan area that is 8.5 mm, and hose and stone come on top.",
        wrong=(
            ("By 1 mm.", "You filled the 2 mm over the rim. At the stop the bowl also ran empty down to the hose mouth."),
            ("By 2 mm.", "The tank does not follow the bowl. It has another plan, and more than the water over the rim is missing."),
            ("Not at all, for the water goes round.", "It goes round, but a part of it is always up in the feature. That part is missing in the tank."),
        ),
    ),
    Tell(
        code="T06.9",
        uses=("drop of the level on start",),
        text="Why does the tank fall when the pump starts, and why does it stop falling after some seconds?",
        model="Bowl, hose and stone fill with water from the tank, and once they are full as much runs back as the pump takes out.",
        points=("water goes up into the feature", "it comes from the tank", "in the end as much comes back as goes out"),
    ),
    FindTheSlip(
        code="T06.10",
        uses=("days without top-up",),
        text="A tank can give 240 L. Of that, 30 L are in transit while the pump runs. Each day 14 L dry or splash out. Somebody works out how long it lasts.",
        lines=(
            ("Water that the pump can reach: 240 L.", "This holds: it is given."),
            ("Of it in transit: 30 L.", "This holds: it is given."),
            ("Water there is to lose: 240 + 30 = 270 L.", ""),
            ("Days: 270 over 14 = 19.3.", "Water over loss is right. The slip came before."),
        ),
        slip=3,
        because="What is in transit is not in the tank, so take it off before you divide.",
        mend=("time without top-up", "15 day", "19.3 day"),
    ),
    Numeric(
        code="T06.11",
        uses=("time until the vessel is full to its rim",),
        text="With the pump off, the bowl has drained to the hose mouth and lacks {s}. The hose is empty and holds {h}. The pump sends {Q}. How long after the start"
        " does water reach the rim?",
        given={"s": "7.2 L", "h": "1.2 L", "Q": "30 L/min"},
        answer="(s + h)/Q",
        unit="s",
        name="time",
        wrong=(
            Wrong("s/Q", "You forgot the hose. It has run empty too, so add it."),
            Wrong("(s - h)/Q", "You took the hose off. It must be filled as well, so add it."),
            Wrong("(s + h)/(60*Q)", "You divided by 60 once too often. A flow for each minute, over 60, is for each second. Divide by 60 once."),
        ),
        solution=("To fill: {s} + {h} = {s + h|L}", "Time: {s + h|L} over {Q} = {(s + h)/Q|s}"),
    ),
    Numeric(
        code="T09.7",
        uses=("reach of a corner pleat",),
        text="A flat liner goes into a box {D} deep. At the top edge of a corner, how far does the pleat reach along the side if it is laid in {n} equal folds over"
        " each other?",
        given={"D": "450 mm", "n": "3"},
        answer="D/n",
        unit="mm",
        name="reach",
        vary={"D": ("320 mm", "600 mm", "10 mm"), "n": ("3", "5", "1")},
        wrong=(
            Wrong("2*D/n", "You forgot that a pleat lies double. It reaches half of the liner that it takes up. Halve it."),
            Wrong("D", "You laid it in one fold. More folds share it out."),
            Wrong("2*D", "That is all the liner to spare. Laid double it reaches half as far, and more folds share it out. Halve it and share it out."),
        ),
        solution=("To spare in the corner: 2 x {D} = {2*D|mm}", "Each of the folds lies double: {2*D|mm} over 2 x {n} = {D/n|mm}"),
    ),
)
