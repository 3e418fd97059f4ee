"""Cost: quantities with waste rounded up to what is sold, contingency, margin and mark-up, payback and the cost of a whole life."""

from __future__ import annotations

import math

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Slip
from brimwork.steps import Solve, Step, Take
from brimwork.units import InputError

_BY_DEFINITION = "the definition of a margin; no example of others was looked up"

# --- quantities ---------------------------------------------------------------------------------------------------------------------

bags_needed = Formula(
    name="bags before rounding up",
    result="N_bag",
    close="0.05",
    equals="m_net*(1 + s_waste)/m_bag",
    steps=(
        Take("what has to be bought is more, by its waste", "m_gross = m_net + s_waste*m_net"),
        Take("count it in bags", "N_bag = m_gross/m_bag"),
        Step("put it in"),
    ),
    unpublished="a share added and a division",
    slips=(
        Slip("m_net/m_bag", "You left nothing for waste. Add its share before you divide."),
        Slip("m_net*(1 - s_waste)/m_bag", "You took the waste off. It has to be bought too: add it."),
        Slip("m_net*(1 + s_waste)*m_bag/1000", "You multiplied by the bag. Divide: heavier bags are fewer."),
        Slip("m_net*(1 + s_waste)", "That is the mass in kilograms. Divide by what a bag holds."),
    ),
    remark="Then round up to whole bags.",
)

# --- labour and overhead ------------------------------------------------------------------------------------------------------------

labour_cost = Formula(
    name="cost of labour",
    result="C_lab",
    equals="N_team*t_site*c_lab",
    defined="every person is paid for every hour on site",
    by_hand=(ByHand("N_team=3, t_site=20 h, c_lab=25 cur/h", "3*20*25", "1500 cur"),),
    unpublished="people, hours and a rate multiplied",
    slips=(
        Slip("t_site*c_lab", "You paid one person. Multiply by the people."),
        Slip("t_site*c_lab/N_team", "You shared one pay out among them. Each is paid for every hour: multiply."),
        Slip("(N_team + 1)*t_site*c_lab", "You counted one person too many. Multiply by the number who work there."),
    ),
    remark="Travel, and the hours spent on survey and drawings, come on top.",
)

cost_with_overhead = Formula(
    name="cost with overhead",
    result="C_full",
    equals="C_dir*(1 + s_over)",
    defined="the direct cost, and its share of what the firm pays whether it works or not",
    by_hand=(ByHand("C_dir=1600 cur, s_over=12 %", "1600*(1 + 0.12)", "1792 cur"),),
    unpublished="a share added",
    slips=(
        Slip("C_dir", "You left out the overhead. Van, tools, insurance and office are paid from it."),
        Slip("C_dir*s_over", "That is the overhead alone. Add it to the cost."),
        Slip("C_dir*(1 - s_over)", "You took it off. Overhead adds to the cost."),
        Slip("C_dir/(1 - s_over)", "You took it as a share of the total. Here it is a share of the direct cost: multiply by one and it."),
    ),
    remark="Overhead pays for the firm; the margin comes after it and is profit.",
)

# --- price --------------------------------------------------------------------------------------------------------------------------

estimate_with_contingency = Formula(
    name="cost with contingency",
    result="C_est",
    equals="C_dir*(1 + s_cont)",
    defined="the direct cost, and a share of it for what is not known yet",
    by_hand=(ByHand("C_dir=1500 cur, s_cont=15 %", "1500*(1 + 0.15)", "1725 cur"),),
    unpublished="a share added",
    slips=(
        Slip("C_dir", "You left out the contingency. Ground always holds something unknown."),
        Slip("C_dir*s_cont", "That is the contingency alone. Add it to the cost."),
        Slip(
            "C_dir/(1 - s_cont)",
            "You took it as a share of the total. A contingency is a share of the cost it is added to. Multiply the cost by one plus the share.",
        ),
        Slip("C_dir*(1 - s_cont)", "You took it off. What is not known yet costs more, not less."),
    ),
    remark="Common practice: 10 to 15 % for work in the ground.",
)

