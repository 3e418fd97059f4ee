"""On designs that fail nearly everything: which words, limits, assumptions and totals, changed alone or together, make a check of safety pass.

Only what somebody believes or says is changed, never what is built: an answer, a limit, a factor, a total of parts that the file knows. A check that starts
to pass is a find, unless `MAY` says why it may. `python tests/cross_check/softened.py --draws 2000 --seed 1` draws several changes at once.
"""

import argparse
import random

from invented import KINDS, file
from persuaded import bad, tries
from product import InputError, Told, fields, ranges
from verdicts import SAFETY

# What is built, dug, bought or measured with a rule: changed, it may well cure.
BUILT = (
    "vessel",
    "stones",
    "blade",
    "cascade",
    "slab",
    "reservoir",
    "pump",
    "pipe",
    "levels",
    "ground",
    "catch",
    "overflow_pipe",
    "lining",
    "buying",
    "prices",
    "costing",
    "programme",
)
BELIEVED_OF_THEM = {
    "reservoir.safety_factor", "reservoir.creep_factor", "reservoir.void_fraction", "pump.covered", "lining.panel_clearance", "catch.splash_factor", "flow.weir_coefficient",
    "reservoir.running_level", "overflow_pipe.head", "overflow_pipe.catch_area", "blade.wall_height", "blade.wall_retains",
}  # fmt: skip
# Of the site and the supply, what stands there or is what it is; a surveyor, an electrician or a maker says it, and no other number of the file knows better.
THERE = {
    "site.soil_bearing", "site.footing_distance", "site.footing_depth", "site.tree_distance", "site.tree_stem", "site.ground_water", "site.frost_depth", "site.gate", "site.neighbour",
    "site.sling_legs", "site.sling_angle", "site.sling_rating", "site.lift_reach", "site.lift_height", "site.lift_travel", "site.wheel_side", "supply.cord", "supply.point_along",
    "supply.point_across", "supply.duct_bore", "supply.duct_cover", "supply.cable_length", "supply.breaker", "supply.leakage", "supply.residual_rating", "site.wind_speed",
    "site.force_coefficient", "flow.for_each_metre", "supply.voltage_drop", "supply.resistance", "supply.voltage", "supply.frequency",
    "supply.conductor",
}  # fmt: skip
ANSWER = "an answer about work on site that no number of the file bears on"
# Check and value: why this value may make that check pass.
MAY: dict[tuple[str, str], str] = {
    **{
        (check, f"answers.{key}"): ANSWER
        for check, key in (("C24f", "formation"), ("C35", "services"), ("C36", "backfill"), ("C53", "top_up"), ("C71", "pump_marking"))
    },
    ("C29", "answers.settlement"): "what was seen after a week; the rim's own levels, once measured, bear on it",
    ("C54", "answers.edges"): "an answer about the path; the edge over the paving, which the levels give, is compared",
    ("C52", "site.legionella"): "an assessment in writing by a competent person, whatever the water",
    ("C48", "site.lift_mass"): "compared with every block, and with every piece that is not slung",
    ("C65", "site.slings"): "where none are used every piece is lifted by hand, and the lift counts the heaviest",
    ("C65", "site.sling_mass"): "compared with every piece over what one person lifts",
    **{(check, "supply.circuit_load"): "never less than the current of the pump alone" for check in ("C42", "C46")},
    ("C75", "supply.cable_rating"): "what the electrician says of the cable as it is laid, never more than the table of its conductors",
    **{(check, "site.use"): "who comes near sets the factor that is asked for; that of a private garden is asked of every piece" for check in ("C25", "C25e")},
    ("C51", "site.open_water"): "compared with what vessel, trough and header leave open; a drilled stone leaves nothing",
    ("C21", "lining.panel_clearance"): "compared with the plan where something stands on the blocks: the smaller counts",
    ("C24", "measured.filled"): "water by a meter is the weight that there is; what differs from the blocks is a finding",
    ("C24", "reservoir.void_fraction"): "less water in the blocks is less weight, and fewer days: it lasts as shown",
}


def believed(kind: str) -> list[str]:
    """The values of a design of that kind that somebody believes or says."""
    return [key for key in fields(kind) if key in BELIEVED_OF_THEM or (key.partition(".")[0] not in BUILT and key not in THERE)]


def softer(key: str, kind: str, start: dict) -> list:
    """What to try in place of a value: what `persuaded` tries, and the ends of what it can be, and beyond."""
    return [*tries(start.get(key), fields(kind)[key]), *ranges(key)]


def failing(kind: str, v: dict) -> dict[str, str]:
    """Grade by check of safety."""
    return {name: one.grade for name, one in Told(file(v, kind), set()).findings.items() if name in SAFETY}


def starts(kind: str, seed: int, changes: dict, before: dict) -> set[str]:
    """The checks that pass once these values are changed, and did fail."""
    v = {k: t for k, t in {**bad(kind, seed), **changes}.items() if t is not None}
    try:
        after = failing(kind, v)
    except (InputError, OverflowError):
        return set()
    return {name for name, grade in after.items() if grade in ("pass", "does not apply") and before.get(name) in ("fail", "marginal")}


def alone(kind: str, seed: int = 0, keys=None) -> dict[tuple[str, str], object]:
    """Check and value, with the text that made it pass."""
    start, found = bad(kind, seed), {}
    before = failing(kind, start)
    for key in keys if keys is not None else believed(kind):
        for text in softer(key, kind, start):
            for name in starts(kind, seed, {key: text}, before):
                found.setdefault((name, key), text)
    return found


def together(kind: str, draws: int, seed: int) -> list[tuple[str, dict]]:
    """Check and the values, two to five at once, that made it pass, brought back to the fewest; without those in which one alone may."""
    draw, keys, found = random.Random(f"{seed} {kind}"), believed(kind), []
    before = {base: failing(kind, bad(kind, base)) for base in (0, 1, 2)}
    for _ in range(draws):
        base = draw.choice((0, 1, 2))
        changes = {key: draw.choice(softer(key, kind, bad(kind, base))) for key in draw.sample(keys, draw.randint(2, 5))}
        for name in starts(kind, base, changes, before[base]):
            less = dict(changes)
            for key in changes:
                fewer = {k: t for k, t in less.items() if k != key}
                if name in starts(kind, base, fewer, before[base]):
                    less = fewer
            if not any((name, key) in MAY for key in less):
                found.append((name, less))
    return found


def main() -> int:
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--draws", type=int, default=1000, help="draws of several changes, of each kind")
    asked.add_argument("--seed", type=int, default=1)
    given = asked.parse_args()
    any_found = False
    for kind in KINDS:
        one = {pair: text for pair, text in alone(kind).items() if pair not in MAY}
        several = together(kind, given.draws, given.seed)
        print(f"{kind}: {len(believed(kind))} values tried alone, {len(one)} finds; {given.draws} draws of several, {len(several)} finds")
        for (name, key), text in one.items():
            print(f"  {name} starts to pass with {key} = {text!r}")
        for name, changes in several:
            print(f"  {name} starts to pass with {changes}")
        any_found |= bool(one or several)
    return int(any_found)


if __name__ == "__main__":
    raise SystemExit(main())
