"""The lists of a design as tables for a spreadsheet: what to buy by stage, what it costs, the programme, and an enquiry to suppliers with blanks."""

from __future__ import annotations

from pathlib import Path

from brimwork.design.done.amounts import ListLine
from brimwork.design.done.cost import cost_sheet
from brimwork.design.done.programme import Programme, programme
from brimwork.design.done.quantities import quantities
from brimwork.design.follows.chain import Chain
from brimwork.design.typed.steps import LEADS
from brimwork.design.typed.wording import measured, worded
from brimwork.files import begin
from brimwork.pack.site import programme_printed
from brimwork.tabular import as_csv
from brimwork.units import InputError

LISTS = ("shopping.csv", "cost.csv", "programme.csv", "enquiry.csv")


def lists(chain: Chain) -> dict[str, bytes]:
    """The four tables by file name, UTF-8 with its mark. Raises InputError where no programme or cost sheet can be made."""
    made, found = programme(chain), quantities(chain)
    return dict(zip(LISTS, (_shopping(chain, made, found), _cost(chain), _programme(chain, made), _enquiry(chain, made, found)), strict=True))


def write_lists(chain: Chain, folder: Path) -> tuple[Path, ...]:
    """Write the four tables into a folder, all or none; a file that is there already is never replaced. Raises InputError."""
    tables = lists(chain)
    there = [name for name in tables if (folder / name).exists()]
    if there:
        raise InputError(f"{folder / there[0]} is there already: name another folder, or take the old lists away")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name, content in tables.items():
            begin(folder / name, content)
    except OSError as error:
        raise InputError(f"the lists cannot be written into {folder} ({error.strerror}): name another folder") from None
    return tuple(folder / name for name in tables)


def _stage(chain: Chain, made: Programme, line: ListLine) -> str:
    """The step of the work at which something is used first."""
    leads = {key for key, lead in LEADS.items() if line.key and line.key in lead.items}
    first = next((one for one in sorted(made.steps, key=lambda one: one.start) if leads & set(one.step.order)), None)
    return worded(first.step.words, chain.design.region) if first else ""


def _shopping(chain: Chain, made: Programme, found: list[ListLine]) -> bytes:
    head = ("item", "spec", "net", "waste", "gross", "buy", "used where", "first used at", "note")
    return as_csv(
        head, ((line.item, line.spec, line.net, line.waste, line.gross, line.buy, line.where, _stage(chain, made, line), line.note) for line in found)
    )


def _cost(chain: Chain) -> bytes:
    sheet = cost_sheet(chain)
    rows = [
        (row.line.item, row.line.buy, row.each, row.cost, row.why or (f"a {row.line.per}" if row.line.per else "a metre" if row.line.by_length else ""))
        for row in sheet.priced
    ]
    sums = [(worded(line.title, chain.design.region), "", None, line.value, worded(line.how, chain.design.region)) for line in (*sheet.sums(), *sheet.years())]
    return as_csv(("item", "buy", "price of one", "cost", "how"), [*rows, *sums])


def _programme(chain: Chain, made: Programme) -> bytes:
    region = chain.design.region
    head = ("step", "hours", "starts", "ends", "what must be true, cautions", "critical", "hold")
    return as_csv(head, (
        (measured(worded(one.step.words, region), region), one.seconds / 3600, f"{made.day(one.start.date())} {one.start:%H:%M}",
         f"{made.day(one.end.date())} {one.end:%H:%M}", measured(worded(programme_printed(one), region), region), one.critical, one.step.hold)
        for one in made.steps
    ))  # fmt: skip


def _enquiry(chain: Chain, made: Programme, found: list[ListLine]) -> bytes:
    """What is asked of suppliers: quantities, the day each is needed, and blanks for what they offer."""
    needed = {order.what: order.needed for order in made.orders}
    rows = []
    for line in found:
        if not line.key:
            continue
        lead = next((worded(lead.words, chain.design.region) for lead in LEADS.values() if line.key in lead.items), "")
        day = next((made.day(when) for what, when in needed.items() if worded(what, chain.design.region) == lead), "")
        rows.append((line.item, line.spec, line.buy, day, "", "", "", "", ""))
    return as_csv(("item", "spec", "quantity", "needed on site", "supplier", "offered instead", "price of one", "tax in it (yes, no)", "delivered by"), rows)
