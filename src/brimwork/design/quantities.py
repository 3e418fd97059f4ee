"""What to buy, cut and dig: the quantities that follow from a design alone."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from brimwork.design.chain import Chain
from brimwork.design.checks import asked
from brimwork.design.inputs import Unknown
from brimwork.units import InputError, number, write


@dataclass(frozen=True)
class Line:
    """One line of the list: what, which size, how much, and what to mind."""

    item: str
    size: str
    amount: str
    note: str = ""


def quantities(chain: Chain) -> list[Line]:
    """Every line that can be worked out; a line that cannot says what it needs."""
    return [line for item, make in _LINES.items() for line in _made(item, make, chain)]


def _made(item: str, make: Callable[[Chain], Iterator[Line]], chain: Chain) -> list[Line]:
    try:
        return list(make(chain))
    except Unknown as missing:
        return [Line(item, "", "not shown", f"needs {asked(missing)}")]
    except InputError as refused:
        return [Line(item, "", "not shown", str(refused))]
    except ArithmeticError:
        return [Line(item, "", "not shown", "a value that must be more than nothing is zero")]


def _mm(*lengths: float) -> str:
    return " x ".join(f"{length * 1e3:.0f}" for length in lengths) + " mm"


def _blocks(c: Chain) -> Iterator[Line]:
    d = c.design
    count = d["reservoir.blocks_along"] * d["reservoir.blocks_across"]
    yield Line(
        "void-former blocks",
        _mm(d["reservoir.block_length"], d["reservoir.block_width"], d["reservoir.block_height"]),
        number(count),
        "with clips and lids as the maker says",
    )


def _slab(c: Chain) -> Iterator[Line]:
    d = c.design
    count = {
        "overflowing vessel": lambda: int(d["vessel.stands_on"] == "slab"),
        "drilled stones": lambda: len(d["stones.heights"]) * (d["stones.stand_on"] == "slabs"),
    }
    number_of = count.get(d.kind, int)()
    if number_of:
        yield Line("slab", _mm(d["slab.length"], d["slab.width"], d["slab.thickness"]), str(number_of), f"{write(c.slab_mass, 'kg')} each: lift by a plan")


def _panels(c: Chain) -> Iterator[Line]:
    yield Line("box, long panels", _mm(c.panel_long, c.box_depth), "2", f"board {_mm(c.design['ground.board'])}")
    yield Line("box, end panels", _mm(c.box_width, c.box_depth), "2", "between the long panels")


def _liner(c: Chain) -> Iterator[Line]:
    fits = "" if c.roll_spare >= 0 else "no roll covers it: turn the cut or ask for a welded seam"
    yield Line(
        "liner", f"{write(c.liner_length, 'm')} x {write(c.liner_width, 'm')}", f"{write(c.liner_length, 'm')} off a roll {write(c.roll, 'm', None)} wide", fits
    )
    yield Line(
        "protection fleece",
        "under the liner, and over it",
        f"2 x {write(c.liner_length * c.liner_width, 'm2')}",
        "add 15 % for laps: common practice, no source",
    )


def _dig(c: Chain) -> Iterator[Line]:
    yield Line("pit to dig", _mm(c.pit_length, c.pit_width, c.pit_depth), f"{write(c.dug, 'm3')} in the ground", f"diagonals {_mm(c.diagonal)}")
    yield Line("spoil to move", "", f"{write(c.spoil, 'm3')} loose", "")


def _beds(c: Chain) -> Iterator[Line]:
    area = c.pit_length * c.pit_width
    for name, key in (("sub-base", "ground.sub_base"), ("sand bed", "ground.sand")):
        yield Line(name, f"{_mm(c.design[key])} thick", f"{write(area * c.design[key], 'm3')} placed", "buy more: it packs down")


def _stone(c: Chain) -> Iterator[Line]:
    yield Line(
        "rounded stone",
        f"{_mm(c.design['catch.stone_thickness'])} thick on {write(c.stone_area, 'm2')}",
        write(c.stone_mass, "t"),
        f"waste {write(c.design['catch.stone_waste'], '%', None)} in it",
    )


def _pump(c: Chain) -> Iterator[Line]:
    yield Line("submersible pump", f"at least {write(c.flow_wanted, 'L/min')} at {write(c.head_wanted, 'm')}", "1", "marked for permanent outdoor submersion")


def _hose(c: Chain) -> Iterator[Line]:
    yield Line(
        "delivery hose",
        f"bore {_mm(c.design['pipe.bore'])}",
        write(c.design["pipe.length"] * 1.1 + 0.5, "m"),
        "10 % and 0.5 m in it: common practice, no source",
    )


def _water(c: Chain) -> Iterator[Line]:
    yield Line(
        "first fill",
        "reservoir to its static level, and what stands above it",
        write(c.static_volume + c.held_above, "L"),
        "soft or rain water leaves less scale",
    )


_LINES: dict[str, Callable[[Chain], Iterator[Line]]] = {
    "void-former blocks": _blocks, "slab": _slab, "box panels": _panels, "liner": _liner, "pit to dig": _dig, "beds": _beds,
    "rounded stone": _stone, "submersible pump": _pump, "delivery hose": _hose, "first fill": _water,
}  # fmt: skip
