"""What a design file may say: every section and key, with its unit, its meaning and how it is read."""

from __future__ import annotations

import datetime
import math
import re
from dataclasses import dataclass

from brimwork import units
from brimwork.design import patches
from brimwork.design.prices import PRICES
from brimwork.design.questions import QUESTIONS
from brimwork.design.steps import LEADS, STEPS, USUAL_TEAM, WAIT, Lead, Step
from brimwork.tables import HAND_DIGGING
from brimwork.units import NUMBER, InputError

CP, J = "common practice", "judgement"
BASES = ("yours", "read", "memory", "common practice", "judgement", "measured")


@dataclass(frozen=True)
class Field:
    """A measured quantity: `unit` is how it is shown, `name` what it is, `us` the US unit. Below zero only where `signed`.

    `usual` is what counts until the design says something else, on the `basis` that stands beside it; only for what every model of this kind assumes.
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

    def read(self, given, key: str) -> float:
        """SI value of what stands in the file: a text with a unit, or a bare number where the quantity has none."""
        if isinstance(given, bool) or not isinstance(given, str | int | float):
            raise InputError(f"{key} = {given!r} is not a quantity: write {key} = {self.example}")
        if isinstance(given, int | float) and units.unit(self.unit).dimension != NUMBER:
            raise InputError(f'{key} = {given} has no unit: write {key} = "{units.number(float(given))} {self.unit}"')
        value = units.read(str(given), self.unit, key)
        if value < 0 and not self.signed:
            raise InputError(f"{key} = {given} is negative, but the {self.name} cannot be below zero: write {key} = {self.example}")
        if self.whole and not (value == int(value) and value >= 1):
            raise InputError(f"{key} = {given} is not a whole number of one or more: write {key} = 2")
        if value > self.most:
            raise InputError(
                f"{key} = {given} is over {units.write(self.most, self.unit, None)}, which the {self.name} cannot be: write {key} = {self.example}"
            )
        if self.least and value < self.least:
            raise InputError(
                f"{key} = {given} is under {units.write(self.least, self.unit, None)}, which the {self.name} cannot be: write {key} = {self.example}"
            )
        return value

    @property
    def example(self) -> str:
        return f'"1 {self.unit}"' if self.unit else "2" if self.whole else "0.5"

    def write(self, value: float, region: str = "UK") -> str:
        return units.write(value, self.us if region == "US" and self.us else self.unit, None)


@dataclass(frozen=True)
class Choice:
    """One of a few words."""

    name: str
    options: tuple[str, ...]
    usual: str = ""
    basis: str = ""
    usual_us: str = ""

    def read(self, given, key: str) -> str:
        if given not in self.options:
            raise InputError(f"{key} = {given!r} is none of the words known here: write one of {', '.join(map(repr, self.options))}")
        return given

    def write(self, value: str, region: str = "UK") -> str:
        return value


@dataclass(frozen=True)
class Date:
    """A day of the calendar."""

    name: str

    def read(self, given, key: str) -> datetime.date:
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

    def write(self, value: datetime.date, region: str = "UK") -> str:
        return value.isoformat()


@dataclass(frozen=True)
class Several:
    """A list of quantities in one unit."""

    name: str
    unit: str
    signed: bool = False

    def read(self, given, key: str) -> tuple[float, ...]:
        if not isinstance(given, list) or not given:
            raise InputError(f'{key} is a list of lengths: write {key} = ["2 m", "4 m"]')
        return tuple(Field(self.name, self.unit, signed=self.signed).read(item, key) for item in given)

    def write(self, value: tuple[float, ...], region: str = "UK") -> str:
        return ", ".join(units.write(item, self.unit, None) for item in value)


@dataclass(frozen=True)
class Corners:
    """The corners of an outline drawn full size, in the order in which one walks round it: pairs of lengths from one point."""

    name: str

    def read(self, given, key: str) -> tuple[tuple[float, float], ...]:
        pairs = isinstance(given, list) and all(isinstance(pair, list) and len(pair) == 2 for pair in given)
        if not pairs or not 3 <= len(given) <= 100:
            raise InputError(f'{key} is a list of three corners or more: write {key} = [["0 mm", "0 mm"], ["300 mm", "0 mm"], ["0 mm", "300 mm"]]')
        corners = tuple(tuple(Field("distance", "mm", signed=True).read(side, key) for side in pair) for pair in given)
        patches.must_not_cross(corners, key)
        if patches.area(corners) == 0:
            raise InputError(f"{key}: the corners lie on one line and enclose nothing: give the corners of the shape")
        return corners

    def write(self, value: tuple[tuple[float, float], ...], region: str = "UK") -> str:
        return "; ".join(f"{units.write(x, 'mm', None)} at {units.write(y, 'mm', None)}" for x, y in value)


@dataclass(frozen=True)
class Curve:
    """A pump curve: pairs of flow and head, from no flow upwards."""

    name: str

    def read(self, given, key: str) -> tuple[tuple[float, float], ...]:
        pairs = isinstance(given, list) and all(isinstance(pair, list) and len(pair) == 2 for pair in given)
        if not pairs or len(given) < 2:
            raise InputError(f'{key} is a list of pairs, flow and head: write {key} = [["0 L/min", "3 m"], ["40 L/min", "0 m"]]')
        return tuple((Field("flow", "L/min").read(flow, key), Field("head", "m").read(head, key)) for flow, head in given)

    def write(self, value: tuple[tuple[float, float], ...], region: str = "UK") -> str:
        return "; ".join(f"{units.write(flow, 'L/min', None)} at {units.write(head, 'm', None)}" for flow, head in value)


@dataclass(frozen=True)
class Bounds:
    """Limits of a check that a design sets for itself, in the check's unit: where it passes, and where it is marginal."""

    name: str
    unit: str

    def read(self, given, key: str) -> tuple[tuple[float, float], ...]:
        spans = [self._span(part.strip(), key) for part in given.split(";")] if isinstance(given, str) else []
        if len(spans) != 2:
            raise InputError(f"{key} is two spans, where the check passes and where it is marginal: write {self._like(key)}")
        good, fair = spans
        if not (good[0] <= good[1] and fair[0] <= good[0] and good[1] <= fair[1]):
            raise InputError(f"{key}: a span runs upwards, and the marginal one holds the passing one: write {self._like(key)}")
        return good, fair

    def _like(self, key: str) -> str:
        return f'{key} = "from 2 {self.unit}; from 1 {self.unit}"' if self.unit else f'{key} = "1.1 to 1.6; 1.0 to 2.5"'

    def _span(self, text: str, key: str) -> tuple[float, float]:
        word, _, rest = text.partition(" ")
        if word == "from":
            return units.read(rest, self.unit, key), float("inf")
        if word == "up" and rest.startswith("to "):
            return float("-inf"), units.read(rest[3:], self.unit, key)
        low, to, high = text.partition(" to ")
        if not to:
            raise InputError(f'{key}: "{text}" is not a span: write {self._like(key)}')
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


