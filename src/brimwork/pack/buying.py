"""Pages of the pack about buying: the shopping list, tools, and the cost sheet."""

from __future__ import annotations

from brimwork.design.amounts import Line
from brimwork.design.chain import Chain
from brimwork.design.quantities import TOOLS, quantities
from brimwork.design.wording import measured, worded
from brimwork.pack.markup import table, words


def shopping(chain: Chain) -> str:
    """The shopping list, and the tools."""
    region = chain.design.region
    rows = [(line.item, *_middle(line), line.buy, line.where) for line in quantities(chain)]
    tools = "\n".join(f"- {words(measured(worded(tool, region), region))}" for tool in TOOLS)
    return "\n\n".join([
        "#pagebreak()\n== Shopping list\n"
        + words("From the design alone, each rounded up to what is sold. Waste and sizes sold are usual ones, listed with their basis under what this design rests on, until the design says its own."),
        table("1.15fr, 2.5fr, auto, auto, auto, auto, 1fr", ("item", "spec", "net", "waste", "gross", "buy", "used where"), rows, size=8),
        f"=== Tools, and what people wear\n{tools}",
    ])  # fmt: skip


def _middle(line: Line) -> tuple[str, str, str, str]:
    said = ". ".join(text[:1].upper() + text[1:] for text in (line.spec, line.note) if text)
    return said, line.net, line.waste, line.gross
