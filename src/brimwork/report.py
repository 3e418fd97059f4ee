"""What a design comes to, as numbers: its results and its graded checks, for Python and for JSON."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import dataclass

from brimwork import typeset
from brimwork.design.follows.chain import COMING, Chain, Found
from brimwork.design.follows.features import NUMBERS, chain_of
from brimwork.design.judged.checks import findings
from brimwork.design.judged.findings import FINDING_GRADES, Finding, graded
from brimwork.design.typed.asking import Refused, tried
from brimwork.design.typed.design import Design
from brimwork.nomenclature import QUANTITIES
from brimwork.units import convert

REPORT_FORMAT = 1
Ends = tuple[float, float]


@dataclass(frozen=True)
class Result:
    """One number of a design.

    code        its name in the program, such as "duty_flow"; stays the same
    name        what it is
    letter      its letter in the nomenclature
    value       in `unit`, SI; None where it cannot be worked out
    text        the value in metric and in US units
    working     the formula with the numbers put in, line by line; or in words how it was found
    notes       what must be said about it: outside a tested range, say
    why, needs  why there is no value, and the keys of the design file that are missing
    """

    code: str
    name: str
    letter: str = ""
    value: float | None = None
    unit: str = ""
    text: str = ""
    formula: str = ""
    working: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    why: str = ""
    needs: tuple[str, ...] = ()


@dataclass(frozen=True)
class Judgement:
    """One check of a design.

    code, group, title      such as "C03", "water"; the code stays the same
    grade                   "fail", "marginal", "not shown", "pass" or "does not apply"
    value, unit             the number that was graded, in that unit; None for what a person answers or nobody has given
    passes, marginal        lowest and highest value of that grade, in the same unit; inf for no limit, None where no number is graded
    shown, limit            value and limits as they are printed
    remedy, basis, note     what to change, on what the limits rest, what else to say
    results                 codes of the results behind it
    needs                   keys of the design file that are missing, where it is not shown
    """

    code: str
    group: str
    title: str
    grade: str
    value: float | None
    unit: str
    passes: Ends | None
    marginal: Ends | None
    shown: str
    limit: str
    remedy: str
    basis: str
    note: str
    results: tuple[str, ...]
    needs: tuple[str, ...]


def results_of(chain: Chain) -> list[Result]:
    """Every number of a design, in the order of their codes."""
    return [_result(chain, code) for code in chain.names()]


def _result(chain: Chain, code: str) -> Result:
    got = tried(lambda: chain.working(code))
    plain = code.replace("_", " ")
    if isinstance(got, Refused):
        return Result(code, NUMBERS.get(code, plain), why=got.why, needs=got.needs)
    row = QUANTITIES[got.letter]
    name = NUMBERS.get(code, row.short_name)
    if not math.isfinite(got.result):  # nothing to compare with, such as foam where there is none
        return Result(code, name, got.letter, unit=row.si, why=got.how if isinstance(got, Found) else "no finite value")
    told = Result(code, name, got.letter, got.result, row.si, row.both(got.result, 4))
    if isinstance(got, Found):
        return _with(told, "", (got.how,), ())
    return _with(told, got.formula.name, tuple(typeset.working(got, typeset.PLAIN)), tuple(got.notes))


def _with(told: Result, formula: str, working: tuple[str, ...], notes: tuple[str, ...]) -> Result:
    return Result(told.code, told.name, told.letter, told.value, told.unit, told.text, formula, working, notes)


def judgements_of(chain: Chain) -> list[Judgement]:
    """Every check of a design, fails first, in the words of its region."""
    return [_judgement(finding) for finding in graded(findings(chain), chain.design.region)]


def _judgement(finding: Finding) -> Judgement:
    limits, unit = finding.limits, finding.unit
    return Judgement(
        finding.id,
        finding.group,
        finding.title,
        finding.grade,
        None if finding.number is None else convert(finding.number, unit),
        unit,
        _ends(limits.good, unit) if limits else None,
        _ends(limits.fair, unit) if limits else None,
        finding.value,
        finding.limit,
        finding.remedy,
        finding.basis,
        finding.note,
        tuple(dict.fromkeys(name.removeprefix(COMING) for name in finding.results)),
        finding.needs,
    )


def _ends(span: Ends, unit: str) -> Ends:
    low, high = (end if math.isinf(end) else convert(end, unit) for end in span)
    return low, high


def design_as_json(design: Design) -> dict:
    """A design's values, results and findings as `brimwork pack --json` prints them; the guide says what each key holds."""
    chain = chain_of(design)
    judged = judgements_of(chain)
    counts = Counter(one.grade for one in judged)
    return {
        "format": REPORT_FORMAT,
        "design": {"title": design.title, "kind": design.kind, "region": design.region},
        "given": {key: {"text": given.text, "basis": given.basis} for key, given in design.values.items()},
        "results": [_plain(vars(one)) for one in results_of(chain)],
        "findings": [_plain(vars(one)) for one in judged],
        "grades": {grade: counts[grade] for grade in FINDING_GRADES},
    }


def _plain(row: dict) -> dict:
    """With lists for tuples, and None for a limit that there is not: JSON has no infinity."""
    return {key: [_finite(one) for one in value] if isinstance(value, tuple) else _finite(value) for key, value in row.items()}


def _finite(value: object) -> object:
    return None if isinstance(value, float) and not math.isfinite(value) else value
