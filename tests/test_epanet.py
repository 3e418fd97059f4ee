"""Pipes and pumps against EPA's EPANET engine, run here through wntr.

The engine uses Swamee and Jain's friction factor and stores flows in single precision.
"""

import warnings
from pathlib import Path

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.follows.manifold import Branch, balance, running_branches
from brimwork.design.follows.pipework import Stretch, head_needed
from brimwork.design.typed import file
from brimwork.topics.hazen_williams import flow_by_hazen_williams
from brimwork.topics.pump_laws import SlowedPump, duty_one_after_the_other, duty_side_by_side
from brimwork.topics.pumps import LabelPump, TabulatedPump, duty_point
from brimwork.units import InputError

LITRE_PER_MINUTE = 1e-3 / 60
POINTS = ((0.0, 3.0), (20 * LITRE_PER_MINUTE, 2.25), (40 * LITRE_PER_MINUTE, 0.0))
ENGINE_VISCOSITY = 1.1e-5 * 0.3048**2  # EPANET's own, 1.1e-5 ft2/s, which its option multiplies


def engine(folder, headloss: str, to: float, pipe: dict, start: float = 0.0, pump=None, nu: float = 1.0034e-6) -> tuple[float, float]:
    """Flow (m3/s) in a pipe from a reservoir at `start`, through a pump where points are given, to one at `to` (m); and the head before the pipe."""
    import wntr  # takes seconds, in the one process that needs it

    network = wntr.network.WaterNetworkModel()
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # "units of roughness will not be changed": they are given for this head loss
        network.options.hydraulic.headloss = headloss
    network.options.hydraulic.viscosity = nu / ENGINE_VISCOSITY
    network.options.hydraulic.accuracy, network.options.time.duration = 1e-6, 0
    network.add_reservoir("from", base_head=start)
    network.add_reservoir("to", base_head=to)
    network.add_junction("joint", base_demand=0, elevation=0)
    if pump:
        network.add_curve("curve", "HEAD", list(pump))
        network.add_pump("start", "from", "joint", pump_type="HEAD", pump_parameter="curve")
    else:
        network.add_pipe("start", "from", "joint", length=1e-3, diameter=1.0, roughness=pipe["roughness"])
    network.add_pipe("pipe", "joint", "to", **pipe)
    results = wntr.sim.EpanetSimulator(network).run_sim(file_prefix=str(folder / "run"))
    return float(results.link["flowrate"]["pipe"].iloc[0]), float(results.node["head"]["joint"].iloc[0])


def test_the_duty_point_of_a_small_pump_is_that_of_the_engine(tmp_path):
    """25 mm bore, 4 m, 1.5 um, K = 4, lift 0.9 m, pump (0, 3 m) (20 L/min, 2.25 m) (40 L/min, 0): the engine lays a parabola through these points."""
    flow, head = engine(tmp_path, "D-W", 0.9, {"length": 4, "diameter": 0.025, "roughness": 1.5e-6, "minor_loss": 4.0}, pump=POINTS)
    assert (flow / LITRE_PER_MINUTE, head) == (pytest.approx(29.956, rel=1e-3), pytest.approx(1.3175, rel=1e-3)), "another engine than in the documents"
    hose, pump = Stretch(0.025, 4.0, K=4.0, k_s=1.5e-6), LabelPump(H_0=3.0, Q_max=40 * LITRE_PER_MINUTE)
    same_law = duty_point(pump, lambda Q: head_needed(Q, 0.9, (hose,), 1.0034e-6, "swamee-jain"))
    assert same_law == (pytest.approx(flow, rel=3e-4), pytest.approx(head, rel=6e-4))
    exact = duty_point(pump, lambda Q: head_needed(Q, 0.9, (hose,), 1.0034e-6))
    assert exact == (pytest.approx(flow, rel=1e-3), pytest.approx(head, rel=2e-3))
    through_points = duty_point(TabulatedPump(POINTS), lambda Q: head_needed(Q, 0.9, (hose,), 1.0034e-6))
    assert through_points == (pytest.approx(flow, rel=0.05), pytest.approx(head, rel=0.05))  # three points leave the curve some freedom


