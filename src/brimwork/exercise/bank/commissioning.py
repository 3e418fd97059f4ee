"""Commissioning, maintenance and fault-finding. Numbers are invented."""

from brimwork.exercise.choices import Order
from brimwork.exercise.written import Numeric, Wrong

QUESTIONS = (
    Numeric(
        code="T13.1",
        uses=("flow by a bucket",),
        text="A bucket of {v} under the hose fills in {t}. What is the flow in litres an hour?",
        given={"v": "12 L", "t": "21.5 s"},
        answer="v/t",
        unit="L/h",
        name="flow",
        wrong=(
            Wrong("v/t/60", "You gave litres a minute. An hour has 60 minutes, so multiply by 60."),
            Wrong("(t/second)/(v/litre)*3600*litre/hour", "You divided the time by the volume. Flow is volume over time. Divide the volume by the time."),
            Wrong("(t/second)*(v/litre)*60*litre/hour", "You multiplied volume by time. Flow is volume over time. Divide the volume by the time."),
        ),
        solution=("In a second: {v}/{t} = {v/t|L/s}", "In an hour: x 3600 = {v/t|L/h|4}"),
    ),
    Numeric(
        code="T13.2",
        text="With the pump off, an open reservoir without blocks (water area {a}) fell {f} in {T}. A control bucket in the same shade fell {c}. How much leaks in a day?",
        given={"a": "0.912 m2", "f": "14 mm", "T": "48 h", "c": "6 mm"},
        answer="(f - c)*a/T",
        unit="L/day",
        name="leak",
        keep=("T",),
        vary={"a": ("0.7 m2", "1.3 m2", "0.02 m2")},
        where=("c + 3*mm < f",),
        wrong=(
            Wrong("(f - c)*a/day", "You forgot that it took two days. Divide by the days."),
            Wrong("f*a/T", "You did not take off what dried. The control bucket shows it, so take its fall off."),
            Wrong("(f - c)/mm*litre/T", "You took millimetres as litres. That holds for one square metre only: multiply by the area."),
        ),
        solution=("Fall by the leak: {f} - {c} = {f - c|mm}", "In {T}: {(f - c)*a|L}", "In a day: {(f - c)*a/T|L/day}"),
    ),
    Numeric(
        code="T13.3",
        uses=("water up to a level", "treatment volume"),
        text="A label says {r} for each 100 L. Blocks cover {l} by {w}, {n} void, with water {z} deep. The vessel holds {v}. What is the dose?",
        given={"r": "3 mL", "l": "1.2 m", "w": "0.8 m", "n": "95 %", "z": "0.38 m", "v": "95 L"},
        let={"b": "l*w*n*z"},
        answer="(b + v)*r/(100*litre)",
        unit="mL",
        name="dose",
        vary={"n": ("88 %", "95 %", "1 %")},
        wrong=(
            Wrong("(b/n + v)*r/(100*litre)", "You forgot the void fraction, and the dose is too strong. Blocks take up room: multiply by their void."),
            Wrong("b*r/(100*litre)", "You forgot the vessel. Its water needs a dose too."),
            Wrong("(b + v)*r/litre", "You forgot the 100. The label gives the dose for each 100 litres."),
        ),
        solution=("In the tank: {b|L}", "With the vessel: {b + v|L}", "Dose: {b + v|L} x {r}/100 L = {(b + v)*r/(100*litre)|mL}"),
    ),
    Numeric(
        code="T13.4",
        text="At the start a bucket test gave {a}. Now it gives {b}. What share of the flow is lost? (Clean from a loss of 20 % on.)",
        given={"a": "1700 L/h", "b": "1150 L/h"},
        answer="(a - b)/a",
        unit="%",
        name="loss",
        where=("b < 0.9*a",),
        wrong=(
            Wrong("(a - b)/b", "You divided by the new flow. The loss is a share of what there was at the start. Divide by the flow at the start."),
            Wrong("b/a", "You gave what is left. The loss is what is missing. Take it from one."),
            Wrong("20*percent", "You gave the limit for cleaning. Work out the loss, then compare."),
        ),
        solution=("Lost: {a} - {b} = {a - b|L/h}", "Of the first flow: {(a - b)/a|%}"),
    ),
    Numeric(
        code="T13.5",
        uses=("turnover time",),
        text="A reservoir holds {v}. The pump gives {Q} and stops at {d}, which it cannot reach. How many minutes does it take to pump it down?",
        given={"v": "383 L", "Q": "1200 L/h", "d": "137 L"},
        answer="(v - d)/Q",
        unit="min",
        name="time",
        where=("1.5*d < v",),
        wrong=(
            Wrong("v/Q", "You pumped it dry. The pump stops at the water it cannot reach, so take that off."),
            Wrong("(v - d)/Q/60", "You gave hours. An hour has 60 minutes, so multiply by 60."),
            Wrong("d/Q", "You pumped the water that the pump cannot reach. Take it off the whole and pump the rest."),
        ),
        solution=("To pump: {v} - {d} = {v - d|L}", "Time: {v - d|L} over {Q} = {(v - d)/Q|min}. The rest is bailed or siphoned"),
    ),
    Order(
        code="T13.6",
        text="The fountain has stopped. In which order do you look?",
        steps=("water level", "power and trip switch", "pump intake", "hose", "rim and liner"),
        why=(
            "The level takes one look, and a low level stops the pump: see it before you test the power.",
            "Make sure of the power, and switch it off, before a hand goes to the pump.",
            "A blocked intake is far more common than a blocked hose.",
            "Rim and liner are slow to test, so leave them for last.",
        ),
    ),
)
