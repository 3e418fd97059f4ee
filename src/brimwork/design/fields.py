"""What a design file may say: every section and key, with its unit, its meaning and how it is read."""

from __future__ import annotations

import datetime
import math
import re
from dataclasses import dataclass
from functools import cache

from brimwork import units
from brimwork.design import patches
from brimwork.design.prices import PRICES, Priced
from brimwork.design.questions import QUESTIONS
from brimwork.design.steps import LEADS, STEPS, USUAL_TEAM, WAIT, Lead, Step
from brimwork.design.wording import spoken
from brimwork.dimensions import NUMBER
from brimwork.tables import HAND_DIGGING
from brimwork.units import InputError

CP, J = "common practice", "judgement"
BASES = ("yours", "read", "memory", "common practice", "judgement", "measured")


def _short(value: float, unit: str) -> str:
    """A value in SI to three figures in a unit, without trailing zeros."""
    return f"{units.number(float(units.number(units.convert(value, unit), 3)))} {unit}"


_SLOPE = re.compile(r"\s{0,9}(?P<rise>\d{1,6}(?:\.\d{1,6})?)\s{0,9}(?::|\bin\b)\s{0,9}(?P<run>\d{1,6}(?:\.\d{1,6})?)\s{0,9}")


def slope(text: str) -> str:
    """A slope as the trade writes it, 1:100 or 1 in 100, as a plain number: 0.01; any other text as it is, for the reader of quantities."""
    found = _SLOPE.fullmatch(text) if len(text) <= units.LONGEST_TEXT else None
    return repr(float(found["rise"]) / float(found["run"])) if found and float(found["run"]) else text


@dataclass(frozen=True)
class Field:
    """A measured quantity: `unit` is how it is shown, `name` what it is, `us` the US unit. Below zero only where `signed`.

    `usual` is what counts until the design says something else, on the `basis` that stands beside it; only for what every model of this kind assumes.
    `such` is an example to show where nothing was typed yet, from the usual ranges or invented, `span` what is usual. A `slope` may be typed as 1:100.
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

    def read(self, given, key: str, region: str = "UK") -> float:
        """SI value of what stands in the file: a text with a unit, or a bare number where the quantity has none."""
        if isinstance(given, bool) or not isinstance(given, str | int | float):
            raise InputError(f"{key} = {given!r} is not a quantity: {self._write(key, region)}")
        if isinstance(given, int | float) and units.unit(self.unit).dimension != NUMBER:
            raise InputError(f'{key} = {given} has no unit: write {key} = "{units.number(float(given))} {self.here(region)}"')
        given = slope(str(given)) if self.slope else given
        value = units.read(str(given), self.here(region), key, f"{key} = {self.suggested(region)}")
        self._check(value, given, key, region)
        return value

    def _check(self, value: float, given, key: str, region: str) -> None:
        """Raises InputError for a value that the quantity cannot have."""
        if value < 0 and not self.signed:
            raise InputError(f"{key} = {given} is negative, but the {spoken(self.name, region)} cannot be below zero: {self._write(key, region)}")
        if self.whole and not (value == int(value) and value >= 1):
            raise InputError(f"{key} = {given} is not a whole number of one or more: write {key} = 2")
        for limit, word in ((self.most, "over"), (self.least, "under")):
            if value > limit if word == "over" else limit and value < limit:
                cannot = f"{key} = {given} is {word} {units.write(limit, self.unit, None)}, which the {spoken(self.name, region)} cannot be"
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
class Choice:
    """One of a few words."""

    name: str
    options: tuple[str, ...]
    usual: str = ""
    basis: str = ""
    usual_us: str = ""

    def read(self, given, key: str, region: str = "UK") -> str:
        if given not in self.options:
            raise InputError(f"{key} = {given!r} is none of the words known here: write one of {', '.join(map(repr, self.options))}")
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
            raise InputError(f"{key} = {given!r} is not a date: {wanted}")
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
class Several:
    """A list of quantities in one unit."""

    name: str
    unit: str
    us: str
    such: str
    such_us: str
    signed: bool = False

    def read(self, given, key: str, region: str = "UK") -> tuple[float, ...]:
        if not isinstance(given, list) or not given:
            listed = ", ".join(f'"{item}"' for item in self._suggested(region).split(", "))
            raise InputError(f"{key} is a list of lengths: write {key} = [{listed}]")
        one, one_us = self.such.partition(",")[0], self.such_us.partition(",")[0]
        return tuple(Field(self.name, self.unit, self.us, signed=self.signed, such=one, such_us=one_us).read(item, key, region) for item in given)

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
        corners = tuple(tuple(side.read(one, key, region) for one in pair) for pair in given)
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
        return tuple((_FLOW.read(flow, key, region), _HEAD.read(head, key, region)) for flow, head in given)

    def _pairs(self, region: str) -> tuple[tuple[str, str], ...]:
        return (("0 US gal/min", "10 ft"), ("16 US gal/min", "0 ft")) if region == "US" else (("0 L/min", "3 m"), ("60 L/min", "0 m"))

    def hint(self, region: str = "UK") -> str:
        return "such as " + "; ".join(" at ".join(pair) for pair in self._pairs(region))

    def write(self, value: tuple[tuple[float, float], ...], region: str = "UK") -> str:
        return "; ".join(f"{units.write(flow, 'L/min', None)} at {units.write(head, 'm', None)}" for flow, head in value)


ABOVE, LEAST = "above 0", 1e-9  # a limit that must be passed, however little, and what stands for it in SI


@dataclass(frozen=True)
class Bounds:
    """Limits of a check that a design sets for itself, in the check's unit: where it passes, and where it is marginal."""

    check: str
    unit: str

    @property
    def name(self) -> str:
        from brimwork.design.checks import numbered

        title = numbered(self.check).title
        return f"limits of: {title[:1].lower()}{title[1:]}"

    def read(self, given, key: str, region: str = "UK") -> tuple[tuple[float, float], ...]:
        spans = [self._span(part.strip(), key, region) for part in given.split(";")] if isinstance(given, str) else []
        if len(spans) != 2:
            raise InputError(f"{key} is two spans, where the check passes and where it is marginal: write {self._like(key, region)}")
        good, fair = spans
        if not (good[0] <= good[1] and fair[0] <= good[0] and good[1] <= fair[1]):
            raise InputError(f"{key}: a span runs upwards, and the marginal one holds the passing one: write {self._like(key, region)}")
        return good, fair

    def usually(self, region: str = "UK") -> str:
        """The limits that count until the design says something else, as they are typed; empty where they hang on the design."""
        from brimwork.design.checks import numbered

        return numbered(self.check).usually(region)

    def hint(self, region: str = "UK") -> str:
        """The usual limits, first where the check passes, then where it is marginal; an example where they hang on the design."""
        counts = self.usually(region)
        return f"usual: {counts}" if counts else f"such as {self._typed(region)}"

    def _typed(self, region: str) -> str:
        from brimwork.design.checks import US_UNITS

        unit = US_UNITS.get(self.unit, self.unit) if region == "US" else self.unit
        return f"from 2 {unit}; from 1 {unit}" if unit else "1.1 to 1.6; 1 to 2.5"

    def _like(self, key: str, region: str) -> str:
        return f'{key} = "{self.usually(region) or self._typed(region)}"'

    def _span(self, text: str, key: str, region: str) -> tuple[float, float]:
        word, _, rest = text.partition(" ")
        if text == ABOVE:
            return LEAST, float("inf")
        if word == "from":
            return units.read(rest, self.unit, key), float("inf")
        if word == "up" and rest.startswith("to "):
            return float("-inf"), units.read(rest[3:], self.unit, key)
        low, to, high = text.partition(" to ")
        if not to:
            raise InputError(f'{key}: "{text}" is not a span: write {self._like(key, region)}')
        unit = units.parse(high).unit
        return units.read(low if units.parse(low).unit else f"{low} {unit}", self.unit, key), units.read(high, self.unit, key)

    def write(self, value, region: str = "UK") -> str:
        return "; ".join(f"{low:g} to {high:g}" for low, high in value)


