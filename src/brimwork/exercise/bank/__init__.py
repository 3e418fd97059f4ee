"""Hand-written questions, one file a group of topics; found by listing the folder, nothing to register.

To add one, write a few lines into `QUESTIONS` of a file here and run `python -m brimwork.exercise.build`.
"""

from __future__ import annotations

import importlib
import pkgutil
from functools import cache

from brimwork import topics
from brimwork.exercise.choices import Choice, Choose, FindTheSlip, Order, Sequence, Tell, Telling
from brimwork.exercise.question import Question, ask
from brimwork.exercise.written import Numeric
from brimwork.formula import nearest
from brimwork.units import InputError

Written = Numeric | Choose | FindTheSlip | Order | Tell
Posed = Question | Choice | Sequence | Telling


@cache
def questions() -> dict[str, Written]:
    """Every hand-written question by its code. Raises ValueError when two carry the same code."""
    table: dict[str, Written] = {}
    for module in sorted(module.name for module in pkgutil.iter_modules(__path__)):
        for question in importlib.import_module(f"{__name__}.{module}").QUESTIONS:
            if question.code in table:
                raise ValueError(f"two questions have the code {question.code} (the second in {module})")
            table[question.code] = question
    return table


def pose(name: str, seed: int = 1) -> Posed:
    """The question of that code ("T04.1"), or one on the formula of that name; the same seed gives the same numbers. Raises InputError."""
    written = {code.lower(): question for code, question in questions().items()}
    wanted = name.strip().lower()
    if wanted in written:
        return written[wanted].pose(seed)
    try:
        formula = topics.find(name)
    except InputError:
        raise InputError(f"there is no question or formula '{name}'.{nearest(wanted, [*written, *topics.formulas()])} Type a code such as T04.1") from None
    try:
        return ask(formula, seed)
    except ValueError as error:
        raise InputError(str(error)) from None
