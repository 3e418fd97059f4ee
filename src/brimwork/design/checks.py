"""The checks that grade a design: each a value of the chain against limits, a judged answer, or both; with what to change next and on what basis."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass

from brimwork import tables, units
from brimwork.design import levels, patches
from brimwork.design.amounts import short
from brimwork.design.chain import Chain
from brimwork.design.fields import ABOVE, LEAST, SECTIONS, Choice
from brimwork.design.inputs import Unknown
from brimwork.design.missing import missing
from brimwork.design.questions import QUESTIONS, Question
from brimwork.design.surroundings import OVER_BUDGET
from brimwork.units import InputError

GRADES = ("fail", "marginal", "not shown", "pass", "does not apply")
UNSHOWN = "not shown"
IMPOSSIBLE = "a value that must be more than nothing is zero, or one is far too large"
INFINITE = float("inf")
NEXT = 3  # values that are named as the next ones to find out
NAMED = 4  # missing values that a finding names
FLATTEST_LEG = units.read("30 deg", "deg")


@dataclass(frozen=True)
class Limits:
    """Pass inside `good`, marginal inside `fair`, else fail; both (low, high) in SI, ends included."""

    good: tuple[float, float]
    fair: tuple[float, float]

    def grade(self, value: float) -> str:
        """Grade of a value, rounded to nine figures first, so that noise of the last bit cannot fail a limit that is just met."""
        rounded = float(f"{value:.9g}")
        for grade, (low, high) in (("pass", self.good), ("marginal", self.fair)):
            if float(f"{low:.9g}") <= rounded <= float(f"{high:.9g}"):
                return grade
        return "fail"

    def text(self, unit: str, region: str = "UK") -> str:
        here, digits = (US_UNITS[unit], 3) if region == "US" and unit in US_UNITS else (unit, 6)
        good, fair = (days(_span(*span, here, digits)) for span in (self.good, self.fair))
        return f"pass {good}" + (f"; marginal {fair}" if fair != good else "")


# The units in which the US is told what is told in these elsewhere.
US_UNITS = {"mm": "in", "m": "ft", "m/s": "ft/s", "L/s per m": "US gal/min per ft", "mm/day": "in/day"}


def told(value: float, unit: str, region: str) -> str:
    """A value in its unit; for the US in theirs, with the other behind."""
    here = days(units.write(value, unit))
    return f"{units.write(value, US_UNITS[unit])} ({here})" if region == "US" and unit in US_UNITS else here


def days(text: str) -> str:
    """Days in the plural, unless it is one."""
    return f"{text}s" if text.endswith(" day") and not re.search(r"(^|\s)1(\.0+)? day$", text) else text


def _span(low: float, high: float, unit: str, digits: int) -> str:
    if high == -INFINITE:
        return "never"
    if low == -INFINITE:
        return f"up to {short(high, unit, digits)}"
    if high == INFINITE and 0 < low <= LEAST:
        return ABOVE
    if high == INFINITE:
        return f"from {short(low, unit, digits)}"
    return f"{short(low, unit, digits).removesuffix(unit).strip()} to {short(high, unit, digits)}"


def at_most(good: float, fair: float) -> Limits:
    return Limits((-INFINITE, good), (-INFINITE, fair))


def at_least(good: float, fair: float) -> Limits:
    return Limits((good, INFINITE), (fair, INFINITE))


def between(good: tuple[float, float], fair: tuple[float, float]) -> Limits:
    return Limits(good, fair)


@dataclass(frozen=True)
class Finding:
    """One check of one design: grade, value and limit as text, what to change, basis, the names of the chain's results behind it."""

    id: str
    group: str
    title: str
    grade: str
    value: str
    limit: str
    remedy: str
    basis: str
    results: tuple[str, ...] = ()
    note: str = ""
    needs: tuple[str, ...] = ()  # keys of the design that are missing, where the check is not shown


