"""Pages without code in the real browser: alive when they open, nothing of JupyterLab around them, nothing asked for elsewhere, nothing of a stranger run."""

import json
import os
import signal
import string
from pathlib import Path

import lab
import pytest
from axe_playwright_python.sync_playwright import Axe

from brimwork.exercise import answers

ALIVE = "body[data-alive]"


@pytest.fixture
def start(address):
    return address.removesuffix("lab") + "brimwork/"


def open_page(page, start: str, name: str) -> None:
    page.goto(f"{start}page/{name}")
    page.wait_for_selector(ALIVE)


def kernels(folder: Path) -> set[int]:
    """The processes that work for pages of a folder."""
    found = set()
    for process in Path("/proc").glob("[0-9]*"):
        try:
            if os.readlink(process / "cwd") == str(folder) and any(
                name in (process / "cmdline").read_bytes() for name in (b"ipykernel_launcher", b"be_copied")
            ):
                found.add(int(process.name))
        except OSError:
            continue
    return found


def test_a_phone_sees_all_of_a_page(plain, start):
    plain.set_viewport_size({"width": 390, "height": 800})
    for path in ("", "page/quick-check", "page/overflow"):
        plain.goto(f"{start}{path}")
        if path:
            plain.wait_for_selector(ALIVE)
        cut = plain.evaluate(
            "() => [...document.querySelectorAll('input, select, button, a')].filter(one => one.offsetParent && one.getBoundingClientRect().right > innerWidth).map(one => one.outerHTML.slice(0, 90))"
        )
        assert cut == [] and plain.evaluate("() => document.documentElement.scrollWidth") <= 390, path


def test_a_view_half_out_of_sight_is_taken_where_it_is_pressed_and_comes_in_whole_by_keyboard(plain, start):
    plain.set_viewport_size({"width": 390, "height": 800})
    plain.goto(f"{start}page/design")
    plain.wait_for_selector(ALIVE)
    plain.get_by_role("button", name="library bowl").click()
    row, view = plain.locator(".bw-tabs"), plain.get_by_role("button", name="Order of work", exact=True)
    view.wait_for()
    view.evaluate("one => one.parentElement.scrollLeft = one.offsetLeft - one.parentElement.offsetLeft - one.parentElement.clientWidth + 12")
    stood, place = row.evaluate("one => one.scrollLeft"), view.bounding_box()
    plain.mouse.click(place["x"] + 6, place["y"] + place["height"] / 2)
    row.locator("[aria-pressed=true]", has_text="Order of work").wait_for()
    assert row.evaluate("one => one.scrollLeft") == stood
    plain.get_by_role("button", name="Cost", exact=True).focus()
    plain.keyboard.press("Tab")
    seen, room = view.bounding_box(), row.bounding_box()
    assert view.evaluate("one => one === document.activeElement") and seen["x"] + seen["width"] + 4 <= room["x"] + room["width"] + 0.5


def begun(page) -> None:
    """A design of one's own, with one size typed."""
    page.get_by_label("Metric").check()
    page.get_by_role("button", name="Begin: A bowl or pot that overflows").click()
    rim(page).fill("905 mm")
    rim(page).press("Enter")
    page.get_by_text("1 of 15 first questions answered").wait_for()


def rim(page):
    return page.get_by_role("textbox", name="Across the rim", exact=True)


def test_from_the_start_page_to_an_own_number_without_code_and_nothing_leaves_the_machine(plain, start):
    plain.goto(start)
    assert [plain.locator(f"#{way}").inner_text() for way in ("build", "learn", "teach")] == ["Build", "Learn", "Teach"]
    plain.get_by_role("link", name="Only its first questions").click()
    plain.wait_for_selector(ALIVE)
    assert plain.evaluate("() => window.jupyterapp === undefined && !document.querySelector('.jp-CodeCell, .cm-editor')")
    assert "quick_check(" not in plain.content() and "Traceback" not in plain.inner_text("main")
    begun(plain)
    plain.goto(f"{start}page/overflow")  # formulas, pictures, sliders
    plain.wait_for_selector(ALIVE)
    plain.wait_for_selector(".katex")
    plain.wait_for_function("() => [...document.fonts].some(font => font.family.includes('KaTeX') && font.status === 'loaded')")
    elsewhere = [url for url in plain.asked if not url.startswith((start.partition("/brimwork")[0], "data:", "blob:"))]
    assert len(plain.asked) > 20 and elsewhere == []


