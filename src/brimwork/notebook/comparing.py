"""Two designs side by side."""

from __future__ import annotations

from brimwork.design.follows.chain import Chain
from brimwork.design.follows.features import NUMBERS, chain_of
from brimwork.design.judged.findings import grade_said
from brimwork.design.typed.asking import reason
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.wording import worded
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook.pages import Shown, say, table
from brimwork.notebook.results import MARKS, found_in
from brimwork.notebook.shopping import Table, design_of, following
from brimwork.units import InputError


def compare(one, other) -> Shown | None:
    """Two designs side by side: their key numbers, and every check that they grade differently. Each is a file, or what `design` has opened, which it follows."""
    return following(lambda: _side_by_side(one, other), one, other)


def _side_by_side(one, other) -> Shown:
    try:
        [(_, head, rows, _)] = compared(one, other)
    except InputError as error:
        return say(error)
    return Shown(table(head, rows), "\n".join("; ".join(row) for row in (head, *rows)))


def compared(one, other) -> list[Table]:
    """The same as a table of texts. Raises InputError."""
    designs = [design_of(each) for each in (one, other)]
    chains = [chain_of(each) for each in designs]
    rows = [(NUMBERS[name], *(_number_of(chain, name) for chain in chains)) for name in NUMBERS if any(name in chain.names() for chain in chains)]
    found_of = [{finding.title: finding for finding in reversed(found_in(chain))} for chain in chains]  # of one title the graded one, which stands first
    for title in dict.fromkeys(title for found in found_of for title in found):
        pair = [found.get(title) for found in found_of]
        if len({finding and finding.grade for finding in pair}) > 1:
            rows.append((title, *(f"{MARKS[finding.grade][0]} {grade_said(finding)}: {finding.value}" if finding else "none" for finding in pair)))
    return [("", ("", *(each.title for each in designs)), rows, "")]


def _number_of(chain: Chain, name: str) -> str:
    if name not in chain.names():
        return "–"
    try:
        worked = chain.working(name)
    except (Unknown, InputError) as missing:
        return worded(reason(missing), chain.design.region)
    row = QUANTITIES[worked.letter]
    return row.both(worked.result)
