"""Electrical supply. Numbers are invented. Mains wiring is for a licensed electrician; here is only what the numbers mean."""

from brimwork.exercise.choices import Choose
from brimwork.exercise.written import Numeric, Wrong

QUESTIONS = (
    Numeric(
        code="T10.1",
        text="A pump takes {P} at {U}, with a power factor of {f}. What current does it draw?",
        given={"P": "45 W", "U": "230 V", "f": "0.9"},
        answer="P/(U*f)",
        unit="A",
        name="current",
        vary={"f": ("0.7", "0.95", "0.05")},
        keep=("U",),
        wrong=(
            Wrong("P/U", "You forgot the power factor. Divide by it, for the current is larger than the power alone needs."),
            Wrong("P*f/U", "You multiplied by the power factor. The current grows when it is low, so divide."),
            Wrong("U/P*W*A/V", "You divided the voltage by the power. Current is power over voltage."),
        ),
        solution=("Voltage times power factor: {U*f|V}", "Current: {P} over {U*f|V} = {P/(U*f)|A}"),
    ),
    Numeric(
        code="T10.2",
        text="A load of {P} with a power factor of {f} hangs on {l} of cable at {U}. The cable drops {r}, both cores counted. What is the drop in per cent?",
        given={"P": "250 W", "f": "0.9", "l": "35 m", "U": "230 V", "r": "29 mV/A/m"},
        let={"I": "P/(U*f)", "d": "r*I*l"},
        answer="d/U",
        unit="%",
        name="drop",
        keep=("U",),
        vary={"f": ("0.7", "0.95", "0.05")},
        wrong=(
            Wrong("2*d/U", "You doubled the length. The value of the cable counts both cores already."),
            Wrong("d/V*percent", "You gave volts as per cent. Divide by the supply voltage."),
            Wrong("r*l*A/U", "You forgot the current. Multiply by the amperes that flow."),
        ),
        solution=("Current: {I|A}", "Drop: {r} x {I|A} x {l} = {d|V}", "Of {U}: {d/U|%}"),
    ),
    Numeric(
        code="T10.3",
        text="{I} flows through {l} of two-core cable at {U}. One core has {r}. What is the voltage drop in per cent?",
        given={"I": "6 A", "l": "220 ft", "U": "120 V", "r": "3.14 ohm/kft"},
        let={"d": "2*l*r*I"},
        answer="d/U",
        unit="%",
        name="drop",
        keep=("U", "r"),
        wrong=(
            Wrong("d/U/2", "You counted one core only. The current goes out and comes back, so count the length twice."),
            Wrong("d/(230*V)", "You divided by 230 V. The supply here is the voltage that is given."),
            Wrong("d/V*percent", "You gave volts as per cent. Divide by the supply voltage."),
        ),
        solution=("Out and back: 2 x {l} x {r} = {2*l*r|ohm}", "Drop: x {I} = {d|V}", "Of {U}: {d/U|%}. Compare it with what your code allows"),
    ),
    Numeric(
        code="T10.4",
        text="A pump of {P} runs {t} a day all year. A kilowatt hour costs {c/money||2}, in your money. What does a year cost?",
        given={"P": "45 W", "t": "10 h", "c": "0.3 cur"},
        answer="P*t*365*c/kWh",
        unit="cur",
        name="cost",
        wrong=(
            Wrong("P*24*hour*365*c/kWh", "You ran it all day and night. Use the hours that it runs."),
            Wrong("1000*P*t*365*c/kWh", "You left watts where kilowatts belong. Divide by 1000."),
            Wrong("P*t*30*c/kWh", "You worked out a month. A year has 365 days."),
        ),
        solution=("Energy: {P} x {t} x 365 = {P*t*365|kWh}", "Cost: x {c/money||2} = {P*t*365*c/kWh/money}"),
    ),
    Numeric(
        code="T10.5",
        text="A cord goes from the pump up {a}, {b} across the block, {c} over the apron, {d} in duct and {e} up to the socket, with a drip loop of {f} and {h} of slack to"
        " lift the pump out. How long must it be?",
        given={"a": "0.55 m", "b": "1.3 m", "c": "0.75 m", "d": "6.5 m", "e": "0.9 m", "f": "0.3 m", "h": "1 m"},
        answer="a + b + c + d + e + f + h",
        unit="m",
        name="length",
        close="0.05 m",
        wrong=(
            Wrong("a + b + c + d + e", "You forgot the slack and the drip loop. Both need cord, so add them."),
            Wrong("a + b + c + d + e + f", "You forgot the slack. Without it the pump cannot be lifted out."),
            Wrong("d", "You measured the duct only. Add each way up, across and down."),
        ),
        solution=("Way of the cord: {a + b + c + d + e|m}", "With loop and slack: {a + b + c + d + e + f + h|m|4}. A cord is never joined under the ground"),
    ),
    Numeric(
        code="T10.6",
        text="A load of {P} hangs on {l} of two-core cable at {U} (power factor 1). One core has {r}. How many volts are lost on the way?",
        given={"P": "300 W", "l": "150 ft", "U": "120 V", "r": "3.14 ohm/kft"},
        let={"I": "P/U"},
        answer="2*l*r*I",
        unit="V",
        name="drop",
        keep=("U", "r"),
        middle=("current", "I", "A"),
        wrong=(
            Wrong("l*r*I", "You counted one core only. The current goes out and comes back, so count the length twice.", "I"),
            Wrong("l*r*I", "You shared the current between the two cores. All of it flows through both, one after the other.", "I/2"),
            Wrong("4*l*r*I", "You doubled twice. There is one way out and one way back."),
        ),
        solution=("Current: {P} over {U} = {I|A}", "Out and back: 2 x {l} x {r} = {2*l*r|ohm}", "Drop: {I|A} x {2*l*r|ohm} = {2*l*r*I|V}"),
    ),
    Choose(
        code="T10.7",
        text="The pump's cord is 1 m too short to reach the socket. What is right?",
        right="Move the socket, or order the pump with a longer cord.",
        because="A cord in wet ground is not joined. Who moves the socket is a licensed electrician.",
        wrong=(
            ("Join the cord in the duct with tape.", "Water gets into tape, and the ground around it may become live. Do not join cords under the ground."),
            ("Use an extension lead in the grass.", "A plug that lies in wet grass is a hazard. Move the socket or order a longer cord."),
            ("Pull the pump nearer, out of the deep end.", "The pump then draws air at low water. Move the socket or order a longer cord."),
        ),
    ),
)