@dataclass(frozen=True)
class Check:
    """A check of a number: `value` of the chain against `limits`, or limits that depend on the design. `unit` is how it is shown."""

    id: str
    group: str
    title: str
    value: Callable[[Chain], float]
    limits: Limits | Callable[[Chain], Limits]
    unit: str
    remedy: str
    basis: str
    results: tuple[str, ...] = ()
    note: Callable[[Chain], str] = lambda chain: ""
    kinds: tuple[str, ...] = ()

    def grade(self, chain: Chain) -> Finding:
        try:
            value = self.value(chain)
            limits, own = self.counting(chain)
        except Unknown as first:
            keys = tuple(dict.fromkeys((*first.keys, *missing(chain, self.value), *missing(chain, self.counting))))
            return self._finding("not shown", f"needs {asked(Unknown(*keys))}", "", note="", needs=keys)
        except InputError as refused:
            return self._finding("fail", "cannot be worked out", "", note=str(refused))
        except ArithmeticError:
            return self._finding("fail", "cannot be worked out", "", note=IMPOSSIBLE)
        if value == INFINITE:
            return self._finding("does not apply", "nothing to compare with", "", note=self.note(chain))
        grade = limits.grade(value)
        region = chain.design.region
        text = limits.text(self.unit, region) + (" (set by this design)" if own else "")
        return self._finding(grade, told(value, self.unit, region), text, note=self.note(chain))

    def counting(self, chain: Chain) -> tuple[Limits, bool]:
        """The limits that count, and whether the design set them for itself."""
        given = chain.design.values.get(f"limits.{self.id}")
        if given:
            return Limits(*given.value), True
        return (self.limits(chain) if callable(self.limits) else self.limits), False

    def usually(self, region: str) -> str:
        """The usual limits as a design would type its own: "1.1 to 1.6; 1 to 2.5"; empty where they hang on the design."""
        if callable(self.limits):
            return ""
        unit = US_UNITS.get(self.unit, self.unit) if region == "US" else self.unit
        return "; ".join(_span(*span, unit, 3) for span in (self.limits.good, self.limits.fair))

    def _finding(self, grade: str, value: str, limit: str, note: str, needs: tuple[str, ...] = ()) -> Finding:
        remedy = self.remedy if grade in ("fail", "marginal") else ""
        return Finding(self.id, self.group, self.title, grade, value, limit, remedy, self.basis, self.results, note, needs)


@dataclass(frozen=True)
class Judged:
    """A check that a person answers: the words of one key of the design, graded by `answers`, which may look at the rest of the design."""

    id: str
    group: str
    title: str
    key: str
    answers: Callable[[Chain, object], tuple[str, str]]
    remedy: str
    basis: str
    kinds: tuple[str, ...] = ()

    def grade(self, chain: Chain) -> Finding:
        needs: tuple[str, ...] = ()
        try:
            grade, value = self.answers(chain, chain.design[self.key])
        except Unknown as unknown:
            grade, value, needs = "not shown", f"needs {_offered(self.key) if unknown.keys == (self.key,) else asked(unknown)}", unknown.keys
        return Finding(self.id, self.group, self.title, grade, value, "", self.remedy if grade in ("fail", "marginal") else "", self.basis, needs=needs)


@dataclass(frozen=True)
class Part:
    """What was computed of a check: its grade, value and limit as text, and what to note."""

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

    question: Question
    number: Callable[[Chain], Part]
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
        worst = min((part.grade for part in known), key=GRADES.index)
        return self._finding(worst, "; ".join(part.value for part in known), number.limit, number.note)

    def _number(self, chain: Chain) -> Part:
        try:
            return self.number(chain)
        except Unknown as first:
            return Part(UNSHOWN, "", needs=tuple(dict.fromkeys((*first.keys, *missing(chain, self.number)))))
        except InputError as refused:
            return Part("fail", "cannot be worked out", note=str(refused))
        except ArithmeticError:
            return Part("fail", "cannot be worked out", note=IMPOSSIBLE)

    def _answer(self, chain: Chain) -> Part:
        key = f"answers.{self.question.key}"
        given = chain.design.given(key)
        return Part(self.question.grade(str(given.value)), str(given.value)) if given else Part(UNSHOWN, "", needs=(key,))

    def _waits(self, number: Part, answer: Part) -> str:
        if self.instead:
            return f"needs {asked(Unknown(*number.needs))}; or in their place {asked(Unknown(*answer.needs))}"
        return f"needs {asked(Unknown(*number.needs, *answer.needs))}"

    def _finding(self, grade: str, value: str, limit: str, note: str, needs: tuple[str, ...] = ()) -> Finding:
        remedy = self.question.remedy if grade in ("fail", "marginal") else ""
        return Finding(self.id, self.group, self.title, grade, value, limit, remedy, self.basis, self.results, note, needs)


