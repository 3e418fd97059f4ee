"""What was measured on site, against the rest of the design: what cannot be, which is asked about and not believed; and what differs from the model, which is said."""

from __future__ import annotations

from typing import Any

from brimwork.design.follows.agreeing import AT_LEAST, AT_MOST, THE_SAME, Agreeing
from brimwork.design.follows.chain import GRAVITY
from brimwork.design.typed.known import Unknown

RIM_POINTS = 8  # levels round a rim that make a map of it: common practice
_BEST = 0.7  # of a small pump no more than this share of its power lifts water: judgement
_READ = 0.05  # to which a bucket, a meter or a clamp is read: judgement
_VESSEL = ("overflowing vessel",)


def _most_lifted(chain: Any) -> float:
    """Flow that the pump's power could lift to the outlet at its best."""
    return _BEST * chain.design["pump.power"] / (chain.water["rho"] * GRAVITY * chain.static_lift)


def _least_current(chain: Any) -> float:
    """Current whose power is that of the water lifted, nothing lost in motor and pump."""
    return chain.water["rho"] * GRAVITY * chain.duty_flow * chain.static_lift / chain.design["supply.voltage"]


def _plate_current(chain: Any) -> float:
    d = chain.design
    return d["pump.power"] / (d["supply.voltage"] * d["supply.power_factor"])


def _points(chain: Any) -> float:
    return len(chain.design["measured.rim_levels"])


def _range(chain: Any) -> float:
    levels = chain.design["measured.rim_levels"]
    if len(levels) < RIM_POINTS:
        raise Unknown("measured.rim_levels")
    return max(levels) - min(levels)


def _box_full(chain: Any) -> float:
    """Water up to the static level with no blocks in the box."""
    return chain.box_length * chain.box_width * chain.design["reservoir.static_level"]


def _by_blocks(chain: Any) -> float:
    return chain.block_plan * chain.design["reservoir.void_fraction"] * chain.design["reservoir.static_level"]


# What cannot be: no check passes with it.
CANNOT: tuple[Agreeing, ...] = (
    Agreeing("measured.flow", AT_MOST, lambda c: c.pump.Q_max, "the most that the pump sends, with nothing to lift", "pump.maximum_flow or pump.curve", _READ, share=True),
    Agreeing("measured.flow", AT_MOST, _most_lifted, "the most that the pump's power lifts to the outlet", "pump.power", _READ, share=True),
    Agreeing("measured.current", AT_LEAST, _least_current, "the power of the water that it lifts, over the voltage", "measured.flow or supply.voltage", _READ, share=True),
    Agreeing("measured.start_drop", AT_MOST, lambda c: c.design["reservoir.static_level"], "all the water that stands in the reservoir", "reservoir.static_level"),
    Agreeing("measured.filled", AT_MOST, _box_full, "what the box holds up to the static level, with no blocks in it", "reservoir.static_level", _READ, share=True),
    Agreeing("measured.rim_levels", AT_LEAST, lambda c: RIM_POINTS, f"the {RIM_POINTS} points round the rim that make a map of it", "measure more points", 0.0,
             own=_points, said="points measured round the rim", counts=True, kinds=_VESSEL),
)  # fmt: skip
# What differs from what the rest of the design says: what was measured counts, and a finding asks why.
DIFFERS: tuple[Agreeing, ...] = (
    Agreeing("measured.flow", AT_MOST, lambda c: c.duty.Q, "what pump, lift and hose give, valve open", "pipe.fittings or the pump's numbers", 0.25, share=True),
    Agreeing("measured.start_drop", THE_SAME, lambda c: c.transit_by_model / c.water_area, "the water in transit by the model, over the water's area", "catch.hold_up or what goes up",
             0.5, share=True),
    Agreeing("measured.current", THE_SAME, _plate_current, "the power of the plate, over voltage and power factor", "pump.power or supply.power_factor", 0.4, share=True),
    Agreeing("measured.filled", THE_SAME, _by_blocks, "the blocks' plan by void fraction and static level", "reservoir.void_fraction, or the blocks that were laid", 0.1, share=True),
    Agreeing("vessel.rim_out_of_level", THE_SAME, _range, "the levels measured round it", "vessel.rim_out_of_level", 0.002, kinds=_VESSEL),
)  # fmt: skip


def unbelieved(chain: Any) -> list[Agreeing]:
    """The rows of what was measured and cannot be."""
    found = []
    for row in CANNOT:
        typed = row.typed(chain)
        if typed is None or chain.design.kind not in row.kinds:
            continue
        other = row.found(chain)
        if other is not None and not row.agrees(typed, other):
            found.append(row)
    return found
