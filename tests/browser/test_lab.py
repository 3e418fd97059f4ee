"""The workbooks in real JupyterLab in headless Chromium: cells run, a control is moved by keyboard, number and drawing change, bad input is told."""

import json
import re
from base64 import b64decode

import lab


def told(of):
    """The sentence of the first picture in there; numbers keep their units by spaces that do not break."""
    return of.locator("figcaption").first.inner_text().replace("\u00a0", " ")


def figure(page):
    """The first live picture once it rests: its sentence and the curve's marked point."""
    shown = page.locator("figure").first
    shown.locator("img").wait_for()
    drawn = b64decode(shown.locator("img").get_attribute("src").partition("base64,")[2]).decode()
    return told(shown), re.findall(r'<circle cx="([^"]+)" cy="([^"]+)"', drawn)[-1]


def rests_with(page, text):
    """Wait until the first live picture is at rest with that in its sentence; a kernel that is behind shows a step between for a moment."""
    page.wait_for_function(
        "text => { const shown = document.querySelector('figure'); return shown.querySelector('img') && shown.querySelector('figcaption').textContent.replaceAll('\\u00a0', ' ').includes(text); }",
        arg=text,
    )


def test_a_slider_moved_by_keyboard_changes_number_sentence_and_drawing(page, address, served):
    lab.open_overflow(page, address, served[0])
    sentence, point = figure(page)
    assert "88.9 L/min" in sentence  # 2/3 x 0.62 x 0.4 x sqrt(2 g) x 0.016^1.5 = 1.482 L/s by hand
    box = page.get_by_label("H, head over the lip").first
    page.get_by_role("slider", name="head over the lip, from 6 to 20 mm").first.focus()
    for _ in range(4):
        page.keyboard.press("ArrowRight")
    rests_with(page, "lip 18 mm")
    after, moved = figure(page)
    assert box.input_value() == "18 mm"
    assert re.search(r"Flow (\S+) L/min", after)[1] == "106"  # 2/3 x 0.62 x 0.4 x sqrt(2 g) x 0.018^1.5 = 1.768 L/s by hand
    assert moved != point


def test_a_slider_moves_its_picture_without_waiting_for_the_kernel(page, address, served):
    lab.open_overflow(page, address, served[0])
    slider = page.get_by_role("slider", name="head over the lip, from 6 to 20 mm").first
    slider.press("ArrowRight")
    lab.drawn_ahead(slider, 4)
    asleep = "import pathlib, time\nwhile not pathlib.Path('wake').exists(): time.sleep(0.05)"
    page.evaluate("code => { window.jupyterapp.shell.currentWidget.sessionContext.session.kernel.requestExecute({code}); }", asleep)
    for _ in range(3):
        slider.press("ArrowRight")
    assert "head over the lip 18 mm" in told(page), "the kernel sleeps"
    page.evaluate("() => window.jupyterapp.serviceManager.contents.save('wake', {type: 'file', format: 'text', content: ''})")


def test_picture_and_sliders_agree_in_whatever_order_they_are_moved(page, address, served):
    """Steps drawn ahead beside a value that has changed since must not stay in the page."""
    lab.open_overflow(page, address, served[0])
    head = page.get_by_role("slider", name="head over the lip, from 6 to 20 mm").first
    length = page.get_by_role("slider", name="length of the lip, from 300 to 1200 mm").first
    page.locator("figure summary").first.click()
    lab.drawn_ahead(head, 1)
    for turn in range(12):
        head.press(("ArrowRight", "ArrowRight", "ArrowLeft", "PageUp")[turn % 4])
        length.press(("ArrowLeft", "PageDown", "ArrowRight")[turn % 3])
        head.press("ArrowLeft")
        said = f"length of the lip {length.input_value()} mm, head over the lip {head.input_value()} mm"
        page.wait_for_function("said => document.querySelector('figcaption').textContent.replaceAll('\\u00a0', ' ').includes(said)", arg=said)
        page.wait_for_timeout(60 * turn)  # some in the midst of drawing ahead, some at rest
        assert said in told(page), "it stays so"
    rests_with(page, said)
    assert page.locator("figure tbody").first.is_visible(), "numbers once unfolded stay so"


def test_a_number_typed_in_another_unit_is_taken_and_a_bad_one_is_told(page, address, served):
    lab.open_overflow(page, address, served[0])
    box = page.get_by_label("H, head over the lip").first
    box.fill("1/2 in")
    box.press("Enter")
    page.wait_for_function("() => document.querySelector('figure figcaption').textContent.replaceAll('\\u00a0', ' ').includes('12.7 mm')")
    for bad, told in (("12", "has no unit"), ("3 kg", "is a mass"), ("-4 mm", "cannot be below zero"), ("banana", "does not start with a number")):
        box.fill(bad)
        box.press("Enter")
        page.get_by_role("alert").filter(has_text=told).first.wait_for()
    assert "12.7 mm" in figure(page)[0], "the last good picture stays"


