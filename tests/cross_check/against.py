"""The product's numbers and verdicts laid against those of the cross-check; each difference tells the design, the values and both numbers."""

from dataclasses import dataclass

from invented import file
from plain_design import Plain
from truth import work
from verdicts import judged

RESULTS, DUTY = 0.005, 0.015  # the tolerances of the results; of duty points, which four friction laws leave apart
NOISE = 1e-9  # what counts as nothing beside a difference of two numbers of everyday size
LOOSE = {"duty_flow", "duty_head", "duty_speed", "flow_ratio"}
DIFFERENCE_OF = {"throttle": "head_wanted"}  # what is left of two nearly equal heads is held to half a per cent of the head


@dataclass(frozen=True)
class Apart:
    """One difference: what, where, both numbers."""

    what: str
    kind: str
    product: object
    truth: object
    design: str
    why: str = ""

    def __str__(self) -> str:
        return f"{self.kind}: {self.what}: product {self.product}, cross-check {self.truth}. {self.why}\n{self.design}"


def tolerance(name: str) -> float:
    return DUTY if name in LOOSE else RESULTS


def results_apart(text: str, told) -> tuple[list[Apart], int]:
    """Where the results differ, and how many were compared. A number that one side has and the other refuses counts as a difference too."""
    worked = work(Plain(text))
    apart, compared = [], 0
    for name, value in told.results.items():
        if name not in worked.r:
            why = worked.why.get(name, ("",))
            if why[0] == "impossible" and not (value == 0 and "below zero" in why[1]):  # nothing left of it is told as nothing
                apart.append(Apart(name, worked.plain.kind, value, "no such number", text, worked.why[name][1]))
            continue
        compared += 1
        truth = worked.r[name]
        if value == truth:
            continue
        scale = worked.r.get(DIFFERENCE_OF.get(name, name), truth)
        if not abs(value - truth) <= max(tolerance(name) * abs(scale), NOISE):
            apart.append(Apart(name, worked.plain.kind, value, truth, text))
    for name, why in told.refused.items():
        compared += 1
        if name in worked.r:
            apart.append(Apart(name, worked.plain.kind, "refused", worked.r[name], text, why))
    return apart, compared


def text_of(drawn: tuple[dict, str], kind: str) -> str:
    return file(drawn[0], kind, drawn[1])


HIDDEN = {("pass", "fail"), ("does not apply", "fail")}  # what the product says, what is true: somebody would be hurt
SOFTER = {("pass", "marginal"), ("does not apply", "marginal"), ("marginal", "fail"), ("pass", "unknown")}


def verdicts_apart(text: str, told, which=HIDDEN, ids=None) -> list[Apart]:
    """Checks where the product grades kinder than the cross-check, in one of the ways of `which`."""
    worked = work(Plain(text))
    found, apart = told.findings, []
    for name, verdict in judged(worked).items():
        if ids is not None and name not in ids:
            continue
        finding = found.get(name)
        grade = finding.grade if finding else "does not apply"
        if verdict.how.startswith("cannot be") and any("." in one.id and one.grade == "fail" for one in found.values()):
            continue  # there is no such body, and a finding says so
        if (grade, verdict.grade) in which:
            said = f"{grade} ({finding.value})" if finding else "no such check"
            apart.append(Apart(name, worked.plain.kind, said, f"{verdict.grade} ({verdict.number:.4g})", text, verdict.how))
    return apart
