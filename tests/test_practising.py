"""Practice in a workbook, without a browser: the widgets of each kind of question, help, fresh numbers, and answers kept."""

import json
import re

import ipywidgets as widgets
import pytest

from brimwork import system
from brimwork.notebook.practising import exercise
from brimwork.units import InputError


def words(html):
    return re.sub("<[^>]*>", "", html.value).replace("\N{NO-BREAK SPACE}", " ")


def test_a_slip_is_named_and_help_goes_on_from_there():
    shown = exercise("T04.5")
    shown.box.value = "73.5 mm"
    assert "role='status'" in shown.feedback.value and "left out the 2" in words(shown.feedback)
    shown.hint.click()
    assert "Hint 3 of 4" in words(shown.help) and "0.849 m/s" in words(shown.help)
    shown.hint.click()
    assert "36.7 mm" in words(shown.help)
    shown.box.value = "36.7 mm"
    assert "Right" in words(shown.feedback) and words(shown.help) == ""


def test_new_numbers_are_offered_where_there_are_any():
    shown = exercise("T04.5")
    before = words(shown.text)
    shown.box.value = "1 mm"
    shown.again.click()
    assert words(shown.text) != before and words(shown.feedback) == "" and shown.box.value == ""
    assert shown.again in shown.buttons.children
    assert exercise("T01.6").again not in exercise("T01.6").buttons.children


def test_a_middle_value_is_asked_for_when_it_is_needed():
    with system.working_in(system.FEET):
        shown = exercise("T10.6")
        assert shown.middle not in shown.place.children
        shown.box.value = "1.18 V"
        assert shown.middle in shown.place.children and "current" in shown.middle.description
        shown.middle.value = "1.25 A"
        assert "shared the current" in words(shown.feedback)


def test_a_choice_is_made_with_radio_buttons_and_checked_on_demand():
    shown = exercise("T04.7")
    assert isinstance(shown.radio, widgets.RadioButtons) and shown.radio.value is None and shown.radio.description
    shown.check()
    assert "role='alert'" in shown.feedback.value
    shown.radio.value = 0
    assert "Right" not in words(shown.feedback)
    shown.check()
    assert "The flow holds" in words(shown.feedback)
    shown.radio.value = 1
    shown.check()
    assert "Right" in words(shown.feedback)


def test_an_order_is_made_with_a_list_for_each_place():
    shown = exercise("T12.6")
    assert all(isinstance(place, widgets.Dropdown) and place.description for place in shown.places)
    shown.places[0].value = 0
    shown.check()
    assert "one place" in words(shown.feedback)
    for place, item in zip(shown.places, shown.question.right):
        place.value = item
    shown.check()
    assert "Right" in words(shown.feedback)


def test_a_drawing_is_shown_with_its_description():
    text = exercise("T03.6").text.value
    assert 'role="img"' in text and "<desc>From the ground down: stone 70 mm" in text


def test_answers_are_kept_where_asked_and_trouble_is_told(tmp_path):
    path = tmp_path / "answers.json"
    shown = exercise("T04.5", record=str(path))
    shown.box.value = "36.7 mm"
    assert re.search(r"receipt [a-z]+ [a-z]+ \d{4}", words(shown.kept))
    shown.again.click()
    shown.box.value = "banana"
    held = json.loads(path.read_text())["answers"]
    assert [(entry["seed"], entry["kind"]) for entry in held] == [(1, "right"), (2, "fresh numbers"), (2, "unread")]
    path.write_text("damaged")
    shown.box.value = "12 mm"
    assert "kept as answers.damaged-1.json" in words(shown.kept)
    shown = exercise("T04.5", record=str(tmp_path / "absent" / "answers.json"))
    shown.box.value = "36.7 mm"
    assert "Right" in words(shown.feedback) and "role='alert'" in shown.kept.value


def test_what_a_learner_types_is_never_taken_for_markup():
    shown = exercise("T04.5", record=None)
    shown.box.value = "<img src=x onerror=alert(1)> mm"
    assert "<img" not in shown.feedback.value


def test_an_unknown_code_is_told():
    with pytest.raises(InputError, match="Type a code such as"):
        exercise("T99.9")
