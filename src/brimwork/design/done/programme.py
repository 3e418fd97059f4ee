"""The programme: every step of the work on site with its dates, by a plain forward pass; where work stops until signed; and what must be ordered when.

Work goes on Monday to Friday in the hours of a working day, but for the days that the design says are closed; waits (tests, curing) run through nights,
weekends and closed days.
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from brimwork.design.follows.chain import Chain
from brimwork.design.typed.design import Design
from brimwork.design.typed.known import Unknown
from brimwork.design.typed.steps import COAT, FEATURE_WORDS, LEADS, STEPS, TEAM, USUAL_TEAM, WAIT, Task, applies
from brimwork.design.typed.telling import short
from brimwork.topics.ground import digging_hours
from brimwork.units import InputError

OPENING = 8  # o'clock
QUARTER, HOUR, _DAY = 900.0, 3600.0, 86400.0
A_MONDAY = datetime.date(2001, 1, 1)  # where days are counted and no date is known
HOLIDAYS = "Public holidays and closed days are not known until they are given."
_NARROW = 0.4  # m: a plate compactor needs about so much room, else a hand or trench rammer: judgement
ALONE = 25.0  # kg that one person lifts close to the waist at the most: guideline figure, from memory; a team of n lifts less than n times as much


@dataclass(frozen=True)
class Calendar:
    """Working time: Monday to Friday, `hours` (s) from opening, but for the days that are `closed`."""

    hours: float
    closed: frozenset[datetime.date] = frozenset()

    def next(self, moment: datetime.datetime) -> datetime.datetime:
        """The first moment at which work can go on, not before `moment`."""
        if moment >= self._closing(moment):
            moment = _opening(moment.date() + datetime.timedelta(days=1))
        if moment < _opening(moment.date()):
            moment = _opening(moment.date())
        while not works(moment.date(), self.closed):
            moment = _opening(moment.date() + datetime.timedelta(days=1))
        return moment

    def work(self, start: datetime.datetime, seconds: float) -> datetime.datetime:
        """When work that takes so long is done, from a moment at which work goes on."""
        while (left := (self._closing(start) - start).total_seconds()) < seconds - 1e-6:
            seconds -= left
            start = self.next(self._closing(start))
        return start + datetime.timedelta(seconds=seconds)

    def open(self, moment: datetime.datetime) -> bool:
        """Whether people are at work at a moment, the last one of the day with it."""
        return works(moment.date(), self.closed) and _opening(moment.date()) <= moment <= self._closing(moment)

    def _closing(self, moment: datetime.datetime) -> datetime.datetime:
        return _opening(moment.date()) + datetime.timedelta(seconds=self.hours)


def _opening(day: datetime.date) -> datetime.datetime:
    return datetime.datetime(day.year, day.month, day.day, OPENING)


def works(day: datetime.date, closed: Collection[datetime.date] = ()) -> bool:
    """Whether a day is worked."""
    return day.weekday() < 5 and day not in closed


def days_before(day: datetime.date, count: int, closed: Collection[datetime.date] = ()) -> datetime.date:
    """The working day that lies `count` working days before `day`, or before the last one that is worked."""
    one = datetime.timedelta(days=1)
    while not works(day, closed):
        day -= one
    for _ in range(count):
        day -= one
        while not works(day, closed):
            day -= one
    return day


@dataclass(frozen=True)
class Dated:
    """A step with its length (s), its start and its end; critical where a little more of it puts off the end of everything."""

    key: str
    step: Task
    seconds: float
    start: datetime.datetime
    end: datetime.datetime
    critical: bool = False
    note: str = ""


@dataclass(frozen=True)
class Ordering:
    """What must be ordered by which day, to be there when it is needed."""

    what: str
    by: datetime.date
    needed: datetime.date
    working_days: int


@dataclass(frozen=True)
class Hire:
    """What is hired, from the day on which it is used first to the day on which it is used last."""

    what: str
    on: datetime.date
    off: datetime.date


@dataclass(frozen=True)
class Programme:
    """The steps with their dates, what must be ordered by when, what is hired from when to when, and what must be said of them."""

    steps: tuple[Dated, ...]
    orders: tuple[Ordering, ...]
    hires: tuple[Hire, ...]
    dated: bool
    calendar: Calendar
    notes: tuple[str, ...]

    @property
    def first(self) -> datetime.date:
        return self.steps[0].start.date()

    @property
    def end(self) -> datetime.datetime:
        return max(dated.end for dated in self.steps)

    def signing(self, one: Dated) -> datetime.datetime:
        """When a step that ends is looked at and signed: at its end, or when work goes on after it."""
        return one.end if self.calendar.open(one.end) else self.calendar.next(one.end)

    def signed(self, one: Dated) -> str:
        """The working day on which a step that ends is looked at and signed."""
        return self.day(self.signing(one).date())

    def day(self, day: datetime.date) -> str:
        """A day as a date, or as a number counted from the first day on site, which is day 1."""
        if self.dated:
            return f"{day:%a} {day.isoformat()}"
        number = (day - self.first).days
        return f"day {number + 1}" if number >= 0 else f"{-number} days before"


def forward(
    steps: Mapping[str, tuple[Iterable[str], float, bool]], start: datetime.date, calendar: Calendar
) -> dict[str, tuple[datetime.datetime, datetime.datetime]]:
    """Start and end of every step by a forward pass. Each step: what it waits for, how long it takes (s), and whether that is a wait rather than work.

    Steps stand after those they wait for. Raises KeyError where they do not.
    """
    found: dict[str, tuple[datetime.datetime, datetime.datetime]] = {}
    for key, (needs, seconds, waits) in steps.items():
        ready = max((found[need][1] for need in needs), default=_opening(start))
        begin = ready if waits else calendar.next(ready)
        found[key] = begin, begin + datetime.timedelta(seconds=seconds) if waits else calendar.work(begin, seconds)
    return found


def critical(steps: Mapping[str, tuple[Iterable[str], float, bool]], start: datetime.date, calendar: Calendar) -> set[str]:
    """The steps that put off the end of everything when they take a quarter of an hour more. A night or a weekend can swallow that: then there is time to spare."""

    def end(longer: str = "") -> datetime.datetime:
        net = {**steps, longer: (steps[longer][0], steps[longer][1] + QUARTER, steps[longer][2])} if longer else steps
        return max(end for _, end in forward(net, start, calendar).values())

    usual = end()
    return {key for key in steps if end(key) > usual}


def programme(chain: Chain) -> Programme:
    """The programme of a design: with dates where it has a first day on site, else with days counted from a Monday."""
    d = chain.design
    given = d.given("programme.start")
    closed = d.given("programme.closed")
    first, calendar = given.value if given else A_MONDAY, Calendar(d["programme.day"], frozenset(closed.value if closed and given else ()))
    mine = {key: step for key, step in STEPS.items() if applies(step, d)}
    times = {key: _time(chain, key) for key in mine}
    net = {key: ([need for need in step.needs if need in mine], times[key][0], step.by == WAIT) for key, step in mine.items()}
    found = forward(net, first, calendar)
    held = critical(net, first, calendar)
    dated = tuple(Dated(key, mine[key], times[key][0], *found[key], key in held, times[key][1]) for key in mine)
    orders = tuple(sorted((_order(d, lead, one, calendar) for lead, one in _first_uses(dated, d).items()), key=lambda order: order.by))
    return Programme(dated, orders, _hires(dated, d), bool(given), calendar, _notes(chain, first, given is not None))


def _first_uses(dated: Iterable[Dated], d: Design) -> dict[str, Dated]:
    """What must be ordered ahead, each with the step that uses it first."""
    wanted: dict[str, Dated] = {}
    for one in sorted(dated, key=lambda one: one.start):
        for lead in one.step.order:
            if applies(LEADS[lead], d):
                wanted.setdefault(lead, one)
    return wanted


def _hires(dated: Iterable[Dated], d: Design) -> tuple[Hire, ...]:
    """Plant by the steps that use it; what compacts must fit beside the box."""
    when = {one.key: one for one in dated}
    space = d.given("ground.working_space")
    rammer = (
        "hand rammer or trench rammer: the space beside the box is too narrow for a plate compactor"
        if space and space.value < _NARROW
        else "rammer or plate compactor"
    )
    uses = (
        (rammer, "sub_base", "build_fill" if "build_fill" in when else "backfill"),
        ("breaker", "lift_surface", "dig"),
        ("laser level", "set_out", "relevel"),
    )
    return tuple(Hire(what, when[first].start.date(), when[last].end.date()) for what, first, last in uses)


def _heavy(chain: Chain) -> str:
    """A word where the people on site cannot lift what they have to set."""
    d = chain.design
    pieces = [("vessel", d.given("vessel.mass")), ("block", d.given("reservoir.block_mass")), ("largest thing in slings", d.given("site.sling_mass"))]
    heavy = [(f"the {name}", given.value) for name, given in pieces if given]
    if "stones.diameters" in d.values and "stones.heights" in d.values and "stones.density" in d.values:
        hole, stones = d.given("stones.hole"), zip(d["stones.diameters"], d["stones.heights"])
        drilled = hole.value if hole else 0.0
        heavy.append(("the heaviest drilled stone", max(math.pi / 4 * (across**2 - drilled**2) * height for across, height in stones) * d["stones.density"]))
    people = d["programme.people"]
    over = [f"{name} ({short(mass, 'kg')})" for name, mass in heavy if mass > ALONE * people * (1.0 if people == 1 else 2 / 3 if people == 2 else 0.5)]
    return f"More than {_people(people)} can lift by hand: {', '.join(over)}: a machine or more people, by a lifting plan." if over else ""


def _notes(chain: Chain, first: datetime.date, dated: bool) -> tuple[str, ...]:
    d = chain.design
    weekend = f"The first day, {first.isoformat()}, is at a weekend: work begins on the Monday after." if dated and first.weekday() >= 5 else ""
    counted = "" if dated else "No first day is given, so days are numbered, all days of the week, as if day 1 were a Monday."
    many = _people(d["programme.people"])
    works = f"{many[:1].upper()}{many[1:]} at work {d['programme.day'] / HOUR:g} hours a day, Monday to Friday"
    people = f"{works}, one step after the other; electrician and mason work beside them, and what cures or is tested waits beside them."
    holidays = "" if d.given("programme.closed") else HOLIDAYS
    return tuple(note for note in (counted, weekend, _coat_told(d), people, _heavy(chain), holidays) if note)


def open_of(d: Design) -> list[str]:
    """The keys of which its notes say that nobody has given them."""
    asked = ("programme.start", "programme.closed", *((COAT,) if d.kind == "overflowing vessel" else ()))
    return [key for key in asked if d.given(key) is None]


def _coat_told(d: Design) -> str:
    """A word where nobody has said whether the vessel is coated inside."""
    asked = d.kind == "overflowing vessel" and d.given(COAT) is None
    return "Nobody has said whether the vessel is coated inside: no coat, and no time for it to cure, is planned." if asked else ""


def _order(d: Design, lead: str, one: Dated, calendar: Calendar) -> Ordering:
    """Ordered so that it is there some working days before it is needed, in case it comes late."""
    count = -(-round(d[f"programme.order_{lead}"] / _DAY, 6) // 1)
    in_hand = round(d["programme.in_hand"] / _DAY) if lead not in ("search", "electrician", "spoil") else 0
    needed = days_before(one.start.date(), in_hand, calendar.closed)
    what = FEATURE_WORDS[d.kind] if lead == "feature" else LEADS[lead].words
    return Ordering(what, days_before(needed, int(count), calendar.closed), needed, int(count))


def _time(chain: Chain, key: str) -> tuple[float, str]:
    """How long a step takes (s), and why where that follows from the soil: the design's own time; by the soil; the usual time of a team, shared by this one."""
    d = chain.design
    given = d[f"programme.{key}"]
    if f"programme.{key}" in d.values or STEPS[key].by != TEAM:
        return given, ""
    if key == "dig" and "programme.soil_type" in d.values:
        try:
            return _digging(chain)
        except (Unknown, InputError):
            pass  # then the usual time
    return given if STEPS[key].fixed else given * USUAL_TEAM / d["programme.people"], ""


def _digging(chain: Chain) -> tuple[float, str]:
    """Time of digging and barrowing (s) by the soil that the design names. Raises Unknown, InputError."""
    d, dug = chain.design, chain.dug
    people = d["programme.people"]
    _, most = digging_hours(dug, d["programme.soil_type"])
    parts = f" (pit {short(chain.pit_dug, 'm3')}, apron {short(chain.apron_dug, 'm3')})" if chain.apron_dug else ""
    said = f"{short(dug, 'm3')} of {d['programme.soil_type']}{parts} dug by hand by the slower table, and barrowed, by {_people(people)}"
    return (most + dug * d["programme.barrowing"]) / people, said


def _people(number: float) -> str:
    return "one person" if number == 1 else f"{number:g} people"


def team_time(chain: Chain) -> float:
    """Hours on site (s) of the team: all its steps together."""
    return sum(_time(chain, key)[0] for key, step in STEPS.items() if step.by == TEAM and applies(step, chain.design))