def test_a_workbook_opened_without_its_kernel_comes_back_and_one_that_was_changed_says_what_to_do(page, address, served):
    """What a kernel has made is gone with it: words stand where boxes were. While the kernel lives, boxes come back by themselves."""
    lab.open_overflow(page, address, served[0])
    lab.save(page)
    path = served[0] / "overflow.ipynb"
    for kernel in ("lives", "is gone", "is gone, and the code was changed"):
        if kernel != "lives":
            page.evaluate("() => window.jupyterapp.shell.currentWidget.sessionContext.shutdown()")
        if "changed" in kernel:
            book = json.loads(path.read_text())
            [cell for cell in book["cells"] if cell["cell_type"] == "code"][-1]["source"] += "\n# mine"
            path.write_text(json.dumps(book))
        page.goto(f"{address}/tree/overflow.ipynb?reset")
        page.wait_for_function("() => window.jupyterapp?.shell.currentWidget?.context?.isReady")
        if "changed" not in kernel:
            page.get_by_role("slider").first.wait_for()
            continue
        page.get_by_text("Run this cell to bring it to life").first.wait_for()
        assert page.get_by_text("model not found").count() == 0


def test_a_terminal_has_the_command_in_the_folder_of_the_workbooks(page, address):
    lab.open_workbook(page, address, "00-start.ipynb", run=False)
    page.evaluate("() => window.jupyterapp.commands.execute('terminal:create-new')")
    page.wait_for_function("() => window.jupyterapp.shell.currentWidget.content.session?.connectionStatus === 'connected'")
    page.locator(".jp-Terminal textarea").focus()
    page.keyboard.type("brimwork pack designs/quick-check.toml\n")
    page.wait_for_function(
        """() => window.jupyterapp.serviceManager.contents.get('designs', {content: true})
             .then(folder => folder.content.some(file => file.name === 'quick-check.pdf'))""",
        polling=lab.OFTEN,
    )


def asked(page, address, folder, *codes):
    """A workbook that asks these questions, opened."""
    cell = f"from brimwork.notebook import practise\nfor code in {codes!r}:\n    practise(code, record='answers.json')"
    content = {"cells": [{"cell_type": "code", "source": cell, "metadata": {}, "outputs": [], "execution_count": None}], "nbformat": 4, "nbformat_minor": 5}
    content["metadata"] = {"kernelspec": {"name": "python3", "display_name": "Python 3", "language": "python"}}
    (folder / "practice.ipynb").write_text(json.dumps(content), encoding="utf-8")
    lab.open_workbook(page, address, "practice.ipynb")


def test_long_answers_fit_a_narrow_page(page, address, served):
    page.set_viewport_size({"width": 900, "height": 5000})
    asked(page, address, served[0], "T01.6")
    page.get_by_text("Search for pipes and cables").first.click()
    assert page.get_by_role("radio", name="Search for pipes and cables").first.is_checked()


def test_questions_of_each_kind_are_answered_by_keyboard_and_kept(page, address, served):
    """Number with a hint, choice by radio button, order by lists; the answers file stands in the workbook's folder."""
    asked(page, address, served[0], "T04.5", "T04.7", "T12.6")
    status = page.get_by_role("status")
    answer = page.get_by_label("Your answer, with its unit").first
    answer.fill("73.5 mm")
    answer.press("Enter")
    status.filter(has_text="You left out the 2").first.wait_for()
    page.get_by_role("button", name="Hint", exact=True).first.press("Enter")
    status.filter(has_text="Hint 3 of 4").first.wait_for()
    page.get_by_role("radio").nth(1).check()
    page.get_by_role("button", name="Check", exact=True).nth(0).press("Enter")
    status.filter(has_text="pi x 0.600").first.wait_for()
    for place, step in zip(("First", "Second", "Third"), ("search for services", "dig", "lay the duct")):
        page.get_by_label(place, exact=True).select_option(label=step)
    page.get_by_role("button", name="Check", exact=True).nth(1).press("Enter")
    page.get_by_role("alert").filter(has_text="Give every step one place").wait_for()
    kept = page.evaluate(
        "() => window.jupyterapp.serviceManager.contents.get('answers.json', {type: 'file', format: 'text', content: true}).then(file => file.content)"
    )
    assert '"kind": "slip"' in kept and '"kind": "right"' in kept and "T04.7" in kept
