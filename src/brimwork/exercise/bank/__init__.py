"""Hand-written questions, one file a group of topics; found by listing the folder, nothing to register.

To add one, write a few lines into `QUESTIONS` of a file here and run `python -m brimwork.exercise.build`.
"""

from __future__ import annotations

import importlib
import pkgutil
import traceback
from functools import cache
from pathlib import Path

from brimwork import topics
from brimwork.exercise import twins
from brimwork.exercise.choices import Choice, Choose, FindTheSlip, Order, Sequence, Tell, Telling
from brimwork.exercise.question import Question, ask, ask_on
from brimwork.exercise.written import Numeric
from brimwork.expression import DeclarationError
from brimwork.spellings import nearest
from brimwork.units import InputError

Written = Numeric | Choose | FindTheSlip | Order | Tell
Posed = Question | Choice | Sequence | Telling
_own: dict[str, Written] = {}  # questions of one's own that are in use, by code


@cache
def questions() -> dict[str, Written]:
    """Every hand-written question by its code. Raises DeclarationError, a line for each file that cannot be read and each code that stands twice."""
    table: dict[str, Written] = {}
    stands: dict[str, str] = {}
    faults = []
    for module in sorted(module.name for module in pkgutil.iter_modules(__path__)):
        try:
            declared = importlib.import_module(f"{__name__}.{module}").QUESTIONS
        except Exception as error:  # whatever may stand in a file that somebody has just written
            faults.append(_unreadable(module, error))
            continue
        for question in declared:
            if question.code in table:
                faults.append(_twice(question.code, stands[question.code], module))
            table[question.code], stands[question.code] = question, module
    if faults:
        raise DeclarationError("\n".join(faults))
    return table


def every_question() -> dict[str, Written]:
    """The questions of the bank, and those of one's own that are in use."""
    return {**questions(), **_own}


def use_own(given: dict[str, Written]) -> None:
    """Use these questions of one's own, read by `own_questions`, instead of those before."""
    _own.clear()
    _own.update(given)
    _givens.cache_clear()


def _unreadable(module: str, error: Exception) -> str:
    """Where in a file of questions something is wrong, and what."""
    if isinstance(error, SyntaxError):
        return f"{Path(error.filename or module).name}, line {error.lineno}: {error.msg}"
    lines = [frame.lineno for frame in traceback.extract_tb(error.__traceback__) if Path(frame.filename).stem == module]
    return f"{module}.py{f', line {lines[-1]}' if lines else ''}: {error}"


def _twice(code: str, first: str, second: str) -> str:
    where = f"twice in {first}.py" if first == second else f"in {first}.py and in {second}.py"
    return f"{code}: this code stands {where}: give one of the two questions another code"


def formulas_asked_for(name: str) -> tuple[str, ...]:
    """The formulas that a question asks for: those that it names, or the formula whose name it is."""
    declared = questions().get(name)
    return (topics.find(name).name,) if declared is None else declared.uses


def pose(name: str, seed: int = 1) -> Posed:
    """The question of that code ("T04.1"), or one on the formula of that name; the same seed gives the same numbers. Raises InputError."""
    written = {code.lower(): question for code, question in every_question().items()}
    wanted = name.strip().lower()
    if wanted in written:
        return twins.here(written[wanted]).pose(seed)
    try:
        formula = topics.find(name)
    except InputError:
        raise InputError(f"there is no question or formula '{name}'.{nearest(wanted, [*written, *topics.formulas()])} Type a code such as T04.1") from None
    try:
        return ask(formula, seed)
    except ValueError as error:
        raise InputError(str(error)) from None


def pose_on(name: str, seed: int, numbers: dict[str, str]) -> Posed:
    """The question on values as they were once written out, whatever numbers its seed draws today; one without values is posed by its seed.

    Raises InputError for values that are not those of the question.
    """
    code, given = _givens(name)
    if not given:
        return pose(name, seed)
    if {*given} != numbers.keys():
        raise InputError(f"'{code}' takes {', '.join(given)}, and not {', '.join(numbers) or 'nothing'}")
    declared = every_question().get(code)
    try:
        own = twins.here(declared) if declared else None
        return own.pose_on(seed, numbers) if isinstance(own, Numeric) else ask_on(topics.find(code), seed, numbers)
    except (DeclarationError, ArithmeticError, ValueError) as error:
        raise InputError(f"'{code}' has no answer on these values: {error}") from None


@cache
def _givens(name: str) -> tuple[str, tuple[str, ...]]:
    """The code of a question, and the names of the values that it gives."""
    found = pose(name)
    return found.code, tuple(found.given) if isinstance(found, Question) else ()
