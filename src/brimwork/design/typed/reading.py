"""The kinds of value that a design can have, and how each is read from text and written again."""

from __future__ import annotations

import datetime
import math
import re
from dataclasses import dataclass

from brimwork import units
from brimwork.design.typed import patches
from brimwork.design.typed.money import for_each, in_currency
from brimwork.design.typed.wording import spoken
from brimwork.dimensions import NUMBER
from brimwork.expression import DeclarationError
from brimwork.files import as_toml
from brimwork.shown import clipped
from brimwork.tables import FITTINGS
from brimwork.topics.pipes import sum_of_fittings
from brimwork.units import InputError


def usual(field, region: str) -> str:
    """What counts in a region until the design says something else; empty for what stays unknown."""
    here = getattr(field, "usual", "")
    return getattr(field, "usual_us", "") or here if region == "US" else here


def _short(value: float, unit: str) -> str:
    """A value in SI to three figures in a unit, without trailing zeros."""
    return f"{units.number(float(units.number(units.convert(value, unit), 3)))} {unit}"


MOST_DAYS = 400
SMALLEST = 0.001  # m: what is thinner is no body of a water feature
# In the unit in which it is shown, the most that any garden has of a quantity, and far more: what is over it was not meant, and would only keep the machine busy.
_FAR: dict[str, float] = {
    "": 1e6, "mm": 1e5, "m": 5000, "cm2": 1e7, "m2": 1e5, "L": 1e7, "m3": 1e4, "kg": 1e6, "kg/m3": 25_000, "kN": 1e5, "kPa": 1e5, "MPa": 1e4, "deg": 360,
    "degC": 99, "m/s": 200, "L/min": 1e5, "L/s per m": 1000, "L/day": 1e7, "mm/h": 1e4, "mm/day": 1e4, "m^0.5/s": 100, "W": 1e6, "V": 1e5, "A": 1e4, "mA": 1e7,
    "mV/A/m": 1e5, "ohm/km": 1e5, "day": 3650, "h": 1e4, "h/m3": 1000, "cur": 1e9, "cur/m": 1e9, "cur/m3": 1e9, "cur/h": 1e9, "cur/kWh": 1e9,
}  # fmt: skip
MOST_IN_A_LIST = 40
LARGEST_WHOLE = 10**15  # a whole number written without quotes


_SLOPE = re.compile(r"\s{0,9}(?P<rise>\d{1,6}(?:\.\d{1,6})?)\s{0,9}(?::|\bin\b)\s{0,9}(?P<run>\d{1,6}(?:\.\d{1,6})?)\s{0,9}")


def slope(text: str) -> str:
    """A slope as the trade writes it, 1:100 or 1 in 100, as a plain number: 0.01; any other text as it is, for the reader of quantities."""
    found = _SLOPE.fullmatch(text) if len(text) <= units.LONGEST_TEXT else None
    return repr(float(found["rise"]) / float(found["run"])) if found and float(found["run"]) else text


_PART = re.compile(r"(?:(?P<count>\d{1,3})\s{0,9}(?:x\s{1,9})?)?(?P<name>[^+]{1,60})")


def fittings_added(given: str | int | float, key: str) -> str | int | float:
    """Fittings as the trade counts them, "square entrance + 2 short elbow + exit", as the sum of their loss coefficients; a number as it is. Raises InputError."""
    if not isinstance(given, str) or len(given) > units.LONGEST_TEXT or not re.search(r"[A-Za-z]{3}", given):
        return given
    counts: dict[str, float] = {}
    for part in given.split("+"):
        found = _PART.fullmatch(part.strip())
        if not found:
            raise InputError(f'{key}: "{clipped(part.strip())}" is no fitting: write {key} = 4, or {key} = "square entrance + 2 short elbow + exit"')
        name = found["name"].strip()
        name = name if name in FITTINGS else name.removesuffix("s")
        counts[name] = counts.get(name, 0) + int(found["count"] or 1)
    try:
        return repr(float(f"{sum_of_fittings(counts):.9g}"))
    except InputError as error:
        raise InputError(f"{key}: {error}") from None


