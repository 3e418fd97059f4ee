"""What must be true of friction factors, of heads lost in pipes, fittings and widenings, and of the Hazen-Williams rule."""

import math

import fluids
import mpmath
import numpy
import pytest
from fluids import fittings as fluids_fittings
from fluids import friction as fluids_friction
from hypothesis import given
from hypothesis import strategies as st
from scipy.special import wrightomega

from brimwork import tables
from brimwork.design.follows.pipework import Stretch, head_needed, losses
from brimwork.topics.change_of_bore import change_of_basis, head_lost_at_widening, pressure_after_widening, widening_coefficient
from brimwork.topics.friction import (
    blasius,
    colebrook,
    flow_for_a_head_loss,
    friction_factor,
    friction_factors,
    haaland,
    laminar_flow,
    laminar_friction_factor,
    reynolds_number,
    swamee_jain,
)
from brimwork.topics.hazen_williams import flow_by_hazen_williams, head_lost_by_hazen_williams
from brimwork.topics.pipes import (
    equivalent_length,
    fitting_head,
    friction_head,
    friction_head_by_flow,
    speed_in_a_pipe,
    sum_of_fittings,
    system_constant,
    total_dynamic_head,
)
from brimwork.units import InputError

US_GALLON_PER_MINUTE = 3.785411784e-3 / 60
turbulent = st.floats(4000, 1e8)
rough = st.one_of(st.just(0.0), st.floats(1e-7, 0.05))


def exactly(Re: float, relative_roughness: float) -> mpmath.mpf:
    """Root of Colebrook's law to 40 digits, by mpmath's own root finder."""
    with mpmath.workdps(45):
        a, b = mpmath.mpf(relative_roughness) / mpmath.mpf("3.7"), mpmath.mpf("2.51") / mpmath.mpf(Re)
        x = mpmath.findroot(lambda x: x + 2 * mpmath.log10(a + b * x), mpmath.mpf(7), tol=mpmath.mpf(10) ** -80)
        return 1 / x**2


def by_wright_omega(Re, relative_roughness):
    """Colebrook's law solved in closed form: another route to the same root, over arrays."""
    a, b, c = numpy.asarray(relative_roughness) / 3.7, 2.51 / numpy.asarray(Re), 2 / math.log(10)
    return (c * numpy.log(c * b * wrightomega(a / (b * c) - numpy.log(c * b)))) ** -2.0


# --- friction factor ----------------------------------------------------------------------------------------------------------------


@given(turbulent, rough)
def test_colebrooks_law_holds_to_machine_precision(Re, relative_roughness):
    for f in (colebrook(Re=Re, k_s=relative_roughness, d_pipe=1.0), friction_factor(Re, relative_roughness).f):
        assert abs(f / exactly(Re, relative_roughness) - 1) < 2e-15


def test_a_roughness_and_a_bore_count_only_by_their_ratio():
    assert colebrook(Re=3e4, k_s=1.5e-6, d_pipe=0.025) == pytest.approx(colebrook(Re=3e4, k_s=6e-5, d_pipe=1.0), rel=1e-14)


def test_an_array_of_friction_factors_is_exact_to_the_last_digits():
    draw = numpy.random.default_rng(7)
    Re, relative_roughness = 10 ** draw.uniform(3.31, 9, 1500), 10 ** draw.uniform(-7, -0.8, 1500)
    relative_roughness[::5] = 0
    found = friction_factors(Re, relative_roughness)
    worst = max(abs(mpmath.mpf(float(f)) / exactly(R, e) - 1) for f, R, e in zip(found, Re.tolist(), relative_roughness.tolist()))
    assert worst < 1.2e-15


def test_a_million_friction_factors_agree_with_another_route_to_the_root():
    draw = numpy.random.default_rng(8)
    Re, relative_roughness = 10 ** draw.uniform(3.61, 8, 10**6), 10 ** draw.uniform(-6, -1.3, 10**6)
    numpy.testing.assert_allclose(friction_factors(Re, relative_roughness), by_wright_omega(Re, relative_roughness), rtol=4e-15)


def test_an_array_makes_the_same_choice_as_a_single_number():
    Re = numpy.array([1e-3, 500.0, 1999.999, 2000.0, 2500.0, 3999.0, 4000.0, 1e5, 1e9])
    singly = [friction_factor(float(R), 1e-4).f for R in Re]
    assert friction_factors(Re, 1e-4) == pytest.approx(singly, rel=1e-15)


