"""What must be true of water's own properties, bowls and cones that drain, narrowings, edges and gaps, and lifts in the US form."""

import math

import fluids
import iapws
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from brimwork import tables
from brimwork.topics import find
from brimwork.topics.handling import lift_limit
from brimwork.units import InputError, read

G = 9.80665


# --- water --------------------------------------------------------------------------------------------------------------------------


@given(st.floats(0.5, 40))
def test_the_properties_by_temperature_are_those_of_the_full_formulation(celsius):
    """IAPWS-IF97 and its releases through the iapws package, which the fits were not made from but for viscosity and surface tension."""
    kelvin = celsius + 273.15
    theirs = iapws.IAPWS97(T=kelvin, P=0.101325)
    assert find("density of water by temperature")(T_w=kelvin) == pytest.approx(theirs.rho, rel=2e-5)
    assert find("viscosity of water by temperature")(T_w=kelvin) == pytest.approx(theirs.mu, rel=1e-3)
    assert find("surface tension of water by temperature")(T_w=kelvin) == pytest.approx(iapws._iapws._Tension(kelvin), rel=1e-9)
    assert find("pressure at which water boils")(T_w=kelvin) == pytest.approx(iapws.iapws97._PSat_T(kelvin) * 1e6, rel=1e-3)


@pytest.mark.parametrize("celsius", [1, 7, 15, 20, 31])
def test_formulas_and_table_of_water_agree(celsius):
    kelvin, row = celsius + 273.15, tables.water(celsius + 273.15)
    rho, mu = find("density of water by temperature")(T_w=kelvin), find("viscosity of water by temperature")(T_w=kelvin)
    assert rho == pytest.approx(row["rho"], rel=2e-5) and mu == pytest.approx(row["mu"], rel=1e-3)
    assert find("kinematic viscosity from viscosity and density")(mu=mu, rho=rho) == pytest.approx(row["nu"], rel=1e-3)
    assert find("surface tension of water by temperature")(T_w=kelvin) == pytest.approx(row["sigma"], rel=1e-3)


# --- bowls and cones ----------------------------------------------------------------------------------------------------------------


def drained(surface, H_1, H_2, C_d, A_o):
    """Time from one head to another by an independent solver, with the surface as a function of the head."""

    def rate(_, H):
        return -C_d * A_o * math.sqrt(2 * G * H[0]) / surface(H[0])

    def there(_, H):
        return H[0] - H_2

    there.terminal = True
    return solve_ivp(rate, (0, 1e7), [H_1], events=there, rtol=1e-9, atol=1e-12).t_events[0][0]


@pytest.mark.parametrize("H_1, H_2", [(0.29, 0.05), (0.2, 0.01)])
def test_bowl_and_cone_drain_as_a_solver_says(H_1, H_2):
    hole = {"C_d": 0.61, "A_o": 5e-4}
    bowl = drained(lambda H: math.pi * (2 * 0.3 * H - H * H), H_1, H_2, **hole)
    assert find("time to drain a round bowl")(R_s=0.3, H_1=H_1, H_2=H_2, **hole) == pytest.approx(bowl, rel=1e-6)
    cone = drained(lambda H: math.pi * (0.35 * H / 0.3) ** 2, H_1, H_2, **hole)
    assert find("time to drain a cone")(d_rim=0.7, D=0.3, H_1=H_1, H_2=H_2, **hole) == pytest.approx(cone, rel=1e-6)


def test_a_full_cone_takes_a_fifth_of_an_upright_tank():
    hole = {"H_1": 0.4, "H_2": 0.0, "C_d": 0.6, "A_o": 4e-4}
    tank = find("time to drain through an opening")(A_tank=math.pi / 4 * 0.6**2, **hole)
    assert find("time to drain a cone")(d_rim=0.6, D=0.4, **hole) == pytest.approx(tank / 5, rel=1e-12)


def test_a_head_over_the_middle_of_the_ball_is_refused():
    with pytest.raises(InputError, match="H_1 < 1.0001.R_s"):
        find("time to drain a round bowl")(R_s=0.3, H_1=0.4, H_2=0.1, C_d=0.6, A_o=4e-4)


def test_a_bucket_gives_the_coefficient_back_that_made_the_flow():
    flow = find("flow through an opening")(C_d=0.63, A_o=3e-4, H_o=0.5)
    assert find("discharge coefficient by a bucket")(V=flow * 20, t_fill=20.0, A_o=3e-4, H_o=0.5) == pytest.approx(0.63, rel=1e-12)


# --- edges and gaps -----------------------------------------------------------------------------------------------------------------


