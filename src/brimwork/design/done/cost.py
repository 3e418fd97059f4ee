"""The cost sheet: what the shopping list costs, labour, overhead, contingency, margin, and tax last; what a year costs, and a whole life.

A price that nobody has given is not known, never nothing: the sums that lack one say "at least".
Every amount is rounded once, to a hundredth with halves up, where it is worked out; sums add up the rounded ones, so that what is printed adds up.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from brimwork import topics
from brimwork.design.done.amounts import ListLine
from brimwork.design.done.programme import team_time
from brimwork.design.done.quantities import quantities
from brimwork.design.follows.chain import Chain
from brimwork.design.follows.kept import kept
from brimwork.design.typed.asking import Refused, tried, without_keys
from brimwork.design.typed.prices import PER, SOLD_LOOSE
from brimwork.design.typed.telling import percent, short

YEAR = 365 * 86400.0  # s
HUNDREDTH = Decimal("0.01")
WHOLE = 1e17  # a float so large has no hundredths
_HOUR_HUNDREDTH = 36.0  # s: hours are counted to a hundredth, as they are printed


def rounded(amount: float) -> float:
    """An amount of money to a hundredth, halves up: 49.275 is 49.28, however a float holds it."""
    if abs(amount) >= WHOLE:
        return amount
    return float(Decimal(f"{amount:.7f}").quantize(HUNDREDTH, ROUND_HALF_UP))


@dataclass(frozen=True)
class Priced:
    """A line of the list with the price of one (per m for what is cut off a roll) and its cost; None where no price is known."""

    line: ListLine
    each: float | None
    cost: float | None
    why: str = ""  # that there is a price and it is not for what is bought
    waits: str = ""  # the key of the design that the cost waits for


@dataclass(frozen=True)
class Sum:
    """A line of the sheet that is worked out: its value, or None with what is missing said in `how`."""

    title: str
    value: float | None
    how: str = ""
    needs: tuple[str, ...] = ()  # keys of the design that it waits for


def cost_sheet(chain: Chain) -> CostSheet:
    """The cost sheet of a design, worked once."""
    return chain.store.once(chain.beside, "cost sheet", lambda: CostSheet(chain))


class CostSheet:
    """The cost sheet of one design. `missing` are the keys of prices that are not known; `open` the items whose quantity is not."""

    def __init__(self, chain: Chain):
        self.chain, self.design, self.store = chain, chain.design, chain.store

    # --- materials and services

    @kept
    def priced(self) -> tuple[Priced, ...]:
        """Every line that is bought."""
        return tuple(self._priced(line) for line in self._lines if line.key and line.count is not None)

    @kept
    def _lines(self) -> list[ListLine]:
        return quantities(self.chain)

    def _priced(self, line: ListLine) -> Priced:
        key, given = f"prices.{line.key}", self.design.given(f"prices.{line.key}")
        assert line.count is not None
        if line.waits or line.each is not None:
            return Priced(line, line.each, rounded(line.each * line.count)) if line.each is not None else Priced(line, None, None, waits=line.waits)
        if not given:
            return Priced(line, None, None, waits=key)
        if line.key in SOLD_LOOSE:
            bought, per = self.design[f"buying.{line.key}_sold"], self.design.given(key + PER)
            if not per or per.value != bought:
                why = f"the price is for a {per.value}, and it is bought by the {bought}" if per else f"the price is not said to be for one {bought}"
                return Priced(line, None, None, why, key + PER)
        return Priced(line, given.value, rounded(given.value * line.count))

    @kept
    def missing(self) -> tuple[str, ...]:
        """Keys of the design without which the sum is not whole, each once."""
        prices = [row.waits for row in self.priced if row.cost is None]
        rate = ["costing.rate"] if self.labour is None else []
        return tuple(dict.fromkeys([*prices, *(key for line in self._lines for key in line.missing), *rate]))

    @kept
    def open(self) -> tuple[str, ...]:
        """Items whose quantity cannot be worked out."""
        return tuple(line.item for line in self._lines if not line.known)

    @property
    def whole(self) -> bool:
        return not self.missing and not self.open

    @property
    def lacking(self) -> str:
        """What a total lacks, in words; nothing where it is whole."""
        prices, amounts = sum(row.cost is None for row in self.priced), len(self.open)
        parts = [f"{prices} price{'' if prices == 1 else 's'}"] if prices else []
        parts += [f"{amounts} quantit{'y' if amounts == 1 else 'ies'}"] if amounts else []
        parts += ["labour"] if self.labour is None else []
        return f"not whole: {', '.join(parts)} not known" if parts else ""

    @kept
    def materials(self) -> float:
        """The lines whose price is known, before tax."""
        typed = rounded(sum(row.cost for row in self.priced if row.cost is not None))
        tax = self.design.given("costing.tax")
        return rounded(typed / (1 + tax.value)) if tax and self.design["costing.prices_are"] == "with tax" else typed

    # --- the sums, in order

    @kept
    def hours(self) -> tuple[float, float, str]:
        """People, hours on site of each (s), and where the hours come from."""
        given = self.design.given("costing.hours")
        if given:
            return 1, given.value, "of one person, as given"
        people = self.design["programme.people"]
        return (
            people,
            round(team_time(self.chain) / _HOUR_HUNDREDTH) * _HOUR_HUNDREDTH,
            f"on site by the programme, {people:g} {'person' if people == 1 else 'people'}",
        )

    @kept
    def labour(self) -> float | None:
        given = self.design.given("costing.rate")
        people, time, _ = self.hours
        return rounded(_work("cost of labour", N_team=people, t_site=time, c_lab=given.value)) if given else None

    @property
    def direct(self) -> float:
        return rounded(self.materials + (self.labour or 0.0))

    def _share(self, key: str, formula: str, cost: float, letters: tuple[str, str]) -> float:
        """A cost with a share of the design on it, by its formula; the cost as it is where no share is given."""
        given = self.design.given(f"costing.{key}")
        return rounded(_work(formula, **{letters[0]: cost, letters[1]: given.value})) if given else cost

    @kept
    def full(self) -> float:
        return self._share("overhead", "cost with overhead", self.direct, ("C_dir", "s_over"))

    @kept
    def estimate(self) -> float:
        return self._share("contingency", "cost with contingency", self.full, ("C_dir", "s_cont"))

    @kept
    def price(self) -> float:
        return self._share("margin", "price from margin", self.estimate, ("C_est", "s_margin"))

    @kept
    def paid(self) -> float:
        """What the client pays, tax in it."""
        if self.design["costing.tax_on"] == "the whole price" or not self.direct:
            return self._share("tax", "price with tax", self.price, ("C_price", "s_tax"))
        taxed = rounded(self.price * self.materials / self.direct)
        return rounded(self.price + self._share("tax", "price with tax", taxed, ("C_price", "s_tax")) - taxed)

    def sums(self) -> list[Sum]:
        """The sums in the order in which they are made. Raises InputError for a margin of the whole price."""
        _, time, whence = self.hours
        priced = any(row.cost is not None for row in self.priced)
        known = priced or self.labour is not None  # else every sum would be nothing, which nobody knows
        rate = self.design.given("costing.rate")
        each = f" at {short(rate.value, 'cur/h')}" if rate else "; needs the rate of pay"
        return [
            Sum("materials, hire and services", self.materials if priced else None, "; ".join(filter(None, (self.typed, self.lacking)))),
            Sum("labour", self.labour, f"{short(time, 'h', 6)} {whence}{each}", () if rate else ("costing.rate",)),
            Sum("direct cost", self.direct if known else None, self.lacking),
            self._added("overhead", self.full - self.direct, "a share of the direct cost"),
            self._added("contingency", self.estimate - self.full, "a share of direct cost and overhead"),
            Sum("cost with contingency", self.estimate if known else None, self.lacking),
            self._added("margin", self.price - self.estimate, "a share of the price: cost / (1 - margin)"),
            Sum("price before tax", self.price if known else None, self.lacking),
            self._added("tax", self.paid - self.price, self.taxed),
            Sum("total", self.paid if known else None, self.lacking),
        ]

    @property
    def typed(self) -> str:
        """Whether the prices are before tax or with it."""
        return f"prices as typed: {self.design['costing.prices_are']}" + ("; it is taken off here" if self.design["costing.prices_are"] == "with tax" else "")

    @property
    def taxed(self) -> str:
        if self.design["costing.tax_on"] == "the whole price":
            return "a share of the price, last"
        return "on the share of the price that materials and hire have in the direct cost; the tax office says what is taxed"

    def _added(self, name: str, value: float, of: str) -> Sum:
        given = self.design.given(f"costing.{name}")
        nothing = not self.direct
        return (
            Sum(name, None if nothing else rounded(value), f"{percent(given.value) or '0 %'}, {of}; {given.basis}")
            if given
            else Sum(name, None, "not given: none is counted", (f"costing.{name}",))
        )

    # --- years

    @kept
    def water(self) -> float:
        """Water in a year, at the price of water. Raises Unknown."""
        return rounded(self.chain.daily_loss * YEAR * self.design["costing.water_price"])

    @kept
    def electricity(self) -> float:
        """Electricity in a year. Raises Unknown."""
        return rounded(self.chain.running_cost)

    @kept
    def service(self) -> float:
        """Service in a year. Raises Unknown."""
        return rounded(self.design["costing.service"])

    def years(self) -> list[Sum]:
        """What a year costs, and the whole life at today's prices."""
        years = self.design["costing.years"]
        return [
            _known("electricity in a year", lambda: self.electricity),
            _known("water in a year", lambda: self.water, "at most: as much all year as in the driest month"),
            _known("service in a year", lambda: self.service),
            _known(
                f"whole cost over {years:g} years",
                self._life,
                "; ".join(filter(None, ("total, and every year's running and service; no interest, and no new pump in it", self.lacking))),
            ),
        ]

    def _life(self) -> float:
        rest = self.service + self.water
        return rounded(_work("cost of a whole life", C_price=self.paid, N_years=self.design["costing.years"], C_run=self.electricity, C_serv=rest))


def _work(formula: str, **values: float) -> float:
    return topics.formulas()[formula](**values)


def _known(title: str, value: Callable[[], float], how: str = "") -> Sum:
    got = tried(value)
    return Sum(title, None, without_keys(got.why), got.needs) if isinstance(got, Refused) else Sum(title, got, how)
