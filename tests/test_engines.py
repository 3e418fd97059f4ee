"""Formulas against independent software: EPA SWMM, fluids, SciPy's integrals, iapws.

Only the trustworthy weir functions of fluids 1.3.1 are used: the full-width ones of Kindsvater-Carter, Rehbock and Ackers. Its V-notch
by Shen leaves out a factor of 8/15 times the root of 2 (a third too much), its two SIA functions take head and height together as the head,
and its contracted Kindsvater-Carter adds a tenth of a millimetre of head where a whole one is meant; those would only mislead.
"""

import math

import fluids
import iapws
import numpy
import pytest
from pyswmm import Nodes, Simulation
from scipy.integrate import quad, solve_ivp

from brimwork import tables
from brimwork.topics import find
from brimwork.topics.overflow import coefficient_by_height, head_by_weir_coefficient, lip_coefficient
from brimwork.units import InputError

G = 9.80665

# --- EPA SWMM -----------------------------------------------------------------------------------------------------------------------

SWMM = """\
[OPTIONS]
FLOW_UNITS LPS
FLOW_ROUTING DYNWAVE
START_DATE 01/01/2024
END_DATE 01/01/2024
END_TIME 02:00:00
ROUTING_STEP 1
MIN_SURFAREA 0.0001
[STORAGE]
S 0 1 0 FUNCTIONAL 0 0 0.2
[OUTFALLS]
O -1 FREE
[WEIRS]
W S O {kind} 0 {coefficient} NO {contractions}
[XSECTIONS]
W {shape} 0.9 {width} 0 0
[INFLOWS]
S FLOW "" FLOW 1 1 {litres}
"""


def _swmm_head(folder, **case) -> float:
    """Steady head (m) at a weir that drains a small tank; a MIN_SURFAREA of 0 would silently mean 1.17 m2, hence the small number."""
    (folder / "tank.inp").write_text(SWMM.format(**case))
    with Simulation(str(folder / "tank.inp")) as run:
        tank = Nodes(run)["S"]
        for _ in run:
            pass
        return tank.depth


@pytest.mark.parametrize("litres, width", [(5, 0.5), (1, 0.5), (0.5, 1.2), (20, 0.8)])
def test_the_head_at_a_lip_is_that_of_the_swmm_engine(tmp_path, litres, width):
    engine = _swmm_head(tmp_path, kind="TRANSVERSE", shape="RECT_OPEN", coefficient=1.84, width=width, contractions=0, litres=litres)
    assert head_by_weir_coefficient(Q=litres / 1000, C_w=1.84, b=width) == pytest.approx(engine, rel=1e-3)


def test_two_end_contractions_are_those_of_the_swmm_engine(tmp_path):
    engine = _swmm_head(tmp_path, kind="TRANSVERSE", shape="RECT_OPEN", coefficient=1.84, width=0.5, contractions=2, litres=5)
    C_d = 1.84 / find("weir coefficient")(C_d=1.0)
    assert engine == pytest.approx(0.03117124, rel=1e-5)
    assert find("flow over a lip with end contractions")(C_d=C_d, b=0.5, H=engine, n_c=2) == pytest.approx(0.005, rel=1e-3)
    assert head_by_weir_coefficient(Q=0.005, C_w=1.84, b=0.5 - 0.2 * engine) == pytest.approx(engine, rel=1e-3)


@pytest.mark.parametrize("litres", [0.1, 1, 8])
def test_the_head_at_a_notch_is_that_of_the_swmm_engine(tmp_path, litres):
    """A right-angled notch 0.9 m deep is 1.8 m wide; the engine's coefficient 1.38 m^0.5/s is 8/15 C_d sqrt(2 g)."""
    engine = _swmm_head(tmp_path, kind="V-NOTCH", shape="TRIANGULAR", coefficient=1.38, width=1.8, contractions=0, litres=litres)
    C_d = 1.38 / (8 / 15 * math.sqrt(2 * G))
    assert find("head at a V-notch")(Q=litres / 1000, C_d=C_d, theta=math.pi / 2) == pytest.approx(engine, rel=1e-3)


# --- fluids -------------------------------------------------------------------------------------------------------------------------

