"""What can be said of flow, reservoir, pump, pipe and what is measured: the fields of a design, by section."""

from __future__ import annotations

from brimwork.design.typed.making import YES_NO, J, length_field, share, size_field
from brimwork.design.typed.reading import Curve, Field, OneOf, Several

LAWS = ("Colebrook", "Swamee-Jain", "Haaland", "Blasius", "Hazen-Williams", "ribbed hose")

WATER_FIELDS: dict[str, dict] = {
    "flow": {
        "for_each_metre": Field("required flow for each metre of the edge that it runs over", "L/s per m", "US gal/min per ft", such="0.2 L/s per m", such_us="1 US gal/min per ft", span="a film; a sheet takes 10 to 25 times"),
        "weir_coefficient": Field("weir coefficient of the rim, or of the lip in place of that of a broad crest", "m^0.5/s", "ft^0.5/s", such="1.7 m^0.5/s", such_us="3.1 ft^0.5/s"),
        "water_temperature": Field("temperature of the water", "degC", "degF", signed=True, usual="20 degC", basis=J),
    },
    "reservoir": {
        "block_length": size_field("length of one block", "600 mm", "24 in"),
        "block_width": size_field("width of one block", "400 mm", "16 in"),
        "block_height": size_field("height of one block", "420 mm", "16 1/2 in"),
        "blocks_along": Field("blocks along the pit", "", whole=True, most=50, such="2"),
        "blocks_across": Field("blocks across the pit", "", whole=True, most=50, such="2"),
        "block_mass": Field("mass of one block", "kg", "lb", such="7 kg", such_us="15 lb"),
        "void_fraction": share("void fraction of the blocks", "0.95", span="0.9 to 0.97"),
        "short_term_strength": Field("short-term strength of the block", "kPa", "psi", such="110 kPa", such_us="16 psi"),
        "creep_factor": share("creep factor of the blocks", "0.4", span="0.3 to 0.6"),
        "safety_factor": Field("safety factor on the block", "", such="1.5"),
        "cover": length_field("thickness of a stiff slab or grid all over the blocks, under the stone (0 for none)", "0 mm", "0 in"),
        "cut_walls": OneOf("the blocks' maker or an engineer has designed, in writing, how walls cut for the access panel are held again", YES_NO),
        "lowest_level": length_field("lowest level at which the pump may run, above the floor", "150 mm", "6 in"),
        "running_level": length_field("highest level while running, above the floor", "365 mm", "14 1/2 in"),
        "cut_out_level": length_field("level at which the low-water cut-out stops the pump, above the floor", "160 mm", "6 1/4 in"),
        "top_up_level": length_field("level at which the top-up valve closes, above the floor", "360 mm", "14 1/4 in"),
        "static_level": length_field("level with the pump off, above the floor", "380 mm", "15 in"),
        "overflow_level": length_field("overflow level, above the floor", "410 mm", "16 1/4 in"),
    },
    "pump": {
        "shut_off_head": Field("shut-off head of the pump", "m", "ft", such="3 m", such_us="10 ft"),
        "maximum_flow": Field("maximum flow of the pump, at zero head", "L/min", "US gal/min", such="60 L/min", such_us="16 US gal/min"),
        "curve": Curve("points of the pump's curve, from its maker"),
        "power": Field("power that the pump takes in", "W", such="45 W"),
        "voltage": Field("voltage on the pump's rating plate", "V", such="230 V", such_us="120 V"),
        "frequency": OneOf("frequency on the pump's rating plate", ("50 Hz", "60 Hz", "50 and 60 Hz", "direct current")),
        "starting_current": Field("current that the pump takes while it starts, from its maker", "A", such="2 A", such_us="4 A"),
        "covered": length_field("water over the pump at the lowest level", "60 mm", "2 1/2 in"),
        "cut_out": OneOf("whether a low-water cut-out stops the pump", YES_NO),
        "intake_level": length_field("intake of the pump, above the floor", "60 mm", "2 1/2 in"),
        "intake_area": Field("open area of the intake strainer", "cm2", "in2", such="150 cm2", such_us="24 in2"),
        "solids": length_field("largest grain that the pump passes, from its maker", "5 mm", "3/16 in"),
        "strainer": length_field("opening of the strainer's holes", "4 mm", "1/8 in"),
        "bay": Field("side of the square bay in the blocks for the pump", "mm", "in", usual="200 mm", basis=J, usual_us="8 in"),
    },
    "pipe": {
        "bore": size_field("true inside diameter of the hose", "25 mm", "1 in"),
        "length": Field("length of the hose", "m", "ft", such="3 m", such_us="10 ft"),
        "fittings": Field("sum of the loss coefficients of the fittings", "", such="4", span="2 to 8; or name them: square entrance + 2 short elbow + exit", fittings=True),
        "friction_law": OneOf("friction law of the hose", LAWS),
        "roughness": length_field("roughness of the inside of the hose", "0.0015 mm", "0.00006 in"),
        "hazen_williams": Field("Hazen-Williams coefficient of the hose", "", such="150", span="100 to 150"),
        "mouth_below_rim": length_field("how far the hose mouth lies below the rim", "15 mm", "5/8 in"),
        "valve": OneOf("a valve on the delivery side, with which the flow is throttled to what is wanted", YES_NO),
        "check_valve": OneOf("check valve in the hose", YES_NO),
    },
    "overflow_pipe": {
        "bore": length_field("bore of the overflow pipe", "40 mm", "1 1/2 in"),
        "head": length_field("water over the middle of the overflow pipe before it spills elsewhere", "50 mm", "2 in"),
        "fall": Field("fall of the overflow pipe over its run", "mm", "in", such="50 mm", such_us="2 in"),
        "end_along": Field("end of the overflow pipe from the middle of the blocks, along them: to the right on the plan, below zero to the left", "m", "ft", signed=True, such="4 m", such_us="13 ft"),
        "end_across": Field("end of the overflow pipe from the middle of the blocks, across them: up on the plan, below zero down", "m", "ft", signed=True, such="1 m", such_us="3 ft"),
        "rain": Field("heaviest rain", "mm/h", "in/h", such="75 mm/h", such_us="3 in/h"),
        "catch_area": Field("area that drains into the reservoir", "m2", "ft2", such="3 m2", such_us="30 ft2"),
        "stuck_flow": Field("flow of a top-up valve that sticks open", "L/min", "US gal/min", such="10 L/min", such_us="3 US gal/min"),
    },
    "climate": {
        "evaporation": Field("reference evapotranspiration in the driest month", "mm/day", "in/day", such="5 mm/day", such_us="0.2 in/day"),
        "coefficient": Field("coefficient of open water for its evaporation", "", such="1.05", span="1.0 to 1.1"),
        "splash": Field("water lost by splash", "L/day", "US gal/day", such="3 L/day", such_us="0.8 US gal/day"),
    },
    "measured": {
        "flow": Field("flow measured with a bucket at the outlet", "L/min", "US gal/min", such="25 L/min", such_us="7 US gal/min"),
        "start_drop": length_field("drop of the level when the pump starts", "12 mm", "1/2 in"),
        "leak": Field("fall of the level in a day with the pump off, less that of a control bucket", "mm/day", "in/day", signed=True, such="1 mm/day", such_us="0.04 in/day"),
        "filled": Field("water that filled the empty reservoir up to the static level, by a meter", "L", "US gal", such="240 L", such_us="60 US gal"),
        "current": Field("current of the running pump", "A", such="0.2 A", such_us="0.4 A"),
        "rim_levels": Several("levels of the rim at eight points or more round it", "mm", "in", "0 mm, 1 mm, 1 mm, 0 mm, -1 mm, 0 mm, 0 mm, 1 mm", "0 in, 1/32 in, 0 in, -1/32 in, 0 in, 0 in, 1/32 in, 0 in", signed=True),
    },
}  # fmt: skip
