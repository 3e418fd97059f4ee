"""What the shopping list can hold, each with what its price is for: the section [prices] of a design file."""

from __future__ import annotations

from typing import NamedTuple


class Price(NamedTuple):
    """What one price buys; by_length where it is a length off a roll or coil."""

    name: str
    by_length: bool = False


PER = "_per"  # behind the key of a price: the key of what it is for
SOLD_LOOSE = ("stone", "sand", "sub_base")  # sold in bags, by mass or by volume: a price counts only for what it says it is for
PRICES: dict[str, Price] = {
    # ground
    "sub_base": Price("aggregate for sub-base and backfill, for one unit as it is sold"),
    "sand": Price("sand, for one unit as it is sold"),
    "fabric": Price("separation fabric off the roll", True),
    "sheet": Price("one sheet of board for the box"),
    "batten": Price("one length of strut timber"),
    "screws": Price("one box of screws"),
    # reservoir and lining
    "liner": Price("liner off the roll", True),
    "fleece": Price("protection fleece off the roll", True),
    "edge_tape": Price("one roll of edge tape"),
    "block": Price("one void-former block, with its clips"),
    "cover": Price("the slab or grid over the blocks, all of it"),
    "mesh": Price("mesh off the roll", True),
    "stone": Price("rounded stone, for one unit as it is sold"),
    "net_bag": Price("one net bag for the stone over the lid"),
    "slab": Price("one slab"),
    # water
    "pump": Price("the pump, with its cord"),
    "pre_filter": Price("the strainer round the pump"),
    "cut_out": Price("the low-water cut-out"),
    "float_valve": Price("the top-up valve"),
    "hose": Price("delivery hose off the coil", True),
    "branch_hose": Price("branch hose off the coil", True),
    "valve": Price("one valve"),
    "check_valve": Price("the check valve"),
    "union": Price("one union"),
    "manifold": Price("the manifold or its tees"),
    "hose_tail": Price("one hose tail"),
    "hose_clip": Price("one hose clip"),
    "tank_connector": Price("one tank connector"),
    "washer": Price("one washer"),
    "thread_tape": Price("one roll of thread-seal tape"),
    "standpipe": Price("one length of pipe for the standpipe"),
    "overflow_pipe": Price("overflow pipe", True),
    "overflow_mesh": Price("the mesh over the overflow"),
    "overflow_flange": Price("the flange that clamps the liner to the overflow"),
    "overflow_bend": Price("one bend of the overflow pipe"),
    "overflow_end": Price("what the overflow pipe ends in, a soakaway of its own or a grille"),
    # feature
    "feature": Price("the vessel, one drilled stone where all are equal, the trough with its lip, or one step"),
    "header": Price("the header of a cascade"),
    "rill": Price("the rill of a cascade, ready to be lined"),
    "wall": Price("the wall behind a blade, as the engineer designs it"),
    "landing_stone": Price("the splash stone, on which the sheet lands"),
    "feature_liner": Price("liner for steps and rill, off the roll", True),
    "sealant": Price("one cartridge of sealant"),
    "sleeve": Price("one outlet sleeve"),
    "foam": Price("one board of foam"),
    "pebbles": Price("pebbles on the foam, one bag"),
    "waterproofer": Price("waterproofer for the vessel"),
    "shims": Price("one set of shims"),
    # supply and services
    "duct": Price("duct for the cable", True),
    "draw_cord": Price("draw cord", True),
    "warning_tape": Price("one roll of warning tape"),
    "electrician": Price("the electrician, with residual-current protection, cable and certificate"),
    "spoil": Price("one load of spoil taken away"),
    "delivery": Price("all deliveries"),
    "hire": Price("all hire"),
}