@pytest.mark.parametrize(
    "bore, length, fittings, lift, nu", [(0.020, 6, 8.0, 0.5, 1.1386e-6), (0.032, 12, 3.0, 1.4, 0.8927e-6), (0.019, 2.5, 5.0, 1.0, 1.3e-6)]
)
def test_other_hoses_and_temperatures_agree_with_the_engine(tmp_path, bore, length, fittings, lift, nu):
    points = [(0.0, 2.4), (30 * LITRE_PER_MINUTE, 1.8), (60 * LITRE_PER_MINUTE, 0.0)]
    flow, head = engine(tmp_path, "D-W", lift, {"length": length, "diameter": bore, "roughness": 1.5e-6, "minor_loss": fittings}, pump=points, nu=nu)
    hose = Stretch(bore, length, K=fittings, k_s=1.5e-6)
    ours = duty_point(LabelPump(2.4, 60 * LITRE_PER_MINUTE), lambda Q: head_needed(Q, lift, (hose,), nu))
    assert ours == (pytest.approx(flow, rel=0.01), pytest.approx(head, rel=0.01))


def test_the_engines_curve_from_one_point_is_the_parabola_of_a_label(tmp_path):
    """One design point (q, h) stands in EPANET for 4/3 h at no flow and 2 q at no head."""
    pipe = {"length": 4, "diameter": 0.025, "roughness": 1.5e-6, "minor_loss": 4.0}
    flow, head = engine(tmp_path, "D-W", 0.9, pipe, pump=[(20 * LITRE_PER_MINUTE, 2.25)])
    assert LabelPump(H_0=2.25 * 4 / 3, Q_max=40 * LITRE_PER_MINUTE).head(flow) == pytest.approx(head, rel=1e-4)


@pytest.mark.parametrize("bore, length, C, head", [(0.0254, 30, 150, 2.0826676), (0.025, 6, 130, 0.4), (0.050, 100, 140, 3.0)])
def test_hazen_williams_gives_the_flow_of_the_engine(tmp_path, bore, length, C, head):
    flow, _ = engine(tmp_path, "H-W", 0.0, {"length": length, "diameter": bore, "roughness": C, "minor_loss": 0.0}, start=head)
    assert flow_by_hazen_williams(h_f=head, d_pipe=bore, L_pipe=length, C_HW=C) == pytest.approx(flow, rel=5e-5)


def test_the_duty_point_of_the_library_bowl_is_that_of_the_engine(tmp_path):
    """The whole design chain against the engine, pump by three points of its label's parabola; the design's law is Blasius, the engine's hose smooth plastic."""
    design = file.load_design(Path(__file__).parents[1] / "workbooks" / "designs" / "library-bowl.toml")
    chain = chain_of(design)
    pump = [(share * design["pump.maximum_flow"], chain.pump.head(share * design["pump.maximum_flow"])) for share in (0.0, 0.5, 1.0)]
    pipe = {"length": design["pipe.length"], "diameter": design["pipe.bore"], "roughness": 1.5e-6, "minor_loss": design["pipe.fittings"]}
    flow, head = engine(tmp_path, "D-W", chain.static_lift, pipe, pump=pump, nu=chain.water["nu"])
    assert (chain.duty_flow, chain.duty_head) == (pytest.approx(flow, rel=0.015), pytest.approx(head, rel=0.015))


# --- several branches ---------------------------------------------------------------------------------------------------------------


