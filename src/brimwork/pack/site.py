"""Pages of the pack for the work on site: programme with its chart, hold points to sign, and what to measure when it first runs."""

from __future__ import annotations

import datetime
from pathlib import Path

from brimwork.design.done.programme import Dated, Programme, programme
from brimwork.design.follows.chain import Chain
from brimwork.design.judged import checks
from brimwork.design.typed.asking import Refused, reason, tried
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.money import currency_words
from brimwork.design.typed.steps import HOLDS, WAIT
from brimwork.design.typed.telling import INFINITE, short
from brimwork.design.typed.wording import ROUNDED, measured, worded
from brimwork.drawing import svg
from brimwork.drawing.bars import bars
from brimwork.pack import markup
from brimwork.pack.buying import money
from brimwork.pack.markup import together, typst_table, typst_words
from brimwork.quantity import days
from brimwork.units import InputError

MEASURES = (
    ("flow by bucket at the outlet, every valve open, mean of three", "duty_flow"), ("drop of the level when the pump starts", "start_drop"), ("current of the running pump", "current"),
    ("head over the rim or lip, level to half a millimetre", "edge"), ("fall of the level in a day, pump off, less the control bucket", "leak"), ("water that fills the empty reservoir up to the static level, by a meter", "static_volume"),
    ("levels of the rim at eight points or more, highest less lowest", "rim"),
)  # fmt: skip

# Common practice, no source; makers' sheets and local rules govern.
KEEPING = (
    ("every week", "Is any water open to a child? Stone and grille lie as they were handed over."),
    ("every week", "With the pump off, top up to the static mark. Much more than a loss of {loss} means a leak: look round and under it."),
    ("every month", "Unplug. Lift the pump out, never by its cable; rinse strainer and pump; look along hose and cable."),
    ("as its maker says", "Press the test button of the residual-current device: it must trip. If it does not, unplug, and call the electrician."),
    ("spring and autumn", "Rim or lip level; clips tight; overflow free; edge of the liner above the soil; nothing rocks."),
    ("against algae or germs", "Dose by the water there is, {water}, and by the label; never mix products; not where birds, pets or fish drink."),
    ("before frost", "Switch off and unplug, lift the pump out, drain the hose and what it fills, cover what stays open."),
    ("after weeks at a standstill", "Change the water before it sprays; nobody breathes that spray."),
    ("it stopped", "Level, then power: has it tripped? Unplug, touch nothing wet; if it trips again, call the electrician. Then strainer, hose, rim."),
    ("what it takes", "Without a top-up the water lasts {days}. Electricity in a year: {cost}."),
)


def site(chain: Chain, day: datetime.date, folder: Path) -> str:
    """Programme, hold points, measurements; the chart is written into `folder`."""
    try:
        made = programme(chain)
    except InputError as refused:
        said = worded(f"Not shown: {refused}.", chain.design.region)
        return f"#pagebreak()\n== {worded('Programme', chain.design.region)}\n{typst_words(said)}\n\n{_holds(chain, None)}\n\n{_measures(chain)}\n\n{_keeping(chain)}"
    return "\n\n".join([_programme(chain, made, day), _holds(chain, made), _chart(chain, made, folder), _measures(chain), _keeping(chain)])


def _programme(chain: Chain, made: Programme, day: datetime.date) -> str:
    region = chain.design.region
    rows = [(str(i), *_step(made, one, region)) for i, one in enumerate(made.steps, start=1)]
    orders = [
        (worded(order.what, region), made.day(order.by) + _late(made, order.by, day), f"{order.working_days}", made.day(order.needed)) for order in made.orders
    ]
    hires = [(worded(hire.what, region), made.day(hire.on), made.day(hire.off)) for hire in made.hires]
    notes = " ".join([worded(" ".join(made.notes), region), *([ROUNDED] if region == "US" else [])])
    return "\n\n".join([
        f"#set page(flipped: true)\n== {worded('Programme', region)}\n" + typst_words(f"By a plain forward pass. {notes} Times are the usual ones of two people, shared by those at work, until the design says its own. More time on a critical step puts off the end; the others have some to spare."),
        typst_table("auto, 2fr, auto, auto, auto, 2.8fr, auto, auto", ("", "step", "time", "starts", "ends", "what must be true, cautions", "critical", "hold"), rows, size=8),
        "#set page(flipped: false)",
        together("=== Order by\n" + typst_table("1fr, auto, auto, auto", ("what", "order by", "working days", "needed on site"), orders)),
        together(f"=== {worded('On hire', region)}\n" + typst_table("1fr, auto, auto", ("what", "first day", "last day"), hires)),
    ])  # fmt: skip


