"""The shopping lists of the four invented designs, in both regions, against a take-off by plain arithmetic: every line that is bought, exactly; every volume to its rounding."""

import re
from pathlib import Path

import pytest
from product import bought
from take_off import TakeOff, sheets, strips

DESIGNS = Path(__file__).parents[2] / "workbooks" / "designs"
NAMES = ("library-bowl", "school-columns", "terrace-blade", "garden-cascade")
# What a design leaves open of what must be known for its whole list, invented for this test.
REST = {
    "library-bowl": {},
    "school-columns": {"ground": ['bulking = 1.2'], "catch": ['stone_waste = 0.1'], "overflow_pipe": ['bore = "2 in"'], "buying": ['overflow_run = "21 ft"'],
                       "supply": ['cord_route = "27 ft"'], "pump": ['cut_out = "yes"']},
    "terrace-blade": {"lining": ['beyond_apron = "100 mm"', 'rolls = ["3 m", "4 m", "6 m"]'], "catch": ['stone_density = "1600 kg/m3"', 'stone_waste = 0.1'],
                      "overflow_pipe": ['bore = "68 mm"', 'fall = "60 mm"'], "buying": ['overflow_run = "9 m"'], "supply": ['cord_route = "11 m"'], "pump": ['cut_out = "no"']},
    "garden-cascade": {"overflow_pipe": ['bore = "50 mm"'], "buying": ['overflow_run = "5 m"'], "supply": ['cord_route = "7 m"'], "pump": ['cut_out = "yes"']},
}  # fmt: skip


def text(name: str, region: str) -> str:
    """The design's file with the rest filled in, told in the region."""
    lines, rest, found = [], dict(REST[name]), (DESIGNS / f"{name}.toml").read_text(encoding="utf-8")
    for line in re.sub(r'region = "(UK|US)"', f'region = "{region}"', found).splitlines():
        lines.append(line)
        section = re.match(r"\[(\w+)\]", line)
        lines += rest.pop(section[1], []) if section else []
    for section, rows in rest.items():
        lines += [f"[{section}]", *rows]
    return "\n".join(lines)


@pytest.mark.parametrize("region", ("UK", "US"))
@pytest.mark.parametrize("name", NAMES)
def test_everything_that_is_bought_is_what_a_surveyor_takes_off(name, region):
    here = TakeOff(text(name, region))
    counts, told, unknown = bought(text(name, region))
    assert not unknown
    assert {key: round(count, 6) for key, count in counts.items()} == {key: round(float(count), 6) for key, count in here.counts.items()}
    for item, volume in here.volumes.items():
        if volume:
            assert told[item].startswith(_said(volume, region, "water" in item)), (item, volume, told[item])


def _said(volume: float, region: str, water: bool) -> str:
    """A volume to three figures, as it is printed first."""
    size, unit = {("UK", False): (1.0, "m3"), ("UK", True): (1e-3, "L"), ("US", False): (0.9144**3, "yd3"), ("US", True): (231 * 0.0254**3, "US gal")}[
        region, water
    ]
    return f"{float(f'{volume / size:.3g}'):g} {unit}"


def test_the_take_off_counts_as_a_hand_does():
    """Two panels of 1272 x 450 and two of 836 x 450 mm side by side come from one sheet: 1272 + 4 + 836 = 2112 of 2440, 2 x 450 + 4 of 1220; of 1880 and 844 mm from two.
    3.316 x 2.916 m of fleece off 2 m, laps of 0.1: two strips of 2.916 x 1.05 = 3.06, cut at 3.5 m."""
    assert sheets([(1.272, 0.45)] * 2 + [(0.836, 0.45)] * 2, (2.44, 1.22), 0.004) == 1
    assert sheets([(1.880, 0.45)] * 2 + [(0.844, 0.45)] * 2, (2.44, 1.22), 0.004) == 2
    assert strips(3.316, 2.916, 2.0, 0.1, 0.5) == 7.0
