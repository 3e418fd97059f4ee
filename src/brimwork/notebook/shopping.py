"""What to buy, what it costs and in what order it is done, as tables: for a design file, or for the design that is open in the design workbook."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

from IPython.display import display

from brimwork.design.done.cost import cost_sheet
from brimwork.design.done.programme import open_of, programme
from brimwork.design.done.quantities import quantities
from brimwork.design.follows.chain import Chain
from brimwork.design.follows.features import chain_of
from brimwork.design.typed import file
from brimwork.design.typed.design import Design
from brimwork.design.typed.money import currency_words
from brimwork.design.typed.wording import measured, worded
from brimwork.notebook.pages import Shown, say, table
from brimwork.pack.buying import UNKNOWN_PRICE, each, money, said_of, wholeness
from brimwork.pack.site import programme_printed
from brimwork.shown import Markup, escape
from brimwork.units import InputError


class Waits(str):
    """A cell of a table that waits for values of the design: its words, and their `keys`."""

    keys: tuple[str, ...]

    @classmethod
    def of(cls, words: str, keys: Sequence[str]) -> str:
        """The words alone where they wait for nothing."""
        made = cls(words)
        made.keys = tuple(keys)
        return made if keys else words


Table = tuple[str, Sequence[str], Sequence[Sequence[str]], str]  # caption, head, rows, note


def _html(caption: str, head: Sequence[str], rows: Sequence[Sequence[str]], note: str) -> Markup:
    said = f"<p>{escape(note)}</p>" if note else ""
    return Markup(f"{said}{table(head, rows, caption)}")


def _plain(caption: str, head: Sequence[str], rows: Sequence[Sequence[str]], note: str) -> str:
    return "\n".join([caption, *([note] if note else []), *(" | ".join(row) for row in (head, *rows))])


def buying(design):
    """Shopping list, cost sheet and programme of a design: give the path of its file, such as "designs/library-bowl.toml", a Design, or what `design` has opened.

    What is open is followed: a change shows without running the cell again.
    """
    return following(lambda: _bought(design), design)


def _bought(design) -> Shown:
    try:
        chain = chain_of(design_of(design))
        parts = [table for name in ("shopping", "cost", "work") for table in tables_of(chain, name)]
        return Shown(Markup("".join(_html(*part) for part in parts)), "\n\n".join(_plain(*part) for part in parts))
    except InputError as error:
        return say(error)


def tables_of(chain: Chain, name: str) -> list[Table]:
    """The tables of the shopping list, the cost or the work. Raises InputError."""
    return [_list(chain)] if name == "shopping" else list(_costs(chain) if name == "cost" else _programme(chain))


def following(make: Callable[[], Shown], *designs):
    """What `make` gives; where one of the designs is open, shown at once and again after every change."""
    opened = [one for one in designs if hasattr(one, "followers")]
    if not opened:
        return make()
    handle = display(make(), display_id=True)
    for one in opened:
        one.followers.append(lambda: handle.update(make()))
    return None


def design_of(design) -> Design:
    """The design in a file, or the one that is open; a Design as it is. Raises InputError."""
    if isinstance(design, Design):
        return design
    return file.load_design(Path(design)) if isinstance(design, str | Path) else design.design


def _list(chain: Chain):
    rows = [(line.item, Waits.of(said_of(line), line.missing), line.net, line.waste, line.gross, line.buy, line.where) for line in quantities(chain)]
    return "Shopping list", ("item", "spec", "net", "waste", "gross", "buy", "used where"), rows, "Each is rounded up to what is sold."


def _costs(chain: Chain):
    sheet, region = cost_sheet(chain), chain.design.region
    rows = [
        (row.line.item, row.line.buy, each(row, region), Waits.of(row.why or UNKNOWN_PRICE, [row.waits]) if row.cost is None else money(row.cost))
        for row in sheet.priced
    ]
    sums = [
        (worded(line.title, region), "not known" if line.value is None else money(line.value), Waits.of(worded(line.how, region), line.needs))
        for line in (*sheet.sums(), *sheet.years())
    ]
    yield f"Cost of each line, in {currency_words(chain.design)}", ("item", "buy", "price of one", "cost"), rows, ""
    yield f"Cost sheet, in {currency_words(chain.design)}", ("", "cost", "how"), sums, worded(wholeness(sheet), region)


def _programme(chain: Chain):
    made, region = programme(chain), chain.design.region
    rows = [
        (measured(worded(one.step.words, region), region), f"{made.day(one.start.date())}, {one.start:%H:%M}", f"{made.day(one.end.date())}, {one.end:%H:%M}",
         "yes" if one.critical else "", one.step.hold, measured(worded(programme_printed(one), region), region))
        for one in made.steps
    ]  # fmt: skip
    orders = [(worded(order.what, region), made.day(order.by), made.day(order.needed)) for order in made.orders]
    yield (
        worded("Programme", region),
        ("step", "starts", "ends", "critical", "hold point", "what must be true, cautions"),
        rows,
        Waits.of(worded(" ".join(made.notes), region), open_of(chain.design)),
    )
    yield "Order by", ("what", "order by", "needed on site"), orders, ""
    yield (
        worded("On hire", region),
        ("what", "first day", "last day"),
        [(worded(hire.what, region), made.day(hire.on), made.day(hire.off)) for hire in made.hires],
        "",
    )
