"""A design held against a brief, by the same rules as a class's designs are marked; and the pack printed from it."""

from __future__ import annotations

import re
from pathlib import Path

import ipywidgets as widgets
from IPython.display import display

from brimwork import files, system
from brimwork.classroom import designs
from brimwork.design.typed import file
from brimwork.notebook.carrying import MINE
from brimwork.notebook.pages import say, table
from brimwork.notebook.part import Part
from brimwork.notebook.practising import alert, button, paragraph, status
from brimwork.notebook.to_keep import link_to
from brimwork.quantity import days
from brimwork.shown import Markup, escape
from brimwork.units import InputError


class Briefed:
    """What the brief wants and what the design has, row by row; and a button for the pack. The design is read afresh on every press."""

    def __init__(self, brief: str, mine: str):
        self.wanted, self.mine = designs.brief(Path(brief)), Path(mine)
        self.shown, self.said = widgets.HTML(), widgets.HTML()
        again = button("Hold my design against the brief", "read the design again and go through the brief", self.compare)
        pack = button("Print my pack", "write the pack to build from, as a PDF beside the design", self.print)
        self.compare()
        self.widget = Part([again, self.shown, pack, self.said], "Your design against the brief, row by row.")

    def compare(self) -> None:
        try:
            raw = files.read_bounded(self.mine, file.LARGEST_FILE)
        except FileNotFoundError:
            self.shown.value = paragraph(
                escape(f"There is no design {self.mine} yet. Put a value into your design above, or in any earlier workbook, and it begins.")
            )
            return
        except (OSError, ValueError) as error:
            self.shown.value = alert(f"{self.mine} cannot be read: {error}.")
            return
        found = designs.marked(raw, self.wanted)
        if "reason" in found:
            self.shown.value = alert(f"{found['reason']}.")
            return
        met = sum(row["mark"] == "yes" for row in found["rows"])
        rows = [("✓" if row["mark"] == "yes" else "✗", *(_here(row[part]) for part in ("what", "wanted", "found"))) for row in found["rows"]]
        rows += [("✎", one, "a person judges this", "") for one in found["rubric"]]
        head = status(escape(f"{met} of {len(found['rows'])} rows of the brief are met."))
        self.shown.value = Markup(f"{head}{table(('', 'what', 'wanted', 'yours'), rows, 'Your design against the brief')}")

    def print(self) -> None:
        from brimwork.pack.document import write_pack  # loads the printer, which nothing else here needs

        paper = self.mine.with_suffix(".pdf")
        try:
            write_pack(file.load_design(self.mine), paper, replace=True)
        except (InputError, OSError) as error:
            self.said.value = alert(f"{error}.")
            return
        self.said.value = status(
            Markup(f"✓ Printed: {link_to(paper)}, beside your design {link_to(self.mine)}. A failing safety check stands on its first page.")
        )


_AMOUNT = re.compile(r"-?\d+(?:\.\d+)? [A-Za-z][\w/]*(?: per [a-z]+)?")


def _here(text: str) -> str:
    """What a brief wants, or a design has, with its amounts in the units that were chosen."""
    return _AMOUNT.sub(lambda found: _amount(found[0]), system.named_here(text))


def _amount(text: str) -> str:
    try:
        return days(system.in_chosen(text, 3))
    except InputError:
        return text  # of something that is no quantity


def brief_met(brief: str = "briefs/courtyard.toml", mine: str = MINE) -> None:
    """Your design against a brief, row by row, and its pack: brief_met("briefs/courtyard.toml")."""
    try:
        display(Briefed(brief, mine).widget)
    except InputError as error:
        display(say(error))
