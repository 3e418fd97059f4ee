"""Which value of a design a level, a distance or a body in a drawing shows: the one that somebody would change to move it."""

from __future__ import annotations

# By the level's name; a level that several values make is led to the one that is changed most.
OF_LEVEL: dict[str, str] = {
    "formation": "ground.sub_base",
    "reservoir floor": "reservoir.block_height",
    "pump intake": "pump.intake_level",
    "cut-out": "reservoir.cut_out_level",
    "top-up": "reservoir.top_up_level",
    "lowest water": "reservoir.lowest_level",
    "running water": "reservoir.running_level",
    "static water": "reservoir.static_level",
    "overflow": "reservoir.overflow_level",
    "block top": "levels.block_top",
    "stone top": "catch.stone_thickness",
    "staple line": "levels.staple_line",
    "liner edge": "levels.liner_edge",
    "ground water": "site.ground_water",
    "frost line": "site.frost_depth",
    "vessel base": "slab.thickness",
    "rim": "vessel.height",
    "stone base": "slab.thickness",
    "top of the highest stone": "stones.heights",
    "highest stone": "stones.heights",
    "header lip": "cascade.top_level",
    "splash stone": "blade.stone_level",
    "lip": "blade.lip_level",
}
BOX_SIZE, PIT_SIZE, PIT_DEPTH = "ground.clearance", "ground.working_space", "reservoir.block_height"
PUMPED = "pump.maximum_flow"
ACROSS = {"blocks": "reservoir.blocks_across", "box": BOX_SIZE, "pit": PIT_SIZE, "stone": "catch.apron"}
ALONG = ACROSS | {"blocks": "reservoir.blocks_along"}
