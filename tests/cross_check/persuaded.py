"""From designs that fail nearly everything: which single value, word or own limit makes a check pass that still fails on the ground.

Every value that a design can give is tried in turn, those it has not yet given too: nothing, a hundredth, a tenth, three, ten and a hundred times,
each word, a level up and down, or not given at all. What follows changes with it in the cross-check as well, so that a real cure is no find.
"""

from against import HIDDEN, Apart, verdicts_apart
from invented import ONLY_VESSEL, file, realistic
from plain_design import Plain
from product import InputError, Told, fields
from truth import work
from verdicts import SAFETY, judged

FACTORS = (0.0, 0.01, 0.1, 0.3, 3.0, 10.0, 100.0)
WORST_ANSWERS = {
    "cable_cover": "less cover than that", "socket": "lead on the ground, joint in the pit, or extension lead", "duct": "plug must be cut off",
    "pump_marking": "not marked, or indoor use", "formation": "fill that nobody compacted", "services": "no search, out of date, or power tools near a mark",
    "backfill": "flooded sand against an empty box without struts", "top_up": "hose or float inlet under water", "edges": "water or stones on a walked surface",
    "settlement": "more, or not looked at", "frost_wall": "cannot be drained in a frost climate", "lid": "lid gives visibly",
}  # fmt: skip
BAD = {
    "site.use": "public", "site.legionella": "none", "site.open_water": "300 mm", "site.soil_bearing": "4 kPa", "site.footing_distance": "0.1 m", "site.footing_depth": "0.2 m",
    "site.ground_water": "350 mm", "site.wind_speed": "70 m/s", "site.force_coefficient": 1.4, "site.lift_mass": "80 kg", "site.sling_rating": "0.2 kN", "site.sling_mass": "600 kg",
    "site.tree_distance": "0.3 m", "site.gate": "300 mm", "reservoir.short_term_strength": "9 kPa", "reservoir.cover": "0 mm", "reservoir.lowest_level": "60 mm",
    "reservoir.cut_out_level": "62 mm", "pump.covered": "5 mm", "pump.intake_level": "55 mm", "pump.cut_out": "no", "lining.panel_clearance": "10 mm", "ground.sub_base": "600 mm",
    "supply.cable_length": "900 m", "supply.breaker": "0.5 A", "supply.conductor": "1.5 mm2", "supply.cable_rating": "0.2 A", "supply.frequency": "60 Hz", "pump.frequency": "50 Hz",
    "pump.voltage": "400 V", "pump.starting_current": "40 A", "supply.leakage": "28 mA", "supply.residual_rating": "500 mA", "supply.residual_current": "none", "supply.cord": "1 m",
    "supply.duct_bore": "20 mm", "supply.duct_cover": "30 mm", "supply.point_along": "0.1 m", "supply.point_across": "0.1 m", "levels.soil": "400 mm", "measured.leak": "60 mm/day",
    "overflow_pipe.bore": "12 mm", "catch.apron": "60 mm",
}  # fmt: skip
BAD_HERE = {
    "overflowing vessel": {
        "vessel.mass": "9 kg", "vessel.water": "60 L", "vessel.offset": "0.7 m", "vessel.pebbles": "2 L", "vessel.foam": "20 L", "vessel.wall_thickness": "1 mm", "vessel.rim_out_of_level": "40 mm",
        "vessel.foot_outside": "150 mm", "vessel.foot_inside": "140 mm", "slab.length": "160 mm", "slab.width": "160 mm", "vessel.height": "800 mm", "vessel.stands_on": "slab",
    },
    "drilled stones": {"stones.density": "500 kg/m3", "stones.base_share": 0.2, "slab.length": "100 mm", "slab.width": "100 mm", "stones.stand_on": "slabs"},
    "blade": {"blade.wall_height": "1.6 m", "blade.lip_level": "1.6 m", "blade.trough_depth": "300 mm", "blade.wall_retains": "soil"},
    "cascade": {"cascade.top_level": "1.6 m", "cascade.step_fall": "500 mm", "cascade.header_volume": "90 L", "cascade.header_area": "0.2 m2", "cascade.tread": "100 mm"},
}  # fmt: skip


def bad(kind: str, seed: int = 0) -> dict:
    v, _ = realistic(kind, f"bad {seed}")
    answers = {f"answers.{key}": words for key, words in WORST_ANSWERS.items() if key not in ONLY_VESSEL or kind == "overflowing vessel"}
    return v | {"supply.voltage": "230 V"} | BAD | BAD_HERE[kind] | answers


def tries(text, what) -> list:
    """The values to try in place of a text; None to leave it out."""
    if what.words:
        return [word for word in what.words if word != text] + [None]
    if what.shape == "Bounds":
        last = (what.such or "").split()[-1:]
        unit = f" {last[0]}" if last and not last[0].replace(".", "").isdigit() else ""
        return [f"from -1000000{unit}; from -1000000{unit}"]
    if what.shape != "one":
        listed = text or what.such
        return [listed, listed[:1], [_times(one, 0.1) for one in listed]] if isinstance(listed, list) and what.shape == "Several" else [what.such]
    start = what.such if text is None else text
    if what.whole:
        return [1, int(start) + 3, None]
    if what.signed and "deg" not in str(start):
        unit = str(start).partition(" ")[2]
        return [
            f"{size / {'mm': 1e-3, 'cm': 1e-2, 'm': 1.0, 'in': 0.0254, 'ft': 0.3048}.get(unit, 1.0):.6g} {unit}" for size in (-2.0, -0.3, 0.0, 0.3, 2.0)
        ] + [None]
    if "deg" in str(start):
        return [_times(start, factor) for factor in (0.3, 1.5)] + [None]
    return [start] * (text is None) + [_times(start, factor) for factor in FACTORS] + [None]


def _times(text, factor: float):
    number, _, unit = str(text).partition(" ")
    return f"{float(number) * factor:.6g} {unit}" if unit else float(f"{float(number) * factor:.6g}")


def persuaded(kind: str, seed: int = 0, ids=None, keys=None) -> list[tuple[Apart, dict]]:
    """Checks that fail on both sides before, and after one change only in the cross-check."""
    start, found = bad(kind, seed), []
    before, truth = Told(file(start, kind), set()).findings, judged(work(Plain(file(start, kind))))
    failing = {
        name for name, verdict in truth.items() if verdict.grade == "fail" and name in before and before[name].grade != "pass" and (ids is None or name in ids)
    }
    for key, what in fields(kind).items():
        if keys is not None and not keys(key):
            continue
        for text in tries(start.get(key), what):
            v = {k: t for k, t in {**start, key: text}.items() if t is not None}
            try:
                said = Told(file(v, kind), set())
            except (InputError, OverflowError):
                continue
            for apart in verdicts_apart(file(v, kind), said, HIDDEN, failing):
                if before[apart.what].grade != "does not apply" and (apart.what in SAFETY or not key.startswith("limits.")):
                    found.append((apart, {key: (start.get(key), text)}))
    return found


if __name__ == "__main__":
    from invented import KINDS

    for one_kind in KINDS:
        for apart, changes in persuaded(one_kind):
            print(f"{one_kind}: {apart.what}: {changes}: product {apart.product}; cross-check {apart.truth} {apart.why}")