def parted(folder, headloss: str, pump, common: dict, branches: list[tuple[float, dict]], nu: float = 1.0034e-6) -> tuple[list[float], float, float]:
    """Flows (m3/s) of branches to reservoirs at their lifts (m), head (m) where they part and head of the pump, from a reservoir at 0 m."""
    import wntr  # takes seconds, in the one process that needs it

    network = wntr.network.WaterNetworkModel()
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        network.options.hydraulic.headloss = headloss
    network.options.hydraulic.viscosity = nu / ENGINE_VISCOSITY
    network.options.hydraulic.accuracy, network.options.time.duration = 1e-6, 0
    network.add_reservoir("from", base_head=0.0)
    for name in ("joint", "parting"):
        network.add_junction(name, base_demand=0, elevation=0)
    network.add_curve("curve", "HEAD", list(pump))
    network.add_pump("pump", "from", "joint", pump_type="HEAD", pump_parameter="curve")
    network.add_pipe("common", "joint", "parting", **common)
    for number, (lift, pipe) in enumerate(branches):
        network.add_reservoir(f"top_{number}", base_head=lift)
        network.add_pipe(f"branch_{number}", "parting", f"top_{number}", **pipe)
    results = wntr.sim.EpanetSimulator(network).run_sim(file_prefix=str(folder / "run"))
    flows = [float(results.link["flowrate"][f"branch_{number}"].iloc[0]) for number in range(len(branches))]
    return flows, *(float(results.node["head"][name].iloc[0]) for name in ("parting", "joint"))


INCH, FOOT, GALLON_PER_MINUTE = 0.0254, 0.3048, 231 * 0.0254**3 / 60
LIFTS, LENGTHS = (44 / 12 * FOOT, 38 / 12 * FOOT, 32 / 12 * FOOT), (5 * FOOT, 4 * FOOT, 6 * FOOT)  # the invented school columns


def columns(valves=(0.0, 0.0, 0.0), **roughness) -> tuple[Stretch, tuple[Branch, ...]]:
    hoses = [Stretch(0.75 * INCH, length, K=3.5, **roughness) for length in LENGTHS]
    branches = tuple(Branch(name, lift, hose, valve) for name, lift, hose, valve in zip("ABC", LIFTS, hoses, valves))
    return Stretch(1.0 * INCH, 3 * FOOT, K=2.5, **roughness), branches


def columns_in_the_engine(folder, headloss, pump, common, branches):
    roughness = {"H-W": common.C_HW, "D-W": common.k_s}[headloss]
    pipes = [
        {"length": hose.L_pipe, "diameter": hose.d_pipe, "roughness": roughness, "minor_loss": hose.K + valve}
        for hose, valve in [(common, 0.0), *((branch.stretch, branch.K_valve) for branch in branches)]
    ]
    points = [(share * pump.Q_max, pump.head(share * pump.Q_max)) for share in (0.0, 0.5, 1.0)]
    return parted(folder, headloss, points, pipes[0], [(branch.z_s, pipe) for branch, pipe in zip(branches, pipes[1:])])


@pytest.mark.parametrize("headloss, roughness, tolerance", [("H-W", {"C_HW": 150.0}, 3e-3), ("D-W", {"k_s": 1.5e-6}, 0.015)])
@pytest.mark.parametrize("shut_off, free", [(12.0, 25.0), (6.5, 20.0), (8.0, 14.0)])
def test_three_open_branches_share_the_water_as_in_the_engine(tmp_path, headloss, roughness, tolerance, shut_off, free):
    pump = LabelPump(shut_off * FOOT, free * GALLON_PER_MINUTE)
    common, branches = columns(**roughness)
    flows, parting, head = columns_in_the_engine(tmp_path, headloss, pump, common, branches)
    ours = running_branches(pump, common, branches, 1.0034e-6)
    assert ours.flows == tuple(pytest.approx(flow, rel=tolerance) for flow in flows)
    assert (ours.parting_head, ours.pump_head) == (pytest.approx(parting, rel=tolerance), pytest.approx(head, rel=tolerance))


def test_valves_set_by_the_balance_give_every_branch_its_flow_in_the_engine(tmp_path):
    wanted = tuple(3.141592653589793 * diameter / 12 * GALLON_PER_MINUTE for diameter in (13, 12, 11))
    common, branches = columns(C_HW=150.0)
    set_to = balance(common, branches, wanted, 1.0034e-6)
    pump = LabelPump(H_0=set_to.head / 0.75, Q_max=2 * sum(wanted))  # gives just that head at just that flow
    common, branches = columns(set_to.valves, C_HW=150.0)
    flows, parting, head = columns_in_the_engine(tmp_path, "H-W", pump, common, branches)
    assert flows == [pytest.approx(flow, rel=1e-3) for flow in wanted]
    assert (parting, head) == (pytest.approx(max(set_to.needs), rel=1e-3), pytest.approx(set_to.head, rel=1e-3))


