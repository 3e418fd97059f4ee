"""What every check asks, and within which limits: one row each; how its number is worked out stands in `judged/`."""

from __future__ import annotations

from brimwork import tables
from brimwork.design.typed.limits import LEAST, Criterion, at_least, at_most, between
from brimwork.design.typed.telling import INFINITE
from brimwork.expression import DeclarationError

_CP, _J, DERIVED = tables.COMMON_PRACTICE, tables.JUDGEMENT, "derived"
_CLOSE = 0.020  # m; a gap between two levels below this is marginal: judgement
OVER_BUDGET = 1.1  # cost over budget up to which it is marginal
VESSEL, STONES, BLADE, CASCADE = ("overflowing vessel",), ("drilled stones",), ("blade",), ("cascade",)
ON_BLOCKS, SHEETS = (*VESSEL, *STONES), (*BLADE, *CASCADE)

CRITERIA: tuple[Criterion, ...] = (
    Criterion("C01", "water", "Flow against required flow", between((1.10, 1.60), (1.00, 2.50)), "", _J, kinds=("overflowing vessel", "blade", "cascade")),
    Criterion("C01m", "water", "Spare head for several outlets", between((1.1, 2.0), (1.0, 3.0)), "", _J, kinds=STONES),
    Criterion("C63", "water", "Branches in balance", None, "m", _CP, firm=True, kinds=STONES),
    Criterion("C02", "water", "Static lift against the pump's shut-off head", at_most(0.70, 0.85), "", _CP),
    Criterion("C03", "water", "Rating plate plausible", between((0.04, 0.50), (0.015, 0.70)), "", f"physics; limits {_J}"),
    Criterion("C04", "water", "Speed in the hose", between((0.6, 1.5), (0.3, 2.4)), "m/s", _CP),
    Criterion("C05", "water", "Share of the head lost on the way", at_most(0.40, 0.60), "", _J),
    Criterion("C06", "water", "Surface mound over the outlet, for a gentle ripple", at_most(0.015, 0.040), "mm", _J, kinds=VESSEL),
    Criterion("C06", "water", "Water wells up out of the stone, and does not jet", at_most(0.015, 0.040), "mm", _J, kinds=STONES),
    Criterion("C07", "water", "Rim out of level against the head", at_most(0.5, 1.0), "", f"{DERIVED}; limits {_J}", kinds=VESSEL),
    Criterion("C08", "water", "Enough water for a film that clings", between((0.15e-3, 0.40e-3), (0.08e-3, INFINITE)), "L/s per m", _CP, kinds=ON_BLOCKS),
    Criterion("C09", "water", "Sheet stays unbroken", at_least(1.0, 0.6), "", _CP, kinds=SHEETS),
    Criterion("C10", "water", "Speed into the strainer", at_most(0.05, 0.10), "m/s", _J),
    Criterion("C79", "water", "Trough or header slow enough for an even sheet", at_most(0.02, 0.05), "", f"{DERIVED}; limits {_J}", kinds=SHEETS),
    Criterion("C81", "water", "Water warmed by the pump", at_most(3.0, 6.0), "K", f"{DERIVED}, 25 W/(m2 K) from a wet surface; limits {_J}"),
    Criterion("C82", "water", "Strainer against what the pump passes", None, "", _J),
    Criterion("C80", "reservoir", "Top-up keeps up with the loss", at_least(2.0, 1.0), "", f"three times the mean loss in strong sun; limits {_J}"),
    Criterion("C12", "reservoir", "Days without topping up", None, "day", _J),
    Criterion("C13", "reservoir", "Pump covered at the lowest level", None, "mm", _CP),
    Criterion("C14", "reservoir", "Drain-back capacity", at_least(1.10, 1.00), "", f"{DERIVED}; limits {_J}"),
    Criterion("C16", "reservoir", "Turnover time", at_least(180, 90), "min", _J),
    Criterion("C17", "reservoir", "Splash stays inside the apron", at_least(1.0, 0.75), "", _CP),
    Criterion("C18", "reservoir", "Edge of the liner above the overflow", at_least(0.050, 0.025), "mm", _CP),
    Criterion("C18g", "reservoir", "Edge of the liner above the soil", at_least(0.025, 0.010), "mm", _CP),
    Criterion("C19", "reservoir", "Share of the water lost in a day", at_most(0.10 / 86400, 0.25 / 86400), "%/day", _J),
    Criterion("C66", "reservoir", "Overflow pipe carries the storm", at_least(1.5, 1.0), "", f"{DERIVED}; limits {_J}"),
    Criterion("C72", "reservoir", "Leak, pump off, against a control bucket", at_most(tables.TIGHT.value, 2 * tables.TIGHT.value), "mm/day", _CP),
    Criterion("C57", "reservoir", "Levels in order", at_least(_CLOSE, LEAST), "mm", DERIVED),
    Criterion("C20", "loads", "Pressure on the blocks", None, "", f"{DERIVED}; creep and safety factors {_J}", firm=True, kinds=ON_BLOCKS),
    Criterion("C22", "loads", "Eccentric load on the base", at_most(1.0, 1.5), "", f"statics; limits {_J}"),
    Criterion("C24", "loads", "Pressure on the soil", at_most(0.67, 1.00), "", "limit taken from IBC 2012 Table 1806.2 (second-hand)", firm=True),
    Criterion("C25", "loads", "Overturning of the full vessel", None, "", _J, firm=True, kinds=VESSEL),
    Criterion("C25", "loads", "Overturning of a drilled stone", None, "", _J, firm=True, kinds=STONES),
    Criterion("C25e", "loads", "Overturning of the empty vessel", None, "", _J, firm=True, kinds=VESSEL),
    Criterion("C26", "loads", "Wind on a tall drilled stone", at_least(1.5, 1.2), "", f"statics; limits {_J}", firm=True, kinds=STONES),
    Criterion("C26", "loads", "Wind on the empty vessel", at_least(1.5, 1.2), "", f"statics; limits {_J}", firm=True, kinds=VESSEL),
    Criterion("C25", "loads", "Overturning of the wall", None, "", _J, firm=True, kinds=BLADE),
    Criterion("C26", "loads", "Wind on the wall", at_least(1.5, 1.2), "", f"statics; limits {_J}", firm=True, kinds=BLADE),
    Criterion("C25", "loads", "Overturning of the header", None, "", _J, firm=True, kinds=CASCADE),
    Criterion("C26", "loads", "Wind on the header", at_least(1.5, 1.2), "", f"statics; limits {_J}", firm=True, kinds=CASCADE),
    Criterion("C27", "loads", "Uplift of the foam", at_least(1.30, 1.10), "", f"physics; limits {_J}", kinds=VESSEL),
    Criterion("C74", "loads", "Slab thick for its reach past the foot", at_most(1.0, 2.0), "", f"load spreads at 45 degrees; limits {_J}", firm=True, kinds=ON_BLOCKS),
    Criterion("C21", "loads", "Access panel off the load path", at_least(0.100, 0.050), "mm", _CP),
    Criterion("C28", "loads", "Flotation of the emptied reservoir", at_least(1.20, 1.05), "", f"physics; limits {_J}", firm=True),
    Criterion("C32", "ground and lining", "Depth of the pit", None, "m", "limit taken from OSHA 29 CFR 1926 subpart P, summaries (second-hand); rest common practice", firm=True),
    Criterion("C33", "ground and lining", "Clear of footings", at_least(1.0, 0.75), "", _CP),
    Criterion("C34", "ground and lining", "Clear of roots", at_least(1.0, 0.8), "", "limit taken from BS 5837:2012 (second-hand)"),
    Criterion("C38", "ground and lining", "Box fits blocks and lining", between((0.010, 0.020), (0.005, 0.040)), "mm", _CP),
    Criterion("C37", "ground and lining", "Liner fits the roll width", at_least(0.100, 0.0), "m", DERIVED),
    Criterion("C39", "ground and lining", "Nothing pierces the liner near the overflow", at_least(0.050, 0.025), "mm", _CP),
    Criterion("C40", "ground and lining", "Mesh holds the stone", at_most(0.5, 0.8), "", _CP),
    Criterion("C46", "supply", "Circuit not overloaded", at_most(0.80, 1.00), "%", _CP),
    Criterion("C46e", "supply", "Earth leakage does not trip the protection", at_most(0.30, 0.50), "%", _CP, firm=True),
    Criterion("C75", "supply", "Breaker against the cable", at_most(1.0, 1.0), "", "BS 7671 433.1, NEC 240.4 (from memory); local codes govern", firm=True),
    Criterion("C76", "supply", "Starting current against the breaker", at_most(3.0, 5.0), "", "EN 60898-1: type B trips at once between 3 and 5 times its rating (from memory)", firm=True),
    Criterion("C77", "supply", "Pump's voltage and frequency against the supply", None, "%", "EN 60034-1, NEMA MG 1: motors run within 10 % (from memory)", firm=True),
    Criterion("C78", "supply", "Supply as this country has it", None, "%", "UK law, 230 V +10/-6 %, and BS EN 50160, +/-10 %; ANSI C84.1, ranges A and B (from memory)", firm=True),
    Criterion("C47", "supply", "Cord long enough", at_least(0.0, -0.3), "m", _CP),
    Criterion("C55", "supply", "Running cost known", at_least(0.0, 0.0), "cur", _J, firm=True),
    Criterion("C41", "supply", "Residual-current protection", None, "", "limit taken from guidance on garden circuits (second-hand); local codes govern", firm=True),
    Criterion("C48", "people", "Manual lift", at_most(1.0, 3.0), "", "limit taken from NIOSH lifting equation (second-hand)", firm=True),
    Criterion("C65", "people", "Slings", None, "%", f"statics; limits {_J}", firm=True),
    Criterion("C42", "supply", "Voltage drop", at_most(0.03, 0.05), "%", "limit taken from BS 7671, 3 % and 5 % (second-hand); local codes govern"),
    Criterion("C51", "people", "Open water a child can reach", None, "", f"{_J}; guidance on grilles (read)", firm=True),
    Criterion("C52", "people", "Legionella", None, "", "limit taken from HSE, other risk systems; CDC, decorative fountains (second-hand)", firm=True),
    Criterion("C49", "people", "Access width", at_least(0.100, 0.0), "mm", _CP),
    Criterion("C64", "people", "Noise at the neighbour", at_most(5, 10), "", _CP),
    Criterion("C60", "water", "Freeboard of the rill", at_least(0.040, 0.020), "mm", _CP, kinds=CASCADE),
    Criterion("C61", "water", "Tread catches the fall", at_least(2.0, 1.3), "", _J, kinds=CASCADE),
    Criterion("C73", "reservoir", "Lower end of the cascade over the box", at_least(_CLOSE, LEAST), "mm", f"{DERIVED}; margin {_J}", kinds=CASCADE),
    Criterion("C62", "people", "Height of a wall, or of ground held back", None, "m", _CP, firm=True),
    Criterion("C56", "people", "Budget", at_most(1.0, OVER_BUDGET), "", _CP),
)  # fmt: skip


