"""Live pictures: drawn in the page while they move, an image at rest, and drawn ahead for the steps next to where a slider stands."""

import asyncio

import pytest

from brimwork import topics
from brimwork.drawing import image
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import live


class Handle:
    """Keeps what would be shown at rest."""

    def __init__(self):
        self.shown = []

    def update(self, figure):
        self.shown.append(figure.html())


def explorer(monkeypatch, name, letters, **given):
    """An explorer whose sliders keep what they would send to the page, in `sent`."""
    formula = topics.find(name)
    one = live.FormulaExplorer(formula, letters, {letter: QUANTITIES[letter].read(text) for letter, text in given.items()})
    one.handle = Handle()
    for control in one.controls:
        control.sent = []
        monkeypatch.setattr(control.slider, "send", control.sent.append)
    return one


def kept(control, beside):
    """The pictures that the page keeps for a slider beside some values, by step."""
    return {step: html for message in control.sent if message.get("beside") == beside for step, html in message["keep"].items()}


def moves(monkeypatch, act, rest=0.3):
    """Do something where a kernel would, and wait until all is at rest."""
    monkeypatch.setattr(live, "REST", 0.05)

    async def done():
        act()
        await asyncio.sleep(rest)

    asyncio.run(done())


LIP = {"name": "flow over a level lip", "letters": ("H", "b"), "H": "12 mm", "b": "600 mm", "C_d": "0.62"}


def slid(control, steps, ahead=None):
    """Slide as the page does: the number of the step, and beside which values it has shown the picture itself."""
    with control.slider.hold_trait_notifications():
        control.slider.value += steps * control.slider.step
        control.slider.shown = ahead or ""


def test_what_is_drawn_ahead_is_the_figure_at_its_step(monkeypatch):
    one = explorer(monkeypatch, **LIP)
    head, length = one.controls
    moves(monkeypatch, lambda: slid(head, 1), rest=1.0)
    ahead, beside = kept(head, one._beside(head)), kept(length, one._beside(length))
    at = head.slider.at()
    assert {step for step in range(at - 10, at + 11) if 0 <= step <= head.last} - {at} <= set(ahead) and len(beside) == 6
    for control, drawn in ((head, ahead), (length, beside)):
        here = control.value
        for step, html in drawn.items():
            control.value = control.on(step)
            assert html == one.figure(one.key, one.at(control, step)).html()
        control.value = here


def test_the_whole_track_is_drawn_when_a_hand_comes_near_it_and_one_too_long_only_beside_the_slider(monkeypatch):
    one = explorer(monkeypatch, **LIP)
    head, length = one.controls
    moves(monkeypatch, lambda: head.slider._handle_custom_msg({"near": True}, []), rest=2.0)
    assert set(kept(head, one._beside(head))) == {*range(head.last + 1)}
    monkeypatch.setattr(live, "WHOLE_TRACK", 10)
    moves(monkeypatch, lambda: length.slider._handle_custom_msg({"near": True}, []), rest=1.0)
    assert len(kept(length, one._beside(length))) == 20


def test_a_step_that_the_page_has_shown_is_not_drawn_again_unless_another_value_has_changed(monkeypatch):
    one = explorer(monkeypatch, **LIP)
    head, length = one.controls

    def shown(messages):
        return [message for message in messages if "show" in message]

    moves(monkeypatch, lambda: slid(head, 1, ahead=one._beside(head)))
    assert not shown(head.sent) and head.box.value == "12.5 mm"
    assert "head over the lip 12.5\N{NO-BREAK SPACE}mm" in one.handle.shown[-1], "at rest the workbook has it all the same"
    late = one._beside(head)
    moves(monkeypatch, lambda: slid(length, 1))
    moves(monkeypatch, lambda: slid(head, 1, ahead=late))
    (corrected,) = shown(head.sent)
    assert (
        "lip 13\N{NO-BREAK SPACE}mm" in corrected["show"]
        and "lip 610\N{NO-BREAK SPACE}mm" in corrected["show"]
        and f"data-at='{one.at()}'" in corrected["show"]
    )


