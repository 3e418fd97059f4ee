"""Pages of the pack about buying: the shopping list, tools, and the cost sheet."""

from __future__ import annotations

from brimwork.design.done.amounts import ListLine
from brimwork.design.done.cost import CostSheet, Priced, Sum, cost_sheet, rounded
from brimwork.design.done.quantities import TOOLS, quantities
from brimwork.design.follows.chain import Chain
from brimwork.design.typed.asking import without_keys
from brimwork.design.typed.wording import measured, worded
from brimwork.pack.markup import together, typst_table, typst_words
from brimwork.units import InputError, convert

UNKNOWN_PRICE = "price not known"
_ROUNDED = "Every amount is rounded once, to a hundredth, half up; sums add up the rounded ones."


def shopping(chain: Chain) -> str:
    """The shopping list, and the tools."""
    region = chain.design.region
    rows = [(line.item, said_of(line), line.net, line.waste, line.gross, line.buy, line.where) for line in quantities(chain)]
    tools = "\n".join(f"- {typst_words(measured(worded(tool, region), region))}" for tool in TOOLS)
    return "\n\n".join([
        "#set page(flipped: true)\n== Shopping list\n"
        + typst_words("From the design alone, each rounded up to what is sold. Waste and sizes sold are usual ones until the design says its own; what this design rests on lists them with their basis."),
        typst_table("1.15fr, 2.9fr, 1.05fr, 0.8fr, 1fr, 1.05fr, 1.15fr", ("item", "spec", "net", "waste", "gross", "buy", "used where"), rows, size=8),
        f"=== Tools, and what people wear\n{tools}\n#set page(flipped: false)",
    ])  # fmt: skip


def said_of(line: ListLine) -> str:
    """What a line says of its item: spec and note as sentences."""
    return ". ".join(text[:1].upper() + text[1:] for text in (line.spec, line.note) if text)


def cost(chain: Chain) -> str:
    """The cost sheet."""
    sheet, region = cost_sheet(chain), chain.design.region
    try:
        sums, years = sheet.sums(), sheet.years()
    except InputError as refused:
        return f"== Cost sheet\n{typst_words(worded(f'Not shown: {without_keys(str(refused))}.', region))}"
    rows = [(row.line.item, row.line.buy, each(row, region), money(row.cost) if row.cost is not None else row.why or UNKNOWN_PRICE) for row in sheet.priced]
    return "\n\n".join([
        "#pagebreak()\n== Cost sheet\n" + typst_words(f"In your own currency, called cur here. {worded(wholeness(sheet), region)}"),
        typst_table("1fr, auto, auto, auto", ("item", "buy", "price of one", "cost"), rows, size=8, right=(2, 3)),
        together("=== Sums\n" + typst_table("auto, auto, 1fr", ("", "cost", "how"), [_sum(line, sheet, region) for line in sums], size=8, right=(1,))),
        together("=== Years, at today's prices\n" + typst_table("auto, auto, 1fr", ("", "cost", "how"), [(worded(line.title, region), _value(line), worded(line.how, region)) for line in years], size=8, right=(1,))),
    ])  # fmt: skip


def wholeness(sheet: CostSheet) -> str:
    """Whether the sum is whole, and what it lacks."""
    if sheet.whole:
        return f"Every price is known; quantities and prices may still change. {_ROUNDED}"
    prices = sum(row.cost is None for row in sheet.priced)
    lacking = [
        *([f"{prices} price{'' if prices == 1 else 's'} not known"] if prices else []),
        *([f"not worked out: {', '.join(sheet.open)}"] if sheet.open else []),
    ]
    lacking += ["the rate of pay is not known"] if sheet.labour is None else []
    return f"The total is at least what is printed: {'; '.join(lacking)}. What is not known is not counted as nothing. {_ROUNDED}"


def each(row: Priced, region: str) -> str:
    if row.each is None or not row.line.by_length:
        return "" if row.each is None else price(row.each) + (f" a {row.line.per}" if row.line.per else "")
    return f"{price(convert(row.each, 'cur/ft'))} a foot" if region == "US" else f"{price(row.each)} a metre"


def price(value: float) -> str:
    """The price of one, with more than two decimals where it has them, so that a cost can be worked out again from what is printed."""
    whole, _, part = f"{value:,.4f}".partition(".")
    return f"{whole}.{part.rstrip('0').ljust(2, '0')}".replace(",", " ")


def money(value: float) -> str:
    return f"{rounded(value):,.2f}".replace(",", " ")


def _sum(line: Sum, sheet: CostSheet, region: str) -> tuple[str, str, str]:
    least = "at least " if not sheet.whole and line.value is not None and line.title not in ("overhead", "contingency", "margin", "tax", "labour") else ""
    left_out = line.value is None and line.title != "labour" and line.needs  # a share that nobody asked for is none; a sum of nothing known is not known
    return worded(line.title, region), least + ("none" if left_out else _value(line)), worded(line.how, region)


def _value(line: Sum) -> str:
    return money(line.value) if line.value is not None else "not known"