FULL_WIDTH = {
    "Kindsvater and Carter": (fluids.Q_weir_rectangular_full_Kindsvater_Carter, lambda H, P: dict(C_d=lip_coefficient(H, P), k_b=-0.001, k_h=0.001)),
    "Rehbock": (fluids.Q_weir_rectangular_full_Rehbock, lambda H, P: dict(C_d=coefficient_by_height(C_0=0.602, C_1=0.083, H=H, P=P), k_b=0.0, k_h=0.00125)),
    "Ackers": (fluids.Q_weir_rectangular_full_Ackers, lambda H, P: dict(C_d=coefficient_by_height(C_0=0.602, C_1=0.083, H=H, P=P), k_b=0.0, k_h=0.00125)),
}


@pytest.mark.parametrize("author", FULL_WIDTH)
@pytest.mark.parametrize("H", [0.03, 0.05, 0.1, 0.15])
@pytest.mark.parametrize("P", [0.1, 0.15, 0.3])
def test_a_full_width_lip_passes_what_fluids_says(author, H, P):
    """Within 1.5 %, which is how far the three authors differ among themselves at heads of 50 to 150 mm; 2 % at 30 mm, where their ranges end."""
    theirs, corrections = FULL_WIDTH[author]
    ours = find("flow over a lip with corrected head and length")(b=0.5, H=H, **corrections(H, P))
    assert ours == pytest.approx(theirs(H, P, 0.5), rel=0.015 if H >= 0.05 else 0.02)


def test_at_the_capillary_length_weight_and_surface_tension_are_equal():
    water = tables.water(293.15)
    length = find("capillary length")(sigma=water["sigma"], rho=water["rho"])
    assert fluids.Bond(rhol=water["rho"], rhog=0.0, sigma=water["sigma"], L=length) == pytest.approx(1, rel=1e-9)


# --- water --------------------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("celsius", [*numpy.arange(0, 40.1, 0.5), 0.25, 1.25])
def test_water_is_that_of_the_iapws_formulations(celsius):
    kelvin = 273.15 + float(celsius)
    theirs, ours = iapws.IAPWS97(T=kelvin, P=0.101325), tables.water(kelvin)
    sigma = iapws._iapws._Tension(kelvin)
    assert [ours[name] for name in ("rho", "mu", "nu", "sigma")] == pytest.approx([theirs.rho, theirs.mu, theirs.mu / theirs.rho, sigma], rel=5e-4)


@pytest.mark.parametrize("kelvin", [20.0, 272.9, 313.5, math.nan])
def test_water_outside_the_table_is_refused(kelvin):
    with pytest.raises(InputError, match="0 to 40 degC"):
        tables.water(kelvin)


# --- integrals ----------------------------------------------------------------------------------------------------------------------

BOWL = {"d_floor": 0.3, "d_rim": 0.8, "D": 0.4}
VOLUMES = {  # name: (values, area at a height)
    "volume of a straight pit": ({"L": 1.4, "W": 0.9}, lambda z: 1.4 * 0.9),
    "volume of a battered pit": ({"L": 1.4, "W": 0.9, "m_b": 0.4}, lambda z: (1.4 + 0.8 * z) * (0.9 + 0.8 * z)),
    "volume of a tapered pit": ({"A_1": 0.5, "A_2": 1.7}, lambda z: (math.sqrt(0.5) + (math.sqrt(1.7) - math.sqrt(0.5)) * z / 0.35) ** 2),
    "volume from three areas": ({"A_1": 1.26, "A_m": 1.54 * 1.04, "A_2": 1.68 * 1.18}, lambda z: (1.4 + 0.8 * z) * (0.9 + 0.8 * z)),
    "volume of a round tank": ({"d_t": 1.1}, lambda z: math.pi * 0.55**2),
    "water in a cone-shaped bowl": (BOWL, lambda z: math.pi / 4 * (0.3 + 0.5 * z / 0.4) ** 2),
    "water in a round bowl": ({"R_s": 0.5}, lambda z: math.pi * (0.25 - (0.5 - z) ** 2)),
}


@pytest.mark.parametrize("name", VOLUMES)
def test_a_volume_is_the_integral_of_its_slices(name):
    values, area = VOLUMES[name]
    assert find(name)(**values, h=0.35) == pytest.approx(quad(area, 0, 0.35)[0], rel=1e-12)


