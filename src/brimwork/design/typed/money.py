"""Money as people type it, $4/ft, 1,200 USD or a plain 350, as the reader of quantities takes it: cur stands for the one currency of a design."""

from __future__ import annotations

import re

from brimwork.design.typed.known import Known

_CURRENCIES = {"US$": "$", "USD": "$", "GBP": "£", "EUR": "€"}
_SIGN = r"(?:US\$|[$€£]|\b(?:USD|EUR|GBP)\b)"
_BEFORE = re.compile(rf"^\s*{_SIGN}\s*(?P<figure>[\d.,]+)\s*(?P<per>/\s*\S+)?\s*$", re.IGNORECASE)
_BEHIND = re.compile(rf"^\s*(?P<figure>[\d.,]+)\s*{_SIGN}\s*(?P<per>/\s*\S+)?\s*$", re.IGNORECASE)
_PLAIN = re.compile(r"^\s*(?P<figure>[\d.,]+)\s*(?P<per>/\s*\S+)?\s*$")
_SMALL = re.compile(r"^\s*(?P<figure>\d{1,6}(?:\.\d{1,2})?)\s*(?:p|¢)\s*$", re.IGNORECASE)  # hundredths
_FOR_EACH = re.compile(rf"^\s*(?P<amount>{_SIGN}?\s*[\d.,]+\s*{_SIGN}?)\s*(?:/|per\b|an?\b|each\b)\s*(?P<what>[a-z ]{{0,30}})$", re.IGNORECASE)
_ONE_SIGN = re.compile(_SIGN, re.IGNORECASE)
_THOUSANDS = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?")
LONGEST = 60  # characters of an amount with its unit


def in_currency(given: str | int | float, unit: str) -> str | int | float:
    """What was typed for money in `unit` ("cur", "cur/ft") with the currency's sign or name put as cur; a bare amount gets the unit. Anything else as it is."""
    text = f"{given}" if isinstance(given, int | float) and not isinstance(given, bool) else given
    if not isinstance(text, str) or len(text) > LONGEST:
        return given
    if unit == "cur" and (small := _SMALL.match(text)):
        return f"{float(small['figure']) / 100:.12g} cur"
    found = _BEFORE.match(text) or _BEHIND.match(text) or _PLAIN.match(text)
    if not found:
        return given
    figure = found["figure"]
    if "," in figure:
        if not _THOUSANDS.fullmatch(figure):
            return given  # 3,50 may be meant either way
        figure = figure.replace(",", "")
    per = (found["per"] or "").replace(" ", "")
    return f"{figure} cur{per}" if per or unit == "cur" else f"{figure} {unit}"


def for_each(given: object) -> str:
    """The amount alone of a text that also says what it is for, "£55 per bulk bag": "£55"; empty for any other."""
    found = _FOR_EACH.match(given) if isinstance(given, str) and len(given) <= LONGEST else None
    return found["amount"].strip() if found else ""


def currency_in(text: str) -> str:
    """The sign of the currency that a text names; empty where it names none."""
    found = _ONE_SIGN.search(text) if len(text) <= LONGEST else None
    return _CURRENCIES.get(found[0].upper(), found[0]) if found else ""


def currencies(design: Known) -> dict[str, list[str]]:
    """The signs of the currencies that amounts of a design name, each with the keys of those amounts."""
    found: dict[str, list[str]] = {}
    for key in sorted(design.values):
        section = key.partition(".")[0]
        if section in ("prices", "costing") or key in ("site.budget", "supply.tariff"):
            for sign in filter(None, (currency_in(str(design.values[key].text)),)):
                found.setdefault(sign, []).append(key)
    return found


def currency_words(design: Known) -> str:
    """What the money of a design is in, for the head of a table."""
    named = currencies(design)
    return next(iter(named)) if len(named) == 1 else "two currencies, added up as they stand" if named else "your currency"