# Checks of a number whose limits a design may set for itself, with their units. Those on which somebody's safety rests are not among them.
LIMITED = {
    **dict.fromkeys(("C01", "C01m", "C02", "C03", "C05", "C07", "C14", "C17", "C22", "C27", "C33", "C34", "C40", "C56", "C61", "C64", "C66"), ""),
    **dict.fromkeys(("C06", "C13", "C18", "C18g", "C21", "C38", "C39", "C49", "C57", "C60", "C73"), "mm"),
    **{"C04": "m/s", "C10": "m/s", "C08": "L/s per m", "C12": "day", "C16": "min", "C19": "%/day", "C37": "m", "C42": "%", "C46": "%", "C47": "m", "C72": "mm/day"},
    "C09": "",
}  # fmt: skip
YES_NO = ("yes", "no")
_HINDERS = ("firm soil, battered or braced, spoil kept back", "competent person on site, nobody kneels in it", "wet or running soil, or nobody competent")
LAWS = ("Colebrook", "Swamee-Jain", "Haaland", "Blasius", "Hazen-Williams", "ribbed hose")


def _length(name: str, such: str, such_us: str, signed: bool = False) -> Field:
    return Field(name, "mm", "in", signed, such=such, such_us=such_us)


def _share(name: str, such: str, span: str = "") -> Field:
    return Field(name, "", most=1.0, such=such, span=span)


def _assumed(name: str, usual: str, basis: str, us: str = "", most: float = float("inf")) -> Field:
    """What the model assumes until the design says something else."""
    return Field(name, usual.partition(" ")[2], us, most=most, usual=usual, basis=basis)


def _sold(name: str, usual: str, usual_us: str, basis: str = CP) -> Field:
    """A size in which something is sold, here and in the US."""
    return Field(name, usual.partition(" ")[2], usual_us.partition(" ")[2], usual=usual, basis=basis, usual_us=usual_us)


LOOSE = ("bag", "bulk bag", "tonne", "short ton", "cubic yard")


def _loose(name: str) -> Choice:
    return Choice(name, LOOSE, "bulk bag", CP, "cubic yard")


