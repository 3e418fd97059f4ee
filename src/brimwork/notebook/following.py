"""What a feature does in time: its start and stop second by second, and its water day by day, each as one live picture."""

from __future__ import annotations

import math
from collections.abc import Callable

from IPython.display import display

from brimwork import system
from brimwork.design.follows.start_and_stop import Course, bowl
from brimwork.design.follows.start_and_stop import run_and_rest as followed
from brimwork.drawing.levels_in_time import levels_in_time
from brimwork.drawing.pictures import Picture
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook.given_values import of_here
from brimwork.notebook.live import MOST_CONTROLS, Explorer, on_a_step
from brimwork.notebook.pages import say
from brimwork.topics.reservoir import water_area
from brimwork.topics.water_balance import DAY, Basin, DayOfWater, Weather, run_of_days
from brimwork.units import InputError, convert, read, write

# An invented bowl, its reservoir and its garden.
BOWL = {
    "Q": "30 L/min", "d_rim": "780 mm", "C_w": "1.7 m^0.5/s", "z_mouth": "15 mm", "d_pipe": "25 mm", "L_pipe": "2.4 m", "f": "0.03", "K": "4",
    "z_s": "0.55 m", "V_way": "2.9 L", "A_b": "0.96 m2", "n_v": "0.95", "h_static": "380 mm", "h_min": "150 mm or 6 in", "h_over": "400 mm",
}  # fmt: skip
GARDEN = {
    "A_b": "0.96 m2", "n_v": "0.95", "h_static": "380 mm", "h_min": "150 mm or 6 in", "h_over": "400 mm", "V_tr": "12.4 L", "E_w": "5 mm/day", "A_wet": "2.1 m2",
    "Q_splash": "2 L/day", "A_catch": "2.6 m2", "k_run": "0.8",
}  # fmt: skip
ROWS = 8
_Draw = Callable[[dict[str, float]], tuple[Picture, list[str]]]  # values (SI) to a picture and the notes below it


class _UsualRanges:
    """The usual ranges of letters, as a control asks a formula for them."""

    def range(self, letter: str) -> tuple[float, float, float]:
        return QUANTITIES[letter].range


class Followed(Explorer):
    """Controls over the picture of something that is followed in time."""

    def __init__(self, letters: tuple[str, ...], given: dict[str, float], drawn: _Draw):
        self._picture_of = drawn
        super().__init__(_UsualRanges(), letters, given)

    def drawn(self, values: dict[str, float]) -> tuple[Picture, list[str]]:
        return self._picture_of(values)

    def fits(self, values: dict[str, float]) -> bool:
        try:
            self._picture_of(values)
        except InputError:
            return False
        return True


def start_and_stop(
    *letters: str, on: str = "2 min", off: str = "2 min", check_valve: str = "no", dry_vessel: str = "0 L", after: str = "", **given: str
) -> None:
    """The start and the stop of an invented bowl, with your values by their letters: start_and_stop("Q", "z_mouth", Q="30 L/min", on="2 min").

    At most three letters get a control. h_run="390 mm" with Q_feed="12 L/min" adds a float valve that fills while the pump runs; dry_vessel is
    what an empty vessel takes besides, the first time. With `after` all of it appears once the prediction of that code is kept.
    """
    try:
        times = read(on, "min", "on"), read(off, "min", "off")
        empty, valve = read(dry_vessel, "L", "dry_vessel"), _yes(check_valve, "check_valve")
        known = (*BOWL, "Q_feed", "h_run")
        _show(letters, _values(BOWL, given, known), lambda values: _bowl_picture(values, times, empty, valve), after)
    except InputError as error:
        display(say(error))


def follow_days(*letters: str, rain: str, top_up: str = "no", **given: str) -> None:
    """The water of an invented feature day by day, with your values by their letters: follow_days("E_w", "A_wet", rain="0 0 12 0 5").

    `rain` is each day's depth in mm; top_up="yes" fills it to the static level at the end of each day.
    """
    try:
        depths, filled = _depths(rain), _yes(top_up, "top_up")
        _show(letters, _values(GARDEN, given, tuple(GARDEN)), lambda values: _days_picture(values, depths, filled))
    except InputError as error:
        display(say(error))


