"""Flesch-Kincaid reading grade of a sentence for learners, its mathematics taken out."""

import re

_MATHEMATICS = re.compile(r"'[^']*\d[^']*'|\S*[\d=*/^+_%|]\S*")
_WORD = re.compile(r"[A-Za-z][A-Za-z'-]*")


def syllables(word: str) -> int:
    """Groups of vowels, less a silent e at the end and the e of most -ed endings."""
    word = re.sub("[^a-z]", "", word.lower())
    count = len(re.findall("[aeiouy]+", word))
    if count > 1 and word.endswith("e") and not re.search("[^aeiouy]le$", word):
        count -= 1
    if count > 1 and re.search("[^tdaeiouy]ed$", word):
        count -= 1
    return max(count, 1)


def grade(text: str) -> float:
    """0.39 words a sentence + 11.8 syllables a word - 15.59 (Kincaid and others, 1975)."""
    plain = _MATHEMATICS.sub(" ", text)
    words = _WORD.findall(plain)
    sentences = [part for part in re.split(r"[.!?:;]+(?:\s|$)", plain) if _WORD.search(part)]
    if not words:
        return 0.0
    return 0.39 * len(words) / len(sentences) + 11.8 * sum(map(syllables, words)) / len(words) - 15.59
