"""Finding a formula by a word: in its name, in what it gives or takes, and in what is said about it and its topic."""

from __future__ import annotations

import difflib
import importlib
import re
from functools import cache

from brimwork.formula import Formula, origin
from brimwork.nomenclature import QUANTITIES
from brimwork.shown import clipped
from brimwork.topics import topics
from brimwork.units import InputError

LONGEST_SEARCHED = 200
PLACES = ("in the name", "in the name of its topic", "in what it gives", "in what it takes", "in what is said about it or its topic")


def search(words: str) -> dict[str, tuple[Formula, ...]]:
    """Formulas in which every one of the words is found, by the place of the word that lies farthest from the name; empty places are left out.

    Names come first that begin with the word, then those that have it later. Raises InputError for more words than anyone searches for.
    """
    if len(words) > LONGEST_SEARCHED:
        raise InputError(f"'{clipped(words)}' has {len(words)} characters: search for a word or two, such as weir")
    patterns = _patterns(words)
    found: dict[str, list[Formula]] = {place: [] for place in PLACES}
    for topic, formulas in topics().items():
        for formula in formulas:
            places = [place for pattern in patterns if (place := _place(pattern, _texts(topic, formula))) is not None]
            if places and len(places) == len(patterns):
                found[PLACES[max(places)]].append(formula)
    found[PLACES[0]].sort(key=lambda formula: min(found.start() for pattern in patterns if (found := pattern.search(formula.name))))
    return {place: tuple(formulas) for place, formulas in found.items() if formulas}


def _patterns(words: str) -> list[re.Pattern]:
    """A letter such as C_d as it stands; words by their beginning, in capitals or not: "Pumps" finds pump and pumping. "Of", "a", "in" say nothing."""
    if words.strip() in QUANTITIES:
        return [re.compile(rf"\b{re.escape(words.strip())}\b")]
    said = words.replace("_", " ").split()
    telling = [word for word in said if len(word) > 2 and word.lower() != "the"] or said
    stems = [word.removesuffix("s") if len(word) > 3 else word for word in telling]
    return [re.compile(rf"(?i)\b{re.escape(stem)}") for stem in stems]


def _place(pattern: re.Pattern, texts: tuple[str, ...]) -> int | None:
    return next((place for place, text in enumerate(texts) if pattern.search(text)), None)


@cache
def _texts(topic: str, formula: Formula) -> tuple[str, ...]:
    """What can be searched of a formula, one text for each of PLACES."""
    gives = f"{formula.result} {formula.quantity.name}"
    takes = "; ".join(f"{letter} {QUANTITIES[letter].name}" for letter in formula.inputs)
    return formula.name, topic.replace("_", " "), gives, takes, f"{formula.remark} {origin(formula)} {about(topic, whole=True)}"


def near(word: str) -> list[str]:
    """Words of the names that are nearly this one, for whoever types one wrongly."""
    return difflib.get_close_matches(word.lower(), _vocabulary(), n=3, cutoff=0.7)


@cache
def _vocabulary() -> tuple[str, ...]:
    formulas = [formula for found in topics().values() for formula in found]
    names = {formula.name for formula in formulas} | {QUANTITIES[letter].name for formula in formulas for letter in (formula.result, *formula.inputs)}
    return tuple(sorted({*re.findall(r"\b[a-z]{4,}\b", " ".join(names))}))


def about(topic: str, whole: bool = False) -> str:
    """What a topic is about, in one sentence, or all that stands at its head."""
    text = importlib.import_module(f"brimwork.topics.{topic}").__doc__ or ""
    return " ".join((text if whole else text.strip().partition("\n\n")[0]).split())


def meaning(formula: Formula) -> str:
    """What it takes, in one line; its name says what it gives: "from length of the lip, head over the lip"."""
    return f"from {', '.join(QUANTITIES[letter].plain_name for letter in formula.inputs)}"