def _answered(question: Question) -> Judged:
    """A question of the design file as a check."""
    return Judged(question.id, question.group, question.title, f"answers.{question.key}", lambda chain, answer: (question.grade(str(answer)), str(answer)),
                  question.remedy, question.basis, question.kinds)  # fmt: skip


def asked(unknown: Unknown) -> str:
    """What is missing, with its keys in the file: "power taken in (pump.power)"; of many the first ones."""
    named = ", ".join(f"{meaning(key)} ({key})" for key in unknown.keys[:NAMED])
    return named + (f", and {len(unknown.keys) - NAMED} more" if len(unknown.keys) > NAMED else "")


def _offered(key: str) -> str:
    """A word or an answer that is missing, with those that it can be: an answer (answers.edges), one of "..." or "..."."""
    section, _, name = key.partition(".")
    field = SECTIONS[section][name]
    if not isinstance(field, Choice):
        return asked(Unknown(key))
    *first, last = (f'"{option}"' for option in field.options)
    return f"{'an answer' if section == 'answers' else 'a word'} ({key}), one of {', '.join(first)} or {last}"


def reason(missing: Unknown | InputError) -> str:
    """Why a number is not there: what it needs, or what was refused."""
    return f"needs {asked(missing)}" if isinstance(missing, Unknown) else str(missing)


def meaning(key: str) -> str:
    """What a value of the design is, in words that stand alone."""
    section, _, name = key.partition(".")
    said = SECTIONS[section][name].name
    return f'the answer to "{said}"' if section == "answers" else said


def wanted(found: list[Finding]) -> list[tuple[str, int]]:
    """The keys of the design that most checks wait for, and how many; what to find out next."""
    return Counter(key for finding in found for key in finding.needs).most_common()


def tally(found: list[Finding]) -> str:
    """How many findings have each grade: "3 fail, 1 marginal, 8 do not apply"."""
    counts = Counter(finding.grade for finding in found)
    return ", ".join(f"{counts[grade]} {_counted(grade, counts[grade])}" for grade in GRADES if counts[grade])


def _counted(grade: str, count: int) -> str:
    return "do not apply" if grade == "does not apply" and count != 1 else grade


def next_words(found: list[Finding]) -> str:
    """What to find out next, in a sentence: the values that most checks wait for. Nothing where no check waits."""
    first = [f"{meaning(key)} ({count} {'check waits' if count == 1 else 'checks wait'})" for key, count in wanted(found)[:NEXT]]
    return f"To find out next: {'; '.join(first)}." if first else ""


CP, J, DERIVED = tables.COMMON_PRACTICE, tables.JUDGEMENT, "derived"


def _public(chain: Chain) -> bool:
    return chain.design["site.use"] != "private"


def _tipping_limits(chain: Chain) -> Limits:
    return at_least(2.0, 1.5) if _public(chain) else at_least(1.5, 1.2)


def _unattended(chain: Chain) -> Limits:
    """A week, or the longest time that nobody looks after it, where that is known and longer."""
    given = chain.design.values.get("site.unattended")
    spell = given.value if given else 0.0
    return at_least(max(7 * 86400, spell), max(3 * 86400, spell))


def _sides(chain: Chain) -> Limits:
    """Depth limits of a pit, for the way in which its sides are kept; none at all for soil that runs."""
    state = chain.design["site.pit_sides"]
    if state.startswith("firm"):
        return at_most(0.9, 1.2)
    return at_most(-INFINITE, 1.2) if state.startswith("competent") else at_most(-INFINITE, -INFINITE)


def _wall(chain: Chain) -> Limits:
    """A free-standing wall away from people only; anything else goes to an engineer."""
    if _public(chain) or chain.design["blade.wall_retains"] != "nothing":
        return at_most(-INFINITE, -INFINITE)
    return at_most(0.6, 1.0)


def _covered(chain: Chain) -> Limits:
    """No cover is enough for a pump that runs unattended with nothing to stop it."""
    if chain.design["pump.cut_out"] == "no" and chain.design["site.unattended"] > 0:
        return at_most(-INFINITE, -INFINITE)
    return at_least(0.050, 0.025)


