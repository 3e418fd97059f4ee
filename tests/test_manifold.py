"""What must be true of a manifold: the invented school columns, and what holds for any branches."""

import json
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from brimwork import units
from brimwork.design.follows.manifold import Branch, balance, running_branches
from brimwork.design.follows.pipework import Stretch, head_needed, losses
from brimwork.topics.pumps import LabelPump, TabulatedPump, duty_point
from brimwork.units import InputError

INCH, FOOT, GALLON_PER_MINUTE = (units.read(text, "m" if "gal" not in text else "m3/s") for text in ("1 in", "1 ft", "1 US gal/min"))
NU = 1e-6
SCHOOL = json.loads((Path(__file__).parent / "scenarios" / "school-columns.json").read_text(encoding="utf-8"))


def school():
    """Common pipe, branches and flows wanted of the school columns."""
    given = SCHOOL["inputs"]
    bed = given["top_of_block_in"] - given["blk"][2] + given["h_min_in"]
    base = given["top_of_block_in"] + given["slab"][2]

    def pipe(bore, length, fittings):
        return Stretch(bore * INCH, length * FOOT, K=fittings, C_HW=given["hw_C"])

    branches = tuple(
        Branch(column["name"], (base + column["h_in"] - bed) * INCH, pipe(given["branch_d_in"], column["branch_L_ft"], given["branch_K"]))
        for column in given["cols"]
    )
    flows = tuple(3.141592653589793 * column["d_in"] / 12 * given["unit_gpm_per_ft"] * GALLON_PER_MINUTE for column in given["cols"])
    return pipe(given["common_d_in"], given["common_L_ft"], given["common_K"]), branches, flows


def expected(key):
    return SCHOOL["expected"][key]["value"]


# --- the school columns -------------------------------------------------------------------------------------------------------------


def test_heads_needed_and_throttles_are_those_of_the_school_columns():
    common, branches, flows = school()
    found = balance(common, branches, flows, NU)
    assert branches[found.governing].name == expected("governing_column")
    assert found.head / FOOT == pytest.approx(expected("TDH_required_ft"), rel=0.01)
    for branch, need, throttle in zip(branches, found.needs, found.throttles):
        assert need / FOOT == pytest.approx(expected(f"need_at_manifold_{branch.name}_ft"), rel=0.01)
        assert throttle / FOOT == pytest.approx(expected(f"throttle_{branch.name}_ft"), rel=0.01, abs=1e-12)


def test_valves_set_so_share_the_water_as_wanted_at_every_strength_of_the_pump_that_meets_it():
    common, branches, flows = school()
    set_to = balance(common, branches, flows, NU)
    valved = tuple(branch._replace(K_valve=valve) for branch, valve in zip(branches, set_to.valves))
    for share in (0.3, 0.6, 0.9):
        Q_max = sum(flows) / share
        pump = LabelPump(H_0=set_to.head / (1 - share**2), Q_max=Q_max)
        found = running_branches(pump, common, valved, NU)
        assert found.flows == tuple(pytest.approx(flow, rel=1e-9) for flow in flows)
        assert found.pump_head == pytest.approx(set_to.head, rel=1e-9)


# --- any branches -------------------------------------------------------------------------------------------------------------------

lifts = st.floats(0.3, 1.2)
hoses = st.builds(lambda bore, length, K: Stretch(bore, length, K, k_s=1.5e-6), st.floats(0.012, 0.032), st.floats(0.5, 5.0), st.floats(1.0, 8.0))
pumps = st.builds(LabelPump, st.floats(2.5, 6.0), st.floats(5e-4, 3e-3))


@settings(max_examples=60)
@given(pumps, hoses, st.lists(st.tuples(lifts, hoses), min_size=1, max_size=5))
def test_a_running_manifold_obeys_continuity_and_energy_or_is_refused_with_a_branch_named(pump, common, rest):
    branches = tuple(Branch(f"no. {number}", lift, hose) for number, (lift, hose) in enumerate(rest))
    try:
        found = running_branches(pump, common, branches, NU)
    except InputError as refused:
        assert "would run backwards" in str(refused) and len(branches) > 1
        return
    assert all(flow > 0 for flow in found.flows)
    lost = losses(common, sum(found.flows), NU)
    at_a_step = any(abs(part.Re - 2000) < 1e-3 for part in (lost, *(losses(b.stretch, Q, NU) for b, Q in zip(branches, found.flows))))
    if not at_a_step:  # where a flow turns from laminar the head jumps, and no flow has just this head
        assert found.pump_head - lost.h_f - lost.h_m == pytest.approx(found.parting_head, rel=1e-9)
        for branch, flow in zip(branches, found.flows):
            assert branch.head(flow, NU) == pytest.approx(found.parting_head, rel=1e-9)


@settings(max_examples=40)
@given(pumps, hoses, lifts, hoses)
def test_one_branch_is_two_stretches_one_after_the_other(pump, common, lift, hose):
    alone = running_branches(pump, common, (Branch("only", lift, hose),), NU)
    assert alone.flows[0] == pytest.approx(duty_point(pump, lambda Q: head_needed(Q, lift, (common, hose), NU)).Q, rel=1e-9)


@settings(max_examples=40)
@given(pumps, hoses, lifts, hoses)
def test_equal_branches_take_equal_shares_and_closing_one_gives_the_other_more(pump, common, lift, hose):
    left, right = Branch("left", lift, hose), Branch("right", lift, hose)
    both = running_branches(pump, common, (left, right), NU)
    assert both.flows[0] == both.flows[1]
    throttled = running_branches(pump, common, (left._replace(K_valve=20.0), right), NU)
    assert throttled.flows[0] <= both.flows[0] and throttled.flows[1] >= both.flows[1]


# --- what is refused ----------------------------------------------------------------------------------------------------------------

HOSE = Stretch(0.025, 2.0, K=3.0, k_s=1.5e-6)
WEAK = LabelPump(1.5, 1e-3)


def test_a_branch_above_the_head_is_refused_by_name_and_none_at_all_too():
    with pytest.raises(InputError, match=r"branch high would run backwards.*Throttle"):
        running_branches(WEAK, HOSE, (Branch("low", 0.3, HOSE), Branch("high", 1.4, HOSE)), NU)
    with pytest.raises(InputError, match="the pump stops at 1.5 m"):
        running_branches(WEAK, HOSE, (Branch("low", 2.0, HOSE),), NU)
    with pytest.raises(InputError, match="give one or more"):
        running_branches(WEAK, HOSE, (), NU)


def test_a_maker_s_curve_that_ends_too_soon_is_refused():
    short = TabulatedPump(((0.0, 3.0), (1e-4, 2.9)))
    with pytest.raises(InputError, match="read more points"):
        running_branches(short, HOSE, (Branch("a", 0.3, HOSE), Branch("b", 0.4, HOSE)), NU)


@pytest.mark.parametrize("flows", [(), (1e-4,), (1e-4, 0.0), (1e-4, -1e-4), (1e-4, float("nan"))])
def test_a_balance_wants_one_flow_for_each_branch(flows):
    with pytest.raises(InputError, match="one flow above zero for each branch"):
        balance(HOSE, (Branch("a", 0.3, HOSE), Branch("b", 0.4, HOSE)), flows, NU)
