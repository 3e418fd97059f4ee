"""What to do instead: the sentence of a slip says it, or it follows from the working's tree, where the slip is a way found there."""

from __future__ import annotations

import ast
import re

from brimwork.exercise.question import KnownWay, Question
from brimwork.exercise.ways import Way

_VERBS = (
    *("add", "allow", "ask", "begin", "bring", "change", "check", "compare", "convert", "count", "divide", "double", "draw", "find", "give", "go", "halve"),
    *(
        "keep",
        "leave",
        "let",
        "look",
        "make",
        "measure",
        "multiply",
        "pair",
        "put",
        "read",
        "round",
        "set",
        "share",
        "split",
        "square",
        "start",
        "stop",
        "subtract",
    ),
    *("swap", "take", "treat", "turn", "undo", "use", "wait", "weigh", "work", "do not"),
)
_BIDS = re.compile(rf"(?:^|[.:;,] )(?i:(?:so|and|then|but|first|for this one) )?(?i:{'|'.join(_VERBS)})\b")


def bids(sentence: str) -> bool:
    """Whether a sentence tells the learner to do something."""
    return bool(_BIDS.search(sentence))


def advised(question: Question, slip: KnownWay) -> str:
    """The sentence of a slip; where it says only what was done, what to do instead is taken from the way that gives the same number."""
    if bids(slip.feedback):
        return slip.feedback
    for cause in question.causes:
        way = cause.way
        if way.parts and way.likely and way.kind in ("left out", "turned round", "power") and abs(cause.number - slip.number) <= 1e-6 * abs(slip.number):
            if advice := _advice(question, way):
                return f"{slip.feedback} {advice[0].upper()}{advice[1:]}"
    return f"{slip.feedback} Turn it round." if slip.feedback.startswith("Upside down") or "changed places" in slip.feedback else slip.feedback


def _advice(question: Question, way: Way) -> str | None:
    """What a way says after its colon, with the part that it is about in the place of "it"; nothing where that part has no short name."""
    advice = way.text.rpartition(": ")[2]
    if isinstance(way.parts[0], ast.Constant):  # a plain number has its words in the sentence already
        named = re.search(r"\bthe (\S+?)(?: in upside down)?:", way.text)
        what = named[1] if named else ""
    else:
        what = question.said(way.parts[0])
    if not what or "one part" in what or "{" in advice:
        return None
    return re.sub(r"\bit\b", lambda _: what, advice)