def test_arrays_broadcast_and_keep_their_shape():
    Re, relative_roughness = numpy.array([[1000.0], [5e4]]), numpy.array([0.0, 1e-4, 1e-2])
    found = friction_factors(Re, relative_roughness)
    assert found.shape == (2, 3)
    assert found[0] == pytest.approx([0.064] * 3, rel=1e-15)
    assert found[1, 2] == pytest.approx(friction_factor(5e4, 1e-2).f, rel=1e-15)
    assert friction_factors(5e4).shape == ()
    assert friction_factors(numpy.array([])).size == 0


def test_friction_laws_agree_with_fluids():
    for Re, e in ((134126.5, 4e-5), (1e5, 1e-4), (5e4, 0.0), (4e3, 0.03), (1e7, 1e-6)):
        letters = {"Re": Re, "k_s": e, "d_pipe": 1.0}
        assert friction_factor(Re, e).f == pytest.approx(fluids_friction.Colebrook(Re, e), rel=1e-12)
        assert haaland(**letters) == pytest.approx(fluids_friction.Haaland(Re, e), rel=1e-12)
        assert swamee_jain(**letters) == pytest.approx(fluids_friction.Swamee_Jain_1976(Re, e), rel=1e-5)  # 5.74 there is 6.97^0.9
    assert laminar_friction_factor(Re=1000.0) == pytest.approx(fluids_friction.friction_laminar(1000), rel=1e-15)


def test_explicit_laws_stay_as_near_to_colebrooks_as_their_authors_say():
    """Haaland: within 2 % up to a roughness of 0.05 of the bore; Swamee and Jain: within 3 % in their range (both from memory)."""
    Re, e = (column.ravel() for column in numpy.meshgrid(numpy.geomspace(5e3, 1e8, 60), numpy.geomspace(1e-6, 1e-2, 40)))
    exact = friction_factors(Re, e)
    assert numpy.abs(haaland.array(Re=Re, k_s=e, d_pipe=1.0) / exact - 1).max() < 0.02
    assert numpy.abs(swamee_jain.array(Re=Re, k_s=e, d_pipe=1.0) / exact - 1).max() < 0.03
    Re = numpy.geomspace(4e3, 1e5, 60)
    assert numpy.abs(blasius.array(Re=Re) / friction_factors(Re) - 1).max() < 0.03


@pytest.mark.parametrize("Re, regime", [(10, "laminar"), (1999.9, "laminar"), (2000, "transition"), (3999.9, "transition"), (4000, "turbulent")])
def test_the_regime_is_named_and_the_uncertain_one_explained(Re, regime):
    found = friction_factor(Re, 1e-4)
    assert found.regime == regime
    assert bool(found.notes) == (regime == "transition")


def test_between_laminar_and_turbulent_the_larger_friction_factor_is_given():
    for Re in (2000.0, 3000.0, 3999.0):
        assert friction_factor(Re).f > 64 / Re


def test_every_law_is_laminar_below_2000_and_its_own_above():
    assert {friction_factor(1500, 1e-4, law).f for law in ("colebrook", "swamee-jain", "haaland", "blasius")} == {64 / 1500}
    assert friction_factor(5e4, 1e-4, "haaland").f == haaland(Re=5e4, k_s=1e-4, d_pipe=1.0)
    assert any("smooth" in note for note in friction_factor(5e4, 1e-4, "blasius").notes)
    assert any("extrapolation" in note for note in friction_factor(5e5, 0, "blasius").notes)


@pytest.mark.parametrize("Re, e, law, says", [(0, 0, "colebrook", "above zero"), (math.nan, 0, "colebrook", "above zero"), (math.inf, 0, "colebrook", "above zero"),
                                              (1e4, -1e-4, "colebrook", "0 (smooth)"), (500, -1e-4, "colebrook", "0 (smooth)"), (1e4, 0.6, "colebrook", "0 (smooth)"),
                                              (1e4, 0, "moody", "colebrook, swamee-jain")])  # fmt: skip
def test_impossible_friction_input_is_refused_with_what_to_type(Re, e, law, says):
    with pytest.raises(InputError, match=says.replace("(", r"\(").replace(")", r"\)")):
        friction_factor(Re, e, law)
    if law == "colebrook":
        with pytest.raises(InputError, match=says.replace("(", r"\(").replace(")", r"\)")):
            friction_factors(numpy.array([5e4, Re]), numpy.array([0.0, e]))


# --- heads --------------------------------------------------------------------------------------------------------------------------