def _cut_out(chain: Chain) -> str:
    return "no low-water cut-out, and nobody looks after it all the time" if _covered(chain).good[1] == -INFINITE else ""


def _slings(chain: Chain) -> Limits:
    """No rating is enough for a leg flatter than 30 degrees."""
    return at_most(0.50, 1.00) if chain.design["site.sling_angle"] >= FLATTEST_LEG else at_most(-INFINITE, -INFINITE)


def _on_blocks(chain: Chain) -> Limits:
    """A patch that hangs over the edge does not press evenly, whatever its area."""
    return at_most(0.80, 1.00) if chain.overhang <= patches.NEAR else at_most(-INFINITE, -INFINITE)


def _over_the_edge(chain: Chain) -> str:
    over = chain.overhang
    said = f"what stands on the blocks reaches {told(over, 'mm', chain.design.region)} over their edge: that part carries nothing"
    return said if over > patches.NEAR else ""


# Slab past a joint on either side; the foot of a person or a wheel; pull in the wall of a vessel, over its strength.
BRIDGED, UNDERFOOT, PULLED = at_least(0.150, 0.075), at_most(1.0, 1.0), at_most(0.10, 0.20)


def _joints(chain: Chain) -> Part:
    """What stands on the blocks against the joints between them and their edge."""
    region, bridge, limit = chain.design.region, chain.bridge, BRIDGED.text("mm", chain.design.region)
    if chain.overhang > patches.NEAR:
        return Part("fail", f"reaches {told(chain.overhang, 'mm', region)} over the edge of the blocks", limit)
    if bridge == INFINITE:
        return Part("pass", "inside one block", limit)
    if not chain.slab_count:
        return Part("fail", "stands across a joint, with no slab that bridges it", limit)
    return Part(BRIDGED.grade(bridge), f"bridges a joint by {told(bridge, 'mm', region)} where it reaches least", limit)


def _underfoot(chain: Chain) -> Part:
    used, (load, _) = chain.foot_utilisation, chain.pressed_under(chain.cover)
    over = "a bare block" if chain.cover == 0 else "a block under its cover"
    return Part(UNDERFOOT.grade(used), f"{load} presses {told(used, '', 'UK')} of what {over} may carry for seconds", UNDERFOOT.text(""))


def _wall_and_water(chain: Chain) -> Part:
    share = chain.wall_share
    return Part(PULLED.grade(share), f"the full vessel pulls its wall with {told(share, '', 'UK')} of its strength", PULLED.text(""))


# Questions of which a part is computed: how, by which results, and whether the answer is only wanted where nothing can be computed.
COMPUTED: dict[str, tuple[Callable[[Chain], Part], tuple[str, ...], bool]] = {
    "C23": (_joints, (), True),
    "C30": (_wall_and_water, ("hoop_stress", "wall_share"), False),
    "C58": (_underfoot, ("foot_pressure", "brief_allowable", "foot_utilisation"), False),
}


def _mesh(chain: Chain) -> float:
    """Opening over the smallest stone; an opening over 20 mm counts as one that only just passes, or worse."""
    mesh = chain.design["lining.mesh"]
    return max(mesh / chain.design["lining.smallest_stone"], 0.5 * mesh / 0.020)


def _valves(chain: Chain) -> Limits:
    return at_most(1.0, 2.0) if chain.design["stones.valves"] == "yes" else at_most(-INFINITE, -INFINITE)


def _order(chain: Chain) -> float:
    """The smallest gap of the datum table that must not close, in metres."""
    return min(gap for low, high, gap in levels.gaps(chain.design) if (low, high) not in levels.MAY_TOUCH or gap < 0)


def _closest(chain: Chain) -> str:
    low, high, gap = min(levels.gaps(chain.design), key=lambda pair: pair[2] if (pair[0], pair[1]) not in levels.MAY_TOUCH or pair[2] < 0 else INFINITE)
    return f"closest: {low} below {high}, {told(gap, 'mm', chain.design.region)}"


