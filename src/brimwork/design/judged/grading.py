"""How a check is graded: a number against limits, a word of the design, or both with the worse counting."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from brimwork.design.follows.chain import Chain
from brimwork.design.follows.missing import missing
from brimwork.design.follows.together import overlap
from brimwork.design.judged.findings import FINDING_GRADES, Finding
from brimwork.design.typed.asking import Refused, asked, offered, tried
from brimwork.design.typed.criteria import only_tighter
from brimwork.design.typed.limits import Criterion, Limits
from brimwork.design.typed.questions import Asked
from brimwork.design.typed.telling import INFINITE, told

UNSHOWN = "not shown"


class _Row:
    """What a row of the checks says of itself, from what it asks."""

    criterion: Criterion

    id = property(lambda self: self.criterion.id)
    group = property(lambda self: self.criterion.group)
    title = property(lambda self: self.criterion.title)
    unit = property(lambda self: self.criterion.unit)
    basis = property(lambda self: self.criterion.basis)
    kinds = property(lambda self: self.criterion.kinds)


@dataclass(frozen=True)
class Check(_Row):
    """A check of a number: `value` of the chain against the limits of its criterion, or `limits` where they hang on the design."""

    criterion: Criterion
    value: Callable[[Chain], float]
    remedy: str
    results: tuple[str, ...] = ()
    note: Callable[[Chain], str] = lambda chain: ""
    limits: Callable[[Chain], Limits] | None = None
    word: Callable[[Chain], str] | None = None  # what somebody says was done about it, and no number shows: a fail is then partly met, never a pass
    instead: tuple[str, ...] = ()  # the key of that answer, where it stands for the number too

    def grade(self, chain: Chain) -> Finding:
        got = tried(lambda: (self.value(chain), *self.counting(chain)))
        if isinstance(got, Refused) and self.instead and self.word and (said := self.word(chain)):
            return self._finding("marginal", "not worked out here", "", note=f"by your answer: {said}")
        if isinstance(got, Refused) and got.needs:
            of_limits = missing(chain, self.counting) if self.limits else ()
            keys = tuple(dict.fromkeys((*got.needs, *missing(chain, self.value), *of_limits, *self.instead)))
            return self._finding(UNSHOWN, f"needs {asked(*keys)}", "", note="", needs=keys)
        if isinstance(got, Refused):
            return self._finding("fail", "cannot be worked out", "", note=got.why)
        value, limits, whose = got
        if value == INFINITE:
            return self._finding("does not apply", "nothing to compare with", "", note=self._noted(chain))
        region = chain.design.region
        text = limits.text(self.unit, region) + (f" ({whose})" if whose else "")
        grade, note = limits.grade(value), self._noted(chain)
        if grade == "fail" and self.word and (said := self.word(chain)):
            grade, note = "marginal", f"by your answer: {said}{f'; {note}' if note else ''}"
        return self._finding(grade, told(value, self.unit, region), text, note, number=value, unit=self.unit, limits=limits)

    def _noted(self, chain: Chain) -> str:
        """What is noted beside the value; nothing where the note itself needs what nobody gave."""
        said = tried(lambda: self.note(chain))
        return "" if isinstance(said, Refused) else said

    def counting(self, chain: Chain) -> tuple[Limits, str]:
        """The limits that count, and in words whose they are where they are not the usual ones. Raises Unknown.

        A design sets its own, but where somebody's safety rests on a check only tighter ones than the usual.
        """
        given = chain.design.values.get(f"limits.{self.id}")
        if not given:
            return self._usual(chain), ""
        own = Limits(*given.value)
        if not only_tighter(self.id, self.group):
            return own, "set by this design"
        tighter = own.within(self._usual(chain))
        return tighter, "set by this design" if tighter == own else "this design would set wider ones: they only count where they are tighter"

    def _usual(self, chain: Chain) -> Limits:
        if self.limits:
            return self.limits(chain)
        assert self.criterion.limits, f"{self.id} has no limits: give its criterion some, or limits= where they hang on the design"
        return self.criterion.limits

    def _finding(self, grade: str, value: str, limit: str, note: str, needs: tuple[str, ...] = (), **number: Any) -> Finding:
        remedy = self.remedy if grade in ("fail", "marginal") else ""
        return Finding(self.id, self.group, self.title, grade, value, limit, remedy, self.basis, self.results, note, needs, **number)


@dataclass(frozen=True)
class Judged(_Row):
    """A check that a person answers: the words of one key of the design, graded by `answers`, which may look at the rest of the design."""

    criterion: Criterion
    key: str
    answers: Callable[[Chain, object], tuple[str, str]]
    remedy: str

    def grade(self, chain: Chain) -> Finding:
        got = tried(lambda: self.answers(chain, chain.design[self.key]))
        needs: tuple[str, ...] = ()
        if isinstance(got, Refused):
            grade, value, needs = UNSHOWN, f"needs {offered(self.key)}" if got.needs == (self.key,) else got.why, got.needs
        else:
            grade, value = got
        remedy = self.remedy if grade in ("fail", "marginal") else ""
        return Finding(self.id, self.group, self.title, grade, value, "", remedy, self.basis, needs=needs)


@dataclass(frozen=True)
class Computed:
    """What was computed of a check that a person answers too: its grade, value and limit as text, and what to note."""

    grade: str
    value: str
    limit: str = ""
    note: str = ""
    needs: tuple[str, ...] = ()


@dataclass(frozen=True)
class Joined:
    """A check of which a part is computed and a part is answered by a person: the worse of the two counts, and one that fails needs no other.

    With `instead` the answer is only wanted where nothing can be computed; an answer that is worse than the number counts all the same.
    """

    question: Asked
    number: Callable[[Chain], Computed]
    results: tuple[str, ...] = ()
    instead: bool = False

    id = property(lambda self: self.question.id)
    group = property(lambda self: self.question.group)
    title = property(lambda self: self.question.title)
    basis = property(lambda self: self.question.basis)
    kinds = property(lambda self: self.question.kinds)

    def grade(self, chain: Chain) -> Finding:
        number, answer = self._number(chain), self._answer(chain)
        known = [part for part in (number, answer) if part.grade != UNSHOWN]
        failed = any(part.grade == "fail" for part in known)
        needs = () if failed or (known and self.instead) else (*number.needs, *answer.needs)
        if needs:
            return self._finding(UNSHOWN, self._waits(number, answer), "", number.note, needs)
        worst = min((part.grade for part in known), key=FINDING_GRADES.index)
        return self._finding(worst, "; ".join(part.value for part in known), number.limit, number.note)

    def _number(self, chain: Chain) -> Computed:
        got = tried(lambda: self.number(chain))
        if not isinstance(got, Refused):
            return got
        if got.needs:
            return Computed(UNSHOWN, "", needs=tuple(dict.fromkeys((*got.needs, *missing(chain, self.number)))))
        return Computed("fail", "cannot be worked out", note=got.why)

    def _answer(self, chain: Chain) -> Computed:
        key = f"answers.{self.question.key}"
        given = chain.design.given(key)
        return Computed(self.question.grade(str(given.value)), str(given.value)) if given else Computed(UNSHOWN, "", needs=(key,))

    def _waits(self, number: Computed, answer: Computed) -> str:
        if self.instead:
            return f"needs {asked(*number.needs)}; or in their place {asked(*answer.needs)}"
        return f"needs {asked(*number.needs, *answer.needs)}"

    def _finding(self, grade: str, value: str, limit: str, note: str, needs: tuple[str, ...] = ()) -> Finding:
        remedy = self.question.remedy if grade in ("fail", "marginal") else ""
        return Finding(self.id, self.group, self.title, grade, value, limit, remedy, self.basis, self.results, note, needs)


def answered_check(question: Asked) -> Judged:
    """A question of the design file as a check."""
    row = Criterion(question.id, question.group, question.title, None, "", question.basis, firm=True, kinds=question.kinds)
    return Judged(row, f"answers.{question.key}", lambda chain, answer: _by_answer(chain, question, str(answer)), question.remedy)


def _by_answer(chain: Chain, question: Asked, answer: str) -> tuple[str, str]:
    """The grade of an answer, and that it is one; a number on file that says worse counts before it."""
    grade, said = question.grade(answer), f"by your answer: {answer}"
    worse = OVERRULED[question.id](chain) if question.id in OVERRULED else None
    if worse and FINDING_GRADES.index(worse[0]) < FINDING_GRADES.index(grade):
        return worse[0], f"{worse[1]}; {said}"
    return grade, said


def _known(chain: Chain, key: str) -> float | None:
    given = chain.design.given(key)
    return given.value if given else None


def _cover(chain: Chain) -> tuple[str, str] | None:
    cover = _known(chain, "supply.duct_cover")
    return (
        ("fail", f"{told(cover, 'mm', chain.design.region)} over the duct: less than any table allows") if cover is not None and cover < LEAST_COVER else None
    )


def _duct(chain: Chain) -> tuple[str, str] | None:
    bore = _known(chain, "supply.duct_bore")
    if bore is None or bore >= PLUG[0]:
        return None
    return "marginal" if bore >= PLUG[1] else "fail", f"a duct of {told(bore, 'mm', chain.design.region)}"


def _socket(chain: Chain) -> tuple[str, str] | None:
    outside = tried(lambda: max(abs(at) - half for at, half in zip(chain.geometry.supply, chain.geometry.catch_half)))
    return ("fail", "the supply point stands in the lined catch") if not isinstance(outside, Refused) and outside < 0 else None


def _edges(chain: Chain) -> tuple[str, str] | None:
    levels = _known(chain, "levels.liner_edge"), tried(lambda: chain.box_top), tried(lambda: chain.level("stone top"))
    edge = max((FLUSH, *(level for level in levels if isinstance(level, float))))
    return ("marginal", f"an edge {told(edge, 'mm', chain.design.region)} over the paving") if FLUSH < round(edge, 9) < PROUD else None


def _access(chain: Chain) -> tuple[str, str] | None:
    """What lies over the pump's bay: a slab, or a cover of which nobody says that a piece lifts out; and a bay cut into the only block."""
    over = tried(lambda: any(overlap(chain.geometry.bay, slab) for piece in chain.geometry.standing if (slab := chain.geometry.slab_under(piece))))
    if over is True:
        return "fail", "a slab lies over the pump's bay"
    along, across, cover = (_known(chain, f"reservoir.{key}") for key in ("blocks_along", "blocks_across", "cover"))
    if along == across == 1:
        return "marginal", "the pump's bay is cut into the only block, which carries less for it"
    return ("marginal", "a stiff cover lies all over the blocks: it needs a piece over the bay that one person lifts out") if cover else None


