"""Sound, sight and levels. Numbers are invented; that a small source in the open loses 6 dB for each doubling is decibel arithmetic."""

from brimwork.exercise.choices import Choose, FindTheSlip, Tell
from brimwork.exercise.written import Numeric, Wrong

QUESTIONS = (
    Choose(
        code="T01.8",
        uses=("sound level at a distance",),
        text="A small fall is measured at 56 dB from 1 m away, in the open. You move the seat from 2 m to 4 m. How does the sound at the seat change?",
        right="It drops by about 6 dB.",
        because="Twice as far away, the same sound is spread over four times the area. A quarter of the strength is 6 dB less.",
        wrong=(
            ("It drops to half the decibels.", "Decibels are logarithms. Half the number would be far quieter than it is."),
            ("It drops by about 3 dB.", "That is for half the strength. Twice as far away a quarter is left."),
            ("It drops by about 12 dB.", "That is for two doublings. From 2 m to 4 m is one."),
        ),
    ),
    Tell(
        code="T01.9",
        text="A client asks how loud a bowl will be. You know its flow and the height of its fall. Why do you not work it out?",
        model="What the water lands on counts as much as flow and fall; no formula is known, so we try it with a hose and a meter.",
        points=("flow and fall do not decide it alone", "what the water lands on counts as well", "so it is measured in a trial"),
    ),
    FindTheSlip(
        code="T01.10",
        uses=("level of a point",),
        text="The bench mark stands at 10.000 m. A staff on it reads 1.250 m, and on a stone 1.900 m. Somebody works out the level of the stone.",
        lines=(
            ("Level of the bench mark: 10.000 m.", "This holds: it is given."),
            ("The line of sight lies above it: 10.000 + 1.250 = 11.250 m.", "This holds: the staff reads up from its foot."),
            ("The stone lies the second reading above that: 11.250 + 1.900 = 13.150 m.", ""),
        ),
        slip=3,
        because="The staff stands on the stone and reaches up to the line, so the stone lies below it. Take the second reading off.",
        mend=("level of the stone", "9.35 m", "13.15 m"),
    ),
    Numeric(
        code="T01.11",
        uses=("change of sound level",),
        text="A meter reads {n} dB beside one bowl. Then {k} bowls like it run side by side, all as far from the meter. What does it read now?",
        given={"n": "56", "k": "4"},
        answer="n + 10*log10(k)",
        unit="",
        label="dB",
        name="level",
        close="0.3",
        vary={"n": ("50", "62", "1"), "k": ("3", "6", "1")},
        wrong=(
            Wrong("n*k", "Decibels are logarithms and do not add. Add ten times the logarithm of the number of bowls."),
            Wrong("n + 20*log10(k)", "You took 20, which goes with distances. Sources that are alike add their strength: take 10."),
            Wrong(
                "n + 3*(k - 1)", "Three more is for twice as many. Each further bowl adds less than the one before. Use ten times the logarithm of the number."
            ),
        ),
        solution=("Strength: {k} times as much", "Level: {n} + 10 log10({k}) = {n + 10*log10(k)} dB"),
    ),
)
