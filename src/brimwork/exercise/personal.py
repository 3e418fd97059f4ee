"""Numbers of a learner's own: drawn from a code and a key, the same ones every time, fair, and not those that stand elsewhere."""

from __future__ import annotations

import hashlib
import hmac
from collections.abc import Iterator

from brimwork.exercise import bank
from brimwork.exercise.build import of_question
from brimwork.exercise.question import Question
from brimwork.exercise.written import FIRST
from brimwork.units import InputError

ATTEMPTS = 60
_OPEN_KEY = b"brimwork: numbers for study alone"  # no secret: who studies alone has nobody to hide numbers from
_LETTERS = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"


def learner_code(text: str) -> str:
    """A learner's code as it is used: 1 to 16 letters, digits, hyphens or underscores, in capitals. Raises InputError."""
    code = text.strip()
    if not 0 < len(code) <= 16 or not all(character in f"{_LETTERS}-_" for character in code) or code[0] not in _LETTERS:
        shown = "".join(character for character in code[:20] if character.isprintable())
        raise InputError(f"'{shown}' is no learner code: type 1 to 16 letters or digits, such as A07, without spaces and accents")
    return code.upper()


def seeds(key: bytes, *parts: str) -> Iterator[int]:
    """Seeds that follow from a key and some words, without end: numbers of 48 bits that tell nothing about the key."""
    attempt = 0
    while True:
        digest = hmac.new(key, "\0".join((*parts, str(attempt))).encode(), hashlib.sha256).digest()
        yield int.from_bytes(digest[:6], "big") + 2
        attempt += 1


def fair(question: object) -> bool:
    """Whether numbers may be set: the key is marked right, every slip has a diagnosis of its own, and none would be accepted."""
    return not isinstance(question, Question) or not any(of_question(question))


def own_seed(learner: str, name: str) -> int:
    """The seed of a learner's own numbers for a question in a workbook: fair, and with another answer than the numbers that the workbook prints."""
    printed = bank.pose(name, FIRST)
    for count, seed in enumerate(seeds(_OPEN_KEY, learner.upper(), printed.code)):
        drawn = bank.pose(name, seed)
        if count >= ATTEMPTS or fair(drawn) and not _like(drawn, printed):
            return seed
    raise AssertionError


def _like(drawn: object, printed: object) -> bool:
    """Whether an answer could be read off the printed numbers."""
    if not isinstance(drawn, Question) or not isinstance(printed, Question) or not drawn.varies:
        return False
    return abs(drawn.answer - printed.answer) <= 3 * drawn.band(printed.answer)