def _frost(chain: Chain) -> tuple[str, str] | None:
    """Frost that reaches under the base, where no granular layer drains it."""
    frost, layer, bottom = _known(chain, "site.frost_depth"), _known(chain, "ground.sub_base"), tried(lambda: -chain.level("formation"))
    if frost is None or layer is None or isinstance(bottom, Refused) or frost <= bottom or layer >= DRAINS:
        return None
    region = chain.design.region
    under = f"frost reaches {told(frost, 'mm', region)} down, the base {told(bottom, 'mm', region)}"
    return "fail" if layer == 0 else "marginal", f"{under}, on {told(layer, 'mm', region)} of granular layer"


def _lining(chain: Chain) -> tuple[str, str] | None:
    thick = _known(chain, "ground.lining_thickness")
    if thick is None or thick >= LINED[0]:
        return None
    return "marginal" if thick >= LINED[1] else "fail", f"lining and fleece together are {told(thick, 'mm', chain.design.region)} thick"


def _runs_in(chain: Chain) -> tuple[str, str] | None:
    soil, edge = _known(chain, "levels.soil"), _known(chain, "levels.liner_edge")
    return ("fail", "the soil beside stands over the edge of the liner: water runs in") if soil is not None and edge is not None and soil > edge else None


def _no_way_out(chain: Chain) -> tuple[str, str] | None:
    return ("fail", "an overflow pipe of no bore") if _known(chain, "overflow_pipe.bore") == 0 else None


