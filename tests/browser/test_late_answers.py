"""What somebody has typed or moved stands, however late the kernel answers what was done before: pages whose messages from the server are held back and let go by hand."""

import json

import lab
import pytest

from brimwork.exercise import answers

ALIVE = "body[data-alive]"
# Whatever a box and a slider show from now on, frame by frame, each once.
_NOTED = """([box, slider]) => { const seen = window.seen = new Set();
  const look = () => { seen.add(`${box.value} | ${slider.value}`); requestAnimationFrame(look); };
  look(); }"""


class Line:
    """The line from server to page; what is held comes in its order once it is let go."""

    def __init__(self, page):
        self.page, self.held = page, None
        page.route_web_socket("**/line/**", self._opened)

    def _opened(self, route) -> None:
        server = route.connect_to_server()
        self._send = route.send
        server.on_message(lambda message: route.send(message) if self.held is None else self.held.append(message))

    def hold(self) -> None:
        self.held = []

    def let_go(self) -> None:
        """Frame by frame, so that whoever looks sees each change."""
        while self.held:
            message = self.held.pop(0)
            self._send(message)
            if '"update"' in message:
                self.page.evaluate("() => new Promise(requestAnimationFrame)")
        self.held = None


@pytest.fixture(scope="module")
def opened(context, served):
    """The box and the slider of the head over a lip; with them what shows them and the line that can be held."""
    folder, address = served
    lab.lay_out_afresh(folder)
    page = context.new_page()
    page.set_default_timeout(180_000)
    line = Line(page)
    answers.note(folder / "answers.json", "T04.8", "about twice as much", "prediction")  # the picture waits for it
    page.goto(address.removesuffix("lab") + "brimwork/page/overflow")
    page.wait_for_selector(ALIVE)
    slider = page.get_by_role("slider", name="head over the lip").first
    cell = page.locator("[data-cell]", has=slider).first
    yield page, line, cell, cell.get_by_role("textbox", name="H, head over the lip", exact=True), slider
    page.close()


@pytest.fixture
def lip(opened):
    """The same, settled at 16 mm."""
    page, line, cell, box, slider = opened
    enter(box, "16 mm")
    cell.locator("figcaption", has_text="head over the lip 16 mm").wait_for()
    slider.focus()
    lab.drawn_ahead(slider, 3)
    return opened


def enter(box, text: str) -> None:
    box.fill(text)
    box.press("Enter")


def watched(page, box, slider) -> None:
    page.evaluate(_NOTED, [box.element_handle(), slider.element_handle()])


def seen(page) -> set[str]:
    return set(page.evaluate("() => [...window.seen]"))


def settled(line, cell, words: str) -> None:
    """Everything held has come, and the picture is the one of these words."""
    line.let_go()
    cell.locator("figcaption", has_text=words).wait_for()


def test_a_late_answer_to_a_move_does_not_take_the_place_of_what_was_entered_since(lip):
    page, line, cell, box, slider = lip
    line.hold()
    slider.press("End")
    enter(box, "17 mm")
    watched(page, box, slider)
    end = slider.input_value()
    settled(line, cell, "head over the lip 17 mm")
    page.wait_for_function("([slider, end]) => slider.value !== end", arg=[slider.element_handle(), end])
    assert box.input_value() == "17 mm" and {one.split(" | ")[0] for one in seen(page)} == {"17 mm"}


def test_a_late_answer_to_a_move_does_not_take_the_place_of_what_is_being_typed(lip):
    page, line, cell, box, slider = lip
    line.hold()
    slider.press("End")
    box.press("ControlOrMeta+a")
    box.press_sequentially("17 m")
    watched(page, box, slider)
    settled(line, cell, f"head over the lip {slider.input_value()} mm")
    box.press_sequentially("m")
    assert box.input_value() == "17 mm"
    box.press("Enter")
    cell.locator("figcaption", has_text="head over the lip 17 mm").wait_for()
    assert {one.split(" | ")[0] for one in seen(page)} == {"17 m", "17 mm"}


def test_what_is_marked_to_be_typed_over_stays_marked_when_an_answer_to_a_move_comes_late(lip):
    page, line, cell, box, slider = lip
    line.hold()
    slider.press("End")
    end = slider.input_value()
    box.press("ControlOrMeta+a")
    settled(line, cell, f"head over the lip {end} mm")
    page.wait_for_function("([box, end]) => box.value === `${end} mm`", arg=[box.element_handle(), end])
    box.press_sequentially("17 mm")
    assert box.input_value() == "17 mm"


def test_a_late_answer_to_an_entry_does_not_move_the_slider_from_where_it_was_put_since_and_the_next_move_counts(lip):
    page, line, cell, box, slider = lip
    line.hold()
    enter(box, "17 mm")
    slider.press("End")
    end = slider.input_value()
    watched(page, box, slider)
    settled(line, cell, f"head over the lip {end} mm")
    page.wait_for_function("([box, end]) => box.value === `${end} mm`", arg=[box.element_handle(), end])
    assert slider.input_value() == end and {one.split(" | ")[1] for one in seen(page)} == {end}
    for text in ("17", "9"):  # where the late answer would have put it, and elsewhere
        slider.fill(text)
        cell.locator("figcaption", has_text=f"head over the lip {text} mm").wait_for()
        page.wait_for_function("([box, text]) => box.value === `${text} mm`", arg=[box.element_handle(), text])


def sent(message: str) -> dict:
    """What a message from the kernel says to the page of a design."""
    return (json.loads(message).get("content", {}).get("data") or {}).get("content") or {}


def test_findings_of_an_older_change_that_come_late_are_not_shown_and_those_of_the_newer_are(context, served):
    folder, address = served
    lab.lay_out_afresh(folder)
    page = context.new_page()
    page.set_default_timeout(180_000)
    line = Line(page)
    page.goto(address.removesuffix("lab") + "brimwork/page/design")
    page.get_by_role("button", name="library bowl").click()
    page.locator(".bw-finding").first.wait_for()
    line.hold()
    box = page.get_by_role("textbox", name="Across the rim", exact=True)
    for text in ("700 mm", "840 mm"):
        enter(box, text)
    while sum("findings" in sent(one) for one in line.held) < 2:
        page.evaluate("() => new Promise(requestAnimationFrame)")
    older, newer = (at for at, one in enumerate(line.held) if "findings" in sent(one))
    values = [
        {one["value"] for one in sent(line.held[at])["findings"]["found"] if isinstance(one, dict) and one["grade"] in ("fail", "marginal")}
        for at in (older, newer)
    ]
    gone = values[0] - values[1]
    assert gone
    line.held.insert(newer - 1, line.held.pop(older))  # after the answer that it should have come before
    page.evaluate("""() => { const findings = document.querySelector('.bw-findings'); window.read = new Set();
      const look = () => { window.read.add(findings.textContent); requestAnimationFrame(look); }; look(); }""")
    line.let_go()
    page.wait_for_function("values => values.every(one => document.querySelector('.bw-findings').textContent.includes(one))", arg=sorted(values[1]))
    assert not [one for one in gone for text in page.evaluate("() => [...window.read]") if f"{one};" in text]
    page.close()