def _time(step: Step) -> Field:
    """How long a step of the work takes."""
    return Field(f"time: {step.words}", step.usual.partition(" ")[2], most=_A_YEAR, usual=step.usual, basis=CP if step.by == WAIT else J)


def _lead(lead: Lead) -> Field:
    return Field(f"working days from order to site: {lead.words}", "day", most=_A_YEAR, usual=lead.usual, basis=lead.basis, usual_us=lead.usual_us)


def _price(row: Priced) -> Field:
    """A price for one as it is sold, or for a metre or a foot."""
    per = ("cur/m", "cur/ft", "3 cur/m", "1 cur/ft") if row.by_length else ("cur", "", "40 cur", "")
    return Field(f"price of {row.name}", per[0], per[1], such=per[2], such_us=per[3])


_A_YEAR = 365 * 86400.0


SECTIONS: dict[str, dict[str, Field | Choice | Date | Several | Corners | Curve | Bounds]] = {
    "site": {
        "use": Choice("who comes near the water", ("private", "public", "school", "care premises")),
        "soil_bearing": Field("bearing pressure presumed for the soil", "kPa", "psf", such="75 kPa", such_us="1500 psf"),
        "open_water": _length("depth of open water that a child can reach", "0 mm", "0 in"),
        "legionella": Choice("Legionella assessment", ("low splash, private", "commissioned", "in place", "none")),
        "unattended": Field("longest time that nobody looks after the feature", "day", such="14 day"),
        "footing_distance": Field("distance from pit to the nearest footing", "m", "ft", such="1.5 m", such_us="5 ft"),
        "footing_depth": Field("depth of the nearest footing", "m", "ft", such="0.6 m", such_us="2 ft"),
        "tree_distance": Field("distance from pit to the nearest tree", "m", "ft", such="4 m", such_us="13 ft"),
        "tree_stem": _length("diameter of the stem of the nearest tree, 1.5 m up", "200 mm", "8 in"),
        "pit_sides": Choice("sides of the pit while people work", _HINDERS),
        "ground_water": _length("highest ground water above the reservoir floor", "0 mm", "0 in"),
        "frost_depth": _length("depth of the frost line under the finished paving", "450 mm", "18 in"),
        "north": Field("direction of north on the plan, clockwise from the top of the sheet", "deg", most=math.tau, such="30 deg"),
        "gate": Field("narrowest way in", "mm", "in", such="900 mm", such_us="36 in"),
        "widest_item": Field("widest thing that must come in", "mm", "in", such="800 mm", such_us="32 in"),
        "sound_at_1m": Field("sound level 1 m from the feature, in decibels", "", such="55"),
        "neighbour": Field("distance to the nearest bedroom or neighbour", "m", "ft", such="8 m", such_us="26 ft"),
        "background": Field("background sound level at the nearest bedroom or neighbour, in decibels", "", such="35"),
        "wind_speed": Field("design wind speed, gusts in it", "m/s", "ft/s", such="22 m/s", such_us="72 ft/s"),
        "force_coefficient": Field("force coefficient of the tall piece", "", such="1.2"),
        "lift_mass": Field("heaviest thing that one person lifts", "kg", "lb", such="20 kg", such_us="44 lb"),
        "lift_reach": _length("distance of the hands from the ankles while lifting", "300 mm", "12 in"),
        "lift_height": _length("height of the hands at the start of the lift", "700 mm", "28 in"),
        "lift_travel": _length("distance that the hands travel", "500 mm", "20 in"),
        "wheel_load": Field("heaviest wheel that may come onto the stone over the blocks, as a force", "kN", "lbf", such="1 kN", such_us="225 lbf"),
        "wheel_side": _length("side of the square on which the heaviest wheel stands", "150 mm", "6 in"),
        "sling_mass": Field("mass on the slings", "kg", "lb", such="120 kg", such_us="265 lb"),
        "sling_legs": Field("legs of the sling", "", whole=True, most=4, such="2"),
        "sling_angle": Field("angle of a leg of the sling from the horizontal", "deg", such="60 deg"),
        "sling_rating": Field("rating of one leg of the sling", "kN", "lbf", such="10 kN", such_us="2250 lbf"),
        "budget": Field("money that there is", "cur", such="3000 cur"),
        "cost": Field("cost worked out, without contingency", "cur", such="2500 cur"),
    },
    "vessel": {
        "rim_diameter": _length("diameter of the rim", "780 mm", "31 in"),
        "height": _length("height of the vessel", "420 mm", "16 1/2 in"),
        "mass": Field("mass of the empty vessel", "kg", "lb", such="90 kg", such_us="200 lb"),
        "water": Field("water in the vessel", "L", "US gal", such="60 L", such_us="16 US gal"),
        "foot_outside": _length("outside diameter of the foot", "400 mm", "16 in"),
        "foot_inside": _length("inside diameter of the foot (0 for a full foot)", "200 mm", "8 in"),
        "foot_corners": Corners("corners of the patch under the foot, drawn full size"),
        "side_area": Field("wetted outside of the vessel", "m2", "ft2", such="1.2 m2", such_us="13 ft2"),
        "rim_error": _length("difference in level round the rim", "1 mm", "1/32 in"),
        "offset": _length("distance of the vessel from the blocks' middle", "0 mm", "0 in"),
        "foam": Field("foam in the vessel", "L", "US gal", such="20 L", such_us="5 US gal"),
        "foam_density": Field("density of the foam", "kg/m3", "lb/ft3", such="20 kg/m3", such_us="1.25 lb/ft3"),
        "pebbles": Field("pebbles that lie on the foam, with their gaps", "L", "US gal", such="25 L", such_us="7 US gal"),
        "stands_on": Choice("what the vessel stands on", ("slab", "blocks")),
        "coat": Choice("whether the vessel is coated inside: no for a glazed one that holds water", YES_NO),
        "wall": _length("thickness of the vessel's wall at the bottom, as the drill hole shows it", "25 mm", "1 in"),
        "tensile_strength": Field("tensile strength of the vessel's material, from its maker", "MPa", "psi", such="2.5 MPa", such_us="350 psi"),
        "widest": _length("diameter of the vessel where it is widest, if wider than the rim", "900 mm", "36 in"),
    },
    "stones": {
        "diameters": Several("diameters of the drilled stones", "mm", "in", "350 mm, 300 mm", "14 in, 12 in"),
        "heights": Several("heights of the drilled stones", "mm", "in", "750 mm, 600 mm", "30 in, 24 in"),
        "branch_lengths": Several("lengths of the hose to each drilled stone", "m", "ft", "2 m, 2.5 m", "6 ft, 8 ft"),
        "branch_bore": _length("true inside diameter of the hose to each drilled stone", "13 mm", "1/2 in"),
        "branch_fittings": Field("sum of the loss coefficients of each branch, valve open", "", such="3", span="2 to 8"),
        "valves": Choice("a valve on every branch", YES_NO),
        "hole": _length("bore of the hole in each drilled stone", "30 mm", "1 1/4 in"),
        "density": Field("density of the drilled stones", "kg/m3", "lb/ft3", such="2650 kg/m3", such_us="165 lb/ft3"),
        "rough_contact": Field("area on which a rough base really stands", "cm2", "in2", such="30 cm2", such_us="5 in2"),
        "base_share": _share("share of the base's width that resists tipping", "0.8"),
        "stand_on": Choice("what the drilled stones stand on", ("slabs", "blocks")),
    },
    "blade": {
        "lip_width": _length("width of the lip", "600 mm", "24 in"),
        "lip_level": _length("level of the lip, to the finished paving", "450 mm", "18 in", signed=True),
        "stone_level": _length("level of the stone on which the sheet lands, to the finished paving", "0 mm", "0 in", signed=True),
        "trough_length": _length("length of the trough behind the lip", "700 mm", "28 in"),
        "trough_width": _length("width of the trough", "150 mm", "6 in"),
        "trough_depth": _length("depth of the trough", "150 mm", "6 in"),
        "feed": Choice("where the trough is fed", ("bottom", "top")),
        "wall_height": _length("height of the wall", "500 mm", "20 in"),
        "wall_retains": Choice("what the wall holds back", ("nothing", "soil", "water")),
    },
    "cascade": {
        "steps": Field("number of steps", "", whole=True, most=50, such="3"),
        "width": _length("width of a step", "500 mm", "20 in"),
        "step_fall": _length("fall of a step, lip to water", "150 mm", "6 in"),
        "tread": _length("tread of a step, from its face to the next lip", "450 mm", "18 in"),
        "top_level": _length("level of the header's lip, to the finished paving", "600 mm", "24 in", signed=True),
        "header_area": Field("water surface of the header", "m2", "ft2", such="0.2 m2", such_us="2 ft2"),
        "header_volume": Field("water in the header below its lip", "L", "US gal", such="25 L", such_us="7 US gal"),
        "pool_area": Field("water surface of one pool", "m2", "ft2", such="0.3 m2", such_us="3 ft2"),
        "feed": Choice("where the header is fed", ("bottom", "top")),
        "edge": _length("edge beside the steps that catches splash", "150 mm", "6 in"),
        "rill_length": Field("length of the rill", "m", "ft", such="2 m", such_us="6 ft"),
        "rill_width": _length("width of the rill", "250 mm", "10 in"),
        "rill_slope": Field("fall of the rill over its length", "", slope=True, such="1:100"),
        "rill_wall": _length("height of the rill's side", "80 mm", "3 in"),
        "rill_roughness": Field("Manning coefficient of the rill", "", such="0.013", span="0.01 to 0.03"),
    },
    "overflow_pipe": {
        "bore": _length("bore of the overflow pipe", "40 mm", "1 1/2 in"),
        "head": _length("water over the middle of the overflow pipe before it spills elsewhere", "50 mm", "2 in"),
        "rain": Field("heaviest rain", "mm/h", "in/h", such="75 mm/h", such_us="3 in/h"),
        "catch_area": Field("area that drains into the reservoir", "m2", "ft2", such="3 m2", such_us="30 ft2"),
        "feed": Field("flow of a top-up valve that sticks open", "L/min", "US gal/min", such="10 L/min", such_us="3 US gal/min"),
    },
    "slab": {
        "length": _length("length of the slab", "600 mm", "24 in"),
        "width": _length("width of the slab", "600 mm", "24 in"),
        "thickness": _length("thickness of the slab", "50 mm", "2 in"),
        "density": Field("density of the slab", "kg/m3", "lb/ft3", such="2300 kg/m3", such_us="144 lb/ft3"),
    },
    "flow": {
        "for_each_metre": Field("flow wanted for each metre of the edge that it runs over", "L/s per m", "US gal/min per ft", such="0.2 L/s per m", such_us="1 US gal/min per ft", span="a film; a sheet takes 10 to 25 times"),
        "weir_coefficient": Field("weir coefficient of the rim, or of the lip in place of that of a broad crest", "m^0.5/s", "ft^0.5/s", such="1.7 m^0.5/s", such_us="3.1 ft^0.5/s"),
        "water_temperature": Field("temperature of the water", "degC", "degF", signed=True, usual="20 degC", basis=J),
    },
    "reservoir": {
        "block_length": _length("length of one block", "600 mm", "24 in"),
        "block_width": _length("width of one block", "400 mm", "16 in"),
        "block_height": _length("height of one block", "420 mm", "16 1/2 in"),
        "blocks_along": Field("blocks along the pit", "", whole=True, most=50, such="2"),
        "blocks_across": Field("blocks across the pit", "", whole=True, most=50, such="2"),
        "block_mass": Field("mass of one block", "kg", "lb", such="7 kg", such_us="15 lb"),
        "void_fraction": _share("void fraction of the blocks", "0.95", span="0.9 to 0.97"),
        "short_term_strength": Field("short-term strength of the block", "kPa", "psi", such="110 kPa", such_us="16 psi"),
        "creep_factor": _share("creep factor of the blocks", "0.4", span="0.3 to 0.6"),
        "safety_factor": Field("safety factor on the block", "", such="1.5"),
        "cover": _length("thickness of a stiff slab or grid all over the blocks, under the stone (0 for none)", "0 mm", "0 in"),
        "lowest_level": _length("lowest level at which the pump may run, above the floor", "150 mm", "6 in"),
        "running_level": _length("highest level while running, above the floor", "365 mm", "14 1/2 in"),
        "cut_out_level": _length("level at which the low-water cut-out stops the pump, above the floor", "160 mm", "6 1/4 in"),
        "top_up_level": _length("level at which the top-up valve closes, above the floor", "360 mm", "14 1/4 in"),
        "static_level": _length("level with the pump off, above the floor", "380 mm", "15 in"),
        "overflow_level": _length("overflow level, above the floor", "410 mm", "16 1/4 in"),
    },
    "pump": {
        "shut_off_head": Field("shut-off head of the pump", "m", "ft", such="3 m", such_us="10 ft"),
        "free_flow": Field("flow of the pump at no head", "L/min", "US gal/min", such="60 L/min", such_us="16 US gal/min"),
        "curve": Curve("points of the pump's curve, from its maker"),
        "power": Field("power that the pump takes in", "W", such="45 W"),
        "covered": _length("water over the pump at the lowest level", "60 mm", "2 1/2 in"),
        "cut_out": Choice("a low-water cut-out that stops the pump", YES_NO),
        "intake_level": _length("intake of the pump, above the floor", "60 mm", "2 1/2 in"),
        "intake_area": Field("open area of the intake cage", "cm2", "in2", such="150 cm2", such_us="24 in2"),
        "bay": Field("side of the square bay in the blocks for the pump", "mm", "in", usual="200 mm", basis=J, usual_us="8 in"),
    },
    "pipe": {
        "bore": _length("true inside diameter of the hose", "25 mm", "1 in"),
        "length": Field("length of the hose", "m", "ft", such="3 m", such_us="10 ft"),
        "fittings": Field("sum of the loss coefficients of the fittings", "", such="4", span="2 to 8"),
        "friction_law": Choice("friction law of the hose", LAWS),
        "roughness": _length("roughness of the inside of the hose", "0.0015 mm", "0.00006 in"),
        "hazen_williams": Field("Hazen-Williams coefficient of the hose", "", such="150", span="100 to 150"),
        "mouth_below_rim": _length("how far the hose mouth lies below the rim", "15 mm", "5/8 in"),
        "check_valve": Choice("check valve in the hose", YES_NO),
    },
    "levels": {
        "block_top": _length("top of the blocks, to the finished paving", "-60 mm", "-2 1/2 in", signed=True),
        "soil": _length("surface of the soil beside the liner, to the finished paving", "-30 mm", "-1 1/4 in", signed=True),
        "liner_edge": _length("edge of the liner, to the finished paving", "0 mm", "0 in", signed=True),
        "staple_line": _length("lowest staple or cut in the liner, to the finished paving", "-40 mm", "-1 1/2 in", signed=True),
    },
    "ground": {
        "lining": _length("thickness of lining and fleece together", "10 mm", "3/8 in"),
        "sand": _length("thickness of the sand bed", "30 mm", "1 1/4 in"),
        "sub_base": _length("thickness of the sub-base", "100 mm", "4 in"),
        "clearance": _length("clearance between lining and block, each side", "15 mm", "5/8 in"),
        "box_upstand": _length("how far the box stands above the blocks", "20 mm", "3/4 in"),
        "board": _length("thickness of the box", "18 mm", "3/4 in"),
        "working_space": _length("working space round the box", "150 mm", "6 in"),
        "bulking": Field("loose volume over volume in the ground", "", such="1.25", span="1.1 to 1.4"),
    },
    "catch": {
        "apron": _length("width of the apron beyond the box", "600 mm", "24 in"),
        "splash_factor": Field("apron wanted for each metre of fall", "", such="0.5"),
        "stone_thickness": _length("thickness of the stone layer", "50 mm", "2 in"),
        "stone_density": Field("bulk density of the loose stone of the layer", "kg/m3", "lb/ft3", such="1600 kg/m3", such_us="100 lb/ft3"),
        "stone_waste": _share("allowance for waste of stone", "0.1"),
        "wet_area": Field("area of the stone layer that stays wet", "m2", "ft2", such="1 m2", such_us="10 ft2"),
        "hold_up": _share("share of the wet stone that is water in transit", "0.03", span="0.02 to 0.05"),
    },
    "lining": {
        "margin": _length("margin of the liner beyond the apron", "100 mm", "4 in"),
        "rolls": Several("widths of liner that are sold", "m", "ft", "2 m, 4 m", "6 ft, 13 ft"),
        "mesh": _length("opening of the mesh under the stone", "10 mm", "3/8 in"),
        "smallest_stone": _length("size of the smallest stone of the layer", "20 mm", "3/4 in"),
        "panel_clearance": _length("clear distance from the cut panel to the load", "100 mm", "4 in"),
    },
    "climate": {
        "evaporation": Field("reference evapotranspiration in the driest month", "mm/day", "in/day", such="5 mm/day", such_us="0.2 in/day"),
        "coefficient": Field("coefficient of open water for its evaporation", "", such="1.05", span="1.0 to 1.1"),
        "splash": Field("water lost by splash", "L/day", "US gal/day", such="3 L/day", such_us="0.8 US gal/day"),
    },
    "supply": {
        "voltage": Field("voltage", "V", such="230 V", such_us="120 V"),
        "power_factor": _share("power factor of the pump", "0.9", span="0.5 to 1"),
        "cable_length": Field("length of the cable", "m", "ft", such="12 m", such_us="40 ft"),
        "drop": Field("voltage drop of the cable", "mV/A/m", such="29 mV/A/m"),
        "resistance": Field("resistance of one conductor, warm", "ohm/km", "ohm/kft", such="12 ohm/km", such_us="3 ohm/kft"),
        "hours_per_day": Field("hours that the pump runs each day", "h", such="10 h"),
        "tariff": Field("price of electricity (cur is your currency)", "cur/kWh", such="0.3 cur/kWh"),
        "cord": Field("length of the pump's cord", "m", "ft", such="10 m", such_us="33 ft"),
        "cord_route": Field("length of the route of the pump's cord", "m", "ft", such="6 m", such_us="20 ft"),
        "point_along": Field("supply point from the middle of the blocks, along them: to the right on the plan, below zero to the left", "m", "ft", signed=True, such="3 m", such_us="10 ft"),
        "point_across": Field("supply point from the middle of the blocks, across them: up on the plan, below zero down", "m", "ft", signed=True, such="-2 m", such_us="-6 ft"),
        "duct_bore": _length("bore of the duct for the cable", "50 mm", "2 in"),
        "duct_cover": _length("cover over the duct, as the electrician states it", "600 mm", "24 in"),
        "circuit_load": Field("current of everything on the circuit", "A", such="4 A"),
        "breaker": Field("rating of the breaker", "A", such="16 A", such_us="15 A"),
        "leakage": Field("earth leakage of everything on the residual-current device, pump running", "mA", such="3 mA", such_us="1 mA"),
        "residual_rating": Field("rated residual current of the residual-current device", "mA", such="30 mA", such_us="5 mA"),
        "residual_current": Choice("residual-current protection", ("tested by instrument", "tested by button", "none")),
    },
    "measured": {
        "flow": Field("flow measured with a bucket at the outlet", "L/min", "US gal/min", such="25 L/min", such_us="7 US gal/min"),
        "start_drop": _length("drop of the level when the pump starts", "12 mm", "1/2 in"),
        "leak": Field("fall of the level in a day with the pump off, less that of a control bucket", "mm/day", "in/day", signed=True, such="1 mm/day", such_us="0.04 in/day"),
        "current": Field("current of the running pump", "A", such="0.2 A", such_us="0.4 A"),
        "rim_levels": Several("levels of the rim at points round it", "mm", "in", "0 mm, 1 mm, -1 mm", "0 in, 1/16 in, -1/16 in", signed=True),
    },
    "assumptions": {
        "wind_factor": _assumed("times that wind widens the splash (1.5 on a windy site)", "1", CP),
        "overflow_discharge": _assumed("discharge coefficient of the overflow pipe", "0.6", CP, most=1.0),
        "run_off": _assumed("share of the rain on the catch that reaches the reservoir", "1", J, most=1.0),
        "air_density": _assumed("density of the air", "1.25 kg/m3", CP, "lb/ft3"),
        "exposure": _assumed("exposure factor of the wind", "1", J),
        "grip": _assumed("coupling multiplier of the lift: 1 for handles, 0.95 fair, 0.9 poor", "0.95", "read", most=1.0),
        "drip_loop": _assumed("drip loop of the cord", "0.3 m", CP, "ft"),
        "lift_out": _assumed("slack of the cord to lift the pump out", "1 m", CP, "ft"),
        "pebble_gaps": _assumed("share of pebbles that is gaps", "0.4", CP, most=1.0),
        "pebble_density": _assumed("density of the pebbles' stone", "2650 kg/m3", CP, "lb/ft3"),
        "person": _assumed("force of a person on one foot, for seconds", "0.8 kN", J, "lbf"),
        "foot": _assumed("side of the square on which a person's foot stands", "100 mm", J, "in"),
        "footing_slope": _assumed("distance to keep from a footing for each metre that the pit is deeper: 1 in firm ground, 1.5 in loose", "1.5", CP),
    },
    "buying": {
        "stone_sold": _loose("how the rounded stone is bought"),
        "sand_sold": Choice("how the sand is bought", LOOSE, "bag", CP),
        "sub_base_sold": _loose("how the aggregate for sub-base and backfill is bought"),
        "bag": _sold("what one bag holds", "25 kg", "50 lb"),
        "bulk_bag": _sold("what one bulk bag holds", "800 kg", "1760 lb"),
        "loose_step": _assumed("loose material is sold in this share of a tonne, a ton or a cubic yard", "0.5", CP, most=10.0),
        "sand_density": _assumed("bulk density of loose sand", "1600 kg/m3", CP, "lb/ft3"),
        "sub_base_density": _assumed("bulk density of loose aggregate", "1700 kg/m3", CP, "lb/ft3"),
        "sand_packing": _assumed("loose volume of sand over its volume in place: 1.15 to 1.25", "1.2", CP, most=3.0),
        "sub_base_packing": _assumed("loose volume of aggregate over its volume in place: 1.15 to 1.35", "1.25", CP, most=3.0),
        "slab_bed": _sold("bed of sand under each slab", "20 mm", "0.75 in", J),
        "sheet_length": _sold("length of a sheet of board", "2.44 m", "8 ft"),
        "sheet_width": _sold("width of a sheet of board", "1.22 m", "4 ft"),
        "saw": _sold("width of a saw cut", "4 mm", "0.125 in"),
        "strut_spacing": _sold("distance between struts inside the box", "600 mm", "24 in", J),
        "batten": _sold("length of timber that is sold", "2.4 m", "8 ft"),
        "screw_spacing": _sold("distance between screws at the corners of the box", "150 mm", "6 in", J),
        "screw_box": _assumed("screws in a box", "100", CP),
        "cut_step": _sold("what is cut off a roll or coil is a multiple of", "0.5 m", "1 ft"),
        "liner_slack": _assumed("slack of the liner", "0.02", CP, most=1.0),
        "liner_lap": _sold("lap of liner over liner, and into each end of a rill", "150 mm", "6 in"),
        "fleece_roll": _sold("width of a roll of fleece", "2 m", "6 ft"),
        "fleece_lap": _sold("lap of a strip of fleece over the next", "100 mm", "4 in"),
        "fleece_waste": _assumed("slack and trimming in the length of each strip of fleece; laps are counted beside it", "0.05", J, most=1.0),
        "fabric_roll": _sold("width of a roll of separation fabric", "2 m", "6 ft"),
        "fabric_lap": _sold("lap of a strip of separation fabric over the next", "300 mm", "12 in"),
        "fabric_waste": _assumed("slack and trimming in the length of each strip of separation fabric; laps are counted beside it", "0.05", J, most=1.0),
        "mesh_roll": _sold("width of a roll of mesh", "1 m", "4 ft"),
        "mesh_lap": _sold("how far the mesh reaches beyond the box", "100 mm", "4 in", J),
        "mesh_strip_lap": _sold("lap of a strip of mesh over the next", "100 mm", "4 in", J),
        "mesh_waste": _assumed("trimming in the length of each strip of mesh; laps are counted beside it", "0.05", J, most=1.0),
        "tape_roll": _sold("length of a roll of tape", "50 m", "150 ft"),
        "hose_waste": _assumed("waste of hose", "0.1", CP, most=1.0),
        "hose_extra": _sold("hose for the ends of each piece", "0.5 m", "20 in"),
        "pipe_waste": _assumed("waste of duct and pipe", "0.1", CP, most=1.0),
        "pipe_stick": _sold("length of pipe that is sold", "3 m", "10 ft"),
        "overflow_run": Field("length of the overflow pipe, to where it drains", "m", "ft", such="4 m", such_us="13 ft"),
        "spare_washers": _assumed("spare washers", "1", CP, most=100.0),
        "foam_board": _sold("volume of one board of foam", "72 L", "2.5 ft3"),
        "foam_waste": _assumed("waste of foam", "0.1", J, most=1.0),
        "sealant_reach": _sold("joint that one cartridge of sealant fills", "6 m", "20 ft", J),
        "load": _sold("loose soil that one load takes away", "3 m3", "4 yd3"),
    },
    "prices": {key: _price(row) for key, row in PRICES.items()},
    "costing": {
        "hours": Field("hours of work on site, all people together, in place of those of the programme", "h", such="60 h"),
        "rate": Field("rate of pay for an hour of one person (0 for your own work)", "cur/h", such="30 cur/h"),
        "overhead": _share("overhead as a share of the direct cost", "0.1"),
        "contingency": _assumed("contingency as a share of the cost: 10 to 15 % for work in the ground", "0.12", CP, most=1.0),
        "margin": _share("margin: profit as a share of the price", "0.15"),
        "tax": _share("tax on the price", "0.2"),
        "water": Field("price of water", "cur/m3", "cur/US gal", such="3 cur/m3", such_us="0.01 cur/US gal"),
        "service": Field("service in a year: cleaning and small parts", "cur", such="80 cur"),
        "years": _assumed("years over which the whole cost is counted", "10", J, most=100.0),
    },
    "programme": {
        "start": Date("first day on site"),
        "people": Field("people who work on site", "", whole=True, most=50, usual=f"{USUAL_TEAM}", basis=CP),
        "day": Field("hours of a working day", "h", most=16 * 3600.0, least=3600.0, usual="8 h", basis=CP),
        "soil": Choice("soil that is dug", tuple(HAND_DIGGING)),
        "barrowing": _assumed("loading and barrowing what is dug, for each volume in the ground", "2 h/m3", CP, "h/yd3"),
        **{key: _time(step) for key, step in STEPS.items()},
        **{f"order_{key}": _lead(lead) for key, lead in LEADS.items()},
    },
    "limits": {check: Bounds(check, unit) for check, unit in LIMITED.items()},
    "answers": {question.key: Choice((question.asks or question.title).lower(), question.options) for question in QUESTIONS},
}  # fmt: skip
_REST = (
    "flow",
    "reservoir",
    "pump",
    "pipe",
    "levels",
    "ground",
    "catch",
    "overflow_pipe",
    "lining",
    "climate",
    "supply",
    "buying",
    "prices",
    "costing",
    "programme",
    "assumptions",
    "measured",
    "answers",
    "limits",
)
# kind of feature: the sections that a design of that kind has, in the order in which they are shown
KINDS: dict[str, tuple[str, ...]] = {
    "overflowing vessel": ("site", "vessel", "slab", *_REST),
    "drilled stones": ("site", "stones", "slab", *_REST),
    "blade": ("site", "blade", *_REST),
    "cascade": ("site", "cascade", *_REST),
}

