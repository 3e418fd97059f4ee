"""Water in pipes, over edges and through the air, from textbooks' laws alone. SI throughout.

Density of water: Kell (1975); viscosity: Kestin, Sokolov and Wakeham (1978); both from memory, and held against IAPWS in the tests.
"""

import math

from plain_design import GRAVITY, Impossible
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

BROAD = (8 * GRAVITY / 27) ** 0.5  # m^0.5/s: critical flow over a broad crest, sqrt(8 g / 27)
BRINK = 0.715  # depth at a free brink over the critical depth: Rouse's end depth
PLAIN_WATER = 1.0e-9


def density(kelvin: float) -> float:
    t = kelvin - 273.15
    top = 999.83952 + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))))
    return top / (1 + 16.879850e-3 * t)


def viscosity(kelvin: float) -> float:
    """Kinematic, m2/s."""
    t = kelvin - 273.15
    exponent = (20 - t) / (t + 96) * (1.2364 - 1.37e-3 * (20 - t) + 5.7e-6 * (20 - t) ** 2)
    return 1.0016e-3 * 10**exponent / density(kelvin)


def friction(reynolds: float, rough: float, law: str) -> float:
    """Darcy's friction factor; `rough` is roughness over bore. Laminar below 2000 by Hagen and Poiseuille."""
    if reynolds < 2000:
        return 64 / reynolds
    if law == "Blasius":
        return 0.3164 / reynolds**0.25
    if law == "Swamee-Jain":
        return 0.25 / math.log10(rough / 3.7 + 5.74 / reynolds**0.9) ** 2
    if law == "Haaland":
        return (-1.8 * math.log10((rough / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2
    x = 0.02  # Colebrook and White, by substitution: each round closes in about fourfold on the inverse root
    for _ in range(60):
        new = (-2 * math.log10(rough / 3.7 + 2.51 / (reynolds * x**0.5))) ** -2
        if abs(new - x) < 1e-12:
            break
        x = new
    return new


def hose(d, bore: float, length: float, fittings: float):
    """Head lost (m) as a function of the flow (m3/s), by the friction law that the design names."""
    law, area, nu = d["pipe.friction_law"], math.pi / 4 * bore**2, viscosity(d["flow.water_temperature"])
    rough = d["pipe.roughness"] / bore if law in ("Colebrook", "Swamee-Jain", "Haaland") else 0.0
    hazen = d["pipe.hazen_williams"] if law == "Hazen-Williams" else 0.0

    def lost(flow: float) -> tuple[float, float]:
        """By friction, and in the fittings."""
        if flow <= 0:
            return 0.0, 0.0
        speed = flow / area
        if law == "Hazen-Williams":  # 4.727 in feet and cubic feet a second, as EPANET has it
            by_friction = 10.6668 * length * flow**1.852 / (hazen**1.852 * bore**4.871)
        else:
            f = 0.08 if law == "ribbed hose" else friction(speed * bore / nu, rough, law)
            by_friction = f * length / bore * speed**2 / (2 * GRAVITY)
        return by_friction, fittings * speed**2 / (2 * GRAVITY)

    return lost


class Curve:
    """A pump: the maker's points joined by a monotone cubic, or a parabola through the two numbers of its label."""

    def __init__(self, d):
        points = d.get("pump.curve")
        if points:
            flows, heads = (list(one) for one in zip(*points))
            if flows[0] != 0 or any(b <= a for a, b in zip(flows, flows[1:])) or any(b >= a for a, b in zip(heads, heads[1:])) or heads[-1] < 0:
                raise Impossible("the pump's curve does not fall from no flow")
            self.shut_off, self.most, self._at = heads[0], flows[-1], PchipInterpolator(flows, heads) if len(flows) > 2 else None
            self._ends = (flows, heads)
        else:
            self.shut_off, self.most, self._at, self._ends = d["pump.shut_off_head"], d["pump.maximum_flow"], None, None
            if not (self.shut_off > 0 and self.most > 0):
                raise Impossible("a pump without head or flow")

    def head(self, flow: float) -> float:
        if self._at is not None:
            return float(self._at(flow))
        if self._ends:
            (q0, q1), (h0, h1) = self._ends
            return h0 + (h1 - h0) * (flow - q0) / (q1 - q0)
        return self.shut_off * (1 - (flow / self.most) ** 2)

    def power(self, rho: float) -> float:
        """Most hydraulic power along the curve, W."""
        if self._ends is None:
            return 2 / 27**0.5 * rho * GRAVITY * self.most * self.shut_off
        flows = [self.most * i / 200 for i in range(201)]
        heads = self._at(flows) if self._at is not None else map(self.head, flows)
        return float(max(rho * GRAVITY * q * max(h, 0.0) for q, h in zip(flows, heads)))

    def meets(self, needed) -> float:
        """The flow at which it gives the head that `needed` asks for."""
        if needed(PLAIN_WATER * self.most) >= self.shut_off:
            raise Impossible("no water comes: the lift is not below the shut-off head")
        if self.head(self.most) > needed(self.most):
            raise Impossible("the curve ends before the pump meets the pipe")
        return brentq(lambda flow: self.head(flow) - needed(flow), PLAIN_WATER * self.most, self.most, xtol=1e-12, rtol=1e-10)


def through(drives: float, lift: float, lost, most: float) -> float:
    """Flow that a head at the foot of a branch drives through it to an outlet `lift` up; none where it does not reach."""
    spare = drives - lift
    if spare <= 0:
        return 0.0
    if sum(lost(most)) <= spare:
        return most
    return brentq(lambda flow: sum(lost(flow)) - spare, 0.0, most, xtol=1e-13, rtol=1e-9)


def shared(curve: Curve, common, branches) -> list[float]:
    """Flows of the branches (lift, losses) of one pump, every valve open: pump, hose and branches agree on the head where they part."""
    lowest = min(lift for lift, _ in branches)
    if lowest >= curve.shut_off:
        raise Impossible("no water comes: the lowest outlet is not below the shut-off head")

    def parting(total: float) -> float:
        return curve.head(total) - sum(common(total))

    def left(total: float) -> float:
        return sum(through(parting(total), lift, lost, curve.most) for lift, lost in branches) - total

    total = brentq(left, 0.0, curve.most, xtol=1e-12, rtol=1e-9)
    return [through(parting(total), lift, lost, curve.most) for lift, lost in branches]


def head_over(flow: float, length: float, coefficient: float) -> float:
    """Head (m) over a level edge of that length by Q = C b H^1.5."""
    return (flow / (coefficient * length)) ** (2 / 3)


def film(each_metre: float, nu: float) -> float:
    """Thickness of a laminar film on an upright face: Nusselt."""
    return (3 * nu * each_metre / GRAVITY) ** (1 / 3)


def sheet(each_metre: float, fall: float) -> tuple[float, float, float, float]:
    """Critical depth, depth and speed at the brink, and time of the fall of a free sheet."""
    critical = (each_metre**2 / GRAVITY) ** (1 / 3)
    return critical, BRINK * critical, each_metre / (BRINK * critical) if critical else math.nan, (2 * fall / GRAVITY) ** 0.5


def manning_depth(flow: float, width: float, slope: float, roughness: float) -> float:
    """Depth of even flow in a rectangular rill."""

    def carried(depth: float) -> float:
        area = width * depth
        return area * (area / (width + 2 * depth)) ** (2 / 3) * slope**0.5 / roughness

    if not (slope > 0 and roughness > 0 and width > 0):
        raise Impossible("a rill without width, slope or roughness")
    high = 0.001
    while carried(high) < flow:
        high *= 2
    return brentq(lambda depth: carried(depth) - flow, 0.0, high, xtol=1e-12)