def test_a_page_that_is_loaded_again_or_whose_kernel_is_killed_or_that_hears_every_key_stands_as_it_was(plain, start, served):
    open_page(plain, start, "quick-check")
    begun(plain)
    plain.locator("h1").click()
    for key in string.ascii_letters + string.digits:
        plain.keyboard.press(key)
    assert rim(plain).input_value() == "905 mm"
    plain.reload()
    plain.wait_for_selector(ALIVE)
    assert rim(plain).input_value() == "905 mm"
    room = plain.locator("body").get_attribute("data-room")
    for kernel in kernels(served[0]):
        os.kill(kernel, signal.SIGKILL)
    plain.wait_for_function("room => document.body?.dataset.alive && document.body.dataset.room !== room", arg=room)
    assert rim(plain).input_value() == "905 mm"


def test_what_was_refused_stands_in_its_box_until_it_is_typed_anew_and_a_save_says_that_it_is_not_in_it(plain, start, served):
    """Over a save, another depth of the form and a reload; Escape takes it back to the last good value."""
    open_page(plain, start, "design")
    begun(plain)
    rim(plain).fill("20 pints")
    rim(plain).press("Enter")
    refused = plain.locator(".bw-bad", has=rim(plain))
    refused.wait_for()
    told = refused.locator(".bw-note").inner_text()
    plain.get_by_role("button", name="Save", exact=True).click()
    plain.locator(".bw-alert", has_text="Not taken, and not in it: across the rim.").wait_for()
    assert '"905 mm"' in (served[0] / "designs" / "my-design.toml").read_text(encoding="utf-8")
    for again in (lambda: None, plain.get_by_role("button", name="Show all values").click, plain.reload):
        again()
        plain.wait_for_selector(ALIVE)
        refused.wait_for()
        assert rim(plain).input_value() == "20 pints" and refused.locator(".bw-note").inner_text() == told
        assert rim(plain).get_attribute("aria-invalid") == "true"
        assert "connection" not in plain.locator(".bw-said").inner_text()
    plain.get_by_role("button", name="My designs").click()
    plain.get_by_label("Another name for the open design").fill("front path")
    plain.get_by_role("button", name="Save under that name").click()
    plain.locator(".bw-alert", has_text="Not taken, and not in it: across the rim.").wait_for()
    plain.get_by_role("button", name="Back to the open design").click()
    assert rim(plain).input_value() == "20 pints"
    rim(plain).press("Escape")
    refused.wait_for(state="detached")
    assert rim(plain).input_value() == "905 mm" and rim(plain).get_attribute("aria-invalid") == "false"
    plain.reload()
    plain.wait_for_selector(ALIVE)
    rim(plain).wait_for()
    assert rim(plain).input_value() == "905 mm" and not refused.count()
    rim(plain).fill("910 mm")
    rim(plain).press("Enter")
    plain.locator("button:enabled", has_text="Undo").wait_for()
    for take_back in (plain.get_by_role("button", name="Undo").click, lambda: plain.get_by_role("button", name="Save", exact=True).press("Control+z")):
        rim(plain).fill("20 pints")
        rim(plain).press("Enter")
        refused.wait_for()
        take_back()
        plain.locator(".bw-said", has_text="Taken back: 20 pints.").wait_for()
        assert rim(plain).input_value() == "910 mm" and not refused.count(), "what was taken before it stays"
    plain.get_by_role("button", name="Undo").click()
    plain.locator(".bw-said", has_text="Taken back: across the rim").wait_for()
    assert rim(plain).input_value() == "905 mm"


