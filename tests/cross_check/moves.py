"""What each result hangs on and which way it goes, from physics, by hand.

A line names a result and what moves it at once: "+" with it, "-" against it, "~" either way, "?" it may leave it as it is (a width chosen from a list, a
greatest of several), "=" along whatever ways it may come, it may leave it. Names with a point are values of the design, the others results, or steps on the way. What moves a result through others follows.
"""

SHARED = """
base_length: +reservoir.blocks_along +reservoir.block_length
base_width: +reservoir.blocks_across +reservoir.block_width
block_plan: +base_length +base_width
water_area: +block_plan +reservoir.void_fraction ~measured.filled
rho: -flow.water_temperature
nu: -flow.water_temperature
speed_wanted: +flow_wanted -pipe.bore
reynolds: +flow_wanted -pipe.bore -nu
friction: -flow_wanted ~pipe.bore +pipe.roughness +nu ~pipe.friction_law
friction_head: +flow_wanted -pipe.bore +pipe.length +pipe.roughness +nu ~pipe.friction_law
fittings_head: +flow_wanted -pipe.bore +pipe.fittings
head_wanted: +static_lift +friction_head +fittings_head
loss_share: -static_lift +friction_head +fittings_head
pump_head_at_flow_wanted: +pump.shut_off_head +pump.maximum_flow -flow_wanted ~pump.curve
flow_sent: ?duty_flow ?flow_wanted ~measured.flow ?pipe.valve
model_flow: +pump.shut_off_head +pump.maximum_flow ~pump.curve -static_lift +pipe.bore -pipe.length -pipe.fittings -pipe.roughness -nu ~pipe.friction_law
duty_flow: +model_flow ~measured.flow
duty_head: +pump.shut_off_head +pump.maximum_flow ~pump.curve +static_lift -pipe.bore +pipe.length +pipe.fittings +pipe.roughness +nu ~pipe.friction_law
flow_ratio: +duty_flow -flow_wanted
duty_speed: +duty_flow ~pipe.bore
lift_share: +static_lift -pump.shut_off_head ~pump.curve
nameplate: +rho +pump.maximum_flow +pump.shut_off_head ~pump.curve -pump.power
static_volume: +water_area +reservoir.static_level
usable: +water_area +reservoir.static_level ?reservoir.lowest_level ?reservoir.cut_out_level ?reservoir.overflow_level ?pump.cut_out
turnover: +usable -flow_wanted
transit_stone: +catch.wet_area +catch.stone_thickness +catch.hold_up
transit_by_model: +transit_above +transit_pipe +transit_stone
transit: +transit_by_model ~measured.start_drop
start_drop: +transit -water_area ~measured.start_drop
wet_area: +wet_above +catch.wet_area
daily_loss: ~measured.leak +climate.coefficient +climate.evaporation +climate.splash +wet_area
days: +usable -transit -daily_loss
drainback_room: +water_area +reservoir.overflow_level -reservoir.running_level ?reservoir.static_level ?start_drop ?reservoir.top_up_level
drainback: +drainback_room -transit
day_share: +daily_loss -usable
overflow_flow: ~overflow_pipe.bore ?overflow_pipe.head ?assumptions.overflow_discharge ?levels.liner_edge ?levels.block_top ?reservoir.block_height ?reservoir.overflow_level ?buying.overflow_run ?overflow_pipe.fall ?overflow_pipe.end_along ?overflow_pipe.end_across ?panel_long ?panel_across
overflow_ratio: +overflow_flow -overflow_pipe.rain ?overflow_pipe.catch_area ?box_length ?box_width ?catch.apron -overflow_pipe.stuck_flow -assumptions.run_off
block_allowable: +reservoir.short_term_strength +reservoir.creep_factor -reservoir.safety_factor
wind_pressure: +site.wind_speed +assumptions.exposure +assumptions.air_density
brief_allowable: +reservoir.short_term_strength -reservoir.safety_factor
foot_pressure: +assumptions.person -assumptions.foot -reservoir.cover ?site.wheel_load ?site.wheel_side
foot_utilisation: +foot_pressure -brief_allowable
stone_on_blocks: +block_plan -bare +catch.stone_thickness +catch.stone_density
blocks_mass: +reservoir.blocks_along +reservoir.blocks_across +reservoir.block_mass
cover_mass: +reservoir.cover +block_plan +assumptions.cover_density
base_mass: +cover_mass +standing_mass +stone_on_blocks +blocks_mass +static_volume +rho
base_pressure: +cover_mass +standing_mass +moment +stone_on_blocks +blocks_mass +static_volume +rho ~base_length ~base_width
soil_utilisation: +base_pressure -site.soil_bearing
soil_share: ?base_pressure ?local_pressure -site.soil_bearing
flotation: +stone_on_blocks +blocks_mass -rho -box_length -box_width -site.ground_water
box_length: +base_length +ground.lining_thickness +ground.clearance
box_width: +base_width +ground.lining_thickness +ground.clearance
box_depth: +reservoir.block_height +ground.box_upstand
side_pressure: +assumptions.fill_push +assumptions.fill_density ~reservoir.block_height ~ground.box_upstand ?levels.soil ?levels.block_top ~site.ground_water ?rho
side_thrust: +assumptions.fill_push +assumptions.fill_density ~reservoir.block_height +ground.box_upstand ?levels.soil ?levels.block_top ~site.ground_water ?rho ?panel_long ?panel_across
bow: +side_pressure ?buying.strut_spacing ?box_length ?box_width -ground.board -assumptions.board_stiffness
panel_long: +box_length +ground.board
panel_across: +box_width +ground.board
liner_length: +box_length +box_depth +catch.apron +lining.beyond_apron
liner_width: +box_width +box_depth +catch.apron +lining.beyond_apron
roll: ?liner_length ?liner_width ?lining.rolls
pit_length: +panel_long +ground.working_space
pit_width: +panel_across +ground.working_space
pit_depth: -levels.block_top +reservoir.block_height +ground.lining_thickness +ground.sand +ground.sub_base
diagonal: +pit_length +pit_width
pit_dug: +pit_length +pit_width +pit_depth
apron_dug: -ground.box_upstand +base_length +base_width +catch.apron -levels.block_top ~ground.lining_thickness ~ground.clearance -ground.board -ground.working_space
dug: ~apron_dug +pit_dug
spoil: +dug +ground.bulking
stone_area: +box_length +box_width +catch.apron -bare
stone_mass: +stone_area -ground.box_upstand +reservoir.cover +catch.stone_thickness +catch.stone_density +catch.stone_waste
current: +pump.power -supply.voltage -supply.power_factor ~measured.current
voltage_drop: ?current ?supply.circuit_load -supply.voltage +supply.cable_length ?supply.voltage_drop ?supply.resistance ?supply.conductor
energy: +pump.power +supply.hours_per_day
running_cost: +energy +supply.tariff
cord_wanted: ?supply.point_along ?supply.point_across +supply.cord_route +assumptions.drip_loop +assumptions.lift_out
root_radius: +site.tree_stem
noise: +site.sound_at_1m -site.neighbour
lift: ?site.lift_mass ?reservoir.block_mass ?site.sling_mass +site.lift_reach ~site.lift_height +site.lift_travel -assumptions.grip
sling: +site.sling_mass ?site.sling_equal -site.sling_legs -site.sling_angle
cost_estimate: +site.base_estimate +costing.contingency
apron_wanted: +fall +catch.splash_factor +assumptions.wind_factor
"""
STANDING = """
block_utilisation: +block_pressure -block_allowable
slab_mass: +slab.length +slab.width +slab.thickness +slab.density
spread_utilisation: +spread_pressure -block_allowable
local_pressure: +reservoir.block_mass -reservoir.block_length -reservoir.block_width +reservoir.void_fraction +reservoir.static_level +rho -ground.sand -ground.sub_base
local_pressure: -slab.length -slab.width +slab.thickness +slab.density
spread_pressure: ~slab.length ~slab.width ~slab.thickness +slab.density
spread_area: ~slab.length ~slab.width ~slab.thickness
eccentricity: -cover_mass
eccentricity_across: -cover_mass -stone_on_blocks -blocks_mass -static_volume -standing_mass
kern_share: +eccentricity_across ~base_width
base_pressure: +moment_across
static_lift: +reservoir.cover
fall: ?reservoir.cover ?catch.stone_thickness ?levels.block_top
apron_share: ?box_length ?box_width
"""
VESSEL = """
content: +vessel.water -vessel.foam +vessel.foam_density +vessel.pebbles -assumptions.pebble_gaps +assumptions.pebble_density +rho
water_held: +vessel.water -vessel.foam -vessel.pebbles +assumptions.pebble_gaps
rim_length: ~vessel.shape +vessel.rim_diameter
vessel_surface: ~vessel.shape +vessel.rim_diameter
flow_wanted: +flow.for_each_metre +rim_length
rim_head: +flow.for_each_metre -flow.weir_coefficient
static_lift: +reservoir.block_height +slab.thickness ~vessel.stands_on +vessel.height +rim_head -reservoir.lowest_level
fall: +slab.thickness ~vessel.stands_on +vessel.height
rim_error_share: +vessel.rim_out_of_level -rim_head ~measured.rim_levels
rim_flow_ratio: +rim_error_share
rim_runs_dry: +rim_head
film: +flow.for_each_metre +nu
boil: +flow_wanted -pipe.bore
outlet_bore: +flow_wanted
transit_pipe: +pipe.bore +pipe.length ~pipe.check_valve
transit_rim: +vessel_surface +rim_head
transit_siphon: +vessel_surface +pipe.mouth_below_rim ~pipe.check_valve
transit_film: +vessel.side_area +film
transit_above: +transit_rim +transit_siphon +transit_film
wet_above: +vessel_surface +vessel.side_area
slab_mass: ~vessel.stands_on
patch: +slab.length +slab.width ~vessel.stands_on
bare: +patch
standing_mass: +vessel.mass +content +slab_mass
moment: +vessel.mass +content +slab_mass +vessel.offset
moment_across: +vessel.mass +content +slab_mass +vessel.offset_across
eccentricity_across: +moment_across
vessel_weight: +standing_mass
block_pressure: +vessel.mass +content -slab.length -slab.width +slab.thickness +slab.density ~vessel.stands_on
eccentricity: +moment -stone_on_blocks -blocks_mass -static_volume -standing_mass
kern_share: +eccentricity ~base_length
hoop_stress: ~vessel.shape +rho +vessel.height +vessel.rim_diameter -vessel.wall_thickness ?vessel.widest
wall_share: +hoop_stress -vessel.tensile_strength
tipping_full: ?vessel.shape ~vessel.foot_corners ?vessel.stands_on +vessel.mass +content +vessel.foot_outside -vessel.height ~site.use
tipping_in_wind: ?vessel.shape ~vessel.foot_corners ?vessel.stands_on +vessel.mass +vessel.foot_outside -vessel.height -vessel.rim_diameter ?vessel.widest -wind_pressure -site.force_coefficient
spread_pressure: ~vessel.shape +vessel.mass +content -vessel.foot_outside ?vessel.foot_inside ~vessel.foot_corners ~vessel.stands_on
spread_area: ~vessel.shape +vessel.foot_outside ?vessel.foot_inside ~vessel.foot_corners ~vessel.stands_on
local_pressure: ?vessel.shape ~vessel.stands_on +vessel.mass +content ?vessel.foot_outside
pebbles_wanted: +vessel.foam -vessel.foam_density +assumptions.pebble_gaps -assumptions.pebble_density +rho
tipping_empty: ?vessel.shape ~vessel.foot_corners ?vessel.stands_on +vessel.mass +vessel.foot_outside -vessel.height ~site.use
foam_held: +vessel.pebbles -vessel.foam +vessel.foam_density -assumptions.pebble_gaps +assumptions.pebble_density -rho
apron_share: ?vessel.rim_diameter ?vessel.widest ?vessel.offset ?vessel.offset_across ?vessel.shape ?catch.apron -apron_wanted
"""
STONES = """
flow_wanted: +flow.for_each_metre +stones.diameters
static_lift: +reservoir.block_height +slab.thickness ~stones.stand_on +stones.heights -reservoir.lowest_level ?flow_wanted ?stones.branch_lengths ?stones.branch_bore
flow_sent: ?stones.valves
fall: +slab.thickness ~stones.stand_on +stones.heights
film: +flow.for_each_metre +nu
boil: +flow.for_each_metre ?stones.diameters -stones.hole
outlet_bore: +flow.for_each_metre ?stones.diameters
branch_head: +flow_wanted ?stones.hole ~stones.branch_bore +stones.branch_lengths +stones.branch_fittings +pipe.roughness +nu ~pipe.friction_law ?stones.heights
throttle: ~flow_wanted ?stones.hole ~stones.branch_bore ~stones.branch_lengths ~stones.branch_fittings ~pipe.roughness ~nu ~pipe.friction_law ~stones.heights
head_wanted: +branch_head
loss_share: +branch_head
model_flow: ?stones.valves ?stones.hole +stones.branch_bore -stones.branch_lengths -stones.branch_fittings ?stones.diameters ?flow.for_each_metre
duty_head: ?stones.valves ?stones.hole -stones.branch_bore +stones.branch_lengths +stones.branch_fittings ?stones.diameters ?flow.for_each_metre
transit_pipe: +pipe.bore +pipe.length +stones.branch_bore +stones.branch_lengths +stones.hole +stones.heights ~pipe.check_valve
transit_film: +stones.diameters +stones.heights +film
transit_above: +transit_film
wet_above: +stones.diameters +stones.heights
patch: +slab.length +slab.width ~stones.stand_on ?stones.rough_contact
slab_mass: ~stones.stand_on
bare:
heaviest: +stones.diameters +stones.heights -stones.hole +stones.density +slab_mass
block_pressure: +stones.diameters +stones.heights -stones.hole +stones.density -slab.length -slab.width +slab.thickness +slab.density ~stones.stand_on ?stones.rough_contact
standing_mass: +stones.diameters +stones.heights -stones.hole +stones.density +slab_mass
moment_across: ~stones.places_across ~stones.diameters ~stones.heights ~stones.hole +stones.density +slab_mass
eccentricity_across: ~moment_across ~rho
moment: ~stones.places_along ~stones.diameters ~stones.heights ~stones.hole +stones.density
eccentricity: ~moment ~stone_on_blocks ~blocks_mass ~static_volume ~standing_mass ~rho
kern_share: ~eccentricity ~base_length
spread_pressure: ~stones.diameters +stones.heights -stones.hole +stones.density ~stones.stand_on ?stones.rough_contact
spread_area: ~stones.diameters ?stones.heights ?stones.hole ~stones.stand_on ?stones.rough_contact
local_pressure: ~stones.diameters +stones.heights -stones.hole +stones.density ~stones.stand_on
tipping: ~stones.stand_on ?stones.places_along ?stones.places_across ~stones.diameters ?stones.heights -stones.hole +stones.density +stones.base_share ~site.use
tipping_in_wind: ~stones.stand_on ?stones.places_along ?stones.places_across ~stones.diameters -stones.heights -stones.hole +stones.density +stones.base_share -wind_pressure -site.force_coefficient
apron_share: ?stones.diameters ?stones.places_along ?stones.places_across ?catch.apron -apron_wanted
"""
SHEET = """
eccentricity_across:
base_pressure: =reservoir.blocks_along =reservoir.blocks_across
critical_depth: +flow.for_each_metre
brink_depth: +flow.for_each_metre
brink_speed: +flow.for_each_metre
fall_time: +fall
throw: +brink_speed +fall_time
transit_pipe: +pipe.bore +pipe.length ~pipe.check_valve
standing_mass:
moment:
bare:
eccentricity:
kern_share:
"""
BLADE = """
flow_wanted: +flow.for_each_metre +blade.lip_width
lip_head: +flow.for_each_metre -flow.weir_coefficient
static_lift: +blade.lip_level +lip_head -levels.block_top +reservoir.block_height -reservoir.lowest_level
fall: +blade.lip_level -blade.stone_level
landing_speed: +brink_speed +fall
landing_thickness: ~flow.for_each_metre -fall
trough: ?blade.trough_length ?blade.lip_width +blade.trough_width
wall_mass: ?blade.trough_length ?blade.lip_width +blade.trough_width -blade.trough_depth +blade.lip_level +assumptions.wall_density
tipping: +wall_mass +blade.trough_width ~blade.lip_level ?blade.wall_height ~site.use
tipping_in_wind: ?blade.trough_length ?blade.lip_width +blade.trough_width -blade.trough_depth ~blade.lip_level ?blade.wall_height +assumptions.wall_density -wind_pressure -site.force_coefficient
local_pressure: ?base_pressure ?wall_mass ?trough ?lip_head ?blade.trough_depth ?rho ?reservoir.block_height ?levels.block_top ?ground.lining_thickness ?ground.sand ?ground.sub_base ?assumptions.wall_density
transit_head: +trough +lip_head
transit_sheet: +flow_wanted +fall_time
transit_siphon: +trough +blade.trough_depth ~blade.feed ~pipe.check_valve
transit_above: +transit_head +transit_sheet +transit_siphon
wet_above: +trough +blade.lip_width +fall
apron_wanted: +throw
apron_share: ?catch.apron ?apron_wanted ?box_width ?blade.lip_width ?fall ?catch.splash_factor ?assumptions.wind_factor
"""
CASCADE = """
flow_wanted: +flow.for_each_metre +cascade.width
step_head: +flow.for_each_metre -flow.weir_coefficient
static_lift: +cascade.top_level +step_head -levels.block_top +reservoir.block_height -reservoir.lowest_level
fall: +cascade.step_fall
pools: +cascade.header_area +cascade.steps ?cascade.pool_area ?cascade.width ?cascade.tread
tread_share: +cascade.tread -throw
local_pressure: ?base_pressure ?cascade.top_level ?cascade.header_volume ?cascade.header_area ?assumptions.wall_density ?rho
header_mass: +cascade.header_area +cascade.top_level +assumptions.wall_density
tipping: +cascade.header_area ?cascade.width +assumptions.wall_density ~site.use
tipping_in_wind: ?cascade.header_area ?cascade.width -cascade.top_level +assumptions.wall_density -wind_pressure -site.force_coefficient
normal_depth: +flow_wanted -cascade.rill_width -cascade.rill_slope +cascade.rill_roughness
freeboard: +cascade.rill_wall -normal_depth
transit_pools: +pools +step_head
transit_rill: +cascade.rill_length +flow_wanted ~cascade.rill_width -cascade.rill_slope +cascade.rill_roughness
transit_sheet: +cascade.steps +flow_wanted +fall_time +last_sheet
transit_siphon: +cascade.header_volume ~cascade.feed ~pipe.check_valve
transit_above: +transit_pools +transit_rill +transit_sheet +transit_siphon
wet_above: ~last_fall +pools +cascade.steps +cascade.width +fall +cascade.rill_width +cascade.rill_length
last_fall: +cascade.top_level -cascade.steps -cascade.step_fall -cascade.rill_length -cascade.rill_slope -levels.block_top -catch.stone_thickness -reservoir.cover
last_speed: +flow_wanted -cascade.rill_width +cascade.rill_slope -cascade.rill_roughness
last_throw: +last_speed +last_fall
last_sheet: +flow_wanted +last_fall
apron_share: ?cascade.splash_edge ?apron_wanted ?last_throw ?last_fall ?catch.splash_factor ?assumptions.wind_factor ?catch.apron ?box_width ?cascade.rill_width
"""
TABLES = {
    "overflowing vessel": SHARED + STANDING + VESSEL, "drilled stones": SHARED + STANDING + STONES, "blade": SHARED + SHEET + BLADE, "cascade": SHARED + SHEET + CASCADE,
}  # fmt: skip
_SIGNS = {("+", "+"): "+", ("-", "-"): "+", ("+", "-"): "-", ("-", "+"): "-"}


def moved_by(kind: str) -> dict[str, dict[str, str]]:
    """By value of the design: the results that it moves, and which way."""
    direct: dict[str, dict[str, str]] = {}
    for line in filter(None, TABLES[kind].splitlines()):
        name, _, inputs = line.partition(":")
        direct.setdefault(name, {}).update({one[1:]: one[0] for one in inputs.split()})
    found: dict[str, dict[str, str]] = {}
    for name in direct:
        for key, sign in _down(direct, name).items():
            found.setdefault(key, {})[name] = sign
    return found


def _down(direct: dict, name: str) -> dict[str, str]:
    """By value of the design: the sign with which it reaches a result, along all ways together."""
    ways: dict[str, set[str]] = {}
    for one, sign in direct[name].items():
        if sign != "=":
            for key, below in (_down(direct, one) if one in direct else {one: "+"}).items():
                ways.setdefault(key, set()).add("?" if "?" in (sign, below) else _SIGNS.get((sign, below), "~"))
    return {key: "?" if direct[name].get(key) == "=" else signs.pop() if len(signs) == 1 else "?" if "?" in signs else "~" for key, signs in ways.items()}
