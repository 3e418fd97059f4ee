"""One line of the shopping list: what is needed, with its waste, rounded up to what is sold; written in the units and words of the region."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from brimwork.design.follows.chain import Chain
from brimwork.design.typed.telling import percent, short
from brimwork.design.typed.wording import tape, worded
from brimwork.topics.cost import to_buy, whole_units
from brimwork.units import number, unit

LOOSE_UNITS = {"tonne": unit("t").factor, "short ton": unit("short ton").factor}  # kg
CUBIC_YARD = unit("yd3").factor  # m3


@dataclass(frozen=True)
class ListLine:
    """One line of the list. `count` is how many are bought, or the length in m of what is cut off a roll; None where it is not bought or not known.

    `key` names its price in the section [prices], which is for one, for a metre or for what `per` says; one that has a price of its own has it as `each`,
    or names in `waits` where that would stand. A line that cannot be worked out is not `known`, and names the keys of the design that are missing.
    """

    item: str
    key: str = ""
    spec: str = ""
    net: str = ""
    waste: str = ""
    gross: str = ""
    count: float | None = None
    by_length: bool = False
    per: str = ""
    each: float | None = None
    waits: str = ""
    buy: str = ""
    where: str = ""
    note: str = ""
    known: bool = True
    missing: tuple[str, ...] = ()


class Shop:
    """Makes lines for one design, in the units of its region, the others behind in brackets for the US."""

    def __init__(self, chain: Chain):
        self.chain, self.design = chain, chain.design
        self.us = chain.design.region == "US"

    # --- writing

    def amount(self, value: float, metric: str, us: str) -> str:
        """Value in SI in the unit of the region; for the US the metric one in brackets."""
        here = short(value, metric)
        return f"{short(value, us)} ({here})" if self.us else here

    def sizes(self, *lengths: float) -> str:
        """Lengths in mm, or for the US in inches and sixteenths, with mm."""
        metric = " x ".join(f"{length * 1e3:.0f}" for length in lengths) + " mm"
        return " x ".join(map(tape, lengths)) + f" in ({metric})" if self.us else metric

    def run(self, length: float) -> str:
        return self.amount(length, "m", "ft")

    def mass(self, kilograms: float) -> str:
        return self.amount(kilograms, "kg", "lb") if kilograms < 1000 else self.amount(kilograms, "t", "short ton").replace("short ton", "short tons")

    def water(self, volume: float) -> str:
        return self.amount(volume, "L", "US gal")

    def timber(self) -> str:
        """Section and length of the timber that is sold; sawn sizes are common practice."""
        return f"{'2 x 2 in nominal' if self.us else '47 x 50 mm sawn'}, lengths of {self.run(self.design['buying.batten'])}"

    def words(self, text: str) -> str:
        return worded(text, self.design.region)

    # --- lines

    def line(self, item: str, key: str = "", **said: Any) -> ListLine:
        if said.get("count") == 0:  # nothing is bought, and no price is asked for
            key, said = "", said | {"count": None, "buy": "none"}
        if self.us:
            said = {name: self.words(value) if isinstance(value, str) else value for name, value in said.items()}
        return ListLine(self.words(item), key, **said)

    def pieces(self, key: str, item: str, count: float, spec: str = "", where: str = "", note: str = "", spare: float = 0) -> ListLine:
        """Things that are bought by the piece, spares added."""
        bought = count + spare
        return self.line(one_of(item) if bought == 1 else item, key, spec=spec, net=number(count), waste=f"{number(spare)} spare" if spare else "", gross=number(bought) if spare else "",
                         count=bought, buy=number(bought), where=where, note=note)  # fmt: skip

    def packs(self, key: str, item: str, net: float, waste: str, pack: float, said: tuple[str, str, str], **rest) -> ListLine:
        """What is sold in packs of size `pack`, the measure of `net`; `said` is how the measure is written (metric unit, US unit) and the name of a pack."""
        metric, us, name = said
        share = self.design[waste] if waste else 0.0
        gross, packs = to_buy(net, share, pack)
        return self.line(item, key, net=self.amount(net, metric, us), waste=percent(share), gross=self.amount(gross, metric, us), count=packs,
                         buy=_plural(packs, name), **rest)  # fmt: skip

    def cut(self, key: str, item: str, net: float, waste: str, extra: float = 0.0, sold: str = "buying.cut_step", **rest) -> ListLine:
        """A length (m) with its waste and what is added for ends: cut off a roll or coil in whole steps, or in whole lengths of what is `sold`."""
        step, share = self.design[sold], self.design[waste] if waste else 0.0
        gross = to_buy(net, share, step)[0] + extra
        steps = whole_units(gross, step)
        said = " + ".join(part for part in (percent(share), self.run(extra) if extra else "") if part)
        whole = {"buying.pipe_stick": "length", "buying.duct_coil": "coil"}.get(sold)
        buy = f"{_plural(steps, whole)} of {self.run(step)}" if whole else self.run(steps * step)
        return self.line(item, key, net=self.run(net), waste=said, gross=self.run(gross), count=steps * step, by_length=True, buy=buy, **rest)

    def loose(self, key: str, item: str, net: str, gross: float, waste: str, density: float, sold: str, **rest) -> ListLine:
        """Loose material of a gross mass (kg) and bulk density (kg/m3), bought as the design says."""
        count, bought = self._bought(gross, density, self.design[sold])
        bags = self.amount(self.design["buying.bag"], "kg", "lb")
        other = "" if self.design[sold] == "bag" else f"or {whole_units(gross, self.design['buying.bag'])} bags of {bags}"
        note = "; ".join(part for part in (rest.pop("note", ""), other) if part)
        holds = {"bag": "buying.bag", "bulk bag": "buying.bulk_bag"}.get(self.design[sold])
        per = self.design[sold] + (f" of {self.amount(self.design[holds], 'kg', 'lb')}" if holds else "")
        return self.line(item, key, net=net, waste=waste, gross=self.mass(gross), count=count, per=per, buy=bought, note=note, **rest)

    def _bought(self, gross: float, density: float, sold: str) -> tuple[float, str]:
        """How many of what is sold hold a gross mass, and in words."""
        d = self.design
        if sold in ("bag", "bulk bag"):
            holds = d["buying.bag"] if sold == "bag" else d["buying.bulk_bag"]
            count = whole_units(gross, holds)
            return count, f"{_plural(count, sold)} of {self.amount(holds, 'kg', 'lb')}"
        step = d["buying.loose_step"]
        size = LOOSE_UNITS[sold] if sold in LOOSE_UNITS else CUBIC_YARD * density
        count = whole_units(gross, size * step) * step
        return count, _plural(count, sold)


_SINGULAR = {"hose tails": "hose tail", "hose clips": "hose clip", "void-former blocks": "void-former block", "washers": "washer", "bends": "bend",
             "step stones": "step stone", "branch valves": "branch valve", "outlet sleeves": "outlet sleeve"}  # fmt: skip


def one_of(item: str) -> str:
    """The name of a thing of which there is one."""
    return _SINGULAR.get(item, item)


def _plural(count: float, name: str) -> str:
    return f"{number(count)} {name}" + ("" if count == 1 else "s")
