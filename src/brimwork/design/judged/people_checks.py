"""The checks of supply and people: how the number of each is worked out, and what to change next."""

from __future__ import annotations

from typing import Any

from brimwork import units
from brimwork.cables import carried
from brimwork.design.done import budget
from brimwork.design.follows.chain import Chain
from brimwork.design.judged.grading import Check, Judged, engineered, is_public
from brimwork.design.typed.asking import Refused, tried
from brimwork.design.typed.criteria import criterion
from brimwork.design.typed.ground_fields import PLANNED
from brimwork.design.typed.limits import NEVER, Limits, at_most, between
from brimwork.design.typed.telling import told

WARM, MUCH_SPLASH = units.read("25 degC", "degC"), units.read("10 L/day", "L/day")  # over these droplets are no longer few and cool: judgement
FLATTEST_LEG = units.read("30 deg", "deg")


def _planned(chain: Chain) -> str:
    return (
        "no slings; every heavier piece is wheeled, rolled or carried by several, planned in writing"
        if chain.unslung and chain.design["site.slings"] == PLANNED
        else ""
    )


def _no_slings(chain: Chain) -> str:
    if chain.unslung:
        return "by your answer: no slings are used"
    answer = chain.design.given("site.slings")
    return (
        "no slings, by your answer, but a mass on them is on file, and counts: empty that box where none are used" if answer and answer.value != "used" else ""
    )


def _slings(chain: Chain) -> Limits:
    """No rating is enough for a leg flatter than 30 degrees."""
    if not chain.unslung:
        chain.slings_answered()
    return at_most(0.50, 1.00) if chain.unslung or chain.design["site.sling_angle"] >= FLATTEST_LEG else NEVER


def _wall(chain: Chain) -> Limits:
    """A free-standing wall away from people only; anything else goes to an engineer. Soil that stands over the paving is held back by something."""
    if chain.design.kind == "blade" and (is_public(chain) or chain.design["blade.wall_retains"] != "nothing"):
        return NEVER
    if chain.soil_held > 0.15:
        return NEVER
    return at_most(0.6, 1.0)


PROTECTS = {"UK": 0.030, "US": 0.006}  # A: most at which a device trips that protects people; from memory, local codes govern


# Voltages supplied, V, and how far they go under and over; extra-low voltage comes from a transformer. From memory, local codes govern.
SUPPLIED = {"UK": ("50 Hz", (230.0, 400.0), (-0.06, 0.10), (-0.10, 0.10)), "US": ("60 Hz", (120.0, 208.0, 240.0), (-0.05, 0.05), (-0.083, 0.058))}
EXTRA_LOW, DIRECT = (12.0, 24.0), "direct current"


def _plate(chain: Chain) -> float:
    """How far the voltage of the plate lies from the supply's, as a share of the plate's."""
    return abs(chain.design["supply.voltage"] / chain.design["pump.voltage"] - 1)


def _plate_limits(chain: Chain) -> Limits:
    return at_most(0.05, 0.10) if chain.design["supply.frequency"] in chain.design["pump.frequency"].replace("50 and", "50 Hz and") else NEVER


def _plate_said(chain: Chain) -> str:
    plate, supply = chain.design["pump.voltage"], chain.design["supply.voltage"]
    said = f"plate {chain.design['pump.frequency']}, supply {chain.design['supply.frequency']}"
    through = f"; a pump on a transformer: give what the transformer puts out, {units.write(plate, 'V', None)}, as the voltage of the supply"
    return said + (through if plate <= max(EXTRA_LOW) < supply else "")


def _nearest(chain: Chain) -> float:
    """The voltage supplied in this country, or extra-low one, that is nearest to the given."""
    return min((*SUPPLIED[chain.design.region][1], *EXTRA_LOW), key=lambda volts: abs(chain.design["supply.voltage"] / volts - 1))


def _country(chain: Chain) -> float:
    return chain.design["supply.voltage"] / _nearest(chain) - 1


def _country_limits(chain: Chain) -> Limits:
    frequency, _, good, fair = SUPPLIED[chain.design.region]
    given = chain.design["supply.frequency"]
    right = given == frequency or given == DIRECT and _nearest(chain) in EXTRA_LOW
    return between(good, fair) if right else NEVER


def _country_said(chain: Chain) -> str:
    return f"against {_nearest(chain):g} V, {SUPPLIED[chain.design.region][0]}; typed {chain.design['supply.frequency']}"


def _cable_said(chain: Chain) -> str:
    size = chain.design.given("supply.conductor")
    table = f", by the table {units.write(carried(size.value).value, 'A', None)} for {size.value} ({carried(size.value).basis})" if size else ""
    return f"the cable carries {units.write(chain.cable_carries, 'A', None)}{table}; grouping, length and heat take more off"


