"""A design's pump started and stopped second by second: it settles where the chain says, and no drop is lost."""

from pathlib import Path

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.follows.running import circuit, course
from brimwork.design.typed import file
from brimwork.design.typed.design import blank_design
from brimwork.design.typed.known import Unknown
from brimwork.drawing.records import Text
from brimwork.drawing.running import start_and_stop_chart
from brimwork.units import InputError

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"
BOWL, STONES, BLADE, STEPS = (file.load_design(DESIGNS / f"{name}.toml") for name in ("library-bowl", "school-columns", "terrace-blade", "garden-cascade"))
FULL = [BOWL, BLADE.having("catch.stone_thickness", "60 mm"), STEPS]


@pytest.mark.parametrize("design", FULL, ids=lambda design: design.kind)
def test_the_level_settles_where_the_start_drop_says(design):
    """The chain adds up what is in transit, term by term; the course follows flows in time. Both end at one level."""
    chain = chain_of(design)
    followed = course(chain)
    settled = max((moment for moment in followed.moments if moment.running), key=lambda moment: moment.t)
    assert design["reservoir.static_level"] - followed.level(settled) == pytest.approx(chain.start_drop, rel=0.02)
    assert followed.head(settled) == pytest.approx(chain.edge_head, rel=0.01)


@pytest.mark.parametrize("design", FULL, ids=lambda design: design.kind)
def test_no_drop_is_lost_on_the_way(design):
    moments = course(chain_of(design)).moments
    assert all(moment.balance == pytest.approx(moments[0].balance, rel=1e-9) for moment in moments)


def test_a_check_valve_holds_hose_and_vessel_and_the_level_falls_less():
    plain, valved = (course(chain_of(BOWL.having("pipe.check_valve", word))) for word in ("no", "yes"))
    assert valved.level(valved.lowest) > plain.level(plain.lowest)
    assert circuit(chain_of(BOWL.having("pipe.check_valve", "yes"))).hose is None


def test_what_is_missing_is_named_and_stones_say_why_not():
    with pytest.raises(Unknown):
        course(chain_of(blank_design("overflowing vessel", "Bare")))
    with pytest.raises(InputError, match="no water over an edge"):
        course(chain_of(STONES))


@pytest.mark.parametrize("region", ["UK", "US"])
@pytest.mark.parametrize("design", FULL, ids=lambda design: design.kind)
def test_start_and_stop_is_drawn_in_the_units_of_the_region_and_its_labels_stay_on_the_sheet(design, region):
    sheet = start_and_stop_chart(chain_of(design.headed("region", region)))
    unit = "in" if region == "US" else "mm"
    assert sheet.columns == ("time, s", f"level, {unit}", f"head over the edge, {unit}") and len(sheet.rows) > 10
    words = [record.text for view in sheet.views for record in view.records if isinstance(record, Text)]
    assert f"level above the floor, {unit}" in words and any(word.startswith("overflow") for word in words)
    assert any("the pump stops" in word for word in words) and "comes back to" in sheet.description