def _step(made: Programme, one: Dated, region: str) -> tuple[str, ...]:
    said = measured(worded(one.step.words + (f" ({one.note})" if one.note else ""), region), region)
    must = measured(worded(programme_printed(one), region), region)
    return said, _length(one), *(_moment(made, moment) for moment in (one.start, one.end)), must, "yes" if one.critical else "", one.step.hold


def programme_printed(one: Dated) -> str:
    """What must be true of a step, and its caution."""
    return ". ".join(part for part in (one.step.must, f"Caution: {one.step.caution}" if one.step.caution else "") if part)


def _length(one: Dated) -> str:
    unit = "day" if one.step.by == WAIT and one.seconds >= 3 * 86400 else "h"
    return days(short(one.seconds, unit))


def _moment(made: Programme, moment: datetime.datetime) -> str:
    return f"{made.day(moment.date())}, {moment:%H:%M}"


def _late(made: Programme, by: datetime.date, day: datetime.date) -> str:
    """A word where a pack is printed after the day by which something had to be ordered."""
    return " (past)" if made.dated and by < day else ""


def _chart(chain: Chain, made: Programme, folder: Path) -> str:
    sheet = bars(made, chain.design.title, chain.design.region)
    (folder / "programme.svg").write_text(svg.write_svg(sheet, "p", scale_to_page=False), encoding="utf-8")
    title = worded("Programme", chain.design.region)
    return together(f"=== {title} as a bar chart\n" + markup.drawing("programme.svg", sheet.alt, sheet.description, sheet.width))


def _holds(chain: Chain, made: Programme | None) -> str:
    region = chain.design.region
    planned = {one.step.hold: made.signed(one) for one in made.steps} if made else {}
    rows = [(name, worded(what, region), planned.get(name, ""), "") for name, what in HOLDS.items()]
    return together(
        "== Hold points: work stops here until signed\n" + typst_table("auto, 1fr, auto, 48mm", ("", "what", "planned", "date and signature"), rows)
    )


def _measures(chain: Chain) -> str:
    measures = [(what, name) for what, name in MEASURES if name != "rim" or chain.design.kind == "overflowing vessel"]
    got = tried(lambda: (chain.coming, chain.coming_said))
    there, at = (chain, "") if isinstance(got, Refused) else (got[0], f"Predicted {got[1]}. ")
    rows = [(worded(what, chain.design.region), _predicted(there, name), "") for what, name in measures]
    said = f"{at}What is measured goes into the boxes of the step Measured, and grades the checks again."
    return together(
        f"== When it first runs: predicted and measured\n{said}\n\n" + typst_table("1fr, auto, 40mm", ("what", "predicted", "measured, date"), rows)
    )


def _keeping(chain: Chain) -> str:
    """The card that is handed over: what is looked at, how often, and with which numbers of this design."""
    region = chain.design.region
    asked = {
        "loss": lambda: markup.both("Q_loss", chain.daily_loss, region),
        "water": lambda: markup.both("V_w", chain.static_volume + chain.held_above, region),
        "days": lambda: markup.both(chain.working("days").letter, chain.days, region),
        "cost": lambda: f"{money(chain.running_cost)} ({currency_words(chain.design)})",
    }
    known = {name: "(not known yet)" if isinstance(got := tried(work), Refused) else got for name, work in asked.items()}
    rows = [(worded(when, region), worded(what.format(**known), region)) for when, what in KEEPING]
    said = "Common practice, no source; the sheets of the makers and local rules govern. Whom to call, builder and electrician:"
    return together(
        f"== {worded('Card to hand over: keeping it running', region)}\n{typst_words(worded(said, region))} #box(width: 1fr, repeat[.])\n\n"
        + typst_table("auto, 1fr", ("when", "what"), rows)
    )


def _predicted(chain: Chain, name: str) -> str:
    region = chain.design.region
    if name == "leak":
        most = checks.limits_of(chain, "C72").good[1]
        return measured(f"{short(most * 86400, 'mm')} at most", region) if most < INFINITE else "no limit set"
    try:
        if name == "rim":
            return f"{markup.both('H', checks.limits_of(chain, 'C07').good[1] * chain.edge_head, region)} at most"
        if name == "edge":
            return markup.both("H", chain.edge_head, region) if chain.edge_head else "a film all round"
        worked = chain.working(name)
    except (Unknown, InputError) as missing:
        return worded(reason(missing), region)
    return markup.both(worked.letter, worked.result, region)