def test_the_head_of_a_one_inch_pipe_agrees_with_fluids():
    """10 US gal/min, 25.4 mm, 30 m, 1.5 um, water at 20 degC: 2.18244 m by `fluids.one_phase_dP`."""
    Q, rho, mu = 10 * US_GALLON_PER_MINUTE, 998.2, 1.0016e-3
    found = losses(Stretch(d_pipe=0.0254, L_pipe=30.0, k_s=1.5e-6), Q, mu / rho)
    theirs = fluids.one_phase_dP(m=rho * Q, rho=rho, mu=mu, D=0.0254, roughness=1.5e-6, L=30.0) / rho / 9.80665
    assert found.h_f == pytest.approx(theirs, rel=1e-9)
    assert theirs == pytest.approx(2.18244, rel=1e-5)


def test_laminar_flow_is_the_sum_of_its_rings():
    """The speed falls with the square of the radius; adding rings by SciPy gives the flow of the formula."""
    from scipy.integrate import quad

    h_f, d, L, nu, g = 0.1, 0.003, 2.0, 1e-6, 9.80665
    rings = quad(lambda r: 2 * math.pi * r * g * h_f / (4 * nu * L) * (d**2 / 4 - r**2), 0, d / 2)[0]
    assert laminar_flow(h_f=h_f, d_pipe=d, L_pipe=L, nu=nu) == pytest.approx(rings, rel=1e-10)


@given(st.floats(1e-4, 2e-3), st.floats(0.015, 0.05), st.floats(1, 20), st.floats(0, 5e-5))
def test_the_flow_for_a_head_gives_that_head_back(Q, d_pipe, L_pipe, k_s):
    v = speed_in_a_pipe(Q=Q, d_pipe=d_pipe)
    f = colebrook(Re=reynolds_number(v=v, d_pipe=d_pipe, nu=1e-6), k_s=k_s, d_pipe=d_pipe)
    h_f = friction_head(f=f, L_pipe=L_pipe, d_pipe=d_pipe, v=v)
    assert h_f == pytest.approx(friction_head_by_flow(f=f, L_pipe=L_pipe, d_pipe=d_pipe, Q=Q), rel=1e-12)
    assert flow_for_a_head_loss(h_f=h_f, L_pipe=L_pipe, d_pipe=d_pipe, k_s=k_s, nu=1e-6) == pytest.approx(Q, rel=1e-12)


def test_heads_of_one_stretch_add_up_to_the_total_dynamic_head():
    stretch, Q, nu = Stretch(0.025, 4.0, K=4.0, k_s=1.5e-6), 30e-3 / 60, 1.0034e-6
    found = losses(stretch, Q, nu)
    total = total_dynamic_head(z_s=0.9, Q=Q, d_pipe=0.025, f=found.friction.f, L_pipe=4.0, K=4.0)
    assert head_needed(Q, 0.9, (stretch,), nu) == pytest.approx(total, rel=1e-14)
    assert 0.9 + system_constant(d_pipe=0.025, f=found.friction.f, L_pipe=4.0, K=4.0) * Q**2 == pytest.approx(total, rel=1e-14)


def test_stretches_one_after_the_other_add_their_losses():
    wide, narrow = Stretch(0.032, 3.0, K=2.0, k_s=1.5e-6), Stretch(0.020, 0.5, K=1.5, f=0.08)
    parts = [losses(stretch, 5e-4, 1e-6) for stretch in (wide, narrow)]
    assert head_needed(5e-4, 0.7, (wide, narrow), 1e-6) == pytest.approx(0.7 + sum(part.h_f + part.h_m for part in parts), rel=1e-14)
    assert parts[1].friction.regime == "given"


def test_water_that_stands_needs_its_lift_only():
    assert head_needed(0.0, 0.7, (Stretch(0.025, 4.0, K=4.0),), 1e-6) == 0.7


def test_losses_refuse_a_pipe_without_bore_and_a_negative_flow():
    with pytest.raises(InputError, match="d_pipe"):
        losses(Stretch(0.0, 4.0), 5e-4, 1e-6)
    with pytest.raises(InputError, match="flow cannot be below zero"):
        losses(Stretch(0.025, 4.0), -5e-4, 1e-6)


# --- fittings and changes of bore ---------------------------------------------------------------------------------------------------


def test_fittings_add_up_by_the_table():
    assert sum_of_fittings({"square entrance": 1, "short elbow": 2, "exit": 1}) == pytest.approx(0.5 + 2 * 0.9 + 1.0)
    with pytest.raises(InputError, match="Nearest: .*elbow"):
        sum_of_fittings({"elbo": 1})


