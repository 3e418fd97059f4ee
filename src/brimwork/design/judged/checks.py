"""All checks of a design, and the findings that they make."""

from __future__ import annotations

from brimwork.design.follows.chain import Chain
from brimwork.design.follows.measured import unbelieved
from brimwork.design.judged.computed_checks import COMPUTED
from brimwork.design.judged.contradictions import contradictions
from brimwork.design.judged.doubt import Doubt
from brimwork.design.judged.findings import COUNTS, FINDING_GRADES, Finding
from brimwork.design.judged.grading import Check, Joined, Judged, answered_check
from brimwork.design.judged.ground_checks import GROUND_CHECKS
from brimwork.design.judged.load_checks import LOAD_CHECKS
from brimwork.design.judged.people_checks import PEOPLE_CHECKS
from brimwork.design.judged.water_checks import WATER_CHECKS
from brimwork.design.typed.asking import meant
from brimwork.design.typed.criteria import CRITERIA
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.limits import Limits
from brimwork.design.typed.plausible import implausible
from brimwork.design.typed.questions import QUESTIONS, Asked
from brimwork.design.typed.reading import Corners, Curve, Field, Several
from brimwork.design.typed.renamed import DROPPED, RENAMED
from brimwork.design.typed.spans import SPANS, UNBOUNDED
from brimwork.design.typed.uneven import uneven
from brimwork.expression import DeclarationError


def _asked_or_joined(question: Asked) -> Judged | Joined:
    return Joined(question, *COMPUTED[question.id]) if question.id in COMPUTED else answered_check(question)


CHECKS: tuple[Check | Judged | Joined, ...] = (*WATER_CHECKS, *LOAD_CHECKS, *GROUND_CHECKS, *PEOPLE_CHECKS, *map(_asked_or_joined, QUESTIONS))
_OF_FILES, _OF_SPANS = "C98", "C99"  # findings that are no checks: what a file says in another way, what a number can be


def left_undeclared() -> str:
    """What a row of the checks or of the values of a design still wants elsewhere, in a line; or nothing."""
    for row in CRITERIA:
        if row.id in (_OF_FILES, _OF_SPANS):
            return f"the check '{row.title}' has the code {row.id}, which findings about the file itself have: take another one"
        if row.limits and not row.unit and row.id not in COUNTS:
            return f"the check {row.id} has no unit: say in COUNTS of design/judged/findings.py what its number counts"
    for section, fields in SECTIONS.items():
        for name, field in fields.items():
            key = f"{section}.{name}"
            if isinstance(field, Field | Several | Curve | Corners) and key not in SPANS and key not in UNBOUNDED:
                return f"the value '{key}' has no span: say in SPANS of design/typed/spans.py what it can be, or in UNBOUNDED why nobody can"
    return ""


if _left := left_undeclared():
    raise DeclarationError(_left)


def numbered(check_id: str) -> Check:
    """The check of a number with that identifier."""
    return next(check for check in CHECKS if check.id == check_id and isinstance(check, Check))


def findings(chain: Chain) -> list[Finding]:
    """Every check graded, and every contradiction; fails first, then marginal, not shown, pass. Grades, values and limits are text; never raises for a value of the design."""
    doubtful = implausible(chain.design)
    laid_aside = tuple(dict.fromkeys((*doubtful, *(row.key for row in unbelieved(chain)))))
    doubt = Doubt(chain, laid_aside) if laid_aside else None
    found = [_graded(check, chain, doubt) for check in CHECKS]
    return sorted(
        [*found, *_doubted(doubtful), *_renamed(chain), *_uneven(chain), *contradictions(chain)], key=lambda finding: FINDING_GRADES.index(finding.grade)
    )


def _renamed(chain: Chain) -> list[Finding]:
    """A line for each key that the file calls otherwise than it is called now, and for each that is asked for no more."""
    gone = [
        Finding(_OF_FILES, "values", f"Asked for no more: {key}", "marginal", DROPPED[key], "",
                "it plays no part, and leaves the file when the design is saved", "keys of this edition", note="")
        for key in chain.design.renamed if key in DROPPED
    ]  # fmt: skip
    return gone + [
        Finding(_OF_FILES, "values", f"Called otherwise now: {meant(RENAMED[key])}", "marginal", f"{key} in the file is {RENAMED[key]} now", "",
                "nothing is lost: it is read under its new name, and written so when the design is saved", "keys of this edition", note="")
        for key in chain.design.renamed if key in RENAMED
    ]  # fmt: skip


def _uneven(chain: Chain) -> list[Finding]:
    """A line for each list that has not one entry for every stone; what needs it waits."""
    remedy = "give one entry for every stone, in their order"
    return [
        Finding(f"{key} uneven", "values that contradict each other", f"Out of step: {meant(key)}", "fail", said, "", f"{remedy}: {key}, or stones.diameters", "counted")
        for key, said in uneven(chain.design).items()
    ]  # fmt: skip


def _doubted(values: dict[str, str]) -> list[Finding]:
    """A finding for each value that can hardly be."""
    remedy = "type it again, or leave it out; until then it lets no check pass"
    return [
        Finding(_OF_SPANS, "values", f"Can it be: {meant(key)}", "marginal", said, "", remedy, f"span: {SPANS[key].why}", results=(), note="")
        for key, said in values.items()
    ]


def limits_of(chain: Chain, check_id: str) -> Limits:
    """The limits that count for the check of a number in this design. Raises Unknown where they hang on a value that is missing."""
    return numbered(check_id).counting(chain)[0]


def _graded(check: Check | Judged | Joined, chain: Chain, doubt: Doubt | None) -> Finding:
    if check.kinds and chain.design.kind not in check.kinds:
        return Finding(check.id, check.group, check.title, "does not apply", f"not to a design of the kind '{chain.design.kind}'", "", "", check.basis)
    return doubt.graded(check.grade) if doubt else check.grade(chain)
