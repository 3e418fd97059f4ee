"""A question in the other system of units. One with numbers follows by itself: its values and units go over, on round numbers, and sentences about units of
its own system stay behind. What is said in words of one system is written here for the other, field by field, by code. Numbers are invented.
"""

from __future__ import annotations

import re
from dataclasses import replace
from functools import lru_cache

from brimwork import system, units
from brimwork.exercise.choices import Choose, FindTheSlip, Order, Tell
from brimwork.exercise.twin_choices import OTHER_CHOICES
from brimwork.exercise.twin_words import OTHER_WORDS
from brimwork.exercise.written import Numeric, Wrong
from brimwork.expression import DeclarationError
from brimwork.units import InputError

_Written = Numeric | Choose | FindTheSlip | Order | Tell
_FIRST_DRAW = 7  # a seed
_MAINS = {"230 V": system.METRES, "120 V": system.FEET}  # the voltage of a socket
_HOLE = re.compile(r"(\{[^{}|]+\|)([^{}|]+)(\|\d)?\}")


def system_of(question: _Written) -> str:
    """The system in which a question is written: "" where it has no units of either, or is about changing one into the other."""
    if isinstance(question, Numeric):
        found = {_MAINS.get(text, system.of_unit(units.parse(text).unit)) for text in question.given.values()} | {system.of_unit(question.unit)}
        if question.code in OTHER_WORDS and len(found - {""}) != 1:  # written for metric readers, whatever stands in it
            found = {system.METRES}
    else:
        told = [question.text, *question.sentences, *_parts(question)]
        found = {other for name in system.SYSTEMS for text in told if system.foreign(text, name) for other in [system.other(name)]}
    found -= {""}
    return found.pop() if len(found) == 1 else ""


def _parts(question: _Written) -> tuple[str, ...]:
    match question:
        case Choose():
            return (question.right, *(text for text, _ in question.wrong))
        case FindTheSlip():
            return tuple(line for line, _ in question.lines)
        case Order():
            return question.steps
        case Tell():
            return question.points
    return ()


def here(question: _Written) -> _Written:
    """A question in the system in use."""
    return _there(question, system.current())


@lru_cache(maxsize=1024)
def _twin(code: str, wanted: str, question: _Kept) -> _Written:
    return _gone_over(question.written, wanted)


class _Kept:
    """A question as a key of the cache: itself, and no other that looks like it."""

    def __init__(self, written: _Written):
        self.written = written

    def __hash__(self) -> int:
        return id(self.written)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Kept) and other.written is self.written


def _there(question: _Written, wanted: str) -> _Written:
    return _twin(question.code, wanted, _Kept(question))


def _gone_over(question: _Written, wanted: str) -> _Written:
    if system_of(question) in ("", wanted):
        return question
    words = {**OTHER_WORDS, **OTHER_CHOICES}.get(question.code, {})
    if not isinstance(question, Numeric):
        return replace(question, **words) if words else question
    twin = replace(
        question,
        given={name: _value(text, wanted) for name, text in question.given.items()},
        unit=system.counterpart(question.unit, wanted),
        close=system.round_there(question.close, wanted) if question.close else "",
        vary={name: _range(ends, wanted) for name, ends in question.vary.items()},
        middle=(*question.middle[:2], system.counterpart(question.middle[2], wanted)) if question.middle else None,
        text=_holes(question.text, wanted),
        solution=tuple(_holes(line, wanted) for line in question.solution),
        wrong=tuple(_wrong(wrong) for wrong in question.wrong if not system.foreign(wrong.feedback, wanted)),
    )
    twin = replace(twin, **words)
    return twin if "given" in words or not twin.varies else replace(twin, given=_clear(twin))


def _wrong(wrong: Wrong) -> Wrong:
    """A wrong way that takes one of the two voltages for granted: the other one."""
    if not isinstance(wrong.equals, str):
        return wrong
    equals, feedback = (
        re.sub(r"\b(?:230|120)(?=\*V| V)", lambda volts: "120" if volts[0] == "230" else "230", text) for text in (wrong.equals, wrong.feedback)
    )
    return replace(wrong, equals=equals, feedback=feedback)


def _clear(twin: Numeric) -> dict[str, str]:
    """First numbers that keep all slips apart, which those that only went over need not do."""
    try:
        return twin.pose(_FIRST_DRAW).numbers
    except (DeclarationError, InputError):
        return twin.given


def _value(text: str, wanted: str) -> str:
    """A value that is given, to three figures in the other unit."""
    if text in _MAINS:
        return next(volts for volts, where in _MAINS.items() if where == wanted)
    reading = units.parse(text)
    unit = system.counterpart(reading.unit, wanted)
    return text if unit == reading.unit else f"{units.number(float(f'{units.convert(reading.value, unit):.3g}'))} {unit}"


def _range(ends: tuple[str, str, str], wanted: str) -> tuple[str, str, str]:
    """A range on round steps of the other unit."""
    low, high, step = (units.parse(text) for text in ends)
    unit = system.counterpart(low.unit, wanted)
    if unit == low.unit:
        return ends
    size = system.round_step(units.convert(step.value, unit))
    shown = (round(units.convert(low.value, unit) / size) * size, round(units.convert(high.value, unit) / size) * size, size)
    return tuple(f"{units.number(float(f'{number:.9g}'))} {unit}" for number in shown)  # type: ignore[return-value]


def _holes(text: str, wanted: str) -> str:
    """A text whose holes show their numbers in the other units."""
    return _HOLE.sub(lambda hole: f"{hole[1]}{system.counterpart(hole[2], wanted)}{hole[3] or ''}}}", text)


def in_each(question: _Written) -> dict[str, _Written]:
    """A question in each system."""
    return {name: _there(question, name) for name in system.SYSTEMS}


def foreign_words(question: _Written, wanted: str, slips: bool = True) -> list[str]:
    """Words of the other system in what a question says, on its first numbers. Without `slips` what is said of unit slips, which name the unit taken, is left out."""
    told = [question.pose(1).text]
    if isinstance(question, Numeric):
        posed = question.pose(1)
        told += [*posed.lines(), *map(str, posed.given.values()), f"1 {posed.unit}"]
        told += question.sentences if slips else ()
    else:
        told += [*question.sentences, *_parts(question), *(question.mend or () if isinstance(question, FindTheSlip) else ())]
    return [word for text in told for word in system.foreign(text, wanted)]
