"""The glossary: words of the trade, and every letter with its name and units, both from the nomenclature that formulas use.

Every lesson tells the words that it uses: all of them in its first section, and each once more where a question of it has it first.
"""

from __future__ import annotations

import re
from functools import cache

import ipywidgets as widgets

from brimwork import nomenclature, system
from brimwork.design.typed.wording import worded
from brimwork.exercise import bank
from brimwork.letters.balance import OF_BALANCE
from brimwork.letters.design import OF_DESIGN
from brimwork.letters.edges import OF_EDGES
from brimwork.letters.ground import OF_GROUND
from brimwork.letters.loads import OF_LOADS
from brimwork.letters.pipes import OF_PIPES
from brimwork.letters.vessels import OF_VESSELS
from brimwork.letters.water import OF_WATER
from brimwork.notebook import contents, progress
from brimwork.notebook.kept import paragraph
from brimwork.notebook.pages import Shown, table
from brimwork.quantity import Quantity
from brimwork.shown import Markup, escape

# Words that lessons use, with the letter that measures them where there is one.
_WORDS = {
    "apron": ("the ground round the reservoir that is lined too, so that splash runs back", "w_apron"),
    "arboriculturist": ("one who knows trees and looks after them", ""),
    "back-sight": ("the first reading of a staff, on a point whose level is known", "s_first"),
    "batter": ("how far a side leans out for each unit of height", "m_b"),
    "barrow": ("a cart with one wheel, pushed by hand", ""),
    "bench mark": ("a point whose level is known and does not move", "z_bench"),
    "box": ("the upright walls in the pit that the liner lies in and the blocks stand in", ""),
    "bulk density": ("the mass of a heap over all the room it takes, gaps too", "rho_bulk"),
    "bulking": ("soil takes more room once it is dug", "s_swell"),
    "catch area": ("the ground, seen from above, whose rain runs into the reservoir", "A_catch"),
    "check valve": ("a valve that lets water through one way only", ""),
    "contingency": ("what is set aside for what nobody can foresee", "s_cont"),
    "critical depth": ("the depth at which a flow over a flat edge needs the least energy", "y_c"),
    "cur": ("money, in whatever currency you count; a number alone will do", ""),
    "dB(A)": ("decibels as a meter shows them that weighs high and low tones as ears do", ""),
    "dB, decibel": ("how levels of sound are counted: 3 dB more is twice the power", "L_near"),
    "dead water": ("water below the lowest level at which the pump may run", "V_dead"),
    "discharge coefficient": ("the share of the flow worked out from speed and area that really comes", "C_d"),
    "duct": ("a pipe in the ground through which a cord or cable can be drawn", ""),
    "duty flow": ("the flow at which pump and pipe agree", "Q"),
    "film": ("the thin layer of water that clings to a face", "V_film"),
    "fleece": ("a thick felt that keeps stones off the liner", ""),
    "float valve": ("a valve that lets water in when a float sinks", ""),
    "fore-sight": ("a reading of the staff on a point whose level is wanted", "s_next"),
    "head": ("a height of water: how deep it stands over a lip, or how high a pump lifts it", "H"),
    "header": ("a tank at the top that feeds a blade or a cascade", ""),
    "hydraulic radius": ("the area of a stream over its wet edge", "R_h"),
    "kern": ("the part of a base on which a load may stand so that all of the base still presses", ""),
    "liner": ("the watertight sheet that holds the water", ""),
    "lining": ("liner and fleece together: all that lies between ground and water", ""),
    "lip": ("the edge that water runs over", "b"),
    "mains": ("the public supply of electricity or water", ""),
    "Manning value": ("how rough the bed of a channel is", "n_Manning"),
    "margin": ("what stays with the firm, as a share of the price", "s_margin"),
    "mark-up": ("what is added to the cost, as a share of the cost", ""),
    "power factor": ("the share of a motor's current that does work", "k_pf"),
    "programme": ("the jobs in their order, with dates", ""),
    "qualified electrician": ("one who is trained in mains wiring and allowed to do it", ""),
    "rill": ("a narrow open channel with a fall", ""),
    "rim": ("the upper edge of a bowl, all the way round", "d_rim"),
    "running level": ("where the water stands while the pump runs", "h_run"),
    "search for services": ("finding out, before anybody digs, where pipes and cables lie", ""),
    "siphon": ("a full pipe that draws water over a high point by itself", "V_siph"),
    "socket": ("where a plug goes in", ""),
    "staff": ("a long ruler that stands upright, to read levels on", "s_next"),
    "static level": ("where the water stands when the pump is off", "h_static"),
    "sub-base": ("a layer of stone, rolled firm, under what is built", "t_sub"),
    "tipping factor": ("what holds a piece upright, over what tips it", "f_tip"),
    "uplift": ("what water pushes up on a body in it: the weight of the water whose place it takes", ""),
    "usable water": ("what the pump can reach between static level and its limit", "V_use"),
    "velocity head": ("the height from which water falls to get its speed; losses are counted in it", "K"),
    "void block": ("an open plastic crate, nearly all empty, that holds water and bears a load", "V_b"),
    "void fraction": ("the empty share of the whole; the void ratio compares it with the solid", "n_por"),
    "water in transit": ("all water that is up in the feature while the pump runs", "V_tr"),
    "weir coefficient": ("what never changes in the flow over a lip, put into one number", "C_w"),
}
# How lessons write a word where it is not the word itself with or without an "s".
_WRITTEN = {
    "box": r"(?:the|an empty|a reservoir|size the) box\b|\bbox (?:is|inside|from its)",
    "bulking": r"bulk(?:s|ed|ing)",
    "cur": r"cur",
    "dB, decibel": r"dB|decibels?",
    "dB(A)": r"dB\(A\)",
    "margin": r"mark-up and margin|margin (?:on|is|of profit)",
    "siphon": r"siphon(?:s|ed|ing)?",
    "void block": r"void blocks?|blocks (?:and stone|hold|leave)",
    "water in transit": r"(?:water )?in(?:to)? transit",
}
_SUBJECTS: dict[str, tuple[Quantity, ...]] = {
    "Water over edges": OF_EDGES, "Pits, tanks and bowls": OF_VESSELS, "Pipes and pumps": OF_PIPES, "Loads": OF_LOADS, "Reservoir and water balance": OF_BALANCE,
    "Ground, lining, siting, supply": OF_GROUND, "Water itself": OF_WATER, "Checks, time and money": OF_DESIGN,
}  # fmt: skip


