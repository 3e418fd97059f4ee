"""The cross-check's own parts against others: EPANET (through wntr), SWMM (through pyswmm), IAPWS, pint, and statics with a known answer."""

import math
import warnings

import iapws
import pytest
from invented import KINDS, file, realistic
from of_pint import REGISTRY
from plain_bodies import area, common, disc, greatest_pressure, lever, rect
from plain_design import UNITS, Plain, quantity
from plain_flow import Curve, density, hose, shared, viscosity
from pyswmm import Links, Nodes, Simulation
from truth import work

ENGINE_VISCOSITY = 1.1e-5 * 0.3048**2  # EPANET's own, which its option multiplies
PLASTIC = "0.0015 mm"


@pytest.mark.parametrize("celsius", range(1, 39, 3))
def test_water_is_that_of_iapws(celsius):
    theirs = iapws.IAPWS97(T=273.15 + celsius, P=0.101325)
    assert (density(273.15 + celsius), viscosity(273.15 + celsius)) == (pytest.approx(theirs.rho, rel=2e-4), pytest.approx(theirs.nu, rel=2e-3))


PINT = {
    "US gal": "gallon", "L": "liter", "US gal/min": "gallon/minute", "US gal/h": "gallon/hour", "L/s": "liter/second", "L/min": "liter/minute", "L/h": "liter/hour",
    "L/s per m": "liter/second/meter", "US gal/min per ft": "gallon/minute/foot", "m^0.5/s": "meter**0.5/second", "ft^0.5/s": "foot**0.5/second", "L/day": "liter/day",
    "US gal/day": "gallon/day", "psf": "force_pound/foot**2", "lbf": "force_pound", "t": "metric_ton", "mV/A/m": "millivolt/ampere/meter", "ohm/kft": "ohm/kilofoot",
    "cm2": "cm**2", "mm2": "mm**2", "m2": "m**2", "in2": "inch**2", "ft2": "foot**2", "m3": "m**3", "ft3": "foot**3", "yd3": "yard**3", "in": "inch", "m3/s": "m**3/s",
    "kg/m3": "kg/m**3", "lb/ft3": "pound/foot**3", "lb": "pound", "in/day": "inch/day", "in/h": "inch/hour", "mm/h": "millimeter/hour", "h": "hour", "%": "percent", "": "dimensionless",
}  # fmt: skip


def test_units_are_those_of_pint():
    for unit, ours in UNITS.items():
        if not unit.startswith("cur"):
            assert REGISTRY.Quantity(1, PINT.get(unit, unit)).to_base_units().to_root_units().m == pytest.approx(
                ours * (1e3 if _in_grams(PINT.get(unit, unit)) else 1)
            ), unit


def _in_grams(unit: str) -> bool:
    return "gram" in str(REGISTRY.Quantity(1, unit).to_root_units().units) and "kilogram" not in str(REGISTRY.Quantity(1, unit).to_root_units().units)


def test_texts_are_read_as_they_are_typed():
    assert [quantity(text) for text in ("1 1e3 mm", "25.4 mm", "1:100", "-2.5 in", "68 degF", "yes")] == [
        "1 1e3 mm",
        0.0254,
        0.01,
        -0.0635,
        pytest.approx(293.15),
        "yes",
    ]


def smooth(kind: str, seed: int) -> Plain:
    """A drawn design with a smooth hose and a pump of which the label is known, by laws that the engine has too."""
    v, region = realistic(kind, f"engine {seed}")
    v = {**v, "pipe.friction_law": "Hazen-Williams" if seed % 2 else "Swamee-Jain", "pipe.roughness": PLASTIC, "pump.shut_off_head": "4.5 m"}
    flow = work(Plain(file(v, kind, region))).r["flow_wanted"]
    v.pop("pump.curve", None)
    return Plain(file({**v, "pump.maximum_flow": f"{flow * 2 * 60e3:.6g} L/min"}, kind, region))


