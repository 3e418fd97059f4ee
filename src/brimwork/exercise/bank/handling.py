"""Safety, handling and people. Numbers are invented. They explain a method; a real lift is planned by someone who is competent to do so."""

from brimwork.exercise.choices import Choose
from brimwork.exercise.written import Numeric, Wrong

QUESTIONS = (
    Numeric(
        code="T11.1",
        uses=("recommended limit of a lift from below the knuckles",),
        text="A lift begins {H} in front of the ankles and {z} above the floor and goes up {D}, with no twist and seldom. The grip counts {c}. What weight limit does the"
        " NIOSH equation give? (23 kg x 25 cm/H x (1 - 0.003 |z - 75 cm|) x (0.82 + 4.5 cm/D) x grip.)",
        given={"H": "36 cm", "z": "28 cm", "D": "52 cm", "c": "0.95"},
        let={"a": "25*cm/H", "b": "1 - 0.003*abs(z - 75*cm)/cm", "d": "0.82 + 4.5*cm/D"},
        answer="23*kg*a*b*d*c",
        unit="kg",
        name="weight limit",
        keep=("c",),
        vary={"z": ("15 cm", "45 cm", "1 cm"), "H": ("30 cm", "50 cm", "1 cm"), "D": ("40 cm", "60 cm", "1 cm")},
        wrong=(
            Wrong("23*kg", "You used the 23 kg as the limit. That is for a perfect lift: multiply by each factor."),
            Wrong("25*kg", "You used a rule of thumb. This lift is far from perfect: work out each factor."),
            Wrong("23*kg*a*(1 - 0.003*75)*d*c", "You began the lift at the floor. Put in the height where the hands begin."),
        ),
        solution=("Factors: {a}, {b}, {d} and {c}", "Limit: 23 kg x all of them = {23*kg*a*b*d*c|kg}"),
    ),
    Numeric(
        code="T11.2",
        uses=("pull in each leg of a sling",),
        text="A sling with two legs lifts a column of {M}. Each leg stands at {t} to the level. What is the pull in one leg, in newtons?",
        given={"M": "183 kg", "t": "55 deg"},
        answer="M*g/(2*sin(t))",
        unit="N",
        name="pull in one leg",
        vary={"M": ("140 kg", "260 kg", "1 kg"), "t": ("50 deg", "75 deg", "5 deg")},
        wrong=(
            Wrong("M*g/2", "You halved the load. Legs that lean pull harder: divide by the sine of their angle as well."),
            Wrong("M*g/(2*cos(t))", "You used the cosine. The angle is measured from the level, so use the sine."),
            Wrong("M*g/sin(t)", "You did not share the load. Two legs carry it, so halve it."),
            Wrong("M/(2*sin(t))*m/second**2", "You left out g. A pull is a force: multiply the mass by 9.81."),
        ),
        solution=("Weight: {M} x g = {M*g|N}", "One leg: {M*g|N} over 2 sin {t} = {M*g/(2*sin(t))|N}"),
    ),
    Numeric(
        code="T11.3",
        text="A breaker shakes the hand with {a}. The trigger is held for {t} in the day. What is the daily exposure A(8)?",
        given={"a": "9 m/s2", "t": "45 min"},
        answer="a*sqrt(t/(8*hour))",
        unit="m/s2",
        name="exposure",
        vary={"a": ("6 m/s2", "12 m/s2", "0.5 m/s2"), "t": ("30 min", "90 min", "5 min")},
        wrong=(
            Wrong("a*t/(8*hour)", "You did not take the root. Exposure goes with the root of the share of the day."),
            Wrong("a", "You left out the time. Multiply by the root of the share of eight hours."),
            Wrong("a*sqrt(t/minute/8)", "You left the time in minutes. Put it in hours before you divide by 8."),
        ),
        solution=(
            "Share of eight hours: {t/(8*hour)}",
            "Exposure: {a} x sqrt({t/(8*hour)}) = {a*sqrt(t/(8*hour))|m/s2}. From 2.5 m/s2 on an employer in the UK must act (from memory)",
        ),
    ),
    Numeric(
        code="T11.4",
        uses=("pebbles needed to hold foam down",),
        text="A pot is {D} across inside and {h} deep. {F} of foam lies in it, whose uplift would hold {u} in the air. Pebbles fill the rest up to {o} below the rim, and weigh {b}"
        " under water. How many times does their weight hold the foam down?",
        given={"D": "520 mm", "h": "500 mm", "F": "60 L", "u": "58.8 kg", "o": "40 mm", "b": "1.07 kg/L"},
        let={"v": "pi/4*D**2*(h - o)"},
        answer="(v - F)*b/u",
        unit="",
        name="factor",
        keep=("F", "u", "b"),
        vary={"D": ("500 mm", "620 mm", "5 mm"), "h": ("420 mm", "560 mm", "5 mm"), "o": ("30 mm", "60 mm", "5 mm")},
        where=("F + 20*litre < v", "v < F + 80*litre"),
        wrong=(
            Wrong(
                "(v - F)*1.72*kg/litre/u", "You used the dry weight of the pebbles. Under water they weigh less, as the text says. Use the weight under water."
            ),
            Wrong("v*b/u", "You forgot that the foam takes up room. Take its volume off before you fill in pebbles."),
        ),
        solution=("Room below that level: {v|L}", "Pebbles: {v|L} - {F} = {v - F|L}", "Factor: {v - F|L} x {b}/{u} = {(v - F)*b/u}"),
    ),
    Numeric(
        code="T11.5",
        text="A rule of thumb lets one fit man lift {M} close to the waist (a woman about two thirds of that, from memory), and three equal lifters half of their sum. What may three such men lift"
        " together? (The pot weighs {p}.)",
        given={"M": "25 kg", "p": "113 kg"},
        answer="3*M/2",
        unit="kg",
        name="mass",
        wrong=(
            Wrong("3*M", "You added single limits. Three people get in each other's way: take half of the sum."),
            Wrong("2*M", "You used two thirds, the share for two people. For three it is half. Multiply by half, and by three."),
            Wrong("p", "You gave the mass of the pot. The question asks what three may lift; then compare. Work out half of three limits."),
        ),
        solution=("Sum of three: 3 x {M} = {3*M|kg}", "Half of it: {3*M/2|kg}. A pot of {p} needs a hoist, a lifter or skates"),
    ),
    Choose(
        code="T11.6",
        text="Small children play near a bowl. Which change does most against drowning?",
        right="Leave no open water: fill with stone to above the water, or fix a rigid grille at or above it.",
        because="A child can drown in a few centimetres of water. Where none lies open none is in reach; watch all the same, for stones move.",
        wrong=(
            ("Put up a sign.", "Small children do not read. Take the open water away."),
            ("Rely on a parent who watches.", "A child needs only a minute. Take the open water away, and watch as well."),
            ("Make the rim higher.", "Children climb, and a high rim makes it harder to get out. Take the open water away."),
        ),
    ),
)