def _legionella(chain: Chain, answer: object) -> tuple[str, str]:
    use = chain.design["site.use"]
    if use == "care premises":
        return "fail", "care or health premises: refer to the duty holder before anything is built"
    if answer == "in place":
        return "pass", "written assessment in place"
    if use == "private":
        return ("pass", "private, low splash") if answer == "low splash, private" else ("marginal", f"private; assessment: {answer}")
    return ("marginal", "public, design stage, assessment commissioned") if answer == "commissioned" else ("fail", f"public; assessment: {answer}")


def _open_water(chain: Chain, depth: object) -> tuple[str, str]:
    shown = f"{told(depth, 'mm', chain.design.region)} of free water"
    if depth == 0:
        return "pass", "none: stone or a rigid grille at or above the water"
    if _public(chain) or depth > 0.050:
        return "fail", f"{shown}, where a child can reach it" + (", at a public site" if _public(chain) else "")
    return "marginal", f"{shown}; only with no child under six unattended, in writing"


def _residual_current(chain: Chain, answer: object) -> tuple[str, str]:
    return {
        "tested by instrument": ("pass", "present, tested by button and instrument"),
        "tested by button": ("marginal", "present, tested by button only"),
    }.get(str(answer), ("fail", "absent"))


def _asked_or_joined(question: Question) -> Judged | Joined:
    return Joined(question, *COMPUTED[question.id]) if question.id in COMPUTED else _answered(question)


