"""Live pictures: drawn in the page while they move, an image at rest, and drawn beforehand where one slider moves them alone."""

import asyncio

import pytest

from brimwork import topics
from brimwork.drawing import image
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import live


def explorer(name, letters, **given):
    formula = topics.find(name)
    return live.Explorer(formula, letters, {letter: QUANTITIES[letter].read(text) for letter, text in given.items()})


class Handle:
    """Keeps what would be shown."""

    def __init__(self):
        self.shown = []

    def update(self, figure):
        self.shown.append(figure.html())


def test_each_frame_is_the_figure_at_its_step():
    one = explorer("void fraction from void ratio", ("e_void",), e_void="0.67")
    frames = one.frames()
    assert len(frames) == len(one.controls[0].positions()) > 20
    assert one.controls[0].value == pytest.approx(0.67), "the value is as before"
    for step in (0, 7, len(frames) - 1):
        one.controls[0].value = one.controls[0].read(one.controls[0].positions()[step])
        assert frames[step] == one.figure(one.key).html()
    assert len(set(frames)) == len(frames)


def test_a_step_that_cannot_be_and_what_there_is_no_time_for_have_no_frame(monkeypatch):
    one = explorer("greatest pressure under partial contact", ("e_off",), F_w="8 kN", L_base="1 m", B_base="1.2 m", e_off="0.3 m")
    frames = one.frames()
    inside = [place for place in one.controls[0].positions() if place < 199]  # mm: up to a sixth of the base all of it presses, and the picture refuses
    assert inside and frames[: len(inside)] == [""] * len(inside) and all(frames[len(inside) + 1 :])
    monkeypatch.setattr(live, "AHEAD", -1.0)
    assert not any(one.frames())


def test_a_picture_is_drawn_in_the_page_while_it_moves_and_an_image_at_rest(monkeypatch):
    monkeypatch.setattr(live, "REST", 0.05)
    one = explorer("flow over a level lip", ("H", "b"), H="12 mm", b="600 mm", C_d="0.62")
    one.handle = Handle()

    async def moved():
        for position in (13.0, 14.0, 15.0):
            one.controls[0].slider.value = position
        await asyncio.sleep(0.3)

    asyncio.run(moved())
    assert ["<svg" in html for html in one.handle.shown] == [True, True, True, False]
    last = one.handle.shown[-1]
    assert image.element(one.figure().picture.sheet) in last and "head over the lip 15 mm" in last