def test_fitting_coefficients_of_the_table_agree_with_fluids_where_it_has_the_same_fitting():
    assert tables.fitting("square entrance").value == fluids_fittings.entrance_sharp(method="Crane")
    assert tables.fitting("exit").value == fluids_fittings.exit_normal()


def test_every_row_of_the_pipe_tables_says_its_basis():
    for table in (tables.FITTINGS, tables.ROUGHNESS, tables.HAZEN_WILLIAMS_COEFFICIENTS):
        for name, entry in table.items():
            assert entry.value > 0 and len(entry.basis) > 20, name


def test_the_two_manuals_agree_on_roughness_and_disagree_on_pvc():
    """0.005e-3 ft against 0.00006 in for plastic, 0.5e-3 ft against 0.006 in for galvanised iron; C 130 against 150 is 30 % in loss."""
    assert tables.roughness("plastic").value == pytest.approx(0.00006 * 0.0254, rel=1e-12)
    assert tables.roughness("galvanised iron").value == pytest.approx(0.006 * 0.0254, rel=1e-12)
    rows = tables.HAZEN_WILLIAMS_COEFFICIENTS
    assert (rows["plastic, high"].value / rows["PVC"].value) ** 1.852 == pytest.approx(1.30, abs=0.005)


@given(st.floats(0.01, 0.05), st.floats(1.01, 4))
def test_a_sudden_widening_agrees_with_fluids_on_either_speed(d_1, wider):
    d_2 = wider * d_1
    K_1 = widening_coefficient(d_1=d_1, d_2=d_2)
    assert K_1 == pytest.approx(fluids_fittings.diffuser_sharp(d_1, d_2), rel=1e-9)
    assert change_of_basis(K_1=K_1, d_1=d_1, d_2=d_2) == pytest.approx(fluids_fittings.change_K_basis(K_1, d_1, d_2), rel=1e-12)


@given(st.floats(0.2, 3), st.floats(0.05, 0.95))
def test_behind_a_widening_pressure_and_loss_keep_the_energy(v_1, slower):
    """Bernoulli's balance with the loss in it must close on the pressure that momentum gives."""
    v_2, p_1, rho, g = slower * v_1, 2e4, 998.0, 9.80665
    p_2, h_m = pressure_after_widening(p_1=p_1, rho=rho, v_1=v_1, v_2=v_2), head_lost_at_widening(v_1=v_1, v_2=v_2)
    assert p_1 / (rho * g) + v_1**2 / (2 * g) == pytest.approx(p_2 / (rho * g) + v_2**2 / (2 * g) + h_m, rel=1e-12)
    assert p_2 > p_1


def test_a_pipe_of_the_equivalent_length_loses_what_the_fittings_lose():
    L_eq = equivalent_length(K=4.5, d_pipe=0.025, f=0.024)
    assert friction_head(f=0.024, L_pipe=L_eq, d_pipe=0.025, v=1.1) == pytest.approx(fitting_head(K=4.5, v=1.1), rel=1e-14)


# --- Hazen-Williams -----------------------------------------------------------------------------------------------------------------


def test_hazen_williams_agrees_with_its_other_written_forms_within_their_rounding():
    """SI form 10.67 L Q^1.852/(C^1.852 d^4.87) (from memory): 0.34 % below the US form at 25 mm; US trade form 0.2083 (from memory): 0.7 % above."""
    Q, d, L, C = 10 * US_GALLON_PER_MINUTE, 0.0254, 30.0, 150.0
    ours = head_lost_by_hazen_williams(Q=Q, d_pipe=d, L_pipe=L, C_HW=C)
    assert 10.67 * L * Q**1.852 / (C**1.852 * d**4.87) == pytest.approx(ours, rel=4e-3)
    assert 0.2083 * (100 / C) ** 1.852 * 10**1.852 / 1.0**4.8655 * (L / 0.3048 / 100) * 0.3048 == pytest.approx(ours, rel=8e-3)


def test_hazen_williams_turns_round():
    h_f = head_lost_by_hazen_williams(Q=5e-4, d_pipe=0.025, L_pipe=6.0, C_HW=140)
    assert flow_by_hazen_williams(h_f=h_f, d_pipe=0.025, L_pipe=6.0, C_HW=140) == pytest.approx(5e-4, rel=1e-13)


def test_hazen_williams_says_that_a_hose_is_below_its_tested_bores():
    assert any("extrapolation" in note for note in head_lost_by_hazen_williams.work(Q=5e-4, d_pipe=0.025, L_pipe=6.0, C_HW=140).notes)
