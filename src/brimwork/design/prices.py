"""What the shopping list can hold, each with what its price is for: the section [prices] of a design file."""

from __future__ import annotations

from typing import NamedTuple


class Priced(NamedTuple):
    """What one price buys; by_length where it is a length off a roll or coil."""

    name: str
    by_length: bool = False


PRICES: dict[str, Priced] = {
    # ground
    "sub_base": Priced("aggregate for sub-base and backfill, for one unit as it is sold"),
    "sand": Priced("sand, for one unit as it is sold"),
    "fabric": Priced("separation fabric off the roll", True),
    "sheet": Priced("one sheet of board for the box"),
    "batten": Priced("one length of strut timber"),
    "screws": Priced("one box of screws"),
    # reservoir and lining
    "liner": Priced("liner off the roll", True),
    "fleece": Priced("protection fleece off the roll", True),
    "edge_tape": Priced("one roll of edge tape"),
    "block": Priced("one void-former block, with its clips"),
    "mesh": Priced("mesh off the roll", True),
    "stone": Priced("rounded stone, for one unit as it is sold"),
    "net_bag": Priced("one net bag for the stone over the lid"),
    "slab": Priced("one slab"),
    # water
    "pump": Priced("the pump, with its cord"),
    "pre_filter": Priced("the intake cage"),
    "cut_out": Priced("the low-water cut-out"),
    "float_valve": Priced("the top-up valve"),
    "hose": Priced("delivery hose off the coil", True),
    "branch_hose": Priced("branch hose off the coil", True),
    "valve": Priced("one valve"),
    "check_valve": Priced("the check valve"),
    "union": Priced("one union"),
    "manifold": Priced("the manifold or its tees"),
    "hose_tail": Priced("one hose tail"),
    "hose_clip": Priced("one hose clip"),
    "tank_connector": Priced("one tank connector"),
    "washer": Priced("one washer"),
    "thread_tape": Priced("one roll of thread-seal tape"),
    "upright": Priced("one length of pipe for the upright"),
    "overflow_pipe": Priced("overflow pipe", True),
    "overflow_mesh": Priced("the mesh over the overflow"),
    # feature
    "feature": Priced("the vessel, one drilled stone, the trough with its lip, or one step"),
    "header": Priced("the header of a cascade"),
    "rill": Priced("the rill of a cascade, ready to be lined"),
    "wall": Priced("the wall behind a blade, as the engineer designs it"),
    "landing_stone": Priced("the stone on which the sheet lands"),
    "feature_liner": Priced("liner for steps and rill, off the roll", True),
    "sealant": Priced("one cartridge of sealant"),
    "sleeve": Priced("one outlet sleeve"),
    "foam": Priced("one board of foam"),
    "pebbles": Priced("pebbles on the foam, one bag"),
    "waterproofer": Priced("waterproofer for the vessel"),
    "shims": Priced("one set of shims"),
    # supply and services
    "duct": Priced("duct for the cable", True),
    "draw_cord": Priced("draw cord", True),
    "warning_tape": Priced("one roll of warning tape"),
    "electrician": Priced("the electrician, with residual-current protection, cable and certificate"),
    "spoil": Priced("one load of spoil taken away"),
    "delivery": Priced("all deliveries"),
    "hire": Priced("all hire"),
}