@dataclass(frozen=True)
class Field:
    """A measured quantity: `unit` is how it is shown, `name` what it is, `us` the US unit. Below zero only where `signed`.

    `usual` is what counts until the design says something else, on the `basis` that stands beside it; only for what every model of this kind assumes.
    `such` is an example to show where nothing was typed yet, from the usual ranges or invented, `span` what is usual. A `slope` may be typed as 1:100,
    and a sum of loss coefficients as the `fittings` that it is of. The `size` of a thing that is there is never nothing.
    """

    name: str
    unit: str
    us: str = ""
    signed: bool = False
    most: float = float("inf")
    least: float = 0.0
    whole: bool = False
    usual: str = ""
    basis: str = ""
    usual_us: str = ""  # where what is usual differs there, as the sizes that are sold do
    such: str = ""
    such_us: str = ""
    span: str = ""
    slope: bool = False
    fittings: bool = False
    size: bool = False

    def __post_init__(self) -> None:
        if self.unit not in _FAR:
            raise DeclarationError(f"the field '{self.name}' is shown in {self.unit}: give that unit a row in _FAR of design/typed/reading.py")

    def read(self, given, key: str, region: str = "UK") -> float:
        """SI value of what stands in the file: a text with a unit, or a bare number where the quantity has none."""
        if isinstance(given, bool) or not isinstance(given, str | int | float):
            raise InputError(f"{key} = {clipped(as_toml(given))} is not a quantity: {self._write(key, region)}")
        if self.unit == "cur" and (alone := for_each(given)):
            raise InputError(f"{key} = {given} also says what it is for: type the amount alone, {alone}; where that must be said it has a box of its own")
        if self.unit.startswith("cur"):
            given = in_currency(given, self.here(region))
        if isinstance(given, int) and abs(given) >= LARGEST_WHOLE:
            raise InputError(f"{key} is a number of very many digits, which cannot be meant: {self._write(key, region)}")
        if isinstance(given, float) and not math.isfinite(given):
            raise InputError(f"{key} = {given} is not a number that can be used: {self._write(key, region)}")
        if isinstance(given, int | float) and units.unit(self.unit).dimension != NUMBER:
            raise InputError(f'{key} = {given} has no unit: write {key} = "{units.number(float(given))} {self.here(region)}"')
        given = slope(str(given)) if self.slope else fittings_added(given, key) if self.fittings else given
        value = units.read(str(given), self.here(region), key, f"{key} = {self.suggested(region)}")
        self._check(value, given, key, region)
        return value

    def _check(self, value: float, given, key: str, region: str) -> None:
        """Raises InputError for a value that the quantity cannot have."""
        if value < 0 and not self.signed:
            raise InputError(f"{key} = {given} is negative, but the {spoken(self.name, region)} cannot be below zero: {self._write(key, region)}")
        if self.whole and not (value == int(value) and value >= 1):
            raise InputError(f"{key} = {given} is not a whole number of one or more: write {key} = 2")
        if self.size and value < SMALLEST:
            raise InputError(f"{key} = {given} is smaller than the {spoken(self.name, region)} of anything can be: {self._write(key, region)}")
        far = units.unit(self.unit)
        for limit, word in ((min(self.most, (_FAR[self.unit] + far.shift) * far.factor), "over"), (self.least, "under")):
            if value > limit if word == "over" else limit and value < limit:
                far_off = _short(limit, self.here(region)) if region == "US" else units.write(limit, self.unit, None)
                cannot = f"{key} = {given} is {word} {far_off}, which the {spoken(self.name, region)} cannot be"
                raise InputError(f"{cannot}: {self._as_share(value, key) or self._write(key, region)}")

    def _write(self, key: str, region: str) -> str:
        text = self.suggested(region)
        return f'write {key} = "{text}"' if self.unit else f"write {key} = {text}"

    def _as_share(self, value: float, key: str) -> str:
        """What to write where somebody wrote a percentage without its sign."""
        return f'write {key} = {units.number(value / 100)} or {key} = "{units.number(value)} %"' if self.most == 1 and not self.unit and value <= 100 else ""

    def here(self, region: str) -> str:
        """The unit in which the region gives the quantity."""
        return self.us if region == "US" and self.us else self.unit

    def suggested(self, region: str = "UK") -> str:
        """An example of what can be typed, in the unit of the region."""
        if region == "US" and self.us and not (self.such or self.usual_us):
            return _short(units.read(self.usual, self.unit), self.us) if self.usual else f"1 {self.us}"
        return (region == "US" and self.such_us) or self.such or usual(self, region) or (f"1 {self.unit}" if self.unit else "2" if self.whole else "0.5")

    @property
    def example(self) -> str:
        """An example as it stands in the file."""
        return f'"{self.suggested()}"' if self.unit else self.suggested()

    def hint(self, region: str = "UK") -> str:
        """What to show where nothing was typed yet: the usual value that counts with its basis, else an example with what is usual."""
        if self.usual:
            return f"usual: {self.suggested(region)} ({self.basis})"
        return f"such as {self.suggested(region)}" + (f" ({self.span})" if self.span else "")

    def write(self, value: float, region: str = "UK") -> str:
        return units.write(value, self.here(region), None)