price_from_margin = Formula(
    name="price from margin",
    result="C_price",
    equals="C_est/(1 - s_margin)",
    steps=(
        Take("the margin is the profit as a share of the price", "s_margin = (C_price - C_est)/C_price"),
        Solve("solve for the price", of="s_margin"),
    ),
    where=("s_margin < 1",),
    unpublished=_BY_DEFINITION,
    slips=(
        Slip("C_est*(1 + s_margin)", "That is a mark-up, a share of the cost. A margin is a share of the price, so divide by one less the margin."),
        Slip("C_est*(1 + s_margin)**2", "You marked it up twice. Divide once, by one less the margin."),
        Slip("C_est*s_margin", "That is a profit on the cost. The price is asked for. Divide the cost by one less the margin."),
        Slip("C_est*(1 - s_margin)", "You took the profit off the cost. The price must be higher than the cost."),
        Slip("C_est/s_margin", "You divided by the margin. Divide by what remains for the cost: one less the margin."),
    ),
    remark="Before tax, which comes last.",
)

mark_up_from_margin = Formula(
    name="mark-up from margin",
    result="s_mark",
    equals="s_margin/(1 - s_margin)",
    steps=(
        price_from_margin,
        Take("the mark-up is the profit as a share of the cost", "s_mark = (C_price - C_est)/C_est"),
        Step("the cost cancels"),
    ),
    where=("s_margin < 1",),
    unpublished=_BY_DEFINITION,
    slips=(
        Slip("s_margin", "They are not the same. The same profit is a larger share of the smaller cost."),
        Slip("s_margin/(1 + s_margin)", "That turns a mark-up into a margin. The other way round: one less the margin."),
    ),
)

price_with_tax = Formula(
    name="price with tax",
    result="C_paid",
    equals="C_price*(1 + s_tax)",
    defined="tax is a share of the price, margin in it, and comes last",
    by_hand=(ByHand("C_price=2400 cur, s_tax=20 %", "2400*(1 + 0.20)", "2880 cur"),),
    unpublished="a share added",
    slips=(
        Slip("C_price", "You left out the tax. It is part of what the client pays."),
        Slip("C_price*s_tax", "That is the tax alone. Add it to the price."),
        Slip("C_price/(1 - s_tax)", "You took it as a share of what is paid. Tax is a share of the price before it. Multiply the price by one plus the tax."),
        Slip("C_price/(1 + s_tax)", "You took the tax out. The price was before tax: multiply."),
    ),
    remark="Rates differ from place to place and from material to labour: the tax office says which counts.",
)

# --- years --------------------------------------------------------------------------------------------------------------------------

whole_life_cost = Formula(
    name="cost of a whole life",
    result="C_life",
    equals="C_price + N_years*(C_run + C_serv)",
    steps=(
        Take("every year costs running and service", "C_year = C_run + C_serv"),
        Take("over the years, and with what was paid first", "C_life = C_price + N_years*C_year"),
        Step("put the year in"),
    ),
    unpublished="sums without interest, at today's prices",
    slips=(
        Slip("C_price + C_run + C_serv", "That is one year. Multiply what comes back every year by the years."),
        Slip("C_price", "You left out what it costs to run and to service."),
        Slip("C_price + N_years*C_run", "You left out the yearly service."),
        Slip("N_years*(C_price + C_run + C_serv)", "The price is paid once, not every year. Add it once, after the yearly costs are multiplied by the years."),
    ),
    remark="At today's prices and without interest; a pump that has to be replaced in that time is a cost of its own.",
)

payback_time = Formula(
    name="years to pay back a dearer pump",
    result="N_pay",
    equals="C_extra/C_save",
    steps=(
        Take("after so many years as much is saved as the dearer one cost more", "C_extra = N_pay*C_save"),
        Solve("solve for the years", of="C_extra"),
    ),
    unpublished="a division, at today's prices and without interest",
    slips=(
        Slip("C_save/C_extra", "Upside down: a larger saving must pay back sooner."),
        Slip(
            "(C_price + C_extra)/C_save",
            "You paid back the whole price. Only what it costs more than the cheaper one has to come back. Divide the extra cost alone by what is saved in a year.",
            also_given=("C_price",),
        ),
    ),
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------


def whole_units(amount: float, unit: float) -> int:
    """Whole units of size `unit` that hold `amount`, both in the same measure: always rounded up. Raises InputError for a unit that is not above zero."""
    if not (0 < unit < math.inf and 0 <= amount < math.inf):
        raise InputError(f"{amount:g} in units of {unit:g} cannot be counted: give an amount, and a unit above zero, such as 412.5 in bags of 20")
    return math.ceil(round(amount / unit, 9))


def to_buy(net: float, s_waste: float, unit: float) -> tuple[float, int]:
    """Gross amount (net and its waste) and whole units of size `unit` to buy, net and unit in the same measure."""
    return net * (1 + s_waste), whole_units(bags_needed(m_net=net, s_waste=s_waste, m_bag=unit), 1.0)