def test_undo_takes_back_what_was_typed_last_whether_it_was_taken_or_refused(plain, start):
    open_page(plain, start, "quick-check")
    begun(plain)
    height, undo = plain.get_by_role("textbox", name="Height", exact=True), plain.get_by_role("button", name="Undo")
    stood, tall = rim(plain).input_value(), height.input_value()

    def typed(box, text, then):
        box.fill(text)
        box.press("Enter")
        plain.locator(f"button[title='take back: {then}']").wait_for()

    def taken_back(*said):
        for words in said:
            undo.click()
            plain.locator(".bw-said", has_text=f"Taken back: {words}.").wait_for()

    typed(rim(plain), "910 mm", "across the rim")
    typed(rim(plain), "20 pints", "20 pints")
    typed(height, "3 kg", "3 kg")
    taken_back("3 kg", "20 pints", "across the rim")
    assert (rim(plain).input_value(), height.input_value()) == (stood, tall)
    typed(rim(plain), "20 pints", "20 pints")
    typed(height, "480 mm", "height")
    taken_back("height", "20 pints")
    assert (rim(plain).input_value(), height.input_value()) == (stood, tall)
    typed(height, "470 mm", "height")
    typed(rim(plain), "910 mm", "across the rim")
    rim(plain).fill("20 pints")
    taken_back("20 pints")  # it is sent as the box is left for the button, and refused only then
    assert rim(plain).input_value() == "910 mm"


_TYPED_ON = """box => { box.focus(); box.value = '910 mm'; box.dispatchEvent(new KeyboardEvent('keydown', {key: 'Enter', bubbles: true}));
  box.value = '20 pi'; box.dispatchEvent(new Event('input', {bubbles: true})); }"""


def test_what_is_typed_on_in_a_box_stands_when_the_answer_to_what_was_sent_before_comes(plain, start):
    open_page(plain, start, "quick-check")
    begun(plain)
    height = plain.get_by_role("textbox", name="Height", exact=True)
    height.fill("470 mm")
    height.press("Enter")
    plain.locator("button[title='take back: height']").wait_for()
    rim(plain).evaluate(_TYPED_ON)
    plain.locator("button[title='take back: across the rim']").wait_for()
    assert rim(plain).input_value() == "20 pi"
    rim(plain).press("Escape")
    assert rim(plain).input_value() == "910 mm"


def test_a_button_that_is_held_as_long_as_a_finger_does_is_pressed_whatever_is_answered_meanwhile(plain, start):
    """What was typed is sent when the press leaves its box; the answer puts other buttons in place of all."""
    open_page(plain, start, "design")
    begun(plain)
    stood = rim(plain).input_value()
    for name, said, then in (("Undo", "Taken back: across the rim.", stood), ("Save", "Saved: designs/my-design.toml.", "930 mm")):
        rim(plain).fill("930 mm")
        button = plain.get_by_role("button", name=name, exact=True)
        place = button.bounding_box()
        plain.mouse.move(place["x"] + 8, place["y"] + 8)
        plain.mouse.down()
        plain.wait_for_timeout(400)
        plain.mouse.up()
        plain.locator(".bw-said", has_text=said).wait_for()
        assert rim(plain).input_value() == then


