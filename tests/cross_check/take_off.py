"""A surveyor's take-off of a whole design, by plain arithmetic from its file: how much of everything is dug and bought, in the sizes in which a country sells it.

Sizes sold, laps and waste are typed here by hand from the printed form; nothing is read back from the product.
"""

import itertools
import math

from plain_design import FOOT, INCH, POUND, Missing, Plain

YARD3 = (3 * FOOT) ** 3
SOLD = {
    "UK": {"bag": 25.0, "bulk bag": 800.0, "sheet": (2.44, 1.22), "saw": 0.004, "strut": 0.6, "batten": 2.4, "screw": 0.15, "step": 0.5, "liner lap": 0.15, "fleece": (2.0, 0.1),
           "fabric": (2.0, 0.3), "mesh": (1.0, 0.1), "mesh beyond": 0.1, "tape": 50.0, "ends": 0.5, "stick": 3.0, "coil": 25.0, "sealant": 6.0, "load": 3.0, "trench": 0.3,
           "stone": "bulk bag", "sand": "bag", "sub_base": "bulk bag"},
    "US": {"bag": 50 * POUND, "bulk bag": 1760 * POUND, "sheet": (8 * FOOT, 4 * FOOT), "saw": INCH / 8, "strut": 2 * FOOT, "batten": 8 * FOOT, "screw": INCH * 6, "step": FOOT,
           "liner lap": 6 * INCH, "fleece": (6 * FOOT, 4 * INCH), "fabric": (6 * FOOT, FOOT), "mesh": (4 * FOOT, 4 * INCH), "mesh beyond": 4 * INCH, "tape": 150 * FOOT,
           "ends": 20 * INCH, "stick": 10 * FOOT, "coil": 100 * FOOT, "sealant": 20 * FOOT, "load": 4 * YARD3, "trench": FOOT, "stone": "cubic yard", "sand": "bag",
           "sub_base": "cubic yard"},
}  # fmt: skip
SAND, AGGREGATE = (1600, 1.2), (1700, 1.25)  # kg/m3 loose; loose over placed
WASTE, SLACK, PIPE_WASTE = 0.05, 0.02, 0.10


def up(amount: float, size: float = 1.0) -> int:
    """How many of a size hold an amount; a hair over is a slip of the last digit."""
    return math.ceil(amount / size - 1e-9)


def strips(length: float, width: float, roll: float, lap: float, step: float) -> float:
    """What is cut off a roll for a piece, the way that takes less."""
    ways = []
    for along, across in ((length, width), (width, length)):
        count = max(up(across - lap, roll - lap), 1)
        ways.append(count * up(along * (1 + WASTE), step) * step)
    return min(ways)


def off_a_roll(long: float, short: float, rolls, step: float) -> float:
    """What is cut off the narrowest roll that covers a liner in one piece."""
    long, short = max(long, short), min(long, short)
    wide = min(roll for roll in rolls if roll >= short)
    along = short if long * (1 + SLACK) <= wide else long
    return up(along * (1 + SLACK), step) * step


def sheets(panels: list[tuple[float, float]], sheet: tuple[float, float], saw: float) -> int:
    """Fewest sheets from which the panels can be cut edge to edge."""
    for count in range(1, len(panels) + 1):
        for where in itertools.product(range(count), repeat=len(panels)):
            if all(_cut([panel for panel, at in zip(panels, where) if at == one], *sheet, saw) for one in range(count)):
                return count
    raise AssertionError("a panel larger than a sheet")


def _cut(panels: list, wide: float, high: float, saw: float) -> bool:
    if not panels:
        return True
    for i, panel in enumerate(panels):
        rest = panels[:i] + panels[i + 1 :]
        for a, b in (panel, panel[::-1]):
            if a <= wide + 1e-9 and b <= high + 1e-9:
                for right, over in (((wide - a - saw, high), (a, high - b - saw)), ((wide - a - saw, b), (wide, high - b - saw))):
                    for share in itertools.product((0, 1), repeat=len(rest)):
                        if _cut([p for p, s in zip(rest, share) if s], *right, saw) and _cut([p for p, s in zip(rest, share) if not s], *over, saw):
                            return True
    return False


def loose(mass: float, density: float, sold: str, size: dict) -> float:
    """Bags, or half cubic yards, that hold a mass."""
    return up(mass, size[sold]) if sold in size else up(mass, YARD3 * density / 2) / 2