def protects(rating: float, region: str) -> bool:
    """Whether a residual-current device of that rating (A) protects people."""
    return at_most(PROTECTS[region], PROTECTS[region]).grade(rating) == "pass"


def _residual_current(chain: Chain, answer: object) -> tuple[str, str]:
    if answer == "none":
        return "fail", "absent"
    rating = chain.design["supply.residual_rating"]
    if not protects(rating, chain.design.region):
        return "fail", f"trips at {units.write(rating, 'mA')}, more than the {units.write(PROTECTS[chain.design.region], 'mA')} that protect people"
    return {
        "tested by instrument": ("pass", "by your answer: present, tested by button and instrument"),
        "tested by button": ("marginal", "by your answer: present, tested by button only"),
    }[str(answer)]


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
        heated = tried(lambda: chain.warming)
        warmer = 0.0 if isinstance(heated, Refused) else heated  # by the pump
        warm, splash = chain.design["flow.water_temperature"] + warmer > WARM, chain.design["climate.splash"] > MUCH_SPLASH
        low = answer == "low splash, private" and not warm and not splash
        but = " but the water is warm" if warm else " but much of it splashes" if splash else ""
        return ("pass", "by your answer: private, low splash") if low else ("marginal", f"by your answer: private; assessment: {answer}{but}")
    return ("marginal", "public, design stage, assessment commissioned") if answer == "commissioned" else ("fail", f"public; assessment: {answer}")


PEOPLE_CHECKS: tuple[Check | Judged, ...] = (
    Check(criterion("C46"), lambda c: c.counted("supply.circuit_load") / c.design["supply.breaker"],
          "ask the electrician for a circuit of its own"),
    Check(criterion("C46e"), lambda c: c.leakage_share,
          "a trip is a warning: unplug, and do not keep resetting; the electrician finds which joint or pump leaks, and parts several sound pumps that add up to a trip"),
    Check(criterion("C75"), lambda c: c.design["supply.breaker"] / c.cable_carries,
          "a thicker cable or a smaller breaker: a qualified electrician works both out, for the way it is laid", note=_cable_said),
    Check(criterion("C76"), lambda c: c.starting_current / c.design["supply.breaker"],
          "ask the electrician: a breaker of another type, or a circuit of its own; never reset one again and again"),
    Check(criterion("C77"), _plate,
          "a pump made for this supply: the wrong voltage or frequency overheats it, and its flow is not the label's", note=_plate_said, limits=_plate_limits),
    Check(criterion("C78"), _country,
          "ask a qualified electrician what is supplied here; what is brought from elsewhere is not made for it", note=_country_said, limits=_country_limits),
    Check(criterion("C47"), lambda c: c.cord_spare,
          "a pump with a longer cord: no buried joints", ("cord_wanted",)),
    Check(criterion("C55"), lambda c: c.running_cost,
          "give its hours and the price of electricity: the card to hand over states it", ("energy", "running_cost")),
    Judged(criterion("C41"), "supply.residual_current", _residual_current,
          "a qualified electrician tests it by instrument and certifies it before anyone touches the water"),
    Check(criterion("C42"), lambda c: c.voltage_drop,
          "a thicker or shorter cable: ask the electrician", ("current", "voltage_drop")),
    Check(criterion("C48"), lambda c: c.lift_of_all,
          "a team, a trolley or a machine; plan the lift in writing", ("lift",), word=_planned),
    Check(criterion("C65"), lambda c: c.sling_share,
          "stronger slings, steeper legs; a crane needs a lifting plan by a competent person", ("sling",), note=_no_slings, limits=_slings),
    Judged(criterion("C51"), "site.open_water", _open_water,
          "fill it with stone, or fit a rigid grille at or above the water; no depth is without danger to a small child"),
    Judged(criterion("C52"), "site.legionella", _legionella,
          "have a competent person assess the risk in writing before the water runs; not at care premises without the duty holder"),
    Check(criterion("C49"), lambda c: c.design["site.gate"] - c.counted("site.widest_item"),
          "another access, or build it elsewhere; a crane needs a plan of its own"),
    Check(criterion("C64"), lambda c: c.noise_above,
          "less fall, a timer at night, pump on rubber", ("noise",)),
    Check(criterion("C62"), lambda c: c.held_back,
          "refer it to a structural engineer: this kit does not size raised or retaining walls; when it is done, say so: site.engineered", limits=_wall, word=engineered),
    Check(criterion("C56"), budget.cost_share,
          "spend less, or agree on more before work begins", ("cost_estimate",), note=budget.cost_told),
)  # fmt: skip
