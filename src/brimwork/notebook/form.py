"""The form of a design: which values stand in which step, under which names, and which are folded away because they are seldom changed."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import SECTIONS, sections
from brimwork.design.typed.prices import PER
from brimwork.design.typed.starting import ALSO_SHORT, ASKED_FIRST, BUILDERS_WORDS
from brimwork.design.typed.steps import LEADS, STEPS, applies
from brimwork.design.typed.wording import spoken

# The theme's own red, mixed with the colour of its text, so that it can be read on light and dark.
ALERT = "color-mix(in srgb, var(--jp-error-color1, #a9471c) 70%, currentcolor)"
HEADS = {"title": "Title", "region": "Country and units", "note": "Note"}
# Step of the form: the sections in it, or single keys of a section that belong to it rather than to their section's step.
FORM_STEPS: dict[str, tuple[str, ...]] = {
    "Site and people": ("title", "region", "note", "site"),
    "The feature": ("vessel", "stones", "blade", "cascade", "slab", "flow"),
    "Reservoir": ("reservoir", "levels", "overflow_pipe", "climate"),
    "Pump and hose": ("pump", "pipe"),
    "Ground": (
        "ground",
        "site.soil_bearing",
        "site.footing_distance",
        "site.footing_depth",
        "site.footing_along",
        "site.footing_across",
        "site.pit_sides",
        "site.ground_water",
        "site.frost_depth",
    ),
    "Lining and stone": ("lining", "catch"),
    "Electricity": ("supply",),
    "Handling": tuple(f"site.{key}" for key in SECTIONS["site"] if key.startswith(("lift_", "sling_")) or key in ("slings", "gate", "widest_item")),
    "Cost": ("site.budget", "site.base_estimate", "prices", "costing", "buying"),
    "Programme": ("programme",),
    "Questions to answer": ("answers",),
    "Measured on site": ("measured",),
    "Assumptions and limits": ("assumptions", "limits"),
}
# What few change, and whoever does knows why: folded under the others of its step.
_SELDOM_SECTIONS = ("assumptions", "limits", "buying", "climate", "costing")
_SELDOM = {
    "vessel": ("foot_inside", "foot_corners", "side_area", "rim_length", "surface", "foot_width", "offset_across", "foam_density", "wall_thickness", "tensile_strength", "widest", "rim_out_of_level"),
    "stones": ("places_along", "places_across", "branch_fittings", "rough_contact", "base_share", "density", "hole"),
    "blade": ("feed", "trough_length"), "cascade": ("feed", "pool_area", "header_area", "rill_wall", "rill_roughness", "splash_edge"), "slab": ("density",),
    "flow": ("weir_coefficient", "water_temperature"),
    "reservoir": ("block_mass", "void_fraction", "creep_factor", "safety_factor", "cover"),
    "levels": ("soil", "staple_line", "liner_edge"), "overflow_pipe": ("head", "fall", "end_along", "end_across", "rain", "stuck_flow", "catch_area"),
    "pump": ("curve", "covered", "intake_level", "intake_area", "bay"), "pipe": ("fittings", "friction_law", "roughness", "hazen_williams", "mouth_below_rim"),
    "ground": ("lining_thickness", "sand", "clearance", "box_upstand", "bulking"), "catch": ("splash_factor", "stone_density", "stone_waste", "wet_area", "hold_up"),
    "lining": ("beyond_apron", "mesh_opening", "smallest_stone", "panel_clearance"),
    "supply": ("power_factor", "voltage_drop", "resistance", "leakage", "residual_rating", "duct_cover", "point_along", "point_across"),
    "site": ("sound_at_1m", "background", "wind_speed", "force_coefficient", "wheel_load", "wheel_side", "north", "base_estimate", "unattended", "footing_along", "footing_across", "tree_along", "tree_across"),
}  # fmt: skip
SELDOM = {f"{section}.{key}" for section, keys in _SELDOM.items() for key in keys}


@cache
def _in_step(step: str, kind: str) -> tuple[str, ...]:
    """The keys of a step for a kind of feature, in the order of the design file; those of the head first."""
    single = {key for entries in FORM_STEPS.values() for key in entries if "." in key}
    found = [entry for entry in FORM_STEPS[step] if entry in HEADS]
    for section, fields in sections(kind).items():
        keys = (f"{section}.{name}" for name in fields)
        found += [key for key in keys if (key in FORM_STEPS[step] if key in single else section in FORM_STEPS[step])]
    return tuple(found)


def keys_of(step: str, design, priced: frozenset[str] | None = None) -> list[str]:
    """The keys of a step that this design needs: no step of work that it has not, and with `priced` only the prices of what it buys, or has."""
    found = []
    for key in _in_step(step, design.kind):
        section, _, name = key.partition(".")
        if section == "prices" and priced is not None and name.removesuffix(PER) not in priced and key not in design.values:
            continue
        row = STEPS.get(name) or LEADS.get(name.removeprefix("order_")) if section == "programme" else None
        if row and not applies(row, design) and key not in design.values:
            continue
        found.append(key)
    return found


# Values that play no part as a design stands: what a rill is like where there is none, what slabs are like where the stones stand on the blocks.
_IDLE: dict[str, Callable[[Design], bool]] = {
    **dict.fromkeys(
        ("cascade.rill_width", "cascade.rill_slope", "cascade.rill_wall", "cascade.rill_roughness"), lambda d: _stands(d, "cascade.rill_length", 0.0)
    ),
    **dict.fromkeys((f"slab.{name}" for name in ("length", "width", "thickness", "density")), lambda d: _stands(d, "stones.stand_on", "blocks")),
}


def idle(design: Design) -> frozenset[str]:
    """The boxes that are not shown as the design stands."""
    return frozenset(key for key, plays_no_part in _IDLE.items() if plays_no_part(design))


def _stands(design: Design, key: str, value: float | str) -> bool:
    given = design.given(key)
    return given is not None and given.value == value


def is_seldom(key: str, kind: str) -> bool:
    """Whether a value is folded away in its step."""
    return (key.partition(".")[0] in _SELDOM_SECTIONS or key in SELDOM) and key not in (*ASKED_FIRST[kind], *ALSO_SHORT[kind])


@cache
def name_of(key: str, region: str) -> str:
    """What stands beside a box: a builder's words where there are some, else what the field says of itself."""
    if key in HEADS:
        return HEADS[key]
    section, _, name = key.partition(".")
    words = spoken(BUILDERS_WORDS.get(key) or SECTIONS[section][name].name, region)
    return words[:1].upper() + words[1:]
