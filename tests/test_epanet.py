"""Pipes and pumps against EPA's EPANET engine, run here through wntr.

The engine uses Swamee and Jain's friction factor and stores flows in single precision.
"""

import warnings
from pathlib import Path

import pytest
import wntr

from brimwork.design import inputs
from brimwork.design.features import chain_of
from brimwork.design.pipework import Stretch, head_needed
from brimwork.topics.hazen_williams import flow_by_hazen_williams
from brimwork.topics.pumps import LabelPump, TabulatedPump, duty_point

LITRE_PER_MINUTE = 1e-3 / 60
POINTS = ((0.0, 3.0), (20 * LITRE_PER_MINUTE, 2.25), (40 * LITRE_PER_MINUTE, 0.0))
ENGINE_VISCOSITY = 1.1e-5 * 0.3048**2  # EPANET's own, 1.1e-5 ft2/s, which its option multiplies


def engine(folder, headloss: str, to: float, pipe: dict, start: float = 0.0, pump=None, nu: float = 1.0034e-6) -> tuple[float, float]:
    """Flow (m3/s) in a pipe from a reservoir at `start`, through a pump where points are given, to one at `to` (m); and the head before the pipe."""
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
    design = inputs.load(Path(__file__).parents[1] / "workbooks" / "designs" / "library-bowl.toml")
    chain = chain_of(design)
    pump = [(share * design["pump.free_flow"], chain.pump.head(share * design["pump.free_flow"])) for share in (0.0, 0.5, 1.0)]
    pipe = {"length": design["pipe.length"], "diameter": design["pipe.bore"], "roughness": 1.5e-6, "minor_loss": design["pipe.fittings"]}
    flow, head = engine(tmp_path, "D-W", chain.static_lift, pipe, pump=pump, nu=chain.water["nu"])
    assert (chain.duty_flow, chain.duty_head) == (pytest.approx(flow, rel=0.015), pytest.approx(head, rel=0.015))
