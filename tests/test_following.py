"""The live pictures of a start and stop and of a run of days: sentence, numbers and notes say what was computed, and controls redraw."""

import pytest

from brimwork.notebook import following
from brimwork.notebook.following import Followed, follow_days, start_and_stop


@pytest.fixture
def shown(monkeypatch):
    """What a call displays: the plain text of each thing, and the explorers that were made."""
    seen, made = [], []
    monkeypatch.setattr(following, "display", seen.append)
    monkeypatch.setattr(Followed, "show", lambda explorer, after: made.append(explorer))
    return seen, made


def picture(shown):
    (explorer,) = shown[1]
    return explorer.figure("k")


def test_a_start_and_stop_worked_by_hand_is_told_in_one_sentence(shown):
    """Hose 1.178 L and 7.168 L of vessel at 0.5 L/s: 16.7 s. 1.163 + 8.346 + 2.9 = 12.41 L over 0.912 m2: 13.6 mm."""
    start_and_stop("Q", "z_mouth", "h_static")
    figure = picture(shown)
    assert figure.picture.sentence.startswith(
        "Water runs over the rim 17 s after the start. The reservoir falls from 380 mm (15.0 in) to 366 mm (14.4 in), 13.6 mm"
    )
    assert "stays below the overflow; the pump keeps its water" in figure.picture.sentence and figure.notes == []
    assert figure.picture.rows[0] == ("0", "380.0", "0.00", "0")
    assert all(part in figure.html() for part in ("<figure", "<figcaption", "<table>", "head over the rim in mm"))


def test_a_float_valve_that_fills_while_it_runs_is_told_to_spill(shown):
    start_and_stop("Q_feed", h_static="390 mm", h_run="390 mm", Q_feed="12 L/min")
    figure = picture(shown)
    assert "It passes the overflow, and 3.29 L" in figure.picture.sentence and "missing at the next start" in figure.notes[0]


def test_a_pump_that_sucks_air_is_warned_of(shown):
    start_and_stop("h_static", h_static="156 mm")
    figure = picture(shown)
    assert "sucks air after" in figure.picture.sentence and "runs hot" in figure.notes[0]


def test_a_check_valve_and_a_dry_vessel_change_when_water_comes(shown):
    start_and_stop(check_valve="yes")
    start_and_stop(dry_vessel="15 L")
    with_valve, dry = (explorer.figure("k").picture.sentence for explorer in shown[1])
    assert with_valve.startswith("Water runs over the rim 1 s") and dry.startswith("Water runs over the rim 47 s")


def test_days_are_told_with_their_sums(shown):
    """15 mm on 2.6 m2, four fifths of it: 31.2 L; each dry day takes 2.1 m2 x 5 mm and 2 L: 12.5 L, 37.5 L in three days."""
    follow_days("E_w", rain="0 15 0")
    figure = picture(shown)
    assert "In 3 days the rain brings 31.2 L" in figure.picture.sentence and "37.5 L" in figure.picture.sentence
    assert [row[0] for row in figure.picture.rows] == ["1", "2", "3"] and figure.notes == []


def test_days_in_which_the_water_does_not_last_say_on_which_day_the_pump_stops(shown):
    """0.912 m2 x 230 mm less 12.4 L are 197.4 L; at 12.5 L a day they last 15.8 days."""
    follow_days(rain="0 " * 20)
    assert picture(shown).notes == ["on day 16 the water no longer lasts: the pump must stop"]


def test_a_topped_up_reservoir_ends_where_it_began(shown):
    follow_days(rain="0 0 0 0", top_up="yes")
    assert "The static level ends at 380 mm" in picture(shown).picture.sentence


@pytest.mark.parametrize(
    "call, said",
    [
        (lambda: start_and_stop("A_b", "Q", "f", "K"), "at most 3"),
        (lambda: start_and_stop("V_tr"), "cannot be moved here"),
        (lambda: start_and_stop(V_tr="3 L"), "plays no part"),
        (lambda: start_and_stop(Q="fast"), "fast"),
        (lambda: start_and_stop(h_static="500 mm"), "overflow is at 0.4 m"),
        (lambda: start_and_stop(on="0 min"), "above zero"),
        (lambda: start_and_stop(check_valve="perhaps"), "neither yes nor no"),
        (lambda: follow_days(rain="wet"), "millimetres day by day"),
        (lambda: follow_days(rain=""), "millimetres day by day"),
        (lambda: follow_days(rain="0 -5"), "millimetres day by day"),
        (lambda: follow_days(rain="0 5", h_over="120 mm"), "levels do not fit"),
    ],
)
def test_what_cannot_be_is_said_and_shows_no_picture(shown, call, said):
    call()
    assert shown[1] == []
    assert len(shown[0]) == 1 and said in shown[0][0].plain