# Limits for numbers that overrule an answer, in m: least cover of any table; bore of a duct that takes a plug, and at a pinch; an edge that still counts as flush, and one that is seen;
# a granular layer that drains; lining with its fleece, of which the sheet alone must be 0.75 mm, at a pinch 0.5.
DRAINS, LINED = 0.075, (0.00075, 0.0005)  # common practice
LEAST_COVER, PLUG, FLUSH, PROUD = 0.150, (0.050, 0.040), 0.040, 0.100  # from memory, local codes govern; the rest common practice
OVERRULED: dict[str, Callable[[Chain], tuple[str, str] | None]] = {
    "C43": _cover,
    "C44": _socket,
    "C45": _duct,
    "C50": _access,
    "C54": _edges,
    "C31": _frost,
    "C70": _lining,
    "C59": _runs_in,
    "C15": _no_way_out,
}


def is_public(chain: Chain) -> bool:
    """Whether others than those who live there come near. Raises Unknown."""
    return chain.design["site.use"] != "private"


def engineered(chain: Chain) -> str:
    """That an engineer has designed how it is held; not for what falls by itself as it stands here."""
    answer = chain.design.given("site.engineered")
    fallen = tried(lambda: getattr(chain, "fallen", ""))
    return "held as a structural engineer has designed it; this kit counts no fixing" if answer and answer.value != "no" and not fallen else ""