def test_a_branch_that_runs_backwards_in_the_engine_is_refused(tmp_path):
    pump = LabelPump(3.75 * FOOT, 25 * GALLON_PER_MINUTE)
    common, branches = columns(C_HW=150.0)
    flows, _, _ = columns_in_the_engine(tmp_path, "H-W", pump, common, branches)
    assert flows[0] < 0 < flows[2]
    with pytest.raises(InputError, match="branch A would run backwards"):
        running_branches(pump, common, branches, 1.0034e-6)


# --- two pumps, other speeds --------------------------------------------------------------------------------------------------------

ONE = LabelPump(H_0=3.0, Q_max=60 * LITRE_PER_MINUTE)


def into_one_pipe(folder, pumps: list[tuple[str, str]], speed: float = 1.0) -> float:
    """Flow (m3/s) of equal pumps between the nodes named, through a short pipe of 25 mm and K = 5 to a reservoir one metre up."""
    import wntr  # takes seconds, in the one process that needs it

    network = wntr.network.WaterNetworkModel()
    network.options.hydraulic.accuracy, network.options.time.duration = 1e-8, 0
    network.add_reservoir("from", base_head=0.0)
    network.add_reservoir("to", base_head=1.0)
    for name in {node for pair in pumps for node in pair} - {"from"}:
        network.add_junction(name, base_demand=0, elevation=0)
    network.add_curve("curve", "HEAD", [(share * ONE.Q_max, ONE.head(share * ONE.Q_max)) for share in (0.0, 0.5, 1.0)])
    for number, (start, end) in enumerate(pumps):
        network.add_pump(f"pump_{number}", start, end, pump_type="HEAD", pump_parameter="curve", speed=speed)
    network.add_pipe("pipe", "joint", "to", length=1e-3, diameter=0.025, roughness=1e4, minor_loss=5.0)
    results = wntr.sim.EpanetSimulator(network).run_sim(file_prefix=str(folder / "run"))
    return float(results.link["flowrate"]["pipe"].iloc[0])


PIPE = {"z_s": 1.0, "k_sys": 8 * 5 / (3.141592653589793**2 * 32.2 * FOOT * 0.025**4)}  # the engine's gravity is 32.2 ft/s2
PARABOLA = {"H_0": 3.0, "c_pump": 3.0 / ONE.Q_max**2}


def test_two_pumps_side_by_side_give_the_flow_of_the_engine(tmp_path):
    flow = into_one_pipe(tmp_path, [("from", "joint"), ("from", "joint")])
    assert flow == pytest.approx(63.1228 * LITRE_PER_MINUTE, rel=1e-5), "another engine than in the declaration"
    assert duty_side_by_side(**PARABOLA, **PIPE) == pytest.approx(flow, rel=1e-4)


def test_two_pumps_one_after_the_other_give_the_flow_of_the_engine(tmp_path):
    flow = into_one_pipe(tmp_path, [("from", "between"), ("between", "joint")])
    assert flow == pytest.approx(50.5040 * LITRE_PER_MINUTE, rel=1e-5), "another engine than in the declaration"
    assert duty_one_after_the_other(**PARABOLA, **PIPE) == pytest.approx(flow, rel=1e-4)


@pytest.mark.parametrize("speed", [0.7, 0.85, 1.2])
def test_a_pump_at_another_speed_meets_its_pipe_where_the_engine_says(tmp_path, speed):
    flow = into_one_pipe(tmp_path, [("from", "joint")], speed)
    turned = SlowedPump(ONE, n_1=50.0, n_2=50.0 * speed)
    duty = duty_point(turned, lambda Q: PIPE["z_s"] + PIPE["k_sys"] * Q**2)
    assert duty.Q == pytest.approx(flow, rel=2e-4)
    assert abs(duty.Q - speed * duty_point(ONE, lambda Q: PIPE["z_s"] + PIPE["k_sys"] * Q**2).Q) > 0.02 * flow, "the old duty must not merely be scaled"