def test_a_typed_value_is_drawn_wherever_the_slider_stands(monkeypatch):
    one = explorer(monkeypatch, **LIP)
    head = one.controls[0]
    moves(monkeypatch, lambda: slid(head, 1, ahead=one._beside(head)))
    moves(monkeypatch, lambda: setattr(head.box, "value", "12.7 mm"))
    (typed,) = [message for message in head.sent if "show" in message]
    assert "lip 12.7\N{NO-BREAK SPACE}mm" in typed["show"] and f"data-at='{one.at()}'" in typed["show"]


def test_a_page_that_was_loaded_again_gets_its_pictures_again(monkeypatch):
    one = explorer(monkeypatch, **LIP)
    head = one.controls[0]
    moves(monkeypatch, lambda: slid(head, 1), rest=1.0)
    head.sent.clear()
    moves(monkeypatch, lambda: slid(head, 1), rest=1.0)  # a step that was sent, but the page says that it had none
    assert len(kept(head, one._beside(head))) > 10


def test_a_step_that_cannot_be_has_no_picture_ahead_and_is_told_when_the_slider_comes_there(monkeypatch):
    one = explorer(
        monkeypatch, "greatest pressure under partial contact", ("e_off",), F_w="8 kN", L_base="1 m", B_base="1.2 m", e_off="0.21 m"
    )  # up to a sixth of the base, 0.2 m, all of it presses, and the picture refuses
    (control,) = one.controls
    moves(monkeypatch, lambda: slid(control, 1), rest=1.0)
    drawn, last = kept(control, one._beside(control)), len(one.handle.shown)
    refused = [step for step in range(control.slider.at() - 10, control.slider.at()) if control.on(step) < 0.199]
    assert refused and drawn and not set(refused) & set(drawn)
    moves(monkeypatch, lambda: slid(control, refused[0] - control.slider.at()))
    assert "alert" in one.trouble.value and "The picture is the one before" in one.trouble.value and len(one.handle.shown) == last


def test_a_picture_is_an_svg_of_the_page_while_it_moves_and_an_image_at_rest(monkeypatch):
    one = explorer(monkeypatch, **LIP)
    moves(monkeypatch, lambda: [slid(one.controls[0], 1) for _ in range(3)])
    assert ["<svg" in message["show"] for message in one.controls[0].sent if "show" in message] == [True, True, True]
    (last,) = one.handle.shown
    assert image.element(one.figure().picture.sheet) in last and "head over the lip 13.5\N{NO-BREAK SPACE}mm" in last


def test_a_move_that_waited_in_the_page_does_not_undo_what_was_typed_after_it():
    """A message of one widget that waits behind another of its own comes after one of the other widget that was done later."""
    taken = []
    control = live.Control(topics.find("flow over a level lip"), "H", 0.012, lambda one, _: taken.append(one.value))
    low, step = control.slider.min, control.slider.step
    control.slider.set_state({"value": low + 4 * step, "said": 1, "done": 1000.0})
    control.box.set_state({"value": "15 mm", "said": 1, "done": 3000.0})
    control.slider.set_state({"value": low + 9 * step, "said": 2, "done": 2000.0})
    assert control.value == taken[-1] == pytest.approx(0.015) and control.box.value == "15 mm"
    assert control.slider.value == pytest.approx(15)
    control.slider.set_state({"value": low + 9 * step, "said": 3, "done": 4000.0})
    control.box.set_state({"value": "14 mm", "said": 2, "done": 3500.0})
    assert control.read(control.slider.value) == control.value == taken[-1] == pytest.approx(control.on(9))
    assert control.row.read(control.box.value) == pytest.approx(control.on(9)) and len(taken) == 3
