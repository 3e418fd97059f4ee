"""More questions of a topic, one at a time: those that a workbook names, and those of one's own that stand in the folder of the class."""

from __future__ import annotations

import ipywidgets as widgets
from IPython.display import display

from brimwork.exercise import bank, own_questions
from brimwork.notebook.kept import Keeper, words_here
from brimwork.notebook.pages import say
from brimwork.notebook.part import Part
from brimwork.notebook.practising import QUIET, alert, exercise, paragraph
from brimwork.shown import escape
from brimwork.units import InputError

_SHOWN = 76  # characters of a question in the list


class Further:
    """A list of questions; the one that is chosen is shown below it, with hints and fresh numbers."""

    def __init__(self, codes: tuple[str, ...], record: str | None):
        topics = {code.partition(".")[0] for code in codes}
        own = [code for code in own_questions.codes() if code.partition(".")[0] in topics and code not in codes]
        options = [("choose a question", ""), *((_short(code, self._seed(code, record)), code) for code in (*codes, *own))]
        self.record, self.shown = record, widgets.VBox([])
        self.chosen = widgets.Dropdown(options=options, value="", description="Question", style=QUIET, layout={"width": "98%", "max_width": "60em"})
        self.chosen.observe(lambda _: self.show(), "value")
        faults = [widgets.HTML(alert(f"{fault}.")) for fault in own_questions.own_faults()]
        told = f"{len(codes)} questions{f', and {len(own)} of your class' if own else ''}. Hints and fresh numbers come with each."
        self.widget = Part([widgets.HTML(paragraph(escape(told))), *faults, self.chosen, self.shown], "\n".join(bank.pose(code).text for code in codes))

    @staticmethod
    def _seed(code: str, record: str | None) -> int:
        """On which numbers the question will stand: those that were taken last, so that the list names no others."""
        entry = Keeper(record).kept(code, 1, but="skipped", fresh=True)
        return entry["seed"] if entry else 1

    def show(self) -> None:
        self.shown.children = [exercise(self.chosen.value, 1, self.record).widget] if self.chosen.value else []


def _short(code: str, seed: int) -> str:
    text = " ".join(bank.pose(code, seed).text.split())
    cut = text[:_SHOWN].rpartition(" ")[0]
    text, cut = words_here(text), words_here(cut)
    return f"{code}: {text}" if len(text) <= _SHOWN else f"{code}: {cut} …"


def more_questions(*codes: str, record: str | None = "answers.json") -> None:
    """Further questions by code, one at a time, and those of the class on the same topics: more_questions("T10.3", "T10.5")."""
    try:
        display(Further(codes, record).widget)
    except InputError as error:
        display(say(error))