class TakeOff:
    """`counts` by the key of its price, lengths in m; `volumes` (m3) by the words of its line; what needs a missing value is left out."""

    def __init__(self, text: str):
        self.plain = Plain(text)
        self.d, self.kind, self.size = self.plain.d, self.plain.kind, SOLD[self.plain.region]
        self.counts: dict[str, float] = {}
        self.volumes: dict[str, float] = {}
        for part in (self.ground, self.bought_loose, self.box, self.lining, self.stone, self.water, self.overflow, self.supply, self.above, self.services):
            try:
                part()
            except Missing:
                continue

    def add(self, **counts: float) -> None:
        for key, count in counts.items():
            if count:
                self.counts[key] = self.counts.get(key, 0) + count

    # sizes

    @property
    def blocks(self) -> tuple[float, float]:
        d = self.d
        return d["reservoir.blocks_along"] * d["reservoir.block_length"], d["reservoir.blocks_across"] * d["reservoir.block_width"]

    def inside(self) -> tuple[float, float]:
        gap = 2 * (self.d["ground.lining_thickness"] + self.d["ground.clearance"])
        return self.blocks[0] + gap, self.blocks[1] + gap

    def outside(self) -> tuple[float, float]:
        long, wide = self.inside()
        return long + 2 * self.d["ground.board"], wide + 2 * self.d["ground.board"]

    def pit(self) -> tuple[float, float]:
        long, wide = self.outside()
        return long + 2 * self.d["ground.working_space"], wide + 2 * self.d["ground.working_space"]

    def deep(self) -> float:
        """Of the box over the reservoir floor."""
        return self.d["reservoir.block_height"] + self.d["ground.box_upstand"]

    def edge(self) -> float:
        """Level of the edge of the box."""
        return self.d["levels.block_top"] + self.d["ground.box_upstand"]

    def bare(self) -> float:
        """What slabs and feet leave without stone."""
        d = self.d
        if self.kind == "overflowing vessel":
            return d["slab.length"] * d["slab.width"]
        return 0.0

    # parts

    def ground(self) -> None:
        d, (long, wide) = self.d, self.pit()
        deep = -(d["levels.block_top"] - d["reservoir.block_height"] - d["ground.lining_thickness"] - d["ground.sand"] - d["ground.sub_base"])
        inside, apron = self.inside(), 2 * d["catch.apron"]
        beyond = max((inside[0] + apron) * (inside[1] + apron) - long * wide, 0.0) * max(-self.edge(), 0.0)
        self.volumes |= {"pit to dig": long * wide * deep, "apron to dig": beyond}
        self.add(fabric=strips(long, wide, *self.size["fabric"], self.size["step"]))
        self.volumes["spoil to take away"] = (long * wide * deep + beyond) * d["ground.bulking"]
        self.add(spoil=up(self.volumes["spoil to take away"], self.size["load"]))

    def bought_loose(self) -> None:
        d, (long, wide), (out, across) = self.d, self.pit(), self.outside()
        panel = self.deep() + d["ground.lining_thickness"]
        placed = long * wide * d["ground.sub_base"] + (long * wide - out * across) * panel + self.under_steps()
        self.add(
            sub_base=loose(placed * AGGREGATE[0] * AGGREGATE[1], AGGREGATE[0], self.size["sub_base"], self.size),
            sand=loose(long * wide * d["ground.sand"] * SAND[0] * SAND[1], SAND[0], self.size["sand"], self.size),
        )

    def under_steps(self) -> float:
        d = self.d
        if self.kind != "cascade":
            return 0.0
        wide, top = d["cascade.width"] + 2 * d["cascade.splash_edge"], d["cascade.top_level"]
        filled = wide * d["cascade.header_area"] / d["cascade.width"] * (top - d["cascade.header_volume"] / d["cascade.header_area"])
        for i in range(1, round(d["cascade.steps"]) + 1):
            filled += wide * d["cascade.tread"] * max(top - i * d["cascade.step_fall"], 0.0)
        high = top - d["cascade.steps"] * d["cascade.step_fall"]
        low = high - d["cascade.rill_length"] * d["cascade.rill_slope"]
        return filled + (d["cascade.rill_width"] + 2 * d["cascade.splash_edge"]) * d["cascade.rill_length"] * (max(high, 0.0) + max(low, 0.0)) / 2

    def box(self) -> None:
        d, s, long, inside = self.d, self.size, self.outside()[0], self.inside()
        high = self.deep() + d["ground.lining_thickness"]
        self.add(sheet=sheets([(long, high), (long, high), (inside[1], high), (inside[1], high)], s["sheet"], s["saw"]))
        struts = up(inside[0], s["strut"]) - 1
        self.add(batten=up(struts, math.floor(s["batten"] / inside[1] + 1e-9)), screws=up(4 * (up(high, s["screw"]) + 1), 100))

    def lining(self) -> None:
        d, s, inside, deep = self.d, self.size, self.inside(), self.deep()
        self.add(block=d["reservoir.blocks_along"] * d["reservoir.blocks_across"], edge_tape=up(2 * sum(self.blocks), s["tape"]))
        beyond = [side + 2 * s["mesh beyond"] for side in inside]
        self.add(mesh=strips(*beyond, *s["mesh"], s["step"]))
        flat = [side + 2 * deep + 2 * d["catch.apron"] for side in inside]
        self.add(fleece=2 * strips(*flat, *s["fleece"], s["step"]))
        self.add(liner=off_a_roll(*(side + 2 * d["lining.beyond_apron"] for side in flat), d["lining.rolls"], s["step"]))

    def stone(self) -> None:
        d, inside = self.d, self.inside()
        apron = (inside[0] + 2 * d["catch.apron"]) * (inside[1] + 2 * d["catch.apron"]) - inside[0] * inside[1]
        top = d["levels.block_top"] + d.get("reservoir.cover", 0.0) + d["catch.stone_thickness"]
        volume = (inside[0] * inside[1] - self.bare()) * d["catch.stone_thickness"] + apron * max(top - self.edge(), 0.0)
        mass = volume * d["catch.stone_density"] * (1 + d["catch.stone_waste"])
        self.add(stone=loose(mass, d["catch.stone_density"], self.size["stone"], self.size), net_bag=1)

    def water(self) -> None:
        d, s, stones = self.d, self.size, self.kind == "drilled stones"
        check, count = d["pipe.check_valve"] == "yes", len(d.get("stones.diameters", ()))
        self.add(pump=1, pre_filter=1, cut_out=d.get("pump.cut_out") == "yes", union=1, check_valve=check, thread_tape=1)
        self.add(hose=up(d["pipe.length"] * (1 + PIPE_WASTE) + s["ends"], s["step"]) * s["step"])
        valves = count * (d["stones.valves"] == "yes") if stones else 1
        ends = 2 * (2 + check + (not stones)) + (2 * (count + valves) if stones else 0)
        through = self.kind == "overflowing vessel" or (self.kind in ("blade", "cascade") and d[f"{self.kind}.feed"] == "bottom")
        self.add(valve=valves, hose_tail=ends, hose_clip=ends, tank_connector=through, washer=2 * through + 1 + 1)
        if stones:
            self.add(
                branch_hose=up(sum(d["stones.branch_lengths"]) * (1 + PIPE_WASTE) + count * s["ends"], s["step"]) * s["step"], manifold=count > 1, sleeve=count
            )
        if self.kind == "overflowing vessel":
            self.add(standpipe=up(d["vessel.height"] - d["pipe.mouth_below_rim"], s["stick"]))
        self.volumes["water for the test of the liner"] = d["reservoir.overflow_level"] * math.prod(self.inside())

    def overflow(self) -> None:
        d, s = self.d, self.size
        run, over = d["buying.overflow_run"], d["levels.block_top"] - d["reservoir.block_height"] + d["reservoir.overflow_level"]
        self.add(overflow_pipe=up(run * (1 + PIPE_WASTE), s["stick"]) * s["stick"], overflow_mesh=1, overflow_flange=1, overflow_bend=2, overflow_end=1)
        self.volumes["trench for the overflow"] = run * s["trench"] * (-over + d["overflow_pipe.bore"] / 2 + d.get("overflow_pipe.fall", 0.0) / 2)

    def supply(self) -> None:
        s, route = self.size, self.d["supply.cord_route"] * (1 + PIPE_WASTE)
        self.add(duct=up(route, s["coil"]) * s["coil"], draw_cord=up(route, s["step"]) * s["step"], warning_tape=up(route, s["tape"]))

    def services(self) -> None:
        self.add(electrician=1, hire=1, delivery=1)

    def above(self) -> None:
        d, s, count = self.d, self.size, len(self.d.get("stones.diameters", ()))
        if self.kind == "overflowing vessel":
            self.add(feature=1, shims=1, slab=d["vessel.stands_on"] == "slab", waterproofer=d["vessel.coat"] == "yes")
        elif self.kind == "drilled stones":
            self.add(feature=count, shims=1, slab=count * (d["stones.stand_on"] == "slabs"))
        elif self.kind == "blade":
            self.add(feature=1, wall=1, landing_stone=1, sealant=up(d["blade.lip_width"], s["sealant"]))
        else:
            steps = round(d["cascade.steps"])
            self.add(feature=steps, header=1, rill=1, sealant=up((steps + 1) * d["cascade.width"], s["sealant"]))
            lap, margin = s["liner lap"], d["lining.beyond_apron"]
            rill = (d["cascade.rill_length"] + 2 * lap, d["cascade.rill_width"] + 2 * (d["cascade.rill_wall"] + margin))
            down = (steps * (d["cascade.tread"] + d["cascade.step_fall"] + lap) + lap, d["cascade.width"] + 2 * (d["cascade.splash_edge"] + margin))
            apart = sum(off_a_roll(*piece, d["lining.rolls"], s["step"]) for piece in (rill, down))
            fits = any(roll >= (rill[1] + down[1]) * (1 + SLACK) for roll in d["lining.rolls"])
            beside = up(max(rill[0], down[0]) * (1 + SLACK), s["step"]) * s["step"]
            self.add(feature_liner=min(apart, beside) if fits else apart)