def engine(folder, plain: Plain, low: float, ends: list[tuple[str, float, float, float, float]]) -> dict[str, float]:
    """Flows (m3/s) of EPANET: pump from the lowest water, a common hose, and branches (name, level, bore, length, fittings) to their outlets."""
    d, hazen = plain.d, plain.d["pipe.friction_law"] == "Hazen-Williams"
    import wntr  # takes seconds, in the one process that needs it

    network = wntr.network.WaterNetworkModel()
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        network.options.hydraulic.headloss = "H-W" if hazen else "D-W"
    network.options.hydraulic.viscosity = viscosity(d["flow.water_temperature"]) / ENGINE_VISCOSITY
    network.options.hydraulic.accuracy, network.options.time.duration = 1e-7, 0
    rough = d["pipe.hazen_williams"] if hazen else d["pipe.roughness"]
    network.add_reservoir("water", base_head=low)
    for joint in ("out", "parting"):
        network.add_junction(joint, base_demand=0, elevation=0)
    pump = Curve(d)
    network.add_curve("label", "HEAD", [(share * pump.most, pump.head(share * pump.most)) for share in (0.0, 0.5, 1.0)])
    network.add_pump("pump", "water", "out", pump_type="HEAD", pump_parameter="label")
    network.add_pipe("common", "out", "parting", length=d["pipe.length"], diameter=d["pipe.bore"], roughness=rough, minor_loss=d["pipe.fittings"])
    for name, level, bore, length, fittings in ends:
        network.add_reservoir(f"to-{name}", base_head=level)
        network.add_pipe(name, "parting", f"to-{name}", length=length, diameter=bore, roughness=rough, minor_loss=fittings, check_valve=True)
    flows = wntr.sim.EpanetSimulator(network).run_sim(file_prefix=str(folder / "run")).link["flowrate"]
    return {name: float(flows[name].iloc[0]) for name in ("common", *(end[0] for end in ends))}


@pytest.mark.parametrize("kind, seed", [(kind, seed) for kind in KINDS if kind != "drilled stones" for seed in (1, 2)])
def test_duty_flows_of_whole_designs_are_those_of_epanet(tmp_path, kind, seed):
    plain = smooth(kind, seed)
    r = work(plain).r
    flows = engine(tmp_path, plain, r["level:lowest water"], [("end", r["delivery"], 1.0, 1e-3, 0.0)])
    assert r["duty_flow"] == pytest.approx(flows["common"], rel=0.015)


@pytest.mark.parametrize("seed", (1, 2, 3))
def test_open_branches_of_drilled_stones_share_the_water_as_in_epanet(tmp_path, seed):
    plain = smooth("drilled stones", seed)
    d, r = plain.d, work(plain).r
    sizes = list(zip(d["stones.heights"], d["stones.branch_lengths"], strict=True))
    ends = [(f"s{i}", r["level:stone base"] + high, d["stones.branch_bore"], long, d["stones.branch_fittings"]) for i, (high, long) in enumerate(sizes)]
    flows = engine(tmp_path, plain, r["level:lowest water"], ends)
    branches = [(level - r["level:lowest water"], hose(d, bore, long, fittings)) for _, level, bore, long, fittings in ends]
    ours = shared(Curve(d), hose(d, d["pipe.bore"], d["pipe.length"], d["pipe.fittings"]), branches)
    assert ours == [pytest.approx(flows[end[0]], rel=0.015, abs=1e-6) for end in ends]


RILL = """\
[OPTIONS]
FLOW_UNITS LPS
FLOW_ROUTING KINWAVE
START_DATE 01/01/2024
END_DATE 01/01/2024
END_TIME 01:00:00
ROUTING_STEP 1
[JUNCTIONS]
A {top} 2 0 0 0
[OUTFALLS]
O 0 FREE
[CONDUITS]
R A O 30 {n} 0 0
[XSECTIONS]
R RECT_OPEN 1 {width} 0 0
[INFLOWS]
A FLOW "" FLOW 1 1 {litres}
"""
EDGE = """\
[OPTIONS]
FLOW_UNITS LPS
FLOW_ROUTING DYNWAVE
START_DATE 01/01/2024
END_DATE 01/01/2024
END_TIME 02:00:00
ROUTING_STEP 1
MIN_SURFAREA 0.0001
[STORAGE]
S 0 1 0 FUNCTIONAL 0 0 {surface}
[OUTFALLS]
O -1 FREE
[WEIRS]
W S O TRANSVERSE 0 {coefficient} NO 0
[XSECTIONS]
W RECT_OPEN 0.9 {length} 0 0
[INFLOWS]
S FLOW "" FLOW 1 1 {litres}
"""