@dataclass(frozen=True)
class OneOf:
    """One of a few words."""

    name: str
    options: tuple[str, ...]
    usual: str = ""
    basis: str = ""
    usual_us: str = ""

    def read(self, given, key: str, region: str = "UK") -> str:
        if not isinstance(given, str) or given not in self.options:
            raise InputError(f"{key} = {clipped(as_toml(given))} is none of the words known here: write one of {', '.join(map(repr, self.options))}")
        return given

    def hint(self, region: str = "UK") -> str:
        """The usual word that counts, with its basis; the others are listed beside it."""
        counts = usual(self, region)
        return f"usual: {counts} ({self.basis})" if counts else ""

    def write(self, value: str, region: str = "UK") -> str:
        return value


@dataclass(frozen=True)
class Date:
    """A day of the calendar."""

    name: str

    def read(self, given, key: str, region: str = "UK") -> datetime.date:
        """The day that stands in the file, in quotes or without."""
        text = given.isoformat() if type(given) is datetime.date else given
        wanted = f'write {key} = "2027-03-01", year, month and day'
        if not isinstance(text, str) or not re.fullmatch(r"\d{4}-\d{2}-\d{2}", text.strip()):
            raise InputError(f"{key} = {clipped(as_toml(given))} is not a date: {wanted}")
        try:
            day = datetime.date.fromisoformat(text.strip())
        except ValueError:
            raise InputError(f"{key} = {text}: there is no such day in the calendar: {wanted}") from None
        if not 2000 <= day.year <= 2199:
            raise InputError(f"{key} = {text} is not in this century or the next: {wanted}")
        return day

    def hint(self, region: str = "UK") -> str:
        return "such as 2027-03-01"

    def write(self, value: datetime.date, region: str = "UK") -> str:
        return value.isoformat()


@dataclass(frozen=True)
class Dates:
    """Some days of the calendar."""

    name: str

    def read(self, given, key: str, region: str = "UK") -> tuple[datetime.date, ...]:
        """The days in the file, in order, each once. Raises InputError."""
        if not isinstance(given, list) or not 1 <= len(given) <= MOST_DAYS:
            raise InputError(f'{key} is a list of days, {MOST_DAYS} at most: write {key} = ["2027-12-24", "2027-12-27"]')
        return tuple(sorted({Date(self.name).read(one, key, region) for one in given}))

    def hint(self, region: str = "UK") -> str:
        return "such as 2027-12-24, 2027-12-27"

    def write(self, value: tuple[datetime.date, ...], region: str = "UK") -> str:
        return ", ".join(day.isoformat() for day in value)


