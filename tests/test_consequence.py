"""What a learner's own number would lead to: told from that number alone, with the question's own values, and drawn."""

import math

import pytest

from brimwork import topics
from brimwork.design.judged.checks import CHECKS
from brimwork.drawing import svg
from brimwork.drawing.layout import words
from brimwork.drawing.records import Line
from brimwork.exercise import bank
from brimwork.exercise.consequence import _TOLD, FILMS, consequence, film
from brimwork.exercise.question import ask, posed


def test_a_flow_is_told_as_the_head_it_makes_over_the_edge():
    """By hand, for 3.08 ft^0.5/s and a rim 30 in across: head = (Q/(1.7004 pi 0.762))^(2/3); 2 US gal/min make 0.987 mm, 0.0388 in."""
    told = consequence(bank.questions()["T04.2"].pose(1), "120 US gal/h")
    assert "would stand 0.0388 in over the edge: a drip" in told.sentence and "The question has 0.120 in." in told.sentence
    assert (120 * 231 * 0.0254**3 / 3600 / (1.7 * math.pi * 0.762)) ** (2 / 3) / 0.0254 == pytest.approx(0.0389, abs=5e-5)


def test_a_head_is_told_as_the_flow_it_takes():
    """By hand, for 1.7 m^0.5/s and a rim 0.78 m across: 1.7 pi 0.78 0.005^1.5 = 1.473 L/s = 88.4 L/min."""
    told = consequence(bank.pose("T04.1"), "5 mm")
    assert told.sentence == "With your head 88.4 L/min would run over the edge: too much to cling, too little for a whole sheet. The question has 30.0 L/min."


def test_the_right_answer_is_told_without_a_contrast():
    assert consequence(bank.pose("T04.1"), "2.43 mm").sentence == "With your head 29.9 L/min would run over the edge: a film that clings to the face."


def test_too_little_head_brings_no_water():
    question = ask(topics.find("total dynamic head"), 1)
    lift = question.like[1]["z_s"]
    assert "nothing would come out" in consequence(question, f"{lift * 0.9} m").sentence
    assert "nothing" in [word.text for word in words(consequence(question, f"{lift * 0.9} m").sheet)]
    assert "would send" in consequence(question, f"{lift * 1.5} m").sentence


def test_pump_and_hose_are_compared_at_the_learners_own_flow():
    """By hand, at 1800 L/h: the pump gives 3 (1 - 0.81) = 0.57 m, the hose asks 1.3 + 0.45 (1800/800)^2 = 1.3 + 2.278 = 3.578 m."""
    told = consequence(bank.pose("T05.4"), "1800 L/h").sentence
    assert "gives 0.570 m" in told and "asks for 3.58 m" in told and "less would come" in told
    assert "They agree" in consequence(bank.pose("T05.4"), "1080 L/h").sentence


def test_a_speed_is_told_as_the_flow_it_would_carry():
    """By hand: pi/4 0.01905^2 x 1 ft/s = 8.687e-5 m3/s = 1.377 US gal/min."""
    assert "would carry 1.38 US gal/min" in consequence(bank.questions()["T05.1"].pose(1), "1 ft/s").sentence


@pytest.mark.parametrize("name", sorted(_TOLD))
@pytest.mark.parametrize("share", [1e-6, 0.01, 0.5, 1.0, 1.7, 40.0, 1e6])
def test_any_size_of_answer_has_a_sentence_and_a_drawing_without_strangers_to_it(name, share):
    question = ask(topics.find(name), 3)
    told = consequence(question, question.typed(question.answer * share, 4))
    assert told.sentence.endswith(".") and "nan" not in told.sentence and "inf" not in told.sentence
    assert ("The question has" not in told.sentence) if share == 1.0 else True
    if told.sheet:
        assert "<desc>" in svg.write_svg(told.sheet)
        for word in words(told.sheet):
            left, top, right, bottom = word.box
            assert 0 <= left and right <= told.sheet.width and 0 <= top and bottom <= told.sheet.height, word.text


@pytest.mark.parametrize("typed", ["", "banana", "5 kg", "-3 mm", "0 mm", "9**9**9", "<b>5 mm</b>", "nan mm", "1e99 mm", "5"])
def test_what_cannot_be_used_has_no_consequence(typed):
    assert consequence(bank.pose("T04.1"), typed) is None or "over the edge" in consequence(bank.pose("T04.1"), typed).sentence


def test_a_question_of_another_kind_has_none():
    assert consequence(bank.pose("T03.4"), "5 mm") is None and consequence(bank.pose("T12.1"), "21 bags") is None


def test_words_for_films_change_where_the_check_on_films_does():
    check = next(check for check in CHECKS if check.id == "C08")
    for limit, below, above in ((0.08e-3, "drip", "streaks"), (0.15e-3, "streaks", "clings"), (0.40e-3, "clings", "too much to cling")):
        assert below in film(limit * 0.999) and above in film(limit * 1.001)
    assert [at for at, _ in FILMS][:3] == [check.criterion.limits.fair[0], *check.criterion.limits.good]


def test_a_liner_is_told_by_where_its_ends_come_to_lie():
    """By hand: floor 1.05 m, 0.61 m down and 0.4 m out: a side of sqrt(0.5321) = 0.7295 m; 0.48 m of apron and 0.15 m to trim make 3.769 m."""
    question = posed(topics.find("length of the liner for sloping sides"), 2, {"L": 1.05, "D": 0.61, "s_back": 0.4, "w_apron": 0.48, "w_trim": 0.15})
    side = math.sqrt(0.61**2 + 0.4**2)

    def told(cut):
        return consequence(question, f"{cut} m").sentence

    assert told(2.2) == f"Cut to 2.20 m, each end would lie {(side - 0.575) * 1e3:.0f} mm short of the edge of the pit: water would run out behind it."
    assert told(3.0) == f"Cut to 3.00 m, it would reach {(0.975 - side) * 1e3:.0f} mm over the edge at each end. The apron is 480 mm wide."
    assert told(4.5).endswith(f"leave {(1.725 - side - 0.48) * 1e3:.0f} mm to trim at each end. The question wants 150 mm.")
    assert "to trim at each end" in told(3.77) and "wants" not in told(3.77)
    assert "no more than the floor" in told(0.8)


def test_a_liner_is_drawn_as_long_as_it_was_answered():
    question = ask(topics.find("length of the liner for sloping sides"), 2)
    for cut in (0.8, 2.2, 3.0, 4.5):
        records = consequence(question, f"{cut} m").sheet.views[0].records
        halves = [record.points for record in records if isinstance(record, Line) and record.style == "force"]
        assert [sum(math.dist(a, b) for a, b in zip(half, half[1:])) for half in halves] == pytest.approx([cut / 2, cut / 2])
