"""Prices in a table of one's own: a file to be filled, with a line for each price that a design asks for and no price in it, and read again."""

from __future__ import annotations

import csv
import io

from brimwork.design.typed.design import Design
from brimwork.design.typed.prices import PRICES
from brimwork.design.typed.renamed import RENAMED
from brimwork.design.typed.wording import worded
from brimwork.units import InputError

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
    return out.getvalue()


def prices_read(design: Design, text: str) -> Design:
    """The design with the prices that a table has. Raises InputError, which names the line."""
    for number, row in enumerate(csv.reader(io.StringIO(text)), start=1):
        if number == 1 or not row or not any(cell.strip() for cell in row):
            continue
        key = f"prices.{row[0].strip()}"
        key = RENAMED.get(key, key)
        if key.removeprefix("prices.") not in PRICES:
            raise InputError(
                f"line {number} of the price list begins with '{row[0][:40]}', which is no price of a design: leave the first column as it was written"
            )
        if len(row) < 3:
            raise InputError(f"line {number} of the price list has no third column: write the price there, or leave it empty")
        if row[2].strip():
            try:
                design = design.having(key, row[2].strip())
            except InputError as error:
                raise InputError(f"line {number} of the price list: {error}") from None
    return design