def _length(name: str, signed: bool = False) -> Field:
    return Field(name, "mm", "in", signed)


def _share(name: str) -> Field:
    return Field(name, "", most=1.0)


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


_A_YEAR = 365 * 86400.0


SECTIONS: dict[str, dict[str, Field | Choice | Date | Several | Corners | Curve | Bounds]] = {
    "site": {
        "use": Choice("who comes near the water", ("private", "public", "school", "care premises")),
        "soil_bearing": Field("bearing pressure presumed for the soil", "kPa", "psf"),
        "open_water": _length("depth of open water that a child can reach"),
        "legionella": Choice("Legionella assessment", ("low splash, private", "commissioned", "in place", "none")),
        "unattended": Field("longest time that nobody looks after it", "day"),
        "footing_distance": Field("distance from pit to the nearest footing", "m", "ft"),
        "footing_depth": Field("depth of that footing", "m", "ft"),
        "tree_distance": Field("distance from pit to the nearest tree", "m", "ft"),
        "tree_stem": _length("diameter of its stem at 1.5 m"),
        "pit_sides": Choice("sides of the pit while people work", _HINDERS),
        "ground_water": _length("highest ground water above the reservoir floor"),
        "frost_depth": _length("depth of the frost line under the finished paving"),
        "north": Field("direction of north on the plan, clockwise from the top of the sheet", "deg", most=math.tau),
        "gate": Field("narrowest way in", "mm", "in"),
        "widest_item": Field("widest thing that must come in", "mm", "in"),
        "sound_at_1m": Field("sound level 1 m from the feature, in decibels", ""),
        "neighbour": Field("distance to the nearest bedroom or neighbour", "m", "ft"),
        "background": Field("background sound level there, in decibels", ""),
        "wind_speed": Field("design wind speed, gusts in it", "m/s", "ft/s"),
        "force_coefficient": Field("force coefficient of the tall piece", ""),
        "lift_mass": Field("heaviest thing that one person lifts", "kg", "lb"),
        "lift_reach": _length("distance of the hands from the ankles while lifting"),
        "lift_height": _length("height of the hands at the start of the lift"),
        "lift_travel": _length("distance that the hands travel"),
        "wheel_load": Field("heaviest wheel that may come onto the stone over the blocks, as a force", "kN", "lbf"),
        "wheel_side": _length("side of the square on which that wheel stands"),
        "sling_mass": Field("mass on the slings", "kg", "lb"),
        "sling_legs": Field("legs of the sling", "", whole=True, most=4),
        "sling_angle": Field("angle of a leg from the horizontal", "deg"),
        "sling_rating": Field("rating of one leg", "kN", "lbf"),
        "budget": Field("money that there is", "cur"),
        "cost": Field("cost worked out, without contingency", "cur"),
    },
    "vessel": {
        "rim_diameter": _length("diameter of the rim"),
        "height": _length("height of the vessel"),
        "mass": Field("mass of the empty vessel", "kg", "lb"),
        "water": Field("water in the vessel", "L", "US gal"),
        "foot_outside": _length("outside diameter of the foot"),
        "foot_inside": _length("inside diameter of the foot (0 for a full foot)"),
        "foot_corners": Corners("corners of the patch under the foot, drawn full size"),
        "side_area": Field("wetted outside of the vessel", "m2", "ft2"),
        "rim_error": _length("difference in level round the rim"),
        "offset": _length("distance of the vessel from the blocks' middle"),
        "foam": Field("foam in the vessel", "L", "US gal"),
        "foam_density": Field("density of the foam", "kg/m3", "lb/ft3"),
        "pebbles": Field("pebbles that lie on the foam, with their gaps", "L", "US gal"),
        "stands_on": Choice("what the vessel stands on", ("slab", "blocks")),
        "wall": _length("thickness of its wall at the bottom, as the drill hole shows it"),
        "tensile_strength": Field("tensile strength of its material, from its maker", "MPa", "psi"),
        "widest": _length("diameter where it is widest, if wider than the rim"),
    },
    "stones": {
        "diameters": Several("diameters of the stones", "mm"),
        "heights": Several("heights of the stones", "mm"),
        "branch_lengths": Several("lengths of the hose to each stone", "m"),
        "branch_bore": _length("true inside diameter of the hose to each stone"),
        "branch_fittings": Field("sum of the loss coefficients of each branch, valve open", ""),
        "valves": Choice("a valve on every branch", YES_NO),
        "hole": _length("bore of the hole in each stone"),
        "density": Field("density of the stone", "kg/m3", "lb/ft3"),
        "rough_contact": Field("area on which a rough base really stands", "cm2", "in2"),
        "base_share": _share("share of the base's width that resists tipping"),
        "stand_on": Choice("what the stones stand on", ("slabs", "blocks")),
    },
    "blade": {
        "lip_width": _length("width of the lip"),
        "lip_level": _length("level of the lip, to the finished paving", signed=True),
        "stone_level": _length("level of the stone on which the sheet lands, to the finished paving", signed=True),
        "trough_length": _length("length of the trough behind the lip"),
        "trough_width": _length("width of the trough"),
        "trough_depth": _length("depth of the trough"),
        "feed": Choice("where the trough is fed", ("bottom", "top")),
        "wall_height": _length("height of the wall"),
        "wall_retains": Choice("what the wall holds back", ("nothing", "soil", "water")),
    },
    "cascade": {
        "steps": Field("number of steps", "", whole=True, most=50),
        "width": _length("width of a step"),
        "step_fall": _length("fall of a step, lip to water"),
        "tread": _length("tread: from the face of a step to the next lip"),
        "top_level": _length("level of the header's lip, to the finished paving", signed=True),
        "header_area": Field("water surface of the header", "m2", "ft2"),
        "header_volume": Field("water in the header below its lip", "L", "US gal"),
        "pool_area": Field("water surface of one pool", "m2", "ft2"),
        "feed": Choice("where the header is fed", ("bottom", "top")),
        "edge": _length("edge beside the steps that catches splash"),
        "rill_length": Field("length of the rill", "m", "ft"),
        "rill_width": _length("width of the rill"),
        "rill_slope": Field("fall of the rill over its length", ""),
        "rill_wall": _length("height of the rill's side"),
        "rill_roughness": Field("Manning coefficient of the rill", ""),
    },
    "overflow_pipe": {
        "bore": _length("bore of the overflow pipe"),
        "head": _length("water over its middle before it spills elsewhere"),
        "rain": Field("heaviest rain", "mm/h", "in/h"),
        "catch_area": Field("area that drains into the reservoir", "m2", "ft2"),
        "feed": Field("flow of a top-up valve that sticks open", "L/min", "US gal/min"),
    },
    "slab": {
        "length": _length("length of the slab"),
        "width": _length("width of the slab"),
        "thickness": _length("thickness of the slab"),
        "density": Field("density of the slab", "kg/m3", "lb/ft3"),
    },
    "flow": {
        "for_each_metre": Field("flow wanted for each metre of rim", "L/s per m", "US gal/min per ft"),
        "weir_coefficient": Field("weir coefficient of the rim", "m^0.5/s", "ft^0.5/s"),
        "water_temperature": Field("temperature of the water", "degC", "degF", signed=True, usual="20 degC", basis=J),
    },
    "reservoir": {
        "block_length": _length("length of one block"),
        "block_width": _length("width of one block"),
        "block_height": _length("height of one block"),
        "blocks_along": Field("blocks along the pit", "", whole=True, most=50),
        "blocks_across": Field("blocks across the pit", "", whole=True, most=50),
        "block_mass": Field("mass of one block", "kg", "lb"),
        "void_fraction": _share("void fraction of the blocks"),
        "short_term_strength": Field("short-term strength of the block", "kPa", "psi"),
        "creep_factor": _share("creep factor"),
        "safety_factor": Field("safety factor on the block", ""),
        "cover": _length("thickness of a stiff slab or grid all over the blocks, under the stone (0 for none)"),
        "lowest_level": _length("lowest level at which the pump may run, above the floor"),
        "running_level": _length("highest level while running, above the floor"),
        "cut_out_level": _length("level at which the low-water cut-out stops the pump, above the floor"),
        "top_up_level": _length("level at which the top-up valve closes, above the floor"),
        "static_level": _length("level with the pump off, above the floor"),
        "overflow_level": _length("overflow level, above the floor"),
    },
    "pump": {
        "shut_off_head": Field("shut-off head", "m", "ft"),
        "free_flow": Field("flow at no head", "L/min", "US gal/min"),
        "curve": Curve("points of the maker's curve"),
        "power": Field("power taken in", "W"),
        "covered": _length("water over the pump at the lowest level"),
        "cut_out": Choice("a low-water cut-out that stops the pump", YES_NO),
        "intake_level": _length("intake of the pump, above the floor"),
        "intake_area": Field("open area of the intake cage", "cm2", "in2"),
        "bay": Field("side of the square bay in the blocks for the pump", "mm", "in", usual="200 mm", basis=J, usual_us="8 in"),
    },
    "pipe": {
        "bore": _length("true inside diameter of the hose"),
        "length": Field("length of the hose", "m", "ft"),
        "fittings": Field("sum of the loss coefficients of the fittings", ""),
        "friction_law": Choice("friction law", LAWS),
        "roughness": _length("roughness of the inside of the hose"),
        "hazen_williams": Field("Hazen-Williams coefficient of the hose", ""),
        "mouth_below_rim": _length("how far the hose mouth lies below the rim"),
        "check_valve": Choice("check valve in the hose", YES_NO),
    },
    "levels": {
        "block_top": _length("top of the blocks, to the finished paving", signed=True),
        "soil": _length("surface of the soil beside the liner, to the finished paving", signed=True),
        "liner_edge": _length("edge of the liner, to the finished paving", signed=True),
        "staple_line": _length("lowest staple or cut in the liner, to the finished paving", signed=True),
    },
    "ground": {
        "lining": _length("thickness of lining and fleece together"),
        "sand": _length("thickness of the sand bed"),
        "sub_base": _length("thickness of the sub-base"),
        "clearance": _length("clearance between lining and block, each side"),
        "box_upstand": _length("how far the box stands above the blocks"),
        "board": _length("thickness of the box"),
        "working_space": _length("working space round the box"),
        "bulking": Field("loose volume over volume in the ground", ""),
    },
    "catch": {
        "apron": _length("width of the apron beyond the box"),
        "splash_factor": Field("apron wanted for each metre of fall", ""),
        "stone_thickness": _length("thickness of the stone layer"),
        "stone_density": Field("bulk density of the stone", "kg/m3", "lb/ft3"),
        "stone_waste": _share("allowance for waste of stone"),
        "wet_area": Field("area of stone that stays wet", "m2", "ft2"),
        "hold_up": _share("share of the wet stone that is water in transit"),
    },
    "lining": {
        "margin": _length("margin of the liner beyond the apron"),
        "rolls": Several("widths of liner that are sold", "m"),
        "mesh": _length("opening of the mesh under the stone"),
        "smallest_stone": _length("smallest stone"),
        "panel_clearance": _length("clear distance from the cut panel to the load"),
    },
    "climate": {
        "evaporation": Field("reference evapotranspiration in the driest month", "mm/day", "in/day"),
        "coefficient": Field("coefficient for open water", ""),
        "splash": Field("water lost by splash", "L/day", "US gal/day"),
    },
    "supply": {
        "voltage": Field("voltage", "V"),
        "power_factor": _share("power factor of the pump"),
        "cable_length": Field("length of the cable", "m", "ft"),
        "drop": Field("voltage drop of the cable", "mV/A/m"),
        "resistance": Field("resistance of one conductor, warm", "ohm/km", "ohm/kft"),
        "hours_per_day": Field("hours run each day", "h"),
        "tariff": Field("price of electricity (cur is your currency)", "cur/kWh"),
        "cord": Field("length of the pump's cord", "m", "ft"),
        "cord_route": Field("length of its route", "m", "ft"),
        "point_along": Field("supply point from the middle of the blocks, along them: to the right on the plan, below zero to the left", "m", "ft", signed=True),
        "point_across": Field("supply point from the middle of the blocks, across them: up on the plan, below zero down", "m", "ft", signed=True),
        "duct_bore": _length("bore of the duct for the cable"),
        "duct_cover": _length("cover over the duct, as the electrician states it"),
        "circuit_load": Field("current of everything on the circuit", "A"),
        "breaker": Field("rating of the breaker", "A"),
        "leakage": Field("earth leakage of everything on the residual-current device, pump running", "mA"),
        "residual_rating": Field("rated residual current of that device", "mA"),
        "residual_current": Choice("residual-current protection", ("tested by instrument", "tested by button", "none")),
    },
    "measured": {
        "flow": Field("flow measured with a bucket at the outlet", "L/min", "US gal/min"),
        "start_drop": _length("drop of the level when the pump starts"),
        "leak": Field("fall of the level in a day with the pump off, less that of a control bucket", "mm/day", "in/day", signed=True),
        "current": Field("current of the running pump", "A"),
        "rim_levels": Several("levels of the rim at points round it", "mm", signed=True),
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
        "foot": _assumed("side of the square on which that foot stands", "100 mm", J, "in"),
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
        "fleece_waste": _assumed("laps and waste of fleece", "0.15", CP, most=1.0),
        "fabric_roll": _sold("width of a roll of separation fabric", "2 m", "6 ft"),
        "fabric_waste": _assumed("laps and waste of separation fabric", "0.15", CP, most=1.0),
        "mesh_roll": _sold("width of a roll of mesh", "1 m", "4 ft"),
        "mesh_lap": _sold("how far the mesh reaches beyond the box", "100 mm", "4 in", J),
        "mesh_waste": _assumed("laps and waste of mesh", "0.1", J, most=1.0),
        "tape_roll": _sold("length of a roll of tape", "50 m", "150 ft"),
        "hose_waste": _assumed("waste of hose", "0.1", CP, most=1.0),
        "hose_extra": _sold("hose for its ends, each piece", "0.5 m", "20 in"),
        "pipe_waste": _assumed("waste of duct and pipe", "0.1", CP, most=1.0),
        "pipe_stick": _sold("length of pipe that is sold", "3 m", "10 ft"),
        "overflow_run": Field("length of the overflow pipe, to where it drains", "m", "ft"),
        "spare_washers": _assumed("spare washers", "1", CP, most=100.0),
        "foam_board": _sold("volume of one board of foam", "72 L", "2.5 ft3"),
        "foam_waste": _assumed("waste of foam", "0.1", J, most=1.0),
        "sealant_reach": _sold("joint that one cartridge of sealant fills", "6 m", "20 ft", J),
        "load": _sold("loose soil that one load takes away", "3 m3", "4 yd3"),
    },
    "prices": {key: Field(f"price of {row.name}", "cur/m" if row.by_length else "cur", "cur/ft" if row.by_length else "") for key, row in PRICES.items()},
    "costing": {
        "hours": Field("hours of work on site, all people together, in place of those of the programme", "h"),
        "rate": Field("rate of pay for an hour of one person (0 for your own work)", "cur/h"),
        "overhead": _share("overhead as a share of the direct cost"),
        "contingency": _assumed("contingency as a share of the cost: 10 to 15 % for work in the ground", "0.12", CP, most=1.0),
        "margin": _share("margin: profit as a share of the price"),
        "tax": _share("tax on the price"),
        "water": Field("price of water", "cur/m3", "cur/US gal"),
        "service": Field("service in a year: cleaning and small parts", "cur"),
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
    "limits": {check: Bounds(f"limits of check {check}, in place of the usual ones", unit) for check, unit in LIMITED.items()},
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


def sections(kind: str) -> dict[str, dict[str, Field | Choice | Date | Several | Corners | Curve | Bounds]]:
    """The sections of a design of that kind, in the order in which they are shown."""
    other = {question.key for question in QUESTIONS if question.kinds and kind not in question.kinds}  # asked of another kind only
    return {name: {key: field for key, field in SECTIONS[name].items() if name != "answers" or key not in other} for name in KINDS[kind]}


def usual(field, region: str) -> str:
    """What counts in a region until the design says something else; empty for what stays unknown."""
    here = getattr(field, "usual", "")
    return (region == "US" and getattr(field, "usual_us", "")) or here


REGIONS = ("UK", "US")
HEAD = ("format", "kind", "title", "region", "note")
