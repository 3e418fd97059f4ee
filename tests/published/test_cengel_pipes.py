"""Y. A. Cengel and J. M. Cimbala, Fluid Mechanics, chapter 8, as worked again in an open notebook."""

import pytest

from brimwork.design.follows.pipework import Stretch, head_needed, losses

G_RATIO = 9.81 / 9.80665  # the book takes 9.81 m/s2


def test_example_8_2_laminar_flow():
    """3 mm, 0.9 m/s, 9 m, 1000 kg/m3, 1.519e-3 Pa s: 4.46 m; the turbulent law at Re 1777 would say 6.37."""
    Q, nu = 0.9 * 3.141592653589793 / 4 * 0.003**2, 1.519e-6
    found = losses(Stretch(0.003, 9.0), Q, nu)
    assert found.Re == pytest.approx(1777, abs=1) and found.friction.regime == "laminar"
    assert found.h_f / G_RATIO == pytest.approx(4.46, rel=2e-3)


def test_example_8_3_turbulent_flow():
    """50 mm, 6 L/s, 60 m, 0.002 mm, 999 kg/m3, 1.138e-3 Pa s: f 0.0172, head 9.85 m (the book rounds f on the way, 0.5 %)."""
    found = losses(Stretch(0.05, 60.0, k_s=0.002e-3), 6e-3, 1.138e-3 / 999)
    assert found.friction.f == pytest.approx(0.0172, rel=5e-3)
    assert found.h_f / G_RATIO == pytest.approx(9.85, rel=5e-3)


def test_example_8_8_level_of_a_reservoir_with_all_its_losses():
    """6 L/s, 50 mm, 89 m, f 0.0315, entrance 0.5, two elbows of 0.3, gate valve 0.2, exit 1.06, 4 m above: 31.8 m (0.1 %)."""
    pipe = Stretch(0.05, 89.0, K=0.5 + 2 * 0.3 + 0.2 + 1.06, f=0.0315)
    lost = head_needed(6e-3, 0.0, (pipe,), 1.3e-6) / G_RATIO
    assert 4 + lost == pytest.approx(31.8, rel=1e-3)


@pytest.mark.parametrize("K, wrong", [(0.0, 30.69), (0.5 + 0.6 + 0.2, 31.30), (0.5 + 0.3 + 0.2 + 1.06, 31.67)])
def test_example_8_8_with_fittings_left_out_comes_out_as_it_must(K, wrong):
    """Without minor losses, without the exit, with one elbow of two: worked by hand from the same data."""
    assert 4 + head_needed(6e-3, 0.0, (Stretch(0.05, 89.0, K=K, f=0.0315),), 1.3e-6) / G_RATIO == pytest.approx(wrong, rel=1e-3)