def _show(letters: tuple[str, ...], values: dict[str, float], drawn: _Draw, after: str = "") -> None:
    for letter in letters:
        if letter not in values:
            raise InputError(f"'{letter}' cannot be moved here: choose from {', '.join(values)}")
    if len(letters) > MOST_CONTROLS:
        raise InputError(f"{len(letters)} controls were asked for; a picture takes at most {MOST_CONTROLS}")
    if not after and system.current() == system.FEET:  # on round numbers; a puzzle asks about the very values
        values |= {letter: on_a_step(_UsualRanges(), letter, values[letter]) for letter in letters}
    drawn(values)  # refuses what cannot be before any control stands
    Followed(letters, values, drawn).show(after)


def _values(usual: dict[str, str], given: dict[str, str], known: tuple[str, ...]) -> dict[str, float]:
    for letter in given:
        if letter not in known:
            raise InputError(f"'{letter}' plays no part here: it takes {', '.join(known)}")
    return {letter: QUANTITIES[letter].read(of_here(text)) for letter, text in {**usual, **given}.items()}


def _yes(text: str, name: str) -> bool:
    if text not in ("yes", "no"):
        raise InputError(f'{name} = "{text}" is neither yes nor no: type {name}="yes" or {name}="no"')
    return text == "yes"


def _depths(rain: str) -> list[float]:
    try:
        depths = [float(part) / 1e3 for part in rain.split()]
    except ValueError:
        depths = []
    if not depths or not all(0 <= depth < 2 for depth in depths):
        raise InputError(f'rain = "{rain}" is not a row of depths: give millimetres day by day with spaces between, such as "0 0 12 0 5"')
    return depths


# --- start and stop -----------------------------------------------------------------------------------------------------------------


def _bowl_picture(values: dict[str, float], times: tuple[float, float], empty: float, check_valve: bool) -> tuple[Picture, list[str]]:
    circuit = bowl(values, check_valve)
    course = followed(circuit, values["h_static"], *times, step=max(0.5, sum(times) / 320), empty=empty)
    moments, sentence = course.moments, _what_happened(course, values["h_static"], times)
    sheet = levels_in_time(
        [moment.t for moment in moments],
        [course.level(moment) for moment in moments],
        {"overflow": circuit.h_over, "pump's limit, running": circuit.h_min},
        [course.head(moment) for moment in moments],
        times[0],
        "Start and stop",
        sentence,
        QUANTITIES["h_static"].here,
    )
    level, flow = QUANTITIES["h_static"].here, QUANTITIES["Q"].here
    level = "inches" if level == "in" else level
    columns = ("time in s", f"level in {level}", f"head over the rim in {level}", f"flow over the rim in {flow}")
    return Picture(sheet, sentence, columns, _rows_of(course)), _warnings(course)


