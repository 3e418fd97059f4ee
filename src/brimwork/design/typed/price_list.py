"""Prices in a table of one's own: a file to be filled, with a line for each price that a design asks for and no price in it, and read again."""

from __future__ import annotations

import csv
import io

from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.prices import PER, PRICES, SOLD_LOOSE
from brimwork.design.typed.reading import OneOf
from brimwork.design.typed.renamed import RENAMED
from brimwork.design.typed.wording import worded
from brimwork.units import InputError

_MOST_TOLD = 5
HEAD_ROW = ("price of", "what it is for", "your price")


def price_list(design: Design, keys: list[str]) -> str:
    """A table (CSV) with a line for each of the prices, those that the design has filled in."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(HEAD_ROW)
    for key in keys:
        given = design.values.get(f"prices.{key}")
        row = PRICES[key]
        per = (", for a foot" if design.region == "US" else ", for a metre") if row.by_length else ""
        writer.writerow((key, worded(row.name, design.region) + per, given.text if given else ""))
        if key in SOLD_LOOSE:
            field = SECTIONS["prices"][key + PER]
            assert isinstance(field, OneOf)
            said = design.values.get(f"prices.{key}{PER}")
            writer.writerow((key + PER, f"{worded(field.name, design.region)}: {' or '.join(field.options)}", said.text if said else ""))
    return out.getvalue()


def prices_read(design: Design, text: str) -> Design:
    """The design with the prices that a table has. Raises InputError, which names every line that cannot be read; none of the prices is taken then."""
    wrong: list[str] = []
    for number, row in enumerate(csv.reader(io.StringIO(text)), start=1):
        if number == 1 or not row or not any(cell.strip() for cell in row):
            continue
        key = f"prices.{row[0].strip()}"
        key = RENAMED.get(key, key)
        name = key.removeprefix("prices.")
        if name.removesuffix(PER) not in PRICES or name not in SECTIONS["prices"]:
            raise InputError(
                f"line {number} of the price list begins with '{row[0][:40]}', which is no price of a design: leave the first column as it was written"
            )
        if len(row) < 3:
            raise InputError(f"line {number} of the price list has no third column: write the price there, or leave it empty")
        if row[2].strip():
            try:
                design = design.having(key, row[2].strip())
            except InputError as error:
                wrong.append(f"line {number} of the price list: {error}")
    if wrong:
        more = f"; and {len(wrong) - _MOST_TOLD} lines more" if len(wrong) > _MOST_TOLD else ""
        raise InputError(f"{'; '.join(wrong[:_MOST_TOLD])}{more}. Until all can be read none is taken")
    return design
