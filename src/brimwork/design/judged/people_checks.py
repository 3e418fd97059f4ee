"""The checks of supply and people: how the number of each is worked out, and what to change next."""

from __future__ import annotations

from typing import Any

from brimwork import units
from brimwork.design.done import budget
from brimwork.design.follows.chain import Chain
from brimwork.design.judged.grading import Check, Judged, is_public
from brimwork.design.typed.criteria import criterion
from brimwork.design.typed.limits import NEVER, Limits, at_most
from brimwork.design.typed.telling import told

WARM, MUCH_SPLASH = units.read("25 degC", "degC"), units.read("10 L/day", "L/day")  # over these droplets are no longer few and cool: judgement
FLATTEST_LEG = units.read("30 deg", "deg")


def _slings(chain: Chain) -> Limits:
    """No rating is enough for a leg flatter than 30 degrees."""
    return at_most(0.50, 1.00) if chain.design["site.sling_angle"] >= FLATTEST_LEG else NEVER


def _wall(chain: Chain) -> Limits:
    """A free-standing wall away from people only; anything else goes to an engineer. Soil that stands over the paving is held back by something."""
    if chain.design.kind == "blade" and (is_public(chain) or chain.design["blade.wall_retains"] != "nothing"):
        return NEVER
    if chain.soil_held > 0.15:
        return NEVER
    return at_most(0.6, 1.0)


PROTECTS = {"UK": 0.030, "US": 0.006}  # A: most at which a device trips that protects people; from memory, local codes govern


def _residual_current(chain: Chain, answer: object) -> tuple[str, str]:
    rating = chain.design.given("supply.residual_rating")
    if answer != "none" and rating and rating.value > PROTECTS[chain.design.region] * (1 + 1e-9):
        return "fail", f"trips at {units.write(rating.value, 'mA')}, more than the {units.write(PROTECTS[chain.design.region], 'mA')} that protect people"
    return {
        "tested by instrument": ("pass", "by your answer: present, tested by button and instrument"),
        "tested by button": ("marginal", "by your answer: present, tested by button only"),
    }.get(str(answer), ("fail", "absent"))


def _open_water(chain: Chain, typed: Any) -> tuple[str, str]:
    depth = chain.counted("site.open_water")
    shown = f"{told(depth, 'mm', chain.design.region)} of free water"
    if depth == 0:
        return "pass", "none, by your answer: stone or a rigid grille at or above the water"
    if is_public(chain) or depth > 0.050:
        return "fail", f"{shown}, where a child can reach it" + (", at a public site" if is_public(chain) else "")
    return "marginal", f"{shown}; only with no child under six unattended, in writing"


def _legionella(chain: Chain, answer: object) -> tuple[str, str]:
    use = chain.design["site.use"]
    if use == "care premises":
        return "fail", "care or health premises: refer to the duty holder before anything is built"
    if answer == "in place":
        return "pass", "by your answer: written assessment in place"
    if use == "private":
        warm, splash = chain.design["flow.water_temperature"] > WARM, chain.design["climate.splash"] > MUCH_SPLASH
        low = answer == "low splash, private" and not warm and not splash
        but = " but the water is warm" if warm else " but much of it splashes" if splash else ""
        return ("pass", "by your answer: private, low splash") if low else ("marginal", f"by your answer: private; assessment: {answer}{but}")
    return ("marginal", "public, design stage, assessment commissioned") if answer == "commissioned" else ("fail", f"public; assessment: {answer}")


PEOPLE_CHECKS: tuple[Check | Judged, ...] = (
    Check(criterion("C46"), lambda c: c.counted("supply.circuit_load") / c.design["supply.breaker"],
          "ask the electrician for a circuit of its own"),
    Check(criterion("C46e"), lambda c: c.leakage_share,
          "ask the electrician: damp joints and several pumps on one device trip it for nothing"),
    Check(criterion("C47"), lambda c: c.cord_spare,
          "a pump with a longer cord: no buried joints", ("cord_wanted",)),
    Check(criterion("C55"), lambda c: c.running_cost,
          "state it on the handover card", ("energy", "running_cost")),
    Judged(criterion("C41"), "supply.residual_current", _residual_current,
          "a licensed electrician tests it by instrument and certifies it before anyone touches the water"),
    Check(criterion("C42"), lambda c: c.voltage_drop,
          "a thicker or shorter cable: ask the electrician", ("current", "voltage_drop")),
    Check(criterion("C48"), lambda c: c.lift,
          "a team, a trolley or a machine; plan the lift in writing", ("lift",)),
    Check(criterion("C65"), lambda c: c.sling_share,
          "stronger slings, steeper legs; a crane needs a lifting plan by a competent person", ("sling",), limits=_slings),
    Judged(criterion("C51"), "site.open_water", _open_water,
          "fill it with stone, or fit a rigid grille at or above the water; no depth is without danger to a small child"),
    Judged(criterion("C52"), "site.legionella", _legionella,
          "have a competent person assess the risk in writing before the water runs; not at care premises without the duty holder"),
    Check(criterion("C49"), lambda c: c.design["site.gate"] - c.counted("site.widest_item"),
          "another access, or build it elsewhere; a crane needs a plan of its own"),
    Check(criterion("C64"), lambda c: c.noise_above,
          "less fall, a timer at night, pump on rubber", ("noise",)),
    Check(criterion("C62"), lambda c: c.held_back,
          "refer it to a structural engineer: this kit does not size raised or retaining walls", limits=_wall),
    Check(criterion("C56"), budget.cost_share,
          "spend less, or agree on more before work begins", ("cost_estimate",), note=budget.cost_told),
)  # fmt: skip
