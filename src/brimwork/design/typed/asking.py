"""Why a number is not there: the values that are missing, by what they mean, or what was refused. Keys of the file stand beside the words, never in them."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeVar

from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.reading import OneOf
from brimwork.units import InputError, NoValue

Number = TypeVar("Number")
NAMED = 4  # missing values that are named
_KEY = re.compile(r"\b([a-z_]+)\.([a-z_0-9]+)\b")
ZERO = "a value that must be more than nothing is zero, or one is far too large"


@dataclass(frozen=True)
class Refused:
    """A number that is not there: the keys of the design that are missing, or else what was refused, in words."""

    refusal: str
    needs: tuple[str, ...] = ()

    @property
    def why(self) -> str:
        """Why it is not there, in words."""
        return f"needs {asked(*self.needs)}" if self.needs else self.refusal


def tried(work: Callable[[], Number]) -> Number | Refused:
    """What `work` gives, or why it gives nothing. The one place where what can go wrong with a design's numbers is caught."""
    try:
        return work()
    except Unknown as missing:
        return Refused("", missing.keys)
    except InputError as refused:
        return Refused(_plainly(refused))
    except ArithmeticError:
        return Refused(ZERO)


def asked(*keys: str) -> str:
    """What is missing, by what it means: "power taken in"; of many the first ones."""
    named = ", ".join(meant(key) for key in keys[:NAMED])
    return named + (f", and {len(keys) - NAMED} more" if len(keys) > NAMED else "")


def offered(key: str) -> str:
    """A word or an answer that is missing, with those that it can be: an answer, one of "..." or "..."."""
    section, _, name = key.partition(".")
    field = SECTIONS[section][name]
    if not isinstance(field, OneOf):
        return asked(key)
    *first, last = (f'"{option}"' for option in field.options)
    return f"{'an answer' if section == 'answers' else 'a word'}, one of {', '.join(first)} or {last}"


def reason(missing: Unknown | InputError) -> str:
    """Why a number is not there: what it needs, or what was refused."""
    return f"needs {asked(*missing.keys)}" if isinstance(missing, Unknown) else without_keys(_plainly(missing))


def _plainly(refused: InputError) -> str:
    """What was refused, without the letters of a formula."""
    return refused.words if isinstance(refused, NoValue) else str(refused)


def keys_in(text: str) -> tuple[str, ...]:
    """The keys of the file that a sentence names, each once."""
    return tuple(dict.fromkeys(found[0] for found in _KEY.finditer(text) if _is_key(found)))


def without_keys(text: str, name: Callable[[str], str] | None = None) -> str:
    """A sentence for those who see boxes and not the file: each key by what stands beside its box, or by what it means."""
    say = name or meant
    return _KEY.sub(lambda found: f"“{say(found[0])}”" if _is_key(found) else found[0], text)


def _is_key(found: re.Match[str]) -> bool:
    return found[2] in SECTIONS.get(found[1], ())


def meant(key: str) -> str:
    """What a value of the design is, in words that stand alone."""
    section, _, name = key.partition(".")
    said = SECTIONS[section][name].name
    return f'the answer to "{said}"' if section == "answers" else said
