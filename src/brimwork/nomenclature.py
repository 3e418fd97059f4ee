"""Every letter once: its plain name, its units and its usual range.

A letter has one meaning in the whole kit. The usual range is where controls run and exercises draw their numbers; a letter whose range
starts below zero may be negative, every other must not be. A row with `value` is a constant: never a control, never random.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass
from functools import cached_property

from brimwork.units import Dimension, InputError, convert, number, read, unit, with_point, write

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

    @cached_property
    def range(self) -> tuple[float, float, float]:
        """Low, high and step in SI."""
        return tuple(read(text, self.si or self.metric, self.key) for text in (self.low, self.high, self.step))

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
        if self.value:
            return self.typed(self.constant, place=place)
        low, high, step = self.range
        return self.typed(low + round((high - low) / 2 / step) * step, place=place)

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
        low, high, _ = (self.constant,) * 3 if self.value else self.range
        return " or ".join(dict.fromkeys((self.such_as(place), self.typed((low + high) / 2, us=True, place=place))))

    def metric_text(self, value: float, digits: int | None = 3) -> str:
        return write(value, self.metric, digits)

    def short(self, value: float) -> str:
        """Up to four figures without trailing zeros, for values that were given: "12 mm"."""
        return _short(value, self.metric, 4)

    @property
    def short_name(self) -> str:
        """The name without its explanation."""
        return self.name.partition(":")[0]

    @property
    def plain_name(self) -> str:
        """The name as short as it stays clear: without its explanation and what narrows it."""
        return self.short_name.partition(",")[0].partition(" (")[0]

    def us_text(self, value: float, digits: int | None = 3) -> str:
        return write(value, self.us or self.metric, digits)

    def both(self, value: float, digits: int | None = 3) -> str:
        """The value in both unit systems: "25.0 mm (0.984 in)"."""
        metric, us = self.metric_text(value, digits), self.us_text(value, digits)
        return metric if metric == us else f"{metric} ({us})"


def _the(name: str) -> str:
    return name if name.startswith("the ") else f"the {name}"


def _short(value: float, name: str, digits: int = 3) -> str:
    return f"{number(float(f'{convert(value, name):.{digits}g}'))} {name}".strip()


def _rows(*rows: Quantity) -> dict[str, Quantity]:
    table: dict[str, Quantity] = {}
    for row in rows:
        if row.key in table:
            raise ValueError(f"the letter {row.key} stands twice in the nomenclature")
        table[row.key] = row
    return table


QUANTITIES = _rows(
    # constants
    Quantity("g", "standard gravity", "m/s2", "m/s2", "ft/s2", value="9.80665 m/s2", note="exact by definition, SI Brochure"),
    Quantity("l_foot", "one foot", "m", "mm", "ft", value="1 ft", note="for formulas fitted in feet"),
    # water and surfaces
    Quantity("rho", "density of water", "kg/m3", "kg/m3", "lb/ft3", "992 kg/m3", "1000 kg/m3", "0.5 kg/m3"),
    Quantity("mu", "dynamic viscosity of water", "Pa s", "cP", "cP", "0.6 cP", "1.8 cP", "0.05 cP"),
    Quantity("nu", "kinematic viscosity of water", "m2/s", "cSt", "cSt", "0.6 cSt", "1.8 cSt", "0.05 cSt"),
    Quantity("sigma", "surface tension of water", "N/m", "mN/m", "mN/m", "60 mN/m", "76 mN/m", "0.5 mN/m"),
    Quantity("theta_c", "contact angle of water on the surface", "rad", "deg", "deg", "5 deg", "90 deg", "5 deg"),
    # pits and vessels
    Quantity("V", "volume", "m3", "L", "US gal", "20 L", "1500 L", "5 L"),
    Quantity("L", "length of the floor", "m", "mm", "in", "600 mm", "2400 mm", "50 mm"),
    Quantity("W", "width of the floor", "m", "mm", "in", "500 mm", "1800 mm", "50 mm"),
    Quantity("h", "depth, from the floor or the bottom of the bowl up", "m", "mm", "in", "100 mm", "900 mm", "10 mm"),
    Quantity("D", "full depth, from the floor to the edge", "m", "mm", "in", "200 mm", "900 mm", "10 mm"),
    Quantity("m_b", "batter: how far each side leans out for each unit of height", "", "", "", "0.1", "1", "0.05"),
    Quantity("L_top", "length at the top", "m", "mm", "in", "600 mm", "4000 mm", "50 mm"),
    Quantity("L_z", "length at a height above the floor", "m", "mm", "in", "600 mm", "4000 mm", "50 mm"),
    Quantity("W_z", "width at a height above the floor", "m", "mm", "in", "500 mm", "3000 mm", "50 mm"),
    Quantity("d_z", "diameter at a height above the floor", "m", "mm", "in", "300 mm", "1600 mm", "10 mm"),
    Quantity("A_z", "area at a height above the floor", "m2", "m2", "ft2", "0.2 m2", "4 m2", "0.05 m2"),
    Quantity("z_f", "height above the floor", "m", "mm", "in", "10 mm", "900 mm", "10 mm"),
    Quantity("A_1", "area of the floor", "m2", "m2", "ft2", "0.4 m2", "1 m2", "0.05 m2"),
    Quantity("A_2", "area at the top", "m2", "m2", "ft2", "1.2 m2", "3 m2", "0.1 m2"),
    Quantity("A_m", "area half-way up", "m2", "m2", "ft2", "0.7 m2", "2 m2", "0.05 m2"),
    Quantity("c_1", "growth of area with height, first power", "m", "m", "ft", "0.2 m", "2 m", "0.1 m"),
    Quantity("c_2", "growth of area with height, second power", "", "", "", "0.1", "1", "0.1"),
    Quantity("d_t", "inside diameter of the tank", "m", "mm", "in", "500 mm", "1600 mm", "50 mm"),
    Quantity("d_floor", "inside diameter at the bottom of the bowl", "m", "mm", "in", "200 mm", "600 mm", "10 mm"),
    Quantity("d_rim", "diameter of the rim", "m", "mm", "in", "400 mm", "1000 mm", "10 mm"),
    Quantity("R_s", "radius of the sphere that the bowl is part of", "m", "mm", "in", "300 mm", "700 mm", "10 mm"),
    # water over an edge
    Quantity("Q", "flow", "m3/s", "L/min", "US gal/min", "5 L/min", "120 L/min", "1 L/min"),
    Quantity("q", "flow for each metre of edge", "m2/s", "L/min per m", "US gal/min per ft", "5 L/min per m", "300 L/min per m", "1 L/min per m"),
    Quantity("b", "length of the lip", "m", "mm", "in", "200 mm", "1200 mm", "10 mm"),
    Quantity("H", "head over the lip: water level upstream above the edge", "m", "mm", "in", "2 mm", "40 mm", "0.5 mm"),
    Quantity("P", "height of the lip above the floor upstream", "m", "mm", "in", "50 mm", "400 mm", "10 mm"),
    Quantity("C_d", "discharge coefficient", "", "", "", "0.58", "0.66", "0.01"),
    Quantity("C_w", "weir coefficient", "m^0.5/s", "m^0.5/s", "ft^0.5/s", "1.5 m^0.5/s", "1.9 m^0.5/s", "0.01 m^0.5/s"),
    Quantity("C_0", "discharge coefficient of a very high lip", "", "", "", "0.59", "0.61", "0.001"),
    Quantity("C_1", "growth of the discharge coefficient with H/P", "", "", "", "-0.002", "0.09", "0.001"),
    Quantity("k_b", "correction added to the length of the lip", "m", "mm", "in", "-1 mm", "4.5 mm", "0.1 mm"),
    Quantity("k_h", "correction added to the head", "m", "mm", "in", "0 mm", "3 mm", "0.1 mm"),
    Quantity("n_c", "number of end contractions", "", "", "", "0", "2", "1"),
    Quantity("v", "speed of the water", "m/s", "m/s", "ft/s", "0.05 m/s", "2.5 m/s", "0.05 m/s"),
    Quantity("z", "depth below the water surface", "m", "mm", "in", "1 mm", "40 mm", "0.5 mm"),
    Quantity("b_z", "width of the opening at a depth below the surface", "m", "mm", "in", "10 mm", "1200 mm", "10 mm"),
    Quantity("A_a", "cross-section of the water that comes towards the lip", "m2", "m2", "ft2", "0.02 m2", "0.4 m2", "0.01 m2"),
    Quantity("h_a", "velocity head of the water that comes towards the lip", "m", "mm", "in", "0 mm", "10 mm", "0.1 mm"),
    Quantity("theta", "full angle of the notch", "rad", "deg", "deg", "30 deg", "100 deg", "5 deg"),
    Quantity("E_s", "specific energy: depth plus velocity head, above the crest", "m", "mm", "in", "2 mm", "60 mm", "0.5 mm"),
    Quantity("y_c", "critical depth on the crest", "m", "mm", "in", "1 mm", "40 mm", "0.5 mm"),
    Quantity("d_bore", "bore of a drilled stone or upright pipe", "m", "mm", "in", "25 mm", "120 mm", "1 mm"),
    Quantity("H_full", "head at which a bore stops flowing like a rim", "m", "mm", "in", "5 mm", "45 mm", "1 mm"),
    Quantity("A_o", "area of an opening", "m2", "cm2", "in2", "4 cm2", "120 cm2", "1 cm2"),
    Quantity("n_w", "power of the head in the flow formula", "", "", "", "1.5", "2.5", "1"),
    Quantity("e_H", "error in the head", "m", "mm", "in", "0.1 mm", "2 mm", "0.1 mm"),
    Quantity("r_Q", "share of the flow that the error makes", "", "", "", "0.01", "1", "0.01"),
    # rim out of level
    Quantity("e_rim", "rim error: difference in level between its high and its low side", "m", "mm", "in", "0.2 mm", "5 mm", "0.2 mm"),
    Quantity("phi", "angle round the rim, from its low side", "rad", "deg", "deg", "1 deg", "179 deg", "1 deg"),
    Quantity("H_phi", "head at an angle round the rim", "m", "mm", "in", "0.5 mm", "40 mm", "0.5 mm"),
    Quantity(
        "q_low",
        "flow for each metre at the low side of the rim",
        "m2/s",
        "L/min per m",
        "US gal/min per ft",
        "5 L/min per m",
        "300 L/min per m",
        "1 L/min per m",
    ),
    Quantity(
        "q_high",
        "flow for each metre at the high side of the rim",
        "m2/s",
        "L/min per m",
        "US gal/min per ft",
        "5 L/min per m",
        "300 L/min per m",
        "1 L/min per m",
    ),
    Quantity("r_rim", "flow ratio: low side of the rim over high side", "", "", "", "1", "20", "0.1"),
    Quantity("e_dry", "rim error at which the high side just runs dry", "m", "mm", "in", "1 mm", "70 mm", "1 mm"),
    # film on a face
    Quantity("delta", "thickness of the film", "m", "mm", "in", "0.1 mm", "0.6 mm", "0.02 mm"),
    Quantity("beta", "angle of the face from the horizontal", "rad", "deg", "deg", "45 deg", "90 deg", "5 deg"),
    Quantity("y", "distance from the face into the film", "m", "mm", "in", "0.05 mm", "0.6 mm", "0.05 mm"),
    Quantity("u", "speed in the film at a distance from the face", "m/s", "m/s", "ft/s", "0.01 m/s", "1 m/s", "0.01 m/s"),
    Quantity("tau", "shear stress in the film", "Pa", "Pa", "Pa", "0.1 Pa", "6 Pa", "0.1 Pa"),
    Quantity("u_mean", "mean speed of the film", "m/s", "m/s", "ft/s", "0.01 m/s", "0.8 m/s", "0.01 m/s"),
    Quantity("delta_min", "thinnest film that closes over a dry patch", "m", "mm", "in", "0.1 mm", "0.5 mm", "0.02 mm"),
    Quantity(
        "q_min",
        "least flow for each metre that keeps a face wet",
        "m2/s",
        "L/min per m",
        "US gal/min per ft",
        "0.5 L/min per m",
        "14 L/min per m",
        "0.5 L/min per m",
    ),
    # edges and capillarity
    Quantity("l_c", "capillary length", "m", "mm", "in", "2.6 mm", "2.8 mm", "0.01 mm"),
    Quantity("H_pin", "height of still water that an edge holds back", "m", "mm", "in", "0.5 mm", "5.5 mm", "0.1 mm"),
    Quantity("r_t", "radius of a narrow gap or tube", "m", "mm", "in", "0.2 mm", "3 mm", "0.1 mm"),
    Quantity("h_cap", "capillary rise", "m", "mm", "in", "2 mm", "70 mm", "1 mm"),
    # void fraction and the reservoir
    Quantity("n_por", "void fraction (porosity): empty space over the whole space", "", "", "", "0.25", "0.5", "0.01", most="1"),
    Quantity("e_void", "void ratio: empty space over solid", "", "", "", "0.3", "1", "0.01"),
    Quantity("n_v", "void fraction of the blocks", "", "", "", "0.9", "0.97", "0.01", most="1"),
    Quantity("n_s", "void fraction of the stone", "", "", "", "0.35", "0.45", "0.01", most="1"),
    Quantity("n_m", "mean void fraction of a layer", "", "", "", "0.4", "0.95", "0.01", most="1"),
    Quantity("V_void", "empty space", "m3", "L", "US gal", "10 L", "500 L", "5 L"),
    Quantity("V_solid", "space that solid takes up", "m3", "L", "US gal", "10 L", "500 L", "5 L"),
    Quantity("rho_bulk", "bulk density: loose stone with its gaps", "kg/m3", "kg/m3", "lb/ft3", "1450 kg/m3", "1650 kg/m3", "10 kg/m3"),
    Quantity("rho_s", "density of solid stone", "kg/m3", "kg/m3", "lb/ft3", "2500 kg/m3", "2900 kg/m3", "10 kg/m3"),
    Quantity("N_cell", "spheres in one cell of a packing", "", "", "", "1", "4", "1"),
    Quantity("d_s", "diameter of a sphere", "m", "mm", "in", "10 mm", "40 mm", "1 mm"),
    Quantity("a_cell", "edge of one cell of a packing", "m", "mm", "in", "15 mm", "60 mm", "1 mm"),
    Quantity("V_w", "volume of water held", "m3", "L", "US gal", "20 L", "900 L", "5 L"),
    Quantity("V_pit", "whole volume of the lined pit", "m3", "L", "US gal", "300 L", "2500 L", "10 L"),
    Quantity("V_b", "outside volume of one block", "m3", "L", "US gal", "20 L", "120 L", "5 L"),
    Quantity("N_b", "number of blocks", "", "", "", "2", "20", "1"),
    Quantity("A_b", "plan area of the blocks", "m2", "m2", "ft2", "0.4 m2", "2.4 m2", "0.05 m2"),
    Quantity("A_pit", "plan area of the lined pit", "m2", "m2", "ft2", "0.6 m2", "4 m2", "0.05 m2"),
    Quantity("A_w", "water area: plan area times void fraction", "m2", "m2", "ft2", "0.4 m2", "2.4 m2", "0.05 m2"),
    Quantity("w_l", "water for each millimetre of level", "m2", "L/mm", "US gal/in", "0.4 L/mm", "2.4 L/mm", "0.05 L/mm"),
    Quantity("h_static", "static level: water standing with the pump off, above the floor", "m", "mm", "in", "250 mm", "700 mm", "10 mm"),
    Quantity("h_min", "lowest level at which the pump may run, above the floor", "m", "mm", "in", "80 mm", "200 mm", "10 mm"),
    Quantity("V_use", "usable water: what the pump can draw on", "m3", "L", "US gal", "50 L", "900 L", "5 L"),
    Quantity("V_dead", "dead water: what the pump cannot reach", "m3", "L", "US gal", "20 L", "400 L", "5 L"),
    Quantity("z_r", "rise or fall of the level", "m", "mm", "in", "2 mm", "60 mm", "1 mm"),
    Quantity("t_turn", "turnover time", "s", "min", "min", "1 min", "30 min", "1 min"),
    # load on the blocks and the ground
    Quantity("F_w", "weight that presses down", "N", "N", "lbf", "500 N", "6000 N", "50 N"),
    Quantity("m_v", "mass of the vessel or stone, without water", "kg", "kg", "lb", "40 kg", "600 kg", "5 kg"),
    Quantity("V_v", "water in the vessel", "m3", "L", "US gal", "0 L", "150 L", "5 L"),
    Quantity("m_slab", "mass of the slab", "kg", "kg", "lb", "20 kg", "120 kg", "1 kg"),
    Quantity("l_s", "length of the slab", "m", "mm", "in", "400 mm", "900 mm", "50 mm"),
    Quantity("w_s", "width of the slab", "m", "mm", "in", "300 mm", "700 mm", "50 mm"),
    Quantity("t_s", "thickness of the slab", "m", "mm", "in", "40 mm", "100 mm", "5 mm"),
    Quantity("rho_slab", "density of the slab", "kg/m3", "kg/m3", "lb/ft3", "2200 kg/m3", "2900 kg/m3", "50 kg/m3"),
    Quantity("d_fo", "outside diameter of the foot", "m", "mm", "in", "250 mm", "500 mm", "10 mm"),
    Quantity("d_fi", "inside diameter of the foot", "m", "mm", "in", "150 mm", "240 mm", "10 mm"),
    Quantity("A_c", "contact patch: the area that really touches", "m2", "cm2", "in2", "200 cm2", "5000 cm2", "50 cm2"),
    Quantity("d_so", "outside diameter of the loaded patch under the slab", "m", "mm", "in", "300 mm", "700 mm", "10 mm"),
    Quantity("d_si", "inside diameter of the loaded patch under the slab", "m", "mm", "in", "10 mm", "200 mm", "10 mm"),
    Quantity("p_c", "pressure on the contact patch", "Pa", "kPa", "psi", "2 kPa", "60 kPa", "0.5 kPa"),
    Quantity("t_st", "thickness of the stone layer", "m", "mm", "in", "40 mm", "150 mm", "10 mm"),
    Quantity("p_st", "pressure of the stone layer", "Pa", "kPa", "psi", "0.5 kPa", "2.5 kPa", "0.1 kPa"),
    Quantity("p_short", "short-term strength of the block, from its sheet", "Pa", "kPa", "psi", "40 kPa", "250 kPa", "5 kPa"),
    Quantity("k_creep", "creep factor: share of the strength that lasts for years", "", "", "", "0.3", "0.6", "0.05", most="1"),
    Quantity("p_long", "long-term strength of the block", "Pa", "kPa", "psi", "12 kPa", "150 kPa", "1 kPa"),
    Quantity("f_s", "safety factor", "", "", "", "1.2", "3", "0.1"),
    Quantity("p_all", "pressure that the block may carry for years", "Pa", "kPa", "psi", "8 kPa", "80 kPa", "1 kPa"),
    Quantity("u_p", "utilisation: what is carried over what may be carried", "", "", "", "0.05", "2", "0.01"),
    Quantity("B_base", "width of the base, in the direction of the offset or push", "m", "mm", "in", "300 mm", "1800 mm", "50 mm"),
    Quantity("L_base", "width of the base across that direction", "m", "mm", "in", "300 mm", "1800 mm", "50 mm"),
    Quantity("e_off", "eccentricity: how far the load stands off the middle of the base", "m", "mm", "in", "0 mm", "600 mm", "5 mm"),
    Quantity("e_ac", "eccentricity across", "m", "mm", "in", "0 mm", "200 mm", "5 mm"),
    Quantity("e_k", "edge of the kern: eccentricity at which one edge of the base carries nothing", "m", "mm", "in", "20 mm", "300 mm", "5 mm"),
    Quantity("x_b", "distance from the middle of the base", "m", "mm", "in", "-900 mm", "900 mm", "10 mm"),
    Quantity("x_a", "distance from the middle of the base, across", "m", "mm", "in", "-900 mm", "900 mm", "10 mm"),
    Quantity("x_c", "distance from the end of the contact", "m", "mm", "in", "10 mm", "1800 mm", "10 mm"),
    Quantity("p_x", "pressure at a place under the base", "Pa", "kPa", "psf", "1 kPa", "80 kPa", "0.5 kPa"),
    Quantity("p_mid", "pressure under the middle of the base", "Pa", "kPa", "psf", "1 kPa", "40 kPa", "0.5 kPa"),
    Quantity("c_p", "growth of the pressure along the base", "Pa/m", "kPa/m", "psf/ft", "0.5 kPa/m", "40 kPa/m", "0.5 kPa/m"),
    Quantity("c_a", "growth of the pressure across the base", "Pa/m", "kPa/m", "psf/ft", "0.5 kPa/m", "40 kPa/m", "0.5 kPa/m"),
    Quantity("p_max", "greatest pressure under the base, at its edge", "Pa", "kPa", "psf", "2 kPa", "80 kPa", "0.5 kPa"),
    Quantity("p_min", "least pressure under the base, at its edge", "Pa", "kPa", "psf", "0 kPa", "40 kPa", "0.5 kPa"),
    Quantity("b_c", "length of the base that is still in contact", "m", "mm", "in", "50 mm", "1800 mm", "10 mm"),
    Quantity("p_soil", "bearing pressure presumed for the soil", "Pa", "kPa", "psf", "24 kPa", "150 kPa", "1 kPa"),
    Quantity("F_foot", "force of a foot or a wheel", "N", "kN", "lbf", "0.5 kN", "2 kN", "0.1 kN"),
    Quantity("b_foot", "side of the square on which a foot or a wheel stands", "m", "mm", "in", "80 mm", "200 mm", "10 mm"),
    Quantity("t_cov", "thickness of the slab or grid that covers the blocks", "m", "mm", "in", "0 mm", "80 mm", "5 mm"),
    Quantity("b_under", "side of the square that is pressed on under the cover", "m", "mm", "in", "80 mm", "360 mm", "10 mm"),
    Quantity("p_foot", "pressure of a foot or a wheel on the blocks", "Pa", "kPa", "psi", "5 kPa", "300 kPa", "1 kPa"),
    Quantity("p_brief", "pressure that the block may carry for seconds", "Pa", "kPa", "psi", "15 kPa", "200 kPa", "1 kPa"),
    Quantity("u_foot", "utilisation under a foot: what it presses over what may press for seconds", "", "", "", "0.05", "2", "0.01"),
    # wall of a vessel
    Quantity("h_full", "water in a full vessel, from its bottom to its rim", "m", "mm", "in", "200 mm", "900 mm", "10 mm"),
    Quantity("R_wall", "inside radius of the vessel where it is widest", "m", "mm", "in", "100 mm", "600 mm", "10 mm"),
    Quantity("t_wall", "thickness of the vessel's wall", "m", "mm", "in", "4 mm", "60 mm", "1 mm"),
    Quantity("a_wall", "angle round the wall", "rad", "deg", "deg", "0 deg", "180 deg", "5 deg"),
    Quantity("p_wall", "pressure of the water on the wall", "Pa", "kPa", "psi", "2 kPa", "9 kPa", "0.1 kPa"),
    Quantity("sigma_hoop", "hoop stress: the pull round the wall", "Pa", "kPa", "psi", "10 kPa", "1200 kPa", "5 kPa"),
    Quantity("f_tens", "tensile strength of the wall", "Pa", "MPa", "psi", "1 MPa", "60 MPa", "0.5 MPa"),
    Quantity("u_wall", "hoop stress over the tensile strength", "", "", "", "0.001", "0.5", "0.001"),
    # tipping, wind, foam and flotation
    Quantity("M_hold", "moment that holds a piece upright", "N m", "N m", "lbf ft", "50 N m", "2000 N m", "10 N m"),
    Quantity("M_over", "moment that tips a piece over", "N m", "N m", "lbf ft", "50 N m", "1000 N m", "10 N m"),
    Quantity("F_push", "push at the rim", "N", "N", "lbf", "250 N", "500 N", "10 N"),
    Quantity("h_push", "height of the push above the base", "m", "mm", "in", "250 mm", "900 mm", "10 mm"),
    Quantity("f_tip", "tipping factor: moment that holds over moment that tips", "", "", "", "0.5", "5", "0.1"),
    Quantity("N_feet", "number of feet on a circle", "", "", "", "3", "8", "1"),
    Quantity("d_feet", "diameter of the circle on which the feet stand", "m", "mm", "in", "250 mm", "600 mm", "10 mm"),
    Quantity("rho_air", "density of air", "kg/m3", "kg/m3", "lb/ft3", "1.15 kg/m3", "1.3 kg/m3", "0.005 kg/m3"),
    Quantity("v_wind", "wind speed", "m/s", "m/s", "ft/s", "10 m/s", "40 m/s", "1 m/s"),
    Quantity("k_e", "exposure factor: height, ground and direction", "", "", "", "0.5", "1.5", "0.05"),
    Quantity("p_dyn", "pressure of moving air brought to rest", "Pa", "Pa", "psf", "50 Pa", "1000 Pa", "10 Pa"),
    Quantity("p_wind", "wind pressure", "Pa", "Pa", "psf", "50 Pa", "1000 Pa", "10 Pa"),
    Quantity("c_f", "force coefficient of the shape", "", "", "", "0.7", "2", "0.1"),
    Quantity("b_face", "width of the face to the wind", "m", "mm", "in", "200 mm", "1200 mm", "50 mm"),
    Quantity("h_face", "height of the face to the wind", "m", "mm", "in", "600 mm", "2000 mm", "50 mm"),
    Quantity("F_wind", "force of the wind", "N", "N", "lbf", "20 N", "2000 N", "10 N"),
    Quantity("f_wind", "tipping factor in wind", "", "", "", "0.5", "5", "0.1"),
    Quantity("V_f", "volume of the foam", "m3", "L", "US gal", "10 L", "120 L", "5 L"),
    Quantity("rho_f", "density of the foam", "kg/m3", "kg/m3", "lb/ft3", "15 kg/m3", "40 kg/m3", "1 kg/m3"),
    Quantity("F_buoy", "buoyancy: weight of the water pushed aside", "N", "N", "lbf", "100 N", "12000 N", "10 N"),
    Quantity("F_up", "uplift of the foam", "N", "N", "lbf", "100 N", "1200 N", "10 N"),
    Quantity("V_p", "volume of the pebbles, with their gaps", "m3", "L", "US gal", "10 L", "160 L", "5 L"),
    Quantity("F_peb", "weight of pebbles under water", "N", "N", "lbf", "100 N", "1600 N", "10 N"),
    Quantity("f_hold", "hold-down ratio: weight under water over uplift", "", "", "", "1", "1.6", "0.05"),
    Quantity("V_disp", "volume of the tank that is under water", "m3", "L", "US gal", "300 L", "1200 L", "10 L"),
    Quantity("m_t", "mass that presses down, without ballast", "kg", "kg", "lb", "20 kg", "120 kg", "5 kg"),
    Quantity("m_bal", "mass of ballast", "kg", "kg", "lb", "100 kg", "2500 kg", "10 kg"),
    Quantity("h_gw", "ground water above the floor", "m", "mm", "in", "100 mm", "400 mm", "10 mm"),
    Quantity("F_net", "net uplift", "N", "N", "lbf", "100 N", "12000 N", "100 N"),
    Quantity("f_float", "flotation factor: mass that holds down over mass of water pushed aside", "", "", "", "0.05", "2", "0.05"),
    # pipes and pumps
    Quantity("d_pipe", "true inside diameter of the pipe or hose", "m", "mm", "in", "19 mm", "40 mm", "1 mm"),
    Quantity("L_pipe", "length of the pipe or hose", "m", "m", "ft", "2 m", "12 m", "0.5 m"),
    Quantity("A_pipe", "cross-section of the pipe", "m2", "cm2", "in2", "2 cm2", "15 cm2", "0.5 cm2"),
    Quantity("r_p", "distance from the middle of the pipe", "m", "mm", "in", "1 mm", "9 mm", "0.5 mm"),
    Quantity("u_r", "speed in the pipe at a distance from its middle", "m/s", "m/s", "ft/s", "0.05 m/s", "2 m/s", "0.05 m/s"),
    Quantity("tau_r", "shear stress in the pipe at a distance from its middle", "Pa", "Pa", "Pa", "0.1 Pa", "20 Pa", "0.1 Pa"),
    Quantity("tau_w", "shear stress at the wall of the pipe", "Pa", "Pa", "Pa", "0.1 Pa", "20 Pa", "0.1 Pa"),
    Quantity("Re", "Reynolds number of the flow in the pipe", "", "", "", "5000", "80000", "1000"),
    Quantity("f", "friction factor (Darcy's, four times Fanning's)", "", "", "", "0.018", "0.034", "0.001"),
    Quantity("k_s", "roughness of the inside of the pipe", "m", "mm", "in", "0.0015 mm", "0.15 mm", "0.0005 mm"),
    Quantity("C_HW", "Hazen-Williams coefficient", "", "", "", "100", "150", "5"),
    Quantity(
        "k_HW",
        "Hazen-Williams constant",
        "m^-0.685 s^1.852",
        "m^-0.685 s^1.852",
        "ft^-0.685 s^1.852",
        value="4.727 ft^-0.685 s^1.852",
        note="4.727 in feet and cubic feet a second, EPANET 2.2 User Manual, Table 3.1",
    ),
    Quantity("h_f", "head lost to friction in the pipe", "m", "m", "ft", "0.05 m", "1.5 m", "0.05 m"),
    Quantity("h_v", "velocity head in the pipe", "m", "mm", "in", "5 mm", "150 mm", "5 mm"),
    Quantity("h_m", "head lost in fittings", "m", "m", "ft", "0.02 m", "0.8 m", "0.01 m"),
    Quantity("h_boil", "height to which water wells up over an outlet", "m", "mm", "in", "5 mm", "150 mm", "5 mm"),
    Quantity("K", "loss coefficient of the fittings together, for the speed in this pipe", "", "", "", "0.5", "10", "0.5"),
    Quantity("L_eq", "length of pipe that loses as much as the fittings", "m", "m", "ft", "0.2 m", "15 m", "0.1 m"),
    Quantity("Q_1", "flow at which the loss is known", "m3/s", "L/min", "US gal/min", "20 L/min", "40 L/min", "1 L/min"),
    Quantity("Q_2", "flow at which the loss is wanted", "m3/s", "L/min", "US gal/min", "45 L/min", "80 L/min", "1 L/min"),
    Quantity("h_f1", "friction head lost at the flow where it is known", "m", "m", "ft", "0.3 m", "1.2 m", "0.05 m"),
    Quantity("h_f2", "friction head lost at the other flow", "m", "m", "ft", "0.3 m", "8 m", "0.05 m"),
    Quantity("d_1", "bore before the change of bore", "m", "mm", "in", "13 mm", "25 mm", "1 mm"),
    Quantity("d_2", "bore after the change of bore", "m", "mm", "in", "26 mm", "50 mm", "1 mm"),
    Quantity("v_1", "speed before the change of bore", "m/s", "m/s", "ft/s", "1.5 m/s", "3 m/s", "0.1 m/s"),
    Quantity("v_2", "speed after the change of bore", "m/s", "m/s", "ft/s", "0.2 m/s", "1.4 m/s", "0.1 m/s"),
    Quantity("p_1", "pressure before the change of bore", "Pa", "kPa", "psi", "5 kPa", "30 kPa", "1 kPa"),
    Quantity("p_2", "pressure after the change of bore", "Pa", "kPa", "psi", "5 kPa", "30 kPa", "1 kPa"),
    Quantity("K_1", "loss coefficient for the speed in the first bore", "", "", "", "0.1", "3", "0.1"),
    Quantity("K_2", "loss coefficient for the speed in the second bore", "", "", "", "0.1", "30", "0.1"),
    Quantity("z_s", "static lift: from the water in the reservoir up to where the pump delivers", "m", "m", "ft", "0.4 m", "1.4 m", "0.05 m"),
    Quantity("h_sub", "depth of the pump under the water surface", "m", "mm", "in", "100 mm", "600 mm", "50 mm"),
    Quantity("H_t", "total dynamic head that the flow needs", "m", "m", "ft", "0.5 m", "4 m", "0.05 m"),
    Quantity("k_sys", "head lost in pipe and fittings for each square of the flow", "s2/m5", "s2/m5", "s2/ft5", "4e5 s2/m5", "2e6 s2/m5", "1e5 s2/m5"),
    Quantity("H_pump", "head that the pump gives", "m", "m", "ft", "0.5 m", "4 m", "0.05 m"),
    Quantity("H_0", "shut-off head: the pump's head at no flow", "m", "m", "ft", "2 m", "4.5 m", "0.1 m"),
    Quantity("Q_max", "the pump's flow at no head", "m3/s", "L/min", "US gal/min", "30 L/min", "120 L/min", "5 L/min"),
    Quantity("c_pump", "fall of the pump's head for each square of the flow", "s2/m5", "s2/m5", "s2/ft5", "8e5 s2/m5", "3e6 s2/m5", "1e5 s2/m5"),
    Quantity("p_pump", "pressure that the pump gives", "Pa", "kPa", "psi", "5 kPa", "40 kPa", "1 kPa"),
    Quantity("P_hyd", "hydraulic power: what the water receives", "W", "W", "hp", "2 W", "40 W", "1 W"),
    Quantity("P_best", "the most hydraulic power that a pump with these label numbers can give", "W", "W", "hp", "2 W", "40 W", "1 W"),
    Quantity("P_in", "power that the pump takes in", "W", "W", "hp", "10 W", "150 W", "5 W"),
    Quantity("eta_pump", "wire-to-water efficiency: what the water receives over what the pump takes in", "", "", "", "0.1", "0.55", "0.05"),
    Quantity("r_plate", "nameplate ratio: best hydraulic power over the power taken in", "", "", "", "0.05", "0.6", "0.01"),
    # pump laws
    Quantity("n_1", "turning speed at which the pump is known", "s^-1", "min^-1", "min^-1", "2400 min^-1", "3600 min^-1", "50 min^-1"),
    Quantity("n_2", "turning speed that is wanted", "s^-1", "min^-1", "min^-1", "1200 min^-1", "2300 min^-1", "50 min^-1"),
    Quantity("d_imp", "diameter of the impeller", "m", "mm", "in", "30 mm", "80 mm", "1 mm"),
    Quantity("c_phi", "flow coefficient: flow over turning speed and the cube of the impeller", "", "", "", "0.02", "0.2", "0.01"),
    Quantity("c_psi", "head coefficient: energy over the squares of turning speed and impeller", "", "", "", "2", "7", "0.1"),
    Quantity("Q_n1", "flow at the known turning speed", "m3/s", "L/min", "US gal/min", "20 L/min", "120 L/min", "1 L/min"),
    Quantity("Q_n2", "flow at the turning speed wanted", "m3/s", "L/min", "US gal/min", "5 L/min", "100 L/min", "1 L/min"),
    Quantity("H_n1", "head at the known turning speed", "m", "m", "ft", "1 m", "5 m", "0.1 m"),
    Quantity("H_n2", "head at the turning speed wanted", "m", "m", "ft", "0.2 m", "4 m", "0.1 m"),
    Quantity("P_n1", "power that the pump takes in at the known turning speed", "W", "W", "hp", "20 W", "200 W", "5 W"),
    Quantity("P_n2", "power that the pump takes in at the turning speed wanted", "W", "W", "hp", "2 W", "150 W", "1 W"),
    Quantity("Q_each", "flow of each of two equal pumps", "m3/s", "L/min", "US gal/min", "5 L/min", "60 L/min", "1 L/min"),
    Quantity("H_two", "head that two equal pumps give together", "m", "m", "ft", "0.5 m", "8 m", "0.05 m"),
    Quantity("eta_wet", "efficiency of the pump alone, from its shaft to the water", "", "", "", "0.2", "0.75", "0.05", most="1"),
    Quantity("eta_mot", "efficiency of the motor", "", "", "", "0.4", "0.95", "0.05", most="1"),
    Quantity("eta_drive", "efficiency of the drive: what sets the turning speed", "", "", "", "0.9", "1", "0.01", most="1"),
    Quantity("z_suct", "height of the pump above the water that it draws from, below zero where it stands under", "m", "m", "ft", "-1 m", "3 m", "0.1 m"),
    Quantity("h_suct", "head lost before the pump", "m", "m", "ft", "0.05 m", "2 m", "0.05 m"),
    Quantity("p_boil", "pressure at which the water boils", "Pa", "kPa", "psi", "0.6 kPa", "7.4 kPa", "0.1 kPa"),
    Quantity("H_inl", "head of the water where it enters the pump, from no pressure at all", "m", "m", "ft", "4 m", "11 m", "0.1 m"),
    Quantity("H_npsh", "net positive suction head available", "m", "m", "ft", "2 m", "11 m", "0.1 m"),
    # rill and steps
    Quantity("w_rill", "width of the rill", "m", "mm", "in", "100 mm", "500 mm", "10 mm"),
    Quantity("y_n", "normal depth: depth of water that runs steadily down the rill", "m", "mm", "in", "5 mm", "60 mm", "1 mm"),
    Quantity("S_rill", "fall of the rill for each unit of its length", "", "%", "%", "0.2 %", "5 %", "0.1 %"),
    Quantity("n_Manning", "Manning coefficient of the surface", "", "", "", "0.011", "0.03", "0.001"),
    Quantity(
        "k_M", "Manning constant", "m^(1/3)/s", "m^(1/3)/s", "ft^(1/3)/s", value="1 m^(1/3)/s", note="1.486 in feet, so that coefficients are the same in both"
    ),
    Quantity("A_rill", "cross-section of the water in the rill", "m2", "cm2", "in2", "5 cm2", "300 cm2", "1 cm2"),
    Quantity("l_wet", "wetted perimeter: length of bed and sides that the water touches across the rill", "m", "mm", "in", "110 mm", "620 mm", "5 mm"),
    Quantity("R_h", "hydraulic radius: cross-section of the water over its wetted perimeter", "m", "mm", "in", "4 mm", "50 mm", "1 mm"),
    Quantity("v_wave", "speed of a long wave on shallow water", "m/s", "m/s", "ft/s", "0.2 m/s", "0.8 m/s", "0.01 m/s"),
    Quantity("Fr", "Froude number: speed of the water over the speed of a long wave", "", "", "", "0.2", "3", "0.05"),
    Quantity("R_bend", "radius of a bend, to the middle of the rill", "m", "m", "ft", "0.5 m", "4 m", "0.1 m"),
    Quantity("x_bend", "distance across the rill from the middle, outwards", "m", "mm", "in", "10 mm", "250 mm", "10 mm"),
    Quantity("y_x", "rise of the water above its mean, at a distance across the rill", "m", "mm", "in", "0.5 mm", "40 mm", "0.5 mm"),
    Quantity("h_bend", "rise of the water at the outside of a bend", "m", "mm", "in", "0 mm", "40 mm", "1 mm"),
    Quantity("h_side", "height of the sides of the rill above its bed", "m", "mm", "in", "60 mm", "150 mm", "5 mm"),
    Quantity("h_free", "freeboard: side of the rill that stands above the water", "m", "mm", "in", "-40 mm", "140 mm", "5 mm"),
    Quantity("L_rill", "length of the rill", "m", "m", "ft", "1 m", "10 m", "0.1 m"),
    Quantity("V_rill", "water in the rill", "m3", "L", "US gal", "0.5 L", "80 L", "0.5 L"),
    Quantity("w_tread", "tread of a step: from its edge to the next edge", "m", "mm", "in", "150 mm", "800 mm", "10 mm"),
    Quantity("r_tread", "tread of a step over the throw of the water", "", "", "", "0.5", "5", "0.1"),
    # a design: levels and the ratios it is judged by
    Quantity("z_rim", "level of the rim, to the datum", "m", "mm", "in", "-200 mm", "1500 mm", "10 mm"),
    Quantity("z_low", "lowest water level while running, to the datum", "m", "mm", "in", "-900 mm", "-100 mm", "10 mm"),
    Quantity("Q_req", "flow wanted", "m3/s", "L/min", "US gal/min", "5 L/min", "120 L/min", "1 L/min"),
    Quantity("Q_duty", "duty flow: what the pump really sends", "m3/s", "L/min", "US gal/min", "5 L/min", "120 L/min", "1 L/min"),
    Quantity("r_duty", "duty flow over flow wanted", "", "", "", "0.5", "3", "0.01"),
    Quantity("r_lift", "static lift over shut-off head", "", "", "", "0.05", "0.95", "0.01"),
    Quantity("r_loss", "share of the total head that pipe and fittings take", "", "", "", "0.05", "0.9", "0.01"),
    Quantity("r_level", "rim error over head", "", "", "", "0.05", "2", "0.01"),
    Quantity("r_kern", "eccentricity over the edge of the kern", "", "", "", "0.05", "2", "0.01"),
    Quantity("w_apron", "width of the apron: how far the stone reaches beyond the pit", "m", "mm", "in", "200 mm", "900 mm", "10 mm"),
    Quantity("h_fall", "fall of the water outside the vessel", "m", "mm", "in", "100 mm", "900 mm", "10 mm"),
    Quantity("k_splash", "splash factor: apron wanted for each metre of fall", "", "", "", "0.5", "1.5", "0.1"),
    Quantity("r_apron", "apron over the apron that the fall wants", "", "", "", "0.3", "3", "0.05"),
    # falling water
    Quantity("d_out", "bore of the outlet", "m", "mm", "in", "13 mm", "60 mm", "1 mm"),
    Quantity("t_fall", "time of fall", "s", "s", "s", "0.1 s", "0.5 s", "0.01 s"),
    # water in transit
    Quantity("A_v", "water surface of the vessel", "m2", "m2", "ft2", "0.1 m2", "0.9 m2", "0.01 m2"),
    Quantity("V_rim", "water that stands above the rim", "m3", "L", "US gal", "0.2 L", "10 L", "0.1 L"),
    Quantity("z_mouth", "depth of the hose mouth below the rim", "m", "mm", "in", "5 mm", "100 mm", "5 mm"),
    Quantity("V_siph", "water that siphons back through the hose", "m3", "L", "US gal", "1 L", "60 L", "0.5 L"),
    Quantity("A_side", "wet face of the vessel or stone", "m2", "m2", "ft2", "0.2 m2", "2 m2", "0.01 m2"),
    Quantity("V_film", "water in the film on the face", "m3", "L", "US gal", "0.1 L", "1 L", "0.05 L"),
    Quantity("V_sheet", "water in the falling sheet", "m3", "L", "US gal", "0.1 L", "2 L", "0.05 L"),
    Quantity("V_pc", "water in the pipe", "m3", "L", "US gal", "0.5 L", "15 L", "0.1 L"),
    Quantity("A_run", "area of the stone that water runs through", "m2", "m2", "ft2", "0.4 m2", "4 m2", "0.05 m2"),
    Quantity("n_hold", "share of the stone layer that running water fills", "", "", "", "0.02", "0.05", "0.005", most="1"),
    Quantity("V_hold", "water on its way through the stone", "m3", "L", "US gal", "0.2 L", "10 L", "0.1 L"),
    Quantity("V_tr", "water in transit: up in the feature while the pump runs, back when it stops", "m3", "L", "US gal", "5 L", "60 L", "1 L"),
    Quantity("t_full", "time from the start of the pump until the vessel is full to its rim", "s", "s", "s", "5 s", "300 s", "1 s"),
    Quantity("H_set", "head over the rim once the flow has settled", "m", "mm", "in", "2 mm", "8 mm", "0.1 mm"),
    Quantity("k_H", "share of the settled head that is reached", "", "", "", "0.2", "0.98", "0.01", most="1"),
    Quantity("Q_rim", "flow over the rim before it has settled", "m3/s", "L/min", "US gal/min", "1 L/min", "120 L/min", "1 L/min"),
    Quantity("t_rise", "time since the water came to the rim", "s", "s", "s", "0.5 s", "60 s", "0.5 s"),
    Quantity("V_way", "water on its way back: film, falling sheet and stone together", "m3", "L", "US gal", "0.5 L", "15 L", "0.1 L"),
    Quantity("t_way", "mean time on the way back, from the rim to the reservoir", "s", "s", "s", "2 s", "30 s", "0.5 s"),
    Quantity("Q_back", "flow that comes back into the reservoir", "m3/s", "L/min", "US gal/min", "1 L/min", "120 L/min", "1 L/min"),
    Quantity("t_on", "time since water first went over the rim", "s", "s", "s", "1 s", "30 s", "0.5 s"),
    Quantity("h_run", "running level: water with the pump on, above the floor", "m", "mm", "in", "250 mm", "400 mm", "5 mm"),
    Quantity("h_over", "overflow level, above the floor", "m", "mm", "in", "410 mm", "600 mm", "5 mm"),
    Quantity("r_back", "drain-back ratio: free space over the water that comes back", "", "", "", "0.5", "8", "0.01"),
    # water balance
    Quantity("E_0", "reference evapotranspiration: what short, well-watered grass gives off", "m/s", "mm/day", "in/day", "1 mm/day", "10 mm/day", "0.5 mm/day"),
    Quantity("K_E", "evaporation coefficient: the wet surface over the reference", "", "", "", "0.7", "1.5", "0.05"),
    Quantity("E_w", "evaporation of the wet surface", "m/s", "mm/day", "in/day", "1 mm/day", "12 mm/day", "0.5 mm/day"),
    Quantity("A_wet", "wetted area: every surface that is wet and open to the air", "m2", "m2", "ft2", "0.8 m2", "5 m2", "0.1 m2"),
    Quantity("Q_splash", "splash and drift: water that is blown or thrown out", "m3/s", "L/day", "US gal/day", "1 L/day", "8 L/day", "0.5 L/day"),
    Quantity("Q_loss", "loss of water", "m3/s", "L/day", "US gal/day", "5 L/day", "60 L/day", "1 L/day"),
    Quantity("t_dry", "time without top-up", "s", "day", "day", "1 day", "30 day", "1 day"),
    Quantity("r_day", "share of the usable water that is lost in a day", "s^-1", "%/day", "%/day", "1 %/day", "40 %/day", "1 %/day"),
    Quantity("V_res", "reserve: water kept for the days without top-up", "m3", "L", "US gal", "60 L", "300 L", "5 L"),
    Quantity("h_rain", "depth of rain", "m", "mm", "in", "5 mm", "80 mm", "1 mm"),
    Quantity("A_catch", "catch area: plan area whose rain runs to the reservoir", "m2", "m2", "ft2", "0.9 m2", "6 m2", "0.1 m2"),
    Quantity("k_run", "share of the rain that reaches the reservoir", "", "", "", "0.7", "1", "0.05", most="1"),
    Quantity("V_rain", "rain that reaches the reservoir", "m3", "L", "US gal", "10 L", "400 L", "5 L"),
    Quantity("V_free", "free space: room for water up to the overflow", "m3", "L", "US gal", "10 L", "100 L", "1 L"),
    Quantity("V_spill", "water that leaves by the overflow", "m3", "L", "US gal", "10 L", "400 L", "5 L"),
    Quantity("R_day", "mean rain", "m/s", "mm/day", "in/day", "0.2 mm/day", "2 mm/day", "0.1 mm/day"),
    Quantity("t_gap", "time between two top-ups", "s", "day", "day", "2 day", "14 day", "1 day"),
    Quantity("V_top", "top-up: water to add", "m3", "L", "US gal", "5 L", "300 L", "5 L"),
    Quantity("V_in", "space inside the vessel up to its rim", "m3", "L", "US gal", "60 L", "250 L", "5 L"),
    Quantity("V_treat", "treatment volume: all the water that goes round", "m3", "L", "US gal", "100 L", "1200 L", "5 L"),
    # ground
    Quantity("L_out", "outside length of the box", "m", "mm", "in", "700 mm", "2600 mm", "2 mm"),
    Quantity("W_out", "outside width of the box", "m", "mm", "in", "600 mm", "1900 mm", "2 mm"),
    Quantity("t_work", "working space between box and ground, on each side", "m", "mm", "in", "100 mm", "300 mm", "10 mm"),
    Quantity("L_dig", "length of the pit as dug", "m", "mm", "in", "1200 mm", "3200 mm", "10 mm"),
    Quantity("W_dig", "width of the pit as dug", "m", "mm", "in", "900 mm", "2200 mm", "10 mm"),
    Quantity("D_dig", "depth of the pit as dug, below the finished ground", "m", "mm", "in", "450 mm", "1000 mm", "10 mm"),
    Quantity("h_bl", "height of the blocks", "m", "mm", "in", "240 mm", "600 mm", "10 mm"),
    Quantity("t_sand", "thickness of the sand", "m", "mm", "in", "20 mm", "50 mm", "5 mm"),
    Quantity("t_sub", "thickness of the sub-base", "m", "mm", "in", "75 mm", "150 mm", "5 mm"),
    Quantity("d_diag", "diagonal of the pit", "m", "mm", "in", "1400 mm", "4000 mm", "5 mm"),
    Quantity("V_dig", "volume of the hole: soil as it lies in the ground", "m3", "m3", "yd3", "0.5 m3", "3 m3", "0.1 m3"),
    Quantity("s_swell", "swell: share by which soil grows when it is dug", "", "", "", "0.1", "0.4", "0.05"),
    Quantity("V_loose", "volume of the heap: soil as it lies loose", "m3", "m3", "yd3", "0.6 m3", "4 m3", "0.1 m3"),
    Quantity("rho_bank", "density of soil in the ground", "kg/m3", "kg/m3", "lb/ft3", "1600 kg/m3", "2000 kg/m3", "50 kg/m3"),
    Quantity("rho_loose", "density of loose soil", "kg/m3", "kg/m3", "lb/ft3", "1200 kg/m3", "1550 kg/m3", "50 kg/m3"),
    Quantity("m_spoil", "mass of spoil", "kg", "kg", "lb", "800 kg", "6000 kg", "50 kg"),
    Quantity("k_comp", "compaction factor: loose volume over compacted volume", "", "", "", "1.1", "1.4", "0.05"),
    Quantity("s_lost", "share of the loose material that is lost on the way", "", "", "", "0", "0.1", "0.01", most="1"),
    Quantity("rho_fill", "density of the fill as placed", "kg/m3", "kg/m3", "lb/ft3", "1650 kg/m3", "2100 kg/m3", "50 kg/m3"),
    Quantity("V_fill", "volume of a compacted layer", "m3", "m3", "yd3", "0.1 m3", "1 m3", "0.05 m3"),
    Quantity("m_fill", "mass of fill to order", "kg", "kg", "lb", "150 kg", "2000 kg", "10 kg"),
    Quantity("phi_s", "friction angle of the soil", "rad", "deg", "deg", "25 deg", "41 deg", "1 deg"),
    Quantity("K_soil", "coefficient of earth pressure: push to the side over weight above", "", "", "", "0.2", "1", "0.05", most="1"),
    Quantity("p_over", "pressure of the soil above", "Pa", "kPa", "psf", "1 kPa", "20 kPa", "0.5 kPa"),
    Quantity("p_side", "pressure of the soil to the side", "Pa", "kPa", "psf", "0.5 kPa", "10 kPa", "0.5 kPa"),
    Quantity("z_fill", "depth below the top of the fill", "m", "mm", "in", "10 mm", "900 mm", "10 mm"),
    Quantity("F_fill", "thrust of fill on a side of the box", "N", "N", "lbf", "100 N", "12000 N", "50 N"),
    Quantity("k_foot", "footing factor: distance for each unit of depth below the footing", "", "", "", "1", "1.5", "0.1"),
    Quantity("D_foot", "depth of a footing below the finished ground", "m", "mm", "in", "200 mm", "600 mm", "50 mm"),
    Quantity("x_foot", "distance from a footing", "m", "m", "ft", "0.1 m", "1.2 m", "0.05 m"),
    Quantity("d_stem", "diameter of a stem, 1.5 m above the ground", "m", "mm", "in", "50 mm", "1000 mm", "10 mm"),
    Quantity("r_root", "radius of the roots to keep clear of", "m", "m", "ft", "0.6 m", "15 m", "0.1 m"),
    Quantity("A_root", "root protection area", "m2", "m2", "ft2", "1 m2", "707 m2", "1 m2"),
    Quantity("k_dig", "time of digging for each cubic metre in the ground", "s/m3", "h/m3", "h/yd3", "1.2 h/m3", "3.6 h/m3", "0.1 h/m3"),
    Quantity("t_dig", "time of digging", "s", "h", "h", "1 h", "12 h", "0.5 h"),
    # box, liner and stone
    Quantity("L_bl", "length of the blocks together", "m", "mm", "in", "600 mm", "2400 mm", "50 mm"),
    Quantity("t_li", "thickness of the lining: liner and fleece together", "m", "mm", "in", "5 mm", "15 mm", "1 mm"),
    Quantity("c_side", "clearance between lining and blocks, on each side", "m", "mm", "in", "5 mm", "25 mm", "1 mm"),
    Quantity("L_in", "inside length of the box", "m", "mm", "in", "600 mm", "2500 mm", "10 mm"),
    Quantity("W_in", "inside width of the box", "m", "mm", "in", "500 mm", "1800 mm", "10 mm"),
    Quantity("t_pan", "thickness of a panel of the box", "m", "mm", "in", "12 mm", "25 mm", "1 mm"),
    Quantity("w_trim", "trim margin: what the liner is cut longer than the apron", "m", "mm", "in", "100 mm", "150 mm", "5 mm"),
    Quantity("l_end", "liner beyond the floor, at each end", "m", "mm", "in", "500 mm", "1900 mm", "10 mm"),
    Quantity("l_cut", "length of the liner as cut", "m", "m", "ft", "1.5 m", "6 m", "0.05 m"),
    Quantity("w_cut", "width of the liner as cut", "m", "m", "ft", "1.5 m", "6 m", "0.05 m"),
    Quantity("A_cut", "area of the liner as cut", "m2", "m2", "ft2", "4 m2", "25 m2", "0.5 m2"),
    Quantity("rho_liner", "density of the liner", "kg/m3", "kg/m3", "lb/ft3", "930 kg/m3", "1400 kg/m3", "10 kg/m3"),
    Quantity("t_sheet", "thickness of the liner alone", "m", "mm", "in", "0.5 mm", "1.5 mm", "0.05 mm"),
    Quantity("m_liner", "mass of the liner", "kg", "kg", "lb", "4 kg", "40 kg", "0.5 kg"),
    Quantity("s_back", "set-back: how far the top of a side stands out from its foot", "m", "mm", "in", "100 mm", "600 mm", "10 mm"),
    Quantity("l_side", "length of a sloping side", "m", "mm", "in", "250 mm", "1100 mm", "10 mm"),
    Quantity("A_sides", "area of the sides of the box", "m2", "m2", "ft2", "0.5 m2", "6 m2", "0.1 m2"),
    Quantity("A_under", "area of the fleece under the liner", "m2", "m2", "ft2", "3 m2", "18 m2", "0.1 m2"),
    Quantity("A_fl", "area of the fleece, both layers", "m2", "m2", "ft2", "4 m2", "25 m2", "0.1 m2"),
    Quantity("A_bare", "area left bare of stone, under the plinth", "m2", "m2", "ft2", "0.1 m2", "0.6 m2", "0.01 m2"),
    Quantity("A_cov", "area to cover with stone", "m2", "m2", "ft2", "1.5 m2", "8 m2", "0.1 m2"),
    Quantity("l_sheet", "way round on the flat liner, at a distance from the edge of the floor", "m", "m", "ft", "2 m", "12 m", "0.1 m"),
    Quantity("l_round", "way round the pit", "m", "m", "ft", "1.5 m", "9 m", "0.1 m"),
    Quantity("l_over", "liner to spare, along a line round the side", "m", "mm", "in", "100 mm", "6000 mm", "10 mm"),
    Quantity("N_fold", "folds of a pleat that lie over each other", "", "", "", "1", "3", "1"),
    Quantity("w_fold", "reach of a pleat, laid flat along the side", "m", "mm", "in", "30 mm", "600 mm", "5 mm"),
    Quantity("n_lay", "layers of liner over each other", "", "", "", "1", "7", "0.1"),
    Quantity("t_fold", "thickness of the folded liner, pressed flat", "m", "mm", "in", "1 mm", "12 mm", "0.1 mm"),
    Quantity("A_fold", "liner that is folded away", "m2", "m2", "ft2", "0.1 m2", "6 m2", "0.05 m2"),
    Quantity("N_pleat", "number of pleats round a circle, before rounding up", "", "", "", "4", "75", "1"),
    Quantity("s_waste", "waste: share that is bought and not used", "", "", "", "0.05", "0.25", "0.01"),
    Quantity("m_stone", "mass of stone to order", "kg", "kg", "lb", "150 kg", "1500 kg", "10 kg"),
    # electrical supply
    Quantity("U_s", "supply voltage", "V", "V", "V", "12 V", "240 V", "12 V"),
    Quantity("k_pf", "power factor", "", "", "", "0.6", "0.95", "0.05", most="1"),
    Quantity("I_c", "current in the cable", "A", "A", "A", "0.1 A", "6 A", "0.1 A"),
    Quantity("u_c", "drop for each ampere and metre of cable, both conductors counted", "V/A/m", "mV/A/m", "mV/A/ft", "3 mV/A/m", "44 mV/A/m", "1 mV/A/m"),
    Quantity("L_c", "length of the cable, one way", "m", "m", "ft", "5 m", "60 m", "1 m"),
    Quantity("U_d", "voltage drop", "V", "V", "V", "0.02 V", "8 V", "0.02 V"),
    Quantity("r_drop", "voltage drop as a share of the supply", "", "%", "%", "0.05 %", "8 %", "0.05 %"),
    Quantity("T_c", "temperature of the conductor", "K", "degC", "degF", "20 degC", "90 degC", "1 K"),
    Quantity("T_cold", "temperature at which resistance is tabled", "K", "degC", "degF", value="20 degC", note="IEC 60028"),
    Quantity(
        "T_zero",
        "temperature at which the straight line for copper meets zero resistance",
        "K",
        "degC",
        "degF",
        value="-234.5 degC",
        note="copper, from the coefficient 0.00393 at 20 degC, IEC 60028, from memory",
    ),
    Quantity("r_cold", "resistance of one conductor for each metre, at 20 degC", "ohm/m", "ohm/km", "ohm/kft", "1 ohm/km", "14 ohm/km", "0.1 ohm/km"),
    Quantity("r_warm", "resistance of one conductor for each metre, warm", "ohm/m", "ohm/km", "ohm/kft", "1 ohm/km", "16 ohm/km", "0.1 ohm/km"),
    Quantity("R_loop", "resistance of the cable there and back", "ohm", "ohm", "ohm", "0.01 ohm", "2 ohm", "0.01 ohm"),
    Quantity("L_route", "length of the cord's route, up and down included", "m", "m", "ft", "3 m", "15 m", "0.1 m"),
    Quantity("l_drip", "cord for the drip loop", "m", "m", "ft", "0.2 m", "0.5 m", "0.1 m"),
    Quantity("l_slack", "slack of the cord to lift the pump out", "m", "m", "ft", "0.8 m", "1.5 m", "0.1 m"),
    Quantity("L_cord", "length of the cord", "m", "m", "ft", "3 m", "20 m", "0.1 m"),
    Quantity("t_day", "running time each day", "s", "h", "h", "4 h", "24 h", "1 h"),
    Quantity("N_day", "days of running in a year", "", "", "", "180", "365", "1"),
    Quantity("t_run", "running time in a year", "s", "h", "h", "700 h", "8760 h", "10 h"),
    Quantity("E_year", "energy used in a year", "J", "kWh", "kWh", "20 kWh", "1000 kWh", "5 kWh"),
    Quantity("c_el", "price of electricity", "cur/J", "cur/kWh", "cur/kWh", "0.15 cur/kWh", "0.45 cur/kWh", "0.01 cur/kWh"),
    Quantity("C_run", "running cost in a year", "cur", "cur", "cur", "5 cur", "400 cur", "1 cur"),
    # water that leaves an edge, falls and lands
    Quantity("y_b", "depth of the water at the brink", "m", "mm", "in", "3 mm", "20 mm", "0.5 mm"),
    Quantity("v_b", "speed with which water leaves the edge or outlet", "m/s", "m/s", "ft/s", "0.3 m/s", "1.5 m/s", "0.05 m/s"),
    Quantity("x_reach", "reach of the splashes from the foot of the fall, in still air", "m", "mm", "in", "100 mm", "1200 mm", "10 mm"),
    Quantity("x_throw", "throw: how far out the water lands", "m", "mm", "in", "100 mm", "800 mm", "10 mm"),
    Quantity("v_land", "speed with which water lands", "m/s", "m/s", "ft/s", "1 m/s", "6 m/s", "0.1 m/s"),
    Quantity("y_land", "thickness of the sheet where it lands", "m", "mm", "in", "0.3 mm", "3 mm", "0.1 mm"),
    Quantity("d_top", "thickness of a round stream at the outlet", "m", "mm", "in", "10 mm", "50 mm", "1 mm"),
    Quantity("d_land", "thickness of a round stream where it lands", "m", "mm", "in", "5 mm", "40 mm", "1 mm"),
    Quantity("H_o", "head over the middle of the opening", "m", "mm", "in", "100 mm", "900 mm", "10 mm"),
    Quantity("C_v", "velocity coefficient: real speed over that of free fall", "", "", "", "0.94", "0.99", "0.01"),
    Quantity("p_out", "pressure just before the outlet", "Pa", "kPa", "psi", "5 kPa", "50 kPa", "1 kPa"),
    Quantity("h_jet", "height of a jet in the open", "m", "m", "ft", "0.1 m", "4 m", "0.1 m"),
    Quantity(
        "k_rim",
        "constant of an upright pipe that flows over its rim",
        "m^0.4/s",
        "m^0.4/s",
        "ft^0.4/s",
        value="6.17 US gal in^-2.6/min",
        note="6.17 in US gallons a minute and inches, Water Measurement Manual, ch. 14, s. 13",
    ),
    Quantity(
        "k_jet",
        "constant of an upright pipe that flows as a jet",
        "m^0.48/s",
        "m^0.48/s",
        "ft^0.48/s",
        value="5.01 US gal in^-2.52/min",
        note="5.01 in US gallons a minute and inches, Water Measurement Manual, ch. 14, s. 13",
    ),
    Quantity("x_drift", "drift: how far the wind carries a heavy drop at most", "m", "m", "ft", "0.1 m", "5 m", "0.1 m"),
    Quantity("k_wind", "wind factor of the site for splash", "", "", "", "1", "1.5", "0.1"),
    Quantity("w_need", "apron wanted", "m", "mm", "in", "100 mm", "1500 mm", "10 mm"),
    # openings, draining and filling
    Quantity("C_c", "contraction coefficient: narrowest part of the stream over the opening", "", "", "", "0.6", "0.68", "0.01", most="1"),
    Quantity("A_j", "cross-section of the stream at its narrowest", "m2", "cm2", "in2", "0.5 cm2", "80 cm2", "0.5 cm2"),
    Quantity("h_lo", "head lost at the opening", "m", "mm", "in", "5 mm", "60 mm", "5 mm"),
    Quantity("A_tank", "water surface of the tank that drains", "m2", "m2", "ft2", "0.1 m2", "4 m2", "0.05 m2"),
    Quantity("A_t2", "water surface of the second tank", "m2", "m2", "ft2", "0.1 m2", "4 m2", "0.05 m2"),
    Quantity("H_1", "head at the start", "m", "mm", "in", "300 mm", "900 mm", "1 mm"),
    Quantity("H_2", "head at the end", "m", "mm", "in", "10 mm", "250 mm", "1 mm"),
    Quantity("t_drain", "time of draining", "s", "min", "min", "0.5 min", "60 min", "0.5 min"),
    Quantity("k_n", "flow of the notch at a head of one metre", "m^0.5/s", "m^0.5/s", "ft^0.5/s", "0.3 m^0.5/s", "1.5 m^0.5/s", "0.05 m^0.5/s"),
    Quantity("H_s", "siphon head: from the water down to the mouth of the hose", "m", "mm", "in", "100 mm", "900 mm", "10 mm"),
    Quantity("L_up", "length of a siphon's pipe from its inlet up to the crest", "m", "m", "ft", "0.5 m", "4 m", "0.1 m"),
    Quantity("K_up", "loss coefficient of a siphon's inlet and bends up to the crest", "", "", "", "0.5", "3", "0.1"),
    Quantity("p_crest", "pressure of the water at the crest, from no pressure at all", "Pa", "kPa", "psi", "0.6 kPa", "100 kPa", "0.1 kPa"),
    Quantity("z_crest", "greatest height of a siphon's crest above the water it draws from", "m", "m", "ft", "3 m", "10.3 m", "0.1 m"),
    Quantity("t_fill", "time of filling", "s", "min", "min", "5 min", "60 min", "0.05 min"),
    Quantity("Q_feed", "flow that runs in, such as a top-up valve stuck open", "m3/s", "L/min", "US gal/min", "2 L/min", "20 L/min", "1 L/min"),
    Quantity("Q_over", "flow that the overflow can carry", "m3/s", "L/min", "US gal/min", "20 L/min", "200 L/min", "5 L/min"),
    Quantity("i_rain", "rain intensity", "m/s", "mm/h", "in/h", "20 mm/h", "150 mm/h", "5 mm/h"),
    Quantity("r_over", "overflow ratio: what it can carry over what may come", "", "", "", "0.5", "10", "0.1"),
    Quantity("d_hole", "diameter of the drain hole", "m", "mm", "in", "20 mm", "60 mm", "1 mm"),
    Quantity("s_gap", "width of the gap round a pipe in its hole", "m", "mm", "in", "0.1 mm", "0.5 mm", "0.05 mm"),
    Quantity("L_gap", "length of the gap: thickness of what is drilled", "m", "mm", "in", "20 mm", "60 mm", "5 mm"),
    Quantity("y_g", "distance from the middle of the gap", "m", "mm", "in", "-0.25 mm", "0.25 mm", "0.05 mm"),
    Quantity("u_g", "speed in the gap at a distance from its middle", "m/s", "m/s", "ft/s", "0.01 m/s", "1 m/s", "0.01 m/s"),
    Quantity("tau_g", "shear stress in the gap at a distance from its middle", "Pa", "Pa", "Pa", "0.1 Pa", "20 Pa", "0.1 Pa"),
    Quantity("Q_leak", "leak", "m3/s", "L/h", "US gal/h", "0.2 L/h", "200 L/h", "0.2 L/h"),
    # lifting
    Quantity("m_load_const", "greatest load of the best lift", "kg", "kg", "lb", value="23 kg", note="NIOSH lifting equation, 1993"),
    Quantity("x_close", "distance of the hands in the best lift", "m", "cm", "in", value="25 cm", note="NIOSH lifting equation, 1993"),
    Quantity("z_knuckle", "height of the knuckles in the best lift", "m", "cm", "in", value="75 cm", note="NIOSH lifting equation, 1993"),
    Quantity("c_vert", "what each metre away from that height takes off", "m^-1", "cm^-1", "in^-1", value="0.003 cm^-1", note="NIOSH lifting equation, 1993"),
    Quantity("x_travel", "term for the distance moved", "m", "cm", "in", value="4.5 cm", note="NIOSH lifting equation, 1993"),
    Quantity("x_hand", "distance of the hands in front of the ankles", "m", "cm", "in", "25 cm", "63 cm", "1 cm"),
    Quantity("z_hand", "height of the hands above the floor at the start", "m", "cm", "in", "0 cm", "175 cm", "1 cm"),
    Quantity("d_lift", "distance that the load moves up or down", "m", "cm", "in", "25 cm", "120 cm", "1 cm"),
    Quantity("k_twist", "twist factor: 1 straight ahead, less for each degree of turning", "", "", "", "0.71", "1", "0.01", most="1"),
    Quantity("k_freq", "frequency factor: 1 for rare lifts", "", "", "", "0.5", "1", "0.01", most="1"),
    Quantity("k_grip", "grip factor: 1 good, 0.95 fair, 0.9 poor", "", "", "", "0.9", "1", "0.05", most="1"),
    Quantity("m_rwl", "recommended limit of the lift", "kg", "kg", "lb", "3 kg", "23 kg", "0.5 kg"),
    Quantity("m_load", "mass to be lifted", "kg", "kg", "lb", "5 kg", "600 kg", "1 kg"),
    Quantity("r_lift_index", "lifting index: load over the recommended limit", "", "", "", "0.3", "4", "0.1"),
    Quantity("N_leg", "legs of the sling that carry", "", "", "", "1", "2", "1"),
    Quantity("alpha_leg", "angle of the legs from the level", "rad", "deg", "deg", "30 deg", "75 deg", "1 deg"),
    Quantity("F_leg", "pull in each leg of the sling", "N", "kN", "lbf", "0.2 kN", "6 kN", "0.1 kN"),
    # survey and sound
    Quantity("z_bench", "level of the bench mark", "m", "m", "ft", "-2 m", "20 m", "0.005 m"),
    Quantity("s_first", "reading of the staff on the bench mark", "m", "m", "ft", "0.3 m", "3 m", "0.005 m"),
    Quantity("z_line", "level of the line of sight", "m", "m", "ft", "-2 m", "23 m", "0.005 m"),
    Quantity("s_next", "reading of the staff on a point", "m", "m", "ft", "0.3 m", "3 m", "0.005 m"),
    Quantity("z_point", "level of a point", "m", "m", "ft", "-3 m", "20 m", "0.005 m"),
    Quantity("z_form", "level of the formation", "m", "m", "ft", "-3 m", "20 m", "0.005 m"),
    Quantity("h_cut", "depth still to dig", "m", "mm", "in", "-100 mm", "1000 mm", "5 mm"),
    Quantity("z_eye", "height of the eye", "m", "m", "ft", "1 m", "1.8 m", "0.05 m"),
    Quantity("z_sill", "height of the sill", "m", "m", "ft", "0.5 m", "1.1 m", "0.05 m"),
    Quantity("x_sill", "distance from the eye to the sill", "m", "m", "ft", "1 m", "4 m", "0.1 m"),
    Quantity("x_beyond", "distance from the sill to the feature", "m", "m", "ft", "1 m", "8 m", "0.1 m"),
    Quantity("m_sight", "fall of the line of sight for each unit of distance", "", "", "", "-0.5", "1", "0.05"),
    Quantity("z_hid", "height at the feature up to which the sill hides it", "m", "m", "ft", "-6 m", "1.5 m", "0.05 m"),
    Quantity("r_near", "distance at which the level is known", "m", "m", "ft", "0.5 m", "2 m", "0.1 m"),
    Quantity("r_far", "distance at which the level is wanted", "m", "m", "ft", "3 m", "30 m", "0.5 m"),
    Quantity("J_near", "intensity of sound at the first distance", "W/m2", "W/m2", "W/m2", "1e-7 W/m2", "1e-5 W/m2", "1e-7 W/m2"),
    Quantity("J_far", "intensity of sound at the other distance", "W/m2", "W/m2", "W/m2", "1e-9 W/m2", "1e-7 W/m2", "1e-9 W/m2"),
    Quantity("L_near", "sound level at the first distance, in decibels", "", "", "", "45", "70", "1"),
    Quantity("L_far", "sound level at the other distance, in decibels", "", "", "", "-10", "65", "1"),
    Quantity("L_one", "sound level of the first source, in decibels", "", "", "", "40", "75", "1"),
    Quantity("L_two", "sound level of the second source, in decibels", "", "", "", "40", "75", "1"),
    Quantity("j_one", "intensity of the first source over the threshold of hearing", "", "", "", "1e4", "3e7", "1e4"),
    Quantity("j_two", "intensity of the second source over the threshold of hearing", "", "", "", "1e4", "3e7", "1e4"),
    Quantity("r_J", "ratio of intensities: after over before", "", "", "", "0.1", "10", "0.1"),
    Quantity("L_diff", "change of the sound level, in decibels", "", "", "", "-10", "10", "0.1"),
    Quantity("L_sum", "sound level of both sources, in decibels", "", "", "", "40", "80", "1"),
    # cost
    Quantity("m_net", "net mass: what will be used", "kg", "kg", "lb", "100 kg", "1500 kg", "5 kg"),
    Quantity("m_gross", "gross mass: what has to be bought", "kg", "kg", "lb", "100 kg", "2000 kg", "5 kg"),
    Quantity("m_bag", "mass of one bag", "kg", "kg", "lb", "15 kg", "25 kg", "5 kg"),
    Quantity("N_bag", "number of bags before rounding up", "", "", "", "4", "100", "1"),
    Quantity("C_dir", "direct cost: materials, hire, disposal, labour", "cur", "cur", "cur", "400 cur", "4000 cur", "10 cur"),
    Quantity("s_cont", "contingency as a share of the direct cost", "", "%", "%", "10 %", "20 %", "1 %"),
    Quantity("C_est", "cost with contingency", "cur", "cur", "cur", "500 cur", "5000 cur", "10 cur"),
    Quantity("s_margin", "margin: profit as a share of the price", "", "%", "%", "10 %", "40 %", "1 %", most="100 %"),
    Quantity("s_mark", "mark-up: profit as a share of the cost", "", "%", "%", "10 %", "70 %", "1 %"),
    Quantity("C_price", "price before tax", "cur", "cur", "cur", "600 cur", "8000 cur", "10 cur"),
    Quantity("N_years", "years of use", "", "", "", "5", "20", "1"),
    Quantity("C_serv", "yearly service: cleaning, water, small parts", "cur", "cur", "cur", "20 cur", "300 cur", "5 cur"),
    Quantity("C_year", "what each year costs", "cur", "cur", "cur", "30 cur", "600 cur", "5 cur"),
    Quantity("C_life", "cost of a whole life", "cur", "cur", "cur", "800 cur", "20000 cur", "10 cur"),
    Quantity("C_extra", "what the dearer pump costs more", "cur", "cur", "cur", "20 cur", "200 cur", "5 cur"),
    Quantity("C_save", "what it saves each year", "cur", "cur", "cur", "5 cur", "80 cur", "1 cur"),
    Quantity("N_team", "people who work on site", "", "", "", "2", "4", "1"),
    Quantity("t_site", "hours on site", "s", "h", "h", "16 h", "60 h", "1 h"),
    Quantity("c_lab", "rate of pay for an hour of one person", "cur/s", "cur/h", "cur/h", "15 cur/h", "60 cur/h", "1 cur/h"),
    Quantity("C_lab", "cost of labour", "cur", "cur", "cur", "400 cur", "6000 cur", "10 cur"),
    Quantity("s_over", "overhead as a share of the direct cost", "", "%", "%", "5 %", "25 %", "1 %"),
    Quantity("C_full", "direct cost with its overhead", "cur", "cur", "cur", "500 cur", "5000 cur", "10 cur"),
    Quantity("s_tax", "tax as a share of the price", "", "%", "%", "5 %", "25 %", "1 %"),
    Quantity("C_paid", "price with tax: what the client pays", "cur", "cur", "cur", "700 cur", "9000 cur", "10 cur"),
    Quantity("N_pay", "years until the saving has paid for it", "", "", "", "0.5", "20", "0.5"),
    # evaporation from the weather
    Quantity("T_a", "mean air temperature", "K", "degC", "degF", "5 degC", "30 degC", "1 K"),
    Quantity("T_max", "highest air temperature of the day", "K", "degC", "degF", "16 degC", "38 degC", "1 K"),
    Quantity("T_min", "lowest air temperature of the day", "K", "degC", "degF", "2 degC", "15 degC", "1 K"),
    Quantity("T_ice", "temperature at which ice melts", "K", "K", "K", value="273.15 K", note="0 degC"),
    Quantity("T_tet", "temperature constant of Tetens", "K", "K", "K", value="35.85 K", note="273.15 K less the 237.3 of FAO-56, Eq. 11"),
    Quantity("p_tet", "vapour pressure constant of Tetens", "Pa", "kPa", "psi", value="0.6108 kPa", note="FAO-56, Eq. 11"),
    Quantity("p_sat", "vapour pressure of air that is saturated", "Pa", "kPa", "psi", "0.6 kPa", "6 kPa", "0.1 kPa"),
    Quantity("p_sm", "mean vapour pressure of saturated air over the day", "Pa", "kPa", "psi", "1.8 kPa", "4 kPa", "0.05 kPa"),
    Quantity("p_vap", "vapour pressure of the air", "Pa", "kPa", "psi", "0.4 kPa", "1.7 kPa", "0.05 kPa"),
    Quantity("s_vp", "slope of the saturated vapour pressure with temperature", "Pa/K", "kPa/K", "psi/K", "0.06 kPa/K", "0.25 kPa/K", "0.005 kPa/K"),
    Quantity("RH_hi", "highest relative humidity of the day", "", "%", "%", "70 %", "98 %", "1 %", most="100 %"),
    Quantity("RH_lo", "lowest relative humidity of the day", "", "%", "%", "20 %", "65 %", "1 %", most="100 %"),
    Quantity("z_site", "height of the site above the sea", "m", "m", "ft", "0 m", "2000 m", "10 m"),
    Quantity("p_sea", "pressure of the air at the sea", "Pa", "kPa", "psi", value="101.3 kPa", note="FAO-56, Eq. 7"),
    Quantity("T_sea", "temperature of the air at the sea", "K", "K", "K", value="293 K", note="FAO-56, Eq. 7"),
    Quantity("c_lapse", "fall of temperature with height", "K/m", "K/m", "K/ft", value="0.0065 K/m", note="FAO-56, Eq. 7"),
    Quantity("p_air", "pressure of the air", "Pa", "kPa", "psi", "79 kPa", "101 kPa", "0.5 kPa"),
    Quantity("k_psy", "psychrometric constant for each unit of air pressure", "K^-1", "K^-1", "K^-1", value="0.000665 K^-1", note="FAO-56, Eq. 8"),
    Quantity("gamma_p", "psychrometric constant", "Pa/K", "kPa/K", "psi/K", "0.052 kPa/K", "0.068 kPa/K", "0.001 kPa/K"),
    Quantity("v_wz", "wind speed where it is measured", "m/s", "m/s", "ft/s", "0.5 m/s", "6 m/s", "0.1 m/s"),
    Quantity("z_wind", "height of the wind gauge above the ground", "m", "m", "ft", "2 m", "10 m", "0.5 m"),
    Quantity("k_log", "constant of the wind profile over short grass", "m^-1", "m^-1", "ft^-1", value="67.8 m^-1", note="FAO-56, Eq. 47"),
    Quantity("v_w2", "wind speed two metres above the ground", "m/s", "m/s", "ft/s", "0.5 m/s", "5 m/s", "0.1 m/s"),
    Quantity("J_day", "day of the year", "", "", "", "1", "365", "1", most="366"),
    Quantity("phi_lat", "latitude, south of the equator below zero", "rad", "deg", "deg", "-55 deg", "60 deg", "1 deg"),
    Quantity("d_rel", "nearness of the sun: mean distance over distance, squared", "", "", "", "0.967", "1.033", "0.001"),
    Quantity("delta_sun", "declination of the sun", "rad", "deg", "deg", "-23 deg", "23 deg", "1 deg"),
    Quantity("omega", "hour angle of the sun, from noon", "rad", "deg", "deg", "-60 deg", "60 deg", "1 deg"),
    Quantity("omega_s", "hour angle at sunset", "rad", "deg", "deg", "60 deg", "120 deg", "1 deg"),
    Quantity(
        "S_0",
        "sunlight above the air, facing the sun",
        "W/m2",
        "W/m2",
        "W/ft2",
        value="82000 J/m2/min",
        note="0.0820 MJ for each square metre and minute, FAO-56, Eq. 21",
    ),
    Quantity("S_omega", "sunlight on level ground above the air, at an hour angle", "W/m2", "W/m2", "W/ft2", "10 W/m2", "1300 W/m2", "10 W/m2"),
    Quantity("R_ext", "sunlight on level ground above the air, mean of the day", "W/m2", "W/m2", "W/ft2", "100 W/m2", "490 W/m2", "10 W/m2"),
    Quantity("t_sun", "longest possible sunshine: sunrise to sunset", "s", "h", "h", "12 h", "16 h", "0.5 h"),
    Quantity("t_bright", "bright sunshine of the day", "s", "h", "h", "2 h", "12 h", "0.5 h"),
    Quantity("a_sky", "share of the sunlight that an overcast sky lets through", "", "", "", "0.2", "0.3", "0.01"),
    Quantity("b_sky", "further share that a clear sky lets through", "", "", "", "0.45", "0.55", "0.01"),
    Quantity("R_sol", "sunlight on level ground, mean of the day", "W/m2", "W/m2", "W/ft2", "50 W/m2", "250 W/m2", "10 W/m2"),
    Quantity("k_clear", "growth of clear-sky sunlight with the height of the site", "m^-1", "m^-1", "ft^-1", value="0.00002 m^-1", note="FAO-56, Eq. 37"),
    Quantity("R_clear", "sunlight on level ground under a clear sky, mean of the day", "W/m2", "W/m2", "W/ft2", "260 W/m2", "370 W/m2", "10 W/m2"),
    Quantity("sigma_SB", "Stefan-Boltzmann constant", "W/m2/K^4", "W/m2/K^4", "W/m2/K^4", value="0.004903 J/m2/K^4/day", note="4.903e-9 MJ, FAO-56, Eq. 39"),
    Quantity("k_vap", "constant of the heat that moist air sends back", "Pa^-0.5", "kPa^-0.5", "kPa^-0.5", value="0.14 kPa^-0.5", note="FAO-56, Eq. 39"),
    Quantity("R_long", "heat that the ground loses to the sky, mean of the day", "W/m2", "W/m2", "W/ft2", "20 W/m2", "100 W/m2", "5 W/m2"),
    Quantity("alpha_s", "share of the sunlight that is thrown back: 0.23 grass, 0.08 water", "", "", "", "0.05", "0.25", "0.01", most="1"),
    Quantity("R_net", "sunlight kept less heat lost, mean of the day", "W/m2", "W/m2", "W/ft2", "-20 W/m2", "200 W/m2", "5 W/m2"),
    Quantity("H_v", "heat that dries a volume of water", "J/m3", "J/m3", "J/m3", value="2.45e9 J/m3", note="2.45 MJ/kg, FAO-56, ch. 3"),
    Quantity("k_ref", "wind constant of the reference grass", "K/Pa", "K/Pa", "K/Pa", value="900 K mm s/day/kPa/m", note="FAO-56, Eq. 6"),
    Quantity("k_leaf", "growth of the resistance of the reference grass with wind", "s/m", "s/m", "s/ft", value="0.34 s/m", note="FAO-56, Eq. 6"),
    Quantity(
        "a_dry",
        "drying power of still air over water",
        "m/s/Pa",
        "mm/day/kPa",
        "in/day/psi",
        value="1.313 mm/day/kPa",
        note="Penman (1956), as in McMahon et al. (2013)",
    ),
    Quantity(
        "b_dry",
        "growth of the drying power with wind",
        "Pa^-1",
        "kPa^-1",
        "psi^-1",
        value="1.381 mm s/day/kPa/m",
        note="Penman (1956), as in McMahon et al. (2013)",
    ),
    Quantity("t_24", "one day", "s", "day", "day", value="1 day", note="24 hours"),
    Quantity("R_kept", "sunlight that is not thrown back, mean of the day", "W/m2", "W/m2", "W/ft2", "50 W/m2", "240 W/m2", "10 W/m2"),
)