@pytest.mark.parametrize("seed", (1, 2))
def test_the_depth_in_a_rill_is_that_of_swmm(tmp_path, seed):
    worked = work(Plain(file(*_swapped(realistic("cascade", f"rill {seed}"), "cascade"))))
    d, r = worked.d, worked.r
    text = RILL.format(top=30 * d["cascade.rill_slope"], n=d["cascade.rill_roughness"], width=d["cascade.rill_width"], litres=r["flow_wanted"] * 1e3)
    (tmp_path / "rill.inp").write_text(text)
    with Simulation(str(tmp_path / "rill.inp")) as run:
        reach = Links(run)["R"]
        for _ in run:
            pass
        assert r["normal_depth"] == pytest.approx(reach.depth, rel=0.005)


@pytest.mark.parametrize("seed", (1, 2))
def test_the_head_over_a_rim_is_that_of_swmm(tmp_path, seed):
    """And so the water that stands over it, which comes back when the pump stops."""
    worked = work(Plain(file(*_swapped(realistic("overflowing vessel", f"rim {seed}"), "overflowing vessel"))))
    d, r = worked.d, worked.r
    text = EDGE.format(surface=r["vessel_surface"], coefficient=d["flow.weir_coefficient"], length=r["rim_length"], litres=r["flow_wanted"] * 1e3)
    (tmp_path / "rim.inp").write_text(text)
    with Simulation(str(tmp_path / "rim.inp")) as run:
        tank = Nodes(run)["S"]
        for _ in run:
            pass
        assert (r["rim_head"], r["transit_rim"]) == (pytest.approx(tank.depth, rel=0.005), pytest.approx(tank.depth * r["vessel_surface"], rel=0.005))


def _swapped(drawn: tuple[dict, str], kind: str) -> tuple[dict, str, str]:
    return drawn[0], kind, drawn[1]


def test_shapes_have_the_areas_and_levers_of_geometry():
    assert area(disc(2.0)) == pytest.approx(math.pi) and area(common(rect(2, 2), rect(1, 5, 0.9))) == pytest.approx(1.2)
    assert lever(rect(2, 1)) == pytest.approx(0.5) and lever(rect(2, 1), 0.8, 0) == pytest.approx(0.2) and lever(rect(2, 1), 1.2, 0) == pytest.approx(-0.2)
    assert lever(((1, 0), (-0.5, 3**0.5 / 2), (-0.5, -(3**0.5) / 2))) == pytest.approx(0.5), (
        "three feet tip over the line between two: half their circle's radius"
    )


@pytest.mark.parametrize("off, over", [(0.25, 2.6667), (0.30, 3.3333), (1 / 3, 4.0), (0.40, 6.6667), (1 / 6, 2.0), (1 / 12, 1.5)])
def test_pressures_past_the_kern_are_those_of_the_table(off, over):
    """Over the mean, by eccentricity over width: derived from balance (published-loads L17, L19); the cells that serve both directions agree."""
    assert greatest_pressure(1.0, 1.0, 1.0, off, 0.0) == pytest.approx(over, rel=1e-4)
    assert greatest_pressure(1.0, 1.0, 1.0, off, 1e-6) == pytest.approx(over, rel=0.02)


def test_pressure_of_a_footing_off_the_middle_both_ways_is_that_of_a_design_sheet():
    """1.8 m square, 597.62 kN, moments 33.5188 and 3.5196 kN m: 222.556 kN/m2 (a footing sheet to SANS 10100, second-hand)."""
    assert greatest_pressure(597.62, 1.8, 1.8, 33.5188 / 597.62, 3.5196 / 597.62) == pytest.approx(222.556, rel=1e-5)
