"""A price list as a file of the user's own, beside the design: written to be filled, and read again."""

from __future__ import annotations

from pathlib import Path

from brimwork import files
from brimwork.design.done.quantities import quantities
from brimwork.design.typed.design import Design
from brimwork.design.typed.price_list import price_list, prices_read
from brimwork.notebook.opened import OpenDesign
from brimwork.notebook.shelf import DESIGNS
from brimwork.units import InputError

LARGEST_LIST = 200_000  # bytes


def list_of(opened: OpenDesign) -> Path:
    """Where the list of a design lies."""
    return DESIGNS / f"{Path(opened.mine).stem}-prices.csv"


def write_prices(opened: OpenDesign) -> str:
    """Write the list, and say so. Raises InputError where there is one."""
    place = list_of(opened)
    keys = list(dict.fromkeys(line.key for line in quantities(opened.chain) if line.key))
    if place.exists():
        raise InputError(f"{place} is there already: fill it and read it, or move it away first")
    files.write_whole(place, price_list(opened.design, keys).encode())
    given = sum(f"prices.{key}" in opened.design.values for key in keys)
    return f"A list of {len(keys)} prices, {given or 'none'} of them filled in, is written: {place}. Fill its last column, save it, and press Read my prices."


def with_prices(opened: OpenDesign) -> Design:
    """The design with the prices of its list. Raises InputError."""
    place = list_of(opened)
    try:
        text = files.read_bounded(place, LARGEST_LIST).decode("utf-8-sig")
    except FileNotFoundError:
        raise InputError(f"{place} is not there yet: press Write a price list to fill first") from None
    except UnicodeDecodeError:
        raise InputError(f"{place} is not a text file in UTF-8: save it as CSV, UTF-8") from None
    return prices_read(opened.design, text)