def criterion(check_id: str, kind: str = "") -> Criterion:
    """What the check with that identifier asks, of one kind of feature where it asks different things of them."""
    for row in CRITERIA:
        if row.id == check_id and (not kind or kind in row.kinds):
            return row
    raise DeclarationError(f"the check '{check_id}' has no row in CRITERIA of design/typed/criteria.py")


def kinds_of(check_id: str) -> tuple[str, ...]:
    """The kinds of feature that a check of a number is made for; none named means all."""
    rows = [row.kinds for row in CRITERIA if row.id == check_id]
    return tuple(kind for kinds in rows for kind in kinds) if all(rows) else ()


# Checks on which somebody's safety rests: whole groups, and of the others what concerns digging, lifting, open water, walls.
_SAFETY_GROUPS = ("supply", "loads")
_MONEY = ("C55",)  # of those groups, what nobody is hurt by
_SAFETY_TOO = ("C32", "C33", "C35", "C36", "C48", "C51", "C52", "C53", "C54", "C62", "C65")
# Checks that keep water where it belongs and the pump covered: a design may ask for more than the kit does, never for less, as with those of safety.
_ONLY_TIGHTER = ("C13", "C14", "C17", "C18", "C18g", "C39", "C57", "C60", "C66", "C73")


def is_safety(check_id: str, group: str) -> bool:
    """Whether somebody's safety rests on a check."""
    return group in _SAFETY_GROUPS and check_id not in _MONEY or check_id in _SAFETY_TOO


def only_tighter(check_id: str, group: str) -> bool:
    """Whether a design's own limits may only be tighter than the usual ones."""
    return is_safety(check_id, group) or check_id in _ONLY_TIGHTER


# Checks whose limits a design may set for itself. Some of those on which somebody's safety rests cannot be touched at all.
LIMITED: dict[str, Criterion] = {row.id: row for row in CRITERIA if not row.firm}
