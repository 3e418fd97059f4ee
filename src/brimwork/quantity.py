"""One letter of the nomenclature: how its values are read, checked, ranged and written.

The usual range is where controls run and exercises draw their numbers; a letter whose range starts below zero may be negative, every other
must not. A row with `value` is a constant: never a control, never random.
"""

from __future__ import annotations

import math
import re
import sys
from dataclasses import dataclass
from functools import cached_property

from brimwork import system
from brimwork.dimensions import Dimension
from brimwork.units import InputError, convert, number, read, unit, with_point, write

# Where a value is typed, for messages that show how: in a box of its own, on the command line, or in a cell of a notebook.
BOX, COMMAND, CELL = "box", "command line", "cell"
_WAYS = {BOX: "{1}", COMMAND: "{0}={1}", CELL: '{0}="{1}"'}


@dataclass(frozen=True)
class Quantity:
    """One row: units are texts for `units.unit`; low, high, step, value and most are texts for `units.read`. No value may exceed `most`."""

    key: str
    name: str
    si: str
    metric: str = ""
    us: str = ""
    low: str = ""
    high: str = ""
    step: str = ""
    value: str = ""
    note: str = ""
    most: str = ""

    @cached_property
    def dimension(self) -> Dimension:
        return unit(self.si).dimension

    @cached_property
    def constant(self) -> float | None:
        return read(self.value, self.si, self.key) if self.value else None

    @property
    def fixed(self) -> float:
        """The value of a constant in SI; a letter that is none has no such value."""
        assert self.constant is not None, f"{self.key} is no constant"
        return self.constant

    @cached_property
    def range(self) -> tuple[float, float, float]:
        """Low, high and step in SI."""
        low, high, step = (read(text, self.si or self.metric, self.key) for text in (self.low, self.high, self.step))
        return low, high, step

    @cached_property
    def signed(self) -> bool:
        return not self.value and self.range[0] < 0

    def read(self, text: str, place: str = BOX) -> float:
        """SI value of a text such as "25 mm", or "2,5 mm"; InputError says what to type at that place. A negative value is refused where none makes sense.

        For those who show what was read.
        """
        try:
            value = read(with_point(text), self.metric, self.key, self.examples(place), self.us, lambda text: self._put(text, place))
        except InputError as error:
            raise InputError(f"{error}. ({self.key} is {_the(self.name)}.)") from None
        self.check(value, text, place)
        return value

    def check(self, value: float, shown: str = "", place: str = BOX) -> None:
        """Refuse a number this quantity cannot have: not finite, or below zero."""
        given, example = f"{self.key} = {shown or value}", self.such_as(place)
        if not abs(value) <= sys.float_info.max:
            raise InputError(f"{given} is not a number that can be used: type {_the(self.name)}, such as {example}")
        if value < 0 and not self.signed:
            raise InputError(f"{given} is negative, but {_the(self.short_name)} cannot be below zero: type one such as {example}")
        if self.limit is not None and value > self.limit:
            raise InputError(f"{given} is above {self.most}, the most that {self.key} can be ({self.name}): type one such as {example}")

    def unusual(self, value: float, *ends: float) -> str:
        """What to say of a value (SI) outside the usual range, or ""; `ends` widen the range to what one formula is used for. Constants have none."""
        if self.value:
            return ""
        low, high = min(*self.range[:2], *ends), max(*self.range[:2], *ends)
        slack = 1e-9 * (high - low)
        if low - slack <= value <= high + slack:
            return ""
        far = "far " if value > 10 * high > 0 or low > 0 and value < low / 10 else ""
        given = " or ".join(_short(value, name, 4) for name in dict.fromkeys((self.metric, self.us or self.metric)))
        return f"{self.key} = {given} lies {far}outside the usual range of {_the(self.plain_name)}, {self.span(low, high)}: check the number and its unit"

    def span(self, low: float, high: float) -> str:
        """A range (SI) in both unit systems: "200 mm to 1200 mm (7.87 in to 47.2 in)"."""
        spans = [" to ".join(_short(end, name) for end in (low, high)) for name in dict.fromkeys((self.metric, self.us or self.metric))]
        return f"{spans[0]} ({spans[1]})" if len(spans) > 1 else spans[0]

    @cached_property
    def limit(self) -> float | None:
        """The largest value that can be, in SI, or None."""
        return read(self.most, self.si, self.key) if self.most else None

    @cached_property
    def example(self) -> str:
        """A value in the middle of the usual range, or the constant, as a person would type it in a box: "12 mm"."""
        return self.such_as(BOX)

    def such_as(self, place: str) -> str:
        """The same, as a person would type it there."""
        us = system.current() == system.FEET
        if self.constant is not None:
            return self.typed(self.constant, us, place)
        low, high, step = self.range
        return self.typed(low + round((high - low) / 2 / step) * step, us, place)

    def typed(self, value: float, us: bool = False, place: str = COMMAND) -> str:
        """A value (SI) as a person would type it: "H=12mm" on a command line, H="12 mm" in a cell, "12 mm" in a box; in US units to three figures."""
        name = self.us if us and self.us else self.metric
        text = _short(value, name) if name != self.metric else write(value, name, None)
        return self._put(text, place)

    def _put(self, text: str, place: str) -> str:
        """A value as one types it there; a command line has no space in it, but for units that are written with one."""
        return _WAYS[place].format(self.key, text.replace(" ", "") if place == COMMAND and text.count(" ") == 1 else text)

    def examples(self, place: str = BOX) -> str:
        """A value of the usual range in metric and in US units: "12 mm or 0.472 in"."""
        low, high, _ = self.range if self.constant is None else (self.constant,) * 3
        return " or ".join(dict.fromkeys((self.such_as(place), self.typed((low + high) / 2, us=True, place=place))))

    @property
    def here(self) -> str:
        """The unit in which pages show it now: metric, or US (`system`)."""
        us = "" if self.us == "hp" else self.us  # pumps of this size have watts on their label in the US too (common practice, no source)
        return us or self.metric if system.current() == system.FEET else self.metric

    def text_here(self, value: float, digits: int | None = 3) -> str:
        """A value (SI) in that unit; `digits` None writes it in full, or to four figures where the unit is not the one that it was given in."""
        return (
            self.metric_text(value, digits)
            if self.here == self.metric
            else write(float(f"{convert(value, self.us):.{digits or 4}g}"), "", digits) + f" {self.us}"
        )

    def stepped(self, low: float, high: float, step: float) -> tuple[float, float, float]:
        """A range (SI) in the unit of pages, on round steps there: low, high and step."""
        ends = convert(low, self.here), convert(high, self.here), convert(step, self.here) - convert(0.0, self.here)
        if self.here == self.metric:
            return ends
        size = system.round_step(ends[2])
        while 3 * size > ends[1] - ends[0]:
            size = system.round_step(size / 2.2)
        return math.ceil(ends[0] / size - 1e-6) * size, math.floor(ends[1] / size + 1e-6) * size, size

    def on_a_slider(self, low: float, high: float, step: float) -> tuple[float, float, float]:
        """The same for a slider: where its ends come from another system, each goes out to a rounder number nearby, which somebody of this one would choose."""
        start, end, size = self.stepped(low, high, step)
        if self.here == self.metric:
            return start, end, size
        room = 0.06 * (end - start)
        start = _rounder(start, -size, min(room, max(start - size, 0.0)) if start > 0 else 0.0)
        most = math.inf if self.limit is None else convert(self.limit, self.here)
        return start, _rounder(end, size, min(room, most - end)), size

    def metric_text(self, value: float, digits: int | None = 3) -> str:
        """A value (SI) in the metric unit. Whole millimetres are never rounded away: what they are added to, or measured with, has them."""
        if digits == 3 and self.metric == "mm" and 1 <= abs(value) < 1e5:
            digits = len(str(int(abs(value) * 1000)))
        return write(value, self.metric, digits)

    def short(self, value: float) -> str:
        """Up to four figures without trailing zeros, for values that were given: "12 mm"."""
        return days(_short(value, self.here, 4))

    @property
    def short_name(self) -> str:
        """The name without its explanation."""
        return system.named_here(self.name).partition(":")[0]

    @property
    def plain_name(self) -> str:
        """The name as short as it stays clear: without its explanation and what narrows it."""
        return self.short_name.partition(",")[0].partition(" (")[0]

    def us_text(self, value: float, digits: int | None = 3) -> str:
        return write(value, self.us or self.metric, digits)

    def both(self, value: float, digits: int | None = 3) -> str:
        """The value in both unit systems, that of pages first: "25.0 mm (0.984 in)"."""
        metric, us = self.metric_text(value, digits), self.us_text(value, digits)
        if metric == us:
            return metric
        return f"{us} ({metric})" if system.current() == system.FEET else f"{metric} ({us})"

    def shown(self, value: float, digits: int | None = 3) -> str:
        """The value as lessons show it: in the system that was chosen, or in both where nobody has chosen."""
        return days(self.text_here(value, digits) if system.was_chosen() else self.both(value, digits))


def days(text: str) -> str:
    """Days in the plural, unless it is one."""
    return f"{text}s" if text.endswith(" day") and not re.search(r"(^|\s)1(\.0+)? day$", text) else text


def _rounder(value: float, step: float, room: float) -> float:
    """The roundest number that lies so near, whole steps away: that with the fewest figures, one that ends in five before others, the nearest of these."""
    return min((value + count * step for count in range(math.floor(room / abs(step) + 1e-6) + 1)), key=lambda end: (_figures(end), abs(end - value)))


def _figures(value: float) -> float:
    """How many figures a number has; a last one of five counts half."""
    digits = f"{value:.6e}".partition("e")[0].replace(".", "").rstrip("0").lstrip("-")
    return len(digits) - 0.5 * digits.endswith("5")


def _the(name: str) -> str:
    return name if name.startswith("the ") else f"the {name}"


def _short(value: float, name: str, digits: int = 3) -> str:
    return f"{number(float(f'{convert(value, name):.{digits}g}'))} {name}".strip()