CHECKS: tuple[Check | Judged | Joined, ...] = (
    # water
    Check("C01", "water", "Flow against flow wanted", lambda c: c.flow_ratio, between((1.10, 1.60), (1.00, 2.50)), "",
          "throttle on the delivery side when there is too much; a wider hose, fewer fittings or a stronger pump when there is too little", J,
          ("flow_wanted", "head_wanted", "duty_flow", "flow_ratio"), kinds=("overflowing vessel", "blade", "cascade")),
    Check("C01m", "water", "Head in hand for several outlets", lambda c: c.head_in_hand, between((1.1, 2.0), (1.0, 3.0)), "",
          "a stronger pump below, a smaller one or more throttling above", J, ("flow_wanted", "branch_head", "head_wanted", "pump_head_at_flow_wanted"), kinds=("drilled stones",)),
    Check("C63", "water", "Branches in balance", lambda c: c.throttle, _valves, "m", "a valve on every branch, and drilled stones of more equal height", CP, ("throttle",),
          kinds=("drilled stones",)),
    Check("C02", "water", "Static lift against the pump's shut-off head", lambda c: c.lift_share, at_most(0.70, 0.85), "",
          "a pump with a higher shut-off head: near its limit a little fouling stops the flow", CP, ("static_lift", "lift_share")),
    Check("C03", "water", "Can the pump's label be true", lambda c: c.nameplate, at_most(0.50, 0.70), "",
          "read the label again: per minute for per hour, US for imperial gallons, or a wrong digit", f"physics; limits {J}", ("nameplate",), lambda c: c.label),
    Check("C04", "water", "Speed in the hose", lambda c: c.speed_wanted, between((0.6, 1.5), (0.3, 2.4)), "m/s",
          "a wider hose above, a narrower hose below", CP, ("speed_wanted",)),
    Check("C05", "water", "Share of the head lost on the way", lambda c: c.loss_share, at_most(0.40, 0.60), "", "one bore wider", J,
          ("reynolds", "friction", "friction_head", "fittings_head", "loss_share")),
    Check("C06", "water", "Boil over the outlet, for a gentle ripple", lambda c: c.boil, at_most(0.015, 0.040), "mm",
          "a wider outlet or a diffuser over the hose end", J, ("speed_wanted", "boil", "outlet_bore"), kinds=("overflowing vessel",)),
    Check("C07", "water", "Rim out of level against the head", lambda c: c.rim_error_share, at_most(0.5, 1.0), "",
          "level the rim again under its full weight, or send more water", f"{DERIVED}; limits {J}", ("rim_head", "rim_error_share", "rim_flow_ratio"), kinds=("overflowing vessel",)),
    Check("C08", "water", "Enough water for a film that clings", lambda c: c.design["flow.for_each_metre"], between((0.15e-3, 0.40e-3), (0.08e-3, INFINITE)), "L/s per m",
          "less than this runs in streaks down one side; more leaves the face", CP, ("film",), kinds=("overflowing vessel", "drilled stones")),
    Check("C09", "water", "Free sheet stays whole", lambda c: c.sheet_share, at_least(1.0, 0.6), "", "more flow for each metre of lip, or less fall", CP,
          ("fall",), kinds=("blade", "cascade")),
    Check("C10", "water", "Speed into the intake cage", lambda c: c.flow_wanted / c.design["pump.intake_area"], at_most(0.05, 0.10), "m/s",
          "a larger cage: a fast intake clogs in days", J, ("flow_wanted",)),
    # reservoir
    Check("C12", "reservoir", "Days without topping up", lambda c: c.days, _unattended, "day",
          "a deeper or wider reservoir, a thinner film, or a float valve with an air gap", J, ("usable", "transit", "daily_loss", "days")),
    Check("C13", "reservoir", "Pump covered at the lowest level", lambda c: c.design["pump.covered"], _covered, "mm",
          "raise the lowest level, with a low-water cut-out that stops the pump there; the maker's figure governs", CP, (), _cut_out),
    Check("C14", "reservoir", "Room for the water that comes back", lambda c: c.drainback, at_least(1.10, 1.00), "",
          "set the running level lower, or put a check valve in the hose", f"{DERIVED}; limits {J}", ("transit", "drainback_room", "drainback"), lambda c: c.settles),
    Check("C16", "reservoir", "Turnover time", lambda c: c.turnover, at_least(180, 90), "min", "more usable water, or less flow", J, ("usable", "turnover")),
    Check("C17", "reservoir", "Splash stays inside the apron", lambda c: c.apron_share, at_least(1.0, 0.75), "", "a wider apron", CP,
          ("fall", "apron_wanted", "apron_share")),
    Check("C18", "reservoir", "Edge of the liner above the overflow", lambda c: c.level("liner edge") - c.level("overflow"), at_least(0.050, 0.025), "mm",
          "bring the edge of the liner up, or the overflow down", CP),
    Check("C18g", "reservoir", "Edge of the liner above the soil", lambda c: c.level("liner edge") - c.design["levels.soil"], at_least(0.025, 0.010), "mm",
          "bring the edge of the liner up, or the soil beside it down: muddy water runs in", CP),
    Check("C19", "reservoir", "Share of the water lost in a day", lambda c: c.day_share, at_most(0.10 / 86400, 0.25 / 86400), "%/day", "more usable water, or less wet stone", J,
          ("daily_loss", "usable", "day_share")),
    Check("C66", "reservoir", "Overflow pipe carries the storm", lambda c: c.overflow_ratio, at_least(1.5, 1.0), "", "a wider overflow pipe",
          f"{DERIVED}; limits {J}", ("overflow_ratio",)),
    Check("C72", "reservoir", "Leak, pump off, against a control bucket", lambda c: c.design["measured.leak"], at_most(tables.TIGHT.value, 2 * tables.TIGHT.value), "mm/day",
          "let it fall: where it stops is the height of the leak; patch above that mark", CP),
    Check("C57", "reservoir", "Levels in order", _order, at_least(levels.CLOSE, LEAST), "mm", "move one of the two levels named", DERIVED, (), _closest),
    # loads
    Check("C20", "loads", "Pressure on the blocks", lambda c: c.block_utilisation, _on_blocks, "",
          "a larger slab under the vessel, all of it over the blocks; the maker's long-term figure governs", f"{DERIVED}; creep and safety factors {J}",
          ("patch", "block_pressure", "block_allowable", "block_utilisation"), _over_the_edge, kinds=("overflowing vessel", "drilled stones")),
    Check("C22", "loads", "Load off the middle of the base", lambda c: c.kern_share, at_most(1.0, 1.5), "", "move the vessel towards the middle of the blocks",
          f"statics; limits {J}", ("base_mass", "eccentricity", "kern_share")),
    Check("C24", "loads", "Pressure on the soil", lambda c: c.soil_utilisation, at_most(0.67, 1.00), "",
          "a larger base, or ask a geotechnical engineer for the soil", "IBC 2012 Table 1806.2 (second-hand)", ("base_pressure", "soil_utilisation")),
    Check("C25", "loads", "Tipping of the full vessel", lambda c: c.tipping_full, _tipping_limits, "", "fix it down, widen the foot, or lower it", J, ("tipping_full",), kinds=("overflowing vessel",)),
    Check("C25", "loads", "Tipping of a drilled stone", lambda c: c.tipping, _tipping_limits, "", "dowel it down, widen its base, or lower it", J, ("tipping",),
          kinds=("drilled stones",)),
    Check("C25e", "loads", "Tipping of the empty vessel", lambda c: c.tipping_empty, _tipping_limits, "",
          "fix it down or ballast it before it stands empty where people pass", J, ("tipping_empty",), kinds=("overflowing vessel",)),
    Check("C26", "loads", "Wind on a tall drilled stone", lambda c: c.tipping_in_wind, at_least(1.5, 1.2), "", "dowel it down, or lower it", f"statics; limits {J}",
          ("wind_pressure", "tipping_in_wind"), kinds=("drilled stones",)),
    Check("C27", "loads", "Foam held down", lambda c: c.foam_held, at_least(1.30, 1.10), "", "more pebbles on the foam: under water they weigh little more than half",
          f"physics; limits {J}", ("foam_held",), kinds=("overflowing vessel",)),
    Check("C21", "loads", "Access panel off the load path", lambda c: c.design["lining.panel_clearance"], at_least(0.100, 0.050), "mm",
          "cut the panel further from the load, and support every cut wall again", CP),
    Check("C28", "loads", "Flotation of the emptied reservoir", lambda c: c.flotation, at_least(1.20, 1.05), "",
          "keep it full, add a relief drain, or more mass; while building, rain in an empty lined pit counts too", f"physics; limits {J}", ("flotation",)),
    # ground and lining
    Check("C32", "ground and lining", "Depth of the pit", lambda c: c.pit_depth, _sides, "m",
          "batter or brace the sides by a competent person's plan; nobody enters if unsure", "OSHA 29 CFR 1926 subpart P, summaries (second-hand); rest common practice",
          ("pit_depth",), lambda c: c.design["site.pit_sides"]),
    Check("C33", "ground and lining", "Clear of footings", lambda c: c.footing_share, at_least(1.0, 0.75), "", "move the pit away, or ask an engineer", CP),
    Check("C34", "ground and lining", "Clear of roots", lambda c: c.design["site.tree_distance"] / c.root_radius, at_least(1.0, 0.8), "",
          "move away, or ask an arboriculturist and dig by hand", "BS 5837:2012 (second-hand)", ("root_radius",)),
    Check("C38", "ground and lining", "Box fits blocks and lining", lambda c: c.design["ground.clearance"], between((0.010, 0.020), (0.005, 0.040)), "mm",
          "10 to 20 mm on each side: tighter jams, wider leaves the liner without support", CP, ("box_length", "box_width")),
    Check("C37", "ground and lining", "Cut fits the roll", lambda c: c.roll_spare, at_least(0.100, 0.0), "m",
          "turn the cut, take a wider roll, or ask the maker for a welded seam", DERIVED, ("liner_length", "liner_width", "roll")),
    Check("C39", "ground and lining", "Nothing pierces the liner near the overflow", lambda c: c.level("staple line") - c.level("overflow"), at_least(0.050, 0.025), "mm",
          "fix the liner higher, or set the overflow lower", CP),
    Check("C40", "ground and lining", "Mesh holds the stone", _mesh, at_most(0.5, 0.8), "",
          "a finer mesh, at most 20 mm, or larger stone", CP),
    # supply
    Check("C46", "supply", "Circuit not overloaded", lambda c: c.design["supply.circuit_load"] / c.design["supply.breaker"], at_most(0.80, 1.00), "%",
          "ask the electrician for a circuit of its own", CP),
    Check("C46e", "supply", "Earth leakage does not trip the protection", lambda c: c.leakage_share, at_most(0.30, 0.50), "%",
          "ask the electrician: damp joints and several pumps on one device trip it for nothing", CP),
    Check("C47", "supply", "Cord long enough", lambda c: c.cord_spare, at_least(0.0, -0.3), "m", "a pump with a longer cord: no buried joints", CP, ("cord_wanted",)),
    Check("C55", "supply", "Running cost known", lambda c: c.running_cost, at_least(0.0, 0.0), "cur", "state it on the handover card", J, ("energy", "running_cost")),
    Judged("C41", "supply", "Residual-current protection", "supply.residual_current", _residual_current,
           "a licensed electrician tests it by instrument and certifies it before anyone touches the water", "guidance on garden circuits (second-hand); local codes govern"),
    Check("C48", "people", "Manual lift", lambda c: c.lift, at_most(1.0, 3.0), "", "a team, a trolley or a machine; plan the lift in writing",
          "NIOSH lifting equation (second-hand)", ("lift",)),
    Check("C65", "people", "Slings", lambda c: c.sling_share, _slings, "%", "stronger slings, steeper legs; a crane needs a lifting plan by a competent person",
          f"statics; limits {J}", ("sling",)),
    Check("C42", "supply", "Voltage drop", lambda c: c.voltage_drop, at_most(0.03, 0.05), "%", "a thicker or shorter cable: ask the electrician",
          "BS 7671, 3 % and 5 % (second-hand); local codes govern", ("current", "voltage_drop")),
    # people
    Judged("C51", "people", "Open water a child can reach", "site.open_water", _open_water,
           "fill it with stone, or fit a rigid grille at or above the water; no depth is without danger to a small child", f"{J}; guidance on grilles (read)"),
    Judged("C52", "people", "Legionella", "site.legionella", _legionella,
           "have a competent person assess the risk in writing before the water runs; not at care premises without the duty holder",
           "HSE, other risk systems; CDC, decorative fountains (second-hand)"),
    Check("C49", "people", "Way in", lambda c: c.design["site.gate"] - c.design["site.widest_item"], at_least(0.100, 0.0), "mm", "another way in, or build it elsewhere; a crane needs a plan of its own", CP),
    Check("C64", "people", "Noise at the neighbour", lambda c: c.noise_above, at_most(5, 10), "", "less fall, a timer at night, pump on rubber", CP, ("noise",)),
    Check("C60", "water", "Freeboard of the rill", lambda c: c.freeboard, at_least(0.040, 0.020), "mm", "a wider or steeper rill, or higher sides", CP,
          ("normal_depth", "freeboard"), kinds=("cascade",)),
    Check("C61", "water", "Tread catches the fall", lambda c: c.tread_share, at_least(2.0, 1.3), "", "a longer tread, or lower steps", J, ("throw", "tread_share"),
          kinds=("cascade",)),
    Check("C73", "reservoir", "Lower end of the cascade over the box", lambda c: c.foot_over_box, at_least(levels.CLOSE, LEAST), "mm",
          "raise the header's lip, or take fewer or lower falls: below the edge of the box the water runs outside it", f"{DERIVED}; margin {J}", kinds=("cascade",)),
    Check("C62", "people", "The wall is a structure", lambda c: c.design["blade.wall_height"], _wall, "m",
          "refer the wall to a structural engineer: this kit does not size raised or retaining walls", CP, kinds=("blade",)),
    Check("C56", "people", "Budget", lambda c: c.cost_share, at_most(1.0, OVER_BUDGET), "", "spend less, or agree on more before work begins", CP, ("cost_estimate",), lambda c: c.cost_told),
    *map(_asked_or_joined, QUESTIONS),
)  # fmt: skip


def numbered(check_id: str) -> Check:
    """The check of a number with that identifier."""
    return next(check for check in CHECKS if check.id == check_id and isinstance(check, Check))


def kinds_of(check_id: str) -> tuple[str, ...]:
    """The kinds of feature that a check is made for; none named means all."""
    rows = [check.kinds for check in CHECKS if check.id == check_id]
    return tuple(kind for kinds in rows for kind in kinds) if all(rows) else ()


def findings(chain: Chain) -> list[Finding]:
    """Every check graded, fails first, then marginal, not shown, pass."""
    return sorted((_graded(check, chain) for check in CHECKS), key=lambda finding: GRADES.index(finding.grade))


def limits_of(chain: Chain, check_id: str) -> Limits:
    """The limits that count for the check of a number in this design. Raises Unknown where they hang on a value that is missing."""
    return numbered(check_id).counting(chain)[0]


def _graded(check: Check | Judged | Joined, chain: Chain) -> Finding:
    if check.kinds and chain.design.kind not in check.kinds:
        return Finding(check.id, check.group, check.title, "does not apply", f"not to a design of the kind '{chain.design.kind}'", "", "", check.basis)
    return check.grade(chain)
