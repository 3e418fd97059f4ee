"""Keys of a design file that are called otherwise now, or asked for no more: an old file is read, and told so."""

from __future__ import annotations

from brimwork.units import InputError

# the name that was, and the one that is; of two things with one name, why this one gave way
RENAMED = {
    "overflow_pipe.feed": "overflow_pipe.stuck_flow",
    "lining.margin": "lining.beyond_apron",  # costing.margin is the profit
    "lining.mesh": "lining.mesh_opening",  # elsewhere mesh is the thing that is bought and laid
    "ground.lining": "ground.lining_thickness",  # [lining] is the section of the liner
    "programme.soil": "programme.soil_type",  # levels.soil is a level
    "vessel.wall": "vessel.wall_thickness",  # elsewhere the wall stands behind a blade
    "cascade.edge": "cascade.splash_edge",  # elsewhere the edge is that of the liner
    "supply.drop": "supply.voltage_drop",  # a level drops too
    "costing.water": "costing.water_price",  # vessel.water is a volume
    "site.cost": "site.base_estimate",  # the sections are full of costs: this one is the estimate before contingency
    # and those that the trade calls otherwise
    "pump.free_flow": "pump.maximum_flow",
    "vessel.rim_error": "vessel.rim_out_of_level",
    "prices.upright": "prices.standpipe",
    "programme.upright": "programme.standpipe",
}
# what no list or check asks for any more, and why
DROPPED = {"buying.slab_bed": "no loose sand lies under a slab over hollow blocks, where it would run away"}


def now_called(key: str, table: dict) -> str:
    """The name under which a key of the file is read. Raises InputError where the file has both names."""
    now = RENAMED.get(key, key)
    section, _, name = now.partition(".")
    if now != key and name in table.get(section, {}):
        raise InputError(f"{key} is called {now} now, and the file has both: take one of them out")
    return now
