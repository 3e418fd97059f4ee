"""What must be true of quantities to buy, contingency, margin, payback and whole-life cost."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from brimwork.topics import cost
from brimwork.units import InputError

money = st.floats(1, 1e5)


@given(money, st.floats(0.01, 0.95))
def test_the_margin_of_a_price_is_the_margin_asked_for(direct, margin):
    price = cost.price_from_margin(C_est=direct, s_margin=margin)
    assert (price - direct) / price == pytest.approx(margin, rel=1e-9)
    mark_up = cost.mark_up_from_margin(s_margin=margin)
    assert direct * (1 + mark_up) == pytest.approx(price, rel=1e-9) and mark_up > margin


def test_a_margin_of_a_fifth_is_a_mark_up_of_a_quarter_and_one_half_of_all_of_it():
    assert cost.mark_up_from_margin(s_margin=0.20) == pytest.approx(0.25, rel=1e-12)
    assert cost.mark_up_from_margin(s_margin=0.50) == pytest.approx(1.0, rel=1e-12)


@pytest.mark.parametrize("margin", [1.0, 1.2])
def test_a_margin_of_the_whole_price_is_refused(margin):
    with pytest.raises(InputError):
        cost.price_from_margin(C_est=100.0, s_margin=margin)


@given(st.integers(0, 1000), st.floats(0.01, 100))
def test_whole_units_hold_the_amount_and_one_less_does_not(count, unit):
    assert cost.whole_units(count * unit, unit) == count
    more = cost.whole_units(count * unit + 0.01 * unit, unit)
    assert more == count + 1


@pytest.mark.parametrize("amount, unit", [(10, 0), (10, -1), (-1, 5), (math.nan, 5), (math.inf, 5)])
def test_units_that_cannot_be_counted_are_refused(amount, unit):
    with pytest.raises(InputError, match="bags of 20"):
        cost.whole_units(amount, unit)


def test_bags_are_bought_whole():
    """By hand: 375 kg and a tenth are 412.5 kg, 20.6 bags of 20 kg: 21."""
    gross, bags = cost.to_buy(375, 0.10, 20)
    assert gross == pytest.approx(412.5) and bags == 21
    assert cost.bags_needed(m_net=375, s_waste=0.10, m_bag=20) == pytest.approx(20.625)
    assert cost.to_buy(400, 0.0, 20)[1] == 20


@given(money, st.floats(0.0, 500.0), st.floats(0.0, 500.0), st.integers(1, 30))
def test_a_life_costs_its_price_and_every_year_the_same(price, run, service, years):
    lives = [cost.whole_life_cost(C_price=price, N_years=n, C_run=run, C_serv=service) for n in (0, years, 2 * years)]
    assert lives[0] == price and lives[2] - lives[1] == pytest.approx(lives[1] - lives[0], abs=1e-6)


@given(st.floats(10, 500), st.floats(1, 100), st.floats(101, 200))
def test_when_the_saving_has_paid_back_both_pumps_have_cost_the_same(extra, cheap_run, dear_run):
    years = cost.payback_time(C_extra=extra, C_save=dear_run - cheap_run)
    dearer = cost.whole_life_cost(C_price=100 + extra, N_years=years, C_run=cheap_run, C_serv=0.0)
    assert dearer == pytest.approx(cost.whole_life_cost(C_price=100, N_years=years, C_run=dear_run, C_serv=0.0), rel=1e-9)


def test_a_contingency_is_a_share_of_what_it_is_added_to():
    assert cost.estimate_with_contingency(C_dir=1000, s_cont=0.12) == pytest.approx(1120)