H, P = 0.04, 0.1
SPEED = {"C_d": 0.62, "H": H}
OPENINGS = {  # name: (values, width at a depth, speed head added)
    "flow over a level lip": ({"b": 0.5}, lambda z: 0.5, 0.0),
    "flow over a lip with end contractions": ({"b": 0.5, "n_c": 2}, lambda z: 0.5 - 0.2 * H, 0.0),
    "flow with a velocity of approach": ({"b": 0.5, "h_a": 0.003}, lambda z: 0.5, 0.003),
    "flow through a V-notch": ({"theta": 1.2}, lambda z: 2 * (H - z) * math.tan(0.6), 0.0),
    "flow through a trapezoidal notch": ({"b": 0.3, "theta": 1.2}, lambda z: 0.3 + 2 * (H - z) * math.tan(0.6), 0.0),
}


@pytest.mark.parametrize("name", OPENINGS)
def test_a_flow_over_an_edge_is_the_integral_of_its_layers(name):
    values, width, added = OPENINGS[name]
    layers = quad(lambda z: 0.62 * width(z) * math.sqrt(2 * G * (z + added)), 0, H, epsabs=1e-14)[0]
    assert find(name)(**SPEED, **values) == pytest.approx(layers, rel=1e-9)


def test_a_broad_crest_passes_the_most_that_any_depth_passes():
    depths = numpy.linspace(1e-4, H - 1e-4, 200_001)
    most = 0.5 * (depths * numpy.sqrt(2 * G * (H - depths))).max()
    assert find("flow over a broad crest")(b=0.5, H=H) == pytest.approx(most, rel=1e-8)


def test_a_rim_whose_high_side_just_runs_dry_still_passes_the_whole_flow():
    """Flow added up round the rim: head over a rim tilted by e_dry, high side at the water level, must carry what the level rim carried."""
    level = 0.004
    e_dry = find("rim out of level that leaves one side dry")(H=level)
    round_the_rim = quad(lambda phi: (e_dry / 2 * (1 + math.cos(phi))) ** 1.5, 0, 2 * math.pi, epsabs=1e-16)[0]
    assert round_the_rim == pytest.approx(2 * math.pi * level**1.5, rel=1e-9)


def test_the_two_sides_of_a_rim_out_of_level_flow_like_two_lips():
    by_lips = [find("flow by weir coefficient")(C_w=1.8, b=1.0, H=0.004 + side * 0.001) for side in (1, -1)]
    assert find("flow ratio of a rim out of level")(H=0.004, e_rim=0.002) == pytest.approx(by_lips[0] / by_lips[1], rel=1e-12)


# --- films --------------------------------------------------------------------------------------------------------------------------

WATER = tables.water(293.15)


def _film(delta: float, beta: float) -> tuple[float, float]:
    """Flow for each metre and integral of speed squared, from the shear of each layer alone (solve_ivp over u, q and u squared)."""
    rate = G * math.sin(beta) / WATER["nu"]
    solved = solve_ivp(lambda y, s: [rate * (delta - y), s[0], s[0] ** 2], (0, delta), [0, 0, 0], rtol=1e-11, atol=1e-20, method="DOP853")
    return solved.y[1, -1], solved.y[2, -1]


@pytest.mark.parametrize("delta, beta", [(0.2e-3, math.pi / 2), (0.35e-3, 1.0), (0.5e-3, 1.3)])
def test_a_film_flows_as_its_layers_do(delta, beta):
    flow, _ = _film(delta, beta)
    assert find("flow in a film on a face")(delta=delta, beta=beta, nu=WATER["nu"]) == pytest.approx(flow, rel=1e-8)
    assert find("mean speed of a film")(delta=delta, beta=beta, nu=WATER["nu"]) == pytest.approx(flow / delta, rel=1e-8)


@pytest.mark.parametrize("degrees", [10, 30, 60, 90])
def test_the_thinnest_film_balances_its_rush_against_the_surface(degrees):
    values = {name: WATER[name] for name in ("mu", "sigma", "rho")} | {"theta_c": math.radians(degrees)}
    delta = find("thinnest film that wets")(**values)
    flow, rush = _film(delta, math.pi / 2)
    assert WATER["rho"] / 2 * rush == pytest.approx(WATER["sigma"] * (1 - math.cos(values["theta_c"])), rel=1e-8)
    assert find("least flow that keeps a face wet")(**values) == pytest.approx(flow, rel=1e-8)