def test_a_page_comes_back_by_itself_when_its_server_was_started_again_and_sends_what_was_typed_meanwhile(plain, tmp_path):
    with lab.server(tmp_path) as address:
        open_page(plain, address.removesuffix("lab") + "brimwork/", "quick-check")
        begun(plain)
    plain.get_by_text("The connection to Brimwork is lost").wait_for()
    plain.evaluate("() => scrollTo(0, document.body.scrollHeight)")
    assert plain.locator("#told").bounding_box()["y"] >= 0, "seen wherever one is"
    rim(plain).fill("915 mm")
    rim(plain).press("Enter")
    plain.get_by_text("it counts when the connection is back").wait_for()
    plain.get_by_role("textbox", name="Height", exact=True).fill("470 mm")  # and not left
    plain.get_by_role("button", name="Save", exact=True).click()
    room = plain.locator("body").get_attribute("data-room")
    with lab.server(tmp_path, port=int(address.split(":")[2].removesuffix("/lab"))):
        plain.wait_for_function("room => document.body?.dataset.alive && document.body.dataset.room !== room", arg=room)
        plain.get_by_text("Sent again: Across the rim 915 mm").wait_for()
        assert rim(plain).input_value() == "915 mm" and plain.get_by_role("textbox", name="Height", exact=True).input_value() == "470 mm"
        plain.wait_for_function("() => document.querySelector('.bw-head').textContent.includes('saved as')")
        assert '"915 mm"' in (tmp_path / "designs" / "my-design.toml").read_text()
        plain.goto("about:blank")


def test_a_notebook_of_a_stranger_is_not_run_by_opening_a_page(plain, start, served):
    folder, taken = served[0], served[0] / "taken"
    cell = {"cell_type": "code", "source": f"open({str(taken)!r}, 'w').close()", "metadata": {}, "outputs": [], "execution_count": None, "id": "a"}
    book = json.dumps({"cells": [cell], "metadata": {}, "nbformat": 4, "nbformat_minor": 5})
    for name in ("volume.ipynb", "stranger.ipynb"):
        (folder / name).write_text(book)
    assert plain.goto(f"{start}page/stranger").status == 404
    open_page(plain, start, "volume")
    assert "Volume" in plain.inner_text("h1") and not taken.exists()
    lab.lay_out_afresh(folder)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_pages_without_code_can_be_used_by_everybody(plain, start, scheme):
    """The rules of accessibility of axe-core, contrast included."""
    plain.emulate_media(color_scheme=scheme)
    for path in ("", {"light": "page/quick-check", "dark": "page/volume"}[scheme]):
        plain.goto(f"{start}{path}")
        if path:
            plain.wait_for_selector(ALIVE)
        found = Axe().run(plain, options={"resultTypes": ["violations"]}).response["violations"]
        assert [(one["id"], one["nodes"][0]["html"][:200]) for one in found] == [], path
        assert plain.evaluate("() => document.documentElement.scrollWidth <= innerWidth"), path


_BURSTS = """async ([slider, bursts]) => {
  const wait = (ms) => new Promise((done) => setTimeout(done, ms)), area = slider.closest(".jp-OutputArea");
  const read = () => parseFloat(area.querySelector("figcaption").textContent.match(/head over the lip ([0-9.]+)\\smm/)[1]);
  let back = 0, frames = 0, way = 1, last = read(), moving = true;
  const look = () => {
    const seen = read();
    frames++;
    if ((seen - last) * way < -1e-9) back++;
    last = seen;
    if (moving) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
  for (let burst = 0; burst < bursts; burst++) {
    [way, last] = [burst % 2 ? -1 : 1, read()];
    for (let step = 0; step < 12; step++) {
      slider.valueAsNumber += way * slider.step;
      slider.dispatchEvent(new Event("input"));
      await wait(16);
    }
    await wait(330 + 30 * (burst % 5)); // about when the picture at rest comes
  }
  await wait(1200);
  moving = false;
  return [back, frames, slider.valueAsNumber, read()];
}"""


def test_on_a_slow_machine_no_picture_jumps_back_while_its_slider_moves_on(plain, start, served):
    """Six times slower, in bursts: what is drawn late is dropped. Without that about one frame in two bursts goes back."""
    answers.note(served[0] / "answers.json", "T04.8", "about twice as much", "prediction")  # the picture waits for it
    open_page(plain, start, "overflow")
    slider = plain.get_by_role("slider", name="head over the lip").first
    slider.scroll_into_view_if_needed()
    plain.context.new_cdp_session(plain).send("Emulation.setCPUThrottlingRate", {"rate": 6})
    back, frames, stands, shown = plain.evaluate(_BURSTS, [slider.element_handle(), 6])
    assert back == 0 and frames > 50 and shown == stands