@given(st.floats(0.2e-3, 3e-3), st.floats(0, 1.5))
def test_a_gap_lifts_half_as_high_as_a_tube_of_its_half_width(half, angle):
    water = {"sigma": 0.0727, "rho": 998.0, "theta_c": angle}
    tube, gap = find("capillary rise in a tube")(r_t=half, **water), find("capillary rise in a gap")(w_gap=2 * half, **water)
    assert tube == pytest.approx(2 * gap, rel=1e-12)


def test_an_edge_that_turns_down_lets_the_water_lean_out_and_never_holds_more_than_two_capillary_lengths():
    edge = find("water that an edge holds back")
    flat, square = (edge(l_c=2.73e-3, theta_c=math.radians(60), a_edge=math.radians(turn)) for turn in (0, 90))
    assert flat == pytest.approx(2.73e-3, rel=1e-12) and square == pytest.approx(2 * 2.73e-3 * math.sin(math.radians(75)), rel=1e-12)
    assert edge(l_c=2.73e-3, theta_c=math.radians(90), a_edge=math.radians(90)) == pytest.approx(2 * 2.73e-3)
    with pytest.raises(InputError, match="theta_c . a_edge"):
        edge(l_c=2.73e-3, theta_c=math.radians(100), a_edge=math.radians(90))


# --- narrowings and lips ------------------------------------------------------------------------------------------------------------

bores = st.tuples(st.floats(0.02, 0.05), st.floats(0.2, 0.95)).map(lambda pair: (pair[0], pair[0] * pair[1]))


@given(bores, st.floats(5, 44.9))
def test_narrowings_lose_what_fluids_says(bore, degrees):
    wide, narrow = bore
    step = find("loss coefficient of a sudden narrowing")(d_1=wide, d_2=narrow)
    assert step == pytest.approx(fluids.fittings.contraction_sharp(wide, narrow, method="Crane"), rel=1e-9)
    cone = find("loss coefficient of a reducer")(d_1=wide, d_2=narrow, a_red=math.radians(degrees))
    assert cone == pytest.approx(fluids.fittings.contraction_conical(Di1=wide, Di2=narrow, angle=degrees, method="Crane"), rel=1e-9)
    assert cone <= step


def test_a_narrowing_that_widens_and_a_cone_too_steep_are_refused():
    with pytest.raises(InputError, match="d_2 < d_1"):
        find("loss coefficient of a sudden narrowing")(d_1=0.02, d_2=0.03)
    with pytest.raises(InputError, match="a_red"):
        find("loss coefficient of a reducer")(d_1=0.03, d_2=0.02, a_red=math.radians(60))


@given(st.floats(0.2, 0.6), st.floats(0.005, 0.06), st.sampled_from([1.0, 2.0]))
def test_the_head_at_a_contracted_lip_is_the_one_that_scipy_finds(b, H, n):
    flow = 2 / 3 * 0.62 * (b - n * H / 10) * math.sqrt(2 * G) * H**1.5
    theirs = brentq(lambda h: 2 / 3 * 0.62 * (b - n * h / 10) * math.sqrt(2 * G) * h**1.5 - flow, 0, 2 * b / n, xtol=1e-15)
    assert find("head at a lip with end contractions")(Q=flow, b=b, C_d=0.62, n_c=n) == pytest.approx(theirs, rel=1e-9)


# --- lifting in inches and pounds ---------------------------------------------------------------------------------------------------

POUND = read("1 lb", "kg")


def test_the_best_lift_in_the_us_form_may_weigh_51_lb():
    assert lift_limit(0.254, 0.762, 0.254, us_form=True) == pytest.approx(51 * POUND, rel=1e-12)
    assert lift_limit(0.1, 0.762, 0.0, us_form=True) == pytest.approx(51 * POUND, rel=1e-12), "nearer or shorter than the best lift counts as the best"


@given(st.floats(0.0, 0.63), st.floats(0, 1.75), st.floats(0, 1.75), st.floats(0.7, 1))
def test_no_limit_exceeds_the_load_constant_and_the_two_forms_stay_within_a_few_per_cent(x, z, d, factor):
    metric, inches = (lift_limit(x, z, d, k_freq=factor, us_form=form) for form in (False, True))
    assert 0 < metric <= 23 * (1 + 1e-9) and 0 < inches <= 51 * POUND * (1 + 1e-9)
    assert inches / metric == pytest.approx(1.0, abs=0.05)


@pytest.mark.parametrize("form", ["", ", US form"])
@pytest.mark.parametrize("changed", [{"x_hand": 0.1}, {"d_lift": 0.05}, {"k_grip": 1.2}])
def test_the_formula_itself_refuses_what_would_allow_more_than_the_best_lift(form, changed):
    lift = {"x_hand": 0.3, "z_hand": 0.5, "d_lift": 0.5, "k_twist": 1.0, "k_freq": 1.0, "k_grip": 1.0} | changed
    with pytest.raises(InputError, match="it is for|the most that"):
        find(f"recommended limit of a lift from below the knuckles{form}")(**lift)
