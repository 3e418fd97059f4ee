"""The cost of a design held against its budget."""

from __future__ import annotations

from brimwork.design.done.cost import cost_sheet
from brimwork.design.follows.chain import Chain
from brimwork.design.typed.criteria import OVER_BUDGET
from brimwork.design.typed.known import Unknown


def cost_share(chain: Chain) -> float:
    """Cost over budget: the cost that the design gives, or what the cost sheet knows of it already where that is more; else the total of the sheet. Raises Unknown; without
    a budget the cost is not worked out."""
    if chain.really.design.given("site.budget") is None:
        raise Unknown("site.budget")
    budget = chain.design["site.budget"]
    return (max(chain.cost_estimate, cost_sheet(chain).paid) if _cost_given(chain) else _paid(chain, _most(chain, budget))) / budget


def cost_told(chain: Chain) -> str:
    """Where the cost that is held against the budget comes from."""
    if _cost_given(chain) and cost_sheet(chain).paid > chain.cost_estimate:
        return "the cost sheet, whose known lines come to more than the cost given"
    return "the cost given, with contingency" if _cost_given(chain) else "the total of the cost sheet, tax in it where its rate is given"


def _cost_given(chain: Chain) -> bool:
    return "site.base_estimate" in chain.design.values


def _most(chain: Chain, budget: float) -> float:
    """The cost above which the check fails, whatever else is still missing."""
    own = chain.design.values.get("limits.C56")
    return budget * (own.value[1][1] if own else OVER_BUDGET)


def _paid(chain: Chain, enough: float) -> float:
    """The total of the cost sheet. Raises Unknown with what is missing, unless what is known is already above `enough`."""
    sheet = cost_sheet(chain)
    if not sheet.whole and sheet.paid <= enough:
        raise Unknown("site.base_estimate", *sheet.missing)
    return sheet.paid
