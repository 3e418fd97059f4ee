"""Pieces of a Typst document: escaped text, tables, equations with a description, drawings."""

from __future__ import annotations

import json
from collections.abc import Sequence

from brimwork import typeset
from brimwork.formula import Working
from brimwork.nomenclature import QUANTITIES
from brimwork.quantity import days

PAPER = {"UK": "a4", "US": "us-letter"}


def typst_words(text: str) -> str:
    """Text exactly as it stands, whatever characters are in it."""
    return f"#{typst_quoted(text)}"


def typst_quoted(text: str) -> str:
    clean = "".join(character if character.isprintable() else " " for character in text)
    return json.dumps(clean, ensure_ascii=False)


def typst_table(columns: str, head: Sequence[str], rows: Sequence[Sequence[str]], size: float = 9, right: Sequence[int] = ()) -> str:
    """A table of plain texts; `columns` as Typst writes widths, such as "auto, 1fr"; `size` of its letters in points; columns of numbers to the `right`."""
    cells = ", ".join(f"[{typst_words(cell)}]" for row in rows for cell in row)
    header = ", ".join(f"[*{typst_words(cell)}*]" for cell in head)
    sides = ", ".join("right" if column in right else "left" for column in range(len(head)))
    listed = f"#table(columns: ({columns}), align: ({sides}), table.header({header}), {cells})"
    return listed if size == 9 else f"#[#show table.cell: set text({size}pt)\n#set table(inset: (x: 4pt, y: 2.3pt))\n{listed}]"


def together(text: str) -> str:
    """What must stay on one page."""
    return f"#block(breakable: false)[\n{text}\n]"


def both(letter: str, value: float, region: str) -> str:
    """A value in both unit systems, the region's first."""
    row = QUANTITIES[letter]
    metric, us = row.metric_text(value), row.us_text(value)
    return days(row.both(value)) if region != "US" or metric == us else f"{us} ({metric})"


def typst_working(worked: Working) -> str:
    """A working as one equation of two lines: formula, then numbers and result; its plain text is the description."""
    plain = "; ".join(typeset.working(worked, typeset.PLAIN))
    first, *put_in, last = (line.partition(" = ")[2] for line in typeset.working(worked, typeset.TYPST, turning=False))
    left = typeset.write_tree(worked.formula.left, typeset.TYPST)
    lines = f"{left} &= {first} \\ &= {' = '.join([*put_in, last])}"
    return f"#math.equation(block: true, alt: {typst_quoted(plain)}, $ {lines} $)"


def drawing(file: str, alt: str, caption: str, width: float) -> str:
    """A drawing `width` mm wide, so that the scale it names is true on paper, with its caption under it; `alt` says it whole to those who do not see it."""
    return f'#block(breakable: false)[#figure(image("{file}", width: {width:g}mm, alt: {typst_quoted(alt)}))\n{typst_words(caption)}]'


def head(title: str, region: str, foot: str) -> str:
    """Page, fonts and headings."""
    return f"""#set document(title: {typst_quoted(title)}, date: auto)
#set page(paper: "{PAPER[region]}", margin: (x: 18mm, top: 18mm, bottom: 20mm), footer: context [
  #set text(8pt, fill: luma(90))
  {typst_words(foot)} #h(1fr) #counter(page).display("1 of 1", both: true)])
#set text(font: "Libertinus Serif", size: 10pt, lang: "en")
#set table(stroke: (x, y) => (bottom: 0.4pt + luma(190)), inset: (x: 4pt, y: 3.2pt), align: left + top)
#show table.cell: set text(9pt)
#set table.cell(breakable: false)
#set par(leading: 0.55em)
#show heading.where(level: 1): set text(17pt)
#show heading.where(level: 2): it => block(above: 1.4em, below: 0.7em, text(13pt, it.body))
#show heading.where(level: 3): it => block(above: 1.1em, below: 0.5em, text(10.5pt, it.body))
#set math.equation(numbering: none)
#show math.equation.where(block: true): set align(left)
#show math.equation.where(block: true): set block(above: 0.7em, below: 0.9em)
#show math.equation.where(block: true): pad.with(left: 6mm)
"""