_VESSEL, _STONES, _SHEETS = ("overflowing vessel",), ("drilled stones",), ("blade", "cascade")
# Values of the sections that all kinds share, which play a part in some of them only.
_ONLY: dict[str, tuple[str, ...]] = {
    "flow.weir_coefficient": (*_VESSEL, *_SHEETS),
    "buying.sealant_reach": _SHEETS,
    "buying.liner_lap": ("cascade",),
    **dict.fromkeys(("pipe.mouth_below_rim", "measured.rim_levels", "buying.foam_board", "buying.foam_waste"), _VESSEL),
    **dict.fromkeys(("assumptions.pebble_gaps", "assumptions.pebble_density"), _VESSEL),
    **dict.fromkeys(("site.wind_speed", "site.force_coefficient", "assumptions.air_density", "assumptions.exposure"), _STONES),
    **dict.fromkeys(("reservoir.creep_factor", "buying.slab_bed"), (*_VESSEL, *_STONES)),
}


def sections(kind: str) -> dict[str, dict[str, Field | Choice | Date | Several | Corners | Curve | Bounds]]:
    """The sections of a design of that kind, in the order in which they are shown."""
    return {name: {key: field for key, field in SECTIONS[name].items() if _plays(f"{name}.{key}", kind)} for name in KINDS[kind]}


@cache
def _plays(key: str, kind: str) -> bool:
    """Whether a value plays any part in a design of that kind."""
    from brimwork.design.checks import kinds_of

    section, _, name = key.partition(".")
    asked = {question.key: question.kinds for question in QUESTIONS}
    kinds = {
        "answers": lambda: asked[name],
        "limits": lambda: kinds_of(name),
        "programme": lambda: STEPS[name].kinds if name in STEPS else (),
    }.get(section, lambda: _ONLY.get(key, ()))()
    return not kinds or kind in kinds


def usual(field, region: str) -> str:
    """What counts in a region until the design says something else; empty for what stays unknown."""
    here = getattr(field, "usual", "")
    return (region == "US" and getattr(field, "usual_us", "")) or here


REGIONS = ("UK", "US")
HEAD = ("format", "kind", "title", "region", "note")