def _rows_of(course: Course) -> tuple[tuple[str, ...], ...]:
    every = max(1, len(course.moments) // ROWS)
    kept = [*course.moments[::every], *([course.moments[-1]] if (len(course.moments) - 1) % every else [])]
    flow, unit = QUANTITIES["Q"], QUANTITIES["h_static"].here
    places = (1, 2) if unit == "mm" else (2, 3)

    def length(metres: float, digits: int) -> str:
        return f"{convert(metres, unit):.{digits}f}"

    return tuple(
        (
            f"{moment.t:.0f}",
            length(course.level(moment), places[0]),
            length(course.head(moment), places[1]),
            flow.text_here(course.over_the_rim(moment)).split()[0],
        )
        for moment in kept
    )


def _what_happened(course: Course, h_static: float, times: tuple[float, float]) -> str:
    level, begun = QUANTITIES["h_static"].shown, course.over_the_rim_at
    lowest, last = course.level(course.lowest), course.level(course.moments[-1])
    first = f"Water runs over the rim {begun:.0f} s after the start" if begun is not None else "No water runs over the rim"
    return (
        f"{first}. The reservoir falls from {level(h_static)} to {level(lowest)}, {QUANTITIES['z_r'].shown(h_static - lowest)} lower; "
        f"{write(times[1], 'min', None)} after the stop it stands at {level(last)}. {_verdict(course)}"
    )


def _verdict(course: Course) -> str:
    litres = QUANTITIES["V_spill"].shown
    over = f"It passes the overflow, and {litres(course.spilled)} is lost" if course.spilled > 1e-6 else "It stays below the overflow"
    dry = course.dry_at
    return f"{over}; the pump {'keeps its water' if dry is None else f'sucks air after {dry:.0f} s'}."


def _warnings(course: Course) -> list[str]:
    notes = []
    if course.dry_at is not None:
        notes.append("a pump that sucks air runs hot and dies; it needs more water, or a cut-out that stops it in time")
    if course.spilled > 1e-6:
        notes.append("what is lost at each stop is missing at the next start; hold the static level lower")
    return notes


# --- day by day ---------------------------------------------------------------------------------------------------------------------


def _days_picture(values: dict[str, float], depths: list[float], filled: bool) -> tuple[Picture, list[str]]:
    basin = Basin(
        A_w=water_area(A_b=values["A_b"], n_v=values["n_v"]),
        h_top=values["h_static"] if filled else None,
        **{letter: values[letter] for letter in ("h_min", "h_over", "V_tr", "A_wet", "Q_splash", "A_catch", "k_run")},
    )
    days = run_of_days(basin, values["h_static"], [Weather(depth, values["E_w"]) for depth in depths])
    sentence = f"{_what_the_days_brought(days)} {_least(basin)}"
    sheet = levels_in_time(
        [DAY * number for number in range(len(days) + 1)],
        [values["h_static"], *(day.level for day in days)],
        {"overflow": basin.h_over, "too low to start": basin.lowest},
        title="Day by day",
        description=sentence,
        unit=QUANTITIES["h_static"].here,
    )
    litres, level = QUANTITIES["V_rain"].text_here, QUANTITIES["h_static"].here
    rows = tuple(
        (
            f"{number}",
            *(litres(volume).split()[0] for volume in (day.rain, day.lost, day.spilled, day.topped_up)),
            f"{convert(day.level, level):.{0 if level == 'mm' else 1}f}",
        )
        for number, day in enumerate(days, start=1)
    )
    return Picture(sheet, sentence, _columns(QUANTITIES["V_rain"].here, level), rows), _if_short(days)


def _columns(volume: str, level: str) -> tuple[str, ...]:
    return (
        "day",
        *(f"{what} in {volume}" for what in ("rain", "lost", "over the overflow", "topped up")),
        f"static level in {'inches' if level == 'in' else level}",
    )


def _what_the_days_brought(days: list[DayOfWater]) -> str:
    litres = QUANTITIES["V_rain"].shown
    rain, lost, spilled, added = (math.fsum(getattr(day, name) for day in days) for name in ("rain", "lost", "spilled", "topped_up"))
    return (
        f"In {len(days)} days the rain brings {litres(rain)}, {litres(lost)} dries or splashes out, {litres(spilled)} leaves by the overflow and "
        f"{litres(added)} is topped up. The static level ends at {QUANTITIES['h_static'].shown(days[-1].level)}."
    )


def _least(basin: Basin) -> str:
    """The level at rest under which nobody may start, which is not the limit of the running pump."""
    level = QUANTITIES["h_static"].shown
    return f"Under {level(basin.lowest)} at rest it must not start: the pump's limit is {level(basin.h_min)}, and a start takes {QUANTITIES['z_r'].shown(basin.lowest - basin.h_min)} more."


def _if_short(days: list[DayOfWater]) -> list[str]:
    short = next((number for number, day in enumerate(days, start=1) if day.running < 1), None)
    return [f"on day {short} the water no longer lasts: the pump must stop"] if short else []
