"""Changing any value of a design moves every result that hangs on it, the way that physics says, and nothing else."""

from functools import cache

import pytest
from invented import KINDS, file, realistic
from known import KNOWN
from moves import TABLES, moved_by
from product import Told, fields, names

STEP, LEVEL, MOVED = 1.03, 0.004, 1e-10
# What a label says gives way to a curve, a drop of the cable to its resistance, a side of the foot to its corners: these are laid aside in the design that is changed.
ASIDE = ("pump.curve", "supply.resistance", "measured.", "vessel.foot_corners", "vessel.widest", "site.wheel")


@cache
def base(kind: str) -> dict:
    """A realistic design of the UK, private, with a hose by Colebrook's law, no check valve, fed from below, on slabs: all parts play."""
    for seed in range(400):
        v, region = realistic(kind, f"moves {seed}")
        if region == "UK" and v.get("cascade.rill_length", "1 m") != "0 mm" and len(v.get("stones.diameters", [1, 2])) == 2:
            break
    v = {key: text for key, text in v.items() if not key.startswith(ASIDE)}
    v |= {
        "pipe.friction_law": "Colebrook",
        "pipe.roughness": "0.01 mm",
        "pipe.check_valve": "no",
        "site.use": "private",
        "pump.shut_off_head": "3.6 m",
        "flow.water_temperature": "20 degC",
    }
    v |= {
        "site.ground_water": "30 mm",
        "reservoir.cover": "20 mm",
        "site.base_estimate": "900 cur",
        "assumptions.run_off": 0.9,
        "assumptions.grip": 0.9,
        "site.sling_legs": 1,
        "site.lift_height": "600 mm",
        "catch.apron": "800 mm",
    }
    flow = Told(file(v | {"pump.maximum_flow": "9 L/s"}, kind), {"flow_wanted"}).results["flow_wanted"]
    v["pump.maximum_flow"] = f"{flow * 1.9 * 60e3:.5g} L/min"
    if kind == "overflowing vessel":
        v |= {
            "vessel.stands_on": "slab",
            "vessel.offset": "40 mm",
            "vessel.offset_across": "10 mm",
            "vessel.water": "70 L",
            "vessel.foam": "15 L",
            "vessel.pebbles": "25 L",
            "vessel.rim_out_of_level": "1 mm",
        }
    if kind == "drilled stones":
        v |= {
            "stones.stand_on": "slabs",
            "stones.heights": ["420 mm", "300 mm"],
            "stones.places_along": ["-290 mm", "300 mm"],
            "stones.places_across": ["10 mm", "15 mm"],
            "stones.branch_lengths": ["1.2 m", "1 m"],
            "stones.diameters": ["400 mm", "350 mm"],
        }
    if kind == "blade":
        v |= {"blade.feed": "bottom", "flow.weir_coefficient": "1.7 m^0.5/s"}
    if kind == "cascade":
        v |= {"cascade.rill_length": "1.5 m", "cascade.top_level": "700 mm", "cascade.feed": "bottom", "flow.weir_coefficient": "1.7 m^0.5/s"}
    return v


@cache
def results(kind: str) -> dict:
    return Told(file(base(kind), kind)).results


def changed(kind: str, key: str) -> dict:
    """The same texts with that value a little more, or another of its words, or given where it was not."""
    v, what = dict(base(kind)), fields(kind)[key]
    text = v.get(key, what.usual)
    if what.words:
        v[key] = next(word for word in what.words if word != text)
    elif text is None or what.shape != "one":
        v[key] = [_more(one, what) for one in text] if isinstance(text, list) and not isinstance(text[0], list) else what.such
    else:
        v[key] = _more(text, what)
    return v


def _more(text, what):
    if what.whole:
        return int(text) + 1
    number, _, unit = str(text).partition(" ")
    if what.signed and unit not in ("degC", "mm/day"):
        return f"{float(number) + LEVEL / {'mm': 1e-3, 'cm': 1e-2, 'm': 1, 'in': 0.0254, 'ft': 0.3048}[unit]:.8g} {unit}"
    return f"{float(number) * STEP:.8g} {unit}" if unit else float(f"{float(number) * STEP:.8g}")


@pytest.mark.parametrize("kind", KINDS)
def test_every_value_moves_what_hangs_on_it_the_right_way_and_nothing_else(kind):
    before, table, wrong, counted = results(kind), moved_by(kind), [], 0
    idle = [key for key in fields(kind) if not table.get(key)]
    for key in [*table, *(idle if _move_something(kind, idle) else ())]:
        if key not in fields(kind):
            continue
        after = Told(file(changed(kind, key), kind)).results
        expected = {name: sign for name, sign in table.get(key, {}).items() if name in before}
        for name, was in before.items():
            if (kind, name) in KNOWN and was == 0:
                continue
            now, sign = after.get(name), expected.get(name)
            moved = _moved(was, now)
            if moved and sign is None:
                wrong.append(f"{key} moves {name} from {was} to {now}, and should not")
            elif not moved and sign not in (None, "?"):
                wrong.append(f"{key} leaves {name} at {was}, and should move it ({sign})")
            elif moved and sign in ("+", "-") and (now is None or (now > was) != (sign == "+")):
                wrong.append(f"{key} moves {name} the wrong way, from {was} to {now}")
            counted += bool(moved)
    assert not wrong, f"{len(wrong)} of {counted}:\n" + "\n".join(wrong[:60])
    assert counted > 250 and len(before) > 60


def _moved(was: float, now: float | None) -> bool:
    return now is None or abs(now - was) > MOVED * max(abs(was), 1e-12)


def _move_something(kind: str, keys: list[str]) -> bool:
    """Whether these values, all changed at once, move any result; none of them should."""
    v = base(kind) | {key: changed(kind, key)[key] for key in keys}
    after = Told(file(v, kind)).results
    return any(_moved(was, after.get(name)) for name, was in results(kind).items())


@pytest.mark.parametrize("kind", KINDS)
def test_every_result_has_its_values_in_the_invented_designs(kind):
    """Without them neither this table nor the cross-check would ever see it."""
    lost = names(kind) - {*results(kind)}
    assert not lost, (
        f"{', '.join(sorted(lost))}: give what it hangs on in invented.py, its line in moves.py, and its way from physics alone in truth.py or its parts"
    )


@pytest.mark.parametrize("kind", KINDS)
def test_the_table_of_what_hangs_on_what_names_every_result(kind):
    named = {line.partition(":")[0] for line in TABLES[kind].splitlines()}
    assert not set(results(kind)) - named
    assert set(moved_by(kind)) <= {key for one in KINDS for key in fields(one)}