def glossary() -> Shown:
    """The glossary: words first, then every letter by subject, folded."""
    words = [(word, _with_us_word(word, said), letter, nomenclature.QUANTITIES[letter].plain_name if letter else "") for word, (said, letter) in _WORDS.items()]
    html = [table(("Word", "What it means", "Letter", "Name of the letter"), words, "Words", words=str)]
    plain = [f"{word}: {said}." for word, (said, _) in _WORDS.items()]
    for subject, rows in _SUBJECTS.items():
        listed = [(row.key, row.name, row.metric or "plain number", row.us or "plain number") for row in sorted(rows, key=lambda row: row.key.lower())]
        html.append(
            Markup(f"<details><summary>{escape(subject)}: {len(rows)} letters</summary>{table(('Letter', 'Name', 'Metric', 'US'), listed, subject)}</details>")
        )
        plain += [subject, *("  ".join(row) for row in listed)]
    return Shown(Markup(Markup("").join(html)), "\n".join(plain))


@cache
def _patterns() -> tuple[tuple[str, re.Pattern], ...]:
    """How to find each word, the longer ones first, since they hold others."""
    longest = sorted(_WORDS, key=len, reverse=True)
    return tuple((word, re.compile(rf"\b(?:{_WRITTEN.get(word, f'{re.escape(word)}s?')})(?![\w-])", re.IGNORECASE)) for word in longest)


def words_of(text: str) -> dict[str, str]:
    """The words of the glossary that stand in a text, each with what it means, in the order of the text."""
    found = []
    for word, pattern in _patterns():
        if first := pattern.search(text):
            found.append((first.start(), word))
            text = pattern.sub(lambda one: "\0" * len(one[0]), text)
    return {word: _WORDS[word][0] for _, word in sorted(found)}


def told_words(question: str, by: str) -> Markup:
    """A line on the words in a question that no question of this lesson before it has had; `by` is what it is kept under. Outside a lesson there is none."""
    fresh = {word: said for word, said in words_of(question).items() if progress.in_a_lesson() and progress.first_said(word, by)}
    said = Markup("; ".join(f"<em>{escape(word)}</em>: {escape(meant)}" for word, meant in fresh.items()))
    return paragraph(Markup(f"<small>{said}.</small>")) if fresh else Markup("")


def _with_us_word(word: str, meant: str) -> str:
    """What a word means, and for those in the US how it is called there where they say another: prose is one text for all."""
    there = worded(word, "US")
    return meant if there == word or system.current() != system.FEET else f"{meant} (in the US: {there})"


def words_of_lesson(workbook: str) -> widgets.HTML:
    """All words of a lesson with what they mean, folded."""
    text = "\n".join([contents.prose(workbook), *(bank.pose(code).text for code in contents.asked_in(workbook))])
    words = words_of(text)
    listed = table(("Word", "What it means"), [(word, _with_us_word(word, words[word])) for word in sorted(words, key=str.lower)], words=str)
    return widgets.HTML(Markup(f"<details><summary>The words of this lesson, and what they mean</summary>{listed}</details>"))