@dataclass(frozen=True)
class Several:
    """A list of quantities in one unit."""

    name: str
    unit: str
    us: str
    such: str
    such_us: str
    signed: bool = False
    size: bool = False

    def read(self, given, key: str, region: str = "UK") -> tuple[float, ...]:
        if not isinstance(given, list) or not given:
            listed = ", ".join(f'"{item}"' for item in self._suggested(region).split(", "))
            raise InputError(f"{key} is a list of lengths: write {key} = [{listed}]")
        if len(given) > MOST_IN_A_LIST:
            raise InputError(f"{key} has {len(given)} entries, and a feature has {MOST_IN_A_LIST} at most")
        one, one_us = self.such.partition(",")[0], self.such_us.partition(",")[0]
        return tuple(
            Field(self.name, self.unit, self.us, signed=self.signed, size=self.size, such=one, such_us=one_us).read(item, key, region) for item in given
        )

    def _suggested(self, region: str) -> str:
        return self.such_us if region == "US" else self.such

    def hint(self, region: str = "UK") -> str:
        return f"such as {self._suggested(region)}"

    def write(self, value: tuple[float, ...], region: str = "UK") -> str:
        return ", ".join(units.write(item, self.unit, None) for item in value)


@dataclass(frozen=True)
class Corners:
    """The corners of an outline drawn full size, in the order in which one walks round it: pairs of lengths from one point."""

    name: str

    def read(self, given, key: str, region: str = "UK") -> tuple[tuple[float, float], ...]:
        pairs = isinstance(given, list) and all(isinstance(pair, list) and len(pair) == 2 for pair in given)
        if not pairs or not 3 <= len(given) <= 100:
            zero, far = ("0 in", "12 in") if region == "US" else ("0 mm", "300 mm")
            raise InputError(f'{key} is a list of three corners or more: write {key} = [["{zero}", "{zero}"], ["{far}", "{zero}"], ["{zero}", "{far}"]]')
        side = Field("distance", "mm", "in", signed=True, such="300 mm", such_us="12 in")
        corners = tuple((side.read(x, key, region), side.read(y, key, region)) for x, y in given)
        patches.must_not_cross(corners, key)
        if patches.area(corners) == 0:
            raise InputError(f"{key}: the corners lie on one line and enclose nothing: give the corners of the shape")
        return corners

    def hint(self, region: str = "UK") -> str:
        zero, far = ("0 in", "12 in") if region == "US" else ("0 mm", "300 mm")
        return f"such as {zero} at {zero}; {far} at {zero}; {zero} at {far}"

    def write(self, value: tuple[tuple[float, float], ...], region: str = "UK") -> str:
        return "; ".join(f"{units.write(x, 'mm', None)} at {units.write(y, 'mm', None)}" for x, y in value)


_FLOW = Field("flow", "L/min", "US gal/min", such="40 L/min", such_us="10 US gal/min")
_HEAD = Field("head", "m", "ft", such="2 m", such_us="6 ft")


@dataclass(frozen=True)
class Curve:
    """A pump curve: pairs of flow and head, from no flow upwards."""

    name: str

    def read(self, given, key: str, region: str = "UK") -> tuple[tuple[float, float], ...]:
        pairs = isinstance(given, list) and all(isinstance(pair, list) and len(pair) == 2 for pair in given)
        if not pairs or len(given) < 2:
            listed = ", ".join(f'["{flow}", "{head}"]' for flow, head in self._pairs(region))
            raise InputError(f"{key} is a list of pairs, flow and head: write {key} = [{listed}]")
        if len(given) > MOST_IN_A_LIST:
            raise InputError(f"{key} has {len(given)} pairs, and {MOST_IN_A_LIST} are enough for any curve")
        return tuple((_FLOW.read(flow, key, region), _HEAD.read(head, key, region)) for flow, head in given)

    def _pairs(self, region: str) -> tuple[tuple[str, str], ...]:
        return (("0 US gal/min", "10 ft"), ("16 US gal/min", "0 ft")) if region == "US" else (("0 L/min", "3 m"), ("60 L/min", "0 m"))

    def hint(self, region: str = "UK") -> str:
        return "such as " + "; ".join(" at ".join(pair) for pair in self._pairs(region))

    def write(self, value: tuple[tuple[float, float], ...], region: str = "UK") -> str:
        return "; ".join(f"{units.write(flow, 'L/min', None)} at {units.write(head, 'm', None)}" for flow, head in value)
